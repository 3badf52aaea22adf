//! The first line of a pad: where the house stands, beside what it is like or in which unit it was taped, in any order.

use super::super::pieces::{Piece, Sort, cut};
use super::topics::STREETS;
use super::{Answer, Typed};

/// What a part of the line says.
enum Part {
    /// A number and a street: `40 Quarry St`, `Ferrow Rd 2210`.
    Address,
    /// `Brannock Co.`, `county of Wexby`.
    County,
    /// The name of the house: `Tarn End`, `Windrow Farm`.
    Name,
    /// That bare numbers are in meters: `metric`, `all in m`.
    Metric,
    /// What the house is like: `2 story stucco`.
    Like,
    /// Anything else.
    Other,
}

/// Words for what a house is like. A part of the line with one of them and no word that says more is a remark.
const LIKE: [&str; 53] = [
    "story",
    "stories",
    "storey",
    "storeys",
    "sty",
    "st",
    "sto",
    "story's",
    "brick",
    "brk",
    "bv",
    "frame",
    "fr",
    "stucco",
    "stone",
    "siding",
    "vinyl",
    "wood",
    "masonry",
    "ranch",
    "rancher",
    "rambler",
    "bungalow",
    "colonial",
    "cape",
    "cottage",
    "house",
    "farmhouse",
    "home",
    "old",
    "new",
    "split",
    "level",
    "split-level",
    "two",
    "one",
    "three",
    "half",
    "bath",
    "bed",
    "br",
    "ba",
    "and",
    "with",
    "att",
    "attached",
    "full",
    "single",
    "family",
    "duplex",
    "townhouse",
    "w",
    "a",
];

/// Words of which one makes a remark of the part.
const TELLING: [&str; 27] = [
    "story",
    "stories",
    "storey",
    "storeys",
    "sty",
    "brick",
    "brk",
    "frame",
    "stucco",
    "stone",
    "siding",
    "vinyl",
    "wood",
    "masonry",
    "ranch",
    "rancher",
    "rambler",
    "bungalow",
    "colonial",
    "cape",
    "cottage",
    "farmhouse",
    "split-level",
    "duplex",
    "townhouse",
    "house",
    "home",
];

/// `2 story stucco. 40 Quarry St. Brannock Co.`, `Brick ranch - 9 Cooperage Ln, Weddell County`, `Old farmhouse, Tarn End,
/// county of Wexby - all in m`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let beside = &typed.attempt.beside;
    let above = cut(&beside.before);
    let is_head = typed.attempt.space.is_none()
        && typed.attempt.house.is_none()
        && !above.first().is_some_and(|word| word.is_word(&["level"]));
    let bare = typed.line.trim().trim_end_matches('!');
    if !is_head || typed.attempt.knows_first || bare.contains(['#', '=', '/', '@', ':']) {
        return None;
    }
    let plain = bare.replace(['“', '”'], "\"");
    if super::measures(&plain.replace('"', " ")) {
        return None;
    }
    let parts = parts_of(&plain);
    if let Some(answer) = only_like(typed, &parts) {
        return Some(answer);
    }
    let (mut place, mut names, mut remarks) = (Vec::new(), Vec::new(), Vec::new());
    let (mut metric, mut has_address, mut has_county) = (false, false, false);
    for part in &parts {
        let (head, tail) = split_after_address(part);
        for one in [Some(head), tail].into_iter().flatten() {
            match sort_of(one) {
                Part::Address if !has_address => {
                    has_address = true;
                    place.push(one);
                }
                Part::County if !has_county => {
                    has_county = true;
                    place.push(one);
                }
                Part::Name => names.push(one),
                Part::Metric if !metric => metric = true,
                Part::Like | Part::Other | Part::Address | Part::County | Part::Metric => {
                    remarks.push(one);
                }
            }
        }
    }
    // What is said of the walls is a remark; of other words nobody knows what they say.
    let is_like = remarks.iter().any(|one| matches!(sort_of(one), Part::Like));
    let is_known = remarks.iter().all(|one| matches!(sort_of(one), Part::Like)) && names.len() <= 2;
    let is_named = has_address || has_county && !names.is_empty();
    let says_more = metric || is_like || has_address && parts.len() > 1;
    if !is_named || !is_known || !says_more {
        return None;
    }
    let all: Vec<&str> = names.iter().copied().chain(place.iter().copied()).collect();
    let word = if names.is_empty() { "address" } else { "property" };
    let text = all.join(", ").replace('"', "");
    let comment = match remarks.is_empty() {
        true => String::new(),
        false => format!("  # {}", remarks.join(", ").replace('"', "")),
    };
    let units = if metric { "units meters\n" } else { "" };
    let cause = match (metric, remarks.is_empty()) {
        (true, _) => {
            "where the house is stands after `property` or `address`, and the unit of numbers without a mark is a line of its own, `units meters`"
        }
        (false, false) => {
            "where the house is stands after `property` or `address`; what it is like is a remark, which begins with `#`"
        }
        (false, true) => "where the house is stands after `property` or `address`",
    };
    Some(Answer::line(format!("{units}{word} \"{}\"{comment}", text.trim()), cause))
}

