//! Walls and calls that lack their way or half their bearing, or whose length is worked out on the line.

use super::super::pieces::{Piece, Sort};
use super::measure::{length_at, lengths};
use super::{Answer, Rule, Typed, first_of};

const WAYS: [&str; 4] = ["north", "east", "south", "west"];

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        begun_with_go,
        stray_last_mark,
        worked_out,
        two_points,
        unit_by_a_slip,
        point_before_inches,
        letter_for_a_digit,
        slant_with_its_length,
        slant_over,
        curved,
        arc_without_its_way,
        line_of_a_table,
        call_along,
        half_a_bearing,
        slanted_without_its_way,
        give_or_take,
        along_the_street,
        call_to_the_beginning,
        due_north,
        tie_of_letters,
        bump_in_a_walk,
    ];
    first_of(rules, typed)
}

fn is_way(typed: &Typed<'_>, at: usize) -> bool {
    typed.says(at, &WAYS) || typed.says(at, &["n", "e", "s", "w"])
}

/// `north 2 x 15.25`, `north 31 - 0.5`: a length that is worked out.
fn worked_out(typed: &Typed<'_>) -> Option<Answer> {
    let [way, one, sign, two] = &typed.pieces[..] else { return None };
    let value = |piece: &Piece| piece.text.parse::<rust_decimal::Decimal>().ok();
    let (first, second) = (value(one)?, value(two)?);
    let spaced = !sign.touches && !two.touches;
    let length = if sign.is_word(&["x"]) || sign.is_mark("×*") {
        // `30 x 40` is a size.
        let is_count = first.scale() == 0
            && first <= rust_decimal::Decimal::from(4)
            && second > rust_decimal::Decimal::from(4);
        is_count.then(|| first.checked_mul(second)).flatten()?
    } else if sign.is_mark("-–−") && spaced && second.scale() > 0 {
        first.checked_sub(second).filter(|left| left.is_sign_positive() && !left.is_zero())?
    } else {
        return None;
    };
    (is_way(typed, 0) && way.sort == Sort::Word).then(|| {
        Answer::line(
            format!("{} {}  # {}", way.text.to_lowercase(), length.normalize(), typed.rest(1)),
            "a length is one number; how it was worked out goes into a comment",
        )
    })
}

/// `north 30..5`, `north 30. 5`: a point typed twice, or a space after it.
fn two_points(typed: &Typed<'_>) -> Option<Answer> {
    let rest = typed.rest(1);
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    let marks = ["..", ". ", ",.", ".,"];
    let (feet, other) = marks.iter().find_map(|mark| rest.split_once(mark))?;
    let other = other.trim();
    let (number, unit) = match other.find(|c: char| !c.is_ascii_digit()) {
        Some(at) => other.split_at(at),
        None => (other, ""),
    };
    let unit = unit.trim();
    let is_metric = typed.attempt.is_metric || matches!(unit, "m" | "cm");
    let is_unit = matches!(unit, "" | "'" | "ft" | "m" | "cm");
    if !(is_way(typed, 0) && digits(feet) && digits(number) && is_unit) {
        return None;
    }
    let way = typed.lower(0);
    let unit = if unit == "ft" { "'" } else { unit };
    let decimal = match unit {
        "m" | "cm" => format!("{way} {feet}.{number} {unit}"),
        _ => format!("{way} {feet}.{number}{unit}"),
    };
    let inches: u32 = number.parse().ok()?;
    let mut offered = vec![decimal];
    if !is_metric && inches < 12 {
        offered.push(format!("{way} {feet}' {inches}\""));
    }
    Some(Answer::Lines(offered, "between feet and their tenths stands one point".to_owned()))
}

