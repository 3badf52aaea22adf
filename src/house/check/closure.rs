//! The diagnostics for a traverse that does not close, with the sides to measure again.

use crate::diagnostic::words;
use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::traverse::{Misclosure, Traverse};
use crate::house::Side;
use crate::house::check::calls;
use crate::house::check::exchanged;
use crate::house::check::street_words::{named_by_their_sides, walked_the_other_way};
use crate::house::check::suspect::{ReadIn, Reread, Slip, Suspect};
use crate::house::check::suspects::{
    behind_backwards, is_turn, off, same_axis_neighbors, suspects_on, turned_before_closing,
    turned_slants,
};
use crate::sketch::statement::{Place, Run, usual_form};
use crate::units::length::{Form, Length, WrittenLength};

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
    let walked = if level.is_some() { "the walk around the walls ends" } else { "the calls end" };
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
    if let Some(help) = level.and_then(|_| whole_wall_and_bay(traverse, sides, misses)) {
        return fault.help(help);
    }
    // Lengths that close as they are need not be measured again.
    match level.and_then(|_| named_by_their_sides(sides)) {
        Some((help, true)) => fault.help(help),
        Some((help, false)) => {
            with_suspects(fault, level.is_none(), traverse, sides, misses).help(help)
        }
        None => match level.and_then(|_| walked_the_other_way(sides)) {
            Some(help) => fault.help(help),
            None => with_suspects(fault, level.is_none(), traverse, sides, misses),
        },
    }
}

/// What to do where a walk closes without its first side, and that may be how far it starts the other way:
/// `garage "Garage" start east 37' 5"` over `south 2' 2"` and four walls.
pub(super) fn second_half_of_its_start(place: &Place, sides: &[Side]) -> Option<String> {
    let Place::Start(offsets) = place else { return None };
    let [(along, far)] = offsets[..] else { return None };
    let (first, others) = sides.split_first()?;
    let Run::Straight(way, length) = first.run else { return None };
    let (mut east, mut north) = (0_i64, 0_i64);
    for side in others {
        let Run::Straight(way, length) = side.run else { return None };
        match way.axis() {
            Axis::East => east += way.sign() * length.length().nm(),
            Axis::North => north += way.sign() * length.length().nm(),
        }
    }
    let is_closed = east.abs() <= Length::INCH.nm() && north.abs() <= Length::INCH.nm();
    if !is_closed || others.len() < 4 || way.axis() == along.axis() {
        return None;
    }
    let start = format!("start {} {}", along.word(), far.spoken());
    let more = format!("{} {}", way.word(), length.spoken());
    Some(format!(
        "without {} the walk closes: if that is how far it starts the other way, take the line out and write `{start} {more}` for `{start}`; if it is a wall, the walls after it are to be measured again",
        first.quoted()
    ))
}

/// What to do where the walk misses its start by the width of a bay whose wall was typed as a whole besides.
fn whole_wall_and_bay(traverse: &Traverse, sides: &[Side], misses: Misclosure) -> Option<String> {
    let [axis] = off(traverse, misses)[..] else { return None };
    let along = |run: &Run, way: Direction| match run {
        Run::Diagonal((first, length), _) if *first == way => Some(length.length()),
        Run::Straight(first, length) if *first == way => Some(length.length()),
        _ => None,
    };
    let width = |at: usize| {
        let Some([one, two, three]) = sides.get(at..at + 3) else { return None };
        let (Run::Diagonal((way, first), _), Run::Straight(..), Run::Diagonal((_, last), _)) =
            (&one.run, &two.run, &three.run)
        else {
            return None;
        };
        let wide = first.length() + along(&two.run, *way)? + along(&three.run, *way)?;
        // Another slant than a bay's may be a wall of its own.
        let is_even = (first.length() - last.length()).abs() <= Length::from_nm(1);
        (is_even && way.axis() == axis).then_some((*way, wide, first.form()))
    };
    let fits = |wide: Length, way: Direction| {
        (misses.on(axis) - way.sign() * wide.nm()).abs() <= traverse.allowance(axis)
    };
    (0..sides.len()).find_map(|at| {
        let (way, wide, form) = width(at).filter(|(way, wide, _)| fits(*wide, *way))?;
        let is_wall = |one: &usize| {
            let length = sides.get(*one).and_then(|side| match &side.run {
                Run::Straight(direction, length) if *direction == way => Some(length.length()),
                _ => None,
            });
            *one != at + 1 && length.is_some_and(|length| length > wide)
        };
        let next = [at.checked_sub(1), Some(at + 3)].into_iter().flatten().find(is_wall);
        let wall = sides.get(next.or_else(|| (0..sides.len()).find(is_wall))?)?;
        let Run::Straight(_, length) = &wall.run else { return None };
        let rest = WrittenLength::new(length.length() - wide, form).spoken();
        let wide = WrittenLength::new(wide, form).spoken();
        let way = way.word();
        Some(format!(
            "if {} is the whole wall, the bay takes {wide} of it: instead of that wall write `{way}` and the length up to the bay, below it the line of the bay, and below that `{way}` and the length after it; the two together are {rest}",
            wall.quoted()
        ))
    })
}

