//! How many parts of each kind a file may have.

use crate::diagnostic::{Diagnostic, Span, Word, words};
use crate::house::check::glance::Glance;
use crate::sketch::named::Named;
use crate::sketch::{Side, Sketch};

/// The most levels a file may have.
pub const MOST_LEVELS: usize = 60;
/// The most spaces a file may have, including lots.
pub const MOST_SPACES: usize = 500;
/// The most outlines of a record, a plan or a map a file may have.
pub const MOST_OUTLINES: usize = 100;
/// The most published figures a file may have.
pub const MOST_FIGURES: usize = 50;
/// The most missing spaces a file may have.
pub const MOST_MISSING: usize = 100;

/// The most pictures that a file may name.
pub const MOST_PICTURES: usize = 40;

/// The reason for these limits, and what to do.
const ONE_HOUSE: &str = "one file holds one house; give each house a file of its own";

/// The error for the first kind of part that the file has too many of; nothing else is checked then.
pub(super) fn too_many(sketch: &Sketch, glance: &Glance) -> Option<Diagnostic> {
    let spaces = || sketch.levels.iter().flat_map(|level| &level.spaces).chain(&sketch.lots);
    let count = sketch.levels.iter().map(|level| level.spaces.len()).sum::<usize>();
    let count = count + sketch.lots.len();
    let pictures = || named_pictures(shown_sides(sketch));
    let levels = sketch.levels.get(MOST_LEVELS).map(|level| level.level.name.span);
    let outlines = sketch.outlines.get(MOST_OUTLINES).map(|outline| outline.span);
    let figures = sketch.figures.get(MOST_FIGURES).map(|figure| figure.span);
    let missing = sketch.missing.get(MOST_MISSING).map(|missing| missing.name.span);
    let is_within = count <= MOST_SPACES && glance.is_wordless;
    if is_within && [levels, outlines, figures, missing].iter().all(Option::is_none) {
        return None;
    }
    let report = |first_past: Option<Span>, count: usize, most: usize, noun: &str, help: &str| {
        let span = first_past?;
        let message = format!("the file has {}, and {most} is the most", words::count(count, noun));
        Some(Diagnostic::new(Word::TooMany, span, message).help(help))
    };
    None.or_else(|| report(levels, sketch.levels.len(), MOST_LEVELS, "level", ONE_HOUSE))
        .or_else(|| {
            let past = || spaces().nth(MOST_SPACES).map(|space| space.span);
            let past = (count > MOST_SPACES).then(past).flatten();
            report(past, count, MOST_SPACES, "space", ONE_HOUSE)
        })
        .or_else(|| {
            let noun = "recorded or planned outline";
            report(outlines, sketch.outlines.len(), MOST_OUTLINES, noun, ONE_HOUSE)
        })
        .or_else(|| {
            report(figures, sketch.figures.len(), MOST_FIGURES, "published figure", ONE_HOUSE)
        })
        .or_else(|| report(missing, sketch.missing.len(), MOST_MISSING, "missing space", ONE_HOUSE))
        .or_else(|| {
            if glance.is_wordless {
                return None;
            }
            let past = pictures().nth(MOST_PICTURES).map(|file| file.span);
            let help = "keep the pictures that show what the figures turn on";
            report(past, pictures().count(), MOST_PICTURES, "picture", help)
        })
}

/// The sides whose pictures are shown: those of spaces in file order, then those of lots.
pub(super) fn shown_sides(sketch: &Sketch) -> impl Iterator<Item = &Side> {
    let spaces = sketch.levels.iter().flat_map(|level| &level.spaces).chain(&sketch.lots);
    spaces.flat_map(|space| space.walk.sides.iter())
}

/// The picture files that these sides name.
pub(super) fn named_pictures<'a>(
    sides: impl Iterator<Item = &'a Side>,
) -> impl Iterator<Item = &'a Named> {
    sides.filter_map(|side| side.words.photo_file.as_ref())
}
