//! Marks of feet and inches as other keyboards have them.

/// What is wrong with a line that reads once its marks are plain.
pub(super) const CAUSE: &str = "feet take `'` and inches `\"`";

/// Marks that stand for feet, and two of them in a row for inches.
const FEET: &str = "'’‘′´`ʹˈ";
/// Marks that stand for inches.
const INCHES: &str = "ʺ˝‶″";

/// The line with plain marks after its numbers: `28''` becomes `28"`, `9·5` becomes `9.5`. Texts stay as they are.
pub(super) fn evened(line: &str) -> String {
    let line = dashes_evened(line);
    let mut out = String::with_capacity(line.len());
    let mut inside = false;
    let mut rest = line.chars().peekable();
    while let Some(c) = rest.next() {
        let after_number =
            out.ends_with(|last: char| last.is_ascii_digit() || "½¼¾⅛⅜⅝⅞".contains(last));
        let next_is_digit = rest.peek().is_some_and(char::is_ascii_digit);
        match c {
            '"' => {
                inside = !inside && !after_number;
                out.push(c);
            }
            _ if inside || !after_number => out.push(c),
            c if FEET.contains(c) && rest.peek().is_some_and(|next| FEET.contains(*next)) => {
                while rest.peek().is_some_and(|next| FEET.contains(*next)) {
                    rest.next();
                }
                out.push('"');
            }
            'ʹ' | 'ˈ' => out.push('\''),
            c if INCHES.contains(c) => out.push('"'),
            '·' if next_is_digit => out.push('.'),
            c => out.push(c),
        }
    }
    out
}

/// A line without the parentheses around all of it, with its names between `"` instead of `'`, with acres in decimals or
/// without a `/` between two lengths of a place, and what was wrong. `None` if it has none of these.
pub(super) fn plain(line: &str) -> Option<(String, &'static str)> {
    let whole = line.trim().strip_prefix('(').and_then(|inner| inner.strip_suffix(')'));
    if let Some(inner) = whole.filter(|inner| !inner.contains(['(', ')'])) {
        return Some((
            inner.trim().to_owned(),
            "a line of a sides file has no parentheses around it",
        ));
    }
    if let Some(named) = names_in_double_quotes(line) {
        return Some((named, "a name has a `\"` on each side"));
    }
    if let Some(decimal) = acres_in_decimals(line) {
        return Some((decimal, "acres are written with decimals"));
    }
    // `north 9.4 m/ east 2 m`: both lengths of a place.
    let ways = ["north", "east", "south", "west", "back", "front", "left", "right"];
    let (before, after) = line.split_once('/')?;
    let next = after.trim_start();
    let goes_on = ways.iter().any(|way| next.to_lowercase().starts_with(&format!("{way} ")));
    let is_length = before.trim_end().ends_with(['m', '\'', '"', 't', 'n', '’', '”']);
    (goes_on && is_length && before.contains(|c: char| c.is_ascii_digit())).then(|| {
        let line = format!("{} {next}", before.trim_end());
        (line, "the two lengths of a place follow each other without a mark")
    })
}

