//! Edits of single lines that leave all other text unchanged.

use std::ops::Range;

use serde::Deserialize;

use super::way::{self, way_of};
use super::{How, Shape, Way, corners, front_of};
use crate::diagnostic::Source;
use crate::geometry::compass::Direction;
use crate::sketch::Sketch;
use crate::sketch::statement::{FigureKind, Head, HeadLine, Statement, Unit};
use crate::sketch::tree::Line;

/// An edit. Lines are counted from 1; an edit of a line that does not exist changes nothing.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(tag = "edit", rename_all = "lowercase")]
pub enum Edit {
    /// Changes the direction, length or source of a side; the words after it and its comment stay as they are.
    Side {
        /// The line of the side.
        line: usize,
        /// The direction.
        way: Way,
        /// The length as typed; of a bay its width along the wall, of a slanted wall its first leg.
        length: String,
        /// How it was obtained.
        how: How,
        /// Its shape.
        #[serde(default)]
        shape: Shape,
    },
    /// Inserts a new side after a line.
    Add {
        /// The line of a side, or the line that begins the space.
        after: usize,
        /// The direction.
        way: Way,
        /// The length as typed; of a bay its width along the wall, of a slanted wall its first leg.
        length: String,
        /// How it was obtained.
        how: How,
        /// Its shape.
        #[serde(default)]
        shape: Shape,
    },
    /// Removes a line.
    Remove {
        /// The line to remove.
        line: usize,
    },
    /// Exchanges two lines.
    Swap {
        /// The first line.
        line: usize,
        /// The second line.
        with: usize,
    },
    /// Sets a field before the first level; an empty value removes its line.
    Head {
        /// `property`, `account`, `record`, `listing`, `plan`, `veneer` or `units`.
        field: String,
        /// The new value.
        value: String,
    },
    /// Adds a space after the last one of its level, and the level too if there is none of that name.
    Space {
        /// The word for its kind.
        kind: String,
        /// Its name.
        name: String,
        /// The name of the space it lies in, if any.
        within: Option<String>,
        /// The space and corner (from 1) it begins at, if any.
        corner: Option<(String, usize)>,
        /// Where it begins, as directions and lengths from the level's origin, if not at a corner.
        #[serde(default)]
        start: Vec<(Way, String)>,
        /// The name of its level; `None` for the last level.
        #[serde(default)]
        level: Option<String>,
    },
    /// Removes a space: the line that begins it and everything up to the next space, level or outline.
    Drop {
        /// The line that begins the space.
        line: usize,
    },
    /// Puts a bare list of walls, as from a notebook, into a house; any other text stays as it is.
    House,
    /// Names the picture of a side, or removes it.
    Picture {
        /// The line of the side.
        line: usize,
        /// What the picture shows; empty to remove the picture.
        caption: String,
        /// The name of its file.
        file: String,
    },
    /// Says that a space lies in another, whose walk goes around it.
    Within {
        /// The line that begins the space.
        line: usize,
        /// The name of the other.
        within: String,
    },
    /// Moves sides to another space.
    Move {
        /// The lines of the sides.
        lines: Vec<usize>,
        /// The line that begins the other space.
        after: usize,
    },
    /// Says where a space begins on its level.
    Begin {
        /// The line that begins the space.
        line: usize,
        /// The space and corner (from 1) it begins at, if any.
        corner: Option<(String, usize)>,
        /// Where it begins, as directions and lengths from the level's origin, if not at a corner.
        #[serde(default)]
        start: Vec<(Way, String)>,
    },
    /// Lays a space elsewhere: its sides exchange directions, or it begins at another place.
    Lay {
        /// The line that begins the space.
        line: usize,
        /// The words of directions that are exchanged, in pairs.
        exchanged: Vec<[String; 2]>,
        /// Where it begins, as the file has it: `start east 22'`; empty if it stays where it is.
        start: String,
    },
    /// Changes the kind and name of a space, and its name wherever its level refers to it.
    Name {
        /// The line that begins the space.
        line: usize,
        /// The word for its kind.
        kind: String,
        /// Its name.
        name: String,
    },
}

