//! Sentences about an outline from a map: how the roof lies over the walls, and where to look.
#![expect(clippy::float_arithmetic, reason = "a fit is a share; it is told in whole percent")]

use crate::diagnostic::words;
use crate::house::House;
use crate::reconcile::{MapReport, Reconciliation, RoofComparison, RoofPart};
use crate::wording::Block;
use crate::wording::sentences::{Sentences, rounded_float, whole};

/// What a map says and does not say.
const NO_AREA: &str = "A map mostly shows the roof, seen from above. None of its area is counted here; it only shows where to look.";

/// The same for the page that decides, beside a part that was not measured.
pub(crate) const WHAT_A_MAP_SHOWS: &str = "An outline from a map is mostly the roof, seen from above: it shows where to measure, not what is under the roof, which may be a room, a porch or a carport. None of its area is counted here.";

/// An outline from a map in a heading.
pub(crate) fn map_title(map: &MapReport) -> String {
    match map.area() {
        Some(area) => format!("The outline \"{}\" from a map: {} sq ft", map.name(), whole(area)),
        None => format!("The outline \"{}\" from a map has no area", map.name()),
    }
}

/// What is said about it, as blocks.
pub(crate) fn map_said(say: &Sentences<'_>, map: &MapReport) -> Vec<Block> {
    let house = say.house;
    let Some(roof) = map.comparison() else {
        let why = match map.area() {
            None => "Its sides do not close, or cross each other, so it was not compared.",
            Some(_) => "No measured walls go with it, so it was not compared.",
        };
        return vec![Block::paragraph(why)];
    };
    let mut told = vec![Block::paragraph(laid(house, roof))];
    // With an ordinary eave, the sentence on the fit is enough.
    if !roof.is_ordinary() {
        told.push(Block::paragraph(eave(roof)));
    }
    told.extend(roof.parts().iter().map(|part| Block::Item(part_said(say, part))));
    told.push(Block::paragraph(NO_AREA));
    told
}

/// The line under a drawing over which the map's outline is laid.
pub(crate) fn map_note(map: &MapReport, roof: &RoofComparison) -> String {
    format!(
        "short dashes: the outline \"{}\" from a map, mostly the roof, placed where it fits best ({}); its area is not counted",
        map.name(),
        fit(roof)
    )
}

/// Where the outline from a map and the walls part, for those who cannot see the drawing.
#[cfg(feature = "pages")]
pub(crate) fn parts_heard(house: &House, roof: &RoofComparison) -> Vec<String> {
    let told = |part: &RoofPart| {
        let what = match part.is_only_on_map() {
            true => "The short dashes stand out beyond the walls",
            false => "The walls stand out beyond the short dashes",
        };
        let size = match part.size_ft() {
            Some((wide, deep)) => {
                format!("about {}' by {}'", rounded_float(wide), rounded_float(deep))
            }
            None => format!("about {} sq ft", rounded_float(part.sq_ft())),
        };
        let beside = words::the_quoted(&house.spaces[part.beside()].name);
        format!("{what} on the {} side of {beside}, {size}.", part.side().word())
    };
    roof.parts().iter().map(told).collect()
}

/// For each map, a sentence on the largest place where it shows a roof with no measured wall under it, for the page
/// that decides. Empty if there is no such place.
pub(crate) fn not_measured(house: &House, reconciliation: &Reconciliation) -> Vec<String> {
    // A part about as large as what is left has a sentence of its own, with its size at the walls.
    let is_told =
        reconciliation.figures().first().is_some_and(|figure| figure.unwalked().is_some());
    if is_told {
        return Vec::new();
    }
    let sentence = |part: &RoofPart| {
        format!(
            "A map shows a roof of about {} sq ft on the {} side of {} with no measured wall under it: there may be an addition that was not measured, or a porch or carport.",
            rounded_float(part.sq_ft()),
            part.side().word(),
            words::the_quoted(&house.spaces[part.beside()].name)
        )
    };
    largest_not_measured(reconciliation).into_iter().map(sentence).collect()
}

