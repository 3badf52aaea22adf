//! Which sides of a traverse could contain a whole misclosure, and which common error would explain it there.

use crate::geometry::compass::{Axis, Direction};
use crate::geometry::traverse::{Leg, Misclosure, Shape, Traverse, TraverseSide};
use crate::house::Side;
use crate::house::check::calls;
use crate::house::check::suspect::{
    Rank, ReadIn, Reread, SIXTY_FOURTH, Slip, Suspect, Undone, swapped,
};
use crate::sketch::statement::{Run, usual_form};
use crate::units::length::{Form, Length};

/// Every side that could contain the whole misclosure of one axis, or of both; common errors first.
pub(crate) fn suspects(traverse: &Traverse, sides: &[Side], misses: Misclosure) -> Vec<Suspect> {
    let off = off(traverse, misses);
    let mut all: Vec<Suspect> =
        off.iter().flat_map(|&axis| suspects_on(traverse, sides, axis, misses)).collect();
    if !off.is_empty() {
        all.extend(calls::suspects(traverse, sides, misses));
    }
    all.sort_by_key(|suspect| (suspect.rank, suspect.side));
    all.dedup_by_key(|suspect| suspect.side);
    all
}

/// The axes whose misclosure exceeds the combined tolerance of their sides.
pub(super) fn off(traverse: &Traverse, misses: Misclosure) -> Vec<Axis> {
    let is_off = |axis: &Axis| misses.on(*axis).abs() > traverse.allowance(*axis);
    Axis::BOTH.into_iter().filter(is_off).collect()
}

/// Two sides between which a wall seems to be missing.
pub(crate) fn missing_between(traverse: &Traverse, misses: Misclosure) -> Option<(usize, usize)> {
    same_axis_neighbors(traverse, &off(traverse, misses))
}

/// Every side of an axis that could contain the whole misclosure, those with a common error first.
pub(super) fn suspects_on(
    traverse: &Traverse,
    sides: &[Side],
    axis: Axis,
    misses: Misclosure,
) -> Vec<Suspect> {
    let miss = misses.on(axis);
    let other_is_off = off(traverse, misses).iter().any(|&other| other != axis);
    let slack = traverse.allowance(axis);
    let usual = usual_form(sides.iter().map(|side| &side.run));
    let mut list: Vec<Suspect> = Vec::new();
    for leg in traverse.legs_along(axis).filter(|leg| !leg.follows) {
        let held = leg.length - leg.sign * miss;
        let side = &sides[leg.side];
        if held > slack {
            let near = |length: i64| (length - held).abs() <= slack;
            let stated = traverse.sides[leg.side].tolerance;
            let mistaken = unit_mistaken(side, leg.length, usual, near)
                .or_else(|| feet_with_a_point(side, usual, held));
            let beside = || feet_left_off(side, leg.length, usual, held);
            let mut suspect = match mistaken.ok_or_else(beside) {
                Ok((slip, read)) => {
                    let rank = if side.is_bare() { Rank::NoUnit } else { Rank::Unit };
                    Suspect { rank, ..Suspect::common(leg.side, slip) }
                        .undone(Reread::Length(read), read - held)
                }
                Err(Some(read)) => {
                    let suspect = Suspect::common(leg.side, Slip::FeetLeftOff);
                    if read { suspect.undone(Reread::Length(held), 0) } else { suspect }
                }
                Err(None) => match slip(side, leg.length, held, slack, stated) {
                    // Any whole feet may have been written without their inches, and say nothing about them: what the
                    // gap leaves is offered where no other length of the axis is of whole feet.
                    Some((slip @ Slip::InchesLeftOff, read)) => {
                        let suspect = Suspect::common(leg.side, slip);
                        let is_only = traverse.legs_along(axis).all(|other| {
                            other.side == leg.side || other.length % Length::FOOT.nm() != 0
                        });
                        if is_only { suspect.undone(Reread::Length(read), stated) } else { suspect }
                    }
                    // The wall that is far longer is asked about, and not what is as far shorter than it.
                    Some((Slip::PointMisplaced, read))
                        if read > leg.length
                            && traverse.legs_along(axis).any(|other| {
                                other.side != leg.side && is_far_longer(traverse, other.side, miss)
                            }) =>
                    {
                        Suspect::of_size(leg.side)
                    }
                    Some((slip, read)) => {
                        Suspect::common(leg.side, slip).undone(Reread::Length(read), read - held)
                    }
                    None if is_far_longer(traverse, leg.side, miss) => {
                        Suspect::common(leg.side, Slip::FarLonger)
                    }
                    None => Suspect::of_size(leg.side),
                },
            };
            suspect.agrees = agrees(side, held) && !agrees(side, leg.length);
            list.push(suspect);
        } else if held.abs() <= slack {
            // Without this side the other axis would not close either.
            let turned = quarter_turn(traverse, leg.side, misses);
            let one_too_many = || {
                one_too_many(traverse, leg.side)
                    .filter(|slip| !other_is_off || *slip == Slip::TypedTwice)
            };
            let suspect = match turned {
                Some((to, left)) => Some(
                    Suspect::common(leg.side, Slip::QuarterTurn(to))
                        .undone(Reread::Toward(to), held.abs().max(left)),
                ),
                None => one_too_many()
                    .map(|slip| Suspect::common(leg.side, slip).undone(Reread::Gone, held)),
            };
            list.extend(suspect);
        } else if (held + leg.length).abs() <= slack {
            let suspect = Suspect::common(leg.side, Slip::OtherWay);
            list.push(match side.direction {
                Some(way) => suspect.undone(Reread::Toward(way.opposite()), held + leg.length),
                None => suspect,
            });
        }
    }
    blame_the_tenth(&mut list, traverse, sides, (axis, miss));
    keep_the_likeliest(&mut list);
    let is_explained = list.iter().any(|one| one.rank != Rank::Size && one.is_exact());
    let pair = if is_explained { Vec::new() } else { pair(traverse, sides, axis, miss) };
    for suspect in pair {
        list.retain(|other| other.side != suspect.side);
        list.push(suspect);
    }
    list.sort_by_key(|suspect| (suspect.rank, suspect.left()));
    if !list.iter().any(|one| one.slip.is_some() && one.left() <= slack) {
        let mut marked = marked(traverse, sides, axis, miss);
        // An error that does not say how its side reads gives way to one that does, unless the side has no more inches
        // than a length may have after its feet.
        let is_short = |side: usize| {
            traverse.legs_along(axis).any(|leg| leg.side == side && leg.length < Length::FOOT.nm())
        };
        let is_read = |one: &Suspect| {
            list.iter().any(|other| {
                other.side == one.side
                    && other.slip.is_some()
                    && (other.undone.is_some() || is_short(other.side))
            })
        };
        marked.retain(|one| !is_read(one));
        list.retain(|other| marked.iter().all(|one| one.side != other.side));
        list.splice(0..0, marked);
    }
    list
}