/// `porch 12-6 x 4`, `deck 12 1/2 x 10-0`: a size with its feet and inches as a sides file has them, and what was wrong.
fn dashed_size(line: &str) -> Option<(String, &'static str)> {
    let is_by = |text: &str| matches!(text, "x" | "X" | "×" | "by");
    let words: Vec<&str> = line.split(' ').collect();
    let whole = |text: &str| {
        let is_small = (1..=3).contains(&text.len()) && text.bytes().all(|c| c.is_ascii_digit());
        is_small.then(|| text.parse::<u32>().ok()).flatten()
    };
    // `12-6`
    let dashed = |word: &str| {
        let (feet, inches) = word.trim_end_matches([',', ';']).split_once('-')?;
        let (feet, inches) = (whole(feet)?, whole(inches).filter(|inches| *inches < 12)?);
        let end = word.get(word.trim_end_matches([',', ';']).len()..).unwrap_or_default();
        Some(match inches {
            0 => format!("{feet}'{end}"),
            _ => format!("{feet}' {inches}\"{end}"),
        })
    };
    let half = |word: &str| match word {
        "1/2" => Some(6),
        "1/4" => Some(3),
        "3/4" => Some(9),
        _ => None,
    };
    let mut out: Vec<String> = Vec::new();
    let (mut at, mut changed) = (0, false);
    let by = |at: usize| words.get(at).is_some_and(|word| is_by(word));
    while let Some(word) = words.get(at) {
        let after_by = at.checked_sub(1).is_some_and(by);
        // `12 1/2 x 10`
        let parts = whole(word).zip(words.get(at + 1).and_then(|word| half(word)));
        if let Some((feet, inches)) = parts.filter(|_| after_by || by(at + 2)) {
            out.push(format!("{feet}' {inches}\""));
            (at, changed) = (at + 2, true);
            continue;
        }
        let beside = after_by || by(at + 1);
        match dashed(word).filter(|_| beside) {
            Some(even) => {
                out.push(even);
                changed = true;
            }
            None => out.push((*word).to_owned()),
        }
        at += 1;
    }
    // The other length is in feet too.
    let at_by = out.iter().position(|word| is_by(word)).filter(|_| changed)?;
    for at in [at_by.checked_sub(1)?, at_by + 1] {
        let Some(word) = out.get_mut(at) else { continue };
        let number = word.trim_end_matches([',', ';']);
        if whole(number).is_some() {
            *word = format!("{number}'{}", word.get(number.len()..).unwrap_or_default());
        }
    }
    Some((out.join(" "), "feet take `'` and inches `\"`"))
}

/// `north 30' note "the 6" pipe"`: a text without the inch mark in it, and what was wrong.
fn inches_in_a_text(line: &str) -> Option<(String, &'static str)> {
    let at = ["note \"", "photo \""]
        .iter()
        .find_map(|word| line.find(&format!(" {word}")).map(|at| at + word.len() + 1))?;
    let end = line.trim_end().rfind('"').filter(|end| *end > at)?;
    let (before, text, after) = (line.get(..at)?, line.get(at..end)?, line.get(end..)?);
    let digit = |c: char| c.is_ascii_digit() || "½¼¾⅛⅜⅝⅞".contains(c);
    let marks: Vec<usize> = text.match_indices('"').map(|(at, _)| at).collect();
    let all_inches = marks.iter().all(|&at| {
        let next = text.get(at + 1..).and_then(|rest| rest.chars().next());
        text.get(..at).is_some_and(|before| before.ends_with(digit))
            && next.is_none_or(|next| !next.is_alphanumeric())
    });
    // Two texts, each with its own marks.
    let is_one = !text.contains("note \"") && !text.contains("photo \"") && !text.contains('#');
    (!marks.is_empty() && all_inches && is_one).then(|| {
        let text = text.replace('"', " in");
        (format!("{before}{text}{after}"), "no inch mark stands in a text, since it would end it")
    })
}

/// Letters of a record card or a pad at the start of a line, and the words for them.
///
/// Common practice of assessment offices.
const LETTERS: [(&str, &str); 11] = [
    ("AG", "attached garage"),
    ("DG", "detached garage"),
    ("OP", "porch"),
    ("EP", "porch"),
    ("CP", "carport"),
    ("WD", "deck"),
    ("BSMT", "basement"),
    ("BSMNT", "basement"),
    ("ATT.", "attached"),
    ("DET.", "detached"),
    ("UNFIN.", "unfinished"),
];

