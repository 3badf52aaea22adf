//! Walls whose length is said twice, as a range, as a limit, with a tolerance, or is no length at all.

use rust_decimal::Decimal;

use super::super::pieces::{Piece, Sort};
use super::measure::{Measure, area_at, length_at, lengths, written};
use super::published::spoken_number;
use super::walls::{WAYS, is_way};
use super::{Answer, Rule, Typed, first_of, remark};
use crate::units::length::{Form, Length, WrittenLength};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if !is_way(typed, 0) {
        return None;
    }
    let rules: &[Rule] = &[
        inches_or_inches,
        measured_and_recorded,
        read_over_or_under,
        strong_or_light,
        spoken_hundreds,
        foot_mark_for_a_point,
        point_in_the_feet,
        slash_for_the_marks,
        without_brick,
        corrected,
        recorded_by_its_name,
        no_length,
        spoken_length,
        only_recorded,
        bare_with_remark,
        spoken_point,
        twelfths,
        inches_without_mark,
        degrees_for_feet,
        split_number,
        same_twice,
        range,
        limit,
        tolerance,
        with_more,
        way_again,
        two_ways,
    ];
    first_of(rules, typed)
}

const ONE_OF_TWO: &str = "a wall has one length: write the one that you trust";

fn end_of_line(typed: &Typed<'_>, line: &str, end: usize) -> String {
    format!("{line} {}", typed.rest(end)).trim_end().to_owned()
}

/// `5'30 m`: a foot mark where the point of meters belongs.
fn foot_mark_for_a_point(typed: &Typed<'_>) -> Option<Answer> {
    let [way, whole, mark, part, unit] = &typed.pieces[..] else { return None };
    let is_number = |piece: &Piece| piece.is_number() && !piece.text.contains(['.', ',']);
    let fits = is_number(whole)
        && mark.is_mark("'’′")
        && is_number(part)
        && part.text.len() <= 3
        && unit.is_word(&["m", "mt", "mts", "meters", "metres"]);
    fits.then(|| {
        Answer::line(
            format!("{} {}.{} m", way.text, whole.text, part.text),
            "a length is in feet and inches or in meters: meters have a point",
        )
    })
}

/// `2.8' 10"`: feet with a point, and inches after them.
fn point_in_the_feet(typed: &Typed<'_>) -> Option<Answer> {
    let feet = typed.piece(1).filter(|feet| feet.is_number())?;
    let (whole, tenths) = feet.text.split_once('.')?;
    let is_mark = |at: usize, marks: &str| typed.piece(at).is_some_and(|mark| mark.is_mark(marks));
    let is_all = is_mark(2, "'’′") && is_mark(4, "\"”″") && typed.pieces.len() == 5;
    let inches = typed.piece(3).filter(|inches| inches.is_number() && is_all)?;
    let fits = whole.len() + tenths.len() < 3 && inches.text.parse::<u32>().ok()? < 12;
    fits.then(|| {
        Answer::line(
            format!("{} {whole}{tenths}' {}\"", typed.text(0, 1), inches.text),
            "inches come after whole feet: does the point not belong there?",
        )
    })
}

/// `28.4' (M) 28' (R)`, `28.4' (M)`: a surveyor's marks of what was measured and what the record has.
fn measured_and_recorded(typed: &Typed<'_>) -> Option<Answer> {
    let marked = |at: usize, letters: &[&str]| {
        let open = typed.piece(at).is_some_and(|mark| mark.is_mark("("));
        let close = typed.piece(at + 2).is_some_and(|mark| mark.is_mark(")"));
        (open && close && typed.says(at + 1, letters)).then_some(at + 3)
    };
    let measured = length_at(&typed.pieces, 1).filter(|measured| measured.has_unit)?;
    let end = marked(measured.end, &["m", "meas", "measured", "f", "field"])?;
    let way = typed.lower(0);
    const CAUSE: &str = "a wall has the length that was measured, then `recorded` and the record's";
    if end == typed.pieces.len() {
        return Some(Answer::line(format!("{way} {}", measured.text), CAUSE));
    }
    let recorded = length_at(&typed.pieces, end).filter(|recorded| recorded.has_unit)?;
    let last = marked(recorded.end, &["r", "rec", "record", "recorded", "d", "deed", "p", "plat"])?;
    (last == typed.pieces.len())
        .then(|| Answer::line(format!("{way} {} recorded {}", measured.text, recorded.text), CAUSE))
}