/// `north 30 gt 6 in`, `north 30 fi`: feet, with a letter beside the right one.
fn unit_by_a_slip(typed: &Typed<'_>) -> Option<Answer> {
    const SLIPS: [&str; 11] = ["gt", "fi", "fr", "rt", "dt", "ftt", "fft", "tf", "fg", "vt", "ct"];
    let feet = typed.piece(1).filter(|feet| feet.is_number() && is_way(typed, 0))?;
    if !typed.says(2, &SLIPS) {
        return None;
    }
    let way = typed.lower(0);
    if typed.pieces.len() == 3 {
        return Some(Answer::line(
            format!("{way} {}'", feet.text),
            format!("`{}` is not a unit of length", typed.pieces[2].text),
        ));
    }
    let inches = typed.piece(3).filter(|inches| inches.is_number())?;
    let marked = typed.says(4, &["in", "inch", "inches", "on", "un", "im"])
        || typed.piece(4).is_some_and(|mark| mark.is_mark("\""));
    let whole: u32 = inches.text.parse().ok().filter(|inches| *inches < 12)?;
    (typed.pieces.len() == 4 || marked && typed.pieces.len() == 5).then(|| {
        Answer::line(
            format!("{way} {}' {whole}\"", feet.text),
            format!("`{}` is not a unit of length", typed.pieces[2].text),
        )
    })
}

/// `north 40'.2"`: inches, tenths of a foot or a part of an inch.
fn point_before_inches(typed: &Typed<'_>) -> Option<Answer> {
    let rest = typed.rest(1);
    let (feet, other) = rest.split_once(['\'', '’', '′'])?;
    let part = other.trim().strip_prefix('.')?.trim();
    let part = part.strip_suffix(['"', '”', '″']).unwrap_or(part);
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    if !(is_way(typed, 0) && digits(feet) && digits(part)) {
        return None;
    }
    let way = typed.lower(0);
    let mut offered = vec![format!("{way} {feet}.{part}'"), format!("{way} {feet}' 0.{part}\"")];
    if let Some(inches) = part.parse::<u32>().ok().filter(|inches| *inches < 12) {
        offered.insert(0, format!("{way} {feet}' {inches}\""));
    }
    Some(Answer::Lines(offered, "a point stands between feet and inches".to_owned()))
}

/// `north 3O' G"`, `north 30' b"`: letters that look like digits.
fn letter_for_a_digit(typed: &Typed<'_>) -> Option<Answer> {
    if !is_way(typed, 0) {
        return None;
    }
    let rest = typed.rest(1);
    let digit = |c: char| match c {
        'O' | 'o' | 'Q' | 'D' => Some('0'),
        'l' | 'I' | 'i' | '|' => Some('1'),
        'Z' | 'z' => Some('2'),
        'S' | 's' => Some('5'),
        'G' | 'b' => Some('6'),
        'B' => Some('8'),
        'g' | 'q' => Some('9'),
        '0'..='9' => Some(c),
        _ => None,
    };
    let (feet, inches) = rest.split_once(['\'', '’', '′'])?;
    let inches = inches.trim().strip_suffix(['"', '”', '″'])?;
    let read = |text: &str| {
        text.trim()
            .chars()
            .map(digit)
            .collect::<Option<String>>()
            .filter(|text| !text.is_empty() && text.len() <= 3)
    };
    let (feet_read, inches_read) = (read(feet)?, read(inches)?);
    // Letters for 0, 1, 5 and 8 have a rule of their own, which weighs that one may not belong there.
    let is_same = !format!("{feet}{inches}").contains(['G', 'g', 'b', 'q', 'Q', 'D', 'Z', 'z']);
    let fits = inches_read.parse::<u32>().is_ok_and(|inches| inches < 12)
        && feet.contains(|c: char| c.is_ascii_digit());
    (!is_same && fits).then(|| {
        Answer::line(
            format!("{} {feet_read}' {inches_read}\"", typed.lower(0)),
            "a letter stands where a digit should",
        )
    })
}

/// `diagonal 5'8" north 4' east 4'`: the two legs say it all.
fn slant_with_its_length(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["diagonal", "diag", "angle", "slant", "slanted"]) {
        return None;
    }
    let own = length_at(&typed.pieces, 1).filter(|own| own.has_unit)?;
    let mut at = own.end;
    while typed.says(at, &["is", "by"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(",:;=-–("))
    {
        at += 1;
    }
    let one = length_at(&typed.pieces, at + 1).filter(|_| is_way(typed, at))?;
    let next = one.end
        + usize::from(
            typed.says(one.end, &["and"])
                || typed.piece(one.end).is_some_and(|mark| mark.is_mark(",")),
        );
    let two = length_at(&typed.pieces, next + 1).filter(|_| is_way(typed, next))?;
    let stop = typed.pieces.len() - usize::from(typed.pieces.last()?.is_mark(")"));
    (two.end == stop).then(|| {
        Answer::line(
            format!(
                "diagonal {} {} {} {}  # {} as taped",
                typed.lower(at),
                one.text,
                typed.lower(next),
                two.text,
                own.text
            ),
            "a slanted wall is `diagonal` and its two legs; its own length follows from them",
        )
    })
}

