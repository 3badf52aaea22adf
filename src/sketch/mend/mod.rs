//! Suggests what to type instead of a line that cannot be read.
//!
//! A line is changed in small steps that keep its meaning: adding a mark, replacing a phrase by the format's word,
//! putting a name in quotation marks. A line is suggested only if it reads without an error and still contains
//! every number and text of the typed line.

mod apart;
mod bare_inches;
mod change;
mod cladded;
mod compass;
mod continued;
mod faced;
mod fitted;
mod head_forms;
mod in_a_row;
mod in_comments;
mod in_meters;
mod kinds;
mod left_out;
mod lengths;
mod lost;
mod marks;
mod negation;
mod nested;
mod noted;
mod pieces;
mod remarked;
mod reworded;
mod rewritten;
mod said_otherwise;
mod search;
mod shares;
mod shortened;
mod size_forms;
mod slips;
pub(super) mod stands;
mod strays;
mod two_statements;
mod veto;
mod words;

pub(super) use change::{Attempt, Beside};
use fitted::{
    asking_where_it_stands, beside_the_record, counting_what_there_is, hides_a_space,
    not_in_a_walk, with_a_space_below_a_level, without_sides_twice,
};
use kinds::{About, Answer};
pub(super) use marks::decoded;
use pieces::{Sort, cut};
use search::search;

use crate::sketch::asked::Placeless;
use crate::sketch::statement::Unit;

/// What is wrong with a veneer that has no thickness.
const BRICK_IS: &str = "a veneer is given by its thickness; brick and the air gap behind it are usually 4 5/8\" if you cannot measure them";

/// How many times a line that was recognized as a whole is tried again.
const KINDS: usize = 3;
/// A line with more characters than this is not changed.
const LONGEST: usize = 240;

/// What to type instead of a line.
#[derive(Debug, Default)]
pub(super) struct Mend {
    /// The most likely line first: two or three if the meaning is open, none if something is missing that only the
    /// writer knows.
    pub(super) lines: Vec<String>,
    /// Why the line cannot be read.
    pub(super) cause: String,
    /// What to do about it, if there is no line to suggest.
    pub(super) help: Option<String>,
    /// The line without its place, if nothing but the place is missing.
    pub(super) asks: Option<Placeless>,
    pub(super) about: About,
}

/// Whether a text has a length with its unit, an area, a sum of money or a date in it.
pub(super) fn measures(text: &str) -> bool {
    kinds::measures(text)
}

/// Whether a text may be a name: it says no place, size or face.
pub(super) fn may_be_name(text: &str) -> bool {
    !veto::is_no_name(text)
}

/// Whether a word is the format's word for a kind of space.
pub(super) fn is_kind(word: &str) -> bool {
    kinds::kind_word(word) == Some(word)
}

/// The kind of space for which a word stands, as `outbuilding` for a barn.
pub(super) fn kind_meant(word: &str) -> Option<&'static str> {
    kinds::kind_meant(word)
}

/// The mark of the unit that a line says of the calls of a lot, if that is not the unit of the file: `calls in feet`.
pub(super) fn mark_of_calls(line: &str, units: Unit) -> Option<&'static str> {
    kinds::unit_said(&cut(line)).filter(|(unit, _)| *unit != units).map(|(_, mark)| mark)
}

/// What to type instead of a call whose length is in another unit than the file's: its mark stands after it.
pub(super) fn mend_in_unit(
    line: &str,
    mark: &str,
    attempt: &mut dyn FnMut(&str) -> Attempt,
) -> Option<Mend> {
    let (call, _) = kinds::marked(line, mark)?;
    match attempt(&call).reads {
        Some(reads) => Some(Mend {
            lines: vec![reads],
            cause: "the length of a call in another unit than the file's has its mark".to_owned(),
            ..Mend::default()
        }),
        None => mend(&call, attempt),
    }
}

/// Whether a text has a number in words in it.
pub(super) fn speaks_number(text: &str) -> bool {
    cut(text).iter().any(|piece| lengths::is_spoken_number(&piece.text))
}

