//! Somebody else's outlines, and the names a figure says it counts.

use crate::diagnostic::{Diagnostic, Word, quoted};
use crate::house::check::Checker;
use crate::house::walk::NotClosed;
use crate::house::{DrawnOutline, Outline};
use crate::length::Length;
use crate::sketch::{Axis, Direction};
use crate::words;

impl Checker<'_> {
    /// Somebody else's outlines: which spaces they are of, whether they close.
    pub(super) fn drawn_outlines(&mut self) {
        for outline in &self.sketch.outlines {
            if outline.walk.doubtful || outline.walk.sides.len() < 2 {
                self.whole = false;
                continue;
            }
            let Some((mut walk, sides)) =
                self.build(&outline.name.text, outline.span, &outline.walk)
            else {
                continue;
            };
            for side in &mut walk.sides {
                side.tolerance = 0;
            }
            let misses = walk.misclosure();
            let closed = walk.clone().close_as_measured();
            let shown = quoted(&outline.name.text);
            let outline_closed = closed.as_ref().ok().map(|closed| closed.outline.clone());
            if let Some(crossing) = outline_closed.as_ref().and_then(Outline::crossing) {
                self.tell_crossing(&outline.name.text, outline.span, &sides, crossing);
                continue;
            }
            if let Err(NotClosed::Backwards { side, by }) = closed {
                self.tell_backwards(&outline.name.text, &sides[side], by);
                continue;
            }
            if outline_closed.is_none() {
                let ways: Vec<String> = Axis::BOTH
                    .into_iter()
                    .filter(|&axis| misses.on(axis) != 0)
                    .map(|axis| {
                        format!(
                            "{} {}",
                            Length::from_nm(misses.on(axis)).spoken(),
                            Direction::along(axis, misses.on(axis)).word()
                        )
                    })
                    .collect();
                let whose = outline.drawn.word();
                self.tell(
                    Diagnostic::new(
                        Word::OutlineDoesNotClose,
                        outline.span,
                        format!(
                            "the {whose}'s outline {shown} ends {} of where it began",
                            words::all_of(&ways)
                        ),
                    )
                    .note(
                        "an outline that does not close has no area; it is shown as it is printed",
                    ),
                );
            }
            let walk = closed.map_or(walk, |closed| closed.walk);
            let of = self.spaces_of(outline);
            self.house.drawn.push(DrawnOutline {
                drawn: outline.drawn,
                name: outline.name.text.clone(),
                of,
                sides,
                walk,
                outline: outline_closed,
            });
        }
    }

    /// The spaces a name of an outline means: a space, or those counted on a level.
    pub(super) fn spaces_of(&mut self, outline: &crate::sketch::OutlineSketch) -> Vec<usize> {
        let name = outline.of.as_ref().unwrap_or(&outline.name);
        let spaces = &self.house.spaces;
        let named: Vec<usize> =
            (0..spaces.len()).filter(|&i| spaces[i].name == name.text).collect();
        if !named.is_empty() {
            return named;
        }
        let level = self.house.levels.iter().position(|level| level.name == name.text);
        let on_level: Vec<usize> = (0..spaces.len())
            .filter(|&i| Some(spaces[i].level) == level && spaces[i].counted)
            .collect();
        let known = level.is_some()
            || self
                .sketch
                .levels
                .iter()
                .flat_map(|level| &level.spaces)
                .any(|space| space.space.name == *name);
        if outline.of.is_some() && !known {
            let shown = quoted(&name.text);
            self.tell(
                Diagnostic::new(
                    Word::NoSuchSpace,
                    name.span,
                    format!("no space or level is called {shown}"),
                )
                .help("after `of` comes the name of a space or a level of this file"),
            );
        }
        on_level
    }

    /// Names after `counting` are spaces of the house, or things the record lists.
    pub(super) fn counting_names(&mut self) {
        let spaces = self.sketch.levels.iter().flat_map(|level| &level.spaces);
        let mut known: Vec<&str> = spaces.map(|space| space.space.name.text.as_str()).collect();
        known.extend(self.sketch.missing.iter().map(|missing| missing.name.as_str()));
        for figure in &self.sketch.figures {
            for name in figure
                .figure
                .basis
                .counting
                .iter()
                .filter(|name| !known.contains(&name.text.as_str()))
            {
                let shown = quoted(&name.text);
                let mut fault = Diagnostic::new(
                    Word::NoSuchSpace,
                    name.span,
                    format!("no space is called {shown}"),
                );
                if let Some(near) = words::nearest(&name.text, &known) {
                    fault = fault.help(format!("did you mean `\"{near}\"`?"));
                }
                let fault = fault.help(
                    "after `counting` come names of spaces of this file, or of what is `missing`",
                );
                self.whole = false;
                self.found.push(fault);
            }
        }
    }
}
