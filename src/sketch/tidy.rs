//! Writes a sides file in its canonical form.

use crate::geometry::compass::Direction;
use std::fmt::Write as _;

use unicode_width::UnicodeWidthStr;

use crate::sketch::statement::*;
use crate::sketch::tree::{Line, Sketch};

/// The whole file with canonical spelling and indentation. Comments are kept; blank lines are never doubled.
pub(super) fn tidied(sketch: &Sketch) -> String {
    let mut printer = Printer::default();
    for (i, line) in sketch.lines.iter().enumerate() {
        printer.line(&sketch.lines, i, line);
    }
    printer.out
}

#[derive(Default)]
struct Printer {
    out: String,
    /// The indentation of sides, in steps.
    walked_depth: usize,
    /// The indentation of the last statement.
    depth: usize,
    blank_waits: bool,
    widths: Widths,
    /// The line up to which the widths apply.
    widths_end: usize,
}

impl Printer {
    fn line(&mut self, lines: &[Line], i: usize, line: &Line) {
        let Some(text) = self.text(lines, i, line) else {
            self.blank_waits = !self.out.is_empty();
            return;
        };
        if std::mem::take(&mut self.blank_waits) {
            self.out.push('\n');
        }
        self.out.push_str(text.trim_end());
        self.out.push('\n');
    }

    fn text(&mut self, lines: &[Line], i: usize, line: &Line) -> Option<String> {
        let Some(statement) = &line.statement else {
            let comment = line.comment.as_ref()?;
            let depth = self.depth_of_next(lines, i);
            return Some(format!("{:width$}{comment}", "", width = 2 * depth));
        };
        match statement {
            Statement::Space(_) => self.walked_depth = 2,
            Statement::Lot(_) | Statement::Outline(_) => self.walked_depth = 1,
            _ => {}
        }
        self.depth = self.depth_of(statement);
        let is_walked = depth(statement) == WALKED;
        if !is_walked {
            self.widths_end = 0;
        } else if i >= self.widths_end {
            (self.widths, self.widths_end) = Widths::of(&lines[i..], i);
        }
        let widths = self.widths;
        let mut text =
            format!("{:width$}{}", "", written(statement, widths), width = 2 * self.depth);
        if let Some(comment) = &line.comment {
            let _ = write!(text, "  {comment}");
        }
        Some(text)
    }

    /// The indentation of a comment on its own line, which is that of the statement after it.
    fn depth_of_next(&self, lines: &[Line], i: usize) -> usize {
        let next = lines[i..].iter().find_map(|line| line.statement.as_ref());
        next.map_or(0, |statement| self.depth_of(statement))
    }

    /// The indentation of a statement. Sides are indented one level deeper than the space, lot or outline they belong
    /// to.
    fn depth_of(&self, statement: &Statement) -> usize {
        match depth(statement) {
            WALKED => self.walked_depth,
            depth => depth,
        }
    }
}

/// The indentation of sides and other statements of a walk within a space.
const WALKED: usize = 2;

fn depth(statement: &Statement) -> usize {
    match statement {
        Statement::Space(_) => 1,
        Statement::Side(..)
        | Statement::Bay(..)
        | Statement::Corner(_)
        | Statement::Overall(..)
        | Statement::Tie(..) => WALKED,
        _ => 0,
    }
}

/// The column widths of a run of sides.
#[derive(Clone, Copy, Default)]
struct Widths {
    direction: usize,
    length: usize,
}

impl Widths {
    /// The widths for the sides that `lines` begins with, and the number of the line after them.
    fn of(lines: &[Line], first: usize) -> (Widths, usize) {
        let is_walked = |line: &Line| line.statement.as_ref().is_none_or(|s| depth(s) == WALKED);
        let count = lines.iter().position(|line| !is_walked(line)).unwrap_or(lines.len());
        let mut widths = Widths::default();
        for statement in lines[..count].iter().filter_map(|line| line.statement.as_ref()) {
            if let Statement::Side(
                run @ (Run::Straight(direction, _) | Run::ByClosing(direction)),
                words,
            ) = statement
            {
                widths.direction = widths.direction.max(direction.word().len());
                if *words != SideWords::default() {
                    widths.length = widths.length.max(run_length(run).width());
                }
            }
        }
        (widths, first + count)
    }
}

