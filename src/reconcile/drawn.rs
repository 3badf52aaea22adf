//! The record's own sketch, or the plan's: its area against its own total, its walls against ours.

use std::sync::Arc;

use crate::Sound;
use crate::area::Area;
use crate::areas::Areas;
use crate::diagnostic::Faults;
use crate::house::outline::{Outline, Vector};
use crate::house::{DrawnOutline, House};
use crate::length::Length;
use crate::reconcile::{Figure, Ground};
use crate::sketch::Drawn;
use crate::walls::Walls;

/// Somebody else's outline beside ours.
#[derive(Clone, Debug)]
pub struct OutlineReport {
    pub(crate) drawn: Drawn,
    pub(crate) name: String,
    /// The space it is compared with.
    pub(crate) space: Option<String>,
    /// None if it does not close.
    pub(crate) area: Option<Area>,
    pub(crate) misses: (Length, Length),
    /// Its walls matched to ours one to one.
    pub(crate) same_corners: bool,
    pub(crate) matched: Vec<MatchedSide>,
    /// Walls of theirs with no wall of ours beside them, by number.
    pub(crate) only_theirs: Vec<(usize, String)>,
    /// Walls of ours with none of theirs, by number.
    pub(crate) only_ours: Vec<(usize, String)>,
}

impl OutlineReport {
    /// Whose it is.
    pub fn drawn(&self) -> Drawn {
        self.drawn
    }

    /// Its name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its area; none if it does not close.
    pub fn area(&self) -> Option<Area> {
        self.area
    }

    /// Walls of theirs beside walls of ours.
    pub fn matched(&self) -> &[MatchedSide] {
        &self.matched
    }

    /// Whether every wall was matched.
    pub fn same_corners(&self) -> bool {
        self.same_corners
    }
}

/// A wall of ours and the wall of theirs that goes with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MatchedSide {
    pub(crate) ours: usize,
    pub(crate) ours_typed: String,
    pub(crate) theirs: usize,
    pub(crate) measured: Length,
    pub(crate) drawn: Length,
}

impl MatchedSide {
    /// The number of our side, from 1; of several in one line the first.
    pub fn ours(&self) -> usize {
        self.ours
    }

    /// The number of their side, from 1; of several in one line the first.
    pub fn theirs(&self) -> usize {
        self.theirs
    }

    /// Our length at their face; of a curved wall its chord.
    pub fn measured(&self) -> Length {
        self.measured
    }

    /// Their length.
    pub fn drawn(&self) -> Length {
        self.drawn
    }
}

/// Every outline that is not ours, compared with the walls at its figure's face.
pub(super) fn reports(sound: &Sound, areas: &Areas) -> Result<Vec<OutlineReport>, Faults> {
    let house = sound.house();
    let mut reports = Vec::new();
    for drawn in &house.drawn {
        let figure = sound
            .sketch()
            .figures
            .iter()
            .find(|figure| Figure::drawn(&figure.figure) == Some(drawn.drawn));
        let face = figure.and_then(|figure| figure.figure.basis.face).unwrap_or_default();
        let walls = match face {
            crate::sketch::Face::Outside => Arc::clone(&areas.outside),
            face => Arc::new(Walls::of(sound, face)?),
        };
        reports.push(report(house, drawn, &walls));
    }
    Ok(reports)
}

