//! A space with its walls on the same line: `living farmhouse 12.5 m north, 9.35 m east, …`.

use super::super::compass::way_and_back;
use super::super::pieces::Sort;
use super::levels::capitalized;
use super::measure::length_at;
use super::{Answer, Typed, is_text, kind_word, plainly, quoted};

/// The fewest walls that are no place of a space: `start north 4' east 12'` has two.
const FEWEST: usize = 3;

/// `house: north 30', east 40', south 30', west 40'`: the walls follow on lines of their own.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    const HOUSES: [&str; 8] =
        ["house", "home", "farmhouse", "cottage", "cabin", "dwelling", "residence", "bungalow"];
    if let Some(answer) = of_a_level(typed) {
        return Some(answer);
    }
    let kind = kind_word(&typed.lower(0));
    let is_house = typed.says(0, &HOUSES);
    if kind.is_none() && !is_house || typed.is_in_lot() {
        return None;
    }
    let is_begin = |at: usize| wall(typed, at).is_some();
    let first = (1..typed.pieces.len()).find(|&at| is_begin(at))?;
    // What stands before the walls is its name.
    let mut end = first;
    while end > 1 && typed.piece(end - 1).is_some_and(|mark| mark.is_mark(",:;-–=.")) {
        end -= 1;
    }
    let is_name = |at: usize| {
        is_text(typed.piece(at)) && end == 2
            || typed.piece(at).is_some_and(|piece| piece.sort == Sort::Word)
                && !typed.says(at, &["start", "from", "within", "at", "starts", "lot"])
    };
    if end > 4 || !(1..end).all(is_name) {
        return None;
    }
    let walls = walls_from(typed, first)?;
    // Right below the line of the house its walls need no second one.
    let above = super::cut(&typed.attempt.beside.before);
    let is_below = (is_house || kind == Some("living"))
        && above.first().is_some_and(|word| word.is_word(&["living"]));
    if is_below {
        return Some(Answer::line(
            walls.join("\n"),
            "the line of the space stands above, and each wall is a line of its own",
        ));
    }
    let name = match (end, kind) {
        (1, _) => capitalized(&plainly(typed.text(0, 1))),
        (_, None) => capitalized(&plainly(typed.text(0, end))),
        (_, Some(_)) => capitalized(&typed.name(1, end)),
    };
    let kind = kind.unwrap_or("living");
    Some(Answer::line(
        format!("{kind} {}\n{}", quoted(&name), walls.join("\n")),
        "the walls of a space stand below its line, each on its own line",
    ))
}

/// The walls from this piece to the end of the line.
fn walls_from(typed: &Typed<'_>, first: usize) -> Option<Vec<String>> {
    let mut walls = Vec::new();
    let mut at = first;
    while at < typed.pieces.len() {
        let (line, next) = wall(typed, at)?;
        walls.push(line);
        at = next;
        while typed.piece(at).is_some_and(|mark| mark.is_mark(",;./→>"))
            || typed.says(at, &["then", "and"])
        {
            at += 1;
        }
    }
    (walls.len() >= FEWEST).then_some(walls)
}

/// `Ground (outside): N 26' E 30' 2" S 26' W 30' 2"`, `1st floor: north 30', …`: the level, a space on it, and its walls.
fn of_a_level(typed: &Typed<'_>) -> Option<Answer> {
    const LEVELS: [&str; 8] =
        ["ground", "main", "upper", "lower", "upstairs", "first", "second", "third"];
    const SMALL: [&str; 12] = [
        "floor", "level", "story", "storey", "fl", "taped", "measured", "walls", "to", "at",
        "from", "the",
    ];
    let is_begin = |at: usize| wall(typed, at).is_some();
    let ordinal = typed.piece(0)?.is_number() && typed.says(1, &["st", "nd", "rd"]);
    let first = (1 + usize::from(ordinal)..typed.pieces.len()).find(|&at| is_begin(at))?;
    let is_level = ordinal || typed.says(0, &LEVELS) || super::names_a_level(typed.line);
    let face = (0..first).find_map(|at| super::described::face_word(&typed.lower(at)));
    let named = 1 + usize::from(ordinal);
    let mut end = named;
    while typed.says(end, &SMALL[..5]) {
        end += 1;
    }
    let is_small = |at: usize| {
        typed.says(at, &SMALL)
            || super::described::face_word(&typed.lower(at)).is_some()
            || typed.pieces[at].is_mark(",:;()-–.")
    };
    if !is_level || !(end..first).all(is_small) || typed.is_in_lot() {
        return None;
    }
    let walls = walls_from(typed, first)?;
    let said = typed.text(0, end).trim_matches([':', ',', '(', ' ', '-', '.']);
    let level = match end > named || typed.says(0, &["upstairs"]) {
        true => capitalized(said),
        false => format!("{} floor", capitalized(said)),
    };
    let name = if typed.attempt.house.is_some() { "Rooms" } else { "House" };
    let face = face.map_or_else(String::new, |face| format!(" measured to {face}"));
    Some(Answer::line(
        format!("level {}\nliving \"{name}\"{face}\n{}", quoted(&level), walls.join("\n")),
        "a level is `level` and its name, and a space on it has its walls below its line, each on its own line",
    ))
}

/// `north 30'` or `30' north`, and the index after it.
fn wall(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    let way = |at: usize| {
        let word = typed.piece(at).filter(|piece| piece.sort == Sort::Word)?;
        way_and_back(&word.text).map(|(way, _)| way)
    };
    if let Some(way) = way(at) {
        let one = length_at(&typed.pieces, at + 1)?;
        return Some((format!("{way} {}", one.text), one.end));
    }
    let one = length_at(&typed.pieces, at)?;
    let way = way(one.end)?;
    Some((format!("{way} {}", one.text), one.end + 1))
}

/// `Main` between a level and its first wall: what the space is called.
pub(super) fn name_above(typed: &Typed<'_>) -> Option<Answer> {
    let beside = &typed.attempt.beside;
    let is_first = typed.attempt.house.is_none() && !beside.in_lot;
    let follows = super::super::begins_as_side(&beside.after);
    let names = |piece: &super::Piece| {
        piece.sort == Sort::Word && piece.text.chars().all(char::is_alphabetic)
    };
    let end = typed.pieces.iter().rposition(|piece| !piece.is_mark(":.-–"))? + 1;
    let is_short = end <= 3 && typed.pieces[..end].iter().all(names);
    let says_more = ["not", "no", "start", "measured", "inside", "outside", "clockwise", "north"];
    let is_above_walls = typed.attempt.space.is_none() || beside.before.starts_with("level ");
    (is_first && follows && is_short && is_above_walls && typed.find(0, &says_more).is_none()).then(
        || {
            Answer::line(
                format!("living {}", quoted(&capitalized(&plainly(typed.text(0, end))))),
                "a space begins with what it is, then its name; its walls stand on the lines below it",
            )
        },
    )
}
