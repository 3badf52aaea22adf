//! Published areas that are given in parts, by another word first, or not at all.

use super::super::pieces::Piece;
use super::levels::capitalized;
use super::measure::area_at;
use super::published::{FIGURES, figure};
use super::{Answer, Typed, digits, is_text, kind_word, sources};
use crate::units::decimal::thousands;

/// `record 1,200 + 734`, `record 1,200 first 734 second`: one figure in parts.
pub(super) fn sum_of_areas(typed: &Typed<'_>) -> Option<Answer> {
    let between = [
        "first",
        "second",
        "1st",
        "2nd",
        "upper",
        "lower",
        "main",
        "floor",
        "level",
        "up",
        "down",
        "and",
        "plus",
        "upstairs",
        "downstairs",
        "sq",
        "ft",
        "sf",
        "sqft",
        "st",
        "nd",
        "ground",
        "on",
        "the",
    ];
    let number = |piece: &Piece| {
        let whole = piece.text.replace(',', "");
        let is_area = piece.is_number() && whole.len() >= 3 && !whole.contains('.');
        whole.parse::<i64>().ok().filter(|_| is_area)
    };
    // A title stays at the end.
    let last = typed.pieces.len().saturating_sub(1);
    let titled = Some(last).filter(|&last| last > 2 && super::is_text(typed.piece(last)));
    let end = titled.unwrap_or(typed.pieces.len());
    let rest = typed.pieces.get(1..end).filter(|_| typed.says(0, &FIGURES))?;
    let title = titled.map_or_else(String::new, |at| format!(" {}", typed.rest(at)));
    let areas: Vec<i64> = rest.iter().filter_map(number).collect();
    let only = rest.iter().all(|piece| {
        number(piece).is_some()
            || piece.is_word(&between)
            || piece.is_mark("+&,.:()/")
            || digits::is_small(piece) && piece.text.len() == 1
    });
    let parts = rest.iter().any(|piece| {
        piece.is_mark("+&")
            || piece.is_word(&[
                "plus", "first", "second", "upper", "lower", "main", "upstairs", "floor", "up",
                "ground", "st",
            ])
    });
    let all = areas.iter().try_fold(0_i64, |all, area| all.checked_add(*area))?;
    (areas.len() == 2 && only && parts).then(|| {
        Answer::line(
            format!("{} {} sq ft{title}  # {}", typed.lower(0), thousands(all), typed.text(1, end)),
            "a figure is one number: the parts added up",
        )
    })
}

/// `record excludes garage`, `record sides to nearest foot`, `record lists a carport, not there`: what belongs on the
/// record's own line, or on that of a space.
pub(super) fn without_a_number(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &FIGURES)
        || typed.pieces.iter().any(|piece| piece.is_number() || is_text(Some(piece)))
    {
        return None;
    }
    let first = typed.lower(0);
    let kind = (1..typed.pieces.len()).find_map(|at| {
        kind_word(&typed.lower(at)).or(typed.says(at, &["shed", "barn"]).then_some("outbuilding"))
    });
    let gone = typed
        .find(1, &["gone", "there", "missing", "removed", "torn", "demolished", "exist"])
        .is_some();
    if let Some(kind) = kind.filter(|_| gone) {
        let name = capitalized(kind);
        return Some(Answer::say(
            "what the record lists and the house does not have is `missing`, with the area on the record",
            format!("write `missing {kind} \"{name}\" recorded`, then the area on the record"),
        ));
    }
    let help = if typed.find(1, &["excludes", "excluding", "without", "not"]).is_some()
        && kind.is_some()
    {
        format!(
            "write `{first}`, the area and its unit; it counts the living area unless it says `counting`, so what it leaves out needs no word"
        )
    } else if let Some(kind) = kind.filter(|_| {
        typed
            .find(
                1,
                &["includes", "including", "include", "incl", "counts", "counting", "with", "has"],
            )
            .is_some()
    }) {
        format!("write `{first}`, the area and its unit, then `counting \"{}\"`", capitalized(kind))
    } else if typed.find(1, &["sides", "rounded", "nearest", "rounds"]).is_some() {
        format!(
            "write `{first}`, the area and its unit, then `sides whole-foot`, `half-foot`, `inch` or `tenth-foot`, all on one line"
        )
    } else {
        return None;
    };
    Some(Answer::say("the area itself is missing", help))
}

/// `living area per CAD 1,934`, `agent measured 1,899`, `appraiser 2019 got 1,912`: whose figure it is comes first.
pub(super) fn source_first(typed: &Typed<'_>) -> Option<Answer> {
    let living = typed.says(0, &["living", "heated", "finished", "total"])
        && typed.says(1, &["area", "space", "sqft", "sq", "footage"]);
    let begins = [
        "agent",
        "agents",
        "realtor",
        "appraiser",
        "assessment",
        "broker",
        "inspector",
        "architect",
        "surveyor",
        "insurance",
        "lender",
    ];
    if typed.attempt.space.is_some()
        || !(living || typed.says(0, &begins))
        || area_at(&typed.pieces, 0).is_some()
    {
        return None;
    }
    let has_source = typed.pieces.iter().any(|piece| sources::word(piece).is_some());
    if living && !has_source {
        return None;
    }
    let own = ["appraiser", "inspector", "surveyor", "insurance", "lender"];
    let is_own = own.iter().any(|word| typed.says(0, &[word]));
    match figure(typed) {
        Some(answer @ Answer::Lines(..)) if !is_own => Some(answer),
        _ => own_figure(typed),
    }
}

/// `appraiser 2019 got 1,912`: a figure that is not the record's, a listing's or a plan's.
fn own_figure(typed: &Typed<'_>) -> Option<Answer> {
    // `appraiser came 3/21/2026`
    if super::measure::date_from(&typed.pieces, 0).is_some() {
        return None;
    }
    let at = typed.pieces.iter().rposition(|piece| {
        let whole: String = piece.text.replace(',', "");
        piece.is_number() && whole.parse::<u32>().is_ok_and(|area| (300..30_000).contains(&area))
    })?;
    let mut end = at + 1;
    while typed.says(end, &["sq", "ft", "sf", "sqft", "feet", "square"])
        || typed.piece(end).is_some_and(|mark| mark.is_mark("."))
    {
        end += 1;
    }
    let mut last = at;
    while last > 1
        && (typed.says(last - 1, &["got", "says", "measured", "found", "has", "at", "is"])
            || typed.pieces[last - 1].is_mark(":=,"))
    {
        last -= 1;
    }
    let name = super::plainly(typed.text(0, last));
    (end == typed.pieces.len() && at > 0 && !name.is_empty() && !typed.line.contains(['\'', '$']))
        .then(|| {
            Answer::line(
                format!("figure \"{name}\" {} sq ft", typed.pieces[at].text),
                "a figure that is not the record's, a listing's or a plan's has a name of its own",
            )
        })
}
