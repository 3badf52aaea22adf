//! The diagnostic for a traverse that does not close, with the sides to measure again.

use crate::diagnostic::words;
use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Vector;
use crate::geometry::traverse::{Misclosure, Shape, Traverse, TraverseSide};
use crate::house::Side;
use crate::sketch::statement::usual_form;
use crate::units::length::{Form, Length, Written};

/// The diagnostic for a traverse that misses its start.
pub(crate) fn does_not_close(
    name: &str,
    level: Option<&str>,
    span: Span,
    traverse: &Traverse,
    sides: &[Side],
    misses: Misclosure,
) -> Diagnostic {
    let form = usual_form(sides.iter().map(|side| &side.run));
    let on = level.map(|level| format!(" on {}", quoted(level))).unwrap_or_default();
    let walked = if level.is_some() { "the walk round ends" } else { "the calls end" };
    let message = format!(
        "{}{on} does not close: {walked} {} of where {} began",
        quoted(name),
        misses.spoken_in(form),
        if level.is_some() { "it" } else { "they" }
    );
    let mut fault = Diagnostic::new(Word::DoesNotClose, span, message);
    for axis in Axis::BOTH {
        if misses.on(axis).abs() > traverse.allowance(axis) {
            fault = fault.note(sums(traverse, axis, form));
        }
    }
    with_suspects(fault, level.is_none(), traverse, sides, misses)
}

/// Both sums of an axis.
fn sums(traverse: &Traverse, axis: Axis, form: Form) -> String {
    let total = |sign: i64| -> String {
        let legs = traverse.legs(axis);
        let sum = legs.iter().filter(|leg| leg.sign == sign).map(|leg| leg.length).sum();
        Written::new(Length::from_nm(sum), form).spoken()
    };
    let (plus, minus) = (Direction::along(axis, 1).word(), Direction::along(axis, -1).word());
    if traverse.has_bearings() {
        return format!("{plus} and {minus} differ by more than the tolerances together");
    }
    format!("the sides {plus} add up to {}, the sides {minus} to {}", total(1), total(-1))
}

/// The error of a side that repeats the one before it.
const TYPED_TWICE: &str = "typed twice?";

/// A side that could contain the whole error, and how common such an error is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Suspect {
    pub(crate) side: usize,
    /// A common error in words; `None` if only its size fits.
    pub(crate) slip: Option<&'static str>,
}

/// Every side that could contain the whole error of an axis, or of both; common errors first.
pub(crate) fn suspects(traverse: &Traverse, sides: &[Side], misses: Misclosure) -> Vec<Suspect> {
    let off = off(traverse, misses);
    let mut all: Vec<Suspect> =
        off.iter().flat_map(|&axis| suspects_on(traverse, sides, axis, misses.on(axis))).collect();
    let turned = turned_calls(traverse, misses).into_iter();
    all.extend(turned.map(|(side, slip)| Suspect { side, slip: Some(slip) }));
    if !off.is_empty() {
        let parallel = parallel_calls(traverse, misses).into_iter();
        all.extend(parallel.map(|side| Suspect { side, slip: None }));
    }
    all.sort_by_key(|suspect| (suspect.slip.is_none(), suspect.side));
    all.dedup_by_key(|suspect| suspect.side);
    all
}

/// The axes whose misclosure exceeds the combined tolerance of their sides.
fn off(traverse: &Traverse, misses: Misclosure) -> Vec<Axis> {
    let is_off = |axis: &Axis| misses.on(*axis).abs() > traverse.allowance(*axis);
    Axis::BOTH.into_iter().filter(is_off).collect()
}

/// Two sides between which a wall seems to be missing.
pub(crate) fn missing_between(traverse: &Traverse, misses: Misclosure) -> Option<(usize, usize)> {
    same_axis_neighbors(traverse, &off(traverse, misses))
}

