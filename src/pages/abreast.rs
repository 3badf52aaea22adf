//! One level, or two beside each other at one scale with one street and one scale below both.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::pages::drawing::fit::{Frame, MARGIN_PT};
use crate::pages::drawing::insets;
use crate::pages::drawing::marks::Marks;
use crate::pages::drawing::plan::Drawing;
use crate::pages::drawing::strip::strip;
use crate::pages::layout::{Stack, moved};
use crate::pages::page::Point;
use crate::wording::sentences::Sentences;

/// The levels of one drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Shown {
    One(usize),
    /// Two, from left to right.
    Two(usize, usize),
}

/// The space between two levels, in points.
const BETWEEN_PT: f64 = 12.0;

impl Shown {
    /// Its levels; the same twice if it is one.
    pub(crate) fn both(self) -> [usize; 2] {
        match self {
            Shown::One(level) => [level, level],
            Shown::Two(left, right) => [left, right],
        }
    }

    /// Its levels, each once.
    pub(crate) fn levels(self) -> Vec<usize> {
        match self {
            Shown::One(level) => vec![level],
            Shown::Two(left, right) => vec![left, right],
        }
    }

    /// The frame of each level. The wider of two levels has more of the width, so that both have the same scale.
    fn frames(self, say: &Sentences<'_>, marks: &Marks, frame: Frame) -> Vec<(usize, Frame)> {
        let Shown::Two(left, right) = self else { return vec![(self.both()[0], frame)] };
        let width = |level: usize| insets::width_ft(say, marks, level).max(1.0);
        let share = width(left) / (width(left) + width(right));
        let room = frame.width_pt - BETWEEN_PT - 4.0 * MARGIN_PT;
        let left_pt = room * share + 2.0 * MARGIN_PT;
        let from = frame.left_top.x_pt + left_pt + BETWEEN_PT;
        let of_right = Frame {
            left_top: Point::new(from, frame.left_top.y_pt),
            width_pt: frame.width_pt - left_pt - BETWEEN_PT,
            has_strip: false,
            ..frame
        };
        vec![(left, Frame { width_pt: left_pt, has_strip: false, ..frame }), (right, of_right)]
    }

    /// The largest scale, in points per foot, at which all of it fits a frame.
    pub(crate) fn largest(self, say: &Sentences<'_>, marks: &Marks, frame: Frame) -> f64 {
        let frames = self.frames(say, marks, frame).into_iter();
        frames
            .map(|(level, frame)| insets::largest(say, marks, level, &frame))
            .fold(f64::INFINITY, f64::min)
    }

    /// The drawing of each level.
    pub(crate) fn drawings(
        self,
        say: &Sentences<'_>,
        marks: &Marks,
        frame: Frame,
    ) -> Vec<(usize, Drawing)> {
        let frames = self.frames(say, marks, frame);
        let drawn = |most_pt_per_ft: f64| -> Vec<(usize, Drawing)> {
            let each = frames.iter().map(|&(level, frame)| {
                let most_pt_per_ft = frame.most_pt_per_ft.min(most_pt_per_ft);
                (level, insets::level(say, marks, level, Frame { most_pt_per_ft, ..frame }))
            });
            each.collect()
        };
        let Shown::Two(..) = self else { return drawn(f64::INFINITY) };
        let scale_of = |all: &[(usize, Drawing)]| {
            all.iter().map(|(_, one)| one.scale.pt_per_ft).fold(f64::INFINITY, f64::min)
        };
        // Labels may make one of them smaller.
        let mut all = drawn(self.largest(say, marks, frame));
        let scale = scale_of(&all);
        if all.iter().any(|(_, one)| one.scale.pt_per_ft > scale) {
            all = drawn(scale);
        }
        let height = all.iter().map(|(_, one)| one.height_pt).fold(0.0, f64::max);
        for (_, one) in &mut all {
            // Both end at the street.
            one.inks = moved(&one.inks, 0.0, height - one.height_pt);
            one.height_pt = height;
        }
        if let Some((_, last)) = all.last_mut() {
            let above = height - crate::pages::drawing::fit::STRIP_PT;
            strip(&mut last.inks, say, last.scale, &frame, above);
        }
        all
    }

    /// The names of its levels, each above its drawing, and how far to the right the second begins.
    pub(crate) fn names(
        self,
        say: &Sentences<'_>,
        marks: &Marks,
        frame: Frame,
    ) -> (Stack, Option<(Stack, f64)>) {
        let frames = self.frames(say, marks, frame);
        let name = |&(level, frame): &(usize, Frame)| {
            let mut name = Stack::new(frame.width_pt);
            name.at_most(1, |name| name.title(9.0, &say.house.levels[level].name));
            (name, frame.left_top.x_pt)
        };
        let first = frames.first().map(name).unwrap_or_else(|| (Stack::new(frame.width_pt), 0.0));
        let second = frames.get(1).map(name);
        (first.0, second.map(|(stack, from)| (stack, from - frame.left_top.x_pt)))
    }
}
