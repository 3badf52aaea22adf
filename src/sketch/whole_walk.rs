//! Walls of a walk that are called by the sides on which they stand, `north wall 40'`, `east wall 30'`: one question for
//! the whole walk. Answered wall by wall, some would run as they were walked and others as they stand.

use std::collections::HashMap;

use crate::diagnostic::{Diagnostic, Fix, Source, Span};
use crate::geometry::compass::{Axis, Direction};
use crate::sketch::mend;
use crate::sketch::reader::{Said, run_of};
use crate::sketch::statement::Run;
use crate::units::length::Length;

/// How far from its start a walk may end that still comes back to it.
const NEAR: i64 = 3 * Length::INCH.nm();

/// A line with more bytes is no wall.
const LONGEST: usize = 400;

/// A walk with more walls is not written out in an answer.
const MOST_WALLS: usize = 60;

/// A line of a walk that begins with a way.
#[derive(Clone)]
struct Wall {
    /// The line from its first word to its last, without its comment.
    span: Span,
    /// The way that the line says.
    way: Direction,
    by: Called,
    /// What follows the way, as it reads.
    rest: String,
    /// Its length in nanometers; `None` if it follows from the others.
    length: Option<i64>,
    is_faulty: bool,
    /// Whether another line of the walk, which begins with no way, stands between it and the wall before it.
    is_apart: bool,
}

/// How a line calls its wall.
#[derive(Clone, Copy, PartialEq)]
enum Called {
    /// `north 40'`
    Compass,
    /// `back 40'`
    Street,
    /// `north wall 40'`, `back side 40'`: with a word for where it stands.
    Side,
    /// `west wall north 32'`: with the way that was walked.
    Walked,
    /// `jog in 4'`, `porch side 21'`: with the way that it turns from the wall before it, or with none.
    Jog(Turn),
}

/// Which way a jog turns.
#[derive(Clone, Copy, PartialEq)]
enum Turn {
    In,
    Out,
    Open,
}

/// Which walls of a walk are called by the sides on which they stand.
#[derive(Clone, Copy, PartialEq)]
enum Taken {
    All,
    /// Those that say so, and those that are called as seen from the street.
    Street,
    /// Those that say so.
    Said,
    None,
}

impl Taken {
    fn stands(self, wall: &Wall) -> bool {
        match self {
            Taken::All => matches!(wall.by, Called::Compass | Called::Street | Called::Side),
            Taken::Street => matches!(wall.by, Called::Street | Called::Side),
            Taken::Said => wall.by == Called::Side,
            Taken::None => false,
        }
    }
}

/// Asks once for each walk whether the words before its walls are the sides on which they stand.
pub(super) fn ask(source: &Source, said: Said, faults: &mut Vec<Diagnostic>) {
    let mut by_line: HashMap<usize, Vec<usize>> = HashMap::new();
    for (at, fault) in faults.iter().enumerate() {
        by_line.entry(source.line(fault.span().start)).or_default().push(at);
    }
    let mut walls: Vec<Wall> = Vec::new();
    let mut waiting = Waiting::default();
    let (mut questions, mut offset, mut is_apart) = (Vec::new(), 0, false);
    for (number, line) in (1..).zip(source.text().split_inclusive('\n')) {
        let at = by_line.get(&number).map_or(&[][..], Vec::as_slice);
        let of_line: Vec<&Diagnostic> = at.iter().filter_map(|at| faults.get(*at)).collect();
        let line_read = if line.len() > LONGEST { "" } else { line };
        let typed = mend::without_comment(line_read).trim();
        if begins_another(typed, &of_line) {
            questions.extend(question(source, &std::mem::take(&mut walls)));
            waiting.ends();
            is_apart = false;
        } else if let Some(mut wall) = wall(line_read, offset, &of_line, said) {
            wall.is_apart = std::mem::take(&mut is_apart);
            walls.push(wall);
        } else if !typed.is_empty() {
            is_apart = true;
        }
        if said.front.is_none() && said.front_told && !begins_another(typed, &of_line) {
            waiting.takes_in(typed, number, !of_line.is_empty());
        }
        offset += line.len();
    }
    questions.extend(question(source, &walls));
    waiting.ends();
    // In a walk that waits for the street side, the other walls that are called by their sides wait as well.
    if said.front.is_none() && said.front_told {
        questions.clear();
        faults.retain(|fault| !waiting.lines.contains(&source.line(fault.span().start)));
    }
    for question in questions {
        let is_answered = |fault: &Diagnostic| {
            question.walls.iter().any(|wall| (wall.start..wall.end).contains(&fault.span().start))
        };
        let Some(first) = faults.iter().position(is_answered) else { continue };
        // Which way a bay between them runs follows from the walls beside it, once they are settled.
        let ends = question.walls.first().zip(question.walls.last());
        let between = ends.map_or(0..0, |(first, last)| first.start..last.end);
        let is_bay = |fault: &Diagnostic| {
            let line = source.text().get(..fault.span().start).unwrap_or_default();
            let begins = line.rfind('\n').map_or(0, |end| end + 1);
            let typed = source.text().get(begins..).unwrap_or_default().trim_start();
            let word = typed.split(|c: char| !c.is_alphabetic()).next().unwrap_or_default();
            word.eq_ignore_ascii_case("bay")
                || fault.fixes().first().is_some_and(|fix| fix.text.starts_with("bay "))
        };
        let asked = faults[first].clone();
        let mut answered = 0;
        faults.retain(|fault| {
            answered += usize::from(is_answered(fault));
            let waits = is_bay(fault) && between.contains(&fault.span().start);
            if is_answered(fault) { answered == 1 } else { !waits }
        });
        if let Some(at) = faults.iter().position(is_answered) {
            faults[at] = asked.instead(Some(question.cause), question.helps, question.fixes);
        }
    }
}

