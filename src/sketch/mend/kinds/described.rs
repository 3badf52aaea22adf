//! The line of a space that says more than its name: a size, a face, that it stands apart, where it is, all without
//! the marks and the order of the format.
//!
//! The line becomes kind, name, face, and what is left, and is then read as if it had been typed so. Nothing of it
//! becomes part of the name except what the space is called.

use super::super::pieces::{Piece, Sort};
use super::levels::capitalized;
use super::measure::{Measure, length_at};
use super::walls::is_way;
use super::{Answer, Typed, digits, is_text, kind_word, quoted};
use crate::sketch::nouns;
use crate::units::length::Length;

/// Words that end what a space is called: they say where it is, how it was measured or who said something of it.
const ENDS: &[&str] = &[
    "in",
    "at",
    "on",
    "off",
    "by",
    "behind",
    "beside",
    "next",
    "near",
    "over",
    "above",
    "under",
    "below",
    "to",
    "from",
    "with",
    "w",
    "is",
    "has",
    "was",
    "are",
    "stands",
    "stand",
    "standing",
    "sits",
    "sitting",
    "located",
    "attached",
    "att",
    "built",
    "built-in",
    "detached",
    "det",
    "freestanding",
    "separate",
    "that",
    "which",
    "not",
    "no",
    "there",
    "gone",
    "recorded",
    "county",
    "record",
    "card",
    "inside",
    "outside",
    "interior",
    "exterior",
    "inner",
    "outer",
    "frame",
    "framing",
    "studs",
    "stud",
    "drywall",
    "measured",
    "taped",
    "about",
    "approx",
    "within",
    "start",
    "starts",
    "of",
    "for",
    "front",
    "rear",
    "back",
    "side",
    "left",
    "right",
    "north",
    "south",
    "east",
    "west",
    "free",
    "apart",
    "alone",
    "itself",
    "x",
    "but",
    "it",
    "its",
    "same",
    "then",
    "along",
    "across",
    "against",
    "touching",
    "abutting",
    "around",
    "between",
    "counted",
    "veneer",
    "brick",
    "siding",
    "corner",
    "set",
    "unfinished",
    "unheated",
    "unconditioned",
    "uninsulated",
    "where",
    "out",
    "centered",
    "centred",
    "flush",
    "even",
    "size",
    "measures",
    "measuring",
    "only",
    "all",
    "n",
    "s",
    "e",
    "w",
];

/// Lines that begin with one of these are not those of a space.
const OTHERS: &[&str] = &[
    "property",
    "address",
    "account",
    "case",
    "tax",
    "tolerance",
    "interior",
    "units",
    "faces",
    "true",
    "veneer",
    "wall",
    "walls",
    "record",
    "records",
    "listing",
    "plan",
    "plans",
    "figure",
    "missing",
    "level",
    "lot",
    "diagonal",
    "bearing",
    "arc",
    "bay",
    "map",
    "close",
    "corner",
    "overall",
    "tie",
    "value",
    "last",
    "exemption",
    "homestead",
    "notice",
    "place",
    "comparable",
    "minus",
    "less",
    "deduct",
    "subtract",
    "no",
    "county",
    "window",
    "windows",
    "door",
    "doors",
    "brick",
    "stone",
    "siding",
    "all",
    "same",
    "this",
    "see",
    "note",
    "measured",
    "area",
    "size",
    "total",
    "thence",
    "land",
    "site",
    "yard",
    "parcel",
    "tract",
    "acreage",
    "comp",
    "sale",
    "sold",
    "mls",
    "cad",
    "assessor",
    "realtor",
    "basement",
    "cellar",
    "bsmt",
    "upstairs",
    "downstairs",
    "attic",
    "angle",
    "angled",
    "slant",
    "curve",
    "chimney",
    "fireplace",
    "ceiling",
    "ceilings",
    "roof",
    "eave",
    "2x4",
    "exterior",
    "scale",
    "page",
    "photo",
    "driveway",
    "drive",
    "fence",
    "pool",
    "well",
    "septic",
    "check",
    "cross",
    "then",
    "and",
    "go",
    "turn",
    "east",
    "west",
    "north",
    "south",
    "not",
    "missed",
    "forgot",
    "bump",
    "jog",
    "recess",
    "notch",
];

