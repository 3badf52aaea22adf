//! Lines between the walls of a walk that name a jog, or the part of the house that a wall belongs to.

use super::super::compass::{along, by_compass, way_and_back};
use super::super::pieces::Piece;
use super::faces::STANDS;
use super::measure::{Measure, length_at};
use super::straight;
use super::walls::{WAYS, is_way};
use super::whereabouts::{self, direction};
use super::{Answer, Rule, Typed, first_of, kind_word, quoted};
use crate::geometry::compass::Direction;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        side_by_closing,
        side_with_an_aside,
        length_and_way,
        wall_of_a_jog,
        wall_of_a_space,
        wall_going_a_way,
        length_before_its_wall,
        wall_by_what_it_is_at,
        place_below_its_line,
    ];
    first_of(rules, typed)
}

/// `jog north by closing (fence)`, `jog north 2-1`: one wall after a word for what it is.
fn wall_of_a_jog(typed: &Typed<'_>) -> Option<Answer> {
    const JOG: [&str; 10] =
        ["jog", "jogs", "step", "steps", "return", "offset", "notch", "stub", "recess", "setback"];
    let at = 1 + usize::from(typed.says(1, &["out", "in", "back"]) && typed.pieces.len() > 3);
    let is_street = direction(typed, at).is_some_and(|way| way.is_some());
    let runs = is_way(typed, at) || is_street;
    let by_closing = typed.says(at + 1, &["by"]) && typed.says(at + 2, &["closing"]);
    // Other lengths are known to other rules.
    let is_dashed = typed.piece(at + 2).is_some_and(|dash| dash.is_mark("-–"));
    let number = typed.piece(at + 1).is_some_and(super::super::pieces::Piece::is_number)
        && (is_dashed || typed.line.contains('('));
    let others = (at + 1..typed.pieces.len()).any(|at| direction(typed, at).is_some());
    if !typed.says(0, &JOG) || !runs || !(by_closing || number) || others {
        return None;
    }
    let open = (at + 1..typed.pieces.len()).find(|&at| typed.pieces[at].is_mark("(,;"));
    let end = open.unwrap_or(typed.pieces.len());
    let said = super::plainly(typed.rest(end));
    let said = said.trim_matches(['(', ')', ',', ';', ' ']);
    let first = typed.lower(0);
    let comment = if said.is_empty() { first } else { format!("{first}, {said}") };
    if super::measures(said) {
        return None;
    }
    Some(Answer::line(
        format!("{}  # {comment}", typed.text(at, end)),
        "a wall begins with the way that it runs; what it is goes into a comment",
    ))
}

/// `garage front 21-10`, `garage front 20'` between walls: a wall of the walk, at the front of the garage.
fn wall_of_a_space(typed: &Typed<'_>) -> Option<Answer> {
    let beside = &typed.attempt.beside;
    let is_side = super::super::begins_as_wall;
    kind_word(&typed.lower(0))?;
    let side = direction(typed, 1)?;
    let at = 2 + usize::from(typed.says(2, &["wall", "side"]));
    let at = at + usize::from(typed.piece(at).is_some_and(|mark| mark.is_mark(":,-–=")));
    let length = one_length(typed, at)?;
    if !is_side(&beside.before) || !is_side(&beside.after) || length.end != typed.pieces.len() {
        return None;
    }
    let [one, two] = match side {
        Some(side) => [side.left().word(), side.right().word()],
        None => return None,
    };
    let text = length.text;
    let note = quoted(typed.text(0, 2));
    Some(Answer::say(
        "between the walls of a walk stands a wall, and this line says on which side of a space it is, and not which way it was walked",
        format!(
            "write `{one} {text} note {note}` or `{two} {text} note {note}`, as it was walked; a {} of its own follows after the last wall of this walk, with its own four walls",
            typed.lower(0)
        ),
    ))
}

