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

use std::ops::RangeInclusive;

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
///
/// Its numbers are as small as they can be.
#[derive(Clone, Copy, Debug)]
struct Closings {
    all: [Leg; MOST_LEGS],
    legs: usize,
    all_moves: [Move; MOST_LEGS],
    count: usize,
    choose: usize,
}

#[derive(Clone, Copy, Debug)]
struct Leg {
    /// In steps.
    length: i32,
    /// Where it lies on the other axis, in steps and without any move.
    across: i32,
    sign: i8,
    side: u8,
}

impl Leg {
    /// The component along the axis.
    fn run(&self) -> i32 {
        if self.sign > 0 { self.length } else { -self.length }
    }

    fn side(&self) -> usize {
        usize::from(self.side)
    }
}

/// A leg made longer or shorter by a step.
#[derive(Clone, Copy, Debug)]
struct Move {
    leg: u8,
    change: i8,
}

/// Which of its two lengths a wall may have: one that is moved by at most `reach` follows the rule.
#[derive(Clone, Copy)]
struct Freedom {
    unit: i64,
    /// At most a whole step.
    reach: i64,
}

impl Freedom {
    fn of(freedom: RoundingFreedom, unit: i64) -> Freedom {
        let reach = match freedom {
            RoundingFreedom::Any => unit,
            RoundingFreedom::WithinReading(reading) => (unit + 2 * reading.nm()).div_euclid(2),
        };
        Freedom { unit, reach }
    }

