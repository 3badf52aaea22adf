//! Lines of a record card, a notice or a legal description as they are copied above the walls: each goes where the sides
//! file has a place for it, or into a comment.

use super::super::pieces::Piece;
use super::measure::{area_at, date_at, length_at};
use super::{Answer, Rule, Typed, first_of, is_text, plainly, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        quoted_fact,
        not_there,
        counting_alone,
        value_and_last_year,
        lot_of_an_addition,
        area_of_a_floor,
        location,
        brick_and_stone,
    ];
    first_of(rules, typed)
}

/// `roof "hip"`, `basement "none"`, `year "1987"`, `date "2026-04-11"`: what the house is like, between quotation marks.
fn quoted_fact(typed: &Typed<'_>) -> Option<Answer> {
    const FACTS: [&str; 34] = [
        "heat",
        "heating",
        "cooling",
        "foundation",
        "construction",
        "quality",
        "inspector",
        "sketch",
        "style",
        "occupancy",
        "use",
        "exterior",
        "siding",
        "bedrooms",
        "baths",
        "bathrooms",
        "beds",
        "rooms",
        "stories",
        "design",
        "shape",
        "material",
        "materials",
        "fireplace",
        "fireplaces",
        "age",
        "view",
        "utilities",
        "flooring",
        "floors",
        "windows",
        "structure",
        "type",
        "class",
    ];
    const PARTS: [&str; 9] =
        ["basement", "attic", "cellar", "garage", "porch", "deck", "carport", "shed", "pool"];
    const STYLES: [&str; 10] = [
        "ranch",
        "colonial",
        "cape",
        "bungalow",
        "contemporary",
        "cottage",
        "single family",
        "split level",
        "residential",
        "traditional",
    ];
    let at = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=")));
    if !is_text(typed.piece(at)) || at + 1 != typed.pieces.len() {
        return None;
    }
    let inner = typed.name(at, at + 1);
    let lower = inner.to_lowercase();
    let comment = |cause: String| Some(Answer::line(format!("# {}", typed.line), cause));
    let says_nothing = ["none", "no", "n/a", "na", "nil", "0", "not applicable"];
    if typed.says(0, &PARTS) && says_nothing.contains(&lower.as_str()) {
        return comment(
            "what the house does not have needs no line; a comment begins with `#`".to_owned(),
        );
    }
    if typed.says(0, &["deed", "instrument", "document"]) {
        let says_where = ["book", "page", "bk", "pg", "vol", "volume", "doc", "instr", "no."];
        let is_filed = lower.split([' ', ',', '.']).any(|word| says_where.contains(&word));
        return is_filed
            .then(|| {
                comment(
                    "where a deed is filed has no line of its own; a comment begins with `#`"
                        .to_owned(),
                )
            })
            .flatten();
    }
    if typed.says(0, &["date", "day"]) {
        let pieces = super::cut(&inner);
        let (end, day) = date_at(&pieces, 0)?;
        return (end == pieces.len()).then(|| {
            Answer::line(
                format!("measured {day}"),
                "the day of the tape is `measured`, without quotation marks",
            )
        });
    }
    let is_year = lower.len() == 4 && lower.bytes().all(|digit| digit.is_ascii_digit());
    if typed.says(0, &["year", "yr"]) && is_year {
        return match lower.as_str() >= "2020" {
            true => Some(Answer::Lines(
                vec![format!("tax year {lower}"), format!("# year built {lower}")],
                "is it the year of the tax, as in the first, or the year in which the house was built, which has no line, as in the second".to_owned(),
            )),
            false => comment("a sides file has no place for the year of a house; a comment begins with `#`".to_owned()),
        };
    }
    if typed.says(0, &["street", "road", "location", "situs"]) {
        let is_address = inner.starts_with(|c: char| c.is_ascii_digit()) && inner.contains(' ');
        return match is_address {
            true => Some(Answer::line(
                format!("address {}", quoted(&inner)),
                "where the house is, is `address`",
            )),
            false => comment("a sides file has no place for the name of a street alone; a comment begins with `#`".to_owned()),
        };
    }
    let is_style = typed.says(0, &["house", "home", "dwelling", "building"])
        && STYLES.contains(&lower.as_str());
    if typed.says(0, &["acres", "acreage"]) {
        let is_number = inner.chars().all(|c| c.is_ascii_digit() || c == '.')
            && inner.contains(|c: char| c.is_ascii_digit());
        return is_number.then(|| {
            Answer::say(
                "the area of the land stands on the line of the lot",
                format!("write `lot \"Lot\" recorded {inner} acres` with its calls or sides below it; without those put this line after a `#`"),
            )
        });
    }
    let is_sized =
        super::measure::lengths(&typed.pieces, 1).iter().filter(|(_, one)| one.has_unit).count()
            > 1
            || super::size_in(typed.line).is_some();
    if (typed.says(0, &FACTS) || is_style) && !is_sized {
        return comment(format!(
            "a sides file has no place for `{}`; a comment begins with `#`",
            typed.text(0, 1)
        ));
    }
    None
}

