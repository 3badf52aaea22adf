//! The gap between the measured area and each published figure: its steps, and its possible causes.

pub(crate) mod agreement;
mod bridge;
mod case;
pub(crate) mod cause;
mod closing_ways;
mod counting;
pub(crate) mod decision;
pub(crate) mod departures;
mod evidence;
pub(crate) mod explanation;
mod grid;
mod matching;
mod misread;
mod normal;
pub(crate) mod ours;
mod outcomes;
pub(crate) mod parts;
mod recorded;
mod roof;
mod rounding;
mod search;
pub(crate) mod settings;
pub(crate) mod sums;
pub(crate) mod totals;
mod weights;

use std::sync::Arc;

use crate::areas::Areas;
use crate::areas::at_face::{Ruled, Walls};
use crate::areas::ranges::AreaRanges;
use crate::areas::rule::{Rule, Settings};
use crate::diagnostic::{Diagnostic, Diagnostics, Span, Word, quoted};
use crate::house::House;
use crate::house::check::plausibility::is_far_off;
use crate::house::wall_moves::Assumed;
use crate::house::{Face, ReferenceSource};
use crate::house::{FigureKind, PublishedFigure, SideRule};
use crate::reconcile::agreement::{Agreement, measured_like_figure};
use crate::reconcile::case::{Case, Shared};
use crate::reconcile::counting::counted_by;
use crate::units::area::{Area, AreaUnit, WrittenArea};
use crate::units::decimal::{per_cent, thousands};
use crate::units::length::Step;
pub use bridge::{Line, Step as BridgeStep};
pub use cause::CauseClass;
pub use evidence::Evidence;
pub use explanation::{Explanation, Strength};
pub use matching::{MatchedSide, OutlineReport, Substitution};
pub use recorded::Share;
pub(crate) use roof::ORDINARY_EAVE_FT;
pub use roof::{MapReport, RoofComparison, RoofPart};
pub use rounding::{Between, CouldExplain, RoundingTest};
pub use search::Explanations;
pub use weights::Weights;

/// The areas of a house, and the gap to each published figure.
#[derive(Clone, Debug)]
pub struct Reconciliation {
    areas: Areas,
    weights: Weights,
    figures: Vec<Figure>,
    outlines: Vec<OutlineReport>,
    maps: Vec<MapReport>,
    assumed: Assumed,
    warnings: Vec<Diagnostic>,
}

impl Areas {
    /// Computes the gap to each published figure, step by step, and what could account for it.
    ///
    /// # Errors
    ///
    /// [`SideVanishes`](crate::diagnostic::Word::SideVanishes) or
    /// [`SidesCross`](crate::diagnostic::Word::SidesCross) where the walls are too close together to be moved to
    /// the face of a figure.
    pub fn reconcile(self, weights: &Weights) -> Result<Reconciliation, Diagnostics> {
        Reconciliation::computed(self, weights, Wanted { causes: true, steps: true })
    }

    /// Like [`Areas::reconcile`], but without the search for causes, for large numbers of houses. There is still a
    /// step for what a figure says it counts.
    ///
    /// # Errors
    ///
    /// As [`Areas::reconcile`].
    pub fn gaps(self) -> Result<Reconciliation, Diagnostics> {
        Reconciliation::computed(self, &Weights::default(), Wanted { causes: false, steps: true })
    }

    /// What a row of [`crate::batch`] shows, with the search for causes or without it: no steps, no warnings and nothing
    /// from maps.
    pub(crate) fn rows(self, causes: bool) -> Result<Reconciliation, Diagnostics> {
        Reconciliation::computed(self, &Weights::default(), Wanted { causes, steps: false })
    }
}

/// How much of a reconciliation is computed.
#[derive(Clone, Copy)]
struct Wanted {
    /// Whether causes are searched for.
    causes: bool,
    /// Whether there are steps and warnings, which rows of many houses do not show.
    steps: bool,
}

