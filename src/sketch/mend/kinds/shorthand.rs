//! Lines in the shorthand of people who sketch houses often: arrows, letters for what a space is, a whole walk on one line.

use super::super::pieces::Sort;
use super::measure::{Measure, area_from, length_at, lengths, money_from};
use super::walls::WAYS;
use super::{Answer, Rule, Typed, first_of, is_text, quoted, straight};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        arrow,
        letters_of_a_space,
        space_and_its_walls,
        own_sum,
        sum_of_the_appraisal,
        parcel_above_its_calls,
        frame_and_brick,
        strips_taken_off,
        opening_with_its_area,
        either_of_two,
        point_for_inches,
    ];
    first_of(rules, typed)
}

/// `-> 30'`, `→ 30'`, `^ 12'`: a way drawn as on paper, where north is up.
fn arrow(typed: &Typed<'_>) -> Option<Answer> {
    let line = typed.line.trim_start();
    let all = [
        ("-->", "east"),
        ("->", "east"),
        ("=>", "east"),
        ("→", "east"),
        (">", "east"),
        ("<--", "west"),
        ("<-", "west"),
        ("←", "west"),
        ("↑", "north"),
        ("^", "north"),
        ("↓", "south"),
    ];
    let (rest, way) =
        all.into_iter().find_map(|(arrow, way)| Some((line.strip_prefix(arrow)?, way)))?;
    let rest = rest.trim_start();
    let pieces = super::cut(rest);
    let one = length_at(&pieces, 0)?;
    let ends = pieces.get(one.end).is_none_or(|next| next.is_mark(",;("));
    (ends && typed.attempt.space.is_some() && !typed.is_in_lot()).then(|| {
        Answer::line(
            format!("{way} {rest}"),
            "a side begins with the way that it runs, by the compass: up on paper is north",
        )
    })
}

/// `WD DK 12x16 rear`, `Scr Por 12x14`, `O/B foyer`: letters for what a space is.
fn letters_of_a_space(typed: &Typed<'_>) -> Option<Answer> {
    let made = |at: usize| {
        Some(match typed.lower(at).as_str() {
            "wd" | "wood" => "Wood",
            "scr" | "scrn" | "screened" => "Screened",
            "cov" | "cvd" | "covd" | "covered" => "Covered",
            "conc" | "concrete" => "Concrete",
            "open" | "opn" => "Open",
            "rear" | "back" => "Back",
            "front" | "fr" | "frt" => "Front",
            _ => return None,
        })
    };
    let kind = |at: usize| {
        Some(match typed.lower(at).as_str() {
            "dk" => "deck",
            "por" | "pch" | "prch" => "porch",
            "pat" => "patio",
            _ => return None,
        })
    };
    let point = |at: usize| usize::from(typed.piece(at).is_some_and(|point| point.is_mark(".")));
    let below = typed.says(0, &["o"])
        && typed.piece(1).is_some_and(|slash| slash.is_mark("/"))
        && typed.says(2, &["b"]);
    if below || typed.says(0, &["otb"]) {
        let rest = typed.rest(if below { 3 } else { 1 });
        return super::answer(&format!("open to below {rest}"), typed.attempt);
    }
    let first = made(0);
    let at = if first.is_some() { 1 + point(1) } else { 0 };
    let kind = kind(at)?;
    let end = at + 1 + point(at + 1);
    let name = match first {
        Some(first) => format!("{first} {kind}"),
        None => kind.to_owned(),
    };
    let rest = typed.rest(end);
    if typed.line.contains('"') && is_text(typed.piece(end)) {
        return Some(Answer::line(
            format!("{kind} {rest}"),
            "a space begins with its kind, in full, and then its name",
        ));
    }
    let line = format!("{name} {rest}");
    let line = line.trim();
    super::answer(line, typed.attempt).or_else(|| {
        Some(Answer::line(
            format!("{kind} {}", quoted(&super::levels::capitalized(&name.to_lowercase()))),
            "a space begins with its kind, in full, and then its name",
        ))
        .filter(|_| rest.is_empty())
    })
}

