//! The record's own lengths, beside ours: what they come to, and how much of that is which side's.

use crate::Sound;
use crate::area::Area;
use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::house::DrawnOutline;
use crate::house::outline::{Outline, Vector};
use crate::house::walk::Shape;
use crate::length::{Length, Written};
use crate::numbers::largest_remainder;
use crate::reconcile::{Figure, Ground, drawn};
use crate::sketch::statement::FigureKind;
use crate::sketch::{Axis, Direction, Drawn};
use crate::words;

/// Every space with the figure's own sides where the file has them, else under its rule.
pub(crate) struct Recorded {
    pub(crate) areas: Vec<Area>,
    pub(crate) shares: Vec<Share>,
    /// Which spaces have an outline of the figure's own.
    pub(crate) has: Vec<bool>,
}

/// What one recorded side adds to the area, against the figure's rule.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Share {
    pub(crate) space: String,
    /// Counted from 1.
    pub(crate) side: usize,
    pub(crate) typed: String,
    pub(crate) axis: Option<Axis>,
    pub(crate) ruled: Length,
    pub(crate) recorded: Length,
    pub(crate) area: Area,
}

impl Share {
    /// The name of the space.
    pub fn space(&self) -> &str {
        &self.space
    }

    /// The number of the side, from 1.
    pub fn side(&self) -> usize {
        self.side
    }

    /// The side as it stands in the file.
    pub fn typed(&self) -> &str {
        &self.typed
    }

    /// The axis it runs along; none for a slanted side.
    pub fn axis(&self) -> Option<Axis> {
        self.axis
    }

    /// Its length under the figure's rule.
    pub fn ruled(&self) -> Length {
        self.ruled
    }

    /// Its length in the record.
    pub fn recorded(&self) -> Length {
        self.recorded
    }

    /// What the difference adds to the area.
    pub fn area(&self) -> Area {
        self.area
    }
}

impl Recorded {
    /// The figure's own sides; none where the file has none that count, or they do not close.
    pub(super) fn of(
        sound: &Sound,
        ground: &Ground<'_>,
        span: Span,
        warnings: &mut Vec<Diagnostic>,
    ) -> Option<Recorded> {
        let drawn = Figure::drawn(ground.figure)?;
        let house = sound.house();
        let mut recorded = Recorded {
            areas: ground.ruled.areas.clone(),
            shares: Vec::new(),
            has: vec![false; house.spaces.len()],
        };
        for space in 0..house.spaces.len() {
            let own = match own_outline(sound, ground, space, drawn) {
                Ok(own) => own,
                Err((north, east)) => {
                    warnings.push(do_not_close(sound, space, span, north, east));
                    continue;
                }
            };
            let Some(own) = own else { continue };
            recorded.areas[space] = own.area();
            recorded.has[space] = true;
            recorded.share(sound, ground, space, &own);
        }
        let matters = |space: usize| {
            let counted = |i: usize| crate::areas::is_in_total(house, i, false);
            let parent = house.spaces[space].parent;
            recorded.has[space]
                && (counted(space) || house.is_taken_off(space) && parent.is_some_and(counted))
        };
        (0..house.spaces.len()).any(matters).then_some(recorded)
    }

    /// Adds the share of each side of a space that differs; what they add up to is the change of its area.
    ///
    /// δᵢ·gᵢ with g the gradient at the mean of both outlines, projected on changes that close: exact,
    /// since the area is quadratic in the lengths, and the same from whatever corner the walk starts.
    fn share(&mut self, sound: &Sound, ground: &Ground<'_>, space: usize, own: &Outline) {
        let house = sound.house();
        let ruled = &ground.ruled.outlines[space].outline;
        let counts = house.spaces[space].counted || house.is_taken_off(space);
        if ruled.vectors().len() != own.vectors().len() || !counts {
            return;
        }
        let sign = if house.is_taken_off(space) { -1 } else { 1 };
        let walk = &ground.walls.spaces[space].walk;
        for (i, area) in side_shares(ruled, own).into_iter().enumerate() {
            let (before, after) = (ruled.vectors()[i].length(), own.vectors()[i].length());
            let Some(source) = walk.sides[i].source else {
                continue;
            };
            if before == after && area == Area::ZERO {
                continue;
            }
            let side = &house.spaces[space].sides[source];
            self.shares.push(Share {
                space: house.spaces[space].name.clone(),
                side: side.number,
                typed: side.typed.clone(),
                axis: side.direction.map(Direction::axis),
                ruled: before,
                recorded: after,
                area: Area::from_half_nm2(sign * area.half_nm2()),
            });
        }
    }
}

