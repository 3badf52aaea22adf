//! Reads lengths, areas, bearings and dates from tokens.

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::error::Error;
use crate::geometry::compass::Direction;
use crate::sketch::cursor::{Cursor, Read};
use crate::sketch::lexer::{Token, lex};
use crate::sketch::statement::{Bearing, Unit};
use crate::units::area::{Area, AreaUnit, WrittenArea};
use crate::units::length::{Form, Length, WrittenLength};

const LENGTH_HELP: &str =
    "write feet and inches as `42' 7 1/2\"`, tenths as `42.6'`, meters as `12.98 m`";
const AREA_HELP: &str = "write the unit too: `2,031 sq ft`, `188.7 sq m` or `0.25 acres`";
const BEARING_HELP: &str = "write it as `N 45° 30' E` or `S 12.5° W`: from north or south, 0 to 90 degrees toward east or west";

/// The largest area that can be typed, in square feet: far larger than any lot, and small enough that sums cannot
/// overflow.
const LARGEST_AREA: i128 = 1_000_000_000_000;

impl std::str::FromStr for Length {
    type Err = Error;

    /// Reads a length in any accepted spelling; a number without a unit is in feet.
    ///
    /// # Errors
    ///
    /// [`Error::Length`] if it is not a length, with what is wrong and how to write it.
    fn from_str(text: &str) -> Result<Length, Error> {
        let mut faults = Vec::new();
        let mut tokens = Vec::new();
        let line = lex(text, 0, &mut tokens, &mut faults);
        let mut cursor = Cursor::new(&tokens, text, Unit::Feet, &mut faults);
        let read = cursor.expect_length("a length").and_then(|written| {
            cursor.expect_end()?;
            Ok(written.length())
        });
        match read {
            Ok(length) if !line.faulty => Ok(length),
            _ => {
                let first = faults.first();
                let message = first.map_or_else(String::new, |fault| fault.message().to_owned());
                let help = first.and_then(|fault| fault.helps().first()).cloned();
                Err(Error::Length { message, help: help.unwrap_or_else(|| LENGTH_HELP.to_owned()) })
            }
        }
    }
}

/// The unit given by a mark or word after a number.
#[derive(Clone, Copy, PartialEq)]
enum Mark {
    Feet,
    Inches,
    Metric(Form),
}

