//! How a house was measured and of what its walls are: the face beside the day or the tape, brick that is said and not
//! measured, and how the plan's north lies.

use super::measure::date_from;
use super::{Answer, Rule, Typed, first_of, is_text, remark};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        measured_to_a_face,
        seen_or_not,
        stucco,
        height_of_a_wall,
        outer_wall,
        north_arrow,
        setback,
        brick_alone,
        mills,
    ];
    first_of(rules, typed)
}

/// `measured inside with laser`, `measured 2026-03-07 inside`: the face has a line of its own.
fn measured_to_a_face(typed: &Typed<'_>) -> Option<Answer> {
    let faces: [(&str, &[&str]); 3] = [
        ("inside", &["inside", "interior", "indoors"]),
        ("outside", &["outside", "exterior", "outdoors"]),
        ("frame", &["studs", "frame"]),
    ];
    if !typed.says(0, &["measured", "taped", "measurements"]) || typed.attempt.space.is_some() {
        return None;
    }
    let (at, face) = (1..typed.pieces.len()).find_map(|at| {
        let (face, _) = faces.iter().find(|(_, words)| typed.says(at, words))?;
        Some((at, *face))
    })?;
    let is_negated = (1..at).any(|at| super::tails::is_no(&typed.pieces[at]));
    let others = (1..typed.pieces.len())
        .filter(|&other| other != at && faces.iter().any(|(_, words)| typed.says(other, words)));
    if is_negated || others.count() > 0 {
        return None;
    }
    let tool = typed.find(1, &["with", "by", "using"]).and_then(|with| {
        let from = with + 1 + usize::from(typed.says(with + 1, &["a", "the", "my"]));
        let tools = ["laser", "tape", "wheel", "measure", "steel", "cloth", "meter", "rangefinder"];
        let stop = (from..typed.pieces.len())
            .find(|&at| !typed.says(at, &tools))
            .unwrap_or(typed.pieces.len());
        (stop > from).then(|| (with, stop, typed.name(from, stop)))
    });
    let small = [
        "on",
        "to",
        "the",
        "from",
        "all",
        "walls",
        "face",
        "of",
        "house",
        "was",
        "it",
        "at",
        "dimensions",
        "only",
    ];
    let date = date_from(&typed.pieces, 1);
    let is_said = |at: usize, own: usize| {
        own == at
            || typed.says(own, &small)
            || typed.pieces[own].is_mark(",;:()-–=")
            || tool.as_ref().is_some_and(|(with, stop, _)| (*with..*stop).contains(&own))
            || date.as_ref().is_some_and(|(first, end, _)| (*first..*end).contains(&own))
    };
    if !(1..typed.pieces.len()).all(|own| is_said(at, own)) {
        return None;
    }
    let with = tool.as_ref().map(|(_, _, tool)| tool.as_str());
    let lines = match (date, with) {
        (Some((_, _, date)), Some(tool)) => {
            format!("measured {date} with \"{tool}\"\nfaces {face}")
        }
        (Some((_, _, date)), None) => format!("measured {date}\nfaces {face}"),
        (None, Some(tool)) => format!("faces {face}  # with {tool}"),
        (None, None) => return None,
    };
    Some(Answer::line(
        lines,
        "the face that was measured is `faces`, the day and the tape are `measured`",
    ))
}

/// `interior seen no`, `interior seen: not`, `interior: no`: whether the inside was seen.
fn seen_or_not(typed: &Typed<'_>) -> Option<Answer> {
    let last = typed.pieces.last()?;
    let is_no = last.is_word(&["no", "not", "n", "false", "never", "none"]);
    let words = (1..typed.pieces.len() - 1).all(|at| {
        typed.says(at, &["seen", "inspected", "viewed", "was", "access", "accessed"])
            || typed.pieces[at].is_mark(":=-–,.()?")
    });
    (typed.says(0, &["interior", "inside"]) && is_no && words && typed.attempt.space.is_none())
        .then(|| {
            Answer::line(
                "interior not seen",
                "whether the inside was seen is `interior seen` or `interior not seen`",
            )
        })
}

/// `veneer stucco 7/8"`: what the veneer is of, before its thickness.
fn stucco(typed: &Typed<'_>) -> Option<Answer> {
    let not_any = ["n/a", "na", "n.a.", "no", "0", "-", "--"];
    if typed.says(0, &["veneer"]) && not_any.contains(&typed.rest(1).to_lowercase().as_str()) {
        return Some(Answer::line("veneer none", "without brick or stone the veneer is `none`"));
    }
    let of = typed.piece(1).filter(|of| {
        of.is_word(&["stucco", "plaster", "eifs", "tile", "rock", "block", "concrete"])
    })?;
    let thick = super::measure::length_at(&typed.pieces, 2).filter(|thick| thick.has_unit)?;
    (typed.says(0, &["veneer"]) && thick.end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("veneer {}  # {}", thick.text, of.text),
            "a veneer is given by its thickness alone",
        )
    })
}

