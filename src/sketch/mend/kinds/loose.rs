//! Spaces and levels without a name, with a size or a remark where the name is expected, or with words that count.

use super::super::compass::way_word;
use super::super::pieces::{Piece, Sort};
use super::heading::begins_as_call;
use super::levels::capitalized;
use super::measure::{area_from, length_at};
use super::spaces::{is_space, kind_word};
use super::{Answer, Rule, Typed, first_of, is_text, quoted, remark};
use crate::diagnostic::Word;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        ways_of_other_languages,
        same_level,
        named,
        detached,
        size_for_name,
        remark_after_a_kind,
        front_porch,
        dont_count,
        counted_yes,
        brick_veneer,
        not_heated,
        numbered_level,
        depth_alone,
        outline_with_remark,
        parcel,
    ];
    first_of(rules, typed)
}

/// The format's word for what a space is called, and the index after it: `stairs`, `sun room`, `Veranda`.
pub(super) fn kind_at_start(typed: &Typed<'_>) -> Option<(&'static str, usize)> {
    let word = typed.lower(0);
    if let Some(kind) = kind_word(&word) {
        return Some((kind, 1));
    }
    let kind = match word.as_str() {
        "stairs" | "staircase" | "stairway" | "stairwell" | "treppe" | "escalera" => "stair",
        "veranda" | "verandah" | "véranda" | "portico" | "stoop" | "lanai" => "porch",
        "barn" | "shed" | "workshop" | "stable" | "greenhouse" | "scheune" => "outbuilding",
        "foyer" | "void" | "atrium" => "open",
        "house" | "sunroom" | "addition" | "extension" => "living",
        "sun" | "family" | "great" | "guest" | "dining" if typed.says(1, &["room", "house"]) => {
            return Some(("living", 2));
        }
        "carriage" if typed.says(1, &["house"]) => return Some(("outbuilding", 2)),
        _ => return None,
    };
    Some((kind, 1))
}

/// `garage "Garage" start Ost 12 m`: the way of a place in another language.
fn ways_of_other_languages(typed: &Typed<'_>) -> Option<Answer> {
    let start = typed.find(2, &["start", "starts"]).filter(|_| is_text(typed.piece(1)))?;
    let mut changed = false;
    let mut pieces = typed.pieces.clone();
    for (at, piece) in pieces.iter_mut().enumerate().skip(start + 1) {
        let way = way_word(&piece.text).filter(|_| piece.text.chars().count() > 1);
        if let Some(way) = way.filter(|way| *way != piece.text.to_lowercase())
            && length_at(&typed.pieces, at + 1).is_some()
        {
            way.clone_into(&mut piece.text);
            changed = true;
        }
    }
    changed.then(|| {
        Answer::line(super::join(&pieces), "the ways are `north`, `east`, `south` and `west`")
    })
}

