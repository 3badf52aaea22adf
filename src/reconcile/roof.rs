//! Compares an outline from a map with the walls: how far the roof overhangs, and where its shape differs.
//!
//! A map usually shows the roof from above. It is placed over the walls where it fits best. It affects no area,
//! figure or cause.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    reason = "a roof on a map is good to half a foot; what is printed of it is rounded to a tenth or a whole number"
)]

use crate::areas::Areas;
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::fit::{self, Growth, Loose, Pose};
use crate::geometry::overlap::{Patch, Ring, perimeter, signed_area};
use crate::house::{Kind, ReferenceOutline};
use crate::units::area::Area;
use crate::units::length::Length;

/// The smallest and the largest overhang of an ordinary eave, in feet.
///
/// National models of American homes take 2 ft for every house (NREL ResStock, `housing_characteristics/Eaves.tsv`);
/// covenants ask for 18 to 20 in at eaves and 12 in at rakes. From 0.5 to 2.5 ft is our reading of both.
pub(crate) const ORDINARY_EAVE_FT: (f64, f64) = (0.5, 2.5);
/// The largest eave that is tried while searching for the best position, in feet.
const WIDEST_EAVE_FT: f64 = 4.0;
/// The smallest differing part that is reported, in square feet.
const LEAST_PART_SQ_FT: f64 = 20.0;
/// A difference no wider than this, in feet, is a strip along a wall: an eave that is wider on one side.
const STRIP_FT: f64 = 1.0;
/// Lines closer together than this, in feet, count as the same line.
const NEARLY_FT: f64 = 0.25;
/// The smallest mean width, in feet, of a part beyond such a strip.
const LEAST_PART_WIDTH_FT: f64 = 1.0;
/// The most parts that are reported.
const MOST_PARTS: usize = 6;
/// The most spaces besides those of the outline that may or may not be under the roof.
const MOST_BESIDE: usize = 6;
/// The most side comparisons in searching for the best position, for all maps of a file together.
const MOST_SIDES_LOOKED_AT: usize = 600_000;

/// An outline from a map and its comparison with the walls.
#[derive(Clone, Debug)]
pub struct MapReport {
    name: String,
    area: Option<Area>,
    comparison: Option<RoofComparison>,
}

impl MapReport {
    /// Its name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its area; `None` if it does not close or crosses itself.
    #[must_use]
    pub fn area(&self) -> Option<Area> {
        self.area
    }

    /// Its comparison with the walls; `None` if it has no area or there are no walls for it.
    #[must_use]
    pub fn comparison(&self) -> Option<&RoofComparison> {
        self.comparison.as_ref()
    }
}

/// A roof placed over the walls where it fits best.
///
/// # Units
///
/// Feet and square feet; degrees.
#[derive(Clone, Debug, PartialEq)]
pub struct RoofComparison {
    level: usize,
    under: Vec<usize>,
    roof_sq_ft: f64,
    walls_sq_ft: f64,
    eave_ft: f64,
    fitted_eave_ft: f64,
    fit: f64,
    turned_degrees: f64,
    corners: Vec<(i64, i64)>,
    parts: Vec<RoofPart>,
}

impl RoofComparison {
    /// The index of the level that it is compared with.
    pub(crate) fn level(&self) -> usize {
        self.level
    }

    /// The indices of the spaces assumed to be under the roof: the choice that fits best.
    pub(crate) fn under(&self) -> &[usize] {
        &self.under
    }

    /// The area of the map's outline, in square feet.
    #[must_use]
    pub fn roof_sq_ft(&self) -> f64 {
        self.roof_sq_ft
    }

    /// The area inside the outside walls under the roof, including courts.
    #[must_use]
    pub fn walls_sq_ft(&self) -> f64 {
        self.walls_sq_ft
    }

    /// The overhang in feet that a roof of this area would have if it were the same all around: t of A + P·t + 4·t²,
    /// where A is the area of the walls and P their perimeter. (4 is for square corners; others have the sum of
    /// tan(θ/2) over their turns.) Negative if the map's outline is smaller than the walls.
    #[must_use]
    pub fn eave_ft(&self) -> f64 {
        self.eave_ft
    }

