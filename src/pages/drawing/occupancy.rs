//! Keeps track of what a drawing contains, and whether something more fits.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use std::cell::Cell;

use crate::pages::page::Point;

/// The rectangle of a label: its four corners in order around it.
pub(crate) type Ground = [Point; 4];

/// The kind of a line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Sort {
    /// A wall.
    Wall,
    /// A wall of a record or plan.
    Theirs,
    /// A dimension line or a leader.
    Dimension,
    /// A witness line, from a wall out to a dimension line.
    Witness,
    /// The slash at an end of a dimension line.
    Tick,
}

#[derive(Clone, Copy, Debug)]
struct Line {
    from: Point,
    to: Point,
    sort: Sort,
    bounds: Bounds,
}

/// A label's rectangle, with values computed from it once because they are needed often.
#[derive(Clone, Copy, Debug)]
struct Label {
    ground: Ground,
    /// The rectangle with the clearance around it.
    wide: Ground,
    bounds: Bounds,
}

/// A bounding box.
#[derive(Clone, Copy, Debug)]
struct Bounds {
    low: Point,
    high: Point,
}

impl Bounds {
    fn of(spots: &[Point]) -> Bounds {
        let low = spots.iter().fold(Point::new(f64::MAX, f64::MAX), |low, spot| {
            Point::new(low.x_pt.min(spot.x_pt), low.y_pt.min(spot.y_pt))
        });
        let high = spots.iter().fold(Point::new(f64::MIN, f64::MIN), |high, spot| {
            Point::new(high.x_pt.max(spot.x_pt), high.y_pt.max(spot.y_pt))
        });
        Bounds { low, high }
    }

    /// Whether another box is so near that their contents may touch; the margin allows for rounding errors.
    fn may_touch(&self, other: &Bounds) -> bool {
        const HAIR_PT: f64 = 2.5;
        self.low.x_pt <= other.high.x_pt + HAIR_PT
            && other.low.x_pt <= self.high.x_pt + HAIR_PT
            && self.low.y_pt <= other.high.y_pt + HAIR_PT
            && other.low.y_pt <= self.high.y_pt + HAIR_PT
    }
}

/// A frame and its contents, indexed by the squares of a grid.
#[derive(Clone, Debug)]
pub(crate) struct Occupancy {
    left_top: Point,
    right_bottom: Point,
    columns: usize,
    rows: usize,
    labels: Vec<Label>,
    lines: Vec<Line>,
    label_net: Vec<Vec<usize>>,
    line_net: Vec<Vec<usize>>,
    /// How many lines and labels have been compared so far.
    looked_at: Cell<usize>,
}

/// The side of a grid square, in points.
const SQUARE_PT: f64 = 24.0;
/// The clearance between a label and a line, in points.
const AIR_PT: f64 = 0.9;
/// The clearance of a line that is placed later, before and after the label, where it looks like a letter, in points.
const ENDS_PT: f64 = 2.4;
/// The clearance between a label and another party's dashes, which could be read as strokes of its letters, in points.
const OFF_DASHES_PT: f64 = 2.4;
/// The least distance between two dimension lines beside each other, in points.
const ROW_APART_PT: f64 = 9.0;
/// The clearance between two labels along the line of reading, so that they are not read as one, and across it, in
/// points.
const APART_PT: (f64, f64) = (12.0, 1.0);

impl Occupancy {
    pub(crate) fn new(left_top: Point, right_bottom: Point) -> Occupancy {
        let size = left_top.to(right_bottom);
        let (columns, rows) = (squares(size.x_pt) + 1, squares(size.y_pt) + 1);
        Occupancy {
            left_top,
            right_bottom,
            columns,
            rows,
            labels: Vec::new(),
            lines: Vec::new(),
            label_net: vec![Vec::new(); columns * rows],
            line_net: vec![Vec::new(); columns * rows],
            looked_at: Cell::new(0),
        }
    }

