//! From the text of a sides file to a checked house.

use std::collections::HashSet;

use crate::diagnostic::words::list_or;
use crate::diagnostic::{Diagnostic, Diagnostics, Fix, Source, Span, Word, sort};
use crate::house::House;
use crate::house::check::comments::name_walls_in_comments;
#[cfg(feature = "pages")]
use crate::house::check::draft::{self, Draft};
use crate::house::check::{asked, check, unchecked};
use crate::sketch::{self, Asked, THEN, in_one_row};

/// Reads a sides file and checks the house in it. `name` is shown in messages. The warnings of a file without errors
/// are kept by the house, in its `warnings()`.
///
/// # Errors
///
/// All errors and warnings of the file at once, errors first, each in file order.
pub fn read(name: impl Into<String>, text: impl Into<String>) -> Result<House, Diagnostics> {
    read_source(Source::new(name, text))
}

/// Like [`read`], for a text that already has a name.
///
/// # Errors
///
/// Those of [`read`].
pub fn read_source(source: Source) -> Result<House, Diagnostics> {
    let sketch::Reading { sketch, mut faults, more, asked, .. } =
        sketch::read_without_lines(&source);
    let may_try = source.text().len() <= MOST_TEXT;
    let unread = if may_try { unread(&source, &asked, &faults) } else { Vec::new() };
    let mut model = unchecked(&sketch);
    if check(&sketch, &mut model, &mut faults) {
        sort(&mut faults);
        (model.source, model.warnings) = (source, faults);
        return Ok(House::new(model));
    }
    if may_try {
        offer_places(&source, &asked, &unread, &mut faults);
        take_back_places(&source, &asked, &unread, &mut faults);
    }
    name_walls_in_comments(&source, &mut faults);
    Err(Diagnostics::new(source, faults).and_more(more))
}

/// The most bytes of a text for which places are computed: each is tried in a text of its own. No house has as many.
const MOST_TEXT: usize = 50_000;
/// The most places that are shown where an end to count from is asked for as well.
const MOST_SHOWN: usize = 4;
/// The most lines without a place for which places are computed.
const MOST_ASKED: usize = 8;

