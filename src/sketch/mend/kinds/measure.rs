//! Lengths, areas, sums of money and dates among the pieces of a line.

use super::super::pieces::{Piece, join};
use crate::units::area::WrittenArea;
use crate::units::length::{Form, Length, WrittenLength};

/// A length among the pieces of a line.
#[derive(Clone, Debug)]
pub(super) struct Measure {
    /// The index of the piece after it.
    pub(super) end: usize,
    pub(super) length: Length,
    pub(super) text: String,
    /// Whether it has a unit.
    pub(super) has_unit: bool,
}

impl Measure {
    pub(super) fn is_metric(&self) -> bool {
        self.text.contains('m')
    }

    /// Whether it is whole feet without inches.
    pub(super) fn is_whole_feet(&self) -> bool {
        self.has_unit && !self.is_metric() && self.length.nm() % Length::FOOT.nm() == 0
    }

    /// Whether it is inches without feet.
    pub(super) fn is_inches_alone(&self) -> bool {
        let feet = ["'", "’", "′", "f"];
        self.has_unit && !self.is_metric() && !feet.iter().any(|mark| self.text.contains(mark))
    }

    /// Whether it is inches without feet, and fewer than 12.
    pub(super) fn is_inches(&self) -> bool {
        self.has_unit && !self.is_metric() && self.length < Length::FOOT
    }
}

/// What a thing may be in: after these the word `in` before is no unit.
const INSIDE_WHAT: [&str; 16] = [
    "dormer", "eaves", "the", "garage", "basement", "house", "hall", "attic", "kitchen", "carport",
    "shed", "barn", "back", "rear", "corner", "middle",
];

/// Words for a place that may follow a size.
const PLACES: [&str; 22] = [
    "behind", "at", "on", "in", "start", "from", "front", "back", "rear", "left", "right",
    "beside", "off", "next", "along", "over", "attached", "detached", "recorded", "within",
    "measured", "to",
];

/// The longest length that begins at this piece.
pub(super) fn length_at(pieces: &[Piece], at: usize) -> Option<Measure> {
    let first = pieces.get(at)?;
    if !first.is_number() && !first.is_mark("½¼¾⅛⅜⅝⅞") {
        return None;
    }
    if let Some(measure) = fraction_of_a_foot(pieces, at) {
        return Some(measure);
    }
    let most = pieces.len().min(at + 10);
    (at + 1..=most).rev().find_map(|end| {
        // `8x6 in garage`: a word for where it is, and no inches.
        let is_place = pieces[end - 1].is_word(&["in"])
            && pieces.get(end).is_some_and(|next| next.is_word(&INSIDE_WHAT));
        if is_place {
            return None;
        }
        let text = join(&pieces[at..end]);
        let length: Length = text.parse().ok()?;
        let has_unit = !pieces[end - 1].is_number();
        Some(Measure { end, length, text, has_unit })
            .map(|measure| with_bare_inches(pieces, at, measure))
    })
}

/// `36 1/2 ft`, `36 1/2'`: feet with a fraction that is whole inches.
fn fraction_of_a_foot(pieces: &[Piece], at: usize) -> Option<Measure> {
    let whole = |at: usize| {
        let piece: &Piece = pieces.get(at).filter(|piece| piece.is_number())?;
        piece.text.parse::<u32>().ok()
    };
    let slash = pieces.get(at + 2).is_some_and(|slash| slash.is_mark("/"));
    let (feet, top, bottom) = (whole(at)?, whole(at + 1)?, whole(at + 3).filter(|_| slash)?);
    let unit = pieces.get(at + 4)?;
    let is_feet = unit.is_word(&["ft", "feet", "foot"]) || unit.is_mark("'’′");
    let more = unit.is_mark("'’′") && pieces.get(at + 5).is_some_and(Piece::is_number);
    if !is_feet || more || top >= bottom || (12 * top) % bottom != 0 || pieces[at + 1].touches {
        return None;
    }
    let text = format!("{feet}' {}\"", (12 * top).div_euclid(bottom));
    let length: Length = text.parse().ok()?;
    Some(Measure { end: at + 5, length, text, has_unit: true })
}

