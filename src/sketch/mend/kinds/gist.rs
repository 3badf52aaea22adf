//! Levels, comparables and lines at the head of a file that say in other words what the format has a line for.

use super::super::pieces::{Piece, Sort};
use super::levels::capitalized;
use super::measure::{area_from, date_at, date_from, lengths, money_from};
use super::{Answer, Rule, Typed, digits, first_of, kind_word, level_words, quoted};

/// The rules that come before the others, since another would take a part of the line for a name or a note.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        corner_then_house,
        comparable,
        outline_alone,
        years_of_the_house,
        level_words::level,
        level_words::short_level,
        level_words::level_with_a_remark,
        brick_thickness,
        after_a_dash,
        exemption,
        level_words::attic,
        all_measured,
        mills,
        tax_year,
        day_alone,
        values_before_their_words,
        day_first,
        accuracy,
        missing_with_a_mark,
        abbreviation,
        unheated,
    ];
    first_of(rules, typed)
}

/// `all measurements inside`, `exterior dimensions`, `measured in inches`: what is said of all lengths.
fn all_measured(typed: &Typed<'_>) -> Option<Answer> {
    let filler = [
        "all",
        "measurements",
        "on",
        "measurement",
        "dimensions",
        "dims",
        "lengths",
        "measured",
        "are",
        "is",
        "were",
        "taken",
        "in",
        "to",
        "from",
        "the",
        "at",
        "walls",
        "wall",
        "everything",
        "of",
        "house",
        "taped",
        "numbers",
        "brick",
        "face",
        "sides",
        "figures",
        "sizes",
        "faces",
    ];
    // `everything in meters unless noted`
    let last = typed
        .find(2, &["unless", "except"])
        .filter(|&last| {
            const NOTED: [&str; 9] =
                ["noted", "otherwise", "stated", "marked", "said", "where", "as", "it", "says"];
            typed.pieces[last + 1..].iter().all(|piece| piece.is_word(&NOTED))
        })
        .unwrap_or(typed.pieces.len());
    // `outer face`, `inside faces`
    let is_face_alone = last == 2 && typed.says(1, &["face", "faces"]);
    let says: Vec<&Piece> = typed
        .pieces
        .iter()
        .take(last)
        .filter(|piece| !piece.is_word(&filler) && !piece.is_mark(".,:()="))
        .collect();
    let same = |piece: &Piece| match piece.text.to_lowercase().as_str() {
        "interior" | "drywall" | "indoors" | "inner" => "inside".to_owned(),
        "exterior" | "outdoors" | "siding" | "outer" => "outside".to_owned(),
        "studs" | "framing" => "frame".to_owned(),
        // Tenths are of a foot.
        "tenths" | "10ths" | "decimals" => "feet".to_owned(),
        word => word.to_owned(),
    };
    let mut kept: Vec<Piece> = says.iter().map(|piece| Piece::word(&same(piece))).collect();
    kept.dedup();
    // The outside of brick is the outside of the wall.
    if kept.is_empty() && typed.find(0, &["brick"]).is_some() {
        kept.push(Piece::word("outside"));
    }
    let [only] = &kept[..] else { return None };
    let of_all = typed.pieces.iter().any(|piece| {
        piece.is_word(&[
            "all",
            "measurements",
            "dimensions",
            "dims",
            "everything",
            "measured",
            "taped",
            "lengths",
            "numbers",
            "figures",
            "sizes",
        ])
    }) || is_face_alone;
    let said = |words: &[&str]| only.is_word(words);
    let line = if said(&["inside", "interior", "indoors"]) {
        "faces inside"
    } else if said(&["outside", "exterior", "outdoors"]) {
        "faces outside"
    } else if said(&["frame", "studs", "framing"]) {
        "faces frame"
    } else if said(&["inches", "inch"]) {
        "units inches"
    } else if said(&["feet", "ft"]) {
        "units feet"
    } else if said(&["meters", "metres", "metric", "m", "meter", "metre"]) {
        "units meters"
    } else if said(&["centimeters", "centimetres", "cm"]) {
        "units centimeters"
    } else {
        return None;
    };
    let plain = typed.attempt.space.is_none() && typed.pieces.len() > 1 && of_all;
    plain.then(|| Answer::line(line, "what holds for all lengths is `faces` and the face, or `units` and the unit of bare numbers"))
}