/// The text after an edit.
#[must_use]
pub fn edited(text: &str, edit: &Edit) -> String {
    corners::kept(text, Lines::of(text).after(edit), edit)
}

/// The lines of a text with their line ends, so that joining them gives the same text.
struct Lines<'a> {
    text: &'a str,
    lines: Vec<String>,
    end: &'static str,
}

impl<'a> Lines<'a> {
    fn of(text: &'a str) -> Lines<'a> {
        let lines = text.split_inclusive('\n').map(str::to_owned).collect();
        let end = if text.contains("\r\n") { "\r\n" } else { "\n" };
        Lines { text, lines, end }
    }

    fn after(mut self, edit: &Edit) -> String {
        match edit {
            Edit::Side { line, way, length, how, shape } => {
                let words = self.words(*way, length, *how, shape);
                self.change(*line, |body| side_replaced(body, &words, *how));
            }
            Edit::Add { after, way, length, how, shape } => {
                let words = self.words(*way, length, *how, shape);
                self.add_side(*after, &words, *how);
            }
            Edit::Remove { line } => {
                if let Some(i) = self.index(*line) {
                    self.lines.remove(i);
                }
            }
            Edit::Swap { line, with } => self.swap(*line, *with),
            Edit::Head { field, value } => self.head(field, value),
            Edit::Space { kind, name, within, corner, start, level } => {
                let mut words = format!("{kind} \"{}\"", quotable(name));
                if let Some(within) = within {
                    words.push_str(&format!(" within \"{}\"", quotable(within)));
                }
                words.push_str(&self.place(corner.as_ref(), start));
                self.add_space(&words, level.as_deref());
            }
            Edit::Drop { line } => self.drop_space(*line),
            Edit::House => self.house(),
            Edit::Picture { line, caption, file } => {
                self.change(*line, |body| pictured(body, caption, file));
            }
            Edit::Within { line, within } => {
                let words = format!(" within \"{}\"", quotable(within));
                self.change(*line, |body| format!("{}{words}{}", head_of(body), rest_of(body)));
            }
            Edit::Move { lines, after } => self.move_below(lines, *after),
            Edit::Begin { line, corner, start } => {
                let words = self.place(corner.as_ref(), start);
                self.change(*line, |body| placed(body, &words));
            }
            Edit::Lay { line, exchanged, start } => {
                if !start.is_empty() {
                    self.change(*line, |body| placed(body, &format!(" {start}")));
                }
                self.exchange(*line, exchanged);
            }
            Edit::Name { line, kind, name } => {
                let name = quotable(name);
                self.name_again(*line, &name);
                self.change(*line, |body| format!("{kind} \"{name}\"{}", rest_of(body)));
            }
        }
        self.lines.concat()
    }

    fn index(&self, line: usize) -> Option<usize> {
        line.checked_sub(1).filter(|&i| i < self.lines.len())
    }

    /// Changes the part of a line before its comment, keeping its indentation and trailing spaces.
    fn change(&mut self, line: usize, change: impl FnOnce(&str) -> String) {
        let Some(i) = self.index(line) else { return };
        let old = &self.lines[i];
        let mark = if i == 0 && old.starts_with('\u{feff}') { '\u{feff}'.len_utf8() } else { 0 };
        let body = content(&old[mark..]);
        let start = mark + body.len() - body.trim_start().len();
        let end = mark + body.trim_end().len();
        let new = change(&old[start..end.max(start)]);
        self.lines[i] = format!("{}{new}{}", &old[..start], &old[end.max(start)..]);
    }

    /// The word for a direction in this file.
    fn direction(&self, way: Way) -> &'static str {
        let reading = crate::sketch::read(&Source::new("", self.text));
        way.direction(front_of(&reading.sketch)).word()
    }

