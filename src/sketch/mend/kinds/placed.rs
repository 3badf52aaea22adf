//! Lines of spaces whose place is told in words.
//!
//! Everything else that the line says is kept. The words about the place are read as a whole by [`whereabouts`]; where
//! it is, is computed later from the outlines. Where a word is left over, or the words do not say enough, the place is
//! asked for.

use super::super::pieces::Piece;
use super::assembled::{self, Space};
use super::described::{by as between_lengths, in_one_unit};
use super::measure::{Measure, length_at};
use super::whereabouts::{self, Place};
use super::{
    About, Answer, Typed, beside_place, is_text, place_words, plainly, quoted, size_in, size_lines,
    standing,
};
use crate::geometry::compass::{Axis, Direction};
use crate::sketch::asked::{Part, Placeless, Point, Sort, THEN, Whereabouts};

/// `garage on the east side, 22' x 20', county has 460`, `shed in the yard 10x12`, `porch "P" 3' east of corner 3`,
/// `porch 16' wide, 5' deep in front, 6' from the left corner`, `garage in the house at the southeast corner`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let line = with_decimal_points(typed);
    let typed = &Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt };
    // Its size is on the two lines below.
    let below = size_lines::below(typed).filter(|size| !line.ends_with(size.as_str()));
    if let Some(size) = below.filter(|_| size_in(&line).is_none()) {
        let line = format!("{line} {size}");
        return answer(&Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt });
    }
    if let Some(answer) = cut_out_of_the_house(typed) {
        return Some(answer);
    }
    if let Some(answer) = where_the_walk_began(typed) {
        return Some(answer);
    }
    if let Some(line) = with_its_side_first(typed) {
        return answer(&Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt });
    }
    if let Some(answer) = along_a_whole_side(typed) {
        return Some(answer);
    }
    let (mut space, first) = begins(typed)?;
    // On a level that stands beside another, the first space says where as well.
    let before = &typed.attempt.beside.before;
    let is_beside =
        before.starts_with("level ") && before.split_whitespace().any(|word| word == "beside");
    let is_first = typed.attempt.house.is_none() && !is_beside;
    if is_first && space.kind != "living" {
        return None;
    }
    let (phrase, size) = facts(typed, &mut space, first);
    let said = super::super::pieces::join(&phrase);
    let said = said.replace(",,", ",").replace("()", "").replace("( )", "");
    let said = place_words::without_joints(said.trim_matches([',', ';', ' ', '.'])).to_owned();
    let said = place_words::distances_first(&said).unwrap_or(said);
    // `back porch 8 x 12`
    let said = match side_named_first(&space.name).filter(|_| said.is_empty() && size.is_some()) {
        Some(side) => format!("on the {} side", side.to_lowercase()),
        None => said,
    };
    if said.is_empty() {
        return None;
    }
    let encloses = !matches!(
        space.kind,
        "living" | "porch" | "carport" | "deck" | "patio" | "balcony" | "court"
    );
    let (mut inside, mut text) = inside(typed, &said, encloses);
    // `in the garage, back left corner`
    let room = (!inside).then(|| in_a_room(typed, &text, size.is_some())).flatten();
    let mut of_room = None;
    if let Some((name, rest)) = room {
        space.within = Some(format!("within {}", quoted(&name)));
        (inside, text, of_room) = (true, rest, Some(name));
    }
    for words in [
        "under the same roof",
        "under same roof",
        "inside the walls",
        "inside the walk",
        "inside my walk",
        "in the walk",
        "under one roof",
        "under the main roof",
        "under main roof",
        "under the same main roof",
        "under the house roof",
        "under the roof",
        "to be deducted",
        "to deduct",
        "deducted",
        "deduct",
        "to be subtracted",
        "subtracted",
        "subtract",
    ] {
        if let Some(at) = text.to_ascii_lowercase().find(words) {
            inside = true;
            text.replace_range(at..at + words.len(), "");
        }
    }
    // `garage 20 x 22 at SE end, included`: in the walk; whether it counts is another question.
    if matches!(space.kind, "garage" | "carport")
        && space.counted == Some(true)
        && typed.find(1, &["included", "incl", "includes"]).is_some()
        && typed.find(1, &["count", "counts", "counted"]).is_none()
    {
        (inside, space.counted) = (true, None);
    }
    // `garage built in, SE corner`
    for words in ["built-in", "built in"] {
        let rest = text.get(words.len()..).map(str::to_owned).unwrap_or_default();
        let begins = text.to_ascii_lowercase().starts_with(words);
        if space.kind == "garage" && begins && (rest.is_empty() || rest.starts_with([',', ';'])) {
            (inside, text) = (true, rest);
        }
    }
    let text = text.trim_matches([',', ';', ' ']).to_owned();
    let text = match side_of_its_name(&space.name, &text).filter(|_| !inside) {
        Some(side) => format!("on the {} side, {text}", side.to_lowercase()),
        None => text,
    };
    let text = text.replace("up against", "against").replace("right against", "against");
    let text = place_words::off_a_space(&text).unwrap_or(text);
    let text = place_words::without_outward(&text).unwrap_or(text);
    // `breezeway 6' x 10' to the garage`: it leads there from the house.
    let leads_there = ["to garage", "to the garage", "to gar"].iter().any(|to| {
        text.strip_prefix(to).is_some_and(|rest| rest.is_empty() || rest.starts_with([',', ';']))
    });
    let text = match leads_there && space.kind == "breezeway" {
        true => text.replacen("to gar", "between house and gar", 1).replacen(
            "to the gar",
            "between house and gar",
            1,
        ),
        false => text,
    };
    let text = match beside_place::whole_place(&text) {
        Some((whole, others)) => {
            space.comments.extend((!others.is_empty()).then_some(others));
            whole
        }
        None => text,
    };
    // After a name and a comma, every word of a place is at the beginning of a part of the line.
    let line = format!("porch \"P\", {text}");
    let words = Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt };
    if let Some(name) = within_the_last(&words) {
        space.within = Some(format!("within {}", quoted(&name)));
        return Some(Answer::line(
            space.line(),
            "what lies under the same roof, in the walk of another space, is `within` that space; where it starts comes after that",
        ));
    }
    if let Some(answer) = within_the_unnamed(&words, &space) {
        return Some(answer);
    }
    if is_as_in_the_format(&words) && !inside && size.is_none() {
        return None;
    }
    let lies_inside = inside || matches!(space.kind, "open" | "stair" | "low");
    // `20 x 22 detached behind the house`
    let says_detached = words.find(FIRST, &["detached", "freestanding"]).is_some();
    let place = match start(&words) {
        Some(place) => place,
        None => match start_one_way(&words).filter(|_| size.is_some()) {
            Some(place) => place,
            None => whereabouts::place(&words, FIRST, lies_inside),
        },
    };
    let says_place = !place.whereabouts.parts.is_empty() || place.is_apart || place.needs_street;
    // The first space of a level needs no place, unless it lies over a space below that the words name.
    let is_over =
        place.whereabouts.parts.iter().any(|part| part.sort == Sort::Over && part.of.is_some());
    let mut place = place;
    let is_over_a_part = whereabouts::is_over_a_part(&words, FIRST);
    if !is_first && is_over_a_part && matches!(space.kind, "living" | "unfinished") {
        place.whereabouts.parts.push(Part { sort: Sort::Over, of: None });
    }
    if let Some(name) = &of_room {
        let parts = place.whereabouts.parts.iter_mut().filter(|part| part.of.is_none());
        parts.for_each(|part| part.of = Some(name.clone()));
    }
    let over =
        (is_first && !is_over && says_place).then(|| over_the_level_before(&words)).flatten();
    if let Some(over) = over {
        place = over;
    } else if is_first && !is_over && !(place.needs_street && is_over_a_part) {
        let lines =
            size.filter(|_| says_place).map(|size| noted(&space, "", &said, size.ways(&[], None)));
        return lines.map(|lines| {
            Answer::Lines(lines, "the first space of a level needs no place, and its size is typed as its sides: which of the two lengths runs north and south?".to_owned())
        });
    }
    let names_a_room = of_room.is_some() && size.is_some();
    if !names_a_room && !is_about_a_place(&words, &place, inside, size.is_some()) {
        return None;
    }
    let is_detached = says_detached && !is_as_in_the_format(&words)
        || says_detached && size.is_some() && words.piece(FIRST + 1).is_some();
    // `office 10' x 12' in the back yard`
    let is_away = space.kind == "living" && place.is_apart && place.whereabouts.parts.is_empty();
    // `gazebo 10x10 by the pond`
    let is_away = is_away || matches!(space.kind, "patio" | "deck") && place.is_apart;
    if (can_stand_apart(space.kind) || is_dwelling_apart(typed, &space) || is_away)
        && (is_detached || stands_apart(&space, &place, &words))
    {
        let sizes = size.map(|size| size.ways(&[], None)).unwrap_or_default();
        let cause = match sizes.len() {
            0 | 1 => "a space that stands by itself is `detached`",
            _ => {
                "a space that stands by itself is `detached`, and its size is typed as its sides: which of the two lengths runs north and south?"
            }
        };
        return Some(Answer::Lines(noted(&space, " detached", &said, sizes), cause.to_owned()));
    }
    let house = typed.attempt.house.clone().unwrap_or_default();
    if inside
        && !house.is_empty()
        && space.within.is_none()
        && !matches!(space.kind, "open" | "stair" | "low")
    {
        space.within = Some(format!("within {}", quoted(&house)));
    }
    let is_whole = place.loose.is_empty() && !place.is_apart && !place.needs_street;
    let mut told = if is_whole { place.whereabouts.clone() } else { Whereabouts::default() };
    told.is_outside = words.find(FIRST, &OUTSIDE).is_some();
    told.is_at_a_door = words.find(FIRST, &DOORS).is_some();
    told.is_between = words.find(FIRST, &["between", "betw", "btwn"]).is_some();
    let as_in_the_format = is_as_in_the_format(&words);
    Some(asked(typed, &space, &said, size.as_ref(), told, &place, as_in_the_format))
}