    /// The overhang, in feet, at which the walls offset outward fit the roof outline best. Unlike
    /// [`eave_ft`](Self::eave_ft), it does not come from the areas, which would be distorted by a part that only one of
    /// the two has.
    #[must_use]
    pub fn fitted_eave_ft(&self) -> f64 {
        self.fitted_eave_ft
    }

    /// Whether [`eave_ft`](Self::eave_ft) is an ordinary eave, from 0.5 to 2.5 ft, to a tenth.
    #[must_use]
    pub fn is_ordinary(&self) -> bool {
        is_ordinary(self.eave_ft)
    }

    /// How well the roof fits the walls with that eave: intersection over union, 1 if they are the same.
    #[must_use]
    pub fn fit(&self) -> f64 {
        self.fit
    }

    /// How far the map's outline was rotated to fit best: degrees counterclockwise, from -180 to 180.
    #[must_use]
    pub fn turned_degrees(&self) -> f64 {
        self.turned_degrees
    }

    /// The corners of the map's outline in that position on the level, east then north in nanometers.
    pub(crate) fn corners(&self) -> &[(i64, i64)] {
        &self.corners
    }

    /// The parts where the roof's shape differs from that of the walls with their eave, the largest first.
    #[must_use]
    pub fn parts(&self) -> &[RoofPart] {
        &self.parts
    }
}

/// Whether this overhang is an ordinary eave.
pub(crate) fn is_ordinary(eave_ft: f64) -> bool {
    let tenths = (eave_ft * 10.0).round();
    (ORDINARY_EAVE_FT.0 * 10.0..=ORDINARY_EAVE_FT.1 * 10.0).contains(&tenths)
}

/// An area that only one of the two covers.
#[derive(Clone, Debug, PartialEq)]
pub struct RoofPart {
    only_on_map: bool,
    sq_ft: f64,
    size_ft: Option<(f64, f64)>,
    side: Direction,
    beside: usize,
    corners: Vec<(i64, i64)>,
}

impl RoofPart {
    /// Whether only the map has it; `false` means that only the walls have it.
    #[must_use]
    pub fn is_only_on_map(&self) -> bool {
        self.only_on_map
    }

    /// Its area, in square feet.
    #[must_use]
    pub fn sq_ft(&self) -> f64 {
        self.sq_ft
    }

    /// Its size from east to west, then from north to south, in feet; `None` unless it is about an axis-parallel
    /// rectangle.
    #[must_use]
    pub fn size_ft(&self) -> Option<(f64, f64)> {
        self.size_ft
    }

    /// The side of the house on which it lies.
    #[must_use]
    pub fn side(&self) -> Direction {
        self.side
    }

    /// The index of the space nearest to it.
    pub(crate) fn beside(&self) -> usize {
        self.beside
    }

    /// Its corners on the level, east then north in nanometers.
    pub(crate) fn corners(&self) -> &[(i64, i64)] {
        &self.corners
    }
}

/// A part on the map that was not walked, at the size of its walls: its roof less the fitted eave.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct UnwalkedPart {
    /// Its size from east to west, then north to south, in feet.
    pub(crate) size_ft: (f64, f64),
    pub(crate) side: Direction,
    /// The index of the space nearest to it.
    pub(crate) beside: usize,
}

impl UnwalkedPart {
    /// Its area in square feet, computed from the whole feet in which its size is shown.
    pub(crate) fn sq_ft(&self) -> f64 {
        self.size_ft.0.round() * self.size_ft.1.round()
    }
}

impl RoofComparison {
    /// The parts that project from the walls and were not walked, without their eaves. A roof over an addition has an
    /// eave at each of its two ends; where it meets the house, the eave of the house was already subtracted.
    pub(super) fn unwalked(&self) -> impl Iterator<Item = UnwalkedPart> {
        let eave = self.fitted_eave_ft.max(0.0);
        let parts = self.parts.iter().filter(|part| part.only_on_map);
        parts.filter_map(move |part| {
            let (east, north) = part.size_ft?;
            let size_ft = match part.side.axis() {
                Axis::North => (east - 2.0 * eave, north),
                Axis::East => (east, north - 2.0 * eave),
            };
            let is_room = size_ft.0 > 2.0 && size_ft.1 > 2.0;
            is_room.then_some(UnwalkedPart { size_ft, side: part.side, beside: part.beside })
        })
    }
}

