//! Rooms inside the walls, basements and sunrooms, and lines that another rule would take for something else: a turn from
//! the wall before, a wall after `thence`, what marks a corner, an appraiser's figure.

use super::super::pieces::{Piece, Sort};
use super::measure::{area_at, length_at};
use super::{Answer, Rule, Typed, first_of, is_text, quoted};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        crawl_space,
        list_of_rooms,
        numbered_room_and_wall,
        outside_stairs,
        inside_the_walls,
        part_with_its_area,
        basement_with_its_area,
        copied_footprint,
    ];
    first_of(rules, typed)
}

/// Rooms that lie inside the walls of a house; what is added on is called otherwise.
const ROOMS: [&str; 14] = [
    "bath", "baths", "bathroom", "closet", "closets", "pantry", "powder", "laundry", "hallway",
    "washroom", "shower", "toilet", "wardrobe", "wc",
];

/// `half bath under stairs 5x6`, `closet 3x5`: with sides of its own it would lie in another space.
fn inside_the_walls(typed: &Typed<'_>) -> Option<Answer> {
    const BEFORE: [&str; 14] = [
        "half", "full", "master", "main", "guest", "hall", "walk-in", "small", "linen", "coat",
        "powder", "a", "the", "upstairs",
    ];
    const AROUND: [&str; 21] = [
        "room", "under", "the", "stairs", "stair", "in", "inside", "hall", "by", "at", "near",
        "entry", "bedroom", "main", "floor", "of", "x", "is", "basement", "attic", "kitchen",
    ];
    typed.attempt.house.as_ref()?;
    let at = (0..typed.pieces.len()).find(|&at| typed.says(at, &ROOMS))?;
    let is_only = |at: usize| {
        let piece = &typed.pieces[at];
        piece.sort != Sort::Word
            || typed.says(at, &AROUND)
            || typed.says(at, &ROOMS)
            || super::measure::length_at(&typed.pieces, at.saturating_sub(1)).is_some()
    };
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let has_text = typed.pieces.iter().any(|piece| is_text(Some(piece)));
    // A larger one may be an addition.
    let is_small = |length: Length| length <= Length::from_nm(10 * Length::FOOT.nm());
    let sizes = super::measure::lengths(&typed.pieces, 0);
    let lengths_are_none = sizes.is_empty()
        && (0..at).all(|at| typed.says(at, &BEFORE))
        && (at + 1..typed.pieces.len()).all(is_only);
    let fits = (0..at).all(|at| typed.says(at, &BEFORE))
        && (at + 1..typed.pieces.len()).all(is_only)
        && super::size_in(typed.line).is_some()
        && sizes.iter().all(|(_, one)| is_small(one.length));
    let without_size = typed.find(0, &["under"]).is_some_and(|under| {
        typed.says(under + 1, &["stairs", "stair", "the"]) && lengths_are_none
    });
    let fits = (fits || without_size) && !has_text;
    if fits && follows && without_size {
        return Some(Answer::say(
            "a room inside the walls is in the area of the house already, and is not typed",
            "put a `#` before this line and before its walls below; only a room beyond the walls that you typed has sides of its own, as `living`, with where it starts",
        ));
    }
    (fits && !follows).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "a room inside the walls is in the area of the house already, and is not typed",
        )
    })
}

/// `crawlspace 30x40`: no floor, and so no area.
fn crawl_space(typed: &Typed<'_>) -> Option<Answer> {
    let is_one = typed.says(0, &["crawlspace", "crawl-space"])
        || typed.says(0, &["crawl"]) && typed.says(1, &["space"]);
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let is_on_its_own_level = typed.attempt.beside.before.starts_with("level ");
    if is_one && follows && !is_on_its_own_level && !is_text(typed.pieces.last()) {
        let said =
            super::remark(typed.rest(typed.pieces.len().min(if typed.says(0, &["crawl"]) {
                2
            } else {
                1
            })));
        let comment = if said.is_empty() { said } else { format!("  # {}", super::plainly(&said)) };
        return Some(Answer::line(
            format!("level \"Crawl space\" below grade{comment}\nunfinished \"Crawl space\""),
            "a crawl space lies under the house, on a level of its own",
        ));
    }
    let has_length = !super::measure::lengths(&typed.pieces, 1).is_empty();
    let is_alone = typed.pieces.len() <= 2;
    // `crawl space under all`
    let is_plain = typed.pieces.iter().all(|piece| !piece.is_number())
        && typed.find(1, &["level", "finished", "living", "below", "beside"]).is_none();
    (is_one && !follows && (has_length || is_alone || is_plain) && !is_text(typed.piece(1))).then(
        || {
            Answer::line(
                format!("# {}", typed.line),
                "a crawl space has no floor that is counted or drawn: its line is a comment",
            )
        },
    )
}

