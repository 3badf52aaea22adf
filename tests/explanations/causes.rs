//! Departures of an office, chosen and known, and the record that results from each.

use super::house::{Corner, House, Space};
use super::office::{self, Office, Rounds, Sketch};
use super::random::Random;

/// Every cause that a practitioner would name, in the order of the table.
pub(crate) const ALL: [&str; 24] = [
    "garage counted",
    "porch counted",
    "unfinished room counted",
    "basement counted",
    "gone but counted",
    "addition left out",
    "level left out",
    "opening not deducted",
    "low part not deducted",
    "stair deducted",
    "level at the whole outline below",
    "level at three quarters below",
    "level at half below",
    "level twice",
    "under roof",
    "recess filled in",
    "jog or wing left off",
    "face: frame",
    "face: inside",
    "every wall rounded up",
    "wall misread",
    "digits of the total swapped",
    "ten times",
    "total rounded to 100",
];

/// Other causes, shown separately.
pub(crate) const BESIDES: [&str; 10] = [
    "one digit of the total",
    "a tenth",
    "total twice",
    "square meters",
    "every wall rounded down",
    "total rounded to 10",
    "half foot",
    "not rounded",
    "recess not drawn",
    "jog or wing not drawn",
];

/// A record and its true cause.
pub(crate) struct Record {
    pub(crate) sq_ft: i64,
    /// Labels, any of which is the true cause; empty for something else.
    pub(crate) labels: Vec<String>,
}

/// A record of a house with one departure; `None` if the house does not allow it, or if it changes the house by
/// less than a hundredth, since nobody asks about that.
pub(crate) fn with(cause: &str, house: &House, random: &mut Random) -> Option<Record> {
    // With only one such space, it means the same as counting that space, so no one could distinguish them.
    let above = |space: &&super::house::Space| !space.counted && !house.levels[space.level].1;
    let under = house.spaces.iter().filter(above);
    let roofed = ["garage", "porch", "unfinished"];
    if cause == "under roof" && under.filter(|space| roofed.contains(&space.kind)).count() < 2 {
        return None;
    }
    let record = with_any(cause, house, random)?;
    let matters = (record.sq_ft as f64 - house.measured()).abs() >= 0.01 * house.measured();
    matters.then_some(record)
}

/// The same, however small the change.
pub(crate) fn with_any(cause: &str, house: &House, random: &mut Random) -> Option<Record> {
    with_all(&[cause], house, random)
}

/// A record with all of these departures, one after the other; changes to the written total come last. Its labels
/// are those of one departure, or of the first and the second joined with `+`.
pub(crate) fn with_all(causes: &[&str], house: &House, random: &mut Random) -> Option<Record> {
    let mut office = Office::random(random);
    for cause in causes {
        match *cause {
            "face: frame" => office.within_ft = 4.625 / 12.0,
            "face: inside" => office.within_ft = (4.625 + 4.4375) / 12.0,
            "every wall rounded up" => office.rounds = Rounds::Up,
            "every wall rounded down" => office.rounds = Rounds::Down,
            "half foot" => office.rounds = Rounds::Half,
            "not rounded" => office.rounds = Rounds::Tenth,
            _ => {}
        }
    }
    let lies_on_walls =
        house.spaces.iter().any(|space| space.within.is_some() && space.has_walls());
    if office.within_ft > 0.0 && lies_on_walls {
        return None;
    }
    let is_misread = causes.contains(&"wall misread");
    let misread = if is_misread { Some(misread(house, random)?) } else { None };
    let sketch = Sketch::of(house, office, misread, random);
    let mut record = Record { sq_ft: 0, labels: Vec::new() };
    let mut total = sketch.total(house);
    for cause in causes {
        let (next, labels) = applied(cause, house, &sketch, total, misread, random)?;
        total = next;
        record.labels = match record.labels.first() {
            None => labels,
            Some(_) => both(&record.labels, &labels),
        };
    }
    record.sq_ft = (total + 0.5).floor() as i64;
    (record.sq_ft >= 200).then_some(record)
}

