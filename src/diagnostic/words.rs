//! Small helpers for sentences: plurals, lists, suggestions, line breaks.

use crate::units::decimal::thousands;

/// `1 side`, `2 sides`, `1,000 sides`.
pub(crate) fn count(number: usize, noun: &str) -> String {
    if number == 1 { format!("1 {noun}") } else { format!("{} {noun}s", whole(number)) }
}

/// A count with its thousands grouped.
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

/// `a, b or c`, from owned strings.
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

/// The word of `known` that `typed` was most likely meant to be; `None` if none is close.
pub(crate) fn nearest<'a>(typed: &str, known: &[&'a str]) -> Option<&'a str> {
    // No known word is this long, and comparing long ones takes time.
    const LONGEST: usize = 40;
    if typed.len() > LONGEST {
        return None;
    }
    let typed = typed.to_lowercase();
    let most = match typed.chars().count() {
        0..=2 => 0,
        3..=4 => 1,
        _ => 2,
    };
    // Words whose lengths differ by more than `most` cannot be closer than that.
    let length = typed.chars().count();
    known
        .iter()
        .filter(|word| word.chars().count().abs_diff(length) <= most)
        .map(|&word| (strsim::osa_distance(&typed, word), word))
        .filter(|&(distance, word)| distance <= most && word.len() > 1)
        .min()
        .map(|(_, word)| word)
}

/// A no-break space: keeps a line from being broken here, and is printed as a space.
pub(crate) const GLUE: char = '\u{a0}';

/// The text with no-break spaces inside what belongs together: `41' 10 1/2"`, `1,757 sq ft`, `± 4`.
pub(crate) fn glued(text: &str) -> String {
    let text = text.replace("± ", "±\u{a0}").replace(" %", "\u{a0}%");
    let text = text.replace(" sq ft", "\u{a0}sq\u{a0}ft");
    let characters: Vec<char> = text.chars().collect();
    let is_digit = |at: Option<&char>| at.is_some_and(char::is_ascii_digit);
    let mut out = String::with_capacity(text.len());
    for (i, &character) in characters.iter().enumerate() {
        let before = i.checked_sub(1).and_then(|i| characters.get(i));
        let after_feet = before == Some(&'\'') && is_digit(characters.get(i + 1));
        let fraction = characters[i + 1..].iter().find(|c| !c.is_ascii_digit()) == Some(&'/');
        let glue = character == ' ' && (after_feet || is_digit(before) && fraction);
        out.push(if glue { GLUE } else { character });
    }
    out
}

/// The text wrapped at `columns` columns.
pub(crate) fn filled(text: &str, columns: usize) -> String {
    textwrap::fill(&glued(text), columns).replace(GLUE, " ")
}
