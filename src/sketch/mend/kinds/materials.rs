//! What the walls are made of, how thick they are, and to which face they were measured.

use super::super::pieces::Piece;
use super::measure::lengths;
use super::{Answer, Typed, remark};
use crate::units::length::Length;

/// `measured inside walls`, `all walls measured outside`: the face that was measured everywhere.
pub(super) fn faces_of_all(typed: &Typed<'_>) -> Option<Answer> {
    let faces = [
        ("inside", &["inside", "interior", "drywall"][..]),
        ("outside", &["outside", "exterior"]),
        ("frame", &["frame", "studs", "framing"]),
    ];
    let filler = [
        "measured",
        "taped",
        "to",
        "the",
        "of",
        "walls",
        "wall",
        "all",
        "face",
        "faces",
        "at",
        "from",
        "everything",
        "sides",
        "were",
        "was",
        "is",
        "are",
    ];
    let said: Vec<usize> = (0..typed.pieces.len())
        .filter(|&at| !typed.says(at, &filler) && !typed.pieces[at].is_mark(",.:()"))
        .collect();
    let [at] = said[..] else { return None };
    let (face, _) = faces.iter().find(|(_, words)| typed.says(at, words))?;
    let begins = typed.says(0, &["measured", "taped", "all", "walls", "everything"]);
    (begins && typed.find(0, &["measured", "taped"]).is_some() && typed.pieces.len() > 2).then(
        || {
            Answer::line(
                format!("faces {face}"),
                "the face to which all sides were measured is `faces`",
            )
        },
    )
}

/// `stone walls 45 cm`, `brick walls 12"`, `2x4 walls`: how thick the walls are.
pub(super) fn solid_walls(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(0, &["walls", "wall"]).filter(|at| (1..=4).contains(at))?;
    if typed.piece(0)?.is_number() && typed.says(1, &["x"]) && at == 3 {
        return Some(Answer::line(
            format!("wall {}", typed.text(0, 3)),
            "how thick the walls are is `wall` and a length",
        ));
    }
    let solid = [
        "stone", "block", "concrete", "adobe", "log", "solid", "masonry", "cinder", "cmu",
        "exterior", "outside", "outer",
    ];
    let is_brick = typed.says(0, &["brick"]);
    if !is_brick && !typed.says(0, &solid) {
        return None;
    }
    let [(first, thick)] = &lengths(&typed.pieces, at + 1)[..] else { return None };
    let filler = |at: usize| {
        typed.says(
            at,
            &[
                "are", "is", "thick", "about", "walls", "wall", "all", "around", "inside", "to",
                "out", "through", "outside",
            ],
        ) || typed.pieces[at].is_mark(",:=.")
    };
    let only = (at + 1..*first).chain(thick.end..typed.pieces.len()).all(filler);
    if !only || !thick.has_unit || thick.length.nm() > Length::FOOT.nm().saturating_mul(4) {
        return None;
    }
    let said = typed.text(0, at);
    let wall = format!("wall {}  # {said}", thick.text);
    let thin = thick.length.nm() < Length::INCH.nm().saturating_mul(8);
    Some(if is_brick && thin {
        Answer::Lines(
            vec![format!("veneer {}  # {said}", thick.text), wall],
            "brick on a frame is `veneer` and its thickness; a wall that is brick all through is `wall`"
                .to_owned(),
        )
    } else if is_brick || typed.says(0, &["solid", "exterior", "outside", "outer", "masonry"]) {
        Answer::line(wall, "how thick the walls are is `wall` and a length")
    } else {
        // Walls of stone or logs have no brick before them.
        Answer::line(
            format!("{wall}\nveneer none"),
            "how thick the walls are is `wall` and a length; what has no brick before them is `veneer none`",
        )
    })
}

/// The index after words that say that the walls have no brick: `siding`, `vinyl siding`, `stucco only`.
pub(super) fn without_brick(typed: &Typed<'_>, at: usize) -> Option<usize> {
    let says = [
        "siding",
        "vinyl",
        "stucco",
        "clapboard",
        "hardie",
        "hardiplank",
        "brickless",
        "unbricked",
        "shingles",
        "shakes",
    ];
    let describes = [
        "wood", "wooden", "aluminum", "lap", "cedar", "metal", "fiber", "cement", "board",
        "batten", "only", "all", "around", "up", "here", "sided",
    ];
    let end = (at..typed.pieces.len())
        .find(|&at| !typed.says(at, &says) && !typed.says(at, &describes))
        .unwrap_or(typed.pieces.len());
    let only_describes = ["only", "all", "around", "up", "here"];
    (typed.find(at, &says).is_some_and(|word| word < end) && !typed.says(at, &only_describes))
        .then_some(end)
}