/// Every label of one joined with every label of the other, in either order.
fn both(ones: &[String], others: &[String]) -> Vec<String> {
    let pairs = ones.iter().flat_map(|one| others.iter().map(move |other| (one, other)));
    pairs.flat_map(|(one, other)| [format!("{one}+{other}"), format!("{other}+{one}")]).collect()
}

/// Recesses and jogs of the main outline.
pub(crate) fn parts(house: &House) -> (usize, usize) {
    let Some(main) = house.spaces.iter().find(|space| space.name == "House") else { return (0, 0) };
    let sides = main.sides();
    let n = sides.len();
    let is_in = |i: usize| (sides[i % n].0 + 3) % 4 == sides[(i + 1) % n].0;
    let recesses = (0..n).filter(|&i| is_in(i)).count();
    let out = |i: usize| !is_in(i) && !is_in(i + n - 1) && (is_in(i + n - 2) || is_in(i + 1));
    (recesses, (0..n).filter(|&i| out(i)).count())
}

/// A record without any departure.
pub(crate) fn plain(house: &House, random: &mut Random) -> Record {
    let office = Office::random(random);
    let total = Sketch::of(house, office, None, random).total(house);
    Record { sq_ft: total.round() as i64, labels: Vec::new() }
}

/// A wall of the ground level or of another level, and the length it is taken for.
fn misread(house: &House, random: &mut Random) -> Option<(usize, usize, f64)> {
    let counted: Vec<usize> =
        (0..house.spaces.len()).filter(|&i| house.spaces[i].counted).collect();
    let space = random.pick(&counted);
    let sides = house.spaces[space].sides();
    let side = random.between(0, sides.len() as i64 - 1) as usize;
    let feet = (sides[side].1 as f64 / 24.0).round() as i64;
    let (tens, ones) = (feet / 10, feet % 10);
    let other = match random.between(0, 9) {
        0..=3 => 10 * ones + tens,
        4..=5 => feet + 10,
        6..=7 => feet - 10,
        8 => feet + 5,
        _ => feet + random.pick(&[-1, 1]),
    };
    let is_likely = other > 0 && other != feet && 2 * other >= feet && other <= 2 * feet;
    is_likely.then_some((space, side, other as f64))
}

fn spaces(house: &House, kind: &str) -> Vec<usize> {
    (0..house.spaces.len())
        .filter(|&i| house.spaces[i].kind == kind && !house.spaces[i].counted)
        .collect()
}

fn one_of(list: &[usize], random: &mut Random) -> Option<usize> {
    (!list.is_empty()).then(|| random.pick(list))
}

fn upper(house: &House, random: &mut Random) -> Option<usize> {
    let first = house.levels.iter().position(|(_, below)| !below)?;
    let list: Vec<usize> = (first + 1..house.levels.len())
        .filter(|&level| house.spaces.iter().any(|space| space.level == level && space.counted))
        .collect();
    one_of(&list, random)
}

