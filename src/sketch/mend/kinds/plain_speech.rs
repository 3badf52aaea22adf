//! Lines as an owner says them aloud: what a notice says, what a record should say, a length that is a guess, the way back.

use super::super::compass::way_and_back;
use super::super::pieces::{Piece, Sort};
use super::measure::length_at;
use super::{Answer, Rule, Typed, first_of, plainly, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        what_the_notice_says,
        what_the_record_should_be,
        total_alone,
        unknown_thickness,
        level_over_a_part,
        remark_after_a_dash,
        guessed_length,
        back_to_the_start,
        round_some_corner,
        call_along,
        same_as_a_wall,
    ];
    first_of(rules, typed)
}

/// Whether the pieces from `first` up to `end` are these words or marks alone.
fn only(typed: &Typed<'_>, first: usize, end: usize, words: &[&str]) -> bool {
    (first..end).all(|at| typed.says(at, words) || typed.pieces[at].is_mark(",.:;!-–"))
}

/// `our notice says 412,000`: a value that may be the one or the other.
fn what_the_notice_says(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(0, &["notice"]).filter(|at| *at < 3)?;
    let first =
        (at + 1..typed.pieces.len()).find(|&at| super::worths::sum_at(typed, at).is_some())?;
    let (sum, end) = super::worths::sum_at(typed, first)?;
    let plain = only(
        typed,
        0,
        first,
        &[
            "our", "my", "the", "notice", "says", "say", "shows", "is", "was", "has", "it", "at",
            "value", "of",
        ],
    ) && typed.find(at, &["says", "say", "shows", "has"]).is_some();
    (plain && end == typed.pieces.len()).then(|| {
        Answer::Lines(
            vec![format!("value market {sum}"), format!("value assessed {sum}")],
            "is it the market value of the whole property, as in the first, or the value that the tax is paid on, as in the second".to_owned(),
        )
    })
}

/// `county wrong, should be 1,690`: not what the record says.
fn what_the_record_should_be(typed: &Typed<'_>) -> Option<Answer> {
    let says = typed.says(0, &["county", "record", "card", "assessor", "the", "county's"])
        && typed
            .find(0, &["county", "record", "card", "assessor", "county's"])
            .is_some_and(|at| at < 3);
    let should = typed.find(1, &["should"])?;
    let has_number = typed.pieces.iter().skip(should).any(Piece::is_number);
    (says && has_number && typed.says(should + 1, &["be", "say", "have", "read"])).then(|| {
        Answer::say(
            "`record` is the area that the record has, whether it is right or not; what it should be follows from the walls",
            "put this line after a `#`, and write `record` and the area that is on the record's card, with its unit",
        )
    })
}

/// `total 1,200`: too little for a value, and an area of a house.
fn total_alone(typed: &Typed<'_>) -> Option<Answer> {
    let [total, number] = &typed.pieces[..] else { return None };
    let digits = number.text.replace(',', "");
    let fits = total.is_word(&["total", "totals"])
        && number.is_number()
        && digits.parse::<u32>().is_ok_and(|area| (200..10_000).contains(&area));
    let unit = if typed.attempt.is_metric { "sq m" } else { "sq ft" };
    fits.then(|| {
        Answer::Lines(
            vec![
                format!("record {} {unit}", number.text),
                format!("# {}", typed.line),
            ],
            "if the record has this area, it is `record`; what you added up yourself is a comment, since the program adds up the walls".to_owned(),
        )
    })
}

/// `wall thickness unknown`: nothing to type.
fn unknown_thickness(typed: &Typed<'_>) -> Option<Answer> {
    let says = typed.says(0, &["wall", "walls", "veneer", "brick"])
        && typed.find(1, &["unknown", "unsure"]).is_some_and(|at| at + 1 == typed.pieces.len());
    let plain = only(
        typed,
        1,
        typed.pieces.len(),
        &["thickness", "depth", "is", "unknown", "unsure", "thick"],
    );
    (says && plain).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "a thickness that nobody knows needs no line: where it is needed, a usual one is taken and said",
        )
    })
}

