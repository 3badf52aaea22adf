//! Short forms and signs whose meaning follows from where they stand: `BG` behind a level, `U` before a length, a slash
//! between a measured length and the record's.

use super::super::compass::slant;
use super::super::pieces::{Piece, Sort, cut};
use super::levels::capitalized;
use super::measure::{area_at, length_at};
use super::published::FIGURES;
use super::walls::is_way;
use super::{Answer, Rule, Typed, first_of, is_text};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        level_below_grade,
        unfinished,
        cars,
        square_meters,
        what_the_figure_counts,
        label_before_the_area,
        super::deeds::slanted,
        slanted_wall,
        first_letters_of_a_way,
        measured_and_recorded,
        two_numbers,
    ];
    first_of(rules, typed).or_else(|| split_decimal(typed))
}

/// The letters of some pieces in lower case, without the marks between them.
fn letters(pieces: &[Piece]) -> Option<String> {
    let mut all = String::new();
    for piece in pieces {
        match piece.sort {
            Sort::Word => all.push_str(&piece.text.to_lowercase()),
            Sort::Mark if piece.is_mark(".,;/()[]-–—") => {}
            _ => return None,
        }
    }
    Some(all.replace(['-', '\'', '’'], ""))
}

/// `level "Lower" BG`, `level "Lower" b/g`, `level Lower bsmt`.
fn level_below_grade(typed: &Typed<'_>) -> Option<Answer> {
    let short = [
        "bg", "bgr", "bgrd", "bgrade", "belowgr", "belowgrd", "belowg", "bsmt", "bsmnt", "bsmts",
        "basmt", "bmt", "bsm", "bment", "bgbsmt", "bsmtbg", "bglevel", "subgr",
    ];
    let says = |from: usize| {
        let rest = typed.pieces.get(from..).filter(|rest| !rest.is_empty())?;
        let begins = rest[0].sort == Sort::Word || rest[0].is_mark("(,-–—[");
        (begins && short.contains(&letters(rest)?.as_str())).then_some(from)
    };
    let is_named = is_text(typed.piece(1));
    let words = |end: &usize| typed.pieces[1..*end].iter().all(|p| p.sort == Sort::Word);
    let end = match is_named {
        true => says(2),
        false => (2..typed.pieces.len()).find_map(says).filter(words),
    };
    let end = end.filter(|_| typed.says(0, &["level"]))?;
    Some(Answer::line(
        format!("level \"{}\" below grade", typed.name(1, end)),
        "a level in the ground is `below grade`, in whole words",
    ))
}

/// `unfin "Basement"`, `unf. "Attic"`.
fn unfinished(typed: &Typed<'_>) -> Option<Answer> {
    let short = ["unf", "unfin", "unfinish", "unfn", "unfinsh", "unfinshed", "unfinised", "ufin"];
    let dot = usize::from(typed.piece(1).is_some_and(|dot| dot.is_mark(".") && dot.touches));
    let at = 1 + dot;
    let room = match typed.lower(at).trim_end_matches('.') {
        "bsmt" | "bsmnt" | "basmt" => "basement".to_owned(),
        word => word.to_owned(),
    };
    typed.piece(at).filter(|_| typed.says(0, &short))?;
    let rest = match typed.piece(at)?.sort {
        Sort::Text => typed.rest(at).to_owned(),
        Sort::Word => {
            let dot = typed.piece(at + 1).is_some_and(|dot| dot.is_mark(".") && dot.touches);
            let rest = typed.rest(at + 1 + usize::from(dot));
            format!("\"{}\" {rest}", capitalized(&room)).trim_end().to_owned()
        }
        _ => return None,
    };
    Some(Answer::line(format!("unfinished {rest}"), "the word is `unfinished`, and a name follows"))
}