/// The sides of an axis that look wrong by themselves, whatever the walk misses. Where no single side accounts for the
/// gap there are several errors, and undoing one of these does not bring the walk back yet.
fn marked(traverse: &Traverse, sides: &[Side], axis: Axis, miss: i64) -> Vec<Suspect> {
    let usual = usual_form(sides.iter().map(|side| &side.run));
    let legs = || traverse.legs_along(axis).filter(|leg| !leg.follows);
    let left = |leg: &Leg, length: i64| miss + leg.sign * (length - leg.length);
    let twice = legs().filter_map(|leg| {
        let slip = one_too_many(traverse, leg.side).filter(|slip| *slip == Slip::TypedTwice)?;
        Some(Suspect::common(leg.side, slip).undone(Reread::Gone, left(&leg, 0)))
    });
    let in_feet = legs().filter_map(|leg| {
        let side = &sides[leg.side];
        is_in_inches_alone(side, leg.length, usual).then_some(())?;
        let read = leg.length.checked_mul(12)?;
        let slip = Slip::Unit { read: ReadIn::Feet, typed: ReadIn::Inches };
        Some(Suspect::common(leg.side, slip).undone(Reread::Length(read), left(&leg, read)))
    });
    twice.chain(in_feet).collect()
}

/// Of two opposite sides that the gap would make equal, of which one was typed with a point and is about a tenth of the
/// other, the tenth is the likelier error: `2.4` for 24' 2".
fn blame_the_tenth(
    list: &mut [Suspect],
    traverse: &Traverse,
    sides: &[Side],
    (axis, miss): (Axis, i64),
) {
    let slack = traverse.allowance(axis);
    let legs: Vec<Leg> = traverse.legs_along(axis).filter(|leg| !leg.follows).collect();
    let tenths = legs.iter().filter(|leg| sides[leg.side].typed.contains('.'));
    for tenth in tenths {
        let held = tenth.length - tenth.sign * miss;
        let is_equal = |leg: &&Leg| leg.sign != tenth.sign && (leg.length - held).abs() <= slack;
        let is_tenth = (10 * tenth.length - held).abs() <= Length::FOOT.nm();
        let Some(opposite) = legs.iter().find(is_equal).filter(|_| is_tenth) else { continue };
        if is_far_longer(traverse, opposite.side, miss) {
            continue;
        }
        for suspect in list.iter_mut() {
            if suspect.side == opposite.side {
                *suspect = Suspect::of_size(suspect.side);
            } else if suspect.side == tenth.side && suspect.slip.is_none() {
                *suspect = Suspect::common(suspect.side, Slip::PointMisplaced)
                    .undone(Reread::Length(held), 0);
            }
        }
    }
}

