//! The rules of a place: data that cites sections of the law, one file per place in `places/`.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use jiff::civil::{Date, Weekday};
use jiff::{Span, ToSpan};
use serde::Deserialize;

use crate::house::Place;
use crate::reconcile::CauseClass;

/// The rules of every place, by its word. A test checks that every file can be read.
static RULES: LazyLock<BTreeMap<&str, PlaceRules>> = LazyLock::new(|| {
    let read = |place: Place| Some((place.word(), read(text_of(place)?).ok()?));
    Place::ALL.iter().copied().filter_map(read).collect()
});

/// The rules file of a place; `None` for `place none`.
const fn text_of(place: Place) -> Option<&'static str> {
    Some(match place {
        Place::None => return None,
        Place::Texas => include_str!("places/texas.json"),
        Place::Washington => include_str!("places/washington.json"),
        Place::Colorado => include_str!("places/colorado.json"),
        Place::California => include_str!("places/california.json"),
        Place::NewYork => include_str!("places/new-york.json"),
        Place::Ohio => include_str!("places/ohio.json"),
        Place::Florida => include_str!("places/florida.json"),
        Place::Georgia => include_str!("places/georgia.json"),
        Place::NewJersey => include_str!("places/new-jersey.json"),
        Place::Virginia => include_str!("places/virginia.json"),
        Place::Michigan => include_str!("places/michigan.json"),
    })
}

fn read(text: &str) -> Result<PlaceRules, serde_json::Error> {
    serde_json::from_str(text)
}

/// How sure it is that a rule is stated correctly.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Deserialize)]
pub enum Sure {
    /// Read in a copy of the law itself.
    #[serde(rename = "read")]
    Read,
    /// Read where someone else quotes or summarizes it.
    #[serde(rename = "second-hand")]
    SecondHand,
    /// From memory.
    #[default]
    #[serde(rename = "memory")]
    Memory,
}

impl Sure {
    /// In words, as in JSON.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Sure::Read => "read in a copy of the law",
            Sure::SecondHand => "read second-hand",
            Sure::Memory => "from memory",
        }
    }
}

/// One rule of law in our words, with its source.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LawRule {
    pub(crate) key: String,
    pub(crate) name: String,
    pub(crate) section: String,
    pub(crate) says: String,
    pub(crate) effective: String,
    pub(crate) sure: Sure,
    pub(crate) checked: String,
}

impl LawRule {
    /// A stable key for it, as in JSON.
    #[must_use]
    pub fn key(&self) -> &str {
        &self.key
    }

    /// What it is about, shown beside its day.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The section of the law.
    #[must_use]
    pub fn section(&self) -> &str {
        &self.section
    }

    /// What it says, in our words.
    #[must_use]
    pub fn says(&self) -> &str {
        &self.says
    }

    /// The date it took effect, if known.
    #[must_use]
    pub fn effective(&self) -> &str {
        &self.effective
    }

    /// How sure it is that the rule is stated correctly.
    #[must_use]
    pub fn sure(&self) -> Sure {
        self.sure
    }

    /// The day on which the rule was last checked: `2026-11-25`.
    #[must_use]
    pub fn checked(&self) -> &str {
        &self.checked
    }

    /// Whether it was checked in the tax year itself, since laws change from year to year.
    pub(crate) fn is_of(&self, year: i16) -> bool {
        self.checked.parse::<Date>().is_ok_and(|checked| checked.year() == year)
    }
}

/// The rules of one place.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct PlaceRules {
    pub(crate) law: String,
    /// How last days are moved past days on which offices are closed; without this rule they are not moved.
    pub(crate) moving: Option<LawRule>,
    pub(crate) cap: Option<CapRule>,
    /// The wording that may be signed instead of an oath, if the place has one.
    pub(crate) declaration: Option<DeclarationRule>,
    pub(crate) dates: Vec<DateRule>,
    #[serde(default)]
    pub(crate) holidays: Holidays,
}