/// The diagnostic for a side by closing for which the other sides leave nothing.
pub(super) fn closing_backwards(
    name: &str,
    traverse: &Traverse,
    sides: &[Side],
    closing: usize,
    by: i64,
) -> Diagnostic {
    let side = &sides[closing];
    let form = usual_form(sides.iter().map(|side| &side.run));
    let other = side.direction.map_or("the other way", |way| way.opposite().word());
    let message = if by == 0 {
        format!("{}: nothing is left for the side by closing", quoted(name))
    } else {
        format!(
            "{}: the side by closing would have to run {} {other}",
            quoted(name),
            WrittenLength::new(Length::from_nm(by), form).spoken()
        )
    };
    let mut fault = Diagnostic::new(Word::ClosingBackwards, side.span, message)
        .label("follows from the other sides");
    let by_street = named_by_their_sides(sides);
    if let Some((help, true)) = &by_street {
        return fault.help(help.clone());
    }
    if let Some((help, false)) = by_street {
        fault = fault.help(help);
    }
    if let Some(help) = exchanged::closings(sides) {
        return fault.help(help);
    }
    let suspects = behind_backwards(traverse, sides, closing, -by);
    if suspects.is_empty() {
        return fault.help("measure the other sides of this direction again, and look whether this one runs the way you walked it");
    }
    let shown: Vec<&Suspect> = suspects.iter().take(MOST_NAMED).collect();
    for (i, suspect) in shown.iter().enumerate() {
        // A side with two errors, either of which may be, is marked once.
        if shown.iter().take(i).any(|other| other.side == suspect.side) {
            continue;
        }
        fault = fault.also(sides[suspect.side].span, label(suspect, &shown, sides));
        if let Some(text) = reread(suspect, &sides[suspect.side], form) {
            fault = fault.repair(sides[suspect.side].span, text);
        }
    }
    let (turned, misread): (Vec<&Suspect>, Vec<&Suspect>) =
        shown.into_iter().partition(|suspect| is_turn(suspect));
    for suspect in turned {
        let way = match (suspect.slip.as_ref(), sides[suspect.side].direction) {
            (Some(Slip::QuarterTurn(way)), _) => way.word(),
            (_, Some(way)) => way.opposite().word(),
            _ => "the other way",
        };
        fault = fault.help(format!(
            "look which way {} runs: walked {way}, it leaves a length for {}",
            sides[suspect.side].quoted(),
            quoted(&side.typed)
        ));
    }
    if !misread.is_empty() {
        let names: Vec<String> =
            misread.iter().map(|suspect| sides[suspect.side].quoted()).collect();
        fault = fault.help(format!("measure again first: {}", words::list_or(&names)));
    }
    fault.help(format!(
        "leave {} as it is until then: turned round, it would hide the error",
        quoted(&side.typed)
    ))
}

/// The most sides with a common error that are pointed out per axis.
const MOST_NAMED: usize = 3;

