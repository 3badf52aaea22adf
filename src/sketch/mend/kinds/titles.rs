//! Words for the house as a whole on a line by themselves: `Farmhouse`, `22 Chandler, row house`, `house on Wren Lane`.

use super::super::pieces::{Piece, Sort};
use super::levels::capitalized;
use super::{Answer, Rule, Typed, first_of, quoted};

const DWELLINGS: [&str; 21] = [
    "farmhouse",
    "cottage",
    "bungalow",
    "townhouse",
    "townhome",
    "rowhouse",
    "row-house",
    "cabin",
    "ranch",
    "rambler",
    "duplex",
    "condo",
    "condominium",
    "house",
    "home",
    "residence",
    "colonial",
    "cape",
    "split-level",
    "villa",
    "chalet",
];
const STREETS: [&str; 18] = [
    "lane", "street", "road", "avenue", "ave", "drive", "court", "way", "place", "st", "rd", "dr",
    "ln", "row", "hill", "highway", "terrace", "lake",
];

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] =
        &[number_and_dwelling, on_a_street, one_word, bricked_house, rooms_above_walls, attic];
    first_of(rules, typed)
}

/// Whether walls follow the line, which would then belong to no space.
fn follows(typed: &Typed<'_>) -> bool {
    super::super::begins_as_side(&typed.attempt.beside.after)
}

/// What heads the file, with the lines that its walls need if they follow.
fn heads(typed: &Typed<'_>, head: &str) -> Option<Answer> {
    let beside = &typed.attempt.beside;
    let is_begun = typed.attempt.space.is_some() || beside.before.starts_with("level ");
    if is_begun {
        return None;
    }
    let (line, cause) = match follows(typed) {
        true => (
            format!("{head}\nlevel \"Ground floor\"\nliving \"House\""),
            "this line is about the house as a whole; its walls stand below a level and a space",
        ),
        false => (head.to_owned(), "the name or address of the house is a line of its own"),
    };
    Some(Answer::line(line, cause))
}

/// `22 Chandler, row house`.
fn number_and_dwelling(typed: &Typed<'_>) -> Option<Answer> {
    let comma = (2..typed.pieces.len()).find(|&at| typed.pieces[at].is_mark(","))?;
    let number = typed.piece(0)?;
    let is_name = |at: usize| {
        let piece = &typed.pieces[at];
        piece.sort == Sort::Word && piece.text.starts_with(char::is_uppercase)
    };
    let fits = number.is_number()
        && number.text.chars().all(|c| c.is_ascii_digit())
        && comma <= 4
        && (1..comma).all(is_name)
        && !super::measures(typed.text(0, comma));
    let rest = comma + 1..typed.pieces.len();
    let dwelling = rest.clone().any(|at| typed.says(at, &DWELLINGS));
    let plain = rest.clone().all(|at| typed.pieces[at].sort == Sort::Word) && rest.len() <= 4;
    if !fits || !dwelling || !plain {
        return None;
    }
    heads(typed, &format!("address {}  # {}", quoted(typed.text(0, comma)), typed.rest(comma + 1)))
}

/// `house on Wren Lane`, `our cabin on the lake`, `house: 19 Tanager Way`.
fn on_a_street(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["the", "our", "my"]));
    let last = typed.pieces.len().checked_sub(1)?;
    // `house: 19 Tanager Way`, `home 19 Tanager Way`
    let is_mark = typed.piece(first + 1).is_some_and(|mark| mark.is_mark(":-–—=,"));
    let number = first + if is_mark || typed.says(first + 1, &["on", "at", "by"]) { 2 } else { 1 };
    let is_number =
        |piece: &Piece| piece.is_number() && piece.text.chars().all(|c| c.is_ascii_digit());
    let is_set_off = typed.piece(number).is_some_and(is_number)
        && typed.piece(number + 1).is_some_and(|name| name.text.starts_with(char::is_uppercase))
        && (number + 2..=last).any(|at| typed.says(at, &STREETS));
    let plain = (0..typed.pieces.len()).all(|at| {
        typed.pieces[at].sort == Sort::Word
            || at == number && typed.pieces[at].is_number()
            || is_set_off && (at == first + 1 || typed.pieces[at].is_mark(",."))
    });
    let last_word = first + if is_set_off { 9 } else { 5 };
    let fits = typed.says(first, &DWELLINGS)
        && (typed.says(first + 1, &["on", "at", "by"]) || is_set_off)
        && (is_set_off
            || typed.says(last, &STREETS)
            || typed.piece(number).is_some_and(Piece::is_number))
        && last > first + 1
        && last <= last_word;
    if !fits || !plain {
        return None;
    }
    let head = match typed.piece(number).is_some_and(Piece::is_number) {
        true => format!("address {}", quoted(typed.rest(number))),
        false => format!("property {}", quoted(&capitalized(typed.text(first, last + 1)))),
    };
    heads(typed, &head)
}

