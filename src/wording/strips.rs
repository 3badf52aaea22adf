//! What several of a record's own lengths add together: the strips by which they move the walls across them.

use crate::geometry::compass::Axis;
use crate::geometry::outline::Vector;
use crate::house::{Face, SideRule};
use crate::reconcile::{Figure, Share};
use crate::units::area::Area;
use crate::units::length::{Length, Step};
use crate::wording::sentences::Sentences;

/// A wall that stands elsewhere by the record's own lengths: its number, its length, how far it is moved, and the area
/// that this adds.
struct Strip {
    number: usize,
    long: Length,
    by: Length,
    area: Area,
}

/// The most strips that are told.
const MOST: usize = 3;
/// Of fewer lengths it is seen at once what they add.
const FEWEST: usize = 3;

impl Sentences<'_> {
    /// What three or more lengths along one axis add, wall by wall: `34 × 2 (side 2) − 14 × 1 (side 4)`, for a wall of 34' that
    /// stands 2' further out and one of 14' that stands 1' further in. `None` where a single product does not give each.
    pub(super) fn strips(&self, figure: &Figure, group: &[&Share]) -> Option<String> {
        let differ = group.iter().filter(|share| share.ruled() != share.recorded()).count();
        let is_plain = figure.face() == Face::Outside
            && figure.side_rule() == SideRule::Step(Step::WholeFoot)
            && differ >= FEWEST;
        let strips = self.moved_walls(figure, group).filter(|_| is_plain)?;
        let total: Area = group.iter().map(|share| share.area()).sum();
        let is_all = strips.iter().map(|strip| strip.area).sum::<Area>() == total;
        if !is_all || !(2..=MOST).contains(&strips.len()) {
            return None;
        }
        let told = strips.iter().enumerate().map(|(i, strip)| {
            let sign = match (i, strip.area < Area::ZERO) {
                (0, false) => "",
                (0, true) => "\u{2212}",
                (_, false) => " + ",
                (_, true) => " \u{2212} ",
            };
            let (long, by) = (strip.long.decimal_feet(), strip.by.decimal_feet());
            format!("{sign}{long} × {by} (side {})", strip.number)
        });
        Some(told.collect())
    }

    /// The walls across the axis of these lengths that do not stay where they are, as seen from where most of the walls stay.
    fn moved_walls(&self, figure: &Figure, group: &[&Share]) -> Option<Vec<Strip>> {
        let (space, axis) = (group.first()?.place, group.first()?.axis()?);
        let differs_across = |share: &Share| {
            share.place == space && share.axis() != Some(axis) && share.ruled() != share.recorded()
        };
        if figure.shares().iter().any(differs_across) || self.house.is_deducted(space) {
            return None;
        }
        let outline = self.areas.spaces[space].whole_foot();
        let vectors = outline.vectors();
        let sides = &self.areas.outside.spaces[space].traverse.sides;
        let is_whole = sides.iter().enumerate().all(|(i, side)| side.source == Some(i));
        let is_square = |v: &Vector| v.rise == 0 && (v.east == 0 || v.north == 0);
        if !is_whole || sides.len() != vectors.len() || !vectors.iter().all(is_square) {
            return None;
        }
        let parts = |v: &Vector| match axis {
            Axis::North => (v.north, v.east),
            Axis::East => (v.east, v.north),
        };
        // How far each wall across the axis is moved along it, relative to the first corner.
        let mut at = 0;
        let mut shifts: Vec<(usize, i64)> = Vec::new();
        for (i, vector) in vectors.iter().enumerate() {
            let (along, _) = parts(vector);
            if along == 0 {
                shifts.push((i, at));
            }
            if let Some(share) = group.iter().find(|share| share.side().index() == i) {
                if share.ruled().nm() != along.abs() {
                    return None;
                }
                at += along.signum() * (share.recorded() - share.ruled()).nm();
            }
        }
        let long = |i: usize| parts(&vectors[i]).1;
        let stays = |shift: i64| -> i64 {
            shifts.iter().filter(|(_, other)| *other == shift).map(|(i, _)| long(*i).abs()).sum()
        };
        let base = shifts.iter().map(|(_, shift)| *shift).max_by_key(|&shift| stays(shift))?;
        let way = match axis {
            Axis::North => -outline.turn(),
            Axis::East => outline.turn(),
        };
        let moved = shifts.into_iter().filter(|(_, shift)| *shift != base).map(|(i, shift)| {
            let (long, by) = (long(i), shift - base);
            let (length, distance) = (Length::from_nm(long.abs()), Length::from_nm(by.abs()));
            let size = Area::rectangle(length, distance);
            let area = if way * long.signum() * by.signum() > 0 { size } else { -size };
            let number = self.house.spaces[space].sides[i].number.get();
            Strip { number, long: length, by: distance, area }
        });
        (at == 0).then(|| moved.collect())
    }
}
