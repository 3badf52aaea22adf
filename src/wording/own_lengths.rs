//! What a space would be by the record's own lengths of the walls that it shares with others.

use crate::diagnostic::words;
use crate::geometry::compass::Axis;
use crate::house::SideRule;
use crate::reconcile::Figure;
use crate::units::area::Area;
use crate::units::length::{Length, Step};
use crate::wording::sentences::{Sentences, the};
use crate::wording::size::size_of_sq_ft;

/// A wall of a space along an axis, as far from the origin of its level as its ends are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Wall {
    side: usize,
    axis: Axis,
    from: (i64, i64),
    to: (i64, i64),
}

/// A length by which a space is taken, and the space and the number of the side whose length on the record it is; `None` for
/// one that is rounded here.
#[derive(Clone, Copy, Debug)]
struct OwnSide {
    length: Length,
    of: Option<(usize, usize)>,
}

/// Walls of two spaces whose ends are no further apart are the same wall, in nanometers: an inch.
const SAME_NM: i64 = 25_400_000;

impl Wall {
    fn is_at(&self, other: &Wall) -> bool {
        let near = |a: (i64, i64), b: (i64, i64)| {
            (a.0 - b.0).abs() <= SAME_NM && (a.1 - b.1).abs() <= SAME_NM
        };
        near(self.from, other.from) && near(self.to, other.to)
            || near(self.from, other.to) && near(self.to, other.from)
    }
}

impl Sentences<'_> {
    /// What a space that is a rectangle would be by the figure's own lengths of its walls, where those are known and give
    /// another area than it is taken at: `168; by the record's own lengths, 15' × 14', it would be 210 sq ft, 42 more`.
    pub(super) fn by_its_own_lengths(&self, figure: &Figure, space: usize) -> Option<String> {
        let [one, other] = self.own_sides(figure, space)?;
        let [one, other] = [one, other].map(|side| match side.of {
            Some((of, number)) if of != space => {
                let name = words::the_named(&self.house.spaces[of].name);
                format!("{} (side {number} of {name})", side.length)
            }
            _ => side.length.to_string(),
        });
        let (sq_ft, taken) = self.taken_and_own(figure, space)?;
        let than = if sq_ft > taken { "more" } else { "less" };
        Some(format!(
            "{}; by {}'s own lengths, {one} × {other}, it would be {}, {} {than}",
            self.number(taken),
            the(figure),
            size_of_sq_ft(sq_ft, self.is_metric()),
            self.number((sq_ft - taken).abs())
        ))
    }

    /// The area of a space by the figure's own lengths, and the one that it is taken at, in square feet; `None` where they are
    /// the same or the first is not known.
    pub(super) fn taken_and_own(&self, figure: &Figure, space: usize) -> Option<(i64, i64)> {
        let [one, other] = self.own_sides(figure, space)?;
        let own = Area::rectangle(one.length, other.length).whole_sq_ft();
        let areas = &self.areas.spaces[space];
        let taken = match figure.side_rule() {
            SideRule::Step(Step::WholeFoot) => areas.net_whole_foot,
            _ => areas.net_tenth_foot,
        };
        let taken = taken.whole_sq_ft();
        (own != taken).then_some((own, taken))
    }

    /// The two lengths of a rectangle, its first side's axis first: the figure's own where it has one for a wall along that
    /// axis, else as the figure rounds. `None` unless the figure has one, or where it has two for one axis.
    fn own_sides(&self, figure: &Figure, space: usize) -> Option<[OwnSide; 2]> {
        let is_around = self.house.spaces.iter().any(|other| other.parent == Some(space));
        let walls = self.walls_on_site(space).filter(|walls| walls.len() == 4 && !is_around)?;
        if walls[0].axis == walls[1].axis {
            return None;
        }
        let mut is_any = false;
        let mut length = |axis: Axis| {
            let mut own = walls
                .iter()
                .filter(|wall| wall.axis == axis)
                .flat_map(|wall| self.own_lengths_of(figure, space, wall));
            match own.next() {
                None => {
                    let wall = walls.iter().find(|wall| wall.axis == axis)?;
                    let length = self.areas.outside_length(space, wall.side)?;
                    let length = match figure.side_rule() {
                        SideRule::Step(step) => length.rounded(step, self.settings.halves),
                        SideRule::Unknown => length,
                    };
                    Some(OwnSide { length, of: None })
                }
                Some(first) => {
                    is_any = true;
                    own.all(|other| other.length == first.length).then_some(first)
                }
            }
        };
        let sides = [length(walls[0].axis)?, length(walls[1].axis)?];
        is_any.then_some(sides)
    }

    /// The figure's own lengths of a wall: given with its side, or with the side of another space that is the same wall.
    fn own_lengths_of(&self, figure: &Figure, space: usize, wall: &Wall) -> Vec<OwnSide> {
        let recorded = |space: usize, side: usize| {
            let here = &self.house.spaces[space].sides[side];
            let mut shares = figure.shares().iter();
            let share = shares.find(|share| share.place == space && share.side() == here.number());
            here.recorded().filter(|_| figure.is_record()).or(share.map(|share| share.recorded()))
        };
        let level = self.house.spaces[space].level;
        let others = (0..self.house.spaces.len())
            .filter(|&other| other != space && self.house.spaces[other].level == level);
        let same = others.flat_map(|other| {
            let walls = self.walls_on_site(other).unwrap_or_default();
            let same = walls.into_iter().filter(|there| there.is_at(wall));
            same.map(move |there| (other, there.side)).collect::<Vec<_>>()
        });
        let walls = std::iter::once((space, wall.side)).chain(same);
        let own = |(space, side): (usize, usize)| {
            let number = self.house.spaces[space].sides[side].number.get();
            Some(OwnSide { length: recorded(space, side)?, of: Some((space, number)) })
        };
        walls.filter_map(own).collect()
    }

    /// The walls of a space at the outside, in walking order; `None` if one is slanted, curved or in several parts.
    fn walls_on_site(&self, space: usize) -> Option<Vec<Wall>> {
        let here = &self.house.spaces[space];
        let there = &self.areas.outside.spaces[space];
        let mut at = (here.at.0 + there.start.0, here.at.1 + there.start.1);
        let vectors = self.areas.spaces[space].outside().vectors();
        let pieces = there.traverse.sides.iter().zip(vectors);
        let walls = pieces.map(|(piece, vector)| {
            let from = at;
            at = (at.0 + vector.east, at.1 + vector.north);
            let axis = match (vector.east, vector.north) {
                (0, _) => Axis::North,
                (_, 0) => Axis::East,
                _ => return None,
            };
            let side = piece.source.filter(|_| vector.rise == 0)?;
            Some(Wall { side, axis, from, to: at })
        });
        let walls: Vec<Wall> = walls.collect::<Option<_>>()?;
        (walls.len() == here.sides.len()).then_some(walls)
    }
}
