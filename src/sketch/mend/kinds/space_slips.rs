//! Lines of spaces with a word too many or too few: how a space is finished, what its letters mean, where its corner is.

use super::super::pieces::Sort;
use super::measure::{area_from, length_at};
use super::{Answer, Rule, Typed, first_of, is_text, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        garage_of_cars,
        open_to_the_air,
        area_above_its_walls,
        open_loft,
        unheated_room,
        corner_in_quotation_marks,
        corner_of_a_space,
        living_by_another_word,
        covered_or_car,
        counted_in_the_record,
        built_out,
        letters_of_a_card,
    ];
    first_of(rules, typed)
}

/// `2 car att. garage 20x22`: a garage, with how many cars it holds as its name.
fn garage_of_cars(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(1, &["garage", "gar", "carport"])?;
    let is_car = |at: usize| typed.says(at, &["car", "cars", "bay", "stall"]);
    let before = (0..at).all(|at| {
        is_car(at)
            || typed.pieces[at].is_number() && typed.pieces[at].text.len() == 1
            || typed.says(
                at,
                &["one", "two", "three", "att", "attached", "single", "double", "oversized"],
            )
            || typed.pieces[at].is_mark(".,-–")
    });
    let has_name = typed.pieces.iter().any(|piece| is_text(Some(piece)));
    let has_dot = (0..at).any(|at| typed.pieces[at].is_mark("."));
    // `ATT GAR 20x22`
    if typed.says(at, &["gar"])
        && !has_name
        && (0..at).all(|at| typed.pieces[at].sort == Sort::Word)
    {
        return Some(Answer::line(
            format!("{} garage {}", typed.text(0, at), typed.rest(at + 1)),
            "a line is in whole words",
        ));
    }
    let cars = (0..at).find(|&at| is_car(at)).filter(|_| before && has_dot && !has_name)?;
    let number = typed.piece(cars.checked_sub(1)?)?;
    let number = if number.is_mark("-–") { typed.piece(cars.checked_sub(2)?)? } else { number };
    let kind = if typed.says(at, &["carport"]) { "carport" } else { "garage" };
    Some(Answer::line(
        format!("{kind} \"{}-car {kind}\" {}", number.text, typed.rest(at + 1)).trim_end(),
        "a space begins with its kind, then its name",
    ))
}

/// `open deck start north 30'`, `open frame porch 6x12 front`, `low deck 10x10`: open to the air, or near the ground, and
/// not a part of the floor that is missing.
fn open_to_the_air(typed: &Typed<'_>) -> Option<Answer> {
    const OUTSIDE: [&str; 7] =
        ["deck", "porch", "patio", "carport", "balcony", "breezeway", "court"];
    if !typed.says(0, &["open", "low", "uncovered", "unroofed"]) {
        return None;
    }
    let at = (1..typed.pieces.len().min(4)).find(|&at| {
        typed.pieces[at].sort != Sort::Word
            || super::kind_word(&typed.lower(at)).is_some_and(|kind| OUTSIDE.contains(&kind))
    })?;
    let kind =
        super::kind_word(&typed.lower(at)).filter(|_| typed.pieces[at].sort == Sort::Word)?;
    // `open to porch below` is another thing.
    if (1..at)
        .any(|at| typed.says(at, &["to", "over", "above", "under", "below", "on", "near", "by"]))
    {
        return None;
    }
    let named = is_text(typed.piece(at + 1));
    let name = if named {
        String::new()
    } else {
        let words = typed.text(0, at + 1).to_lowercase();
        format!("{} ", quoted(&super::levels::capitalized(&words)))
    };
    Some(Answer::line(
        format!("{kind} {name}{}", typed.rest(at + 1)).trim_end(),
        "a space begins with its kind, then its name; `open` and `low` alone are parts of the floor of the house",
    ))
}

/// `living area 1,226 sq ft` above walls: the line of the space, with the record's area for it.
fn area_above_its_walls(typed: &Typed<'_>) -> Option<Answer> {
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let (first, end, area) = area_from(&typed.pieces, 1)?;
    let named = typed.says(0, &["living", "heated", "conditioned"])
        && (first == 1 || typed.says(1, &["area", "space", "sf", "sqft"]));
    let is_alone = typed.says(0, &["gla", "house", "home"]) && first == 1;
    let has_name = typed.pieces.iter().any(|piece| is_text(Some(piece)));
    let is_next = first <= 2 || typed.piece(first - 1).is_some_and(|mark| mark.is_mark(":=-–"));
    (follows && (named || is_alone) && !has_name && is_next && end == typed.pieces.len()).then(|| {
        Answer::Lines(
            vec![
                format!("living \"House\" recorded {area}"),
                format!("living \"House\"  # {}", super::remark(typed.rest(first))),
            ],
            "walls follow, so this is the line of a space: its kind and its name, and after `recorded` the area that the record gives it, if it does".to_owned(),
        )
    })
}

