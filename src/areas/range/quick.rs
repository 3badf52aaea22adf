//! A fast path for [`range`](crate::areas::range): outlines with few walls, all along the axes, computed without
//! allocating.
//!
//! The lowest and the highest area are searched for among all outlines, even those that cross themselves. If neither of
//! the two outlines found crosses or touches itself, no other can be lower or higher. Everything else is left to the
//! search of the parent module, which gives the same answer.
#![expect(
    clippy::integer_division,
    reason = "numbers of combinations, and the next of equally many bits, divide without a remainder"
)]

use crate::areas::closings::RoundingFreedom;
use crate::areas::range::Range;
use crate::geometry::compass::Axis;
use crate::geometry::outline::{Vector, are_apart};
use crate::geometry::traverse::Shape;
use crate::house::wall_moves::AtFace;
use crate::units::area::Area;
use crate::units::length::{Length, Step};

/// The most walls along one axis.
const MOST_LEGS: usize = 16;
const MOST_SIDES: usize = 2 * MOST_LEGS;
/// The most moves on one axis, and the most choices of them that are tried.
const MOST_MOVES: usize = 10;
const MOST_CHOICES: usize = 128;

/// The closings of one axis, as [`AxisClosings`](crate::areas::closings::AxisClosings) with as few moves as possible.
struct Closings {
    side: [usize; MOST_LEGS],
    sign: [i64; MOST_LEGS],
    /// The length of each leg in steps.
    length: [i64; MOST_LEGS],
    legs: usize,
    /// The leg that each move changes, and by how many steps.
    moves: [(usize, i64); MOST_LEGS],
    count: usize,
    choose: usize,
}

/// The two lengths of a wall that is `above` longer than a whole step: by how many steps it is rounded, the change to
/// its other length, and whether both lengths follow the rule.
fn candidate(above: i64, unit: i64, reading: Option<i64>) -> (i64, i64, bool) {
    if above == 0 {
        return (0, 0, false);
    }
    let Some(reading) = reading else { return (0, 1, true) };
    let within = |distance: i64| 2 * distance <= unit + 2 * reading;
    match (within(above), within(unit - above)) {
        (false, true) => (1, -1, false),
        (true, high) => (0, 1, high),
        (false, false) => (0, 1, false),
    }
}

/// The whole steps in a length. The foot, the usual unit, is written as a constant so that the compiler needs no
/// division.
fn whole_steps(length: i64, unit: i64) -> i64 {
    if unit == Length::FOOT.nm() {
        length.div_euclid(Length::FOOT.nm())
    } else {
        length.div_euclid(unit)
    }
}

impl Closings {
    /// The closings of one axis; `None` where there are too many walls or moves, a wall is not along an axis, or the
    /// axis cannot close.
    fn of(at: &AtFace, axis: Axis, unit: i64, reading: Option<i64>) -> Option<Closings> {
        let mut closings = Closings {
            side: [0; MOST_LEGS],
            sign: [0; MOST_LEGS],
            length: [0; MOST_LEGS],
            legs: 0,
            moves: [(0, 0); MOST_LEGS],
            count: 0,
            choose: 0,
        };
        let mut above = [0_i64; MOST_LEGS];
        let (mut miss, mut up, mut down) = (0_i64, 0_i64, 0_i64);
        for (side, one) in at.traverse.sides.iter().enumerate() {
            let Shape::Straight { direction, length } = one.shape else { return None };
            if direction.axis() != axis {
                continue;
            }
            let leg = closings.legs;
            if leg == MOST_LEGS {
                return None;
            }
            closings.legs += 1;
            let steps = whole_steps(length, unit);
            let (sign, left) = (direction.sign(), length - steps * unit);
            let (first, change, is_free) = candidate(left, unit, reading);
            above[leg] = left;
            closings.side[leg] = side;
            closings.sign[leg] = sign;
            closings.length[leg] = steps + first;
            miss += sign * (steps + first);
            if is_free {
                closings.moves[closings.count] = (leg, change);
                closings.count += 1;
                *(if sign == change { &mut up } else { &mut down }) += 1;
            }
        }
        closings.set_out(-miss, (up, down), |leg| candidate(above[leg], unit, reading))?;
        if closings.count > MOST_MOVES {
            return None;
        }
        if 2 * closings.choose > closings.count {
            closings.turn_round(|_, _| true);
            closings.choose = closings.count - closings.choose;
        }
        Some(closings)
    }

