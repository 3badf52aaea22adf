//! Heads and figures that say something else in passing: a face beside the day, what a listing counts, when the house
//! was built.

use super::super::pieces::{Piece, Sort};
use super::measure::{area_from, date_from, length_at, lengths, money_from};
use super::{Answer, Rule, Typed, first_of, is_text, quoted, remark};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        day_and_face,
        counts_as_somebody_says,
        figure_and_its_house,
        overall_size,
        mills_or_share,
        exemption_by_its_name,
        proposed_value,
        sale_in_another_order,
        rounded,
        both_faces,
        assessed_at,
        number_of_the_account,
    ];
    first_of(rules, typed)
}

/// Whether no space was opened above.
fn is_above_the_spaces(typed: &Typed<'_>) -> bool {
    typed.attempt.space.is_none()
}

/// `measured 2026-05-09 by "the owner" outside, 100' tape`: the face has a line of its own.
fn day_and_face(typed: &Typed<'_>) -> Option<Answer> {
    const FACES: [(&str, &[&str]); 3] = [
        ("inside", &["inside", "interior", "indoors"]),
        ("outside", &["outside", "exterior", "outdoors"]),
        ("frame", &["studs", "frame", "framing"]),
    ];
    const TOOLS: [&str; 6] = ["tape", "laser", "wheel", "ruler", "rangefinder", "measure"];
    if !typed.says(0, &["measured", "taped"]) || !is_above_the_spaces(typed) {
        return None;
    }
    let (first, end, date) = date_from(&typed.pieces, 1)?;
    let face_at = |at: usize| {
        let face = FACES.iter().find(|(_, words)| typed.says(at, words));
        face.map(|(face, _)| *face)
    };
    let faces: Vec<usize> = (end..typed.pieces.len()).filter(|&at| face_at(at).is_some()).collect();
    let [face] = faces[..] else { return None };
    let by =
        typed.find(end, &["by"]).filter(|by| *by < face || typed.find(face, &["by"]).is_some());
    let small = [
        "all", "from", "the", "on", "of", "house", "walls", "at", "to", "with", "using", "and", "a",
    ];
    let is_small = |at: usize| typed.says(at, &small) || typed.pieces[at].is_mark(",;:()-–.");
    let stop = |from: usize| {
        (from..typed.pieces.len())
            .find(|&at| {
                face_at(at).is_some()
                    || typed.pieces[at].is_mark(",;()")
                    || typed.says(at, &["with", "using", "from", "all"])
            })
            .unwrap_or(typed.pieces.len())
    };
    let who = by.map(|by| {
        let end = match is_text(typed.piece(by + 1)) {
            true => by + 2,
            false => stop(by + 1),
        };
        (by, end, typed.name(by + 1, end))
    });
    let used = |at: usize| {
        at == face || who.as_ref().is_some_and(|(by, end, _)| (*by..*end).contains(&at))
    };
    let rest: Vec<usize> = (end..typed.pieces.len()).filter(|&at| !used(at)).collect();
    // What is left is the tape, in one stretch.
    let begin = rest.iter().copied().find(|&at| !is_small(at));
    let tool = match begin {
        Some(begin) => {
            let last = rest.iter().copied().rfind(|&at| !is_small(at))?;
            let whole = (begin..=last).all(|at| !used(at));
            let is_tool = (begin..=last).any(|at| typed.says(at, &TOOLS));
            let plain = (begin..=last).all(|at| !is_text(typed.piece(at)) || begin == last);
            (whole && (is_tool || is_text(typed.piece(begin))) && plain)
                .then(|| Some(typed.name(begin, last + 1)))?
        }
        None => None,
    };
    let who = who.map(|(_, _, who)| who);
    if first != 1 || who.as_deref() == Some("") {
        return None;
    }
    let by = who.map_or(String::new(), |who| format!(" by {}", quoted(&who)));
    let with = tool.map_or(String::new(), |tool| format!(" with \"{}\"", tool.replace('"', " in")));
    Some(Answer::line(
        format!("measured {date}{by}{with}\nfaces {}", face_at(face)?),
        "to which face the walls were measured is `faces`, on a line of its own",
    ))
}

