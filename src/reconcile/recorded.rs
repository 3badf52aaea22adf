//! The record's own lengths compared with ours: the area that they give, and how much of the difference comes from
//! each side.

use crate::diagnostic::{Diagnostic, Word, quoted};
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::{Outline, Vector};
use crate::geometry::traverse::{Misclosure, Shape};
use crate::house::FigureKind;
use crate::house::House;
use crate::house::ReferenceSource;
use crate::house::SideNumber;
use crate::house::{ReferenceOutline, Side, Space};
use crate::reconcile::{Figure, Ground, matching};
use crate::units::area::Area;
use crate::units::decimal::largest_remainder;
use crate::units::length::{Length, WrittenLength};

/// Every space with the figure's own sides where the file gives them, or else rounded by the figure's rule.
pub(crate) struct Recorded {
    pub(crate) areas: Vec<Area>,
    /// For each space, the figure's own outline if its walls match ours, else the outline under the rule.
    pub(crate) outlines: Vec<Outline>,
    pub(crate) shares: Vec<Share>,
    /// For each space, whether it has an outline from the figure.
    pub(crate) has: Vec<bool>,
    /// For each space, whether it has an outline from the figure that contains no length of ours.
    is_whole: Vec<bool>,
    /// The areas of the figure's own outlines as drawn, without deductions.
    drawn: Vec<Area>,
}

/// The area of the figure's own sketch or lengths.
#[derive(Clone, Copy, Debug)]
pub(crate) struct OwnTotal {
    /// With the same deductions as ours.
    pub(crate) net: Area,
    /// As drawn, without deductions.
    pub(crate) drawn: Area,
}

impl OwnTotal {
    /// Adds what the figure says it counts beyond the rule.
    pub(super) fn with(self, counting: Area) -> OwnTotal {
        OwnTotal { net: self.net + counting, drawn: self.drawn + counting }
    }
}

/// What one recorded side adds to the area, relative to the figure's rule.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Share {
    /// The index of the space.
    pub(crate) place: usize,
    pub(crate) space: String,
    /// The number of the side, from 1.
    pub(crate) side: SideNumber,
    pub(crate) typed: String,
    pub(crate) axis: Option<Axis>,
    pub(crate) ruled: Length,
    pub(crate) recorded: Length,
    pub(crate) area: Area,
}

impl Share {
    /// The name of the space.
    #[must_use]
    pub fn space(&self) -> &str {
        &self.space
    }

    /// The number of the side, from 1.
    #[must_use]
    pub fn side(&self) -> SideNumber {
        self.side
    }

    /// The side as typed in the file.
    #[must_use]
    pub fn typed(&self) -> &str {
        &self.typed
    }

    /// The axis it runs along; `None` for a slanted side.
    #[must_use]
    pub fn axis(&self) -> Option<Axis> {
        self.axis
    }

    /// Its length under the figure's rule.
    #[must_use]
    pub fn ruled(&self) -> Length {
        self.ruled
    }

    /// Its length on the record.
    #[must_use]
    pub fn recorded(&self) -> Length {
        self.recorded
    }

    /// What the difference between the two lengths adds to the area.
    #[must_use]
    pub fn area(&self) -> Area {
        self.area
    }
}

impl Recorded {
    /// The figure's own sides. `None` if the file gives none that matter, or they do not close; in the latter case a
    /// warning is added.
    pub(super) fn of(
        house: &House,
        ground: &Ground<'_>,
        warnings: &mut Vec<Diagnostic>,
    ) -> Option<Recorded> {
        let drawn = Figure::drawn(ground.figure)?;
        // Deductions come first, since a space's own sketch may leave them out.
        let mut owns = Vec::new();
        for space in (0..house.spaces.len()).rev() {
            match own_outline(house, ground, space, drawn) {
                Ok(own) => owns.extend(own.map(|own| (space, own))),
                Err(fault) => warnings.push(fault.diagnostic(&house.spaces[space])),
            }
        }
        if owns.iter().all(|(space, _)| weight(house, *space) == 0) {
            return None;
        }
        let mut recorded = Recorded {
            areas: ground.ruled.areas.clone(),
            outlines: ground.ruled.outlines.iter().map(|one| one.outline.clone()).collect(),
            shares: Vec::new(),
            has: vec![false; house.spaces.len()],
            is_whole: vec![false; house.spaces.len()],
            drawn: ground.ruled.areas.clone(),
        };
        owns.iter().for_each(|(space, own)| recorded.take(house, ground, *space, own));
        recorded.shares.reverse();
        Some(recorded)
    }

