//! What the record's other lines show about how its walls are rounded.
//!
//! A recorded area comes from whole-foot walls if it is the product of two whole-foot lengths near the space's walls,
//! and does not otherwise. Such products are the areas of 99.1% of 12,555 detached garages in Lucas County OH and of
//! 87% of 640 in Ames IA, but only of a third of the numbers next to those areas.
#![expect(clippy::float_arithmetic, clippy::cast_precision_loss, reason = "likelihoods are floats")]

use crate::geometry::outline::Vector;
use crate::geometry::traverse::StepRounding;
use crate::house::Space;
use crate::reconcile::case::Case;
use crate::reconcile::settings::RoundingWay;
use crate::units::length::{Length, Step, WrittenLength};

/// The chance that a recorded area or side is unrelated to our walls, because it was measured elsewhere.
const UNRELATED: f64 = 0.05;
/// The chance that a recorded wall equals our rounding of it; otherwise it is one step more or less.
const ALIKE: f64 = 0.8;

/// What one of the record's areas shows about its rounding.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Evidence {
    /// The index of the space.
    pub(crate) space: usize,
    /// Its recorded area, in square feet.
    pub(crate) sq_ft: i64,
    /// Two whole-foot lengths near its walls whose product is that area; `None` if there are none.
    pub(crate) product: Option<(i64, i64)>,
    /// The area with each wall to the half foot, in square feet, where the file states that rule and whole feet give the
    /// recorded area instead.
    pub(crate) by_half: Option<i64>,
}

impl Evidence {
    /// Updates the chance of each way of rounding from the record's other lines. Returns the first area that is
    /// evidence, if any.
    pub(super) fn of(case: &Case<'_>, ways: &mut [RoundingWay]) -> Option<Evidence> {
        match case.rule.step {
            Step::WholeFoot => {}
            Step::HalfFoot => return Evidence::against_halves(case),
            Step::Inch | Step::TenthFoot => return None,
        }
        let house = case.listed.house;
        let mut first = None;
        for (i, space) in house.spaces.iter().enumerate() {
            let vectors = case.walls.spaces[i].outline.vectors();
            let recorded = space.recorded.filter(|area| area.sq_ft().fract() == 0.0);
            if let (Some(recorded), Some((a, b))) = (recorded, rectangle(vectors)) {
                let sq_ft = recorded.whole_sq_ft();
                let apart = (recorded - case.walls.spaces[i].outline.area()).abs().sq_ft();
                if apart <= a.feet() + b.feet() + 1.0 {
                    let product = whole_foot_product(sq_ft, a, b);
                    first.get_or_insert(Evidence { space: i, sq_ft, product, by_half: None });
                    multiply(ways, |way| of_area(way, sq_ft, a, b));
                }
            }
            sides(space, case, i, ways);
        }
        let all: f64 = ways.iter().map(|(.., chance)| chance).sum();
        ways.iter_mut().for_each(|(.., chance)| *chance /= all);
        first
    }

    /// The first recorded area that whole feet give and the half feet that the file states do not.
    fn against_halves(case: &Case<'_>) -> Option<Evidence> {
        let spaces = case.listed.house.spaces.iter().enumerate();
        let mut found = spaces.filter_map(|(space, here)| {
            let sq_ft = here.recorded.filter(|area| area.sq_ft().fract() == 0.0)?.whole_sq_ft();
            let (a, b) = rectangle(case.walls.spaces[space].outline.vectors())?;
            let rounded = |step: Step| [a, b].map(|wall| wall.rounded(step, case.rule.halves));
            let [one, other] =
                rounded(Step::WholeFoot).map(|wall| wall.nm().div_euclid(Length::FOOT.nm()));
            let [wide, deep] = rounded(Step::HalfFoot).map(Length::feet);
            #[expect(clippy::cast_possible_truncation, reason = "the area of one space in sq ft")]
            let by_half = (wide * deep).round() as i64;
            (one * other == sq_ft && by_half != sq_ft).then_some(Evidence {
                space,
                sq_ft,
                product: Some((one, other)),
                by_half: Some(by_half),
            })
        });
        found.next()
    }
}

fn multiply(ways: &mut [RoundingWay], likelihood: impl Fn(StepRounding) -> f64) {
    ways.iter_mut().for_each(|(_, way, chance)| *chance *= likelihood(*way));
}

