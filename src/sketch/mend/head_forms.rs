//! Lines about the whole file in the forms of letters, cards and listings: with that one thing changed, a line is read or
//! answered as any other.

use super::kinds::month_named;
use super::shortened::begins;

/// The line in the form that is known, and what was wrong. `None` if nothing here is in another form.
pub(super) fn written_out(line: &str) -> Option<(String, &'static str)> {
    // A mark for inches is no quotation mark.
    let is_inches = |at: usize| line[..at].ends_with(|c: char| c.is_ascii_digit());
    let has_text = line.match_indices('"').any(|(at, _)| !is_inches(at));
    if has_text || line.contains('#') {
        return None;
    }
    record_in_short(line)
        .or_else(|| home_of(line))
        .or_else(|| address_in_short(line))
        .or_else(|| account_and_address(line))
        .or_else(|| figure_of_somebody(line))
        .or_else(|| per_somebody(line))
        .or_else(|| totals(line))
        .or_else(|| two_days(line))
        .or_else(|| measured_with(line))
        .or_else(|| outside_of_frame(line))
        .or_else(|| value_with_a_mark(line))
        .or_else(|| other_beginning(line))
        .or_else(|| of_the_record(line))
        .or_else(|| year_of_a_value(line))
        .or_else(|| present(line))
        .or_else(|| remark(line))
}

/// `card says 1,644 total`, `county: 1,079 liv / 440 gar`, `assessor card: living 1150, gar 528`: the figures of the record
/// under other names and in short words.
fn record_in_short(line: &str) -> Option<(String, &'static str)> {
    const CARDS: [&str; 10] = [
        "card",
        "record card",
        "the card",
        "prc",
        "assessor card",
        "assessor's card",
        "assessors card",
        "property card",
        "county card",
        "cad card",
    ];
    const COUNTY: [&str; 4] = ["county", "assessor", "the county", "tax card"];
    let plain = line.trim();
    let head = CARDS
        .iter()
        .chain(&COUNTY)
        .filter(|head| begins(plain, head))
        .max_by_key(|head| head.len())?;
    let rest = plain.get(head.len()..)?;
    if !rest.starts_with([' ', ':', '=', ',', '-']) {
        return None;
    }
    let marks = [' ', ':', '=', ',', '-', '–'];
    let figures = rest.trim_start_matches(marks);
    let figures = ["says", "has", "shows", "lists", "sez", "reads", "gives"]
        .iter()
        .find_map(|verb| figures.get(verb.len()..).filter(|_| begins(figures, &format!("{verb} "))))
        .unwrap_or(figures)
        .trim_start_matches(marks);
    // `1,386 sf / 129 sq m`, `1,200 + 734`: one figure twice, and a sum, which are known as they are.
    let parts = ["gar", "garage", "grg", "porch", "por", "bsmt", "basement", "deck", "carport"];
    let is_part =
        |word: &str| parts.contains(&word.trim_matches([',', '.', ';']).to_lowercase().as_str());
    let is_figure = |word: &&str| word.bytes().filter(u8::is_ascii_digit).count() >= 3;
    let are_parts = figures.split(' ').any(is_part)
        && figures.split(' ').filter(is_figure).count() == 2
        && !figures.contains('=');
    let apart = match are_parts {
        true => figures.replace(" + ", ", ").replace(" / ", ", "),
        false => figures.to_owned(),
    };
    let words: Vec<String> = apart
        .split(' ')
        .map(|word| {
            let bare = word.trim_end_matches(['.', ',', ';']);
            let end = word.get(bare.len()..).unwrap_or_default().trim_start_matches('.');
            match bare.to_lowercase().as_str() {
                "liv" | "lvg" | "lv" => format!("living{end}"),
                "gar" | "grg" => format!("garage{end}"),
                "bsmt" => format!("basement{end}"),
                "por" => format!("porch{end}"),
                _ => word.to_owned(),
            }
        })
        .collect();
    let written = words.join(" ");
    let first = words.first()?.trim_matches([',', ';']);
    let is_area = |text: &str| {
        text.bytes().filter(u8::is_ascii_digit).count() >= 3
            && text.bytes().all(|c| c.is_ascii_digit() || c == b',')
    };
    let begins_so = is_area(first) || ["living", "house", "garage"].contains(&first);
    let is_card = CARDS.contains(head);
    let labeled = ["living ", "house "].iter().find_map(|label| {
        let (number, more) = written
            .get(label.len()..)
            .filter(|_| begins(&written, label))?
            .split_once([',', ';'])?;
        is_area(number.trim())
            .then(|| (label.trim(), number.trim().to_owned(), more.trim().to_owned()))
    });
    // `living 1150, garage 528`: each area before its word.
    let written = match labeled {
        Some((label, number, more)) => {
            let (part, area) = more.split_once(' ')?;
            match is_area(area.trim()) {
                true => format!("{number} {label}, {} {part}", area.trim()),
                false => format!("{number} {label}, {more}"),
            }
        }
        None => written,
    };
    let changed = is_card || written != figures;
    (begins_so && changed && !written.contains(['$', 'x', '%'])).then(|| {
        (format!("county {written}"), "the figures of the record's card begin with `record`")
    })
}

