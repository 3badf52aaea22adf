//! What is typed after a line that could be read without it: what a wall leaves out, the face of a figure, what else a
//! figure counts, and the brick of a space.

use super::super::pieces::{Piece, Sort, cut};
use super::levels::capitalized;
use super::measure::{Measure, area_at, length_at};
use super::walls::is_way;
use super::{Answer, Rule, Typed, first_of, is_text, kind_word, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[left_out_of_a_wall, figure_to_its_face, counted_with, brick_of_a_space];
    first_of(rules, typed)
}

/// Words that say that something is left out.
const NO: [&str; 12] = [
    "not",
    "no",
    "without",
    "excluding",
    "excl",
    "except",
    "never",
    "minus",
    "w/o",
    "omitting",
    "omits",
    "excludes",
];

/// `north 31' 7" not incl. bay`, `north 31' 7", no bay`: what a wall leaves out goes into the note as it was typed.
fn left_out_of_a_wall(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1).filter(|one| is_way(typed, 0) && one.has_unit)?;
    let mut at = measure.end;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(",;:(-–—[")) {
        at += 1;
    }
    let is_no = typed.says(at, &["not", "no", "without", "never", "except"]);
    let taken = [
        "measured",
        "common",
        "sure",
        "exact",
        "exactly",
        "estimated",
        "accessible",
        "access",
        "brick",
        "veneer",
        "stone",
        "masonry",
        "accurate",
        "taped",
        "reachable",
        "reached",
        "recorded",
        "certain",
        "verified",
        "precise",
        "tape",
        "record",
        "photo",
        "photos",
        "note",
        "on",
        "in",
        "shared",
        "way",
        "idea",
        "checked",
        "closing",
        "length",
        "number",
        "answer",
        "trespassing",
        "measurement",
        "measurements",
        "data",
        "a",
        "visible",
        "seen",
    ];
    let next = typed.piece(at + 1).filter(|next| next.sort == Sort::Word)?;
    let rest = typed.rest(at);
    let plain = typed.pieces[at..].iter().all(|piece| {
        !is_text(Some(piece))
            && !piece.is_number()
            && (piece.is_word(&["not", "no"])
                || !crate::sketch::parser::SIDE_WORDS.contains(&piece.text.to_lowercase().as_str()))
    });
    (is_no && plain && !next.is_word(&taken)).then(|| {
        Answer::line(
            format!(
                "{} {} note {}",
                typed.lower(0),
                measure.text,
                quoted(rest.trim_end_matches([')', ']', '.']))
            ),
            "what a wall leaves out goes into a note, in your words",
        )
    })
}

/// `plans 1,990 sq ft, stud to stud`, `listing 1,640 sq ft exterior dimensions`: to which face a figure was measured.
fn figure_to_its_face(typed: &Typed<'_>) -> Option<Answer> {
    let word = match typed.lower(0).as_str() {
        "plan" | "plans" | "blueprint" | "blueprints" => "plan",
        "record" | "listing" => &typed.lower(0),
        _ => return None,
    };
    let mut at = 1;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(":=-–,"))
        || typed.says(at, &["is", "says"])
    {
        at += 1;
    }
    let (end, area) = area_at(&typed.pieces, at)?;
    let tail = typed.pieces.get(end..).filter(|tail| !tail.is_empty())?;
    let has = |words: &[&str]| tail.iter().any(|piece| piece.is_word(words));
    let frame = has(&["stud", "studs", "frame", "framing", "framed"]);
    let inside = has(&["inside", "interior", "drywall", "sheetrock", "paint", "plaster"]);
    let outside = has(&["outside", "exterior", "brick", "siding"]);
    let face = match (frame, inside, outside) {
        (true, false, _) => "frame",
        (false, true, false) => "inside",
        (false, false, true) => "outside",
        _ => return None,
    };
    let only = tail.iter().all(|piece| {
        piece.is_word(&[
            "stud",
            "studs",
            "frame",
            "framing",
            "framed",
            "inside",
            "interior",
            "drywall",
            "sheetrock",
            "paint",
            "plaster",
            "outside",
            "exterior",
            "brick",
            "siding",
            "to",
            "the",
            "measured",
            "taken",
            "of",
            "from",
            "dimensions",
            "dimension",
            "dims",
            "measurements",
            "measurement",
            "measure",
            "face",
            "faces",
            "wall",
            "walls",
            "at",
            "only",
            "by",
            "line",
        ]) || piece.is_mark(",;:.()-–—@=[]")
    });
    // `record 1,512 sq ft inside`: where a single word could be anything, the other rules ask.
    let says_it = tail.iter().filter(|piece| piece.sort == Sort::Word).count() > 1;
    let line = format!("{word} {area} measured to {face}");
    (only && says_it && line != typed.line)
        .then(|| Answer::line(line, "to which face a figure was measured is `measured to` and `outside`, `frame` or `inside`"))
}

