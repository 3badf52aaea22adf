//! Short forms of words and of phrases that a sides file has in another form, as `s.f.` or `+/-` after an area: with that
//! one thing changed, a line is read or answered as any other.

use super::kinds::area_in;

/// The line with one short form written out, and what was wrong. `None` if it has none.
pub(super) fn written_out(line: &str) -> Option<(String, &'static str)> {
    without_points(line)
        .or_else(|| more_or_less(line))
        .or_else(|| bow_window(line))
        .or_else(|| other_beginning(line))
        .or_else(|| unheated(line))
        .or_else(|| corner_of(line))
        .or_else(|| who_measured(line))
        .or_else(|| by_whom(line))
        .or_else(|| length_before_up(line))
        .or_else(|| parts_of_the_record(line))
        .or_else(|| apart(line))
        .or_else(|| bedrooms_with_a_size(line))
        .or_else(|| not_finished(line))
        .or_else(|| between_in_short(line))
        .or_else(|| place_in_short(line))
        .or_else(|| unseen(line))
        .or_else(|| basement_first(line))
        .or_else(|| outbuilding_with(line))
}

/// Beginnings that other words stand for, as `floor plan 1,150 sq ft`.
fn other_beginning(line: &str) -> Option<(String, &'static str)> {
    const FORMS: [(&str, &str, &str); 20] = [
        ("site addr ", "address ", "the address of the house begins with `address`"),
        ("site addr. ", "address ", "the address of the house begins with `address`"),
        ("street addr ", "address ", "the address of the house begins with `address`"),
        ("street addr. ", "address ", "the address of the house begins with `address`"),
        ("prop addr ", "address ", "the address of the house begins with `address`"),
        ("prop. addr. ", "address ", "the address of the house begins with `address`"),
        ("got notice ", "notice ", "the day on which the notice came is `notice`"),
        ("received notice ", "notice ", "the day on which the notice came is `notice`"),
        ("recd notice ", "notice ", "the day on which the notice came is `notice`"),
        ("got the notice ", "notice ", "the day on which the notice came is `notice`"),
        ("so. ", "south ", "the way of a wall is a whole word"),
        ("listing +/- ", "listing ", "an area is stated as it was published"),
        ("floor plan ", "plan ", "the figure of a plan begins with `plan`"),
        ("floorplan ", "plan ", "the figure of a plan begins with `plan`"),
        ("record card: ", "record ", "the figure of the record begins with `record`"),
        ("record card ", "record ", "the figure of the record begins with `record`"),
        ("property owner:", "owner:", "a comment begins with `#`"),
        ("property owner ", "owner: ", "a comment begins with `#`"),
        ("faces north", "house faces north", "the street side is `front`"),
        ("faces south", "house faces south", "the street side is `front`"),
    ];
    let plain = line.trim_start();
    FORMS.iter().find_map(|(form, word, cause)| {
        let rest = plain.get(form.len()..)?;
        let begins = plain.get(..form.len())?.eq_ignore_ascii_case(form);
        let is_plan = !matches!(*word, "plan " | "south " | "notice " | "listing ")
            || rest.starts_with(|c: char| c.is_ascii_digit());
        (begins && is_plan && !rest.starts_with('"')).then(|| (format!("{word}{rest}"), *cause))
    })
}

/// `sunroom 10x12, no heat`: a room without heat is unheated.
fn unheated(line: &str) -> Option<(String, &'static str)> {
    const FORMS: [&str; 8] = [
        "(not heated or cooled)",
        "not heated or cooled",
        "(no heat)",
        "no heat",
        "without heat",
        "(no hvac)",
        "no hvac",
        "no heating",
    ];
    let sized = super::kinds::size_in(line).is_some();
    FORMS.iter().filter(|_| sized).find_map(|form| {
        let at = whole_word_at(line, form)?;
        let (before, after) = (line.get(..at)?, line.get(at + form.len()..)?);
        let is_last = after.trim().is_empty() || after.trim_start().starts_with([',', ';']);
        (is_last && !is_quoted(before))
            .then(|| (format!("{before}unheated{after}"), "a room without heat is unheated"))
    })
}

