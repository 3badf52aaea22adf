//! Levels and spaces whose names, numbers or adjectives are in another place.

use super::super::pieces::{Piece, Sort};
use super::spaces::kind_word;
use super::{Answer, Rule, Typed, first_of, is_text, plainly, quoted};
use crate::sketch::nouns;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if let Some(answer) = living_in_words(typed) {
        return Some(answer);
    }
    let rules: &[Rule] = &[
        quotes_in_a_name,
        noun_and_name,
        unopened,
        level_with_a_face,
        numbered_level,
        level_by_its_words,
        two_kinds,
        adjectives,
    ];
    first_of(rules, typed)
}

/// `garage "Dad's "shop"" start east 44'`: quotation marks inside a name.
fn quotes_in_a_name(typed: &Typed<'_>) -> Option<Answer> {
    let characters: Vec<char> = typed.line.chars().collect();
    let before = |at: usize| at.checked_sub(1).map(|at| characters[at]);
    let after = |at: usize| characters.get(at + 1).copied();
    let (mut depth, mut inner) = (0_usize, Vec::new());
    for (at, c) in characters.iter().enumerate() {
        if *c != '"' || before(at).is_some_and(|c| c.is_ascii_digit()) && depth == 0 {
            continue;
        }
        let opens = before(at).is_none_or(|c| c == ' ' || c == '(')
            && after(at).is_some_and(char::is_alphanumeric);
        if opens {
            depth += 1;
        }
        if depth == 2 {
            inner.push(at);
        }
        if !opens {
            depth = depth.checked_sub(1)?;
        }
        if depth > 2 {
            return None;
        }
    }
    (depth == 0 && inner.len() >= 2).then(|| {
        let with = |(at, c): (usize, &char)| if inner.contains(&at) { '\'' } else { *c };
        let line: String = characters.iter().enumerate().map(with).collect();
        Answer::line(line, "a text ends at the next `\"`: marks inside it are `'`")
    })
}

/// Words before `floor` or `level` that say which one.
pub(super) const ORDINALS: [&str; 26] = [
    "first",
    "second",
    "third",
    "fourth",
    "1st",
    "2nd",
    "3rd",
    "4th",
    "main",
    "ground",
    "upper",
    "lower",
    "top",
    "bottom",
    "st",
    "nd",
    "rd",
    "th",
    "entry",
    "garden",
    "split",
    "middle",
    "half",
    "mid",
    "finished",
    "unfinished",
];
/// Words for a level after such a word or a number.
pub(super) const FLOORS: [&str; 9] =
    ["floor", "floors", "story", "storey", "stories", "level", "flr", "fl", "lvl"];

/// How many pieces at the start of the line name a level, as `second story` or `2nd floor`; 0 if it does not begin so.
fn level_words(typed: &Typed<'_>) -> usize {
    if typed.says(0, &["upstairs", "downstairs", "basement", "cellar", "attic", "mezzanine"]) {
        return 1 + usize::from(typed.says(1, &FLOORS));
    }
    let number = usize::from(typed.piece(0).is_some_and(super::digits::is_small));
    let ordinals = (number..typed.pieces.len()).take_while(|&at| typed.says(at, &ORDINALS)).count();
    let floor = number + ordinals;
    if number + ordinals > 0 && typed.says(floor, &FLOORS) { floor + 1 } else { 0 }
}

/// `second story`, `upper level`, `2nd flr`: a level by another word.
fn level_by_its_words(typed: &Typed<'_>) -> Option<Answer> {
    let count = level_words(typed);
    let ends = typed.pieces[count..].iter().all(|piece| piece.is_mark(".:,-–="));
    let own = typed.says(0, &["basement", "cellar"]) || count == 1 && typed.says(0, &["attic"]);
    (count > 0 && ends && !own).then(|| {
        Answer::line(
            format!("level {}", quoted(typed.text(0, count))),
            "a level is `level` and its name",
        )
    })
}