/// `2 car garage start east 54'`, `2-car garage "Garage" from …`: how many cars it holds is part of its name.
fn cars(typed: &Typed<'_>) -> Option<Answer> {
    let number = typed.piece(0).filter(|number| number.is_number() && number.text.len() == 1)?;
    let at = 1 + usize::from(typed.piece(1)?.is_mark("-–"));
    let kind = match typed.lower(at + 1).as_str() {
        "garage" | "gar" => "garage",
        "carport" => "carport",
        _ => return None,
    };
    typed.says(at, &["car"]).then_some(())?;
    let places =
        ["start", "from", "within", "detached", "measured", "recorded", "counted", "veneer"];
    let named = is_text(typed.piece(at + 2));
    let rest = at + 2;
    if named {
        return Some(Answer::line(
            format!("{kind} {}  # {}-car", typed.rest(rest), number.text),
            "a space begins with what it is, and its name follows",
        ));
    }
    let name = typed.text(0, rest);
    typed.says(rest, &places).then(|| {
        Answer::line(
            format!("{kind} \"{name}\" {}", typed.rest(rest)),
            "the name of a space has a `\"` on each side, and what the space is comes before it",
        )
    })
}

/// The index after a unit that says square meters in any spelling, if one begins at this piece.
fn unit_of_square_meters(pieces: &[Piece], at: usize) -> Option<usize> {
    let meter = [
        "m", "mt", "mts", "mtr", "mtrs", "metr", "metrs", "meter", "meters", "metre", "metres",
        "metro", "metros", "mete", "metter", "metters", "meteres", "mter", "mters",
    ];
    let square = ["sq", "sqr", "sqre", "sqare", "squ", "square", "squared", "s", "sqm"];
    let whole = |text: &str| {
        let rest = text.strip_prefix("square").or_else(|| text.strip_prefix("sqr"));
        let rest = rest.or_else(|| text.strip_prefix("sq")).or_else(|| text.strip_prefix('s'));
        rest.is_some_and(|rest| meter.contains(&rest))
            || ["msq", "msqr", "sqrm", "qm", "mq", "kvm", "quadratmeter"].contains(&text)
    };
    let skips = |at: usize| {
        at + usize::from(pieces.get(at).is_some_and(|dot| dot.is_mark(".-/") && dot.touches))
    };
    let first = pieces.get(at).filter(|first| first.sort == Sort::Word)?;
    let first = first.text.to_lowercase();
    let second = skips(at + 1);
    let next = pieces.get(second);
    let plain = first.replace('-', "");
    if square.contains(&first.as_str()) && next.is_some_and(|next| next.is_word(&meter)) {
        return Some(skips(second + 1));
    }
    if whole(&plain) {
        return Some(second);
    }
    let is_power = |two: &Piece| {
        two.text == "2"
            || two.is_mark("²")
            || two.is_word(&["cuadrados", "quadrados", "carrés", "quadrat"])
    };
    let caret = second + usize::from(next.is_some_and(|caret| caret.is_mark("^")));
    if meter.contains(&first.as_str()) && pieces.get(caret).is_some_and(is_power) {
        return Some(caret + 1);
    }
    let squared = next.is_some_and(|next| next.is_word(&["sq", "sqr", "square", "squared"]));
    (meter.contains(&first.as_str()) && squared).then(|| skips(second + 1))
}

/// `listing 137 sqmt`, `lot "Lot" recorded 910 sq. mtr`, `plan 137 m 2`.
fn square_meters(typed: &Typed<'_>) -> Option<Answer> {
    if is_way(typed, 0) {
        return None;
    }
    let (at, end) = (2..typed.pieces.len()).find_map(|at| {
        let number = typed.pieces[at - 1].is_number();
        Some((at, unit_of_square_meters(&typed.pieces, at).filter(|_| number)?))
    })?;
    let unit = typed.text(at, end);
    let says_area = typed.says(0, &["record", "listing", "plan", "figure", "lot", "missing"])
        || typed.find(1, &["recorded"]).is_some();
    let own = area_at(&typed.pieces, at - 1).is_some_and(|(own, _)| own >= end);
    let is_own = own && !(unit.contains(' ') && typed.piece(at + 1).is_some_and(Piece::is_number));
    let follows = typed.piece(end).is_some_and(|next| next.is_mark("'’′\"″°"));
    (says_area && !is_own && !follows).then(|| {
        Answer::line(
            format!("{} sq m {}", typed.text(0, at), typed.rest(end)).trim_end(),
            format!("`{unit}` is not a unit here: square meters are `sq m`"),
        )
    })
}

