//! Suggestions for whole lines about levels, lots, and what the record lists but the house does not have.

use super::measure::{area_at, area_from, length_at, lengths, rectangle};
use super::spaces::kind_word;
use super::{Answer, Typed, is_text, remark};

/// `level "Basement" partly below grade`, `level "Ground floor" 947 sq ft`.
pub(super) fn level(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["level"]) || typed.pieces.len() < 3 {
        return None;
    }
    if !is_text(typed.piece(1)) {
        // `level Basement partly below grade`
        let how = [
            "partly",
            "partially",
            "half",
            "mostly",
            "walkout",
            "walk-out",
            "underground",
            "daylight",
            "completely",
            "fully",
        ];
        let end = typed.find(2, &how).filter(|_| !typed.line.contains('"'))?;
        let name = typed.name(1, end);
        return Some(Answer::line(
            format!("level \"{name}\" {}", typed.rest(end)),
            "a name needs a `\"` on each side",
        ));
    }
    let (name, rest) = (typed.text(0, 2), typed.rest(2));
    let lower = rest.trim_start_matches([',', ';', ':', '-', ' ']).to_lowercase();
    let is_basement = ["basement", "cellar"].iter().any(|word| name.to_lowercase().contains(word));
    let depths = [
        "grade",
        "underground",
        "walkout",
        "walk-out",
        "basement",
        "cellar",
        "daylight",
        "sunken",
        "below ground",
    ];
    let is_above =
        ["above", "not below", "at grade", "on grade"].iter().any(|above| lower.contains(above));
    // `level "Upstairs" no basement`, `level "Main" over basement`: of another level, or of none.
    if depths_of_another(&lower) {
        return Some(Answer::line(
            format!("{name}  # {}", remark(rest)),
            "a level is above grade unless it says `below grade`",
        ));
    }
    let is_known = typed.says(2, &["below", "beside", "measured"]) && typed.pieces.len() <= 4;
    if is_known {
        return None;
    }
    if lower.is_empty() || is_above && lower.contains("grade") {
        let cause = "a level is above grade unless it says `below grade`";
        return (!lower.is_empty())
            .then(|| Answer::line(format!("{name}  # {}", remark(rest)), cause));
    }
    let finished = ["finished", "unfinished", "partial", "partly", "half", "full"]
        .iter()
        .any(|word| lower.starts_with(word));
    if !is_above && (depths.iter().any(|depth| lower.contains(depth)) || is_basement && finished) {
        let plain =
            ["below grade", "below ground", "underground", "(below grade)", "basement", "cellar"]
                .contains(&lower.as_str());
        let comment = if plain { String::new() } else { format!("  # {}", remark(rest)) };
        return Some(Answer::line(
            format!("{name} below grade{comment}"),
            "a level is `below grade` as a whole, even where only part of it lies below grade",
        ));
    }
    let has_area = area_at(&typed.pieces, 2).is_some_and(|(end, _)| end == typed.pieces.len());
    let has_length = lengths(&typed.pieces, 2).iter().any(|(_, measure)| measure.has_unit)
        && typed.find(2, &["x", "by"]).is_none();
    // `level "Upper floor" no veneer wall 5"`: what its walls are is said elsewhere.
    let brick = ["veneer", "brick", "stone", "siding", "wall", "walls"];
    if has_length && typed.find(2, &brick).is_some() {
        return Some(walls_of_a_level(typed, name));
    }
    (has_area || has_length).then(|| {
        Answer::line(format!("{name}  # {rest}"), "a level has no figure of its own; anything else goes into a comment at the end of the line")
    })
}

/// Whether a remark speaks of a basement that is not this level: `no basement`, `over the basement`.
pub(super) fn depths_of_another(remark: &str) -> bool {
    const BEFORE: [&str; 8] = ["no", "not", "without", "over", "above", "on", "has", "with"];
    const BETWEEN: [&str; 8] =
        ["a", "the", "any", "crawlspace", "cellar", "or", "full", "finished"];
    let words: Vec<&str> =
        remark.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).collect();
    let Some(at) = words.iter().position(|word| ["basement", "cellar"].contains(word)) else {
        return false;
    };
    let others = ["grade", "underground", "walkout", "daylight"];
    let in_the_ground = words
        .windows(2)
        .any(|two| ["below", "the", "under"].contains(&two[0]) && two[1] == "ground");
    let before = words[..at].iter().rev().find(|word| !BETWEEN.contains(word));
    before.is_some_and(|word| BEFORE.contains(word))
        && !in_the_ground
        && !words.iter().any(|word| others.contains(word))
}

