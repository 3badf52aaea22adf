//! The normal distribution, many densities at once, and where in a list of places it reaches to.
#![expect(clippy::float_arithmetic, reason = "explanations are weighed in floats")]

use std::ops::Range;
use std::sync::LazyLock;

/// Beyond so many sigmas a combination weighs nothing.
pub(super) const WINDOW: f64 = 6.0;

/// 1/√(2π): the density of a normal distribution of variance 1 at its middle.
const TOP: f64 = std::f64::consts::FRAC_2_SQRT_PI * std::f64::consts::FRAC_1_SQRT_2 / 2.0;

/// A normal distribution round 0: what does not change from one place to the next worked out once.
#[derive(Clone, Copy)]
pub(super) struct Bell {
    pub(super) sigma: f64,
    steep: f64,
    pub(super) top: f64,
    exponentials: &'static [f64; STEPS],
}

impl Bell {
    pub(super) fn of(variance: f64) -> Bell {
        let (sigma, inverse) = (variance.sqrt(), 1.0 / variance);
        Bell {
            sigma,
            steep: -0.5 * inverse,
            top: TOP * sigma * inverse,
            exponentials: &EXPONENTIALS,
        }
    }

    /// How far off something weighs anything.
    pub(super) fn reach(self) -> f64 {
        WINDOW * self.sigma
    }

    /// Its density so far off.
    pub(super) fn at(self, off: f64) -> f64 {
        let x = off * off * self.steep;
        if x < -31.0 {
            return self.top * libm::exp(x);
        }
        let (step, series) = split(x);
        self.top * exponential(self.exponentials, step) * series
    }

    /// The densities of all these places round `middle` together, none further off than the window.
    pub(super) fn sum(self, middle: f64, places: &[f64]) -> f64 {
        // Side by side here too: one sum of them all would have to wait for each.
        let (mut densities, mut sums) = ([0.0; AT_ONCE], [0.0; AT_ONCE]);
        for some in places.chunks(AT_ONCE) {
            self.at_all(middle, some, &mut densities);
            sums.iter_mut().zip(&densities).take(some.len()).for_each(|(sum, one)| *sum += one);
        }
        sums.iter().sum()
    }

    /// The same round `middle` for as many as are worked out at once or fewer, none further off than the window.
    pub(super) fn at_all(self, middle: f64, places: &[f64], into: &mut [f64; AT_ONCE]) {
        // Always all of them, so that they go through the processor side by side; those left over are thrown away.
        let mut exponents = [0.0; AT_ONCE];
        for (exponent, place) in exponents.iter_mut().zip(places) {
            let off = middle - place;
            *exponent = off * off * self.steep;
        }
        let mut steps = [0; AT_ONCE];
        for ((step, series), exponent) in steps.iter_mut().zip(into.iter_mut()).zip(&exponents) {
            (*step, *series) = split(*exponent);
        }
        for (density, step) in into.iter_mut().zip(&steps) {
            *density *= self.top * exponential(self.exponentials, *step);
        }
    }
}

/// How many densities are worked out at once.
pub(super) const AT_ONCE: usize = 16;
/// How many steps of the table of exponentials make 1, and how many there are.
const FINENESS: f64 = 128.0;
const STEPS: usize = 4_096;
/// So large that its last binary digit is worth 1: what is added to it is rounded to a whole number.
const ROUNDING: f64 = 4_503_599_627_370_496.0;

/// The exponential of -1/128, -2/128 and so on: with it and a short series an exponential takes a fraction of the
/// library's time, and most of a search is exponentials.
#[expect(clippy::cast_precision_loss, reason = "a place in a table")]
static EXPONENTIALS: LazyLock<[f64; STEPS]> =
    LazyLock::new(|| std::array::from_fn(|step| libm::exp(step as f64 / -FINENESS)));

/// The exponential at a step of the table.
#[expect(clippy::cast_possible_truncation, reason = "a place in a table")]
fn exponential(table: &[f64; STEPS], step: u64) -> f64 {
    table[step as usize % STEPS]
}

