//! Which closing on whole steps is nearest to the typed lengths, and which others are equally near.
//!
//! Rounded walls miss closure along an axis by a whole number of steps. Correcting them one step at a time, always on
//! the wall whose squared change grows least, gives the smallest sum of squared changes (a separable convex problem).
//! Where several walls tie for the last of these moves, any choice among them will do. So the equally near closings are
//! all choices of a fixed number of moves from a list, axis by axis. Of these, the one that moves the least total
//! length of wall is taken, then the one whose area is nearest to the measured area, then the larger; neither the start
//! corner nor the direction of the traverse matters.

use std::collections::BTreeMap;

use crate::geometry::compass::Axis;
use crate::geometry::outline::{Outline, Vector, signed_area};
use crate::geometry::traverse::{Leg, Misclosure, StepRounding, Traverse, TraverseSide, shares};
use crate::units::area::Area;
use crate::units::length::Step;

/// The most equally near closings that are listed one by one.
const MOST_CLOSINGS: u64 = 4_096;
/// The most sums of a single axis that are searched; beyond that, the walls that add the most area are moved.
const MOST_SUMS: usize = 200_000;

/// All closings of a traverse on a step that are equally near to its typed lengths.
pub(crate) struct NearestClosings {
    /// The sides before any of the tied moves is made.
    vectors: Vec<Vector>,
    /// The tied moves of the north-south axis, then those of the east-west axis.
    tied: [Tied; 2],
}

/// Tied moves along one axis: making any `choose` of them closes the traverse along it.
#[derive(Clone, Default)]
struct Tied {
    moves: Vec<Move>,
    choose: usize,
}

/// One wall made a step longer or shorter.
#[derive(Clone, Copy)]
struct Move {
    side: usize,
    /// What is added to the side along the axis: one step, positive to the north or east.
    change: i64,
    /// The typed length of the wall.
    length: i64,
}

impl Tied {
    fn count(&self) -> u64 {
        binomial(self.moves.len(), self.choose)
    }

    /// Whether there is more than one way to choose.
    fn is_open(&self) -> bool {
        self.choose > 0 && self.choose < self.moves.len()
    }

    fn choices(&self) -> Combinations {
        Combinations::new(self.moves.len(), self.choose)
    }

    /// The total length of wall that these moves move.
    fn moved(&self, taken: &[usize]) -> i64 {
        taken.iter().map(|&one| self.moves[one].length).sum()
    }

    /// Makes these moves `times` times.
    fn make(&self, taken: &[usize], axis: Axis, times: i64, vectors: &mut [Vector]) {
        for one in taken.iter().map(|&one| self.moves[one]) {
            *vectors[one.side].part(axis) += times * one.change;
        }
    }

    /// Splits off the shortest walls: the moves on them, which are always made, and the moves that still tie.
    fn shortest(&self) -> (Vec<Move>, Tied) {
        let mut moves = self.moves.clone();
        moves.sort_by_key(|one| one.length);
        let Some(last) = self.choose.checked_sub(1).and_then(|last| moves.get(last)) else {
            return (Vec::new(), Tied::default());
        };
        let limit = last.length;
        let sure: Vec<Move> = moves.iter().filter(|one| one.length < limit).copied().collect();
        moves.retain(|one| one.length == limit);
        let choose = self.choose - sure.len();
        (sure, Tied { moves, choose })
    }
}

impl Traverse {
    /// Rounds each side on its own, then closes the traverse on whole steps as near to the typed lengths as
    /// possible. `measured` is its unrounded area. `None` where it cannot close.
    pub(crate) fn close_on(&self, way: StepRounding, measured: Area) -> Option<Outline> {
        self.nearest_closings(way)?.best(measured, |_| true).map(|(outline, _)| outline)
    }

    /// All closings on whole steps that are equally near to the typed lengths; `None` where the traverse cannot
    /// close.
    ///
    /// A traverse with sides by bearing has one, by the compass rule.
    pub(crate) fn nearest_closings(&self, way: StepRounding) -> Option<NearestClosings> {
        let mut vectors = self.rounded(way);
        let misses = Misclosure::of(&vectors);
        let mut tied = <[Tied; 2]>::default();
        if misses == Misclosure::default() {
            // It closes after rounding and needs no moves.
        } else if self.has_bearings() {
            spread_by_length(misses, &mut vectors);
        } else {
            for (axis, tied) in Axis::BOTH.into_iter().zip(&mut tied) {
                let misses = misses.on(axis);
                if misses != 0 {
                    *tied = self.close_axis(axis, misses, way.step(), &mut vectors)?;
                }
            }
        }
        Some(NearestClosings { vectors, tied })
    }

