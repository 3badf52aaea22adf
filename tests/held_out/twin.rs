//! A second computation of areas from side lengths, written only from the text of the method.
//!
//! It uses slow and obvious means: exact fractions of a foot, every closing listed, every pair of sides compared.
//! It shares no code with the program, so a figure on which both agree was computed in two independent ways.

use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{One, Signed, ToPrimitive, Zero};

/// Feet or square feet as an exact fraction.
pub type Exact = BigRational;

/// The direction in which a wall is walked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// Toward the top of the plan.
    North,
    /// Toward the right of the plan.
    East,
    /// Toward the bottom of the plan.
    South,
    /// Toward the left of the plan.
    West,
}

/// One straight run of wall as it was typed.
#[derive(Clone, Debug)]
pub struct Wall {
    /// The direction in which it is walked.
    pub direction: Direction,
    /// Its typed length.
    pub feet: Exact,
    /// The tolerance of its typed length.
    pub tolerance: Exact,
}

/// How a length halfway between two steps is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Halves {
    /// To the longer.
    Up,
    /// To the shorter.
    Down,
    /// To the even number of steps.
    Even,
}

/// One of the two axes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Axis {
    NorthSouth,
    EastWest,
}

const AXES: [Axis; 2] = [Axis::NorthSouth, Axis::EastWest];

impl Direction {
    fn axis(self) -> Axis {
        match self {
            Direction::North | Direction::South => Axis::NorthSouth,
            Direction::East | Direction::West => Axis::EastWest,
        }
    }

    /// +1 for north and east, -1 for south and west.
    fn sign(self) -> i64 {
        match self {
            Direction::North | Direction::East => 1,
            Direction::South | Direction::West => -1,
        }
    }

    /// The unit vector (east, north) that points left of the direction of travel.
    fn left(self) -> (i64, i64) {
        match self {
            Direction::North => (-1, 0),
            Direction::East => (0, 1),
            Direction::South => (1, 0),
            Direction::West => (0, -1),
        }
    }
}

/// An integer as a fraction.
fn whole(number: i64) -> Exact {
    Exact::from_integer(BigInt::from(number))
}

/// The indices of the walls of one axis.
fn walls_of(walls: &[Wall], axis: Axis) -> Vec<usize> {
    (0..walls.len()).filter(|&place| walls[place].direction.axis() == axis).collect()
}

/// The directions of the walls.
fn directions_of(walls: &[Wall]) -> Vec<Direction> {
    walls.iter().map(|wall| wall.direction).collect()
}

/// The corners (east, north) of a walk from (0, 0), including its end.
fn corners(directions: &[Direction], lengths: &[Exact]) -> Vec<(Exact, Exact)> {
    let mut here = (Exact::zero(), Exact::zero());
    let mut all = vec![here.clone()];
    for (direction, length) in directions.iter().zip(lengths) {
        let run = length * whole(direction.sign());
        match direction.axis() {
            Axis::NorthSouth => here.1 += run,
            Axis::EastWest => here.0 += run,
        }
        all.push(here.clone());
    }
    all
}

/// The area inside a ring of corners by the cross products of neighbors: positive where the walk
/// has the inside on its left.
fn signed_area(ring: &[(Exact, Exact)]) -> Exact {
    let mut doubled = Exact::zero();
    for (place, here) in ring.iter().enumerate() {
        let next = &ring[(place + 1) % ring.len()];
        doubled += &here.0 * &next.1 - &next.0 * &here.1;
    }
    doubled / whole(2)
}

/// The area, always positive, of an outline with these lengths. They must close.
fn area(directions: &[Direction], lengths: &[Exact]) -> Exact {
    let ring = corners(directions, lengths);
    assert!(ring.first() == ring.last(), "these lengths do not close");
    signed_area(&ring).abs()
}

// ------------------------------------------------------------------------------ as measured

