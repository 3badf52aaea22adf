//! The walks of a sides file as rows, and edits of single rows that leave all other text unchanged.
//!
//! A form on a screen shows rows, and the text remains the source: each row names its line, and each edit returns
//! the whole new text. Directions are those of someone who stands in the street and faces the house: [`Way::Back`],
//! [`Way::Right`], [`Way::Front`], [`Way::Left`]. Positions are in feet from the level's origin, with `x` to the
//! right and `y` down toward the street.
//!
//! ```
//! use fairfoot::sketch::rows::{Edit, Way, edited, rows};
//!
//! let text = "front south\nlevel \"Ground\"\n  living \"House\"\n    north 28' # the west wall\n";
//! let walks = rows(text).walks;
//! assert_eq!(walks[0].rows[0].way, Some(Way::Back));
//! assert_eq!(walks[0].gap, "28' toward the street");
//! let (how, shape) = Default::default();
//! let longer = Edit::Side { line: 4, way: Way::Back, length: "30' 6\"".into(), how, shape };
//! assert!(edited(text, &longer).contains("    north 30' 6\" # the west wall"));
//! ```
#![expect(clippy::float_arithmetic, reason = "positions on a screen, which no figure is made from")]

mod edit;

use serde::{Deserialize, Serialize};

use super::Reading;
use super::bay;
use super::statement::SpaceStatement;
use super::statement::{
    Bay, FigureKind, Head, HeadLine, Place, Run, SideWords, Statement, usual_form,
};
use crate::diagnostic::{Source, words};
use crate::geometry::compass::{Axis, Direction};
use crate::units::length::{Form, Length, WrittenLength};
pub use edit::{Edit, edited};

/// A direction as seen from the street.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Way {
    /// Back: away from the street.
    Back,
    /// To the right.
    Right,
    /// Toward the street.
    Front,
    /// To the left.
    Left,
}

impl Way {
    /// Every direction, clockwise from the back.
    pub const ALL: [Way; 4] = [Way::Back, Way::Right, Way::Front, Way::Left];

    /// Converts a compass direction; the street is on the `front` side.
    fn of(direction: Direction, front: Direction) -> Way {
        let turn = (clockwise(direction) + 4 - clockwise(front) + 2) % 4;
        Way::ALL[turn]
    }

    /// The compass direction.
    fn direction(self, front: Direction) -> Direction {
        let turn = Way::ALL.iter().position(|&way| way == self).unwrap_or(0);
        CLOCKWISE[(turn + clockwise(front) + 2) % 4]
    }

    /// Its word, as a sides file takes it too.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Way::Back => "back",
            Way::Right => "right",
            Way::Front => "front",
            Way::Left => "left",
        }
    }

    /// The phrase that follows a length.
    const fn spoken(self) -> &'static str {
        match self {
            Way::Back => "toward the back",
            Way::Right => "to the right",
            Way::Front => "toward the street",
            Way::Left => "to the left",
        }
    }
}

const CLOCKWISE: [Direction; 4] =
    [Direction::North, Direction::East, Direction::South, Direction::West];

fn clockwise(direction: Direction) -> usize {
    CLOCKWISE.iter().position(|&one| one == direction).unwrap_or(0)
}

/// How the length of a row was obtained.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum How {
    /// Taped.
    #[default]
    Measured,
    /// Not measured: it follows from the other walls.
    Closing,
    /// It was estimated.
    About,
}

/// The shape of a side, with the lengths, as typed, that a straight wall does not have.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "lowercase")]
pub enum Shape {
    /// A straight wall.
    #[default]
    Straight,
    /// An angled bay; the length of the row is its width along the wall.
    Bay {
        /// How far it stands out.
        out: String,
        /// The width of its flat front.
        flat: String,
    },
    /// A round bay; the length of the row is its width along the wall.
    Round {
        /// How far it stands out.
        out: String,
    },
    /// A slanted wall; the length of the row is its first leg.
    Slant {
        /// The direction of the second leg.
        to: Way,
        /// The length of the second leg.
        leg: String,
    },
    /// A side that a row can only show, not edit.
    Other,
}

/// A part of what a row draws: a line or an arc up to a position.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Piece {
    /// Its end, in feet.
    pub to: [f64; 2],
    /// For an arc, its radius in feet, and whether it bulges to the right of the walking direction; `None` for a
    /// line.
    pub curve: Option<(f64, bool)>,
}

