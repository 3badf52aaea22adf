//! The likely ways in which an office rounds and closes the walls of one axis: which walls a reading error makes it
//! round to the other step, and which walls then absorb the leftover steps.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_possible_wrap,
    reason = "chances are floats; steps are few"
)]

use crate::areas::uncertainty::chance_of_other_step_ft;
use crate::geometry::traverse::{Leg, StepRounding};
use crate::units::length::Length;

/// The most outcomes of an axis that are considered, and the lowest probability of each.
pub(super) const MOST_OF_AN_AXIS: usize = 24;
const LEAST: f64 = 0.004;
/// The largest misclosure in steps for which closings are considered.
const MOST_MISSED: usize = 4;
/// The most walls of an axis for which both ways of rounding are considered.
const MOST_EITHER_WAY: usize = 4;

/// How often each wall gives up a leftover step: any wall alike; the wall that ends nearest to its measured length; the
/// longest; the last one walked. Our judgment; no data found.
const FROM_ANY: f64 = 0.40;
const FROM_NEAREST: f64 = 0.30;
const FROM_LONGEST: f64 = 0.15;
const FROM_LAST: f64 = 0.15;

/// The outcomes of one axis. Ways to close the axis that come to the same lengths are one outcome.
#[derive(Clone, Debug)]
pub(super) struct OnSteps {
    /// The length of each wall in each outcome, in whole steps.
    by_wall: Vec<Row>,
    /// The probability of each outcome.
    pub(super) chances: Vec<f64>,
    /// The sum of the probabilities.
    pub(super) all: f64,
}

/// A number for each outcome of an axis; those after the last outcome mean nothing.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Row(pub(super) [f64; MOST_OF_AN_AXIS]);

impl Row {
    /// Adds a multiple of another row to it.
    pub(super) fn add(&mut self, times: f64, other: &Row) {
        self.0.iter_mut().zip(&other.0).for_each(|(here, other)| *here += times * other);
    }
}

impl OnSteps {
    /// The length of each wall in each outcome, in whole steps.
    pub(super) fn by_wall(&self) -> &[Row] {
        &self.by_wall
    }

    /// The length of one wall in each outcome, in whole steps.
    pub(super) fn of_wall(&self, wall: usize) -> &[f64] {
        &self.by_wall[wall].0[..self.chances.len()]
    }

    /// The lengths of all walls in one outcome.
    #[cfg(test)]
    pub(super) fn lengths(&self, outcome: usize) -> Vec<i64> {
        self.by_wall.iter().map(|lengths| lengths.0[outcome] as i64).collect()
    }
}

/// The most that any one way to take a remaining step has of all.
const MOST_OF_A_WAY: f64 = FROM_ANY.max(FROM_NEAREST).max(FROM_LONGEST).max(FROM_LAST);

/// A wall of the axis.
struct Wall {
    /// 1 if it runs along the axis, -1 if against it.
    sign: i64,
    /// Its length as typed, in nanometers, and rounded, in steps.
    typed: i64,
    rounded: i64,
    /// How its rounded length changes if a reading error makes it round to the other step, and how likely that is.
    other_step: i64,
    chance: f64,
}

impl Wall {
    /// The wall of a leg, if tape readings are off by up to `reading` feet.
    fn of(leg: &Leg, way: StepRounding, reading: f64) -> Wall {
        let rounded = way.steps(leg.length);
        let is_shorter = rounded * way.step().length().nm() < leg.length;
        Wall {
            sign: leg.sign,
            typed: leg.length,
            rounded,
            other_step: if is_shorter { 1 } else { -1 },
            chance: chance_of_other_step_ft(Length::from_nm(leg.length).feet(), way, reading),
        }
    }

    /// How its length changes, in steps, when it takes one of the steps by which the axis misses.
    fn change(&self, misses: i8) -> i64 {
        -i64::from(misses.signum()) * self.sign
    }
}