/// `level "Ground floor" veneer 4 5/8"`, `level "Upper floor" no veneer wall 5"`: what is said once in the file, and what
/// each space says.
fn walls_of_a_level(typed: &Typed<'_>, name: &str) -> Answer {
    let after = |words: &[&str]| {
        let at = typed.find(2, words)?;
        lengths(&typed.pieces, at).into_iter().next().filter(|(first, _)| *first == at + 1)
    };
    let is_bare = typed.find(2, &["no", "without", "none", "siding"]).is_some();
    let mut parts = vec![format!("write `{name}` here")];
    if is_bare {
        parts.push("`veneer none` after the name of each of its spaces".to_owned());
    } else if let Some((_, thick)) = after(&["veneer", "brick", "stone"]) {
        parts.push(format!(
            "`veneer {}` on a line above the first level, with `veneer none` after the name of each space of another level that has no brick or stone",
            thick.text
        ));
    }
    if let Some((_, thick)) = after(&["wall", "walls"]) {
        parts.push(format!("`wall {}` on a line above the first level", thick.text));
    }
    Answer::say("a level does not say how its walls are made", parts.join(", and "))
}

/// `lot 12 0.35 ac`, `lot "Lot 12" .35 acres more or less`: puts the name first, then `recorded` and the area.
pub(super) fn lot(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["lot"]) {
        return None;
    }
    let (first, end, area) = area_from(&typed.pieces, 1)?;
    // `lot 0.11 acres` below the calls of a lot.
    if typed.attempt.beside.in_lot && first == 1 {
        return Some(Answer::say(
            "the area of the lot stands on the line that begins with `lot`",
            format!("take this line out, and at the end of that line write `recorded {area}`"),
        ));
    }
    let between = typed.piece(first.checked_sub(1)?)?;
    let stop =
        if between.is_word(&["recorded", "is", "of", "area", "about", "approx", "containing"]) {
            first - 1
        } else {
            first
        };
    let mut stop = stop;
    while stop > 1
        && typed.says(
            stop - 1,
            &[
                "is",
                "of",
                "area",
                "about",
                "approx",
                "containing",
                "contains",
                "size",
                "acreage",
                "ca",
                "has",
                "total",
            ],
        )
    {
        stop -= 1;
    }
    let name = typed.name(1, stop);
    let name = name.trim_matches(['-', '–', '/', '.', ' ']).to_owned();
    let name = match name.as_str() {
        "" => "Lot".to_owned(),
        // `Lot 12, Block 3`: the first number is the lot's.
        number if number.contains(',') && number.starts_with(|c: char| c.is_ascii_digit()) => {
            format!("Lot {number}")
        }
        _ => name,
    };
    let rest = remark(typed.rest(end).trim_start_matches('.'));
    let comment = if rest.is_empty() { String::new() } else { format!("  # {rest}") };
    let line = format!("lot \"{name}\" recorded {area}{comment}");
    let after = typed.attempt.beside.after.to_lowercase();
    let has_calls = super::super::begins_as_side(&after)
        || ["bearing", "thence", "n", "s", "#"].iter().any(|word| {
            after
                .strip_prefix(word)
                .is_some_and(|rest| rest.starts_with(|c: char| !c.is_alphabetic()))
        });
    if has_calls {
        return Some(Answer::line(
            line,
            "a lot has its name with a `\"` on each side, then `recorded` and its area",
        ));
    }
    Some(Answer::Lines(
        vec![line, format!("# {}", typed.line)],
        "a lot has its name with a `\"` on each side, then `recorded` and its area, and its sides or calls on the lines below; without these it is a comment".to_owned(),
    ))
}

