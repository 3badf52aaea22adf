//! Where the compass lies on a drawing, which has the street at the bottom.

use crate::geometry::compass::Direction;

/// Which way north and east are on the drawings; `front` is the side of the street, `None` if the file does not say
/// it: north is then up.
///
/// Where an arrow shows true north, the north of the walls is told apart from it; `true_north` is how far it is turned from
/// that, in words.
pub(crate) fn on_drawings(front: Option<Direction>, true_north: Option<&str>) -> String {
    let (north, east) = match front {
        None | Some(Direction::South) => ("up", "to the right"),
        Some(Direction::North) => ("down", "to the left"),
        Some(Direction::East) => ("to the right", "down"),
        Some(Direction::West) => ("to the left", "up"),
    };
    let street = if front.is_some() { ", and the street is at the bottom" } else { "" };
    match true_north {
        Some(turned) => {
            format!("on the drawings north as typed is {north}, east {east}{street}; {turned}")
        }
        None => format!("on the drawings north is {north}, east {east}{street}"),
    }
}

/// Where true north is, for who does not see the arrow; `bearing` is the true one of the way that the file calls north, as a
/// unit vector to the east and north: `true north is 18° counterclockwise from there`.
#[cfg(feature = "pages")]
#[expect(clippy::float_arithmetic, reason = "a bearing is an angle")]
pub(crate) fn true_north(bearing: (f64, f64)) -> String {
    const HALF_TURN: f64 = 180.0;
    let degrees = libm::atan2(bearing.0, bearing.1) / std::f64::consts::PI * HALF_TURN;
    let told = format!("{:.1}", degrees.abs());
    let told = told.trim_end_matches(".0");
    match (told, degrees > 0.0) {
        ("0", _) => "true north is the same".to_owned(),
        (told, true) => format!("true north is {told}° counterclockwise from there"),
        (told, false) => format!("true north is {told}° clockwise from there"),
    }
}
