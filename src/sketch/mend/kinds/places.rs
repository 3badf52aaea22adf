//! Suggestions for where a space begins: directions after lengths, corners named by the compass, `behind the house`.

use super::super::compass::slant;
use super::measure::{length_at, lengths};
use super::spaces::is_space;
use super::{About, Answer, Rule, Typed, first_of, is_text, remark};

const WAYS: [&str; 10] = ["north", "east", "south", "west", "n", "e", "s", "w", "up", "down"];
/// `ne`, `south-west`, `rear`: which corner of a house.
fn is_corner(typed: &Typed<'_>, at: usize) -> bool {
    typed.says(at, &["rear", "front", "back", "far"]) || slant(&typed.lower(at)).is_some()
}

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if !is_space(typed) || !is_text(typed.piece(1)) {
        return None;
    }
    let rules: &[Rule] = &[
        counted_no,
        inside_the_house,
        start_without_ways,
        start_from,
        offsets,
        numbered_corner,
        at_a_text,
        named_corner,
        compass_corner,
        beside_something,
    ];
    first_of(rules, typed)
}

/// `counted: no`, `counted = no`: not counted.
fn counted_no(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(2, &["counted", "count", "counts", "included"])?;
    let mut no = at + 1;
    while typed.piece(no).is_some_and(|mark| mark.is_mark(":=?-–")) {
        no += 1;
    }
    typed.says(no, &["no", "n", "not", "none", "false"]).then(|| {
        let line = format!("{} not counted {}", typed.text(0, at), typed.rest(no + 1));
        Answer::line(line.trim_end(), "what is left out of the total is `not counted`")
    })
}

/// `inside House`, `inside the house`: within it, and not measured to its inside.
fn inside_the_house(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(2, &["inside", "in", "within"])?;
    let mut end = at + 1;
    while typed.says(end, &["of", "the", "main"]) {
        end += 1;
    }
    let name = house(typed);
    let count = name.split_whitespace().count();
    let is_name =
        typed.text(end, (end + count).min(typed.pieces.len())).eq_ignore_ascii_case(&name);
    let last = if is_name { end + count } else { end + 1 };
    let is_house = is_name || typed.says(end, &["house", "home", "walk", "outline", "footprint"]);
    (is_house && typed.find(2, &["measured"]).is_none()).then(|| {
        let before = typed.text(0, at).trim_end_matches([',', ' ']);
        let line = format!("{before} within \"{name}\" {}", typed.rest(last));
        let line = in_order(line.trim_end());
        Answer::line(
            line,
            format!(
                "what lies under the same roof, in the walk of `{name}`, is `within \"{name}\"`; where it starts comes after that"
            ),
        )
    })
}

/// The line with `within` before its place.
fn in_order(line: &str) -> String {
    let (Some(place), Some(within)) = (line.find(" start "), line.find(" within \"")) else {
        return line.to_owned();
    };
    if within < place {
        return line.to_owned();
    }
    let end = line[within + 9..].find('"').map_or(line.len(), |at| within + 10 + at);
    format!("{}{}{}{}", &line[..place], &line[within..end], &line[place..within], &line[end..])
}

/// `start (44' 7", 0)`, `start 44' 7"`: lengths without their directions.
fn start_without_ways(typed: &Typed<'_>) -> Option<Answer> {
    let start = typed.find(2, &["start", "starts", "at", "offset"])?;
    let mark = |at: usize| {
        typed.piece(at).is_some_and(|piece| {
            piece.is_mark("(),;:=/") || piece.is_word(&["and", "by", "x", "at", "y"])
        })
    };
    let mut at = start + 1;
    let mut found: Vec<(String, bool)> = Vec::new();
    while at < typed.pieces.len() {
        if mark(at) {
            at += 1;
        } else if let Some(measure) =
            length_at(&typed.pieces, at).filter(|measure| measure.has_unit || measure.text == "0")
        {
            at = measure.end;
            found.push((measure.text.clone(), measure.length.nm() == 0));
        } else if typed.piece(at)?.text == "0" {
            at += 1;
            found.push(("0".to_owned(), true));
        } else {
            break;
        }
    }
    let ends = at == typed.pieces.len()
        || typed.says(at, &["recorded", "within", "measured", "not", "counted", "veneer"]);
    let lengths: Vec<&String> =
        found.iter().filter(|(_, is_zero)| !is_zero).map(|(text, _)| text).collect();
    if !ends || found.is_empty() || found.len() > 2 || typed.says(at, &WAYS) {
        return None;
    }
    let places: Vec<String> = match lengths[..] {
        [one] => ["east", "north"].iter().map(|way| format!("{way} {one}")).collect(),
        [one, two] => vec![format!("east {one} north {two}"), format!("north {one} east {two}")],
        _ => return None,
    };
    let line = |place: &String| {
        format!("{} start {place} {}", typed.text(0, start), typed.rest(at)).trim_end().to_owned()
    };
    Some(Answer::Lines(
        places.iter().map(line).collect(),
        "a place says which way each of its lengths runs, from where the house's first walk starts"
            .to_owned(),
    ))
}

