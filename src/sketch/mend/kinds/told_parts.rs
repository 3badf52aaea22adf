//! Walls and rooms that are told in parts: `west 38-6 to gate, then 1-6 behind gate`, `bow window 7' x 16" in this wall`,
//! `closet bumped into garage 3x6`.

use super::super::compass::way_and_back;
use super::super::pieces::Sort;
use super::faces::STANDS;
use super::measure::{Measure, lengths, written};
use super::{Answer, Rule, Typed, first_of, is_text, quoted, remark, straight};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    if typed.is_in_lot() {
        return first_of(&[calls_with_remarks], typed);
    }
    let rules: &[Rule] = &[wall_in_stretches, rounded_window, room_in_the_garage, part_of_a_garage];
    first_of(rules, typed)
}

/// `west 38' 6" to gate, then 1' 6" behind gate`, `kitchen wall west 22' plus den wall 18'`: one wall, taped in stretches.
fn wall_in_stretches(typed: &Typed<'_>) -> Option<Answer> {
    const MORE: [&str; 4] = ["then", "plus", "more", "another"];
    const SMALL: [&str; 32] = [
        "to", "the", "gate", "fence", "behind", "past", "wall", "side", "it", "and", "after",
        "beyond", "from", "there", "up", "corner", "on", "kitchen", "den", "porch", "garage",
        "door", "chimney", "steps", "hedge", "bush", "of", "bedroom", "living", "room", "dining",
        "deck",
    ];
    let ways: Vec<usize> = (0..typed.pieces.len())
        .filter(|&at| {
            way_and_back(&typed.lower(at)).is_some() && typed.pieces[at].sort == Sort::Word
        })
        .collect();
    let [way] = ways[..] else { return None };
    let found = stretches(typed);
    let [(first, one), (second, two)] = &found[..] else { return None };
    let in_length = |at: usize| (*first..one.end).contains(&at) || (*second..two.end).contains(&at);
    let only = (0..typed.pieces.len()).all(|at| {
        at == way
            || in_length(at)
            || typed.says(at, &MORE)
            || typed.says(at, &SMALL)
            || typed.pieces[at].is_mark(",;.+")
    });
    let says_more = (one.end..typed.pieces.len()).any(|at| typed.says(at, &MORE));
    let stands = typed.says(way + 1, &STANDS);
    let is_wall = *first == way + 1 + usize::from(stands);
    // The parts of a wall without a word more are known to other rules.
    let is_plain = *second == one.end + 1;
    if !only || !says_more || !is_wall || is_plain || !one.has_unit || !two.has_unit {
        return None;
    }
    let all = written(one.length + two.length, one);
    const CAUSE: &str = "a wall that was taped in stretches is one side with their sum";
    let named = typed.lower(way);
    let front = typed.attempt.beside.front;
    let by_street = ["front", "back", "left", "right"].contains(&named.as_str());
    if stands || by_street && front.is_none() {
        return Some(Answer::say(
            CAUSE,
            format!(
                "write the way that you walked along it, `north`, `east`, `south` or `west`, and after it `{all}`, if the second length goes on where the first one ends; if the wall turns between them, each is a side of its own"
            ),
        ));
    }
    Some(Answer::line(
        format!("{named} {all}"),
        format!(
            "{CAUSE}, here {} and {}; if it turns between them, each is a side of its own",
            one.text, two.text
        ),
    ))
}

/// The lengths of a line; two numbers with a dash between them are feet and inches.
fn stretches(typed: &Typed<'_>) -> Vec<(usize, Measure)> {
    let mut all = Vec::new();
    let mut at = 0;
    while at < typed.pieces.len() {
        let found = dashed(typed, at).or_else(|| straight::length_in(typed, &typed.pieces, at));
        match found {
            Some(one) => {
                let end = one.end;
                all.push((at, one));
                at = end;
            }
            None => at += 1,
        }
    }
    all
}

