//! Suggests what to type instead of a line that cannot be read.
//!
//! A line is changed in small steps that keep its meaning: adding a mark, replacing a phrase by the format's word,
//! putting a name in quotation marks. A line is suggested only if it reads without an error and still contains
//! every number and text of the typed line.

mod apart;
mod bare_inches;
mod change;
mod compass;
mod faced;
mod in_meters;
mod kinds;
mod left_out;
mod lengths;
mod lost;
mod marks;
mod negation;
mod pieces;
mod remarked;
mod rewritten;
mod slips;
mod strays;
mod veto;
mod words;

use std::collections::HashSet;

use change::Edit;
pub(super) use change::{Attempt, Beside};
use kinds::Answer;
pub(super) use marks::decoded;
use pieces::{Sort, cut};

use crate::sketch::asked::Placeless;
use crate::sketch::statement::Unit;

/// What is wrong with a veneer that has no thickness.
const BRICK_IS: &str = "a veneer is given by its thickness; brick and the air gap behind it are usually 4 5/8\" if you cannot measure them";

/// What is said of a place that cannot be read.
const NO_PLACE: &str = "is no place that can be drawn";

/// The most changes, one after another, that are tried.
const STEPS: usize = 6;
/// How many times a line that was recognized as a whole is tried again.
const KINDS: usize = 3;
/// How many changed lines are kept from one step to the next.
const KEPT: usize = 5;
/// The most changed lines that are tried in all.
const TRIED: usize = 260;
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
}

