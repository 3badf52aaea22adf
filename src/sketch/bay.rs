//! The sides that a bay stands for.
//!
//! A bay is typed as one line, `bay south 8' out 2' flat 4'`: its width along the wall, how far it projects, and its
//! front. An angled bay becomes two slanted walls, with exact run and rise, and the flat front between them; a round
//! bay becomes one arc. Which side of the wall is outside depends on the direction of the walk, so it is known only
//! when the walk is complete.

use crate::geometry::compass::{Axis, Direction};
use crate::sketch::statement::{Bay, BayFront, Run};
use crate::sketch::tree::{BaySketch, WalkSketch};
use crate::units::length::{Length, WrittenLength};

/// The sides of a bay that projects toward `outward`.
pub(super) fn sides(bay: &Bay, outward: Direction) -> Vec<Run> {
    let &Bay { direction, width, out, front } = bay;
    let flat = match front {
        BayFront::Round => return vec![Run::Arc(direction, width, out, outward)],
        BayFront::Flat(flat) => flat,
    };
    let inward = Direction::along(outward.axis(), -outward.sign());
    let rest = width.length().nm() - flat.length().nm();
    // If the number of nanometers is odd, the second slanted wall gets the extra one.
    let first = rest.div_euclid(2);
    let leg = |nm: i64| (direction, WrittenLength::new(Length::from_nm(nm), width.form()));
    vec![
        Run::Diagonal(leg(first), (outward, out)),
        Run::Straight(direction, flat),
        Run::Diagonal(leg(rest - first), (inward, out)),
    ]
}

/// Turns the bays of a finished walk to the outside. They were added as for a clockwise walk, which has the outside
/// on its left.
pub(super) fn turn_outward(walk: &mut WalkSketch) {
    if walk.bays.is_empty() || !is_counterclockwise(walk) {
        return;
    }
    let mut all = walk.sides.to_vec();
    for BaySketch { bay, first } in &walk.bays {
        let left = bay.direction.left();
        let right = Direction::along(left.axis(), -left.sign());
        let turned = sides(bay, right);
        for (side, run) in all.iter_mut().skip(*first).zip(turned) {
            side.typed = super::tidy::run_written(&run).into();
            side.run = run;
        }
    }
    walk.sides = all.into();
}

/// Whether the walk is counterclockwise, with each bay replaced by the straight wall behind it.
///
/// A walk that does not close is assumed to return to its start in a straight line.
fn is_counterclockwise(walk: &WalkSketch) -> bool {
    let mut steps: Vec<[i128; 2]> = walk.sides.iter().map(|side| step(&side.run)).collect();
    for BaySketch { bay, first } in &walk.bays {
        let count = sides(bay, bay.direction.left()).len();
        for (step, side) in steps.iter_mut().zip(walk.sides.iter()).skip(*first).take(count) {
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

/// The index of an axis in a pair of components: 0 for east, 1 for north.
fn place(axis: Axis) -> usize {
    match axis {
        Axis::East => 0,
        Axis::North => 1,
    }
}

/// The component of a bay's side along the wall that the bay is in.
fn straightened(run: &Run, direction: Direction) -> [i128; 2] {
    let mut straight = [0; 2];
    let at = place(direction.axis());
    straight[at] = step(run)[at];
    straight
}

/// How far a side goes east and north in nanometers; zero for a length that is not typed.
fn step(run: &Run) -> [i128; 2] {
    let mut step = [0_i128; 2];
    let mut add = |direction: Direction, length: WrittenLength| {
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

/// A length along a unit vector, exact enough to find the direction of a walk.
#[expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    reason = "only the sign of the area of a walk is taken from it"
)]
fn along((east, north): (f64, f64), length: WrittenLength) -> [i128; 2] {
    let nm = length.length().nm() as f64;
    [(east * nm) as i128, (north * nm) as i128]
}
