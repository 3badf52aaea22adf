//! The most common line of a stream, `{"id": "…", "sides": "…"}`, read without a JSON parser.
//!
//! It reads exactly these two texts in this order, with no escapes except the short ones. Everything else, including
//! every mistake, is left to the parser.

/// The id and the sides of a line; `None` if a JSON parser has to read it.
pub(super) fn id_and_sides(bytes: &[u8]) -> Option<(String, String)> {
    // JSON allows no control character in a text, and a line of a stream has none elsewhere.
    let line = std::str::from_utf8(bytes.trim_ascii_end()).ok()?;
    if line.bytes().fold(false, |any, byte| any | (byte < b' ')) {
        return None;
    }
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
    // Byte by byte: between two escapes are only a few letters.
    let mut text = Vec::with_capacity(line.len());
    let mut bytes = line.as_bytes().iter();
    loop {
        text.push(match *bytes.next()? {
            b'"' => break,
            b'\\' => match *bytes.next()? {
                b'n' => b'\n',
                b't' => b'\t',
                b'r' => b'\r',
                same @ (b'"' | b'\\' | b'/') => same,
                _ => return None,
            },
            plain => plain,
        });
    }
    let rest = line.get(line.len() - bytes.len()..)?;
    Some((String::from_utf8(text).ok()?, rest))
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
