//! Suggestions for walls: measured or by closing, turns, dashes, and texts without quotation marks.

use super::super::pieces::Piece;
use super::measure::{length_at, lengths};
use super::{
    Answer, Rule, Typed, faces, first_of, is_text, misread, parts, quoted, remark, worded,
};

pub(super) const WAYS: [&str; 8] = ["north", "east", "south", "west", "n", "e", "s", "w"];

pub(super) const STREET: [&str; 4] = ["back", "right", "front", "left"];

/// Words after which a second length has its own meaning.
pub(super) const DATA: [&str; 21] = [
    "recorded",
    "record",
    "rec",
    "county",
    "card",
    "assessor",
    "tolerance",
    "tol",
    "veneer",
    "wall",
    "note",
    "photo",
    "within",
    "give",
    "rise",
    "flat",
    "bulge",
    "corner",
    "pic",
    "picture",
    "image",
];

pub(super) const ROUGHLY: [&str; 8] =
    ["about", "approx", "approximately", "ca", "circa", "roughly", "around", "est"];

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        back_to_the_start,
        parts::several_walls,
        parts::and_a_half,
        worded::more_or_less,
        worded::worked_out,
        worded::squared,
        faces::face_after_a_wall,
        measured_or_closing,
        not_reached,
        turned,
        misread::misheard,
        misread::cell_dates,
        misread::cells,
        misread::other_units,
        ditto,
        side_of_the_house,
        faces::named_by_its_side,
        worded::sum_of_named_parts,
        after_a_dash,
        texts_without_marks,
        parts::twice,
        parts::parts,
        parts::second_length,
        misread::metric_slips,
        worded::wall,
    ];
    first_of(rules, typed)
}

/// `back to start`, `back to corner 1`, `return to where we began`: the walk ends there.
fn back_to_the_start(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        "back",
        "return",
        "returns",
        "to",
        "the",
        "at",
        "where",
        "we",
        "it",
        "i",
        "of",
        "point",
        "start",
        "starting",
        "started",
        "beginning",
        "began",
        "begin",
        "pob",
        "corner",
    ];
    let is_first = |at: usize| typed.says(at - 1, &["corner"]) && typed.lower(at) == "1";
    let returns = typed.says(0, &["back", "return", "returns"]);
    let only = (1..typed.pieces.len())
        .all(|at| typed.says(at, &words) || typed.pieces[at].is_mark(".") || is_first(at));
    let ends = (1..typed.pieces.len()).any(|at| {
        is_first(at)
            || typed.says(at, &["start", "starting", "started", "beginning", "began", "pob"])
    });
    (returns && only && ends).then(|| {
        Answer::line("close", "a walk back to its start is `close`, in place of its last wall")
    })
}

pub(super) fn is_way(typed: &Typed<'_>, at: usize) -> bool {
    typed.says(at, &WAYS) || typed.says(at, &STREET)
}