/// The lengths after the misclosure of each axis is distributed over its walls in proportion to tolerance², in file
/// order.
///
/// Panics if an axis does not close and has no tolerance.
pub fn closed_lengths(walls: &[Wall]) -> Vec<Exact> {
    let mut lengths: Vec<Exact> = walls.iter().map(|wall| wall.feet.clone()).collect();
    for axis in AXES {
        let places = walls_of(walls, axis);
        let mut misclosure = Exact::zero();
        let mut squares = Exact::zero();
        for &place in &places {
            let wall = &walls[place];
            misclosure += &wall.feet * whole(wall.direction.sign());
            squares += &wall.tolerance * &wall.tolerance;
        }
        if misclosure.is_zero() {
            continue;
        }
        assert!(!squares.is_zero(), "a misclosure and no tolerance");
        for &place in &places {
            let wall = &walls[place];
            let share = &misclosure * &wall.tolerance * &wall.tolerance / &squares;
            lengths[place] -= share * whole(wall.direction.sign());
        }
    }
    lengths
}

/// The area of the outline after the misclosure of each axis is distributed in proportion to tolerance².
pub fn as_measured(walls: &[Wall]) -> Exact {
    area(&directions_of(walls), &closed_lengths(walls))
}

// -------------------------------------------------------------------------------- on a step

/// A length as a number of steps.
fn rounded(feet: &Exact, step: &Exact, halves: Halves) -> i64 {
    let steps = feet / step;
    let below = steps.floor();
    let rest = &steps - &below;
    let half = Exact::one() / whole(2);
    let below = below.to_integer().to_i64().expect("a length in steps");
    let up = if rest == half {
        match halves {
            Halves::Up => true,
            Halves::Down => false,
            Halves::Even => below % 2 != 0,
        }
    } else {
        rest > half
    };
    if up { below + 1 } else { below }
}

/// The walls of one axis in file order, with all lengths as integer multiples of a small unit that divides the step
/// and every typed length.
struct AxisOnStep {
    /// Their indices in the file.
    places: Vec<usize>,
    /// +1 or -1.
    signs: Vec<i64>,
    /// Typed lengths in units.
    typed: Vec<i128>,
    /// Each wall rounded independently, in steps.
    rounded: Vec<i64>,
    /// One step in units.
    step: i128,
}

impl AxisOnStep {
    fn new(walls: &[Wall], axis: Axis, step: &Exact, halves: Halves) -> AxisOnStep {
        let places = walls_of(walls, axis);
        let mut unit = step.denom().clone();
        for &place in &places {
            let denominator = walls[place].feet.denom();
            if !(&unit % denominator).is_zero() {
                unit *= denominator;
            }
        }
        let unit = Exact::from_integer(unit);
        let in_units = |feet: &Exact| {
            let units = feet * &unit;
            assert!(units.is_integer());
            units.to_integer().to_i128().expect("a length in units")
        };
        AxisOnStep {
            signs: places.iter().map(|&place| walls[place].direction.sign()).collect(),
            typed: places.iter().map(|&place| in_units(&walls[place].feet)).collect(),
            rounded: places
                .iter()
                .map(|&place| rounded(&walls[place].feet, step, halves))
                .collect(),
            step: in_units(step),
            places,
        }
    }

    /// The squared change from the typed length if this wall is the given number of steps long.
    fn square(&self, at: usize, steps: i64) -> i128 {
        let length = self.step.checked_mul(i128::from(steps)).expect("a length in units");
        let change = length - self.typed[at];
        change.checked_mul(change).expect("a square")
    }

    fn misclosure(&self) -> i64 {
        self.signs.iter().zip(&self.rounded).map(|(sign, own)| sign * own).sum()
    }
}