    /// Closes the rounded `vectors` along one axis, up to the moves that tie, which are returned; `None` where they
    /// cannot close.
    fn close_axis(
        &self,
        axis: Axis,
        misses: i64,
        step: Step,
        vectors: &mut [Vector],
    ) -> Option<Tied> {
        /// Enough for most houses, which then need no list on the heap.
        const FEW: usize = 16;
        if misses.abs() == step.length().nm() {
            return self.close_by_one(axis, misses, vectors);
        }
        let mut few = [Wall::default(); FEW];
        let mut many = Vec::new();
        let mut count = 0;
        for leg in self.legs_along(axis) {
            let rounded = vectors[leg.side].along(axis).abs();
            let wall = Wall::of(leg, rounded);
            if count < FEW {
                few[count] = wall;
            } else {
                many.extend_from_slice(if many.is_empty() { &few } else { &[] });
                many.push(wall);
            }
            count += 1;
        }
        let walls = if count <= FEW { &mut few[..count] } else { many.as_mut_slice() };
        let tied = nearest_closing(walls, step)?;
        for wall in walls {
            *vectors[wall.side].part(axis) = wall.sign * wall.length;
        }
        Some(tied)
    }

    /// Closes an axis that misses by a single step, as most do: without a list of its walls.
    fn close_by_one(&self, axis: Axis, misses: i64, vectors: &mut [Vector]) -> Option<Tied> {
        let (mut least, mut first, mut count) = (i64::MAX, 0, 0);
        for (place, (side, vector)) in self.sides.iter().zip(&*vectors).enumerate() {
            match off_by_one(side, vector, axis, misses) {
                Some(off) if off < least => (least, first, count) = (off, place, 1),
                Some(off) if off == least => count += 1,
                _ => {}
            }
        }
        if count < 2 {
            let vector = vectors.get_mut(first).filter(|_| count == 1)?;
            *vector.part(axis) -= misses;
            return Some(Tied::default());
        }
        let mut moves = Vec::with_capacity(count);
        for (place, (side, vector)) in self.sides.iter().zip(&*vectors).enumerate() {
            if off_by_one(side, vector, axis, misses) == Some(least) {
                let (_, length) = side.shape.part(axis)?;
                moves.push(Move { side: place, change: -misses, length });
            }
        }
        Some(Tied { moves, choose: 1 })
    }
}

/// How far a move that makes up for all that an axis misses takes a side beyond its typed length, as in [`Wall`]; `None`
/// if it cannot be made.
#[inline(always)]
fn off_by_one(side: &TraverseSide, vector: &Vector, axis: Axis, misses: i64) -> Option<i64> {
    let (sign, typed) = side.shape.part(axis)?;
    let now = vector.along(axis);
    // A wall that runs in the direction of the misclosure gets shorter.
    let is_movable = (sign > 0) != (misses > 0) || now.abs() >= misses.abs();
    let longer = now - sign * typed;
    is_movable.then_some(if misses > 0 { -longer } else { longer })
}

impl NearestClosings {
    /// The preferred closing among those that are `good`, or among all if none is, and whether it is good: the least
    /// moved length, then the area nearest to `measured`, then the larger.
    pub(crate) fn best(
        mut self,
        measured: Area,
        good: impl Fn(&Outline) -> bool,
    ) -> Option<(Outline, bool)> {
        let judged = |outline: Outline| {
            let is_good = good(&outline);
            (outline, is_good)
        };
        if !self.is_open() {
            for (axis, tied) in Axis::BOTH.into_iter().zip(&self.tied) {
                for one in tied.moves.iter().take(tied.choose) {
                    *self.vectors[one.side].part(axis) += one.change;
                }
            }
            return Outline::new(self.vectors).map(judged);
        }
        if self.count() <= MOST_CLOSINGS {
            let preferred = judged(self.preferred(measured)?);
            if preferred.1 {
                return Some(preferred);
            }
            let mut all = self.all()?;
            all.sort_by_cached_key(|one| (one.moved, rank(one.outline.area(), measured)));
            let place = all.iter().position(|one| good(&one.outline));
            let best = all.into_iter().nth(place.unwrap_or(0));
            return best.map(|one| (one.outline, place.is_some()));
        }
        self.shortest().best_of_equal_walls(measured).map(judged)
    }

