//! Finds which space lies in which on a level, which spaces overlap, and what extends beyond the level below.

#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "distances for a message, to the sixteenth of an inch"
)]

use crate::diagnostic::{Diagnostic, Move, Span, Word, quoted, words};
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::nearest_nm;
use crate::geometry::overlap::{Lies, Patch, meetings};
use crate::house::Space;
use crate::house::check::names::TYPED_TWICE;
use crate::house::check::placement::no_such_space;
use crate::house::check::places::At;
use crate::house::check::{Checker, OnLevel};
use crate::sketch::statement::{Place, Thickness};
use crate::sketch::{Face, Kind, LevelSketch, SpaceSketch};
use crate::units::length::{Length, WrittenLength};

/// The most overlaps of a file that are reported; nobody fixes more at once.
const MOST_OVERLAPS: usize = 100;
/// How many meetings per side two spaces may have before they count as tangled. (Neighbors along a jagged wall meet
/// about three times per side.)
const MOST_MEETINGS: usize = 20;
/// The most pairs of sides that are compared to find which one extends farthest beyond another space, or into it.
const MOST_PAIRS_OF_SIDES: usize = 40_000;
/// The most ways of moving an upper level that are tried.
const MOST_MOVES: usize = 40;
/// The most corners of two levels for which such a move is searched.
const MOST_CORNERS: usize = 120;
/// The most pairs of sides and meetings of spaces that are compared in a file: about half a second of work.
const MOST_WORK: usize = 10_000_000;

/// Whether a name says that its space lies inside another.
fn says_inside(name: &str) -> bool {
    name.to_lowercase()
        .split(|c: char| !c.is_alphabetic())
        .any(|word| matches!(word, "inside" | "within"))
}

