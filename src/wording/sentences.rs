//! Sentences about a house and its figures. The terminal and the pages print the same words.

use crate::areas::Areas;
use crate::areas::range::Range;
use crate::areas::rule::Settings;
use crate::diagnostic::Word;
use crate::diagnostic::quoted;
use crate::diagnostic::words;
use crate::house::{Face, House, Kind, Space};
use crate::reconcile::{Figure, Reconciliation, Weights};
use crate::units::area::Area;
use crate::units::decimal::{group_thousands, rounded_quotient, thousands};
use crate::units::length::{FineStep, Form, Length, WrittenLength};
use crate::wording::size::{exact_size, size};
use rust_decimal::Decimal;

/// What fairfoot is not; printed on everything.
pub const DISCLAIMER: &str = "Not an appraisal, not a survey, not legal advice; local rules and licensed practice come first.";

/// The end of every report and page.
pub(crate) const CAUTIONS: &str = "Not an appraisal, not a survey, not legal advice; local rules and licensed practice come first. Figures are computed from these lengths; that does not show that the lengths are right.";

/// Printed first on every output if the record is smaller than the house.
pub const SMALLER_RECORD: &str = "Caution: the record is smaller than this house. Handing these pages in may raise the value; ask a licensed professional first.";

/// The same if only the rule of the office makes the house larger than the record. It is for the owner, not for a page that
/// the office gets.
pub(crate) const LARGER_IN_FEET: &str = "Caution: with each wall rounded to the foot, this house is larger than the record. Handing these pages in may raise the value; ask a licensed professional first.";

/// The same caution on a page that may reach the office: one sentence, not bold.
pub(crate) const SMALLER_RECORD_ON_A_PAGE: &str = "A larger area may raise the value; ask a licensed professional before these pages are handed in.";

/// The reader of a text. The report is for the person who typed the file, and says what to ask; the pages are for an
/// office, and ask it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Reader {
    Owner,
    #[cfg_attr(not(feature = "pages"), allow(dead_code, reason = "only pages are for an office"))]
    Office,
}

/// The subject of the sentences: a house with its areas.
#[derive(Clone, Copy)]
pub(crate) struct Sentences<'a> {
    pub(crate) house: &'a House,
    pub(crate) areas: &'a Areas,
    pub(crate) settings: Settings,
    /// The form in which most lengths of the file are written.
    pub(crate) form: Form,
    pub(super) reader: Reader,
    /// The level drawn on the page that the sentences stand on, if the others have pages that can be named.
    pub(super) drawn_here: Option<[usize; 2]>,
}

impl<'a> Sentences<'a> {
    /// Sentences about the house of these areas, addressed to the person who typed its file.
    pub(crate) fn of(areas: &'a Areas) -> Sentences<'a> {
        let house = areas.house();
        Sentences {
            house,
            areas,
            settings: *areas.settings(),
            form: house.usual_form(),
            reader: Reader::Owner,
            drawn_here: None,
        }
    }

    /// Sentences about the house of these areas, addressed to the office that gets the pages.
    #[cfg(feature = "pages")]
    pub(crate) fn for_the_office(areas: &'a Areas) -> Sentences<'a> {
        Sentences { reader: Reader::Office, ..Sentences::of(areas) }
    }

    /// The same sentences on the page that has the drawings of these levels, which may be the same: what is drawn elsewhere
    /// is named with its page.
    #[cfg(feature = "pages")]
    pub(crate) fn on_the_page_of(self, levels: Option<[usize; 2]>) -> Self {
        Sentences { drawn_here: levels, ..self }
    }

    /// Whether the sentences are addressed to the office.
    pub(crate) fn is_for_the_office(&self) -> bool {
        self.reader == Reader::Office
    }
}

impl Sentences<'_> {
    /// The property's location; empty if the file does not state it.
    pub(crate) fn place(&self) -> String {
        self.house.particulars.place()
    }

    /// Account, case and tax year; empty if the file has none of them.
    pub(crate) fn numbers(&self) -> String {
        self.house.particulars.numbers()
    }

    /// A length in the file's most frequent unit, rounded for people.
    pub(crate) fn length(&self, length: Length) -> String {
        let near = match self.form {
            Form::Meters => length.rounded_to(Length::CENTIMETER.nm()),
            _ => length,
        };
        WrittenLength::new(if near == Length::ZERO { length } else { near }, self.form).spoken()
    }

    /// An area before it is rounded, in square meters first if the file is metric.
    pub(crate) fn exact_size(&self, area: Area) -> String {
        exact_size(area, self.is_metric())
    }

    /// An area, in square meters first if the file is metric.
    pub(crate) fn size(&self, area: Area) -> String {
        size(area, self.is_metric())
    }

    pub(crate) fn is_metric(&self) -> bool {
        self.form.is_metric()
    }

    /// Whether drawings are at the scales of a metric ruler: a file in meters of no place with rules, all of which are
    /// American.
    #[cfg(feature = "pages")]
    pub(crate) fn draws_in_meters(&self) -> bool {
        let place = self.house.values.place;
        self.is_metric() && place.is_none_or(|place| place == crate::house::Place::None)
    }

    /// The settings that are not the default and may change a conclusion; `None` if there are none.
    pub(crate) fn unusual_settings(&self, weights: Option<&Weights>) -> Option<String> {
        let mut unusual = self.settings.unusual();
        if weights.is_some_and(|weights| *weights != Weights::default()) {
            unusual.push("causes weighed by a file of its own (`--weights`)".to_owned());
        }
        (!unusual.is_empty())
            .then(|| format!("Settings other than the usual: {}.", unusual.join("; ")))
    }

    /// What the finer rule rounds to, as it reads after "each wall to".
    pub(crate) fn fine(&self) -> &'static str {
        match self.settings.fine {
            FineStep::Inch => "the inch",
            FineStep::TenthFoot => "a tenth of a foot",
        }
    }

