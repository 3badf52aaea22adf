//! Walks whose walls are typed as front, right, back and left: these are the ways in which they were walked, and could
//! as well be meant as the sides on which the walls stand.

use crate::diagnostic::{Diagnostic, Word, quoted};
use crate::geometry::compass::Axis;
use crate::house::Side;
use crate::house::check::Checker;
use crate::house::check::street_words::SIDES;
use crate::sketch::SpaceSketch;

impl Checker<'_> {
    /// Says of the first such walk how it was read. Walls that are named by their sides give the same outline turned by a
    /// quarter: its area is the same, but what is wide becomes deep.
    pub(super) fn report_street_ways(&mut self) {
        let Some(front) = self.sketch.heads.front else { return };
        let levels = self.sketch.levels.iter();
        let mut spaces = levels.flat_map(|level| &level.spaces);
        let Some(space) = spaces.find(|space| is_by_street(space)) else { return };
        let there = self.house.spaces.iter().find(|there| there.span.start == space.span.start);
        let Some(there) = there else { return };
        let (east, north) = (there.extent.east(), there.extent.north());
        let (east, north) = (east.1 - east.0, north.1 - north.0);
        // Turned by a quarter, a square is the same.
        if there.sides.len() == 4 && east == north {
            return;
        }
        let (wide, deep) = if front.axis() == Axis::North { (east, north) } else { (north, east) };
        let length = |nm: i64| self.spoken(crate::units::length::Length::from_nm(nm));
        let (wide, deep) = (length(wide), length(deep));
        let turn = there.closed.outline.turn();
        // With the inside on the left, the wall on the front side is walked to the right.
        let meant = |side: &str| {
            let at = SIDES.iter().position(|one| *one == side).unwrap_or_default();
            SIDES[(at + if turn > 0 { 3 } else { 1 }) % 4]
        };
        let Some(side) = space.walk.sides.iter().next() else { return };
        let name = quoted(&space.space.name.text);
        let message = format!(
            "{name} is read as walked, `front` toward the street: along the street it is {wide} wide, and {deep} deep"
        );
        let first = &side.typed;
        let (word, rest) = first.split_once(' ').unwrap_or((first, ""));
        let turned: Vec<String> =
            SIDES.iter().map(|side| format!("`{}` for `{side}`", meant(side))).collect();
        let example = format!("`{} {rest}` for `{first}`", meant(&word.to_lowercase()));
        let help = format!(
            "if each wall is named by the side on which it stands, it is {deep} wide and {wide} deep: then type {}, as {example}; otherwise compass words say the same without this question, as `{}` for `front`",
            crate::diagnostic::words::all_of(&turned),
            front.word(),
        );
        let span = side.span;
        self.report(Diagnostic::new(Word::StreetWays, span, message).help(help));
    }
}

/// The four walls of a rectangle as they are walked, if each of them is typed once with the side on which it stands, in
/// an order in which nobody walks round.
pub(super) fn rectangle_by_its_sides(sides: &[Side]) -> Option<String> {
    let length = |side: &str| {
        let mut named = sides.iter().filter_map(|one| {
            let (word, length) = one.typed.split_once(' ')?;
            word.eq_ignore_ascii_case(side).then_some(length)
        });
        let only = named.next()?;
        named.next().is_none().then_some(only)
    };
    // From the front left corner along the front wall, which runs to the right.
    let walls = [("right", "front"), ("back", "right"), ("left", "back"), ("front", "left")];
    let walked: Option<Vec<String>> =
        walls.iter().map(|(way, side)| Some(format!("`{way} {}`", length(side)?))).collect();
    walked.filter(|_| sides.len() == 4).map(|walked| walked.join(", "))
}

/// Whether every wall of a walk is typed with a word as seen from the street.
fn is_by_street(space: &SpaceSketch) -> bool {
    let sides = &space.walk.sides;
    let says = |typed: &str| {
        let word = typed.split(' ').next().unwrap_or_default();
        SIDES.iter().any(|side| side.eq_ignore_ascii_case(word))
    };
    sides.len() >= 4 && sides.iter().all(|side| says(&side.typed))
}