/// A note with both sums of an axis, such as all norths and all souths.
fn sums(traverse: &Traverse, axis: Axis, form: Form) -> String {
    let total = |sign: i64| -> String {
        let legs = traverse.legs(axis);
        let sum = legs.iter().filter(|leg| leg.sign == sign).map(|leg| leg.length).sum();
        match (sum, form) {
            (0, Form::FeetAndInches | Form::DecimalFeet) => "0'".to_owned(),
            (0, Form::Meters) => "0 m".to_owned(),
            (0, Form::Centimeters) => "0 cm".to_owned(),
            (0, Form::Millimeters) => "0 mm".to_owned(),
            _ => WrittenLength::new(Length::from_nm(sum), form).spoken(),
        }
    };
    let (plus, minus) = (Direction::along(axis, 1).word(), Direction::along(axis, -1).word());
    if traverse.has_bearings() {
        return format!("{plus} and {minus} differ by more than the tolerances together");
    }
    let is_none = |sign: i64| !traverse.legs(axis).iter().any(|leg| leg.sign == sign);
    if is_none(-1) {
        return format!("the sides {plus} add up to {}, and no side runs {minus}", total(1));
    }
    if is_none(1) {
        return format!("the sides {minus} add up to {}, and no side runs {plus}", total(-1));
    }
    format!("the sides {plus} add up to {}, the sides {minus} to {}", total(1), total(-1))
}

/// What may be wrong with the sides of a walk that does not close, and of a lot what else there is to do.
fn with_suspects(
    fault: Diagnostic,
    is_lot: bool,
    traverse: &Traverse,
    sides: &[Side],
    misses: Misclosure,
) -> Diagnostic {
    let units = units_differ(sides).filter(|_| is_lot);
    let fault = match units {
        Some(help) => fault.help(help),
        None => fault,
    };
    let fault = with_suspects_of(fault, is_lot, traverse, sides, misses);
    match as_in_the_deed(traverse, sides, misses).filter(|_| is_lot) {
        Some(help) => fault.help(help),
        None => fault,
    }
}

/// What to do about calls of which some have a unit and others none.
fn units_differ(sides: &[Side]) -> Option<String> {
    let typed = |side: &&Side| !side.follows && !side.typed.is_empty();
    let is_bare = |side: &&Side| side.typed.ends_with(|c: char| c.is_ascii_digit());
    let bare = sides.iter().filter(typed).find(is_bare)?;
    let marked = sides.iter().filter(typed).find(|side| !is_bare(side))?;
    Some(format!(
        "{} has a unit and {} has none, so that it is read in the unit of the file: if the deed gives all of them in one unit, type it after each",
        marked.quoted(),
        bare.quoted()
    ))
}

/// How the calls of a deed that miss by little, all of them as the deed has them, are typed.
fn as_in_the_deed(traverse: &Traverse, sides: &[Side], misses: Misclosure) -> Option<String> {
    /// A miss of one in this many of the way round is one of measuring, and no digit misread: a bound of ours, from no rule.
    const ONE_IN: i64 = 500;
    let typed = sides.iter().filter(|side| !side.follows).count();
    let count = i64::try_from(typed).ok().filter(|count| *count > 0)?;
    let gap = Axis::BOTH.into_iter().map(|axis| misses.on(axis).abs()).max().unwrap_or(0);
    let around: i64 = traverse.sides.iter().map(|side| side.shape.vector().length().nm()).sum();
    let inch = Length::INCH.nm();
    let inches = gap.div_euclid(count).div_euclid(inch) + 1;
    (gap.checked_mul(ONE_IN)? <= around).then(|| {
        format!(
            "a deed may miss by as little as this: if every call is as the deed has it, write `tolerance {inches}\"` at the end of each of them, and the miss is spread over them"
        )
    })
}

