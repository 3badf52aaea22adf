//! Lines that a word too many, a misspelled unit or the marks of a table keep from being read.

use super::super::pieces::{Piece, Sort, replaced};
use super::levels::capitalized;
use super::loose::kind_at_start;
use super::measure::length_at;
use super::published::FIGURES;
use super::walls::{WAYS, is_way};
use super::{Answer, Rule, Typed, digits, faces, first_of, is_text, kind_word};
use crate::diagnostic::words::nearest;
use crate::units::decimal::thousands;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        record_for_recorded,
        words_before_the_name,
        basement_with_sides,
        start_on_the_drawing,
        start_from_the_house,
        start_by_its_lengths,
        numbered_comparable,
        cells_with_decimal_commas,
        letters_in_an_area,
        misspelled_unit,
        side_of_the_house,
        stray_word,
        subject_property,
    ];
    first_of(rules, typed)
}

/// `garage "Garage" start east 42' record 440 sf`: what is `record` at the beginning of a line is `recorded` later on.
fn record_for_recorded(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(1, &["record"])?;
    let is_space = kind_word(&typed.lower(0)).is_some() || typed.says(0, &["lot", "missing"]);
    // `deck record 120`: no name yet. `barn "Barn" 40 m north, record 120`: more than this word is wrong.
    let is_named = is_space && is_text(typed.piece(1)) && (at == 2 || typed.says(2, &AFTER));
    let is_wall = is_way(typed, 0) && length_at(&typed.pieces, 1).is_some_and(|one| one.end == at)
        || typed.says(0, &["bearing", "diagonal", "arc"]);
    let has_number = typed.piece(at + 1).is_some_and(Piece::is_number);
    ((is_named || is_wall) && has_number).then(|| {
        Answer::line(
            format!("{} recorded {}", typed.text(0, at), typed.rest(at + 1)),
            "`record` begins a line of its own: here it is `recorded`",
        )
    })
}

/// Words that may follow the name of a space.
const AFTER: [&str; 10] = [
    "start", "from", "within", "detached", "measured", "recorded", "counted", "not", "under",
    "veneer",
];

/// `unfinished basement "Cellar"`, `open to below "Foyer" start east 12'`: words between the kind and the name.
fn words_before_the_name(typed: &Typed<'_>) -> Option<Answer> {
    let kind = kind_word(&typed.lower(0))?;
    let words: &[&str] = match kind {
        "open" => &["to", "below", "the", "floor", "space", "area", "above", "foyer", "hall"],
        "unfinished" => &["basement", "cellar", "attic", "area", "space", "storage", "room"],
        _ => &["area", "space"],
    };
    let name = (1..typed.pieces.len()).find(|&at| !typed.says(at, words)).filter(|at| *at > 1)?;
    let follows = name + 1 == typed.pieces.len() || typed.says(name + 1, &AFTER);
    (is_text(typed.piece(name)) && follows).then(|| {
        Answer::line(
            format!("{kind} {}", typed.rest(name)),
            "the name comes right after what the space is",
        )
    })
}

/// `unfinished basement` above sides: a space, since a level has none.
fn basement_with_sides(typed: &Typed<'_>) -> Option<Answer> {
    let is_space = typed.says(0, &["unfinished"])
        && typed.pieces.len() == 2
        && typed.says(1, &["basement", "cellar", "attic"])
        && super::super::begins_as_side(&typed.attempt.beside.after);
    is_space.then(|| {
        Answer::line(
            format!("unfinished \"{}\"", capitalized(&typed.lower(1))),
            "a space has its kind and its name, with a `\"` on each side",
        )
    })
}

