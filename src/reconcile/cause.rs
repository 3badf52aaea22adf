//! Causes: the one or two departures from the rule that could account for a figure.

use crate::house::Face;
use crate::house::House;
use crate::house::Kind;
use crate::house::wall_moves::CommonTaken;
use crate::reconcile::departures::{DepartureKind, Group, LevelTaken};
use crate::reconcile::parts::Shape;
use crate::reconcile::settings::RoundingTaken;
use crate::reconcile::totals::TotalWritten;
use crate::units::length::Length;

/// A possible cause of a figure's gap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Cause {
    /// No departure: the figure's own face and rounding.
    None,
    /// Measured to another face.
    Face(Face),
    /// The walls shared with other dwellings counted whole, or left out.
    Common(CommonTaken),
    /// Rounded differently from the figure's own way.
    Rounding(RoundingTaken),
    /// One or two departures in what is counted or drawn.
    Departures(DepartureKind, Option<DepartureKind>),
    /// A wall misread.
    Misread(MisreadWall),
    /// The total written down wrong or rounded, possibly with one departure before that.
    Total { how: TotalWritten, with: Option<DepartureKind> },
}

/// A wall taken for another length. Sides are given by index.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct MisreadWall {
    pub(crate) space: usize,
    pub(crate) side: usize,
    /// Its length here, as the figure's walls are rounded.
    pub(crate) from: Length,
    /// What it is taken for.
    pub(crate) length: Length,
    /// The side that absorbs the difference, and its length then; `None` if it is spread over several.
    pub(crate) other: Option<(usize, Length)>,
    /// A space on another level with the same walls, of which the same is said.
    pub(crate) also: Option<usize>,
}

impl MisreadWall {
    /// What makes one length readable as the other, if that is plain; lengths in feet only.
    pub(crate) fn slip(self) -> Option<Slip> {
        let feet = |length: Length| length.nm().div_euclid(Length::FOOT.nm());
        let is_whole = |length: Length| length.nm() % Length::FOOT.nm() == 0;
        let (from, length) = (feet(self.from), feet(self.length));
        if !is_whole(self.from) || !is_whole(self.length) {
            return None;
        }
        let swapped = 10 * from.rem_euclid(10) + from.div_euclid(10);
        match length - from {
            _ if (10..100).contains(&from) && length == swapped => Some(Slip::Swapped(from)),
            10 => Some(Slip::TenMore),
            -10 => Some(Slip::TenLess),
            _ => None,
        }
    }

    /// The sides whose lengths change, lowest first, with the lengths.
    pub(crate) fn walls(self) -> Vec<(usize, Length)> {
        let mut walls = vec![(self.side, self.length)];
        walls.extend(self.other);
        walls.sort_unstable_by_key(|(side, _)| *side);
        walls
    }
}

/// How a wall may have been taken for another length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Slip {
    /// The two digits of this many feet exchanged.
    Swapped(i64),
    TenMore,
    TenLess,
}

/// The kind of mistake that a cause is. Some places treat these classes differently when a record is corrected.
#[derive(Clone, Copy, Debug, PartialEq, Eq, strum::IntoStaticStr)]
#[strum(serialize_all = "kebab-case")]
pub enum CauseClass {
    /// A typing error: digits, a sum, a unit.
    Typed,
    /// A wrong description: what exists, what counts, how many levels.
    Described,
    /// A wrong measurement: a wall, a face, rounding.
    Measured,
}

impl CauseClass {
    /// Its word in JSON.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.into()
    }
}

impl Cause {
    /// The kind of mistake it is; `None` if there is no departure.
    pub(crate) fn class(self) -> Option<CauseClass> {
        match self {
            Cause::None => None,
            Cause::Face(_) | Cause::Common(_) | Cause::Rounding(_) | Cause::Misread(_) => {
                Some(CauseClass::Measured)
            }
            Cause::Departures(kind, _) if kind.is_of_parts() => Some(CauseClass::Measured),
            Cause::Departures(..) => Some(CauseClass::Described),
            Cause::Total { .. } => Some(CauseClass::Typed),
        }
    }

    /// The departures it consists of.
    pub(crate) fn departures(self) -> impl Iterator<Item = DepartureKind> {
        let (one, other) = match self {
            Cause::Departures(one, other) => (Some(one), other),
            Cause::Total { with, .. } => (with, None),
            _ => (None, None),
        };
        one.into_iter().chain(other)
    }

