//! Walks whose walls are typed as front, right, back and left: these are the ways in which they were walked, and could
//! as well be meant as the sides on which the walls stand.

use crate::diagnostic::{Diagnostic, Word, quoted};
use crate::geometry::compass::{Axis, Direction};
use crate::house::check::Checker;
use crate::house::check::street_words::SIDES;
use crate::house::{Side, Space};
use crate::sketch::SpaceSketch;

const COMPASS: [&str; 8] = ["north", "east", "south", "west", "n", "e", "s", "w"];

impl Checker<'_> {
    /// The name of a space whose walls may be named by the sides on which they stand: turned by a quarter, what lies in it
    /// or beside it would start elsewhere.
    pub(super) fn may_be_turned(&self, space: usize) -> Option<String> {
        let there = &self.house.spaces[space];
        let levels = self.sketch.levels.iter();
        let mut spaces = levels.flat_map(|level| &level.spaces);
        let sketch = spaces.find(|one| one.span.start == there.span.start)?;
        (is_by_street(sketch) && !is_square(there)).then(|| there.name.clone())
    }

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
        if is_square(there) {
            return;
        }
        let (wide, deep) = if front.axis() == Axis::North { (east, north) } else { (north, east) };
        let length = |nm: i64| self.spoken(crate::units::length::Length::from_nm(nm));
        let (wide, deep) = (length(wide), length(deep));
        let turn = there.closed.outline.turn();
        let back = front.opposite();
        let seen = |side: &str| match side {
            "back" => back,
            "front" => front,
            "right" => back.right(),
            _ => back.left(),
        };
        let Some(side) = space.walk.sides.iter().next() else { return };
        let name = quoted(&space.space.name.text);
        let message = format!(
            "{name} is read as walked, `front` toward the street: along the street it is {wide} wide, and {deep} deep"
        );
        // With the inside on the right, the wall on the left side is walked to the back.
        let stands = |side: &str| match turn > 0 {
            true => seen(side).left(),
            false => seen(side).right(),
        };
        let words = |way: &dyn Fn(&str) -> Direction| {
            let all: Vec<String> =
                SIDES.iter().map(|side| format!("`{}` for `{side}`", way(side).word())).collect();
            crate::diagnostic::words::all_of(&all)
        };
        let first = &side.typed;
        let (word, rest) = first.split_once(' ').unwrap_or((first, ""));
        let example = |way: Direction| format!("`{} {rest}` for `{first}`", way.word());
        let word = word.to_lowercase();
        let walks = match spaces.any(is_by_street) {
            true => "in every walk that is typed so",
            false => "in this walk",
        };
        let others = match there_are_places(self.sketch) {
            true => {
                "; a space below that begins at a corner or at a distance from one is then placed anew"
            }
            false => "",
        };
        let turned = |way: Direction| if turn > 0 { way.left() } else { way.right() };
        let bays = |of: &dyn Fn(Direction) -> Direction| {
            let mut all: Vec<String> = Vec::new();
            for one in &space.walk.bays {
                let typed = format!("`bay {}`", of(one.bay.direction).word());
                if !all.contains(&typed) {
                    all.push(typed);
                }
            }
            match all.is_empty() {
                true => String::new(),
                false => format!(", and {} for its bay", crate::diagnostic::words::all_of(&all)),
            }
        };
        let help = format!(
            "compass words say which is meant: if each wall is named by the side on which it stands, so that it is {deep} wide and {wide} deep, type {} {walks}, as {}{}{others}; if the walls were walked these ways, type {}, as {}{}",
            words(&stands),
            example(stands(&word)),
            bays(&turned),
            words(&seen),
            example(seen(&word)),
            bays(&|way| way),
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

/// Whether a space of the file says where it begins.
fn there_are_places(sketch: &crate::sketch::Sketch) -> bool {
    let mut spaces = sketch.levels.iter().flat_map(|level| &level.spaces);
    spaces.any(|space| !matches!(space.space.place, crate::sketch::statement::Place::Origin))
}

/// Whether a space is a square, which is the same turned by a quarter.
fn is_square(space: &Space) -> bool {
    let (east, north) = (space.extent.east(), space.extent.north());
    space.sides.len() == 4 && east.1 - east.0 == north.1 - north.0
}

/// Whether every straight wall of a walk is typed with a word as seen from the street, and no other with one of the
/// compass. A bay runs as its wall does.
fn is_by_street(space: &SpaceSketch) -> bool {
    let is = |word: &str, words: &[&str]| words.iter().any(|one| one.eq_ignore_ascii_case(word));
    let is_of_a_bay = |at: usize| {
        space.walk.bays.iter().any(|one| (one.first..one.first + one.count()).contains(&at))
    };
    let sides = space.walk.sides.iter().enumerate().filter(|(at, _)| !is_of_a_bay(*at));
    let mut straight = 0;
    for (_, side) in sides {
        let mut words = side.typed.split(' ');
        match words.next() {
            Some(first) if is(first, &SIDES) => straight += 1,
            Some(first) if is(first, &["diagonal", "arc"]) => {
                if words.any(|word| is(word, &COMPASS)) {
                    return false;
                }
            }
            _ => return false,
        }
    }
    straight >= 4
}
