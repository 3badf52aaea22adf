//! Possible errors of a total in whole square feet, with their probabilities, for one space and for several together.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_possible_wrap,
    reason = "chances are floats; bins are small"
)]

use std::ops::Range;

/// The largest error that is listed, in square feet, plus or minus.
pub(super) const REACH: usize = 160;
/// The same as a float.
pub(super) const REACH_SQ_FT: f64 = REACH as f64;

/// The possible errors of a total in whole square feet, with their probabilities. The probabilities listed add up to
/// less than 1 if other errors are possible.
#[derive(Clone, Debug)]
pub(super) struct Outcomes {
    pub(super) list: Vec<(i32, f64)>,
    /// The probability that the error is within [`REACH`].
    listed: f64,
}

impl Outcomes {
    /// The outcome without any error: exactly the computed area.
    pub(super) fn sure() -> Outcomes {
        Outcomes::new(vec![(0, 1.0)])
    }

    /// Outcomes with none listed.
    pub(super) fn open() -> Outcomes {
        Outcomes::new(Vec::new())
    }

    fn new(list: Vec<(i32, f64)>) -> Outcomes {
        let near = list.iter().filter(|(off, _)| is_listed(f64::from(*off)));
        let listed: f64 = near.map(|(_, chance)| chance).sum();
        Outcomes { list, listed }
    }

    /// The outcomes out of a probability for each error from the `least` on, all of them within [`REACH`].
    pub(super) fn from_least(least: i32, chances: &[f64]) -> Outcomes {
        let (mut list, mut listed) = (Vec::with_capacity(chances.len()), 0.0);
        for (place, &chance) in chances.iter().enumerate() {
            if chance > 0.0 {
                list.push((least + place as i32, chance));
                listed += chance;
            }
        }
        Outcomes { list, listed }
    }

    /// The probability that the error is not within [`REACH`].
    fn rest(&self) -> f64 {
        (1.0 - self.listed).max(0.0)
    }

    /// The probability of one error, and that of all errors not listed, if there is no other space.
    fn alone(&self, off: f64) -> (f64, f64) {
        let wanted = off as i32;
        let here = |(error, _): &&(i32, f64)| *error == wanted;
        let at: f64 = self.list.iter().filter(here).map(|(_, chance)| chance).sum();
        (if is_listed(off) { at } else { 0.0 }, self.rest())
    }

    /// These errors as errors of a total that has no other space.
    fn as_total(&self) -> Together {
        let near = || self.list.iter().filter(|(off, _)| is_listed(f64::from(*off)));
        let offs = || near().map(|(off, _)| *off as isize);
        let (Some(least), Some(most)) = (offs().min(), offs().max()) else {
            return Together { chances: Vec::new(), least: 0, rest: 1.0 };
        };
        let mut chances = vec![0.0; (most - least + 1) as usize];
        near().for_each(|(off, chance)| chances[(*off as isize - least) as usize] += chance);
        Together { chances, least, rest: self.rest() }
    }
}

/// The nearest whole number, halves away from zero. The same as `f64::round`, which is a slow library call on most
/// machines.
pub(super) fn nearest_whole(number: f64) -> i32 {
    /// The largest number below a half.
    const HALF: f64 = 0.5 - 0.25 * f64::EPSILON;
    (number + HALF.copysign(number)) as i32
}

/// A whole number below 2³¹ in size that a float holds. A cast also asks what to do with any other number, so that a
/// processor cannot do several at once.
pub(super) fn whole(number: f64) -> i32 {
    /// A float this large ends at the point: of a sum with it, the last bits are the whole number.
    const ENDS_AT_THE_POINT: f64 = (3_u64 << 51) as f64;
    (number + ENDS_AT_THE_POINT).to_bits() as i32
}

/// Whether an error of this many square feet is within what is listed.
pub(super) fn is_listed(off: f64) -> bool {
    off.abs() <= REACH_SQ_FT
}

/// The possible errors of several spaces together, each multiplied by a factor.
#[derive(Clone, Debug)]
pub(super) struct Together {
    /// The probability of each error from `least` on, in whole square feet.
    chances: Vec<f64>,
    least: isize,
    /// The probability of any other error.
    pub(super) rest: f64,
}

impl Together {
    /// The errors of a total before any space is added: none.
    pub(super) fn new() -> Together {
        Together { chances: vec![1.0], least: 0, rest: 0.0 }
    }

    /// The errors out of a probability for each from the `least` on, all of them within [`REACH`].
    pub(super) fn from_least(least: i32, chances: Vec<f64>) -> Together {
        let rest = (1.0 - chances.iter().sum::<f64>()).max(0.0);
        Together { chances, least: least as isize, rest }
    }

    /// The lowest and the highest listed error; `None` if none is listed.
    pub(super) fn ends(&self) -> Option<(f64, f64)> {
        let most = self.least + self.chances.len() as isize - 1;
        (!self.chances.is_empty()).then_some((self.least as f64, most as f64))
    }

