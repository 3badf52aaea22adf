//! What a roll, a notice, a listing or a tax bill says, in words that come near a line of the format.

use super::super::pieces::Sort;
use super::measure::{area_from, date_from, money_from};
use super::{Answer, Rule, Typed, first_of, is_text, quoted, remark};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        listed_with_a_price,
        area_per,
        area_as_money,
        bare_in_meters,
        counting_as_well,
        value_in_words,
        capped,
        rate_of,
        taxes_paid,
        measured_in_other_words,
        account_number,
        exempt_for,
        neighbor,
        property_alone,
        open_plan,
        says_the_record,
        short_year,
        vaulted,
        level_with_about,
    ];
    first_of(rules, typed)
}

/// `listed at $398,000, 1,240 sq ft`, `listed 1,240 sq ft at $398,000`: the price goes into a comment.
fn listed_with_a_price(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["listed", "list", "advertised", "marketed"])
        || typed.says(0, &["for"]) && typed.says(1, &["sale"]);
    if !begins || typed.attempt.space.is_some() {
        return None;
    }
    let (first, end, area) = area_from(&typed.pieces, 1)?;
    money_from(&typed.pieces, 1)?;
    let has_unit = typed.text(first, end).chars().any(char::is_alphabetic);
    let clean = |text: &str| text.trim().trim_matches([',', ';', ' ', '-', '–']).to_owned();
    let said: Vec<String> = [clean(typed.text(0, first)), clean(typed.rest(end))]
        .into_iter()
        .filter(|part| !part.is_empty())
        .collect();
    has_unit.then(|| {
        Answer::line(
            format!("listing {area}  # {}", super::plainly(&said.join(" "))),
            "the area of a listing is `listing`; its price has no line",
        )
    })
}

/// `GLA per county 1226`, `living area according to the listing 1,240 sf`: who published an area, among other words.
fn area_per(typed: &Typed<'_>) -> Option<Answer> {
    const SIZE: [&str; 11] = [
        "gla", "living", "area", "heated", "square", "footage", "feet", "size", "sqft", "sf",
        "gross",
    ];
    let per = (1..5).find(|&at| typed.says(at, &["per", "from", "by", "on", "according", "in"]))?;
    let sized = (0..per).all(|at| typed.says(at, &SIZE));
    let mut at = per + 1;
    while typed.says(at, &["to", "the", "my"]) {
        at += 1;
    }
    let word = match typed.lower(at).as_str() {
        "county" | "cad" | "record" | "records" | "tax" | "assessor" | "appraisal" | "district"
        | "roll" | "card" | "office" => "record",
        "listing" | "mls" | "realtor" | "agent" | "seller" => "listing",
        "plan" | "plans" | "builder" | "blueprint" => "plan",
        _ => return None,
    };
    at += 1;
    while typed
        .says(at, &["records", "record", "card", "roll", "district", "office", "is", "sheet"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(":=-–,"))
    {
        at += 1;
    }
    let number = typed.piece(at).filter(|number| sized && number.is_number())?;
    let rest = typed.rest(at + 1);
    let plain = ["", "sq ft", "sf", "sqft", "sq. ft.", "sq.ft.", "square feet"];
    plain.contains(&rest.to_lowercase().as_str()).then(|| {
        Answer::line(
            format!("{word} {} sq ft", number.text),
            "a published area begins with the word for who published it",
        )
    })
}

/// `record $1,226`: a figure of a house among marks of money.
fn area_as_money(typed: &Typed<'_>) -> Option<Answer> {
    let [word, dollar, number] = &typed.pieces[..] else { return None };
    let is_figure = word.is_word(&["record", "listing", "plan"]);
    let value: u32 = number.text.replace(',', "").parse().ok()?;
    (is_figure && dollar.is_mark("$") && (300..20_000).contains(&value)).then(|| {
        Answer::Lines(
            vec![
                format!("{} {} sq ft", word.text.to_lowercase(), number.text),
                format!("value market ${}", number.text),
            ],
            "an area has its unit, and a sum of money is a `value`".to_owned(),
        )
    })
}

/// `listing 114` in a file of meters: its unit may be either.
fn bare_in_meters(typed: &Typed<'_>) -> Option<Answer> {
    let [word, number] = &typed.pieces[..] else { return None };
    let value: u32 = number.text.replace(',', "").parse().ok()?;
    let fits = typed.attempt.is_metric && word.is_word(&["record", "listing", "plan"]);
    (fits && (20..1_000).contains(&value)).then(|| {
        let head = word.text.to_lowercase();
        Answer::Lines(
            ["sq m", "sq ft"].map(|unit| format!("{head} {} {unit}", number.text)).into(),
            "an area needs its unit".to_owned(),
        )
    })
}

/// `record 1,666 sq ft house + garage`, `record 1,666 sq ft including the garage`: what else a figure counts.
fn counting_as_well(typed: &Typed<'_>) -> Option<Answer> {
    typed.says(0, &["record", "listing"]).then_some(())?;
    let (_, end, _) = area_from(&typed.pieces, 1)?;
    let mut at = end;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(",;:(-–")) {
        at += 1;
    }
    if !typed.says(at, &["house", "home", "living"]) {
        return None;
    }
    at += 1 + usize::from(typed.says(at + 1, &["area"]));
    let joins = typed.piece(at).is_some_and(|mark| mark.is_mark("+&"))
        || typed.says(at, &["and", "plus", "with"]);
    let noun = at + 1 + usize::from(typed.says(at + 1, &["the"]));
    let kind = super::kind_word(&typed.lower(noun)).filter(|kind| *kind != "living")?;
    let stop = typed.pieces.len() - usize::from(typed.pieces.last()?.is_mark(")"));
    if !joins || noun + 1 != stop {
        return None;
    }
    let named = typed.attempt.beside.spaces.iter().find(|name| name.eq_ignore_ascii_case(kind));
    let name = named.map_or_else(|| super::levels::capitalized(kind), |name| name.to_string());
    Some(Answer::line(
        format!("{} counting {}", typed.text(0, end), quoted(&name)),
        "what a figure counts as well stands after `counting`, by its name",
    ))
}