/// `starts 27' 8" north, 9' east`: the direction comes before the length.
fn offsets(typed: &Typed<'_>) -> Option<Answer> {
    let mut found = Vec::new();
    let all = lengths(&typed.pieces, 2);
    let mut end = 0;
    for (first, measure) in &all {
        let way = measure.end + usize::from(typed.says(measure.end, &["to", "due", "the"]));
        if typed.says(way, &WAYS) && (found.is_empty() || *first <= end + 2) {
            let word = match typed.lower(way).as_str() {
                "n" | "up" => "north".to_owned(),
                "s" | "down" => "south".to_owned(),
                "e" => "east".to_owned(),
                "w" => "west".to_owned(),
                word => word.to_owned(),
            };
            found.push((*first, word, measure.text.clone()));
            end = way + 1;
        }
    }
    let (first, ..) = found.first().filter(|_| found.len() <= 2)?;
    // `start north 27' east 9'` is already right.
    if typed.says(first - 1, &WAYS) {
        return None;
    }
    let filler =
        ["start", "starts", "starting", "begins", "at", "offset", "located", "is", "about"];
    let before = typed.pieces[..*first]
        .iter()
        .rev()
        .take_while(|piece| piece.is_word(&filler) || piece.is_mark("@:,=("))
        .count();
    let mut stop = end;
    // `of corner 1`, `of the origin`.
    if typed.says(stop, &["of", "from"]) {
        while typed.piece(stop).is_some()
            && !typed.says(
                stop,
                &["recorded", "measured", "within", "veneer", "not", "counted", "under"],
            )
        {
            stop += 1;
        }
    }
    let place: Vec<String> =
        found.iter().map(|(_, way, length)| format!("{way} {length}")).collect();
    let line =
        format!("{} start {} {}", typed.text(0, first - before), place.join(" "), typed.rest(stop));
    Some(Answer::line(
        line.trim_end(),
        "a place is `start` with each direction before its length, counted from where the house's first walk starts",
    ))
}

/// `start east 44' 5" from corner 1`: leaves out `from corner 1`, from which every start is counted anyway.
fn start_from(typed: &Typed<'_>) -> Option<Answer> {
    let start = typed.find(2, &["start"]).filter(|start| typed.says(start + 1, &WAYS))?;
    let from = typed.find(start + 2, &["from", "of"])?;
    let corner = typed.find(from + 1, &["corner"]).filter(|corner| *corner <= from + 2)?;
    let number = typed.piece(corner + 1).filter(|number| number.is_number())?;
    let cause = "a `start` is counted from where the house's first walk starts, its corner 1";
    if number.text == "1" {
        let line = format!("{} {}", typed.text(0, from), typed.rest(corner + 2));
        return Some(Answer::line(line.trim_end(), cause));
    }
    Some(Answer::say(
        cause,
        "give the way from there, or instead of `start` write `from`, the name of the space, `corner` and its number",
    ))
}