/// `AG 484`, `OP "Open porch" 6 x 20`, `open porch "Porch" 6 x 20`, `garage "G" 22 x 22 detatched`: the line in whole
/// words, and what was wrong.
fn spelled_out(line: &str) -> Option<(String, &'static str)> {
    const CAUSE: &str = "a line is in whole words";
    let (first, rest) = line.split_once(' ')?;
    // `HS exemption 140,000`: what it is called comes after its sum.
    let has_sum = rest.contains('$') || rest.contains(",000");
    if first == "HS" && rest.to_lowercase().starts_with("exemption ") && has_sum {
        return Some((rest.to_owned(), CAUSE));
    }
    let words = LETTERS.iter().find(|(letters, _)| {
        *letters == first || letters.len() > 3 && letters.eq_ignore_ascii_case(first)
    });
    let is_next = |c: char| c.is_ascii_digit() || c == '"';
    if let Some((_, words)) = words.filter(|_| rest.trim_start().starts_with(is_next)) {
        return Some((format!("{words} {rest}"), CAUSE));
    }
    // `open` alone would be what is open to below.
    let lower = line.to_lowercase();
    if let Some(rest) =
        lower.strip_prefix("open porch ").and_then(|_| line.get("open porch ".len()..))
    {
        let name = if rest.starts_with('"') { String::new() } else { "\"Open porch\" ".to_owned() };
        return Some((
            format!("porch {name}{rest}"),
            "a porch is `porch`; `open` is what is open to the floor below",
        ));
    }
    let misspelled = [
        "detatched",
        "dettached",
        "deatached",
        "detacthed",
        "dettatched",
        "seperate",
        "seperated",
        "seperately",
        "freestading",
    ];
    let mut changed = false;
    let words: Vec<&str> = line
        .split(' ')
        .map(|word| match misspelled.contains(&word.to_lowercase().as_str()) {
            true => {
                changed = true;
                "detached"
            }
            false => word,
        })
        .collect();
    changed.then(|| (words.join(" "), "what stands by itself is `detached`"))
}

/// `E40' N30' W40' S30'`: three walls or more, each way apart from its length, and what was wrong.
fn ways_apart(line: &str) -> Option<(String, &'static str)> {
    let words: Vec<&str> = line.split([' ', ',', ';']).filter(|word| !word.is_empty()).collect();
    let apart = |word: &&str| {
        let (way, length) = word.split_at_checked(1)?;
        let is_way = "NESWnesw".contains(way);
        let is_length = length.starts_with(|c: char| c.is_ascii_digit())
            && !length.contains(|c: char| c.is_alphabetic() || "°º".contains(c));
        (is_way && is_length).then(|| format!("{way} {length}"))
    };
    let walls: Vec<String> = words.iter().map_while(apart).collect();
    (walls.len() > 2 && walls.len() == words.len())
        .then(|| (walls.join(" "), "each side goes on its own line"))
}

/// `great room open to below "Great room" start north 5'`: what is open begins with `open`, and what was wrong.
fn open_after_its_room(line: &str) -> Option<(String, &'static str)> {
    let lower = line.to_lowercase();
    let at = ["open to below", "open to above", "open below"]
        .iter()
        .find_map(|said| lower.find(said).filter(|at| *at > 0).map(|at| at + said.len()))?;
    let rest =
        line.get(at..)?.trim_start().strip_prefix(':').unwrap_or(line.get(at..)?).trim_start();
    rest.starts_with('"').then(|| {
        (format!("open {rest}"), "what is open to the floor below is `open`, and its name follows")
    })
}

/// `north,30.5,31`: the cells of a sheet, which a comma may also join to one number, and what was wrong.
fn cells(line: &str) -> Option<(String, &'static str)> {
    let parts: Vec<&str> = line.trim().split(',').collect();
    let is_number =
        |text: &&str| !text.is_empty() && text.chars().all(|c| c.is_ascii_digit() || c == '.');
    let way = parts.first().and_then(|way| super::compass::way_and_back(way));
    // `east,20,2` may be 20' 2" or 20.2.
    let is_length = parts.last().is_some_and(|last| last.contains('.') || last.len() > 1);
    let is_row = way.is_some() && parts.len() == 3 && parts[1..].iter().all(is_number);
    (is_row && is_length).then(|| {
        (
            parts.join("\t"),
            "these are the cells of a table; a line is words with spaces between them",
        )
    })
}

