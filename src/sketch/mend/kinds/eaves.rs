//! Strips of a floor along its walls where the ceiling is too low to count: `eaves under 5' 4' deep along front and back`.

use super::super::pieces::Sort;
use super::attic::{COUNTS, five_feet_like, is_five_feet};
use super::measure::{Measure, written};
use super::straight::{self, Walk};
use super::whereabouts::direction;
use super::{Answer, Typed, quoted};
use crate::geometry::compass::{Axis, Direction};
use crate::units::length::Length;

/// Words of such a line that say nothing more.
const SMALL: [&str; 89] = [
    "eaves",
    "eave",
    "low",
    "lower",
    "each",
    "both",
    "side",
    "sides",
    "on",
    "of",
    "the",
    "under",
    "strip",
    "strips",
    "wide",
    "is",
    "are",
    "ceiling",
    "ceilings",
    "at",
    "ends",
    "either",
    "along",
    "and",
    "for",
    "below",
    "less",
    "than",
    "high",
    "in",
    "about",
    "to",
    "deep",
    "wall",
    "walls",
    "from",
    "only",
    "part",
    "parts",
    "rooms",
    "bedroom",
    "bedrooms",
    "portion",
    "area",
    "section",
    "room",
    "roof",
    "slope",
    "slopes",
    "sloping",
    "sloped",
    "slanted",
    "slants",
    "with",
    "a",
    "reaches",
    "gets",
    "headroom",
    "tall",
    "across",
    "whole",
    "all",
    "by",
    "where",
    "out",
    "starts",
    "until",
    "end",
    "edge",
    "it",
    "depth",
    "has",
    "only",
    "inside",
    "there",
    "up",
    "full",
    "length",
    "down",
    "back",
    "height",
    "high,",
    "under,",
    "foot",
    "ft",
    "knee",
    "kneewall",
    "kneewalls",
    "knee-walls",
];
const EAVES: [&str; 2] = ["eaves", "eave"];
const KNEE: [&str; 5] = ["knee", "kneewall", "kneewalls", "knee-wall", "knee-walls"];
/// Words before or after the height up to which a ceiling is too low.
const BEFORE_HEIGHT: [&str; 7] = ["under", "below", "than", "reaches", "gets", "to", "is"];
const AFTER_HEIGHT: [&str; 7] =
    ["high", "tall", "ceiling", "ceilings", "headroom", "height", "foot"];

/// What such a line says.
#[derive(Default)]
struct Said {
    /// How far the strips reach into the room.
    depth: Option<Measure>,
    /// Under which height they lie, if that is more than 5 ft.
    height: Option<Measure>,
    says_height: bool,
    sides: Vec<Direction>,
    says_both: bool,
    needs_street: bool,
    /// Whether the words leave no doubt that the length is the depth.
    is_depth: bool,
    is_knee: bool,
    /// Whether the length may be how high the ceiling is.
    is_height_or_depth: bool,
}

