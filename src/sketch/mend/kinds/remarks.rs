//! Answers to lines that say nothing about the outline of the house.

use super::super::pieces::Piece;
use super::measure::{area_from, date_from, length_at, money_from};
use super::{Answer, Typed};

/// `3 bed 2 bath`, `not reached`: a comment, or a wall whose direction is missing.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    not_reached(typed).or_else(|| rooms(typed))
}

/// `about 11 m north of house`, `barn is 36' behind the house` below the walls of a space: how far it stands from another.
pub(super) fn apart_from_another(typed: &Typed<'_>) -> Option<Answer> {
    const NEAR: [&str; 8] =
        ["about", "approx", "approximately", "roughly", "some", "around", "nearly", "ca"];
    const STANDS: [&str; 14] = [
        "is", "stands", "sits", "lies", "located", "it", "the", "which", "this", "set", "are",
        "was", "begins", "starts",
    ];
    const WHERE: [&str; 24] = [
        "north",
        "south",
        "east",
        "west",
        "n",
        "s",
        "e",
        "w",
        "northeast",
        "northwest",
        "southeast",
        "southwest",
        "behind",
        "beyond",
        "back",
        "front",
        "left",
        "right",
        "away",
        "off",
        "past",
        "apart",
        "over",
        "rear",
    ];
    const WHAT: [&str; 19] = [
        "of", "from", "the", "to", "in", "house", "home", "main", "dwelling", "road", "street",
        "fence", "line", "lot", "property", "garage", "building", "corner", "wall",
    ];
    let beside = &typed.attempt.beside;
    let is_mark = |at: usize| typed.pieces[at].is_mark(",.()~:-–");
    let first = typed.pieces.iter().position(Piece::is_number)?;
    let one = length_at(&typed.pieces, first)?;
    let end = typed.pieces.len();
    let names = |at: usize| {
        super::kind_word(&typed.lower(at)).is_some_and(|kind| kind != "living")
            || typed.says(at, &["barn", "shed", "workshop", "building", "house"])
    };
    let head = (0..first)
        .all(|at| is_mark(at) || names(at) || typed.says(at, &NEAR) || typed.says(at, &STANDS));
    let tail = (one.end..end)
        .all(|at| is_mark(at) || names(at) || typed.says(at, &WHERE) || typed.says(at, &WHAT));
    // `36' from the house`
    let from = (one.end..end).any(|at| typed.says(at, &["from", "off"]))
        && (one.end..end).any(|at| names(at) || typed.says(at, &["home", "road", "street"]));
    let is_placed = from || (one.end..end).any(|at| typed.says(at, &WHERE));
    // `11 m north` alone may be a wall, `11 m north of the house` is none.
    let another = typed.says(one.end, &["to"]) && typed.says(one.end + 1, &["the"])
        || (one.end..end)
            .any(|at| typed.says(at, &["of", "from", "behind", "beyond", "away", "apart", "past"]));
    let stands = (0..first).any(|at| typed.says(at, &["is", "stands", "sits", "lies", "located"]));
    let is_below = super::super::begins_as_wall(&beside.before);
    let follows = super::super::begins_as_wall(&beside.after);
    let progress = super::straight::progress(typed, &beside.last_walk);
    let is_back = !progress.is_open() && !progress.has_closing && progress.walls >= 4;
    let is_done = !progress.is_open() && progress.walls != 1;
    let fits = head
        && tail
        && is_placed
        && is_below
        && (!follows || is_back)
        && is_done
        && (another || stands);
    // `garage 6' from the left corner` above its walls begins there.
    let is_kind = |at: usize| super::kind_meant(&typed.lower(at)).is_some();
    if follows && (0..first).any(is_kind) && typed.find(one.end, &["corner", "wall"]).is_some() {
        return None;
    }
    // Its own walls stand below: as a comment it would leave them to the house.
    if let Some(line) = begun_by(typed, first, one.end).filter(|_| fits && follows && is_back) {
        return Some(Answer::line(
            line,
            "a building that stands by itself is a space of its own, `detached`; how far it stands from another is a remark",
        ));
    }
    (fits && !typed.is_in_lot()).then(|| {
        Answer::line(
            format!("# {}", typed.line.trim()),
            "how far a building stands from another is no wall of it: a remark on a line of its own begins with `#`",
        )
    })
}