/// `mill levy 21.4`, `21.4 mills`: dollars per $1,000.
fn mills(typed: &Typed<'_>) -> Option<Answer> {
    let words = ["mill", "mills", "levy", "rate", "tax", "millage", "total", "is", "the", "of"];
    let mut numbers = typed.pieces.iter().filter(|piece| piece.is_number());
    let rate: rust_decimal::Decimal =
        numbers.next().filter(|_| numbers.next().is_none())?.text.parse().ok()?;
    let only = typed
        .pieces
        .iter()
        .all(|piece| piece.is_number() || piece.is_word(&words) || piece.is_mark(":=.,"));
    let says = typed.find(0, &["mill", "mills", "millage"]).is_some();
    (only && says && rate < rust_decimal::Decimal::from(200)).then(|| {
        Answer::line(
            format!("tax rate {} per $1,000", rate.normalize()),
            "a mill is a dollar per $1,000",
        )
    })
}

/// `comp 1: 12 Fern Ct 1,925 sf $398,000`, `sale: 8 Larch Court 1,925 sf $398,000 8/14/25`: a house that was sold.
fn comparable(typed: &Typed<'_>) -> Option<Answer> {
    let begins = ["comp", "comparable", "sale", "comps"];
    let (area_at, area_end, area) = area_from(&typed.pieces, 1)?;
    let (money_at, money_end, money) = money_from(&typed.pieces, 1)?;
    let mut first = 1;
    let counts = typed.piece(1).is_some_and(digits::is_small)
        && typed.piece(2).is_some_and(|mark| mark.is_mark(":.)-–,"));
    first += usize::from(counts);
    while typed.piece(first).is_some_and(|mark| mark.is_mark(":.)-–,")) {
        first += 1;
    }
    let name = super::plainly(typed.text(first, area_at.min(money_at)));
    if !typed.says(0, &begins) || name.is_empty() || typed.line.contains('"') {
        return None;
    }
    let after = area_end.max(money_end);
    let line = format!("comparable \"{name}\" {area} sold {money} on");
    // `1,290 sq ft sold 8/14/25 for $398,000`
    let before = (area_end..money_at).find_map(|at| Some((at, date_at(&typed.pieces, at)?)));
    if let Some((at, (end, date))) = before.filter(|_| money_end == typed.pieces.len()) {
        let said = [area_end..at, end..money_at].into_iter().flatten().all(|at| {
            typed.says(at, &["sold", "on", "for", "at", "closed"]) || typed.pieces[at].is_mark(",")
        });
        return said.then(|| {
            Answer::line(
                format!("{line} {date}"),
                "a comparable has its name, its size, then `sold` with the price and `on` with the date",
            )
        });
    }
    Some(match date_from(&typed.pieces, after) {
        Some((_, end, date)) if end == typed.pieces.len() => Answer::line(
            format!("{line} {date}"),
            "a comparable has its name, its size, then `sold` with the price and `on` with the date",
        ),
        Some(_) => return None,
        None if after < typed.pieces.len() => return None,
        None => Answer::say(
            "a comparable has its name, its size, the price and the day of its sale",
            format!("write `{line}` and the day of the sale, as year-month-day"),
        ),
    })
}

/// `county sketch:`, `outline from card`: whose outline it is.
fn outline_alone(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        "county", "card", "record", "assessor", "the", "sketch", "outline", "from", "tax", "on",
        "of", "cad", "drawing", "record's",
    ];
    let only = typed.pieces.iter().all(|piece| piece.is_word(&words) || piece.is_mark(":.,"));
    let is_outline = typed.find(0, &["sketch", "outline", "drawing"]).is_some();
    let of_record =
        typed.find(0, &["county", "card", "record", "assessor", "cad", "record's"]).is_some();
    let space = typed.attempt.space.clone()?;
    (only && is_outline && of_record).then(|| {
        Answer::say(
            "an outline says which space it is of",
            format!("write `record outline \"{space}\"`, or the name of another space or level, and below it the sides that the record's sketch has"),
        )
    })
}

/// `yr built 1962`, `built in 1962`: nothing that the file has a line for.
fn years_of_the_house(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        "yr",
        "year",
        "built",
        "in",
        "house",
        "construction",
        "constructed",
        "remodeled",
        "renovated",
        "blt",
    ];
    let says = typed.find(0, &["built", "constructed", "remodeled", "renovated", "blt"]).is_some();
    let only = typed
        .pieces
        .iter()
        .all(|piece| piece.is_year() || piece.is_word(&words) || piece.is_mark(":=,."));
    (says && only && !typed.says(0, &["house"])).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "a sides file has no line for this year; a comment begins with `#`",
        )
    })
}