/// `record "1,200" sq ft`: a number between quotation marks, and what was wrong.
fn quoted_area(line: &str) -> Option<(String, &'static str)> {
    let (word, rest) = line.split_once(" \"")?;
    let (number, after) = rest.split_once('"')?;
    let is_figure = matches!(word.to_lowercase().as_str(), "record" | "listing" | "plan");
    let is_number =
        !number.is_empty() && number.chars().all(|c| c.is_ascii_digit() || matches!(c, ',' | '.'));
    (is_figure && is_number)
        .then(|| (format!("{word} {number}{after}"), "a number stands without quotation marks"))
}

/// `measured 07-MAR-2026 with total station`: the month in letters, and what was wrong.
fn month_in_letters(line: &str) -> Option<(String, &'static str)> {
    let word = line.split(' ').find(|word| {
        let parts: Vec<&str> = word.split('-').collect();
        matches!(&parts[..], [day, month, year]
            if (1..=2).contains(&day.len()) && month.len() > 2 && year.len() == 4
                && day.bytes().chain(year.bytes()).all(|c| c.is_ascii_digit())
                && month.chars().all(char::is_alphabetic))
    })?;
    let mut parts = word.split('-');
    let (day, month, year) = (parts.next()?, parts.next()?, parts.next()?);
    let month = super::kinds::month_named(&month.to_lowercase())?;
    let date = format!("{year}-{month:02}-{day:0>2}");
    Some((line.replacen(word, &date, 1), "a date is written year-month-day"))
}

/// `N 0°30' E 120.00' (R) 119.95' (M)`: the record's length and the measured one, and what was wrong.
fn record_and_measured(line: &str) -> Option<(String, &'static str)> {
    const RECORD: [&str; 5] = ["(r)", "(rec)", "(record)", "(deed)", "(d)"];
    const MEASURED: [&str; 5] = ["(m)", "(meas)", "(measured)", "(field)", "(f)"];
    let words: Vec<&str> = line.split(' ').filter(|word| !word.is_empty()).collect();
    let is_one = |at: usize, of: &[&str]| {
        words.get(at).is_some_and(|word| of.contains(&word.to_lowercase().as_str()))
    };
    let last = words.len();
    let first = last.checked_sub(4)?;
    let (record, measured) = if is_one(first + 1, &RECORD) && is_one(first + 3, &MEASURED) {
        (words[first], words[first + 2])
    } else if is_one(first + 1, &MEASURED) && is_one(first + 3, &RECORD) {
        (words[first + 2], words[first])
    } else {
        return None;
    };
    let is_length = |text: &str| text.starts_with(|c: char| c.is_ascii_digit());
    (first > 0 && is_length(record) && is_length(measured)).then(|| {
        let begin = words[..first].join(" ");
        (
            format!("{begin} {measured} recorded {record}"),
            "the length that was measured comes first, and the record's after `recorded`",
        )
    })
}

/// `diagonal 4' 2" north east`, `diagonal north 3' by 3' east`: the two ways of a slanted wall, and what was wrong.
fn slant_in_two_words(line: &str) -> Option<(String, &'static str)> {
    let lower = line.to_lowercase();
    let rest = lower.strip_prefix("diagonal ")?;
    let ways = ["north", "south"]
        .iter()
        .flat_map(|one| ["east", "west"].iter().map(move |two| (*one, *two)));
    for (one, two) in ways {
        if let Some(length) = rest.strip_suffix(&format!(" {one} {two}")) {
            let plain = !length.contains("north") && !length.contains("south");
            return plain.then(|| {
                (format!("diagonal {length} {one}{two}"), "a way between two others is one word")
            });
        }
        for (first, last) in [(one, two), (two, one)] {
            let between = rest.strip_prefix(first).and_then(|rest| rest.strip_suffix(last));
            if let Some((a, b)) = between.and_then(|between| between.split_once(" by ")) {
                return Some((
                    format!("diagonal {first} {} {last} {}", a.trim(), b.trim()),
                    "a `diagonal` has each way before its length",
                ));
            }
        }
    }
    None
}

