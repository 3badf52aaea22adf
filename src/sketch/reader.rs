//! Reads a whole sides file line by line, continuing after each error.

use smol_str::SmolStr;

use crate::diagnostic::words::list_or;
use crate::diagnostic::{Diagnostic, Diagnostics, Fix, Source, Span, Word, is_hidden};
use crate::geometry::compass::Direction;
use crate::sketch::asked::Asked;
use crate::sketch::assemble::{Assembler, ReadLine};
use crate::sketch::mend::{self, Attempt, Beside, Mend};
use crate::sketch::parser::{self, SIDE_WORDS};
use crate::sketch::phrases::opens_level;
use crate::sketch::statement::*;
use crate::sketch::tree::{Sketch, evened_out};
use crate::sketch::wanted::Wanted;
use crate::sketch::{
    MOST_BYTES, MOST_CHARACTERS, MOST_LINES, cursor, lexer, plain, second_look, value_statement,
    whole_walk,
};

/// A sketch with everything that could be read, and the errors found on the way.
#[derive(Debug)]
pub(crate) struct Reading {
    pub(crate) sketch: Sketch,
    pub(crate) faults: Vec<Diagnostic>,
    /// How many more errors there are than those kept.
    pub(crate) more: usize,
    /// The lines of spaces that lack nothing but a place, which was told in words.
    pub(crate) asked: Vec<Asked>,
    /// What a number without a mark is, and where the street is, also where the line that says so is an answer.
    said: Said,
}

/// What the lines of a file say about all of its walls, also those that are answers.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Said {
    /// What a number without a mark is.
    pub(super) units: Unit,
    /// Where the street is.
    pub(super) front: Option<Direction>,
    /// Whether an error tells that this is not known.
    pub(super) front_told: bool,
}

/// The number of unreadable lines for which a replacement is searched for.
const MENDED: usize = 100;
/// How many errors are kept; any more are only counted.
const KEPT: usize = 500;

/// Reads a sides file without checking whether its outlines close.
///
/// # Errors
///
/// Every error found while reading, in file order.
pub fn parse(source: Source) -> Result<Sketch, Diagnostics> {
    let Reading { sketch, faults, more, .. } = read(&source);
    if faults.is_empty() {
        Ok(sketch)
    } else {
        Err(Diagnostics::new(source, faults).and_more(more))
    }
}

/// Reads a whole sides file, continuing after each error.
pub(crate) fn read(source: &Source) -> Reading {
    // An estimate of the number of lines that is more likely too high than too low.
    let count = (source.text().len() >> 3).min(MOST_LINES) + 1;
    read_twice(source, Assembler::with_lines(count))
}

/// Like [`read`], without the list of lines, which only the tidy form needs.
pub(crate) fn read_without_lines(source: &Source) -> Reading {
    read_twice(source, Assembler::default())
}

/// Reads a file, and if it has errors once more with all answers obeyed.
fn read_twice(source: &Source, assembler: Assembler) -> Reading {
    let mut reading = assembled(source, assembler, MENDED);
    if !reading.faults.is_empty() && source.text().len() <= MOST_BYTES {
        whole_walk::ask(source, reading.said, &mut reading.faults);
        let errors = |obeyed: &Source| assembled(obeyed, Assembler::default(), 0).faults;
        second_look::tell(source, &mut reading.faults, errors);
    }
    reading
}

