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
    /// The same, with the changes of the set that is added.
    length: i64,
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
            length: rounded,
            other_step: if is_shorter { 1 } else { -1 },
            chance: chance_of_other_step_ft(Length::from_nm(leg.length).feet(), way, reading),
        }
    }

    /// How its length changes, in steps, when it takes one of the steps by which the axis misses.
    fn change(&self, misses: i64) -> i64 {
        if misses > 0 { -self.sign } else { self.sign }
    }
}

/// The likely outcomes of one axis of at most 64 walls.
pub(super) fn on_steps(legs: &[Leg], way: StepRounding, reading: Length) -> OnSteps {
    let reading = reading.feet();
    let mut walls = Vec::with_capacity(legs.len());
    walls.extend(legs.iter().map(|leg| Wall::of(leg, way, reading)));
    // Ways are moved and compared often, so they are as small as the number of walls allows.
    match walls.len() {
        ..=16 => outcomes_of::<1>(&mut walls, way),
        _ => outcomes_of::<4>(&mut walls, way),
    }
}

fn outcomes_of<const N: usize>(walls: &mut [Wall], way: StepRounding) -> OnSteps {
    let mut sets = [OtherWay::NONE; 1 << MOST_EITHER_WAY];
    let count = likely_sets(walls, &mut sets);
    let mut closings = Closings::<N>::new(walls, way.step().length().nm());
    for set in sets[..count].iter().take_while(|set| set.chance > LEAST) {
        closings.add(*set);
    }
    closings.outcomes()
}

/// How many steps longer than rounded each of at most 16 `N` walls is: four bits for each wall, which is enough for the
/// five steps by which a wall can change.
#[derive(Clone, Copy, PartialEq)]
struct Changes<const N: usize>([u64; N]);

impl<const N: usize> Changes<N> {
    const NONE: Changes<N> = Changes([0; N]);

    /// The same with one wall longer by so many more steps.
    fn and(mut self, wall: usize, by: i64) -> Changes<N> {
        let part = &mut self.0[wall >> 4];
        *part = part.wrapping_add(by.cast_unsigned() << (4 * (wall & 15)));
        self
    }

    /// Calls `each` with every wall that is changed, and how many steps longer it is.
    fn each(self, mut each: impl FnMut(usize, i64)) {
        for (part, mut left) in self.0.into_iter().enumerate() {
            while left != 0 {
                let place = left.trailing_zeros() >> 2;
                let by = ((left >> (4 * place)) << 60).cast_signed() >> 60;
                left = left.wrapping_sub(by.cast_unsigned() << (4 * place));
                each(16 * part + place as usize, by);
            }
        }
    }
}

/// Walls that go the other way, before the axis is closed.
#[derive(Clone, Copy)]
struct OtherWay<const N: usize> {
    chance: f64,
    changes: Changes<N>,
    /// By how many steps they change the misclosure.
    misses: i64,
}

impl<const N: usize> OtherWay<N> {
    const NONE: OtherWay<N> = OtherWay { chance: 0.0, changes: Changes::NONE, misses: 0 };
}

/// Equally likely ways to close an axis. In each, one of these walls takes so many steps, after the changes; if there
/// are no walls, the changes are the only way. Walls are a mask over all of them.
#[derive(Clone, Copy)]
struct Alike<const N: usize> {
    chance: f64,
    changes: Changes<N>,
    walls: u64,
    steps: i64,
    /// How many ways there are.
    count: usize,
}

impl<const N: usize> Alike<N> {
    const NONE: Alike<N> =
        Alike { chance: 0.0, changes: Changes::NONE, walls: 0, steps: 0, count: 0 };

    /// A single way, with no step after the changes.
    fn one(chance: f64, changes: Changes<N>) -> Alike<N> {
        Alike { chance, changes, count: 1, ..Alike::NONE }
    }
}