/// Lists every way to assign the walls from index `lengths.len()` on a length within the window, and keeps those
/// that close with the least sum of squares.
fn list_closings(
    axis: &AxisOnStep,
    window: i64,
    lengths: &mut Vec<i64>,
    misclosure: i64,
    squares: i128,
    best: &mut (i128, Vec<Vec<i64>>),
) {
    let at = lengths.len();
    if squares > best.0 {
        return;
    }
    if at == axis.rounded.len() {
        if misclosure == 0 {
            if squares < best.0 {
                *best = (squares, Vec::new());
            }
            best.1.push(lengths.clone());
        }
        return;
    }
    for steps in axis.rounded[at] - window..=axis.rounded[at] + window {
        if steps < 0 {
            continue;
        }
        lengths.push(steps);
        let misclosure = misclosure + axis.signs[at] * steps;
        let squares = squares + axis.square(at, steps);
        list_closings(axis, window, lengths, misclosure, squares, best);
        lengths.pop();
    }
}

/// All nearest closings of one axis, by listing. The window grows until no wall is at its edge: the problem is
/// convex, so a closing that is best and well inside the window is the best of all.
fn nearest_by_listing(axis: &AxisOnStep) -> Vec<Vec<i64>> {
    let mut window = 2;
    loop {
        let mut best = (i128::MAX, Vec::new());
        list_closings(axis, window, &mut Vec::new(), 0, 0, &mut best);
        let inside = |lengths: &Vec<i64>| {
            lengths.iter().zip(&axis.rounded).all(|(steps, own)| (steps - own).abs() < window)
        };
        if !best.1.is_empty() && best.1.iter().all(inside) {
            return best.1;
        }
        window += 1;
    }
}

/// All nearest closings of one axis, by a table: for each wall and each partial misclosure, the least sum of
/// squares with which the remaining walls bring it to zero.
fn nearest_by_table(axis: &AxisOnStep) -> Vec<Vec<i64>> {
    let count = axis.rounded.len();
    let start = axis.misclosure();
    let mut window = 2;
    loop {
        let reach = start.abs() + window * i64::try_from(count).expect("a count");
        let column = |misclosure: i64| usize::try_from(misclosure + reach).expect("a column");
        let columns = column(reach) + 1;
        let mut table: Vec<Vec<Option<i128>>> = vec![vec![None; columns]; count + 1];
        table[count][column(0)] = Some(0);

        // what a move of this wall costs from here on, if it is allowed and can still close
        let onward = |table: &[Vec<Option<i128>>], at: usize, here: i64, steps: i64| {
            let length = axis.rounded[at] + steps;
            let next = here + axis.signs[at] * steps;
            if length < 0 || next.abs() > reach {
                return None;
            }
            Some(table[at + 1][column(next)]? + axis.square(at, length))
        };

        for at in (0..count).rev() {
            for here in -reach..=reach {
                table[at][column(here)] =
                    (-window..=window).filter_map(|steps| onward(&table, at, here, steps)).min();
            }
        }

        if table[0][column(start)].is_some() {
            // every walk through the table along which nothing is lost
            let mut walks: Vec<(i64, Vec<i64>)> = vec![(start, Vec::new())];
            for at in 0..count {
                let mut longer = Vec::new();
                for (here, moves) in walks {
                    let least = table[at][column(here)];
                    for steps in -window..=window {
                        if onward(&table, at, here, steps) == least {
                            let mut moves = moves.clone();
                            moves.push(steps);
                            longer.push((here + axis.signs[at] * steps, moves));
                        }
                    }
                }
                walks = longer;
                if walks.len() > MOST_LISTED {
                    return Vec::new();
                }
            }
            if walks.iter().flat_map(|walk| &walk.1).all(|steps| steps.abs() < window) {
                let lengths = |(_, moves): (i64, Vec<i64>)| {
                    axis.rounded.iter().zip(moves).map(|(own, steps)| own + steps).collect()
                };
                return walks.into_iter().map(lengths).collect();
            }
        }
        window *= 2;
    }
}

/// A closing on a step.
#[derive(Clone, Debug)]
pub struct Closing {
    /// The closed lengths in file order.
    pub lengths: Vec<Exact>,
    /// The area.
    pub area: Exact,
    /// The length of wall moved away from its rounded length, counted once per step.
    moved: Exact,
}