/// `2026 value $412,000`, `notice of value $412,000`, `noticed value: 412,000`.
fn value_in_words(typed: &Typed<'_>) -> Option<Answer> {
    if typed.attempt.space.is_some() {
        return None;
    }
    let year = typed.piece(0).filter(|piece| piece.is_year());
    let first = usize::from(year.is_some());
    let heads: [&[&str]; 6] = [
        &["value"],
        &["notice", "of", "value"],
        &["noticed", "value"],
        &["notice", "value"],
        &["proposed", "value"],
        &["values"],
    ];
    let words = heads
        .iter()
        .find(|words| words.iter().enumerate().all(|(i, word)| typed.says(first + i, &[word])))?;
    let mut at = first + words.len();
    while typed.says(at, &["is", "of"]) || typed.piece(at).is_some_and(|mark| mark.is_mark(":=-–"))
    {
        at += 1;
    }
    let (begin, end, sum) = money_from(&typed.pieces, at)?;
    let is_plain = first + words.len() > 1;
    if begin != at || end != typed.pieces.len() || !is_plain {
        return None;
    }
    let year = year.map_or_else(String::new, |year| format!(" year {}", year.text));
    Some(Answer::Lines(
        ["market", "assessed"].map(|word| format!("value {word} {sum}{year}")).into(),
        "a value says which it is, `market` or `assessed`".to_owned(),
    ))
}

/// `value market $412,000 capped $371,000`: what is taxed under a cap is the assessed value.
fn capped(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(2, &["capped", "cap", "taxable", "homestead-capped"])?;
    let (market, end, market_sum) = money_from(&typed.pieces, 1)?;
    let mut next = at + 1;
    while typed.says(next, &["at", "value", "to", "is"])
        || typed.piece(next).is_some_and(|mark| mark.is_mark(":=-–"))
    {
        next += 1;
    }
    let (begin, stop, capped) = money_from(&typed.pieces, next)?;
    let between =
        (end..at).all(|at| typed.pieces[at].is_mark(",;/(") || typed.says(at, &["and", "but"]));
    let last = typed.pieces.len() - usize::from(typed.pieces.last()?.is_mark(")"));
    let head = typed.says(0, &["value", "market"]);
    (head && market <= 3 && market < at && between && begin == next && stop == last).then(|| {
        Answer::line(
            format!("value market {market_sum} assessed {capped}"),
            "the value that is taxed, below a cap, is `assessed`",
        )
    })
}

