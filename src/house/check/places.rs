//! Suggests places for a space that is where it cannot be; they are computed, tried, and written so that they can be
//! typed.
#![expect(
    clippy::float_arithmetic,
    reason = "places for a message are judged against tolerances; no printed figure comes from here"
)]

use crate::diagnostic::{Move, quoted, words};
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Extent;
use crate::geometry::overlap::{Patch, meetings};
use crate::house::check::Checker;
use crate::sketch::Kind;
use crate::units::length::{Form, Length, WrittenLength};

/// The most sides that a space may have for places to be computed.
const MOST_SIDES: usize = 60;
/// The most places that are tried for one space.
const MOST_TRIED: usize = 60;
/// The most places that are suggested.
const MOST_OFFERED: usize = 3;
/// The most placements of one space, walked either way, that are tried.
const MOST_LAID: usize = 120;
/// The most places that are suggested on one side of another space.
const MOST_ON_A_SIDE: usize = 4;
/// Two corners that are not farther apart along each axis are one: an eighth of an inch.
pub(super) const NEAR: i64 = 3_175_000;
/// The most sides that are compared in a file to try places: about half a second of work.
const MOST_WORK: usize = 60_000;

/// A place for a space, east then north of the level's origin in nanometers.
pub(super) type At = (i64, i64);

/// A place that was tried and would be accepted.
#[derive(Clone, Copy, Debug)]
pub(super) struct Tried {
    pub(super) at: At,
    /// How far the space would be moved, in nanometers.
    pub(super) by: i64,
    /// How much of its walls would lie on walls of the other space, in feet.
    pub(super) flush: f64,
}

/// A placement of a space against a wall of another.
struct Laid {
    /// How many of its beginning and its directions are changed.
    changes: usize,
    /// How much of its walls lies on walls of the other space, in feet.
    flush: f64,
    extent: Extent,
    to: Move,
}

/// The part of a place on an axis.
pub(super) fn along(at: At, axis: Axis) -> i64 {
    match axis {
        Axis::East => at.0,
        Axis::North => at.1,
    }
}

/// The end of a stretch that lies toward a direction.
pub(super) fn edge((low, high): (i64, i64), toward: Direction) -> i64 {
    if toward.sign() < 0 { low } else { high }
}

/// How far something is from the end that a wall or a space has toward `way`: `8' from its west end`.
pub(super) fn from_its_end(form: Form, gap: i64, way: Direction, end: &str) -> String {
    let far = Length::from_nm(gap.abs()).rounded_to(grain(form));
    let far = WrittenLength::new(far, form).spoken();
    match gap {
        gap if gap.abs() <= NEAR => format!("at its {} {end}", way.word()),
        gap if gap < 0 => format!("{far} beyond its {} {end}", way.word()),
        _ => format!("{far} from its {} {end}", way.word()),
    }
}