/// `listing 1,690 sq ft (agent says includes porch)`: what a figure counts is said by somebody.
fn counts_as_somebody_says(typed: &Typed<'_>) -> Option<Answer> {
    typed.says(0, &["record", "listing", "plan"]).then_some(())?;
    let (first, end, area) = area_from(&typed.pieces, 1)?;
    let counts =
        typed.find(end, &["includes", "include", "including", "incl", "counts", "counting"])?;
    let says = ["says", "said", "claims", "tells", "thinks", "told", "states", "writes"];
    let somebody = typed.find(end, &says).filter(|says| *says < counts)?;
    let mut name = counts + 1;
    while typed.says(name, &["the", "a", "its", "it", "my", "our"]) {
        name += 1;
    }
    let mut stop = name;
    while typed.piece(stop).is_some_and(|piece| piece.sort == Sort::Word) {
        stop += 1;
    }
    let closes = (stop..typed.pieces.len()).all(|at| typed.pieces[at].is_mark(").,;"));
    let said = remark(typed.text(end, counts)).trim_start_matches('(').trim().to_owned();
    let fits = first == 1 && stop > name && closes && somebody < counts && !said.contains('"');
    fits.then(|| {
        Answer::line(
            format!(
                "{} {area} counting {}  # {said}",
                typed.lower(0),
                quoted(typed.text(name, stop))
            ),
            "what else a figure counts comes after `counting`, by its name as it is typed below",
        )
    })
}

/// `record 1,700 sq ft, year built 1987`: when the house was built is no title of a figure.
fn figure_and_its_house(typed: &Typed<'_>) -> Option<Answer> {
    const OF_HOUSE: [&str; 16] = [
        "blt",
        "built",
        "constructed",
        "remodeled",
        "renovated",
        "yr",
        "bed",
        "beds",
        "bedrooms",
        "bath",
        "baths",
        "stories",
        "br",
        "ba",
        "story",
        "effective",
    ];
    typed.says(0, &["record", "listing", "plan"]).then_some(())?;
    let (first, end, area) = area_from(&typed.pieces, 1)?;
    let is_set_off = typed.piece(end)?.is_mark(",;(-–/")
        || typed.says(end, &OF_HOUSE)
        || typed.says(end, &["year"]);
    let of_house = typed.find(end, &OF_HOUSE).is_some();
    let has_number = typed.pieces[end..].iter().any(Piece::is_number);
    let others = area_from(&typed.pieces, end).is_some()
        || money_from(&typed.pieces, end).is_some()
        || typed.pieces[end..].iter().any(|piece| is_text(Some(piece)))
        || typed
            .find(end, &["sides", "measured", "counting", "incl", "includes", "including"])
            .is_some();
    let said = remark(typed.rest(end)).trim_matches([',', ';', ' ', '(', ')']).to_owned();
    (first == 1 && is_set_off && of_house && has_number && !others).then(|| {
        Answer::line(
            format!("{} {area}  # {said}", typed.lower(0)),
            "what else is known of the house goes into a comment",
        )
    })
}