/// One side as a row.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Row {
    /// Its line in the file, counted from 1.
    pub line: usize,
    /// The number of its first side in walking order, from 1, as a report and the pages show it. The corner where it
    /// begins has the same number.
    pub number: usize,
    /// How many sides it stands for: an angled bay three, any other row one.
    pub sides: usize,
    /// Its direction; `None` for a side that a row can only show: a curved wall, a bearing or `close`.
    pub way: Option<Way>,
    /// Its shape.
    pub shape: Shape,
    /// The side as typed, without the words after it.
    pub typed: String,
    /// The length as typed; empty if it has none.
    pub length: String,
    /// The length of a side by closing, as it follows from the other sides; empty if it does not follow, or was
    /// typed.
    pub found: String,
    /// The length as feet, inches and a fraction of an inch; `None` if it cannot be written that way.
    pub parts: Option<[String; 3]>,
    /// How the length was obtained.
    pub how: How,
    /// The name of its picture file; `None` if it has no picture.
    pub picture: Option<String>,
    /// Whether the line could be read.
    pub is_read: bool,
    /// The start of the side, in feet.
    pub from: [f64; 2],
    /// The end of the side, in feet.
    pub to: [f64; 2],
    /// What is drawn from its start to its end: one line or arc, for an angled bay three lines.
    pub pieces: Vec<Piece>,
}

/// The sides of one space.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Walk {
    /// The line that begins the space, counted from 1.
    pub line: usize,
    /// The word for its kind; `lot` for the land.
    pub kind: &'static str,
    /// Its name.
    pub name: String,
    /// The name of its level; empty for the land.
    pub level: String,
    /// The name of the space it lies in; `None` if it lies in none.
    pub within: Option<String>,
    /// Its start in feet, `x` then `y`.
    pub start: [f64; 2],
    /// The space and the corner (from 1) at which it begins; `None` if it does not begin at a corner.
    pub corner: Option<(String, usize)>,
    /// Its sides.
    pub rows: Vec<Row>,
    /// What is missing to return to the start, in words; empty if nothing is missing.
    pub gap: String,
    /// Whether the walk returns to its start.
    pub is_closed: bool,
    /// Whether it misses its start by so little that no wall is likely to be left: along each axis by two feet, or by a
    /// fiftieth of what was walked.
    pub is_near: bool,
}

/// The fields of a form that come from the lines before the first level.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Heads {
    /// `property`
    pub property: String,
    /// `account`
    pub account: String,
    /// The area after `record`, as typed.
    pub record: String,
    /// The area after `listing`, as typed.
    pub listing: String,
    /// The area after `plan`, as typed.
    pub plan: String,
    /// The thickness after `veneer`, or `none`.
    pub veneer: String,
    /// The unit of numbers without one; empty if the file does not state it.
    pub units: String,
}

