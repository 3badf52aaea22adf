//! A fast path for the most common line, a direction with feet and whole inches.
//!
//! Every other line is left to the parser. A test checks that both read such lines the same.

use std::ops::Range;

use crate::diagnostic::Span;
use crate::geometry::compass::Direction;
use crate::sketch::statement::{Run, SideWords};
use crate::sketch::tree::{SideSketch, evened_out};
use crate::units::length::{Form, Length, Written};

/// A side such as `north 42' 7"`.
pub(super) struct PlainSide {
    direction: Direction,
    length: Written,
    /// Its position in the line.
    place: Range<usize>,
    /// There are single spaces between its words.
    is_even: bool,
}

impl PlainSide {
    /// The side as read from `line`, which begins at byte `offset` of the text.
    pub(super) fn read(self, line: &str, offset: usize) -> SideSketch {
        let span = Span::new(offset + self.place.start, offset + self.place.end);
        let text = &line[self.place];
        SideSketch {
            run: Run::Straight(self.direction, self.length),
            words: SideWords::default(),
            span,
            typed: if self.is_even { text.into() } else { evened_out(text) },
        }
    }
}

/// The side, if the line contains nothing else; otherwise `None`.
pub(super) fn side(line: &str) -> Option<PlainSide> {
    let start = line.len() - line.trim_ascii_start().len();
    let mut rest = Rest { bytes: line.as_bytes(), at: start };
    let direction = rest.direction()?;
    let mut is_even = rest.blanks() == 1;
    let feet = rest.number(4)?;
    rest.mark(b'\'')?;
    let mut end = rest.at;
    let blanks = rest.blanks();
    let mut nm = feet * Length::FOOT.nm();
    if rest.next().is_some() {
        let inches = rest.number(2).filter(|&inches| inches < 12)?;
        rest.mark(b'"')?;
        nm += inches * Length::INCH.nm();
        end = rest.at;
        is_even &= blanks <= 1;
        rest.blanks();
    }
    let is_a_length = 0 < nm && nm <= Length::LONGEST_SIDE.nm();
    (rest.next().is_none() && is_a_length).then(|| PlainSide {
        direction,
        length: Written::new(Length::from_nm(nm), Form::FeetAndInches),
        place: start..end,
        is_even,
    })
}

/// The rest of a line.
struct Rest<'a> {
    bytes: &'a [u8],
    at: usize,
}

impl Rest<'_> {
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

    /// A direction in full or its first letter, followed by a space.
    fn direction(&mut self) -> Option<Direction> {
        const ALL: [Direction; 4] =
            [Direction::North, Direction::East, Direction::South, Direction::West];
        let first = self.next()?;
        let direction = ALL.into_iter().find(|one| one.word().as_bytes()[0] == first)?;
        let word = direction.word().as_bytes();
        let length = if self.bytes[self.at..].starts_with(word) { word.len() } else { 1 };
        self.at += length;
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
        for line in ["north 42' 7\"", "  e 9'", "south 100' 11\" ", "w  3'  2\""] {
            assert!(side(line).is_some(), "{line}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20_000))]

        /// A line read by the fast path reads the same as by the parser.
        #[test]
        fn read_at_once_is_read_word_by_word(
            line in "[ \t]{0,2}(north|east|south|west|n|e|s|w|wes|northeast)[ \t]{0,3}[0-9]{0,5}['′]?[ \t]{0,2}([0-9]{1,3}[\"″']?)?[ \t]{0,2}"
        ) {
            let Some(once) = side(&line).map(|side| side.read(&line, 0)) else {
                return Ok(());
            };
            let (mut faults, mut tokens) = (Vec::new(), Vec::new());
            let words = read_words(&line, &line, 0, &mut Context::default(), &mut tokens, &mut faults);
            prop_assert_eq!(Some(Statement::Side(once.run, once.words)), words.statement);
            prop_assert_eq!((once.span, once.typed), (words.span, words.typed));
            prop_assert!(faults.is_empty());
        }
    }
}
