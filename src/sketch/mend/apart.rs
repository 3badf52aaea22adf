//! A wall whose length is written in its own way and that has other words on its line. Each of the two is known by
//! itself, so the wall is mended alone and the other words become its comment.

use super::compass::{slant, way_and_back};
use super::pieces::{Piece, Sort, cut, join};
use super::{Attempt, Mend, begins_as_side, comment_of, kinds, lengths, mend, remarked};

/// A line with more pieces than this is a sentence.
const MOST: usize = 24;

/// Words between the way of a wall and its length that say nothing.
const BETWEEN: [&str; 11] =
    ["wall", "side", "for", "is", "runs", "to", "the", "due", "go", "goes", "then"];

/// Words of a length.
const OF_A_LENGTH: [&str; 26] = [
    "ft", "foot", "feet", "f", "ft-in", "in", "inch", "inches", "ins", "i", "and", "a", "half",
    "m", "meter", "meters", "metre", "metres", "cm", "mm", "fot", "feets", "inchs", "plus",
    "point", "quarter",
];

/// Words that make more of a line than a wall with a remark.
const SAYS: [&str; 52] = [
    "record",
    "recorded",
    "county",
    "assessor",
    "appraiser",
    "card",
    "tie",
    "overall",
    "total",
    "whole",
    "entire",
    "start",
    "starts",
    "from",
    "closing",
    "not",
    "no",
    "never",
    "without",
    "same",
    "ditto",
    "as",
    "inside",
    "outside",
    "interior",
    "exterior",
    "frame",
    "bay",
    "jog",
    "offset",
    "out",
    "rise",
    "minus",
    "less",
    "plus",
    "plan",
    "listing",
    "level",
    "floor",
    "story",
    "detached",
    "within",
    "x",
    "high",
    "ceiling",
    "deep",
    "thick",
    "degrees",
    "lot",
    "estimated",
    "thence",
    "should",
];

/// The wall by itself, and the other words of its line as a comment.
///
/// `40' and 6" east along the drive`, `east 40-6 brick`.
pub(super) fn answer(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let here = attempt(line);
    let pieces = cut(line);
    if here.space.is_none() || here.beside.in_lot || pieces.is_empty() {
        return None;
    }
    if here.knows_first && way_at(&pieces, 0).is_none() && beginning(line) == 0 {
        return None;
    }
    let mut ways = (0..pieces.len()).filter(|&at| way_at(&pieces, at).is_some());
    let way = ways.next().filter(|_| ways.next().is_none() && pieces.len() <= MOST)?;
    // `about 11 m north of the house`: where something stands.
    if pieces.get(way + 1).is_some_and(|next| next.is_word(&["of", "from"])) {
        return None;
    }
    let (first, end) = length_of(&pieces, way)?;
    let (from, to) = (way.min(first), end.max(way + 1));
    let text = |from: usize, to: usize| {
        let stop = pieces.get(to).map_or(line.len(), |piece| piece.at);
        let start = pieces.get(from).map_or(line.len(), |piece| piece.at);
        line.get(start..stop).unwrap_or_default().trim()
    };
    let head = text(0, from);
    let head = head.get(beginning(head)..).unwrap_or_default();
    let middle = if first > way { text(way + 1, first) } else { text(end, way) };
    let middle = if cut(middle).iter().all(is_between) { "" } else { middle };
    let rest: Vec<String> = [head, middle, text(to, pieces.len())]
        .into_iter()
        .map(remarked::plain_remark)
        .map(|part| part.trim_matches(|c: char| " ,;:.-–()#<>→".contains(c)).to_owned())
        .filter(|part| part.contains(char::is_alphanumeric))
        .collect();
    let rest = rest.join(", ");
    let said = cut(&rest);
    let has_letters = rest.chars().filter(|c| c.is_alphabetic()).count() > 1;
    let is_next = pieces.get(to).is_some_and(|next| next.is_mark(",;("));
    let marks = if is_next { "+=*×±%$" } else { "+=*×±%$\"'" };
    let computes =
        said.iter().any(|piece| piece.is_mark(marks) || piece.sort == Sort::Text && !is_next);
    let joined = pieces
        .get(to)
        .is_some_and(|next| next.is_number() || next.touches && !is_next && !next.is_mark("."));
    let wall = format!("{} {}", way_at(&pieces, way)?, join(&pieces[first..end]));
    // `west wall - see photo 3`, `overhang 18" west side`: no length of a wall.
    let hangs = pieces.iter().any(|piece| piece.is_word(&["overhang", "overhangs", "eave"]));
    if is_no_wall(line, &wall) || hangs && way > 0 {
        return None;
    }
    let is_alone = rest.is_empty() && wall.len() < line.trim().len();
    if !has_letters && !is_alone || joined {
        return None;
    }
    let measures = kinds::measures(&rest) && !is_next;
    // `8' fence north 30' 4"`: the length right after the way is that of the wall.
    if measures && (first != way + 1 || kinds::measures(text(to, pieces.len()))) {
        return None;
    }
    let says = computes || says_more(&said) || measures;
    if says && way == 0 {
        return None;
    }
    let (lines, cause) = match attempt(&wall).reads {
        Some(reads) => (vec![reads], remarked::CAUSE.to_owned()),
        None => {
            let mended = mend(&wall, attempt)?;
            (mended.lines, mended.cause)
        }
    };
    let is_wall = |offered: &String| {
        begins_as_side(offered) && !offered.contains(['\n', '#']) && !offered.contains("note")
    };
    if lines.is_empty() || !lines.iter().all(is_wall) {
        return None;
    }
    if says {
        let help = format!(
            "for the wall, write `{}` on this line; what `{rest}` says goes on a line of its own, or, if it is a remark, to the end of the line, after a `#`",
            lines[0]
        );
        let cause = "a wall is its direction and its length".to_owned();
        return (lines.len() == 1).then(|| Mend { cause, help: Some(help), ..Mend::default() });
    }
    let whole = |wall: &String| if is_alone { wall.clone() } else { format!("{wall}  # {rest}") };
    let lines: Vec<String> = lines.iter().filter_map(|wall| attempt(&whole(wall)).reads).collect();
    (!lines.is_empty()).then_some(Mend { lines, cause, ..Mend::default() })
}