    /// Makes the moves that have to be made, so that any `choose` of the rest close the axis.
    fn set_out(
        &mut self,
        steps: i64,
        (up, down): (i64, i64),
        candidate: impl Fn(usize) -> (i64, i64, bool),
    ) -> Option<()> {
        if (-down..=up).contains(&steps) {
            // All free moves backward are made first; then each is either a move forward or undoes one backward.
            let sign = self.sign;
            self.turn_round(|leg, change| sign[leg] != change);
            self.choose = usize::try_from(steps + down).ok()?;
            return Some(());
        }
        // All free moves in the right direction, then as few as possible against the rule.
        let sense = steps.signum();
        for &(leg, change) in &self.moves[..self.count] {
            if self.sign[leg] * change == sense {
                self.length[leg] += change;
            }
        }
        self.count = 0;
        for leg in 0..self.legs {
            let (_, change, is_free) = candidate(leg);
            if !is_free && self.sign[leg] * change == sense {
                self.moves[self.count] = (leg, change);
                self.count += 1;
            }
        }
        self.choose = usize::try_from(if sense > 0 { steps - up } else { -steps - down }).ok()?;
        (self.choose <= self.count).then_some(())
    }

    /// Makes the chosen moves, and turns each of them into the move that undoes it.
    fn turn_round(&mut self, is_chosen: impl Fn(usize, i64) -> bool) {
        for (leg, change) in &mut self.moves[..self.count] {
            if is_chosen(*leg, *change) {
                self.length[*leg] += *change;
                *change = -*change;
            }
        }
    }

    fn moves(&self) -> &[(usize, i64)] {
        &self.moves[..self.count]
    }

    /// The number of ways to choose the moves.
    fn choices(&self) -> usize {
        (0..self.choose).fold(1, |number, i| number * (self.count - i) / (i + 1))
    }

    /// Twice the middle of each side along the axis, in steps and without any move, and where the sides end.
    fn doubled_middles(&self, sides: usize) -> ([i64; MOST_SIDES], i64) {
        let mut middles = [0; MOST_SIDES];
        for leg in 0..self.legs {
            middles[self.side[leg]] = self.sign[leg] * self.length[leg];
        }
        let mut at = 0;
        for middle in &mut middles[..sides] {
            let part = *middle;
            *middle += 2 * at;
            at += part;
        }
        (middles, at)
    }

    /// Sets the components of the sides along the axis, after making the moves whose bits are set in `taken`.
    fn set(&self, axis: Axis, taken: u16, vectors: &mut [Vector; MOST_SIDES]) {
        for leg in 0..self.legs {
            *vectors[self.side[leg]].part(axis) = self.sign[leg] * self.length[leg];
        }
        for (one_move, &(leg, change)) in self.moves().iter().enumerate() {
            if taken >> one_move & 1 == 1 {
                *vectors[self.side[leg]].part(axis) += self.sign[leg] * change;
            }
        }
    }
}

/// What each move adds to twice the area, in square steps, like the table of the parent module.
struct Table {
    fixed: i64,
    gains: [i64; MOST_MOVES],
    fixed_by: [i64; MOST_MOVES],
    gains_by: [[i64; MOST_MOVES]; MOST_MOVES],
}

