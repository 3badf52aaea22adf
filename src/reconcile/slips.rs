//! Sides misread: which lengths a length is taken for, and what the area then is once the other sides close it.
#![expect(clippy::float_arithmetic, reason = "explanations are weighed in floats")]

use std::cmp::Reverse;

use crate::geometry::compass::Axis;
use crate::geometry::outline::Outline;
use crate::geometry::outline::Vector;
use crate::geometry::traverse::{Leg, Traverse, Way};
use crate::units::area::Area;
use crate::units::length::{Length, Step};

/// One side misread.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Slip {
    pub(crate) effect: f64,
    pub(crate) space: usize,
    /// Its place among the sides.
    pub(crate) side: usize,
    /// The same for both, counted through the house.
    pub(crate) line: usize,
    /// What the record would have for it.
    pub(crate) length: Length,
}

/// An outline under one setting whose sides may have been misread.
pub(super) struct Walked<'a> {
    pub(super) space: usize,
    /// The line of its first side.
    pub(super) first_line: usize,
    /// 1 if it is counted, -1 if it is taken off.
    pub(super) sign: f64,
    pub(super) walk: &'a Traverse,
    pub(super) outline: &'a Outline,
}

/// Every ordinary slip on one side of an outline, the other sides closing it.
pub(super) fn slips(here: &Walked<'_>, way: Way, list: &mut Vec<Slip>) {
    const MOST_SIDES: usize = 80;
    let Walked { space, first_line, sign, walk, outline } = *here;
    if walk.has_bearings() || walk.sides.len() > MOST_SIDES {
        return;
    }
    let before = outline.area().sq_ft();
    let gradients = outline.doubled_gradients();
    let vectors = outline.vectors();
    for axis in Axis::BOTH {
        let legs = walk.legs(axis);
        let part = |vector: &Vector| if axis == Axis::North { vector.north } else { vector.east };
        let gradient = |side: usize| {
            let (east, north) = gradients[side];
            if axis == Axis::North { north } else { east }
        };
        let closings = Closings::new(&legs, way, |side| (gradient(side), part(&vectors[side])));
        for (i, leg) in legs.iter().enumerate() {
            let Some(source) = walk.sides[leg.side].source else { continue };
            let mixed_up = way.rounded(inches_as_tenths(leg.length));
            for length in misread(part(&vectors[leg.side]).abs(), mixed_up) {
                let Some(doubled) = closings.grown(i, length) else { continue };
                let effect = Area::from_half_nm2(doubled).sq_ft();
                if before + effect <= 0.0 {
                    continue;
                }
                list.push(Slip {
                    effect: sign * effect,
                    space,
                    side: source,
                    line: first_line + source,
                    length: Length::from_nm(length),
                });
            }
        }
    }
}

/// What an outline grows by, doubled, when one leg of an axis has another length and the others close it.
///
/// The others are moved one step at a time, always the one that is then nearest to its own length. That goes round
/// and round in one order, in which those that begin a step further off come in a round later, so that many
/// moves are found at once. The area is linear in the legs of one axis.
struct Closings<'a, F> {
    legs: &'a [Leg],
    way: Way,
    /// Of a side: how the outline grows with it, and its length in the outline, signed.
    of: F,
    rounded: Vec<i64>,
    /// What the rounded legs miss by, and what the outline has grown by with them.
    missed: i64,
    grown: i128,
    /// Against what is missed north or east, and against what is missed the other way.
    moves: [Vec<Move>; 2],
}

/// What moving a leg one step does.
#[derive(Clone, Copy)]
struct Move {
    leg: usize,
    /// What the outline grows by, doubled, over the length of a step.
    adds: i64,
    /// The first round in which it moves, and the one after the last.
    from: i64,
    to: i64,
}