/// `open loft 10 x 12`: a loft that is open to the room below counts, what is open to below does not.
fn open_loft(typed: &Typed<'_>) -> Option<Answer> {
    let is_loft =
        typed.says(0, &["open"]) && typed.says(1, &["loft", "landing", "mezzanine", "balcony"]);
    let has_name = typed.pieces.iter().any(|piece| is_text(Some(piece)));
    let size = super::size_in(typed.line).filter(|_| is_loft && !has_name)?;
    let begin = typed.line.find(size)?;
    let ends = typed.line.len() == begin + size.len();
    let at = typed.pieces.iter().position(|piece| piece.at >= begin)?;
    let one = length_at(&typed.pieces, at)?;
    let two = length_at(&typed.pieces, one.end + 1)?;
    let name = quoted(&super::levels::capitalized(&typed.lower(1)));
    let lines = |kind: &str, one: &str, two: &str| {
        format!("{kind} {name}\nnorth {one}\neast {two}\nsouth {one}\nwest {two}")
    };
    (ends && at == 2).then(|| {
        Answer::Lines(
            vec![
                lines("living", &one.text, &two.text),
                lines("living", &two.text, &one.text),
                lines("open", &one.text, &two.text),
                lines("open", &two.text, &one.text),
            ],
            "a floor on which one can stand is `living`; `open` is a floor that is missing over the room below".to_owned(),
        )
    })
}

/// `unheated sunroom "Sunroom" start east 40'`: what is not heated like the house is no `living`.
fn unheated_room(typed: &Typed<'_>) -> Option<Answer> {
    let is_cold = typed.says(0, &["unheated", "uninsulated", "unconditioned"]);
    let at = (1..typed.pieces.len().min(4)).find(|&at| is_text(typed.piece(at)))?;
    let words = (1..at).all(|at| typed.pieces[at].sort == Sort::Word) && at > 1;
    let kind = match typed.lower(1).as_str() {
        "sunroom" | "solarium" | "sun" | "florida" | "porch" | "patio" => "porch",
        "garage" => "garage",
        "room" | "addition" | "storage" | "attic" | "living" | "workshop" => "unfinished",
        _ => return None,
    };
    (is_cold && words).then(|| {
        Answer::line(
            format!("{kind} {}  # {}", typed.rest(at), typed.text(0, at)),
            "what is not heated is no `living`: the line begins with its kind, then its name",
        )
    })
}

/// `from "House" corner "4"`, `from "House" corner D`: a corner of a walk has a number.
fn corner_in_quotation_marks(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(2, &["corner"])?;
    let is_from = is_text(typed.piece(at - 1)) && typed.says(at.checked_sub(2)?, &["from"]);
    let named = typed.name(at + 1, at + 2);
    let letter = named.chars().next().filter(|c| named.len() == 1 && c.is_ascii_alphabetic());
    let number: usize = match letter {
        Some(letter) => {
            usize::try_from(u32::from(letter.to_ascii_uppercase()) - u32::from('A')).ok()? + 1
        }
        None => named.parse().ok().filter(|number| (1..100).contains(number))?,
    };
    let is_text = is_text(typed.piece(at + 1));
    let rest = typed.rest(at + 2);
    let line = format!("{} corner {number} {rest}", typed.text(0, at)).trim_end().to_owned();
    (is_from && (is_text || letter.is_some()) && number < 30)
        .then(|| Answer::line(line, "the corners of a walk have numbers, 1 where it begins"))
}

/// `porch "Porch" from garage corner`: a corner of a space above, which of them is not said.
fn corner_of_a_space(typed: &Typed<'_>) -> Option<Answer> {
    let last = typed.pieces.len().checked_sub(1)?;
    let from = typed.find(1, &["from", "at"])?;
    let first = from + 1 + usize::from(typed.says(from + 1, &["the"]));
    let named = typed.name(first, last).to_lowercase();
    let beside = &typed.attempt.beside;
    let is_corner = beside.corners.iter().any(|corner| corner.eq_ignore_ascii_case(&named));
    let space = beside.spaces.iter().find(|space| space.to_lowercase() == named)?;
    let is_kind = super::kind_word(&typed.lower(0)).is_some();
    (is_kind && !is_corner && first < last && typed.says(last, &["corner"])).then(|| {
        let before = typed.text(0, from);
        Answer::say(
            "the corners of a space have numbers: which of them is it",
            format!(
                "write `{before} from {} corner` and its number: 1 where its walk begins, 2 where its second wall begins, and so on",
                quoted(space)
            ),
        )
    })
}

