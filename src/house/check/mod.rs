//! From the sides file to the checked house: outlines are closed, placed, and checked for crossings and overlaps.

pub(crate) mod asked;
mod bounds;
mod calls;
mod closure;
pub(crate) mod comments;
mod detached;
pub(crate) mod draft;
mod exchanged;
mod facing;
mod glance;
mod names;
mod overlap;
mod pictures;
mod placement;
mod places;
pub(crate) mod plausibility;
mod references;
mod shared;
mod street_words;
mod suspect;
mod suspects;
mod tenths;
mod ties;

use std::sync::{Arc, OnceLock};

use crate::diagnostic::words;
use crate::diagnostic::{Diagnostic, Source, Span, Word, quoted};
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Crossing;
use crate::geometry::traverse::{
    Closed, Leg, Misclosure, NotClosed, Shape, Traverse, TraverseSide,
};
use crate::house::SideNumber;
pub use crate::house::check::bounds::{
    MOST_FIGURES, MOST_LEVELS, MOST_MISSING, MOST_OUTLINES, MOST_PICTURES, MOST_SPACES,
};
use crate::house::check::closure::{closing_backwards, does_not_close, second_half_of_its_start};
use crate::house::check::glance::Glance;
use crate::house::model::{Missing, Model, Particulars, PublishedFigure};
use crate::house::{Level, Lot, Side, Space, TapedCheck};
use crate::sketch::statement::Place;
use crate::sketch::statement::{MissingStatement, Run, usual_form};
use crate::sketch::{FigureSketch, Heads, Kind, LevelSketch, Sketch, SpaceSketch, WalkSketch};
use crate::units::length::{Form, Length, Step, WrittenLength};

/// The tolerance of an estimated side, plus or minus, unless the file gives one.
const ESTIMATED: Length = Length::FOOT;

/// Checks the whole sides file and adds every error and warning to `found`.
///
/// `house` is what [`unchecked`] makes of the file; `false` if there is any error.
pub(crate) fn check(sketch: &Sketch, house: &mut Model, found: &mut Vec<Diagnostic>) -> bool {
    let glance = Glance::at(sketch);
    let errors_before = found.iter().filter(|diagnostic| diagnostic.is_error()).count();
    let mut checker = Checker::new(sketch, house, found, glance);
    checker.whole = errors_before == 0;
    if let Some(too_many) = bounds::too_many(sketch, &checker.glance) {
        checker.report(too_many);
        return false;
    }
    if let Some(needed) = checker.unit_needed_first() {
        checker.report(needed);
        checker.unit_doubtful = true;
    }
    for (i, level) in sketch.levels.iter().enumerate() {
        checker.level(i, level);
    }
    for lot in &sketch.lots {
        checker.lot(lot);
    }
    checker.report_wide_tolerance();
    if checker.whole {
        let says = std::mem::take(&mut checker.says_counted);
        checker.find_detached(&says);
        checker.report_level_order();
        if !checker.top_down {
            checker.overhangs();
        }
        checker.beside_and_on();
        checker.common_on_one_level();
        checker.report_street_ways();
        checker.report_unlikely_size();
    }
    checker.reference_outlines();
    checker.counting_names();
    checker.pictures();
    checker.report_names();
    checker.plausibility();
    let whole = checker.whole;
    let errors = found.iter().filter(|diagnostic| diagnostic.is_error()).count();
    whole && errors == errors_before
}

/// The notation of most sides of spaces; of lots, if the file has no other sides.
fn form_of(sketch: &Sketch) -> Form {
    let has_spaces = sketch.levels.iter().any(|level| !level.spaces.is_empty());
    let lots = if has_spaces { &[] } else { sketch.lots.as_slice() };
    let all = sketch.levels.iter().flat_map(|level| &level.spaces).chain(lots);
    usual_form(all.flat_map(|space| space.walk.sides.iter()).map(|side| &side.run))
}