/// The answer to a level that is said to be the same as the one below: its walls once more, or how to type them.
pub(super) fn copied(typed: &Typed<'_>, opens_level: bool, help: String) -> Answer {
    const CAUSE: &str = "nothing is copied from another level";
    const PLAIN: [&str; 36] = [
        "same",
        "identical",
        "ditto",
        "as",
        "to",
        "of",
        "is",
        "the",
        "a",
        "copy",
        "like",
        "repeat",
        "level",
        "floor",
        "story",
        "storey",
        "first",
        "ground",
        "main",
        "1st",
        "below",
        "one",
        "house",
        "downstairs",
        "footprint",
        "size",
        "outline",
        "shape",
        "walls",
        "dimensions",
        "area",
        "it",
        "first-floor",
        "exactly",
        "unfinished",
        "finished",
    ];
    let is_below = typed.find(0, &["basement", "cellar", "bsmt"]).is_some_and(|at| at <= 1);
    let help = match is_below && opens_level {
        true => "write `level \"Basement\" below grade`, below it `unfinished \"Basement\"`, or `living` if it is finished, and type its sides again, one on each line".to_owned(),
        false => help,
    };
    let walls = &typed.attempt.beside.walls;
    let is_same = |at: &usize| {
        typed.says(*at, &["same", "identical", "ditto", "like", "repeat", "copy", "duplicate"])
    };
    let same = (0..typed.pieces.len()).find(is_same).or_else(|| typed.find(1, &["as"]));
    let plain = same.is_some_and(|same| {
        (same..typed.pieces.len()).all(|at| {
            typed.says(at, &PLAIN)
                || typed.pieces[at].is_mark(",.;:()-–")
                || typed.pieces[at].text == "1"
                || typed.pieces[at].touches && typed.says(at, &["st"])
        })
    });
    if walls.is_empty() || !plain {
        return Answer::say(CAUSE, help);
    }
    let face = &typed.attempt.beside.walls_face;
    // Where walls follow they are typed already.
    let follow = super::super::begins_as_side(&typed.attempt.beside.after);
    let again = if follow { String::new() } else { format!("\n{}", walls.join("\n")) };
    let cause = match follow {
        true => format!("{CAUSE}: the walls that follow are its own"),
        false => format!("{CAUSE}: its walls are typed again"),
    };
    let lines = |kind: &str| format!("{kind} \"Upper rooms\"{face}{again}");
    if !opens_level {
        return Answer::line(lines("living"), cause);
    }
    let stop = same.unwrap_or(0);
    let named = typed.says(0, &["level"]) && is_text(typed.piece(1));
    let first = usize::from(typed.says(0, &["finished", "unfinished", "full", "partial"]));
    let end = (first..stop)
        .take_while(|&at| !typed.pieces[at].is_mark(",:;=-–") && !typed.says(at, &["is", "the"]))
        .count();
    let name = match (named, end) {
        (true, _) => typed.text(1, 2).to_owned(),
        (false, 0) => quoted("Second floor"),
        (false, end) => {
            let words = typed.text(first, first + end).to_lowercase();
            quoted(&super::levels::capitalized(&words))
        }
    };
    let grade = if is_below { " below grade" } else { "" };
    let kinds: &[&str] = match typed.lower(0).as_str() {
        "finished" => &["living"],
        "unfinished" => &["unfinished"],
        _ if typed.find(1, &["unfinished"]).is_some() => &["unfinished"],
        _ if typed.find(1, &["finished"]).is_some() => &["living"],
        _ if is_below || typed.says(first, &["attic", "loft"]) => &["living", "unfinished"],
        _ => &["living"],
    };
    let of_kind = |kind: &&str| {
        let rooms = if is_below { "Lower rooms" } else { "Upper rooms" };
        format!("level {name}{grade}\n{}", lines(kind).replacen("Upper rooms", rooms, 1))
    };
    Answer::Lines(kinds.iter().map(of_kind).collect(), cause)
}

/// `the same as the first floor`, `as below` on a line of its own under a level: as a comment alone it would leave the
/// level empty.
pub(super) fn copied_level(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["the"]));
    let same = typed.says(first, &["same", "identical", "copy", "duplicate", "repeat"]);
    let at = first + usize::from(same);
    let as_one = typed.says(at, &["as", "to", "of"]);
    let words = [
        "the",
        "level",
        "floor",
        "story",
        "first",
        "second",
        "ground",
        "main",
        "lower",
        "upper",
        "downstairs",
        "upstairs",
        "below",
        "above",
        "1st",
        "2nd",
        "one",
        "it",
        "under",
    ];
    let is_ordinal = |at: usize| {
        typed.pieces[at].is_number() && typed.pieces[at].text.len() == 1
            || typed.pieces[at].touches && typed.says(at, &["st", "nd", "rd", "th"])
    };
    let only = (at + 1..typed.pieces.len()).all(|at| typed.says(at, &words) || is_ordinal(at));
    let names = typed.pieces.len() > at + 1;
    let is_below_a_level = typed.attempt.beside.before.to_lowercase().starts_with("level ");
    let alone = typed.pieces.len() == 1 && typed.says(0, &["same", "ditto", "identical", "idem"]);
    (alone && is_below_a_level || as_one && only && names && is_below_a_level).then(|| {
        copied(typed, false, "write its space here, as `living \"Upper rooms\"`, and type its sides again, one on each line".to_owned())
    })
}