/// How many bytes of a text say which wall of the walk it is, and that it goes on: `4)`, `wall 4: go`, `C-D`.
fn beginning(text: &str) -> usize {
    let pieces = cut(text);
    let is_wall = |piece: &Piece| piece.is_word(&["wall", "side", "leg", "line", "no", "number"]);
    let is_named = |piece: &Piece| {
        piece.is_number() && piece.text.len() <= 2
            || piece.sort == Sort::Word && piece.text.split('-').all(|one| one.len() == 1)
    };
    let mut at = usize::from(pieces.first().is_some_and(is_wall));
    let is_marked = |at: usize| {
        pieces.get(at + 1).is_none_or(|next| next.is_mark(".:)-–,") || next.is_word(&GOES))
    };
    match pieces.get(at).is_some_and(is_named) && is_marked(at) {
        true => at += 1,
        false => at = 0,
    }
    // `next to the fence` is a remark.
    let goes = |at: usize| {
        pieces[at].is_word(&GOES)
            && !(at > 0 && pieces[at].is_word(&["to"]) && pieces[at - 1].is_word(&["next"]))
            && !(pieces[at].is_word(&["next"])
                && pieces.get(at + 1).is_some_and(|to| to.is_word(&["to"])))
    };
    while at < pieces.len() && (pieces[at].is_mark(".:)-–,") || goes(at)) {
        at += 1;
    }
    pieces.get(at).map_or(text.len(), |piece| piece.at)
}

/// Words that say that the walk goes on.
const GOES: [&str; 11] =
    ["go", "going", "then", "turn", "heading", "head", "next", "walk", "continue", "to", "the"];

