//! Remarks beside the words about a place: what a space is made of, when it was built, in what state it is.
//!
//! They say nothing of where it stands, so that they become its comment, wherever on the line they are.

use super::super::pieces::{Piece, Sort};
use super::measure::length_at;
use super::{Typed, whereabouts};

/// Words that say how a space is made or kept.
const HOW: &str = "walls posts post columns metal aluminum open sloped sloping slanted vaulted ceiling \
    ceilings finished heated cooled wood wooden concrete composite treated pressure stone tile \
    tiled paved gravel new old newer older newly roofed uncovered covered railing railings \
    rail rails raised elevated screened carpeted carpet insulated drywalled floor slab roof \
    needs need repair repairs repaired paint painted work rotted rotten rotting leaks leaking \
    sagging leaning poor fair good bad excellent average shape condition rough rebuilt redone \
    remodeled renovated replaced updated permit permitted unpermitted built added poured \
    installed constructed since circa step steps ramp bench benches pavers paver flagstone \
    asphalt dirt cedar redwood pine trex vinyl block cinderblock steel tin shingle shingles \
    awning gutters lights fan fans electric electricity power plumbing windows skylight \
    skylights hardwood laminate lattice wired unpainted stained weathered temporary portable \
    prefab kit lean lumber planks plank boards joists ground-level \
    glass glassed alum poly plastic fabric canvas corrugated fiberglass screen screens shed-roof \
    skids piers blocks wheels runners pole-barn kit-built insulation deteriorated \
    falling failing car cars stall stalls doors prev enclosed screened-in lean-to ac a/c hvac central";

/// Words that join them.
const SMALL: &str = "with w and has a an is its fully no on only all sides two three four one in of the very \
    some by owner us new badly partly really but about was recently previous former seller builder contractor down";

/// What a remark on a space may count or give the size of.
const COUNTED: [&str; 18] = [
    "car",
    "cars",
    "stall",
    "stalls",
    "doors",
    "windows",
    "step",
    "steps",
    "post",
    "posts",
    "ramp",
    "bench",
    "benches",
    "joists",
    "lumber",
    "boards",
    "skylights",
    "columns",
];

/// Rooms and what is in them, which a part of the line alone may name.
const ROOMS: [&str; 20] = [
    "family",
    "room",
    "bedroom",
    "bedrooms",
    "bath",
    "baths",
    "den",
    "office",
    "kitchen",
    "laundry",
    "dining",
    "fireplace",
    "gas",
    "closet",
    "closets",
    "suite",
    "shower",
    "sink",
    "toilet",
    "br",
];

/// Of a room it decides whether it counts.
const COLD: [&str; 4] = ["unheated", "unconditioned", "uninsulated", "heat"];

/// What a space stands on.
const BASES: [&str; 9] =
    ["skids", "piers", "slab", "blocks", "wheels", "runners", "concrete", "gravel", "posts"];

/// Words that begin a place.
const LEADS: [&str; 13] = [
    "on", "at", "off", "in", "behind", "touching", "next", "beside", "along", "from", "near",
    "over", "against",
];