/// `record 2,180 sq ft sides whole-foot incl. "Sunroom" "county card"`.
fn what_the_figure_counts(typed: &Typed<'_>) -> Option<Answer> {
    let (end, _) = area_at(&typed.pieces, 1).filter(|_| typed.says(0, &FIGURES))?;
    let words = ["incl", "inc", "including", "includes", "include", "included", "counts", "w"];
    let at = typed.find(end, &words)?;
    let marks = typed.pieces[at + 1..].iter().take_while(|mark| mark.is_mark("./:=")).count();
    let name = at + 1 + marks;
    let before = typed.text(0, at).trim_end_matches([',', ';', '(', ' ']);
    let rest = typed.rest(name).trim_end_matches(')');
    let has_one = typed.find(end, &["counting"]).is_some();
    let is_left_out = typed.says(at - 1, &["not", "isn't", "never"]);
    (is_text(typed.piece(name)) && !has_one && !is_left_out).then(|| {
        Answer::line(
            format!("{before} counting {rest}"),
            "a space that the figure counts is named after `counting`",
        )
    })
}

/// `record GLA 2,180 sq ft sides whole-foot counting "Sunroom" "county card"`: the unit is there, and one word too many.
fn label_before_the_area(typed: &Typed<'_>) -> Option<Answer> {
    let label = typed.piece(1).filter(|label| label.sort == Sort::Word)?;
    let labels = [
        "gla",
        "total",
        "area",
        "living",
        "heated",
        "tla",
        "sqft",
        "gross",
        "size",
        "finished",
        "main",
        "conditioned",
        "above-grade",
    ];
    let more = typed.says(2, &["area", "living", "size", "total"]);
    let mut at = 2 + usize::from(more);
    at += usize::from(typed.piece(at).is_some_and(|mark| mark.is_mark(":=")));
    let (end, area) = area_at(&typed.pieces, at).filter(|_| typed.says(0, &FIGURES))?;
    let goes_on = typed.says(end, &["sides", "counting", "measured"]);
    (label.is_word(&labels) && goes_on).then(|| {
        Answer::line(
            format!("{} {area} {}", typed.lower(0), typed.rest(end)),
            format!("the area comes right after `{}`", typed.lower(0)),
        )
    })
}

/// `southwest 2' by 2'`, `S.W. 2' x 2'`, `sw corner 2 by 2` within a walk: a slanted wall.
fn slanted_wall(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    let diagonal = ["diagonal", "diag", "angle", "angled", "slant"];
    let at = usize::from(typed.says(0, &diagonal));
    let first = (at + 1..=(at + 6).min(typed.pieces.len()))
        .find(|&end| typed.piece(end).is_some_and(Piece::is_number))?;
    let word = letters(&typed.pieces[at..first])?;
    let word = word.trim_end_matches("corner").trim_end_matches("wall");
    let word = word.trim_end_matches("ward").trim_end_matches("erly").trim_end_matches("ern");
    let (one, two) = slant(word)?;
    let run = length_at(&typed.pieces, first)?;
    let is_by = |piece: &Piece| piece.is_word(&["x", "by", "and"]) || piece.is_mark("×*/,&+");
    let by = typed.piece(run.end).filter(|by| is_by(by));
    let rise = length_at(&typed.pieces, run.end + usize::from(by.is_some()))?;
    let goes_on = super::super::begins_as_side(&typed.attempt.beside.after);
    let before = cut(&typed.attempt.beside.before);
    let in_walk = goes_on
        || super::super::begins_as_side(&typed.attempt.beside.before)
        || before.first().is_some_and(|word| word.is_word(&["diagonal", "bearing", "bay", "arc"]));
    let most = Length::FOOT + Length::FOOT + Length::FOOT;
    let most = most + most + most;
    let is_short = run.length <= most && rise.length <= most;
    (in_walk && (goes_on || is_short)).then(|| {
        let line =
            format!("diagonal {one} {} {two} {} {}", run.text, rise.text, typed.rest(rise.end));
        Answer::line(line.trim_end(), "a slanted wall says how far it runs each way")
    })
}

