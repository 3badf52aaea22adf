//! What a form with rows says: errors, warnings and questions in the directions of someone who faces the house.
//!
//! A sides file speaks of lines, and its directions are those of the compass. A form shows walls as rows, and back,
//! right, front and left. The errors are the same; here each says where it is in the form.

mod links;
mod street;

use std::collections::BTreeSet;

use serde::Serialize;

use crate::diagnostic::{Diagnostic, Diagnostics, Move, Source, Span, Word, quoted, words};
use crate::read;
use crate::sketch::Kind;
use crate::sketch::rows::{Edit, How, Row, Rows, Shape, Walk, Way, edited, in_ways, rows};
use crate::wording::sentences::capital;
pub use links::{Part, linked};

/// The most rows for which a text is read a second time with other words.
const MOST_ROWS: usize = 200;

/// An error or warning as a form shows it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Notice {
    /// Where it is: `Wall 7`, with several walks `Garage, wall 7`, the name of a walk, or `Line 7` of the file.
    pub place: String,
    /// The row, as indices of its walk and in it.
    pub at: Option<(usize, usize)>,
    /// The field of the form.
    pub field: Option<&'static str>,
    /// The walk, by index, if it is about a whole walk.
    pub walk: Option<usize>,
    /// What is wrong.
    pub message: String,
    /// What to do instead.
    pub helps: Vec<String>,
    /// The message, then each help, with the walls they name as links to their rows.
    pub parts: Vec<Vec<Part>>,
    /// The walls to measure again.
    pub again: Vec<Again>,
    /// What a button can do about it.
    pub mends: Vec<Mend>,
    /// Whether its walk is probably not finished yet, so that it is too early to look for an error in it.
    pub is_early: bool,
    /// Which of several to resolve first, the least first: what has a button comes before what has none, and of walls to
    /// measure again those with which the walk comes back first.
    pub rank: u8,
}

/// A wall to measure again.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Again {
    /// Its line.
    pub line: usize,
    /// Its number in its walk.
    pub number: usize,
    /// Its name at the beginning of a line: `Wall 9:`.
    pub place: String,
    /// What may be wrong there; empty if only its length is large enough.
    pub label: String,
    /// The label with the walls it names as links to their rows.
    pub parts: Vec<Part>,
    /// What a button can do about it, if the label says what may have been meant.
    pub mend: Option<Mend>,
}

/// A change of the text that resolves a notice.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Mend {
    /// The first byte that is replaced.
    pub from: usize,
    /// The end of what is replaced.
    pub to: usize,
    /// The replacement.
    pub text: String,
    /// What a button says.
    pub label: String,
    /// Of several of one kind, what a button says that shows them, from the outside in; a person first chooses among
    /// these.
    pub group: Vec<String>,
    /// The row that has the focus afterwards, as indices of its walk and in it.
    pub at: Option<(usize, usize)>,
}

/// What a question is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum About {
    /// A space inside the walk.
    Inside,
    /// A level above or below.
    Level,
}

/// A question about a walk.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Question {
    /// What it is about.
    pub about: About,
    /// The walk, by index.
    pub walk: usize,
    /// The question.
    pub text: String,
    /// Why it is asked.
    pub why: String,
    /// The answer after which a space is added.
    pub yes: String,
    /// The other answer.
    pub no: String,
}

/// Sentences about the walks of a form.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Said {
    /// Whether the walks are back at their starts, and what is missing; empty before the first wall.
    pub state: String,
    /// What remains unchecked although the walks are back at their starts; empty if there is no such wall.
    pub unchecked: String,
    /// What back, right, front and left are on the compass; empty before the first wall.
    pub compass: String,
    /// Of each walk whether it is back at its start; empty if it is not.
    pub back: Vec<String>,
}

/// What is said about the walks, whether or not they close.
#[must_use]
pub fn said(rows: &Rows) -> Said {
    let [back, right, front, left] = rows.compass;
    let has_wall = rows.walks.iter().any(|walk| !walk.rows.is_empty());
    let compass =
        format!("On the pages {back} is back, {right} is right, {front} is front, {left} is left.");
    Said {
        state: state(rows),
        unchecked: unchecked(rows),
        compass: if has_wall { compass } else { String::new() },
        back: rows.walks.iter().map(back_at_start).collect(),
    }
}

