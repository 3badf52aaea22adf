//! The statements of a sides file, one per line, as they were written.

use std::ops::Deref;

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::diagnostic::Span;
use crate::geometry::compass::Direction;
pub(crate) use crate::sketch::named::Named;
use crate::sketch::value_statement::Valued;
use crate::units::area::WrittenArea;
use crate::units::length::{Form, Step, WrittenLength};

/// The surface that was measured to.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, Hash, strum::EnumCount, strum::IntoStaticStr,
)]
#[strum(serialize_all = "kebab-case")]
pub enum Face {
    /// The outer face of brick, stone, stucco or siding.
    #[default]
    Outside,
    /// The outer face of the structural wall.
    Frame,
    /// The inner finish.
    Inside,
}

impl Face {
    /// Its word in the sides file.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.into()
    }
}

/// The kind of a space.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, strum::IntoStaticStr, strum::VariantArray)]
#[strum(serialize_all = "kebab-case")]
#[expect(missing_docs, reason = "each is a word of the sides file")]
pub enum Kind {
    Living,
    Unfinished,
    Garage,
    Carport,
    Porch,
    Patio,
    Deck,
    Balcony,
    Breezeway,
    Storage,
    Outbuilding,
    /// Open to the floor below.
    Open,
    /// Under a ceiling too low to count.
    Low,
    Stair,
    /// A court: an outdoor area enclosed by the house.
    Court,
}

impl Kind {
    /// Every kind.
    pub const ALL: &'static [Kind] = <Kind as strum::VariantArray>::VARIANTS;

    /// Its word in the sides file.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.into()
    }

    /// Whether it is part of the space it lies in, instead of a space beside it.
    #[must_use]
    pub const fn lies_in_another(self) -> bool {
        matches!(self, Kind::Open | Kind::Low | Kind::Stair | Kind::Court)
    }

    /// Whether it has walls, which can have a veneer.
    #[must_use]
    pub const fn has_walls(self) -> bool {
        matches!(
            self,
            Kind::Living | Kind::Unfinished | Kind::Garage | Kind::Storage | Kind::Outbuilding
        )
    }
}

/// A corner's number as typed, from 1, with its span.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Numbered {
    pub(crate) number: usize,
    pub(crate) span: Span,
}

impl PartialEq for Numbered {
    /// Compares only the number, not the span.
    fn eq(&self, other: &Numbered) -> bool {
        self.number == other.number
    }
}

/// The thickness of a veneer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Thickness {
    /// `none`: there is no veneer.
    None,
    /// A length.
    Of(WrittenLength),
}

/// A quadrant bearing, exactly as typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Bearing {
    pub(crate) from: Direction,
    pub(crate) degrees: Decimal,
    pub(crate) minutes: Option<Decimal>,
    pub(crate) seconds: Option<Decimal>,
    pub(crate) toward: Direction,
}

impl Bearing {
    /// The unit vector along the bearing: east, then north.
    #[expect(
        clippy::float_arithmetic,
        reason = "a bearing is an angle; its sides are computed in floats"
    )]
    pub(crate) fn unit_vector(self) -> (f64, f64) {
        let part = |value: Option<Decimal>| value.and_then(|v| v.to_f64()).unwrap_or(0.0);
        let degrees =
            part(Some(self.degrees)) + part(self.minutes) / 60.0 + part(self.seconds) / 3600.0;
        let angle = degrees.to_radians();
        let sign = |direction: Direction| if direction.sign() < 0 { -1.0 } else { 1.0 };
        (sign(self.toward) * libm::sin(angle), sign(self.from) * libm::cos(angle))
    }
}

/// The source of a published figure.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum FigureKind {
    /// The appraisal record.
    Record,
    /// A listing.
    Listing,
    /// A plan.
    Plan,
    /// Any other source, by name.
    Other(Named),
}

/// How the sides of a published figure were rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum SideRule {
    /// To this step.
    Step(Step),
    /// Not known.
    Unknown,
}

/// What a figure says about how it was computed: its face and how its sides were rounded.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Basis {
    pub(crate) face: Option<Face>,
    pub(crate) sides: Option<SideRule>,
    pub(crate) counting: Vec<Named>,
}

/// A published figure.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct FigureStatement {
    pub(crate) kind: FigureKind,
    pub(crate) area: WrittenArea,
    pub(crate) basis: Basis,
    pub(crate) title: Option<String>,
}