fn with_suspects_of(
    mut fault: Diagnostic,
    is_lot: bool,
    traverse: &Traverse,
    sides: &[Side],
    misses: Misclosure,
) -> Diagnostic {
    let off = off(traverse, misses);
    let usual = usual_form(sides.iter().map(|side| &side.run));
    let mut lists: Vec<Vec<Suspect>> =
        off.iter().map(|&axis| suspects_on(traverse, sides, axis, misses)).collect();
    lists.push(calls::suspects(traverse, sides, misses));
    let is_told = |one: &Suspect| one.is_exact() && one.slip != Some(Slip::OneTooMany);
    if !is_lot && !lists.iter().flatten().any(is_told) {
        lists.push(turned_before_closing(traverse, None));
    }
    // A wall that was walked across its way explains both axes.
    let is_turned = |suspect: &Suspect| matches!(suspect.slip, Some(Slip::QuarterTurn(_)));
    let has_turned = lists.iter().flatten().any(is_turned);
    if has_turned {
        for list in &mut lists {
            list.retain(is_turned);
        }
    }
    lists.retain(|list| !list.is_empty());
    let mut places: Vec<(usize, Span, String)> = Vec::new();
    // Where fewer sides may have an error, it is surer which has.
    let count = |list: &&Vec<Suspect>| list.iter().filter(|one| one.slip.is_some()).count();
    let mut surest: Vec<&Vec<Suspect>> = lists.iter().collect();
    surest.sort_by_key(count);
    for list in surest {
        let named: Vec<&Suspect> =
            list.iter().filter(|suspect| suspect.slip.is_some()).take(MOST_NAMED).collect();
        for suspect in &named {
            let side = &sides[suspect.side];
            if suspect.slip == Some(Slip::TypedTwice) {
                let twice = side.quoted();
                let slack = side.direction.map_or(0, |way| traverse.allowance(way.axis()));
                let back = match suspect.left() <= slack {
                    true => ", and without it the walk comes back",
                    false => "",
                };
                fault = fault.help(format!(
                    "{twice} is the same as the side before it{back}: if it is one wall, take that line out"
                ));
            }
            if let Some(Slip::QuarterTurn(direction)) = suspect.slip {
                fault = fault.help(format!(
                    "look which way {} runs: walked {}, the walk comes back to its start",
                    side.quoted(),
                    direction.word()
                ));
            }
            if let Some(help) = suspect.slip.as_ref().and_then(|slip| read_otherwise(side, slip)) {
                fault = fault.help(help);
            }
            if let Some(text) = reread(suspect, side, usual) {
                fault = fault.repair(side.span, text);
            }
            if suspect.agrees {
                fault = fault.note(format!(
                    "so read, {} would agree with its recorded length",
                    side.quoted()
                ));
            }
            places.push((suspect.side, side.span, label(suspect, &named, sides)));
        }
    }
    fault = fault.repeating();
    places.sort_by_key(|(side, ..)| *side);
    places.dedup_by_key(|(side, ..)| *side);
    for (_, span, label) in places {
        fault = fault.also(span, label);
    }
    if let Some(help) = calls::as_a_calculator_prints(traverse, sides, misses) {
        fault = fault.help(help);
    }
    if let Some(help) = slants_turned(traverse, sides, misses).filter(|_| !is_lot) {
        fault = fault.help(help);
    }
    let missing = same_axis_neighbors(traverse, &off).filter(|_| !has_turned);
    if let Some(pair) = missing {
        let is_twice = lists
            .iter()
            .flatten()
            .any(|one| one.side == pair.1 && one.slip == Some(Slip::TypedTwice));
        fault = fault.help(wall_missing(is_lot, is_twice, &sides[pair.0], &sides[pair.1]));
        let across =
            off.iter().find(|&&axis| Some(axis) != sides[pair.0].direction.map(Direction::axis));
        if let Some(&axis) = across {
            let way = Direction::along(axis, -misses.on(axis));
            fault = fault.repair(sides[pair.0].span, format!("\n{}", way.word()));
        }
    }
    if !lists.is_empty() && has_turned {
        return fault;
    }
    let is_named =
        |side: usize| lists.iter().flatten().any(|one| one.side == side && one.slip.is_some());
    if let Some(side) =
        far_longer(traverse, is_lot).filter(|side| !is_named(*side)).and_then(|at| sides.get(at))
    {
        return fault.also(side.span, "far longer than any other wall").help(format!(
            "measure {} again: it is far longer than any other wall; is a point missing in its number, or its unit?",
            side.quoted()
        ));
    }
    if !lists.is_empty() {
        let how = if is_lot { "compare with the deed" } else { "measure again" };
        let again: Vec<String> = lists.iter().map(|list| named(sides, list)).collect();
        return fault.help(format!("{how}: {}", again.join("; and ")));
    }
    if missing.is_some() {
        return fault;
    }
    if let Some(help) = one_way_only(traverse, sides, &off).filter(|_| !is_lot) {
        return fault.help(help);
    }
    fault.help(if is_lot { no_call(traverse, misses) } else { no_wall(&off, misses) })
}