/// `west by closing 44' 5"`, `close west 44' 5"`, `by closing west`: offers the measured side and the side by
/// closing.
fn measured_or_closing(typed: &Typed<'_>) -> Option<Answer> {
    let closes = |piece: &Piece| {
        piece.is_word(&[
            "close",
            "closes",
            "closing",
            "closed",
            "closure",
            "start",
            "beginning",
            "pob",
            "finish",
            "finally",
        ])
    };
    // `west to corner 1`
    if is_way(typed, 0) && typed.find(1, &["to", "corner"]).is_some() {
        let to = |piece: &Piece| {
            piece.is_word(&["to", "back", "corner", "start", "the", "no"])
                || piece.is_mark("-–→>#=")
                || piece.text == "1"
        };
        let only = typed.pieces.len() > 2 && typed.pieces[1..].iter().all(to);
        if only && typed.pieces.last().is_some_and(|last| last.text == "1") {
            return Some(Answer::line(
                format!("{} by closing", typed.lower(0)),
                "a wall that was not measured has `by closing` and nothing more",
            ));
        }
    }
    let kept = ["recorded", "note", "photo", "tolerance", "common", "veneer"];
    let count = typed.find(1, &kept).unwrap_or(typed.pieces.len());
    let tail = typed.rest(count);
    if !typed.pieces[..count].iter().any(closes)
        || count < 3
        || typed.says(0, &["overall", "tie", "lot"])
    {
        return None;
    }
    let filler = |piece: &Piece| {
        closes(piece)
            || piece.is_word(&[
                "by", "to", "the", "back", "with", "at", "a", "of", "check", "checks", "is", "was",
                "wall", "side", "loop", "outline", "house", "walk", "figure", "shape", "up", "it",
            ])
            || piece.is_word(&ROUGHLY)
            || piece.is_mark(",;:()=-–~.≈>→")
    };
    let way = (0..count)
        .find(|&at| is_way(typed, at) && (at == 0 || typed.pieces[..at].iter().all(filler)))?;
    let found = lengths(&typed.pieces[..count], way + 1);
    let others = typed.pieces[way + 1..count].iter().enumerate().filter(|(at, piece)| {
        let at = at + way + 1;
        !filler(piece) && !found.iter().any(|(first, measure)| (*first..measure.end).contains(&at))
    });
    let others = others.count();
    // `west by closing (blocked by shed)`
    let last = (0..count).rev().find(|&at| closes(&typed.pieces[at]))?;
    let remarks = typed.text(last + 1, count);
    let is_remark = others > 0
        && found.iter().all(|(first, _)| *first < last)
        && !remarks.contains(|c: char| c.is_ascii_digit() || c == '"')
        && typed.pieces.get(way + 1..last).unwrap_or_default().iter().enumerate().all(
            |(at, piece)| {
                let at = at + way + 1;
                filler(piece)
                    || found.iter().any(|(first, measure)| (*first..measure.end).contains(&at))
            },
        );
    if others > 0 && !is_remark || found.len() > 1 {
        return None;
    }
    let tail = if is_remark {
        format!("{tail} # {}", remark(remarks)).trim_start().to_owned()
    } else {
        tail.to_owned()
    };
    // `back to beginning` is not a wall at the back.
    let returns = typed.find(0, &["start", "beginning", "pob"]).is_some();
    if returns && found.is_empty() && typed.says(way, &STREET) {
        return None;
    }
    let word = typed.lower(way);
    let by = format!("{word} by closing {tail}").trim_end().to_owned();
    let Some((_, measure)) = found.first() else {
        let cause = if way > 0 {
            "the direction comes before `by closing`"
        } else {
            "a wall that was not measured has `by closing` and nothing more"
        };
        return (by != typed.line).then(|| Answer::line(by, cause));
    };
    let cause =
        "a wall has its length, or no length and `by closing`: the one that was not measured";
    let length = &measure.text;
    let is_rough = typed.pieces.iter().any(|piece| piece.is_word(&ROUGHLY) || piece.is_mark("~≈"));
    let lines = if is_rough {
        vec![by, format!("{word} {length} estimated")]
    } else {
        vec![format!("{word} {length} {tail}").trim_end().to_owned(), by]
    };
    Some(Answer::Lines(lines, cause.to_owned()))
}

/// `turn right 12' 4"`: asks for the compass direction, since a turn depends on the wall before it.
fn turned(typed: &Typed<'_>) -> Option<Answer> {
    let at = usize::from(typed.says(0, &["turn", "turning", "then", "go", "bear"]));
    let turns = typed.find(0, &["turn", "turning", "bear"]).is_some_and(|turn| turn <= 1);
    let hand = (at..typed.pieces.len().min(4)).find(|&at| typed.says(at, &["right", "left"]))?;
    turns.then(|| {
        let word = typed.lower(hand);
        let has_length = typed.pieces.iter().any(Piece::is_number);
        if !has_length && super::super::begins_as_side(&typed.attempt.beside.after) {
            return Answer::say(
                format!("`turn {word}` is not needed: each wall says which way it runs"),
                "take this line out; the wall below it has its way",
            );
        }
        Answer::say(
            format!("`turn {word}` does not say which way the wall runs on the plan"),
            format!("write the way that it runs, `north`, `east`, `south` or `west`, before its length; `{word}` alone is a side of the house, seen from the street"),
        )
    })
}

/// `west "`: asks for the length that a ditto mark stands for.
fn ditto(typed: &Typed<'_>) -> Option<Answer> {
    let rest = typed.line.split_once(' ')?.1.trim();
    (is_way(typed, 0) && matches!(rest, "\"" | "”" | "“" | "''" | "″" | "do." | "\" \"")).then(
        || {
            let way = typed.lower(0);
            Answer::say(
                "a ditto mark copies nothing from the line above",
                format!(
                    "write the length again; a wall that was not measured is `{way} by closing`"
                ),
            )
        },
    )
}

/// `west side going back 32'`: suggests directions for the wall, since the line says where the wall is, not which way
/// it runs.
fn side_of_the_house(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &WAYS) || !typed.says(1, &["side", "wall", "face", "elevation"]) {
        return None;
    }
    let found = lengths(&typed.pieces, 1);
    let [(first, measure)] = &found[..] else { return None };
    let goes = typed.find(
        2,
        &[
            "running", "runs", "heading", "going", "goes", "toward", "towards", "back", "front",
            "rear", "from", "up", "down",
        ],
    )?;
    if goes > *first
        || typed.says(goes, &["running", "runs", "heading"]) && typed.find(2, &WAYS[..4]).is_none()
        || measure.end != typed.pieces.len()
    {
        return None;
    }
    if let Some(way) = typed.find(2, &WAYS[..4]) {
        let line = format!("{} {}", typed.lower(way), measure.text);
        return Some(Answer::line(
            line,
            "a side begins with the way that it runs, not with the side of the house on which it stands",
        ));
    }
    let ways = if typed.says(0, &["north", "south", "n", "s"]) {
        ["east", "west"]
    } else {
        ["north", "south"]
    };
    Some(Answer::Lines(
        ways.map(|way| format!("{way} {}", measure.text)).into(),
        "a side begins with the way that it runs, not with the side of the house on which it stands".to_owned(),
    ))
}

