//! Lines of a walk that are no wall: corners, jogs without their direction, the end of the walk, doors and windows.

use super::super::compass::{slant, way_word};
use super::super::pieces::{Piece, Sort};
use super::measure::{Measure, length_at, lengths};
use super::spaces::kind_word;
use super::walls::{WAYS, is_way};
use super::{Answer, Rule, Typed, first_of, is_text, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        apostrophe,
        slash_for_a_space,
        where_and_way,
        as_seen,
        marks_alone,
        symbols,
        closed,
        ended,
        corner_of_the_compass,
        corner_without_name,
        where_a_space_starts,
        round_bay,
        jog,
        opening,
    ];
    first_of(rules, typed)
}

/// `---`, `***`: a line that only divides.
fn marks_alone(typed: &Typed<'_>) -> Option<Answer> {
    let divides = typed.line.chars().all(|c| "-–—_=*~+./\\| ".contains(c));
    (divides && typed.line.chars().count() >= 2).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "a line that only divides begins with `#`, or is left empty",
        )
    })
}

/// `'north 28`: a spreadsheet's mark of a text.
fn apostrophe(typed: &Typed<'_>) -> Option<Answer> {
    let rest = typed.line.strip_prefix(['\'', '’', '`'])?;
    let is_one = !rest.ends_with(['\'', '’', '`']) && rest.starts_with(char::is_alphabetic);
    is_one.then(|| Answer::line(rest, "a line has no mark before its first word"))
}

/// `north/28' 4"`, `north|28`: a mark instead of the space.
fn slash_for_a_space(typed: &Typed<'_>) -> Option<Answer> {
    let mark = typed.piece(1).filter(|mark| mark.is_mark("/\\|") && mark.touches)?;
    let one = typed.line.matches(mark.text.as_str()).count() == 1;
    let number = typed.piece(2).is_some_and(|next| next.is_number() && next.touches);
    (is_way(typed, 0) && one && number).then(|| {
        Answer::line(
            format!("{} {}", typed.text(0, 1), typed.rest(2)),
            "a space goes between the direction and the length",
        )
    })
}

/// `rear north 28' 4"`: where the wall stands, then the way that it runs.
fn where_and_way(typed: &Typed<'_>) -> Option<Answer> {
    let stands = ["rear", "back", "front", "left", "right", "side", "street", "garage", "kitchen"];
    let at = 1 + usize::from(typed.says(1, &["side", "wall"]));
    let measure = length_at(&typed.pieces, at + 1)
        .filter(|measure| measure.has_unit && measure.end == typed.pieces.len())?;
    (typed.says(0, &stands) && typed.says(at, &WAYS[..4])).then(|| {
        Answer::line(
            format!("{} {} note {}", typed.lower(at), measure.text, quoted(typed.text(0, at))),
            "a side begins with the way that it runs; where the wall stands goes in a note",
        )
    })
}

/// `toward back 28'`, `forward 28'`, `away from the street 28'`, `rechts 9,50 m`, `9,50 m nach Norden`: the way in other
/// words.
fn as_seen(typed: &Typed<'_>) -> Option<Answer> {
    // `9,50 m` with the comma of other languages.
    if let Some(comma) =
        typed.piece(0).filter(|number| number.is_number() && number.text.contains(','))
        && comma.text.split_once(',').is_some_and(|(_, decimals)| decimals.len() <= 2)
        && typed.says(1, &["m", "meter", "metros"])
    {
        let line = typed.line.replacen(',', ".", 1);
        return as_seen(&Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt });
    }
    if let Some(measure) = length_at(&typed.pieces, 0) {
        let mut at = measure.end;
        while typed.says(
            at,
            &[
                "nach", "al", "hacia", "el", "vers", "le", "to", "toward", "the", "towards",
                "going", "due",
            ],
        ) {
            at += 1;
        }
        let way = way_word(&typed.lower(at)).filter(|_| at + 1 == typed.pieces.len())?;
        return (at > measure.end || !typed.says(at, &WAYS)).then(|| {
            Answer::line(format!("{way} {}", measure.text), "the direction comes before the length")
        });
    }
    let [(first, measure)] = &lengths(&typed.pieces, 1)[..] else { return None };
    if measure.end != typed.pieces.len() {
        return None;
    }
    let words: Vec<String> = (0..*first)
        .map(|at| typed.lower(at))
        .filter(|word| {
            !matches!(
                word.as_str(),
                "the"
                    | "going"
                    | "go"
                    | "walk"
                    | "walking"
                    | "to"
                    | "nach"
                    | "a"
                    | "la"
                    | ","
                    | ":"
            )
        })
        .collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let way = match words[..] {
        ["toward" | "towards", way @ ("back" | "front" | "left" | "right")] => way,
        ["toward" | "towards", "rear"] | ["backward" | "backwards" | "hinten" | "atrás"] => "back",
        ["away", "from", "street" | "road"] => "back",
        ["forward" | "forwards" | "vorne" | "adelante"] => "front",
        ["toward" | "towards", "street" | "road"] => "front",
        ["left", "right"] | ["rechts" | "derecha" | "droite"] => "right",
        ["right", "left"] | ["links" | "izquierda" | "gauche"] => "left",
        _ => return None,
    };
    let length = &measure.text;
    Some(if typed.attempt.beside.front.is_some() {
        Answer::line(
            format!("{way} {length}"),
            "a side begins with the way that it runs: `back`, `right`, `front` or `left`, as seen from the street",
        )
    } else {
        Answer::say(
            "the way that this wall runs is said as it is seen from the street, and the file does not say where the street is",
            format!(
                "write `front` and `north`, `east`, `south` or `west` at the top of the file, and here `{way} {length}`"
            ),
        )
    })
}