fn report(house: &House, drawn: &DrawnOutline, walls: &Walls) -> OutlineReport {
    let misses = drawn.walk.misclosure();
    let mut report = OutlineReport {
        drawn: drawn.drawn,
        name: drawn.name.clone(),
        space: None,
        area: drawn.outline.as_ref().map(Outline::area),
        misses: (Length::from_nm(misses.north), Length::from_nm(misses.east)),
        same_corners: false,
        matched: Vec::new(),
        only_theirs: Vec::new(),
        only_ours: Vec::new(),
    };
    let theirs: Vec<Vector> = drawn.walk.sides.iter().map(|side| side.shape.vector()).collect();
    let theirs = in_line(&theirs);
    let theirs_all = |skip: &dyn Fn(usize) -> bool| -> Vec<(usize, String)> {
        let sides = drawn.sides.iter().enumerate().filter(|(i, _)| !skip(*i));
        sides.map(|(_, side)| (side.number, side.typed.to_string())).collect()
    };
    let [space] = drawn.of[..] else {
        report.only_theirs = theirs_all(&|_| false);
        return report;
    };
    let here = &house.spaces[space];
    report.space = Some(here.name.clone());
    let ours = in_line(&merged(house, space, walls));
    let pairs = matched(&vectors_of(&ours), &vectors_of(&theirs)).pairs;
    report.same_corners = pairs.len() == ours.len() && pairs.len() == theirs.len();
    report.only_theirs =
        theirs_all(&|i| pairs.iter().any(|&(_, wall)| theirs[wall].sides.contains(&i)));
    let unmatched = here
        .sides
        .iter()
        .enumerate()
        .filter(|(i, _)| !pairs.iter().any(|&(wall, _)| ours[wall].sides.contains(i)));
    report.only_ours = unmatched.map(|(_, side)| (side.number, side.typed.to_string())).collect();
    report.matched = pairs
        .iter()
        .map(|&(our, their)| {
            let (our, their) = (&ours[our], &theirs[their]);
            let typed = our.sides.iter().map(|&i| here.sides[i].typed.as_str());
            MatchedSide {
                ours: here.sides[our.sides[0]].number,
                ours_typed: typed.collect::<Vec<&str>>().join(" + "),
                theirs: drawn.sides[their.sides[0]].number,
                measured: our.vector.chord_length(),
                drawn: their.vector.chord_length(),
            }
        })
        .collect();
    report
}

/// Sides that run on in one line, as one wall.
struct Wall {
    vector: Vector,
    sides: Vec<usize>,
}

/// The walls of an outline, sides that follow each other in one line put together.
fn in_line(sides: &[Vector]) -> Vec<Wall> {
    let mut walls: Vec<Wall> = Vec::new();
    for (i, &side) in sides.iter().enumerate() {
        match walls.last_mut() {
            Some(last) if run_on(last.vector, side) => {
                last.vector.east += side.east;
                last.vector.north += side.north;
                last.sides.push(i);
            }
            _ => walls.push(Wall { vector: side, sides: vec![i] }),
        }
    }
    let wraps = walls.len() > 1 && run_on(walls[walls.len() - 1].vector, walls[0].vector);
    if let Some(last) = walls.pop_if(|_| wraps) {
        walls[0].vector.east += last.vector.east;
        walls[0].vector.north += last.vector.north;
        walls[0].sides.splice(0..0, last.sides);
    }
    walls
}

/// Whether two straight sides run the same way along one axis.
fn run_on(a: Vector, b: Vector) -> bool {
    let straight = a.rise == 0 && b.rise == 0 && (a.east == 0 || a.north == 0);
    straight
        && (a.east.signum(), a.north.signum()) == (b.east.signum(), b.north.signum())
        && (b.east == 0 || b.north == 0)
}

fn vectors_of(walls: &[Wall]) -> Vec<Vector> {
    walls.iter().map(|wall| wall.vector).collect()
}

/// Our sides at a face, the pieces of each put together again.
fn merged(house: &House, space: usize, walls: &Walls) -> Vec<Vector> {
    let at = &walls.spaces[space];
    let mut sides = vec![Vector::default(); house.spaces[space].sides.len()];
    for (side, vector) in at.walk.sides.iter().zip(at.outline.vectors()) {
        if let Some(source) = side.source {
            sides[source].east += vector.east;
            sides[source].north += vector.north;
            sides[source].rise = vector.rise;
        }
    }
    sides
}

/// Our sides beside theirs, by their places.
type Pairs = Vec<(usize, usize)>;

/// Which walls go together.
#[derive(Default)]
struct Matching {
    pairs: Pairs,
    /// Theirs is walked the other way round.
    reversed: bool,
}