/// Words before a noun that say on which side of the house it stands, and are part of its name.
const SIDES: &[&str] =
    &["front", "rear", "back", "side", "left", "right", "north", "south", "east", "west"];

/// What a line calls a space.
struct Called {
    /// The kinds it may be; several if only the writer knows.
    kinds: Vec<&'static str>,
    name: String,
    end: usize,
    is_apart: bool,
    /// Whether the words are known for a space.
    is_known: bool,
    /// Whether its words alone are enough: two nouns joined, what is open below.
    is_sure: bool,
}

/// What is left of a line behind the name.
#[derive(Clone, Default)]
struct Rest {
    face: Option<&'static str>,
    is_apart: bool,
    /// What says that it is not finished or not heated.
    unfinished: Option<String>,
    /// Whether its walls have no brick.
    is_bare: bool,
    size: Option<(Measure, Measure)>,
    left: Vec<String>,
    remarks: Vec<String>,
    has_parentheses: bool,
}

/// `deck (16x12) off back`, `house outside`, `shed by itself`, `loft 12x14`, `hot tub pad 8x8`, `garage/shop 20x30`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let is_sided = typed.says(0, SIDES) && nouns::is_known(&typed.lower(1));
    let is_other = typed.attempt.is_side || typed.says(0, OTHERS) || is_way(typed, 0);
    let describes =
        typed.says(0, &["pool", "well", "stone", "brick"]) && nouns::is_known(&typed.lower(1));
    if is_other && !is_sided && !describes || typed.line.contains('#') {
        return None;
    }
    let named = named(typed);
    let is_named = named.is_some();
    let called = named.or_else(|| open_to(typed)).or_else(|| called(typed))?;
    let has_text = typed.pieces.iter().skip(called.end).any(|piece| is_text(Some(piece)));
    if has_text || typed.line.contains(['$', '%']) {
        return None;
    }
    let rest = rest(typed, &called);
    // The words of a line that has its name are mended one by one, but for a size among them.
    if is_named && (rest.size.is_none() || !rest.left.is_empty() || rest.face.is_none()) {
        return None;
    }
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let own = kind_word(&typed.lower(0)).is_some();
    let is_alone = called.end == typed.pieces.len();
    let has_said =
        rest.size.is_some() || rest.face.is_some() || rest.is_apart || rest.is_bare && follows;
    let says_more = !rest.left.is_empty() || !rest.remarks.is_empty();
    // A plain name or a plain size is answered by the rules that follow.
    let is_plain = rest.size.is_some()
        && rest.face.is_none()
        && !rest.is_apart
        && !says_more
        && !rest.has_parentheses
        && called.end == 1
        && !called.is_sure
        && (own || is_known_elsewhere(typed));
    let fits = if called.is_known {
        has_said || is_alone && (called.is_sure || (follows || !own) && !is_known_elsewhere(typed))
    } else {
        rest.size.is_some() || rest.is_apart && follows
    };
    if !fits || is_plain || own && is_alone && !called.is_sure {
        return None;
    }
    let has_kind = called.is_known || own;
    let has_size = rest.size.is_some();
    let mut lies_inside = false;
    let mut called = called;
    if !called.is_known && (rest.is_apart || called.is_apart) {
        called.kinds = vec!["outbuilding"];
    }
    let mut lines = lines(&called.kinds, &called, &rest, follows);
    // `garage inside 20x22` may lie inside the house.
    if let (Some("inside"), [kind], Some(house)) =
        (rest.face, &called.kinds[..], typed.attempt.house.as_ref())
        && *kind != "living"
        && typed.find(0, &["measured", "taped", "to"]).is_none()
    {
        lies_inside = true;
        let inside = Rest { face: None, ..rest };
        lines.truncate(1);
        lines.push(self::lines(&[*kind], &called, &inside, follows).swap_remove(0).replacen(
            &quoted(&called.name),
            &format!("{} within \"{house}\"", quoted(&called.name)),
            1,
        ));
    }
    let cause = if has_kind && lines.len() == 1 {
        "a space begins with its kind, then its name"
    } else if has_kind {
        "a space begins with its kind, then its name: choose which it is"
    } else {
        "a line with a size is that of a space, which begins with its kind: choose which it is; what is none is a comment, after a `#`"
    };
    let cause = match lines.len() {
        1 if !has_size => {
            "a space begins with its kind, then its name, then how it was measured or where it is"
        }
        2 if has_kind && called.kinds.len() == 1 && !lies_inside => {
            "a space begins with its kind and its name, and its size is typed as its sides, one on each line: which of the two lengths runs north and south?"
        }
        _ => cause,
    };
    lines.retain(|line| line != typed.line);
    (!lines.is_empty()).then(|| Answer::Lines(lines, cause.to_owned()))
}

