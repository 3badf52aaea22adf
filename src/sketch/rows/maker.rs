//! Makes rows of the lines of a file.
#![expect(clippy::float_arithmetic, reason = "positions on a screen, which no figure is made from")]

use super::open::{Course, Open, Spot, bay_sides, course, leg, plus};
use super::way::{Way, way_of};
use super::{Heads, How, Piece, Row, Rows, Shape, Walk, edit};
use crate::diagnostic::words;
use crate::geometry::compass::{Axis, Direction};
use crate::sketch::bay;
use crate::sketch::statement::{
    Bay, FigureKind, Head, HeadLine, Place, Run, SideWords, SpaceStatement, Statement,
};
use crate::units::length::{Form, Length, WrittenLength};

/// Takes the lines of a file one by one.
pub(super) struct Maker {
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
    pub(super) fn new(front: Direction, form: Form) -> Maker {
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

    pub(super) fn line(&mut self, number: usize, typed: &str, statement: Option<&Statement>) {
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
        let front = self.front;
        if let Some(open) = &mut self.open {
            open.walk.corner = corner;
            if let Place::Start(legs) = &space.place {
                let off = |(way, length): &(Direction, WrittenLength)| {
                    (Way::of(*way, front), length.spoken())
                };
                open.walk.off = legs.iter().map(off).collect();
            }
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
            off: Vec::new(),
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

    /// Where a space begins, given the walks before it, in nanometers.
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
            Some(way) => {
                let length = edit::length_in(content);
                Row { way: Some(way), length: length.to_owned(), parts: as_typed(length), ..row }
            }
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

    fn put(&mut self, row: Row, (moved, follows, curve): Course, bay: Option<Bay>) {
        let Some(open) = &mut self.open else { return };
        let number = open.walk.rows.last().map_or(1, |last| last.number + last.sides);
        let sides = bay.map_or(1, |bay| bay::sides(&bay, bay.direction.left()).len());
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
        let outside_is_left = !open.is_counterclockwise(self.front);
        // What follows from the others follows from all of them.
        let is_whole = open.walk.rows.iter().all(|row| row.is_read);
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
            if let (true, Some(_), Some((east, north))) = (is_whole, open.follows[i], open.moves[i])
            {
                let length = Length::from_nm(east + north).abs();
                row.found = WrittenLength::new(length, self.form).spoken();
            }
            at = next;
        }
        let missing = (open.start.0 - at.0, open.start.1 - at.1);
        for i in 0..open.walk.rows.len() {
            open.walk.rows[i].then = self.then(&open.walk.rows, i, missing);
        }
        open.walk.is_closed = missing == (0, 0) && open.walk.rows.len() > 1;
        open.walk.is_near = open.is_near(missing);
        open.walk.gap = self.spoken(missing);
        self.done.push(open);
    }

    /// The direction of a wall inserted after a row: across it, toward the start; if the walk does not miss it that way,
    /// as the next row goes.
    fn then(&self, rows: &[Row], at: usize, missing: Spot) -> Way {
        let axis_of = |way: Way| way.direction(self.front).axis();
        let row = rows[at].way.unwrap_or(Way::Back);
        let (axis, nm) = match axis_of(row) {
            Axis::North => (Axis::East, missing.0),
            Axis::East => (Axis::North, missing.1),
        };
        let next = rows.get(at + 1).or(rows.first()).and_then(|next| next.way);
        match next.filter(|next| nm == 0 && axis_of(*next) == axis) {
            Some(next) => next,
            None => Way::of(Direction::along(axis, nm), self.front),
        }
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

    pub(super) fn finish(mut self) -> Rows {
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

/// Feet, inches and a fraction of an inch of a length that cannot be read, each as typed: `6' 24 1/4"`. `None` if it is
/// not written that way.
fn as_typed(length: &str) -> Option<[String; 3]> {
    let (feet, rest) = length.split_once(['\'', '’', '′'])?;
    let rest = rest.trim().strip_suffix(['"', '”', '″'])?;
    let (inches, fraction) = rest.split_once(' ').unwrap_or((rest, ""));
    let is_whole = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    let is_fraction = |text: &str| {
        text.split_once('/').is_some_and(|(top, bottom)| is_whole(top) && is_whole(bottom))
    };
    let is_plain =
        is_whole(feet) && is_whole(inches) && (fraction.is_empty() || is_fraction(fraction));
    is_plain.then(|| [feet, inches, fraction].map(str::to_owned))
}