/// `living "House" 45'3" x 40'6" overall`, `overall 45' x 40'`: the whole extents, which check the walk.
fn overall_size(typed: &Typed<'_>) -> Option<Answer> {
    let overall = typed.find(0, &["overall", "o/a", "total"])?;
    let size = super::size_in(typed.line);
    let found = lengths(&typed.pieces, 0);
    let [(first, one), (_, two)] = &found[..] else { return None };
    let is_pair = size.is_some()
        || typed.says(one.end, &["wide", "deep"]) && typed.says(two.end, &["wide", "deep"]);
    let is_named = super::kind_word(&typed.lower(0)).is_some() && is_text(typed.piece(1));
    let begins = is_named || typed.says(0, &["house", "overall", "home"]);
    let words = [
        "overall", "wide", "deep", "x", "by", "house", "home", "is", "w", "d", "size", "the",
        "total", "of",
    ];
    let after_name = if is_named { 2 } else { 0 };
    let plain = (after_name..typed.pieces.len()).all(|at| {
        (*first..one.end).contains(&at)
            || (found[1].0..two.end).contains(&at)
            || typed.says(at, &words)
            || typed.pieces[at].is_mark("×*,:()-–")
    });
    let beside = &typed.attempt.beside;
    let follows = super::super::begins_as_side(&beside.after);
    let has_walk = super::super::begins_as_wall(&beside.before);
    // A space of which nothing but the size was measured is for other rules.
    if !is_pair || !begins || !plain || !(follows || has_walk) || typed.says(overall, &["total"]) {
        return None;
    }
    let way = |deep: bool| {
        let is_turned =
            beside.front.is_some_and(|front| front.axis() == crate::geometry::compass::Axis::East);
        if deep == is_turned { "east" } else { "north" }
    };
    let (one_way, two_way, sure) =
        match (typed.says(one.end, &["deep", "d"]), typed.says(one.end, &["wide", "w"])) {
            (true, _) => (way(true), way(false), true),
            (_, true) => (way(false), way(true), true),
            _ => ("east", "north", false),
        };
    let else_ways = match sure {
        true => String::new(),
        false => ", or the two lengths exchanged".to_owned(),
    };
    let here = match (is_named, typed.says(0, &["house", "home"]) && follows && !has_walk) {
        (true, _) => format!("write `{}` here, and below its last wall", typed.text(0, 2)),
        (false, true) => "write `living \"House\"` here, and below its last wall".to_owned(),
        (false, false) => "write instead, below the last wall of the walk,".to_owned(),
    };
    Some(Answer::say(
        "a whole width and depth taped past the jogs are a check of the walk, each on a line of its own",
        format!(
            "{here} `overall {one_way} {}` and on the next line `overall {two_way} {}`{else_ways}",
            one.text, two.text
        ),
    ))
}

/// `mill rate .0214`: mills, or a share of the value.
fn mills_or_share(typed: &Typed<'_>) -> Option<Answer> {
    use rust_decimal::Decimal;
    let begins = typed.says(0, &["mill", "millage"]);
    let at = (1..typed.pieces.len()).find(|&at| typed.pieces[at].is_number())?;
    let words = ["rate", "levy", "is", "of", "total"];
    let plain = (1..at).all(|at| typed.says(at, &words) || typed.pieces[at].is_mark(":=-–."));
    let number: Decimal = typed.pieces[at].text.parse().ok()?;
    let is_small = number > Decimal::ZERO && number < Decimal::new(5, 1);
    let rest = typed.rest(at + 1);
    let name = match typed.piece(at + 1) {
        None => String::new(),
        Some(piece) if piece.sort == Sort::Word && !rest.contains(|c: char| c.is_ascii_digit()) => {
            format!(" {}", quoted(rest))
        }
        Some(piece) if is_text(Some(piece)) && at + 2 == typed.pieces.len() => format!(" {rest}"),
        Some(_) => return None,
    };
    let share = number.checked_mul(Decimal::from(100))?.normalize();
    (begins && plain && is_small).then(|| {
        Answer::Lines(
            vec![
                format!("tax rate {share} per $100{name}"),
                format!("tax rate {} per $1,000{name}", number.normalize()),
            ],
            "a mill is a dollar per $1,000, and this is less than one: is it the share of the value that is paid, as in the first, or a part of a mill".to_owned(),
        )
    })
}

