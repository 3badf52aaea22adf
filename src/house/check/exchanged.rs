//! Two walls by closing whose words are exchanged, as where each was named by the side on which it stands.

use crate::geometry::compass::{Axis, Direction};
use crate::house::Side;
use crate::sketch::statement::{Run, usual_form};
use crate::units::length::{Length, WrittenLength};

/// What to type where a walk turns at each corner only if its two walls by closing exchange north or south with east or
/// west, and each of them then has a length.
pub(super) fn closings(sides: &[Side]) -> Option<String> {
    const LEAST: i64 = 6 * Length::INCH.nm();
    let mut axes: Vec<Axis> = sides
        .iter()
        .map(|side| match &side.run {
            Run::Straight(way, _) | Run::ByClosing(way) => Some(way.axis()),
            _ => None,
        })
        .collect::<Option<_>>()?;
    let open: Vec<usize> =
        (0..sides.len()).filter(|&at| matches!(sides[at].run, Run::ByClosing(_))).collect();
    let [first, second] = open[..] else { return None };
    let turns = |axes: &[Axis]| (0..axes.len()).all(|at| axes[at] != axes[(at + 1) % axes.len()]);
    if axes[first] == axes[second] || turns(&axes) {
        return None;
    }
    axes.swap(first, second);
    if !turns(&axes) {
        return None;
    }
    let left = |axis: Axis| {
        let along = sides.iter().map(|side| match &side.run {
            Run::Straight(way, length) if way.axis() == axis => way.sign() * length.length().nm(),
            _ => 0,
        });
        -along.sum::<i64>()
    };
    let form = usual_form(sides.iter().map(|side| &side.run));
    let told = |at: usize| {
        let length = left(axes[at]);
        let way = Direction::along(axes[at], length.signum()).word();
        (length.abs() > LEAST).then(|| {
            let spoken = WrittenLength::new(Length::from_nm(length.abs()), form).spoken();
            (format!("`{way} by closing` for {}", sides[at].quoted()), spoken)
        })
    };
    let ((one, one_length), (two, two_length)) = (told(first)?, told(second)?);
    Some(format!(
        "a walk turns at each corner, and here it does if the two walls by closing exchange north or south with east or west: type {one} and {two}, which leaves them {one_length} and {two_length}"
    ))
}