/// `deck "Deck" start 27' 8" up and 9' over`: ways as they are on a drawing.
fn start_on_the_drawing(typed: &Typed<'_>) -> Option<Answer> {
    let (kind, name) = kind_at_start(typed)?;
    let start = typed.find(name + 1, &["start", "starts", "starting"])?;
    let mut at = start + 1;
    let mut steps: Vec<(String, Vec<&str>)> = Vec::new();
    while let Some(length) = length_at(&typed.pieces, at).filter(|one| one.has_unit) {
        let ways = match typed.lower(length.end).as_str() {
            "up" => vec!["north"],
            "down" => vec!["south"],
            "right" => vec!["east"],
            "left" => vec!["west"],
            "over" | "across" => vec!["east", "west"],
            "north" => vec!["north"],
            "south" => vec!["south"],
            "east" => vec!["east"],
            "west" => vec!["west"],
            _ => return None,
        };
        steps.push((length.text, ways));
        at = length.end + 1;
        at += usize::from(typed.says(at, &["and"]) || is_comma(typed.piece(at)));
    }
    let [one, two] = &steps[..] else { return None };
    if !is_text(typed.piece(name)) || start != name + 1 || at != typed.pieces.len() {
        return None;
    }
    let name = typed.text(name, name + 1);
    let lines: Vec<String> = one
        .1
        .iter()
        .flat_map(|first| two.1.iter().map(move |second| (first, second)))
        .map(|(first, second)| format!("{kind} {name} start {first} {} {second} {}", one.0, two.0))
        .collect();
    (lines.len() <= 2).then(|| {
        Answer::Lines(
            lines,
            "where a space starts is told by the ways of the file, each before its length"
                .to_owned(),
        )
    })
}

/// `shed "Shed" start north 60' east 0 from house`: a start is counted from where the first walk of the level begins.
fn start_from_the_house(typed: &Typed<'_>) -> Option<Answer> {
    let (_, name) = kind_at_start(typed)?;
    typed.says(name + 1, &["start"]).then_some(())?;
    let from = typed.find(name + 2, &["from", "of"])?;
    let is_house = |piece: &Piece| {
        let text = piece.text.trim_matches('"').to_lowercase();
        let house = typed.attempt.house.as_deref().unwrap_or_default().to_lowercase();
        text == house || piece.is_word(&["the", "house", "origin", "main"])
    };
    let rest =
        typed.pieces.get(from + 1..).filter(|rest| !rest.is_empty() && rest.iter().all(is_house));
    rest.map(|_| {
        let start = typed.text(0, from);
        let start = [" north 0", " south 0", " east 0", " west 0"]
            .iter()
            .find_map(|zero| start.strip_suffix(zero))
            .unwrap_or(start);
        Answer::line(start, "a start is counted from where the first walk of its level begins, so that nothing stands after it")
    })
}

/// `stairs "Stairs" 3' east 8' north`, `stairs "Stairs" east 3' north 8'`: where it starts, without `start`.
fn start_by_its_lengths(typed: &Typed<'_>) -> Option<Answer> {
    let (kind, name) = kind_at_start(typed)?;
    let mut at = name + 1;
    let mut steps = Vec::new();
    let is_way_first = typed.says(at, &WAYS[..4]);
    let skipped = usize::from(is_way_first);
    while let Some(length) = length_at(&typed.pieces, at + skipped).filter(|one| one.has_unit) {
        let way = if is_way_first { at } else { length.end };
        if !typed.says(way, &WAYS[..4]) {
            return None;
        }
        steps.push((typed.lower(way), length.text));
        at = length.end + 1 - skipped;
        at += usize::from(typed.says(at, &["and"]) || is_comma(typed.piece(at)));
    }
    let [(one, first), (two, second)] = &steps[..] else { return None };
    let upright = |way: &str| ["north", "south"].contains(&way);
    let ends = at == typed.pieces.len() || typed.says(at, &AFTER[2..]);
    (is_text(typed.piece(name)) && ends && upright(one) != upright(two)).then(|| {
        let line = format!(
            "{kind} {} start {one} {first} {two} {second} {}",
            typed.text(name, name + 1),
            typed.rest(at)
        );
        Answer::line(
            line.trim_end(),
            "where a space starts is `start`, then each way before its length",
        )
    })
}

fn is_comma(piece: Option<&Piece>) -> bool {
    piece.is_some_and(|piece| piece.is_mark(","))
}

/// `comp 1 "8 Larch Court" 1,180 sf sold $238,000 on 2025-08-14`: a number before the name of a comparable.
fn numbered_comparable(typed: &Typed<'_>) -> Option<Answer> {
    let number = 1 + usize::from(
        typed.piece(1).is_some_and(|mark| mark.is_mark("#")) || typed.says(1, &["no", "number"]),
    );
    let mut name = number + 1;
    while typed.piece(name).is_some_and(|mark| mark.is_mark(".:)-–,")) {
        name += 1;
    }
    let begins = typed.says(0, &["comp", "comparable", "sale", "comps"]);
    let is_numbered = typed.piece(number).is_some_and(digits::is_small);
    (begins && is_numbered && is_text(typed.piece(name))).then(|| {
        Answer::line(
            format!(
                "comparable {}  # {}",
                typed.rest(name),
                typed.text(0, number + 1).replace('#', "")
            ),
            "a comparable begins with `comparable` and its name",
        )
    })
}