    /// The words of a side as written in the file.
    fn words(&self, way: Way, length: &str, how: How, shape: &Shape) -> String {
        let (way, length) = (self.direction(way), written(length));
        let words = match (how, shape) {
            (How::Closing, _) => format!("{way} by closing"),
            (_, Shape::Straight | Shape::Other) => format!("{way} {length}"),
            (_, Shape::Bay { out, flat }) => {
                format!("bay {way} {length} out {} flat {}", written(out), written(flat))
            }
            (_, Shape::Round { out }) => format!("bay {way} {length} out {} round", written(out)),
            (_, Shape::Slant { to, leg }) => {
                format!("diagonal {way} {length} {} {}", self.direction(*to), written(leg))
            }
        };
        words.trim_end().to_owned()
    }

    /// The words, each after a blank, for where a space begins; none if that is where its level begins.
    fn place(&self, corner: Option<&(String, usize)>, start: &[(Way, String)]) -> String {
        match (corner, start) {
            (Some((space, corner)), _) => {
                format!(" from \"{}\" corner {corner}", quotable(space))
            }
            (None, []) => String::new(),
            (None, start) => {
                let part = |(way, length): &(Way, String)| {
                    format!(" {} {}", self.direction(*way), written(length))
                };
                format!(" start{}", start.iter().map(part).collect::<String>())
            }
        }
    }

    /// Exchanges directions in every side of a space.
    fn exchange(&mut self, line: usize, pairs: &[[String; 2]]) {
        let rows = super::rows(self.text).walks.into_iter().find(|walk| walk.line == line);
        let other = |word: &str| {
            let with = |[one, other]: &[String; 2]| match word {
                _ if word == one => Some(other.clone()),
                _ if word == other => Some(one.clone()),
                _ => None,
            };
            pairs.iter().find_map(with)
        };
        let front = front_of(&crate::sketch::read(&Source::new("", self.text)).sketch);
        for row in rows.into_iter().flat_map(|walk| walk.rows) {
            self.change(row.line, |body| {
                let side = side_of(body);
                let mut turned = body.to_owned();
                let words: Vec<(usize, &str)> = outside_texts(side).collect();
                for (at, word) in words.into_iter().rev() {
                    let way = way_of(word, front).map(|way| way.direction(front).word());
                    if let Some(other) = way.and_then(other) {
                        turned.replace_range(at..at + word.len(), &other);
                    }
                }
                turned
            });
        }
    }

    /// Makes sure that a line can be inserted after line `after`, and returns the index at which to insert it.
    fn ended(&mut self, after: usize) -> usize {
        let at = after.min(self.lines.len());
        if let Some(last) = at.checked_sub(1).and_then(|i| self.lines.get_mut(i))
            && !last.ends_with('\n')
        {
            last.push_str(self.end);
        }
        at
    }

    fn add_side(&mut self, after: usize, words: &str, how: How) {
        let at = self.ended(after);
        let above = at.checked_sub(1).map_or("", |i| self.lines[i].as_str());
        let mut indent: String = above.chars().take_while(|c| matches!(c, ' ' | '\t')).collect();
        let first = above.trim_start().split(|c: char| !c.is_alphabetic()).next();
        let is_side = first.is_some_and(|word| way::direction(word).is_some())
            || [
                "corner", "overall", "tie", "diagonal", "bearing", "arc", "bay", "close", "back",
                "right", "front", "left",
            ]
            .contains(&first.unwrap_or_default());
        if !is_side {
            indent.push_str("  ");
        }
        let about = if how == How::About { " estimated" } else { "" };
        self.lines.insert(at, format!("{indent}{words}{about}{}", self.end));
    }

    fn move_below(&mut self, lines: &[usize], after: usize) {
        self.ended(self.lines.len());
        self.ended(after);
        let Some(first) = self.index(after) else { return };
        let moved: Vec<usize> = lines.iter().filter_map(|&line| self.index(line)).collect();
        let mut all = Vec::with_capacity(self.lines.len());
        for (i, line) in self.lines.iter().enumerate() {
            if !moved.contains(&i) {
                all.push(line.clone());
            }
            if i == first {
                all.extend(moved.iter().map(|&i| self.lines[i].clone()));
            }
        }
        self.lines = all;
    }

