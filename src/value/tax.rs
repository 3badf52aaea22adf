//! Whether a lower market value changes the tax, which is paid on the assessed value.
//!
//! If a cap keeps the assessed value below the market value, the market value may fall far before the tax changes.

use rust_decimal::Decimal;

use crate::house::{Exemption, TaxRate, Values};
use crate::units::money::Money;
use crate::value::rules::{CapRule, LawRule, PlaceRules};
use crate::value::ways::{Method, Way};

/// The values that are taxed, and the result of each way.
#[derive(Clone, Debug)]
pub struct Tax {
    pub(crate) market: Money,
    pub(crate) assessed: Money,
    pub(crate) is_figured: bool,
    pub(crate) rates: Vec<TaxRate>,
    pub(crate) exemptions: Vec<Exemption>,
    pub(crate) outcomes: Vec<Outcome>,
}

/// The values that result from one way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outcome {
    pub(crate) method: Method,
    pub(crate) market: Money,
    pub(crate) assessed: Money,
    pub(crate) reaches: bool,
    pub(crate) less_tax: Option<Money>,
}

/// How far a capped value may rise this year.
#[derive(Clone, Copy, Debug)]
pub struct Cap {
    pub(crate) last: Money,
    pub(crate) new: Money,
    pub(crate) per_cent: u32,
    pub(crate) rule: &'static LawRule,
}

impl Tax {
    /// `None` without a market value, or without a value that is taxed.
    pub(crate) fn of(values: &Values, cap: Option<&Cap>, ways: &[Way]) -> Option<Tax> {
        let value = values.value?;
        let market = value.market?;
        let figured = || cap.map(|cap| cap.most().min(market));
        let mut tax = Tax {
            market,
            assessed: value.assessed.or_else(figured)?,
            is_figured: value.assessed.is_none(),
            rates: values.rates.clone(),
            exemptions: values.exemptions.clone(),
            outcomes: Vec::new(),
        };
        tax.outcomes = ways.iter().map(|way| tax.outcome(way)).collect();
        Some(tax)
    }

    fn outcome(&self, way: &Way) -> Outcome {
        let market = (self.market.amount() - way.gives().amount()).max(Decimal::ZERO);
        let assessed = self.assessed.amount().min(market);
        Outcome {
            method: way.method(),
            market: self.market.with(market),
            assessed: self.assessed.with(assessed),
            reaches: assessed < self.assessed.amount(),
            less_tax: self.less_tax(assessed),
        }
    }

    /// The tax saved by a lower assessed value; `None` without a rate.
    fn less_tax(&self, lower: Decimal) -> Option<Money> {
        let of_rate = |rate: &TaxRate| {
            let taxable = |value: Decimal| (value - self.exempt(rate)).max(Decimal::ZERO);
            let less = taxable(self.assessed.amount()) - taxable(lower);
            (less * rate.rate).checked_div(Decimal::from(rate.per))
        };
        let sum = self
            .rates
            .iter()
            .map(of_rate)
            .try_fold(Decimal::ZERO, |sum, part| Some(sum + part?))?;
        (!self.rates.is_empty()).then_some(self.assessed.with(sum))
    }

    /// The exempt amount for a rate: an exemption with the name of a rate applies to that rate, any other to all.
    fn exempt(&self, rate: &TaxRate) -> Decimal {
        let is_of = |exemption: &&Exemption| {
            rate.of.as_ref() == Some(&exemption.name) || !self.has_own_rate(exemption)
        };
        self.exemptions.iter().filter(is_of).map(|exemption| exemption.amount.amount()).sum()
    }

    fn has_own_rate(&self, exemption: &Exemption) -> bool {
        self.rates.iter().any(|rate| rate.of.as_ref() == Some(&exemption.name))
    }

    /// Exemptions that apply to every rate, since no rate has their name.
    pub(crate) fn exempt_everywhere(&self) -> Vec<&str> {
        let all = self.exemptions.iter().filter(|exemption| !self.has_own_rate(exemption));
        all.map(|exemption| exemption.name.as_str()).collect()
    }

    /// The rates in words, each with its taxing unit.
    pub(crate) fn rates_spoken(&self) -> Vec<String> {
        let spoken = |rate: &TaxRate| match &rate.of {
            None => rate.spoken(),
            Some(of) => format!("{} ({of})", rate.spoken()),
        };
        self.rates.iter().map(spoken).collect()
    }

    /// The exemptions, in words.
    pub(crate) fn exemptions_spoken(&self) -> Vec<String> {
        self.exemptions.iter().map(|it| format!("{} ({})", it.amount, it.name)).collect()
    }

    /// The market value on the notice.
    #[must_use]
    pub fn market(&self) -> Money {
        self.market
    }

    /// The value that is taxed, before exemptions: from the notice, else the most the cap allows. Only a market
    /// value below it changes the tax.
    #[must_use]
    pub fn assessed(&self) -> Money {
        self.assessed
    }

    /// Whether it was computed from the cap, because the file does not give it.
    #[must_use]
    pub fn is_figured(&self) -> bool {
        self.is_figured
    }

    /// The result of each way, in order.
    #[must_use]
    pub fn outcomes(&self) -> &[Outcome] {
        &self.outcomes
    }
}

impl Outcome {
    /// The way this results from.
    #[must_use]
    pub fn method(&self) -> Method {
        self.method
    }

    /// The market value minus what the way gives.
    #[must_use]
    pub fn market(&self) -> Money {
        self.market
    }

    /// The value that would be taxed, before exemptions.
    #[must_use]
    pub fn assessed(&self) -> Money {
        self.assessed
    }

    /// Whether that is less than now.
    #[must_use]
    pub fn reaches(&self) -> bool {
        self.reaches
    }

    /// The tax saved at the rates of the file; `None` without rates.
    #[must_use]
    pub fn less_tax(&self) -> Option<Money> {
        self.less_tax
    }
}

impl Cap {
    /// `None` without a place with rules, a homestead and last year's value, or before the cap begins.
    pub(crate) fn of(values: &Values, year: Option<i16>) -> Option<Cap> {
        let CapRule { per_cent, rule } = values.place.and_then(PlaceRules::of)?.cap.as_ref()?;
        let since = i16::try_from(values.homestead?).ok()?;
        let last = values.last_year?;
        let new = values.value.and_then(|value| value.new).unwrap_or(last.with(Decimal::ZERO));
        (year? > since).then_some(Cap { last, new, per_cent: *per_cent, rule })
    }

    /// The most the value may be: last year's value plus the allowed percentage, plus new improvements.
    #[must_use]
    pub fn most(&self) -> Money {
        let hundredths = Decimal::from_i128_with_scale(i128::from(100 + self.per_cent), 2);
        self.last.with((self.last.amount() * hundredths).normalize() + self.new.amount())
    }

    /// Last year's value.
    #[must_use]
    pub fn last(&self) -> Money {
        self.last
    }

    /// The market value of new improvements.
    #[must_use]
    pub fn new_improvements(&self) -> Money {
        self.new
    }

    /// The percentage by which it may rise.
    #[must_use]
    pub fn per_cent(&self) -> u32 {
        self.per_cent
    }

    /// The rule it follows.
    #[must_use]
    pub fn rule(&self) -> &LawRule {
        self.rule
    }
}
