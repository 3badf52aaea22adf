//! Lines whose first word begins none, judged by the other words: whether the inside was seen, a level, a thickness,
//! rooms, a day, a wall.

use super::super::pieces::{Piece, Sort, cut};
use super::levels::capitalized;
use super::measure::{area_from, date_from, lengths, money_from};
use super::tails::{inches_at, is_no};
use super::{Answer, Rule, Typed, first_of, is_text, kind_word, plainly, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[interior, numbered_floor, thickness, rooms, measured, wall];
    first_of(rules, typed)
}

/// Parts of a line without marks around them, as a comment; nothing if nothing is left.
fn comment(parts: &[&str]) -> String {
    let said: Vec<String> = parts
        .iter()
        .map(|part| plainly(part).trim_matches(|c: char| " ,;:.-–—()#/".contains(c)).to_owned())
        .filter(|part| part.contains(char::is_alphanumeric))
        .collect();
    if said.is_empty() { String::new() } else { format!("  # {}", said.join(", ")) }
}

const SEEN: &str = "whether the inside was seen is `interior seen` or `interior not seen`";

/// `I live here so yes interior seen`: the words of the format among others.
pub(super) fn seen(typed: &Typed<'_>) -> Option<Answer> {
    // What the other rules would make a comment.
    let begins = typed.attempt.knows_first;
    if begins { None } else { interior(typed) }
}

/// `interior inspected 3/21`, `drive-by only`, `I live here so yes interior seen`: whether the inside was seen.
fn interior(typed: &Typed<'_>) -> Option<Answer> {
    let lower = typed.line.to_lowercase();
    let has = |phrases: &[&str]| phrases.iter().any(|phrase| lower.contains(phrase));
    let measures = lengths(&typed.pieces, 0).iter().any(|(_, one)| one.has_unit)
        || area_from(&typed.pieces, 0).is_some()
        || money_from(&typed.pieces, 0).is_some();
    if measures
        || typed.pieces.iter().any(|piece| is_text(Some(piece)))
        || typed.attempt.space.is_some()
    {
        return None;
    }
    // The words of the format themselves, among others.
    let own = (0..typed.pieces.len()).find_map(|at| {
        let begins = typed.says(at, &["interior"]);
        let mut at_no = at + 1;
        while typed.says(at_no, &["was", "is", "has", "been", "wasn't", "isn't", "were"]) {
            at_no += 1;
        }
        let negated = (at..at_no).any(|at| is_no(&typed.pieces[at]));
        let no = usize::from(typed.says(at_no, &["not", "un", "never"]));
        let end = at_no + no;
        let no = no + usize::from(negated);
        (begins && typed.says(end, &["seen", "unseen"]))
            .then(|| (at, end + 1, no > 0 || typed.says(end, &["unseen"])))
    });
    if let Some((at, end, no)) = own {
        let said = if no { "interior not seen" } else { "interior seen" };
        let more = comment(&[typed.text(0, at), typed.rest(end)]);
        // `is the interior seen?` is no statement.
        return (format!("{said}{more}") != typed.line && !lower.contains('?'))
            .then(|| Answer::line(format!("{said}{more}"), SEEN));
    }
    let inside = typed.says(0, &["int"]) || typed.find(0, &["interior", "inside"]).is_some();
    let begins = typed.says(0, &["interior", "inside", "int"]);
    let saw = [
        "seen",
        "inspected",
        "viewed",
        "toured",
        "visited",
        "entered",
        "checked",
        "walked",
        "observed",
        "accessed",
        "surveyed",
        "examined",
        "access",
    ];
    let saw = typed.find(0, &saw).is_some() || inside && typed.find(1, &["yes"]).is_some();
    let says_no =
        typed.pieces.iter().any(is_no) || inside && has(&["denied", "refused", "unable", "none"]);
    let outside_only = has(&[
        "drive-by",
        "drive by",
        "driveby",
        "exterior only",
        "outside only",
        "exterior-only",
        "curbside",
        "from the street only",
        "only from the street",
        "windshield",
        "desktop only",
        "no entry",
        "no interior",
        "did not go in",
        "didn't go in",
        "did not enter",
        "didn't enter",
        "could not get in",
        "couldn't get in",
        "not let in",
        "never went in",
        "never been inside",
        "no access to interior",
        "no access to inside",
        "no access inside",
        "no inside access",
        "exterior inspection only",
        "only exterior",
        "only saw outside",
        "refused entry",
        "denied entry",
        "from street only",
        "only from street",
        "entry refused",
        "entry denied",
        "refused access",
        "denied access",
        "no one home",
        "nobody home",
        "outside only",
    ]);
    let been_in = !says_no
        && has(&[
            "went inside",
            "walked through",
            "walk-through",
            "walkthrough",
            "been inside",
            "was inside",
            "full inspection",
            "interior and exterior",
            "inside and out",
            "saw the inside",
            "saw inside",
            "went through the house",
            "toured inside",
            "interior inspection",
            "got inside",
            "let me in",
            "let us in",
            "let in",
            "through inside",
            "i live here",
            "walked it",
            "inspected inside",
            "inspected interior",
            "inspected the interior",
            "inspected the inside",
        ]);
    let is_head =
        typed.pieces.len() <= 10 && !typed.pieces.iter().any(|piece| piece.is_mark("$\"'"));
    let known = typed.attempt.knows_first && !begins;
    let said = if known || !is_head || has(&["wall", "brick", "veneer", "measured", "dimension"]) {
        return None;
    } else if outside_only || inside && saw && says_no {
        "interior not seen"
    } else if typed.find(0, &["partly", "partially", "some", "half", "except"]).is_some() {
        return None;
    } else if been_in || inside && saw {
        "interior seen"
    } else {
        return None;
    };
    let line = match begins {
        true => format!("{said}{}", comment(&[typed.rest(1)])),
        false => format!("{said}{}", comment(&[typed.line])),
    };
    let line = line.replace("  # seen ", "  # ");
    (!["interior seen  # seen", "interior not seen  # not seen"].contains(&line.as_str()))
        .then(|| Answer::line(line, SEEN))
}

