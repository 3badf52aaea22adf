//! What a gap is worth, as JSON: the key `worth`, absent where the file says nothing of it.
//!
//! Sums are dollars: texts with up to six places, exact, and whole numbers rounded once. Days are
//! texts as `2026-05-18`. What cannot be stated is null.

use schemars::JsonSchema;
use serde::Serialize;

use crate::units::money::Money;
use crate::value::{Cap, Comparable, Comparables, Dates, Deadline, Gap, Outcome, Tax, Way, Worth};

/// What the gap between record and house is worth, and by when to act.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WorthReport {
    /// The record beside what was measured; null without a record.
    pub gap: Option<GapReport>,
    /// Ways from size to value; empty where the record is not larger.
    pub ways: Vec<WayReport>,
    /// How far a capped value may go this year.
    pub cap: Option<CapReport>,
    /// Whether it reaches the tax.
    pub tax: Option<TaxReport>,
    /// The comparables.
    pub comparables: ComparablesReport,
    /// By when to act.
    pub dates: DatesReport,
    /// What to bring; empty where the record is not larger.
    pub bring: Vec<String>,
    /// What is said beside all of it.
    pub cautions: Vec<&'static str>,
}

/// The gap in whole square feet.
#[derive(Debug, Serialize, JsonSchema)]
pub struct GapReport {
    /// The record.
    pub record_sq_ft: i64,
    /// What was measured.
    pub measured_sq_ft: i64,
    /// What was measured, with the face and the counting that the record gives itself.
    pub alike_sq_ft: i64,
    /// What it says it counts.
    pub counting: Vec<String>,
    /// The record less that.
    pub sq_ft: i64,
}

/// A sum of money.
#[derive(Debug, Serialize, JsonSchema)]
pub struct MoneyReport {
    /// In whole dollars; null beyond what a number holds.
    pub dollars: Option<i64>,
    /// Exactly, as far as six places go.
    pub exact: String,
}

/// What one way gives. It is not the value.
#[derive(Debug, Serialize, JsonSchema)]
pub struct WayReport {
    /// `in proportion` or `by unit price`.
    pub way: &'static str,
    /// What it gives for the gap.
    pub gives: MoneyReport,
    /// At the lowest unit price.
    pub low: Option<MoneyReport>,
    /// At the highest.
    pub high: Option<MoneyReport>,
    /// The sum as a pocket calculator takes it.
    pub working: String,
}

/// The most that a capped value may be.
#[derive(Debug, Serialize, JsonSchema)]
pub struct CapReport {
    /// Last year's value.
    pub last: MoneyReport,
    /// By how many per cent it may rise.
    pub per_cent: u32,
    /// The market value of new improvements.
    pub new_improvements: MoneyReport,
    /// The most.
    pub most: MoneyReport,
    /// Its section of the law.
    pub section: String,
}

/// Whether it reaches the tax.
#[derive(Debug, Serialize, JsonSchema)]
pub struct TaxReport {
    /// The market value.
    pub market: MoneyReport,
    /// What the tax is paid on: a market value below it changes the tax.
    pub assessed: MoneyReport,
    /// Whether that was worked out by the cap.
    pub is_figured: bool,
    /// What becomes of it by each way.
    pub outcomes: Vec<OutcomeReport>,
}

/// What becomes of the tax by one way.
#[derive(Debug, Serialize, JsonSchema)]
pub struct OutcomeReport {
    /// By which way.
    pub way: &'static str,
    /// The market value less what it gives.
    pub market: MoneyReport,
    /// What the tax would be paid on.
    pub assessed: MoneyReport,
    /// Whether that is less than now.
    pub reaches_the_tax: bool,
    /// Less tax, an estimate at the rates of the file; null without one.
    pub less_tax: Option<MoneyReport>,
}

/// The comparables.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ComparablesReport {
    /// How near in size is near, in per cent.
    pub band_per_cent: u8,
    /// Each of them in file order.
    pub list: Vec<ComparableReport>,
    /// Their unit price, in dollars a square foot.
    pub unit_price: Option<UnitPriceReport>,
}

/// One comparable.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ComparableReport {
    /// Its name.
    pub name: String,
    /// Its size.
    pub sq_ft: i64,
    /// Its size on the record.
    pub recorded_sq_ft: Option<i64>,
    /// Its price.
    pub sold: MoneyReport,
    /// The day it was sold.
    pub on: String,
    /// Price over size.
    pub unit_price: String,
    /// Whether it is near the house's recorded size.
    pub near_record: Option<bool>,
    /// Whether it is near the house's measured size.
    pub near_measured: Option<bool>,
}

/// Prices over sizes, in dollars a square foot.
#[derive(Debug, Serialize, JsonSchema)]
pub struct UnitPriceReport {
    /// The lowest.
    pub low: String,
    /// The median.
    pub median: String,
    /// The highest.
    pub high: String,
    /// Of how many.
    pub count: usize,
    /// Whether of those near the measured size alone.
    pub of_near_ones: bool,
}

/// By when to act.
#[derive(Debug, Serialize, JsonSchema)]
pub struct DatesReport {
    /// The tax year.
    pub year: Option<i16>,
    /// The law, where the file names a place with rules.
    pub law: Option<String>,
    /// The day from which days left are counted.
    pub today: Option<String>,
    /// The days, in the order of the rules.
    pub days: Vec<DayReport>,
    /// What to ask where there are no rules.
    pub questions: Vec<&'static str>,
}

/// One line of the calendar.
#[derive(Debug, Serialize, JsonSchema)]
pub struct DayReport {
    /// A word for the rule that does not change.
    pub rule: String,
    /// Its section.
    pub section: String,
    /// What it says, in our words.
    pub says: String,
    /// Since when.
    pub effective: String,
    /// How sure that is.
    pub sure: &'static str,
    /// The day it was last looked at.
    pub checked: String,
    /// Whether the day is certain; else it is to be asked for.
    pub is_certain: bool,
    /// The last day.
    pub day: Option<String>,
    /// The last day before it was moved.
    pub unmoved: Option<String>,
    /// What it was moved past.
    pub moved_past: Vec<String>,
    /// When, where that is no day.
    pub in_words: Option<String>,
    /// The correct value would have to be below this.
    pub correct_below: Option<MoneyReport>,
    /// What to ask the office.
    pub ask: Vec<String>,
    /// Days left; null without a day to count from.
    pub days_left: Option<i32>,
}

/// The report of it.
pub fn worth(worth: &Worth) -> WorthReport {
    WorthReport {
        gap: worth.gap().map(gap),
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
    MoneyReport { dollars: money.whole_dollars(), exact: money.decimal_text() }
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
        gives: money(way.gives()),
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
        is_figured: tax.is_figured(),
        outcomes: tax.outcomes().iter().map(outcome).collect(),
    }
}

fn outcome(outcome: &Outcome) -> OutcomeReport {
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
        recorded_sq_ft: one.recorded(),
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
        correct_below: deadline.correct_below().map(money),
        ask: deadline.asks().to_vec(),
        days_left: worth.today().and_then(|today| deadline.days_left(today)),
    }
}
