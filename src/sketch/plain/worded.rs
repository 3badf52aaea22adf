//! The fast path for the most common lines that begin with a word: `level "Ground floor"`, `garage "Garage" within
//! "House"`, `porch "Porch" start south 5'`, `record 1,877 sq ft`, `account "R-104417"`.
//!
//! Every other line is left to the parser. A test checks that both read such lines the same way.

use rust_decimal::Decimal;

use crate::diagnostic::Span;
use crate::geometry::compass::Direction;
use crate::sketch::MOST_CHARACTERS;
use crate::sketch::plain::Rest;
use crate::sketch::statement::{
    Basis, FigureKind, FigureStatement, Head, HeadLine, Kind, LevelStatement, Measured, Named,
    Place, SpaceStatement, Statement,
};
use crate::units::area::{AreaUnit, WrittenArea};

/// The statement of a line that begins at byte `offset` of the text, and its span; `None` if a parser has to read it.
pub(in crate::sketch) fn statement(line: &str, offset: usize) -> Option<(Statement, Span)> {
    let mut rest = Rest::of(line);
    let start = rest.at;
    let is_blank = |byte: &u8| matches!(byte, b' ' | b'\t');
    if line.len() > MOST_CHARACTERS || !line.as_bytes()[..start].iter().all(is_blank) {
        return None;
    }
    let first = rest.letters();
    if rest.blanks() == 0 {
        return None;
    }
    let mut words = Words { line, offset, rest };
    let statement = words.after(first)?;
    let span = Span::new(offset + start, offset + words.rest.at);
    words.rest.blanks();
    words.rest.next().is_none().then_some((statement, span))
}

/// The words of a line that are left to read.
struct Words<'a> {
    line: &'a str,
    offset: usize,
    rest: Rest<'a>,
}

