//! Warnings where the name of a level or space (a basement, a garage, a den) suggests something that its line does
//! not say.

use std::borrow::Cow;

use crate::diagnostic::{Diagnostic, Word, quoted};
use crate::house::check::Checker;
use crate::sketch::statement::Named;
use crate::sketch::{Kind, LevelSketch, SpaceSketch, names_a_garage};

/// Words for what is below the ground.
const UNDERGROUND: [&str; 3] = ["basement", "cellar", "crawlspace"];
/// Words for spaces that are not lived in, with their kinds.
const OTHER_KINDS: [(&str, Kind); 7] = [
    ("garage", Kind::Garage),
    ("carport", Kind::Carport),
    ("porch", Kind::Porch),
    ("patio", Kind::Patio),
    ("deck", Kind::Deck),
    ("balcony", Kind::Balcony),
    ("shed", Kind::Outbuilding),
];
/// Words that, next to those, mean that the space is lived in after all: a garage converted into a den.
const BUT_LIVED_IN: [&str; 16] = [
    "former",
    "formerly",
    "old",
    "ex",
    "now",
    "was",
    "converted",
    "conversion",
    "finished",
    "enclosed",
    "heated",
    "over",
    "above",
    "behind",
    "off",
    "sun",
];

/// What to do with a space that was typed twice.
pub(super) const TYPED_TWICE: &str = "if it is one space that was typed twice, take one of the two out, its line and its walls, and keep what its line says of the record on the other";