/// `basement none`, `no basement`, `no garage`, `year 1987`: what the house does not have, and how old it is.
fn not_there(typed: &Typed<'_>) -> Option<Answer> {
    const PARTS: [&str; 9] =
        ["basement", "attic", "cellar", "garage", "porch", "deck", "carport", "pool", "patio"];
    let [one, two] = &typed.pieces[..] else { return None };
    let is_none = one.is_word(&PARTS) && two.is_word(&["none", "no", "n/a"])
        || one.is_word(&["no"]) && two.is_word(&PARTS);
    let comment = format!("# {}", typed.line);
    if is_none {
        return Some(Answer::line(
            comment,
            "what the house does not have needs no line; if the record lists it all the same, it is `missing`, with its area on the record",
        ));
    }
    let is_old = two.is_year() && two.text.as_str() < "2015";
    (one.is_word(&["year", "yr", "built"]) && is_old).then(|| {
        Answer::line(
            comment,
            "a sides file has no place for the year of a house; a comment begins with `#`",
        )
    })
}

/// `counting "Garage, Front porch"`, `counts garage and porch` on a line of its own: what a figure counts stands on its
/// line.
fn counting_alone(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["it", "total", "record", "county", "card", "which"]));
    if !typed.says(first, &["counting", "counts"]) || typed.line.contains('#') {
        return None;
    }
    let said = plainly(&typed.line.replace(['"', '“', '”'], " "));
    let said = said.splitn(first + 2, ' ').nth(first + 1)?.to_owned();
    if said.contains(|c: char| c.is_ascii_digit()) {
        return None;
    }
    let said = said.replace(" and ", ", ").replace(" & ", ", ");
    let names: Vec<String> = said
        .split(',')
        .map(|name| {
            let name = name.trim();
            quoted(&super::levels::capitalized(name.strip_prefix("the ").unwrap_or(name)))
        })
        .filter(|name| name.len() > 2)
        .collect();
    let words = said.split([',', ' ']).filter(|word| !word.is_empty());
    // `counting from the corner`
    let is_plain = words.clone().count() <= 8
        && !words.clone().any(|word| {
            ["from", "only", "not", "no", "to", "sq", "ft", "rooms", "levels", "stories"]
                .contains(&word.to_lowercase().as_str())
        });
    let here = match typed.attempt.beside.has_record {
        true => "take this line out, and at the end of the line that begins with `record` write",
        false => "write `record`, the area and its unit, and after them",
    };
    (!names.is_empty() && is_plain).then(|| {
        Answer::say(
            "what a figure counts besides living area stands at the end of its own line",
            format!(
                "{here} `counting {}`, each by the name that its space has in this file",
                names.join(", ")
            ),
        )
    })
}

/// A sum of money that may be in thousands, as `412K`, and the index after it.
pub(super) fn sum_at(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    let dollar = usize::from(typed.piece(at).is_some_and(|mark| mark.is_mark("$")));
    let number = typed.piece(at + dollar).filter(|number| number.is_number());
    let in_thousands = typed.piece(at + dollar + 1).filter(|k| k.is_word(&["k"]) && k.touches);
    if let (Some(number), Some(_)) = (number, in_thousands) {
        let (whole, part) = number.text.split_once('.').unwrap_or((&number.text, ""));
        let is_small = whole.len() <= 4 && part.len() <= 3 && !whole.contains(',');
        let sum: i64 = format!("{whole}{part:0<3}").parse().ok().filter(|_| is_small)?;
        return Some((format!("${}", crate::units::decimal::thousands(sum)), at + dollar + 2));
    }
    super::worths::sum_at(typed, at)
}

