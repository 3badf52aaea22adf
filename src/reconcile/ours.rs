//! Possible errors in the house's own measurements that would explain the gap.
//!
//! A mistyped wall usually shows as a misclosure, except on an axis with a side by closing. A garage or porch walked as
//! part of the house makes the house larger than the record.
#![expect(
    clippy::float_arithmetic,
    reason = "what a slip would change is held against what rounding leaves"
)]

use crate::areas::is_in_total;
use crate::house::Kind;
use crate::reconcile::case::Case;
use crate::reconcile::misread::typing_slips;
use crate::reconcile::parts::{Shape, parts};
use crate::units::area::Area;

/// What to check again in our measurements; spaces and sides are given by index.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Question {
    /// Is a garage or porch inside the outline? A part of the outline has the size of one.
    Inside { space: usize, side: usize, kind: Kind, sq_ft: i64 },
    /// Measure a wall again: nothing checks its axis, and a typing error in it would explain the gap.
    Wall { space: usize, side: usize },
}

/// The 5% to 95% range of the areas of attached garages, and of porches, in square feet, in 2,425 houses of Ames IA.
const GARAGE: (f64, f64) = (273.0, 880.0);
const PORCH: (f64, f64) = (40.0, 229.0);
/// How far the part may be from what the record lacks: as a share of the part, or in square feet.
const OF_A_PART: f64 = 0.06;
const LEAST_OF_A_PART: f64 = 5.0;
/// No wall of a garage is shorter than this, in feet.
const NARROWEST_GARAGE_FT: f64 = 9.5;

/// The questions whose answers would explain a gap (figure minus house, in square feet), give or take `allows`.
pub(super) fn questions(case: &Case<'_>, gap: f64, allows: f64) -> Vec<Question> {
    let closes = |change: f64| (gap - change).abs() <= allows;
    let mut list = Vec::new();
    list.extend(inside(case));
    list.extend(wall(case, closes));
    list
}

/// A part of the outline as large as a garage or porch, if the record is smaller by about that area than the house
/// measured the record's own way.
fn inside(case: &Case<'_>) -> Option<Question> {
    let gap = (case.figure - case.like).sq_ft();
    let closes = |effect: f64| (gap - effect).abs() <= (OF_A_PART * -effect).max(LEAST_OF_A_PART);
    let house = case.listed.house;
    let has = |kind: Kind| house.spaces.iter().any(|space| space.kind == kind);
    let (least, kind) = match -gap {
        size if (GARAGE.0..=GARAGE.1).contains(&size) && !has(Kind::Garage) => {
            (NARROWEST_GARAGE_FT, Kind::Garage)
        }
        size if (PORCH.0..=PORCH.1).contains(&size) && !has(Kind::Porch) => (0.0, Kind::Porch),
        _ => return None,
    };
    let counted = (0..house.spaces.len()).filter(|&i| is_in_total(house, i, false));
    let mut found = counted.flat_map(|space| {
        let outline = &house.spaces[space].closed.outline;
        let is_one = |shape: Shape| matches!(shape, Shape::Jog | Shape::Wing);
        let list = parts(outline).into_iter().filter(move |part| is_one(part.shape));
        list.filter(move |part| {
            let wide =
                part.walls(outline).map(|side| outline.vectors()[side].chord_length().feet());
            wide.iter().all(|feet| *feet >= least)
        })
        .map(move |part| (space, part.side, part.effect(outline).sq_ft()))
    });
    let (space, side, effect) = found.find(|&(.., effect)| closes(effect))?;
    let sq_ft = Area::from_float_sq_ft(-effect).whole_sq_ft();
    Some(Question::Inside { space, side, kind, sq_ft })
}

/// A wall of an axis without a closure check whose length, if mistyped, would explain the gap.
fn wall(case: &Case<'_>, closes: impl Fn(f64) -> bool) -> Option<Question> {
    let house = case.listed.house;
    let is_metric = house.usual_form().is_metric();
    for space in (0..house.spaces.len()).filter(|&i| is_in_total(house, i, false)) {
        let closed = &house.spaces[space].closed;
        let mut found = None;
        typing_slips(&closed.traverse, &closed.outline, is_metric, |side, effect| {
            if found.is_none() && closes(effect) {
                found = Some(side);
            }
        });
        if let Some(side) = found {
            return Some(Question::Wall { space, side });
        }
    }
    None
}