/// `38-6`: feet and inches.
fn dashed(typed: &Typed<'_>, at: usize) -> Option<Measure> {
    let dash = typed.piece(at + 1).filter(|dash| dash.is_mark("-–") && dash.touches)?;
    let inches = typed.piece(at + 2).filter(|inches| inches.is_number() && inches.touches)?;
    let fits = inches.text.parse::<u32>().is_ok_and(|inches| inches < 12) && !dash.text.is_empty();
    let text = format!("{}' {}\"", typed.piece(at)?.text, inches.text);
    let length: Length = text.parse().ok().filter(|_| fits)?;
    Some(Measure { end: at + 3, length, text, has_unit: true })
}

/// `bow window 7' x 16" in this wall`: a round bay of the walk.
fn rounded_window(typed: &Typed<'_>) -> Option<Answer> {
    let is_round = typed.says(0, &["round"]) && typed.says(1, &["bay"]);
    let is_bow =
        is_round || typed.says(0, &["bow", "bay"]) && typed.says(1, &["window", "windows"]);
    let found = lengths(&typed.pieces, 2);
    let [(_, one), (_, two)] = &found[..] else { return None };
    super::size_in(typed.line)?;
    let small =
        ["in", "on", "this", "that", "the", "wall", "side", "here", "middle", "of", "center"];
    let only = (two.end..typed.pieces.len())
        .all(|at| typed.says(at, &small) || typed.pieces[at].is_mark(".,"));
    let beside = &typed.attempt.beside;
    let is_wall = super::super::begins_as_wall(&beside.before);
    let progress = straight::progress(typed, &beside.last_walk);
    // `bay window 8' x 2'` alone is known.
    let is_more = is_round || two.end < typed.pieces.len();
    if !is_bow
        || !is_more
        || !only
        || !is_wall
        || !progress.is_open()
        || !one.has_unit
        || !two.has_unit
    {
        return None;
    }
    let wider = |one: &Measure, two: &Measure| one.length >= two.length;
    let (wide, out) = if wider(one, two) { (one, two) } else { (two, one) };
    // What is under a window and does not reach the floor is none.
    let high = out.length <= Length::from_nm(Length::FOOT.nm().div_euclid(2));
    let shape = if is_round || typed.says(0, &["bow"]) {
        "round"
    } else {
        "flat` and the width of its front, or `round"
    };
    let floor = if high {
        ""
    } else {
        "; if it has no floor of its own, as a window that hangs in the wall, put this line after a `#`"
    };
    Some(Answer::say(
        "a bay is a line of the walk, and divides the wall in which it stands",
        format!(
            "write `bay`, the way in which that wall is walked, then `{} out {} {shape}`, and the wall as two, one before the bay and one after it{floor}",
            wide.text, out.text
        ),
    ))
}

/// `closet bumped into garage 3x6`, `mechanical room in garage 5 x 7`, `storage loft in garage 8 x 22`: a part of the
/// garage, or of the house inside it.
fn room_in_the_garage(typed: &Typed<'_>) -> Option<Answer> {
    const PLAIN: [&str; 12] = [
        "mechanical",
        "furnace",
        "utility",
        "storage",
        "loft",
        "workbench",
        "boiler",
        "tool",
        "heater",
        "work",
        "equipment",
        "shelf",
    ];
    let garage = typed.find(1, &["garage"])?;
    let into = typed
        .find(1, &["in", "inside", "into"])
        .filter(|into| *into + 1 + usize::from(typed.says(into + 1, &["the"])) == garage)?;
    let size = super::size_in(typed.line)?.trim_end_matches([',', ' ']);
    let begin = typed.line.find(size)?;
    let after = typed.pieces.iter().position(|piece| piece.at >= begin)?;
    let words = (0..after).all(|at| typed.pieces[at].sort == Sort::Word);
    let ends = typed.line.trim_end().ends_with(size);
    let is_garage = super::kind_word(&typed.lower(0)) == Some("garage");
    if !words || !ends || after != garage + 1 || is_garage || typed.says(0, &["half", "part"]) {
        return None;
    }
    let juts = (1..into)
        .any(|at| typed.says(at, &["bumped", "built", "juts", "sticks", "pushed", "extends"]));
    let end = (1..into)
        .find(|&at| typed.says(at, &["bumped", "built", "juts", "sticks", "pushed", "extends"]))
        .unwrap_or(into);
    let is_plain = (0..end).any(|at| typed.says(at, &PLAIN));
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    if is_plain && !juts && !follows {
        return Some(Answer::line(
            format!("# {}", typed.line.trim()),
            "what stands in the garage without being finished and heated like the house is in the area of the garage, and its line is a comment",
        ));
    }
    let name = quoted(&super::levels::capitalized(&typed.text(0, end).to_lowercase()));
    let sides = match follows {
        true => String::new(),
        false => format!(
            ", and on the lines below it its four sides, two of {}",
            size.replacen(" x ", " and two of ", 1).replacen(
                'x',
                " and two of ",
                usize::from(!size.contains(" x "))
            )
        ),
    };
    let comment =
        if follows { "this line and its walls after a `#`" } else { "this line after a `#`" };
    Some(Answer::say(
        "a room of the house that stands in the garage is counted, and the garage goes round it; one that is part of the garage is in its area",
        format!(
            "if it is finished and heated like the house, and the walls of the house that you typed do not go round it, write `living {name}`, then where it starts, as `from` and the garage's name in `\"` and `corner` and a number{sides}, and let the walls of the garage go round it; if not, put {comment}"
        ),
    ))
}