/// `Farmhouse`, `Cottage`: above walls the space, else the name of the house.
fn one_word(typed: &Typed<'_>) -> Option<Answer> {
    let [only] = &typed.pieces[..] else { return None };
    let is_house = only.is_word(&["house", "home", "residence"]);
    if !only.is_word(&DWELLINGS) || is_house || typed.attempt.house.is_some() {
        return None;
    }
    let name = quoted(&capitalized(&only.text.to_lowercase()));
    // `start at front left corner`, `up 8,42 m`: a walk begins here, in other words.
    let next = typed.attempt.beside.after.split_whitespace().next().unwrap_or_default();
    let begins =
        ["start", "starts", "starting", "begin", "begins", "beginning", "up", "down", "go"];
    let walk_begins = begins.iter().any(|word| next.eq_ignore_ascii_case(word))
        || super::super::compass::way_and_back(next).is_some();
    match follows(typed) || walk_begins {
        true => Some(Answer::line(
            format!("living {name}"),
            "finished and heated space is `living`; its walls follow",
        )),
        false => heads(typed, &format!("property {name}")),
    }
}

/// `main house - brick`, `the house (brick veneer)` above its walls: the space, and how thick its brick is.
fn bricked_house(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["the", "our", "my", "main"]));
    let first = first + usize::from(typed.says(first, &["main"]));
    let is_house = typed.says(first, &["house", "home", "residence", "dwelling"]);
    let rest = first + 1..typed.pieces.len();
    let words =
        ["brick", "stone", "veneer", "all", "is", "with", "walls", "masonry", "of", "faced"];
    let plain =
        rest.clone().all(|at| typed.says(at, &words) || typed.pieces[at].is_mark(",;:()-–."));
    let has_brick = typed.find(first, &["brick", "stone", "masonry"]).is_some();
    if !is_house || !plain || !has_brick || !follows(typed) {
        return None;
    }
    let name = quoted(&capitalized(&typed.text(0, first + 1).to_lowercase()));
    let name = if first == 0 || typed.says(0, &["the", "our", "my"]) && first == 1 {
        "\"House\"".to_owned()
    } else {
        name
    };
    let said = super::remark(typed.rest(first + 1));
    Some(match typed.attempt.beside.has_brick {
        true => Answer::line(
            format!("living {name}  # {said}"),
            "the file says above how thick the brick is; a comment begins with `#`",
        ),
        false => Answer::line(format!("living {name} veneer 4 5/8\""), super::super::BRICK_IS),
    })
}

/// `bedrooms 1-3` right below a level and above walls: the space on it.
fn rooms_above_walls(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["bedrooms", "bedroom", "rooms", "beds"]);
    let is_first = typed.attempt.beside.before.starts_with("level ");
    let plain = typed.pieces.iter().all(|piece| {
        piece.sort == Sort::Word
            || piece.is_number() && piece.text.len() == 1
            || piece.is_mark("-–&,/+")
    });
    let more = typed.pieces.iter().any(Piece::is_number) && typed.pieces.len() <= 8;
    (begins && is_first && plain && more && follows(typed)).then(|| {
        Answer::line(
            format!("living {}", quoted(&capitalized(typed.line.trim()))),
            "finished and heated space is `living`; its walls follow",
        )
    })
}

/// `attic` after the walls of a floor: a level of its own.
fn attic(typed: &Typed<'_>) -> Option<Answer> {
    let is_attic = typed.pieces.len() == 1 && typed.says(0, &["attic", "loft"]);
    let next = super::cut(&typed.attempt.beside.after);
    let opens =
        next.first().is_some_and(|word| super::kind_word(&word.text.to_lowercase()).is_some());
    if !is_attic || typed.attempt.house.is_none() || opens {
        return None;
    }
    let name = quoted(&capitalized(&typed.lower(0)));
    Some(Answer::Lines(
        ["unfinished", "living"].map(|kind| format!("level {name}\n{kind} {name}")).into(),
        "an attic is a level of its own, and its walls belong to a space on it: is it finished?"
            .to_owned(),
    ))
}