/// `porch "Porch" from the corner of the garage`: which thing before the word.
fn corner_of(line: &str) -> Option<(String, &'static str)> {
    let lower = line.to_ascii_lowercase();
    let forms = [
        "from the corner of the ",
        "from corner of the ",
        "from the corner of ",
        "from corner of ",
        "at the corner of the ",
        "at corner of the ",
        "at the corner of ",
    ];
    forms.iter().find_map(|form| {
        let at = lower.find(form)?;
        let (before, after) = (line.get(..at)?, line.get(at + form.len()..)?);
        let name = after.trim();
        let is_thing = ["garage", "porch", "house", "carport", "deck", "patio", "addition"]
            .contains(&name.to_ascii_lowercase().as_str());
        let word = form.split(' ').next()?;
        (is_thing && !is_quoted(before)).then(|| {
            (
                format!("{before}{word} {name} corner"),
                "the corners of a space have numbers: which of them is it",
            )
        })
    })
}

/// Whoever may have measured.
const PEOPLE: [&str; 14] = [
    "owner",
    "owners",
    "agent",
    "appraiser",
    "seller",
    "buyer",
    "husband",
    "wife",
    "me",
    "i",
    "we",
    "neighbor",
    "homeowner",
    "inspector",
];

/// `owner measured June 13, 2026`: the day comes before the person.
fn who_measured(line: &str) -> Option<(String, &'static str)> {
    let (who, rest) = line.trim().split_once(' ')?;
    let (verb, rest) = rest.trim_start().split_once(' ')?;
    let is_who = PEOPLE.contains(&who.to_lowercase().as_str());
    let is_verb = ["measured", "taped"].iter().any(|word| verb.eq_ignore_ascii_case(word));
    let has_month = rest
        .split(|c: char| !c.is_alphabetic())
        .any(|word| super::kinds::month_named(&word.to_lowercase()).is_some());
    let is_dated = rest.contains("20") && rest.contains(['/', '-', '.']) || has_month;
    let has_day =
        rest.contains(|c: char| c.is_ascii_digit()) && is_dated && area_in(rest).is_none();
    let named = match who.to_lowercase().as_str() {
        "i" | "we" | "me" => "me".to_owned(),
        who => format!("the {who}"),
    };
    let rest = rest.trim_start().strip_prefix("on ").unwrap_or(rest.trim_start());
    (is_who && is_verb && has_day && !line.contains(['"', '#'])).then(|| {
        (
            format!("measured {rest} by \"{named}\""),
            "the day on which it was measured comes right after `measured`, then `by` and who did",
        )
    })
}

/// `measured 3/7/2026 me and my wife`: who measured comes after `by`.
fn by_whom(line: &str) -> Option<(String, &'static str)> {
    let lower = line.to_ascii_lowercase();
    let says = |word: &str| lower.split(|c: char| !c.is_alphanumeric()).any(|one| one == word);
    if !lower.starts_with("measured ") || says("by") || line.contains(['"', '#']) {
        return None;
    }
    let day = lower.rfind(|c: char| c.is_ascii_digit()).filter(|_| !lower.contains('\''));
    let day = day.or_else(|| {
        // `…, 2026, me and my wife, 100' tape`
        lower.match_indices("20").find_map(|(at, _)| {
            lower
                .get(at..at + 4)?
                .parse::<u16>()
                .ok()
                .filter(|year| (2000..2100).contains(year))?;
            Some(at + 3)
        })
    })?;
    let rest = line.get(day + 1..)?;
    let said = rest.trim_start_matches([',', ';', ' ']);
    let first = said.split(|c: char| !c.is_alphanumeric()).next()?.to_lowercase();
    let is_who = PEOPLE.contains(&first.as_str()) || first == "my";
    (is_who && rest.starts_with([',', ';', ' '])).then(|| {
        (
            format!("{} by {said}", line.get(..=day).unwrap_or_default()),
            "who measured comes after `by`, with a `\"` on each side",
        )
    })
}