/// `living room, kitchen, 3 BR`: what rooms there are.
fn list_of_rooms(typed: &Typed<'_>) -> Option<Answer> {
    const NAMES: [&str; 38] = [
        "living",
        "room",
        "rooms",
        "kitchen",
        "dining",
        "bedroom",
        "bedrooms",
        "bath",
        "baths",
        "bathroom",
        "bathrooms",
        "br",
        "ba",
        "bed",
        "beds",
        "den",
        "laundry",
        "hall",
        "hallway",
        "family",
        "foyer",
        "entry",
        "master",
        "study",
        "office",
        "pantry",
        "closet",
        "closets",
        "utility",
        "mudroom",
        "full",
        "half",
        "and",
        "lr",
        "dr",
        "fr",
        "great",
        "powder",
    ];
    let is_small = |piece: &Piece| piece.is_number() && piece.text.len() <= 3;
    let marks = typed.pieces.iter().filter(|piece| piece.is_mark(",;/&+")).count();
    let is_list = marks > 0
        && typed
            .pieces
            .iter()
            .all(|piece| piece.is_word(&NAMES) || is_small(piece) || piece.is_mark(",;/&+.()"));
    let has_length = super::measure::lengths(&typed.pieces, 0).iter().any(|(_, one)| one.has_unit);
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    if !is_list || has_length || super::size_in(typed.line).is_some() {
        return None;
    }
    let said = super::remark(typed.line);
    Some(match follows {
        false => Answer::line(
            format!("# {said}"),
            "which rooms there are says nothing of the outline; a comment begins with `#`",
        ),
        true => Answer::line(
            format!("living \"Rooms\"  # {said}"),
            "the line above the walls has the kind of the space and one name",
        ),
    })
}

/// `room1 north 26' 6"`, `bedroom 2 east 12'`: a room and its first wall on one line.
fn numbered_room_and_wall(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["room", "rm", "bedroom", "br"])
        || !typed.piece(1).is_some_and(|number| number.is_number() && number.text.len() == 1)
    {
        return None;
    }
    let ways = ["north", "east", "south", "west"];
    let way = ways.into_iter().find(|way| typed.says(2, &[way]))?;
    let one = super::measure::length_at(&typed.pieces, 3).filter(|one| one.has_unit)?;
    if one.end != typed.pieces.len() {
        return None;
    }
    let name = format!("Room {}", typed.pieces[1].text);
    let name = if typed.says(0, &["bedroom", "br"]) {
        format!("Bed{}", name.to_lowercase())
    } else {
        name
    };
    let after = &typed.attempt.beside.after;
    let is_next = |other: &str| {
        after.split(' ').next().is_some_and(|first| first.eq_ignore_ascii_case(other))
    };
    let across =
        if matches!(way, "north" | "south") { ["east", "west"] } else { ["north", "south"] };
    let cause = "a space and a wall have a line each";
    // Where the next wall goes on round the room, this is its first one.
    if across.iter().any(|other| is_next(other)) && typed.attempt.house.is_none() {
        return Some(Answer::line(format!("living {}\n{way} {}", quoted(&name), one.text), cause));
    }
    (!super::super::begins_as_side(after)).then(|| {
        Answer::say(
            cause,
            format!(
                "a room inside the walls of the house needs no line: put a `#` before this one; a room beyond them is `living {}` with where it starts, and `{way} {}` is on the next line, the first of its walls",
                quoted(&name),
                one.text
            ),
        )
    })
}

