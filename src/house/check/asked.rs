//! Places for a space whose place was told in words: each is computed from what the words mean, tried, and offered only
//! if the level accepts the space there.
#![expect(
    clippy::float_arithmetic,
    reason = "places for a message are judged against tolerances; no printed figure comes from here"
)]

use crate::diagnostic::Diagnostic;
use crate::geometry::compass::{Axis, Direction};
use crate::house::check::Checker;
use crate::house::check::glance::Glance;
use crate::house::check::places::{At, Tried, grain};
use crate::sketch::{Kind, Sketch, Whereabouts};
use crate::units::length::Length;

/// The most places that are suggested.
const MOST_OFFERED: usize = 3;
/// Two corners that are not farther apart along each axis are one: an eighth of an inch.
const NEAR: i64 = 3_175_000;

/// The places, each as it is typed, for the space whose line begins at byte `line` of the text. Empty if the words
/// name nothing that has been measured, or the level accepts none.
pub(crate) fn places(
    sketch: &Sketch,
    line: usize,
    told: &Whereabouts,
    of: Option<&str>,
) -> Vec<String> {
    let mut found: Vec<Diagnostic> = Vec::new();
    let mut checker = Checker::new(sketch, &mut found, Glance::at(sketch));
    for (i, level) in sketch.levels.iter().enumerate() {
        checker.level(i, level);
    }
    let space = checker.house.spaces.iter().position(|space| space.span.start == line);
    space.map_or_else(Vec::new, |space| checker.places_told(space, told, of))
}

