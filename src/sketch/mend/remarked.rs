//! A line that reads up to a remark: the part that reads stays as it was typed, and the remark becomes a comment.

use super::pieces::{Piece, Sort, cut};
use super::{Attempt, Mend, comment_of, keeps, kinds, known, search};

pub(super) const CAUSE: &str = "a remark goes to the end of the line, after a `#`";

/// Words that say something in a line, so that no remark begins with one or has it in it.
pub(super) const SAYS: [&str; 52] = [
    "recorded",
    "start",
    "starts",
    "from",
    "within",
    "detached",
    "counted",
    "counting",
    "count",
    "counts",
    "measured",
    "veneer",
    "grade",
    "beside",
    "by",
    "with",
    "using",
    "per",
    "sold",
    "on",
    "year",
    "since",
    "under",
    "out",
    "flat",
    "round",
    "rise",
    "corner",
    "tolerance",
    "estimated",
    "common",
    "photo",
    "note",
    "file",
    "market",
    "assessed",
    "improvement",
    "new",
    "to",
    "of",
    "is",
    "=",
    "brick",
    "include",
    "includes",
    "including",
    "incl",
    "and",
    "or",
    "plus",
    "but",
    "x",
];

/// Heads that have no length, so that a length after one is a remark.
const WITHOUT_LENGTH: [&str; 12] = [
    "property",
    "address",
    "account",
    "case",
    "tax",
    "measured",
    "interior",
    "homestead",
    "notice",
    "last",
    "exemption",
    "value",
];

fn says_more(rest: &[Piece]) -> bool {
    rest.iter().any(|piece| piece.is_word(&SAYS) || piece.sort == Sort::Text)
}

pub(super) fn plain_remark(text: &str) -> String {
    kinds::remark(text).trim_end_matches([',', ';', ' ']).to_owned()
}

/// A bay that reads up to a remark, or a line about a day or a value that reads up to one in brackets.
pub(super) fn after_a_bay(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let first = line.split_whitespace().next()?;
    let closed = line.trim_end().ends_with([')', ']']);
    let heads = [
        "measured",
        "last",
        "notice",
        "homestead",
        "interior",
        "comparable",
        "exemption",
        "value",
        "tie",
    ];
    let is_whole = first.eq_ignore_ascii_case("bay")
        || closed && heads.iter().any(|head| first.eq_ignore_ascii_case(head));
    is_whole.then(|| after_a_whole_line(line, attempt))?
}

/// The line as far as it reads, and the rest as a comment, for lines whose end is sure: a bay, a call, a rate, a day.
pub(super) fn after_a_whole_line(
    line: &str,
    attempt: &mut dyn FnMut(&str) -> Attempt,
) -> Option<Mend> {
    let pieces = cut(line);
    let heads = [
        "bay",
        "arc",
        "diagonal",
        "bearing",
        "tie",
        "tax",
        "exemption",
        "homestead",
        "notice",
        "last",
        "value",
        "comparable",
        "measured",
        "interior",
    ];
    let head = pieces.first().filter(|head| head.is_word(&heads))?;
    let (end, said) = (2..pieces.len()).rev().find_map(|end| {
        let said = line.get(..pieces[end].at)?.trim_end();
        attempt(said).reads.map(|reads| (end, reads))
    })?;
    let rest = &pieces[end..];
    let text = line.get(pieces[end].at..)?;
    // What follows a rate is its name, and what follows these may be another part of the line.
    let needs_mark = head.is_word(&["measured", "value", "comparable", "exemption", "tax"]);
    let is_rate = pieces[1].is_word(&["rate"]);
    let has_sum = rest.iter().any(|piece| {
        piece.is_mark("$") || piece.is_number() && piece.text.replace(',', "").len() > 4
    });
    if is_rate || has_sum || needs_mark && !rest[0].is_mark(",;([—-–@=*") {
        return None;
    }
    let is_bracketed = rest[0].is_mark("([") && rest.last().is_some_and(|last| last.is_mark(")]."));
    // A number that touches what reads belongs to it, and so do a sign and a second number right after it.
    // After a bay only the words of a side say something.
    let is_bay = head.is_word(&["bay", "arc"]);
    let says_more = |rest: &[Piece]| match is_bay {
        true => rest.iter().any(|piece| piece.is_word(&crate::sketch::parser::SIDE_WORDS)),
        false => says_more(rest),
    };
    let is_joined = rest[0].touches && !rest[0].is_mark(",;([.—")
        || rest[0].is_mark("-–")
            && !rest.get(1).is_some_and(|next| {
                !next.touches && (next.sort == Sort::Word || is_bay && !kinds::measures(text))
            })
        || rest[0].is_mark("+/°'\"%&=$±~*×<>")
        || rest[0].is_number() && rest.len() == 1;
    let lengths = kinds::measures(text) && !head.is_word(&WITHOUT_LENGTH) && !is_bracketed;
    let remark = plain_remark(text);
    let letters = remark.chars().filter(|c| c.is_alphabetic()).count();
    // A sum or a second unit after a bearing's length is part of it.
    let first_says = rest.iter().find(|piece| piece.sort == Sort::Word).is_some_and(|word| {
        word.is_word(&[
            "feet", "foot", "ft", "inches", "in", "m", "meters", "rods", "chains", "and", "plus",
            "more",
        ])
    });
    if is_joined
        || lengths
        || says_more(rest) && !is_bracketed
        || letters < 2
        || first_says && !is_bracketed
    {
        return None;
    }
    Some(Mend {
        lines: vec![format!("{said}  # {remark}")],
        cause: CAUSE.to_owned(),
        ..Mend::default()
    })
}