/// The two sides of an axis with a common error each that together leave nothing at all of the misclosure. Where others
/// would do as well, only the side that is in all of them with the same error, if there is one.
///
/// Errors of a foot and left-out digits are not tried: so many pairs of them close that none can be told.
fn pair(traverse: &Traverse, sides: &[Side], axis: Axis, miss: i64) -> Vec<Suspect> {
    const MOST_LEGS: usize = 64;
    const MOST_PAIRS: usize = 40;
    let usual = usual_form(sides.iter().map(|side| &side.run));
    let legs: Vec<Leg> = traverse.legs_along(axis).filter(|leg| !leg.follows).collect();
    if legs.len() > MOST_LEGS {
        return Vec::new();
    }
    // Each with what it changes of the misclosure.
    let mut all: Vec<(i64, Suspect)> = Vec::new();
    for leg in &legs {
        let side = &sides[leg.side];
        let lengths = units_mistaken(side, leg.length, usual).into_iter().chain(
            telling_readings(side, leg.length)
                .into_iter()
                .flat_map(|(slip, all)| all.into_iter().map(move |read| (slip.clone(), read))),
        );
        let lengths = lengths.filter(|(_, read)| *read > 0);
        let lengths = lengths.map(|(slip, read)| (slip, Reread::Length(read), read));
        let turned = side.direction.filter(|way| way.axis() == axis);
        let turned =
            turned.map(|way| (Slip::OtherWay, Reread::Toward(way.opposite()), -leg.length));
        let twice = one_too_many(traverse, leg.side).filter(|slip| *slip == Slip::TypedTwice);
        let twice = twice.map(|slip| (slip, Reread::Gone, 0));
        let mut read_before: Vec<i64> = Vec::new();
        for (slip, to, length) in lengths.chain(turned).chain(twice) {
            if !read_before.contains(&length) {
                read_before.push(length);
                let suspect = Suspect::common(leg.side, slip).undone(to, 0);
                all.push((leg.sign * (length - leg.length), suspect));
            }
        }
    }
    all.sort_by_key(|(change, _)| *change);
    let mut found: Vec<[&(i64, Suspect); 2]> = Vec::new();
    for (at, first) in all.iter().enumerate() {
        let wanted = -miss - first.0;
        let from = all.partition_point(|(other, _)| *other < wanted - SIXTY_FOURTH);
        let fits = |(_, (other, _)): &(usize, &(i64, Suspect))| *other <= wanted + SIXTY_FOURTH;
        let rest = all.iter().enumerate().skip(from.max(at + 1)).take_while(fits);
        found.extend(
            rest.filter(|(_, second)| first.1.side != second.1.side)
                .map(|(_, second)| [first, second]),
        );
        if found.len() > MOST_PAIRS {
            return Vec::new();
        }
    }
    let beside = |one: &Suspect, other: &Suspect| Suspect { with: Some(other.side), ..one.clone() };
    match &found[..] {
        [] => Vec::new(),
        [[(_, first), (_, second)]] => {
            let (first, second) =
                if first.side < second.side { (first, second) } else { (second, first) };
            vec![beside(first, second), beside(second, first)]
        }
        [pair, others @ ..] => {
            let in_all = |one: &&&(i64, Suspect)| others.iter().all(|other| other.contains(*one));
            let common = pair.iter().find(in_all);
            let alone = |(change, one): &(i64, Suspect)| Suspect {
                undone: one.undone.map(|undone| Undone { left: (miss + change).abs(), ..undone }),
                ..one.clone()
            };
            common.map(|one| alone(one)).into_iter().collect()
        }
    }
}

/// Whether a length agrees with the recorded length of its side, allowing for rounding to the foot.
fn agrees(side: &Side, length: i64) -> bool {
    let recorded = side.recorded().map(|recorded| recorded.nm());
    recorded.is_some_and(|recorded| 2 * (recorded - length).abs() <= Length::FOOT.nm())
}

