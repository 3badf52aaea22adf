//! Levels, comparables and lines at the head of a file that say in other words what the format has a line for.

use super::super::pieces::{Piece, Sort};
use super::levels::capitalized;
use super::measure::{area_from, date_at, date_from, lengths, money_from};
use super::{Answer, Typed, digits, kind_word, quoted};

/// The rules that come before the others, since another would take a part of the line for a name or a note.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: [fn(&Typed<'_>) -> Option<Answer>; 14] = [
        comparable,
        outline_alone,
        years_of_the_house,
        level,
        short_level,
        attic,
        all_measured,
        mills,
        tax_year,
        day_first,
        accuracy,
        missing_with_a_mark,
        abbreviation,
        unheated,
    ];
    rules.iter().find_map(|rule| rule(typed))
}

/// `UPPER LEVEL - 8 FT CEILINGS`, `half story`, `level 1 below ground`, `split level upper`: a level with a remark.
fn level(typed: &Typed<'_>) -> Option<Answer> {
    const FLOORS: [&str; 6] = ["level", "floor", "story", "storey", "flr", "levels"];
    const WHICH: [&str; 21] = [
        "basement", "loft", "attic", "garage", "cellar", "upper", "lower", "main", "ground",
        "first", "second", "third", "top", "half", "split", "bottom", "mid", "middle", "one",
        "two", "three",
    ];
    let ordinal = |at: usize| {
        typed.piece(at).is_some_and(|number| digits::is_small(number) && number.text.len() == 1)
    };
    let mut end = 0;
    while typed.says(end, &WHICH)
        || ordinal(end)
        || typed.says(end, &["st", "nd", "rd", "th"])
        || end > 0
            && typed.piece(end).is_some_and(|mark| mark.is_mark("-"))
            && typed.says(end + 1, &FLOORS)
    {
        end += 1;
    }
    let first_is_floor = end == 0 && typed.says(0, &FLOORS);
    if first_is_floor {
        end = 1;
        while typed.says(end, &WHICH) || end == 1 && ordinal(end) {
            end += 1;
        }
    } else if end > 0 && typed.says(end, &FLOORS) {
        end += 1;
        while typed.says(end, &["upper", "lower"]) {
            end += 1;
        }
    } else {
        return None;
    }
    let rest = typed.pieces.get(end..)?;
    if rest.is_empty()
        || end < 2
        || typed.line.contains('"')
        || area_from(&typed.pieces, end).is_some()
    {
        return (rest.is_empty() && end > 1 && typed.says(0, &["half", "split"]))
            .then(|| level_line(typed, end, ""));
    }
    // Only the writer knows whether such a level is one in the ground.
    if rest.iter().any(|piece| piece.is_word(&["partly", "partially"])) {
        return None;
    }
    let copies = ["same", "identical", "like", "repeat", "copy"];
    if rest.iter().any(|piece| piece.is_word(&copies)) {
        return Some(Answer::say(
            "nothing is copied from another level",
            "write `level` and its name, below it its space, as `living \"Upper rooms\"`, and type its sides again, one on each line",
        ));
    }
    let below =
        ["below", "under", "underground", "grade", "ground", "partly", "partially", "walkout"];
    let is_below = rest.iter().any(|piece| piece.is_word(&["underground"]))
        || rest.iter().any(|piece| piece.is_word(&["below", "under"]))
            && rest.iter().any(|piece| piece.is_word(&["grade", "ground"]));
    let is_below = is_below || typed.says(0, &["basement", "cellar"]);
    let is_beside = rest.iter().any(|piece| piece.is_word(&["beside", "alongside"]));
    let left: Vec<&Piece> =
        rest.iter().filter(|piece| piece.sort == Sort::Word && !piece.is_word(&below)).collect();
    let heights = ["ceiling", "ceilings", "high", "clg", "tall"];
    let is_height = rest.iter().any(|piece| piece.is_word(&heights));
    let remarks = [
        "finished",
        "ceiling",
        "ceilings",
        "ft",
        "foot",
        "feet",
        "high",
        "clg",
        "with",
        "and",
        "all",
        "only",
        "vaulted",
        "bedrooms",
        "bedroom",
        "bath",
        "baths",
        "only",
        "wood",
        "carpet",
        "tall",
        "in",
        "sloped",
        "flat",
        "beside",
        "alongside",
        "lower",
        "upper",
        "main",
        "level",
        "floor",
        "story",
    ];
    let numbers = rest.iter().any(Piece::is_number);
    if left.iter().any(|piece| !piece.is_word(&remarks))
        || numbers && !is_height
        || typed.says(0, &["level"]) && !is_below
    {
        return None;
    }
    let said =
        if is_below && left.is_empty() { String::new() } else { super::remark(typed.rest(end)) };
    let said = super::plainly(&said);
    let depth = match (is_below, is_beside) {
        (true, _) => " below grade",
        (false, true) => " beside",
        (false, false) => "",
    };
    let comment = if said.is_empty() { String::new() } else { format!("  # {said}") };
    Some(level_line(typed, end, &format!("{depth}{comment}")))
}

/// `level` with the name that the first pieces give it.
fn level_line(typed: &Typed<'_>, end: usize, rest: &str) -> Answer {
    let first = usize::from(typed.says(0, &["level"]) && end > 2);
    let name = quoted(&capitalized(typed.text(first, end)));
    let cause = "a level is `level` and its name, with a `\"` on each side";
    if typed.says(0, &["split"]) {
        return Answer::Lines(
            vec![format!("level {name} beside{rest}"), format!("level {name}{rest}")],
            format!("{cause}; one that stands next to the level before it is `beside`"),
        );
    }
    Answer::line(format!("level {name}{rest}"), cause)
}

