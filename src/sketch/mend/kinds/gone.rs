//! What the record lists and the house does not have, in the words that people use for it.

use super::super::pieces::Sort;
use super::described::in_one_unit;
use super::levels::capitalized;

use super::measure::{Measure, area_from, length_at, rectangle};
use super::walls::is_way;
use super::{Answer, Typed, is_text, kind_word};
use crate::sketch::nouns;

/// Words that say that something is not there.
const GONE: [&[&str]; 64] = [
    &["gone"],
    &["removed"],
    &["demolished"],
    &["demoed"],
    &["razed"],
    &["destroyed"],
    &["dismantled"],
    &["nonexistent"],
    &["non-existent"],
    &["collapsed"],
    &["vanished"],
    &["torn", "down"],
    &["tore", "down"],
    &["tear", "down"],
    &["teardown"],
    &["torn", "off"],
    &["torn", "out"],
    &["taken", "down"],
    &["took", "down"],
    &["taken", "away"],
    &["took", "it", "down"],
    &["pulled", "down"],
    &["knocked", "down"],
    &["burned", "down"],
    &["burnt", "down"],
    &["burned"],
    &["blew", "down"],
    &["blew", "away"],
    &["fell", "down"],
    &["fell", "in"],
    &["hauled", "off"],
    &["hauled", "away"],
    &["moved", "away"],
    &["not", "there"],
    &["not", "here"],
    &["isn't", "there"],
    &["isn't", "here"],
    &["isnt", "there"],
    &["ain't", "there"],
    &["wasn't", "there"],
    &["not", "on", "site"],
    &["not", "on", "the", "site"],
    &["not", "present"],
    &["not", "standing"],
    &["not", "found"],
    &["not", "built"],
    &["never", "built"],
    &["never", "existed"],
    &["never", "had"],
    &["does", "not", "exist"],
    &["doesn't", "exist"],
    &["doesnt", "exist"],
    &["did", "not", "exist"],
    &["no", "longer"],
    &["not", "any", "more"],
    &["not", "anymore"],
    &["there", "is", "none"],
    &["there's", "none"],
    &["is", "none"],
    &["none", "there"],
    &["none", "here"],
    &["don't", "have"],
    &["do", "not", "have"],
    &["have", "none"],
];

/// Where the words begin that say that something is not there.
fn said(typed: &Typed<'_>) -> Option<usize> {
    (0..typed.pieces.len()).find(|&at| {
        GONE.iter()
            .any(|words| words.iter().enumerate().all(|(i, word)| typed.says(at + i, &[word])))
    })
}

/// `shed not there anymore, county has 96 sf`, `record shows deck 100 sf, there is none`, `county has a shed 96 sf that
/// is gone`, `no pool house, card says 240`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let knows = typed.says(
        0,
        &[
            "missing",
            "corner",
            "level",
            "value",
            "comparable",
            "lot",
            "case",
            "property",
            "address",
        ],
    );
    let is_wall = is_way(typed, 0) && !nouns::is_known(&typed.lower(1));
    if knows || is_wall || typed.line.contains('$') {
        return None;
    }
    let sources = [
        "county", "record", "records", "card", "assessor", "cad", "tax", "district", "roll",
        "lists", "listed",
    ];
    let is_no = typed.says(0, &["no"]) && typed.find(1, &sources).is_some();
    let said = said(typed).or(is_no.then_some(0))?;
    let noun = |at: usize| nouns::kinds(&typed.lower(at));
    let houses = |at: usize| {
        typed.says(at, &["house", "home"]) && !(at > 0 && typed.says(at - 1, &nouns::HOUSES_APART))
    };
    let first = (0..typed.pieces.len()).find(|&at| {
        !noun(at).is_empty() && !houses(at) && !typed.says(at, &["living", "open", "low"])
    });
    let Some(first) = first else { return unknown(typed, said) };
    // The last noun of several that stand together: `storage shed`, `pool house`.
    let mut last = first;
    while !noun(last + 1).is_empty() && !houses(last + 1) {
        last += 1;
    }
    let mut begin = first;
    while begin > 0 && describes(typed, begin - 1) {
        begin -= 1;
    }
    let is_building = typed.says(last, &["house"]);
    let own =
        kind_word(&typed.lower(first)).filter(|_| first == last || is_text(typed.piece(last + 1)));
    let kind = own.unwrap_or(if is_building { "outbuilding" } else { noun(last)[0] });
    let name = match typed.piece(last + 1).filter(|text| is_text(Some(text))) {
        Some(text) => text.text.trim_matches(['"', '“', '”']).to_owned(),
        None => capitalized(&typed.text(begin, last + 1).to_lowercase()),
    };
    let head = format!("missing {kind} \"{name}\" recorded");
    let cause = "what the record lists and the house does not have is `missing`";
    Some(match area(typed) {
        Some((area, remark)) => {
            let remarks: Vec<String> = remark.into_iter().chain(since(typed, said)).collect();
            let comment = match remarks.is_empty() {
                true => String::new(),
                false => format!("  # {}", remarks.join(", ")),
            };
            let missing = format!("{head} {area}{comment}");
            // `tear down` does not say whether it has been.
            let is_open = typed.says(said, &["tear", "teardown"]);
            match still_there(typed, kind, &name, &comment).filter(|_| is_open) {
                Some(there) => Answer::Lines(
                    vec![missing, there],
                    format!("{cause}; what still stands is measured like any other"),
                ),
                None => Answer::line(missing, cause),
            }
        }
        None => Answer::say(
            format!("{cause}, with the area on the record"),
            format!(
                "write `{head}`, then the area on the record; what the record does not list needs no line"
            ),
        ),
    })
}