/// `48' 6 1/2" minus 1/2"`, `22' 4 strong 1/8"`: a length, and how much the tape showed more or less.
fn read_over_or_under(typed: &Typed<'_>) -> Option<Answer> {
    const OVER: [&str; 4] = ["plus", "strong", "heavy", "over"];
    const UNDER: [&str; 7] = ["minus", "less", "light", "shy", "scant", "short", "under"];
    let (way, rest) = typed.line.trim().split_once(' ')?;
    // An inch mark with a space before it makes a text of what follows, so that the words are looked for in the line.
    let words: Vec<&str> =
        rest.split([' ', ',', '(', ')']).filter(|word| !word.is_empty()).collect();
    let is_said = |word: &&str| OVER.contains(word) || UNDER.contains(word);
    let said = words.iter().position(is_said).filter(|said| *said > 0)?;
    let tidy = |words: &[&str]| words.join(" ").replace(" \"", "\"");
    let mut whole = tidy(&words[..said]);
    if whole.contains('\'') && whole.ends_with(|c: char| c.is_ascii_digit()) {
        whole.push('"');
    }
    let part = tidy(&words[said + 1..]);
    if !part.ends_with('"') && !part.ends_with("in") {
        return None;
    }
    let (whole, part): (Length, Length) = (whole.parse().ok()?, part.parse().ok()?);
    if part >= Length::INCH || part >= whole {
        return None;
    }
    let length = if UNDER.contains(&words[said]) { whole - part } else { whole + part };
    let length = WrittenLength::new(length, Form::FeetAndInches);
    Some(Answer::line(
        format!("{way} {length}"),
        "a wall has one length: what the tape showed more or less is added or taken off",
    ))
}

/// `52' 8 strong`, `52' 7 3/4 light`: inches without their mark, and how the tape was read.
fn strong_or_light(typed: &Typed<'_>) -> Option<Answer> {
    let read =
        ["strong", "light", "heavy", "full", "plus", "minus", "scant", "shy", "good", "bare"];
    let said = typed.pieces.len().checked_sub(1).filter(|&at| at > 3 && typed.says(at, &read))?;
    let feet = typed.piece(2).is_some_and(|mark| mark.is_mark("'’′") || mark.is_word(&["ft"]));
    let inches = typed.text(3, said);
    let is_inches = typed.piece(3).is_some_and(Piece::is_number)
        && typed.pieces[3..said].iter().all(|piece| piece.is_number() || piece.is_mark("/½¼¾⅛⅜⅝⅞"));
    (feet && is_inches && typed.piece(1)?.is_number()).then(|| {
        Answer::line(
            format!("{} {inches}\"  # {}", typed.text(0, 3), typed.text(said, said + 1)),
            "after the feet come inches, which need their mark; how the tape was read goes into a comment",
        )
    })
}

/// `north 1264 sq ft`, `north $28`, `north 28%`: an area, money or a share.
fn no_length(typed: &Typed<'_>) -> Option<Answer> {
    let cause = if area_at(&typed.pieces, 1).is_some() {
        "a wall has a length, and this is an area"
    } else if typed.piece(1).is_some_and(|mark| mark.is_mark("$€£")) {
        "a wall has a length, and this is a sum of money"
    } else if typed.piece(2).is_some_and(|mark| mark.is_mark("%")) {
        "a wall has a length, and this is a share of something"
    } else {
        return None;
    };
    let squared = typed.pieces.iter().any(|piece| piece.text == "2" || piece.text == "²");
    (!squared).then(|| {
        Answer::say(
            cause,
            format!(
                "write the length that was measured right after `{}`, in feet and inches or in meters",
                typed.lower(0)
            ),
        )
    })
}