/// Whether the suggestion makes of a wall among other words a comment, a thickness, or a wall without a length.
pub(super) fn loses_wall(typed: &str, offered: &str) -> bool {
    let first = offered.split(' ').next().unwrap_or_default();
    let goes_back = offered.ends_with("by closing") && typed.to_lowercase().contains("back to");
    if !["#", "wall", "tolerance", "measured"].contains(&first) && !goes_back {
        return false;
    }
    let pieces = cut(typed);
    let mut ways = (0..pieces.len()).filter(|&at| way_at(&pieces, at).is_some());
    let Some(way) = ways.next().filter(|_| ways.next().is_none()) else { return false };
    let runs = match after(&pieces, way) {
        Some((begins, _)) => begins == way + 1,
        None => first != "#" && before(&pieces, way).is_some(),
    };
    runs && kinds::measures(typed) && !pieces[0].is_word(&["tie", "overall", "total", "corner"])
}

/// Whether the suggestion makes of a wall a published figure, or of the number of a photo or of another wall its length.
pub(super) fn is_no_wall(typed: &str, offered: &str) -> bool {
    let pieces = cut(typed);
    if offered.starts_with("figure ") {
        return kinds::only_area(&pieces).is_none();
    }
    let numbered = ["photo", "photos", "pic", "picture", "img", "image"];
    let of_a_photo =
        |at: usize| at > 0 && pieces[at].is_number() && pieces[at - 1].is_word(&numbered);
    let numbers: Vec<usize> = (0..pieces.len()).filter(|&at| pieces[at].is_number()).collect();
    let length = cut(comment_of(offered).0).into_iter().find(Piece::is_number);
    begins_as_side(offered)
        && length.is_some_and(|length| {
            let mut same = numbers.iter().filter(|&&at| pieces[at].text == length.text).peekable();
            same.peek().is_some() && same.all(|&at| of_a_photo(at))
        })
}

/// The answer to a line of a walk that has a length and a way, or a side of the house, in it: as a comment a wall would be
/// lost, so whether it is one is asked.
pub(super) fn asked_whether_a_wall(line: &str, found: Mend, tried: &Attempt) -> Mend {
    let beside = &tried.beside;
    let is_in_a_walk = tried.space.is_some() && !beside.in_lot && kinds::is_in_a_walk(line, tried);
    let pieces = cut(line);
    let names_a_side = |piece: &Piece| {
        let is_letter = piece.text.len() == 1 && piece.text != piece.text.to_uppercase();
        let is_way = way_and_back(&piece.text).is_some() || slant(&piece.text).is_some();
        piece.sort == Sort::Word && is_way && !is_letter
    };
    let all = kinds::lengths_in(&pieces);
    let [(_, _, length), ..] = &all[..] else { return found };
    let begins = pieces.first().is_some_and(|first| first.is_mark("(/*-–—;%<>"));
    let measures = kinds::measures(line) || pieces.last().is_some_and(Piece::is_number);
    // `about 11 m north of the house`, `easement 10' rear`: how far something else is.
    let is_far =
        pieces.windows(2).any(|two| names_a_side(&two[0]) && two[1].is_word(&["of", "from"]))
            || pieces.iter().any(|piece| piece.is_word(&["easement", "setback", "setbacks"]));
    if is_far {
        return found;
    }
    let is_size = kinds::size_in(line).is_some();
    if !is_in_a_walk || !pieces.iter().any(names_a_side) || begins || is_size || !measures {
        return found;
    }
    let lines: Vec<String> =
        found.lines.iter().filter(|offered| !offered.starts_with('#')).cloned().collect();
    if !lines.is_empty() {
        return Mend { lines, ..found };
    }
    Mend {
        cause:
            "between the walls of a walk stands a wall, and whether this line is one is not said"
                .to_owned(),
        help: Some(format!(
            "if it is a wall of the house, write the way that it was walked, `north`, `east`, `south` or `west`, and then `{length}`; if it is a remark, put a `#` before it"
        )),
        ..Mend::default()
    }
}

/// Whether words of a line say more than a remark does.
fn says_more(said: &[Piece]) -> bool {
    (0..said.len()).any(|at| {
        let next = |words: &[&str]| said.get(at + 1).is_some_and(|next| next.is_word(words));
        let before = |words: &[&str]| at > 0 && said[at - 1].is_word(words);
        let is_remark = said[at].is_word(&["bay"]) && next(&["window", "windows"])
            || said[at].is_word(&["start"]) && before(&["to"])
            || said[at].is_word(&["not"]) && next(&["sure", "certain"]);
        said[at].is_word(&SAYS) && !is_remark
            || said[at].is_word(&["by"]) && said.get(at + 1).is_some_and(Piece::is_number)
    })
}