/// The line without what stands in brackets, without times of the day and shares, which become its comment; then without
/// what stands after its last comma, semicolon or dash.
pub(super) fn aside(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let pieces = cut(line);
    let (kept, said) = without_asides(line, &pieces);
    if !said.is_empty()
        && let Some(mend) = with_comment(line, kept.trim(), &said.join(", "), attempt)
    {
        return Some(mend);
    }
    let marks: Vec<usize> = (1..pieces.len())
        .filter(|&at| {
            pieces[at].is_mark(",;—@=*") || pieces[at].is_mark("-–") && !pieces[at].touches
        })
        .collect();
    marks.into_iter().rev().find_map(|at| {
        let rest = &pieces[at + 1..];
        if says_more(rest) || rest.is_empty() || adds(&pieces[at..]) {
            return None;
        }
        let head = line.get(..pieces[at].at)?.trim_end();
        let remark = plain_remark(line.get(pieces[at].at..)?);
        with_comment(line, head, &remark, attempt)
    })
}

/// Whether a rest of a line begins with a sign that computes, or means another wall.
fn adds(rest: &[Piece]) -> bool {
    rest.first().is_some_and(|first| first.is_mark("+-–*/&=~±<>%×"))
        && !rest
            .get(1)
            .is_some_and(|next| next.sort == Sort::Word && !next.touches && rest[0].is_mark("-–/"))
        || rest.iter().any(|piece| piece.is_word(&["same", "ditto", "half", "third", "twice"]))
}

/// A line without its asides, and the asides.
fn without_asides(line: &str, pieces: &[Piece]) -> (String, Vec<String>) {
    let (mut kept, mut said): (Vec<Piece>, Vec<String>) = (Vec::new(), Vec::new());
    let mark = |at: usize, marks: &str| pieces.get(at).is_some_and(|piece| piece.is_mark(marks));
    let number = |at: usize| pieces.get(at).is_some_and(Piece::is_number);
    let text = |first: usize, end: usize| {
        let stop = pieces.get(end).map_or(line.len(), |piece| piece.at);
        line.get(pieces[first].at..stop).unwrap_or_default().trim().to_owned()
    };
    let mut at = 0;
    while at < pieces.len() {
        let close = match pieces[at].text.as_str() {
            "(" => ")",
            "[" => "]",
            _ => "",
        };
        let end =
            (at + 1..pieces.len()).find(|&end| !close.is_empty() && pieces[end].text == close);
        if let Some(end) = end.filter(|_| at > 0) {
            said.push(text(at + 1, end));
            at = end + 1;
        } else if at > 0
            && number(at)
            && mark(at + 1, ":")
            && number(at + 2)
            && pieces[at + 1].touches
        {
            // A time of the day.
            let half = pieces.get(at + 3).is_some_and(|half| half.is_word(&["am", "pm", "a", "p"]));
            let end = at + 3 + usize::from(half);
            said.push(text(at, end));
            at = end;
        } else {
            let mut piece = pieces[at].clone();
            piece.touches &=
                at == 0 || kept.last().is_some_and(|last| last.at + last.text.len() == piece.at);
            kept.push(piece);
            at += 1;
        }
    }
    said.retain(|text| text.contains(char::is_alphanumeric));
    (super::pieces::join(&kept), said)
}

/// A mended head with a remark after it, if the remark holds nothing that counts.
fn with_comment(
    line: &str,
    head: &str,
    remark: &str,
    attempt: &mut dyn FnMut(&str) -> Attempt,
) -> Option<Mend> {
    let pieces = cut(remark);
    let is_head = cut(head).first().is_some_and(|word| word.is_word(&WITHOUT_LENGTH));
    let counts = kinds::measures(remark) && !is_head && !only_dates(remark);
    let letters = remark.contains(|c: char| c.is_alphabetic()) || remark.contains(':');
    let small = says_more(&pieces)
        && !line.contains(&format!("({remark}"))
        && !line.contains(&format!("[{remark}"));
    if counts || !letters || small || head.is_empty() {
        return None;
    }
    let (said, cause) = match attempt(head).reads {
        Some(reads) => (reads, CAUSE.to_owned()),
        None => {
            let mend = known(head, attempt, 2).or_else(|| search(head, attempt))?;
            (mend.lines.into_iter().next()?, mend.cause)
        }
    };
    if said.contains('\n') || said.starts_with('#') {
        return None;
    }
    let (own, comment) = comment_of(&said);
    let comment =
        comment.map_or_else(|| remark.to_owned(), |first| format!("{}, {remark}", first.trim()));
    let offered = format!("{}  # {comment}", own.trim_end());
    attempt(&offered).reads.map(|reads| Mend { lines: vec![reads], cause, ..Mend::default() })
}