fn with_suspects(
    mut fault: Diagnostic,
    is_lot: bool,
    traverse: &Traverse,
    sides: &[Side],
    misses: Misclosure,
) -> Diagnostic {
    let off = off(traverse, misses);
    let mut places: Vec<(usize, Span, String)> = Vec::new();
    let mut again: Vec<String> = Vec::new();
    for &axis in &off {
        let list = suspects_on(traverse, sides, axis, misses.on(axis));
        for suspect in list.iter().filter(|suspect| suspect.slip.is_some()).take(3) {
            let side = &sides[suspect.side];
            if suspect.slip == Some(TYPED_TWICE) {
                let twice = side.quoted();
                fault = fault.help(format!(
                    "{twice} is the same as the side before it, and without it the walk comes back: if it is one wall, take that line out"
                ));
            }
            places.push((suspect.side, side.span, suspect.slip.unwrap_or_default().to_owned()));
        }
        let names = named(sides, &list);
        if !names.is_empty() {
            again.push(names);
        }
    }
    for (side, slip) in turned_calls(traverse, misses) {
        places.push((side, sides[side].span, slip.to_owned()));
        again.push(sides[side].quoted());
    }
    if again.is_empty() {
        let parallel = parallel_calls(traverse, misses).into_iter();
        let named: Vec<String> = parallel.map(|side| sides[side].quoted()).collect();
        again.extend((!named.is_empty()).then(|| words::list_or(&named)));
    }
    places.sort_by_key(|(side, ..)| *side);
    places.dedup_by_key(|(side, ..)| *side);
    for (_, span, label) in places {
        fault = fault.also(span, label);
    }
    if let Some(pair) = same_axis_neighbors(traverse, &off) {
        let (first, second) = (&sides[pair.0], &sides[pair.1]);
        let turns = if first.direction == second.direction {
            "does not turn"
        } else {
            "turns straight back"
        };
        let what = if is_lot { "call" } else { "wall" };
        let between = format!(
            "between {} and {} the walk {turns}: is a {what} missing there?",
            first.quoted(),
            second.quoted()
        );
        fault = fault.help(between);
    }
    if !again.is_empty() {
        let how = if is_lot { "compare with the deed" } else { "measure again" };
        fault = fault.help(format!("{how}: {}", again.join("; and ")));
    }
    if is_lot {
        return fault.help("a last call that the deed does not give is `close`: one straight call back to the start");
    }
    let direction =
        off.first().map_or("north", |&axis| Direction::along(axis, -misses.on(axis)).word());
    fault.help(format!("a wall that cannot be reached can be given as `{direction} by closing`"))
}

/// Every side of an axis that could contain the whole misclosure, those with a common mistake first.
fn suspects_on(traverse: &Traverse, sides: &[Side], axis: Axis, miss: i64) -> Vec<Suspect> {
    let slack = traverse.allowance(axis);
    let mut list: Vec<Suspect> = Vec::new();
    for leg in traverse.legs_along(axis) {
        let held = leg.length - leg.sign * miss;
        if leg.follows {
            continue;
        }
        if held > slack {
            let slip = unit_left_off(&sides[leg.side], leg.length, held, slack)
                .or_else(|| slip(leg.length, held, slack));
            list.push(Suspect { side: leg.side, slip });
        } else if held.abs() <= slack {
            if let Some(slip) = one_too_many(traverse, leg.side) {
                list.push(Suspect { side: leg.side, slip: Some(slip) });
            }
        } else if (held + leg.length).abs() <= slack {
            list.push(Suspect { side: leg.side, slip: Some("walked the other way?") });
        }
    }
    list.sort_by_key(|suspect| suspect.slip.is_none());
    list
}

/// The error of a side without which the traverse would close. Of two equal sides in succession it is the second.
fn one_too_many(traverse: &Traverse, side: usize) -> Option<&'static str> {
    let n = traverse.sides.len();
    let same = |other: usize| traverse.sides[other].shape == traverse.sides[side].shape;
    match (same((side + n - 1) % n), same((side + 1) % n)) {
        (true, _) => Some(TYPED_TWICE),
        (false, true) => None,
        (false, false) => Some("one too many?"),
    }
}

/// Whether the number was meant in meters but typed without a unit, so that it was read as feet.
fn unit_left_off(side: &Side, typed: i64, held: i64, slack: i64) -> Option<&'static str> {
    let meters = i128::from(typed) * i128::from(Length::METRE.nm());
    let meters = meters.checked_div(i128::from(Length::FOOT.nm())).unwrap_or(0);
    let is_near = (meters - i128::from(held)).abs() <= i128::from(slack);
    (side.is_bare() && is_near).then_some("meters, without their unit?")
}

/// The common mistake that would turn `held` into `typed`, if there is one.
fn slip(typed: i64, held: i64, slack: i64) -> Option<&'static str> {
    let foot = Length::FOOT.nm();
    let inch = Length::INCH.nm();
    let near = |length: i64| (length - held).abs() <= slack;
    let (feet, rest) = (typed.div_euclid(foot), typed.rem_euclid(foot));
    let swaps = swapped(feet).into_iter().any(|feet| near(feet * foot + rest));
    if swaps {
        return Some("digits swapped?");
    }
    if rest == 0 && held > typed && held - typed < foot {
        return Some("inches left off?");
    }
    // 29' 8" written as 28' 9".
    let (units, inches) = (feet.rem_euclid(10), rest.checked_div(inch).unwrap_or(0));
    let exchanged = (feet - units + inches) * foot + units * inch + rest.rem_euclid(inch);
    if (1..10).contains(&inches) && inches != units && near(exchanged) {
        return Some("feet and inches exchanged?");
    }
    let whole_feet =
        [1, 5, 10].iter().any(|feet| near(typed + feet * foot) || near(typed - feet * foot));
    if whole_feet {
        return Some("a foot, five or ten miscounted?");
    }
    let dropped = feet.checked_div(10).unwrap_or(0);
    let digit =
        (0..10).any(|digit| near((feet * 10 + digit) * foot + rest)) || near(dropped * foot + rest);
    if feet > 0 && digit {
        return Some("a digit dropped or doubled?");
    }
    // 12.6 ft written as 12' 6", or the reverse.
    let as_tenths = feet * foot + inches * foot.checked_div(10).unwrap_or(0);
    let tenths = (rest * 10).checked_div(foot).unwrap_or(0);
    let as_inches = feet * foot + tenths * inch;
    let confused = inches < 10 && near(as_tenths) || near(as_inches);
    confused.then_some("inches and tenths mixed up?")
}