fn has_digit(text: &str) -> bool {
    text.contains(|c: char| c.is_ascii_digit())
}

/// `Home of the owner, 9 Alder Lane`: what the file is about.
fn home_of(line: &str) -> Option<(String, &'static str)> {
    let forms = ["home of ", "house of ", "residence of ", "property of ", "house belonging to "];
    let line = line.trim();
    let is_one = forms.iter().any(|form| begins(line, form));
    (is_one && has_digit(line) && line.contains(',')).then(|| {
        (format!("property \"{line}\""), "the house is named on a line that begins with `property`")
    })
}

/// `addr. 9 Alder Lane`, `addr 9 Alder Lane`.
fn address_in_short(line: &str) -> Option<(String, &'static str)> {
    let line = line.trim();
    let subject = line.get(4..).filter(|_| begins(line, "re: "));
    let about = subject.and_then(|subject| subject_of_a_letter(line, subject.trim()));
    if about.is_some() {
        return about;
    }
    let rest = ["addr. ", "addr.: ", "addrs ", "add. ", "re: ", "prop: ", "prop.: "]
        .iter()
        .find_map(|form| line.get(form.len()..).filter(|_| begins(line, form)))?;
    has_digit(rest).then(|| {
        (format!("address {}", rest.trim()), "the address of the house begins with `address`")
    })
}

/// `re: 2026 value`, `re: account R-1204`: what a letter is about, if that is no address.
fn subject_of_a_letter(line: &str, subject: &str) -> Option<(String, &'static str)> {
    const ABOUT: [&str; 16] = [
        "value",
        "values",
        "valuation",
        "assessment",
        "appraisal",
        "notice",
        "tax",
        "taxes",
        "protest",
        "appeal",
        "record",
        "hearing",
        "size",
        "area",
        "footage",
        "reappraisal",
    ];
    const LINES: [&str; 8] =
        ["account", "acct", "acct.", "parcel", "apn", "pin", "case", "property"];
    let mut words = subject.split(' ').map(|word| word.trim_matches([',', '.', ':', ';']));
    let first = words.next()?.to_lowercase();
    if LINES.contains(&first.as_str()) && has_digit(subject) {
        return Some((subject.to_owned(), "what a letter is about needs no `re:` before it"));
    }
    let is_about = ABOUT.contains(&first.as_str())
        || words.any(|word| ABOUT.contains(&word.to_lowercase().as_str()));
    is_about.then(|| {
        (format!("# {line}"), "this line says nothing about the outline; a comment begins with `#`")
    })
}