impl Words<'_> {
    /// What follows the first word.
    fn after(&mut self, first: &[u8]) -> Option<Statement> {
        Some(match first {
            b"level" => {
                let name = self.text()?;
                Statement::Level(LevelStatement { name, below_grade: false, beside: false })
            }
            b"record" => self.figure(FigureKind::Record)?,
            b"listing" => self.figure(FigureKind::Listing)?,
            b"plan" => self.figure(FigureKind::Plan)?,
            b"property" => self.head(HeadLine::Property)?,
            b"address" => self.head(HeadLine::Address)?,
            b"account" => self.head(HeadLine::Account)?,
            b"case" => self.head(HeadLine::Case)?,
            b"front" => self.front()?,
            b"measured" => self.measured()?,
            word => self.space(word)?,
        })
    }

    fn head(&mut self, line: HeadLine) -> Option<Statement> {
        let text = self.text()?.text;
        Some(Statement::Head(Head::Line(line, text).into()))
    }

    fn front(&mut self) -> Option<Statement> {
        let direction = match self.rest.letters() {
            b"north" => Direction::North,
            b"east" => Direction::East,
            b"south" => Direction::South,
            b"west" => Direction::West,
            _ => return None,
        };
        Some(Statement::Head(Head::Front(direction).into()))
    }

    /// A date, by whom and with what.
    fn measured(&mut self) -> Option<Statement> {
        let end = self.rest.at + "2026-03-07".len();
        let date = self.line.get(self.rest.at..end)?;
        let is_like = |(byte, like): (u8, u8)| match like {
            b'-' => byte == b'-',
            _ => byte.is_ascii_digit(),
        };
        if !date.bytes().zip(*b"0000-00-00").all(is_like) {
            return None;
        }
        let date = date.parse().ok()?;
        self.rest.at = end;
        let by = if self.is_followed_by(b"by ") { Some(self.text()?.text) } else { None };
        let with = if self.is_followed_by(b"with ") { Some(self.text()?.text) } else { None };
        Some(Statement::Head(Head::Measured(Measured { date, by, with }).into()))
    }

    fn space(&mut self, word: &[u8]) -> Option<Statement> {
        let kind = *Kind::ALL.iter().find(|kind| kind.word().as_bytes() == word)?;
        let name = self.text()?;
        let within = if self.is_followed_by(b"within ") { Some(self.text()?) } else { None };
        let place = if self.is_followed_by(b"start ") { self.start()? } else { Place::Origin };
        let space = SpaceStatement {
            kind,
            name,
            face: None,
            within,
            place,
            detached: false,
            under: None,
            veneer: None,
            counted: None,
            recorded: None,
        };
        Some(Statement::Space(space.into()))
    }

    /// One or two directions, each with a length.
    fn start(&mut self) -> Option<Place> {
        let mut offsets = Vec::with_capacity(2);
        loop {
            let direction = self.rest.direction()?;
            self.rest.blanks();
            offsets.push((direction, self.rest.length()?));
            let end = self.rest.at;
            if offsets.len() == 2 || self.rest.blanks() == 0 || self.rest.next().is_none() {
                self.rest.at = end;
                return Some(Place::Start(offsets));
            }
        }
    }

    /// An area in square feet, and a title if there is one.
    fn figure(&mut self, kind: FigureKind) -> Option<Statement> {
        let sq_ft = self.whole_number()?;
        self.rest.word(b" sq ft")?;
        // A smaller figure is an error.
        let area = WrittenArea::new(Decimal::from(sq_ft), AreaUnit::SquareFeet)
            .filter(|_| (20..1_000_000_000).contains(&sq_ft))?;
        let end = self.rest.at;
        let title = if self.rest.blanks() > 0 && self.rest.next() == Some(b'"') {
            Some(self.text()?.text)
        } else {
            self.rest.at = end;
            None
        };
        Some(Statement::Figure(
            FigureStatement { kind, area, basis: Basis::default(), title }.into(),
        ))
    }

    /// A whole number, with or without commas between its thousands.
    fn whole_number(&mut self) -> Option<i64> {
        let start = self.rest.at;
        let mut number = self.rest.number(9)?;
        let is_grouped = self.rest.at - start <= 3;
        while self.rest.next() == Some(b',') {
            self.rest.at += 1;
            let group = self.rest.at;
            number = 1_000 * number + self.rest.number(3)?;
            if !is_grouped || self.rest.at - group != 3 || number > 1_000_000_000 {
                return None;
            }
        }
        Some(number)
    }

    /// Whether blanks and then this follow, which are passed if so.
    fn is_followed_by(&mut self, word: &[u8]) -> bool {
        let end = self.rest.at;
        let follows = self.rest.blanks() > 0 && self.rest.word(word).is_some();
        if follows {
            self.rest.blanks();
        } else {
            self.rest.at = end;
        }
        follows
    }

    /// A text between two quotation marks; not an empty one, nor one with letters other than those of ASCII.
    fn text(&mut self) -> Option<Named> {
        let start = self.rest.at;
        let text = self.rest.text(self.line)?.to_owned();
        Some(Named { text, span: Span::new(self.offset + start, self.offset + self.rest.at) })
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::statement;
    use crate::sketch::reader::{Context, read_words};

    #[test]
    fn common_lines_are_read_at_once() {
        for line in [
            "level \"Ground floor\"",
            "  living \"House\" ",
            "garage \"Garage\" within \"House\" start east 41' 3\"",
            "porch  \" Porch \"  start south 5'  east 3.25 m",
            "record 1,877 sq ft",
            "listing 1880 sq ft \"Juniper County record, 2026\"",
            "account \"R-104417\"",
            "front south",
            "measured 2026-04-18 by \"the owner\" with \"tape\" ",
            "measured 2026-04-18",
        ] {
            assert!(statement(line, 0).is_some(), "{line}");
        }
    }

    fn is_read_the_same(line: &str) -> Result<(), TestCaseError> {
        let Some((once, span)) = statement(line, 0) else { return Ok(()) };
        let (mut faults, mut tokens) = (Vec::new(), Vec::new());
        let words = read_words(line, line, 0, &mut Context::default(), &mut tokens, &mut faults);
        prop_assert_eq!(format!("{:?}", Some(once)), format!("{:?}", words.statement));
        prop_assert_eq!(span, words.span);
        prop_assert!(faults.is_empty() && words.comment.is_none());
        Ok(())
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20_000))]

        /// A line read by the fast path is read the same by the parser.
        #[test]
        fn read_at_once_is_read_word_by_word(
            line in "[ ]{0,2}(level|living|garage|low|stair|property|case|record|plan|listing)[ ]{0,2}(\"[a-c #,'1]{0,3}\"|[0-9,]{1,9}|[1-9],[0-9]{3}|[12]?[0-9])[ ]{0,2}(sq ft|sq m|within|start)?[ ]{0,2}(\"[a-c #,'1é]{0,3}\"?)?[ ]{0,2}(start|east|within|#)?[ ]{0,2}((west|east|n)?[ ]{0,2}[0-9]{0,2}('|m|\"| m)?[ ]{0,2}){0,3}"
        ) {
            is_read_the_same(&line)?;
        }

        /// The same for lines at the top of a file.
        #[test]
        fn a_date_or_a_front_is_read_word_by_word(
            line in "[ ]{0,2}(measured|front)[ ]{0,2}(north|n|west|2026|[12][0-9]{3}-[01][0-9]-[0-3][0-9])[ ]{0,2}(by|with|2)?[ ]{0,2}(\"[a-c #']{0,3}\"?)?[ ]{0,2}(with|by)?[ ]{0,2}(\"[a-c]{0,2}\")?"
        ) {
            is_read_the_same(&line)?;
        }
    }
}