/// Keeps the common error of only the likeliest sides. If a wrong unit explains the gap, no other error is asked
/// about; of two misread sides, only the one that would then agree with the record is. Where an error leaves nothing at
/// all of the gap, those that leave some of it within the tape's tolerance are not asked about either.
fn keep_the_likeliest(list: &mut Vec<Suspect>) {
    let first = list.iter().map(|suspect| suspect.rank).min().unwrap_or(Rank::Size);
    let has_unit = first < Rank::Common;
    let is_named = |suspect: &Suspect| suspect.rank != Rank::Size;
    let has_agreeing = list.iter().any(|suspect| is_named(suspect) && suspect.agrees);
    let is_open = |suspect: &&mut Suspect| suspect.slip != Some(Slip::TypedTwice);
    for suspect in list.iter_mut().filter(is_open) {
        let is_second =
            has_unit && suspect.rank > first || !has_unit && has_agreeing && !suspect.agrees;
        if is_second {
            *suspect = Suspect { agrees: suspect.agrees, ..Suspect::of_size(suspect.side) };
        }
    }
    let is_named = |suspect: &Suspect| suspect.rank != Rank::Size;
    if !list.iter().any(|suspect| is_named(suspect) && suspect.is_exact()) {
        return;
    }
    // A side that only had to be turned or taken out is not long enough to be misread instead.
    list.retain(|suspect| {
        let has_length =
            !matches!(suspect.undone, Some(undone) if !matches!(undone.to, Reread::Length(_)));
        has_length || suspect.is_exact() || suspect.slip == Some(Slip::TypedTwice)
    });
    let is_second = |suspect: &&mut Suspect| {
        is_named(suspect) && !suspect.is_exact() && suspect.slip != Some(Slip::TypedTwice)
    };
    for suspect in list.iter_mut().filter(is_second) {
        *suspect = Suspect { agrees: suspect.agrees, ..Suspect::of_size(suspect.side) };
    }
}

/// The sides in which a common error could explain why a side by closing would run backward: with that error undone,
/// a length is left for it. `left` is the length that the others leave now, zero or negative.
pub(super) fn behind_backwards(
    traverse: &Traverse,
    sides: &[Side],
    closing: usize,
    left: i64,
) -> Vec<Suspect> {
    let Some(direction) = sides[closing].direction else { return Vec::new() };
    let usual = usual_form(sides.iter().map(|side| &side.run));
    // A wall has at least a few inches.
    let is_wall = |left: i64| left >= 3 * Length::INCH.nm();
    let mut list: Vec<Suspect> = Vec::new();
    for leg in traverse.legs_along(direction.axis()).filter(|leg| !leg.follows) {
        let with = |length: i64| left - direction.sign() * leg.sign * (length - leg.length);
        let side = &sides[leg.side];
        let unit = || {
            unit_mistaken(side, leg.length, usual, |length| is_wall(with(length)))
                .map(|(slip, read)| (slip, Reread::Length(read)))
        };
        let swapped = || {
            let mut all = with_digits_swapped(leg.length).into_iter();
            let read = all.find(|&length| is_wall(with(length)))?;
            Some((Slip::DigitsSwapped, Reread::Length(read)))
        };
        let twice = || {
            let slip = one_too_many(traverse, leg.side).filter(|slip| *slip == Slip::TypedTwice)?;
            is_wall(with(0)).then_some((slip, Reread::Gone))
        };
        // The side by closing takes up whatever is left, so that none of these fits better than another.
        let found = swapped().or_else(twice).or_else(unit);
        list.extend(found.map(|(slip, to)| Suspect::common(leg.side, slip).undone(to, 0)));
    }
    if list.is_empty() {
        let legs = traverse.legs_along(direction.axis()).filter(|leg| !leg.follows);
        list.extend(legs.filter_map(|leg| {
            let turned = left + 2 * direction.sign() * leg.sign * leg.length;
            let suspect = Suspect::common(leg.side, Slip::OtherWay);
            is_wall(turned).then(|| match sides[leg.side].direction {
                Some(way) => suspect.undone(Reread::Toward(way.opposite()), 0),
                None => suspect,
            })
        }));
    }
    keep_the_likeliest(&mut list);
    list.retain(|suspect| suspect.rank != Rank::Size);
    let mut turned = turned_before_closing(traverse, Some(direction.axis()));
    // Where a side by closing is all that its axis has, no length is misread: a wall runs along the wrong axis.
    let is_empty = |axis: Axis| {
        let mut legs = traverse.legs_along(axis).peekable();
        legs.peek().is_some() && legs.all(|leg| leg.follows)
    };
    if let Some(axis) = Axis::BOTH.into_iter().find(|axis| is_empty(*axis)) {
        let fills =
            |one: &Suspect| matches!(one.slip, Some(Slip::QuarterTurn(way)) if way.axis() == axis);
        if turned.iter().any(fills) {
            turned.retain(fills);
            return turned;
        }
    }
    // What was typed twice or with its digits swapped is told as that.
    let is_told = |side: usize| {
        list.iter().any(|one| {
            one.side == side && matches!(one.slip, Some(Slip::TypedTwice | Slip::DigitsSwapped))
        })
    };
    turned.retain(|one| !is_told(one.side));
    list.retain(|one| !is_turn(one) || turned.iter().all(|other| other.side != one.side));
    // A walk that doubles back on itself at a wall cannot be right, whatever the lengths are.
    let doubles_back = |side: usize| {
        let n = traverse.sides.len();
        let way = |side: usize| match traverse.sides[side % n].shape {
            Shape::Straight { direction, .. } => Some(direction),
            _ => None,
        };
        [side + n - 1, side + 1]
            .into_iter()
            .any(|beside| way(beside) == way(side).map(Direction::opposite))
    };
    if turned.iter().any(|one| one.slip == Some(Slip::OtherWay) && doubles_back(one.side)) {
        turned.retain(|one| doubles_back(one.side));
        return turned;
    }
    turned.append(&mut list);
    turned
}