/// `garage "Garage" to the studs, 20 x 22`: the kind and the name as the format has them.
fn named(typed: &Typed<'_>) -> Option<Called> {
    let kind = kind_word(&typed.lower(0)).filter(|_| is_text(typed.piece(1)))?;
    Some(Called {
        kinds: vec![kind],
        name: typed.name(1, 2),
        end: 2,
        is_apart: false,
        is_known: true,
        is_sure: false,
    })
}

/// The lines that are offered: with its four sides, both ways round, if nothing is left that has to be read first.
fn lines(kinds: &[&'static str], called: &Called, rest: &Rest, follows: bool) -> Vec<String> {
    let Some((one, two)) = rest.size.as_ref() else {
        return kinds.iter().map(|kind| line(kind, called, rest)).collect();
    };
    if !rest.left.is_empty() || follows {
        return kinds.iter().map(|kind| line(kind, called, rest)).collect();
    }
    let (a, b) = in_one_unit(one, two);
    let bare = Rest { size: None, ..rest.clone() };
    let with = |kind: &str, a: &str, b: &str| {
        format!("{}\nnorth {a}\neast {b}\nsouth {a}\nwest {b}", line(kind, called, &bare))
    };
    match kinds {
        [kind] if one.length != two.length => vec![with(kind, &a, &b), with(kind, &b, &a)],
        kinds => kinds.iter().map(|kind| with(kind, &a, &b)).collect(),
    }
}

/// Both lengths of a size; one without a unit takes that of the other.
pub(super) fn in_one_unit(one: &Measure, two: &Measure) -> (String, String) {
    let like = |of: &Measure, other: &Measure| match (of.has_unit, other.has_unit) {
        (false, true) if other.is_metric() => {
            let unit = other.text.trim_start_matches(|c: char| !c.is_alphabetic());
            format!("{} {unit}", of.text)
        }
        (false, true) => format!("{}'", of.text),
        _ => of.text.clone(),
    };
    (like(one, two), like(two, one))
}

/// The kind, the index of the first piece after the name, and the name, if what the line calls a space can be of one
/// kind only.
pub(super) fn one_kind(typed: &Typed<'_>) -> Option<(&'static str, usize, String)> {
    let is_sided = typed.says(0, SIDES) && nouns::is_known(&typed.lower(1));
    if (typed.attempt.is_side || typed.says(0, OTHERS) || is_way(typed, 0)) && !is_sided {
        return None;
    }
    let called = called(typed).filter(|called| called.is_known && !called.is_apart)?;
    match called.kinds[..] {
        [kind] => Some((kind, called.end, called.name)),
        _ => None,
    }
}

/// Whether another rule knows the first word for a space or a level.
fn is_known_elsewhere(typed: &Typed<'_>) -> bool {
    let (first, second) = (typed.lower(0), typed.lower(1));
    super::loose::kind_at_start(typed).is_some()
        || crate::sketch::phrases::opens_space(&first, &second)
        || crate::sketch::phrases::opens_level(&first, &second)
}

fn line(kind: &str, called: &Called, rest: &Rest) -> String {
    let is_cold = rest.unfinished.is_some();
    let kind = if kind == "living" && is_cold { "unfinished" } else { kind };
    let mut parts = vec![format!("{kind} {}", quoted(&called.name))];
    if let Some(face) = rest.face {
        parts.push(format!("measured to {face}"));
    }
    if rest.is_apart || called.is_apart {
        parts.push("detached".to_owned());
    }
    if rest.is_bare {
        parts.push("veneer none".to_owned());
    }
    parts.extend(rest.size.as_ref().map(|(one, two)| format!("{} x {}", one.text, two.text)));
    parts.extend(rest.left.iter().cloned());
    let line = parts.join(" ");
    let mut remarks = rest.remarks.clone();
    remarks.extend(rest.unfinished.clone().filter(|_| kind != "unfinished"));
    if remarks.is_empty() { line } else { format!("{line}  # {}", remarks.join(", ")) }
}

/// `open to below 8x10`, `great room open above`: what has no floor.
fn open_to(typed: &Typed<'_>) -> Option<Called> {
    let joints = [
        "to", "the", "from", "floor", "first", "main", "ground", "room", "level", "lower", "foyer",
        "entry", "great", "family", "living", "hall", "kitchen", "den",
    ];
    let reaches = ["below", "above", "beneath", "downstairs"];
    let at = typed.find(0, &["open"]).filter(|at| *at <= 4)?;
    let mut end = at + 1;
    while typed.says(end, &joints) {
        end += 1;
    }
    if !typed.says(end, &reaches) || is_text(typed.piece(at + 1)) {
        return None;
    }
    let plain = |piece: &Piece| piece.sort == Sort::Word && !piece.is_word(ENDS);
    if !typed.pieces[..at].iter().all(plain) || at > 0 && typed.says(0, &["living"]) && at == 1 {
        return None;
    }
    let mut first = at.min(usize::from(typed.says(0, &["the", "living"])));
    if typed.says(0, &["living"]) && typed.says(1, &["room"]) {
        first = 0;
    }
    let called = Some(end + 1).filter(|&name| is_text(typed.piece(name)));
    let name = match called {
        Some(name) => super::plainly(typed.text(name, name + 1)),
        None if at > first => capitalized(&typed.text(first, at).to_lowercase()),
        None => "Open".to_owned(),
    };
    Some(Called {
        kinds: vec!["open"],
        name,
        end: called.map_or(end + 1, |name| name + 1),
        is_apart: false,
        is_known: true,
        is_sure: true,
    })
}

/// The words at the start of the line that a space is called.
fn called(typed: &Typed<'_>) -> Option<Called> {
    let apart = ["detached", "det", "freestanding", "separate", "free-standing", "stand-alone"];
    let left_out =
        ["a", "an", "the", "my", "our", "there", "is", "attached", "att", "also", "have"];
    let (mut first, mut is_apart) = (0, false);
    let is_sided = typed.says(0, SIDES) && nouns::is_known(&typed.lower(1));
    while typed.says(first, &left_out)
        || typed.says(first, &apart)
        || first > 0 && typed.piece(first).is_some_and(|dot| dot.is_mark(".") && dot.touches)
    {
        is_apart |= typed.says(first, &apart);
        first += 1;
    }
    let is_cold = |at: usize| typed.says(at, &["unfinished", "unheated", "unconditioned"]);
    let is_joint = |at: usize| {
        at > first
            && typed.piece(at).is_some_and(|mark| mark.is_mark("-/&+'’"))
            && typed.piece(at + 1).is_some_and(|next| next.sort == Sort::Word)
    };
    let counts = |at: usize| {
        let things = [
            "car", "season", "story", "bay", "stall", "door", "room", "cars", "horse", "seat",
            "stalls",
        ];
        typed.piece(at).is_some_and(|number| digits::is_small(number) && number.text.len() == 1)
            && (typed.says(at + 1, &things)
                || typed.piece(at + 1).is_some_and(|dash| dash.is_mark("-"))
                    && typed.says(at + 2, &things))
    };
    let is_abbreviated = |at: usize| {
        at > first
            && typed.piece(at).is_some_and(|dot| dot.is_mark(".") && dot.touches)
            && typed.piece(at - 1).is_some_and(|word| word.text.len() <= 4)
    };
    let mut end = first;
    while end < typed.pieces.len() {
        let in_law = typed.says(end, &["in"]) && typed.says(end + 1, &["law", "laws"]);
        let word = typed.pieces[end].sort == Sort::Word
            && (!typed.says(end, ENDS)
                || in_law
                || end == 0 && is_sided
                || end == first && is_cold(end));
        if !(word || is_joint(end) || counts(end) || is_abbreviated(end)) {
            break;
        }
        end += 1;
    }
    if end == first
        || !(first..end).any(|at| typed.pieces[at].sort == Sort::Word)
        || end - first > 7
    {
        return None;
    }
    let noun = |at: usize| nouns::kinds(&typed.lower(at));
    let last = (first..end).rev().find(|&at| !noun(at).is_empty());
    let own = kind_word(&typed.lower(first));
    let joined =
        (first..end).any(|at| typed.pieces[at].is_mark("/&+") || typed.says(at, &["and", "plus"]));
    let mut is_known = true;
    let mut begin = first;
    let kinds: Vec<&'static str> = match (own, last) {
        (Some(kind), Some(last)) if last > first && !joined => {
            let of_noun = noun(last);
            if matches!(kind, "living" | "unfinished" | "outbuilding" | "low" | "stair" | "open") {
                begin = first + 1;
                vec![kind]
            } else if of_noun.contains(&kind) {
                vec![kind]
            } else if kind == "storage" && !typed.says(last, &["room"]) {
                vec![of_noun[0]]
            } else if kind == "storage" {
                vec![kind]
            } else {
                vec![of_noun[0], kind]
            }
        }
        (Some(kind), _) => {
            let describes = matches!(kind, "living" | "unfinished" | "outbuilding" | "storage");
            begin = first + usize::from(describes && end > first + 1 && !joined);
            vec![kind]
        }
        (None, Some(last)) => {
            let is_house = typed.says(last, &["house"]);
            let before = last > first && typed.says(last - 1, &nouns::HOUSES_APART);
            let is_warm = (first..end).any(|at| {
                typed.says(at, &["four", "all", "heated"]) || typed.pieces[at].text == "4"
            });
            let is_open_room = (first..end)
                .any(|at| typed.says(at, &["season", "screened", "screen"]))
                && !is_warm;
            let reaches = (first..end).any(|at| {
                typed.says(at, &["two-story", "two-storey", "double-height", "two-level"])
                    || typed.says(at, &["two", "double"])
                        && typed.says(at + 1, &["story", "storey", "height"])
            });
            let may_be_open =
                typed.says(last, &["entry", "entryway", "foyer", "hall", "hallway", "room"]);
            if reaches && may_be_open {
                begin = last;
                vec!["open"]
            } else if is_house && before {
                vec!["outbuilding"]
            } else if joined {
                let known = (first..=last).filter_map(|at| noun(at).first().copied());
                let mut all: Vec<&'static str> = known.collect();
                all.dedup();
                all
            } else if is_open_room && noun(last)[0] == "living" {
                vec!["porch"]
            } else {
                noun(last).to_vec()
            }
        }
        (None, None) if (first..end).any(|at| typed.says(at, &["ceiling", "ceilings", "roof"])) => {
            return None;
        }
        (None, None) => {
            is_known = false;
            vec!["living", "storage", "outbuilding"]
        }
    };
    // Words behind the noun are a remark, unless they belong to what it is called.
    let mut stop = end;
    if let Some(last) = last.filter(|last| end > last + 3) {
        stop = last + 1;
    }
    // `porch front 6x10`: the front porch.
    let sided = typed.says(stop, &["front", "rear", "back", "side"])
        && length_at(&typed.pieces, stop + 1).is_some_and(|one| by(typed, one.end));
    let mut name = typed.text(begin, stop).to_lowercase();
    if sided && stop == begin + 1 {
        name = format!("{} {name}", typed.lower(stop));
        stop += 1;
    }
    let name = name.trim_matches([' ', '-', '/', '&', '.', '+']).to_owned();
    (!name.is_empty()).then(|| Called {
        kinds,
        name: capitalized(&name),
        end: stop,
        is_apart,
        is_known,
        is_sure: joined && is_known,
    })
}