/// The line as it reads, or else the answer to it.
fn read_or_mended(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    match attempt(line).reads {
        Some(reads) => Some(Mend { lines: vec![reads], ..Mend::default() }),
        None => mend(line, attempt),
    }
}

/// Finds a readable replacement for `line`; `attempt` tries to read a line. `None` if there is none.
pub(super) fn mend(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let _nested = nested::Nested::begin()?;
    let found = in_comments::told(line, found(line, attempt)?, &attempt(line));
    match found.lines.iter().any(|offered| offered.starts_with('#')) {
        true => Some(apart::asked_whether_a_wall(line, found, &attempt(line))),
        false => Some(found),
    }
}

fn found(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    if line.chars().count() > LONGEST {
        return None;
    }
    if let Some(plain) = marks::without_ordinals(line) {
        let mended = read_or_mended(&plain, attempt)?;
        let cause = match mended.cause.as_str() {
            "" => marks::ORDINAL.to_owned(),
            cause => format!("{}; {cause}", marks::ORDINAL),
        };
        return Some(Mend { cause, ..mended });
    }
    if let Some((plain, cause)) = marks::plain(line) {
        let mended = read_or_mended(&plain, attempt);
        let is_answer = |mend: &Mend| !mend.lines.is_empty() || mend.asks.is_some();
        let inner = line.trim().starts_with('(').then(|| format!("# {plain}"));
        if let Some(mended) = mended.filter(is_answer) {
            let cause = if mended.cause.is_empty() { cause.to_owned() } else { mended.cause };
            return Some(Mend { cause, ..mended });
        }
        if let Some(comment) = inner.filter(|_| !measures(&plain)) {
            let cause = "this line says nothing about the house; a comment begins with `#`";
            return Some(Mend { lines: vec![comment], cause: cause.to_owned(), ..Mend::default() });
        }
    }
    if let Some(mended) = continued::answer(line, attempt) {
        return Some(mended);
    }
    if let Some(mended) = in_comments::wall_and_thickness(line, attempt) {
        return Some(mended);
    }
    let clad = cladded::with_siding(line, attempt)
        .or_else(|| cladded::with_brick(line, attempt))
        .or_else(|| cladded::with_lumber(line, attempt));
    if let Some(mended) = clad {
        return Some(mended);
    }
    // `N 2.25 E 61,40`: a call whose length has a comma for its point.
    if let Some(plain) = marks::call_with_a_point(line).filter(|_| attempt(line).beside.in_lot) {
        return mend(&plain, attempt);
    }
    if let Some(mended) = in_a_row::answer(line, attempt) {
        return Some(mended);
    }
    if let Some(mended) = shares::beside_a_sum(line, attempt) {
        return Some(mended);
    }
    let two = two_statements::answer(line, attempt)
        .or_else(|| two_statements::street_and_remark(line, attempt))
        .or_else(|| two_statements::open_not_counted(line, attempt));
    if two.is_some() {
        return two;
    }
    if let Some(plain) = in_meters::with_both_units(line) {
        return read_or_mended(&plain, attempt);
    }
    if let Some(mended) =
        in_meters::answer(line, attempt).or_else(|| in_meters::measured(line, attempt))
    {
        return Some(mended);
    }
    if let Some((plain, cause)) = size_forms::size_apart(line) {
        let mended = read_or_mended(&plain, attempt)?;
        let cause = if mended.cause.is_empty() { cause.to_owned() } else { mended.cause };
        return Some(Mend { cause, ..mended });
    }
    if let Some(mended) = bare_inches::answer(line, attempt) {
        return Some(mended);
    }
    if let Some(mended) = faced::answer(line, attempt) {
        return Some(mended);
    }
    if let Some((plain, cause)) = rewritten::in_its_form(line) {
        let mended = read_or_mended(&plain, attempt)?;
        let cause = if mended.cause.is_empty() { cause.to_owned() } else { mended.cause };
        return Some(Mend { cause, ..mended });
    }
    // A deed's calls end in `;`, and lines of a list in `,`.
    if let Some(plain) = line.trim_end().strip_suffix([';', ',']).filter(|plain| !plain.is_empty())
    {
        return match attempt(plain).reads {
            Some(reads) => Some(Mend {
                lines: vec![reads],
                cause: "a line of a sides file ends without a mark".to_owned(),
                ..Mend::default()
            }),
            None => mend(plain, attempt),
        };
    }
    // `Measured: 14 March 2026, owner, steel tape`: as without the colon.
    if let Some((word, rest)) = line.split_once(':')
        && ["measured", "taped"].contains(&word.trim().to_lowercase().as_str())
        && rest.trim_start().starts_with(|c: char| c.is_alphanumeric())
    {
        return read_or_mended(&format!("measured {}", rest.trim_start()), attempt);
    }
    let evened = marks::evened(line);
    let line = evened.as_str();
    if let Some(reads) = attempt(line).reads {
        return Some(Mend {
            lines: vec![reads],
            cause: marks::CAUSE.to_owned(),
            ..Mend::default()
        });
    }
    let found = strays::between_kind_and_name(line, attempt);
    let found = found.or_else(|| remarked::after_a_bay(line, attempt));
    let found =
        found.or_else(|| known(line, attempt, KINDS).and_then(|mend| undoubted(line, mend)));
    let found = found.or_else(|| search(line, attempt));
    let found = found.filter(|mend| !hides_a_space(line, mend, &attempt(line).beside));
    let found = found.or_else(|| late(line, attempt));
    let found = found.or_else(|| after_one_change(line, attempt));
    let found = found.or_else(|| remarked::after_a_whole_line(line, attempt));
    let found = found.or_else(|| remarked::aside(line, attempt));
    let found = found.or_else(|| strays::set_aside(line, attempt));
    let found = found.or_else(|| remarked::respelled(line, attempt));
    let found = found.map(|mend| left_out::named(line, mend));
    let found = found.map(|mend| fitted::with_estimated_sides(line, mend));
    let found = found.map(|mend| without_sides_twice(line, mend, &attempt(line).beside));
    let found = found.map(fitted::outbuildings_apart);
    let found = found.map(|mend| asking_where_it_stands(mend, &attempt(line)));
    let found = found.map(|mend| counting_what_there_is(mend, &attempt(line).beside));
    let found = found.map(|mend| with_a_space_below_a_level(mend, &attempt(line).beside));
    let found = found.map(|mend| faced::finished(line, mend));
    let found = found.map(|mend| not_in_a_walk(line, mend, &attempt(line).beside));
    let corners = attempt(line).beside.corners;
    let follows = begins_as_side(&attempt(line).beside.after);
    let in_a_walk = begins_as_side(&attempt(line).beside.before) || follows;
    let found = found.and_then(|mut mend| {
        let had_lines = !mend.lines.is_empty();
        mend.lines.retain(|offered| {
            let is_lost = apart::loses_inches(line, offered)
                || apart::estimates(line, offered)
                || veto::makes_an_area(line, offered)
                || in_a_walk
                    && (apart::loses_wall(line, offered) || apart::is_no_wall(line, offered))
                || offered.starts_with("tax year") && kinds::only_area(&cut(line)).is_some()
                || veto::misses_a_corner(line, offered, &corners)
                || !follows && veto::loses_a_size(line, offered);
            !is_lost
        });
        (!had_lines || !mend.lines.is_empty()).then_some(mend)
    });
    let found = found.or_else(|| remarked::as_far_as_it_reads(line, attempt));
    let found = found.or_else(|| left_over(line, attempt));
    let found = match found {
        None => apart::answer(line, attempt),
        Some(mend) if says_only_what_a_line_is(&mend, in_a_walk) => {
            apart::answer(line, attempt).or(Some(mend))
        }
        found => found,
    };
    let found = found.or_else(|| apart::record(line, attempt));
    let found = match found {
        Some(mend) if mend.lines.is_empty() && mend.about == About::Place => {
            apart::without_remark(line, attempt).or(Some(mend))
        }
        found => found,
    };
    let found = found.or_else(|| strays::one_of_two(line, attempt));
    let found = found.or_else(|| strays::stopped(line, attempt));
    let has_lines =
        |found: &Option<Mend>| found.as_ref().is_some_and(|mend| !mend.lines.is_empty());
    let is_open = !has_lines(&found) && found.as_ref().is_none_or(|mend| mend.asks.is_none());
    let simpler = if is_open { simplified(line, attempt) } else { None };
    let found = if has_lines(&simpler) { simpler } else { found };
    let found = found.map(|mend| beside_the_record(line, mend, &attempt(line).beside));
    found.map(|mut mend| {
        for offered in &mut mend.lines {
            *offered = marks::with_whole_brackets(lost::kept(line, offered));
        }
        mend
    })
}