/// `north one hundred and five feet`, `north a hundred and five ft 6 inches`.
fn spoken_hundreds(typed: &Typed<'_>) -> Option<Answer> {
    let first = if typed.says(1, &["a"]) { 2 } else { 1 };
    let (feet, end) = spoken_number(typed, first).filter(|(feet, _)| *feet >= 100)?;
    let unit = typed.piece(end).filter(|unit| unit.is_word(&["foot", "feet", "ft"]))?;
    Some(Answer::line(
        format!("{} {feet} {} {}", typed.text(0, 1), unit.text, typed.rest(end + 1)).trim_end(),
        "numbers are written in digits",
    ))
}

/// `north twenty eight foot four and a half`: a length as it is spoken.
fn spoken_length(typed: &Typed<'_>) -> Option<Answer> {
    let value = |at: usize| super::super::lengths::spoken(&typed.lower(at));
    let number = |at: usize| -> Option<(i64, usize)> {
        let first = value(at)?;
        match value(at + 1).filter(|unit| first >= 20 && first % 10 == 0 && (1..10).contains(unit))
        {
            Some(unit) => Some((first + unit, at + 2)),
            None => Some((first, at + 1)),
        }
    };
    let (feet, mut at) = number(1)?;
    if !typed.says(at, &["foot", "feet", "ft"]) {
        return None;
    }
    at += 1 + usize::from(typed.says(at + 1, &["and"]) && value(at + 2).is_some());
    let (inches, mut at) = number(at).filter(|(inches, _)| *inches < 12)?;
    at += usize::from(typed.says(at, &["inch", "inches"]));
    let and = usize::from(typed.says(at, &["and"]));
    let part = match (typed.lower(at + and).as_str(), typed.lower(at + and + 1).as_str()) {
        ("a" | "one", "half") => Some((" 1/2", 2)),
        ("half", _) => Some((" 1/2", 1)),
        ("a" | "one", "quarter") => Some((" 1/4", 2)),
        ("three", "quarters") => Some((" 3/4", 2)),
        _ => None,
    };
    let (part, used) = part?;
    let end = at + and + used;
    let end = end + usize::from(typed.says(end, &["inch", "inches"]));
    (end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("{} {feet}' {inches}{part}\"", typed.lower(0)),
            "numbers are written in digits",
        )
    })
}

/// `north recorded 28'`: the record's length, and none that was measured.
fn only_recorded(typed: &Typed<'_>) -> Option<Answer> {
    let says = ["recorded", "record", "county", "rec", "card"];
    let at = 1
        + (1..typed.pieces.len())
            .take_while(|&at| {
                typed.says(at, &says) || typed.says(at, &["says", "has", "on", "the"])
            })
            .count();
    let measure = length_at(&typed.pieces, at).filter(|_| at > 1 && typed.says(1, &says))?;
    (measure.end == typed.pieces.len()).then(|| {
        Answer::say(
            "the length that was measured is missing",
            format!(
                "write it before `recorded`; if the wall was not measured and the record's length is taken, write `{} {} from record`",
                typed.lower(0),
                measure.text
            ),
        )
    })
}

/// `W 11.63 foto 11`, `N 7.32 kitchen`: a number without a mark, and a remark.
fn bare_with_remark(typed: &Typed<'_>) -> Option<Answer> {
    let rooms = [
        "foto", "ph", "pic", "kitchen", "bath", "bed", "bedroom", "br", "living", "dining",
        "garage", "hall", "pantry", "laundry", "den", "office", "fence", "porch", "deck", "door",
        "window", "patio", "sliding", "chimney", "steps", "stairs", "rear", "corner", "lr", "dr",
        "by", "at", "along", "near", "behind", "past",
    ];
    let number = typed.piece(1).filter(|number| number.is_number() && number.text.contains('.'))?;
    let rest = typed.pieces.get(2..)?;
    let decimals = number.text.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let plain = rest.iter().enumerate().all(|(at, piece)| {
        piece.sort == Sort::Word
            && !crate::sketch::parser::SIDE_WORDS.contains(&piece.text.to_lowercase().as_str())
            || piece.is_mark(".,#")
            || piece.is_number() && at == 1 && !piece.text.contains('.')
    });
    let spoken = typed.says(2, &rooms) && !typed.says(3, &["closing"]);
    (spoken && plain && decimals <= 3 && !number.text.contains(',')).then(|| {
        Answer::line(
            format!("{} {} note {}", typed.lower(0), number.text, super::quoted(typed.rest(2))),
            "a wall has its direction, then its length; anything else goes in a note",
        )
    })
}