/// `upstairs (all inside)`, `level "Upper floor" measured inside`: the face belongs to the spaces.
fn level_with_a_face(typed: &Typed<'_>) -> Option<Answer> {
    let named = typed.says(0, &["level", "floor"]) && is_text(typed.piece(1));
    // `level Upstairs measured to inside`
    let face =
        typed.find(2, &["measured", "taped", "inside", "outside", "frame", "interior", "exterior"]);
    let plain = face.filter(|&face| {
        typed.says(0, &["level", "floor"])
            && typed.pieces[1..face]
                .iter()
                .all(|piece| piece.sort == Sort::Word || piece.is_number())
    });
    if let (Some(face), false) = (plain, named) {
        let line = format!("level {} {}", quoted(typed.text(1, face)), typed.rest(face));
        let pieces = super::cut(&line);
        return level_with_a_face(&Typed { line: &line, pieces, attempt: typed.attempt });
    }
    let count = if named { 2 } else { level_words(typed) };
    let name = if named { typed.text(1, 2).to_owned() } else { quoted(typed.text(0, count)) };
    let faces = [
        ("inside", &["inside", "interior", "drywall", "indoors", "inner"][..]),
        ("outside", &["outside", "exterior", "outdoors", "outer"]),
        ("frame", &["frame", "studs", "framing"]),
    ];
    let filler = |piece: &Piece| {
        piece.is_mark("()[],;:.-–=")
            || piece.is_word(&[
                "all",
                "measured",
                "to",
                "the",
                "taped",
                "from",
                "face",
                "faces",
                "walls",
                "wall",
                "is",
                "was",
                "at",
                "everything",
                "dimensions",
                "measurements",
                "measure",
                "only",
            ])
    };
    let said: Vec<usize> =
        (count..typed.pieces.len()).filter(|&at| !filler(&typed.pieces[at])).collect();
    let (face, _) = faces
        .iter()
        .find(|(_, words)| !said.is_empty() && said.iter().all(|&at| typed.says(at, words)))?;
    (count > 0).then(|| {
        Answer::say(
            "a level does not say to which face it was measured: each of its spaces does",
            format!("write `level {name}` here, and at the end of the line of each of its spaces `measured to {face}`, as `living \"Rooms\" measured to {face}`"),
        )
    })
}

/// `floor 1: "First floor"`, `level 2 - Upstairs`: a number and a name.
fn numbered_level(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &FLOORS) {
        return None;
    }
    typed.piece(1).filter(|number| super::digits::is_small(number))?;
    let mut at = 2;
    while typed.piece(at).is_some_and(|piece| piece.is_mark(".:,-–=()")) {
        at += 1;
    }
    let text = typed.piece(at).filter(|text| is_text(Some(text)));
    let only = |from: usize| typed.pieces[from..].iter().all(|piece| piece.is_mark(".:,)("));
    if let Some(text) = text.filter(|_| only(at + 1)) {
        return Some(Answer::line(
            format!("level {}  # {}", text.text, typed.text(0, 2)),
            "a level has one name",
        ));
    }
    let plain = at > 2
        && at < typed.pieces.len()
        && typed.pieces[at..].iter().all(|piece| piece.sort == Sort::Word || piece.is_mark(").,"));
    let meant = ["below", "beside", "inside", "outside", "measured", "grade"];
    (plain && typed.find(at, &meant).is_none()).then(|| {
        Answer::line(
            format!("level {}  # {}", quoted(typed.rest(at)), typed.text(0, 2)),
            "a level has one name, with a `\"` on each side",
        )
    })
}

/// `garage Garage" start east 44' 7"`: a name with a mark only at its end.
fn unopened(typed: &Typed<'_>) -> Option<Answer> {
    kind_word(&typed.lower(0)).filter(|_| !is_text(typed.piece(1)))?;
    let mark = typed.line.find('"')?;
    let name = typed.line[..mark].split_once(' ')?.1.trim();
    let is_name = !name.is_empty()
        && name.ends_with(char::is_alphabetic)
        && !name.contains(|c: char| c.is_ascii_digit());
    let keyword = name
        .split(' ')
        .any(|word| ["start", "from", "within", "measured", "recorded"].contains(&word));
    (is_name && !keyword).then(|| {
        let line = format!("{} \"{name}\"{}", typed.text(0, 1), &typed.line[mark + 1..]);
        Answer::line(line, "the text has no `\"` at its beginning")
    })
}

/// `silo "Silo" detached`, `gazebo "Gazebo"`: what a space is called, instead of its kind; and a pool, which is none.
fn noun_and_name(typed: &Typed<'_>) -> Option<Answer> {
    let noun = typed.lower(0);
    if matches!(noun.as_str(), "pool" | "swimming" | "pond" | "driveway" | "fence") {
        let is_one = noun != "swimming" || typed.says(1, &["pool"]);
        let is_alone = is_one && nouns::kinds(&typed.lower(1)).is_empty();
        return is_alone.then(|| {
            Answer::line(
                format!("# {}", plainly(typed.line)),
                "this is no part of a house, and no area of it depends on it: it needs no line, or a comment",
            )
        });
    }
    if noun == "chimney" {
        return Some(Answer::line(
            format!("# {}", plainly(typed.line)),
            "a chimney that stands out from a wall has no floor and is not counted: it needs no line, or a comment",
        ));
    }
    let kinds = nouns::kinds(&noun);
    let is_kind = kind_word(&noun).is_some() || kinds.contains(&noun.as_str());
    if kinds.is_empty() || is_kind || !is_text(typed.piece(1)) {
        return None;
    }
    let lines = kinds.iter().map(|kind| format!("{kind} {}", typed.rest(1))).collect();
    Some(Answer::Lines(lines, format!("a sides file has another word for `{noun}`")))
}