impl Checker<'_> {
    /// Asks about levels and spaces whose names suggest something that their lines do not say.
    pub(super) fn report_names(&mut self) {
        let sketch = self.sketch;
        for level in &sketch.levels {
            let name = &level.level.name;
            let lower = lower(&name.text);
            let below = parts(&lower).any(|part| is_one_of(part, &UNDERGROUND));
            let over = || parts(&lower).any(|part| is_one_of(part, &["over", "above"]));
            if below && !level.level.below_grade && !over() {
                let shown = quoted(&name.text);
                self.report(
                    Diagnostic::new(
                        Word::NamedBelowGrade,
                        name.span,
                        format!("{shown} counts as a level above grade"),
                    )
                    .help(format!(
                        "if it is in the ground, wholly or partly, it is `level \"{}\" below grade`",
                        name.text
                    )),
                );
            }
            for space in &level.spaces {
                self.report_other_kind(space);
            }
            self.report_garage_walls(level);
            self.report_face_in_a_name(&level.level.name);
            for space in level.spaces.iter().filter(|space| space.space.face.is_none()) {
                self.report_face_in_a_name(&space.space.name);
            }
        }
        if !self.top_down {
            self.report_outbuildings_above();
        }
    }

    /// Asks about a name that says how walls were measured, `"Upstairs, inside tape, 6in walls"`, where it counts for
    /// nothing.
    fn report_face_in_a_name(&mut self, name: &Named) {
        let text = lower(&name.text);
        let says = |words: &[&str]| parts(&text).any(|word| is_one_of(word, words));
        let measured = ["tape", "taped", "measured", "measurements", "dims", "dimensions"];
        if says(&["inside", "interior"]) && says(&measured) {
            self.report(
                Diagnostic::new(
                    Word::NamedOtherwise,
                    name.span,
                    format!("{} says how it was measured, and a name counts for nothing", quoted(&name.text)),
                )
                .help("write `measured to inside` after the name of each space that was measured so, as in `living \"Rooms\" measured to inside`; how thick the walls are is `wall` and the thickness, above the first level"),
            );
        }
    }

    /// Asks for the garage inside a walk of which walls are said to be its: without a line of its own its area counts as
    /// living area.
    fn report_garage_walls(&mut self, level: &LevelSketch) {
        let is_garage = |space: &SpaceSketch| space.space.kind == Kind::Garage;
        // A line that could not be read may be that of the garage.
        if !self.whole || self.sketch.levels.iter().any(|level| level.spaces.iter().any(is_garage))
        {
            return;
        }
        let noted = |space: &SpaceSketch| {
            let notes = space.walk.sides.iter().filter_map(|side| side.words.note.as_deref());
            space.walk.garage_comments + notes.filter(|note| names_a_garage(note)).count()
        };
        let is_one = |space: &&SpaceSketch| space.space.kind == Kind::Living && noted(space) > 1;
        for space in level.spaces.iter().filter(is_one) {
            let name = quoted(&space.space.name.text);
            self.report(
                Diagnostic::new(
                    Word::NamedOtherwise,
                    space.span,
                    format!("walls of {name} are noted as those of a garage, and the file has none: all inside the walk is counted as living area"),
                )
                .help(format!(
                    "if the walk goes round a garage, say so below its last wall, with its size and the corner in which it lies: `garage \"Garage\" 20' x 22' inside {}, in the southeast corner`; the answer to that gives the lines to type",
                    space.space.name.text
                )),
            );
        }
    }

    /// Reports the first level that is typed after one which, by their names, lies over it. What a level stands on is the
    /// level typed before it.
    pub(super) fn report_level_order(&mut self) {
        let above_grade = || self.sketch.levels.iter().filter(|level| !level.level.below_grade);
        let ranks = above_grade().map(|level| (level, storey(&level.level.name.text)));
        let ranked: Vec<_> = ranks.filter(|(level, _)| !level.level.beside).collect();
        let lower = ranked.windows(2).find_map(|two| match two {
            [(over, Some(high)), (under, Some(low))] if low < high => Some((*over, *under)),
            _ => None,
        });
        let Some((over, under)) = lower else { return };
        let (high, low) = (&over.level.name, &under.level.name);
        let warning = Diagnostic::new(
            Word::LevelsOutOfOrder,
            low.span,
            format!(
                "{} is typed after {}, so that it stands on it",
                quoted(&low.text),
                quoted(&high.text)
            ),
        );
        let warning = warning.also(high.span, "the level under it, as typed").help(format!(
            "levels are typed from the lowest up: move this line, and the lines of its spaces below it, up above the line of {}",
            quoted(&high.text)
        ));
        self.report(warning);
        self.top_down = true;
    }

    fn report_other_kind(&mut self, sketch: &SpaceSketch) {
        let space = &sketch.space;
        let is_deducted = matches!(space.kind, Kind::Open | Kind::Low);
        if !(space.kind == Kind::Living && space.counted != Some(false) || is_deducted) {
            return;
        }
        let name = lower(&space.name.text);
        let words = parts(&name);
        let last = words.clone().rfind(|word| word.chars().any(char::is_alphabetic));
        let kind = last
            .and_then(|last| OTHER_KINDS.iter().find(|(word, _)| word.eq_ignore_ascii_case(last)));
        let Some((_, kind)) =
            kind.filter(|_| !words.clone().any(|word| is_one_of(word, &BUT_LIVED_IN)))
        else {
            return;
        };
        let shown = quoted(&space.name.text);
        if is_deducted {
            self.report(
                Diagnostic::new(
                    Word::NamedOtherwise,
                    sketch.span,
                    format!("{shown} is deducted from the floor in which it lies"),
                )
                .help(format!(
                    "is it `{} \"{}\"`, which stands outside and takes nothing off the floor? `{}` is a part of the floor itself",
                    kind.word(),
                    space.name.text,
                    space.kind.word()
                )),
            );
            return;
        }
        self.report(
            Diagnostic::new(
                Word::NamedOtherwise,
                sketch.span,
                format!("{shown} is counted as living area"),
            )
            .help(format!(
                "is it `{} \"{}\"`? If it is living area, a name that says so spares the question",
                kind.word(),
                space.name.text
            )),
        );
    }

    /// Asks about what stands on the ground and is typed on another level: usually it was typed at the end of the file and
    /// belongs elsewhere.
    fn report_outbuildings_above(&mut self) {
        let sketch = self.sketch;
        // A level that has nothing of the house is not the one that the house stands on.
        let is_lived_in = |level: &&LevelSketch| {
            level
                .spaces
                .iter()
                .any(|space| matches!(space.space.kind, Kind::Living | Kind::Unfinished))
        };
        let is_above_grade = |level: &&LevelSketch| !level.level.below_grade;
        let levels = || sketch.levels.iter().filter(is_above_grade);
        let Some(ground) = levels().find(is_lived_in).or_else(|| levels().next()) else { return };
        // A level whose name could not be read may be any, and a line that could not be read may be the house.
        if sketch.levels.iter().any(|level| level.level.name.text.is_empty() || level.doubtful) {
            return;
        }
        let others = sketch.levels.iter();
        let others = others.filter(|level| !std::ptr::eq(*level, ground) && !level.level.beside);
        for level in others {
            let below = level.level.below_grade;
            // The first levels of a file may have nothing of the house.
            let is_before = level.level.name.span.start < ground.level.name.span.start;
            let stands_on_the_ground = |space: &&SpaceSketch| {
                let space = &space.space;
                match space.kind {
                    Kind::Outbuilding => true,
                    Kind::Garage | Kind::Carport | Kind::Patio if !below => space.within.is_none(),
                    Kind::Garage | Kind::Carport => space.detached,
                    _ => false,
                }
            };
            for space in level.spaces.iter().filter(stands_on_the_ground) {
                let (name, on) = (quoted(&space.space.name.text), quoted(&level.level.name.text));
                let what = space.space.kind.word();
                let depth = match (below, is_before) {
                    (true, _) => "a level below grade",
                    (false, true) => "a level with nothing of the house",
                    (false, false) => "an upper level",
                };
                let way = if is_before { "down" } else { "up" };
                let stands = match (space.space.kind, below) {
                    (Kind::Outbuilding, _) | (_, true) => "",
                    _ => "unless it does stand there, ",
                };
                let is_placed = space.space.detached
                    || space.space.place != crate::sketch::statement::Place::Origin;
                let apart = match (space.space.kind, is_placed) {
                    (Kind::Outbuilding, false) => {
                        ", with `detached` after its name if where it stands was not measured"
                    }
                    _ => "",
                };
                let emptied = match level.spaces.len() {
                    1 => format!(", and take the line of the level {on} out"),
                    _ => String::new(),
                };
                self.report(
                    Diagnostic::new(
                        Word::OutbuildingAbove,
                        space.span,
                        format!("the {what} {name} is typed under {on}, {depth}"),
                    )
                    .help(format!(
                        "{stands}move its lines {way}, under the last space of {}{apart}{emptied}",
                        quoted(&ground.level.name.text)
                    )),
                );
            }
        }
    }
}