/// The number with each pair of neighboring digits swapped, one variant per pair.
fn swapped(number: i64) -> Vec<i64> {
    let digits: Vec<char> = number.to_string().chars().collect();
    let swap = |i: usize| {
        let mut digits = digits.clone();
        digits.swap(i, i + 1);
        digits.into_iter().collect::<String>().parse().ok()
    };
    (0..digits.len().saturating_sub(1)).filter_map(swap).filter(|&other| other != number).collect()
}

/// Calls of a deed that would close the traverse if they were turned: E for W, N for S, or straight back.
fn turned_calls(traverse: &Traverse, misses: Misclosure) -> Vec<(usize, &'static str)> {
    const MOST: usize = 3;
    let within = |north: i64, east: i64| {
        north.abs() <= traverse.allowance(Axis::North)
            && east.abs() <= traverse.allowance(Axis::East)
    };
    let turned = |(i, side): (usize, &TraverseSide)| {
        let Shape::Bearing { .. } = side.shape else { return None };
        let vector = side.shape.vector();
        let (north, east) = (misses.north - 2 * vector.north, misses.east - 2 * vector.east);
        let slip = if within(misses.north, east) {
            "E for W, or W for E?"
        } else if within(north, misses.east) {
            "N for S, or S for N?"
        } else if within(north, east) {
            "walked the other way?"
        } else {
            return None;
        };
        Some((i, slip))
    };
    traverse.sides.iter().enumerate().filter_map(turned).take(MOST).collect()
}

/// Calls of a deed within about three degrees of the direction of the misclosure, so that a wrong length of one
/// call alone could be the error (see any surveying text on finding a mistake in a traverse).
fn parallel_calls(traverse: &Traverse, misses: Misclosure) -> Vec<usize> {
    const MOST: usize = 3;
    let wide = |nm: i64| i128::from(nm);
    let along = |(i, side): (usize, &TraverseSide)| {
        let Shape::Bearing { .. } = side.shape else { return None };
        let Vector { east, north, .. } = side.shape.vector();
        let cross = wide(east) * wide(misses.north) - wide(north) * wide(misses.east);
        let dot = wide(east) * wide(misses.east) + wide(north) * wide(misses.north);
        let square = wide(east) * wide(east) + wide(north) * wide(north);
        // The tangent of three degrees is 0.0524; the corrected call must keep a positive length.
        (1_000 * cross.abs() <= 52 * dot.abs() && square > dot).then_some(i)
    };
    traverse.sides.iter().enumerate().filter_map(along).take(MOST).collect()
}

/// Two consecutive sides along the same axis while the other axis does not close: a wall may be missing between
/// them.
fn same_axis_neighbors(traverse: &Traverse, off: &[Axis]) -> Option<(usize, usize)> {
    let n = traverse.sides.len();
    if traverse.has_bearings() {
        return None;
    }
    let only = |i: usize| match traverse.sides[i].shape {
        Shape::Straight { direction, .. } => Some(direction.axis()),
        _ => None,
    };
    // A wall left out of a right-angled traverse leaves two walls of the other axis in a row.
    (0..n).map(|i| (i, (i + 1) % n)).find(|&(i, j)| {
        only(i).is_some() && only(i) == only(j) && off.iter().any(|&axis| Some(axis) != only(i))
    })
}

/// Names the first sides as typed, the others by number.
fn named(sides: &[Side], list: &[Suspect]) -> String {
    const AS_TYPED: usize = 6;
    let number = |suspect: &Suspect| format!("side {}", sides[suspect.side].number);
    let names: Vec<String> = list
        .iter()
        .enumerate()
        .map(
            |(i, suspect)| {
                if i < AS_TYPED { sides[suspect.side].quoted() } else { number(suspect) }
            },
        )
        .collect();
    words::list_or(&names)
}