/// `4'2`: feet whose inches have no mark. They are accepted where nothing else can be meant: the number touches the
/// mark of the feet, or nothing but a comma or a parenthesis follows.
fn with_bare_inches(pieces: &[Piece], at: usize, feet: Measure) -> Measure {
    let taken_in = || {
        if !feet.is_whole_feet() || !pieces[feet.end - 1].is_mark("'’′") {
            return None;
        }
        let inches = pieces.get(feet.end).filter(|inches| inches.is_number())?;
        let most = pieces.len().min(feet.end + 5);
        // `8' 2 x 10' 4 start`: of a size, both lengths are written so.
        let by = |piece: &Piece| piece.is_word(&["x", "by"]) || piece.is_mark("×*");
        let is_second = at >= 2 && by(&pieces[at - 1]) && pieces[at - 2].is_number();
        (feet.end + 1..=most).rev().find_map(|end| {
            let is_first = pieces.get(end).is_some_and(by)
                && pieces.get(end + 1).is_some_and(Piece::is_number);
            let is_before_a_place = at >= 1
                && by(&pieces[at - 1])
                && pieces.get(end).is_some_and(|next| next.is_word(&PLACES));
            let ends = pieces.get(end).is_none_or(|next| {
                let is_of_a_size = is_second || is_first || is_before_a_place;
                next.is_mark("(),;[]") || !next.touches && (inches.touches || is_of_a_size)
            });
            let is_last = pieces[end - 1].is_number() || pieces[end - 1].is_mark("½¼¾⅛⅜⅝⅞");
            let text = format!("{}\"", join(&pieces[at..end]));
            let length: Length = text.parse().ok().filter(|_| ends && is_last)?;
            let text = text.replacen('\'', "' ", 1).replace("'  ", "' ");
            Some(Measure { end, length, text, has_unit: true })
        })
    };
    taken_in().unwrap_or(feet)
}

/// Every length from this piece on, with the index of its first piece.
pub(super) fn lengths(pieces: &[Piece], from: usize) -> Vec<(usize, Measure)> {
    let mut all = Vec::new();
    let mut at = from;
    while at < pieces.len() {
        if let Some(measure) = length_at(pieces, at) {
            let end = measure.end;
            all.push((at, measure));
            at = end;
        } else {
            at += 1;
        }
    }
    all
}

/// A length in the unit of another.
pub(super) fn written(length: Length, like: &Measure) -> String {
    let form = if like.is_metric() { Form::Meters } else { Form::FeetAndInches };
    WrittenLength::new(length, form).to_string()
}

/// An area that begins at this piece, and the index of the piece after it.
pub(super) fn area_at(pieces: &[Piece], at: usize) -> Option<(usize, String)> {
    let number = pieces.get(at).filter(|piece| piece.is_number())?;
    let next = pieces.get(at + 1)?;
    let squared =
        pieces.get(at + 2).is_some_and(|two| two.touches && (two.text == "2" || two.is_mark("²")));
    let (unit, end) = match next.text.to_lowercase().as_str() {
        "sq" | "sqr" | "square" => {
            let point = usize::from(pieces.get(at + 2).is_some_and(|piece| piece.is_mark(".")));
            let of = pieces.get(at + 2 + point)?;
            let unit = if of.is_word(&["ft", "feet", "foot"]) {
                "sq ft"
            } else if of.is_word(&["m", "meter", "meters", "metre", "metres"]) {
                "sq m"
            } else {
                return None;
            };
            let last = at + 3 + point;
            let point = usize::from(
                pieces.get(last).is_some_and(|piece| piece.is_mark(".") && piece.touches),
            );
            (unit, last + point)
        }
        "m" | "ft" if squared => (if next.is_word(&["m"]) { "sq m" } else { "sq ft" }, at + 3),
        "sqft" | "sf" => ("sq ft", at + 2),
        "sqm" | "qm" | "mq" => ("sq m", at + 2),
        "acre" | "acres" | "ac" => ("acres", at + 2),
        "hectare" | "hectares" | "ha" => ("hectares", at + 2),
        _ => return None,
    };
    let digits = match number.text.strip_prefix("0,") {
        Some(decimals) if !decimals.contains([',', '.']) => format!("0.{decimals}"),
        _ => number.text.clone(),
    };
    let digits = if digits.starts_with('.') { format!("0{digits}") } else { digits };
    Some((end, format!("{digits} {unit}")))
}