/// `deck/porch "Back" from …`: one space is of one kind.
fn two_kinds(typed: &Typed<'_>) -> Option<Answer> {
    let kind = |at: usize| kind_word(&typed.lower(at));
    let (one, two) = (kind(0)?, kind(2)?);
    let joined = typed.piece(1)?.is_mark("/&+-") || typed.says(1, &["or", "and"]);
    let rest = typed.rest(3);
    (joined && one != two && !rest.is_empty()).then(|| {
        Answer::Lines(
            vec![format!("{one} {rest}"), format!("{two} {rest}")],
            "a space is of one kind: what has a roof over it is a `porch`, what has none is a `deck` or a `patio`".to_owned(),
        )
    })
}

/// `2-car garage start east 44'`, `attached 2 car garage`, `garage (2 car)`: words about a space before its kind or
/// after it become its name.
fn adjectives(typed: &Typed<'_>) -> Option<Answer> {
    let ways = ["start", "from", "within", "detached", "recorded", "not", "counted", "measured"];
    let kind = (0..typed.pieces.len().min(5)).find(|&at| kind_word(&typed.lower(at)).is_some())?;
    let describes = |piece: &Piece| {
        piece.is_mark("-()")
            || super::digits::is_small(piece)
            || piece.is_word(&[
                "car",
                "cars",
                "attached",
                "stall",
                "bay",
                "door",
                "single",
                "double",
                "two",
                "one",
                "three",
                "two-car",
                "one-car",
                "three-car",
                "oversized",
                "tandem",
                "covered",
                "screened",
                "enclosed",
                "front",
                "back",
                "rear",
                "side",
                "small",
                "large",
                "big",
                "little",
                "old",
                "new",
                "open",
            ])
    };
    let mut end = kind + 1;
    while typed
        .piece(end)
        .is_some_and(|piece| describes(piece) && !piece.is_word(&["detached", "front", "back"]))
    {
        end += 1;
    }
    let is_described = kind > 0 || end > kind + 1;
    let has_count = typed.pieces[..end].iter().any(Piece::is_number);
    if !is_described || !has_count || !typed.pieces[..kind].iter().all(describes) {
        return None;
    }
    let word = kind_word(&typed.lower(kind))?;
    let ends = end == typed.pieces.len() || typed.says(end, &ways);
    if is_text(typed.piece(end)) {
        let said = typed.text(0, end).replace(['(', ')'], "");
        let line = format!("{word} {}  # {said}", typed.rest(end));
        return Some(Answer::line(
            line,
            "a line begins with its word; anything else goes into a comment",
        ));
    }
    let name = if kind == 0 {
        let said = typed.text(1, end).replace(['(', ')'], "");
        format!("{} {word}", said.trim())
    } else {
        typed.text(0, end).replace(['(', ')'], "")
    };
    ends.then(|| {
        let line = format!("{word} \"{}\" {}", name.trim(), typed.rest(end));
        Answer::line(
            line.trim_end(),
            "a space begins with its kind, then its name with a `\"` on each side",
        )
    })
}

/// `heated living area "Bedrooms"`: more words for `living` before the name.
fn living_in_words(typed: &Typed<'_>) -> Option<Answer> {
    let words =
        ["heated", "finished", "conditioned", "living", "area", "space", "main", "gross", "the"];
    let count = (0..typed.pieces.len()).take_while(|&at| typed.says(at, &words)).count();
    let says = (0..count).any(|at| typed.says(at, &["living"]));
    (says && count > 1 && is_text(typed.piece(count))).then(|| {
        Answer::line(
            format!("living {}", typed.rest(count)),
            "a space begins with its kind, then its name with a `\"` on each side",
        )
    })
}

/// `record outline Card of House`: the name of an outline, and the space that it is of.
pub(super) fn outline_of(typed: &Typed<'_>) -> Option<Answer> {
    let is_outline = typed.says(0, &["record", "plan", "map"]) && typed.says(1, &["outline"]);
    let of = typed.find(3, &["of"]).filter(|_| is_outline)?;
    let named = typed.name(of + 1, typed.pieces.len());
    let space =
        typed.attempt.beside.spaces.iter().find(|space| space.eq_ignore_ascii_case(&named))?;
    let name = typed.name(2, of);
    (!name.is_empty() && !super::measures(&name)).then(|| {
        Answer::line(
            format!("{} outline {} of {}", typed.lower(0), quoted(&name), quoted(space)),
            "a name needs a `\"` on each side, and so does the space that an outline is of",
        )
    })
}