/// `north 28' 4" 😀`: signs that stand for nothing in a sides file.
fn symbols(typed: &Typed<'_>) -> Option<Answer> {
    let is_symbol = |c: char| {
        matches!(c as u32, 0x2190..=0x21FF | 0x2500..=0x27BF | 0x2B00..=0x2BFF | 0x1F000..=0x1FAFF | 0x2022 | 0x2043)
            && !"↑↓→←".contains(c)
    };
    if !typed.line.contains(is_symbol) {
        return None;
    }
    let left: String = typed.line.chars().filter(|c| !is_symbol(*c)).collect();
    let left = left.split_whitespace().collect::<Vec<_>>().join(" ");
    (!left.is_empty()).then(|| Answer::line(left, "a picture or a box has no meaning here"))
}

/// `close the box`, `close it up`: words after `close` that say no more.
fn closed(typed: &Typed<'_>) -> Option<Answer> {
    let more = [
        "the",
        "box",
        "loop",
        "shape",
        "house",
        "outline",
        "walk",
        "figure",
        "polygon",
        "rectangle",
        "up",
        "it",
        "here",
        "circuit",
        "perimeter",
        "traverse",
        "back",
        "to",
        "start",
        "beginning",
        "lot",
        "boundary",
        "off",
        "square",
        "now",
        "this",
        "building",
        "gap",
        "ring",
    ];
    let rest = typed.pieces.get(1..).filter(|rest| !rest.is_empty())?;
    let says = |piece: &Piece| piece.is_word(&more) || piece.is_mark(".!,");
    (typed.says(0, &["close"]) && rest.iter().all(says))
        .then(|| Answer::line("close", "`close` says it alone"))
}

/// `end`, `done`: a walk has no line for its end.
fn ended(typed: &Typed<'_>) -> Option<Answer> {
    let ends = [
        "end",
        "ends",
        "done",
        "stop",
        "finished",
        "finish",
        "fin",
        "ende",
        "fertig",
        "complete",
        "completed",
        "the",
        "of",
        "walk",
        "house",
        "file",
        "list",
        "measurements",
        "sides",
        "all",
        "that's",
        "eof",
        "over",
    ];
    let begins = ["end", "done", "stop", "finished", "fin", "ende", "fertig", "eof", "the", "all"];
    let said = typed.pieces.iter().any(|piece| piece.is_word(&begins[..8]));
    let only = |piece: &Piece| piece.is_word(&ends) || piece.is_mark(".!,");
    (typed.says(0, &begins) && said && typed.pieces.iter().all(only)).then(|| {
        Answer::say(
            "an outline ends where the next line begins something else",
            "take this line out; if the last walls were not measured, write `close` instead of it",
        )
    })
}

/// `NE corner`, `corner SE of house`: a corner named by the compass.
fn corner_of_the_compass(typed: &Typed<'_>) -> Option<Answer> {
    let mut at = 0;
    while typed.says(at, &["at", "the", "this", "is", "reached", "now"]) {
        at += 1;
    }
    let (name, next) = if typed.says(at, &["corner"]) && slant(&typed.lower(at + 1)).is_some() {
        (at + 1, at + 2)
    } else if slant(&typed.lower(at)).is_some() && typed.says(at + 1, &["corner"]) {
        (at, at + 2)
    } else {
        return None;
    };
    let only = |piece: &Piece| {
        piece.is_word(&["of", "the", "house", "home", "here", "building", "is"])
            || piece.is_mark(".,:")
    };
    typed.pieces[next..].iter().all(only).then(|| {
        Answer::line(
            format!("corner \"{}\"", typed.text(name, name + 1)),
            "a corner has a name with a `\"` on each side",
        )
    })
}