fn state(rows: &Rows) -> String {
    let walks: Vec<&Walk> = rows.walks.iter().filter(|walk| walk.kind != "lot").collect();
    let begun = || walks.iter().filter(|walk| !walk.rows.is_empty());
    let still = |walk: &&&Walk| {
        let mut without = unread(walk, true);
        if walk.rows.last().is_some_and(Row::lacks_length) {
            // That one is about to be typed.
            without.pop();
        }
        let without = match without.is_empty() {
            true => String::new(),
            false => format!(", not counting {}", words::all_of(&without)),
        };
        // Without a length that can be read there is no gap either.
        let gap = match walk.gap.is_empty() {
            true => "not back at the start yet".to_owned(),
            false => format!("still {}", walk.gap),
        };
        match walks.len() {
            1 => format!("{}{without}", capital(&gap)),
            _ => format!("{}: {gap}{without}", walk.name),
        }
    };
    let open: Vec<String> =
        begun().filter(|walk| !walk.is_closed).map(|walk| still(&walk)).collect();
    if !open.is_empty() {
        return open.join(". ");
    }
    if begun().next().is_none() {
        return String::new();
    }
    let without: Vec<String> = begun().flat_map(|walk| unread(walk, walks.len() == 1)).collect();
    if !without.is_empty() {
        return format!("Back at the start, but without {}.", words::all_of(&without));
    }
    if let Some(empty) = walks.iter().find(|walk| walk.rows.is_empty()) {
        return format!("{} has no walls yet.", empty.name);
    }
    match begun().all(|walk| walk.gap.is_empty()) {
        true => "Back at the start.".to_owned(),
        false => "Back at the start, within what the tape can tell.".to_owned(),
    }
}

fn back_at_start(walk: &Walk) -> String {
    let is_back = walk.is_closed && walk.rows.iter().all(|row| row.is_read);
    if is_back { "This walk is back at its start.".to_owned() } else { String::new() }
}

/// The walls of a walk that are not in the drawing, since they cannot be read.
fn unread(walk: &Walk, is_only: bool) -> Vec<String> {
    let rows = walk.rows.iter().filter(|row| !row.is_read);
    let name = |row: &Row| match is_only {
        true => format!("wall {}", row.number),
        false => format!("wall {} of {}", row.number, walk.name),
    };
    rows.map(name).collect()
}

/// A sentence for each wall by closing of a walk that is back at its start: it gets back there whatever was typed.
fn unchecked(rows: &Rows) -> String {
    let follows = |row: &&Row| row.how == How::Closing && !row.found.is_empty();
    let sentence = |walk: &Walk, row: &Row| {
        let ways = match row.way? {
            Way::Back | Way::Front => "back or front",
            Way::Right | Way::Left => "right or left",
        };
        let wall = match rows.walks.len() {
            1 => format!("Wall {}", row.number),
            _ => format!("Wall {} of {}", row.number, walk.name),
        };
        Some(format!(
            "{wall} takes up whatever is missing, so a mistyped wall that goes {ways} would not be seen. Could it be about {} long?",
            row.found
        ))
    };
    // A wall that cannot be read is missing from the length of such a wall.
    let is_whole = |walk: &&Walk| walk.is_closed && walk.rows.iter().all(|row| row.is_read);
    let closed = rows.walks.iter().filter(is_whole);
    let of = |walk: &Walk| -> Vec<String> {
        walk.rows.iter().filter(follows).filter_map(|row| sentence(walk, row)).collect()
    };
    closed.flat_map(of).collect::<Vec<_>>().join(" ")
}

/// The errors and warnings of a text as a form shows them, in the same order.
#[must_use]
pub fn notices(source: &Source, list: &[Diagnostic], rows: &Rows) -> Vec<Notice> {
    let seen = seen_from_the_street(source, list, rows);
    let seen = seen.as_deref().unwrap_or(list);
    let mut all: Vec<Notice> =
        list.iter().zip(seen).map(|(one, seen)| notice(source, one, seen, rows)).collect();
    // Of the readings of a number with a point, the one that accounts for the gap of its walk comes first.
    let again: Vec<(usize, Mend)> = all
        .iter()
        .flat_map(|notice| &notice.again)
        .filter_map(|one| Some((one.line, one.mend.clone()?)))
        .collect();
    for (one, notice) in list.iter().zip(&mut all) {
        let line = source.line(one.span().start);
        let likelier = again.iter().find(|(at, _)| *at == line);
        if let Some((_, mend)) = likelier.filter(|_| one.word() == Word::TenthsBesideInches) {
            notice.mends.retain(|other| other.label != mend.label);
            notice.mends.insert(0, mend.clone());
        }
    }
    all
}