/// The first area from this piece on: its first piece, the piece after it, and the area.
pub(super) fn area_from(pieces: &[Piece], from: usize) -> Option<(usize, usize, String)> {
    (from..pieces.len()).find_map(|at| area_at(pieces, at).map(|(end, area)| (at, end, area)))
}

/// The first amount of money from this piece on, with its sign: its first piece, the piece after it, and the amount.
pub(super) fn money_from(pieces: &[Piece], from: usize) -> Option<(usize, usize, String)> {
    (from..pieces.len()).find_map(|at| {
        let number =
            pieces.get(at + 1).filter(|piece| piece.is_number() && pieces[at].is_mark("$"))?;
        let times = match pieces.get(at + 2).map(|word| word.text.to_lowercase()).as_deref() {
            Some("k" | "thousand") => 1_000,
            Some("m" | "mil" | "million") => 1_000_000,
            _ => return Some((at, at + 2, format!("${}", number.text))),
        };
        let value: rust_decimal::Decimal = number.text.replace(',', "").parse().ok()?;
        let sum = value.checked_mul(rust_decimal::Decimal::from(times))?.normalize();
        let sum = rust_decimal::prelude::ToPrimitive::to_i64(&sum)?;
        Some((at, at + 3, format!("${}", crate::units::decimal::thousands(sum))))
    })
}

/// A date that begins at this piece: as year-month-day, and the index of the piece after it.
pub(super) fn date_at(pieces: &[Piece], at: usize) -> Option<(usize, String)> {
    let number = |at: usize| {
        let piece: &Piece = pieces.get(at)?;
        piece.is_number().then(|| piece.text.parse::<i16>().ok())?
    };
    if let Some(found) = named_date_at(pieces, at) {
        return Some(found);
    }
    if let Some(date) = pieces.get(at).and_then(|piece| dotted_date(&piece.text)) {
        return Some((at + 1, date));
    }
    let is_mark = |at: usize| pieces.get(at).is_some_and(|piece| piece.is_mark("-/–."));
    if !is_mark(at + 1) || !is_mark(at + 3) {
        return None;
    }
    let (first, second, third) = (number(at)?, number(at + 2)?, number(at + 4)?);
    let (year, month, day) = if first > 31 {
        (first, second, third)
    } else if pieces[at + 1].is_mark("/-") {
        let year = if third < 100 { 2_000 + third } else { third };
        // `15/11/2026` has its day first.
        if first > 12 { (year, second, first) } else { (year, first, second) }
    } else {
        return None;
    };
    let small = |number: i16| i8::try_from(number).ok();
    let date = jiff::civil::Date::new(year, small(month)?, small(day)?).ok()?;
    Some((at + 5, date.to_string()))
}

/// `15.11.2026`, where only one of the two numbers can be the month.
fn dotted_date(text: &str) -> Option<String> {
    let parts: Vec<i16> = text.split('.').map(str::parse).collect::<Result<_, _>>().ok()?;
    let [first, second, third] = parts[..] else { return None };
    let (year, month, day) = match (first, second) {
        (year, month) if year > 31 => (year, month, third),
        (day, month) if day > 12 || day == month => (third, month, day),
        (month, day) if day > 12 => (third, month, day),
        _ => return None,
    };
    let year = if (0..100).contains(&year) { 2_000 + year } else { year };
    let small = |number: i16| i8::try_from(number).ok();
    let date = jiff::civil::Date::new(year, small(month)?, small(day)?).ok()?;
    Some(date.to_string())
}

