//! What a page or a report opens with: each figure beside the measured area, cautions, how the area was obtained.

use std::collections::HashSet;

use crate::diagnostic::Word;
use crate::diagnostic::words;
use crate::house::{Face, LengthSource, SideRule};
use crate::reconcile::{BridgeStep, Figure, Line, Reconciliation};
use crate::units::area::Area;
use crate::units::decimal::thousands;
use crate::units::length::Step;
use crate::wording::request::how_closely;
use crate::wording::sentences::{LARGER_IN_FEET, SMALLER_RECORD, Sentences, capital, the};
use crate::wording::size::{Units, is_beyond, number_or_size, percent_apart, size_apart};

impl Sentences<'_> {
    /// The main sentence for each figure, or for the measured area if there is no figure.
    pub(crate) fn statements(&self, figures: &[Figure]) -> Vec<String> {
        if figures.is_empty() && !self.house.spaces.is_empty() {
            let known = opening(self.obtained(), Face::Outside);
            let step = match self.is_rounded_beyond() {
                true => format!(", {}", self.settings.fine.spoken()),
                false => String::new(),
            };
            let colon = if known.contains(',') { ":" } else { "" };
            let size = self.size(self.areas.gross().tenth_foot());
            return vec![format!("{known}{colon} {size}{step}.")];
        }
        let statement = |figure: &Figure| {
            let step = self.own_step(figure).or_else(|| self.step_beyond(figure));
            let below = self.below_beside(figure);
            statement(figure, self.obtained(), below, step, self.units_of(figure))
        };
        figures.iter().map(statement).collect()
    }

    /// The area below grade that the statement about a figure gives beside the area above it: only for the office, and for
    /// a record that says nothing else. It is not in the record's total, or is what the difference is about.
    pub(super) fn below_beside(&self, figure: &Figure) -> Option<Area> {
        let is_plain = figure.is_record()
            && figure.face() == Face::Outside
            && figure.line(BridgeStep::Counting).is_none_or(Line::is_supported);
        let below = self.areas.below_grade().filter(|_| self.is_for_the_office() && is_plain);
        below.map(|below| below.tenth_foot())
    }

    /// The units of sentences about a figure: its own comes first.
    pub(crate) fn units_of(&self, figure: &Figure) -> Units {
        Units::beside(figure.typed(), self.is_metric())
    }

    /// Whether rounding each wall leads further than the ± that is printed with the area before any rounding. The headline
    /// then says that its walls are rounded.
    pub(super) fn is_rounded_beyond(&self) -> bool {
        let gross = self.areas.gross();
        let (exact, rounded) = (gross.outside(), gross.tenth_foot());
        self.only_from_a_plan().is_none()
            && is_beyond(exact, rounded, gross.plus_minus_outside(), self.is_metric())
    }

    /// What each wall is rounded to, if that takes the area compared with a figure further than the printed ±: `each wall
    /// to a tenth of a foot`.
    fn step_beyond(&self, figure: &Figure) -> Option<&'static str> {
        let is_gross = figure.measured_like_figure() == self.areas.gross().tenth_foot();
        (is_gross && self.is_rounded_beyond()).then(|| self.settings.fine.spoken())
    }

    /// What the house's walls are rounded to for a figure that states a fine step other than the usual one: `each wall
    /// to the inch`.
    pub(crate) fn own_step(&self, figure: &Figure) -> Option<&'static str> {
        match figure.side_rule() {
            SideRule::Step(step @ (Step::Inch | Step::TenthFoot))
                if figure.says_rule() && step != self.settings.fine.step() =>
            {
                Some(step.spoken())
            }
            _ => None,
        }
    }

    /// Says that a listing repeats the record's figure and so adds nothing; `None` if it also equals the measured
    /// area.
    pub(crate) fn repeated(&self, figures: &[Figure]) -> Option<String> {
        crate::reconcile::listing_repeats_record(figures)
            .then(|| "The listing repeats the record's figure.".to_owned())
    }

    /// Warns of walls that may be missing. They affect every figure, so this comes first.
    pub(crate) fn missing_walls(&self, reconciliation: &Reconciliation) -> Vec<String> {
        let is_missing = |warning: &&crate::diagnostic::Diagnostic| warning.word() == Word::NoTurn;
        let sentence = |warning: &crate::diagnostic::Diagnostic| {
            let line = self.house.source().line(warning.span().start);
            format!(
                "Line {line}: {}. Is a wall missing between the two? The side given by closing would hide that, and the areas below would be wrong.",
                warning.message().replace('`', "\"")
            )
        };
        reconciliation.warnings().iter().filter(is_missing).map(sentence).collect()
    }

    /// Whether a record agrees with its own sketch or lengths; `None` if it has neither.
    pub(crate) fn own_sketch(&self, figure: &Figure) -> Option<String> {
        let own = figure.own_sketch()?;
        let apart = own.whole_sq_ft() - figure.area().whole_sq_ft();
        let drawn = figure.own_sketch_as_drawn().filter(|drawn| *drawn != own);
        let name = capital(&the(figure));
        let is_drawn = |drawn: &crate::house::ReferenceOutline| figure.is_of(drawn.drawn);
        let is_drawn = self.house.drawn.iter().any(is_drawn);
        let (own_sides, give) =
            if is_drawn { ("sketch", "its sides come") } else { ("lengths", "they come") };
        // What the figure counts beyond them is not on its sketch.
        let counting = figure.line(BridgeStep::Counting).filter(|line| !line.is_supported());
        let counted = counting.map(|line| words::all_named(line.counted()));
        let give = match &counted {
            Some(counted) => {
                let whose = give.trim_end_matches(" come");
                format!("{whose} and {counted} as measured here come")
            }
            None => give.to_owned(),
        };
        let given = match &counted {
            Some(counted) => format!("{own_sides} and {counted} as measured here come"),
            None if is_drawn => "sketch comes".to_owned(),
            None => "lengths come".to_owned(),
        };
        Some(match (apart, drawn) {
            (0, None) if figure.takes_nothing_off() => {
                format!("{name}'s own {own_sides} and its total agree, with nothing deducted.")
            }
            (0, _) => format!("{name}'s own {own_sides} and its total agree."),
            (_, Some(drawn)) => format!(
                "{name}'s own {own_sides} and its total do not agree: {give} to {}, or {} less what is deducted here; its total is {}.",
                self.size(drawn),
                number_or_size(own, self.is_metric()),
                self.size(figure.area())
            ),
            _ => format!(
                "{name}'s own {given} to {} and its total is {}: a difference of {}.",
                self.size(own),
                self.size(figure.area()),
                size_apart(own, figure.area(), self.is_metric())
            ),
        })
    }

    /// The name of the total above grade.
    pub(crate) fn gross_name(&self) -> &'static str {
        match self.house.particulars.interior_seen {
            // Without the height below which ceilings count as low, what was seen does not settle what is living area.
            Some(true) if self.low_without_a_height().is_none() => {
                "Gross living area, outside measure"
            }
            _ => "Gross area, outside measure",
        }
    }

    /// The same with the walls that are not measured to their outside, and why it is not called living area.
    pub(crate) fn gross_at(&self) -> String {
        let seen = match self.house.particulars.interior_seen {
            Some(true) => "",
            _ => " (interior not inspected)",
        };
        format!("{}{}{seen}", self.gross_name(), self.shared_walls())
    }

    /// Where the walls that are not measured to their outside are measured to, to follow "outside"; empty if there are none.
    pub(super) fn shared_walls(&self) -> &'static str {
        let counted = self.house.spaces.iter().filter(|space| space.counted);
        let shared = counted.flat_map(|space| space.sides.iter()).any(|side| side.words.common);
        if shared { ", shared walls to their centerline" } else { "" }
    }

    /// A warning about an unlikely size, shown wherever the house's figures are.
    pub(crate) fn unlikely_size(&self) -> Option<String> {
        let warnings = self.house.warnings().iter();
        let mut sizes = warnings.filter(|warning| warning.word() == Word::UnlikelySize);
        sizes.next().map(|warning| {
            format!("Check the lengths and their units: {}.", warning.message().replace('`', "\""))
        })
    }

    /// The caution to print first if the record is smaller than the house.
    pub(crate) fn caution(&self, figures: &[Figure]) -> Option<String> {
        // Rounded as an office may, a house may be larger than the record although it is smaller as measured.
        let is_larger_in_feet = |figure: &Figure| {
            figure.is_record()
                && self.asks_anything(figure)
                && self.in_whole_feet(figure).is_some()
                && self.areas.gross().whole_foot().whole_sq_ft() > figure.area().whole_sq_ft()
        };
        let is_smaller = figures.iter().any(Figure::is_smaller_record);
        let caution = match is_smaller {
            true => SMALLER_RECORD,
            false if figures.iter().any(is_larger_in_feet) => LARGER_IN_FEET,
            false => return figures.iter().find_map(|figure| self.other_answer(figure)),
        };
        Some(caution.to_owned())
    }

    /// Warns the owner that the question about the height of ceilings has an answer by which the house is larger than the
    /// record: `… 2,669 + 447 = 3,116 sq ft, more than the record, 3,094 …`. `None` where it is not asked, or has none.
    pub(crate) fn other_answer(&self, figure: &Figure) -> Option<String> {
        let low = self
            .low_without_a_height()
            .filter(|_| figure.is_record() && self.asks_anything(figure))?;
        let like = figure.measured_like_figure();
        let [like, low] = [like, low].map(Area::whole_sq_ft);
        (like + low > figure.area().whole_sq_ft()).then(|| {
            format!(
                "Caution: if floor under ceilings as low as the ones deducted here counts in such a total, this house has {} + {} = {} sq ft, more than {}, {}. Handing these pages in may raise the value; ask a licensed professional first.",
                thousands(like),
                thousands(low),
                thousands(like + low),
                the(figure),
                thousands(figure.area().whole_sq_ft())
            )
        })
    }

    /// `measured`, or if no counted wall was, its source: `from plan`.
    pub(crate) fn known(&self) -> &'static str {
        known(self.obtained())
    }

    /// The source as it reads before the word area: `the measured area`, `the plan's area`.
    pub(crate) fn area_word(&self) -> &'static str {
        match self.obtained() {
            LengthSource::Plan => "plan's",
            LengthSource::Record => "typed",
            LengthSource::Estimated => "estimated",
            LengthSource::Measured | LengthSource::Closing => "measured",
        }
    }

    /// How the counted area was obtained: measured if any of its lengths was.
    pub(crate) fn obtained(&self) -> LengthSource {
        let sources = self.sources();
        let surest = [LengthSource::Measured, LengthSource::Plan, LengthSource::Record];
        let found = surest.into_iter().find(|source| sources.contains(source));
        found.unwrap_or(match sources.is_empty() {
            true => LengthSource::Measured,
            false => LengthSource::Estimated,
        })
    }

    /// How the lengths of counted spaces were obtained, except for those that follow from others.
    pub(super) fn sources(&self) -> HashSet<LengthSource> {
        let counted = self.house.spaces.iter().filter(|space| space.counted);
        let sides = counted.flat_map(|space| space.sides.iter());
        sides.map(crate::house::Side::how).filter(|how| *how != LengthSource::Closing).collect()
    }
}