/// `noticed value 412K, last year 371K`, `market value 412,000, last year 371,000`: this year's and last year's.
fn value_and_last_year(typed: &Typed<'_>) -> Option<Answer> {
    const NOW: [&str; 16] = [
        "noticed",
        "notice",
        "value",
        "market",
        "appraised",
        "assessed",
        "this",
        "year",
        "new",
        "county",
        "our",
        "the",
        "is",
        "at",
        "of",
        "valued",
    ];
    const BEFORE: [&str; 14] = [
        "last", "year", "year's", "was", "prior", "previous", "assessed", "value", "the", "and",
        "it", "in", "at", "from",
    ];
    let filler = |from: usize, words: &[&str]| {
        (from..typed.pieces.len())
            .take_while(|&at| typed.says(at, words) || typed.pieces[at].is_mark(",;:=-–/"))
            .count()
    };
    let first = filler(0, &NOW);
    let (now, end) = sum_at(typed, first).filter(|_| first > 0)?;
    let before = end + filler(end, &BEFORE);
    let says_before = (end..before).any(|at| typed.says(at, &["last", "prior", "previous"]));
    let (last, stop) = sum_at(typed, before).filter(|_| says_before)?;
    let known = typed.says(
        0,
        &[
            "noticed",
            "notice",
            "value",
            "market",
            "appraised",
            "assessed",
            "this",
            "valued",
            "county",
            "our",
        ],
    );
    if stop != typed.pieces.len() || !known {
        return None;
    }
    let line = |kind: &str| format!("value {kind} {now}\nlast year assessed {last}");
    let says = |word: &str| (0..first).any(|at| typed.says(at, &[word]));
    let cause = "this year's value is `value market`, of the whole property, or `value assessed`, what the tax is paid on; what the tax was paid on last year is `last year assessed`";
    Some(Answer::Lines(
        match (says("market") || says("appraised"), says("assessed")) {
            (true, false) => vec![line("market")],
            (false, true) => vec![line("assessed")],
            _ => vec![line("market"), line("assessed")],
        },
        cause.to_owned(),
    ))
}

/// `Lot 12 Block 3 of Heron Addition`, `Lot 12 of Heron Addition, 0.275 acres`: a lot by its plat.
fn lot_of_an_addition(typed: &Typed<'_>) -> Option<Answer> {
    const PLAT: [&str; 16] = [
        "block",
        "blk",
        "addition",
        "addn",
        "subdivision",
        "subd",
        "sub",
        "phase",
        "section",
        "unit",
        "tract",
        "plat",
        "estates",
        "replat",
        "survey",
        "add",
    ];
    let is_number = |piece: &Piece| {
        piece.is_number() && piece.text.len() <= 3 && !piece.text.contains(['.', ','])
    };
    // `Heron Addition Lot 12`
    let first = match typed.says(0, &["lot", "lots"]) {
        true => 0,
        false => typed.find(1, &["lot"]).filter(|lot| {
            typed.attempt.space.is_none() && (1..*lot).any(|at| typed.says(at, &PLAT))
        })?,
    };
    let number = first + 1;
    let number = number
        + usize::from(
            typed.says(number, &["no", "number"])
                || typed.piece(number).is_some_and(|mark| mark.is_mark("#")),
        );

    if !typed.piece(number).is_some_and(is_number) || typed.line.contains('"') || typed.is_in_lot()
    {
        return None;
    }
    let of = typed
        .find(number + 1, &PLAT)
        .or((first > 0).then_some(number + 1))
        .or_else(|| typed.find(number + 1, &["of"]).filter(|at| *at == number + 1))?;
    let area = (of..typed.pieces.len())
        .find_map(|at| area_at(&typed.pieces, at).map(|(end, area)| (at, end, area)));
    let stop = area.as_ref().map_or(typed.pieces.len(), |(first, ..)| *first);
    let has_length = (number + 1..stop)
        .any(|at| length_at(&typed.pieces, at).is_some_and(|length| length.has_unit));
    let after =
        area.as_ref().map_or("", |(_, end, _)| typed.rest(*end)).trim_matches([',', '.', ')', ' ']);
    if has_length {
        return None;
    }
    let name = plainly(&typed.text(first, stop).replace(" of ", ", "))
        .trim_matches([',', ' ', '(', '-', '–', ';'])
        .to_owned();
    let follows = super::lots::calls_follow(typed) && typed.attempt.house.is_some();
    if !follows || !after.is_empty() {
        return Some(Answer::line(
            format!("# {}", typed.line),
            "the number of a lot in a legal description has no line of its own; a comment begins with `#`. Land that is drawn is `lot` and its name, with its calls or sides below it",
        ));
    }
    let recorded = area.map_or_else(String::new, |(_, _, area)| format!(" recorded {area}"));
    Some(Answer::line(
        format!("lot {}{recorded}", quoted(&name)),
        "the land is a `lot` with its name and its area, and its calls stand below it",
    ))
}