/// `north 28 point 5 feet`, `north 28 pt 5 ft`: a decimal point as it is spoken.
fn spoken_point(typed: &Typed<'_>) -> Option<Answer> {
    let at = (1..typed.pieces.len()).find(|&at| {
        typed.says(at, &["point", "pt", "dot", "komma", "coma", "punto"])
            && typed.pieces[at - 1].is_number()
            && typed.piece(at + 1).is_some_and(|next| next.is_number())
    })?;
    let number = format!("{}.{}", typed.lower(at - 1), typed.lower(at + 1));
    let is_plain = number.matches('.').count() == 1 && !number.contains(',');
    let line = format!("{} {number}", typed.text(0, at - 1));
    is_plain
        .then(|| Answer::line(end_of_line(typed, &line, at + 2), "a decimal point is typed `.`"))
}

/// `north 28' 4/12`, `28 4/12`: twelfths of a foot are inches.
fn twelfths(typed: &Typed<'_>) -> Option<Answer> {
    let whole =
        |at: usize| typed.piece(at).filter(|piece| piece.is_number())?.text.parse::<u32>().ok();
    let feet = whole(1)?;
    let first = 2 + usize::from(typed.piece(2)?.is_mark("'’′") || typed.says(2, &["ft", "feet"]));
    let slash = typed.piece(first + 1).is_some_and(|slash| slash.is_mark("/") && slash.touches);
    let (inches, twelve) = (whole(first)?, whole(first + 2)?);
    let unit = usize::from(
        typed.says(first + 3, &["ft", "feet"])
            || typed.piece(first + 3).is_some_and(|mark| mark.is_mark("'’′")),
    );
    let ends = first + 3 + unit == typed.pieces.len();
    (slash && twelve == 12 && inches < 12 && ends && !typed.pieces[first].touches).then(|| {
        Answer::line(
            format!("{} {feet}' {inches}\"", typed.lower(0)),
            "twelfths of a foot are inches",
        )
    })
}

/// `north 28" 4`: the mark of inches after the feet, and none after the inches.
fn inches_without_mark(typed: &Typed<'_>) -> Option<Answer> {
    let feet = typed.piece(1).filter(|feet| super::digits::is_small(feet))?;
    let inches = typed.piece(3).filter(|inches| inches.is_number())?;
    let is_mark = typed.piece(2)?.is_mark("\"”″");
    let small = inches.text.parse::<Decimal>().is_ok_and(|inches| inches < Decimal::from(12));
    (is_mark && small && typed.pieces.len() == 4).then(|| {
        Answer::line(
            format!("{} {}' {}\"", typed.lower(0), feet.text, inches.text),
            "the feet take `'` and the inches `\"`",
        )
    })
}

/// `north 28º 4'`, `north 28* 4"`: a key beside that of the foot mark.
fn degrees_for_feet(typed: &Typed<'_>) -> Option<Answer> {
    let feet = typed.piece(1).filter(|feet| super::digits::is_small(feet))?;
    let mark = typed.piece(2).filter(|mark| mark.is_mark("°º˚*^") && mark.touches)?;
    let inches = typed.piece(3).filter(|inches| super::digits::is_small(inches))?;
    let small = inches.text.parse::<u32>().is_ok_and(|inches| inches < 12);
    let ends = match typed.piece(4) {
        None => true,
        Some(last) => last.is_mark("\"”″'’′") && typed.pieces.len() == 5,
    };
    (small && ends && !inches.touches).then(|| {
        Answer::line(
            format!("{} {}' {}\"", typed.lower(0), feet.text, inches.text),
            format!("feet take `'` and inches `\"`, not `{}`", mark.text),
        )
    })
}