/// The way that a word names.
fn way_at(pieces: &[Piece], at: usize) -> Option<&'static str> {
    let word = pieces[at].text.to_lowercase();
    let word = word.strip_suffix("ward").or_else(|| word.strip_suffix("erly")).unwrap_or(&word);
    ["north", "east", "south", "west"].into_iter().find(|way| *way == word)
}

/// The pieces of the length of a wall: next to its way, or else the only length after it.
fn length_of(pieces: &[Piece], way: usize) -> Option<(usize, usize)> {
    if let Some(found) = after(pieces, way).or_else(|| before(pieces, way)) {
        return Some(found);
    }
    let first = (way + 1..pieces.len()).find(|&at| pieces[at].is_number())?;
    let end = (first..pieces.len()).find(|&at| !is_of_a_length(&pieces[at]));
    let end = end.unwrap_or(pieces.len());
    let is_only = |at: usize| (first..end).contains(&at) || !pieces[at].is_number();
    (0..pieces.len()).all(is_only).then(|| trimmed(pieces, first, end))?
}

/// Words that name the office whose figure it is.
const OFFICE: [&str; 14] = [
    "record",
    "recorded",
    "records",
    "county",
    "county's",
    "cad",
    "assessor",
    "assessors",
    "assessor's",
    "card",
    "roll",
    "district",
    "district's",
    "office",
];

/// Words that make another figure of an area than the record's of the house.
const NOT_OF_HOUSE: [&str; 30] = [
    "listing",
    "listed",
    "mls",
    "agent",
    "realtor",
    "plan",
    "plans",
    "builder",
    "lot",
    "acre",
    "acres",
    "land",
    "with",
    "incl",
    "includes",
    "including",
    "counting",
    "counts",
    "plus",
    "was",
    "used",
    "last",
    "previous",
    "prior",
    "old",
    "should",
    "sold",
    "sale",
    "neighbor",
    "comparable",
];

/// The record's figure among other words: `1,234 sq ft per county, acct 22-0415`.
pub(super) fn record(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let pieces = cut(line);
    if attempt(line).space.is_some() || pieces.len() > MOST || line.contains(['"', '$', '%', '#']) {
        return None;
    }
    let (first, end, area) = kinds::only_area(&pieces)?;
    let is_left_out = |at: usize| {
        let before = |far: usize, words: &[&str]| {
            at.checked_sub(far).is_some_and(|before| pieces[before].is_word(words))
        };
        before(1, &["without", "no", "excluding", "excl", "excludes", "not", "minus"])
            || before(2, &["not"])
            || before(1, &["o"])
    };
    let is_other = (0..pieces.len()).any(|at| {
        let word = pieces[at].text.to_lowercase();
        let is_kind = kinds::kind_word(&word).is_some_and(|kind| kind != "living");
        !is_left_out(at) && (pieces[at].is_word(&NOT_OF_HOUSE) || is_kind)
    });
    if is_other || !pieces.iter().any(|piece| piece.is_word(&OFFICE)) {
        return None;
    }
    let stop = pieces.get(end).map_or(line.len(), |piece| piece.at);
    let mut head = cut(line.get(..pieces[first].at)?);
    let joins = ["is", "has", "at", "shows", "says", "as", "of", "the", "a", "our", "my"];
    while head.last().is_some_and(|last| last.is_mark(":=-–,.") || last.is_word(&joins)) {
        head.pop();
    }
    let head = match &head[..] {
        [only] if only.is_word(&["record", "county", "recorded"]) => String::new(),
        _ => join(&head),
    };
    let tail = remarked::plain_remark(line.get(stop..)?);
    let tail = tail.trim_matches(|c: char| " ,;:.-–()".contains(c)).to_owned();
    let said: Vec<String> =
        [head, tail].into_iter().filter(|part| part.contains(char::is_alphanumeric)).collect();
    let comment = if said.is_empty() { String::new() } else { format!("  # {}", said.join(", ")) };
    let reads = attempt(&format!("record {area}{comment}")).reads?;
    Some(Mend {
        lines: vec![reads],
        cause: "the figure of the record is `record` and the area; anything else goes to the end of the line, after a `#`".to_owned(),
        ..Mend::default()
    })
}

