//! The lowest and highest area possible on whole steps, given which walls may be rounded either way.
//!
//! Each wall has at most two lengths on whole steps that are less than one step from its typed length. On each axis,
//! whether a choice closes depends only on how many walls go up and how many go down, and the area is linear in one
//! axis once the other is fixed. So the closings of the axis with fewer of them are tried one by one, and for each the
//! best closing of the other axis is simply the few moves that gain the most.

pub(super) mod quick;

use std::cmp::Reverse;
use std::collections::{BTreeSet, BinaryHeap};
use std::ops::{AddAssign, Neg, RangeInclusive};

pub(crate) use crate::areas::closings::RoundingFreedom;
use crate::areas::closings::{
    AxisClosings, MOST_CLOSINGS, Move, RoundedLeg, Wall, axis_closings, rises_of,
};
use crate::geometry::compass::Axis;
use crate::geometry::nearest_closing::{Combinations, rank};
use crate::geometry::outline::{Outline, Vector, are_apart};
use crate::geometry::traverse::{Shape, StepRounding, Traverse, TraverseSide};
use crate::house::wall_moves::AtFace;
use crate::units::area::Area;
use crate::units::length::{Halves, Length, Step};

/// The most closings times sides that are tried, so that even the largest outline gets an answer immediately.
const MOST_WORK: u64 = 40 * MOST_CLOSINGS;
/// The most sides of outlines that are checked for crossings; the number of outlines is limited to 20,000 as well.
const MOST_SIDES_CHECKED: usize = 3_000_000;

/// The most outlines whose areas are listed.
const MOST_OUTLINES: usize = 5_000;

/// A range of areas, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    /// The lowest area.
    pub low: Area,
    /// The highest area.
    pub high: Area,
}

impl Range {
    /// Whether an area is in the range, comparing all three as printed in whole square feet.
    pub(crate) fn holds(&self, area: Area) -> bool {
        Place::of(area.whole_sq_ft(), self.low.whole_sq_ft(), self.high.whole_sq_ft())
            == Place::Within
    }
}

/// Where a whole number of square feet lies relative to a range. Every sentence about a range is decided here, on the
/// printed numbers, so a reader who compares them reaches the same result.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Place {
    Below,
    Within,
    Above,
}

impl Place {
    /// Compares a number with the lowest and the highest of a range.
    pub(crate) fn of(number: i64, low: i64, high: i64) -> Place {
        if number < low {
            Place::Below
        } else if number > high {
            Place::Above
        } else {
            Place::Within
        }
    }
}

/// A space's traverse, with each leg split into whole steps and a remainder.
struct OnSteps<'a> {
    traverse: &'a Traverse,
    turn: i64,
    step: Step,
    /// The legs along north, then those along east; `None` if some side has no legs.
    legs: Option<[Vec<RoundedLeg>; 2]>,
}

/// The search stopped without an answer: too many of the outlines that it tried touch themselves.
struct GivenUp;