    fn is_of_nothing(&self) -> bool {
        self.chances == [1.0] && self.least == 0
    }

    /// The highest probability of any listed error.
    pub(super) fn most(&self) -> f64 {
        self.chances.iter().fold(0.0, |most, &chance| if chance > most { chance } else { most })
    }

    /// Adds one more space, multiplied by `factor`. Where that does not give a whole number, the total is `over`
    /// above one.
    pub(super) fn and(&self, other: &Outcomes, factor: f64, over: f64) -> Together {
        if self.is_of_nothing() && factor == 1.0 {
            return other.as_total();
        }
        let moved = moved_by(factor, over);
        // All errors of this total move alike, so that the ends follow from the least and the greatest move that keeps
        // any of them listed.
        let (reach, end) = (REACH as isize, self.least + self.chances.len() as isize);
        let keeps = |by: isize| self.least + by <= reach && end + by > -reach && end > self.least;
        let (mut first, mut last) = (isize::MAX, isize::MIN);
        for by in other.list.iter().map(|(off, _)| moved(*off)) {
            if keeps(by) {
                (first, last) = (first.min(by), last.max(by));
            }
        }
        if first > last {
            return Together { chances: Vec::new(), least: 0, rest: 1.0 };
        }
        let (least, most) = ((self.least + first).max(-reach), (end + last).min(reach + 1));
        let mut chances = vec![0.0; (most - least) as usize];
        let mut listed = 0.0;
        for &(off, chance) in &other.list {
            let by = moved(off);
            let Some(kept) = self.kept(by) else { continue };
            let start = (self.least + kept.start as isize + by - least) as usize;
            let here = &self.chances[kept];
            // Several at once; what is listed is added up one by one, always in the same order.
            let all = chances[start..].iter_mut().zip(here);
            all.for_each(|(there, here)| *there += here * chance);
            let (fours, left) = here.as_chunks::<4>();
            let mut add = |here: &f64| listed += here * chance;
            fours.iter().for_each(|four| four.iter().for_each(&mut add));
            left.iter().for_each(add);
        }
        Together { chances, least, rest: (1.0 - listed).max(0.0) }
    }

    /// The probability of one error after [`Together::and`], and that of all errors not listed, without computing the
    /// rest.
    pub(super) fn and_at(&self, other: &Outcomes, factor: f64, over: f64, off: f64) -> (f64, f64) {
        let wanted = f64::from(nearest_whole(off));
        if self.is_of_nothing() && factor == 1.0 {
            return other.alone(wanted);
        }
        let whole: f64 = self.chances.iter().sum();
        let (mut at, mut listed) = (0.0, 0.0);
        let is_listed = is_listed(wanted);
        let moved = moved_by(factor, over);
        for &(error, chance) in &other.list {
            let by = moved(error);
            if is_listed {
                at += self.chance(wanted as isize - by) * chance;
            }
            listed += chance
                * match self.kept(by) {
                    Some(kept) if kept.len() == self.chances.len() => whole,
                    Some(kept) => self.chances[kept].iter().sum(),
                    None => 0.0,
                };
        }
        (at, (1.0 - listed).max(0.0))
    }

    /// Which of the listed errors remain listed when all of them move by `by`.
    fn kept(&self, by: isize) -> Option<Range<usize>> {
        let reach = REACH as isize;
        let (first, last) = (-reach - by - self.least, reach - by - self.least);
        let end = usize::try_from(last + 1).ok()?.min(self.chances.len());
        let start = usize::try_from(first).unwrap_or(0);
        (start < end).then_some(start..end)
    }

    fn chance(&self, off: isize) -> f64 {
        let place = usize::try_from(off - self.least).ok();
        place.and_then(|place| self.chances.get(place)).copied().unwrap_or(0.0)
    }

    /// The probability of this error; 0 if it is not listed.
    pub(super) fn at(&self, off: f64) -> f64 {
        let off = nearest_whole(off);
        if is_listed(f64::from(off)) { self.chance(off as isize) } else { 0.0 }
    }

    /// Each listed error with its probability.
    fn listed(&self) -> impl Iterator<Item = (f64, f64)> {
        let mut last = self.least as f64 - 1.0;
        self.chances.iter().map(move |chance| {
            last += 1.0;
            (last, *chance)
        })
    }

    /// The probability of an error from `low` to `high`, among those listed.
    pub(super) fn within(&self, low: f64, high: f64) -> f64 {
        // How many errors are listed below this one, a whole number.
        let below = |off: f64| (off - self.least as f64).max(0.0) as usize;
        let end = below(high.floor() + 1.0).min(self.chances.len());
        self.chances.get(below(low.ceil())..end).unwrap_or_default().iter().sum()
    }

    /// The mean of the listed deviations and the variance about it; `None` if too little is listed.
    pub(super) fn mean_and_variance(&self) -> Option<(f64, f64)> {
        let listed = 1.0 - self.rest;
        if listed < 0.4 {
            return None;
        }
        let mean = self.listed().map(|(off, chance)| off * chance).sum::<f64>() / listed;
        let squares = self.listed().map(|(off, chance)| (off - mean).powi(2) * chance);
        Some((mean, squares.sum::<f64>() / listed))
    }
}