    /// The preferred closing of all, without listing their outlines.
    fn preferred(&mut self, measured: Area) -> Option<Outline> {
        let [north, east] = &self.tied;
        let (mut norths, mut easts) = (north.choices(), east.choices());
        // Each move is taken back, so that these are the same in the end.
        let vectors = &mut self.vectors;
        let (mut least, mut best) = (i64::MAX, vectors.clone());
        while let Some(taken) = norths.current() {
            north.make(taken, Axis::North, 1, vectors);
            easts.restart();
            while let Some(also) = easts.current() {
                let moved = north.moved(taken) + east.moved(also);
                if moved <= least {
                    east.make(also, Axis::East, 1, vectors);
                    if moved < least || is_nearer(vectors, &best, measured) {
                        least = moved;
                        best.copy_from_slice(vectors);
                    }
                    east.make(also, Axis::East, -1, vectors);
                }
                easts.advance();
            }
            north.make(taken, Axis::North, -1, vectors);
            norths.advance();
        }
        Outline::new(best)
    }

    /// For each axis, the first moves in walking order that close the traverse.
    fn first(&self) -> [Vec<Move>; 2] {
        [0, 1].map(|place: usize| {
            let tied = &self.tied[place];
            tied.moves.iter().take(tied.choose).copied().collect()
        })
    }

    /// Whether another closing may be equally near.
    pub(crate) fn is_open(&self) -> bool {
        self.tied.iter().any(Tied::is_open)
    }

    /// How many closings are equally near.
    fn count(&self) -> u64 {
        self.tied[0].count().saturating_mul(self.tied[1].count())
    }

    /// The areas of the closings that are `good`, in ascending order; `None` where there are too many to list.
    pub(crate) fn areas(&self, good: impl Fn(&Outline) -> bool) -> Option<Vec<Area>> {
        if self.count() > MOST_CLOSINGS {
            return None;
        }
        let all = self.all()?;
        let mut areas: Vec<Area> =
            all.iter().filter(|one| good(&one.outline)).map(|one| one.outline.area()).collect();
        areas.sort_unstable();
        areas.dedup();
        Some(areas)
    }

    fn all(&self) -> Option<Vec<Candidate>> {
        let mut all = Vec::new();
        for north in Combinations::new(self.tied[0].moves.len(), self.tied[0].choose) {
            for east in Combinations::new(self.tied[1].moves.len(), self.tied[1].choose) {
                let moves = [(0, &north), (1, &east)].map(|(axis, taken)| -> Vec<Move> {
                    taken.iter().map(|&i| self.tied[axis].moves[i]).collect()
                });
                let moved = moves.iter().flatten().map(|one| one.length).sum();
                all.push(Candidate { moved, outline: self.with(&moves)? });
            }
        }
        Some(all)
    }

    /// The outline with these moves made on each axis.
    fn with(&self, moves: &[Vec<Move>; 2]) -> Option<Outline> {
        let mut vectors = self.vectors.clone();
        for (axis, moves) in Axis::BOTH.into_iter().zip(moves) {
            for one in moves {
                *vectors[one.side].part(axis) += one.change;
            }
        }
        Outline::new(vectors)
    }

    /// The closings that move the least length of wall; those that still tie move walls of equal length.
    fn shortest(&self) -> NearestClosings {
        let mut vectors = self.vectors.clone();
        let tied = [0, 1].map(|place| {
            let (sure, tied) = self.tied[place].shortest();
            for one in sure {
                *vectors[one.side].part(Axis::BOTH[place]) += one.change;
            }
            tied
        });
        NearestClosings { vectors, tied }
    }

