//! The house: levels, spaces, sides and lots, with the figures and values stated in the file.

use std::ops::Deref;
use std::sync::{Arc, OnceLock};

use crate::diagnostic::{Diagnostic, Source, Span, quoted};
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::{Extent, Outline, Vector};
use crate::geometry::traverse::{Closed, Traverse};
use crate::sketch::statement::{Bearing, FigureKind, Measured, Run, SideRule, Thickness};
use crate::sketch::value_statement::StatedValues;
use crate::sketch::{Face, Kind, ReferenceSource, Side, SideNumber, TakenFrom};
use crate::units::area::{Area, WrittenArea};
use crate::units::length::{Form, Length, WrittenLength};
use rust_decimal::Decimal;

/// A house whose outlines close, do not cross themselves and do not overlap, with everything its file states.
///
/// Cheap to clone: every later step holds it.
#[derive(Clone, Debug)]
pub struct House(Arc<Model>);

impl House {
    /// The form of most lengths; the earlier one if two are equally frequent.
    pub(crate) fn usual_form(&self) -> Form {
        *self.usual_form.get_or_init(|| {
            let spaces = self.spaces.iter().flat_map(|space| space.sides.iter());
            let lots = self.lots.iter().flat_map(|lot| lot.sides.iter());
            crate::sketch::statement::usual_form(spaces.chain(lots).map(|side| &side.run))
        })
    }

    pub(crate) fn new(model: Model) -> House {
        House(Arc::new(model))
    }

    /// A copy of the house with this figure in place of its own figure of the same kind.
    pub(crate) fn with_figure(&self, kind: FigureKind, area: WrittenArea) -> House {
        let mut model = self.0.as_ref().clone();
        let figure = PublishedFigure {
            kind,
            area,
            face: None,
            sides: None,
            counting: Vec::new(),
            title: None,
            span: Span::default(),
        };
        match model.figures.iter_mut().find(|own| own.kind == figure.kind) {
            Some(own) => own.area = figure.area,
            None => model.figures.push(figure),
        }
        House::new(model)
    }
}

impl Deref for House {
    type Target = Model;

    fn deref(&self) -> &Model {
        &self.0
    }
}

/// The contents of a [`House`].
#[derive(Clone, Debug)]
pub struct Model {
    pub(crate) source: Source,
    pub(crate) particulars: Particulars,
    pub(crate) figures: Vec<PublishedFigure>,
    pub(crate) missing: Vec<Missing>,
    pub(crate) values: StatedValues,
    /// Warnings about the file, in file order.
    pub(crate) warnings: Vec<Diagnostic>,
    pub(crate) levels: Vec<Level>,
    pub(crate) spaces: Vec<Space>,
    pub(crate) lots: Vec<Lot>,
    pub(crate) drawn: Vec<ReferenceOutline>,
    pub(crate) tolerance: Length,
    pub(crate) veneer: Option<Thickness>,
    pub(crate) wall: Option<Length>,
    /// The form of most lengths, once it was asked for.
    pub(crate) usual_form: OnceLock<Form>,
}

/// The property, account, dates and people shown at the head of every page, and how the house was measured.
#[derive(Clone, Debug, Default)]
pub(crate) struct Particulars {
    pub(crate) property: Option<String>,
    pub(crate) address: Option<String>,
    pub(crate) account: Option<String>,
    pub(crate) case: Option<String>,
    pub(crate) tax_year: Option<u16>,
    pub(crate) measured: Option<Measured>,
    /// The tolerance of each side, plus or minus, as typed; `None` if the file does not state it.
    pub(crate) tolerance: Option<WrittenLength>,
    pub(crate) interior_seen: Option<bool>,
    pub(crate) front: Option<Direction>,
    pub(crate) true_north: Option<Bearing>,
}

impl Particulars {
    /// Where the house is; empty where the file does not say.
    pub(crate) fn place(&self) -> String {
        match (&self.property, &self.address) {
            // After the county of the property, the street would be in the wrong order.
            (Some(property), Some(address)) => format!("{property} ({address})"),
            (Some(place), None) | (None, Some(place)) => place.clone(),
            (None, None) => String::new(),
        }
    }