/// `low 4' along the back`, `ceiling 4' from front, 5 feet high`, `5' at 4' in from both sides`, `eaves 1' each side`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if let Some(answer) = sized_on_both_sides(typed) {
        return Some(answer);
    }
    let said = read(typed)?;
    let depth = said.depth.clone()?;
    let five = five_feet_like(&depth)?;
    let height = said.height.clone().unwrap_or_else(|| five.clone());
    if said.needs_street {
        return Some(Answer::say(
            "which sides are front, back, left and right is not known before the file says where the street is",
            "write on which side the street is above the first level, as `front south`; leave this line as it is",
        ));
    }
    if said.is_height_or_depth {
        let side = said.sides.first().map_or("north", |side| side.word());
        return Some(Answer::say(
            format!("{COUNTS}: how far in from the wall that is, is not said for sure"),
            format!(
                "if {0} is how high the ceiling is there and it is {1} or more, leave the line out; if it is lower than {1} there, measure from the wall to where it is {1} high, and write that length as `low {2} deep along the {side}`; if {0} is that length itself, write `low {0} deep along the {side}`",
                depth.text,
                height.text,
                if depth.is_metric() { "1.2 m" } else { "4'" },
            ),
        ));
    }
    if said.is_knee {
        return Some(behind_a_knee_wall(&depth, &height));
    }
    if !said.is_depth && !said.says_both && said.sides.len() < 2 {
        let side = said.sides.first()?.word();
        return Some(Answer::say(
            format!(
                "{COUNTS}: is {} how far the low part reaches into the room, or how long it is",
                depth.text
            ),
            format!(
                "if it reaches that far in, all along that wall, write `low {} deep along the {side}`; if it is that long, write both of its lengths, as `low {} x {} on the {side} side`",
                depth.text,
                depth.text,
                if depth.is_metric() { "1.2 m" } else { "4'" },
            ),
        ));
    }
    let (space, walk) = floor(typed);
    let walk = walk.filter(Walk::is_rectangle);
    let ways: Vec<Vec<Direction>> = match (&said.sides[..], &walk) {
        ([], Some(walk)) => {
            let mut axes = [Axis::North, Axis::East];
            axes.sort_by_key(|axis| walk.extent(*axis));
            axes.map(|axis| [-1, 1].map(|sign| Direction::along(axis, sign)).to_vec()).to_vec()
        }
        (sides, _) => vec![sides.to_vec()],
    };
    let lines: Vec<String> = match (&space, &walk) {
        (Some(space), Some(walk)) => {
            ways.iter().filter_map(|sides| strips(space, walk, sides, &depth, &height)).collect()
        }
        _ => Vec::new(),
    };
    if lines.is_empty() {
        return Some(Answer::say(
            "strips under the eaves where the ceiling is lower than 5 ft do not count: each is a space of its own",
            format!(
                "type each as `low \"Eaves\" under {}`, below the walls of the floor in which it lies, with its four sides: two of them are `{}`, the others as long as the floor",
                height.text, depth.text
            ),
        ));
    }
    let which = match lines.len() {
        1 => ".".to_owned(),
        _ => ": do they run along the longer walls or the shorter ones?".to_owned(),
    };
    if said.height.is_some() {
        return Some(Answer::Lines(
            lines,
            format!(
                "what is lower than {} is deducted if it is typed as `low`{which} Where the ceiling is {} or more, the floor counts: leave the line out if it is that high even there",
                height.text, five.text
            ),
        ));
    }
    Some(Answer::Lines(
        lines,
        format!(
            "strips under the eaves where the ceiling is lower than {0} do not count, and are `low`{which} If the ceiling is {0} or more even there, leave the line out",
            height.text
        ),
    ))
}

/// `low "Eaves" under 5 ft, 4' x 30' 4" each side`: two strips, and one size.
fn sized_on_both_sides(typed: &Typed<'_>) -> Option<Answer> {
    const NEAR: i64 = 6 * Length::INCH.nm();
    let each = typed.find(1, &["each", "both", "either", "two"])?;
    let says_both = typed.says(each + 1, &["side", "sides", "end", "ends"]);
    let begins = typed.says(0, &["low", "eaves", "kneewalls", "kneewall", "knee", "eave"]);
    if !begins || !says_both || super::super::begins_as_side(&typed.attempt.beside.after) {
        return None;
    }
    let all = super::measure::lengths(&typed.pieces, 1);
    let (one, two) = all.windows(2).find_map(|two| {
        let [(_, one), (second, two)] = two else { return None };
        let by = typed.says(second.checked_sub(1)?, &["x", "by"])
            || typed.piece(second - 1).is_some_and(|mark| mark.is_mark("×*"));
        by.then_some((one, two))
    })?;
    let (deep, long) = if one.length < two.length { (one, two) } else { (two, one) };
    let height = five_feet_like(deep)?;
    let (space, walk) = floor(typed);
    let walk = walk.filter(Walk::is_rectangle);
    let lines: Vec<String> = walk
        .iter()
        .flat_map(|walk| {
            let is_along = |axis: &Axis| (walk.extent(*axis) - long.length).nm().abs() <= NEAR;
            [Axis::North, Axis::East].into_iter().filter(is_along).filter_map(|axis| {
                let across = if axis == Axis::North { Axis::East } else { Axis::North };
                let sides = [-1, 1].map(|sign| Direction::along(across, sign));
                strips(space.as_deref()?, walk, &sides, deep, &height)
            })
        })
        .collect();
    if lines.is_empty() {
        return Some(Answer::say(
            "two strips are two spaces, each with its own place and its own four sides",
            format!(
                "write one of them as `low \"Eaves, one side\"`, its place and `under {}`, with its four sides below it, two of them `{}` and two `{}`; the other in the same way as `low \"Eaves, other side\"`; or, if each runs along a whole wall, `eaves {} each side`",
                height.text, deep.text, long.text, deep.text
            ),
        ));
    }
    Some(Answer::Lines(
        lines,
        format!(
            "two strips are two spaces: where the ceiling is lower than {0} they are `low`. If it is {0} or more even there, leave the line out",
            height.text
        ),
    ))
}