impl Table {
    fn of(outer: &Closings, inner: &Closings, along: i64, sides: usize) -> Table {
        let (middles, _) = outer.doubled_middles(sides);
        let (inner_middles, inner_end) = inner.doubled_middles(sides);
        let one = |leg: usize| inner.sign[leg] * inner.length[leg] * middles[inner.side[leg]];
        let mut table = Table {
            fixed: along * (0..inner.legs).map(one).sum::<i64>(),
            gains: [0; MOST_MOVES],
            fixed_by: [0; MOST_MOVES],
            gains_by: [[0; MOST_MOVES]; MOST_MOVES],
        };
        for (gain, &(leg, change)) in table.gains.iter_mut().zip(inner.moves()) {
            *gain = along * inner.sign[leg] * change * middles[inner.side[leg]];
        }
        for (one_move, &(leg, change)) in outer.moves().iter().enumerate() {
            let (side, moved) = (outer.side[leg], along * outer.sign[leg] * change);
            // A move shifts everything after it by a full step, and its own middle by half a step.
            table.fixed_by[one_move] = moved * (2 * inner_end - inner_middles[side]);
            for (by, &(leg, change)) in table.gains_by[one_move].iter_mut().zip(inner.moves()) {
                let here = inner.side[leg];
                let after = i64::from(here >= side) + i64::from(here > side);
                *by = inner.sign[leg] * change * moved * after;
            }
        }
        table
    }

    /// Twice the area, and what each inner move then adds to it, after making these outer moves.
    fn with(&self, taken: u16) -> (i64, [i64; MOST_MOVES]) {
        let (mut sum, mut gains, mut left) = (self.fixed, self.gains, taken);
        while left != 0 {
            let one_move = left.trailing_zeros() as usize;
            left &= left - 1;
            sum += self.fixed_by[one_move];
            for (gain, by) in gains.iter_mut().zip(&self.gains_by[one_move]) {
                *gain += by;
            }
        }
        (sum, gains)
    }
}

/// Twice an area in square steps, with the outer and the inner moves that give it.
type Found = (i64, u16, u16);

/// The least and the greatest area over all choices.
fn extremes(table: &Table, outer: &Closings, inner: &Closings) -> (Found, Found) {
    let (mut least, mut most): (Found, Found) = ((i64::MAX, 0, 0), (i64::MIN, 0, 0));
    let (n, choose) = (inner.count, inner.choose);
    let mut taken: u16 = (1 << outer.choose) - 1;
    let end: u16 = 1 << outer.count;
    loop {
        let (sum, gains) = table.with(taken);
        // The moves by what they gain, the least first.
        let mut order = [(0_i64, 0_u8); MOST_MOVES];
        if choose > 0 {
            for (i, &gain) in (0_u8..).zip(&gains[..n]) {
                let mut at = usize::from(i);
                while at > 0 && order[at - 1].0 > gain {
                    order[at] = order[at - 1];
                    at -= 1;
                }
                order[at] = (gain, i);
            }
        }
        let with = |some: &[(i64, u8)]| -> Found {
            let add =
                |(value, inner): (i64, u16), &(gain, i): &(i64, u8)| (value + gain, inner | 1 << i);
            let (value, inner) = some.iter().fold((sum, 0), add);
            (value, taken, inner)
        };
        let (low, high) = (with(&order[..choose]), with(&order[n - choose..n]));
        if low.0 < least.0 {
            least = low;
        }
        if high.0 > most.0 {
            most = high;
        }
        if outer.choose == 0 {
            return (least, most);
        }
        // The next number with as many bits set.
        let lowest = taken & taken.wrapping_neg();
        let ripple = taken + lowest;
        taken = (((ripple ^ taken) >> 2) / lowest) | ripple;
        if taken >= end {
            return (least, most);
        }
    }
}