/// Offers places for the spaces whose place was told in words, one after another. Each is computed and tried in the text
/// as it would be with every other line replaced by the first one that is offered for it.
fn offer_places(source: &Source, told: &[Asked], unread: &[Unread], faults: &mut [Diagnostic]) {
    let unplaced = |one: &Asked| one.line.at("", one.line.sizes.first());
    let mut taken: Vec<String> = told.iter().map(unplaced).collect();
    let shown_already: HashSet<String> =
        faults.iter().map(|fault| fault.message().to_owned()).collect();
    for (i, one) in told.iter().enumerate().take(MOST_ASKED) {
        let mut offered: Vec<(String, String)> = Vec::new();
        let mut answer = asked::Answer::default();
        let follows = |fault: &&Diagnostic| {
            let between = source.text().get(one.span.end..fault.span().start);
            fault.fixes().len() > 1 && between.is_some_and(|text| text.trim().is_empty())
        };
        // Its size is on the next line, and can be read in two ways.
        let is_sized_below =
            one.line.sizes.is_empty() && faults.iter().any(|fault| follows(&fault));
        let mut ways = one.line.ways();
        let mut answers: Vec<asked::Answer> = Vec::new();
        // The ways that fit there, and those that have a place.
        let (mut fitting, mut placed, mut lacks_place) = (0, 0, false);
        for size in &ways {
            taken[i] = one.line.at("", *size);
            let (text, line, open, replaced) =
                with_lines(source, (told, &taken, i), unread, faults);
            let sketch = sketch::read_without_lines(&Source::new(source.name(), text)).sketch;
            // The line of a level may come first.
            let line = line + one.line.before.rfind('\n').map_or(0, |end| end + 1);
            let found = asked::places(&sketch, line, &one.line.place, size.is_some(), &open);
            let is_replaced = |at: usize| replaced.contains(&at);
            if let Some(waits) = &found.waits_for {
                lacks_place = waits.unplaced.is_some_and(|at| !is_replaced(at));
            }
            answers.push(found);
        }
        // Along a side, the length that is as long as the side.
        let along_all = answers.iter().position(|found| found.fills && !found.places.is_empty());
        let is_only = answers.iter().filter(|found| found.fills).count() == 1;
        if let Some(way) = along_all.filter(|_| is_only && ways.len() > 1) {
            (ways, answers) = (vec![ways.swap_remove(way)], vec![answers.swap_remove(way)]);
        }
        // The recess that it fills is meant, if there is only one.
        let recesses = answers.iter().filter(|found| found.recess.is_some()).count();
        for (size, mut found) in ways.iter().zip(answers) {
            if recesses == 1 {
                let places = std::mem::take(&mut found.places);
                found.places =
                    found.recess.and_then(|at| places.into_iter().nth(at)).into_iter().collect();
                found.fits &= !found.places.is_empty();
            }
            fitting += usize::from(found.fits);
            placed += usize::from(!found.places.is_empty());
            let lines = found.places.iter();
            offered.extend(lines.map(|(place, said)| (one.line.at(place, *size), said.clone())));
            // A way that fits nowhere along the wall has no end to count from.
            let ends = answer.ends.or(found.ends.filter(|_| found.fits));
            answer = asked::Answer { places: Vec::new(), ends, ..found };
        }
        // Where the words give one way no place that they mean, they need not mean the other.
        if placed < fitting && !one.line.place.is_over() {
            offered.clear();
        }
        taken[i] = match (&offered[..], answer.ends) {
            ([(only, _)], None) => only.clone(),
            _ => unplaced(one),
        };
        let fault = faults.iter_mut().find(|fault| {
            (one.span.start..=one.span.end).contains(&fault.span().start)
                && fault.fixes().is_empty()
        });
        let Some(fault) = fault else { continue };
        if one.line.place.is_over() && !offered.is_empty() {
            answer.ends = None;
        }
        // Where along the wall its door is, the file does not say.
        let is_between = one.line.place.is_between && recesses != 1;
        if answer.ends.is_some() && (one.line.place.is_at_a_door || is_between) {
            offered.clear();
        }
        // With the size in two ways and no end to count from there would be too much to choose from.
        if answer.ends.is_some() && fitting > 1 && offered.len() > MOST_SHOWN {
            offered.clear();
        }
        let mut helps: Vec<String> = Vec::new();
        let shown: Vec<String> =
            offered.iter().map(|(line, said)| format!("{} ({said})", in_one_row(line))).collect();
        if !shown.is_empty() {
            let is_only_way = fitting == 1 && answer.ends.is_none() && recesses != 1;
            let (within, beside): (Vec<_>, Vec<_>) =
                offered.iter().partition(|(line, _)| line.contains(" within \""));
            let is_either = !within.is_empty() && !beside.is_empty();
            let which = match (ways.len() > 1, placed) {
                (true, 2) if is_either => {
                    "; did you walk round it together with the house, or does it stand beside that walk, and which length runs north and south?"
                }
                (_, _) if is_either => {
                    "; did you walk round it together with the house, or does it stand beside that walk?"
                }
                (true, 2) => "; which length runs north and south?",
                (true, _) if is_only_way => {
                    "? With the lengths the other way round it does not fit there"
                }
                _ => "?",
            };
            helps.push(format!("did you mean {}{which}", list_or(&shown)));
        }
        if let Some([one, other]) = answer.ends {
            let example = answer.example;
            let lead = if shown.is_empty() {
                "say where along that side"
            } else {
                "anywhere else along it"
            };
            // What is shown already says what a place reads like.
            let then = if shown.is_empty() { THEN } else { "" };
            helps.push(format!(
                "{lead}: add to your line how far it is from one end, as `{example} from the {} end` or `{example} from the {} end`{then}",
                one.word(),
                other.word()
            ));
        }
        let far = answer.example;
        if is_sized_below {
            offered.clear();
            helps = vec!["where it stands follows from its size: settle the line below first and leave this one as it is".to_owned()];
            taken[i] = unplaced(one);
        } else if answer.needs_size && (answer.needs_level || one.line.place.is_over()) {
            helps.push("what lies over another space is on a level of its own: put `level \"Upper floor\"` on a line before it, and its two lengths on its own line or its sides below it".to_owned());
        } else if answer.needs_size {
            helps.push(format!(
                "where it stands follows from its size: put its two lengths on this line, as `{far} x {far}`, or type its sides on the lines below it; leave the words about its place as they are"
            ));
        } else if answer.needs_ends {
            helps.push(format!(
                "add to your line how far it is from two walls that meet, as `{far} from the south end, {far} from the west end`, instead of `in the middle`"
            ));
        } else if answer.needs_level {
            helps.push("what lies over another space is on a level of its own: put `level \"Upper floor\"` on a line before it, and leave this line as it is".to_owned());
        } else if let Some(waits) = answer.waits_for {
            let name = waits.name;
            let wrong = waits.wrong.filter(|wrong| !shown_already.contains(wrong.message()));
            let is_other = !waits.by_itself && !lacks_place;
            helps.push(match (waits.by_itself, lacks_place) {
                (true, _) => {
                    offered = ways.iter().map(|size| (one.line.by_itself(*size), String::new())).collect();
                    let lines: Vec<String> =
                        offered.iter().map(|(line, _)| in_one_row(line)).collect();
                    let which =
                        if ways.len() > 1 { " (which length runs north and south?)" } else { "" };
                    format!(
                        "`{name}` stands by itself, and nothing can be placed beside what is `detached`; its area is the same if this one is so too: {}{which}",
                        list_or(&lines)
                    )
                }
                (false, true) => format!(
                    "this counts from `{name}`, which has no place yet: say after its name where it starts, as `start` with a way and a length from where the first walk of the house begins; leave this line as it is"
                ),
                (false, false) => match &wrong {
                    // The level is not looked at while lines of it cannot be read.
                    Some(wrong) => format!(
                        "this follows from `{name}`: {}; settle that first and leave this line as it is",
                        wrong.message()
                    ),
                    None => format!(
                        "this follows from `{name}`: settle that first and leave this line as it is"
                    ),
                },
            });
            let more = wrong.filter(|_| is_other);
            helps.extend(
                more.iter()
                    .flat_map(|wrong| wrong.helps())
                    .map(|help| format!("of `{name}`: {help}")),
            );
        } else if let Some(name) = answer.unknown {
            if one.line.place.is_over() && !is_on_an_upper_level(source, one.span) {
                helps.push(format!("what lies over another space is on a level of its own: if `{name}` is on the level below, put `level \"Upper floor\"` on a line before this one"));
            }
            helps.push(format!("nothing above on this level is the only one called `{name}`"));
            helps.extend(fault.helps().iter().cloned());
        }
        if let Some(name) = answer.may_be_turned.filter(|_| !offered.is_empty()) {
            helps.push(format!(
                "it is placed as `{name}` is read, with the walls walked `front` toward the street; if they are named by the sides on which they stand, type them in compass words first and leave this line as it is"
            ));
        }
        if helps.is_empty() {
            continue;
        }
        let fixes = offered.iter().map(|(line, _)| Fix::new(one.span, line.clone())).collect();
        // What was found can be drawn.
        let found = fault.message().strip_suffix(" is no place that can be drawn");
        let cause = found
            .filter(|_| placed > 0 && !offered.is_empty())
            .map(|told| format!("{told} is a place in words, and a space starts at a corner or at a distance from one"));
        *fault = fault.clone().instead(cause, helps, fixes);
    }
}

