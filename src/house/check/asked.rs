//! Places for a space whose place was told in words: each is computed from what the words mean, tried, and offered only
//! if the level accepts the space there.
#![expect(
    clippy::float_arithmetic,
    reason = "places for a message are judged against tolerances; no printed figure comes from here"
)]

use crate::diagnostic::{Diagnostic, quoted};
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Extent;
use crate::geometry::overlap::Patch;
use crate::house::Face;
use crate::house::check::glance::Glance;
use crate::house::check::places::{At, NEAR, Tried, along, edge, from_its_end, grain};
use crate::house::check::{Checker, unchecked};
use crate::sketch::asked::{Part, Point, Sort};
use crate::sketch::statement::Place;
use crate::sketch::{Kind, LevelSketch, Sketch, Whereabouts};
use crate::units::length::{Form, Length};

/// The most places that are suggested.
const MOST_OFFERED: usize = 4;

/// What was found for a space whose place was told in words.
#[derive(Debug, Default)]
pub(crate) struct Answer {
    /// The places, each as it is typed, and where that is in words.
    pub(crate) places: Vec<(String, String)>,
    /// The ends of the wall along which it may stand anywhere, if the words do not say where.
    pub(crate) ends: Option<[Direction; 2]>,
    /// Whether the level accepts it at some place there, one that is meant or not.
    pub(crate) fits: bool,
    /// Whether it is as long as the side that the words name.
    pub(crate) fills: bool,
    /// Which of the places is a recess of the house that it fills.
    pub(crate) recess: Option<usize>,
    /// A distance as it is written in this file, for an example.
    pub(crate) example: &'static str,
    /// The space whose place or walk has to be settled first.
    pub(crate) waits_for: Option<Waits>,
    /// Whether its place cannot be told before its size is.
    pub(crate) needs_size: bool,
    /// Whether nothing is told but that it is in the middle of the space that it lies in.
    pub(crate) needs_ends: bool,
    /// Whether the words put it over a space, and no level is below its own.
    pub(crate) needs_level: bool,
    /// A space that it lies in or beside, whose walls may be named by the sides on which they stand.
    pub(crate) may_be_turned: Option<String>,
    /// What the words call a space, if nothing above on the level is called so, or more than one thing.
    pub(crate) unknown: Option<String>,
}

/// A space whose place or walk is not settled.
#[derive(Debug)]
pub(crate) struct Waits {
    pub(crate) name: String,
    /// Where its line begins, if nothing but its place is missing.
    pub(crate) unplaced: Option<usize>,
    /// Whether it is `detached`, so that it has no place on the drawing.
    pub(crate) by_itself: bool,
    /// The error that the level has of it, which is not shown while other lines cannot be read.
    pub(crate) wrong: Option<Diagnostic>,
}

impl Answer {
    fn waiting(name: &str) -> Answer {
        let waits = Waits { name: name.to_owned(), unplaced: None, by_itself: false, wrong: None };
        Answer { waits_for: Some(waits), ..Answer::default() }
    }
}

/// Where the space whose line begins at byte `line` of the text may stand. Nothing if the words name nothing that has
/// been measured, or the level accepts no such place. `sized` says that its sides were made from a size, so that its
/// walk may as well begin at another corner; `open` has where the lines of other spaces begin that may still be read in
/// more than one way.
pub(crate) fn places(
    sketch: &Sketch,
    line: usize,
    told: &Whereabouts,
    sized: bool,
    open: &[usize],
) -> Answer {
    let mut found: Vec<Diagnostic> = Vec::new();
    let mut house = unchecked(sketch);
    let mut checker = Checker::new(sketch, &mut house, &mut found, Glance::at(sketch));
    for (i, level) in sketch.levels.iter().enumerate() {
        checker.level(i, level);
    }
    let space = checker.house.spaces.iter().position(|space| space.span.start == line);
    let mut lines = sketch.levels.iter().flat_map(|level| &level.spaces);
    if !sized && lines.any(|one| one.span.start == line && one.walk.sides.is_empty()) {
        // Another space on its level stands under it.
        let is_here = |level: &&LevelSketch| level.spaces.iter().any(|one| one.span.start == line);
        let level = sketch.levels.iter().find(is_here);
        let needs_level = told.is_over() && level.is_some_and(|level| level.spaces.len() > 1);
        let example = checker.example();
        return Answer { needs_size: true, needs_level, example, ..Answer::default() };
    }
    let answer = space.and_then(|space| checker.places_told(space, told, sized, open));
    let mut answer = answer.unwrap_or_default();
    if let Some(waits) = &mut answer.waits_for {
        let spaces = sketch.levels.iter().flat_map(|level| &level.spaces);
        let above = spaces.filter(|one| one.span.start < line);
        let of = above.rev().find(|one| one.space.name.text == waits.name);
        waits.wrong = of.and_then(|of| {
            let is_of_it =
                |error: &&Diagnostic| error.is_error() && error.span().start == of.span.start;
            found.iter().find(is_of_it).cloned()
        });
    }
    answer
}

/// What one part of the words allows.
enum Allows {
    /// These places and no others.
    Places(Vec<At>),
    /// These distances along an axis, from the level's origin to where the walk begins.
    Along(Axis, Vec<i64>),
    /// Any place.
    Any,
}

impl Allows {
    fn holds(&self, at: At) -> bool {
        let is_near = |one: i64, other: i64| (one - other).abs() <= NEAR;
        match self {
            Allows::Places(all) => {
                all.iter().any(|one| is_near(one.0, at.0) && is_near(one.1, at.1))
            }
            Allows::Along(axis, all) => all.iter().any(|one| is_near(*one, along(at, *axis))),
            Allows::Any => true,
        }
    }
}