    /// The two lengths of a wall that is `above` longer than a whole step: by how many steps it is rounded, the change
    /// to its other length, and whether both lengths follow the rule.
    fn candidate(self, above: i64) -> (i64, i8, bool) {
        if above == 0 {
            return (0, 0, false);
        }
        match (above <= self.reach, self.unit - above <= self.reach) {
            (false, true) => (1, -1, false),
            (true, high) => (0, 1, high),
            (false, false) => (0, 1, false),
        }
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
    const EMPTY: Closings = Closings {
        all: [Leg { length: 0, across: 0, sign: 0, side: 0 }; MOST_LEGS],
        legs: 0,
        all_moves: [Move { leg: 0, change: 0 }; MOST_LEGS],
        count: 0,
        choose: 0,
    };

    /// Adds a wall with its rounded length; `None` where there are too many.
    fn add(&mut self, leg: Leg, change: Option<i8>) -> Option<()> {
        *self.all.get_mut(self.legs)? = leg;
        if let Some(change) = change {
            self.add_move(self.legs, change)?;
        }
        self.legs += 1;
        Some(())
    }

    /// Sets the moves out, now that all walls are known and `above` says how much longer than a whole step each is;
    /// `None` where there are too many moves or the axis cannot close.
    fn finish(&mut self, above: &[i64; MOST_LEGS], freedom: Freedom) -> Option<()> {
        let miss = i64::from(self.legs().iter().map(Leg::run).sum::<i32>());
        let (mut up, mut down) = (0, 0);
        for Move { leg, change } in &self.all_moves[..self.count] {
            let is_up = self.all[usize::from(*leg)].sign == *change;
            *(if is_up { &mut up } else { &mut down }) += 1;
        }
        self.set_out(-miss, (up, down), |leg| freedom.candidate(above[leg]))?;
        if self.count > MOST_MOVES {
            return None;
        }
        if 2 * self.choose > self.count {
            self.turn_round(|_, _| true);
            self.choose = self.count - self.choose;
        }
        Some(())
    }

    /// Makes the moves that have to be made, so that any `choose` of the rest close the axis.
    fn set_out(
        &mut self,
        steps: i64,
        (up, down): (i64, i64),
        candidate: impl Fn(usize) -> (i64, i8, bool),
    ) -> Option<()> {
        if (-down..=up).contains(&steps) {
            // All free moves backward are made first; then each is either a move forward or undoes one backward.
            self.turn_round(|leg, change| leg.sign != change);
            self.choose = usize::try_from(steps + down).ok()?;
            return Some(());
        }
        // All free moves in the right direction, then as few as possible against the rule.
        let is_right = |leg: &Leg, change: i8| i64::from(leg.sign * change) == steps.signum();
        self.turn_round(is_right);
        self.count = 0;
        for leg in 0..self.legs {
            let (_, change, is_free) = candidate(leg);
            if !is_free && is_right(&self.all[leg], change) {
                self.add_move(leg, change)?;
            }
        }
        self.choose = usize::try_from(if steps > 0 { steps - up } else { -steps - down }).ok()?;
        (self.choose <= self.count).then_some(())
    }

    fn add_move(&mut self, leg: usize, change: i8) -> Option<()> {
        self.all_moves[self.count] = Move { leg: u8::try_from(leg).ok()?, change };
        self.count += 1;
        Some(())
    }

    /// Makes the chosen moves, and turns each of them into the move that undoes it.
    fn turn_round(&mut self, is_chosen: impl Fn(&Leg, i8) -> bool) {
        for Move { leg, change } in &mut self.all_moves[..self.count] {
            let leg = &mut self.all[usize::from(*leg)];
            if is_chosen(leg, *change) {
                leg.length += i32::from(*change);
                *change = -*change;
            }
        }
    }

    fn legs(&self) -> &[Leg] {
        &self.all[..self.legs]
    }

    /// The leg that each move changes, and by how many steps along the axis.
    fn moves(&self) -> impl Iterator<Item = (&Leg, i64)> {
        self.all_moves[..self.count].iter().map(|one_move| {
            let leg = &self.all[usize::from(one_move.leg)];
            (leg, i64::from(leg.sign * one_move.change))
        })
    }

    /// The number of ways to choose the moves.
    fn choices(&self) -> usize {
        (0..self.choose).fold(1, |number, i| number * (self.count - i) / (i + 1))
    }

    /// Sets the components of the sides along the axis, after making the moves whose bits are set in `taken`.
    fn set(&self, axis: Axis, taken: u16, vectors: &mut [Vector; MOST_SIDES]) {
        for leg in self.legs() {
            *vectors[leg.side()].part(axis) = i64::from(leg.run());
        }
        for (one_move, (leg, by)) in self.moves().enumerate() {
            if taken >> one_move & 1 == 1 {
                *vectors[leg.side()].part(axis) += by;
            }
        }
    }
}

/// Notes where each leg lies on the other axis. Each side is a leg of one of the two.
fn set_across(one: &mut Closings, other: &mut Closings) {
    let (mut one_at, mut other_at) = (0, 0);
    let mut others = other.all[..other.legs].iter_mut().peekable();
    for leg in &mut one.all[..one.legs] {
        while let Some(before) = others.next_if(|before| before.side < leg.side) {
            before.across = one_at;
            other_at += before.run();
        }
        leg.across = other_at;
        one_at += leg.run();
    }
    others.for_each(|after| after.across = one_at);
}

/// Whether the walls are clear of each other whichever moves are made.
///
/// Along one axis the walk goes there and all the way back, and all walls of the way there lie on one side of all walls
/// of the way back, as in [`are_apart`]. Each move changes how far two walls are apart by a step, and no wall may
/// vanish. So it is enough that they are farther apart than there are moves.
fn stay_clear(north: &Closings, east: &Closings, sides: usize) -> bool {
    north.keep_their_walls()
        && east.keep_their_walls()
        && !north.turns_straight_back(sides)
        && !east.turns_straight_back(sides)
        && (north.goes_and_returns(east.choose) || east.goes_and_returns(north.choose))
}

impl Closings {
    /// Whether every wall keeps a length, whichever moves are made.
    fn keep_their_walls(&self) -> bool {
        let is_kept = |one: &Move| {
            let length = self.all[usize::from(one.leg)].length;
            length + i32::from(one.change) > 0
        };
        self.legs().iter().all(|leg| leg.length > 0)
            && self.all_moves[..self.count].iter().all(is_kept)
    }

    /// Whether a wall follows one along the same axis in the opposite direction.
    fn turns_straight_back(&self, sides: usize) -> bool {
        let Some(last) = self.legs().last() else { return true };
        let mut before = (last.sign, if last.side() + 1 == sides { 0 } else { MOST_SIDES });
        self.legs().iter().any(|leg| {
            let turns = before.1 == leg.side() && before.0 != leg.sign;
            before = (leg.sign, leg.side() + 1);
            turns
        })
    }