/// For each map, the largest part of the roof that lies over no measured wall.
pub(crate) fn largest_not_measured(reconciliation: &Reconciliation) -> Vec<&RoofPart> {
    let roofs = reconciliation.maps().iter().filter_map(MapReport::comparison);
    let largest = |roof: &'_ RoofComparison| -> Option<usize> {
        let parts = roof.parts().iter().enumerate().filter(|(_, part)| part.is_only_on_map());
        parts.max_by(|(_, a), (_, b)| a.sq_ft().total_cmp(&b.sq_ft())).map(|(i, _)| i)
    };
    roofs.filter_map(|roof| largest(roof).map(|i| &roof.parts()[i])).collect()
}

/// How well the roof fits: `97% of what either covers is covered by both`.
fn fit(roof: &RoofComparison) -> String {
    let share = rounded_float((roof.fit() * 100.0).floor());
    format!("{share}% of what either covers is covered by both")
}

fn laid(house: &House, roof: &RoofComparison) -> String {
    let names: Vec<&str> =
        roof.under().iter().map(|&space| house.spaces[space].name.as_str()).collect();
    let turned = roof.turned_degrees();
    let turned = match format!("{:.1}", turned.abs()).as_str() {
        "0.0" => String::new(),
        degrees if turned > 0.0 => format!(", turned {degrees}° counterclockwise"),
        degrees => format!(", turned {degrees}° clockwise"),
    };
    format!(
        "It fits best over the walls of {} ({} sq ft) with a roof that overhangs by {} ft all around{turned}: {}.",
        words::all_of(&names),
        rounded_float(roof.walls_sq_ft()),
        tenths(roof.fitted_eave_ft()),
        fit(roof)
    )
}

fn eave(roof: &RoofComparison) -> String {
    let feet = roof.eave_ft();
    let ordinary = "an ordinary eave (0.5 to 2.5 ft)";
    let by_size = format!("By its size, the roof would overhang by {} ft all around", tenths(feet));
    let where_alike = match roof.parts() {
        [] => String::new(),
        _ => format!(
            " Where the two have the same shape, it overhangs by {} ft.",
            tenths(roof.fitted_eave_ft())
        ),
    };
    if roof.is_ordinary() {
        return format!("{by_size}: {ordinary}.{where_alike}");
    }
    if feet > 0.0 && tenths(feet) != "0.0" {
        return match feet > crate::reconcile::ORDINARY_EAVE_FT.0 {
            true => format!("{by_size}: more than {ordinary}.{where_alike}"),
            false => format!(
                "{by_size}: less than {ordinary}. The map may show the walls and not the roof, or be drawn roughly.{where_alike}"
            ),
        };
    }
    let less = rounded_float((roof.walls_sq_ft() - roof.roof_sq_ft()).max(0.0));
    format!(
        "It covers {less} sq ft less than the walls, so there is no eave to tell. The map may be older than a part of the house, or show the walls and not the roof."
    )
}

fn tenths(feet: f64) -> String {
    format!("{:.1}", if feet.abs() < 0.05 { 0.0 } else { feet })
}

fn part_said(say: &Sentences<'_>, part: &RoofPart) -> String {
    let house = say.house;
    let look = match say.is_for_the_office() {
        true => "",
        false => " Look there before these figures are used.",
    };
    let size = match part.size_ft() {
        Some((wide, deep)) => {
            format!("about {}' by {}', ", rounded_float(wide), rounded_float(deep))
        }
        None => "about ".to_owned(),
    };
    let sq_ft = rounded_float(part.sq_ft());
    let place = format!(
        "on the {} side of {}",
        part.side().word(),
        words::the_quoted(&house.spaces[part.beside()].name)
    );
    if part.is_only_on_map() {
        format!(
            "Only on the map: with its eaves {size}{sq_ft} sq ft {place}. Is there an addition that the measurements do not show, or a porch or carport under the roof?{look}"
        )
    } else {
        format!(
            "Only as measured: {size}{sq_ft} sq ft {place}, not under the roof on the map. Was it built after the map was made, or does it have no roof?"
        )
    }
}