/// A space that is to be placed, and what it is placed against.
struct Wanted {
    space: usize,
    /// The space that the words count from unless they name another.
    main: usize,
    /// The space that it lies in.
    parent: Option<usize>,
    /// The space of the level before that it lies over.
    over: Option<usize>,
    sized: bool,
}

impl Wanted {
    /// Whether it is to lie in the outline of the space that the words count from.
    fn inside(&self) -> bool {
        self.is_in(self.main)
    }

    fn is_in(&self, of: usize) -> bool {
        self.parent == Some(of) || self.over == Some(of)
    }
}

impl Checker<'_> {
    fn places_told(
        &mut self,
        space: usize,
        told: &Whereabouts,
        sized: bool,
        open: &[usize],
    ) -> Option<Answer> {
        told.parts.first()?;
        // What may still stand elsewhere is in the way of nothing.
        let spaces = self.house.spaces.iter().enumerate();
        let unsettled = spaces.filter(|(_, one)| open.contains(&one.span.start));
        self.misplaced.extend(unsettled.map(|(i, _)| i));
        let is_above = |part: &Part| part.sort == Sort::Over;
        // The first space of a level counts from what it lies over.
        let lies_over = told.parts.iter().find(|part| is_above(part));
        let lies_over = lies_over.and_then(|part| self.below(space, part.of.as_deref()));
        let mut counted: Vec<usize> = Vec::new();
        for part in &told.parts {
            let of = match is_above(part) {
                true => self.below(space, part.of.as_deref()),
                false => self
                    .counted_from(space, part.of.as_deref())
                    .or(lies_over.filter(|_| part.of.is_none())),
            };
            match (of, &part.of) {
                (Some(of), _) => counted.push(of),
                // What lies over a space of its own level belongs to the next.
                (None, _)
                    if is_above(part) && self.counted_from(space, part.of.as_deref()).is_some() =>
                {
                    return Some(Answer { needs_level: true, ..Answer::default() });
                }
                (None, Some(of)) => return Some(self.not_found(space, of)),
                (None, None) => return self.first_living(space).map(|name| Answer::waiting(&name)),
            }
        }
        // Other words count from what the first words name.
        let first = told.parts.iter().position(|part| !is_above(part));
        // `over the garage, at the back`: at the back of the garage.
        let above = told.parts.iter().position(is_above).and_then(|above| counted.get(above));
        let names_another = told.parts.iter().any(|part| !is_above(part) && part.of.is_some());
        let over = above.copied().filter(|_| !names_another);
        let main = match (over, first) {
            (Some(over), _) => over,
            (None, Some(first)) => *counted.get(first)?,
            (None, None) => self.counted_from(space, None).unwrap_or(space),
        };
        for (of, part) in counted.iter_mut().zip(&told.parts) {
            if part.of.is_none() && !is_above(part) {
                *of = main;
            }
        }
        let is_unplaced =
            |of: usize| self.unplaced.contains(&of) || self.is_beside_without_a_place(of);
        let is_open = |of: &&usize| {
            let begins = self.house.spaces[**of].span.start;
            is_unplaced(**of) || self.misplaced.contains(of) || open.contains(&begins)
        };
        if let Some(of) = counted.iter().chain([&main]).filter(|of| **of != space).find(is_open) {
            let there = &self.house.spaces[*of];
            let begins = there.span.start;
            let unplaced = (is_unplaced(*of) && !open.contains(&begins)).then_some(begins);
            let waits = Waits { name: there.name.clone(), unplaced, by_itself: false, wrong: None };
            return Some(Answer { waits_for: Some(waits), ..Answer::default() });
        }
        let here = &self.house.spaces[space];
        let stated = self.stated_parent(space);
        let parent = match here.kind.lies_in_another() {
            true => stated.or_else(|| self.counted_from(space, None)),
            false => stated,
        };
        let wanted = Wanted { space, main, parent, over, sized };
        if told.parts.iter().all(|part| part.sort == Sort::Middle) {
            let example = self.example();
            return Some(Answer { needs_ends: true, example, ..Answer::default() });
        }
        let mut found = self.found_for(&wanted, told, &counted)?;
        // `behind the house, left of the garage`: if nothing stands against both, past the second, or in line with it.
        for sort in [Sort::Past, |way| Sort::Inset(way, Length::ZERO)] {
            if let Some(lined) = in_line(told, sort).filter(|_| !found.fits) {
                found = self.found_for(&wanted, &lined, &counted)?;
            }
        }
        // `next to the stairs, front`: at the front of the house, if not in front of the stairs.
        if let Some(lined) = at_the_wall(told).filter(|_| !found.fits) {
            let house = self.counted_from(space, None).unwrap_or(main);
            let of = |part: &Part| if part.of.is_none() { house } else { main };
            let counted: Vec<usize> = lined.parts.iter().map(of).collect();
            found = self.found_for(&wanted, &lined, &counted)?;
        }
        // At a corner of the house a garage stands outside as well as inside its walk.
        let is_corner = |part: &Part| matches!(part.sort, Sort::At(Point::Toward(..)));
        let kind = self.house.spaces[space].kind;
        let at_corner = told.parts.iter().all(is_corner);
        // `garage 22' x 24' on the right`: beside the house as well as in its walk.
        let is_on_a_side = sized
            && !told.is_outside
            && matches!(&told.parts[..], [Part { sort: Sort::Side(_), of: None }]);
        let is_either = kind == Kind::Garage && (at_corner || is_on_a_side)
            // A room without finish, `at the back` of a basement, or what is finished of one without.
            || kind == Kind::Unfinished
            || kind == Kind::Living && self.house.spaces[main].kind == Kind::Unfinished;
        if is_either && parent.is_none() && over.is_none() && main != space {
            let name = self.house.spaces[main].name.clone();
            let inside = Wanted { parent: Some(main), ..wanted };
            let inside = self.found_for(&inside, told, &counted)?.places.into_iter();
            let inside = inside.map(|(typed, said)| (format!("within \"{name}\" {typed}"), said));
            // Of each one place: in how many ways its size lies there is asked as well.
            found.places = match kind == Kind::Garage && !at_corner {
                true => found.places.into_iter().take(1).chain(inside.take(1)).collect(),
                false => inside.take(1).chain(found.places).collect(),
            };
        }
        found.may_be_turned = self.may_be_turned(main);
        Some(found)
    }

    fn found_for(
        &mut self,
        wanted: &Wanted,
        told: &Whereabouts,
        counted: &[usize],
    ) -> Option<Answer> {
        let parts = told.parts.iter().zip(counted);
        let allowed: Vec<Allows> =
            parts.map(|(part, of)| self.allows(wanted, part, *of, &told.parts)).collect();
        self.solve(wanted, told, counted, &allowed)
    }

    /// Whether a space is the first of a level that stands beside another one, and its line does not say where.
    fn is_beside_without_a_place(&self, space: usize) -> bool {
        let here = &self.house.spaces[space];
        let Some(level) = self.sketch.levels.get(here.level) else { return false };
        let first = level.spaces.first().filter(|first| first.span.start == here.span.start);
        let is_first_level = here.level == 0;
        !is_first_level
            && level.level.beside
            && first.is_some_and(|first| first.space.place == Place::Origin)
    }

    /// The answer where nothing that can be counted from is called so: it may stand above and be `detached`, or not
    /// close yet.
    fn not_found(&self, space: usize, of: &str) -> Answer {
        let here = &self.house.spaces[space];
        let is_called = |name: &str| {
            let (name, of) =
                (format!(" {} ", name.to_lowercase()), format!(" {} ", of.to_lowercase()));
            name.contains(&of) || of.contains(&name)
        };
        let above = self.sketch.levels.get(here.level).into_iter().flat_map(|level| &level.spaces);
        let mut above = above.filter(|one| {
            one.span.start < here.span.start
                && (is_called(&one.space.name.text) || is_called(one.space.kind.word()))
        });
        // What is closed and placed would have been found if the words meant it.
        let is_settled = |begins: usize| {
            let found = self.house.spaces.iter().position(|one| one.span.start == begins);
            found.is_some_and(|one| {
                !self.house.spaces[one].by_itself
                    && !self.unplaced.contains(&one)
                    && !self.misplaced.contains(&one)
            })
        };
        match (above.next(), above.next()) {
            (Some(one), None) if !is_settled(one.span.start) => {
                let waits = Waits {
                    name: one.space.name.text.clone(),
                    unplaced: None,
                    by_itself: one.space.detached,
                    wrong: None,
                };
                Answer { waits_for: Some(waits), ..Answer::default() }
            }
            _ => Answer { unknown: Some(of.to_owned()), ..Answer::default() },
        }
    }

    /// What the first living space of the level is called, although its walk does not close yet.
    fn first_living(&self, space: usize) -> Option<String> {
        let here = &self.house.spaces[space];
        let mut above = self.sketch.levels.get(here.level)?.spaces.iter();
        let living = above.find(|one| one.space.kind == Kind::Living)?;
        (living.span.start < here.span.start).then(|| living.space.name.text.clone())
    }

    fn solve(
        &mut self,
        wanted: &Wanted,
        told: &Whereabouts,
        counted: &[usize],
        allowed: &[Allows],
    ) -> Option<Answer> {
        let &Wanted { space, main, parent, .. } = wanted;
        let inside = wanted.inside();
        let on_axis = |axis: Axis| {
            allowed.iter().find_map(|one| match one {
                Allows::Along(of, all) if *of == axis => Some(all.clone()),
                _ => None,
            })
        };
        let mut free: Option<Axis> = None;
        let at_once = allowed.iter().find_map(|one| match one {
            Allows::Places(all) => Some(all.clone()),
            _ => None,
        });
        let candidates: Vec<At> = match at_once {
            Some(all) => all,
            None => {
                let mut known = |axis: Axis| {
                    on_axis(axis).unwrap_or_else(|| {
                        free = Some(axis);
                        self.aligned(space, (main, counted), axis)
                    })
                };
                let (east, north) = (known(Axis::East), known(Axis::North));
                east.iter().flat_map(|&e| north.iter().map(move |&n| (e, n))).collect()
            }
        };
        let grain = grain(self.form());
        let even = |nm: i64| Length::from_nm(nm).rounded_to(grain).nm();
        let is_exact =
            told.parts.iter().any(|part| matches!(part.sort, Sort::From(..) | Sort::Over));
        let mut tried: Vec<Tried> = Vec::new();
        let mut seen: Vec<At> = Vec::new();
        for at in candidates {
            let at = (even(at.0), even(at.1));
            if seen.contains(&at) {
                continue;
            }
            seen.push(at);
            let clear_of = Some(main).filter(|main| !inside && *main != space);
            if !allowed.iter().all(|one| one.holds(at))
                || !self.is_accepted(space, at, parent, clear_of)
                || !self.is_as_told(wanted, at, told, counted)
            {
                continue;
            }
            let flush = if main == space { 1.0 } else { self.flush(space, at, main, inside) };
            if inside || flush >= 1.0 || is_exact {
                tried.push(Tried { at, by: 0, flush });
            }
        }
        let fills = |axis: &Axis| {
            let own = self.house.spaces[space].closed.outline.extent((0, 0));
            let (own, all) =
                (stretch(&own, *axis), stretch(&self.house.spaces[main].extent, *axis));
            (own.1 - own.0 - (all.1 - all.0)).abs() <= NEAR
        };
        let fits = !tried.is_empty();
        tried.sort_by(|a, b| b.flush.total_cmp(&a.flush));
        // Where all of a wall lies against the house, places where only part of it does are not meant.
        if let [best, ..] = tried[..] {
            tried.retain(|place| inside || 2.0 * place.flush >= best.flush);
            // What is as long as the side does not hang past its end.
            if free.as_ref().is_some_and(&fills) {
                tried.retain(|place| inside || place.flush > best.flush - 0.5);
            }
        }
        // Words that count from an end of another space mean that end: where it does not do, no other is guessed. Of
        // the walls of the space that it stands against, all that do are offered, or the outermost if it is in line
        // with their end.
        for ((part, of), one) in told.parts.iter().zip(counted).zip(allowed) {
            let (Sort::Inset(_, by), Allows::Along(axis, all)) = (&part.sort, one) else {
                continue;
            };
            if free == Some(*axis) {
                continue;
            }
            let lies = |place: &Tried, at: i64| (along(place.at, *axis) - at).abs() <= NEAR;
            let does = |at: &&i64| tried.iter().any(|place| lies(place, **at));
            let kept = match *of == main {
                true if *by > Length::ZERO => continue,
                true => all.iter().find(does),
                false => all.first().filter(does),
            };
            tried.retain(|place| kept.is_some_and(|at| lies(place, *at)));
        }
        tried.truncate(MOST_OFFERED);
        let is_as_long = free.as_ref().is_some_and(&fills);
        let ends = free
            .filter(|_| !is_as_long)
            .map(|axis| [Direction::along(axis, -1), Direction::along(axis, 1)]);
        let example = self.example();
        // Where it fits in the middle of no wall, how far from an end is asked for.
        let off_center =
            told.parts.iter().zip(allowed).find_map(|(part, one)| match (&part.sort, one) {
                (Sort::Middle, Allows::Along(axis, _)) if tried.is_empty() => Some(*axis),
                _ => None,
            });
        let (fits, ends) = match off_center {
            Some(axis) => (true, Some([-1, 1].map(|sign| Direction::along(axis, sign)))),
            None => (fits, ends),
        };
        let is_given = told.parts.iter().any(|part| matches!(part.sort, Sort::From(..)));
        let recess = (!inside && main != space)
            .then(|| tried.iter().position(|place| self.fills_a_recess(space, place.at, main)))
            .flatten();
        let places = tried.iter().flat_map(|place| {
            let at = if is_given { place.at } else { self.beyond_the_wall(wanted, place.at, told) };
            let beyond = vec![Tried { at, ..*place }];
            let typed = self.typed(space, beyond).into_iter().next().unwrap_or_default();
            let said = self.where_it_is(wanted, place.at)?;
            Some((typed.trim_matches('`').to_owned(), said))
        });
        let places = places.collect();
        Some(Answer { places, ends, fits, fills: is_as_long, recess, example, ..Answer::default() })
    }

    /// Whether a space has walls of another one along the whole of three of its sides.
    fn fills_a_recess(&mut self, space: usize, at: At, of: usize) -> bool {
        let extent = self.house.spaces[space].closed.outline.extent(at);
        let ways = [Direction::South, Direction::East, Direction::North, Direction::West];
        let whole = ways.into_iter().filter(|way| {
            let across = if way.axis() == Axis::East { Axis::North } else { Axis::East };
            let (low, high) = stretch(&extent, across);
            let feet = Length::from_nm(high - low).feet();
            self.leans(space, at, of, false, *way) > feet - 0.1
        });
        whole.count() == 3
    }

    /// Where a space begins that stands against walls which were taped inside: those walls lie between. Two rooms taped
    /// inside have one wall between them; what has no walls, or was taped outside, stands against the outer face.
    ///
    /// What is in line with an end of the house, or counted from it, is so with the outer face there.
    fn beyond_the_wall(&mut self, wanted: &Wanted, at: At, told: &Whereabouts) -> At {
        let &Wanted { space, main, .. } = wanted;
        let (here, there) = (&self.house.spaces[space], &self.house.spaces[main]);
        let is_beside = !wanted.inside() && main != space && here.level == there.level;
        if !is_beside || there.face != Face::Inside {
            return at;
        }
        let is_partition = here.face == Face::Inside && here.kind.has_walls();
        let face = if is_partition { Face::Frame } else { Face::Outside };
        let has_bays = self.corners(main).len() != there.sides.len();
        let mut beyond = at;
        let (own, all) = (here.closed.outline.extent(at), there.extent);
        let is_in_line = |way: Direction| {
            let ends = [own, all].map(|one| edge(stretch(&one, way.axis()), way));
            let counts = |part: &Part| matches!(part.sort, Sort::Inset(of, _) if of == way);
            (ends[0] - ends[1]).abs() <= NEAR || told.parts.iter().any(counts)
        };
        let ways = [Direction::South, Direction::East, Direction::North, Direction::West];
        let in_line = ways.map(|way| !is_partition && is_in_line(way));
        for (way, in_line) in ways.into_iter().zip(in_line) {
            if !in_line && self.leans(space, at, main, false, way) < 1.0 {
                continue;
            }
            let wall = self.walls_on(main, way).into_iter().next().map(|wall| wall.number);
            let side = wall.filter(|_| !has_bays).unwrap_or(0);
            let thick = Length::from_nm(self.house.outward(main, side, face));
            beyond = moved(beyond, way, thick.rounded_to(grain(self.form())));
        }
        beyond
    }

    /// A distance as it is written in this file.
    pub(super) fn example(&self) -> &'static str {
        match self.form() {
            Form::FeetAndInches | Form::DecimalFeet => "6'",
            Form::Meters | Form::Centimeters | Form::Millimeters => "2 m",
        }
    }

    /// The space that the line of a space says it lies in.
    fn stated_parent(&self, space: usize) -> Option<usize> {
        let here = &self.house.spaces[space];
        let mut lines = self.sketch.levels.get(here.level)?.spaces.iter();
        let line = lines.find(|line| line.span.start == here.span.start)?;
        let name = &line.space.within.as_ref()?.text;
        let all = self.house.spaces.iter().take(space);
        let mut all = all.enumerate().filter(|(_, one)| one.level == here.level);
        all.find(|(_, one)| one.name == *name).map(|(i, _)| i)
    }

    /// The space that words about a place count from: the one that they call so, if only one above on the level is;
    /// where they name none, the first living space.
    fn counted_from(&self, space: usize, of: Option<&str>) -> Option<usize> {
        let level = self.house.spaces[space].level;
        // A level that stands beside the one before it begins with nothing else to count from.
        let is_first = !self.house.spaces[..space].iter().any(|there| there.level == level);
        let is_beside = self.house.levels.get(level).is_some_and(|level| level.beside);
        let on = if is_first && is_beside { level.saturating_sub(1) } else { level };
        let all = self.house.spaces.iter().enumerate().take(space);
        let above: Vec<usize> = all
            .filter(|(_, there)| there.level == on && !there.by_itself)
            .map(|(i, _)| i)
            .collect();
        match of {
            Some(of) => self.only_called(&above, of),
            None => {
                let living = above.iter().find(|&&i| self.house.spaces[i].kind == Kind::Living);
                living.or(above.first()).copied()
            }
        }
    }

    /// The only one of these spaces that is called so: by its name, by a part of it, or by what it is.
    fn only_called(&self, all: &[usize], of: &str) -> Option<usize> {
        let of = of.to_lowercase();
        let name = |i: usize| self.house.spaces[i].name.to_lowercase();
        let only = |is: &dyn Fn(usize) -> bool| {
            let mut found = all.iter().copied().filter(|&i| is(i));
            let first = found.next()?;
            found.next().is_none().then_some(first)
        };
        let ends = |i: usize| {
            let (name, of) = (format!(" {}", name(i)), format!(" {of}"));
            name.ends_with(&of) || of.ends_with(&name)
        };
        only(&|i| name(i) == of)
            .or_else(|| only(&ends))
            .or_else(|| only(&|i| self.house.spaces[i].kind.word() == of))
            .or_else(|| only(&|i| format!(" {} ", name(i)).contains(&format!(" {of} "))))
    }

    /// The space of the level before that is called so; where none is named, its first living space.
    fn below(&self, space: usize, of: Option<&str>) -> Option<usize> {
        let level = self.house.spaces[space].level.checked_sub(1)?;
        let all = self.house.spaces.iter().enumerate();
        let all: Vec<usize> = all
            .filter(|(_, there)| there.level == level && !there.by_itself)
            .map(|(i, _)| i)
            .collect();
        match of {
            Some(of) => self.only_called(&all, of),
            None => all.iter().find(|&&i| self.house.spaces[i].kind == Kind::Living).copied(),
        }
    }

    /// What a part of the words allows; `of` is the space that it counts from.
    fn allows(&self, wanted: &Wanted, part: &Part, of: usize, all: &[Part]) -> Allows {
        let (here, there) = (&self.house.spaces[wanted.space], &self.house.spaces[of]);
        let own = here.closed.outline.extent((0, 0));
        let inside = wanted.is_in(of);
        let corners = self.corners(of);
        match &part.sort {
            Sort::Side(way) => {
                let axis = way.axis();
                let near = edge(stretch(&own, axis), if inside { *way } else { way.opposite() });
                Allows::Along(axis, corners.iter().map(|at| along(*at, axis) - near).collect())
            }
            Sort::Inset(way, by) => {
                let axis = way.axis();
                let by = way.sign() * by.nm();
                let own = stretch(&own, axis);
                // What stands against a wall is counted from the end of that wall.
                let sides = all.iter().filter_map(|part| match part.sort {
                    Sort::Side(side) if side.axis() != axis => Some(side),
                    _ => None,
                });
                let mut edges: Vec<i64> = sides
                    .filter(|_| !inside && of == wanted.main)
                    .flat_map(|side| self.ends_of_walls(of, side, *way))
                    .collect();
                // What lies inside is counted from the wall that it faces.
                if inside {
                    edges.extend(self.walls_on(of, *way).iter().map(|wall| wall.out));
                }
                // Where no wall on that side is meant, from the end of the whole.
                if edges.is_empty() || inside {
                    edges.push(edge(stretch(&there.extent, axis), *way));
                }
                // The one farthest out first.
                edges.sort_by_key(|end| -way.sign() * end);
                edges.dedup();
                let mut starts: Vec<i64> =
                    edges.iter().map(|end| end - by - edge(own, *way)).collect();
                // From the end of another space, away from it as well.
                if of != wanted.main {
                    starts.extend(edges.iter().map(|end| end + by - edge(own, way.opposite())));
                }
                Allows::Along(axis, starts)
            }
            Sort::Past(way) => {
                let axis = way.axis();
                let end = edge(stretch(&there.extent, axis), *way);
                Allows::Along(axis, vec![end - edge(stretch(&own, axis), way.opposite())])
            }
            Sort::Middle => {
                let on_side = all.iter().find_map(|part| match part.sort {
                    Sort::Side(side) => Some(side),
                    _ => None,
                });
                let side = on_side.or_else(|| {
                    all.iter().find_map(|part| match part.sort {
                        Sort::Inset(side, _) => Some(side),
                        _ => None,
                    })
                });
                // How far it is from an end says more than that it is in the middle.
                let is_measured = |part: &Part| match part.sort {
                    Sort::Inset(end, by) => {
                        by > Length::ZERO && on_side.is_some_and(|side| side.axis() != end.axis())
                    }
                    _ => false,
                };
                if all.iter().any(is_measured) {
                    return Allows::Any;
                }
                let Some(axis) = side.map(|side| match side.axis() {
                    Axis::East => Axis::North,
                    Axis::North => Axis::East,
                }) else {
                    // A floor that is centered over the one below is so both ways.
                    if wanted.over == Some(of) {
                        let center = |axis: Axis| {
                            let (all, own) = (stretch(&there.extent, axis), stretch(&own, axis));
                            (all.0 + all.1 - own.0 - own.1).div_euclid(2)
                        };
                        return Allows::Places(vec![(center(Axis::East), center(Axis::North))]);
                    }
                    return Allows::Along(Axis::East, Vec::new());
                };
                // A side with a jog has more than one middle.
                let walls = side.map(|side| self.walls_on(of, side)).unwrap_or_default();
                let all: Vec<(i64, i64)> = match walls.is_empty() {
                    true if inside && corners.len() == 4 => vec![stretch(&there.extent, axis)],
                    _ => walls.iter().map(|wall| wall.ends).collect(),
                };
                let own = stretch(&own, axis);
                let start = |all: &(i64, i64)| (all.0 + all.1 - own.0 - own.1).div_euclid(2);
                Allows::Along(axis, all.iter().map(start).collect())
            }
            Sort::At(point) => match self.point(of, point) {
                Some(_) if inside => Allows::Places(self.corner_on_corner(wanted.space, &corners)),
                point => {
                    Allows::Places(self.corner_on_corner(wanted.space, &Vec::from_iter(point)))
                }
            },
            Sort::From(point, offsets) => {
                let from = self.point(of, point);
                let at =
                    from.map(|at| offsets.iter().fold(at, |at, (way, by)| moved(at, *way, *by)));
                let is_corner = *point != Point::Origin;
                match offsets.is_empty() && inside && is_corner || wanted.sized && is_corner {
                    true => {
                        Allows::Places(self.corner_on_corner(wanted.space, &Vec::from_iter(at)))
                    }
                    false => Allows::Places(at.into_iter().collect()),
                }
            }
            Sort::Near(point, by) => {
                let ways = [Direction::North, Direction::East, Direction::South, Direction::West];
                let from = self.point(of, point).into_iter();
                let at: Vec<At> = from.flat_map(|at| ways.map(|way| moved(at, way, *by))).collect();
                Allows::Places(match wanted.sized {
                    true => self.corner_on_corner(wanted.space, &at),
                    false => at,
                })
            }
            Sort::Against => Allows::Any,
            Sort::Over => {
                let all = &there.extent;
                let is_alike = Axis::BOTH.iter().all(|axis| {
                    let (own, all) = (stretch(&own, *axis), stretch(all, *axis));
                    (own.1 - own.0 - (all.1 - all.0)).abs() <= Length::INCH.nm()
                });
                let at = (all.east().0 - own.east().0, all.north().0 - own.north().0);
                if is_alike { Allows::Places(vec![at]) } else { Allows::Any }
            }
        }
    }

    /// Where a corner of a space is.
    fn point(&self, space: usize, point: &Point) -> Option<At> {
        match point {
            Point::Origin => Some((0, 0)),
            Point::Numbered(number) => self.corners(space).get(number.checked_sub(1)?).copied(),
            Point::Named(name) => {
                let level = self.house.spaces[space].level;
                let sketch = self.sketch.levels.get(level)?;
                let mut named = sketch.spaces.iter().flat_map(|line| {
                    let of_name =
                        line.walk.corners.iter().filter(move |one| one.name.text == *name);
                    of_name.map(move |one| (line.span.start, one.after))
                });
                let (line, after) = named.next()?;
                let i = self.house.spaces.iter().position(|one| one.span.start == line)?;
                self.corner_place(Some(i), after)
            }
            Point::Toward(north, east) => {
                let far = |at: &At| north.sign() * at.1 + east.sign() * at.0;
                self.corners(space).into_iter().max_by_key(far)
            }
        }
    }

    /// Where the walls on one side of a space end toward `way`.
    fn ends_of_walls(&self, space: usize, side: Direction, way: Direction) -> Vec<i64> {
        self.walls_on(space, side).into_iter().map(|wall| edge(wall.ends, way)).collect()
    }

    /// The straight walls on one side of a space.
    fn walls_on(&self, space: usize, side: Direction) -> Vec<WallOn> {
        let corners = self.corners(space);
        let turn = self.house.spaces[space].closed.outline.turn();
        let next = corners.iter().cycle().skip(1);
        let runs_along = match side.axis() {
            Axis::East => Axis::North,
            Axis::North => Axis::East,
        };
        let walls = corners.iter().zip(next).enumerate().filter_map(|(number, (one, two))| {
            let ends = (along(*one, runs_along), along(*two, runs_along));
            let out = along(*one, side.axis());
            let is_level = (out - along(*two, side.axis())).abs() <= NEAR;
            // With the inside on the left, a wall on the south side runs east.
            let runs = Direction::along(runs_along, ends.1 - ends.0);
            let outward = if turn > 0 { runs.right() } else { runs.left() };
            let ends = (ends.0.min(ends.1), ends.0.max(ends.1));
            (is_level && outward == side).then_some(WallOn { number, out, ends })
        });
        walls.collect()
    }

    /// Where the wall of a space lies that a box in it faces toward `way`; `None` if it faces none that is straight.
    fn faced(&self, space: usize, way: Direction, within: &Extent) -> Option<i64> {
        let (own, near) = match way.axis() {
            Axis::East => (within.north(), edge(within.east(), way)),
            Axis::North => (within.east(), edge(within.north(), way)),
        };
        let walls = self.walls_on(space, way).into_iter();
        let beyond = walls.filter(|wall| {
            let shared = own.1.min(wall.ends.1) - own.0.max(wall.ends.0);
            shared > NEAR && way.sign() * (wall.out - near) >= -NEAR
        });
        beyond.map(|wall| wall.out).min_by_key(|out| way.sign() * (out - near))
    }

    /// The places along an axis at which an end of a space is level with a corner of another.
    fn aligned(&self, space: usize, (main, named): (usize, &[usize]), axis: Axis) -> Vec<i64> {
        let (low, high) = stretch(&self.house.spaces[space].closed.outline.extent((0, 0)), axis);
        // What stands against a part of the house may be level with the house itself.
        let level = self.house.spaces[main].level;
        let first = self
            .house
            .spaces
            .iter()
            .take(space)
            .position(|one| one.level == level && one.kind == Kind::Living && !one.by_itself);
        let mut others: Vec<usize> =
            [main].into_iter().chain(named.iter().copied()).chain(first).collect();
        others.retain(|other| self.house.spaces[*other].level == level);
        others.sort_unstable();
        others.dedup();
        let corners = others.into_iter().flat_map(|one| self.corners(one));
        let corners = corners.map(|at| along(at, axis));
        let mut all: Vec<i64> = corners.flat_map(|at| [at - low, at - high]).collect();
        all.sort_unstable();
        all.dedup();
        all
    }

    /// The places at which a corner of the box around a space lies on one of these corners.
    fn corner_on_corner(&self, space: usize, corners: &[At]) -> Vec<At> {
        let own = self.house.spaces[space].closed.outline.extent((0, 0));
        let (east, north) = (own.east(), own.north());
        let own = [(east.0, north.0), (east.0, north.1), (east.1, north.0), (east.1, north.1)];
        let on = |at: &At| own.map(|own| (at.0 - own.0, at.1 - own.1));
        corners.iter().flat_map(on).collect()
    }

    /// Whether a space at `at` lies on the sides, and at the corners, that the words name.
    fn is_as_told(
        &mut self,
        wanted: &Wanted,
        at: At,
        told: &Whereabouts,
        counted: &[usize],
    ) -> bool {
        let space = wanted.space;
        told.parts.iter().zip(counted).all(|(part, of)| {
            let of = *of;
            match &part.sort {
                Sort::Side(side) => self.leans(space, at, of, wanted.is_in(of), *side) >= 1.0,
                Sort::At(point) => {
                    let extent = self.house.spaces[space].closed.outline.extent(at);
                    let within =
                        |(low, high): (i64, i64), at: i64| low - NEAR <= at && at <= high + NEAR;
                    self.point(of, point).is_some_and(|corner| {
                        within(extent.east(), corner.0) && within(extent.north(), corner.1)
                    })
                }
                Sort::Inset(way, by) if wanted.is_in(of) => {
                    let extent = self.house.spaces[space].closed.outline.extent(at);
                    let own = edge(stretch(&extent, way.axis()), *way);
                    let faced = self.faced(of, *way, &extent);
                    faced.is_none_or(|out| (out - way.sign() * by.nm() - own).abs() <= NEAR)
                }
                // As far from the corner as was said, and not around it.
                Sort::Near(point, by) if wanted.sized => {
                    let extent = self.house.spaces[space].closed.outline.extent(at);
                    self.point(of, point).is_some_and(|corner| {
                        Axis::BOTH.iter().any(|axis| {
                            let (low, high) = stretch(&extent, *axis);
                            let corner = along(corner, *axis);
                            (low - corner - by.nm()).abs() <= NEAR
                                || (corner - high - by.nm()).abs() <= NEAR
                        })
                    })
                }
                Sort::Against => self.flush(space, at, of, false) >= 1.0,
                Sort::Over => {
                    let here = &self.house.spaces[space].closed.outline;
                    let patch = Patch::new(here, at);
                    patch.beyond(&self.patch(of), self.sliver(space, of)) == 0.0
                }
                _ => true,
            }
        })
    }

    /// How much of the walls of a space lies on walls of `other` on one side of it, in feet: it is moved by an inch
    /// toward that wall, and what then lies across the wall is measured.
    fn leans(&mut self, space: usize, at: At, other: usize, inside: bool, side: Direction) -> f64 {
        let around = self.patch(other);
        let here = &self.house.spaces[space];
        self.tries += here.sides.len() + self.house.spaces[other].sides.len();
        let inch = Length::INCH.nm() * if inside { side.sign() } else { -side.sign() };
        let by = if side.axis() == Axis::East { (inch, 0) } else { (0, inch) };
        let patch = Patch::new(&here.closed.outline, (at.0 + by.0, at.1 + by.1));
        12.0 * if inside { patch.beyond(&around, Length::ZERO) } else { patch.common(&around) }
    }

    /// Where a space stands, in words: `on the south side of "House", 8' from its west end`.
    fn where_it_is(&mut self, wanted: &Wanted, at: At) -> Option<String> {
        let &Wanted { space, main, .. } = wanted;
        let inside = wanted.inside();
        let ways = [Direction::South, Direction::East, Direction::North, Direction::West];
        let extent = self.house.spaces[space].closed.outline.extent(at);
        let around = self.house.spaces[main].extent;
        let nearer = |own: (i64, i64), all: (i64, i64), axis: Axis| {
            let ends = [
                (own.0 - all.0, Direction::along(axis, -1)),
                (all.1 - own.1, Direction::along(axis, 1)),
            ];
            // Of two walls that it lies against, the one on the outside of the house.
            let whole = stretch(&around, axis);
            let within = |way: Direction| (edge(all, way) - edge(whole, way)).abs();
            ends.into_iter().min_by_key(|(far, way)| (far.abs(), within(*way)))
        };
        let faced = |way: Direction, end: i64| {
            inside.then(|| self.faced(main, way, &extent)).flatten().unwrap_or(end)
        };
        let ends = |axis: Axis| {
            let (low, high) = stretch(&around, axis);
            let [down, up] = [-1, 1].map(|sign| Direction::along(axis, sign));
            (faced(down, low), faced(up, high))
        };
        let [east, north] = [Axis::East, Axis::North].map(ends);
        let from_end = |axis: Axis| {
            let all = if axis == Axis::East { east } else { north };
            nearer(stretch(&extent, axis), all, axis)
        };
        let name = quoted(&self.house.spaces[main].name);
        let level = self.house.levels.get(self.house.spaces[space].level);
        let is_below = level.is_some_and(|level| level.below_grade);
        let is_covered = || {
            Axis::BOTH.iter().all(|axis| {
                let (own, all) = (stretch(&extent, *axis), stretch(&around, *axis));
                (own.0 - all.0).abs() <= NEAR && (own.1 - all.1).abs() <= NEAR
            })
        };
        if main == space || wanted.over == Some(main) && is_covered() {
            return Some(if is_below { "right below" } else { "right above" }.to_owned());
        }
        let form = self.form();
        let said = |(gap, way): (i64, Direction), end: &str| from_its_end(form, gap, way, end);
        if inside {
            let (east, north) = (from_end(Axis::East)?, from_end(Axis::North)?);
            let lies = match wanted.over == Some(main) {
                true if is_below => "under",
                true => "over",
                false => "inside",
            };
            return Some(format!(
                "{lies} {name}, {} and {}",
                said(east, "side"),
                said(north, "side")
            ));
        }
        let leaning = ways.map(|way| (self.leans(space, at, main, false, way), way));
        let (most, side) = leaning.into_iter().max_by(|a, b| a.0.total_cmp(&b.0))?;
        if most < 1.0 {
            let (east, north) = (from_end(Axis::East)?, from_end(Axis::North)?);
            return Some(format!(
                "beside {name}, {} and {}",
                said(east, "side"),
                said(north, "side")
            ));
        }
        let across = if side.axis() == Axis::East { Axis::North } else { Axis::East };
        // The ends are those of the wall that it stands against, which need not be those of the whole side.
        let own = stretch(&extent, across);
        let at_wall = edge(stretch(&extent, side.axis()), side.opposite());
        let walls = self.walls_on(main, side);
        let against = || {
            walls.iter().filter(|wall| {
                (wall.out - at_wall).abs() <= NEAR && own.0 < wall.ends.1 && wall.ends.0 < own.1
            })
        };
        let wall = against().map(|wall| wall.ends);
        let wall = wall.reduce(|one, two| (one.0.min(two.0), one.1.max(two.1)));
        // Of several walls on that side, which one.
        let there = &self.house.spaces[main];
        let is_numbered = self.corners(main).len() == there.sides.len();
        let which = against().next().filter(|_| is_numbered && walls.len() > 1);
        let which = which.and_then(|wall| there.sides.get(wall.number));
        let which = which.map_or(String::new(), |side| format!("against {}, ", side.quoted()));
        let end = nearer(own, wall.unwrap_or(stretch(&around, across)), across)?;
        Some(format!("on the {} side of {name}, {which}{}", side.word(), said(end, "end")))
    }
}