/// Whether two levels or more are opened above a line, so that it lies over the first of them already.
fn is_on_an_upper_level(source: &Source, at: Span) -> bool {
    let above = source.text().get(..at.start).unwrap_or_default();
    above.lines().filter(|line| line.trim_start().to_lowercase().starts_with("level ")).count() > 1
}

/// A line that cannot be read and for which no other is offered, and what stands for it while places are tried.
type Unread = (Span, String);

/// These lines, without those whose place is asked for. One that opens a level still does.
fn unread(source: &Source, told: &[Asked], faults: &[Diagnostic]) -> Vec<Unread> {
    let lost = faults.iter().filter(|fault| fault.is_error() && fault.fixes().is_empty());
    let lines = lost.filter_map(|fault| {
        let at = fault.span().start;
        let begin = source.text().get(..at)?.rfind('\n').map_or(0, |end| end + 1);
        let end = source.text().get(at..)?.find('\n').map_or(source.text().len(), |end| at + end);
        let line = source.text().get(begin..end)?.to_lowercase();
        let mut words = line.split_whitespace();
        let (first, second) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
        let is_level = sketch::opens_level(first, second);
        let name = || source.text().get(begin..end)?.split('"').nth(1);
        let is_space = sketch::Kind::ALL.iter().any(|kind| kind.word() == first);
        let instead = match name().filter(|_| is_space) {
            _ if is_level => "level \"-\"".to_owned(),
            Some(name) => format!("{first} \"{name}\""),
            None => String::new(),
        };
        Some((Span::new(begin, end), instead))
    });
    let is_asked =
        |span: Span| told.iter().any(|one| (span.start..=span.end).contains(&one.span.start));
    let mut all: Vec<Unread> = lines.filter(|(span, _)| !is_asked(*span)).collect();
    all.dedup();
    all
}