impl Reconciliation {
    fn computed(
        areas: Areas,
        weights: &Weights,
        wanted: Wanted,
    ) -> Result<Reconciliation, Diagnostics> {
        let house = areas.house();
        let mut warnings = if wanted.steps { areas.warnings.clone() } else { Vec::new() };
        let mut figures = Vec::with_capacity(house.figures.len());
        let mut assumed = areas.assumed();
        // The dispute is about the record, so it comes first wherever it was typed.
        let mut published: Vec<&PublishedFigure> = house.figures.iter().collect();
        published.sort_by_key(|figure| figure.kind != FigureKind::Record);
        let shared = Shared::default();
        for sketch in published {
            let ground = Ground::of(sketch, &areas)?;
            assumed = assumed.or(ground.walls.assumed());
            let figure = Figure::of(ground, &areas, (weights, wanted), &shared, &mut warnings);
            if wanted.steps {
                warnings.extend(figure.far_off(sketch.span));
            }
            figures.push(figure);
        }
        let outlines = matching::reports(&areas)?;
        let mut maps = Vec::new();
        if wanted.causes && wanted.steps {
            maps = roof::reports(&areas);
            figures.iter_mut().for_each(|figure| figure.look_at(&maps));
        }
        let warnings = if wanted.steps { all_warnings(house, warnings) } else { Vec::new() };
        let weights = *weights;
        Ok(Reconciliation { areas, weights, figures, outlines, maps, assumed, warnings })
    }

    /// The areas that the figures are compared with.
    #[must_use]
    pub fn areas(&self) -> &Areas {
        &self.areas
    }

    /// The house that was measured.
    #[must_use]
    pub fn house(&self) -> &House {
        self.areas.house()
    }

    /// The settings the areas were computed with.
    #[must_use]
    pub fn settings(&self) -> &Settings {
        self.areas.settings()
    }

    /// How common each departure was assumed to be.
    #[must_use]
    pub fn weights(&self) -> &Weights {
        &self.weights
    }

    /// The published figures: the record first, the others in file order.
    #[must_use]
    pub fn figures(&self) -> &[Figure] {
        &self.figures
    }

    /// The outlines from the record, the plan and maps, in file order.
    #[must_use]
    pub fn outlines(&self) -> &[OutlineReport] {
        &self.outlines
    }

    /// The outlines from maps compared with the walls, in file order.
    #[must_use]
    pub fn maps(&self) -> &[MapReport] {
        &self.maps
    }

    /// The kinds of thickness that were assumed for the areas or for a figure.
    pub(crate) fn assumed(&self) -> Assumed {
        self.assumed
    }

    /// Whether the record is smaller than the house measured in the record's own way. If so, handing in the pages may
    /// raise the value.
    pub fn has_smaller_record(&self) -> bool {
        self.figures.iter().any(Figure::is_smaller_record)
    }

    /// Every warning from reading, checking and computing, in file order.
    #[must_use]
    pub fn warnings(&self) -> &[Diagnostic] {
        &self.warnings
    }
}

/// The warnings of a house and of what was computed, each once, in file order.
fn all_warnings(house: &House, computed: Vec<Diagnostic>) -> Vec<Diagnostic> {
    let mut distinct: Vec<Diagnostic> = house.warnings().to_vec();
    for warning in computed {
        if !distinct.iter().any(|other| {
            other.word() == warning.word()
                && other.span() == warning.span()
                && other.message() == warning.message()
        }) {
            distinct.push(warning);
        }
    }
    crate::diagnostic::sort(&mut distinct);
    distinct
}

/// A published figure and its gap to the measured area.
#[derive(Clone, Debug)]
pub struct Figure {
    kind: FigureKind,
    title: Option<String>,
    written: WrittenArea,
    area: Area,
    face: Face,
    says_face: bool,
    says_rule: bool,
    rule: SideRule,
    start: Area,
    measured_like_figure: Area,
    /// The same before any rounding.
    like_unrounded: Area,
    agreement: Agreement,
    lines: Vec<Line>,
    shares: Vec<Share>,
    own: Option<recorded::OwnTotal>,
    rounding_test: RoundingTest,
    explanations: Explanations,
    /// Whether the figure is within the worst case of the tape from the house as measured, though neither rounding nor a
    /// cause accounts for it.
    is_read: bool,
    counting: Vec<String>,
    unwalked: Option<roof::UnwalkedPart>,
}

/// Beyond this share of a house, no tape makes a difference.
const MOST_READ: f64 = 0.03;

/// What a figure is compared with: this house at the figure's face and under its rule.
pub(crate) struct Ground<'a> {
    pub(crate) figure: &'a PublishedFigure,
    pub(crate) face: Face,
    pub(crate) rule: Rule,
    pub(crate) walls: Arc<Walls>,
    pub(crate) fine: Arc<Ruled>,
    pub(crate) ruled: Arc<Ruled>,
    /// The possible ranges under whole-foot rounding, or half-foot rounding if the figure says so.
    pub(crate) ranges: Arc<AreaRanges>,
}