/// Words that put a space against a side of another one that they name and say more of its place, with `sort` for that
/// side.
fn in_line(told: &Whereabouts, sort: fn(Direction) -> Sort) -> Option<Whereabouts> {
    let axis = |part: &Part| match part.sort {
        Sort::Side(side) | Sort::Inset(side, _) => Some(side.axis()),
        _ => None,
    };
    let mut lined = told.clone();
    let (part, side) = lined.parts.iter_mut().rev().find_map(|part| match part.sort {
        Sort::Side(side) if part.of.is_some() => Some((part, side)),
        _ => None,
    })?;
    part.sort = sort(side);
    told.parts
        .iter()
        .any(|other| axis(other).is_some_and(|other| other != side.axis()))
        .then_some(lined)
}

/// Words that put a space against another one and on a side, with that side for one of the house.
fn at_the_wall(told: &Whereabouts) -> Option<Whereabouts> {
    let against = told.parts.iter().find(|part| part.sort == Sort::Against)?.of.clone()?;
    let mut at_wall = told.clone();
    let part = at_wall
        .parts
        .iter_mut()
        .find(|part| matches!(part.sort, Sort::Side(_)) && part.of.as_ref() == Some(&against))?;
    let Sort::Side(side) = part.sort else { return None };
    *part = Part { sort: Sort::Inset(side, Length::ZERO), of: None };
    Some(at_wall)
}

/// A straight wall on one side of a space.
struct WallOn {
    /// Which of its corners it begins at.
    number: usize,
    /// Where it lies on the axis of the side.
    out: i64,
    /// From where to where it runs.
    ends: (i64, i64),
}

fn moved(at: At, way: Direction, by: Length) -> At {
    match way.axis() {
        Axis::East => (at.0 + way.sign() * by.nm(), at.1),
        Axis::North => (at.0, at.1 + way.sign() * by.nm()),
    }
}

/// The part of an axis that a box covers.
fn stretch(extent: &Extent, axis: Axis) -> (i64, i64) {
    match axis {
        Axis::East => extent.east(),
        Axis::North => extent.north(),
    }
}
