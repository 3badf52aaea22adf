//! An outline from a map in the JSON of a reconciliation.

use schemars::JsonSchema;
use serde::Serialize;

use crate::house::House;
use crate::reconcile::{MapReport, RoofComparison};
use crate::units::area::Area;
use crate::units::length::Length;

/// An outline from a map.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MapOutlineReport {
    /// Its name.
    pub name: String,
    /// Its area; null if it does not close or crosses itself.
    pub sq_ft: Option<String>,
    /// Its comparison with the walls; null if it could not be compared.
    pub roof: Option<RoofReport>,
}

/// A roof placed over the walls where it fits best. Feet, square feet and degrees, rounded to the precision of a
/// map.
#[derive(Debug, Serialize, JsonSchema)]
pub struct RoofReport {
    /// The level that it is compared with.
    pub level: String,
    /// The names of the spaces assumed to be under the roof: the choice that fits best.
    pub under: Vec<String>,
    /// The area inside the outside walls under the roof.
    pub walls_sq_ft: String,
    /// How far, in feet, a roof of this size would project if it were the same all around: t of A + P·t + 4·t²;
    /// negative where the map has less than the walls.
    pub eave_ft: String,
    /// Whether that is an ordinary eave, from 0.5 to 2.5 ft.
    pub is_ordinary: bool,
    /// The overhang, in feet, at which the walls offset outward fit the roof outline best.
    pub fitted_eave_ft: String,
    /// How well the two fit: the area that both the roof and the walls with that eave cover, divided by the area that
    /// either covers; 1 if they are the same.
    pub fit: String,
    /// How far the outline was rotated to fit best, in degrees counterclockwise.
    pub turned_degrees: String,
    /// The outline's corners in that position on the level, east then north in feet from the level's origin.
    pub corners_ft: Vec<[String; 2]>,
    /// The parts where the roof's shape differs from that of the walls with their eave, the largest first.
    pub parts: Vec<RoofPartReport>,
}

/// An area that only the map or only the walls cover.
#[derive(Debug, Serialize, JsonSchema)]
pub struct RoofPartReport {
    /// Which of them covers it: `map` or `walls`.
    pub only_on: &'static str,
    /// Its area, in whole square feet.
    pub sq_ft: String,
    /// The side of the house on which it lies: `north`, `east`, `south` or `west`.
    pub side: &'static str,
    /// The name of the space nearest to it.
    pub beside: String,
}

pub(super) fn map_outline(house: &House, map: &MapReport) -> MapOutlineReport {
    MapOutlineReport {
        name: map.name().to_owned(),
        sq_ft: map.area().map(Area::sq_ft_text),
        roof: map.comparison().map(|roof| roof_report(house, roof)),
    }
}

fn roof_report(house: &House, roof: &RoofComparison) -> RoofReport {
    let name = |space: usize| house.spaces[space].name.clone();
    let tenths = |number: f64| fixed(number, 1);
    RoofReport {
        level: house.levels[roof.level()].name.clone(),
        under: roof.under().iter().map(|&space| name(space)).collect(),
        walls_sq_ft: fixed(roof.walls_sq_ft(), 0),
        eave_ft: tenths(roof.eave_ft()),
        is_ordinary: roof.is_ordinary(),
        fitted_eave_ft: tenths(roof.fitted_eave_ft()),
        fit: fixed(roof.fit(), 2),
        turned_degrees: tenths(roof.turned_degrees()),
        corners_ft: roof
            .corners()
            .iter()
            .map(|&(east, north)| [east, north].map(|nm| fixed(Length::from_nm(nm).feet(), 1)))
            .collect(),
        parts: roof
            .parts()
            .iter()
            .map(|part| RoofPartReport {
                only_on: if part.is_only_on_map() { "map" } else { "walls" },
                sq_ft: fixed(part.sq_ft(), 0),
                side: part.side().word(),
                beside: name(part.beside()),
            })
            .collect(),
    }
}

/// A number with at most `decimals` decimals and no trailing zeros.
fn fixed(number: f64, decimals: usize) -> String {
    let text = format!("{number:.decimals$}");
    let text =
        if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}
