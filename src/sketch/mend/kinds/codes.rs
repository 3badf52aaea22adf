//! Walls, calls and bays in the short forms of cards and deeds: moves by letters, azimuths, the three fronts of a bay.

use rust_decimal::Decimal;

use super::super::pieces::{Piece, Sort};
use super::measure::length_at;
use super::{Answer, Rule, Typed, first_of, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[moves, fronts_of_a_bay];
    first_of(rules, typed)
}

/// `U30R41D30L41`, `sketch: 1FR (U30,R41,D30,L41)`: the moves of a card's sketch.
fn moves(typed: &Typed<'_>) -> Option<Answer> {
    let way = |letter: &str| {
        Some(match letter {
            "U" | "u" | "Up" | "up" | "UP" => "north",
            "R" | "r" | "RT" | "Rt" | "rt" => "east",
            "D" | "d" | "DN" | "Dn" | "dn" => "south",
            "L" | "l" | "LT" | "Lt" | "lt" => "west",
            _ => return None,
        })
    };
    let step = |at: usize| {
        let way = way(&typed.piece(at).filter(|letter| letter.sort == Sort::Word)?.text)?;
        let number = typed.piece(at + 1).filter(|number| number.is_number())?;
        number.text.parse::<Decimal>().ok()?;
        let mark = usize::from(typed.piece(at + 2).is_some_and(|mark| mark.is_mark("'’′")));
        Some((format!("{way} {}'", number.text), at + 2 + mark))
    };
    let first = (0..typed.pieces.len()).find(|&at| step(at).is_some())?;
    let (mut at, mut lines) = (first, Vec::new());
    while at < typed.pieces.len() {
        if let Some((line, end)) = step(at) {
            lines.push(line);
            at = end;
        } else if typed.pieces[at].is_mark(",;()[]-–/>. ") || typed.says(at, &["then"]) {
            at += 1;
        } else {
            return None;
        }
    }
    let upright = lines.iter().any(|line| line.starts_with('n') || line.starts_with('s'));
    let across = lines.iter().any(|line| line.starts_with('e') || line.starts_with('w'));
    if lines.len() < 3 || !upright || !across {
        return None;
    }
    let mut name = typed.text(0, first).trim_matches([' ', ':', '(', '[', '-', ',', '=']);
    let mut is_outline = false;
    for word in ["record", "card", "county", "sketch", "outline", "code", "vector", "cad"] {
        let begins = name.get(..word.len()).is_some_and(|start| start.eq_ignore_ascii_case(word));
        if begins {
            is_outline = true;
            name = name[word.len()..].trim_matches([' ', ':', '(', '[', '-', ',', '=']);
        }
    }
    let cause =
        "these are the moves of a sketch, up, right, down and left; each side goes on its own line";
    if name.is_empty() && !is_outline {
        return Some(Answer::line(lines.join("\n"), cause));
    }
    let name = match (name.is_empty(), &typed.attempt.space) {
        (true, Some(space)) => space.clone(),
        (true, None) => "Card".to_owned(),
        (false, _) => name.to_owned(),
    };
    let plain = !name.contains(['"', '\'']) && cut_words(&name) <= 4;
    plain.then(|| {
        Answer::line(
            format!("record outline {}\n{}", quoted(&name), lines.join("\n")),
            "a sketch of the record is `record outline` and its name; its moves, up, right, down and left, are sides, one on each line",
        )
    })
}

fn cut_words(text: &str) -> usize {
    text.split_whitespace().count()
}

