//! The drawing of a level, with spaces far from the house as insets at their own scale, so that the house stays large.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::pages::drawing::fit::Frame;
use crate::pages::drawing::marks::Marks;
use crate::pages::drawing::plan;
use crate::pages::drawing::plan::{Drawing, Group};
use crate::pages::drawing::shapes::corners_of;
use crate::pages::drawing::strip;
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::page::{Ink, Point, Run, Stroke, Text};
use crate::units::length::Length;
use crate::wording::sentences::Sentences;

/// Spaces farther apart than this, 12 ft, are drawn as separate groups.
const APART_NM: i64 = 12 * Length::FOOT.nm();
/// The width kept for insets, in points.
const WIDE_PT: f64 = 150.0;
/// The space between the house and the insets, in points.
const BETWEEN_PT: f64 = 8.0;
/// The most insets in a drawing.
const MOST: usize = 2;

/// Draws a level. Distant groups become insets if that makes the house larger.
pub(crate) fn level(say: &Sentences<'_>, marks: &Marks, level: usize, frame: Frame) -> Drawing {
    let house = say.house;
    let all: Vec<usize> =
        (0..house.spaces.len()).filter(|&i| house.spaces[i].level == level).collect();
    let whole = Group { level, spaces: &all, is_inset: false };
    let by_itself = |&i: &usize| house.spaces[i].by_itself;
    let (alone, placed): (Vec<usize>, Vec<usize>) = all.iter().copied().partition(by_itself);
    let mut groups = groups(say, &placed);
    // A detached space has no position, so it is drawn separately before spaces that are only far off.
    let has_alone = !alone.is_empty() && !placed.is_empty();
    if has_alone {
        if groups.len() > MOST {
            groups = vec![placed];
        }
        groups.push(alone);
    } else if placed.is_empty() {
        groups = vec![alone];
    }
    let Some((near, far)) = groups.split_first().filter(|(_, far)| (1..=MOST).contains(&far.len()))
    else {
        return plan::group(say, marks, whole, frame);
    };
    let beside = Frame { width_pt: frame.width_pt - WIDE_PT - BETWEEN_PT, ..frame };
    let near = Group { level, spaces: near, is_inset: false };
    let is_larger = plan::largest_scale(say, marks, near, &beside).pt_per_ft
        > plan::largest_scale(say, marks, whole, &frame).pt_per_ft;
    if !is_larger && !has_alone {
        return plan::group(say, marks, whole, frame);
    }
    let mut drawing = plan::group(say, marks, near, beside);
    let room = drawing.height_pt.min(frame.height_pt) - 34.0;
    let each = room / f64::from(u32::try_from(far.len()).unwrap_or(1));
    let mut top = frame.left_top.y_pt;
    for spaces in far {
        let left_top = Point::new(frame.left_top.x_pt + frame.width_pt - WIDE_PT, top);
        let box_of = Frame::new(left_top, WIDE_PT, each - 6.0).in_meters(frame.in_meters);
        inset(say, marks, Group { level, spaces, is_inset: true }, box_of, &mut drawing);
        top += each;
    }
    drawing
}

/// The largest scale, in points per foot, at which a whole level fits a frame.
pub(crate) fn largest(say: &Sentences<'_>, marks: &Marks, level: usize, frame: &Frame) -> f64 {
    let house = say.house;
    let all: Vec<usize> =
        (0..house.spaces.len()).filter(|&i| house.spaces[i].level == level).collect();
    let whole = Group { level, spaces: &all, is_inset: false };
    plan::largest_scale(say, marks, whole, frame).pt_per_ft
}

/// The width of a whole level on the ground, in feet.
pub(crate) fn width_ft(say: &Sentences<'_>, marks: &Marks, level: usize) -> f64 {
    let house = say.house;
    let all: Vec<usize> =
        (0..house.spaces.len()).filter(|&i| house.spaces[i].level == level).collect();
    plan::width_ft(say, marks, Group { level, spaces: &all, is_inset: false })
}