impl<'a> OnSteps<'a> {
    fn new(at: &'a AtFace, step: Step) -> OnSteps<'a> {
        let traverse = &at.traverse;
        let has_legs = !traverse.has_bearings() && !traverse.has_slanted_curves();
        let unit = step.length().nm();
        let on_steps = |axis: Axis| {
            let mut legs = Vec::with_capacity(traverse.sides.len());
            traverse.legs_along(axis).for_each(|leg| legs.push(RoundedLeg::of(leg, unit)));
            legs
        };
        let legs = has_legs.then(|| Axis::BOTH.map(on_steps));
        OnSteps { traverse, turn: at.outline.turn(), step, legs }
    }

    /// The range of areas; `None` where it cannot be computed.
    fn range(&self, freedom: RoundingFreedom) -> Option<Range> {
        let mut range: Option<Range> = None;
        let all = rises_of(self.traverse, self.step, freedom)?;
        let share = all.len();
        for rises in all {
            let search = Search::new(self, freedom, rises, share)?.by_fewest();
            let one = match search.range() {
                Ok(Some(one)) => one,
                Ok(None) => continue,
                Err(GivenUp) => return None,
            };
            range = Some(range.map_or(one, |range| Range {
                low: range.low.min(one.low),
                high: range.high.max(one.high),
            }));
        }
        range
    }

    /// The area of every outline in the range, in ascending order; `None` where there are too many.
    fn areas(&self, freedom: RoundingFreedom) -> Option<Vec<Area>> {
        let mut areas = Vec::new();
        let all = rises_of(self.traverse, self.step, freedom)?;
        let share = all.len();
        for rises in all {
            Search::new(self, freedom, rises, share)?.areas(&mut areas)?;
        }
        areas.sort_unstable();
        areas.dedup();
        Some(areas)
    }

    /// The outline nearest to the typed lengths among those in the range that do not cross or touch themselves. Ties
    /// go to the outline that moves the least length of wall, then to the one with the area nearest to `measured`,
    /// then to the larger one.
    fn nearest_clear(
        &self,
        freedom: RoundingFreedom,
        halves: Halves,
        measured: Area,
    ) -> Option<Outline> {
        let rises = rises_of(self.traverse, self.step, freedom)?;
        let each = rises
            .into_iter()
            .filter_map(|rises| Search::new(self, freedom, rises, 1)?.nearest(halves, measured));
        each.min_by_key(|(cost, outline)| (*cost, rank(outline.area(), measured)))
            .map(|(_, outline)| outline)
    }

    /// The outline with these vectors (components in steps, rises in nanometers), if it does not cross or touch
    /// itself and has its inside on the same side as before.
    fn clear(&self, vectors: &[Vector]) -> Option<Outline> {
        let unit = self.step.length().nm();
        let in_nm = |vector: &Vector| Vector {
            east: vector.east * unit,
            north: vector.north * unit,
            rise: vector.rise,
        };
        let outline = Outline::new(vectors.iter().map(in_nm).collect())?;
        (outline.is_clear() && outline.turn() == self.turn).then_some(outline)
    }
}

/// How many outlines of `sides` sides each of `share` searches may check for crossings.
fn most_checks(sides: usize, share: usize) -> usize {
    let most = MOST_SIDES_CHECKED.checked_div(sides).unwrap_or(0).min(20_000);
    most.checked_div(share).unwrap_or(most)
}

struct Search<'a> {
    on: &'a OnSteps<'a>,
    legs: &'a [Vec<RoundedLeg>; 2],
    /// The axis whose closings are tried one by one; for each of them, the best closing of the other axis is chosen.
    outer: Axis,
    closings: [AxisClosings; 2],
    /// The rise of each side, 0 if straight; empty if all are straight.
    rises: Vec<i64>,
    /// How many searches share the allowed work.
    share: usize,
}

const fn place(axis: Axis) -> usize {
    match axis {
        Axis::North => 0,
        Axis::East => 1,
    }
}