/// The lines of walks in which some walls are called as seen from the street, while it is not known where that is.
#[derive(Default)]
struct Waiting {
    lines: Vec<usize>,
    /// Those of the walk that is read.
    here: Vec<usize>,
    by_street: bool,
}

impl Waiting {
    fn takes_in(&mut self, typed: &str, number: usize, is_faulty: bool) {
        let first = typed.split(' ').next().unwrap_or_default();
        let Some(word) = mend::whole_way(first) else { return };
        let by_street = compass(word).is_none();
        self.by_street |= by_street;
        // The line that asks for the street side stays.
        if is_faulty && !by_street && mend::stands::is_said(typed) {
            self.here.push(number);
        }
    }

    fn ends(&mut self) {
        let here = std::mem::take(&mut self.here);
        if std::mem::take(&mut self.by_street) {
            self.lines.extend(here);
        }
    }
}

/// Whether a line begins a space, a level or an outline, or is answered with one.
fn begins_another(typed: &str, faults: &[&Diagnostic]) -> bool {
    let begins = |line: &str| {
        let first = line.split_whitespace().next().unwrap_or_default().to_lowercase();
        ["level", "lot", "map"].contains(&first.as_str()) || mend::is_kind(&first)
    };
    let offered = faults.iter().flat_map(|fault| fault.fixes()).next();
    // `garage front 22'` between walls is answered with a wall.
    let is_wall = matches!(faults, [fault] if told_as_wall(fault).is_some())
        || offered.is_some_and(|fix| mend::begins_as_wall(&fix.text));
    begins(typed) && !is_wall || offered.is_some_and(|fix| begins(&fix.text))
}

/// What follows the way in a wall that the only help tells to write.
fn told_as_wall(fault: &Diagnostic) -> Option<String> {
    let [help] = fault.helps() else { return None };
    let told = help.strip_prefix("write `")?.split('`').next()?;
    let (way, rest) = told.split_once(' ')?;
    (mend::is_way(way) && fault.fixes().is_empty()).then(|| rest.to_owned())
}

/// The length of a jog that is answered with the ways that it may run, and how it turns.
fn jog(typed: &str, fault: &Diagnostic, line: Span) -> Option<(Turn, String)> {
    const JOGS: [&str; 10] =
        ["jog", "jogs", "step", "steps", "offset", "notch", "return", "in", "out", "setback"];
    let words: Vec<String> = typed
        .split(|c: char| !c.is_alphanumeric())
        .take_while(|word| !word.starts_with(|c: char| c.is_ascii_digit()))
        .map(str::to_lowercase)
        .collect();
    let says = |word: &str| words.iter().any(|one| one == word);
    if !words.first().is_some_and(|word| JOGS.contains(&word.as_str())) {
        return None;
    }
    let told = |help: &String| {
        let (before, length) = help.strip_suffix('`')?.rsplit_once(" and then `")?;
        before.starts_with("write `north`").then(|| length.to_owned())
    };
    let rest = match fault.fixes() {
        [_, _] => offered(fault, line)?,
        [] => fault.helps().iter().find_map(told)?,
        _ => return None,
    };
    let turn = match (says("in") || says("inward"), says("out") || says("outward")) {
        (true, false) => Turn::In,
        (false, true) => Turn::Out,
        _ => Turn::Open,
    };
    Some((turn, rest))
}