/// The same errors, of the text with the directions of the form; `None` if they do not correspond one by one.
fn seen_from_the_street(
    source: &Source,
    list: &[Diagnostic],
    rows: &Rows,
) -> Option<Vec<Diagnostic>> {
    if list.is_empty() || rows.walks.iter().map(|walk| walk.rows.len()).sum::<usize>() > MOST_ROWS {
        return None;
    }
    let seen = Source::new(source.name(), in_ways(source.text())?);
    let mut all = match read::read_source(seen.clone()) {
        Ok(house) => house.warnings().to_vec(),
        Err(errors) => errors.list().to_vec(),
    };
    // In a form the ways are buttons, and no side of the house could be meant.
    if !list.iter().any(|one| one.word() == Word::StreetWays) {
        all.retain(|one| one.word() != Word::StreetWays);
    }
    let line = |source: &Source, one: &Diagnostic| (one.word(), source.line(one.span().start));
    let is_same = all.len() == list.len()
        && list.iter().zip(&all).all(|(one, other)| line(source, one) == line(&seen, other));
    is_same.then_some(all)
}

fn notice(source: &Source, one: &Diagnostic, seen: &Diagnostic, rows: &Rows) -> Notice {
    let line = source.line(one.span().start);
    let at = row_on(rows, line);
    // `front` before what is no length is taken for the line about the street.
    let is_front = |&(w, r): &(usize, usize)| rows.walks[w].rows[r].way == Some(Way::Front);
    let seen = if at.filter(is_front).is_some() { one } else { seen };
    let is_head =
        rows.walks.first().is_none_or(|first| line < first.line) && !is_level(source, line);
    let field = rows.fields.iter().find(|(_, other)| *other == line).map(|(field, _)| *field);
    let walk = rows.walks.iter().position(|walk| walk.line == line);
    let is_open = one.word() == Word::DoesNotClose;
    let open = walk.filter(|_| is_open).map(|walk| &rows.walks[walk]);
    let mut mends: Vec<Mend> = one
        .fixes()
        .iter()
        .map(|fix| {
            let (from, to, text) = (fix.span.start, fix.span.end, fix.text.clone());
            let shown = in_row(source, (from, to, &text), line)
                .or_else(|| in_field(source, (from, to, &text), field));
            let label = format!("Use {}", shown.unwrap_or_else(|| text.trim().to_owned()));
            Mend { from, to, text, label, group: Vec::new(), at: None }
        })
        .collect();
    // A row shows a remark nowhere, so that two replacements may be one to it: the first is offered.
    let mut labels = BTreeSet::new();
    mends.retain(|mend| labels.insert(mend.label.clone()));
    // Each repair is a button.
    let mut helps = seen.further_helps().to_vec();
    let laid: Vec<Mend> = one.moves().iter().filter_map(|to| laid(source, one, to, rows)).collect();
    let inside = inside(source, one, rows);
    if !laid.is_empty() {
        helps = which_side(source, one, rows).into_iter().collect();
        mends.clear();
    } else if inside.is_some() {
        helps.clear();
    }
    mends.extend(laid);
    if let Some((help, mend)) = inside {
        helps.push(help);
        mends.push(mend);
    }
    if let Some((help, mend)) = walked_on(source, one, at, rows) {
        helps = vec![help];
        mends.extend(mend);
    }
    if one.word() == Word::TenthsBesideInches {
        let line = |span: Span| source.line(span.start);
        let repairs = one.repairs().iter();
        mends.extend(repairs.filter_map(|(span, side)| repaired(source, rows, line(*span), side)));
    }
    mends.extend(one.repairs().iter().filter_map(|(span, side)| {
        inserted(source, rows, source.line(span.start), side.strip_prefix('\n')?)
    }));
    let has_both = one.word() == Word::TenthsBesideInches && !mends.is_empty();
    if (!one.fixes().is_empty() || has_both) && (at.is_some() || field.is_some()) {
        // The buttons say it already.
        helps.clear();
    }
    let seen_here = |text: &str| street::seen(text, rows.compass);
    if let Some(half) = at.and_then(|(w, r)| half_a_foot(source, &rows.walks[w].rows[r])) {
        (mends, helps) = (half, Vec::new());
    } else if let Some(both) = at.and_then(|(w, r)| past_twelve(source, &rows.walks[w].rows[r])) {
        (mends, helps) = (both, Vec::new());
    }
    let is_measured_again = is_open || one.word() == Word::ClosingBackwards;
    let empty = at.map(|(w, r)| &rows.walks[w].rows[r]).is_some_and(Row::lacks_length);
    if empty {
        helps = vec!["measure it, or say that you could not reach it".to_owned()];
        mends.clear();
    }
    // More walls may still turn a side by closing the right way round.
    let unfinished = match one.word() {
        Word::ClosingBackwards => at.map(|(w, _)| &rows.walks[w]).filter(|walk| !walk.is_closed),
        _ => open,
    };
    if one.word() == Word::PlacedAbove {
        helps.clear();
        mends.extend(one.repairs().iter().filter_map(|(span, start)| placed(source, *span, start)));
    }
    let is_half = at.is_some_and(|(w, r)| feet_and_a_fraction(&rows.walks[w].rows[r]).is_some());
    let message = match one.word() {
        _ if empty => "this wall has no length yet",
        _ if is_half => "is that part of a foot, or of an inch?",
        Word::Unexpected if field.is_some_and(is_area) => "only an area goes here",
        Word::NoClosureCheck if at.is_some() => "it was not measured and follows from the others",
        _ if mends.len() == 2
            && at.is_some_and(|(w, r)| counts_past_twelve(&rows.walks[w].rows[r]).is_some()) =>
        {
            "after the feet come fewer than 12 inches: were feet and inches exchanged, or were inches counted on?"
        }
        _ => seen.message(),
    };
    let message = open.map_or_else(|| seen_here(message), still_open);
    let message = match one.word() {
        // Whoever fills in the rows has seen no file.
        Word::PlacedAbove => message.replace("the file does not say where", "nothing says where"),
        _ => message,
    };
    let helps: Vec<String> = helps.iter().map(|help| seen_here(help)).collect();
    // What stands on no row belongs to the walk that it is written in, or that its level begins with.
    let within = || {
        let after = rows.walks.iter().position(|walk| walk.line > line);
        let before = rows.walks.iter().rposition(|walk| walk.line <= line);
        if is_level(source, line) { after.or(before) } else { before.filter(|_| !is_head) }
    };
    let of = at.map(|(w, _)| w).or(walk).or_else(within);
    let parts = std::iter::once(&message).chain(&helps);
    let parts = parts.map(|text| linked(rows, of, text)).collect();
    for mend in &mut mends {
        mend.at = mend.at.or(at).or(of.map(|w| (w, 0)));
    }
    let again = if is_measured_again { again(source, one, rows) } else { Vec::new() };
    let has_button = !mends.is_empty() || again.iter().any(|one| one.mend.is_some());
    let closes = |one: &Again| {
        let (Some(mend), Some((w, _))) = (&one.mend, row_on(rows, one.line)) else { return false };
        let mut mended = source.text().to_owned();
        mended.replace_range(mend.from..mend.to, &mend.text);
        self::rows(&mended).walks.get(w).is_some_and(|walk| walk.is_closed)
    };
    let is_at_it = at.is_some() || field.is_some();
    let rank = match has_button {
        true if again.iter().any(closes) || is_at_it && one.is_error() => 0,
        true if is_at_it => 1,
        true => 2,
        false if is_at_it => 3,
        false => 4,
    };
    Notice {
        place: place(rows, line, at, of),
        at,
        field,
        walk: of.filter(|_| at.is_none() && field.is_none()),
        message,
        helps,
        parts,
        again,
        mends,
        is_early: unfinished.is_some_and(|walk| !walk.is_near),
        rank,
    }
}

