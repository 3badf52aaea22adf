//! A random house, and a random office that measures it.

/// A small generator, so that a run is the same on every machine.
pub(crate) struct Random(u64);

impl Random {
    pub(crate) fn new(seed: u64) -> Random {
        Random(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ 0x1234_5678_9abc_def1)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// From 0 to under 1.
    pub(crate) fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn between(&mut self, low: i64, high: i64) -> i64 {
        low + (self.next() % (high - low + 1) as u64) as i64
    }

    fn pick<T: Copy>(&mut self, list: &[T]) -> T {
        list[(self.next() % list.len() as u64) as usize]
    }

    /// Laplace of a scale.
    pub(crate) fn laplace(&mut self, scale: f64) -> f64 {
        let u = self.unit() - 0.5;
        -scale * u.signum() * (1.0 - 2.0 * u.abs()).max(1e-12).ln()
    }
}

/// A side: 0 north, 1 east, 2 south, 3 west, and its length in half inches.
type Side = (usize, i64);

#[derive(Clone)]
struct Space {
    head: String,
    name: &'static str,
    sides: Vec<Side>,
}

/// A house with what stands beside, above and in it.
pub(crate) struct House {
    ground: Space,
    beside: Vec<Space>,
    upper: Option<(Space, Option<Space>)>,
}

fn rectangle(north: i64, east: i64) -> Vec<Side> {
    vec![(0, north), (1, east), (2, north), (3, east)]
}

impl House {
    pub(crate) fn random(random: &mut Random) -> House {
        let foot = 24;
        let towers: Vec<(i64, i64)> = (0..random.between(1, 3))
            .map(|i| {
                let height = random.between(18 * foot, 40 * foot) / 4 + i % 2 * 5 * foot;
                (random.between(12 * foot, 26 * foot), height * 4)
            })
            .collect();
        let mut sides = vec![(0, towers[0].1)];
        for (i, &(width, height)) in towers.iter().enumerate() {
            sides.push((1, width));
            let rise = towers.get(i + 1).map_or(0, |next| next.1) - height;
            if rise.abs() < 2 * foot && i + 1 < towers.len() {
                return House::random(random);
            }
            sides.push(if rise > 0 { (0, rise) } else { (2, -rise) });
        }
        sides.push((3, towers.iter().map(|tower| tower.0).sum()));
        let low = towers.iter().map(|tower| tower.1).min().unwrap();
        let mut beside = Vec::new();
        let extras: [(&'static str, &str, i64, i64, i64, i64); 4] = [
            ("Garage", "garage", 18, 24, 18, 26),
            ("Porch", "porch", 5, 10, 8, 24),
            ("Deck", "deck", 8, 14, 10, 20),
            ("Attic store", "unfinished", 10, 18, 12, 24),
        ];
        for (k, (name, kind, a, b, c, d)) in extras.into_iter().enumerate() {
            if random.unit() < 0.6 {
                let (north, east) =
                    (random.between(a * foot, b * foot), random.between(c * foot, d * foot));
                beside.push(Space {
                    head: format!("{kind} \"{name}\" start west {}'", 100 + 60 * k),
                    name,
                    sides: rectangle(north, east),
                });
            }
        }
        let upper = (random.unit() < 0.6).then(|| {
            let (north, east) =
                (low - random.between(0, 4 * foot), towers[0].0 - random.between(0, 2 * foot));
            let rooms = Space {
                head: "living \"Bedrooms\"".to_owned(),
                name: "Bedrooms",
                sides: rectangle(north, east),
            };
            let foyer = (random.unit() < 0.6).then(|| Space {
                head: "open \"Foyer\" start east 2' north 2'".to_owned(),
                name: "Foyer",
                sides: rectangle(
                    random.between(6 * foot, 10 * foot),
                    random.between(6 * foot, 8 * foot),
                ),
            });
            (rooms, foyer)
        });
        let ground = Space { head: "living \"House\"".to_owned(), name: "House", sides };
        House { ground, beside, upper }
    }

    /// The sides file, with the record's figure.
    pub(crate) fn file(&self, record: i64) -> String {
        let mut text = format!("veneer 4 5/8\"\nrecord {record} sq ft\nlevel \"Ground\"\n");
        write(&mut text, &self.ground);
        self.beside.iter().for_each(|space| write(&mut text, space));
        if let Some((rooms, foyer)) = &self.upper {
            text.push_str("level \"Upper\"\n");
            write(&mut text, rooms);
            foyer.iter().for_each(|space| write(&mut text, space));
        }
        text
    }
}

fn write(text: &mut String, space: &Space) {
    text.push_str(&format!("{}\n", space.head));
    for &(way, length) in &space.sides {
        let (feet, rest) = (length / 24, length % 24);
        let half = if rest % 2 == 1 { ".5" } else { ".0" };
        let word = ["north", "east", "south", "west"][way];
        text.push_str(&format!("{word} {feet}' {}{half}\"\n", rest / 2));
    }
}

/// How the office rounds a side, in feet.
#[derive(Clone, Copy, PartialEq)]
enum Rounds {
    Nearest,
    Up,
    Down,
    Half,
    TiesDown,
    Not,
}

/// What the office does otherwise.
#[derive(Clone, PartialEq)]
enum Does {
    Face,
    Rounds(Rounds),
    Counts(&'static str),
    KeepsFoyer,
    Storey(&'static str),
    Squares(usize),
    LeavesOut(usize),
    Slips(usize),
}

/// The true labels of a record, as explanations name them; none of something else.
pub(crate) struct Record {
    pub(crate) sq_ft: i64,
    pub(crate) labels: Option<Vec<String>>,
}

/// Every departure of a house with its weight.
fn all(house: &House) -> Vec<(Does, f64)> {
    let mut list = vec![
        (Does::Face, 0.075),
        (Does::Rounds(Rounds::Up), 0.05),
        (Does::Rounds(Rounds::Down), 0.02),
        (Does::Rounds(Rounds::Half), 0.05),
        (Does::Rounds(Rounds::TiesDown), 0.05),
        (Does::Rounds(Rounds::Not), 0.10),
    ];
    list.extend(house.beside.iter().map(|space| (Does::Counts(space.name), 0.06)));
    if let Some((_, foyer)) = &house.upper {
        list.extend(foyer.iter().map(|_| (Does::KeepsFoyer, 0.12)));
        for (how, chance) in [
            ("at the full outline below", 0.05),
            ("at half the outline below", 0.03),
            ("twice", 0.01),
            ("left out", 0.01),
        ] {
            list.push((Does::Storey(how), chance));
        }
    }
    let inward: Vec<usize> = inward(&house.ground.sides);
    let jogs = jogs(&house.ground.sides);
    let each = 0.05 / (inward.len() + jogs.len()).max(1) as f64;
    list.extend(inward.iter().map(|&i| (Does::Squares(i), each)));
    list.extend(jogs.iter().map(|&i| (Does::LeavesOut(i), each)));
    let n = house.ground.sides.len();
    list.extend((0..n).map(|i| (Does::Slips(i), 0.05 / n as f64)));
    list
}

fn inward(sides: &[Side]) -> Vec<usize> {
    let n = sides.len();
    // Walked clockwise: a left turn is an inward corner.
    (0..n).filter(|&i| (sides[i].0 + 3) % 4 == sides[(i + 1) % n].0).collect()
}

/// Sides that stand out between two inward corners.
fn jogs(sides: &[Side]) -> Vec<usize> {
    let n = sides.len();
    let inward = inward(sides);
    let is = |i: usize| inward.contains(&(i % n));
    (0..n).filter(|&i| is(i + n - 2) && !is(i + n - 1) && !is(i) && is(i + 1)).collect()
}

fn excludes(a: &Does, b: &Does) -> bool {
    matches!(
        (a, b),
        (Does::Rounds(_), Does::Rounds(_))
            | (Does::Storey(_), Does::Storey(_) | Does::KeepsFoyer)
            | (Does::KeepsFoyer, Does::Storey(_))
            | (Does::Squares(_) | Does::LeavesOut(_), Does::Squares(_) | Does::LeavesOut(_))
            | (Does::Slips(_), Does::Slips(_))
    )
}

/// A record with so many departures, drawn by their weights.
pub(crate) fn with_departures(house: &House, count: usize, random: &mut Random) -> Record {
    let list = all(house);
    let mut drawn: Vec<Does> = Vec::new();
    while drawn.len() < count {
        let whole: f64 = list.iter().map(|(_, weight)| weight).sum();
        let mut left = random.unit() * whole;
        for (does, weight) in &list {
            left -= weight;
            if left < 0.0 {
                let excluded = drawn.iter().any(|other| other == does || excludes(other, does));
                // A slip is told in whole feet, so it goes with whole-foot rounding.
                drawn.extend((!excluded).then(|| does.clone()));
                break;
            }
        }
    }
    record(house, &drawn, random)
}

/// A record whose departures are drawn each by its own chance.
pub(crate) fn by_chance(house: &House, random: &mut Random) -> Record {
    loop {
        let mut drawn: Vec<Does> = Vec::new();
        let mut clashes = false;
        for (does, chance) in all(house) {
            if random.unit() < chance {
                clashes |= drawn.iter().any(|other| excludes(other, &does));
                drawn.push(does);
            }
        }
        if !clashes && drawn.len() <= 3 {
            return record(house, &drawn, random);
        }
    }
}

/// Something else: far from what the house gives, in no way that is known.
pub(crate) fn something_else(house: &House, random: &mut Random) -> Record {
    let plain = record(house, &[], random).sq_ft as f64;
    let sq_ft = (plain + random.laplace(400.0)).round().max(100.0) as i64;
    Record { sq_ft, labels: None }
}

fn record(house: &House, does: &[Does], random: &mut Random) -> Record {
    let rounds = does.iter().find_map(|does| match does {
        Does::Rounds(rounds) => Some(*rounds),
        _ => None,
    });
    let rounds = rounds.unwrap_or(Rounds::Nearest);
    let at_frame = does.contains(&Does::Face);
    let slips =
        does.iter().find_map(|does| if let Does::Slips(i) = does { Some(*i) } else { None });
    let measure = |space: &Space, moves: bool, slip: Option<usize>, random: &mut Random| {
        measured(&space.sides, at_frame && moves, rounds, slip, random)
    };
    let ground = measure(&house.ground, true, slips, random);
    let full = area(&ground);
    let mut total = full;
    for does in does {
        if let Does::Squares(i) = does {
            total += ground[*i].1 * ground[(i + 1) % ground.len()].1;
        }
    }
    for does in does {
        if let Does::LeavesOut(i) = does {
            let n = ground.len();
            total -= ground[*i].1 * ground[(i + n - 1) % n].1.min(ground[(i + 1) % n].1);
        }
    }
    for space in &house.beside {
        let moves = matches!(space.name, "Garage" | "Attic store");
        let own = area(&measure(space, moves, None, random));
        total += if does.contains(&Does::Counts(space.name)) { own } else { 0.0 };
    }
    if let Some((rooms, foyer)) = &house.upper {
        let mut own = area(&measure(rooms, true, None, random));
        if let Some(foyer) = foyer {
            let off = area(&measure(foyer, false, None, random));
            own -= if does.contains(&Does::KeepsFoyer) { 0.0 } else { off };
        }
        let storey = does
            .iter()
            .find_map(|does| if let Does::Storey(how) = does { Some(*how) } else { None });
        total += match storey {
            Some("at the full outline below") => full,
            Some("at half the outline below") => full / 2.0,
            Some("twice") => 2.0 * own,
            Some(_) => 0.0,
            None => own,
        };
    }
    let mut labels: Vec<String> = does.iter().map(label).collect();
    labels.sort();
    Record { sq_ft: total.round().max(100.0) as i64, labels: Some(labels) }
}

fn label(does: &Does) -> String {
    match does {
        Does::Face => "face: frame".to_owned(),
        Does::Rounds(rounds) => {
            let way = match rounds {
                Rounds::Up => "always up",
                Rounds::Down => "always down",
                Rounds::Half => "half foot",
                Rounds::TiesDown => "ties down",
                Rounds::Not | Rounds::Nearest => "not rounded",
            };
            format!("rounding: {way}")
        }
        Does::Counts(name) => format!("counted: {name}"),
        Does::KeepsFoyer => "not deducted: Foyer".to_owned(),
        Does::Storey(how) => format!("storey: Upper {how}"),
        Does::Squares(i) => format!("squared off: House side {}", i + 1),
        Does::LeavesOut(i) => format!("jog left out: House side {}", i + 1),
        Does::Slips(i) => format!("slip: House side {}", i + 1),
    }
}

/// The office's walls in feet: taped, rounded, closed.
fn measured(
    sides: &[Side],
    at_frame: bool,
    rounds: Rounds,
    slip: Option<usize>,
    random: &mut Random,
) -> Vec<(usize, f64)> {
    let n = sides.len();
    let inward = inward(sides);
    let veneer = 4.625 / 12.0;
    // At each end an outward corner takes a veneer off, an inward one gives it back.
    let at_end = |i: usize| if inward.contains(&i) { veneer } else { -veneer };
    let step = if rounds == Rounds::Half {
        0.5
    } else if rounds == Rounds::Not {
        0.1
    } else {
        1.0
    };
    let mut walls: Vec<(usize, f64)> = (0..n)
        .map(|i| {
            let moved = if at_frame { (at_end(i) + at_end((i + n - 1) % n)) * 1.0 } else { 0.0 };
            // Walls on an inward and an outward corner keep their length.
            let true_feet = sides[i].1 as f64 / 24.0 + moved;
            let feet = true_feet + (random.unit() - 0.5) * 0.3;
            let steps = feet / step;
            let rounded = match rounds {
                Rounds::Up => steps.ceil(),
                Rounds::Down => steps.floor(),
                Rounds::TiesDown => (steps - 0.5).ceil(),
                _ => (steps + 0.5).floor(),
            };
            (sides[i].0, rounded * step)
        })
        .collect();
    if let Some(i) = slip {
        walls[i].1 = misread(walls[i].1, random);
    }
    close(&mut walls, step, slip, random);
    walls
}

fn misread(feet: f64, random: &mut Random) -> f64 {
    let digits = format!("{feet:.0}");
    let more = random.pick(&[1.0, -1.0, 5.0, -5.0, 10.0, -10.0]);
    let swapped: String = digits.chars().rev().collect();
    let other = match random.between(0, 2) {
        0 if digits.len() == 2 => swapped.parse().unwrap_or(feet),
        _ => feet + more,
    };
    if other > 0.0 && other != feet { other } else { feet + 1.0 }
}

/// Takes odd steps off walls of the axis at random, one at a time.
fn close(walls: &mut [(usize, f64)], step: f64, fixed: Option<usize>, random: &mut Random) {
    for axis in 0..2 {
        let sign = |way: usize| if way < 2 { 1.0 } else { -1.0 };
        let on_axis: Vec<usize> =
            (0..walls.len()).filter(|&i| walls[i].0 % 2 == axis && Some(i) != fixed).collect();
        loop {
            let miss: f64 = walls
                .iter()
                .filter(|wall| wall.0 % 2 == axis)
                .map(|wall| sign(wall.0) * wall.1)
                .sum();
            if miss.abs() < step / 2.0 {
                break;
            }
            let i = random.pick(&on_axis);
            let change = if sign(walls[i].0) * miss > 0.0 { -step } else { step };
            if walls[i].1 + change > 0.0 {
                walls[i].1 += change;
            }
        }
    }
}

fn area(walls: &[(usize, f64)]) -> f64 {
    let (mut height, mut area) = (0.0, 0.0);
    for &(way, feet) in walls {
        match way {
            0 => height += feet,
            2 => height -= feet,
            1 => area += height * feet,
            _ => area -= height * feet,
        }
    }
    area.abs()
}
