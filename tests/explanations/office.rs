//! An office that measures a random house with its own tape, rounds, closes in its own way, and makes one
//! departure.

use super::house::{Corner, FOOT, House, Space};
use super::random::Random;

/// How an office rounds a wall, in feet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Rounds {
    Nearest,
    Up,
    Down,
    Half,
    Tenth,
}

/// From which walls an office takes the leftover steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Closes {
    Any,
    Longest,
    Last,
    Nearest,
}

/// How an office works.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Office {
    pub(crate) rounds: Rounds,
    pub(crate) closes: Closes,
    /// The distance of its face inside the outside face, in feet.
    pub(crate) within_ft: f64,
}

impl Office {
    pub(crate) fn random(random: &mut Random) -> Office {
        let ways = [Closes::Any, Closes::Longest, Closes::Last, Closes::Nearest];
        Office { rounds: Rounds::Nearest, closes: random.pick(&ways), within_ft: 0.0 }
    }
}

/// A wall: its direction (0 north, 1 east, 2 south, 3 west), its length on the sketch and its true length, in feet.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Wall {
    pub(crate) way: usize,
    pub(crate) feet: f64,
    true_feet: f64,
}

/// The walls of a space on an office's sketch; `misread` is a wall and the length it is taken for.
pub(crate) fn walls(
    space: &Space,
    office: Office,
    misread: Option<(usize, f64)>,
    random: &mut Random,
) -> Vec<Wall> {
    let moved = space.has_walls() && space.within.is_none();
    let within = if moved { office.within_ft } else { 0.0 };
    let sides = space.sides();
    let n = sides.len();
    let clockwise = is_clockwise(&space.corners);
    let turns_out = |i: usize| {
        let right = (sides[i].0 + 1) % 4 == sides[(i + 1) % n].0;
        right == clockwise
    };
    let shift = |i: usize| if turns_out(i) { -within } else { within };
    let mut walls: Vec<Wall> = (0..n)
        .map(|i| {
            let true_feet = sides[i].1 as f64 / FOOT as f64 + shift(i) + shift((i + n - 1) % n);
            let read = (true_feet + random.real(-0.15, 0.15)).max(0.1);
            Wall { way: sides[i].0, feet: rounded(read, office.rounds), true_feet }
        })
        .collect();
    if let Some((i, feet)) = misread {
        walls[i].feet = feet;
    }
    close(&mut walls, office, misread.map(|(i, _)| i), random);
    walls
}

fn is_clockwise(corners: &[Corner]) -> bool {
    let n = corners.len();
    let doubled: i64 = (0..n)
        .map(|i| {
            let (a, b) = (corners[i], corners[(i + 1) % n]);
            a.0 * b.1 - b.0 * a.1
        })
        .sum();
    doubled < 0
}

fn rounded(feet: f64, rounds: Rounds) -> f64 {
    match rounds {
        Rounds::Nearest => (feet + 0.5).floor(),
        Rounds::Up => feet.ceil(),
        Rounds::Down => feet.floor(),
        Rounds::Half => (feet * 2.0).round() / 2.0,
        Rounds::Tenth => (feet * 10.0).round() / 10.0,
    }
}

/// Removes leftover steps from walls, one at a time, except for the wall `kept`.
fn close(walls: &mut [Wall], office: Office, kept: Option<usize>, random: &mut Random) {
    let step = match office.rounds {
        Rounds::Half => 0.5,
        Rounds::Tenth => 0.1,
        _ => 1.0,
    };
    for axis in 0..2 {
        let sign = |way: usize| if way < 2 { 1.0 } else { -1.0 };
        loop {
            let on_axis = |i: &usize| walls[*i].way % 2 == axis && Some(*i) != kept;
            let free: Vec<usize> = (0..walls.len()).filter(on_axis).collect();
            let all = walls.iter().filter(|wall| wall.way % 2 == axis);
            let miss: f64 = all.map(|wall| sign(wall.way) * wall.feet).sum();
            if miss.abs() < step / 2.0 {
                break;
            }
            let change = |i: usize| if sign(walls[i].way) * miss > 0.0 { -step } else { step };
            let able: Vec<usize> =
                free.iter().copied().filter(|&i| walls[i].feet + change(i) > 0.0).collect();
            if able.is_empty() {
                break;
            }
            let off = |i: usize| {
                let (now, then) = (
                    walls[i].feet - walls[i].true_feet,
                    walls[i].feet + change(i) - walls[i].true_feet,
                );
                then * then - now * now
            };
            let i = match office.closes {
                Closes::Any => random.pick(&able),
                Closes::Longest => able
                    .iter()
                    .copied()
                    .max_by(|a, b| walls[*a].feet.total_cmp(&walls[*b].feet))
                    .unwrap(),
                Closes::Last => *able.last().unwrap(),
                Closes::Nearest => {
                    able.iter().copied().min_by(|a, b| off(*a).total_cmp(&off(*b))).unwrap()
                }
            };
            walls[i].feet += change(i);
        }
    }
}

/// The area of walls that close.
pub(crate) fn area(walls: &[Wall]) -> f64 {
    let (mut height, mut area) = (0.0, 0.0);
    for wall in walls {
        match wall.way {
            0 => height += wall.feet,
            2 => height -= wall.feet,
            1 => area += height * wall.feet,
            _ => area -= height * wall.feet,
        }
    }
    f64::abs(area)
}

/// The areas of all spaces on an office's sketch, with the walls of each.
pub(crate) struct Sketch {
    pub(crate) office: Office,
    pub(crate) walls: Vec<Vec<Wall>>,
    pub(crate) areas: Vec<f64>,
}

impl Sketch {
    pub(crate) fn of(
        house: &House,
        office: Office,
        misread: Option<(usize, usize, f64)>,
        random: &mut Random,
    ) -> Sketch {
        let walls: Vec<Vec<Wall>> = (0..house.spaces.len())
            .map(|i| {
                let misread =
                    misread.filter(|(space, ..)| *space == i).map(|(_, side, feet)| (side, feet));
                walls(&house.spaces[i], office, misread, random)
            })
            .collect();
        let areas = walls.iter().map(|walls| area(walls)).collect();
        Sketch { office, walls, areas }
    }

    /// The total of the counted spaces.
    pub(crate) fn total(&self, house: &House) -> f64 {
        (0..house.spaces.len())
            .filter(|&i| house.spaces[i].counted)
            .map(|i| house.net(i, |i| self.areas[i]))
            .sum()
    }

    /// The counted area on a level.
    pub(crate) fn level(&self, house: &House, level: usize) -> f64 {
        (0..house.spaces.len())
            .filter(|&i| house.spaces[i].counted && house.spaces[i].level == level)
            .map(|i| house.net(i, |i| self.areas[i]))
            .sum()
    }

    /// The whole outlines of the counted spaces on a level, without deductions.
    pub(crate) fn whole_outline(&self, house: &House, level: usize) -> f64 {
        (0..house.spaces.len())
            .filter(|&i| {
                house.spaces[i].counted
                    && house.spaces[i].level == level
                    && house.spaces[i].within.is_none()
            })
            .map(|i| self.areas[i])
            .sum()
    }
}