fn run_length(run: &Run) -> String {
    match run {
        Run::Straight(_, length) => length.to_string(),
        _ => "by closing".to_owned(),
    }
}

fn text(text: &str) -> String {
    format!("\"{text}\"")
}

/// One statement as a line.
fn written(statement: &Statement, widths: Widths) -> String {
    match statement {
        Statement::Head(head) => head_written(head),
        Statement::Figure(figure) => figure_written(figure),
        Statement::Missing(missing) => {
            let (kind, name) = (missing.kind.word(), text(&missing.name.text));
            format!("missing {kind} {name} recorded {}", missing.recorded)
        }
        Statement::Level(level) => {
            let below = if level.below_grade { " below grade" } else { "" };
            let beside = if level.beside { " beside" } else { "" };
            format!("level {}{below}{beside}", text(&level.name.text))
        }
        Statement::Space(space) => space_written(space),
        Statement::Lot(lot) => {
            let recorded = lot.recorded.map(|area| format!(" recorded {area}")).unwrap_or_default();
            format!("lot {}{recorded}", text(&lot.name.text))
        }
        Statement::Outline(outline) => {
            let OutlineStatement { drawn, name, of } = &**outline;
            let of = of.as_ref().map(|of| format!(" of {}", text(&of.text))).unwrap_or_default();
            format!("{} outline {}{of}", drawn.word(), text(&name.text))
        }
        Statement::Valued(valued) => valued.written(),
        Statement::Side(run, words) => side_written(run, words, widths),
        Statement::Bay(bay, words) => bay_written(bay) + &side_words_written(words),
        Statement::Corner(name) => format!("corner {}", text(&name.text)),
        Statement::Overall(direction, length) => format!("overall {} {length}", direction.word()),
        Statement::Tie(from, to, length) => {
            format!("tie corner {} to corner {} {length}", corner(from), corner(to))
        }
    }
}

fn corner(corner: &CornerRef) -> String {
    match corner {
        CornerRef::Number(number) => number.to_string(),
        CornerRef::Name(name) => text(name),
    }
}

fn head_written(head: &Head) -> String {
    let word = head.word();
    let rest = match head {
        Head::Line(_, line) => text(line),
        Head::TaxYear(year) => year.to_string(),
        Head::Measured(measured) => measured_written(measured),
        Head::Tolerance(length) | Head::Wall(length) => length.to_string(),
        Head::Interior(seen) => if *seen { "seen" } else { "not seen" }.to_owned(),
        Head::Units(unit) => unit.word().to_owned(),
        Head::Faces(face) => face.word().to_owned(),
        Head::Front(direction) => direction.word().to_owned(),
        Head::TrueNorth(bearing) => bearing_written(bearing),
        Head::Veneer(thickness) => thickness_written(thickness),
    };
    format!("{word} {rest}")
}

fn measured_written(measured: &Measured) -> String {
    let mut line = measured.date.to_string();
    for (word, who) in [("by", &measured.by), ("with", &measured.with)] {
        if let Some(who) = who {
            let _ = write!(line, " {word} {}", text(who));
        }
    }
    line
}

pub(crate) fn bearing_written(bearing: &Bearing) -> String {
    let letter = |direction: Direction| direction.word()[..1].to_uppercase();
    let mut line = format!("{} {}°", letter(bearing.from), bearing.degrees);
    if let Some(minutes) = bearing.minutes {
        let _ = write!(line, " {minutes}'");
    }
    if let Some(seconds) = bearing.seconds {
        let _ = write!(line, " {seconds}\"");
    }
    format!("{line} {}", letter(bearing.toward))
}

fn thickness_written(thickness: &Thickness) -> String {
    match thickness {
        Thickness::None => "none".to_owned(),
        Thickness::Of(length) => length.to_string(),
    }
}

fn figure_written(figure: &FigureStatement) -> String {
    let mut line = match &figure.kind {
        FigureKind::Record => "record".to_owned(),
        FigureKind::Listing => "listing".to_owned(),
        FigureKind::Plan => "plan".to_owned(),
        FigureKind::Other(name) => format!("figure {}", text(&name.text)),
    };
    let _ = write!(line, " {}", figure.area);
    if let Some(face) = figure.basis.face {
        let _ = write!(line, " measured to {}", face.word());
    }
    if let Some(rule) = figure.basis.sides {
        let word = match rule {
            SideRule::Step(step) => step.word(),
            SideRule::Unknown => "unknown",
        };
        let _ = write!(line, " sides {word}");
    }
    if !figure.basis.counting.is_empty() {
        let names: Vec<String> =
            figure.basis.counting.iter().map(|name| text(&name.text)).collect();
        let _ = write!(line, " counting {}", names.join(", "));
    }
    if let Some(title) = &figure.title {
        let _ = write!(line, " {}", text(title));
    }
    line
}

