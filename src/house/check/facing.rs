//! Walks whose walls are typed as front, right, back and left: these are the ways in which they were walked, and could
//! as well be meant as the sides on which the walls stand.

use crate::diagnostic::{Diagnostic, Word, quoted, words};
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::traverse::Shape;
use crate::house::Side;
use crate::house::check::{Checker, shape};
use crate::sketch::SpaceSketch;
use crate::sketch::statement::Run;
use crate::units::length::Length;

/// The words for the four sides as seen from the street, each to the right of the one before it.
const SIDES: [&str; 4] = ["front", "left", "back", "right"];

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

/// The word of a side that is typed as seen from the street, as its index in [`SIDES`].
fn street_word(side: &Side) -> Option<usize> {
    let word = side.typed.split(' ').next().unwrap_or_default();
    SIDES.iter().position(|side| side.eq_ignore_ascii_case(word))
}

/// What to type where some walls of a walk that does not close are typed as front, left, back and right, beside others by
/// the compass: the words may name the sides on which the walls stand. The second is whether the walk then closes.
pub(super) fn named_by_their_sides(sides: &[Side]) -> Option<(String, bool)> {
    let named: Vec<usize> = sides.iter().filter_map(street_word).collect();
    if named.len() < 2 || named.len() == sides.len() {
        return None;
    }
    // Round the house from its left side to the back the inside is on the right.
    let steps = named.windows(2).map(|two| (two[1] + 4 - two[0]) % 4);
    let (on_right, on_left) = steps.fold((0, 0), |(right, left), step| {
        (right + i32::from(step == 1), left + i32::from(step == 3))
    });
    let closing: Vec<bool> =
        [true, false].into_iter().filter(|clockwise| closes_turned(sides, *clockwise)).collect();
    let (clockwise, closes) = match closing[..] {
        [only] => (only, true),
        [_, ..] => (on_right >= on_left, true),
        [] if on_right != on_left => (on_right > on_left, false),
        [] => return None,
    };
    let meant = |at: usize| SIDES[(at + if clockwise { 1 } else { 3 }) % 4];
    let mut used: Vec<usize> = Vec::new();
    for at in &named {
        if !used.contains(at) {
            used.push(*at);
        }
    }
    let turned: Vec<String> =
        used.iter().map(|&at| format!("`{}` for `{}`", meant(at), SIDES[at])).collect();
    let first = sides.iter().find_map(|side| Some((side, street_word(side)?)))?;
    let rest = first.0.typed.split_once(' ').map_or("", |(_, rest)| rest);
    let example = format!("`{} {rest}` for `{}`", meant(first.1), first.0.typed);
    let said: Vec<String> = used.iter().map(|&at| format!("`{}`", SIDES[at])).collect();
    let lead = match closes {
        true => {
            "taken as the sides on which the walls stand, they bring the walk back to its start"
        }
        false => "if they name the sides on which the walls stand",
    };
    let joint = if closes { ": if that is meant," } else { "," };
    Some((
        format!(
            "{} are read as the ways in which the walls were walked; {lead}{joint} type {}, as {example}",
            words::all_of(&said),
            words::all_of(&turned),
        ),
        closes,
    ))
}

/// Whether a walk closes if each wall that is typed by a side of the house runs along that side, the inside on the right or
/// on the left.
fn closes_turned(sides: &[Side], clockwise: bool) -> bool {
    const NEAR: i64 = 6 * Length::INCH.nm();
    let turned = |way: Direction| if clockwise { way.right() } else { way.left() };
    let (mut east, mut north) = (0_i64, 0_i64);
    let mut open: Vec<Direction> = Vec::new();
    for side in sides {
        let way = |way: Direction| if street_word(side).is_some() { turned(way) } else { way };
        let by = match &side.run {
            Run::Straight(direction, length) => {
                Shape::Straight { direction: way(*direction), length: length.length().nm() }
            }
            Run::ByClosing(direction) => {
                open.push(way(*direction));
                continue;
            }
            Run::Bearing(..) | Run::Close => return false,
            run @ (Run::Diagonal(..) | Run::Arc(..)) => shape(run),
        }
        .vector();
        east += by.along(Axis::East);
        north += by.along(Axis::North);
    }
    [(Axis::East, east), (Axis::North, north)].into_iter().all(|(axis, sum)| {
        let mut ways = open.iter().filter(|way| way.axis() == axis);
        match (ways.next(), ways.next()) {
            (None, _) => sum.abs() <= NEAR,
            (Some(way), None) => -sum * way.sign() > NEAR,
            (Some(_), Some(_)) => false,
        }
    })
}