/// `bearing az 92.25 105.2'`, `azimuth 92° 15' 105.2'`, `bearing 045 120'`: clockwise from north, as a bearing of a quarter.
pub(super) fn azimuth(typed: &Typed<'_>) -> Option<Answer> {
    let start = typed.first_of_call();
    let says = typed.says(start, &["az", "azimuth", "azm", "azi"]);
    let mut at = start + usize::from(says);
    // `bearing 045 120'`, `bearing 1° 34' 142.67'`, `bearing 90.5 76.3`, `269.25 76.3` below a lot
    let two_numbers = typed.pieces.len() >= start + 2
        && typed.pieces.len() <= start + 4
        && typed.piece(start + 1).is_some_and(Piece::is_number)
        && typed.piece(start).is_some_and(|angle| angle.is_number() && angle.text.contains('.'))
        && (typed.is_in_lot() || typed.says(0, &["bearing"]));
    let is_azimuth = says
        || two_numbers
        || typed.says(0, &["bearing"])
            && typed.piece(1).is_some_and(|angle| {
                angle.is_number()
                    && (angle.text.len() == 3
                        || typed.piece(2).is_some_and(|mark| mark.is_mark("°º")))
            });
    while typed.piece(at).is_some_and(|mark| mark.is_mark(".:=")) || typed.says(at, &["of", "is"]) {
        at += 1;
    }
    let number = |at: usize| typed.piece(at).filter(|piece| is_azimuth && piece.is_number());
    let degrees: Decimal = number(at)?.text.parse().ok()?;
    at += 1;
    let mark = |at: usize, marks: &str, words: &[&str]| {
        typed.piece(at).is_some_and(|piece| piece.is_mark(marks)) || typed.says(at, words)
    };
    let (mut minutes, mut seconds, mut in_minutes) = (Decimal::ZERO, Decimal::ZERO, false);
    if mark(at, "°º", &["deg", "degrees", "d"]) {
        at += 1;
        if let Some(part) = number(at).filter(|_| mark(at + 1, "'’′", &["min", "minutes"])) {
            let value: Decimal = part.text.parse().ok()?;
            // `92° 105.2'` has no minutes.
            if value < Decimal::from(60) && typed.piece(at + 2).is_some() {
                (minutes, in_minutes, at) = (value, true, at + 2);
                if let Some(part) = number(at).filter(|_| mark(at + 1, "\"”″", &["sec", "seconds"]))
                {
                    (seconds, at) = (part.text.parse().ok()?, at + 2);
                }
            }
        }
    }
    at += usize::from(typed.piece(at).is_some_and(|mark| mark.is_mark(",;")));
    at += usize::from(typed.says(at, &["for", "dist", "distance", "a"]));
    let length = length_at(&typed.pieces, at)?;
    let sixty = Decimal::from(60);
    let total = degrees * Decimal::from(3_600) + minutes * sixty + seconds;
    let whole = |degrees: u32| Decimal::from(degrees) * Decimal::from(3_600);
    if total < Decimal::ZERO || total >= whole(360) {
        return None;
    }
    let (from, angle, toward) = if total <= whole(90) {
        ("N", total, "E")
    } else if total <= whole(180) {
        ("S", whole(180) - total, "E")
    } else if total < whole(270) {
        ("S", total - whole(180), "W")
    } else {
        ("N", whole(360) - total, "W")
    };
    let angle = if in_minutes {
        let degrees = (angle / Decimal::from(3_600)).floor();
        let rest = angle - degrees * Decimal::from(3_600);
        let minutes = (rest / sixty).floor();
        let seconds = (rest - minutes * sixty).normalize();
        let seconds = if seconds.is_zero() { String::new() } else { format!(" {seconds}\"") };
        format!("{degrees}° {minutes}'{seconds}")
    } else {
        format!("{}°", (angle / Decimal::from(3_600)).round_dp(6).normalize())
    };
    let rest = super::remark(typed.rest(length.end));
    let comment = if rest.is_empty() { String::new() } else { format!("  # {rest}") };
    Some(Answer::line(
        format!("bearing {from} {angle} {toward} {}{comment}", length.text),
        "an azimuth counts clockwise from north; a bearing counts from north or south toward east or west",
    ))
}

/// `bay west 2'-4'-2' out 2'`: the two slanted parts and the front of a bay, along the wall.
fn fronts_of_a_bay(typed: &Typed<'_>) -> Option<Answer> {
    let way = typed.says(
        1,
        &["north", "east", "south", "west", "back", "front", "left", "right", "n", "e", "s", "w"],
    );
    if !typed.says(0, &["bay"]) || !way {
        return None;
    }
    let feet = |at: usize| {
        let value: Decimal =
            typed.piece(at).filter(|piece| piece.is_number())?.text.parse().ok()?;
        let mark = usize::from(
            typed.piece(at + 1).is_some_and(|mark| mark.is_mark("'’′"))
                || typed.says(at + 1, &["ft"]),
        );
        Some((value, at + 1 + mark))
    };
    let joint = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark("-–—,/+"));
    let (one, at) = feet(2)?;
    let (two, at) = feet(at + 1).filter(|_| joint(at))?;
    let (three, at) = feet(at + 1).filter(|_| joint(at))?;
    let out = at + usize::from(joint(at));
    let depth = out + usize::from(typed.says(out, &["out", "deep", "projects", "sticks"]));
    let depth = depth + usize::from(depth > out && typed.says(depth, &["out"]));
    let length = length_at(&typed.pieces, depth).filter(|_| one == three && depth > out)?;
    let rest = super::remark(typed.rest(length.end));
    let comment = if rest.is_empty() { String::new() } else { format!("  # {rest}") };
    let all = one.checked_add(two)?.checked_add(three)?;
    Some(Answer::line(
        format!(
            "bay {} {}' out {} flat {}'{comment}",
            typed.lower(1),
            all.normalize(),
            length.text,
            two.normalize()
        ),
        "a bay has the width that it takes of the wall, its two slanted parts and its front together",
    ))
}