/// Reads a file line by line; for at most so many unreadable lines a replacement is searched for.
fn assembled(source: &Source, mut assembler: Assembler, most_mended: usize) -> Reading {
    let mut faults = Vec::new();
    let text = source.text();
    if text.len() > MOST_BYTES {
        faults.push(too_long("the file has more than 1 MB"));
        return Reading {
            sketch: Sketch::default(),
            faults,
            more: 0,
            asked: Vec::new(),
            said: Default::default(),
        };
    }
    let mut context = Context::default();
    let mut asked = Vec::new();
    let mut offset = 0;
    let mut tokens = Vec::new();
    let mut rest = text.strip_prefix('\u{feff}').unwrap_or(text);
    offset += text.len() - rest.len();
    let (mut count, mut mended, mut more) = (0, 0, 0);
    while !rest.is_empty() {
        if count == MOST_LINES {
            faults.push(too_long("the file has more than 10,000 lines"));
            break;
        }
        count += 1;
        if let Some(bytes) = assembler.plain_side(rest, offset) {
            offset += bytes;
            rest = rest.get(bytes..).unwrap_or_default();
            continue;
        }
        context.here = offset;
        let end = memchr::memchr(b'\n', rest.as_bytes()).map_or(rest.len(), |at| at + 1);
        let (line, after) = rest.split_at(end);
        let content = line.strip_suffix('\n').unwrap_or(line);
        let content = content.strip_suffix('\r').unwrap_or(content);
        if let Some((statement, span)) = plain::worded::statement(content, offset) {
            more += cut_off(&mut faults);
            context.learn(&statement);
            assembler.only(statement, span, &mut faults);
            (offset, rest) = (offset + line.len(), after);
            continue;
        }
        let before = faults.len();
        let mut read = if content.is_empty() {
            ReadLine::empty(Span::new(offset, offset))
        } else {
            let read = read_words(text, content, offset, &mut context, &mut tokens, &mut faults);
            tokens.clear();
            if let Some(axis) = axis_by_closing(content).filter(|_| !read.faulty) {
                context.by_closing[axis] = true;
            }
            read
        };
        if read.faulty && mended < most_mended {
            mended += 1;
            context.beside = Some(Beside {
                front: context.front,
                is_american: context.is_american,
                in_lot: context.in_lot,
                comment: read.comment.as_deref().map(Into::into),
                house_walk: walk(&text[..offset], context.house.as_ref().map(|house| house.at)),
                last_walk: walk(&text[..offset], context.space.as_ref().map(|_| context.space_at)),
                last_is_a_part: is_a_part(&text[..offset]),
                ..beside(text, offset, offset + line.len())
            });
            let is_of_lot =
                context.in_lot || ["lot", "calls", "deed"].contains(&read.begins[0].as_str());
            let mark = mend::mark_of_calls(content, context.units).filter(|_| is_of_lot);
            context.mark_of_calls = mark.or(context.mark_of_calls);
            let placeless = offer(content, offset, &read, &context, &mut faults, before);
            if let Some(asks) = &placeless {
                context.takes_in(&asks.line.before);
            }
            let told_of = placeless.as_ref().map(|asks| asks.line.before.clone());
            asked.extend(placeless);
            let fixes: Vec<&Fix> = faults[before..].iter().flat_map(Diagnostic::fixes).collect();
            if let [fix, ..] = fixes[..] {
                context.takes_in(&fix.text);
            }
            if let Some(begins) = fixes.iter().find_map(|fix| opened(&fix.text)) {
                // What stands below belongs to the level or the space that is offered.
                read.offers_space = Kind::ALL.iter().any(|kind| kind.word() == begins[0]);
                read.begins = begins;
            } else if let Some(begins) = told_of.as_deref().and_then(opened) {
                // `covered veranda front 4m by 2.4m` begins a space, whatever its first word is.
                read.begins = begins;
            } else if let Some(fix) = fixes.first().filter(|fix| {
                text[offset..]
                    .get(..fix.span.start.saturating_sub(offset))
                    .is_some_and(|before| before.trim().is_empty())
            }) {
                let mut words = fix.text.split_whitespace().map(str::to_lowercase);
                read.begins = [(); 2].map(|()| words.next().unwrap_or_default());
            } else if let Some(begins) = faults[before..]
                .iter()
                .flat_map(Diagnostic::helps)
                .find_map(|help| opened(told(help).filter(|told| told.starts_with("level \""))?))
            {
                // `write `level "First floor"` and its first space here; …`
                context.takes_in("level");
                read.begins = begins;
            } else if faults[before..]
                .iter()
                .flat_map(Diagnostic::helps)
                .any(|help| tells_wall(help))
            {
                // `garage front 22'` between walls: what follows still belongs to the same walk.
                read.begins = Default::default();
            } else if opens_level(&read.begins[0], &read.begins[1]) {
                context.takes_in("level");
            }
        }
        more += cut_off(&mut faults);
        assembler.line(read, &mut faults);
        offset += line.len();
        rest = after;
    }
    assembler.finish(&mut faults);
    // Only a file without a unit is asked about one.
    assembler.sketch.names_meters =
        assembler.sketch.heads.units.is_none() && names_meters(text.as_bytes());
    let said = Said { units: context.units, front: context.front, front_told: context.front_told };
    Reading { sketch: assembler.sketch, faults, more, asked, said }
}

/// Whether a word of a text begins with `meter`, `metre` or `metric`.
fn names_meters(text: &[u8]) -> bool {
    let is_one = |at: usize| {
        let word = text.get(at..at + 5).unwrap_or_default();
        // A perimeter is none.
        if at.checked_sub(1).is_some_and(|before| text[before].is_ascii_alphabetic()) {
            return false;
        }
        [&b"meter"[..], b"metre", b"metri"].iter().any(|one| word.eq_ignore_ascii_case(one))
    };
    memchr::memchr2_iter(b'm', b'M', text).any(is_one)
}

/// Cuts off the errors beyond those that are kept, and returns how many they were.
fn cut_off(faults: &mut Vec<Diagnostic>) -> usize {
    let beyond = faults.len().saturating_sub(KEPT);
    faults.truncate(KEPT);
    beyond
}

/// The first thing that a help tells to write.
fn told(help: &str) -> Option<&str> {
    help.strip_prefix("write `").and_then(|rest| rest.split('`').next())
}

/// Whether the first thing that a help tells to write is a wall.
fn tells_wall(help: &str) -> bool {
    told(help).is_some_and(|told| mend::begins_as_wall(told) || mend::is_way(told))
        || help.starts_with("write `north`, `east`, `south` or `west`, as it was walked")
        || help.starts_with("if it is a wall of the house, ")
}

/// What an offered text opens, as the first words of a line: a level, with its first space if it has one, or a space.
fn opened(offered: &str) -> Option<[String; 2]> {
    let first = |line: &str| line.split(' ').next().unwrap_or_default().to_lowercase();
    let is_space = |word: &String| Kind::ALL.iter().any(|kind| kind.word() == word);
    let begins = first(offered);
    // What heads the file may stand above them.
    if let Some((_, rest)) =
        offered.split_once('\n').filter(|_| ["address", "property"].contains(&begins.as_str()))
    {
        return opened(rest);
    }
    if begins == "level" {
        let space = offered.lines().nth(1).map(first).filter(is_space);
        return Some([begins, space.unwrap_or_default()]);
    }
    (is_space(&begins) || begins == "lot").then(|| [begins, String::new()])
}