/// What each side adds between two closed outlines with the same sides, adding up to the difference of their areas.
fn side_shares(from: &Outline, to: &Outline) -> Vec<Area> {
    let n = from.vectors().len();
    let turn = i128::from(from.turn());
    // Four times the gradient at the mean of both: the doubled gradients added.
    let sum = |pick: fn(&(i128, i128)) -> i128| -> Vec<i128> {
        let (a, b) = (from.doubled_gradients(), to.doubled_gradients());
        a.iter().zip(&b).map(|(a, b)| pick(a) + pick(b)).collect()
    };
    let on_axis = |part: fn(&Vector) -> i64| -> Vec<usize> {
        (0..n).filter(|&i| part(&from.vectors()[i]) != 0 || part(&to.vectors()[i]) != 0).collect()
    };
    type Part = fn(&Vector) -> i64;
    let axes: [(Part, Vec<i128>); 2] = [(|v| v.east, sum(|g| g.0)), (|v| v.north, sum(|g| g.1))];
    let counts =
        axes.each_ref().map(|(part, _)| i128::try_from(on_axis(*part).len()).unwrap_or(1).max(1));
    // Everything over one denominator, so that what both axes give together is whole.
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

/// The figure's own outline of a space: from the recorded sides, else from its own sketch; how far it misses if it does.
fn own_outline(
    sound: &Sound,
    ground: &Ground<'_>,
    space: usize,
    drawn: Drawn,
) -> Result<Option<Outline>, (i64, i64)> {
    let here = &sound.house().spaces[space];
    let has_recorded = here.sides.iter().any(|side| side.words.recorded.is_some());
    if has_recorded && ground.figure.kind == FigureKind::Record {
        let vectors = recorded_vectors(sound, ground, space);
        let north = vectors.iter().map(|vector| vector.north).sum();
        let east = vectors.iter().map(|vector| vector.east).sum();
        return Outline::new(vectors).map(Some).ok_or((north, east));
    }
    Ok(drawn::own_outline(sound, ground, space, drawn))
}

/// Each side at its recorded length, else as the rule has it.
fn recorded_vectors(sound: &Sound, ground: &Ground<'_>, space: usize) -> Vec<Vector> {
    let here = &sound.house().spaces[space];
    let walk = &ground.walls.spaces[space].walk;
    let mut vectors = ground.ruled.outlines[space].outline.vectors().to_vec();
    for (number, side) in here.sides.iter().enumerate() {
        let Some(recorded) = side.words.recorded.map(Written::length) else {
            continue;
        };
        let pieces: Vec<usize> = (0..vectors.len())
            .filter(|&i| walk.sides[i].source == Some(number) && is_along_axis(walk.sides[i].shape))
            .collect();
        let Some(&longest) = pieces.iter().max_by_key(|&&i| vectors[i].length()) else {
            continue;
        };
        let others: Length =
            pieces.iter().filter(|&&i| i != longest).map(|&i| vectors[i].length()).sum();
        let (Shape::Straight { direction, .. } | Shape::Arc { direction, .. }) =
            walk.sides[longest].shape
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

fn do_not_close(sound: &Sound, space: usize, span: Span, north: i64, east: i64) -> Diagnostic {
    let here = &sound.house().spaces[space];
    let ways: Vec<String> = [(Axis::North, north), (Axis::East, east)]
        .into_iter()
        .filter(|(_, miss)| *miss != 0)
        .map(|(axis, miss)| {
            format!("{} {}", Length::from_nm(miss).spoken(), Direction::along(axis, miss).word())
        })
        .collect();
    let _ = span;
    let message = format!(
        "{}: with its recorded sides the walk round ends {} of where it began",
        quoted(&here.name),
        words::all_of(&ways)
    );
    Diagnostic::new(Word::RecordedDoNotClose, here.span, message)
        .note("a side without a recorded length is taken to the whole foot; the recorded sides are left out of the steps")
        .help("compare each `recorded` with the record's card")
}

/// What the figure's own sketch or sides come to, where they cover every counted space above grade.
pub(super) fn own_total(
    sound: &Sound,
    ground: &Ground<'_>,
    recorded: Option<&Recorded>,
) -> Option<Area> {
    let house = sound.house();
    let drawn = Figure::drawn(ground.figure)?;
    let outlines: Vec<&DrawnOutline> =
        house.drawn.iter().filter(|outline| outline.drawn == drawn).collect();
    let counted: Vec<usize> =
        (0..house.spaces.len()).filter(|&i| crate::areas::is_in_total(house, i, false)).collect();
    let alone = counted.len() == 1 && outlines.len() == 1 && outlines[0].of.is_empty();
    if alone {
        return outlines[0].outline.as_ref().map(Outline::area);
    }
    let off = |space: usize| -> Area {
        let one = |other: usize| match recorded {
            Some(recorded) if recorded.has[other] => recorded.areas[other],
            _ => house.spaces[other].recorded.unwrap_or(ground.ruled.areas[other]),
        };
        house.taken_off(space).map(one).sum()
    };
    let mut total = Area::ZERO;
    let mut covered: Vec<usize> = Vec::new();
    for outline in
        outlines.iter().filter(|outline| outline.of.iter().any(|space| counted.contains(space)))
    {
        total = total + outline.outline.as_ref()?.area();
        covered.extend(&outline.of);
    }
    for &space in counted.iter().filter(|space| !covered.contains(space)) {
        let recorded = recorded.filter(|recorded| recorded.has[space])?;
        total = total + recorded.areas[space];
    }
    Some(total - counted.iter().map(|&space| off(space)).sum())
}
