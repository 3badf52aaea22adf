//! Lines that begin a level and say more: the size of its rooms, that they are unfinished, to which face they were
//! measured, how high they are.

use super::super::pieces::{Piece, Sort};
use super::described::{face_word, in_one_unit};
use super::levels::capitalized;
use super::measure::{is_lumber, length_at, lengths};
use super::names::{FLOORS, ORDINALS};
use super::{Answer, Typed, digits, is_text, over_a_part, part_finished, quoted};

const ALONE: [&str; 8] =
    ["basement", "cellar", "bsmt", "attic", "upstairs", "downstairs", "mezzanine", "sub-basement"];

/// How many pieces at the start of the line name a level; 0 if it does not begin so.
fn name_end(typed: &Typed<'_>) -> usize {
    name_end_of(&typed.pieces)
}

/// Whether the first words of a line name a level.
pub(super) fn names_a_level(line: &str) -> bool {
    name_end_of(&super::cut(line)) > 0
}

fn name_end_of(pieces: &[Piece]) -> usize {
    let piece = |at: usize| pieces.get(at);
    let says = |at: usize, words: &[&str]| piece(at).is_some_and(|piece| piece.is_word(words));
    let mut at =
        usize::from(piece(0).is_some_and(|piece| digits::is_small(piece) && piece.text.len() == 1));
    // `1/2 story`
    if at == 1
        && piece(1).is_some_and(|slash| slash.is_mark("/"))
        && piece(2).is_some_and(digits::is_small)
    {
        at = 3;
    }
    let number = at;
    // `2nd floor`, with its ending apart from its number.
    at += usize::from(
        at == 1
            && piece(1).is_some_and(|end| end.touches && end.is_word(&["st", "nd", "rd", "th"])),
    );
    at += usize::from(says(at, &["full", "partial", "walkout", "walk-out", "daylight"]));
    while says(at, &ORDINALS)
        || at > number && piece(at).is_some_and(|dash| dash.is_mark("-")) && says(at + 1, &FLOORS)
    {
        at += 1;
    }
    if says(at, &ALONE) {
        return at + 1;
    }
    if at > 0 && says(at, &FLOORS) { at + 1 } else { 0 }
}

/// `upstairs is the same size`, `basement: full, same as house`, `second floor: as first`: the walls of the level below, typed
/// again; an exception after that is asked about.
pub(super) fn as_below(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["the", "finished", "unfinished"]));
    let named = name_end_of(typed.pieces.get(first..)?);
    let mut at = first + named;
    while typed.says(at, &["is", "was", "are", "has", "full", "the", "a", "exactly"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(":,-–.;="))
    {
        at += 1;
    }
    let same = typed.says(at, &["same", "identical", "ditto"]);
    let as_one = typed.says(at, &["as", "like"])
        && typed.says(
            at + 1,
            &["first", "1st", "below", "above", "ground", "main", "the", "house", "downstairs"],
        );
    let is_text = typed.pieces.iter().any(|piece| is_text(Some(piece)));
    (named > 0 && (same || as_one) && !is_text).then(|| {
        super::loose::copied(
            typed,
            true,
            "write `level` and its name, below it its space, as `living \"Upper rooms\"`, and type its sides again, one on each line; what is different there, such as a part that is open to below, is a space of its own with its sides".to_owned(),
        )
    })
}

/// `upstairs "Bedrooms"` above walls: the level, and the space whose walls they are.
fn level_and_space(typed: &Typed<'_>, end: usize) -> Option<Answer> {
    let [name] = typed.pieces.get(end..)? else { return None };
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    (end > 0 && is_text(Some(name)) && follows && !names_a_level(&typed.name(end, end + 1))).then(
        || {
            let level = capitalized(&typed.text(0, end).to_lowercase());
            let is_below = typed.says(0, &["basement", "cellar", "bsmt"]);
            let grade = if is_below { " below grade" } else { "" };
            let line = |kind: &str| {
                format!("level {}{grade}\n{kind} {}", quoted(&level), quoted(&typed.name(end, end + 1)))
            };
            let kinds: &[&str] = if is_below { &["living", "unfinished"] } else { &["living"] };
            Answer::Lines(
                kinds.iter().map(|kind| line(kind)).collect(),
                "the walls of a space stand below its kind and its name, and the space below its level".to_owned(),
            )
        },
    )
}

