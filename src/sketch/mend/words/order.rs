//! Changes to word order, list markers, cells of a table, and several statements on one line.

use super::super::change::{Attempt, Edit};
use super::super::pieces::{Piece, Sort, join, replaced};
use super::DIRECTIONS;

/// `1. north 42'`, `3) north 42'`, `- north 42'`, `side 3: north 42'`
pub(super) fn list_marker(pieces: &[Piece], attempt: &Attempt) -> Vec<Edit> {
    if attempt.at.start > 6 {
        return Vec::new();
    }
    let named = usize::from(
        pieces
            .first()
            .is_some_and(|piece| piece.is_word(&["side", "wall", "leg", "no", "step", "line"])),
    );
    let number = usize::from(
        pieces
            .get(named)
            .is_some_and(|piece| piece.is_number() && piece.text.trim_end_matches('.').len() <= 3),
    );
    let marks = pieces
        .iter()
        .skip(named + number)
        .take_while(|piece| piece.is_mark(".):]-–—•*·>+"))
        .count();
    let count = named + number + marks;
    if count == 0 || count >= pieces.len() || number == 0 && marks == 0 {
        return Vec::new();
    }
    let is_first_word =
        pieces[count].is_word(&DIRECTIONS) || pieces[count].sort == Sort::Word && number == 0;
    if !is_first_word || pieces.len() < count + 2 {
        return Vec::new();
    }
    vec![Edit::conversion(
        pieces[count..].to_vec(),
        "a line begins with its word; sides are numbered by the program",
    )]
}

/// Table cells: `north,"42' 7"""`, `| north | 42' |`, or separated by tabs.
pub(in crate::sketch::mend) fn cells(line: &str) -> Vec<Edit> {
    let cause = "these are the cells of a table; a line is words with spaces between them";
    let edit = |cells: Vec<String>| {
        let cells: Vec<String> = cells
            .iter()
            .map(|cell| cell.trim().to_owned())
            .filter(|cell| !cell.is_empty())
            .collect();
        Edit::line(cells.join(" "), cause)
    };
    let mut edits = Vec::new();
    for mark in [',', '\t', ';', '|'] {
        if line.contains(mark) {
            let all = split_cells(line, mark);
            let is_table = all.first().is_some_and(|cell| cell.split_whitespace().count() <= 2);
            if all.len() > 1 && is_table || line.starts_with('"') {
                edits.push(edit(all));
            }
        }
    }
    if line.starts_with('"') && line.ends_with('"') && line.contains("\"\"") {
        edits.push(edit(split_cells(line, '\u{0}')));
    }
    edits
}

/// The cells of a line. Quoted cells lose their quotation marks, and doubled ones inside become single.
fn split_cells(line: &str, mark: char) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut characters = line.chars().peekable();
    let mut quoted = false;
    let mut fresh = true;
    // `east,20,2` has no other separator, so that none of its commas belongs to a number.
    let is_tight =
        line.split(',').all(|cell| !cell.is_empty() && !cell.contains(char::is_whitespace))
            && line.split(',').count() > 2;
    while let Some(c) = characters.next() {
        let Some(cell) = cells.last_mut() else { break };
        if c == '"' && quoted {
            if characters.peek() == Some(&'"') {
                characters.next();
                cell.push('"');
            } else {
                quoted = false;
            }
        } else if c == '"' && fresh {
            quoted = true;
        } else if c == mark
            && !quoted
            && !(mark == ',' && !is_tight && is_grouped(cell, &characters))
        {
            cells.push(String::new());
            fresh = true;
            continue;
        } else {
            cell.push(c);
        }
        fresh = fresh && c == ' ';
    }
    cells
}

/// Whether a comma is between digits, as in `1,200`.
fn is_grouped(before: &str, after: &std::iter::Peekable<std::str::Chars<'_>>) -> bool {
    before.ends_with(|c: char| c.is_ascii_digit())
        && after.clone().next().is_some_and(|c| c.is_ascii_digit())
}

