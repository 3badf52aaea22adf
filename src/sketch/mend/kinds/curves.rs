//! Suggestions for whole lines that describe slanted walls, curved walls and bays.

use super::super::compass::slant;
use super::super::pieces::Piece;
use super::measure::{Measure, length_at, lengths, written};
use super::{Answer, Rule, Typed, first_of, remark};
use crate::units::length::Length;

const WAYS: [&str; 8] = ["north", "east", "south", "west", "n", "e", "s", "w"];

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[tie, between, slanted, bay, arc, overall];
    first_of(rules, typed)
}

/// `diagonal check 49' 5" corner 1 to corner 3`, `tie from corner 1 to corner 3: 49' 5"`.
fn tie(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["tie", "diagonal", "check", "cross", "diag", "measure", "across", "corner"])
    {
        return None;
    }
    let corners: Vec<usize> = (usize::from(!typed.says(0, &["corner"]))..typed.pieces.len())
        .filter(|&at| typed.says(at, &["corner", "corners"]))
        .collect();
    let number = |at: usize| {
        let piece = typed.piece(at)?;
        if piece.sort == super::Sort::Word
            && !piece.is_word(&["to", "and", "from", "corner", "x", "by"])
        {
            return Some(format!("\"{}\"", piece.text));
        }
        let is_name = piece.sort == super::Sort::Text;
        (piece.is_number() && piece.text.len() <= 2 || is_name).then(|| piece.text.clone())
    };
    let (one, two, used) = match corners[..] {
        [] if typed.says(1, &["from", "between", "check"]) && typed.says(3, &["to", "and"]) => {
            (number(2)?, number(4)?, vec![2, 4])
        }
        [first, second] => (number(first + 1)?, number(second + 1)?, vec![first + 1, second + 1]),
        [first]
            if typed.says(first + 2, &["to", "and"]) || typed.piece(first + 2)?.is_mark("-–&") =>
        {
            (number(first + 1)?, number(first + 3)?, vec![first + 1, first + 3])
        }
        _ => return None,
    };
    // The length is what remains: before the corners or after them.
    let found: Vec<(usize, Measure)> = (1..typed.pieces.len())
        .filter(|at| !used.contains(at))
        .filter_map(|at| length_at(&typed.pieces, at).map(|measure| (at, measure)))
        .filter(|(_, measure)| measure.has_unit)
        .collect();
    let (_, measure) = found.first()?;
    Some(Answer::line(
        format!("tie corner {one} to corner {two} {}", measure.text),
        "a length taped across is a `tie`: both corners, then the length",
    ))
}

/// `NNE 4'`, `45° NE 4' 2"`: a way between the ways of the compass.
fn between(typed: &Typed<'_>) -> Option<Answer> {
    let word = typed.lower(0).replace(['-', '\'', '’'], "");
    let sharp = match word.as_str() {
        "nne" => Some(("N 22.5° E", 1)),
        "ene" => Some(("N 67.5° E", 1)),
        "ese" => Some(("S 67.5° E", 1)),
        "sse" => Some(("S 22.5° E", 1)),
        "ssw" => Some(("S 22.5° W", 1)),
        "wsw" => Some(("S 67.5° W", 1)),
        "wnw" => Some(("N 67.5° W", 1)),
        "nnw" => Some(("N 22.5° W", 1)),
        "noreast" => Some(("N 45° E", 1)),
        _ => None,
    };
    if let Some((call, at)) = sharp {
        let measure = length_at(&typed.pieces, at).filter(|measure| measure.has_unit)?;
        return (measure.end == typed.pieces.len()).then(|| {
            Answer::line(
                format!("bearing {call} {}", measure.text),
                "a slanted wall taped along itself has a bearing; a `diagonal` has how far it runs each way",
            )
        });
    }
    let degrees = typed.piece(0).filter(|degrees| degrees.is_number())?;
    let mark = typed.piece(1)?.is_mark("°º") || typed.says(1, &["deg", "degree", "degrees"]);
    // `45° NE 4' 2"` or `45 degrees 4' 2" northeast`
    let (slanted, measure) = match slant(&typed.lower(2)) {
        Some(slanted) => (Some(slanted), length_at(&typed.pieces, 3)?),
        None => {
            let measure = length_at(&typed.pieces, 2).filter(|one| one.has_unit && mark)?;
            (slant(&typed.lower(measure.end)), measure)
        }
    };
    let (one, two) = slanted.filter(|_| mark)?;
    let ends = measure.end == typed.pieces.len()
        || measure.end + 1 == typed.pieces.len() && slant(&typed.lower(measure.end)).is_some();
    if !ends {
        return None;
    }
    let letter = |word: &str| word[..1].to_uppercase();
    Some(Answer::line(
        format!("bearing {} {}° {} {}", letter(one), degrees.text, letter(two), measure.text),
        "a slanted wall taped along itself has a bearing: N or S, the angle, E or W, the length",
    ))
}

