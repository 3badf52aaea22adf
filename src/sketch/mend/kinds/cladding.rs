//! What the walls are made of and how thick they are, in lines that have no other matter.

use super::super::pieces::{Piece, Sort};
use super::measure::{area_from, lengths};
use super::walls::is_way;
use super::{Answer, Rule, Typed, first_of, kind_word, remark};
use crate::sketch::nouns;
use crate::units::length::Length;

const SIDING: [&str; 34] = [
    "siding",
    "vinyl",
    "stucco",
    "clapboard",
    "clapboards",
    "hardie",
    "hardiplank",
    "hardieboard",
    "shingles",
    "shingled",
    "shakes",
    "weatherboard",
    "shiplap",
    "plank",
    "t1-11",
    "fiber-cement",
    "aluminum-sided",
    "sided",
    "masonite",
    "stuccoed",
    "board-and-batten",
    "logs",
    "eifs",
    "dryvit",
    "cedar",
    "transite",
    "asbestos",
    "lap",
    "batten",
    "unbricked",
    "brickless",
    "novelty",
    "steel-sided",
    "metal-sided",
];
const BRICK: [&str; 9] = [
    "brick",
    "bricks",
    "stone",
    "masonry",
    "rock",
    "bricked",
    "fieldstone",
    "flagstone",
    "limestone",
];

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[plaster, some_brick, without_brick, thickness];
    let has_text = typed.pieces.iter().any(|piece| super::is_text(Some(piece)));
    let is_other =
        typed.attempt.is_side || is_way(typed, 0) || has_text || typed.line.contains('#');
    let is_other = is_other
        && !typed.says(0, &["front", "back", "left", "right", "n", "s", "e", "w"])
        || typed.line.contains('$');
    first_of(rules, typed).filter(|_| !is_other)
}

/// `veneer 1/2" stucco over block`: what it is made of is a remark.
fn plaster(typed: &Typed<'_>) -> Option<Answer> {
    const WORDS: [&str; 16] = [
        "stucco", "plaster", "eifs", "over", "on", "block", "blocks", "cmu", "concrete", "frame",
        "the", "cement", "board", "wire", "lath", "all",
    ];
    let thick =
        lengths(&typed.pieces, 1).into_iter().next().filter(|_| typed.says(0, &["veneer"]))?;
    let (first, thick) = (thick.0, thick.1);
    let rest = typed.rest(thick.end);
    let plain = (thick.end..typed.pieces.len())
        .all(|at| typed.says(at, &WORDS) || typed.pieces[at].is_mark(",()-–"));
    let says = typed.find(thick.end, &["stucco", "plaster", "eifs"]).is_some();
    (first == 1 && thick.has_unit && plain && says).then(|| {
        Answer::line(
            format!("veneer {}  # {}", thick.text, super::remark(rest)),
            "a veneer is given by its thickness alone",
        )
    })
}

fn has_number(typed: &Typed<'_>) -> bool {
    typed.pieces.iter().any(Piece::is_number)
}

/// Whether the brick at this piece is said not to be there: `no brick`, `without any brick`, `not brick`.
fn is_denied(typed: &Typed<'_>, at: usize) -> bool {
    let no = ["no", "not", "without", "never", "isn't", "zero", "none"];
    let between = ["any", "a", "real", "actual", "has", "have"];
    let mut before = at;
    while before > 0
        && (typed.says(before - 1, &between)
            || typed.says(before - 1, &BRICK)
            || typed.says(before - 1, &["or", "veneer"]))
    {
        before -= 1;
    }
    before > 0 && typed.says(before - 1, &no)
}

/// Whether the line may be about the walls of the whole house: it names no other space.
fn is_of_the_house(typed: &Typed<'_>) -> bool {
    (0..typed.pieces.len()).all(|at| {
        let word = typed.lower(at);
        !nouns::is_known(&word) || typed.says(at, &["house", "home", "cover"])
    }) && kind_word(&typed.lower(0)).is_none()
}