/// Whether a line begins a level.
fn is_level(source: &Source, line: usize) -> bool {
    let text = line.checked_sub(1).and_then(|before| source.text().lines().nth(before));
    text.is_some_and(|text| text.split_whitespace().next() == Some("level"))
}

/// The walls to measure again, each with a button for the error that may have been made there.
fn again(source: &Source, one: &Diagnostic, rows: &Rows) -> Vec<Again> {
    let repair = |line: usize| {
        let is_its = |(span, side): &&(Span, String)| {
            source.line(span.start) == line && !side.starts_with('\n')
        };
        let (_, side) = one.repairs().iter().find(is_its)?;
        repaired(source, rows, line, side)
    };
    let wall = |(span, label): &(Span, String)| {
        let line = source.line(span.start);
        let (w, r) = row_on(rows, line)?;
        let label = street::seen(label, rows.compass);
        let parts = linked(rows, Some(w), &label);
        let mend = repair(line).filter(|_| !label.is_empty());
        let number = rows.walks[w].rows[r].number;
        Some(Again { line, number, place: format!("Wall {number}:"), label, parts, mend })
    };
    // As likely as their repairs: the first is to be looked at first.
    let likely = |line: usize| {
        let mut repairs = one.repairs().iter();
        repairs.position(|(span, _)| source.line(span.start) == line).unwrap_or(usize::MAX)
    };
    let mut all: Vec<Again> = one.others().iter().filter_map(wall).collect();
    all.sort_by_key(|one| (one.label.is_empty(), likely(one.line)));
    all
}