/// `1 sty brk, att gar incl in walk`: what the house is like, and that the walk goes round its garage too.
fn only_like(typed: &Typed<'_>, parts: &[&str]) -> Option<Answer> {
    const OF_A_GARAGE: [&str; 15] = [
        "att", "attached", "gar", "garage", "incl", "included", "in", "inside", "within", "the",
        "walk", "is", "with", "w", "walked",
    ];
    let is_garage = |part: &str| {
        let pieces = cut(part);
        let says = |words: &[&str]| pieces.iter().any(|piece| piece.is_word(words));
        pieces.iter().all(|piece| piece.is_word(&OF_A_GARAGE) || piece.is_mark("./"))
            && says(&["gar", "garage"])
            && says(&["walk", "incl", "included", "walked"])
    };
    let is_like = |part: &str| {
        let more = ["veneer", "ven", "all"];
        let pieces = cut(part);
        matches!(sort_of(part), Part::Like)
            || pieces.iter().any(|piece| piece.is_word(&more))
                && pieces.iter().all(|piece| {
                    piece.is_word(&more)
                        || matches!(sort_of(&piece.text), Part::Like)
                        || piece.is_number()
                        || piece.is_word(&LIKE)
                })
    };
    let garage = parts.iter().any(|part| is_garage(part));
    let all = parts.iter().all(|part| is_garage(part) || is_like(part));
    if !garage || !all || parts.len() < 2 {
        return None;
    }
    let has_brick = typed.find(0, &["brick", "brk", "bv", "stone"]).is_some();
    let brick = match has_brick && !typed.attempt.beside.has_brick {
        true => {
            "write `veneer 4 5/8\"`, or the thickness of your own from the frame to the face of the brick, instead of this line, or put a `#` before it"
        }
        false => "put a `#` before this line",
    };
    Some(Answer::say(
        "what the house is like is a remark; a garage round which the walk of the house goes too is deducted from it by a line of its own below its walls",
        format!(
            "{brick}; below the walls of the house write `garage 20 x 22 inside the walk, in the southeast corner`, with the size of yours and its corner"
        ),
    ))
}

/// The parts of the line between its marks. The point of `St.` and `Co.` ends none.
fn parts_of(line: &str) -> Vec<&str> {
    let (mut parts, mut from) = (Vec::new(), 0);
    let bytes = line.as_bytes();
    let mut inside = false;
    for (at, c) in line.char_indices() {
        let rest = line.get(at..).unwrap_or_default();
        let before = line.get(from..at).unwrap_or_default();
        inside ^= c == '"';
        let next_is_blank = bytes.get(at + 1).is_none_or(|next| *next == b' ');
        let word = before.rsplit(' ').next().unwrap_or_default().to_lowercase();
        let begins = !before.trim().is_empty();
        let short = ["n", "s", "e", "w", "no", "nr", "apt"].contains(&word.as_str());
        let ends = match c {
            ',' if inside => false,
            ',' | ';' | '(' | ')' => true,
            '.' => next_is_blank && !short,
            '-' | '–' | '—' => rest.chars().nth(1) == Some(' ') && before.ends_with(' '),
            ' ' => rest.starts_with("  "),
            _ => false,
        };
        if ends {
            // The point of a street's or a county's short word belongs to it.
            let keeps = c == '.' && begins && (STREETS.contains(&word.as_str()) || word == "co");
            let to = if keeps { at + 1 } else { at };
            parts.push(line.get(from..to).unwrap_or_default());
            from = at + c.len_utf8();
        }
    }
    parts.push(line.get(from..).unwrap_or_default());
    parts.into_iter().map(str::trim).filter(|part| part.contains(char::is_alphanumeric)).collect()
}