/// The wall of a line, if it begins with a way and reads, or would with one of its answers, which differ in the way alone.
fn wall(line: &str, offset: usize, faults: &[&Diagnostic], said: Said) -> Option<Wall> {
    let begins = line.len() - line.trim_start().len();
    let typed = mend::without_comment(line).trim();
    let span = Span::new(offset + begins, offset + begins + typed.len());
    let is_faulty = !faults.is_empty();
    let made = |way: Direction, by: Called, rest: String| {
        let length = match run_of(&format!("north {rest}"), said.units)? {
            Run::Straight(_, length) => Some(length.length().nm()),
            Run::ByClosing(_) => None,
            _ => return None,
        };
        Some(Wall { span, way, by, rest, length, is_faulty, is_apart: false })
    };
    let (first, rest) = typed.split_once(' ')?;
    if let [fault] = faults
        && let Some((turn, rest)) = jog(typed, fault, span)
    {
        // Its way follows from the wall before it.
        return made(Direction::North, Called::Jog(turn), rest);
    }
    if let [fault] = faults
        && way(first, said).is_none()
        && let Some(rest) = told_as_wall(fault)
    {
        let mut sides = typed.split(' ').filter_map(|word| way(word, said));
        return match (sides.next(), sides.next()) {
            (Some(side), None) => made(side, Called::Side, rest),
            // `porch side 21'`: as a jog it turns from the wall before it.
            (None, _) => made(Direction::North, Called::Jog(Turn::Open), rest),
            _ => None,
        };
    }
    let Some(way) = way(first, said).filter(|_| mend::stands::walked(typed).is_none()) else {
        // `west wall north 32' 7"`, `jog north 4'`: the way stands further on in the line.
        let [fault] = faults else { return None };
        let walked = mend::stands::walked(typed).and_then(|way| self::way(way, said));
        let offered =
            fault.fixes().first().and_then(|fix| self::way(fix.text.split(' ').next()?, said));
        let way = walked.or(offered)?;
        let offered = offered.filter(|offered| *offered == way);
        let rest = offered.and_then(|_| self::offered(fault, span));
        return made(way, Called::Walked, rest.or_else(|| mend::stands::rest(typed))?);
    };
    let is_compass = mend::whole_way(first).is_some_and(|word| compass(word).is_some());
    let by = match (mend::stands::is_said(typed), is_compass) {
        (true, _) => Called::Side,
        (false, true) => Called::Compass,
        (false, false) => Called::Street,
    };
    let rest = match faults {
        [] => rest.trim().to_owned(),
        [fault] => offered(fault, span).or_else(|| mend::stands::rest(typed))?,
        _ => return None,
    };
    made(way, by, rest)
}

/// The way of a word, as the street lies.
fn way(word: &str, said: Said) -> Option<Direction> {
    let word = mend::whole_way(word)?;
    let seen = || {
        let back = said.front?.opposite();
        Some(match word {
            "back" => back,
            "front" => back.opposite(),
            "right" => back.right(),
            _ => back.left(),
        })
    };
    compass(word).or_else(seen)
}

/// The way of a compass word.
fn compass(word: &str) -> Option<Direction> {
    let all = [Direction::North, Direction::East, Direction::South, Direction::West];
    all.into_iter().find(|way| way.word() == word)
}

/// What follows the way in the answers to a line, if they differ in the way alone.
fn offered(fault: &Diagnostic, line: Span) -> Option<String> {
    let mut rests = fault.fixes().iter().map(|fix| {
        let (first, rest) = fix.text.split_once(' ')?;
        (mend::is_way(first) && fix.span == line).then_some(rest)
    });
    let first = rests.next()??;
    rests.all(|other| other == Some(first)).then(|| first.to_owned())
}