/// `2nd floor 1,172 sf`, `first floor 1,172 sq ft, second floor 800 sq ft`: the record's area of a floor.
fn area_of_a_floor(typed: &Typed<'_>) -> Option<Answer> {
    const WHICH: [&str; 14] = [
        "first", "second", "third", "main", "upper", "lower", "ground", "top", "1st", "2nd", "3rd",
        "st", "nd", "rd",
    ];
    const SAYS: [&str; 10] = [
        "county", "record", "card", "assessor", "the", "has", "says", "shows", "lists", "county's",
    ];
    let mut at = 0;
    while typed.says(at, &SAYS) {
        at += 1;
    }
    let is_said = at > 0;
    let begin = at;
    let mut floors: Vec<(String, String)> = Vec::new();
    while at < typed.pieces.len() {
        let first = at;
        let is_whole = typed.says(at, &["upstairs", "downstairs"]);
        while typed.says(at, &WHICH)
            || at == first
                && typed.pieces.get(at).is_some_and(|one| one.is_number() && one.text.len() == 1)
        {
            at += 1;
        }
        let named = at;
        let is_floor = typed.says(at, &["floor", "story", "storey", "level", "flr", "fl"]);
        if !is_whole && (named == first || !is_floor) {
            return None;
        }
        at += 1;
        let end = at;
        while typed.says(
            at,
            &["area", "is", "has", "living", "finished", "heated", "of", "at", "as", "on"],
        ) || typed.piece(at).is_some_and(|mark| mark.is_mark(":=-–"))
        {
            at += 1;
        }
        let bare = || {
            let number = typed.piece(at).filter(|number| number.is_number() && is_said)?;
            let is_whole = number.text.len() >= 3 && !number.text.contains('.');
            let unit = if typed.attempt.is_metric { "sq m" } else { "sq ft" };
            is_whole.then(|| (at + 1, format!("{} {unit}", number.text)))
        };
        let (stop, area) = area_at(&typed.pieces, at).or_else(bare)?;
        floors.push((typed.text(first, end).to_lowercase(), area));
        at = stop;
        while typed.says(at, &["and"]) || typed.piece(at).is_some_and(|mark| mark.is_mark(",;/&+."))
        {
            at += 1;
        }
    }
    // A number before `floor` says which, as `2nd` with its ending taken off.
    let told = |floor: &str| match floor.split(' ').next() {
        Some("1") => floor.replacen('1', "first", 1),
        Some("2") => floor.replacen('2', "second", 1),
        Some("3") => floor.replacen('3', "third", 1),
        _ => floor.to_owned(),
    };
    let (floor, area) = floors.first()?;
    let is_heading = begin == 0
        && floors.len() == 1
        && (super::super::begins_as_wall(&typed.attempt.beside.after)
            || super::kind_word(typed.attempt.beside.after.split(' ').next()?).is_some());
    let lines: Vec<String> = floors
        .iter()
        .map(|(floor, area)| {
            format!(
                "write `recorded {area}` at the end of the line of the living space on the {}",
                told(floor)
            )
        })
        .collect();
    // All floors of the house, and no other figure of the record: its figure is their sum.
    let is_whole = floors.len() > 1
        && typed.says(0, &["record", "county", "assessor", "cad", "appraisal", "tax"])
        && typed.attempt.space.is_none()
        && !typed.attempt.beside.has_record;
    let sum = floors.iter().map(|(_, area)| whole_feet(area)).sum::<Option<u32>>();
    if let Some(sum) = sum.filter(|_| is_whole) {
        return Some(Answer::line(
            format!(
                "record {} sq ft  # {}",
                crate::units::decimal::thousands(i64::from(sum)),
                typed.rest(1).trim_matches([':', ' '])
            ),
            "a figure is one number: the parts added up",
        ));
    }
    let here = match is_heading && typed.attempt.house.is_some() {
        // The line of its space stands below already.
        true if typed.attempt.beside.after.starts_with("living \"")
            && !typed.attempt.beside.after.contains("recorded") =>
        {
            format!(
                "if that floor begins here, write `level {}` on this line, and the line below it as `{} recorded {area}`; if it stands elsewhere in the file, take this line out and {}",
                quoted(&super::levels::capitalized(&told(floor))),
                typed.attempt.beside.after.split('#').next().unwrap_or_default().trim_end(),
                lines.join("; ")
            )
        }
        true => format!(
            "if that floor begins here, write `level {}` on this line, below it the line of its space, as `living \"Rooms\" recorded {area}`, and below that its walls; if it stands elsewhere in the file, take this line out and {}",
            quoted(&super::levels::capitalized(&told(floor))),
            lines.join("; ")
        ),
        false => format!("take this line out, and {}", lines.join("; ")),
    };
    Some(Answer::say(
        "the record's area of a floor stands on the line of the living space that is on it",
        here,
    ))
}