    /// Account, case and tax year; empty where the file has none.
    pub(crate) fn numbers(&self) -> String {
        let mut numbers: Vec<String> = Vec::new();
        numbers.extend(self.account.as_ref().map(|account| format!("account {account}")));
        numbers.extend(self.case.as_ref().map(|case| format!("case {case}")));
        numbers.extend(self.tax_year.map(|year| format!("tax year {year}")));
        numbers.join(", ")
    }
}

/// A published area.
#[derive(Clone, Debug)]
pub(crate) struct PublishedFigure {
    pub(crate) kind: FigureKind,
    pub(crate) area: WrittenArea,
    /// The face it was measured at, if stated.
    pub(crate) face: Option<Face>,
    /// How its sides were rounded, if stated.
    pub(crate) sides: Option<SideRule>,
    /// The names of spaces that it counts beyond what the rule counts.
    pub(crate) counting: Vec<String>,
    pub(crate) title: Option<String>,
    pub(crate) span: Span,
}

/// Something the record lists that was not found on site.
#[derive(Clone, Debug)]
pub(crate) struct Missing {
    pub(crate) kind: Kind,
    pub(crate) name: String,
    pub(crate) recorded: WrittenArea,
}

/// A level of the house.
#[derive(Clone, Debug)]
pub struct Level {
    pub(crate) name: String,
    pub(crate) below_grade: bool,
    pub(crate) beside: bool,
}

/// A space on a level.
#[derive(Clone, Debug)]
pub struct Space {
    pub(crate) name: String,
    pub(crate) kind: Kind,
    /// The index of its level in `Model::levels`.
    pub(crate) level: usize,
    pub(crate) face: Face,
    pub(crate) veneer: Option<Thickness>,
    /// The space it lies in or is deducted from, by index.
    pub(crate) parent: Option<usize>,
    /// Whether it is counted in a total.
    pub(crate) counted: bool,
    /// Whether the file counts it, or leaves it uncounted, against the rule.
    pub(crate) claimed: bool,
    /// Whether the file marks it `detached`; its position on the level is then ignored.
    pub(crate) by_itself: bool,
    /// Whether it is living space that is not connected to the main living space.
    pub(crate) detached: bool,
    /// The ceiling height it is under, if stated.
    pub(crate) under: Option<WrittenLength>,
    pub(crate) recorded: Option<Area>,
    pub(crate) sides: Arc<Vec<Side>>,
    pub(crate) closed: Closed,
    /// The lengths that were taped as checks.
    pub(crate) checks: Vec<TapedCheck>,
    /// The position of its first corner on the level in nanometers, east then north, as measured.
    pub(crate) at: (i64, i64),
    /// The bounding box of its measured outline on the level.
    pub(crate) extent: Extent,
    pub(crate) span: Span,
}

/// A length that was taped as a check, beside what the walls give for it.
#[derive(Clone, Debug)]
pub(crate) struct TapedCheck {
    pub(crate) of: Checked,
    pub(crate) taped: WrittenLength,
    /// The same length in the closed outline.
    pub(crate) walls: Length,
}

/// What a check goes across.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Checked {
    /// The whole outline along an axis.
    Overall(Axis),
    /// From one corner to another, by their numbers from 1.
    Corners(usize, usize),
}

/// How the length of a side was obtained.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, strum::IntoStaticStr)]
#[strum(serialize_all = "kebab-case")]
#[non_exhaustive]
pub enum LengthSource {
    /// Measured with a tape or a laser.
    Measured,
    /// Computed from the other sides of its traverse.
    Closing,
    /// Estimated by eye, or paced off.
    Estimated,
    /// Taken from a plan.
    Plan,
    /// Taken from the record.
    Record,
}

impl LengthSource {
    /// Its word in JSON: `measured`, `closing`, `estimated`, `plan` or `record`.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.into()
    }
}

/// A lot: the land.
#[derive(Clone, Debug)]
pub struct Lot {
    pub(crate) name: String,
    pub(crate) recorded: Option<WrittenArea>,
    pub(crate) sides: Arc<Vec<Side>>,
    pub(crate) closed: Closed,
}