/// Whether the piece stands between the two lengths of a size.
pub(super) fn by(typed: &Typed<'_>, at: usize) -> bool {
    typed.says(at, &["x", "by"]) || typed.piece(at).is_some_and(|mark| mark.is_mark("×*"))
}

/// The two lengths of the size that begins at this piece, and the index after it.
fn size_at(typed: &Typed<'_>, at: usize) -> Option<((Measure, Measure), usize)> {
    // `6 x 8 in yard`: no inches.
    let whole = |at: usize| {
        let measure = length_at(&typed.pieces, at)?;
        let is_place = typed.says(measure.end - 1, &["in"])
            && measure.end == at + 2
            && typed
                .piece(measure.end)
                .is_some_and(|next| next.sort == Sort::Word && !by(typed, measure.end));
        let text = &typed.pieces[at].text;
        match text.parse::<Length>().ok().filter(|_| is_place) {
            Some(length) => {
                Some(Measure { end: at + 1, length, text: text.clone(), has_unit: false })
            }
            None => Some(measure),
        }
    };
    // `12' wide by 8' deep`
    let after = |measure: &Measure| {
        measure.end
            + usize::from(
                typed.says(measure.end, &["wide", "deep", "long", "across", "w", "l", "d"]),
            )
    };
    let one = whole(at)?;
    let mark = after(&one);
    let two = whole(mark + 1).filter(|_| by(typed, mark))?;
    let end = after(&two);
    Some(((one, two), end))
}

