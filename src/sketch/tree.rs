//! The assembled contents of a sides file: levels with their spaces, and spaces with their walks.

use std::fmt;
use std::num::NonZeroU32;
use std::sync::Arc;

use smol_str::SmolStr;

use crate::diagnostic::Span;
use crate::geometry::compass::Direction;
use crate::sketch::statement::*;
use crate::sketch::value_statement::StatedValues;
use crate::units::length::{Length, WrittenLength};

/// The contents of a sides file, in file order. Its outlines are not yet checked.
#[derive(Clone, Debug, Default)]
pub struct Sketch {
    pub(crate) lines: Vec<Line>,
    pub(crate) heads: Heads,
    pub(crate) figures: Vec<FigureSketch>,
    pub(crate) missing: Vec<MissingStatement>,
    pub(crate) levels: Vec<LevelSketch>,
    pub(crate) lots: Vec<SpaceSketch>,
    pub(crate) outlines: Vec<OutlineSketch>,
    /// Statements about values, taxes, dates and sales.
    pub(crate) values: StatedValues,
    /// Whether a line that names a space could not be read.
    pub(crate) names_doubtful: bool,
    /// Whether the text has a word for meters anywhere.
    pub(crate) names_meters: bool,
    /// Whether a line that states a tolerance, a unit, a face or a thickness could not be read.
    pub(crate) heads_doubtful: bool,
}

/// One line of the file.
#[derive(Clone, Debug, Default)]
pub(crate) struct Line {
    pub(crate) statement: Option<Statement>,
    pub(crate) comment: Option<String>,
}

/// The statements about the whole file.
#[derive(Clone, Debug, Default)]
pub(crate) struct Heads {
    pub(crate) property: Option<String>,
    pub(crate) address: Option<String>,
    pub(crate) account: Option<String>,
    pub(crate) case: Option<String>,
    pub(crate) tax_year: Option<u16>,
    pub(crate) tax_year_span: Span,
    pub(crate) measured: Option<Measured>,
    pub(crate) tolerance: Option<WrittenLength>,
    pub(crate) tolerance_span: Span,
    pub(crate) interior_seen: Option<bool>,
    pub(crate) units: Option<Unit>,
    pub(crate) faces: Option<Face>,
    pub(crate) front: Option<Direction>,
    pub(crate) true_north: Option<Bearing>,
    pub(crate) veneer: Option<Thickness>,
    pub(crate) wall: Option<WrittenLength>,
}

impl Heads {
    /// The tolerance of each side, plus or minus: 1/2 in if the file states none.
    pub(crate) fn tolerance(&self) -> Length {
        self.tolerance.map_or(Length::from_nm(12_700_000), WrittenLength::length)
    }
}

/// A published figure with its span.
#[derive(Clone, Debug)]
pub(crate) struct FigureSketch {
    pub(crate) figure: FigureStatement,
    pub(crate) span: Span,
}

/// A level with its spaces.
#[derive(Clone, Debug)]
pub(crate) struct LevelSketch {
    pub(crate) level: LevelStatement,
    pub(crate) spaces: Vec<SpaceSketch>,
    /// Whether an error on the level makes its names and positions unreliable.
    pub(crate) doubtful: bool,
}

/// A space or lot with its walk.
#[derive(Clone, Debug)]
pub(crate) struct SpaceSketch {
    pub(crate) space: SpaceStatement,
    pub(crate) span: Span,
    pub(crate) walk: WalkSketch,
}

/// An outline from a record, a plan or a map, with its walk.
#[derive(Clone, Debug)]
pub(crate) struct OutlineSketch {
    pub(crate) drawn: ReferenceSource,
    pub(crate) name: Named,
    pub(crate) of: Option<Named>,
    pub(crate) span: Span,
    pub(crate) walk: WalkSketch,
}

/// Sides in walking order, with the corners named on the way and the taped checks.
#[derive(Clone, Debug, Default)]
pub(crate) struct WalkSketch {
    /// Shared with the house.
    pub(crate) sides: Arc<Vec<Side>>,
    /// Whether each is only a direction and a length with the mark of its unit.
    pub(crate) is_plain: bool,
    pub(crate) corners: Vec<CornerSketch>,
    pub(crate) bays: Vec<BaySketch>,
    pub(crate) overalls: Vec<(Direction, WrittenLength, Span)>,
    pub(crate) ties: Vec<(CornerRef, CornerRef, WrittenLength, Span)>,
    /// How many of its walls a comment calls those of a garage.
    pub(crate) garage_comments: usize,
    /// Whether an error in it means that its closure cannot be checked.
    pub(crate) doubtful: bool,
}

