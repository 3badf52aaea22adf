//! Living space that is separate from the house, such as a guest house. It is listed separately, and is in the total
//! only if the file counts it.
#![expect(
    clippy::cast_possible_truncation,
    reason = "a distance for a message; no area comes from here"
)]

use std::cell::OnceCell;

use crate::diagnostic::{Diagnostic, Word, quoted};
use crate::geometry::outline::{self, Outline, Placed, are_near, placed};
use crate::house::Space;
use crate::house::check::Checker;
use crate::house::check::places::grain;
use crate::sketch::Kind;
use crate::units::area::Area;
use crate::units::length::{Length, WrittenLength};

/// Asks whether a room over a part of the house that is no living space is reached from inside.
fn over_a_part(here: &Space, part: &Space) -> Diagnostic {
    let (name, part) = (quoted(&here.name), quoted(&part.name));
    let message = format!(
        "{name} touches no other living space on its level; it lies over {part}, which stands against the house, and is in the total"
    );
    Diagnostic::new(Word::LivingApart, here.span, message)
        .help("it counts if finished space leads to it from the rest of the house: then put `counted` after its name; if it is reached only from outside or through what is not finished, put `not counted`")
        .note("finished area that is not connected to the dwelling is no part of its area under ANSI Z765 (read second-hand)")
}