/// Whether the error of a side is that it runs another way than it was typed.
pub(super) fn is_turn(suspect: &Suspect) -> bool {
    matches!(suspect.slip, Some(Slip::OtherWay | Slip::QuarterTurn(_)))
}

/// The walls one of which, walked another way with the length that it has, brings a walk with a side by closing back to
/// its start as a plain outline. `back` is the axis on which a wall may also run straight back; elsewhere a wall that
/// does is known by its length.
pub(super) fn turned_before_closing(traverse: &Traverse, back: Option<Axis>) -> Vec<Suspect> {
    const MOST_SIDES: usize = 40;
    let n = traverse.sides.len();
    if n > MOST_SIDES || !traverse.sides.iter().any(|side| side.follows) {
        return Vec::new();
    }
    let shape = |side: usize| traverse.sides.get(side % n).map(|side| side.shape);
    let runs_across = |side: usize, axis: Axis| matches!(shape(side), Some(Shape::Straight { direction, .. }) if direction.axis() != axis);
    let mut list = Vec::new();
    for (at, side) in traverse.sides.iter().enumerate().filter(|(_, side)| !side.follows) {
        let Shape::Straight { direction, length } = side.shape else { continue };
        let other_ways = Axis::BOTH
            .into_iter()
            .flat_map(|axis| [1, -1].map(|sign| Direction::along(axis, sign)));
        for way in other_ways.filter(|way| *way != direction) {
            let axis = way.axis();
            let is_back = axis == direction.axis();
            if is_back && back != Some(axis) {
                continue;
            }
            // Where the walk would double back on itself, the turned wall may go straight on.
            let goes_on = |beside: usize| {
                is_back
                    && matches!(shape(beside), Some(Shape::Straight { direction: next, .. }) if next == way)
            };
            let fits = |beside: usize| runs_across(beside, axis) || goes_on(beside);
            if ![at + n - 1, at + 1].into_iter().all(fits) {
                continue;
            }
            let mut turned = traverse.clone();
            turned.sides[at].shape = Shape::Straight { direction: way, length };
            let Ok(closed) = turned.adjust() else { continue };
            let is_wall = |side: &TraverseSide| {
                !side.follows || side.shape.vector().length().nm() >= 3 * Length::INCH.nm()
            };
            if closed.outline.crossing().is_none() && closed.traverse.sides.iter().all(is_wall) {
                let slip = if is_back { Slip::OtherWay } else { Slip::QuarterTurn(way) };
                list.push(Suspect::common(at, slip).undone(Reread::Toward(way), 0));
            }
        }
    }
    list.dedup_by_key(|suspect: &mut Suspect| suspect.side);
    list
}

/// Slanted walls that, walked with one pair of their ways exchanged, bring the walk back to its start: the one or the
/// two sides, and what is exchanged.
pub(super) fn turned_slants(
    traverse: &Traverse,
    misses: Misclosure,
) -> Vec<(Vec<usize>, &'static [Axis])> {
    const MOST: usize = 12;
    const EXCHANGES: [&[Axis]; 3] = [&[Axis::North], &[Axis::East], &[Axis::North, Axis::East]];
    let is_slanted = |side: &usize| {
        matches!(traverse.sides[*side].shape, Shape::Diagonal { .. } | Shape::Bearing { .. })
    };
    let slants: Vec<usize> = (0..traverse.sides.len()).filter(is_slanted).collect();
    if slants.is_empty() || slants.len() > MOST {
        return Vec::new();
    }
    let closes = |sides: &[usize], exchanged: &[Axis]| {
        Axis::BOTH.into_iter().all(|axis| {
            let change = match exchanged.contains(&axis) {
                true => {
                    sides.iter().map(|&at| -2 * traverse.sides[at].shape.vector().along(axis)).sum()
                }
                false => 0,
            };
            (misses.on(axis) + change).abs() <= traverse.allowance(axis)
        })
    };
    let with = |sides: Vec<usize>| {
        let exchanged = EXCHANGES.into_iter().find(|exchanged| closes(&sides, exchanged))?;
        Some((sides, exchanged))
    };
    let single: Vec<(Vec<usize>, &[Axis])> =
        slants.iter().filter_map(|&at| with(vec![at])).collect();
    if !single.is_empty() {
        return single;
    }
    let pairs = slants
        .iter()
        .enumerate()
        .flat_map(|(i, &one)| slants.iter().skip(i + 1).map(move |&other| vec![one, other]));
    pairs.filter_map(with).collect()
}