/// `tax rate school 1.05`, `tax rate .0105 school`: how much per $100, and whose rate it is.
fn rate_of(typed: &Typed<'_>) -> Option<Answer> {
    if !(typed.says(0, &["tax"]) && typed.says(1, &["rate"])) {
        return None;
    }
    let (number, name) = match &typed.pieces[2..] {
        // One with a name in quotation marks is known elsewhere.
        [number, name @ ..]
            if number.is_number() && name.first().is_some_and(|first| first.sort == Sort::Word) =>
        {
            (number, name)
        }
        [name @ .., number] if number.is_number() && !name.is_empty() => (number, name),
        _ => return None,
    };
    let words = name.iter().all(|piece| piece.sort == Sort::Word || piece.sort == Sort::Text)
        && !name
            .iter()
            .any(|piece| piece.is_word(&["per", "mill", "mills", "percent", "on", "is"]));
    let value: rust_decimal::Decimal = number.text.parse().ok()?;
    let from = typed.pieces.iter().position(|piece| piece.at == name[0].at)?;
    let who = quoted(&typed.name(from, from + name.len()));
    let small = rust_decimal::Decimal::new(5, 2);
    let line = |rate: rust_decimal::Decimal, per: &str| {
        format!("tax rate {} per {per} {who}", rate.normalize())
    };
    let lines = if value < small {
        // A rate as a part of one.
        vec![line(value * rust_decimal::Decimal::ONE_HUNDRED, "$100")]
    } else if value < rust_decimal::Decimal::from(4) {
        vec![line(value, "$100")]
    } else {
        vec![line(value, "$1,000"), line(value, "$100")]
    };
    words.then(|| {
        Answer::Lines(lines, "a rate is per $100 or per $1,000 of value, and has a name".to_owned())
    })
}

/// `taxes 4326.00 in 2025`, `2025 taxes $4,326`: what was paid has no line.
fn taxes_paid(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(0, &["taxes", "tax"]).filter(|at| *at <= 1)?;
    let number = |at: usize| {
        let at = at + usize::from(typed.piece(at).is_some_and(|mark| mark.is_mark("$:=")));
        typed.piece(at).filter(|piece| piece.is_number() && !piece.is_year())
    };
    // A sum with its sign is known elsewhere.
    let is_paid = !typed.line.contains('$')
        && (typed.says(at, &["taxes"]) || typed.says(at + 1, &["paid", "bill"]));
    let next = at + 1 + usize::from(typed.says(at + 1, &["paid", "were", "was", "bill"]));
    number(next).filter(|_| is_paid && typed.attempt.space.is_none())?;
    Some(Answer::line(
        format!("# {}", typed.line),
        "a sides file has no line for the tax that was paid; a rate is `tax rate`",
    ))
}

/// `last measured 2026-03-07`, `measured 46088`: the day of the measuring.
fn measured_in_other_words(typed: &Typed<'_>) -> Option<Answer> {
    if typed.says(0, &["last", "re-measured", "remeasured", "re"])
        && typed.find(1, &["measured", "taped"]) == Some(1)
    {
        let (first, end, date) = date_from(&typed.pieces, 2)?;
        let rest = remark(typed.rest(end));
        let comment = if rest.is_empty() { String::new() } else { format!("  # {rest}") };
        return (first == 2).then(|| {
            Answer::line(
                format!("measured {date}{comment}"),
                "the day of the measuring is `measured`",
            )
        });
    }
    let [word, number] = &typed.pieces[..] else { return None };
    let days: i32 = number.text.parse().ok().filter(|days| (40_000..60_000).contains(days))?;
    let head = word.is_word(&["measured", "notice", "appraised"]);
    // Day 1 of a spreadsheet is January 1, 1900, and it counts a February 29 of that year.
    let start = jiff::civil::Date::new(1899, 12, 30).ok()?;
    let date = start.checked_add(jiff::Span::new().days(days)).ok()?;
    head.then(|| {
        Answer::line(
            format!("{} {date}", word.text.to_lowercase()),
            "a spreadsheet shows a day as a number; a day is year-month-day",
        )
    })
}