/// The side of the house that a name begins with, if what is so called stands against that side: `back porch`.
fn side_named_first(name: &str) -> Option<&str> {
    const SIDES: [&str; 5] = ["front", "back", "rear", "left", "right"];
    let mut words = name.trim_matches('"').split(' ');
    let side = words.next()?;
    let stands = ["porch", "deck", "patio", "stoop", "veranda", "terrace"];
    let is_outside =
        words.next().is_some_and(|noun| stands.iter().any(|one| noun.eq_ignore_ascii_case(one)));
    (is_outside && SIDES.iter().any(|one| side.eq_ignore_ascii_case(one))).then_some(side)
}

/// `front porch 6' x 20' centered`, `front porch 14' x 6', 15' from the left corner`: the side that a name says, where the
/// other words say only how far along it.
fn side_of_its_name<'a>(name: &'a str, text: &str) -> Option<&'a str> {
    const SIDES: [&str; 9] =
        ["front", "back", "rear", "left", "right", "north", "east", "south", "west"];
    const MIDDLE: [&str; 5] = ["centered", "centred", "middle", "center", "centre"];
    const STREET: [&str; 3] = ["front", "back", "rear"];
    let is_one_of =
        |word: &str, words: &[&str]| words.iter().any(|one| word.eq_ignore_ascii_case(one));
    let side = name.trim_matches('"').split(' ').next().filter(|word| is_one_of(word, &SIDES))?;
    let small =
        ["in", "the", "on", "it", "of", "at", "house", "starts", "starting", "begins", "beginning"];
    let said: Vec<String> = text
        .split([' ', ','])
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .filter(|word| !small.contains(&word.as_str()))
        .collect();
    if matches!(&said[..], [only] if MIDDLE.contains(&only.as_str())) {
        return Some(side);
    }
    // `front porch 6' x 12' centered on the door`
    let is_centered = said.first().is_some_and(|first| MIDDLE.contains(&first.as_str()));
    if is_centered && said[1..].iter().all(|word| DOORS.contains(&word.as_str()) || word == side) {
        return Some(side);
    }
    // `front porch 12' x 5' touching the garage`: on the front of the house, against the garage.
    let touches = ["touching", "against", "beside", "abutting", "adjoining", "alongside"];
    let names_another = said.first().is_some_and(|word| touches.contains(&word.as_str()))
        || matches!(&said[..], [next, _, ..] if next == "next");
    if names_another && is_one_of(side, &STREET) && !text.to_lowercase().contains("house") {
        return Some(side);
    }
    // Along the front or the back, the other end is left or right, or across on the compass.
    let from = said.iter().position(|word| word == "from")?;
    let is_length =
        from > 0 && said[..from].iter().all(|word| word.starts_with(|c: char| c.is_ascii_digit()));
    let ends = ["corner", "end", "side", "edge", "wall"];
    let is_end = match &said[from + 1..] {
        [way] => is_one_of(way, &["left", "right"]),
        [way, end] => {
            is_one_of(way, &["left", "right", "east", "west", "north", "south"])
                && is_one_of(end, &ends)
        }
        _ => false,
    };
    (is_one_of(side, &STREET) && is_length && is_end).then_some(side)
}

/// `living "House", walk from SW corner`, `living "House" clockwise from the front left corner`: where somebody began to
/// walk round the first space of a level says nothing of its place.
fn where_the_walk_began(typed: &Typed<'_>) -> Option<Answer> {
    let is_living = typed.says(0, &["living"]) && is_text(typed.piece(1));
    let article = usize::from(typed.says(0, &["the", "main", "our", "my"]));
    let is_house = typed.says(article, &["house", "home"]);
    let named = if is_living { 2 } else { article + 1 };
    if !(is_living || is_house)
        || typed.attempt.house.is_some()
        || typed.attempt.beside.has_level_above
    {
        return None;
    }
    let says = [
        "walk",
        "walked",
        "walking",
        "start",
        "starts",
        "started",
        "starting",
        "begin",
        "begins",
        "began",
        "beginning",
        "clockwise",
        "counterclockwise",
        "from",
        "at",
        "the",
        "in",
        "going",
        "and",
        "round",
        "around",
        "corner",
    ];
    let at = named + usize::from(typed.piece(named).is_some_and(|mark| mark.is_mark(",;:(-–")));
    // `house starting at front left`
    let is_begun = typed.find(at, &["walk", "start", "starts", "started", "starting", "began"]);
    let last = if is_house { is_begun.map(|_| typed.pieces.len()) } else { None };
    // `living "House" from SE`
    let slanted = (at..typed.pieces.len())
        .find(|&at| super::super::compass::slant(&typed.lower(at)).is_some())
        .filter(|_| typed.says(at, &["from", "start", "starts", "starting", "begins", "at"]))
        .map(|_| typed.pieces.len());
    let corner = typed.find(at, &["corner"]).or(last).or(slanted)?;
    let is_way = |at: usize| {
        whereabouts::direction(typed, at).is_some()
            || whereabouts::compass_corner(typed, at).is_some()
    };
    let only = (at..typed.pieces.len())
        .all(|at| typed.says(at, &says) || is_way(at) || typed.pieces[at].is_mark(",;:()-–."));
    let names_way = (at..corner).any(is_way);
    if is_house {
        // In one word, so that nobody takes it for the place of the space.
        let ways: Vec<String> = (at..typed.pieces.len())
            .filter(|&at| is_way(at))
            .map(|at| {
                let word = typed.lower(at);
                super::super::compass::slant(&word)
                    .map_or(word, |(north, east)| format!("{north}{east}"))
            })
            .collect();
        let compass = ["north", "south", "east", "west"];
        let is_compass = ways.iter().all(|way| compass.contains(&way.as_str()));
        let said = format!("begun at the {}", ways.join(if is_compass { "" } else { " " }));
        return (only && names_way).then(|| {
            Answer::line(
                format!("living \"House\"  # {said}"),
                "where a walk begins needs no words: its walls follow in the order in which they were walked",
            )
        });
    }
    (only && names_way).then(|| {
        Answer::say(
            "where a walk begins needs no words: its walls follow in the order in which they were walked",
            format!("write `{}  # {}`", typed.text(0, 2), super::remark(typed.rest(at))),
        )
    })
}