fn too_long(message: &str) -> Diagnostic {
    Diagnostic::new(Word::FileTooLong, Span::default(), message)
        .help("one file holds one house; give the file that you typed the sides into")
}

/// What earlier lines determine about later ones.
#[derive(Default)]
pub(super) struct Context {
    units: Unit,
    /// The street side, once it has been stated.
    front: Option<Direction>,
    /// Whether an error has told that the street side is not known.
    front_told: bool,
    /// Whether an American state has been named.
    is_american: bool,
    first_bare: Option<Span>,
    /// Where the line begins that is read.
    here: usize,
    /// Where the line of the last space begins, as it was typed.
    space_at: usize,
    /// The name of the last space. Most names are short enough to be kept without the heap.
    space: Option<SmolStr>,
    /// The space of this level that places are counted from, if there is one above: its first living space.
    house: Option<House>,
    /// Whether the lines above are the calls of a lot.
    in_lot: bool,
    /// Along which axes a wall of this walk is given, or offered, by closing: north, east.
    by_closing: [bool; 2],
    /// The mark of the lengths of a lot, if a line said that they are in another unit than the file's.
    mark_of_calls: Option<&'static str>,
    /// The lines around one that cannot be read.
    beside: Option<Beside>,
}

impl Context {
    /// Takes over what a statement says about later lines.
    fn learn(&mut self, statement: &Statement) {
        match statement {
            Statement::Lot(_) => self.in_lot = true,
            Statement::Space(_) | Statement::Level(_) => {
                self.in_lot = false;
                self.mark_of_calls = None;
            }
            _ => {}
        }
        match statement {
            Statement::Space(space) => {
                self.by_closing = [false; 2];
                self.space_at = self.here;
                self.space = Some(space.name.text.as_str().into());
                self.counts_from(&space.name.text, space.kind);
            }
            Statement::Level(_) => self.house = None,
            Statement::Head(head) => match **head {
                Head::Units(units) => self.units = units,
                Head::Front(front) => self.front = Some(front),
                _ => {}
            },
            Statement::Valued(valued) => {
                self.is_american |= matches!(**valued, value_statement::Valued::Place(place) if place != value_statement::Place::None);
            }
            _ => {}
        }
    }
}

struct House {
    name: SmolStr,
    /// Where its line begins.
    at: usize,
    is_living: bool,
}

impl Context {
    /// Remembers a space that places on its level may be counted from.
    fn counts_from(&mut self, name: &str, kind: Kind) {
        let is_living = kind == Kind::Living;
        if self.house.as_ref().is_none_or(|house| is_living && !house.is_living) {
            self.house = Some(House { name: name.into(), at: self.here, is_living });
        }
    }

    /// Remembers what a line that is offered instead of an unreadable one would say.
    fn takes_in(&mut self, offered: &str) {
        let mut words = offered.splitn(2, ' ');
        let first = words.next().unwrap_or_default().to_lowercase();
        let (first, name) = (first.as_str(), offered.split('"').nth(1));
        if first == "level" {
            self.house = None;
            // The first space of the level may be offered with it.
            if let Some((_, space)) = offered.split_once('\n') {
                self.in_lot = false;
                return self.takes_in(space);
            }
        }
        if first == "front" {
            let all = [Direction::North, Direction::East, Direction::South, Direction::West];
            let street = offered.split_whitespace().nth(1);
            let street = all.into_iter().find(|way| Some(way.word()) == street);
            self.front = street.or(self.front);
        }
        let kind = Kind::ALL.iter().find(|kind| kind.word() == first);
        self.in_lot = first == "lot" || self.in_lot && kind.is_none() && first != "level";
        if let Some(axis) = axis_by_closing(offered) {
            self.by_closing[axis] = true;
        }
        if let (Some(kind), Some(name)) = (kind, name) {
            self.by_closing = [false; 2];
            self.space_at = self.here;
            self.space = Some(name.into());
            self.counts_from(name, *kind);
        }
    }
}

/// Along which axis a side that is given by closing runs: 0 for north and south, 1 for east and west.
fn axis_by_closing(line: &str) -> Option<usize> {
    let (way, rest) = line.trim_start().split_once(' ')?;
    let is_one = rest.trim_start().starts_with("by closing");
    let axis = match way.to_lowercase().as_str() {
        "north" | "south" | "n" | "s" => 0,
        "east" | "west" | "e" | "w" => 1,
        _ => return None,
    };
    is_one.then_some(axis)
}