/// `corner`, `corner 3`, `corner of porch`, `corner "step" 28'`.
fn corner_without_name(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["corner"]) {
        return None;
    }
    let Some(next) = typed.piece(1) else {
        return Some(Answer::say(
            "a corner is given a name, to which other spaces refer",
            "write `corner` and a name with a `\"` on each side, or take the line out: corners are numbered by the program",
        ));
    };
    if next.is_number() && typed.pieces.len() == 2 {
        return Some(Answer::line(
            format!("# {}", typed.line),
            "corners are numbered by the program",
        ));
    }
    if next.is_word(&["of", "at", "for"]) {
        let first = 2 + usize::from(typed.says(2, &["the"]));
        let name = typed.rest(first);
        let is_name = !name.is_empty() && !name.contains(|c: char| c.is_ascii_digit() || c == '"');
        return is_name.then(|| {
            Answer::line(
                format!("corner {}", quoted(name)),
                "a corner has a name with a `\"` on each side",
            )
        });
    }
    let found = lengths(&typed.pieces, 2);
    (is_text(Some(next)) && found.len() == 1 && found[0].1.end == typed.pieces.len()).then(|| {
        Answer::say(
            "a corner has no length: that of a wall is on the wall's own line",
            format!(
                "leave `{}` here, and on a line of its own write the way that the wall runs and `{}`",
                typed.text(0, 2),
                found[0].1.text
            ),
        )
    })
}

/// `porch starts here`, `garage begins`: a corner of the walk at which another space starts.
fn where_a_space_starts(typed: &Typed<'_>) -> Option<Answer> {
    let verbs = ["starts", "start", "begins", "begin", "ends", "here", "corner"];
    let word = typed.lower(0);
    kind_word(&word).filter(|_| typed.says(1, &verbs))?;
    let only = |piece: &Piece| {
        piece.is_word(&verbs) || piece.is_word(&["at", "this", "point"]) || piece.is_mark(".,!")
    };
    typed.pieces[1..].iter().all(only).then(|| {
        Answer::line(
            format!("corner \"{word}\""),
            "the corner reached here is `corner` and a name, to which the other space refers: `from corner` and that name",
        )
    })
}

/// `bow window east 8' out 18"`: a round bay; a box bay is three sides.
fn round_bay(typed: &Typed<'_>) -> Option<Answer> {
    let boxed = ["box", "square", "boxed", "squared"];
    let is_bay = typed.says(0, &["bay"]) && typed.find(1, &["flat", "round"]).is_none();
    let is_box = typed.says(0, &boxed) || is_bay && typed.find(1, &boxed).is_some();
    if !is_box && !typed.says(0, &["bow", "oriel", "round"]) {
        return None;
    }
    let window = (0..3).find(|&at| typed.says(at, &["window", "bay"]))?;
    if is_box {
        return Some(Answer::say(
            "a bay with square corners is three sides",
            "write them one on each line, out, along and back, each with the way that it runs",
        ));
    }
    let end = window + 1 + usize::from(typed.says(window + 1, &["bay", "window"]));
    let is_flat = typed.find(end, &["flat"]).is_some();
    let rest = typed.rest(end);
    (!is_flat && !rest.is_empty()).then(|| {
        let rest = rest.trim_end_matches("round").trim_end();
        Answer::line(format!("bay {rest} round"), "a curved bay is a `bay` that is `round`")
    })
}