/// `living "Finished" east part`, `under the right end of the house`: where the first space of a level lies over or
/// under the level before it. None on the first level, or where the words put it beside something.
fn over_the_level_before(words: &Typed<'_>) -> Option<Place> {
    if !words.attempt.beside.has_level_above {
        return None;
    }
    let leads = ["under", "below", "beneath", "above", "over"];
    let first = FIRST + usize::from(words.says(FIRST, &leads));
    let mut place = whereabouts::place(words, first, true);
    let is_beside =
        |part: &Part| matches!(part.sort, Sort::Side(_) | Sort::Past(_) | Sort::Against);
    let parts = &mut place.whereabouts.parts;
    if parts.is_empty() || parts.iter().any(is_beside) || !place.loose.is_empty() || place.is_apart
    {
        return None;
    }
    // What they count from is below.
    let of = parts.iter_mut().find_map(|part| part.of.take());
    parts.iter_mut().for_each(|part| part.of = None);
    let of = of.filter(|of| !["house", "home"].contains(&of.as_str()));
    parts.push(Part { sort: Sort::Over, of });
    Some(place)
}

/// `screened-in back porch 10 x 14` as `back porch 10 x 14, screened-in`.
fn with_its_side_first(typed: &Typed<'_>) -> Option<String> {
    const HOW: [&str; 10] = [
        "screened-in",
        "screened",
        "covered",
        "open",
        "wood",
        "wooden",
        "concrete",
        "enclosed",
        "old",
        "new",
    ];
    let dashed = typed.says(0, &["screened"])
        && typed.piece(1).is_some_and(|dash| dash.is_mark("-"))
        && typed.says(2, &["in"]);
    let side = if dashed { 3 } else { 1 };
    let is_space = typed.says(side, &["front", "back", "rear", "left", "right"])
        && typed.says(side + 1, &["porch", "deck", "patio", "stoop", "veranda"])
        && typed.piece(side + 2).is_some_and(|next| next.is_number());
    let is_last = typed.piece(side + 2).is_some() && !typed.line.contains(['"', '#', '$']);
    (typed.says(0, &HOW) && is_space && size_in(typed.line).is_some()
        || dashed && is_space && is_last)
        .then(|| format!("{}, {}", typed.rest(side), typed.text(0, side)))
}

/// `porch across the front, 6' deep`, `full width back deck 10' deep`: as long as that side of the house.
fn along_a_whole_side(typed: &Typed<'_>) -> Option<Answer> {
    const SMALL: [&str; 26] = [
        "across", "along", "the", "full", "whole", "entire", "all", "width", "length", "of", "on",
        "at", "house", "deep", "front", "back", "rear", "left", "right", "side", "with", "out",
        "way", "runs", "wide", "is",
    ];
    const KINDS: [&str; 6] = ["porch", "deck", "patio", "stoop", "veranda", "balcony"];
    if super::super::begins_as_side(&typed.attempt.beside.after) {
        return None;
    }
    let noun = typed.find(0, &KINDS)?;
    // `porch "Front porch" 6' deep across whole front`
    let is_named = noun == 0 && is_text(typed.piece(1));
    let all = super::measure::lengths(&typed.pieces, 0);
    let [(from, deep)] = &all[..] else { return None };
    let says_whole = typed.find(0, &["across", "whole", "entire", "full"]).is_some();
    let mut sides: Vec<Direction> = Vec::new();
    for at in 0..typed.pieces.len() {
        if let Some(way) = whereabouts::direction(typed, at) {
            let way = way?;
            if !sides.contains(&way) {
                sides.push(way);
            }
        }
    }
    let is_known = |at: usize| {
        at == noun
            || is_named && at == 1
            || (*from..deep.end).contains(&at)
            || typed.says(at, &SMALL)
            || typed.says(at, &["covered", "screened", "open"]) && at < noun
            || whereabouts::direction(typed, at).is_some()
            || typed.pieces[at].is_mark(",;:()-–.")
    };
    let [side] = sides[..] else { return None };
    if !deep.has_unit || !says_whole || !(0..typed.pieces.len()).all(is_known) {
        return None;
    }
    let walk = super::straight::walk(typed, &typed.attempt.beside.house_walk)?;
    walk.whole_wall_on(side)?;
    let across = if side.axis() == Axis::East { Axis::North } else { Axis::East };
    let wide = super::measure::written(walk.extent(across), deep);
    let (noun_word, side) = (typed.lower(noun), side.word());
    let before = noun.checked_sub(1).filter(|&at| {
        typed.says(at, &["front", "back", "rear", "covered", "screened", "open", "left", "right"])
    });
    let name = before.map_or(noun_word.clone(), |at| format!("{} {noun_word}", typed.lower(at)));
    let name = if is_named { typed.name(1, 2) } else { name };
    let kind = super::kind_word(&noun_word).or_else(|| super::kind_meant(&noun_word))?;
    let line = format!(
        "{kind} {} {} deep {wide} wide on the {side} side",
        quoted(&super::levels::capitalized(&name)),
        deep.text
    );
    answer(&Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt })
}

/// The line with points for the decimal commas of its sizes: `3,60 x 4,20`, `3,60 m x 4,20 m`.
fn with_decimal_points(typed: &Typed<'_>) -> String {
    let is_decimal = |piece: &&Piece| {
        let parts = piece.text.split_once(',').filter(|_| piece.is_number());
        parts.is_some_and(|(_, decimals)| (1..=2).contains(&decimals.len()))
    };
    let mut line = typed.line.to_owned();
    for by in (1..typed.pieces.len()).filter(|&by| between_lengths(typed, by)) {
        let unit = usize::from(typed.says(by - 1, &["m", "meters", "metres"]));
        let two = [(by - 1).checked_sub(unit), Some(by + 1)];
        for piece in two.into_iter().flatten().filter_map(|at| typed.piece(at)).filter(is_decimal) {
            let end = piece.at + piece.text.len();
            line.replace_range(piece.at..end, &piece.text.replace(',', "."));
        }
    }
    // `3,20 m from the west end`
    for at in 1..typed.pieces.len() {
        let Some(piece) = typed.piece(at).filter(is_decimal) else { continue };
        if typed.says(at + 1, &["m", "cm", "meters", "metres"]) {
            let end = piece.at + piece.text.len();
            line.replace_range(piece.at..end, &piece.text.replace(',', "."));
        }
    }
    line
}