/// `level "Upper" same as ground floor`, `upstairs same as downstairs`: nothing is copied from another level.
fn same_level(typed: &Typed<'_>) -> Option<Answer> {
    let levels = [
        "level",
        "floor",
        "story",
        "storey",
        "upstairs",
        "downstairs",
        "upper",
        "lower",
        "second",
        "first",
        "third",
        "2nd",
        "3rd",
        "same",
        "ground",
        "main",
        "top",
    ];
    let is_space = typed.says(0, &["living", "house", "rooms", "unfinished"]);
    let begins =
        is_space || typed.says(0, &levels) || typed.piece(0).is_some_and(super::digits::is_small);
    // `level "Second" same`, `level "Second", ditto`
    let is_last =
        typed.pieces.last().is_some_and(|last| last.is_word(&["same", "ditto", "identical"]));
    let only_marks = typed.pieces.iter().skip(2).rev().skip(1).all(|piece| piece.is_mark(",:-–"));
    if typed.says(0, &["level"]) && is_text(typed.piece(1)) && is_last && only_marks {
        return Some(copied(
            typed,
            true,
            format!(
                "write `{}`, below it its space, as `living \"Rooms\"`, and type its sides again, one on each line",
                typed.text(0, 2)
            ),
        ));
    }
    // `two floors alike`, `both levels identical`
    let alike = ["alike", "identical", "same", "equal"];
    let of_both = typed.says(0, &["both", "two", "all", "2"])
        && typed.says(1, &["floors", "levels", "stories", "storeys"]);
    if of_both && typed.pieces.last().is_some_and(|last| last.is_word(&alike)) {
        return Some(Answer::say(
            "nothing is copied from another level",
            "type each level with `level` and its name, below it its space, as `living \"Upper rooms\"`, and the sides of each, one on each line",
        ));
    }
    let at = typed.find(0, &["same", "like", "identical", "repeat"]).or_else(|| {
        let copy = typed.find(0, &["copy", "duplicate"])?;
        typed.says(copy + 1, &["of"]).then_some(copy)
    });
    let at = at?;
    let named = (at..typed.pieces.len()).any(|at| typed.says(at, &levels[..8]));
    let as_well = typed.says(at + 1, &["as", "to", "like"]) || typed.says(at, &["like", "repeat"]);
    // Its sides follow: nothing is to be copied.
    let sides_follow = super::super::begins_as_side(&typed.attempt.beside.after);
    if is_space && as_well && at == 2 && is_text(typed.piece(1)) && sides_follow {
        return Some(Answer::line(
            format!("{}  # {}", typed.text(0, at), typed.rest(at)),
            "nothing is copied from another level; the sides of this space follow below",
        ));
    }
    (begins && as_well && (named || at == 0 && typed.find(1, &["floor", "level", "below", "above"]).is_some()) || begins && at > 0 && as_well).then(|| {
        copied(typed, true, "write `level` and its name, below it its space, as `living \"Upper rooms\"`, and type its sides again, one on each line".to_owned())
    })
}

/// `garage called "Garage" start east 40'`, `porch named Side`: words before the name.
fn named(typed: &Typed<'_>) -> Option<Answer> {
    let (kind, mut at) = kind_at_start(typed)?;
    let says = typed.says(at, &["called", "named", "labeled", "labelled", "name"]);
    at += 1;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(":=")) || typed.says(at, &["is", "the"]) {
        at += 1;
    }
    typed.piece(at).filter(|_| says)?;
    Some(Answer::line(
        format!("{kind} {}", typed.rest(at)),
        "the name comes right after what the space is",
    ))
}

/// `detached garage`, `detached garage "Shop" recorded 400 sq ft`: `detached` goes after the name.
fn detached(typed: &Typed<'_>) -> Option<Answer> {
    let begins = ["detached", "freestanding", "free-standing", "separate", "stand-alone"];
    let kind = kind_word(&typed.lower(1)).filter(|_| typed.says(0, &begins))?;
    let has_name = is_text(typed.piece(2));
    let name = if has_name { typed.text(2, 3).to_owned() } else { quoted(&capitalized(kind)) };
    let rest = typed.rest(2 + usize::from(has_name));
    let keyword = ["recorded", "not", "measured", "counted"];
    (rest.is_empty() || typed.says(2 + usize::from(has_name), &keyword)).then(|| {
        Answer::line(
            format!("{kind} {name} detached {rest}").trim_end(),
            "a space begins with its kind, then its name; what stands by itself is `detached`",
        )
    })
}