/// An area in whole square feet.
fn whole_feet(area: &str) -> Option<u32> {
    area.strip_suffix(" sq ft")?.replace(',', "").parse().ok()
}

/// `Property location 14 Heron Ln (R-104417)`: where the house is, and its number on the record.
fn location(typed: &Typed<'_>) -> Option<Answer> {
    const WORDS: [&str; 5] = ["location", "address", "addr", "site", "situs"];
    let begins = typed.says(0, &["property"]) && typed.says(1, &WORDS);
    let mut first = 1 + usize::from(typed.says(1, &WORDS));
    while typed.says(first, &["is", "at"])
        || typed.piece(first).is_some_and(|mark| mark.is_mark(":=-–."))
    {
        first += 1;
    }
    let is_address = typed.piece(first).is_some_and(Piece::is_number)
        && typed.piece(first + 1).is_some_and(|word| word.sort == super::Sort::Word);
    if !begins || !is_address || typed.line.contains(['"', '#']) {
        return None;
    }
    let (address, inside) = match typed.find_mark(first, "(") {
        Some(open) => {
            let said = typed.rest(open + 1).trim_end().strip_suffix(')')?;
            (typed.text(first, open), Some(said.trim().to_owned()))
        }
        None => (typed.rest(first), None),
    };
    let street = format!("property {}", quoted(address));
    let cause = "the house is `property`, and its number on the record `account`, each on a line of its own";
    Some(match inside {
        None => Answer::line(
            street,
            "the house is `property`, and where it is, with a `\"` on each side",
        ),
        Some(said) => {
            let own = said.to_lowercase();
            let number = ["parcel", "account", "acct", "apn", "pin", "id", "no", "number", "#"]
                .iter()
                .find_map(|word| {
                    let begins = own.starts_with(word);
                    begins.then(|| said.get(word.len()..).unwrap_or_default())
                })
                .unwrap_or(&said)
                .trim_matches([' ', ':', '#', '.']);
            let is_account = !number.contains(' ')
                && number.len() >= 4
                && number.chars().filter(char::is_ascii_digit).count() >= 3;
            match is_account {
                true => Answer::line(format!("{street}\naccount {}", quoted(number)), cause),
                false => Answer::line(format!("{street}  # {said}"), cause),
            }
        }
    })
}

/// `veneer 4 5/8" brick, stone on front 6"`: another thickness on one side.
fn brick_and_stone(typed: &Typed<'_>) -> Option<Answer> {
    const FACES: [&str; 6] = ["brick", "stone", "stucco", "masonry", "rock", "block"];
    let thick =
        length_at(&typed.pieces, 1).filter(|thick| typed.says(0, &["veneer"]) && thick.has_unit)?;
    let is_other = |at: usize| typed.says(at, &FACES);
    let second = (thick.end + 1..typed.pieces.len()).find(|&at| is_other(at))?;
    let on = ["front", "back", "rear", "left", "right", "north", "east", "south", "west", "street"];
    let side = typed.find(second, &on)?;
    let (first, two) = super::measure::lengths(&typed.pieces, thick.end).into_iter().next()?;
    let filler = [
        "on", "the", "side", "wall", "walls", "is", "are", "in", "at", "of", "and", "only", "thick",
    ];
    let only = (thick.end..typed.pieces.len()).all(|at| {
        is_other(at)
            || at == side
            || (first..two.end).contains(&at)
            || typed.says(at, &filler)
            || typed.pieces[at].is_mark(",;()-–:")
    });
    (only && two.is_inches()).then(|| {
        Answer::say(
            "a veneer above the first level is that of all walls; a wall with another one says so on its own line",
            format!(
                "write `veneer {}` here, and `veneer {}` at the end of the line of each wall on the {} side",
                thick.text,
                two.text,
                typed.lower(side)
            ),
        )
    })
}
