//! Walls that begin with a hand or with the word of the one who walks: `rt 20'5"`, `R 24`, `ahead 30`, `fwd 6`.

use super::super::compass::{by_compass, way_and_back};
use super::super::pieces::Sort;
use super::{Answer, Typed, straight};

const CAUSE: &str = "a side begins with the way that it runs, `north`, `east`, `south` or `west`";
const SEEN: &str = "a side begins with the way that it runs: `back`, `right`, `front` or `left`, as seen from the street";

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    // Of a pad whose house has no line yet the walls beside it tell that it is one.
    let is_wall = |line: &str| {
        let first = line.split(' ').next().unwrap_or_default().to_lowercase();
        let words = ["up", "dn", "down", "rt", "lt", "r", "l", "fwd", "ahead", "right", "left"];
        words.contains(&first.as_str()) || super::super::begins_as_wall(line)
    };
    let beside = &typed.attempt.beside;
    if typed.attempt.space.is_none() && !is_wall(&beside.before) && !is_wall(&beside.after) {
        return None;
    }
    // After a walk that is back at its start stands no wall.
    let progress = straight::progress(typed, &typed.attempt.beside.last_walk);
    let is_back = progress.walls > 0 && !progress.is_open();
    if typed.attempt.beside.in_lot || is_back && typed.piece(1).is_some_and(|next| next.touches) {
        return None;
    }
    forward(typed).or_else(|| down(typed)).or_else(|| to_a_hand(typed))
}

/// `dn 28'4`: down on paper, in a pad whose house has no line yet.
fn down(typed: &Typed<'_>) -> Option<Answer> {
    let is_down = typed.says(0, &["dn", "dwn"]) && typed.attempt.space.is_none();
    let (length, comment) = length_and_rest(typed).filter(|_| is_down)?;
    Some(Answer::line(format!("south {length}{comment}"), CAUSE))
}

/// The length after the first word, and what follows it as a comment.
fn length_and_rest(typed: &Typed<'_>) -> Option<(String, String)> {
    let first = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":.=-–")));
    let number = typed.piece(first).filter(|number| number.is_number())?;
    let dashed = match typed.pieces.get(first + 1..first + 3) {
        Some([dash, inches]) if dash.is_mark("-–") && dash.touches && inches.touches => {
            let fits = inches.text.parse::<u8>().is_ok_and(|own| own < 12);
            fits.then(|| (format!("{}' {}\"", number.text, inches.text), first + 3))
        }
        _ => None,
    };
    let (length, end) = match dashed {
        Some(dashed) => dashed,
        None => super::length_from(&typed.pieces, first)?,
    };
    let rest = typed.rest(end).trim_matches([',', ';', '(', ')', ' ', '-', '–', '.']);
    let plain = typed.pieces.get(end..)?.iter().all(|piece| {
        piece.sort == Sort::Word && way_and_back(&piece.text).is_none()
            || piece.is_mark(",;()-–.'’")
    });
    let says = ["to", "start", "home", "end", "back", "recorded", "estimated", "by", "closing"];
    let is_said =
        !rest.is_empty() && typed.pieces[end..].iter().any(|piece| piece.is_word(&says[5..]));
    let comment = if rest.is_empty() { String::new() } else { format!("  # {rest}") };
    (plain && !is_said).then_some((length, comment))
}

/// `fwd 6`, `fwd 28'9" to start`: toward the street, as `forward` is; of one who walks it is no way on a plan.
fn forward(typed: &Typed<'_>) -> Option<Answer> {
    let toward_the_street = typed.says(0, &["fwd", "fd", "frwd", "forw"]);
    let as_walked = typed.says(0, &["ahead", "onward", "onwards"])
        || typed.says(0, &["straight"]) && typed.piece(1).is_some_and(super::Piece::is_number);
    if !toward_the_street && !as_walked {
        return None;
    }
    let (length, comment) = length_and_rest(typed)?;
    if toward_the_street && typed.attempt.beside.front.is_some() {
        return Some(Answer::line(format!("front {length}{comment}"), SEEN));
    }
    let word = typed.lower(0);
    Some(Answer::say(
        format!("`{word}` does not say which way the wall runs on the plan"),
        format!(
            "write the way that it runs, `north`, `east`, `south` or `west`, and then `{length}`: of the first wall any of the four will do, and each later turn to the right goes on from there, north, east, south, west"
        ),
    ))
}