/// `diagonal north 4 ft over 4 ft east`, `diag 4x4`: the legs of a slanted wall in another order, or without their ways.
fn slant_over(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["diagonal", "diag", "slant"]) {
        return None;
    }
    if is_way(typed, 1) {
        let one = length_at(&typed.pieces, 2)?;
        let over = one.end + usize::from(typed.says(one.end, &["and", "then"]));
        let over = over + usize::from(typed.says(over, &["over"]));
        let two = length_at(&typed.pieces, over).filter(|_| over > one.end)?;
        return (is_way(typed, two.end) && two.end + 1 == typed.pieces.len()).then(|| {
            Answer::line(
                format!(
                    "diagonal {} {} {} {}",
                    typed.lower(1),
                    one.text,
                    typed.lower(two.end),
                    two.text
                ),
                "each leg of a slanted wall has its way before its length",
            )
        });
    }
    let one = length_at(&typed.pieces, 1)?;
    let by = typed.says(one.end, &["x", "by"])
        || typed.piece(one.end).is_some_and(|by| by.is_mark("×*"));
    let two = length_at(&typed.pieces, one.end + 1).filter(|_| by)?;
    (two.end == typed.pieces.len() && typed.attempt.space.is_some()).then(|| {
        Answer::say(
            "each leg of a slanted wall has its way before its length",
            format!(
                "write `diagonal`, `north` or `south` with `{}`, then `east` or `west` with `{}`, as the walk goes: `diagonal north {} east {}`",
                one.text, two.text, one.text, two.text
            ),
        )
    })
}

/// `round west 40' 2"`, `west 40' 2" curved`: a curve has its rise.
fn curved(typed: &Typed<'_>) -> Option<Answer> {
    const ROUND: [&str; 5] = ["round", "rounded", "curved", "curve", "bowed"];
    let first = usize::from(typed.says(0, &ROUND));
    let length = length_at(&typed.pieces, first + 1).filter(|_| is_way(typed, first))?;
    let mut stop = length.end;
    while typed.says(stop, &ROUND)
        || typed.says(stop, &["wall", "is", "a"])
        || typed.piece(stop).is_some_and(|mark| mark.is_mark(",;:()-–"))
    {
        stop += 1;
    }
    let said = first == 1 || (length.end..stop).any(|at| typed.says(at, &ROUND));
    let way = typed.lower(first);
    let is_north_south = matches!(way.as_str(), "north" | "south" | "n" | "s");
    let side = if is_north_south { "west" } else { "south" };
    (said && stop == typed.pieces.len()).then(|| {
        Answer::say(
            "a curved wall is `arc`, with the way and the length of its chord and how far it bulges",
            format!(
                "measure from the middle of the straight line between its ends out to the wall, as 3', and write `arc {way} {} rise 3' {side}`, with the side to which it bulges",
                length.text
            ),
        )
    })
}

/// `arc 40' 2" rise 3'`: neither the way of the chord nor the side to which it bulges.
fn arc_without_its_way(typed: &Typed<'_>) -> Option<Answer> {
    let chord = length_at(&typed.pieces, 1).filter(|_| typed.says(0, &["arc"]))?;
    let at = chord.end + 1 - usize::from(!typed.says(chord.end, &["rise"]));
    let rise = length_at(&typed.pieces, at).filter(|_| at == chord.end + 1)?;
    (rise.end == typed.pieces.len()).then(|| {
        Answer::say(
            "an arc says which way its chord runs and to which side it bulges",
            format!(
                "write the way before the length and the side at the end: `arc west {} rise {} north`, with the ways of your wall",
                chord.text, rise.text
            ),
        )
    })
}