/// Reads what is behind the name.
fn rest(typed: &Typed<'_>, called: &Called) -> Rest {
    let mut rest = Rest::default();
    let mut run: Option<usize> = None;
    let mut at = called.end;
    while at < typed.pieces.len() {
        if typed.pieces[at].is_mark("()[]{}") {
            rest.take(typed, run.take(), at);
            rest.has_parentheses = true;
            at += 1;
            continue;
        }
        if typed.pieces[at].is_mark(",;:–—-") && !typed.pieces[at].touches {
            rest.take(typed, run.take(), at);
            at += 1;
            continue;
        }
        if typed.pieces[at].is_mark(",;:") {
            rest.take(typed, run.take(), at);
            at += 1;
            continue;
        }
        // `garage attached, right side`: nearly every garage is.
        let is_filler = typed.says(at, &["attached", "att"]) && !typed.says(at + 1, &["to", "at"]);
        if run.is_none() && is_filler {
            at += 1;
            continue;
        }
        let end = rest
            .size(typed, at)
            .or_else(|| rest.face(typed, at))
            .or_else(|| rest.apart(typed, at))
            .or_else(|| rest.unfinished(typed, at))
            .or_else(|| rest.bare(typed, at));
        if let Some(end) = end {
            rest.take(typed, run.take(), at);
            at = end;
            continue;
        }
        run.get_or_insert(at);
        at += 1;
    }
    rest.take(typed, run, at);
    // What stands by itself needs no place.
    if rest.is_apart || called.is_apart {
        let (places, others) = std::mem::take(&mut rest.left)
            .into_iter()
            .partition(|said: &String| is_plain_place(said));
        rest.left = others;
        rest.remarks.extend::<Vec<String>>(places);
    }
    rest
}