/// Whether an answer says no more than how a line of a sides file begins, or in a walk what `measured` is.
fn says_only_what_a_line_is(mend: &Mend, in_a_walk: bool) -> bool {
    let is_general = match mend.about {
        About::AnyLine => true,
        About::Day => in_a_walk,
        About::Line | About::Place => false,
    };
    is_general && mend.lines.is_empty() && mend.asks.is_none()
}

/// The answer to a line for which no other is offered, with one thing in it written as a sides file has it: a line may
/// depart from the format in two ways of which each alone is known.
fn simplified(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let (simple, cause) = marks::simpler(line)?;
    match attempt(&simple).reads {
        Some(reads) => {
            Some(Mend { lines: vec![reads], cause: cause.to_owned(), ..Mend::default() })
        }
        None => mend(&simple, attempt)
            .map(|mend| Mend { cause: format!("{cause}; {}", mend.cause), ..mend }),
    }
}

/// The answer to a line that nothing else could read.
fn left_over(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    kinds::left_over(line, &attempt(line)).into_iter().find_map(|answer| match answer {
        Answer::Say { cause, help, about } => {
            Some(Mend { cause, help: Some(help), about, ..Mend::default() })
        }
        Answer::Ask { cause, help, asks, about } => {
            Some(Mend { cause, help: Some(help), asks: Some(*asks), about, ..Mend::default() })
        }
        Answer::Lines(lines, cause) => {
            let mut read: Vec<String> =
                lines.iter().filter_map(|offered| attempt(offered).reads).collect();
            read.retain(|offered| keeps(line, offered, false));
            (!read.is_empty()).then_some(Mend { lines: read, cause, ..Mend::default() })
        }
    })
}