impl<'a> Ground<'a> {
    fn of(figure: &'a PublishedFigure, areas: &Areas) -> Result<Ground<'a>, Diagnostics> {
        let (house, settings) = (areas.house(), areas.settings());
        let face = figure.face.unwrap_or_default();
        let rule = settings.rule_for_step(step_of(figure).unwrap_or(settings.fine.step()));
        let (walls, fine) = if face == Face::Outside {
            (Arc::clone(&areas.outside), Arc::clone(&areas.fine))
        } else {
            let walls = Arc::new(Walls::of(house, face)?);
            let fine = walls.ruled(settings.tenth_foot(), settings.reading);
            (walls, Arc::new(fine))
        };
        let ruled = match rule.step {
            step if step == settings.fine.step() => Arc::clone(&fine),
            Step::WholeFoot if face == Face::Outside => Arc::clone(&areas.whole),
            _ => Arc::new(walls.ruled(rule, settings.reading)),
        };
        let step = range_step(rule.step);
        let ranges = if face == Face::Outside && step == Step::WholeFoot {
            Arc::clone(&areas.ranges)
        } else {
            let (house, walls) = (house.clone(), Arc::clone(&walls));
            Arc::new(AreaRanges::new(house, walls, step, settings.reading))
        };
        Ok(Ground { figure, face, rule, walls, fine, ruled, ranges })
    }
}

/// The step for which the range is computed: the half foot if the figure's sides are rounded to it, else the whole
/// foot.
fn range_step(step: Step) -> Step {
    if step == Step::HalfFoot { step } else { Step::WholeFoot }
}

/// What the sides of a figure are rounded to: what it says, or the whole foot for a record in square feet that does
/// not say; else `None`. An office that reckons in square meters has no feet to round to.
fn step_of(figure: &PublishedFigure) -> Option<Step> {
    match (figure.sides, &figure.kind) {
        (Some(SideRule::Step(step)), _) => Some(step),
        (None, FigureKind::Record) if !is_metric(figure.area) => Some(Step::WholeFoot),
        _ => None,
    }
}

/// Whether a figure was written in a metric unit.
fn is_metric(area: WrittenArea) -> bool {
    matches!(area.unit(), AreaUnit::SquareMeters | AreaUnit::Hectares)
}

impl Figure {
    #[expect(clippy::float_arithmetic, reason = "how far a tape may be off is a float")]
    fn of(
        ground: Ground<'_>,
        areas: &Areas,
        (weights, wanted): (&Weights, Wanted),
        shared: &Shared,
        warnings: &mut Vec<Diagnostic>,
    ) -> Figure {
        let (house, settings) = (areas.house(), areas.settings());
        if wanted.steps {
            warnings.extend(ground.walls.assumption_warnings(house));
        }
        let recorded = recorded::Recorded::of(house, &ground, warnings);
        let start = areas.gross().tenth_foot();
        let like = measured_like_figure(house, &ground);
        let agreement = Agreement::of(ground.figure.area, like);
        let counted = recorded.as_ref().map_or(&ground.ruled.areas, |recorded| &recorded.areas);
        let counting = counted_by(house, &ground.figure.counting, counted);
        let test = rounding::RoundingTest::of(house, &ground, counting);
        let case = Case {
            listed: departures::Listed { house, counting: &ground.figure.counting },
            figure: ground.figure.area.area(),
            written: ground.figure.area,
            like,
            agrees: agreement.agrees(),
            is_metric: is_metric(ground.figure.area),
            test: &test,
            face: ground.face,
            rule: ground.rule,
            walls: &ground.walls,
            ruled: &ground.ruled,
            fine: &ground.fine,
            recorded: recorded.as_ref(),
            ranges: &ground.ranges,
            settings,
            shared,
        };
        let mut explanations = Explanations::default();
        // A row shows what is reported and nothing else, and of a figure that agrees nothing is.
        if wanted.causes && (wanted.steps || !agreement.agrees()) {
            explanations = Explanations::of(&case, weights);
        }
        if wanted.steps {
            for one in explanations.list.iter_mut().filter(|one| one.is_reported()) {
                one.printed = bridge::printed_range(house, &ground, one);
            }
            decision::tell_near_from_fitting(&mut explanations.list, &test);
        }
        let apart = (ground.figure.area.area() - like).abs().sq_ft();
        let like_unrounded = match ground.figure.counting.as_slice() {
            [] => total_of(house, |i| ground.walls.spaces[i].outline.area()),
            counting => {
                let unrounded = ground.walls.areas();
                total(house, &unrounded) + counted_by(house, counting, &unrounded)
            }
        };
        let is_read = wanted.causes
            && !agreement.agrees()
            && recorded.is_none()
            && test.could_explain() != Some(CouldExplain::Yes)
            && !explanations.is_any_reported()
            && apart <= MOST_READ * like.sq_ft()
            && is_within_tape(ground.figure.area.area(), [like, like_unrounded], areas.gross());
        let (mut lines, mut own) = (Vec::new(), None);
        if wanted.steps {
            let (recorded, same) = (recorded.as_ref(), (agreement.agrees(), is_read));
            lines = bridge::lines(house, &ground, recorded, &explanations, start, &test, same);
            own = recorded::own_total(house, &ground, recorded).map(|own| own.with(counting));
        }
        Figure {
            kind: ground.figure.kind.clone(),
            title: ground.figure.title.clone(),
            written: ground.figure.area,
            area: ground.figure.area.area(),
            face: ground.face,
            says_face: ground.figure.face.is_some(),
            says_rule: ground.figure.sides.is_some(),
            rule: ground.figure.sides.unwrap_or(match step_of(ground.figure) {
                Some(step) => SideRule::Step(step),
                None => SideRule::Step(settings.fine.step()),
            }),
            start,
            measured_like_figure: like,
            like_unrounded,
            agreement,
            lines,
            shares: recorded.map(|recorded| recorded.shares).unwrap_or_default(),
            own,
            rounding_test: test,
            explanations,
            is_read,
            counting: ground.figure.counting.clone(),
            unwalked: None,
        }
    }

