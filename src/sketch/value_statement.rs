//! Statements about values, taxes, dates and sales, which are used for what a gap is worth.

use std::fmt::Write as _;
use std::ops::{Deref, DerefMut};

use jiff::civil::Date;
use rust_decimal::Decimal;

use crate::diagnostic::Span;
use crate::sketch::named::Named;
use crate::units::area::WrittenArea;
use crate::units::money::{Currency, Money};

/// A statement about values, taxes, dates or sales.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Valued {
    /// `value market $412,000 assessed $371,000 improvement $318,000 year 2026`
    Value(Value),
    /// `last year assessed $337,000`
    LastYear(Money),
    /// `tax rate 2.14 per $100`
    TaxRate(TaxRate),
    /// `exemption $140,000 "school"`
    Exemption(Exemption),
    /// `homestead since 2021`
    Homestead(u16),
    /// `notice 2026-04-17`
    Notice(Date),
    /// `place texas`, `place none`
    Place(Place),
    /// `comparable "8 Larch Court" 1,925 sq ft sold $398,000 on 2025-08-14`
    Comparable(Sale),
}

/// The values on the notice: what the property is worth, and how much of it is taxed.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Value {
    pub(crate) market: Option<Money>,
    pub(crate) assessed: Option<Money>,
    pub(crate) improvement: Option<Money>,
    /// The market value of improvements that are new this year.
    pub(crate) new: Option<Money>,
    pub(crate) year: Option<u16>,
}

/// A tax rate, of one taxing unit or of all combined: `rate` dollars of tax for every `per` dollars.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct TaxRate {
    pub(crate) rate: Decimal,
    /// 100 or 1,000.
    pub(crate) per: u32,
    pub(crate) currency: Currency,
    pub(crate) of: Option<String>,
}

/// An amount subtracted from a value before it is taxed.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Exemption {
    pub(crate) amount: Money,
    pub(crate) name: String,
}

/// The place whose rules apply.
#[derive(Clone, Copy, Debug, PartialEq, Eq, strum::IntoStaticStr, strum::VariantArray)]
#[strum(serialize_all = "kebab-case")]
pub(crate) enum Place {
    /// No rules are assumed.
    None,
    Texas,
    Washington,
    Colorado,
    California,
    NewYork,
    Ohio,
    Florida,
    Georgia,
    NewJersey,
    Virginia,
    Michigan,
}

impl Place {
    pub(crate) const ALL: &'static [Place] = <Place as strum::VariantArray>::VARIANTS;

    /// Its word in the sides file, which is also the name of its rules file.
    pub(crate) fn word(self) -> &'static str {
        self.into()
    }
}

/// A comparable house that was sold.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Sale {
    pub(crate) name: Named,
    pub(crate) size: WrittenArea,
    pub(crate) sold: Money,
    pub(crate) on: Date,
    /// Its size on the record, if that differs.
    pub(crate) recorded: Option<WrittenArea>,
}

/// The values that a file states. Most files state none, and then this takes no memory of its own.
#[derive(Clone, Debug, Default)]
pub(crate) struct StatedValues(Option<Box<Values>>);

impl Deref for StatedValues {
    type Target = Values;

    fn deref(&self) -> &Values {
        static NONE: Values = Values::NONE;
        self.0.as_deref().unwrap_or(&NONE)
    }
}

impl DerefMut for StatedValues {
    fn deref_mut(&mut self) -> &mut Values {
        self.0.get_or_insert_default()
    }
}

/// All statements about values in a file.
#[derive(Clone, Debug, Default)]
pub(crate) struct Values {
    pub(crate) value: Option<Value>,
    pub(crate) last_year: Option<Money>,
    pub(crate) rates: Vec<TaxRate>,
    /// Where the first rate is stated.
    pub(crate) rate_span: Span,
    pub(crate) exemptions: Vec<Exemption>,
    pub(crate) homestead: Option<u16>,
    pub(crate) notice: Option<Date>,
    pub(crate) notice_span: Span,
    pub(crate) place: Option<Place>,
    pub(crate) sales: Vec<Sale>,
}

impl Values {
    const NONE: Values = Values {
        value: None,
        last_year: None,
        rates: Vec::new(),
        rate_span: Span::new(0, 0),
        exemptions: Vec::new(),
        homestead: None,
        notice: None,
        notice_span: Span::new(0, 0),
        place: None,
        sales: Vec::new(),
    };

    /// Whether the file states no values.
    pub(crate) fn is_empty(&self) -> bool {
        self.value.is_none()
            && self.last_year.is_none()
            && self.rates.is_empty()
            && self.exemptions.is_empty()
            && self.homestead.is_none()
            && self.notice.is_none()
            && self.place.is_none_or(|place| place == Place::None)
            && self.sales.is_empty()
    }

    /// The currencies that were typed, each once, in file order.
    pub(crate) fn typed_signs(&self) -> Vec<Currency> {
        let mut all = self.clone();
        let mut typed: Vec<Currency> = Vec::new();
        for sign in all.signs() {
            if *sign != Currency::None && !typed.contains(sign) {
                typed.push(*sign);
            }
        }
        typed
    }

    /// Gives all amounts one currency: the one that was typed, or if none was, `$` where a place with American rules
    /// is named.
    pub(crate) fn in_one_currency(&mut self) {
        if self.is_empty() {
            return;
        }
        let is_american = self.place.is_some_and(|place| place != Place::None);
        let otherwise = if is_american { Currency::Dollar } else { Currency::None };
        let currency = self.typed_signs().first().copied().unwrap_or(otherwise);
        self.signs().into_iter().for_each(|sign| *sign = currency);
    }