/// `2nd floor 28x38 inside`, `basement 30x40 unfinished`, `cellar 4 x 5`, `half story over garage`, `attic, 7 ft ceilings`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let end = name_end(typed);
    if let Some(answer) = level_and_space(typed, end) {
        return Some(answer);
    }
    if end == 0
        || end == typed.pieces.len()
        || typed.pieces[end..].iter().any(|piece| is_text(Some(piece)))
    {
        return None;
    }
    let mut first = usize::from(typed.says(0, &["finished", "unfinished"]) && end > 1);
    first = if typed.says(first, &FLOORS) { 0 } else { first };
    let level = quoted(&capitalized(typed.text(first, end)));
    let says = |words: &[&str]| typed.find(0, words).is_some();
    // `upper level above basement` is none.
    let is_basement =
        typed.find(0, &["basement", "cellar", "bsmt", "sub-basement"]).is_some_and(|at| at < end);
    let below = is_basement
        || says(&["underground", "walkout", "walk-out", "daylight"])
        || says(&["below"]) && says(&["grade", "ground"]);
    let Some((at, one, two, stop)) = size(typed, end) else {
        return remark(typed, end, &level, below);
    };
    let left: Vec<usize> = (end..typed.pieces.len())
        .filter(|i| !(at..stop).contains(i))
        .filter(|&i| {
            !typed.pieces[i].is_mark(",;:()-–.=")
                && !typed.says(
                    i,
                    &[
                        "measured", "taped", "to", "the", "is", "about", "walls", "all", "at",
                        "from",
                    ],
                )
        })
        .collect();
    // `outside entrance`: no face of the walls.
    let ways_in = ["entrance", "entry", "door", "doors", "stairs", "steps", "access", "exit"];
    let faces: Vec<&str> = left
        .iter()
        .filter(|&&i| !typed.says(i + 1, &ways_in))
        .filter_map(|&i| face_word(&typed.lower(i)))
        .collect();
    let finish = [
        "finished",
        "unfinished",
        "below",
        "grade",
        "underground",
        "ground",
        "walkout",
        "not",
        "partly",
        "heated",
        "unheated",
    ];
    let remarks: Vec<&str> = left
        .iter()
        .filter(|&&i| face_word(&typed.lower(i)).is_none() && !typed.says(i, &finish))
        .map(|&i| typed.pieces[i].text.as_str())
        .collect();
    // `finished, 40 x 16 at 5 ft`: what is high or low there is a remark.
    let has_numbers = left.iter().any(|&i| typed.pieces[i].is_number());
    if faces.len() > 1 || has_numbers && super::measure::area_from(&typed.pieces, end).is_some() {
        return None;
    }
    let attic = says(&["attic"]);
    let is_part = below && part_finished::is_said(typed);
    let is_finished = says(&["finished", "heated"]) && !says(&["not"]) && !is_part;
    let unfinished = says(&["unfinished", "not", "unheated"]) || (below || attic) && !is_finished;
    let upper = typed
        .find(0, &["upper", "second", "2nd", "third", "3rd", "top", "upstairs", "half"])
        .is_some_and(|at| at < end)
        || typed.piece(0).is_some_and(|piece| piece.text == "2" || piece.text == "3");
    let name = match (unfinished, upper) {
        (true, _) => capitalized(&typed.text(first, end).to_lowercase()),
        (false, true) => "Upper rooms".to_owned(),
        (false, false) => "Rooms".to_owned(),
    };
    let kind = if unfinished { "unfinished" } else { "living" };
    // `basement garage 20 x 22`: what lies there.
    let own: Vec<&str> = left
        .iter()
        .filter_map(|&i| super::kind_word(&typed.lower(i)))
        .filter(|kind| matches!(*kind, "garage" | "storage" | "porch" | "patio"))
        .collect();
    let (kind, name, remarks) = match (&own[..], &remarks[..]) {
        (&[own], &[_]) => (own, capitalized(&own.to_lowercase()), Vec::new()),
        _ => (kind, name, remarks),
    };
    let face = faces.first().map_or_else(String::new, |face| format!(" measured to {face}"));
    let comment = match has_numbers || is_part {
        true => {
            let said = super::plainly(&format!("{} {}", typed.text(end, at), typed.rest(stop)));
            let said = said.replace(", ,", ",");
            format!("  # {}", said.trim_matches([' ', ',', ':', '-']))
        }
        false if remarks.is_empty() => String::new(),
        false => format!("  # {}", remarks.join(" ")),
    };
    let said = format!("{} {}", typed.text(end, at), typed.rest(stop));
    let sizes = [&one, &two].map(String::as_str);
    let head = format!("{kind} {}{face}", quoted(&name));
    if let Some(answer) = over_a_part::answer(typed, &level, &head, sizes, &said) {
        return Some(answer);
    }
    let space = format!("{kind} {}{face}{comment}", quoted(&name));
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let sides = |a: &str, b: &str| {
        if follows { String::new() } else { format!("\nnorth {a}\neast {b}\nsouth {a}\nwest {b}") }
    };
    let depths: &[&str] = if below {
        &[" below grade"]
    } else if typed.find(0, &["lower"]).is_some_and(|at| at < end) {
        &["", " below grade"]
    } else {
        &[""]
    };
    let mut lines: Vec<String> = depths
        .iter()
        .map(|depth| format!("level {level}{depth}\n{space}{}", sides(&one, &two)))
        .collect();
    if one != two && !follows {
        let turned = depths.iter();
        lines.extend(
            turned.map(|depth| format!("level {level}{depth}\n{space}{}", sides(&two, &one))),
        );
    }
    let cause = "a level has no sides of its own: below it stands a space, and below that the four sides that the size gives";
    let cause = match is_part {
        true => format!("{cause}; {}", part_finished::a_part(&name)),
        false => cause.to_owned(),
    };
    Some(Answer::Lines(lines, cause))
}