    fn swap(&mut self, line: usize, with: usize) {
        let (Some(i), Some(j)) = (self.index(line), self.index(with)) else { return };
        let last = self.lines.len();
        self.ended(last);
        self.lines.swap(i, j);
        if !self.text.ends_with('\n')
            && let Some(line) = self.lines.last_mut()
        {
            line.truncate(line.trim_end_matches(['\n', '\r']).len());
        }
    }

    fn head(&mut self, field: &str, value: &str) {
        let value = plain(value).trim().to_owned();
        let reading = crate::sketch::read(&Source::new("", self.text));
        let is_it = |statement: &Statement| field_of(statement) == Some(field);
        let statements = || reading.sketch.lines.iter().map(|line| line.statement.as_ref());
        let found = statements().position(|statement| statement.is_some_and(is_it));
        // A line that cannot be read yet may still hold the field.
        let found = found.or_else(|| {
            let begins = |line: &String| content(line).split_whitespace().next() == Some(field);
            self.lines.iter().position(begins)
        });
        let words = match field {
            "property" | "account" => format!("\"{}\"", quotable(&value)),
            "veneer" => thickness(&value, is_metric(&reading.sketch)),
            "units" => value.clone(),
            _ => with_unit(&value, is_metric(&reading.sketch)),
        };
        match (found, value.is_empty()) {
            (Some(i), true) => {
                self.lines.remove(i);
            }
            (Some(i), false) => self.change(i + 1, |body| head_replaced(body, field, &words)),
            (None, true) => {}
            (None, false) => {
                let is_body = |statement: &Statement| {
                    !matches!(statement, Statement::Head(_) | Statement::Figure(_))
                };
                // It determines how numbers without a unit are read, so it comes before them.
                let is_body = |statement: &Statement| field == "units" || is_body(statement);
                let body = statements().position(|statement| statement.is_some_and(is_body));
                let at = body.unwrap_or(self.lines.len());
                let last = statements().take(at).rposition(|statement| statement.is_some());
                let at = self.ended(last.map_or(0, |i| i + 1));
                self.lines.insert(at, format!("{field} {words}{}", self.end));
            }
        }
    }

    /// Renames the space of a line wherever later spaces of its level begin at it or lie in it.
    fn name_again(&mut self, line: usize, name: &str) {
        let reading = crate::sketch::read(&Source::new("", self.text));
        let Some(first) = self.index(line) else { return };
        let statement =
            |i: usize| reading.sketch.lines.get(i).and_then(|one| one.statement.as_ref());
        let Some(Statement::Space(space)) = statement(first) else { return };
        let old = space.name.text.clone();
        for i in first + 1..self.lines.len() {
            match statement(i) {
                Some(Statement::Level(_)) => break,
                Some(Statement::Space(other)) if other.name.text == old => break,
                Some(Statement::Space(_)) => self.change(i + 1, |body| referring(body, &old, name)),
                _ => {}
            }
        }
    }

    fn house(&mut self) {
        let sketch = crate::sketch::read(&Source::new("", self.text)).sketch;
        let is_wall = |(line, one): (&String, &Line)| match &one.statement {
            Some(Statement::Side(..) | Statement::Bay(..)) => true,
            Some(_) => false,
            None => {
                let body = content(line).trim();
                let first = body.split(|c: char| !c.is_alphabetic()).next().unwrap_or_default();
                let has_length = body.contains(|c: char| c.is_ascii_digit());
                has_length && way_of(first, Direction::South).is_some()
            }
        };
        let Some(at) = self.lines.iter().zip(&sketch.lines).position(is_wall) else { return };
        let is_of_a_house = |line: &Line| {
            use Statement::{Level, Lot, Outline, Space};
            matches!(line.statement, Some(Level(_) | Space(_) | Lot(_) | Outline(_)))
        };
        if sketch.lines.iter().any(is_of_a_house) {
            return;
        }
        let mut head = format!("level \"Ground floor\"{0}  living \"House\"{0}", self.end);
        if sketch.heads.front.is_none() {
            head.insert_str(0, &format!("front south{}", self.end));
        }
        self.lines.insert(at, head);
    }