/// `basement stairs outside 4x10`, `bulkhead 4 x 6 to basement`: no floor of the house.
fn outside_stairs(typed: &Typed<'_>) -> Option<Answer> {
    let is_basement = typed.find(0, &["basement", "bsmt", "cellar"]).is_some();
    let is_way_in = typed.says(0, &["bulkhead", "hatch"])
        || typed.says(0, &["basement", "bsmt", "cellar", "outside", "exterior", "outdoor"])
            && typed.says(
                1,
                &[
                    "stairs",
                    "stair",
                    "steps",
                    "stairwell",
                    "entrance",
                    "entry",
                    "hatch",
                    "bulkhead",
                ],
            );
    let is_outside =
        typed.find(0, &["outside", "exterior", "outdoor", "bulkhead", "hatch"]).is_some();
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let is_plain = !typed.pieces.iter().any(|piece| is_text(Some(piece)));
    (is_basement && is_way_in && is_outside && !follows && is_plain).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "stairs outside the walls are no floor of the house: their line is a comment",
        )
    })
}

/// `garage 484`, `attached garage 484`: the area of a part, whose walls are still to be typed.
fn part_with_its_area(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["attached", "att"]));
    let kind = super::kind_word(&typed.lower(first))
        .filter(|kind| matches!(*kind, "garage" | "carport" | "porch" | "deck" | "patio"))?;
    let number = typed.piece(first + 1).filter(|number| number.is_number())?;
    let area: u32 = number.text.replace(',', "").parse().ok().filter(|area| *area >= 60)?;
    let is_alone = first + 2 == typed.pieces.len() && area < 10_000;
    let name = quoted(&super::levels::capitalized(&typed.lower(first)));
    (is_alone && !super::super::begins_as_side(&typed.attempt.beside.after)).then(|| {
        Answer::say(
            format!("`{}` is an area, and a space is typed by its sides", number.text),
            format!(
                "if the record has that area for it, write `{kind} {name}`, where it starts, and `recorded {} sq ft`, and its sides on the lines below; if you have not measured it, put this line after a `#`",
                number.text
            ),
        )
    })
}

/// `basement "Basement" 600 sf unfinished`, `walkout basement "Lower"`: a level, and below it the space that the record has
/// there.
fn basement_with_its_area(typed: &Typed<'_>) -> Option<Answer> {
    const BEFORE: [&str; 7] =
        ["walkout", "walk-out", "finished", "unfinished", "daylight", "full", "partial"];
    let first = (0..typed.pieces.len()).find(|&at| !typed.says(at, &BEFORE))?;
    let is_basement = typed.says(first, &["basement", "bsmt", "bsmnt", "cellar"]);
    let named = is_text(typed.piece(first + 1));
    let name = match named {
        true => typed.text(first + 1, first + 2).to_owned(),
        false => quoted("Basement"),
    };
    let at = first + 1 + usize::from(named);
    let area = area_at(&typed.pieces, at);
    if !is_basement || !(named || first > 0 && area.is_some()) {
        return None;
    }
    let (end, recorded) = match &area {
        Some((end, area)) => (*end, format!(" recorded {area}")),
        None => (at, String::new()),
    };
    const FINISH: [&str; 4] = ["finished", "unfinished", "unfin", "unf"];
    let only = (end..typed.pieces.len())
        .all(|at| typed.says(at, &FINISH) || typed.pieces[at].is_mark(",;()"));
    let is_finished = typed.find(0, &FINISH[..1]).is_some();
    let is_unfinished = typed.find(0, &FINISH[1..]).is_some();
    let lines = |kind: &str| format!("level {name} below grade\n{kind} {name}{recorded}");
    let kinds: &[&str] = match (is_finished, is_unfinished) {
        (true, false) => &["living"],
        (false, true) => &["unfinished"],
        _ => &["unfinished", "living"],
    };
    let cause = "a basement is a level, and what is in it a space below that: `living` where it is finished, with its sides on the lines that follow";
    let is_in_level = typed.attempt.beside.before.to_lowercase().starts_with("level ");
    if !only || is_in_level {
        return None;
    }
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    Some(match (follows, recorded.is_empty()) {
        (true, _) => {
            Answer::Lines(kinds.iter().map(|kind| lines(kind)).collect(), cause.to_owned())
        }
        (false, true) => Answer::line(format!("level {name} below grade"), cause),
        (false, false) => Answer::say(
            cause,
            format!(
                "write `level {name} below grade`, on the next line `{} {name}{recorded}`, and its sides on the lines below; if you have not measured it, put this line after a `#`",
                kinds[0]
            ),
        ),
    })
}