/// `right side by closing`, `garage wall by closing`: where a wall stands that was not measured.
fn side_by_closing(typed: &Typed<'_>) -> Option<Answer> {
    let side = direction(typed, 0)?;
    let by = typed.find(1, &["by"]).filter(|by| typed.says(by + 1, &["closing"]))?;
    // `left wall north by closing` says which way it runs, too.
    let way = (1..by).find(|&at| typed.says(at, &WAYS));
    let is_told = typed.says(1, &STANDS) || way == Some(1) && !typed.says(0, &WAYS);
    let stands = is_told
        && (1..by).all(|at| {
            (at == 1 || Some(at) == way)
                || typed.says(at, &["of", "the", "house", "is", "going", "goes", "runs", "running"])
                || typed.pieces[at].is_mark(",:-–=")
        });
    let progress = straight::progress(typed, &typed.attempt.beside.last_walk);
    // The first wall of a walk has those below it, and two in a row of which neither reads have each other.
    let is_beside_a_wall = [&typed.attempt.beside.before, &typed.attempt.beside.after]
        .into_iter()
        .any(|line| super::super::begins_as_wall(line));
    let is_first = super::super::begins_as_named_space(&typed.attempt.beside.before);
    let is_in_a_walk = progress.is_open() || way.is_some() && (is_beside_a_wall || is_first);
    if !stands || by + 2 != typed.pieces.len() || !is_in_a_walk {
        return None;
    }
    if let Some(way) = way {
        let note = quoted(typed.text(0, way).trim_end_matches([',', ':', '-', '–', '=', ' ']));
        return Some(Answer::line(
            format!("{} by closing note {note}", way_and_back(&typed.lower(way))?.0),
            "a side begins with the way that it runs; where the wall stands goes in a note",
        ));
    }
    // From the street alone it runs back or front, on whichever side it stands.
    let [one, two] = match side {
        Some(side) => along(side.word()),
        None => along(way_and_back(&typed.lower(0))?.0),
    };
    let is_last = !super::super::begins_as_wall(&typed.attempt.beside.after) && progress.walls >= 3;
    let way = progress.way_back().filter(|way| is_last && [one, two].contains(&way.word()));
    let lines = match way {
        Some(way) => vec![format!("{} by closing", way.word())],
        None => [one, two].map(|way| format!("{way} by closing")).into(),
    };
    Some(Answer::Lines(
        lines,
        format!(
            "`{}` says where the wall stands, and a side begins with the way that you walked along it: {one} or {two}",
            typed.text(0, 2)
        ),
    ))
}

/// `left wall (from street) 40' 6"`: where a wall stands, with words between that say nothing more.
fn side_with_an_aside(typed: &Typed<'_>) -> Option<Answer> {
    direction(typed, 0)?;
    let open = typed.piece(2).filter(|open| open.is_mark("(")).map(|_| 2)?;
    let close = (open..typed.pieces.len()).find(|&at| typed.pieces[at].is_mark(")"))?;
    let words =
        ["from", "the", "street", "as", "seen", "facing", "looking", "at", "it", "house", "road"];
    let plain = (open + 1..close).all(|at| typed.says(at, &words));
    let length = length_at(&typed.pieces, close + 1)?;
    let fits = typed.says(1, &STANDS) && plain && length.end == typed.pieces.len();
    fits.then(|| super::answer(&format!("{} {}", typed.text(0, 2), length.text), typed.attempt))
        .flatten()
}

/// `30' south, to front corner of garage`: the length, the way, and what the wall is at.
fn length_and_way(typed: &Typed<'_>) -> Option<Answer> {
    let one = length_at(&typed.pieces, 0).filter(|one| one.has_unit)?;
    let way = typed.says(one.end, &WAYS[..4]).then(|| typed.lower(one.end))?;
    let set_off = typed.piece(one.end + 1)?.is_mark(",;(-–");
    let rest = one.end + 2..typed.pieces.len();
    let is_plain = |at: usize| {
        typed.pieces[at].sort == super::Sort::Word && !typed.says(at, &WAYS[..4])
            || typed.pieces[at].is_mark(",.()-–/&")
    };
    let says_data = rest.clone().any(|at| {
        typed.says(
            at,
            &["recorded", "record", "county", "card", "start", "closing", "then", "estimated"],
        )
    });
    let progress = straight::progress(typed, &typed.attempt.beside.last_walk);
    let is_in_a_walk =
        progress.is_open() || super::super::begins_as_wall(&typed.attempt.beside.after);
    let fits = set_off && rest.clone().all(is_plain) && !rest.is_empty() && !says_data;
    (fits && is_in_a_walk && !typed.is_in_lot()).then(|| {
        let said = super::remark(typed.rest(one.end + 1));
        Answer::line(
            format!("{way} {} note {}", one.text, quoted(&said)),
            "a side begins with the way that it runs; where the wall stands goes in a note",
        )
    })
}