    /// What it does with each space: its departures, and of those made together each by itself.
    pub(crate) fn each(self, house: &House) -> Vec<DepartureKind> {
        self.departures().flat_map(|kind| kind.each(house)).collect()
    }

    /// Whether openings or low parts are not deducted, and at most one thing besides.
    pub(crate) fn is_not_deducted(self) -> bool {
        use DepartureKind::{NotDeducted, Together};
        matches!(self, Cause::Departures(NotDeducted { .. } | Together(Group::NotDeducted(_)), _))
    }

    /// Whether it is how a level was counted.
    pub(crate) fn is_of_a_level(self) -> bool {
        self.departures().any(|one| matches!(one, DepartureKind::Level { .. }))
    }

    /// Whether two causes with the same effect are the same to a reader: a level and its only space, everything under
    /// the roof and the only space there, an opening not deducted and its level taken at the whole outline below, a
    /// recess at either of its corners or the porch in it, two walls of one outline that are misread, or a total
    /// rounded to 50 or to 100.
    pub(crate) fn says_the_same(self, other: Cause) -> bool {
        use DepartureKind::{
            Counted, LeftOut, Level, LevelLeftOut, NotDeducted, Part, Together, UnderRoof,
        };
        if let (Cause::Misread(one), Cause::Misread(two)) = (self, other) {
            return one.space == two.space && one.also == two.also;
        }
        if self.is_rounded_total() && other.is_rounded_total() {
            return true;
        }
        let (one, two) = match (self, other) {
            (Cause::Departures(one, None), Cause::Departures(two, None)) => (one, two),
            // Two low parts, or openings, not deducted leave their level as large as the one below; two spaces are all that
            // is under the roof.
            (one, Cause::Departures(a, Some(b))) | (Cause::Departures(a, Some(b)), one)
                if one.is_alone() =>
            {
                let alone = |kind| Cause::Departures(kind, None);
                return one.is_said_by_both()
                    && one.says_the_same(alone(a))
                    && one.says_the_same(alone(b));
            }
            // Of two pairs, each departure of one is or says the same as one of the other.
            (Cause::Departures(a, Some(b)), Cause::Departures(c, Some(d))) => {
                let alone = |kind| Cause::Departures(kind, None);
                let same =
                    |a: DepartureKind, b: DepartureKind| a == b || alone(a).says_the_same(alone(b));
                return same(a, c) && same(b, d) || same(a, d) && same(b, c);
            }
            _ => return false,
        };
        match (one, two) {
            (UnderRoof, Counted { .. }) | (Counted { .. }, UnderRoof) => true,
            (
                NotDeducted { .. } | Together(Group::NotDeducted(_)),
                Level { how: LevelTaken::WholeBelow, .. },
            )
            | (
                Level { how: LevelTaken::WholeBelow, .. },
                NotDeducted { .. } | Together(Group::NotDeducted(_)),
            ) => true,
            (LeftOut { .. }, LevelLeftOut { .. }) | (LevelLeftOut { .. }, LeftOut { .. }) => true,
            (Part { space: a, part: one }, Part { space: b, part: two }) => {
                a == b
                    && one.is_beside(two)
                    && (one.shape == Shape::Overlap) == (two.shape == Shape::Overlap)
            }
            _ => self.lies_in_a_recess(other),
        }
    }

    /// Whether it is one departure alone.
    fn is_alone(self) -> bool {
        matches!(self, Cause::Departures(_, None))
    }

    /// Whether it is a departure of several spaces, which two of a pair can be.
    fn is_said_by_both(self) -> bool {
        use DepartureKind::{Level, UnderRoof};
        matches!(
            self,
            Cause::Departures(UnderRoof | Level { how: LevelTaken::WholeBelow, .. }, None)
        )
    }

    fn is_rounded_total(self) -> bool {
        use TotalWritten::{RoundedTo10, RoundedTo50, RoundedTo100};
        matches!(self, Cause::Total { how: RoundedTo10 | RoundedTo50 | RoundedTo100, with: None })
    }

    /// Whether one counts a space and the other fills in a recess; that is the case of a porch in the recess.
    pub(crate) fn lies_in_a_recess(self, other: Cause) -> bool {
        use DepartureKind::{Counted, Part};
        match (self, other) {
            (
                Cause::Departures(Part { part, .. }, None),
                Cause::Departures(Counted { .. }, None),
            )
            | (
                Cause::Departures(Counted { .. }, None),
                Cause::Departures(Part { part, .. }, None),
            ) => matches!(part.shape, Shape::Recess | Shape::BoxedBay),
            _ => false,
        }
    }