/// A wall with another direction or length, or without it, as an error would be undone.
fn repaired(source: &Source, rows: &Rows, line: usize, side: &str) -> Option<Mend> {
    let (w, r) = row_on(rows, line)?;
    let row = &rows.walks[w].rows[r];
    let edit = match side.split_once(' ') {
        None => Edit::Remove { line },
        Some((way, length)) => {
            let at = rows.compass.iter().position(|word| *word == way)?;
            let (way, length) = (Way::ALL[at], length.to_owned());
            Edit::Side { line, way, length, how: row.how, shape: Shape::Straight }
        }
    };
    let (from, to, text) = difference(source.text(), &edited(source.text(), &edit));
    let (label, r) = match edit {
        Edit::Remove { .. } => (format!("Remove wall {}", row.number), r.saturating_sub(1)),
        _ => (format!("Use {}", in_row(source, (from, to, &text), line)?), r),
    };
    Some(Mend { from, to, text, label, group: Vec::new(), at: Some((w, r)) })
}

/// A wall that may be missing after a row, without a length: the gap would hide every other error.
fn inserted(source: &Source, rows: &Rows, after: usize, way: &str) -> Option<Mend> {
    let (w, r) = row_on(rows, after)?;
    let way = Way::ALL[rows.compass.iter().position(|word| *word == way)?];
    let (how, shape) = Default::default();
    let edit = Edit::Add { after, way, length: String::new(), how, shape };
    let (from, to, text) = difference(source.text(), &edited(source.text(), &edit));
    let label =
        format!("Insert a wall {} after wall {}", way.spoken(), rows.walks[w].rows[r].number);
    Some(Mend { from, to, text, label, group: Vec::new(), at: Some((w, r + 1)) })
}

/// Puts the first space of a level where it fits over the level below.
fn placed(source: &Source, span: Span, start: &str) -> Option<Mend> {
    let line = source.line(span.start);
    let edit = Edit::Lay { line, exchanged: Vec::new(), start: start.to_owned() };
    let (from, to, text) = difference(source.text(), &edited(source.text(), &edit));
    (!text.is_empty()).then(|| Mend {
        from,
        to,
        text,
        label: "Put it there".to_owned(),
        group: Vec::new(),
        at: None,
    })
}

/// Feet and a fraction without a unit, of which nobody can know what it is a part of: `22 1/2`. A fraction that is not
/// commonly said of feet belongs to inches.
fn feet_and_a_fraction(row: &Row) -> Option<(u32, &str, u32)> {
    let (feet, fraction) = row.length.split_once(' ').filter(|_| !row.is_read)?;
    let inches = match fraction.trim() {
        "1/2" => 6,
        "1/4" => 3,
        "3/4" => 9,
        "1/3" => 4,
        "2/3" => 8,
        _ => return None,
    };
    Some((feet.parse().ok().filter(|feet| *feet < 1_000)?, fraction.trim(), inches))
}

/// Both readings of `22 1/2`: 22' 6" and 22' 0 1/2".
fn half_a_foot(source: &Source, row: &Row) -> Option<Vec<Mend>> {
    let (feet, fraction, inches) = feet_and_a_fraction(row)?;
    let both = [format!("{feet}' {inches}\""), format!("{feet}' 0 {fraction}\"")];
    Some(both.into_iter().filter_map(|length| instead(source, row, length)).collect())
}