/// Pairs of walls, ours and theirs, that run the same way round: all of them if the corners are the
/// same, else the longest run that both have.
fn matched(ours: &[Vector], theirs: &[Vector]) -> Matching {
    let mut best: Option<(usize, i128, Matching)> = None;
    for reversed in [false, true] {
        let walk: Vec<(usize, Vector)> = if reversed {
            theirs.iter().enumerate().rev().map(|(i, v)| (i, turned_round(v))).collect()
        } else {
            theirs.iter().copied().enumerate().collect()
        };
        for pairs in runs(ours, &walk) {
            let apart = |&(a, b): &(usize, usize)| {
                i128::from((ours[a].chord_length() - theirs[b].chord_length()).nm().abs())
            };
            let difference: i128 = pairs.iter().map(apart).sum();
            let better = best.as_ref().is_none_or(|(count, off, _)| {
                pairs.len() > *count || pairs.len() == *count && difference < *off
            });
            if better {
                best = Some((pairs.len(), difference, Matching { pairs, reversed }));
            }
        }
    }
    best.map(|(.., matching)| matching).unwrap_or_default()
}

/// The same wall walked the other way.
fn turned_round(vector: &Vector) -> Vector {
    Vector { east: -vector.east, north: -vector.north, rise: -vector.rise }
}

/// The longest common runs of directions, both walks going round and round.
fn runs(ours: &[Vector], theirs: &[(usize, Vector)]) -> Vec<Pairs> {
    let (n, m) = (ours.len(), theirs.len());
    let longest = n.min(m);
    let way = |v: &Vector| (v.east.signum(), v.north.signum(), v.rise != 0);
    let mut lengths = vec![0_usize; 2 * m];
    let mut found: Vec<(usize, usize, usize)> = Vec::new();
    let mut best = 1;
    for i in 0..2 * n {
        for j in (0..2 * m).rev() {
            let same = way(&ours[i % n]) == way(&theirs[j % m].1);
            let before = if j > 0 { lengths[j - 1] } else { 0 };
            lengths[j] = if same { (before + 1).min(longest) } else { 0 };
            if lengths[j] > best {
                best = lengths[j];
                found.clear();
            }
            if lengths[j] == best && best > 1 && found.len() < 4 * longest {
                found.push((i, j, best));
            }
        }
    }
    let pairs = |(i, j, length): (usize, usize, usize)| {
        (0..length).rev().map(|k| ((i + 2 * n - k) % n, theirs[(j + 2 * m - k) % m].0)).collect()
    };
    found.into_iter().map(pairs).collect()
}

/// The figure's own outline of a space.
pub(super) struct OwnOutline {
    pub(super) outline: Outline,
    /// Its walls stand in the order of ours, one for each.
    pub(super) is_matched: bool,
}

/// The figure's own outline of a space, where exactly one is given and it closes; in the order of our
/// walls where the corners are the same.
pub(super) fn own_outline(
    sound: &Sound,
    ground: &Ground<'_>,
    space: usize,
    drawn: Drawn,
) -> Option<OwnOutline> {
    let house = sound.house();
    let mut of_space =
        house.drawn.iter().filter(|outline| outline.drawn == drawn && outline.of == [space]);
    let own = of_space.next().filter(|_| of_space.next().is_none())?;
    let outline = own.outline.as_ref()?;
    let theirs = outline.vectors();
    let is_cut = ground.walls.spaces[space].walk.sides.len() != house.spaces[space].sides.len();
    let Matching { pairs, reversed } =
        matched(house.spaces[space].closed.outline.vectors(), theirs);
    let ours = house.spaces[space].sides.len();
    if is_cut || pairs.len() != ours || pairs.len() != theirs.len() {
        return Some(OwnOutline { outline: outline.clone(), is_matched: false });
    }
    let mut vectors = vec![Vector::default(); ours];
    for (our, their) in pairs {
        vectors[our] = if reversed { turned_round(&theirs[their]) } else { theirs[their] };
    }
    let outline = Outline::new(vectors)?;
    Some(OwnOutline { outline, is_matched: true })
}
