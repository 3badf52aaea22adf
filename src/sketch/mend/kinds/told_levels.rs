//! Levels that are told with what they are: `basement unfinished, full`, `second floor sits back 4' from front`.

use super::super::compass::{by_compass, way_and_back};
use super::super::pieces::Sort;
use super::measure::lengths;
use super::{Answer, Rule, Typed, first_of, is_text, quoted, straight};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[basement, set_back_above, attic_or_part];
    first_of(rules, typed)
}

/// `basement unfinished, full`, `full basement, unfinished`, `cellar: half, unfinished`: a level in the ground, whose space
/// says that it has no finish.
fn basement(typed: &Typed<'_>) -> Option<Answer> {
    const SAYS: [&str; 22] = [
        "unfinished",
        "full",
        "half",
        "partial",
        "walkout",
        "walk-out",
        "daylight",
        "concrete",
        "dirt",
        "block",
        "stone",
        "poured",
        "dry",
        "open",
        "unheated",
        "heated",
        "level",
        "the",
        "floor",
        "walls",
        "and",
        "with",
    ];
    let at = typed.find(0, &["basement", "bsmt", "cellar"])?;
    let only = (0..typed.pieces.len())
        .all(|one| one == at || typed.says(one, &SAYS) || typed.pieces[one].is_mark(",;:.-–()"));
    let beside = &typed.attempt.beside;
    let has_mark = typed.line.contains([',', ';', ':', '(']);
    let extent = typed.find(0, &["full", "half", "partial"]);
    let unfinished = typed.find(0, &["unfinished"]).is_some();
    // `basement unfinished`, `unfinished basement` and `basement full` are known.
    let is_more = has_mark || unfinished && extent.is_some();
    let follows_space = super::super::begins_as_named_space(&beside.after);
    let follows_wall = super::super::begins_as_wall(&beside.after);
    let is_heading = typed.attempt.space.is_some() && (follows_space || follows_wall);
    if !only || !is_more || !(unfinished || extent.is_some()) || !is_heading {
        return None;
    }
    let said: Vec<String> = (0..typed.pieces.len())
        .filter(|&one| one != at && !typed.says(one, &["the", "level", "floor", "with"]))
        .filter(|&one| typed.pieces[one].sort == Sort::Word && !typed.says(one, &["and"]))
        .map(|one| typed.lower(one))
        .collect();
    let name = if typed.says(at, &["cellar"]) { "Cellar" } else { "Basement" };
    let comment = format!("  # {}", said.join(", "));
    let level = format!("level \"{name}\" below grade");
    const LEVEL: &str = "a level is `level` and its name; one in the ground is `below grade`";
    if !unfinished {
        return Some(Answer::line(format!("{level}{comment}"), LEVEL));
    }
    if follows_wall {
        return Some(Answer::line(
            format!("{level}{comment}\nunfinished \"{name}\""),
            format!("{LEVEL}, and what has no finish is a space `unfinished` on it"),
        ));
    }
    Some(Answer::line(
        format!("{level}{comment}"),
        match beside.after.split(' ').next() {
            Some("living") => format!(
                "{LEVEL}; what has no finish is a space `unfinished`: write that word instead of `living` on the line below"
            ),
            _ => LEVEL.to_owned(),
        },
    ))
}