impl<'a> Search<'a> {
    fn new(
        on: &'a OnSteps<'a>,
        freedom: RoundingFreedom,
        rises: Vec<i64>,
        share: usize,
    ) -> Option<Search<'a>> {
        let legs = on.legs.as_ref()?;
        let unit = on.step.length().nm();
        let north = axis_closings(&legs[0], unit, freedom)?;
        let east = axis_closings(&legs[1], unit, freedom)?;
        let outer = if north.count() <= east.count() { Axis::North } else { Axis::East };
        let fewest = north.count().min(east.count());
        let sides = on.traverse.sides.len() as u64;
        let work = fewest.saturating_mul(sides).saturating_mul(share as u64);
        if fewest > MOST_CLOSINGS || work > MOST_WORK {
            return None;
        }
        Some(Search { on, legs, outer, closings: [north, east], rises, share })
    }

    /// This search with as few moves as possible. `nearest` must not use it: ties there depend on the
    /// original order of the closings.
    fn by_fewest(self) -> Search<'a> {
        Search { closings: self.closings.map(AxisClosings::by_fewest), ..self }
    }

    fn outer(&self) -> &AxisClosings {
        &self.closings[place(self.outer)]
    }

    fn inner(&self) -> &AxisClosings {
        &self.closings[1 - place(self.outer)]
    }

    /// The lowest and highest area; `None` where every outline crosses or touches itself.
    ///
    /// # Errors
    ///
    /// The search was stopped.
    fn range(&self) -> Result<Option<Range>, GivenUp> {
        let unit = self.on.step.length().nm();
        let square = i128::from(unit) * i128::from(unit);
        if self.rises.is_empty() {
            // In square steps, which fit in 64 bits: a thousand sides of 10,000 ft enclose less than 2^57 square
            // inches.
            let table = self.table(|steps| steps, |_, _| 0);
            return self.within(&table, |area| i128::from(area) * square);
        }
        let table =
            self.table(|steps| i128::from(steps) * square, |side, chord| self.segment(side, chord));
        self.within(&table, |area| area)
    }

    fn within<A: Amount>(
        &self,
        table: &Table<A>,
        half_nm2: impl Fn(A) -> i128,
    ) -> Result<Option<Range>, GivenUp> {
        let bounds = table.bounds(self.outer().choose, self.inner().choose);
        let area = |found: Option<A>| found.map(|area| Area::from_half_nm2(half_nm2(area)));
        let low = area(self.best(table, &bounds, true)?);
        let high = area(self.best(table, &bounds, false)?);
        Ok(low.zip(high).map(|(low, high)| Range { low, high }))
    }

    /// What each move adds to the area. `square` converts square steps, `segment` gives the segment of a curved
    /// side.
    fn table<A: Amount>(
        &self,
        square: impl Fn(i64) -> A,
        segment: impl Fn(usize, i64) -> A,
    ) -> Table<A> {
        let (outer, inner) = (self.outer(), self.inner());
        let (middles, _) = self.doubled_middles(outer);
        let (inner_middles, inner_end) = self.doubled_middles(inner);
        // With the inside on the left, growing east adds the area below, growing north the area above.
        let along = if self.outer == Axis::North { -self.on.turn } else { self.on.turn };
        let more = |side: usize, from: i64, to: i64| {
            let mut amount = segment(side, to);
            amount += -segment(side, from);
            amount
        };
        let mut table = Table {
            fixed: A::default(),
            gains: Vec::with_capacity(inner.moves.len()),
            fixed_by: Vec::with_capacity(outer.moves.len()),
            gains_by: Vec::with_capacity(outer.moves.len() * inner.moves.len()),
        };
        let mut sum = 0;
        for &Wall { side, sign, steps } in &inner.walls {
            sum += sign * steps * middles[side];
            table.fixed += segment(side, steps);
        }
        table.fixed += square(along * sum);
        for &Wall { side, steps, .. } in &outer.walls {
            table.fixed += segment(side, steps);
        }
        table.gains.extend(inner.moves.iter().map(|&Move { wall, change }| {
            let Wall { side, sign, steps } = inner.walls[wall];
            let mut gain = square(along * sign * change * middles[side]);
            gain += more(side, steps, steps + change);
            gain
        }));
        for &Move { wall, change } in &outer.moves {
            let Wall { side: outer_side, sign, steps } = outer.walls[wall];
            let moved = along * sign * change;
            // A move shifts everything after it by a full step, and its own middle by half a step.
            let mut fixed = square(moved * (2 * inner_end - inner_middles[outer_side]));
            fixed += more(outer_side, steps, steps + change);
            table.fixed_by.push(fixed);
            table.gains_by.extend(inner.moves.iter().map(|&Move { wall, change }| {
                let Wall { side, sign, .. } = inner.walls[wall];
                square(
                    sign * change
                        * moved
                        * (i64::from(side >= outer_side) + i64::from(side > outer_side)),
                )
            }));
        }
        table
    }

    /// Twice the middle of each side along one axis, in steps and without any moves, and where the sides end.
    fn doubled_middles(&self, closings: &AxisClosings) -> (Vec<i64>, i64) {
        let mut middles = vec![0; self.on.traverse.sides.len()];
        for &Wall { side, sign, steps } in &closings.walls {
            middles[side] = sign * steps;
        }
        let mut at = 0;
        for middle in &mut middles {
            let part = *middle;
            *middle += 2 * at;
            at += part;
        }
        (middles, at)
    }

    /// The area that the segment of a curved side adds with a chord of `steps` steps, in halves of a square
    /// nanometer.
    fn segment(&self, side: usize, steps: i64) -> i128 {
        let rise = self.rises.get(side).copied().unwrap_or(0);
        if rise == 0 {
            return 0;
        }
        // A bulge to the right adds area where the inside is on the left.
        let chord = steps * self.on.step.length().nm();
        let area = Vector { east: chord, north: 0, rise }.segment().half_nm2();
        area * i128::from(self.on.turn)
    }

    /// The largest area, or with `lowest` the smallest; `None` where every outline crosses or touches itself.
    ///
    /// # Errors
    ///
    /// The search was stopped.
    fn best<A: Amount>(
        &self,
        table: &Table<A>,
        bounds: &Bounds<A>,
        lowest: bool,
    ) -> Result<Option<A>, GivenUp> {
        let most_checks = most_checks(self.on.traverse.sides.len(), self.share);
        let sense = |amount: A| if lowest { -amount } else { amount };
        let (mut best, mut checks) = (None::<A>, 0);
        let mut gains: Vec<(A, usize)> = Vec::with_capacity(table.gains.len());
        let mut vectors = Vec::with_capacity(self.on.traverse.sides.len());
        // Most promising first: the first outline without crossings is then usually the best.
        let mut by_most = bounds.by_most(lowest);
        while let Some((_, Reverse(place))) = by_most.pop() {
            let bound = &bounds.list[place];
            if best.is_some_and(|floor| bound.most(lowest) <= floor) {
                break;
            }
            let taken = bounds.taken(bound);
            let fixed = sense(table.fixed_with(taken));
            gains.clear();
            gains.extend(
                (0..table.gains.len())
                    .map(|one_move| (sense(table.gain_with(one_move, taken)), one_move)),
            );
            gains.sort_unstable_by(|a, b| b.0.cmp(&a.0).then(a.1.cmp(&b.1)));
            let mut choice = Choice {
                gains: &gains,
                choose: self.inner().choose,
                checks: &mut checks,
                most_checks,
                is_clear: &mut |moves: &[usize], value: A| {
                    self.vectors_into(taken, moves, &mut vectors);
                    // A positive area has its inside on the same side as before.
                    sense(value) > A::default() && are_apart(&vectors)
                        || self.on.clear(&vectors).is_some()
                },
            };
            best = choice.best(fixed, best).or(best);
            if checks > most_checks {
                return Err(GivenUp);
            }
        }
        Ok(best.map(sense))
    }

    /// The sides with these moves made on the outer and inner axis: components in steps, rises in nanometers.
    fn vectors_into(&self, outer: &[usize], inner: &[usize], vectors: &mut Vec<Vector>) {
        vectors.clear();
        vectors.resize(self.on.traverse.sides.len(), Vector::default());
        for (vector, &rise) in vectors.iter_mut().zip(&self.rises) {
            vector.rise = rise;
        }
        let inner_axis = if self.outer == Axis::North { Axis::East } else { Axis::North };
        for (axis, closings, taken) in
            [(self.outer, self.outer(), outer), (inner_axis, self.inner(), inner)]
        {
            for &Wall { side, sign, steps } in &closings.walls {
                *vectors[side].part(axis) = sign * steps;
            }
            for &one_move in taken {
                let Move { wall, change } = closings.moves[one_move];
                let Wall { side, sign, .. } = closings.walls[wall];
                *vectors[side].part(axis) += sign * change;
            }
        }
    }

    /// Adds the area of every outline that does not cross or touch itself; `None` where there are too many.
    fn areas(&self, areas: &mut Vec<Area>) -> Option<()> {
        let (outer, inner) = (self.outer(), self.inner());
        let count = outer.count().saturating_mul(inner.count()).saturating_mul(self.share as u64);
        if count > MOST_OUTLINES as u64 {
            return None;
        }
        let unit = self.on.step.length().nm();
        let square = i128::from(unit) * i128::from(unit);
        let found = &mut |half_nm2: i128| areas.push(Area::from_half_nm2(half_nm2));
        if self.rises.is_empty() {
            let table = self.table(|steps| steps, |_, _| 0);
            self.clear_values(&table).into_iter().for_each(|area| found(i128::from(area) * square));
        } else {
            let table = self
                .table(|steps| i128::from(steps) * square, |side, chord| self.segment(side, chord));
            self.clear_values(&table).into_iter().for_each(found);
        }
        Some(())
    }

    /// Twice the area of every outline that does not cross or touch itself, each once.
    fn clear_values<A: Amount>(&self, table: &Table<A>) -> BTreeSet<A> {
        let (outer, inner) = (self.outer(), self.inner());
        let (mut known, mut vectors) = (BTreeSet::new(), Vec::new());
        for outer_taken in Combinations::new(outer.moves.len(), outer.choose) {
            let fixed = table.fixed_with(&outer_taken);
            let gain = |inner_move: usize| table.gain_with(inner_move, &outer_taken);
            let gains: Vec<A> = (0..inner.moves.len()).map(gain).collect();
            let mut combinations = Combinations::new(inner.moves.len(), inner.choose);
            while let Some(inner_taken) = combinations.current() {
                let mut value = fixed;
                inner_taken.iter().for_each(|&inner_move| value += gains[inner_move]);
                // A positive area has its inside on the same side as before.
                if value > A::default() && !known.contains(&value) {
                    self.vectors_into(&outer_taken, inner_taken, &mut vectors);
                    if are_apart(&vectors) || self.on.clear(&vectors).is_some() {
                        known.insert(value);
                    }
                }
                combinations.advance();
            }
        }
        known
    }

    /// The valid outline with the least sum of squared changes from the typed lengths, and its cost.
    fn nearest(&self, halves: Halves, measured: Area) -> Option<(Cost, Outline)> {
        const MOST_PAIRS: u64 = 20_000;
        let (outer, inner) = (self.outer(), self.inner());
        if outer.count().saturating_mul(inner.count()) > MOST_PAIRS {
            return None;
        }
        let way = StepRounding::Nearest(self.on.step, halves);
        let all = |closings: &AxisClosings, legs: &[RoundedLeg]| -> Vec<(Cost, Vec<usize>)> {
            let combinations = Combinations::new(closings.moves.len(), closings.choose);
            combinations
                .map(|taken| (self.cost(&closings.lengths(&taken), legs, way), taken))
                .collect()
        };
        let outer_closings = all(outer, &self.legs[place(self.outer)]);
        let inner_closings = all(inner, &self.legs[1 - place(self.outer)]);
        let rise = self.rise_cost(way);
        let mut pairs: Vec<(Cost, usize, usize)> = Vec::new();
        for (i, (a, _)) in outer_closings.iter().enumerate() {
            let with = |b: &Cost| (a.0 + b.0 + rise.0, a.1 + b.1 + rise.1);
            pairs.extend(inner_closings.iter().enumerate().map(|(j, (b, _))| (with(b), i, j)));
        }
        pairs.sort_unstable();
        let mut vectors = Vec::new();
        let mut best: Option<(Cost, Outline)> = None;
        for (cost, i, j) in pairs {
            if best.as_ref().is_some_and(|best| best.0 < cost) {
                break;
            }
            self.vectors_into(&outer_closings[i].1, &inner_closings[j].1, &mut vectors);
            let Some(outline) = self.on.clear(&vectors) else { continue };
            let ranks = |outline: &Outline| rank(outline.area(), measured);
            if best.as_ref().is_none_or(|best| ranks(&outline) < ranks(&best.1)) {
                best = Some((cost, outline));
            }
        }
        best
    }

    /// The cost of an axis: the sum of squared changes, and the length of wall moved away from plain rounding,
    /// multiplied by the steps it moved.
    fn cost(&self, lengths: &[i64], legs: &[RoundedLeg], way: StepRounding) -> Cost {
        let unit = self.on.step.length().nm();
        let one = |(&steps, leg): (&i64, &RoundedLeg)| {
            let typed = leg.steps * unit - leg.off(leg.steps, unit);
            let moved = (steps * unit - way.rounded(typed)).abs().checked_div(unit).unwrap_or(0);
            (i128::from(leg.off(steps, unit)).pow(2), i128::from(moved) * i128::from(typed))
        };
        let costs = lengths.iter().zip(legs).map(one);
        costs.fold((0, 0), |sum, one| (sum.0 + one.0, sum.1 + one.1))
    }

    /// The cost of the rises of curved walls.
    fn rise_cost(&self, way: StepRounding) -> Cost {
        let unit = self.on.step.length().nm();
        let one = |(&given, side): (&i64, &TraverseSide)| {
            let Shape::Arc { rise: typed, .. } = side.shape else { return (0, 0) };
            let (given, typed) = (given.abs(), typed.abs());
            let moved = (given - way.rounded(typed)).abs().checked_div(unit).unwrap_or(0);
            (i128::from(given - typed).pow(2), i128::from(moved) * i128::from(typed))
        };
        let costs = self.rises.iter().zip(&self.on.traverse.sides).map(one);
        costs.fold((0, 0), |sum, one| (sum.0 + one.0, sum.1 + one.1))
    }
}