/// `Gar: N22 E20 S22 W20`: a space and all of its walls on one line.
fn space_and_its_walls(typed: &Typed<'_>) -> Option<Answer> {
    let (kind, at) = match typed.lower(0).as_str() {
        "gar" => ("garage", 1),
        "por" | "pch" => ("porch", 1),
        "dk" => ("deck", 1),
        _ => super::loose::kind_at_start(typed)?,
    };
    // Right below the line of a space that has no walls yet they are its walls.
    let is_below = kind == "living" && typed.attempt.beside.before.starts_with("living ");
    if (typed.attempt.house.is_none() || is_below)
        && let Some(answer) = super::walls_on_its_line::answer(typed)
    {
        return Some(answer);
    }
    let is_wall = |at: usize| {
        typed
            .says(at, &WAYS)
            .then(|| straight::length_in(typed, &typed.pieces, at + 1))
            .flatten()
            .filter(|_| typed.piece(at + 1).is_some_and(super::Piece::is_number))
    };
    let first = (at..typed.pieces.len()).find(|&at| is_wall(at).is_some())?;
    let before = typed.text(at, first).trim_matches([',', ':', ' ', '-', '–', '(']).to_owned();
    let (mut sides, mut next) = (Vec::new(), first);
    while next < typed.pieces.len() {
        if typed.pieces[next].is_mark(",;/()") || typed.says(next, &["then", "and"]) {
            next += 1;
            continue;
        }
        let one = is_wall(next)?;
        let number = typed.text(next + 1, one.end).to_owned();
        let way = super::super::compass::way_and_back(&typed.lower(next))?.0;
        sides.push(format!("`{way} {number}`"));
        next = one.end;
    }
    // `start east 20' north 3'` is a place.
    let has_place =
        typed.find(0, &["start", "from", "starts", "within"]).is_some_and(|at| at < first);
    let name = match typed.piece(at) {
        Some(name) if is_text(Some(name)) && at < first => typed.text(at, at + 1).to_owned(),
        _ if before.is_empty() => quoted(&super::levels::capitalized(kind)),
        _ if before.contains('"') || before.chars().any(|c| c.is_ascii_digit()) => return None,
        _ => quoted(&super::levels::capitalized(&before)),
    };
    let is_first = typed.attempt.house.is_none();
    if sides.len() < 3 || has_place {
        return None;
    }
    let place = match is_first {
        true => String::new(),
        false => format!(", then where it starts: {}", super::placed::starts(typed, kind, false)),
    };
    Some(Answer::say(
        "the walls of a space stand below its line, each on a line of its own",
        format!("write `{kind} {name}`{place}; and on the lines below it {}", sides.join(", ")),
    ))
}

/// `area 1,674 sf` below the walls of a space, `area by survey 9,156 sf` below calls: what the program works out itself.
fn own_sum(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["area", "total", "gla", "sum", "check"]);
    let below = super::super::begins_as_wall(&typed.attempt.beside.before) || typed.is_in_lot();
    let (first, end, _) = area_from(&typed.pieces, 1)?;
    let words = [
        "area",
        "by",
        "survey",
        "is",
        "of",
        "this",
        "level",
        "floor",
        "lot",
        "gross",
        "net",
        "living",
        "calc",
        "calculated",
        "comes",
        "to",
        "per",
        "deed",
        "plat",
    ];
    let plain = (1..first)
        .chain(end..typed.pieces.len())
        .all(|at| typed.says(at, &words) || typed.pieces[at].is_mark(":=,.()-–"));
    let of_others = typed.find(1, &["deed", "plat", "survey"]).is_some() && typed.is_in_lot();
    // Of the land an area is that of its lot.
    let is_of_land = typed.is_in_lot() && !of_others;
    if !begins || !below || !plain || is_of_land || typed.line.contains('"') {
        return None;
    }
    let (_, _, area) = area_from(&typed.pieces, 1)?;
    Some(match of_others {
        true => Answer::say(
            "the area that the survey or the record gives the land stands on the line of the lot",
            format!(
                "take this line out, and at the end of the line that begins with `lot` write `recorded {area}`"
            ),
        ),
        false => Answer::line(
            format!("# {}", typed.line.trim()),
            "areas are worked out from the walls by the program; a comment begins with `#`",
        ),
    })
}