/// The slanted walls to look at where one or two of them, walked another way, bring the walk back to its start.
fn slants_turned(traverse: &Traverse, sides: &[Side], misses: Misclosure) -> Option<String> {
    let found = turned_slants(traverse, misses);
    let (first, exchanged) = found.first()?;
    let pair = |axis: &Axis| {
        let [one, other] = [1, -1].map(|sign| Direction::along(*axis, sign).word());
        format!("`{one}` and `{other}`")
    };
    let ways = words::all_of(&exchanged.iter().map(pair).collect::<Vec<_>>());
    let same = found.iter().filter(|(_, other)| other == exchanged).take(MOST_NAMED);
    let names: Vec<String> = same
        .map(|(turned, _)| {
            let names = turned.iter().map(|&at| sides[at].quoted()).collect::<Vec<_>>();
            words::all_of(&names)
        })
        .collect();
    let both = if first.len() > 1 { " in both" } else { "" };
    let run = if first.len() > 1 { "run" } else { "runs" };
    Some(format!(
        "look which way {} {run}: with {ways} exchanged{both}, the walk comes back to its start",
        words::list_or(&names)
    ))
}

/// Where no side runs back on an axis, one that was typed the wrong way may have run back, and another one be missing
/// or wrong as well.
fn one_way_only(traverse: &Traverse, sides: &[Side], off: &[Axis]) -> Option<String> {
    let [axis] = off else { return None };
    let legs = traverse.legs(*axis);
    let sign = legs.first()?.sign;
    if legs.len() < 2 || legs.iter().any(|leg| leg.sign != sign) {
        return None;
    }
    let (way, back) = (Direction::along(*axis, sign), Direction::along(*axis, -sign).word());
    let ran: Vec<String> = sides
        .iter()
        .filter(|side| side.direction == Some(way))
        .take(MOST_NAMED)
        .map(Side::quoted)
        .collect();
    (ran.len() >= 2).then(|| {
        format!(
            "look whether {} was walked {back}, and type `{back}` there; what is then left is in the lengths",
            words::list_or(&ran)
        )
    })
}

/// The side of a house that is many times as long as any other, and longer than a house is.
fn far_longer(traverse: &Traverse, is_lot: bool) -> Option<usize> {
    const TIMES: i64 = 8;
    let long = 100 * Length::FOOT.nm();
    let length = |side: &crate::geometry::traverse::TraverseSide| side.shape.vector().length().nm();
    let (at, longest) =
        traverse.sides.iter().map(length).enumerate().max_by_key(|(_, length)| *length)?;
    let others = traverse.sides.iter().enumerate().filter(|(other, _)| *other != at);
    let next = others.map(|(_, side)| length(side)).max()?;
    let is_far = longest > long && longest.div_euclid(TIMES) > next;
    let source = traverse.sides.get(at)?.source;
    source.filter(|_| is_far && !is_lot)
}

/// A straight side as it is typed with its error undone, empty if it is to be taken out; `None` if the error does not
/// say.
fn reread(suspect: &Suspect, side: &Side, form: Form) -> Option<String> {
    let undone = suspect.undone?;
    let Run::Straight(direction, written) = &side.run else { return None };
    Some(match undone.to {
        Reread::Length(nm) => {
            if let Some((_, length)) =
                suspect.slip.as_ref().and_then(|slip| in_other_units(side, slip))
            {
                return Some(format!("{} {length}", direction.word()));
            }
            let length = WrittenLength::new(Length::from_nm(nm), form).spoken();
            format!("{} {length}", direction.word())
        }
        Reread::Toward(way) => format!("{} {}", way.word(), written.spoken()),
        Reread::Gone => String::new(),
    })
}