/// What a wall may be told by: rooms, and things that stand in or against a house. The kinds of spaces are such words too.
const THINGS: [&str; 57] = [
    "kitchen",
    "dining",
    "living",
    "family",
    "great",
    "laundry",
    "utility",
    "mud",
    "mudroom",
    "bath",
    "bathroom",
    "bed",
    "bedroom",
    "master",
    "den",
    "study",
    "office",
    "foyer",
    "entry",
    "entrance",
    "hall",
    "closet",
    "nook",
    "pantry",
    "sunroom",
    "room",
    "bay",
    "chimney",
    "fireplace",
    "stairs",
    "steps",
    "stoop",
    "door",
    "doors",
    "window",
    "gate",
    "fence",
    "driveway",
    "patio",
    "house",
    "home",
    "addition",
    "wing",
    "ell",
    "breakfast",
    "neighbor",
    "neighbors",
    "shed",
    "barn",
    "terrace",
    "bumpout",
    "bump-out",
    "walkway",
    "meter",
    "ac",
    "hvac",
    "pool",
];
/// Words after which a wall is told by what it is at.
const AT: [&str; 22] = [
    "by", "at", "along", "past", "behind", "beside", "near", "next", "opposite", "around", "to",
    "from", "toward", "towards", "against", "under", "over", "shared", "common", "party", "jog",
    "between",
];
const PART: [&str; 12] = [
    "wall",
    "side",
    "face",
    "elevation",
    "facade",
    "return",
    "end",
    "edge",
    "jog",
    "offset",
    "bump",
    "line",
];
const SMALL_HERE: [&str; 14] = [
    "of", "the", "with", "w", "my", "our", "its", "and", "is", "then", "left", "right", "front",
    "back",
];

