//! Lines of spaces whose place is told in words.

use super::assembled::{self, Space};
use super::whereabouts::Told;
use super::{Answer, Typed, measures, size_in};
use crate::sketch::asked::{Placeless, Whereabouts};

/// `garage on the east side, 22' x 20', county has 460`, `shed in the yard 10x12`, `porch "P" 3' east of corner 3`.
///
/// Everything else that the line says is kept; only the place is asked for. It is computed later, from the outlines.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let space =
        assembled::read(typed).filter(|space| !space.is_unclear && space.place.is_none())?;
    if space.within.is_some() && typed.find(1, &["cut", "carved", "built"]).is_some() {
        return Some(Answer::line(
            space.line(),
            "what lies under the same roof, in the walk of another space, is `within` that space",
        ));
    }
    let told = space.told.as_ref()?;
    // The first space of a level needs no place.
    if space.kind == "living" && typed.attempt.house.is_none() || typed.says(1, &["walk"]) {
        return None;
    }
    // Sides that are still to be made of a size, and words that say nothing but `detached`, have rules of their own.
    let has_size = space.comments.iter().any(|comment| size_in(comment).is_some());
    let sides_follow = super::super::begins_as_side(&typed.attempt.beside.after);
    let is_alone = ["itself", "apart", "own", "alone"].iter().any(|word| told.said.contains(word));
    if has_size && !sides_follow || is_alone {
        return None;
    }
    if can_stand_apart(space.kind) && stands_apart(&space, &told.told) {
        let mut line = format!("{} detached {}", space.before_place(), space.after_place());
        line.truncate(line.trim_end().len());
        let mut comments: Vec<&str> = space.comments.iter().map(String::as_str).collect();
        comments.push(told.said.trim_matches(['(', ')']));
        return Some(Answer::line(
            format!("{line}  # {}", comments.join(", ")),
            "a space that stands by itself is `detached`",
        ));
    }
    let place = match &told.told {
        Told::Place(place) if !has_length(&space) => place.clone(),
        _ => Whereabouts::Unknown,
    };
    let comments = space.comments.join(", ");
    let comments = if comments.is_empty() { comments } else { format!("  # {comments}") };
    Some(Answer::Ask {
        cause: format!("`{}` is no place that can be drawn", told.said),
        help: ask(typed, &space),
        asks: Box::new(Placeless {
            before: space.before_place(),
            after: format!("{}{comments}", space.after_place()),
            place,
            of: told.of.clone(),
        }),
    })
}

/// Whether a remark on the line has a length that is no size: it may say how far off something is.
fn has_length(space: &Space) -> bool {
    space.comments.iter().any(|comment| measures(comment) && size_in(comment).is_none())
}

pub(super) fn can_stand_apart(kind: &str) -> bool {
    matches!(kind, "outbuilding" | "garage" | "carport" | "storage")
}

/// Whether the words put the space away from the house; an outbuilding `behind the house` is not built against it.
fn stands_apart(space: &Space, told: &Told) -> bool {
    let is_side = matches!(told, Told::Place(Whereabouts::Side(_) | Whereabouts::Unknown))
        && space.kind == "outbuilding";
    *told == Told::Apart || is_side
}

/// What is missing in the line of a space, and what stays as it is.
pub(super) fn ask(typed: &Typed<'_>, space: &Space) -> String {
    let has_size = space.comments.iter().any(|comment| size_in(comment).is_some());
    let sides_follow = super::super::begins_as_side(&typed.attempt.beside.after);
    let after = space.after_place();
    let mut then = if after.is_empty() { String::new() } else { format!(", then `{after}`") };
    if !space.comments.is_empty() {
        then.push_str(&format!(", then `# {}`", space.comments.join(", ")));
    }
    let sides = if has_size && !sides_follow {
        "; its size is typed as its sides, one on each line below"
    } else {
        ""
    };
    let places = starts(typed, space.kind);
    format!("write `{}`, then where it starts: {places}{then}{sides}", space.before_place())
}

/// How the place of a space of this kind can be given at this line of the file.
pub(super) fn starts(typed: &Typed<'_>, kind: &str) -> String {
    let corner = typed.attempt.beside.corners.first();
    let mut places: Vec<String> = Vec::new();
    let lies_inside = matches!(kind, "open" | "stair" | "low");
    if let Some(corner) = corner.filter(|_| !lies_inside) {
        places.push(format!("`from corner \"{corner}\"`"));
    }
    match typed.attempt.house.as_ref() {
        Some(house) if lies_inside => places
            .push(format!("`start` and how far east and north of corner 1 of `{house}` it begins")),
        Some(house) => places.push(format!(
            "`from \"{house}\" corner` and the number of the corner where its walk starts"
        )),
        None => {}
    }
    if !lies_inside || places.is_empty() {
        let start = "`start` with a way and a length from where the level's first walk begins";
        places.push(start.to_owned());
    }
    if can_stand_apart(kind) {
        places.push("`detached` if it stands by itself".to_owned());
    }
    crate::diagnostic::words::list_or(&places)
}