/// `missing outbuilding "Shed" 8x10`, `no shed`, `shed is gone, 80 sq ft`.
pub(super) fn missing(typed: &Typed<'_>) -> Option<Answer> {
    if typed.says(0, &["missing"]) {
        return missing_space(typed);
    }
    let thing = |word: &str| match word {
        "shed" | "barn" | "workshop" | "greenhouse" | "outbuilding" => Some("outbuilding"),
        word => kind_word(word),
    };
    let gone = ["gone", "removed", "demolished", "missing", "destroyed", "razed"];
    // `down 24'` is a wall.
    let is_down = typed.find(1, &["down"]).is_some_and(|at| {
        super::measure::length_at(&typed.pieces, at + 1).is_none()
            && super::measure::lengths(&typed.pieces, 1).is_empty()
    });
    let is_gone = typed.find(1, &gone).is_some()
        || is_down
        || typed.says(0, &["no", "removed", "gone", "demolished"]);
    let at = usize::from(thing(&typed.lower(0)).is_none());
    let word = typed.lower(at);
    let kind = thing(&word).filter(|_| is_gone && !typed.line.contains('"'))?;
    let name = capitalized(&word);
    if let Some((_, _, area)) = area_from(&typed.pieces, 1) {
        return Some(Answer::line(
            format!("missing {kind} \"{name}\" recorded {area}"),
            "what the record lists and the house does not have is `missing`",
        ));
    }
    Some(Answer::say(
        "what the record lists and the house does not have is `missing`, with the area on the record",
        format!(
            "write `missing {kind} \"{name}\" recorded`, then the area on the record; what the record does not list needs no line"
        ),
    ))
}

/// `missing shed 8x10`, `missing "Shed" 80 sq ft`, `missing outbuilding "Shed" 8' x 10' recorded 80 sq ft`.
pub(super) fn missing_space(typed: &Typed<'_>) -> Option<Answer> {
    let mut at = 1;
    while typed.piece(at).is_some_and(|piece| piece.is_mark(":=,") || piece.is_word(&["a", "the"]))
    {
        at += 1;
    }
    let kind_of = |word: &str| match word {
        "shed" | "barn" | "workshop" | "greenhouse" => "outbuilding",
        word => kind_word(word).unwrap_or("outbuilding"),
    };
    let word = typed.lower(at);
    let is_thing = kind_word(&word).is_some()
        || ["shed", "barn", "workshop", "greenhouse"].contains(&word.as_str());
    let mut name = if is_thing { capitalized(&word) } else { String::new() };
    let kind = if is_thing { kind_of(&word) } else { "outbuilding" };
    at += usize::from(is_thing);
    if let Some(text) = typed.piece(at).filter(|text| text.sort == super::Sort::Text) {
        name = text.text.trim_matches(['"', '“', '”']).to_owned();
        at += 1;
    } else if typed.piece(at).is_some_and(|next| next.sort == super::Sort::Word)
        && !typed.says(at, &["recorded", "x", "by"])
        && is_thing
    {
        name = typed.text(at, at + 1).to_owned();
        at += 1;
    }
    if name.is_empty() {
        return None;
    }
    let head = format!("missing {kind} \"{name}\"");
    // `missing "Shed" 120`
    let bare = typed.piece(at).filter(|number| number.is_number() && at + 1 == typed.pieces.len());
    let area = area_from(&typed.pieces, at)
        .or_else(|| bare.map(|number| (at, at + 1, format!("{} sq ft", number.text))));
    let by = typed
        .find(at, &["x", "by"])
        .or_else(|| (at..typed.pieces.len()).find(|&at| typed.pieces[at].is_mark("×*")));
    let size = by.and_then(|by| {
        let first = (at..by)
            .find(|&first| length_at(&typed.pieces, first).is_some_and(|one| one.end == by))?;
        let (one, two) = (length_at(&typed.pieces, first)?, length_at(&typed.pieces, by + 1)?);
        Some((first, two.end, rectangle(one.length, two.length)?))
    });
    let line = match (&area, &size) {
        (Some((_, _, area)), Some((first, end, _))) => {
            format!("{head} recorded {area}  # {}", typed.text(*first, *end))
        }
        (Some((_, _, area)), None) => format!("{head} recorded {area}"),
        (None, Some((first, end, area))) => {
            format!("{head} recorded {area}  # {}", typed.text(*first, *end))
        }
        (None, None) if at >= typed.pieces.len() => {
            return Some(Answer::say(
                "what is missing has the area that the record gives it",
                format!("write `{head} recorded` and that area"),
            ));
        }
        (None, None) => return None,
    };
    Some(Answer::line(line, "what is missing has its kind, its name and `recorded` with its area"))
}

pub(super) fn capitalized(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