/// `1,204 per county, 1,180 per me`, `1,204 sf per CAD`: who published a figure stands before it.
fn per_somebody(line: &str) -> Option<(String, &'static str)> {
    const WHO: [(&str, &str); 9] = [
        ("county", "record"),
        ("cad", "record"),
        ("assessor", "record"),
        ("record", "record"),
        ("records", "record"),
        ("card", "record"),
        ("listing", "listing"),
        ("mls", "listing"),
        ("plans", "plan"),
    ];
    let (before, after) = line.trim().split_once(" per ")?;
    let number = before.split(' ').next()?;
    let unit = before.get(number.len()..)?.trim().to_lowercase();
    let digits: String = number.chars().filter(char::is_ascii_digit).collect();
    let is_area = (3..=5).contains(&digits.len())
        && number.chars().all(|c| c.is_ascii_digit() || c == ',')
        && matches!(unit.as_str(), "" | "sf" | "sq ft" | "sqft" | "sq. ft." | "sq. ft");
    let after = after.trim_start();
    let after = after.strip_prefix("the ").or(after.strip_prefix("tax ")).unwrap_or(after);
    let who: String = after.chars().take_while(|c| c.is_alphabetic()).collect();
    let rest = after.get(who.len()..)?.trim_start_matches([',', ';', '.', ' ']);
    let word = WHO.iter().find(|(name, _)| who.eq_ignore_ascii_case(name))?.1;
    let comment = if rest.is_empty() { String::new() } else { format!("  # {rest}") };
    is_area.then(|| {
        (
            format!("{word} {number} sq ft{comment}"),
            "an area begins with the word for who published it",
        )
    })
}

/// `assessor's sketch totals 1,204`: a figure of the record.
fn totals(line: &str) -> Option<(String, &'static str)> {
    const WHO: [&str; 7] = [
        "assessor's ",
        "assessor ",
        "county ",
        "county's ",
        "cad ",
        "appraisal district ",
        "card ",
    ];
    const WHAT: [&str; 6] = [
        "sketch totals ",
        "sketch total ",
        "sketch says ",
        "sketch adds up to ",
        "totals ",
        "total ",
    ];
    let line = line.trim();
    let rest = WHO.iter().find_map(|who| line.get(who.len()..).filter(|_| begins(line, who)))?;
    let area =
        WHAT.iter().find_map(|what| rest.get(what.len()..).filter(|_| begins(rest, what)))?;
    let area = area.trim_start_matches(['=', ':', ' ']);
    area.starts_with(|c: char| c.is_ascii_digit())
        .then(|| (format!("county {area}"), "the figure of the record begins with `record`"))
}

/// `measured May 16 & 17, 2026`, `measured 5/16-5/17/26`: the last of two days.
fn two_days(line: &str) -> Option<(String, &'static str)> {
    const CAUSE: &str = "`measured` has one day, the last of several";
    let line = line.trim();
    let verb = ["measured ", "taped "].iter().find(|verb| begins(line, verb))?;
    let words: Vec<&str> = line.get(verb.len()..)?.split_whitespace().collect();
    let is_day = |word: &str| {
        let day = word.trim_end_matches(',');
        day.len() <= 2 && day.parse::<u8>().is_ok_and(|day| (1..=31).contains(&day))
    };
    let is_joint = |word: &&str| ["&", "and", "-", "to", "+"].contains(word);
    // `May 16 & 17, 2026`
    if let [month, one, joint, two, rest @ ..] = &words[..]
        && month_named(&month.to_lowercase()).is_some()
        && is_day(one)
        && is_joint(joint)
        && is_day(two)
    {
        let plain = format!("measured {month} {two} {} (begun {month} {one})", rest.join(" "));
        return Some((plain, CAUSE));
    }
    // `5/16 & 5/17/26`
    let parts = |word: &str| word.split(['/', '.']).filter(|part| !part.is_empty()).count();
    let is_date = |word: &str| {
        word.split(['/', '.']).all(|part| part.len() <= 4 && part.parse::<u32>().is_ok())
    };
    let [one, joint, two, rest @ ..] = &words[..] else { return None };
    let is_pair =
        is_date(one) && parts(one) == 2 && is_joint(joint) && is_date(two) && parts(two) == 3;
    is_pair.then(|| (format!("measured {two} (begun {one}) {}", rest.join(" ")), CAUSE))
}