struct State {
    line: String,
    attempt: Attempt,
    causes: Vec<String>,
    converts: bool,
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

/// Finds a readable replacement for `line`; `attempt` tries to read a line. `None` if there is none.
pub(super) fn mend(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    if line.chars().count() > LONGEST {
        return None;
    }
    if let Some(plain) = marks::without_ordinals(line) {
        let mended = match attempt(&plain).reads {
            Some(reads) => Mend { lines: vec![reads], ..Mend::default() },
            None => mend(&plain, attempt)?,
        };
        let cause = match mended.cause.as_str() {
            "" => marks::ORDINAL.to_owned(),
            cause => format!("{}; {cause}", marks::ORDINAL),
        };
        return Some(Mend { cause, ..mended });
    }
    if let Some((plain, cause)) = marks::plain(line) {
        let mended = match attempt(&plain).reads {
            Some(reads) => Some(Mend { lines: vec![reads], ..Mend::default() }),
            None => mend(&plain, attempt),
        };
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
    if let Some(mended) = with_siding(line, attempt) {
        return Some(mended);
    }
    if let Some(plain) = in_meters::with_both_units(line) {
        return match attempt(&plain).reads {
            Some(reads) => Some(Mend { lines: vec![reads], ..Mend::default() }),
            None => mend(&plain, attempt),
        };
    }
    if let Some(mended) = in_meters::answer(line, attempt) {
        return Some(mended);
    }
    if let Some(mended) = bare_inches::answer(line, attempt) {
        return Some(mended);
    }
    if let Some(mended) = faced::answer(line, attempt) {
        return Some(mended);
    }
    if let Some((plain, cause)) = rewritten::in_its_form(line) {
        let mended = match attempt(&plain).reads {
            Some(reads) => Mend { lines: vec![reads], ..Mend::default() },
            None => mend(&plain, attempt)?,
        };
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
    let found = found.map(|mend| without_sides_twice(line, mend, &attempt(line).beside));
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
                || in_a_walk && apart::loses_wall(line, offered)
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
        Some(mend) if mend.lines.is_empty() && mend.cause.contains(NO_PLACE) => {
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
            *offered = lost::kept(line, offered);
        }
        mend
    })
}

/// Whether an answer says no more than how a line of a sides file begins, or in a walk what `measured` is.
fn says_only_what_a_line_is(mend: &Mend, in_a_walk: bool) -> bool {
    let help = mend.help.as_deref().unwrap_or_default();
    let is_general = help.contains("a space begins with")
        || mend.cause.ends_with("has no meaning here")
        || in_a_walk && mend.cause.ends_with("has no whole day in it");
    is_general && mend.lines.is_empty() && mend.asks.is_none()
}

/// The answer to the line of a level or of a space that also says that its walls have siding: no veneer.
///
/// `second floor, measured inside, vinyl siding`, `living Bedrooms vinyl siding`.
fn with_siding(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    const OF: [&str; 19] = [
        "vinyl",
        "wood",
        "aluminum",
        "metal",
        "steel",
        "lap",
        "fiber",
        "cement",
        "hardie",
        "cedar",
        "clapboard",
        "board",
        "all",
        "with",
        "has",
        "is",
        "horizontal",
        "frame",
        "painted",
    ];
    const BRICK: [&str; 6] = ["brick", "stone", "veneer", "masonry", "part", "partly"];
    let pieces = cut(line);
    let word = |at: usize| pieces.get(at).map_or(String::new(), |piece| piece.text.to_lowercase());
    let is_level = kinds::names_a_level(line) || crate::sketch::opens_level(&word(0), &word(1));
    let is_kind = kinds::kind_word(&word(0)).is_some_and(|kind| kind == word(0));
    let has_brick = pieces.iter().any(|piece| piece.is_word(&BRICK));
    if !is_level && !is_kind || line.contains('#') || has_brick {
        return None;
    }
    let at = pieces.iter().position(|piece| piece.is_word(&["siding", "sided"]))?;
    let first =
        (2..at).rev().take_while(|&before| pieces[before].is_word(&OF)).last().unwrap_or(at);
    // On the line of a space the word alone is known to other rules.
    if first == at && !is_level {
        return None;
    }
    let before = line.get(..pieces.get(first)?.at)?.trim_end();
    let after = line.get(pieces[at].at + pieces[at].text.len()..)?.trim();
    let before = before.trim_end_matches([',', ';', '-', '–']).trim_end();
    // `upper floor (siding, measured inside)`
    let (before, after) = match before.strip_suffix('(') {
        Some(before) => {
            let after = after.trim_start_matches([',', ';', ' ']);
            match after.strip_prefix(')') {
                Some(after) => (before.trim_end(), after.to_owned()),
                None => (before.trim_end(), format!(" ({after}")),
            }
        }
        None if after.is_empty() || after.starts_with([',', ';', ')']) => {
            (before, after.to_owned())
        }
        None => (before, format!(" {after}")),
    };
    let plain = format!("{before}{after}");
    let mended = match attempt(&plain).reads {
        Some(reads) => Mend { lines: vec![reads], ..Mend::default() },
        None => mend(&plain, attempt)?,
    };
    let cause = "siding is no veneer".to_owned();
    if is_level {
        let help = match (&mended.help, &mended.lines[..]) {
            (Some(help), _) => format!("{help}, then `veneer none`"),
            (None, [only, ..]) => {
                let level = only.lines().next().unwrap_or_default();
                format!(
                    "write `{level}` here, and `veneer none` after the name of each of its spaces"
                )
            }
            (None, []) => return None,
        };
        return Some(Mend { help: Some(help), cause, ..Mend::default() });
    }
    let mut lines = mended.lines;
    for offered in &mut lines {
        let (line, rest) = offered
            .split_once('\n')
            .map_or((offered.as_str(), None), |(line, rest)| (line, Some(rest)));
        let (body, comment) = line
            .split_once("  #")
            .map_or((line, String::new()), |(body, comment)| (body, format!("  #{comment}")));
        let rest = rest.map_or_else(String::new, |rest| format!("\n{rest}"));
        *offered = format!("{body} veneer none{comment}{rest}");
    }
    lines.retain(|offered| attempt(offered.lines().next().unwrap_or_default()).reads.is_some());
    (!lines.is_empty()).then(|| Mend { lines, cause, ..Mend::default() })
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

/// An answer in which what would be a second `record` is a `figure` with a name of its own: the title, or else the
/// words before the area.
fn beside_the_record(line: &str, mut mend: Mend, beside: &Beside) -> Mend {
    let pieces = cut(line);
    let word = pieces.first().map_or("", |word| word.text.as_str());
    if !beside.has_record || word.eq_ignore_ascii_case("record") {
        return mend;
    }
    for offered in &mut mend.lines {
        let Some(rest) = offered.strip_prefix("record ") else { continue };
        let cut = cut(rest);
        let is_area = cut.first().is_some_and(pieces::Piece::is_number);
        let title = cut.iter().position(|piece| piece.sort == Sort::Text);
        let after_unit = title.is_none_or(|at| (2..=4).contains(&at));
        if !is_area || !after_unit {
            continue;
        }
        let named = match title {
            Some(at) => {
                let (name, mut left) = (cut[at].text.clone(), cut.clone());
                left.remove(at);
                format!("figure {name} {}", pieces::join(&left))
            }
            None => {
                // `1226 sq ft (county)`: the first word that says whose it is.
                let unit = |own: &str| {
                    matches!(
                        own,
                        "sq" | "ft" | "sf" | "sqft" | "square" | "feet" | "per" | "the" | "m"
                    )
                };
                let whose = pieces
                    .iter()
                    .find(|piece| piece.sort == Sort::Word && !unit(&piece.text.to_lowercase()));
                let whose = whose.map_or("other", |whose| whose.text.as_str());
                format!("figure \"{whose}\" {rest}")
            }
        };
        *offered = named;
        mend.cause.push_str("; the file has a `record` already, so this is another `figure`");
    }
    mend
}

/// Whether a comment is offered for a line that names a kind of space above sides, which would then join another walk.
fn hides_a_space(line: &str, mend: &Mend, beside: &Beside) -> bool {
    let is_comment = !mend.lines.is_empty() && mend.lines.iter().all(|line| line.starts_with("# "));
    let names_kind = || {
        let pieces = cut(line);
        let is_kind = |word: &pieces::Piece| {
            let kind = kinds::kind_word(&word.text.to_lowercase());
            kind.is_some_and(|kind| !matches!(kind, "open" | "low" | "living"))
        };
        pieces.len() <= 4 && pieces.iter().take(3).any(is_kind)
    };
    let is_above = begins_as_side(&beside.after);
    is_comment && is_above && names_kind()
}

/// The answer to a line that nothing else could read.
fn left_over(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    kinds::left_over(line, &attempt(line)).into_iter().find_map(|answer| match answer {
        Answer::Say { cause, help } => Some(Mend { cause, help: Some(help), ..Mend::default() }),
        Answer::Ask { cause, help, asks } => {
            Some(Mend { cause, help: Some(help), asks: Some(*asks), ..Mend::default() })
        }
        Answer::Lines(lines, cause) => {
            let mut read: Vec<String> =
                lines.iter().filter_map(|offered| attempt(offered).reads).collect();
            read.retain(|offered| keeps(line, offered, false));
            (!read.is_empty()).then_some(Mend { lines: read, cause, ..Mend::default() })
        }
    })
}

/// An answer without the sides that a size stands for, where sides follow the line: they would be there twice.
fn without_sides_twice(line: &str, mut mend: Mend, beside: &Beside) -> Mend {
    let begins = begins_as_side;
    let is_space =
        |text: &str| cut(text).first().is_some_and(|word| kinds::kind_word(&word.text).is_some());
    let size = kinds::size_in(line);
    let is_first_wall = begins(line) && begins(&beside.after) && !begins(&beside.before);
    let size_after_way = size.filter(|_| is_first_wall);
    for offered in &mut mend.lines {
        let Some((first, rest)) = offered.split_once('\n') else { continue };
        // `north 30' x 40'` above the other walls of the walk.
        if let Some(size) = size_after_way.filter(|_| begins(first) && rest.lines().all(begins)) {
            *offered = format!("{first}  # {size}");
            "a wall has one length, and the walls below it have theirs".clone_into(&mut mend.cause);
            continue;
        }
        let repeats = begins(&beside.after) && is_space(first) && rest.lines().all(begins);
        if let Some(size) = size.filter(|_| repeats) {
            *offered = match first.contains('#') {
                true if first.contains(size) => first.to_owned(),
                true => format!("{first}, {size}"),
                false => format!("{first}  # {size}"),
            };
            "a size is typed as its sides, and they follow below: it can only be a remark"
                .clone_into(&mut mend.cause);
        }
    }
    mend.lines.dedup();
    mend
}

/// An answer whose figures count spaces by the names that they have in the file. What a figure counts and the file has
/// not is to be typed first.
fn counting_what_there_is(mut mend: Mend, beside: &Beside) -> Mend {
    const COUNTING: &str = " counting \"";
    let mut lacks: Option<(String, String)> = None;
    for offered in &mut mend.lines {
        let Some((before, rest)) = offered.split_once(COUNTING) else { continue };
        let Some((name, after)) = rest.split_once('"') else { continue };
        let lower = name.to_lowercase();
        let is_so_called =
            |space: &&std::rc::Rc<str>| space.to_lowercase().split(' ').any(|word| word == lower);
        let exact = beside.spaces.iter().find(|space| space.to_lowercase() == lower);
        let mut near = beside.spaces.iter().filter(is_so_called);
        let only = near.next().filter(|_| near.next().is_none());
        match exact.or(only) {
            Some(space) => *offered = format!("{before}{COUNTING}{space}\"{after}"),
            None => lacks = lacks.or(Some((name.to_owned(), offered.clone()))),
        }
    }
    match lacks {
        Some((name, offered)) if mend.lines.len() == 1 => Mend {
            lines: Vec::new(),
            cause: format!(
                "what a figure counts as well is called by its name, and no space of the file is called {name}"
            ),
            help: Some(format!(
                "type that space below with its own walls, then `{offered}` with its name; if you have not measured it, put this after a `#`"
            )),
            asks: None,
        },
        _ => mend,
    }
}

/// An answer in which no sides stand straight below a level: a space comes first.
fn with_a_space_below_a_level(mut mend: Mend, beside: &Beside) -> Mend {
    for offered in &mut mend.lines {
        *offered = kinds::with_a_space(offered, &beside.after);
    }
    mend
}

/// Whether a line begins with a kind of space and its name.
fn begins_as_named_space(text: &str) -> bool {
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

/// Whether a line begins as any wall does, a slanted or curved one too.
pub(super) fn begins_as_wall(text: &str) -> bool {
    let first = text.split(' ').next().unwrap_or_default().to_lowercase();
    ["diagonal", "bearing", "arc", "bay"].contains(&first.as_str())
        || begins_as_side(text)
        || text.ends_with("by closing")
}

/// Asks, where a size is typed after a wall: four more sides would not belong to that walk.
fn not_in_a_walk(line: &str, mend: Mend, beside: &Beside) -> Mend {
    let is_rectangle =
        |offered: &String| offered.lines().count() == 4 && offered.lines().all(begins_as_side);
    if kinds::size_in(line).is_none()
        || !begins_as_side(&beside.before)
        || !mend.lines.iter().any(is_rectangle)
    {
        return mend;
    }
    // `east 54' 3" x 1`: how many such walls there are.
    let pieces = cut(line);
    let once = pieces.len().checked_sub(1).filter(|last| pieces[*last].text == "1");
    let times = once.and_then(|last| last.checked_sub(1)).filter(|at| pieces[*at].is_word(&["x"]));
    if let Some(wall) = times.and_then(|at| line.get(..pieces[at].at)) {
        return Mend {
            lines: vec![wall.trim_end().to_owned()],
            cause: "a wall is typed once, and needs no number of times".to_owned(),
            help: None,
            asks: None,
        };
    }
    Mend {
        lines: Vec::new(),
        cause: "this walk has walls already, and two lengths on a line are the size of a space".to_owned(),
        help: Some(
            "write one length for this wall; another length goes to the end of the line, after a `#`"
                .to_owned(),
        ),
        asks: None,
    }
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
        Answer::Say { cause, help } => {
            return Some(Mend { cause, help: Some(help), ..Mend::default() });
        }
        Answer::Ask { cause, help, asks } => {
            return Some(Mend { cause, help: Some(help), asks: Some(*asks), ..Mend::default() });
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

/// Finds a replacement by small changes, one after another.
fn search(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let mut seen = HashSet::from([line.to_owned()]);
    let first = attempt(line);
    let last = last_resorts(line, &first);
    let mut states =
        vec![State { line: line.to_owned(), attempt: first, causes: Vec::new(), converts: false }];
    for _ in 0..STEPS {
        let mut next = Vec::new();
        let (mut found, mut weak): (Option<Mend>, Option<Mend>) = (None, None);
        for state in &states {
            let mut has_one_of_many = false;
            for edit in edits(state) {
                let is_late = edit.one_of_many && has_one_of_many;
                if is_late || seen.len() > TRIED || !seen.insert(edit.line.clone()) {
                    continue;
                }
                let converts = state.converts || edit.converts;
                let tried = attempt(&edit.line);
                let causes = [&state.causes[..], &[edit.cause]].concat();
                match &tried.reads {
                    Some(reads) if keeps(line, reads, converts) => {
                        has_one_of_many |= edit.one_of_many;
                        take(if edit.weak { &mut weak } else { &mut found }, reads, &causes);
                    }
                    Some(_) => {}
                    None => next.push(State { line: edit.line, attempt: tried, causes, converts }),
                }
            }
        }
        let found = found.or(weak);
        if found.is_some() {
            return found;
        }
        // The change that leaves the least unread wins, then the earlier one.
        next.sort_by_key(|state| state.line.len().saturating_sub(state.attempt.at.start));
        next.truncate(KEPT);
        states = next;
    }
    last.into_iter().find_map(|edit| {
        let reads = attempt(&edit.line).reads?;
        keeps(line, &reads, false).then(|| Mend {
            lines: vec![reads],
            cause: edit.cause,
            ..Mend::default()
        })
    })
}

/// Adds another line that can be read to what was found.
fn take(found: &mut Option<Mend>, line: &str, causes: &[String]) {
    match found {
        None => {
            let cause = causes.first().cloned().unwrap_or_default();
            *found = Some(Mend { lines: vec![line.to_owned()], cause, ..Mend::default() });
        }
        Some(mend) if mend.lines.len() < 3 && !mend.lines.iter().any(|known| known == line) => {
            mend.lines.push(line.to_owned());
        }
        Some(_) => {}
    }
}

fn edits(state: &State) -> Vec<Edit> {
    let pieces = cut(&state.line);
    let mut edits = lengths::edits(&pieces);
    edits.extend(words::edits(&state.line, &pieces, &state.attempt));
    edits
}

fn last_resorts(line: &str, attempt: &Attempt) -> Vec<Edit> {
    words::last_resorts(line, &cut(line), attempt)
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