/// Another length for a row that cannot be read.
fn instead(source: &Source, row: &Row, length: String) -> Option<Mend> {
    let line: usize =
        source.text().split_inclusive('\n').take(row.line.checked_sub(1)?).map(str::len).sum();
    let from = line + source.text().get(line..)?.find(&row.length)?;
    let to = from + row.length.len();
    let shown = in_row(source, (from, to, &length), row.line)?;
    Some(Mend {
        from,
        to,
        text: length,
        label: format!("Use {shown}"),
        group: Vec::new(),
        at: None,
    })
}

fn row_on(rows: &Rows, line: usize) -> Option<(usize, usize)> {
    rows.walks
        .iter()
        .enumerate()
        .find_map(|(w, walk)| walk.rows.iter().position(|row| row.line == line).map(|r| (w, r)))
}

fn place(rows: &Rows, line: usize, at: Option<(usize, usize)>, walk: Option<usize>) -> String {
    match (at, walk) {
        (Some((w, r)), _) if rows.walks.len() == 1 => {
            format!("Wall {}", rows.walks[w].rows[r].number)
        }
        (Some((w, r)), _) => {
            format!("{}, wall {}", rows.walks[w].name, rows.walks[w].rows[r].number)
        }
        (None, Some(w)) => rows.walks[w].name.clone(),
        (None, None) => format!("Line {line}"),
    }
}

fn still_open(walk: &Walk) -> String {
    format!("the walk is not back at its start: still {}", walk.gap)
}

/// Feet, and twelve inches or more, of a length that cannot be read.
fn counts_past_twelve(row: &Row) -> Option<(u32, u32)> {
    let [feet, inches, _] = row.parts.as_ref().filter(|_| !row.is_read)?;
    let (feet, inches) = (feet.parse().ok()?, inches.parse().ok()?);
    (12..1_000).contains(&inches).then_some((feet, inches)).filter(|_| feet < 1_000)
}

/// Both readings of `6' 24 1/4"`: feet and inches exchanged, or inches counted past a foot. One alone is no choice.
fn past_twelve(source: &Source, row: &Row) -> Option<Vec<Mend>> {
    let (feet, inches) = counts_past_twelve(row)?;
    let fraction = row.parts.as_ref().map_or("", |[.., fraction]| fraction);
    let written = |feet: u32, inches: u32| {
        let inches =
            if fraction.is_empty() { inches.to_string() } else { format!("{inches} {fraction}") };
        format!("{feet}' {inches}\"")
    };
    let exchanged = (feet < 12).then(|| written(inches, feet));
    let counted = written(feet + inches.div_euclid(12), inches.rem_euclid(12));
    let both: Vec<Mend> = [exchanged?, counted]
        .into_iter()
        .filter_map(|length| instead(source, row, length))
        .collect();
    (both.len() == 2).then_some(both)
}

/// Asks about walls that may be missing from a house that closes, in the words of the rows; such walls affect every
/// area.
#[must_use]
pub fn missing_walls(list: &[Diagnostic], notices: &[Notice]) -> Vec<String> {
    let all = list.iter().zip(notices).filter(|(one, _)| one.word() == Word::NoTurn);
    let sentence = |(_, notice): (&Diagnostic, &Notice)| {
        format!(
            "{}. Is a wall missing between the two? The wall that was not reached would hide that, and the areas below would be wrong.",
            notice.message.replace('`', "\"")
        )
    };
    all.map(sentence).collect()
}

/// What a replacement makes of a row: `left 22' 10"`.
fn in_row(source: &Source, (from, to, text): (usize, usize, &str), line: usize) -> Option<String> {
    if text.contains('\n') {
        return None;
    }
    let mut mended = source.text().to_owned();
    mended.replace_range(from..to, text);
    let rows = rows(&mended);
    let (w, r) = row_on(&rows, line)?;
    let row = &rows.walks[w].rows[r];
    let way = row.way.filter(|_| row.is_read)?;
    let length = row.parts.as_ref().map_or_else(|| row.length.clone(), shown);
    let length = if row.length.contains(char::is_alphabetic) { row.length.clone() } else { length };
    Some(format!("{} {length}", way.word()))
}

/// A length as a row shows it.
fn shown([feet, inches, fraction]: &[String; 3]) -> String {
    let inch = [inches, fraction].map(String::as_str).join(" ");
    match inch.trim() {
        "" | "0" => format!("{feet}'"),
        inch => format!("{feet}' {inch}\""),
    }
}