    /// The best closing where the tied walls are equally long: one by one if there are few, by sums if only one
    /// axis ties, else the walls that add the most to the area.
    fn best_of_equal_walls(&self, measured: Area) -> Option<Outline> {
        if self.count() <= MOST_CLOSINGS {
            let all = self.all()?;
            let best = all.into_iter().min_by_key(|one| rank(one.outline.area(), measured));
            return best.map(|one| one.outline);
        }
        let most = [0, 1].map(|place| self.adding_most(place));
        let outline = self.with(&most)?;
        let open: Vec<usize> = (0..2).filter(|&place| self.tied[place].is_open()).collect();
        let &[place] = open.as_slice() else { return Some(outline) };
        // The area is linear in the moves of one axis, so each move adds a fixed amount to this outline.
        let gains = self.gains(place, &outline);
        let tied = &self.tied[place];
        let now: i128 = gains
            .iter()
            .zip(&tied.moves)
            .filter(|(_, one)| most[place].iter().any(|taken| taken.side == one.side))
            .map(|(gain, _)| gain)
            .sum();
        let wanted = measured.half_nm2() - outline.area().half_nm2() + now;
        let Some(taken) = nearest_sum(&gains, tied.choose, wanted) else { return Some(outline) };
        let mut moves = most;
        moves[place] = taken.into_iter().map(|i| tied.moves[i]).collect();
        self.with(&moves)
    }

    /// What each move of an axis adds to the area of a closed outline, in halves of a square nanometer. Correct only
    /// up to a constant that all moves share.
    fn gains(&self, place: usize, outline: &Outline) -> Vec<i128> {
        let gradients = outline.doubled_gradients();
        let turn = i128::from(outline.turn());
        let gain = |one: &Move| {
            let (east, north) = gradients[one.side];
            let gradient = if Axis::BOTH[place] == Axis::North { north } else { east };
            i128::from(gradient) * i128::from(one.change) + turn * self.segment_gain(place, one)
        };
        self.tied[place].moves.iter().map(gain).collect()
    }

    /// How much one move enlarges the circular segment of a curved side, in halves of a square nanometer.
    fn segment_gain(&self, place: usize, one: &Move) -> i128 {
        let before = self.vectors[one.side];
        if before.rise == 0 {
            return 0;
        }
        let mut after = before;
        *after.part(Axis::BOTH[place]) += one.change;
        after.segment().half_nm2() - before.segment().half_nm2()
    }

    /// The moves of an axis that add the most area. To keep the result independent of the start corner, each tied
    /// move of the other axis counts as partly made, all by the same fraction.
    fn adding_most(&self, place: usize) -> Vec<Move> {
        let (tied, other) = (&self.tied[place], &self.tied[1 - place]);
        let (own_axis, other_axis) = (Axis::BOTH[place], Axis::BOTH[1 - place]);
        let share = i128::try_from(other.moves.len().max(1)).unwrap_or(1);
        let mut across: Vec<i128> = self
            .vectors
            .iter()
            .map(|vector| share * i128::from(vector.along(other_axis)))
            .collect();
        for one in &other.moves {
            across[one.side] += i128::from(one.change) * i128::try_from(other.choose).unwrap_or(0);
        }
        let mut at = 0;
        for part in &mut across {
            let run = *part;
            *part += 2 * at;
            at += run;
        }
        let turn = self.with(&self.first()).map_or(1, |outline| i128::from(outline.turn()));
        let sign = if own_axis == Axis::North { turn } else { -turn };
        let gain = |one: &Move| {
            sign * across[one.side] * i128::from(one.change)
                + share * turn * self.segment_gain(place, one)
        };
        let mut moves: Vec<(i128, Move)> = tied.moves.iter().map(|one| (gain(one), *one)).collect();
        moves.sort_by_key(|&(gain, _)| std::cmp::Reverse(gain));
        moves.into_iter().take(tied.choose).map(|(_, one)| one).collect()
    }
}

/// A closing, and the total length of wall that its tied moves move.
struct Candidate {
    moved: i64,
    outline: Outline,
}

/// Sort key that prefers the area nearest to the measured one, then the larger.
///
/// Distances count as equal within a ten-thousandth of a square foot. Spreading a misclosure assigns leftover
/// nanometers in file order; the tolerance keeps that from deciding a tie. The offset keeps the limits between classes
/// away from typed lengths.
pub(crate) fn rank(area: Area, measured: Area) -> (i128, std::cmp::Reverse<Area>) {
    const APART: i128 = 18_580_608_000_000;
    const OFFSET: i128 = 6_834_567_890_123;
    let distance = (area - measured).abs().half_nm2();
    ((distance + OFFSET).div_euclid(APART), std::cmp::Reverse(area))
}

/// Whether the first of two closings has the preferred area.
fn is_nearer(one: &[Vector], other: &[Vector], measured: Area) -> bool {
    let rank_of = |vectors: &[Vector]| signed_area(vectors).map(|area| rank(area.abs(), measured));
    rank_of(one).zip(rank_of(other)).is_some_and(|(one, other)| one < other)
}