/// How far an outline is from the typed lengths: the sum of squared changes, then the length of wall moved.
type Cost = (i128, i128);

/// A number of area units: square steps in 64 bits, or halves of a square nanometer in 128 bits.
trait Amount: Copy + Ord + Default + AddAssign + Neg<Output = Self> {}

impl Amount for i64 {}
impl Amount for i128 {}

/// What each move adds to twice the area, which is linear in the moves of one axis once those of the other are made.
struct Table<A> {
    /// Twice the area without any moves.
    fixed: A,
    /// What each inner move adds, without any outer move.
    gains: Vec<A>,
    /// What each outer move adds, without any inner move.
    fixed_by: Vec<A>,
    /// What each outer move adds to the gain of each inner one, row by row for the outer moves.
    gains_by: Vec<A>,
}

impl<A: Amount> Table<A> {
    fn fixed_with(&self, taken: &[usize]) -> A {
        let mut fixed = self.fixed;
        taken.iter().for_each(|&one_move| fixed += self.fixed_by[one_move]);
        fixed
    }

    fn gain_with(&self, inner: usize, taken: &[usize]) -> A {
        let mut gain = self.gains[inner];
        taken
            .iter()
            .for_each(|&one_move| gain += self.gains_by[one_move * self.gains.len() + inner]);
        gain
    }

