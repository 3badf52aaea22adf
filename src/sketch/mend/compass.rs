//! Directions as words: the one way between two, and the opposite of a way.

use crate::geometry::compass::Direction;

/// The two directions of `southwest`, `SW` or `south-west`: north or south, then east or west.
pub(in crate::sketch) fn slant(word: &str) -> Option<(&'static str, &'static str)> {
    match word.to_lowercase().replace('-', "").as_str() {
        "ne" | "northeast" => Some(("north", "east")),
        "nw" | "northwest" => Some(("north", "west")),
        "se" | "southeast" => Some(("south", "east")),
        "sw" | "southwest" => Some(("south", "west")),
        _ => None,
    }
}

/// The whole word of a way and of its opposite: `n` gives `north` and `south`.
pub(super) fn way_and_back(word: &str) -> Option<(&'static str, &'static str)> {
    Some(match word.to_lowercase().trim_end_matches('.') {
        "north" | "n" => ("north", "south"),
        "south" | "s" => ("south", "north"),
        "east" | "e" => ("east", "west"),
        "west" | "w" => ("west", "east"),
        "back" | "rear" => ("back", "front"),
        "front" => ("front", "back"),
        "right" => ("right", "left"),
        "left" => ("left", "right"),
        _ => return None,
    })
}

/// The compass word of a side of the house as seen from the street, if it is known where the street is.
pub(super) fn by_compass(way: &'static str, front: Option<Direction>) -> &'static str {
    let Some(front) = front else { return way };
    let back = front.opposite();
    // Seen from the street, the right of a house whose back is north is east.
    let right = back.right();
    match way {
        "back" => back.word(),
        "front" => front.word(),
        "right" => right.word(),
        "left" => right.opposite().word(),
        way => way,
    }
}

/// Whether a way runs north or south, or to the back or the front.
pub(super) fn is_upright(way: &str) -> bool {
    matches!(way, "north" | "south" | "back" | "front")
}

/// The two ways along a wall on this side of the house.
pub(super) fn along(side: &str) -> [&'static str; 2] {
    match side {
        "north" | "south" => ["east", "west"],
        "east" | "west" => ["north", "south"],
        "back" | "front" => ["right", "left"],
        _ => ["back", "front"],
    }
}

/// The compass word for a way in another language, or in English.
pub(super) fn way_word(word: &str) -> Option<&'static str> {
    Some(match word.to_lowercase().as_str() {
        "north" | "n" | "norte" | "nord" | "norden" => "north",
        "south" | "s" | "sur" | "sud" | "süd" | "süden" => "south",
        "east" | "e" | "este" | "est" | "ost" | "osten" => "east",
        "west" | "w" | "oeste" | "ouest" | "westen" => "west",
        _ => return None,
    })
}