/// Lists the sets of walls that may go the other way, likeliest first, so that what follows is soon too rare; returns how
/// many there are.
fn likely_sets<const N: usize>(
    walls: &[Wall],
    sets: &mut [OtherWay<N>; 1 << MOST_EITHER_WAY],
) -> usize {
    // The walls that may go either way, the likeliest first; of equally likely ones, the earlier first.
    let (mut either, mut few) = ([0; MOST_EITHER_WAY], 0);
    for (i, wall) in walls.iter().enumerate().filter(|(_, wall)| wall.chance > 0.01) {
        let is_rarer = |other: &usize| walls[*other].chance < wall.chance;
        let place = either[..few].iter().position(is_rarer).unwrap_or(few);
        if place < MOST_EITHER_WAY {
            few = (few + 1).min(MOST_EITHER_WAY);
            either.copy_within(place..few - 1, place + 1);
            either[place] = i;
        }
    }
    sets[0].chance = walls.iter().map(|wall| 1.0 - wall.chance).product();
    // Each set is one with fewer walls, and the last of its walls.
    let mut count = 1;
    for &i in &either[..few] {
        let wall = &walls[i];
        let odds = wall.chance / (1.0 - wall.chance);
        let mut more = count;
        for place in 0..count {
            let OtherWay { chance, changes, misses } = sets[place];
            let chance = chance * odds;
            // Nor is any set with more walls likelier.
            if chance > LEAST {
                let changes = changes.and(i, wall.other_step);
                let misses = misses + wall.sign * wall.other_step;
                sets[more] = OtherWay { chance, changes, misses };
                more += 1;
            }
        }
        count = more;
    }
    sets[..count].sort_by(|a, b| b.chance.total_cmp(&a.chance));
    count
}

/// The ways to close an axis whose walls were rounded.
struct Closings<'a, const N: usize> {
    walls: &'a mut [Wall],
    unit: i64,
    /// By how many steps the rounded walls miss.
    misses: i64,
    /// The likeliest ways, most likely first; of equally likely ones, the earlier first. How many places of the list
    /// they take, and how many ways these are: without those of the last place, fewer than are considered.
    ways: [Alike<N>; MOST_OF_AN_AXIS + 1],
    places: usize,
    count: usize,
}

/// The walls of a set that can take a step, as a mask over all walls.
struct Able {
    walls: u64,
    /// Of these, the one that ends nearest to its measured length, the longest and the last.
    nearest: usize,
    longest: usize,
    last: usize,
    /// The walls that have no length until they take a step.
    zero: u64,
}

/// Those of these walls that leave no wall without a length when one of them takes steps.
fn leaving_none(walls: u64, zero: u64) -> u64 {
    match zero {
        0 => walls,
        // More than one.
        _ if zero & (zero - 1) != 0 => 0,
        only => walls & only,
    }
}

/// The walls of a mask.
fn each_of(mut walls: u64) -> impl Iterator<Item = usize> {
    std::iter::from_fn(move || {
        let next = (walls != 0).then(|| walls.trailing_zeros() as usize);
        walls &= walls.wrapping_sub(1);
        next
    })
}