    /// The column head of the finer rule.
    pub(crate) fn fine_word(&self) -> &'static str {
        if self.settings.fine == FineStep::Inch { "inches" } else { "tenths" }
    }

    /// The name of a space, with its kind and whether it counts: `Foyer (open to below, deducted)`.
    pub(crate) fn space_name(&self, space: usize) -> String {
        let name = &self.house.spaces[space].name;
        let kind = self.kind_word(space);
        let deducted = if self.house.is_deducted(space) { "deducted" } else { "" };
        let parts: Vec<&str> =
            [kind.as_str(), deducted].into_iter().filter(|part| !part.is_empty()).collect();
        if parts.is_empty() { name.clone() } else { format!("{name} ({})", parts.join(", ")) }
    }

    /// The name of a space where its level is not named beside it: `Rec room (below grade, deducted from the basement)`.
    #[cfg(feature = "pages")]
    pub(crate) fn space_name_here(&self, space: usize) -> String {
        let is_below = self.house.levels[self.house.spaces[space].level].below_grade;
        let name = self.space_name(space);
        let parent = self.house.spaces[space].parent.filter(|_| is_below);
        match parent.filter(|_| self.house.is_deducted(space)) {
            Some(parent) => {
                let from = words::the_named(&self.house.spaces[parent].name);
                name.replace("(deducted)", &format!("(below grade, deducted from {from})"))
                    .replace(", deducted)", &format!(", below grade, deducted from {from})"))
            }
            None => name,
        }
    }

    /// Warnings that a reader of the report should know, each with its line.
    pub(crate) fn worth_knowing(&self, reconciliation: &Reconciliation) -> Vec<String> {
        // How well a lot closes stands beside its area, in the terms of surveyors.
        let is_of_lot = |warning: &crate::diagnostic::Diagnostic| {
            let mut lots = self.house.lots.iter();
            lots.any(|lot| warning.message().starts_with(&quoted(&lot.name)))
        };
        let shown = |warning: &&crate::diagnostic::Diagnostic| match warning.word() {
            Word::OutlineDoesNotClose | Word::NoTurn => false,
            // What is handed in says nothing of the value; the Supplement has it.
            // Nor of where in the house a stair is drawn.
            Word::UnlikelyValue | Word::NotPlaced => !self.is_for_the_office(),
            Word::MisclosureSpread => !is_of_lot(warning),
            _ => true,
        };
        let sentence = |warning: &crate::diagnostic::Diagnostic| {
            let message = warning.message().replace('`', "\"");
            let at = self.place_of(warning, &message);
            let unseen = if warning.word() == Word::NoClosureCheck {
                "; an error in one of those would go unseen"
            } else {
                ""
            };
            format!("{at}{message}{unseen}")
        };
        reconciliation.warnings().iter().filter(shown).map(sentence).collect()
    }

    /// Warnings about values, rates and sales, which only the owner should know.
    #[cfg(feature = "pages")]
    pub(crate) fn worth_knowing_of_values(&self, reconciliation: &Reconciliation) -> Vec<String> {
        let warnings = reconciliation.warnings().iter();
        let sentence = |warning: &crate::diagnostic::Diagnostic| {
            let message = warning.message().replace('`', "\"");
            format!("{}{message}", self.place_of(warning, &message))
        };
        warnings.filter(|warning| warning.word() == Word::UnlikelyValue).map(sentence).collect()
    }

    /// The place of a warning, printed before its message: nothing if the message begins with the name of a space,
    /// else the side of a space, else the line of the sides file.
    pub(super) fn place_of(
        &self,
        warning: &crate::diagnostic::Diagnostic,
        message: &str,
    ) -> String {
        let names = |space: &Space| message.starts_with(&format!("\"{}\"", space.name));
        if self.house.spaces.iter().any(names) {
            return String::new();
        }
        let start = warning.span().start;
        let is_here = |span: crate::diagnostic::Span| span.start <= start && start < span.end;
        let sides = self
            .house
            .spaces
            .iter()
            .flat_map(|space| space.sides.iter().map(move |side| (space, side)));
        let mut here = sides.filter(|(_, side)| is_here(side.span));
        match here.next() {
            Some((space, side)) => format!("{}, side {}: ", space.name, side.number),
            None => format!("line {} of the sides file: ", self.house.source().line(start)),
        }
    }

    /// A perimeter, rounded to the inch or the centimeter, since a sum of many tape readings is no more precise.
    pub(crate) fn perimeter(&self, perimeter: Length) -> String {
        let step = if self.is_metric() { Length::CENTIMETER } else { Length::INCH };
        self.length(perimeter.rounded_to(step.nm()))
    }

    /// A wall with its length as typed. Who typed the file finds the line by it: `east 19' 5"`. An office finds the wall by
    /// where it stands: `north wall, 19' 5"`.
    pub(crate) fn wall_here(&self, space: usize, side: usize) -> String {
        let here = &self.house.spaces[space];
        let side_here = &here.sides[side];
        let faces = here.closed.outline.faces(side).filter(|_| self.is_for_the_office());
        match (faces, side_here.length_typed()) {
            (Some(faces), Some(length)) => format!("{} wall, {length}", faces.word()),
            _ => side_here.typed().to_owned(),
        }
    }

    /// The same with its length at the outside face, where that is another one than was typed.
    pub(crate) fn wall_outside(&self, space: usize, side: usize) -> String {
        let here = &self.house.spaces[space];
        let faces = here.closed.outline.faces(side).filter(|_| self.is_for_the_office());
        let typed = here.closed.outline.vectors().get(side).map(|vector| vector.chord_length());
        let outside = self
            .areas
            .outside_length(space, side)
            .filter(|length| here.face != Face::Outside && typed != Some(*length));
        match (faces, outside) {
            (Some(faces), Some(length)) => {
                format!("{} wall, {} outside", faces.word(), self.length(length))
            }
            _ => self.wall_here(space, side),
        }
    }

    pub(crate) fn kind_word(&self, space: usize) -> String {
        let here = &self.house.spaces[space];
        let kind = match here.kind {
            Kind::Living if here.counted => "",
            Kind::Open => "open to below",
            Kind::Low => "low ceiling",
            kind => kind.word(),
        };
        let same = here.name.to_lowercase().contains(kind);
        let is_counted_stair = here.kind == Kind::Stair
            && here.parent.is_some_and(|parent| self.house.spaces[parent].counted);
        let counted = match (here.counted, here.claimed, here.kind.lies_in_another()) {
            _ if here.detached && here.counted => format!("detached, counted {}", self.as_stated()),
            _ if here.detached => "detached, not counted".to_owned(),
            (true, true, _) => format!("counted, {}", self.as_stated()),
            (false, true, _) => format!("not counted, {}", self.as_stated()),
            (false, _, false) if here.parent.is_none() => "not counted".to_owned(),
            _ if is_counted_stair => "counted here".to_owned(),
            _ => String::new(),
        };
        let kind = if same { "" } else { kind };
        let parts: Vec<&str> =
            [kind, &counted].into_iter().filter(|part| !part.is_empty()).collect();
        parts.join(", ")
    }
}