/// `siding, no brick`, `frame house, vinyl siding`, `all siding`, `wood-sided all round`: walls without brick or stone.
fn without_brick(typed: &Typed<'_>) -> Option<Answer> {
    let built = [
        "house",
        "home",
        "construction",
        "built",
        "dwelling",
        "structure",
        "walls",
        "building",
        "exterior",
    ];
    let is_frame = (0..typed.pieces.len()).any(|at| {
        typed.says(at, &["frame", "framed", "wood-frame", "timber-frame", "wood", "log"])
            && typed.says(at + 1, &built)
    });
    let sided = typed.find(0, &SIDING).is_some() || is_frame;
    let brick: Vec<usize> = (0..typed.pieces.len()).filter(|&at| typed.says(at, &BRICK)).collect();
    let denied = brick.iter().all(|&at| is_denied(typed, at)) && !brick.is_empty();
    let words =
        typed.pieces.iter().all(|piece| piece.sort == Sort::Word || piece.is_mark(".,;:()&-–/!'"));
    let other = [
        "measured", "level", "lot", "corner", "record", "listing", "plan", "start", "roof",
        "roofing", "window", "windows", "gable", "door", "shutters", "deck", "fence",
    ];
    if has_number(typed)
        || !words
        || !is_of_the_house(typed)
        || !(sided && brick.is_empty() || denied && (sided || typed.pieces.len() <= 7))
        || typed.find(0, &other).is_some()
        || typed.pieces.len() > 12
    {
        return None;
    }
    let said = remark(typed.line);
    // `main house, vinyl siding` above its sides opens a space.
    if super::super::begins_as_side(&typed.attempt.beside.after) {
        return None;
    }
    // The format's own line.
    if typed.says(0, &["veneer"]) {
        return None;
    }
    Some(Answer::line(
        format!("veneer none  # {said}"),
        "without brick or stone the veneer is `none`",
    ))
}

