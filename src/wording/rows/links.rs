//! Texts that name walls, divided so that each wall is a link to its row.

use serde::Serialize;

use crate::diagnostic::words;
use crate::sketch::rows::{Rows, Walk};

/// A part of a text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Part {
    /// Its words.
    pub text: String,
    /// The row it names, as indices of its walk and in it.
    pub row: Option<(usize, usize)>,
}

/// The parts of a text, which together are the text. `of` is the walk whose walls it names if it does not say of which.
#[must_use]
pub fn linked(rows: &Rows, of: Option<usize>, text: &str) -> Vec<Part> {
    let mut parts = Vec::new();
    let mut plain = String::new();
    let mut rest = text;
    while let Some((before, named)) = next_wall(rest) {
        plain.push_str(before);
        let numbers = numbers(named);
        let after = numbers.last().map_or(named, |&(_, end)| &named[end..]);
        let walk = of_walk(rows, after).or(of).or((rows.walks.len() == 1).then_some(0));
        let mut from = 0;
        for (number, end) in numbers {
            let row = walk.and_then(|walk| Some((walk, row_of(&rows.walks[walk], number)?)));
            // The word goes with the first of several numbers.
            let digits = named[..end].rfind(|c: char| !c.is_ascii_digit()).map_or(0, |at| at + 1);
            let begin = if from == 0 { 0 } else { digits };
            plain.push_str(&named[from..begin.max(from)]);
            if row.is_some() {
                push(&mut parts, std::mem::take(&mut plain));
                parts.push(Part { text: named[begin..end].to_owned(), row });
            } else {
                plain.push_str(&named[begin..end]);
            }
            from = end;
        }
        rest = after;
    }
    plain.push_str(rest);
    push(&mut parts, plain);
    parts
}

fn push(parts: &mut Vec<Part>, text: String) {
    if !text.is_empty() {
        parts.push(Part { text, row: None });
    }
}

/// What comes before the next `wall 3` or `walls 2 and 4`, and the text from there on.
fn next_wall(text: &str) -> Option<(&str, &str)> {
    let found = text.match_indices(['w', 'W']).map(|(at, _)| at).find(|&at| {
        let is_word = !text[..at].ends_with(|c: char| c.is_alphanumeric());
        // What stands between grave accents was typed.
        let is_said = text[..at].matches('`').count().is_multiple_of(2);
        is_word && is_said && !numbers(&text[at..]).is_empty()
    });
    found.map(|at| text.split_at(at))
}

/// The numbers after `wall` or `walls` at the beginning of a text, each with the byte after it.
fn numbers(text: &str) -> Vec<(usize, usize)> {
    let word =
        ["walls ", "wall ", "Walls ", "Wall "].into_iter().find(|word| text.starts_with(word));
    let mut found = Vec::new();
    let Some(word) = word else { return found };
    let mut at = word.len();
    loop {
        let digits = text[at..].bytes().take_while(u8::is_ascii_digit).count();
        let Ok(number) = text[at..at + digits].parse() else { return found };
        at += digits;
        found.push((number, at));
        let between = [", ", " and ", " or "].into_iter().find(|one| text[at..].starts_with(one));
        match between.filter(|_| word.ends_with("s ")) {
            Some(between) => at += between.len(),
            None => return found,
        }
    }
}

/// The walk that a text goes on to name, as in `wall 3` ` of the garage`.
fn of_walk(rows: &Rows, text: &str) -> Option<usize> {
    let named = text.strip_prefix(" of ")?;
    let is_named = |walk: &Walk| {
        let name = &walk.name;
        let all = [
            format!("`{name}`"),
            format!("\"{name}\""),
            words::the_named(name),
            words::the_quoted(name),
            name.clone(),
        ];
        all.iter().any(|one| {
            let after = named.strip_prefix(one.as_str());
            after.is_some_and(|after| !after.starts_with(char::is_alphanumeric))
        })
    };
    rows.walks.iter().position(is_named)
}

fn row_of(walk: &Walk, number: usize) -> Option<usize> {
    walk.rows.iter().position(|row| (row.number..row.number + row.sides).contains(&number))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sketch::rows::rows;

    const TWO: &str = "front south\nlevel \"G\"\n  living \"House\"\n    north 30'\n    bay east 10' out 2' flat 6'\n    east 30'\n    south 30'\n    west 40'\n  garage \"Garage\" within \"House\"\n    east 20'\n    north 20'\n";

    fn links(of: Option<usize>, text: &str) -> Vec<(String, (usize, usize))> {
        let parts = linked(&rows(TWO), of, text);
        let whole: String = parts.iter().map(|part| part.text.as_str()).collect();
        assert_eq!(whole, text);
        parts.into_iter().filter_map(|part| Some((part.text, part.row?))).collect()
    }

    #[test]
    fn each_wall_is_a_link_to_its_row() {
        let link = |text: &str, row| (text.to_owned(), row);
        assert_eq!(
            links(Some(0), "measure again: wall 1 (`back 30'`) or wall 7 (`left 40'`)"),
            [link("wall 1", (0, 0)), link("wall 7", (0, 4))]
        );
        // The second to the fourth wall are the bay.
        assert_eq!(links(Some(0), "Wall 3 crosses it"), [link("Wall 3", (0, 1))]);
        assert_eq!(
            links(None, "Walls 1 and 2 of the garage taken as 21'"),
            [link("Walls 1", (1, 0)), link("2", (1, 1))]
        );
        assert_eq!(
            links(Some(0), "wall 2 of `Garage` or wall 1"),
            [link("wall 2", (1, 1)), link("wall 1", (0, 0))]
        );
    }

    #[test]
    fn what_is_no_row_is_no_link() {
        assert_eq!(links(None, "wall 1"), []);
        assert_eq!(links(Some(1), "wall 9, a wall, the wallpaper 3, `wall 1`"), []);
    }
}