/// The house of a file without its levels, spaces and lots, which are added as they are checked, and without its source,
/// which is the caller's.
pub(crate) fn unchecked(sketch: &Sketch) -> Model {
    let heads = &sketch.heads;
    let spaces = sketch.levels.iter().map(|level| level.spaces.len()).sum();
    Model {
        source: Source::default(),
        particulars: particulars(heads),
        figures: sketch.figures.iter().map(published).collect(),
        missing: sketch.missing.iter().map(missing).collect(),
        values: sketch.values.clone(),
        warnings: Vec::new(),
        levels: Vec::with_capacity(sketch.levels.len()),
        spaces: Vec::with_capacity(spaces),
        lots: Vec::new(),
        drawn: Vec::new(),
        tolerance: heads.tolerance(),
        veneer: heads.veneer,
        wall: heads.wall.map(WrittenLength::length),
        usual_form: OnceLock::new(),
    }
}

fn particulars(heads: &Heads) -> Particulars {
    Particulars {
        property: heads.property.clone(),
        address: heads.address.clone(),
        account: heads.account.clone(),
        case: heads.case.clone(),
        tax_year: heads.tax_year,
        measured: heads.measured.clone(),
        tolerance: heads.tolerance,
        interior_seen: heads.interior_seen,
        front: heads.front,
        true_north: heads.true_north,
    }
}

fn published(sketch: &FigureSketch) -> PublishedFigure {
    let figure = &sketch.figure;
    let basis = &figure.basis;
    PublishedFigure {
        kind: figure.kind.clone(),
        area: figure.area,
        face: basis.face,
        sides: basis.sides,
        counting: basis.counting.iter().map(|name| name.text.clone()).collect(),
        title: figure.title.clone(),
        span: sketch.span,
    }
}

fn missing(missing: &MissingStatement) -> Missing {
    Missing { kind: missing.kind, name: missing.name.text.clone(), recorded: missing.recorded }
}

pub(super) struct Checker<'a> {
    pub(super) sketch: &'a Sketch,
    pub(super) found: &'a mut Vec<Diagnostic>,
    pub(super) house: &'a mut Model,
    pub(super) whole: bool,
    /// Spaces that were reported to lie outside the space they belong in; nothing more is reported about their
    /// position.
    pub(super) misplaced: Vec<usize>,
    /// Spaces whose position the file does not give, except the first of each level.
    pub(super) unplaced: Vec<usize>,
    /// How many overlaps were reported.
    pub(super) overlaps_reported: usize,
    /// How many sides were compared so far to find places to suggest.
    pub(super) tries: usize,
    /// Whether numbers without a unit make a house of an unlikely size; then nothing is reported about where its
    /// spaces lie.
    pub(super) unit_doubtful: bool,
    /// Whether levels were reported to be typed from the top down; then nothing is reported about what lies on what.
    pub(super) top_down: bool,
    /// The notation of most sides.
    form: Form,
    pub(super) glance: Glance,
    /// The work done by the overlap check so far, in pairs compared; it stops at `MOST_WORK`.
    pub(super) work: usize,
    /// Whether the overlap check has reported that it stopped at a limit.
    pub(super) is_tangled: bool,
    /// For each space, whether the file says that it is counted (`Some(true)`) or not; `None` if it does not say.
    says_counted: Vec<Option<bool>>,
}

/// The spaces of the current level in file order, each with its index in the house once it is closed and placed.
pub(super) type OnLevel = Vec<Option<usize>>;

impl<'a> Checker<'a> {
    fn new(
        sketch: &'a Sketch,
        house: &'a mut Model,
        found: &'a mut Vec<Diagnostic>,
        glance: Glance,
    ) -> Checker<'a> {
        Checker {
            sketch,
            found,
            house,
            whole: true,
            misplaced: Vec::new(),
            unplaced: Vec::new(),
            overlaps_reported: 0,
            tries: 0,
            unit_doubtful: false,
            top_down: false,
            form: glance.form.unwrap_or_else(|| form_of(sketch)),
            glance,
            work: 0,
            is_tangled: false,
            says_counted: Vec::new(),
        }
    }
}