/// `40 Quarry St 2-story`: the address, and what follows its street.
fn split_after_address(part: &str) -> (&str, Option<&str>) {
    let pieces = cut(part);
    let street = (2..pieces.len()).find(|&at| pieces[at].is_word(&STREETS));
    let next = street.and_then(|street| pieces.get(street + 1));
    match next.filter(|next| pieces[0].is_number() && (next.is_number() || is_low(next))) {
        Some(next) => {
            let (head, tail) = part.split_at(next.at);
            (head.trim(), Some(tail.trim()))
        }
        None => (part, None),
    }
}

fn is_low(piece: &Piece) -> bool {
    piece.sort == Sort::Word && piece.text.starts_with(char::is_lowercase)
}

fn sort_of(part: &str) -> Part {
    let part = part.trim_matches(['"', ' ']);
    let pieces = cut(part);
    let says = |at: usize, words: &[&str]| pieces.get(at).is_some_and(|word| word.is_word(words));
    let is_name = |piece: &Piece| {
        piece.sort == Sort::Word && piece.text.starts_with(char::is_uppercase)
            || piece.is_word(&["of", "the", "on", "at", "de", "la"])
            || piece.is_mark(".'’&-")
    };
    let whole = |piece: &Piece| {
        piece.is_number() && piece.text.len() <= 5 && piece.text.bytes().all(|c| c.is_ascii_digit())
    };
    let units = ["m", "meter", "meters", "metre", "metres", "metric"];
    let filler = [
        "all",
        "in",
        "is",
        "are",
        "dimensions",
        "lengths",
        "dims",
        "measurements",
        "units",
        "everything",
    ];
    let is_unit =
        |piece: &Piece| piece.is_word(&units) || piece.is_word(&filler) || piece.is_mark("!.");
    if pieces.iter().all(is_unit) && pieces.iter().any(|piece| piece.is_word(&units)) {
        return Part::Metric;
    }
    let last = pieces.iter().rposition(|piece| !piece.is_mark(".")).unwrap_or_default();
    let county = ["county", "co", "cty", "township", "twp", "parish"];
    let names_all = pieces.iter().all(is_name);
    if last > 0 && says(last, &county) && names_all
        || says(0, &["county", "township", "parish", "town", "city"])
            && says(1, &["of"])
            && pieces.len() > 2
    {
        return Part::County;
    }
    let is_like = |piece: &Piece| {
        piece.is_word(&LIKE)
            || piece.is_number() && piece.text.len() <= 3
            || piece.is_mark("-/½.&+")
            // `2-sty`, `one-story`
            || piece.text.split('-').all(|word| LIKE.contains(&word.to_lowercase().as_str()))
    };
    let tells = |piece: &Piece| {
        piece.text.split('-').any(|word| TELLING.contains(&word.to_lowercase().as_str()))
    };
    if pieces.iter().all(is_like) && pieces.iter().any(tells) {
        return Part::Like;
    }
    let street = pieces.iter().any(|piece| piece.is_word(&STREETS));
    let first_is_number = pieces.first().is_some_and(whole);
    if first_is_number && (2..=6).contains(&pieces.len()) && pieces[1..].iter().all(is_name) {
        return Part::Address;
    }
    let last_is_number = pieces.last().is_some_and(whole);
    if street
        && last_is_number
        && pieces.len() >= 3
        && pieces[..pieces.len() - 1].iter().all(is_name)
    {
        return Part::Address;
    }
    if names_all && pieces.len() <= 5 && pieces.first().is_some_and(|first| !is_low(first)) {
        return if street && pieces.len() > 1 { Part::Address } else { Part::Name };
    }
    Part::Other
}