impl Checker<'_> {
    /// Finds which space each space of a level lies in, as stated in the file or by position.
    pub(super) fn find_parents(&mut self, level: &LevelSketch, on_level: &OnLevel, all: bool) {
        for (i, sketch) in level.spaces.iter().enumerate() {
            let said = match &sketch.space.within {
                Some(name) => {
                    let earlier =
                        level.spaces.iter().take(i).position(|other| other.space.name == *name);
                    if earlier.is_none() && !level.doubtful {
                        self.report(no_such_space(name, level, i));
                    }
                    earlier.and_then(|earlier| on_level[earlier])
                }
                None => None,
            };
            let Some(space) = on_level[i] else { continue };
            if sketch.space.within.is_none() && !sketch.space.kind.lies_in_another() {
                continue;
            }
            let candidates: Vec<usize> = match said {
                Some(parent) => vec![parent],
                None if sketch.space.within.is_some() => {
                    self.misplaced.push(space);
                    continue;
                }
                None => on_level
                    .iter()
                    .flatten()
                    .copied()
                    .filter(|&other| !self.house.spaces[other].kind.lies_in_another())
                    .collect(),
            };
            let parent = self.smallest_around(space, &candidates);
            if parent.is_none() && (said.is_some() || all) {
                if !self.unit_doubtful {
                    self.report_not_inside(sketch, space, said, &candidates);
                }
                self.misplaced.push(space);
            }
            self.house.spaces[space].parent = parent;
        }
    }

    /// The smallest candidate that contains the space; the first of several of the same size.
    pub(super) fn smallest_around(&mut self, space: usize, candidates: &[usize]) -> Option<usize> {
        let extent = self.house.spaces[space].extent;
        let near =
            |&other: &usize| other != space && extent.is_near(&self.house.spaces[other].extent, 0);
        let mut by_size: Vec<usize> = candidates.iter().copied().filter(near).collect();
        by_size.sort_by_key(|&other| self.house.spaces[other].closed.outline.area());
        by_size.into_iter().find(|&other| {
            self.can_compare(space, other)
                && (self.surely_lies_in(space, other)
                    || self.patch(space).beyond(&self.patch(other), self.sliver(space, other))
                        == 0.0)
        })
    }

    /// A quick test whether a space lies in the outline of another; `false` means that it does not, or that the test
    /// could not tell.
    fn surely_lies_in(&self, space: usize, other: usize) -> bool {
        let (extent, other) = (self.house.spaces[space].extent, &self.house.spaces[other]);
        other.closed.outline.surely_holds(other.at, &extent)
    }

    /// Whether two spaces may be compared: the total work for a file is limited.
    ///
    /// No house comes near the limit; only spaces that cross each other in thousands of places would.
    fn can_compare(&mut self, a: usize, b: usize) -> bool {
        let placed = |i: usize| {
            let space = &self.house.spaces[i];
            (&space.closed.outline, space.at)
        };
        let sides = self.house.spaces[a].sides.len() + self.house.spaces[b].sides.len();
        let meetings = meetings(placed(a), placed(b), MOST_MEETINGS * sides);
        let is_tangled = meetings == MOST_MEETINGS * sides;
        let work = sides + meetings;
        let is_too_much = is_tangled || self.work + work > MOST_WORK;
        if is_too_much && !self.is_tangled {
            self.is_tangled = true;
            let (one, other) = (&self.house.spaces[a], &self.house.spaces[b]);
            let message = format!(
                "{} and {} lie across each other in too many places to be looked at",
                quoted(&one.name),
                quoted(&other.name)
            );
            let error = Diagnostic::new(Word::SpacesOverlap, other.span, message)
                .also(one.span, "the other one")
                .help(how_to_place(&one.name));
            self.report(error);
        }
        self.work += work;
        !is_too_much
    }

    /// Whether every space of its level lies in another space, as far as all of them could be read.
    fn is_alone_on_its_level(&self, space: usize) -> bool {
        let level = self.house.spaces[space].level;
        self.sketch.levels.get(level).is_some_and(|level| {
            !level.doubtful && level.spaces.iter().all(|one| one.space.kind.lies_in_another())
        })
    }

    /// The name of the misplaced space from whose corner another one starts.
    fn starts_from_misplaced(&self, sketch: &SpaceSketch, space: usize) -> Option<String> {
        let Place::CornerOf(of, _) = &sketch.space.place else { return None };
        let level = self.house.spaces[space].level;
        let mut misplaced = self.misplaced.iter().map(|other| &self.house.spaces[*other]);
        misplaced
            .find(|other| other.level == level && other.name == of.text)
            .map(|other| other.name.clone())
    }

    pub(super) fn report_not_inside(
        &mut self,
        sketch: &SpaceSketch,
        space: usize,
        said: Option<usize>,
        candidates: &[usize],
    ) {
        let name = quoted(&sketch.space.name.text);
        let of = said.map_or("a space of this level".to_owned(), |parent| {
            quoted(&self.house.spaces[parent].name)
        });
        let mut error = Diagnostic::new(
            Word::NotInside,
            sketch.span,
            format!("{name} does not lie inside {of}"),
        );
        // A space that starts at a corner of another one goes where that one goes.
        if let Some(first) = self.starts_from_misplaced(sketch, space) {
            self.report(error.help(format!(
                "this follows from {}: settle that first and leave this line as it is",
                quoted(&first)
            )));
            return;
        }
        if said.is_none() && self.is_outside_stair(space) {
            let leave =
                "a stair outside the house is no part of its area: leave it and its sides out";
            let level = self.house.spaces[space].level;
            let first = self.house.spaces.iter().find(|other| other.level == level);
            let first = first.map_or("House", |first| first.name.as_str());
            let inside = format!("if it is inside, {}", how_to_place(first));
            self.report(error.help(leave).help(inside));
            return;
        }
        if said.is_none() && self.is_alone_on_its_level(space) {
            let level = &self.sketch.levels[self.house.spaces[space].level].level;
            let kind = if level.below_grade { "unfinished" } else { "living" };
            self.report(error.help(format!(
                "its level has no space with walls around it: type the floor in which it lies above this line, as `{kind} \"{}\"` with its own walls",
                level.name.text
            )));
            return;
        }
        let around = said.or_else(|| self.likeliest_around(space, candidates));
        let apart = around.and_then(|parent| self.where_both_lie(space, parent));
        let is_apart = apart.is_some();
        if let Some(note) = apart {
            error = error.note(note);
        } else if let Some((reach, note)) =
            around.and_then(|parent| self.reach(space, parent, Lies::Outside))
        {
            error = error.also(reach, "reaches beyond").note(note);
        }
        let parent = around.map_or("House".to_owned(), |i| self.house.spaces[i].name.clone());
        let turned = around.filter(|_| is_apart && !self.unplaced.contains(&space));
        let turned = turned.and_then(|at| Some((at, self.walked_the_other_way(space, at)?)));
        if let Some((around, axis)) = turned {
            let [one, other] = [1, -1].map(|sign| Direction::along(axis, sign).word());
            // Its own place may be what is wrong, and not the walk of the house.
            let places = self.places_inside(space, around, None);
            if let Some(help) =
                Self::offered(&places, &format!("it fits inside {}", quoted(&parent)))
            {
                error = error.help(help);
            }
            self.report(error.help(format!(
                "{} may have gone the other way round: walked with its `{one}` and `{other}` exchanged, it has {name} inside",
                quoted(&parent)
            )));
            return;
        }
        let is_beside = said.is_some_and(|parent| self.touches_from_outside(space, parent));
        if is_beside {
            error = error.help(format!(
                "as typed it stands beside {0}, and touches it: if that is right, take `within {1}` out of this line",
                quoted(&parent),
                format_args!("\"{parent}\""),
            ));
        }
        let places =
            around.map(|parent| self.places_inside(space, parent, None)).unwrap_or_default();
        let fits = match is_beside {
            true => format!("if it lies in the walk of {} instead, it fits there", quoted(&parent)),
            false => format!("it fits inside {}", quoted(&parent)),
        };
        let help = Self::offered(&places, &fits);
        let help = help.unwrap_or_else(|| how_to_place(&parent));
        self.report(error.help(help));
    }

    /// Whether a space, placed as typed, shares a wall with another one and none of its area.
    fn touches_from_outside(&mut self, space: usize, other: usize) -> bool {
        let at = self.house.spaces[space].at;
        !self.unplaced.contains(&space)
            && self.patch(space).common(&self.patch(other)) <= 1.0
            && self.flush(space, at, other, false) >= 1.0
    }

    /// The space that another one most likely lies in: the only candidate, or the one that shares the most area with
    /// it.
    fn likeliest_around(&self, space: usize, candidates: &[usize]) -> Option<usize> {
        let mut placed =
            candidates.iter().copied().filter(|&other| !self.house.spaces[other].by_itself);
        if let (Some(only), None) = (placed.next(), placed.next()) {
            return Some(only);
        }
        let extent = self.house.spaces[space].extent;
        let near = candidates
            .iter()
            .copied()
            .filter(|&other| extent.is_near(&self.house.spaces[other].extent, 0));
        let common = |other: &usize| self.patch(space).common(&self.patch(*other));
        near.max_by(|a, b| common(a).total_cmp(&common(b))).filter(|other| common(other) > 0.0)
    }

    /// The side of a space that lies farthest outside another space, or deepest inside: its place in the text and a
    /// sentence about it. `None` if the two have too many sides to compare.
    fn reach(&self, space: usize, other: usize, lies: Lies) -> Option<(Span, String)> {
        let (here, there) = (&self.house.spaces[space], &self.house.spaces[other]);
        if here.sides.len() * there.sides.len() > MOST_PAIRS_OF_SIDES {
            return None;
        }
        let farthest = self.patch(other).farthest((&here.closed.outline, here.at), lies)?;
        let side = here.sides.get(farthest.side)?;
        let far = length_of(farthest.feet);
        if far == Length::ZERO {
            return None;
        }
        let far = WrittenLength::new(far, self.form()).spoken();
        let (name, way) = (quoted(&there.name), farthest.direction.word());
        let told = match lies {
            Lies::Outside => format!("{} lies {far} {way} of {name}", side.quoted()),
            Lies::Inside => format!("{} reaches {far} into {name}", side.quoted()),
        };
        Some((side.span, told))
    }

    pub(super) fn patch(&self, space: usize) -> Patch {
        let space = &self.house.spaces[space];
        Patch::new(&space.closed.outline, space.at)
    }

    /// How wide an overlap of two spaces may be and still come from errors of the tape.
    pub(super) fn sliver(&self, a: usize, b: usize) -> Length {
        let (a, b) = (&self.house.spaces[a], &self.house.spaces[b]);
        let faces = if a.face == b.face { 0 } else { 10 };
        let sides = a.closed.traverse.sides.iter().chain(&b.closed.traverse.sides);
        // A side may be off by its tolerance, an estimated one by a foot; what is as wide as that is still worth
        // reporting, since a space in a wrong place would pass for one measured loosely.
        let inch = Length::INCH.nm();
        let loose = sides.map(|side| match side.estimated {
            true => side.tolerance.min(3 * inch),
            false => side.tolerance.min(6 * inch),
        });
        let loosest = loose.max().unwrap_or(0);
        let usual = 4 * self.house.tolerance.nm();
        Length::from_nm(usual.max(loosest) + faces * Length::INCH.nm())
    }

    /// Reports neighboring spaces that overlap.
    pub(super) fn overlaps(&mut self, placed: &[usize]) {
        for (i, &b) in placed.iter().enumerate() {
            for &a in &placed[..i] {
                let (one, other) = (&self.house.spaces[a], &self.house.spaces[b]);
                // The position of a detached space is unknown, so it overlaps nothing.
                let is_nowhere = one.by_itself || other.by_itself;
                if is_nowhere || !one.extent.is_near(&other.extent, 0) {
                    continue;
                }
                let inner = one.kind.lies_in_another() != other.kind.lies_in_another();
                let misplaced = self.misplaced.contains(&a) || self.misplaced.contains(&b);
                if misplaced || one.parent != other.parent || inner && one.parent.is_none() {
                    continue;
                }
                let sliver = self.sliver(a, b);
                // The common part cannot be wider than that of the bounding boxes.
                let (one, other) = (&self.house.spaces[a], &self.house.spaces[b]);
                if !one.extent.shares_more_than(&other.extent, sliver.nm()) {
                    continue;
                }
                if self.overlaps_reported == MOST_OVERLAPS || !self.can_compare(a, b) {
                    return;
                }
                let overlap = self.patch(a).overlap(&self.patch(b), sliver);
                if overlap > 0.0 {
                    self.overlaps_reported += 1;
                    self.report_overlap(a, b, overlap);
                }
            }
        }
    }

    /// Reports spaces that begin at a corner of another one and touch no space of their level but at a point: mostly
    /// they begin at another corner, or run the other way from it.
    pub(super) fn touching_nothing(&mut self, placed: &[usize]) {
        let (inch, foot) = (Length::INCH.nm(), Length::FOOT.nm());
        for &space in placed {
            let here = &self.house.spaces[space];
            let is_by_itself = here.by_itself || here.parent.is_some();
            if is_by_itself || here.kind.lies_in_another() || self.misplaced.contains(&space) {
                continue;
            }
            // Most begin at no corner of another, so that is asked before their walls are compared.
            let Some(of) = self.begins_at(space) else { continue };
            let lies_along = |&other: &usize| {
                let there = &self.house.spaces[other];
                let gap = if here.face == there.face { inch } else { foot };
                other != space
                    && !there.by_itself
                    && here.extent.lies_along(&there.extent, gap, foot)
                    && self.share_a_wall(space, other, gap)
            };
            if placed.iter().any(lies_along) {
                continue;
            }
            let message = format!(
                "{} touches {} at a corner only: no wall of it lies against another space",
                quoted(&here.name),
                quoted(&self.house.spaces[of].name)
            );
            let warning = Diagnostic::new(Word::TouchesNothing, here.span, message);
            let moves = self.moves_beside(space, of);
            let helps = self.starts(&moves, space);
            let warning = helps.into_iter().fold(warning, Diagnostic::help);
            self.report(moves.into_iter().fold(warning, Diagnostic::moved));
        }
    }

    /// Whether a wall of one space lies along a wall of another, up to `gap` apart, for a foot or more. Where one has
    /// walls that are slanted or curved, this is not asked, and `true`.
    fn share_a_wall(&self, one: usize, other: usize, gap: i64) -> bool {
        if [one, other].iter().any(|&space| self.house.spaces[space].closed.outline.is_curved()) {
            return true;
        }
        let [one, other] = [one, other].map(|space| self.corners(space));
        let foot = Length::FOOT.nm();
        let walls = |corners: &[At]| -> Option<Vec<Wall>> {
            let next = corners.iter().cycle().skip(1);
            corners
                .iter()
                .zip(next)
                .map(|(from, to)| match (from.0 == to.0, from.1 == to.1) {
                    (true, _) => Some((Axis::North, from.0, (from.1.min(to.1), from.1.max(to.1)))),
                    (_, true) => Some((Axis::East, from.1, (from.0.min(to.0), from.0.max(to.0)))),
                    _ => None,
                })
                .collect()
        };
        let (Some(one), Some(other)) = (walls(&one), walls(&other)) else { return true };
        one.iter().any(|(axis, at, (low, high))| {
            other.iter().any(|(across, there, (from, to))| {
                axis == across && (at - there).abs() <= gap && high.min(to) - low.max(from) >= foot
            })
        })
    }

    pub(super) fn report_overlap(&mut self, a: usize, b: usize, overlap: f64) {
        let (one, other) = (&self.house.spaces[a], &self.house.spaces[b]);
        let message = format!(
            "{} and {} cover the same ground: about {} sq ft",
            quoted(&one.name),
            quoted(&other.name),
            about(overlap)
        );
        let mut fault = Diagnostic::new(Word::SpacesOverlap, other.span, message)
            .also(one.span, "the other one");
        if let Some((reach, note)) = self.reach(b, a, Lies::Inside) {
            fault = fault.also(reach, "reaches in").note(note);
        } else if let Some((reach, note)) = self.reach(a, b, Lies::Inside) {
            fault = fault.also(reach, "reaches in").note(note);
        }
        if self.unplaced.contains(&b) {
            fault = fault.note(format!(
                "{} has no place yet: it was laid where the house's first walk begins",
                quoted(&self.house.spaces[b].name)
            ));
        }
        let moves = self.moves_apart(a, b);
        let helps = self.overlap_helps(a, b, &moves);
        let fault = helps.into_iter().fold(fault, Diagnostic::help);
        self.report(moves.into_iter().fold(fault, Diagnostic::moved));
    }

    /// Where one of two overlapping spaces may stand instead. Beside the level's main space, or beside one that it
    /// begins at, only the later of the two can be in a wrong place; of two others, either can.
    fn moves_apart(&mut self, a: usize, b: usize) -> Vec<Move> {
        let main = self.main_space(self.house.spaces[a].level);
        let is_only_later = [a, b].contains(&main)
            || self.begins_at(b) == Some(a)
            || self.house.spaces[b].parent.is_some();
        if is_only_later {
            return self.moves_beside(b, a);
        }
        [b, a].into_iter().flat_map(|space| self.moves_beside(space, main)).collect()
    }

    /// The first living space of a level; without one, its first space.
    fn main_space(&self, level: usize) -> usize {
        let all = self.house.spaces.iter().enumerate();
        let on_level = || all.clone().filter(|(_, space)| space.level == level);
        let living = on_level().find(|(_, space)| space.kind == Kind::Living);
        living.or_else(|| on_level().next()).map_or(0, |(i, _)| i)
    }

    /// The space at a corner of which the file says that another begins.
    fn begins_at(&self, space: usize) -> Option<usize> {
        let (level, span) = (self.house.spaces[space].level, self.house.spaces[space].span);
        let sketch = self.sketch.levels.get(level)?;
        let place = &sketch.spaces.iter().find(|one| one.span == span)?.space.place;
        let is_named = |one: &&SpaceSketch| match place {
            Place::CornerOf(of, _) => one.space.name == *of,
            Place::Corner(name) => one.walk.corners.iter().any(|corner| corner.name == *name),
            Place::Origin | Place::Start(_) => false,
        };
        let of = sketch.spaces.iter().find(is_named)?.span;
        self.house.spaces.iter().position(|one| one.span == of)
    }

    /// Suggestions of what to type where space `b` overlaps `a`, the most likely first.
    fn overlap_helps(&mut self, a: usize, b: usize, moves: &[Move]) -> Vec<String> {
        let is_unplaced = self.unplaced.contains(&b);
        // A space that lies wholly in another is more likely a part of it than misplaced.
        let is_part = self.patch(b).beyond(&self.patch(a), self.sliver(a, b)) == 0.0;
        let (one, other) = (&self.house.spaces[a], &self.house.spaces[b]);
        let (name, kind) = (other.name.clone(), other.kind);
        let first = one.name.clone();
        // Rooms of which most lie over or under others are likely those of another level.
        let (here, there) = (self.patch(b), self.patch(a));
        let common = here.common(&there);
        let covers = |patch: &Patch, share: f64| common >= share * patch.common(patch);
        let is_level =
            [kind, one.kind] == [Kind::Living; 2] && covers(&here, 0.7) && covers(&there, 0.5);
        if let Some(parent) = other.parent.filter(|_| kind.lies_in_another()) {
            let around = self.house.spaces[parent].name.clone();
            let places = self.places_inside(b, parent, Some(a));
            let fits = format!("beside {} it fits inside {}", quoted(&first), quoted(&around));
            return vec![Self::offered(&places, &fits).unwrap_or_else(|| how_to_place(&around))];
        }
        let starts = self.starts(moves, b);
        let is_twice = self.has_the_same_walls(a, b);
        if is_twice && (first == name || !stands_by_itself(&name) && kind != Kind::Outbuilding) {
            return [vec![TYPED_TWICE.to_owned()], starts].concat();
        }
        let apart = vec!["if it stands by itself, where does not matter: `detached`".to_owned()];
        match kind {
            _ if kind == Kind::Outbuilding || stands_by_itself(&name) => [apart, starts].concat(),
            Kind::Deck | Kind::Patio => starts,
            Kind::Porch | Kind::Balcony | Kind::Carport if is_unplaced || !is_part => starts,
            Kind::Porch | Kind::Balcony | Kind::Carport => [starts, self.within(a, b)].concat(),
            _ if is_level => {
                // Of a place at a corner of this level nothing is left on another one.
                let place = match self.begins_at(b) {
                    Some(_) => ", and take its place, `from` and what follows, out of its line",
                    None => "",
                };
                let level = format!(
                    "if {} is on another level, put `level \"Upper floor\"` on a line before it{place}",
                    quoted(&name)
                );
                [vec![level], starts, self.within(a, b), apart].concat()
            }
            _ if is_part && says_inside(&name) => [self.within(a, b), starts, apart].concat(),
            _ => [starts, self.within(a, b), apart].concat(),
        }
    }

    /// Whether two spaces are of one kind and have walls of the same lengths, whichever way round they were walked.
    fn has_the_same_walls(&self, a: usize, b: usize) -> bool {
        let (one, other) = (&self.house.spaces[a], &self.house.spaces[b]);
        let walls = |space: &Space| {
            let mut all: Vec<(i64, i64)> = space
                .closed
                .outline
                .vectors()
                .iter()
                .map(|wall| (wall.east.abs(), wall.north.abs()))
                .collect();
            all.sort_unstable();
            all
        };
        one.kind == other.kind && walls(one) == walls(other)
    }

    /// The places where `space`, or another one that is told by its name, may stand instead.
    fn starts(&self, moves: &[Move], space: usize) -> Vec<String> {
        let Some(first) = moves.first() else {
            let level = self.house.spaces[space].level;
            let first = self.house.spaces.iter().position(|one| one.level == level);
            let main = Some(self.main_space(level)).filter(|main| *main < space).or(first);
            return vec![how_to_place(&self.house.spaces[main.unwrap_or(space)].name)];
        };
        let sides = moves.chunk_by(|one, other| (one.of, one.side) == (other.of, other.side));
        let is_either = moves.iter().any(|to| to.of != first.of);
        // On each side the place that changes the least.
        let places = sides.filter_map(|side| side.first()).map(|to| {
            let of = self.house.spaces.iter().find(|space| space.span == to.of);
            let name = of.filter(|_| is_either).map(|space| quoted(&space.name));
            moved_in_words(to, name.as_deref())
        });
        let elsewhere = "elsewhere along a wall, it is `start` and how far east and north of where the house's first walk begins";
        places.chain([elsewhere.to_owned()]).collect()
    }

    /// The suggestion that space `b` is a part of `a`, if it would be accepted as one.
    fn within(&mut self, a: usize, b: usize) -> Vec<String> {
        let is_part = self.patch(b).beyond(&self.patch(a), self.sliver(a, b)) == 0.0;
        let is_nearly_part = self.lies_nearly_in(b, a);
        let places = match is_part && !self.unplaced.contains(&b) {
            true => Vec::new(),
            false if is_nearly_part => self.places_inside_nearby(b, a),
            false => self.places_inside(b, a, None),
        };
        let first = &self.house.spaces[a].name;
        let within =
            |place: &String| format!("`within \"{first}\" {}", place.trim_start_matches('`'));
        let typed = match &places[..] {
            [place] => within(place),
            [] if is_part => format!("`within \"{first}\"`"),
            [_, _, ..] => words::list_or(&places.iter().map(within).collect::<Vec<String>>()),
            _ => return Vec::new(),
        };
        vec![format!(
            "if it lies under the same roof and the walk of {} goes around it, it is {typed}, and deducted",
            quoted(first)
        )]
    }

    /// Whether a space, placed as typed, has nearly all of its area in another one: mostly it is a part of that and was
    /// placed a little off.
    pub(super) fn lies_nearly_in(&self, space: usize, other: usize) -> bool {
        const NEARLY: f64 = 0.85;
        let here = self.patch(space);
        !self.unplaced.contains(&space) && here.common(&self.patch(other)) >= NEARLY * here.area()
    }

    /// Reports upper levels that extend beyond what is below them.
    pub(super) fn overhangs(&mut self) {
        let uppers = 1..self.house.levels.len();
        let looked_at: Vec<(usize, usize)> =
            uppers.filter_map(|upper| Some((upper, self.could_overhang(upper)?))).collect();
        if looked_at.is_empty() {
            return;
        }
        let grounds = self.grounds();
        for (upper, lower) in looked_at {
            let under = self.under(&grounds, upper, lower);
            let sliver = Length::from_nm(6 * Length::INCH.nm());
            let beyond = grounds[upper].walled.beyond(&under, sliver);
            let mut spaces = self.house.spaces.iter();
            let first = spaces.find(|space| space.level == upper && stands_on_walls(space));
            let span = first.map(|space| space.span);
            let Some(span) = span.filter(|_| beyond > 0.0) else { continue };
            let (above, below) =
                (quoted(&self.house.levels[upper].name), quoted(&self.house.levels[lower].name));
            let message =
                format!("{above} reaches beyond {below} by about {} sq ft", about(beyond));
            if self.fits_without_veneer(upper, lower) {
                self.report(Diagnostic::new(Word::UpperOverhangs, span, message).help(format!(
                    "the file gives no veneer, so one was assumed; without it {above} fits over {below}: if the house has none, put `veneer none` above the first level"
                )));
                continue;
            }
            if let Some(note) =
                self.placed_above((upper, lower), &grounds[upper].walled, &under, span)
            {
                self.report(note);
                continue;
            }
            let help = self.moved_over(upper, &grounds[upper].walled, &under).unwrap_or_else(|| {
                "if it does not overhang there, say where each of its spaces starts: `start` and how far east and north of where the house's first walk begins".to_owned()
            });
            let mut warning = Diagnostic::new(Word::UpperOverhangs, span, message).help(help);
            // Most of it stands over nothing.
            if beyond * 2.0 > grounds[upper].walled.area() {
                warning = warning.help(format!(
                    "if {above} stands next to {below} and not on it, as in a split level, write `beside` after its name and where each of its spaces starts"
                ));
            }
            self.report(warning);
        }
    }

    /// Reports levels that stand beside another one and lie on it: mostly their spaces say no place, so that they were
    /// put where the other level begins.
    pub(super) fn beside_and_on(&mut self) {
        let levels = 1..self.house.levels.len();
        let beside: Vec<usize> = levels.filter(|&i| self.house.levels[i].beside).collect();
        if beside.is_empty() {
            return;
        }
        let grounds = self.grounds();
        for level in beside {
            let under = self.under(&grounds, level, level - 1);
            let walled = &grounds[level].walled;
            let all = walled.area();
            // Walls that two levels share may lie a veneer over each other.
            let sliver = Length::from_nm(Length::FOOT.nm());
            let on = all - walled.beyond(&under, sliver);
            let first = self.house.spaces.iter().find(|space| space.level == level);
            let Some(span) = first.map(|space| space.span).filter(|_| on * 4.0 > all) else {
                continue;
            };
            let (this, other) = (
                quoted(&self.house.levels[level].name),
                quoted(&self.house.levels[level - 1].name),
            );
            self.report(
                Diagnostic::new(
                    Word::LevelsOverlap,
                    span,
                    format!("{this} stands beside {other}, and about {} sq ft of it lie on that level", about(on)),
                )
                .help(format!("if it stands on {other}, take `beside` away"))
                .help("if it stands next to it, say where each of its spaces starts: `start` and how far east and north of where the house's first walk begins"),
            );
        }
    }

    /// The level below an upper level if the upper one may extend beyond it; `None` if there is none below, or if a
    /// quick test shows that each of its spaces with walls lies over a space there.
    fn could_overhang(&self, upper: usize) -> Option<usize> {
        let level = &self.house.levels[upper];
        if level.beside || level.below_grade {
            return None;
        }
        let has_space = |i: usize| self.house.spaces.iter().any(|space| space.level == i);
        let lower =
            (0..upper).rev().find(|&i| !self.house.levels[i].below_grade && has_space(i))?;
        let spaces = || 0..self.house.spaces.len();
        let stands = |i: usize, level: usize| {
            let space = &self.house.spaces[i];
            space.level == level && space.parent.is_none() && !space.by_itself
        };
        let is_over_one =
            |i: usize| spaces().any(|below| stands(below, lower) && self.surely_lies_in(i, below));
        let is_outside = self.house.spaces.iter().all(|space| space.face == Face::Outside);
        let mut walled =
            spaces().filter(|&i| stands(i, upper) && stands_on_walls(&self.house.spaces[i]));
        (!is_outside || !walled.all(is_over_one)).then_some(lower)
    }

    /// The area under a level: that of the level below and of those at the same height. A level half in the ground,
    /// given between the two, may carry it as well.
    fn under(&self, grounds: &[Ground], upper: usize, mut lower: usize) -> Patch {
        let mut under = vec![grounds[lower].all.clone()];
        let between = lower + 1..upper;
        under.extend(between.map(|level| grounds[level].all.clone()));
        while self.house.levels[lower].beside && lower > 0 {
            lower -= 1;
            under.push(grounds[lower].all.clone());
        }
        if under.len() == 1 { under.remove(0) } else { Patch::all_of(&under) }
    }

    /// Whether an upper level would fit over the lower one if no veneer were assumed.
    fn fits_without_veneer(&mut self, upper: usize, lower: usize) -> bool {
        let is_outside = self.house.spaces.iter().all(|space| space.face == Face::Outside);
        if self.house.veneer.is_some() || is_outside {
            return false;
        }
        self.house.veneer = Some(Thickness::None);
        let grounds = self.grounds();
        let under = self.under(&grounds, upper, lower);
        self.house.veneer = None;
        let (walled, sliver) = (&grounds[upper].walled, Length::from_nm(6 * Length::INCH.nm()));
        if walled.beyond(&under, sliver) == 0.0 {
            return true;
        }
        // A level whose position the file does not give was only put somewhere, so it need not be there.
        let first = self.sketch.levels[upper].spaces.first();
        first.is_some_and(|space| space.space.place == Place::Origin)
            && walled.corner_count() + under.corner_count() <= MOST_CORNERS
            && walled
                .moves_onto(&under, sliver, MOST_MOVES)
                .into_iter()
                .any(|by| walled.moved(by).beyond(&under, sliver) == 0.0)
    }

    /// Where the only space of an upper level would have to start to fit over the lower one; `None` if it fits
    /// nowhere or is not the only one.
    fn moved_over(&self, upper: usize, walled: &Patch, under: &Patch) -> Option<String> {
        let mut spaces = self.house.spaces.iter().filter(|space| space.level == upper);
        let (only, None) = (spaces.next()?, spaces.next()) else { return None };
        if walled.corner_count() + under.corner_count() > MOST_CORNERS {
            return None;
        }
        let sliver = Length::from_nm(6 * Length::INCH.nm());
        let by = walled
            .moves_onto(under, sliver, MOST_MOVES)
            .into_iter()
            .find(|by| walled.moved(*by).beyond(under, sliver) == 0.0)?;
        let typed = self.start_at((only.at.0 + by.0, only.at.1 + by.1))?;
        Some(format!("if it does not overhang there, it stands over the level below at {typed}"))
    }

    /// The note about an upper level whose position the file does not give and that fits over the level below if it
    /// is moved, or rotated and moved; `None` if it does not fit, or if the file gives its start.
    fn placed_above(
        &self,
        (upper, lower): (usize, usize),
        walled: &Patch,
        under: &Patch,
        span: Span,
    ) -> Option<Diagnostic> {
        let spaces = &self.sketch.levels[upper].spaces;
        let says_nothing = spaces.first().is_some_and(|space| space.space.place == Place::Origin);
        // Outbuildings stand beside the house, and are told so.
        let is_apart = spaces.iter().all(|space| space.space.kind == Kind::Outbuilding);
        if !says_nothing || is_apart || walled.corner_count() + under.corner_count() > MOST_CORNERS
        {
            return None;
        }
        let sliver = Length::from_nm(6 * Length::INCH.nm());
        let mut turned = walled.clone();
        for turns in 0..4 {
            let fits = |by: &(i64, i64)| turned.moved(*by).beyond(under, sliver) == 0.0;
            let moves = turned.moves_onto(under, sliver, MOST_MOVES);
            if let Some(by) = moves.into_iter().find(fits) {
                return Some(self.placement((upper, lower), turns, by, span));
            }
            turned = turned.turned_left();
        }
        None
    }

    fn placement(
        &self,
        (upper, lower): (usize, usize),
        turns: usize,
        (east, north): (i64, i64),
        span: Span,
    ) -> Diagnostic {
        let (above, below) =
            (quoted(&self.house.levels[upper].name), quoted(&self.house.levels[lower].name));
        let part = |axis: Axis, nm: i64| {
            let far = WrittenLength::new(Length::from_nm(nm).abs().to_sixteenth(), self.form());
            (nm != 0).then(|| (Direction::along(axis, nm).word(), far.spoken()))
        };
        let parts: Vec<(&str, String)> =
            [part(Axis::East, east), part(Axis::North, north)].into_iter().flatten().collect();
        let typed = self.start_at((east, north));
        let spoken: Vec<String> = parts.iter().map(|(way, far)| format!("{far} {way}")).collect();
        let starts = match spoken.is_empty() {
            true => "where it starts".to_owned(),
            false => format!("{} of where it starts", words::all_of(&spoken)),
        };
        let turned = match turns {
            0 => "",
            1 => "turned a quarter to the left, ",
            2 => "turned half round, ",
            _ => "turned a quarter to the right, ",
        };
        let note = Diagnostic::new(
            Word::PlacedAbove,
            span,
            format!(
                "the file does not say where {above} stands: {turned}it fits over {below} {starts}"
            ),
        );
        match (turns, typed) {
            (0, Some(typed)) => {
                let others = self.moved_with_it(upper, (east, north));
                let first = match others.is_empty() {
                    true => "its first space".to_owned(),
                    false => {
                        let first = self.sketch.levels[upper].spaces.first();
                        first.map_or_else(String::new, |first| quoted(&first.space.name.text))
                    }
                };
                let then: Vec<String> =
                    others.iter().map(|other| format!("; {other}")).collect();
                let note = note.help(format!(
                    "to say so, type {typed} after the name of {first}{}",
                    then.concat()
                ));
                // What is typed on one line alone would leave the others where they are.
                match others.is_empty() {
                    true => note.repair(span, typed.trim_matches('`')),
                    false => note,
                }
            }
            (0, None) => note.help("nothing has to be typed"),
            // Walls that may be named by their sides are settled before another level is turned to fit them.
            (1 | 3, _) if self.turned_on(lower).is_some() => note.help(format!(
                "its areas are the same either way; the walls of {} are typed as seen from the street: settle first, as the note on them says, whether they are named by the sides on which they stand; if they are, {above} may fit as it is",
                quoted(&self.turned_on(lower).unwrap_or_default())
            )),
            (1 | 3, _) if self.turned_on(upper).is_some() => note.help(format!(
                "its areas are the same either way; for a drawing that matches, type the walls of {} in compass words as they were walked: `front`, `right`, `back` and `left` are read as the ways, and not as the sides on which the walls stand",
                quoted(&self.turned_on(upper).unwrap_or_default())
            )),
            _ => note.help(format!(
                "its areas are the same either way; for a drawing that matches, walk it again with the directions of {below}"
            )),
        }
    }

    /// How the lines of the other spaces of a level read if all of it is moved: those whose places count from where the
    /// house's first walk begins, and not from a corner of another space.
    fn moved_with_it(&self, level: usize, by: At) -> Vec<String> {
        let typed = self.sketch.levels[level].spaces.iter().skip(1);
        let moved = typed.filter(|one| !one.space.detached).filter_map(|one| {
            let Place::Start(_) = &one.space.place else { return None };
            let here = self.house.spaces.iter().find(|space| space.span.start == one.span.start)?;
            let name = quoted(&one.space.name.text);
            Some(match self.start_at((here.at.0 + by.0, here.at.1 + by.1)) {
                Some(after) => {
                    format!("in the line of {name}, {after} in place of the `start` that it has")
                }
                None => format!("in the line of {name}, no `start`"),
            })
        });
        moved.collect()
    }

    /// The name of a space of a level whose walls may be named by the sides on which they stand.
    fn turned_on(&self, level: usize) -> Option<String> {
        let spaces = (0..self.house.spaces.len()).filter(|&i| {
            self.house.spaces[i].level == level && self.house.spaces[i].parent.is_none()
        });
        spaces.into_iter().find_map(|space| self.may_be_turned(space))
    }

    /// The area that each level covers, measured at the frame if the house has different faces.
    fn grounds(&self) -> Vec<Ground> {
        if self.house.levels.len() < 2 {
            return Vec::new();
        }
        let mixed = self.house.spaces.iter().any(|space| space.face != Face::Outside);
        let mut all = vec![Vec::new(); self.house.levels.len()];
        let mut walled = all.clone();
        for (i, space) in self.house.spaces.iter().enumerate() {
            if space.parent.is_some() || space.by_itself {
                continue;
            }
            let frame = if mixed { self.house.at_face(i, Face::Frame).ok() } else { None };
            let patch = match frame {
                Some(frame) => Patch::new(&frame.outline, space.at),
                None => self.patch(i),
            };
            if stands_on_walls(space) {
                walled[space.level].push(patch.clone());
            }
            all[space.level].push(patch);
        }
        let grounds = all.iter().zip(&walled);
        grounds
            .map(|(all, walled)| Ground { all: Patch::all_of(all), walled: Patch::all_of(walled) })
            .collect()
    }
}