/// `southwest 3' 3 5/8"`, `SW 2' 4" 2' 4"` or `diagonal 2' 4" south 2' 4" west` becomes a line in the form of
/// `diagonal`, or asks for the missing length.
fn slanted(typed: &Typed<'_>) -> Option<Answer> {
    let words = ["diagonal", "diag", "angle", "angled", "slant", "slanted", "diagonally"];
    let begins = typed.says(0, &words);
    let from = usize::from(begins);
    let from = from + usize::from(begins && typed.says(from, &["wall", "side"]));
    let mut way = slant(&typed.lower(from)).map(|legs| (legs, from + 1));
    let compass =
        |at: usize| WAYS[..4].iter().find(|word| typed.says(at, &[word, &word[..1]])).copied();
    if way.is_none()
        && (begins || length_at(&typed.pieces, from + 2).is_some())
        && let (Some(one), Some(two)) = (compass(from), compass(from + 1))
    {
        way = Some(((one, two), from + 2));
    }
    let is_filler = |piece: &Piece| {
        piece.is_mark(",;&@") || piece.is_word(&["and", "by", "x", "then", "at", "for"])
    };
    if let Some(((one, two), mut at)) = way {
        let mut found = Vec::new();
        while at < typed.pieces.len() {
            if let Some(measure) = length_at(&typed.pieces, at) {
                at = measure.end;
                found.push(measure);
            } else if is_filler(&typed.pieces[at]) {
                at += 1;
            } else {
                break;
            }
        }
        let rest = typed.rest(at);
        if rest.starts_with(['°', 'º']) {
            found.pop();
        }
        let is_each = ["each way", "each", "both ways", "both", "each direction"]
            .contains(&rest.to_lowercase().trim_matches([' ', ',', '(', ')']));
        return match &found[..] {
            [length] if is_each => Some(Answer::line(
                format!("diagonal {one} {} {two} {}", length.text, length.text),
                "a slanted wall says how far it runs each way",
            )),
            [length] if typed.says(0, &["diagonal", "diag"]) && rest.is_empty() => {
                Some(along_or_each_way(one, two, length))
            }
            [length] => Some(bearing(one, two, length, rest)),
            [run, rise] => {
                let line = format!("diagonal {one} {} {two} {} {rest}", run.text, rise.text);
                Some(Answer::line(line.trim_end(), "a slanted wall says how far it runs each way"))
            }
            _ => None,
        };
    }
    if !begins {
        return None;
    }
    // `diagonal 2' 4" south 2' 4" west`
    let first = length_at(&typed.pieces, from)?;
    // `diagonal 2' 4" by 2' 4" southwest`
    let between = first.end + usize::from(typed.piece(first.end).is_some_and(is_filler));
    let is_two = |second: &Measure| between > first.end || second.has_unit && first.has_unit;
    if let Some(second) = length_at(&typed.pieces, between).filter(is_two)
        && let Some((one, two)) = slant(&typed.lower(second.end))
    {
        let line = format!(
            "diagonal {one} {} {two} {} {}",
            first.text,
            second.text,
            typed.rest(second.end + 1)
        );
        return Some(Answer::line(line.trim_end(), "a slanted wall says how far it runs each way"));
    }
    if let Some(one) = compass(first.end)
        && let Some(second) = length_at(&typed.pieces, first.end + 1)
        && let Some(two) = compass(second.end)
    {
        let rest = typed.rest(second.end + 1);
        let line = format!("diagonal {one} {} {two} {} {rest}", first.text, second.text);
        return Some(Answer::line(line.trim_end(), "the direction comes before the length"));
    }
    // `diagonal 3' southwest`, `diagonal 3' at 45°`
    if let Some((one, two)) = slant(&typed.lower(first.end)) {
        return Some(bearing(one, two, &first, typed.rest(first.end + 1)));
    }
    if first.end < typed.pieces.len() && length_at(&typed.pieces, first.end).is_some() {
        return Some(Answer::say(
            "a slanted wall says which way it runs before each length",
            "write it as `diagonal south 3' west 3'`, with the two ways that your wall runs",
        ));
    }
    // `angle 45 west 6'`: the number without a unit is an angle.
    let along = lengths(&typed.pieces, first.end).pop().map(|(_, last)| last);
    let first = along.filter(|last| last.has_unit && !first.has_unit).unwrap_or(first);
    Some(Answer::say(
        "one length along a slanted wall does not say which way it runs",
        format!(
            "write its bearing too, `bearing S 45° W {}` with N or S and E or W as your wall runs, or how far it runs each way: `diagonal south 3' west 3'`",
            first.text
        ),
    ))
}