impl Cursor<'_> {
    fn bad_length<T>(&mut self, start: Span, message: impl Into<String>, help: &str) -> Read<T> {
        let span = self.since(start);
        self.fault(Diagnostic::new(Word::BadLength, span, message).help(help))
    }

    /// An offset from the origin: a length, or zero.
    pub(crate) fn expect_offset(&mut self, what: &str) -> Read<WrittenLength> {
        let is_zero = |digits: &str| digits.bytes().all(|byte| matches!(byte, b'0' | b'.'));
        if let Some(Token::Number(digits)) = self.peek()
            && is_zero(digits)
            && !matches!(self.peek_at(1), Some(Token::Number(_)))
        {
            return self.length_parts(what);
        }
        self.expect_length(what)
    }

    /// A length above 0 and at most 10,000 ft.
    pub(crate) fn expect_length(&mut self, what: &str) -> Read<WrittenLength> {
        let start = self.span();
        if self.accept(&Token::Dash) && matches!(self.peek(), Some(Token::Number(_))) {
            self.advance();
            return self.bad_length(
                start,
                "a length has no sign",
                "leave the sign out; a wall walked the other way has the other direction: `east` for `west`",
            );
        }
        let written = self.length_parts(what)?;
        if written.length() <= Length::ZERO {
            return self.bad_length(
                start,
                "a length has to be over 0",
                "write the length, or leave out what is not there",
            );
        }
        if written.length() > Length::LONGEST_SIDE {
            return self.bad_length(
                start,
                "a length is at most 10,000 ft",
                "is a mark missing, so that inches were read as feet?",
            );
        }
        Ok(written)
    }

    fn length_parts(&mut self, what: &str) -> Read<WrittenLength> {
        let start = self.span();
        if let Some(Token::Fraction(..)) = self.peek() {
            return self.inches_only(start);
        }
        let Some(Token::Number(digits)) = self.peek() else {
            return self.unexpected(what, LENGTH_HELP);
        };
        let digits = *digits;
        self.advance();
        let first = self.length_number(start, digits)?;
        match self.accept_mark() {
            Some(Mark::Feet) => self.after_feet(start, first),
            Some(Mark::Inches) => self.in_unit(start, first, Form::FeetAndInches),
            Some(Mark::Metric(form)) => self.in_unit(start, first, form),
            None => self.without_mark(start, first),
        }
    }

    /// A number that has no unit yet: the whole inches of `4 5/8"`, the numerator of `1/2"`, or a number without any
    /// unit.
    fn without_mark(&mut self, start: Span, first: Decimal) -> Read<WrittenLength> {
        if self.fraction_follows() || self.peek() == Some(&Token::Slash) {
            return self.mixed_inches(start, first);
        }
        if matches!(self.peek(), Some(Token::Number(_)))
            || self.peek() == Some(&Token::Dash)
                && matches!(self.peek_at(1), Some(Token::Number(_)))
        {
            let _ = self.accept(&Token::Dash);
            self.advance();
            return self.bad_length(start, "two numbers and no unit between them", LENGTH_HELP);
        }
        if matches!(self.peek(), Some(Token::Degree)) {
            self.advance();
            return self.bad_length(start, "a length has no degrees", LENGTH_HELP);
        }
        let span = self.since(start);
        self.first_bare.get_or_insert(span);
        let form = match self.units {
            Unit::Feet => return self.decimal_feet(start, first),
            Unit::Inches => Form::FeetAndInches,
            Unit::Meters => Form::Meters,
            Unit::Centimeters => Form::Centimeters,
            Unit::Millimeters => Form::Millimeters,
        };
        self.in_unit(start, first, form)
    }

    /// Whether a fraction of an inch is next: `5/8`, `-5/8` or `½`.
    fn fraction_follows(&self) -> bool {
        let dash = usize::from(self.peek() == Some(&Token::Dash));
        match self.peek_at(dash) {
            Some(Token::Fraction(..)) => true,
            Some(Token::Number(_)) => self.peek_at(dash + 1) == Some(&Token::Slash),
            _ => false,
        }
    }

    /// What may follow `42'`: nothing, or inches with their mark.
    fn after_feet(&mut self, start: Span, feet: Decimal) -> Read<WrittenLength> {
        let dash = self.peek() == Some(&Token::Dash);
        let next = self.peek_at(usize::from(dash));
        if !matches!(next, Some(Token::Number(_) | Token::Fraction(..))) {
            return self.decimal_feet(start, feet);
        }
        let _ = self.accept(&Token::Dash);
        if !feet.fract().is_zero() {
            self.advance();
            let help = format!(
                "look at your notes: decimals of a foot stand alone, as `{feet}'`; inches come after whole feet, as `42' 7\"`"
            );
            return self.bad_length(start, "decimals of a foot and inches together", &help);
        }
        let feet = self.in_unit(start, feet, Form::DecimalFeet)?;
        if let Some(Token::Number(digits)) = self.peek()
            && digits.starts_with('.')
        {
            // `40'.2"` may be 40' 2", 40.2' or 40' 0.2".
            let touches = self.span().start == self.since(start).end;
            let is_part =
                matches!(*digits, ".5" | ".25" | ".75" | ".125" | ".375" | ".625" | ".875");
            if touches || !is_part {
                self.advance();
                let _ = self.accept_mark();
                return self.bad_length(
                    start,
                    "a point stands between feet and inches",
                    "write feet and inches as `42' 7\"`, tenths of a foot as `42.7'`, and a part of an inch with a 0 before its point: `42' 0.5\"`",
                );
            }
        }
        let inches = self.inches_only(start)?;
        if inches.length() >= Length::FOOT {
            let help = format!("count full feet as feet: `{}`", feet.length() + inches.length());
            return self.bad_length(start, "after the feet come less than 12 inches", &help);
        }
        Ok(WrittenLength::new(feet.length() + inches.length(), Form::FeetAndInches))
    }

    /// Feet without inches. Whole feet get the form of feet and inches.
    fn decimal_feet(&mut self, start: Span, feet: Decimal) -> Read<WrittenLength> {
        let form = if feet.fract().is_zero() { Form::FeetAndInches } else { Form::DecimalFeet };
        let written = self.in_unit(start, feet, Form::DecimalFeet)?;
        Ok(WrittenLength::new(written.length(), form))
    }

    /// `7"`, `7 1/2"`, `7-1/2"`, `1/2"`, `½"`, `7.5"`.
    fn inches_only(&mut self, start: Span) -> Read<WrittenLength> {
        let mut whole = Decimal::ZERO;
        if let Some(Token::Number(digits)) = self.peek() {
            let digits = *digits;
            self.advance();
            whole = self.length_number(start, digits)?;
            if !self.fraction_follows() && self.peek() != Some(&Token::Slash) {
                if self.accept_mark() == Some(Mark::Inches) {
                    return self.in_unit(start, whole, Form::FeetAndInches);
                }
                return self.unmarked(start, digits);
            }
        }
        self.mixed_inches(start, whole)
    }

    /// Reports a number after the feet that is not in inches.
    fn unmarked(&mut self, start: Span, digits: &str) -> Read<WrittenLength> {
        let typed = self.typed_since(start);
        if matches!(typed.chars().next_back(), Some(c) if !c.is_ascii_digit()) {
            return self.bad_length(
                start,
                "two lengths side by side",
                "a word is missing between them, a direction or `rise`; or is the second mark an inch mark, as in `42' 7\"`?",
            );
        }
        if digits.parse::<u32>().is_ok_and(|inches| inches >= 12) {
            return self.bad_length(
                start,
                format!("after the feet come fewer than 12 inches, and here stands {digits}"),
                "look at your pad: has the number a digit too many, or is it another length?",
            );
        }
        let help = format!("if it is inches, add their mark: `{typed}\"`");
        self.bad_length(start, format!("which unit is the {digits}?"), &help)
    }

    /// What was typed from `start` to the cursor.
    fn typed_since(&self, start: Span) -> String {
        let span = self.since(start);
        self.text.get(span.start..span.end).unwrap_or("").to_owned()
    }

    /// A fraction after the whole inches `first`, or with `first` as its numerator, followed by the inch mark.
    fn mixed_inches(&mut self, start: Span, first: Decimal) -> Read<WrittenLength> {
        let (whole, top, bottom) = if self.accept(&Token::Slash) {
            (Decimal::ZERO, first, self.fraction_part(start)?)
        } else {
            let _ = self.accept(&Token::Dash);
            let (top, bottom) = self.fraction(start)?;
            (first, top, bottom)
        };
        match self.accept_mark() {
            Some(Mark::Inches) => {}
            Some(mark) => {
                let typed = self.typed_since(start);
                let help = match typed.strip_suffix(['\'', '’', '′']) {
                    // Whole inches before it: the mark alone is wrong.
                    Some(inches) if mark == Mark::Feet && !whole.is_zero() => {
                        format!(
                            "if it is inches, write `{inches}\"`; for half a foot, `6\"` or `0.5'`"
                        )
                    }
                    _ => "for half a foot write `6\"` or `0.5'`".to_owned(),
                };
                return self.bad_length(
                    start,
                    "a fraction is of an inch here, not of a foot or a meter",
                    &help,
                );
            }
            None => {
                let help = format!("add the inch mark: `{}\"`", self.typed_since(start));
                return self.bad_length(
                    start,
                    "a fraction is of an inch, and its mark is missing",
                    &help,
                );
            }
        }
        if !whole.fract().is_zero() || !top.fract().is_zero() || !bottom.fract().is_zero() {
            return self.bad_length(start, "decimals and a fraction together", LENGTH_HELP);
        }
        let on_a_tape =
            bottom.to_u64().is_some_and(|bottom| bottom <= 64 && bottom.is_power_of_two());
        if bottom.is_zero() || top >= bottom {
            // `41/2` was most likely meant as `4 1/2`.
            let digits = top.to_string();
            let split = digits.len().checked_sub(1).and_then(|last| digits.split_at_checked(last));
            let help = match split {
                Some((inches, part)) if !inches.is_empty() && part != "0" => {
                    format!(
                        "put a blank between inches and their fraction: `{inches} {part}/{bottom}\"`"
                    )
                }
                _ => "write whole inches as such: `5 1/2\"`".to_owned(),
            };
            return self.bad_length(start, "a fraction of an inch is less than 1", &help);
        }
        let inches = self.in_unit(start, whole, Form::FeetAndInches)?;
        let (Some(top), Some(bottom)) = (top.to_i64(), bottom.to_i64()) else {
            return self.bad_length(start, "a fraction too long to read", LENGTH_HELP);
        };
        let product = Length::INCH.nm().checked_mul(top).filter(|nm| on_a_tape && nm % bottom == 0);
        match product.and_then(|nm| nm.checked_div(bottom)) {
            Some(nm) => {
                Ok(WrittenLength::new(inches.length() + Length::from_nm(nm), Form::FeetAndInches))
            }
            None => self.bad_length(
                start,
                "no tape shows this fraction exactly",
                "read to halves, quarters, eighths, sixteenths, or write decimals: `4.33\"`",
            ),
        }
    }

    fn fraction(&mut self, start: Span) -> Read<(Decimal, Decimal)> {
        if let Some(&Token::Fraction(top, bottom)) = self.peek() {
            self.advance();
            return Ok((Decimal::from(top), Decimal::from(bottom)));
        }
        let top = self.fraction_part(start)?;
        if !self.accept(&Token::Slash) {
            return self.bad_length(start, "a fraction without its `/`", LENGTH_HELP);
        }
        let bottom = self.fraction_part(start)?;
        Ok((top, bottom))
    }

    fn fraction_part(&mut self, start: Span) -> Read<Decimal> {
        if let Some(Token::Number(digits)) = self.peek() {
            let digits = *digits;
            self.advance();
            return self.length_number(start, digits);
        }
        self.bad_length(start, "a fraction with one number", LENGTH_HELP)
    }

    /// Consumes the unit mark or word that is next, if any.
    fn accept_mark(&mut self) -> Option<Mark> {
        let mark = match self.peek()? {
            Token::Feet => Mark::Feet,
            Token::Inch => Mark::Inches,
            Token::Word(word) => match word.as_ref() {
                "ft" | "feet" | "foot" => Mark::Feet,
                "in" | "inch" | "inches" => Mark::Inches,
                "m" | "metre" | "metres" | "meter" | "meters" => Mark::Metric(Form::Meters),
                "cm" | "centimeters" | "centimetres" => Mark::Metric(Form::Centimeters),
                "mm" | "millimeters" | "millimetres" => Mark::Metric(Form::Millimeters),
                _ => return None,
            },
            _ => return None,
        };
        self.advance();
        Some(mark)
    }

    fn length_number(&mut self, start: Span, digits: &str) -> Read<Decimal> {
        if digits.contains(',') {
            let thousands = digits.split(',').skip(1).all(|group| group.len() == 3);
            let help = if thousands {
                format!("leave the comma out: `{}`; decimals take a point", digits.replace(',', ""))
            } else {
                format!("decimals take a point: `{}`", digits.replace(',', "."))
            };
            return self.bad_length(start, "a length has no comma", &help);
        }
        if digits.matches('.').count() > 1 {
            return self.bad_length(start, "a number with two decimal points", LENGTH_HELP);
        }
        match decimal(digits) {
            Some(number) => Ok(number),
            None => self.bad_length(start, "a number too long to read", LENGTH_HELP),
        }
    }

    /// `number` in the unit of `form`, which must be whole nanometers.
    fn in_unit(&mut self, start: Span, number: Decimal, form: Form) -> Read<WrittenLength> {
        let nm = Decimal::from(form.unit().nm());
        let far = Decimal::from(10_i64.pow(10));
        if number > far {
            return self.bad_length(start, "a length is at most 10,000 ft", LENGTH_HELP);
        }
        let whole = if number.scale() == 0 {
            // At most `far`, so the product cannot overflow.
            i64::try_from(number.mantissa() * i128::from(form.unit().nm())).ok()
        } else {
            let product = (number.scale() <= 12).then(|| number.checked_mul(nm)).flatten();
            product.filter(|nm| nm.fract().is_zero()).and_then(|nm| nm.to_i64())
        };
        match whole {
            Some(nm) if nm > 4 * Length::LONGEST_SIDE.nm() => {
                self.bad_length(start, "a length is at most 10,000 ft", LENGTH_HELP)
            }
            Some(nm) => Ok(WrittenLength::new(Length::from_nm(nm), form)),
            None => self.bad_length(
                start,
                "finer than a millionth of a millimeter",
                "write as many decimals as the tape shows",
            ),
        }
    }

    /// A year with four digits; `example` is a whole statement for the help.
    pub(crate) fn expect_year(&mut self, example: &str) -> Read<u16> {
        let start = self.span();
        let help = &format!("write it with four digits: `{example}`");
        let year = self.expect_whole_number("a year", help)?;
        match u16::try_from(year) {
            Ok(year) if (1800..=2999).contains(&year) => Ok(year),
            _ => {
                let span = self.since(start);
                let message = format!("{year} is no tax year");
                self.fault(Diagnostic::new(Word::BadDate, span, message).help(help))
            }
        }
    }

    /// A number with a unit of area.
    pub(crate) fn expect_area(&mut self, what: &str) -> Read<WrittenArea> {
        let start = self.span();
        let Some(Token::Number(digits)) = self.peek() else {
            return self.unexpected(what, AREA_HELP);
        };
        let digits = *digits;
        self.advance();
        let Some(number) = grouped_number(digits) else {
            return self.bad_area(start, format!("{} is not a number", quoted(digits)));
        };
        let Some(unit) = self.accept_area_unit() else {
            return self.without_area_unit(start, digits, what);
        };
        let area = WrittenArea::new(number, unit);
        let largest = LARGEST_AREA * Area::SQUARE_FOOT.half_nm2();
        match area {
            Some(area) if area.area().half_nm2() > largest => {
                self.bad_area(start, "an area larger than any lot".to_owned())
            }
            Some(area) if area.area().half_nm2() <= 0 => {
                self.bad_area(start, "an area has to be over 0".to_owned())
            }
            Some(area) => Ok(area),
            None => self.bad_area(start, format!("{what} has more digits than can be told apart")),
        }
    }

    /// An area followed by a word that is not a unit of area, or by nothing.
    fn without_area_unit<T>(&mut self, start: Span, digits: &str, what: &str) -> Read<T> {
        let after = self.peek_word().map(quoted);
        let both = format!(
            "{}{}",
            self.peek_word().unwrap_or_default(),
            self.peek_word_at(1).unwrap_or_default()
        );
        let unit = if both.contains('m') && !both.contains('f') { "sq m" } else { "sq ft" };
        let span = self.since(start);
        let (message, help) = match after {
            Some(word) => (
                format!("{word} is not a unit of area"),
                format!(
                    "the units of an area are `sq ft`, `sq m`, `acres` and `hectares`: `{digits} {unit}`"
                ),
            ),
            None => {
                (format!("{what} has no unit"), format!("write the unit too: `{digits} sq ft`"))
            }
        };
        self.fault(Diagnostic::new(Word::BadArea, span, message).help(help))
    }

    fn bad_area<T>(&mut self, start: Span, message: String) -> Read<T> {
        let span = self.since(start);
        self.fault(Diagnostic::new(Word::BadArea, span, message).help(
            "commas stand between thousands, a point before decimals: `2,031 sq ft`, `188.7 sq m`",
        ))
    }

    fn accept_area_unit(&mut self) -> Option<AreaUnit> {
        let unit = match self.peek_word()? {
            "sqft" | "sf" => AreaUnit::SquareFeet,
            "sqm" => AreaUnit::SquareMeters,
            "acre" | "acres" => AreaUnit::Acres,
            "ha" | "hectare" | "hectares" => AreaUnit::Hectares,
            "sq" | "square" => {
                let unit = match self.peek_word_at(1)? {
                    "ft" | "feet" | "foot" => AreaUnit::SquareFeet,
                    "m" | "metre" | "metres" | "meter" | "meters" => AreaUnit::SquareMeters,
                    _ => return None,
                };
                self.advance();
                unit
            }
            _ => return None,
        };
        self.advance();
        Some(unit)
    }

    /// A quadrant bearing: `N 45° 30' 15" E`.
    pub(crate) fn expect_bearing(&mut self) -> Read<Bearing> {
        let start = self.span();
        let from = match self.peek_word() {
            Some("n" | "north") => Direction::North,
            Some("s" | "south") => Direction::South,
            _ => return self.unexpected("`N` or `S`, where a bearing begins", BEARING_HELP),
        };
        self.advance();
        let angle = self.span();
        let Some(degrees) = self.angle_part() else {
            return self.bad_bearing(start, "a bearing without its degrees");
        };
        let is_marked = self.accept(&Token::Degree) || self.accept_word(&["deg", "degrees"]);
        if !is_marked && self.peek_word().is_some() {
            self.no_minutes_after_a_point(angle)?;
        }
        let minutes = self.angle_part();
        let _ = minutes.is_some() && self.accept(&Token::Feet);
        let seconds = minutes.and_then(|_| self.angle_part());
        let _ = seconds.is_some() && self.accept(&Token::Inch);
        let toward = match self.peek_word() {
            Some("e" | "east") => Direction::East,
            Some("w" | "west") => Direction::West,
            _ => return self.bad_bearing(start, "a bearing without its `E` or `W`"),
        };
        self.advance();
        let bearing = Bearing { from, degrees, minutes, seconds, toward };
        if !bearing.is_within_a_quadrant() {
            return self.bad_bearing(
                start,
                "a bearing goes from 0 to 90 degrees, minutes and seconds below 60",
            );
        }
        Ok(bearing)
    }

    /// Asks whether `10.30` means 10° 30' or 10.30°. Its degree mark answers that.
    fn no_minutes_after_a_point(&mut self, angle: Span) -> Read<()> {
        let typed = self.text.get(angle.start..angle.end).unwrap_or_default().to_owned();
        let Some((degrees, minutes)) = typed.split_once('.') else { return Ok(()) };
        let is_part = |part: &str| part.len() == 2 && ("01".."60").contains(&part);
        if !is_part(minutes) {
            return Ok(());
        }
        let [decimal, both] =
            [format!("{typed}°"), format!("{degrees}° {}'", minutes.trim_start_matches('0'))];
        let message = "are the digits after the point a part of a degree, or minutes?";
        self.fault(
            Diagnostic::new(Word::BadBearing, angle, message)
                .help(format!("did you mean `{decimal}` or `{both}`?"))
                .fix(angle, decimal)
                .fix(angle, both),
        )
    }

    fn bad_bearing<T>(&mut self, start: Span, message: &str) -> Read<T> {
        let span = self.since(start);
        self.fault(Diagnostic::new(Word::BadBearing, span, message).help(BEARING_HELP))
    }

    fn angle_part(&mut self) -> Option<Decimal> {
        let Some(Token::Number(digits)) = self.peek() else {
            return None;
        };
        let number = decimal(digits)?;
        self.advance();
        Some(number)
    }

    /// An ISO date.
    pub(crate) fn expect_date(&mut self) -> Read<jiff::civil::Date> {
        let start = self.span();
        let mut text = String::new();
        while let Some(Token::Number(_) | Token::Dash | Token::Slash | Token::Comma) = self.peek() {
            let span = self.span();
            text.push_str(self.text.get(span.start..span.end).unwrap_or("?"));
            self.advance();
        }
        if text.is_empty() {
            return self.unexpected("a date", "write the day that it was as year-month-day: four digits, two and two, with `-` between them");
        }
        match (text.len() == 10).then(|| text.parse()) {
            Some(Ok(date)) => Ok(date),
            _ => {
                let message = format!("{} is no date of the calendar", quoted(&text));
                let span = self.since(start);
                const AS: &str = "write the day that it was as year-month-day: four digits, two and two, with `-` between them";
                let help = match (meant_date(&text), last_of_month(&text)) {
                    (Some(date), _) => format!("did you mean `{date}`? it is year-month-day"),
                    (None, Some(last)) => format!(
                        "this month has {} days: was it `{last}`, or another day? write the day that it was",
                        last.day()
                    ),
                    (None, None) => AS.to_owned(),
                };
                self.fault(Diagnostic::new(Word::BadDate, span, message).help(help))
            }
        }
    }
}

