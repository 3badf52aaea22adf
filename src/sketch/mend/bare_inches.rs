//! Feet whose inches have no mark, as in `left wall 34 ft 2`: with the mark, the line is answered as any other.

use super::pieces::{Piece, cut};
use super::{Attempt, Mend, mend};

/// Words that may stand after a length, and count nothing.
const AFTER: [&str; 56] = [
    "x",
    "by",
    "wide",
    "w",
    "width",
    "deep",
    "d",
    "depth",
    "long",
    "l",
    "length",
    "high",
    "tall",
    "out",
    "across",
    "from",
    "on",
    "at",
    "off",
    "along",
    "start",
    "starts",
    "to",
    "north",
    "east",
    "south",
    "west",
    "left",
    "right",
    "front",
    "back",
    "rear",
    "behind",
    "beside",
    "inside",
    "within",
    "included",
    "incl",
    "includes",
    "attached",
    "detached",
    "covered",
    "uncovered",
    "screened",
    "open",
    "recorded",
    "estimated",
    "angled",
    "flat",
    "garage",
    "porch",
    "house",
    "wall",
    "side",
    "thick",
    "approx",
];

/// The answer to the line as it would be with its marks; `None` if it has them, or if it reads once it has them, which
/// other rules say.
pub(super) fn answer(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    // The length right after the way of a wall is known to other rules.
    let marked = marked(line).filter(|_| !super::begins_as_side(line))?;
    if attempt(&marked).reads.is_some() {
        return None;
    }
    // A line that gets no more than how a line begins says nothing of its length: `ceiling 8 ft 2`.
    let mended = mend(&marked, attempt)
        .filter(|mended| !mended.cause.ends_with("begins no line of a sides file"))?;
    let cause = match mended.cause.as_str() {
        "" => CAUSE.to_owned(),
        cause => format!("{CAUSE}; {cause}"),
    };
    Some(Mend { cause, ..mended })
}

const CAUSE: &str = "the inches have no mark";

/// The line with a mark after all inches that have none; `None` if there are none.
pub(super) fn marked(line: &str) -> Option<String> {
    let pieces = cut(line);
    let (mut out, mut done, mut at) = (String::new(), 0, 0);
    while at < pieces.len() {
        let Some((end, text)) = feet_and_inches(&pieces, at) else {
            at += 1;
            continue;
        };
        out.push_str(line.get(done..pieces[at].at)?);
        out.push_str(&text);
        done = pieces[end - 1].at + pieces[end - 1].text.len();
        at = end;
    }
    out.push_str(line.get(done..)?);
    (done > 0).then_some(out)
}

/// `34 ft 2`, `8 feet 7 1/2`, `14' 5½` without a mark after them: the index of the piece after them, and the length with
/// its marks.
fn feet_and_inches(pieces: &[Piece], at: usize) -> Option<(usize, String)> {
    let is_whole = |at: usize, most: u32| {
        let piece = pieces.get(at).filter(|piece| piece.is_number())?;
        piece.text.parse::<u32>().ok().filter(|number| *number <= most)
    };
    let feet = is_whole(at, 999)?;
    let is_feet =
        |unit: &Piece| unit.is_word(&["ft", "feet", "foot"]) || unit.is_mark("'’′") && unit.touches;
    let unit = pieces.get(at + 1).filter(|unit| is_feet(unit))?;
    let point = pieces.get(at + 2).is_some_and(|mark| mark.is_mark(".,") && !unit.is_mark("'’′"));
    let first = at + 2 + usize::from(point);
    let inches = is_whole(first, 11)?;
    // `120 ft2` is an area.
    if pieces[first].touches && !unit.is_mark("'’′") && inches == 2 {
        return None;
    }
    let slash = pieces.get(first + 2).is_some_and(|slash| slash.is_mark("/"));
    let part = is_whole(first + 1, 63).zip(is_whole(first + 3, 64).filter(|_| slash));
    let sign = pieces.get(first + 1).filter(|sign| sign.is_mark("½¼¾⅛⅜⅝⅞"));
    let (end, part) = match (part, sign) {
        (Some((top, bottom)), _) if top < bottom => (first + 4, format!(" {top}/{bottom}")),
        (_, Some(sign)) => (first + 2, sign.text.clone()),
        _ => (first + 1, String::new()),
    };
    let ends = pieces.get(end).is_none_or(|next| {
        // `5 ft 2 in the recess`
        let is_place = next.is_word(&["in"])
            && pieces.get(end + 1).is_some_and(|the| the.is_word(&["the", "my", "our", "a"]));
        // `4-1/2`, `7. 5"`, `7 l/2`: more of the inches.
        let goes_on = next.is_mark("-–.") && pieces.get(end + 1).is_some_and(Piece::is_number)
            || pieces.get(end + 1).is_some_and(|slash| slash.is_mark("/"));
        next.is_mark("(),;[]×*-–.:") && !goes_on
            || !next.touches && !goes_on && (next.is_word(&AFTER) || is_place)
    });
    ends.then(|| (end, format!("{feet}' {inches}{part}\"")))
}
