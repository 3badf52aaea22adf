//! A fast path for [`range`](crate::areas::range): outlines with few walls, all along the axes, computed without
//! allocating.
//!
//! The lowest and the highest area are searched for among all outlines, even those that cross themselves. If neither of
//! the two outlines found crosses or touches itself, no other can be lower or higher. Everything else is left to the
//! search of the parent module, which gives the same answer.

mod walls;

use std::ops::RangeInclusive;

use crate::areas::closings::RoundingFreedom;
use crate::areas::range::Range;
use crate::areas::range::quick::walls::{
    Closings, Freedom, Leg, Lie, MOST_LEGS, MOST_MOVES, MOST_SIDES, axis_of_return, whole_steps,
};
use crate::geometry::compass::Axis;
use crate::geometry::outline::{Vector, are_apart};
use crate::geometry::traverse::Shape;
use crate::house::wall_moves::AtFace;
use crate::units::area::Area;
use crate::units::length::Step;

/// The most choices of the moves of one axis that are tried.
const MOST_CHOICES: usize = 128;

/// What each move adds to the area in square steps, like the table of the parent module.
///
/// An outer move shifts every wall after it by a step, and so changes what each inner move there adds by `shift`.
#[derive(Debug)]
struct Table {
    fixed: i64,
    gains: [i64; MOST_MOVES],
    fixed_by: [i64; MOST_MOVES],
    shift: i64,
    /// How many outer moves come before each inner one.
    before: [u8; MOST_MOVES],
}

impl Table {
    const EMPTY: Table = Table {
        fixed: 0,
        gains: [0; MOST_MOVES],
        fixed_by: [0; MOST_MOVES],
        shift: 0,
        before: [0; MOST_MOVES],
    };

    /// The area after making these outer moves and no inner ones.
    fn outer(&self, taken: u16) -> i64 {
        self.fixed + bits(taken).map(|one_move| self.fixed_by[one_move]).sum::<i64>()
    }

    /// What each of `inner` moves adds to that.
    fn with(&self, taken: u16, inner: usize) -> [i64; MOST_MOVES] {
        let mut gains = self.gains;
        if taken != 0 {
            // What the outer moves before each place add.
            let mut shifts = [0; MOST_MOVES + 1];
            for one_move in 0..MOST_MOVES {
                let more = if taken >> one_move & 1 == 1 { self.shift } else { 0 };
                shifts[one_move + 1] = shifts[one_move] + more;
            }
            for (gain, &before) in gains[..inner].iter_mut().zip(&self.before) {
                *gain += shifts[usize::from(before)];
            }
        }
        gains
    }
}

/// An area in square steps, with the outer and the inner moves that give it.
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

/// Adds what each choice of `choose` of these moves adds to an area, after `sum`, and the bits of its moves, after
/// `taken`. The first of these moves has the bit `first`.
fn add_sums(
    gains: &[i64],
    first: u16,
    choose: usize,
    (sum, taken): (i64, u16),
    sums: &mut Vec<(i64, u16)>,
) {
    let (mut left, mut bit) = (gains, first);
    while let [gain, after @ ..] = left {
        let with = (sum + gain, taken | bit);
        bit <<= 1;
        match choose {
            0 => break,
            1 => sums.push(with),
            _ if after.len() + 1 < choose => break,
            _ => add_sums(after, bit, choose - 1, with, sums),
        }
        left = after;
    }
    if choose == 0 {
        sums.push((sum, taken));
    }
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
        let order = in_order(&table.with(taken, inner.count), inner.count);
        let (lowest, highest) = ends(&order, inner);
        let low = sum + gain_of(lowest);
        if low < least.0 {
            least = (low, taken, moves_of(lowest));
        }
        let high = sum + gain_of(highest);
        if high > most.0 {
            most = (high, taken, moves_of(highest));
        }
    }
    (least, most)
}

/// Inner moves with what they add, the least first.
type Order = [(i64, u8); MOST_MOVES];

/// Some of them.
type Chosen<'a> = &'a [(i64, u8)];

fn in_order(gains: &[i64; MOST_MOVES], count: usize) -> Order {
    let mut order = [(0, 0); MOST_MOVES];
    for (i, &gain) in (0_u8..).zip(&gains[..count]) {
        let mut at = usize::from(i);
        while at > 0 && order[at - 1].0 > gain {
            order[at] = order[at - 1];
            at -= 1;
        }
        order[at] = (gain, i);
    }
    order
}