/// `brick house`, `brick`, `all brick`, `veneer yes`, `brick all around`: brick without its thickness.
fn brick_alone(typed: &Typed<'_>) -> Option<Answer> {
    const SAID: [&str; 21] = [
        "brick", "bricks", "veneer", "veneered", "house", "home", "all", "around", "yes", "full",
        "fully", "exterior", "is", "the", "walls", "sides", "every", "side", "it", "a", "whole",
    ];
    let is_brick = typed.find(0, &["brick", "bricks", "veneer"]).is_some();
    let only = (0..typed.pieces.len()).all(|at| {
        typed.says(at, &SAID)
            || typed.pieces[at].is_mark(",:;=-–.()")
            || typed.pieces[at].text == "4" && typed.says(at + 1, &["sides"])
    });
    let is_sides = typed.find(0, &["sides"]).is_some_and(|at| {
        !typed.says(at.saturating_sub(1), &["all", "full", "four"])
            && typed.piece(at.saturating_sub(1)).is_none_or(|n| n.text != "4")
    });
    (is_brick && only && !is_sides && typed.attempt.space.is_none())
        .then(|| Answer::line("veneer 4 5/8\"", super::super::BRICK_IS))
}

/// `mill rate 10.5 school`, `mill levy 10.5 "school"`: mills are dollars per $1,000.
fn mills(typed: &Typed<'_>) -> Option<Answer> {
    let is_mills =
        typed.says(0, &["mill", "millage"]) && typed.says(1, &["rate", "levy", "levies"]);
    let number = typed.piece(2).filter(|number| is_mills && number.is_number())?;
    let from = 3 + usize::from(typed.says(3, &["mills", "for"]));
    let name = if is_text(typed.piece(from)) {
        typed.name(from, from + 1)
    } else {
        remark(typed.rest(from))
    };
    (!name.is_empty() && !name.chars().any(|c| c.is_ascii_digit())).then(|| {
        Answer::line(
            format!("tax rate {} per $1,000 {}", number.text, super::quoted(&name)),
            "a mill is one dollar of tax per $1,000 of value",
        )
    })
}

/// `wall ht 8'`, `walls 9 ft high`, `wall height 9 ft`: how high the rooms are changes no area.
fn height_of_a_wall(typed: &Typed<'_>) -> Option<Answer> {
    const SAID: [&str; 14] = [
        "wall", "walls", "ht", "hgt", "height", "heights", "high", "tall", "is", "are", "ceiling",
        "all", "plate", "of",
    ];
    let is_wall = typed.says(0, &["wall", "walls"]);
    let is_high = typed.find(1, &["ht", "hgt", "height", "heights", "high", "tall"]).is_some();
    let (at, one) = super::measure::lengths(&typed.pieces, 1).into_iter().next()?;
    let only = (0..typed.pieces.len()).all(|own| {
        (at..one.end).contains(&own)
            || typed.says(own, &SAID)
            || typed.pieces[own].is_mark(":=-–,.")
    });
    (is_wall && is_high && only).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "how high the walls are changes no area; how thick they are is `wall`",
        )
    })
}

/// `ext wall 2x6`, `exterior walls 6"`: which walls is understood.
fn outer_wall(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["ext", "exterior", "outer"]) && typed.says(1, &["wall", "walls"]);
    let is_stud = typed.piece(2).is_some_and(|two| two.text == "2")
        && (typed.says(3, &["x"]) || typed.piece(3).is_some_and(|by| by.is_mark("×")));
    (begins && is_stud && typed.attempt.space.is_none()).then(|| {
        Answer::line(format!("wall {}", typed.rest(2)), "how thick the walls are is `wall`")
    })
}

/// `north arrow 3 deg`: whether it is the plan's north or true north is not said.
fn north_arrow(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["north"]) && typed.says(1, &["arrow"]);
    let number = typed.pieces.iter().find(|piece| begins && piece.is_number())?;
    (typed.attempt.space.is_none()).then(|| {
        Answer::Lines(
            ["E", "W"].map(|toward| format!("true north N {}° {toward}", number.text)).into(),
            "how the sketch lies to true north is `true north` and the true bearing of the way that the file calls north".to_owned(),
        )
    })
}

/// `setback 25'`, `easement 10' rear`: what a lot has no line for.
fn setback(typed: &Typed<'_>) -> Option<Answer> {
    let first =
        usize::from(typed.says(0, &["front", "rear", "side", "utility", "drainage", "back"]));
    let is_one =
        typed.says(first, &["setback", "setbacks", "easement", "easements", "right-of-way", "row"]);
    (is_one
        && !super::measure::lengths(&typed.pieces, first).is_empty()
        && !typed.says(first, &["row"]))
    .then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "a sides file has no line for this; a comment begins with `#`",
        )
    })
}