/// Which `choose` of the amounts have the sum nearest to `wanted`, or the larger sum if two are equally near;
/// `None` where there are too many sums.
fn nearest_sum(amounts: &[i128], choose: usize, wanted: i128) -> Option<Vec<usize>> {
    // For each number of amounts taken: every sum, with the last amount in it and the sum before that.
    let mut sums: Vec<BTreeMap<i128, usize>> = vec![BTreeMap::new(); choose + 1];
    let mut steps: Vec<(usize, usize)> = vec![(usize::MAX, usize::MAX)];
    sums[0].insert(0, 0);
    for (i, amount) in amounts.iter().enumerate() {
        for taken in (0..choose.min(i + 1)).rev() {
            let (fewer, more) = sums.split_at_mut(taken + 1);
            for (sum, &before) in &fewer[taken] {
                more[0].entry(sum + amount).or_insert_with(|| {
                    steps.push((i, before));
                    steps.len() - 1
                });
            }
            if steps.len() > MOST_SUMS {
                return None;
            }
        }
    }
    let area = Area::from_half_nm2;
    let nearest = sums[choose].iter().min_by_key(|(sum, _)| rank(area(**sum), area(wanted)))?;
    let mut at = *nearest.1;
    let mut taken = Vec::with_capacity(choose);
    while let Some(&(item, before)) = steps.get(at).filter(|step| step.0 != usize::MAX) {
        taken.push(item);
        at = before;
    }
    Some(taken)
}

/// The compass rule applied to sides already rounded.
fn spread_by_length(miss: Misclosure, vectors: &mut [Vector]) {
    let weights: Vec<i128> =
        vectors.iter().map(|vector| i128::from(vector.length().nm())).collect();
    for axis in Axis::BOTH {
        let parts = shares(i128::from(miss.on(axis)), &weights);
        for (vector, part) in vectors.iter_mut().zip(parts) {
            *vector.part(axis) -= part;
        }
    }
}

/// A wall of one axis while the axis is closed.
#[derive(Clone, Copy, Default)]
struct Wall {
    side: usize,
    sign: i64,
    /// Its typed length.
    typed: i64,
    /// Its length rounded on its own.
    rounded: i64,
    /// Its length so far.
    length: i64,
    /// What a move adds to its length: a wall that runs in the direction of the misclosure gets shorter, any other
    /// longer.
    change: i64,
    /// How far it is moved that way beyond its typed length. The next move adds 2·unit·off + unit² to the sum of squares.
    off: i64,
}

impl Wall {
    fn of(leg: Leg, rounded: i64) -> Wall {
        let (side, sign, typed) = (leg.side, leg.sign, leg.length);
        Wall { side, sign, typed, rounded, length: rounded, change: 0, off: 0 }
    }

    /// Sets out what its moves do.
    fn aim(&mut self, unit: i64, misses: i64) {
        let (longer, gets_shorter) = (self.length - self.typed, (self.sign > 0) == (misses > 0));
        (self.change, self.off) = if gets_shorter { (-unit, -longer) } else { (unit, longer) };
    }

    /// Makes so many moves.
    fn go(&mut self, unit: i64, times: i64) {
        self.length += self.change * times;
        self.off += unit * times;
    }

    fn is_movable(&self) -> bool {
        self.length + self.change >= 0
    }
}

/// Closes the rounded walls of one axis, which miss, on whole steps as near to their typed lengths as possible, up to
/// the moves that tie; those are returned. `None` where the axis cannot close.
fn nearest_closing(walls: &mut [Wall], step: Step) -> Option<Tied> {
    let unit = step.length().nm();
    let misses: i64 = walls.iter().map(|wall| wall.sign * wall.length).sum();
    let steps = misses.abs().checked_div(unit)?;
    walls.iter_mut().for_each(|wall| wall.aim(unit, misses));
    let steps = if steps > 1 { deal_out(walls, steps, unit)? } else { steps };
    let mut highest = i64::MIN;
    for _ in 0..steps {
        let best = walls.iter_mut().filter(|wall| wall.is_movable()).min_by_key(|wall| wall.off)?;
        highest = best.off;
        best.go(unit, 1);
    }
    // A half that was already rounded in this direction is not undone.
    let is_made = |wall: &Wall| wall.off - unit == highest && wall.length != wall.rounded;
    let could_be = |wall: &Wall| wall.off == highest && wall.is_movable();
    let (mut choose, mut count) = (0, 0);
    for wall in walls.iter() {
        let is_made = is_made(wall);
        choose += usize::from(is_made);
        count += usize::from(is_made || could_be(wall));
    }
    if choose == 0 || choose == count {
        // There is no choice.
        return Some(Tied::default());
    }
    let mut moves = Vec::with_capacity(count);
    for wall in walls {
        let change = wall.change;
        let (is_made, could_be) = (is_made(wall), could_be(wall));
        if is_made {
            wall.length -= change;
        }
        if is_made || could_be {
            moves.push(Move { side: wall.side, change: wall.sign * change, length: wall.typed });
        }
    }
    Some(Tied { moves, choose })
}

