//! Lines that copy several figures of a record card at once: those of the floors, or figures with slashes between them.

use super::measure::area_at;
use super::{Answer, Typed};

const RECORD: [&str; 9] =
    ["county", "county's", "record", "card", "cad", "assessor", "assessor's", "tax", "roll"];
const SAYS: [&str; 8] = ["has", "says", "shows", "lists", "gives", "the", "area", "areas"];
const FLOORS: [&str; 20] = [
    "first", "second", "third", "main", "upper", "lower", "ground", "top", "1st", "2nd", "3rd",
    "st", "nd", "rd", "floor", "story", "level", "flr", "fl", "and",
];

/// `county: 1st floor 1,180, 2nd floor 800`, `county card 1180 / 462 / 75`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &RECORD) || typed.line.contains(['"', '#', '$', '%']) {
        return None;
    }
    let is_joint = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark(":=,-–'’"));
    let mut at = 1;
    while typed.says(at, &RECORD) || typed.says(at, &SAYS) || is_joint(at) {
        at += 1;
    }
    // The figure of a tax year is none of an area.
    let areas = areas(typed, at)?;
    slashed(typed, at, &areas).or_else(|| of_floors(typed, at, &areas))
}

/// The areas from a piece on, each with its first piece and the one after it; a number of two digits or more needs no
/// unit.
fn areas(typed: &Typed<'_>, first: usize) -> Option<Vec<(usize, usize, i64)>> {
    let (mut all, mut at) = (Vec::new(), first);
    while let Some(piece) = typed.piece(at) {
        let is_ordinal = typed.says(at + 1, &["st", "nd", "rd", "floor", "story", "level"]);
        if !piece.is_number() || is_ordinal && piece.text.len() == 1 {
            at += 1;
            continue;
        }
        let digits = piece.text.replace(',', "");
        if piece.text.contains('.') || digits.len() < 2 {
            return None;
        }
        let end = area_at(&typed.pieces, at).map_or(at + 1, |(end, _)| end);
        all.push((at, end, digits.parse().ok()?));
        at = end.max(at + 1);
    }
    (2..=6).contains(&all.len()).then_some(all)
}

/// `county card 1180 / 462 / 75`: which figure is of which part, nobody but the card says.
fn slashed(typed: &Typed<'_>, first: usize, areas: &[(usize, usize, i64)]) -> Option<Answer> {
    let mut at = first;
    for (i, (begin, end, _)) in areas.iter().enumerate() {
        let is_apart = i == 0 || typed.piece(at).is_some_and(|mark| mark.is_mark("/|"));
        at += usize::from(i > 0);
        if !is_apart || *begin != at {
            return None;
        }
        at = *end;
    }
    let [(_, _, own), others @ ..] = areas else { return None };
    // `1,386 sf / 129 sq m` is one figure in two units, and `2,100 / 2,150` may be that of two years.
    let is_metric = typed.find(0, &["m", "m2", "sqm", "meters", "metres"]).is_some();
    let is_part = others.iter().all(|(.., area)| area.saturating_mul(4) < own.saturating_mul(3));
    if is_metric || typed.line.contains('²') || !is_part {
        return None;
    }
    let unit = if typed.attempt.is_metric { "sq m" } else { "sq ft" };
    let others: Vec<String> =
        others.iter().map(|(.., area)| format!("`recorded {area} {unit}`")).collect();
    (at == typed.pieces.len()).then(|| {
        let own_figure = match typed.attempt.beside.has_record {
            true => format!("if the living area is the first, see that the line that begins with `record` has `{own} {unit}`, and take this line out"),
            false => format!("if the living area is the first, write `record {own} {unit}` here"),
        };
        Answer::say(
            "the record's living area stands after `record`, and its area of any other part on the line of that space",
            format!(
                "{own_figure}; {} at the end of the line of the space that it is of, as the garage or the porch",
                match &others[..] {
                    [only] => format!("{only} goes"),
                    several => format!("each of {} goes", crate::diagnostic::words::all_of(several)),
                }
            ),
        )
    })
}

/// `county: 1st floor 1,180, 2nd floor 800`, `county 1,180 down, 800 up`: the record's figure is the sum of its floors.
fn of_floors(typed: &Typed<'_>, first: usize, areas: &[(usize, usize, i64)]) -> Option<Answer> {
    const WHOLE: [&str; 4] = ["upstairs", "downstairs", "up", "down"];
    // With a `record` in the file, the floors are told where they stand.
    if typed.attempt.beside.has_record {
        return None;
    }
    let of_areas = |at: usize| areas.iter().any(|(begin, end, _)| (*begin..*end).contains(&at));
    let says_floor = |at: usize| {
        typed.says(at, &FLOORS[..19])
            || typed.says(at, &WHOLE)
            || typed.says(at + 1, &["st", "nd", "rd", "floor", "story", "level"])
                && typed.pieces[at].is_number()
    };
    let is_plain = |at: usize| {
        of_areas(at)
            || says_floor(at)
            || typed.says(at, &["and", "sq", "ft", "sf", "is", "has"])
            || typed.pieces[at].is_mark(",;:/&+=.()-–")
    };
    // A floor between each two areas, or before the first or after the last one too.
    let gaps: Vec<bool> = (0..=areas.len())
        .map(|i| {
            let from = i.checked_sub(1).map_or(first, |before| areas[before].1);
            let to = areas.get(i).map_or(typed.pieces.len(), |area| area.0);
            (from..to).any(says_floor)
        })
        .collect();
    let is_each =
        gaps[..areas.len()].iter().all(|said| *said) || gaps[1..].iter().all(|said| *said);
    let is_whole = is_each && (first..typed.pieces.len()).all(is_plain);
    let sum: i64 = areas.iter().map(|(.., area)| area).sum();
    let unit = if typed.attempt.is_metric { "sq m" } else { "sq ft" };
    is_whole.then(|| {
        Answer::line(
            format!(
                "record {} {unit}  # {}",
                crate::units::decimal::thousands(sum),
                typed.rest(first).trim_matches([':', ',', ' '])
            ),
            "a figure is one number: the parts added up",
        )
    })
}