/// `over 65 exemption`, `veterans exemption 10,000`: an exemption by its name, with its sum or without.
fn exemption_by_its_name(typed: &Typed<'_>) -> Option<Answer> {
    const WHOSE: [&str; 14] = [
        "over",
        "senior",
        "seniors",
        "veteran",
        "veterans",
        "veteran's",
        "disabled",
        "disability",
        "elderly",
        "widow",
        "widow's",
        "agricultural",
        "ag",
        "school",
    ];
    let at =
        typed.find(1, &["exemption", "exemptions", "exempt", "freeze", "ceiling", "deferral"])?;
    let begins = typed.says(0, &WHOSE) && !typed.line.contains('"') && is_above_the_spaces(typed);
    let name = typed.text(0, at);
    let rest = typed.rest(at + 1);
    let sum = money_from(&typed.pieces, at + 1).map(|(_, end, sum)| (end, sum)).or_else(|| {
        let number =
            typed.piece(at + 1).filter(|number| number.is_number() && number.text.len() >= 4)?;
        Some((at + 2, number.text.clone()))
    });
    if !begins || name.chars().count() > 24 {
        return None;
    }
    match sum {
        Some((end, sum)) if end == typed.pieces.len() => Some(Answer::line(
            format!("exemption {sum} {}", quoted(name)),
            "an exemption has its amount, then what it is called with a `\"` on each side",
        )),
        None if !rest.contains(|c: char| c.is_ascii_digit()) => Some(Answer::say(
            "an exemption has its amount, as the notice or the bill has it, and then its name",
            format!(
                "write `exemption`, the amount, as `$10,000`, and `{}`; if you do not know the amount, put a `#` before this line",
                quoted(name)
            ),
        )),
        _ => None,
    }
}

/// `proposed value 371000`, `noticed value $371,000`: the value that a notice proposes.
fn proposed_value(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["proposed", "noticed", "notice", "preliminary", "estimated"])
        && typed.says(1, &["value", "valuation", "appraisal"]);
    let mut at = 2;
    while typed.says(at, &["is", "of", "for", "total"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(":=-–$"))
    {
        at += 1;
    }
    let number = typed.piece(at).filter(|number| begins && number.is_number())?;
    let digits: String = number.text.chars().filter(char::is_ascii_digit).collect();
    let is_last = at + 1 == typed.pieces.len();
    let sign = if typed.pieces[at - 1].is_mark("$") { "$" } else { "" };
    (is_last && digits.len() >= 5 && !number.text.contains('.')).then(|| {
        let sum = typed.text(at, at + 1);
        Answer::Lines(
            vec![format!("value market {sign}{sum}"), format!("value assessed {sign}{sum}")],
            "is it the market value of the whole property, as in the first, or the value that the tax is paid on, as in the second".to_owned(),
        )
    })
}

/// `sold 14 Alder Ct $398k 3/12/26 1820sf`: another house with its sale, in another order.
fn sale_in_another_order(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["sold", "comp", "comparable", "sale", "neighbor"])
        && is_above_the_spaces(typed);
    let after = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark(":.)-"));
    let is_numbered = typed.piece(1).is_some_and(Piece::is_number) && after(2);
    let first = 1 + if is_numbered { 2 } else { usize::from(after(1)) };
    let (area_at, area_end, area) = area_from(&typed.pieces, first)?;
    let (price_at, price_end, price) = money_from(&typed.pieces, first)?;
    let dates: Vec<(usize, usize, String)> = (first..typed.pieces.len())
        .filter_map(|at| date_from(&typed.pieces, at).filter(|(begin, ..)| *begin == at))
        .collect();
    let day = dates.into_iter().next();
    let stop = [Some(area_at), Some(price_at), day.as_ref().map(|(at, ..)| *at)]
        .into_iter()
        .flatten()
        .min()?;
    let mut end = stop;
    while end > first
        && (typed.says(end - 1, &["sold", "for", "on", "at", "in"])
            || typed.pieces[end - 1].is_mark(",;:-–@"))
    {
        end -= 1;
    }
    let name = typed.name(first, end);
    let short = typed.says(price_end, &["k"]) && !price.ends_with("000");
    let used = |at: usize| {
        (area_at..area_end).contains(&at)
            || (price_at..=price_end).contains(&at) && (at < price_end || typed.says(at, &["k"]))
            || day.as_ref().is_some_and(|(from, to, _)| (*from..*to).contains(&at))
    };
    let small = ["sold", "for", "on", "at", "in", "closed"];
    // A month and a year are no day.
    let is_month = |at: usize| {
        super::month_named(&typed.lower(at)).is_some()
            || typed.pieces[at].is_year() && super::month_named(&typed.lower(at - 1)).is_some()
    };
    let plain = (stop..typed.pieces.len()).all(|at| {
        used(at) || typed.says(at, &small) || typed.pieces[at].is_mark(",;:()-–@") || is_month(at)
    });
    if !begins || !plain || name.is_empty() || typed.line.contains('"') || short {
        return None;
    }
    let head = format!("comparable {} {area} sold {price} on", quoted(&name));
    Some(match day {
        Some((_, _, day)) => Answer::line(
            format!("{head} {day}"),
            "another house that was sold is a `comparable`: its name, its size, the price and the day",
        ),
        None => Answer::say(
            "another house that was sold is a `comparable`, and has the day of its sale",
            format!(
                "write `{head}` and the day, as year-month-day; without the day leave the line out"
            ),
        ),
    })
}

