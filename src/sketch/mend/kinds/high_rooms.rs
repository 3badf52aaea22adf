//! High rooms, garages under a floor, and what stands between two buildings: lines whose words tell on which floor the
//! space is, or which of its lengths is missing.

use super::super::pieces::Sort;
use super::measure::lengths;
use super::{Answer, Rule, Typed, first_of, is_text, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[high_room, garage_under_a_floor, one_length_between];
    first_of(rules, typed)
}

/// `great room vaulted 14 x 18`, `great room (vaulted) 14 x 18`, `cathedral ceiling over living room, no floor above
/// 12 x 14`: in the area already, or a floor that is not there.
fn high_room(typed: &Typed<'_>) -> Option<Answer> {
    const HIGH: [&str; 9] = [
        "vaulted",
        "cathedral",
        "vault",
        "two-story",
        "2-story",
        "double-height",
        "ceiling",
        "ceilings",
        "high",
    ];
    const ROOMS: [&str; 16] = [
        "great",
        "living",
        "family",
        "dining",
        "entry",
        "foyer",
        "hall",
        "kitchen",
        "bedroom",
        "master",
        "den",
        "lr",
        "fr",
        "greatroom",
        "entryway",
        "sunken",
    ];
    const SMALL: [&str; 14] = [
        "room", "over", "above", "in", "the", "with", "w", "no", "floor", "nothing", "is", "has",
        "open", "area",
    ];
    let beside = &typed.attempt.beside;
    let follows = super::super::begins_as_side(&beside.after);
    let house = typed.attempt.house.as_ref()?;
    let size = super::size_in(typed.line)?;
    let first = typed.line.find(size)?;
    let end = first + size.len();
    let in_size = |at: usize| (first..end).contains(&typed.pieces[at].at);
    let only = (0..typed.pieces.len()).all(|at| {
        in_size(at)
            || typed.says(at, &HIGH)
            || typed.says(at, &ROOMS)
            || typed.says(at, &SMALL)
            || typed.pieces[at].is_mark(",;:()-–./")
    });
    let high = typed.find(0, &HIGH[..6])?;
    let is_room = typed.find(0, &ROOMS).is_some() || typed.find(0, &HIGH[6..8]).is_some();
    // `vaulted great room 14 x 18` alone, without walls below it, is known to other rules.
    let says_ceiling = typed.find(0, &HIGH[6..8]).is_some();
    let is_known = !follows && high == 0 && !(says_ceiling && beside.has_level_above);
    let is_plain = !typed.pieces.iter().any(|piece| is_text(Some(piece)));
    if !only || !is_room || is_known || !is_plain {
        return None;
    }
    let room: Vec<&str> = (0..typed.pieces.len())
        .filter(|&at| typed.says(at, &ROOMS) || typed.says(at, &["room"]))
        .map(|at| typed.pieces[at].text.as_str())
        .collect();
    let is_named = !room.is_empty();
    let name = match room.is_empty() {
        true => "Open to below".to_owned(),
        false => super::levels::capitalized(&room.join(" ").to_lowercase()),
    };
    let name = quoted(&name);
    let size = size.trim_end_matches([',', ' ']);
    let with_sides = match follows {
        true => String::new(),
        false => {
            format!(
                ", and on the lines below it its four sides, two of {}",
                size.replacen(" x ", " and two of ", 1)
            )
        }
    };
    if beside.has_level_above {
        return Some(Answer::say(
            "where a room below reaches through this floor, the floor is `open` there, and that is deducted",
            format!(
                "write `open {name}`, then `start` and how far east and north of corner 1 of `{house}` it begins{with_sides}; if this floor is not there at all, and its walls go round that room, leave the line out"
            ),
        ));
    }
    if !follows {
        return Some(Answer::line(
            format!("# {}", typed.line),
            "a high ceiling takes nothing from the floor below it; a floor above that is missing over a room is a space `open` on that floor, with its sides",
        ));
    }
    let built_on = match is_named {
        true => format!(
            "; if the room was built on beyond the walls that you typed, write `living {name}` and where it starts instead"
        ),
        false => String::new(),
    };
    Some(Answer::say(
        format!(
            "a room inside the walls is in the area of `{house}` already, and a high ceiling takes nothing from its floor"
        ),
        format!(
            "put a `#` before this line and before its walls; if a floor above is left out there, move them below the line of that level, with `open {name}`, then `start` and how far east and north of corner 1 of its walls it begins{built_on}"
        ),
    ))
}