/// The inner moves that add the least, and those that add the most.
fn ends<'a>(order: &'a Order, inner: &Closings) -> (Chosen<'a>, Chosen<'a>) {
    (&order[..inner.choose], &order[inner.count - inner.choose..inner.count])
}

fn gain_of(some: Chosen<'_>) -> i64 {
    some.iter().map(|(gain, _)| gain).sum()
}

fn moves_of(some: Chosen<'_>) -> u16 {
    some.iter().fold(0, |taken, (_, one_move)| taken | 1 << one_move)
}

/// The closings of a space with few walls, all along the axes.
#[derive(Debug)]
pub(in crate::areas) struct Few {
    legs: [Leg; MOST_SIDES],
    sides: usize,
    /// North, then east.
    closings: [Closings; 2],
    /// Which of the two is tried one by one.
    outer: usize,
    table: Table,
    /// Limits of what the inner moves add to an area, whichever outer moves are made.
    limits: (i64, i64),
    /// On which axis the walk goes there and all the way back, if it does on one.
    returns_on: Option<usize>,
    /// Whether no choice makes the walls cross or touch: along one axis the walk goes there and all the way back, and all
    /// walls of the way there lie on one side of all walls of the way back, as in [`are_apart`].
    stays_clear: bool,
    unit: i64,
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
        let freedom = Freedom::of(freedom, step.length().nm());
        let set_out = |few: &mut Few, i: usize| few.set_out(&spaces[i], freedom);
        Few::each(spaces.len(), wanted, set_out)
    }

    /// The same with any wall rounded up or down, for spaces of which closings on the same steps are known.
    pub(in crate::areas) fn widest_of_all(
        spaces: &[AtFace],
        step: Step,
        known: &[Option<Few>],
        wanted: impl Fn(usize) -> bool,
    ) -> Vec<Option<Few>> {
        let freedom = Freedom::of(RoundingFreedom::Any, step.length().nm());
        let set_out = |few: &mut Few, i: usize| match &known[i] {
            Some(known) => few.widen(known, &spaces[i]),
            None => few.set_out(&spaces[i], freedom),
        };
        Few::each(spaces.len(), wanted, set_out)
    }

    /// They are large, so each is copied once, and set out where it stays.
    fn each(
        count: usize,
        wanted: impl Fn(usize) -> bool,
        set_out: impl Fn(&mut Few, usize) -> Option<()>,
    ) -> Vec<Option<Few>> {
        let mut all = Vec::with_capacity(count);
        for i in 0..count {
            if !wanted(i) {
                all.push(None);
                continue;
            }
            all.push(Some(Few::EMPTY));
            if let Some(last) = all.last_mut()
                && let Some(few) = last
                && set_out(few, i).is_none()
            {
                *last = None;
            }
        }
        all
    }

    const EMPTY: Few = Few {
        legs: [Leg::NONE; MOST_SIDES],
        sides: 0,
        closings: [Closings::EMPTY; 2],
        outer: 0,
        table: Table::EMPTY,
        limits: (0, 0),
        returns_on: None,
        stays_clear: false,
        unit: 0,
    };

    fn set_out(&mut self, at: &AtFace, freedom: Freedom) -> Option<()> {
        self.unit = freedom.unit;
        let ends = self.round(at, freedom)?;
        self.returns_on = axis_of_return(&self.legs[..self.sides]);
        self.finish(ends, at.outline.turn())
    }

    /// Closes walls that are rounded already, any of them up or down.
    fn widen(&mut self, known: &Few, at: &AtFace) -> Option<()> {
        (self.sides, self.returns_on, self.unit) = (known.sides, known.returns_on, known.unit);
        self.legs = known.legs;
        let mut ends = [0; 2];
        for (wall, leg) in self.legs[..self.sides].iter_mut().enumerate() {
            leg.against = 0;
            leg.run = if leg.sign > 0 { leg.steps } else { -leg.steps };
            if leg.has_more {
                leg.run -= i32::from(leg.sign < 0);
                self.closings[leg.axis()].add(wall)?;
            }
            ends[leg.axis()] += leg.run;
        }
        self.finish(ends, at.outline.turn())
    }

    /// Rounds the walls, and returns where the walk ends on each axis. A wall with two lengths that follow the rule has the
    /// one that ends farther back, and a move forward.
    fn round(&mut self, at: &AtFace, freedom: Freedom) -> Option<[i32; 2]> {
        self.sides = at.traverse.sides.len();
        if self.sides > MOST_SIDES {
            return None;
        }
        let (mut north, mut east) = (0, 0);
        for (wall, (leg, side)) in self.legs.iter_mut().zip(&at.traverse.sides).enumerate() {
            let Shape::Straight { direction, length } = side.shape else { return None };
            let axis = usize::from(direction.axis() == Axis::East);
            let above;
            (leg.steps, above) = whole_steps(length, freedom.unit)?;
            leg.has_more = above > 0;
            let (first, change, is_free) = freedom.candidate(above);
            let length = leg.steps + i32::from(first);
            let is_forward = direction.sign() > 0;
            (leg.axis, leg.sign) = (u8::from(axis == 1), if is_forward { 1 } else { -1 });
            leg.run = if is_forward { length } else { -length };
            let change = if is_forward { change } else { -change };
            if is_free {
                leg.run += i32::from(change.min(0));
                self.closings[axis].add(wall)?;
            } else {
                leg.against = change;
            }
            if axis == 0 {
                north += leg.run;
            } else {
                east += leg.run;
            }
        }
        let legs_along =
            |axis: u8| self.legs[..self.sides].iter().filter(|leg| leg.axis == axis).count();
        (self.sides <= MOST_LEGS || legs_along(0).max(legs_along(1)) <= MOST_LEGS)
            .then_some([north, east])
    }

    /// Sets the moves out, now that all walls are rounded. `turn` tells on which side the inside is.
    fn finish(&mut self, ends: [i32; 2], turn: i64) -> Option<()> {
        let legs = &mut self.legs[..self.sides];
        let [north, east] = &mut self.closings;
        north.finish(0, ends[0], legs)?;
        east.finish(1, ends[1], legs)?;
        self.outer = usize::from(north.choices() > east.choices());
        let lie = Lie::of(legs, 1 - self.outer, self.returns_on);
        // Each move changes how far two walls are apart by a step, and no wall may vanish.
        let moves = [east.choose, north.choose];
        self.stays_clear = self.returns_on.is_some_and(|axis| {
            lie.have_lengths
                && north.keep_their_walls(legs)
                && east.keep_their_walls(legs)
                && lie.is_apart(moves[axis])
        });
        if self.outer().choices() > MOST_CHOICES {
            return None;
        }
        self.set_table(turn, &lie);
        Some(())
    }

    /// Fills in the empty table. `turn` tells on which side the inside is.
    fn set_table(&mut self, turn: i64, lie: &Lie) {
        let (legs, table) = (&self.legs[..self.sides], &mut self.table);
        let (outer, inner) = (&self.closings[self.outer], &self.closings[1 - self.outer]);
        // With the inside on the left, growing east adds the area below, growing north the area above.
        let along = if self.outer == 0 { -turn } else { turn };
        let end = lie.ends[1 - self.outer];
        table.fixed = along * lie.strips;
        let by = along * i64::from(outer.by);
        for (fixed_by, wall) in table.fixed_by.iter_mut().zip(outer.walls()) {
            *fixed_by = by * i64::from(end - legs[wall].across);
        }
        let by = along * i64::from(inner.by);
        table.shift = by * i64::from(outer.by);
        let (mut before, mut outer_walls) = (0, outer.walls().peekable());
        for ((gain, place), wall) in
            table.gains.iter_mut().zip(&mut table.before).zip(inner.walls())
        {
            while outer_walls.next_if(|&outer_wall| outer_wall < wall).is_some() {
                before += 1;
            }
            (*gain, *place) = (by * i64::from(legs[wall].across), before);
        }
        let order = in_order(&table.gains, inner.count);
        let (lowest, highest) = ends(&order, inner);
        // Each outer move changes what each inner one adds at most once.
        let pairs = i64::try_from(outer.choose * inner.choose).unwrap_or(i64::MAX);
        let (less, more) = if table.shift < 0 { (pairs, 0) } else { (0, pairs) };
        self.limits = (gain_of(lowest) - less, gain_of(highest) + more);
    }

    fn outer(&self) -> &Closings {
        &self.closings[self.outer]
    }

    fn inner(&self) -> &Closings {
        &self.closings[1 - self.outer]
    }

    /// A square step.
    fn square(&self) -> i128 {
        2 * (i128::from(self.unit) * i128::from(self.unit))
    }

    /// The whole square steps in an area.
    fn squares(&self, area: Area) -> Option<i64> {
        // A square step ends in zero bits, so these bits of the area do not matter, and without them it seldom needs more
        // than 64.
        let (square, twos) = (self.square(), self.square().trailing_zeros());
        let whole = match (i64::try_from(area.half_nm2() >> twos), i64::try_from(square >> twos)) {
            (Ok(area), Ok(square)) => area.checked_div_euclid(square)?,
            _ => i64::try_from(area.half_nm2().checked_div_euclid(square)?).ok()?,
        };
        Some(whole)
    }

    fn area(&self, value: i64) -> Area {
        Area::from_half_nm2(i128::from(value) * self.square())
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
        for (vector, leg) in vectors.iter_mut().zip(&self.legs[..self.sides]) {
            *vector.part(Axis::BOTH[leg.axis()]) = i64::from(leg.run);
        }
        for (place, taken) in [(self.outer, outer_taken), (1 - self.outer, inner_taken)] {
            let closings = &self.closings[place];
            for one_move in bits(taken) {
                let wall = usize::from(closings.walls[one_move]);
                *vectors[wall].part(Axis::BOTH[place]) += i64::from(closings.by);
            }
        }
        vectors
    }
}