/// The nearest lines before and after a part of the text that are neither empty nor comments.
fn beside(text: &str, start: usize, end: usize) -> Beside {
    let before = text[..start].lines().rev().find(says).unwrap_or_default().trim();
    let after = text[end..].lines().find(says).unwrap_or_default().trim();
    let (walls, face) = only_walls(&text[..start]).unwrap_or_default();
    Beside {
        walls: walls.into_iter().map(Into::into).collect(),
        walls_face: face.into(),
        before: before.into(),
        after: after.into(),
        corners: corners(&text[..start]),
        spaces: spaces(text),
        known: [&text[..start], &text[end..]].into_iter().flat_map(known).collect(),
        has_level_above: text[..start]
            .lines()
            .filter(|line| begins_as_level(line))
            .nth(1)
            .is_some(),
        has_record: [&text[..start], &text[end..]].into_iter().flat_map(str::lines).any(is_record),
        has_veneer: text.lines().any(|line| line.trim_start().starts_with("veneer ")),
        has_brick: text.lines().map(str::trim_start).any(|line| {
            line.strip_prefix("veneer ").is_some_and(|rest| !rest.trim_start().starts_with("none"))
        }),
        following: following(&text[end..]),
        ..Beside::default()
    }
}

/// How many lines of a walk are looked at.
const MOST_OF_A_WALK: usize = 60;

/// Whether a line begins a level, a space or an outline.
fn begins_another(line: &str) -> bool {
    let first = line.split_whitespace().next().unwrap_or_default();
    ["level", "lot", "map"].contains(&first) || mend::is_kind(first)
}

/// The lines below that of a space, which begins at this byte, up to the next level or space; none if there is none.
fn walk(text: &str, from: Option<usize>) -> std::rc::Rc<[std::rc::Rc<str>]> {
    let Some(from) = from else { return Default::default() };
    let below = text.get(from..).unwrap_or_default().lines().skip(1).map(str::trim);
    let below = below.take_while(|line| !begins_another(line)).take(MOST_OF_A_WALK);
    below.filter(says).map(Into::into).collect()
}

/// Whether the last line of a space is that of a part of another one.
fn is_a_part(text: &str) -> bool {
    let first = |line: &str| line.split_whitespace().next().unwrap_or_default().to_lowercase();
    let last = text.lines().rev().map(first).find(|word| mend::is_kind(word));
    last.is_some_and(|word| ["open", "stair", "low", "court"].contains(&word.as_str()))
}

/// The lines at the beginning of a text that begin nothing else.
fn following(text: &str) -> std::rc::Rc<[std::rc::Rc<str>]> {
    let lines = text.lines().map(str::trim).filter(says);
    lines.take_while(|line| !begins_another(line)).take(MOST_OF_A_WALK).map(Into::into).collect()
}

/// Whether a line is neither empty nor a comment.
fn says(line: &&str) -> bool {
    !line.trim().is_empty() && !line.trim_start().starts_with('#')
}

/// The walls of the only living space of a text that has one level, and the face that its line names.
fn only_walls(text: &str) -> Option<(Vec<&str>, String)> {
    /// How many lines are looked through, and how many walls are kept.
    const LINES: usize = 300;
    const WALLS: usize = 24;
    let body = |line: &'_ str| line.split('#').next().unwrap_or_default().trim().len();
    let lines: Vec<&str> = text.lines().take(LINES + 1).map(str::trim).collect();
    let is_living = |line: &str| line.starts_with("living ");
    let at = lines.iter().position(|line| is_living(line))?;
    // A level below the space may be the one that copies it.
    let levels = lines[..at].iter().filter(|line| begins_as_level(line)).count();
    let after = lines[at..].iter().filter(|line| begins_as_level(line)).count();
    let livings = lines.iter().filter(|line| is_living(line)).count();
    if levels != 1 || after > 1 || livings != 1 || lines.len() > LINES {
        return None;
    }
    let is_wall = |line: &&str| mend::begins_as_wall(line);
    let walls: Vec<&str> = lines[at + 1..]
        .iter()
        .filter(|line| !line.is_empty() && !line.starts_with(['#']) && !line.starts_with("corner "))
        .take_while(|line| is_wall(line))
        .map(|line| line[..body(line)].trim_end())
        .collect();
    let head = lines[at][..body(lines[at])].to_owned();
    let face = ["inside", "outside", "frame"]
        .iter()
        .find(|face| head.contains(&format!(" measured to {face}")))
        .map_or_else(String::new, |face| format!(" measured to {face}"));
    let veneer = if head.ends_with(" veneer none") { " veneer none" } else { "" };
    ((3..=WALLS).contains(&walls.len())).then(|| (walls, format!("{face}{veneer}")))
}

fn begins_as_level(line: &str) -> bool {
    line.trim_start().starts_with("level ")
}

/// Whether a line is the record's figure for the whole house.
fn is_record(line: &str) -> bool {
    let after = line.trim_start().strip_prefix("record ");
    after.is_some_and(|after| after.trim_start().starts_with(|c: char| c.is_ascii_digit()))
}

/// The names that the first lines of a text give spaces and levels.
fn spaces(text: &str) -> std::rc::Rc<[std::rc::Rc<str>]> {
    /// How many lines are looked through.
    const LINES: usize = 300;
    let names = text.lines().take(LINES).filter_map(|line| {
        let (word, rest) = line.trim_start().split_once(' ')?;
        let is_name = word == "level" || mend::is_kind(word);
        is_name.then(|| rest.split('"').nth(1)).flatten()
    });
    names.map(Into::into).collect()
}