/// `floor 1 of 1:`, `story 2 of 2`: a level by its number.
fn numbered_floor(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.says(0, &["floor", "story", "storey", "flr"]);
    let number = typed.piece(1).filter(|number| first && super::digits::is_small(number))?;
    let of = typed.says(2, &["of", "out"]) || typed.piece(2).is_some_and(|mark| mark.is_mark("/"));
    let at = if of { 4 + usize::from(typed.says(2, &["out"])) } else { 2 };
    let ends = (at..typed.pieces.len()).all(|at| typed.pieces[at].is_mark(":.-–,;"));
    (number.text.len() <= 2 && ends && at <= typed.pieces.len() && (of || at < typed.pieces.len()))
        .then(|| {
            Answer::line(
                format!("level {}", quoted(&capitalized(typed.text(0, at)))),
                "a level begins with `level`, then its name with a `\"` on each side",
            )
        })
}

/// `2x6 walls, 5 1/2" thick`: the thickness that is stated, and not that of the studs.
pub(super) fn stated_thickness(typed: &Typed<'_>) -> Option<Answer> {
    let is_size = typed.piece(0)?.is_number() && typed.says(1, &["x"]);
    if is_size { thickness(typed) } else { None }
}

/// `brick is about 4 and 5/8 inches thick`, `walls are 5-1/2 thick`: how thick the brick or the walls are.
fn thickness(typed: &Typed<'_>) -> Option<Answer> {
    // `2x6 walls, 5 1/2" thick`: the size of a stud is no thickness.
    let in_size = |at: usize| {
        let by =
            |at: usize| typed.says(at, &["x"]) || typed.piece(at).is_some_and(|by| by.is_mark("×"));
        typed.pieces[at].is_number() && (by(at + 1) || at > 0 && by(at - 1)) || by(at)
    };
    let first = (0..typed.pieces.len()).find(|&at| typed.pieces[at].is_number() && !in_size(at))?;
    let mut measure = inches_at(typed, first);
    let bare =
        typed.pieces[first].text.parse::<u32>().ok().filter(|inches| (1..=24).contains(inches));
    if measure.as_ref().is_none_or(|one| !one.has_unit)
        && bare.is_some()
        && typed.find(first, &["thick", "thickness"]).is_some()
    {
        // A fraction without its mark, or a whole number without one.
        if measure.is_none() {
            let text = format!("{}\"", typed.pieces[first].text);
            measure = super::measure::length_at(&cut(&text), 0);
            if let Some(measure) = &mut measure {
                measure.end = first + 1;
            }
        }
    } else if measure.as_ref().is_some_and(|one| !one.has_unit) {
        return None;
    }
    let measure = measure?;
    let brick = ["brick", "bricks", "stone", "masonry", "rock", "veneer", "facing"];
    let wall = ["wall", "walls", "stud", "framing"];
    let filler = [
        "is",
        "are",
        "the",
        "all",
        "about",
        "approx",
        "thick",
        "thickness",
        "of",
        "exterior",
        "our",
        "each",
        "and",
        "ext",
        "outer",
        "outside",
        "deep",
        "inch",
        "inches",
        "in",
        "roughly",
        "around",
        "total",
        "a",
        "veneer",
        "face",
        "front",
        "layer",
        "house",
        "on",
        "this",
    ];
    let only = (0..typed.pieces.len()).all(|at| {
        (first..measure.end).contains(&at)
            || in_size(at)
            || typed.says(at, &brick)
            || typed.says(at, &wall)
            || typed.says(at, &filler)
            || typed.pieces[at].is_mark(",:=.()~-–")
    });
    let says = |words: &[&str]| {
        (0..first).any(|at| typed.says(at, words))
            || (measure.end..typed.pieces.len()).any(|at| typed.says(at, words))
    };
    let is_thick = typed.find(0, &["thick", "thickness"]).is_some();
    let word = match (says(&brick), says(&wall)) {
        (true, _) => "veneer",
        (false, true) if is_thick => "wall",
        _ => return None,
    };
    let line = format!("{word} {}", measure.text);
    (only
        && line != typed.line
        && measure.is_inches() | (measure.length < crate::units::length::Length::FOOT))
        .then(|| {
            Answer::line(
                line,
                if word == "wall" {
                    "how thick the walls are is `wall` and a length"
                } else {
                    "brick or stone before the frame is `veneer` and its thickness"
                },
            )
        })
}

