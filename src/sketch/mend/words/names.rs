//! Changes to names and other texts without quotation marks, and names for spaces without one.

use super::super::change::{Attempt, Edit};
use super::super::pieces::{Piece, Sort, join, replaced};

/// `'House'`, `living "House`, `living House"`: rewrites a text with other marks, or with only one.
pub(super) fn one_mark_texts(line: &str, pieces: &[Piece]) -> Vec<Edit> {
    let mut edits = Vec::new();
    let mut push = |line: String, cause: &str| {
        edits.push(Edit::line(line, cause));
    };
    for (open, close) in [
        ("'", "'"),
        ("‘", "’"),
        ("`", "`"),
        ("«", "»"),
        ("„", "“"),
        ("(", ")"),
        ("[", "]"),
        ("<", ">"),
        ("“", "\""),
    ] {
        let Some(first) = line.find(open) else { continue };
        let inner = first + open.len();
        let Some(last) = line[inner..].rfind(close).map(|at| at + inner) else { continue };
        let text = &line[inner..last];
        let begins_apart = line[..first].ends_with(' ') || first == 0;
        if begins_apart && !text.trim().is_empty() && !text.contains('"') {
            let after = &line[last + close.len()..];
            push(
                format!("{}\"{text}\"{after}", &line[..first]),
                "a text needs a `\"` on each side",
            );
        }
    }
    let is_inch_mark =
        |at: usize| line[..at].ends_with(|c: char| c.is_ascii_digit() || "½¼¾⅛⅜⅝⅞".contains(c));
    let marks = pieces.iter().filter(|piece| piece.is_mark("\"“”")).map(|piece| piece.at);
    let marks: Vec<usize> = marks.filter(|at| !is_inch_mark(*at)).collect();
    for &mark in &marks {
        let after = line[mark..].chars().next().map_or(0, char::len_utf8);
        // It opens a text that is not closed, or closes one that was not opened.
        push(format!("{}\"", line.trim_end()), "the text has no `\"` at its end");
        let words: Vec<&Piece> =
            pieces.iter().filter(|piece| piece.at < mark && piece.at > 0).collect();
        for word in words {
            push(
                format!("{}\"{}", &line[..word.at], &line[word.at..]),
                "the text has no `\"` at its beginning",
            );
        }
        push(format!("{}{}", &line[..mark], &line[mark + after..]), "one `\"` is left over");
    }
    // A text with a `"` inside it: it extends from the first mark to the last, and inch marks in it become `in`.
    if let (Some(first), Some(last)) = (line.find('"'), line.rfind('"'))
        // More marks are those of several texts.
        && line.matches('"').count() == 3
        && first < last
        && !is_inch_mark(last)
    {
        let inner = line[first + 1..last].replace('"', " in");
        push(
            format!("{}\"{inner}\"{}", &line[..first], &line[last + 1..]),
            "a text cannot contain a `\"`",
        );
    }
    edits
}

