//! A space and its place on two lines, and a place that is counted from a space which comes only later.

use super::kinds;
use super::pieces::{Sort, cut};
use super::{Attempt, Mend, comment_of, read_or_mended};

/// With what a place begins that stands on a line of its own.
const PLACES: [&str; 6] = ["start", "starts", "starting", "from", "within", "detached"];

/// The answer to either.
pub(super) fn answer(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    place_below(line, attempt)
        .or_else(|| place_above(line, attempt))
        .or_else(|| before_the_house(line, &attempt(line)))
}

fn begins_as_place(line: &str) -> bool {
    let pieces = cut(comment_of(line).0);
    let Some(first) = pieces.first().filter(|word| word.is_word(&PLACES)) else { return false };
    pieces.len() > 1 || first.is_word(&["detached"])
}

/// Whether a line begins as that of a space, with a kind and a name, and says no place.
fn is_without_place(line: &str) -> bool {
    let pieces = cut(comment_of(line).0);
    let is_kind =
        pieces.first().is_some_and(|word| kinds::kind_word(&word.text.to_lowercase()).is_some());
    let is_named = pieces.get(1).is_some_and(|name| name.sort == Sort::Text);
    is_kind && is_named && !pieces.iter().skip(2).any(|piece| piece.is_word(&PLACES))
}

/// The line of a space with its place, both as typed on two lines.
fn one_line(space: &str, place: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<String> {
    // Without the line below, which would be taken for its place once more.
    let attempt = &mut |line: &str| {
        let mut tried = attempt(line);
        tried.beside.after = "".into();
        tried
    };
    let (space, place) = (comment_of(space).0.trim(), comment_of(place).0.trim());
    let place = match cut(place).first() {
        Some(word) if word.is_word(&["starts", "starting"]) => {
            format!("start{}", place.get(word.at + word.text.len()..)?)
        }
        _ => place.to_owned(),
    };
    // The line of the space as it would be answered by itself: `foyer open to below`.
    let head = match read_or_mended(space, attempt)? {
        Mend { asks: Some(asks), .. } => asks.at("", None),
        Mend { lines, .. } => lines.into_iter().next()?,
    };
    let head = comment_of(head.lines().next()?).0.trim_end();
    if !is_without_place(head) {
        return None;
    }
    let whole = read_or_mended(&format!("{head} {place}"), attempt)?;
    whole.lines.into_iter().next().filter(|line| !line.contains(['\n', '#']))
}

/// `start east 13'` right below the line of a space.
fn place_below(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    if !begins_as_place(line) {
        return None;
    }
    let beside = attempt(line).beside;
    let is_above = !beside.in_lot && !super::begins_as_wall(&beside.before);
    let whole = one_line(is_above.then_some(&*beside.before)?, line, attempt)?;
    Some(Mend {
        cause: "where a space starts stands on the line of that space, after its name".to_owned(),
        help: Some(format!("leave this line out and write the line above it as `{whole}`")),
        ..Mend::default()
    })
}

/// `open "Foyer" open to below` right above the line `start east 13'`.
fn place_above(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let after = attempt(line).beside.after;
    if !begins_as_place(&after) || begins_as_place(line) || super::begins_as_wall(line) {
        return None;
    }
    if cut(comment_of(line).0).iter().any(|piece| piece.is_word(&PLACES)) {
        return None;
    }
    let whole = one_line(line, &after, attempt)?;
    Some(Mend {
        cause: "where a space starts stands on its own line, after its name".to_owned(),
        help: Some(format!("write this line as `{whole}` and leave the line below it out")),
        ..Mend::default()
    })
}

/// `garage 20 x 22 attached, right side of house` above the house: nothing has been drawn that its place is counted from.
fn before_the_house(line: &str, attempt: &Attempt) -> Option<Mend> {
    const SAYS_PLACE: [&str; 22] = [
        "attached", "att", "off", "side", "corner", "behind", "beside", "against", "front", "back",
        "rear", "left", "right", "north", "south", "east", "west", "house", "end", "next",
        "inside", "under",
    ];
    let beside = &attempt.beside;
    let pieces = cut(comment_of(line).0);
    let kind = kinds::kind_word(&pieces.first()?.text.to_lowercase())?;
    let is_part = !matches!(kind, "living" | "unfinished" | "outbuilding");
    // `garage faces west` says which way its doors look.
    let faces = pieces.iter().any(|piece| piece.is_word(&["faces", "facing", "door", "doors"]));
    let says = !faces && pieces.iter().skip(1).any(|piece| piece.is_word(&SAYS_PLACE));
    let house = beside.known.iter().find(|[kind, _]| **kind == *"living").map(|[_, name]| name)?;
    // With its size, or its walls below it.
    let has_walls = kinds::size_in(line).is_some() || super::begins_as_side(&beside.after);
    // A house whose own line does not read may stand above it.
    let mut words = beside.before.split_whitespace();
    let [one, two] =
        [words.next(), words.next()].map(|word| word.unwrap_or_default().to_lowercase());
    let begins_level = one.is_empty() || crate::sketch::phrases::opens_level(&one, &two);
    let is_first = has_walls
        && begins_level
        && attempt.house.is_none()
        && !beside.has_level_above
        && !beside.in_lot;
    if !is_part || !says || !is_first || pieces.iter().any(|piece| piece.is_word(&["detached"])) {
        return None;
    }
    Some(Mend {
        cause:
            "a place is counted from a space above it on its level, and none stands above this line"
                .to_owned(),
        help: Some(format!(
            "put this line, with its own walls if it has any, below the walls of `{house}`; where it stands is answered there"
        )),
        ..Mend::default()
    })
}
