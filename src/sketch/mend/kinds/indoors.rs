//! Rooms inside the walls of a house, high ceilings and roofed walks: what is in the area already, what is open to below,
//! and what is built on.

use super::super::pieces::Sort;
use super::measure::lengths;
use super::{Answer, Rule, Typed, first_of, is_text, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] =
        &[hung, high_ceiling, high_room, room_or_addition, roofed, converted, turned_into];
    first_of(rules, typed)
}

/// Whether a space is described whose size is on the line and not on the lines below it.
fn is_sized_here(typed: &Typed<'_>) -> bool {
    super::size_in(typed.line).is_some()
        && !super::super::begins_as_side(&typed.attempt.beside.after)
        && !typed.pieces.iter().any(|piece| is_text(Some(piece)))
}

/// The sides of a size in either way: `12` by `14`.
fn sides(typed: &Typed<'_>, head: &str) -> Option<Vec<String>> {
    let sizes = lengths(&typed.pieces, 0);
    let (at, one) = sizes.iter().find(|(_, one)| {
        typed.says(one.end, &["x", "by"]) || typed.piece(one.end).is_some_and(|by| by.is_mark("×*"))
    })?;
    let (_, two) = sizes.iter().find(|(next, _)| next > at && *next == one.end + 1)?;
    let line =
        |one: &str, two: &str| format!("{head}\nnorth {one}\neast {two}\nsouth {one}\nwest {two}");
    Some(vec![line(&one.text, &two.text), line(&two.text, &one.text)])
}

/// `soffit 6' 8" over kitchen 2 x 10`, `ductwork 6' 6" high in hall`, `dropped ceiling in the bath`: what hangs from a
/// ceiling is no space.
fn hung(typed: &Typed<'_>) -> Option<Answer> {
    const HUNG: [&str; 14] = [
        "soffit",
        "soffits",
        "duct",
        "ducts",
        "ductwork",
        "bulkhead",
        "bulkheads",
        "furrdown",
        "beam",
        "beams",
        "girder",
        "headers",
        "fur-down",
        "furr-down",
    ];
    const BEFORE: [&str; 10] =
        ["low", "lower", "hvac", "ac", "heating", "exposed", "main", "kitchen", "basement", "the"];
    let first = (0..typed.pieces.len()).find(|&at| !typed.says(at, &BEFORE))?;
    let is_furred =
        typed.says(first, &["furr", "fur", "furred"]) && typed.says(first + 1, &["down", "downs"]);
    let is_dropped = typed.says(first, &["dropped", "drop", "suspended", "lowered"])
        && typed.says(first + 1, &["ceiling", "ceilings", "clg", "soffit", "soffits"]);
    let is_hung = typed.says(first, &HUNG) || is_furred || is_dropped;
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    if !is_hung || follows || typed.pieces.iter().any(|piece| is_text(Some(piece))) {
        return None;
    }
    let is_low = is_dropped && lengths(&typed.pieces, first).iter().any(|(_, one)| one.has_unit);
    if is_low {
        return Some(Answer::say(
            "a ceiling takes something from the floor only where it is lower than the rule asks for",
            "put a `#` before this line, unless the whole ceiling of a part is too low to count: that part is a space of its own, as `low \"Low ceiling\" under 7'`, with `start` and where it starts, and below it its sides",
        ));
    }
    Some(Answer::line(
        format!("# {}", typed.line),
        "what hangs from a ceiling, a soffit, a duct or a beam, takes nothing from the floor below it",
    ))
}

/// `cathedral ceiling 14 x 16`, `vaulted ceilings`: on the highest floor it takes nothing from the area; over a lower
/// room it leaves the floor above open.
fn high_ceiling(typed: &Typed<'_>) -> Option<Answer> {
    const HIGH: [&str; 7] =
        ["cathedral", "vaulted", "vault", "high", "tray", "two-story", "coffered"];
    let at = typed.find(0, &["ceiling", "ceilings"])?;
    let is_high = at > 0 && (0..at).any(|at| typed.says(at, &HIGH));
    (is_high && is_sized_here(typed) && !typed.attempt.beside.has_level_above).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "a high ceiling takes nothing from the floor below it; only where a floor above is left out for it does that floor have a space `open`",
        )
    })
}