/// A size: where it begins, both lengths in one unit, and where it ends.
fn size(typed: &Typed<'_>, from: usize) -> Option<(usize, String, String, usize)> {
    lengths(&typed.pieces, from).into_iter().find_map(|(at, one)| {
        const WIDE: [&str; 3] = ["wide", "w", "width"];
        const DEEP: [&str; 4] = ["deep", "d", "depth", "long"];
        let word = |at: usize| usize::from(typed.says(at, &WIDE) || typed.says(at, &DEEP));
        let middle = one.end + word(one.end);
        let by = typed.says(middle, &["x", "by"])
            || typed
                .piece(middle)
                .is_some_and(|mark| mark.is_mark("×*") || middle > one.end && mark.is_mark(","));
        let two = length_at(&typed.pieces, middle + 1).filter(|_| by)?;
        if is_lumber(&one, &two) {
            return None;
        }
        let (a, b) = in_one_unit(&one, &two);
        let end = two.end + word(two.end);
        // What is wide runs along the street, so that what is deep comes first where that is south or north.
        let is_wide_first = typed.says(one.end, &WIDE) || typed.says(two.end, &DEEP);
        let (a, b) = if is_wide_first && end > two.end { (b, a) } else { (a, b) };
        Some((at, a, b, end))
    })
}

/// A level with a remark that says where it is or how high its ceilings are.
fn remark(typed: &Typed<'_>, end: usize, level: &str, below: bool) -> Option<Answer> {
    let rest = &typed.pieces[end..];
    let heights = ["ceiling", "ceilings", "high", "clg", "tall", "headroom"];
    let is_height = rest.iter().any(|piece| piece.is_word(&heights));
    let over = ["over", "above"];
    let is_over = rest.first().is_some_and(|piece| piece.is_word(&over));
    let numbers = rest.iter().any(Piece::is_number);
    let matters = [
        "inside",
        "outside",
        "frame",
        "same",
        "measured",
        "beside",
        "recorded",
        "partly",
        "partially",
        "start",
        "starts",
        "from",
    ];
    let plain = rest.iter().all(|piece| {
        (piece.sort == Sort::Word && !piece.is_word(&matters))
            || piece.is_number()
            || piece.is_mark(",;:()-–.'’\"&/")
    });
    if !plain
        || !(is_height && numbers || is_over && !numbers)
        || super::measure::area_from(&typed.pieces, end).is_some()
    {
        return None;
    }
    let depth = if below { " below grade" } else { "" };
    let said = super::plainly(typed.rest(end));
    let said = said.trim_matches([' ', ',', '-', '–', '(', ')', ':']).to_owned();
    Some(Answer::line(
        format!("level {level}{depth}  # {said}"),
        "a level is `level` and its name, with a `\"` on each side; anything else goes into a comment",
    ))
}

/// An offered level with a space below it, where sides follow: they would belong to no space.
pub(in crate::sketch::mend) fn with_a_space(offered: &str, after: &str) -> String {
    let is_level = |line: &str| line.starts_with("level ");
    let lines: Vec<&str> = offered.lines().collect();
    let mut out = Vec::new();
    for (at, line) in lines.iter().enumerate() {
        out.push((*line).to_owned());
        let next = lines.get(at + 1).copied().unwrap_or(after);
        if is_level(line) && super::super::begins_as_side(next) {
            let name = line.split('"').nth(1).unwrap_or_default().to_lowercase();
            let below = line.contains(" below grade")
                || name.contains("attic") && !name.contains("finished");
            out.push(if below {
                format!("unfinished {}", quoted(&capitalized(&name)))
            } else {
                "living \"Rooms\"".to_owned()
            });
        }
    }
    out.join("\n")
}