/// The way that a letter or a shortened word says.
fn way_of(word: &str, has_street: bool) -> Option<&'static str> {
    Some(match word {
        "u" => "north",
        "l" if has_street => "left",
        "r" if has_street => "right",
        "d" | "dn" | "dwn" => "south",
        "nth" | "nrth" | "nor" | "nort" | "noth" | "norht" | "nroth" | "northh" | "no" | "nh"
        | "nothr" | "morth" | "norrth" => "north",
        "sth" | "soth" | "sou" | "sout" | "suoth" | "souht" | "sotuh" | "southh" | "so" | "sh"
        | "souh" | "suth" => "south",
        "eas" | "eat" | "esat" | "eats" | "eastt" | "ea" | "eest" | "aest" => "east",
        "wst" | "wes" | "wset" | "wets" | "westt" | "we" | "wet" | "weat" | "wast" => "west",
        _ => return None,
    })
}

/// `U 28.5 recorded 29'`, `Nth 28.5`, `So. 12'`: a way in one letter, shortened or misspelled.
fn first_letters_of_a_way(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    let word = typed.piece(0).filter(|word| word.sort == Sort::Word)?;
    let dots = typed.pieces[1..].iter().take_while(|dot| dot.is_mark(".:=-–,")).count();
    let way = way_of(&word.text.to_lowercase(), typed.attempt.beside.front.is_some())?;
    // `No. 4` is a number, `so 4` a remark.
    let is_word = word.is_word(&["no", "so", "we", "wet", "wets", "eat", "eats", "sh", "nh", "ea"]);
    let length = length_at(&typed.pieces, 1 + dots).filter(|one| one.has_unit || !is_word)?;
    let rest = typed.piece(length.end);
    let goes_on = rest.is_none_or(|next| {
        next.is_word(&["recorded", "record", "rec", "estimated", "note", "est"])
            || next.is_mark("(,;/#-–")
    });
    let cause = match way {
        "left" | "right" => {
            "a side begins with the way that it runs: `back`, `right`, `front` or `left`, as seen from the street"
        }
        _ if word.is_word(&["no"]) => "is `no` short for `north`?",
        _ => "a side begins with the way that it runs, `north`, `east`, `south` or `west`",
    };
    let line = |way: &str| format!("{way} {}", typed.rest(1 + dots));
    // One letter makes `wast` either.
    let ways: &[&str] = if word.is_word(&["wast"]) { &["east", "west"] } else { &[way] };
    goes_on.then(|| Answer::Lines(ways.iter().map(|way| line(way)).collect(), cause.to_owned()))
}

/// A length in what was typed, bare numbers as feet: `28.5`, `28' 6"`, `28-6`.
fn length_of(text: &str) -> Option<(Length, String)> {
    let text = text.trim().trim_matches(['(', ')']).trim();
    let pieces = cut(text);
    if let Some(one) = length_at(&pieces, 0).filter(|one| one.end == pieces.len()) {
        return Some((one.length, one.text));
    }
    let [feet, dash, inches] = &pieces[..] else { return None };
    let small = inches.text.parse::<u32>().is_ok_and(|inches| inches < 12);
    let joined = dash.is_mark("-–") && dash.touches && inches.touches;
    if !feet.is_number() || !joined || !small {
        return None;
    }
    let written = format!("{}' {}\"", feet.text, inches.text);
    Some((written.parse().ok()?, written))
}