    /// Adds the figure's own outline of a space.
    fn take(&mut self, house: &House, ground: &Ground<'_>, space: usize, own: &Own) {
        let area = own.outline.area();
        let off: Area = house.deducted_from(space).map(|other| self.areas[other]).sum();
        let ours = ground.ruled.areas[space];
        // A sketch with other corners may exclude what is deducted. It does if its area is nearer to the area after
        // deductions.
        let leaves_out = !own.is_matched && (area - ours).abs() > (area - (ours - off)).abs();
        self.areas[space] = if leaves_out { area + off } else { area };
        self.has[space] = true;
        self.is_whole[space] = own.is_whole;
        self.drawn[space] = area;
        if own.is_matched {
            self.share(house, ground, space, &own.outline);
            self.outlines[space] = own.outline.clone();
        }
    }

    /// Adds the share of each side that differs; the shares add up to the change of the space's area.
    ///
    /// A share is δᵢ·gᵢ, with the gradient g at the mean of both outlines, projected on changes that keep it
    /// closed. This is exact, since the area is quadratic in the lengths, and independent of the start corner.
    fn share(&mut self, house: &House, ground: &Ground<'_>, space: usize, own: &Outline) {
        let ruled = &ground.ruled.outlines[space].outline;
        let weight = weight(house, space);
        if weight == 0 {
            return;
        }
        let traverse = &ground.walls.spaces[space].traverse;
        for (i, area) in side_shares(ruled, own).into_iter().enumerate().rev() {
            let (before, after) =
                (ruled.vectors()[i].chord_length(), own.vectors()[i].chord_length());
            let Some(source) = traverse.sides[i].source else {
                continue;
            };
            if before == after && area == Area::ZERO {
                continue;
            }
            let side = &house.spaces[space].sides[source];
            self.shares.push(Share {
                place: space,
                space: house.spaces[space].name.clone(),
                side: side.number,
                typed: side.typed.to_string(),
                axis: side.direction.map(Direction::axis),
                ruled: before,
                recorded: after,
                area: Area::from_half_nm2(weight * area.half_nm2()),
            });
        }
    }
}

/// How many times a space's whole outline goes into the total above grade: 1 if it is counted, minus 1 if it is
/// deducted from a counted space.
fn weight(house: &House, space: usize) -> i128 {
    let in_total = |i: usize| crate::areas::is_in_total(house, i, false);
    let taken = house.is_deducted(space) && house.spaces[space].parent.is_some_and(in_total);
    i128::from(in_total(space)) - i128::from(taken)
}

/// The figure's own outline of a space.
struct Own {
    outline: Outline,
    /// Whether its walls match ours one to one.
    is_matched: bool,
    /// Whether every length is the figure's own.
    is_whole: bool,
}

/// Why recorded sides do not form an outline.
enum NoOutline {
    Misses(Misclosure),
    Crosses,
}

impl NoOutline {
    fn diagnostic(&self, space: &Space) -> Diagnostic {
        let name = quoted(&space.name);
        let message = match self {
            NoOutline::Misses(misses) => format!(
                "{name}: with its recorded sides the walk around the walls ends {} of where it began",
                misses.spoken()
            ),
            NoOutline::Crosses => {
                format!("{name}: with its recorded sides the outline crosses itself")
            }
        };
        Diagnostic::new(Word::RecordedDoNotClose, space.span, message)
            .note("a side without a recorded length is taken to the whole foot; the recorded sides are left out of the steps")
            .help("compare each `recorded` with the record's card")
    }
}