fn left_out(unread: &[Unread]) -> impl Iterator<Item = (Span, &str)> {
    unread.iter().map(|(span, instead)| (*span, instead.as_str()))
}

/// The text with these lines instead of those whose place is asked for, and with the first line that is offered for
/// every other; where line `i` begins in it; where the lines begin that may be read in several ways; and where all
/// replacements begin.
fn with_lines(
    source: &Source,
    (told, taken, i): (&[Asked], &[String], usize),
    unread: &[Unread],
    faults: &[Diagnostic],
) -> (String, usize, Vec<usize>, Vec<usize>) {
    let is_asked = |span: Span| told.iter().any(|one| one.span.start == span.start);
    let fixes = faults.iter().filter_map(|fault| fault.fixes().first());
    let others = fixes.filter(|fix| !is_asked(fix.span)).map(|fix| (fix.span, fix.text.as_str()));
    let asked = told.iter().map(|one| one.span).zip(taken.iter().map(String::as_str));
    let (text, begins) = obeyed(source, asked.chain(others).chain(left_out(unread)).collect());
    let line = told.get(i).and_then(|one| {
        begins.iter().find(|(span, _)| span.start == one.span.start).map(|(_, at)| *at)
    });
    // Lines of which more than one reading is offered.
    let several = faults.iter().filter(|fault| fault.fixes().len() > 1);
    let several: Vec<Span> =
        several.filter_map(|fault| fault.fixes().first()).map(|fix| fix.span).collect();
    // So have lines whose place is asked for and not found yet, and those that cannot be read.
    let is_unplaced = |span: Span| {
        let same = |(j, one): &(usize, &Asked)| *j != i && one.span.start == span.start;
        told.iter().enumerate().find(same).is_some_and(|(j, one)| {
            taken.get(j).is_some_and(|line| *line == one.line.at("", one.line.sizes.first()))
        })
    };
    let is_unread = |span: Span| unread.iter().any(|(of, _)| *of == span);
    let open = begins
        .iter()
        .filter(|(span, _)| several.contains(span) || is_unplaced(*span) || is_unread(*span));
    let open = open.map(|(_, at)| walk_of(&text, *at).unwrap_or(*at)).collect();
    (text, line.unwrap_or(0), open, begins.iter().map(|(_, at)| *at).collect())
}

/// The words with which the line of a wall begins.
const WALLS: [&str; 12] = [
    "north", "east", "south", "west", "back", "right", "front", "left", "diagonal", "bearing",
    "arc", "bay",
];