/// `cost approach $320,000`, `land value 95,000`: sums that a sides file has no line for.
fn sum_of_the_appraisal(typed: &Typed<'_>) -> Option<Answer> {
    let approach =
        typed.says(0, &["cost", "income", "sales", "market"]) && typed.says(1, &["approach"]);
    let land = typed.says(0, &["land", "site", "lot"]) && typed.says(1, &["value", "val"]);
    let number = money_from(&typed.pieces, 2).is_some()
        || typed.pieces.last().is_some_and(|last| last.is_number() && last.text.len() >= 4);
    ((approach || land) && number && !typed.line.contains('"')).then(|| {
        Answer::line(
            format!("# {}", typed.line.trim()),
            "a sides file has no place for this sum; a comment begins with `#`",
        )
    })
}

/// `Parcel A`, `Tract 2` above calls: the name of the land.
fn parcel_above_its_calls(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["parcel", "tract", "site"]) && typed.attempt.house.is_some();
    let is_short = typed.pieces.len() <= 4
        && typed.pieces.iter().all(|piece| piece.sort == Sort::Word || piece.is_number());
    let area = area_from(&typed.pieces, 1);
    // Below the line of a lot its area is that of this lot.
    if area.is_some() && typed.is_in_lot() {
        return None;
    }
    if !begins || !super::lots::calls_follow(typed) {
        return None;
    }
    if let Some((_, end, area)) = area.filter(|(first, ..)| *first <= 2) {
        return (end == typed.pieces.len()).then(|| {
            let name = match is_text(typed.piece(1)) {
                true => typed.text(1, 2).to_owned(),
                false => quoted(&super::levels::capitalized(&typed.lower(0))),
            };
            Answer::line(
                format!("lot {name} recorded {area}"),
                "the land is a `lot`, and its calls stand on the lines below it",
            )
        });
    }
    is_short.then(|| {
        Answer::line(
            format!("lot {}", quoted(typed.line.trim())),
            "the land is a `lot` with its name, and its calls stand below it",
        )
    })
}

/// `exterior walls 6" frame + 4" brick`: how thick both are.
fn frame_and_brick(typed: &Typed<'_>) -> Option<Answer> {
    const FRAME: [&str; 6] = ["frame", "framing", "stud", "studs", "framed", "wall"];
    const BRICK: [&str; 4] = ["brick", "stone", "masonry", "veneer"];
    let begins = typed.says(0, &["walls", "wall", "exterior", "outside", "outer"])
        && typed.attempt.space.is_none()
        && !typed.line.contains('#');
    let all = lengths(&typed.pieces, 1);
    let [(first, one), (second, two)] = &all[..] else { return None };
    let is_inches = |one: &Measure| one.is_inches();
    let small = [
        "exterior", "walls", "wall", "outer", "outside", "are", "is", "thick", "and", "plus",
        "with", "w", "of", "the", "veneer", "behind",
    ];
    let plain = (1..typed.pieces.len()).all(|at| {
        (*first..one.end).contains(&at)
            || (*second..two.end).contains(&at)
            || typed.says(at, &small)
            || typed.says(at, &FRAME)
            || typed.says(at, &BRICK)
            || typed.pieces[at].is_mark("+,/&()-–:=")
    });
    let said = |end: usize, words: &[&str]| typed.says(end, words);
    let (frame, brick) = match () {
        () if said(one.end, &FRAME) && said(two.end, &BRICK) => (one, two),
        () if said(one.end, &BRICK) && said(two.end, &FRAME) => (two, one),
        () => return None,
    };
    (begins && plain && is_inches(one) && is_inches(two)).then(|| {
        Answer::line(
            format!("veneer {}\nwall {}", brick.text, frame.text),
            "the thickness from the inside to the frame is `wall`, and brick or stone before it is `veneer`, with the air gap behind it",
        )
    })
}