fn applied(
    cause: &str,
    house: &House,
    sketch: &Sketch,
    plain: f64,
    misread: Option<(usize, usize, f64)>,
    random: &mut Random,
) -> Option<(f64, Vec<String>)> {
    let name = |i: usize| house.spaces[i].name;
    let net = |i: usize| house.net(i, |i| sketch.areas[i]);
    let is_below = |i: usize| house.levels[house.spaces[i].level].1;
    let counted = |list: Vec<usize>, random: &mut Random| {
        let i = one_of(&list, random)?;
        Some((plain + net(i), vec![format!("counted: {}", name(i))]))
    };
    let level_taken = |share: f64, words: &str, random: &mut Random| {
        let level = upper(house, random)?;
        let first = (0..level).rev().find(|&below| !house.levels[below].1)?;
        let own = sketch.level(house, level);
        let taken = share * sketch.whole_outline(house, first);
        Some((plain - own + taken, vec![format!("level: {} {words}", house.levels[level].0)]))
    };
    match cause {
        "garage counted" => counted(spaces(house, "garage"), random),
        "porch counted" => counted(spaces(house, "porch"), random),
        "unfinished room counted" => {
            let list = spaces(house, "unfinished").into_iter().filter(|&i| !is_below(i)).collect();
            counted(list, random)
        }
        "basement counted" => {
            let list = (0..house.spaces.len()).filter(|&i| is_below(i)).collect();
            counted(list, random)
        }
        "gone but counted" => {
            let (_, name, sq_ft) = house.missing?;
            Some((plain + sq_ft as f64, vec![format!("counted: {name}")]))
        }
        "addition left out" => {
            let i = (0..house.spaces.len()).find(|&i| name(i) == "Addition")?;
            Some((plain - net(i), vec![format!("left out: {}", name(i))]))
        }
        "level left out" => {
            let level = upper(house, random)?;
            let own = sketch.level(house, level);
            Some((plain - own, vec![format!("left out: {}", house.levels[level].0)]))
        }
        "opening not deducted" | "low part not deducted" => {
            let kind = if cause.starts_with("opening") { "open" } else { "low" };
            let i = one_of(&spaces(house, kind), random)?;
            Some((plain + sketch.areas[i], vec![format!("not deducted: {}", name(i))]))
        }
        "stair deducted" => {
            let i = one_of(&spaces(house, "stair"), random)?;
            Some((plain - sketch.areas[i], vec![format!("deducted: {}", name(i))]))
        }
        "level at the whole outline below" => {
            level_taken(1.0, "at the whole outline below", random)
        }
        "level at three quarters below" => {
            level_taken(0.75, "at three quarters of the outline below", random)
        }
        "level at half below" => level_taken(0.5, "at half the outline below", random),
        "level twice" => {
            let ground = house.levels.iter().position(|(_, below)| !below)?;
            let level =
                if random.chance(0.5) { upper(house, random).unwrap_or(ground) } else { ground };
            let own = sketch.level(house, level);
            Some((plain + own, vec![format!("level: {} twice", house.levels[level].0)]))
        }
        "under roof" => {
            let under = (0..house.spaces.len()).filter(|&i| {
                let kinds = ["garage", "porch", "unfinished"];
                !is_below(i) && kinds.contains(&house.spaces[i].kind)
            });
            let list: Vec<usize> = under.collect();
            let all: f64 = list.iter().map(|&i| net(i)).sum();
            (!list.is_empty()).then(|| (plain + all, vec!["under roof".to_owned()]))
        }
        "recess filled in" => part((true, true), house, sketch, plain, random),
        "jog or wing left off" => part((false, true), house, sketch, plain, random),
        "recess not drawn" => part((true, false), house, sketch, plain, random),
        "jog or wing not drawn" => part((false, false), house, sketch, plain, random),
        "face: frame" | "face: inside" => Some((plain, vec![cause.to_owned()])),
        "every wall rounded up" => Some((plain, vec!["rounding: always up".to_owned()])),
        "every wall rounded down" => Some((plain, vec!["rounding: always down".to_owned()])),
        "half foot" | "not rounded" => Some((plain, vec![format!("rounding: {cause}")])),
        "wall misread" => {
            let (space, side, _) = misread?;
            Some((plain, vec![format!("misread: {} side {}", name(space), side + 1)]))
        }
        _ => written(cause, plain, random),
    }
}

