//! Where the compass lies on a drawing, which has the street at the bottom.

use crate::geometry::compass::Direction;

/// Which way north and east are on the drawings; `front` is the side of the street, `None` if the file does not say
/// it: north is then up.
///
/// Where an arrow shows true north, the north of the walls is told apart from it.
pub(crate) fn on_drawings(front: Option<Direction>, has_an_arrow: bool) -> String {
    let (north, east) = match front {
        None | Some(Direction::South) => ("up", "to the right"),
        Some(Direction::North) => ("down", "to the left"),
        Some(Direction::East) => ("to the right", "down"),
        Some(Direction::West) => ("to the left", "up"),
    };
    let street = if front.is_some() { ", and the street is at the bottom" } else { "" };
    match has_an_arrow {
        true => format!(
            "on the drawings north as typed is {north}, east {east}{street}; true north is where the arrow points"
        ),
        false => format!("on the drawings north is {north}, east {east}{street}"),
    }
}