/// Whether a field takes an area.
fn is_area(field: &str) -> bool {
    matches!(field, "record" | "listing" | "plan")
}

/// What a replacement makes of a field for an area.
fn in_field(
    source: &Source,
    (from, to, text): (usize, usize, &str),
    field: Option<&str>,
) -> Option<String> {
    let mut mended = source.text().to_owned();
    mended.replace_range(from..to, text);
    let heads = rows(&mended).heads;
    let area = match field? {
        "record" => heads.record,
        "listing" => heads.listing,
        "plan" => heads.plan,
        _ => return None,
    };
    (!area.is_empty()).then_some(area)
}

/// Whether a text has neither an overlap nor a space outside the one that it lies in on the line of a space.
fn lies_well(name: &str, text: String, line: usize) -> bool {
    let is_at_it = |errors: &Diagnostics| {
        errors.list().iter().any(|one| {
            let is_its = |span: Span| errors.source().line(span.start) == line;
            matches!(one.word(), Word::SpacesOverlap | Word::NotInside)
                && (is_its(one.span()) || one.others().iter().any(|(span, _)| is_its(*span)))
        })
    };
    read::read(name, text).err().is_none_or(|errors| !is_at_it(&errors))
}

/// Lays a space that covers another elsewhere, if the text is then accepted.
fn laid(source: &Source, one: &Diagnostic, to: &Move, rows: &Rows) -> Option<Mend> {
    let line = source.line(to.of.start);
    let exchanged = to.exchanged.iter().map(|pair| pair.map(str::to_owned)).collect();
    let mended = edited(source.text(), &Edit::Lay { line, exchanged, start: to.start.clone() });
    if !lies_well(source.name(), mended.clone(), line) {
        return None;
    }
    let seen = |text: &str| street::seen(text, rows.compass);
    let label = capital(&seen(&to.stands));
    let side = capital(&seen(&format!("on the {} side", to.side)));
    // Where either of two spaces may be misplaced, it is asked first which.
    let group = match one.moves().iter().all(|other| other.of == to.of) {
        true => vec![side],
        false => {
            let walk = rows.walks.iter().find(|walk| walk.line == line)?;
            vec![walk.name.clone(), format!("{side} of {}", to.beside)]
        }
    };
    let (from, to, text) = difference(source.text(), &mended);
    Some(Mend { from, to, text, label, group, at: None })
}

/// The walks of a space that covers another's ground, and of that other.
fn overlapping<'a>(
    source: &Source,
    one: &Diagnostic,
    rows: &'a Rows,
) -> Option<(&'a Walk, &'a Walk)> {
    let walk_on = |at: usize| {
        let line = source.line(at);
        rows.walks.iter().find(|walk| walk.line == line)
    };
    let inner = walk_on(one.span().start).filter(|_| one.word() == Word::SpacesOverlap)?;
    Some((inner, one.others().iter().find_map(|(span, _)| walk_on(span.start))?))
}

/// Asks where a space stands that covers another's ground or touches none, or which of two.
fn which_side(source: &Source, one: &Diagnostic, rows: &Rows) -> Option<String> {
    let (first, moves) = (one.moves().first()?, one.moves());
    if moves.iter().any(|to| to.of != first.of) {
        return Some("which of the two stands elsewhere?".to_owned());
    }
    let line = source.line(first.of.start);
    let walk = rows.walks.iter().find(|walk| walk.line == line)?;
    Some(format!("where does {} stand, seen from {}?", quoted(&walk.name), quoted(&first.beside)))
}

/// Says that a space lies inside another whose ground it covers, if the text is then accepted.
fn inside(source: &Source, one: &Diagnostic, rows: &Rows) -> Option<(String, Mend)> {
    let (inner, outer) = overlapping(source, one, rows)?;
    if inner.within.is_some() {
        return None;
    }
    let mend = Edit::Within { line: inner.line, within: outer.name.clone() };
    let mended = edited(source.text(), &mend);
    if !lies_well(source.name(), mended.clone(), inner.line) {
        return None;
    }
    let (from, to, text) = difference(source.text(), &mended);
    let help = format!(
        "if the walk of {} goes around {}, its area is deducted",
        quoted(&outer.name),
        quoted(&inner.name)
    );
    let label = format!("{} is inside the walk of {}", inner.name, outer.name);
    Some((help, Mend { from, to, text, label, group: Vec::new(), at: None }))
}

