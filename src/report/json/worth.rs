//! What the gap is worth, as JSON: the key `worth`, absent if the file states no values.
//!
//! Amounts are in the currency of the file, called dollars: exact strings with up to six decimals, and whole numbers
//! rounded once. Days are strings such as `2026-05-18`. What cannot be computed is null.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use serde::Serialize;

use crate::units::money::Money;
use crate::value::{
    Cap, CauseClass, Comparable, Comparables, Dates, Deadline, Gap, Tax, TaxOutcome, Way, Worth,
};

/// What the gap between record and house is worth, and the days by which to act.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WorthReport {
    /// The gap between record and measured area; null without a record.
    pub gap: Option<GapReport>,
    /// The currency sign of all amounts as it was typed, or empty; `dollars` below means this currency.
    pub currency: &'static str,
    /// Ways to convert the gap into money; empty if the record is not larger.
    pub ways: Vec<WayReport>,
    /// The most that a capped value may be this year; null without a cap.
    pub cap: Option<CapReport>,
    /// Whether the gap would change the tax; null if the file does not give enough for that, or the record is not
    /// larger.
    pub tax: Option<TaxReport>,
    /// The comparables.
    pub comparables: ComparablesReport,
    /// The days by which to act.
    pub dates: DatesReport,
    /// What to bring to the office; empty if the record is not larger.
    pub bring: Vec<String>,
    /// Cautions about all of this.
    pub cautions: Vec<&'static str>,
}

/// The gap, in whole square feet.
#[derive(Debug, Serialize, JsonSchema)]
pub struct GapReport {
    /// The area on the record.
    pub record_sq_ft: i64,
    /// The measured area.
    pub measured_sq_ft: i64,
    /// The measured area at the record's own face and with what it counts.
    pub alike_sq_ft: i64,
    /// The names of what the record says it counts.
    pub counting: Vec<String>,
    /// The record minus `alike_sq_ft`.
    pub sq_ft: i64,
}

/// An amount of money.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MoneyReport {
    /// The amount in whole dollars; null if it is too large for a number.
    pub dollars: Option<i64>,
    /// The amount in dollars, with up to six decimals.
    pub exact: String,
}

/// What one way gives for the gap. It is not the value of the house.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WayReport {
    /// The way: `in proportion` or `by unit price`.
    pub way: &'static str,
    /// The amount that it gives for the gap.
    pub gives: MoneyReport,
    /// The amount at the lowest unit price; null if the way has no range.
    pub low: Option<MoneyReport>,
    /// The amount at the highest unit price; null if the way has no range.
    pub high: Option<MoneyReport>,
    /// The calculation, as one would type it into a pocket calculator.
    pub working: String,
}

/// The most that a capped value may be.
#[derive(Debug, Serialize, JsonSchema)]
pub struct CapReport {
    /// Last year's assessed value.
    pub last: MoneyReport,
    /// The percentage by which the value may rise.
    pub per_cent: u32,
    /// The market value of new improvements.
    pub new_improvements: MoneyReport,
    /// The most that the value may be.
    pub most: MoneyReport,
    /// The section of the law that sets the limit.
    pub section: String,
}

/// Whether the gap would change the tax.
#[derive(Debug, Serialize, JsonSchema)]
pub struct TaxReport {
    /// The market value on the notice.
    pub market: MoneyReport,
    /// The value that is taxed; the tax changes only if the market value falls below it.
    pub assessed: MoneyReport,
    /// Whether the appraised value for tax was computed from the cap because the file does not state it.
    pub is_figured: bool,
    /// The result of each way.
    pub outcomes: Vec<OutcomeReport>,
}

/// What one way would do to the tax.
#[derive(Debug, Serialize, JsonSchema)]
pub struct OutcomeReport {
    /// The name of the way.
    pub way: &'static str,
    /// The market value minus what the way gives.
    pub market: MoneyReport,
    /// The value that would then be taxed.
    pub assessed: MoneyReport,
    /// Whether the appraised value for tax would be lower than it is now.
    pub reaches_the_tax: bool,
    /// The tax saved, estimated at the rates of the file; null without rates.
    pub less_tax: Option<MoneyReport>,
}