/// The error of an extra side, without which the traverse would close; `None` if it is not one. Of two equal sides in a
/// row, it is the second.
fn one_too_many(traverse: &Traverse, side: usize) -> Option<Slip> {
    let n = traverse.sides.len();
    let is_straight = |side: usize| matches!(traverse.sides[side].shape, Shape::Straight { .. });
    // What is left has to enclose an area.
    if n < 5 && (0..n).all(is_straight) {
        return None;
    }
    let same = |other: usize| traverse.sides[other].shape == traverse.sides[side].shape;
    match (same((side + n - 1) % n), same((side + 1) % n)) {
        (true, _) => Some(Slip::TypedTwice),
        (false, true) => None,
        (false, false) => Some(Slip::OneTooMany),
    }
}

/// The direction across that of a side in which the whole walk would close; `None` if there is none, or if the side
/// would then run along one of its neighbors. With it, what the walk would then miss across.
fn quarter_turn(traverse: &Traverse, side: usize, misses: Misclosure) -> Option<(Direction, i64)> {
    let n = traverse.sides.len();
    let Shape::Straight { direction, length } = traverse.sides[side].shape else { return None };
    let across = Axis::BOTH.into_iter().find(|&axis| axis != direction.axis())?;
    let miss = misses.on(across);
    let turned = Direction::along(across, -miss);
    let turns = |neighbor: usize| match traverse.sides[neighbor].shape {
        Shape::Straight { direction, .. } => direction.axis() != across,
        _ => true,
    };
    let left = (miss.abs() - length).abs();
    let fits = left <= traverse.allowance(across);
    (fits && turns((side + n - 1) % n) && turns((side + 1) % n)).then_some((turned, left))
}

/// Whether a side is several times as long as every other, and more than half of it is what the walk misses.
fn is_far_longer(traverse: &Traverse, side: usize, miss: i64) -> bool {
    let length = |side: usize| traverse.sides[side].shape.vector().length().nm();
    let others = (0..traverse.sides.len()).filter(|&other| other != side).map(length);
    let longest = others.max().unwrap_or(0);
    longest > 0 && length(side) >= 4 * longest && 2 * miss.abs() > length(side)
}

/// A question about the unit of a side, if in another unit its length would be `right`, and that length; else `None`.
fn unit_mistaken(
    side: &Side,
    typed: i64,
    usual: Form,
    right: impl Fn(i64) -> bool,
) -> Option<(Slip, i64)> {
    units_mistaken(side, typed, usual).into_iter().find(|&(_, read)| right(read))
}

/// The lengths of a side if its number was read in another unit than it is typed in, the likeliest first.
fn units_mistaken(side: &Side, typed: i64, usual: Form) -> Vec<(Slip, i64)> {
    let Run::Straight(_, written) = side.run else { return Vec::new() };
    let is_metric =
        |form: Form| matches!(form, Form::Meters | Form::Centimeters | Form::Millimeters);
    let times = |times: Length, over: Length| {
        let length = i128::from(typed) * i128::from(times.nm());
        let length = length.checked_div(i128::from(over.nm()))?;
        i64::try_from(length).ok()
    };
    // Two apostrophes are an inch mark.
    let marks = side.typed.replace("''", "\"");
    let (has_feet, has_inches) = (marks.contains('\''), marks.contains('"'));
    let form = written.form();
    let is_in_meters = side.is_bare() && !is_metric(form);
    let in_meters = is_in_meters.then(|| times(Length::METER, Length::FOOT)).flatten();
    let unit = |read, typed| Slip::Unit { read, typed };
    let other = match form {
        _ if has_inches && !has_feet => {
            Some((Length::FOOT, Length::INCH, unit(ReadIn::Feet, ReadIn::Inches)))
        }
        Form::FeetAndInches | Form::DecimalFeet if is_metric(usual) && has_feet => {
            Some((Length::METER, Length::FOOT, unit(ReadIn::Meters, ReadIn::Feet)))
        }
        Form::Meters if !is_metric(usual) => {
            Some((Length::FOOT, Length::METER, unit(ReadIn::Feet, ReadIn::Meters)))
        }
        Form::Meters => Some((
            Form::Centimeters.unit(),
            Length::METER,
            unit(ReadIn::Centimeters, ReadIn::Meters),
        )),
        Form::Centimeters => {
            Some((Length::METER, form.unit(), unit(ReadIn::Meters, ReadIn::Centimeters)))
        }
        Form::Millimeters => Some((
            Form::Centimeters.unit(),
            form.unit(),
            unit(ReadIn::Centimeters, ReadIn::Millimeters),
        )),
        _ if has_feet && !has_inches || side.is_bare() => {
            Some((Length::INCH, Length::FOOT, unit(ReadIn::Inches, ReadIn::Feet)))
        }
        _ => None,
    };
    let together = run_together(typed, has_inches && !has_feet).into_iter();
    let together = together.map(|read| (Slip::RunTogether, read));
    let other = other.and_then(|(to, from, slip)| Some((slip, times(to, from)?)));
    let with_a_point = feet_dot_inches(side).map(|read| (Slip::WithAPoint, read));
    let in_meters = in_meters.map(|read| (Slip::MetersWithoutUnit, read)).into_iter();
    in_meters.chain(together).chain(other).chain(with_a_point).collect()
}