/// The spaces of a text, by kind and name: those in the words of the format, and those above a wall that are told by a
/// word for their kind.
fn known(text: &str) -> Vec<[std::rc::Rc<str>; 2]> {
    /// How many lines are looked through.
    const LINES: usize = 300;
    let lines: Vec<&str> = text.lines().take(LINES).map(str::trim).filter(says).collect();
    let of_line = |(at, line): (usize, &&str)| {
        let (word, rest) = line.split_once(' ').unwrap_or((line, ""));
        if mend::is_kind(word) && rest.trim_start().starts_with('"') {
            return rest.split('"').nth(1).map(|name| [word.into(), name.into()]);
        }
        let is_above_a_wall = lines.get(at + 1).is_some_and(|next| mend::begins_as_wall(next));
        let is_wall = mend::begins_as_wall(line)
            || ["wall", "side"].iter().any(|word| line.to_lowercase().contains(word));
        if !is_above_a_wall || is_wall {
            return None;
        }
        let mut words = line.split(|c: char| !c.is_alphanumeric()).take(3);
        words.find_map(|word| {
            let kind = mend::kind_meant(&word.to_lowercase())?;
            Some([kind.into(), word.into()])
        })
    };
    lines.iter().enumerate().filter_map(of_line).collect()
}

/// The names of the corners that the last lines of a text give, the last one first, back to where its level begins.
fn corners(text: &str) -> std::rc::Rc<[std::rc::Rc<str>]> {
    /// How many lines are looked through.
    const LINES: usize = 300;
    let begins = |line: &str, word: &str| {
        line.get(..word.len()).is_some_and(|first| first.eq_ignore_ascii_case(word))
    };
    let lines = text.lines().rev().map(str::trim_start).take(LINES);
    let on_level = lines.take_while(|line| !begins(line, "level "));
    let corners = on_level.filter(|line| begins(line, "corner "));
    corners.filter_map(|line| line.split('"').nth(1)).map(Into::into).collect()
}

/// The wall of a comment that begins with its number: `#2 east 40' 6"`.
fn numbered_wall(comment: &str) -> Option<&str> {
    let after = comment.strip_prefix('#')?;
    let rest = after.trim_start_matches(|c: char| c.is_ascii_digit());
    let wall = rest.trim_start_matches(['.', ':', ')']).trim_start();
    let mut words = wall.split(|c: char| !c.is_ascii_alphabetic());
    let is_way = words.any(|word| {
        ["north", "east", "south", "west"].iter().any(|way| word.eq_ignore_ascii_case(way))
    });
    let is_numbered = (1..3).contains(&(after.len() - rest.len())) && wall.len() < rest.len();
    (is_numbered && is_way && mend::measures(wall)).then_some(wall)
}

/// Reads one line, which begins at byte `offset` of the text, word by word. `tokens` is a buffer.
pub(super) fn read_words<'a>(
    text: &str,
    line: &'a str,
    offset: usize,
    context: &mut Context,
    tokens: &mut Vec<lexer::Placed<'a>>,
    faults: &mut Vec<Diagnostic>,
) -> ReadLine {
    let whole = Span::new(offset, offset + line.len());
    let mut read = ReadLine::empty(whole);
    if let Some(fault) = unreadable(line, offset) {
        let words = line.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty());
        for (begins, word) in read.begins.iter_mut().zip(words) {
            *begins = word.to_lowercase();
        }
        faults.push(fault);
        read.faulty = true;
        return read;
    }
    let lexed = lexer::lex(line, offset, tokens, faults);
    read.comment = lexed.comment;
    read.faulty = lexed.faulty;
    let (Some(first), Some(last)) = (tokens.first(), tokens.last()) else {
        if let Some(wall) = read.comment.as_deref().and_then(numbered_wall) {
            let message = "a line that begins with `#` is a comment, and here a wall is in it";
            let number = Span::new(offset, offset + line.trim_end().len() - wall.len());
            let fault = Diagnostic::new(Word::StrayCharacter, number, message);
            let first = wall.split(' ').next().unwrap_or_default().to_lowercase();
            let fault = match ["north", "east", "south", "west"].contains(&first.as_str()) {
                true => fault
                    .help(format!("a wall needs no number: did you mean `{wall}`?"))
                    .fix(number, ""),
                false => fault.help(format!(
                    "a wall needs no number: take `{}` out",
                    line[..line.trim_end().len() - wall.len()].trim()
                )),
            };
            faults.push(fault.help("if it is a comment, put a space after the `#`"));
            read.faulty = true;
        }
        return read;
    };
    read.span = first.span.to(last.span);
    if lexed.faulty {
        read.begins = first_words(tokens);
        return read;
    }
    let mut cursor = cursor::Cursor::new(tokens, text, context.units, faults);
    cursor.first_bare = context.first_bare;
    cursor.front = context.front;
    cursor.front_told = context.front_told;
    read.statement = cursor.statement().ok();
    read.faulty = read.statement.is_none();
    if read.faulty {
        read.begins = first_words(tokens);
    }
    context.first_bare = cursor.first_bare;
    context.front_told |= cursor.needs_front;
    if let Some(statement) = &read.statement {
        context.learn(statement);
    }
    if let Some(Statement::Side(run, _)) = &read.statement {
        read.span = side_span(tokens, run);
        read.typed = evened_out(&text[read.span.start..read.span.end]);
    }
    read
}