/// `East;42,625;ft`: cells of a table where the comma begins the decimals.
fn cells_with_decimal_commas(typed: &Typed<'_>) -> Option<Answer> {
    let cells: Vec<&str> =
        typed.line.split(';').map(str::trim).filter(|cell| !cell.is_empty()).collect();
    let way = cells.iter().position(|cell| WAYS.contains(&cell.to_lowercase().as_str()))?;
    let is_digits = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
    let (whole, decimals) = cells.get(way + 1)?.split_once(',')?;
    let number = decimals.find(|c: char| !c.is_ascii_digit()).unwrap_or(decimals.len());
    if !is_digits(whole) || number == 0 || cells.len() < 2 || typed.line.contains('"') {
        return None;
    }
    let length = format!("{whole}.{decimals}");
    let line = format!("{} {length} {}", cells[way].to_lowercase(), cells[way + 2..].join(" "));
    Some(Answer::line(
        line.trim_end(),
        "a side is a way and a length, without marks between them, and decimals take a point",
    ))
}

/// `record l,25O sq ft`: letters in an area.
fn letters_in_an_area(typed: &Typed<'_>) -> Option<Answer> {
    let words: Vec<&str> = typed.line.split(' ').collect();
    let is_area = |at: usize| {
        let after = words[at - 1].to_lowercase();
        after == "recorded" || at == 1 && FIGURES.contains(&after.as_str())
    };
    let at = (1..words.len()).find(|&at| is_area(at))?;
    let typed_number = words[at];
    let number: Option<String> = typed_number
        .chars()
        .map(|c| if matches!(c, ',' | '.') { Some(c) } else { digits::digit(c) })
        .collect();
    let number = number.filter(|number| number != typed_number)?;
    let has_digit = typed_number.contains(|c: char| c.is_ascii_digit());
    let unit = words.get(at + 1).is_none_or(|unit| {
        ["sq", "sqft", "sf", "square", "sqm", "m²", "acres", "acre"]
            .contains(&unit.trim_end_matches('.').to_lowercase().as_str())
    });
    (has_digit && unit).then(|| {
        let mut words = words.clone();
        words[at] = &number;
        Answer::line(
            words.join(" "),
            "a letter is typed in a number: O for 0, l for 1, S for 5 or B for 8",
        )
    })
}

/// `record 1250 sqaure feet`, `recorded 440 sq fet`: the unit of an area with a letter wrong.
fn misspelled_unit(typed: &Typed<'_>) -> Option<Answer> {
    let at = (1..typed.pieces.len()).find(|&at| {
        typed.pieces[at].is_number()
            && (typed.says(at - 1, &["recorded"]) || at == 1 && typed.says(0, &FIGURES))
    })?;
    let word =
        |at: usize| typed.piece(at).filter(|piece| piece.sort == Sort::Word && !piece.touches);
    let square = word(at + 1)?.text.to_lowercase();
    let own = ["sq", "square"].contains(&square.as_str());
    let is_near = square.starts_with(['s', 'q'])
        && square.contains('q')
        && nearest(&square, &["square"]).is_some();
    if !own && !is_near {
        return None;
    }
    let point = usize::from(typed.piece(at + 2).is_some_and(|piece| piece.is_mark(".")));
    let of = at + 2 + point;
    let units = ["ft", "feet", "foot", "m", "meter", "meters", "metre", "metres"];
    let meant = match typed.lower(of).as_str() {
        "fit" | "fts" | "feets" | "foots" | "fet" | "fee" | "f" => Some("feet"),
        unit => units
            .iter()
            .find(|own| **own == unit)
            .copied()
            .or_else(|| nearest(unit, &["feet", "foot", "meters", "metres"])),
    };
    let unit = meant.filter(|_| word(of).is_some())?;
    if own && unit == typed.lower(of) {
        return None;
    }
    let square = if own { square.as_str() } else { "square" };
    let number = &typed.pieces[at].text;
    let whole = number.parse::<i64>().ok().filter(|_| at == 1 && number.len() > 3);
    let number = whole.map_or_else(|| number.clone(), thousands);
    let by = [Piece::new(Sort::Number, number), Piece::word(square), Piece::word(unit)];
    let line = super::join(&replaced(&typed.pieces, at, of + 1, &by));
    Some(Answer::line(line, "the unit of an area is `square feet` or `sq ft`"))
}