/// An outline from a record, a plan or a map, which may not close.
#[derive(Clone, Debug)]
pub(crate) struct ReferenceOutline {
    pub(crate) drawn: ReferenceSource,
    pub(crate) name: String,
    /// The indexes of the spaces it belongs to: one space, or the counted spaces of a level.
    pub(crate) of: Vec<usize>,
    pub(crate) sides: Arc<Vec<Side>>,
    pub(crate) traverse: Traverse,
    /// The outline; `None` unless it closes exactly and does not cross itself.
    pub(crate) outline: Option<Outline>,
}

impl Model {
    /// The text of the sides file.
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// Warnings about the file, in file order.
    pub fn warnings(&self) -> &[Diagnostic] {
        &self.warnings
    }

    /// Whether the file states values, rates or sales.
    pub fn has_values(&self) -> bool {
        let values = &self.values;
        values.value.is_some() || !values.rates.is_empty() || !values.sales.is_empty()
    }

    /// The levels in file order.
    pub fn levels(&self) -> &[Level] {
        &self.levels
    }

    /// The spaces of all levels in file order.
    pub fn spaces(&self) -> &[Space] {
        &self.spaces
    }

    /// The lots in file order.
    pub fn lots(&self) -> &[Lot] {
        &self.lots
    }

    /// The record's and the plan's own outlines, without those from maps.
    pub(crate) fn own_sketches(&self) -> impl Iterator<Item = &ReferenceOutline> {
        self.drawn.iter().filter(|outline| outline.drawn != ReferenceSource::Map)
    }

    /// The outlines from maps.
    pub(crate) fn map_outlines(&self) -> impl Iterator<Item = &ReferenceOutline> {
        self.drawn.iter().filter(|outline| outline.drawn == ReferenceSource::Map)
    }

    /// Whether the space is deducted from the one it lies in.
    pub(crate) fn is_deducted(&self, space: usize) -> bool {
        self.spaces[space].parent.is_some() && self.spaces[space].kind != Kind::Stair
    }

    /// Whether the file says how thick a veneer or a wall is.
    pub(crate) fn states_walls(&self) -> bool {
        let is_stated = |veneer: Option<Thickness>| matches!(veneer, Some(Thickness::Of(_)));
        self.wall.is_some()
            || is_stated(self.veneer)
            || self.spaces.iter().any(|space| is_stated(space.veneer))
    }

    /// The spaces deducted from this one, by index.
    pub(crate) fn deducted_from(&self, space: usize) -> impl Iterator<Item = usize> {
        (0..self.spaces.len())
            .filter(move |&i| self.spaces[i].parent == Some(space) && self.is_deducted(i))
    }

    /// Whether the space is on a level wholly or partly below grade.
    pub(crate) fn is_below_grade(&self, space: usize) -> bool {
        self.levels[self.spaces[space].level].below_grade
    }
}

impl Level {
    /// The name as typed.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Whether it is wholly or partly below grade.
    #[must_use]
    pub fn is_below_grade(&self) -> bool {
        self.below_grade
    }
}

impl Space {
    /// The name as typed.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// What kind of space it is.
    #[must_use]
    pub fn kind(&self) -> Kind {
        self.kind
    }

    /// Whether it is counted in a total.
    #[must_use]
    pub fn is_counted(&self) -> bool {
        self.counted
    }

    /// The face that was measured.
    #[must_use]
    pub fn face(&self) -> Face {
        self.face
    }

    /// Its outline at the measured face, closed.
    #[must_use]
    pub fn outline(&self) -> &Outline {
        &self.closed.outline
    }

    /// Its sides in walking order.
    #[must_use]
    pub fn sides(&self) -> &[Side] {
        &self.sides
    }
}

impl Lot {
    /// The name as typed.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its outline, closed by the compass rule where sides are given by bearings.
    #[must_use]
    pub fn outline(&self) -> &Outline {
        &self.closed.outline
    }

    /// Its sides in walking order.
    #[must_use]
    pub fn sides(&self) -> &[Side] {
        &self.sides
    }

    /// Its area on the record; `None` if the file does not give it.
    pub fn recorded(&self) -> Option<Area> {
        self.recorded.map(WrittenArea::area)
    }

