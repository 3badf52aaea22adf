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
        let bounds = search.bounds();
        let one = match (search.best(&bounds, -1), search.best(&bounds, 1)) {
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
        Some(Search { walk, turn: outline.turn(), outer, ways: [north, east], rises, share })
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

    /// What each way of the outer axis could give at most and at least, whether or not the outline is clear of itself.
    fn bounds(&self) -> Bounds {
        let (outer, inner) = (self.ways(self.outer), self.ways(self.inner()));
        let mut bounds = Bounds { list: Vec::new(), taken: Vec::new(), choose: outer.choose };
        let mut scratch = Scratch::default();
        let mut combinations = Combinations::new(outer.items.len(), outer.choose);
        while let Some(taken) = combinations.current() {
            let fixed = self.gains(taken, &mut scratch);
            let gains = &mut scratch.gains;
            gains.sort_unstable();
            let low = fixed + gains[..inner.choose].iter().map(|(gain, _)| gain).sum::<i128>();
            let high = fixed
                + gains[gains.len() - inner.choose..].iter().map(|(gain, _)| gain).sum::<i128>();
            bounds.list.push(Bound { low, high, place: bounds.taken.len() });
            bounds.taken.extend_from_slice(taken);
            combinations.advance();
        }
        bounds
    }

    /// The largest area times `sense`; none where no outline is clear of itself.
    fn best(&self, bounds: &Bounds, sense: i128) -> Result<Option<Area>, GivenUp> {
        let inner = self.ways(self.inner());
        let most_looks = most_looks(self.walk.sides.len(), self.share);
        let (mut best, mut looks) = (None::<i128>, 0);
        let mut scratch = Scratch::default();
        // The most promising first: the first that is clear is then mostly the best.
        for bound in bounds.most_first(sense) {
            if best.is_some_and(|floor| bound.most(sense) <= floor) {
                break;
            }
            let fixed = sense * self.gains(bounds.taken(bound), &mut scratch);
            let gains = &mut scratch.gains;
            gains.iter_mut().for_each(|(gain, _)| *gain *= sense);
            gains.sort_unstable_by_key(|&(gain, item)| (-gain, item));
            let lengths = &scratch.lengths;
            let mut choice = Choice {
                gains,
                choose: inner.choose,
                looks: &mut looks,
                most_looks,
                look: &mut |items: &[usize]| self.clear(lengths, items).is_some(),
            };
            best = choice.best(fixed, best).or(best);
            if looks > most_looks {
                return Err(GivenUp);
            }
        }
        Ok(best.map(|value| Area::from_half_nm2(sense * value)))
    }

    /// With these items of the outer axis: the area with the inner axis at its base, and into `scratch`
    /// what each inner item adds.
    fn gains(&self, taken: &[usize], scratch: &mut Scratch) -> i128 {
        let ways = self.ways(self.inner());
        self.ways(self.outer).lengths_into(taken, &mut scratch.lengths);
        self.doubled_middles(scratch);
        let turn = self.turn;
        let along = if self.inner() == Axis::East { -turn } else { turn };
        let places = &scratch.places;
        let value = |base: usize, length: i64| {
            let (side, sign, _) = ways.base[base];
            i128::from(along * sign * places[side]) * i128::from(length)
                + self.segment(side, length)
        };
        let fixed = (0..ways.base.len()).map(|i| value(i, ways.base[i].2)).sum::<i128>()
            + scratch
                .lengths
                .iter()
                .map(|&(side, signed)| self.segment(side, signed.abs()))
                .sum::<i128>();
        scratch.gains.clear();
        scratch.gains.extend(ways.items.iter().enumerate().map(|(item, &(base, change))| {
            let length = ways.base[base].2;
            (value(base, length + change) - value(base, length), item)
        }));
        fixed
    }

    /// Twice the middle of each side along the outer axis.
    fn doubled_middles(&self, scratch: &mut Scratch) {
        scratch.places.clear();
        scratch.places.resize(self.walk.sides.len(), 0);
        for &(side, signed) in &scratch.lengths {
            scratch.places[side] = signed;
        }
        let mut at = 0;
        for place in &mut scratch.places {
            let part = *place;
            *place = 2 * at + part;
            at += part;
        }
    }

    /// What the segment of a curved side adds.
    #[inline]
    fn segment(&self, side: usize, chord: i64) -> i128 {
        let rise = self.rises[side];
        if rise == 0 {
            return 0;
        }
        // A bulge to the right adds where the inside is on the left.
        let area = Vector { east: chord, north: 0, rise }.segment().half_nm2();
        area * i128::from(self.turn)
    }

    /// The outline of these choices, if it is clear of itself.
    fn clear(&self, outer: &[(usize, i64)], items: &[usize]) -> Option<Outline> {
        let inner = self.ways(self.inner()).lengths(items);
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
        (outline.is_clear() && outline.turn() == self.turn).then_some(outline)
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
            ways_of.map(|taken| (cost(&ways.lengths(&taken), legs), taken)).collect()
        };
        let (outer_ways, inner_ways) = (all(outer, &legs[0]), all(inner, &legs[1]));
        let mut pairs: Vec<(i128, usize, usize)> = Vec::new();
        for (i, (a, _)) in outer_ways.iter().enumerate() {
            pairs.extend(inner_ways.iter().enumerate().map(|(j, (b, _))| (a + b, i, j)));
        }
        pairs.sort_unstable();
        let outline = |&(_, i, j): &(i128, usize, usize)| {
            self.clear(&outer.lengths(&outer_ways[i].1), &inner_ways[j].1)
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
    fn lengths(&self, taken: &[usize]) -> Vec<(usize, i64)> {
        let mut lengths = Vec::with_capacity(self.base.len());
        self.lengths_into(taken, &mut lengths);
        lengths
    }

    fn lengths_into(&self, taken: &[usize], lengths: &mut Vec<(usize, i64)>) {
        lengths.clear();
        lengths.extend(self.base.iter().map(|&(side, sign, length)| (side, sign * length)));
        for &item in taken {
            let (base, change) = self.items[item];
            lengths[base].1 += self.base[base].1 * change;
        }
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

/// Room that is used again and again.
#[derive(Default)]
struct Scratch {
    /// Side and signed length of each leg of the outer axis.
    lengths: Vec<(usize, i64)>,
    /// Twice the middle of each side along the outer axis.
    places: Vec<i64>,
    /// What each inner item adds, and which it is.
    gains: Vec<(i128, usize)>,
}

/// What one way of the outer axis could give.
#[derive(Clone, Copy)]
struct Bound {
    low: i128,
    high: i128,
    /// Where its items begin.
    place: usize,
}

impl Bound {
    /// The most it could give, times `sense`.
    fn most(&self, sense: i128) -> i128 {
        if sense < 0 { -self.low } else { self.high }
    }
}

/// What every way of the outer axis could give.
struct Bounds {
    list: Vec<Bound>,
    taken: Vec<usize>,
    choose: usize,
}

impl Bounds {
    fn taken(&self, bound: &Bound) -> &[usize] {
        &self.taken[bound.place..bound.place + self.choose]
    }

    /// The ways, those that could give most first.
    fn most_first(&self, sense: i128) -> impl Iterator<Item = &Bound> {
        let mut order: Vec<&Bound> = self.list.iter().collect();
        order.sort_by_key(|bound| -bound.most(sense));
        order.into_iter()
    }
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
    now: Vec<usize>,
    is_done: bool,
}

impl Combinations {
    fn new(of: usize, choose: usize) -> Combinations {
        Combinations { of, now: (0..choose).collect(), is_done: false }
    }

    /// The choice at hand; none after the last.
    fn current(&self) -> Option<&[usize]> {
        (!self.is_done).then_some(&self.now)
    }

    fn advance(&mut self) {
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
        || nearest.is_clear()
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