/// Compares every outline from a map with the walls.
pub(super) fn reports(areas: &Areas) -> Vec<MapReport> {
    let house = areas.house();
    let count = house.map_outlines().count().max(1);
    let share = MOST_SIDES_LOOKED_AT.checked_div(count).unwrap_or(0);
    house
        .map_outlines()
        .map(|outline| MapReport {
            name: outline.name.clone(),
            area: outline.outline.as_ref().map(|outline| outline.area()),
            comparison: compared(areas, outline, share),
        })
        .collect()
}

/// The walls that may be under a roof.
struct Candidates {
    level: usize,
    /// The spaces that the outline is of.
    named: Vec<usize>,
    /// Other spaces of the level that may be under the same roof: those of a kind that usually has one, that lie in no
    /// other space and are not marked `detached`.
    beside: Vec<usize>,
}

impl Candidates {
    fn of(areas: &Areas, of: &[usize]) -> Option<Candidates> {
        let house = areas.house();
        let stands = |&i: &usize| house.spaces[i].parent.is_none() && !house.spaces[i].by_itself;
        let counted = (0..house.spaces.len())
            .filter(|&i| house.spaces[i].counted && !house.is_below_grade(i) && stands(&i));
        let named: Vec<usize> = if of.is_empty() { counted.collect() } else { of.to_vec() };
        let level = house.spaces[*named.first()?].level;
        let named: Vec<usize> =
            named.into_iter().filter(|&i| house.spaces[i].level == level).collect();
        let mut beside: Vec<usize> = (0..house.spaces.len())
            .filter(|i| house.spaces[*i].level == level && stands(i) && !named.contains(i))
            .filter(|&i| has_roof(house.spaces[i].kind))
            .collect();
        let area = |i: &usize| areas.spaces[*i].outside().area();
        beside.sort_by_key(|i| std::cmp::Reverse(area(i)));
        beside.truncate(MOST_BESIDE);
        Some(Candidates { level, named, beside })
    }

    /// The spaces of each choice; the first choice has only the spaces that the outline is of.
    fn choices(&self, most: usize) -> impl Iterator<Item = Vec<usize>> {
        let all = 1_usize << self.beside.len();
        (0..all.min(most)).map(|bits| {
            let chosen = self.beside.iter().enumerate().filter(|(k, _)| bits >> k & 1 == 1);
            self.named.iter().copied().chain(chosen.map(|(_, &space)| space)).collect()
        })
    }
}

/// Whether a space of this kind usually has a roof.
fn has_roof(kind: Kind) -> bool {
    kind.has_walls() && kind != Kind::Outbuilding
        || matches!(kind, Kind::Carport | Kind::Porch | Kind::Breezeway)
}

/// The walls of some spaces as one ring, with its area as a function of the offset.
struct Footprint {
    spaces: Vec<usize>,
    ring: Ring,
    growth: Growth,
}

impl Footprint {
    /// The footprint of these spaces; `None` if they are not connected.
    fn of(areas: &Areas, spaces: Vec<usize>) -> Option<Footprint> {
        let patches: Vec<Patch> = spaces.iter().map(|&space| patch(areas, space)).collect();
        let ring = Patch::all_of(&patches).largest_part()?;
        let whole = Patch::of_ring(ring.clone());
        let is_in = |patch: &Patch| whole.common(patch) > 0.5 * patch.area();
        if !patches.iter().all(is_in) {
            return None;
        }
        Some(Footprint { spaces, growth: Growth::of(&ring), ring })
    }

    /// The eave in feet of a roof of this area, but at most the largest that is tried.
    fn laid_out(&self, roof_sq_ft: f64) -> f64 {
        self.growth.to_cover(roof_sq_ft).clamp(0.0, WIDEST_EAVE_FT)
    }
}

/// The outside walls of a space on its level, in feet.
fn patch(areas: &Areas, space: usize) -> Patch {
    let (at, start) = (areas.house().spaces[space].at, areas.outside.spaces[space].start);
    Patch::new(areas.spaces[space].outside(), (at.0 + start.0, at.1 + start.1))
}