/// The range; `None` where the search of the parent module is needed.
pub(super) fn range(few: &Few) -> Option<Range> {
    let (least, most) = extremes(few);
    let is_clear = few.is_clear(least) && (least.0 == most.0 || few.is_clear(most));
    is_clear.then(|| Range { low: few.area(least.0), high: few.area(most.0) })
}

/// Whether [`range`] surely finds the range, told without looking for it.
pub(in crate::areas) fn has_range(few: &Few) -> bool {
    let least: i64 = few.table.fixed_by.iter().map(|by| by.min(&0)).sum();
    few.stays_clear && few.table.fixed + least + few.limits.0 > 0
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
        let (sum, gains) = (table.outer(taken), table.with(taken, inner.count));
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
    let in_squares = |range: &RangeInclusive<Area>| {
        let below_it = Area::from_half_nm2(1);
        Some((few.squares(*range.start() - below_it)? + 1, few.squares(*range.end())?))
    };
    // A house of a single space has a single range, which needs no list.
    let mut several = Vec::new();
    let (lowest, highest) = match wanted {
        [] => return Some(false),
        [only] => in_squares(only)?,
        _ => {
            for range in wanted {
                let (low, high) = in_squares(range)?;
                if low <= high {
                    several.push((low, high));
                }
            }
            let (Some(first), Some(last)) = (several.first(), several.last()) else {
                return Some(false);
            };
            (first.0, last.1)
        }
    };
    if lowest > highest {
        return Some(false);
    }
    let is_wanted = |value: i64| {
        let place = several.partition_point(|range| range.1 < value);
        match several.get(place) {
            Some(range) => range.0 <= value,
            None => several.is_empty() && lowest <= value && value <= highest,
        }
    };
    let pairs = table.shift * i64::try_from(outer.choose * inner.choose).ok()?;
    // What each choice of inner moves adds if no outer move is made.
    let mut inners: Vec<(i64, u16)> = Vec::new();
    let mut is_found_out = true;
    for taken in choices(outer.count, outer.choose) {
        let sum = table.outer(taken);
        if sum + few.limits.1 < lowest || sum + few.limits.0 > highest {
            continue;
        }
        if inners.is_empty() {
            inners = Vec::with_capacity(inner.choices());
            add_sums(&table.gains[..inner.count], 1, inner.choose, (0, 0), &mut inners);
        }
        let reach = lowest - sum - pairs.max(0)..=highest - sum - pairs.min(0);
        let mut near = inners.iter().filter(|(adds, _)| reach.contains(adds)).peekable();
        if near.peek().is_none() {
            continue;
        }
        let gains = table.with(taken, inner.count);
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
#[expect(
    clippy::panic,
    clippy::integer_division,
    reason = "a test that cannot go on has failed; feet and inches of a length are whole"
)]
mod tests {
    use super::*;
    use crate::areas::range::OnSteps;
    use crate::units::length::Length;
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
            let known = [few_of(&at, step, freedom)];
            let spaces = std::slice::from_ref(&at);
            let widest = Few::widest_of_all(spaces, step, &known, |_| true).pop().flatten();
            let all = |few: Few| (range(&few), areas(&few, 5_000), few.stays_clear);
            prop_assert_eq!(widest.map(all), few_of(&at, step, RoundingFreedom::Any).map(all));
            let [Some(few)] = known else { return Ok(()) };
            prop_assert!(!has_range(&few) || range(&few).is_some());
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
