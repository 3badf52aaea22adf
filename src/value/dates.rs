//! The deadlines, computed from the file's own dates and the rules of its place.
//!
//! A day that a rule fixes is given as a day; anything else becomes a question for the appraisal office.

use jiff::Unit;
use jiff::civil::{Date, Weekday};
use rust_decimal::Decimal;

use crate::house::Values;
use crate::reconcile::CauseClass;
use crate::units::money::Money;
use crate::value::rules::{
    Corrects, DateRule, Holidays, LawRule, PlaceRules, Reach, Sure, When, days_after, nth_weekday,
};

/// The deadlines; without rules for the file's place, only questions.
#[derive(Clone, Debug)]
pub struct Dates {
    pub(crate) year: Option<i16>,
    pub(crate) law: Option<&'static str>,
    pub(crate) moving: Option<&'static LawRule>,
    pub(crate) deadlines: Vec<Deadline>,
}

/// One deadline: a rule, and the day that follows from it for this file.
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
    corrects: Option<Corrects>,
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
            moving: rules.and_then(|rules| rules.moving.as_ref()),
            deadlines,
        }
    }

    /// The tax year: from the values, else from the head of the file, else from the notice; `None` if none of them
    /// states it.
    #[must_use]
    pub fn year(&self) -> Option<i16> {
        self.year
    }

    /// The name of the law, if the file names a place with rules.
    #[must_use]
    pub fn law(&self) -> Option<&str> {
        self.law
    }

    /// The rule for last days that are not business days; `None` without such a rule.
    #[must_use]
    pub fn moving(&self) -> Option<&LawRule> {
        self.moving
    }

    /// The ways of correction that cover, or may cover, at least one of these classes, in the order of the rules.
    #[must_use]
    pub fn routes(&self, classes: &[CauseClass]) -> Vec<&Deadline> {
        let reaches = |deadline: &&Deadline| {
            classes.iter().any(|class| !matches!(deadline.reach(*class), None | Some(Reach::No)))
        };
        self.deadlines.iter().filter(reaches).collect()
    }

    /// The deadlines, in the order of the rules; empty without a place or a year.
    #[must_use]
    pub fn deadlines(&self) -> &[Deadline] {
        &self.deadlines
    }

    /// What to ask the office if there are no rules.
    #[must_use]
    pub const fn questions() -> [&'static str; 2] {
        [
            "By which day does a protest or an appeal have to be with you, and how do you count it?",
            "After that day, what can still be corrected, for which years, and who may ask for it?",
        ]
    }
}

impl Deadline {
    /// The rule it follows from.
    #[must_use]
    pub fn rule(&self) -> &LawRule {
        self.rule
    }

    /// The last day to act, moved past days on which offices are closed; `None` if the rule gives no calendar day for
    /// this file.
    #[must_use]
    pub fn day(&self) -> Option<Date> {
        self.day
    }

    /// The last day before it was moved; `None` if it was not moved.
    #[must_use]
    pub fn unmoved(&self) -> Option<Date> {
        self.unmoved
    }

    /// The days it was moved past, with their names.
    #[must_use]
    pub fn moved_past(&self) -> &[String] {
        &self.moved_past
    }

    /// The time in words if it is not a calendar day: `14 days before the hearing`.
    #[must_use]
    pub fn in_words(&self) -> Option<&str> {
        self.in_words.as_deref()
    }

    /// Questions for the office, as sentences.
    #[must_use]
    pub fn asks(&self) -> &[String] {
        &self.asks
    }

    /// Whether the rule was read in the law itself and for this tax year; otherwise the office has to be asked.
    #[must_use]
    pub fn is_certain(&self) -> bool {
        self.is_certain
    }

    /// The amount that the correct value has to be below for the rule to apply; `None` if the rule has no such limit
    /// or the appraised value is not known.
    #[must_use]
    pub fn correct_below(&self) -> Option<Money> {
        self.correct_below
    }

    /// Whether the rule corrects a class of cause; `None` if it is not a way of correction.
    #[must_use]
    pub fn reach(&self, class: CauseClass) -> Option<Reach> {
        self.corrects.map(|corrects| corrects.reach(class))
    }

    /// The number of days from `today` to the last day, negative once that has passed; `None` if there is no last
    /// day.
    #[must_use]
    pub fn days_left(&self, today: Date) -> Option<i32> {
        let span = today.until((Unit::Day, self.day?)).ok()?;
        Some(span.get_days())
    }
}

