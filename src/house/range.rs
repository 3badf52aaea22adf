//! The lowest and the highest area that whole steps could give: which walls may go either way, and what closing leaves of that.
//!
//! Each wall has at most two lengths on whole steps less than a step from its own. Which pairs of
//! choices close is a question of counting on each axis, and the area is linear in one axis once the
//! other is fixed; so the fewer ways of one axis are gone through, and for each the best choice of
//! the other is simply its best few items.

use crate::area::Area;
use crate::house::outline::{Outline, Vector};
use crate::house::walk::{Leg, Shape, Walk, Way};
use crate::length::{Length, Step, Ties};
use crate::sketch::Axis;

/// Beyond so many ways on the smaller axis the range is not stated.
const MOST_WAYS: u64 = 100_000;
/// Nor beyond so many ways times sides, so that the largest outline still answers at once.
const MOST_WORK: u64 = 40 * MOST_WAYS;
/// Beyond so many sides of outlines looked at for crossing sides the range is not stated, nor beyond 20,000 outlines.
const MOST_SIDES_LOOKED_AT: usize = 3_000_000;

/// From the lowest to the highest area.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    /// The lowest.
    pub low: Area,
    /// The highest.
    pub high: Area,
}

impl Range {
    /// Whether an area lies within, give or take half a square foot of rounding.
    pub(crate) fn holds(&self, area: Area) -> bool {
        let half = Area::from_half_nm2(Area::SQUARE_FOOT.half_nm2() >> 1);
        self.low - half <= area && area <= self.high + half
    }
}

/// Which walls may go against the rounding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Latitude {
    /// As few as must: those further than half a step and this reach from the step taken.
    Reach(Length),
    /// Any.
    Any,
}

/// The range of the area on whole steps; none where it cannot be stated.
pub(crate) fn range(
    walk: &Walk,
    outline: &Outline,
    step: Step,
    latitude: Latitude,
) -> Option<Range> {
    let mut range: Option<Range> = None;
    let all = rises_of(walk, step, latitude)?;
    let share = all.len();
    for rises in all {
        let search = Search::new(walk, outline, step, latitude, rises, share)?;
        let one = match (search.best(-1), search.best(1)) {
            (Ok(Some(low)), Ok(Some(high))) => Range { low, high },
            (Ok(None), _) | (_, Ok(None)) => continue,
            _ => return None,
        };
        range = Some(range.map_or(one, |range| Range {
            low: range.low.min(one.low),
            high: range.high.max(one.high),
        }));
    }
    range
}

/// How many outlines of so many sides are looked at for crossing sides, in one of so many searches.
fn most_looks(sides: usize, share: usize) -> usize {
    let most = MOST_SIDES_LOOKED_AT.checked_div(sides).unwrap_or(0).min(20_000);
    most.checked_div(share).unwrap_or(most)
}

/// Every choice of rises of the curved walls, for each side one; none where there are too many.
fn rises_of(walk: &Walk, step: Step, latitude: Latitude) -> Option<Vec<Vec<i64>>> {
    const MOST: usize = 32;
    let mut all: Vec<Vec<i64>> = vec![Vec::with_capacity(walk.sides.len())];
    for side in &walk.sides {
        let rises = rises(side.shape, step.length().nm(), latitude);
        if rises.len() > 1 {
            let more = all.iter().map(|before| [before.as_slice(), &rises[1..]].concat());
            let more: Vec<Vec<i64>> = more.collect();
            all.iter_mut().for_each(|before| before.push(rises[0]));
            all.extend(more);
        } else {
            all.iter_mut().for_each(|before| before.push(rises[0]));
        }
        if all.len() > MOST {
            return None;
        }
    }
    Some(all)
}

/// The search was given up: too many outlines that touch themselves.
struct GivenUp;

/// The outline on whole steps, clear of itself, that is nearest to the typed lengths, among those of the range.
pub(crate) fn nearest_clear(
    walk: &Walk,
    outline: &Outline,
    step: Step,
    latitude: Latitude,
) -> Option<Outline> {
    let rises = rises_of(walk, step, latitude)?;
    rises
        .into_iter()
        .find_map(|rises| Search::new(walk, outline, step, latitude, rises, 1)?.nearest())
}