/// All closings on a step that are nearest to the typed lengths, in order of preference: the least length of wall
/// moved, then the area nearest to the measured area, then the larger area.
///
/// An axis whose rounded walls close has only that closing.
fn closings_by(
    walls: &[Wall],
    step: &Exact,
    halves: Halves,
    nearest: fn(&AxisOnStep) -> Vec<Vec<i64>>,
) -> Vec<Closing> {
    let directions = directions_of(walls);
    let by_axis = AXES.map(|axis| {
        let axis = AxisOnStep::new(walls, axis, step, halves);
        let ways = if axis.misclosure() == 0 { vec![axis.rounded.clone()] } else { nearest(&axis) };
        (axis, ways)
    });
    let [(north, north_ways), (east, east_ways)] = by_axis;
    if north_ways.len() * east_ways.len() > MOST_LISTED {
        return Vec::new();
    }
    let mut all = Vec::new();
    for north_way in &north_ways {
        for east_way in &east_ways {
            let mut lengths = vec![Exact::zero(); walls.len()];
            let mut moved = Exact::zero();
            for (axis, way) in [(&north, north_way), (&east, east_way)] {
                for ((&place, &steps), own) in axis.places.iter().zip(way).zip(&axis.rounded) {
                    lengths[place] = whole(steps) * step;
                    moved += whole((steps - own).abs()) * &walls[place].feet;
                }
            }
            let area = area(&directions, &lengths);
            all.push(Closing { lengths, area, moved });
        }
    }
    let measured = as_measured(walls);
    let off = |closing: &Closing| (&closing.area - &measured).abs();
    all.sort_by(|one, other| {
        let by_moved = one.moved.cmp(&other.moved);
        let by_area = by_moved.then_with(|| off(one).cmp(&off(other)));
        by_area.then_with(|| other.area.cmp(&one.area))
    });
    all
}

/// The distance between two numbers.
pub fn distance(one: &Exact, other: &Exact) -> Exact {
    (one - other).abs()
}

/// The most closings that are listed.
const MOST_LISTED: usize = 20_000;

/// All closings on a step that are equally near to the typed lengths, the preferred one first, by a table over the
/// partial misclosure, for outlines of any size; `None` if there are too many to list.
pub fn nearest_closings(walls: &[Wall], step: &Exact, halves: Halves) -> Vec<Closing> {
    closings_by(walls, step, halves, nearest_by_table)
}

/// The closed lengths on a step in file order, and the area, found by listing all closings. For small outlines (up
/// to about 14 sides).
pub fn on_step(walls: &[Wall], step: &Exact, halves: Halves) -> (Vec<Exact>, Exact) {
    let first = closings_by(walls, step, halves, nearest_by_listing).swap_remove(0);
    (first.lengths, first.area)
}

/// The same as [`on_step`] by a table over the partial misclosure, for outlines of any size.
pub fn on_step_by_table(walls: &[Wall], step: &Exact, halves: Halves) -> (Vec<Exact>, Exact) {
    let first = nearest_closings(walls, step, halves).swap_remove(0);
    (first.lengths, first.area)
}

// ------------------------------------------------------------------------ range and widest