/// Whether a line begins with a kind of space and its name.
pub(super) fn begins_as_named_space(text: &str) -> bool {
    let pieces = cut(text);
    let is_kind = |word: &pieces::Piece| kinds::kind_word(&word.text.to_lowercase()).is_some();
    pieces.first().is_some_and(is_kind) && pieces.get(1).is_some_and(|name| name.sort == Sort::Text)
}

/// Whether a line begins with a way and a number.
fn begins_as_side(text: &str) -> bool {
    let pieces = cut(text);
    let way = pieces.first().and_then(|way| compass::way_and_back(&way.text));
    way.is_some() && pieces.get(1).is_some_and(pieces::Piece::is_number)
}

/// Whether a text is the way of a wall and nothing else.
pub(super) fn is_way(text: &str) -> bool {
    compass::way_and_back(text).is_some()
}

/// The whole word of a way: `back` for `rear`.
pub(super) fn whole_way(word: &str) -> Option<&'static str> {
    compass::way_and_back(word).map(|(way, _)| way)
}

/// Whether a line begins as any wall does, a slanted or curved one too.
pub(super) fn begins_as_wall(text: &str) -> bool {
    let first = text.split(' ').next().unwrap_or_default().to_lowercase();
    ["diagonal", "bearing", "arc", "bay"].contains(&first.as_str())
        || begins_as_side(text)
        || text.ends_with("by closing")
}