pub(crate) fn whole(area: Area) -> String {
    thousands(area.whole_sq_ft())
}

pub(crate) fn signed(number: i64) -> String {
    match number {
        0 => "0".to_owned(),
        1.. => format!("+{}", thousands(number)),
        _ => format!("\u{2212}{}", thousands(number.saturating_abs())),
    }
}

/// A float rounded to a whole number, with commas.
pub(crate) fn rounded_float(number: f64) -> String {
    let digits = format!("{number:.0}");
    digits.parse().map_or(digits, thousands)
}

/// A difference of lengths with its sign, in the file's most frequent unit.
pub(crate) fn signed_length(say: &Sentences<'_>, length: Length) -> String {
    match length.nm() {
        0 => "0".to_owned(),
        1.. => format!("+{}", say.length(length)),
        _ => format!("\u{2212}{}", say.length(length.abs())),
    }
}

/// A length in feet for people: commas, at most two decimals, no trailing zeros.
pub(crate) fn to_hundredths(length: Length) -> String {
    let hundredths = rounded_quotient(i128::from(length.nm()) * 100, i128::from(Length::FOOT.nm()));
    let text = Decimal::from_i128_with_scale(hundredths, 2).normalize().to_string();
    let (whole, decimals) = text.split_once('.').unwrap_or((&text, ""));
    let point = if decimals.is_empty() { "" } else { "." };
    format!("{}{point}{decimals}", group_thousands(whole))
}