/// What to type if the number of a side was read in a unit other than the one that its mark or the file gives.
fn read_otherwise(side: &Side, slip: &Slip) -> Option<String> {
    let (way, _) = side.typed.split_once(' ')?;
    let (unit, typed) = in_other_units(side, slip)?;
    Some(format!("if {} was read {unit}, type `{way} {typed}`", side.quoted()))
}

/// The unit in which the number of a side may have been read, and the length typed so.
fn in_other_units(side: &Side, slip: &Slip) -> Option<(String, String)> {
    let (_, length) = side.typed.split_once(' ')?;
    let end = length.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(length.len());
    let number = &length[..end];
    Some(match slip {
        Slip::MetersWithoutUnit => ("in meters".to_owned(), ReadIn::Meters.typed(number)),
        Slip::Unit { read, .. } => (format!("in {read}"), read.typed(number)),
        Slip::InchesAndTenths | Slip::WithAPoint => {
            let (feet, inches) = number.split_once('.')?;
            inches.parse::<u8>().ok().filter(|inches| *inches < 12)?;
            ("as feet and inches".to_owned(), format!("{feet}' {inches}\""))
        }
        _ => return None,
    })
}

/// The label of one of several suspects, of which only one is the error: `digits swapped, or side 8 misread?`
fn label(suspect: &Suspect, named: &[&Suspect], sides: &[Side]) -> String {
    let Some(slip) = &suspect.slip else { return String::new() };
    let others: Vec<String> = named
        .iter()
        .filter(|other| other.side != suspect.side)
        .map(|other| sides[other.side].number.to_string())
        .collect();
    if let Some(with) = suspect.with {
        return format!("{}, and side {} wrong too?", slip.words(), sides[with].number);
    }
    if others.is_empty() || *slip == Slip::TypedTwice {
        return format!("{}?", slip.words());
    }
    format!("{}, or side {} misread?", slip.words(), words::list_or(&others))
}

fn wall_missing(is_lot: bool, is_twice: bool, first: &Side, second: &Side) -> String {
    let turns =
        if first.direction == second.direction { "does not turn" } else { "turns straight back" };
    let what = if is_lot { "call" } else { "wall" };
    let twice = if is_twice { "was it typed twice, or " } else { "" };
    format!(
        "between {} and {} the walk {turns}: {twice}is a {what} missing there?",
        first.quoted(),
        second.quoted()
    )
}

/// Advice for when no single call of a deed accounts for the gap.
fn no_call(traverse: &Traverse, misses: Misclosure) -> String {
    let gap = Axis::BOTH.into_iter().map(|axis| misses.on(axis).abs()).max().unwrap_or(0);
    let lengths = traverse.sides.iter().map(|side| side.shape.vector().length().nm());
    let shortest = lengths.min().unwrap_or(0);
    let all = "no single call accounts for it: compare the bearing and the length of every call with the deed";
    // A gap as long as a call may be a call left out.
    if 2 * gap >= shortest {
        format!(
            "{all}; a last call that the deed does not give is `close`: one straight call back to the start"
        )
    } else {
        all.to_owned()
    }
}

/// Advice for when no single wall accounts for the gap.
fn no_wall(off: &[Axis], misses: Misclosure) -> String {
    let direction =
        off.first().map_or("north", |&axis| Direction::along(axis, -misses.on(axis)).word());
    format!(
        "no single wall accounts for it: measure every wall of that direction again; `{direction} by closing` is only for a wall that nobody could measure, on another one it would hide the error"
    )
}

/// Names the first sides as typed, the others by number.
fn named(sides: &[Side], list: &[Suspect]) -> String {
    const AS_TYPED: usize = 6;
    let number = |suspect: &Suspect| format!("side {}", sides[suspect.side].number);
    let name = |(i, suspect): (usize, &Suspect)| {
        if i < AS_TYPED { sides[suspect.side].quoted() } else { number(suspect) }
    };
    let all = || list.iter().enumerate();
    let pair: Vec<String> = all().filter(|(_, one)| one.with.is_some()).map(name).collect();
    let alone = all().filter(|(_, one)| one.with.is_none()).map(name);
    let pair = (!pair.is_empty()).then(|| format!("both {}", pair.join(" and ")));
    words::list_or(&pair.into_iter().chain(alone).collect::<Vec<_>>())
}