/// `living upstairs, siding`, `living "Upstairs" stucco`: a space without brick.
pub(super) fn unbricked(typed: &Typed<'_>) -> Option<Answer> {
    let rooms = typed.says(0, &["upstairs", "bedrooms", "rooms", "downstairs"]);
    let (_, name) = super::loose::kind_at_start(typed).or(rooms.then_some(("living", 0)))?;
    let (at, end) = (name + 1..typed.pieces.len())
        .find_map(|at| without_brick(typed, at).map(|end| (at, end)))?;
    if typed.find(1, &["veneer", "wall", "walls"]).is_some() {
        return None;
    }
    let joint = |at: usize| {
        typed.pieces[at].is_mark(",;-–(:&") || typed.says(at, &["with", "and", "has", "in"])
    };
    let mut first = at;
    while first > name && joint(first - 1) {
        first -= 1;
    }
    let said = typed.text(at, end).trim_end_matches([')', ',', ' ']);
    let mut stop = end;
    while typed.piece(stop).is_some_and(|mark| mark.is_mark("),;")) {
        stop += 1;
    }
    let rest = typed.rest(stop);
    let line = format!("{} veneer none {rest}", typed.text(0, first));
    Some(Answer::line(
        format!("{}  # {said}", line.trim_end()),
        "walls without brick or stone have `veneer none`",
    ))
}

/// `stucco outside`, `siding vinyl 1/2"`: what covers the walls.
pub(super) fn material(typed: &Typed<'_>) -> Option<Answer> {
    // `no brick, vinyl siding`
    let without = typed.says(0, &["no"]) && typed.says(1, &["brick", "veneer", "stone", "masonry"]);
    if without && typed.pieces.len() > 2 && !typed.pieces.iter().any(Piece::is_number) {
        let more = typed.rest(2).trim_start_matches([',', ';', '-', ' ']);
        return Some(Answer::line(
            format!("veneer none  # {more}"),
            "without brick or stone the veneer is `none`",
        ));
    }
    // `brick all around, 4 1/2"`
    let around = [
        "brick",
        "stone",
        "all",
        "around",
        "everywhere",
        "round",
        "outside",
        "thick",
        "the",
        "is",
        "house",
        "on",
        "sides",
        "four",
        "veneer",
    ];
    if typed.says(0, &around[..2])
        && let [(first, thick)] = &lengths(&typed.pieces, 1)[..]
        && thick.is_inches()
        && thick.end == typed.pieces.len()
        && *first > 2
        && (0..*first).all(|at| typed.says(at, &around) || typed.pieces[at].is_mark(",:;=-–"))
    {
        return Some(Answer::line(
            format!(
                "veneer {}  # {}",
                thick.text,
                typed.text(0, *first).trim_end_matches([',', ' '])
            ),
            "brick or stone before the frame is `veneer` and its thickness",
        ));
    }
    let kinds = [
        "stucco",
        "vinyl",
        "siding",
        "clapboard",
        "hardie",
        "cedar",
        "shingle",
        "shingles",
        "aluminum",
        "fiber",
        "cement",
        "lap",
        "wood",
        "log",
        "metal",
        "board",
        "batten",
        "outside",
        "exterior",
        "all",
        "around",
        "over",
        "frame",
        "and",
        "on",
        "the",
        "sides",
        "hardiplank",
        "plaster",
        "painted",
    ];
    if !typed.says(0, &kinds[..11]) && !typed.says(0, &["hardiplank", "wood"]) {
        return None;
    }
    let found = lengths(&typed.pieces, 1);
    let is_length = |at: usize| found.iter().any(|(first, one)| (*first..one.end).contains(&at));
    let is_without = |at: usize| {
        typed.says(at, &["no", "without"]) && typed.says(at + 1, &["brick", "stone", "veneer"])
    };
    let only = (0..typed.pieces.len()).all(|at| {
        is_length(at)
            || typed.says(at, &kinds)
            || typed.pieces[at].is_mark(",.:()&;-")
            || is_without(at)
            || at > 0 && is_without(at - 1)
    });
    if !only || typed.says(0, &["wood"]) && typed.pieces.len() < 2 {
        return None;
    }
    match &found[..] {
        [] => Some(Answer::line(
            format!("veneer none  # {}", remark(typed.line)),
            "without brick or stone the veneer is `none`",
        )),
        [(first, thick)] if thick.is_inches() => Some(Answer::line(
            format!("veneer {}  # {}", thick.text, typed.text(0, *first)),
            "what stands before the frame is `veneer` and its thickness",
        )),
        _ => None,
    }
}