/// `second floor sits back 4' from front`, `upper floor is set back 4' from the street`: where its space starts.
fn set_back_above(typed: &Typed<'_>) -> Option<Answer> {
    const VERBS: [&str; 14] = [
        "sits", "set", "sets", "stands", "is", "steps", "stepped", "starts", "begins", "pushed",
        "recessed", "held", "sitting", "stands",
    ];
    const AFTER: [&str; 13] = [
        "from", "the", "of", "wall", "house", "below", "first", "floor", "side", "line", "it",
        "main", "level",
    ];
    let verb = typed.find(1, &VERBS)?;
    let back = typed
        .find(verb, &["back", "in"])
        .filter(|at| *at <= verb + 2 || is_length_before(typed, *at))?;
    let found = lengths(&typed.pieces, verb);
    let [(_, one)] = &found[..] else { return None };
    let is_level = super::names_a_level(typed.text(0, verb));
    let from = (one.end..typed.pieces.len()).find(|&at| {
        way_and_back(&typed.lower(at)).is_some() && at != back
            || typed.says(at, &["street", "road"])
    });
    let only = (one.end..typed.pieces.len()).all(|at| {
        Some(at) == from || at == back || typed.says(at, &AFTER) || typed.pieces[at].is_mark(",.")
    });
    let house = typed.attempt.house.as_ref();
    let has_text = typed.pieces.iter().any(|piece| is_text(Some(piece)));
    if !is_level || !only || !one.has_unit || has_text || super::size_in(typed.line).is_some() {
        return None;
    }
    let front = typed.attempt.beside.front;
    let side = match from {
        Some(at) if !typed.says(at, &["street", "road"]) => {
            by_compass(way_and_back(&typed.lower(at))?.0, front)
        }
        _ => by_compass("front", front),
    };
    let way = straight::compass(side).map(|side| side.opposite().word());
    let start = match way {
        Some(way) => format!("`start {way} {}`", one.text),
        None => format!("`start`, the way from the {side} into the house and `{}`", one.text),
    };
    let example = way.map_or_else(String::new, |way| {
        format!(", as `living \"Rooms\" start {way} {}`", one.text)
    });
    let beside = &typed.attempt.beside;
    let name = super::levels::capitalized(&typed.text(0, verb).to_lowercase());
    let of = house.map_or_else(|| "the floor below".to_owned(), |house| format!("`{house}`"));
    let is_on_it = beside.before.starts_with("level ");
    let here = match is_on_it {
        true => "put this line after a `#`".to_owned(),
        false => format!("write `level {}` on this line", quoted(&name)),
    };
    Some(Answer::say(
        "how far a floor stands back is told by where its space starts, and its walls are those of that floor",
        format!(
            "{here}, and {start} on the line of its space{example}, if its walk begins at that side, above where the walk of {of} begins; if the walk of the floor began at another corner, it starts that far from there each way"
        ),
    ))
}

/// `upstairs overhangs 2' front`: how far a floor stands out over the one below.
fn stands_out_above(typed: &Typed<'_>) -> Option<Answer> {
    const OUT: [&str; 6] =
        ["overhangs", "overhang", "cantilevers", "cantilevered", "juts", "projects"];
    const SMALL: [&str; 14] = [
        "out", "over", "at", "on", "the", "in", "of", "side", "by", "first", "floor", "below",
        "to", "wall",
    ];
    let verb = typed.find(1, &OUT)?;
    let found = lengths(&typed.pieces, verb);
    let [(first, one)] = &found[..] else { return None };
    let side = (verb + 1..typed.pieces.len()).find_map(|at| way_and_back(&typed.lower(at)))?.0;
    let only = (verb + 1..typed.pieces.len()).all(|at| {
        (*first..one.end).contains(&at)
            || typed.says(at, &SMALL)
            || way_and_back(&typed.lower(at)).is_some()
            || typed.pieces[at].is_mark(",.")
    });
    // `Floor 2 (inside)`
    let open = (1..verb).find(|&at| typed.pieces[at].is_mark("("));
    let name = typed.text(0, open.unwrap_or(verb));
    let aside = open.map_or("", |open| typed.text(open, verb));
    let face = ["inside", "interior"].iter().any(|face| aside.to_lowercase().contains(face));
    let is_numbered = typed.says(0, &["floor", "level", "story", "storey"]);
    let is_level = super::names_a_level(name) || is_numbered;
    let has_text = typed.pieces.iter().any(|piece| is_text(Some(piece)));
    if !is_level || !only || !one.has_unit || has_text || open.is_some() && !face {
        return None;
    }
    let way = straight::compass(by_compass(side, typed.attempt.beside.front)).map(|way| way.word());
    let start = match way {
        Some(way) => format!("`start {way} {}`", one.text),
        None => format!("`start`, the way out to the {side} and `{}`", one.text),
    };
    let here = match typed.attempt.beside.before.starts_with("level ") {
        true => "put this line after a `#`".to_owned(),
        false => {
            let name = super::levels::capitalized(&name.to_lowercase());
            format!("write `level {}` on this line", quoted(&name))
        }
    };
    let here = match face {
        true => format!("{here}, `measured to inside` after the name of each of its spaces"),
        false => here,
    };
    Some(Answer::say(
        "how far a floor stands out is told by where its space starts, and by its own walls",
        format!(
            "{here}, and {start} on the line of its space if its walk begins at that side, above where the walk of the floor below begins; its walls are as long as they are up there, {} longer where they run to that side",
            one.text
        ),
    ))
}

