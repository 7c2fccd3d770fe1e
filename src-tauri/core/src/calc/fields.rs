//! Reads the fields of a JSON input one by one and gathers what is wrong with them.

use rust_decimal::Decimal;
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

    /// A text that may be left out.
    pub fn text_or_none(&mut self, field: &str) -> Option<String> {
        if self.is_left_out(field) { None } else { self.text(field) }
    }

    /// A decimal number as text, as in `"12.50"`: digits, a point, a sign before it.
    pub fn decimal(&mut self, field: &str) -> Option<Decimal> {
        let text = self.text(field)?;
        let digits = text.strip_prefix('-').unwrap_or(&text);
        let parts: Vec<&str> = digits.split('.').collect();
        let plain = parts.len() <= 2
            && parts
                .iter()
                .all(|part| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit()));
        let number = plain.then(|| text.parse().ok()).flatten();
        if number.is_none() {
            let words = format!("“{field}” is a decimal number such as \"12.50\"");
            self.refuse(field, "not_a_decimal", words);
        }
        number
    }

    /// Whether a field is not there, or null; it is taken out then.
    pub fn is_left_out(&mut self, field: &str) -> bool {
        let out = matches!(self.left.get(field), None | Some(Value::Null));
        if out {
            self.left.remove(field);
        }
        out
    }

    /// A yes or no that may be left out, and is no then.
    pub fn flag(&mut self, field: &str) -> bool {
        match self.left.remove(field) {
            None | Some(Value::Null) => false,
            Some(Value::Bool(flag)) => flag,
            Some(_) => {
                self.refuse(field, "not_a_flag", format!("“{field}” is true or false"));
                false
            }
        }
    }

    /// One of some words.
    pub fn word<T: Copy>(&mut self, field: &str, words: &[(&str, T)]) -> Option<T> {
        let text = self.text(field)?;
        let found = words.iter().find(|(word, _)| *word == text).map(|(_, meant)| *meant);
        if found.is_none() {
            let known: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
            let words = format!("“{field}” is one of {}", known.join(", "));
            self.refuse(field, "unknown_word", words);
        }
        found
    }

    /// A list.
    fn list(&mut self, field: &str) -> Option<Vec<Value>> {
        match self.take(field)? {
            Value::Array(items) => Some(items),
            _ => {
                self.refuse(field, "not_a_list", format!("“{field}” is a list"));
                None
            }
        }
    }

    /// A list of numbers; `None` when one of them is none.
    pub fn numbers(&mut self, field: &str) -> Option<Vec<f64>> {
        let items = self.list(field)?;
        let mut numbers = Vec::with_capacity(items.len());
        for (place, item) in items.iter().enumerate() {
            match item.as_f64() {
                Some(number) => numbers.push(number),
                None => {
                    let at = format!("{field}[{place}]");
                    self.refuse(&at, "not_a_number", format!("“{at}” is a number"));
                }
            }
        }
        (numbers.len() == items.len()).then_some(numbers)
    }

    /// A list of whole numbers from 0 up; `None` when one of them is none.
    pub fn wholes(&mut self, field: &str) -> Option<Vec<u64>> {
        let items = self.list(field)?;
        let mut numbers = Vec::with_capacity(items.len());
        for (place, item) in items.iter().enumerate() {
            match item.as_u64() {
                Some(number) => numbers.push(number),
                None => {
                    let at = format!("{field}[{place}]");
                    let words = format!("“{at}” is a whole number, 0 or more");
                    self.refuse(&at, "not_whole", words);
                }
            }
        }
        (numbers.len() == items.len()).then_some(numbers)
    }

    /// A whole number that may be left out.
    pub fn whole_or_none(&mut self, field: &str) -> Option<u32> {
        if self.is_left_out(field) { None } else { self.whole(field) }
    }

    /// So many whole numbers from 0 up, as in `[480, 1260]`.
    pub fn row<const N: usize>(&mut self, field: &str) -> Option<[u32; N]> {
        let value = self.take(field)?;
        self.read_row(field, &value)
    }

    /// A list of such rows; `None` when one of them could not be read.
    pub fn rows<const N: usize>(&mut self, field: &str) -> Option<Vec<[u32; N]>> {
        let items = self.list(field)?;
        let rows = items.iter().enumerate();
        let rows: Vec<Option<[u32; N]>> =
            rows.map(|(place, item)| self.read_row(&format!("{field}[{place}]"), item)).collect();
        rows.into_iter().collect()
    }

    fn read_row<const N: usize>(&mut self, at: &str, value: &Value) -> Option<[u32; N]> {
        let whole = |item: &Value| item.as_u64().and_then(|n| u32::try_from(n).ok());
        let row = value.as_array().and_then(|items| items.iter().map(whole).collect());
        let row = row.and_then(|row: Vec<u32>| <[u32; N]>::try_from(row).ok());
        if row.is_none() {
            self.refuse(at, "not_a_row", format!("“{at}” is {N} whole numbers, 0 or more"));
        }
        row
    }

    /// A list of objects, each read by `read`; `None` when one of them could not be read.
    pub fn each<T>(
        &mut self,
        field: &str,
        read: impl Fn(&mut Fields) -> Option<T>,
    ) -> Option<Vec<T>> {
        let items = self.list(field)?;
        let each = items.into_iter().enumerate().map(|(place, item)| {
            let at = format!("{field}[{place}]");
            self.within(&at, item, &read)
        });
        // Every one is read before the first that fails ends the list.
        each.collect::<Vec<_>>().into_iter().collect()
    }

    /// The same for a list that may be left out, and is empty then.
    pub fn each_or_none<T>(
        &mut self,
        field: &str,
        read: impl Fn(&mut Fields) -> Option<T>,
    ) -> Option<Vec<T>> {
        if self.is_left_out(field) { Some(Vec::new()) } else { self.each(field, read) }
    }

    /// An object inside, read by `read`.
    pub fn inside<T>(
        &mut self,
        field: &str,
        read: impl FnOnce(&mut Fields) -> Option<T>,
    ) -> Option<T> {
        let value = self.take(field)?;
        self.within(field, value, read)
    }

    fn within<T>(
        &mut self,
        field: &str,
        value: Value,
        read: impl FnOnce(&mut Fields) -> Option<T>,
    ) -> Option<T> {
        match value {
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
