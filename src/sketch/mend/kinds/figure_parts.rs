//! What stands behind the area of a record on its line: the floors that it is the sum of, the buildings that it counts,
//! the year in which somebody measured.

use super::already::kind_meant;
use super::measure::area_at;
use super::{Answer, Rule, Typed, first_of, levels, quoted};
use crate::units::length::Length;

const FIGURES: [&str; 3] = ["record", "listing", "plan"];

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[of_its_floors, of_buildings, of_somebody, inner_walls];
    first_of(rules, typed)
}

/// The area right after the first word, and the piece after it; a number of three digits or more needs no unit.
fn area_after(typed: &Typed<'_>, at: usize) -> Option<(usize, String)> {
    let bare = || {
        let number = typed.piece(at).filter(|number| number.is_number())?;
        let digits = number.text.chars().filter(char::is_ascii_digit).count();
        let default = if typed.attempt.is_metric { "sq m" } else { "sq ft" };
        (digits >= 3 && !number.text.contains('.'))
            .then(|| (at + 1, format!("{} {default}", number.text)))
    };
    area_at(&typed.pieces, at).or_else(bare)
}

/// `record 2,100 sq ft main floor 1,263`: the area of the house, and how much of it is on which floor.
fn of_its_floors(typed: &Typed<'_>) -> Option<Answer> {
    const FLOORS: [&str; 19] = [
        "main",
        "upper",
        "lower",
        "ground",
        "first",
        "second",
        "third",
        "1st",
        "2nd",
        "3rd",
        "upstairs",
        "downstairs",
        "floor",
        "level",
        "up",
        "down",
        "fl",
        "story",
        "of",
    ];
    if !typed.says(0, &FIGURES) || typed.line.contains(['"', '#']) {
        return None;
    }
    let (end, area) = area_after(typed, 1)?;
    let whole = value(&area)?;
    let (mut at, mut floors, mut parts) = (end, 0, Vec::new());
    while let Some(piece) = typed.piece(at) {
        if let Some((next, part)) = area_after(typed, at) {
            parts.push(value(&part)?);
            at = next;
            continue;
        }
        let is_ordinal = piece.is_number() && typed.says(at + 1, &["st", "nd", "rd"]);
        if is_ordinal || typed.says(at, &FLOORS) {
            floors += 1;
            at += 1 + usize::from(is_ordinal);
            continue;
        }
        let joins =
            piece.is_mark(",;:=()+&-–") || typed.says(at, &["and", "with", "sq", "ft", "sf"]);
        if !joins {
            return None;
        }
        at += 1;
    }
    // `record 1,200 first 734 second`: each floor stands after its area.
    let ends_in_a_number = area_ends(typed);
    // Parts that are more than the whole are not its parts.
    let is_part =
        ends_in_a_number && floors > 0 && !parts.is_empty() && parts.iter().sum::<i64>() <= whole;
    is_part.then(|| {
        Answer::line(
            format!("{} {area}  # {}", typed.lower(0), typed.rest(end).trim_matches([',', ';', ' '])),
            "a figure is that of the whole house; how much of it is on which floor goes into a comment",
        )
    })
}

/// Whether the last words of a line are an area, with or without its unit.
fn area_ends(typed: &Typed<'_>) -> bool {
    (0..typed.pieces.len()).any(|at| {
        area_after(typed, at).is_some_and(|(end, _)| {
            (end..typed.pieces.len()).all(|at| typed.pieces[at].is_mark(").,;"))
        })
    })
}

/// The number of an area.
fn value(area: &str) -> Option<i64> {
    let number = area.split(' ').next()?.replace(',', "");
    number.split('.').next()?.parse().ok()
}

/// `record 201.8 sq m (house + barn)`, `record 1,200 sq ft, barn included`: what the figure counts besides the house.
fn of_buildings(typed: &Typed<'_>) -> Option<Answer> {
    const SAYS: [&str; 20] = [
        "house",
        "home",
        "farmhouse",
        "dwelling",
        "living",
        "and",
        "incl",
        "including",
        "includes",
        "included",
        "inclusive",
        "plus",
        "with",
        "the",
        "also",
        "both",
        "counting",
        "counts",
        "a",
        "of",
    ];
    const COUNTS: [&str; 10] = [
        "and",
        "incl",
        "including",
        "includes",
        "included",
        "plus",
        "with",
        "also",
        "counting",
        "counts",
    ];
    if !typed.says(0, &FIGURES) || typed.line.contains('#') {
        return None;
    }
    let (end, area) = area_after(typed, 1)?;
    let says_so = (end..typed.pieces.len())
        .any(|at| typed.says(at, &COUNTS) || typed.pieces[at].is_mark("+&"));
    let mut names: Vec<String> = Vec::new();
    for at in end..typed.pieces.len() {
        let word = typed.lower(at);
        if typed.says(at, &SAYS) || typed.pieces[at].is_mark("(),;:+&.") {
            continue;
        }
        let kind = kind_meant(&word)?;
        let name = name_of(typed, &word, kind).unwrap_or_else(|| levels::capitalized(&word));
        names.push(quoted(&name));
    }
    (says_so && !names.is_empty()).then(|| {
        Answer::line(
            format!("{} {area} counting {}", typed.lower(0), names.join(", ")),
            "what a figure counts besides the house is named after `counting`",
        )
    })
}

