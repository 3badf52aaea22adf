//! Lines at the head of a file about what it has no word for, or by another word: the county, money, who measured.

use super::super::compass::way_word;
use super::super::pieces::{Piece, Sort};
use super::measure::{Measure, date_from, lengths, money_from};
use super::{
    About, Answer, Rule, Typed, figure_words, first_of, heads, is_text, materials, money, remark,
};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        measured_elsewhere,
        figure_words::part_of_the_record,
        figure_words::quoted_area,
        figure_words::unit_first,
        materials::faces_of_all,
        other_words,
        state_alone,
        county,
        street_side,
        north_is,
        materials::solid_walls,
        materials::material,
        money::rate_alone,
        money::sums,
        money::market_value,
        without_day,
        units,
        number_of_a_case,
        address_alone,
        figure_words::roughly,
        figure_words::title_of_a_figure,
    ];
    first_of(rules, typed)
}

pub(super) fn comment(typed: &Typed<'_>, cause: impl Into<String>) -> Answer {
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

/// `ceiling 8'`, `legal: Lot 4 Block 2`, `tolerance 1%`, `exempt 140000`, `lot 0.35`: one word for another.
fn other_words(typed: &Typed<'_>) -> Option<Answer> {
    if typed.says(
        0,
        &[
            "ceiling",
            "ceilings",
            "headroom",
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
            "zoning",
            "condition",
            "weather",
            "surveyor",
            "town",
            "township",
            "neighborhood",
        ],
    ) && (!typed.line.contains('"')
        || is_text(typed.piece(1))
            && typed.pieces.len() == 2
            && !typed.says(0, &["eave", "eaves", "overhang"]))
        && super::measure::area_from(&typed.pieces, 0).is_none()
        && !typed.says(1, &["outline"])
    {
        // `Deed:` above its calls begins the lot.
        let is_heading = (1..typed.pieces.len()).all(|at| {
            typed.pieces[at].is_mark(":.,;-–=") || typed.says(at, &["description", "calls", "says"])
        });
        let begins = typed.says(0, &["deed", "legal"]) && is_heading && !typed.is_in_lot();
        if begins && typed.attempt.house.is_some() && super::lots::calls_follow(typed) {
            return Some(Answer::line(
                format!("lot \"Lot\"  # {}", remark(typed.line)),
                "the calls of a deed are those of a `lot`, which has a line of its own with its name",
            ));
        }
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
    let year = (2..typed.pieces.len()).find(|&at| typed.pieces[at].is_year());
    if let Some((year, (_, end, sum))) =
        year.zip(money_from(&typed.pieces, 2)).filter(|_| tax_value)
        && end <= typed.pieces.len()
    {
        return Some(Answer::Lines(
            vec![
                format!("last year assessed {sum}"),
                format!("value assessed {sum} year {}", typed.text(year, year + 1)),
            ],
            "what is taxed is `assessed`: of the year before the one that this is about, or of that year itself".to_owned(),
        ));
    }
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
    while typed.says(first, &["state", "of", "in"]) {
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
    // `county "Marlowe County"`
    let text = typed.pieces.iter().filter(|piece| piece.sort == Sort::Text).count();
    let is_quoted = typed.says(0, &["county"]) && text == 1 && typed.pieces.len() <= 3;
    if is_quoted && typed.pieces.last().is_some_and(|last| last.sort == Sort::Text) {
        let name = typed.pieces.last().map(|last| last.text.trim_matches('"').to_owned())?;
        return Some(comment(
            typed,
            format!(
                "a sides file has no line for the county: it stands in the address, as in `property \"9 Alder Lane, {name}\"`, or in a comment"
            ),
        ));
    }
    let fits = (2..=4).contains(&typed.pieces.len()) && typed.pieces.iter().all(plain);
    let fits = fits && !typed.says(1, &["sketch", "record"]);
    // `Address: Calder County`: all that is known of the address.
    if named && fits && typed.says(0, &["address", "location", "situs"]) {
        let said = typed.rest(1).trim_start_matches([':', '=', '.', ',', ' ']);
        return Some(Answer::line(
            format!("address {}", super::quoted(said)),
            "an address is `address`, with a `\"` on each side",
        ));
    }
    if let Some(answer) = in_the_property_above(typed).filter(|_| named && fits) {
        return Some(answer);
    }
    let own = typed.pieces.iter().filter(|piece| {
        piece.sort == Sort::Word && !piece.is_word(&["county", "address", "location", "situs"])
    });
    let name = own.map(|piece| piece.text.as_str()).collect::<Vec<_>>().join(" ");
    let is_below = typed.attempt.space.is_none() && !typed.attempt.beside.before.is_empty();
    if named && fits && is_below && !typed.attempt.beside.before.to_lowercase().contains("county") {
        return Some(Answer::say(
            "a sides file has no line for the county: it stands in the name of the property",
            format!(
                "add it to the line that begins with `property`, as `property \"9 Alder Lane, {name} County\"`, and take this line out; if it stands there already, put a `#` before this line"
            ),
        ));
    }
    (named && fits).then(|| {
        comment(
            typed,
            format!(
                "a sides file has no line for the county: it stands in the address, as in `property \"9 Alder Lane, {name} County\"`, or in a comment; the state whose rules apply is `place` and its name"
            ),
        )
    })
}

/// The county below the line of the property, in whose name it stands.
fn in_the_property_above(typed: &Typed<'_>) -> Option<Answer> {
    let before = typed.attempt.beside.before.split('#').next()?.trim();
    let (word, name) = before.split_once(' ')?;
    let name = name.trim().strip_prefix('"')?.strip_suffix('"')?;
    let is_one = ["property", "address"].contains(&word) && !name.contains('"');
    let county = match typed.says(0, &["county"]) {
        true => format!("{} County", typed.rest(1).trim_start_matches([':', '=', '.', ' '])),
        false => typed.line.trim().trim_end_matches([',', '.']).to_owned(),
    };
    (is_one && !name.to_lowercase().contains("county")).then(|| {
        Answer::say(
            "a sides file has no line for the county: it stands in the name of the property",
            format!(
                "write the line above as `{word} \"{name}, {county}\"`, and take this line out"
            ),
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

/// Whether `in March 2026`, `in spring` follows the first word.
fn in_a_month(typed: &Typed<'_>) -> bool {
    const SEASONS: [&str; 6] = ["spring", "summer", "fall", "autumn", "winter", "early"];
    let is_month = super::month_named(&typed.lower(2)).is_some();
    typed.says(1, &["in"])
        && (is_month || typed.says(2, &SEASONS) || typed.piece(2).is_some_and(Piece::is_year))
}

/// `measured by me`, `measured Saturday`, `by owner`, `tape measure, 25 ft`: the day is missing.
fn without_day(typed: &Typed<'_>) -> Option<Answer> {
    let measured = typed.says(0, &["measured", "taped", "measurements"])
        && (!typed.says(1, &["to", "inside", "outside", "from", "in", "at"]) || in_a_month(typed));
    let by = typed.says(0, &["by"]) && typed.pieces.len() <= 5;
    let tool = typed.says(0, &["tape", "laser", "steel", "instrument"])
        && (typed.says(1, &["measure", "tape", "meter", "used"])
            || typed.says(0, &["laser", "instrument"]));
    // `measured "2026-11-23" by "the owner"`
    let quoted_day = typed.piece(1).filter(|text| measured && text.sort == Sort::Text);
    if let Some(day) = quoted_day.map(|text| text.text.trim_matches(['"', '“', '”'])) {
        let (first, end, date) = date_from(&super::cut(day), 0)?;
        return (first == 0 && end == super::cut(day).len()).then(|| {
            Answer::line(
                format!("{} {date} {}", typed.text(0, 1), typed.rest(2)).trim_end(),
                "a day stands without quotation marks",
            )
        });
    }
    let american = typed.pieces.iter().any(|piece| piece.is_mark("$"));
    let is_date = typed.pieces.iter().any(|piece| piece.is_year())
        && typed.pieces.iter().filter(|piece| piece.is_number()).count() == 3;
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
            "write `measured`, the day as year-month-day with four, two and two digits, and then, if you like, {more}; if nobody knows the day, put a `#` before this line"
        ),
    )
    .about(About::Day))
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
    // `ARB case #1184`, `hearing docket no. 2026-118`: whose number it is.
    let whose = ["arb", "board", "hearing", "protest", "appeal", "the", "my", "our", "review"];
    let is_of_a_case =
        |at: usize| typed.says(at, &["case", "docket", "protest", "appeal", "hearing"]);
    let mut of = 0;
    while typed.says(of, &whose) && (is_of_a_case(of + 1) || typed.says(of + 1, &whose)) {
        of += 1;
    }
    let word = match typed.lower(of).as_str() {
        "case" | "docket" | "protest" => "case",
        "hearing" | "appeal" if typed.says(of + 1, &["no", "number", "nr", "num", "id"]) => "case",
        "account" | "acct" | "parcel" | "apn" | "pin" if of == 0 => "account",
        _ => return None,
    };
    let mut at = of + 1;
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
        .map(|comment| comment.trim_start_matches(['#', ':']).trim());
    if at == typed.pieces.len()
        && let Some(number) = hidden.filter(|number| !number.is_empty() && !number.contains('"'))
    {
        return Some(Answer::line(
            format!("{word} \"{number}\""),
            "after a `#` is a comment: the number stands without it, with a `\"` on each side",
        ));
    }
    let rest = typed.rest(at);
    (word == "case"
        && at > 1
        && rest.chars().any(|own| own.is_ascii_digit())
        && !rest.is_empty()
        && !typed.line.contains('"'))
    .then(|| Answer::line(format!("case \"{rest}\""), "a name needs a `\"` on each side"))
}

/// Words that end the name of a street.
pub(super) const STREETS: [&str; 48] = [
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
    "run",
    "ridge",
    "hollow",
    "trace",
    "crossing",
    "pass",
    "path",
    "alley",
    "point",
    "hill",
    "bend",
    "cove",
    "glen",
    "walk",
    "pike",
    "crescent",
    "mews",
    "grove",
    "heights",
    "meadow",
    "creek",
];

/// `12 Larkspur Lane`: an address without its word.
pub(super) fn address_alone(typed: &Typed<'_>) -> Option<Answer> {
    let number =
        typed.piece(0).filter(|number| number.is_number() && !number.text.contains(['.', ',']))?;
    let mut at = (2..typed.pieces.len().min(6)).find(|&at| typed.says(at, &STREETS))?;
    // `18 Walnut Hollow Road`
    while typed.says(at + 1, &STREETS) {
        at += 1;
    }
    let words = typed.pieces[1..=at].iter().enumerate().all(|(i, piece)| {
        // `1204 N. Walnut Ct`
        i == 1 && piece.is_mark(".") && typed.says(1, &["n", "s", "e", "w"])
            || piece.sort == Sort::Word
                && (piece.text.starts_with(char::is_uppercase) || piece.is_word(&STREETS))
    });
    let measures = super::measures(typed.line) || typed.line.contains('"');
    if words && number.text.len() <= 5 && !measures && at + 1 < typed.pieces.len() {
        return address_and_more(typed, at + 1);
    }
    (words && number.text.len() <= 5 && !measures).then(|| {
        Answer::line(
            format!("address \"{}\"", typed.line),
            "an address is `address`, with a `\"` on each side",
        )
    })
}

/// `14 Larkspur Lane, Juniper County. Parcel 07-114-22. taped 11/20`: an address, the number on the record, and what else
/// is said.
fn address_and_more(typed: &Typed<'_>, end: usize) -> Option<Answer> {
    let stop = typed.piece(end).filter(|mark| mark.is_mark(",.;-–("))?;
    let mut address = typed.text(0, end).to_owned();
    let (mut account, mut remarks) = (None, Vec::new());
    let rest = typed.line.get(stop.at + stop.text.len()..)?;
    // A point before a blank ends a part.
    for part in rest.split(['.', ';', '(', ')']).flat_map(|part| part.split(", ")) {
        let part = part.trim().trim_matches(',');
        let words = super::cut(part);
        let Some(first) = words.first() else { continue };
        let is_number = |at: usize| {
            words.get(at).is_some_and(|piece| piece.text.starts_with(|c: char| c.is_ascii_digit()))
        };
        let is_account = first.is_word(&["parcel", "account", "acct", "apn", "pin", "pid"]);
        // `acct R-104417`: a short number may begin with a letter.
        let is_number = |at: usize| {
            is_number(at)
                || words.get(at).and_then(|word| part.get(word.at..)).is_some_and(|number| {
                    number.len() <= 20
                        && !number.contains(' ')
                        && number.contains(|c: char| c.is_ascii_digit())
                })
        };
        let at = 1 + usize::from(
            words
                .get(1)
                .is_some_and(|word| word.is_word(&["no", "number", "id"]) || word.is_mark("#:")),
        );
        if is_account && is_number(at) && account.is_none() {
            account = part.get(words[at].at..).map(str::to_owned);
        } else if words.iter().any(|word| word.is_word(&["county", "township", "city", "town"]))
            && account.is_none()
            && remarks.is_empty()
        {
            address = format!("{address}, {part}");
        } else {
            remarks.push(part.to_owned());
        }
    }
    let comment = match remarks.is_empty() {
        true => String::new(),
        false => format!("  # {}", remarks.join(", ")),
    };
    let account = account.map_or(String::new(), |account| format!("\naccount \"{account}\""));
    Some(Answer::line(
        format!("address \"{address}\"{comment}{account}"),
        "an address is `address`, with a `\"` on each side, and the number on the record `account`; anything else goes into a comment",
    ))
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
    // The length of a wall comes right after its way; `recorded` is followed by another. An angle is none.
    let is_angle = typed.pieces.iter().any(|piece| piece.is_mark("°º"));
    let is_wall = |(at, measure): &&(usize, Measure)| {
        !is_angle && (*at == 1 || measure.has_unit && !typed.says(at - 1, &["recorded", "record"]))
    };
    let with_unit = found.iter().any(|(_, measure)| measure.has_unit);
    let wall = found.iter().find(is_wall).filter(|_| with_unit).map(|(_, measure)| measure);
    let wall = wall.map_or_else(
        || "a wall begins with its direction".to_owned(),
        |measure| format!("if `{}` is the length of a wall, write before it the way that the wall runs, `north`, `east`, `south` or `west`", measure.text),
    );
    Some(Answer::say(
        format!("`{}` begins no line of a sides file", typed.text(0, 1)),
        format!(
            "{wall}; a space begins with what it is (`living`, `garage`, `porch` …), a published area with `record` or `listing`; if this is a remark, put a `#` before it"
        ),
    )
    .about(About::AnyLine))
}
