//! What differs between a file and the one made anew: a help for whoever looks into it, never the answer.

use std::borrow::Cow;

use serde::Serialize;

/// The most lines that are told.
pub const MOST_DIFFERENCES: usize = 20;
/// The most characters of a line that are told.
const MOST_CHARACTERS: usize = 160;

/// A line of a page that differs.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Difference {
    /// Its number in the file, from 1.
    pub line: usize,
    /// What stands there, cut where it is long; empty where nothing does.
    pub found: String,
    /// What the program writes there, cut where it is long; empty where it writes nothing.
    pub made: String,
}

/// The file with LF for CR LF, if every line of it ends in CR LF; none for any other.
pub(super) fn with_plain_line_ends(bytes: &[u8]) -> Option<Vec<u8>> {
    let is_after_return = |at: usize| at > 0 && bytes[at - 1] == b'\r';
    let mut ends = memchr::memchr_iter(b'\n', bytes).peekable();
    ends.peek()?;
    ends.all(is_after_return).then(|| without_returns(bytes).into_owned())
}

/// Whether two files are the same but for returns before a line's end.
pub(super) fn differ_in_line_ends_alone(one: &[u8], other: &[u8]) -> bool {
    without_returns(one) == without_returns(other)
}

/// A file without the returns that stand right before a line's end.
fn without_returns(bytes: &[u8]) -> Cow<'_, [u8]> {
    if memchr::memmem::find(bytes, b"\r\n").is_none() {
        return Cow::Borrowed(bytes);
    }
    let mut plain = Vec::with_capacity(bytes.len());
    let mut from = 0;
    for at in memchr::memmem::find_iter(bytes, b"\r\n") {
        plain.extend_from_slice(&bytes[from..at]);
        from = at + 1;
    }
    plain.extend_from_slice(&bytes[from..]);
    Cow::Owned(plain)
}

/// The lines of a page that differ, as far as they are told, and how many there are. Between what is the same at the start
/// and what is the same at the end, line is held against line.
pub(super) fn lines(found: &[u8], made: &[u8]) -> (Vec<Difference>, usize) {
    let split = |bytes| -> Vec<&[u8]> { <[u8]>::split(bytes, |&byte| byte == b'\n').collect() };
    let (found, made) = (split(found), split(made));
    let first = found.iter().zip(&made).take_while(|(one, other)| one == other).count();
    let (found, made) = (&found[first..], &made[first..]);
    let last =
        found.iter().rev().zip(made.iter().rev()).take_while(|(one, other)| one == other).count();
    let (found, made) = (&found[..found.len() - last], &made[..made.len() - last]);
    let mut all = 0;
    let mut told = Vec::new();
    for i in 0..found.len().max(made.len()) {
        let (here, there) = (found.get(i), made.get(i));
        if here == there {
            continue;
        }
        all += 1;
        if told.len() < MOST_DIFFERENCES {
            let (found, made) = (shown(here), shown(there));
            told.push(Difference { line: first + i + 1, found, made });
        }
    }
    (told, all)
}

/// The start of a line, as text.
fn shown(line: Option<&&[u8]>) -> String {
    let line = line.copied().unwrap_or_default();
    let start = &line[..line.len().min(4 * MOST_CHARACTERS)];
    let text = String::from_utf8_lossy(start);
    let mut shown: String = text.chars().take(MOST_CHARACTERS).collect();
    if shown.len() < line.len() {
        shown.push('…');
    }
    shown
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn line_ends_are_undone_only_where_every_one_was_changed() {
        assert_eq!(with_plain_line_ends(b"a\r\nb\r\n"), Some(b"a\nb\n".to_vec()));
        assert_eq!(with_plain_line_ends(b"a\r\nb\n"), None);
        assert_eq!(with_plain_line_ends(b"a"), None);
        assert!(differ_in_line_ends_alone(b"a\r\nb\r\n", b"a\nb\r\n"));
        assert!(!differ_in_line_ends_alone(b"a\rb\n", b"ab\n"));
    }

    #[test]
    fn lines_that_differ_are_told_with_their_numbers() {
        let (told, all) = lines(b"a\nx\nc\ny\nz\n", b"a\nb\nc\nd\nz\n");
        assert_eq!(all, 2);
        assert_eq!((told[0].line, told[0].found.as_str(), told[0].made.as_str()), (2, "x", "b"));
        assert_eq!(told[1].line, 4);
        let (told, all) = lines(b"a\nz\n", b"a\nb\nz\n");
        assert_eq!((all, told[0].found.as_str(), told[0].made.as_str()), (1, "", "b"));
        let (told, all) = lines(&b"x\n".repeat(50), &b"y\n".repeat(50));
        assert_eq!((told.len(), all), (MOST_DIFFERENCES, 50));
    }
}