/// Whether words that are left say where something is, and nothing else.
fn is_plain_place(said: &str) -> bool {
    let matters = [
        "recorded", "record", "county", "card", "assessor", "not", "no", "counted", "within",
        "start", "veneer", "brick", "measured",
    ];
    super::cut(said)
        .iter()
        .all(|piece| piece.sort == Sort::Word && !piece.is_word(&matters) || piece.is_mark("-'’&"))
}

impl Rest {
    /// Takes the pieces from `first` to `end` as what is left: a remark, or something that another rule may read.
    fn take(&mut self, typed: &Typed<'_>, first: Option<usize>, end: usize) {
        let Some(first) = first else { return };
        let pieces = &typed.pieces[first..end];
        let said = typed
            .text(first, end)
            .trim_matches([' ', ',', ';', ':', '.', '-', '(', ')'])
            .to_owned();
        if said.is_empty()
            || pieces.iter().all(|piece| piece.is_word(&["attached", "att", "and", "is", "it"]))
        {
            return;
        }
        let matters = [
            "not", "no", "dont", "don't", "counted", "count", "start", "within", "below", "grade",
            "recorded", "detached", "veneer", "brick", "siding", "corner", "low", "ceiling",
            "unheated", "excluded", "included", "exclude", "include",
        ];
        let places = [
            "in", "at", "on", "off", "by", "behind", "beside", "next", "near", "over", "above",
            "under", "to", "from", "of", "front", "rear", "back", "side", "left", "right", "north",
            "south", "east", "west", "county", "record", "card", "assessor", "along", "against",
            "touching", "abutting", "between", "attached", "ne", "nw", "se", "sw", "flush", "set",
        ];
        let is_corner =
            typed.attempt.beside.corners.iter().any(|corner| corner.eq_ignore_ascii_case(&said));
        let lacks = [
            "roof", "rail", "railing", "steps", "floor", "door", "doors", "windows", "footing",
            "power",
        ];
        let is_without =
            matches!(pieces, [no, what] if no.is_word(&["no", "without"]) && what.is_word(&lacks));
        let is_made_of = matches!(pieces, [of] if of.is_word(&["brick", "stone"]));
        let is_remark = is_without
            || is_made_of
            || !is_corner
                && pieces.iter().all(|piece| {
                    !piece.is_number()
                        && piece.sort != Sort::Text
                        && !piece.is_word(&matters)
                        && !piece.is_word(&places)
                });
        if is_remark { self.remarks.push(said) } else { self.left.push(said) }
    }