impl<'a, F: Fn(usize) -> (i64, i64)> Closings<'a, F> {
    fn new(legs: &'a [Leg], way: Way, of: F) -> Closings<'a, F> {
        let rounded: Vec<i64> = legs.iter().map(|leg| way.rounded(leg.length)).collect();
        let missed = legs.iter().zip(&rounded).map(|(leg, length)| leg.sign * length).sum();
        let mut all =
            Closings { legs, way, of, rounded, missed, grown: 0, moves: [Vec::new(), Vec::new()] };
        all.grown = (0..legs.len()).map(|i| all.grows(i, all.rounded[i])).sum();
        all.moves = [all.in_order(1), all.in_order(-1)];
        all
    }

    /// What the outline grows by if a leg has this length.
    fn grows(&self, leg: usize, length: i64) -> i128 {
        let (gradient, own) = (self.of)(self.legs[leg].side);
        i128::from(gradient) * i128::from(self.legs[leg].sign * length - own)
    }

    /// The moves against what is missed `toward` north or east, in the order in which they are made in each round.
    fn in_order(&self, toward: i64) -> Vec<Move> {
        let unit = self.way.step().length().nm();
        let change = |i: usize| if self.legs[i].sign == toward { -1 } else { 1 };
        let off = |i: usize| change(i) * (self.rounded[i] - self.legs[i].length);
        let nearest = (0..self.legs.len()).map(off).min().unwrap_or(0);
        let round = |i: usize| (off(i) - nearest).div_euclid(unit);
        let mut order: Vec<usize> = (0..self.legs.len()).collect();
        // Where they tie the shorter wall is moved, then the one that adds more to the area: neither the start of the walk
        // nor its direction decides.
        let adds = |i: usize| (self.of)(self.legs[i].side).0 * self.legs[i].sign * change(i);
        order.sort_unstable_by_key(|&i| {
            (off(i) - unit * round(i), self.legs[i].length, Reverse(adds(i)), i)
        });
        let one = |leg: usize| {
            let (gradient, _) = (self.of)(self.legs[leg].side);
            let most = if change(leg) > 0 { i64::MAX } else { self.rounded[leg].div_euclid(unit) };
            let from = round(leg);
            let adds = gradient * self.legs[leg].sign * change(leg);
            Move { leg, adds, from, to: from.saturating_add(most) }
        };
        order.into_iter().map(one).collect()
    }

    /// With one leg of this length; none where the others cannot close it.
    fn grown(&self, leg: usize, length: i64) -> Option<i128> {
        let missed = self.missed + self.legs[leg].sign * (length - self.rounded[leg]);
        let moves = &self.moves[usize::from(missed < 0)];
        let unit = self.way.step().length().nm();
        let steps = missed.abs().checked_div(unit)?;
        let others = self.grown - self.grows(leg, self.rounded[leg]);
        let moved = moved(moves, leg, steps)? * i128::from(unit);
        Some(others + self.grows(leg, length) + moved)
    }
}

/// What so many moves of all legs but one add, over the length of a step; none if there are not so many.
fn moved(moves: &[Move], but: usize, mut steps: i64) -> Option<i128> {
    let (mut sum, mut round) = (0_i128, 0);
    let others = || moves.iter().filter(|one| one.leg != but);
    while steps > 0 {
        // Those that move in this round and in the next ones, until one comes in or can no more.
        let (mut number, mut adds, mut until) = (0, 0_i64, i64::MAX);
        for one in others() {
            if round < one.from {
                until = until.min(one.from);
            } else if round < one.to {
                number += 1;
                adds += one.adds;
                until = until.min(one.to);
            }
        }
        let rounds = match steps.checked_div(number) {
            Some(rounds) => rounds.min(until - round),
            None if until == i64::MAX => return None,
            None => until - round,
        };
        sum += i128::from(rounds) * i128::from(adds);
        steps -= rounds * number;
        round += rounds;
        if steps < number && round < until {
            let moving = others().filter(|one| (one.from..one.to).contains(&round));
            let last: i64 = moving.zip(0..steps).map(|(one, _)| one.adds).sum();
            return Some(sum + i128::from(last));
        }
    }
    Some(sum)
}

/// Whole-foot lengths that a whole-foot length is misread as: digits swapped, dropped or doubled, a foot, five or ten more or less; and `mixed_up`, what inches read as tenths give.
fn misread(length: i64, mixed_up: i64) -> Vec<i64> {
    let foot = Length::FOOT.nm();
    let feet = length.checked_div(foot).unwrap_or(0);
    let mut list: Vec<i64> = Vec::with_capacity(24);
    list.extend([1, -1, 5, -5, 10, -10].iter().map(|more| feet + more));
    let digits = digits(feet);
    for i in 0..digits.len() {
        let (head, tail) = digits.split_at(i);
        let Some((digit, rest)) = tail.split_first() else { continue };
        let digit = [*digit];
        list.extend(number(&[head, rest]));
        list.extend(number(&[head, &digit, &digit, rest]));
        if let Some((next, after)) = rest.split_first() {
            list.extend(number(&[head, &[*next], &digit, after]));
        }
    }
    list.extend(mixed_up.checked_div(foot));
    list.sort_unstable();
    list.dedup();
    list.retain(|&other| other > 0 && other != feet && other < 1_000);
    list.into_iter().map(|feet| feet * foot).collect()
}

/// The digits of a number over 0, the first first.
fn digits(number: i64) -> Vec<i64> {
    let mut left = number.max(0);
    let mut digits = Vec::with_capacity(6);
    while left > 0 || digits.is_empty() {
        digits.push(left.rem_euclid(10));
        left = left.div_euclid(10);
    }
    digits.reverse();
    digits
}

/// The number of digits in parts; none of none.
fn number(parts: &[&[i64]]) -> Option<i64> {
    let mut digits = parts.iter().copied().flatten().peekable();
    digits.peek()?;
    Some(digits.fold(0, |number, digit| 10 * number + digit))
}

/// A length with its whole inches read as tenths of a foot: 30' 5" as 30.5'.
fn inches_as_tenths(length: i64) -> i64 {
    let foot = Length::FOOT.nm();
    let inches = length.rem_euclid(foot).checked_div(Length::INCH.nm()).unwrap_or(0);
    if inches > 9 {
        return length;
    }
    length - length.rem_euclid(foot) + inches * Step::TenthFoot.length().nm()
}

#[cfg(test)]
#[expect(
    clippy::unwrap_used,
    clippy::integer_division,
    reason = "a test that cannot go on has failed"
)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::units::length::Halves;

    const FOOT: i64 = Length::FOOT.nm();

    /// The lengths that close nearest to the legs' own with one of them misread: one foot at a time on the leg whose
    /// square then grows least, the shortest first where they tie, then the one that adds the most to the area.
    fn closed_one_by_one(
        legs: &[Leg],
        way: Way,
        misread: (usize, i64),
        of: impl Fn(usize) -> (i64, i64),
    ) -> Option<Vec<i64>> {
        let mut lengths: Vec<i64> = legs.iter().map(|leg| way.rounded(leg.length)).collect();
        lengths[misread.0] = misread.1;
        loop {
            let misses: i64 =
                legs.iter().zip(&lengths).map(|(leg, length)| leg.sign * length).sum();
            if misses == 0 {
                return Some(lengths);
            }
            let moved = |i: usize| lengths[i] - misses.signum() * legs[i].sign * FOOT;
            let square = |length: i64, i: usize| i128::from(length - legs[i].length).pow(2);
            let grows = |i: usize| square(moved(i), i) - square(lengths[i], i);
            let best =
                (0..legs.len()).filter(|&i| i != misread.0 && moved(i) >= 0).min_by_key(|&i| {
                    let adds = of(legs[i].side).0 * legs[i].sign * (moved(i) - lengths[i]).signum();
                    (grows(i), legs[i].length, Reverse(adds), i)
                })?;
            lengths[best] = moved(best);
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(4_000))]

        /// Many moves found at once come to what the closing itself comes to, however far off the misread wall is.
        #[test]
        fn what_a_misread_wall_adds_is_what_closing_with_it_adds(
            walls in proptest::collection::vec((1_i64..480, any::<bool>(), -9_i64..9), 2..9),
            which in 0_usize..9,
            misread in 1_i64..400,
            how in 0_usize..4,
        ) {
            // In twelfths of a foot or in tenths, so that halves are among them.
            let part = if how % 2 == 0 { FOOT / 12 } else { FOOT / 10 };
            let leg = |(side, &(parts, ahead, _)): (usize, &(i64, bool, i64))| Leg {
                side,
                sign: if ahead { 1 } else { -1 },
                length: parts * part,
                follows: false,
            };
            let legs: Vec<Leg> = walls.iter().enumerate().map(leg).collect();
            let ways = [
                Way::Nearest(Step::WholeFoot, Halves::Up),
                Way::Nearest(Step::WholeFoot, Halves::Down),
                Way::Up(Step::WholeFoot),
                Way::Down(Step::WholeFoot),
            ];
            let (way, i) = (ways[how], which % legs.len());
            let of = |side: usize| (walls[side].2, 7 * FOOT);
            let found = Closings::new(&legs, way, of).grown(i, misread * FOOT);
            let grown = closed_one_by_one(&legs, way, (i, misread * FOOT), of).map(|lengths| {
                let one = |(leg, length): (&Leg, &i64)| {
                    i128::from(of(leg.side).0) * i128::from(leg.sign * length - of(leg.side).1)
                };
                legs.iter().zip(&lengths).map(one).sum::<i128>()
            });
            prop_assert_eq!(found, grown);
        }
    }

    #[test]
    fn a_length_is_misread_in_the_ordinary_ways() {
        let feet = |list: Vec<i64>| -> Vec<i64> {
            list.into_iter().map(|nm| nm.checked_div(FOOT).unwrap()).collect()
        };
        // A foot, five and ten either way; 2 and 4 dropped, doubled, swapped.
        let all = [2, 4, 14, 19, 23, 25, 29, 34, 42, 224, 244];
        assert_eq!(feet(misread(24 * FOOT, 24 * FOOT)), all);
        assert!(feet(misread(24 * FOOT, 26 * FOOT)).contains(&26));
        // No wall of nothing, none of 1,000 ft, and not the length itself: of 100 a digit dropped leaves 10 or 00, one doubled
        // makes 1,100 or 1,000.
        assert_eq!(feet(misread(100 * FOOT, 100 * FOOT)), [10, 90, 95, 99, 101, 105, 110]);
        // Five less would be nothing; a digit dropped leaves none, one doubled makes 55.
        assert_eq!(feet(misread(5 * FOOT, 5 * FOOT)), [4, 6, 10, 15, 55]);
        // 907 is 970, 097; without a digit 97, 07 and 90; 9,907 and the like are too long.
        assert_eq!(
            feet(misread(907 * FOOT, 907 * FOOT)),
            [7, 90, 97, 897, 902, 906, 908, 912, 917, 970]
        );
    }

    #[test]
    fn inches_up_to_nine_are_read_as_tenths() {
        let inch = FOOT / 12;
        let tenths =
            |inches: i64| (inches_as_tenths(30 * FOOT + inches * inch) - 30 * FOOT) * 10 / FOOT;
        assert_eq!([0, 1, 5, 9].map(tenths), [0, 1, 5, 9]);
        // Ten inches are no digit; half an inch is not read.
        assert_eq!(inches_as_tenths(30 * FOOT + 10 * inch), 30 * FOOT + 10 * inch);
        assert_eq!(inches_as_tenths(30 * FOOT + 5 * inch + inch / 2), 30 * FOOT + FOOT / 2);
    }
}