/// The number of a side in walking order, from 1, as shown in reports, on pages and in JSON.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SideNumber(NonZeroU32);

impl SideNumber {
    /// The number of the side at this index, from 0.
    #[expect(clippy::cast_possible_truncation, reason = "a file has a megabyte at most")]
    pub(crate) const fn at(index: usize) -> SideNumber {
        SideNumber(NonZeroU32::MIN.saturating_add(index as u32))
    }

    /// The number, from 1.
    #[must_use]
    pub const fn get(self) -> usize {
        self.0.get() as usize
    }

    /// Its index among the sides, from 0.
    pub(crate) const fn index(self) -> usize {
        self.get() - 1
    }
}

impl fmt::Display for SideNumber {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// A side of a space, of a lot or of another outline.
#[derive(Clone, Debug)]
pub struct Side {
    /// Its number in walking order, from 1.
    pub(crate) number: SideNumber,
    pub(crate) run: Run,
    pub(crate) words: SideWords,
    /// The side as typed in the file, with single spaces.
    pub(crate) typed: SmolStr,
    /// The side itself, without the words after it.
    pub(crate) span: Span,
    /// Its direction; `None` if it does not run along an axis.
    pub(crate) direction: Option<Direction>,
    /// Whether its length was not typed and follows from the other sides.
    pub(crate) follows: bool,
}

impl Side {
    /// A side as typed; `index` is how many sides come before it.
    #[inline(always)]
    pub(crate) fn new(
        index: usize,
        run: Run,
        words: SideWords,
        span: Span,
        typed: SmolStr,
    ) -> Side {
        let direction = match run {
            Run::Straight(direction, _) | Run::ByClosing(direction) | Run::Arc(direction, ..) => {
                Some(direction)
            }
            _ => None,
        };
        let follows = matches!(run, Run::ByClosing(_));
        Side { number: SideNumber::at(index), run, words, typed, span, direction, follows }
    }
}

/// A bay as one line; its sides are among those of the walk.
#[derive(Clone, Debug)]
pub(crate) struct BaySketch {
    pub(crate) bay: Bay,
    /// How many sides come before it.
    pub(crate) first: usize,
}

impl BaySketch {
    /// How many sides it stands for.
    pub(crate) fn count(&self) -> usize {
        match self.bay.front {
            BayFront::Round => 1,
            BayFront::Flat(_) => 3,
        }
    }
}

/// A named corner.
#[derive(Clone, Debug)]
pub(crate) struct CornerSketch {
    pub(crate) name: Named,
    /// How many sides come before it.
    pub(crate) after: usize,
}

impl Sketch {
    /// The places where the name of a space, or of a missing one, is typed.
    pub(crate) fn places_of<'a>(&'a self, name: &'a Named) -> impl Iterator<Item = Span> + 'a {
        let spaces = self.levels.iter().flat_map(|level| &level.spaces);
        let spaces = spaces.map(|space| &space.space.name);
        let all = spaces.chain(self.missing.iter().map(|missing| &missing.name));
        all.filter(move |other| *other == name).map(|other| other.span)
    }

    /// Whether both files mean the same, apart from spelling, spacing and blank lines.
    #[must_use]
    pub fn says_the_same_as(&self, other: &Sketch) -> bool {
        fn said(sketch: &Sketch) -> impl Iterator<Item = (Option<&Statement>, Option<&str>)> {
            let lines = sketch.lines.iter();
            lines
                .map(|line| (line.statement.as_ref(), line.comment.as_deref()))
                .filter(|line| *line != (None, None))
        }
        said(self).eq(said(other))
    }
}

/// The text with single spaces between its words.
pub(super) fn evened_out(text: &str) -> SmolStr {
    let bytes = text.as_bytes();
    let is_even = bytes.iter().all(|byte| matches!(byte, b' '..=b'~'))
        && !bytes.windows(2).any(|two| two == b"  ");
    if is_even {
        return text.into();
    }
    text.split_whitespace().collect::<Vec<&str>>().join(" ").into()
}
