//! From the sketch to the house: closing, crossing, placing, what lies in what.

use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::house::misclosure::{does_not_close, tick};
use crate::house::outline::{Crossing, Vector};
use crate::house::plane::Patch;
use crate::house::walk::{Closed, Leg, NotClosed, Shape, Walk, WalkSide};
use crate::house::{DrawnOutline, House, Level, Lot, Outline, Side, Space};
use crate::length::{Length, Step, Ties, Written};
use crate::sketch::statement::{CornerRef, Place, Run};
use crate::sketch::{Axis, Direction, Face, Kind, LevelSketch, Sketch, SpaceSketch, WalkSketch};
use crate::words;

/// An estimated side is within plus or minus this, unless it says otherwise.
const ESTIMATED: Length = Length::FOOT;

/// Checks the whole sketch; what is found wrong, or worth knowing, is added to `found`.
///
/// None where an error keeps the house from being whole.
pub(crate) fn check(sketch: &Sketch, found: &mut Vec<Diagnostic>) -> Option<House> {
    let errors_before = found.iter().filter(|diagnostic| diagnostic.is_error()).count();
    let mut checker = Checker {
        sketch,
        found,
        house: empty(sketch),
        whole: errors_before == 0,
        astray: Vec::new(),
    };
    for (i, level) in sketch.levels.iter().enumerate() {
        checker.level(i, level);
    }
    for lot in &sketch.lots {
        checker.lot(lot);
    }
    if checker.whole {
        checker.overhangs();
    }
    checker.drawn_outlines();
    checker.counting_names();
    let whole = checker.whole;
    let house = checker.house;
    let errors = found.iter().filter(|diagnostic| diagnostic.is_error()).count();
    (whole && errors == errors_before).then_some(house)
}

fn empty(sketch: &Sketch) -> House {
    let heads = &sketch.heads;
    House {
        levels: Vec::new(),
        spaces: Vec::new(),
        lots: Vec::new(),
        drawn: Vec::new(),
        tolerance: heads.tolerance(),
        veneer: heads.veneer,
        wall: heads.wall.map(Written::length),
    }
}

struct Checker<'a> {
    sketch: &'a Sketch,
    found: &'a mut Vec<Diagnostic>,
    house: House,
    whole: bool,
    /// Spaces told to lie outside the one they should lie in; nothing more is told of where they lie.
    astray: Vec<usize>,
}

/// A space of the level at hand: where it stands in the sketch, and in the house once it is closed and placed.
type OnLevel = Vec<Option<usize>>;