/// `sunroom "Sunroom" start north 30'`: whether it counts is not said.
pub(super) fn sunroom(typed: &Typed<'_>) -> Option<Answer> {
    let end = match typed.lower(0).as_str() {
        "sunroom" | "solarium" => 1,
        "sun" | "florida" if typed.says(1, &["room"]) => 2,
        "four" | "4" if typed.says(1, &["season", "seasons"]) && typed.says(2, &["room"]) => 3,
        _ => return None,
    };
    let says = ["heated", "unheated", "finished", "unfinished", "not", "counted"];
    let is_said = typed.find(end, &says).is_some();
    let is_sized = super::size_in(typed.line).is_some();
    (is_text(typed.piece(end)) && !is_said && !is_sized).then(|| {
        let rest = typed.rest(end);
        Answer::Lines(
            vec![format!("living {rest}"), format!("porch {rest}")],
            "a sunroom that is finished and heated like the house is `living`; one that is not is a `porch`".to_owned(),
        )
    })
}

/// `Basement - same footprint`, `attic, same size as below`: nothing is copied from another level.
fn copied_footprint(typed: &Typed<'_>) -> Option<Answer> {
    let finish = typed.says(0, &["finished", "unfinished"]);
    let first = usize::from(finish || typed.says(0, &["full", "partial"]));
    let begins = typed.says(
        first,
        &["basement", "cellar", "bsmt", "attic", "upstairs", "downstairs", "loft", "walkout"],
    );
    let at =
        typed.find(first + 1, &["same", "identical"]).filter(|at| begins && *at <= first + 2)?;
    let what = ["footprint", "size", "outline", "shape", "walls", "dimensions", "area", "as"];
    typed.says(at + 1, &what).then(|| {
        let depth = if typed.says(first, &["basement", "cellar", "bsmt"]) { " below grade" } else { "" };
        let kinds = match typed.lower(0).as_str() {
            "finished" => "`living \"Rooms\"`",
            "unfinished" => "`unfinished \"Rooms\"`",
            _ => "`living \"Rooms\"` or `unfinished \"Rooms\"`",
        };
        super::loose::copied(
            typed,
            true,
            format!(
                "write `level {}{depth}`, below it its space, as {kinds}, and type its sides again, one on each line",
                quoted(&super::levels::capitalized(&typed.lower(first)))
            ),
        )
    })
}

/// `corner 1/2" iron rod`: what marks the corner is its name.
pub(super) fn marked_corner(typed: &Typed<'_>) -> Option<Answer> {
    let measure =
        length_at(&typed.pieces, 1).filter(|one| typed.says(0, &["corner"]) && one.has_unit)?;
    let rest = &typed.pieces[measure.end..];
    let is_name = !rest.is_empty() && rest.iter().all(|piece: &Piece| piece.sort == Sort::Word);
    is_name.then(|| {
        Answer::line(
            format!(
                "corner {}  # {}",
                quoted(typed.rest(measure.end)),
                super::plainly(typed.text(1, measure.end))
            ),
            "a corner has a name with a `\"` on each side, and what was measured there in a comment",
        )
    })
}