impl Checker<'_> {
    pub(super) fn report(&mut self, diagnostic: Diagnostic) {
        self.whole &= !diagnostic.is_error();
        self.found.push(diagnostic);
    }

    pub(super) fn form(&self) -> Form {
        self.form
    }

    /// A length in the notation of most sides.
    pub(super) fn spoken(&self, length: Length) -> String {
        WrittenLength::new(length, self.form).spoken()
    }

    fn level(&mut self, number: usize, level: &LevelSketch) {
        self.report_level_twice(number, level);
        self.house.levels.push(Level {
            name: level.level.name.text.clone(),
            below_grade: level.level.below_grade,
            beside: level.level.beside,
        });
        if level.spaces.is_empty() && !level.doubtful {
            self.report_empty_level(level);
        }
        let mut on_level: OnLevel = Vec::with_capacity(level.spaces.len());
        for (i, space) in level.spaces.iter().enumerate() {
            self.report_name_twice(level, i);
            let placed = self.space(number, level, space, &on_level);
            on_level.push(placed);
        }
        let all = on_level.iter().all(Option::is_some) && !level.doubtful;
        let placed: Vec<usize> = on_level.iter().flatten().copied().collect();
        self.find_parents(level, &on_level, all);
        if !level.doubtful && !self.unit_doubtful {
            self.overlaps(&placed);
            self.touching_nothing(&placed);
            self.report_not_placed(&placed);
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
        let errors = self.found.len();
        let walked = self.close_walk(
            &statement.name.text,
            Some(&on.level.name.text),
            sketch.span,
            &sketch.walk,
        );
        // What was meant as a part of its place is not to be measured again.
        let fault = self.found.get_mut(errors..).and_then(<[Diagnostic]>::last_mut);
        if let Some(fault) = fault.filter(|fault| fault.word() == Word::DoesNotClose)
            && let Some(help) = second_half_of_its_start(&statement.place, &sketch.walk.sides)
        {
            *fault = fault.clone().instead(None, vec![help], Vec::new());
        }
        let at = self.place(on, sketch, on_level);
        let (sides, closed, checks) = walked?;
        let at = if statement.detached { Some(self.beside(&closed, on_level)) } else { at };
        let rule = statement.kind == Kind::Living;
        let counted = statement.counted.unwrap_or(rule);
        self.report_open_named_stair(sketch);
        self.says_counted.push(statement.counted);
        self.house.spaces.push(Space {
            name: statement.name.text.clone(),
            kind: statement.kind,
            level,
            face: statement.face.or(self.sketch.heads.faces).unwrap_or_default(),
            veneer: statement.veneer,
            parent: None,
            counted: counted && !statement.kind.lies_in_another(),
            claimed: statement.counted.is_some_and(|counted| counted != rule),
            by_itself: statement.detached,
            detached: false,
            under: statement.under,
            recorded: statement.recorded.map(|area| area.area()),
            sides,
            extent: closed.outline.extent(at?),
            closed,
            checks,
            at: at?,
            span: sketch.span,
        });
        let space = self.house.spaces.len() - 1;
        if matches!(statement.place, Place::Origin) && !on_level.is_empty() {
            self.unplaced.push(space);
        }
        Some(space)
    }

    /// A position for a detached space: east of everything already on the level.
    fn beside(&self, closed: &Closed, on_level: &OnLevel) -> (i64, i64) {
        const APART: Length = Length::from_nm(10 * Length::FOOT.nm());
        let ends = on_level.iter().flatten().map(|&i| self.house.spaces[i].extent.east().1);
        let own = closed.outline.extent((0, 0)).east().0;
        (ends.max().map_or(0, |end| end + APART.nm() - own), 0)
    }

    fn report_open_named_stair(&mut self, sketch: &SpaceSketch) {
        if sketch.space.kind == Kind::Open
            && sketch.space.name.text.to_lowercase().contains("stair")
        {
            let shown = quoted(&sketch.space.name.text);
            self.report(
                Diagnostic::new(Word::OpenNamedStair, sketch.span, format!("the opening {shown} is named as a stair"))
                    .note("treads and landings count on the level they go down from; only what the opening has beyond its stair is open")
                    .help("type the stair itself as `stair`, and as `open` only the rest of the opening"),
            );
        }
    }

    /// Warns of a tolerance so wide that it would close almost any traverse.
    fn report_wide_tolerance(&mut self) {
        let widest = Length::from_nm(3 * Length::INCH.nm());
        let Some(tolerance) = self.sketch.heads.tolerance.filter(|t| t.length() > widest) else {
            return;
        };
        let message =
            format!("each side is taken to be within {tolerance}, which is wide for a tape");
        self.report(
            Diagnostic::new(Word::WideTolerance, self.sketch.heads.tolerance_span, message)
                .note("a walk is closed if it misses its start by no more than the tolerances of its sides together")
                .help("is an inch mark or a fraction misplaced in `tolerance`? half an inch is `tolerance 1/2\"`"),
        );
    }

    /// Warns of a measured side whose own tolerance is a foot or more: an inch mark left off makes feet of it.
    fn report_wide_side(&mut self, side: &Side) {
        let Some(tolerance) = side.words.tolerance.filter(|t| t.length() >= Length::FOOT) else {
            return;
        };
        if side.words.estimated {
            return;
        }
        self.report(
            Diagnostic::new(
                Word::WideTolerance,
                side.span,
                format!("this wall is taken to be within {tolerance}, which is wide for a tape"),
            )
            .help("is an inch mark missing in `tolerance`? a number without a mark is feet, or meters after `units meters`"),
        );
    }

    fn lot(&mut self, sketch: &SpaceSketch) {
        let name = &sketch.space.name.text;
        if let Some((sides, closed, _)) = self.close_walk(name, None, sketch.span, &sketch.walk) {
            let recorded = sketch.space.recorded;
            self.house.lots.push(Lot { name: name.clone(), recorded, sides, closed });
        }
    }

    /// Adjusts a traverse to close and checks its outline; returns what was taped as a check too.
    fn close_walk(
        &mut self,
        name: &str,
        level: Option<&str>,
        span: Span,
        sketch: &WalkSketch,
    ) -> Option<(Arc<Vec<Side>>, Closed, Vec<TapedCheck>)> {
        if sketch.doubtful || sketch.sides.is_empty() {
            self.whole = false;
            return None;
        }
        let (traverse, sides) = self.build(name, level.is_none(), span, sketch)?;
        self.report_tenths_beside_inches(name, &sides);
        let closed = match traverse.adjust() {
            Ok(closed) => closed,
            Err(_) if self.sketch.heads_doubtful => {
                self.whole = false;
                return None;
            }
            Err((NotClosed::Misses(misses), traverse)) => {
                self.report(does_not_close(name, level, span, &traverse, &sides, misses));
                return None;
            }
            Err((NotClosed::Turns { side, misses }, traverse)) => {
                let fault = does_not_close(name, level, span, &traverse, &sides, misses);
                let side = &sides[side];
                self.report(fault.also(side.span, "would be left with nothing").note(format!(
                    "the tolerances would allow that, but spreading it would leave nothing of {}",
                    side.quoted()
                )));
                return None;
            }
            Err((NotClosed::Backwards { side, by }, traverse)) => {
                self.report(closing_backwards(name, &traverse, &sides, side, by));
                return None;
            }
        };
        if let Some(crossing) = closed.outline.crossing() {
            self.report_crossing(name, span, &sides, crossing);
            return None;
        }
        self.report_closing(name, level.is_none(), span, &sides, &closed);
        self.report_recorded_not_used(name, &sides);
        self.report_no_turn(name, &sides, &closed);
        if level.is_some() && !self.unit_doubtful {
            self.report_short_jogs(name, &sides, &closed);
        }
        let mut checks = self.overalls(name, sketch, &sides, &closed);
        checks.extend(self.ties(name, sketch, &closed));
        Some((sides, closed, checks))
    }

    /// Builds the traverse of a walk, with `close` replaced by the sides it stands for.
    pub(super) fn build(
        &mut self,
        name: &str,
        is_lot: bool,
        span: Span,
        sketch: &WalkSketch,
    ) -> Option<(Traverse, Arc<Vec<Side>>)> {
        // `close` may stand for two sides.
        let most = sketch.sides.len() + 1;
        let mut traverse = Traverse { sides: Vec::with_capacity(most) };
        let mut following: [Option<&Side>; 2] = [None, None];
        let usual = self.sketch.heads.tolerance();
        let typed = sketch.sides.iter().filter(|side| !matches!(side.run, Run::Close));
        for (number, side) in typed.enumerate() {
            // Most sides are only a direction and a length.
            if let Run::Straight(direction, length) = side.run
                && side.words.are_none()
            {
                traverse.sides.push(TraverseSide {
                    shape: Shape::Straight { direction, length: length.length().nm() },
                    tolerance: usual.nm(),
                    follows: false,
                    estimated: false,
                    source: Some(number),
                });
                continue;
            }
            if let Run::ByClosing(direction) = side.run {
                if is_lot {
                    self.report(closing_in_lot(name, side));
                    return None;
                }
                let slot = &mut following[usize::from(direction.axis() == Axis::East)];
                if let Some(first) = slot.replace(side) {
                    self.report(closing_twice(name, sketch, side.span, first));
                    return None;
                }
            }
            let tolerance = side.words.tolerance.map_or(
                if side.words.estimated { ESTIMATED } else { usual },
                WrittenLength::length,
            );
            if !is_lot {
                self.report_wide_side(side);
            }
            traverse.sides.push(TraverseSide {
                shape: shape(&side.run),
                tolerance: tolerance.nm(),
                follows: matches!(side.run, Run::ByClosing(_)),
                estimated: side.words.estimated,
                source: Some(number),
            });
        }
        let mut sides = Arc::clone(&sketch.sides);
        if let Some(close) = sketch.sides.last().filter(|side| side.run == Run::Close) {
            let added = closing_sides(&traverse, &following.map(|side| side.map(|side| side.span)));
            let mut all = sketch.sides[..traverse.sides.len()].to_vec();
            if is_lot && !added.is_empty() {
                straight_back(close, &mut traverse, &mut all);
            } else if added.is_empty() {
                self.report(
                    Diagnostic::new(
                        Word::NothingToClose,
                        close.span,
                        format!("{} is back at its start before `close`", quoted(name)),
                    )
                    .help("take the `close` line out"),
                );
                return None;
            }
            let says = &close.words;
            if !is_lot && added.len() > 1 && (says.recorded.is_some() || says.tolerance.is_some()) {
                self.report(
                    Diagnostic::new(Word::OutOfPlace, close.span, format!("{}: `close` stands for two walls here, and a length after it is of one", quoted(name)))
                        .help(format!("give the two walls as `{} by closing` and `{} by closing`, each with its own words", added[0].word(), added[1].word())),
                );
                return None;
            }
            for direction in added.into_iter().filter(|_| !is_lot) {
                push_closing(close, direction, &mut traverse, &mut all);
            }
            sides = all.into();
        }
        if sides.len() < 3 && !sides.iter().any(|side| matches!(side.run, Run::Arc(..))) {
            self.report(
                Diagnostic::new(
                    Word::TooFewSides,
                    span,
                    format!("{} has {} only", quoted(name), words::count(sides.len(), "side")),
                )
                .help("walk round until the start is reached again"),
            );
            return None;
        }
        Some((traverse, sides))
    }

    pub(super) fn report_crossing(
        &mut self,
        name: &str,
        span: Span,
        sides: &[Side],
        crossing: Crossing,
    ) {
        let (first, second) = (&sides[crossing.first], &sides[crossing.second]);
        let place = spoken_place(crossing.at, self.form);
        let n = sides.len();
        let neighbors = (crossing.first + 1) % n == crossing.second
            || (crossing.second + 1) % n == crossing.first;
        let back = back_at_the_start(sides);
        let help = if let Some((last, next)) =
            back.filter(|(_, next)| matches!(next.run, Run::Bearing(..)))
        {
            &format!(
                "after {} the walk is back at its start, and a bearing follows: are the lines below it the calls of a deed? Put `lot \"Lot\"` on a line before {}",
                last.quoted(),
                next.quoted()
            )
        } else if let Some((last, next)) = back {
            &format!(
                "after {} the walk is back at its start: do the lines below it belong to another space? Put the line of that space (`garage \"Garage\"`, `porch \"Porch\"` …) before {}",
                last.quoted(),
                next.quoted()
            )
        } else if let Some(walked) = facing::rectangle_by_its_sides(sides) {
            &format!(
                "is each wall named by the side on which it stands? A side begins with the way in which it runs, in the order of the walk: {walked}"
            )
        } else if let Some((turned, true)) = street_words::named_by_their_sides(sides) {
            &turned.clone()
        } else if neighbors {
            "the walk turns straight back there: is a wall left out between the two?"
        } else {
            "look at the turns between the two: is one typed the wrong way round, or left out?"
        };
        self.report(
            Diagnostic::new(
                Word::SidesCross,
                first.span,
                format!(
                    "{}: {} and {} cross or touch {place}",
                    quoted(name),
                    first.quoted(),
                    second.quoted()
                ),
            )
            .label("this side")
            .also(second.span, "and this one")
            .also(span, "of this outline")
            .help(help),
        );
    }

    fn report_closing(
        &mut self,
        name: &str,
        is_lot: bool,
        span: Span,
        sides: &[Side],
        closed: &Closed,
    ) {
        let spread = closed.misclosure;
        if spread != Misclosure::default() {
            let ways = spread.spoken_in(self.form);
            let how = if closed.traverse.has_bearings() {
                "in proportion to length"
            } else {
                "over the sides"
            };
            self.report(
                Diagnostic::new(
                    Word::MisclosureSpread,
                    span,
                    format!(
                        "{}: the walk around the walls ends {ways} of where it began",
                        quoted(name)
                    ),
                )
                .note(format!("that is within the tolerances, and was spread {how}")),
            );
        }
        for side in sides.iter().filter(|side| side.follows) {
            let vector = closed.traverse.sides[side.number.index()].shape.vector();
            let length = vector.length();
            if is_lot {
                let message = format!(
                    "{}: the last call is computed from the others, {} {}",
                    quoted(name),
                    vector.bearing(),
                    match self.form {
                        Form::FeetAndInches | Form::DecimalFeet => feet_text(length),
                        metric => WrittenLength::new(length, metric).spoken(),
                    }
                );
                self.report(Diagnostic::new(Word::NoClosureCheck, side.span, message).note(
                    "calls closed this way have no closure to check: an error in one of them goes unseen",
                ));
                continue;
            }
            self.report(
                Diagnostic::new(
                    Word::NoClosureCheck,
                    side.span,
                    format!(
                        "{}: {} is not measured; it follows from the other walls, {}",
                        quoted(name),
                        side.quoted(),
                        self.spoken(length)
                    ),
                )
                .note(
                    "this direction has no closure check: an error in one of its walls goes unseen",
                ),
            );
        }
    }

    /// Warns that the recorded length of a slanted side is shown but not used, since its run and rise are not known.
    fn report_recorded_not_used(&mut self, name: &str, sides: &[Side]) {
        if self.glance.is_wordless {
            return;
        }
        for side in
            sides.iter().filter(|side| side.direction.is_none() && side.recorded().is_some())
        {
            let message =
                format!("{}: the recorded length of {} is not used", quoted(name), side.quoted());
            self.report(
                Diagnostic::new(Word::RecordedNotUsed, side.span, message)
                    .note("one length does not say how far a slanted wall runs and how far it rises; it is taken to the whole foot in both")
                    .help("if the record has a sketch, type it as it is printed: `record outline \"House\"`"),
            );
        }
    }

    /// Warns if an axis has no closure check and two sides lie in one line: a wall between them may have been left out.
    fn report_no_turn(&mut self, name: &str, sides: &[Side], closed: &Closed) {
        let unchecked: Vec<Axis> = sides
            .iter()
            .filter(|side| side.follows)
            .filter_map(|side| side.direction)
            .map(Direction::axis)
            .collect();
        if unchecked.is_empty() {
            return;
        }
        let n = sides.len();
        for (i, j) in (0..n).map(|i| (i, (i + 1) % n)) {
            let way = |k: usize| match closed.traverse.sides[k].shape {
                Shape::Straight { direction, .. } => Some(direction),
                _ => None,
            };
            let Some(direction) = way(i).filter(|_| way(i) == way(j)) else { continue };
            let length = |k: usize| match closed.traverse.sides[k].shape {
                Shape::Straight { length, .. } if !sides[k].follows => Some(length),
                _ => None,
            };
            // A side by closing on the same axis takes up a wall too many, one across it a wall too few.
            let is_twice = unchecked.contains(&direction.axis())
                && length(i).is_some()
                && length(i) == length(j);
            let is_left_out = unchecked.iter().any(|&axis| axis != direction.axis());
            let last = sides[j].quoted();
            let question = match (is_twice, is_left_out) {
                (true, true) => format!(
                    "is it one wall, typed twice? Then take the line of {last} out; or is a wall left out between the two? The sides by closing would hide either"
                ),
                (true, false) => format!(
                    "is it one wall, typed twice? Then take the line of {last} out; the side by closing would hide it"
                ),
                (false, true) => {
                    "is a wall left out between the two? the side by closing would hide it"
                        .to_owned()
                }
                (false, false) => continue,
            };
            let message = format!(
                "{}: between {} and {last} the walk does not turn",
                quoted(name),
                sides[i].quoted()
            );
            self.report(
                Diagnostic::new(Word::NoTurn, sides[j].span, message)
                    .also(sides[i].span, "runs the same way")
                    .help(question),
            );
        }
    }

    fn report_short_jogs(&mut self, name: &str, sides: &[Side], closed: &Closed) {
        let is_long = |side: &TraverseSide| matches!(side.shape, Shape::Straight { length, .. } if 2 * length >= Length::FOOT.nm());
        if closed.traverse.sides.iter().all(is_long) {
            return;
        }
        for axis in Axis::BOTH {
            let short = |leg: &Leg| 2 * leg.length < Length::FOOT.nm();
            let along_axis = |leg: &Leg| sides[leg.side].direction.is_some();
            for leg in closed.traverse.legs_along(axis).filter(along_axis).filter(short) {
                let side = &sides[leg.side];
                self.report(
                    Diagnostic::new(
                        Word::ShortJog,
                        side.span,
                        format!("{}: {} is under half a foot", quoted(name), side.quoted()),
                    )
                    .note("rounding to the whole foot drops it"),
                );
            }
        }
    }
}

