//! Text and tables as rows, and pages that are filled with rows.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use std::ops::Range;

use crate::pages::Paper;
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::page::{Anchor, Ink, Page, Photograph, Point, Role, Run, Stroke, Text};
use crate::wording::DISCLAIMER;
use crate::wording::accounts::page_of_level;
use crate::wording::heard::heard;

/// The number of the page on which the other figures begin, until it is known: as wide as a page number, and with
/// [`fonts::PLACEHOLDER`], which no typed text holds.
pub(crate) const OTHERS_PAGE: &str = "0\u{1}";

/// The empty margin of a page, in points.
pub(crate) const EDGE_PT: f64 = 40.0;
/// The line spacing, relative to the letter size.
const LEADING: f64 = 1.28;
/// The height reserved for the foot of a page, in points.
const FOOT_PT: f64 = 64.0;

/// A row that is never divided. Its inks are relative to its top left corner.
#[derive(Clone, Debug, Default)]
pub(crate) struct Row {
    pub(crate) height_pt: f64,
    pub(crate) inks: Vec<Ink>,
    /// Whether it may not be the last row on a page.
    pub(crate) holds_next: bool,
    /// The head of its table, repeated on a new page.
    pub(crate) head: Option<usize>,
    /// What it is, for screen readers.
    pub(crate) role: Role,
    /// Whether it continues the row before it, as a further line of a paragraph does.
    pub(crate) continues: bool,
}

/// A sequence of rows of the same width.
#[derive(Clone, Debug)]
pub(crate) struct Stack {
    pub(crate) width_pt: f64,
    pub(crate) rows: Vec<Row>,
    heads: Vec<Row>,
    /// The size of letters and spaces, relative to the requested one.
    tight: f64,
}

/// A row of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Line {
    /// One cell per column.
    Plain(Vec<String>),
    /// One cell per column, in bold.
    Bold(Vec<String>),
    /// A name across the whole table, in bold; it stays with the next row.
    Over(String),
    /// A small note across the whole table.
    Note(String),
}

/// A column of a table.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Column<'a> {
    /// May contain line breaks.
    pub(crate) head: &'a str,
    /// In points; columns with 0 share the remaining width.
    pub(crate) width_pt: f64,
    pub(crate) is_figures: bool,
}