/// A name whose letters beyond ASCII are in lower case; most names have none and are not copied.
fn lower(name: &str) -> Cow<'_, str> {
    if name.is_ascii() { Cow::Borrowed(name) } else { Cow::Owned(name.to_lowercase()) }
}

/// Whether a word of such a name is among these.
fn is_one_of(word: &str, these: &[&str]) -> bool {
    these.iter().any(|one| one.eq_ignore_ascii_case(word))
}

/// The words of a name.
fn parts(name: &str) -> impl DoubleEndedIterator<Item = &str> + Clone {
    name.split(|c: char| !c.is_alphanumeric()).filter(|part| !part.is_empty())
}

/// How high the name of a level puts it: the ground floor, a first floor, those above. `None` if it does not say.
fn storey(name: &str) -> Option<u8> {
    let name = lower(name);
    let is = |words: &[&str]| parts(&name).any(|word| is_one_of(word, words));
    let named = [
        (0, &["lower", "downstairs"][..]),
        (1, &["ground", "main"]),
        (2, &["first", "1st"]),
        (3, &["second", "2nd", "upper", "upstairs"]),
        (4, &["third", "3rd"]),
        (5, &["attic", "loft", "top"]),
    ];
    let mut ranks = named.iter().filter(|(_, words)| is(words)).map(|(rank, _)| *rank);
    // Of `Upper floor over the garage, second bedroom` nothing is certain.
    let rank = ranks.next()?;
    (ranks.next().is_none() && !is(&["over", "above", "under", "part", "half"])).then_some(rank)
}