/// Whether the walk says elsewhere up and down as on paper, so that right and left are east and west.
fn is_on_paper(typed: &Typed<'_>) -> bool {
    let beside = &typed.attempt.beside;
    let first = |line: &str| {
        let word: String = line.trim_start().chars().take_while(|c| c.is_alphabetic()).collect();
        word.to_lowercase()
    };
    let all = || {
        let around = [&*beside.before, &*beside.after].into_iter();
        beside.last_walk.iter().chain(beside.following.iter()).map(|line| &**line).chain(around)
    };
    let says = |words: &[&str]| all().any(|line| words.contains(&first(line).as_str()));
    let turns = ["ahead", "fwd", "forward", "straight", "turn", "onward"];
    says(&["up", "dn", "down", "dwn", "d", "u"]) && !says(&turns)
}

/// `rt 20'5"`, `R 24`: on paper, as seen from the street, or a turn of the one who walks.
fn to_a_hand(typed: &Typed<'_>) -> Option<Answer> {
    let hand = match typed.lower(0).as_str() {
        "r" | "rt" | "rgt" | "rght" => "right",
        "l" | "lt" | "lft" => "left",
        _ => return None,
    };
    let beside = &typed.attempt.beside;
    // `lt ? shrubs`: a wall that was not measured.
    if typed.piece(1).is_some_and(|mark| mark.is_mark("?")) && is_on_paper(typed) {
        let way = if hand == "right" { "east" } else { "west" };
        return super::answer(&format!("{way} {}", typed.rest(1)), typed.attempt);
    }
    let (length, comment) = length_and_rest(typed)?;
    let on_paper = if hand == "right" { "east" } else { "west" };
    if beside.front.is_some() {
        return Some(Answer::line(format!("{hand} {length}{comment}"), SEEN));
    }
    if is_on_paper(typed) {
        return Some(Answer::line(
            format!("{on_paper} {length}{comment}"),
            format!("{CAUSE}: with north at the top of the paper, {hand} is {on_paper}"),
        ));
    }
    let before = beside.before.split(' ').next().and_then(way_and_back);
    let before = before.and_then(|(way, _)| straight::compass(by_compass(way, None)));
    let is_begun = super::super::begins_as_wall(&beside.before);
    let Some(before) = before.filter(|_| is_begun) else {
        return Some(Answer::say(
            format!("`{}` does not say which way the wall runs on the plan", typed.text(0, 1)),
            format!(
                "if it is {hand} as on paper, with north at its top, write `{on_paper} {length}`; if it is {hand} as seen from the street, write `{hand} {length}` here, and `front south` above the first level; if it is a turn to the {hand}, write the way that the wall then runs, `north`, `east`, `south` or `west`, and then `{length}`"
            ),
        ));
    };
    let turned = if hand == "right" { before.right() } else { before.left() };
    let paper = straight::compass(on_paper)?;
    let line =
        |way: crate::geometry::compass::Direction| format!("{} {length}{comment}", way.word());
    // After a wall to the east a wall to the east is none of its own.
    if paper == turned || paper.axis() == before.axis() {
        return Some(Answer::line(
            line(turned),
            format!(
                "{CAUSE}: after a wall to the {} a turn to the {hand} goes {}",
                before.word(),
                turned.word()
            ),
        ));
    }
    Some(Answer::Lines(
        vec![line(turned), line(paper)],
        format!(
            "{CAUSE}: after a wall to the {} a turn to the {hand} goes {}, and {hand} on paper is {on_paper}",
            before.word(),
            turned.word()
        ),
    ))
}