/// How one axis can close: lengths to start from, and items of which a fixed number is taken.
struct Ways {
    /// Side, sign, length in nanometres.
    base: Vec<(usize, i64, i64)>,
    /// Each changes the length of one of `base` by one step.
    items: Vec<(usize, i64)>,
    choose: usize,
}

struct Search<'a> {
    walk: &'a Walk,
    unit: i64,
    turn: i64,
    /// The axis gone through, and the one chosen from.
    outer: Axis,
    ways: [Ways; 2],
    /// For each side the rise it is given, 0 for a straight one.
    rises: Vec<i64>,
    /// How many searches share the work that may be done.
    share: usize,
}

impl<'a> Search<'a> {
    fn new(
        walk: &'a Walk,
        outline: &Outline,
        step: Step,
        latitude: Latitude,
        rises: Vec<i64>,
        share: usize,
    ) -> Option<Search<'a>> {
        if walk.has_bearings() || walk.has_slanted_curves() {
            return None;
        }
        let unit = step.length().nm();
        let north = ways(&walk.legs(Axis::North), unit, latitude)?;
        let east = ways(&walk.legs(Axis::East), unit, latitude)?;
        let outer = if north.count() <= east.count() { Axis::North } else { Axis::East };
        let fewest = north.count().min(east.count());
        let work = fewest.saturating_mul(walk.sides.len() as u64).saturating_mul(share as u64);
        if fewest > MOST_WAYS || work > MOST_WORK {
            return None;
        }
        Some(Search { walk, unit, turn: outline.turn(), outer, ways: [north, east], rises, share })
    }

    fn ways(&self, axis: Axis) -> &Ways {
        match axis {
            Axis::North => &self.ways[0],
            Axis::East => &self.ways[1],
        }
    }

    fn inner(&self) -> Axis {
        match self.outer {
            Axis::North => Axis::East,
            Axis::East => Axis::North,
        }
    }

    /// The largest area times `sense`; none where no outline is clear of itself.
    fn best(&self, sense: i128) -> Result<Option<Area>, GivenUp> {
        let (outer, inner) = (self.ways(self.outer), self.ways(self.inner()));
        let mut best: Option<i128> = None;
        let most_looks = most_looks(self.walk.sides.len(), self.share);
        let mut looks = 0;
        for taken in Combinations::new(outer.items.len(), outer.choose) {
            let lengths = outer.lengths(&taken, self.unit);
            let (fixed, mut gains) = self.gains(&lengths, sense);
            if best.is_some_and(|floor| fixed + largest(&mut gains, inner.choose) <= floor) {
                continue;
            }
            gains.sort_by_key(|&(gain, item)| (-gain, item));
            let mut choice = Choice {
                gains: &gains,
                choose: inner.choose,
                looks: &mut looks,
                most_looks,
                look: &mut |items: &[usize]| self.clear(&lengths, items).is_some(),
            };
            best = choice.best(fixed, best).or(best);
            if looks > most_looks {
                return Err(GivenUp);
            }
        }
        Ok(best.map(|value| Area::from_half_nm2(sense * value)))
    }

    /// What the area times `sense` is with the inner axis at its base, and what each inner item adds.
    fn gains(&self, outer: &[(usize, i64)], sense: i128) -> (i128, Vec<(i128, usize)>) {
        let ways = self.ways(self.inner());
        let places = self.doubled_middles(outer);
        let turn = i128::from(self.turn) * sense;
        let along = if self.inner() == Axis::East { -turn } else { turn };
        let value = |base: usize, length: i64| {
            let (side, sign, _) = ways.base[base];
            along * places[side] * i128::from(sign * length) + self.segment(side, length, sense)
        };
        let fixed = (0..ways.base.len()).map(|i| value(i, ways.base[i].2)).sum::<i128>()
            + outer
                .iter()
                .map(|&(side, signed)| self.segment(side, signed.abs(), sense))
                .sum::<i128>();
        let gain = |(item, &(base, change)): (usize, &(usize, i64))| {
            let length = ways.base[base].2;
            (value(base, length + change) - value(base, length), item)
        };
        (fixed, ways.items.iter().enumerate().map(gain).collect())
    }

    /// Twice the middle of each side along the outer axis.
    fn doubled_middles(&self, outer: &[(usize, i64)]) -> Vec<i128> {
        let mut parts = vec![0_i128; self.walk.sides.len()];
        for &(side, signed) in outer {
            parts[side] = i128::from(signed);
        }
        let mut at = 0;
        let middle = |part: i128| {
            let middle = 2 * at + part;
            at += part;
            middle
        };
        parts.into_iter().map(middle).collect()
    }

    /// What the segment of a curved side adds.
    fn segment(&self, side: usize, chord: i64, sense: i128) -> i128 {
        let rise = self.rises[side];
        if rise == 0 {
            return 0;
        }
        // A bulge to the right adds where the inside is on the left.
        let area = Vector { east: chord, north: 0, rise }.segment().half_nm2();
        area * i128::from(self.turn) * sense
    }

    /// The outline of these choices, if it is clear of itself.
    fn clear(&self, outer: &[(usize, i64)], items: &[usize]) -> Option<Outline> {
        let inner = self.ways(self.inner()).lengths(items, self.unit);
        let straight = |&rise: &i64| Vector { rise, ..Vector::default() };
        let mut vectors: Vec<Vector> = self.rises.iter().map(straight).collect();
        for (axis, lengths) in [(self.outer, outer), (self.inner(), &inner[..])] {
            for &(side, signed) in lengths {
                match axis {
                    Axis::North => vectors[side].north = signed,
                    Axis::East => vectors[side].east = signed,
                }
            }
        }
        let outline = Outline::new(vectors)?;
        (outline.crossing().is_none() && outline.turn() == self.turn).then_some(outline)
    }

    /// The clear outline with the least sum of squared changes from the typed lengths.
    fn nearest(&self) -> Option<Outline> {
        const MOST_PAIRS: u64 = 20_000;
        let (outer, inner) = (self.ways(self.outer), self.ways(self.inner()));
        if outer.count().saturating_mul(inner.count()) > MOST_PAIRS {
            return None;
        }
        let legs = [self.walk.legs(self.outer), self.walk.legs(self.inner())];
        let cost = |lengths: &[(usize, i64)], legs: &[Leg]| -> i128 {
            let off = |(length, leg): (&(usize, i64), &Leg)| {
                i128::from(length.1.abs() - leg.length).pow(2)
            };
            lengths.iter().zip(legs).map(off).sum()
        };
        let all = |ways: &Ways, legs: &[Leg]| -> Vec<(i128, Vec<usize>)> {
            let ways_of = Combinations::new(ways.items.len(), ways.choose);
            ways_of.map(|taken| (cost(&ways.lengths(&taken, self.unit), legs), taken)).collect()
        };
        let (outer_ways, inner_ways) = (all(outer, &legs[0]), all(inner, &legs[1]));
        let mut pairs: Vec<(i128, usize, usize)> = Vec::new();
        for (i, (a, _)) in outer_ways.iter().enumerate() {
            pairs.extend(inner_ways.iter().enumerate().map(|(j, (b, _))| (a + b, i, j)));
        }
        pairs.sort_unstable();
        let outline = |&(_, i, j): &(i128, usize, usize)| {
            self.clear(&outer.lengths(&outer_ways[i].1, self.unit), &inner_ways[j].1)
        };
        pairs.iter().find_map(outline)
    }
}