/// Each wall is within a step of its typed length, so the moves are dealt out evenly. What a wide tolerance leaves over
/// is dealt out in whole rounds, except for the last; returns how many moves are left.
fn deal_out(walls: &mut [Wall], mut steps: i64, unit: i64) -> Option<i64> {
    loop {
        let movable = walls.iter().filter(|wall| wall.is_movable());
        let count = i64::try_from(movable.clone().count()).ok()?;
        if steps < 2 * count {
            return Some(steps);
        }
        let shorter = movable.filter(|wall| wall.change < 0);
        let last = shorter.filter_map(|wall| wall.length.checked_div(unit)).min().unwrap_or(steps);
        let rounds = (steps.checked_div(count).unwrap_or(0) - 1).min(last);
        if rounds < 1 {
            return Some(steps);
        }
        for wall in walls.iter_mut().filter(|wall| wall.is_movable()) {
            wall.go(unit, rounds);
        }
        steps -= rounds * count;
    }
}

/// The binomial coefficient, capped soon after a million.
fn binomial(of: usize, choose: usize) -> u64 {
    const ENOUGH: u64 = 1_000_000;
    let few = choose.min(of.saturating_sub(choose)) as u64;
    let mut count = 1_u64;
    for i in 0..few {
        let numerator = count.saturating_mul(of as u64 - i);
        count = numerator.checked_div(i + 1).unwrap_or(numerator);
        if count > ENOUGH {
            return count;
        }
    }
    count
}

/// Every choice of `choose` items out of `of`, in lexicographic order.
pub(crate) struct Combinations {
    of: usize,
    now: Vec<usize>,
    is_done: bool,
}

impl Combinations {
    pub(crate) fn new(of: usize, choose: usize) -> Combinations {
        Combinations { of, now: (0..choose).collect(), is_done: false }
    }

    /// Goes back to the first choice.
    fn restart(&mut self) {
        self.now.iter_mut().enumerate().for_each(|(i, item)| *item = i);
        self.is_done = false;
    }

    /// The current choice; `None` after the last.
    pub(crate) fn current(&self) -> Option<&[usize]> {
        (!self.is_done).then_some(&self.now)
    }

    pub(crate) fn advance(&mut self) {
        let k = self.now.len();
        match (0..k).rev().find(|&i| self.now[i] + k - i < self.of) {
            Some(i) => {
                self.now[i] += 1;
                for j in i + 1..k {
                    self.now[j] = self.now[j - 1] + 1;
                }
            }
            None => self.is_done = true,
        }
    }
}

impl Iterator for Combinations {
    type Item = Vec<usize>;

    fn next(&mut self) -> Option<Vec<usize>> {
        let current = self.current()?.to_vec();
        self.advance();
        Some(current)
    }
}