    /// Looks for a part that a map shows but nobody walked, with about the area that is left to explain.
    #[expect(clippy::float_arithmetic, reason = "a part on a map is good to a foot")]
    fn look_at(&mut self, maps: &[MapReport]) {
        /// How far off the part's area may be: as a share of what is left, or in square feet.
        const SHARE: f64 = 0.15;
        const SQ_FT: f64 = 15.0;
        let left = self.line(BridgeStep::NotExplained).map_or(0.0, |line| line.area().sq_ft());
        let is_about =
            |part: &roof::UnwalkedPart| (left - part.sq_ft()).abs() <= (SHARE * left).max(SQ_FT);
        let roofs = maps.iter().filter_map(MapReport::comparison);
        let parts = roofs.flat_map(RoofComparison::unwalked);
        self.unwalked = parts.filter(|_| left > 0.0 && self.is_unexplained()).find(is_about);
    }

    /// Whether measuring again could make the difference: it is within the worst case of the tape, though neither
    /// rounding nor a cause accounts for it.
    pub(crate) fn is_read(&self) -> bool {
        self.is_read
    }

    /// Whether measuring again could lead from the measured area to the figure, with walls rounded or not: whether it is
    /// within the worst case of the tape.
    pub(crate) fn is_within_tape(&self, gross: &crate::areas::Total) -> bool {
        is_within_tape(self.area, [self.measured_like_figure, self.like_unrounded], gross)
    }

    /// Whether the figure differs from the house and no cause is reported.
    fn is_unexplained(&self) -> bool {
        !self.agreement.agrees() && !self.explanations.is_any_reported()
    }

    /// A part that a map shows but nobody walked, with about the area that is left to explain; `None` if there is none.
    pub(crate) fn unwalked(&self) -> Option<&roof::UnwalkedPart> {
        self.unwalked.as_ref()
    }

    /// A warning if the figure is so far from the measured area that a wrong digit or unit is more likely than a
    /// wrong wall.
    fn far_off(&self, span: Span) -> Option<Diagnostic> {
        let (says, measured) = (self.area.whole_sq_ft(), self.start.whole_sq_ft());
        if !is_far_off(says, measured) {
            return None;
        }
        let who = match &self.kind {
            FigureKind::Other(name) => quoted(&name.text),
            _ => format!("the {}", self.name()),
        };
        let (says, measured) = (thousands(says), thousands(measured));
        let message = format!("{who} says {says} sq ft, and the sides come to {measured}");
        Some(Diagnostic::new(Word::FarOff, span, message).help(
            "look at each digit of the figure, at its unit, and at the unit of the sides; and whether every space and level is typed",
        ))
    }