/// A text of the report as a form says it: with its directions, and with walls for sides.
#[must_use]
pub fn seen_in_a_form(rows: &Rows, text: &str) -> String {
    let names = rows.walks.iter().map(|walk| walk.name.as_str());
    let names = names.chain(rows.levels.iter().map(String::as_str));
    street::seen_around(text, rows.compass, &names.collect::<Vec<_>>())
}

/// What to do about a walk that crosses itself since it went on after it was back at its start: its further walls belong
/// to another space. If just one space has no walls yet, a button moves them there.
fn walked_on(
    source: &Source,
    one: &Diagnostic,
    at: Option<(usize, usize)>,
    rows: &Rows,
) -> Option<(String, Option<Mend>)> {
    let walk = &rows.walks[at.filter(|_| one.word() == Word::SidesCross)?.0];
    let last = walk.first_back()?;
    let (last, further) = (&walk.rows[last], walk.rows.get(last + 1..)?);
    let number = further.first()?.number;
    let mut empty = rows.walks.iter().filter(|walk| walk.rows.is_empty());
    let to = empty.next().filter(|_| empty.next().is_none());
    let lines: Vec<usize> = further.iter().map(|row| row.line).collect();
    let mend = to.map(|to| {
        let edit = Edit::Move { lines, after: to.line };
        let (from, end, text) = difference(source.text(), &edited(source.text(), &edit));
        let at = rows.walks.iter().position(|walk| walk.line == to.line).map(|w| (w, 0));
        Mend {
            from,
            to: end,
            text,
            label: format!("Move them to {}", to.name),
            group: Vec::new(),
            at,
        }
    });
    let help = format!(
        "after wall {} the walk is back at its start: do the walls from wall {number} on belong to another space?",
        last.number
    );
    Some((help, mend))
}

/// What changed from one text to another: the start and end of what is replaced, and the replacement.
fn difference(old: &str, new: &str) -> (usize, usize, String) {
    let same = old.char_indices().zip(new.chars()).find(|((_, a), b)| a != b);
    let from = same.map_or(old.len().min(new.len()), |((at, _), _)| at);
    let ends = old[from..].chars().rev().zip(new[from..].chars().rev());
    let end: usize = ends.take_while(|(a, b)| a == b).map(|(a, _)| a.len_utf8()).sum();
    (from, old.len() - end, new[from..new.len() - end].to_owned())
}

/// What is asked about walks that are back at their starts, before their area is taken for the answer: whether
/// something that is not counted lies inside, and whether there is another level.
#[must_use]
pub fn questions(rows: &Rows) -> Vec<Question> {
    let living = Kind::Living.word();
    let is_whole = |walk: &Walk| walk.is_closed && walk.rows.iter().all(|row| row.is_read);
    let finished = || {
        let walks = rows.walks.iter().enumerate();
        walks.filter(move |(_, walk)| walk.kind == living && is_whole(walk))
    };
    let has_inner = |walk: &Walk| {
        let is_inner =
            |other: &Walk| other.level == walk.level && other.within.as_ref() == Some(&walk.name);
        rows.walks.iter().any(is_inner)
    };
    let is_below = |walk: &Walk| rows.levels.first() == Some(&walk.level);
    let asked = finished().filter(|(_, walk)| is_below(walk) && !has_inner(walk));
    let inside = asked.map(|(at, walk)| {
        let of = match rows.walks.len() {
            1 => "this walk".to_owned(),
            _ => format!("the walk of {}", walk.name),
        };
        Question {
            about: About::Inside,
            walk: at,
            text: format!("Is a garage or a porch inside {of}?"),
            why: "Its area is in the total until it is added as a space inside.".to_owned(),
            yes: "Yes, add it".to_owned(),
            no: "No".to_owned(),
        }
    });
    let level = finished().next().filter(|_| rows.levels.len() == 1).map(|(at, _)| Question {
        about: About::Level,
        walk: at,
        text: "Is there an upper floor?".to_owned(),
        why: "A record counts it too; here it counts once its walk is added.".to_owned(),
        yes: "Yes, add it".to_owned(),
        no: "No".to_owned(),
    });
    inside.chain(level).collect()
}

#[cfg(test)]
mod tests;