/// The range; `None` where the search of the parent module is needed.
pub(super) fn range(at: &AtFace, step: Step, freedom: RoundingFreedom) -> Option<Range> {
    let sides = at.traverse.sides.len();
    if sides > MOST_SIDES {
        return None;
    }
    let unit = step.length().nm();
    let reading = match freedom {
        RoundingFreedom::Any => None,
        RoundingFreedom::WithinReading(reading) => Some(reading.nm()),
    };
    let north = Closings::of(at, Axis::North, unit, reading)?;
    let east = Closings::of(at, Axis::East, unit, reading)?;
    let is_north_outer = north.choices() <= east.choices();
    let (outer, inner) = if is_north_outer { (&north, &east) } else { (&east, &north) };
    if outer.choices() > MOST_CHOICES {
        return None;
    }
    // With the inside on the left, growing east adds the area below, growing north the area above.
    let turn = at.outline.turn();
    let along = if is_north_outer { -turn } else { turn };
    let (least, most) = extremes(&Table::of(outer, inner, along, sides), outer, inner);
    let (outer_axis, inner_axis) =
        if is_north_outer { (Axis::North, Axis::East) } else { (Axis::East, Axis::North) };
    let mut vectors = [Vector::default(); MOST_SIDES];
    for (value, outer_taken, inner_taken) in [least, most] {
        outer.set(outer_axis, outer_taken, &mut vectors);
        inner.set(inner_axis, inner_taken, &mut vectors);
        if value <= 0 || !are_apart(&vectors[..sides]) {
            return None;
        }
        if least.0 == most.0 {
            break;
        }
    }
    let square = i128::from(unit) * i128::from(unit);
    let area = |value: i64| Area::from_half_nm2(i128::from(value) * square);
    Some(Range { low: area(least.0), high: area(most.0) })
}

#[cfg(test)]
#[expect(clippy::panic, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;
    use crate::areas::range::OnSteps;
    use proptest::prelude::*;

    /// A house of towers side by side, every length in sixteenths of an inch.
    fn towers() -> impl Strategy<Value = String> {
        proptest::collection::vec((16_i64..2_000, 900_i64..6_000), 1..7).prop_map(|towers| {
            let length =
                |steps: i64| format!("{}' {} {}/16\"", steps / 192, steps % 192 / 16, steps % 16);
            let mut text = "level \"G\"\nliving \"H\"\n".to_owned();
            let (mut before, mut wide) = (0, 0);
            for &(width, height) in towers.iter().chain(&[(0, 0)]) {
                let way = if height > before { "north" } else { "south" };
                if height != before {
                    text.push_str(&format!("{way} {}\n", length((height - before).abs())));
                }
                if width > 0 {
                    text.push_str(&format!("east {}\n", length(width)));
                }
                (before, wide) = (height, wide + width);
            }
            text.push_str(&format!("west {}\n", length(wide)));
            text
        })
    }

    proptest! {
        #[test]
        fn what_is_found_without_lists_is_what_the_search_finds(
            text in towers(),
            reading in prop_oneof![Just(None), (0_i64..100_000_000).prop_map(Some)],
            is_half in any::<bool>(),
        ) {
            let house = crate::read::read("t.sides", &text);
            prop_assume!(house.is_ok());
            let Ok(house) = house else { return Ok(()) };
            let at = house.at_face(0, crate::house::Face::Outside);
            prop_assume!(at.is_ok());
            let Ok(at) = at else { return Ok(()) };
            let freedom = match reading {
                None => RoundingFreedom::Any,
                Some(nm) => RoundingFreedom::WithinReading(Length::from_nm(nm)),
            };
            let step = if is_half { Step::HalfFoot } else { Step::WholeFoot };
            if let Some(quick) = range(&at, step, freedom) {
                prop_assert_eq!(OnSteps::new(&at, step).range(freedom), Some(quick));
            }
        }
    }

    #[test]
    fn a_common_house_needs_no_lists() {
        let text = "level \"G\"\nliving \"H\"\nnorth 34' 1\"\neast 11' 7\"\nnorth 3' 8\"\neast 14' 10\"\nsouth 2' 4\"\neast 12' 3\"\nnorth 4' 1\"\neast 9' 2\"\nsouth 21' 7\"\nwest 8' 5\"\nsouth 17' 11\"\nwest 39' 5\"\n";
        let house = crate::read::read("t.sides", text).unwrap_or_else(|errors| panic!("{errors}"));
        let at = house.at_face(0, crate::house::Face::Outside).unwrap_or_else(|_| panic!());
        for freedom in
            [RoundingFreedom::Any, RoundingFreedom::WithinReading(Length::from_nm(45_720_000))]
        {
            assert!(range(&at, Step::WholeFoot, freedom).is_some());
        }
    }
}