/// `barn 25 m behind house`, `6 m from the house: shed`: the line of the building that stands there.
fn begun_by(typed: &Typed<'_>, first: usize, end: usize) -> Option<String> {
    let named = |at: usize| {
        let kind = super::kind_meant(&typed.lower(at))?;
        let name = super::levels::capitalized(&typed.lower(at));
        Some(format!("{kind} {} detached  # {}", super::quoted(&name), super::remark(typed.line)))
    };
    if let Some(line) = (0..first).find_map(named) {
        return Some(line);
    }
    // `80 ft behind the barn` says where something else stands.
    let last = typed.pieces.len().checked_sub(1).filter(|last| *last > end)?;
    let other = ["of", "from", "to", "the", "behind", "beyond", "off", "past", "main", "away"];
    let before = last.checked_sub(1)?;
    if typed.says(before, &other) { None } else { named(last) }
}

/// `note the gas meter is on this wall` below a wall: a line of its own.
pub(super) fn note_alone(typed: &Typed<'_>) -> Option<Answer> {
    let is_below_a_wall = super::super::begins_as_side(&typed.attempt.beside.before);
    let is_plain = typed.piece(1).is_some_and(|piece| piece.sort == super::Sort::Word);
    (typed.says(0, &["note"]) && is_plain && is_below_a_wall).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "a `note` stands at the end of its wall's line, between two `\"`; on a line of its own a remark begins with `#`",
        )
    })
}

/// `not reached`, `could not measure`: asks which wall is meant.
fn not_reached(typed: &Typed<'_>) -> Option<Answer> {
    let says = [
        "not",
        "cannot",
        "can't",
        "couldn't",
        "could",
        "unreachable",
        "inaccessible",
        "blocked",
        "unmeasured",
    ];
    let reached = [
        "reached",
        "reach",
        "measured",
        "measure",
        "taped",
        "accessible",
        "reachable",
        "tape",
        "access",
    ];
    let is_alone = typed.says(0, &["unreachable", "inaccessible", "blocked", "unmeasured"]);
    let fits = typed.says(0, &says) && (is_alone || typed.find(1, &reached).is_some());
    let counts =
        typed.pieces.iter().any(|piece| piece.is_number() || piece.sort == super::Sort::Text);
    (fits && !counts && typed.pieces.len() <= 6).then(|| {
        Answer::say(
            "a wall that was not measured still has its direction",
            "write the way that it runs and `by closing`: `west by closing`; its length follows from the other walls",
        )
    })
}

/// `3 bed 2 bath`, `4 bedrooms 2.5 baths`: makes numbers that measure nothing a comment.
fn rooms(typed: &Typed<'_>) -> Option<Answer> {
    if typed.attempt.knows_first {
        return None;
    }
    let rooms = [
        "bed",
        "beds",
        "bd",
        "br",
        "bdrm",
        "bedroom",
        "bedrooms",
        "bath",
        "baths",
        "ba",
        "bathroom",
        "bathrooms",
        "story",
        "stories",
        "storey",
        "storeys",
        "car",
        "cars",
        "room",
        "rooms",
        "fireplace",
        "fireplaces",
        "units",
        "unit",
        "windows",
        "window",
        "doors",
        "people",
        "pages",
    ];
    let first = typed.piece(0)?;
    let named = (0..typed.pieces.len().min(3)).any(|at| {
        typed.says(at, &rooms)
            && at > 0
            && typed.pieces[at - 1].is_number()
            && !typed.piece(at).is_some_and(|piece| piece.is_word(&["car", "story"]))
    });
    let measures = (0..typed.pieces.len())
        .any(|at| length_at(&typed.pieces, at).is_some_and(|measure| measure.has_unit));
    let says = measures
        || area_from(&typed.pieces, 0).is_some()
        || money_from(&typed.pieces, 0).is_some()
        || date_from(&typed.pieces, 0).is_some();
    let is_plain = |piece: &Piece| piece.sort != super::Sort::Text;
    (first.is_number() && named && !says && typed.pieces.iter().all(is_plain)).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "this line says nothing about the outline of the house; a comment begins with `#`",
        )
    })
}