    fn drop_space(&mut self, line: usize) {
        let Some(first) = self.index(line) else { return };
        let reading = crate::sketch::read(&Source::new("", self.text));
        let begins = |i: &usize| {
            let statement = reading.sketch.lines.get(*i).and_then(|line| line.statement.as_ref());
            matches!(
                statement,
                Some(
                    Statement::Level(_)
                        | Statement::Space(_)
                        | Statement::Lot(_)
                        | Statement::Outline(_)
                )
            )
        };
        if !begins(&first) {
            return;
        }
        let end = (first + 1..self.lines.len()).find(begins).unwrap_or(self.lines.len());
        self.lines.drain(first..end);
    }

    fn add_space(&mut self, words: &str, level: Option<&str>) {
        let reading = crate::sketch::read(&Source::new("", self.text));
        let mut last = None;
        let mut indent = String::from("  ");
        let is_there = |name: &str| {
            let levels = &reading.sketch.levels;
            levels.iter().any(|one| one.level.name.text == name)
        };
        let new = level.filter(|&name| !is_there(name));
        let wanted = level.filter(|&name| is_there(name));
        let (mut is_in_level, mut is_wanted) = (false, true);
        for (i, line) in reading.sketch.lines.iter().enumerate() {
            match &line.statement {
                Some(Statement::Level(level)) => {
                    is_wanted = wanted.is_none_or(|name| level.name.text == name);
                    is_in_level = is_wanted;
                    if is_wanted {
                        last = Some(i);
                    }
                }
                Some(Statement::Space(_)) if is_wanted => {
                    (is_in_level, last) = (true, Some(i));
                    let line = self.lines.get(i).map_or("", String::as_str);
                    indent = line.chars().take_while(|c| matches!(c, ' ' | '\t')).collect();
                }
                Some(Statement::Lot(_) | Statement::Outline(_)) => is_in_level = false,
                Some(
                    Statement::Side(..)
                    | Statement::Bay(..)
                    | Statement::Corner(_)
                    | Statement::Overall(..)
                    | Statement::Tie(..),
                ) if is_in_level => last = Some(i),
                _ => {}
            }
        }
        let at = self.ended(last.map_or(self.lines.len(), |i| i + 1));
        self.lines.insert(at, format!("{indent}{words}{}", self.end));
        let new = new.or_else(|| last.is_none().then_some("Ground floor"));
        if let Some(name) = new {
            self.lines.insert(at, format!("level \"{}\"{}", quotable(name), self.end));
        }
    }
}

/// The form field that a statement holds.
fn field_of(statement: &Statement) -> Option<&'static str> {
    match statement {
        Statement::Head(head) => match &**head {
            Head::Line(HeadLine::Property, _) => Some("property"),
            Head::Line(HeadLine::Account, _) => Some("account"),
            Head::Veneer(_) => Some("veneer"),
            Head::Units(_) => Some("units"),
            _ => None,
        },
        Statement::Figure(figure) => match figure.kind {
            FigureKind::Record => Some("record"),
            FigureKind::Listing => Some("listing"),
            FigureKind::Plan => Some("plan"),
            FigureKind::Other(_) => None,
        },
        _ => None,
    }
}

/// The form field on a line, read or not.
pub(super) fn field_on(typed: &str, statement: Option<&Statement>) -> Option<&'static str> {
    if let Some(statement) = statement {
        return field_of(statement);
    }
    const FIELDS: [&str; 7] =
        ["property", "account", "record", "listing", "plan", "veneer", "units"];
    let first = content(typed).split_whitespace().next();
    FIELDS.into_iter().find(|&field| first == Some(field))
}

