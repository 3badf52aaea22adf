//! By when to act: days worked out from the file's own dates and the rules of its place.
//!
//! A day that a rule makes certain is told as a day; all else as a question to the appraisal office.

use jiff::civil::{Date, Weekday};
use jiff::{Span, ToSpan, Unit};
use rust_decimal::Decimal;

use crate::house::Values;
use crate::units::money::Money;
use crate::value::rules::{DateRule, Holidays, LawRule, PlaceRules, Sure};

/// By when to act, as far as the file's place has rules.
#[derive(Clone, Debug)]
pub struct Dates {
    pub(crate) year: Option<i16>,
    pub(crate) law: Option<&'static str>,
    pub(crate) moving: Option<&'static LawRule>,
    pub(crate) deadlines: Vec<Deadline>,
}

/// One line of the calendar: a rule, and the day that follows from it for this file.
#[derive(Clone, Debug)]
pub struct Deadline {
    pub(crate) rule: &'static LawRule,
    pub(crate) day: Option<Date>,
    pub(crate) unmoved: Option<Date>,
    pub(crate) moved_past: Vec<String>,
    pub(crate) in_words: Option<String>,
    pub(crate) asks: Vec<String>,
    pub(crate) is_certain: bool,
    pub(crate) correct_below: Option<Money>,
}

impl Dates {
    pub(crate) fn of(values: &Values, tax_year: Option<u16>, assessed: Option<Money>) -> Dates {
        let year = year_of(values, tax_year);
        let rules = values.place.and_then(PlaceRules::of);
        let deadlines = match (rules, year) {
            (Some(rules), Some(year)) => {
                let ground = Ground { values, rules, year, assessed };
                let dates = rules.dates.iter().filter(|date| date.is_for(year));
                dates.map(|date| ground.deadline(date)).collect()
            }
            _ => Vec::new(),
        };
        Dates {
            year,
            law: rules.map(|rules| rules.law.as_str()),
            moving: rules.map(|rules| &rules.moving),
            deadlines,
        }
    }

    /// The tax year: of the values, else of the file, else of the notice.
    pub fn year(&self) -> Option<i16> {
        self.year
    }

    /// The name of the law, where the file names a place with rules.
    pub fn law(&self) -> Option<&str> {
        self.law
    }

    /// The rule on last days that are no business days.
    pub fn moving(&self) -> Option<&LawRule> {
        self.moving
    }

    /// The days, in the order of the rules; none without a place, or without a year.
    pub fn deadlines(&self) -> &[Deadline] {
        &self.deadlines
    }

    /// What to ask the office where there are no rules.
    pub const fn questions() -> [&'static str; 2] {
        [
            "By which day does a protest or an appeal have to be with you, and how do you count it?",
            "After that day, what can still be corrected, for which years, and who may ask for it?",
        ]
    }
}

impl Deadline {
    /// The rule.
    pub fn rule(&self) -> &LawRule {
        self.rule
    }

    /// The last day, moved past days on which offices are closed.
    pub fn day(&self) -> Option<Date> {
        self.day
    }

    /// The last day before it was moved.
    pub fn unmoved(&self) -> Option<Date> {
        self.unmoved
    }

    /// The names of the days it was moved past.
    pub fn moved_past(&self) -> &[String] {
        &self.moved_past
    }

    /// When, where that is no day of the calendar: `14 days before the hearing`.
    pub fn in_words(&self) -> Option<&str> {
        self.in_words.as_deref()
    }

    /// What to ask the office, in sentences.
    pub fn asks(&self) -> &[String] {
        &self.asks
    }

    /// Whether the rule was read in the law itself and in its year; else the day is to be asked for.
    pub fn is_certain(&self) -> bool {
        self.is_certain
    }

    /// The correct value would have to be below this.
    pub fn correct_below(&self) -> Option<Money> {
        self.correct_below
    }

    /// Days from `today` to the last day; below zero once it has passed.
    pub fn days_left(&self, today: Date) -> Option<i32> {
        let span = today.until((Unit::Day, self.day?)).ok()?;
        Some(span.get_days())
    }
}

/// What deadlines follow from.
struct Ground<'a> {
    values: &'a Values,
    rules: &'static PlaceRules,
    year: i16,
    assessed: Option<Money>,
}

