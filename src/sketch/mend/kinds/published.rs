//! Published areas in another notation, without their unit, or without their number.

use super::super::lengths::spoken;
use super::super::pieces::{Piece, Sort};
use super::levels::capitalized;
use super::measure::{area_at, area_from, date_from};
use super::{Answer, Typed, digits, is_text, kind_word, quoted, sources};
use crate::units::decimal::thousands;

/// Recognizes a published area; `None` if no rule does.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: [fn(&Typed<'_>) -> Option<Answer>; 7] = [
        european_area,
        area_in_the_comment,
        split_area,
        spoken_area,
        sum_of_areas,
        without_a_number,
        source_first,
    ];
    rules.iter().find_map(|rule| rule(typed))
}

/// `record 1.095,40 sq m`: points between thousands and a comma before decimals.
fn european_area(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.pieces.iter().position(|piece| {
        piece.is_number() && piece.text.contains('.') && piece.text.contains(',')
    })?;
    let number = &typed.pieces[at].text;
    let (whole, decimals) = number.rsplit_once(',')?;
    let mut groups = whole.split('.');
    let is_first = groups.next().is_some_and(|first| (1..=3).contains(&first.len()));
    let fits = is_first
        && groups.all(|group| group.len() == 3)
        && (1..=2).contains(&decimals.len())
        && !whole.contains(',');
    let begins = ["record", "listing", "plan", "figure", "missing", "lot", "value"];
    if !fits || !typed.says(0, &begins) {
        return None;
    }
    let meant = format!("{}.{decimals}", whole.replace('.', ","));
    let line =
        format!("{} {meant} {}", typed.text(0, at), typed.rest(at + 1)).trim_end().to_owned();
    let cause = "commas stand between thousands, a point before decimals";
    if typed.says(0, &begins[..3]) && at + 1 == typed.pieces.len() {
        return Some(Answer::Lines(
            vec![format!("{line} sq m"), format!("{line} sq ft")],
            format!("{cause}; and an area needs its unit"),
        ));
    }
    Some(Answer::line(line, cause))
}

/// `MLS# 1184022 1,840 sf`: what stands after a `#` is not read.
fn area_in_the_comment(typed: &Typed<'_>) -> Option<Answer> {
    let comment = typed.attempt.beside.comment.as_deref()?.trim_start_matches('#').trim();
    let word = sources::word(typed.pieces.first()?)?;
    let pieces = super::cut(comment);
    let (first, end, area) = area_from(&pieces, 0)?;
    (typed.pieces.len() <= 3 && end == pieces.len()).then(|| {
        let number = comment.get(..pieces[first].at).unwrap_or_default().trim();
        let title = format!("{} {number}", typed.line);
        Answer::line(
            format!("{word} {area} {}", quoted(title.trim())),
            format!("after a `#` is a comment; an area begins with the word for who published it, here `{word}`"),
        )
    })
}

