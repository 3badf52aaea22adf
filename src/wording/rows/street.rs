//! Messages in the words of a form: `toward the back` instead of `north`, `wall 3` instead of `side 3`.
//!
//! The messages are made for a sides file. Here only their last words change; what a message is about was decided
//! before, on values.

use crate::sketch::rows::Way;

/// The text in the words of a form. `compass` has what back, right, front and left are in the file. What stands between
/// grave accents is a name or was typed; of it only directions before a length change.
pub(super) fn seen(text: &str, compass: [&str; 4]) -> String {
    let parts = text.split('`').enumerate();
    let told = |(i, part): (usize, &str)| match i % 2 {
        0 => walls(&directions(part, compass, false)),
        _ => directions(part, compass, true),
    };
    parts.map(told).collect::<Vec<_>>().join("`")
}

/// The same for a text that has several lines and no grave accents. The names stay as they are, and what stands in a
/// column of its own at the end of a line stays there.
pub(super) fn seen_around(text: &str, compass: [&str; 4], names: &[&str]) -> String {
    let mut masked = text.to_owned();
    let mut names: Vec<String> =
        names.iter().flat_map(|name| [(*name).to_owned(), name.to_lowercase()]).collect();
    names.retain(|name| words(name).any(|(word, _)| is_of_a_form(word, compass)));
    names.sort_by_key(|name| std::cmp::Reverse(name.len()));
    for (i, name) in names.iter().enumerate() {
        masked = masked.replace(name.as_str(), &masked_as(i));
    }
    let line = |line: &str| {
        let seen = walls(&directions(line, compass, false));
        let column = |line: &str| {
            let at = line.trim_end().rfind("  ")?;
            let (name, rest) = line.split_at(at + 2);
            (!name.trim().is_empty()).then(|| (name.trim_end().to_owned(), rest.to_owned()))
        };
        let Some((name, rest)) = column(&seen) else { return seen };
        let room = line.chars().count().saturating_sub(rest.chars().count());
        format!("{name:<width$}{rest}", width = room.max(name.chars().count() + 2))
    };
    let mut seen = masked.split('\n').map(line).collect::<Vec<_>>().join("\n");
    for (i, name) in names.iter().enumerate() {
        seen = seen.replace(&masked_as(i), name);
    }
    seen
}

/// What stands for a name while words are replaced around it.
fn masked_as(index: usize) -> String {
    format!("\u{1}{index}\u{1}")
}

/// Whether a form has another word for it.
fn is_of_a_form(word: &str, compass: [&str; 4]) -> bool {
    compass.contains(&word.to_lowercase().as_str())
        || matches!(word.to_lowercase().as_str(), "side" | "sides")
}

/// The compass words as directions seen from the street: before a length `back 12'`, after one `12' toward the back`.
fn directions(text: &str, compass: [&str; 4], is_typed: bool) -> String {
    let way = |word: &str| compass.iter().position(|other| *other == word).map(|at| Way::ALL[at]);
    let mut told = String::new();
    let mut before = "";
    for (word, rest) in words(text) {
        let (next, is_number) = after(rest);
        let is_before_length = is_number || next == "by";
        let is_pair = before == "and" && told.ends_with("and ") && next == "share"
            || next == "and" && rest.contains(" share ");
        let beside = matches!(before, "the" | "its" | "a" | "an" | "this" | "one" | "every");
        match way(word) {
            Some(way) if is_before_length || is_typed && word.len() == text.len() => {
                told.push_str(way.word());
            }
            Some(way) if !is_typed && (beside || is_pair || rest.starts_with('-')) => {
                told.push_str(way.word());
            }
            Some(way) if !is_typed => told.push_str(way.spoken()),
            _ => told.push_str(word),
        }
        if word.starts_with(char::is_alphabetic) {
            before = word;
        }
    }
    told
}

/// `side` and `sides` as walls, except in `sides file`.
fn walls(text: &str) -> String {
    let mut told = String::new();
    let mut before = "";
    for (word, rest) in words(text) {
        // `the back side of the house` is no wall, and the sides inside a page are a file.
        let is_other = rest.starts_with(" file")
            || rest.starts_with(" inside")
            || Way::ALL.iter().any(|way| way.word() == before);
        told.push_str(match word {
            "side" if !is_other => "wall",
            "sides" if !is_other => "walls",
            "Side" if !is_other => "Wall",
            "Sides" if !is_other => "Walls",
            _ => word,
        });
        if word.starts_with(char::is_alphabetic) {
            before = word;
        }
    }
    told.replace("wall given by closing", "wall that was not reached")
        .replace("wall by closing", "wall that was not reached")
}

/// The next word, and whether a number comes first.
fn after(rest: &str) -> (&str, bool) {
    let rest = rest.trim_start();
    let end = rest.find(|c: char| !c.is_alphabetic()).unwrap_or(rest.len());
    (&rest[..end], rest.starts_with(|c: char| c.is_ascii_digit()))
}

/// The words of a text, and what stands between them, each with the rest of the text after it.
fn words(text: &str) -> impl Iterator<Item = (&str, &str)> {
    let mut rest = text;
    std::iter::from_fn(move || {
        let is_word = rest.chars().next()?.is_alphabetic();
        let end = rest.find(|c: char| c.is_alphabetic() != is_word).unwrap_or(rest.len());
        let (word, after) = rest.split_at(end);
        rest = after;
        Some((word, after))
    })
}

#[cfg(test)]
mod tests {
    use super::{seen, seen_around};

    const SOUTH: [&str; 4] = ["north", "east", "south", "west"];
    const WEST: [&str; 4] = ["east", "south", "west", "north"];

    #[test]
    fn directions_are_those_of_someone_in_the_street() {
        assert_eq!(
            seen("ends 29' 3\" north and 24' east of the start", SOUTH),
            "ends 29' 3\" toward the back and 24' to the right of the start"
        );
        assert_eq!(
            seen("it would have to run 5' north", WEST),
            "it would have to run 5' to the left"
        );
        assert_eq!(seen("the south wall", SOUTH), "the front wall");
        assert_eq!(
            seen("measure again: side 1 (`north 30'`) or side 3 (`south 32'`)", SOUTH),
            "measure again: wall 1 (`back 30'`) or wall 3 (`front 32'`)"
        );
        assert_eq!(
            seen("`north by closing` would hide it", SOUTH),
            "`back by closing` would hide it"
        );
        assert_eq!(
            seen("with its `north` and `south` exchanged", SOUTH),
            "with its `back` and `front` exchanged"
        );
    }

    #[test]
    fn a_report_keeps_its_names_and_its_columns() {
        let names = ["East room", "House"];
        let seen = |text: &str| seen_around(text, SOUTH, &names);
        assert_eq!(
            seen("Sides 2 and 4 of the house taken as 41' (here east 40' 3\")"),
            "Walls 2 and 4 of the house taken as 41' (here right 40' 3\")"
        );
        assert_eq!(
            seen("  side 1 (north 32' 5\")   34'\n  the east room    12"),
            "  wall 1 (back 32' 5\")    34'\n  the east room    12"
        );
        assert_eq!(
            seen("a part on the north side, by the north wall of the East room"),
            "a part on the back side, by the back wall of the East room"
        );
    }

    #[test]
    fn names_and_the_sides_file_keep_their_words() {
        assert_eq!(
            seen("`west side` lies inside the sides file", SOUTH),
            "`west side` lies inside the sides file"
        );
        assert_eq!(
            seen("the side by closing follows from the other sides", SOUTH),
            "the wall that was not reached follows from the other walls"
        );
    }
}