/// Words that say nothing of where a space stands nor of how it counts.
const OF_A_SPACE: [&str; 10] =
    ["brick", "stone", "approx", "approximately", "built", "in", "old", "new", "newer", "original"];

/// The line of a space without the remark at its end, where its place can then be read: `garage 20' x 22' on the
/// east side, built 1990`.
pub(super) fn without_remark(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let pieces = cut(line);
    let says_little =
        |piece: &Piece| piece.is_word(&OF_A_SPACE) || piece.is_year() || piece.is_mark(",-–()!.;");
    let start = (1..pieces.len()).rev().take_while(|&at| says_little(&pieces[at])).last()?;
    let head = line.get(..pieces[start].at)?.trim_end();
    let remark = remarked::plain_remark(line.get(pieces[start].at..)?);
    let remark = remark.trim_matches(|c: char| " ,;:.-–()".contains(c));
    if !remark.contains(char::is_alphabetic) {
        return None;
    }
    let mended = match attempt(head).reads {
        Some(reads) => {
            Mend { lines: vec![reads], cause: remarked::CAUSE.to_owned(), ..Mend::default() }
        }
        None => mend(head, attempt)?,
    };
    let comment = format!("  # {remark}");
    let asks = mended.asks.map(|asks| asks.with_comment(&comment));
    let lines: Vec<String> = mended
        .lines
        .iter()
        .map(|offered| {
            let first = offered.lines().next().unwrap_or_default();
            match comment_of(first).1 {
                Some(_) => offered.replacen(first, &format!("{first}, {remark}"), 1),
                None => offered.replacen(first, &format!("{first}{comment}"), 1),
            }
        })
        .collect();
    (!lines.is_empty() || asks.is_some()).then_some(Mend { lines, asks, ..mended })
}

fn is_of_a_length(piece: &Piece) -> bool {
    piece.is_number()
        || piece.is_mark("'’′`´\"”″½¼¾⅛⅜⅝⅞&:./-–")
        || piece.is_word(&OF_A_LENGTH)
        || piece.sort == Sort::Word && lengths::is_spoken_number(&piece.text)
}

fn is_between(piece: &Piece) -> bool {
    piece.is_mark(":=-–,.>→") || piece.is_word(&BETWEEN)
}

/// The pieces of the length that follows a way.
fn after(pieces: &[Piece], way: usize) -> Option<(usize, usize)> {
    let first =
        (way + 1..pieces.len()).find(|&at| !is_between(&pieces[at]) || pieces[at].is_mark(","))?;
    let mut end = (first..pieces.len()).find(|&at| !is_of_a_length(&pieces[at]));
    let end = end.get_or_insert(pieces.len());
    trimmed(pieces, first, *end)
}

/// The pieces of the length that stands before a way.
fn before(pieces: &[Piece], way: usize) -> Option<(usize, usize)> {
    let last = (0..way).rev().find(|&at| !is_between(&pieces[at]))?;
    let goes_on = |&at: &usize| {
        // `4: 40' 6"`: the number of the wall stands before its length.
        let is_apart = pieces[at].is_mark(".:)")
            && at > 0
            && pieces[at - 1].is_number()
            && pieces.get(at + 1).is_some_and(|next| !next.touches);
        let is_number_of_it = pieces[at].is_number()
            && at > 0
            && pieces[at - 1].is_word(&["wall", "side", "leg", "no"])
            && pieces.get(at + 1).is_some_and(Piece::is_number);
        is_of_a_length(&pieces[at]) && !(is_apart && at < last) && !is_number_of_it
    };
    let first = (0..=last).rev().take_while(goes_on).last()?;
    trimmed(pieces, first, last + 1)
}