/// `property ID R-100417`, `Property ID: R-100417`: the number of an account.
fn account_number(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["property", "prop", "geo", "quick", "tax"])
        && typed.says(1, &["id", "number", "no", "ref"]);
    let mut at = 2;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(".:=#-–")) {
        at += 1;
    }
    let rest = typed.rest(at);
    (begins && !rest.is_empty() && rest.chars().any(|c| c.is_ascii_digit())).then(|| {
        Answer::line(
            format!("account {}", quoted(rest.trim_matches('"'))),
            "the number under which the office has the house is `account`",
        )
    })
}

/// `exemption $140,000 for school`: the name of the rate that it takes the sum from.
fn exempt_for(typed: &Typed<'_>) -> Option<Answer> {
    let (_, end, sum) = money_from(&typed.pieces, 1).filter(|_| typed.says(0, &["exemption"]))?;
    let mut at = end;
    while typed.says(at, &["for", "from", "on", "off", "the", "of"]) {
        at += 1;
    }
    let words = (at..typed.pieces.len()).all(|at| typed.pieces[at].sort == Sort::Word);
    let stop =
        typed.pieces.len() - usize::from(typed.says(typed.pieces.len() - 1, &["tax", "taxes"]));
    (at > end && at < stop && words).then(|| {
        Answer::line(
            format!("exemption {sum} {}", quoted(&typed.name(at, stop))),
            "the sum is followed by the name of the rate that it is for, with a `\"` on each side",
        )
    })
}

/// `neighbor 8 Larch Court 1,290 sq ft valued $355,000`: another house, without its sale.
fn neighbor(typed: &Typed<'_>) -> Option<Answer> {
    let is_one = typed
        .says(0, &["neighbor", "neighbour", "neighbors", "neighboring", "nearby", "next-door"]);
    let is_sold = typed.find(1, &["sold", "sale"]).is_some();
    area_from(&typed.pieces, 1)?;
    (is_one && !is_sold && typed.attempt.space.is_none()).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "another house has a line only with its sale: `comparable`, its name, its size, `sold` with the price and `on` with the day",
        )
    })
}

/// `house "12 Sedge Road"` above the first level: what the file is about.
fn property_alone(typed: &Typed<'_>) -> Option<Answer> {
    let [word, text] = &typed.pieces[..] else { return None };
    let has_number = text.text.trim_matches('"').starts_with(|c: char| c.is_ascii_digit());
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let is_head =
        typed.attempt.space.is_none() && !typed.attempt.beside.before.starts_with("level");
    (word.is_word(&["house", "home", "site", "place"])
        && is_text(Some(text))
        && has_number
        && !follows
        && is_head)
        .then(|| {
            Answer::line(format!("property {}", text.text), "what the file is about is `property`")
        })
}

/// `open floor plan`, `open concept`: how the rooms are laid out changes no area.
fn open_plan(typed: &Typed<'_>) -> Option<Answer> {
    let is_plan = typed.says(0, &["open"])
        && (typed.says(1, &["concept", "plan", "layout"])
            || typed.says(1, &["floor", "floorplan", "kitchen"])
                && typed.find(1, &["plan", "floorplan", "layout", "concept"]).is_some());
    (is_plan && super::size_in(typed.line).is_none()).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "this line says nothing about the walls; a comment begins with `#`",
        )
    })
}