/// Updates the chances from the recorded lengths of the sides of one space.
fn sides(space: &Space, case: &Case<'_>, place: usize, ways: &mut [RoundingWay]) {
    if !space.sides.iter().any(|side| side.words.recorded.is_some()) {
        return;
    }
    let traverse = &case.walls.spaces[place].traverse;
    for (number, side) in space.sides.iter().enumerate() {
        let recorded = side.words.recorded.map(WrittenLength::length);
        let mut pieces = traverse.sides.iter().filter(|piece| piece.source == Some(number));
        let only = pieces.next().filter(|_| pieces.next().is_none());
        if let (Some(recorded), Some(only)) = (recorded, only) {
            let ours = only.shape.vector().chord_length();
            multiply(ways, |way| {
                let off = (recorded - Length::from_nm(way.rounded(ours.nm()))).abs().nm();
                let step = way.step().length().nm();
                UNRELATED * 0.02
                    + if off == 0 {
                        ALIKE
                    } else if off == step {
                        (1.0 - ALIKE) / 2.0
                    } else {
                        0.0
                    }
            });
        }
    }
}

/// The two lengths of a rectangle; `None` for any other outline.
fn rectangle(vectors: &[Vector]) -> Option<(Length, Length)> {
    let [a, b, c, d] = vectors else { return None };
    let straight = |v: &Vector| v.rise == 0 && (v.east == 0) != (v.north == 0);
    let is_one = [a, b, c, d].into_iter().all(straight) && (a.east == 0) != (b.east == 0);
    is_one.then(|| (a.chord_length(), b.chord_length()))
}

/// Two whole-foot lengths within a foot of these whose product is the area; `None` if there are none.
fn whole_foot_product(sq_ft: i64, a: Length, b: Length) -> Option<(i64, i64)> {
    let foot = Length::FOOT.nm();
    let near = |length: Length| {
        let below = length.nm().div_euclid(foot);
        (below - 1..=below + 2).filter(move |feet| (feet * foot - length.nm()).abs() <= foot)
    };
    near(a)
        .flat_map(|one| near(b).map(move |other| (one, other)))
        .find(|(one, other)| one * other == sq_ft)
}

/// The likelihood of a recorded area if the walls are rounded this way.
fn of_area(way: StepRounding, sq_ft: i64, a: Length, b: Length) -> f64 {
    let step = way.step().length();
    let lengths = |length: Length| {
        let rounded = way.rounded(length.nm());
        [(0, ALIKE), (1, (1.0 - ALIKE) / 2.0), (-1, (1.0 - ALIKE) / 2.0)]
            .map(|(more, share)| (Length::from_nm(rounded + more * step.nm()).feet(), share))
    };
    let range = 2.0 * (a.feet() + b.feet());
    let unrelated = UNRELATED / range;
    if step < Length::from_nm(Step::HalfFoot.length().nm()) {
        // With steps of a tenth of a foot, nearly any number near the area is possible.
        let sigma = 0.1 * libm::sqrt(a.feet() * a.feet() + b.feet() * b.feet()) + 0.5;
        let off = sq_ft as f64 - a.feet() * b.feet();
        let density = libm::exp(-off * off / (2.0 * sigma * sigma)) / (2.5 * sigma);
        return unrelated + (1.0 - UNRELATED) * density;
    }
    let mut sum = 0.0;
    for (one, share) in lengths(a) {
        for (other, its) in lengths(b) {
            if (one * other - sq_ft as f64).abs() <= 0.5 {
                sum += share * its;
            }
        }
    }
    unrelated + (1.0 - UNRELATED) * sum
}

#[cfg(test)]
#[expect(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;
    use crate::units::length::Halves;

    #[test]
    fn a_recorded_garage_shows_how_walls_are_rounded() {
        let (a, b): (Length, Length) = ("21' 2\"".parse().unwrap(), "22' 9\"".parse().unwrap());
        assert_eq!(whole_foot_product(483, a, b), Some((21, 23)));
        assert_eq!(whole_foot_product(479, a, b), None);
        let whole = StepRounding::Nearest(Step::WholeFoot, Halves::Up);
        let fine = StepRounding::Nearest(Step::TenthFoot, Halves::Up);
        assert!(of_area(whole, 483, a, b) > 5.0 * of_area(fine, 483, a, b));
        assert!(of_area(fine, 481, a, b) > 5.0 * of_area(whole, 481, a, b));
        assert!(of_area(StepRounding::Up(Step::WholeFoot), 506, a, b) > 0.5);
    }
}