/// `porch "Porch" cut out of the house`: what lies under the same roof.
fn cut_out_of_the_house(typed: &Typed<'_>) -> Option<Answer> {
    typed.find(1, &["cut", "carved", "built"])?;
    let space = assembled::read(typed)
        .filter(|space| !space.is_unclear && space.place.is_none() && space.within.is_some())?;
    Some(Answer::line(
        space.line(),
        "what lies under the same roof, in the walk of another space, is `within` that space; where it starts comes after that",
    ))
}

/// Whether the line is one whose place is told in words. Words that have the place as the format has it, or say nothing
/// of a place, belong to other rules.
fn is_about_a_place(words: &Typed<'_>, place: &Place, inside: bool, is_sized: bool) -> bool {
    let parts = &place.whereabouts.parts;
    let is_known = !parts.is_empty() || place.is_apart || place.needs_street;
    let is_whole = place.loose.is_empty() && is_known;
    if inside {
        return words.pieces.len() > FIRST && (is_known || !place.loose.is_empty());
    }
    let says_alone = words.find(FIRST, &["itself", "apart", "own", "alone"]).is_some();
    if place.is_apart && parts.is_empty() && says_alone && !is_sized {
        return false;
    }
    // `from House corner 2`: nothing but a corner.
    let is_corner = matches!(&parts[..], [Part { sort: Sort::From(Point::Numbered(_) | Point::Named(_), ways), .. }] if ways.is_empty());
    if is_whole {
        return is_sized || !is_corner;
    }
    let pieces = FIRST..words.pieces.len();
    let is_way = |at: usize| whereabouts::direction(words, at).is_some();
    let is_format = pieces.clone().any(|at| {
        let is_start = words.says(at, &["start", "starts"]);
        let after_start = at + 1 + usize::from(words.says(at + 1, &["at", "the"]));
        let is_numbered =
            words.says(at, &["corner"]) && words.piece(at + 1).is_some_and(Piece::is_number);
        standing::place(words, at).is_some()
            || standing::corner_by_name(words, at).is_some()
            || is_start && is_way(after_start)
            || is_way(at) && length_at(&words.pieces, at + 1).is_some_and(|one| one.has_unit)
            || is_numbered
    });
    let is_row = is_way(FIRST) && words.piece(FIRST + 1).is_some_and(Piece::is_number);
    if is_format && !is_sized || is_row {
        return false;
    }
    let is_between = words.says(FIRST, &["from", "between"])
        && pieces.clone().any(|at| whereabouts::house(words, at).is_some());
    let is_near = words.says(
        FIRST,
        &["near", "around", "opposite", "facing", "off", "by", "close", "alongside", "between"],
    );
    is_known || is_between || is_near || is_sized && says_where(words)
}

/// The line with its sides, and with the words about the place as a comment.
fn noted(space: &Space, place: &str, said: &str, sizes: Vec<[String; 2]>) -> Vec<String> {
    let comments = [&space.comments[..], &[plainly(said)]].concat().join(", ");
    let line = Placeless {
        before: format!("{}{place}", space.before_place()),
        after: format!("{}  # {comments}", space.after_place()),
        place: Whereabouts::default(),
        said: String::new(),
        sizes,
    };
    line.ways().into_iter().map(|size| line.at("", size)).collect()
}

/// The answer that asks for the place; `told` is what it will be computed from.
fn asked(
    typed: &Typed<'_>,
    space: &Space,
    said: &str,
    size: Option<&Size>,
    told: Whereabouts,
    place: &Place,
    as_in_the_format: bool,
) -> Answer {
    let comments = space.comments.join(", ");
    let comments = if comments.is_empty() { comments } else { format!("  # {comments}") };
    let after = format!("{}{comments}", space.after_place());
    let sizes = size
        .map(|size| size.ways(&place.whereabouts.parts, typed.attempt.beside.front))
        .unwrap_or_default();
    let is_over = place.whereabouts.parts.iter().any(|part| part.sort == Sort::Over);
    let lies_inside =
        is_over || space.within.is_some() || matches!(space.kind, "open" | "stair" | "low");
    // Examples are in the unit of the size on the line, or of the walls above.
    let in_meters = |line: &std::rc::Rc<str>| line.ends_with(" m") || line.ends_with(" meters");
    let is_metric = typed.attempt.is_metric
        || size.is_some_and(|size| size.one.is_metric() || size.two.is_metric())
        || typed.attempt.beside.house_walk.iter().any(in_meters);
    let (near, far) = if is_metric { ("2 m", "3 m") } else { ("6'", "10'") };
    let example = match lies_inside {
        true => format!(
            "how far it is from two walls that meet, as `{near} from the south end, {far} from the west end`"
        ),
        false => format!(
            "on which side it stands and how far from which end, as `on the south side, {near} from the west end`"
        ),
    };
    // `at front, between garage and house`: the street alone would not place it.
    let street = match (place.needs_street, place.loose.is_empty()) {
        (false, _) => "say ",
        (true, true) => {
            "say on which side the street is, above the first level: `front south`, for instance; or say "
        }
        (true, false) => {
            "say on which side the street is, above the first level, as `front south`, and on this line, with nothing else about the place, "
        }
    };
    let mut help = format!("{street}{example}{THEN}; or {}", ask(typed, space));
    if let Some(size) = size {
        help.push_str(&format!("; on the lines below it {}", size.as_sides(false)));
    }
    Answer::Ask {
        about: match as_in_the_format && size.is_some() {
            true => About::Line,
            false => About::Place,
        },
        cause: match as_in_the_format && size.is_some() {
            true => "a size is typed as its sides, one on each line".to_owned(),
            false => format!("`{said}` is no place that can be drawn{}", understood(place, said)),
        },
        help,
        asks: Box::new(Placeless {
            before: space.before_place(),
            after,
            place: told,
            said: said.to_owned(),
            sizes,
        }),
    }
}

/// What was understood of words of which some were not.
fn understood(place: &Place, said: &str) -> String {
    let sides: Vec<&str> = place
        .whereabouts
        .parts
        .iter()
        .filter_map(|part| match (&part.sort, &part.of) {
            (Sort::Side(way), None) => Some(way.word()),
            _ => None,
        })
        .collect();
    match (&sides[..], &place.loose[..]) {
        ([side], [_, ..]) if said.contains(&super::super::pieces::join(&place.loose)) => format!(
            ": it says the {side} side, but what `{}` counts from is not known",
            super::super::pieces::join(&place.loose)
        ),
        _ => String::new(),
    }
}

/// What a sketch does not show, so that nothing can be counted from it.
const DOORS: [&str; 9] =
    ["door", "doors", "doorway", "entry", "entrance", "entryway", "window", "windows", "slider"];

/// Words for a place outside of the house.
const OUTSIDE: [&str; 16] = [
    "behind",
    "beside",
    "next",
    "attached",
    "adjoining",
    "adjacent",
    "alongside",
    "outside",
    "off",
    "out",
    "against",
    "touching",
    "abutting",
    "past",
    "beyond",
    "before",
];

/// The index of the first piece of a place after `porch "P",`.
const FIRST: usize = 3;