/// `bedrooms measured inside, no brick up here`: rooms, with a face or without brick.
fn rooms(typed: &Typed<'_>) -> Option<Answer> {
    let known = [
        "bedroom",
        "bedrooms",
        "rooms",
        "kitchen",
        "den",
        "office",
        "suite",
        "study",
        "library",
        "loft",
        "addition",
        "apartment",
        "family",
        "dining",
        "master",
        "guest",
        "upstairs",
        "living",
        "main",
    ];
    if !typed.says(0, &known)
        || typed.pieces.iter().any(|piece| is_text(Some(piece)) || piece.is_number())
    {
        return None;
    }
    let second = usize::from(typed.says(
        1,
        &[
            "room",
            "rooms",
            "house",
            "suite",
            "bedroom",
            "bedrooms",
            "area",
            "quarters",
            "apartment",
        ],
    ));
    let end = 1 + second;
    let is_alone = ["family", "dining", "master", "guest", "upstairs", "living", "main"];
    if second == 0 && typed.says(0, &is_alone) {
        return None;
    }
    let mut taken = vec![false; typed.pieces.len()];
    taken[..end].fill(true);
    let mut take = |first: usize, words: &[&str]| {
        let fits = words.iter().enumerate().all(|(i, word)| {
            *word == "*" || typed.says(first + i, &word.split('|').collect::<Vec<_>>())
        });
        if fits && first + words.len() <= typed.pieces.len() {
            taken[first..first + words.len()].fill(true);
        }
        fits && first + words.len() <= typed.pieces.len()
    };
    let (mut face, mut bare) = (None, false);
    for at in end..typed.pieces.len() {
        let tape = "measured|taped|measure|measurements|dimensions";
        for (name, words) in [
            ("inside", "inside|interior|indoors"),
            ("frame", "frame|studs|framing"),
            ("outside", "outside|exterior"),
        ] {
            let found = take(at, &[tape, "to|from|at|on", "the", words])
                || take(at, &[tape, "to|from|at|on", words])
                || take(at, &[tape, words])
                || take(at, &[words, tape]);
            if found {
                face = face.or(Some(name));
            }
        }
        bare |= take(at, &["no|without", "brick|veneer|stone|masonry"]);
    }
    if face.is_none() && !bare {
        return None;
    }
    let mut left: Vec<Piece> = typed
        .pieces
        .iter()
        .zip(&taken)
        .filter(|(_, taken)| !**taken)
        .map(|(piece, _)| piece.clone())
        .collect();
    while left.first().is_some_and(|piece| {
        piece.sort == Sort::Mark || piece.is_word(&["and", "with", "is", "are", "were", "was"])
    }) {
        left.remove(0);
    }
    let placed = ["from", "start", "within", "detached", "recorded", "not", "no", "counted"];
    if left.iter().any(|piece| piece.is_word(&placed)) {
        return None;
    }
    let more = comment(&[&super::join(&left)]);
    let face = face.map_or_else(String::new, |face| format!(" measured to {face}"));
    let bare = if bare { " veneer none" } else { "" };
    Some(Answer::line(
        format!("living {}{face}{bare}{more}", quoted(&capitalized(typed.text(0, end)))),
        "rooms are `living`, then a name with a `\"` on each side, `measured to` and the face, and `veneer none` without brick",
    ))
}