/// `attic (finished)`, `finished attic`: a level of its own, with its rooms.
fn attic(typed: &Typed<'_>) -> Option<Answer> {
    let words = ["attic", "finished", "rooms", "room", "over", "the", "house", "all", "space"];
    let only =
        typed.pieces.iter().all(|piece| piece.is_word(&words[..5]) || piece.is_mark("(),-–:"));
    let says = typed.find(0, &words[..1]).is_some() && typed.find(0, &["finished"]).is_some();
    (only && says && typed.pieces.len() <= 6).then(|| {
        let next = super::cut(&typed.attempt.beside.after);
        let has_rooms =
            next.first().is_some_and(|word| kind_word(&word.text.to_lowercase()).is_some());
        let rooms = if has_rooms { "" } else { "\nliving \"Attic rooms\"" };
        Answer::line(
            format!("level \"Attic\"{rooms}"),
            "a finished attic is a level with its own rooms",
        )
    })
}

/// `all measurements inside`, `exterior dimensions`, `measured in inches`: what is said of all lengths.
fn all_measured(typed: &Typed<'_>) -> Option<Answer> {
    let filler = [
        "all",
        "measurements",
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
        "face",
        "sides",
    ];
    let says: Vec<&Piece> = typed
        .pieces
        .iter()
        .filter(|piece| !piece.is_word(&filler) && !piece.is_mark(".,:()="))
        .collect();
    let [only] = says[..] else { return None };
    let of_all = typed.pieces.iter().any(|piece| {
        piece.is_word(&[
            "all",
            "measurements",
            "dimensions",
            "dims",
            "everything",
            "measured",
            "lengths",
            "numbers",
        ])
    });
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
    } else if said(&["meters", "metres", "metric"]) {
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
    let year = |piece: &Piece| piece.is_number() && piece.text.len() == 4;
    let says = typed.find(0, &["built", "constructed", "remodeled", "renovated", "blt"]).is_some();
    let only = typed
        .pieces
        .iter()
        .all(|piece| year(piece) || piece.is_word(&words) || piece.is_mark(":=,."));
    (says && only && !typed.says(0, &["house"])).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "a sides file has no line for this year; a comment begins with `#`",
        )
    })
}

/// `TY2026`, `tax yr 2026`, `2026 tax year`: the tax year.
fn tax_year(typed: &Typed<'_>) -> Option<Answer> {
    let year =
        |piece: &Piece| piece.is_number() && piece.text.len() == 4 && piece.text.starts_with("20");
    let words = ["tax", "year", "yr", "ty", "taxyear", "for", "taxes", "of", "the", "is"];
    let mut years = typed.pieces.iter().filter(|piece| year(piece));
    let only = years.next().filter(|_| years.next().is_none())?;
    let rest = typed
        .pieces
        .iter()
        .all(|piece| year(piece) || piece.is_word(&words) || piece.is_mark(":=.,"));
    let says = typed.find(0, &["ty", "taxyear"]).is_some()
        || typed.find(0, &["tax", "taxes"]).is_some() && typed.find(0, &["year", "yr"]).is_some();
    (rest && says).then(|| {
        Answer::line(format!("tax year {}", only.text), "the year of the tax is `tax year`")
    })
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

/// `2F`, `L2`, `2nd`: a level by its number.
fn short_level(typed: &Typed<'_>) -> Option<Answer> {
    let [first, second] = &typed.pieces[..] else { return None };
    let one = |piece: &Piece| digits::is_small(piece) && piece.text.len() == 1;
    let letter = |piece: &Piece| piece.is_word(&["f", "l", "fl", "lvl", "flr"]);
    let is_level = second.touches && (one(first) && letter(second) || letter(first) && one(second));
    let is_story = typed.says(0, &["story", "level", "floor", "storey"])
        && second.is_number()
        && second.text.contains('.');
    (is_level || is_story).then(|| {
        Answer::line(
            format!("level {}", quoted(typed.line)),
            "a level is `level` and its name, with a `\"` on each side",
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
    let says = ["accurate", "accuracy", "precision", "precise", "tolerance", "tol", "error"];
    let filler = [
        "to", "within", "about", "of", "is", "the", "each", "wall", "walls", "all", "plus", "or",
        "minus", "a", "an", "every",
    ];
    let tools = ["laser", "measure", "tape", "steel", "meter", "measurer"];
    let signs = typed.piece(0)?.is_mark("+±") && typed.pieces.len() > 1;
    let spoken = typed.line.to_lowercase();
    let half =
        ["half an inch", "half inch", "a half inch"].iter().any(|half| spoken.ends_with(half));
    let found = lengths(&typed.pieces, 0);
    let (first, end, text) = match &found[..] {
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
    let with =
        (0..typed.pieces.len()).filter(|&at| typed.says(at, &tools)).map(|at| typed.lower(at));
    let with: Vec<String> = with.collect();
    let comment = if with.is_empty() { String::new() } else { format!("  # {}", with.join(" ")) };
    let line = format!("tolerance {text}{comment}");
    (only && line != typed.line && (signs || typed.find(0, &says).is_some()))
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