/// `garage 24x22 start east 40'`, `stairs 10' 2" x 3' 4"`: a size where the name is expected.
fn size_for_name(typed: &Typed<'_>) -> Option<Answer> {
    let (kind, at) = kind_at_start(typed)?;
    let one = length_at(&typed.pieces, at)?;
    let by = typed.says(one.end, &["x", "by"])
        || typed.piece(one.end).is_some_and(|mark| mark.is_mark("×*"));
    let two = length_at(&typed.pieces, one.end + 1).filter(|_| by)?;
    if typed.line.contains('"') && is_text(typed.piece(two.end)) {
        return None;
    }
    let gone = ["gone", "torn", "removed", "demolished", "razed", "burned", "destroyed"];
    if typed.find(two.end, &gone).is_some() {
        return None;
    }
    let known = ["start", "from", "within", "detached", "recorded", "not", "measured", "counted"];
    let ends = two.end == typed.pieces.len() || typed.says(two.end, &known);
    let name = capitalized(&typed.lower(0));
    let name = if at == 2 { format!("{name} {}", typed.lower(1)) } else { name };
    if ends {
        return Some(Answer::line(
            format!("{kind} \"{name}\" {}", typed.rest(at)),
            "the name comes first, with a `\"` on each side",
        ));
    }
    let space = super::assembled::read(typed)?;
    Some(Answer::say(
        "the line of a space has its name and where it stands, and its size is typed as its sides",
        super::placed::ask(typed, &space),
    ))
}

/// `GARAGE (attached)`, `upper level (finished)`, `main house (walk starts SW)`: a remark, and no name.
fn remark_after_a_kind(typed: &Typed<'_>) -> Option<Answer> {
    let open = (1..typed.pieces.len().min(5)).find(|&at| typed.pieces[at].is_mark("(["))?;
    let last = typed.pieces.len() - 1;
    let said = typed.text(open + 1, last);
    let words = |from: usize, end: usize| {
        typed.pieces[from..end].iter().all(|piece| piece.sort == Sort::Word || piece.is_mark("-"))
    };
    let begins = kind_at_start(typed).is_some()
        || typed.says(
            0,
            &[
                "third",
                "top",
                "main",
                "upper",
                "lower",
                "ground",
                "first",
                "second",
                "upstairs",
                "downstairs",
                "basement",
                "level",
                "floor",
            ],
        );
    let meant = [
        "inside",
        "outside",
        "frame",
        "measured",
        "not",
        "counted",
        "detached",
        "below",
        "grade",
        "within",
        "recorded",
        "interior",
        "exterior",
        "taped",
        "gone",
        "drywall",
        "studs",
        "unheated",
        "unfinished",
    ];
    let speaks = typed.pieces[open..].iter().any(|piece| piece.is_word(&meant));
    let has_length = typed.pieces[open..].iter().any(|piece| piece.is_mark("'\"$"));
    if !begins
        || !typed.pieces[last].is_mark(")]")
        || !words(0, open)
        || said.is_empty()
        || speaks
        || has_length && !typed.says(0, &["level", "floor"])
        || area_from(&typed.pieces, open).is_some()
    {
        return None;
    }
    let head = typed.text(0, open);
    let is_known = kind_word(&typed.lower(0)).is_some() && open == 1;
    let head = if is_known {
        format!("{} {}", typed.lower(0), quoted(&capitalized(&typed.lower(0))))
    } else {
        head.to_owned()
    };
    Some(Answer::line(
        format!("{head}  # {said}"),
        "anything else goes into a comment at the end of the line",
    ))
}

/// `front porch start east 10'`: the kind comes first.
fn front_porch(typed: &Typed<'_>) -> Option<Answer> {
    let kind = kind_word(&typed.lower(1))
        .filter(|_| typed.says(0, &["front", "left", "right", "back"]))?;
    let known = ["start", "from", "within", "detached", "recorded", "not", "measured"];
    let ends = typed.pieces.len() == 2 || typed.says(2, &known);
    ends.then(|| {
        let name = quoted(&capitalized(&typed.text(0, 2).to_lowercase()));
        Answer::line(
            format!("{kind} {name} {}", typed.rest(2)).trim_end(),
            "a space begins with its kind, then its name with a `\"` on each side",
        )
    })
}