/// `insp. date 03/21/2026 by assistant w/ laser`: the day of the measuring.
fn measured(typed: &Typed<'_>) -> Option<Answer> {
    let begins = [
        "insp",
        "inspection",
        "inspected",
        "visit",
        "visited",
        "site",
        "taped",
        "surveyed",
        "measurement",
        "measurements",
        "date",
        "field",
        "onsite",
        "on-site",
        "fieldwork",
        "measuring",
        "measure",
        "house",
        "we",
        "i",
        "all",
        "everything",
        "was",
    ];
    let (first, end, day) = date_from(&typed.pieces, 0)?;
    let filler = [
        "date",
        "of",
        "on",
        "the",
        "was",
        "is",
        "work",
        "done",
        "inspected",
        "measured",
        "house",
        "visit",
        "we",
        "and",
        "taped",
        "day",
        "inspection",
        "home",
    ];
    let only = (0..first).all(|at| {
        typed.says(at, &begins) || typed.says(at, &filler) || typed.pieces[at].is_mark(".:,-–=")
    }) && first > 0;
    let says_it = (0..first).any(|at| {
        typed.says(
            at,
            &[
                "insp",
                "inspection",
                "inspected",
                "visit",
                "visited",
                "taped",
                "surveyed",
                "measurement",
                "measurements",
                "field",
                "fieldwork",
                "measuring",
                "measure",
                "measured",
            ],
        )
    });
    let other = money_from(&typed.pieces, 0).is_some()
        || area_from(&typed.pieces, 0).is_some()
        || lengths(&typed.pieces[end..], 0).iter().any(|(_, one)| one.has_unit);
    if !only || !says_it || other || typed.attempt.space.is_some() {
        return None;
    }
    // `w/` is `with`.
    let is_with = |at: usize| {
        if typed.says(at, &["with", "using"]) {
            Some(at + 1)
        } else if typed.says(at, &["w"]) {
            Some(at + 1 + usize::from(typed.piece(at + 1).is_some_and(|slash| slash.is_mark("/"))))
        } else {
            None
        }
    };
    let by = (end..typed.pieces.len()).find(|&at| typed.says(at, &["by"]));
    let with = (end..typed.pieces.len()).find(|&at| is_with(at).is_some());
    let begin = by.into_iter().chain(with).min().unwrap_or(typed.pieces.len());
    let name = |first: usize, end: usize| {
        let name = typed.name(first, end);
        let name = name.trim_matches([',', ' ', '.', ';', '(', ')']).to_owned();
        (!name.is_empty()).then(|| quoted(&name))
    };
    let mut line = format!("measured {day}");
    if let Some(by) = by {
        let stop = with.filter(|with| *with > by).unwrap_or(typed.pieces.len());
        line = format!("{line} by {}", name(by + 1, stop)?);
    }
    if let Some(with) = with {
        let stop = by.filter(|by| *by > with).unwrap_or(typed.pieces.len());
        line = format!("{line} with {}", name(is_with(with)?, stop)?);
    }
    let more = comment(&[typed.text(end, begin)]);
    Some(Answer::line(
        format!("{line}{more}"),
        "the day of the measuring is `measured` and the day as year-month-day, then `by` and `with`",
    ))
}