/// Whether an outline in integer units closes and neither crosses nor touches itself, with more than `gap` units
/// (which may be 0) between any two walls that are not neighbors.
///
/// A wall of length 0 is dropped. Neighbors in the same direction are one wall; neighbors in opposite directions
/// touch.
pub fn clear_of_itself(directions: &[Direction], lengths: &[i64], gap: i64) -> bool {
    let mut sides: Vec<(Direction, i64)> =
        directions.iter().copied().zip(lengths.iter().copied()).collect();
    if sides.iter().any(|&(_, length)| length < 0) {
        return false;
    }
    sides.retain(|&(_, length)| length > 0);
    let mut at = 0;
    while at < sides.len() {
        let next = (at + 1) % sides.len();
        if next != at && sides[at].0 == sides[next].0 {
            sides[at].1 += sides[next].1;
            sides.remove(next);
            at = 0;
        } else {
            at += 1;
        }
    }
    let count = sides.len();
    if count < 4 {
        return false;
    }
    if (0..count).any(|at| sides[at].0.axis() == sides[(at + 1) % count].0.axis()) {
        return false;
    }

    // every side as a box without width: lowest and highest east, lowest and highest north
    let mut boxes = Vec::new();
    let (mut east, mut north) = (0_i64, 0_i64);
    for &(direction, length) in &sides {
        let (from_east, from_north) = (east, north);
        match direction.axis() {
            Axis::NorthSouth => north += direction.sign() * length,
            Axis::EastWest => east += direction.sign() * length,
        }
        boxes.push((
            from_east.min(east),
            from_east.max(east),
            from_north.min(north),
            from_north.max(north),
        ));
    }
    if (east, north) != (0, 0) {
        return false;
    }
    for one in 0..count {
        for other in one + 1..count {
            if other == one + 1 || (one == 0 && other == count - 1) {
                continue; // neighbors at a right angle share their corner and nothing else
            }
            let (a, b) = (boxes[one], boxes[other]);
            let apart_east = a.0.max(b.0) - a.1.min(b.1);
            let apart_north = a.2.max(b.2) - a.3.min(b.3);
            if apart_east <= gap && apart_north <= gap {
                return false;
            }
        }
    }
    true
}

/// The whole-foot lengths strictly less than 1 ft from a typed length.
fn whole_feet_near(feet: &Exact) -> Vec<i64> {
    let below = feet.floor().to_integer().to_i64().expect("a length in feet");
    (below - 2..=below + 2)
        .filter(|&length| length >= 0 && (whole(length) - feet).abs() < Exact::one())
        .collect()
}

/// Every way in which the walls of one axis close in whole feet, with as few walls as possible farther than `limit`
/// from their typed lengths.
fn closing_ways(walls: &[Wall], axis: Axis, limit: &Exact) -> Vec<Vec<i64>> {
    // all ways to choose a length for each wall: (lengths so far, northings less southings, walls
    // against the rounding)
    let mut ways: Vec<(Vec<i64>, i64, usize)> = vec![(Vec::new(), 0, 0)];
    for place in walls_of(walls, axis) {
        let wall = &walls[place];
        let mut longer = Vec::new();
        for length in whole_feet_near(&wall.feet) {
            let against = usize::from((whole(length) - &wall.feet).abs() > *limit);
            for (lengths, misclosure, count) in &ways {
                let mut lengths = lengths.clone();
                lengths.push(length);
                longer.push((
                    lengths,
                    misclosure + wall.direction.sign() * length,
                    count + against,
                ));
            }
        }
        ways = longer;
    }
    ways.retain(|&(_, misclosure, _)| misclosure == 0);
    let fewest = ways.iter().map(|&(_, _, count)| count).min();
    ways.retain(|&(_, _, count)| Some(count) == fewest);
    ways.into_iter().map(|(lengths, _, _)| lengths).collect()
}

/// The area in square feet of an outline in whole feet, summed from strips under each wall that runs east or west.
fn area_in_whole_feet(directions: &[Direction], lengths: &[i64]) -> i64 {
    let mut north = 0;
    let mut area = 0;
    for (direction, length) in directions.iter().zip(lengths) {
        let run = direction.sign() * length;
        match direction.axis() {
            Axis::NorthSouth => north += run,
            Axis::EastWest => area += run * north,
        }
    }
    area.abs()
}