impl Checker<'_> {
    /// The places where a space would lie inside `parent`. For a garage and the like, the places where most of its
    /// walls lie on walls of the parent come first; a stair or an opening may lie anywhere, so for these the nearest
    /// place is enough.
    ///
    /// `clear_of` is the space it must not cover, besides those that have a place.
    pub(super) fn places_inside(
        &mut self,
        space: usize,
        parent: usize,
        clear_of: Option<usize>,
    ) -> Vec<String> {
        let mut tried = self.tried(space, parent, Some(parent), clear_of);
        let is_anywhere = self.house.spaces[space].kind.lies_in_another();
        // Without a place of its own, what lies beside another space more likely stands against its walls than near
        // where the level begins.
        if let Some(beside) = clear_of.filter(|_| self.unplaced.contains(&space)) {
            let mut against: Vec<(f64, Tried)> = tried
                .into_iter()
                .map(|place| (self.flush(space, place.at, beside, false), place))
                .filter(|(flush, _)| *flush >= 1.0)
                .collect();
            against.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.by.cmp(&b.1.by)));
            against.truncate(MOST_OFFERED);
            return self.typed(space, against.into_iter().map(|(_, place)| place).collect());
        }
        if is_anywhere {
            tried.sort_by(|a, b| a.by.cmp(&b.by).then(b.flush.total_cmp(&a.flush)));
        } else {
            tried.sort_by(|a, b| b.flush.total_cmp(&a.flush).then(a.by.cmp(&b.by)));
        }
        // What has no place is near none of them. What was put a little off along one wall is likelier meant there than
        // what is off both ways.
        let from = self.house.spaces[space].at;
        let is_placed = !self.unplaced.contains(&space);
        let nearer = |first: &Tried| {
            let is_near = |one: i64, other: i64| (one - other).abs() <= NEAR;
            let along_one = is_near(first.at.0, from.0) || is_near(first.at.1, from.1);
            if is_anywhere || along_one { 2 } else { 4 }
        };
        let clearest = match &tried[..] {
            [first, second, ..] => {
                is_placed && nearer(first) * first.by <= second.by
                    || !is_anywhere && first.flush >= 1.3 * second.flush
            }
            _ => true,
        };
        tried.truncate(if clearest { 1 } else { MOST_OFFERED });
        self.typed(space, tried)
    }

    /// Where a space that lies nearly in another one fits into it, what was moved the least first.
    pub(super) fn places_inside_nearby(&mut self, space: usize, parent: usize) -> Vec<String> {
        let mut tried = self.tried(space, parent, Some(parent), None);
        tried.sort_by(|a, b| a.by.cmp(&b.by).then(b.flush.total_cmp(&a.flush)));
        let is_clear = matches!(&tried[..], [first, second, ..] if 2 * first.by <= second.by);
        tried.truncate(if is_clear { 1 } else { MOST_OFFERED });
        self.typed(space, tried)
    }

    /// Where a space stands against a wall of `other` and is clear of all others with the very sides that it has:
    /// walked the other way from where it begins, or begun at another corner of `other`, walked either way. Places on
    /// one side of `other` stand together; first comes the side with the place that changes the least.
    pub(super) fn moves_beside(&mut self, space: usize, other: usize) -> Vec<Move> {
        const MOST_OWN: usize = 12;
        const TURNS: [&[Axis]; 4] =
            [&[], &[Axis::East], &[Axis::North], &[Axis::East, Axis::North]];
        let (here, there) = (&self.house.spaces[space], &self.house.spaces[other]);
        let has_bearings = here.closed.traverse.has_bearings();
        if here.parent.is_some() || has_bearings || here.sides.len() > MOST_OWN {
            return Vec::new();
        }
        if there.sides.len() > MOST_SIDES || self.tries > MOST_WORK {
            return Vec::new();
        }
        let (at, is_unplaced) = (here.at, self.unplaced.contains(&space));
        let own = TURNS.map(|turned| (turned, at));
        let own = own.into_iter().skip(1).filter(|_| !is_unplaced);
        let corners = self.corners(other).into_iter().filter(|corner| is_unplaced || *corner != at);
        let begun = corners.flat_map(|corner| TURNS.map(|turned| (turned, corner)));
        let mut laid = self.laid(space, other, own.chain(begun).collect());
        // What begins at no corner may only have been put a little off.
        if laid.is_empty() || !is_unplaced && self.corner_at(space, at).is_none() {
            let near = self.moved_beside(space, other);
            let mut sides: Vec<&str> = Vec::new();
            let mut near = self.laid(space, other, near);
            // On each side one, where it stays as far along the wall as it was put.
            near.retain(|one| {
                let is_first = !sides.contains(&one.to.side);
                sides.push(one.to.side);
                is_first
            });
            near.append(&mut laid);
            laid = near;
        }
        let mut places: Vec<Extent> = Vec::new();
        laid.retain(|one| {
            !places.contains(&one.extent) && {
                places.push(one.extent);
                true
            }
        });
        let mut moves: Vec<Move> = Vec::new();
        while let Some(first) = laid.first() {
            let side = first.to.side;
            let (same, others) = laid.into_iter().partition(|one| one.to.side == side);
            let same: Vec<Laid> = same;
            moves.extend(same.into_iter().take(MOST_ON_A_SIDE).map(|one| one.to));
            laid = others;
        }
        moves
    }

    /// The places at which a space, moved along one axis, would be clear of `other` and against one of its walls; the
    /// nearest first.
    fn moved_beside(&mut self, space: usize, other: usize) -> Vec<(&'static [Axis], At)> {
        let parent = self.house.spaces[space].parent;
        let mut tried = self.tried(space, other, parent, Some(other));
        tried.sort_by_key(|place| place.by);
        tried.into_iter().map(|place| (&[] as &[Axis], place.at)).collect()
    }

    /// Those of the turned placements of a space that stand against a wall of `other` and are clear of all others: first
    /// those that change the least, of these the one with most of its walls on walls of `other`.
    fn laid(&mut self, space: usize, other: usize, all: Vec<(&[Axis], At)>) -> Vec<Laid> {
        let (own, patch) = (self.house.spaces[space].at, self.patch(space));
        let around = self.patch(other);
        let mut laid: Vec<Laid> = Vec::new();
        for (turned, at) in all.into_iter().take(MOST_LAID) {
            let by = (at.0 - own.0, at.1 - own.1);
            let mut to = patch.clone();
            let mut extent = self.house.spaces[space].extent;
            for axis in turned {
                let middle = along(own, *axis);
                (to, extent) = (to.mirrored(*axis, middle), extent.mirrored(*axis, middle));
            }
            let (to, extent) = (to.moved(by), extent.moved(by));
            if !self.is_clear(space, &to) {
                continue;
            }
            let inch = Length::INCH.nm();
            let touching = [Direction::East, Direction::West, Direction::North, Direction::South]
                .map(|way| {
                    let by = match way.axis() {
                        Axis::East => (-way.sign() * inch, 0),
                        Axis::North => (0, -way.sign() * inch),
                    };
                    (12.0 * to.moved(by).common(&around), way)
                });
            let Some((flush, way)) = touching.into_iter().max_by(|a, b| a.0.total_cmp(&b.0)) else {
                continue;
            };
            let start = self.at_a_corner(space, at).or_else(|| self.start_at(at));
            let start = start.filter(|_| at != own || self.unplaced.contains(&space));
            let start = start.unwrap_or_default().trim_matches('`').to_owned();
            if flush < 1.0 || start.is_empty() && turned.is_empty() {
                continue;
            }
            let exchanged: Vec<[&str; 2]> = turned
                .iter()
                .map(|axis| [1, -1].map(|sign| Direction::along(*axis, sign).word()))
                .collect();
            let Some(stands) = self.against(&extent, other, way) else { continue };
            let changes = usize::from(!start.is_empty()) + usize::from(!turned.is_empty());
            let (of, beside) =
                (self.house.spaces[space].span, self.house.spaces[other].name.clone());
            let to = Move { of, beside, exchanged, start, side: way.word(), stands };
            laid.push(Laid { changes, flush, extent, to });
        }
        laid.sort_by(|a, b| a.changes.cmp(&b.changes).then(b.flush.total_cmp(&a.flush)));
        laid
    }

    /// Against which wall on a side of `other` a box stands, and where along it: `against side 2, at its south end`.
    fn against(&self, extent: &Extent, other: usize, side: Direction) -> Option<String> {
        let (own, away) = match side.axis() {
            Axis::East => (extent.north(), extent.east()),
            Axis::North => (extent.east(), extent.north()),
        };
        let near = edge(away, side.opposite());
        let across = if side.axis() == Axis::East { Axis::North } else { Axis::East };
        let corners = self.corners(other);
        let next = corners.iter().cycle().skip(1);
        let walls = corners.iter().zip(next).enumerate().filter_map(|(i, (one, two))| {
            let is_near = |at: &At| (along(*at, side.axis()) - near).abs() <= Length::INCH.nm();
            let ends = [along(*one, across), along(*two, across)];
            let (low, high) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
            let common = own.1.min(high) - own.0.max(low);
            (is_near(one) && is_near(two)).then_some((common, i + 1, (low, high)))
        });
        let (_, number, all) = walls.max_by_key(|(common, ..)| *common)?;
        let gaps = [
            (own.0 - all.0, Direction::along(across, -1)),
            (all.1 - own.1, Direction::along(across, 1)),
        ];
        let (gap, way) = gaps.into_iter().min_by_key(|(gap, _)| gap.abs())?;
        Some(format!("against side {number}, {}", from_its_end(self.form(), gap, way, "end")))
    }

    /// The corners of a space, counted from the level's origin.
    pub(super) fn corners(&self, space: usize) -> Vec<At> {
        let there = &self.house.spaces[space];
        let points = there.closed.outline.points();
        points.iter().map(|at| (there.at.0 + at.0, there.at.1 + at.1)).collect()
    }

    /// Whether a space laid elsewhere would be clear of all others on its level.
    fn is_clear(&mut self, space: usize, to: &Patch) -> bool {
        let (level, kind) = (self.house.spaces[space].level, self.house.spaces[space].kind);
        for other in 0..self.house.spaces.len() {
            let there = &self.house.spaces[other];
            let is_beside = other != space
                && there.level == level
                && there.parent.is_none()
                && !there.by_itself
                && there.kind.lies_in_another() == kind.lies_in_another();
            if !is_beside {
                continue;
            }
            self.tries += there.sides.len() + self.house.spaces[space].sides.len();
            let is_too_much = there.sides.len() > MOST_SIDES || self.tries > MOST_WORK;
            if is_too_much || to.overlap(&self.patch(other), self.sliver(space, other)) > 0.0 {
                return false;
            }
        }
        true
    }

    /// The places next to `other`, or inside it, that the level would accept.
    fn tried(
        &mut self,
        space: usize,
        other: usize,
        parent: Option<usize>,
        clear_of: Option<usize>,
    ) -> Vec<Tried> {
        let (here, there) = (&self.house.spaces[space], &self.house.spaces[other]);
        let sides = here.sides.len() + there.sides.len();
        if sides > MOST_SIDES || self.tries > MOST_WORK {
            return Vec::new();
        }
        let inside = parent == Some(other);
        let mut places: Vec<At> = match self.unplaced.contains(&space) && !inside {
            true => {
                let corners = there.closed.outline.points();
                corners.iter().map(|at| (there.at.0 + at.0, there.at.1 + at.1)).collect()
            }
            false => shifted(self, space, other, inside),
        };
        let from = here.at;
        let far = |at: &At| (at.0 - from.0).abs() + (at.1 - from.1).abs();
        places.sort_by_key(|at| (far(at), *at));
        places.dedup();
        places.truncate(MOST_TRIED);
        let grain = grain(self.form());
        let mut tried: Vec<Tried> = Vec::new();
        for place in places {
            // The length tried is the one offered: it can be typed.
            let even = |nm: i64| Length::from_nm(nm).rounded_to(grain).nm();
            let at = (even(place.0), even(place.1));
            if !self.is_accepted(space, at, parent, clear_of) {
                continue;
            }
            let flush = self.flush(space, at, other, inside);
            if inside || flush >= 1.0 {
                tried.push(Tried { at, by: far(&place), flush });
            }
        }
        tried
    }

    /// Whether the level would accept the space at a place: inside its parent, and clear of the others.
    pub(super) fn is_accepted(
        &mut self,
        space: usize,
        at: At,
        parent: Option<usize>,
        clear_of: Option<usize>,
    ) -> bool {
        let here = &self.house.spaces[space];
        let (level, extent) = (here.level, here.closed.outline.extent(at));
        let patch = Patch::new(&here.closed.outline, at);
        let inner = here.kind.lies_in_another();
        for other in 0..self.house.spaces.len() {
            let there = &self.house.spaces[other];
            self.tries += 1;
            if self.tries > MOST_WORK {
                return false;
            }
            // The first space of a level that stands beside another one is placed clear of that.
            let is_beside = clear_of.is_some_and(|one| self.house.spaces[one].level == there.level);
            if other == space || there.level != level && !is_beside || there.by_itself {
                continue;
            }
            let is_parent = parent == Some(other);
            let is_sibling = there.parent == parent
                && (parent.is_some() || inner == there.kind.lies_in_another());
            let has_place = || {
                let has_room = there.parent.is_some() || !self.unplaced.contains(&other);
                clear_of == Some(other) || has_room && !self.misplaced.contains(&other)
            };
            let matters =
                is_parent || is_sibling && extent.is_near(&there.extent, 0) && has_place();
            if !matters {
                continue;
            }
            let sides = self.house.spaces[space].sides.len() + there.sides.len();
            let meet = meetings(
                (&self.house.spaces[space].closed.outline, at),
                (&there.closed.outline, there.at),
                20 * sides,
            );
            self.tries += sides + meet;
            if self.tries > MOST_WORK || meet == 20 * sides {
                return false;
            }
            let (around, sliver) = (self.patch(other), self.sliver(space, other));
            let is_wrong = match is_parent {
                true => patch.beyond(&around, sliver) > 0.0,
                false => patch.overlap(&around, sliver) > 0.0,
            };
            if is_wrong {
                return false;
            }
        }
        true
    }

    /// How much of the walls of a space at `at` would lie on walls of `other`, in feet. It is found by moving the
    /// space by an inch and measuring what then lies beyond `other`, or inside it. `inside` says on which side of the
    /// walls it lies.
    pub(super) fn flush(&mut self, space: usize, at: At, other: usize, inside: bool) -> f64 {
        let around = self.patch(other);
        let here = &self.house.spaces[space];
        self.tries += 4 * (here.sides.len() + self.house.spaces[other].sides.len());
        let inch = Length::INCH.nm();
        let moved = [(inch, 0), (-inch, 0), (0, inch), (0, -inch)].map(|by| {
            let patch = Patch::new(&here.closed.outline, (at.0 + by.0, at.1 + by.1));
            let area = match inside {
                true => patch.beyond(&around, Length::ZERO),
                false => patch.common(&around),
            };
            12.0 * area
        });
        match inside {
            true => moved.iter().sum(),
            false => moved.iter().copied().fold(0.0, f64::max),
        }
    }

    /// The places as they would be typed: at a named corner of a space, else by distances from the level's origin.
    pub(super) fn typed(&self, space: usize, tried: Vec<Tried>) -> Vec<String> {
        let mut all: Vec<String> = Vec::new();
        for place in tried {
            let typed = self.at_a_corner(space, place.at).or_else(|| self.start_at(place.at));
            all.extend(typed.filter(|typed| !all.contains(typed)));
        }
        all
    }

    /// The place as a corner, `from "House" corner 3`; `None` unless it is a corner of a space given earlier on the
    /// level.
    pub(super) fn at_a_corner(&self, space: usize, at: At) -> Option<String> {
        let (of, corner) = self.corner_at(space, at)?;
        Some(format!("`from \"{}\" corner {corner}`", self.house.spaces[of].name))
    }

    /// The space given earlier on the level, and its corner (from 1), at a place.
    pub(super) fn corner_at(&self, space: usize, at: At) -> Option<(usize, usize)> {
        let level = self.house.spaces[space].level;
        let on_level = || self.house.spaces.iter().enumerate().filter(|(_, s)| s.level == level);
        let is_near = |a: i64, b: i64| (a - b).abs() <= 1_587_500;
        for (i, there) in on_level().filter(|(i, there)| *i < space && !there.by_itself) {
            let corners = there.closed.outline.points();
            let corner = corners.iter().position(|corner| {
                is_near(there.at.0 + corner.0, at.0) && is_near(there.at.1 + corner.1, at.1)
            });
            if corner.is_none() || self.misplaced.contains(&i) || self.unplaced.contains(&i) {
                continue;
            }
            let is_one = || on_level().filter(|(_, s)| s.name == there.name).count() == 1;
            if let Some(corner) = corner.filter(|_| is_one()) {
                return Some((i, corner + 1));
            }
        }
        None
    }

    /// The place as distances, `start east 10' north 28'`; `None` at the origin, which is the place of a space
    /// without a start.
    pub(super) fn start_at(&self, at: At) -> Option<String> {
        let part = |axis: Axis, nm: i64| {
            let nm = Length::from_nm(nm).rounded_to(grain(self.form())).nm();
            let far = WrittenLength::new(Length::from_nm(nm).abs(), self.form());
            (nm != 0).then(|| format!("{} {far}", Direction::along(axis, nm).word()))
        };
        let parts: Vec<String> =
            [part(Axis::East, at.0), part(Axis::North, at.1)].into_iter().flatten().collect();
        (!parts.is_empty()).then(|| format!("`start {}`", parts.join(" ")))
    }

    /// Where two spaces lie along an axis on which they share nothing: `from 15' to 23' east`; `None` if they share
    /// part of both axes.
    pub(super) fn where_both_lie(&self, space: usize, other: usize) -> Option<String> {
        let (here, there) = (&self.house.spaces[space], &self.house.spaces[other]);
        let ends = |axis: Axis| match axis {
            Axis::East => (here.extent.east(), there.extent.east()),
            Axis::North => (here.extent.north(), there.extent.north()),
        };
        let is_apart = |axis: &Axis| {
            let (one, two) = ends(*axis);
            one.1 <= two.0 || two.1 <= one.0
        };
        let axis = Axis::BOTH.into_iter().find(is_apart)?;
        let (one, two) = ends(axis);
        Some(format!(
            "counted from where the house's first walk begins, {} lies {} and {} {}",
            quoted(&there.name),
            self.stretch(axis, two),
            quoted(&here.name),
            self.stretch(axis, one)
        ))
    }

    fn stretch(&self, axis: Axis, (low, high): (i64, i64)) -> String {
        let far = |nm: i64| match nm {
            0 => "0".to_owned(),
            _ => WrittenLength::new(Length::from_nm(nm).abs(), self.form()).spoken(),
        };
        let way = |nm: i64| Direction::along(axis, nm).word();
        match (low < 0, high > 0) {
            (true, true) => {
                format!("from {} {} to {} {}", far(low), way(low), far(high), way(high))
            }
            (true, false) => format!("from {} to {} {}", far(high), far(low), way(low)),
            (false, _) => format!("from {} to {} {}", far(low), far(high), way(high)),
        }
    }

    /// The axis along which `other` seems to be walked in the wrong direction: if its directions along that axis were
    /// swapped, the space would lie inside it. `None` if there is none.
    pub(super) fn walked_the_other_way(&self, space: usize, other: usize) -> Option<Axis> {
        let (here, there) = (&self.house.spaces[space], &self.house.spaces[other]);
        if here.sides.len() + there.sides.len() > MOST_SIDES {
            return None;
        }
        // What lies in it as it is would no longer.
        if self.house.spaces.iter().any(|one| one.parent == Some(other)) {
            return None;
        }
        let (patch, sliver) = (self.patch(space), self.sliver(space, other));
        let around = self.patch(other);
        Axis::BOTH.into_iter().find(|&axis| {
            let middle = match axis {
                Axis::East => there.at.0,
                Axis::North => there.at.1,
            };
            patch.beyond(&around.mirrored(axis, middle), sliver) == 0.0
        })
    }

    /// A sentence that suggests places: the only one, or a question about which of them it is. `None` if there is none.
    pub(super) fn offered(places: &[String], one: &str) -> Option<String> {
        match places {
            [] => None,
            [place] => Some(format!("{one}: {place}")),
            _ => Some(format!(
                "{one} in more than one place, which is it: {}?",
                words::list_or(places)
            )),
        }
    }

    /// Whether a space is a stair that lies outside all others, or nearly so.
    pub(super) fn is_outside_stair(&self, space: usize) -> bool {
        let here = &self.house.spaces[space];
        let patch = self.patch(space);
        let under: f64 = self
            .house
            .spaces
            .iter()
            .enumerate()
            .filter(|(i, other)| *i != space && other.level == here.level)
            .filter(|(_, other)| other.kind.has_walls() && other.extent.is_near(&here.extent, 0))
            .map(|(i, _)| patch.common(&self.patch(i)))
            .sum();
        here.kind == Kind::Stair && under <= 0.1 * patch.area()
    }
}