/// `walk up attic w/ floor 7' at ridge`, `basement 1/2 under house`: the level and a remark.
fn attic_or_part(typed: &Typed<'_>) -> Option<Answer> {
    if let Some(answer) = stands_out_above(typed).or_else(|| area_of_an_attic(typed)) {
        return Some(answer);
    }
    let at = typed.find(0, &["attic", "basement", "cellar"]).filter(|at| *at <= 2)?;
    let lead = (0..at).all(|at| typed.says(at, &["walk", "walk-up", "up", "the", "stand-up"]));
    let beside = &typed.attempt.beside;
    let follows = super::super::begins_as_named_space(&beside.after);
    let basement = !typed.says(at, &["attic"]);
    let under = typed.find(at, &["under"]).is_some() && typed.find(at, &["house"]).is_some();
    let floored = typed.says(at + 1, &["w", "with"])
        && typed.find(at, &["floor", "floored", "flooring"]).is_some();
    let is_more = if basement { under } else { floored };
    let has_size = super::size_in(typed.line).is_some()
        || super::measure::area_from(&typed.pieces, 0).is_some();
    let has_text = typed.pieces.iter().any(|piece| is_text(Some(piece)));
    if !lead || !follows || !is_more || has_size || has_text || typed.attempt.space.is_none() {
        return None;
    }
    let name = super::levels::capitalized(&typed.lower(at));
    let below = if basement { " below grade" } else { "" };
    let said = super::plainly(&format!("{} {}", typed.text(0, at), typed.rest(at + 1)));
    Some(Answer::line(
        format!("level \"{name}\"{below}  # {}", said.trim()),
        "a level is `level` and its name; what is high or finished enough of it to count is said by its spaces and their walls",
    ))
}

/// `4' back`: the length before the word.
fn is_length_before(typed: &Typed<'_>, at: usize) -> bool {
    lengths(&typed.pieces, 0).iter().any(|(_, one)| one.end == at)
}

/// `attic over garage 400 sf, 5' ceilings`: an area that no walls give.
fn area_of_an_attic(typed: &Typed<'_>) -> Option<Answer> {
    const SAYS: [&str; 20] = [
        "attic",
        "bonus",
        "over",
        "the",
        "garage",
        "house",
        "above",
        "finished",
        "unfinished",
        "sf",
        "sq",
        "ft",
        "ceilings",
        "ceiling",
        "high",
        "with",
        "w",
        "and",
        "floored",
        "about",
    ];
    let at = typed.find(0, &["attic"]).filter(|at| *at <= 1)?;
    let (first, end, area) = super::measure::area_from(&typed.pieces, at + 1)?;
    let heights = lengths(&typed.pieces, end);
    let in_height = |at: usize| heights.iter().any(|(first, one)| (*first..one.end).contains(&at));
    let only = (0..typed.pieces.len()).all(|at| {
        (first..end).contains(&at)
            || in_height(at)
            || typed.says(at, &SAYS)
            || typed.pieces[at].is_mark(",;.:-")
    });
    let kind = match typed.find(0, &["unfinished"]) {
        Some(_) => "unfinished",
        None => "living",
    };
    let low = match &heights[..] {
        [] => "",
        _ => "; a part with a ceiling lower than 5' is `low` with its own walls",
    };
    (only && super::size_in(typed.line).is_none() && !typed.line.contains('"')).then(|| {
        Answer::say(
            "an attic is a level, and its area follows from its walls",
            format!(
                "write `level \"Attic\"`, on the next line `{kind} \"Attic\" recorded {area}`, and its sides on the lines below{low}; if you have not measured it, put this line after a `#`"
            ),
        )
    })
}