/// A sentence on how to say where a space starts, with nothing in it that would be wrong if typed literally.
fn how_to_place(first: &str) -> String {
    format!(
        "say where it starts: `from \"{first}\" corner` and a number, 3 where its third wall begins; or `start` and how far east and north of where the house's first walk begins"
    )
}

/// Where a space may stand on one side of another one, and what is typed for it; `name` tells which of two it is.
fn moved_in_words(to: &Move, name: Option<&str>) -> String {
    let pairs = to.exchanged.iter().map(|[one, other]| format!("its `{one}` and `{other}`"));
    let pairs: Vec<String> = pairs.collect();
    let exchanged = (!pairs.is_empty()).then(|| format!("exchange {}", words::all_of(&pairs)));
    let after = if name.is_some() { " after its name" } else { "" };
    let start = (!to.start.is_empty()).then(|| format!("type `{}`{after}", to.start));
    let typed: Vec<String> = start.into_iter().chain(exchanged).collect();
    let (side, stands, typed) = (to.side, &to.stands, typed.join(", and "));
    let it = name.unwrap_or("it");
    format!("if {it} stands on the {side} side of {}, {stands}: {typed}", quoted(&to.beside))
}

/// Whether a building of this name is usually detached.
fn stands_by_itself(name: &str) -> bool {
    let name = name.to_lowercase();
    ["barn", "stable", "shed", "outbuilding", "gazebo"]
        .iter()
        .any(|word| name.split(|c: char| !c.is_alphabetic()).any(|part| part == *word))
}

/// A wall along an axis: the axis, where it lies across it, and where it begins and ends along it.
type Wall = (Axis, i64, (i64, i64));

/// The area that a level covers.
struct Ground {
    all: Patch,
    /// The area covered by its spaces with walls.
    walled: Patch,
}

/// Whether a space needs something under its walls, as a balcony or a porch does not.
fn stands_on_walls(space: &Space) -> bool {
    space.kind.has_walls() || space.counted
}

/// A distance for a message, rounded to a sixteenth of an inch.
fn length_of(feet: f64) -> Length {
    nearest_nm(feet * Length::FOOT.nm() as f64).to_sixteenth()
}

/// A rough area for a message: whole square feet, at least 1.
fn about(sq_ft: f64) -> String {
    let digits = format!("{:.0}", sq_ft.max(1.0));
    digits.parse().map_or(digits, crate::units::decimal::thousands)
}