/// A line with one thing in it as a sides file has it, as the first of these rules has it, and what was wrong.
pub(super) fn in_its_form(line: &str) -> Option<(String, &'static str)> {
    dashed_size(line)
        .or_else(|| without_its_number(line))
        .or_else(|| inches_in_a_text(line))
        .or_else(|| ways_apart(line))
        .or_else(|| open_after_its_room(line))
        .or_else(|| cells(line))
        .or_else(|| quoted_area(line))
        .or_else(|| month_in_letters(line))
        .or_else(|| record_and_measured(line))
        .or_else(|| slant_in_two_words(line))
        .or_else(|| spelled_out(line))
}

/// `2. north 28'`, `side 6 north 28'`: a wall without the number before it, and what was wrong.
fn without_its_number(line: &str) -> Option<(String, &'static str)> {
    let (first, rest) = line.trim_start().split_once(' ')?;
    let is_number =
        |text: &str| (1..=2).contains(&text.len()) && text.bytes().all(|c| c.is_ascii_digit());
    let numbered = first.strip_suffix(['.', ')']).filter(|number| is_number(number));
    let rest = match numbered {
        Some(_) => rest,
        None if matches!(first.to_lowercase().as_str(), "side" | "wall" | "leg" | "line") => {
            let (number, rest) = rest.trim_start().split_once(' ')?;
            let number = number.trim_end_matches([':', '.', ')']);
            Some(rest).filter(|_| is_number(number))?
        }
        None => return None,
    };
    let rest = rest.trim_start();
    let mut words = rest.split(|c: char| !c.is_alphabetic());
    let is_wall = super::compass::way_and_back(words.next()?).is_some();
    is_wall.then(|| (rest.to_owned(), "sides are numbered by the program, in their order"))
}

/// `recorded 1 1/4 acres`: an area in fractions of an acre, to a thousandth. `None` if the line has none.
fn acres_in_decimals(line: &str) -> Option<String> {
    let words: Vec<&str> = line.split(' ').collect();
    let unit = words.iter().position(|word| {
        ["acre", "acres", "ac", "ac.", "ac,", "acre,", "acres,"]
            .contains(&word.to_lowercase().as_str())
    })?;
    let (top, bottom) = words.get(unit.checked_sub(1)?)?.split_once('/')?;
    let (top, bottom): (u32, u32) = (top.parse().ok()?, bottom.parse().ok()?);
    let before = unit.checked_sub(2).and_then(|at| words.get(at)?.parse::<u32>().ok());
    let first = unit - 1 - usize::from(before.is_some());
    let whole = before.unwrap_or(0);
    if bottom == 0 || top >= bottom || bottom > 64 || whole > 10_000 {
        return None;
    }
    let thousandths = (2_000 * top + bottom).div_euclid(2 * bottom);
    let number = format!("{whole}.{thousandths:03}");
    let number = number.trim_end_matches('0');
    let parts = [&words[..first], &[number, "acres"], &words[unit + 1..]].concat();
    Some(parts.join(" "))
}