impl Checker<'_> {
    fn tell(&mut self, diagnostic: Diagnostic) {
        self.whole &= !diagnostic.is_error();
        self.found.push(diagnostic);
    }

    fn level(&mut self, number: usize, level: &LevelSketch) {
        self.house.levels.push(Level {
            name: level.level.name.text.clone(),
            below_grade: level.level.below_grade,
            beside: level.level.beside,
        });
        let mut on_level: OnLevel = Vec::new();
        for (i, space) in level.spaces.iter().enumerate() {
            self.tell_name_twice(level, i);
            let placed = self.space(number, level, space, &on_level);
            on_level.push(placed);
        }
        let all = on_level.iter().all(Option::is_some) && !level.doubtful;
        let placed: Vec<usize> = on_level.iter().flatten().copied().collect();
        self.find_parents(level, &on_level, all);
        self.overlaps(&placed);
    }

    /// Names on a level that something refers to belong to one space only.
    fn tell_name_twice(&mut self, level: &LevelSketch, i: usize) {
        let name = &level.spaces[i].space.name;
        let first = level.spaces[..i].iter().find(|other| other.space.name == *name);
        let refers = |space: &SpaceSketch| {
            space.space.within.as_ref() == Some(name)
                || matches!(&space.space.place, Place::CornerOf(of, ..) if of == name)
        };
        let referred = level.spaces.iter().any(refers)
            || self.sketch.figures.iter().any(|figure| figure.figure.basis.counting.contains(name))
            || self.sketch.outlines.iter().any(|outline| outline.of.as_ref() == Some(name));
        if let Some(first) = first.filter(|_| referred) {
            let shown = quoted(&name.text);
            self.tell(
                Diagnostic::new(
                    Word::NameTwice,
                    name.span,
                    format!("two spaces of this level are called {shown}"),
                )
                .also(first.space.name.span, "the other one")
                .help("give each a name of its own, since another line refers to it"),
            );
        }
    }

    fn space(
        &mut self,
        level: usize,
        on: &LevelSketch,
        sketch: &SpaceSketch,
        on_level: &OnLevel,
    ) -> Option<usize> {
        let statement = &sketch.space;
        let walked =
            self.walk(&statement.name.text, Some(&on.level.name.text), sketch.span, &sketch.walk);
        let at = self.place(on, sketch, on_level);
        let (sides, closed) = walked?;
        let rule = statement.kind == Kind::Living;
        let counted = statement.counted.unwrap_or(rule);
        self.tell_open_named_stair(sketch);
        self.house.spaces.push(Space {
            name: statement.name.text.clone(),
            kind: statement.kind,
            level,
            face: statement.face.or(self.sketch.heads.faces).unwrap_or_default(),
            veneer: statement.veneer,
            parent: None,
            counted: counted && !statement.kind.lies_in_another(),
            claimed: statement.counted.is_some_and(|counted| counted != rule),
            recorded: statement.recorded.map(|area| area.area()),
            sides,
            closed,
            at: at?,
            span: sketch.span,
        });
        Some(self.house.spaces.len() - 1)
    }

    fn tell_open_named_stair(&mut self, sketch: &SpaceSketch) {
        let name = sketch.space.name.text.to_lowercase();
        if sketch.space.kind == Kind::Open && name.contains("stair") {
            let shown = quoted(&sketch.space.name.text);
            self.tell(
                Diagnostic::new(Word::OpenNamedStair, sketch.span, format!("the opening {shown} is named as a stair"))
                    .note("treads and landings count on the level they go down from; only what the opening has beyond its stair is open")
                    .help("type the stair itself as `stair`, and as `open` only the rest of the opening"),
            );
        }
    }

    fn lot(&mut self, sketch: &SpaceSketch) {
        let name = &sketch.space.name.text;
        if let Some((sides, closed)) = self.walk(name, None, sketch.span, &sketch.walk) {
            let recorded = sketch.space.recorded.map(|area| area.area());
            self.house.lots.push(Lot { name: name.clone(), recorded, sides, closed });
        }
    }

    /// Closes a walk as measured and checks the outline.
    fn walk(
        &mut self,
        name: &str,
        level: Option<&str>,
        span: Span,
        sketch: &WalkSketch,
    ) -> Option<(Vec<Side>, Closed)> {
        if sketch.doubtful || sketch.sides.len() < 2 {
            self.whole = false;
            return None;
        }
        let (walk, sides) = self.build(name, span, sketch)?;
        let closed = match walk.clone().close_as_measured() {
            Ok(closed) => closed,
            Err(NotClosed::Misses(misses)) => {
                self.tell(does_not_close(name, level, span, &walk, &sides, misses));
                return None;
            }
            Err(NotClosed::Backwards { side, by }) => {
                self.tell_backwards(name, &sides[side], by);
                return None;
            }
        };
        if let Some(crossing) = closed.outline.crossing() {
            self.tell_crossing(name, span, &sides, crossing);
            return None;
        }
        self.tell_of_closing(name, span, &sides, &closed);
        self.tell_short_jogs(name, &sides, &closed);
        self.overalls(name, sketch, &sides, &closed);
        self.ties(name, sketch, &closed);
        Some((sides, closed))
    }

    /// The walk of a sketch, `close` written out as the sides it stands for.
    fn build(&mut self, name: &str, span: Span, sketch: &WalkSketch) -> Option<(Walk, Vec<Side>)> {
        let mut walk = Walk::default();
        let mut sides: Vec<Side> = Vec::new();
        let mut following: [Option<Span>; 2] = [None, None];
        for side in sketch.sides.iter().filter(|side| side.run != Run::Close) {
            if let Run::ByClosing(direction) = side.run {
                let slot = &mut following[usize::from(direction.axis() == Axis::East)];
                if let Some(before) = slot.replace(side.span) {
                    self.tell(closing_twice(name, side.span, before));
                    return None;
                }
            }
            let tolerance = side.words.tolerance.map_or(
                if side.words.estimated { ESTIMATED } else { self.sketch.heads.tolerance() },
                Written::length,
            );
            let number = sides.len();
            walk.sides.push(WalkSide {
                shape: shape(&side.run),
                tolerance: tolerance.nm(),
                follows: matches!(side.run, Run::ByClosing(_)),
                source: Some(number),
            });
            sides.push(house_side(side, number + 1));
        }
        if let Some(close) = sketch.sides.last().filter(|side| side.run == Run::Close) {
            let added = closing_sides(&walk, &following);
            if added.is_empty() {
                self.tell(
                    Diagnostic::new(
                        Word::NothingToClose,
                        close.span,
                        format!("{} is back at its start before `close`", quoted(name)),
                    )
                    .help("take the `close` line out"),
                );
                return None;
            }
            for direction in added {
                let mut side = house_side(close, sides.len() + 1);
                side.direction = Some(direction);
                side.follows = true;
                walk.sides.push(WalkSide {
                    shape: Shape::Straight { direction, length: 0 },
                    tolerance: 0,
                    follows: true,
                    source: Some(sides.len()),
                });
                sides.push(side);
            }
        }
        if sides.len() < 3 && !sides.iter().any(|side| matches!(side.run, Run::Arc(..))) {
            self.tell(
                Diagnostic::new(
                    Word::TooFewSides,
                    span,
                    format!("{} has {} only", quoted(name), words::count(sides.len(), "side")),
                )
                .help("walk round until the start is reached again"),
            );
            return None;
        }
        Some((walk, sides))
    }

    fn tell_backwards(&mut self, name: &str, side: &Side, by: i64) {
        let other = side
            .direction
            .map_or("the other way", |d| Direction::along(d.axis(), -d.sign()).word());
        let message = if by == 0 {
            format!("{}: nothing is left for the side by closing", quoted(name))
        } else {
            format!(
                "{}: the side by closing would have to run {} {other}",
                quoted(name),
                Length::from_nm(by).spoken()
            )
        };
        self.tell(
            Diagnostic::new(Word::ClosingBackwards, side.span, message)
                .label("follows from the other sides")
                .help("is its direction right? measure the other sides of this direction again"),
        );
    }

    fn tell_crossing(&mut self, name: &str, span: Span, sides: &[Side], crossing: Crossing) {
        let (first, second) = (&sides[crossing.first], &sides[crossing.second]);
        let place = spoken_place(crossing.at);
        self.tell(
            Diagnostic::new(
                Word::SidesCross,
                first.span,
                format!(
                    "{}: {} and {} cross or touch {place}",
                    quoted(name),
                    tick(first),
                    tick(second)
                ),
            )
            .label("this side")
            .also(second.span, "and this one")
            .also(span, "of this outline")
            .help(
                "look at the turns between the two: is one typed the wrong way round, or left out?",
            ),
        );
    }

    fn tell_of_closing(&mut self, name: &str, span: Span, sides: &[Side], closed: &Closed) {
        let spread = closed.misclosure;
        let ways: Vec<String> = Axis::BOTH
            .into_iter()
            .filter(|&axis| spread.on(axis) != 0)
            .map(|axis| {
                let miss = spread.on(axis);
                format!(
                    "{} {}",
                    Length::from_nm(miss).spoken(),
                    Direction::along(axis, miss).word()
                )
            })
            .collect();
        if !ways.is_empty() {
            let how = if closed.walk.has_bearings() {
                "in proportion to length"
            } else {
                "over the sides"
            };
            self.tell(
                Diagnostic::new(
                    Word::MisclosureSpread,
                    span,
                    format!(
                        "{}: the walk round ends {} of where it began",
                        quoted(name),
                        words::all_of(&ways)
                    ),
                )
                .note(format!("that is within the tolerances, and was spread {how}")),
            );
        }
        for side in sides.iter().filter(|side| side.follows) {
            let length = closed.walk.sides[side.number - 1].shape.vector().length();
            self.tell(
                Diagnostic::new(
                    Word::NoClosureCheck,
                    side.span,
                    format!(
                        "{}: {} is not measured; it follows from the other walls, {}",
                        quoted(name),
                        tick(side),
                        length.spoken()
                    ),
                )
                .note(
                    "this direction has no closure check: an error in one of its walls goes unseen",
                ),
            );
        }
    }

    fn tell_short_jogs(&mut self, name: &str, sides: &[Side], closed: &Closed) {
        for axis in Axis::BOTH {
            let short = |leg: &&Leg| {
                Length::from_nm(leg.length).rounded(Step::WholeFoot, Ties::Up) == Length::ZERO
            };
            for leg in closed.walk.legs(axis).iter().filter(short) {
                let side = &sides[leg.side];
                self.tell(
                    Diagnostic::new(
                        Word::ShortJog,
                        side.span,
                        format!("{}: {} is under half a foot", quoted(name), tick(side)),
                    )
                    .note("rounding to the whole foot drops it"),
                );
            }
        }
    }

    /// Lengths taped past the jogs, against the sides between.
    fn overalls(&mut self, name: &str, sketch: &WalkSketch, sides: &[Side], closed: &Closed) {
        let points = closed.outline.points();
        for &(direction, written, span) in &sketch.overalls {
            let along = |point: &(i64, i64)| {
                if direction.axis() == Axis::North { point.1 } else { point.0 }
            };
            let extent = points.iter().map(along).max().unwrap_or(0)
                - points.iter().map(along).min().unwrap_or(0);
            let legs = closed.walk.legs(direction.axis());
            let between: Vec<&Leg> =
                legs.iter().filter(|leg| leg.sign == direction.sign()).collect();
            let allowed = self.sketch.heads.tolerance().nm()
                + between.iter().map(|leg| leg.tolerance).sum::<i64>();
            let off = written.length() - Length::from_nm(extent);
            if off.abs().nm() > allowed {
                let names: Vec<String> = between.iter().map(|leg| tick(&sides[leg.side])).collect();
                self.tell(
                    Diagnostic::new(
                        Word::OverallDiffers,
                        span,
                        format!(
                            "{}: the overall length differs by {} from the sides",
                            quoted(name),
                            off.spoken()
                        ),
                    )
                    .note(format!(
                        "between its ends lie {}: together {}",
                        words::all_of(&names),
                        Length::from_nm(extent).spoken()
                    ))
                    .help("measure these sides and the overall length again"),
                );
            }
        }
    }

    /// Distances taped across, against the outline.
    fn ties(&mut self, name: &str, sketch: &WalkSketch, closed: &Closed) {
        let points = closed.outline.points();
        let n = points.len();
        for (from, to, written, span) in &sketch.ties {
            let ends =
                (self.corner_of(sketch, from, n, *span), self.corner_of(sketch, to, n, *span));
            let (Some(from), Some(to)) = ends else {
                continue;
            };
            let (a, b) = (points[from], points[to]);
            let across = Vector { east: b.0 - a.0, north: b.1 - a.1, rise: 0 }.length();
            let apart = from.abs_diff(to).min(n - from.abs_diff(to));
            let sides_between = i64::try_from(apart).unwrap_or(0);
            let allowed = self.sketch.heads.tolerance().nm() * (1 + sides_between);
            let off = written.length() - across;
            if off.abs().nm() > allowed {
                self.tell(
                    Diagnostic::new(
                        Word::TieDiffers,
                        *span,
                        format!("{}: the distance across differs by {} from the outline", quoted(name), off.spoken()),
                    )
                    .note(format!("in the outline the two corners are {} apart; a difference means that a corner is not square, or a side between them is off", across.spoken()))
                    .help(format!("measure the sides between corner {} and corner {} again, and this distance", from + 1, to + 1)),
                );
            }
        }
    }

    /// A corner by number or name, counted from 0.
    fn corner_of(
        &mut self,
        sketch: &WalkSketch,
        corner: &CornerRef,
        n: usize,
        span: Span,
    ) -> Option<usize> {
        let found = match corner {
            CornerRef::Number(number) => (1..=n).contains(number).then(|| number - 1),
            CornerRef::Name(name) => {
                let named = sketch.corners.iter().find(|corner| corner.name.text == *name);
                named.map(|corner| if corner.after < n { corner.after } else { 0 })
            }
        };
        if found.is_none() {
            let shown = match corner {
                CornerRef::Number(number) => format!("corner {number}"),
                CornerRef::Name(name) => format!("corner {}", quoted(name)),
            };
            self.tell(no_such_corner(
                span,
                &shown,
                &format!("this outline has corners 1 to {n}"),
                &names_of(sketch),
            ));
        }
        found
    }

    /// Where the first corner of a space stands.
    fn place(
        &mut self,
        on: &LevelSketch,
        sketch: &SpaceSketch,
        on_level: &OnLevel,
    ) -> Option<(i64, i64)> {
        match &sketch.space.place {
            Place::Origin => Some((0, 0)),
            Place::Start(offsets) => {
                let along = |axis: Axis| -> i64 {
                    let parts = offsets.iter().filter(|(direction, _)| direction.axis() == axis);
                    parts.map(|(direction, length)| direction.sign() * length.length().nm()).sum()
                };
                Some((along(Axis::East), along(Axis::North)))
            }
            Place::Corner(name) => {
                let mut found = Vec::new();
                for (i, space) in on.spaces.iter().enumerate().take(on_level.len()) {
                    found.extend(
                        space
                            .walk
                            .corners
                            .iter()
                            .filter(|corner| corner.name == *name)
                            .map(|corner| (i, corner)),
                    );
                }
                match found[..] {
                    [(i, corner)] => self.corner_place(on_level[i], corner.after),
                    [] => {
                        if !on.doubtful {
                            let known: Vec<String> = on
                                .spaces
                                .iter()
                                .take(on_level.len())
                                .flat_map(|space| names_of(&space.walk))
                                .collect();
                            let shown = format!("corner {}", quoted(&name.text));
                            self.tell(no_such_corner(name.span, &shown, "a corner is named on the walk of a space given earlier on this level", &known));
                        }
                        self.whole = false;
                        None
                    }
                    [(_, first), (_, second), ..] => {
                        let shown = quoted(&name.text);
                        self.tell(
                            Diagnostic::new(
                                Word::NameTwice,
                                second.name.span,
                                format!("two corners of this level are called {shown}"),
                            )
                            .also(first.name.span, "the other one")
                            .help("give each a name of its own, since another line refers to it"),
                        );
                        None
                    }
                }
            }
            Place::CornerOf(name, number, span) => {
                let earlier = on
                    .spaces
                    .iter()
                    .take(on_level.len())
                    .position(|space| space.space.name == *name);
                let Some(i) = earlier else {
                    if !on.doubtful {
                        self.tell(no_such_space(name, on, on_level.len()));
                    }
                    self.whole = false;
                    return None;
                };
                let sides = on_level[i].map(|space| self.house.spaces[space].sides.len());
                if sides.is_some_and(|sides| !(1..=sides).contains(number)) {
                    let has =
                        format!("{} has corners 1 to {}", quoted(&name.text), sides.unwrap_or(0));
                    self.tell(no_such_corner(*span, &format!("corner {number}"), &has, &[]));
                    return None;
                }
                self.corner_place(on_level[i], number - 1)
            }
        }
    }

    fn corner_place(&self, space: Option<usize>, after: usize) -> Option<(i64, i64)> {
        let space = &self.house.spaces[space?];
        let points = space.closed.outline.points();
        let corner = points.get(after).or(points.first())?;
        Some((space.at.0 + corner.0, space.at.1 + corner.1))
    }

    /// What each space of a level lies in, said or seen.
    fn find_parents(&mut self, level: &LevelSketch, on_level: &OnLevel, all: bool) {
        for (i, sketch) in level.spaces.iter().enumerate() {
            let said = match &sketch.space.within {
                Some(name) => {
                    let earlier =
                        level.spaces.iter().take(i).position(|other| other.space.name == *name);
                    if earlier.is_none() && !level.doubtful {
                        self.tell(no_such_space(name, level, i));
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
                None if sketch.space.within.is_some() => continue,
                None => on_level
                    .iter()
                    .flatten()
                    .copied()
                    .filter(|&other| !self.house.spaces[other].kind.lies_in_another())
                    .collect(),
            };
            let parent = self.smallest_around(space, &candidates);
            if parent.is_none() && (said.is_some() || all) {
                self.tell_not_inside(sketch, said);
                self.astray.push(space);
            }
            self.house.spaces[space].parent = parent;
        }
    }

    fn smallest_around(&self, space: usize, candidates: &[usize]) -> Option<usize> {
        let patch = self.patch(space);
        let holds = |&&other: &&usize| {
            other != space && patch.beyond(&self.patch(other), self.sliver(space, other)) == 0.0
        };
        candidates
            .iter()
            .filter(holds)
            .copied()
            .min_by_key(|&other| self.house.spaces[other].closed.outline.area())
    }

    fn tell_not_inside(&mut self, sketch: &SpaceSketch, said: Option<usize>) {
        let name = quoted(&sketch.space.name.text);
        let of = said.map_or("a space of this level".to_owned(), |parent| {
            quoted(&self.house.spaces[parent].name)
        });
        self.tell(
            Diagnostic::new(Word::NotInside, sketch.span, format!("{name} does not lie inside {of}"))
                .help("say where it starts, seen from the level's origin: `start east 10' north 4'`, or `from corner \"porch\"`")
                .help("the origin is where the walk of the first space starts"),
        );
    }

    fn patch(&self, space: usize) -> Patch {
        let space = &self.house.spaces[space];
        Patch::new(&space.closed.outline, space.at)
    }

    /// How wide an overlap of two spaces may be and still be a matter of tape.
    fn sliver(&self, a: usize, b: usize) -> Length {
        let (a, b) = (&self.house.spaces[a], &self.house.spaces[b]);
        let faces = if a.face == b.face { 0 } else { 10 };
        let most =
            a.closed.walk.sides.iter().chain(&b.closed.walk.sides).map(|side| side.tolerance).max();
        let most = most.unwrap_or(0).max(self.house.tolerance.nm());
        Length::from_nm(4 * most + faces * Length::INCH.nm())
    }

    /// Spaces side by side may not cover the same ground.
    fn overlaps(&mut self, placed: &[usize]) {
        for (i, &b) in placed.iter().enumerate() {
            for &a in &placed[..i] {
                let (one, other) = (&self.house.spaces[a], &self.house.spaces[b]);
                let inner = one.kind.lies_in_another() != other.kind.lies_in_another();
                let astray = self.astray.contains(&a) || self.astray.contains(&b);
                if astray || one.parent != other.parent || inner && one.parent.is_none() {
                    continue;
                }
                let overlap = self.patch(a).overlap(&self.patch(b), self.sliver(a, b));
                if overlap > 0.0 {
                    self.tell_overlap(a, b, overlap);
                }
            }
        }
    }

    fn tell_overlap(&mut self, a: usize, b: usize, overlap: f64) {
        let (one, other) = (&self.house.spaces[a], &self.house.spaces[b]);
        let message = format!(
            "{} and {} cover the same ground: about {:.0} sq ft",
            quoted(&one.name),
            quoted(&other.name),
            overlap.max(1.0)
        );
        let fault = Diagnostic::new(Word::SpacesOverlap, other.span, message)
            .also(one.span, "the other one")
            .help("say where it starts: `from corner \"porch\"` at a corner named on an earlier walk, or `start east 10' north 4'` from the level's origin")
            .help(format!("a space under the same roof that is part of the other outline is `within \"{}\"`", one.name));
        self.tell(fault);
    }

    /// Upper levels that reach beyond what is under them.
    fn overhangs(&mut self) {
        for upper in 1..self.house.levels.len() {
            let level = &self.house.levels[upper];
            let mut lower = upper - 1;
            if level.beside || level.below_grade || self.house.levels[lower].below_grade {
                continue;
            }
            let mut under = self.level_patch(lower);
            while self.house.levels[lower].beside && lower > 0 {
                lower -= 1;
                under = under.with(&self.level_patch(lower));
            }
            let beyond =
                self.level_patch(upper).beyond(&under, Length::from_nm(6 * Length::INCH.nm()));
            let span =
                self.house.spaces.iter().find(|space| space.level == upper).map(|space| space.span);
            if let Some(span) = span.filter(|_| beyond > 0.0) {
                let (above, below) = (
                    quoted(&self.house.levels[upper].name),
                    quoted(&self.house.levels[lower].name),
                );
                self.tell(
                    Diagnostic::new(
                        Word::UpperOverhangs,
                        span,
                        format!("{above} reaches beyond {below} by about {:.0} sq ft", beyond.max(1.0)),
                    )
                    .help("if it does not overhang there, say where it starts: `start east 12' north 4'` from the same point as below"),
                );
            }
        }
    }

    /// All the ground a level covers, at the frame where its faces differ from the others'.
    fn level_patch(&self, level: usize) -> Patch {
        let mixed = self.house.spaces.iter().any(|space| space.face != Face::Outside);
        let on_level = (0..self.house.spaces.len()).filter(|&i| {
            let space = &self.house.spaces[i];
            space.level == level && space.parent.is_none()
        });
        on_level.fold(Patch::empty(), |ground, i| {
            let at = self.house.spaces[i].at;
            let patch = match self.house.at_face(i, Face::Frame) {
                Ok(frame) if mixed => Patch::new(&frame.outline, at),
                _ => self.patch(i),
            };
            ground.with(&patch)
        })
    }

    /// Somebody else's outlines: which spaces they are of, whether they close.
    fn drawn_outlines(&mut self) {
        for outline in &self.sketch.outlines {
            if outline.walk.doubtful || outline.walk.sides.len() < 2 {
                self.whole = false;
                continue;
            }
            let Some((mut walk, sides)) =
                self.build(&outline.name.text, outline.span, &outline.walk)
            else {
                continue;
            };
            for side in &mut walk.sides {
                side.tolerance = 0;
            }
            let misses = walk.misclosure();
            let closed = walk.clone().close_as_measured();
            let shown = quoted(&outline.name.text);
            let outline_closed = closed.as_ref().ok().map(|closed| closed.outline.clone());
            if let Some(crossing) = outline_closed.as_ref().and_then(Outline::crossing) {
                self.tell_crossing(&outline.name.text, outline.span, &sides, crossing);
                continue;
            }
            if let Err(NotClosed::Backwards { side, by }) = closed {
                self.tell_backwards(&outline.name.text, &sides[side], by);
                continue;
            }
            if outline_closed.is_none() {
                let ways: Vec<String> = Axis::BOTH
                    .into_iter()
                    .filter(|&axis| misses.on(axis) != 0)
                    .map(|axis| {
                        format!(
                            "{} {}",
                            Length::from_nm(misses.on(axis)).spoken(),
                            Direction::along(axis, misses.on(axis)).word()
                        )
                    })
                    .collect();
                let whose = outline.drawn.word();
                self.tell(
                    Diagnostic::new(
                        Word::OutlineDoesNotClose,
                        outline.span,
                        format!(
                            "the {whose}'s outline {shown} ends {} of where it began",
                            words::all_of(&ways)
                        ),
                    )
                    .note(
                        "an outline that does not close has no area; it is shown as it is printed",
                    ),
                );
            }
            let walk = closed.map_or(walk, |closed| closed.walk);
            let of = self.spaces_of(outline);
            self.house.drawn.push(DrawnOutline {
                drawn: outline.drawn,
                name: outline.name.text.clone(),
                of,
                sides,
                walk,
                outline: outline_closed,
            });
        }
    }

    /// The spaces a name of an outline means: a space, or those counted on a level.
    fn spaces_of(&mut self, outline: &crate::sketch::OutlineSketch) -> Vec<usize> {
        let name = outline.of.as_ref().unwrap_or(&outline.name);
        let spaces = &self.house.spaces;
        let named: Vec<usize> =
            (0..spaces.len()).filter(|&i| spaces[i].name == name.text).collect();
        if !named.is_empty() {
            return named;
        }
        let level = self.house.levels.iter().position(|level| level.name == name.text);
        let on_level: Vec<usize> = (0..spaces.len())
            .filter(|&i| Some(spaces[i].level) == level && spaces[i].counted)
            .collect();
        let known = level.is_some()
            || self
                .sketch
                .levels
                .iter()
                .flat_map(|level| &level.spaces)
                .any(|space| space.space.name == *name);
        if outline.of.is_some() && !known {
            let shown = quoted(&name.text);
            self.tell(
                Diagnostic::new(
                    Word::NoSuchSpace,
                    name.span,
                    format!("no space or level is called {shown}"),
                )
                .help("after `of` comes the name of a space or a level of this file"),
            );
        }
        on_level
    }

    /// Names after `counting` are spaces of the house, or things the record lists.
    fn counting_names(&mut self) {
        let spaces = self.sketch.levels.iter().flat_map(|level| &level.spaces);
        let mut known: Vec<&str> = spaces.map(|space| space.space.name.text.as_str()).collect();
        known.extend(self.sketch.missing.iter().map(|missing| missing.name.as_str()));
        for figure in &self.sketch.figures {
            for name in figure
                .figure
                .basis
                .counting
                .iter()
                .filter(|name| !known.contains(&name.text.as_str()))
            {
                let shown = quoted(&name.text);
                let mut fault = Diagnostic::new(
                    Word::NoSuchSpace,
                    name.span,
                    format!("no space is called {shown}"),
                );
                if let Some(near) = words::nearest(&name.text, &known) {
                    fault = fault.help(format!("did you mean `\"{near}\"`?"));
                }
                let fault = fault.help(
                    "after `counting` come names of spaces of this file, or of what is `missing`",
                );
                self.whole = false;
                self.found.push(fault);
            }
        }
    }
}

fn closing_twice(name: &str, span: Span, before: Span) -> Diagnostic {
    let message = format!("{}: two sides of one direction are given by closing", quoted(name));
    Diagnostic::new(Word::ClosingTwice, span, message)
        .also(before, "the first one")
        .help("measure one of the two; north and south share one, east and west share one")
}

fn no_such_corner(span: Span, shown: &str, has: &str, known: &[String]) -> Diagnostic {
    let fault =
        Diagnostic::new(Word::NoSuchCorner, span, format!("there is no {shown} here")).note(has);
    if known.is_empty() {
        return fault.help("name a corner on the walk where it is reached: `corner \"porch\"`");
    }
    let known: Vec<String> = known.iter().map(|name| format!("`\"{name}\"`")).collect();
    fault.help(format!("named so far: {}", words::all_of(&known)))
}

fn no_such_space(
    name: &crate::sketch::statement::Named,
    level: &LevelSketch,
    before: usize,
) -> Diagnostic {
    let earlier: Vec<&str> =
        level.spaces.iter().take(before).map(|space| space.space.name.text.as_str()).collect();
    let shown = quoted(&name.text);
    let fault = Diagnostic::new(
        Word::NoSuchSpace,
        name.span,
        format!("no space given earlier on this level is called {shown}"),
    );
    match words::nearest(&name.text, &earlier) {
        Some(near) => fault.help(format!("did you mean `\"{near}\"`?")),
        None => {
            fault.help("put the space it refers to on a line before this one, on the same level")
        }
    }
}

fn names_of(walk: &WalkSketch) -> Vec<String> {
    walk.corners.iter().map(|corner| corner.name.text.clone()).collect()
}

/// The sides that `close` stands for: of the axes that miss by more than their tolerances, the one across the last side first.
fn closing_sides(walk: &Walk, following: &[Option<Span>; 2]) -> Vec<Direction> {
    let misses = walk.misclosure();
    let mut axes = [Axis::North, Axis::East];
    let last = walk.sides.last().map(|side| side.shape.vector());
    if last.is_some_and(|last| last.north != 0 && last.east == 0) {
        axes.reverse();
    }
    let open = |axis: &Axis| {
        following[usize::from(*axis == Axis::East)].is_none()
            && misses.on(*axis).abs() > walk.allowance(*axis)
    };
    axes.into_iter().filter(open).map(|axis| Direction::along(axis, -misses.on(axis))).collect()
}

/// How a side runs, as far as it says; a side by closing has no length yet.
fn shape(run: &Run) -> Shape {
    match run {
        Run::Straight(direction, length) => {
            Shape::Straight { direction: *direction, length: length.length().nm() }
        }
        Run::ByClosing(direction) => Shape::Straight { direction: *direction, length: 0 },
        Run::Diagonal(first, second) => {
            let signed = |leg: &(Direction, Written)| leg.0.sign() * leg.1.length().nm();
            let (north, east) =
                if first.0.axis() == Axis::North { (first, second) } else { (second, first) };
            Shape::Diagonal { north: signed(north), east: signed(east), bulge: 0 }
        }
        Run::Bearing(bearing, length) => {
            Shape::Bearing { unit: bearing.unit_vector(), length: length.length().nm() }
        }
        Run::Arc(direction, chord, rise, toward) => {
            // East of a walk north is its right; each further turn to the right turns that too.
            let right = match direction {
                Direction::North => Direction::East,
                Direction::East => Direction::South,
                Direction::South => Direction::West,
                Direction::West => Direction::North,
            };
            let sign = if *toward == right { 1 } else { -1 };
            Shape::Arc {
                direction: *direction,
                chord: chord.length().nm(),
                rise: sign * rise.length().nm(),
            }
        }
        Run::Close => Shape::Straight { direction: Direction::North, length: 0 },
    }
}

fn house_side(side: &crate::sketch::SideSketch, number: usize) -> Side {
    let direction = match side.run {
        Run::Straight(direction, _) | Run::ByClosing(direction) | Run::Arc(direction, ..) => {
            Some(direction)
        }
        _ => None,
    };
    Side {
        number,
        run: side.run.clone(),
        words: side.words.clone(),
        typed: side.typed.clone(),
        span: side.span,
        direction,
        follows: matches!(side.run, Run::ByClosing(_)),
    }
}

/// `12' 6" north and 4' east of the start`.
fn spoken_place(at: (i64, i64)) -> String {
    let part = |nm: i64, axis: Axis| {
        let far = Length::from_nm(nm);
        (nm != 0).then(|| format!("{} {}", far.spoken(), Direction::along(axis, nm).word()))
    };
    let parts: Vec<String> =
        [part(at.1, Axis::North), part(at.0, Axis::East)].into_iter().flatten().collect();
    if parts.is_empty() {
        "at the start".to_owned()
    } else {
        format!("{} of the start", words::all_of(&parts))
    }
}
