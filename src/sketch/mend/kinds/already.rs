//! Lines that say something of a space which the file has already: its area on the record, or that it is taken off. A
//! second line of that space would count it twice.

use super::super::pieces::{Piece, Sort};
use super::measure::area_at;
use super::{Answer, Rule, Typed, first_of, levels, plainly, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[figures_of_spaces, recorded_below, taken_off_already];
    first_of(rules, typed)
}

/// The words for a record, and for what it does.
const RECORD: [&str; 12] = [
    "record", "records", "recorded", "county", "county's", "card", "roll", "assessor", "rec",
    "tax", "cad", "district",
];

/// Words between those, which say nothing more.
const FILLER: [&str; 18] = [
    "on", "the", "per", "by", "has", "have", "says", "is", "as", "in", "at", "of", "area", "and",
    "for", "with", "a", "its",
];

/// What a house may be called beside its parts.
const HOUSE: [&str; 6] = ["house", "living", "dwelling", "total", "main", "home"];

/// The units of land.
const LAND: [&str; 4] = ["acres", "acre", "hectares", "hectare"];

/// Words before what an area counts as well.
const COUNTS: [&str; 6] = ["incl", "including", "includes", "counting", "counts", "with"];

/// Words before the one for a part, which tell it from others.
const WHICH: [&str; 10] = [
    "attached", "detached", "covered", "front", "rear", "back", "side", "open", "separate",
    "garden",
];

/// The kind of space for which a word stands.
pub(in crate::sketch) fn kind_meant(word: &str) -> Option<&'static str> {
    match word {
        "barn" | "shed" | "workshop" | "stable" | "greenhouse" => Some("outbuilding"),
        "veranda" | "verandah" | "stoop" => Some("porch"),
        "terrace" => Some("patio"),
        word => super::kind_word(word).filter(|kind| !["living", "open", "low"].contains(kind)),
    }
}

/// How the line of a space begins: by its kind and, if its name is known, by its name.
fn line_of(typed: &Typed<'_>, word: &str, kind: &str) -> Option<String> {
    let all = &typed.attempt.beside.known;
    let of_kind: Vec<_> = all.iter().filter(|[own, _]| **own == *kind).collect();
    let named = |name: &str| name.to_lowercase().split_whitespace().any(|part| part == word);
    let by_name: Vec<_> = of_kind.iter().filter(|[_, name]| named(name)).collect();
    match (&by_name[..], &of_kind[..]) {
        ([[_, name]], _) | ([], [[_, name]]) => Some(format!("`{kind} {}`", quoted(name))),
        (_, []) => None,
        _ => Some(format!("the `{kind}` that is meant")),
    }
}