/// `30'3" up`: the way comes first.
fn length_before_up(line: &str) -> Option<(String, &'static str)> {
    let (length, way) = line.trim().rsplit_once(' ')?;
    let is_way = ["up", "down"].iter().any(|word| way.eq_ignore_ascii_case(word));
    let is_length = length.starts_with(|c: char| c.is_ascii_digit())
        && length.chars().all(|c| c.is_ascii_digit() || "'\" ./-’″′”".contains(c));
    (is_way && is_length)
        .then(|| (format!("{way} {length}"), "the direction comes before the length"))
}

/// `bow window 9' wide sticks out 18"`: a round bay.
fn bow_window(line: &str) -> Option<(String, &'static str)> {
    let plain = line.trim_start();
    let form = ["bow window", "bowed window", "bow front window"]
        .into_iter()
        .find(|form| begins(plain, form))?;
    let after = plain.get(form.len()..)?;
    let is_sized = after.contains(|c: char| c.is_ascii_digit());
    (is_sized && !after.starts_with(char::is_alphanumeric))
        .then(|| (format!("round bay{after}"), "a bow window is a round `bay`"))
}

/// `1,210 s.f.`, `back to P.O.B.`: letters with a point after each.
fn without_points(line: &str) -> Option<(String, &'static str)> {
    const FORMS: [(&str, &str, &str); 8] = [
        ("sq.ft.", "sq ft", "square feet are `sq ft`"),
        ("s.q.f.t.", "sq ft", "square feet are `sq ft`"),
        ("s.f.", "sq ft", "square feet are `sq ft`"),
        ("s.f", "sq ft", "square feet are `sq ft`"),
        ("s.m.", "sq m", "square meters are `sq m`"),
        ("p.o.b.", "POB", "short forms have no points"),
        ("p.o.b", "POB", "short forms have no points"),
        ("m.o.l.", "more or less", "short forms have no points"),
    ];
    FORMS.iter().find_map(|(form, word, cause)| {
        let at = whole_word_at(line, form)?;
        let before = line.get(..at)?;
        let after = line.get(at + form.len()..)?;
        let is_area = form.starts_with('s');
        let follows_number = before.trim_end().ends_with(|c: char| c.is_ascii_digit());
        if is_area && !follows_number || is_quoted(before) {
            return None;
        }
        let space = if before.ends_with(|c: char| c.is_ascii_digit()) { " " } else { "" };
        Some((format!("{before}{space}{word}{after}"), *cause))
    })
}

/// `record 1,210 sq ft +/-`, `0.35 ac m/l`: an area more or less is the area.
fn more_or_less(line: &str) -> Option<(String, &'static str)> {
    const FORMS: [&str; 9] =
        ["more or less", "+/-", "+ or -", "+-", "-/+", "±", "m/l", "mol", "plus or minus"];
    let end = area_in(line)?;
    let rest = line.get(end..)?;
    let said = rest.trim_start().trim_start_matches([',', '(']).trim_start();
    let form = FORMS.iter().find(|form| begins(said, form))?;
    let after = said.get(form.len()..)?;
    // `± 10 sq ft` is how far it may be off.
    let is_tolerance = after.trim_start().starts_with(|c: char| c.is_ascii_digit());
    let is_whole = !after.starts_with(|c: char| c.is_alphanumeric());
    let closes = rest.trim_start().starts_with('(') || rest.trim_start().starts_with(", (");
    let after = if closes { after.strip_prefix(')').unwrap_or(after) } else { after };
    let before = line.get(..end)?;
    (!is_tolerance && is_whole && !is_quoted(before)).then(|| {
        (format!("{before}{after}").trim_end().to_owned(), "an area is stated as it was published")
    })
}

