//! Published areas with words around them: a part of the house, a title, an area in words.

use super::super::pieces::Sort;
use super::measure::{date_from, money_from};
use super::{Answer, Typed, is_text, quoted};

/// `county has garage 470`: the record's area of a part.
pub(super) fn part_of_the_record(typed: &Typed<'_>) -> Option<Answer> {
    let says = [
        "county", "record", "assessor", "cnty", "card", "has", "says", "shows", "the", "for", "on",
        "lists", "at", "is", "of", "as", "attached", "detached",
    ];
    let at = (1..typed.pieces.len()).find(|&at| super::kind_word(&typed.lower(at)).is_some())?;
    let kind = super::kind_word(&typed.lower(at)).filter(|kind| *kind != "living")?;
    let number = (1..typed.pieces.len()).find(|&at| typed.pieces[at].is_number())?;
    let unit = |at: usize| {
        typed.says(at, &["sq", "ft", "sf", "sqft", "feet", "square"])
            || typed.pieces[at].is_mark(".:,=")
    };
    let only =
        (0..typed.pieces.len()).all(|i| i == at || i == number || typed.says(i, &says) || unit(i));
    let area = &typed.pieces[number].text;
    (typed.says(0, &says[..5]) && only && at < number && area.len() >= 2).then(|| {
        Answer::say(
            format!("the record's area of a {kind} stands on the line of the {kind} itself"),
            format!(
                "take this line out, and at the end of the line that begins with `{kind}` write `recorded {area} sq ft`; if it is there no more, write `missing {kind} \"{}\" recorded {area} sq ft`",
                super::levels::capitalized(kind)
            ),
        )
    })
}

/// `record "1,900 sq ft"`: an area between quotation marks.
pub(super) fn quoted_area(typed: &Typed<'_>) -> Option<Answer> {
    let text = typed.piece(1).filter(|text| is_text(Some(text)))?;
    let inner = text.text.trim_matches(['"', '“', '”']).trim();
    let is_area = super::measure::area_at(&super::cut(inner), 0).is_some();
    (typed.says(0, &["record", "listing", "plan"]) && is_area).then(|| {
        Answer::line(
            format!("{} {inner} {}", typed.lower(0), typed.rest(2)).trim_end(),
            "an area stands without quotation marks",
        )
    })
}

/// `heated sq ft 1,900`, `living area sqft: 1900`: the unit before the number.
pub(super) fn unit_first(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        "heated",
        "living",
        "total",
        "finished",
        "conditioned",
        "house",
        "home",
        "building",
        "floor",
        "gross",
        "above",
        "grade",
        "area",
    ];
    let unit = typed.find(1, &["sq", "sqft", "sf", "square"])?;
    let mut at = unit + 1;
    at += usize::from(typed.says(at, &["ft", "feet", "footage"]));
    while typed.piece(at).is_some_and(|mark| mark.is_mark(":=."))
        || typed.says(at, &["is", "footage"])
    {
        at += 1;
    }
    let number =
        typed.piece(at).filter(|number| number.is_number() && at + 1 == typed.pieces.len())?;
    let only = (0..unit).all(|at| typed.says(at, &words));
    only.then(|| {
        let title = quoted(typed.text(0, unit));
        Answer::Lines(
            ["record", "listing"]
                .map(|word| format!("{word} {} sq ft {title}", number.text))
                .into(),
            "an area has a word that says who published it, then its number and its unit"
                .to_owned(),
        )
    })
}