    /// How many lines and labels have been compared so far: the work spent on placing labels.
    pub(crate) fn looked_at(&self) -> usize {
        self.looked_at.get()
    }

    /// Adds work that was done elsewhere for the same labels.
    pub(crate) fn count(&self, looked_at: usize) {
        self.looked_at.set(self.looked_at.get() + looked_at);
    }

    /// The grid squares covered by a bounding box.
    fn squares_of(&self, bounds: &Bounds) -> impl Iterator<Item = usize> + use<> {
        let Bounds { low, high } = *bounds;
        let column = |x_pt: f64| squares(x_pt - self.left_top.x_pt).min(self.columns - 1);
        let row = |y_pt: f64| squares(y_pt - self.left_top.y_pt).min(self.rows - 1);
        let (across, down) = (column(low.x_pt)..=column(high.x_pt), row(low.y_pt)..=row(high.y_pt));
        let columns = self.columns;
        down.flat_map(move |row| across.clone().map(move |column| row * columns + column))
    }

    pub(crate) fn add_ground(&mut self, ground: Ground) {
        let bounds = Bounds::of(&ground);
        for square in self.squares_of(&bounds) {
            self.label_net[square].push(self.labels.len());
        }
        self.labels.push(Label { ground, wide: grown_by(&ground, (ENDS_PT, AIR_PT)), bounds });
    }

    pub(crate) fn add_line(&mut self, from: Point, to: Point, sort: Sort) {
        let bounds = Bounds::of(&[from, to]);
        for square in self.squares_of(&bounds) {
            self.line_net[square].push(self.lines.len());
        }
        self.lines.push(Line { from, to, sort, bounds });
    }

    /// Whether a label lies in the frame and touches neither another label nor any line.
    pub(crate) fn has_room(&self, ground: &Ground) -> bool {
        let (wide, wider) = (grown(ground, AIR_PT), grown(ground, OFF_DASHES_PT));
        let apart = grown_by(ground, APART_PT);
        let near = grown(ground, APART_PT.1);
        // Only what reads in the same direction could be read as one.
        let keeps_off = |other: &Label| match reads_alike(ground, &other.ground) {
            true => !overlap(&apart, &other.ground),
            false => !overlap(&near, &other.ground),
        };
        self.holds(ground)
            && self.labels_near(&apart).all(keeps_off)
            && self.lines_near(&wider).all(|line| {
                let around = if line.sort == Sort::Theirs { &wider } else { &wide };
                !touches(around, line.from, line.to)
            })
    }

    /// Whether a rectangle lies in the frame.
    fn holds(&self, ground: &Ground) -> bool {
        let Bounds { low, high } = Bounds::of(ground);
        low.x_pt >= self.left_top.x_pt
            && low.y_pt >= self.left_top.y_pt
            && high.x_pt <= self.right_bottom.x_pt
            && high.y_pt <= self.right_bottom.y_pt
    }

    /// Whether a dimension line or leader touches no wall, no label, and no other such line.
    pub(crate) fn is_clear(&self, from: Point, to: Point) -> bool {
        let (from, to) = shortened(from, to, 0.6);
        let inside = self.holds(&[from, to, from, to]);
        let blocks = |line: &&Line| !matches!(line.sort, Sort::Witness | Sort::Tick);
        let strip = strip(from, to);
        let is_near = |line: &Line| touches(&strip, line.from, line.to);
        inside
            && self.lines_near(&[from, to]).filter(blocks).all(|line| !is_near(line))
            && !self.meets_ground(from, to)
    }

    /// Whether a witness line touches no label and crosses no wall.
    pub(crate) fn lets_out(&self, from: Point, to: Point) -> bool {
        let (from, to) = shortened(from, to, 0.6);
        let blocks = |line: &&Line| line.sort == Sort::Wall;
        let crossed = |line: &Line| cross(from, to, line.from, line.to);
        !self.lines_near(&[from, to]).filter(blocks).any(crossed) && !self.meets_ground(from, to)
    }

