//! A fast path for the most common line, a direction with a length and nothing else but its length on the record and a
//! note.
//!
//! Every other line is left to the parser. A test checks that both read such lines the same way.

#![expect(
    clippy::integer_division,
    reason = "a foot and a meter are whole multiples of what four decimals show"
)]

pub(super) mod worded;

use crate::diagnostic::Span;
use crate::geometry::compass::Direction;
use crate::sketch::statement::{Run, Said, SideWords};
use crate::sketch::tree::{Side, evened_out};
use crate::units::length::{Form, Length, WrittenLength};

/// Adds a side such as `north 42' 7"` to these sides, if the first of these lines contains nothing else, and returns how
/// many bytes that line has. The lines begin at byte `offset` of the text.
#[inline(always)]
pub(super) fn side(lines: &str, offset: usize, sides: &mut Vec<Side>) -> Option<usize> {
    let bytes = lines.as_bytes();
    let start = bytes.iter().position(|byte| !matches!(byte, b' ' | b'\t' | b'\r' | b'\x0c'))?;
    let mut rest = Rest { bytes, at: start, is_even: true };
    let direction = rest.direction()?;
    rest.is_even = rest.blanks() == 1;
    let length = rest.length()?;
    let (text, is_even) = (lines.get(start..rest.at)?, rest.is_even);
    let span = Span::new(offset + start, offset + rest.at);
    let (words, end) = match rest.line_end() {
        Some(end) => (SideWords::default(), rest.at + end),
        None => (rest.words(lines)?, rest.at + rest.line_end()?),
    };
    let typed = if is_even { text.into() } else { evened_out(text) };
    if sides.is_empty() {
        // Enough for most walks, and less than 1 KB, beyond which the allocator takes longer.
        sides.reserve(12);
    }
    sides.push(Side::new(sides.len(), Run::Straight(direction, length), words, span, typed));
    Some(end)
}

/// The rest of a line, or of several.
struct Rest<'a> {
    bytes: &'a [u8],
    at: usize,
    /// Whether no two spaces in a row have been found.
    is_even: bool,
}