/// `north – 30' 2"`: removes the dash between the direction and the length.
fn after_a_dash(typed: &Typed<'_>) -> Option<Answer> {
    let dash = typed.piece(1).filter(|piece| piece.is_mark("-–—−"))?;
    let measure = length_at(&typed.pieces, 2)?;
    if !typed.says(0, &WAYS) {
        return None;
    }
    // In `S-18'` it stands between the two and belongs to neither.
    let apart = !typed.piece(2)?.touches || dash.touches;
    let is_sign = dash.is_mark("-−") && !apart;
    let way = typed.lower(0);
    let other = match way.as_str() {
        "north" | "n" => "south",
        "south" | "s" => "north",
        "east" | "e" => "west",
        _ => "east",
    };
    let rest = typed.rest(measure.end);
    let same = format!("{way} {} {rest}", measure.text).trim_end().to_owned();
    let turned = format!("{other} {} {rest}", measure.text).trim_end().to_owned();
    Some(if is_sign {
        Answer::Lines(
            vec![turned, same],
            "a length has no sign: the other way has a word of its own".to_owned(),
        )
    } else if apart {
        Answer::line(same, "only a space goes between the direction and the length")
    } else {
        Answer::Lines(
            vec![same, turned],
            "only a space goes between the direction and the length; a length has no sign"
                .to_owned(),
        )
    })
}

/// `note 6" off the fence`, `photo west.jpg`: puts quotation marks around a text after a side.
fn texts_without_marks(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 1).filter(|_| is_way(typed, 0));
    let from = length.as_ref().map_or(1, |length| length.end);
    let note = typed.find(from, &["note", "photo", "pic", "picture", "image", "img", "see"])?;
    let begins = is_way(typed, 0) || typed.says(0, &["diagonal", "bearing", "arc", "bay", "close"]);
    let pictures = [".jpg", ".jpeg", ".png", ".heic", ".tif", ".tiff", ".webp"];
    let rest = typed.rest(note + 1).trim_start_matches([':', '=', ' ']);
    let titled = typed.piece(note + 1).filter(|title| title.sort == super::Sort::Text);
    if let Some(title) = titled
        && pictures.iter().any(|ending| rest.to_lowercase().ends_with(ending))
        && !typed.says(note + 2, &["file"])
        && typed.pieces.len() > note + 2
        && typed.says(note, &["photo"])
    {
        let line = format!(
            "{} photo {} file \"{}\"",
            typed.text(0, note),
            title.text,
            typed.rest(note + 2)
        );
        return Some(Answer::line(
            line,
            "a photo has a title, and the name of its file after `file`",
        ));
    }
    let name = rest.trim_matches(['"', '“', '”', ' ']);
    let is_file = pictures.iter().any(|ending| name.to_lowercase().ends_with(ending))
        && !name.contains(['"', ' ']);
    if !begins || rest.is_empty() {
        return None;
    }
    if is_file && !typed.says(note, &["note"]) {
        let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
        let line = format!("{} photo \"{stem}\" file \"{name}\"", typed.text(0, note));
        return Some(Answer::line(
            line,
            "a photo has a title, and the name of its file after `file`",
        ));
    }
    let is_last = !typed.pieces[note + 1..].iter().any(|piece| {
        piece.is_word(&["recorded", "tolerance", "note", "file", "estimated", "common", "veneer"])
    });
    let is_open = !is_text(typed.piece(note + 1)) && is_last && typed.says(note, &["note"]);
    is_open.then(|| {
        Answer::line(
            format!("{} note {}", typed.text(0, note), quoted(rest)),
            "a note needs a `\"` on each side, and no inch mark inside it",
        )
    })
}

/// `west not reached 44'`: offers an estimate or a side by closing for a length that was not measured.
fn not_reached(typed: &Typed<'_>) -> Option<Answer> {
    let says = ["not", "unreachable", "inaccessible", "blocked", "unmeasured", "unknown", "hidden"];
    if !is_way(typed, 0) || !typed.says(1, &says) {
        return None;
    }
    let [(_, measure)] = &lengths(&typed.pieces, 1)[..] else { return None };
    let way = typed.lower(0);
    measure.has_unit.then(|| {
        Answer::Lines(
            vec![format!("{way} by closing"), format!("{way} {} estimated", measure.text)],
            "a wall that was not measured is `by closing`, or has a length that is `estimated`"
                .to_owned(),
        )
    })
}