/// `county has it at 1215 feet`, `assessor shows the house as 1,215`: a figure of the record in a sentence.
fn says_the_record(typed: &Typed<'_>) -> Option<Answer> {
    const SAYS: [&str; 24] = [
        "has", "have", "it", "us", "me", "at", "as", "the", "house", "home", "this", "lists",
        "listed", "down", "shows", "says", "for", "puts", "claims", "thinks", "records", "reports",
        "size", "its",
    ];
    let who = ["county", "assessor", "cad", "district", "appraisal", "office"];
    let first = usize::from(typed.says(0, &["the", "my", "our"]));
    let at = (first + 1..typed.pieces.len())
        .find(|&at| !typed.says(at, &SAYS) && !typed.says(at, &["district", "office", "record"]))?;
    let number = typed
        .piece(at)
        .filter(|number| number.is_number() && typed.says(first, &who) && at > first + 1)?;
    let rest = typed.rest(at + 1).to_lowercase();
    let plain = ["", "feet", "ft", "sq ft", "sf", "sqft", "square feet", "sq feet", "square foot"];
    let value: u32 = number.text.replace(',', "").parse().ok()?;
    (plain.contains(&rest.trim_end_matches('.')) && (150..30_000).contains(&value)).then(|| {
        Answer::line(
            format!("record {} sq ft", number.text),
            "the figure of the county is `record`, with its unit",
        )
    })
}

/// `measured 26-03-07`: the year of a day with two digits each.
fn short_year(typed: &Typed<'_>) -> Option<Answer> {
    let text = typed.rest(1);
    let parts: Vec<u8> =
        text.split(['-', '/', '.']).map(str::parse).collect::<Result<_, _>>().ok()?;
    let [one, two, three] = parts[..] else { return None };
    let all_short = text.split(['-', '/', '.']).all(|part| part.len() == 2);
    let head = typed.says(0, &["measured", "notice"]) && all_short;
    let date = |year: u8, month: u8, day: u8| {
        let (month, day) = (i8::try_from(month).ok()?, i8::try_from(day).ok()?);
        jiff::civil::Date::new(2000 + i16::from(year), month, day).ok()
    };
    // The year stands first or last; a year to come is none that a day was in.
    let mut days: Vec<String> =
        [date(one, two, three), date(three, one, two), date(three, two, one)]
            .into_iter()
            .flatten()
            .map(|date| format!("{} {date}", typed.lower(0)))
            .collect();
    days.dedup();
    (head && one > 12 && two <= 12 && days.len() > 1).then(|| {
        days.truncate(3);
        Answer::Lines(
            days,
            "a day is four digits for the year, then the month and the day".to_owned(),
        )
    })
}

/// `vaulted`, `vaulted ceilings`: a remark, unless a floor is missing there.
fn vaulted(typed: &Typed<'_>) -> Option<Answer> {
    let is_high = typed.says(0, &["vaulted", "cathedral"]);
    let is_first_level = !typed.attempt.beside.has_level_above;
    let only = (1..typed.pieces.len()).all(|at| {
        is_first_level
            && (typed.pieces[at].is_number()
                || typed.pieces[at].is_mark("'\"×’′″,")
                || typed.says(at, &["x", "by", "ft"]))
            || typed.says(
                at,
                &[
                    "ceiling",
                    "ceilings",
                    "living",
                    "room",
                    "rooms",
                    "family",
                    "great",
                    "throughout",
                    "kitchen",
                    "dining",
                    "bedroom",
                    "master",
                    "den",
                    "hall",
                    "foyer",
                    "entry",
                    "over",
                    "in",
                    "at",
                    "the",
                    "and",
                    "above",
                    "lr",
                    "fr",
                    "great-room",
                ],
            )
    });
    let is_high = is_high
        && !(typed.attempt.beside.has_level_above && typed.find(1, &["over", "above"]).is_some());
    (is_high && only && !super::super::begins_as_side(&typed.attempt.beside.after)).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "a high ceiling takes nothing from the floor below it; a floor above that is missing over a room is a space `open` on that floor, with its sides",
        )
    })
}

/// `level "Second floor" approx 600 sq ft`: a level has no area of its own.
fn level_with_about(typed: &Typed<'_>) -> Option<Answer> {
    let is_level = typed.says(0, &["level"]) && is_text(typed.piece(1));
    let about = typed.says(2, &["approx", "approximately", "about", "roughly", "around", "est"])
        || typed.piece(2).is_some_and(|mark| mark.is_mark("~≈"));
    area_from(&typed.pieces, 2).filter(|_| is_level && about)?;
    Some(Answer::line(
        format!("{}  # {}", typed.text(0, 2), typed.rest(2)),
        "a level has no area of its own: its spaces have their sides, and the record's area for one of them is `recorded`",
    ))
}