impl PlaceRules {
    /// The rules of a place; `None` for `place none`.
    pub(crate) fn of(place: Place) -> Option<&'static PlaceRules> {
        RULES.get(place.word())
    }

    /// Every rule that has a source, those about days first.
    #[cfg(test)]
    fn all(&self) -> impl Iterator<Item = &LawRule> {
        let others = [
            self.moving.as_ref(),
            self.cap.as_ref().map(|cap| &cap.rule),
            self.declaration.as_ref().map(|declaration| &declaration.rule),
        ];
        self.dates.iter().map(|date| &date.rule).chain(others.into_iter().flatten())
    }
}

/// A declaration that a place takes instead of an oath, in the words of its law.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct DeclarationRule {
    pub(crate) rule: LawRule,
    /// What is signed, with `____` for each blank.
    pub(crate) words: String,
}

/// The percentage by which a capped value may rise in a year.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct CapRule {
    pub(crate) per_cent: u32,
    pub(crate) rule: LawRule,
}

/// A rule that fixes a day, or says in words when something is possible.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct DateRule {
    pub(crate) rule: LawRule,
    pub(crate) when: When,
    /// The range of tax years it applies to.
    from_year: Option<i16>,
    to_year: Option<i16>,
    /// Whether it is moved past days on which offices are closed.
    #[serde(default)]
    pub(crate) moves: bool,
    /// Whether the day is only the usual one; it is then given as a question even if the rule is certain.
    #[serde(default)]
    pub(crate) usually: bool,
    /// What else the office has to be asked.
    pub(crate) ask: Option<String>,
    pub(crate) more_than: Option<MoreThan>,
    /// Which classes of cause it corrects; `None` if it is not a way of correction.
    pub(crate) corrects: Option<Corrects>,
}

impl DateRule {
    pub(crate) fn is_for(&self, year: i16) -> bool {
        self.from_year.is_none_or(|from| from <= year) && self.to_year.is_none_or(|to| year <= to)
    }
}

/// When something has to be done.
#[derive(Clone, Debug, Deserialize)]
#[serde(tag = "kind", deny_unknown_fields)]
pub(crate) enum When {
    /// On a calendar day, in the tax year or some years later.
    #[serde(rename = "fixed")]
    Fixed {
        month: i8,
        day: i8,
        #[serde(default)]
        years_later: i16,
    },
    /// A number of days after the notice.
    #[serde(rename = "after notice")]
    AfterNotice { days: i32 },
    /// The later of a calendar day and a number of days after the notice.
    #[serde(rename = "later of")]
    LaterOf { month: i8, day: i8, days: i32 },
    /// The nth weekday of a month, or a number of days after it.
    #[serde(rename = "weekday")]
    Weekday {
        month: i8,
        weekday: String,
        nth: i8,
        #[serde(default)]
        days_later: i32,
    },
    /// A day set by the office, which has to be asked.
    #[serde(rename = "set locally")]
    SetLocally {},
    /// Not a calendar day: `14 days before the hearing`.
    #[serde(rename = "in words")]
    InWords { words: String },
    /// Any time, for this many earlier tax years.
    #[serde(rename = "years back")]
    YearsBack { years: i16 },
}

/// Whether a way of correction covers a class of cause.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Reach {
    /// It does.
    Yes,
    /// It may: ask the office.
    Ask,
    /// It does not.
    No,
}

impl Reach {
    /// Its word in JSON.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Reach::Yes => "yes",
            Reach::Ask => "ask",
            Reach::No => "no",
        }
    }
}

/// Which classes of cause a rule corrects.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Corrects {
    typed: Reach,
    described: Reach,
    measured: Reach,
}

impl Corrects {
    pub(crate) fn reach(self, class: CauseClass) -> Reach {
        match class {
            CauseClass::Typed => self.typed,
            CauseClass::Described => self.described,
            CauseClass::Measured => self.measured,
        }
    }
}

/// The fraction by which the appraised value must exceed the correct one, as numerator and denominator.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct MoreThan {
    pub(crate) homestead: [u32; 2],
    pub(crate) other: [u32; 2],
}

/// Days other than weekends on which offices are closed.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub(crate) struct Holidays {
    pub(crate) section: String,
    pub(crate) sure: Sure,
    days: Vec<Holiday>,
}

impl Holidays {
    /// The name of the holiday on a day, if it is one.
    pub(crate) fn name_of(&self, day: Date) -> Option<&str> {
        let found = self.days.iter().find(|holiday| holiday.in_year(day.year()) == Some(day));
        found.map(|holiday| holiday.name.as_str())
    }
}