/// `vaulted LR 8x10, nothing above`, `two-story great room 14 x 16` on an upper floor: that floor is open there.
fn high_room(typed: &Typed<'_>) -> Option<Answer> {
    const HIGH: [&str; 6] =
        ["cathedral", "vaulted", "vault", "two-story", "double-height", "2-story"];
    let says_above = typed.find(0, &["nothing", "no"]).is_some_and(|at| {
        typed.says(at + 1, &["above"])
            || typed.says(at + 1, &["floor"]) && typed.says(at + 2, &["above"])
    });
    // `2 story entry 8 x 10`: as high as two floors, and no floor of its own.
    const ROOMS_BELOW: [&str; 8] =
        ["entry", "foyer", "great", "living", "family", "hall", "atrium", "entryway"];
    let tall = usize::from(typed.says(1, &["story", "storey", "stories", "floor"]));
    let is_tall = tall > 0
        && (typed.says(0, &["two", "double"]) || typed.piece(0).is_some_and(|two| two.text == "2"))
        && typed.says(2, &ROOMS_BELOW);
    let is_high = typed.says(0, &HIGH) || is_tall;
    let begins =
        typed.says(0, &["vaulted", "cathedral"]) && typed.says(1, &["ceiling", "ceilings"]);
    let size = super::size_in(typed.line).filter(|_| (is_high || says_above) && !begins)?;
    let house = typed.attempt.house.as_ref()?;
    if !is_sized_here(typed) || !typed.attempt.beside.has_level_above {
        return None;
    }
    let begin = typed.pieces.iter().position(|piece| Some(piece.at) >= typed.line.find(size))?;
    let first = if is_tall { 2 } else { usize::from(is_high) };
    let name = super::levels::capitalized(
        super::plainly(typed.text(first, begin)).trim_end_matches([':', ',', ' ']),
    );
    let name = if name.is_empty() { "Open".to_owned() } else { name };
    let sides = sides(typed, "")?;
    let [one, ..] = &sides[..] else { return None };
    let walls: Vec<String> = one.trim().lines().map(|side| format!("`{side}`")).collect();
    Some(Answer::say(
        "where a room below reaches through this floor, the floor is `open` there, and that is deducted",
        format!(
            "write `open {}`, then `start` and how far east and north of corner 1 of `{house}` it begins, and on the lines below it {}, or with the two lengths exchanged; if this floor is not there at all, and its walls go round that room, leave the line out",
            quoted(&name),
            walls.join(", ")
        ),
    ))
}

/// Rooms that are part of nearly every house, with an outline of their own only if they were built on.
const ROOMS: [&str; 22] = [
    "kitchen",
    "kitchenette",
    "bedroom",
    "bedrooms",
    "br",
    "bed",
    "hall",
    "living",
    "dining",
    "family",
    "great",
    "breakfast",
    "nook",
    "den",
    "study",
    "office",
    "foyer",
    "entry",
    "bath",
    "bathroom",
    "master",
    "primary",
];

/// `kitchen 10 x 12`, `living room 12 x 14`, `bedroom 2 11x12`: a room in the area already, unless it was built on.
fn room_or_addition(typed: &Typed<'_>) -> Option<Answer> {
    let house = typed.attempt.house.as_ref()?;
    let size = super::size_in(typed.line)?;
    let begin = typed.line.find(size)?;
    let end = typed.pieces.iter().position(|piece| piece.at >= begin)?;
    let is_name = |at: usize| {
        typed.says(at, &ROOMS)
            || typed.says(
                at,
                &[
                    "room", "area", "suite", "ensuite", "the", "full", "half", "guest", "main",
                    "and",
                ],
            )
            || at > 0 && at + 1 == end && is_text(typed.piece(at))
            || typed
                .piece(at)
                .is_some_and(|number| at + 1 == end && number.is_number() && number.text.len() == 1)
    };
    let named = (0..end).filter(|&at| typed.pieces[at].sort == Sort::Word).count() > 0
        && (0..end).all(|at| is_name(at) || typed.pieces[at].is_mark(":-–,"));
    let is_room = (0..end).any(|at| typed.says(at, &ROOMS));
    let is_format = typed.says(0, &["living"]) && end == 1;
    let after = typed.line.get(begin + size.len()..)?.trim();
    // `in the back left corner` is where it lies inside.
    let land = ["yard", "backyard", "lot", "garden", "field"];
    let is_away = typed.find(end, &land).is_some();
    let lies_inside = after.starts_with("in ") && !after.starts_with("in addition") && !is_away
        || size.ends_with(" in") && after.starts_with("the ");
    let ends = after.is_empty() || lies_inside;
    let has_name = is_text(typed.piece(end.checked_sub(1)?));
    let is_format = is_format || has_name && end == 2 && typed.says(0, &["living"]);
    let sides_follow = super::super::begins_as_side(&typed.attempt.beside.after);
    if !(named && is_room && ends && !is_format && !sides_follow) {
        return None;
    }
    let name = match has_name {
        true => typed.name(end - 1, end),
        false => super::levels::capitalized(
            super::plainly(typed.text(0, end)).trim_end_matches([':', '-', '–', ',', ' ']),
        ),
    };
    let mut offered = vec![format!("# {}", typed.line)];
    if lies_inside {
        return Some(Answer::Lines(
            offered,
            format!(
                "a room inside the walls is in the area of `{house}` already, and its line is a comment"
            ),
        ));
    }
    // Upstairs a foyer has no floor, mostly.
    let is_foyer = (0..end).any(|at| typed.says(at, &["foyer", "entry"]));
    if is_foyer && typed.attempt.beside.has_level_above {
        let sides = sides(typed, "")?;
        let walls: Vec<String> =
            sides.first()?.trim().lines().map(|side| format!("`{side}`")).collect();
        return Some(Answer::say(
            "a room inside the walls is in the area already; but an upper floor that is open to the room below is not there",
            format!(
                "if it is open to below, write `open {}`, then `start` and how far east and north of corner 1 of `{house}` it begins, and on the lines below it {}, or with the two lengths exchanged; if it has a floor here, put a `#` before this line",
                quoted(&name),
                walls.join(", ")
            ),
        ));
    }
    offered.extend(sides(typed, &format!("living {}", quoted(&name)))?);
    Some(Answer::Lines(
        offered,
        format!(
            "a room inside the walls is in the area of `{house}` already, and its line is a comment; only one that was built on beyond the walls that you typed has sides of its own"
        ),
    ))
}

