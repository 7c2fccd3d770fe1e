//! A calendar's text without some events: what is left is byte for byte as it was.

/// The text without the events of these UIDs. A UID stands on one line of its event: with less than 75
/// octets it is never folded.
pub fn without(text: &[u8], uids: &[String]) -> Vec<u8> {
    let mut kept = Vec::with_capacity(text.len());
    let mut event: Option<(Vec<u8>, bool)> = None;
    for line in text.split_inclusive(|byte| *byte == b'\n') {
        let words = line.trim_ascii_end();
        let begins = words.eq_ignore_ascii_case(b"BEGIN:VEVENT");
        if begins || event.is_some() {
            let (lines, goes) = event.get_or_insert_with(|| (Vec::new(), false));
            lines.extend_from_slice(line);
            *goes |= uids.iter().any(|uid| is_uid(words, uid));
            if words.eq_ignore_ascii_case(b"END:VEVENT")
                && let Some((lines, goes)) = event.take()
                && !goes
            {
                kept.extend(lines);
            }
        } else {
            kept.extend_from_slice(line);
        }
    }
    // A text that ends inside an event keeps what there was of it.
    kept.extend(event.filter(|(_, goes)| !goes).map(|(lines, _)| lines).unwrap_or_default());
    kept
}

fn is_uid(line: &[u8], uid: &str) -> bool {
    let at = line.iter().position(|byte| *byte == b':');
    let Some((name, value)) = at.map(|at| line.split_at(at)) else { return false };
    // A parameter may stand between the name and the value.
    let name = name.split(|byte| *byte == b';').next().unwrap_or_default();
    name.eq_ignore_ascii_case(b"UID") && &value[1..] == uid.as_bytes()
}

#[cfg(test)]
mod tests {
    use super::without;

    #[test]
    fn one_event_goes_and_the_rest_stays_byte_for_byte() {
        let event = |uid: &str| {
            format!("BEGIN:VEVENT\r\nUID;X-P=1:{uid}\r\nSUMMARY:Lesson\r\nEND:VEVENT\r\n")
        };
        let around =
            |events: &str| format!("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n{events}END:VCALENDAR\r\n");
        let all = around(&[event("a@x"), event("b@x"), event("aa@x")].concat());
        let left = without(all.as_bytes(), &["a@x".to_owned()]);
        assert_eq!(
            String::from_utf8(left).unwrap_or_default(),
            around(&[event("b@x"), event("aa@x")].concat())
        );
        assert_eq!(without(all.as_bytes(), &[]), all.as_bytes());
    }
}