/// `jog west 2'`, `step back 2'`, `bump out 2' x 6'`: each wall of a jog is a side.
fn jog(typed: &Typed<'_>) -> Option<Answer> {
    let begins = [
        "jog",
        "jogs",
        "step",
        "steps",
        "offset",
        "inset",
        "outset",
        "setback",
        "recess",
        "recessed",
        "jut",
        "juts",
        "bump",
        "bumps",
        "bumpout",
        "bump-out",
        "return",
        "returns",
        "notch",
        "in",
        "out",
        "chimney",
        "alcove",
        "niche",
        "projection",
        "go",
        "goes",
        "popout",
        "pop-out",
    ];
    if typed.says(0, &["then", "and", "next"]) && typed.says(1, &begins) && !typed.is_in_lot() {
        let line = typed.rest(1);
        return jog(&Typed { line, pieces: super::cut(line), attempt: typed.attempt });
    }
    if let Some(plain) = with_marks(typed).filter(|_| typed.says(0, &begins)) {
        return jog(&Typed { line: &plain, pieces: super::cut(&plain), attempt: typed.attempt });
    }
    let found: Vec<(usize, Measure)> = lengths(&typed.pieces, 1);
    if !typed.says(0, &begins) || found.is_empty() || found.len() > 2 {
        return None;
    }
    let filler = |at: usize| {
        typed.says(
            at,
            &[
                "in",
                "out",
                "to",
                "the",
                "of",
                "back",
                "a",
                "then",
                "goes",
                "go",
                "over",
                "and",
                "deep",
                "wide",
                "by",
                "x",
                "outward",
                "inward",
                "window",
                "again",
                "about",
                "is",
                "long",
                "down",
                "up",
                "jog",
                "forward",
                "forwards",
                "backward",
                "backwards",
                "toward",
                "towards",
                "street",
                "road",
                "rear",
            ],
        ) || typed.pieces[at].is_mark(",;:.-–×=")
    };
    let is_length = |at: usize| found.iter().any(|(first, one)| (*first..one.end).contains(&at));
    let way = (1..typed.pieces.len()).find(|&at| typed.says(at, &WAYS));
    let only = (1..typed.pieces.len()).all(|at| Some(at) == way || is_length(at) || filler(at));
    if !only {
        return None;
    }
    match (&found[..], way) {
        ([(_, one)], Some(way)) => {
            let word = typed.lower(0);
            let note = if word == "go" || word == "goes" || word == "in" || word == "out" {
                String::new()
            } else {
                format!(" note \"{word}\"")
            };
            Some(Answer::line(
                format!("{} {}{note}", typed.lower(way), one.text),
                "each wall of a jog is a side: its direction, then its length",
            ))
        }
        ([(_, one)], None) if super::jogs::from_the_street(typed).is_some() => {
            let ways = super::jogs::from_the_street(typed)?;
            Some(Answer::Lines(
                ways.iter().map(|way| format!("{way} {}", one.text)).collect(),
                "each wall of a jog is a side: its direction, then its length".to_owned(),
            ))
        }
        ([(_, one)], None) if super::jogs::ways_across(typed).is_some() => {
            let [first, second] = super::jogs::ways_across(typed)?;
            Some(Answer::Lines(
                vec![format!("{first} {}", one.text), format!("{second} {}", one.text)],
                format!(
                    "each wall of a jog is a side: its direction, then its length; which way did you turn, {first} or {second}?"
                ),
            ))
        }
        ([(_, one)], None) => Some(Answer::say(
            "a side begins with the way that it runs, and this line does not say it",
            format!(
                "write `north`, `east`, `south` or `west`, as you walked along it, and then `{}`",
                one.text
            ),
        )),
        _ => Some(Answer::say(
            "what stands out of a wall or back from it is three sides",
            "write them one on each line, out, along and back, each with the way that it runs; at a corner of the house they are two, one for each length; what is left off the walk is not in its area",
        )),
    }
}

/// `jog out 6-2`: the line with the marks of its feet and inches.
fn with_marks(typed: &Typed<'_>) -> Option<String> {
    let dash = typed.pieces.iter().position(|dash| dash.is_mark("-–"))?;
    let feet = typed.piece(dash.checked_sub(1)?).filter(|feet| feet.is_number())?;
    let inches = typed.piece(dash + 1).filter(|inches| inches.is_number())?;
    let is_one = typed.pieces[dash].touches
        && inches.touches
        && feet.text.parse::<u16>().is_ok()
        && inches.text.parse::<u8>().is_ok_and(|inches| inches < 12);
    let others = typed.pieces[dash + 2..].iter().any(Piece::is_number)
        || typed.pieces[..dash - 1].iter().any(Piece::is_number);
    let rest = typed.rest(dash + 2);
    (is_one && !others && !rest.starts_with(['\'', '"', '/'])).then(|| {
        let before = typed.text(0, dash - 1);
        format!("{before} {}' {}\" {rest}", feet.text, inches.text).trim_end().to_owned()
    })
}

/// `window 3'`, `garage door 16'`, `fence`: no wall.
fn opening(typed: &Typed<'_>) -> Option<Answer> {
    let things = [
        "window",
        "windows",
        "door",
        "doors",
        "fence",
        "gate",
        "hedge",
        "tree",
        "meter",
        "hose",
        "downspout",
        "spigot",
        "faucet",
        "ac",
        "hvac",
        "condenser",
        "fireplace",
        "driveway",
        "sidewalk",
        "mailbox",
        "pool",
        "well",
    ];
    let kinds = ["garage", "patio", "porch", "sliding", "cellar", "basement", "side"];
    let at = usize::from(typed.says(0, &kinds) && typed.says(1, &["door", "doors", "window"]));
    let is_plain = !typed.says(at + 1, &["house", "room", "area"])
        && typed.pieces.iter().all(|piece| piece.sort != Sort::Text)
        && !(0..typed.pieces.len()).any(|at| is_way(typed, at));
    (typed.says(at, &things) && is_plain && typed.pieces.len() <= 8).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            format!(
                "`{}` is no wall of the house; a comment begins with `#`",
                typed.text(0, at + 1)
            ),
        )
    })
}