/// Adds a suggested replacement to the errors of a line, which begin at index `first`, if one is found.
fn offer(
    line: &str,
    offset: usize,
    read: &ReadLine,
    context: &Context,
    faults: &mut Vec<Diagnostic>,
    first: usize,
) -> Option<Asked> {
    let is_near_miss = |fault: &Diagnostic| !fault.fixes().is_empty();
    let place = faults[first..].iter().position(|fault| !is_near_miss(fault))?;
    if faults[first + place].word() == Word::HiddenCharacter || line.len() > MOST_CHARACTERS {
        return None;
    }
    let comment = read.comment.as_ref().map_or(0, String::len);
    let trimmed = line.trim_end();
    let body = trimmed.get(..trimmed.len().saturating_sub(comment)).unwrap_or(trimmed).trim_end();
    let typed = body.trim_start();
    let start = offset + body.len() - typed.len();
    let mut attempt = |changed: &str| attempt(changed, context);
    // `32&#39; 4&quot;`: here `#` does not begin a comment.
    if let Some(plain) = mend::decoded(trimmed.trim_start()) {
        let read = attempt(&plain).reads.map(|line| vec![line]);
        let lines =
            read.or_else(|| Some(mend::mend(&plain, &mut attempt)?.lines)).unwrap_or_default();
        if !lines.is_empty() {
            let fault = faults.remove(first + place);
            faults.truncate(first);
            let cause = "a web page writes its marks as codes, as `&#39;` for `'`".to_owned();
            let span = Span::new(start, offset + trimmed.len());
            faults.push(instead(fault, cause, lines, span));
            return None;
        }
    }
    // `photo #2`: here `#` does not begin a comment.
    // `pic #2` is a photo too.
    let head = typed.rsplit_once(' ').filter(|(_, last)| is_picture(last)).map(|(head, _)| head);
    let names_picture = head.is_some();
    let head = head.map_or_else(|| typed.to_owned(), |head| format!("{head} photo"));
    let with_comment = read.comment.as_ref().map(|comment| format!("{head} \"{comment}\""));
    let as_text = with_comment.filter(|line| {
        // `lot #9 recorded 0.21 acres`: what follows the number is no name.
        let is_lot = typed == "lot" && line.contains(' ');
        let is_lot = is_lot && line.split(' ').count() > 2;
        !line.contains("\"#\"")
            && !is_lot
            && !takes_a_number(typed)
            && attempt(line).reads.is_some()
    });
    // `corner #4`: the number is written without the `#`.
    let number = read.comment.as_ref().and_then(|comment| comment.strip_prefix('#'));
    let number = number.filter(|number| number.starts_with(|c: char| c.is_ascii_digit()));
    let with_number = number
        .filter(|_| typed.to_lowercase().ends_with(" corner"))
        .map(|number| format!("{typed} {number}"))
        .filter(|line| attempt(line).reads.is_some());
    // `property 88 Teasel Road #4, Juniper County`: the `#` is of the address.
    let of_address = number.and(read.comment.as_ref()).filter(|comment| {
        let is_address = ["property ", "address "].iter().any(|word| typed.starts_with(word));
        is_address && !typed.contains('"') && !comment.contains('"')
    });
    let address = of_address.and_then(|comment| {
        let (word, text) = typed.split_once(' ')?;
        Some(format!("{word} \"{} {}\"", text.trim(), comment.trim()))
    });
    let address = address.filter(|line| attempt(line).reads.is_some());
    const NUMBER: &str = "after a `#` is a comment: a number stands without it";
    const TEXT: &str = "after a `#` is a comment, unless it stands between two `\"`";
    let meant = with_number.map(|line| (line, NUMBER)).or(address.map(|line| (line, TEXT)));
    if let Some((line, cause)) = meant {
        let span = Span::new(start, offset + trimmed.len());
        let fault = faults.remove(first + place);
        faults.truncate(first);
        faults.push(instead(fault, cause.to_owned(), vec![line], span));
        return None;
    }
    let is_at_end = faults[first + place].span().start + 1 >= offset + body.len();
    let numbered = number.filter(|_| is_at_end).and_then(|number| {
        let wall = number.trim_start_matches(|c: char| c.is_ascii_digit());
        let wall = wall.trim_start_matches(['.', ':', ')', ' ']);
        let line = format!("{typed} {wall}").trim().to_owned();
        let cause = "a wall needs no number, and what stands after a `#` is a comment".to_owned();
        match attempt(&line).reads {
            Some(reads) => Some(Mend { lines: vec![reads], cause, ..Mend::default() }),
            None => mend::mend(&line, &mut attempt).map(|mend| Mend { cause, ..mend }),
        }
    });
    let numbered = numbered.filter(|mend| mend.lines.iter().any(|line| mend::begins_as_wall(line)));
    let mend = match as_text.filter(|_| is_at_end || names_picture) {
        Some(line) => Some(Mend { lines: vec![line], cause: TEXT.to_owned(), ..Mend::default() }),
        // `#4 go north 30' 2"`, `north #1 30' 2"`: the number of the wall, and the wall after it.
        None if is_at_end && numbered.is_some() => numbered,
        None if is_at_end
            && typed != "lot"
            && read.comment.as_deref().is_some_and(mend::measures) =>
        {
            Some(Mend {
                lines: Vec::new(),
                cause: "what stands after a `#` is a comment and is not read".to_owned(),
                help: Some("write the length before the `#`".to_owned()),
                ..Mend::default()
            })
        }
        None => {
            let in_unit = context
                .mark_of_calls
                .and_then(|mark| mend::mend_in_unit(typed, mark, &mut attempt));
            in_unit.or_else(|| mend::mend(typed, &mut attempt))
        }
    };
    let mut mend = mend?;
    // One wall each way can follow from the others.
    let only = mend.lines.first().filter(|_| mend.lines.len() == 1);
    let again =
        only.filter(|line| axis_by_closing(line).is_some_and(|axis| context.by_closing[axis]));
    if let Some(way) = again.and_then(|line| line.split(' ').next()).map(str::to_owned) {
        let example = written_as_usual(context);
        mend = Mend {
            cause: "only one wall each way can follow from the others, and another one above is `by closing`".to_owned(),
            help: Some(format!(
                "measure this one, or estimate it: `{way} {example} estimated`, with the length that you think it has"
            )),
            ..Mend::default()
        };
    }
    if let Some(help) = mend.help {
        let fault = faults.remove(first + place);
        faults.truncate(first);
        faults.push(fault.instead(Some(mend.cause), vec![help], Vec::new()));
        let comment = read.comment.as_ref().map_or(String::new(), |comment| format!("  {comment}"));
        return mend.asks.map(|asks| Asked {
            span: Span::new(start, offset + trimmed.len()),
            line: asks.with_comment(&comment),
        });
    }
    let end = if mend.lines[0].contains("\"#") { trimmed.len() } else { body.len() };
    let span = Span::new(start, offset + end);
    let fault = faults.remove(first + place);
    // The replacement corrects the other errors of the line as well.
    faults.truncate(first);
    let lacks_sides = mend.lines.iter().all(|line| lacks_sides(line, context));
    let mut fault = instead(fault, mend.cause, mend.lines, span);
    if lacks_sides {
        let (helps, fixes) = (fault.helps().to_vec(), fault.fixes().to_vec());
        let help = "its walls follow, one on each line below it".to_owned();
        fault = fault.instead(None, [helps, vec![help]].concat(), fixes);
    }
    faults.push(fault);
    None
}