    /// Whether no other label is within `within_pt` points of this one.
    pub(crate) fn is_alone(&self, ground: &Ground, within_pt: f64) -> bool {
        let wide = grown(ground, within_pt);
        self.labels_near(&wide).all(|other| !overlap(&wide, &other.ground))
    }

    /// Whether a leader touches no slash of a dimension line, where it would look like a part of it.
    pub(crate) fn misses_ticks(&self, from: Point, to: Point) -> bool {
        let strip = strip(from, to);
        let mut ticks = self.lines_near(&strip).filter(|line| line.sort == Sort::Tick);
        !ticks.any(|tick| touches(&strip, tick.from, tick.to))
    }

    /// Whether a dimension line has a row of its own: none like it beside it so near that the two read as one, and no
    /// dashes of another party under its slashes.
    pub(crate) fn has_its_row(&self, from: Point, to: Point) -> bool {
        let along = from.to(to).unit();
        let across = along.turned();
        let wide =
            [1.0, -1.0].map(|side| [from, to].map(|end| end.plus(across, side * ROW_APART_PT)));
        self.lines_near(&wide.concat()).all(|line| {
            let is_parallel = line.from.to(line.to).unit().cross(along).abs() < 0.05;
            let (low, high) = spread(&[line.from, line.to], along);
            let (its_low, its_high) = spread(&[from, to], along);
            let is_beside = high.min(its_high) - low.max(its_low) > 1.0;
            let apart = from.to(line.from).dot(across).abs();
            let is_too_near = match line.sort {
                // In one row with it, it is a chain.
                Sort::Dimension => apart > 0.5 && apart < ROW_APART_PT,
                Sort::Theirs => apart < OFF_DASHES_PT + 2.0,
                _ => false,
            };
            !(is_parallel && is_beside && is_too_near)
        })
    }

    /// Whether a line crosses no dimension line or leader.
    pub(crate) fn meets_no_dimension(&self, from: Point, to: Point) -> bool {
        !self
            .lines_near(&[from, to])
            .any(|line| line.sort == Sort::Dimension && cross(from, to, line.from, line.to))
    }

    /// Whether a line crosses no witness line.
    pub(crate) fn meets_no_witness(&self, from: Point, to: Point) -> bool {
        !self
            .lines_near(&[from, to])
            .any(|line| line.sort == Sort::Witness && cross(from, to, line.from, line.to))
    }

    /// Whether a line touches no label.
    pub(crate) fn misses_labels(&self, from: Point, to: Point) -> bool {
        self.holds(&[from, to, from, to]) && !self.meets_ground(from, to)
    }

    fn meets_ground(&self, from: Point, to: Point) -> bool {
        self.labels_near(&[from, to]).any(|label| touches(&label.wide, from, to))
    }

    fn labels_near(&self, spots: &[Point]) -> impl Iterator<Item = &Label> {
        let bounds = Bounds::of(spots);
        let numbers = self.squares_of(&bounds).flat_map(|square| {
            self.count(1 + self.label_net[square].len());
            &self.label_net[square]
        });
        numbers
            .map(|&number| &self.labels[number])
            .filter(move |label| label.bounds.may_touch(&bounds))
    }

    fn lines_near(&self, spots: &[Point]) -> impl Iterator<Item = &Line> {
        let bounds = Bounds::of(spots);
        let numbers = self.squares_of(&bounds).flat_map(|square| {
            self.count(1 + self.line_net[square].len());
            &self.line_net[square]
        });
        numbers
            .map(|&number| &self.lines[number])
            .filter(move |line| line.bounds.may_touch(&bounds))
    }
}

/// How many grid squares a distance spans; 0 if it is negative.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a page has a few dozen squares"
)]
fn squares(distance_pt: f64) -> usize {
    (distance_pt / SQUARE_PT).clamp(0.0, 1000.0) as usize
}