/// `44.7"` read as 44' 7", or `28.10` and `28.10'` as 28' 10". A single digit without an inch mark may be tenths.
fn feet_dot_inches(side: &Side) -> Option<i64> {
    let number = side.typed.split_once(' ')?.1.trim_end_matches(['"', '\'']);
    let (feet, inches) = number.split_once('.')?;
    let has_leading_zero = inches.len() == 2 && inches.starts_with('0');
    if inches.len() == 1 && !side.typed.contains('"') {
        return None;
    }
    let is_number = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    if !is_number(feet) || !is_number(inches) || inches.len() > 2 || has_leading_zero {
        return None;
    }
    let (feet, inches): (i64, i64) = (feet.parse().ok()?, inches.parse().ok()?);
    let length =
        feet.checked_mul(Length::FOOT.nm())?.checked_add(inches.checked_mul(Length::INCH.nm())?)?;
    (inches < 12).then_some(length)
}

/// The length of a side of a house in feet that has tenths of an inch, which no tape shows over a foot, read as feet and
/// inches: `40.6"` for 40' 6". `None` unless it would leave less than a foot open.
fn feet_with_a_point(side: &Side, usual: Form, held: i64) -> Option<(Slip, i64)> {
    let is_in_feet = matches!(usual, Form::FeetAndInches | Form::DecimalFeet);
    let is_odd = side.typed.ends_with('"') && !side.typed.contains('\'');
    let read = feet_dot_inches(side).filter(|_| is_in_feet && is_odd)?;
    ((read - held).abs() < Length::FOOT.nm()).then_some((Slip::WithAPoint, read))
}

/// Whether feet may have been left off a wall of a few inches in a house in feet, and, where its number is the feet or
/// the inches of the length that it would have, that this is the length: `16"` or `6"` for 16' 6".
fn feet_left_off(side: &Side, typed: i64, usual: Form, held: i64) -> Option<bool> {
    let (foot, inch) = (Length::FOOT.nm(), Length::INCH.nm());
    (is_in_inches_alone(side, typed, usual) && held - typed >= foot).then(|| {
        let inches = held.rem_euclid(foot);
        typed.checked_div(inch) == held.checked_div(foot) && typed.rem_euclid(inch) == 0
            || inches > 0 && typed == inches
    })
}

/// Whether a wall of a house in feet was typed as a few inches: fewer than 48.
fn is_in_inches_alone(side: &Side, typed: i64, usual: Form) -> bool {
    let is_inches = side.typed.contains('"') && !side.typed.contains('\'');
    let is_in_feet = matches!(usual, Form::FeetAndInches | Form::DecimalFeet);
    is_inches && is_in_feet && typed < 48 * Length::INCH.nm()
}

/// `302"` or `302'` read as 30' 2": the last one or two digits are inches.
fn run_together(typed: i64, is_in_inches: bool) -> Vec<i64> {
    let unit = if is_in_inches { Length::INCH } else { Length::FOOT }.nm();
    let number = typed.div_euclid(unit);
    if typed.rem_euclid(unit) != 0 || number < 100 {
        return Vec::new();
    }
    let split = |tens: i64| {
        let (feet, inches) = (number.div_euclid(tens), number.rem_euclid(tens));
        let is_length = feet > 0 && (1..12).contains(&inches) && inches >= tens.div_euclid(10);
        is_length.then_some(feet * Length::FOOT.nm() + inches * Length::INCH.nm())
    };
    [10, 100].into_iter().filter_map(split).collect()
}

