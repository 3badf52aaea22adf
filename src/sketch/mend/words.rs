//! Rules that rewrite words, names and word order into what can be read.

use super::change::{Attempt, Edit};
use super::pieces::{Piece, Sort, cut, join, replaced};
use super::slips;
use crate::diagnostic::Word;
use crate::sketch::phrases::{PHRASES, Where};

const DIRECTIONS: [&str; 12] =
    ["north", "east", "south", "west", "n", "e", "s", "w", "back", "right", "front", "left"];
const ROUGHLY: [&str; 14] = [
    "about",
    "approx",
    "approximately",
    "approximate",
    "circa",
    "ca",
    "roughly",
    "around",
    "est",
    "estimate",
    "guess",
    "maybe",
    "almost",
    "nearly",
];
const NOT_KNOWN: [&str; 14] = [
    "unknown",
    "na",
    "n",
    "tbd",
    "blank",
    "missing",
    "none",
    "inaccessible",
    "blocked",
    "unreachable",
    "unmeasured",
    "same",
    "x",
    "back",
];

/// The changes of words and word order that might help where reading stopped.
pub(super) fn edits(line: &str, pieces: &[Piece], attempt: &Attempt) -> Vec<Edit> {
    // The first piece that begins there or after it.
    let here = pieces.iter().position(|piece| piece.at + piece.text.len() > attempt.at.start);
    let here = here.unwrap_or(pieces.len());
    let mut edits = Vec::new();
    edits.extend(slips::edits(line, pieces, attempt));
    edits.extend(cells(line));
    edits.extend(roughly(pieces));
    edits.extend(not_measured(pieces));
    edits.extend(one_mark_texts(line, pieces));
    edits.extend(list_marker(pieces, attempt));
    edits.extend(phrases(line, pieces, here, attempt));
    edits.extend(without_mark(pieces, here));
    edits.extend(order(pieces, here, attempt));
    edits.extend(bearings(pieces));
    edits.extend(beyond_quarter(pieces));
    edits.extend(bare_lengths(pieces));
    edits.extend(in_parentheses(pieces));
    edits.extend(across(pieces, attempt));
    edits.extend(figures_and_heads(pieces, here));
    edits.extend(slanted(pieces));
    edits.extend(several(pieces, here));
    edits.extend(wanted_words(pieces, here, attempt));
    edits.extend(names(line, pieces, here, attempt));
    edits.extend(units_of_areas(pieces, here, attempt));
    edits.extend(rates(pieces));
    edits.extend(sizes(pieces));
    edits.extend(walls(pieces));
    edits
}

/// Changes that turn what was typed into a note or comment, where nothing else can be read.
pub(super) fn last_resorts(line: &str, pieces: &[Piece], attempt: &Attempt) -> Vec<Edit> {
    const COMMENT: &str = "a comment begins with `#`";
    let mut edits = Vec::new();
    if !matches!(attempt.word, Some(Word::Unexpected | Word::StrayCharacter | Word::UnknownWord)) {
        return edits;
    }
    let sentence = || line.trim_start_matches(is_comment_mark).trim_start();
    let words = pieces.iter().filter(|piece| piece.sort == Sort::Word).count();
    let starts_apart = line.starts_with(is_comment_mark);
    let counts = |piece: &Piece| piece.is_number() || piece.sort == Sort::Text;
    let says_nothing = |pieces: &[Piece]| !pieces.iter().any(counts);
    if (!attempt.knows_first && words >= 3 || starts_apart && words >= 1) && says_nothing(pieces) {
        edits.push(Edit::line(
            format!("# {}", sentence()),
            "this line says nothing about the house; a comment begins with `#`",
        ));
    }
    edits.extend(names_of_any_length(line, pieces, attempt));
    let here = pieces.iter().position(|piece| piece.at >= attempt.at.start);
    let Some(here) = here.filter(|here| *here > 0) else {
        edits.extend(junk_before(line, pieces));
        return edits;
    };
    let (kept, rest) = (join(&pieces[..here]), line[pieces[here].at..].trim());
    let may_go = says_nothing(&pieces[here..])
        && !pieces[here..].iter().any(|piece| piece.is_word(&POSITIONS));
    let is_comment = ["//", ";", "--", "/*", "%", "*"].iter().any(|mark| rest.starts_with(mark));
    let comment = format!("{kept}  # {}", rest.trim_start_matches(is_comment_mark).trim_start());
    if is_comment {
        edits.push(Edit::line(comment.clone(), COMMENT));
    }
    let plain = rest.trim_matches(|c: char| !c.is_alphanumeric());
    if !plain.is_empty() && !plain.contains(['"', '“', '”']) {
        if attempt.is_side {
            edits.push(Edit::line(
                format!("{kept} note \"{plain}\""),
                "anything else about a wall goes in a note",
            ));
        }
        edits.push(Edit::line(format!("{kept} \"{plain}\""), "a title needs a `\"` on each side"));
    }
    if may_go && (pieces[here].sort == Sort::Word || pieces[here].is_mark("([")) {
        edits.push(Edit::line(comment, COMMENT));
    }
    edits
}

/// Words that say where something is or how it counts, which no comment and no name may swallow.
const POSITIONS: [&str; 18] = [
    "inside", "outside", "frame", "within", "in", "at", "by", "next", "beside", "behind", "corner",
    "recorded", "measured", "detached", "below", "grade", "closing", "heated",
];

fn is_comment_mark(c: char) -> bool {
    matches!(c, '/' | ';' | '*' | '%' | '\'' | '-' | '!' | '<' | '=' | '>' | '\\' | ' ' | '~' | '(')
}

/// `2-car garage "Garage"`: words before the first word of the format.
fn junk_before(line: &str, pieces: &[Piece]) -> Option<Edit> {
    let begins = [
        "level",
        "living",
        "garage",
        "carport",
        "porch",
        "patio",
        "deck",
        "balcony",
        "storage",
        "outbuilding",
        "unfinished",
    ];
    let first =
        pieces.iter().position(|piece| piece.is_word(&begins)).filter(|first| *first > 0)?;
    let (junk, rest) = line.split_at(pieces[first].at);
    Some(Edit::line(
        format!("{rest}  # {}", junk.trim()),
        "a line begins with its word; anything else goes into a comment",
    ))
}

