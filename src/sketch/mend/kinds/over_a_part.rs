//! The line of a level with the size of its rooms and the part of the level below that they lie over.

use super::{Answer, Typed, cut, placed, plainly};

/// `2nd floor 28' x 20' over right half only`, `upstairs 20 x 24 over the garage`: the level and its first space, whose
/// place follows from the level below. `head` begins the line of the space; `said` is what the line says beside its
/// size.
pub(super) fn answer(
    typed: &Typed<'_>,
    level: &str,
    head: &str,
    [one, two]: [&str; 2],
    said: &str,
) -> Option<Answer> {
    const OVER: [&str; 9] =
        ["over", "above", "on", "set", "setback", "recessed", "starting", "starts", "centered"];
    // `above the basement`: over all of it. `2 windows on the front`: no place.
    const OTHERS: [&str; 20] = [
        "basement",
        "cellar",
        "floor",
        "level",
        "story",
        "house",
        "all",
        "everything",
        "window",
        "windows",
        "door",
        "doors",
        "dormer",
        "dormers",
        "balcony",
        "deck",
        "porch",
        "ceiling",
        "ceilings",
        "bath",
    ];
    let pieces = cut(said);
    let over = pieces.iter().position(|piece| piece.is_word(&OVER))?;
    let is_other = pieces.iter().any(|piece| piece.is_word(&OTHERS));
    if is_other || typed.attempt.house.is_none() {
        return None;
    }
    // `bonus, finished, over the garage`: what stands before the place is a remark.
    let (before, place) = said.split_at(pieces[over].at);
    let trimmed = |said: &str| said.trim_matches([' ', ',', '-', '(', ')', ':', '.']).to_owned();
    let (before, said) = (trimmed(before), trimmed(place));
    let line = format!("{head} {one} x {two} {said}");
    let mut attempt = typed.attempt.clone();
    attempt.house = None;
    attempt.beside.before = format!("level {level}").into();
    attempt.beside.has_level_above = true;
    let space = Typed { line: &line, pieces: cut(&line), attempt: &attempt };
    let Answer::Ask { cause, mut asks, about, .. } = placed::answer(&space)? else {
        return None;
    };
    if !before.is_empty() && !before.eq_ignore_ascii_case("is") {
        asks = Box::new(asks.with_comment(&format!("  # {}", plainly(&before))));
    }
    asks.before = format!("level {level}\n{}", asks.before);
    let help = format!(
        "write `level {level}` on this line and `{head} {one} x {two}` on the next one, and after it how far it is from two walls of the level below that meet, as `6' from the south end, 10' from the west end`"
    );
    // `over the right half`, where the file does not say where the street is.
    let by_street = ["left", "right", "front", "back", "rear"];
    let needs_street = typed.attempt.beside.front.is_none()
        && pieces[over..].windows(2).any(|two| {
            // `set back 2' from the south side`
            two[1].is_word(&by_street) && !(two[0].is_word(&["set"]) && two[1].is_word(&["back"]))
        });
    let help = match needs_street {
        true => format!(
            "say on which side the street is, above the first level: `front south`, for instance; or {help}"
        ),
        false => help,
    };
    Some(Answer::Ask { cause, help, asks, about })
}