/// `laser measured 5/16/26`, `hand taped 5/16/26 by owner`: with what it was measured comes last.
fn measured_with(line: &str) -> Option<(String, &'static str)> {
    let mut words = line.trim().splitn(4, ' ');
    let (tool, verb, day) = (words.next()?, words.next()?, words.next()?);
    let tools = ["laser", "tape", "wheel"];
    let is_tool = tools.iter().any(|one| tool.eq_ignore_ascii_case(one));
    let is_verb = ["measured", "taped"].iter().any(|one| verb.eq_ignore_ascii_case(one));
    let day = day.trim_end_matches(',');
    let is_day = day.contains(['/', '-']) && day.starts_with(|c: char| c.is_ascii_digit());
    let rest = words.next().map_or_else(String::new, |rest| {
        format!("{}{rest}", if rest.starts_with("by ") { " " } else { ", " })
    });
    (is_tool && is_verb && is_day).then(|| {
        let plain = match rest.starts_with(" by ") && !rest.contains(" with ") {
            true => format!("measured {day}{rest} with {}", tool.to_lowercase()),
            false => format!("measured {day} with {}{rest}", tool.to_lowercase()),
        };
        (plain, "the day comes right after `measured`, then `by` and who, and `with` and what")
    })
}

/// `builder plan 1,215 (outside of frame)`: to the frame.
fn outside_of_frame(line: &str) -> Option<(String, &'static str)> {
    let lower = line.to_ascii_lowercase();
    ["outside of frame", "outside of framing", "outside of studs", "outside of the frame"]
        .iter()
        .filter(|_| lower.contains("plan"))
        .find_map(|form| {
            let at = lower.find(form)?;
            let (before, after) = (line.get(..at)?, line.get(at + form.len()..)?);
            Some((
                format!("{before}frame{after}"),
                "the outside of the framing is the face that is called `frame`",
            ))
        })
}

/// `value: land 60k, house 250k`: the first word needs no mark.
fn value_with_a_mark(line: &str) -> Option<(String, &'static str)> {
    let (word, rest) = line.trim().split_once(':')?;
    let is_value =
        ["value", "values", "valuation"].iter().any(|one| word.eq_ignore_ascii_case(one));
    (is_value && has_digit(rest) && rest.trim_start().starts_with(|c: char| c.is_alphabetic()))
        .then(|| (format!("value {}", rest.trim()), "the values of a record begin with `value`"))
}

/// `prop ID 104417 / 9 Alder Lane`, `acct R-104417, 9 Alder Lane`: the address first, as it is known.
fn account_and_address(line: &str) -> Option<(String, &'static str)> {
    const ACCOUNTS: [&str; 12] = [
        "prop id",
        "property id",
        "account no",
        "account",
        "acct no",
        "acct",
        "parcel no",
        "parcel",
        "apn",
        "pin",
        "tax id",
        "geo id",
    ];
    const STREETS: [&str; 18] = [
        "st", "street", "ln", "lane", "rd", "road", "dr", "drive", "ave", "avenue", "ct", "court",
        "blvd", "way", "pl", "place", "cir", "trail",
    ];
    let line = line.trim();
    let form = ACCOUNTS.iter().find(|form| begins(line, &format!("{form} ")))?;
    let rest = line.get(form.len()..)?.trim_start_matches([':', '#', '.', ' ']);
    let (number, address) =
        [" / ", ", ", "; ", " - "].iter().find_map(|joint| rest.split_once(joint))?;
    let number = number.trim();
    let is_number = has_digit(number) && !number.contains(' ') && number.len() <= 20;
    let first = address.trim().split(' ').next()?;
    let is_street = address
        .split([' ', ',', '.'])
        .any(|word| STREETS.iter().any(|street| word.eq_ignore_ascii_case(street)));
    let is_address = first.chars().all(|c| c.is_ascii_digit()) && !first.is_empty() && is_street;
    (is_number && is_address).then(|| {
        (
            format!("{}, acct {number}", address.trim()),
            "the address and the number on the record have a line each",
        )
    })
}