/// `TY2026`, `tax yr '26`, `2026 tax year`, `tax year 2025-26`: the tax year, or which of two it is.
fn tax_year(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        "tax",
        "year",
        "yr",
        "ty",
        "taxyear",
        "for",
        "taxes",
        "of",
        "the",
        "is",
        "appraisal",
        "roll",
        "assessment",
    ];
    let numbers: Vec<usize> =
        (0..typed.pieces.len()).filter(|&at| typed.pieces[at].is_number()).collect();
    let year = |at: &usize| {
        let piece = &typed.pieces[*at];
        let is_short = piece.text.len() == 2
            && (numbers.len() == 2
                || *at > 0 && piece.touches && typed.says(at - 1, &["ty"])
                || typed.piece(at.wrapping_sub(1)).is_some_and(|mark| mark.is_mark("'’")));
        let century = if is_short { "20" } else { "" };
        (is_short || piece.is_year()).then(|| format!("{century}{}", piece.text))
    };
    let years: Vec<String> = numbers.iter().map(year).collect::<Option<_>>()?;
    let rest = typed
        .pieces
        .iter()
        .all(|piece| piece.is_number() || piece.is_word(&words) || piece.is_mark(":=.,'’/-–"));
    let says = typed.find(0, &["ty", "taxyear"]).is_some()
        || typed.says(0, &["for"])
            && typed.find(0, &["appraisal", "roll", "assessment", "tax"]).is_some()
        || typed.find(0, &["tax", "taxes"]).is_some() && typed.find(0, &["year", "yr"]).is_some();
    let lines: Vec<String> = years.iter().map(|year| format!("tax year {year}")).collect();
    let cause = match years.len() {
        1 if !typed.line.contains(&years[0]) => "a year has four digits",
        1 => "the year of the tax is `tax year`",
        2 if years[0] < years[1] => {
            "a tax year is one year: the one that the record's value is for"
        }
        _ => return None,
    };
    (rest && says && typed.attempt.reads.is_none()).then(|| Answer::Lines(lines, cause.to_owned()))
}

/// `S/B`, `n/a`, `w/o`: letters that are no way of a wall.
fn abbreviation(typed: &Typed<'_>) -> Option<Answer> {
    let [first, slash, last] = &typed.pieces[..] else { return None };
    let is_short = |piece: &Piece| piece.sort == Sort::Word && piece.text.chars().count() <= 2;
    (is_short(first) && slash.is_mark("/") && is_short(last)).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "an abbreviation alone says nothing about the house; a comment begins with `#`",
        )
    })
}

/// `sun room unheated`: rooms without heat are not living area.
fn unheated(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(1, &["unheated", "un-heated", "unconditioned", "uninsulated"])?;
    let rooms =
        ["room", "sunroom", "addition", "porch", "extension", "space", "workshop", "study", "den"];
    let first = typed.find(0, &rooms).filter(|first| *first < at && *first <= 3)?;
    let plain = typed.pieces[..first].iter().all(|piece| piece.sort == Sort::Word);
    let known = kind_word(&typed.lower(0)).is_some()
        || typed.says(0, &["level", "record", "listing", "plan", "no", "not"]);
    let mut begin = at;
    while begin > first + 1 && typed.pieces[begin - 1].is_mark(",(-–") {
        begin -= 1;
    }
    let end = at + 1 + usize::from(typed.piece(at + 1).is_some_and(|mark| mark.is_mark(")")));
    let name = quoted(&capitalized(&typed.text(0, first + 1).to_lowercase()));
    let middle = typed.text(first + 1, begin);
    let rest = format!("{middle} {}", typed.rest(end));
    (plain && !known && !typed.line.contains('"')).then(|| {
        Answer::Lines(
            ["unfinished", "porch"]
                .map(|kind| format!("{kind} {name} {}", rest.trim()).trim_end().to_owned())
                .into(),
            "a room without heat is not living area: `unfinished`, or `porch`".to_owned(),
        )
    })
}

