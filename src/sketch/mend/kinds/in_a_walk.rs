//! Lines between the walls of a walk that name a jog, or the part of the house that a wall belongs to.

use super::measure::{Measure, length_at};
use super::walls::is_way;
use super::whereabouts::{self, direction};
use super::{Answer, Rule, Typed, first_of, kind_word, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[wall_of_a_jog, wall_of_a_space, place_below_its_line];
    first_of(rules, typed)
}

/// `jog north by closing (fence)`, `jog north 2-1`: one wall after a word for what it is.
fn wall_of_a_jog(typed: &Typed<'_>) -> Option<Answer> {
    const JOG: [&str; 10] =
        ["jog", "jogs", "step", "steps", "return", "offset", "notch", "stub", "recess", "setback"];
    let at = 1 + usize::from(typed.says(1, &["out", "in", "back"]) && typed.pieces.len() > 3);
    let is_street = direction(typed, at).is_some_and(|way| way.is_some());
    let runs = is_way(typed, at) || is_street;
    let by_closing = typed.says(at + 1, &["by"]) && typed.says(at + 2, &["closing"]);
    // Other lengths are known to other rules.
    let is_dashed = typed.piece(at + 2).is_some_and(|dash| dash.is_mark("-–"));
    let number = typed.piece(at + 1).is_some_and(super::super::pieces::Piece::is_number)
        && (is_dashed || typed.line.contains('('));
    let others = (at + 1..typed.pieces.len()).any(|at| direction(typed, at).is_some());
    if !typed.says(0, &JOG) || !runs || !(by_closing || number) || others {
        return None;
    }
    let open = (at + 1..typed.pieces.len()).find(|&at| typed.pieces[at].is_mark("(,;"));
    let end = open.unwrap_or(typed.pieces.len());
    let said = super::plainly(typed.rest(end));
    let said = said.trim_matches(['(', ')', ',', ';', ' ']);
    let first = typed.lower(0);
    let comment = if said.is_empty() { first } else { format!("{first}, {said}") };
    if super::measures(said) {
        return None;
    }
    Some(Answer::line(
        format!("{}  # {comment}", typed.text(at, end)),
        "a wall begins with the way that it runs; what it is goes into a comment",
    ))
}

/// `garage front 21-10`, `garage front 20'` between walls: a wall of the walk, at the front of the garage.
fn wall_of_a_space(typed: &Typed<'_>) -> Option<Answer> {
    let beside = &typed.attempt.beside;
    let is_side = super::super::begins_as_wall;
    kind_word(&typed.lower(0))?;
    let side = direction(typed, 1)?;
    let at = 2 + usize::from(typed.says(2, &["wall", "side"]));
    let at = at + usize::from(typed.piece(at).is_some_and(|mark| mark.is_mark(":,-–=")));
    let length = one_length(typed, at)?;
    if !is_side(&beside.before) || !is_side(&beside.after) || length.end != typed.pieces.len() {
        return None;
    }
    let [one, two] = match side {
        Some(side) => [side.left().word(), side.right().word()],
        None => return None,
    };
    let text = length.text;
    let note = quoted(typed.text(0, 2));
    Some(Answer::say(
        "between the walls of a walk stands a wall, and this line says on which side of a space it is, and not which way it was walked",
        format!(
            "write `{one} {text} note {note}` or `{two} {text} note {note}`, as it was walked; a {} of its own follows after the last wall of this walk, with its own four walls",
            typed.lower(0)
        ),
    ))
}

/// A length at the end of a line: `21-10` is 21 feet 10 inches.
fn one_length(typed: &Typed<'_>, at: usize) -> Option<Measure> {
    if let [feet, dash, inches] = typed.pieces.get(at..)?
        && feet.is_number()
        && dash.is_mark("-–")
        && inches.text.parse::<u32>().is_ok_and(|inches| inches < 12)
    {
        let text = format!("{}' {}\"", feet.text, inches.text);
        let length = text.parse().ok()?;
        return Some(Measure { end: at + 3, length, text, has_unit: true });
    }
    length_at(&typed.pieces, at)
}

/// `14' from the left, at the front wall` right below the line of a space: where that space stands.
fn place_below_its_line(typed: &Typed<'_>) -> Option<Answer> {
    let before = &typed.attempt.beside.before;
    let pieces = super::cut(before);
    let kind = kind_word(&pieces.first()?.text.to_lowercase())?;
    let is_named = pieces.get(1).is_some_and(|name| super::is_text(Some(name)));
    let is_placed = pieces.iter().any(|piece| piece.is_word(&["start", "from", "detached"]));
    let from = typed.piece(0)?.is_number() && typed.find(1, &["from", "off"]).is_some();
    let leads = ["on", "at", "in", "behind", "beside", "against", "along"];
    if !is_named || is_placed || kind == "living" || !(from || typed.says(0, &leads)) {
        return None;
    }
    let line = format!("porch \"P\", {}", typed.line.trim());
    let words = Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt };
    let lies_inside = matches!(kind, "open" | "stair" | "low");
    let place = whereabouts::place(&words, 3, lies_inside);
    let is_whole = !place.whereabouts.parts.is_empty() && place.loose.is_empty();
    is_whole.then(|| {
        let body = before.split('#').next().unwrap_or_default().trim_end();
        Answer::say(
            "where a space stands is said on its own line, before its walls",
            format!(
                "leave this line out and write the line above as `{body}, {}`",
                typed.line.trim()
            ),
        )
    })
}
