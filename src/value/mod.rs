//! What a gap is worth, and by when to act. This exists only if the file states values, dates or sales.
//!
//! Nothing here is the value of a house, and nothing is advice. Amounts are exact until they are shown. Days follow
//! from the file's dates and from the files in `places/`, which hold the law as data: each rule has its section,
//! its date of effect, how sure it is, and when it was last checked.
//!
//! ```
//! use fairfoot::value::AsOf;
//! use fairfoot::{Settings, Weights};
//!
//! let text = r#"
//! record 1,300 sq ft
//! value market $260,000 improvement $195,000
//! level "Ground floor"
//!   living "House"
//!     north 28' 4"
//!     east  42' 7"
//!     south 28' 4"
//!     west  42' 7"
//! "#;
//! let house = fairfoot::read("demo.sides", text)?;
//! let result = house.areas(&Settings::default())?.reconcile(&Weights::default())?;
//! let worth = result.worth(&AsOf::default()).ok_or("the file gives values")?;
//! assert_eq!(worth.gap().map(|gap| gap.sq_ft()), Some(94)); // 1,300 − 1,206
//! assert_eq!(worth.ways()[0].amount().whole_text(), "$14,100"); // 195,000 × 94 ÷ 1,300
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub(crate) mod checklist;
pub(crate) mod classes;
pub(crate) mod comparables;
pub(crate) mod dates;
pub(crate) mod gap;
pub(crate) mod rules;
pub(crate) mod tax;
pub(crate) mod ways;

use jiff::civil::Date;

use crate::house::{House, Place, Values};
pub use crate::reconcile::CauseClass;
use crate::reconcile::Reconciliation;
use crate::units::length::Form;
use crate::units::money::Currency;
pub use comparables::{Comparable, Comparables, USUAL_BAND, UnitPrice};
pub use dates::{Dates, Deadline};
pub use gap::Gap;
pub use rules::{LawRule, Reach, Sure};
pub use tax::{Cap, Tax, TaxOutcome};
pub use ways::{Method, Way};

/// What the gap between record and house is worth, and by when to act.
#[derive(Clone, Debug)]
pub struct Worth {
    pub(crate) gap: Option<Gap>,
    pub(crate) ways: Vec<Way>,
    pub(crate) cap: Option<Cap>,
    pub(crate) tax: Option<Tax>,
    pub(crate) comparables: Comparables,
    pub(crate) dates: Dates,
    pub(crate) checklist: Vec<String>,
    pub(crate) classes: Vec<CauseClass>,
    pub(crate) given: GivenValues,
    pub(crate) currency: Currency,
    pub(crate) today: Option<Date>,
}

/// Which values the file gives, so that missing ones can be named.
#[derive(Clone, Copy, Debug)]
pub(crate) struct GivenValues {
    pub(crate) market: bool,
    pub(crate) improvement: bool,
    pub(crate) notice: bool,
    /// Whether it names a place that has rules.
    pub(crate) place: bool,
    /// Whether it says `place none`, so that no law is assumed.
    pub(crate) elsewhere: bool,
    /// The currency sign for amounts in examples.
    pub(crate) sign: &'static str,
    /// Whether most lengths of the file are metric.
    pub(crate) metric: bool,
}

impl GivenValues {
    fn of(house: &House) -> GivenValues {
        let values = &house.values;
        let value = values.value.unwrap_or_default();
        GivenValues {
            market: value.market.is_some(),
            improvement: value.improvement.is_some(),
            notice: values.notice.is_some(),
            place: values.place.and_then(rules::PlaceRules::of).is_some(),
            elsewhere: values.place == Some(Place::None),
            sign: match values.typed_signs().first() {
                Some(currency) => currency.sign(),
                None if values.place == Some(Place::None) => "",
                None => Currency::Dollar.sign(),
            },
            metric: matches!(
                house.usual_form(),
                Form::Meters | Form::Centimeters | Form::Millimeters
            ),
        }
    }
}

/// The day from which to count days left, and how near in size a comparable has to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AsOf {
    /// The day from which to count; `None` if days left are not to be counted.
    pub today: Option<Date>,
    /// How near in size a comparable has to be, in percent of the house's size.
    pub band: u8,
}

impl Default for AsOf {
    fn default() -> AsOf {
        AsOf { today: None, band: USUAL_BAND }
    }
}