/// `3/7/26 measured by owner`: the day comes after `measured`.
fn day_first(typed: &Typed<'_>) -> Option<Answer> {
    let (end, date) = date_at(&typed.pieces, 0)?;
    let mut at = end;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(",:;-–")) {
        at += 1;
    }
    let rest = typed.rest(at + 1);
    let by = typed.says(at + 1, &["by"])
        && typed.pieces[at + 2..]
            .iter()
            .all(|piece| piece.sort == Sort::Word && !piece.is_word(&["with", "using"]));
    let rest = if by { format!("by {}", quoted(typed.rest(at + 2))) } else { rest.to_owned() };
    typed.says(at, &["measured", "taped"]).then(|| {
        Answer::line(
            format!("measured {date} {rest}").trim_end(),
            "a date is written year-month-day, right after `measured`",
        )
    })
}

/// `tolerance +/- 1/4"`, `laser measure, accurate to 1/16"`, `+/- 1/4"`: how exactly each wall was measured.
fn accuracy(typed: &Typed<'_>) -> Option<Answer> {
    if typed.attempt.space.is_some() {
        return None;
    }
    let says =
        ["accurate", "accuracy", "precision", "precise", "tolerance", "tol", "error", "good"];
    let filler = [
        "to", "within", "about", "of", "is", "the", "each", "wall", "walls", "all", "plus", "or",
        "minus", "a", "an", "every", "give", "take",
    ];
    let tools = ["laser", "measure", "tape", "steel", "meter", "measurer"];
    let signs = typed.pieces.iter().any(|piece| piece.is_mark("+±")) && typed.pieces.len() > 1;
    let spoken = typed.line.to_lowercase();
    let half =
        ["half an inch", "half inch", "a half inch"].iter().any(|half| spoken.ends_with(half));
    let an_inch = !half
        && !["of an inch", "an inch and"].iter().any(|part| spoken.contains(part))
        && ["an inch", "one inch"].iter().any(|inch| spoken.ends_with(inch));
    // `a quarter inch`, `an eighth of an inch`
    let part =
        [("quarter", "1/4\""), ("eighth", "1/8\""), ("sixteenth", "1/16\""), ("half", "1/2\"")]
            .into_iter()
            .find_map(|(word, part)| {
                let at = typed.find(0, &[word])?;
                let one = at.checked_sub(1).is_some_and(|one| typed.says(one, &["a", "an", "one"]));
                let inch = at + 1 + if typed.says(at + 1, &["of"]) { 2 } else { 0 };
                let ends = typed.says(inch, &["inch"]) && inch + 1 == typed.pieces.len();
                let counts = (0..at).any(|at| crate::sketch::mend::speaks_number(&typed.lower(at)));
                (ends && (one || !counts)).then(|| (at, part.to_owned()))
            });
    let found = lengths(&typed.pieces, 0);
    let (first, end, text) = match &found[..] {
        [] if part.is_some() => {
            let (first, text) = part?;
            (first, typed.pieces.len(), text)
        }
        [] if an_inch => {
            let first = typed.find(0, &["inch"])?.saturating_sub(1);
            (first, typed.pieces.len(), "1\"".to_owned())
        }
        [(first, measure)] if measure.has_unit => (*first, measure.end, measure.text.clone()),
        [] if half => {
            let first = typed.find(0, &["half"])?;
            (first, typed.pieces.len(), "1/2\"".to_owned())
        }
        _ => return None,
    };
    let only = (0..typed.pieces.len()).all(|at| {
        (first..end).contains(&at)
            || typed.says(at, &says)
            || typed.says(at, &filler)
            || typed.says(at, &tools)
            || typed.pieces[at].is_mark("+-±/–,:=().")
    });
    // `tolerance 42' 7`: only the length is to be mended.
    if first == 1 && end == typed.pieces.len() {
        return None;
    }
    let with = (0..typed.pieces.len())
        .filter(|&at| typed.says(at, &tools) || typed.says(at, &["good"]))
        .map(|at| typed.lower(at));
    let with: Vec<String> = with.collect();
    let comment = if with.is_empty() { String::new() } else { format!("  # {}", with.join(" ")) };
    let line = format!("tolerance {text}{comment}");
    let give_or_take = typed.says(0, &["give"]) && typed.says(2, &["take"]);
    let within = typed.find(0, &["within"]).is_some() && !comment.is_empty();
    let is_said = signs || give_or_take || within || typed.find(0, &says).is_some();
    (only && line != typed.line && is_said)
        .then(|| Answer::line(line, "how exactly each wall was measured is the `tolerance`"))
}

