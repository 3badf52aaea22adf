//! Changes to pieces of bearings, slanted walls and curved walls.

use super::super::change::{Attempt, Edit};
use super::super::compass::slant;
use super::super::pieces::{Piece, Sort, cut, join, replaced};
use super::DIRECTIONS;
use crate::diagnostic::Word;

/// Rewrites bearings as deeds and tables of calls give them.
pub(super) fn bearings(pieces: &[Piece]) -> Vec<Edit> {
    let mut edits = Vec::new();
    let northing = ["n", "north", "s", "south"];
    let easting = ["e", "east", "w", "west"];
    let begins = usize::from(pieces.first().is_some_and(|piece| piece.is_word(&["bearing"])));
    let Some(from) = pieces.get(begins) else { return edits };
    let is_angle = |piece: &Piece| {
        piece.is_number()
            || piece.is_mark("°º'’′\"”″-.:")
            || piece.is_word(&["deg", "degrees", "d", "min", "sec"])
            || piece.touches && piece.is_word(&["m", "s"])
    };
    if from.is_word(&northing) {
        let length = pieces[begins + 1..].iter().take_while(|piece| is_angle(piece)).count();
        let end = begins + 1 + length;
        let toward = pieces.get(end).is_some_and(|piece| piece.is_word(&easting));
        // `north 30' 2" west 4'` are walls.
        let is_length = pieces.get(2).is_some_and(|mark| mark.is_mark("'’′\"”″"));
        if begins == 0 && toward && length > 0 && !is_length {
            let with = [&[Piece::word("bearing")], pieces].concat();
            edits.push(Edit::new(with, "a deed's call begins with `bearing`"));
        }
        if length > 0 && (toward || begins == 1) && (begins == 1 || !is_length) {
            // `45-30-15`, `45:30`, `45d30m`
            let parts: Vec<Piece> = pieces[begins + 1..end]
                .iter()
                .filter(|piece| piece.is_number())
                .map(|piece| Piece { touches: false, ..piece.clone() })
                .collect();
            if (1..=3).contains(&parts.len()) && toward {
                let marks = ["°", "'", "\""];
                let mut by = Vec::new();
                for (part, mark) in parts.into_iter().zip(marks) {
                    by.push(part);
                    by.push(Piece::new(Sort::Mark, mark).touching());
                }
                if let Some(piece) = pieces.get(end) {
                    by.push(Piece { touches: false, ..piece.clone() });
                }
                edits.push(Edit::new(
                    replaced(pieces, begins + 1, end + 1, &by),
                    "degrees, minutes and seconds each have their own mark",
                ));
            }
        }
        // East or west is missing: it could be either.
        if begins == 1 && !toward {
            for letter in ["E", "W"] {
                for at in begins + 2..=end.min(pieces.len()) {
                    let mut with = pieces.to_vec();
                    with.insert(at, Piece::word(letter));
                    edits.push(Edit::new(with, "a bearing ends in E or W"));
                }
            }
        }
    }
    edits.extend(azimuth(pieces, begins));
    edits
}

/// `bearing 225° 30'`, `bearing NE 30'`: converts degrees clockwise from north to a quadrant bearing.
fn azimuth(pieces: &[Piece], begins: usize) -> Option<Edit> {
    use rust_decimal::Decimal;
    if begins == 0 {
        return None;
    }
    let cause = "a bearing goes from north or south, by 0 to 90 degrees, toward east or west";
    let word = pieces.get(1)?;
    if let Some((from, toward)) = slant(&word.text) {
        let letter = |word: &str| word[..1].to_uppercase();
        let by = cut(&format!("{} 45° {}", letter(from), letter(toward)));
        return Some(Edit::conversion(replaced(pieces, 1, 2, &by), cause));
    }
    let degrees: Decimal = word.is_number().then(|| word.text.parse().ok())??;
    let mut end = 2;
    while pieces
        .get(end)
        .is_some_and(|piece| piece.is_mark("°º") || piece.is_word(&["deg", "degrees"]))
    {
        end += 1;
    }
    if end == 2 || pieces.get(end).is_some_and(|piece| piece.is_word(&["e", "w", "east", "west"])) {
        return None;
    }
    let quarter = Decimal::from(90);
    let full = quarter * Decimal::from(4);
    let (from, angle, toward) = match degrees {
        d if d < Decimal::ZERO || d > full => return None,
        d if d <= quarter => ("N", d, "E"),
        d if d <= quarter + quarter => ("S", quarter + quarter - d, "E"),
        d if d <= full - quarter => ("S", d - quarter - quarter, "W"),
        d => ("N", full - d, "W"),
    };
    let by = cut(&format!("{from} {}° {toward}", angle.normalize()));
    let mut by = by;
    if let Some(first) = by.first_mut() {
        first.touches = false;
    }
    Some(Edit::conversion(replaced(pieces, 1, end, &by), cause))
}