impl<'a> Rest<'a> {
    /// The line after its first blanks.
    fn of(line: &str) -> Rest<'_> {
        let blanks = line.len() - line.trim_ascii_start().len();
        Rest { bytes: line.as_bytes(), at: blanks, is_even: true }
    }

    /// How many bytes end the line here; `None` if something else comes next.
    #[inline]
    fn line_end(&self) -> Option<usize> {
        match self.bytes[self.at..] {
            [] => Some(0),
            [b'\n', ..] | [b'\r'] => Some(1),
            [b'\r', b'\n', ..] => Some(2),
            _ => None,
        }
    }

    /// The words after a side: a length of the record, a note, both or none.
    fn words(&mut self, line: &str) -> Option<SideWords> {
        let (mut recorded, mut note) = (None, None);
        if self.blanks() > 0 && self.line_end().is_none() {
            if self.word(b"recorded ").is_some() {
                self.blanks();
                recorded = Some(self.length()?);
            }
            if recorded.is_none() || self.blanks() > 0 && self.line_end().is_none() {
                self.word(b"note ")?;
                self.blanks();
                note = Some(self.text(line)?.to_owned());
            }
            self.blanks();
        }
        Some(Said { recorded, note, ..Said::default() }.into())
    }

    /// The lower-case letters that come next.
    fn letters(&mut self) -> &'a [u8] {
        let start = self.at;
        while self.next().is_some_and(|next| next.is_ascii_lowercase()) {
            self.at += 1;
        }
        &self.bytes[start..self.at]
    }

    /// A quoted text, without blanks at its ends, if it is followed by a blank or the end of the line. Not an empty text,
    /// nor one with anything but the plain characters of ASCII.
    fn text<'l>(&mut self, line: &'l str) -> Option<&'l str> {
        self.mark(b'"')?;
        let rest = &self.bytes[self.at..];
        let end = rest.iter().position(|byte| *byte == b'"' || !matches!(byte, b' '..=b'~'))?;
        let text = line.get(self.at..self.at + end)?;
        // `"Deck start north 30' 4"` ends at an inch mark.
        if text.ends_with(|last: char| last.is_ascii_digit()) && text.contains(" start ") {
            return None;
        }
        let text = text.trim_ascii();
        self.at += end;
        self.mark(b'"')?;
        let is_followed = self.next() == Some(b' ') || self.line_end().is_some();
        (!text.is_empty() && is_followed).then_some(text)
    }

    fn next(&self) -> Option<u8> {
        self.bytes.get(self.at).copied()
    }

    /// Skips spaces and returns how many there were.
    fn blanks(&mut self) -> usize {
        let start = self.at;
        while self.next() == Some(b' ') {
            self.at += 1;
        }
        self.at - start
    }

    fn mark(&mut self, mark: u8) -> Option<()> {
        (self.next() == Some(mark)).then(|| self.at += 1)
    }

    #[inline(always)]
    fn word(&mut self, word: &[u8]) -> Option<()> {
        self.bytes[self.at..].starts_with(word).then(|| self.at += word.len())
    }

    /// A length with its unit: `42'`, `42' 7"`, `42' 7 1/2"`, `42.6'`, `12.98 m`.
    fn length(&mut self) -> Option<WrittenLength> {
        let whole = self.number(4)?;
        let (nm, form) = match self.next()? {
            b'\'' => {
                self.at += 1;
                (whole * Length::FOOT.nm() + self.inches()?, Form::FeetAndInches)
            }
            b'.' => self.decimals(whole)?,
            _ => return None,
        };
        let is_a_length = 0 < nm && nm <= Length::LONGEST_SIDE.nm();
        is_a_length.then(|| WrittenLength::new(Length::from_nm(nm), form))
    }

    /// Inches after the feet, with a fraction or without, in nanometers; 0 if no digit follows.
    fn inches(&mut self) -> Option<i64> {
        let (end, is_even) = (self.at, self.is_even);
        self.is_even &= self.blanks() <= 1;
        if !self.next().is_some_and(|next| next.is_ascii_digit()) {
            (self.at, self.is_even) = (end, is_even);
            return Some(0);
        }
        let first = self.number(2)?;
        match self.next()? {
            b'"' => {
                self.at += 1;
                (first < 12).then(|| first * Length::INCH.nm())
            }
            b'/' => self.fraction(first),
            b' ' if first < 12 => {
                self.is_even &= self.blanks() == 1;
                let top = self.number(2)?;
                Some(first * Length::INCH.nm() + self.fraction(top)?)
            }
            _ => None,
        }
    }

    /// The denominator and the inch mark after a numerator, in nanometers; the fractions that a tape shows.
    fn fraction(&mut self, top: i64) -> Option<i64> {
        self.mark(b'/')?;
        let bottom = self.number(2)?;
        self.mark(b'"')?;
        let shift = [2, 4, 8, 16, 32, 64].iter().position(|&shown| shown == bottom)? + 1;
        (top < bottom).then(|| top * (Length::INCH.nm() >> shift))
    }

    /// Up to four decimals after the whole feet or meters, and the unit.
    fn decimals(&mut self, whole: i64) -> Option<(i64, Form)> {
        self.mark(b'.')?;
        let start = self.at;
        let digits = self.number(4)?;
        let count = self.at - start;
        let (unit, form) = if self.next() == Some(b'\'') {
            (Length::FOOT.nm(), if digits == 0 { Form::FeetAndInches } else { Form::DecimalFeet })
        } else {
            self.is_even &= self.blanks() <= 1;
            (self.next() == Some(b'm')).then_some((Length::METER.nm(), Form::Meters))?
        };
        self.at += 1;
        // Both units are whole multiples of 10,000 nanometers.
        let grain = [1_000, 100, 10, 1].get(count.checked_sub(1)?)? * (unit / 10_000);
        Some((whole * unit + digits * grain, form))
    }

    /// A direction in full or its first letter, followed by a space.
    #[inline]
    fn direction(&mut self) -> Option<Direction> {
        let first = self.next()?;
        self.at += 1;
        // Each is compared with letters that the compiler knows, which needs no call.
        let (direction, _) = match first {
            b'n' => (Direction::North, self.word(b"orth")),
            b'e' => (Direction::East, self.word(b"ast")),
            b's' => (Direction::South, self.word(b"outh")),
            b'w' => (Direction::West, self.word(b"est")),
            _ => return None,
        };
        (self.next() == Some(b' ')).then_some(direction)
    }

    /// A number of at most `most` digits.
    fn number(&mut self, most: usize) -> Option<i64> {
        let start = self.at;
        let mut number = 0;
        while let Some(digit @ b'0'..=b'9') = self.next() {
            number = 10 * number + i64::from(digit - b'0');
            self.at += 1;
            if self.at - start > most {
                return None;
            }
        }
        (self.at > start).then_some(number)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::side;
    use crate::sketch::reader::{Context, read_words};
    use crate::sketch::statement::Statement;

    #[test]
    fn ordinary_sides_are_read_at_once() {
        for line in [
            "north 42' 7\"",
            "  e 9'",
            "south 100' 11\" ",
            "w  3'  2\"",
            "north 42' 7 1/2\"",
            "east 4' 5/8\"",
            "south 42.6'",
            "west 42.0'",
            "north 12.98 m",
            "e 0.5m",
            "north 42' recorded 43'",
            "north 42' 7\"  recorded 42.5' ",
            "e 0.5m recorded 2'",
            "north 42' note \"behind the shed\"",
            "north 42' recorded 43' note \" 1 \" ",
        ] {
            assert!(side(line, 0, &mut Vec::new()).is_some(), "{line}");
        }
    }

    #[test]
    fn a_side_ends_with_its_line() {
        for (lines, bytes) in [
            ("north 9'\neast 8'", Some(9)),
            ("north 9' \r\neast 8'", Some(11)),
            ("north 9' note \"a\"\n\n", Some(18)),
            ("north 9'\r", Some(9)),
            ("north 9'\r\r\n", None),
            ("\nnorth 9'", None),
            ("north\n9'", None),
            ("north 9' note \"a\n\"", None),
        ] {
            assert_eq!(side(lines, 0, &mut Vec::new()), bytes, "{lines}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20_000))]

        /// A line read by the fast path is read the same by the parser.
        #[test]
        fn read_at_once_is_read_word_by_word(
            line in "[ \t]{0,2}(north|east|south|west|n|e|s|w|wes|northeast)[ \t]{0,3}[0-9]{0,5}(\\.[0-9]{0,5})?['′m]?[ \t]{0,2}(m|[0-9]{1,3}[\"″']?)?[ \t]{0,2}([0-9]{1,2}/(2|3|4|8|16|32|64|128|0)[\"″']?)?[ \t]{0,2}(recorded?[ \t]{0,2}[0-9]{1,5}(\\.[0-9]{1,3})?['m]?[ ]?([0-9]{1,2}[\"']?)?[ ]?)?(note)?[ \t]{0,2}(\"[a-c '#é]{0,4}\"?)?[ ]?"
        ) {
            let mut once = Vec::new();
            let bytes = side(&line, 0, &mut once);
            let Some(once) = once.pop() else {
                return Ok(());
            };
            prop_assert_eq!(bytes, Some(line.len()));
            let (mut faults, mut tokens) = (Vec::new(), Vec::new());
            let words = read_words(&line, &line, 0, &mut Context::default(), &mut tokens, &mut faults);
            prop_assert_eq!(Some(Statement::Side(once.run, once.words)), words.statement);
            prop_assert_eq!((once.span, once.typed), (words.span, words.typed));
            prop_assert!(faults.is_empty());
        }
    }
}