/// `porte cochere 12 x 20`, `covered walkway 4 x 20`: what a roof alone covers.
fn roofed(typed: &Typed<'_>) -> Option<Answer> {
    let (kind, end) = match typed.lower(0).as_str() {
        "porte" if typed.says(1, &["cochere", "cochère"]) => ("carport", 2),
        "porte-cochere" | "porte-cochère" => ("carport", 1),
        "walkway" | "breezewalk" => ("porch", 1),
        "covered" | "roofed" if typed.says(1, &["walkway", "walk", "path", "entry", "stoop"]) => {
            ("porch", 2)
        }
        "pergola" | "gazebo" | "arbor" | "ramada" if super::size_in(typed.line).is_none() => {
            ("patio", 1)
        }
        "ramp" if super::size_in(typed.line).is_some() => {
            return Some(Answer::line(
                format!("# {}", typed.line),
                "a ramp is in no area; if the record lists it, it is a `deck` or a `patio` with its place and its sides",
            ));
        }
        _ => return None,
    };
    let is_open = typed.says(0, &["walkway"]);
    if is_text(typed.piece(end)) {
        let kinds: &[&str] = if is_open { &["patio", "porch"] } else { &[kind] };
        let lines = kinds.iter().map(|kind| format!("{kind} {}", typed.rest(end))).collect();
        return Some(Answer::Lines(
            lines,
            "a space begins with its kind, then its name".to_owned(),
        ));
    }
    let name = quoted(&super::levels::capitalized(&typed.text(0, end).to_lowercase()));
    let kinds: &[&str] = if is_open { &["patio", "porch"] } else { &[kind] };
    (end < typed.pieces.len()).then(|| {
        let lines = kinds
            .iter()
            .map(|kind| format!("{kind} {name} {}", typed.rest(end)).trim_end().to_owned())
            .collect();
        Answer::Lines(lines, "a space begins with its kind, then its name".to_owned())
    })
}

/// What decides whether a garage or a porch that was closed in counts.
pub(super) fn lived_in_or(kind: &str) -> String {
    format!(
        "a {kind} that is finished and heated like the house is `living`; one that is not stays a `{kind}`"
    )
}

/// What a garage or a porch may be turned into, and the small words before it.
const TURNED_INTO: [&str; 25] = [
    "in",
    "to",
    "into",
    "as",
    "a",
    "an",
    "the",
    "living",
    "space",
    "room",
    "bedroom",
    "den",
    "family",
    "area",
    "office",
    "studio",
    "gym",
    "rec",
    "playroom",
    "game",
    "master",
    "bonus",
    "sunroom",
    "suite",
    "apartment",
];