    /// The names of the spaces that it says it counts.
    pub(crate) fn counting(&self) -> &[String] {
        &self.counting
    }

    /// The possible explanations, those that are reported first, then the best supported.
    #[must_use]
    pub fn explanations(&self) -> &Explanations {
        &self.explanations
    }

    /// Its name: `record`, `listing`, `plan`, or the name that it was given in the file.
    #[must_use]
    pub fn name(&self) -> &str {
        match &self.kind {
            FigureKind::Record => "record",
            FigureKind::Listing => "listing",
            FigureKind::Plan => "plan",
            FigureKind::Other(name) => &name.text,
        }
    }

    /// Whether it is the record.
    pub(crate) fn is_record(&self) -> bool {
        matches!(self.kind, FigureKind::Record)
    }

    /// Whether an outline from this source is the figure's own sketch.
    pub(crate) fn is_of(&self, source: ReferenceSource) -> bool {
        match source {
            ReferenceSource::Record => self.kind == FigureKind::Record,
            ReferenceSource::Plan => self.kind == FigureKind::Plan,
            ReferenceSource::Map => false,
        }
    }

    /// Whether it comes from another source with a name of its own, rather than from a record, a listing or a plan.
    pub(crate) fn has_own_name(&self) -> bool {
        matches!(self.kind, FigureKind::Other(_))
    }

    /// The word that states it in the sides file.
    pub(crate) fn word(&self) -> &'static str {
        match &self.kind {
            FigureKind::Record => "record",
            FigureKind::Listing => "listing",
            FigureKind::Plan => "plan",
            FigureKind::Other(_) => "figure",
        }
    }

    /// Its title, if it has one.
    #[must_use]
    pub fn title(&self) -> Option<&str> {
        self.title.as_deref()
    }

    /// The published area.
    #[must_use]
    pub fn area(&self) -> Area {
        self.area
    }

    /// The area as it was typed, with its unit.
    pub(crate) fn typed(&self) -> WrittenArea {
        self.written
    }

    /// The face that it is assumed to be measured to.
    #[must_use]
    pub fn face(&self) -> Face {
        self.face
    }

    /// Whether the file states how its sides are rounded.
    pub(crate) fn says_rule(&self) -> bool {
        self.says_rule
    }

    /// The steps to be shown, with their printed square feet. A step of 0 is left out if the file states what it is
    /// about, because then nothing was assumed and nothing changes.
    pub(crate) fn told_lines(&self) -> impl Iterator<Item = (&Line, i64)> {
        let is_told = |line: &Line| match line.step() {
            BridgeStep::Face => !self.says_face,
            BridgeStep::Rounding => !self.says_rule || line.range().is_some(),
            _ => true,
        };
        let lines = self.lines.iter().zip(self.lines_in_sq_ft());
        lines.filter(move |(line, rounded)| {
            *rounded != 0 || line.area() != Area::ZERO || is_told(line)
        })
    }

    /// The rule by which its sides are assumed to be rounded.
    pub(crate) fn side_rule(&self) -> SideRule {
        self.rule
    }

    /// The measured area that the steps start from: the gross area above grade, outside, each wall rounded by the
    /// finer rule (to a tenth of a foot, or to the inch).
    #[must_use]
    pub fn measured(&self) -> Area {
        self.start
    }

    /// The measured area at the figure's own face and with what it counts. Each wall is rounded to the inch if the
    /// figure's walls are, else to a tenth of a foot.
    #[must_use]
    pub fn measured_like_figure(&self) -> Area {
        self.measured_like_figure
    }

    /// Whether it agrees with [`Figure::measured_like_figure`], and how closely.
    pub(crate) fn agreement(&self) -> Agreement {
        self.agreement
    }

    /// The figure minus [`Figure::measured_like_figure`], in whole square feet as printed.
    pub(crate) fn apart_sq_ft(&self) -> i64 {
        self.area.whole_sq_ft() - self.measured_like_figure.whole_sq_ft()
    }

    /// Whether it was written in a metric unit.
    pub(crate) fn is_metric(&self) -> bool {
        is_metric(self.written)
    }