/// The kind and the name of the space, and the index of the piece after them.
fn begins(typed: &Typed<'_>) -> Option<(Space, usize)> {
    let (one, other) = (assembled::kind(typed), super::described::one_kind(typed));
    // `storage closet`: the longer name.
    let other = other.filter(|other| one.as_ref().is_none_or(|one| other.1 > one.1));
    let (kind, mut at, name) = other.or(one)?;
    let mut name = quoted(&name);
    // `garage apartment 22 x 24`
    let is_flat = kind == "garage" && typed.says(at, &["apartment", "apt", "flat"]);
    let kind = if is_flat { "living" } else { kind };
    if is_flat {
        name = quoted("Garage apartment");
        at += 1;
    }
    if kind == "open" && typed.says(at, &["to"]) && typed.says(at + 1, &["below", "above"]) {
        at += 2;
    }
    if is_text(typed.piece(at)) {
        typed.text(at, at + 1).clone_into(&mut name);
        at += 1;
    }
    // `porch Front porch 12' x 6'`: the name after the kind ends with it.
    let is_word = |at: usize| typed.piece(at).is_some_and(|piece| piece.sort == super::Sort::Word);
    let named = (2..5).find(|&end| end > at && typed.says(end, &[&typed.lower(0)]));
    if let Some(end) = named.filter(|end| at == 1 && (0..*end).all(is_word)) {
        name = quoted(&super::levels::capitalized(typed.text(1, end + 1)));
        at = end + 1;
    }
    // `garage 2 20' x 20'`, `porch 2 on the left side`: a number that tells two of a kind apart.
    let tells_apart = |at: usize| {
        typed
            .piece(at)
            .is_some_and(|piece| piece.is_number() && ["2", "3", "4"].contains(&&*piece.text))
            && (typed.piece(at + 1).is_some_and(Piece::is_number)
                || typed.says(at + 1, &["on", "at", "in", "behind", "beside", "to"]))
    };
    if tells_apart(at) && !is_text(typed.piece(at - 1)) {
        name = quoted(&format!("{} {}", name.trim_matches('"'), typed.text(at, at + 1)));
        at += 1;
    }
    // `foyer open 8' x 7'`
    if kind == "open"
        && let Some(room) = name.trim_matches('"').strip_suffix(" open")
    {
        name = quoted(room);
    }
    while kind == "open" && typed.says(at, &["open", "to", "below", "above", "the", "floor"]) {
        at += 1;
    }
    let is_apart = typed.find(0, &["detached", "det", "freestanding"]).is_some_and(|one| one < at);
    let is_other = typed.says(1, &["walk"]) || typed.line.contains(['$', '%']);
    (!is_apart && !is_other).then(|| (Space::new(kind, name), at))
}

/// A size that is not yet typed as sides.
struct Size {
    one: Measure,
    two: Measure,
    /// Whether the first is the one along the wall and the second the one out from it, or the other way round.
    first_is_wide: Option<bool>,
    /// Whether it is said to be no exact one: its sides are `estimated`.
    is_rough: bool,
}

/// Words for what was not taped exactly.
const ROUGH: [&str; 9] =
    ["about", "approx", "approximately", "roughly", "estimated", "ca", "circa", "guess", "guessed"];

impl Size {
    /// `12' x 16'`, `20' wide 6' deep`, `8' deep by 10'`: the size that begins here, and the index after it.
    fn at(typed: &Typed<'_>, at: usize) -> Option<(Size, usize)> {
        const WIDE: [&str; 3] = ["wide", "w", "width"];
        const DEEP: [&str; 3] = ["deep", "d", "depth"];
        let word = |at: usize| {
            // `12x16 w/ steps` says nothing of a width.
            let is_with = typed.piece(at + 1).is_some_and(|slash| slash.is_mark("/"));
            let is_wide = (typed.says(at, &WIDE) && !is_with).then_some(true);
            is_wide.or_else(|| typed.says(at, &DEEP).then_some(false))
        };
        let skips =
            |at: usize| at + usize::from(word(at).is_some() || typed.says(at, &["long", "l"]));
        let one = length_at(&typed.pieces, at)?;
        // `12' square`: as deep as wide.
        if one.has_unit
            && typed.says(one.end, &["square", "sq"])
            && is_after_a_square(typed, one.end + 1)
        {
            let end = one.end + 1;
            return Some((
                Size { two: one.clone(), one, first_is_wide: None, is_rough: false },
                end,
            ));
        }
        let middle = skips(one.end);
        let by = typed.says(middle, &["x", "by"])
            || typed.piece(middle).is_some_and(|mark| mark.is_mark("×*"));
        let joins = middle > one.end
            && (typed.says(middle, &["and"])
                || typed.piece(middle).is_some_and(|mark| mark.is_mark(",/")));
        let next = middle + usize::from(by || joins);
        let mut two = length_at(&typed.pieces, next)?;
        // `6 x 8 in the yard`: no inches.
        if typed.says(two.end - 1, &["in"])
            && two.end == next + 2
            && !one.text.contains(['"', '”', 'i'])
            && typed.piece(two.end).is_some_and(|next| next.sort == super::Sort::Word)
        {
            let text = typed.pieces[next].text.clone();
            two = Measure { end: next + 1, length: text.parse().ok()?, text, has_unit: false };
        }
        let end = skips(two.end);
        if !by && (middle == one.end || end == two.end) {
            return None;
        }
        let first_is_wide = match (word(one.end), word(two.end)) {
            (Some(one), Some(two)) if one == two => None,
            (Some(one), _) => Some(one),
            (None, two) => two.map(|two| !two),
        };
        let is_rough = typed.says(end, &ROUGH)
            || at > 0 && (typed.says(at - 1, &ROUGH) || typed.pieces[at - 1].is_mark("~≈"));
        Some((Size { one, two, first_is_wide, is_rough }, end))
    }

    /// North then east, each way in which the size may be meant: what is wide runs along the wall that it stands at.
    ///
    /// On the left and the right of a house, what is wide may as well be so as seen from the street.
    fn ways(&self, parts: &[Part], front: Option<Direction>) -> Vec<[String; 2]> {
        let (one, two) = self.texts(self.is_rough);
        let wall = parts.iter().find_map(|part| match part.sort {
            Sort::Side(side) => {
                Some(side.axis()).filter(|axis| front.is_some_and(|front| front.axis() == *axis))
            }
            // In a corner of a house whose street is known, what is wide runs along the street.
            Sort::At(Point::Toward(..)) => front.map(Direction::axis),
            _ => None,
        });
        let both = [[one.clone(), two.clone()], [two, one]];
        let [first, second] = &both;
        match (self.first_is_wide, wall) {
            _ if self.one.length == self.two.length => vec![first.clone()],
            // A wall on the north side runs east.
            (Some(is_wide), Some(axis)) => {
                vec![if is_wide == (axis == Axis::East) { first } else { second }.clone()]
            }
            _ => both.to_vec(),
        }
    }

    /// Both lengths as a side has them.
    fn texts(&self, is_rough: bool) -> (String, String) {
        let (one, two) = in_one_unit(&self.one, &self.two);
        match is_rough {
            true => (format!("{one} estimated"), format!("{two} estimated")),
            false => (one, two),
        }
    }

    /// The sides as they are to be typed, the ways being the writer's.
    fn as_sides(&self, is_rough: bool) -> String {
        let (one, two) = self.texts(self.is_rough || is_rough);
        let sides =
            format!("its four sides, `north {one}` `east {two}` `south {one}` `west {two}`");
        match self.one.length == self.two.length {
            true => sides,
            false => format!("{sides}, or with the two lengths exchanged"),
        }
    }
}

/// Whether `square` before this piece is the shape, and no unit of an area: `12 sq ft`.
fn is_after_a_square(typed: &Typed<'_>, at: usize) -> bool {
    !typed.says(at, &["ft", "feet", "foot", "m", "meters", "metres", "yd", "yards", "in"])
}

/// Words after which a place goes on.
const JOINTS: [&str; 20] = [
    "on", "at", "in", "to", "off", "of", "the", "from", "with", "and", "by", "is", "about",
    "along", "behind", "under", "over", "near", "a", "my",
];