/// `rear wall of kitchen going east 22' 4"`: a wall whose way and length stand after other words.
fn wall(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    let found = lengths(&typed.pieces, 0);
    let [(first, measure)] = &found[..] else { return None };
    let way = |at: usize| {
        ["north", "south", "east", "west"].iter().find(|way| typed.says(at, &[way])).copied()
    };
    let mut ways = (0..typed.pieces.len()).filter_map(|at| way(at).map(|word| (at, word)));
    let (at, word) = ways.next().filter(|_| ways.next().is_none())?;
    let between = [
        "going", "running", "runs", "for", "is", "about", "another", "heading", "goes", "exactly",
        "measures", "of", "side",
    ];
    let close = at < *first
        && (at + 1..*first).all(|at| typed.says(at, &between) || typed.pieces[at].is_mark(":=-–,"));
    let runs = typed.says(
        at.wrapping_sub(1),
        &[
            "going", "running", "runs", "heading", "goes", "go", "then", "headed", "walking",
            "walk", "due",
        ],
    ) || typed.says(at.wrapping_sub(1), &["to"])
        && typed.says(at.wrapping_sub(2), &["going", "running", "runs"])
        || at > 0 && typed.pieces[at - 1].is_mark(",:;-–—");
    let other = [
        "tie", "corner", "record", "recorded", "county", "diagonal", "bearing", "arc", "bay",
        "rise", "lot", "level", "start", "starts", "starting", "from", "overall", "within",
        "detached", "degrees", "facing", "faces", "porch", "deck", "total", "or", "turn", "turns",
        "same", "minus", "plus", "less", "by", "whole", "entire", "width", "depth", "and",
    ];
    // `back wall of the den heading east 22' 4"`
    let of_the_house = typed.says(0, &["back", "front", "left", "right"])
        && typed.says(1, &["wall", "side", "of", "end"])
        && typed
            .says(at.wrapping_sub(1), &["going", "running", "runs", "heading", "goes", "headed"]);
    let is_other = typed
        .pieces
        .iter()
        .any(|piece| piece.is_word(&other) || is_text(Some(piece)) || is_no(piece))
        || kind_word(&typed.lower(0)).is_some()
        || area_from(&typed.pieces, 0).is_some()
        || typed.attempt.knows_first && !of_the_house
        || at < 2;
    let before = plainly(typed.text(0, at));
    let before = before
        .trim_end_matches(" going")
        .trim_end_matches(" running")
        .trim_end_matches(" runs")
        .trim_end_matches(" heading")
        .trim_end_matches(" goes")
        .trim_end_matches(" then")
        .trim_end_matches(" due")
        .trim_matches(|c: char| " ,;:.-–—".contains(c));
    let after = super::remark(typed.rest(measure.end));
    let said = if after.is_empty() { before.to_owned() } else { format!("{before}, {after}") };
    (close && runs && !is_other && measure.has_unit && said.contains(' ')).then(|| {
        Answer::line(
            format!("{word} {} note {}", measure.text, quoted(&said)),
            "a wall begins with its direction, then its length; what it runs along goes into a note",
        )
    })
}