/// What becomes of an error that is multiplied by a factor and moved by `over`, in whole square feet.
fn moved_by(factor: f64, over: f64) -> impl Fn(i32) -> isize {
    let is_whole = factor.fract() == 0.0;
    move |off| {
        let by = f64::from(off) * factor;
        if is_whole { by as isize } else { (by + over + 0.5).floor() as isize }
    }
}

/// The possible errors of a rectangle of two walls. Each may, with its probability, be rounded to the other step, or
/// be a step longer or shorter if the outline is closed on it. `sign` says whether the rectangle is added or
/// subtracted.
pub(super) fn of_rectangle(walls: [(f64, f64, f64); 2], step: f64, sign: f64) -> Outcomes {
    /// How often a wall of a part absorbs a leftover step, in each direction.
    const CLOSED_ON: f64 = 0.06;
    let lengths = |(length, other_way, toward): (f64, f64, f64)| {
        let same = (1.0 - other_way) * (1.0 - 2.0 * CLOSED_ON);
        let toward = toward * step;
        [
            (length, same),
            (length + toward, other_way + (1.0 - other_way) * CLOSED_ON),
            (length - toward, (1.0 - other_way) * CLOSED_ON),
        ]
    };
    let whole = walls[0].0 * walls[1].0;
    let mut list: Vec<(i32, f64)> = Vec::with_capacity(9);
    for (one, chance) in lengths(walls[0]) {
        for (other, its) in lengths(walls[1]) {
            let off = sign * (one.max(0.0) * other.max(0.0) - whole);
            list.push((nearest_whole(off), chance * its));
        }
    }
    Outcomes::new(list)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::collection::vec;
    use proptest::prelude::*;

    fn outcomes() -> impl Strategy<Value = Outcomes> {
        vec((-200..200_i32, 0.0..1.0_f64), 1..30).prop_map(|list| {
            let all: f64 = list.iter().map(|(_, chance)| chance).sum();
            let list = list.into_iter().map(|(off, chance)| (off, chance / (all + 0.1)));
            Outcomes::new(list.collect())
        })
    }

    #[test]
    fn a_whole_number_is_the_one_that_a_cast_gives() {
        let far = [i32::MIN, i32::MIN + 1, -2_000_000_000, 2_000_000_000, i32::MAX];
        for number in (-70_000..70_000).chain(far) {
            assert_eq!(whole(f64::from(number)), number);
        }
        assert_eq!(whole(-0.0), 0);
    }

    proptest! {
        #[test]
        fn errors_of_two_spaces_add_up_as_when_each_pair_is_listed(
            one in outcomes(),
            other in outcomes(),
            factor in prop::sample::select(vec![1.0, -1.0, 2.0, 0.5, -0.75]),
            over in -0.5..0.5_f64,
            off in -170..170_i32,
        ) {
            let near = |off: isize| is_listed(off as f64);
            let (mut at, mut listed) = (0.0, 0.0);
            for &(error, chance) in one.list.iter().filter(|(error, _)| near(*error as isize)) {
                for &(more, its) in &other.list {
                    let sum = error as isize + moved_by(factor, over)(more);
                    listed += if near(sum) { chance * its } else { 0.0 };
                    at += if near(sum) && sum == off as isize { chance * its } else { 0.0 };
                }
            }
            let all = Together::new().and(&one, 1.0, 0.0).and(&other, factor, over);
            prop_assert!((all.at(f64::from(off)) - at).abs() < 1e-12);
            prop_assert!((all.rest - (1.0 - listed)).abs() < 1e-12);
            // A space alone, listed as a whole and at one error only.
            let (alone, rest) = Together::new().and_at(&one, 1.0, 0.0, f64::from(off));
            let all = Together::new().and(&one, 1.0, 0.0);
            prop_assert!((all.at(f64::from(off)) - alone).abs() < 1e-12);
            prop_assert!((all.rest - rest).abs() < 1e-12);
        }

        /// Whether or not the last space of a total is spread over all errors, the result is the same.
        #[test]
        fn one_error_alone_is_as_likely_as_in_the_whole_list(
            one in outcomes(),
            other in outcomes(),
            factor in prop::sample::select(vec![1.0, -1.0, 2.0, 0.5, -0.75]),
            over in -0.5..0.5_f64,
            off in -170.0..170.0_f64,
        ) {
            let before = Together::new().and(&one, 1.0, 0.0);
            let all = before.and(&other, factor, over);
            let (at, rest) = before.and_at(&other, factor, over, off);
            prop_assert!((at - all.at(off)).abs() < 1e-12, "{at} {}", all.at(off));
            prop_assert!((rest - all.rest).abs() < 1e-12, "{rest} {}", all.rest);
        }
    }
}