/// `45° right 4.243'` after `north 27'`: a turn from the wall before.
pub(super) fn turned_by(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["turn", "at", "angle"]));
    let degrees = typed.piece(first).filter(|piece| piece.is_number() && piece.text == "45")?;
    let mark = typed.piece(first + 1).is_some_and(|mark| mark.is_mark("°º˚"))
        || typed.says(first + 1, &["deg", "degree", "degrees"]);
    let mut at = first + 2;
    while typed.says(at, &["to", "the", "turn"]) {
        at += 1;
    }
    let is_right = match typed.lower(at).as_str() {
        "right" | "r" => true,
        "left" | "l" => false,
        _ => return None,
    };
    let length = length_at(&typed.pieces, at + 1).filter(|one| mark && one.has_unit)?;
    let before = typed.attempt.beside.before.to_lowercase();
    let way = before.split(|c: char| !c.is_alphabetic()).next().unwrap_or_default();
    let bearing = match (way, is_right) {
        ("north" | "n", true) | ("east" | "e", false) => ("N", "E"),
        ("north" | "n", false) | ("west" | "w", true) => ("N", "W"),
        ("south" | "s", true) | ("west" | "w", false) => ("S", "W"),
        ("south" | "s", false) | ("east" | "e", true) => ("S", "E"),
        _ => return None,
    };
    (length.end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("bearing {} {}° {} {}", bearing.0, degrees.text, bearing.1, length.text),
            "a side says which way it runs, and not how it turns from the one before",
        )
    })
}

/// `thence North 30.00 feet` in the walk of a house: a wall, and no call of a deed.
pub(super) fn wall_after_thence(typed: &Typed<'_>) -> Option<Answer> {
    const WAYS: [&str; 4] = ["north", "east", "south", "west"];
    let at = 1 + usize::from(typed.says(1, &["due", "running", "run", "go"]));
    let length = length_at(&typed.pieces, at + 1)?;
    let fits = typed.says(0, &["thence", "then"])
        && typed.says(at, &WAYS)
        && length.end == typed.pieces.len()
        && !typed.is_in_lot()
        && typed.attempt.space.is_some();
    fits.then(|| {
        Answer::line(format!("{} {}", typed.lower(at), length.text), "a side begins with its way")
    })
}

/// `appraiser 1,230 sf 2021`, `appraisal 1,230 sq ft`: the record of an appraisal district, or an appraiser's own figure.
pub(super) fn appraisers_figure(typed: &Typed<'_>) -> Option<Answer> {
    let is_own = typed.says(0, &["appraiser", "appraiser's", "appraisers", "appraisal"]);
    let year = |at: usize| typed.piece(at).filter(|piece| piece.is_year());
    let (first, before) = match year(1) {
        Some(year) if typed.piece(2).is_some_and(Piece::is_number) => (2, Some(year.text.clone())),
        _ => (1, None),
    };
    let (end, area) = area_at(&typed.pieces, first).filter(|_| is_own)?;
    let after = year(end).map(|year| year.text.clone());
    let title = before.or(after.clone());
    let stop = end + usize::from(after.is_some());
    if stop != typed.pieces.len() {
        return None;
    }
    let title = title.map_or_else(String::new, |year| format!(" \"{year}\""));
    let word = typed.lower(0);
    let word = word.trim_end_matches("'s").trim_end_matches('s');
    let figure = format!("figure \"{word}\" {area}{title}");
    let record = format!("record {area}{title}");
    let lines = if typed.attempt.beside.has_record { vec![figure] } else { vec![record, figure] };
    Some(Answer::Lines(
        lines,
        "the appraisal district's figure is the `record`; an appraiser's own is a `figure` with a name of its own".to_owned(),
    ))
}

/// `Down`, `Up:` where no wall stands before it: a level.
pub(super) fn up_or_down(typed: &Typed<'_>) -> Option<Answer> {
    let alone = typed.says(0, &["up", "down"])
        && typed.pieces[1..].iter().all(|piece| piece.is_mark(":.,-–"));
    let is_in_a_walk = super::super::begins_as_side(&typed.attempt.beside.before);
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    (alone && !(is_in_a_walk && follows)).then(|| {
        Answer::line(
            format!("level {}", quoted(&super::levels::capitalized(&typed.lower(0)))),
            "a level begins with `level`, then its name with a `\"` on each side",
        )
    })
}