/// A side with its directions as seen from the street.
pub(super) fn in_ways(line: &str, front: Direction) -> String {
    let end = side_of(content(line)).len();
    let (side, after) = line.split_at(end);
    let words: Vec<(usize, &str)> = outside_texts(side).collect();
    let mut seen = side.to_owned();
    for (at, word) in words.into_iter().rev() {
        if let Some(way) = way_of(word, front) {
            seen.replace_range(at..at + word.len(), way.word());
        }
    }
    seen + after
}

/// Text typed into a field, as part of a line; it cannot begin a comment.
fn plain(typed: &str) -> String {
    typed.chars().map(|c| if c.is_control() || c == '#' { ' ' } else { c }).collect()
}

/// Text typed into a field, as the inside of a quoted text.
fn quotable(typed: &str) -> String {
    let plain = |c| if matches!(c, '"' | '“' | '”') || char::is_control(c) { '\'' } else { c };
    typed.trim().chars().map(plain).collect()
}

/// A length typed into a field, as part of a line.
fn written(length: &str) -> String {
    plain(length).trim().to_owned()
}

/// Whether numbers without a unit are metric.
fn is_metric(sketch: &Sketch) -> bool {
    matches!(sketch.heads.units, Some(Unit::Meters | Unit::Centimeters | Unit::Millimeters))
}

/// An area as typed; a number without a unit is in square feet or square meters, as the field says. In square meters
/// one or two digits after a comma are decimals, since keypads of many phones have no point.
fn with_unit(value: &str, is_metric: bool) -> String {
    let is_digits = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    let decimals = value.split_once(',').filter(|(whole, after)| {
        is_metric && is_digits(whole) && is_digits(after) && after.len() < 3
    });
    if let Some((whole, after)) = decimals {
        return format!("{whole}.{after} sq m");
    }
    let is_bare = value.chars().all(|c| c.is_ascii_digit() || matches!(c, ',' | '.'));
    match (is_bare, is_metric) {
        (true, false) => format!("{value} sq ft"),
        (true, true) => format!("{value} sq m"),
        (false, _) => value.to_owned(),
    }
}

/// A thickness as typed; a number without a unit is in inches or centimeters, as the field says.
fn thickness(value: &str, is_metric: bool) -> String {
    let is_bare = value.ends_with(|c: char| c.is_ascii_digit())
        && value.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | '/' | ' '));
    match (is_bare, is_metric) {
        (true, false) => format!("{value}\""),
        (true, true) => format!("{value} cm"),
        (false, _) => value.to_owned(),
    }
}

fn head_replaced(body: &str, field: &str, words: &str) -> String {
    let after = &body[body.find(char::is_whitespace).unwrap_or(body.len())..];
    let rest = after.trim_start();
    let old = match field {
        "property" | "account" | "veneer" | "units" => rest,
        _ => number_of(rest),
    };
    format!("{} {words}{}", &body[..body.len() - after.len()], &rest[old.len()..])
}

fn side_replaced(body: &str, words: &str, how: How) -> String {
    let side = side_of(body);
    let mut after = body[side.len()..].to_owned();
    let about = outside_texts(&after).any(|(_, word)| word == "estimated");
    if about && how != How::About {
        let found = outside_texts(&after).find(|(_, word)| *word == "estimated");
        if let Some((at, end)) = found.map(|(at, word)| (at, at + word.len())) {
            let start = after[..at].trim_end().len();
            after.replace_range(start..end, "");
        }
    } else if how == How::About && !about {
        after.insert_str(0, " estimated");
    }
    if side == words { format!("{side}{after}") } else { format!("{words}{after}") }
}