/// Reorders words: a length before its direction, or a text before what it belongs to.
pub(super) fn order(pieces: &[Piece], here: usize, attempt: &Attempt) -> Vec<Edit> {
    let mut edits = Vec::new();
    // `42' 7" north`
    if let Some(run) = pieces.iter().position(Piece::is_number) {
        let after =
            pieces[run..].iter().position(|piece| piece.is_word(&DIRECTIONS)).map(|at| at + run);
        if let Some(direction) = after
            && pieces.get(direction + 1).is_none_or(|next| !next.is_number())
            && (run == 0 || !pieces[run - 1].is_word(&DIRECTIONS))
        {
            let mut by = vec![Piece { touches: false, ..pieces[direction].clone() }];
            by.extend_from_slice(&pieces[run..direction]);
            by[1].touches = false;
            edits.push(Edit::new(
                replaced(pieces, run, direction + 1, &by),
                "the direction comes before the length",
            ));
        }
    }
    let text = |from: usize| {
        pieces.iter().skip(from).position(|piece| piece.sort == Sort::Text).map(|at| at + from)
    };
    // A name is expected here but comes later.
    if attempt.wanted.text
        && let Some(text) = text(here + 1)
    {
        let mut by = vec![pieces[text].clone()];
        by.extend_from_slice(&pieces[here..text]);
        edits.push(Edit::new(
            replaced(pieces, here, text + 1, &by),
            "the name comes right after the first word",
        ));
    }
    // A text is where none is expected: it may belong at the end.
    if let Some(piece) = pieces.get(here).filter(|piece| piece.sort == Sort::Text) {
        let mut left = replaced(pieces, here, here + 1, &[]);
        let piece = Piece { touches: false, ..piece.clone() };
        let mut with_note = left.clone();
        let mut second = left.clone();
        left.push(piece.clone());
        edits.push(Edit::new(left, "the text is in the wrong place"));
        if attempt.is_side {
            with_note.push(Piece::word("note"));
            with_note.push(piece.clone());
            edits.push(Edit::new(with_note, "a text after a side is a `note` or a `photo`"));
        }
        if here == 0 && second.len() > 1 {
            second.insert(1, piece);
            edits.push(Edit::new(second, "the word comes before the name"));
        }
    }
    // A date is expected here but comes later.
    let is_date = |at: usize| {
        at + 4 < pieces.len()
            && pieces[at].is_number()
            && pieces[at].text.len() == 4
            && pieces[at + 1].is_mark("-")
            && pieces[at + 3].is_mark("-")
    };
    if pieces.first().is_some_and(|piece| piece.is_word(&["measured"]))
        && let Some(date) = (2..pieces.len()).find(|&at| is_date(at))
    {
        let mut by = pieces[date..date + 5].to_vec();
        by[0].touches = false;
        let mut rest = pieces[1..date].to_vec();
        if rest.last().is_some_and(|piece| piece.is_word(&["on"])) {
            rest.pop();
        }
        by.extend(rest);
        by.extend_from_slice(&pieces[date + 5..]);
        edits.push(Edit::new(
            replaced(pieces, 1, pieces.len(), &by),
            "the date comes right after `measured`",
        ));
    }
    edits
}

/// `north 42' east 30'`: splits several statements on one line.
pub(super) fn several(pieces: &[Piece], here: usize) -> Vec<Edit> {
    let Some(piece) = pieces.get(here).filter(|_| here >= 2) else { return Vec::new() };
    if pieces[0].is_word(&["bearing", "diagonal", "arc", "bay"]) {
        return Vec::new();
    }
    let begins = DIRECTIONS
        .iter()
        .chain(&["close", "corner", "living", "garage", "porch", "level", "overall"]);
    let is_space = piece.is_word(&["living", "garage", "porch", "level"]);
    let is_named = pieces.get(here + 1).is_some_and(|next| next.sort == Sort::Text);
    if !begins.clone().any(|word| piece.is_word(&[word])) || is_space && !is_named {
        return Vec::new();
    }
    // `overall east 48' north 28'`: the second is an overall length too.
    let again = if pieces[0].is_word(&["overall"]) { "overall " } else { "" };
    let line = format!("{}\n{again}{}", join(&pieces[..here]), join(&pieces[here..]));
    let cause = "each side goes on its own line".to_owned();
    vec![Edit::line(line, cause)]
}