/// `north 2 8' 4"`: a space inside a number.
fn split_number(typed: &Typed<'_>) -> Option<Answer> {
    let digit =
        |at: usize| typed.piece(at).filter(|piece| piece.is_number() && piece.text.len() == 1);
    let (one, two) = (digit(1)?, digit(2)?);
    let is_feet = typed.piece(3).is_some_and(|mark| mark.is_mark("'’′") && mark.touches);
    let line = format!("{} {}{}{}", typed.lower(0), one.text, two.text, typed.rest(3));
    is_feet.then(|| Answer::line(line, "is there a space inside the number?"))
}

/// `44' 7 or 8"`, `44' 7-8"`, `44' 7" - 8"`: one of two numbers of inches.
fn inches_or_inches(typed: &Typed<'_>) -> Option<Answer> {
    let number = |at: usize| {
        let piece = typed.piece(at).filter(|piece| super::digits::is_small(piece))?;
        piece.text.parse::<u32>().ok()
    };
    let inch = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark("\"”″"));
    let feet = number(1).filter(|_| typed.piece(2).is_some_and(|mark| mark.is_mark("'’′")))?;
    let one = number(3)?;
    let at = 4 + usize::from(inch(4));
    let joined = typed.says(at, &["or", "to", "maybe", "perhaps", "possibly"])
        || typed.piece(at)?.is_mark("-–/");
    let slash = typed.piece(at)?.is_mark("/") && at == 4;
    let two = number(at + 1).filter(|two| *two > one && *two < 12)?;
    let ends = inch(at + 2) && at + 3 == typed.pieces.len();
    (joined && !slash && ends).then(|| {
        let way = typed.lower(0);
        Answer::Lines(
            vec![format!("{way} {feet}' {one}\""), format!("{way} {feet}' {two}\"")],
            ONE_OF_TWO.to_owned(),
        )
    })
}

/// `east 44/7`: a slash between feet and inches.
fn slash_for_the_marks(typed: &Typed<'_>) -> Option<Answer> {
    let number = |at: usize| {
        let piece = typed.piece(at).filter(|piece| super::digits::is_small(piece))?;
        piece.text.parse::<u32>().ok()
    };
    let (feet, inches) = (number(1)?, number(3)?);
    let slash = typed.piece(2)?.is_mark("/") && typed.pieces.len() == 4;
    (slash && feet > inches && inches < 12).then(|| {
        Answer::line(
            format!("{} {feet}' {inches}\"", typed.lower(0)),
            "the marks for feet and inches are missing",
        )
    })
}

/// `east 44' 7" no brick`: a wall without veneer.
fn without_brick(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1).filter(|measure| measure.has_unit)?;
    let mut at = measure.end;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(",;(-–")) {
        at += 1;
    }
    let no = typed.says(at, &["no", "without", "not"]);
    let brick = typed.says(at + 1, &["brick", "veneer", "stone", "masonry"]);
    let closed = (at + 2..typed.pieces.len())
        .all(|at| typed.pieces[at].is_mark(").,") || typed.says(at, &["here"]));
    (no && brick && closed).then(|| {
        Answer::line(
            format!("{} {} veneer none", typed.lower(0), measure.text),
            "a wall without brick or stone has `veneer none`",
        )
    })
}

/// `east 44' 2" correction 44' 7"`: which of the two holds.
fn corrected(typed: &Typed<'_>) -> Option<Answer> {
    let says = [
        "correction",
        "corrected",
        "corr",
        "actually",
        "should",
        "fixed",
        "sorry",
        "redo",
        "retaped",
        "remeasured",
    ];
    let one = length_at(&typed.pieces, 1).filter(|one| one.has_unit)?;
    let at = typed.find(one.end, &says)?;
    let found = lengths(&typed.pieces, one.end);
    let [(first, two)] = &found[..] else { return None };
    (*first > at && two.has_unit && two.end == typed.pieces.len()).then(|| {
        let way = typed.lower(0);
        Answer::Lines(
            vec![format!("{way} {}", two.text), format!("{way} {}", one.text)],
            ONE_OF_TWO.to_owned(),
        )
    })
}