    /// Whether the walls of the way there are more than `moves` steps on one side of all walls of the way back.
    fn goes_and_returns(&self, moves: usize) -> bool {
        let Some(last) = self.legs().last() else { return false };
        let (mut before, mut turns) = (last.sign, 0);
        let (mut forth, mut back) = ((i32::MAX, i32::MIN), (i32::MAX, i32::MIN));
        for leg in self.legs() {
            turns += usize::from(before != leg.sign);
            before = leg.sign;
            let (low, high) = if leg.sign > 0 { &mut forth } else { &mut back };
            (*low, *high) = ((*low).min(leg.across), (*high).max(leg.across));
        }
        let moves = i32::try_from(moves).unwrap_or(i32::MAX);
        turns == 2 && (forth.0 - back.1 > moves || back.0 - forth.1 > moves)
    }
}

/// What each move adds to twice the area, in square steps, like the table of the parent module.
#[derive(Debug)]
struct Table {
    fixed: i64,
    gains: [i64; MOST_MOVES],
    fixed_by: [i64; MOST_MOVES],
    gains_by: [[i8; MOST_MOVES]; MOST_MOVES],
}

impl Table {
    const EMPTY: Table = Table {
        fixed: 0,
        gains: [0; MOST_MOVES],
        fixed_by: [0; MOST_MOVES],
        gains_by: [[0; MOST_MOVES]; MOST_MOVES],
    };

    /// Fills in an empty table.
    fn set_out(&mut self, outer: &Closings, inner: &Closings, along: i64) {
        let strip = |leg: &Leg| i64::from(leg.run()) * i64::from(leg.across);
        let sum: i64 = inner.legs().iter().map(strip).sum();
        let inner_end: i32 = inner.legs().iter().map(Leg::run).sum();
        self.fixed = 2 * along * sum;
        for (gain, (leg, by)) in self.gains.iter_mut().zip(inner.moves()) {
            *gain = 2 * along * by * i64::from(leg.across);
        }
        for (one_move, (leg, by)) in outer.moves().enumerate() {
            let moved = along * by;
            // A move shifts everything after it by a full step.
            self.fixed_by[one_move] = 2 * moved * i64::from(inner_end - leg.across);
            for (gain, (here, by)) in self.gains_by[one_move].iter_mut().zip(inner.moves()) {
                let after = if here.side > leg.side { 2 } else { 0 };
                *gain = if moved == by { after } else { -after };
            }
        }
    }

    /// Twice the area after making these outer moves and no inner ones.
    fn outer(&self, taken: u16) -> i64 {
        self.fixed + bits(taken).map(|one_move| self.fixed_by[one_move]).sum::<i64>()
    }

    /// Limits of what the inner moves add to that, whichever outer moves are made.
    fn limits(&self, outer: &Closings, inner: &Closings) -> (i64, i64) {
        let (low, high) = extremes_of((0, self.gains), inner);
        let more = by_outer(outer, inner);
        (low.0 - more, high.0 + more)
    }