    /// How well its calls close: the distance between end and start, and the perimeter divided by that distance,
    /// rounded down to three digits. `None` if it closes exactly, or if the last call is computed.
    #[must_use]
    pub fn closure(&self) -> Option<(Length, i64)> {
        let misses = self.closed.misclosure;
        let vector = Vector { east: misses.east, north: misses.north, rise: 0 };
        let distance = vector.length();
        let run: Length =
            self.closed.traverse.sides.iter().map(|side| side.shape.vector().length()).sum();
        if distance == Length::ZERO || self.last_is_computed() {
            return None;
        }
        let ratio = run.nm().checked_div(distance.nm())?;
        let mut unit = 1;
        while ratio.checked_div(unit)? >= 1_000 {
            unit *= 10;
        }
        Some((distance, ratio - ratio.rem_euclid(unit)))
    }

    /// Whether the last call is computed from the others instead of measured.
    #[must_use]
    pub fn last_is_computed(&self) -> bool {
        self.sides.last().is_some_and(|side| side.run == Run::Close)
    }

    /// How far its calls end to the north and to the east of their start, before adjustment; negative to the south or
    /// west.
    #[must_use]
    pub fn misclosure(&self) -> (Length, Length) {
        (
            Length::from_nm(self.closed.misclosure.north),
            Length::from_nm(self.closed.misclosure.east),
        )
    }
}

impl Side {
    /// The side's number, with what was typed in backticks: side 3 (`east 30'`).
    pub(crate) fn quoted(&self) -> String {
        format!("side {} ({})", self.number, quoted(&self.typed))
    }

    /// Whether its length was typed as a number without a unit.
    pub(crate) fn is_bare(&self) -> bool {
        is_bare(&self.typed)
    }

    /// Its number in walking order, from 1.
    #[must_use]
    pub fn number(&self) -> SideNumber {
        self.number
    }

    /// The side as typed in the file.
    #[must_use]
    pub fn typed(&self) -> &str {
        &self.typed
    }

    /// The length of a straight side as typed, without its direction; `None` for a side with more than one length or none.
    pub(crate) fn length_typed(&self) -> Option<String> {
        match &self.run {
            Run::Straight(_, written) => Some(written.grouped()),
            _ => None,
        }
    }

    /// Its length on the record; `None` if the file does not give it.
    pub fn recorded(&self) -> Option<Length> {
        self.words.recorded.map(WrittenLength::length)
    }

    /// Whether anything is said about it after its length.
    pub(crate) fn has_words(&self) -> bool {
        !self.words.are_none()
    }

    /// How its length was obtained.
    #[must_use]
    pub fn how(&self) -> LengthSource {
        match (self.follows, self.words.estimated, self.words.from) {
            (true, ..) => LengthSource::Closing,
            (_, true, _) => LengthSource::Estimated,
            (.., TakenFrom::Plan) => LengthSource::Plan,
            (.., TakenFrom::Record) => LengthSource::Record,
            (.., TakenFrom::Tape) => LengthSource::Measured,
        }
    }

    /// How it runs, as one word: a compass direction, `diagonal`, `bearing` or `arc`.
    #[must_use]
    pub fn way(&self) -> &'static str {
        match (self.direction, &self.run) {
            (_, Run::Arc(..)) => "arc",
            (Some(direction), _) => direction.word(),
            (None, Run::Bearing(..)) => "bearing",
            _ => "diagonal",
        }
    }
}

/// Whether a typed side ends in the mark of a foot or an inch, or in meters.
pub(crate) fn ends_in_a_mark(typed: &str) -> bool {
    matches!(typed.as_bytes().last(), Some(b'\'' | b'"' | b'm'))
}

/// Whether a typed side ends in a number without a unit.
pub(crate) fn is_bare(typed: &str) -> bool {
    // Most sides end in a unit, and this is the quickest way to find that out.
    if ends_in_a_mark(typed) {
        return false;
    }
    let is_number = |part: &str| part.parse::<Decimal>().is_ok();
    let mut words = typed.split(' ');
    let _direction = words.next();
    words.next().is_some_and(is_number) && words.next().is_none()
}
