//! How a file differs from the one regenerated from its sides: help for anyone who investigates, not part of the
//! answer.

use std::borrow::Cow;

use serde::Serialize;

/// The most differing lines that are listed.
pub const MOST_DIFFERENCES: usize = 20;
/// The most characters of a line that are shown.
const MOST_CHARACTERS: usize = 160;

/// A line of a page that differs.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Difference {
    /// Its line number, from 1.
    pub line: usize,
    /// The line in the file, shortened if long; empty if the file has no such line.
    pub found: String,
    /// The line as the program writes it, shortened if long; empty if the program writes no such line.
    pub made: String,
}

/// The file with LF instead of CR LF, if every line ends in CR LF; otherwise `None`.
pub(super) fn with_plain_line_ends(bytes: &[u8]) -> Option<Vec<u8>> {
    let is_after_return = |at: usize| at > 0 && bytes[at - 1] == b'\r';
    let mut ends = memchr::memchr_iter(b'\n', bytes).peekable();
    ends.peek()?;
    ends.all(is_after_return).then(|| without_returns(bytes).into_owned())
}

/// Whether two files differ only in carriage returns before line feeds.
pub(super) fn differ_in_line_ends_alone(one: &[u8], other: &[u8]) -> bool {
    without_returns(one) == without_returns(other)
}

/// The file without carriage returns before line feeds.
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

/// The lines of a page that differ, up to the limit, and how many there are. Common lines at the start and end are
/// skipped; the lines between are compared one by one.
pub(super) fn lines(found: &[u8], made: &[u8]) -> (Vec<Difference>, usize) {
    let split = |bytes| -> Vec<&[u8]> { <[u8]>::split(bytes, |&byte| byte == b'\n').collect() };
    let (found, made) = (split(found), split(made));
    let first = found.iter().zip(&made).take_while(|(one, other)| one == other).count();
    let (found, made) = (&found[first..], &made[first..]);
    let last =
        found.iter().rev().zip(made.iter().rev()).take_while(|(one, other)| one == other).count();
    let (found, made) = (&found[..found.len() - last], &made[..made.len() - last]);
    let mut all = 0;
    let mut listed = Vec::new();
    for i in 0..found.len().max(made.len()) {
        let (here, there) = (found.get(i), made.get(i));
        if here == there {
            continue;
        }
        all += 1;
        if listed.len() < MOST_DIFFERENCES {
            let (found, made) = (shown(here), shown(there));
            listed.push(Difference { line: first + i + 1, found, made });
        }
    }
    (listed, all)
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
    fn line_ends_are_restored_only_if_all_were_changed() {
        assert_eq!(with_plain_line_ends(b"a\r\nb\r\n"), Some(b"a\nb\n".to_vec()));
        assert_eq!(with_plain_line_ends(b"a\r\nb\n"), None);
        assert_eq!(with_plain_line_ends(b"a"), None);
        assert!(differ_in_line_ends_alone(b"a\r\nb\r\n", b"a\nb\r\n"));
        assert!(!differ_in_line_ends_alone(b"a\rb\n", b"ab\n"));
    }

    #[test]
    fn differing_lines_are_listed_with_their_numbers() {
        let (listed, all) = lines(b"a\nx\nc\ny\nz\n", b"a\nb\nc\nd\nz\n");
        assert_eq!(all, 2);
        assert_eq!(
            (listed[0].line, listed[0].found.as_str(), listed[0].made.as_str()),
            (2, "x", "b")
        );
        assert_eq!(listed[1].line, 4);
        let (listed, all) = lines(b"a\nz\n", b"a\nb\nz\n");
        assert_eq!((all, listed[0].found.as_str(), listed[0].made.as_str()), (1, "", "b"));
        let (listed, all) = lines(&b"x\n".repeat(50), &b"y\n".repeat(50));
        assert_eq!((listed.len(), all), (MOST_DIFFERENCES, 50));
    }
}