    /// Twice the area, and what each inner move then adds to it, after making these outer moves.
    fn with(&self, taken: u16) -> (i64, [i64; MOST_MOVES]) {
        let (mut sum, mut gains) = (self.fixed, self.gains);
        for one_move in bits(taken) {
            sum += self.fixed_by[one_move];
            for (gain, by) in gains.iter_mut().zip(&self.gains_by[one_move]) {
                *gain += i64::from(*by);
            }
        }
        (sum, gains)
    }
}

/// By how much the outer moves change at most what the inner ones add: each of them changes each by two at most.
fn by_outer(outer: &Closings, inner: &Closings) -> i64 {
    i64::try_from(2 * outer.choose * inner.choose).unwrap_or(i64::MAX)
}

/// Twice an area in square steps, with the outer and the inner moves that give it.
type Found = (i64, u16, u16);

/// Every choice of `choose` out of `count` moves, as the bits of a number.
fn choices(count: usize, choose: usize) -> impl Iterator<Item = u16> {
    let end: u16 = 1 << count;
    let next = move |&taken: &u16| {
        // The next number with as many bits set.
        let lowest = taken & taken.wrapping_neg();
        let ripple = taken + lowest;
        let next = ((ripple ^ taken) >> 2).checked_shr(lowest.trailing_zeros())? | ripple;
        (next < end).then_some(next)
    };
    std::iter::successors(Some((1 << choose) - 1), next)
}

/// The positions of the bits of a number, the lowest first.
fn bits(mut left: u16) -> impl Iterator<Item = usize> {
    std::iter::from_fn(move || {
        let lowest = (left != 0).then(|| left.trailing_zeros() as usize)?;
        left &= left - 1;
        Some(lowest)
    })
}

/// The least and the greatest area over all choices.
fn extremes(few: &Few) -> (Found, Found) {
    let (outer, inner, table, limits) = (few.outer(), few.inner(), &few.table, few.limits);
    let (mut least, mut most): (Found, Found) = ((i64::MAX, 0, 0), (i64::MIN, 0, 0));
    for taken in choices(outer.count, outer.choose) {
        let sum = table.outer(taken);
        if least.0 <= sum + limits.0 && sum + limits.1 <= most.0 {
            continue;
        }
        let (low, high) = extremes_of(table.with(taken), inner);
        if low.0 < least.0 {
            least = (low.0, taken, low.1);
        }
        if high.0 > most.0 {
            most = (high.0, taken, high.1);
        }
    }
    (least, most)
}

/// The least and the greatest area over all choices of inner moves, each with its choice, given the area without any
/// and what each of them adds to it.
fn extremes_of(
    (sum, gains): (i64, [i64; MOST_MOVES]),
    inner: &Closings,
) -> ((i64, u16), (i64, u16)) {
    let (n, choose) = (inner.count, inner.choose);
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
    let add = |(value, taken): (i64, u16), &(gain, i): &(i64, u8)| (value + gain, taken | 1 << i);
    let with = |some: &[(i64, u8)]| some.iter().fold((sum, 0), add);
    (with(&order[..choose]), with(&order[n - choose..n]))
}

/// The closings of a space with few walls, all along the axes.
#[derive(Debug)]
pub(in crate::areas) struct Few {
    /// North, then east.
    closings: [Closings; 2],
    /// Which of the two is tried one by one.
    outer: usize,
    table: Table,
    /// Of the table.
    limits: (i64, i64),
    sides: usize,
    /// Whether no choice makes the walls cross or touch.
    stays_clear: bool,
    /// An area of a square step, in half of which twice an area is counted.
    square: i128,
}

impl Few {
    /// The closings of each of these spaces that is `wanted`; `None` where it is not, and where there are too many walls
    /// or choices, a wall is not along an axis, or an axis cannot close.
    pub(in crate::areas) fn of_all(
        spaces: &[AtFace],
        step: Step,
        freedom: RoundingFreedom,
        wanted: impl Fn(usize) -> bool,
    ) -> Vec<Option<Few>> {
        let unit = step.length().nm();
        let mut all = Vec::with_capacity(spaces.len());
        for (i, at) in spaces.iter().enumerate() {
            if !wanted(i) {
                all.push(None);
                continue;
            }
            // They are large, so they are copied once, from a constant, and set out where they stay.
            all.push(Some(Few::EMPTY));
            if let Some(last) = all.last_mut()
                && let Some(few) = last
                && few.set_out(at, Freedom::of(freedom, unit)).is_none()
            {
                *last = None;
            }
        }
        all
    }

    const EMPTY: Few = Few {
        closings: [Closings::EMPTY; 2],
        outer: 0,
        table: Table::EMPTY,
        limits: (0, 0),
        sides: 0,
        stays_clear: false,
        square: 0,
    };

    fn set_out(&mut self, at: &AtFace, freedom: Freedom) -> Option<()> {
        self.sides = at.traverse.sides.len();
        self.square = i128::from(freedom.unit) * i128::from(freedom.unit);
        self.close(at, freedom)?;
        let [north, east] = &mut self.closings;
        set_across(north, east);
        let [north, east] = &self.closings;
        self.stays_clear = stay_clear(north, east, self.sides);
        self.outer = usize::from(north.choices() > east.choices());
        if self.outer().choices() > MOST_CHOICES {
            return None;
        }
        // With the inside on the left, growing east adds the area below, growing north the area above.
        let turn = at.outline.turn();
        let along = if self.outer == 0 { -turn } else { turn };
        let (outer, inner) = (&self.closings[self.outer], &self.closings[1 - self.outer]);
        self.table.set_out(outer, inner, along);
        self.limits = self.table.limits(outer, inner);
        Some(())
    }