/// The unit of numbers without a unit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, strum::IntoStaticStr)]
#[strum(serialize_all = "kebab-case")]
#[expect(missing_docs, reason = "each is a word of the sides file")]
pub enum Unit {
    #[default]
    Feet,
    Inches,
    Meters,
    Centimeters,
    Millimeters,
}

impl Unit {
    /// Its word in the sides file.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.into()
    }
}

/// A statement about the whole file.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Head {
    /// `property`, `address`, `account`, `case`
    Line(HeadLine, String),
    /// `tax year 2026`
    TaxYear(u16),
    /// `measured 2026-03-07 by "the owner" with "laser meter"`
    Measured(Measured),
    /// `tolerance 1/4"`
    Tolerance(WrittenLength),
    /// `interior seen`
    Interior(bool),
    /// `units meters`
    Units(Unit),
    /// `faces frame`
    Faces(Face),
    /// `front south`
    Front(Direction),
    /// `true north N 4° E`
    TrueNorth(Bearing),
    /// `veneer 4 5/8"`
    Veneer(Thickness),
    /// `wall 6"`
    Wall(WrittenLength),
}

impl Head {
    /// The words it begins with.
    pub(crate) fn word(&self) -> &'static str {
        match self {
            Head::Line(line, _) => line.word(),
            Head::TaxYear(_) => "tax year",
            Head::Measured(_) => "measured",
            Head::Tolerance(_) => "tolerance",
            Head::Interior(_) => "interior",
            Head::Units(_) => "units",
            Head::Faces(_) => "faces",
            Head::Front(_) => "front",
            Head::TrueNorth(_) => "true north",
            Head::Veneer(_) => "veneer",
            Head::Wall(_) => "wall",
        }
    }
}

/// A text for the head of every page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, strum::IntoStaticStr)]
#[strum(serialize_all = "kebab-case")]
pub(crate) enum HeadLine {
    Property,
    Address,
    Account,
    Case,
}

impl HeadLine {
    /// Its word in the sides file.
    pub(crate) fn word(self) -> &'static str {
        self.into()
    }
}

/// When, by whom and with what the sides were measured.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Measured {
    pub(crate) date: jiff::civil::Date,
    pub(crate) by: Option<String>,
    pub(crate) with: Option<String>,
}

/// Where a space begins on its level.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) enum Place {
    /// At the level's origin, because nothing else was stated.
    #[default]
    Origin,
    /// At this offset from the origin.
    Start(Vec<(Direction, WrittenLength)>),
    /// At a named corner.
    Corner(Named),
    /// At a numbered corner of a space.
    CornerOf(Named, Numbered),
}

/// A level.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct LevelStatement {
    pub(crate) name: Named,
    pub(crate) below_grade: bool,
    pub(crate) beside: bool,
}

/// A space on a level.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct SpaceStatement {
    pub(crate) kind: Kind,
    pub(crate) name: Named,
    pub(crate) face: Option<Face>,
    pub(crate) within: Option<Named>,
    pub(crate) place: Place,
    /// Whether it is marked `detached`, so that its position on the level is ignored.
    pub(crate) detached: bool,
    /// The ceiling height that a `low` space is under.
    pub(crate) under: Option<WrittenLength>,
    pub(crate) veneer: Option<Thickness>,
    pub(crate) counted: Option<bool>,
    pub(crate) recorded: Option<WrittenArea>,
}

/// The source of a reference outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq, strum::IntoStaticStr)]
#[strum(serialize_all = "kebab-case")]
pub enum ReferenceSource {
    /// The record's own sketch.
    Record,
    /// The plan.
    Plan,
    /// A map: usually the outline of the roof.
    Map,
}

impl ReferenceSource {
    /// Its word in the sides file.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.into()
    }
}

/// How a side runs.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Run {
    /// `north 42' 7"`
    Straight(Direction, WrittenLength),
    /// `north by closing`
    ByClosing(Direction),
    /// `diagonal north 3' east 3'`
    Diagonal((Direction, WrittenLength), (Direction, WrittenLength)),
    /// `bearing N 45° E 4' 3"`
    Bearing(Box<Bearing>, WrittenLength),
    /// `arc east 8' rise 2' south`
    Arc(Direction, WrittenLength, WrittenLength, Direction),
    /// `close`
    Close,
}