/// An answer without the lines that take something for what it is not; `None` if no other is left.
fn undoubted(line: &str, mut mend: Mend) -> Option<Mend> {
    let had_lines = !mend.lines.is_empty();
    mend.lines
        .retain(|offered| !veto::is_doubtful(line, offered) && !negation::is_lost(line, offered));
    (!had_lines || !mend.lines.is_empty()).then_some(mend)
}

/// The answer to a line that is recognized as a whole. Anything in it that is still unreadable is mended too, at most
/// `depth` times.
fn known(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt, depth: usize) -> Option<Mend> {
    let depth = depth.checked_sub(1)?;
    let answer = kinds::answer(line, &attempt(line))?;
    read_of(answer, attempt, depth)
}

/// The answer to a line that is recognized as a whole after one small change: the cells of a table as one line, or a
/// length without the comma in it.
fn after_one_change(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let mut changes = words::cells(line);
    changes.extend(lengths::edits(&cut(line)).into_iter().filter(|change| !change.converts));
    changes.into_iter().find_map(|change| {
        let mend = known(&change.line, attempt, KINDS)?;
        let has_lines = !mend.lines.is_empty();
        let mend = undoubted(line, mend).filter(|_| has_lines)?;
        Some(Mend { cause: format!("{}; {}", change.cause, mend.cause), ..mend })
    })
}

/// The answer to a line that is recognized as a whole, and for which nothing else had one.
fn late(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let answer = kinds::late(line, &attempt(line))?;
    read_of(answer, attempt, KINDS).and_then(|mend| undoubted(line, mend))
}

/// An answer with its lines as they read; anything in them that is still unreadable is mended too.
fn read_of(answer: Answer, attempt: &mut dyn FnMut(&str) -> Attempt, depth: usize) -> Option<Mend> {
    let (changed, cause) = match answer {
        Answer::Say { cause, help, about } => {
            return Some(Mend { cause, help: Some(help), about, ..Mend::default() });
        }
        Answer::Ask { cause, help, asks, about } => {
            return Some(Mend {
                cause,
                help: Some(help),
                asks: Some(*asks),
                about,
                ..Mend::default()
            });
        }
        Answer::Lines(changed, cause) => (changed, cause),
    };
    let most = if changed.len() == 1 { 3 } else { 1 };
    let mut asked = None;
    let mut lines: Vec<String> = Vec::new();
    for line in changed {
        let tried = attempt(&line);
        let read = match tried.reads {
            Some(reads) => vec![reads],
            None if line.contains('\n') => Vec::new(),
            None => {
                let (said, comment) = comment_of(&line);
                let said = said.trim_end();
                let more = known(said, attempt, depth).or_else(|| search(said, attempt));
                let more = more.or_else(|| {
                    let is_space = begins_as_named_space(said) && kinds::size_in(said).is_some();
                    is_space.then(|| left_over(said, attempt)).flatten()
                });
                let comment = comment.map_or_else(String::new, |comment| format!("  #{comment}"));
                match more {
                    Some(more) if more.lines.is_empty() => {
                        let asks = more.asks.map(|asks| asks.with_comment(&comment));
                        return Some(Mend { asks, ..more });
                    }
                    Some(more) => {
                        // Which of two readings is meant is the better question, and where another number comes
                        // from has to be said.
                        let is_choice = most > 1 && more.lines.len() > 1;
                        let converts = more.lines.iter().any(|line| !keeps_numbers(said, line));
                        asked = (is_choice || converts).then_some(more.cause);
                        more.lines
                            .into_iter()
                            .take(most)
                            .map(|line| with_comment(&line, &comment))
                            .collect()
                    }
                    None => Vec::new(),
                }
            }
        };
        for line in read {
            if !lines.contains(&line) {
                lines.push(line);
            }
        }
    }
    let cause = asked.map_or_else(|| cause.clone(), |asked| format!("{cause}; {asked}"));
    (!lines.is_empty()).then_some(Mend { lines, cause, ..Mend::default() })
}