/// `rounded to nearest half foot`, `all dims to the nearest inch`: whose lengths, is not said.
fn rounded(typed: &Typed<'_>) -> Option<Answer> {
    let rounded = typed.find(0, &["rounded", "round"]).map(|at| at + 1);
    let to = rounded.filter(|at| typed.says(*at, &["to"]) && typed.says(at + 1, &["the"]));
    let nearest = typed.find(0, &["nearest", "closest"]).or(to.map(|to| to + 1))?;
    let begins = typed.find(
        0,
        &[
            "rounded",
            "round",
            "measured",
            "taped",
            "dims",
            "dimensions",
            "lengths",
            "sides",
            "measurements",
            "all",
            "everything",
        ],
    )? < nearest;
    let unit = |words: &[&str]| typed.find(nearest, words).is_some();
    let one = length_at(&typed.pieces, nearest + 1);
    let half = unit(&["half", "1/2"])
        || typed.rest(nearest).contains("1/2")
        || typed.rest(nearest).contains('½');
    // `nearest 1/10 ft`; any other fraction is no step that a rule has.
    let rest = typed.rest(nearest);
    let tenth = rest.contains("1/10") || rest.contains("0.1") || rest.contains(" .1");
    if rest.contains('/') && !tenth && !rest.contains("1/2") {
        return None;
    }
    let (tolerance, rule) = match one.map(|one| one.length) {
        _ if tenth || unit(&["tenth", "tenths"]) => ("0.05'", "tenth-foot"),
        Some(length) if length == Length::from_nm(6 * Length::INCH.nm()) => ("3\"", "half-foot"),
        _ if half && (unit(&["foot", "ft", "feet"]) || rest.contains('\'')) => ("3\"", "half-foot"),
        Some(length) if length == Length::FOOT => ("6\"", "whole-foot"),
        Some(length) if length == Length::INCH => ("1/2\"", "inch"),
        _ if unit(&["inch", "in"]) && !half && !unit(&["quarter", "eighth"]) => ("1/2\"", "inch"),
        _ if unit(&["foot", "ft"]) && !unit(&["quarter"]) => ("6\"", "whole-foot"),
        _ => return None,
    };
    let is_of_a_figure =
        typed.find(0, &["record", "listing", "county", "card", "plan", "area"]).is_some();
    (begins && is_above_the_spaces(typed) && !is_of_a_figure && !typed.line.contains('"')).then(|| {
        Answer::say(
            "lengths that were rounded are off by up to half of the step: whose they are is not said",
            format!("if yours are, write `tolerance {tolerance}` here; if the record's are, write `sides {rule}` at the end of the line of the record"),
        )
    })
}

