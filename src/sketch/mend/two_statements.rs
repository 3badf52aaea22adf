//! Two statements on one line at the top of a file: `property "9 Alder Lane" account R-1204`. Each has a line of its own;
//! in a comment the second would be lost.

use super::change::Attempt;
use super::pieces::{Piece, Sort, cut};
use super::{Mend, mend, read_or_mended};

/// The words that begin a statement about the whole file, or a published area.
const FIRST: [&str; 14] = [
    "property",
    "address",
    "account",
    "acct",
    "case",
    "tax",
    "measured",
    "units",
    "front",
    "faces",
    "veneer",
    "tolerance",
    "record",
    "listing",
];

const FIGURES: [&str; 2] = ["record", "listing"];

/// How many more statements may stand on a line.
const MOST: usize = 3;

/// The two lines, if each reads or is answered with one line of its kind.
pub(super) fn answer(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let pieces = cut(line);
    if !pieces.first()?.is_word(&FIRST) {
        return None;
    }
    let begins = |at: &usize| {
        let word = &pieces[*at];
        let is_same = word.text.eq_ignore_ascii_case(&pieces[0].text);
        // `record 1,900 sq ft measured to inside` is one statement, and two areas are compared elsewhere.
        let is_of_figure = pieces[0].is_word(&FIGURES)
            && (word.is_word(&FIGURES) || word.is_word(&["measured", "faces"]));
        let is_tax = !word.is_word(&["tax"])
            || pieces.get(at + 1).is_some_and(|year| year.is_word(&["year"]));
        // `veneer brick front only, 4 5/8"`: which walls have it.
        let is_a_wall = pieces[0].is_word(&["veneer"]) && word.is_word(&["front"]);
        word.is_word(&FIRST) && !is_same && !is_of_figure && is_tax && !is_a_wall
    };
    // A line with more words that begin statements is none of several, and trying all ways to take it apart takes long.
    let splits: Vec<usize> = (2..pieces.len()).filter(begins).collect();
    if splits.len() > MOST {
        return None;
    }
    splits.into_iter().find_map(|at| {
        let before = line.get(..pieces[at].at)?.trim_end();
        let before = before.strip_suffix("and").unwrap_or(before).trim_end();
        let (before, after) = match before.strip_suffix('(') {
            Some(before) => (before, line.get(pieces[at].at..)?.trim_end().strip_suffix(')')?),
            None => (before, line.get(pieces[at].at..)?),
        };
        let before = before.trim_end().trim_end_matches([',', ';', '-', '–', '—', '/', '.']);
        let first = one(before, attempt)?;
        let after = after.trim();
        let second = match answer(after, attempt) {
            Some(more) => more.lines.into_iter().next()?,
            None => one(after, attempt)?,
        };
        Some(Mend {
            lines: vec![format!("{first}\n{second}")],
            cause: "each statement goes on a line of its own".to_owned(),
            ..Mend::default()
        })
    })
}

/// `one story brick, front faces south`: the street side, and a remark before or after it.
pub(super) fn street_and_remark(
    line: &str,
    attempt: &mut dyn FnMut(&str) -> Attempt,
) -> Option<Mend> {
    let (before, after) = line.split_once([',', ';'])?;
    // Of more parts each would be tried with all that follow it.
    if after.matches([',', ';']).count() > 2 {
        return None;
    }
    let (before, after) = (before.trim(), after.trim());
    [(before, after), (after, before)].into_iter().find_map(|(street, remark)| {
        let is_remark = !remark.contains(|c: char| c.is_ascii_digit() || c == '"' || c == ',');
        let speaks =
            cut(street).first()?.is_word(&["front", "street", "faces", "facing", "fronts"]);
        if !is_remark || !speaks {
            return None;
        }
        let front = one_of_street(street, attempt)?;
        Some(Mend {
            lines: vec![format!("{front}  # {remark}")],
            cause: "the street side is `front` and one word of the compass".to_owned(),
            ..Mend::default()
        })
    })
}

/// `foyer open to below, not counted`: what is open to below is deducted without a word for it.
pub(super) fn open_not_counted(
    line: &str,
    attempt: &mut dyn FnMut(&str) -> Attempt,
) -> Option<Mend> {
    const SAYS: [&str; 6] =
        ["not counted", "don't count", "do not count", "not included", "excluded", "uncounted"];
    let pieces = cut(line);
    let is_open = pieces.iter().any(|piece| piece.is_word(&["open", "void"]));
    let is_space =
        pieces.first()?.is_word(&["open", "void", "foyer", "atrium", "entry", "stairwell"]);
    let lower = line.to_lowercase();
    let said = SAYS.iter().find(|said| lower.trim_end_matches([')', '.', ' ']).ends_with(*said))?;
    let at = lower.rfind(said).filter(|_| is_open && is_space && lower.len() == line.len())?;
    let plain = line.get(..at)?.trim_end().trim_end_matches([',', ';', '(', '-', ' ']);
    let mended = read_or_mended(plain, attempt)?;
    let cause = "what is open to below is deducted by itself".to_owned();
    Some(Mend { cause, ..mended })
}

/// The line that says where the street is.
fn one_of_street(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<String> {
    let Mend { lines, .. } = read_or_mended(line, attempt)?;
    let [only] = &lines[..] else { return None };
    let is_front = only.starts_with("front ") && !only.contains(['#', '\n']);
    is_front.then(|| only.clone())
}

/// The line as it reads, or the only answer to it, if nothing of it would become a comment.
fn one(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<String> {
    let is_kept = |read: &str| !read.contains('#') && !read.contains('\n');
    if let Some(reads) = attempt(line).reads {
        return Some(reads).filter(|read| is_kept(read));
    }
    let word = |line: &str| cut(line).first().map(|word: &Piece| word.text.to_lowercase());
    let is_acct = |word: &str| word.replace("acct", "account");
    let Mend { lines, .. } = mend(line, attempt)?;
    let [only] = &lines[..] else { return None };
    let same = word(line).map(|word| is_acct(&word)) == word(only);
    let is_name = cut(only).get(1).is_some_and(|name| name.sort == Sort::Text);
    // A name that takes in all words of the line would take in what is no name as well.
    let is_short = !is_name || cut(line).len() <= 12;
    (same && is_kept(only) && is_short).then(|| only.clone())
}
