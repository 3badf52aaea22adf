//! The most common line of a stream, `{"id": "…", "sides": "…"}`, read without a JSON parser.
//!
//! It reads exactly these two texts in this order, with no escapes except the short ones. Everything else, including
//! every mistake, is left to the parser.

/// The room for an id, which most are much shorter than.
const MOST_OF_AN_ID: usize = 64;

/// The id and the sides of a line; `None` if a JSON parser has to read it.
pub(super) fn id_and_sides(bytes: &[u8]) -> Option<(String, String)> {
    // JSON allows no control character in a text, and a line of a stream has none elsewhere.
    let line = bytes.trim_ascii_end();
    if line.iter().fold(false, |any, byte| any | (*byte < b' ')) {
        return None;
    }
    let rest = after(line, b"{")?;
    let (id, rest) = text(after(after(rest, b"\"id\"")?, b":")?, MOST_OF_AN_ID)?;
    let sides = after(after(after(rest, b",")?, b"\"sides\"")?, b":")?;
    let (sides, rest) = text(sides, sides.len())?;
    after(rest, b"}")?.trim_ascii().is_empty().then_some((id, sides))
}

/// What follows `letters` at the beginning of the line, with or without blanks before them.
fn after<'a>(line: &'a [u8], letters: &[u8]) -> Option<&'a [u8]> {
    line.trim_ascii_start().strip_prefix(letters)
}

/// A quoted text of at most `most` bytes at the beginning, with or without blanks before it, and what follows it.
fn text(line: &[u8], most: usize) -> Option<(String, &[u8])> {
    let line = after(line, b"\"")?;
    // The text is never longer than what it is read from.
    let mut text = vec![0; line.len().min(most)];
    let (mut at, mut count) = (0, 0);
    loop {
        // Between two escapes are only a few letters, so they are copied eight at a time and counted afterward.
        if let Some(eight) = line.get(at..).and_then(<[u8]>::first_chunk::<8>) {
            text.get_mut(count..)?.first_chunk_mut::<8>()?.copy_from_slice(eight);
            let plain = plain_letters(*eight);
            (at, count) = (at + plain, count + plain);
            if plain == eight.len() {
                continue;
            }
        }
        at += 1;
        *text.get_mut(count)? = match *line.get(at - 1)? {
            b'"' => break,
            b'\\' => {
                at += 1;
                match *line.get(at - 1)? {
                    b'n' => b'\n',
                    b't' => b'\t',
                    b'r' => b'\r',
                    same @ (b'"' | b'\\' | b'/') => same,
                    _ => return None,
                }
            }
            plain => plain,
        };
        count += 1;
    }
    text.truncate(count);
    Some((String::from_utf8(text).ok()?, line.get(at..)?))
}

/// How many of these bytes come before the first quotation mark or backslash.
fn plain_letters(bytes: [u8; 8]) -> usize {
    const ONES: u64 = u64::from_le_bytes([1; 8]);
    const HIGHS: u64 = u64::from_le_bytes([0x80; 8]);
    // The lowest high bit left is that of the first byte that is zero.
    let zeros = |bytes: u64| bytes.wrapping_sub(ONES) & !bytes & HIGHS;
    let bytes = u64::from_le_bytes(bytes);
    let marks = zeros(bytes ^ (ONES * u64::from(b'"'))) | zeros(bytes ^ (ONES * u64::from(b'\\')));
    (marks.trailing_zeros() >> 3) as usize
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
    fn plain_letters_end_at_the_first_mark() {
        for (bytes, plain) in [
            (*b"abcdefgh", 8),
            (*b"north 4\"", 7),
            (*b"a\\\"bcdef", 1),
            (*b"\"#!\"\\]\x00\xff", 0),
            (*b"#![]\xa2\xdc\"\\", 6),
        ] {
            assert_eq!(plain_letters(bytes), plain, "{bytes:?}");
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