/// Whether a line that is offered begins a space whose sides do not follow.
fn lacks_sides(line: &str, context: &Context) -> bool {
    let begins = line.split(' ').next().unwrap_or_default();
    let is_space = Kind::ALL.iter().any(|kind| kind.word() == begins);
    let after = context.beside.as_ref().map_or("", |beside| &*beside.after);
    is_space
        && !line.contains('\n')
        && !line.contains(" same as ")
        && (after.is_empty() || {
            let next = after.split(' ').next().unwrap_or_default();
            next == "level" || Kind::ALL.iter().any(|kind| kind.word() == next)
        })
}

/// A length for an example, in the unit of the file.
fn written_as_usual(context: &Context) -> &'static str {
    match context.units {
        Unit::Feet | Unit::Inches => "12'",
        _ => "3.65 m",
    }
}

/// The error of a line with what to type in its place.
fn instead(fault: Diagnostic, cause: String, lines: Vec<String>, span: Span) -> Diagnostic {
    let shown: Vec<String> = lines.iter().map(|line| in_one_row(line)).collect();
    let help = match &shown[..] {
        [one] => format!("did you mean {one}?"),
        several => format!("did you mean {}?", list_or(several)),
    };
    let fixes = lines.into_iter().map(|text| Fix::new(span, text)).collect();
    fault.instead(Some(cause), vec![help], fixes)
}

/// Whether what may follow the line is a number of its own, so that `#` was typed before it: `account #R-104417`.
fn takes_a_number(line: &str) -> bool {
    let first = line.split([' ', ':']).next().unwrap_or_default().to_lowercase();
    matches!(first.as_str(), "corner" | "account" | "acct" | "case" | "parcel")
}

/// Whether a word means `photo`.
fn is_picture(word: &str) -> bool {
    matches!(word.to_lowercase().as_str(), "pic" | "pic." | "picture" | "image" | "img" | "pics")
}

/// Several lines quoted in one sentence.
pub(crate) fn in_one_row(lines: &str) -> String {
    let lines: Vec<String> = lines.lines().map(|line| format!("`{line}`")).collect();
    match lines.split_first() {
        Some((first, [])) => first.clone(),
        Some((first, [next])) => format!("{first} and on the next line {next}"),
        Some((first, rest)) => format!("{first} and on the lines below it {}", rest.join(", ")),
        None => String::new(),
    }
}