/// A side with another picture, or with none.
fn pictured(body: &str, caption: &str, file: &str) -> String {
    let mut body = body.to_owned();
    for word in ["file", "photo"] {
        let found = outside_texts(&body).find(|(_, other)| *other == word);
        if let Some((at, _)) = found {
            let after = body[at..].char_indices().filter(|(_, c)| matches!(c, '"' | '“' | '”'));
            let end = after.map(|(i, c)| at + i + c.len_utf8()).nth(1).unwrap_or(body.len());
            body.replace_range(body[..at].trim_end().len()..end, "");
        }
    }
    if !caption.is_empty() {
        body.push_str(&format!(" photo \"{}\" file \"{}\"", quotable(caption), quotable(file)));
    }
    body
}

/// A line that begins a space, with another name after `within` and `from`.
fn referring(body: &str, old: &str, name: &str) -> String {
    let mut body = body.to_owned();
    for word in ["within", "from"] {
        let found = outside_texts(&body).find(|(_, other)| *other == word);
        let Some(at) = found.map(|(at, _)| at + word.len()) else { continue };
        let after = &body[at..];
        let mut marks = after.char_indices().filter(|(_, c)| matches!(c, '"' | '“' | '”'));
        let (Some((open, mark)), Some((close, _))) = (marks.next(), marks.next()) else { continue };
        let inside = at + open + mark.len_utf8()..at + close;
        if after[..open].trim().is_empty() && body[inside.clone()] == *old {
            body.replace_range(inside, name);
        }
    }
    body
}

/// A line that begins a space, with other words, each after a blank, for where it begins.
fn placed(body: &str, words: &str) -> String {
    const OTHERS: [&str; 8] =
        ["measured", "within", "detached", "under", "veneer", "counted", "not", "recorded"];
    let is_one_of = |word: &str, all: &[&str]| all.iter().any(|one| one.eq_ignore_ascii_case(word));
    let head = head_of(body).len();
    let after = || outside_texts(body).filter(|(at, _)| *at >= head);
    let old = after().find(|(_, word)| is_one_of(word, &["start", "from"]));
    let within = after().find(|(_, word)| is_one_of(word, &["within"]));
    let next = |at: usize| {
        let next = after().find(|(other, word)| *other > at && is_one_of(word, &OTHERS));
        body[..next.map_or(body.len(), |(at, _)| at)].trim_end().len()
    };
    let (from, to) = match (old, within) {
        (Some((at, _)), _) => (body[..at].trim_end().len(), next(at)),
        (None, Some((at, _))) => (next(at), next(at)),
        (None, None) => (head, head),
    };
    format!("{}{words}{}", &body[..from], &body[to..])
}

/// Where the number of a corner is on a line that begins a space.
pub(super) fn numbered_corner(line: &str, corner: usize) -> Option<Range<usize>> {
    let body = content(line);
    let (at, word) = outside_texts(body).find(|(_, word)| *word == "corner")?;
    let after = &body[at + word.len()..];
    let start = at + word.len() + after.len() - after.trim_start().len();
    let number = &body[start..];
    let digits = number.find(|c: char| !c.is_ascii_digit()).unwrap_or(number.len());
    (number[..digits].parse() == Ok(corner)).then(|| start..start + digits)
}

/// The kind and name of a line that begins a space.
fn head_of(body: &str) -> &str {
    &body[..body.len() - rest_of(body).len()]
}

/// What follows the kind and name of a line that begins a space.
fn rest_of(body: &str) -> &str {
    let mut marks = body.char_indices().filter(|(_, c)| matches!(c, '"' | '“' | '”'));
    marks.nth(1).map_or("", |(at, c)| &body[at + c.len_utf8()..])
}

/// A line without its comment and line end.
pub(super) fn content(line: &str) -> &str {
    let line = line.trim_end_matches(['\n', '\r']);
    let mut is_text = false;
    let mut before = ' ';
    for (at, c) in line.char_indices() {
        match c {
            '"' | '“' | '”' if is_text => is_text = false,
            '"' | '“' | '”' => is_text = !is_length_end(before),
            '#' if !is_text => return &line[..at],
            _ => {}
        }
        before = c;
    }
    line
}

