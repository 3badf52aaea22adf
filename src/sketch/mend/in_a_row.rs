//! Several walls or calls on one line with their lengths and angles as on paper: `N 26-0, E 30-2, S9-0`, `N 9,15  E 12,40`,
//! `deed: N 01-30-00 E 4.00 ch`. With these written as a sides file has them, the line is answered as any other one with
//! several walls or calls.

use rust_decimal::Decimal;

use super::change::Attempt;
use super::compass::way_and_back;
use super::pieces::{Piece, Sort, cut};
use super::{Mend, kinds, read_or_mended};

/// Words of land, and units that only a deed has.
const OF_LAND: [&str; 24] = [
    "lot", "deed", "deeds", "parcel", "tract", "survey", "plat", "legal", "land", "thence", "call",
    "calls", "bearing", "ch", "chain", "chains", "rod", "rods", "pole", "poles", "link", "links",
    "pob", "acres",
];

/// The answer to the line with its walls or calls in the form of a sides file.
pub(super) fn answer(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let pieces = cut(line);
    // Most lines have no two of them.
    if pieces.len() < 4 || line.contains('#') {
        return None;
    }
    let (walls, calls) = (walls(line, &pieces), calls(line, &pieces));
    if walls.is_none() && calls.is_none() {
        return None;
    }
    let Attempt { beside, .. } = attempt(line);
    let is_of_land = line.contains(['°', 'º'])
        || pieces.iter().any(|piece| piece.is_word(&OF_LAND))
        || beside.in_lot
        || beside.before.starts_with("lot ")
        || kinds::begins_as_call(&beside.before)
        || kinds::begins_as_call(&beside.after);
    let plain = if is_of_land { calls } else { walls }?;
    let mended = read_or_mended(&plain.line, attempt)?;
    let is_comment = mended.lines.iter().any(|offered| offered.starts_with('#'));
    let is_answer = !mended.lines.is_empty() || mended.asks.is_some() || mended.help.is_some();
    let cause = match mended.cause.as_str() {
        "" => plain.cause.to_owned(),
        cause if cause.contains(plain.cause) => cause.to_owned(),
        cause => format!("{}; {cause}", plain.cause),
    };
    (is_answer && !is_comment).then_some(Mend { cause, ..mended })
}

/// A line in another form, and what was wrong with it.
struct Plain {
    line: String,
    cause: &'static str,
}

/// The line with other texts for some of its parts, each from one byte to another.
fn with(line: &str, changes: &[(usize, usize, String)]) -> Option<String> {
    let (mut out, mut at) = (String::with_capacity(line.len()), 0);
    for (from, to, text) in changes {
        out.push_str(line.get(at..*from)?);
        out.push_str(text);
        at = *to;
    }
    out.push_str(line.get(at..)?);
    Some(out)
}

fn end_of(piece: &Piece) -> usize {
    piece.at + piece.text.len()
}

fn number(pieces: &[Piece], at: usize) -> Option<&str> {
    pieces.get(at).filter(|piece| piece.is_number()).map(|piece| piece.text.as_str())
}

fn is_mark(pieces: &[Piece], at: usize, marks: &str) -> bool {
    pieces.get(at).is_some_and(|piece| piece.is_mark(marks))
}