impl Ways {
    /// How many ways there are, at most one more than is gone through.
    fn count(&self) -> u64 {
        let few = self.choose.min(self.items.len() - self.choose) as u64;
        let mut count = 1_u64;
        for i in 0..few {
            let numerator = count.saturating_mul(self.items.len() as u64 - i);
            count = numerator.checked_div(i + 1).unwrap_or(numerator);
            if count > 1_000 * MOST_WAYS {
                return u64::MAX;
            }
        }
        count
    }

    /// Side and signed length of each leg with these items taken.
    fn lengths(&self, taken: &[usize], unit: i64) -> Vec<(usize, i64)> {
        debug_assert!(unit > 0, "a step is a length");
        let mut lengths: Vec<i64> = self.base.iter().map(|(_, _, length)| *length).collect();
        for &item in taken {
            let (base, change) = self.items[item];
            lengths[base] += change;
        }
        self.base
            .iter()
            .zip(lengths)
            .map(|(&(side, sign, _), length)| (side, sign * length))
            .collect()
    }
}

/// A leg on whole steps: the step below it, and what stands above.
struct Candidate {
    /// The length it has unless moved: the one that is not against the rounding, the lower where neither is.
    length: i64,
    /// Where the other one is: a step up, a step down; 0 where there is only one.
    change: i64,
    /// Moving is not against the rounding.
    free: bool,
}