/// Reads everything but the place; the pieces that are left, and the size where no sides follow.
fn facts(typed: &Typed<'_>, space: &mut Space, first: usize) -> (Vec<Piece>, Option<Size>) {
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let (mut left, mut size) = (Vec::new(), None);
    let mut at = first;
    while let Some(piece) = typed.piece(at) {
        let is_apart =
            left.last().is_none_or(|last: &Piece| last.is_mark(",;()") || last.is_number());
        if let Some(end) = beside_place::end(typed, at, space.kind, is_apart) {
            // `w/ loft 10x30`: the size of what it has.
            let has = typed.says(at, &["w", "with"]) && size.is_some();
            let end = Size::at(typed, end).filter(|_| has).map_or(end, |(_, end)| end);
            let said = super::remark(typed.text(at, end));
            let said = said.trim_matches(['(', ')', ' ', ',', ';']).trim_end_matches(" of");
            space.comments.push(plainly(said));
            at = end;
            continue;
        }
        let is_low_height = space.kind == "low" && piece.is_number();
        let cold = cold_words(typed, at).filter(|_| matches!(space.kind, "living" | "unfinished"));
        let next = if is_low_height && is_from_an_end(typed, at) {
            None
        } else if let Some(end) = cold {
            space.kind = "unfinished";
            Some(end)
        } else if typed.says(at, &["note"]) && is_text(typed.piece(at + 1)) {
            space.comments.push(plainly(typed.text(at + 1, at + 2)));
            Some(at + 2)
        } else if typed.says(at, &["within"]) && is_text(typed.piece(at + 1)) {
            space.within = Some(format!("within {}", typed.text(at + 1, at + 2)));
            Some(at + 2)
        } else if let Some((found, end)) =
            Size::at(typed, at).filter(|_| size.is_none() && !after_an_area(typed, at))
        {
            match follows {
                true => {
                    space.comments.push(typed.text(at, end).trim_matches([',', ' ']).to_owned())
                }
                false => size = Some(found),
            }
            // `off the kitchen 12x14 rear`: two parts of the place.
            let is_between = left.last().is_some_and(|last: &Piece| {
                last.sort == super::Sort::Word && !last.is_word(&JOINTS)
            });
            if is_between && typed.piece(end).is_some_and(|next| next.sort == super::Sort::Word) {
                let mut comma = Piece::new(super::Sort::Mark, ",".to_owned());
                comma.touches = true;
                left.push(comma);
            }
            Some(end)
        } else if is_low_height && !says_high(typed, at) {
            space.size(typed, at)
        } else {
            space.fact(typed, at).or_else(|| lone_size(typed, at, space))
        };
        match next {
            Some(next) => at = next.max(at + 1),
            None => {
                left.push(piece.clone());
                at += 1;
            }
        }
    }
    (left, size)
}

/// `unheated`, `not heated`: where words end that say a room is not finished.
fn cold_words(typed: &Typed<'_>, at: usize) -> Option<usize> {
    let cold = ["unheated", "unfinished", "unconditioned"];
    let warm = ["heated", "finished", "conditioned"];
    if typed.says(at, &["no"]) && typed.says(at + 1, &["heat", "heating"]) {
        return Some(at + 2);
    }
    if typed.says(at, &cold) {
        return Some(at + 1);
    }
    (typed.says(at, &["not", "isn't"]) && typed.says(at + 1, &warm)).then_some(at + 2)
}

/// `30 cm from the north end`: how far away, and no height.
fn is_from_an_end(typed: &Typed<'_>, at: usize) -> bool {
    length_at(&typed.pieces, at).is_some_and(|one| typed.says(one.end, &["from", "off", "in"]))
}

/// `recorded 20 x 22`: what the record says.
fn after_an_area(typed: &Typed<'_>, at: usize) -> bool {
    at > 0 && typed.says(at - 1, &["recorded", "record", "county", "card", "has", "rec", "rec'd"])
}

/// `16' wide`: one length of a size, which is a comment.
fn lone_size(typed: &Typed<'_>, at: usize, space: &mut Space) -> Option<usize> {
    let one = length_at(&typed.pieces, at).filter(|one| one.has_unit)?;
    let is_size = typed.says(one.end, &["wide", "deep", "long", "high", "tall"]);
    is_size.then(|| {
        space.comments.push(typed.text(at, one.end + 1).trim_matches([',', ' ']).to_owned());
        one.end + 1
    })
}

fn says_high(typed: &Typed<'_>, at: usize) -> bool {
    length_at(&typed.pieces, at)
        .is_some_and(|one| typed.says(one.end, &["high", "tall", "ceiling", "headroom"]))
}

/// Whether the words say that the space lies in the house, and the words without those that say so. What has walls lies
/// `in the southeast corner` of the house, what has none may stand in a corner between two of its walls.
fn inside(typed: &Typed<'_>, text: &str, has_walls: bool) -> (bool, String) {
    let words = Typed { line: text, pieces: super::cut(text), attempt: typed.attempt };
    let is_in = |at: usize| {
        words.says(at, &["in", "inside", "within", "into"])
            || words.says(at, &["part"]) && words.says(at + 1, &["of"])
            // `garage under the bedrooms`: under the same roof.
            || has_walls && words.says(at, &["under", "below", "beneath"])
    };
    for at in (0..words.pieces.len()).filter(|&at| is_in(at)) {
        let mut first = at + 1;
        while words.says(first, &["of", "the", "my", "our", "those", "these", "that"]) {
            first += 1;
        }
        // `inside the main rectangle`
        let is_main = words.says(first, &["main", "big", "large"])
            && words.says(first + 1, &["walk", "outline", "footprint", "rectangle", "box"]);
        first += usize::from(is_main);
        // `garage 24 x 22 inside SE corner`
        if has_walls
            && words.says(at, &["inside", "within"])
            && whereabouts::compass_corner(&words, first).is_some()
        {
            return (true, words.without(at, first));
        }
        if let Some(end) = the_above(&words, first) {
            let is_before = at > 0 && words.says(at - 1, &["included", "incl", "built", "all"]);
            return (true, words.without(at - usize::from(is_before), end));
        }
        let name = typed.attempt.house.as_deref().unwrap_or_default();
        let is_name =
            is_text(words.piece(first)) && words.name(first, first + 1).eq_ignore_ascii_case(name);
        let is_walk = words.says(first, &["walk", "outline", "footprint", "rectangle", "box"]);
        let upper = ["bedrooms", "upstairs", "rooms", "second", "upper", "living"];
        let is_under = words.says(at, &["under", "below", "beneath"]);
        if is_under && words.says(first, &upper) {
            let more = ["floor", "story", "level", "room", "area"];
            let end = first + 1 + usize::from(words.says(first + 1, &more));
            return (true, words.without(at, end));
        }
        if is_under {
            continue;
        }
        let end = whereabouts::house(&words, first)
            .or((is_name || is_walk).then_some(first + usize::from(is_name)));
        if let Some(mut end) = end {
            while words.says(end, &["walk", "outline", "footprint", "rectangle", "box", "itself"]) {
                end += 1;
            }
            let from = at - usize::from(at > 0 && words.says(at - 1, &["built", "set"]));
            return (true, words.without(from, end));
        }
    }
    // `included above`
    let included = (1..words.pieces.len())
        .find(|&at| words.says(at - 1, &["included", "incl"]) && words.says(at, &["above"]));
    let built = (1..words.pieces.len())
        .find(|&at| words.says(at - 1, &["built"]) && words.says(at, &["in"]));
    if let Some(at) = included.or(built) {
        return (true, words.without(at - 1, at + 1));
    }
    // `inside, front right corner`
    if words.says(0, &["inside"])
        && words.piece(1).is_some_and(|mark| mark.is_mark(",") || mark.is_word(&["at", "on", "in"]))
    {
        return (true, words.without(0, 1));
    }
    // An inner corner of a walk is outside the house.
    let is_inner = words.find(1, &["inner", "inside", "notch", "crook"]).is_some_and(|at| at <= 2);
    let corner = words.find(1, &["corner"]).filter(|_| words.says(0, &["in"]) && !is_inner);
    let of_it = corner.is_some_and(|at| {
        let ends = words.piece(at + 1).is_none_or(|next| next.is_mark(",;"));
        let names_it = (1..at).all(|at| {
            words.says(at, &["the", "far", "upper", "lower"])
                || whereabouts::compass_corner(&words, at).is_some()
                || whereabouts::direction(&words, at).is_some()
        });
        has_walls && at > 1 && ends && names_it
            || words.says(at + 1, &["of"])
                && whereabouts::house(&words, at + 2 + usize::from(words.says(at + 2, &["the"])))
                    // `in the corner of house and garage` is between the two.
                    .is_some_and(|end| !words.says(end, &["and"]))
    });
    (of_it, text.to_owned())
}