/// `26-0` as feet and inches, `9,15` with a point, or a length that reads; and the index after it.
fn length(pieces: &[Piece], at: usize) -> Option<(Option<(String, &'static str)>, usize)> {
    let first = number(pieces, at)?;
    let touches = |at: usize| pieces.get(at).is_some_and(|piece| piece.touches);
    if is_mark(pieces, at + 1, "-–") && touches(at + 1) && touches(at + 2) {
        let inches = number(pieces, at + 2)?;
        let fits = first.parse::<u16>().is_ok() && inches.parse::<u8>().is_ok_and(|own| own < 12);
        let goes_on = touches(at + 3) && !is_mark(pieces, at + 3, ",;");
        return (fits && !goes_on).then(|| {
            let marked = format!("{first}' {inches}\"");
            (Some((marked, "the marks for feet and inches are missing")), at + 3)
        });
    }
    if let Some((whole, decimals)) = first.split_once(',') {
        let digits = |text: &str| !text.is_empty() && text.bytes().all(|c| c.is_ascii_digit());
        let unit = usize::from(
            pieces.get(at + 1).is_some_and(|unit| unit.is_word(&["m", "meters", "metres", "cm"])),
        );
        let fits = digits(whole) && digits(decimals) && decimals.len() <= 2 && whole.len() <= 3;
        return fits.then(|| {
            let text = format!("{whole}.{decimals}");
            (Some((text, "decimals take a point, not a comma")), at + 1 + unit)
        });
    }
    let (_, end) = kinds::length_from(pieces, at)?;
    Some((None, end))
}

/// `N 26-0, E 30-2, S9-0`: the walls with the marks of their feet and inches, or with points.
fn walls(line: &str, pieces: &[Piece]) -> Option<Plain> {
    let is_way = |at: usize| {
        pieces
            .get(at)
            .is_some_and(|word| word.sort == Sort::Word && way_and_back(&word.text).is_some())
            && number(pieces, at + 1).is_some()
    };
    let first = (0..pieces.len()).find(|&at| is_way(at))?;
    let (mut changes, mut cause) = (Vec::new(), None);
    let (mut at, mut walls, mut commas) = (first, 0_usize, 0_usize);
    while at < pieces.len() {
        if !is_way(at) {
            return None;
        }
        let (changed, end) = length(pieces, at + 1)?;
        if let Some((text, why)) = changed {
            let number = end_of(&pieces[at + 1]).max(match why.starts_with("the marks") {
                true => end_of(&pieces[at + 3]),
                false => 0,
            });
            changes.push((end_of(&pieces[at]), number, format!(" {text}")));
            cause = cause.or(Some(why));
        }
        walls += 1;
        at = end;
        while is_mark(pieces, at, ",;.→>/")
            || pieces.get(at).is_some_and(|word| word.is_word(&["then", "and"]))
        {
            commas += 1;
            at += 1;
        }
    }
    // `N 26-0 E 30-2` alone may be a call.
    let is_row = walls >= 3 || walls == 2 && commas > 0;
    let cause = cause.filter(|_| is_row)?;
    Some(Plain { line: with(line, &changes)?, cause })
}

/// Hundredths of a foot in a unit of deeds.
fn hundredths(unit: &Piece) -> Option<i64> {
    match unit.text.to_lowercase().as_str() {
        "chain" | "chains" | "ch" => Some(6_600),
        "rod" | "rods" | "pole" | "poles" | "perch" | "perches" => Some(1_650),
        "link" | "links" | "lk" | "lks" => Some(66),
        _ => None,
    }
}

/// `deed: N 01-30-00 E 4.00 ch`: the calls with the marks of their angles, and their chains and rods in feet. A call alone
/// is answered by itself.
fn calls(line: &str, pieces: &[Piece]) -> Option<Plain> {
    let says = |at: usize, words: &[&str]| pieces.get(at).is_some_and(|word| word.is_word(words));
    let (mut changes, mut calls, mut first) = (Vec::new(), 0_usize, None);
    let mut converts = false;
    for at in 0..pieces.len() {
        if !says(at, &["n", "s", "north", "south"]) || number(pieces, at + 1).is_none() {
            continue;
        }
        let toward = (at + 2..pieces.len().min(at + 9))
            .find(|&to| says(to, &["e", "w", "east", "west"]) && number(pieces, to + 1).is_some());
        let Some(toward) = toward else { continue };
        calls += 1;
        first = first.or(Some(at));
        let parts: Vec<&str> =
            (at + 1..toward).step_by(2).filter_map(|at| number(pieces, at)).collect();
        let dashed = (at + 2..toward).step_by(2).all(|at| is_mark(pieces, at, "-–"))
            && (2..=3).contains(&parts.len())
            && parts.len() * 2 == toward - at;
        if dashed {
            let marked: Vec<String> = parts
                .iter()
                .zip(["°", "'", "\""])
                .map(|(part, mark)| format!("{part}{mark}"))
                .collect();
            let (from, to) = (end_of(&pieces[at]), pieces[toward].at);
            changes.push((from, to, format!(" {} ", marked.join(" "))));
        }
        let unit = pieces.get(toward + 2).and_then(hundredths);
        let value = number(pieces, toward + 1).and_then(|number| number.parse::<Decimal>().ok());
        // `4 ch 20 links` is a sum.
        let is_sum = number(pieces, toward + 3).is_some()
            && pieces.get(toward + 4).and_then(hundredths).is_some();
        if let Some((unit, value)) = unit.zip(value).filter(|_| !is_sum) {
            let feet = value.checked_mul(Decimal::new(unit, 2))?.round_dp(4).normalize();
            let (from, to) = (pieces[toward + 1].at, end_of(&pieces[toward + 2]));
            changes.push((from, to, format!("{feet}'")));
            converts = true;
        }
    }
    // A call alone is answered by itself, and what stands before it is its remark unless it is the heading of the land.
    let heads = ["lot", "deed", "deeds", "parcel", "tract", "survey", "plat", "legal", "land"];
    let is_headed = first.is_some_and(|first| first > 0) && says(0, &heads);
    let has_area = kinds::only_area(pieces).is_some();
    let is_open = is_headed || calls > 1 || has_area && converts;
    let cause = match converts {
        true => "a chain is 66 ft, a rod 16 1/2 ft and a link 0.66 ft",
        false => "the parts of an angle have their marks",
    };
    if changes.is_empty() || !is_open {
        return None;
    }
    Some(Plain { line: with(line, &changes)?, cause })
}