/// `brick on front only`, `brick front, rest siding`, `stone on street side`: brick on some walls.
fn some_brick(typed: &Typed<'_>) -> Option<Answer> {
    let part = [
        "front",
        "rear",
        "back",
        "sides",
        "side",
        "street",
        "only",
        "part",
        "partial",
        "partly",
        "half",
        "rest",
        "elsewhere",
        "lower",
        "bottom",
        "wainscot",
        "wainscoting",
        "three",
        "two",
        "one",
        "some",
        "accent",
        "accents",
        "facade",
        "façade",
        "other",
        "others",
        "mostly",
        "left",
        "right",
    ];
    let all = ["all", "around", "everywhere", "every", "four", "whole", "entire", "round", "full"];
    const OF_A_LEVEL: [&str; 8] =
        ["floor", "level", "story", "storey", "upstairs", "downstairs", "below", "above"];
    let is_of_a_level = typed.find(0, &OF_A_LEVEL).is_some();
    // `veneer 4 5/8" front only`
    let all_lengths = lengths(&typed.pieces, 0);
    // `…, walls 5 1/2"`: the wall behind it.
    let wall = match &all_lengths[..] {
        [_, (first, wall)]
            if wall.is_inches()
                && typed.says(first.wrapping_sub(1), &["wall", "walls", "studs", "framing"]) =>
        {
            Some((*first - 1, wall.clone()))
        }
        _ => None,
    };
    let all_lengths = match &wall {
        Some(_) => &all_lengths[..1],
        None => &all_lengths[..],
    };
    let thick = match all_lengths {
        [(first, thick)] if typed.says(0, &["veneer"]) && thick.has_unit => Some((first, thick)),
        // `brick front (4"), vinyl other 3 sides`
        [(first, thick), ..] if typed.says(0, &BRICK) && thick.is_inches() => Some((first, thick)),
        // `exterior brick on first floor 4 5/8"`, `first floor brick 4 5/8"`
        [(first, thick)]
            if thick.is_inches() && (0..4).any(|at| typed.says(at, &BRICK)) && is_of_a_level =>
        {
            Some((first, thick))
        }
        _ => None,
    };
    // `veneer on front only`
    let is_veneer = typed.says(0, &["veneer"]) && typed.says(1, &["on", "only", "at", "front"]);
    let is_brick = thick.is_some()
        || is_veneer
        || (0..typed.pieces.len()).any(|at| typed.says(at, &BRICK) && !is_denied(typed, at));
    let is_thick = |at: usize| thick.is_some_and(|(first, one)| (*first..one.end).contains(&at));
    // `brick on 3 sides`
    let counted = (0..typed.pieces.len()).find(|&at| {
        ["1", "2", "3"].contains(&typed.pieces[at].text.as_str())
            && typed.says(at + 1, &["side", "sides", "walls", "wall", "elevations"])
    });
    let is_part = typed.find(0, &part).is_some()
        || typed.find(0, &SIDING).is_some()
        || counted.is_some()
        || thick.is_some() && is_of_a_level;
    let words = typed.pieces.iter().enumerate().all(|(at, piece)| {
        let is_count = counted == Some(at)
            || at > 0
                && typed.says(at - 1, &["other", "others"])
                && ["1", "2", "3"].contains(&piece.text.as_str());
        let is_behind = wall.as_ref().is_some_and(|(first, one)| (*first..one.end).contains(&at));
        piece.sort == Sort::Word
            || piece.is_mark(".,;:()&-–/+")
            || is_thick(at)
            || is_count
            || is_behind
    });
    let is_wall = |at: usize| {
        counted.is_some_and(|count| at == count + 1)
            || wall.as_ref().is_some_and(|(first, _)| at == *first)
    };
    let others = ["measured", "faces", "face", "to", "from", "wall", "walls", "corner"];
    if typed.says(0, &["this", "that"])
        || !is_brick
        || !is_part
        || !words
        || typed.find(0, &all).is_some() && typed.find(0, &SIDING).is_none()
        || !is_of_the_house(typed)
        || (0..typed.pieces.len()).any(|at| typed.says(at, &others) && !is_wall(at))
    {
        return None;
    }
    let of_it = match thick {
        None if typed.attempt.beside.has_brick && !typed.says(0, &["veneer"]) => {
            "put this line after a `#`, and write ".to_owned()
        }
        Some((_, thick)) => format!("write `veneer {}` on a line before the first level, and ", thick.text),
        None => "write `veneer 4 5/8\"`, or the thickness of your own, on a line before the first level, and ".to_owned(),
    };
    let of_it = match &wall {
        Some((_, wall)) => format!("{of_it}`wall {}` on another line there, and ", wall.text),
        None => of_it,
    };
    let of_it = of_it.replace(", and `wall", ", `wall");
    // `brick downstairs, siding upstairs`: all walls of a space are alike.
    const LEVELS: [&str; 10] = [
        "upstairs",
        "downstairs",
        "upper",
        "lower",
        "floor",
        "level",
        "story",
        "storey",
        "above",
        "below",
    ];
    let sides = ["front", "back", "rear", "left", "right", "side", "sides"];
    let is_of_levels = typed.find(0, &LEVELS).is_some() && typed.find(0, &sides).is_none();
    if is_of_levels && counted.is_none() {
        return Some(Answer::say(
            "brick or stone on some of the levels: the file says its thickness once, and each space without it says so",
            format!(
                "{of_it}`veneer none` at the end of the line of each space that has no brick or stone, as in `living \"Rooms\" veneer none`"
            ),
        ));
    }
    Some(Answer::say(
        "brick or stone on some of the walls: the file says its thickness once, and each side or space without it says so",
        format!(
            "{of_it}`veneer none` at the end of each side that has no brick or stone, or after the name of a space that has none at all"
        ),
    ))
}

/// Words for the frame of a wall, to which its thickness goes.
const FRAME: [&str; 6] = ["frame", "stud", "studs", "sheathing", "framing", "framed"];