/// Whether the dates of a text are all that is measured in it.
fn only_dates(text: &str) -> bool {
    let lower = text.to_lowercase();
    !lower.contains(['$', '\'', '"'])
        && !["sq", "sf", "ft", "feet", "inch", " m", "acre"].iter().any(|unit| lower.contains(unit))
}

/// `soup 25' 4"`, `Garbage start east 41' 1"`: a first word that a keyboard or a camera put in the place of one of the
/// format, where the rest of the line reads with it.
pub(super) fn respelled(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let first = line.split_whitespace().next()?;
    let rest = line.get(first.len()..)?.trim_start();
    let word: String =
        first.chars().filter(|c| c.is_alphabetic()).collect::<String>().to_lowercase();
    let is_plain = first.chars().all(|c| c.is_alphabetic() || "+:.,|!*=?'’`".contains(c));
    let has_data = rest.contains(|c: char| c.is_ascii_digit()) || rest.contains('"');
    if !is_plain || !has_data || word.len() < 3 || attempt(line).knows_first {
        return None;
    }
    let mut near: Vec<(usize, &str)> = crate::sketch::parser::FIRST_WORDS
        .iter()
        .filter(|own| own.len() > 2)
        .map(|own| (strsim::osa_distance(&word, own), *own))
        .filter(|(far, own)| {
            let same = own.chars().zip(word.chars()).take_while(|(one, two)| one == two).count();
            *far == 1 || *far == 2 && same >= 2 && word.len() > 3
        })
        .collect();
    near.sort_by_key(|(far, _)| *far);
    let closest = near.first()?.0;
    let cause = format!("`{first}` is not a word of a sides file");
    let mut lines: Vec<String> = Vec::new();
    for (far, own) in near {
        if far > closest && !lines.is_empty() {
            break;
        }
        let changed = format!("{own} {rest}");
        let read = match attempt(&changed).reads {
            Some(reads) => Some(reads),
            None => known(&changed, attempt, 2)
                .or_else(|| search(&changed, attempt))
                .and_then(|mend| mend.lines.into_iter().next()),
        };
        let kept = read.filter(|read| keeps(&changed, read, false) && !read.contains('#'));
        lines.extend(kept);
    }
    lines.truncate(3);
    (!lines.is_empty()).then_some(Mend { lines, cause, ..Mend::default() })
}

/// The last answer: what of the line reads, and the rest as a remark, where nothing that counts is in it.
pub(super) fn as_far_as_it_reads(
    line: &str,
    attempt: &mut dyn FnMut(&str) -> Attempt,
) -> Option<Mend> {
    let pieces = cut(line);
    let (end, said) = (2..pieces.len()).rev().find_map(|end| {
        let said = line.get(..pieces[end].at)?.trim_end();
        attempt(said).reads.map(|reads| (end, reads))
    })?;
    let text = line.get(pieces[end].at..)?;
    let remark = plain_remark(text);
    let offered = format!("{said}  # {remark}");
    let stray = attempt(line).word == Some(crate::diagnostic::Word::StrayCharacter);
    let touches = pieces[end].touches && !pieces[end].is_mark(",;([.");
    let ok = !touches
        && !adds(&pieces[end..])
        && !kinds::measures(text)
        && !says_more(&pieces[end..])
        && remark.chars().filter(|c| c.is_alphabetic()).count() > 2
        && keeps(line, &offered, false);
    if ok {
        return Some(Mend { lines: vec![offered], cause: CAUSE.to_owned(), ..Mend::default() });
    }
    // One message instead of one for each sign.
    let signs: Vec<&str> = pieces[end..]
        .iter()
        .filter(|piece| piece.sort == Sort::Mark && !piece.is_mark("$'\"’”.,;"))
        .map(|piece| piece.text.as_str())
        .collect();
    let is_space = kinds::kind_word(&pieces[0].text.to_lowercase()).is_some();
    (stray && !signs.is_empty() && !is_space).then(|| Mend {
        lines: Vec::new(),
        cause: format!("`{}` has no meaning here", signs[0]),
        about: kinds::About::AnyLine,
        help: Some(format!(
            "`{said}` can be read by itself; what `{text}` says goes on a line of its own, or to the end of the line, after a `#`"
        )),
        ..Mend::default()
    })
}