/// `counting "Storm cellar" & "Workshop"`: what else a figure counts, with commas between.
fn counted_with(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.find(1, &["counting"])? + 1;
    let is_joint = |piece: &Piece| {
        piece.is_mark("&+/;|") || piece.is_word(&["and", "plus", "with", "n", "also"])
    };
    let mut joined = false;
    let mut names: Vec<String> = Vec::new();
    let mut words: Vec<&Piece> = Vec::new();
    let close = |words: &mut Vec<&Piece>, names: &mut Vec<String>| {
        let plain = words
            .iter()
            .all(|piece| piece.sort == Sort::Word && !piece.is_word(&["not", "no", "the"]));
        if let [one] = words[..]
            && one.sort == Sort::Text
        {
            names.push(one.text.clone());
        } else if plain && !words.is_empty() && words.len() < 4 {
            let said: Vec<&str> = words.iter().map(|piece| piece.text.as_str()).collect();
            names.push(quoted(&capitalized(&said.join(" "))));
        } else if !words.is_empty() {
            return None;
        }
        words.clear();
        Some(())
    };
    for piece in typed.pieces.get(first..)? {
        if is_joint(piece) || piece.is_mark(",") {
            joined |= is_joint(piece);
            close(&mut words, &mut names)?;
        } else {
            words.push(piece);
        }
    }
    close(&mut words, &mut names)?;
    let has_text = typed.pieces[first..].iter().any(|piece| is_text(Some(piece)));
    let has_kind =
        typed.pieces[first..].iter().any(|piece| kind_word(&piece.text.to_lowercase()).is_some());
    (joined && (has_text || !has_kind) && names.len() > 1).then(|| {
        Answer::line(
            format!("{} {}", typed.text(0, first), names.join(", ")),
            "between the names after `counting` stand commas",
        )
    })
}

/// An inch measure that begins at this piece, with an `and` or a dash before its fraction: `4 and 5/8 inches`.
pub(super) fn inches_at(typed: &Typed<'_>, at: usize) -> Option<Measure> {
    if let Some(measure) = length_at(&typed.pieces, at).filter(Measure::is_inches) {
        return Some(measure);
    }
    let number = |at: usize| typed.piece(at).filter(|piece| piece.is_number());
    let (whole, joint) = (number(at)?, typed.piece(at + 1)?);
    let next = at + 1 + usize::from(joint.is_word(&["and", "&"]) || joint.is_mark("-–&"));
    let slash = typed.piece(next + 1).is_some_and(|slash| slash.is_mark("/"));
    let (top, bottom) = (number(next)?, number(next + 2).filter(|_| slash)?);
    let has_unit = typed.says(next + 3, &["in", "inch", "inches"])
        || typed.piece(next + 3).is_some_and(|mark| mark.is_mark("\"”″"));
    let text = format!("{} {}/{}\"", whole.text, top.text, bottom.text);
    let mut measure = length_at(&cut(&text), 0)?;
    measure.end = next + 3 + usize::from(has_unit);
    measure.has_unit = has_unit;
    Some(measure)
}

const BRICK: [&str; 5] = ["brick", "stone", "masonry", "rock", "bricks"];

/// `living "House" brick 4"`, `living "House", 4 5/8" brick veneer`: how thick the brick of a space is.
pub(super) fn brick_of_a_space(typed: &Typed<'_>) -> Option<Answer> {
    let is_space = kind_word(&typed.lower(0)).is_some() && is_text(typed.piece(1));
    let brick = typed.find(2, &BRICK).filter(|_| is_space)?;
    let first = (2..typed.pieces.len()).find(|&at| typed.pieces[at].is_number())?;
    let measure = inches_at(typed, first).filter(Measure::is_inches)?;
    let filler = |at: usize| {
        typed.says(
            at,
            &[
                "with", "of", "is", "thick", "veneer", "the", "has", "about", "in", "face",
                "front", "and", "a",
            ],
        ) || typed.says(at, &BRICK)
            || typed.pieces[at].is_mark(",;:=-–().")
    };
    let (mut begin, mut end) = (brick.min(first), measure.end.max(brick + 1));
    if !(begin..end).all(|at| (first..measure.end).contains(&at) || filler(at)) {
        return None;
    }
    while begin > 2 && filler(begin - 1) {
        begin -= 1;
    }
    while end < typed.pieces.len() && filler(end) {
        end += 1;
    }
    let line = format!("{} veneer {} {}", typed.text(0, begin), measure.text, typed.rest(end));
    Some(Answer::line(
        line.trim_end(),
        "brick or stone before the frame is `veneer` and its thickness",
    ))
}

/// `living "House" brick veneer`, `living "House" with brick`: brick of the usual thickness.
pub(super) fn bricked(typed: &Typed<'_>) -> Option<Answer> {
    let is_space = kind_word(&typed.lower(0)).is_some() && is_text(typed.piece(1));
    let says = [
        "with", "in", "of", "has", "veneer", "walls", "wall", "face", "faced", "is", "all", "full",
    ];
    let rest = 2..typed.pieces.len();
    let is_plain = rest.clone().all(|at| {
        typed.says(at, &says) || typed.says(at, &BRICK) || typed.pieces[at].is_mark(",;:=-–().")
    });
    let is_brick = typed.find(2, &BRICK).is_some();
    (is_space && is_plain && is_brick).then(|| {
        Answer::line(format!("{} veneer 4 5/8\"", typed.text(0, 2)), super::super::BRICK_IS)
    })
}

/// Whether a word says that something is left out or does not hold.
pub(super) fn is_no(piece: &Piece) -> bool {
    piece.is_word(&NO) || piece.text.to_lowercase().ends_with("n't")
}