impl Run {
    /// The form its length was written in; `None` if it has no typed length.
    pub(crate) fn form(&self) -> Option<Form> {
        match self {
            Run::Straight(_, written)
            | Run::Diagonal((_, written), _)
            | Run::Bearing(_, written)
            | Run::Arc(_, written, ..) => Some(written.form()),
            Run::ByClosing(_) | Run::Close => None,
        }
    }
}

/// The notation of most sides; of two equally common ones, the one that comes first.
pub(crate) fn usual_form<'a>(runs: impl Iterator<Item = &'a Run>) -> Form {
    let mut counts: Vec<(Form, usize)> = Vec::new();
    for form in runs.filter_map(Run::form) {
        match counts.iter_mut().find(|(other, _)| *other == form) {
            Some((_, count)) => *count += 1,
            None => counts.push((form, 1)),
        }
    }
    let most = counts.into_iter().rev().max_by_key(|(_, count)| *count);
    most.map_or(Form::FeetAndInches, |(form, _)| form)
}

/// A bay in a wall: its width along the wall, how far it projects, and its front.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Bay {
    /// The direction of the wall.
    pub(crate) direction: Direction,
    pub(crate) width: WrittenLength,
    pub(crate) out: WrittenLength,
    pub(crate) front: BayFront,
}

/// The front of a bay.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum BayFront {
    /// `flat 4'`: an angled bay with a flat front this wide.
    Flat(WrittenLength),
    /// `round`: an arc over the whole width.
    Round,
}

/// Where a length was taken from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TakenFrom {
    /// Taped.
    #[default]
    Tape,
    /// `from plan`
    Plan,
    /// `from record`
    Record,
}

/// The words after a side. Most sides have none, and then this takes no extra memory.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct SideWords(Option<Box<Said>>);

impl SideWords {
    /// Whether the side has no words.
    pub(crate) fn are_none(&self) -> bool {
        self.0.is_none()
    }
}

impl Deref for SideWords {
    type Target = Said;

    fn deref(&self) -> &Said {
        self.0.as_deref().unwrap_or(&Said::NOTHING)
    }
}

impl From<Said> for SideWords {
    fn from(said: Said) -> SideWords {
        SideWords((said != Said::NOTHING).then(|| Box::new(said)))
    }
}

/// The words after a side, as values.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Said {
    pub(crate) recorded: Option<WrittenLength>,
    pub(crate) tolerance: Option<WrittenLength>,
    pub(crate) estimated: bool,
    pub(crate) from: TakenFrom,
    pub(crate) common: bool,
    pub(crate) veneer: Option<Thickness>,
    /// The thickness of this wall; for a common wall, its whole thickness.
    pub(crate) wall: Option<WrittenLength>,
    pub(crate) photo: Option<String>,
    /// The picture file of the photo, beside the sides file.
    pub(crate) photo_file: Option<Named>,
    pub(crate) note: Option<String>,
}

impl Said {
    const NOTHING: Said = Said {
        recorded: None,
        tolerance: None,
        estimated: false,
        from: TakenFrom::Tape,
        common: false,
        veneer: None,
        wall: None,
        photo: None,
        photo_file: None,
        note: None,
    };
}

/// A corner by number or name.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum CornerRef {
    /// `corner 3`
    Number(usize),
    /// `corner "porch"`
    Name(String),
}

/// Something the record lists that was not found on site.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct MissingStatement {
    pub(crate) kind: Kind,
    pub(crate) name: Named,
    pub(crate) recorded: WrittenArea,
}

/// A lot: the land.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct LotStatement {
    pub(crate) name: Named,
    pub(crate) recorded: Option<WrittenArea>,
}

/// An outline from a record, a plan or a map.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct OutlineStatement {
    pub(crate) drawn: ReferenceSource,
    pub(crate) name: Named,
    pub(crate) of: Option<Named>,
}

/// One statement. Rare kinds are boxed, so that the many sides stay small.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Statement {
    Head(Box<Head>),
    Figure(Box<FigureStatement>),
    Missing(Box<MissingStatement>),
    Level(LevelStatement),
    Space(Box<SpaceStatement>),
    Lot(Box<LotStatement>),
    Outline(Box<OutlineStatement>),
    Valued(Box<Valued>),
    Side(Run, SideWords),
    Bay(Box<Bay>, SideWords),
    Corner(Named),
    Overall(Direction, WrittenLength),
    Tie(CornerRef, CornerRef, WrittenLength),
}
