//! Whether a lower market value would change the tax, which is paid on the assessed value.
//!
//! If a cap keeps the assessed value below the market value, the market value may fall a long way before the tax
//! changes.

use rust_decimal::Decimal;

use crate::house::{Exemption, TaxRate, Values};
use crate::units::money::Money;
use crate::value::rules::{CapRule, LawRule, PlaceRules};
use crate::value::ways::{Method, Way};

/// The values that are taxed, and what each way of converting the gap into money would do to them.
#[derive(Clone, Debug)]
pub struct Tax {
    pub(crate) market: Money,
    pub(crate) assessed: Money,
    pub(crate) is_assessed_computed: bool,
    pub(crate) rates: Vec<TaxRate>,
    pub(crate) exemptions: Vec<Exemption>,
    pub(crate) outcomes: Vec<TaxOutcome>,
}

/// The values that would result from one way of converting the gap into money.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TaxOutcome {
    pub(crate) method: Method,
    pub(crate) market: Money,
    pub(crate) assessed: Money,
    pub(crate) reaches: bool,
    pub(crate) less_tax: Option<Money>,
}

/// The most that a capped value may be this year.
#[derive(Clone, Copy, Debug)]
pub struct Cap {
    pub(crate) last: Money,
    pub(crate) new: Money,
    pub(crate) per_cent: u32,
    pub(crate) rule: &'static LawRule,
}

impl Tax {
    /// Computes the tax effects of each way; `None` without a market value, or without a value that is taxed.
    pub(crate) fn of(values: &Values, cap: Option<&Cap>, ways: &[Way]) -> Option<Tax> {
        let value = values.value?;
        let market = value.market?;
        let figured = || cap.map(|cap| cap.most().min(market));
        let mut tax = Tax {
            market,
            assessed: value.assessed.or_else(figured)?,
            is_assessed_computed: value.assessed.is_none(),
            rates: values.rates.clone(),
            exemptions: values.exemptions.clone(),
            outcomes: Vec::new(),
        };
        tax.outcomes = ways.iter().map(|way| tax.outcome(way)).collect();
        Some(tax)
    }

    fn outcome(&self, way: &Way) -> TaxOutcome {
        let market = (self.market.amount() - way.amount().amount()).max(Decimal::ZERO);
        let assessed = self.assessed.amount().min(market);
        TaxOutcome {
            method: way.method(),
            market: self.market.with(market),
            assessed: self.assessed.with(assessed),
            reaches: assessed < self.assessed.amount(),
            less_tax: self.less_tax(assessed),
        }
    }

    /// The tax saved if the assessed value were `lower`; `None` without a rate.
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

    /// The exempt amount for a rate. An exemption with the name of a rate applies only to that rate, any other to all
    /// rates.
    fn exempt(&self, rate: &TaxRate) -> Decimal {
        let is_of = |exemption: &&Exemption| {
            rate.of.as_ref() == Some(&exemption.name) || !self.has_own_rate(exemption)
        };
        self.exemptions.iter().filter(is_of).map(|exemption| exemption.amount.amount()).sum()
    }

    fn has_own_rate(&self, exemption: &Exemption) -> bool {
        self.rates.iter().any(|rate| rate.of.as_ref() == Some(&exemption.name))
    }

    /// The names of exemptions that apply to every rate because no rate has their name.
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

    /// The value that is taxed, before exemptions: from the notice, else the most that the cap allows. The tax
    /// changes only if the market value falls below it.
    #[must_use]
    pub fn assessed(&self) -> Money {
        self.assessed
    }

    /// Whether the assessed value was computed from the cap because the file has none.
    #[must_use]
    pub fn is_assessed_computed(&self) -> bool {
        self.is_assessed_computed
    }

    /// The result of each way, in the order of the ways.
    #[must_use]
    pub fn outcomes(&self) -> &[TaxOutcome] {
        &self.outcomes
    }
}

impl TaxOutcome {
    /// The way that gives these values.
    #[must_use]
    pub fn method(&self) -> Method {
        self.method
    }

    /// The market value on the notice minus the amount that the way gives.
    #[must_use]
    pub fn market(&self) -> Money {
        self.market
    }

    /// The value that would then be taxed, before exemptions.
    #[must_use]
    pub fn assessed(&self) -> Money {
        self.assessed
    }

    /// Whether the value that is taxed would be lower than it is now, so that the tax would change.
    #[must_use]
    pub fn reaches(&self) -> bool {
        self.reaches
    }

    /// The tax saved, in whole units and decimals of the currency, at the rates of the file; `None` without rates.
    #[must_use]
    pub fn less_tax(&self) -> Option<Money> {
        self.less_tax
    }
}

impl Cap {
    /// Computes the cap. `None` without a place with rules, a homestead and last year's value, or before the cap
    /// begins.
    pub(crate) fn of(values: &Values, year: Option<i16>) -> Option<Cap> {
        let CapRule { per_cent, rule } = values.place.and_then(PlaceRules::of)?.cap.as_ref()?;
        let since = i16::try_from(values.homestead?).ok()?;
        let last = values.last_year?;
        let new = values.value.and_then(|value| value.new).unwrap_or(last.with(Decimal::ZERO));
        (year? > since).then_some(Cap { last, new, per_cent: *per_cent, rule })
    }

    /// The most that the value may be: last year's value plus the allowed percentage, plus new improvements.
    #[must_use]
    pub fn most(&self) -> Money {
        let hundredths = Decimal::from_i128_with_scale(i128::from(100 + self.per_cent), 2);
        self.last.with((self.last.amount() * hundredths).normalize() + self.new.amount())
    }

    /// Last year's assessed value.
    #[must_use]
    pub fn last(&self) -> Money {
        self.last
    }

    /// The market value of new improvements.
    #[must_use]
    pub fn new_improvements(&self) -> Money {
        self.new
    }

    /// The percentage by which the value may rise in a year.
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
