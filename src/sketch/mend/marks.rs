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

/// An answer without a bracket at the end of its comment that nothing opens: the other one became the `#`.
pub(super) fn with_whole_brackets(offered: String) -> String {
    let count = |text: &str, bracket: char| text.chars().filter(|one| *one == bracket).count();
    let one = |line: &str| match super::comment_of(line) {
        (_, Some(comment))
            if comment.ends_with(')') && count(comment, ')') > count(comment, '(') =>
        {
            line[..line.len() - 1].trim_end().to_owned()
        }
        _ => line.to_owned(),
    };
    if offered.contains(')') {
        offered.split('\n').map(one).collect::<Vec<_>>().join("\n")
    } else {
        offered
    }
}

/// A call of bare numbers with a point for the comma in its length: `N 2.25 E 61,40`.
pub(super) fn call_with_a_point(line: &str) -> Option<String> {
    let words: Vec<&str> = line.split_whitespace().collect();
    let [from, angle, toward, length] = words[..] else { return None };
    let is_one = |word: &str, of: [&str; 2]| of.iter().any(|one| word.eq_ignore_ascii_case(one));
    let (whole, part) = length.split_once(',')?;
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    let is_call = is_one(from, ["n", "s"])
        && is_one(toward, ["e", "w"])
        && digits(whole)
        && digits(part)
        && part.len() != 3;
    is_call.then(|| format!("{from} {} {toward} {whole}.{part}", angle.replace(',', ".")))
}