    /// Whether it is a record that is smaller than the house measured in its own way, and does not agree with it.
    pub(crate) fn is_smaller_record(&self) -> bool {
        self.is_record() && self.apart_sq_ft() < 0 && !self.agreement.agrees()
    }

    /// The figure minus [`Figure::measured_like_figure`], as a percentage of the latter to one decimal, both as
    /// printed; `None` if nothing was measured.
    #[must_use]
    pub fn per_cent(&self) -> Option<String> {
        let figure = i128::from(self.area.whole_sq_ft());
        let measured = i128::from(self.measured_like_figure.whole_sq_ft());
        per_cent(figure - measured, measured)
    }

    /// The gap: the figure minus the measured area, [`Figure::measured`]. Positive if the figure is larger.
    #[must_use]
    pub fn gap(&self) -> Area {
        self.area - self.start
    }

    /// The steps of the bridge, which add up to the gap exactly.
    #[must_use]
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// One step of the bridge; `None` if the figure has no such step.
    #[must_use]
    pub fn line(&self, step: BridgeStep) -> Option<&Line> {
        self.lines.iter().find(|line| line.step() == step)
    }

    /// What each recorded side contributes to the step [`RecordedSides`](BridgeStep::RecordedSides); the shares add
    /// up to that step exactly.
    #[must_use]
    pub fn shares(&self) -> &[Share] {
        &self.shares
    }

    /// The area of the figure's own sketch or sides, with the same deductions as ours; `None` unless they cover
    /// everything that is counted.
    #[must_use]
    pub fn own_sketch(&self) -> Option<Area> {
        let as_drawn = self.takes_nothing_off();
        self.own.map(|own| if as_drawn { own.drawn } else { own.net })
    }

    /// The area of the figure's own sketch or sides as drawn, without deductions.
    pub(crate) fn own_sketch_as_drawn(&self) -> Option<Area> {
        self.own.map(|own| own.drawn)
    }

    /// Whether the figure's own sketch gives its total only without deductions, although our total has deductions.
    pub(crate) fn takes_nothing_off(&self) -> bool {
        let agrees = |area: Area| area.whole_sq_ft() == self.area.whole_sq_ft();
        self.own.is_some_and(|own| agrees(own.drawn) && !agrees(own.net))
    }

    /// The test whether rounding alone could explain the figure.
    #[must_use]
    pub fn rounding_test(&self) -> &RoundingTest {
        &self.rounding_test
    }

    /// The source of the reference outlines that belong to this figure; `None` if it has none.
    pub(crate) fn drawn(figure: &PublishedFigure) -> Option<ReferenceSource> {
        match figure.kind {
            FigureKind::Record => Some(ReferenceSource::Record),
            FigureKind::Plan => Some(ReferenceSource::Plan),
            _ => None,
        }
    }
}

/// Whether the listing repeats the record's figure although the measured area differs; all in whole square feet.
pub(crate) fn repeats(record: Option<i64>, listing: Option<i64>, measured: Option<i64>) -> bool {
    record.is_some() && listing == record && measured != record
}

/// Whether the listing repeats the record's figure although the area measured the record's own way differs.
pub(crate) fn listing_repeats_record(figures: &[Figure]) -> bool {
    let of = |kind: FigureKind| figures.iter().find(|figure| figure.kind == kind);
    let (record, listing) = (of(FigureKind::Record), of(FigureKind::Listing));
    let says = |figure: Option<&Figure>| figure.map(|figure| figure.area().whole_sq_ft());
    let measured = record.map(|record| record.measured_like_figure().whole_sq_ft());
    repeats(says(record), says(listing), measured)
}

/// Whether a figure is no further from either of two areas than the worst case of the tape.
fn is_within_tape(figure: Area, areas: [Area; 2], gross: &crate::areas::Total) -> bool {
    let worst = gross.worst_case_outside();
    areas.into_iter().all(|area| (figure - area).abs().sq_ft() <= worst)
}

/// The sum over the counted spaces above grade, after their deductions; `areas` has one area per space.
pub(crate) fn total(house: &House, areas: &[Area]) -> Area {
    total_of(house, |i| areas[i])
}

/// The same, with the area of each space from a function.
#[inline]
fn total_of(house: &House, area: impl Fn(usize) -> Area) -> Area {
    let counted = (0..house.spaces.len()).filter(|&i| crate::areas::is_in_total(house, i, false));
    counted.map(|i| crate::areas::net_of(house, i, &area)).sum()
}