/// `garage 'Garage' within 'House'`: each word or words between two single marks. A mark after a digit is one of feet,
/// and one within a word belongs to it.
fn names_in_double_quotes(line: &str) -> Option<String> {
    if line.contains('"') {
        return None;
    }
    let is_mark = |c: char| matches!(c, '\'' | '‘' | '’' | '`');
    let (mut out, mut rest, mut changed) = (String::new(), line, false);
    while let Some(at) = rest.find(is_mark) {
        let (before, marked) = rest.split_at(at);
        let mark = marked.chars().next().map_or(1, char::len_utf8);
        let after = marked.get(mark..).unwrap_or_default();
        let opens = (before.is_empty() && out.is_empty() || before.ends_with([' ', ':', '(']))
            && after.starts_with(char::is_alphabetic);
        let end = after.match_indices(is_mark).map(|(end, _)| end).find(|end| {
            let left = after.get(*end..).unwrap_or_default();
            let next = left.chars().nth(1);
            next.is_none_or(|c| !c.is_alphanumeric())
        });
        out.push_str(before);
        match end.filter(|_| opens) {
            Some(end) => {
                let (name, left) = after.split_at(end);
                let mark = left.chars().next().map_or(1, char::len_utf8);
                out.push_str(&format!("\"{name}\""));
                rest = left.get(mark..).unwrap_or_default();
                changed = true;
            }
            None => {
                out.push_str(marked.get(..mark).unwrap_or_default());
                rest = after;
            }
        }
    }
    out.push_str(rest);
    changed.then_some(out)
}

/// A line with one thing in it as a sides file has it, and what was wrong: a number without the `+/-` after it, an area
/// right after `recorded`, cells without the marks between them, a remark after a comma instead of an arrow, sums in
/// digits. `None` if it has none of these.
pub(super) fn simpler(line: &str) -> Option<(String, &'static str)> {
    let trimmed = line.trim_end();
    for ending in ["+/-", "+-", "±", "-/+", " m/l", " more or less"] {
        let before = trimmed.strip_suffix(ending).map(str::trim_end);
        if let Some(before) = before.filter(|before| !before.is_empty()) {
            return Some((before.to_owned(), "a number stands without `+/-` or the like after it"));
        }
    }
    for said in ["recorded as ", "recorded at ", "recorded is ", "recorded: "] {
        if line.contains(said) {
            return Some((
                line.replacen(said, "recorded ", 1),
                "the area stands right after `recorded`",
            ));
        }
    }
    if line.contains('|') {
        return Some((line.replace('|', " "), "`|` has no meaning in a sides file"));
    }
    for arrow in ["-->", "->", "=>", "→", "<--", "<-", "←"] {
        if let Some((before, after)) = line.split_once(arrow) {
            let is_remark =
                !after.contains(|c: char| c.is_ascii_digit()) && !after.trim().is_empty();
            if is_remark {
                return Some((
                    format!("{}, {}", before.trim_end(), after.trim()),
                    "a remark stands after `note`, between two `\"`",
                ));
            }
        }
    }
    thousands(line).map(|line| (line, "a sum is written in digits"))
}

/// A line with its sums in digits: `$405K` becomes `$405,000`.
fn thousands(line: &str) -> Option<String> {
    let (mut out, mut changed) = (String::new(), false);
    for word in line.split_inclusive(' ') {
        let body = word.trim_end_matches([' ', ',', ';']);
        let tail = word.get(body.len()..).unwrap_or_default();
        let digits = body.strip_prefix('$').and_then(|sum| sum.strip_suffix(['k', 'K']));
        let is_sum = |digits: &&str| {
            (1..=4).contains(&digits.len()) && digits.bytes().all(|b| b.is_ascii_digit())
        };
        match digits.filter(is_sum) {
            Some(digits) => {
                out.push_str(&format!("${digits},000{tail}"));
                changed = true;
            }
            None => out.push_str(word),
        }
    }
    changed.then_some(out)
}

/// What is wrong with a line that reads once its fractions are plain.
pub(super) const ORDINAL: &str = "a fraction is written in digits alone";

/// A line without the endings of its fractions: `11 1/16th"` becomes `11 1/16"`. `None` if it has none.
pub(super) fn without_ordinals(line: &str) -> Option<String> {
    let mut out = String::with_capacity(line.len());
    let mut rest = line;
    let mut changed = false;
    while let Some(at) = rest.find('/') {
        let (before, after) = rest.split_at(at + 1);
        out.push_str(before);
        let digits = after.len() - after.trim_start_matches(|c: char| c.is_ascii_digit()).len();
        let is_fraction =
            digits > 0 && before.trim_end_matches('/').ends_with(|c: char| c.is_ascii_digit());
        let (number, tail) = after.split_at(digits);
        out.push_str(number);
        let ending = ["ths", "th", "nds", "nd", "rds", "rd"].into_iter().find(|ending| {
            let follows = tail.get(ending.len()..).unwrap_or_default();
            tail.starts_with(*ending) && !follows.starts_with(|c: char| c.is_alphanumeric())
        });
        let ending = ending.filter(|_| is_fraction).map_or(0, str::len);
        changed |= ending > 0;
        rest = tail.get(ending..).unwrap_or_default();
    }
    out.push_str(rest);
    changed.then_some(out)
}