fn lowest_and_highest(walls: &[Wall], limit: &Exact) -> Option<(Exact, Exact)> {
    let directions = directions_of(walls);
    let places = AXES.map(|axis| walls_of(walls, axis));
    let ways = AXES.map(|axis| closing_ways(walls, axis, limit));
    let mut areas = Vec::new();
    let mut lengths = vec![0; walls.len()];
    for along in &ways[0] {
        for across in &ways[1] {
            for (&place, &length) in places[0].iter().zip(along) {
                lengths[place] = length;
            }
            for (&place, &length) in places[1].iter().zip(across) {
                lengths[place] = length;
            }
            if clear_of_itself(&directions, &lengths, 0) {
                areas.push(area_in_whole_feet(&directions, &lengths));
            }
        }
    }
    let lowest = *areas.iter().min()?;
    let highest = *areas.iter().max()?;
    Some((whole(lowest), whole(highest)))
}

/// The lowest and highest area of whole-foot outlines that close, each wall strictly less than 1 ft from its typed
/// length and as few walls as possible (on each axis) farther than 1/2 ft + `reach` from it. Outlines that cross or
/// touch themselves are left out; `None` if none remains.
pub fn range(walls: &[Wall], reach: &Exact) -> Option<(Exact, Exact)> {
    lowest_and_highest(walls, &(Exact::one() / whole(2) + reach))
}

/// The same as [`range`], with any wall allowed to be rounded the wrong way.
pub fn widest(walls: &[Wall]) -> Option<(Exact, Exact)> {
    // every candidate is less than 1 ft from its typed length, so none counts as against the rounding
    lowest_and_highest(walls, &Exact::one())
}

// ------------------------------------------------------------------------------------ faces

/// The area after every wall of the outline, closed as measured, is moved outward by its own thickness (negative:
/// inward); corners are where the moved walls meet. Two walls in one line with different thicknesses are joined by
/// a square jog. `None` if a wall vanishes or reverses.
pub fn moved(walls: &[Wall], thickness: &[Exact]) -> Option<Exact> {
    assert_eq!(walls.len(), thickness.len(), "one thickness for each wall");
    let count = walls.len();
    let directions = directions_of(walls);
    let lengths = closed_lengths(walls);
    if lengths.iter().any(|length| !length.is_positive()) {
        return None;
    }
    let ring = corners(&directions, &lengths);
    let inside = signed_area(&ring);
    if inside.is_zero() {
        return None;
    }
    // where the walk has the inside on its left, outward is to the right
    let outward = if inside.is_positive() { whole(-1) } else { whole(1) };

    // the line on which each moved wall lies: its place east (north-south walls) or north
    let lines: Vec<Exact> = (0..count)
        .map(|at| {
            let (left_east, left_north) = directions[at].left();
            let shift = &thickness[at] * &outward;
            match directions[at].axis() {
                Axis::NorthSouth => &ring[at].0 + shift * whole(left_east),
                Axis::EastWest => &ring[at].1 + shift * whole(left_north),
            }
        })
        .collect();

    // how far along wall `at` the corner lies that it has with its neighbor
    let meet = |at: usize, neighbor: usize, corner: &(Exact, Exact)| {
        if directions[at].axis() != directions[neighbor].axis() {
            Some(lines[neighbor].clone())
        } else if directions[at] == directions[neighbor] {
            Some(match directions[at].axis() {
                Axis::NorthSouth => corner.1.clone(),
                Axis::EastWest => corner.0.clone(),
            })
        } else {
            None
        }
    };

    let mut moved_ring = Vec::new();
    for at in 0..count {
        let from = meet(at, (at + count - 1) % count, &ring[at])?;
        let to = meet(at, (at + 1) % count, &ring[at + 1])?;
        if !((&to - &from) * whole(directions[at].sign())).is_positive() {
            return None;
        }
        for along in [from, to] {
            moved_ring.push(match directions[at].axis() {
                Axis::NorthSouth => (lines[at].clone(), along),
                Axis::EastWest => (along, lines[at].clone()),
            });
        }
    }
    Some(signed_area(&moved_ring).abs())
}

// ----------------------------------------------------------------------------- random houses

/// Random houses: the same seed always gives the same house.
pub mod random_house {
    use super::{Direction, Exact, Wall, clear_of_itself, walls_of};
    use num_bigint::BigInt;