/// Where a remark ends that begins at this piece: `, sloped ceiling`, `(1998)`, `concrete, 3 steps`, `w/ steps 4x4`,
/// `, needs repair`. `is_apart` says that it does not stand among the words of a place.
pub(super) fn end(typed: &Typed<'_>, at: usize, kind: &str, is_apart: bool) -> Option<usize> {
    let mark = typed.piece(at)?;
    if mark.is_mark(",;(:") || mark.is_mark("-–—") && !mark.touches {
        return set_off(typed, at, kind);
    }
    let is_after_with = typed.says(at, &["w", "with"]);
    // `on skids`
    let base = at + 1 + usize::from(typed.says(at + 1, &["a"]));
    let is_on_base = typed.says(at, &["on"]) && typed.says(base, &BASES);
    // `in 1985`
    let is_dated = typed.says(at, &["in", "since", "from", "circa", "ca"])
        && typed.piece(at + 1).is_some_and(Piece::is_year)
        && !is_length(typed, at + 1);
    let begins = is_dated
        || is_after_with
        || is_on_base
        || is_how(typed, at, kind)
        || counted(typed, at).is_some();
    let before = at.checked_sub(1).and_then(|at| typed.piece(at));
    let leads = ["the", "of", "my", "our", "a", "an", "on", "at", "off", "in", "to", "by", "from"];
    if !begins || before.is_some_and(|before| before.is_word(&leads)) {
        return None;
    }
    let mut stop = at;
    while let Some(next) = one(typed, stop, kind) {
        stop = next;
    }
    // `w/ shower off the porch`: what it has, up to the words of a place.
    if is_after_with {
        let first = at + 1 + usize::from(typed.piece(at + 1).is_some_and(|mark| mark.is_mark("/")));
        let is_plain = |at: &usize| {
            let is_length = typed.pieces[*at].is_mark("'’′\"”″")
                || typed.pieces[*at].is_number()
                    && length_at(&typed.pieces, *at).is_some_and(|one| one.has_unit)
                    && !is_of_a_size(typed, *at);
            (typed.pieces[*at].sort == Sort::Word || is_length)
                && !LEADS.iter().any(|lead| typed.says(*at, &[lead]))
                && whereabouts::direction(typed, *at).is_none()
                && whereabouts::whereabouts(typed, *at).is_none()
        };
        let end = (first..typed.pieces.len()).take_while(is_plain).last();
        if let Some(end) = end.filter(|end| end + 1 > stop && *end < first + 4) {
            return Some(end + 1);
        }
    }
    // `concrete on the south side`: the words of a place begin with small ones.
    while stop > at
        && stop < typed.pieces.len()
        && is_one_of(typed, stop - 1, SMALL)
        && !is_how(typed, stop - 1, kind)
    {
        stop -= 1;
    }
    // `in 1985 of 12x20`
    stop += usize::from(is_dated && typed.says(stop, &["of"]));
    // `inside those walls`, `on the ground floor`: words of a place.
    let parts = ["walls", "floor", "roof", "slab", "posts", "columns", "ceiling", "open", "steps"];
    let is_own = |at: usize| is_how(typed, at, kind) && (is_apart || !typed.says(at, &parts));
    let says = (at..stop).any(is_own);
    let next = typed.piece(stop);
    let is_last = next.is_none_or(|next| next.is_mark(",;()"));
    let goes_on = next.is_some_and(|next| {
        next.is_number()
            || next.sort == Sort::Word
                && (whereabouts::whereabouts(typed, stop).is_some()
                    || whereabouts::direction(typed, stop).is_some()
                    || next.is_word(&LEADS))
    });
    (says && (is_last || is_apart && goes_on)).then_some(stop)
}

/// A remark between two marks.
fn set_off(typed: &Typed<'_>, at: usize, kind: &str) -> Option<usize> {
    let is_open = typed.pieces[at].is_mark("(");
    let closing = if is_open { ")" } else { ",;(" };
    let stop = (at + 1..typed.pieces.len())
        .find(|&at| typed.pieces[at].is_mark(closing))
        .unwrap_or(typed.pieces.len());
    let is_room = matches!(kind, "living" | "unfinished");
    let mut next = at + 1;
    while next < stop {
        next = match one(typed, next, kind) {
            Some(end) => end,
            None if is_room && typed.says(next, &ROOMS) => next + 1,
            // `(vinyl, new)`
            None if is_open && typed.pieces[next].is_mark(",;-") => next + 1,
            None => return None,
        };
    }
    let says = (at + 1..stop).any(|at| {
        is_how(typed, at, kind)
            || is_entry(typed, at, kind)
            || off_the_ground(typed, at).is_some()
            || is_room && typed.says(at, &ROOMS)
    });
    (says && next == stop).then(|| stop + usize::from(is_open && stop < typed.pieces.len()))
}

/// The index after the word, the year or the count of a remark that stands at this piece.
fn one(typed: &Typed<'_>, at: usize, kind: &str) -> Option<usize> {
    let piece = typed.piece(at)?;
    if let Some(end) = counted(typed, at) {
        return Some(end);
    }
    // `w/ steps`
    let is_slash = piece.is_mark("/") && at > 0 && typed.says(at - 1, &["w"]);
    // `w/o permit`
    let is_slash =
        is_slash || at > 1 && typed.says(at, &["o"]) && typed.pieces[at - 1].is_mark("/");
    // `side entry`, `front load`
    if is_entry(typed, at, kind) {
        return Some(at + 2);
    }
    let is_word = is_how(typed, at, kind) || is_one_of(typed, at, SMALL) || is_slash;
    (is_word || piece.is_mark(".") && piece.touches).then_some(at + 1)
}

/// `3' off the ground`, `2' above grade`: how high something stands, and the index after the words.
fn off_the_ground(typed: &Typed<'_>, at: usize) -> Option<usize> {
    let high = length_at(&typed.pieces, at).filter(|one| one.has_unit)?.end;
    let ground = high + 1 + usize::from(typed.says(high + 1, &["the"]));
    (typed.says(high, &["off", "above"]) && typed.says(ground, &["ground", "grade"]))
        .then_some(ground + 1)
}

/// `side entry`, `front load`: on which side of a garage its door is.
fn is_entry(typed: &Typed<'_>, at: usize, kind: &str) -> bool {
    matches!(kind, "garage" | "carport")
        && typed.says(at, &["side", "front", "rear", "end", "swing"])
        && typed.says(at + 1, &["entry", "load", "loading", "loaded", "entrance"])
}