/// `half of garage made into gym 11 x 22`: a part with walls of its own.
fn part_of_a_garage(typed: &Typed<'_>) -> Option<Answer> {
    let part = typed.says(0, &["half", "part", "some", "back", "rear"])
        && typed.says(1, &["of"])
        && typed.says(2 + usize::from(typed.says(2, &["the"])), &["garage", "carport", "porch"]);
    let into = typed.find(2, &["into", "to", "as", "now"])?;
    let size = super::size_in(typed.line)?.trim_end_matches([',', ' ']);
    let begin = typed.line.find(size)?;
    let after = typed.pieces.iter().position(|piece| piece.at >= begin)?;
    let first = into + 1 + usize::from(typed.says(into + 1, &["a", "an", "the"]));
    if !part || first >= after || typed.pieces.iter().any(|piece| is_text(Some(piece))) {
        return None;
    }
    let kind = typed.lower(2 + usize::from(typed.says(2, &["the"])));
    let name = quoted(&super::levels::capitalized(&typed.text(first, after).to_lowercase()));
    Some(Answer::say(
        format!(
            "what was made of a part of a {kind} is a space of its own, and the {kind} ends where it begins"
        ),
        format!(
            "if it is finished and heated like the house, write `living {name}`, then where it starts, and below it its own sides, and give the {kind} the sides that are left; if not, it stays in the {kind}: put this line after a `#`"
        ),
    ))
}

/// `S along alley 100 then W 80 to pin`: calls by the compass with what they run along.
fn calls_with_remarks(typed: &Typed<'_>) -> Option<Answer> {
    let then: Vec<usize> =
        (1..typed.pieces.len()).filter(|&at| typed.says(at, &["then", "thence"])).collect();
    let mut begins = vec![0];
    begins.extend(then.iter().map(|at| at + 1));
    let mut lines: Vec<String> = Vec::new();
    for (i, &begin) in begins.iter().enumerate() {
        let end = then.get(i).copied().unwrap_or(typed.pieces.len());
        let (way, _) = way_and_back(&typed.lower(begin))?;
        straight::compass(way)?;
        let found: Vec<(usize, Measure)> = lengths(&typed.pieces[..end], begin);
        let [(first, one)] = &found[..] else { return None };
        let words = (begin + 1..end).all(|at| {
            (*first..one.end).contains(&at)
                || typed.pieces[at].sort == Sort::Word && way_and_back(&typed.lower(at)).is_none()
                || typed.pieces[at].is_mark(",;")
        });
        if !words {
            return None;
        }
        let said: Vec<String> = [typed.text(begin + 1, *first), typed.text(one.end, end)]
            .iter()
            .map(|said| remark(said).trim_end_matches([',', ';', ' ']).to_owned())
            .filter(|said| !said.is_empty())
            .collect();
        let comment =
            if said.is_empty() { String::new() } else { format!("  # {}", said.join(", ")) };
        lines.push(format!("{way} {}{comment}", one.text));
    }
    let is_bare = then.is_empty() || lines.iter().all(|line| !line.contains('#'));
    (!is_bare).then(|| {
        Answer::line(
            lines.join("\n"),
            "each call is a line of its own; what it runs along goes after a `#`",
        )
    })
}