    /// Sixteenths of an inch in a foot.
    const FOOT: i64 = 192;
    /// A half inch, in sixteenths.
    const TOLERANCE: i64 = 8;
    const MOST_SIDES: usize = 14;

    /// Splitmix64.
    struct Dice(u64);

    impl Dice {
        fn next(&mut self) -> u64 {
            self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
            let mut mixed = self.0;
            mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
            mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
            mixed ^ (mixed >> 31)
        }

        /// A number from `low` to `high`, inclusive, in whole grains.
        fn between(&mut self, low: i64, high: i64, grain: i64) -> i64 {
            let (first, last) = ((low + grain - 1).div_euclid(grain), high.div_euclid(grain));
            let choices = u64::try_from(last - first + 1).expect("low is not over high");
            (first + i64::try_from(self.next() % choices).expect("small")) * grain
        }

        /// True once in the given number of draws, on average.
        fn once_in(&mut self, throws: u64) -> bool {
            self.next().is_multiple_of(throws)
        }
    }

    fn sixteenths(number: i64) -> Exact {
        Exact::new(BigInt::from(number), BigInt::from(FOOT))
    }

    /// The sides between corners (east, north), or `None` if two neighbors are not at a right
    /// angle.
    fn sides(corners: &[(i64, i64)]) -> Option<Vec<(Direction, i64)>> {
        let mut all: Vec<(Direction, i64)> = Vec::new();
        for (at, from) in corners.iter().enumerate() {
            let to = corners[(at + 1) % corners.len()];
            let side = match (to.0 - from.0, to.1 - from.1) {
                (0, north) if north > 0 => (Direction::North, north),
                (0, north) if north < 0 => (Direction::South, -north),
                (east, 0) if east > 0 => (Direction::East, east),
                (east, 0) if east < 0 => (Direction::West, -east),
                _ => return None,
            };
            all.push(side);
        }
        let right_angles =
            (0..all.len()).all(|at| all[at].0.axis() != all[(at + 1) % all.len()].0.axis());
        right_angles.then_some(all)
    }

    /// Whether every wall is 3 ft to 60 ft or a jog of 3 in to 2 ft, and no two walls that are
    /// not neighbors come within 3 in of each other.
    fn is_house(corners: &[(i64, i64)]) -> bool {
        let Some(sides) = sides(corners) else {
            return false;
        };
        let (directions, lengths): (Vec<Direction>, Vec<i64>) = sides.into_iter().unzip();
        lengths.iter().all(|length| {
            (3 * FOOT..=60 * FOOT).contains(length) || (FOOT / 4..=2 * FOOT).contains(length)
        }) && clear_of_itself(&directions, &lengths, FOOT / 4 - 1)
    }

    /// Tries once to give a wall a notch or a bump, in the middle or at one end.
    fn carve(dice: &mut Dice, corners: &[(i64, i64)], grain: i64) -> Vec<(i64, i64)> {
        let count = corners.len();
        let at = usize::try_from(dice.between(0, i64::try_from(count).expect("few") - 1, 1))
            .expect("not negative");
        let (from, to) = (corners[at], corners[(at + 1) % count]);
        let length = (to.0 - from.0).abs() + (to.1 - from.1).abs();
        let ahead = ((to.0 - from.0).signum(), (to.1 - from.1).signum());
        let left = (-ahead.1, ahead.0);
        let mut depth = if dice.once_in(3) {
            dice.between(FOOT / 4, 2 * FOOT, grain)
        } else {
            dice.between(3 * FOOT, 16 * FOOT, grain)
        };
        if dice.once_in(2) {
            depth = -depth;
        }
        let spot = |along: i64, aside: i64| {
            (from.0 + ahead.0 * along + left.0 * aside, from.1 + ahead.1 * along + left.1 * aside)
        };
        let one = dice.between(0, length, grain);
        let other = dice.between(0, length, grain);
        let (near, far) = (one.min(other), one.max(other));

        let mut carved = corners[..at].to_vec();
        match dice.next() % 3 {
            0 => {
                // from the start of the wall: its first corner moves
                carved.extend([spot(0, depth), spot(far, depth), spot(far, 0)]);
                carved.extend(&corners[at + 1..]);
            }
            1 => {
                // to the end of the wall: its last corner moves
                carved.extend([from, spot(near, 0), spot(near, depth)]);
                if at + 1 < count {
                    carved.push(spot(length, depth));
                    carved.extend(&corners[at + 2..]);
                } else {
                    carved[0] = spot(length, depth);
                }
            }
            _ => {
                carved.extend([
                    from,
                    spot(near, 0),
                    spot(near, depth),
                    spot(far, depth),
                    spot(far, 0),
                ]);
                carved.extend(&corners[at + 1..]);
            }
        }
        carved
    }