    fn signs(&mut self) -> Vec<&mut Currency> {
        let mut signs: Vec<&mut Currency> = Vec::new();
        if let Some(Value { market, assessed, improvement, new, .. }) = &mut self.value {
            let sums = [market, assessed, improvement, new].into_iter().flatten();
            signs.extend(sums.map(Money::currency_mut));
        }
        signs.extend(self.last_year.as_mut().map(Money::currency_mut));
        signs.extend(self.rates.iter_mut().map(|rate| &mut rate.currency));
        signs.extend(self.exemptions.iter_mut().map(|it| it.amount.currency_mut()));
        signs.extend(self.sales.iter_mut().map(|sale| sale.sold.currency_mut()));
        signs
    }

    pub(crate) fn set(&mut self, valued: Valued, span: Span) {
        match valued {
            Valued::TaxRate(_) if self.rates.is_empty() => self.rate_span = span,
            Valued::Notice(_) => self.notice_span = span,
            _ => {}
        }
        match valued {
            Valued::Value(value) => self.value = Some(value),
            Valued::LastYear(assessed) => self.last_year = Some(assessed),
            Valued::TaxRate(rate) => self.rates.push(rate),
            Valued::Exemption(exemption) => self.exemptions.push(exemption),
            Valued::Homestead(since) => self.homestead = Some(since),
            Valued::Notice(date) => self.notice = Some(date),
            Valued::Place(place) => self.place = Some(place),
            Valued::Comparable(sale) => self.sales.push(sale),
        }
    }
}

impl Valued {
    /// What may be stated only once: the first words, with the name where there may be one per name.
    pub(crate) fn said(&self) -> String {
        match self {
            Valued::Value(_) => "value".to_owned(),
            Valued::LastYear(_) => "last year assessed".to_owned(),
            Valued::TaxRate(TaxRate { of: None, .. }) => "tax rate".to_owned(),
            Valued::TaxRate(TaxRate { of: Some(of), .. }) => format!("tax rate \"{of}\""),
            Valued::Exemption(exemption) => format!("exemption \"{}\"", exemption.name),
            Valued::Homestead(_) => "homestead".to_owned(),
            Valued::Notice(_) => "notice".to_owned(),
            Valued::Place(_) => "place".to_owned(),
            Valued::Comparable(sale) => format!("comparable \"{}\"", sale.name.text),
        }
    }

    /// Its canonical form.
    pub(crate) fn written(&self) -> String {
        match self {
            Valued::Value(value) => value.written(),
            Valued::LastYear(assessed) => format!("last year assessed {assessed}"),
            Valued::TaxRate(rate) => rate.written(),
            Valued::Exemption(it) => format!("exemption {} \"{}\"", it.amount, it.name),
            Valued::Homestead(since) => format!("homestead since {since}"),
            Valued::Notice(date) => format!("notice {date}"),
            Valued::Place(place) => format!("place {}", place.word()),
            Valued::Comparable(sale) => sale.written(),
        }
    }
}

impl Value {
    /// The values of two lines as one line, in its canonical form; `None` if both state the same kind, or other years.
    pub(super) fn together(&self, other: &Value) -> Option<String> {
        let clash = [
            (self.market, other.market),
            (self.assessed, other.assessed),
            (self.improvement, other.improvement),
            (self.new, other.new),
        ]
        .iter()
        .any(|(one, two)| one.is_some() && two.is_some());
        let years = self.year.zip(other.year).is_some_and(|(one, two)| one != two);
        let both = Value {
            market: self.market.or(other.market),
            assessed: self.assessed.or(other.assessed),
            improvement: self.improvement.or(other.improvement),
            new: self.new.or(other.new),
            year: self.year.or(other.year),
        };
        (!clash && !years).then(|| both.written())
    }

    fn written(&self) -> String {
        let mut line = "value".to_owned();
        let sums = [
            ("market", self.market),
            ("assessed", self.assessed),
            ("improvement", self.improvement),
            ("new", self.new),
        ];
        for (word, sum) in sums {
            if let Some(sum) = sum {
                let _ = write!(line, " {word} {sum}");
            }
        }
        if let Some(year) = self.year {
            let _ = write!(line, " year {year}");
        }
        line
    }

    /// A value that exceeds the market value although it is part of it or limited by it: its word, its amount, and the
    /// market value. `None` if there is none.
    pub(super) fn above_market(&self) -> Option<(&'static str, Money, Money)> {
        let market = self.market?;
        let parts = [("assessed", self.assessed), ("improvement", self.improvement)];
        let above = |(word, sum): (&'static str, Option<Money>)| Some((word, sum?, market));
        parts.into_iter().filter_map(above).find(|(_, sum, market)| sum > market)
    }
}

impl TaxRate {
    /// `2.14 per $100`
    pub(crate) fn spoken(&self) -> String {
        format!("{} per {}", self.rate, Money::new(Decimal::from(self.per), self.currency))
    }

    fn written(&self) -> String {
        let of = self.of.as_ref().map(|of| format!(" \"{of}\"")).unwrap_or_default();
        format!("tax rate {}{of}", self.spoken())
    }
}

impl Sale {
    fn written(&self) -> String {
        let recorded = self.recorded.map(|area| format!(" recorded {area}")).unwrap_or_default();
        let Sale { name, size, sold, on, .. } = self;
        format!("comparable \"{}\" {size} sold {sold} on {on}{recorded}", name.text)
    }
}