/// `porch "Porch" dont count`, `not incl`, `do not include`: left out of the total.
fn dont_count(typed: &Typed<'_>) -> Option<Answer> {
    if !is_space(typed) || !is_text(typed.piece(1)) {
        return None;
    }
    let count = ["count", "counted", "include", "included", "incl", "inc", "add"];
    let mut at = 2;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(",(-–;:")) {
        at += 1;
    }
    let first = at;
    let no = typed.says(at, &["dont", "don't", "not", "isn't", "isnt", "never"]);
    let do_not = typed.says(at, &["do", "is", "should"]) && typed.says(at + 1, &["not"]);
    at += if do_not { 2 } else { 1 };
    at += usize::from(typed.says(at, &["be"]));
    if !(no || do_not) || !typed.says(at, &count) {
        return None;
    }
    let plain = typed.says(first, &["not"]) && typed.says(at, &["counted"]) && first == 2;
    let ends = typed.pieces[at + 1..].iter().all(|piece| {
        piece.is_mark(").!,;") || piece.is_word(&["it", "this", "in", "total", "the", "area"])
    });
    (!plain && ends).then(|| {
        Answer::line(
            format!("{} not counted", typed.text(0, 2)),
            "what is left out of the total is `not counted`",
        )
    })
}

/// `porch "Porch" counted yes`: `counted` says it alone.
fn counted_yes(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(2, &["counted", "count", "counts"]).filter(|_| is_space(typed))?;
    let mut yes = at + 1;
    while typed.piece(yes).is_some_and(|mark| mark.is_mark(":=")) {
        yes += 1;
    }
    (typed.says(yes, &["yes", "y", "true"]) && yes + 1 == typed.pieces.len()).then(|| {
        Answer::line(
            format!("{} counted", typed.text(0, at)),
            "what counts in the total is `counted`",
        )
    })
}

/// `living "House" brick veneer 4"`: the thickness alone.
fn brick_veneer(typed: &Typed<'_>) -> Option<Answer> {
    let kinds = ["brick", "stone", "stucco", "masonry", "with", "has"];
    let at = typed.find(2, &["veneer"]).filter(|at| is_space(typed) && *at > 2)?;
    let mut first = at;
    while first > 2 && (typed.says(first - 1, &kinds) || typed.pieces[first - 1].is_mark(",(")) {
        first -= 1;
    }
    let measure = length_at(&typed.pieces, at + 1).filter(|_| first < at)?;
    Some(Answer::line(
        format!("{} veneer {} {}", typed.text(0, first), measure.text, typed.rest(measure.end))
            .trim_end(),
        "a veneer is given by its thickness alone",
    ))
}

/// `garage "Garage" from corner "step", not heated`, `living "House" heated`: says nothing about the area.
fn not_heated(typed: &Typed<'_>) -> Option<Answer> {
    if !is_space(typed) || !is_text(typed.piece(1)) {
        return None;
    }
    let says = [
        "not",
        "heated",
        "unheated",
        "cooled",
        "conditioned",
        "insulated",
        "un-heated",
        "and",
        "slab",
        "on",
        "concrete",
        "vinyl",
        "wood",
        "frame",
    ];
    let at = typed.find(2, &["heated", "unheated", "cooled", "conditioned", "insulated"])?;
    let mut first = at;
    while first > 2 && (typed.says(first - 1, &["not"]) || typed.pieces[first - 1].is_mark(",(-–"))
    {
        first -= 1;
    }
    let rest = &typed.pieces[at..];
    let only = rest.iter().all(|piece| piece.is_word(&says[..8]) || piece.is_mark("),."));
    let is_garage = !typed.says(0, &["living"]) || !typed.says(at - 1, &["not"]);
    (only && is_garage && !typed.says(at, &["unheated"]) || only && !typed.says(0, &["living"]))
        .then(|| {
            let said = typed.rest(first).trim_start_matches([',', '(', '-', '–', ' ']);
            Answer::line(
                format!("{}  # {}", typed.text(0, first), remark(said).trim_end_matches(')')),
                "this says nothing about the area; anything else goes into a comment at the end of the line",
            )
        })
}