/// How the headline begins to say where an area is from, and at which face: `Measured inside`, `From the plan's
/// lengths, outside`.
fn opening(obtained: LengthSource, face: Face) -> String {
    let source = match obtained {
        LengthSource::Plan => "From the plan's lengths",
        LengthSource::Record => "From the record's lengths",
        LengthSource::Estimated => "Estimated",
        LengthSource::Measured | LengthSource::Closing => "Measured",
    };
    let is_measured = matches!(obtained, LengthSource::Measured | LengthSource::Closing);
    let at = match face {
        Face::Outside if is_measured || obtained == LengthSource::Estimated => {
            return source.to_owned();
        }
        Face::Outside => "outside",
        Face::Frame => "at the frame",
        Face::Inside => "inside",
    };
    format!("{source}{} {at}", if is_measured { "" } else { "," })
}

pub(super) fn known(obtained: LengthSource) -> &'static str {
    match obtained {
        LengthSource::Plan => "from plan",
        LengthSource::Record => "from record",
        LengthSource::Estimated => "estimated",
        LengthSource::Measured | LengthSource::Closing => "measured",
    }
}

/// The main sentence: the figure, the area measured the same way, and the difference. For a record that says nothing
/// else, an area below grade stands beside that above it.
pub(super) fn statement(
    figure: &Figure,
    obtained: LengthSource,
    below: Option<Area>,
    finely: Option<&str>,
    units: Units,
) -> String {
    let is_metric = units.are_meters();
    let apart = figure.area().whole_sq_ft() - figure.measured_like_figure().whole_sq_ft();
    let name = match figure.has_own_name() {
        true => capital(figure.name()),
        false => capital(figure.word()),
    };
    // The figure's own face and counting, which are applied to the house too.
    let counting = figure.line(BridgeStep::Counting).filter(|line| !line.is_supported());
    let counting = counting
        .map(|line| format!(", with {}", words::all_named(line.counted())))
        .unwrap_or_default();
    let face = match figure.face() {
        Face::Outside => "",
        Face::Frame => ", taken at the frame",
        Face::Inside => ", taken inside",
    };
    let source = opening(obtained, figure.face());
    // The area is not called that of the whole house where a map shows more of about the size that is left.
    let unwalked = figure
        .unwalked()
        .map(|part| format!(", without a part on the {} side that a map shows", part.side.word()));
    let unwalked = unwalked.unwrap_or_default();
    let finely = finely.map(|step| format!(", {step}")).unwrap_or_default();
    let above = if below.is_some() { " above grade" } else { "" };
    let colon = if matches!(source.as_str(), "Measured" | "Estimated") { "" } else { ":" };
    let head = format!(
        "{name} {}{face}{counting}. {source}{colon} {}{above}{counting}{finely}{unwalked}.",
        units.typed_size(figure.typed()),
        units.size(figure.measured_like_figure())
    );
    let below = below
        .map(|below| format!(" Wholly or partly below grade, not included: {}.", units.size(below)))
        .unwrap_or_default();
    // What agrees has no difference to speak of.
    if apart != 0 && figure.agreement().agrees() {
        return format!("{head} They agree {}.{below}", how_closely(figure, units));
    }
    let like_figure = figure.measured_like_figure();
    let share = percent_apart(figure.area(), like_figure, like_figure, is_metric);
    let of = match obtained {
        LengthSource::Measured | LengthSource::Closing => "the measured area",
        LengthSource::Plan => "the area from the plan",
        LengthSource::Record => "the area from the record's lengths",
        LengthSource::Estimated => "the estimated area",
    };
    let difference = units.apart(figure.area(), figure.measured_like_figure());
    let which = if apart > 0 { "larger" } else { "smaller" };
    let name = capital(&the(figure));
    match (apart, share) {
        (0, _) if units != Units::Feet => {
            format!("{head} No difference to the square foot.{below}")
        }
        (0, _) => format!("{head} No difference.{below}"),
        (_, Some(share)) if units != Units::Feet => {
            format!("{head} {name} is {difference} {which}: {share} of {of}.{below}")
        }
        (_, Some(share)) => {
            format!("{head} {name} is {difference} {which} ({share} of {of}).{below}")
        }
        _ => format!("{head} {name} is {difference} {which}.{below}"),
    }
}
