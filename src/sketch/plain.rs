//! The commonest line by far, a direction with feet and whole inches, read at once and not word by word.
//!
//! What it does not know for certain it leaves to the words. The test holds the two against each other.

use std::ops::Range;

use crate::length::{Form, Length, Written};
use crate::sketch::Direction;

/// A side such as `north 42' 7"`: which way, how long, and where in the line it stands; none for any other line.
pub(super) fn side(line: &str) -> Option<(Direction, Written, Range<usize>)> {
    let start = line.len() - line.trim_ascii_start().len();
    let mut rest = Rest { bytes: line.as_bytes(), at: start };
    let direction = rest.direction()?;
    let feet = rest.number(4)?;
    rest.mark(b'\'')?;
    let mut end = rest.at;
    rest.blanks();
    let mut nm = feet * Length::FOOT.nm();
    if rest.next().is_some() {
        let inches = rest.number(2).filter(|&inches| inches < 12)?;
        rest.mark(b'"')?;
        nm += inches * Length::INCH.nm();
        end = rest.at;
        rest.blanks();
    }
    let is_a_length = 0 < nm && nm <= Length::LONGEST_SIDE.nm();
    (rest.next().is_none() && is_a_length)
        .then(|| (direction, Written::new(Length::from_nm(nm), Form::FeetAndInches), start..end))
}

/// What is left of a line.
struct Rest<'a> {
    bytes: &'a [u8],
    at: usize,
}

impl Rest<'_> {
    fn next(&self) -> Option<u8> {
        self.bytes.get(self.at).copied()
    }

    fn blanks(&mut self) {
        while self.next() == Some(b' ') {
            self.at += 1;
        }
    }

    fn mark(&mut self, mark: u8) -> Option<()> {
        (self.next() == Some(mark)).then(|| self.at += 1)
    }

    /// A direction in full or its letter, and the blanks after it.
    fn direction(&mut self) -> Option<Direction> {
        const ALL: [Direction; 4] =
            [Direction::North, Direction::East, Direction::South, Direction::West];
        let first = self.next()?;
        let direction = ALL.into_iter().find(|one| one.word().as_bytes()[0] == first)?;
        let word = direction.word().as_bytes();
        let length = if self.bytes[self.at..].starts_with(word) { word.len() } else { 1 };
        self.at += length;
        self.mark(b' ')?;
        self.blanks();
        Some(direction)
    }

    /// At most so many digits.
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

    use crate::sketch::{Context, read_line, read_words};

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20_000))]

        /// A line read at once says what its words say.
        #[test]
        fn read_at_once_is_read_word_by_word(
            line in "[ \t]{0,2}(north|east|south|west|n|e|s|w|wes|northeast)[ \t]{0,3}[0-9]{0,5}['′]?[ \t]{0,2}([0-9]{1,3}[\"″']?)?[ \t]{0,2}"
        ) {
            let mut faults = [Vec::new(), Vec::new()];
            let mut tokens = Vec::new();
            let once = read_line(&line, &line, 0, &mut Context::default(), &mut tokens, &mut faults[0]);
            tokens.clear();
            let words = read_words(&line, &line, 0, &mut Context::default(), &mut tokens, &mut faults[1]);
            prop_assert_eq!(&once.statement, &words.statement);
            prop_assert_eq!((once.span, &once.typed), (words.span, &words.typed));
            prop_assert_eq!(once.faulty, words.faulty);
            prop_assert_eq!(faults[0].len(), faults[1].len());
        }
    }
}