/// `the above`, `the above walls`, `those walls`, `the walls above`: the walk that was typed above; the index after the
/// words for it.
fn the_above(words: &Typed<'_>, at: usize) -> Option<usize> {
    const WALK: [&str; 10] = [
        "walls",
        "walk",
        "outline",
        "footprint",
        "dimensions",
        "measurements",
        "numbers",
        "lines",
        "sides",
        "rectangle",
    ];
    let is_above = words.says(at, &["above"]);
    let end = at + usize::from(is_above);
    let end = end + usize::from(words.says(end, &WALK));
    let is_after = words.says(end, &["above"]) && !is_above;
    let said = is_above
        || is_after
        || end > at && at > 0 && words.says(at - 1, &["those", "these", "that"]);
    let end = end + usize::from(is_after);
    let ends = words.piece(end).is_none_or(|next| next.sort != super::Sort::Word)
        || words.says(end, &["at", "in", "on", "front", "back", "rear", "left", "right"]);
    (said && end > at && ends).then_some(end)
}

/// `inside the garage, back left corner`: the space of the file that something lies in, by its own name, and the words
/// without it. A name alone belongs to another rule.
fn in_a_room(typed: &Typed<'_>, text: &str, is_sized: bool) -> Option<(String, String)> {
    let words = Typed { line: text, pieces: super::cut(text), attempt: typed.attempt };
    let at = words.find(0, &["in", "inside", "within"])?;
    let first = at + 1 + usize::from(words.says(at + 1, &["the", "my", "our"]));
    let spaces = &typed.attempt.beside.spaces;
    let named = spaces.iter().find_map(|space| {
        let end = first + super::cut(space).len();
        let is_it = end <= words.pieces.len() && words.text(first, end).eq_ignore_ascii_case(space);
        is_it.then(|| (space.to_string(), end))
    });
    // With a size on the line, where in it the space lies is all that is missing.
    let is_alone = at == 0 && is_sized;
    let (name, end) = named.filter(|(_, end)| is_alone || *end < words.pieces.len())?;
    Some((name, words.without(at, end)))
}

/// Whether the words are a place as the format has it, or one that lacks nothing but its `start`.
fn is_as_in_the_format(words: &Typed<'_>) -> bool {
    let ends = |end: usize| end == words.pieces.len();
    let mut at = FIRST;
    while let Some((_, end)) = whereabouts::offset(words, at) {
        let is_mark = words.piece(end).is_some_and(|mark| mark.is_mark(","));
        at = end + usize::from(is_mark || whereabouts::joins(words, end));
    }
    let is_apart = (FIRST..words.pieces.len()).any(|at| standing::detached(words, at).is_some());
    standing::place(words, FIRST).is_some_and(|(_, end)| ends(end))
        || standing::corner_by_name(words, FIRST).is_some_and(|(_, end)| ends(end))
        || ends(at) && words.find(FIRST, &["to"]).is_none()
        || is_apart
        || words.find(FIRST, &["walk"]).is_some()
}

/// `start east 3', up 8'`, `start 12' right, 0 back`: both ways of a place from where the house's first walk begins.
fn start(words: &Typed<'_>) -> Option<Place> {
    if !words.says(FIRST, &["start", "starts"]) {
        return None;
    }
    if let Some(place) = start_by_coordinates(words) {
        return Some(place);
    }
    let mut place = Place::default();
    let mut ways: Vec<(Direction, crate::units::length::Length)> = Vec::new();
    let mut at = FIRST + 1;
    let mut count = 0;
    while at < words.pieces.len() {
        if words.says(at, &["and", "then", "to", "the"]) || words.pieces[at].is_mark(",&+") {
            at += 1;
            continue;
        }
        let way = |at: usize| match words.lower(at).as_str() {
            "up" => Some(Some(Direction::North)),
            "down" => Some(Some(Direction::South)),
            _ => whereabouts::direction(words, at),
        };
        let (way, by, end) = match way(at) {
            Some(way) => {
                let (by, end) = whereabouts::distance(words, at + 1)?;
                (way, by, end)
            }
            None => {
                let (by, end) = whereabouts::distance(words, at)?;
                let next = (end..).find(|&at| !words.says(at, &["to", "the"]))?;
                (way(next)?, by, next + 1)
            }
        };
        match way {
            None => place.needs_street = true,
            Some(way) if by.nm() != 0 => ways.push((way, by)),
            Some(_) => {}
        }
        count += 1;
        at = end;
    }
    let is_place = match &ways[..] {
        [(one, _), (two, _)] => one.axis() != two.axis(),
        [_] => count == 2,
        _ => place.needs_street,
    };
    let origin = Part { sort: Sort::From(Point::Origin, ways), of: None };
    place.whereabouts.parts.push(origin);
    is_place.then_some(place)
}

/// `start (12, 28.33)`, `start 12', 28' 4"`: how far east, then how far north.
fn start_by_coordinates(words: &Typed<'_>) -> Option<Place> {
    let is_open = words.piece(FIRST + 1).is_some_and(|mark| mark.is_mark("("));
    let length = |at: usize| {
        whereabouts::distance(words, at).or_else(|| whereabouts::number_alone(words, at))
    };
    let (east, at) = length(FIRST + 1 + usize::from(is_open))?;
    words.piece(at).filter(|mark| mark.is_mark(",;"))?;
    let (north, at) = length(at + 1)?;
    let at = at + usize::from(is_open && words.piece(at).is_some_and(|mark| mark.is_mark(")")));
    let ways = [(Direction::East, east), (Direction::North, north)];
    let ways = ways.into_iter().filter(|(_, by)| by.nm() != 0).collect();
    let whereabouts = Whereabouts {
        parts: vec![Part { sort: Sort::From(Point::Origin, ways), of: None }],
        ..Whereabouts::default()
    };
    (at == words.pieces.len()).then(|| Place { whereabouts, ..Place::default() })
}

/// `start east 40'` after a size: a place as the format has it.
fn start_one_way(words: &Typed<'_>) -> Option<Place> {
    let ((way, by), end) =
        whereabouts::offset(words, FIRST + 1).filter(|_| words.says(FIRST, &["start"]))?;
    let sort = Sort::From(Point::Origin, vec![(way, by.length)]);
    let whereabouts =
        Whereabouts { parts: vec![Part { sort, of: None }], ..Whereabouts::default() };
    (end == words.pieces.len()).then(|| Place { whereabouts, ..Place::default() })
}