fn compared(areas: &Areas, drawn: &ReferenceOutline, looked_at: usize) -> Option<RoofComparison> {
    let outline = drawn.outline.as_ref()?;
    let candidates = Candidates::of(areas, &drawn.of)?;
    let foot = Length::FOOT.nm() as f64;
    let feet = |(east, north, _): (i64, i64, usize)| [east as f64 / foot, north as f64 / foot];
    let mut ring: Ring = outline.flattened().into_iter().map(feet).collect();
    if outline.turn() < 0 {
        ring.reverse();
    }
    let roof = Loose::new(&ring);
    let sides = candidates.named.iter().map(|&i| areas.spaces[i].outside().vectors().len());
    let mut looks = looked_at.checked_div(ring.len() + sides.sum::<usize>() + 8).unwrap_or(0);
    // About 150 poses find the best position of one choice.
    let choices = candidates.choices(looks.checked_div(150).unwrap_or(0).max(1));
    let footprints: Vec<Footprint> =
        choices.filter_map(|spaces| Footprint::of(areas, spaces)).collect();
    let each = looks.checked_div(footprints.len() + 1).unwrap_or(0);
    let mut best: Option<(&Footprint, (Pose, f64))> = None;
    for footprint in &footprints {
        let over = fit::grown(&footprint.ring, footprint.laid_out(roof.area()));
        let turns = turns(areas, &roof, &footprint.ring);
        let mut share = each;
        let found = roof.best(&over, &turns, &mut share);
        looks -= each - share;
        // Another space under the roof has to improve the fit clearly.
        if best.as_ref().is_none_or(|(_, (_, fit))| found.1 > fit + 0.005) {
            best = Some((footprint, found));
        }
    }
    let (footprint, found) = best?;
    let (eave_ft, pose, fit) = with_eave(&roof, footprint, found, &mut looks);
    let degrees = pose.degrees - 360.0 * (pose.degrees / 360.0).round();
    let corners = roof.corners(pose);
    Some(RoofComparison {
        level: candidates.level,
        under: footprint.spaces.clone(),
        roof_sq_ft: roof.area(),
        walls_sq_ft: footprint.growth.area,
        eave_ft: footprint.growth.to_cover(roof.area()),
        fitted_eave_ft: eave_ft,
        fit,
        turned_degrees: degrees,
        parts: parts(areas, footprint, &corners, eave_ft),
        corners: corners.iter().map(|p| (nm(p[0]), nm(p[1]))).collect(),
    })
}

/// The rotations that may bring the roof over the walls: only the one nearest to true north if the file gives that.
fn turns(areas: &Areas, roof: &Loose, walls: &Ring) -> Vec<f64> {
    let turns = roof.turns(walls);
    let Some(bearing) = areas.house().particulars.true_north else { return turns.to_vec() };
    let (east, north) = bearing.unit_vector();
    // The file's north has this bearing: that direction on the map is up on the plan.
    let by_bearing = libm::atan2(east, north).to_degrees();
    let off = |turn: f64| {
        let apart = (turn - by_bearing).rem_euclid(360.0);
        apart.min(360.0 - apart)
    };
    turns.into_iter().min_by(|a, b| off(*a).total_cmp(&off(*b))).into_iter().collect()
}

/// The eave, the pose and the fit, found together.
///
/// A part that only one of them has distorts the eave computed from the areas; the fit depends on most of the
/// walls.
fn with_eave(
    roof: &Loose,
    footprint: &Footprint,
    (pose, fit): (Pose, f64),
    looks: &mut usize,
) -> (f64, Pose, f64) {
    let mut best = (footprint.laid_out(roof.area()), pose, fit);
    let mut step = 1.0;
    while step > 0.04 && *looks > 0 {
        let mut is_better = false;
        for eave in [best.0 - step, best.0 + step] {
            if !(0.0..=WIDEST_EAVE_FT).contains(&eave) {
                continue;
            }
            let over = fit::grown(&footprint.ring, eave);
            let area = over.area();
            let start = (best.1, roof.fit(best.1, &over, area));
            let (pose, fit) = roof.refined(start, &over, area, [0.5, 0.25], looks);
            if fit > best.2 + 1e-6 {
                (best, is_better) = ((eave, pose, fit), true);
            }
        }
        if !is_better {
            step /= 2.0;
        }
    }
    best
}