/// Whether a quotation mark after this character is an inch mark.
fn is_length_end(c: char) -> bool {
    c.is_ascii_digit() || matches!(c, '½' | '¼' | '¾' | '⅛' | '⅜' | '⅝' | '⅞' | '.')
}

/// Every word outside quoted texts, with its position.
fn outside_texts(body: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut at = 0;
    std::iter::from_fn(move || {
        let mut is_text = false;
        let mut before = ' ';
        let rest = &body[at..];
        for (i, c) in rest.char_indices() {
            match c {
                '"' | '“' | '”' if is_text => is_text = false,
                '"' | '“' | '”' => is_text = !is_length_end(before),
                c if c.is_alphabetic() && !is_text => {
                    let word = &rest[i..];
                    let end = word.find(|c: char| !c.is_alphabetic()).unwrap_or(word.len());
                    let start = at + i;
                    at = start + end;
                    return Some((start, &body[start..at]));
                }
                _ => {}
            }
            before = c;
        }
        None
    })
}

/// A side without the words after it.
pub(super) fn side_of(body: &str) -> &str {
    const AFTER: [&str; 9] =
        ["recorded", "tolerance", "estimated", "from", "common", "veneer", "photo", "note", "wall"];
    let after = outside_texts(body)
        .find(|(_, word)| AFTER.iter().any(|after| after.eq_ignore_ascii_case(word)));
    body[..after.map_or(body.len(), |(at, _)| at)].trim_end()
}

/// A bay or a slanted wall as its words, whether or not the lengths can be read.
pub(super) fn shape_in(side: &str, front: Direction) -> Option<(Way, String, Shape)> {
    let mut words = outside_texts(side);
    let (_, first) = words.next()?;
    let (at, word) = words.next()?;
    let way = way_of(word, front)?;
    let rest = &side[at + word.len()..];
    let part = |text: &str| text.trim().to_owned();
    let shape = match first.to_lowercase().as_str() {
        "bay" => {
            let (width, rest) = cut(rest, |word| word.eq_ignore_ascii_case("out"))?;
            let round = cut(rest.1, |word| word.eq_ignore_ascii_case("round"));
            let flat = cut(rest.1, |word| word.eq_ignore_ascii_case("flat"));
            let shape = match (round, flat) {
                (Some((out, _)), _) => Shape::Round { out: part(out) },
                (_, Some((out, (_, flat)))) => Shape::Bay { out: part(out), flat: part(flat) },
                _ => return None,
            };
            return Some((way, part(width), shape));
        }
        "diagonal" => cut(rest, |word| way_of(word, front).is_some())?,
        _ => return None,
    };
    let (first, (word, second)) = shape;
    let to = way_of(word, front)?;
    Some((way, part(first), Shape::Slant { to, leg: part(second) }))
}

/// The text before the first word that fits, that word, and the text after it; `None` if no word fits.
fn cut(text: &str, fits: impl Fn(&str) -> bool) -> Option<(&str, (&str, &str))> {
    let (at, word) = outside_texts(text).find(|(_, word)| fits(word))?;
    Some((&text[..at], (word, &text[at + word.len()..])))
}

/// The length of a straight side: everything after its first word.
pub(super) fn length_in(body: &str) -> &str {
    let side = side_of(body);
    side[side.find(|c: char| !c.is_alphabetic()).unwrap_or(side.len())..].trim()
}

/// The area at the start of what follows a figure's word.
pub(super) fn number_of(rest: &str) -> &str {
    let word = outside_texts(rest).find(|(_, word)| {
        ["measured", "sides", "counting"].contains(&word.to_lowercase().as_str())
    });
    let text = rest.find(['"', '“', '”']);
    let end = [word.map(|(at, _)| at), text].into_iter().flatten().min();
    rest[..end.unwrap_or(rest.len())].trim_end()
}