/// A name that contains words of the format, such as `Room by the lake`.
fn names_of_any_length(line: &str, pieces: &[Piece], attempt: &Attempt) -> Vec<Edit> {
    let here = pieces.iter().position(|piece| piece.at >= attempt.at.start);
    let Some(here) = here.filter(|_| attempt.wanted.text) else { return Vec::new() };
    (here + 1..=pieces.len()).filter_map(|end| named(line, pieces, here, end)).collect()
}

/// Table cells: `north,"42' 7"""`, `| north | 42' |`, or separated by tabs.
fn cells(line: &str) -> Vec<Edit> {
    let cause = "these are the cells of a table; a line is words with spaces between them";
    let edit = |cells: Vec<String>| {
        let cells: Vec<String> = cells
            .iter()
            .map(|cell| cell.trim().to_owned())
            .filter(|cell| !cell.is_empty())
            .collect();
        Edit::line(cells.join(" "), cause)
    };
    let mut edits = Vec::new();
    for mark in [',', '\t', ';', '|'] {
        if line.contains(mark) {
            let all = split_cells(line, mark);
            let is_table = all.first().is_some_and(|cell| cell.split_whitespace().count() <= 2);
            if all.len() > 1 && is_table || line.starts_with('"') {
                edits.push(edit(all));
            }
        }
    }
    if line.starts_with('"') && line.ends_with('"') && line.contains("\"\"") {
        edits.push(edit(split_cells(line, '\u{0}')));
    }
    edits
}

/// The cells of a line. Quoted cells lose their quotation marks, and doubled ones inside become single.
fn split_cells(line: &str, mark: char) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut characters = line.chars().peekable();
    let mut quoted = false;
    let mut fresh = true;
    while let Some(c) = characters.next() {
        let Some(cell) = cells.last_mut() else { break };
        if c == '"' && quoted {
            if characters.peek() == Some(&'"') {
                characters.next();
                cell.push('"');
            } else {
                quoted = false;
            }
        } else if c == '"' && fresh {
            quoted = true;
        } else if c == mark && !quoted && !(mark == ',' && is_grouped(cell, &characters)) {
            cells.push(String::new());
            fresh = true;
            continue;
        } else {
            cell.push(c);
        }
        fresh = fresh && c == ' ';
    }
    cells
}

/// Whether a comma stands between digits, as in `1,200`.
fn is_grouped(before: &str, after: &std::iter::Peekable<std::str::Chars<'_>>) -> bool {
    before.ends_with(|c: char| c.is_ascii_digit())
        && after.clone().next().is_some_and(|c| c.is_ascii_digit())
}

/// `about 13 ft`, `13 ft approx`, `~42'`, `42' ?`: the side becomes `estimated`. A figure keeps the word in its
/// title.
fn roughly(pieces: &[Piece]) -> Vec<Edit> {
    let says_so = |piece: &Piece| piece.is_word(&ROUGHLY) || piece.is_mark("~≈?∼");
    let Some(said) = pieces.iter().position(says_so) else { return Vec::new() };
    if !pieces.iter().any(Piece::is_number) {
        return Vec::new();
    }
    let mut left: Vec<Piece> = Vec::new();
    for (at, piece) in pieces.iter().enumerate() {
        let is_point = piece.is_mark(".") && at > 0 && says_so(&pieces[at - 1]);
        if says_so(piece) || is_point || piece.is_mark("()") {
            continue;
        }
        let touches = piece.touches && !(at > 0 && says_so(&pieces[at - 1]));
        left.push(Piece { touches, ..piece.clone() });
    }
    if left.first().is_some_and(|first| first.is_word(&["record", "listing", "plan", "figure"])) {
        left.push(Piece::new(Sort::Text, format!("\"{}\"", pieces[said].text)));
        return vec![Edit::new(left, "a figure keeps other words in its title")];
    }
    if !left.iter().any(|piece| piece.is_word(&["estimated"])) {
        left.push(Piece::word("estimated"));
    }
    vec![Edit::new(left, "a length that was not measured exactly is `estimated`")]
}

/// `west ?`, `west unknown`, `west --`: the side becomes `by closing`.
fn not_measured(pieces: &[Piece]) -> Vec<Edit> {
    let [direction, rest @ ..] = pieces else { return Vec::new() };
    let no_length = |piece: &Piece| {
        piece.is_mark("?-–—_.*/")
            || piece.is_word(&NOT_KNOWN)
            || piece.is_word(&[
                "not", "measured", "out", "of", "reach", "cannot", "couldn't", "can't", "could",
                "be", "reached", "a",
            ])
    };
    let known = rest.iter().take_while(|piece| no_length(piece)).count();
    let remark = &rest[known..];
    let is_remark = known > 0
        && rest[0].is_mark("?-–—_.")
        && remark.iter().all(|piece| piece.sort != Sort::Text && !piece.is_number());
    if !direction.is_word(&DIRECTIONS) || !remark.is_empty() && !is_remark {
        return Vec::new();
    }
    let by = [direction.clone(), Piece::word("by"), Piece::word("closing")];
    if !remark.is_empty() {
        let line = format!("{} note \"{}\"", join(&by), join(remark).trim());
        return vec![Edit::line(
            line,
            "a wall without a length follows from the others `by closing`",
        )];
    }
    vec![Edit::new(by.to_vec(), "a wall without a length follows from the others `by closing`")]
}