/// `L1 N 0°30'00" E 120.00`: a row of a table of lines.
fn line_of_a_table(typed: &Typed<'_>) -> Option<Answer> {
    let label = typed.piece(0).filter(|piece| piece.is_word(&["l", "line"]))?;
    let number = typed.piece(1).filter(|number| number.is_number() && number.text.len() <= 3)?;
    let first = 2 + usize::from(typed.piece(2).is_some_and(|mark| mark.is_mark(":.,-–=")));
    let toward = typed.find(first + 1, &["e", "w", "east", "west"])?;
    let length = length_at(&typed.pieces, toward + 1)?;
    let is_angle = typed.rest(first).contains('°');
    (typed.says(first, &["n", "s", "north", "south"])
        && is_angle
        && length.end == typed.pieces.len())
    .then(|| {
        Answer::line(
            format!("bearing {}  # {}{}", typed.rest(first), label.text, number.text),
            "a call begins with `bearing`; its number in the table goes into a comment",
        )
    })
}

/// `N 0°30' E along the road 120'`: words between the bearing and the length.
fn call_along(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let toward = typed.find(first + 1, &["e", "w", "east", "west"])?;
    let is_angle =
        typed.text(first, toward).contains('°') && typed.says(first, &["n", "s", "north", "south"]);
    let (at, length) = lengths(&typed.pieces, toward + 1).into_iter().next()?;
    let words = (toward + 1..at)
        .all(|at| typed.pieces[at].sort == Sort::Word || typed.pieces[at].is_mark(",;"));
    let said = remark(typed, toward + 1, at);
    let begins = typed.says(toward + 1, &["along", "with", "on", "by", "following", "a"]);
    (is_angle && at > toward + 1 && words && begins && length.end == typed.pieces.len()).then(
        || {
            Answer::line(
                format!("bearing {} {}  # {said}", typed.text(first, toward + 1), length.text),
                "a call is its bearing and its length; anything else goes into a comment",
            )
        },
    )
}

fn remark(typed: &Typed<'_>, first: usize, end: usize) -> String {
    let said = super::remark(typed.text(first, end));
    let said = said.trim_end_matches([',', ' ']);
    let said = said.strip_suffix("a distance of").unwrap_or(said).trim_end_matches([',', ' ']);
    said.strip_suffix(" for").unwrap_or(said).to_owned()
}

/// `bearing 0° 30' E 120'`, `bearing N 0° 30'`: half a bearing.
fn half_a_bearing(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["bearing"]));
    let mark = |at: usize, marks: &str| typed.piece(at).is_some_and(|piece| piece.is_mark(marks));
    let number = |at: usize| typed.piece(at).is_some_and(Piece::is_number);
    // The degrees, then minutes and seconds.
    let angle = |mut at: usize| {
        let begin = at;
        for marks in ["°º˚", "'’′", "\"”″"] {
            if number(at) && mark(at + 1, marks) {
                at += 2;
            } else {
                break;
            }
        }
        (at > begin).then_some(at)
    };
    if let Some(end) = angle(first)
        && typed.says(end, &["e", "w", "east", "west"])
        && length_at(&typed.pieces, end + 1).is_some_and(|one| one.end == typed.pieces.len())
    {
        let rest = typed.rest(first);
        return Some(Answer::Lines(
            ["N", "S"].map(|from| format!("bearing {from} {rest}")).into(),
            "a bearing begins at N or S".to_owned(),
        ));
    }
    let end =
        angle(first + 1).filter(|_| first == 1 && typed.says(1, &["n", "s", "north", "south"]))?;
    (end == typed.pieces.len() && end > 4).then(|| {
        Answer::say(
            "the bearing lacks its end, and the call its length",
            format!(
                "write `E` or `W` after the angle, then the length of the call, as `{} E 120'`",
                typed.line.trim()
            ),
        )
    })
}