/// `2nd floor "Upper"`, `level two "Upper"`, `1. OG`, `2nd`: levels with a number.
fn numbered_level(typed: &Typed<'_>) -> Option<Answer> {
    let number = typed.piece(0).filter(|number| super::digits::is_small(number));
    let alone = ["main", "upper", "lower", "ground", "upstairs", "downstairs", "top"];
    let colon = typed.pieces.len() == 2 && typed.piece(1).is_some_and(|mark| mark.is_mark(":."));
    if typed.says(0, &alone) && colon {
        return Some(Answer::line(
            format!("level {}", quoted(typed.text(0, 1))),
            "a level is `level` and its name, with a `\"` on each side",
        ));
    }
    let words = [
        "floor",
        "level",
        "story",
        "storey",
        "flr",
        "og",
        "stock",
        "obergeschoss",
        "piso",
        "planta",
        "étage",
        "etage",
        "fl",
    ];
    if number.is_some() {
        let mut at = 1;
        while typed.piece(at).is_some_and(|mark| mark.is_mark(".º°"))
            || typed.says(at, &["st", "nd", "rd", "th", "er", "do", "o", "a"])
        {
            at += 1;
        }
        if typed.says(at, &words) {
            let end = at + 1;
            if end == typed.pieces.len() {
                return Some(Answer::line(
                    format!("level {}", quoted(typed.line)),
                    "a level is `level` and its name, with a `\"` on each side",
                ));
            }
            if is_text(typed.piece(end)) && end + 1 == typed.pieces.len() {
                return Some(Answer::line(
                    format!("level {}  # {}", typed.rest(end), typed.text(0, end)),
                    "a level has one name",
                ));
            }
        }
        return None;
    }
    let count = ["one", "two", "three", "1", "2", "3"];
    let named = typed.says(0, &words[..4]) && typed.says(1, &count) && is_text(typed.piece(2));
    (named && typed.pieces.len() == 3).then(|| {
        Answer::line(
            format!("level {}  # {}", typed.rest(2), typed.text(0, 2)),
            "a level has one name",
        )
    })
}

/// `below grade`, `basement below grade`, `walkout basement`: the depth goes on the line of its level.
fn depth_alone(typed: &Typed<'_>) -> Option<Answer> {
    let below = typed.says(0, &["below"]) && typed.says(1, &["grade", "ground"]);
    if below && typed.pieces.len() == 2 {
        return Some(Answer::say(
            "`below grade` is said of a level",
            "write it at the end of the level's own line, as `level \"Basement\" below grade`",
        ));
    }
    let words =
        ["walkout", "walk-out", "daylight", "full", "partial", "finished", "unfinished", "crawl"];
    let at = usize::from(typed.says(0, &words));
    let is_basement = typed.says(at, &["basement", "cellar"]);
    let end = at + 1;
    let says_below =
        typed.says(end, &["below", "under"]) && typed.says(end + 1, &["grade", "ground"]);
    let ends = if says_below { end + 2 } else { end } == typed.pieces.len();
    (is_basement && ends && (says_below || at == 1)).then(|| {
        Answer::line(
            format!("level \"{}\" below grade", capitalized(&typed.text(0, end).to_lowercase())),
            "a level is `level` and its name; one in the ground is `below grade`",
        )
    })
}

/// `record outline "House" from card`: where the sketch comes from.
fn outline_with_remark(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["record", "plan", "map"]) && typed.says(1, &["outline"]);
    let rest = typed.pieces.get(3..).filter(|rest| begins && !rest.is_empty())?;
    let plain = rest.iter().all(|piece| piece.sort == Sort::Word || piece.is_mark("'’.,()"));
    (is_text(typed.piece(2)) && plain && !typed.says(3, &["of"])).then(|| {
        Answer::line(
            format!("{}  # {}", typed.text(0, 3), remark(typed.rest(3))),
            "where the outline comes from goes into a comment at the end of the line",
        )
    })
}