/// A number from -31 to 0 as the nearest step of the table, and the exponential of what is left, to the last digits.
fn split(x: f64) -> (u64, f64) {
    let shifted = x * -FINENESS + ROUNDING;
    // No more than 1/256, so that the fifth power, over 120, is nothing.
    let rest = x + (shifted - ROUNDING) * (1.0 / FINENESS);
    let series = 1.0 + rest * 0.25;
    let series = 1.0 + rest * series * (1.0 / 3.0);
    let series = 1.0 + rest * series * 0.5;
    (shifted.to_bits().wrapping_sub(ROUNDING.to_bits()), 1.0 + rest * series)
}

/// Places in rising order, with an index to find one in a few looks.
#[derive(Default)]
pub(super) struct Places {
    all: Vec<f64>,
    /// How many lie below each of the even parts of the way from the first to the last.
    index: Vec<usize>,
    parts_per_unit: f64,
}

impl Places {
    const PARTS: u8 = 64;

    /// Puts these in the place of those before; they rise.
    pub(super) fn set(&mut self, places: impl Iterator<Item = f64>) {
        self.all.clear();
        self.all.extend(places);
        self.index.clear();
        let (Some(first), Some(last)) = (self.all.first(), self.all.last()) else {
            return;
        };
        self.parts_per_unit = f64::from(Places::PARTS) / (last - first).max(1.0);
        let part = |part: u8| first + f64::from(part) / self.parts_per_unit;
        let mut below = 0;
        for edge in (0..=Places::PARTS).map(part) {
            below += self.all[below..].iter().take_while(|place| **place < edge).count();
            self.index.push(below);
        }
    }

    /// Those from `low` to `high`.
    pub(super) fn within(&self, low: f64, high: f64) -> Range<usize> {
        let from = self.split(low, |place| place < low);
        from..self.split(high, |place| place <= high).max(from)
    }

    pub(super) fn all(&self) -> &[f64] {
        &self.all
    }

    /// Where the places stop to be `before`, which is near `place`.
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a place in the index; what is outside saturates"
    )]
    fn split(&self, place: f64, before: impl Fn(f64) -> bool) -> usize {
        let Some(first) = self.all.first() else {
            return 0;
        };
        let part = ((place - first) * self.parts_per_unit) as usize;
        let mut at = self.index[part.min(usize::from(Places::PARTS))];
        while self.all.get(at).is_some_and(|place| before(*place)) {
            at += 1;
        }
        while at > 0 && !before(self.all[at - 1]) {
            at -= 1;
        }
        at
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    #[test]
    fn the_quick_exponential_is_the_libraries() {
        for i in 0..400_000 {
            let off = f64::from(i) * 1e-4;
            let bell = Bell { steep: -1.0, top: 1.0, ..Bell::of(1.0) };
            let (ours, theirs) = (bell.at(off), libm::exp(-off * off));
            assert!((ours - theirs).abs() <= 1e-14 * theirs, "{off}: {ours} {theirs}");
            if off < 5.5 {
                let mut many = [0.0; AT_ONCE];
                bell.at_all(off, &[0.0, off], &mut many);
                assert_eq!(many[..2], [ours, 1.0]);
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(2_000))]

        /// What is found by the index is what is found by looking at all.
        #[test]
        fn places_within_are_all_that_lie_within(
            mut places in proptest::collection::vec(-500.0_f64..500.0, 0..120),
            low in -600.0_f64..600.0,
            wide in 0.0_f64..300.0,
            at in 0_usize..120,
        ) {
            places.sort_by(f64::total_cmp);
            let mut found = Places::default();
            found.set(places.iter().copied());
            // A place itself is the hardest end.
            let low = if at % 2 == 0 { low } else { places.get(at).copied().unwrap_or(low) };
            let all: Vec<usize> =
                (0..places.len()).filter(|&i| low <= places[i] && places[i] <= low + wide).collect();
            prop_assert_eq!(found.within(low, low + wide).collect::<Vec<usize>>(), all);
        }
    }
}
