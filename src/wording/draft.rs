//! The wording of a draft: how far a traverse ends from its start, and which sides to measure again. It states no
//! area.

use crate::diagnostic::words;
use crate::house::Side;
use crate::house::check::draft::{Draft, DraftWalk, Unread};
use crate::units::length::{Form, Length, WrittenLength};

impl Draft {
    /// Whether most lengths are metric.
    pub(crate) fn is_metric(&self) -> bool {
        matches!(self.form, Form::Meters | Form::Centimeters | Form::Millimeters)
    }

    /// A length in the notation of most sides.
    pub(crate) fn length(&self, length: Length) -> String {
        WrittenLength::new(length, self.form).spoken()
    }

    /// A sentence for each traverse that does not close, or one sentence if all close.
    pub(crate) fn statements(&self) -> Vec<String> {
        let open = self.walks.iter().filter(|walk| !walk.is_closed());
        let sentence = |walk: &DraftWalk| {
            let (walked, began) = match self.level {
                Some(_) => ("the walk ends", "it began"),
                None => ("the calls end", "they began"),
            };
            let ends = walk.misses.spoken_in(self.form);
            format!("{}: {walked} {ends} of where {began}.", walk.name)
        };
        let unknown = |walk: &&DraftWalk| walk.closing_twice.is_some();
        let two =
            |walk: &DraftWalk| format!("{}: two walls by closing share one direction.", walk.name);
        let mut sentences: Vec<String> = open.map(sentence).collect();
        sentences.extend(self.walks.iter().filter(unknown).map(two));
        let is_whole = self.unread.is_empty() && self.open_elsewhere == 0;
        match (sentences.is_empty(), is_whole) {
            (false, _) => sentences,
            (true, true) => vec!["Every walk comes back to where it began.".to_owned()],
            (true, false) => vec!["Every walk drawn here comes back to where it began.".to_owned()],
        }
    }

    /// What a draft is and is not.
    pub(crate) fn caution(&self) -> &'static str {
        match self.walks.iter().all(DraftWalk::is_closed) {
            true => {
                "A draft: the walk as it was typed, to scale, with no area. Once the sides file has no error, its pages can be made."
            }
            false => {
                "A draft: the walk as it was typed, to scale. A walk that does not come back to where it began has no area."
            }
        }
    }

    /// What to check again, one line per item.
    pub(crate) fn advice(&self) -> Vec<String> {
        let mut advice = Vec::new();
        advice.extend(self.walks.iter().filter_map(closing_twice));
        for walk in self.walks.iter().filter(|walk| !walk.is_closed()) {
            advice.extend(missing(walk));
            advice.extend(again(walk, self.level.is_none()));
        }
        advice.extend(unread_sides(&self.unread));
        advice.extend(unread_lines(&self.unread));
        match self.open_elsewhere {
            0 => {}
            1 => advice.push("Another page has a walk that does not come back.".to_owned()),
            more => advice.push(format!("{more} other pages have walks that do not come back.")),
        }
        advice
    }
}

/// A sentence about two sides by closing that run in the same direction.
fn closing_twice(walk: &DraftWalk) -> Option<String> {
    let (first, second) = walk.closing_twice?;
    let (first, second) = (named(&walk.sides[first]), named(&walk.sides[second]));
    Some(format!(
        "{}: {first} and {second} share one direction, so the walls do not say how long each is: {first} is drawn with the length of both, {second} with none. Measure or estimate one.",
        walk.name
    ))
}

/// A sentence about the place where a wall seems to be missing.
fn missing(walk: &DraftWalk) -> Option<String> {
    let (first, second) = walk.missing_between?;
    let name = |side: usize| named(&walk.sides[side]);
    Some(format!(
        "{}: between {} and {} the walk does not turn. Is a wall missing there?",
        walk.name,
        name(first),
        name(second)
    ))
}

/// A sentence about the sides to measure again, common errors first.
fn again(walk: &DraftWalk, is_lot: bool) -> Option<String> {
    const MOST: usize = 8;
    if walk.suspects.is_empty() {
        return None;
    }
    let mut names: Vec<String> = walk
        .suspects
        .iter()
        .take(MOST)
        .map(|suspect| {
            let side = named(&walk.sides[suspect.side]);
            match &suspect.slip {
                Some(slip) => format!("{side}, perhaps {}", slip.words()),
                None => side,
            }
        })
        .collect();
    let more = walk.suspects.len() - names.len();
    if more > 0 {
        names.push(words::count(more, "more side"));
    }
    let how = if is_lot { "Compare with the deed" } else { "Measure again" };
    Some(format!("{how}: {}.", names.join("; ")))
}

/// A sentence for each walk with sides that could not be read, and one for each with sides that only lack a length.
fn unread_sides(unread: &[Unread]) -> Vec<String> {
    let mut walks: Vec<(&str, bool, Vec<usize>)> = Vec::new();
    for one in unread {
        let Unread::Side { walk, number, is_blank } = one else { continue };
        match walks.iter_mut().find(|(name, blank, _)| name == walk && blank == is_blank) {
            Some((.., numbers)) => numbers.push(*number),
            None => walks.push((walk, *is_blank, vec![*number])),
        }
    }
    let sentence = |(walk, is_blank, numbers): (&str, bool, Vec<usize>)| {
        let is_one = numbers.len() == 1;
        let what = match (is_blank, is_one) {
            (true, true) => "has no length",
            (true, false) => "have no length",
            (false, _) => "cannot be read",
        };
        let drawn = if is_one { "is not drawn" } else { "are not drawn" };
        let noun = if is_one { "side" } else { "sides" };
        format!("{walk}: {noun} {} {what} and {drawn}.", listed(&numbers))
    };
    walks.into_iter().map(sentence).collect()
}

/// A sentence about the other lines that could not be read.
fn unread_lines(unread: &[Unread]) -> Option<String> {
    let lines = unread.iter().filter_map(|one| match one {
        Unread::Line(line) => Some(*line),
        Unread::Side { .. } => None,
    });
    let lines: Vec<usize> = lines.collect();
    let numbers = listed(&lines);
    match lines.len() {
        0 => None,
        1 => Some(format!(
            "Line {numbers} of the sides file cannot be read, so what it says is not drawn."
        )),
        _ => Some(format!(
            "Lines {numbers} of the sides file cannot be read, so what they say is not drawn."
        )),
    }
}

/// The first dozen of the numbers as a phrase: `2, 4 and 7`.
fn listed(all: &[usize]) -> String {
    const MOST: usize = 12;
    let mut numbers: Vec<String> = all.iter().take(MOST).map(usize::to_string).collect();
    if all.len() > MOST {
        numbers.push(format!("{} more", all.len() - MOST));
    }
    words::all_of(&numbers)
}

/// A side with its length: `side 3 (east 30')`.
fn named(side: &Side) -> String {
    format!("side {} ({})", side.number(), side.typed())
}