    /// The least and the most that each outer closing could give, including outlines that cross themselves.
    fn bounds(&self, choose: usize, choose_inner: usize) -> Bounds<A> {
        let mut bounds =
            Bounds { list: Vec::with_capacity(32), taken: Vec::with_capacity(64), choose };
        let mut combinations = Combinations::new(self.fixed_by.len(), choose);
        let n = self.gains.len();
        let mut gains = Vec::with_capacity(n);
        while let Some(taken) = combinations.current() {
            gains.clear();
            gains.extend_from_slice(&self.gains);
            for &one_move in taken {
                let by = &self.gains_by[one_move * n..(one_move + 1) * n];
                gains.iter_mut().zip(by).for_each(|(gain, &by)| *gain += by);
            }
            if choose_inner != 0 && choose_inner != n {
                gains.sort_unstable();
            }
            let fixed = self.fixed_with(taken);
            let with = |some: &[A]| {
                let mut sum = fixed;
                some.iter().for_each(|&gain| sum += gain);
                sum
            };
            bounds.list.push(Bound {
                low: with(&gains[..choose_inner]),
                high: with(&gains[n - choose_inner..]),
                place: bounds.taken.len(),
            });
            bounds.taken.extend_from_slice(taken);
            combinations.advance();
        }
        bounds
    }
}