fn is_how(typed: &Typed<'_>, at: usize, kind: &str) -> bool {
    let is_room = matches!(kind, "living" | "unfinished");
    let is_year = typed.piece(at).is_some_and(Piece::is_year) && !is_length(typed, at);
    is_year
        || is_one_of(typed, at, HOW)
        || typed.says(at, &COLD) && !is_room
        || typed.says(at, &["brick", "bricks"])
            && matches!(kind, "porch" | "patio" | "deck" | "court" | "balcony")
}

fn is_one_of(typed: &Typed<'_>, at: usize, words: &str) -> bool {
    let word = typed.lower(at);
    words.split(' ').any(|one| one == word)
}

fn is_of_a_size(typed: &Typed<'_>, at: usize) -> bool {
    let is_by = |at: usize| {
        typed.says(at, &["x", "by"]) || typed.piece(at).is_some_and(|by| by.is_mark("×*"))
    };
    length_at(&typed.pieces, at).is_some_and(|one| is_by(one.end)) || at > 0 && is_by(at - 1)
}

/// Whether the number at this piece is a length or one of the two of a size.
fn is_length(typed: &Typed<'_>, at: usize) -> bool {
    is_of_a_size(typed, at) || length_at(&typed.pieces, at).is_some_and(|one| one.has_unit)
}

/// `3 steps`, `steps 4x4`, `4x4 posts`, `8' ceiling`: the index after what is counted or measured there.
fn counted(typed: &Typed<'_>, at: usize) -> Option<usize> {
    let by = |at: usize| {
        typed.says(at, &["x", "by"]) || typed.piece(at).is_some_and(|by| by.is_mark("×*"))
    };
    let size = |at: usize| {
        let one = length_at(&typed.pieces, at)?;
        let two = length_at(&typed.pieces, one.end + 1).filter(|_| by(one.end))?;
        Some(two.end)
    };
    if typed.says(at, &COUNTED) {
        let of = at + 1 + usize::from(typed.says(at + 1, &["of", "are", "is"]));
        return size(of);
    }
    let number = typed.piece(at).filter(|number| number.is_number())?;
    if let Some(end) = size(at) {
        return typed.says(end, &COUNTED).then_some(end + 1);
    }
    if let Some(high) = length_at(&typed.pieces, at).filter(|one| one.has_unit) {
        if let Some(end) = off_the_ground(typed, at) {
            return Some(end);
        }
        let what =
            ["ceiling", "ceilings", "clg", "walls", "posts", "rail", "railing", "doors", "door"];
        return typed.says(high.end, &what).then_some(high.end + 1);
    }
    let is_small = number.text.len() <= 2;
    let next = at + 1 + usize::from(typed.says(at + 1, &["wood", "concrete", "brick", "stone"]));
    (is_small && typed.says(next, &COUNTED)).then_some(next + 1)
}

/// The words of a place that is said as the answers ask for it, `on the south side, 6' from the west end`, and what else
/// is said beside it; `None` if nothing else is.
pub(super) fn whole_place(text: &str) -> Option<(String, String)> {
    const WAYS: [&str; 9] =
        ["north", "east", "south", "west", "front", "back", "rear", "left", "right"];
    // What these say belongs to the place.
    const PLACES: [&str; 9] =
        ["inside", "within", "in", "detached", "over", "above", "under", "below", "corner"];
    const SMALL: [&str; 8] = ["is", "and", "it", "stands", "sits", "located", "the", "that"];
    let (mut whole, mut others): (Vec<&str>, Vec<&str>) = (Vec::new(), Vec::new());
    for clause in text.split([',', ';']).map(str::trim) {
        let lower = clause.to_ascii_lowercase();
        let side = WAYS.iter().find_map(|way| {
            let at = lower.strip_suffix(&format!("on the {way} side"))?.len();
            (at == 0 || lower.get(..at)?.ends_with(' ')).then_some(at)
        });
        let is_end = WAYS.iter().any(|way| lower.ends_with(&format!(" from the {way} end")))
            && lower.starts_with(|c: char| c.is_ascii_digit());
        match side {
            Some(at) => {
                whole.push(clause.get(at..)?);
                others.push(clause.get(..at)?.trim());
            }
            None if is_end => whole.push(clause),
            None => others.push(clause),
        }
    }
    others.retain(|other| !other.is_empty());
    let says_place = others
        .iter()
        .flat_map(|other| other.split(' '))
        .any(|word| PLACES.contains(&word.to_ascii_lowercase().as_str()));
    if whole.len() != 2 || others.is_empty() || says_place {
        return None;
    }
    others.retain(|other| !other.split(' ').all(|word| SMALL.contains(&word)));
    Some((whole.join(", "), others.join(", ")))
}