/// A rectangle enlarged by `by_pt` on every side.
fn grown(ground: &Ground, by_pt: f64) -> Ground {
    grown_by(ground, (by_pt, by_pt))
}

/// A rectangle enlarged at both ends by the first length, and above and below by the second.
pub(crate) fn grown_by(ground: &Ground, (ends_pt, edges_pt): (f64, f64)) -> Ground {
    let along = ground[0].to(ground[1]).unit();
    let down = ground[0].to(ground[3]).unit();
    let corner = |spot: Point, right: f64, low: f64| {
        spot.plus(along, right * ends_pt).plus(down, low * edges_pt)
    };
    [
        corner(ground[0], -1.0, -1.0),
        corner(ground[1], 1.0, -1.0),
        corner(ground[2], 1.0, 1.0),
        corner(ground[3], -1.0, 1.0),
    ]
}

/// Whether two rectangles overlap (separating axis test).
pub(crate) fn overlap(one: &Ground, other: &Ground) -> bool {
    let sides =
        [one[0].to(one[1]), one[0].to(one[3]), other[0].to(other[1]), other[0].to(other[3])];
    sides.into_iter().all(|side| {
        let (low, high) = spread(one, side);
        let (other_low, other_high) = spread(other, side);
        low < other_high && other_low < high
    })
}

/// Whether two labels read in the same direction.
fn reads_alike(one: &Ground, other: &Ground) -> bool {
    const NEARLY: f64 = 0.1;
    let way = |ground: &Ground| ground[0].to(ground[1]).unit();
    way(one).cross(way(other)).abs() < NEARLY
}

/// Whether a line crosses or touches a rectangle.
pub(crate) fn touches(ground: &Ground, from: Point, to: Point) -> bool {
    let along = from.to(to);
    let sides = [ground[0].to(ground[1]), ground[0].to(ground[3]), along.turned()];
    let has_length = |side: &Point| *side != Point::default();
    sides.into_iter().filter(has_length).all(|side| {
        let (low, high) = spread(ground, side);
        let (line_low, line_high) = spread(&[from, to], side);
        low <= line_high && line_low <= high
    })
}

fn spread(spots: &[Point], side: Point) -> (f64, f64) {
    spots.iter().fold((f64::MAX, f64::MIN), |(low, high), spot| {
        let at = spot.dot(side);
        (low.min(at), high.max(at))
    })
}

/// A line shortened by `by_pt` at both ends.
fn shortened(from: Point, to: Point, by_pt: f64) -> (Point, Point) {
    let along = from.to(to);
    if along.length() <= 2.0 * by_pt {
        return (from, to);
    }
    (from.plus(along.unit(), by_pt), to.plus(along.unit(), -by_pt))
}