/// The lowest and highest area that one outer closing could give.
#[derive(Clone, Copy)]
struct Bound<A> {
    low: A,
    high: A,
    /// Where its moves begin in the list of moves.
    place: usize,
}

impl<A: Amount> Bound<A> {
    /// The limit that is searched, with its sign changed for `lowest`, so that more is always better.
    fn most(&self, lowest: bool) -> A {
        if lowest { -self.low } else { self.high }
    }
}

/// The limits of every outer closing.
struct Bounds<A> {
    list: Vec<Bound<A>>,
    taken: Vec<usize>,
    choose: usize,
}

impl<A: Amount> Bounds<A> {
    fn taken(&self, bound: &Bound<A>) -> &[usize] {
        &self.taken[bound.place..bound.place + self.choose]
    }

    /// The limit of each closing with its index in the list, the largest limit first.
    fn by_most(&self, lowest: bool) -> BinaryHeap<(A, Reverse<usize>)> {
        let one = |(place, bound): (usize, &Bound<A>)| (bound.most(lowest), Reverse(place));
        self.list.iter().enumerate().map(one).collect()
    }
}

/// Searches for the fixed number of moves with the largest gains whose outline does not cross itself.
struct Choice<'a, A> {
    /// Gain and move, largest gain first.
    gains: &'a [(A, usize)],
    choose: usize,
    checks: &'a mut usize,
    most_checks: usize,
    is_clear: &'a mut dyn FnMut(&[usize], A) -> bool,
}