/// `record ~1,900 sq ft`, `listing ca. 145 qm`: a figure is as it was published.
pub(super) fn roughly(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["record", "listing", "plan"]) {
        return None;
    }
    let mut at = 1;
    while typed.piece(at).is_some_and(|mark| mark.is_mark("~≈.:"))
        || typed.says(
            at,
            &["says", "is", "ca", "approx", "approximately", "about", "circa", "around", "roughly"],
        )
    {
        at += 1;
    }
    let says = typed.text(1, at).trim_matches([':', ' ']).replace(['~', '≈'], "about");
    let roughly =
        typed.find(1, &["ca", "approx", "approximately", "about", "circa", "around", "roughly"]);
    let is_rough = roughly.is_some_and(|word| word < at) || says.contains("about");
    (at > 1 && is_rough && typed.piece(at)?.is_number()).then(|| {
        Answer::line(
            format!("{} {}  # {says}", typed.lower(0), typed.rest(at)),
            "a figure is given as it was published; anything else goes into a comment",
        )
    })
}

/// `listing 1475 per MLS sheet`, `record 1,980 sq ft (2 x 990)`: a title or a remark after the figure.
pub(super) fn title_of_a_figure(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["record", "listing", "plan"]) || typed.line.contains('"') {
        return None;
    }
    let number = typed.piece(1).filter(|number| number.is_number() && number.text.len() >= 3)?;
    let head = typed.lower(0);
    let found = super::measure::area_at(&typed.pieces, 1);
    let (end, area) = match &found {
        Some((end, area)) => (*end, area.clone()),
        None if typed.says(2, &["excl", "excluding", "without"]) => {
            return Some(Answer::line(
                format!("{head} {} sq ft  # {}", number.text, super::remark(typed.rest(2))),
                "a figure counts the living area unless it says more; anything else goes into a comment",
            ));
        }
        None if typed.says(2, &["per", "on", "from", "according", "in", "says"]) => {
            (2, format!("{} sq ft", number.text))
        }
        None => return None,
    };
    let rest = typed.rest(end);
    let spoken =
        typed.pieces[end..].iter().all(|piece| piece.sort == Sort::Word || piece.is_mark(".,'’-"));
    if found.is_none() && spoken && !rest.is_empty() {
        return Some(Answer::line(
            format!("{head} {area} {}", quoted(rest)),
            "an area has its unit, and its title a `\"` on each side",
        ));
    }
    // `(2 x 990)`: what it was worked out from.
    let last = typed.pieces.len() - 1;
    let worked = typed.piece(end).is_some_and(|mark| mark.is_mark("([=,"))
        && (typed.find(end, &["x", "by"]).is_some()
            || typed.pieces[end..].iter().any(|piece| piece.is_mark("×*+")))
        && typed.pieces[end..].iter().all(|piece| {
            piece.is_number() || piece.is_mark("()[]×*+=,.") || piece.is_word(&["x", "by"])
        })
        && last > end;
    if worked {
        return Some(Answer::line(
            format!("{head} {area}  # {rest}"),
            "a figure is one number; anything else goes into a comment",
        ));
    }
    let dated = date_from(&typed.pieces, end).is_some()
        && typed.says(end, &["as", "of", "on", "dated", "from"])
        && money_from(&typed.pieces, end).is_none();
    if dated {
        return Some(Answer::line(
            format!("{head} {area}  # {rest}"),
            "a figure has no day; anything else goes into a comment",
        ));
    }
    // `incl. foyer`: counted beside the living area.
    let with = typed.says(end, &["incl", "including", "includes", "with", "counts", "counting"]);
    let at = typed
        .find(end, &["foyer", "stairs", "stair", "void", "atrium", "loft", "landing", "eaves"])?;
    let only = typed.pieces[end..].iter().enumerate().all(|(i, piece)| {
        end + i == at
            || piece.is_mark(".,()")
            || piece.is_word(&[
                "incl",
                "including",
                "includes",
                "with",
                "counts",
                "counting",
                "the",
                "open",
            ])
    });
    (with && only).then(|| {
        let name = super::levels::capitalized(&typed.lower(at));
        Answer::line(
            format!("{head} {area} counting \"{name}\""),
            format!("what else a figure counts comes after `counting`, by its name as it is typed below: `{name}`, or a longer one"),
        )
    })
}