fn candidate(length: i64, unit: i64, latitude: Latitude) -> Candidate {
    let above = length.rem_euclid(unit);
    let (low, to_high) = (length - above, unit - above);
    if above == 0 {
        return Candidate { length: low, change: 0, free: false };
    }
    let within = |distance: i64| match latitude {
        Latitude::Any => true,
        Latitude::Reach(reach) => 2 * distance <= unit + 2 * reach.nm(),
    };
    match (within(above), within(to_high)) {
        (false, true) => Candidate { length: low + unit, change: -unit, free: false },
        (true, high) => Candidate { length: low, change: unit, free: high },
        (false, false) => Candidate { length: low, change: unit, free: false },
    }
}

/// The ways in which an axis closes with as few legs as possible against the rounding; none where it cannot.
fn ways(legs: &[Leg], unit: i64, latitude: Latitude) -> Option<Ways> {
    let candidates: Vec<Candidate> =
        legs.iter().map(|leg| candidate(leg.length, unit, latitude)).collect();
    let mut base: Vec<(usize, i64, i64)> =
        legs.iter().zip(&candidates).map(|(leg, c)| (leg.side, leg.sign, c.length)).collect();
    let miss: i64 = base.iter().map(|(_, sign, length)| sign * length).sum();
    // Every item, once taken, moves the end of the walk one step `toward` the start.
    let toward = |i: usize, change: i64| legs[i].sign * change;
    let free: Vec<usize> = (0..legs.len()).filter(|&i| candidates[i].free).collect();
    let up = free.iter().filter(|&&i| toward(i, candidates[i].change) > 0).count();
    let down = free.len() - up;
    let steps = -miss.checked_div(unit)?;
    let (up, down, steps) = (i64::try_from(up).ok()?, i64::try_from(down).ok()?, steps);
    if (-down..=up).contains(&steps) {
        // All that move back are taken first; each item then is a move forward or the undoing of one back.
        let mut items = Vec::with_capacity(free.len());
        for &i in &free {
            let change = candidates[i].change;
            if toward(i, change) > 0 {
                items.push((i, change));
            } else {
                base[i].2 += change;
                items.push((i, -change));
            }
        }
        return Some(Ways { base, items, choose: usize::try_from(steps + down).ok()? });
    }
    let sense = steps.signum();
    for &i in &free {
        if toward(i, candidates[i].change).signum() == sense {
            base[i].2 += candidates[i].change;
        }
    }
    let against = |&i: &usize| {
        let c = &candidates[i];
        !c.free && c.change != 0 && toward(i, c.change).signum() == sense
    };
    let items: Vec<(usize, i64)> =
        (0..legs.len()).filter(against).map(|i| (i, candidates[i].change)).collect();
    let choose = usize::try_from(if sense > 0 { steps - up } else { -steps - down }).ok()?;
    (choose <= items.len()).then_some(Ways { base, items, choose })
}