/// A holiday on a fixed day, or on the nth weekday of a month (-1: the last).
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Holiday {
    name: String,
    month: i8,
    day: Option<i8>,
    weekday: Option<String>,
    nth: Option<i8>,
    #[serde(default)]
    days_later: i32,
}

impl Holiday {
    fn in_year(&self, year: i16) -> Option<Date> {
        if let Some(day) = self.day {
            return Date::new(year, self.month, day).ok();
        }
        nth_weekday(year, self.month, self.weekday.as_deref()?, self.nth?, self.days_later)
    }
}

/// The day `later` days after the nth weekday of a month (`nth` = -1: the last); `None` if there is no such day.
pub(crate) fn nth_weekday(year: i16, month: i8, name: &str, nth: i8, later: i32) -> Option<Date> {
    let first = Date::new(year, month, 1).ok()?;
    let day = first.nth_weekday_of_month(nth, weekday(name)?).ok()?;
    days_after(day, later)
}

fn weekday(word: &str) -> Option<Weekday> {
    Some(match word {
        "monday" => Weekday::Monday,
        "tuesday" => Weekday::Tuesday,
        "thursday" => Weekday::Thursday,
        _ => return None,
    })
}

/// The day `days` days later; `None` beyond the range of dates.
pub(crate) fn days_after(day: Date, days: i32) -> Option<Date> {
    let span: Span = days.days();
    day.checked_add(span).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn is_valid(rules: &PlaceRules) -> bool {
        let mut days = rules.holidays.days.iter();
        let mut declared = rules.declaration.iter();
        rules.all().all(|rule| rule.checked.parse::<Date>().is_ok() && rule.says.ends_with('.'))
            && declared.all(|one| one.words.contains("perjury") && one.words.ends_with('.'))
            && days.all(|day| day.in_year(2026).is_some())
            && rules.dates.iter().all(|date| can_be_worked_out(&date.when))
            // A rule that was read has a section; a rule with an unconfirmed section is from memory.
            && rules.dates.iter().all(|date| {
                date.rule.sure == Sure::Memory || date.rule.section != "not confirmed"
            })
    }

    fn can_be_worked_out(when: &When) -> bool {
        match when {
            When::Fixed { month, day, .. } | When::LaterOf { month, day, .. } => {
                Date::new(2027, *month, *day).is_ok()
            }
            When::Weekday { month, weekday, nth, days_later } => {
                nth_weekday(2027, *month, weekday, *nth, *days_later).is_some()
            }
            When::AfterNotice { .. }
            | When::SetLocally {}
            | When::InWords { .. }
            | When::YearsBack { .. } => true,
        }
    }

    #[test]
    fn the_rules_of_every_place_are_valid() {
        for &place in Place::ALL {
            let Some(text) = text_of(place) else { continue };
            let rules = read(text).map_err(|error| error.to_string());
            assert!(rules.as_ref().is_ok_and(is_valid), "{}: {rules:?}", place.word());
        }
    }

    #[test]
    fn the_table_of_rules_holds_each_rule_of_every_place() {
        let table = include_str!("places/README.md");
        let mut rows = 0;
        for &place in Place::ALL {
            let Some(rules) = PlaceRules::of(place) else { continue };
            for rule in rules.all() {
                let sure = match rule.sure {
                    Sure::Read => "read",
                    Sure::SecondHand => "second-hand",
                    Sure::Memory => "memory",
                };
                let (place, key, section) = (place.word(), &rule.key, &rule.section);
                let row = format!("| {place} | {key} | {section} | {sure} | {} |", rule.checked);
                assert!(table.contains(&row), "{row}");
                rows += 1;
            }
        }
        assert_eq!(table.lines().filter(|line| line.starts_with("| ")).count(), rows + 1);
    }

    #[test]
    fn a_file_with_an_unknown_key_is_refused() {
        let text = include_str!("places/ohio.json");
        assert!(read(text).is_ok());
        assert!(read(&text.replacen("\"month\"", "\"moon\": 1, \"month\"", 1)).is_err());
    }
}