/// `deed "Parcel 7" 0.30 ha`, `plot "A" 0.2 acres`: the land.
pub(super) fn parcel(typed: &Typed<'_>) -> Option<Answer> {
    let begins = ["deed", "parcel", "plot", "tract", "grundstück", "terreno", "terrain"];
    // `parcel "Lot 9"`, `deed calls "Lot 7"` above its calls.
    let name = 1 + usize::from(typed.says(1, &["calls", "description", "of", "for"]));
    let is_name = typed.says(0, &begins) && is_text(typed.piece(name));
    if is_name && begins_as_call(&typed.attempt.beside.after) {
        let rest = typed.rest(name + 1);
        let comment = if rest.is_empty() { String::new() } else { format!("  # {rest}") };
        return Some(Answer::line(
            format!("lot {}{comment}", typed.text(name, name + 1)),
            "the land whose calls follow is `lot` and its name",
        ));
    }
    // `lot Parcel 14`: a name without its marks.
    let is_named = typed.says(0, &["lot"])
        && typed.says(1, &begins)
        && typed.piece(2).is_some_and(Piece::is_number)
        && typed.pieces.len() == 3;
    if is_named {
        return Some(Answer::line(
            format!("lot {}", quoted(typed.rest(1))),
            "a lot has its name with a `\"` on each side",
        ));
    }
    // `deed: beginning at an iron pin`: what its calls follow; a deed goes `due north`, a wall does not.
    let after = &typed.attempt.beside.after;
    let goes_due = after.get(..4).is_some_and(|first| first.eq_ignore_ascii_case("due "));
    let is_opening = typed
        .says(0, &["deed", "beginning", "begin", "commencing", "legal", "description"])
        && !typed.attempt.beside.in_lot
        && !typed.pieces.iter().any(Piece::is_number)
        && (begins_as_call(after) || goes_due);
    if is_opening {
        return Some(Answer::line(
            format!("lot \"Lot\"  # {}", remark(typed.line)),
            "the land whose calls follow is `lot` and its name",
        ));
    }
    // `plot:`, `Land`: the land, of which no more is said.
    let is_alone = typed.pieces[1..].iter().all(|mark| mark.is_mark(":.=-–"));
    let is_land = typed.says(0, &["plot", "land", "parcel", "tract", "site", "lot"]);
    if is_land && is_alone && (typed.pieces.len() > 1 || !typed.says(0, &["lot"])) {
        return Some(Answer::say(
            "land is drawn from its calls, the bearings and lengths of the deed or the plat, as a `lot`",
            "write `lot \"Lot\"`, after it `recorded` and its area if the deed or the county has it, and each call on a line below it, as `bearing N 0° 30' E 120'`; until you have the calls, put a `#` before this line",
        ));
    }
    let (first, _, _) = area_from(&typed.pieces, 1)?;
    let after = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=–-")));
    (typed.says(0, &begins) && (is_text(typed.piece(after)) || first == after)).then(|| {
        Answer::line(
            format!("lot {}", typed.rest(after)),
            "the land is `lot`, with its name and its area",
        )
    })
}

/// The line of a space that nothing else could read.
pub(super) fn left_over(typed: &Typed<'_>) -> Option<Answer> {
    if typed.says(0, &["level"]) {
        let name = if is_text(typed.piece(1)) { typed.text(1, 2).to_owned() } else { return None };
        return typed.find(2, &["start", "from", "recorded", "within", "detached"]).map(|_| {
            Answer::say(
                "a level has no place and no area of its own: its spaces have",
                format!("leave `level {name}` here, and write the rest on the line of each of its spaces"),
            )
        });
    }
    let (kind, at) = kind_at_start(typed).or_else(|| {
        // `2-car garage …`, `attached garage …`
        let at = (1..typed.pieces.len().min(4))
            .find(|&at| kind_word(&typed.lower(at)).is_some() || typed.says(at, &["gar"]))?;
        let describes = typed
            .find(0, &["car", "att", "attached", "det", "covered", "stall"])
            .is_some_and(|word| word < at);
        kind_word(&typed.lower(at))
            .or(Some("garage"))
            .filter(|_| describes)
            .map(|kind| (kind, at + 1))
    })?;
    let is_plain = typed.pieces.iter().any(|piece: &Piece| piece.sort == Sort::Word);
    let name = if is_text(typed.piece(at)) {
        typed.text(at, at + 1).to_owned()
    } else {
        quoted(&capitalized(if typed.says(0, &["house"]) { "house" } else { kind }))
    };
    let has_size = (at..typed.pieces.len()).any(|by| {
        (typed.says(by, &["x", "by"]) || typed.pieces[by].is_mark("×"))
            && length_at(&typed.pieces, by + 1).is_some()
    });
    let sides = if has_size { " with its sides on the lines below it" } else { "" };
    let is_known = matches!(
        typed.attempt.word,
        Some(Word::Unexpected | Word::StrayCharacter | Word::BadLength | Word::UnfinishedText)
    );
    let is_unknown = typed.attempt.word == Some(Word::UnknownWord) && typed.pieces.len() > 4;
    (is_plain && (is_known || is_unknown)).then(|| {
        Answer::say(
            "the line of a space has its name, its place and its area on the record; this line has something else",
            format!(
                "write `{kind} {name}`{sides}, then where it starts: {}; then, if they are to be said, `measured to` and its face, `veneer` and its thickness, `recorded` and the area on the record; anything else after a `#`",
                super::placed::starts(typed, kind, false)
            ),
        )
    })
}
