//! Lines at the head of a file about what it has no word for, or by another word: the county, money, who measured.

use super::super::pieces::{Piece, Sort};
use super::measure::{date_from, lengths, money_from};
use super::walks::way_word;
use super::{Answer, Typed, heads, is_text, quoted, remark};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: [fn(&Typed<'_>) -> Option<Answer>; 22] = [
        measured_elsewhere,
        part_of_the_record,
        quoted_area,
        hundreds,
        unit_first,
        faces_of_all,
        other_words,
        state_alone,
        county,
        street_side,
        north_is,
        solid_walls,
        material,
        rate_alone,
        sums,
        market_value,
        without_day,
        units,
        number_of_a_case,
        address_alone,
        roughly,
        title_of_a_figure,
    ];
    rules.iter().find_map(|rule| rule(typed))
}

fn comment(typed: &Typed<'_>, cause: impl Into<String>) -> Answer {
    Answer::line(format!("# {}", typed.line), cause)
}

/// `gemessen am 12.10.2026 mit Laser`, `medido el 12.10.2026 por mí`: the day in another language.
fn measured_elsewhere(typed: &Typed<'_>) -> Option<Answer> {
    typed.piece(0).filter(|_| typed.says(0, &["gemessen", "medido", "mesuré", "vermessen"]))?;
    let mut pieces: Vec<Piece> = Vec::new();
    for piece in &typed.pieces {
        let word = match piece.text.to_lowercase().as_str() {
            "gemessen" | "medido" | "mesuré" | "vermessen" => "measured",
            "am" | "el" | "le" => continue,
            "mit" | "con" | "avec" => "with",
            "von" | "por" | "par" => "by",
            _ => {
                pieces.push(piece.clone());
                continue;
            }
        };
        pieces.push(Piece::word(word));
    }
    let line = super::join(&pieces);
    Some(Answer::line(line, "the day is `measured`, then `by` and `with`"))
}

/// `county has garage 470`: the record's area of a part.
fn part_of_the_record(typed: &Typed<'_>) -> Option<Answer> {
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
            format!("take this line out, and at the end of the line that begins with `{kind}` write `recorded {area} sq ft`"),
        )
    })
}

/// `record "1,900 sq ft"`: an area between quotation marks.
fn quoted_area(typed: &Typed<'_>) -> Option<Answer> {
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

/// `record nineteen hundred sq ft`, `record 19 hundred`: as it is spoken.
fn hundreds(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["record", "listing", "plan"]) {
        return None;
    }
    let at = typed.find(2, &["hundred"]).filter(|at| *at <= 3)?;
    let spoken = |at: usize| crate::sketch::mend::lengths::spoken(&typed.lower(at));
    let number = |at: usize| {
        let piece = typed.piece(at)?;
        piece.text.parse::<i64>().ok().or_else(|| spoken(at))
    };
    let tens = if at == 3 { number(1)?.checked_add(number(2)?)? } else { number(1)? };
    let mut end = at + 1;
    let mut all = tens.checked_mul(100)?;
    while let Some(more) = (end < typed.pieces.len()).then(|| number(end)).flatten() {
        all = all.checked_add(more)?;
        end += 1;
    }
    let unit = if end == typed.pieces.len() { "sq ft" } else { "" };
    Some(Answer::line(
        format!(
            "{} {} {unit}{}",
            typed.lower(0),
            crate::units::decimal::thousands(all),
            typed.rest(end)
        ),
        "numbers are written in digits",
    ))
}

