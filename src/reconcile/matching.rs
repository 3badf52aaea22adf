//! Matches an outline from a record or a plan with the measured one: compares its area with the published total, and
//! its walls with ours.

use std::sync::Arc;

use crate::areas::Areas;
use crate::areas::at_face::Walls;
use crate::areas::rule::Settings;
use crate::diagnostic::Diagnostics;
use crate::geometry::outline::{Outline, Vector};
use crate::house::House;
use crate::house::ReferenceSource;
use crate::house::SideNumber;
use crate::house::{ReferenceOutline, Side};
use crate::reconcile::{Figure, Ground};
use crate::units::area::Area;
use crate::units::length::Length;

/// An outline from a record, a plan or a map, compared with the measured one.
#[derive(Clone, Debug)]
pub struct OutlineReport {
    pub(crate) drawn: ReferenceSource,
    pub(crate) name: String,
    /// The space it is compared with: its index, and its name, which several spaces may share.
    pub(crate) space: Option<(usize, String)>,
    /// Its area; `None` if it does not close.
    pub(crate) area: Option<Area>,
    pub(crate) misses: (Length, Length),
    /// Whether its walls match ours one to one.
    pub(crate) same_corners: bool,
    pub(crate) matched: Vec<MatchedSide>,
    /// Stretches where its walls are not ours.
    pub(crate) instead: Vec<Substitution>,
}

/// Consecutive walls of ours, and the walls that the other outline has in their place; either list may be empty.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Substitution {
    pub(crate) ours: Vec<(SideNumber, String)>,
    pub(crate) theirs: Vec<(SideNumber, String)>,
}

impl Substitution {
    /// The numbers of our sides, from 1.
    pub fn ours(&self) -> impl Iterator<Item = SideNumber> {
        self.ours.iter().map(|(number, _)| *number)
    }

    /// The numbers of the other outline's sides, from 1.
    pub fn theirs(&self) -> impl Iterator<Item = SideNumber> {
        self.theirs.iter().map(|(number, _)| *number)
    }
}

impl OutlineReport {
    /// Whether it is compared with this space.
    pub(crate) fn is_of_space(&self, space: usize) -> bool {
        self.space.as_ref().is_some_and(|(compared, _)| *compared == space)
    }

    /// Where it comes from: the record, a plan or a map.
    #[must_use]
    pub fn drawn(&self) -> ReferenceSource {
        self.drawn
    }

    /// Its name as typed.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its area; `None` if it does not close.
    #[must_use]
    pub fn area(&self) -> Option<Area> {
        self.area
    }

    /// Its walls that match walls of ours, in our order.
    #[must_use]
    pub fn matched(&self) -> &[MatchedSide] {
        &self.matched
    }

    /// Whether every wall was matched, one to one.
    #[must_use]
    pub fn same_corners(&self) -> bool {
        self.same_corners
    }

    /// The stretches where its walls are not ours and are therefore not matched.
    #[must_use]
    pub fn instead(&self) -> &[Substitution] {
        &self.instead
    }
}

/// A wall of ours and the matching wall of the outline.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MatchedSide {
    pub(crate) ours: SideNumber,
    pub(crate) ours_typed: String,
    pub(crate) theirs: SideNumber,
    pub(crate) measured: Length,
    pub(crate) drawn: Length,
}

impl MatchedSide {
    /// The number of our side, from 1; the first one if several sides lie in one line.
    #[must_use]
    pub fn ours(&self) -> SideNumber {
        self.ours
    }

    /// The number of the other outline's side, from 1; the first one if several sides lie in one line.
    #[must_use]
    pub fn theirs(&self) -> SideNumber {
        self.theirs
    }

    /// Our length at the figure's face; for a curved wall, its chord.
    #[must_use]
    pub fn measured(&self) -> Length {
        self.measured
    }

    /// Its length on the other outline; for a curved wall, its chord.
    #[must_use]
    pub fn drawn(&self) -> Length {
        self.drawn
    }
}

/// Compares every reference outline with the walls at the face of its figure.
pub(super) fn reports(areas: &Areas) -> Result<Vec<OutlineReport>, Diagnostics> {
    let (house, settings) = (areas.house(), areas.settings());
    let mut reports = Vec::new();
    for drawn in house.own_sketches() {
        let figure = house.figures.iter().find(|figure| Figure::drawn(figure) == Some(drawn.drawn));
        let face = figure.and_then(|figure| figure.face).unwrap_or_default();
        let walls = match face {
            crate::house::Face::Outside => Arc::clone(&areas.outside),
            face => Arc::new(Walls::of(house, face)?),
        };
        reports.push(report(house, drawn, &walls, settings));
    }
    Ok(reports)
}

