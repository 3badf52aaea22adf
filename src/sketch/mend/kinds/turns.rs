//! Walls that are told by their turns: `west 12', out 2', west 6', in 2', west 22'`, `jog left 4'`.

use super::super::compass::{by_compass, is_upright, way_and_back};
use super::measure::{Measure, length_at};
use super::straight;
use super::walls::is_way;
use super::{Answer, Rule, Typed, first_of};
use crate::geometry::compass::Direction;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    if typed.attempt.beside.in_lot {
        return None;
    }
    let rules: &[Rule] = &[out_and_in_again, jog_to_a_hand, curved_wall, leads_back];
    first_of(rules, typed)
}

/// One of several walls on a line.
enum Step {
    Way(Direction),
    Out,
    In,
    Along,
}

const OUT: [&str; 4] = ["out", "outward", "outwards", "forward"];
const IN: [&str; 4] = ["in", "inward", "inwards", "back"];
const ALONG: [&str; 4] = ["over", "across", "along", "straight"];

/// Which way a walk goes round, by its turns so far: to the right, so that the outside is on the left.
pub(super) fn is_clockwise(typed: &Typed<'_>) -> Option<bool> {
    let beside = &typed.attempt.beside;
    let way = |line: &std::rc::Rc<str>| {
        let (word, _) = way_and_back(line.split(' ').next()?)?;
        straight::compass(by_compass(word, beside.front))
    };
    let ways: Vec<Direction> = beside.last_walk.iter().filter_map(way).collect();
    let turns: i32 = ways
        .windows(2)
        .map(|two| i32::from(two[1] == two[0].right()) - i32::from(two[1] == two[0].left()))
        .sum();
    (turns != 0).then_some(turns > 0)
}

/// `west 12', out 2', west 6', in 2', west 22'`: a wall with what stands out of it, on one line.
fn out_and_in_again(typed: &Typed<'_>) -> Option<Answer> {
    let front = typed.attempt.beside.front;
    let mut steps: Vec<(Step, Measure)> = Vec::new();
    let mut at = 0;
    while at < typed.pieces.len() {
        while typed
            .says(at, &["then", "and", "go", "goes", "jog", "jogs", "step", "steps", "again", "to"])
            || typed.says(at, &IN) && typed.says(at + 1, &["out", "in"])
            || typed.piece(at).is_some_and(|mark| mark.is_mark(",;+&→>-–.:"))
        {
            at += 1;
        }
        if at == typed.pieces.len() {
            break;
        }
        let step = match way_and_back(&typed.lower(at)).filter(|_| !typed.says(at, &IN)) {
            Some((way, _)) => Step::Way(straight::compass(by_compass(way, front))?),
            None if typed.says(at, &OUT) => Step::Out,
            None if typed.says(at, &IN) => Step::In,
            None if typed.says(at, &ALONG) => Step::Along,
            None => return None,
        };
        let one = length_at(&typed.pieces, at + 1)?;
        at = one.end;
        steps.push((step, one));
    }
    let turns = |step: &(Step, Measure)| !matches!(step.0, Step::Way(_));
    // The way along the wall is that of the line, or of the wall before it.
    let before = typed.attempt.beside.before.split(' ').next().and_then(way_and_back);
    let before = before.and_then(|(way, _)| straight::compass(by_compass(way, front)));
    let along = match &steps.first()?.0 {
        Step::Way(way) => *way,
        _ => before?,
    };
    let fits = steps.iter().all(|(step, _)| match step {
        Step::Way(way) => is_upright(way.word()) == is_upright(along.word()),
        _ => true,
    });
    if steps.len() < 3 || !steps.iter().any(turns) || !fits {
        return None;
    }
    let lines = |clockwise: bool| {
        let outward = if clockwise { along.left() } else { along.right() };
        let walls = steps.iter().map(|(step, one)| {
            let way = match step {
                Step::Way(way) => *way,
                Step::Out => outward,
                Step::In => outward.opposite(),
                Step::Along => along,
            };
            format!("{} {}", way.word(), one.text)
        });
        walls.collect::<Vec<_>>().join("\n")
    };
    const CAUSE: &str = "each wall has a line of its own, with the way that it runs";
    Some(match is_clockwise(typed) {
        Some(clockwise) => Answer::line(lines(clockwise), CAUSE),
        None => Answer::Lines(
            vec![lines(true), lines(false)],
            format!(
                "{CAUSE}; is the house on the right of this wall as it is walked, or on its left?"
            ),
        ),
    })
}