impl<'a> Column<'a> {
    pub(crate) const fn words(head: &'a str) -> Column<'a> {
        Column { head, width_pt: 0.0, is_figures: false }
    }

    pub(crate) const fn short(head: &'a str, width_pt: f64) -> Column<'a> {
        Column { head, width_pt, is_figures: false }
    }

    pub(crate) const fn figures(head: &'a str, width_pt: f64) -> Column<'a> {
        Column { head, width_pt, is_figures: true }
    }
}

impl Stack {
    pub(crate) fn new(width_pt: f64) -> Stack {
        Stack { width_pt, rows: Vec::new(), heads: Vec::new(), tight: 1.0 }
    }

    pub(crate) fn height_pt(&self) -> f64 {
        self.rows.iter().map(|row| row.height_pt).sum()
    }

    pub(crate) fn space(&mut self, height_pt: f64) {
        let height_pt = height_pt * self.tight;
        self.rows.push(Row { height_pt, ..Row::default() });
    }

    /// Keeps the last row and the next one on the same page.
    pub(crate) fn hold(&mut self) {
        if let Some(row) = self.rows.last_mut() {
            row.holds_next = true;
        }
    }

    pub(crate) fn row(&mut self, row: Row) {
        self.rows.push(row);
    }

    fn lines(&mut self, hand: Typeface, size_pt: f64, words: &str, indent_pt: f64, hang_pt: f64) {
        let size_pt = size_pt * self.tight;
        let words = fonts::shown(words);
        let lines = fonts::wrapped(hand, size_pt, &words, self.width_pt - indent_pt - hang_pt);
        let (count, short) = (lines.len(), lines.len() <= 4);
        for (i, line) in lines.into_iter().enumerate() {
            let left = indent_pt + if i > 0 { hang_pt } else { 0.0 };
            let text = Text::new(Point::new(left, size_pt), size_pt, line).in_hand(hand);
            // A short paragraph stays on one page.
            self.line_of_paragraph(i, size_pt, vec![Ink::Text(text)], short && i + 1 < count);
        }
    }

    /// Adds one line of a paragraph, by its number from 0, in letters of this size.
    fn line_of_paragraph(&mut self, number: usize, size_pt: f64, inks: Vec<Ink>, holds_next: bool) {
        self.rows.push(Row {
            height_pt: size_pt * LEADING,
            inks,
            holds_next,
            role: Role::Paragraph,
            continues: number > 0,
            ..Row::default()
        });
    }

    /// Takes what follows the last whole sentence off the rows from here on, so that a text that is cut does not end
    /// within a sentence; returns whether there is one.
    fn ends_with_a_sentence(&mut self, from: usize) -> bool {
        let words = |row: &Row| match row.inks.first() {
            Some(Ink::Text(text)) => text.words.clone(),
            _ => String::new(),
        };
        // A period before a capital letter, or at the end of a line.
        let end = |words: &str| {
            let before_next = words.match_indices(". ").map(|(at, _)| at + 1).filter(|&at| {
                words[at..].trim_start().starts_with(|letter: char| letter.is_uppercase())
            });
            let last = words.ends_with('.').then_some(words.len());
            before_next.chain(last).max()
        };
        let rows = from..self.rows.len();
        let found = rows.rev().find_map(|i| Some((i, end(&words(&self.rows[i]))?)));
        let Some((row, at)) = found else { return false };
        self.rows.truncate(row + 1);
        if let Some(last) = self.rows.last_mut() {
            last.holds_next = false;
            if let Some(Ink::Text(text)) = last.inks.first_mut() {
                text.words.truncate(at);
            }
        }
        true
    }

    /// Adds rows with `fill`, cut after `most` rows with an ellipsis; returns whether anything was cut.
    pub(crate) fn at_most(&mut self, most: usize, fill: impl FnOnce(&mut Stack)) -> bool {
        let from = self.rows.len();
        fill(self);
        if self.rows.len() - from <= most {
            return false;
        }
        self.rows.truncate(from + most);
        if self.ends_with_a_sentence(from) {
            return true;
        }
        let Some(last) = self.rows.last_mut() else { return true };
        last.holds_next = false;
        if let Some(Ink::Text(text)) = last.inks.first_mut() {
            let room = self.width_pt - text.at.x_pt;
            let cut = format!("{} …", text.words);
            let fits = fonts::width_pt(text.hand, text.size_pt, &cut) <= room;
            let with_dots = fonts::width_pt(text.hand, text.size_pt, " …");
            text.words = match fits {
                true => cut,
                false => fonts::shortened(text.hand, text.size_pt, &text.words, room - with_dots),
            };
        }
        true
    }

    pub(crate) fn paragraph(&mut self, size_pt: f64, words: &str) {
        self.lines(Typeface::Plain, size_pt, words, 0.0, 0.0);
    }

    pub(crate) fn bold(&mut self, size_pt: f64, words: &str) {
        self.lines(Typeface::Bold, size_pt, words, 0.0, 0.0);
    }

    /// Adds a bold line that screen readers take as a heading.
    pub(crate) fn title(&mut self, size_pt: f64, words: &str) {
        let from = self.rows.len();
        self.bold(size_pt, words);
        for row in &mut self.rows[from..] {
            row.role = Role::Heading(3);
        }
    }

    /// Adds an indented paragraph with a hanging indent.
    pub(crate) fn item(&mut self, size_pt: f64, words: &str, indent_pt: f64) {
        self.lines(Typeface::Plain, size_pt, words, indent_pt, 8.0);
    }

    /// Adds a numbered paragraph: the number on the left, with all lines indented equally.
    pub(crate) fn numbered(&mut self, size_pt: f64, number: usize, words: &str) {
        const NUMBER_PT: f64 = 18.0;
        let from = self.rows.len();
        self.lines(Typeface::Plain, size_pt, words, NUMBER_PT, 0.0);
        let size_pt = size_pt * self.tight;
        if let Some(first) = self.rows.get_mut(from) {
            let text = Text::new(Point::new(0.0, size_pt), size_pt, format!("{number}."));
            first.inks.insert(0, Ink::Text(text));
        }
    }

    /// Adds a heading that stays with what follows.
    pub(crate) fn heading(&mut self, words: &str) {
        self.space(7.0);
        let from = self.rows.len();
        self.lines(Typeface::Bold, 9.5, words, 0.0, 0.0);
        self.space(2.0);
        for row in &mut self.rows[from..] {
            row.holds_next = true;
            row.role = Role::Heading(3);
        }
    }

    /// Adds a name on the left with its figure at the right edge.
    pub(crate) fn ledger(&mut self, size_pt: f64, name: &str, figure: &str, hand: Typeface) {
        let (name, figure) = (fonts::shown(name), fonts::shown(figure));
        let (asked_pt, size_pt) = (size_pt, size_pt * self.tight);
        let figure_pt = fonts::width_pt(hand, size_pt, &figure);
        let mut room = self.width_pt - figure_pt - 10.0;
        let is_long = room < self.width_pt * 0.3;
        if is_long {
            room = self.width_pt;
        }
        let lines = fonts::wrapped(hand, size_pt, &name, room - 8.0);
        let last = lines.len().saturating_sub(1);
        for (i, line) in lines.into_iter().enumerate() {
            let left = if i > 0 { 8.0 } else { 0.0 };
            let text = Text::new(Point::new(left, size_pt), size_pt, line).in_hand(hand);
            let mut inks = vec![Ink::Text(text)];
            if i == last && !is_long {
                if let Ink::Text(text) = &inks[0] {
                    let from = left + fonts::width_pt(hand, size_pt, &text.words);
                    inks.extend(leader(from, self.width_pt - figure_pt, size_pt));
                }
                let at = Point::new(self.width_pt, size_pt);
                let text = Text::new(at, size_pt, figure.clone()).in_hand(hand);
                inks.push(Ink::Text(text.anchored(Anchor::End)));
            }
            self.line_of_paragraph(i, size_pt, inks, i != last || is_long);
        }
        if is_long {
            self.lines(hand, asked_pt, &figure, 8.0, 8.0);
        }
    }

    /// Like [`Stack::ledger`], with the name cut after `most` lines; returns whether it was cut.
    pub(crate) fn ledger_at_most(
        &mut self,
        size_pt: f64,
        name: &str,
        figure: &str,
        hand: Typeface,
        most: usize,
    ) -> bool {
        let (asked_pt, size_pt) = (size_pt, size_pt * self.tight);
        let room = self.width_pt - fonts::width_pt(hand, size_pt, &fonts::shown(figure)) - 18.0;
        let lines = fonts::wrapped(hand, size_pt, &fonts::shown(name), room.max(40.0));
        if lines.len() <= most {
            self.ledger(asked_pt, name, figure, hand);
            return false;
        }
        let dots = fonts::width_pt(hand, size_pt, "…");
        let mut kept = lines[..most].join(" ");
        while fonts::wrapped(hand, size_pt, &kept, (room - dots).max(40.0)).len() > most
            && kept.pop().is_some()
        {}
        self.ledger(asked_pt, &format!("{}…", kept.trim_end()), figure, hand);
        true
    }

    /// Adds lines to fill in, side by side: from where to where, as shares of the width, each with a word below it.
    pub(crate) fn fields(&mut self, height_pt: f64, fields: &[(f64, f64, &str)]) {
        let mut row = Row { height_pt, role: Role::Paragraph, ..Row::default() };
        let line_pt = height_pt - 14.0;
        for &(from, to, words) in fields {
            let (left, right) = (from * self.width_pt, to * self.width_pt);
            let [from, to] = [left, right].map(|x_pt| Point::new(x_pt, line_pt));
            row.inks.push(Ink::Stroke(Stroke::line(from, to, 0.6)));
            row.inks.push(Ink::Text(Text::new(Point::new(left, line_pt + 9.0), 7.0, words)));
        }
        self.rows.push(row);
    }

    /// Adds a rule over the figures at the right edge, before their sum.
    pub(crate) fn rule_over_figures(&mut self) {
        let from_pt = self.width_pt - 50.0;
        let line = Stroke::line(Point::new(from_pt, 2.0), Point::new(self.width_pt, 2.0), 0.5);
        self.rows.push(Row { height_pt: 4.0, inks: vec![Ink::Stroke(line)], ..Row::default() });
    }

    /// Adds a table. Its head is repeated on every page it continues on.
    pub(crate) fn table(&mut self, size_pt: f64, columns: &[Column<'_>], rows: &[Vec<String>]) {
        let rows: Vec<Line> = rows.iter().cloned().map(Line::Plain).collect();
        self.table_of(size_pt, columns, &rows);
    }

    /// Adds a table with several kinds of rows.
    pub(crate) fn table_of(&mut self, size_pt: f64, columns: &[Column<'_>], rows: &[Line]) {
        let widths = self.widths(columns);
        let (asked_pt, size_pt) = (size_pt, size_pt * self.tight);
        let heads: Vec<String> = columns.iter().map(|column| column.head.to_owned()).collect();
        let (mut head, cells) = self.table_row(size_pt, columns, &widths, &heads, Typeface::Bold);
        head.role = Role::Head(cells);
        let line = Point::new(0.0, head.height_pt + 1.0);
        head.inks.push(Ink::Stroke(Stroke::line(line, Point::new(self.width_pt, line.y_pt), 0.5)));
        head.height_pt += 3.0;
        head.holds_next = true;
        let number = self.heads.len();
        self.heads.push(head.clone());
        self.rows.push(head);
        // A short table stays on one page, and so do the rows under one name.
        let is_short = rows.len() <= 8;
        let together = held_together(rows);
        for (i, line) in rows.iter().enumerate() {
            let from = self.rows.len();
            match line {
                Line::Plain(cells) | Line::Bold(cells) => {
                    let is_bold = matches!(line, Line::Bold(_));
                    let hand = if is_bold { Typeface::Bold } else { Typeface::Plain };
                    let (row, cells) = self.table_row(size_pt, columns, &widths, cells, hand);
                    self.rows.push(Row { role: Role::Cells(cells), ..row });
                }
                Line::Over(name) => {
                    self.space(2.5);
                    self.bold(asked_pt + 0.3, name);
                }
                Line::Note(text) => self.item(asked_pt - 0.7, text, 6.0),
            }
            let holds =
                matches!(line, Line::Over(_)) || is_short && i + 1 < rows.len() || together[i];
            for row in &mut self.rows[from..] {
                row.head = Some(number);
                row.holds_next |= holds;
                if row.role == Role::Paragraph {
                    row.role = Role::Cells(vec![row.inks.len()]);
                }
            }
        }
    }

    fn widths(&self, columns: &[Column<'_>]) -> Vec<f64> {
        let given: f64 = columns.iter().map(|column| column.width_pt).sum();
        let open = columns.iter().filter(|column| column.width_pt == 0.0).count();
        let share =
            (self.width_pt - given).max(40.0) / f64::from(u32::try_from(open.max(1)).unwrap_or(1));
        let width =
            |column: &Column<'_>| if column.width_pt == 0.0 { share } else { column.width_pt };
        columns.iter().map(width).collect()
    }

    fn table_row(
        &self,
        size_pt: f64,
        columns: &[Column<'_>],
        widths: &[f64],
        cells: &[String],
        hand: Typeface,
    ) -> (Row, Vec<usize>) {
        let mut row = Row::default();
        let mut inks_of_cells = Vec::with_capacity(cells.len());
        let mut left = 0.0;
        for ((column, width), cell) in columns.iter().zip(widths).zip(cells) {
            let lines: Vec<String> = cell
                .split('\n')
                .map(fonts::shown)
                .flat_map(|part| fonts::wrapped(hand, size_pt, &part, width - 6.0))
                .collect();
            let mut y_pt = size_pt;
            inks_of_cells.push(lines.len());
            for line in lines {
                let (x_pt, anchor) = if column.is_figures {
                    (left + width, Anchor::End)
                } else {
                    (left, Anchor::Start)
                };
                let text = Text::new(Point::new(x_pt, y_pt), size_pt, line).in_hand(hand);
                row.inks.push(Ink::Text(text.anchored(anchor)));
                y_pt += size_pt * LEADING;
            }
            row.height_pt = row.height_pt.max(y_pt - size_pt + 1.0);
            left += width;
        }
        (row, inks_of_cells)
    }
}

/// Which rows of a table stay with the next one, because both are under the same name and few are.
fn held_together(rows: &[Line]) -> Vec<bool> {
    const MOST: usize = 10;
    let mut held = vec![false; rows.len()];
    let mut from = 0;
    for to in 1..=rows.len() {
        let is_end = rows.get(to).is_none_or(|line| matches!(line, Line::Over(_)));
        if !is_end {
            continue;
        }
        if matches!(rows[from], Line::Over(_)) && to - from <= MOST {
            held[from..to - 1].fill(true);
        }
        from = to;
    }
    held
}

/// Dots that lead from a name to its figure at the right edge, so that the eye, and a program that extracts the text of
/// the page, keep the two on one line.
fn leader(from_pt: f64, to_pt: f64, size_pt: f64) -> Option<Ink> {
    const BETWEEN_PT: f64 = 1.5;
    const DOTS: &str = " .";
    let wide = fonts::width_pt(Typeface::Plain, size_pt, DOTS);
    let count = ((to_pt - from_pt - 2.0 * BETWEEN_PT) / wide).floor().clamp(0.0, 200.0);
    let dots: String = (0..200_u32).take_while(|i| f64::from(*i) < count).map(|_| DOTS).collect();
    let middle = Point::new((from_pt + to_pt) / 2.0, size_pt);
    let text = Text::new(middle, size_pt, dots.trim_start()).anchored(Anchor::Middle);
    (count >= 2.0).then_some(Ink::Text(text))
}

/// The pages being filled.
#[derive(Clone)]
pub(crate) struct Flow {
    paper: Paper,
    place: Vec<String>,
    numbers: String,
    sha256: String,
    fingerprint: String,
    pub(crate) pages: Vec<Page>,
    section: String,
    description: String,
    y_pt: f64,
    apart: bool,
    /// The number of the page that the other figures begin on.
    others_page: usize,
    /// Each further level with the number of the page it is drawn on.
    levels_pages: Vec<(usize, usize)>,
    /// The size of letters where they may be smaller, relative to the usual size.
    tight: f64,
    /// How much of the last page before the supplement is filled, as a share.
    filled: Option<f64>,
}

impl Flow {
    pub(crate) fn new(
        paper: Paper,
        place: &str,
        numbers: &str,
        sha256: &str,
        fingerprint: &str,
    ) -> Flow {
        let (width, _) = paper.size_pt();
        let mut place = fonts::wrapped(
            Typeface::Bold,
            9.5,
            &fonts::shown(place),
            width - 2.0 * EDGE_PT - 160.0,
        );
        if place.len() > 2 {
            place.truncate(2);
            place[1].push('…');
        }
        let numbers = fonts::shown(numbers);
        let numbers = fonts::shortened(Typeface::Plain, 8.0, &numbers, width - 2.0 * EDGE_PT);
        Flow {
            paper,
            place,
            numbers,
            sha256: sha256.to_owned(),
            fingerprint: fingerprint.to_owned(),
            pages: Vec::new(),
            section: String::new(),
            description: String::new(),
            y_pt: 0.0,
            apart: false,
            others_page: 0,
            levels_pages: Vec::new(),
            tight: 1.0,
            filled: None,
        }
    }

    /// Records that a further level is drawn on the current page.
    pub(crate) fn has_level(&mut self, level: usize) {
        self.levels_pages.push((level, self.pages.len()));
    }

    /// Records that the section on the other figures begins on the current page.
    pub(crate) fn others_begin(&mut self) {
        self.others_page = self.pages.len();
    }

    pub(crate) fn width_pt(&self) -> f64 {
        self.paper.size_pt().0 - 2.0 * EDGE_PT
    }

    /// Begins a section on a new page. `description` begins its text for screen readers.
    pub(crate) fn begin(&mut self, section: &str, description: &str) {
        self.section = fonts::shown(section);
        // The house is named first, so that a reader who cannot see the page knows what it is about.
        let place = self.place.join(" ");
        let dot = if place.is_empty() { "" } else { ": " };
        self.description = format!("{place}{dot}{}", heard(&fonts::shown(description)));
        let title = self.section.clone();
        self.turn(title, Role::Heading(2));
    }

    /// Begins the next part of a section that has several like ones, or the section with its first: below a line if at
    /// least `least_pt` is left, else on a new page. Only the first has the section's heading.
    pub(crate) fn next_of(&mut self, section: &str, description: &str, least_pt: f64) {
        if self.section != fonts::shown(section) {
            return self.go_on(section, description, least_pt);
        }
        if self.room_pt() < least_pt + LINE_PT + 8.0 {
            let place = self.place.join(" ");
            let dot = if place.is_empty() { "" } else { ": " };
            let heard = heard(&fonts::shown(description));
            self.description = format!("{place}{dot}{}, continued. {heard}", self.section);
            return self.turn(format!("{}, continued", self.section), Role::Furniture);
        }
        self.tell(description);
        self.line();
        self.y_pt += LINE_PT;
    }

    /// Draws a line across the page between two sections.
    fn line(&mut self) {
        let (y_pt, right) = (self.y_pt + LINE_PT, self.paper.size_pt().0 - EDGE_PT);
        if let Some(page) = self.pages.last_mut() {
            page.begin(Role::Furniture, false);
            page.draw(Stroke::line(Point::new(EDGE_PT, y_pt), Point::new(right, y_pt), 0.8));
        }
    }

    /// Begins a section on the same page, below a line, if at least `least_pt` is left; else on a new page.
    pub(crate) fn go_on(&mut self, section: &str, description: &str, least_pt: f64) {
        const BETWEEN_PT: f64 = 16.0;
        if self.pages.is_empty() || self.apart || self.room_pt() < least_pt + BETWEEN_PT + 16.0 {
            return self.begin(section, description);
        }
        self.section = fonts::shown(section);
        let heard = heard(&fonts::shown(description));
        let y_pt = self.y_pt + LINE_PT;
        let title = self.section.clone();
        let width_of = |line: &String| fonts::width_pt(Typeface::Bold, TITLE_PT, line);
        let place_pt = self.place.iter().map(width_of).fold(0.0, f64::max);
        let room = self.width_pt() - place_pt - BESIDE_TITLE_PT;
        self.line();
        let Some(page) = self.pages.last_mut() else { return };
        let before = page.title.clone();
        page.title = format!("{before}; {title}");
        name_both(page, &before, room);
        page.description = format!("{} {title}. {heard}", page.description);
        let text = Text::new(Point::new(EDGE_PT, y_pt + 14.0), 11.0, title.clone());
        page.begin(Role::Heading(2), false);
        page.write(text.in_hand(Typeface::Bold));
        let place = self.place.join(" ");
        let dot = if place.is_empty() { "" } else { ": " };
        self.description = format!("{place}{dot}{title}, continued. {heard}");
        self.y_pt = y_pt + BETWEEN_PT + 4.0;
    }

    /// Adds to the screen reader's text of the page that is being filled.
    pub(crate) fn tell(&mut self, text: &str) {
        if let Some(page) = self.pages.last_mut() {
            page.description = format!("{} {}", page.description, heard(&fonts::shown(text)));
        }
    }

    /// Draws a box for the exhibit number around the title of the page.
    pub(crate) fn box_for_a_number(&mut self) {
        let right = self.paper.size_pt().0 - EDGE_PT;
        let Some(page) = self.pages.last_mut() else { return };
        let (left, top, bottom) = (right - 118.0, 29.0, 52.0);
        let corners = [
            Point::new(left, top),
            Point::new(right, top),
            Point::new(right, bottom),
            Point::new(left, bottom),
        ];
        // The title goes in the box, on the left.
        let title = page.inks.iter_mut().find_map(|ink| match ink {
            Ink::Text(text) if text.anchor == Anchor::End => Some(text),
            _ => None,
        });
        if let Some(title) = title {
            title.anchor = Anchor::Start;
            title.at = Point::new(left + 6.0, 44.0);
        }
        let mut frame = Stroke::along(&corners, 0.8);
        frame.runs.push(Run::Close);
        page.begin(Role::Furniture, false);
        page.draw(frame);
    }

    /// From here on, sets letters and spaces smaller where that is allowed.
    pub(crate) fn tighten(&mut self, tight: f64) {
        self.tight = tight;
    }

    /// How much smaller letters are now.
    pub(crate) fn tight(&self) -> f64 {
        self.tight
    }

    /// A stack as wide as the page.
    pub(crate) fn stack(&self) -> Stack {
        self.stack_of(self.width_pt())
    }

    /// A narrower stack.
    pub(crate) fn stack_of(&self, width_pt: f64) -> Stack {
        Stack { tight: self.tight, ..Stack::new(width_pt) }
    }

    /// Numbers the pages from here on separately, as a supplement.
    pub(crate) fn apart(&mut self) {
        self.filled = Some(self.filled_now());
        self.apart = true;
    }

    /// How much of the page is filled, as a share.
    pub(crate) fn filled_now(&self) -> f64 {
        ((self.y_pt - self.top_pt()) / self.whole_page_pt()).clamp(0.0, 1.0)
    }

    /// How much of the last page is filled: of the one before the supplement, and of the supplement's own.
    pub(crate) fn last_filled(&self) -> (f64, f64) {
        match self.filled {
            Some(filled) => (filled, self.filled_now()),
            None => (self.filled_now(), 1.0),
        }
    }

    /// Begins a page with this title, which is read aloud where a section begins.
    fn turn(&mut self, title: String, role: Role) {
        let (width_pt, height_pt) = self.paper.size_pt();
        let mut page = Page {
            width_pt,
            height_pt,
            title: title.clone(),
            description: self.description.clone(),
            inks: Vec::new(),
            passages: Vec::new(),
            scale_pt_per_ft: None,
            inset_scales_pt_per_ft: Vec::new(),
            apart: self.apart,
            number: String::new(),
            house: self.place.join(" "),
        };
        let right = width_pt - EDGE_PT;
        let mut y_pt = 44.0;
        let room = title_room_pt(!self.place.is_empty());
        let name = fonts::shortened(Typeface::Bold, TITLE_PT, &title, room);
        let title = Text::new(Point::new(right, y_pt), TITLE_PT, name).in_hand(Typeface::Bold);
        // The house is named only once for those who hear the pages.
        let is_first = self.pages.is_empty();
        let once = |role: Role| if is_first { role } else { Role::Furniture };
        for (i, line) in self.place.iter().enumerate() {
            page.begin(once(Role::Heading(1)), i > 0);
            page.write(
                Text::new(Point::new(EDGE_PT, y_pt), 9.5, line.clone()).in_hand(Typeface::Bold),
            );
            y_pt += 12.0;
        }
        if !self.numbers.is_empty() {
            page.begin(once(Role::Paragraph), false);
            page.write(Text::new(Point::new(EDGE_PT, y_pt), 8.0, self.numbers.clone()));
        }
        page.begin(role, false);
        page.write(title.anchored(Anchor::End));
        page.begin(Role::Furniture, false);
        y_pt = self.top_pt() - 8.0;
        page.draw(Stroke::line(Point::new(EDGE_PT, y_pt), Point::new(right, y_pt), 0.8));
        self.pages.push(page);
        self.y_pt = self.top_pt();
    }

    /// Where the first row of a page begins, below its head.
    fn top_pt(&self) -> f64 {
        let lines = f64::from(u32::try_from(self.place.len()).unwrap_or(0)) * 12.0;
        let numbers = if self.numbers.is_empty() { 0.0 } else { 10.0 };
        (44.0 + lines + numbers).max(56.0) + 4.0
    }

    /// Where the next row begins.
    pub(crate) fn y_pt(&self) -> f64 {
        self.y_pt
    }

    /// The height available on a new page.
    pub(crate) fn whole_page_pt(&self) -> f64 {
        self.paper.size_pt().1 - FOOT_PT - self.top_pt()
    }

    /// The height left on the page.
    pub(crate) fn room_pt(&self) -> f64 {
        self.paper.size_pt().1 - FOOT_PT - self.y_pt
    }

    /// Whether a height fits on the page, allowing for rounding errors.
    fn fits(&self, height_pt: f64) -> bool {
        height_pt <= self.room_pt() + 0.01
    }

    pub(crate) fn down(&mut self, height_pt: f64) {
        self.y_pt += height_pt;
    }

    /// Continues on a new page of the same section if less than this height is left.
    pub(crate) fn need(&mut self, height_pt: f64) {
        if !self.fits(height_pt) {
            self.turn(format!("{}, continued", self.section), Role::Furniture);
        }
    }

    /// The number of passages on the page so far.
    pub(crate) fn passage_count(&self) -> usize {
        self.pages.last().map_or(0, Page::passage_count)
    }

    /// Puts the passages of the page from `from` on in the order in which they are to be read.
    pub(crate) fn read_in(&mut self, from: usize, order: &[Range<usize>]) {
        if let Some(page) = self.pages.last_mut() {
            page.read_in(from, order);
        }
    }

    /// Adds finished inks to the page at their own positions.
    pub(crate) fn put(&mut self, inks: Vec<Ink>, role: Role) {
        if let Some(page) = self.pages.last_mut() {
            page.begin(role, false);
            page.inks.extend(inks);
        }
    }

    /// Adds a drawing at its own position, with its description for screen readers.
    pub(crate) fn put_drawing(&mut self, inks: Vec<Ink>, scale_pt_per_ft: f64, told: &str) {
        self.put(inks, Role::Figure(heard(&fonts::shown(told))));
        if let Some(page) = self.pages.last_mut() {
            page.scale_pt_per_ft.get_or_insert(scale_pt_per_ft);
        }
    }

    /// Records the scales of insets on the page.
    pub(crate) fn put_inset_scales(&mut self, pt_per_ft: Vec<f64>) {
        if let Some(page) = self.pages.last_mut() {
            page.inset_scales_pt_per_ft.extend(pt_per_ft);
        }
    }

    /// Places the rows of a stack down the page, over as many pages as needed.
    pub(crate) fn pour(&mut self, stack: &Stack) {
        for (i, row) in stack.rows.iter().enumerate() {
            let held: f64 = stack.rows[i..]
                .windows(2)
                .take_while(|pair| pair[0].holds_next)
                .take(14)
                .map(|pair| pair[1].height_pt)
                .sum();
            if !self.fits(row.height_pt + held) && !self.is_fresh() {
                self.need(f64::MAX);
                if let Some(head) = row.head.and_then(|head| stack.heads.get(head)) {
                    let repeated = Row { role: Role::Furniture, ..head.clone() };
                    self.lay(&repeated, EDGE_PT);
                }
            }
            self.lay(row, EDGE_PT);
        }
    }

    /// Whether nothing has been placed on the page yet.
    pub(crate) fn is_fresh(&self) -> bool {
        self.y_pt <= 90.0
    }

    fn lay(&mut self, row: &Row, left_pt: f64) {
        let inks = moved(&row.inks, left_pt, self.y_pt);
        if let Some(page) = self.pages.last_mut().filter(|_| !inks.is_empty()) {
            page.begin(row.role.clone(), row.continues);
            page.inks.extend(inks);
        }
        self.y_pt += row.height_pt;
    }

    /// Places two stacks side by side if both fit on the page, else one after the other.
    pub(crate) fn beside(&mut self, left: &Stack, right: &Stack, right_from_pt: f64) {
        let height = left.height_pt().max(right.height_pt());
        if !self.fits(height) {
            self.pour(left);
            self.need(right.height_pt().min(200.0));
            return self.pour(right);
        }
        let top = self.y_pt;
        for row in &left.rows {
            self.lay(row, EDGE_PT);
        }
        // They end together, so that what is as high as the left one is beside its rows.
        self.y_pt = top + height - right.height_pt();
        for row in &right.rows {
            self.lay(row, EDGE_PT + right_from_pt);
        }
        self.y_pt = top + height;
    }

    /// The finished pages with their feet.
    pub(crate) fn finish(mut self) -> Vec<Page> {
        let all = self.pages.len();
        let handed_on = self.pages.iter().filter(|page| !page.apart).count();
        let levels = self.levels_pages.iter();
        let levels = levels.filter_map(|(level, page)| Some((page_of_level(*level)?, *page)));
        let mut to_come: Vec<(String, usize)> = levels.collect();
        to_come.push((OTHERS_PAGE.to_owned(), self.others_page));
        for (i, page) in self.pages.iter_mut().enumerate() {
            for ink in page.inks.iter_mut().filter(|_| i == 0) {
                let Ink::Text(text) = ink else { continue };
                for (stands_for, page) in &to_come {
                    if text.words.contains(stands_for.as_str()) {
                        text.words = text.words.replace(stands_for.as_str(), &page.to_string());
                    }
                }
            }
            page.number = if page.apart {
                format!("supplement, page {} of {}", i + 1 - handed_on, all - handed_on)
            } else {
                format!("page {} of {handed_on}", i + 1)
            };
            let right = page.width_pt - EDGE_PT;
            page.begin(Role::Furniture, false);
            let top = page.height_pt - FOOT_PT + 22.0;
            page.draw(Stroke::line(
                Point::new(EDGE_PT, top - 10.0),
                Point::new(right, top - 10.0),
                0.5,
            ));
            let say = |y_pt: f64, words: &str| Text::new(Point::new(EDGE_PT, y_pt), 6.8, words);
            // A listener hears the foot once, on the first page.
            if i == 0 {
                page.begin(Role::Paragraph, false);
            }
            page.write(say(top, DISCLAIMER));
            let number =
                Text::new(Point::new(right, top), 8.0, page.number.clone()).in_hand(Typeface::Bold);
            page.write(number.anchored(Anchor::End));
            page.write(say(top + 9.0, &format!("Sides file sha256 {}", self.sha256)));
            let maker =
                format!("fingerprint {}, fairfoot {}", self.fingerprint, env!("CARGO_PKG_VERSION"));
            let maker = Text::new(Point::new(right, top + 9.0), 6.8, maker);
            page.write(maker.anchored(Anchor::End));
        }
        self.pages
    }
}

/// The letter size of a page's title, in points.
const TITLE_PT: f64 = 9.5;

/// The gap between the house's place and a page's title, in points.
const BESIDE_TITLE_PT: f64 = 24.0;
/// The space above and below a line between two sections, in points.
const LINE_PT: f64 = 8.0;

/// The room for a page's title, beside the house's place or alone, in points.
const fn title_room_pt(has_place: bool) -> f64 {
    if has_place { 152.0 } else { 400.0 }
}

/// Names each section of a page in its title at the top right, if there is room for that.
fn name_both(page: &mut Page, before: &str, room: f64) {
    if fonts::width_pt(Typeface::Bold, TITLE_PT, &page.title) > room {
        return;
    }
    let title = page.inks.iter_mut().find_map(|ink| match ink {
        Ink::Text(text) if text.anchor == Anchor::End && text.words == before => Some(text),
        _ => None,
    });
    if let Some(title) = title {
        title.words = page.title.clone();
    }
}

/// Inks moved to the right and down.
pub(crate) fn moved(inks: &[Ink], right_pt: f64, down_pt: f64) -> Vec<Ink> {
    let spot = |at: Point| Point::new(at.x_pt + right_pt, at.y_pt + down_pt);
    let run = |run: &Run| match *run {
        Run::Move(at) => Run::Move(spot(at)),
        Run::Line(at) => Run::Line(spot(at)),
        Run::Arc { to, radius_pt, is_large, clockwise } => {
            Run::Arc { to: spot(to), radius_pt, is_large, clockwise }
        }
        Run::Close => Run::Close,
    };
    let ink = |ink: &Ink| match ink {
        Ink::Text(text) => Ink::Text(Text { at: spot(text.at), ..text.clone() }),
        Ink::Stroke(stroke) => {
            Ink::Stroke(Stroke { runs: stroke.runs.iter().map(run).collect(), ..stroke.clone() })
        }
        Ink::Photograph(photograph) => {
            Ink::Photograph(Photograph { at: spot(photograph.at), ..photograph.clone() })
        }
    };
    inks.iter().map(ink).collect()
}
