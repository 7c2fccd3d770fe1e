//! Reads the fields of a JSON input one by one and gathers what is wrong with them.

use serde_json::{Map, Value};

use super::{CalcRefusal, Problem};

/// The fields of an input not yet read, and the problems found so far.
pub struct Fields {
    left: Map<String, Value>,
    under: String,
    problems: Vec<Problem>,
}

impl Fields {
    /// The fields of an input; anything but an object is a problem of its own.
    pub fn of(input: Value) -> Fields {
        let mut fields = Fields { left: Map::new(), under: String::new(), problems: Vec::new() };
        match input {
            Value::Object(left) => fields.left = left,
            _ => fields.refuse("", "not_an_object", "the input is a JSON object".to_owned()),
        }
        fields
    }

    /// Notes a problem of a field.
    pub fn refuse(&mut self, field: &str, code: &'static str, words: String) {
        let field = format!("{}{field}", self.under);
        self.problems.push(Problem { field, code, words });
    }

    /// Takes a field out; a field left out and a null are both missing. An input that is no object
    /// has one problem, not one for each field it might have had.
    fn take(&mut self, field: &str) -> Option<Value> {
        match self.left.remove(field) {
            None | Some(Value::Null) => {
                if !self.problems.iter().any(|p| p.code == "not_an_object" && p.field.is_empty()) {
                    self.refuse(field, "missing", format!("“{field}” is missing"));
                }
                None
            }
            found => found,
        }
    }

    /// A whole number from 0 up.
    pub fn whole(&mut self, field: &str) -> Option<u32> {
        let value = self.take(field)?;
        match value.as_u64().map(u32::try_from) {
            Some(Ok(whole)) => Some(whole),
            Some(Err(_)) => {
                let words = format!("“{field}” is at most {}", u32::MAX);
                self.refuse(field, "too_large", words);
                None
            }
            None => {
                let words = format!("“{field}” is a whole number, 0 or more");
                self.refuse(field, "not_whole", words);
                None
            }
        }
    }

    /// A number.
    pub fn number(&mut self, field: &str) -> Option<f64> {
        let number = self.take(field)?.as_f64();
        if number.is_none() {
            self.refuse(field, "not_a_number", format!("“{field}” is a number"));
        }
        number
    }

    /// A text.
    pub fn text(&mut self, field: &str) -> Option<String> {
        match self.take(field)? {
            Value::String(text) => Some(text),
            _ => {
                self.refuse(field, "not_text", format!("“{field}” is a text"));
                None
            }
        }
    }

    /// An object inside, read by `read`.
    pub fn inside<T>(
        &mut self,
        field: &str,
        read: impl FnOnce(&mut Fields) -> Option<T>,
    ) -> Option<T> {
        match self.take(field)? {
            Value::Object(left) => {
                let under = format!("{}{field}.", self.under);
                let mut inner = Fields { left, under, problems: Vec::new() };
                let read = read(&mut inner);
                inner.refuse_the_rest();
                self.problems.append(&mut inner.problems);
                read
            }
            _ => {
                self.refuse(field, "not_an_object", format!("“{field}” is a JSON object"));
                None
            }
        }
    }

    /// What was never asked for is refused: a misspelt field must not pass for a default.
    fn refuse_the_rest(&mut self) {
        let left: Vec<String> = self.left.keys().cloned().collect();
        for field in left {
            self.refuse(&field, "unknown_field", format!("there is no field “{field}” here"));
        }
    }

    /// Ends the reading; refuses the input if anything was wrong with it.
    pub fn done(mut self) -> Result<(), CalcRefusal> {
        self.refuse_the_rest();
        if self.problems.is_empty() {
            return Ok(());
        }
        Err(CalcRefusal {
            code: "refused",
            words: "this input cannot be used as it is".to_owned(),
            problems: self.problems,
        })
    }
}