/// The error for two sides by closing along one axis. Only their sum follows from the other sides; half of it is
/// offered as an estimate of each.
fn closing_twice(name: &str, sketch: &WalkSketch, span: Span, first: &Side) -> Diagnostic {
    let message = format!("{}: two sides of one direction are given by closing", quoted(name));
    let fault =
        Diagnostic::new(Word::ClosingTwice, span, message).also(first.span, "the first one");
    let fault = match street_words::named_by_their_sides(&sketch.sides) {
        Some((help, true)) => return fault.help(help),
        Some((help, false)) => fault.help(help),
        None => fault,
    };
    let form = usual_form(sketch.sides.iter().map(|side| &side.run));
    // Half of a long sum would not be an estimate of either.
    let longest = Length::from_nm(12 * Length::FOOT.nm());
    let fault = match together(sketch, span, first) {
        Some((_, both)) => fault.note(format!(
            "by the other walls the two are {} together",
            WrittenLength::new(both, form).spoken()
        )),
        None => fault,
    };
    match together(sketch, span, first).filter(|(_, both)| *both <= longest) {
        Some((direction, both)) => {
            let half = Length::from_nm(both.nm().div_euclid(2)).rounded_to(match form {
                Form::FeetAndInches => Length::INCH.nm(),
                Form::DecimalFeet => Step::TenthFoot.length().nm(),
                Form::Meters | Form::Centimeters | Form::Millimeters => Length::CENTIMETER.nm(),
            });
            let way = direction.word();
            fault.help(format!(
                "measure one of the two; if neither can be measured, estimate one by eye: `{way} {} estimated` would be half of what they make together",
                WrittenLength::new(half, form)
            ))
        }
        None => fault.help(
            "measure one of the two, or type the length that it has by eye and `estimated` after it; north and south share one side by closing, east and west share one",
        ),
    }
}