impl Checker<'_> {
    fn places_told(&mut self, space: usize, told: &Whereabouts, of: Option<&str>) -> Vec<String> {
        let Some(other) = self.counted_from(space, of) else { return Vec::new() };
        let here = &self.house.spaces[space];
        let parent = if here.kind.lies_in_another() { Some(other) } else { here.parent };
        let inside = parent == Some(other);
        let grain = grain(self.form());
        let even = |nm: i64| Length::from_nm(nm).rounded_to(grain).nm();
        let mut tried: Vec<Tried> = Vec::new();
        let mut seen: Vec<At> = Vec::new();
        for at in self.told(space, other, told) {
            let at = (even(at.0), even(at.1));
            if seen.contains(&at) {
                continue;
            }
            seen.push(at);
            let clear_of = Some(other).filter(|_| !inside);
            if !self.is_accepted(space, at, parent, clear_of)
                || !self.is_as_told(space, at, other, inside, told)
            {
                continue;
            }
            let flush = self.flush(space, at, other, inside);
            let is_free =
                matches!(told, Whereabouts::FromCorner(..) | Whereabouts::FromCompassCorner(..));
            if inside || flush >= 1.0 || is_free {
                tried.push(Tried { at, by: 0, flush });
            }
        }
        tried.sort_by(|a, b| b.flush.total_cmp(&a.flush));
        // Where all of a wall lies against the house, places where only part of it does are not meant.
        if let [best, ..] = tried[..] {
            tried.retain(|place| 2.0 * place.flush >= best.flush);
        }
        tried.truncate(MOST_OFFERED);
        let places = self.typed(space, tried);
        places.iter().map(|place| place.trim_matches('`').to_owned()).collect()
    }

    /// The space that words about a place count from: the one that they name, else the first living space above on the
    /// level.
    fn counted_from(&self, space: usize, of: Option<&str>) -> Option<usize> {
        let level = self.house.spaces[space].level;
        let above = || {
            let all = self.house.spaces.iter().enumerate().take(space);
            all.filter(|(_, there)| there.level == level && !there.by_itself)
        };
        let named = of.and_then(|of| above().find(|(_, one)| one.name.eq_ignore_ascii_case(of)));
        let living = || above().find(|(_, there)| there.kind == Kind::Living);
        named.or_else(living).or_else(|| above().next()).map(|(i, _)| i)
    }

    /// Places that the words may mean.
    fn told(&self, space: usize, other: usize, told: &Whereabouts) -> Vec<At> {
        let there = &self.house.spaces[other];
        let corners: Vec<At> = there
            .closed
            .outline
            .points()
            .iter()
            .map(|at| (there.at.0 + at.0, there.at.1 + at.1))
            .collect();
        let moved = |at: At, way: Direction, by: Length| match way.axis() {
            Axis::East => (at.0 + way.sign() * by.nm(), at.1),
            Axis::North => (at.0, at.1 + way.sign() * by.nm()),
        };
        let ways = [Direction::North, Direction::East, Direction::South, Direction::West];
        let around = |at: At, by: Length| ways.map(|way| moved(at, way, by));
        let numbered = |number: usize| number.checked_sub(1).and_then(|i| corners.get(i)).copied();
        match told {
            Whereabouts::FromCorner(number, offsets)
                if offsets.is_empty() && self.house.spaces[space].parent == Some(other) =>
            {
                let at = numbered(*number);
                at.map(|at| self.corner_on_corner(space, &[at])).unwrap_or_default()
            }
            Whereabouts::FromCorner(number, offsets) => numbered(*number)
                .map(|at| offsets.iter().fold(at, |at, (way, by)| moved(at, *way, *by)))
                .into_iter()
                .collect(),
            Whereabouts::NearCorner(number, by) => {
                numbered(*number).map(|at| around(at, *by).to_vec()).unwrap_or_default()
            }
            Whereabouts::NearCompassCorner(north, east, by) => {
                let corner = self.corner_toward(other, *north, *east);
                corner.map(|at| around(at, *by).to_vec()).unwrap_or_default()
            }
            Whereabouts::Side(_) | Whereabouts::Corner(..) => {
                self.corner_on_corner(space, &corners)
            }
            Whereabouts::FromWall(side, by) => {
                let here = self.house.spaces[space].closed.outline.extent((0, 0));
                let edge = |(low, high): (i64, i64)| if side.sign() < 0 { low } else { high };
                let in_from = -side.sign() * by.nm();
                let all = self.corner_on_corner(space, &corners).into_iter();
                match side.axis() {
                    Axis::East => {
                        let east = edge(there.extent.east()) + in_from - edge(here.east());
                        all.map(|at| (east, at.1)).collect()
                    }
                    Axis::North => {
                        let north = edge(there.extent.north()) + in_from - edge(here.north());
                        all.map(|at| (at.0, north)).collect()
                    }
                }
            }
            Whereabouts::FromCompassCorner(north, east, offsets) => self
                .corner_toward(other, *north, *east)
                .map(|at| offsets.iter().fold(at, |at, (way, by)| moved(at, *way, *by)))
                .into_iter()
                .collect(),
            Whereabouts::Along(side, from, by) => {
                let inside = self.house.spaces[space].parent == Some(other)
                    || self.house.spaces[space].kind.lies_in_another();
                let end = self.inset(space, other, *from, *by, true);
                let across = self.inset(space, other, *side, Length::ZERO, inside);
                vec![if side.axis() == Axis::East { (across, end) } else { (end, across) }]
            }
            Whereabouts::FromWalls([one, two]) => {
                let first = self.inset(space, other, one.0, one.1, true);
                let second = self.inset(space, other, two.0, two.1, true);
                vec![if one.0.axis() == Axis::East { (first, second) } else { (second, first) }]
            }
            Whereabouts::Unknown => Vec::new(),
        }
    }

    /// How far along the axis of `side` the walk of a space starts if the box around it lies this far inside of the box
    /// around `other` on that side, or, if it is not inside, against it.
    fn inset(&self, space: usize, other: usize, side: Direction, by: Length, inside: bool) -> i64 {
        let there = &self.house.spaces[other];
        let there = there.closed.outline.extent(there.at);
        let here = self.house.spaces[space].closed.outline.extent((0, 0));
        let (there, here) = match side.axis() {
            Axis::East => (there.east(), here.east()),
            Axis::North => (there.north(), here.north()),
        };
        let edge = |(low, high): (i64, i64), low_one: bool| if low_one { low } else { high };
        let is_low = side.sign() < 0;
        edge(there, is_low) - side.sign() * by.nm() - edge(here, is_low == inside)
    }

    /// The places at which a corner of the box around a space lies on one of these corners.
    fn corner_on_corner(&self, space: usize, corners: &[At]) -> Vec<At> {
        let own = self.house.spaces[space].closed.outline.extent((0, 0));
        let (east, north) = (own.east(), own.north());
        let own = [(east.0, north.0), (east.0, north.1), (east.1, north.0), (east.1, north.1)];
        let on = |at: &At| own.map(|own| (at.0 - own.0, at.1 - own.1));
        corners.iter().flat_map(on).collect()
    }

    /// The corner of a space that lies farthest toward two directions.
    fn corner_toward(&self, space: usize, north: Direction, east: Direction) -> Option<At> {
        let space = &self.house.spaces[space];
        let far = |at: &&At| north.sign() * at.1 + east.sign() * at.0;
        let points = space.closed.outline.points();
        let at = points.iter().max_by_key(far)?;
        Some((space.at.0 + at.0, space.at.1 + at.1))
    }

    /// Whether a space at `at` lies on the side, or at the corner, that the words name.
    fn is_as_told(
        &mut self,
        space: usize,
        at: At,
        other: usize,
        inside: bool,
        told: &Whereabouts,
    ) -> bool {
        match told {
            Whereabouts::Side(side) => self.leans(space, at, other, inside, *side) >= 1.0,
            Whereabouts::Corner(north, east) => {
                let extent = self.house.spaces[space].closed.outline.extent(at);
                let within =
                    |(low, high): (i64, i64), at: i64| low - NEAR <= at && at <= high + NEAR;
                self.corner_toward(other, *north, *east).is_some_and(|corner| {
                    within(extent.east(), corner.0) && within(extent.north(), corner.1)
                })
            }
            _ => true,
        }
    }

    /// How much of the walls of a space lies on walls of `other` on one side of it, in feet: it is moved by an inch
    /// toward that wall, and what then lies across the wall is measured.
    fn leans(&mut self, space: usize, at: At, other: usize, inside: bool, side: Direction) -> f64 {
        let around = self.patch(other);
        let here = &self.house.spaces[space];
        self.tries += here.sides.len() + self.house.spaces[other].sides.len();
        let inch = Length::INCH.nm() * if inside { side.sign() } else { -side.sign() };
        let by = if side.axis() == Axis::East { (inch, 0) } else { (0, inch) };
        let patch =
            crate::geometry::overlap::Patch::new(&here.closed.outline, (at.0 + by.0, at.1 + by.1));
        12.0 * if inside { patch.beyond(&around, Length::ZERO) } else { patch.common(&around) }
    }
}