/// `east 44' 7" appraisal district shows 45`: the record's length by whose it is.
fn recorded_by_its_name(typed: &Typed<'_>) -> Option<Answer> {
    let one = length_at(&typed.pieces, 1).filter(|one| one.has_unit)?;
    let names = [
        "cnty",
        "county",
        "appraisal",
        "district",
        "assessor",
        "card",
        "record",
        "deed",
        "tax",
        "cad",
    ];
    let filler =
        ["shows", "says", "has", "v", "vs", "on", "the", "per", "is", "roll", "office", "lists"];
    let two = (one.end..typed.pieces.len()).find(|&at| typed.pieces[at].is_number())?;
    let measure = length_at(&typed.pieces, two)?;
    let says = |at: usize| {
        typed.says(at, &names) || typed.says(at, &filler) || typed.pieces[at].is_mark(",;:.()=")
    };
    let only = (one.end..two).chain(measure.end..typed.pieces.len()).all(says);
    let named = (one.end..typed.pieces.len()).any(|at| typed.says(at, &names));
    let mark = if measure.has_unit || typed.attempt.is_metric { "" } else { "'" };
    (only && named).then(|| {
        Answer::line(
            format!("{} {} recorded {}{mark}", typed.lower(0), one.text, measure.text),
            "the record's length goes after `recorded`",
        )
    })
}

/// `north 28.33 ft (28' 4")`, `north 28' 4" (28.33)`: the same length in two forms.
fn same_twice(typed: &Typed<'_>) -> Option<Answer> {
    let one = length_at(&typed.pieces, 1)?;
    let mut at = one.end;
    let between = |at: usize| {
        typed.says(at, &["or", "is", "that", "i.e", "ie", "aka", "equals", "same", "as"])
            || typed.piece(at).is_some_and(|mark| mark.is_mark("()[]=/,;≈"))
    };
    while at < typed.pieces.len() && between(at) {
        at += 1;
    }
    let two = length_at(&typed.pieces, at).filter(|_| at > one.end)?;
    let ends = (two.end..typed.pieces.len()).all(between);
    let differs = (one.length - two.length).nm().abs();
    let is_decimal = |one: &Measure| one.text.contains('.') && !one.text.contains(['\'', '"']);
    let in_inches = |one: &Measure| one.text.contains(['"', '”', '″']) || one.text.contains("in");
    let places = |one: &Measure| {
        let decimals = one.text.split_once('.').map_or("", |(_, decimals)| decimals);
        decimals.chars().take_while(char::is_ascii_digit).count()
    };
    let (decimal, other) = match (is_decimal(&one), is_decimal(&two)) {
        (true, false) => (&one, &two),
        (false, true) => (&two, &one),
        _ => return None,
    };
    if !ends {
        return None;
    }
    // Meters beside feet and inches: half a centimeter.
    if decimal.is_metric() && !other.is_metric() {
        let same = differs <= 5_500_000 && places(decimal) >= 2;
        return same.then(|| {
            Answer::line(
                format!("{} {}", typed.lower(0), one.text),
                "a wall has one length, and this is the same length twice",
            )
        });
    }
    if !in_inches(other) {
        return None;
    }
    // `30.6 (30 ft 6 in)`: a point between feet and inches.
    let in_digits = |one: &Measure| {
        let digits =
            one.text.split(|c: char| !c.is_ascii_digit()).filter(|digits| !digits.is_empty());
        digits.map(str::to_owned).collect::<Vec<_>>()
    };
    if in_digits(decimal) == in_digits(other) {
        return Some(Answer::line(
            format!("{} {}", typed.lower(0), other.text),
            "a wall has one length, and this is the same length twice",
        ));
    }
    // Half a step of the last decimal.
    let step = Length::FOOT.nm().div_euclid(if places(decimal) <= 1 { 20 } else { 192 });
    (differs <= step).then(|| {
        Answer::line(
            format!("{} {}", typed.lower(0), other.text),
            "a wall has one length, and this is the same length twice",
        )
    })
}