/// `north 28.5/29`, `north 28' 6" / 29'`, `north 28.5 vs 29`: the measured length and the record's.
fn measured_and_recorded(typed: &Typed<'_>) -> Option<Answer> {
    if !is_way(typed, 0) || typed.line.contains("recorded") {
        return None;
    }
    let is_between =
        |at: usize| typed.pieces[at].is_mark("/|\\") || typed.says(at, &["vs", "versus", "v"]);
    let starts = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=")));
    let pairs = (starts + 1..typed.pieces.len()).filter(|&at| is_between(at));
    let mut both = pairs.filter_map(|at| {
        let next = at + 1 + usize::from(typed.piece(at + 1).is_some_and(|dot| dot.is_mark("./")));
        let (one, first) = length_of(typed.text(starts, at))?;
        let end = (next + 1..=typed.pieces.len()).rev().find(|&end| {
            let stops = typed.piece(end).is_none_or(|stop| {
                is_text(Some(stop)) || stop.is_mark("#") || stop.is_word(&["note", "estimated"])
            });
            stops && length_of(typed.text(next, end)).is_some()
        })?;
        let (two, second) = length_of(typed.text(next, end))?;
        // A length in feet and in meters is one length twice.
        if first.contains('m') != second.contains('m') {
            return None;
        }
        let apart = (one - two).nm().abs();
        // A fraction of an inch is far from what stands before it: `28' 5/8"`.
        let near = apart <= 3 * Length::FOOT.nm() && apart * 5 <= one.nm().max(two.nm());
        // `7/8` and `15/16` are of an inch, `12/11` is feet and inches.
        let bare = |text: &str| text.parse::<u32>().ok();
        let is_other = bare(&first)
            .zip(bare(&second))
            .is_some_and(|(one, two)| two < 12 || one < two && [16, 32, 64].contains(&two));
        (near && !is_other).then_some((first, second, end))
    });
    let (first, second, end) = both.next_back()?;
    let (way, rest) = (typed.lower(0), typed.rest(end));
    let line =
        |one: &str, two: &str| format!("{way} {one} recorded {two} {rest}").trim_end().to_owned();
    let mut lines = vec![line(&first, &second)];
    if first != second {
        lines.push(line(&second, &first));
    }
    Some(Answer::Lines(
        lines,
        "two lengths: the measured one comes first, the record's goes after `recorded`; of two that were taped, keep the one that you trust and put the other after a `#`".to_owned(),
    ))
}

/// `north 28.5 29`: two lengths that are nearly equal and have no unit.
fn two_numbers(typed: &Typed<'_>) -> Option<Answer> {
    let [_, one, two] = &typed.pieces[..] else { return None };
    let both = one.is_number() && two.is_number() && !two.touches && is_way(typed, 0);
    let (first, _) = length_of(&one.text).filter(|_| both && one.text.contains('.'))?;
    let (second, _) = length_of(&two.text)?;
    let near = (first - second).nm().abs() <= Length::FOOT.nm();
    (near && second > Length::FOOT && !two.text.starts_with('.')).then(|| {
        let kept = format!("{} {}", typed.lower(0), one.text);
        Answer::Lines(
            vec![format!("{kept} recorded {}", two.text), format!("{kept}  # {}", two.text)],
            "the record's length goes after `recorded`, any other into a comment".to_owned(),
        )
    })
}

/// `north 27 .8'`, `north 27. 8'`, `north 2 7.8'`: a space inside a decimal number.
fn split_decimal(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.piece(1).filter(|first| first.is_number() && is_way(typed, 0))?;
    let dot = usize::from(typed.piece(2).is_some_and(|dot| dot.is_mark(".")));
    let second = typed.piece(2 + dot).filter(|second| second.is_number())?;
    let digits = |text: &str| text.chars().all(|c| c.is_ascii_digit());
    let ends_in_unit = typed
        .piece(3 + dot)
        .is_some_and(|unit| unit.is_mark("'’′") || unit.is_word(&["ft", "feet", "m"]))
        && !typed.piece(4 + dot).is_some_and(Piece::is_number);
    let split_after_point = dot == 1 && digits(&second.text) && second.text.len() <= 2;
    let split_before_point = dot == 0 && second.text.starts_with('.') && !second.touches;
    let split_whole = dot == 0 && first.text.len() == 1 && second.text.find('.') == Some(1);
    if !digits(&first.text) {
        return None;
    }
    let number = if split_after_point && ends_in_unit {
        format!("{}.{}", first.text, second.text)
    } else if split_before_point || split_whole && ends_in_unit {
        format!("{}{}", first.text, second.text)
    } else {
        return None;
    };
    let rest = typed.rest(3 + dot);
    let touches = typed.piece(3 + dot).is_some_and(|next| next.touches);
    let gap = if touches { "" } else { " " };
    Some(Answer::line(
        format!("{} {number}{gap}{rest}", typed.lower(0)).trim_end(),
        "a length has no space inside its number",
    ))
}