/// A line copied from the source of a web page with its characters in place of their codes: `32&#39; 4&quot;` is
/// `32' 4"`. `None` if it has no such code.
pub(in crate::sketch) fn decoded(line: &str) -> Option<String> {
    let mut out = String::with_capacity(line.len());
    let mut rest = line;
    let mut has_code = false;
    while let Some(at) = rest.find('&') {
        let (before, code) = rest.split_at(at);
        out.push_str(before);
        let end = code.find(';').filter(|end| *end <= 8);
        let known = end.and_then(|end| Some((character(code.get(1..end)?)?, end)));
        match known {
            Some((c, end)) => {
                has_code = true;
                out.push(c);
                rest = &code[end + 1..];
            }
            None => {
                out.push('&');
                rest = &code[1..];
            }
        }
    }
    out.push_str(rest);
    has_code.then_some(out)
}

/// The character that a code of the HTML standard (13.5, named character references) stands for.
fn character(code: &str) -> Option<char> {
    if let Some(number) = code.strip_prefix('#') {
        let hexadecimal =
            number.strip_prefix(['x', 'X']).map(|digits| u32::from_str_radix(digits, 16));
        let value = hexadecimal.unwrap_or_else(|| number.parse()).ok()?;
        return char::from_u32(value).filter(|c| !c.is_control());
    }
    Some(match code {
        "apos" | "rsquo" | "lsquo" => '\'',
        "quot" | "rdquo" | "ldquo" => '"',
        "prime" => '′',
        "Prime" => '″',
        "nbsp" => ' ',
        "amp" => '&',
        "deg" => '°',
        "frac12" | "half" => '½',
        "frac14" => '¼',
        "frac34" => '¾',
        "times" => '×',
        "ndash" => '–',
        "mdash" => '—',
        "sup2" => '²',
        _ => return None,
    })
}

/// The line with a space in place of each long or doubled dash between feet and inches, `25'—4"`, `25 ft -- 4 in`, and
/// with a short one between two numbers.
fn dashes_evened(line: &str) -> std::borrow::Cow<'_, str> {
    if !line.contains(['—', '―', '‒', '‑', '⁃', '﹘']) && !line.contains("--") {
        return line.into();
    }
    let mut out = String::with_capacity(line.len());
    let mut rest = line;
    while let Some(c) = rest.chars().next() {
        let length =
            rest.len() - rest.trim_start_matches(['—', '―', '‒', '‑', '⁃', '﹘', '-']).len();
        let is_long = length > 1;
        let before = out.trim_end();
        let after_feet = before.ends_with(|c: char| FEET.contains(c) || c.is_ascii_digit())
            || ["ft", "feet", "foot", "ft."]
                .iter()
                .any(|unit| before.to_lowercase().ends_with(unit));
        let next = rest.get(length..).unwrap_or_default().trim_start();
        let after_mark = !before.ends_with(|c: char| c.is_ascii_digit());
        if is_long && after_feet && next.starts_with(|c: char| c.is_ascii_digit()) {
            if after_mark {
                out.truncate(before.len());
            }
            out.push(if after_mark { ' ' } else { '-' });
            rest = if after_mark { next } else { rest.get(length..).unwrap_or_default() };
        } else {
            out.push(c);
            rest = rest.get(c.len_utf8()..).unwrap_or_default();
        }
    }
    out.into()
}