/// The common error that would turn `held` into `typed`, and the length without it; `None` if there is none. Of several,
/// the one that fits best within what the length is `stated` to, and among equals the likeliest.
fn slip(side: &Side, typed: i64, held: i64, slack: i64, stated: i64) -> Option<(Slip, i64)> {
    let off = |length: &i64| (length - held).abs();
    let best = |all: Vec<(Slip, Vec<i64>)>| {
        let fits = all.into_iter().filter_map(|(slip, lengths)| {
            let read = lengths.into_iter().filter(|one| off(one) <= slack).min_by_key(off)?;
            Some((slip, read))
        });
        fits.min_by_key(|(_, read)| off(read).div_euclid(stated.max(1)))
    };
    let foot = Length::FOOT.nm();
    let (feet, rest) = (typed.div_euclid(foot), typed.rem_euclid(foot));
    let mut all = telling_readings(side, typed);
    if rest == 0 && held > typed && held - typed < foot {
        return best(all).or(Some((Slip::InchesLeftOff, held)));
    }
    // Nobody miscounts the feet of a wall of two.
    let miscounts: &[i64] = if feet < 3 { &[] } else { &[1, 5, 10] };
    let whole_feet = miscounts.iter().flat_map(|feet| [typed + feet * foot, typed - feet * foot]);
    let dropped = feet.checked_div(10).unwrap_or(0);
    let has_point = side.typed.contains('.');
    let digits = (0..10).map(|digit| (feet * 10 + digit) * foot + rest);
    let digits = digits.chain([dropped * foot + rest]).filter(|_| feet > 0 && !has_point);
    // `2.8` for 28' 10": the point misplaced, and the inches left off.
    let tenfold = typed.saturating_mul(10);
    if has_point && tenfold % foot == 0 && held > tenfold && held - tenfold < foot {
        return best(all).or(Some((Slip::PointMisplaced, held)));
    }
    let points = [10, 100].map(|times| typed.div_euclid(times));
    // 12.6 ft written as 12' 6", or the reverse.
    let inches = rest.checked_div(Length::INCH.nm()).unwrap_or(0);
    let as_tenths = feet * foot + inches * foot.checked_div(10).unwrap_or(0);
    let tenths = (rest * 10).checked_div(foot).unwrap_or(0);
    let as_inches = feet * foot + tenths * Length::INCH.nm();
    let mixed = if inches < 10 { vec![as_tenths, as_inches] } else { vec![as_inches] };
    all.extend([
        (Slip::Miscounted, whole_feet.collect()),
        (Slip::DigitDroppedOrDoubled, digits.collect()),
        (Slip::PointLeftOut, points.to_vec()),
        (Slip::InchesAndTenths, mixed),
    ]);
    best(all)
}

/// The lengths that an error which leaves its mark in the digits turns into `typed`, the likeliest error first.
fn telling_readings(side: &Side, typed: i64) -> Vec<(Slip, Vec<i64>)> {
    let (foot, inch) = (Length::FOOT.nm(), Length::INCH.nm());
    let (feet, rest) = (typed.div_euclid(foot), typed.rem_euclid(foot));
    // 29' 8" written as 28' 9", or 10' 5" as 5' 10".
    let (units, inches) = (feet.rem_euclid(10), rest.checked_div(inch).unwrap_or(0));
    let exchanged =
        |tens: i64, units: i64| (tens + inches) * foot + units * inch + rest.rem_euclid(inch);
    let mut exchanges = Vec::new();
    if inches > 0 && (1..10).contains(&inches) && inches != units {
        exchanges.push(exchanged(feet - units, units));
    }
    if inches > 0 && feet < 12 && inches != feet {
        exchanges.push(exchanged(0, feet));
    }
    let points = match side.typed.contains('.') {
        true => vec![typed.saturating_mul(10), typed.saturating_mul(100), typed.div_euclid(10)],
        false => Vec::new(),
    };
    vec![
        (Slip::PointMisplaced, points),
        (Slip::DigitsSwapped, with_digits_swapped(typed)),
        (Slip::FeetAndInchesExchanged, exchanges),
    ]
}

/// The length with each pair of neighboring digits of its whole feet swapped.
fn with_digits_swapped(length: i64) -> Vec<i64> {
    let foot = Length::FOOT.nm();
    let (feet, rest) = (length.div_euclid(foot), length.rem_euclid(foot));
    swapped(feet).into_iter().map(|feet| feet * foot + rest).collect()
}

/// Two consecutive sides along one axis while the other axis does not close, so that a wall may be missing between
/// them.
pub(super) fn same_axis_neighbors(traverse: &Traverse, off: &[Axis]) -> Option<(usize, usize)> {
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