/// `45° 5' 8"`, `bearing 45 5' 8"`, `angle 45 4' 3"`: a slanted wall without the quarter in which it runs.
fn slanted_without_its_way(typed: &Typed<'_>) -> Option<Answer> {
    let names = ["bearing", "angle", "angled", "slant", "diagonal", "diag"];
    let first = usize::from(typed.says(0, &names));
    let degrees = typed.piece(first).filter(|piece| piece.is_number())?;
    let marked = typed.piece(first + 1).is_some_and(|mark| mark.is_mark("°º˚"))
        || typed.says(first + 1, &["deg", "degree", "degrees"]);
    let length =
        length_at(&typed.pieces, first + 1 + usize::from(marked)).filter(|one| one.has_unit)?;
    let is_half = degrees.text == "45" && (marked || typed.says(0, &names[..4]));
    (is_half && length.end == typed.pieces.len() && !typed.is_in_lot()).then(|| {
        let quarters = [("N", "E"), ("S", "E"), ("S", "W"), ("N", "W")];
        let line =
            |(from, toward): (&str, &str)| format!("bearing {from} 45° {toward} {}", length.text);
        Answer::Lines(
            quarters.map(line).into(),
            "a slanted wall says between which two ways it runs".to_owned(),
        )
    })
}

/// `north 9.3 ±0.05`, `north 30' +/- 1"`: how exactly a wall was measured.
fn give_or_take(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 1).filter(|_| is_way(typed, 0))?;
    let sign = typed.piece(length.end).filter(|sign| sign.is_mark("±"))?;
    let by = length_at(&typed.pieces, length.end + 1)
        .filter(|by| by.has_unit || by.text.contains('.'))?;
    (sign.text == "±" && by.end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("{} {} tolerance {}", typed.lower(0), length.text, by.text),
            "how exactly a wall was measured goes after `tolerance`",
        )
    })
}

/// `front 40' 2" along the street`: the wall at the street runs along it.
fn along_the_street(typed: &Typed<'_>) -> Option<Answer> {
    let front = typed.attempt.beside.front?;
    let length =
        length_at(&typed.pieces, 1).filter(|one| typed.says(0, &["front"]) && one.has_unit)?;
    let says = |at: usize, words: &[&str]| typed.says(length.end + at, words);
    let along = says(0, &["along", "facing", "at", "on", "toward"])
        && says(1, &["the"])
        && says(2, &["street", "road", "front"])
        || says(0, &["along", "facing"]) && says(1, &["street", "road"]);
    let ways = if matches!(front.word(), "north" | "south") {
        ["east", "west"]
    } else {
        ["north", "south"]
    };
    (along && typed.pieces.len() <= length.end + 3).then(|| {
        Answer::Lines(
            ways.map(|way| format!("{way} {}", length.text)).into(),
            "a wall says which way it is walked, and not on which side of the house it stands"
                .to_owned(),
        )
    })
}

/// `go north 30 ft 3`: a word before the way.
fn begun_with_go(typed: &Typed<'_>) -> Option<Answer> {
    let go = ["go", "going", "run", "runs", "walk", "head", "then", "next"];
    let first = 1 + usize::from(typed.says(1, &["to", "the", "due"]));
    let bare = typed.pieces.last().filter(|last| last.is_number())?;
    let inches: u32 = bare.text.parse().ok().filter(|inches| *inches < 12)?;
    let feet = typed.piece(first + 1).filter(|feet| feet.is_number())?;
    let is_feet = typed.says(first + 2, &["ft", "feet", "foot"])
        || typed.piece(first + 2).is_some_and(|mark| mark.is_mark("'’′"));
    let ends = first + 4 == typed.pieces.len();
    (typed.says(0, &go) && is_way(typed, first) && is_feet && ends).then(|| {
        Answer::line(
            format!("{} {}' {inches}\"", typed.lower(first), feet.text),
            "a side begins with its way, and the inches have no mark",
        )
    })
}

/// `south 30'3"'`: a mark too many at the end.
fn stray_last_mark(typed: &Typed<'_>) -> Option<Answer> {
    let line = typed.line.trim_end();
    let plain = line.strip_suffix(['\'', '’', '′', '`', '´'])?;
    let ends = plain.ends_with(['"', '”', '″']);
    let length = length_at(&typed.pieces, 1).filter(|one| is_way(typed, 0) && one.has_unit)?;
    (ends && length.end + 1 == typed.pieces.len()).then(|| {
        Answer::line(
            format!("{} {}", typed.lower(0), length.text),
            "after the inches stands one mark and no other",
        )
    })
}