/// `missing: deck 200 sq ft`: nothing stands between the word and what is missing.
fn missing_with_a_mark(typed: &Typed<'_>) -> Option<Answer> {
    let mark = typed.piece(1).is_some_and(|mark| mark.is_mark(":=-–,"));
    if !typed.says(0, &["missing"]) || !mark {
        return None;
    }
    let number = typed.pieces.last().filter(|last| last.is_number() && typed.pieces.len() <= 5);
    let unit = if number.is_some() { " sq ft" } else { "" };
    Some(Answer::line(
        format!("missing {}{unit}", typed.rest(2)),
        "nothing stands between `missing` and what is missing",
    ))
}

/// `brick 4" veneer`, `wall: 2x4, 4 1/2" total`, `living "House" veneer 4"brick`: a thickness among words.
fn brick_thickness(typed: &Typed<'_>) -> Option<Answer> {
    let words = ["brick", "stone", "veneer", "thick", "is", "the", "masonry", "rock", "about"];
    let found = lengths(&typed.pieces, 0);
    let is_space = kind_word(&typed.lower(0)).is_some() && super::is_text(typed.piece(1));
    if is_space {
        let at = typed.find(2, &["veneer"])?;
        let measure = super::measure::length_at(&typed.pieces, at + 1)?;
        let last = typed.pieces.len() - 1;
        return (measure.end == last && typed.says(last, &["brick", "stone", "stucco"])).then(
            || {
                Answer::line(
                    format!(
                        "{} veneer {}  # {}",
                        typed.text(0, at),
                        measure.text,
                        typed.lower(last)
                    ),
                    "a veneer is given by its thickness alone",
                )
            },
        );
    }
    let around = ["all", "around", "on", "sides", "four", "everywhere", "exterior", "house"];
    let is_veneer = typed.says(0, &["brick", "stone", "masonry", "rock"])
        && typed.pieces.len() > 1
        && typed.pieces.iter().all(|piece| piece.is_word(&words) || piece.is_word(&around))
        && typed.find(0, &["veneer"]).is_some();
    if is_veneer {
        return Some(Answer::say(
            "a veneer is given by its thickness",
            "write `veneer` and how thick it is, from the frame to its outside",
        ));
    }
    // `stone`, `stone walls` at the top of a file: before a frame, or all of the wall.
    let is_stone = typed.says(0, &["stone", "fieldstone", "masonry", "rock"])
        && typed.attempt.space.is_none()
        && found.is_empty()
        && (1..typed.pieces.len())
            .all(|at| typed.says(at, &["walls", "wall", "house", "outside", "exterior", "all"]));
    if is_stone {
        let (frame, all) = match typed.attempt.is_metric {
            true => ("12 cm", "60 cm"),
            false => ("5\"", "2'"),
        };
        return Some(Answer::say(
            "stone is told by its thickness: as `veneer` where it stands before a frame, or as `wall` where all of the wall is stone",
            format!(
                "measure it at a window or a door; before a frame write `veneer` and how thick the stone and the gap behind it are, as `veneer {frame}`; where all of the wall is stone write `wall` and how thick it is, as `wall {all}`, and on the next line `veneer none`"
            ),
        ));
    }
    let [.., (first, measure)] = &found[..] else { return None };
    if !measure.is_inches() {
        return None;
    }
    let only = (0..typed.pieces.len()).all(|at| {
        (*first..measure.end).contains(&at)
            || typed.says(at, &words)
            || typed.pieces[at].is_mark(",:=.()-")
    });
    let says = typed.says(0, &["brick", "stone", "masonry", "rock"])
        || typed.says(0, &["veneer"]) && typed.find(1, &["brick", "stone"]).is_some();
    if only && says && found.len() == 1 && *first > 0 {
        let stone: Vec<&str> = typed
            .pieces
            .iter()
            .filter(|piece| piece.is_word(&["stone", "masonry", "rock"]))
            .map(|piece| piece.text.as_str())
            .collect();
        let said =
            if stone.is_empty() { String::new() } else { format!("  # {}", stone.join(" ")) };
        return Some(Answer::line(
            format!("veneer {}{said}", measure.text),
            "a veneer is given by its thickness alone",
        ));
    }
    let total = typed.says(0, &["wall", "walls"])
        && typed.find(measure.end, &["total", "thick", "altogether", "overall"]).is_some();
    let between = (1..*first).all(|at| {
        typed.pieces[at].is_number()
            || typed.says(at, &["x", "is", "are"])
            || typed.pieces[at].is_mark(",:=.-")
    });
    (total && between && *first > 1).then(|| {
        let said = super::plainly(typed.text(1, *first));
        let said = said.trim_matches([' ', ',', ':']);
        let said = if ["are", "is"].contains(&said) { "" } else { said };
        let comment = if said.is_empty() { String::new() } else { format!("  # {said}") };
        Answer::line(
            format!("wall {}{comment}", measure.text),
            "how thick the walls are is `wall` and a length",
        )
    })
}

