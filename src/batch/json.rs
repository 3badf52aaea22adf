//! A house as a line of JSON, written field by field. A test compares it with what a serializer writes.

use crate::batch::{Outcome, Row};
use crate::reconcile::CouldExplain;

impl Outcome {
    /// Appends the house as JSON, the same as its serialized form.
    pub fn append_json(&self, line: &mut Vec<u8>) {
        put(line, "{\"id\":");
        text(line, &self.id);
        put(line, ",\"tenth_foot\":");
        number(line, self.tenth_foot);
        put(line, ",\"tenth_foot_exact\":");
        text_or_null(line, self.tenth_foot_exact.as_deref());
        put(line, ",\"whole_foot\":");
        number(line, self.whole_foot);
        put(line, ",\"whole_foot_low\":");
        number(line, self.whole_foot_low);
        put(line, ",\"whole_foot_high\":");
        number(line, self.whole_foot_high);
        put(line, ",\"figures\":");
        list(line, &self.figures, figure);
        put(line, ",\"second_look\":");
        put(line, if self.second_look { "true" } else { "false" });
        put(line, ",\"reasons\":");
        list(line, &self.reasons, |line, reason| text(line, reason));
        put(line, ",\"faults\":");
        list(line, &self.faults, |line, fault| text(line, fault));
        put(line, "}");
    }
}

fn figure(line: &mut Vec<u8>, row: &Row) {
    put(line, "{\"figure\":");
    text(line, &row.figure);
    put(line, ",\"sq_ft\":");
    number(line, Some(row.sq_ft));
    put(line, ",\"same_way\":");
    number(line, row.same_way);
    put(line, ",\"gap_sq_ft\":");
    number(line, row.gap_sq_ft);
    put(line, ",\"per_cent\":");
    text_or_null(line, row.per_cent.as_deref());
    put(line, ",\"rounding\":");
    match row.rounding.map(CouldExplain::words) {
        // Plain words.
        Some(words) => quoted(line, words),
        None => put(line, "null"),
    }
    put(line, ",\"explanation\":");
    text_or_null(line, row.explanation.as_deref());
    put(
        line,
        match row.fits {
            None => ",\"fits\":null}",
            Some(true) => ",\"fits\":true}",
            Some(false) => ",\"fits\":false}",
        },
    );
}

fn put(line: &mut Vec<u8>, json: &str) {
    line.extend_from_slice(json.as_bytes());
}

fn list<T>(line: &mut Vec<u8>, all: &[T], one: impl Fn(&mut Vec<u8>, &T)) {
    for (i, item) in all.iter().enumerate() {
        put(line, if i == 0 { "[" } else { "," });
        one(line, item);
    }
    put(line, if all.is_empty() { "[]" } else { "]" });
}

/// Writing to memory does not fail, neither here nor for texts.
fn number(line: &mut Vec<u8>, number: Option<i64>) {
    let _ = serde_json::to_writer(line, &number);
}

fn text(line: &mut Vec<u8>, text: &str) {
    if is_plain(text.as_bytes()) {
        quoted(line, text);
    } else {
        let _ = serde_json::to_writer(line, text);
    }
}

fn quoted(line: &mut Vec<u8>, plain: &str) {
    put(line, "\"");
    put(line, plain);
    put(line, "\"");
}

/// Whether a text has nothing that has to be escaped.
fn is_plain(text: &[u8]) -> bool {
    let (eights, rest) = text.as_chunks::<8>();
    let are_plain = |eight: &[u8; 8]| eight.iter().fold(true, |all, byte| all & is_as_it_is(*byte));
    eights.iter().all(are_plain) && rest.iter().all(|byte| is_as_it_is(*byte))
}

fn is_as_it_is(byte: u8) -> bool {
    byte >= b' ' && byte != b'"' && byte != b'\\'
}

fn text_or_null(line: &mut Vec<u8>, given: Option<&str>) {
    match given {
        Some(given) => text(line, given),
        None => put(line, "null"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::collection::vec;
    use proptest::prelude::*;

    prop_compose! {
        fn rows()(
            figure in any::<String>(),
            numbers in any::<(i64, Option<i64>, Option<i64>)>(),
            texts in any::<(Option<String>, Option<String>)>(),
            fits in any::<Option<bool>>(),
            rounding in prop_oneof![
                Just(None),
                Just(Some(CouldExplain::Yes)),
                Just(Some(CouldExplain::OnlyAgainst)),
                Just(Some(CouldExplain::No)),
            ],
        ) -> Row {
            Row {
                figure,
                sq_ft: numbers.0,
                same_way: numbers.1,
                gap_sq_ft: numbers.2,
                per_cent: texts.0,
                rounding,
                explanation: texts.1,
                fits,
            }
        }
    }

    proptest! {
        #[test]
        fn a_house_is_written_as_a_serializer_writes_it(
            id in any::<String>(),
            numbers in any::<[Option<i64>; 4]>(),
            tenth_foot_exact in any::<Option<String>>(),
            figures in vec(rows(), 0..3),
            second_look in any::<bool>(),
            lists in any::<(Vec<String>, Vec<String>)>(),
        ) {
            let house = Outcome {
                id,
                tenth_foot: numbers[0],
                tenth_foot_exact,
                whole_foot: numbers[1],
                whole_foot_low: numbers[2],
                whole_foot_high: numbers[3],
                figures,
                second_look,
                reasons: lists.0,
                faults: lists.1,
            };
            let mut line = Vec::new();
            house.append_json(&mut line);
            prop_assert_eq!(String::from_utf8(line).ok(), serde_json::to_string(&house).ok());
        }
    }
}