/// Where the line of the space begins to whose walk the wall at this byte belongs. `None` if no wall is there.
fn walk_of(text: &str, at: usize) -> Option<usize> {
    let first = |line: &str| line.split_whitespace().next().unwrap_or_default().to_lowercase();
    let is_wall = WALLS.contains(&first(text.get(at..)?).as_str());
    let mut begin = text.get(..at)?.rfind('\n').map_or(0, |end| end + 1);
    while is_wall && begin > 0 {
        begin = text.get(..begin - 1)?.rfind('\n').map_or(0, |end| end + 1);
        let word = first(text.get(begin..)?);
        if sketch::Kind::ALL.iter().any(|kind| kind.word() == word) {
            return Some(begin);
        }
        if word == "level" {
            break;
        }
    }
    None
}

/// The text with its parts replaced, and where each replacement begins in it.
fn obeyed(source: &Source, mut changes: Vec<(Span, &str)>) -> (String, Vec<(Span, usize)>) {
    changes.sort_by_key(|(span, _)| (span.start, span.end));
    let (mut text, mut from) = (String::new(), 0);
    let mut begins: Vec<(Span, usize)> = Vec::new();
    for (span, with) in changes {
        let Some(kept) = source.text().get(from..span.start) else { continue };
        text.push_str(kept);
        begins.push((span, text.len()));
        text.push_str(with);
        from = span.end;
    }
    text.push_str(source.text().get(from..).unwrap_or_default());
    (text, begins)
}

/// Takes back each offered line of a space that cannot stand where the line puts it, and says what is wrong there.
fn take_back_places(source: &Source, told: &[Asked], unread: &[Unread], faults: &mut [Diagnostic]) {
    let first: Vec<Fix> =
        faults.iter().filter_map(|fault| fault.fixes().first()).cloned().collect();
    let mut tried = 0;
    for fault in faults {
        let is_computed =
            told.iter().any(|one| (one.span.start..=one.span.end).contains(&fault.span().start));
        let fixes = fault.fixes().to_vec();
        if is_computed || !fixes.iter().any(|fix| has_place(&fix.text)) || tried >= MOST_ASKED {
            continue;
        }
        tried += fixes.len();
        let mut wrong: Option<Diagnostic> = None;
        let mut kept: Vec<Fix> = Vec::new();
        for fix in fixes.iter().cloned() {
            let others = first.iter().filter(|other| other.span.start != fix.span.start);
            let all = others.chain([&fix]).map(|fix| (fix.span, fix.text.as_str()));
            let all = all.chain(left_out(unread)).collect();
            match what_is_wrong_there(source, &fix, all) {
                Some(error) if has_place(&fix.text) => wrong = Some(error),
                _ => kept.push(fix),
            }
        }
        let Some(wrong) = wrong else { continue };
        let helps = match &kept[..] {
            [] => {
                let line = fixes.first().map(|fix| in_one_row(&fix.text)).unwrap_or_default();
                let said = format!("as {line} it would stand where it cannot: {}", wrong.message());
                [vec![said], wrong.helps().to_vec()].concat()
            }
            kept => {
                let shown: Vec<String> = kept.iter().map(|fix| in_one_row(&fix.text)).collect();
                vec![format!("did you mean {}?", list_or(&shown))]
            }
        };
        *fault = fault.clone().instead(None, helps, kept);
    }
}

/// Whether the line of a space says where it starts.
fn has_place(line: &str) -> bool {
    let first = line.split(' ').next().unwrap_or_default();
    let outside = line.split('"').step_by(2).any(|part| {
        let part = part.split('#').next().unwrap_or_default();
        part.contains(" start ") || part.contains(" from ")
    });
    outside && sketch::Kind::ALL.iter().any(|kind| kind.word() == first)
}

/// What is wrong about where a space stands once these changes are made, one of which is its line.
fn what_is_wrong_there(
    source: &Source,
    fix: &Fix,
    changes: Vec<(Span, &str)>,
) -> Option<Diagnostic> {
    let (text, begins) = obeyed(source, changes);
    let at = begins.iter().find(|(span, _)| *span == fix.span)?.1;
    let mended = Source::new(source.name(), text);
    let sketch::Reading { sketch, mut faults, .. } = sketch::read_without_lines(&mended);
    check(&sketch, &mut unchecked(&sketch), &mut faults);
    let is_about = |error: &&Diagnostic| {
        let is_place = matches!(
            error.word(),
            Word::SpacesOverlap | Word::NotInside | Word::NoSuchCorner | Word::NoSuchSpace
        );
        // Where another offered line may be what is wrong, nothing is taken back.
        let is_other = |span: &Span| {
            begins.iter().any(|(of, begins)| *of != fix.span && span.start == *begins)
        };
        is_place
            && (at..at + fix.text.len()).contains(&error.span().start)
            && !error.others().iter().any(|(span, _)| is_other(span))
    };
    faults.iter().find(is_about).cloned()
}