/// `within the garage`: the name of the last space above, if these words name it.
fn within_the_last(words: &Typed<'_>) -> Option<String> {
    let last = words.attempt.space.clone()?;
    let is_in = words.says(FIRST, &["within", "inside", "in"]);
    let first = FIRST + 1 + usize::from(words.says(FIRST + 1, &["the"]));
    let is_house = whereabouts::house(words, first).is_some();
    (is_in && !is_house && words.rest(first).eq_ignore_ascii_case(&last)).then_some(last)
}

/// `within the kitchen`: a space that has no name here.
fn within_the_unnamed(words: &Typed<'_>, space: &Space) -> Option<Answer> {
    let is_in = words.says(FIRST, &["within"]) && words.says(FIRST + 1, &["the"]);
    let is_house =
        whereabouts::house(words, FIRST + 2).is_some() || is_text(words.piece(FIRST + 2));
    (is_in && !is_house && space.within.is_none()).then(|| {
        let after = space.after_place();
        let mut then = if after.is_empty() { after } else { format!(", then `{after}`") };
        if !space.comments.is_empty() {
            then.push_str(&format!(", then `# {}`", space.comments.join(", ")));
        }
        Answer::say(
            "`within` is followed by the name of a space above on the same level, with a `\"` on each side",
            format!(
                "write `{}`, then `within` and that name, then where it starts: `start` with a way and a length from where the house's first walk begins{then}",
                space.before_place()
            ),
        )
    })
}

/// Whether a word says where something is.
fn says_where(words: &Typed<'_>) -> bool {
    let places = [
        "left", "right", "front", "rear", "back", "behind", "north", "south", "east", "west",
        "corner", "wall", "from", "beside", "near", "between", "next", "off", "against",
        "touching", "abutting", "opposite", "over", "under",
    ];
    words.find(FIRST, &places).is_some()
}

pub(super) fn can_stand_apart(kind: &str) -> bool {
    matches!(kind, "outbuilding" | "garage" | "carport" | "storage")
}

/// Whether the line begins with what is a dwelling of its own: `casita 20 x 18, 12' behind the house`.
fn is_dwelling_apart(typed: &Typed<'_>, space: &Space) -> bool {
    const ALONE: [&str; 8] =
        ["casita", "adu", "cottage", "cabin", "guesthouse", "bungalow", "granny", "dependency"];
    const HOUSES: [&str; 7] = [
        "guest house",
        "carriage house",
        "pool house",
        "mobile home",
        "manufactured home",
        "tiny house",
        "tiny home",
    ];
    let name = space.name.to_lowercase();
    let is_guest = HOUSES.iter().any(|house| name.contains(house));
    let named = cut_words(&name).any(|word| ALONE.contains(&word.as_str()));
    space.kind == "living" && (is_guest || typed.says(0, &ALONE) || named)
}

/// The words of a name in lower case.
fn cut_words(name: &str) -> impl Iterator<Item = String> + '_ {
    name.split(|c: char| !c.is_alphabetic()).map(str::to_lowercase)
}

/// Whether the words put the space away from the house; an outbuilding `behind the house` is not built against it.
fn stands_apart(space: &Space, place: &Place, words: &Typed<'_>) -> bool {
    let is_side = match &place.whereabouts.parts[..] {
        [Part { sort: Sort::Side(_), of: None }] => place.loose.is_empty(),
        _ => false,
    };
    // A side as seen from a street that is not named is still a side.
    let is_beside = place.whereabouts.parts.is_empty() && place.needs_street;
    let touches = words
        .find(FIRST, &["against", "touching", "abutting", "attached", "wall", "corner", "flush"])
        .is_some();
    let stands_alone = space.kind == "outbuilding" || is_dwelling_apart(words, space);
    // `pool house, back corner`, `greenhouse SW of the house`: of the yard, and not against the house.
    let joins = words
        .find(FIRST, &["against", "touching", "abutting", "attached", "flush", "adjoining"])
        .is_some();
    let is_yard = !joins
        && (FIRST..words.pieces.len()).all(|at| {
            words.says(at, &["in", "the", "at", "back", "rear", "left", "right", "far", "corner"])
                || words.piece(at).is_some_and(|mark| mark.is_mark(",;"))
        })
        && words.find(FIRST, &["corner", "back", "rear"]).is_some();
    let is_off_a_corner = (FIRST..words.pieces.len()).any(|at| {
        whereabouts::compass_corner(words, at)
            .is_some_and(|(_, end)| words.says(end, &["of"]) && end == at + 1)
    });
    place.is_apart
        || stands_alone && (is_side && !joins || is_beside && !touches)
        || stands_alone && is_yard
        || stands_alone && is_off_a_corner && !touches
}

/// What is missing in the line of a space, and what stays as it is.
pub(super) fn ask(typed: &Typed<'_>, space: &Space) -> String {
    let sides_follow = super::super::begins_as_side(&typed.attempt.beside.after);
    let after = space.after_place();
    let mut then = if after.is_empty() { String::new() } else { format!(", then `{after}`") };
    let size = space.comments.iter().find(|comment| size_in(comment).is_some());
    let size = size.filter(|_| !sides_follow);
    // A size that is all of a comment becomes the sides.
    let sized = size.and_then(|comment| {
        let line = Typed { line: comment, pieces: super::cut(comment), attempt: typed.attempt };
        let (found, end) = Size::at(&line, 0)?;
        (end == line.pieces.len()).then_some((comment.clone(), found))
    });
    let is_size = |comment: &String| sized.as_ref().is_some_and(|(size, _)| size == comment);
    let kept: Vec<&str> =
        space.comments.iter().filter(|comment| !is_size(comment)).map(String::as_str).collect();
    if !kept.is_empty() {
        then.push_str(&format!(", then `# {}`", kept.join(", ")));
    }
    let sides = match (&sized, size) {
        (Some((_, size)), _) => {
            let words = kept.iter().flat_map(|said| said.split(|c: char| !c.is_alphabetic()));
            let is_rough = words.map(str::to_lowercase).any(|word| ROUGH.contains(&&*word));
            format!("; on the lines below it {}", size.as_sides(is_rough))
        }
        (None, Some(_)) => "; its size is typed as its sides, one on each line below".to_owned(),
        (None, None) => String::new(),
    };
    let places = starts(typed, space.kind, space.within.is_some());
    format!("write `{}`, then where it starts: {places}{then}{sides}", space.before_place())
}
/// How the place of a space of this kind can be given at this line of the file.
pub(super) fn starts(typed: &Typed<'_>, kind: &str, is_within: bool) -> String {
    let corner = typed.attempt.beside.corners.first();
    let mut places: Vec<String> = Vec::new();
    let lies_inside = matches!(kind, "open" | "stair" | "low");
    if let Some(corner) = corner.filter(|_| !lies_inside) {
        places.push(format!("`from corner \"{corner}\"`"));
    }
    match typed.attempt.house.as_ref() {
        Some(house) if lies_inside => places
            .push(format!("`start` and how far east and north of corner 1 of `{house}` it begins")),
        Some(house) => places.push(format!(
            "`from \"{house}\" corner` and the number of the corner where its walk starts"
        )),
        None => {}
    }
    if !lies_inside || places.is_empty() {
        let start = "`start` with a way and a length from where the house's first walk begins";
        places.push(start.to_owned());
    }
    if can_stand_apart(kind) && !is_within {
        places.push("`detached` if it stands by itself".to_owned());
    }
    if let Some(house) = typed.attempt.house.as_ref().filter(|_| kind == "garage" && !is_within) {
        places.push(format!(
            "`within \"{house}\"` before one of these if the walk of `{house}` goes round the garage too"
        ));
    }
    crate::diagnostic::words::list_or(&places)
}