fn space_written(space: &SpaceStatement) -> String {
    let mut line = format!("{} {}", space.kind.word(), text(&space.name.text));
    if let Some(face) = space.face {
        let _ = write!(line, " measured to {}", face.word());
    }
    if let Some(within) = &space.within {
        let _ = write!(line, " within {}", text(&within.text));
    }
    match &space.place {
        Place::Origin => {}
        Place::Start(offsets) => {
            line.push_str(" start");
            for (direction, length) in offsets {
                let _ = write!(line, " {} {length}", direction.word());
            }
        }
        Place::Corner(name) => {
            let _ = write!(line, " from corner {}", text(&name.text));
        }
        Place::CornerOf(name, corner) => {
            let _ = write!(line, " from {} corner {}", text(&name.text), corner.number);
        }
    }
    if space.detached {
        line.push_str(" detached");
    }
    if let Some(under) = &space.under {
        let _ = write!(line, " under {under}");
    }
    if let Some(veneer) = &space.veneer {
        let _ = write!(line, " veneer {}", thickness_written(veneer));
    }
    if let Some(counted) = space.counted {
        line.push_str(if counted { " counted" } else { " not counted" });
    }
    if let Some(recorded) = space.recorded {
        let _ = write!(line, " recorded {recorded}");
    }
    line
}

/// The direction and length of a side as written in the file (`north 28' 4"`), with no words after them and no
/// alignment spaces.
pub(super) fn run_written(run: &Run) -> String {
    side_written(run, &SideWords::default(), Widths::default())
}

fn side_written(run: &Run, words: &SideWords, widths: Widths) -> String {
    let line = match run {
        Run::Straight(direction, _) | Run::ByClosing(direction) => {
            let (word, length) = (direction.word(), run_length(run));
            let wide = if *words == SideWords::default() { 0 } else { widths.length };
            let pad = wide.saturating_sub(length.width());
            format!("{word:direction$} {length}{:pad$}", "", direction = widths.direction)
        }
        Run::Diagonal(first, second) => {
            format!("diagonal {} {} {} {}", first.0.word(), first.1, second.0.word(), second.1)
        }
        Run::Bearing(bearing, length) => format!("bearing {} {length}", bearing_written(bearing)),
        Run::Arc(direction, chord, rise, toward) => {
            format!("arc {} {chord} rise {rise} {}", direction.word(), toward.word())
        }
        Run::Close => "close".to_owned(),
    };
    line + &side_words_written(words)
}

fn bay_written(bay: &Bay) -> String {
    let Bay { direction, width, out, front } = bay;
    let front = match front {
        BayFront::Flat(flat) => format!("flat {flat}"),
        BayFront::Round => "round".to_owned(),
    };
    format!("bay {} {width} out {out} {front}", direction.word())
}

/// The words after a side, each preceded by a space.
fn side_words_written(words: &SideWords) -> String {
    let mut line = String::new();
    let mut said = |word: &str, what: Option<String>| {
        if let Some(what) = what {
            let space = if what.is_empty() { "" } else { " " };
            let _ = write!(line, " {word}{space}{what}");
        }
    };
    said("recorded", words.recorded.map(|length| length.to_string()));
    said("tolerance", words.tolerance.map(|length| length.to_string()));
    said("estimated", words.estimated.then(String::new));
    said(
        "from",
        match words.from {
            TakenFrom::Tape => None,
            TakenFrom::Plan => Some("plan".to_owned()),
            TakenFrom::Record => Some("record".to_owned()),
        },
    );
    said("common", words.common.then(String::new));
    said("veneer", words.veneer.map(|veneer| thickness_written(&veneer)));
    said("wall", words.wall.map(|wall| wall.to_string()));
    said("photo", words.photo.as_deref().map(text));
    said("file", words.photo_file.as_ref().map(|file| text(&file.text)));
    said("note", words.note.as_deref().map(text));
    line
}