/// `heated sq ft 1,900`, `living area sqft: 1900`: the unit before the number.
fn unit_first(typed: &Typed<'_>) -> Option<Answer> {
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

/// `measured inside walls`, `all walls measured outside`: the face that was measured everywhere.
fn faces_of_all(typed: &Typed<'_>) -> Option<Answer> {
    let faces = [
        ("inside", &["inside", "interior", "drywall"][..]),
        ("outside", &["outside", "exterior"]),
        ("frame", &["frame", "studs", "framing"]),
    ];
    let filler = [
        "measured",
        "taped",
        "to",
        "the",
        "of",
        "walls",
        "wall",
        "all",
        "face",
        "faces",
        "at",
        "from",
        "everything",
        "sides",
        "were",
        "was",
        "is",
        "are",
    ];
    let said: Vec<usize> = (0..typed.pieces.len())
        .filter(|&at| !typed.says(at, &filler) && !typed.pieces[at].is_mark(",.:()"))
        .collect();
    let [at] = said[..] else { return None };
    let (face, _) = faces.iter().find(|(_, words)| typed.says(at, words))?;
    let begins = typed.says(0, &["measured", "taped", "all", "walls", "everything"]);
    (begins && typed.find(0, &["measured", "taped"]).is_some() && typed.pieces.len() > 2).then(
        || {
            Answer::line(
                format!("faces {face}"),
                "the face to which all sides were measured is `faces`",
            )
        },
    )
}

/// `ceiling 8'`, `legal: Lot 4 Block 2`, `tolerance 1%`, `exempt 140000`, `lot 0.35`: one word for another.
fn other_words(typed: &Typed<'_>) -> Option<Answer> {
    if typed.says(
        0,
        &[
            "ceiling",
            "ceilings",
            "legal",
            "deed",
            "roof",
            "eave",
            "eaves",
            "overhang",
            "height",
            "pitch",
            "lender",
            "subdivision",
            "block",
        ],
    ) && !typed.line.contains('"')
        && super::measure::area_from(&typed.pieces, 0).is_none()
        && !typed.says(1, &["outline"])
    {
        return Some(comment(
            typed,
            format!(
                "a sides file has no place for `{}`; a comment begins with `#`",
                typed.text(0, 1)
            ),
        ));
    }
    let of_land = typed.says(0, &["area", "size", "acreage", "total"])
        && typed.find(1, &["acre", "acres", "ac", "ha", "hectares", "hectare"]).is_some();
    if let Some((_, _, area)) = super::measure::area_from(&typed.pieces, 0).filter(|_| of_land) {
        return Some(Answer::say(
            "the area of the land stands on the line of the lot",
            format!(
                "at the end of the line that begins with `lot` write `recorded {area}`, or write `lot \"Lot\" recorded {area}` and its calls below it"
            ),
        ));
    }
    if typed.says(0, &["tolerance"]) && typed.pieces.iter().any(|piece| piece.is_mark("%")) {
        return Some(Answer::say(
            "a tolerance is a length, and no share",
            "write how far a wall may be off, in inches or centimeters, after `tolerance`",
        ));
    }
    if typed.says(0, &["exempt", "exempted"]) && typed.pieces.len() >= 2 {
        return Some(Answer::line(
            format!("exemption {}", typed.rest(1)),
            "what is taken off the value is `exemption`",
        ));
    }
    let number = typed.piece(1).filter(|number| number.is_number() && typed.pieces.len() == 2);
    if typed.says(0, &["lot", "land", "acreage"])
        && let Some(number) = number.filter(|number| number.text.contains('.'))
    {
        return Some(Answer::say(
            "the area of a lot has its unit",
            format!(
                "if the lot is {} acres, write `lot \"Lot\" recorded {} acres`; other units are `sq ft`, `sq m` and `hectares`",
                number.text, number.text
            ),
        ));
    }
    let tax_value = typed.says(0, &["tax", "taxable"]) && typed.says(1, &["value"]);
    (tax_value && money_from(&typed.pieces, 0).is_none() && typed.pieces.len() > 2).then(|| {
        Answer::say(
            "the value for the tax is `value assessed` or, if nothing is taken off, `value market`",
            format!("write `value assessed {0}` or `value market {0}`", typed.rest(2)),
        )
    })
}

/// `Texas`, `State of Texas`: the state whose rules apply.
fn state_alone(typed: &Typed<'_>) -> Option<Answer> {
    let plain = |piece: &Piece| piece.sort == Sort::Word || piece.is_mark(".,:");
    if !typed.pieces.iter().all(plain) || typed.pieces.len() > 4 || typed.attempt.knows_first {
        return None;
    }
    let mut first = 0;
    while typed.says(first, &["state", "of"]) {
        first += 1;
    }
    let alone = heads::is_state(typed.rest(first).trim_matches(['.', ',', ' ']));
    let after_county = typed.find(0, &["county"]).is_some();
    let state = heads::state_in(typed.rest(first)).filter(|_| alone || after_county)?;
    let said = if alone { String::new() } else { format!("  # {}", remark(typed.line)) };
    Some(Answer::line(
        format!("place {}{said}", state.replace(' ', "-")),
        "the place is the state whose rules apply",
    ))
}

/// `county Corriedale`, `Juniper County`: a sides file asks for the state alone.
fn county(typed: &Typed<'_>) -> Option<Answer> {
    let plain = |piece: &Piece| piece.sort == Sort::Word || piece.is_mark(".,:=");
    let named = (typed.says(0, &["county"])
        && typed.pieces.last().is_some_and(|last| last.text.starts_with(char::is_uppercase)))
        || typed.pieces.last().is_some_and(|last| last.is_word(&["county"]))
            && typed.piece(0)?.text.starts_with(char::is_uppercase);
    let fits = (2..=4).contains(&typed.pieces.len()) && typed.pieces.iter().all(plain);
    (named && fits && !typed.says(1, &["sketch", "record"])).then(|| {
        comment(
            typed,
            "a sides file has no line for the county: the state whose rules apply is `place` and its name; a comment begins with `#`",
        )
    })
}

/// `frente sur`, `Straße im Süden`, `orientation south`: the street side.
fn street_side(typed: &Typed<'_>) -> Option<Answer> {
    let begins = [
        "frente",
        "orientation",
        "orientación",
        "straße",
        "strasse",
        "straßenseite",
        "calle",
        "rue",
        "façade",
        "fachada",
        "vorne",
        "faces",
        "orient",
        "vorderseite",
        "front",
    ];
    let ways: Vec<&'static str> =
        typed.pieces[1..].iter().filter_map(|piece| way_word(&piece.text)).collect();
    let plain = |piece: &Piece| piece.sort == Sort::Word || piece.is_mark(".,:=");
    let english = typed.says(0, &["front", "faces"])
        && typed.pieces[1..].iter().any(|piece| {
            ["north", "south", "east", "west", "n", "s", "e", "w"]
                .contains(&piece.text.to_lowercase().as_str())
        });
    let [way] = ways[..] else { return None };
    let fits = typed.pieces.len() <= 5 && typed.pieces.iter().all(plain) && !english;
    (typed.says(0, &begins) && fits).then(|| {
        Answer::line(
            format!("front {way}"),
            "the street side is `front` and one word of the compass",
        )
    })
}

/// `north is up`: it always is.
fn north_is(typed: &Typed<'_>) -> Option<Answer> {
    let is_up = typed.says(0, &["north"])
        && typed.says(1, &["is", "="])
        && typed.pieces.len() <= 6
        && typed.find(2, &["up", "top"]).is_some()
        && !typed.pieces.iter().any(Piece::is_number);
    if is_up {
        return Some(comment(
            typed,
            "`north` of the file is any way that suits the walk; a comment begins with `#`",
        ));
    }
    let turned = (typed.says(0, &["north"]) && typed.says(1, &["is"])
        || typed.says(0, &["magnetic", "compass"]) && typed.says(1, &["north"]))
        && typed.pieces.iter().any(Piece::is_number);
    turned.then(|| {
        Answer::say(
            "how the plan's north lies is `true north` and a bearing",
            "write it as `true north N`, the degrees with `°`, and `E` or `W`: the true bearing of the way that the file calls north",
        )
    })
}

/// `stone walls 45 cm`, `brick walls 12"`, `2x4 walls`: how thick the walls are.
fn solid_walls(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(0, &["walls", "wall"]).filter(|at| (1..=4).contains(at))?;
    if typed.piece(0)?.is_number() && typed.says(1, &["x"]) && at == 3 {
        return Some(Answer::line(
            format!("wall {}", typed.text(0, 3)),
            "how thick the walls are is `wall` and a length",
        ));
    }
    let solid = ["stone", "block", "concrete", "adobe", "log", "solid", "masonry", "cinder", "cmu"];
    let is_brick = typed.says(0, &["brick"]);
    if !is_brick && !typed.says(0, &solid) {
        return None;
    }
    let [(first, thick)] = &lengths(&typed.pieces, at + 1)[..] else { return None };
    let filler = |at: usize| {
        typed.says(at, &["are", "is", "thick", "about", "walls", "wall", "all", "around"])
            || typed.pieces[at].is_mark(",:=.")
    };
    let only = (at + 1..*first).chain(thick.end..typed.pieces.len()).all(filler);
    if !only || !thick.has_unit || thick.length.nm() > Length::FOOT.nm().saturating_mul(4) {
        return None;
    }
    let said = typed.text(0, at);
    let wall = format!("wall {}  # {said}", thick.text);
    let thin = thick.length.nm() < Length::INCH.nm().saturating_mul(8);
    Some(if is_brick && thin {
        Answer::Lines(
            vec![format!("veneer {}  # {said}", thick.text), wall],
            "brick on a frame is `veneer` and its thickness; a wall that is brick all through is `wall`"
                .to_owned(),
        )
    } else {
        Answer::line(wall, "how thick the walls are is `wall` and a length")
    })
}

/// `stucco outside`, `siding vinyl 1/2"`: what covers the walls.
fn material(typed: &Typed<'_>) -> Option<Answer> {
    // `no brick, vinyl siding`
    let without = typed.says(0, &["no"]) && typed.says(1, &["brick", "veneer", "stone", "masonry"]);
    if without && typed.pieces.len() > 2 && !typed.pieces.iter().any(Piece::is_number) {
        let more = typed.rest(2).trim_start_matches([',', ';', '-', ' ']);
        return Some(Answer::line(
            format!("veneer none  # {more}"),
            "without brick or stone the veneer is `none`",
        ));
    }
    // `brick all around, 4 1/2"`
    let around = [
        "brick",
        "stone",
        "all",
        "around",
        "everywhere",
        "round",
        "outside",
        "thick",
        "the",
        "is",
        "house",
        "on",
        "sides",
        "four",
        "veneer",
    ];
    if typed.says(0, &around[..2])
        && let [(first, thick)] = &lengths(&typed.pieces, 1)[..]
        && thick.is_inches()
        && thick.end == typed.pieces.len()
        && *first > 2
        && (0..*first).all(|at| typed.says(at, &around) || typed.pieces[at].is_mark(",:;=-–"))
    {
        return Some(Answer::line(
            format!(
                "veneer {}  # {}",
                thick.text,
                typed.text(0, *first).trim_end_matches([',', ' '])
            ),
            "brick or stone before the frame is `veneer` and its thickness",
        ));
    }
    let kinds = [
        "stucco",
        "vinyl",
        "siding",
        "clapboard",
        "hardie",
        "cedar",
        "shingle",
        "shingles",
        "aluminum",
        "fiber",
        "cement",
        "lap",
        "wood",
        "log",
        "metal",
        "board",
        "batten",
        "outside",
        "exterior",
        "all",
        "around",
        "over",
        "frame",
        "and",
        "on",
        "the",
        "sides",
        "hardiplank",
        "plaster",
        "painted",
    ];
    if !typed.says(0, &kinds[..11]) && !typed.says(0, &["hardiplank", "wood"]) {
        return None;
    }
    let found = lengths(&typed.pieces, 1);
    let is_length = |at: usize| found.iter().any(|(first, one)| (*first..one.end).contains(&at));
    let only = (0..typed.pieces.len())
        .all(|at| is_length(at) || typed.says(at, &kinds) || typed.pieces[at].is_mark(",.:()&"));
    if !only || typed.says(0, &["wood"]) && typed.pieces.len() < 2 {
        return None;
    }
    match &found[..] {
        [] => Some(Answer::line(
            format!("veneer none  # {}", remark(typed.line)),
            "without brick or stone the veneer is `none`",
        )),
        [(first, thick)] if thick.is_inches() => Some(Answer::line(
            format!("veneer {}  # {}", thick.text, typed.text(0, *first)),
            "what stands before the frame is `veneer` and its thickness",
        )),
        _ => None,
    }
}

/// `rate 2.14%`: the tax rate.
fn rate_alone(typed: &Typed<'_>) -> Option<Answer> {
    let number = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=$")));
    let at = usize::from(typed.says(0, &["tax"]));
    let number = number + at;
    let rate = typed.piece(number).filter(|piece| piece.is_number())?;
    let percent = typed.piece(number + 1).is_some_and(|mark| mark.is_mark("%"))
        || typed.says(number + 1, &["percent", "pct"]);
    let value: rust_decimal::Decimal = rate.text.parse().ok()?;
    let fits = typed.says(at, &["rate", "taxrate"]) && number + 2 == typed.pieces.len();
    (fits && percent && value < rust_decimal::Decimal::from(20)).then(|| {
        Answer::line(
            format!("tax rate {} per $100", rate.text),
            "a percentage is so many dollars per $100",
        )
    })
}

/// `Listing price $431,000`, `taxes $8,816`, `land value $113,000`: sums that have no place in the file.
fn sums(typed: &Typed<'_>) -> Option<Answer> {
    let begins = [
        "listing",
        "asking",
        "list",
        "price",
        "taxes",
        "tax",
        "land",
        "sold",
        "bought",
        "paid",
        "mortgage",
        "hoa",
        "rent",
        "insurance",
        "annual",
        "yearly",
        "purchase",
        "purchased",
        "sale",
        "zestimate",
        "estimate",
    ];
    let about = [
        "price",
        "taxes",
        "tax",
        "bill",
        "value",
        "paid",
        "cost",
        "per",
        "year",
        "sold",
        "bought",
        "purchased",
        "rent",
        "hoa",
        "mortgage",
        "estimate",
    ];
    let has_money = money_from(&typed.pieces, 0).is_some();
    let other = typed.find(
        0,
        &["rate", "exemption", "market", "assessed", "appraised", "comparable", "taxable"],
    );
    let says = typed.find(0, &about).is_some();
    let is_value = typed.says(0, &["tax"]) && typed.says(1, &["value", "year", "appraised"]);
    (typed.says(0, &begins)
        && has_money
        && says
        && !is_value
        && other.is_none()
        && !typed.line.contains('"')
        && super::measure::area_from(&typed.pieces, 0).is_none())
    .then(|| comment(typed, "a sides file has no place for this sum; a comment begins with `#`"))
}

/// `value $412,000 market`, `tax value 412k`: the word comes before the sum.
fn market_value(typed: &Typed<'_>) -> Option<Answer> {
    let (first, end, sum) = money_from(&typed.pieces, 0)?;
    if typed.says(0, &["value"]) && first == 1 && end + 1 == typed.pieces.len() {
        let word = match typed.lower(end).as_str() {
            "market" | "appraised" => "market",
            "assessed" | "taxable" => "assessed",
            _ => return None,
        };
        return Some(Answer::line(
            format!("value {word} {sum}"),
            "what the value is comes before the sum",
        ));
    }
    let is_tax = typed.says(0, &["tax", "taxable", "taxed"])
        && typed.says(1, &["value"])
        && end == typed.pieces.len();
    is_tax.then(|| {
        Answer::Lines(
            vec![format!("value assessed {sum}"), format!("value market {sum}")],
            "the value for the tax is `value assessed` or, if nothing is taken off, `value market`"
                .to_owned(),
        )
    })
}

/// `measured by me`, `measured Saturday`, `by owner`, `tape measure, 25 ft`: the day is missing.
fn without_day(typed: &Typed<'_>) -> Option<Answer> {
    let measured = typed.says(0, &["measured", "taped", "measurements"])
        && !typed.says(1, &["to", "inside", "outside", "from", "in", "at"]);
    let by = typed.says(0, &["by"]) && typed.pieces.len() <= 5;
    let tool = typed.says(0, &["tape", "laser", "steel"])
        && (typed.says(1, &["measure", "tape", "meter", "used"]) || typed.says(0, &["laser"]));
    let american = typed.pieces.iter().any(|piece| piece.is_mark("$"));
    let is_date =
        typed.pieces.iter().any(|piece| {
            piece.is_number() && piece.text.len() == 4 && piece.text.starts_with("20")
        }) && typed.pieces.iter().filter(|piece| piece.is_number()).count() == 3;
    if !(measured || by || tool)
        || is_date
        || typed.find(0, &["closing", "close"]).is_some()
        || date_from(&typed.pieces, 0).is_some()
        || american
        || super::dates::answer(typed).is_some()
        || typed.attempt.is_side
    {
        return None;
    }
    let digits = |piece: &Piece| piece.text.len() >= 5 || piece.text.contains('.');
    if typed.pieces.iter().any(|piece| piece.is_number() && digits(piece)) && measured {
        return None;
    }
    let who = typed.find(0, &["by"]).map(|at| typed.rest(at + 1));
    let who = who.map(|who| who.split([',', ';']).next().unwrap_or(who).trim());
    let who = who
        .filter(|who| !who.is_empty() && !who.contains(|c: char| c.is_ascii_digit() || c == '"'));
    let more = who.map_or_else(
        || {
            "`by` and who measured, `with` and the tape or the laser, each between two `\"`"
                .to_owned()
        },
        |who| format!("`by \"{who}\"`"),
    );
    Some(Answer::say(
        "the line has no whole day in it",
        format!(
            "write `measured`, the day as year-month-day with four, two and two digits, and then, if you like, {more}"
        ),
    ))
}

/// `in feet`, `inches`, `units ft-in`: the unit of bare numbers.
fn units(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        ("feet", &["feet", "foot", "ft", "pies", "fuß"][..]),
        ("inches", &["inches", "inch", "zoll", "pulgadas"]),
        ("meters", &["meters", "metres", "meter", "metre", "m", "metros", "metern", "metric"]),
        ("centimeters", &["centimeters", "centimetres", "cm"]),
        ("millimeters", &["millimeters", "millimetres", "mm"]),
    ];
    let filler = |at: usize| {
        typed.says(
            at,
            &[
                "in",
                "all",
                "units",
                "unit",
                "alles",
                "todo",
                "tout",
                "en",
                "maße",
                "medidas",
                "are",
                "is",
                "the",
                "measurements",
                "numbers",
                "lengths",
                "dimensions",
                "everything",
                "and",
                "dims",
                "measures",
                "sizes",
            ],
        ) || typed.pieces[at].is_mark(":=,./-–&")
    };
    let said: Vec<usize> = (0..typed.pieces.len()).filter(|&at| !filler(at)).collect();
    let unit_of = |at: usize| {
        let hyphen = typed.lower(at);
        let feet_inches = ["ft-in", "feet-inches", "ft-inches", "feet-and-inches"];
        if feet_inches.contains(&hyphen.as_str()) {
            return Some("feet");
        }
        words.iter().find(|(_, words)| typed.says(at, words)).map(|(unit, _)| *unit)
    };
    let found: Option<Vec<&str>> = said.iter().map(|&at| unit_of(at)).collect();
    let found = found.filter(|found| !found.is_empty() && typed.pieces.len() <= 7)?;
    let unit = match found[..] {
        [unit] => unit,
        ["feet", "inches" | "feet"] | ["inches", "feet"] => "feet",
        _ => return None,
    };
    let line = format!("units {unit}");
    let known = typed.pieces.len() == 2
        && typed.says(0, &["units"])
        && unit_of(1) == Some(unit)
        && !typed.lower(1).contains('-');
    (!known && line != typed.line).then(|| {
        Answer::line(
            line,
            "the unit of numbers without a mark is `units` and one word; feet and inches with their marks are always read",
        )
    })
}