/// `Brightside 1,250`: a figure with the name of its source, and without its unit.
fn figure_of_somebody(line: &str) -> Option<(String, &'static str)> {
    const OTHERS: [&str; 16] = [
        "record",
        "listing",
        "plan",
        "value",
        "tax",
        "taxes",
        "market",
        "exemption",
        "total",
        "land",
        "improvement",
        "price",
        "sold",
        "county",
        "levy",
        "north",
    ];
    let words: Vec<&str> = line.trim().split(' ').collect();
    let [names @ .., number] = &words[..] else { return None };
    let (thousands, rest) = number.split_once(',')?;
    let is_number = thousands.len() == 1
        && rest.len() == 3
        && (thousands.to_owned() + rest).chars().all(|c| c.is_ascii_digit());
    let is_name = |word: &&str| {
        let lower = word.to_lowercase();
        word.starts_with(char::is_uppercase)
            && word.len() > 2
            && word.chars().all(char::is_alphabetic)
            && !OTHERS.contains(&lower.as_str())
            && !crate::sketch::nouns::is_known(&lower)
            && super::kinds::kind_word(&lower).is_none()
            && super::whole_way(&lower).is_none()
    };
    let is_one = (1..=2).contains(&names.len()) && names.iter().all(is_name) && is_number;
    is_one.then(|| (format!("{} sq ft", line.trim()), "the figure has no unit"))
}

/// Beginnings that other words stand for, as `cause no. 2026-123`.
fn other_beginning(line: &str) -> Option<(String, &'static str)> {
    const CASE: &str = "the number of a protest is `case`";
    const ACCOUNT: &str = "the number under which the office has the house is `account`";
    const CAP: &str = "what the tax is paid on is `value assessed`";
    const SALE: &str = "another house that was sold is a `comparable`";
    const SEEN: &str = "whether the inside was seen is `interior seen` or `interior not seen`";
    const DAY: &str = "the day on which it was measured comes right after `measured`";
    const FORMS: [(&str, &str, &str); 22] = [
        ("cause no. ", "case ", CASE),
        ("cause no ", "case ", CASE),
        ("cause number ", "case ", CASE),
        ("docket no. ", "case ", CASE),
        ("account no ", "account ", ACCOUNT),
        ("account no. ", "account ", ACCOUNT),
        ("acct no ", "account ", ACCOUNT),
        ("cap value ", "assessed value ", CAP),
        ("capped value ", "assessed value ", CAP),
        ("comparable sale: ", "comparable ", SALE),
        ("comparable sale ", "comparable ", SALE),
        ("comp sale: ", "comparable ", SALE),
        ("comp sale ", "comparable ", SALE),
        ("interior not accessible", "interior not seen", SEEN),
        ("interior not inspected", "interior not seen", SEEN),
        ("interior not entered", "interior not seen", SEEN),
        ("interior not available", "interior not seen", SEEN),
        ("interior not viewed", "interior not seen", SEEN),
        ("interior not measured", "interior not seen", SEEN),
        ("msmts taken ", "measured ", DAY),
        ("msmts ", "measured ", DAY),
        ("measmts ", "measured ", DAY),
    ];
    let line = line.trim();
    FORMS.iter().find_map(|(form, word, cause)| {
        let rest = line.get(form.len()..).filter(|_| begins(line, form))?;
        let is_number = has_digit(rest) || form.starts_with("interior");
        is_number.then(|| (format!("{word}{rest}"), *cause))
    })
}