/// The facts from which deadlines follow.
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
            is_certain: rule.sure() == Sure::Read && rule.is_of(self.year) && !date.usually,
            correct_below: self.correct_below(date),
            corrects: date.corrects,
        };
        self.set_when(&mut deadline, date);
        deadline.asks.extend(date.ask.clone());
        deadline
    }

    fn in_words(&self, date: &DateRule) -> Option<String> {
        match &date.when {
            When::InWords { words } => Some(words.clone()),
            When::YearsBack { years } => {
                Some(format!("tax years {} to {}", self.year - years, self.year - 1))
            }
            _ => None,
        }
    }

    fn about_the_year(&self, rule: &LawRule) -> Option<String> {
        (!rule.is_of(self.year)).then(|| {
            let (checked, year) = (rule.checked(), self.year);
            format!("Our notes on the law were last checked on {checked}; the law for {year} may differ.")
        })
    }

    fn set_when(&self, deadline: &mut Deadline, date: &DateRule) {
        let fixed = |month, day, later| Date::new(self.year.checked_add(later)?, month, day).ok();
        let last = match &date.when {
            When::Fixed { month, day, years_later } => fixed(*month, *day, *years_later),
            When::LaterOf { month, day, days } => {
                let Some(fixed) = fixed(*month, *day, 0) else { return };
                match self.values.notice {
                    Some(notice) => days_after(notice, *days).map(|day| day.max(fixed)),
                    None => {
                        return ask_for_the_notice(
                            deadline,
                            fixed,
                            &format!("the day is {} or later", spoken(fixed)),
                        );
                    }
                }
            }
            When::AfterNotice { days } => match self.values.notice {
                Some(notice) => days_after(notice, *days),
                None => {
                    let example = fixed(8, 14, 0).unwrap_or(Date::MIN);
                    return ask_for_the_notice(
                        deadline,
                        example,
                        &format!("it is {days} days after the notice"),
                    );
                }
            },
            When::Weekday { month, weekday, nth, days_later } => {
                nth_weekday(self.year, *month, weekday, *nth, *days_later)
            }
            When::SetLocally {} => {
                deadline.is_certain = false;
                None
            }
            When::InWords { .. } | When::YearsBack { .. } => None,
        };
        if let Some(last) = last {
            self.set_day(deadline, date, last);
        }
    }

    fn set_day(&self, deadline: &mut Deadline, date: &DateRule, last: Date) {
        let (day, moved_past) =
            if date.moves { moved(last, &self.rules.holidays) } else { (last, Vec::new()) };
        deadline.asks.extend(self.about_holidays(last, day));
        deadline.asks.extend(self.about_a_weekend(day));
        deadline.day = Some(day);
        deadline.unmoved = Some(last);
        deadline.moved_past = moved_past;
    }

    /// Asks about a last day on a weekend if there is no rule for moving it.
    fn about_a_weekend(&self, day: Date) -> Option<String> {
        if self.rules.moving.is_some() || !is_weekend(day) {
            return None;
        }
        let safe = days_before(day).find(|day| !is_weekend(*day))?;
        Some(format!(
            "That is a {}: ask whether the last day moves; {} is safe either way.",
            day.strftime("%A"),
            spoken(safe)
        ))
    }

    /// Asks about a legal holiday that a last day was moved past, since offices differ in which they observe.
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

    /// The appraised value divided by one plus the fraction by which it must exceed the correct value.
    fn correct_below(&self, date: &DateRule) -> Option<Money> {
        let more = date.more_than?;
        let [part, of] = if self.values.homestead.is_some() { more.homestead } else { more.other };
        let assessed = self.assessed?;
        let below =
            (assessed.amount() * Decimal::from(of)).checked_div(Decimal::from(part + of))?;
        Some(assessed.with(below))
    }
}

/// Asks for the date of the notice, without which there is no last day.
fn ask_for_the_notice(deadline: &mut Deadline, example: Date, without: &str) {
    deadline.is_certain = false;
    deadline.asks.push(format!(
    "The file does not say when the notice was delivered (`notice {example}`); without it {without}."
));
}

/// The tax year: from the values, else from the head of the file, else from the notice.
fn year_of(values: &Values, tax_year: Option<u16>) -> Option<i16> {
    let said = values.value.and_then(|value| value.year).or(tax_year);
    match said {
        Some(year) => i16::try_from(year).ok(),
        None => values.notice.map(Date::year),
    }
}

/// The days from this one on.
fn days(from: Date) -> impl Iterator<Item = Date> {
    std::iter::successors(Some(from), |day| days_after(*day, 1))
}

/// The days from this one back.
fn days_before(from: Date) -> impl Iterator<Item = Date> {
    std::iter::successors(Some(from), |day| days_after(*day, -1))
}

fn is_weekend(day: Date) -> bool {
    matches!(day.weekday(), Weekday::Saturday | Weekday::Sunday)
}

fn is_open(day: Date, holidays: &Holidays) -> bool {
    !is_weekend(day) && holidays.name_of(day).is_none()
}

/// The next day on which offices are open, and the days it was moved past.
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