/// A length begins with a number and ends with one or its unit.
fn trimmed(pieces: &[Piece], mut first: usize, mut end: usize) -> Option<(usize, usize)> {
    let begins = |piece: &Piece| {
        piece.is_number() || piece.sort == Sort::Word && lengths::is_spoken_number(&piece.text)
    };
    while first < end && !begins(&pieces[first]) {
        first += 1;
    }
    while end > first
        && (pieces[end - 1].is_mark("&:./-–") || pieces[end - 1].is_word(&["and", "a", "plus"]))
    {
        end -= 1;
    }
    (first < end).then_some((first, end))
}

/// Whether the suggested wall has whole feet, and the inches that follow them in the typed line are in its comment or
/// its note.
pub(super) fn loses_inches(typed: &str, offered: &str) -> bool {
    if !begins_as_side(offered) || offered.contains('\n') {
        return false;
    }
    let pieces = cut(typed);
    let (said, comment) = comment_of(offered);
    let said = cut(said);
    let has = |text: &str| said.iter().any(|piece| piece.is_number() && piece.text == text);
    let aside = |text: &str| {
        let note = said.iter().filter(|piece| piece.sort == Sort::Text);
        note.map(|note| note.text.as_str()).chain(comment).any(|aside| aside.contains(text))
    };
    let feet = said.iter().find(|piece| piece.is_number());
    let stands = |pieces: &[Piece], feet: &Piece| {
        pieces.iter().position(|piece| piece.is_number() && piece.text == feet.text)
    };
    let Some(feet) = feet else { return false };
    let Some(at) = stands(&pieces, feet) else { return false };
    let Some(inches) = inches_after(&pieces, at + 1) else { return false };
    // `28' 10"  # 28' 4" + 6" brick`: the whole length is there again.
    let again = cut(comment.unwrap_or_default());
    let is_again =
        stands(&again, feet).is_some_and(|at| inches_after(&again, at + 1) == Some(inches));
    !has(inches) && aside(inches) && !is_again
}

/// Whether the suggested length is an estimate only since the line says `around`, and not before a number.
pub(super) fn estimates(typed: &str, offered: &str) -> bool {
    const ROUGHLY: [&str; 12] = [
        "about",
        "approx",
        "approximately",
        "ca",
        "circa",
        "roughly",
        "est",
        "estimated",
        "estimate",
        "guess",
        "maybe",
        "paced",
    ];
    let pieces = cut(typed);
    let around = (0..pieces.len()).any(|at| {
        pieces[at].is_word(&["around"]) && !pieces.get(at + 1).is_some_and(Piece::is_number)
    });
    around
        && cut(comment_of(offered).0).iter().any(|piece| piece.is_word(&["estimated"]))
        && !typed.contains(['~', '≈', '?', '±'])
        && !pieces.iter().any(|piece| piece.is_word(&ROUGHLY))
}

/// The inches that follow feet whose number stands before `at`.
fn inches_after(pieces: &[Piece], at: usize) -> Option<&str> {
    const FRACTIONS: &str = "½¼¾⅛⅜⅝⅞";
    let get = |at: usize| pieces.get(at);
    if at >= pieces.len() {
        return None;
    }
    if pieces[at].touches && pieces[at].is_mark(FRACTIONS) {
        return Some(&pieces[at].text);
    }
    let is_unit = pieces[at].is_mark("'’′`´") || pieces[at].is_word(&["ft", "foot", "feet", "f"]);
    let is_colon = pieces[at].touches && pieces[at].is_mark(":");
    if !is_unit && !is_colon {
        return None;
    }
    let joins = |piece: &Piece| piece.is_mark("&-–.:") || piece.is_word(&["and"]);
    let next = at + 1 + usize::from(get(at + 1).is_some_and(joins));
    let inches = get(next)?;
    if is_colon && !inches.touches {
        return None;
    }
    let is_small = inches.text.parse::<f64>().is_ok_and(|inches| inches < 12.0);
    let other = get(next + 1).is_some_and(|unit| {
        unit.is_mark("'’′`´×*")
            || unit.is_word(&["ft", "foot", "feet", "x", "by", "sq", "m"])
            || unit.touches
                && unit.sort == Sort::Word
                && !unit.is_word(&["in", "i", "inch", "inches", "ins"])
    });
    (inches.is_number() && is_small && !other || inches.is_mark(FRACTIONS)).then_some(&*inches.text)
}