/// The likely outcomes of one axis of at most 64 walls.
pub(super) fn on_steps(legs: &[Leg], way: StepRounding, reading: Length) -> OnSteps {
    let walls: Vec<Wall> = legs.iter().map(|leg| Wall::of(leg, way, reading.feet())).collect();
    let mut closings = Closings::new(&walls, way.step().length().nm());
    for set in closings.sets() {
        closings.add(set);
    }
    closings.outcomes()
}

/// A set of walls that go the other way, as a mask over those that may go either way, and its probability.
#[derive(Clone, Copy, Default)]
struct Set {
    mask: u8,
    chance: f64,
}

/// The ways to close an axis whose walls were rounded.
struct Closings<'a> {
    walls: &'a [Wall],
    unit: i64,
    /// The walls that may go either way, the likeliest first.
    either: Vec<usize>,
    /// The likeliest ways, most likely first; of equally likely ones, the earlier first.
    ways: Vec<ClosingWay>,
    /// The lengths of the walls in a set, in steps.
    lengths: Vec<i64>,
}

/// A way to close an axis.
#[derive(Clone, Copy)]
struct ClosingWay {
    chance: f64,
    /// The walls that go the other way, as in [`Set`].
    mask: u8,
    /// The number of steps by which these miss, and the walls that take them, one for each.
    misses: i8,
    steps: [u8; MOST_MISSED],
}

/// The walls of a set that can take a step.
struct Able {
    /// Those that can, as a mask over all walls.
    walls: u64,
    /// Of these, the one that ends nearest to its measured length, the longest and the last.
    nearest: usize,
    longest: usize,
    last: usize,
    /// Whether every wall has a length before any takes a step.
    none_is_zero: bool,
}

impl Able {
    fn iter(&self) -> impl Iterator<Item = usize> + Clone + use<> {
        let mut left = self.walls;
        std::iter::from_fn(move || {
            let next = (left != 0).then(|| left.trailing_zeros() as usize);
            left &= left.wrapping_sub(1);
            next
        })
    }
}

/// The lengths of an outcome, as differences from the rounded ones: four bits for each wall, which is enough for the
/// five steps by which a wall can change.
type Lengths = [u64; 4];

