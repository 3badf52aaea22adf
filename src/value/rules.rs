//! The rules of a place: data with their sections, read from `rules.json`.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use jiff::civil::{Date, Weekday};
use serde::Deserialize;

use crate::house::Place;

/// The rules of every place, by its word. A test reads the file, so that it is as it should be.
static RULES: LazyLock<BTreeMap<String, PlaceRules>> = LazyLock::new(|| read().unwrap_or_default());

fn read() -> Result<BTreeMap<String, PlaceRules>, serde_json::Error> {
    serde_json::from_str(include_str!("rules.json"))
}

/// How sure it is that a rule says this.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
pub enum Sure {
    /// Read in a copy of the law itself.
    #[serde(rename = "read")]
    Read,
    /// Read where somebody else quotes or sums it up.
    #[serde(rename = "second-hand")]
    SecondHand,
    /// From memory.
    #[serde(rename = "memory")]
    Memory,
}

impl Sure {
    /// In words, the same as in JSON.
    pub const fn words(self) -> &'static str {
        match self {
            Sure::Read => "read in a copy of the law",
            Sure::SecondHand => "read second-hand",
            Sure::Memory => "from memory",
        }
    }
}

/// One rule of law in our words, with where it stands.
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
    /// A word for it that does not change, as in JSON.
    pub fn key(&self) -> &str {
        &self.key
    }

    /// What it is about, as it stands beside its day.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its section of the law.
    pub fn section(&self) -> &str {
        &self.section
    }

    /// What it says, in our words.
    pub fn says(&self) -> &str {
        &self.says
    }

    /// Since when, as far as that is known.
    pub fn effective(&self) -> &str {
        &self.effective
    }

    /// How sure it is.
    pub fn sure(&self) -> Sure {
        self.sure
    }

    /// The day it was last looked at.
    pub fn checked(&self) -> &str {
        &self.checked
    }

    /// Whether it was looked at in the tax year itself: laws change from year to year.
    pub(crate) fn is_of(&self, year: i16) -> bool {
        self.checked.parse::<Date>().is_ok_and(|checked| checked.year() == year)
    }
}

/// The rules of one place.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct PlaceRules {
    pub(crate) law: String,
    pub(crate) moving: LawRule,
    pub(crate) cap: CapRule,
    pub(crate) dates: Vec<DateRule>,
    pub(crate) holidays: Holidays,
}

impl PlaceRules {
    pub(crate) fn of(place: Place) -> Option<&'static PlaceRules> {
        RULES.get(place.word())
    }
}

/// By how much a capped value may rise in a year.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct CapRule {
    pub(crate) per_cent: u32,
    pub(crate) rule: LawRule,
}

/// A rule that names a day, or says in words when something is open.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct DateRule {
    pub(crate) rule: LawRule,
    /// The tax years it is for.
    from_year: Option<i16>,
    to_year: Option<i16>,
    pub(crate) month: Option<i8>,
    pub(crate) day: Option<i8>,
    #[serde(default)]
    pub(crate) years_later: i16,
    pub(crate) days_after_notice: Option<i32>,
    /// Whether a day on which offices are closed moves it.
    #[serde(default)]
    pub(crate) moves: bool,
    pub(crate) in_words: Option<String>,
    pub(crate) years_back: Option<i16>,
    pub(crate) more_than: Option<MoreThan>,
}

impl DateRule {
    pub(crate) fn is_for(&self, year: i16) -> bool {
        self.from_year.is_none_or(|from| from <= year) && self.to_year.is_none_or(|to| year <= to)
    }
}

/// By what part of the correct value the appraised one has to be more: one over the other.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct MoreThan {
    pub(crate) homestead: [u32; 2],
    pub(crate) other: [u32; 2],
}

/// Days on which offices are closed beside weekends.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Holidays {
    pub(crate) section: String,
    pub(crate) sure: Sure,
    days: Vec<Holiday>,
}

impl Holidays {
    /// The name of the holiday that a day is.
    pub(crate) fn name_of(&self, day: Date) -> Option<&str> {
        let found = self.days.iter().find(|holiday| holiday.in_year(day.year()) == Some(day));
        found.map(|holiday| holiday.name.as_str())
    }
}

/// A holiday of a fixed day, or of the nth weekday of a month (-1: the last).
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
        let first = Date::new(year, self.month, self.day.unwrap_or(1)).ok()?;
        if self.day.is_some() {
            return Some(first);
        }
        let day = first.nth_weekday_of_month(self.nth?, weekday(self.weekday.as_deref()?)?).ok()?;
        crate::value::dates::days_after(day, self.days_later)
    }
}

fn weekday(word: &str) -> Option<Weekday> {
    Some(match word {
        "monday" => Weekday::Monday,
        "thursday" => Weekday::Thursday,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_rules_are_as_they_should_be() {
        let rules = read().map_err(|error| error.to_string());
        assert!(rules.is_ok(), "{rules:?}");
        for place in Place::ALL {
            let holds = PlaceRules::of(place).is_some_and(|rules| {
                let all = || {
                    let others = [&rules.moving, &rules.cap.rule];
                    rules.dates.iter().map(|date| &date.rule).chain(others)
                };
                let days = rules.holidays.days.iter();
                all().all(|rule| rule.checked.parse::<Date>().is_ok() && rule.says.ends_with('.'))
                    && days.into_iter().all(|day| day.in_year(2026).is_some())
            });
            assert!(holds, "{}", place.word());
        }
    }
}