/// The places at which an edge of the space lies on an edge of the other space, along either axis.
fn shifted(checker: &Checker<'_>, space: usize, other: usize, inside: bool) -> Vec<At> {
    let (here, there) = (&checker.house.spaces[space], &checker.house.spaces[other]);
    let corners = there.closed.outline.points();
    let along = |part: fn(&At) -> i64, from: i64, (low, high): (i64, i64)| {
        let mut shifts = vec![0];
        for corner in &corners {
            let edge = from + part(corner);
            shifts.extend([edge - low, edge - high]);
        }
        shifts.sort_by_key(|shift| (shift.abs(), *shift));
        shifts.dedup();
        shifts
    };
    let east = along(|at| at.0, there.at.0, here.extent.east());
    let north = along(|at| at.1, there.at.1, here.extent.north());
    let place = |e: i64, n: i64| (here.at.0 + e, here.at.1 + n);
    if inside {
        return east.iter().flat_map(|&e| north.iter().map(move |&n| place(e, n))).collect();
    }
    // Moved along one axis only; along the other it stays where it was put.
    let sideways = east.iter().map(|&e| place(e, 0));
    sideways.chain(north.iter().map(|&n| place(0, n))).collect()
}

/// The precision of suggested places, in nanometers: a sixteenth of an inch, a hundredth of a foot or a millimeter.
pub(super) fn grain(form: Form) -> i64 {
    match form {
        Form::FeetAndInches => 1_587_500,
        Form::DecimalFeet => 3_048_000,
        Form::Meters | Form::Centimeters | Form::Millimeters => 1_000_000,
    }
}