    /// Rounds the walls, and sets out the moves that close each axis.
    fn close(&mut self, at: &AtFace, freedom: Freedom) -> Option<()> {
        if self.sides > MOST_SIDES {
            return None;
        }
        let mut above = [[0_i64; MOST_LEGS]; 2];
        for (side, one) in (0_u8..).zip(&at.traverse.sides) {
            let Shape::Straight { direction, length } = one.shape else { return None };
            let axis = usize::from(direction.axis() == Axis::East);
            let closings = &mut self.closings[axis];
            let steps = whole_steps(length, freedom.unit);
            let rest = length - steps * freedom.unit;
            let (first, change, is_free) = freedom.candidate(rest);
            *above[axis].get_mut(closings.legs)? = rest;
            let sign = if direction.sign() > 0 { 1 } else { -1 };
            let length = i32::try_from(steps + first).ok()?;
            let leg = Leg { length, across: 0, sign, side };
            closings.add(leg, is_free.then_some(change))?;
        }
        self.closings[0].finish(&above[0], freedom)?;
        self.closings[1].finish(&above[1], freedom)
    }

    fn outer(&self) -> &Closings {
        &self.closings[self.outer]
    }

    fn inner(&self) -> &Closings {
        &self.closings[1 - self.outer]
    }

    fn area(&self, value: i64) -> Area {
        Area::from_half_nm2(i128::from(value) * self.square)
    }

    /// Whether an outline surely neither crosses nor touches itself, and has its inside on the same side as before.
    fn is_clear(&self, (value, outer_taken, inner_taken): Found) -> bool {
        value > 0
            && (self.stays_clear
                || are_apart(&self.vectors(outer_taken, inner_taken)[..self.sides]))
    }

    /// The sides in steps, with these moves made.
    fn vectors(&self, outer_taken: u16, inner_taken: u16) -> [Vector; MOST_SIDES] {
        let mut vectors = [Vector::default(); MOST_SIDES];
        self.outer().set(Axis::BOTH[self.outer], outer_taken, &mut vectors);
        self.inner().set(Axis::BOTH[1 - self.outer], inner_taken, &mut vectors);
        vectors
    }
}

/// The range; `None` where the search of the parent module is needed.
pub(super) fn range(few: &Few) -> Option<Range> {
    let (least, most) = extremes(few);
    let is_clear = few.is_clear(least) && (least.0 == most.0 || few.is_clear(most));
    is_clear.then(|| Range { low: few.area(least.0), high: few.area(most.0) })
}

/// The area of every outline, in ascending order. `None` where the search of the parent module is needed, or where there
/// are more than `most` outlines.
pub(super) fn areas(few: &Few, most: usize) -> Option<Vec<Area>> {
    let (outer, inner, table) = (few.outer(), few.inner(), &few.table);
    if outer.choices() * inner.choices() > most {
        return None;
    }
    let mut values: Vec<i64> = Vec::new();
    for taken in choices(outer.count, outer.choose) {
        let (sum, gains) = table.with(taken);
        for inner_taken in choices(inner.count, inner.choose) {
            let value = sum + bits(inner_taken).map(|one_move| gains[one_move]).sum::<i64>();
            let Err(place) = values.binary_search(&value) else { continue };
            if !few.is_clear((value, taken, inner_taken)) {
                return None;
            }
            values.insert(place, value);
        }
    }
    Some(values.into_iter().map(|value| few.area(value)).collect())
}

/// Whether some outline has an area in one of the ranges, which are in ascending order. `None` where that is not found
/// out quickly, or where there are more than `most` outlines.
pub(super) fn gives(few: &Few, wanted: &[RangeInclusive<Area>], most: usize) -> Option<bool> {
    let (outer, inner, table) = (few.outer(), few.inner(), &few.table);
    if outer.choices() * inner.choices() > most {
        return None;
    }
    let squares = |area: Area| i64::try_from(area.half_nm2().div_euclid(few.square)).ok();
    let below_it = Area::from_half_nm2(1);
    let in_squares = |range: &RangeInclusive<Area>| {
        Some(squares(*range.start() - below_it)? + 1..=squares(*range.end())?)
    };
    let mut wanted = wanted.iter().map(in_squares).collect::<Option<Vec<_>>>()?;
    wanted.retain(|range| !range.is_empty());
    let is_wanted = |value: i64| {
        let place = wanted.partition_point(|range| *range.end() < value);
        wanted.get(place).is_some_and(|range| *range.start() <= value)
    };
    let (Some(lowest), Some(highest)) = (wanted.first(), wanted.last()) else { return Some(false) };
    let by_outer = by_outer(outer, inner);
    // What each choice of inner moves adds if no outer move is made.
    let mut inners: Vec<(i64, u16)> = Vec::new();
    let mut is_found_out = true;
    for taken in choices(outer.count, outer.choose) {
        let sum = table.outer(taken);
        if sum + few.limits.1 < *lowest.start() || sum + few.limits.0 > *highest.end() {
            continue;
        }
        if inners.is_empty() {
            inners.reserve(inner.choices());
            let adds = |taken| bits(taken).map(|one_move| table.gains[one_move]).sum::<i64>();
            let all = choices(inner.count, inner.choose);
            inners.extend(all.map(|taken| (adds(taken), taken)));
        }
        let reach = lowest.start() - sum - by_outer..=highest.end() - sum + by_outer;
        let mut near = inners.iter().filter(|(adds, _)| reach.contains(adds)).peekable();
        if near.peek().is_none() {
            continue;
        }
        let (sum, gains) = table.with(taken);
        for &(_, inner_taken) in near {
            let value = sum + bits(inner_taken).map(|one_move| gains[one_move]).sum::<i64>();
            if is_wanted(value) {
                if few.is_clear((value, taken, inner_taken)) {
                    return Some(true);
                }
                is_found_out = false;
            }
        }
    }
    is_found_out.then_some(false)
}

#[cfg(test)]
#[expect(clippy::panic, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;
    use crate::areas::range::OnSteps;
    use proptest::prelude::*;