/// `diagonal south west 2' 4"`: along the wall, or each way.
fn along_or_each_way(one: &str, two: &str, length: &Measure) -> Answer {
    let text = &length.text;
    let each = format!("diagonal {one} {text} {two} {text}");
    match bearing(one, two, length, "") {
        Answer::Lines(mut lines, cause) => {
            lines.push(each);
            Answer::Lines(lines, cause)
        }
        other => other,
    }
}

/// Suggests a bearing for a slanted wall with a single length; half a right angle is only the most likely angle.
fn bearing(one: &str, two: &str, length: &Measure, rest: &str) -> Answer {
    let letter = |word: &str| word[..1].to_uppercase();
    let (from, to) = if ["north", "south"].contains(&one) { (one, two) } else { (two, one) };
    let rest = rest.trim_start_matches(['°', 'º', ' ']);
    // `NE 4' 3", east 30'`: another wall is no remark.
    let more = rest.trim_start_matches([',', ';', '/', ' ']);
    let more = more.strip_prefix("then ").or_else(|| more.strip_prefix("and ")).unwrap_or(more);
    if super::super::begins_as_side(more) {
        return Answer::line(
            format!("bearing {} 45° {} {}\n{more}", letter(from), letter(to), length.text),
            "each side goes on its own line; a slanted wall taped along itself has a bearing, 45° where it turns half a right angle",
        );
    }
    let comment = if rest.is_empty() { String::new() } else { format!("  # {}", remark(rest)) };
    Answer::line(
        format!("bearing {} 45° {} {}{comment}", letter(from), letter(to), length.text),
        "a slanted wall taped along itself has a bearing, 45° where it turns half a right angle; a `diagonal` has how far it runs each way",
    )
}