/// `front of garage 22'`, `by garage west 40'`, `porch side 40'`, `shared wall with garage 20'`: a wall of a walk that is
/// not back at its start yet.
fn wall_by_what_it_is_at(typed: &Typed<'_>) -> Option<Answer> {
    let beside = &typed.attempt.beside;
    let progress = straight::progress(typed, &beside.last_walk);
    let (first, length) = the_length(typed)?;
    let ends = length.end == typed.pieces.len();
    let begins_otherwise =
        typed.says(0, &["bay", "arc", "diagonal", "bearing", "overall", "tie", "corner"]);
    // `east fence 36`, `left side of the house 28'`: walls named by their sides are for other rules.
    // `back along the front to start`: which way, and then where.
    let is_back = typed.says(0, &["back"]) && typed.says(1, &["along", "past", "to", "by"]);
    let has_side = direction(typed, 0).is_some() && !is_back;
    let of = typed.find(1, &["of"]).filter(|of| *of <= 2);
    let of_house = of.is_some_and(|of| {
        typed.says(of + 1, &["house", "home"]) || typed.says(of + 2, &["house", "home"])
    });
    if !ends
        || first == 0
        || begins_otherwise
        || has_side && (of.is_none() || of_house)
        || !is_unfinished(typed, &progress)
        || super::is_text(typed.piece(1))
        || typed.line.contains('\t')
    {
        return None;
    }
    let mark = usize::from(typed.pieces[first - 1].is_mark(":,-–=/"));
    let words = first - mark;
    // The way that it was walked may stand right before its length.
    let named = words.checked_sub(1).filter(|&at| typed.says(at, &WAYS));
    let end = named.unwrap_or(words);
    let end = end - usize::from(end > 0 && typed.pieces[end - 1].is_mark(":,-–=/"));
    let is_thing = |at: usize| kind_word(&typed.lower(at)).is_some() || typed.says(at, &THINGS);
    let is_part = |at: usize| typed.says(at, &PART);
    let is_side = |at: usize| direction(typed, at).is_some();
    let is_word = |at: usize| {
        is_thing(at)
            || is_part(at)
            || is_side(at)
            || typed.says(at, &AT)
            || typed.says(at, &SMALL_HERE)
            || typed.pieces[at].is_mark("/,()")
    };
    let has = |is: &dyn Fn(usize) -> bool| (0..end).any(is);
    let is_common = has(&|at| typed.says(at, &["shared", "common", "party"]));
    let says_part = has(&is_part) || has(&is_side) || has(&|at| typed.says(at, &AT));
    let names = has(&is_thing) || is_common && has(&is_part);
    // `kitchen 12'` may be a room, and `west wall 12'` is for other rules.
    if end == 0 || !names || !(0..end).all(is_word) || !(says_part || named.is_some()) {
        return None;
    }
    // `side porch 12'` names a kind, and `shared wall 8"` how thick a wall is.
    let begins_a_space =
        kind_word(&typed.lower(end - 1)).is_some() && named.is_none() && !typed.says(0, &AT);
    // `steps back 6' 2"`: which way it turns is for other rules.
    if typed.says(0, &["step", "steps", "jog", "jogs"]) && typed.says(1, &["back", "in", "out"]) {
        return None;
    }
    let is_begun = is_side(0) && typed.says(1, &["of"])
        || typed.says(0, &["side"]) && typed.says(1, &["of"])
        || is_part(0);
    if begins_a_space && !is_begun || length.is_inches_alone() {
        return None;
    }
    let said = typed.text(0, end).trim_end_matches([',', ':', ';', ' ']);
    let note = quoted(said.trim());
    let text = &length.text;
    let of_another = is_common && !has(&is_thing)
        || has(&|at| typed.says(at, &["neighbor", "neighbors", "party"]));
    let common = if of_another { " common" } else { "" };
    let noted = if is_common && !has(&is_thing) { String::new() } else { format!(" note {note}") };
    let line = |way: &str| format!("{way} {text}{common}{noted}");
    if let Some(way) = named {
        return Some(Answer::line(
            line(&typed.lower(way)),
            "a side begins with the way that it runs; where the wall stands goes in a note",
        ));
    }
    // The side that it is on, or else the wall before it, from which it turns.
    let on = (usize::from(is_back)..end).find_map(|at| direction(typed, at).flatten());
    let is_last = !super::super::begins_as_wall(&beside.after) && progress.walls >= 3;
    let fits = |way: &Direction| on.is_none_or(|side| side.axis() != way.axis());
    if let Some(way) = progress.way_back().filter(|way| is_last && fits(way)) {
        return Some(Answer::line(
            line(way.word()),
            format!(
                "a side begins with the way that it was walked, and from here the start lies {}; where the wall stands goes in a note",
                way.word()
            ),
        ));
    }
    let before = cut_way(typed, &beside.before);
    let cause = "between the walls of a walk stands a wall, and this line says what it is at, and not which way it was walked";
    let help = match (on, before) {
        (Some(side), _) => {
            let [one, two] = along(side.word());
            format!("write `{}` or `{}`, as it was walked", line(one), line(two))
        }
        (None, Some(way)) => {
            let [one, two] = along(way);
            format!(
                "write `{}` or `{}`, as it was walked; `{}` if the walk does not turn there",
                line(one),
                line(two),
                line(way)
            )
        }
        (None, None) => format!(
            "write `north`, `east`, `south` or `west`, as it was walked, then `{text}{common}{noted}`"
        ),
    };
    Some(Answer::say(cause, help))
}

/// Whether more walls come in a walk. One that follows from the others leads back on its axis wherever it stands.
fn is_unfinished(typed: &Typed<'_>, progress: &straight::Progress) -> bool {
    let follows = super::super::begins_as_wall(&typed.attempt.beside.after);
    progress.is_open() || progress.walls > 0 && progress.has_closing && follows
}

/// Whether a word tells what a wall is at, or which part of the house it is.
fn tells_wall(typed: &Typed<'_>, at: usize) -> bool {
    kind_word(&typed.lower(at)).is_some()
        || typed.says(at, &THINGS)
        || typed.says(at, &PART)
        || typed.says(at, &AT)
        || typed.says(at, &SMALL_HERE)
        || direction(typed, at).is_some()
}

