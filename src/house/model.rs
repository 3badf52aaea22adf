//! The house itself: levels, spaces, sides, lots, and what the file says of figures and values.

use std::ops::Deref;
use std::sync::Arc;

use crate::diagnostic::{Diagnostic, Source, Span, quoted};
use crate::geometry::compass::Direction;
use crate::geometry::outline::{Extent, Outline, Vector};
use crate::geometry::traverse::{Closed, Traverse};
use crate::sketch::statement::{Bearing, FigureKind, Measured, Run, SideRule, SideWords, Thickness};
use crate::sketch::valued::Values;
use crate::sketch::{Face, Kind, ReferenceSource, TakenFrom};
use crate::units::area::{Area, WrittenArea};
use crate::units::length::{Length, Written};
use rust_decimal::Decimal;
use smol_str::SmolStr;

/// A house whose outlines close, do not cross themselves and do not lie on each other, with all that its file says.
///
/// Cheap to clone: every step made from it holds it.
#[derive(Clone, Debug)]
pub struct House(Arc<Model>);

impl House {
    pub(crate) fn new(model: Model) -> House {
        House(Arc::new(model))
    }

    /// The same house with this figure in the place of its own of the same kind, in square feet.
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

/// What a [`House`] holds.
#[derive(Clone, Debug)]
pub struct Model {
    pub(crate) source: Source,
    pub(crate) particulars: Particulars,
    pub(crate) figures: Vec<PublishedFigure>,
    pub(crate) missing: Vec<Missing>,
    pub(crate) values: Values,
    /// What a person should know of it, in file order.
    pub(crate) warnings: Vec<Diagnostic>,
    pub(crate) levels: Vec<Level>,
    pub(crate) spaces: Vec<Space>,
    pub(crate) lots: Vec<Lot>,
    pub(crate) drawn: Vec<ReferenceOutline>,
    pub(crate) tolerance: Length,
    pub(crate) veneer: Option<Thickness>,
    pub(crate) wall: Option<Length>,
}

/// What stands at the head of every page, and how the house was measured.
#[derive(Clone, Debug, Default)]
pub(crate) struct Particulars {
    pub(crate) property: Option<String>,
    pub(crate) address: Option<String>,
    pub(crate) account: Option<String>,
    pub(crate) case: Option<String>,
    pub(crate) tax_year: Option<u16>,
    pub(crate) measured: Option<Measured>,
    /// Each side is within plus or minus this, as typed; none where the file does not say.
    pub(crate) tolerance: Option<Written>,
    pub(crate) interior_seen: Option<bool>,
    pub(crate) front: Option<Direction>,
    pub(crate) true_north: Option<Bearing>,
}

/// An area that somebody published.
#[derive(Clone, Debug)]
pub(crate) struct PublishedFigure {
    pub(crate) kind: FigureKind,
    pub(crate) area: WrittenArea,
    /// The face it was taken at, where it says so.
    pub(crate) face: Option<Face>,
    /// How its sides were rounded, where it says so.
    pub(crate) sides: Option<SideRule>,
    /// The names of what it counts besides what the rule counts.
    pub(crate) counting: Vec<String>,
    pub(crate) title: Option<String>,
    pub(crate) span: Span,
}

/// What the record lists although it is not there.
#[derive(Clone, Debug)]
pub(crate) struct Missing {
    pub(crate) kind: Kind,
    pub(crate) name: String,
    pub(crate) recorded: WrittenArea,
}

/// A story.
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
    /// Its place among the levels.
    pub(crate) level: usize,
    pub(crate) face: Face,
    pub(crate) veneer: Option<Thickness>,
    /// The space it is taken off, or lies in, by its place among the spaces.
    pub(crate) parent: Option<usize>,
    /// Whether it is counted.
    pub(crate) counted: bool,
    /// Counting it, or not, is the writer's own word and not the rule.
    pub(crate) claimed: bool,
    /// The file says that it stands by itself: its place on the level says nothing.
    pub(crate) by_itself: bool,
    /// Living space that is connected to no other.
    pub(crate) detached: bool,
    /// The ceiling height below which it lies, where the file says it.
    pub(crate) under: Option<Written>,
    pub(crate) recorded: Option<Area>,
    pub(crate) sides: Vec<Side>,
    pub(crate) closed: Closed,
    /// Where its first corner stands on its level, east then north, as measured.
    pub(crate) at: (i64, i64),
    /// How far it reaches on its level.
    pub(crate) extent: Extent,
    pub(crate) span: Span,
}

/// A side of a space.
#[derive(Clone, Debug)]
pub struct Side {
    /// Its number in walking order, from 1.
    pub(crate) number: usize,
    pub(crate) run: Run,
    pub(crate) words: SideWords,
    /// As it stands in the file.
    pub(crate) typed: SmolStr,
    pub(crate) span: Span,
    /// Its direction where it runs along an axis.
    pub(crate) direction: Option<Direction>,
    /// It has no length of its own.
    pub(crate) follows: bool,
}

/// The land.
#[derive(Clone, Debug)]
pub struct Lot {
    pub(crate) name: String,
    pub(crate) recorded: Option<WrittenArea>,
    pub(crate) sides: Vec<Side>,
    pub(crate) closed: Closed,
}