/// `converted garage "Garage"`, `garage conversion 20 x 22`, `garage "Garage" converted to living`: whether it counts
/// follows from how it is finished.
fn converted(typed: &Typed<'_>) -> Option<Answer> {
    const TURNED: [&str; 8] = [
        "converted",
        "conversion",
        "enclosed",
        "finished",
        "turned",
        "made",
        "remodeled",
        "closed",
    ];
    let at = typed.find(0, &["garage", "carport", "porch"]).filter(|at| *at <= 1)?;
    let first =
        typed.says(0, &["enclosed", "glassed-in", "glassed", "glazed", "heated"]).then_some(0);
    // `carport enclosed into den`, `garage made into an office`
    let into = typed.find(at + 1, &TURNED).filter(|turned| {
        let next = turned + 1 + usize::from(typed.says(turned + 1, &["in"]));
        typed.says(next, &["into", "to", "as"])
    });
    let turned = typed.find(0, &TURNED[..2]).or(into).or(first.filter(|_| at == 1))?;
    let is_named = is_text(typed.piece(at + 1));
    let mut stop = turned + 1;
    while typed.says(stop, &TURNED_INTO) {
        stop += 1;
    }
    // `carport converted to garage`: what it is now.
    let now = (turned + 1..typed.pieces.len())
        .take_while(|&at| {
            typed.says(
                at,
                &[
                    "to", "into", "a", "an", "as", "storage", "garage", "carport", "workshop",
                    "shop", "patio", "deck",
                ],
            )
        })
        .find_map(|at| match typed.lower(at).as_str() {
            "workshop" | "shop" => Some((at, "storage")),
            word => super::kind_word(word).map(|kind| (at, kind)),
        });
    if let Some((now, kind)) = now.filter(|_| !is_named && !typed.line.contains('#')) {
        let rest = typed.rest(now + 1).trim_start_matches([',', ' ']);
        let said = super::remark(typed.text(0, now + 1));
        let name = quoted(&super::levels::capitalized(&typed.lower(now)));
        return Some(Answer::line(
            format!("{kind} {name} {rest}").trim_end().to_owned() + &format!("  # {said}"),
            "a space has the kind of what it is now",
        ));
    }
    let is_near = turned <= at + 1 || is_named && turned == at + 2;
    if !is_near {
        return None;
    }
    let kind = super::kind_word(&typed.lower(at))?;
    let name = match is_named {
        true => typed.text(at + 1, at + 2).to_owned(),
        // `enclosed porch`
        false if first == Some(turned) && at == 1 => {
            quoted(&super::levels::capitalized(typed.text(0, 2)))
        }
        false => quoted(&format!("Former {kind}")),
    };
    let after = (at + 1 + usize::from(is_named)).max(if turned > at { stop } else { 0 });
    let rest = typed.rest(after);
    let said = into.map(|turned| typed.text(turned, stop)).filter(|_| !typed.line.contains('#'));
    let said = said.map_or_else(String::new, |said| format!("  # {}", super::remark(said)));
    let line = |kind: &str| format!("{}{said}", format!("{kind} {name} {rest}").trim_end());
    Some(Answer::Lines(vec![line("living"), line(kind)], lived_in_or(kind)))
}

/// `garage "Garage" (converted to den) start north 30'`, `porch "Back" now heated`: a remark after the name that asks the
/// same.
fn turned_into(typed: &Typed<'_>) -> Option<Answer> {
    const TURNED: [&str; 6] =
        ["converted", "conversion", "now", "heated", "conditioned", "finished"];
    const PLACES: [&str; 8] =
        ["start", "from", "within", "recorded", "measured", "veneer", "detached", "counted"];
    const NOT: [&str; 5] = ["not", "un", "no", "never", "partly"];
    if !typed.says(0, &["garage", "carport", "porch", "breezeway"]) {
        return None;
    }
    // `garage (now den) 20' x 22'`: without a name, what it was is one.
    let is_named = is_text(typed.piece(1));
    let first = 1 + usize::from(is_named);
    let words = if is_named { &TURNED[..] } else { &TURNED[..3] };
    let turned = typed.find(first, words)?;
    if typed.find(first, &NOT).is_some() || typed.line.contains('#') {
        return None;
    }
    let open = (first..turned).rev().find(|&at| typed.pieces[at].is_mark("("));
    let (begin, end) = match open {
        Some(open) => {
            let close = (turned..typed.pieces.len()).find(|&at| typed.pieces[at].is_mark(")"))?;
            (open, close + 1)
        }
        None => {
            let begins = (first..turned)
                .rev()
                .take_while(|&at| !typed.pieces[at].is_number() && !typed.says(at, &PLACES))
                .last()
                .unwrap_or(turned);
            let stops = |at: &usize| typed.says(*at, &PLACES) || typed.pieces[*at].is_number();
            let ends = (turned..typed.pieces.len()).find(stops).filter(|_| !is_named);
            (begins, ends.unwrap_or(typed.pieces.len()))
        }
    };
    if (begin..end).any(|at| typed.says(at, &PLACES) || typed.pieces[at].sort == super::Sort::Text)
    {
        return None;
    }
    let remark = typed.text(begin, end).trim_matches(['(', ')', ',', ';', ' ']);
    let (before, after) = (typed.text(first, begin), typed.rest(end));
    let others = format!("{before} {after}");
    let others = others.trim_matches([' ', ',', ';']);
    let kind = typed.lower(0);
    let name = match is_named {
        true => typed.text(1, 2).to_owned(),
        false => quoted(&format!("Former {kind}")),
    };
    let line = |kind: &str| {
        let said = format!("{kind} {name} {others}");
        format!("{}  # {remark}", said.trim_end())
    };
    Some(Answer::Lines(vec![line("living"), line(&kind)], lived_in_or(&kind)))
}