/// `Address - 14 Alder Ct`, `record outline - House`: a dash between the word and what it is.
fn after_a_dash(typed: &Typed<'_>) -> Option<Answer> {
    let heads = [
        "address", "property", "account", "case", "level", "corner", "place", "front", "interior",
        "units", "faces",
    ];
    let at = 1 + usize::from(typed.says(1, &["outline"]));
    let is_head = typed.says(0, &heads) || at == 2 && typed.says(0, &["record", "plan", "map"]);
    let dash = typed.piece(at).is_some_and(|mark| mark.is_mark("-–—") && !mark.touches);
    (is_head && dash && typed.piece(at + 1).is_some_and(|next| !next.touches)).then(|| {
        Answer::line(
            format!("{} {}", typed.text(0, at), typed.rest(at + 1)),
            "nothing stands between a word of the file and what it says",
        )
    })
}

/// `exemption homestead 100,000`: the sum comes before the name.
fn exemption(typed: &Typed<'_>) -> Option<Answer> {
    let number = typed.pieces.last().filter(|last| last.is_number())?;
    let first =
        typed.pieces.len() - 1 - usize::from(typed.pieces.iter().rev().nth(1)?.is_mark("$"));
    let words = typed.pieces.get(1..first).filter(|words| !words.is_empty())?;
    let plain = words.iter().all(|piece| piece.sort == Sort::Word);
    (typed.says(0, &["exemption"]) && plain).then(|| {
        Answer::line(
            format!("exemption ${} {}", number.text, quoted(typed.text(1, first))),
            "the sum comes first, then what it is for, with a `\"` on each side",
        )
    })
}

/// `April 12, 2026`: a day alone, at the head of a file.
fn day_alone(typed: &Typed<'_>) -> Option<Answer> {
    let (end, date) = date_at(&typed.pieces, 0)?;
    (end == typed.pieces.len() && typed.attempt.space.is_none()).then(|| {
        Answer::line(
            format!("measured {date}"),
            "a day alone is that of the measuring: `measured`, then year-month-day",
        )
    })
}

/// `value 398,000 market, 371,000 assessed`: what each value is comes before it.
fn values_before_their_words(typed: &Typed<'_>) -> Option<Answer> {
    let words = ["market", "assessed", "improvement"];
    let mut parts = Vec::new();
    let mut at = 1;
    while at < typed.pieces.len() {
        if typed.pieces[at].is_mark("$,;:") || typed.says(at, &["and"]) {
            at += 1;
            continue;
        }
        let sum = typed.piece(at).filter(|sum| sum.is_number())?;
        let word = words.iter().find(|word| typed.says(at + 1, &[word]))?;
        parts.push(format!("{word} ${}", sum.text));
        at += 2;
    }
    (typed.says(0, &["value", "values"]) && parts.len() > 1).then(|| {
        Answer::line(format!("value {}", parts.join(" ")), "what the value is comes before the sum")
    })
}

/// `garage "Garage" from corner House 4`: the space comes first, then its corner.
fn corner_then_house(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(2, &["corner"])?;
    let space = typed.attempt.space.as_ref()?;
    let is_house =
        typed.says(at + 1, &["house"]) || typed.name(at + 1, at + 2).eq_ignore_ascii_case(space);
    let number = typed.piece(at + 2).filter(|number| digits::is_small(number))?;
    let from = at.checked_sub(1).filter(|&from| typed.says(from, &["from", "at"]))?;
    is_house.then(|| {
        let line = format!(
            "{} from {} corner {} {}",
            typed.text(0, from),
            quoted(space),
            number.text,
            typed.rest(at + 3)
        );
        Answer::line(line.trim_end(), "the space comes first, then its corner")
    })
}