impl<A: Amount> Choice<'_, A> {
    /// The value of the best valid choice above `floor`.
    fn best(&mut self, fixed: A, floor: Option<A>) -> Option<A> {
        let mut best = floor;
        let mut taken = Vec::with_capacity(self.choose);
        self.extend(0, fixed, &mut taken, &mut best);
        best.filter(|_| best != floor)
    }

    /// Tries all choices that begin with `taken`, most promising first.
    fn extend(&mut self, from: usize, value: A, taken: &mut Vec<usize>, best: &mut Option<A>) {
        let missing = self.choose - taken.len();
        if from + missing > self.gains.len() || *self.checks > self.most_checks {
            return;
        }
        let mut bound = value;
        self.gains[from..from + missing].iter().for_each(|&(gain, _)| bound += gain);
        if best.is_some_and(|floor| bound <= floor) {
            return;
        }
        if missing == 0 {
            *self.checks += 1;
            if (self.is_clear)(taken, value) {
                *best = Some(value);
            }
            return;
        }
        let (gain, one_move) = self.gains[from];
        taken.push(one_move);
        let mut with = value;
        with += gain;
        self.extend(from + 1, with, taken, best);
        taken.pop();
        self.extend(from + 1, value, taken, best);
    }
}

/// The range of areas possible on whole steps; `None` where it cannot be computed. `few` are its closings if it has few
/// walls.
pub(super) fn range(
    at: &AtFace,
    few: Option<&quick::Few>,
    step: Step,
    freedom: RoundingFreedom,
) -> Option<Range> {
    few.and_then(quick::range).or_else(|| OnSteps::new(at, step).range(freedom))
}

/// Whether some outline on whole steps has an area in one of the ranges, which are in ascending order. `None` where that
/// is not found out quickly, or where there are more than `most` outlines.
pub(super) fn gives(
    few: &quick::Few,
    wanted: &[RangeInclusive<Area>],
    most: usize,
) -> Option<bool> {
    quick::gives(few, wanted, most.min(MOST_OUTLINES))
}

/// Every area possible on whole steps, in ascending order; `None` where it cannot be computed or there are too
/// many.
pub(super) fn areas(
    at: &AtFace,
    few: Option<&quick::Few>,
    step: Step,
    freedom: RoundingFreedom,
) -> Option<Vec<Area>> {
    few.and_then(|few| quick::areas(few, MOST_OUTLINES))
        .or_else(|| OnSteps::new(at, step).areas(freedom))
}

/// The outline shown under a rule: the nearest closing, or if that crosses or touches itself, the nearest one that
/// does not.
pub(crate) fn closed_on(
    at: &AtFace,
    step: Step,
    halves: Halves,
    reading: Length,
) -> Option<RoundedOutline> {
    let measured = at.outline.area();
    let closings = at.traverse.nearest_closings(StepRounding::Nearest(step, halves))?;
    let (nearest, is_good) = closings.best(measured, |outline| is_shown(at, step, outline))?;
    if is_good {
        return Some(RoundedOutline { outline: nearest, crosses: false });
    }
    let on = OnSteps::new(at, step);
    let freedoms = [RoundingFreedom::WithinReading(reading), RoundingFreedom::Any];
    let clear = |freedom| on.nearest_clear(freedom, halves, measured);
    Some(match freedoms.into_iter().find_map(clear) {
        Some(outline) => RoundedOutline { outline, crosses: false },
        None => RoundedOutline { outline: nearest, crosses: true },
    })
}

/// The areas of all closings as near to the typed lengths as the one shown, in ascending order; `None` where there
/// are too many.
pub(crate) fn equally_near(at: &AtFace, step: Step, halves: Halves) -> Option<Vec<Area>> {
    let closings = at.traverse.nearest_closings(StepRounding::Nearest(step, halves))?;
    if !closings.is_open() {
        return Some(Vec::new());
    }
    closings.areas(|outline| is_shown(at, step, outline))
}

/// Whether a rounded outline may be shown. One with bearings, or rounded finer than a half foot, always may. Any other
/// must neither cross nor touch itself, and must be walked in the same direction as the measured one.
fn is_shown(at: &AtFace, step: Step, outline: &Outline) -> bool {
    at.traverse.has_bearings()
        || step.length() < Step::HalfFoot.length()
        || outline.is_clear() && outline.turn() == at.outline.turn()
}

/// An outline on whole steps.
#[derive(Clone, Debug)]
pub(crate) struct RoundedOutline {
    pub(crate) outline: Outline,
    /// Whether it crosses or touches itself, as does every other closing within a step of each wall.
    pub(crate) crosses: bool,
}
