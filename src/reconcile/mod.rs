//! The gap between what was measured and what somebody published, step by step.

mod bridge;
mod case;
pub(crate) mod cause;
mod counting;
pub(crate) mod departures;
mod evidence;
mod explanation;
mod matching;
mod misread;
mod normal;
pub(crate) mod ours;
mod outcomes;
pub(crate) mod parts;
mod recorded;
mod rounding;
mod search;
pub(crate) mod settings;
mod told;
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
use crate::units::area::{Area, AreaUnit, WrittenArea};
use crate::units::decimal::thousands;
use crate::units::length::Step;
pub use bridge::{Line, Step as BridgeStep};
pub use cause::CauseClass;
pub use evidence::Evidence;
pub use explanation::{Explanation, Strength};
pub use matching::{MatchedSide, OutlineReport, Substitution};
pub use recorded::Share;
pub use rounding::{Between, CouldExplain, RoundingTest};
pub use search::Explanations;
pub use weights::Weights;

/// The areas of a house and the gap to each published figure.
#[derive(Clone, Debug)]
pub struct Reconciliation {
    areas: Areas,
    weights: Weights,
    figures: Vec<Figure>,
    outlines: Vec<OutlineReport>,
    assumed: Assumed,
    warnings: Vec<Diagnostic>,
}

impl Areas {
    /// Works out the gap to each published figure, step by step, and what could account for it.
    ///
    /// # Errors
    ///
    /// [`SideVanishes`](crate::diagnostic::Word::SideVanishes) or
    /// [`SidesCross`](crate::diagnostic::Word::SidesCross) where the walls are too near each other
    /// to be moved to the face of a figure.
    pub fn reconcile(self, weights: &Weights) -> Result<Reconciliation, Diagnostics> {
        Reconciliation::worked_out(self, weights, true)
    }

    /// The same without the search for causes: for streams of many houses. What a figure says it
    /// counts is still a line of its own.
    ///
    /// # Errors
    ///
    /// As [`Areas::reconcile`].
    pub fn gaps(self) -> Result<Reconciliation, Diagnostics> {
        Reconciliation::worked_out(self, &Weights::default(), false)
    }
}

impl Reconciliation {
    fn worked_out(
        areas: Areas,
        weights: &Weights,
        explain: bool,
    ) -> Result<Reconciliation, Diagnostics> {
        let house = areas.house();
        let mut warnings = areas.warnings.clone();
        let mut figures = Vec::new();
        let mut assumed = areas.assumed();
        for sketch in &house.figures {
            let ground = Ground::of(sketch, &areas)?;
            assumed = assumed.or(ground.walls.assumed());
            let weights = explain.then_some(weights);
            let figure = Figure::of(ground, &areas, weights, &mut warnings);
            warnings.extend(figure.far_off(sketch.span));
            figures.push(figure);
        }
        let outlines = matching::reports(&areas)?;
        let mut told: Vec<Diagnostic> = house.warnings().to_vec();
        for warning in warnings {
            if !told
                .iter()
                .any(|other| other.word() == warning.word() && other.message() == warning.message())
            {
                told.push(warning);
            }
        }
        crate::diagnostic::sort(&mut told);
        Ok(Reconciliation { areas, weights: *weights, figures, outlines, assumed, warnings: told })
    }

    /// The areas.
    pub fn areas(&self) -> &Areas {
        &self.areas
    }

    /// The house that it is about.
    pub fn house(&self) -> &House {
        self.areas.house()
    }

    /// The settings that it was worked out with.
    pub fn settings(&self) -> &Settings {
        self.areas.settings()
    }

    /// How common each departure was taken to be.
    pub fn weights(&self) -> &Weights {
        &self.weights
    }

    /// The published figures in file order.
    pub fn figures(&self) -> &[Figure] {
        &self.figures
    }

    /// The outlines of the record and the plan, in file order.
    pub fn outlines(&self) -> &[OutlineReport] {
        &self.outlines
    }

    /// What had to be assumed, for the areas or for a figure.
    pub(crate) fn assumed(&self) -> Assumed {
        self.assumed
    }

    /// Whether a record is smaller than the house taken in the same way: then the pages may raise the value.
    pub fn has_smaller_record(&self) -> bool {
        self.figures.iter().any(Figure::is_smaller_record)
    }

    /// Every warning, of reading, checking and working out, in file order.
    pub fn warnings(&self) -> &[Diagnostic] {
        &self.warnings
    }
}

/// A published figure and its gap to what was measured.
#[derive(Clone, Debug)]
pub struct Figure {
    kind: FigureKind,
    title: Option<String>,
    written: WrittenArea,
    area: Area,
    face: Face,
    says_rule: bool,
    rule: SideRule,
    start: Area,
    same_way: Area,
    lines: Vec<Line>,
    shares: Vec<Share>,
    own: Option<recorded::OwnTotal>,
    enough: RoundingTest,
    explanations: Explanations,
    counting: Vec<String>,
}