impl Ground<'_> {
    fn deadline(&self, date: &'static DateRule) -> Deadline {
        let rule = &date.rule;
        let mut deadline = Deadline {
            rule,
            day: None,
            unmoved: None,
            moved_past: Vec::new(),
            in_words: self.in_words(date),
            asks: self.about_the_year(rule).into_iter().collect(),
            is_certain: rule.sure() == Sure::Read && rule.is_of(self.year),
            correct_below: self.correct_below(date),
        };
        if let Some(fixed) = self.fixed(date) {
            self.set_day(&mut deadline, date, fixed);
        }
        deadline
    }

    fn in_words(&self, date: &DateRule) -> Option<String> {
        let years = |back| format!("tax years {} to {}", self.year - back, self.year - 1);
        date.in_words.clone().or_else(|| date.years_back.map(years))
    }

    fn about_the_year(&self, rule: &LawRule) -> Option<String> {
        (!rule.is_of(self.year)).then(|| {
            let (checked, year) = (rule.checked(), self.year);
            format!("Our notes on the law were last gone through on {checked}; for {year} it may be another.")
        })
    }

    fn fixed(&self, date: &DateRule) -> Option<Date> {
        Date::new(self.year.checked_add(date.years_later)?, date.month?, date.day?).ok()
    }

    fn set_day(&self, deadline: &mut Deadline, date: &DateRule, fixed: Date) {
        let last = match (date.days_after_notice, self.values.notice) {
            (None, _) => Some(fixed),
            (Some(days), Some(notice)) => days_after(notice, days).map(|day| day.max(fixed)),
            (Some(_), None) => None,
        };
        let Some(last) = last else {
            deadline.is_certain = false;
            deadline.asks.push(format!(
                "The file does not say when the notice was delivered (`notice {fixed}`); without it the day is {} or later.",
                spoken(fixed)
            ));
            return;
        };
        let (day, moved_past) =
            if date.moves { moved(last, &self.rules.holidays) } else { (last, Vec::new()) };
        deadline.asks.extend(self.about_holidays(last, day));
        deadline.day = Some(day);
        deadline.unmoved = Some(last);
        deadline.moved_past = moved_past;
    }

    /// Which days are legal holidays is from memory, so a day that was moved past one is a question too.
    fn about_holidays(&self, last: Date, day: Date) -> Option<String> {
        let holidays = &self.rules.holidays;
        let mut between = days(last).take_while(|between| *between < day);
        between.find(|between| !is_weekend(*between) && holidays.name_of(*between).is_some())?;
        let safe = days_before(last).find(|day| is_open(*day, holidays))?;
        Some(format!(
            "Ask if the office takes that day as a legal holiday ({}, {}); {} is safe either way.",
            holidays.section,
            holidays.sure.words(),
            spoken(safe)
        ))
    }

    /// The appraised value over one and the part by which it has to be more.
    fn correct_below(&self, date: &DateRule) -> Option<Money> {
        let more = date.more_than?;
        let [part, of] = if self.values.homestead.is_some() { more.homestead } else { more.other };
        let assessed = self.assessed?.dollars();
        let below = (assessed * Decimal::from(of)).checked_div(Decimal::from(part + of))?;
        Some(Money::figured(below))
    }
}

/// The tax year: of the values, else of the file, else of the notice.
fn year_of(values: &Values, tax_year: Option<u16>) -> Option<i16> {
    let said = values.value.and_then(|value| value.year).or(tax_year);
    match said {
        Some(year) => i16::try_from(year).ok(),
        None => values.notice.map(Date::year),
    }
}

/// The day so many days later.
pub(crate) fn days_after(day: Date, days: i32) -> Option<Date> {
    let span: Span = days.days();
    day.checked_add(span).ok()
}

/// The day and those after it.
fn days(from: Date) -> impl Iterator<Item = Date> {
    std::iter::successors(Some(from), |day| days_after(*day, 1))
}

/// The day and those before it.
fn days_before(from: Date) -> impl Iterator<Item = Date> {
    std::iter::successors(Some(from), |day| days_after(*day, -1))
}

fn is_weekend(day: Date) -> bool {
    matches!(day.weekday(), Weekday::Saturday | Weekday::Sunday)
}

fn is_open(day: Date, holidays: &Holidays) -> bool {
    !is_weekend(day) && holidays.name_of(day).is_none()
}

/// The next day on which offices are open, and what it was moved past.
fn moved(last: Date, holidays: &Holidays) -> (Date, Vec<String>) {
    let day = days(last).find(|day| is_open(*day, holidays)).unwrap_or(last);
    let past = days(last).take_while(|closed| *closed < day).map(|closed| {
        let name = holidays.name_of(closed).map(|name| format!(", {name}")).unwrap_or_default();
        format!("{}{name}", spoken(closed))
    });
    (day, past.collect())
}

/// `Monday, May 18, 2026`
pub(crate) fn spoken(day: Date) -> String {
    day.strftime("%A, %B %-d, %Y").to_string()
}
