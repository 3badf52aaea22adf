//! Published areas in another notation, without their unit, or without their number.

use super::super::lengths::spoken;
use super::super::pieces::{Piece, Sort};
use super::levels::capitalized;
use super::measure::{area_at, area_from, date_from};
use super::{
    Answer, Rule, Typed, digits, first_of, is_text, kind_word, quoted, sources, unnumbered,
};
use crate::units::decimal::thousands;

/// Recognizes a published area; `None` if no rule does.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        rough_figure,
        basis,
        two_published,
        european_area,
        title_in_the_comment,
        area_in_the_comment,
        split_area,
        spoken_area,
        unnumbered::sum_of_areas,
        unnumbered::without_a_number,
        unnumbered::source_first,
    ];
    first_of(rules, typed)
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

/// `listing 1,880 sq ft (MLS #4451207)`: the title goes on after the `#`.
fn title_in_the_comment(typed: &Typed<'_>) -> Option<Answer> {
    let comment = typed.attempt.beside.comment.as_deref()?.trim();
    let word = sources::word(typed.pieces.first()?)?;
    let at = typed.pieces.iter().rposition(|mark| mark.is_mark("("))?;
    let (_, end, area) = area_from(&typed.pieces, 1)?;
    let is_title = end == at
        && !typed.pieces[at..].iter().any(|mark| mark.is_mark(")"))
        && comment.ends_with(')');
    let title = format!("{} {comment}", typed.rest(at + 1));
    (is_title && !title.contains('"')).then(|| {
        let title = title.trim_end_matches(')').trim();
        Answer::line(
            format!("{word} {area} \"{title}\""),
            "a title needs a `\"` on each side; without them a `#` begins a comment",
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
    let is_area = |piece: &Piece| {
        let whole: String = piece.text.split('.').next().unwrap_or_default().replace(',', "");
        piece.is_number() && whole.parse::<u32>().is_ok_and(|area| (300..30_000).contains(&area))
    };
    // A year alone is no area.
    let is_only_a_year = |at: usize| {
        typed.pieces[at].is_year() && !FIGURES.iter().any(|word| typed.says(0, &[word]))
    };
    let with_unit = area_from(&typed.pieces, 0)
        .filter(|(_, end, _)| area_from(&typed.pieces, *end).is_none())
        .map(|(at, ..)| at);
    let areas: Vec<usize> =
        (0..typed.pieces.len()).filter(|&at| is_area(&typed.pieces[at])).collect();
    let sure: Vec<usize> =
        areas.iter().copied().filter(|&at| !typed.pieces[at].is_year()).collect();
    let at = match (&areas[..], &sure[..]) {
        _ if with_unit.is_some() => with_unit?,
        ([at], [])
            if is_only_a_year(*at)
                && typed
                    .find(0, &["says", "area", "sqft", "gla", "living", "heated"])
                    .is_none() =>
        {
            return None;
        }
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
    if others.clone().any(|other| !typed.pieces[other].is_year() && !counts(other)) {
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
    // What is called a record after the area is a title, `County record 2026`, and so is who says it, `per seller`.
    let is_titled = typed.piece(end + 1).is_some_and(|piece| piece.is_word(&FIGURES))
        && !typed.says(end, &["per"]);
    let says_who = typed.says(end, &["per"]);
    let said = format!("{} {}", typed.text(0, at), typed.text(end, last));
    let fill = [
        "says", "said", "is", "has", "shows", "the", "of", "at", "as", "and", "to", "record",
        "listing", "plan", "area", "living", "heated", "gla", "total", "finished", "sqft", "sq",
        "ft", "sf", "size", "per", "gross",
    ];
    let title: Vec<&str> = said
        .split([' ', ',', ':', '=', '(', ')'])
        .filter(|word| {
            let lower = word.to_lowercase();
            !word.is_empty() && (says_who && lower == "per" || !fill.contains(&lower.as_str()))
        })
        .collect();
    let source = typed.pieces[..last].iter().find_map(sources::word);
    let is_title = title.iter().any(|word| sources::word(&Piece::word(word)).is_none());
    let title = match (is_titled, is_title) {
        (true, _) => format!(" {}", quoted(typed.text(end, last))),
        (false, true) => format!(" {}", quoted(&title.join(" "))),
        (false, false) => String::new(),
    };
    // What the area is of is no title, and is not lost.
    let of = ["heated", "finished", "gross", "conditioned", "cooled"];
    let of: Vec<&str> =
        said.split_whitespace().filter(|word| fill.contains(word) && of.contains(word)).collect();
    let of = if of.is_empty() { String::new() } else { format!("  # {}", of.join(" ")) };
    if let Some(word) = source {
        return Some(Answer::line(
            format!("{word} {area}{title}{counting}{of}"),
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

pub(super) const FIGURES: [&str; 3] = ["record", "listing", "plan"];

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

/// `record one thousand nine hundred sq ft`, `tax record: 19 hundred`: an area in words.
fn spoken_area(typed: &Typed<'_>) -> Option<Answer> {
    let said = ["says", "said", "is", "shows", "has", "the", "area", "tax", "county"];
    let is_source = |piece: &Piece| {
        sources::word(piece).is_some()
            || piece.is_word(&FIGURES)
            || piece.is_word(&said)
            || piece.is_mark(":=,-–")
    };
    let first =
        typed.pieces.iter().position(|piece| !is_source(piece)).filter(|first| *first > 0)?;
    let own = typed.pieces[..first]
        .iter()
        .find_map(|piece| FIGURES.iter().find(|word| piece.is_word(&[word])));
    let word = own.copied().or_else(|| typed.pieces[..first].iter().find_map(sources::word))?;
    let (all, at) = spoken_number(typed, first)?;
    let has_word = typed.find(1, &["thousand", "hundred"]).is_some_and(|word| word < at);
    let unit = if at == typed.pieces.len() { "sq ft" } else { "" };
    (all >= 100 && has_word).then(|| {
        Answer::line(
            format!("{word} {} {unit}{}", thousands(all), typed.rest(at)),
            "numbers are written in digits",
        )
    })
}

/// The number that the words from the piece at `first` on say, with hundreds and thousands, and the index after them.
pub(super) fn spoken_number(typed: &Typed<'_>, first: usize) -> Option<(i64, usize)> {
    let (mut all, mut part, mut at) = (0_i64, 0_i64, first);
    while at < typed.pieces.len() {
        if typed.says(at, &["thousand"]) {
            all = all.checked_add(part.max(1).checked_mul(1_000)?)?;
            part = 0;
        } else if typed.says(at, &["hundred"]) {
            part = part.max(1).checked_mul(100)?;
        } else if let Some(value) =
            spoken(&typed.lower(at)).or_else(|| typed.lower(at).parse().ok())
        {
            part = part.checked_add(value)?;
        } else if !typed.says(at, &["and"]) {
            break;
        }
        at += 1;
    }
    (at > first).then_some((all.checked_add(part)?, at))
}

/// `record 1,934 sq ft, half foot`, `record 1,934 sq ft (outside)`: to what its sides are rounded, and to which face they
/// were measured.
pub(super) fn basis(typed: &Typed<'_>) -> Option<Answer> {
    let (first, end, area) = area_from(&typed.pieces, 1).filter(|(first, ..)| *first == 1)?;
    let filler = [
        "by",
        "to",
        "the",
        "nearest",
        "sides",
        "rounded",
        "rounding",
        "walls",
        "of",
        "on",
        "each",
        "measured",
        "measurements",
        "dims",
        "dimensions",
        "faces",
        "face",
        "all",
        "in",
        "from",
        "sketch",
        "card",
        "lengths",
        "were",
        "a",
    ];
    let titled =
        typed.pieces.len().checked_sub(1).filter(|&last| last > end && is_text(typed.piece(last)));
    let rest = typed
        .pieces
        .get(end..titled.unwrap_or(typed.pieces.len()))
        .filter(|rest| !rest.is_empty() && FIGURES.iter().any(|word| typed.says(0, &[word])))?;
    let said: Vec<String> = rest
        .iter()
        .filter(|piece| !piece.is_word(&filler) && !piece.is_mark(",;.:()-–"))
        .map(|piece| piece.text.to_lowercase())
        .collect();
    let said: Vec<&str> = said.iter().map(String::as_str).collect();
    let basis = match said[..] {
        ["foot" | "feet" | "ft"] | ["whole" | "full" | "even", "foot" | "feet" | "ft"] => {
            "sides whole-foot"
        }
        ["half", "foot" | "feet" | "ft"]
        | ["1", "/", "2", "foot" | "feet" | "ft"]
        | ["½", "foot" | "feet" | "ft"] => "sides half-foot",
        ["unknown" | "?"] => "sides unknown",
        ["inch" | "inches"] | ["whole", "inch" | "inches"] => "sides inch",
        ["tenth" | "tenths"] | ["tenth" | "tenths", "foot" | "feet"] => "sides tenth-foot",
        ["outside" | "exterior" | "outer"] => "measured to outside",
        ["inside" | "interior" | "inner"] => "measured to inside",
        ["frame" | "framing" | "studs"] => "measured to frame",
        _ => return None,
    };
    let title = titled.map_or_else(String::new, |title| format!(" {}", typed.rest(title)));
    let line = format!("{} {area} {basis}{title}", typed.text(0, first));
    (line != typed.line).then(|| {
        Answer::line(
            line,
            "to what its sides are rounded is `sides`, and to which face they go is `measured to`",
        )
    })
}

/// `record: 1,934 ; listing: 1,899`: two figures, each on its own line.
fn two_published(typed: &Typed<'_>) -> Option<Answer> {
    let mut lines = Vec::new();
    let mut at = 0;
    while at < typed.pieces.len() {
        let own = FIGURES.iter().find(|word| typed.says(at, &[word])).copied();
        let word = own.or_else(|| sources::word(typed.piece(at)?))?;
        at += 1;
        at += usize::from(typed.says(at, &["says", "has", "sheet", "card"]));
        while typed.piece(at).is_some_and(|mark| mark.is_mark(":=-–")) {
            at += 1;
        }
        let number =
            typed.piece(at).filter(|number| number.is_number() && number.text.len() >= 3)?;
        let (end, area) =
            area_at(&typed.pieces, at).unwrap_or((at + 1, format!("{} sq ft", number.text)));
        let is_year = area_at(&typed.pieces, at).is_none() && number.is_year();
        let is_said = lines.iter().any(|line: &String| line.starts_with(word));
        if is_year || is_said {
            return None;
        }
        lines.push(format!("{word} {area}"));
        at = end;
        while typed.piece(at).is_some_and(|mark| mark.is_mark(";,/|&.")) || typed.says(at, &["and"])
        {
            at += 1;
        }
    }
    (lines.len() == 2)
        .then(|| Answer::line(lines.join("\n"), "each published area goes on its own line"))
}

/// `listing 1,790 approx`: a figure is as it was published.
fn rough_figure(typed: &Typed<'_>) -> Option<Answer> {
    let number = typed.piece(1).filter(|number| number.is_number() && number.text.len() >= 3)?;
    let rough = ["approx", "approximately", "about", "ca", "circa", "roughly", "est", "estimated"];
    let ends = typed.pieces.get(3..)?.iter().all(|piece| piece.is_mark("."));
    (FIGURES.iter().any(|word| typed.says(0, &[word])) && typed.says(2, &rough) && ends).then(|| {
        Answer::line(
            format!("{} {} sq ft  # {}", typed.lower(0), number.text, typed.lower(2)),
            "a figure is given as it was published, with its unit; anything else goes into a comment",
        )
    })
}

/// `footprint 1,215`: an area without its unit, of what covers the ground.
pub(super) fn footprint(typed: &Typed<'_>) -> Option<Answer> {
    let [word, number] = &typed.pieces[..] else { return None };
    let area: i64 = number.text.replace(',', "").parse().ok()?;
    (word.is_word(&["footprint"]) && (100..100_000).contains(&area)).then(|| {
        Answer::line(
            format!("figure \"Footprint\" {} sq ft", number.text),
            "a figure that is not the record's, a listing's or a plan's has a name of its own, and its unit",
        )
    })
}
