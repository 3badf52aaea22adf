//! A title that also says that the lengths are in meters.

use super::change::Attempt;
use super::{Mend, kinds};

/// `16 Heron Lane, all in meters`, `Farm, metric`: the title, and the unit on a line of its own. As a comment alone it would
/// leave the lengths in feet.
pub(super) fn answer(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    const SAID: [&str; 14] = [
        "dimensions in meters",
        "lengths in meters",
        "all in meters",
        "all in metres",
        "all meters",
        "all metric",
        "all in m",
        "in meters",
        "in metres",
        "meters",
        "metres",
        "metric",
        "in m",
        "m",
    ];
    let lower = line.to_lowercase();
    let lower = lower.trim_end_matches([')', '.', ' ']);
    let said = SAID.iter().find(|said| lower.ends_with(*said))?;
    // The same bytes where nothing changes its length in lower case.
    let title = line.get(..lower.len().checked_sub(said.len())?)?;
    let bare = title.trim_end_matches([',', ';', '(', '-', '–', ' ']);
    let is_apart = bare.len() < title.trim_end().len();
    if bare.is_empty() || !is_apart || kinds::measures(bare) || bare.contains('#') {
        return None;
    }
    let first = attempt(line);
    if first.space.is_some() || first.is_metric {
        return None;
    }
    let is_name = bare.chars().all(|c| c.is_alphanumeric() || " .'’&-".contains(c))
        && bare.contains(char::is_alphabetic)
        && super::may_be_name(bare)
        && !first.knows_first;
    let mended = match attempt(bare).reads {
        Some(reads) => Mend { lines: vec![reads], ..Mend::default() },
        None => match super::mend(bare, attempt) {
            Some(mended) if !mended.lines.is_empty() => mended,
            _ if is_name && kinds::kind_word(&bare.to_lowercase()).is_none() => {
                Mend { lines: vec![format!("property \"{bare}\"")], ..Mend::default() }
            }
            _ => return None,
        },
    };
    let heads = ["property ", "address ", "place "];
    let lines: Vec<String> = mended
        .lines
        .iter()
        .filter(|line| heads.iter().any(|head| line.starts_with(head)))
        .map(|line| format!("units meters\n{line}"))
        .collect();
    let cause =
        "the unit of numbers without a mark is a line of its own, `units meters`".to_owned();
    (!lines.is_empty()).then(|| Mend { lines, cause, ..Mend::default() })
}

/// `measured 2026-05-09 by owner in meters`, `measured in meters 5/9/26`: the unit of numbers without a mark, beside who
/// measured and when.
pub(super) fn measured(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    const UNITS: [(&str, &str); 10] = [
        ("meters", "meters"),
        ("metres", "meters"),
        ("meter", "meters"),
        ("metre", "meters"),
        ("metric", "meters"),
        ("centimeters", "centimeters"),
        ("centimetres", "centimeters"),
        ("cm", "centimeters"),
        ("millimeters", "millimeters"),
        ("millimetres", "millimeters"),
    ];
    let pieces = super::cut(line);
    let is = |at: usize, words: &[&str]| pieces.get(at).is_some_and(|piece| piece.is_word(words));
    if !is(0, &["measured", "taped", "measurements"]) || line.contains('#') {
        return None;
    }
    let found = (1..pieces.len())
        .find_map(|at| Some((at, UNITS.iter().find(|(word, _)| is(at, &[word]))?.1)));
    let (at, unit) = found?;
    let before = at.checked_sub(1)?;
    let is_in = is(before, &["in"]);
    let is_apart = is_in || pieces[before].is_mark("(,;") || is(at + 1, &["units"]);
    let mut first = at - usize::from(is_in || pieces[before].is_mark("(,;"));
    while first > 1 && is(first - 1, &["all", "everything", "dimensions", "lengths", "done"]) {
        first -= 1;
    }
    let last = at + 1 + usize::from(is(at + 1, &["units"]));
    let last = last + usize::from(pieces.get(last).is_some_and(|mark| mark.is_mark(")")));
    let has_day = pieces.iter().any(super::pieces::Piece::is_number);
    let tried = attempt(line);
    if !is_apart || !has_day || tried.space.is_some() {
        return None;
    }
    let before = line.get(..pieces.get(first)?.at)?.trim_end();
    let before = before.trim_end_matches([',', ';', '(']).trim_end();
    let after = pieces.get(last).and_then(|piece| line.get(piece.at..)).unwrap_or_default();
    let after = after.trim_start_matches([',', ';', ' ']);
    let plain = format!("{before} {after}").trim_end().to_owned();
    let mended = super::read_or_mended(&plain, attempt)?;
    let [only] = &mended.lines[..] else { return None };
    let is_known = tried.is_metric && unit == "meters";
    (only.starts_with("measured ") && !only.contains('\n')).then(|| Mend {
        lines: vec![if is_known { only.clone() } else { format!("{only}\nunits {unit}") }],
        cause: match is_known {
            true => "the file says already what its numbers are".to_owned(),
            false => "the unit of bare numbers is `units`, on a line of its own".to_owned(),
        },
        ..Mend::default()
    })
}

/// `15.2 x 10.1 m`, `15.2 m by 10.1`: a size with its metric unit after both lengths; the first would be in feet.
pub(super) fn with_both_units(line: &str) -> Option<String> {
    const UNITS: [&str; 7] = ["m", "meters", "metres", "meter", "metre", "cm", "mm"];
    let pieces = super::cut(line);
    let by =
        |at: usize| pieces.get(at).is_some_and(|by| by.is_word(&["x", "by"]) || by.is_mark("×*"));
    let number = |at: usize| pieces.get(at).is_some_and(super::pieces::Piece::is_number);
    let unit = |at: usize| pieces.get(at).filter(|unit| unit.is_word(&UNITS));
    (0..pieces.len()).find_map(|at| {
        // Of a square measure the word is another.
        if number(at) && by(at + 1) && number(at + 2) {
            let unit = unit(at + 3)?;
            let end = pieces[at].at + pieces[at].text.len();
            return Some(format!("{} {}{}", &line[..end], unit.text, &line[end..]));
        }
        let lacks = number(at) && by(at + 2) && number(at + 3) && {
            let next = pieces.get(at + 4);
            !next.is_some_and(|next| {
                next.is_word(&UNITS)
                    || next.is_word(&["ft", "feet", "foot", "in", "inches"])
                    || next.is_mark("'’′\"”″") && next.touches
            })
        };
        let unit = unit(at + 1).filter(|_| lacks)?;
        let end = pieces[at + 3].at + pieces[at + 3].text.len();
        Some(format!("{} {}{}", &line[..end], unit.text, &line[end..]))
    })
}
