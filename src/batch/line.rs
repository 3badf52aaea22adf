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
    let (mut text, mut rest) = (String::with_capacity(line.len()), line);
    loop {
        let (plain, from) = rest.split_at(memchr::memchr2(b'"', b'\\', rest.as_bytes())?);
        text.push_str(plain);
        let mut next = from.chars();
        if next.next() == Some('"') {
            return Some((text, next.as_str()));
        }
        text.push(match next.next()? {
            'n' => '\n',
            't' => '\t',
            'r' => '\r',
            same @ ('"' | '\\' | '/') => same,
            _ => return None,
        });
        rest = next.as_str();
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
