//! Walls that are common on one level and not said to be so on another.

use crate::diagnostic::{Diagnostic, Word, quoted};
use crate::house::check::Checker;
use crate::house::{Side, Space};
use crate::sketch::Kind;
use crate::sketch::statement::Run;
use crate::units::length::Length;

/// How far the lengths of two walls that stand over each other may differ.
const NEAR: Length = Length::from_nm(6 * Length::INCH.nm());

impl Checker<'_> {
    /// Warns where a level has common walls, and another one has walls of the same length and none that is common: a
    /// dwelling that shares a wall mostly shares it from the ground to the roof.
    pub(super) fn common_on_one_level(&mut self) {
        if self.glance.is_wordless || self.house.levels.len() < 2 {
            return;
        }
        let spaces = |level: usize| {
            let is_here = move |space: &&Space| space.level == level && space.kind == Kind::Living;
            self.house.spaces.iter().filter(is_here)
        };
        let common = |level: usize| -> Vec<&Side> {
            spaces(level)
                .flat_map(|space| space.sides.iter())
                .filter(|side| side.words.common)
                .collect()
        };
        let mut warnings: Vec<Diagnostic> = Vec::new();
        for level in 0..self.house.levels.len() {
            if !common(level).is_empty() {
                continue;
            }
            let others = [level.checked_sub(1), Some(level + 1)].into_iter().flatten();
            let Some((of, shared)) =
                others.map(|other| (other, common(other))).find(|(_, shared)| !shared.is_empty())
            else {
                continue;
            };
            let found = spaces(level).find_map(|space| {
                let over = |side: &&Side| shared.iter().any(|one| are_alike(one, side));
                let sides: Vec<&Side> = space.sides.iter().filter(over).collect();
                (!sides.is_empty()).then_some((space, sides))
            });
            let Some((space, sides)) = found else { continue };
            let thickness = shared.iter().find_map(|one| one.words.wall);
            let thickness = thickness.map_or_else(String::new, |wall| format!(" wall {wall}"));
            let (here, there) =
                (quoted(&self.house.levels[level].name), quoted(&self.house.levels[of].name));
            let shown: Vec<String> =
                sides.iter().map(|side| format!("`{} common{thickness}`", side.typed)).collect();
            let message =
                format!("{there} has a common wall, and no wall of {here} is said to be one");
            warnings.push(Diagnostic::new(Word::CommonOnOneLevel, space.span, message).help(
                format!(
                    "if the neighbor's dwelling stands behind it on this level too, say so on the line of each such wall: {}",
                    shown.join(", ")
                ),
            ));
        }
        for warning in warnings {
            self.report(warning);
        }
    }
}

/// Whether two straight walls run on one axis and are about as long as each other.
fn are_alike(one: &Side, other: &Side) -> bool {
    let (Run::Straight(way, length), Run::Straight(other_way, other)) = (&one.run, &other.run)
    else {
        return false;
    };
    let differs = (length.length().nm() - other.length().nm()).abs();
    way.axis() == other_way.axis() && differs <= NEAR.nm()
}