/// A comment at the end of the first of several lines.
fn with_comment(lines: &str, comment: &str) -> String {
    match lines.split_once('\n') {
        Some((first, rest)) => format!("{first}{comment}\n{rest}"),
        None => format!("{lines}{comment}"),
    }
}

/// Whether the suggested line still contains every number of the typed one.
fn keeps_numbers(typed: &str, offered: &str) -> bool {
    let numbers = |line: &str| -> Vec<String> {
        let digits = line.split(|c: char| !c.is_ascii_digit());
        digits.filter(|digits| !digits.is_empty()).map(str::to_owned).collect()
    };
    let mut left = numbers(offered);
    numbers(typed).iter().all(|number| {
        let place = left.iter().position(|other| other == number);
        place.map(|place| left.remove(place)).is_some()
    })
}

/// Whether the suggested line still contains every number and text of the typed one.
fn keeps(typed: &str, offered: &str, converts: bool) -> bool {
    let has_numbers = converts || keeps_numbers(typed, offered);
    let texts = cut(typed).into_iter().filter(|piece| piece.sort == Sort::Text);
    if swallows(typed, offered)
        || veto::is_doubtful(typed, offered)
        || apart::loses_inches(typed, offered)
        || veto::hides(typed, offered)
        || negation::is_lost(typed, offered)
    {
        return false;
    }
    let has_texts = texts
        .map(|piece| piece.text.trim_matches(['"', '“', '”']).trim().to_owned())
        .all(|text| converts || offered.contains(&text));
    has_numbers && has_texts && (converts || !merges(typed, offered))
}

/// Whether a text of the suggested line is a text of the typed one with more words in it.
fn merges(typed: &str, offered: &str) -> bool {
    let texts = |line: &str| -> Vec<String> {
        let texts = cut(line).into_iter().filter(|piece| piece.sort == Sort::Text);
        texts.map(|piece| piece.text.trim_matches(['"', '“', '”']).trim().to_owned()).collect()
    };
    let typed = texts(typed);
    let within = |text: &String| {
        typed.iter().any(|one| one.len() > 1 && one != text && text.contains(one.as_str()))
    };
    texts(comment_of(offered).0).iter().filter(|text| !typed.contains(text)).any(within)
}

/// Whether a name, note or comment of the suggested line has absorbed a length, an area, a sum of money or a date of
/// the typed one, which would then have no effect.
fn swallows(typed: &str, offered: &str) -> bool {
    offered.lines().any(|line| {
        if line.starts_with('#') {
            return false;
        }
        let (said, comment) = comment_of(line);
        // A text that was begun with its mark was meant as a text.
        let new = |text: &str| {
            let first = text.split(' ').next().unwrap_or_default();
            !first.starts_with(|c: char| c.is_ascii_digit())
                || !typed.contains(&format!("\"{first}"))
        };
        let texts = cut(said).into_iter().filter(|piece| piece.sort == Sort::Text);
        let texts: Vec<String> =
            texts.map(|piece| piece.text.trim_matches(['"', '“', '”']).to_owned()).collect();
        texts.iter().any(|text| new(text) && kinds::measures(text))
            || comment.is_some_and(|comment| !typed.contains('#') && kinds::measures(comment))
    })
}

/// A line without its comment.
pub(super) fn without_comment(line: &str) -> &str {
    comment_of(line).0
}

/// A line without its comment, and the comment.
fn comment_of(line: &str) -> (&str, Option<&str>) {
    let mut inside = false;
    for (at, c) in line.char_indices() {
        match c {
            '"' => {
                inside = !inside
                    && !line[..at].ends_with(|c: char| c.is_ascii_digit() || "½¼¾⅛⅜⅝⅞".contains(c));
            }
            '#' if !inside => return (&line[..at], line.get(at + 1..)),
            _ => {}
        }
    }
    (line, None)
}