/// `case no. 2026-114`, `acct # R-20551`: the number of a case or an account.
fn number_of_a_case(typed: &Typed<'_>) -> Option<Answer> {
    let word = match typed.lower(0).as_str() {
        "case" | "docket" | "protest" => "case",
        "account" | "acct" | "parcel" | "apn" | "pin" => "account",
        _ => return None,
    };
    let mut at = 1;
    while typed.says(at, &["no", "number", "nr", "num", "id"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(".:="))
    {
        at += 1;
    }
    // `acct # R-20551`: what was to be read is in the comment.
    let hidden = typed
        .attempt
        .beside
        .comment
        .as_deref()
        .map(|comment| comment.trim_start_matches('#').trim());
    if at == typed.pieces.len()
        && let Some(number) = hidden.filter(|number| !number.is_empty() && !number.contains('"'))
    {
        return Some(Answer::line(
            format!("{word} \"{number}\""),
            "after a `#` is a comment: the number stands without it, with a `\"` on each side",
        ));
    }
    let rest = typed.rest(at);
    (word == "case" && at > 1 && !rest.is_empty() && !typed.line.contains('"'))
        .then(|| Answer::line(format!("case \"{rest}\""), "a name needs a `\"` on each side"))
}

/// `12 Larkspur Lane`: an address without its word.
fn address_alone(typed: &Typed<'_>) -> Option<Answer> {
    let ends = [
        "street",
        "st",
        "avenue",
        "ave",
        "road",
        "rd",
        "drive",
        "dr",
        "lane",
        "ln",
        "court",
        "ct",
        "boulevard",
        "blvd",
        "way",
        "place",
        "pl",
        "terrace",
        "trail",
        "circle",
        "cir",
        "highway",
        "hwy",
        "parkway",
        "square",
        "loop",
        "row",
    ];
    let number =
        typed.piece(0).filter(|number| number.is_number() && !number.text.contains(['.', ',']))?;
    let at = (2..typed.pieces.len().min(6)).find(|&at| typed.says(at, &ends))?;
    let words = typed.pieces[1..=at].iter().all(|piece| {
        piece.sort == Sort::Word
            && (piece.text.starts_with(char::is_uppercase) || piece.is_word(&ends))
    });
    let measures = super::measures(typed.line) || typed.line.contains('"');
    (words && number.text.len() <= 5 && !measures).then(|| {
        Answer::line(
            format!("address \"{}\"", typed.line),
            "an address is `address`, with a `\"` on each side",
        )
    })
}

/// `record ~1,900 sq ft`, `listing ca. 145 qm`: a figure is as it was published.
fn roughly(typed: &Typed<'_>) -> Option<Answer> {
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
fn title_of_a_figure(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["record", "listing", "plan"]) || typed.line.contains('"') {
        return None;
    }
    let number = typed.piece(1).filter(|number| number.is_number() && number.text.len() >= 3)?;
    let head = typed.lower(0);
    let found = super::measure::area_at(&typed.pieces, 1);
    let (end, area) = match &found {
        Some((end, area)) => (*end, area.clone()),
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

/// A line that nothing else could read and whose first word begins no line.
pub(super) fn left_over(typed: &Typed<'_>) -> Option<Answer> {
    if typed
        .pieces
        .iter()
        .all(|piece| piece.is_number() || piece.sort == Sort::Mark && !piece.is_mark("\""))
    {
        return Some(Answer::say(
            "a number alone says nothing",
            "write before it what it is: the way that a wall runs, or `record`, `listing`, `tax year` …; or take the line out",
        ));
    }
    let first = typed.piece(0).filter(|first| first.sort == Sort::Word)?;
    // What the parser says of words that it knows is better.
    let known = ["bow", "wing", "curve", "barn", "stairs", "shed", "sunroom", "angled", "corner"];
    if typed.attempt.knows_first
        || typed.line.contains('"') && is_text(typed.piece(1))
        || typed.attempt.word == Some(crate::diagnostic::Word::OutOfPlace)
        || first.is_word(&known[2..])
        || typed.pieces.len() > 14
    {
        return None;
    }
    let found = lengths(&typed.pieces, 1);
    let wall = found.iter().find(|(_, measure)| measure.has_unit).map(|(_, measure)| measure);
    let wall = wall.map_or_else(
        || "a wall begins with its direction".to_owned(),
        |measure| format!("if `{}` is the length of a wall, write before it the way that the wall runs, `north`, `east`, `south` or `west`", measure.text),
    );
    Some(Answer::say(
        format!("`{}` begins no line of a sides file", typed.text(0, 1)),
        format!(
            "{wall}; a space begins with what it is (`living`, `garage`, `porch` …), a published area with `record` or `listing`; if this is a remark, put a `#` before it"
        ),
    ))
}