/// How far one or more lines can be read in the current context.
fn attempt(lines: &str, context: &Context) -> Attempt {
    let mut right = String::with_capacity(lines.len());
    let mut start = 0;
    for line in lines.split('\n') {
        let mut faults = Vec::new();
        let mut tokens = Vec::new();
        let lexed = lexer::lex(line, 0, &mut tokens, &mut faults);
        let mut cursor = cursor::Cursor::new(&tokens, line, context.units, &mut faults);
        cursor.first_bare = context.first_bare;
        cursor.front = context.front;
        let is_side = cursor.peek_word().is_some_and(parser::begins_a_side);
        let knows_first = cursor.peek_word().is_some_and(parser::is_a_first_word);
        let read = if lexed.faulty { None } else { cursor.statement().ok() };
        let wanted = std::mem::take(&mut cursor.wanted);
        let is_near_miss = |fault: &&Diagnostic| !fault.fixes().is_empty();
        let stopped = faults.iter().find(|fault| !is_near_miss(fault));
        let (word, stopped) = (stopped.map(Diagnostic::word), stopped.map(Diagnostic::span));
        let reads =
            read.is_some() && stopped.is_none() || tokens.is_empty() && lexed.comment.is_some();
        if !reads {
            let at = stopped.unwrap_or_default();
            let at = Span::new(start + at.start, start + at.end);
            let space = context.space.as_deref().map(str::to_owned);
            let house = context.house.as_ref().map(|house| house.name.as_str().to_owned());
            let is_metric = context.units == Unit::Meters;
            return Attempt {
                reads: None,
                at,
                wanted,
                word,
                is_side,
                knows_first,
                space,
                house,
                is_metric,
                units: context.units,
                beside: context.beside.clone().unwrap_or_default(),
            };
        }
        if !right.is_empty() {
            right.push('\n');
        }
        right.push_str(&with_fixes(line, &faults));
        start += line.len() + 1;
    }
    Attempt {
        reads: Some(right),
        at: Span::new(start, start),
        wanted: Wanted::default(),
        word: None,
        is_side: false,
        knows_first: true,
        space: None,
        house: None,
        is_metric: false,
        units: Unit::default(),
        beside: Beside::default(),
    }
}

/// How the side of a line runs, if it reads.
pub(super) fn run_of(line: &str, units: Unit) -> Option<Run> {
    let (mut faults, mut tokens) = (Vec::new(), Vec::new());
    let lexed = lexer::lex(line, 0, &mut tokens, &mut faults);
    let mut cursor = cursor::Cursor::new(&tokens, line, units, &mut faults);
    let statement = cursor.statement().ok().filter(|_| !lexed.faulty)?;
    match statement {
        Statement::Side(run, _) if faults.is_empty() => Some(run),
        _ => None,
    }
}

/// The line with near misses corrected.
fn with_fixes(line: &str, faults: &[Diagnostic]) -> String {
    let mut line = line.to_owned();
    for fix in faults.iter().rev().flat_map(Diagnostic::fixes) {
        if line.get(fix.span.start..fix.span.end).is_some() {
            line.replace_range(fix.span.start..fix.span.end, &fix.text);
        }
    }
    line
}

/// The first two tokens of a line; empty where they are not words.
fn first_words(tokens: &[lexer::Placed<'_>]) -> [String; 2] {
    let word = |i: usize| match tokens.get(i).map(|placed| &placed.token) {
        Some(lexer::Token::Word(word)) => word.clone().into_owned(),
        _ => String::new(),
    };
    [word(0), word(1)]
}

/// The error of a line that cannot be read word by word: it is too long or has hidden characters.
fn unreadable(line: &str, offset: usize) -> Option<Diagnostic> {
    let is_plain = |byte: &u8| matches!(byte, b' '..=b'~' | b'\t');
    if line.len() <= MOST_CHARACTERS && line.as_bytes().iter().all(is_plain) {
        return None;
    }
    if line.len() > MOST_CHARACTERS && line.chars().count() > MOST_CHARACTERS {
        let span = Span::new(offset, offset + 1);
        let fault =
            Diagnostic::new(Word::LineTooLong, span, "this line has more than 2,000 characters");
        return Some(fault.help("put each statement on a line of its own"));
    }
    let (at, hidden) = line.char_indices().find(|&(_, c)| c != '\t' && is_hidden(c))?;
    let span = Span::new(offset + at, offset + at + hidden.len_utf8());
    let shown = hidden.escape_unicode();
    let message = format!("a character that cannot be seen: `{shown}`");
    let help = if hidden == '\r' {
        "save the file with ordinary line ends"
    } else {
        "take it out: delete from the letter before it to the letter after it, and type those again"
    };
    let fault = Diagnostic::new(Word::HiddenCharacter, span, message);
    // At the end of a line a hidden character hides no letter, so the visible line is offered.
    let seen = line[..at].trim();
    let ends = hidden != '\r' && line[at..].chars().all(|c| is_hidden(c) || c.is_whitespace());
    if ends && !seen.is_empty() {
        let rest = Span::new(offset + line[..at].trim_end().len(), offset + line.len());
        return Some(
            fault
                .help(format!("it stands at the end of the line; type the line again: `{seen}`"))
                .fix(rest, ""),
        );
    }
    Some(fault.help(help))
}

/// The part of the line that says how the side runs, before the words after it.
fn side_span(tokens: &[lexer::Placed<'_>], run: &Run) -> Span {
    let begins_words = |placed: &&lexer::Placed<'_>| match &placed.token {
        lexer::Token::Word(word) => SIDE_WORDS.contains(&word.as_ref()),
        _ => false,
    };
    let least = if *run == Run::Close { 1 } else { 2 };
    let words = tokens.iter().skip(least).find(begins_words).map(|placed| placed.span.start);
    let mut kept = tokens.iter().filter(|placed| words.is_none_or(|at| placed.span.start < at));
    let first = kept.next().map_or(Span::default(), |placed| placed.span);
    kept.next_back().map_or(first, |last| first.to(last.span))
}