/// A recess filled in, or a jog left off, of the main outline: on a sketch of the whole outline, or by drawing the
/// outline without it.
fn part(
    (is_recess, is_drawn): (bool, bool),
    house: &House,
    sketch: &Sketch,
    plain: f64,
    random: &mut Random,
) -> Option<(f64, Vec<String>)> {
    let main = house.spaces.iter().position(|space| space.name == "House")?;
    let walls = &sketch.walls[main];
    let n = walls.len();
    let is_in = |i: usize| {
        let (a, b) = (walls[i % n].way, walls[(i + 1) % n].way);
        // Walked clockwise: a left turn is an inward corner.
        (a + 3) % 4 == b
    };
    let feet = |i: usize| walls[i % n].feet;
    // The area with the corner between a wall and the next moved across the rectangle of the two.
    let without = |i: usize, random: &mut Random| {
        let space = without_corner(&house.spaces[main], (i + 1) % n);
        plain - sketch.areas[main]
            + office::area(&office::walls(&space, sketch.office, None, random))
    };
    if is_recess {
        let list: Vec<usize> = (0..n).filter(|&i| is_in(i)).collect();
        let i = one_of(&list, random)?;
        let mut labels = vec![format!("filled in: House side {}", i + 1)];
        // A recess between two inward corners goes by either.
        for other in [i + 1, i + n - 1] {
            if is_in(other) {
                labels.push(format!("filled in: House side {}", other % n + 1));
            }
        }
        let total = if is_drawn { plain + feet(i) * feet(i + 1) } else { without(i, random) };
        return Some((total, labels));
    }
    let stands_out = |i: &usize| {
        let i = *i;
        let (out, before, after) = (!is_in(i) && !is_in(i + n - 1), is_in(i + n - 2), is_in(i + 1));
        out && match (before, after) {
            (true, true) => true,
            (true, false) => feet(i + n - 1) < feet(i + 1),
            (false, true) => feet(i + 1) < feet(i + n - 1),
            (false, false) => false,
        }
    };
    let list: Vec<usize> = (0..n).filter(stands_out).collect();
    let i = one_of(&list, random)?;
    let (before, after) = (feet(i + n - 1), feet(i + 1));
    let total = if is_drawn {
        plain - feet(i) * before.min(after)
    } else {
        without(if before < after { i + n - 1 } else { i }, random)
    };
    Some((total, vec![format!("left off: House side {}", i + 1)]))
}

/// A space with one corner moved across the rectangle of its two walls, and walls that then lie in one line joined.
fn without_corner(space: &Space, at: usize) -> Space {
    let mut corners = space.corners.clone();
    let around = |corners: &[Corner], i: usize| {
        let n = corners.len();
        (corners[(i + n - 1) % n], corners[(i + 1) % n])
    };
    let (before, after) = around(&corners, at);
    let moved = corners[at];
    corners[at] = (before.0 + after.0 - moved.0, before.1 + after.1 - moved.1);
    let in_line = |corners: &[Corner], i: usize| {
        let (before, after) = around(corners, i);
        (before.0 == corners[i].0 && corners[i].0 == after.0)
            || (before.1 == corners[i].1 && corners[i].1 == after.1)
    };
    while let Some(i) = (0..corners.len()).find(|&i| in_line(&corners, i)) {
        corners.remove(i);
    }
    Space { corners, ..space.clone() }
}

/// A total written down wrong.
fn written(cause: &str, plain: f64, random: &mut Random) -> Option<(f64, Vec<String>)> {
    let total = plain.round() as i64;
    let digits = total.to_string().into_bytes();
    let number = |digits: &[u8]| String::from_utf8_lossy(digits).parse::<i64>().ok();
    let (written, label) = match cause {
        "digits of the total swapped" => {
            let i = random.between(0, digits.len() as i64 - 2) as usize;
            let mut swapped = digits.clone();
            swapped.swap(i, i + 1);
            (number(&swapped).filter(|_| swapped[0] != b'0')?, "digits swapped")
        }
        "one digit of the total" => {
            let i = random.between(0, digits.len() as i64 - 1) as usize;
            let mut other = digits.clone();
            other[i] = b'0' + random.between(i64::from(i == 0), 9) as u8;
            (number(&other)?, "one digit")
        }
        "ten times" => (10 * total, "ten times"),
        "a tenth" => (total / 10, "a tenth"),
        "total rounded to 10" => ((total + 5) / 10 * 10, "rounded to 10"),
        "total rounded to 100" => ((total + 50) / 100 * 100, "rounded to 100"),
        "total twice" => (2 * total, "twice"),
        "square meters" => ((plain * 0.092_903_04).round() as i64, "square metres"),
        other => panic!("no cause is called {other}"),
    };
    (written != total).then(|| (written as f64, vec![format!("total: {label}")]))
}

/// A total drawn uniformly between 0.70 and 1.35 of the house, but not within 5 % of it: no known cause.
pub(crate) fn none(house: &House, random: &mut Random) -> Record {
    loop {
        let share = random.real(0.70, 1.35);
        if (share - 1.0).abs() >= 0.05 {
            return Record { sq_ft: (share * house.measured()).round() as i64, labels: Vec::new() };
        }
    }
}
