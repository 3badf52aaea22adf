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