/// The parts that only the map has, beyond the walls with their eave, and those that only the walls have, beyond the
/// map. (The walls are taken without an eave there.)
fn parts(areas: &Areas, footprint: &Footprint, corners: &Ring, eave_ft: f64) -> Vec<RoofPart> {
    let roof = Patch::of_ring(corners.clone());
    let walls = Patch::of_ring(footprint.ring.clone());
    let with_eave = fit::grown(&footprint.ring, eave_ft);
    let only_on_map = wide_parts(&roof, &with_eave).into_iter().map(|part| (true, part));
    let only_walls = wide_parts(&walls, &roof).into_iter().map(|part| (false, part));
    let mut parts: Vec<RoofPart> = only_on_map
        .chain(only_walls)
        .map(|(only_on_map, (ring, sq_ft))| part(areas, footprint, only_on_map, &ring, sq_ft))
        .filter(|part| part.sq_ft >= LEAST_PART_SQ_FT)
        .collect();
    parts.sort_by(|a, b| b.sq_ft.total_cmp(&a.sq_ft));
    parts.truncate(MOST_PARTS);
    parts
}

/// The parts of one region beyond the other that are more than a strip along a wall: each as a ring, with its area in
/// square feet.
fn wide_parts(one: &Patch, other: &Patch) -> Vec<(Ring, f64)> {
    let rest = one.less(other);
    // Leaves out where the two nearly coincide, only inches apart, so that a part has its own size.
    let clear = one.less(&widened(other, NEARLY_FT));
    let is_wide =
        |ring: &&Ring| 2.0 * signed_area(ring) / perimeter(ring).max(1.0) > LEAST_PART_WIDTH_FT;
    let mut parts = Vec::new();
    for ring in one.less(&widened(other, STRIP_FT)).outer_rings().filter(is_wide) {
        // The part beyond the strip, with the piece of the strip before it.
        let round = fit::grown(ring, STRIP_FT + 0.01);
        if let Some(shape) = clear.meet(&round).largest_part() {
            parts.push((shape, rest.meet(&round).area()));
        }
    }
    parts
}

/// The region offset outward by `feet`.
fn widened(patch: &Patch, feet: f64) -> Patch {
    let grown: Vec<Patch> = patch.outer_rings().map(|ring| fit::grown(ring, feet)).collect();
    Patch::all_of(&grown)
}

fn part(
    areas: &Areas,
    footprint: &Footprint,
    only_on_map: bool,
    ring: &Ring,
    sq_ft: f64,
) -> RoofPart {
    let middle = fit::centroid(ring);
    let house = Patch::of_ring(footprint.ring.clone()).bounds();
    let off = |axis: usize| {
        let (low, high) = house[axis];
        (middle[axis] - (low + high) / 2.0) / (high - low).max(1.0)
    };
    let side = match (off(0), off(1)) {
        (east, north) if north.abs() >= east.abs() && north >= 0.0 => Direction::North,
        (east, north) if north.abs() >= east.abs() => Direction::South,
        (east, _) if east >= 0.0 => Direction::East,
        _ => Direction::West,
    };
    let bounds = Patch::of_ring(ring.clone()).bounds();
    let (wide, deep) = (bounds[0].1 - bounds[0].0, bounds[1].1 - bounds[1].0);
    let beside = footprint.spaces.iter().copied().min_by(|&a, &b| {
        distance(&patch(areas, a), middle).total_cmp(&distance(&patch(areas, b), middle))
    });
    RoofPart {
        only_on_map,
        sq_ft,
        size_ft: (sq_ft > 0.85 * wide * deep).then_some((wide, deep)),
        side,
        beside: beside.unwrap_or(0),
        corners: ring.iter().map(|p| (nm(p[0]), nm(p[1]))).collect(),
    }
}

/// Feet in nanometers.
fn nm(feet: f64) -> i64 {
    (feet * Length::FOOT.nm() as f64).round() as i64
}

/// The distance of a point from the bounding box of some walls.
fn distance(patch: &Patch, from: [f64; 2]) -> f64 {
    let bounds = patch.bounds();
    let off = |axis: usize| (bounds[axis].0 - from[axis]).max(from[axis] - bounds[axis].1).max(0.0);
    libm::hypot(off(0), off(1))
}