/// Areas of one column in square feet: two decimals each, or none where all are whole.
pub(crate) fn in_a_column(areas: &[Area]) -> Vec<String> {
    let hundredths =
        |area: Area| rounded_quotient(100 * area.half_nm2(), Area::SQUARE_FOOT.half_nm2());
    let decimals = if areas.iter().all(|area| hundredths(*area) % 100 == 0) { 0 } else { 2 };
    let text = |area: &Area| {
        let sign = if hundredths(*area) < 0 { "\u{2212}" } else { "" };
        let digits = area.in_unit(Area::SQUARE_FOOT, decimals);
        let digits = digits.trim_start_matches('-');
        let (whole, point) = digits.split_at(digits.find('.').unwrap_or(digits.len()));
        format!("{sign}{}{point}", group_thousands(whole))
    };
    areas.iter().map(text).collect()
}

/// `1,530 to 1,581`; the areas one by one if they are `few`: `1,204 or 1,232`; one number if both ends are the same.
pub(crate) fn range_text(range: Option<Range>, few: &[Area]) -> String {
    match range {
        None => "not stated".to_owned(),
        Some(range) if range.low.whole_sq_ft() == range.high.whole_sq_ft() => whole(range.low),
        Some(_) if !few.is_empty() => {
            words::list_or(&few.iter().map(|area| whole(*area)).collect::<Vec<_>>())
        }
        Some(range) => format!("{} to {}", whole(range.low), whole(range.high)),
    }
}

/// The name with a capital first letter: `Record`, `Listing`.
pub(crate) fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// Notes on a drawing as sentences: `Hatched: not counted here. Small number at a wall: the number of that side.`
#[cfg(feature = "pages")]
pub(crate) fn as_sentences(notes: &[String]) -> String {
    let told: Vec<String> = notes.iter().map(|note| format!("{}.", capital(note))).collect();
    told.join(" ")
}

/// `the record` or `the listing`. A figure's own name reads on if it is several words written small (`the insurer's
/// sheet`); one word may be a person's, and a name in capitals a title, so that these are quoted: `the figure
/// "appraiser"`.
pub(crate) fn the(figure: &Figure) -> String {
    match (figure.word(), figure.name()) {
        ("figure", name) => {
            let is_phrase = name.starts_with(char::is_lowercase) && name.contains(' ');
            match name.strip_prefix("the ") {
                Some(_) => name.to_owned(),
                None if is_phrase => format!("the {name}"),
                None => format!("the figure \"{name}\""),
            }
        }
        (word, _) => format!("the {word}"),
    }
}

/// The letters for a number: A, B, … Z, AA, AB, …
#[expect(clippy::integer_division, reason = "counting in letters")]
pub(crate) fn letters(number: usize) -> String {
    let last = char::from(b'A' + u8::try_from(number % 26).unwrap_or(0));
    match number / 26 {
        0 => last.to_string(),
        more => format!("{}{last}", letters(more - 1)),
    }
}