/// `garage on record 484`, `record garage 484 sq ft, porch 72 sq ft`, `record 110 sq m, barn 115 sq m`: the areas of spaces
/// that the file has.
fn figures_of_spaces(typed: &Typed<'_>) -> Option<Answer> {
    if typed.line.contains('"') {
        return None;
    }
    let (mut says_record, mut said_unit) = (false, None);
    // Each area with the word of its part, an empty one for the house.
    let mut all: Vec<(Option<String>, Option<String>)> = vec![(None, None)];
    let (mut counted, mut land): (Vec<String>, Option<String>) = (Vec::new(), None);
    let mut at = 0;
    while let Some(piece) = typed.piece(at) {
        let word = typed.lower(at);
        let last = all.last_mut()?;
        if let Some((end, area)) = area_at(&typed.pieces, at) {
            // `record 1,284 sq ft, 0.69 acres`: no house is measured in acres.
            if LAND.iter().any(|unit| area.ends_with(unit)) && land.is_none() && last.1.is_none() {
                land = Some(area);
                at = end;
                continue;
            }
            said_unit = said_unit.or_else(|| area.split_once(' ').map(|(_, unit)| unit.to_owned()));
            if last.1.replace(area).is_some() {
                return None;
            }
            at = end;
            continue;
        }
        if piece.is_number() {
            let bare = piece.text.replace(',', "");
            let is_area = (2..=5).contains(&bare.len()) && !bare.contains('.');
            let is_measured = typed.piece(at + 1).is_some_and(|next| next.is_mark("'\"’”/-–×*"))
                || typed.says(at + 1, &["x", "by", "ft", "feet", "in", "m", "car", "cm"]);
            if !is_area || is_measured || last.1.replace(piece.text.clone()).is_some() {
                return None;
            }
        } else if piece.is_word(&RECORD) {
            says_record = true;
        } else if piece.is_word(&COUNTS) && last.1.is_some() {
            // `record 1,690 sq ft incl. porch`: what the area counts has none of its own.
            let next =
                (at + 1..typed.pieces.len()).find(|&at| typed.pieces[at].sort == Sort::Word)?;
            let word = typed.lower(next);
            kind_meant(&word)?;
            counted.push(word);
            at = next;
        } else if kind_meant(&word).is_some() {
            if last.0.as_ref().is_some_and(|other| kind_meant(other) != kind_meant(&word)) {
                return None;
            }
            last.0 = Some(word);
        } else if piece.is_mark(",;+/&") || piece.is_word(&["and"]) {
            // `county record, garage 484`: the first words have no area.
            if *last != (None, None) {
                all.push((None, None));
            }
        } else if !(piece.is_word(&FILLER)
            || piece.is_word(&HOUSE)
            || piece.is_word(&WHICH)
            || piece.is_word(&["lot", "land"])
            || piece.is_mark(":=().-–?"))
        {
            return None;
        }
        at += 1;
    }
    let default = if typed.attempt.is_metric { "sq m" } else { "sq ft" };
    let unit = said_unit.unwrap_or_else(|| default.to_owned());
    let with_unit = |area: String| {
        if area.contains(' ') { area } else { format!("{area} {unit}") }
    };
    let (mut whole, mut parts, mut others) = (None, Vec::new(), Vec::new());
    for (word, area) in all {
        // `…, 0.69 acres` and `…, lot 0.69 acres` leave nothing behind.
        if (&word, &area) == (&None, &None) && land.is_some() {
            continue;
        }
        let area = with_unit(area?);
        let Some(word) = word else {
            if whole.replace(area).is_some() {
                return None;
            }
            continue;
        };
        let kind = kind_meant(&word)?;
        match line_of(typed, &word, kind) {
            Some(line) => parts.push(format!("at the end of the line of {line} write `recorded {area}`")),
            None => others.push(format!(
                "if the house has a {word}, `recorded {area}` goes on its line, and if it is there no more, write `missing {kind} {} recorded {area}`",
                quoted(&levels::capitalized(&word))
            )),
        }
    }
    // `barn on county record 115 sqm` above all spaces: of the part that the line begins with.
    let is_above =
        typed.attempt.space.is_none() && !super::super::begins_as_wall(&typed.attempt.beside.after);
    let begins = kind_meant(&typed.lower(0)).is_some() && whole.is_none() && is_above;
    // `record lot 0.69 acres`
    let is_apart = land.is_some() || whole.is_some() && (!others.is_empty() || !counted.is_empty());
    let is_figure_alone = others.is_empty() && parts.is_empty() && land.is_none();
    if !says_record || is_figure_alone || parts.is_empty() && !begins && !is_apart {
        return None;
    }
    let is_known = !parts.is_empty();
    if let Some(land) = land {
        others
            .push(format!("at the end of the line that begins with `lot` write `recorded {land}`"));
    }
    let counting = |word: &String| {
        let kind = kind_meant(word)?;
        let all = &typed.attempt.beside.known;
        let name = all.iter().find(|[own, _]| **own == *kind).map(|[_, name]| quoted(name));
        let name = name.unwrap_or_else(|| quoted(&levels::capitalized(word)));
        Some(format!("if it counts the {word} too, write `counting {name}` after that area"))
    };
    others.splice(0..0, counted.iter().filter_map(counting));
    let here = match whole {
        Some(whole) if typed.attempt.beside.has_record => format!(
            "take this line out, and see that the line that begins with `record` has `{whole}`"
        ),
        Some(whole) => format!("this line is `record {whole}`"),
        None => "take this line out".to_owned(),
    };
    let help = [vec![here], parts, others].concat().join("; ");
    let cause = "the record's area of a part stands on the line of that space itself";
    Some(Answer::say(
        if is_known { format!("{cause}, which the file has") } else { cause.to_owned() },
        help,
    ))
}