impl Checker<'_> {
    /// Marks living space that is not connected to the main living space. On each level, the main part is the largest
    /// group of spaces that touch each other. Other spaces are detached unless they lie over or under the main part of
    /// another level, from which stairs would reach them, or over a garage or the like that stands against it: those are
    /// counted, and the file is asked.
    ///
    /// Finished area that is not connected to the dwelling is not part of its area (ANSI Z765, read second-hand).
    pub(super) fn find_detached(&mut self, says: &[Option<bool>]) {
        let spaces = &self.house.spaces;
        let living = || (0..spaces.len()).filter(|&i| spaces[i].kind == Kind::Living);
        if living().nth(1).is_none() && !living().any(|i| spaces[i].by_itself) {
            return;
        }
        let living: Vec<usize> = living().collect();
        // Two spaces on different levels are not compared, so that most need no lines.
        let known: Vec<OnceCell<Vec<Placed>>> = vec![OnceCell::new(); spaces.len()];
        let lines = |space: usize| -> &[Placed] {
            let here = &spaces[space];
            known[space].get_or_init(|| placed(&here.closed.outline, here.at))
        };
        let mut runs: Vec<Vec<usize>> = Vec::new();
        for &space in &living {
            let (mut joined, others): (Vec<Vec<usize>>, Vec<Vec<usize>>) = runs
                .into_iter()
                .partition(|run| run.iter().any(|&other| self.touch(space, other, lines)));
            joined.push(vec![space]);
            runs = others;
            runs.push(joined.concat());
        }
        let area = |run: &Vec<usize>| -> Area {
            run.iter().map(|&i| spaces[i].closed.outline.area()).sum()
        };
        let first = |run: &Vec<usize>| run.iter().copied().min();
        let is_by_itself = |run: &Vec<usize>| run.iter().all(|&i| spaces[i].by_itself);
        let mut main: Vec<usize> = Vec::new();
        for level in 0..self.house.levels.len() {
            let here = runs.iter().enumerate().filter(|(_, run)| {
                run.first().is_some_and(|&i| spaces[i].level == level) && !is_by_itself(run)
            });
            let largest =
                here.max_by_key(|(_, run)| (area(run).half_nm2(), std::cmp::Reverse(first(run))));
            main.extend(largest.map(|(place, _)| place));
        }
        let over = |space: usize, other: usize| {
            spaces[other].level != spaces[space].level
                && spaces[other].extent.is_near(&spaces[space].extent, 0)
                && self.patch(space).overlap(&self.patch(other), self.sliver(space, other)) > 0.0
        };
        let mains = || main.iter().flat_map(|&place| &runs[place]).copied();
        let stands_on = |space: usize| mains().any(|other| over(space, other));
        // A garage, say, that stands against the house: stairs may lead up from inside.
        let attached = |space: usize| {
            let is_part = |&other: &usize| {
                let its = &spaces[other];
                let has_walls = its.kind.has_walls() && its.kind != Kind::Living;
                has_walls && its.level < spaces[space].level && over(space, other)
            };
            let mut parts = (0..spaces.len()).filter(is_part);
            parts.find(|&other| mains().any(|main| self.touch(main, other, lines)))
        };
        let mut apart: Vec<usize> = Vec::new();
        let mut above: Vec<(usize, usize)> = Vec::new();
        for (_, run) in runs.iter().enumerate().filter(|(place, _)| !main.contains(place)) {
            if !is_by_itself(run) && run.iter().any(|&space| stands_on(space)) {
                continue;
            }
            let attached = run.iter().find_map(|&space| attached(space));
            match attached.filter(|_| !is_by_itself(run)) {
                Some(part) => above.extend(run.iter().map(|&space| (space, part))),
                None => apart.extend(run),
            }
        }
        let above: Vec<Diagnostic> = above
            .into_iter()
            .filter(|&(space, _)| says[space].is_none())
            .map(|(space, part)| over_a_part(&spaces[space], &spaces[part]))
            .collect();
        apart.sort_unstable();
        let gap = |space: usize| {
            let on_level = |&&other: &&usize| spaces[other].level == spaces[space].level;
            let others = main.iter().flat_map(|&place| &runs[place]).filter(on_level);
            let gaps = others.filter_map(|&other| outline::gap(lines(space), lines(other)));
            gaps.min_by(f64::total_cmp).filter(|_| !spaces[space].by_itself)
        };
        let apart: Vec<(usize, Option<f64>)> =
            apart.into_iter().map(|space| (space, gap(space))).collect();
        for (space, gap) in apart {
            self.report_detached(space, says[space], gap);
        }
        above.into_iter().for_each(|one| self.report(one));
    }

    /// `gap` is how far it is from the other living space, in nanometers, if both are drawn at their places.
    fn report_detached(&mut self, space: usize, says: Option<bool>, gap: Option<f64>) {
        let form = self.form();
        let far = gap.map(|gap| Length::from_nm(gap as i64).rounded_to(grain(form)));
        let far = far.filter(|far| *far > Length::ZERO);
        let far = far.map(|far| format!("{} ", WrittenLength::new(far, form).spoken()));
        let far = far.unwrap_or_default();
        let here = &mut self.house.spaces[space];
        here.detached = true;
        if says == Some(false) {
            return;
        }
        here.counted = says == Some(true);
        here.claimed = here.counted;
        let name = quoted(&here.name);
        let fault = if here.counted {
            let message = format!(
                "{name} stands {far}apart from the other living space on its level, and is counted as the file says"
            );
            Diagnostic::new(Word::LivingApart, here.span, message)
                .help("if the total should hold only what is connected, take `counted` out")
        } else {
            let message = format!(
                "{name} stands {far}apart from the other living space on its level, so it is not in the total"
            );
            Diagnostic::new(Word::LivingApart, here.span, message).help(
                "if finished space connects it, say where it starts so that the two touch; to count it on your own word, put `counted` after its name",
            )
        };
        self.report(fault.note(
            "finished area that is not connected to the dwelling is no part of its area under ANSI Z765 (read second-hand)",
        ));
    }

    /// Whether two living spaces of one level touch, allowing for the tolerance of the tape and a wall between the
    /// rooms. `lines` gives the lines of a space of the house.
    fn touch<'a>(&self, a: usize, b: usize, lines: impl Fn(usize) -> &'a [Placed]) -> bool {
        let (one, other) = (&self.house.spaces[a], &self.house.spaces[b]);
        if one.level != other.level || one.by_itself || other.by_itself {
            return false;
        }
        if one.parent == Some(b) || other.parent == Some(a) {
            return true;
        }
        let gap = self.house.gap_between(one, other);
        let near = |outline: &Outline, at| outline.extent(at);
        near(&one.closed.outline, one.at).is_near(&near(&other.closed.outline, other.at), gap)
            && are_near(lines(a), lines(b), gap)
    }
}