/// `record 1st 1,180 / garage 462 / porch 75`: the areas of a card, with commas between them and the house's own first.
fn parts_of_the_record(line: &str) -> Option<(String, &'static str)> {
    const RECORD: [&str; 7] =
        ["record", "county", "assessor", "cad", "card", "tax card", "appraisal"];
    const FIRST: [&str; 6] =
        ["1st floor ", "first floor ", "main floor ", "main level ", "1st ", "main "];
    const OTHERS: [&str; 7] = ["2nd", "second", "upper", "3rd", "upstairs", "basement", "lower"];
    const PARTS: [&str; 6] = ["garage", "porch", "deck", "patio", "carport", "shed"];
    let lower = line.to_ascii_lowercase();
    let record = RECORD.iter().find(|word| lower.trim_start().starts_with(*word))?;
    let has = |words: &[&str]| {
        lower.split(|c: char| !c.is_alphanumeric()).any(|word| words.contains(&word))
    };
    let numbers = lower.split([' ', '/']).filter(|word| {
        word.len() >= 2 && word.starts_with(|c: char| c.is_ascii_digit() && c != '0')
    });
    if !has(&PARTS) || has(&OTHERS) || line.contains(['"', '#', '$']) || numbers.count() < 2 {
        return None;
    }
    let start = line.len() - line.trim_start().len();
    let (head, rest) = line.split_at_checked(start + record.len())?;
    let rest = rest.trim_start().trim_start_matches([':', '=', '-']).trim_start();
    let own = FIRST.iter().find(|first| begins(rest, first));
    let rest = own.and_then(|own| rest.get(own.len()..)).unwrap_or(rest);
    let plain = format!("{head} {}", rest.replace(" / ", ", "));
    (own.is_some() || rest.contains(" / "))
        .then_some((plain, "the record's area of a part stands on the line of that space itself"))
}

/// `outbuilding "Barn" apart, measured outside`: by itself is `detached`.
fn apart(line: &str) -> Option<(String, &'static str)> {
    let kinds = ["outbuilding ", "garage ", "barn ", "shed ", "carport "];
    let lower = line.trim_start().to_ascii_lowercase();
    let at = whole_word_at(line, "apart")
        .filter(|_| kinds.iter().any(|kind| lower.starts_with(kind)))?;
    let (before, after) = (line.get(..at)?, line.get(at + "apart".len()..)?);
    let stands = before.trim_end().ends_with(['"', ','])
        || ["standing", "stands"].iter().any(|word| before.trim_end().ends_with(word));
    let before =
        before.trim_end().trim_end_matches("standing").trim_end_matches("stands").trim_end();
    let after = after.trim_start_matches(',');
    (stands && !after.trim_start().starts_with("from") && !is_quoted(before))
        .then(|| (format!("{before} detached{after}"), "what stands by itself is `detached`"))
}

/// `bedrooms 30'6" deep x 30'3" wide`: the rooms of a floor together.
fn bedrooms_with_a_size(line: &str) -> Option<(String, &'static str)> {
    let (word, rest) = line.trim().split_once(' ')?;
    let is_rooms = ["bedrooms", "rooms"].iter().any(|rooms| word.eq_ignore_ascii_case(rooms));
    let rest = rest.trim_start();
    let is_sized = rest.starts_with(|c: char| c.is_ascii_digit())
        && [" x ", " by "].iter().any(|by| rest.contains(by))
        && !rest.contains('#');
    let name = if word.to_lowercase().starts_with('b') { "Bedrooms" } else { "Rooms" };
    (is_rooms && is_sized).then(|| {
        (
            format!("living \"{name}\" {rest}"),
            "the line of a space begins with its kind and its name",
        )
    })
}

/// `attic, not finished`: in one word.
fn not_finished(line: &str) -> Option<(String, &'static str)> {
    let (name, rest) = line.trim().split_once(' ')?;
    let name = name.trim_end_matches([',', ':', '-']);
    let is_room = ["attic", "basement", "loft"].iter().any(|room| name.eq_ignore_ascii_case(room));
    let is_so = ["not finished", "is not finished", "(not finished)"]
        .iter()
        .any(|words| rest.trim().eq_ignore_ascii_case(words));
    (is_room && is_so)
        .then(|| (format!("{name} unfinished"), "what is not finished is `unfinished`"))
}