/// `recorded 462` below the walls of a space: its area on the record, which stands on its own line.
fn recorded_below(typed: &Typed<'_>) -> Option<Answer> {
    let name = typed.attempt.space.as_ref().filter(|_| typed.says(0, &["recorded"]))?;
    let from = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=")));
    let default = if typed.attempt.is_metric { "sq m" } else { "sq ft" };
    let bare = || {
        let number = typed.piece(from).filter(|number| number.is_number())?;
        let is_area = (2..=5).contains(&number.text.replace(',', "").len());
        is_area.then(|| (from + 1, format!("{} {default}", number.text)))
    };
    let (end, area) = area_at(&typed.pieces, from).or_else(bare)?;
    (end == typed.pieces.len()).then(|| {
        Answer::say(
            "the area that the record has of a space stands at the end of the line of that space",
            format!(
                "take this line out, and write `recorded {area}` at the end of the line that has the name {}",
                quoted(name)
            ),
        )
    })
}

/// `deduct foyer`, `foyer not counted`, `minus the stair well`: what is taken off is said by its own line.
fn taken_off_already(typed: &Typed<'_>) -> Option<Answer> {
    const TAKES: [&str; 14] = [
        "minus",
        "less",
        "deduct",
        "deducted",
        "deducting",
        "subtract",
        "subtracted",
        "remove",
        "exclude",
        "excluded",
        "excluding",
        "uncounted",
        "not",
        "don't",
    ];
    const SMALL: [&str; 28] = [
        "the", "a", "an", "is", "are", "was", "to", "be", "from", "of", "off", "out", "taken",
        "take", "count", "counted", "included", "area", "total", "upper", "floor", "level",
        "upstairs", "open", "below", "sq", "sqft", "ft",
    ];
    // Above walls it is the line of a space.
    if super::super::begins_as_wall(&typed.attempt.beside.after) {
        return None;
    }
    let takes = |piece: &Piece| piece.is_word(&TAKES);
    let begins_with_a_mark = typed.piece(0)?.is_mark("-–");
    if !begins_with_a_mark && !typed.pieces.iter().any(takes) {
        return None;
    }
    let lower = plainly(typed.line).to_lowercase();
    let words: Vec<&str> = lower.split(|c: char| !c.is_alphanumeric() && c != '\'').collect();
    let known = &typed.attempt.beside.known;
    let names = |[kind, name]: &&[std::rc::Rc<str>; 2]| {
        let own = name.to_lowercase();
        let parts: Vec<&str> = own.split_whitespace().collect();
        ["open", "low", "stair"].contains(&&**kind)
            && !parts.is_empty()
            && words.windows(parts.len()).any(|some| some == parts)
    };
    let [kind, name] = known.iter().find(names)?;
    let own = name.to_lowercase();
    let is_plain = words.iter().all(|word| {
        word.is_empty()
            || own.split_whitespace().any(|part| part == *word)
            || TAKES.contains(word)
            || SMALL.contains(word)
            || word.trim_end_matches('\'').chars().all(|c| c.is_ascii_digit())
            || ["x", "by", "in"].contains(word)
    });
    is_plain.then(|| {
        let shown = quoted(name);
        match &**kind {
            "stair" => Answer::say(
                "a stair is a part of each floor that it joins, and is not taken off",
                format!("take this line out: the line `stair {shown}` says enough"),
            ),
            kind => Answer::say(
                format!("`{kind} {shown}` is taken off by its own line already; a second one would take it off twice"),
                "take this line out",
            ),
        }
    })
}