/// What is asked about the walls of a walk.
struct Question {
    walls: Vec<Span>,
    cause: String,
    helps: Vec<String>,
    fixes: Vec<Fix>,
}

/// The most ways of the jogs of a walk that are tried.
const MOST_TRIED: usize = 16;

/// What to ask about the walls of a walk; `None` if no wall says where it stands, or the walls show nothing.
fn question(source: &Source, walls: &[Wall]) -> Option<Question> {
    if !walls.iter().any(is_jog) {
        return asked(source, walls);
    }
    // Where the walk does not show which way a jog turns, that is asked for itself.
    asked(source, walls).or_else(|| asked(source, &without_jogs(walls)))
}

fn is_jog(wall: &Wall) -> bool {
    matches!(wall.by, Called::Jog(_))
}

/// The walls without the jogs, as other lines between them.
fn without_jogs(walls: &[Wall]) -> Vec<Wall> {
    let (mut left, mut is_apart) = (Vec::new(), false);
    for wall in walls {
        is_apart |= wall.is_apart || is_jog(wall);
        if !is_jog(wall) {
            left.push(Wall { is_apart: std::mem::take(&mut is_apart), ..wall.clone() });
        }
    }
    left
}

/// The ways in which the walls of a walk run if some are called by their sides: one list, or more where a jog may turn
/// either way.
fn ways_of(walls: &[Wall], reading: Taken, clockwise: bool) -> Vec<Vec<Direction>> {
    let mut tried: Vec<Vec<Direction>> = vec![Vec::new()];
    for wall in walls {
        let (right, left) = (Direction::right, Direction::left);
        let turned = |before: &[Direction]| -> Vec<Direction> {
            let inward = |way: Direction| if clockwise { right(way) } else { left(way) };
            let Some(&last) = before.last() else { return Vec::new() };
            match wall.by {
                Called::Jog(Turn::In) => vec![inward(last)],
                Called::Jog(Turn::Out) => vec![inward(last).opposite()],
                _ => vec![right(last), left(last)],
            }
        };
        let next = |before: &Vec<Direction>| -> Vec<Vec<Direction>> {
            let ways = match (is_jog(wall), reading.stands(wall), clockwise) {
                (true, ..) => turned(before),
                (false, true, true) => vec![right(wall.way)],
                (false, true, false) => vec![left(wall.way)],
                (false, false, _) => vec![wall.way],
            };
            ways.into_iter().map(|way| [&before[..], &[way]].concat()).collect()
        };
        tried = tried.iter().flat_map(next).collect();
        if tried.len() > MOST_TRIED {
            return Vec::new();
        }
    }
    tried
}