/// `liveable "House"`, `GLA "House"`, `heated "House"`: other words for `living`.
fn living_by_another_word(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        "liveable",
        "livable",
        "gla",
        "heated",
        "conditioned",
        "habitable",
        "livingspace",
        "living-area",
    ];
    let second = typed.says(1, &["area", "space", "living"]);
    let at = 1 + usize::from(second);
    let first = typed.says(0, &words) && is_text(typed.piece(at));
    first.then(|| {
        Answer::line(format!("living {}", typed.rest(at)), "finished and heated space is `living`")
    })
}

/// `CP "Porch"`: covered porch or carport.
fn covered_or_car(typed: &Typed<'_>) -> Option<Answer> {
    let named =
        typed.piece(0).is_some_and(|piece| piece.is_word(&["cp"])) && is_text(typed.piece(1));
    let name = typed.name(1, 2).to_lowercase();
    named.then(|| {
        let mut kinds = ["porch", "carport"];
        if name.contains("car") {
            kinds.reverse();
        }
        Answer::Lines(
            kinds.iter().map(|kind| format!("{kind} {}", typed.rest(1))).collect(),
            "a line begins with the kind of the space in full: these letters are used for a covered porch and for a carport".to_owned(),
        )
    })
}

/// `porch "Porch" counted in record`: what the record counts stands on the record's line.
fn counted_in_the_record(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(2, &["counted", "included"]).filter(|_| is_text(typed.piece(1)))?;
    let mut stop = at + 1;
    while typed.says(stop, &["in", "by", "on", "the"]) {
        stop += 1;
    }
    let of_record =
        typed.says(stop, &["record", "records", "county", "appraisal", "assessor", "card", "cad"]);
    super::kind_word(&typed.lower(0))
        .filter(|kind| *kind != "living" && of_record && stop > at + 1)?;
    let before = typed.text(0, at);
    let after = typed.rest(stop + 1);
    let line = format!("{before} {after}").trim_end().to_owned();
    Some(Answer::say(
        "`counted` on the line of a space is what you count; what the record counts stands on the record's line",
        format!(
            "write this line as `{line}`, and add `counting {}` to the end of the `record` line",
            quoted(&typed.name(1, 2))
        ),
    ))
}

/// `bump out 2' x 8' on the back`: a small part of the house that stands out.
fn built_out(typed: &Typed<'_>) -> Option<Answer> {
    let end = match typed.lower(0).as_str() {
        "bump" | "pop" if typed.says(1, &["out"]) => 2,
        "bumpout" | "bump-out" | "popout" | "pop-out" => 1,
        _ => return None,
    };
    let size = super::size_in(typed.line)?;
    // Without a place it may be three walls of the walk.
    let says_place =
        typed.find(end, &["on", "at", "front", "back", "rear", "side", "left", "right"]);
    says_place.filter(|_| !typed.rest(end).is_empty() && typed.rest(end) != size)?;
    Some(Answer::line(
        format!("living \"Bump-out\" {}", typed.rest(end)),
        "a part of the house that stands out is `living`, with a name of its own",
    ))
}

/// `OFP 6x12`, `STG 8x10`: letters that each office uses in its own way.
fn letters_of_a_card(typed: &Typed<'_>) -> Option<Answer> {
    let word = typed.piece(0).filter(|piece| piece.sort == Sort::Word)?;
    let is_code = (2..=4).contains(&word.text.len())
        && word.text.chars().all(|c| c.is_ascii_uppercase())
        && super::kind_word(&word.text.to_lowercase()).is_none();
    let known = [
        "bsmt", "gar", "op", "cp", "sp", "ag", "dg", "mh", "br", "lr", "ba", "carp", "uf", "fin",
        "res", "up", "den", "shed", "deck", "barn", "att", "det", "pool", "spa", "loft", "hall",
        "room", "west", "east", "main", "low", "new", "old", "lot",
    ];
    let size = super::size_in(typed.line).filter(|_| is_code && !word.is_word(&known))?;
    let is_next = typed.rest(1).starts_with(size);
    let at = typed
        .pieces
        .iter()
        .position(|piece| typed.rest(1).starts_with(size) && piece.at > word.at)?;
    let one = length_at(&typed.pieces, at)?;
    let two = length_at(&typed.pieces, one.end + 1)?;
    let (code, one, two) = (&word.text, &one.text, &two.text);
    is_next.then(|| {
        Answer::say(
            format!("`{code}` is not a word of a sides file, and offices use such letters in different ways"),
            format!(
                "write what it is in full, as `porch \"{code}\"`, `garage \"{code}\"`, `deck \"{code}\"`, `unfinished \"{code}\"` or, if it is lived in, `living \"{code}\"`, where it starts, and its sides on the lines below, `north {one}` `east {two}` `south {one}` `west {two}` or with the two lengths exchanged; if it stands outside and the record does not count it, put the line after a `#`"
            ),
        )
    })
}