/// `north 28' - 29'`, `between 28' and 29'`, `28-29 ft`: from one length to another.
fn range(typed: &Typed<'_>) -> Option<Answer> {
    let from = 1 + usize::from(typed.says(1, &["between", "from"]));
    let one = length_at(&typed.pieces, from)?;
    let spoken = typed.says(one.end, &["and", "to"]) && from == 2;
    let dash = typed.piece(one.end)?.is_mark("-–—");
    let two = length_at(&typed.pieces, one.end + 1).filter(|_| spoken || dash)?;
    if two.end != typed.pieces.len() || !two.has_unit {
        return None;
    }
    // `28-4 in` and `28' - 4"` are one length.
    let unit = two.text.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.');
    let first = if one.has_unit { one.text.clone() } else { format!("{}{unit}", one.text) };
    let first: Measure = length_at(&super::super::pieces::cut(&first), 0)?;
    let more = (two.length - first.length).nm();
    let near = more > 0 && more <= Length::FOOT.nm().saturating_mul(3);
    (near && !two.is_inches()).then(|| {
        let way = typed.lower(0);
        Answer::Lines(
            vec![format!("{way} {}", first.text), format!("{way} {}", two.text)],
            ONE_OF_TWO.to_owned(),
        )
    })
}

/// `north at least 28'`, `north < 29'`, `north 28' min`: a limit, and no measured length.
fn limit(typed: &Typed<'_>) -> Option<Answer> {
    let says = [
        "at", "least", "most", "min", "max", "minimum", "maximum", "over", "under", "nearly",
        "almost", "barely", "just", "less", "more", "than", "below", "above", "short", "shy",
    ];
    let limits = [
        "least", "most", "min", "max", "minimum", "maximum", "over", "under", "nearly", "almost",
        "than", "shy",
    ];
    let [(first, measure)] = &lengths(&typed.pieces, 1)[..] else { return None };
    let others: Vec<&Piece> =
        typed.pieces[1..*first].iter().chain(&typed.pieces[measure.end..]).collect();
    let is_sign = |piece: &&Piece| piece.is_mark("<>≤≥=");
    let speaks = others.iter().any(|piece| piece.is_word(&limits) || piece.is_mark("<≤≥"));
    let only = others
        .iter()
        .all(|piece| piece.is_word(&says) || is_sign(piece) || piece.is_mark("().,of"));
    let said = format!("{} {}", typed.text(1, *first), typed.rest(measure.end));
    (speaks && only).then(|| {
        Answer::line(
            format!(
                "{} {} estimated  # {}",
                typed.lower(0),
                measure.text,
                remark(
                    &said.replace(['<', '≤'], "under").replace(['>', '≥'], "over").replace('=', "")
                )
            ),
            "a limit is no measured length: the length is `estimated`",
        )
    })
}

/// `28' 4" +- 1/2`, `28' 4" plus or minus an inch`: how exactly it was measured.
fn tolerance(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1).filter(|measure| measure.has_unit)?;
    let mut at = measure.end;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(",(")) {
        at += 1;
    }
    let first = at;
    while typed.piece(at).is_some_and(|mark| mark.is_mark("+-–/±"))
        || typed.says(at, &["plus", "minus", "or"])
    {
        at += 1;
    }
    let signs = typed.text(first, at).replace(' ', "");
    let says = ["+-", "+/-", "±", "-/+", "+–", "+/–", "plusorminus", "plusminus", "plus/minus"];
    if !says.contains(&signs.as_str()) {
        return None;
    }
    let closed = |end: usize| typed.pieces[end..].iter().all(|piece| piece.is_mark(").,"));
    let spoken = match typed.rest(at).trim_end_matches([')', '.', ' ']).to_lowercase().as_str() {
        "an inch" | "one inch" | "inch" | "1 inch" => Some("1\""),
        "half an inch" | "a half inch" | "half inch" | "half" | "1/2" | "½" => Some("1/2\""),
        "a quarter inch" | "quarter inch" | "1/4" | "¼" | "quarter" => Some("1/4\""),
        "1/8" | "an eighth" | "⅛" => Some("1/8\""),
        "1/16" => Some("1/16\""),
        "a foot" | "one foot" | "foot" => Some("1'"),
        _ => None,
    };
    let length = match spoken {
        Some(length) => length.to_owned(),
        None => length_at(&typed.pieces, at)
            .filter(|length| length.has_unit && closed(length.end))
            .map(|length| length.text)?,
    };
    Some(Answer::line(
        format!("{} {} tolerance {length}", typed.lower(0), measure.text),
        "how exactly a wall was measured goes after `tolerance`",
    ))
}