/// `N 89º30'00" W 76.30' to P.O.B.`: where the call ends goes into a comment.
fn call_to_the_beginning(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let toward = typed.find(first + 1, &["e", "w", "east", "west"])?;
    let is_angle = typed.text(first, toward).contains(['°', 'º', '˚'])
        && typed.says(first, &["n", "s", "north", "south"]);
    let length = length_at(&typed.pieces, toward + 1).filter(|_| is_angle)?;
    let rest = typed.rest(length.end).to_lowercase();
    let rest = rest.trim_start_matches([',', ';', ' ']);
    let beginning = [
        "to p.o.b",
        "to the p.o.b",
        "to the point of beginning",
        "to point of beginning",
        "to the place of beginning",
        "to p. o. b",
        "to pob",
        "to the pob",
        "back to pob",
        "back to the pob",
    ];
    // The area of the land goes to the line of the lot.
    if super::measure::area_from(&typed.pieces, length.end).is_some() {
        return None;
    }
    beginning.iter().any(|words| rest.starts_with(words)).then(|| {
        Answer::line(
            format!(
                "bearing {} {}  # to the point of beginning",
                typed.text(first, toward + 1),
                length.text
            ),
            "a call is its bearing and its length; anything else goes into a comment",
        )
    })
}

/// `bearing North 120`, `bearing due east 120'`: along the compass itself.
fn due_north(typed: &Typed<'_>) -> Option<Answer> {
    let first = 1 + usize::from(typed.says(1, &["due"]));
    let way =
        typed.piece(first).filter(|_| typed.says(0, &["bearing"]) && typed.says(first, &WAYS))?;
    let length = length_at(&typed.pieces, first + 1)?;
    (length.end == typed.pieces.len()).then(|| {
        let bearing = match way.text.to_lowercase().as_str() {
            "north" => "N 0° E",
            "south" => "S 0° E",
            "east" => "N 90° E",
            _ => "N 90° W",
        };
        Answer::line(
            format!("bearing {bearing} {}", length.text),
            "a bearing has its angle: this one runs along the compass itself",
        )
    })
}

/// `tie A-C 50' 3"`: corners without their numbers.
fn tie_of_letters(typed: &Typed<'_>) -> Option<Answer> {
    let letter = |at: usize| {
        typed.piece(at).is_some_and(|piece| {
            piece.sort == Sort::Word
                && piece.text.len() == 1
                && piece.text.chars().all(char::is_alphabetic)
        })
    };
    let joined = typed.piece(2).is_some_and(|mark| mark.is_mark("-–—")) || typed.says(2, &["to"]);
    let apart = letter(1) && joined && letter(3);
    // `A-C` may be one word.
    let one_word = typed.piece(1).is_some_and(|piece| {
        let parts: Vec<&str> = piece.text.split('-').collect();
        parts.len() == 2 && parts.iter().all(|part| part.len() == 1)
    });
    let at = if apart { 4 } else { 2 };
    let length = length_at(&typed.pieces, at).filter(|one| one.has_unit)?;
    (typed.says(0, &["tie", "diagonal", "check"]) && (apart || one_word) && length.end == typed.pieces.len()).then(|| {
        Answer::say(
            "the corners of a walk have numbers, 1 where it begins, or names of their own",
            format!(
                "write `tie corner 1 to corner 3 {}` with the numbers of the two corners: where wall 1 begins is corner 1, where wall 2 begins corner 2",
                length.text
            ),
        )
    })
}

/// `bumpout 8' x 2'` between two walls: three walls of the walk.
fn bump_in_a_walk(typed: &Typed<'_>) -> Option<Answer> {
    let is_bump = typed.says(0, &["bumpout", "bump-out", "popout", "pop-out", "jog"]);
    let beside = &typed.attempt.beside;
    let in_walk =
        super::super::begins_as_side(&beside.before) && super::super::begins_as_side(&beside.after);
    (is_bump && in_walk && super::size_in(typed.line).is_some()).then(|| {
        Answer::say(
            "what stands out of a wall or back from it is three sides",
            "write them one on each line, out, along and back, each with the way that it runs; what is left off the walk is not in its area",
        )
    })
}