fn report(
    house: &House,
    drawn: &ReferenceOutline,
    walls: &Walls,
    settings: &Settings,
) -> OutlineReport {
    let misses = drawn.traverse.misclosure();
    let mut report = OutlineReport {
        drawn: drawn.drawn,
        name: drawn.name.clone(),
        space: None,
        area: drawn.outline.as_ref().map(Outline::area),
        misses: (Length::from_nm(misses.north), Length::from_nm(misses.east)),
        same_corners: false,
        matched: Vec::new(),
        instead: Vec::new(),
    };
    let [space] = drawn.of[..] else {
        return report;
    };
    let here = &house.spaces[space];
    report.space = Some((space, here.name.clone()));
    let theirs: Vec<Vector> = drawn.traverse.sides.iter().map(|side| side.shape.vector()).collect();
    let theirs = in_line(&theirs);
    let ours = in_line(&merged(house, space, walls));
    let Matching { pairs, reversed } = matched(&vectors_of(&ours), &vectors_of(&theirs));
    report.same_corners = pairs.len() == ours.len() && pairs.len() == theirs.len();
    let apart = |&(our, their): &(usize, usize)| {
        ours[our].vector.chord_length() - theirs[their].vector.chord_length()
    };
    let ring = Ring { ours: ours.len(), theirs: theirs.len(), reversed };
    let pairs =
        drop_pairs_beside_gaps(pairs, &ring, &|pair| settings.is_beyond_rounding(apart(pair)));
    let named = |walls: &[Wall], sides: &[Side], list: &[usize]| -> Vec<(SideNumber, String)> {
        let all = list.iter().flat_map(|&wall| &walls[wall].sides);
        all.map(|&i| (sides[i].number, sides[i].typed.to_string())).collect()
    };
    for gap in gaps(&pairs, &ring) {
        for (our, their) in split(gap, &ours, &theirs, reversed) {
            report.instead.push(Substitution {
                ours: named(&ours, &here.sides, &our),
                theirs: named(&theirs, &drawn.sides, &their),
            });
        }
    }
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

/// Two closed outlines, one of which may be walked in the opposite direction.
struct Ring {
    ours: usize,
    theirs: usize,
    reversed: bool,
}

impl Ring {
    /// The unmatched walls between two matched pairs, in the direction of ours.
    fn between(&self, from: (usize, usize), to: (usize, usize)) -> Gap {
        let along = |from: usize, to: usize, n: usize| -> Vec<usize> {
            let count = (to + n - from - 1) % n;
            (1..=count).map(|k| (from + k) % n).collect()
        };
        let ours = along(from.0, to.0, self.ours);
        let theirs = if self.reversed {
            let mut back = along(to.1, from.1, self.theirs);
            back.reverse();
            back
        } else {
            along(from.1, to.1, self.theirs)
        };
        (ours, theirs)
    }
}

/// Unmatched walls of ours and of the other outline between two matched pairs.
type Gap = (Vec<usize>, Vec<usize>);

/// Removes unreliable pairs: a wall that differs by more than rounding and is next to unmatched walls is not the same
/// wall with another length, but one that is cut off at another point.
fn drop_pairs_beside_gaps(
    mut pairs: Pairs,
    ring: &Ring,
    differs: &dyn Fn(&(usize, usize)) -> bool,
) -> Pairs {
    loop {
        let n = pairs.len();
        let is_beside_a_gap = |i: usize| {
            let is_gap = |from: usize, to: usize| {
                let (ours, theirs) = ring.between(pairs[from], pairs[to]);
                !ours.is_empty() || !theirs.is_empty()
            };
            is_gap((i + n - 1) % n, i) || is_gap(i, (i + 1) % n)
        };
        let stays = |i: &usize| !differs(&pairs[*i]) || !is_beside_a_gap(*i);
        let kept: Pairs = (0..n).filter(stays).map(|i| pairs[i]).collect();
        if kept.len() == n {
            return kept;
        }
        pairs = kept;
    }
}

/// The unmatched walls between the pairs; all walls if there are no pairs.
fn gaps(pairs: &Pairs, ring: &Ring) -> Vec<Gap> {
    let Some(last) = pairs.last() else {
        let theirs = 0..ring.theirs;
        let theirs = if ring.reversed { theirs.rev().collect() } else { theirs.collect() };
        return vec![((0..ring.ours).collect(), theirs)];
    };
    let before = std::iter::once(last).chain(pairs);
    let gaps = before.zip(pairs).map(|(from, to)| ring.between(*from, *to));
    gaps.filter(|(ours, theirs)| !ours.is_empty() || !theirs.is_empty()).collect()
}

/// Divides a gap into as many parts as possible, at the points where both outlines are within a foot of each other.
fn split(gap: Gap, ours: &[Wall], theirs: &[Wall], reversed: bool) -> Vec<Gap> {
    let (mut our, mut their) = gap;
    let way = |walls: &[Wall], list: &[usize], turned: bool| -> Vec<(i64, i64)> {
        let mut at = (0, 0);
        let mut places = vec![at];
        for &wall in list {
            let vector = &walls[wall].vector;
            let vector = if turned { turned_round(vector) } else { *vector };
            at = (at.0 + vector.east, at.1 + vector.north);
            places.push(at);
        }
        places
    };
    let mut parts = Vec::new();
    while !our.is_empty() && !their.is_empty() {
        let (here, there) = (way(ours, &our, false), way(theirs, &their, reversed));
        let meets = |&(i, j): &(usize, usize)| {
            let (a, b) = (here[i], there[j]);
            (a.0 - b.0).abs() <= Length::FOOT.nm() && (a.1 - b.1).abs() <= Length::FOOT.nm()
        };
        let all = (1..here.len()).flat_map(|i| (1..there.len()).map(move |j| (i, j)));
        let Some((i, j)) = all.filter(meets).min_by_key(|(i, j)| (i + j, *i)) else { break };
        parts.push((our.drain(..i).collect(), their.drain(..j).collect()));
    }
    if !our.is_empty() || !their.is_empty() {
        parts.push((our, their));
    }
    parts
}

/// Consecutive sides that continue in one line, as one wall.
struct Wall {
    vector: Vector,
    sides: Vec<usize>,
}

/// The walls of an outline, with consecutive sides in one line joined.
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

/// Whether two straight sides run in the same direction along one axis.
fn run_on(a: Vector, b: Vector) -> bool {
    let straight = a.rise == 0 && b.rise == 0 && (a.east == 0 || a.north == 0);
    straight
        && (a.east.signum(), a.north.signum()) == (b.east.signum(), b.north.signum())
        && (b.east == 0 || b.north == 0)
}

fn vectors_of(walls: &[Wall]) -> Vec<Vector> {
    walls.iter().map(|wall| wall.vector).collect()
}

/// Our sides at a face, with the pieces of each side joined.
fn merged(house: &House, space: usize, walls: &Walls) -> Vec<Vector> {
    let at = &walls.spaces[space];
    let mut sides = vec![Vector::default(); house.spaces[space].sides.len()];
    for (side, vector) in at.traverse.sides.iter().zip(at.outline.vectors()) {
        if let Some(source) = side.source {
            sides[source].east += vector.east;
            sides[source].north += vector.north;
            sides[source].rise = vector.rise;
        }
    }
    sides
}

/// Pairs of walls, ours and theirs, by index.
type Pairs = Vec<(usize, usize)>;

/// Which walls match.
#[derive(Default)]
struct Matching {
    pairs: Pairs,
    /// Whether the other outline is walked in the opposite direction.
    reversed: bool,
}

/// Pairs of matching walls, in the order of ours. If the corners are the same, all walls match. Otherwise the pairs
/// are the alignment of lowest cost: a pair costs the difference of its lengths, an unmatched wall its length.
fn matched(ours: &[Vector], theirs: &[Vector]) -> Matching {
    let mut best: Option<(bool, i128, Matching)> = None;
    for reversed in [false, true] {
        let walk: Vec<(usize, Vector)> = if reversed {
            theirs.iter().enumerate().rev().map(|(i, v)| (i, turned_round(v))).collect()
        } else {
            theirs.iter().copied().enumerate().collect()
        };
        for start in starts(ours, &walk) {
            let turned: Vec<(usize, Vector)> =
                walk[start..].iter().chain(&walk[..start]).copied().collect();
            let (price, pairs) = match one_to_one(ours, &turned) {
                Some(price) => (price, (0..ours.len()).map(|i| (i, turned[i].0)).collect()),
                None => aligned(ours, &turned),
            };
            let is_whole = pairs.len() == ours.len() && pairs.len() == theirs.len();
            let better = best
                .as_ref()
                .is_none_or(|(whole, least, _)| (is_whole, -price) > (*whole, -*least));
            if better {
                best = Some((is_whole, price, Matching { pairs, reversed }));
            }
        }
    }
    best.map(|(.., matching)| matching).unwrap_or_default()
}

/// The wall as walked in the opposite direction.
fn turned_round(vector: &Vector) -> Vector {
    Vector { east: -vector.east, north: -vector.north, rise: -vector.rise }
}

/// Whether two walls run in the same direction and are both straight or both curved.
fn is_alike(a: &Vector, b: &Vector) -> bool {
    let way = |v: &Vector| (v.east.signum(), v.north.signum(), v.rise != 0);
    way(a) == way(b)
}

/// The cost of matching two walls.
fn change(a: &Vector, b: &Vector) -> i128 {
    i128::from((a.chord_length() - b.chord_length()).nm().abs())
}

/// The walls at which the other outline may begin: any wall, or if there are very many, only those most like our
/// first one.
fn starts(ours: &[Vector], theirs: &[(usize, Vector)]) -> Vec<usize> {
    const MOST: usize = 8_000_000;
    let mut all: Vec<usize> = (0..theirs.len()).collect();
    let most = MOST.checked_div(ours.len() * theirs.len()).unwrap_or(0).max(1);
    if let Some(first) = ours.first().filter(|_| all.len() > most) {
        let rank = |&start: &usize| {
            let their = &theirs[start].1;
            (!is_alike(first, their), change(first, their))
        };
        all.sort_by_key(rank);
        all.truncate(most);
    }
    all
}

/// The cost of matching wall for wall; `None` if some pair of walls runs in different directions.
fn one_to_one(ours: &[Vector], theirs: &[(usize, Vector)]) -> Option<i128> {
    let alike = ours.len() == theirs.len()
        && ours.iter().zip(theirs).all(|(our, (_, their))| is_alike(our, their));
    alike.then(|| ours.iter().zip(theirs).map(|(our, (_, their))| change(our, their)).sum())
}

/// The alignment of lowest cost that begins at the first wall of both, and its pairs.
fn aligned(ours: &[Vector], theirs: &[(usize, Vector)]) -> (i128, Pairs) {
    let (n, m) = (ours.len(), theirs.len());
    let whole = |vector: &Vector| i128::from(vector.chord_length().nm());
    // The lowest cost of aligning the rest, from our wall i and their wall j on.
    let mut price = vec![0_i128; (n + 1) * (m + 1)];
    let at = |i: usize, j: usize| i * (m + 1) + j;
    for i in (0..=n).rev() {
        for j in (0..=m).rev() {
            let mut least = if i == n && j == m { 0 } else { i128::MAX };
            if i < n {
                least = least.min(price[at(i + 1, j)] + whole(&ours[i]));
            }
            if j < m {
                least = least.min(price[at(i, j + 1)] + whole(&theirs[j].1));
            }
            if i < n && j < m && is_alike(&ours[i], &theirs[j].1) {
                least = least.min(price[at(i + 1, j + 1)] + change(&ours[i], &theirs[j].1));
            }
            price[at(i, j)] = least;
        }
    }
    let (mut i, mut j) = (0, 0);
    let mut pairs = Pairs::new();
    while i < n && j < m {
        let here = price[at(i, j)];
        let is_pair = is_alike(&ours[i], &theirs[j].1)
            && here == price[at(i + 1, j + 1)] + change(&ours[i], &theirs[j].1);
        if is_pair {
            pairs.push((i, theirs[j].0));
            (i, j) = (i + 1, j + 1);
        } else if here == price[at(i + 1, j)] + whole(&ours[i]) {
            i += 1;
        } else {
            j += 1;
        }
    }
    (price[0], pairs)
}

/// The figure's own outline of a space.
pub(super) struct OwnOutline {
    pub(super) outline: Outline,
    /// Whether its walls are in the order of ours, one for each.
    pub(super) is_matched: bool,
}

/// The figure's own outline of a space, if exactly one is given and it closes. If the corners are the same, it is
/// in the order of our walls.
pub(super) fn own_outline(
    house: &House,
    ground: &Ground<'_>,
    space: usize,
    drawn: ReferenceSource,
) -> Option<OwnOutline> {
    let mut of_space =
        house.drawn.iter().filter(|outline| outline.drawn == drawn && outline.of == [space]);
    let own = of_space.next().filter(|_| of_space.next().is_none())?;
    let outline = own.outline.as_ref()?;
    let theirs = outline.vectors();
    let is_cut = ground.walls.spaces[space].traverse.sides.len() != house.spaces[space].sides.len();
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