    fn size(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        if self.size.is_some()
            || at > 0 && typed.says(at - 1, &["recorded", "county", "record", "card", "corner"])
        {
            return None;
        }
        let first = at
            + usize::from(
                typed.says(at, &["size", "measures", "measuring", "is", "about", "approx"]),
            );
        let (size, end) = size_at(typed, first)?;
        self.size = Some(size);
        Some(end)
    }

    /// `inside`, `measured to the studs`, `frame`: to which face it was measured.
    fn face(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        let leads = [
            "measured",
            "taped",
            "to",
            "from",
            "the",
            "at",
            "all",
            "dims",
            "dimensions",
            "measure",
            "measurements",
            "is",
            "was",
        ];
        let mut face = at;
        while typed.says(face, &leads) {
            face += 1;
        }
        let word = face_word(&typed.lower(face))?;
        let is_said = (at..face).any(|at| typed.says(at, &["measured", "taped", "measure", "to"]));
        let closers = [
            "wall",
            "walls",
            "face",
            "faces",
            "measure",
            "measured",
            "measurements",
            "measurement",
            "dims",
            "dimensions",
            "only",
            "taped",
            "to",
            "studs",
            "stud",
            "frame",
        ];
        let mut end = face + 1;
        while typed.says(end, &closers) {
            end += 1;
        }
        let ends = typed.piece(end).is_none_or(|next| next.is_mark(",;:()[]") || next.is_number());
        if self.face.is_some() || !(is_said || ends) {
            return None;
        }
        self.face = Some(word);
        Some(end)
    }

    /// `stands apart`, `by itself`: it does not touch the house.
    fn apart(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        let mut first = at;
        while typed.says(
            first,
            &[
                "it", "that", "which", "is", "stands", "stand", "standing", "sits", "sitting",
                "set", "off", "all",
            ],
        ) {
            first += 1;
        }
        let says = |words: &[&str]| {
            words.iter().enumerate().all(|(i, word)| typed.says(first + i, &[word]))
        };
        let all: [&[&str]; 16] = [
            &["apart", "from", "the", "house"],
            &["apart", "from", "house"],
            &["apart"],
            &["alone"],
            &["by", "itself"],
            &["on", "its", "own"],
            &["free-standing"],
            &["freestanding"],
            &["free", "standing"],
            &["detached"],
            &["det"],
            &["separate"],
            &["separately"],
            &["unattached"],
            &["not", "attached"],
            &["not", "connected"],
        ];
        let words = all.iter().find(|words| says(words))?;
        // `detached` as the format has it is read by itself.
        self.is_apart = true;
        Some(first + words.len())
    }

    /// `unfinished`, `no heat`: no living area.
    fn unfinished(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        let two =
            typed.says(at, &["not", "no"]) && typed.says(at + 1, &["finished", "heat", "heated"]);
        let end = at + 1 + usize::from(two);
        if !two && !typed.says(at, &["unfinished", "unheated", "unconditioned", "uninsulated"]) {
            return None;
        }
        self.unfinished = Some(typed.text(at, end).trim_end_matches([')', ',', ' ']).to_owned());
        Some(end)
    }

    /// `no brick`, `vinyl siding`: walls without brick or stone.
    fn bare(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        let no = typed.says(at, &["no", "without"])
            && typed.says(at + 1, &["brick", "veneer", "stone", "masonry"]);
        let describes =
            usize::from(typed.says(at, &["vinyl", "wood", "wooden", "aluminum", "lap", "cedar"]));
        let end = if no {
            at + 2
        } else if typed.says(at + describes, &["siding", "stucco", "clapboard"]) {
            at + describes + 1
        } else {
            return None;
        };
        self.is_bare = true;
        Some(end)
    }
}

/// The face that a word names.
pub(super) fn face_word(word: &str) -> Option<&'static str> {
    Some(match word {
        "inside" | "interior" | "inner" | "indoors" | "drywall" | "plaster" | "sheetrock" => {
            "inside"
        }
        "outside" | "exterior" | "outer" | "outdoors" => "outside",
        "frame" | "framing" | "studs" | "stud" | "sheathing" | "framed" => "frame",
        _ => return None,
    })
}