#[cfg(test)]
#[expect(clippy::panic, reason = "a test that cannot go on has failed")]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::geometry::compass::Direction;
    use crate::geometry::traverse::{Shape, TraverseSide};
    use crate::units::length::{Halves, Length};

    fn traverse(sides: &[(Direction, i64)]) -> Traverse {
        let side = |&(direction, length): &(Direction, i64)| TraverseSide {
            shape: Shape::Straight { direction, length },
            tolerance: Length::INCH.nm(),
            follows: false,
            estimated: false,
            source: None,
        };
        Traverse { sides: sides.iter().map(side).collect() }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(2_000))]

        /// An axis that misses by one step is closed as one that misses by more is.
        #[test]
        fn one_step_is_closed_as_several_are(
            twelfths in proptest::collection::vec((1_i64..60, any::<bool>()), 2..9),
            halves in 0_usize..2,
            is_past in any::<bool>(),
        ) {
            let way = StepRounding::Nearest(Step::WholeFoot, [Halves::Up, Halves::Down][halves]);
            let walls = twelfths.iter().map(|&(twelfths, ahead)| {
                let direction = if ahead { Direction::North } else { Direction::South };
                (direction, twelfths * Length::INCH.nm())
            });
            let mut walls: Vec<(Direction, i64)> = walls.collect();
            let misses = if is_past { Length::FOOT.nm() } else { -Length::FOOT.nm() };
            // Whole feet, which take it to where it misses by that.
            let back = misses - Misclosure::of(&traverse(&walls).rounded(way)).north;
            walls.push((Direction::along(Axis::North, back), back.abs()));
            let traverse = traverse(&walls);
            let mut vectors = traverse.rounded(way);
            prop_assert_eq!(Misclosure::of(&vectors).north, misses);
            let wall = |leg: Leg| Wall::of(leg, vectors[leg.side].north.abs());
            let mut walls: Vec<Wall> = traverse.legs_along(Axis::North).map(wall).collect();
            let expected = nearest_closing(&mut walls, Step::WholeFoot);
            let found = traverse.close_by_one(Axis::North, misses, &mut vectors);
            let told = |tied: Option<Tied>| tied.map(|tied| {
                let moves = tied.moves.iter().map(|one| (one.side, one.change, one.length));
                (moves.collect::<Vec<_>>(), tied.choose)
            });
            prop_assert_eq!(told(found), told(expected));
            let norths = walls.iter().map(|wall| wall.sign * wall.length);
            prop_assert!(vectors.iter().map(|vector| vector.north).eq(norths));
        }

        /// Moves made in whole rounds equal those made one by one, however much a wide tolerance leaves over, and
        /// every choice among tied moves has the same sum of squares.
        #[test]
        fn rounds_are_the_best_moves_one_by_one(
            twelfths in proptest::collection::vec((1_i64..600, any::<bool>()), 2..9),
            halves in 0_usize..2,
        ) {
            let foot = Length::FOOT.nm();
            let leg = |(side, &(twelfths, ahead)): (usize, &(i64, bool))| Leg {
                side,
                sign: if ahead { 1 } else { -1 },
                length: twelfths * Length::INCH.nm(),
                follows: false,
            };
            let legs: Vec<Leg> = twelfths.iter().enumerate().map(leg).collect();
            let way = StepRounding::Nearest(Step::WholeFoot, [Halves::Up, Halves::Down][halves]);
            let rounded: Vec<i64> = legs.iter().map(|leg| way.rounded(leg.length)).collect();
            let wall = |(leg, &rounded): (&Leg, &i64)| Wall::of(*leg, rounded);
            let mut walls: Vec<Wall> = legs.iter().zip(&rounded).map(wall).collect();
            let found = nearest_closing(&mut walls, Step::WholeFoot);
            let square = |length: i64, i: usize| i128::from(length - legs[i].length).pow(2);
            let squares = |lengths: &[i64]| -> i128 {
                lengths.iter().enumerate().map(|(i, &length)| square(length, i)).sum()
            };
            let mut one_by_one = Some(rounded);
            while let Some(lengths) = &mut one_by_one {
                let misses: i64 = legs.iter().zip(lengths.iter()).map(|(leg, one)| leg.sign * one).sum();
                if misses == 0 {
                    break;
                }
                let moved = |i: usize| lengths[i] - misses.signum() * legs[i].sign * foot;
                let grows = |i: usize| square(moved(i), i) - square(lengths[i], i);
                match (0..legs.len()).filter(|&i| moved(i) >= 0).min_by_key(|&i| grows(i)) {
                    Some(best) => lengths[best] = moved(best),
                    None => one_by_one = None,
                }
            }
            prop_assert_eq!(found.is_some(), one_by_one.is_some());
            let (Some(found), Some(best)) = (found, one_by_one) else { return Ok(()) };
            for taken in Combinations::new(found.moves.len(), found.choose) {
                let mut lengths: Vec<i64> = walls.iter().map(|wall| wall.length).collect();
                for i in taken {
                    let one = found.moves[i];
                    lengths[one.side] += legs[one.side].sign * one.change;
                }
                let misses: i64 = legs.iter().zip(&lengths).map(|(leg, one)| leg.sign * one).sum();
                prop_assert_eq!(misses, 0);
                prop_assert_eq!(squares(&lengths), squares(&best));
            }
        }

        /// The sum found step by step is the best of all choices.
        #[test]
        fn the_nearest_sum_is_that_of_all_choices(
            amounts in proptest::collection::vec(-40_i128..40, 1..9),
            choose in 0_usize..9,
            wanted in -90_i128..90,
        ) {
            // In square feet, so that no two count as equal.
            let unit = Area::SQUARE_FOOT.half_nm2();
            let amounts: Vec<i128> = amounts.into_iter().map(|amount| amount * unit).collect();
            let wanted = wanted * unit;
            let choose = choose.min(amounts.len());
            let sum = |taken: &[usize]| taken.iter().map(|&i| amounts[i]).sum::<i128>();
            let best = Combinations::new(amounts.len(), choose)
                .map(|taken| sum(&taken))
                .min_by_key(|&sum| ((sum - wanted).abs(), -sum));
            let mut found = nearest_sum(&amounts, choose, wanted).unwrap_or_default();
            prop_assert_eq!(Some(sum(&found)), best);
            found.sort_unstable();
            found.dedup();
            prop_assert_eq!(found.len(), choose);
        }
    }

    /// A staircase outline: `steps` steps, each `inches` down and of varying depth, and a straight wall of `total`
    /// feet.
    fn stairs(steps: usize, inches: i64, total: i64) -> Traverse {
        let inch = Length::INCH.nm();
        let mut sides = vec![(Direction::North, total * 12 * inch)];
        let mut depth = 0;
        for step in 0..steps {
            let tread = (3 + i64::try_from(step % 5).unwrap_or(0)) * 12 * inch;
            depth += tread;
            sides.extend([(Direction::East, tread), (Direction::South, inches * inch)]);
        }
        sides.push((Direction::West, depth));
        traverse(&sides)
    }

    #[test]
    fn many_walls_that_tie_are_closed_by_sums_as_one_by_one() {
        // Twelve steps of 1 ft 4 in are 16 ft. Each rounds to 1 ft, and any four of them take the remaining 4 ft:
        // 495 choices.
        let stairs = stairs(12, 16, 16);
        let way = StepRounding::Nearest(Step::WholeFoot, Halves::Up);
        let Some(all) = stairs.nearest_closings(way) else { panic!("they close") };
        assert_eq!(all.count(), 495);
        let Some(areas) = all.areas(|_| true) else { panic!("few enough") };
        for measured in [0, 200, 400, 431, 433, 460, 900] {
            let measured = Area::from_half_nm2(measured * Area::SQUARE_FOOT.half_nm2());
            let best = areas.iter().copied().min_by_key(|&area| rank(area, measured));
            let tied = &all.tied[0];
            let base = all.with(&all.first()).unwrap_or_else(|| panic!("it closes"));
            let gains = all.gains(0, &base);
            let now: i128 = gains[..tied.choose].iter().sum();
            let wanted = measured.half_nm2() - base.area().half_nm2() + now;
            let taken = nearest_sum(&gains, tied.choose, wanted).unwrap_or_default();
            let moves = [taken.into_iter().map(|i| tied.moves[i]).collect(), Vec::new()];
            assert_eq!(all.with(&moves).map(|outline| outline.area()), best);
        }
        let most = all.with(&[all.adding_most(0), all.adding_most(1)]);
        assert_eq!(most.map(|outline| outline.area()), areas.last().copied());
    }

    #[test]
    fn the_area_is_the_nearest_even_with_too_many_closings_to_list() {
        // Forty-eight such steps in 64 ft: C(48, 16) is over two trillion.
        let stairs = stairs(48, 16, 64);
        let way = StepRounding::Nearest(Step::WholeFoot, Halves::Up);
        let Some(all) = stairs.nearest_closings(way) else { panic!("they close") };
        assert!(all.count() > MOST_CLOSINGS && all.areas(|_| true).is_none());
        let outline = Outline::new(stairs.sides.iter().map(|side| side.shape.vector()).collect());
        let measured = outline.map_or(Area::ZERO, |outline| outline.area());
        let best = all.best(measured, |_| true).map_or(Area::ZERO, |(outline, _)| outline.area());
        // Every whole number of square feet can be reached, so the best is within half a square foot of the
        // measured area.
        let apart = (best - measured).abs();
        assert!(2 * apart.half_nm2() <= Area::SQUARE_FOOT.half_nm2(), "{best:?} {measured:?}");
    }
}