/// The combined length of two sides by closing; `None` if they do not run the same way.
fn together(sketch: &WalkSketch, second: Span, first: &Side) -> Option<(Direction, Length)> {
    let second = sketch.sides.iter().find(|side| side.span == second)?;
    let (Run::ByClosing(one), Run::ByClosing(two)) = (&first.run, &second.run) else { return None };
    let is_slanted = |side: &Side| matches!(side.run, Run::Bearing(..) | Run::Close);
    if one != two || sketch.sides.iter().any(is_slanted) {
        return None;
    }
    let vectors = sketch.sides.iter().map(|side| shape(&side.run).vector().along(one.axis()));
    let left = -one.sign() * vectors.sum::<i64>();
    (left >= 2 * Length::FOOT.nm()).then(|| (*one, Length::from_nm(left)))
}

fn closing_in_lot(name: &str, side: &Side) -> Diagnostic {
    let message = format!("{}: a call of a lot cannot follow from one axis alone", quoted(name));
    Diagnostic::new(Word::ClosingInLot, side.span, message)
        .label("by closing")
        .note("the last line of a lot runs straight back to where it began, seldom due north or east")
        .help("type the call as the deed has it, `bearing N 45° 30' E 120.5'`; or put `close` last: one straight call back to the start")
}

/// Adds the last call of a lot: straight back to the start, by the bearing and length that follow from the other
/// calls.
fn straight_back(close: &Side, traverse: &mut Traverse, sides: &mut Vec<Side>) {
    let misses = traverse.misclosure();
    traverse.sides.push(TraverseSide {
        shape: Shape::Diagonal { north: -misses.north, east: -misses.east, bulge: 0 },
        tolerance: 0,
        follows: true,
        estimated: false,
        source: Some(sides.len()),
    });
    let mut side = numbered(close, sides.len());
    side.follows = true;
    sides.push(side);
}

