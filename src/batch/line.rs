//! The most common line of a stream, `{"id": "…", "sides": "…"}`, read without a JSON parser.
//!
//! It reads exactly these two texts in this order, with no escapes except the short ones. Everything else, including
//! every mistake, is left to the parser.

/// The id and the sides of a line; `None` if a JSON parser has to read it.
pub(super) fn id_and_sides(bytes: &[u8]) -> Option<(String, String)> {
    let line = std::str::from_utf8(bytes).ok()?;
    let rest = after(line, "{")?;
    let (id, rest) = text(after(after(rest, "\"id\"")?, ":")?)?;
    let (sides, rest) = text(after(after(after(rest, ",")?, "\"sides\"")?, ":")?)?;
    after(rest, "}")?.trim_ascii().is_empty().then_some((id, sides))
}

/// What follows `letters` at the beginning of the line, with or without blanks before them.
fn after<'a>(line: &'a str, letters: &str) -> Option<&'a str> {
    line.trim_ascii_start().strip_prefix(letters)
}

/// A quoted text at the beginning, with or without blanks before it, and what follows it.
fn text(line: &str) -> Option<(String, &str)> {
    let line = line.trim_ascii_start().strip_prefix('"')?;
    let mut text = String::with_capacity(line.len());
    let (mut from, bytes) = (0, line.as_bytes());
    let is_special = |byte: &u8| matches!(byte, 0..=0x1f | b'"' | b'\\');
    loop {
        let at = from + bytes.get(from..)?.iter().position(is_special)?;
        text.push_str(line.get(from..at)?);
        match bytes[at] {
            b'"' => return Some((text, line.get(at + 1..)?)),
            b'\\' => {
                text.push(match *bytes.get(at + 1)? {
                    b'"' => '"',
                    b'n' => '\n',
                    b'\\' => '\\',
                    b'/' => '/',
                    b't' => '\t',
                    b'r' => '\r',
                    _ => return None,
                });
                from = at + 2;
            }
            // JSON allows no control character in a text.
            _ => return None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[derive(serde::Deserialize)]
    struct Line {
        id: String,
        sides: String,
    }

    fn parsed(line: &[u8]) -> Option<(String, String)> {
        serde_json::from_slice::<Line>(line).ok().map(|line| (line.id, line.sides))
    }

    proptest! {
        #[test]
        fn what_is_read_is_what_a_parser_reads(id in any::<String>(), sides in any::<String>()) {
            let line = serde_json::json!({"id": id, "sides": sides}).to_string();
            if let Some(read) = id_and_sides(line.as_bytes()) {
                prop_assert_eq!(read, (id, sides));
            }
        }

        #[test]
        fn what_is_no_line_for_a_parser_is_none_here(
            line in r#"[{ "]{0,3}id"? ?: ?["a\\nu0\t}]{0,6},? ?"sides" ?:"[a"\\n\t/é]{0,6}"? ?}? ?[}"]?"#
        ) {
            if let Some(read) = id_and_sides(line.as_bytes()) {
                prop_assert_eq!(Some(read), parsed(line.as_bytes()));
            }
        }
    }

    #[test]
    fn a_common_line_is_read() {
        let line = br#" {"id": "house-7", "sides":"north 42' 7\"\neast 8 \u0041"} "#;
        assert_eq!(id_and_sides(line), None);
        let line = br#" {"id": "house-7", "sides":"north 42' 7\"\neast 8\\\t\/\r"} "#;
        let read = Some(("house-7".to_owned(), "north 42' 7\"\neast 8\\\t/\r".to_owned()));
        assert_eq!(id_and_sides(line), read);
        assert_eq!(parsed(line), read);
        for line in [
            "{\"id\": \"a\", \"sides\": \"b\"",
            "{\"id\": \"a\" \"sides\": \"b\"}",
            "{\"id\": \"a\n\", \"sides\": \"b\"}",
            "{\"id\": 7, \"sides\": \"b\"}",
        ] {
            assert_eq!(id_and_sides(line.as_bytes()), None, "{line}");
        }
    }
}