/// The month that a word names, from 1: in English its first three letters or more, in Spanish, French, German, Italian
/// or Portuguese four or more.
pub(super) fn month_named(word: &str) -> Option<i8> {
    const ENGLISH: [&str; 12] = [
        "january",
        "february",
        "march",
        "april",
        "may",
        "june",
        "july",
        "august",
        "september",
        "october",
        "november",
        "december",
    ];
    const OTHERS: [&str; 12] = [
        "enero januar janvier gennaio janeiro",
        "febrero februar février fevrier febbraio fevereiro",
        "marzo märz mars março",
        "abril avril aprile",
        "mayo maggio maio",
        "junio juni juin giugno junho",
        "julio juli juillet luglio julho",
        "agosto août aout",
        "septiembre septembre settembre setembro",
        "octubre oktober octobre ottobre outubro",
        "noviembre novembre novembro",
        "diciembre dezember décembre decembre dicembre dezembro",
    ];
    let letters = word.chars().count();
    let is_other =
        |names: &str| letters >= 4 && names.split(' ').any(|name| name.starts_with(word));
    let english = ENGLISH.iter().position(|name| match word {
        "sept" => *name == "september",
        _ => letters >= 3 && name.starts_with(word),
    });
    let at = english.or_else(|| OTHERS.iter().position(|names| is_other(names)))?;
    i8::try_from(at + 1).ok()
}

/// `Aug 14, 2025` or `14 August 2025`.
fn named_date_at(pieces: &[Piece], at: usize) -> Option<(usize, String)> {
    let month = |at: usize| {
        let word = pieces.get(at)?;
        let is_word = word.sort == super::super::pieces::Sort::Word;
        month_named(&word.text.to_lowercase()).filter(|_| is_word)
    };
    let number =
        |at: usize| pieces.get(at).filter(|piece| piece.is_number())?.text.parse::<i16>().ok();
    let filler = |at: usize| {
        usize::from(pieces.get(at).is_some_and(|piece| {
            piece.is_mark(",.") || piece.is_word(&["st", "nd", "rd", "th", "de", "of"])
        }))
    };
    let (month, day, next) = if let Some(month) = month(at) {
        let first = at + 1 + filler(at + 1);
        (month, number(first)?, first + 1)
    } else {
        let day = number(at)?;
        let first = at + 1 + filler(at + 1);
        (month(first)?, day, first + 1)
    };
    let next = next + filler(next);
    let next = next + filler(next);
    // `14 Nov '26`
    let short = pieces.get(next).is_some_and(|mark| mark.is_mark("'’"));
    let next = next + usize::from(short);
    let year = number(next).map(|year| if short && year < 100 { 2_000 + year } else { year });
    let year = year.filter(|year| *year > 1900)?;
    let date = jiff::civil::Date::new(year, month, i8::try_from(day).ok()?).ok()?;
    Some((next + 1, date.to_string()))
}

/// The first date from this piece on: its first piece, the piece after it, and the date.
pub(super) fn date_from(pieces: &[Piece], from: usize) -> Option<(usize, usize, String)> {
    (from..pieces.len()).find_map(|at| date_at(pieces, at).map(|(end, date)| (at, end, date)))
}

/// The area of a rectangle with these two sides, in square feet with at most two decimals.
pub(super) fn rectangle(one: Length, two: Length) -> Option<String> {
    use rust_decimal::Decimal;
    let feet = |length: Length| Decimal::from(length.nm()) / Decimal::from(Length::FOOT.nm());
    let area = feet(one).checked_mul(feet(two))?.round_dp(2).normalize();
    WrittenArea::new(area, crate::units::area::AreaUnit::SquareFeet).map(|area| area.to_string())
}

/// Whether this size is that of lumber: `2x4`, `2 x 6`. No room is as small.
pub(super) fn is_lumber(one: &Measure, two: &Measure) -> bool {
    let is_one = |measure: &Measure, sizes: &[&str]| {
        !measure.has_unit && sizes.contains(&measure.text.as_str())
    };
    is_one(one, &["2"]) && is_one(two, &["4", "6", "8"])
}