/// `2nd story over garage only`: a level whose space stands over a part of the one below.
fn level_over_a_part(typed: &Typed<'_>) -> Option<Answer> {
    let over = typed.find(1, &["over", "above"]).filter(|at| *at <= 3)?;
    let first = over + 1 + usize::from(typed.says(over + 1, &["the"]));
    let part = typed.lower(first);
    let kind =
        super::kind_word(&part).filter(|kind| ["garage", "carport", "porch"].contains(kind))?;
    let name = typed.text(0, over).trim_matches([',', ' ']);
    let is_level = super::names_a_level(name)
        || typed.says(over - 1, &["story", "storey", "floor", "level"]) && over <= 2;
    let plain = only(typed, first + 1, typed.pieces.len(), &["only", "part", "alone", "too"]);
    let is_named = typed.line.contains(['"', '#']);
    (is_level && plain && !is_named).then(|| {
        Answer::say(
            "where a level stands follows from where its spaces stand",
            format!(
                "write `level {}` here, and `over the {kind}` on the line of its space, as `living \"Rooms\" over the {kind}`, with its size or with its walls below it",
                quoted(&super::levels::capitalized(name))
            ),
        )
    })
}

/// `garage - 2 car, 22 wide` above its walls: a remark, and no name.
fn remark_after_a_dash(typed: &Typed<'_>) -> Option<Answer> {
    let kind = typed.lower(0);
    let is_kind = super::super::is_kind(&kind) && typed.piece(1)?.is_mark("-–—:");
    let is_counted = typed.piece(2).is_some_and(Piece::is_number);
    let follows = super::super::begins_as_wall(&typed.attempt.beside.after);
    let said = typed.rest(2);
    let says_place =
        typed.find(2, &["from", "within", "start", "recorded", "sq", "sf", "sqft"]).is_some();
    (is_kind && is_counted && follows && !says_place && super::size_in(typed.line).is_none()).then(|| {
        Answer::line(
            format!("{kind} {}  # {}", quoted(&super::levels::capitalized(&kind)), plainly(said)),
            "a space begins with its kind, then its name; its size is typed as its walls, and anything else is a comment",
        )
    })
}

/// `west, hard to reach, maybe 40`, `west maybe 40'`: a length that was not taped.
fn guessed_length(typed: &Typed<'_>) -> Option<Answer> {
    way_and_back(&typed.lower(0))?;
    let guess = typed.find(1, &["maybe", "probably", "perhaps", "guess", "guessing"])?;
    let mut first = guess + 1;
    while typed.says(first, &["about", "around", "some", "it's", "is"])
        || typed.piece(first).is_some_and(|mark| mark.is_mark(",:-–"))
    {
        first += 1;
    }
    let length =
        length_at(&typed.pieces, first).filter(|length| length.end == typed.pieces.len())?;
    let plain = (1..guess)
        .all(|at| typed.pieces[at].sort == Sort::Word || typed.pieces[at].is_mark(",;:()-–"));
    let said = plainly(typed.text(1, guess).trim_matches([',', ';', ' ', '(', '-', '–', ':']));
    let note = if said.is_empty() { String::new() } else { format!(" note {}", quoted(&said)) };
    (plain && !typed.line.contains('#')).then(|| {
        Answer::line(
            format!("{} {} estimated{note}", typed.text(0, 1), length.text),
            "a length that was not measured exactly is `estimated`",
        )
    })
}

