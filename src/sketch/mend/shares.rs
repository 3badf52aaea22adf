//! A share beside a sum of money: `appraised value $412,000 up 12% from last year`, `assessed at 40% = $164,800`. The sum
//! has a line, and the share is a remark.

use super::change::Attempt;
use super::pieces::{Piece, cut};
use super::{Mend, kinds, read_or_mended};

/// The answer to the line without its share, which becomes a comment.
pub(super) fn beside_a_sum(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    const BEGIN: [&str; 10] = [
        "appraised",
        "assessed",
        "value",
        "market",
        "taxable",
        "total",
        "notice",
        "valued",
        "av",
        "county",
    ];
    let pieces = cut(line);
    let begins = pieces.first()?.is_word(&BEGIN);
    let (first, end) = kinds::only_sum(&pieces).filter(|_| begins && !line.contains('#'))?;
    let mut shares = pieces.iter().enumerate().filter(|(_, piece)| piece.is_mark("%"));
    let (share, _) = shares.next().filter(|_| shares.next().is_none())?;
    let number = share.checked_sub(1).filter(|at| pieces[*at].is_number())?;
    let others = pieces.iter().enumerate().filter(|(at, piece)| {
        piece.is_number() && *at != number && !(first..end).contains(at) && !piece.is_year()
    });
    if others.count() > 0 {
        return None;
    }
    let from = |at: usize| pieces.get(at).map_or(line.len(), |piece| piece.at);
    let (plain, remark) = if number >= end {
        (line.get(..from(end))?.trim().to_owned(), line.get(from(end)..)?)
    } else {
        let small = |piece: &Piece| {
            piece.is_word(&["at", "is", "about", "approx", "up", "down", "by"])
                || piece.is_mark("=@~(+-–,:")
        };
        let before =
            pieces[..number].iter().rposition(|piece| !small(piece)).map_or(0, |at| at + 1);
        let head = line.get(..from(before))?.trim();
        let sum = line.get(from(first)..from(end))?.trim();
        (format!("{head} {sum}"), line.get(from(number)..from(first))?)
    };
    let remark = remark.trim_matches([',', ';', '(', ')', ' ', '=', ':', '-', '–']);
    let mut mended = read_or_mended(&plain, attempt)?;
    if mended.lines.is_empty() || mended.lines.iter().any(|line| line.starts_with('#')) {
        return None;
    }
    for offered in &mut mended.lines {
        let mark = if offered.contains('#') { "," } else { "  #" };
        *offered = format!("{offered}{mark} {remark}");
    }
    if mended.cause.is_empty() {
        "a share has no line, and is a remark beside its sum".clone_into(&mut mended.cause);
    }
    Some(mended)
}