/// Somebody else's outline, which may miss its start.
#[derive(Clone, Debug)]
pub(crate) struct ReferenceOutline {
    pub(crate) drawn: ReferenceSource,
    pub(crate) name: String,
    /// The spaces it is said to be of, by their places: one, or those counted on a level.
    pub(crate) of: Vec<usize>,
    pub(crate) sides: Vec<Side>,
    pub(crate) walk: Traverse,
    /// The outline if it closes to the last nanometer.
    pub(crate) outline: Option<Outline>,
}

impl Model {
    /// The text it was read from.
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// What a person should know of the file, in file order.
    pub fn warnings(&self) -> &[Diagnostic] {
        &self.warnings
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

    /// Whether the space is taken off the one it lies in.
    pub(crate) fn is_taken_off(&self, space: usize) -> bool {
        self.spaces[space].parent.is_some() && self.spaces[space].kind != Kind::Stair
    }

    /// The spaces taken off this one.
    pub(crate) fn taken_off(&self, space: usize) -> impl Iterator<Item = usize> {
        (0..self.spaces.len())
            .filter(move |&i| self.spaces[i].parent == Some(space) && self.is_taken_off(i))
    }

    /// Whether the space is on a level that is below grade, wholly or partly.
    pub(crate) fn is_below_grade(&self, space: usize) -> bool {
        self.levels[self.spaces[space].level].below_grade
    }
}

impl Level {
    /// Its name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Whether it is below grade, wholly or partly.
    pub fn is_below_grade(&self) -> bool {
        self.below_grade
    }
}

impl Space {
    /// Its name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// What it is.
    pub fn kind(&self) -> Kind {
        self.kind
    }

    /// Whether it is counted.
    pub fn is_counted(&self) -> bool {
        self.counted
    }

    /// The face that was measured.
    pub fn face(&self) -> Face {
        self.face
    }

    /// Its outline closed as measured.
    pub fn outline(&self) -> &Outline {
        &self.closed.outline
    }

    /// Its sides in walking order.
    pub fn sides(&self) -> &[Side] {
        &self.sides
    }
}

impl Lot {
    /// Its name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its outline, closed by the compass rule where sides are given by bearings.
    pub fn outline(&self) -> &Outline {
        &self.closed.outline
    }

    /// Its sides in walking order.
    pub fn sides(&self) -> &[Side] {
        &self.sides
    }

    /// The area the record gives it.
    pub fn recorded(&self) -> Option<Area> {
        self.recorded.map(WrittenArea::area)
    }

    /// How its calls close: how far they end from where they began, and the length of all of them for each length of
    /// that, rounded down to three digits. None where they end where they began, or where the last call is computed.
    pub fn closure(&self) -> Option<(Length, i64)> {
        let misses = self.closed.misclosure;
        let vector = Vector { east: misses.east, north: misses.north, rise: 0 };
        let distance = vector.length();
        let run: Length =
            self.closed.walk.sides.iter().map(|side| side.shape.vector().length()).sum();
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

    /// Whether the last call is not measured but computed from the others.
    pub fn last_is_computed(&self) -> bool {
        self.sides.last().is_some_and(|side| side.run == Run::Close)
    }

    /// How far the walk ends north and east of its start, before closing.
    pub fn misclosure(&self) -> (Length, Length) {
        (
            Length::from_nm(self.closed.misclosure.north),
            Length::from_nm(self.closed.misclosure.east),
        )
    }
}

impl Side {
    /// Its number, and as it was typed between backticks: side 3 (`east 30'`).
    pub(crate) fn quoted(&self) -> String {
        format!("side {} ({})", self.number, quoted(&self.typed))
    }

    /// Whether its length as typed is a number and nothing else, with no mark or unit.
    pub(crate) fn is_bare(&self) -> bool {
        is_bare(&self.typed)
    }

    /// Its number in walking order, from 1.
    pub fn number(&self) -> usize {
        self.number
    }

    /// As it stands in the file.
    pub fn typed(&self) -> &str {
        &self.typed
    }

    /// The length the record gives it.
    pub fn recorded(&self) -> Option<Length> {
        self.words.recorded.map(Written::length)
    }

    /// How its length was obtained: `measured`, `closing`, `estimated`, `plan` or `record`.
    pub fn how(&self) -> &'static str {
        match (self.follows, self.words.estimated, self.words.from) {
            (true, ..) => "closing",
            (_, true, _) => "estimated",
            (.., TakenFrom::Plan) => "plan",
            (.., TakenFrom::Record) => "record",
            (.., TakenFrom::Tape) => "measured",
        }
    }

    /// How it runs, in a word: a direction, `diagonal`, `bearing` or `arc`.
    pub fn way(&self) -> &'static str {
        match (self.direction, &self.run) {
            (_, Run::Arc(..)) => "arc",
            (Some(direction), _) => direction.word(),
            (None, Run::Bearing(..)) => "bearing",
            _ => "diagonal",
        }
    }
}

/// Whether a side as typed ends in a number, and no mark or unit stands by it.
pub(crate) fn is_bare(typed: &str) -> bool {
    let is_number = |part: &str| part.parse::<Decimal>().is_ok();
    let mut words = typed.split(' ');
    let _direction = words.next();
    words.next().is_some_and(is_number) && words.next().is_none()
}