/// The comparables.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ComparablesReport {
    /// How near in size a comparable has to be to count as near, in percent.
    pub band_per_cent: u8,
    /// The comparables in file order.
    pub list: Vec<ComparableReport>,
    /// Their unit prices, in dollars per square foot; null without comparables.
    pub unit_price: Option<UnitPriceReport>,
}

/// One comparable.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ComparableReport {
    /// Its name.
    pub name: String,
    /// Its size in square feet.
    pub sq_ft: i64,
    /// Its size on the record, in square feet; null if the file does not state it.
    pub recorded_sq_ft: Option<i64>,
    /// The price it was sold for.
    pub sold: MoneyReport,
    /// The day of the sale.
    pub on: String,
    /// Price divided by size, in dollars per square foot.
    pub unit_price: String,
    /// Whether its size is near the recorded size of the house; null without a record.
    pub near_record: Option<bool>,
    /// Whether its size is near the measured size of the house; null if nothing was measured.
    pub near_measured: Option<bool>,
}

/// Unit prices, in dollars per square foot.
#[derive(Debug, Serialize, JsonSchema)]
pub struct UnitPriceReport {
    /// The lowest.
    pub low: String,
    /// The median.
    pub median: String,
    /// The highest.
    pub high: String,
    /// The number of comparables used.
    pub count: usize,
    /// Whether only those near the measured size were used.
    pub of_near_ones: bool,
}

/// The days by which to act.
#[derive(Debug, Serialize, JsonSchema)]
pub struct DatesReport {
    /// The tax year; null if the file does not state it.
    pub year: Option<i16>,
    /// The name of the law; null if the file names no place with rules.
    pub law: Option<String>,
    /// The day from which days left are counted; null if they are not counted.
    pub today: Option<String>,
    /// The classes of mistakes that may be behind the gap to the record: `typed`, `described`, `measured`.
    pub classes: Vec<&'static str>,
    /// The deadlines, in the order of the rules.
    pub days: Vec<DayReport>,
    /// What to ask the office if there are no rules.
    pub questions: Vec<&'static str>,
}

/// One deadline.
#[derive(Debug, Serialize, JsonSchema)]
pub struct DayReport {
    /// A stable key for the rule.
    pub rule: String,
    /// The section of the law.
    pub section: String,
    /// What the rule says, in our words.
    pub says: String,
    /// The date it took effect.
    pub effective: String,
    /// How sure the rule is: `read in a copy of the law`, `read second-hand` or `from memory`.
    pub sure: &'static str,
    /// The day the rule was last checked.
    pub checked: String,
    /// Whether the rule was read in the law itself and for this tax year; if not, the office has to be asked.
    pub is_certain: bool,
    /// The last day to act; null if the rule gives no calendar day.
    pub day: Option<String>,
    /// The last day before it was moved; null if it was not moved.
    pub unmoved: Option<String>,
    /// The weekend days and holidays that it was moved past.
    pub moved_past: Vec<String>,
    /// The time in words, if it is not a calendar day; else null.
    pub in_words: Option<String>,
    /// The amount that the correct value has to be below for the rule to apply; null without such a limit.
    pub correct_below: Option<MoneyReport>,
    /// For each of these classes, whether the rule corrects it: `yes`, `ask` or `no`; null if the rule is not a way
    /// of correction.
    pub corrects: Option<BTreeMap<&'static str, &'static str>>,
    /// What to ask the office.
    pub ask: Vec<String>,
    /// The number of days left; null if there is no last day or no day to count from.
    pub days_left: Option<i32>,
}

/// A [`Worth`] as data for JSON.
pub fn worth(worth: &Worth) -> WorthReport {
    WorthReport {
        gap: worth.gap().map(gap),
        currency: worth.currency().sign(),
        ways: worth.ways().iter().map(way).collect(),
        cap: worth.cap().map(cap),
        tax: worth.tax().map(tax),
        comparables: comparables(worth.comparables()),
        dates: dates(worth),
        bring: worth.checklist().to_vec(),
        cautions: Worth::cautions().to_vec(),
    }
}

fn money(money: Money) -> MoneyReport {
    MoneyReport { dollars: money.whole(), exact: money.decimal_text() }
}