    fn few_of(at: &AtFace, step: Step, freedom: RoundingFreedom) -> Option<Few> {
        Few::of_all(std::slice::from_ref(at), step, freedom, |_| true).pop().flatten()
    }

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
            if let Some(quick) = few_of(&at, step, freedom).and_then(|few| range(&few)) {
                prop_assert_eq!(OnSteps::new(&at, step).range(freedom), Some(quick));
            }
            let Some(few) = few_of(&at, step, freedom) else { return Ok(()) };
            if let Some(quick) = areas(&few, 5_000) {
                prop_assert_eq!(OnSteps::new(&at, step).areas(freedom), Some(quick));
            }
            if few.stays_clear {
                let (outer, inner) = (few.outer(), few.inner());
                for taken in choices(outer.count, outer.choose) {
                    for inner_taken in choices(inner.count, inner.choose) {
                        let vectors = few.vectors(taken, inner_taken);
                        prop_assert!(are_apart(&vectors[..few.sides]));
                    }
                }
            }
        }
    }

    proptest! {
        #[test]
        fn an_area_is_given_if_it_is_among_those_listed(
            text in towers(),
            reading in prop_oneof![Just(None), (0_i64..100_000_000).prop_map(Some)],
            off in -30_i64..30,
        ) {
            let Ok(house) = crate::read::read("t.sides", &text) else { return Ok(()) };
            let Ok(at) = house.at_face(0, crate::house::Face::Outside) else { return Ok(()) };
            let freedom = match reading {
                None => RoundingFreedom::Any,
                Some(nm) => RoundingFreedom::WithinReading(Length::from_nm(nm)),
            };
            let middle = i128::from(at.outline.area().whole_sq_ft() + off);
            let unit = Area::SQUARE_FOOT.half_nm2();
            let range = |from: i128, to: i128| {
                Area::from_half_nm2(from * unit)..=Area::from_half_nm2(to * unit - 1)
            };
            let wanted = [range(middle, middle + 1), range(middle + 3, middle + 4)];
            let listed = OnSteps::new(&at, Step::WholeFoot).areas(freedom);
            let few = few_of(&at, Step::WholeFoot, freedom);
            if let Some(is_given) = few.and_then(|few| gives(&few, &wanted, 5_000)) {
                let is_wanted = |area: &Area| wanted.iter().any(|range| range.contains(area));
                prop_assert_eq!(listed.map(|all| all.iter().any(is_wanted)), Some(is_given));
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
            let few = few_of(&at, Step::WholeFoot, freedom);
            assert!(few.is_some_and(|few| range(&few).is_some()));
        }
    }
}