/// `at corner 4 of house`, `at "House" corner 4`: puts the space first, then the number.
fn numbered_corner(typed: &Typed<'_>) -> Option<Answer> {
    let corner = typed.find(2, &["corner"])?;
    let words = [
        "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
        "twelve",
    ];
    if let Some(number) = words.iter().position(|word| typed.says(corner + 1, &[word])) {
        let line =
            format!("{} {} {}", typed.text(0, corner + 1), number + 1, typed.rest(corner + 2));
        return Some(Answer::line(line.trim_end(), "numbers are written in digits"));
    }
    let number =
        typed.piece(corner + 1).filter(|number| number.is_number() && number.text.len() <= 2)?;
    let begins =
        ["at", "from", "on", "the", "start", "starts", "attached", "to", "off", "next", "beside"];
    let house_name = house(typed);
    let is_house = corner > 2
        && typed.piece(corner - 1).is_some_and(|word| {
            word.is_word(&["house"]) || word.text.eq_ignore_ascii_case(&house_name)
        });
    let has_name = corner - 1 > 1 && (is_text(typed.piece(corner - 1)) || is_house);
    let mut first = if has_name { corner - 1 } else { corner };
    while first > 2 && typed.says(first - 1, &begins) {
        first -= 1;
    }
    let mut end = corner + 2;
    let name = if has_name {
        if typed.says(corner - 2, &["from"])
            && typed.says(first, &["from"])
            && first == corner - 2
            && !is_house
        {
            return None;
        }
        if is_house {
            format!("\"{house_name}\"")
        } else {
            typed.text(corner - 1, corner).to_owned()
        }
    } else if typed.says(end, &["of", "on", "in"]) {
        end += 1;
        while typed.says(end, &["the", "main"]) {
            end += 1;
        }
        let of = typed.piece(end)?;
        end += 1;
        let house = house(typed);
        if of.sort == super::Sort::Text {
            of.text.clone()
        } else if of.text.eq_ignore_ascii_case(&house) || of.is_word(&["house"]) {
            format!("\"{house}\"")
        } else {
            format!("\"{}\"", of.text)
        }
    } else {
        return None;
    };
    let line =
        format!("{} from {name} corner {} {}", typed.text(0, first), number.text, typed.rest(end));
    Some(Answer::line(
        line.trim_end(),
        "a place is `from`, the name of the space, `corner` and its number",
    ))
}

/// `starts at "porch"`: suggests the missing word `corner`, or asks for the number of a corner.
fn at_a_text(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.find(2, &["starts", "start", "begins", "starting", "at"])?;
    let mut text = first;
    while typed.says(text, &["starts", "start", "begins", "starting", "at", "from", "the"]) {
        text += 1;
    }
    let name = typed.piece(text).filter(|name| is_text(Some(name)))?;
    if typed.says(text + 1, &["corner"]) {
        return None;
    }
    let house = house(typed);
    if name.text.trim_matches(['"', '“', '”']).eq_ignore_ascii_case(&house) {
        return Some(Answer::say(
            format!("a place at `{house}` is at one of its corners"),
            format!("write `from \"{house}\" corner` and the number of the corner"),
        ));
    }
    let line =
        format!("{} from corner {} {}", typed.text(0, first), name.text, typed.rest(text + 1));
    Some(Answer::line(line.trim_end(), "the word `corner` comes before the corner's name"))
}

/// `from porch corner`, `from the porch corner`: suggests a corner with a name.
fn named_corner(typed: &Typed<'_>) -> Option<Answer> {
    let from = typed.find(2, &["from", "at", "starts", "start"])?;
    let corner = typed.find(from + 1, &["corner"])?;
    let number =
        typed.piece(corner + 1).is_some_and(|next| next.is_number() || is_text(Some(next)));
    let mut name = from + 1;
    while typed.says(name, &["the", "from", "at"]) {
        name += 1;
    }
    if number
        || corner != name + 1
        || is_corner(typed, name)
        || is_corner(typed, corner + 1)
        || typed.says(corner + 1, &["of", "number", "no", "one", "two", "three", "four"])
    {
        return None;
    }
    let text = typed.text(name, corner).trim_matches(['"', '“', '”']).to_owned();
    let line = format!("{} from corner \"{text}\" {}", typed.text(0, from), typed.rest(corner + 1));
    Some(Answer::line(line.trim_end(), "the word `corner` comes before the corner's name"))
}

/// The house that a place is counted from.
fn house(typed: &Typed<'_>) -> String {
    typed
        .attempt
        .house
        .clone()
        .or_else(|| typed.attempt.space.clone())
        .unwrap_or_else(|| "House".to_owned())
}

