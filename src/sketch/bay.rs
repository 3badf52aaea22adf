//! The sides that a bay stands for.
//!
//! A bay is typed as one line, `bay south 8' out 2' flat 4'`, by its width along the wall, how far it stands
//! out, and its front. An angled bay is two slanted walls by exact run and rise with the flat front between
//! them; a round bay is one arc. Which side is *out* follows from the way the outline is walked, so it is
//! known only when the walk is complete.

use crate::geometry::compass::{Axis, Direction};
use crate::sketch::statement::{Bay, BayFront, Run};
use crate::sketch::tree::{BaySketch, WalkSketch};
use crate::units::length::{Length, Written};

/// The sides of a bay that stands out toward `outward`.
pub(super) fn sides(bay: &Bay, outward: Direction) -> Vec<Run> {
    let &Bay { direction, width, out, front } = bay;
    let flat = match front {
        BayFront::Round => return vec![Run::Arc(direction, width, out, outward)],
        BayFront::Flat(flat) => flat,
    };
    let inward = Direction::along(outward.axis(), -outward.sign());
    let rest = width.length().nm() - flat.length().nm();
    // Half of an odd number of nanometers is none: the second slanted wall takes the one that is left over.
    let first = rest.div_euclid(2);
    let leg = |nm: i64| (direction, Written::new(Length::from_nm(nm), width.form()));
    vec![
        Run::Diagonal(leg(first), (outward, out)),
        Run::Straight(direction, flat),
        Run::Diagonal(leg(rest - first), (inward, out)),
    ]
}

/// The direction to the left of somebody who walks along `direction`.
pub(super) fn left_of(direction: Direction) -> Direction {
    match direction {
        Direction::North => Direction::West,
        Direction::West => Direction::South,
        Direction::South => Direction::East,
        Direction::East => Direction::North,
    }
}

/// Turns the bays of a finished walk to its outer side. They were put in for a walk that goes round clockwise,
/// with the outside on the left.
pub(super) fn turn_outward(walk: &mut WalkSketch) {
    if walk.bays.is_empty() || !is_counterclockwise(walk) {
        return;
    }
    for BaySketch { bay, first } in &walk.bays {
        let left = left_of(bay.direction);
        let right = Direction::along(left.axis(), -left.sign());
        let turned = sides(bay, right);
        for (side, run) in walk.sides.iter_mut().skip(*first).zip(turned) {
            side.typed = super::tidy::run_written(&run).into();
            side.run = run;
        }
    }
}

/// Whether the walk goes round counterclockwise, each bay taken as the straight wall it stands in.
///
/// A walk that misses its start is taken to go back to it in a straight line, which is as good as can be known.
fn is_counterclockwise(walk: &WalkSketch) -> bool {
    let mut steps: Vec<[i128; 2]> = walk.sides.iter().map(|side| step(&side.run)).collect();
    for BaySketch { bay, first } in &walk.bays {
        let count = sides(bay, left_of(bay.direction)).len();
        for (step, side) in steps.iter_mut().zip(&walk.sides).skip(*first).take(count) {
            *step = straightened(&side.run, bay.direction);
        }
    }
    for axis in Axis::BOTH {
        let at = place(axis);
        let missing = -steps.iter().map(|step| step[at]).sum::<i128>();
        let by_closing = walk.sides.iter().position(
            |side| matches!(side.run, Run::ByClosing(direction) if direction.axis() == axis),
        );
        if let Some(side) = by_closing {
            steps[side][at] = missing;
        }
    }
    let (mut here, mut doubled) = ([0_i128; 2], 0_i128);
    for step in steps {
        doubled += here[0] * step[1] - here[1] * step[0];
        here = [here[0] + step[0], here[1] + step[1]];
    }
    doubled > 0
}

/// East is the first of the two parts of a step, north the second.
fn place(axis: Axis) -> usize {
    match axis {
        Axis::East => 0,
        Axis::North => 1,
    }
}

/// The leg of a side of a bay along the wall that the bay stands in.
fn straightened(run: &Run, direction: Direction) -> [i128; 2] {
    let mut straight = [0; 2];
    let at = place(direction.axis());
    straight[at] = step(run)[at];
    straight
}

/// How far a side goes, in nanometers, as far as its line says.
fn step(run: &Run) -> [i128; 2] {
    let mut step = [0_i128; 2];
    let mut add = |direction: Direction, length: Written| {
        step[place(direction.axis())] += i128::from(direction.sign() * length.length().nm());
    };
    match run {
        Run::Straight(direction, length) | Run::Arc(direction, length, ..) => {
            add(*direction, *length);
        }
        Run::Diagonal(first, second) => {
            add(first.0, first.1);
            add(second.0, second.1);
        }
        Run::Bearing(bearing, length) => step = along(bearing.unit_vector(), *length),
        Run::ByClosing(_) | Run::Close => {}
    }
    step
}

/// A length along a unit vector, good enough to tell which way round a walk goes.
#[expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    reason = "only the sign of the area of a walk is taken from it"
)]
fn along((east, north): (f64, f64), length: Written) -> [i128; 2] {
    let nm = length.length().nm() as f64;
    [(east * nm) as i128, (north * nm) as i128]
}