/// `bay window east 8' wide 2' deep 4' flat` or `bay east 8' out 2' angled 45` becomes a line in the form of `bay`.
fn bay(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["bay"]) {
        return None;
    }
    let way = typed.find(1, &WAYS).filter(|way| *way <= 3)?;
    if typed.says(way + 1, &["side", "wall", "face", "elevation"]) {
        return Some(Answer::say(
            "a bay says which way its wall was walked, and not on which side of the house it is",
            "write `bay`, the way that the wall runs there, and the width of the bay; then `out` and how far it stands out, and `flat` and the width of its front, or `round`",
        ));
    }
    let found = lengths(&typed.pieces, way + 1);
    let line = |out: &Measure, width: &Measure, front: &str| {
        format!("bay {} {} out {} {front}", typed.lower(way), width.text, out.text)
    };
    let is_round =
        typed.find(way, &["round", "curved", "circular", "bow", "rounded", "half-round"]).is_some();
    let angle = typed.find(way, &["angled", "angle", "at", "degrees"]).is_some();
    let is_45 = typed.pieces.iter().any(|piece| piece.text == "45");
    let measures: Vec<&Measure> =
        found.iter().map(|(_, measure)| measure).filter(|measure| measure.has_unit).collect();
    // The word before or after a length says which one it is.
    let after = measures.last().is_some_and(|last| last.end < typed.pieces.len());
    let labeled = |labels: &[&str]| {
        found.iter().find(|(first, measure)| {
            measure.has_unit
                && (if after {
                    typed.says(measure.end, labels)
                } else {
                    typed.says(first - 1, labels)
                } || typed.says(first - 1, &labels[..1]))
        })
    };
    if typed.find(way, &["sides", "wings", "cheeks", "returns"]).is_some() {
        return Some(Answer::say(
            "a bay has no length of its slanted sides",
            format!(
                "write `bay {}` and its width, `out` and how far it stands out, `flat` and the width of its front",
                typed.lower(way)
            ),
        ));
    }
    match measures[..] {
        [width, out, flat] => {
            let deep = labeled(&["out", "deep", "depth", "projection", "projects", "projecting"])
                .map_or(out, |(_, measure)| measure);
            let front = labeled(&["flat", "front", "face", "center", "middle"])
                .map_or(flat, |(_, measure)| measure);
            let wide = [width, out, flat]
                .into_iter()
                .find(|measure| measure.end != deep.end && measure.end != front.end)?;
            Some(Answer::line(
                line(deep, wide, &format!("flat {}", front.text)),
                "a bay has its direction and width, then `out`, then `flat` or `round`",
            ))
        }
        [width, out] if is_round => Some(Answer::line(
            line(out, width, "round"),
            "a bay has its direction and width, then `out`, then `flat` or `round`",
        )),
        [width, out] if angle && is_45 => {
            let flat = width.length - out.length - out.length;
            (flat > Length::ZERO).then(|| {
                Answer::line(
                    line(out, width, &format!("flat {}", written(flat, width))),
                    "a bay has its flat front instead of an angle: at 45° it is the width less twice `out`",
                )
            })
        }
        [width, out] => Some(Answer::say(
            "a bay needs its flat front, or `round`",
            format!(
                "write `bay {} {} out {} flat` and the width of its front, or `round` instead of it",
                typed.lower(way),
                width.text,
                out.text
            ),
        )),
        _ => None,
    }
}