/// `at SE corner of "House"`, `NE corner of house`: asks for the number of the corner.
fn compass_corner(typed: &Typed<'_>) -> Option<Answer> {
    // `from "House" corner SE`
    if let Some(corner) = typed.find(2, &["corner"]).filter(|corner| is_corner(typed, corner + 1)) {
        let house = house(typed);
        return Some(Answer::say(
            format!("a corner has a number, counted from 1 where the walk round `{house}` starts"),
            format!("write its number instead of `{}`", typed.text(corner + 1, corner + 2)),
        ));
    }
    let at = (2..typed.pieces.len()).find(|&at| is_corner(typed, at))?;
    let corner = typed.find(at + 1, &["corner"]).filter(|corner| *corner <= at + 2)?;
    let mut first = at;
    while first > 2
        && typed
            .says(first - 1, &["at", "from", "on", "in", "the", "start", "starts", "near", "off"])
    {
        first -= 1;
    }
    let mut end = corner + 1;
    if typed.says(end, &["of"]) {
        end += 1;
        while typed.says(end, &["the"]) {
            end += 1;
        }
        end += 1;
    }
    let house = house(typed);
    let left = typed.text(first, end);
    let follows = ["recorded", "counted", "not", "under", "veneer"];
    let can_stay = first == 2 && (end >= typed.pieces.len() || typed.says(end, &follows));
    let rest = if can_stay { "; the rest of the line can stay" } else { "" };
    Some(Answer::say(
        format!("a corner has a number, counted from 1 where the walk round `{house}` starts"),
        format!("instead of `{left}` write `from \"{house}\" corner` and its number{rest}"),
    ))
}

/// `behind house`, `at rear`: asks for a place given by measurements.
fn beside_something(typed: &Typed<'_>) -> Option<Answer> {
    let begins = [
        "behind",
        "beside",
        "near",
        "off",
        "opposite",
        "facing",
        "rear",
        "alongside",
        "at",
        "on",
        "in",
        "next",
        "north",
        "south",
        "east",
        "west",
        "left",
        "right",
    ];
    let keywords = [
        "measured", "within", "start", "from", "detached", "under", "veneer", "counted", "not",
        "recorded",
    ];
    let first = (2..typed.pieces.len()).find(|&at| {
        typed.says(at, &begins)
            && (at == 2 || !typed.says(at - 1, &keywords))
            && !typed.says(at - 1, &["to", "inside"])
    })?;
    if lengths(&typed.pieces[first..], 0).iter().any(|(_, measure)| measure.has_unit)
        && typed.find(first, &keywords).is_none()
    {
        return None;
    }
    let is_place = typed.says(first, &["next"]) && typed.says(first + 1, &["to"])
        || typed.says(first, &["behind", "beside", "near", "off", "opposite", "rear", "alongside"])
        || typed.says(first, &["at", "on", "in", "next"])
            && (first..typed.pieces.len().min(first + 4)).any(|at| {
                typed.says(
                    at,
                    &[
                        "rear", "back", "side", "front", "behind", "end", "north", "south", "east",
                        "west", "left", "right", "recess", "notch", "alcove", "niche",
                    ],
                )
            })
        || typed.says(first, &["north", "south", "east", "west", "left", "right"])
            && typed.says(first + 1, &["of", "side", "end"]);
    // A size beside a recess is kept by another rule.
    let is_sized_recess = typed.find(first, &["recess", "notch", "alcove", "niche"]).is_some()
        && !lengths(&typed.pieces, 0).is_empty();
    if !is_place || is_sized_recess {
        return None;
    }
    let end = (first..typed.pieces.len())
        .find(|&at| typed.says(at, &keywords))
        .unwrap_or(typed.pieces.len());
    let said = typed.text(first, end);
    if length_at(&typed.pieces, first).is_some() {
        return None;
    }
    // `within "House" at the right front`: `within` names the walk around it, and not where in it.
    let is_within = typed.find(2, &["within"]).is_some_and(|at| at < first)
        && typed.find(2, &["start", "from", "detached"]).is_none();
    if is_within {
        let head = typed.text(0, first);
        return Some(Answer::say(
            format!("`{said}` is no place that can be drawn"),
            format!(
                "instead of it write where in that walk its own begins: after `{head}`, `from`, the name of that space with a `\"` on each side, `corner` and the number of the corner in which it lies; or `start` and how far east and north of where the house's first walk begins"
            ),
        ));
    }
    let placed = ["start", "from", "within", "detached"];
    if typed.find(2, &placed).is_some_and(|at| at >= end || at < first) {
        let line = format!("{}  # {}", typed.without(first, end), remark(said));
        return Some(Answer::line(
            line,
            "the line has its place; anything else goes into a comment at the end of the line",
        ));
    }
    let kind = super::kind_word(&typed.lower(0)).unwrap_or("porch");
    Some(
        Answer::say(
            format!("`{said}` is no place that can be drawn"),
            format!(
                "instead of it write where it starts: {}",
                super::placed::starts(typed, kind, false)
            ),
        )
        .about(About::Place),
    )
}