/// `tuck-under garage 22 x 24`, `drive-under garage`, `garage under the house 22 x 24`: a garage under a floor is on the
/// level below it.
fn garage_under_a_floor(typed: &Typed<'_>) -> Option<Answer> {
    const UNDER: [&str; 4] = ["tuck-under", "drive-under", "tuckunder", "underhouse"];
    let dashed = typed.says(0, &UNDER);
    let apart = typed.says(0, &["tuck", "drive", "tucked"]) && typed.says(1, &["under"]);
    let at = if apart { 2 } else { usize::from(dashed) };
    let leads = dashed || apart;
    let after = typed.says(0, &["garage"])
        && (typed.says(1, &["under", "underneath", "beneath", "below"])
            && (typed.says(2, &["the", "house", "living", "main", "upper", "floor", "bedrooms"])
                || typed.piece(2).is_some_and(|number| number.is_number()))
            || typed.says(1, &UNDER));
    if !(leads && typed.says(at, &["garage"]) || after) {
        return None;
    }
    let is_plain = !typed.pieces.iter().any(|piece| is_text(Some(piece)));
    let beside = &typed.attempt.beside;
    let follows = super::super::begins_as_side(&beside.after);
    // The first level of a file may be the one on which the garage is.
    let house = typed.attempt.house.as_ref().filter(|_| is_plain)?;
    let size = super::size_in(typed.line).map(|size| size.trim_end_matches([',', ' ']));
    let sides = match (size, follows) {
        (_, true) => "with its walls as they are below it".to_owned(),
        (Some(size), _) => format!(
            "and on the lines below it its four sides, two of {}",
            size.replacen(" x ", " and two of ", 1)
        ),
        (None, _) => "and its sides below it".to_owned(),
    };
    let here = match beside.has_level_above {
        true => format!(
            "if `{house}` is above it, move the line to the level below, as `garage \"Garage\"`, {sides}; if `{house}` is on the level of the garage, write it here so"
        ),
        false => format!(
            "if `{house}` is above it, write `level \"Garage level\"` before the line of the level of `{house}`, and on the next line `garage \"Garage\"`, {sides}; if `{house}` is on the level of the garage, write `garage \"Garage\"` here, then where it starts, `from \"{house}\" corner` and a number, {sides}"
        ),
    };
    Some(Answer::say(
        "a garage under a floor is on a level of its own, below that floor, and takes nothing from it",
        here,
    ))
}

/// `breezeway 6 ft between house and garage`: one length of two. Where it stands follows from both.
fn one_length_between(typed: &Typed<'_>) -> Option<Answer> {
    let kind = super::kind_word(&typed.lower(0))?;
    let is_one = ["breezeway", "porch", "patio", "deck", "storage"].contains(&kind);
    let named = usize::from(is_text(typed.piece(1)));
    let found = lengths(&typed.pieces, 1 + named);
    let [(first, one)] = &found[..] else { return None };
    let between = typed.find(one.end, &["between"]).filter(|at| *at <= one.end + 1)?;
    let words = (between..typed.pieces.len()).all(|at| typed.pieces[at].sort == Sort::Word);
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    if !is_one || *first != 1 + named || !one.has_unit || !words || follows {
        return None;
    }
    let head = typed.text(0, 1 + named);
    let place = typed.rest(between);
    let is_metric = typed.attempt.is_metric || one.is_metric();
    let other = if is_metric { "3 m" } else { "10'" };
    Some(Answer::say(
        "one length says how far apart the two are or how wide it is, and the other length is missing",
        format!(
            "write both, as `{head} {} x {other} {place}`, with your length instead of `{other}`, and the next answer says how its line begins; what it stands between has a line and walls of its own above",
            one.text
        ),
    ))
}