/// `bearing N 95° E 30'`: measures an angle of more than 90 degrees from the opposite pole.
pub(super) fn beyond_quarter(pieces: &[Piece]) -> Option<Edit> {
    use rust_decimal::Decimal;
    let [begins, from, degrees, ..] = pieces else { return None };
    let degrees: Decimal = degrees.is_number().then(|| degrees.text.parse().ok())??;
    let quarter = Decimal::from(90);
    let other = if from.is_word(&["n", "north"]) { "S" } else { "N" };
    let fits = begins.is_word(&["bearing"])
        && from.is_word(&["n", "north", "s", "south"])
        && degrees > quarter
        && degrees <= quarter + quarter;
    fits.then(|| {
        let angle = (quarter + quarter - degrees).normalize().to_string();
        let by = [Piece::word(other), Piece::new(Sort::Number, angle)];
        Edit::conversion(
            replaced(pieces, 1, 3, &by),
            "a bearing goes from 0 to 90 degrees, counted from north or from south",
        )
    })
}

/// `diagonal south west 4 ft`, `NE 4'`: uses the one length for both legs.
pub(super) fn slanted(pieces: &[Piece]) -> Vec<Edit> {
    let begins = usize::from(pieces.first().is_some_and(|piece| piece.is_word(&["diagonal"])));
    let Some(first) = pieces.get(begins) else { return Vec::new() };
    let second = pieces.get(begins + 1);
    let compass = |piece: &Piece| {
        ["north", "east", "south", "west"]
            .into_iter()
            .find(|word| piece.is_word(&[word, &word[..1]]))
    };
    let (legs, taken) = match slant(&first.text) {
        Some(legs) => (legs, 1),
        None => match (compass(first), second.and_then(compass)) {
            (Some(one), Some(two)) => ((one, two), 2),
            _ => return Vec::new(),
        },
    };
    let rest = &pieces[begins + taken..];
    if rest.is_empty() {
        return Vec::new();
    }
    let numbers = |piece: &&Piece| {
        piece.is_number()
            || piece.is_mark("'’′\"”″/½¼¾⅛⅜⅝⅞-")
            || piece.is_word(&["ft", "feet", "foot", "in", "inch", "inches", "m", "cm", "mm"])
    };
    let count = rest.iter().take_while(numbers).count();
    let (length, after) = (join(&rest[..count]), join(&rest[count..]));
    let (one, two) = legs;
    let letter = |word: &str| word[..1].to_uppercase();
    let cause = "a slanted wall has two lengths, how far it runs and how far it rises; or one length and a bearing";
    // A single length along the wall is neither of the two lengths that a `diagonal` has.
    let lines = if ["north", "south"].contains(&one) {
        vec![format!("bearing {} 45° {} {length} {after}", letter(one), letter(two))]
    } else {
        vec![format!("bearing {} 45° {} {length} {after}", letter(two), letter(one))]
    };
    lines.into_iter().map(|line| Edit::line(line.trim_end(), cause)).collect()
}

/// `arc east 8' rise 2' west`, `diagonal north 3' north 3'`: replaces a direction along the wall where one across it
/// is expected.
pub(super) fn across(pieces: &[Piece], attempt: &Attempt) -> Vec<Edit> {
    if !matches!(attempt.word, Some(Word::BadArc | Word::BadDiagonal)) {
        return Vec::new();
    }
    let Some(last) = pieces.iter().rposition(|piece| piece.is_word(&DIRECTIONS)) else {
        return Vec::new();
    };
    let others = if pieces[last].is_word(&["north", "south", "n", "s"]) {
        ["east", "west"]
    } else {
        ["north", "south"]
    };
    let cause = if attempt.word == Some(Word::BadArc) {
        "a curved wall rises square to its chord"
    } else {
        "a slanted wall runs one way and rises across it"
    };
    others
        .map(|other| Edit::new(replaced(pieces, last, last + 1, &[Piece::word(other)]), cause))
        .into()
}