/// What the space that a word means is called, or will be where its line is an answer.
fn name_of(typed: &Typed<'_>, word: &str, kind: &str) -> Option<String> {
    let all = &typed.attempt.beside.known;
    let of_kind: Vec<_> = all.iter().filter(|[own, _]| **own == *kind).collect();
    let named = |name: &str| name.to_lowercase().split_whitespace().any(|part| part == word);
    let mut by_name = of_kind.iter().filter(|[_, name]| named(name));
    let found = match (by_name.next(), by_name.next(), &of_kind[..]) {
        (Some([_, name]), None, _) | (None, _, [[_, name]]) => name,
        _ => return None,
    };
    Some(levels::capitalized(found))
}

/// `appraiser 2,044 sq ft in 2021`: the figure of somebody else, and the year of it.
fn of_somebody(typed: &Typed<'_>) -> Option<Answer> {
    const WHO: [&str; 12] = [
        "appraiser",
        "appraisal",
        "insurance",
        "insurer",
        "builder",
        "seller",
        "survey",
        "surveyor",
        "bank",
        "lender",
        "permit",
        "agent",
    ];
    let mut at = usize::from(typed.says(0, &["the", "my", "our"]));
    let who = at;
    if !typed.says(who, &WHO) {
        return None;
    }
    at += 1;
    while typed.says(
        at,
        &["measured", "says", "has", "got", "said", "figure", "policy", "report", "'s", "s"],
    ) || typed.piece(at).is_some_and(|mark| mark.is_mark(":=,-–'’"))
    {
        at += 1;
    }
    let (end, area) = area_at(&typed.pieces, at)?;
    let year = (end..typed.pieces.len()).find(|&at| typed.pieces[at].is_year())?;
    let only = (end..typed.pieces.len()).all(|at| {
        at == year
            || typed.says(at, &["in", "policy", "of", "from", "year", "the", "report", "for"])
            || typed.pieces[at].is_mark("(),;.-–")
    });
    // An appraisal district is the county's.
    if only && typed.says(who, &["appraiser", "appraisal"]) {
        let year = &typed.pieces[year].text;
        let name = quoted(typed.text(who, who + 1));
        return Some(Answer::Lines(
            vec![format!("record {area} \"{year}\""), format!("figure {name} {area} \"{year}\"")],
            "the appraisal district's figure is the `record`; an appraiser's own is a `figure` with a name of its own".to_owned(),
        ));
    }
    only.then(|| {
        Answer::line(
            format!(
                "figure {} {area}  # {}",
                quoted(typed.text(who, who + 1)),
                typed.text(end, year + 1).trim_matches([',', '(', ' '])
            ),
            "a figure that is not the record's, a listing's or a plan's has a name of its own",
        )
    })
}

/// `interior walls 4 1/2"`, `partitions 4 1/2"`: walls between rooms need no thickness, and the word may mean the outer ones.
fn inner_walls(typed: &Typed<'_>) -> Option<Answer> {
    const INNER: [&str; 6] = ["interior", "inside", "inner", "partition", "partitions", "party"];
    const OTHERS: [&str; 10] =
        ["walls", "wall", "are", "is", "thick", "thickness", "all", "of", "about", "the"];
    let [(first, thick)] = &super::measure::lengths(&typed.pieces, 0)[..] else { return None };
    let is_inner = (0..*first).any(|at| typed.says(at, &INNER[..5]));
    let only = (0..typed.pieces.len()).all(|at| {
        (*first..thick.end).contains(&at)
            || typed.says(at, &INNER)
            || typed.says(at, &OTHERS)
            || typed.pieces[at].is_mark(",:=()-–.")
    });
    let says = typed.find(0, &["walls", "wall", "partition", "partitions"]).is_some();
    let is_thin = thick.has_unit && thick.length.nm() < Length::FOOT.nm().saturating_mul(2);
    (is_inner && only && says && is_thin && typed.attempt.space.is_none()).then(|| {
        Answer::say(
            "walls between rooms count as floor, and their thickness is not needed; `wall` is that of the outer walls, from the inside to the frame or the siding",
            format!("if it is that of the outer walls, write `wall {}`; if not, put a `#` before this line", thick.text),
        )
    })
}