/// `county 1204 sf incl. sunroom`, `record was 1,204, now 1,310`, `tax 6,140 last year`.
fn of_the_record(line: &str) -> Option<(String, &'static str)> {
    const WHO: [&str; 4] = ["county ", "cad ", "assessor ", "appraisal district "];
    let line = line.trim();
    let lower = line.to_ascii_lowercase();
    if let Some(rest) = lower.strip_prefix("record was ")
        && let Some((before, now)) = rest.split_once(", now ")
    {
        let (number, more) = now.split_once(' ').unwrap_or((now, ""));
        let is_number =
            |text: &str| text.chars().all(|c| c.is_ascii_digit() || c == ',') && has_digit(text);
        let more = more.trim_matches(['(', ')', ' ']);
        let more = if more.is_empty() { String::new() } else { format!(", now {more}") };
        return (is_number(number) && has_digit(before)).then(|| {
            (
                format!("record {number} sq ft  # was {before}{more}"),
                "a figure is the one that holds now",
            )
        });
    }
    if let Some(rest) = lower.strip_prefix("tax ")
        && rest.ends_with(" last year")
        && rest.trim_start_matches('$').starts_with(|c: char| c.is_ascii_digit())
    {
        let sum = rest.trim_end_matches(" last year");
        return Some((format!("last year's taxes {sum}"), "a tax that was paid has no line"));
    }
    let rest = WHO.iter().find_map(|who| line.get(who.len()..).filter(|_| begins(line, who)))?;
    let number: String = rest.chars().take_while(|c| c.is_ascii_digit() || *c == ',').collect();
    let after = rest.get(number.len()..)?.trim_start();
    let after = ["sf ", "sq ft ", "sqft ", "sq. ft. "]
        .iter()
        .find_map(|unit| after.get(unit.len()..).filter(|_| begins(after, unit)))
        .unwrap_or(after);
    let counts = ["incl", "counting", "with ", "w/", "plus ", "+"];
    let is_counting = counts.iter().any(|word| begins(after, word));
    let is_area = (3..=5).contains(&number.chars().filter(char::is_ascii_digit).count());
    (is_area && is_counting).then(|| {
        let sum = after.starts_with('+') || begins(after, "plus ");
        let unit = if sum { "" } else { " sq ft" };
        (format!("record {number}{unit} {after}"), "the figure of the record begins with `record`")
    })
}

/// `value 310000 (2026)`: of which year a value is.
fn year_of_a_value(line: &str) -> Option<(String, &'static str)> {
    let (before, year) = line.trim().strip_suffix(')')?.split_once('(')?;
    let is_year = year.len() == 4 && year.starts_with("20") && year.parse::<u32>().is_ok();
    let before = before.trim_end();
    let is_sum = before
        .strip_prefix("value ")
        .is_some_and(|sum| sum.chars().all(|c| c.is_ascii_digit() || "$,".contains(c)));
    (is_year && is_sum)
        .then(|| (format!("{before} year {year}"), "of which year a value is stands after `year`"))
}

/// `measured 5/16/26 w/ owner`: who was there is no tool.
fn present(line: &str) -> Option<(String, &'static str)> {
    const WHO: [&str; 8] =
        ["owner", "seller", "agent", "tenant", "homeowner", "neighbor", "client", "buyer"];
    let line = line.trim();
    let is_one = ["measured ", "visited ", "taped "].iter().any(|verb| begins(line, verb));
    let (before, who) = [" w/ ", " w/", " with "].iter().find_map(|with| line.rsplit_once(with))?;
    let bare = who.trim_start_matches("the ");
    let is_who = WHO.iter().any(|one| bare.eq_ignore_ascii_case(one));
    (is_one && is_who && has_digit(before)).then(|| {
        (
            format!("{before} (with {who})"),
            "after `with` stands what it was measured with; who was there goes into a comment",
        )
    })
}

/// `garage faces west`, `house built 1968, remodeled 2004`: remarks.
fn remark(line: &str) -> Option<(String, &'static str)> {
    let line = line.trim();
    let words: Vec<String> = line
        .split([' ', ',', '.'])
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect();
    let word = |at: usize| words.get(at).map_or("", String::as_str);
    let at = usize::from(matches!(word(0), "the" | "my" | "our"));
    let faces = word(at) == "garage"
        && (matches!(word(at + 1), "faces" | "facing") && words.len() == at + 3
            || matches!(word(at + 1), "door" | "doors")
                && matches!(word(at + 2), "faces" | "face" | "facing")
                && words.len() == at + 4);
    let is_year = |text: &str| text.len() == 4 && text.parse::<u32>().is_ok();
    let done =
        ["built", "remodeled", "renovated", "updated", "added", "in", "and", "about", "circa"];
    let built = matches!(word(at), "house" | "home")
        && word(at + 1) == "built"
        && words[at + 1..].iter().all(|word| done.contains(&word.as_str()) || is_year(word))
        && words.iter().any(|word| is_year(word));
    (faces || built).then(|| {
        (format!("# {line}"), "this says nothing of the outline; a comment begins with `#`")
    })
}