fn asked(source: &Source, walls: &[Wall]) -> Option<Question> {
    let is_asked = |wall: &&Wall| wall.by == Called::Side && wall.is_faulty;
    let has_jog = walls.iter().any(is_jog);
    let asked = walls.iter().filter(is_asked).count();
    let by_street = walls.iter().find(|wall| wall.by == Called::Street);
    if asked == 0 && !(has_jog && by_street.is_some()) || !(3..=MOST_WALLS).contains(&walls.len()) {
        return None;
    }
    let mut found: Vec<(Vec<Direction>, Option<bool>, Taken)> = Vec::new();
    let mut is_open = false;
    for reading in [Taken::All, Taken::Street, Taken::Said, Taken::None] {
        for clockwise in [true, false] {
            let before = found.len();
            for ways in ways_of(walls, reading, clockwise) {
                let turns = turns(walls, &ways);
                let is_round = turns.is_some_and(|turns| {
                    let is_told = reading == Taken::None && !has_jog;
                    turns != 0 && (is_told || (turns > 0) == clockwise)
                });
                let is_new = found.iter().all(|(others, ..)| *others != ways);
                let closes = closes(walls, &ways);
                if is_round && is_new && (!has_jog || closes == Some(true)) {
                    found.push((ways, closes, reading));
                }
            }
            is_open |= has_jog && found.len() > before + 1;
        }
    }
    if is_open {
        return None;
    }
    let closing = found.iter().any(|(_, closes, _)| *closes == Some(true));
    found.retain(|(_, closes, _)| if closing { *closes == Some(true) } else { closes.is_none() });
    let is_settled = closing && found.len() == 1;
    // One wall that is called by its side among others that were walked has its own answer.
    let is_alone = found.iter().all(|(ways, ..)| {
        walls.iter().zip(ways).all(|(wall, way)| wall.by == Called::Side || wall.way == *way)
    });
    if found.is_empty() || asked == 1 && !has_jog && (!is_settled || is_alone) {
        return None;
    }
    let example = walls.iter().find(is_asked).or(by_street)?;
    let called = source.text().get(example.span.start..example.span.end)?;
    let (first, last) = (walls.first()?.span, walls.last()?.span);
    let span = first.to(last);
    let lines = (source.line(first.start), source.line(last.start));
    let fixes: Vec<Fix> = found
        .iter()
        .filter_map(|(ways, ..)| Some(Fix::new(span, rewritten(source, walls, ways, span)?)))
        .collect();
    let one = |(ways, _, reading): &(Vec<Direction>, Option<bool>, Taken)| {
        let written: Vec<String> = walls
            .iter()
            .zip(ways)
            .map(|(wall, way)| format!("`{} {}`", way.word(), wall.rest))
            .collect();
        let lead = match reading {
            Taken::All => "if these are the sides on which the walls stand",
            Taken::Street | Taken::Said => {
                "if only the words that name a side say where a wall stands"
            }
            Taken::None => "if you walked these ways",
        };
        (lead, written.join(", "))
    };
    // A line between them that is no wall, or a bay, has its own answer.
    let between = match walls.iter().skip(1).any(|wall| wall.is_apart) {
        true => ", and leave the other lines between them as they are,",
        false => "",
    };
    let of_lines = format!("the walls of lines {} to {}{between}", lines.0, lines.1);
    let (cause, helps) = match &found[..] {
        [only] => (
            format!(
                "a wall begins with the way that you walked along it; `{called}` says on which side the wall stands, and the walls around it show which way it was walked"
            ),
            vec![format!("write {of_lines} as {}", one(only).1)],
        ),
        several => (
            format!(
                "a wall begins with the way that you walked along it: in `{called}` the word may be that, or the side on which the wall stands, and what it is goes for the whole walk"
            ),
            several
                .iter()
                .map(|found| {
                    let (lead, written) = one(found);
                    format!("{lead}, write {of_lines} as {written}")
                })
                .collect(),
        ),
    };
    Some(Question { walls: walls.iter().map(|wall| wall.span).collect(), cause, helps, fixes })
}

/// How many more turns to the right than to the left a walk makes; `None` if it goes on or back where it should turn.
fn turns(walls: &[Wall], ways: &[Direction]) -> Option<i32> {
    let mut turns = 0;
    for at in 1..ways.len() {
        if walls[at].is_apart {
            continue;
        }
        turns += match ways[at] {
            way if way == ways[at - 1].right() => 1,
            way if way == ways[at - 1].left() => -1,
            _ => return None,
        };
    }
    Some(turns)
}

/// Whether a walk comes back to its start; `None` if walls of it are not known.
fn closes(walls: &[Wall], ways: &[Direction]) -> Option<bool> {
    let mut sums = [0_i64; 2];
    let mut open: [Vec<Direction>; 2] = Default::default();
    for (wall, way) in walls.iter().zip(ways) {
        let axis = usize::from(way.axis() == Axis::East);
        match wall.length {
            Some(length) => sums[axis] += way.sign() * length,
            None => open[axis].push(*way),
        }
        if wall.is_apart {
            return None;
        }
    }
    let is_left = |axis: usize| match open[axis][..] {
        [] => sums[axis].abs() <= NEAR,
        [way] => -sums[axis] * way.sign() > NEAR,
        _ => false,
    };
    Some(is_left(0) && is_left(1))
}

/// The lines of a walk with these ways.
fn rewritten(source: &Source, walls: &[Wall], ways: &[Direction], span: Span) -> Option<String> {
    let mut lines = String::new();
    let mut done = span.start;
    for (wall, way) in walls.iter().zip(ways) {
        lines.push_str(source.text().get(done..wall.span.start)?);
        lines.push_str(&format!("{} {}", way.word(), wall.rest));
        done = wall.span.end;
    }
    Some(lines)
}