/// `back of the house: 42' 7 1/2"`: where the wall stands.
fn side_of_the_house(typed: &Typed<'_>) -> Option<Answer> {
    let stands = ["back", "front", "rear", "left", "right", "north", "south", "east", "west"];
    let side = 1 + usize::from(typed.says(1, &["side", "wall"]));
    let house = side + 1 + usize::from(typed.says(side + 1, &["the", "my", "our"]));
    if !typed.says(0, &stands)
        || !typed.says(side, &["of"])
        || !typed.says(house, &["house", "home"])
    {
        return None;
    }
    let mut at = house + 1;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(":=,-–")) || typed.says(at, &["is"]) {
        at += 1;
    }
    let length = length_at(&typed.pieces, at).filter(|length| length.has_unit)?;
    if typed.attempt.beside.front.is_none() && !typed.says(0, &WAYS) {
        return Some(Answer::say(
            format!(
                "`{}` says where the wall stands, and a side begins with the way that you walked along it",
                typed.text(0, house + 1)
            ),
            format!(
                "write `north`, `east`, `south` or `west`, as you walked along it, and then `{}`",
                length.text
            ),
        ));
    }
    let line = format!("{} wall {}", typed.text(0, 1), typed.rest(at));
    let short = Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt };
    let Answer::Lines(lines, cause) = faces::named_by_its_side(&short)? else { return None };
    let said = format!("`{} wall`", typed.text(0, 1));
    Some(Answer::Lines(lines, cause.replace(&said, &format!("`{}`", typed.text(0, house + 1)))))
}

/// `north 28' 4" not`: a word that a keyboard suggested, and nothing after it.
fn stray_word(typed: &Typed<'_>) -> Option<Answer> {
    let word = &typed.piece(0).filter(|word| word.sort == Sort::Word)?.text;
    let way = match is_way(typed, 0) {
        true => word.to_lowercase(),
        false => nearest(word, &WAYS[..4])?.to_owned(),
    };
    let length = length_at(&typed.pieces, 1).filter(|length| length.has_unit)?;
    let is_last = length.end + 1 == typed.pieces.len();
    (is_last && typed.says(length.end, &["not", "now", "so", "but", "the"])).then(|| {
        Answer::line(
            format!("{way} {}  # {}", length.text, typed.lower(length.end)),
            format!(
                "`{}` says nothing here: a wall has its way and its length",
                typed.lower(length.end)
            ),
        )
    })
}

/// `subject property 12 Elm Street`: the name of the house.
fn subject_property(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["subject"]) && typed.says(1, &["property"]);
    let mut at = 2;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(":=-–")) {
        at += 1;
    }
    (begins && at < typed.pieces.len()).then(|| {
        Answer::line(
            format!("property {}", typed.rest(at)),
            "the name of the house goes after `property`",
        )
    })
}

/// `Sout 28' 4" yes`: a misspelled way, and more that cannot be read.
pub(super) fn way(typed: &Typed<'_>) -> Option<Answer> {
    let word = typed.piece(0).filter(|word| word.sort == Sort::Word)?;
    // `weast 40'`
    if let Some(ways) = crate::diagnostic::words::between_two_ways(&word.text)
        .filter(|_| !is_way(typed, 0) && length_at(&typed.pieces, 1).is_some())
    {
        return Some(Answer::Lines(
            ways.map(|way| format!("{way} {}", typed.rest(1))).into(),
            format!("`{}` is as near to one way as to the other", word.text),
        ));
    }
    let way = nearest(&word.text, &WAYS[..4]).filter(|_| !is_way(typed, 0))?;
    let length = length_at(&typed.pieces, 1).filter(|length| length.has_unit)?;
    (length.end < typed.pieces.len() && !typed.attempt.knows_first).then(|| {
        Answer::line(
            format!("{way} {}", typed.rest(1)),
            format!("`{}` is not a word of a sides file", word.text),
        )
    })
}