/// What each side contributes to the difference in area between two closed outlines with the same sides.
fn side_shares(from: &Outline, to: &Outline) -> Vec<Area> {
    let n = from.vectors().len();
    let turn = i128::from(from.turn());
    // Four times the gradient at the mean of both outlines: the sum of their doubled gradients.
    let sum = |pick: fn(&(i64, i64)) -> i64| -> Vec<i128> {
        let (a, b) = (from.doubled_gradients(), to.doubled_gradients());
        a.iter().zip(&b).map(|(a, b)| i128::from(pick(a)) + i128::from(pick(b))).collect()
    };
    let on_axis = |part: fn(&Vector) -> i64| -> Vec<usize> {
        (0..n).filter(|&i| part(&from.vectors()[i]) != 0 || part(&to.vectors()[i]) != 0).collect()
    };
    type Part = fn(&Vector) -> i64;
    let axes: [(Part, Vec<i128>); 2] = [(|v| v.east, sum(|g| g.0)), (|v| v.north, sum(|g| g.1))];
    let counts =
        axes.each_ref().map(|(part, _)| i128::try_from(on_axis(*part).len()).unwrap_or(1).max(1));
    // A common denominator for both axes, so that their sum is whole.
    let unit = 2 * counts[0] * counts[1];
    let mut exact = vec![0_i128; n];
    for (k, (part, gradients)) in axes.iter().enumerate() {
        let sides = on_axis(*part);
        let whole: i128 = sides.iter().map(|&i| gradients[i]).sum();
        for &i in &sides {
            let change = i128::from(part(&to.vectors()[i]) - part(&from.vectors()[i]));
            exact[i] += change * (counts[k] * gradients[i] - whole) * counts[1 - k];
        }
    }
    let total = exact.iter().sum::<i128>().checked_div(unit).unwrap_or(0);
    let mut parts = largest_remainder(&exact, unit, total);
    for (i, part) in parts.iter_mut().enumerate() {
        let bulge = to.vectors()[i].segment() - from.vectors()[i].segment();
        *part += turn * bulge.half_nm2();
    }
    parts.into_iter().map(Area::from_half_nm2).collect()
}

/// The figure's own outline of a space, from recorded sides if there are any, else from its own sketch.
fn own_outline(
    house: &House,
    ground: &Ground<'_>,
    space: usize,
    drawn: ReferenceSource,
) -> Result<Option<Own>, NoOutline> {
    let here = &house.spaces[space];
    let has_recorded = here.sides.iter().any(|side| side.words.recorded.is_some());
    if !has_recorded || ground.figure.kind != FigureKind::Record {
        let own = matching::own_outline(house, ground, space, drawn);
        return Ok(own.map(|own| Own {
            outline: own.outline,
            is_matched: own.is_matched,
            is_whole: true,
        }));
    }
    let vectors = recorded_vectors(house, ground, space);
    let misses = Misclosure {
        north: vectors.iter().map(|vector| vector.north).sum(),
        east: vectors.iter().map(|vector| vector.east).sum(),
    };
    let turn = here.closed.outline.turn();
    let outline = Outline::new(vectors).ok_or(NoOutline::Misses(misses))?;
    if outline.crossing().is_some() || outline.turn() != turn {
        return Err(NoOutline::Crosses);
    }
    let is_used = |side: &Side| side.words.recorded.is_some() && side.direction.is_some();
    if !here.sides.iter().any(is_used) {
        return Ok(None);
    }
    let is_whole = here.sides.iter().all(is_used);
    Ok(Some(Own { outline, is_matched: true, is_whole }))
}