/// `'House'`, `living "House`, `living House"`: a text with other marks, or with only one.
fn one_mark_texts(line: &str, pieces: &[Piece]) -> Vec<Edit> {
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
        && line.matches('"').count() % 2 == 1
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

/// `1. north 42'`, `3) north 42'`, `- north 42'`, `side 3: north 42'`
fn list_marker(pieces: &[Piece], attempt: &Attempt) -> Vec<Edit> {
    if attempt.at.start > 6 {
        return Vec::new();
    }
    let named = usize::from(
        pieces
            .first()
            .is_some_and(|piece| piece.is_word(&["side", "wall", "leg", "no", "step", "line"])),
    );
    let number = usize::from(
        pieces
            .get(named)
            .is_some_and(|piece| piece.is_number() && piece.text.trim_end_matches('.').len() <= 3),
    );
    let marks = pieces
        .iter()
        .skip(named + number)
        .take_while(|piece| piece.is_mark(".):]-–—•*·>+"))
        .count();
    let count = named + number + marks;
    if count == 0 || count >= pieces.len() || number == 0 && marks == 0 {
        return Vec::new();
    }
    let is_first_word =
        pieces[count].is_word(&DIRECTIONS) || pieces[count].sort == Sort::Word && number == 0;
    if !is_first_word || pieces.len() < count + 2 {
        return Vec::new();
    }
    vec![Edit::conversion(
        pieces[count..].to_vec(),
        "a line begins with its word; sides are numbered by the program",
    )]
}

/// Phrases that people write for words of the format.
fn phrases(line: &str, pieces: &[Piece], here: usize, attempt: &Attempt) -> Vec<Edit> {
    let mut edits = Vec::new();
    for start in [Some(here), here.checked_sub(1)].into_iter().flatten() {
        let wants_kind = attempt.wanted.words.iter().any(|word| word == "living");
        let place = if start == 0 || wants_kind { Where::First } else { Where::Later };
        let mut found: Vec<(usize, &str)> = PHRASES
            .iter()
            .filter(|(when, ..)| *when == place)
            .filter_map(|(_, phrase, by)| Some((said_at(pieces, start, phrase)?, *by)))
            .collect();
        found.sort_by_key(|(taken, _)| std::cmp::Reverse(*taken));
        for (taken, by) in found {
            let end = start + taken;
            let phrase = join(&pieces[start..end]);
            if by == "#" {
                edits.push(Edit::line(
                    format!("# {line}"),
                    format!("a sides file has no place for `{phrase}`; a comment begins with `#`"),
                ));
                continue;
            }
            // `8' x 6'` is a size, and not a length with a word too much.
            let is_size = matches!(phrase.as_str(), "x" | "by")
                && start > 0
                && pieces.get(end).is_some_and(Piece::is_number);
            // `within 1/4"` is a tolerance; `within House` names a space.
            let names_a_space = by == "tolerance" && !pieces.get(end).is_some_and(Piece::is_number);
            if by.is_empty() && is_size || names_a_space {
                continue;
            }
            let cause = if by.is_empty() {
                format!("`{phrase}` has no meaning here")
            } else {
                format!("a sides file has another word for `{phrase}`")
            };
            let words = by.replace('-', "");
            let is_compound = by.contains("-foot");
            let words = if is_compound { by.to_owned() } else { words };
            let names = !is_compound && by.contains('-');
            let said = end;
            let mut end = end;
            while !by.is_empty()
                && place == Where::First
                && pieces.get(end).is_some_and(|next| next.is_mark(":="))
            {
                end += 1;
            }
            let next_is_text = pieces[end..].iter().any(|piece| piece.sort == Sort::Text);
            if names && !next_is_text {
                // The phrase is also the name; words after it, up to a number, may be part of the name.
                let (head, tail) = by.split_once('-').unwrap_or((by, ""));
                let more =
                    pieces[end..].iter().take_while(|piece| piece.sort == Sort::Word).count();
                for more in [0, more] {
                    let last = if more == 0 { said } else { end + more };
                    let name = format!("\"{}\"", join(&pieces[start..last]));
                    let named = [Piece::word(head), Piece::new(Sort::Text, name)];
                    let mut by = named.to_vec();
                    by.extend(cut(tail));
                    edits.push(Edit::new(replaced(pieces, start, end + more, &by), cause.clone()));
                }
                continue;
            }
            let mut by = cut(&words);
            by.iter_mut().for_each(|piece| piece.touches = false);
            edits.push(Edit::new(replaced(pieces, start, end, &by), cause));
        }
    }
    edits
}

/// The number of pieces a phrase takes if it stands at `start`.
fn said_at(pieces: &[Piece], start: usize, phrase: &str) -> Option<usize> {
    let wanted = cut(phrase);
    let there = pieces.get(start..start + wanted.len())?;
    let same = there
        .iter()
        .zip(&wanted)
        .all(|(one, other)| one.text.to_lowercase().replace('’', "'") == other.text);
    same.then_some(wanted.len())
}

/// A meaningless mark where reading stopped: a comma, a colon, an arrow, a parenthesis.
fn without_mark(pieces: &[Piece], here: usize) -> Vec<Edit> {
    let mut edits = Vec::new();
    for at in [Some(here), here.checked_sub(1)].into_iter().flatten() {
        let Some(piece) = pieces.get(at) else { continue };
        let signs_a_number = piece.is_mark("-–")
            && at.checked_sub(1).is_some_and(|before| pieces[before].is_word(&DIRECTIONS))
            && pieces.get(at + 1).is_some_and(Piece::is_number);
        let adds = piece.is_mark("+") && pieces.get(at + 1).is_some_and(Piece::is_number);
        if signs_a_number || adds {
            continue;
        }
        if piece.is_mark(",;:=.→>•*·()[]@&+–—_!|-\\{}¶")
            || piece.is_mark("?~") && !pieces.iter().any(Piece::is_number)
        {
            let cause = format!("`{}` has no meaning here", piece.text);
            let mut left = replaced(pieces, at, at + 1, &[]);
            if let Some(next) = left.get_mut(at) {
                next.touches = false;
            }
            edits.push(Edit::new(left, cause));
        }
    }
    edits
}

/// Wrong word order: a length before its direction, or a text before what it belongs to.
fn order(pieces: &[Piece], here: usize, attempt: &Attempt) -> Vec<Edit> {
    let mut edits = Vec::new();
    // `42' 7" north`
    if let Some(run) = pieces.iter().position(Piece::is_number) {
        let after =
            pieces[run..].iter().position(|piece| piece.is_word(&DIRECTIONS)).map(|at| at + run);
        if let Some(direction) = after
            && pieces.get(direction + 1).is_none_or(|next| !next.is_number())
            && (run == 0 || !pieces[run - 1].is_word(&DIRECTIONS))
        {
            let mut by = vec![Piece { touches: false, ..pieces[direction].clone() }];
            by.extend_from_slice(&pieces[run..direction]);
            by[1].touches = false;
            edits.push(Edit::new(
                replaced(pieces, run, direction + 1, &by),
                "the direction comes before the length",
            ));
        }
    }
    let text = |from: usize| {
        pieces.iter().skip(from).position(|piece| piece.sort == Sort::Text).map(|at| at + from)
    };
    // A name is expected here but stands further on.
    if attempt.wanted.text
        && let Some(text) = text(here + 1)
    {
        let mut by = vec![pieces[text].clone()];
        by.extend_from_slice(&pieces[here..text]);
        edits.push(Edit::new(
            replaced(pieces, here, text + 1, &by),
            "the name comes right after the first word",
        ));
    }
    // A text stands where none is expected: it may belong at the end.
    if let Some(piece) = pieces.get(here).filter(|piece| piece.sort == Sort::Text) {
        let mut left = replaced(pieces, here, here + 1, &[]);
        let piece = Piece { touches: false, ..piece.clone() };
        let mut with_note = left.clone();
        let mut second = left.clone();
        left.push(piece.clone());
        edits.push(Edit::new(left, "the text is in the wrong place"));
        if attempt.is_side {
            with_note.push(Piece::word("note"));
            with_note.push(piece.clone());
            edits.push(Edit::new(with_note, "a text after a side is a `note` or a `photo`"));
        }
        if here == 0 && second.len() > 1 {
            second.insert(1, piece);
            edits.push(Edit::new(second, "the word comes before the name"));
        }
    }
    // A date is expected here but stands further on.
    let is_date = |at: usize| {
        at + 4 < pieces.len()
            && pieces[at].is_number()
            && pieces[at].text.len() == 4
            && pieces[at + 1].is_mark("-")
            && pieces[at + 3].is_mark("-")
    };
    if pieces.first().is_some_and(|piece| piece.is_word(&["measured"]))
        && let Some(date) = (2..pieces.len()).find(|&at| is_date(at))
    {
        let mut by = pieces[date..date + 5].to_vec();
        by[0].touches = false;
        let mut rest = pieces[1..date].to_vec();
        if rest.last().is_some_and(|piece| piece.is_word(&["on"])) {
            rest.pop();
        }
        by.extend(rest);
        by.extend_from_slice(&pieces[date + 5..]);
        edits.push(Edit::new(
            replaced(pieces, 1, pieces.len(), &by),
            "the date comes right after `measured`",
        ));
    }
    edits
}

/// Bearings as in deeds and tables of calls.
fn bearings(pieces: &[Piece]) -> Vec<Edit> {
    let mut edits = Vec::new();
    let northing = ["n", "north", "s", "south"];
    let easting = ["e", "east", "w", "west"];
    let begins = usize::from(pieces.first().is_some_and(|piece| piece.is_word(&["bearing"])));
    let Some(from) = pieces.get(begins) else { return edits };
    let is_angle = |piece: &Piece| {
        piece.is_number()
            || piece.is_mark("°º'’′\"”″-.:")
            || piece.is_word(&["deg", "degrees", "d", "min", "sec"])
            || piece.touches && piece.is_word(&["m", "s"])
    };
    if from.is_word(&northing) {
        let length = pieces[begins + 1..].iter().take_while(|piece| is_angle(piece)).count();
        let end = begins + 1 + length;
        let toward = pieces.get(end).is_some_and(|piece| piece.is_word(&easting));
        if begins == 0 && toward && length > 0 {
            let with = [&[Piece::word("bearing")], pieces].concat();
            edits.push(Edit::new(with, "a deed's call begins with `bearing`"));
        }
        if length > 0 && (toward || begins == 1) {
            // `45-30-15`, `45:30`, `45d30m`
            let parts: Vec<Piece> = pieces[begins + 1..end]
                .iter()
                .filter(|piece| piece.is_number())
                .map(|piece| Piece { touches: false, ..piece.clone() })
                .collect();
            if (1..=3).contains(&parts.len()) && toward {
                let marks = ["°", "'", "\""];
                let mut by = Vec::new();
                for (part, mark) in parts.into_iter().zip(marks) {
                    by.push(part);
                    by.push(Piece::new(Sort::Mark, mark).touching());
                }
                if let Some(piece) = pieces.get(end) {
                    by.push(Piece { touches: false, ..piece.clone() });
                }
                edits.push(Edit::new(
                    replaced(pieces, begins + 1, end + 1, &by),
                    "degrees, minutes and seconds each have their own mark",
                ));
            }
        }
        // East or west is missing: it could be either.
        if begins == 1 && !toward {
            for letter in ["E", "W"] {
                for at in begins + 2..=end.min(pieces.len()) {
                    let mut with = pieces.to_vec();
                    with.insert(at, Piece::word(letter));
                    edits.push(Edit::new(with, "a bearing ends in E or W"));
                }
            }
        }
    }
    edits.extend(azimuth(pieces, begins));
    edits
}

/// `bearing 225° 30'`, `bearing NE 30'`: degrees clockwise from north.
fn azimuth(pieces: &[Piece], begins: usize) -> Option<Edit> {
    use rust_decimal::Decimal;
    if begins == 0 {
        return None;
    }
    let cause = "a bearing goes from north or south, by 0 to 90 degrees, toward east or west";
    let corners = [
        ("ne", "N", "E"),
        ("nw", "N", "W"),
        ("se", "S", "E"),
        ("sw", "S", "W"),
        ("northeast", "N", "E"),
        ("northwest", "N", "W"),
        ("southeast", "S", "E"),
        ("southwest", "S", "W"),
    ];
    let word = pieces.get(1)?;
    if let Some((_, from, toward)) = corners.iter().find(|(name, ..)| word.is_word(&[name])) {
        let by = cut(&format!("{from} 45° {toward}"));
        return Some(Edit::conversion(replaced(pieces, 1, 2, &by), cause));
    }
    let degrees: Decimal = word.is_number().then(|| word.text.parse().ok())??;
    let mut end = 2;
    while pieces
        .get(end)
        .is_some_and(|piece| piece.is_mark("°º") || piece.is_word(&["deg", "degrees"]))
    {
        end += 1;
    }
    if end == 2 || pieces.get(end).is_some_and(|piece| piece.is_word(&["e", "w", "east", "west"])) {
        return None;
    }
    let quarter = Decimal::from(90);
    let full = quarter * Decimal::from(4);
    let (from, angle, toward) = match degrees {
        d if d < Decimal::ZERO || d > full => return None,
        d if d <= quarter => ("N", d, "E"),
        d if d <= quarter + quarter => ("S", quarter + quarter - d, "E"),
        d if d <= full - quarter => ("S", d - quarter - quarter, "W"),
        d => ("N", full - d, "W"),
    };
    let by = cut(&format!("{from} {}° {toward}", angle.normalize()));
    let mut by = by;
    if let Some(first) = by.first_mut() {
        first.touches = false;
    }
    Some(Edit::conversion(replaced(pieces, 1, end, &by), cause))
}

/// `bearing N 95° E 30'`: more than 90 degrees, so measured from the other pole.
fn beyond_quarter(pieces: &[Piece]) -> Option<Edit> {
    use rust_decimal::Decimal;
    let [begins, from, degrees, ..] = pieces else { return None };
    let degrees: Decimal = degrees.is_number().then(|| degrees.text.parse().ok())??;
    let quarter = Decimal::from(90);
    let other = if from.is_word(&["n", "north"]) { "S" } else { "N" };
    let fits = begins.is_word(&["bearing"])
        && from.is_word(&["n", "north", "s", "south"])
        && degrees > quarter
        && degrees <= quarter + quarter;
    fits.then(|| {
        let angle = (quarter + quarter - degrees).normalize().to_string();
        let by = [Piece::word(other), Piece::new(Sort::Number, angle)];
        Edit::conversion(
            replaced(pieces, 1, 3, &by),
            "a bearing goes from 0 to 90 degrees, counted from north or from south",
        )
    })
}

/// `arc east 8' 2' south`, `bay south 8' 2' 4'`, `north 42' 43'`: missing words between lengths.
fn bare_lengths(pieces: &[Piece]) -> Vec<Edit> {
    let words: &[&str] = match pieces.first() {
        Some(first) if first.is_word(&["arc"]) => &["rise"],
        Some(first) if first.is_word(&["bay"]) => &["out", "flat"],
        Some(first) if first.is_word(&DIRECTIONS) => &["recorded"],
        _ => return Vec::new(),
    };
    let is_feet = |at: usize| {
        pieces.get(at).is_some_and(|piece| {
            piece.is_mark("'’′") || piece.is_word(&["ft", "feet", "foot", "m"])
        })
    };
    let next = (1..pieces.len()).find(|&at| {
        pieces[at].is_number()
            && is_feet(at + 1)
            && at >= 2
            && (is_feet(at - 1) || pieces[at - 1].is_mark("\"”″"))
    });
    let Some(next) = next else { return Vec::new() };
    let used = |word: &&&str| !pieces.iter().any(|piece| piece.is_word(&[word]));
    words
        .iter()
        .find(used)
        .map(|word| {
            let mut by = pieces.to_vec();
            by[next].touches = false;
            by.insert(next, Piece::word(word));
            let edit = Edit::new(by, format!("the word `{word}` is missing between two lengths"));
            if *word == "recorded" { edit.weak() } else { edit }
        })
        .into_iter()
        .collect()
}

/// `north 42' (43')`: a length in parentheses is the record's.
fn in_parentheses(pieces: &[Piece]) -> Option<Edit> {
    let open = pieces.iter().position(|piece| piece.is_mark("([")).filter(|open| *open > 1)?;
    let close =
        pieces.iter().rposition(|piece| piece.is_mark(")]")).filter(|close| *close > open + 1)?;
    let is_length = pieces[open + 1].is_number() && pieces[0].is_word(&DIRECTIONS);
    is_length.then(|| {
        let mut by = vec![Piece::word("recorded")];
        by.extend_from_slice(&pieces[open + 1..close]);
        by[1].touches = false;
        Edit::new(
            replaced(pieces, open, close + 1, &by),
            "the record's length goes after `recorded`",
        )
    })
}

/// `arc east 8' rise 2' west`, `diagonal north 3' north 3'`: a direction along the wall where one across it is
/// expected.
fn across(pieces: &[Piece], attempt: &Attempt) -> Vec<Edit> {
    if !matches!(attempt.word, Some(Word::BadArc | Word::BadDiagonal)) {
        return Vec::new();
    }
    let Some(last) = pieces.iter().rposition(|piece| piece.is_word(&DIRECTIONS)) else {
        return Vec::new();
    };
    let others = if pieces[last].is_word(&["north", "south", "n", "s"]) {
        ["east", "west"]
    } else {
        ["north", "south"]
    };
    let cause = if attempt.word == Some(Word::BadArc) {
        "a curved wall rises square to its chord"
    } else {
        "a slanted wall runs one way and rises across it"
    };
    others
        .map(|other| Edit::new(replaced(pieces, last, last + 1, &[Piece::word(other)]), cause))
        .into()
}

/// `record 2024 1,990 sq ft`: the year goes after the area, as a title.
fn year_first(pieces: &[Piece]) -> Option<Edit> {
    let [word, year, area, ..] = pieces else { return None };
    let is_year =
        year.text.len() == 4 && (year.text.starts_with("19") || year.text.starts_with("20"));
    if !word.is_word(&["record", "listing", "plan"]) || !is_year || !area.is_number() {
        return None;
    }
    let mut left = replaced(pieces, 1, 2, &[]);
    left.push(Piece::new(Sort::Text, format!("\"{}\"", year.text)));
    Some(Edit::new(left, "what a figure is called goes after it, between `\"`"))
}

/// `2,031 sq ft` alone, `record $412,000`, `tax year 26`, `true north 4° east`, `from "step"`.
fn figures_and_heads(pieces: &[Piece], here: usize) -> Vec<Edit> {
    let mut edits = Vec::new();
    let Some(first) = pieces.first() else { return edits };
    if first.is_number()
        && pieces.get(1).is_some_and(|unit| unit.is_word(&["sq", "sqft", "sf", "square"]))
    {
        for word in ["record", "listing"] {
            let with = [&[Piece::word(word)], pieces].concat();
            edits.push(Edit::new(with, "an area needs a word that says whose it is"));
        }
    }
    edits.extend(year_first(pieces));
    if first.is_word(&["record", "listing"]) && pieces.get(1).is_some_and(|sum| sum.is_mark("$")) {
        let by = [Piece::word("value"), Piece::word("market")];
        edits.push(Edit::new(replaced(pieces, 0, 1, &by), "a sum of money is not an area"));
    }
    if first.is_word(&["tax"]) && !pieces.iter().any(|piece| piece.is_word(&["rate"])) {
        let year = pieces.last().filter(|piece| piece.is_number() && piece.text.len() == 2);
        if let Some(year) = year {
            let by = [Piece::word("year"), Piece::new(Sort::Number, format!("20{}", year.text))];
            edits.push(Edit::conversion(
                replaced(pieces, 1, pieces.len(), &by),
                "a year has four digits",
            ));
        }
    }
    if first.is_word(&["place"]) && pieces.len() > 1 {
        let none = [first.clone(), Piece::word("none")];
        let cause = format!("there are no rules for {}", join(&pieces[1..]));
        edits.push(Edit::new(none.to_vec(), cause).weak());
    }
    if first.is_word(&["true"]) && pieces.get(2).is_some_and(Piece::is_number) {
        edits.push(Edit::new(
            replaced(pieces, 2, 2, &[Piece::word("N")]),
            "a bearing begins at N or S",
        ));
    }
    let text = here.checked_sub(1).filter(|at| pieces[*at].sort == Sort::Text && *at > 1);
    if let Some(text) = text.filter(|text| pieces[text - 1].is_word(&["from"])) {
        edits.push(Edit::new(
            replaced(pieces, text, text, &[Piece::word("corner")]),
            "the word `corner` is missing",
        ));
    }
    edits
}

/// `diagonal south west 4 ft`, `NE 4'`: one length for both legs.
fn slanted(pieces: &[Piece]) -> Vec<Edit> {
    let begins = usize::from(pieces.first().is_some_and(|piece| piece.is_word(&["diagonal"])));
    let corners = [
        ("ne", "north", "east"),
        ("nw", "north", "west"),
        ("se", "south", "east"),
        ("sw", "south", "west"),
        ("northeast", "north", "east"),
        ("northwest", "north", "west"),
        ("southeast", "south", "east"),
        ("southwest", "south", "west"),
        ("north-east", "north", "east"),
        ("north-west", "north", "west"),
        ("south-east", "south", "east"),
        ("south-west", "south", "west"),
    ];
    let Some(first) = pieces.get(begins) else { return Vec::new() };
    let second = pieces.get(begins + 1);
    let compass = |piece: &Piece| {
        ["north", "east", "south", "west"]
            .into_iter()
            .find(|word| piece.is_word(&[word, &word[..1]]))
    };
    let (legs, taken) = match corners.iter().find(|(name, ..)| first.is_word(&[name])) {
        Some((_, one, two)) => ((*one, *two), 1),
        None => match (compass(first), second.and_then(compass)) {
            (Some(one), Some(two)) => ((one, two), 2),
            _ => return Vec::new(),
        },
    };
    let rest = &pieces[begins + taken..];
    if rest.is_empty() {
        return Vec::new();
    }
    let numbers = |piece: &&Piece| {
        piece.is_number()
            || piece.is_mark("'’′\"”″/½¼¾⅛⅜⅝⅞-")
            || piece.is_word(&["ft", "feet", "foot", "in", "inch", "inches", "m", "cm", "mm"])
    };
    let count = rest.iter().take_while(numbers).count();
    let (length, after) = (join(&rest[..count]), join(&rest[count..]));
    let (one, two) = legs;
    let letter = |word: &str| word[..1].to_uppercase();
    let cause = "a slanted wall has two lengths, how far it runs and how far it rises; or one length and a bearing";
    let lines = if ["north", "south"].contains(&one) {
        vec![
            format!("diagonal {one} {length} {two} {length} {after}"),
            format!("bearing {} 45° {} {length} {after}", letter(one), letter(two)),
        ]
    } else {
        vec![format!("diagonal {one} {length} {two} {length} {after}")]
    };
    lines.into_iter().map(|line| Edit::line(line.trim_end(), cause)).collect()
}

/// `north 42' east 30'`: several statements on one line.
fn several(pieces: &[Piece], here: usize) -> Vec<Edit> {
    let Some(piece) = pieces.get(here).filter(|_| here >= 2) else { return Vec::new() };
    if pieces[0].is_word(&["bearing", "diagonal", "arc", "bay"]) {
        return Vec::new();
    }
    let begins = DIRECTIONS
        .iter()
        .chain(&["close", "corner", "living", "garage", "porch", "level", "overall"]);
    let is_space = piece.is_word(&["living", "garage", "porch", "level"]);
    let is_named = pieces.get(here + 1).is_some_and(|next| next.sort == Sort::Text);
    if !begins.clone().any(|word| piece.is_word(&[word])) || is_space && !is_named {
        return Vec::new();
    }
    let line = format!("{}\n{}", join(&pieces[..here]), join(&pieces[here..]));
    let cause = "each side goes on its own line".to_owned();
    vec![Edit::line(line, cause)]
}

/// Whether a text is the name of the last space before the line, in whatever case.
fn is_space(text: &str, attempt: &Attempt) -> bool {
    let name = text.trim_matches(['"', '“', '”']);
    attempt.space.as_ref().is_some_and(|space| space.eq_ignore_ascii_case(name))
}

/// Inserts one of the words that were expected where reading stopped.
fn wanted_words(pieces: &[Piece], here: usize, attempt: &Attempt) -> Vec<Edit> {
    let mut edits = Vec::new();
    let after = pieces.get(here);
    let is_length = after.is_some_and(|piece| piece.is_number() || piece.is_mark("½¼¾$"));
    let is_text = after.is_some_and(|piece| piece.sort == Sort::Text);
    for word in &attempt.wanted.words {
        let fits = match word.as_str() {
            "recorded" | "tolerance" | "rise" | "out" | "flat" | "per" | "sold" | "on"
            | "since" | "market" | "assessed" | "year" | "under" => is_length,
            "note" | "counting" | "by" | "with" | "of" | "file" => is_text,
            // Only what names a space that is there; any other text is a remark.
            "within" => after.is_some_and(|piece| is_space(&piece.text, attempt)),
            "from" => after.is_some_and(|piece| piece.is_word(&["corner"])),
            "corner" | "to" | "grade" | "outline" | "closing" | "seen" | "north" => true,
            _ => false,
        };
        if fits {
            let cause = format!("the word `{word}` is missing");
            let mut by = pieces.to_vec();
            if let Some(next) = by.get_mut(here) {
                next.touches = false;
            }
            by.insert(here.min(by.len()), Piece::word(word));
            edits.push(Edit::new(by, cause).weak());
        }
    }
    let has =
        |words: &[&str]| attempt.wanted.words.iter().any(|word| words.contains(&word.as_str()));
    // An arc without the side to which it rises, or `interior` without `seen`.
    if here >= pieces.len() && pieces.first().is_some_and(|piece| piece.is_word(&["arc"])) {
        for direction in ["north", "south", "east", "west"] {
            let with = [pieces, &[Piece::word(direction)]].concat();
            edits.push(Edit::new(with, "the side to which the curve rises is missing"));
        }
    }
    if here >= pieces.len() && has(&["seen"]) {
        edits.push(Edit::new(
            [pieces, &cut("not seen")].concat(),
            "`seen` or `not seen` is missing",
        ));
    }
    edits
}

/// A name without quotation marks, ending anywhere from which the rest of the line can be read.
fn names(line: &str, pieces: &[Piece], here: usize, attempt: &Attempt) -> Vec<Edit> {
    if !attempt.wanted.text {
        return Vec::new();
    }
    let first = pieces.first().map(|piece| piece.text.to_lowercase()).unwrap_or_default();
    if here >= pieces.len() {
        return missing_name(pieces, &first).into_iter().collect();
    }
    let mut edits = Vec::new();
    // `from corner 3`: the corner belongs to the last named space.
    let before = here.checked_sub(1).and_then(|at| pieces.get(at));
    if let Some(space) = &attempt.space
        && before.is_some_and(|before| before.is_word(&["corner"]))
        && pieces[here].is_number()
        && here >= 2
    {
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
        "adjoining",
    ];
    // `garage within …`: the name itself is missing.
    if here == 1 && pieces[here].is_word(&["within", "inside", "from", "start", "detached", "at"]) {
        let with = missing_name(&pieces[..1], &first);
        let rest = join(&pieces[here..]);
        edits.extend(with.map(|named| Edit::line(format!("{} {rest}", named.line), named.cause)));
    }
    // After `within` and `from` a name has to be one that is there, as it is written there.
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

/// The pieces from `here` up to, not including, `end` as a quoted name.
fn named(line: &str, pieces: &[Piece], here: usize, end: usize) -> Option<Edit> {
    let last = pieces.get(end - 1)?;
    let typed = line[pieces.get(here)?.at..last.at + last.text.len()].trim();
    let name = typed.trim_matches(['\'', '’', '‘', '`', ':', '=', ',', '(', ')', ' ']);
    if name.is_empty() || name.contains(['"', '“', '”']) {
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

/// `garage`, `level`, `corner`: a missing name, where any name will do.
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

/// An area without its unit, or with another word for it.
fn units_of_areas(pieces: &[Piece], here: usize, attempt: &Attempt) -> Vec<Edit> {
    let mut edits = Vec::new();
    if attempt.word != Some(Word::BadArea)
        && attempt.word != Some(Word::Unexpected)
        && attempt.word != Some(Word::StrayCharacter)
    {
        return edits;
    }
    let may_lack = attempt.word == Some(Word::BadArea);
    let cause = "an area needs its unit";
    let number = pieces.iter().enumerate().filter(|(at, piece)| {
        piece.is_number() && (piece.at >= attempt.at.start || at + 1 == here || *at == here)
    });
    for (at, _) in number {
        for unit in [
            &["ft"][..],
            &["feet"],
            &["foot"],
            &["square"],
            &["sq"],
            &["s"],
            &["sqf"],
            &["'"],
            &["sq", "."],
            &["s", ".", "f", "."],
            &["s", "f"],
            &["ft", "sq"],
            &["feet", "square"],
            &["sft"],
            &["sqft", "."],
            &["sq", "'"],
            &["square", "ft", "."],
            &["sq-ft"],
            &["sq", "-", "ft"],
            &["ft", "^"],
            &["m"],
            &["meters"],
        ] {
            let there = pieces.get(at + 1..at + 1 + unit.len());
            if there.is_some_and(|there| {
                there.iter().zip(unit).all(|(one, other)| one.text.eq_ignore_ascii_case(other))
            }) {
                let (unit_word, cause) = match unit[0].starts_with('m') {
                    true => ("m", "the unit of an area is `sq m`"),
                    false => ("ft", "the unit of an area is `sq ft`"),
                };
                let by = [Piece::word("sq"), Piece::word(unit_word)];
                edits.push(Edit::new(replaced(pieces, at + 1, at + 1 + unit.len(), &by), cause));
            }
        }
        let next_is_unit = pieces.get(at + 1).is_some_and(|piece| {
            piece.is_word(&[
                "sq", "sqft", "sf", "sqm", "acre", "acres", "hectare", "hectares", "square", "m",
                "cm", "mm", "ft", "in",
            ]) || piece.is_mark("'\"’”′″/")
        });
        if !next_is_unit && may_lack {
            for unit in [&["sq", "ft"][..], &["acres"]] {
                let mut with = pieces.to_vec();
                for word in unit.iter().rev() {
                    with.insert(at + 1, Piece::word(word));
                }
                if *unit != ["acres"] || pieces.first().is_some_and(|piece| piece.is_word(&["lot"]))
                {
                    edits.push(Edit::new(with, cause));
                }
            }
        }
    }
    edits
}

/// `tax rate 2.14%`, `tax rate 2.14`, `21.4 mills`
fn rates(pieces: &[Piece]) -> Vec<Edit> {
    let Some(at) = pieces.iter().position(Piece::is_number) else { return Vec::new() };
    if !pieces.first().is_some_and(|piece| piece.is_word(&["tax"])) || at < 2 {
        return Vec::new();
    }
    let cause = "a tax rate says per how many dollars";
    let (taken, per) = match pieces.get(at + 1) {
        None => (0, "per $100"),
        Some(piece) if piece.is_mark("%") || piece.is_word(&["percent"]) => (1, "per $100"),
        Some(piece) if piece.is_word(&["mill", "mills"]) => (1, "per $1,000"),
        Some(piece)
            if piece.is_word(&["per"])
                && pieces.get(at + 2).is_some_and(|next| next.is_word(&["hundred"])) =>
        {
            (2, "per $100")
        }
        Some(piece)
            if piece.is_word(&["per"])
                && pieces.get(at + 2).is_some_and(|next| next.is_word(&["thousand"])) =>
        {
            (2, "per $1,000")
        }
        Some(piece)
            if piece.is_mark("/") && pieces.get(at + 2).is_some_and(|next| next.text == "100") =>
        {
            (2, "per $100")
        }
        Some(piece) if piece.sort == Sort::Text => (0, "per $100"),
        Some(_) => return Vec::new(),
    };
    let dollar = usize::from(pieces[at - 1].is_mark("$"));
    let mut by = vec![Piece { touches: false, ..pieces[at].clone() }];
    by.extend(cut(per));
    let by = replaced(pieces, at - dollar, at + 1 + taken, &by);
    vec![Edit::conversion(by, cause)]
}

/// `garage "Garage" 20 x 24`: a size instead of sides.
fn sizes(pieces: &[Piece]) -> Vec<Edit> {
    let is_by = |piece: &Piece| piece.is_word(&["x", "by"]) || piece.is_mark("×*");
    let Some(by) = pieces.iter().position(is_by).filter(|by| *by >= 2) else { return Vec::new() };
    let part = |piece: &Piece| {
        piece.is_number()
            || piece.is_mark("'’′\"”″/½¼¾")
            || piece.is_word(&["ft", "feet", "foot", "in", "m"])
    };
    let before = pieces[..by].iter().rev().take_while(|piece| part(piece)).count();
    // `10 x 7 in front hall`: `in` is no unit where a word follows it.
    let is_place = |at: usize| {
        pieces[at].is_word(&["in"])
            && pieces.get(at + 1).is_some_and(|next| next.sort == Sort::Word)
    };
    let after = (by + 1..pieces.len()).take_while(|&at| part(&pieces[at]) && !is_place(at)).count();
    let first = by - before;
    if before == 0 || after == 0 || first == 0 {
        return Vec::new();
    }
    let (one, two) = (join(&pieces[first..by]), join(&pieces[by + 1..by + 1 + after]));
    if pieces[0].is_word(&DIRECTIONS) {
        return sides_of(pieces, first, (&one, &two)).into_iter().collect();
    }
    let mut head = pieces[..first].to_vec();
    head.extend_from_slice(&pieces[by + 1 + after..]);
    let head = join(&head);
    // `inside the house` or `at the corner` would be lost in a name.
    if !head.contains('"') && pieces[1..first].iter().any(|piece| piece.is_word(&POSITIONS)) {
        return Vec::new();
    }
    let (one, two) = in_one_unit(&one, &two);
    let named = if head.contains('"') {
        head
    } else {
        let (kind, rest) = head.split_once(' ').unwrap_or((&head, ""));
        let name = if rest.is_empty() { kind } else { rest };
        format!("{kind} \"{name}\"")
    };
    let line = format!("{named}\nnorth {one}\neast {two}\nsouth {one}\nwest {two}");
    let cause = "a size is typed as its sides, one on each line".to_owned();
    vec![Edit { converts: true, ..Edit::line(line, cause) }]
}

/// Both lengths of a size, where a bare one takes the unit of the other. Two bare ones stay bare: the file says their
/// unit.
fn in_one_unit(one: &str, two: &str) -> (String, String) {
    let (one, two) = (one.trim(), two.trim());
    let unit = |length: &str| {
        length.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.').to_owned()
    };
    let with = |length: &str, other: &str| match (unit(length), unit(other)) {
        (own, _) if !own.is_empty() => length.to_owned(),
        // Feet and inches.
        (_, other) if other.contains(|c: char| c.is_ascii_digit()) => format!("{length}'"),
        (_, other) => format!("{length}{other}"),
    };
    (with(one, two), with(two, one))
}

/// `north 8' x 6'`: a size after a direction, which says both lengths of a rectangle at once.
fn sides_of(pieces: &[Piece], first: usize, (one, two): (&str, &str)) -> Option<Edit> {
    let way = pieces[0].text.to_lowercase();
    let turned = match way.as_str() {
        "north" | "n" => ["north", "east", "south", "west"],
        "east" | "e" => ["east", "south", "west", "north"],
        "south" | "s" => ["south", "west", "north", "east"],
        "west" | "w" => ["west", "north", "east", "south"],
        _ => return None,
    };
    if first != 1 {
        return None;
    }
    let (one, two) = in_one_unit(one, two);
    let lines: Vec<String> = turned
        .iter()
        .zip([&one, &two, &one, &two])
        .map(|(way, length)| format!("{way} {length}"))
        .collect();
    let cause = "a size is typed as its sides, one on each line";
    Some(Edit { converts: true, ..Edit::line(lines.join("\n"), cause) })
}

/// `veneer brick`, `wall 2x6`: a kind of wall instead of its thickness.
fn walls(pieces: &[Piece]) -> Vec<Edit> {
    let Some(at) = pieces.iter().position(|piece| piece.is_word(&["veneer", "wall"])) else {
        return Vec::new();
    };
    let mut edits = Vec::new();
    let mut offer = |taken: usize, thickness: &str, cause: &str| {
        let by = cut(thickness);
        let mut by = by;
        by.iter_mut().take(1).for_each(|piece| piece.touches = false);
        edits.push(Edit::conversion(replaced(pieces, at + 1, at + 1 + taken, &by), cause));
    };
    let Some(next) = pieces.get(at + 1) else {
        return edits;
    };
    if next.is_number()
        && pieces.get(at + 2).is_none_or(|after| after.sort == Sort::Word && !after.is_word(&["x"]))
    {
        let inches = format!("{}\"", next.text);
        offer(1, &inches, "a wall is not that thick: is the inch mark missing?");
    }
    if pieces[at].is_word(&["veneer"]) {
        let is_masonry = next.is_word(&["brick", "stone", "masonry", "block"]);
        if is_masonry && pieces.get(at + 2).is_some_and(Piece::is_number) {
            offer(1, "", "a veneer is given by its thickness alone");
        } else if is_masonry {
            offer(
                1,
                "4 5/8\"",
                "a veneer is given by its thickness; brick and the air gap behind it are usually 4 5/8\" if you cannot measure them",
            );
        } else if next.is_word(&[
            "siding",
            "vinyl",
            "wood",
            "stucco",
            "frame",
            "clapboard",
            "no",
            "without",
        ]) || next.text == "0"
        {
            offer(
                1,
                "none",
                "a veneer is given by its thickness, or as `none` where there is no brick or stone",
            );
        } else if next.is_word(&["half"]) {
            offer(1, "1/2\"", "a thickness is a length with its unit");
        }
    } else if next.text == "2"
        && pieces.get(at + 2).is_some_and(|piece| piece.is_word(&["x"]) || piece.is_mark("×"))
    {
        match pieces.get(at + 3).map(|piece| piece.text.as_str()) {
            Some("4") => offer(
                3,
                "4 7/16\"",
                "a wall is given by its thickness from the inside to the frame: 1/2\" board, 3 1/2\" stud, 7/16\" sheathing",
            ),
            Some("6") => offer(
                3,
                "6 7/16\"",
                "a wall is given by its thickness from the inside to the frame: 1/2\" board, 5 1/2\" stud, 7/16\" sheathing",
            ),
            _ => {}
        }
    }
    edits
}