/// `back around to start`, `and back to where I began`: the walk is closed by what follows from the others.
fn back_to_the_start(typed: &Typed<'_>) -> Option<Answer> {
    const WORDS: [&str; 22] = [
        "back",
        "around",
        "round",
        "to",
        "the",
        "start",
        "starting",
        "beginning",
        "where",
        "i",
        "we",
        "began",
        "begin",
        "started",
        "point",
        "corner",
        "first",
        "and",
        "then",
        "home",
        "again",
        "all",
    ];
    let says_start =
        typed.find(1, &["start", "starting", "beginning", "began", "started"]).is_some();
    let begins = typed.says(0, &["back", "and", "then", "around", "round", "all"]);
    let in_a_walk = super::super::begins_as_wall(&typed.attempt.beside.before);
    let ends = !super::super::begins_as_wall(&typed.attempt.beside.after);
    let fits = begins && says_start && in_a_walk && ends;
    if !fits || !only(typed, 0, typed.pieces.len(), &WORDS) {
        return None;
    }
    // A walk that a wall by closing leads back, or whose walls are back, needs no word for it. A wall of a pad without its
    // length is such a wall once it is typed.
    let lines = &typed.attempt.beside.last_walk;
    let progress = super::straight::progress(typed, lines);
    let lacks = lines.iter().any(|line| line.contains('?') || line.contains("by closing"));
    let is_back = progress.back.is_some() && !progress.is_open();
    let in_lot = typed.attempt.beside.in_lot;
    if !in_lot && (lacks || progress.has_closing || is_back) {
        return Some(Answer::say(
            "the last wall leads back to the start, so the walk needs no line for it",
            "take this line out",
        ));
    }
    Some(Answer::line(
        "close",
        "the way back to the start is `close`: the one or two sides that nobody measured; if it was measured, it is a wall with its way and its length",
    ))
}

/// `deck wraps corner 10' deep`: which corner.
fn round_some_corner(typed: &Typed<'_>) -> Option<Answer> {
    let kind = super::kind_word(&typed.lower(0))
        .filter(|kind| ["porch", "deck", "patio"].contains(kind))?;
    let wraps = typed.says(1, &["wraps", "wrapping", "wraparound", "wrap-around"]);
    let corner = 2 + usize::from(typed.says(2, &["around", "round"]));
    let corner = corner + usize::from(typed.says(corner, &["the", "a", "one"]));
    let rest = typed.rest(corner + 1).trim_matches([',', ' ']);
    let says_depth = typed.find(corner, &["deep"]).is_some();
    let follows = super::super::begins_as_wall(&typed.attempt.beside.after);
    (wraps && typed.says(corner, &["corner"]) && says_depth && !follows).then(|| {
        Answer::say(
            format!(
                "a {kind} round a corner has six sides: which corner it goes round is not said"
            ),
            format!("say it, as `{kind} wraps the northeast corner, {rest}`"),
        )
    })
}

/// `N 45 E along creek 120'`: what a call runs along, before its length.
fn call_along(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let from =
        typed.says(first, &["n", "s", "north", "south"]) && typed.piece(first + 1)?.is_number();
    let toward = (first + 2..first + 9).find(|&at| typed.says(at, &["e", "w", "east", "west"]))?;
    let along = toward + 1;
    let says = typed.says(along, &["along", "by", "with", "down", "up", "following"]);
    let at = (along + 1..typed.pieces.len()).find(|&at| length_at(&typed.pieces, at).is_some())?;
    let length = length_at(&typed.pieces, at).filter(|length| length.end == typed.pieces.len())?;
    let plain =
        (along..at).all(|at| typed.pieces[at].sort == Sort::Word || typed.pieces[at].is_mark(",;"));
    let small = |at: usize| typed.says(at, &["a", "distance", "of", "for"]);
    let end = (along..at).rev().find(|&at| !small(at) && !typed.pieces[at].is_mark(",;"))? + 1;
    (from && says && plain && typed.is_in_lot()).then(|| {
        Answer::line(
            format!(
                "bearing {} {} note {}",
                typed.text(first, along),
                length.text,
                quoted(typed.text(along, end).trim_matches([',', ';', ' ']))
            ),
            "a call has its bearing, then its length; what it runs along goes in a note",
        )
    })
}

/// `same as the north wall`: a length that is on another line.
fn same_as_a_wall(typed: &Typed<'_>) -> Option<Answer> {
    let the = typed.says(2, &["the"]);
    let way = typed.lower(3);
    let ends = typed.pieces.len() == 5 && typed.says(4, &["wall", "side"]);
    let is_way = ["north", "east", "south", "west"].contains(&way.as_str());
    (typed.says(0, &["same"]) && typed.says(1, &["as"]) && the && ends && is_way).then(|| {
        Answer::say(
            "a wall has its own way and its own length",
            format!(
                "write the way that this wall runs, `north`, `east`, `south` or `west`, and after it the length of the {way} wall again; if it was not measured, the way and `by closing`"
            ),
        )
    })
}