/// `arc west 9' 8" radius 5'`, `arc west 9' 8" bulge 3' 9" outward` or `half round west 9' 8"` becomes a line in the
/// form of `arc`.
fn arc(typed: &Typed<'_>) -> Option<Answer> {
    let half = typed
        .find(0, &["half", "semicircle", "semi", "half-round", "semicircular", "half-circle"])
        .filter(|half| *half == 0 || typed.says(0, &["arc", "curve", "curved"]) && *half <= 2);
    if !typed.says(0, &["arc", "curve", "curved"]) && half.is_none() {
        return None;
    }
    let way = typed.find(0, &WAYS).filter(|way| *way <= 4)?;
    let along = WAYS.iter().find(|word| typed.says(way, &[word]))?;
    let across = if ["north", "south", "n", "s"].contains(along) {
        ["east", "west"]
    } else {
        ["north", "south"]
    };
    // `arc 8' east 2' rise`
    let turned = way > 1 && length_at(&typed.pieces, 1).is_some_and(|chord| chord.end == way);
    let found = lengths(&typed.pieces, if turned { 1 } else { way + 1 });
    let chord = &found.first()?.1;
    // Only its side is missing or wrong.
    if typed.says(0, &["arc"]) && typed.says(chord.end, &["rise"]) {
        return None;
    }
    let side =
        across.iter().find(|side| typed.find(chord.end, &[side, &side[..1]]).is_some()).copied();
    let (rise, cause) = if half.is_some() && found.len() == 1 {
        (written(half_of(chord.length), chord), "a half circle rises by half its chord".to_owned())
    } else {
        let (first, second) = found.get(1)?;
        let says = |words: &[&str]| {
            typed.says(first - 1, words)
                || typed.says(first.saturating_sub(2), words)
                || typed.says(second.end, words)
        };
        if says(&["radius", "radii", "r", "rad", "diameter"]) {
            let radius = if says(&["diameter"]) { half_of(second.length) } else { second.length };
            let Some(rise) = rise(chord.length, radius) else {
                return Some(Answer::say(
                    "a curve's radius is at least half its chord",
                    "measure how far the curve rises from the straight line between its ends: `arc east 8' rise 2' south`",
                ));
            };
            (written(rise, chord), "a curve has its rise and no radius: this is the rise of the shorter curve with this chord and radius".to_owned())
        } else if says(&[
            "x", "by", "bulge", "bulges", "bulging", "bow", "bows", "rise", "rises", "sagitta",
            "depth", "deep", "out", "height",
        ]) {
            (
                second.text.clone(),
                "a curve has its `rise`, and the side to which it rises".to_owned(),
            )
        } else if says(&["length", "along", "perimeter", "around"]) {
            return Some(Answer::say(
                "a curve has its chord and its rise, not its length",
                "measure the straight line between its ends and how far the curve rises from it: `arc east 8' rise 2' south`",
            ));
        } else {
            return None;
        }
    };
    let line = |side: &str| format!("arc {along} {} rise {rise} {side}", chord.text);
    let lines = side
        .map_or_else(|| across.iter().map(|side| line(side)).collect(), |side| vec![line(side)]);
    Some(Answer::Lines(lines, cause))
}

fn half_of(length: Length) -> Length {
    Length::from_nm(length.nm().div_euclid(2))
}

/// The rise of the shorter curve with this chord and radius, to 1/8 inch: r - √(r² - (c/2)²).
pub(super) fn rise(chord: Length, radius: Length) -> Option<Length> {
    let eighth = Length::INCH.nm().div_euclid(8);
    let (half, radius) = (half_of(chord).nm(), radius.nm());
    if radius < half {
        return None;
    }
    let square = |value: i64| i128::from(value) * i128::from(value);
    let inner = (square(radius) - square(half)).isqrt();
    let rise = radius - i64::try_from(inner).ok()?;
    Some(Length::from_nm((rise + eighth.div_euclid(2)).div_euclid(eighth) * eighth))
        .filter(|rise| *rise > Length::ZERO)
}

/// Asks for the direction that is missing in `overall width 48' 2"`.
fn overall(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["overall", "total"]) || typed.find(1, &WAYS).is_some() {
        return None;
    }
    let found = lengths(&typed.pieces, 1);
    if found.len() == 2 && typed.says(0, &["overall"]) {
        return Some(Answer::say(
            "an overall length says which way it was taped, one on each line",
            format!(
                "write `overall east {}` and on the next line `overall north {}`, or the other way round",
                found[0].1.text, found[1].1.text
            ),
        ));
    }
    let [(_, measure)] = &found[..] else { return None };
    let says =
        typed.find(1, &["width", "depth", "length", "size", "wide", "deep", "long", "house"]);
    (measure.has_unit && (says.is_some() || measure.end == typed.pieces.len())).then(|| {
        let lines = ["east", "north"].map(|way| format!("overall {way} {}", measure.text));
        Answer::Lines(lines.into(), "an overall length says which way it was taped".to_owned())
    })
}