/// Draws one inset: a thin frame, its group, and a note that it is not in its true position.
fn inset(say: &Sentences<'_>, marks: &Marks, group: Group<'_>, frame: Frame, into: &mut Drawing) {
    let apart = plan::group(say, marks, group, frame);
    let height = apart.height_pt.min(frame.height_pt);
    let scale = strip::scale_words(apart.scale, say.is_metric());
    let (left, top) = (frame.left_top.x_pt, frame.left_top.y_pt);
    let corner = |x: f64, y: f64| Point::new(left + x, top + y);
    let corners = [
        corner(0.0, 0.0),
        corner(frame.width_pt, 0.0),
        corner(frame.width_pt, height),
        corner(0.0, height),
    ];
    let mut line = Stroke::along(&corners, 0.4);
    line.runs.push(Run::Close);
    into.inks.push(Ink::Stroke(line));
    into.inks.extend(apart.inks);
    let apart_words = "Drawn separately, not where it stands".to_owned();
    // The scale of the house stands below it.
    let words = match apart.scale.pt_per_ft == into.scale.pt_per_ft {
        true => vec![(apart_words, 4.5)],
        false => vec![(apart_words, 13.0), (format!("Scale {scale}"), 4.5)],
    };
    for (words, up) in words {
        let words = fonts::shortened(Typeface::Plain, 6.8, &words, frame.width_pt - 8.0);
        into.inks.push(Ink::Text(Text::new(corner(4.0, height - up), 6.8, words)));
    }
    for note in apart.notes {
        if !into.notes.contains(&note) {
            into.notes.push(note);
        }
    }
    into.left_out += apart.left_out;
    into.is_spent |= apart.is_spent;
    into.inset_scales.push(apart.scale.pt_per_ft);
    into.apart.extend(group.spaces);
}

/// Groups of spaces that are near each other, the one with the largest counted area first.
fn groups(say: &Sentences<'_>, spaces: &[usize]) -> Vec<Vec<usize>> {
    let boxes: Vec<Box> = spaces.iter().map(|&space| Box::of(say, space)).collect();
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for i in 0..spaces.len() {
        let is_near = |group: &Vec<usize>| group.iter().any(|&k| boxes[k].is_near(&boxes[i]));
        let (near, mut others): (Vec<_>, Vec<_>) = groups.into_iter().partition(is_near);
        let mut joined: Vec<usize> = near.into_iter().flatten().collect();
        joined.push(i);
        others.push(joined);
        groups = others;
    }
    let counted = |group: &Vec<usize>| -> i128 {
        let here = group.iter().filter(|&&i| say.house.spaces[spaces[i]].counted);
        here.map(|&i| say.areas.spaces[spaces[i]].net_tenth_foot.half_nm2()).sum()
    };
    groups.sort_by_key(|group| std::cmp::Reverse(counted(group)));
    for group in &mut groups {
        group.sort_unstable();
    }
    groups.into_iter().map(|group| group.into_iter().map(|i| spaces[i]).collect()).collect()
}

/// A bounding box on the ground, in nanometers east and north.
struct Box {
    low: (i64, i64),
    high: (i64, i64),
}

impl Box {
    fn of(say: &Sentences<'_>, space: usize) -> Box {
        let corners = corners_of(say, space);
        let empty = Box { low: (i64::MAX, i64::MAX), high: (i64::MIN, i64::MIN) };
        corners.into_iter().fold(empty, |all, at| Box {
            low: (all.low.0.min(at.0), all.low.1.min(at.1)),
            high: (all.high.0.max(at.0), all.high.1.max(at.1)),
        })
    }

    fn is_near(&self, other: &Box) -> bool {
        let gap = |low: i64, high: i64, low_b: i64, high_b: i64| {
            low_b.saturating_sub(high).max(low.saturating_sub(high_b))
        };
        let east = gap(self.low.0, self.high.0, other.low.0, other.high.0);
        let north = gap(self.low.1, self.high.1, other.low.1, other.high.1);
        east <= APART_NM && north <= APART_NM
    }
}