impl<'a, const N: usize> Closings<'a, N> {
    fn new(walls: &'a mut [Wall], unit: i64) -> Closings<'a, N> {
        let misses = walls.iter().map(|wall| wall.sign * wall.rounded).sum();
        Closings { walls, unit, misses, ways: [Alike::NONE; _], places: 0, count: 0 }
    }

    /// Adds the ways to close the lengths of a set, if they miss by only a few steps.
    fn add(&mut self, set: OtherWay<N>) {
        let misses = self.misses + set.misses;
        let is_too_rare = misses != 0 && self.is_too_rare(set.chance * MOST_OF_A_WAY);
        if misses.unsigned_abs() > MOST_MISSED as u64 || is_too_rare {
            return;
        }
        let mut have_lengths = true;
        set.changes.each(|wall, by| {
            self.walls[wall].length += by;
            have_lengths &= self.walls[wall].length >= 0;
        });
        if have_lengths {
            match misses {
                0 => self.push(Alike::one(set.chance, set.changes)),
                -1 | 1 => self.take_a_step(set, misses),
                _ => self.take_steps(set, misses),
            }
        }
        set.changes.each(|wall, by| self.walls[wall].length -= by);
    }

    /// Which walls of a set can take a step; `None` if none can.
    fn able(&self, misses: i64) -> Option<Able> {
        let mut able = Able { walls: 0, nearest: 0, longest: 0, last: 0, zero: 0 };
        // Of the nearest: how far off it ends, and its typed length; and the length of the longest.
        let (mut least_off, mut its_typed, mut most) = (i64::MAX, 0, i64::MIN);
        for (i, wall) in self.walls.iter().enumerate() {
            let length = wall.length;
            able.zero |= u64::from(length == 0) << i;
            let change = wall.change(misses);
            if length + change <= 0 {
                continue;
            }
            let off = change * (length * self.unit - wall.typed);
            // Of two that end equally near, the longer.
            if off < least_off || off == least_off && wall.typed > its_typed {
                (least_off, its_typed, able.nearest) = (off, wall.typed, i);
            }
            if length > most {
                (most, able.longest) = (length, i);
            }
            able.walls |= 1 << i;
            able.last = i;
        }
        (able.walls != 0).then_some(able)
    }

    /// Adds the ways in which one wall takes the step by which a set misses.
    fn take_a_step(&mut self, set: OtherWay<N>, misses: i64) {
        let Some(able) = self.able(misses) else { return };
        let all = leaving_none(able.walls, able.zero);
        let one = |wall: usize, share: f64| (all & (1 << wall), share);
        // The likeliest first, so that few change their places.
        for (walls, share) in [
            one(able.nearest, FROM_NEAREST),
            one(able.longest, FROM_LONGEST),
            one(able.last, FROM_LAST),
            (all, FROM_ANY / f64::from(able.walls.count_ones())),
        ] {
            self.push_each(walls, set.chance * share, set.changes, -misses.signum());
        }
    }

    /// Adds the ways in which walls take the two or more steps by which a set misses.
    fn take_steps(&mut self, set: OtherWay<N>, misses: i64) {
        let Some(able) = self.able(misses) else { return };
        let steps = misses.unsigned_abs() as usize;
        let nearest = self.nearest_in_turn(misses, &able);
        let mut push = |steps: &[usize], share: f64| {
            let chance = set.chance * share;
            if self.is_too_rare(chance) {
                return;
            }
            // No wall may vanish.
            let after = |i: usize| {
                let count = steps.iter().filter(|step| **step == i).count() as i64;
                self.walls[i].length + self.walls[i].change(misses) * count
            };
            let mut changed = steps.iter().copied().chain(each_of(able.zero));
            if changed.all(|i| after(i) > 0) {
                let one =
                    |changes: Changes<N>, i: &usize| changes.and(*i, self.walls[*i].change(misses));
                let changes = steps.iter().fold(set.changes, one);
                self.push(Alike::one(chance, changes));
            }
        };
        push(&nearest[..steps], FROM_NEAREST);
        push(&[able.longest; MOST_MISSED][..steps], FROM_LONGEST);
        push(&[able.last; MOST_MISSED][..steps], FROM_LAST);
        let m = f64::from(able.walls.count_ones());
        if steps == 2 && set.chance * FROM_ANY / (m * m) > LEAST / 10.0 {
            self.take_two_steps(set, &able, misses);
        }
    }

    /// Adds the ways in which any two walls take a step each, or one wall takes two.
    fn take_two_steps(&mut self, set: OtherWay<N>, able: &Able, misses: i64) {
        let m = f64::from(able.walls.count_ones());
        let (mut twice, mut later) = (able.walls, able.walls);
        for first in each_of(able.walls) {
            let (here, change) = (1 << first, self.walls[first].change(misses));
            later &= !here;
            if self.walls[first].length + 2 * change <= 0 {
                twice &= !here;
            }
            let others = leaving_none(later, able.zero & !here);
            let chance = set.chance * (2.0 * FROM_ANY / (m * m));
            self.push_each(others, chance, set.changes.and(first, change), -misses.signum());
        }
        let twice = leaving_none(twice, able.zero);
        self.push_each(twice, set.chance * (FROM_ANY / (m * m)), set.changes, -2 * misses.signum());
    }

    /// Step after step, the wall of these that ends nearest to its measured length.
    fn nearest_in_turn(&mut self, misses: i64, able: &Able) -> [usize; MOST_MISSED] {
        let mut taken = [able.last; MOST_MISSED];
        let steps = &mut taken[..misses.unsigned_abs() as usize];
        for step in steps.iter_mut() {
            let key = |i: &usize| {
                let wall = &self.walls[*i];
                let off = wall.change(misses) * (wall.length * self.unit - wall.typed);
                (off, std::cmp::Reverse(wall.typed), *i)
            };
            *step = each_of(able.walls).min_by_key(key).unwrap_or(able.last);
            self.walls[*step].length += self.walls[*step].change(misses);
        }
        for &step in steps.iter() {
            self.walls[step].length -= self.walls[step].change(misses);
        }
        taken
    }

    /// Whether a way this likely is not among the likeliest so far.
    fn is_too_rare(&self, chance: f64) -> bool {
        self.count >= MOST_OF_AN_AXIS && chance <= self.ways[self.places - 1].chance
    }

    /// Adds a way for each of these walls, in which it takes so many steps after the changes.
    fn push_each(&mut self, walls: u64, chance: f64, changes: Changes<N>, steps: i64) {
        if walls != 0 && !self.is_too_rare(chance) {
            let count = walls.count_ones() as usize;
            self.push(Alike { chance, changes, walls, steps, count });
        }
    }

    /// Adds ways if they are among the likeliest so far.
    fn push(&mut self, alike: Alike<N>) {
        if self.is_too_rare(alike.chance) {
            return;
        }
        let mut place = self.places;
        while place > 0 && self.ways[place - 1].chance < alike.chance {
            self.ways[place] = self.ways[place - 1];
            place -= 1;
        }
        self.ways[place] = alike;
        self.places += 1;
        self.count += alike.count;
        // What is now beyond the likeliest.
        while self.count - self.ways[self.places - 1].count >= MOST_OF_AN_AXIS {
            self.places -= 1;
            self.count -= self.ways[self.places].count;
        }
    }

    /// The outcomes of the likeliest ways, in the order of the likeliest way to each.
    fn outcomes(&self) -> OnSteps {
        let mut by_wall = Vec::with_capacity(self.walls.len());
        let rounded = |wall: &Wall| Row([wall.rounded as f64; MOST_OF_AN_AXIS]);
        by_wall.extend(self.walls.iter().map(rounded));
        let mut left = self.count.min(MOST_OF_AN_AXIS);
        let mut chances: Vec<f64> = Vec::with_capacity(left);
        let mut known = [Changes::<N>::NONE; MOST_OF_AN_AXIS];
        for alike in &self.ways[..self.places] {
            let mut walls = each_of(alike.walls);
            for _ in 0..alike.count.min(left) {
                let step = walls.next().map(|wall| (wall, alike.steps * self.walls[wall].sign));
                let changes = step.map_or(alike.changes, |(wall, by)| alike.changes.and(wall, by));
                let place = chances.len();
                if let Some(same) = known[..place].iter().position(|other| *other == changes) {
                    chances[same] += alike.chance;
                    continue;
                }
                known[place] = changes;
                chances.push(alike.chance);
                changes.each(|wall, by| by_wall[wall].0[place] += by as f64);
            }
            left = left.saturating_sub(alike.count);
        }
        let all = chances.iter().sum();
        OnSteps { by_wall, chances, all }
    }
}