    fn walls(sides: &[(Direction, i64)]) -> Vec<Wall> {
        sides
            .iter()
            .map(|&(direction, length)| Wall {
                direction,
                feet: sixteenths(length),
                tolerance: sixteenths(TOLERANCE),
            })
            .collect()
    }

    fn closing_sides(dice: &mut Dice) -> Vec<(Direction, i64)> {
        // half of the houses in sixteenths of an inch, the others in whole inches, 3 in, 6 in
        let grain = [1, 1, 1, 1, 16, 16, 48, 96][usize::try_from(dice.next() % 8).expect("small")];
        let width = dice.between(12 * FOOT, 60 * FOOT, grain);
        let height = dice.between(12 * FOOT, 60 * FOOT, grain);
        let mut corners = vec![(0, 0), (width, 0), (width, height), (0, height)];
        let wanted = 4 + 2 * usize::try_from(dice.next() % 6).expect("small");
        assert!(wanted <= MOST_SIDES);
        for _ in 0..400 {
            if corners.len() >= wanted {
                break;
            }
            let carved = carve(dice, &corners, grain);
            if carved.len() <= wanted && is_house(&carved) {
                corners = carved;
            }
        }
        if dice.once_in(2) {
            corners.reverse();
        }
        let start = usize::try_from(dice.next() % 64).expect("small") % corners.len();
        corners.rotate_left(start);
        assert!(is_house(&corners));
        sides(&corners).expect("a house has right angles")
    }

    /// A right-angled outline of 4 to 14 sides that closes exactly and does not touch itself, in sixteenths of an
    /// inch, from a random corner and in a random direction.
    pub fn house(seed: u64) -> Vec<Wall> {
        walls(&closing_sides(&mut Dice(seed)))
    }

    /// The same house with each wall misread by up to its tolerance, so that the misclosure is at most the sum of
    /// the tolerances. Closed as measured it still does not touch itself.
    pub fn with_slack(seed: u64) -> Vec<Wall> {
        let mut dice = Dice(seed);
        let sides = closing_sides(&mut dice);
        loop {
            let read: Vec<(Direction, i64)> = sides
                .iter()
                .map(|&(direction, length)| {
                    (direction, length + dice.between(-TOLERANCE, TOLERANCE, 1))
                })
                .collect();
            let walls = walls(&read);
            // all tolerances are equal, so each axis is closed by equal shares; in units of a
            // sixteenth divided by the walls of both axes the closed lengths are whole
            let mut closed = vec![0; read.len()];
            let counts =
                super::AXES.map(|axis| i64::try_from(walls_of(&walls, axis).len()).expect("few"));
            let unit = counts[0] * counts[1];
            for (axis, count) in super::AXES.into_iter().zip(counts) {
                let places = walls_of(&walls, axis);
                let misclosure: i64 =
                    places.iter().map(|&place| read[place].0.sign() * read[place].1).sum();
                for &place in &places {
                    let share = misclosure * (unit / count) * read[place].0.sign();
                    closed[place] = read[place].1 * unit - share;
                }
            }
            if clear_of_itself(&super::directions_of(&walls), &closed, 0) {
                return walls;
            }
        }
    }
}