/// `low "Eaves" slopes 4' to 7' start north 27'`: how high the ceiling is at its two ends, and no place.
pub(super) fn slopes(typed: &Typed<'_>) -> Option<Answer> {
    let is_low =
        typed.says(0, &["low"]) && typed.piece(1).is_some_and(|name| name.sort == Sort::Text);
    let slope = typed.find(2, &["slopes", "slope", "sloping", "sloped", "slanted", "slants"])?;
    let mut at = slope + 1;
    while typed.says(at, &["from", "ceiling", "down", "up", "roof"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(",:(-–"))
    {
        at += 1;
    }
    let one = straight::length_in(typed, &typed.pieces, at).filter(|_| is_low)?;
    let dash = typed.piece(one.end).is_some_and(|dash| dash.is_mark("-–"));
    if !typed.says(one.end, &["to"]) && !dash {
        return None;
    }
    let two = straight::length_in(typed, &typed.pieces, one.end + 1)?;
    let mut end = two.end;
    while typed.says(end, &["high", "tall", "ceiling"])
        || typed.piece(end).is_some_and(|mark| mark.is_mark(",;)"))
    {
        end += 1;
    }
    let five = five_feet_like(&one)?;
    let low = one.length.min(two.length);
    if low >= five.length {
        return Some(Answer::say(
            format!(
                "{COUNTS}, and this ceiling is {} at its lowest",
                if low == one.length { &one.text } else { &two.text }
            ),
            "leave this line out, and the walls below it",
        ));
    }
    // Where it lies along a side is for other rules.
    let rest = typed.rest(end);
    if !rest.is_empty() && !typed.says(end, &["start", "from", "within", "under"]) {
        return None;
    }
    let under = match typed.find(2, &["under"]) {
        Some(_) => String::new(),
        None => format!(" under {}", five.text),
    };
    let head = typed.text(0, slope).trim_end_matches([',', ';', ' ']);
    let line = format!("{head}{under} {rest}");
    Some(Answer::line(
        line.trim_end(),
        format!(
            "{COUNTS}: the walls of what is `low` go as far as the ceiling is lower than {}",
            five.text
        ),
    ))
}

/// A knee wall that stands some way in: what lies behind it is no room, and before it the ceiling may be low as well.
fn behind_a_knee_wall(depth: &Measure, height: &Measure) -> Answer {
    Answer::say(
        format!(
            "{COUNTS}: a knee wall {} in says neither how high the ceiling is there nor whether the walls above go round what lies behind it",
            depth.text
        ),
        format!(
            "if the walls above are the outer ones and the ceiling is {0} high at the knee walls, write `eaves {1} each side`, or `low {1} deep along the north` for a single one; if it is lower there, write how far in it is {0} high instead of {1}; if the walls above are the knee walls themselves and the ceiling is {0} high there, leave this line out",
            height.text, depth.text
        ),
    )
}

/// The floor that such strips lie in: the last space above, unless that is such a strip, a stair or an opening itself.
fn floor(typed: &Typed<'_>) -> (Option<String>, Option<Walk>) {
    let beside = &typed.attempt.beside;
    let is_part = |name: &String| {
        let name = name.to_lowercase();
        ["eaves", "low", "strip", "foyer", "stair", "open", "void"]
            .iter()
            .any(|word| name.starts_with(word))
    };
    match (&typed.attempt.space, &typed.attempt.house) {
        (Some(last), Some(house)) if beside.last_is_a_part || is_part(last) => {
            (Some(house.clone()), straight::walk(typed, &beside.house_walk))
        }
        (last, _) => (last.clone(), straight::walk(typed, &beside.last_walk)),
    }
}

/// Strips of one depth along sides of a rectangle, each with the corner where its walk begins: those along the north and
/// the south take the whole wall, the others what is left between them.
pub(super) fn strips(
    space: &str,
    walk: &Walk,
    sides: &[Direction],
    by: &Measure,
    height: &Measure,
) -> Option<String> {
    use Direction::{East, North, South, West};
    let (e, n) = (walk.extent(Axis::East), walk.extent(Axis::North));
    let has = |side: Direction| sides.contains(&side);
    let taken = |one: Direction, other: Direction| {
        let count = i64::from(has(one)) + i64::from(has(other));
        Length::from_nm(by.length.nm() * count)
    };
    let (along_east, along_north) = (e, n - taken(North, South));
    let rest = [along_north, n - taken(North, South), e - taken(East, West)];
    if by.length <= Length::ZERO || rest.iter().any(|left| *left <= Length::ZERO) {
        return None;
    }
    let text = |length: Length| written(length, height);
    let name = |side: Direction| format!("Eaves {}", side.word());
    let from = |of: &str, corner: usize| format!("from {} corner {corner}", quoted(of));
    let mut all = Vec::new();
    for side in [South, North, West, East].into_iter().filter(|side| has(*side)) {
        // Where it begins, the way along the wall, and the way into the room.
        let (place, along, length, inward) = match side {
            South => (from(space, walk.corner(South, West)? + 1), East, along_east, North),
            North => (from(space, walk.corner(North, West)? + 1), East, along_east, South),
            West if has(South) => (from(&name(South), 4), North, along_north, East),
            East if has(South) => (from(&name(South), 3), North, along_north, West),
            West if has(North) => (from(&name(North), 4), South, along_north, East),
            East if has(North) => (from(&name(North), 3), South, along_north, West),
            West => (from(space, walk.corner(South, West)? + 1), North, along_north, East),
            East => (from(space, walk.corner(South, East)? + 1), North, along_north, West),
        };
        all.push(format!(
            "low {} under {} {place}\n{} {}\n{} {}\n{} {}\n{} {}",
            quoted(&name(side)),
            height.text,
            along.word(),
            text(length),
            inward.word(),
            text(by.length),
            along.opposite().word(),
            text(length),
            inward.opposite().word(),
            text(by.length),
        ));
    }
    (!all.is_empty()).then(|| all.join("\n"))
}

fn read(typed: &Typed<'_>) -> Option<Said> {
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let says = |words: &[&str]| typed.find(0, words).is_some();
    // `low "Eaves" under 5'`: a name is all that the line may have of the format.
    let name = typed.pieces.iter().position(|piece| piece.sort == Sort::Text);
    let is_named = name == Some(1) && typed.says(0, &["low"]);
    let is_low = says(&["eaves", "eave", "low", "lower", "under", "below"])
        || says(&KNEE)
        || says(&["ceiling", "ceilings", "roof", "headroom"]);
    let first = usize::from(typed.piece(0)?.is_number());
    let begins = typed.says(
        0,
        &[
            "eaves",
            "eave",
            "low",
            "lower",
            "strips",
            "strip",
            "ceiling",
            "ceilings",
            "under",
            "below",
            "sloped",
            "sloping",
            "slanted",
            "roof",
            "kneewall",
            "kneewalls",
            "knee",
            "knee-wall",
            "knee-walls",
        ],
    ) || first == 1;
    let is_high = says(&["more", "above", "over", "higher", "taller", "least", "corner", "recorded"])
            || typed.line.contains(['>', '≥', '#', '$'])
            // `5'+` is how high it is at least, and `N+S` both sides.
            || typed.pieces.iter().enumerate().any(|(at, plus)| {
                plus.is_mark("+")
                    && !(at > 0
                        && direction(typed, at - 1).is_some()
                        && direction(typed, at + 1).is_some())
            });
    if follows
        || !begins
        || is_high
        || name.is_some() && !is_named
        || super::size_in(typed.line).is_some()
    {
        return None;
    }
    let mut said = Said {
        is_knee: says(&KNEE),
        is_depth: says(&EAVES) || says(&["along", "across"]),
        says_both: says(&["each", "both", "either"]) && says(&["side", "sides", "ends"]),
        ..Said::default()
    };
    let mut found: Vec<(Measure, bool, bool)> = Vec::new();
    let mut at = 0;
    while at < typed.pieces.len() {
        if Some(at) == name {
            at += 1;
            continue;
        }
        if let Some(one) = straight::length_in(typed, &typed.pieces, at) {
            let mut end = one.end;
            // `5-foot ceiling`
            if typed.piece(end).is_some_and(|dash| dash.is_mark("-"))
                && typed.says(end + 1, &["foot", "ft"])
            {
                end += 2;
            }
            let is_height =
                at > 0 && typed.says(at - 1, &BEFORE_HEIGHT) || typed.says(end, &AFTER_HEIGHT);
            let is_depth = typed.says(end, &["deep", "in", "wide", "from", "out"]);
            found.push((one, is_height, is_depth));
            at = end;
            continue;
        }
        match direction(typed, at) {
            // `back` may only say how far.
            Some(Some(way)) => said.sides.push(way),
            Some(None) => said.needs_street = true,
            None if typed.says(at, &SMALL) || typed.pieces[at].is_mark(",;:()-–.&/+'’\"") => {}
            None => return None,
        }
        at += 1;
    }
    said.sides.dedup();
    let says_ceiling = says(&["ceiling", "ceilings", "headroom", "roof"]);
    let is_placed = !said.sides.is_empty() || said.says_both || said.needs_street;
    let is_high_enough =
        |one: &Measure| one.length >= Length::from_nm(5 * Length::FOOT.nm() - Length::INCH.nm());
    match &found[..] {
        // `low ceiling 7' in the back`: a height, or how far in.
        [(one, is_height, _)] if says_ceiling && is_placed && !says(&["deep", "eaves", "eave"]) => {
            if *is_height && is_high_enough(one) {
                return None;
            }
            said.is_height_or_depth = true;
            said.depth = Some(one.clone());
            return Some(said);
        }
        // `roof slopes from 8' at the front to 4' at the back`
        [(one, ..), (two, ..)]
            if (says(&["slopes", "slope", "sloping", "sloped"]) || is_named && says(&["to"]))
                && is_placed
                && !is_five_feet(one)
                && !is_five_feet(two)
                && is_high_enough(one) != is_high_enough(two) =>
        {
            let is_first = is_high_enough(two);
            said.depth = Some(if is_first { one.clone() } else { two.clone() });
            said.sides = match (is_first, &said.sides[..]) {
                (true, [first, ..]) => vec![*first],
                (false, [.., last]) => vec![*last],
                (_, []) => Vec::new(),
            };
            said.is_height_or_depth = true;
            return Some(said);
        }
        _ => {}
    }
    let depth = match &found[..] {
        [(one, is_height, is_depth)] if *is_depth || !*is_height => {
            // `5 ft high at the back` says no depth.
            said.is_depth |= *is_depth;
            one.clone()
        }
        [first, second] => {
            let five = [first, second].map(|(one, ..)| is_five_feet(one));
            let (height, depth) = match (five, first.1, second.1, first.2, second.2) {
                ([true, false], ..) => (first, second),
                ([false, true], ..) => (second, first),
                ([true, true], true, false, ..) | ([true, true], _, _, false, true) => {
                    (first, second)
                }
                ([true, true], false, true, ..) | ([true, true], _, _, true, false) => {
                    (second, first)
                }
                // `under 7 ft`: what is said to be low there.
                ([false, false], true, false, ..) if is_high_enough(&first.0) => (first, second),
                ([false, false], false, true, ..) if is_high_enough(&second.0) => (second, first),
                _ => return None,
            };
            const HIGHEST: Length = Length::from_nm(8 * Length::FOOT.nm());
            if !is_five_feet(&height.0) {
                // Other words ask how high the ceiling is at one of two places.
                if height.0.length > HIGHEST || !says(&["under", "below", "less", "lower"]) {
                    return None;
                }
                said.height = Some(height.0.clone());
            }
            said.says_height = true;
            said.is_depth |= depth.2 || !height.2;
            depth.0.clone()
        }
        _ => return None,
    };
    // A ceiling alone is as high as it is: what is low about it has to be said.
    let says_low = says(&["eaves", "eave", "low", "lower"]) || said.says_height || said.is_knee;
    if !is_low && !said.says_height || !says_low {
        return None;
    }
    // `knee walls 4'` is how high they are.
    if said.is_knee && !said.is_depth {
        return None;
    }
    said.depth = Some(depth);
    (is_placed || said.is_knee).then_some(said)
}
