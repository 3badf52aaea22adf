//! How the area of a possible step comes about in whole feet, so that anyone can work it out again.

use crate::areas::is_in_total;
use crate::diagnostic::words::GLUE;
use crate::geometry::outline::{Outline, Vector};
use crate::geometry::partition::Cut;
use crate::reconcile::cause::Cause;
use crate::reconcile::departures::{DepartureKind, LevelTaken, level_below};
use crate::reconcile::parts::{Part, Shape};
use crate::reconcile::{BridgeStep, Line};
use crate::units::area::Area;
use crate::units::decimal::thousands;
use crate::units::length::Length;
use crate::wording::sentences::Sentences;

impl Sentences<'_> {
    /// How the area of a part of the outline comes about in whole feet: `10 × 4 = 40 sq ft for the box, less the round bay,
    /// 29.82 (Calculations): 10.18`. `None` if the step is of something else, or not in whole feet.
    pub(super) fn part_worked(&self, line: &Line) -> Option<String> {
        let DepartureKind::Part { space, part } = only_departure(line)? else { return None };
        let outline = self.areas.spaces[space].whole_foot();
        if part.effect(outline) != line.area() {
            return None;
        }
        let vectors = outline.vectors();
        let here = vectors.get(part.side)?;
        let total = || thousands(line.area().abs().whole_sq_ft());
        if here.rise != 0 {
            let curve = here.segment().abs().to_hundredths();
            let rise = Length::from_nm(here.rise.abs());
            let [long, deep] = [here.chord_length(), rise];
            return match part.shape {
                Shape::BoxedBay => Some(format!(
                    "{} = {} sq ft for the box, less the round bay, {curve} (Calculations): {}",
                    product([long, deep], false),
                    thousands(Area::rectangle(long, deep).whole_sq_ft()),
                    line.area().to_hundredths()
                )),
                _ => Some(format!(
                    "the round bay in whole feet, {curve} sq ft, is a piece in the Calculations"
                )),
            };
        }
        Some(format!("{} = {} sq ft in whole feet", straight_part(part, outline)?, total()))
    }

    /// How a level that is taken from the one below comes to its area in whole feet: `34 × 28 = 952 sq ft, as large as the level
    /// below, instead of 33 × 27 − 8 × 7 = 835`. `None` if the step is of something else, or not in whole feet.
    pub(super) fn level_worked(&self, line: &Line) -> Option<String> {
        let DepartureKind::Level { level, how } = only_departure(line)? else { return None };
        let house = self.house;
        let counted = |level: usize| {
            (0..house.spaces.len())
                .filter(move |&i| house.spaces[i].level == level && is_in_total(house, i, false))
        };
        let own: Area = counted(level).map(|i| self.areas.spaces[i].net_whole_foot).sum();
        let own_terms = self.products_of(counted(level), true);
        let own_worked = worked(own_terms.as_deref(), own);
        if how == LevelTaken::Twice {
            return (line.area() == own)
                .then(|| format!("{own_worked} sq ft once more, in whole feet"));
        }
        let below = || {
            let on = level_below(house, level).into_iter().flat_map(counted);
            on.filter(|&i| house.spaces[i].parent.is_none())
        };
        let whole: Area = below().map(|i| self.areas.spaces[i].whole_foot().area()).sum();
        let (by, of, as_large) = match how {
            LevelTaken::HalfBelow => (" ÷ 2", (1, 1), "half of the level below"),
            LevelTaken::ThreeQuartersBelow => {
                (" × 3 ÷ 4", (3, 2), "three quarters of the level below")
            }
            _ => ("", (1, 0), "as large as the level below"),
        };
        let taken = Area::from_half_nm2((whole.half_nm2() * of.0) >> of.1);
        if taken - own != line.area() {
            return None;
        }
        let terms = self.products_of(below(), false);
        let terms = terms.map(|terms| match terms.contains(" + ") && !by.is_empty() {
            true => format!("({terms}){by}"),
            false => format!("{terms}{by}"),
        });
        let taken = worked(terms.as_deref(), taken);
        Some(format!("in whole feet: {taken} sq ft, {as_large}, instead of {own_worked}"))
    }

    /// The rectangles of spaces in whole feet as a sum, less what is deducted in them: `33 × 27 − 8 × 7`. `None` if they are
    /// many, or not all rectangles.
    fn products_of(&self, spaces: impl Iterator<Item = usize>, is_net: bool) -> Option<String> {
        const MOST: usize = 4;
        let mut terms: Vec<(bool, Cut)> = Vec::new();
        for space in spaces {
            let own = self.areas.spaces[space].whole_foot().cuts()?;
            terms.extend(own.into_iter().map(|cut| (true, cut)));
            for inner in self.house.deducted_from(space).filter(|_| is_net) {
                let inner = self.areas.spaces[inner].whole_foot().cuts()?;
                terms.extend(inner.into_iter().map(|cut| (false, cut)));
            }
        }
        if terms.is_empty() || terms.len() > MOST {
            return None;
        }
        let mut text = String::new();
        for (i, (adds, cut)) in terms.into_iter().enumerate() {
            let Cut::Rectangle { east, north } = cut else { return None };
            text.push_str(match (i, adds) {
                (0, _) => "",
                (_, true) => " + ",
                (_, false) => " \u{2212} ",
            });
            text.push_str(&product([east.max(north), east.min(north)], false));
        }
        Some(text)
    }
}

/// A product that no line is broken within.
fn product(lengths: [Length; 2], is_halved: bool) -> String {
    let text = crate::wording::products::product(lengths, is_halved, Length::FOOT);
    text.replace(' ', &GLUE.to_string())
}

/// The departure of a possible step, if it is one alone.
fn only_departure(line: &Line) -> Option<DepartureKind> {
    match line.cause()? {
        Cause::Departures(kind, None) if line.step() == BridgeStep::Counting => Some(kind),
        _ => None,
    }
}

/// A sum with what it comes to, or that alone: `34 × 28 = 952`.
fn worked(terms: Option<&str>, area: Area) -> String {
    let area = thousands(area.whole_sq_ft());
    terms.map_or_else(|| area.clone(), |terms| format!("{terms} = {area}"))
}

/// The products that make a part with straight walls: `5 × 2 + 2 × 2 ÷ 2 + 2 × 2 ÷ 2`. `None` if its walls lie askew.
fn straight_part(part: Part, outline: &Outline) -> Option<String> {
    let vectors = outline.vectors();
    let n = vectors.len();
    let [before, here, after] =
        [(part.side + n - 1) % n, part.side, (part.side + 1) % n].map(|side| vectors[side]);
    let long = |vector: Vector| Length::from_nm(vector.east.abs().max(vector.north.abs()));
    let half = |vector: Vector| {
        let [east, north] = [vector.east, vector.north].map(|way| Length::from_nm(way.abs()));
        product([east.max(north), east.min(north)], true)
    };
    let is_straight = |vector: Vector| vector.east == 0 || vector.north == 0;
    match part.shape {
        Shape::Recess | Shape::Jog | Shape::Wing | Shape::Overlap => {
            let [one, other] = part.walls(outline).map(|side| vectors[side]);
            let are_straight = is_straight(one) && is_straight(other);
            are_straight.then(|| product([long(one), long(other)], false))
        }
        Shape::Bay => {
            let out = if here.north == 0 { before.north } else { before.east };
            let front = product([long(here), Length::from_nm(out.abs())], false);
            Some(format!("{front} + {} + {}", half(before), half(after)))
        }
        Shape::BoxedBay => Some(format!("{} + {}", half(before), half(after))),
        Shape::CutCorner => Some(half(here)),
    }
}