/// What is still to be torn down, with the sides that its size gives.
fn still_there(typed: &Typed<'_>, kind: &str, name: &str, comment: &str) -> Option<String> {
    let (one, two) = size(typed)?;
    let (one, two) = in_one_unit(&one, &two);
    super::placed::can_stand_apart(kind).then(|| {
        format!(
            "{kind} \"{name}\" detached{comment}\nnorth {one}\neast {two}\nsouth {one}\nwest {two}"
        )
    })
}

/// The two lengths of the only size on the line.
fn size(typed: &Typed<'_>) -> Option<(Measure, Measure)> {
    (0..typed.pieces.len()).find_map(|at| {
        let one = length_at(&typed.pieces, at)?;
        let by = typed.says(one.end, &["x", "by"])
            || typed.piece(one.end).is_some_and(|mark| mark.is_mark("×*"));
        let two = length_at(&typed.pieces, one.end + 1).filter(|_| by)?;
        Some((one, two))
    })
}

/// `trailer gone, county 600 sf`: something that is not known for a space, with an area on the record.
fn unknown(typed: &Typed<'_>, said: usize) -> Option<Answer> {
    let mut end = said;
    while end > 0
        && typed.says(end - 1, &["is", "was", "has", "been", "are", "long", "now", "since"])
    {
        end -= 1;
    }
    let first = usize::from(typed.says(0, &["the", "a", "old"]));
    let plain = (first..end).all(|at| typed.pieces[at].sort == Sort::Word);
    let sources = ["county", "record", "card", "assessor", "cad", "roll"];
    let says = typed.find(end, &sources).is_some();
    if !plain || !says || !(1..=3).contains(&end.saturating_sub(first)) || typed.attempt.knows_first
    {
        return None;
    }
    let (area, _) = area(typed)?;
    let name = capitalized(&typed.text(first, end).to_lowercase());
    Some(Answer::line(
        format!("missing outbuilding \"{name}\" recorded {area}"),
        "what the record lists and the house does not have is `missing`",
    ))
}

/// Since when it is gone, in a clause with a year: `torn down in 2019`.
fn since(typed: &Typed<'_>, said: usize) -> Option<String> {
    let end = (said..typed.pieces.len())
        .find(|&at| {
            typed.pieces[at].is_mark(",;:()")
                || at > said && typed.says(at, &["county", "record", "card"])
        })
        .unwrap_or(typed.pieces.len());
    let has_year = typed.pieces[said..end].iter().any(|piece| piece.is_year());
    let other = typed.pieces[said..end].iter().filter(|piece| piece.is_number()).count() > 1;
    (has_year && !other).then(|| super::plainly(typed.text(said, end)))
}

/// Whether a word describes the noun behind it.
fn describes(typed: &Typed<'_>, at: usize) -> bool {
    let words = [
        "old", "front", "back", "rear", "side", "metal", "wood", "wooden", "small", "big", "large",
        "little", "covered", "screened", "screen", "storage", "tool", "garden", "pool", "guest",
        "chicken", "hen", "hot", "detached", "second", "upper", "enclosed", "open", "brick",
        "concrete", "car", "horse", "utility", "pole", "pump", "hay", "play", "tree",
    ];
    typed.says(at, &words)
}

/// The area on the record that the line gives, and the size that it was computed from.
fn area(typed: &Typed<'_>) -> Option<(String, Option<String>)> {
    if let Some((_, _, area)) = area_from(&typed.pieces, 0) {
        return Some((area, None));
    }
    let size = (0..typed.pieces.len()).find_map(|at| {
        let one = length_at(&typed.pieces, at)?;
        let by = typed.says(one.end, &["x", "by"])
            || typed.piece(one.end).is_some_and(|mark| mark.is_mark("×*"));
        let two = length_at(&typed.pieces, one.end + 1).filter(|_| by)?;
        Some((rectangle(one.length, two.length)?, super::plainly(typed.text(at, two.end))))
    });
    if let Some((area, size)) = size {
        return Some((area, Some(size)));
    }
    let mut numbers = typed
        .pieces
        .iter()
        .filter(|piece| piece.is_number() && piece.text.len() >= 2 && !piece.is_year());
    let only = numbers.next().filter(|_| numbers.next().is_none())?;
    let says = [
        "county", "record", "records", "recorded", "card", "assessor", "cad", "tax", "roll",
        "says", "lists", "listed", "shows", "has",
    ];
    typed.find(0, &says)?;
    Some((format!("{} sq ft", only.text), None))
}