/// The traverses of a text as typed, one draft for each level and lot, for drawing what does not close yet; at least
/// one.
///
/// # Errors
///
/// The errors of the text, if it has no side to draw.
#[cfg(feature = "pages")]
pub(crate) fn drafts(source: &Source) -> Result<Vec<Draft>, Diagnostics> {
    let sketch::Reading { sketch, mut faults, more, .. } = sketch::read(source);
    let drawn = draft::drafts(source, &sketch, &faults);
    if drawn.is_empty() {
        sort(&mut faults);
        return Err(Diagnostics::new(source.clone(), faults).and_more(more));
    }
    Ok(drawn)
}

/// Decodes the bytes of a sides file.
///
/// # Errors
///
/// A diagnostic if the bytes are a known other format, or at the first byte that is not UTF-8.
pub fn decode(name: impl Into<String>, bytes: Vec<u8>) -> Result<Source, Diagnostics> {
    if let Some((what, help)) = other_format(&bytes) {
        let shown = String::from_utf8_lossy(&bytes[..bytes.len().min(40)]).replace('\0', " ");
        let first = shown.lines().next().unwrap_or_default().to_owned();
        let span = Span::new(0, first.chars().next().map_or(0, char::len_utf8));
        let error = Diagnostic::new(Word::NotText, span, what).help(help);
        return Err(Diagnostics::new(Source::new(name, first), vec![error]));
    }
    match String::from_utf8(bytes) {
        Ok(text) => Ok(Source::new(name, text)),
        Err(error) => {
            let at = error.utf8_error().valid_up_to();
            let bytes = error.as_bytes();
            let wide = bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]);
            let text: String = String::from_utf8_lossy(bytes)
                .chars()
                .map(|c| if c == '\0' { ' ' } else { c })
                .collect();
            let help = if bytes.starts_with(b"%PDF") {
                "this is a PDF; if fairfoot made it, `fairfoot verify --sides` and its name print the sides file inside"
            } else if bytes.starts_with(b"\x89PNG") {
                "this is a picture; the sides file is inside the PDF and the SVG of the same pages"
            } else if wide {
                "this looks like UTF-16; save the file as UTF-8"
            } else {
                "save the file as plain text in UTF-8; a word processor's own format does not do"
            };
            let span = Span::new(at, at + '\u{fffd}'.len_utf8());
            let fault = Diagnostic::new(Word::NotText, span, "this is not UTF-8 text").help(help);
            Err(Diagnostics::new(Source::new(name, text), vec![fault]))
        }
    }
}

/// Recognizes a file in another format: what it is, and what to do with it. `None` for any other file.
fn other_format(bytes: &[u8]) -> Option<(&'static str, &'static str)> {
    const PLAIN: &str = "open it in the program that wrote it, choose Save As, and save it as plain text (.txt), in UTF-8";
    const PICTURE: &str =
        "type what it shows into a sides file; `fairfoot new my-house` writes one to start from";
    let begins = |with: &[u8]| bytes.starts_with(with);
    let low: Vec<u8> = bytes.iter().take(64).map(u8::to_ascii_lowercase).collect();
    let low = low.trim_ascii_start();
    Some(if begins(b"{\\rtf") {
        ("this is a rich text file (RTF), not plain text", PLAIN)
    } else if begins(b"PK\x03\x04") {
        (
            "this is a document of a word processor or a spreadsheet (DOCX, ODT, XLSX), not plain text",
            PLAIN,
        )
    } else if begins(b"\xd0\xcf\x11\xe0") {
        (
            "this is a document of a word processor or a spreadsheet (DOC, XLS), not plain text",
            PLAIN,
        )
    } else if begins(b"\xff\xd8\xff") || bytes.get(4..8) == Some(b"ftyp") {
        ("this is a photograph, not plain text", PICTURE)
    } else if low.starts_with(b"<!doctype html") || low.starts_with(b"<html") {
        (
            "this is a web page (HTML), not plain text",
            "copy the text of the page into a new file and save that as plain text",
        )
    } else {
        return None;
    })
}