/// Whether a text ends inside quotation marks or a comment.
pub(super) fn is_quoted(before: &str) -> bool {
    let mut is_open = false;
    let mut last = ' ';
    for c in before.chars() {
        match c {
            // After a number it is the mark of inches.
            '"' if is_open || !last.is_ascii_digit() => is_open = !is_open,
            '#' if !is_open => return true,
            _ => {}
        }
        last = c;
    }
    is_open
}

/// Whether a text begins with a form, in large or small letters.
pub(super) fn begins(text: &str, form: &str) -> bool {
    text.get(..form.len()).is_some_and(|first| first.eq_ignore_ascii_case(form))
}

/// Where a form stands in a text with no letter or digit right before or after it, in large or small letters.
pub(super) fn whole_word_at(text: &str, form: &str) -> Option<usize> {
    let is_part = |c: char| c.is_alphanumeric();
    text.char_indices().map(|(at, _)| at).find(|&at| {
        let end = at + form.len();
        let is_form = text.get(at..end).is_some_and(|here| here.eq_ignore_ascii_case(form));
        let follows = text.get(end..).is_some_and(|after| after.starts_with(is_part));
        let before = text.get(..at).and_then(|before| before.chars().next_back());
        // `1,210s.f.` is a number and its unit.
        is_form && !follows && !before.is_some_and(|c| c.is_alphabetic() || c == '.')
    })
}

/// `breezeway 8x10 betw house & gar`: what it stands between.
fn between_in_short(line: &str) -> Option<(String, &'static str)> {
    const SHORT: [(&str, &str); 7] = [
        ("betw", "between"),
        ("btwn", "between"),
        ("btw", "between"),
        ("&", "and"),
        ("gar", "garage"),
        ("hse", "house"),
        ("hs", "house"),
    ];
    let words: Vec<&str> = line.split(' ').collect();
    let bare = |word: &str| word.trim_end_matches(['.', ',']).to_lowercase();
    let at = words
        .iter()
        .position(|word| ["betw", "btwn", "btw", "between"].contains(&bare(word).as_str()))?;
    if is_quoted(&words[..at].join(" ")) || line.contains('#') {
        return None;
    }
    let whole = |word: &&str| {
        let short = SHORT.iter().find(|(short, _)| *short == bare(word));
        short.map_or_else(
            || (*word).to_owned(),
            |(_, whole)| format!("{whole}{}", if word.ends_with(',') { "," } else { "" }),
        )
    };
    let spelled: Vec<String> = words[at..].iter().map(whole).collect();
    let plain = [words[..at].join(" "), spelled.join(" ")].join(" ");
    (plain != line).then_some((plain, "the words about a place are written out"))
}

/// `garage 22x22 on right, flush w/ front`, `sits back 6'`, `garage bumps out 8'`: words about a place in other forms.
fn place_in_short(line: &str) -> Option<(String, &'static str)> {
    const FORMS: [(&str, &str); 12] = [
        ("flush w/", "flush with "),
        ("even w/", "even with "),
        ("level w/", "level with "),
        ("in line w/", "in line with "),
        ("lined up w/", "lined up with "),
        ("sits back", "set back"),
        ("sets back", "set back"),
        ("sitting back", "set back"),
        ("stands back", "set back"),
        ("garage bumps out", "garage, bumps out"),
        ("garage sticks out", "garage, sticks out"),
        ("garage projects", "garage, projects"),
    ];
    let begins = super::kinds::kind_word(&line.trim().split(' ').next()?.to_lowercase()).is_some()
        || ["car ", "garage", "porch", "deck"]
            .iter()
            .any(|word| line.to_lowercase().contains(word));
    FORMS.iter().filter(|_| begins && !line.contains('#')).find_map(|(form, whole)| {
        let at = line.to_ascii_lowercase().find(form)?;
        let (before, after) = (line.get(..at)?, line.get(at + form.len()..)?);
        let after = if whole.ends_with(' ') { after.trim_start() } else { after };
        let is_word = !before.ends_with(|c: char| c.is_alphanumeric()) && !is_quoted(before);
        // `sits back from the street`
        let is_far =
            !form.ends_with("back") || after.trim_start().starts_with(|c: char| c.is_ascii_digit());
        (is_word && is_far)
            .then(|| (format!("{before}{whole}{after}"), "the words about a place are written out"))
    })
}