impl Reconciliation {
    /// What the gap is worth, and by when to act; `None` if the file states no values, dates or sales.
    #[must_use]
    pub fn worth(&self, as_of: &AsOf) -> Option<Worth> {
        Worth::of(self, as_of)
    }
}

impl Worth {
    fn of(reconciliation: &Reconciliation, as_of: &AsOf) -> Option<Worth> {
        let AsOf { today, band } = *as_of;
        let house = reconciliation.house();
        let values = &house.values;
        if values.is_empty() {
            return None;
        }
        let gap = Gap::of(reconciliation);
        let measured = reconciliation.areas().gross().tenth_foot().whole_sq_ft();
        let comparables = Comparables::of(&values.sales, gap.as_ref(), measured, band);
        let tax_year = house.particulars.tax_year;
        let mut worth = Worth {
            gap,
            ways: Vec::new(),
            cap: None,
            tax: None,
            comparables,
            dates: Dates::of(values, tax_year, None),
            checklist: Vec::new(),
            classes: classes::classes(reconciliation),
            given: GivenValues::of(house),
            currency: values.typed_signs().first().copied().unwrap_or_default(),
            today,
        };
        if worth.is_larger() {
            worth.add_money(values, tax_year);
            worth.checklist = checklist::checklist(reconciliation);
        }
        Some(worth)
    }

    /// Whether the record is larger than the house and does not agree with it; only then are amounts computed.
    pub(crate) fn is_larger(&self) -> bool {
        self.gap.as_ref().is_some_and(|gap| gap.sq_ft() > 0 && !gap.agrees())
    }

    /// Whether the record is smaller than the house and does not agree with it.
    #[cfg(feature = "pages")]
    pub(crate) fn is_smaller(&self) -> bool {
        self.gap.as_ref().is_some_and(|gap| gap.sq_ft() < 0 && !gap.agrees())
    }

    fn add_money(&mut self, values: &Values, tax_year: Option<u16>) {
        let improvement = values.value.and_then(|value| value.improvement);
        let unit_price = self.comparables.unit_price();
        self.ways =
            self.gap.iter().flat_map(|gap| Way::all(gap, improvement, unit_price)).collect();
        self.cap = Cap::of(values, self.dates.year());
        self.tax = Tax::of(values, self.cap.as_ref(), &self.ways);
        self.dates = Dates::of(values, tax_year, self.tax.as_ref().map(Tax::assessed));
    }

    /// The gap between record and measured area; `None` without a record.
    #[must_use]
    pub fn gap(&self) -> Option<&Gap> {
        self.gap.as_ref()
    }

    /// The ways to convert the gap into money for which the file has figures; empty if the record is not larger.
    #[must_use]
    pub fn ways(&self) -> &[Way] {
        &self.ways
    }

    /// The most that a capped value may be this year; `None` without a cap.
    #[must_use]
    pub fn cap(&self) -> Option<&Cap> {
        self.cap.as_ref()
    }

    /// Whether the gap would change the tax; `None` if the file does not give enough for that, or the record is not
    /// larger.
    #[must_use]
    pub fn tax(&self) -> Option<&Tax> {
        self.tax.as_ref()
    }

    /// The comparables in the file, and their price per square foot.
    #[must_use]
    pub fn comparables(&self) -> &Comparables {
        &self.comparables
    }

    /// The days by which to act.
    #[must_use]
    pub fn dates(&self) -> &Dates {
        &self.dates
    }

    /// What to bring to the office; empty if the record is not larger.
    #[must_use]
    pub fn checklist(&self) -> &[String] {
        &self.checklist
    }

    /// The classes of mistakes that may be behind the gap to the record; empty if nothing is reported.
    #[must_use]
    pub fn classes(&self) -> &[CauseClass] {
        &self.classes
    }

    /// The currency of all amounts.
    #[must_use]
    pub fn currency(&self) -> Currency {
        self.currency
    }

    /// The day from which days left are counted; `None` if they are not counted.
    #[must_use]
    pub fn today(&self) -> Option<Date> {
        self.today
    }

    /// Cautions about everything on the page on what a gap is worth.
    #[must_use]
    pub const fn cautions() -> [&'static str; 3] {
        [
            "Not legal advice and not an appraisal: check every line with the local office that keeps the record and a licensed professional before acting.",
            "Local rules and licensed practice come first.",
            "Online price estimates carry little weight (common practice).",
        ]
    }
}