#[cfg(all(test, feature = "pages"))]
#[expect(clippy::float_arithmetic, reason = "a screen shows feet")]
mod tests {
    use std::error::Error;
    use std::fs;
    use std::path::Path;

    use super::*;
    use crate::geometry::compass::Direction;
    use crate::sketch::rows::{How, rows};

    /// Feet to the right and toward the street, from nanometers east and north.
    #[expect(clippy::cast_precision_loss, reason = "a screen shows feet")]
    fn seen((east, north): (i64, i64), front: Direction) -> [f64; 2] {
        let (east, north) = (east as f64 / 304_800_000.0, north as f64 / 304_800_000.0);
        match front {
            Direction::South => [east, -north],
            Direction::North => [-east, north],
            Direction::East => [north, east],
            Direction::West => [-north, -east],
        }
    }

    /// Checks that each row ends at a corner of the draft, give or take what closing moves: an inch, or a foot with
    /// an estimated wall. Returns how many rows were checked.
    fn lie_as_drawn(name: &str, text: &str) -> Result<usize, Box<dyn Error>> {
        let drafts = drafts(&Source::new(name, text))?;
        let front = drafts[0].particulars.front.unwrap_or(Direction::South);
        let walks = rows(text).walks;
        let mut checked = 0;
        let all = drafts.iter().flat_map(|draft| {
            let level = draft.level.clone().unwrap_or_default();
            draft.walks.iter().map(move |walk| (level.clone(), walk))
        });
        for (level, drawn) in all {
            let walk = walks.iter().find(|walk| walk.name == drawn.name && walk.level == level);
            let walk = walk.ok_or_else(|| format!("{name}: no rows of {}", drawn.name))?;
            let corners: Vec<[f64; 2]> =
                drawn.corners().into_iter().map(|corner| seen(corner, front)).collect();
            let is_about = walk.rows.iter().any(|row| row.how == How::About);
            let most = if is_about { 1.0 } else { 1.0 / 12.0 };
            for piece in walk.rows.iter().flat_map(|row| &row.pieces) {
                let is_there = |corner: &[f64; 2]| {
                    let (x, y) = (corner[0] - piece.to[0], corner[1] - piece.to[1]);
                    x.hypot(y) <= most
                };
                assert!(corners.iter().any(is_there), "{name}: {} {piece:?}", walk.name);
                checked += 1;
            }
        }
        Ok(checked)
    }

    #[test]
    fn rows_lie_where_a_draft_draws_them() -> Result<(), Box<dyn Error>> {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("sketches");
        let mut checked = 0;
        for entry in fs::read_dir(folder)? {
            let path = entry?.path();
            if path.extension().is_some_and(|ending| ending == "sides") {
                checked += lie_as_drawn(&path.display().to_string(), &fs::read_to_string(&path)?)?;
            }
        }
        assert!(checked > 150, "{checked}");
        let open = "level \"G\"\nliving \"H\"\nnorth 28'\neast 17'\nbay east 8' out 2' flat 4'\neast 17'\nsouth 27'\nwest 40'\n";
        assert_eq!(lie_as_drawn("open", open)?, 8);
        // Corner 6 is where the wall after the bay begins, since the bay stands for three sides.
        let porch = "level \"G\"\nliving \"H\"\nnorth 28'\neast 17'\nbay east 8' out 2' flat 4'\neast 17'\nsouth 28'\nwest 42'\nporch \"P\" from \"H\" corner 6\nnorth 5'\neast 6'\nsouth 5'\nwest 6'\n";
        assert_eq!(lie_as_drawn("porch", porch)?, 12);
        Ok(())
    }
}
