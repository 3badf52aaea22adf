//! Small helpers for sentences: plurals, lists, suggestions.

use crate::numbers::thousands;

/// `1 side`, `2 sides`, `1,000 sides`.
pub(crate) fn count(number: usize, noun: &str) -> String {
    if number == 1 { format!("1 {noun}") } else { format!("{} {noun}s", whole(number)) }
}

/// A number of things, its thousands grouped.
pub(crate) fn whole(number: usize) -> String {
    thousands(i64::try_from(number).unwrap_or(i64::MAX))
}

/// `a`, `a or b`, `a, b or c`.
pub(crate) fn one_of(items: &[&str]) -> String {
    list(items, "or")
}

/// `a`, `a and b`, `a, b and c`.
pub(crate) fn all_of<S: AsRef<str>>(items: &[S]) -> String {
    list(items, "and")
}

/// `a, b or c` of owned words.
pub(crate) fn list_or(items: &[String]) -> String {
    list(items, "or")
}

fn list<S: AsRef<str>>(items: &[S], last: &str) -> String {
    match items {
        [] => String::new(),
        [only] => only.as_ref().to_owned(),
        [head @ .., tail] => {
            let head: Vec<&str> = head.iter().map(AsRef::as_ref).collect();
            format!("{} {last} {}", head.join(", "), tail.as_ref())
        }
    }
}

/// The word of `known` that `typed` was probably meant to be.
pub(crate) fn nearest<'a>(typed: &str, known: &[&'a str]) -> Option<&'a str> {
    let typed = typed.to_lowercase();
    let most = match typed.chars().count() {
        0..=2 => 0,
        3..=4 => 1,
        _ => 2,
    };
    known
        .iter()
        .map(|&word| (strsim::osa_distance(&typed, word), word))
        .filter(|&(distance, word)| distance <= most && word.len() > 1)
        .min()
        .map(|(_, word)| word)
}