/// Whether two lines cross.
pub(crate) fn cross(a: Point, b: Point, c: Point, d: Point) -> bool {
    let side = |from: Point, to: Point, spot: Point| from.to(to).cross(from.to(spot));
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

/// The rectangle of everything within a point and a half beside a line.
fn strip(from: Point, to: Point) -> Ground {
    const APART_PT: f64 = 1.5;
    let across = from.to(to).unit().turned();
    [
        from.plus(across, APART_PT),
        to.plus(across, APART_PT),
        to.plus(across, -APART_PT),
        from.plus(across, -APART_PT),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(x_pt: f64, y_pt: f64, size_pt: f64) -> Ground {
        [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)]
            .map(|(x, y)| Point::new(x_pt + size_pt * x, y_pt + size_pt * y))
    }

    #[test]
    fn turned_grounds_part_where_their_boxes_overlap() {
        let diamond =
            [(5.0, 0.0), (10.0, 5.0), (5.0, 10.0), (0.0, 5.0)].map(|(x, y)| Point::new(x, y));
        assert!(overlap(&diamond, &square(4.0, 4.0, 2.0)));
        assert!(!overlap(&diamond, &square(8.5, 8.5, 1.5)));
    }

    #[test]
    fn a_line_touches_what_it_runs_through_or_lies_in() {
        let ground = square(0.0, 0.0, 10.0);
        assert!(touches(&ground, Point::new(-5.0, 5.0), Point::new(15.0, 5.0)));
        assert!(touches(&ground, Point::new(4.0, 4.0), Point::new(5.0, 5.0)));
        assert!(!touches(&ground, Point::new(-5.0, 4.0), Point::new(4.0, -5.0)));
    }

    #[test]
    fn there_is_no_room_beside_the_frame_on_a_line_or_on_a_label() {
        let mut crowd = Occupancy::new(Point::new(0.0, 0.0), Point::new(100.0, 100.0));
        assert!(crowd.has_room(&square(40.0, 40.0, 10.0)));
        assert!(!crowd.has_room(&square(95.0, 40.0, 10.0)));
        crowd.add_line(Point::new(0.0, 45.0), Point::new(100.0, 45.0), Sort::Wall);
        assert!(!crowd.has_room(&square(40.0, 40.0, 10.0)));
        // 2 pt beside a wall is enough, beside dashes it is not.
        assert!(crowd.has_room(&square(40.0, 33.0, 10.0)));
        let mut dashed = Occupancy::new(Point::new(0.0, 0.0), Point::new(100.0, 100.0));
        dashed.add_line(Point::new(0.0, 45.0), Point::new(100.0, 45.0), Sort::Theirs);
        assert!(!dashed.has_room(&square(40.0, 33.0, 10.0)));
        crowd.add_ground(square(60.0, 60.0, 20.0));
        assert!(!crowd.has_room(&square(75.0, 75.0, 20.0)));
        // 11 pt to the right of a label is too near, and 1 pt below it.
        assert!(!crowd.has_room(&square(91.0, 60.0, 5.0)));
        assert!(!crowd.has_room(&square(60.0, 80.9, 10.0)));
        assert!(crowd.has_room(&square(92.5, 60.0, 5.0)));
        assert!(crowd.has_room(&square(60.0, 82.0, 10.0)));
    }

    #[test]
    fn a_dimension_line_has_a_row_of_its_own_and_a_leader_keeps_off_slashes() {
        let mut crowd = Occupancy::new(Point::new(0.0, 0.0), Point::new(100.0, 100.0));
        let across = |from: f64, to: f64, y: f64| (Point::new(from, y), Point::new(to, y));
        let (from, to) = across(10.0, 60.0, 50.0);
        crowd.add_line(from, to, Sort::Dimension);
        let has_row = |crowd: &Occupancy, from: f64, to: f64, y: f64| {
            let (from, to) = across(from, to, y);
            crowd.has_its_row(from, to)
        };
        // 4 pt beside it, 10 pt beside it, behind it in its row, and 4 pt beside what lies behind it.
        assert!(!has_row(&crowd, 30.0, 80.0, 54.0));
        assert!(has_row(&crowd, 30.0, 80.0, 60.0));
        assert!(has_row(&crowd, 60.0, 90.0, 50.0));
        assert!(has_row(&crowd, 60.0, 90.0, 54.0));
        let (from, to) = across(10.0, 60.0, 20.0);
        crowd.add_line(from, to, Sort::Theirs);
        // Slashes reach 2 pt beside their line.
        assert!(!has_row(&crowd, 10.0, 60.0, 23.0));
        assert!(has_row(&crowd, 10.0, 60.0, 25.0));
        crowd.add_line(Point::new(79.0, 79.0), Point::new(83.0, 83.0), Sort::Tick);
        let slanted = |x: f64| (Point::new(x, 75.0), Point::new(x, 90.0));
        let (on, beside) = (slanted(81.0), slanted(90.0));
        assert!(!crowd.misses_ticks(on.0, on.1));
        assert!(crowd.misses_ticks(beside.0, beside.1));
        // A dimension line may end at the slash of the next one.
        assert!(crowd.is_clear(on.0, on.1));
    }
}