/// What a figure stands on: its face, its rule, and this house under both.
pub(crate) struct Ground<'a> {
    pub(crate) figure: &'a PublishedFigure,
    pub(crate) face: Face,
    pub(crate) rule: Rule,
    pub(crate) walls: Arc<Walls>,
    pub(crate) fine: Arc<Ruled>,
    pub(crate) ruled: Arc<Ruled>,
    /// What whole feet, or half feet where the figure says so, leave open.
    pub(crate) ranges: Arc<AreaRanges>,
}

impl<'a> Ground<'a> {
    fn of(figure: &'a PublishedFigure, areas: &Areas) -> Result<Ground<'a>, Diagnostics> {
        let (house, settings) = (areas.house(), areas.settings());
        let face = figure.face.unwrap_or_default();
        let rule = settings.on(step_of(figure).unwrap_or(settings.fine));
        let (walls, fine) = if face == Face::Outside {
            (Arc::clone(&areas.outside), Arc::clone(&areas.fine))
        } else {
            let walls = Arc::new(Walls::of(house, face)?);
            let fine = walls.ruled(settings.tenth_foot(), settings.reading);
            (walls, Arc::new(fine))
        };
        let ruled = match rule.step {
            step if step == settings.fine => Arc::clone(&fine),
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

/// The step whose range is stated: the half foot for what is rounded so, else the whole foot.
fn range_step(step: Step) -> Step {
    if step == Step::HalfFoot { step } else { Step::WholeFoot }
}

/// What the sides of a figure are rounded to: what it says, else the whole foot for a record, else none in particular.
fn step_of(figure: &PublishedFigure) -> Option<Step> {
    match (figure.sides, &figure.kind) {
        (Some(SideRule::Step(step)), _) => Some(step),
        (None, FigureKind::Record) => Some(Step::WholeFoot),
        _ => None,
    }
}

impl Figure {
    fn of(
        ground: Ground<'_>,
        areas: &Areas,
        weights: Option<&Weights>,
        warnings: &mut Vec<Diagnostic>,
    ) -> Figure {
        let (house, settings) = (areas.house(), areas.settings());
        warnings.extend(ground.walls.assumption_warnings(house));
        let recorded = recorded::Recorded::of(house, &ground, warnings);
        let start = areas.gross().tenth_foot();
        let case = case::Case {
            listed: departures::Listed { house, counting: &ground.figure.counting },
            figure: ground.figure.area.area(),
            face: ground.face,
            rule: ground.rule,
            walls: &ground.walls,
            ruled: &ground.ruled,
            fine: &ground.fine,
            recorded: recorded.as_ref(),
            settings,
        };
        let explanations =
            weights.map(|weights| Explanations::of(&case, weights)).unwrap_or_default();
        let lines = bridge::lines(house, &ground, recorded.as_ref(), &explanations, start);
        let says = |line: &&Line| line.step() == BridgeStep::Counting && !line.is_supported();
        let counting = lines.iter().find(says).map(Line::area);
        let counting = counting.unwrap_or(Area::ZERO);
        let enough = rounding::RoundingTest::of(house, &ground, counting);
        let own = recorded::own_total(house, &ground, recorded.as_ref());
        let own = own.map(|own| own.with(counting));
        Figure {
            kind: ground.figure.kind.clone(),
            title: ground.figure.title.clone(),
            written: ground.figure.area,
            area: ground.figure.area.area(),
            face: ground.face,
            says_rule: ground.figure.sides.is_some(),
            rule: ground.figure.sides.unwrap_or(match step_of(ground.figure) {
                Some(step) => SideRule::Step(step),
                None => SideRule::Step(settings.fine),
            }),
            start,
            same_way: bridge::same_way(house, &ground),
            lines,
            shares: recorded.map(|recorded| recorded.shares).unwrap_or_default(),
            own,
            enough,
            explanations,
            counting: ground.figure.counting.clone(),
        }
    }

    /// A figure so far from what was measured that a digit or a unit is likelier to be wrong than a wall.
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

    /// What it says it counts.
    pub(crate) fn counting(&self) -> &[String] {
        &self.counting
    }

    /// What would account for it, best supported first.
    pub fn explanations(&self) -> &Explanations {
        &self.explanations
    }

    /// The word for it: `record`, `listing`, `plan`, or its own name.
    pub fn name(&self) -> &str {
        match &self.kind {
            FigureKind::Record => "record",
            FigureKind::Listing => "listing",
            FigureKind::Plan => "plan",
            FigureKind::Other(name) => &name.text,
        }
    }

    /// Whether it is the record's.
    pub(crate) fn is_record(&self) -> bool {
        matches!(self.kind, FigureKind::Record)
    }

    /// The word of the sides file it was given with.
    pub(crate) fn word(&self) -> &'static str {
        match &self.kind {
            FigureKind::Record => "record",
            FigureKind::Listing => "listing",
            FigureKind::Plan => "plan",
            FigureKind::Other(_) => "figure",
        }
    }

    /// Its title, where it has one.
    pub fn title(&self) -> Option<&str> {
        self.title.as_deref()
    }

    /// The published area.
    pub fn area(&self) -> Area {
        self.area
    }

    /// As it was written, where that was not in square feet.
    pub(crate) fn in_other_unit(&self) -> Option<String> {
        let is_other = self.written.unit() != AreaUnit::SquareFeet;
        is_other.then(|| self.written.to_string())
    }

    /// The face it is taken at.
    pub fn face(&self) -> Face {
        self.face
    }

    /// Whether it says itself how its sides are rounded.
    pub(crate) fn says_rule(&self) -> bool {
        self.says_rule
    }

    /// The rule its sides are taken to be rounded by.
    pub(crate) fn side_rule(&self) -> SideRule {
        self.rule
    }

    /// What was measured: gross area of the counted spaces above grade, outside, sides to the tenth of a foot.
    pub fn start(&self) -> Area {
        self.start
    }

    /// The house taken as the figure says it was: at its face, with what it counts, each wall to the inch where its own
    /// are, else to a tenth of a foot.
    pub fn same_way(&self) -> Area {
        self.same_way
    }

    pub(crate) fn is_smaller_record(&self) -> bool {
        let is_smaller = self.area.whole_sq_ft() < self.same_way.whole_sq_ft();
        self.kind == FigureKind::Record && is_smaller
    }

    /// The figure less that, in per cent of that, to one decimal, both as they are printed.
    pub(crate) fn share_of_same_way(&self) -> Option<String> {
        let [figure, measured] = [self.area, self.same_way].map(|area| {
            Area::from_half_nm2(i128::from(area.whole_sq_ft()) * Area::SQUARE_FOOT.half_nm2())
        });
        (figure - measured).per_cent_of(measured)
    }

    /// The figure less what was measured.
    pub fn gap(&self) -> Area {
        self.area - self.start
    }

    /// The gap in per cent of what was measured, to one decimal, both as they are printed; none where nothing was
    /// measured.
    pub fn per_cent(&self) -> Option<String> {
        let [figure, measured] = [self.area, self.start].map(|area| {
            Area::from_half_nm2(i128::from(area.whole_sq_ft()) * Area::SQUARE_FOOT.half_nm2())
        });
        (figure - measured).per_cent_of(measured)
    }

    /// The steps of the bridge; they add up to the gap exactly.
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// The step of the bridge, if it has it.
    pub fn line(&self, step: BridgeStep) -> Option<&Line> {
        self.lines.iter().find(|line| line.step() == step)
    }

    /// What each recorded side has in the line of recorded sides; they add up to it exactly.
    pub fn shares(&self) -> &[Share] {
        &self.shares
    }

    /// What the figure's own sketch, or its own sides, come to, where they cover all that is counted.
    pub fn own_sketch(&self) -> Option<Area> {
        let as_drawn = self.takes_nothing_off();
        self.own.map(|own| if as_drawn { own.drawn } else { own.net })
    }

    /// The same as it is drawn, with nothing taken off.
    pub(crate) fn own_sketch_as_drawn(&self) -> Option<Area> {
        self.own.map(|own| own.drawn)
    }

    /// Whether its own sketch comes to its total with nothing taken off, where something is taken off ours.
    pub(crate) fn takes_nothing_off(&self) -> bool {
        let agrees = |area: Area| area.whole_sq_ft() == self.area.whole_sq_ft();
        self.own.is_some_and(|own| agrees(own.drawn) && !agrees(own.net))
    }

    /// Whether rounding is big enough to explain it.
    pub fn enough(&self) -> &RoundingTest {
        &self.enough
    }

    /// Whether a sketch or sides of this sort go with it.
    pub(crate) fn drawn(figure: &PublishedFigure) -> Option<ReferenceSource> {
        match figure.kind {
            FigureKind::Record => Some(ReferenceSource::Record),
            FigureKind::Plan => Some(ReferenceSource::Plan),
            _ => None,
        }
    }
}

/// Whether a listing has the record's figure and not the tape's, in whole square feet.
pub(crate) fn repeats(record: Option<i64>, listing: Option<i64>, measured: Option<i64>) -> bool {
    record.is_some() && listing == record && measured != record
}

/// The sum of a value of the counted spaces above grade, what is taken off them taken off.
pub(crate) fn total(house: &House, areas: &[Area]) -> Area {
    let counted = (0..house.spaces.len()).filter(|&i| crate::areas::is_in_total(house, i, false));
    counted.map(|i| crate::areas::net(house, i, areas)).sum()
}