impl Bearing {
    fn is_within_a_quadrant(&self) -> bool {
        let sixty = Decimal::from(60);
        let minutes = self.minutes.unwrap_or_default();
        let seconds = self.seconds.unwrap_or_default();
        let whole = self.minutes.is_none() || self.degrees.fract().is_zero();
        let whole = whole && (self.seconds.is_none() || minutes.fract().is_zero());
        let ninety = Decimal::from(90);
        whole
            && minutes < sixty
            && seconds < sixty
            && (self.degrees < ninety
                || self.degrees == ninety && minutes.is_zero() && seconds.is_zero())
    }
}

/// The date that a common spelling probably means: without leading zeros, or as month/day/year.
fn meant_date(text: &str) -> Option<jiff::civil::Date> {
    let parts: Vec<i16> =
        text.split(['-', '/', '.']).map(str::parse).collect::<Result<_, _>>().ok()?;
    let small = |number: i16| i8::try_from(number).ok();
    match parts[..] {
        [year, month, day] if year > 999 => {
            jiff::civil::Date::new(year, small(month)?, small(day)?).ok()
        }
        [month, day, year] if year > 999 && text.contains('/') => {
            jiff::civil::Date::new(year, small(month)?, small(day)?).ok()
        }
        _ => None,
    }
}