/// `less 2' kneewall each side`, `sloped ceiling, loses 3' each side`: strips that do not count.
fn strips_taken_off(typed: &Typed<'_>) -> Option<Answer> {
    const TAKES: [&str; 8] =
        ["less", "minus", "deduct", "loses", "lose", "losing", "subtract", "takes"];
    let takes = typed.find(0, &TAKES)?;
    let is_low = typed
        .find(0, &["knee", "kneewall", "kneewalls", "eaves", "sloped", "slanted", "sloping", "low"])
        .is_some();
    let both = typed.find(takes, &["each", "both", "either"])?;
    let sides = typed.says(both + 1, &["side", "sides", "end", "ends"]);
    let [(_, one)] = &lengths(&typed.pieces, 0)[..] else { return None };
    let knee = typed.find(0, &["knee", "kneewall", "kneewalls"]).is_some();
    let what = if knee { "knee walls" } else { "eaves" };
    let line = format!("{what} {} deep both sides", one.text);
    (is_low && sides).then(|| super::answer(&line, typed.attempt)).flatten()
}

/// `minus foyer 80`: an opening with its area alone.
fn opening_with_its_area(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["minus", "less", "deduct", "subtract"]);
    let at = 1 + usize::from(typed.says(1, &["the", "open"]));
    let is_open = typed.says(at, &["foyer", "void", "opening", "entry", "atrium", "open"]);
    let number = typed.piece(at + 1).filter(|number| number.is_number())?;
    let unit = area_from(&typed.pieces, at + 1).map(|(_, end, _)| end);
    let is_last = unit.unwrap_or(at + 2) == typed.pieces.len();
    let name = quoted(&super::levels::capitalized(&typed.lower(at)));
    (begins && is_open && is_last && number.text.len() >= 2).then(|| {
        Answer::say(
            "an area alone cannot be drawn, and only what is drawn is deducted",
            format!(
                "write `open {name}`, then where it starts: {}; and on the lines below it its four sides",
                super::placed::starts(typed, "open", false)
            ),
        )
    })
}

/// `north 40'6 or 40'8 hard to read`: either of two lengths.
fn either_of_two(typed: &Typed<'_>) -> Option<Answer> {
    let one = length_at(&typed.pieces, 1).filter(|_| typed.says(0, &WAYS))?;
    let two = length_at(&typed.pieces, one.end + 1)
        .filter(|_| typed.says(one.end, &["or"]) && !typed.is_in_lot())?;
    let rest = super::remark(typed.rest(two.end));
    // Lengths far apart, or with a word for what they are, are not two readings of one wall.
    let is_near = (one.length - two.length).abs() <= Length::from_nm(2 * Length::FOOT.nm());
    let labels = ["high", "wide", "tall", "deep", "wall", "brick", "thick", "out", "ceiling"];
    let has_more = super::measures(&rest)
        || rest.contains(['"', '#'])
        || typed.find(two.end, &labels).is_some()
        || !is_near;
    (!has_more && one.has_unit && two.has_unit && one.length != two.length).then(|| {
        let note = if rest.is_empty() { String::new() } else { format!(" note {}", quoted(&rest)) };
        let line = |one: &Measure| format!("{} {}{note}", typed.text(0, 1), one.text);
        Answer::Lines(
            vec![line(&one), line(&two)],
            "a wall has one length: write the one that you trust, or measure it again".to_owned(),
        )
    })
}

/// `north 40.6 (feet and inches)`: the point stands between feet and inches.
fn point_for_inches(typed: &Typed<'_>) -> Option<Answer> {
    let number = typed.piece(1).filter(|number| number.is_number() && typed.says(0, &WAYS))?;
    let (feet, inches) = number.text.split_once('.')?;
    let small: u32 = inches.parse().ok().filter(|inches| *inches < 12)?;
    let words =
        ["feet", "foot", "ft", "inches", "in", "inch", "and", "not", "tenths", "is", "that"];
    let rest = 2..typed.pieces.len();
    let says = |of: &[&str]| rest.clone().any(|at| typed.says(at, of));
    let plain =
        rest.clone().all(|at| typed.says(at, &words) || typed.pieces[at].is_mark("(),;-–./"));
    let says_inches = says(&["inches", "in", "inch"]) && says(&["feet", "foot", "ft"]);
    let says_tenths = says(&["tenths"]) && !says(&["not"]);
    (plain && says_inches && !says_tenths && feet.parse::<u32>().is_ok()).then(|| {
        Answer::line(
            format!("{} {feet}' {small}\"", typed.text(0, 1)),
            "feet and inches have their marks: a point is always one of decimals",
        )
    })
}