/// `CAD living area 2031`, `Juniper Cnty record 2283 incl porch`, `appraiser's report 1840`: a published area without its unit.
pub(super) fn figure(typed: &Typed<'_>) -> Option<Answer> {
    if typed.attempt.space.is_some()
        || typed.pieces.iter().any(|piece| piece.is_mark("$'%") || is_text(Some(piece)))
    {
        return None;
    }
    let is_year = |piece: &Piece| {
        piece.text.len() == 4 && (piece.text.starts_with("19") || piece.text.starts_with("20"))
    };
    let is_area = |piece: &Piece| {
        let whole: String = piece.text.split('.').next().unwrap_or_default().replace(',', "");
        piece.is_number() && whole.parse::<u32>().is_ok_and(|area| (300..30_000).contains(&area))
    };
    let with_unit = area_from(&typed.pieces, 0)
        .filter(|(_, end, _)| area_from(&typed.pieces, *end).is_none())
        .map(|(at, ..)| at);
    let areas: Vec<usize> =
        (0..typed.pieces.len()).filter(|&at| is_area(&typed.pieces[at])).collect();
    let sure: Vec<usize> =
        areas.iter().copied().filter(|&at| !is_year(&typed.pieces[at])).collect();
    let at = match (&areas[..], &sure[..]) {
        _ if with_unit.is_some() => with_unit?,
        ([at], _) | (_, [at]) => *at,
        _ => return None,
    };
    let others =
        (0..typed.pieces.len()).filter(|&other| other != at && typed.pieces[other].is_number());
    let rooms = ["bath", "baths", "bed", "beds", "br", "ba", "bedroom", "bedrooms", "story", "car"];
    let counts = |other: usize| {
        let piece = &typed.pieces[other];
        digits::is_small(piece)
            && piece.text.len() <= 2
            && (typed.says(other + 1, &rooms) || other > 0 && typed.pieces[other - 1].is_mark("-"))
    };
    if others.clone().any(|other| !is_year(&typed.pieces[other]) && !counts(other)) {
        return None;
    }
    let words = |piece: &Piece| {
        matches!(piece.sort, Sort::Word | Sort::Number) || piece.is_mark(":=,.()-–'’?&/")
    };
    if !typed.pieces.iter().all(words) || date_from(&typed.pieces, 0).is_some() {
        return None;
    }
    let mut end = at + 1;
    while typed.says(end, &["sq", "square", "ft", "feet", "sf", "sqft"])
        || typed.piece(end).is_some_and(|mark| mark.is_mark("."))
    {
        end += 1;
    }
    let area = format!("{} sq ft", typed.pieces[at].text);
    let not = [
        "lot", "land", "site", "garage", "porch", "deck", "parcel", "acct", "account", "no", "not",
        "without", "less", "minus", "plus", "zip", "built", "value", "assessed", "phone", "case",
        "room", "basement", "shed", "each", "floor", "story", "2nd", "first", "second", "yd",
        "yards", "yard", "m", "acres", "acre", "ha",
    ];
    let with = typed
        .find(end, &["incl", "including", "includes", "included", "with", "counting", "counts"]);
    let counted = with.and_then(|with| {
        let kind =
            (with + 1..typed.pieces.len()).find(|&kind| kind_word(&typed.lower(kind)).is_some())?;
        (with..typed.pieces.len())
            .all(|at| {
                at == kind
                    || typed.says(
                        at,
                        &[
                            "incl",
                            "including",
                            "includes",
                            "included",
                            "with",
                            "counting",
                            "counts",
                            "the",
                            "a",
                        ],
                    )
                    || typed.pieces[at].is_mark("?.,()")
            })
            .then(|| capitalized(&typed.lower(kind)))
    });
    let last =
        if counted.is_some() { with.unwrap_or(typed.pieces.len()) } else { typed.pieces.len() };
    if typed.pieces[..last].iter().any(|piece| piece.is_word(&not))
        || with.is_some() && counted.is_none()
    {
        return None;
    }
    let counting = counted.map_or_else(String::new, |kind| format!(" counting \"{kind}\""));
    let said = format!("{} {}", typed.text(0, at), typed.text(end, last));
    let fill = [
        "says", "is", "has", "shows", "the", "of", "at", "as", "and", "to", "record", "listing",
        "plan", "area", "living", "heated", "gla", "total", "finished", "sqft", "sq", "ft", "sf",
        "size", "per",
    ];
    let title: Vec<&str> = said
        .split([' ', ',', ':', '=', '(', ')'])
        .filter(|word| !word.is_empty() && !fill.contains(&word.to_lowercase().as_str()))
        .collect();
    let source = typed.pieces[..last].iter().find_map(sources::word);
    let is_title = title.iter().any(|word| sources::word(&Piece::word(word)).is_none());
    let title = if is_title { format!(" {}", quoted(&title.join(" "))) } else { String::new() };
    if let Some(word) = source {
        return Some(Answer::line(
            format!("{word} {area}{title}{counting}"),
            format!(
                "an area begins with the word for who published it, here `{word}`, and has its unit"
            ),
        ));
    }
    let says = [
        "says", "area", "size", "heated", "gla", "living", "sq", "sf", "sqft", "square", "shows",
        "states",
    ];
    (typed.find(0, &says).is_some() && !typed.attempt.knows_first).then(|| {
        let name = super::plainly(typed.text(0, at));
        Answer::say(
            "a published area begins with the word for who published it",
            format!("write `record {area}` if it is the record's, `listing {area}` if it is a listing's, or `figure \"{}\" {area}`", name.trim_matches([' ', ':', ',']))
        )
    })
}