/// `used a laser inside, tape outside`: two faces, and none of them is that of the file.
fn both_faces(typed: &Typed<'_>) -> Option<Answer> {
    let has = |words: &[&str]| typed.find(0, words).is_some();
    let begins = typed
        .says(0, &["used", "measured", "taped", "laser", "tape", "mix", "both", "some", "i", "we"]);
    let inside = has(&["inside", "interior", "indoors"]);
    let outside = has(&["outside", "exterior", "outdoors"]);
    let says_how = has(&["laser", "tape", "taped", "measured", "wheel", "measurements"]);
    let plain =
        typed.pieces.iter().all(|piece| piece.sort == Sort::Word || piece.is_mark(",;.&-–()"));
    (begins && inside && outside && says_how && plain && is_above_the_spaces(typed)).then(|| {
        Answer::say(
            "to which face the walls were measured is said once for the whole file, and for each space that was measured otherwise on its own line",
            "write `faces outside` or `faces inside` here, as most were measured, and `measured to inside` or `measured to outside` after the name of each space that was measured to the other; put a `#` before this line",
        )
    })
}

/// `assessed at 371k this year`: the value that the tax is paid on.
fn assessed_at(typed: &Typed<'_>) -> Option<Answer> {
    let kind = match typed.lower(0).as_str() {
        "assessed" => "assessed",
        "appraised" | "valued" => "market",
        _ => return None,
    };
    let mut at = 1;
    while typed.says(at, &["at", "for", "is", "now", "it", "my", "house"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(":=$-–"))
    {
        at += 1;
    }
    let number = typed.piece(at).filter(|number| at > 1 && number.is_number())?;
    let value: i64 = number.text.replace(',', "").parse().ok()?;
    let short = typed.says(at + 1, &["k", "thousand"]);
    let all = if short { value.checked_mul(1_000)? } else { value };
    let rest = at + 1 + usize::from(short)..typed.pieces.len();
    let small = ["this", "year", "now", "by", "the", "county", "in", "total", "for", "house"];
    let plain = rest.clone().all(|at| {
        typed.says(at, &small) || typed.pieces[at].is_year() || typed.pieces[at].is_mark(".,()")
    });
    let year = rest.clone().find(|&at| typed.pieces[at].is_year());
    let year = year.map_or(String::new(), |at| format!(" year {}", typed.text(at, at + 1)));
    let sign = if typed.pieces[at - 1].is_mark("$") { "$" } else { "" };
    let is_last_year = typed.find(at, &["last"]).is_some();
    (plain && !is_last_year && (10_000..100_000_000).contains(&all) && is_above_the_spaces(typed))
        .then(|| {
            Answer::line(
                format!("value {kind} {sign}{}{year}", crate::units::decimal::thousands(all)),
                "a value begins with `value`, then which it is",
            )
        })
}

/// `R-200417`, `0417-22-018` at the head of a file: the number of an account.
fn number_of_the_account(typed: &Typed<'_>) -> Option<Answer> {
    let line = typed.line.trim();
    let digits = line.chars().filter(char::is_ascii_digit).count();
    let letters = line.chars().take_while(char::is_ascii_alphabetic).count();
    let rest = line.get(letters..)?.trim_start_matches(['-', ' ']);
    let is_code = rest.chars().all(|c| c.is_ascii_digit() || c == '-')
        && rest.starts_with(|c: char| c.is_ascii_digit())
        && rest.ends_with(|c: char| c.is_ascii_digit())
        && letters <= 3
        && !["zip", "mls", "po", "box", "tel", "apt", "us", "hwy", "fm"]
            .contains(&line.get(..letters)?.to_lowercase().as_str());
    // A day, a telephone number and a length have digits and dashes too.
    let is_marked = letters > 0 && digits >= 5 || rest.matches('-').count() == 2 && digits >= 9;
    let is_other = date_from(&typed.pieces, 0).is_some()
        || super::super::compass::way_and_back(line.get(..letters)?).is_some();
    let has_account = typed.attempt.beside.before.starts_with("account ");
    let is_head = is_above_the_spaces(typed) && !typed.attempt.beside.before.starts_with("level");
    (is_code && is_marked && !is_other && !has_account && is_head).then(|| {
        Answer::line(
            format!("account \"{line}\""),
            "the number on the record is an `account`, with a `\"` on each side",
        )
    })
}