/// A sides file as rows.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Rows {
    /// The fields before the first level.
    pub heads: Heads,
    /// The compass words that the file uses for back, right, front, left.
    pub compass: [&'static str; 4],
    /// The names of the levels, in file order.
    pub levels: Vec<String>,
    /// Every walk, in file order.
    pub walks: Vec<Walk>,
    /// The line of each field that has one.
    pub fields: Vec<(&'static str, usize)>,
}

/// The rows of a text. A side that cannot be read becomes a row with `is_read` set to `false`; other unreadable
/// lines are left out.
#[must_use]
pub fn rows(text: &str) -> Rows {
    let source = Source::new("", text);
    let Reading { sketch, .. } = super::read(&source);
    let runs = sketch.lines.iter().filter_map(|line| match &line.statement {
        Some(Statement::Side(run, _)) => Some(run),
        _ => None,
    });
    let mut maker = Maker::new(front_of(&sketch), usual_form(runs));
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    for (i, typed) in text.lines().enumerate() {
        let statement = sketch.lines.get(i).and_then(|line| line.statement.as_ref());
        maker.line(i + 1, typed, statement);
    }
    maker.finish()
}

/// The text with the directions of its rows as seen from the street, line for line; `None` if it does not say where the
/// street is. Errors of it speak of back, right, front and left where they quote what was typed.
#[must_use]
pub fn in_ways(text: &str) -> Option<String> {
    let reading = super::read(&Source::new("", text));
    let front = reading.sketch.heads.front?;
    let rows = rows(text).walks.into_iter().flat_map(|walk| walk.rows);
    let lines: Vec<usize> = rows.filter(|row| row.way.is_some()).map(|row| row.line).collect();
    let seen = |(i, line): (usize, &str)| match lines.contains(&(i + 1)) {
        true => edit::in_ways(line, front),
        false => line.to_owned(),
    };
    Some(text.split_inclusive('\n').enumerate().map(seen).collect())
}

/// The street side, or south (the bottom of the plan) if it is not stated.
fn front_of(sketch: &super::Sketch) -> Direction {
    sketch.heads.front.unwrap_or(Direction::South)
}

/// A position or move on the plan in nanometers: east, then north.
type Spot = (i64, i64);

/// A walk under construction.
struct Open {
    walk: Walk,
    start: Spot,
    /// The move of each row; `None` if it follows from the others.
    moves: Vec<Option<Spot>>,
    /// The direction of each row given by closing.
    follows: Vec<Option<Direction>>,
    /// Named corners, each with the number of sides before it.
    corners: Vec<(String, usize)>,
    curves: Vec<Option<(i64, i64)>>,
    bays: Vec<Option<Bay>>,
    /// Where each side begins, once the walk is finished.
    places: Vec<Spot>,
}

struct Maker {
    front: Direction,
    /// How most sides are written.
    form: Form,
    levels: Vec<String>,
    heads: Heads,
    fields: Vec<(&'static str, usize)>,
    level: String,
    open: Option<Open>,
    done: Vec<Open>,
    /// Whether the sides belong to an outline from a record, a plan or a map.
    is_elsewhere: bool,
}

impl Maker {
    fn new(front: Direction, form: Form) -> Maker {
        Maker {
            front,
            form,
            levels: Vec::new(),
            heads: Heads::default(),
            fields: Vec::new(),
            level: String::new(),
            open: None,
            done: Vec::new(),
            is_elsewhere: false,
        }
    }

    fn line(&mut self, number: usize, typed: &str, statement: Option<&Statement>) {
        if let Some(field) = edit::field_on(typed, statement) {
            self.fields.push((field, number));
        }
        match statement {
            Some(Statement::Level(level)) => {
                self.close();
                self.level.clone_from(&level.name.text);
                self.levels.push(self.level.clone());
            }
            Some(Statement::Space(space)) => self.begin(number, space),
            Some(Statement::Lot(lot)) => {
                let walk = (number, "lot", lot.name.text.clone(), String::new(), None);
                self.begin_at(walk, (0, 0));
            }
            Some(Statement::Outline(_)) => {
                self.close();
                self.is_elsewhere = true;
            }
            Some(Statement::Side(run, words)) => self.side(number, typed, run, words),
            Some(Statement::Bay(bay, words)) => self.bay(number, typed, bay, words),
            Some(Statement::Corner(name)) => {
                if let Some(open) = &mut self.open {
                    open.corners.push((name.text.clone(), open.walk.rows.len()));
                }
            }
            Some(statement) => self.head(typed, statement),
            None => self.unread(number, typed),
        }
    }

    fn head(&mut self, typed: &str, statement: &Statement) {
        let content = edit::content(typed).trim();
        let rest = content.split_once(char::is_whitespace).map_or("", |(_, rest)| rest.trim());
        let field = match statement {
            Statement::Head(head) => match &**head {
                Head::Line(HeadLine::Property, text) => {
                    self.heads.property.clone_from(text);
                    return;
                }
                Head::Line(HeadLine::Account, text) => {
                    self.heads.account.clone_from(text);
                    return;
                }
                Head::Veneer(_) => {
                    self.heads.veneer = rest.to_owned();
                    return;
                }
                Head::Units(unit) => {
                    self.heads.units = unit.word().to_owned();
                    return;
                }
                _ => return,
            },
            Statement::Figure(figure) => match figure.kind {
                FigureKind::Record => &mut self.heads.record,
                FigureKind::Listing => &mut self.heads.listing,
                FigureKind::Plan => &mut self.heads.plan,
                FigureKind::Other(_) => return,
            },
            _ => return,
        };
        edit::number_of(rest).clone_into(field);
    }

    fn begin(&mut self, line: usize, space: &SpaceStatement) {
        let within = space.within.as_ref().map(|name| name.text.clone());
        self.close();
        let start = self.place(&space.place);
        let name = space.name.text.clone();
        let walk = (line, space.kind.word(), name, self.level.clone(), within);
        self.begin_at(walk, start);
        let corner = self.corner(&space.place);
        if let Some(open) = &mut self.open {
            open.walk.corner = corner;
        }
    }

    fn begin_at(
        &mut self,
        (line, kind, name, level, within): (usize, &'static str, String, String, Option<String>),
        start: Spot,
    ) {
        self.close();
        self.is_elsewhere = false;
        let walk = Walk {
            line,
            kind,
            name,
            level,
            within,
            start: self.seen(start),
            corner: None,
            rows: Vec::new(),
            gap: String::new(),
            is_closed: false,
            is_near: false,
        };
        self.open = Some(Open {
            walk,
            start,
            moves: Vec::new(),
            follows: Vec::new(),
            corners: Vec::new(),
            curves: Vec::new(),
            bays: Vec::new(),
            places: Vec::new(),
        });
    }

    /// Where a space begins, as far as earlier walks determine it, in nanometers.
    fn place(&self, place: &Place) -> Spot {
        match place {
            Place::Origin => (0, 0),
            Place::Start(legs) => legs.iter().fold((0, 0), |at, (direction, length)| {
                plus(at, leg(*direction, length.length().nm()))
            }),
            Place::Corner(name) => {
                let named = |open: &Open| {
                    let corner = open.corners.iter().find(|(other, _)| *other == name.text);
                    corner.map(|&(_, after)| open.corner(after))
                };
                self.here().find_map(named).unwrap_or((0, 0))
            }
            Place::CornerOf(name, number) => {
                let space = self.here().find(|open| open.walk.name == name.text);
                let at = number.number.saturating_sub(1);
                space.and_then(|open| open.places.get(at).copied()).unwrap_or((0, 0))
            }
        }
    }

    /// The space and corner (from 1) of a place at a corner.
    fn corner(&self, place: &Place) -> Option<(String, usize)> {
        match place {
            Place::Origin | Place::Start(_) => None,
            Place::CornerOf(name, number) => Some((name.text.clone(), number.number)),
            Place::Corner(name) => self.here().find_map(|open| {
                let (_, after) = open.corners.iter().find(|(other, _)| *other == name.text)?;
                let row = open.walk.rows.get(after % open.walk.rows.len().max(1))?;
                Some((open.walk.name.clone(), row.number))
            }),
        }
    }

    /// The finished walks of this level, last first.
    fn here(&self) -> impl Iterator<Item = &Open> {
        self.done.iter().rev().filter(|open| open.walk.level == self.level)
    }

    fn side(&mut self, line: usize, typed: &str, run: &Run, words: &SideWords) {
        let front = self.front;
        let content = edit::content(typed).trim();
        let typed = edit::side_of(content).to_owned();
        let how = match run {
            Run::ByClosing(_) | Run::Close => How::Closing,
            _ if words.estimated => How::About,
            _ => How::Measured,
        };
        let picture = words.photo_file.as_ref().map(|file| file.text.clone());
        let row = Row { line, typed, how, picture, ..Row::empty() };
        let row = match run {
            Run::Straight(direction, written) => Row {
                way: Some(Way::of(*direction, front)),
                length: edit::length_in(content).to_owned(),
                parts: parts(written.length()),
                ..row
            },
            Run::ByClosing(direction) => Row { way: Some(Way::of(*direction, front)), ..row },
            Run::Diagonal((_, first), _) => self.shaped(row, Some(first.length())),
            _ => Row { shape: Shape::Other, ..row },
        };
        self.put(row, course(run), None);
    }

    /// Adds a bay, which moves along the wall behind it.
    fn bay(&mut self, line: usize, typed: &str, bay: &Bay, words: &SideWords) {
        let typed = edit::side_of(edit::content(typed).trim()).to_owned();
        let how = if words.estimated { How::About } else { How::Measured };
        let picture = words.photo_file.as_ref().map(|file| file.text.clone());
        let row = Row { line, typed, how, picture, ..Row::empty() };
        let width = bay.width.length();
        let row = self.shaped(row, Some(width));
        self.put(row, (Some(leg(bay.direction, width.nm())), None, None), Some(*bay));
    }

    /// Adds a line that could not be read, if it begins like a side.
    fn unread(&mut self, line: usize, typed: &str) {
        let content = edit::content(typed).trim();
        if self.levels.is_empty() && self.open.is_none() {
            return self.unread_head(content);
        }
        let row = Row { line, typed: content.to_owned(), is_read: false, ..Row::empty() };
        let first = content.split(|c: char| !c.is_alphabetic()).next().unwrap_or_default();
        let row = match way_of(first, self.front) {
            Some(way) => Row { way: Some(way), length: edit::length_in(content).to_owned(), ..row },
            None => self.shaped(row, None),
        };
        if row.way.is_some() && !self.is_elsewhere {
            self.put(row, (Some((0, 0)), None, None), None);
        }
    }

    /// Keeps what was typed into a field, even if it cannot be read.
    fn unread_head(&mut self, content: &str) {
        let Some((word, value)) = content.split_once(char::is_whitespace) else { return };
        let field = match word {
            "property" => &mut self.heads.property,
            "account" => &mut self.heads.account,
            "record" => &mut self.heads.record,
            "listing" => &mut self.heads.listing,
            "plan" => &mut self.heads.plan,
            "veneer" => &mut self.heads.veneer,
            _ => return,
        };
        value.trim().clone_into(field);
    }

    /// Fills in a row from the words of a bay or a slanted wall. It has no direction if they are something else.
    fn shaped(&self, row: Row, length: Option<Length>) -> Row {
        match edit::shape_in(edit::side_of(&row.typed), self.front) {
            Some((way, written, shape)) => {
                Row { way: Some(way), parts: length.and_then(parts), length: written, shape, ..row }
            }
            None => Row { shape: Shape::Other, ..row },
        }
    }

    fn put(
        &mut self,
        row: Row,
        (moved, follows, curve): (Option<Spot>, Option<Direction>, Option<(i64, i64)>),
        bay: Option<Bay>,
    ) {
        let Some(open) = &mut self.open else { return };
        let number = open.walk.rows.last().map_or(1, |last| last.number + last.sides);
        let sides = bay.map_or(1, |bay| bay::sides(&bay, bay::left_of(bay.direction)).len());
        let row = Row { number, sides, ..row };
        open.moves.push(moved);
        open.follows.push(follows);
        open.curves.push(curve);
        open.bays.push(bay);
        open.walk.rows.push(row);
    }

    /// Ends the open walk: fills in what follows from the other sides, and computes the position of every row.
    fn close(&mut self) {
        let Some(mut open) = self.open.take() else { return };
        open.fill();
        let outside_is_left = !open.is_counterclockwise();
        let mut at = open.start;
        for i in 0..open.walk.rows.len() {
            let next = plus(at, open.moves[i].unwrap_or((0, 0)));
            open.places.push(at);
            let pieces = match open.bays[i] {
                Some(bay) => {
                    let sides = bay_sides(&bay, at, outside_is_left);
                    let inner = sides.iter().rev().skip(1).rev();
                    open.places.extend(inner.map(|&(end, _)| end));
                    sides.iter().map(|&(end, curve)| self.piece(end, curve)).collect()
                }
                None => vec![self.piece(next, open.curves[i])],
            };
            let row = &mut open.walk.rows[i];
            (row.from, row.to, row.pieces) = (self.seen(at), self.seen(next), pieces);
            if let (Some(_), Some((east, north))) = (open.follows[i], open.moves[i]) {
                let length = Length::from_nm(east + north).abs();
                row.found = WrittenLength::new(length, self.form).spoken();
            }
            at = next;
        }
        let missing = (open.start.0 - at.0, open.start.1 - at.1);
        open.walk.is_closed = missing == (0, 0) && open.walk.rows.len() > 1;
        open.walk.is_near = open.is_near(missing);
        open.walk.gap = self.spoken(missing);
        self.done.push(open);
    }

    fn piece(&self, to: Spot, curve: Option<(i64, i64)>) -> Piece {
        let curve = curve.map(|(chord, rise)| {
            let (c, h) = (Length::from_nm(chord).feet(), Length::from_nm(rise.abs()).feet());
            (c.mul_add(c, 4.0 * h * h) / (8.0 * h), rise > 0)
        });
        Piece { to: self.seen(to), curve }
    }

    /// A move in words: `12' 3" to the right and 4' toward the street`.
    fn spoken(&self, (east, north): Spot) -> String {
        let shown = |axis: Axis, nm: i64| {
            let way = Way::of(Direction::along(axis, nm), self.front);
            let far = WrittenLength::new(Length::from_nm(nm).abs(), self.form).spoken();
            (nm != 0).then(|| format!("{far} {}", way.spoken()))
        };
        let ways: Vec<String> =
            [shown(Axis::East, east), shown(Axis::North, north)].into_iter().flatten().collect();
        words::all_of(&ways)
    }

    /// A position in feet, with the street at the bottom.
    fn seen(&self, (east, north): Spot) -> [f64; 2] {
        let (x, y) = match self.front {
            Direction::South => (east, -north),
            Direction::North => (-east, north),
            Direction::East => (north, east),
            Direction::West => (-north, -east),
        };
        [Length::from_nm(x).feet(), Length::from_nm(y).feet()]
    }

    fn finish(mut self) -> Rows {
        self.close();
        Rows {
            heads: self.heads,
            compass: Way::ALL.map(|way| way.direction(self.front).word()),
            levels: self.levels,
            fields: self.fields,
            walks: self.done.into_iter().map(|open| open.walk).collect(),
        }
    }
}

impl Row {
    /// Whether nothing was typed for the length of a wall that was not left to follow from the others.
    #[must_use]
    pub fn lacks_length(&self) -> bool {
        !self.is_read && self.way.is_some() && self.how != How::Closing && self.length.is_empty()
    }

    fn empty() -> Row {
        Row {
            line: 0,
            number: 1,
            sides: 1,
            way: None,
            shape: Shape::Straight,
            typed: String::new(),
            length: String::new(),
            found: String::new(),
            parts: None,
            how: How::Measured,
            picture: None,
            is_read: true,
            from: [0.0; 2],
            to: [0.0; 2],
            pieces: Vec::new(),
        }
    }
}

impl Open {
    /// The position after `after` sides.
    fn corner(&self, after: usize) -> Spot {
        let moves = self.moves.iter().take(after);
        moves.fold(self.start, |at, moved| plus(at, moved.unwrap_or((0, 0))))
    }

    /// Gives each side by closing, at most one per axis, the length that the others leave; `close` takes what is left
    /// after that.
    fn fill(&mut self) {
        for i in 0..self.moves.len() {
            let Some(direction) = self.follows[i] else { continue };
            let rest = self.rest();
            let along = match direction.axis() {
                Axis::East => (rest.0, 0),
                Axis::North => (0, rest.1),
            };
            let runs_that_way = (along.0 + along.1) * direction.sign() > 0;
            let is_only = self.follows.iter().flatten().filter(|d| d.axis() == direction.axis());
            if runs_that_way && is_only.count() == 1 {
                self.moves[i] = Some(along);
            }
        }
        for i in 0..self.moves.len() {
            if self.moves[i].is_none() && self.follows[i].is_none() {
                self.moves[i] = Some(self.rest());
            }
        }
    }

    /// Whether the walk misses its start by no more than an error of the tape, or by a small part of its length.
    fn is_near(&self, (east, north): Spot) -> bool {
        let moves = self.moves.iter().flatten();
        let walked: i64 = moves.map(|(east, north)| east.abs() + north.abs()).sum();
        let little = (2 * Length::FOOT.nm()).max(walked.div_euclid(50));
        self.walk.rows.len() > 2 && east.abs().max(north.abs()) <= little
    }

    /// Whether the walk has its inside on the left, as if it returned to its start in a straight line.
    fn is_counterclockwise(&self) -> bool {
        let (mut at, mut doubled) = ((0, 0), 0_i128);
        for &moved in self.moves.iter().flatten() {
            let next = plus(at, moved);
            doubled +=
                i128::from(at.0) * i128::from(next.1) - i128::from(at.1) * i128::from(next.0);
            at = next;
        }
        doubled > 0
    }

    /// The move from the end back to the start.
    fn rest(&self) -> Spot {
        let sum = self.moves.iter().flatten().fold((0, 0), |at, &moved| plus(at, moved));
        (-sum.0, -sum.1)
    }
}

fn plus(a: Spot, b: Spot) -> Spot {
    (a.0 + b.0, a.1 + b.1)
}

fn leg(direction: Direction, nm: i64) -> Spot {
    match direction.axis() {
        Axis::East => (direction.sign() * nm, 0),
        Axis::North => (0, direction.sign() * nm),
    }
}

/// The end of each side of a bay, with the chord and rise of a curve.
fn bay_sides(bay: &Bay, from: Spot, outside_is_left: bool) -> Vec<(Spot, Option<(i64, i64)>)> {
    let left = bay::left_of(bay.direction);
    let right = Direction::along(left.axis(), -left.sign());
    let mut at = from;
    let sides = bay::sides(bay, if outside_is_left { left } else { right });
    let end = |run: &Run| {
        let (moved, _, curve) = course(run);
        at = plus(at, moved.unwrap_or((0, 0)));
        (at, curve)
    };
    sides.iter().map(end).collect()
}

/// The move of a side, the direction of a side by closing, and the chord and rise of a curve.
fn course(run: &Run) -> (Option<Spot>, Option<Direction>, Option<(i64, i64)>) {
    match run {
        Run::Straight(direction, length) => {
            (Some(leg(*direction, length.length().nm())), None, None)
        }
        Run::ByClosing(direction) => (None, Some(*direction), None),
        Run::Diagonal(first, second) => {
            let part = |leg_of: &(Direction, crate::units::length::WrittenLength)| {
                leg(leg_of.0, leg_of.1.length().nm())
            };
            (Some(plus(part(first), part(second))), None, None)
        }
        Run::Bearing(bearing, length) => {
            let (east, north) = bearing.unit_vector();
            let far = length.length().feet();
            (Some((nm_of(east * far), nm_of(north * far))), None, None)
        }
        Run::Arc(direction, chord, rise, toward) => {
            let chord = chord.length().nm();
            let right = CLOCKWISE[(clockwise(*direction) + 1) % 4];
            let sign = if *toward == right { 1 } else { -1 };
            (Some(leg(*direction, chord)), None, Some((chord, sign * rise.length().nm())))
        }
        Run::Close => (None, None, None),
    }
}

#[expect(clippy::cast_possible_truncation, reason = "a side has at most 10,000 ft")]
#[expect(clippy::cast_precision_loss, reason = "a foot is a small whole number of nanometers")]
fn nm_of(feet: f64) -> i64 {
    (feet * Length::FOOT.nm() as f64).round() as i64
}

/// A direction from its word or first letter.
fn direction(word: &str) -> Option<Direction> {
    let word = word.to_lowercase();
    CLOCKWISE.into_iter().find(|one| one.word() == word || one.word()[..1] == word)
}

/// A direction as a row shows it, from a compass word or from `back`, `right`, `front`, `left`.
fn way_of(word: &str, front: Direction) -> Option<Way> {
    let seen = match word.to_lowercase().as_str() {
        "back" => Some(Way::Back),
        "right" => Some(Way::Right),
        "front" => Some(Way::Front),
        "left" => Some(Way::Left),
        _ => None,
    };
    seen.or_else(|| direction(word).map(|direction| Way::of(direction, front)))
}

/// Feet, inches and a fraction of an inch; `None` if the length is not a whole number of 64ths of an inch.
fn parts(length: Length) -> Option<[String; 3]> {
    const SIXTY_FOURTH: i64 = 396_875;
    let nm = length.nm();
    if nm % SIXTY_FOURTH != 0 {
        return None;
    }
    let (feet, rest) = (nm.div_euclid(Length::FOOT.nm()), nm.rem_euclid(Length::FOOT.nm()));
    let (inches, rest) = (rest.div_euclid(Length::INCH.nm()), rest.rem_euclid(Length::INCH.nm()));
    let (mut top, mut bottom) = (rest.div_euclid(SIXTY_FOURTH), 64);
    while top > 0 && top % 2 == 0 {
        (top, bottom) = (top.div_euclid(2), i64::div_euclid(bottom, 2));
    }
    let fraction = if top == 0 { String::new() } else { format!("{top}/{bottom}") };
    let inches = if inches == 0 && top > 0 { String::new() } else { inches.to_string() };
    Some([feet.to_string(), inches, fraction])
}

#[cfg(test)]
mod tests;