/// `28' 4" plus 2' chimney`, `28' 4" incl 1' overhang`: a part that is in the length, or not.
fn with_more(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1).filter(|measure| measure.has_unit)?;
    // `29' 8" inside + 8" walls`
    let inside = typed.says(measure.end, &["inside", "interior", "in"]);
    let mut at = measure.end + usize::from(inside);
    at += usize::from(typed.piece(at)?.is_mark("(,"));
    let adds = typed.says(at, &["plus", "add", "excl", "excluding", "without"])
        || typed.piece(at)?.is_mark("+");
    let holds = typed.says(at, &["incl", "including", "includes", "with", "w"]);
    at += 1;
    while typed.piece(at).is_some_and(|mark| mark.is_mark("./")) || typed.says(at, &["a", "the"]) {
        at += 1;
    }
    let part = length_at(&typed.pieces, at).filter(|part| part.has_unit)?;
    let rest = &typed.pieces[part.end..];
    let spoken = (inside || rest.iter().any(|piece| piece.sort == Sort::Word))
        && rest.iter().all(|piece| piece.sort == Sort::Word || piece.is_mark(").,"));
    let numbers = crate::sketch::parser::SIDE_WORDS;
    let data = rest.iter().any(|piece| numbers.contains(&piece.text.to_lowercase().as_str()));
    if !(adds || holds) || !spoken || data || part.length >= measure.length {
        return None;
    }
    let way = typed.lower(0);
    let said = remark(typed.rest(measure.end));
    let other = if adds { measure.length + part.length } else { measure.length - part.length };
    let other = written(other, &measure);
    Some(Answer::Lines(
        vec![
            format!("{way} {}  # {said}", measure.text),
            format!("{way} {other}  # {} {said}", measure.text),
        ],
        "a wall has one length: is that part in the walk of this wall, or not?".to_owned(),
    ))
}

/// `north 28' 4" north`, `north 30.5 N`: the direction twice.
fn way_again(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1)?;
    let last = typed.piece(measure.end).filter(|_| measure.end + 1 == typed.pieces.len())?;
    let way = |word: &str| super::super::compass::way_and_back(word).map(|(way, _)| way);
    let (one, two) = (way(&typed.lower(0))?, way(&last.text)?);
    if !WAYS.contains(&one) || !WAYS.contains(&two) {
        return None;
    }
    if one == two {
        return Some(Answer::line(
            format!("{} {}", typed.lower(0), measure.text),
            "the direction is said once, before the length",
        ));
    }
    if !measure.has_unit {
        return None;
    }
    Some(Answer::say(
        "a wall runs one way, and this line has two",
        format!(
            "write `{one} {}` or `{two} {}`; a slanted wall is `diagonal` with a length for each way",
            measure.text, measure.text
        ),
    ))
}

/// `north then east 28' 4"`: two walls, and one length.
fn two_ways(typed: &Typed<'_>) -> Option<Answer> {
    let joined = typed.says(1, &["then", "and"]) || typed.piece(1)?.is_mark("+&>→,");
    let second = 2 + usize::from(typed.says(2, &["then"]));
    let measure = length_at(&typed.pieces, second + 1)
        .filter(|measure| measure.end == typed.pieces.len() && measure.has_unit)?;
    (joined && typed.says(0, &WAYS) && typed.says(second, &WAYS)).then(|| {
        let (one, two) = (typed.lower(0), typed.lower(second));
        Answer::say(
            "two ways and one length",
            format!(
                "two walls are two lines, `{one}` and `{two}`, each with its own length; a slanted wall is `diagonal` with how far it runs each way, or `bearing` with its angle and `{}`",
                measure.text
            ),
        )
    })
}