/// `jog left 4'`, `jog R 3-4`, `jog left 4', then straight 12'`: to one hand as it was walked, or as seen from the street.
fn jog_to_a_hand(typed: &Typed<'_>) -> Option<Answer> {
    const JOGS: [&str; 7] = ["jog", "jogs", "step", "steps", "offset", "bump", "return"];
    let to = usize::from(typed.says(1, &["to"])) + usize::from(typed.says(2, &["the"]));
    let hand = match typed.lower(1 + to).as_str() {
        "l" | "left" => "left",
        "r" | "right" => "right",
        _ => return None,
    };
    let mut at = 2 + to;
    while typed.says(at, &["turn", "hand"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(",:"))
    {
        at += 1;
    }
    let mut goes_on = None;
    let one = match typed.pieces.get(at..)? {
        // `3-4`: feet and inches.
        [feet, dash, inches] if feet.is_number() && dash.is_mark("-–") && inches.is_number() => {
            Some(format!("{}' {}\"", feet.text, inches.text))
        }
        _ => straight::length_in(typed, &typed.pieces, at)
            .filter(|one| {
                goes_on = wall_after_a_jog(typed, one.end);
                one.end == typed.pieces.len() || goes_on.is_some()
            })
            .map(|one| one.text),
    };
    let text = one.filter(|_| typed.says(0, &JOGS))?;
    let beside = &typed.attempt.beside;
    let before = way_and_back(beside.before.split(' ').next()?)?.0;
    let before = straight::compass(by_compass(before, beside.front))?;
    let turned = if hand == "left" { before.left() } else { before.right() };
    let seen = straight::compass(by_compass(hand, beside.front))
        .filter(|seen| *seen != turned && seen.axis() == turned.axis());
    let on = match goes_on {
        Some((Some(way), _)) if way.axis() != before.axis() => return None,
        Some((way, one)) => format!("\n{} {}", way.unwrap_or(before).word(), one.text),
        None => String::new(),
    };
    let line = |way: Direction| format!("{} {text}{on}", way.word());
    Some(match seen {
        Some(seen) => Answer::Lines(
            vec![line(turned), line(seen)],
            format!(
                "each wall of a jog is a side, with the way that it runs: a turn to the {hand} goes {} here, and {hand} as seen from the street is {}",
                turned.word(),
                seen.word()
            ),
        ),
        None => Answer::line(
            line(turned),
            format!(
                "each wall of a jog is a side, with the way that it runs: a turn to the {hand} goes {} here",
                turned.word()
            ),
        ),
    })
}

/// `, then straight 12'`, `, on 12'`, `, then south 12'` at the end of a line: the wall that goes on after a jog, and its
/// way if it says one.
fn wall_after_a_jog(typed: &Typed<'_>, from: usize) -> Option<(Option<Direction>, Measure)> {
    const ON: [&str; 13] = [
        "then",
        "and",
        "straight",
        "on",
        "ahead",
        "continue",
        "continues",
        "again",
        "along",
        "for",
        "go",
        "goes",
        "over",
    ];
    let is_small =
        |at: usize| typed.says(at, &ON) || typed.piece(at).is_some_and(|mark| mark.is_mark(",;+&"));
    let at = (from..typed.pieces.len()).find(|&at| !is_small(at)).filter(|at| *at > from)?;
    let front = typed.attempt.beside.front;
    let way = way_and_back(&typed.lower(at)).and_then(|(way, _)| {
        // `left` and `right` are turns here, and `back` is on or back.
        let by_name = !["left", "right", "back", "front"].contains(&way);
        straight::compass(by_compass(way, front)).filter(|_| by_name)
    });
    let one = straight::length_in(typed, &typed.pieces, at + usize::from(way.is_some()))?;
    let ends = (one.end..typed.pieces.len()).all(is_small);
    ends.then_some((way, one))
}

/// `box bay 6' x 2'`, `alcove in 3' x 8'` between the walls of a walk: three walls, and no space.
pub(super) fn square_bump(typed: &Typed<'_>) -> Option<Answer> {
    const BUMPS: [&str; 11] = [
        "alcove",
        "niche",
        "inset",
        "recess",
        "notch",
        "bumpout",
        "bump-out",
        "popout",
        "nook",
        "bump",
        "cantilever",
    ];
    let is_box = typed.says(0, &["box", "boxed", "square"]) && typed.says(1, &["bay"]);
    typed.attempt.space.as_ref()?;
    let beside = &typed.attempt.beside;
    let progress = straight::progress(typed, &beside.last_walk);
    let is_wall = super::super::begins_as_wall(&beside.before);
    // `entry inset 4' x 6'`; what a chimney stands out has no floor.
    let chimney = ["chimney", "fireplace", "firebox", "flue", "hearth"];
    // `bump out 2' x 6'` is known to other rules.
    let is_bump =
        (0..2).any(|at| typed.says(at, &BUMPS)) && !typed.says(0, &["bump", "bumpout", "bump-out"]);
    // `firebox bump 5' x 20"`: known to other rules.
    let is_bump = is_bump && typed.find(0, &chimney).is_none();
    if !(is_box || is_bump) || !is_wall || !progress.is_open() {
        return None;
    }
    let found: Vec<Measure> = super::measure::lengths(&typed.pieces, 1)
        .into_iter()
        .map(|(_, one)| one)
        .filter(|one| one.has_unit)
        .collect();
    let says_both = typed.find(1, &["deep", "depth"]).is_some()
        && typed.find(1, &["wide", "width", "long"]).is_some();
    let [one, two] = &found[..] else { return None };
    if super::size_in(typed.line).is_none() && !says_both {
        return None;
    }
    // What stands out of a wall is wider than deep, unless the words say so.
    let is_deep =
        |one: &Measure| typed.says(one.end, &["deep", "d", "depth", "out", "in", "back", "high"]);
    let is_wide = |one: &Measure| typed.says(one.end, &["wide", "w", "width", "long", "across"]);
    let (wide, out) = if is_deep(one) || is_wide(two) {
        (two, one)
    } else if is_deep(two) || is_wide(one) || one.length >= two.length {
        (one, two)
    } else {
        (two, one)
    };
    let flat = typed.find(0, &["flat"]).is_some();
    (!flat && !is_way(typed, 0)).then(|| {
        Answer::say(
            "what stands out of a wall or back from it with square corners is three walls of the walk",
            format!(
                "write `north`, `east`, `south` or `west`, as you walked along it, and a length for each of the three, out, along and back, instead of this line: `{0}` out, `{1}` along and `{0}` back, if it is {1} wide and {0} deep; at a corner of the house they are two walls",
                out.text, wide.text
            ),
        )
    })
}

/// `curved wall, chord 10', bulges 18"`: an arc with its chord and its rise.
fn curved_wall(typed: &Typed<'_>) -> Option<Answer> {
    const CURVES: [&str; 6] = ["curved", "curve", "rounded", "arc", "arched", "bowed"];
    const RISE: [&str; 14] = [
        "bulges", "bulge", "rise", "rises", "out", "deep", "depth", "sagitta", "sticks", "bows",
        "in", "middle", "mid", "projects",
    ];
    const SMALL: [&str; 20] = [
        "wall", "chord", "across", "straight", "wide", "width", "end", "to", "is", "the", "at",
        "of", "from", "and", "with", "section", "side", "long", "ends", "a",
    ];
    let is_known = typed.says(0, &["arc"]) && typed.find(1, &["rise"]).is_some();
    let begins = (0..2).any(|at| typed.says(at, &CURVES)) && !is_known;
    let found = super::measure::lengths(&typed.pieces, 0);
    let [(first, one), (second, two)] = &found[..] else { return None };
    let is_length = |at: usize| (*first..one.end).contains(&at) || (*second..two.end).contains(&at);
    let is_known = |at: usize| {
        typed.says(at, &CURVES)
            || typed.says(at, &RISE)
            || typed.says(at, &SMALL)
            || typed.pieces[at].is_mark(",;:()-–.=")
    };
    let runs = (0..typed.pieces.len()).all(|at| is_length(at) || is_known(at));
    if !begins || !runs || typed.find(0, &["radius", "r", "degrees", "delta"]).is_some() {
        return None;
    }
    let (chord, rise) =
        if one.length >= two.length { (&one.text, &two.text) } else { (&two.text, &one.text) };
    Some(Answer::say(
        "a curved wall is an `arc`, with the way and the length of its chord and how far it stands out from it",
        format!(
            "write `arc`, then `north`, `east`, `south` or `west`, as the chord runs from its beginning to its end, then `{chord} rise {rise}` and the side to which it stands out, as `arc east {chord} rise {rise} north`"
        ),
    ))
}

/// `go west until start`, `back home west`: the last wall, which follows from the others.
fn leads_back(typed: &Typed<'_>) -> Option<Answer> {
    const START: [&str; 7] = ["start", "home", "beginning", "began", "started", "pob", "origin"];
    const WORDS: [&str; 22] = [
        "go", "goes", "back", "to", "until", "till", "the", "then", "where", "we", "i", "it",
        "and", "straight", "all", "way", "walk", "again", "at", "is", "of", "point",
    ];
    let compass = ["north", "east", "south", "west"];
    let mut ways = (0..typed.pieces.len()).filter(|&at| typed.says(at, &compass));
    let way = ways.next().filter(|way| *way > 0 && ways.next().is_none())?;
    let is_plain = |at: usize| {
        at == way
            || typed.says(at, &START)
            || typed.says(at, &WORDS)
            || typed.pieces[at].is_mark(".,-–→>")
    };
    let progress = straight::progress(typed, &typed.attempt.beside.last_walk);
    let runs = (0..typed.pieces.len()).all(is_plain) && typed.find(0, &START).is_some();
    (runs && progress.is_open()).then(|| {
        Answer::line(
            format!("{} by closing", typed.lower(way)),
            "a wall that leads back to the start and was not measured has `by closing`",
        )
    })
}