/// `garage side going back 8' 7"`, `porch side coming forward`: which way it was walked is said after what it is at.
fn wall_going_a_way(typed: &Typed<'_>) -> Option<Answer> {
    const GOES: [&str; 12] = [
        "going", "goes", "go", "coming", "comes", "come", "running", "runs", "run", "heading",
        "turning", "turns",
    ];
    const TOWARD: [&str; 9] =
        ["toward", "towards", "to", "the", "straight", "on", "due", "up", "along"];
    let beside = &typed.attempt.beside;
    let goes = typed.find(1, &GOES)?;
    let end = goes - usize::from(typed.pieces[goes - 1].is_mark(",:-–"));
    let begins_otherwise =
        typed.says(0, &["bay", "arc", "diagonal", "bearing", "overall", "tie", "corner"]);
    let names = (0..end).any(|at| {
        kind_word(&typed.lower(at)).is_some() || typed.says(at, &THINGS) || typed.says(at, &PART)
    });
    let mut at = goes + 1;
    let mut named: Option<&str> = None;
    loop {
        let way = match typed.lower(at).as_str() {
            "forward" | "forwards" | "street" | "road" => "front",
            "backward" | "backwards" | "yard" | "backyard" => "back",
            _ if typed.says(at, &TOWARD) => {
                at += 1;
                continue;
            }
            word => match way_and_back(word) {
                Some((way, _)) => way,
                None => break,
            },
        };
        let way = by_compass(way, beside.front);
        if named.replace(way).is_some_and(|other| other != way) {
            return None;
        }
        at += 1;
    }
    // `porch side coming out 5'`: out of the house is one of two ways.
    let is_out = named.is_none() && typed.says(at, &["out", "in", "over", "across", "around"]);
    at += usize::from(is_out);
    while typed.says(at, &["for", "is", "again", "by"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(":,-–="))
    {
        at += 1;
    }
    let progress = straight::progress(typed, &beside.last_walk);
    let is_first = progress.walls == 0 && super::super::begins_as_wall(&beside.after);
    if end == 0
        || begins_otherwise
        || !names
        // What is common is said by other rules.
        || (0..end).any(|at| typed.says(at, &["party", "shared", "common"]))
        || !(0..end).all(|at| tells_wall(typed, at))
        || !(is_unfinished(typed, &progress) || progress.walls > 0 && progress.has_closing || is_first)
        || typed.line.contains(['"', '“']) && typed.pieces.iter().any(|piece| super::is_text(Some(piece)))
    {
        return None;
    }
    if is_out {
        let one = one_length(typed, at).filter(|one| one.end == typed.pieces.len())?;
        return super::answer(&format!("{} {}", typed.text(0, end), one.text), typed.attempt);
    }
    let way = named.filter(|way| straight::compass(way).is_some())?;
    let note = quoted(typed.text(0, end));
    let cause = "a side begins with the way that it runs; where the wall stands goes in a note";
    if at == typed.pieces.len() {
        return Some(Answer::say(
            format!("`{way}` is the way that this wall was walked, and its length is missing"),
            format!(
                "write `{way}`, its length and `note {note}`; if it was not measured, `{way} by closing`"
            ),
        ));
    }
    let length = one_length(typed, at)
        .filter(|one| one.has_unit)
        .or_else(|| straight::length_in(typed, &typed.pieces, at))?;
    let said = super::remark(typed.rest(length.end));
    let said = said.trim_matches([',', ';', '.', '(', ')', ' ']);
    if super::measures(said) || said.contains(|c: char| c.is_ascii_digit()) {
        return None;
    }
    let comment = if said.is_empty() { String::new() } else { format!("  # {said}") };
    Some(Answer::line(format!("{way} {} note {note}{comment}", length.text), cause))
}

/// `14' 5" porch wall`: what the wall is at after its length.
fn length_before_its_wall(typed: &Typed<'_>) -> Option<Answer> {
    let one = length_at(&typed.pieces, 0).filter(|one| one.has_unit)?;
    let words = one.end..typed.pieces.len();
    let names =
        words.clone().any(|at| kind_word(&typed.lower(at)).is_some() || typed.says(at, &THINGS));
    let is_wall = typed.says(typed.pieces.len() - 1, &PART)
        || typed.says(one.end, &AT) && typed.pieces.len() > one.end + 1;
    let fits = names && is_wall && words.clone().all(|at| tells_wall(typed, at));
    fits.then(|| super::answer(&format!("{} {}", typed.rest(one.end), one.text), typed.attempt))
        .flatten()
        .filter(|_| !words.is_empty())
}

/// The way that a line of a wall begins with, by the compass if it is known where the street is.
fn cut_way(typed: &Typed<'_>, line: &str) -> Option<&'static str> {
    let first = line.split(' ').next().unwrap_or_default();
    Some(by_compass(way_and_back(first)?.0, typed.attempt.beside.front))
}

/// The only length of a line, and where it begins.
fn the_length(typed: &Typed<'_>) -> Option<(usize, Measure)> {
    let first = typed.pieces.iter().position(Piece::is_number)?;
    let one =
        one_length(typed, first).or_else(|| straight::length_in(typed, &typed.pieces, first))?;
    Some((first, one))
}

/// A length at the end of a line: `21-10` is 21 feet 10 inches.
fn one_length(typed: &Typed<'_>, at: usize) -> Option<Measure> {
    if let [feet, dash, inches] = typed.pieces.get(at..)?
        && feet.is_number()
        && dash.is_mark("-–")
        && inches.text.parse::<u32>().is_ok_and(|inches| inches < 12)
    {
        let text = format!("{}' {}\"", feet.text, inches.text);
        let length = text.parse().ok()?;
        return Some(Measure { end: at + 3, length, text, has_unit: true });
    }
    length_at(&typed.pieces, at)
}

/// `14' from the left, at the front wall` right below the line of a space: where that space stands.
fn place_below_its_line(typed: &Typed<'_>) -> Option<Answer> {
    let before = &typed.attempt.beside.before;
    let pieces = super::cut(before);
    let kind = kind_word(&pieces.first()?.text.to_lowercase())?;
    let is_named = pieces.get(1).is_some_and(|name| super::is_text(Some(name)));
    let is_placed = pieces.iter().any(|piece| piece.is_word(&["start", "from", "detached"]));
    let first = usize::from(typed.says(0, &["starts", "begins", "is"]));
    let from = typed.piece(first)?.is_number() && typed.find(1, &["from", "off"]).is_some();
    let leads =
        ["on", "at", "in", "behind", "beside", "against", "along", "starts", "begins", "is"];
    // `west wall 14' over`: as far from that wall.
    let wall = usize::from(typed.says(0, &["from", "off", "the"]));
    let stands = direction(typed, wall).is_some() && typed.says(wall + 1, &["wall", "side", "end"]);
    let next = wall + 2 + usize::from(typed.says(wall + 2, &["is", "wall"]));
    let over = length_at(&typed.pieces, next).filter(|one| {
        stands
            && one.has_unit
            && (typed.says(one.end, &["over", "away", "off", "in", "from"]) || wall > 0)
            && one.end + 1 >= typed.pieces.len()
    });
    let is_led = typed.says(0, &leads) || from || over.is_some();
    if !is_named || is_placed || kind == "living" || !is_led {
        return None;
    }
    let told = match &over {
        Some(one) => format!("{} from the {}", one.text, typed.text(wall, wall + 2)),
        None if typed.says(0, &["starts", "begins", "is"]) => typed.rest(1).trim().to_owned(),
        None => typed.line.trim().to_owned(),
    };
    let line = format!("porch \"P\", {told}");
    let words = Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt };
    let lies_inside = matches!(kind, "open" | "stair" | "low");
    let place = whereabouts::place(&words, 3, lies_inside);
    let is_whole = !place.whereabouts.parts.is_empty() && place.loose.is_empty();
    is_whole.then(|| {
        let body = before.split('#').next().unwrap_or_default().trim_end();
        Answer::say(
            "where a space stands is said on its own line, before its walls",
            format!("leave this line out and write the line above as `{body}, {told}`"),
        )
    })
}
