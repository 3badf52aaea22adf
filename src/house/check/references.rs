//! Outlines from a record, a plan or a map, and the names of what a figure says it counts.

use crate::diagnostic::words;
use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::geometry::outline::Outline;
use crate::geometry::traverse::{NotClosed, Traverse};
use crate::house::ReferenceOutline;
use crate::house::check::Checker;
use crate::sketch::OutlineSketch;
use crate::sketch::statement::Named;

impl Checker<'_> {
    /// Checks the reference outlines: which spaces they belong to, and whether they close.
    pub(super) fn reference_outlines(&mut self) {
        for outline in &self.sketch.outlines {
            if outline.walk.doubtful || outline.walk.sides.is_empty() {
                self.whole = false;
                continue;
            }
            let name = &outline.name.text;
            let Some((mut traverse, sides)) = self.build(name, false, outline.span, &outline.walk)
            else {
                continue;
            };
            // Printed lengths along the axes either close exactly or do not close; bearings never close exactly.
            if !traverse.has_bearings() {
                traverse.sides.iter_mut().for_each(|side| side.tolerance = 0);
            }
            let (traverse, closed) = match traverse.adjust() {
                Ok(closed) => (closed.traverse, Some(closed.outline)),
                Err((not_closed, traverse)) => {
                    self.report_open_outline(outline, &traverse, not_closed);
                    (traverse, None)
                }
            };
            let crossing = closed.as_ref().and_then(Outline::crossing);
            if let Some(crossing) = crossing {
                let (first, second) = (&sides[crossing.first], &sides[crossing.second]);
                let message = format!(
                    "the {}'s outline {}: {} and {} cross or touch",
                    outline.drawn.word(),
                    quoted(name),
                    first.quoted(),
                    second.quoted()
                );
                self.report(
                    Diagnostic::new(Word::OutlineCrosses, outline.span, message)
                        .also(first.span, "this side")
                        .also(second.span, "and this one")
                        .note("an outline that crosses itself has no area; it is shown as it is printed"),
                );
            }
            let of = self.spaces_of(outline);
            self.house.drawn.push(ReferenceOutline {
                drawn: outline.drawn,
                name: name.clone(),
                of,
                sides,
                traverse,
                outline: closed.filter(|_| crossing.is_none()),
            });
        }
    }

    fn report_open_outline(
        &mut self,
        outline: &OutlineSketch,
        traverse: &Traverse,
        not_closed: NotClosed,
    ) {
        let (whose, shown) = (outline.drawn.word(), quoted(&outline.name.text));
        let message = match not_closed {
            NotClosed::Misses(misses) | NotClosed::Turns { misses, .. } => format!(
                "the {whose}'s outline {shown} ends {} of where it began",
                misses.beyond(traverse).spoken_in(self.form())
            ),
            NotClosed::Backwards { .. } => {
                format!("the {whose}'s outline {shown}: nothing is left for its side by closing")
            }
        };
        self.report(
            Diagnostic::new(Word::OutlineDoesNotClose, outline.span, message)
                .note("an outline that does not close has no area; it is shown as it is printed"),
        );
    }

    /// The spaces an outline's name refers to: a space, or the counted spaces of a level.
    pub(super) fn spaces_of(&mut self, outline: &OutlineSketch) -> Vec<usize> {
        let name = outline.of.as_ref().unwrap_or(&outline.name);
        let spaces = &self.house.spaces;
        let named: Vec<usize> =
            (0..spaces.len()).filter(|&i| spaces[i].name == name.text).collect();
        if !named.is_empty() {
            self.report_meant_twice(name);
            return named;
        }
        let level = self.house.levels.iter().position(|level| level.name == name.text);
        let on_level: Vec<usize> = (0..spaces.len())
            .filter(|&i| Some(spaces[i].level) == level && spaces[i].counted)
            .collect();
        let known = level.is_some() || self.sketch.places_of(name).next().is_some();
        if outline.of.is_some() && !known && !self.sketch.names_doubtful {
            let shown = quoted(&name.text);
            let message = format!("no space or level is called {shown}");
            self.report(
                Diagnostic::new(Word::NoSuchSpace, name.span, message)
                    .help("after `of` comes the name of a space or a level of this file"),
            );
        }
        on_level
    }

    /// Reports a name that two spaces or levels of the file have and that a line refers to.
    fn report_meant_twice(&mut self, name: &Named) {
        let places: Vec<Span> = self.sketch.places_of(name).collect();
        if let [first, second, ..] = places[..] {
            let message = format!("{} could mean two things of this file", quoted(&name.text));
            self.report(
                Diagnostic::new(Word::NameTwice, name.span, message)
                    .also(first, "this one")
                    .also(second, "or this one")
                    .help("give each a name of its own"),
            );
        }
    }

    /// Checks names after `counting`: each must be a space of the house or a missing one, and be given once.
    pub(super) fn counting_names(&mut self) {
        let sketch = self.sketch;
        let spaces = sketch.levels.iter().flat_map(|level| &level.spaces);
        let mut known: Vec<&str> = spaces.map(|space| space.space.name.text.as_str()).collect();
        known.extend(sketch.missing.iter().map(|missing| missing.name.text.as_str()));
        for figure in &sketch.figures {
            let counting = &figure.figure.basis.counting;
            for (i, name) in counting.iter().enumerate() {
                if counting[..i].contains(name) {
                    let message = format!("{} is counted twice", quoted(&name.text));
                    self.report(
                        Diagnostic::new(Word::StatedTwice, name.span, message)
                            .help("take one of the two out"),
                    );
                } else if known.contains(&name.text.as_str()) {
                    self.report_meant_twice(name);
                } else if !sketch.names_doubtful {
                    self.report_unknown_counted(name, &known);
                }
            }
        }
    }

    fn report_unknown_counted(&mut self, name: &Named, known: &[&str]) {
        let message = format!("no space is called {}", quoted(&name.text));
        let mut fault = Diagnostic::new(Word::NoSuchSpace, name.span, message);
        // `Porch` for `Front porch`, if there is one porch.
        let word = name.text.to_lowercase();
        // `"Garage, Front porch"`: several names in one text.
        let parts: Vec<&str> = name.text.split(',').map(str::trim).collect();
        if parts.len() > 1 && parts.iter().all(|part| !part.is_empty()) {
            let each: Vec<String> = parts.iter().map(|part| format!("\"{part}\"")).collect();
            fault = fault.help(format!(
                "each name has its own two `\"`: type `counting {}`",
                each.join(", ")
            ));
        }
        let mut longer = known.iter().filter(|known| known.to_lowercase().contains(&word));
        let longer = longer.next().filter(|_| longer.next().is_none()).copied();
        if let Some(near) = words::nearest(&name.text, known).or(longer) {
            fault = fault.help(format!("did you mean `\"{near}\"`?"));
        }
        self.report(
            fault.help(
                "after `counting` come names of spaces of this file, or of what is `missing`",
            ),
        );
    }
}