const FIGURES: [&str; 3] = ["record", "listing", "plan"];

/// `record 1,93 4 sq ft`: a space inside a number.
fn split_area(typed: &Typed<'_>) -> Option<Answer> {
    let (one, two) = (typed.piece(1)?, typed.piece(2)?);
    let digits = |piece: &Piece| piece.is_number() && !piece.text.contains('.');
    let whole = format!("{}{}", one.text, two.text);
    let (first, last) = whole.split_once(',')?;
    let fits = digits(one)
        && digits(two)
        && (1..=2).contains(&first.len())
        && last.len() == 3
        && !one.text.ends_with(',');
    (typed.says(0, &FIGURES)
        && fits
        && one.text.contains(',')
        && last.bytes().all(|b| b.is_ascii_digit()))
    .then(|| {
        let unit = if typed.pieces.len() == 3 { " sq ft" } else { "" };
        Answer::line(
            format!("{} {whole}{unit} {}", typed.lower(0), typed.rest(3)).trim_end(),
            "is there a space inside the number?",
        )
    })
}

/// `record one thousand nine hundred sq ft`: an area in words.
fn spoken_area(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &FIGURES) {
        return None;
    }
    let (mut all, mut part, mut at) = (0_i64, 0_i64, 1);
    while at < typed.pieces.len() {
        if typed.says(at, &["thousand"]) {
            all = all.checked_add(part.max(1).checked_mul(1_000)?)?;
            part = 0;
        } else if typed.says(at, &["hundred"]) {
            part = part.max(1).checked_mul(100)?;
        } else if let Some(value) = spoken(&typed.lower(at)) {
            part = part.checked_add(value)?;
        } else if !typed.says(at, &["and"]) {
            break;
        }
        at += 1;
    }
    let all = all.checked_add(part)?;
    let has_thousand = typed.find(1, &["thousand"]).is_some_and(|thousand| thousand < at);
    let unit = if at == typed.pieces.len() { "sq ft" } else { "" };
    (at > 1 && all >= 100 && has_thousand).then(|| {
        Answer::line(
            format!("{} {} {unit}{}", typed.lower(0), thousands(all), typed.rest(at)),
            "numbers are written in digits",
        )
    })
}

/// `record 1,200 + 734`, `record 1,200 first 734 second`: one figure in parts.
fn sum_of_areas(typed: &Typed<'_>) -> Option<Answer> {
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
    let rest = typed.pieces.get(1..).filter(|_| typed.says(0, &FIGURES))?;
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
            format!("{} {} sq ft  # {}", typed.lower(0), thousands(all), typed.rest(1)),
            "a figure is one number: the parts added up",
        )
    })
}

/// `record excludes garage`, `record sides to nearest foot`, `record lists a carport, not there`: what belongs on the
/// record's own line, or on that of a space.
fn without_a_number(typed: &Typed<'_>) -> Option<Answer> {
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
fn source_first(typed: &Typed<'_>) -> Option<Answer> {
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
    match figure(typed)? {
        answer @ Answer::Lines(..) => Some(answer),
        Answer::Say { .. } => None,
    }
    .filter(|_| !typed.says(0, &own))
    .or_else(|| own_figure(typed))
}

/// `appraiser 2019 got 1,912`: a figure that is not the record's, a listing's or a plan's.
fn own_figure(typed: &Typed<'_>) -> Option<Answer> {
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