impl<'a> Closings<'a> {
    fn new(walls: &'a [Wall], unit: i64) -> Closings<'a> {
        let mut either: Vec<usize> = (0..walls.len()).filter(|&i| walls[i].chance > 0.01).collect();
        either.sort_by(|&a, &b| walls[b].chance.total_cmp(&walls[a].chance).then(a.cmp(&b)));
        either.truncate(MOST_EITHER_WAY);
        let ways = Vec::with_capacity(MOST_OF_AN_AXIS + 1);
        Closings { walls, unit, either, ways, lengths: Vec::with_capacity(walls.len()) }
    }

    /// The likely sets, the likeliest first, so that what follows is soon too rare.
    fn sets(&self) -> impl Iterator<Item = Set> + use<> {
        let mut sets = [Set::default(); 1 << MOST_EITHER_WAY];
        sets[0].chance = self.walls.iter().map(|wall| 1.0 - wall.chance).product();
        // Each set is one with fewer walls, and the last of its walls.
        let mut count = 1;
        for &wall in &self.either {
            let chance = self.walls[wall].chance;
            for i in 0..count {
                let mask = sets[i].mask | count as u8;
                sets[count + i] = Set { mask, chance: sets[i].chance * (chance / (1.0 - chance)) };
            }
            count *= 2;
        }
        sets[..count].sort_by(|a, b| b.chance.total_cmp(&a.chance));
        sets.into_iter().take(count).take_while(|set| set.chance > LEAST)
    }

    /// Calls `each` with every wall of a set that goes the other way, and how many steps longer it then is.
    fn others(&self, mut mask: u8, mut each: impl FnMut(usize, i64)) {
        while mask != 0 {
            let wall = self.either[mask.trailing_zeros() as usize];
            each(wall, self.walls[wall].other_step);
            mask &= mask - 1;
        }
    }

    /// Adds the ways to close the lengths of a set, if they miss by only a few steps.
    fn add(&mut self, set: Set) {
        let mut lengths = std::mem::take(&mut self.lengths);
        lengths.clear();
        lengths.extend(self.walls.iter().map(|wall| wall.rounded));
        self.others(set.mask, |wall, by| lengths[wall] += by);
        let misses: i64 =
            self.walls.iter().zip(&lengths).map(|(wall, length)| wall.sign * length).sum();
        let is_too_rare = misses != 0 && self.is_too_rare(set.chance * MOST_OF_A_WAY);
        let is_few = misses.unsigned_abs() <= MOST_MISSED as u64;
        if is_few && !is_too_rare && lengths.iter().all(|length| *length >= 0) {
            let Set { mask, chance } = set;
            let way = ClosingWay { chance, mask, misses: misses as i8, steps: [0; MOST_MISSED] };
            match misses.unsigned_abs() {
                0 => self.push(way, &[], 1.0),
                1 => self.take_a_step(way, &lengths),
                _ => self.take_steps(way, &lengths),
            }
        }
        self.lengths = lengths;
    }

    /// Which walls of these lengths can take a step; `None` if none can.
    fn able(&self, misses: i8, lengths: &[i64]) -> Option<Able> {
        let mut able = Able { walls: 0, nearest: 0, longest: 0, last: 0, none_is_zero: true };
        let mut least_off = i64::MAX;
        for (i, (wall, &length)) in self.walls.iter().zip(lengths).enumerate() {
            able.none_is_zero &= length > 0;
            let change = wall.change(misses);
            if length + change <= 0 {
                continue;
            }
            let off = change * (length * self.unit - wall.typed);
            let is_first = able.walls == 0;
            // Of two that end equally near, the longer.
            let is_longer = wall.typed > self.walls[able.nearest].typed;
            if is_first || off < least_off || off == least_off && is_longer {
                (least_off, able.nearest) = (off, i);
            }
            if is_first || length > lengths[able.longest] {
                able.longest = i;
            }
            able.walls |= 1 << i;
            able.last = i;
        }
        (able.walls != 0).then_some(able)
    }

    /// Adds the ways in which one wall takes the step by which these lengths miss.
    fn take_a_step(&mut self, way: ClosingWay, lengths: &[i64]) {
        let Some(able) = self.able(way.misses, lengths) else { return };
        // No wall may vanish.
        let stay = |i: usize| {
            let has_length = |(other, length): (usize, &i64)| other == i || *length > 0;
            able.none_is_zero || lengths.iter().enumerate().all(has_length)
        };
        let share = FROM_ANY / f64::from(able.walls.count_ones());
        let of_any = able.iter().map(|i| (i, share));
        let of_one =
            [(able.nearest, FROM_NEAREST), (able.longest, FROM_LONGEST), (able.last, FROM_LAST)];
        for (i, share) in of_any.chain(of_one).filter(|(i, _)| stay(*i)) {
            self.push(way, &[i], share);
        }
    }

    /// Adds the ways in which walls take the two or more steps by which these lengths miss.
    fn take_steps(&mut self, way: ClosingWay, lengths: &[i64]) {
        let Some(able) = self.able(way.misses, lengths) else { return };
        let (walls, steps) = (self.walls, usize::from(way.misses.unsigned_abs()));
        let nearest = self.nearest_in_turn(way.misses, lengths, &able);
        // No wall may vanish.
        let stay = |steps: &[usize]| {
            let after = |i: usize| {
                let count = steps.iter().filter(|step| **step == i).count() as i64;
                lengths[i] + walls[i].change(way.misses) * count
            };
            let all = || (0..walls.len()).all(|i| after(i) > 0);
            if able.none_is_zero { steps.iter().all(|&i| after(i) > 0) } else { all() }
        };
        let mut push = |steps: &[usize], share: f64| {
            if !self.is_too_rare(way.chance * share) && stay(steps) {
                self.push(way, steps, share);
            }
        };
        push(&nearest, FROM_NEAREST);
        push(&[able.longest; MOST_MISSED][..steps], FROM_LONGEST);
        push(&[able.last; MOST_MISSED][..steps], FROM_LAST);
        let m = f64::from(able.walls.count_ones());
        if steps == 2 && way.chance * FROM_ANY / (m * m) > LEAST / 10.0 {
            let mut later = able.iter();
            while let Some(i) = later.next() {
                push(&[i, i], FROM_ANY / (m * m));
                later.clone().for_each(|j| push(&[i, j], 2.0 * FROM_ANY / (m * m)));
            }
        }
    }

    /// Step after step, the wall of these that ends nearest to its measured length.
    fn nearest_in_turn(&self, misses: i8, lengths: &[i64], able: &Able) -> Vec<usize> {
        let mut lengths = lengths.to_vec();
        let mut next = || {
            let key = |i: &usize| {
                let (wall, length) = (&self.walls[*i], lengths[*i]);
                let off = wall.change(misses) * (length * self.unit - wall.typed);
                (off, std::cmp::Reverse(wall.typed), *i)
            };
            let next = able.iter().min_by_key(key).unwrap_or(able.last);
            lengths[next] += self.walls[next].change(misses);
            next
        };
        (0..misses.unsigned_abs()).map(|_| next()).collect()
    }

    /// Whether a way this likely is not among the likeliest so far.
    fn is_too_rare(&self, chance: f64) -> bool {
        self.ways.get(MOST_OF_AN_AXIS - 1).is_some_and(|least| chance <= least.chance)
    }

    /// Adds a way in which these walls take the steps, with its share of the set's probability, if it is among the
    /// likeliest so far.
    fn push(&mut self, mut way: ClosingWay, walls: &[usize], share: f64) {
        way.chance *= share;
        if self.is_too_rare(way.chance) {
            return;
        }
        way.steps.iter_mut().zip(walls).for_each(|(step, wall)| *step = *wall as u8);
        let place = self.ways.iter().rposition(|other| other.chance >= way.chance);
        self.ways.truncate(MOST_OF_AN_AXIS - 1);
        self.ways.insert(place.map_or(0, |i| i + 1), way);
    }

    /// Calls `each` with every wall that a way changes, and how many steps longer than rounded it then is.
    fn changes(&self, way: &ClosingWay, mut each: impl FnMut(usize, i64)) {
        self.others(way.mask, &mut each);
        for &wall in &way.steps[..usize::from(way.misses.unsigned_abs())] {
            let wall = usize::from(wall);
            each(wall, self.walls[wall].change(way.misses));
        }
    }

    /// The outcomes of the likeliest ways, in the order of the likeliest way to each.
    fn outcomes(&self) -> OnSteps {
        let rounded = self.walls.iter().map(|wall| Row([wall.rounded as f64; MOST_OF_AN_AXIS]));
        let mut by_wall: Vec<Row> = rounded.collect();
        let mut chances: Vec<f64> = Vec::with_capacity(self.ways.len());
        let mut known = [Lengths::default(); MOST_OF_AN_AXIS];
        for way in &self.ways {
            let mut lengths = Lengths::default();
            self.changes(way, |wall, by| {
                let part = &mut lengths[wall >> 4];
                *part = part.wrapping_add(by.cast_unsigned() << (4 * (wall & 15)));
            });
            let place = chances.len();
            // Most differ in the first walls.
            let is_same = |other: &Lengths| other[0] == lengths[0] && other[1..] == lengths[1..];
            if let Some(same) = known[..place].iter().position(is_same) {
                chances[same] += way.chance;
                continue;
            }
            known[place] = lengths;
            chances.push(way.chance);
            self.changes(way, |wall, by| by_wall[wall].0[place] += by as f64);
        }
        let all = chances.iter().sum();
        OnSteps { by_wall, chances, all }
    }
}