/// The rises a curved wall may be given.
fn rises(shape: Shape, unit: i64, latitude: Latitude) -> Vec<i64> {
    let Shape::Arc { rise, .. } = shape else {
        return vec![0];
    };
    let c = candidate(rise.abs(), unit, latitude);
    let mut rises = vec![rise.signum() * c.length];
    if c.free {
        rises.push(rise.signum() * (c.length + c.change));
    }
    rises
}

/// The sum of so many of the largest gains; their order is not kept.
fn largest(gains: &mut [(i128, usize)], choose: usize) -> i128 {
    if choose < gains.len() {
        gains.select_nth_unstable_by_key(choose, |&(gain, _)| -gain);
    }
    gains[..choose].iter().map(|(gain, _)| gain).sum()
}

/// A fixed number of items with the largest gains that give a clear outline.
struct Choice<'a> {
    /// Largest first.
    gains: &'a [(i128, usize)],
    choose: usize,
    looks: &'a mut usize,
    most_looks: usize,
    look: &'a mut dyn FnMut(&[usize]) -> bool,
}

impl Choice<'_> {
    /// The value of the best clear choice above `floor`.
    fn best(&mut self, fixed: i128, floor: Option<i128>) -> Option<i128> {
        let mut best = floor;
        let mut taken = Vec::with_capacity(self.choose);
        self.extend(0, fixed, &mut taken, &mut best);
        best.filter(|_| best != floor)
    }

    /// Goes through the choices that begin with `taken`, the most promising first.
    fn extend(
        &mut self,
        from: usize,
        value: i128,
        taken: &mut Vec<usize>,
        best: &mut Option<i128>,
    ) {
        let missing = self.choose - taken.len();
        if from + missing > self.gains.len() || *self.looks > self.most_looks {
            return;
        }
        let next = self.gains[from..from + missing].iter().map(|(gain, _)| gain);
        let bound = value + next.sum::<i128>();
        if best.is_some_and(|floor| bound <= floor) {
            return;
        }
        if missing == 0 {
            *self.looks += 1;
            if (self.look)(taken) {
                *best = Some(value);
            }
            return;
        }
        let (gain, item) = self.gains[from];
        taken.push(item);
        self.extend(from + 1, value + gain, taken, best);
        taken.pop();
        self.extend(from + 1, value, taken, best);
    }
}

/// Every choice of so many of so many, in order.
struct Combinations {
    of: usize,
    next: Option<Vec<usize>>,
}

impl Combinations {
    fn new(of: usize, choose: usize) -> Combinations {
        Combinations { of, next: Some((0..choose).collect()) }
    }
}

impl Iterator for Combinations {
    type Item = Vec<usize>;

    fn next(&mut self) -> Option<Vec<usize>> {
        let current = self.next.take()?;
        let mut following = current.clone();
        let k = following.len();
        if let Some(i) = (0..k).rev().find(|&i| following[i] + k - i < self.of) {
            following[i] += 1;
            for j in i + 1..k {
                following[j] = following[j - 1] + 1;
            }
            self.next = Some(following);
        }
        Some(current)
    }
}

/// The outline on whole steps that the whole-foot rule shows: the nearest closing, or where that crosses or touches itself the nearest that does not.
pub(crate) fn closed_on(
    walk: &Walk,
    outline: &Outline,
    step: Step,
    ties: Ties,
    reach: Length,
) -> Option<OnStep> {
    let nearest = walk.close_on(Way::Nearest(step, ties))?;
    if walk.has_bearings()
        || step.length() < Step::HalfFoot.length()
        || nearest.crossing().is_none()
    {
        return Some(OnStep { outline: nearest, crosses: false });
    }
    let clear = [Latitude::Reach(reach), Latitude::Any]
        .into_iter()
        .find_map(|latitude| nearest_clear(walk, outline, step, latitude));
    Some(match clear {
        Some(outline) => OnStep { outline, crosses: false },
        None => OnStep { outline: nearest, crosses: true },
    })
}

/// An outline on whole steps.
#[derive(Clone, Debug)]
pub(crate) struct OnStep {
    pub(crate) outline: Outline,
    /// No closing within a step of every wall is clear of itself, so this one crosses or touches itself.
    pub(crate) crosses: bool,
}