/// Adds one of the sides that `close` stands for.
fn push_closing(close: &Side, direction: Direction, walk: &mut Traverse, sides: &mut Vec<Side>) {
    let mut side = numbered(close, sides.len());
    side.direction = Some(direction);
    side.follows = true;
    walk.sides.push(TraverseSide {
        shape: Shape::Straight { direction, length: 0 },
        tolerance: 0,
        follows: true,
        estimated: false,
        source: Some(sides.len()),
    });
    sides.push(side);
}

/// The sides that `close` stands for: along the axes that miss by more than their tolerances, the one across the
/// last side first.
fn closing_sides(traverse: &Traverse, following: &[Option<Span>; 2]) -> Vec<Direction> {
    let misses = traverse.misclosure();
    let mut axes = [Axis::North, Axis::East];
    let last = traverse.sides.last().map(|side| side.shape.vector());
    if last.is_some_and(|last| last.north != 0 && last.east == 0) {
        axes.reverse();
    }
    let open = |axis: &Axis| {
        following[usize::from(*axis == Axis::East)].is_none()
            && misses.on(*axis).abs() > traverse.allowance(*axis)
    };
    axes.into_iter().filter(open).map(|axis| Direction::along(axis, -misses.on(axis))).collect()
}

/// The shape of a side as typed; a side by closing does not have a length yet.
/// The side after which a walk is back at its start, though more sides follow, and the next one.
fn back_at_the_start(sides: &[Side]) -> Option<(&Side, &Side)> {
    // As far as a tape may be off round a small space.
    let near = 3 * Length::INCH.nm();
    let (mut north, mut east) = (0_i64, 0_i64);
    for (i, side) in sides.iter().enumerate() {
        if side.follows {
            return None;
        }
        let vector = shape(&side.run).vector();
        north += vector.north;
        east += vector.east;
        let is_walk = i >= 3 && i + 3 <= sides.len();
        if is_walk && north.abs() <= near && east.abs() <= near {
            return Some((side, sides.get(i + 1)?));
        }
    }
    None
}