/// The last day of the month whose number of days a date goes beyond.
fn last_of_month(text: &str) -> Option<jiff::civil::Date> {
    let parts: Vec<i16> =
        text.split(['-', '/', '.']).map(str::parse).collect::<Result<_, _>>().ok()?;
    let (year, month, day) = match parts[..] {
        [year, month, day] if year > 999 => (year, month, day),
        [month, day, year] if year > 999 => (year, month, day),
        _ => return None,
    };
    let first = jiff::civil::Date::new(year, i8::try_from(month).ok()?, 1).ok()?;
    (day > 28 && day <= 31).then(|| first.last_of_month())
}

/// The exact value of digits with at most one decimal point; `None` if it is not a number.
pub(crate) fn decimal(digits: &str) -> Option<Decimal> {
    if digits.len() <= 9 && digits.bytes().all(|byte| byte.is_ascii_digit()) {
        return digits.parse::<u32>().ok().map(Decimal::from);
    }
    let digits = digits.trim_end_matches('.');
    let number = Decimal::from_str_exact(digits).ok()?;
    Some(number.normalize())
}

/// A number whose thousands may be grouped by commas.
pub(crate) fn grouped_number(digits: &str) -> Option<Decimal> {
    let (whole, decimals) = digits.split_once('.').unwrap_or((digits, ""));
    if decimals.contains([',', '.']) {
        return None;
    }
    let groups: Vec<&str> = whole.split(',').collect();
    let grouped = groups.len() == 1
        || groups[0].len() <= 3
            && !groups[0].is_empty()
            && groups[1..].iter().all(|g| g.len() == 3);
    grouped.then(|| decimal(&digits.replace(',', ""))).flatten()
}
