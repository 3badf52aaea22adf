//! Walls written in comments, where they are not read.

use crate::diagnostic::{Diagnostic, Source, Word};
use crate::units::length::Length;

/// The most comments that are named for one walk.
const MOST: usize = 2;

/// Points at comments that would be walls, in walks that do not close.
pub(crate) fn name_walls_in_comments(source: &Source, faults: &mut [Diagnostic]) {
    let text = source.text();
    for fault in faults.iter_mut().filter(|fault| fault.word() == Word::DoesNotClose) {
        let start = text[..fault.span().start].rfind('\n').map_or(0, |at| at + 1);
        let walls: Vec<(usize, &str)> = walls_below(&text[start..]);
        if walls.is_empty() || walls.len() > MOST {
            continue;
        }
        let above = text[..start].matches('\n').count();
        for (line, comment) in walls {
            let help = format!(
                "line {} is a comment, `{comment}`, and not read: if it is a wall, take its `#` out",
                above + line + 1
            );
            *fault = fault.clone().help(help);
        }
    }
}

/// The comments among the sides of a space that are walls without their `#`, with the number of their lines.
fn walls_below(text: &str) -> Vec<(usize, &str)> {
    let is_walk = |line: &&str| {
        let word = line.split_whitespace().next().unwrap_or("#").to_lowercase();
        word.starts_with('#')
            || WAYS.contains(&word.as_str())
            || ["corner", "diagonal", "arc", "bay", "bearing", "overall", "tie"]
                .contains(&word.as_str())
    };
    let lines = text.lines().map(str::trim).enumerate().skip(1);
    let walk = lines.take_while(|(_, line)| line.is_empty() || is_walk(line));
    walk.filter(|(_, line)| line.strip_prefix('#').is_some_and(is_wall)).collect()
}

/// Whether a comment is a direction and a length, with or without a number before it.
fn is_wall(comment: &str) -> bool {
    let comment =
        comment.trim().trim_start_matches(|c: char| c.is_ascii_digit() || c == '.').trim();
    let Some((word, length)) = comment.split_once(' ') else { return false };
    WAYS.contains(&word.to_lowercase().as_str()) && length.trim().parse::<Length>().is_ok()
}

/// The words with which a straight side begins.
const WAYS: [&str; 12] =
    ["north", "east", "south", "west", "n", "e", "s", "w", "back", "right", "front", "left"];