#[inline(always)]
fn shape(run: &Run) -> Shape {
    match run {
        Run::Straight(direction, length) => {
            Shape::Straight { direction: *direction, length: length.length().nm() }
        }
        Run::ByClosing(direction) => Shape::Straight { direction: *direction, length: 0 },
        Run::Diagonal(first, second) => {
            let signed = |leg: &(Direction, WrittenLength)| leg.0.sign() * leg.1.length().nm();
            let (north, east) =
                if first.0.axis() == Axis::North { (first, second) } else { (second, first) };
            Shape::Diagonal { north: signed(north), east: signed(east), bulge: 0 }
        }
        Run::Bearing(bearing, length) => {
            Shape::Bearing { unit: bearing.unit_vector(), length: length.length().nm() }
        }
        Run::Arc(direction, chord, rise, toward) => {
            let sign = if *toward == direction.right() { 1 } else { -1 };
            Shape::Arc {
                direction: *direction,
                chord: chord.length().nm(),
                rise: sign * rise.length().nm(),
            }
        }
        Run::Close => Shape::Straight { direction: Direction::North, length: 0 },
    }
}

/// The side with another number.
fn numbered(side: &Side, index: usize) -> Side {
    Side { number: SideNumber::at(index), ..side.clone() }
}

/// A length in feet to the hundredth, as deeds give it.
pub(crate) fn feet_text(length: Length) -> String {
    format!("{:.2} ft", length.feet())
}

/// A position in words: `12' 6" north and 4' east of the start`.
fn spoken_place(at: (i64, i64), form: Form) -> String {
    let part = |nm: i64, axis: Axis| {
        let far = WrittenLength::new(Length::from_nm(nm).abs(), form);
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