/// Each side at its recorded length, or under the rule if it has none.
fn recorded_vectors(house: &House, ground: &Ground<'_>, space: usize) -> Vec<Vector> {
    let here = &house.spaces[space];
    let traverse = &ground.walls.spaces[space].traverse;
    let mut vectors = ground.ruled.outlines[space].outline.vectors().to_vec();
    for (number, side) in here.sides.iter().enumerate() {
        let Some(recorded) = side.words.recorded.map(WrittenLength::length) else {
            continue;
        };
        let pieces: Vec<usize> = (0..vectors.len())
            .filter(|&i| {
                traverse.sides[i].source == Some(number) && is_along_axis(traverse.sides[i].shape)
            })
            .collect();
        let Some(&longest) = pieces.iter().max_by_key(|&&i| vectors[i].length()) else {
            continue;
        };
        let others: Length =
            pieces.iter().filter(|&&i| i != longest).map(|&i| vectors[i].length()).sum();
        let (Shape::Straight { direction, .. } | Shape::Arc { direction, .. }) =
            traverse.sides[longest].shape
        else {
            continue;
        };
        let signed = direction.sign() * (recorded - others).nm();
        match direction.axis() {
            Axis::North => vectors[longest].north = signed,
            Axis::East => vectors[longest].east = signed,
        }
    }
    vectors
}

fn is_along_axis(shape: Shape) -> bool {
    matches!(shape, Shape::Straight { .. } | Shape::Arc { .. })
}

/// The area of the figure's own sketch or lengths, if every wall is the figure's and every counted space above
/// grade is covered.
pub(super) fn own_total(
    house: &House,
    ground: &Ground<'_>,
    recorded: Option<&Recorded>,
) -> Option<OwnTotal> {
    let drawn = Figure::drawn(ground.figure)?;
    if recorded.is_none() && !house.drawn.iter().any(|outline| outline.drawn == drawn) {
        return None;
    }
    let counted: Vec<usize> =
        (0..house.spaces.len()).filter(|&i| crate::areas::is_in_total(house, i, false)).collect();
    if counted.is_empty() {
        return None;
    }
    let outlines: Vec<&ReferenceOutline> =
        house.drawn.iter().filter(|outline| outline.drawn == drawn).collect();
    if let ([only], [alone]) = (&counted[..], &outlines[..])
        && alone.of.is_empty()
        && house.deducted_from(*only).next().is_none()
    {
        // A sketch that names no space is taken to be of the house if it has about the same size.
        let area = alone.outline.as_ref().map(Outline::area)?;
        let ours = ground.ruled.areas[*only];
        let apart = (area - ours).abs() + (area - ours).abs();
        return (apart < ours).then_some(OwnTotal { net: area, drawn: area });
    }
    let area_of = |space: usize| match (recorded, house.spaces[space].recorded) {
        (Some(recorded), _) if recorded.has[space] => recorded.areas[space],
        (_, Some(area)) => area,
        _ => ground.ruled.areas[space],
    };
    let off = |space: usize| -> Area { house.deducted_from(space).map(area_of).sum() };
    // A sketch of a whole level covers everything counted on it.
    let mut total = OwnTotal { net: Area::ZERO, drawn: Area::ZERO };
    let mut covered: Vec<usize> = Vec::new();
    for level in outlines.iter().filter(|outline| outline.of.len() > 1) {
        if !level.of.iter().all(|space| counted.contains(space) && !covered.contains(space)) {
            return None;
        }
        let area = level.outline.as_ref()?.area();
        total.net = total.net + area - level.of.iter().map(|&i| off(i)).sum();
        total.drawn = total.drawn + area;
        covered.extend(&level.of);
    }
    for &space in counted.iter().filter(|space| !covered.contains(space)) {
        let recorded = recorded.filter(|recorded| recorded.is_whole[space])?;
        total.net = total.net + recorded.areas[space] - off(space);
        total.drawn = total.drawn + recorded.drawn[space];
    }
    Some(total)
}