/// `exterior walls 6 inches inside to out`, `walls measure 5 1/2" thick`, `outer wall thickness: 8 in`: how thick they are.
fn thickness(typed: &Typed<'_>) -> Option<Answer> {
    let filler = [
        "add",
        "plus",
        "for",
        "allow",
        "walls",
        "wall",
        "are",
        "is",
        "thick",
        "thickness",
        "total",
        "exterior",
        "outside",
        "outer",
        "all",
        "the",
        "about",
        "of",
        "in",
        "overall",
        "house",
        "everywhere",
        "with",
        "and",
        "throughout",
        "inside",
        "to",
        "out",
        "from",
        "interior",
        "drywall",
        "frame",
        "stud",
        "studs",
        "sheathing",
        "measure",
        "measured",
        "deep",
        "each",
        "every",
        "through",
        "including",
        "incl",
        "on",
        "at",
        "door",
        "window",
        "sill",
        "jamb",
        "our",
        "my",
        "roughly",
        "approx",
        "framing",
        "framed",
        "block",
        "concrete",
        "cmu",
        "cinder",
        "log",
        "adobe",
        "width",
        "wide",
        "wood",
        "fiber",
        "cement",
        "aluminum",
    ];
    let says = ["walls", "wall"];
    let solid = ["block", "concrete", "cmu", "cinder", "log", "adobe"];
    let meant = [
        "block",
        "concrete",
        "cmu",
        "log",
        "adobe",
        "thick",
        "thickness",
        "exterior",
        "outer",
        "outside",
        "inside",
        "through",
        "total",
        "overall",
        "all",
        "deep",
        "house",
        "walls",
    ];
    let [(first, measure)] = &lengths(&typed.pieces, 0)[..] else { return None };
    let only = (0..typed.pieces.len()).all(|at| {
        (*first..measure.end).contains(&at)
            || typed.says(at, &filler)
            || typed.says(at, &SIDING)
            || typed.pieces[at].is_mark(",;:.=()-–")
    });
    let is_thin = measure.has_unit && measure.length.nm() < Length::FOOT.nm().saturating_mul(2);
    if !only
        || !is_thin
        || typed.find(0, &says).or(typed.find(0, &solid)).is_none()
        || typed.find(0, &meant).is_none()
        || typed.says(0, &["wall"]) && *first == 1
        || area_from(&typed.pieces, 0).is_some()
    {
        return None;
    }
    let bare = [&SIDING[..], &solid].iter().any(|words| typed.find(0, words).is_some());
    let sided = bare && typed.find(0, &BRICK).is_none();
    let wall = format!("wall {}", measure.text);
    if typed.attempt.house.is_some() {
        return Some(Answer::say(
            "how thick the walls are is said for the whole house, above the first level",
            format!(
                "take this line out, and above the first line that begins with `level` write `{wall}`; where this is all of the wall, without brick or stone before it, write `veneer none` there, too, or at the end of the line of each space to which that applies"
            ),
        ));
    }
    // `add 7" for outside walls`: what was taped is inside of them.
    if typed.says(0, &["add", "plus", "allow"]) {
        return Some(Answer::say(
            "lengths to which the walls are to be added were measured inside: the file says so, and how thick the walls are",
            format!(
                "write `faces inside` at the top, or `measured to inside` after the name of each space that was measured so; then `{wall}` at the top, and with it `veneer none` unless brick or stone comes on top of that"
            ),
        ));
    }
    if !sided && !typed.attempt.beside.has_veneer && typed.find(0, &FRAME).is_none() {
        return Some(Answer::Lines(
            vec![format!("veneer none\n{wall}"), wall],
            format!(
                "the thickness of the walls, from the inside to the frame or the siding, is `wall` and a length, and brick or stone before it is `veneer`: is {} all of it, or does brick come on top",
                measure.text
            ),
        ));
    }
    Some(Answer::line(
        if sided { format!("veneer none\n{wall}") } else { wall },
        "the thickness of the walls, from the inside to the frame or the siding, is `wall` and a length",
    ))
}