fn gap(gap: &Gap) -> GapReport {
    GapReport {
        record_sq_ft: gap.record(),
        measured_sq_ft: gap.measured(),
        alike_sq_ft: gap.alike(),
        counting: gap.counted().to_vec(),
        sq_ft: gap.sq_ft(),
    }
}

fn way(way: &Way) -> WayReport {
    WayReport {
        way: way.method().key(),
        gives: money(way.amount()),
        low: way.range().map(|(low, _)| money(low)),
        high: way.range().map(|(_, high)| money(high)),
        working: way.working().to_owned(),
    }
}

fn cap(cap: &Cap) -> CapReport {
    CapReport {
        last: money(cap.last()),
        per_cent: cap.per_cent(),
        new_improvements: money(cap.new_improvements()),
        most: money(cap.most()),
        section: cap.rule().section().to_owned(),
    }
}

fn tax(tax: &Tax) -> TaxReport {
    TaxReport {
        market: money(tax.market()),
        assessed: money(tax.assessed()),
        is_figured: tax.is_assessed_computed(),
        outcomes: tax.outcomes().iter().map(outcome).collect(),
    }
}

fn outcome(outcome: &TaxOutcome) -> OutcomeReport {
    OutcomeReport {
        way: outcome.method().key(),
        market: money(outcome.market()),
        assessed: money(outcome.assessed()),
        reaches_the_tax: outcome.reaches(),
        less_tax: outcome.less_tax().map(money),
    }
}

fn comparables(comparables: &Comparables) -> ComparablesReport {
    ComparablesReport {
        band_per_cent: comparables.band(),
        list: comparables.list().iter().map(comparable).collect(),
        unit_price: comparables.unit_price().map(|unit| UnitPriceReport {
            low: unit.low().decimal_text(),
            median: unit.median().decimal_text(),
            high: unit.high().decimal_text(),
            count: unit.count(),
            of_near_ones: unit.is_of_near_ones(),
        }),
    }
}

fn comparable(one: &Comparable) -> ComparableReport {
    ComparableReport {
        name: one.name().to_owned(),
        sq_ft: one.sq_ft(),
        recorded_sq_ft: one.recorded_sq_ft(),
        sold: money(one.sold()),
        on: one.on().to_string(),
        unit_price: one.unit_price().decimal_text(),
        near_record: one.is_near_record(),
        near_measured: one.is_near_measured(),
    }
}

fn dates(worth: &Worth) -> DatesReport {
    let dates = worth.dates();
    let questions = if dates.law().is_none() { Dates::questions().to_vec() } else { Vec::new() };
    DatesReport {
        year: dates.year(),
        law: dates.law().map(str::to_owned),
        today: worth.today().map(|today| today.to_string()),
        classes: worth.classes().iter().map(|class| class.word()).collect(),
        days: dates.deadlines().iter().map(|deadline| day(worth, deadline)).collect(),
        questions,
    }
}

fn day(worth: &Worth, deadline: &Deadline) -> DayReport {
    let rule = deadline.rule();
    DayReport {
        rule: rule.key().to_owned(),
        section: rule.section().to_owned(),
        says: rule.says().to_owned(),
        effective: rule.effective().to_owned(),
        sure: rule.sure().words(),
        checked: rule.checked().to_owned(),
        is_certain: deadline.is_certain(),
        day: deadline.day().map(|day| day.to_string()),
        unmoved: deadline.unmoved().map(|day| day.to_string()),
        moved_past: deadline.moved_past().to_vec(),
        in_words: deadline.in_words().map(str::to_owned),
        corrects: corrects(worth, deadline),
        correct_below: deadline.correct_below().map(money),
        ask: deadline.asks().to_vec(),
        days_left: worth.today().and_then(|today| deadline.days_left(today)),
    }
}

fn corrects(worth: &Worth, deadline: &Deadline) -> Option<BTreeMap<&'static str, &'static str>> {
    let reach = |class: &CauseClass| Some((class.word(), deadline.reach(*class)?.word()));
    let found: BTreeMap<_, _> = worth.classes().iter().filter_map(reach).collect();
    (!found.is_empty()).then_some(found)
}