/// Puts quotation marks around a name, which may end wherever the rest of the line can be read.
pub(super) fn names(line: &str, pieces: &[Piece], here: usize, attempt: &Attempt) -> Vec<Edit> {
    if !attempt.wanted.text {
        return Vec::new();
    }
    let first = pieces.first().map(|piece| piece.text.to_lowercase()).unwrap_or_default();
    if here >= pieces.len() {
        return missing_name(pieces, &first).into_iter().collect();
    }
    let mut edits = Vec::new();
    // `from corner 3`: the corner belongs to the house, or to the last named space.
    let before = here.checked_sub(1).and_then(|at| pieces.get(at));
    let is_number = before.is_some_and(|before| before.is_word(&["corner"]))
        && pieces[here].is_number()
        && here >= 2;
    let last = attempt.space.iter().filter(|space| attempt.house.as_ref() != Some(space));
    for space in attempt.house.iter().chain(last).filter(|_| is_number) {
        let by = [Piece::new(Sort::Text, format!("\"{space}\"")), Piece::word("corner")];
        let edit = replaced(pieces, here - 1, here, &by);
        edits.push(
            Edit::new(edit, "the number of a corner needs the name of its space").one_of_many(),
        );
    }
    // `lot 0.85 acre`: an area where the name is expected.
    let is_area = |piece: &Piece| {
        piece.is_word(&["sq", "sqft", "sf", "square", "acre", "acres", "hectare", "hectares"])
    };
    if pieces[here].is_number() && pieces.get(here + 1).is_some_and(is_area) && here == 1 {
        let name = Piece::new(Sort::Text, format!("\"{}\"", capitalized(&first)));
        let edit = replaced(pieces, here, here, &[name, Piece::word("recorded")]);
        edits.push(Edit::new(edit, "the name comes first, with a `\"` on each side").one_of_many());
    }
    let is_size = pieces[here].is_number()
        && pieces[here + 1..].iter().any(|piece| piece.is_word(&["x", "by"]) || piece.is_mark("×"));
    if is_size {
        return edits;
    }
    let keywords = [
        "measured",
        "recorded",
        "within",
        "inside",
        "from",
        "start",
        "detached",
        "under",
        "veneer",
        "counted",
        "counting",
        "sold",
        "by",
        "with",
        "sides",
        "corner",
        "tolerance",
        "at",
        "next",
        "beside",
        "near",
        "attached",
        "against",
        "touching",
        "abutting",
        "adjoining",
    ];
    // `garage within …`: the name itself is missing.
    if here == 1 && pieces[here].is_word(&["within", "inside", "from", "start", "detached", "at"]) {
        let with = missing_name(&pieces[..1], &first);
        let rest = join(&pieces[here..]);
        edits.extend(with.map(|named| Edit::line(format!("{} {rest}", named.line), named.cause)));
    }
    // After `within` and `from`, a name has to be one that the file already has, spelled as it is there.
    let refers = before.is_some_and(|before| before.is_word(&["within", "from"]));
    if let Some(space) = attempt.space.as_ref().filter(|_| refers) {
        let count = space.split_whitespace().count();
        let there = pieces.get(here..here + count).map(join).unwrap_or_default();
        if space.eq_ignore_ascii_case(&there) {
            let by = Piece::new(Sort::Text, format!("\"{space}\""));
            let mut left = replaced(pieces, here, here + count, &[by]);
            if let Some(next) = left.get_mut(here + 1) {
                next.touches = false;
            }
            edits.push(Edit::new(left, format!("a name needs a `\"` on each side: `\"{space}\"`")));
        }
    }
    if refers {
        return edits;
    }
    for end in here + 1..=pieces.len() {
        let has_keyword = pieces[here..end].iter().any(|piece| piece.is_word(&keywords));
        let is_filler = pieces[here].is_word(&["number", "no", "is", "named", "called"]);
        if !has_keyword && !is_filler {
            edits.extend(named(line, pieces, here, end));
        }
    }
    edits
}

/// Puts quotation marks around a name that contains words of the format, such as `Room by the lake`.
pub(super) fn names_of_any_length(line: &str, pieces: &[Piece], attempt: &Attempt) -> Vec<Edit> {
    let here = pieces.iter().position(|piece| piece.at >= attempt.at.start);
    let Some(here) = here.filter(|_| attempt.wanted.text) else { return Vec::new() };
    (here + 1..=pieces.len()).filter_map(|end| named(line, pieces, here, end)).collect()
}

/// The pieces from `here` up to, not including, `end` as a quoted name.
pub(super) fn named(line: &str, pieces: &[Piece], here: usize, end: usize) -> Option<Edit> {
    let last = pieces.get(end - 1)?;
    let typed = line[pieces.get(here)?.at..last.at + last.text.len()].trim();
    let name = typed.trim_matches(['\'', '’', '‘', '`', ':', '=', ',', '(', ')', ' ']);
    if !name.contains(char::is_alphanumeric) || name.contains(['"', '“', '”']) {
        return None;
    }
    let by = Piece::new(Sort::Text, format!("\"{name}\""));
    let mut left = replaced(pieces, here, end, &[by]);
    if let Some(next) = left.get_mut(here + 1) {
        next.touches = false;
    }
    let cause = format!("a name needs a `\"` on each side: `\"{name}\"`");
    Some(Edit::new(left, cause).one_of_many())
}

/// `garage`, `level`, `corner`: adds a missing name, where any name will do.
fn missing_name(pieces: &[Piece], first: &str) -> Option<Edit> {
    let name = match first {
        "level" => "Ground floor".to_owned(),
        "living" => "House".to_owned(),
        "corner" => "porch".to_owned(),
        "exemption" => "homestead".to_owned(),
        "lot" | "unfinished" | "garage" | "carport" | "porch" | "patio" | "deck" | "balcony"
        | "breezeway" | "storage" | "outbuilding" | "open" | "low" | "stair" | "court" => {
            capitalized(first)
        }
        _ => return None,
    };
    let with = [pieces, &[Piece::new(Sort::Text, format!("\"{name}\""))]].concat();
    Some(Edit::new(with, "the name is missing"))
}

fn capitalized(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// Whether a text is the name of the last space before the line, ignoring case.
pub(super) fn is_space(text: &str, attempt: &Attempt) -> bool {
    let name = text.trim_matches(['"', '“', '”']);
    attempt.space.as_ref().is_some_and(|space| space.eq_ignore_ascii_case(name))
}