/// `garage, couldn't get in, county says 484`: why it was not measured, beside its area on the record.
fn unseen(line: &str) -> Option<(String, &'static str)> {
    const SAYS: [&str; 9] = [
        "couldn't get in",
        "could not get in",
        "can't get in",
        "no access",
        "not measured",
        "locked",
        "could not enter",
        "not accessible",
        "didn't measure",
    ];
    const RECORD: [&str; 5] = ["county", "record", "card", "assessor", "cad"];
    let clauses: Vec<&str> = line.split([',', ';']).map(str::trim).collect();
    let [head, why, record] = clauses[..] else { return None };
    let is_head = head.split(' ').count() <= 3
        && super::kinds::kind_word(&head.split(' ').next_back()?.to_lowercase()).is_some();
    let is_why = SAYS.iter().any(|says| why.eq_ignore_ascii_case(says));
    let (whose, rest) = record.split_once(' ')?;
    let is_record = RECORD.iter().any(|word| whose.eq_ignore_ascii_case(word));
    let area = ["says ", "has ", "shows ", "record "]
        .iter()
        .find_map(|verb| rest.strip_prefix(verb))
        .unwrap_or(rest);
    let is_area = area.starts_with(|c: char| c.is_ascii_digit());
    (is_head && is_why && is_record && is_area && !line.contains(['"', '#'])).then(|| {
        (
            format!("{head} ({why}) {whose} {area}"),
            "the record's area of a part stands on the line of that space itself",
        )
    })
}

/// `basement walk-out 28x38`, `partial basement 15x20 SW corner`: what a basement is like stands before its word, and where
/// it lies in parentheses.
fn basement_first(line: &str) -> Option<(String, &'static str)> {
    const LIKE: [&str; 4] = ["walk-out", "walkout", "daylight", "partial"];
    let plain = line.trim();
    let size = super::kinds::size_in(plain)?.trim_end_matches([',', ' ']);
    let (before, after) = plain.split_once(size)?;
    let is = |word: &str, of: &[&str]| of.iter().any(|one| word.eq_ignore_ascii_case(one));
    let words: Vec<&str> = before.split([' ', ',', ':']).filter(|word| !word.is_empty()).collect();
    let noun = ["basement", "cellar", "bsmt"];
    let like = match words[..] {
        [one] if is(one, &noun) => "",
        [one, two] if is(one, &noun) && is(two, &LIKE) => two,
        [one, two] if is(one, &LIKE[3..]) && is(two, &noun) => one,
        _ => return None,
    };
    let after = after.trim_matches([',', ' ']);
    let says_corner = after.to_lowercase().split(' ').any(|word| word == "corner");
    if line.contains(['"', '#', '(']) || like.is_empty() && !says_corner {
        return None;
    }
    let is_partial = is(like, &LIKE[3..]);
    let named = match is_partial || like.is_empty() {
        true => format!("basement {size}"),
        false => format!("{like} basement {size}"),
    };
    let said: Vec<&str> = [if is_partial { like } else { "" }, after]
        .into_iter()
        .filter(|one| !one.is_empty())
        .collect();
    let said = if said.is_empty() { String::new() } else { format!(" ({})", said.join(" ")) };
    Some((format!("{named}{said}"), "a basement is a level, with its space and its walls below it"))
}

/// `barn 36x48 w/ loft`: with.
fn outbuilding_with(line: &str) -> Option<(String, &'static str)> {
    let first = line.trim().split(' ').next()?.to_lowercase();
    let is_one = super::kinds::kind_meant(&first) == Some("outbuilding");
    let at = line.find(" w/")?;
    let (before, after) = (line.get(..at)?, line.get(at + " w/".len()..)?);
    let is_word =
        after.trim_start().starts_with(|c: char| c.is_alphabetic()) && !after.starts_with("o ");
    (is_one && is_word && !is_quoted(before))
        .then(|| (format!("{before} with {}", after.trim_start()), "the words are written out"))
}