    /// Its labels in JSON.
    pub(crate) fn labels(self, house: &House) -> Vec<String> {
        let mut labels = Vec::new();
        match self {
            Cause::None | Cause::Departures(..) => {}
            Cause::Face(face) => labels.push(format!("face: {}", face.word())),
            Cause::Common(CommonTaken::LeftOut) => labels.push("common walls: left out".to_owned()),
            Cause::Common(_) => labels.push("common walls: whole".to_owned()),
            Cause::Rounding(rounding) => labels.push(format!("rounding: {}", rounding.label())),
            Cause::Misread(MisreadWall { space, side, also, .. }) => {
                let all = [Some(space), also].into_iter().flatten();
                labels.extend(all.map(|space| {
                    format!("misread: {} side {}", house.spaces[space].name, side + 1)
                }));
            }
            Cause::Total { how, .. } => labels.push(format!("total: {}", how.label())),
        }
        labels.extend(self.each(house).into_iter().map(|kind| kind.label(house)));
        labels
    }
}

impl RoundingTaken {
    /// Its label in JSON.
    pub(crate) const fn label(self) -> &'static str {
        match self {
            RoundingTaken::AlwaysUp => "always up",
            RoundingTaken::AlwaysDown => "always down",
            RoundingTaken::OtherHalves => "ties down",
            RoundingTaken::HalfFoot => "half foot",
            RoundingTaken::NotRounded => "not rounded",
            RoundingTaken::WholeFoot => "whole foot",
        }
    }
}

impl TotalWritten {
    /// Its label in JSON.
    pub(crate) const fn label(self) -> &'static str {
        match self {
            TotalWritten::Swapped => "digits swapped",
            TotalWritten::OneDigit => "one digit",
            TotalWritten::TenTimes => "ten times",
            TotalWritten::Tenth => "a tenth",
            TotalWritten::RoundedTo10 => "rounded to 10",
            TotalWritten::RoundedTo50 => "rounded to 50",
            TotalWritten::RoundedTo100 => "rounded to 100",
            TotalWritten::Twice => "twice",
            TotalWritten::SquareMeters => "square metres", // the label of the JSON format, spelled as it was published
        }
    }
}

impl DepartureKind {
    /// Its label in JSON: `counted: Garage`.
    pub(crate) fn label(self, house: &House) -> String {
        let name = |space: usize| house.spaces[space].name.as_str();
        let level_name = |level: usize| house.levels[level].name.as_str();
        match self {
            DepartureKind::Counted { space } | DepartureKind::CountedAsListed { space } => {
                format!("counted: {}", name(space))
            }
            DepartureKind::MissingCounted { missing } => {
                format!("counted: {}", house.missing[missing].name)
            }
            DepartureKind::LeftOut { space } => format!("left out: {}", name(space)),
            DepartureKind::LevelLeftOut { level } => format!("left out: {}", level_name(level)),
            DepartureKind::CountedTwice { space } => format!("counted twice: {}", name(space)),
            DepartureKind::NotDeducted { space } => format!("not deducted: {}", name(space)),
            DepartureKind::Deducted { space } => format!("deducted: {}", name(space)),
            DepartureKind::DeductedTwice { space } => format!("deducted twice: {}", name(space)),
            DepartureKind::Level { level, how } => {
                let how = match how {
                    LevelTaken::WholeBelow => "at the whole outline below",
                    LevelTaken::ThreeQuartersBelow => "at three quarters of the outline below",
                    LevelTaken::HalfBelow => "at half the outline below",
                    LevelTaken::Twice => "twice",
                };
                format!("level: {} {how}", level_name(level))
            }
            DepartureKind::UnderRoof => "under roof".to_owned(),
            // Each has its own label; this is no key of JSON.
            DepartureKind::Together(group) => match group {
                Group::LivingBelow { level } | Group::AllBelow { level } => {
                    format!("counted: {}", level_name(level))
                }
                Group::NotDeducted(Kind::Low) => "not deducted: low parts".to_owned(),
                Group::NotDeducted(_) => "not deducted: openings".to_owned(),
                Group::AllBut { space } => format!("only counted: {}", name(space)),
                Group::Parts { space, .. } => format!("without its parts: {}", name(space)),
            },
            DepartureKind::Part { space, part } => {
                let how = match part.shape {
                    Shape::Overlap => "counted twice",
                    shape if shape.fills_in() => "filled in",
                    _ => "left off",
                };
                format!("{how}: {} side {}", name(space), part.side + 1)
            }
        }
    }
}
