//! Which walls are so near the half foot that an office may round them to either foot.

use crate::areas::is_in_total;
use crate::diagnostic::words;
use crate::house::Face;
use crate::reconcile::Figure;
use crate::units::length::{Form, Length, Step, WrittenLength};
use crate::wording::sentences::{Sentences, capital};
use crate::wording::step_lines::{half_of, not_explained};

/// Walls that are equally far from the half foot, with the same numbers in each of the spaces.
struct Near {
    spaces: Vec<usize>,
    numbers: Vec<usize>,
    off: Length,
}

impl Sentences<'_> {
    /// Why the total in whole feet is a range, as the end of a sentence: the walls near the half foot, each with how far it
    /// is from there; the nearest alone if they are many.
    pub(super) fn either_way(&self) -> String {
        const MOST: usize = 2;
        let near = self.near_the_half_foot();
        let unit = self.office_reading();
        let off = |near: &Near, what: &str| self.off_from(near.off, what);
        let if_off =
            format!("may go either way if the office read the tape {unit} longer or shorter");
        let walls = near.iter().map(|near| near.spaces.len() * near.numbers.len()).sum();
        match near.as_slice() {
            [] if self.is_adjusted_to_feet() => {
                "depending on which wall is adjusted so that the rounded walls meet".to_owned()
            }
            // A slanted or curved wall has no length of its own that is rounded.
            [] => "since a wall near the half foot may go either way".to_owned(),
            few if few.len() <= MOST => {
                let told: Vec<String> = few
                    .iter()
                    .map(|near| {
                        format!("{}, {}", self.walls_named(near), off(near, "the half foot"))
                    })
                    .collect();
                format!("since {}, {if_off}", told.join(", and "))
            }
            [nearest, ..] => format!(
                "since {} {if_off}; nearest: {}, {}",
                words::count(walls, "wall"),
                self.walls_named(nearest),
                off(nearest, "the half foot")
            ),
        }
    }

    /// The walls that may go either way, the nearest to the half foot first.
    fn near_the_half_foot(&self) -> Vec<Near> {
        let house = self.house;
        let is_in = |space: usize| is_in_total(house, space, false);
        let is_off = |space: usize| {
            house.is_deducted(space) && house.spaces[space].parent.is_some_and(is_in)
        };
        // Walls that can go either way only together with others of their space change nothing.
        let changes = |space: usize| {
            let range = self.areas.spaces[space].range();
            range.is_none_or(|range| range.low != range.high)
        };
        let spaces = (0..house.spaces.len())
            .filter(|&space| (is_in(space) || is_off(space)) && changes(space));
        let mut near: Vec<Near> = Vec::new();
        for space in spaces {
            for (side, here) in house.spaces[space].sides.iter().enumerate() {
                let Some(length) = self.areas.outside_length(space, side) else { continue };
                let off = off_the_half(length, Step::WholeFoot);
                let number = here.number.get();
                let is_same = |near: &&mut Near| near.spaces == [space] && near.off == off;
                match near.iter_mut().find(is_same) {
                    _ if off > self.settings.reading => {}
                    Some(near) => near.numbers.push(number),
                    None => near.push(Near { spaces: vec![space], numbers: vec![number], off }),
                }
            }
        }
        near.sort_by_key(|near| near.off);
        let mut alike: Vec<Near> = Vec::new();
        for one in near {
            let is_alike = |other: &&mut Near| other.off == one.off && other.numbers == one.numbers;
            match alike.iter_mut().find(is_alike) {
                Some(other) => other.spaces.extend(one.spaces),
                None => alike.push(one),
            }
        }
        alike
    }

    fn walls_named(&self, near: &Near) -> String {
        let sides = words::sides(&near.numbers);
        match self.house.spaces.len() {
            1 => sides,
            _ => {
                let name = |&space: &usize| words::the_named(&self.house.spaces[space].name);
                let names: Vec<String> = near.spaces.iter().map(name).collect();
                let pages = self.pages_of(near.spaces.iter().copied());
                let pages = pages.map(|pages| format!(", {pages}")).unwrap_or_default();
                format!("{sides} of {}{pages}", words::all_of(&names))
            }
        }
    }

    /// How walls near the half foot have to be rounded for a figure that rounding them otherwise could give: `every wall taken up
    /// to the next foot` where a house of one rectangle is that simple, else `walls near the half foot rounded the other way`.
    pub(super) fn other_way(&self, figure: &Figure) -> String {
        let half = half_of(figure.rounding_test().step());
        let otherwise = || format!("walls near {half} rounded the other way");
        let Some(sides) = self.other_feet(figure) else { return otherwise() };
        let foot = Length::FOOT.nm();
        let is_all = |is_up: bool| {
            sides.iter().all(|&(length, feet)| {
                let below = length.nm().div_euclid(foot);
                let is_whole = length.nm().rem_euclid(foot) == 0;
                feet == if is_up && !is_whole { below + 1 } else { below }
            })
        };
        match (is_all(true), is_all(false)) {
            (true, _) => "every wall taken up to the next foot".to_owned(),
            (_, true) => "every wall taken down to the foot below".to_owned(),
            _ => otherwise(),
        }
    }

    /// Whether rounding the walls would explain a figure, or only could: it would where the walls give the figure, none
    /// of them is so near the half foot that the office may read it either way, and none had to be adjusted.
    pub(super) fn would_or_could(&self, figure: &Figure) -> &'static str {
        let test = figure.rounding_test();
        let is_one = test.range().is_some_and(|range| range.low == range.high);
        let is_sure = is_one
            && not_explained(figure) == 0
            && !self.is_adjusted(figure)
            && self.nearest_to_the_half(test.step()).is_none();
        if is_sure { "would" } else { "could" }
    }

    /// Whether a wall had to leave its own rounding so that the rounded walls of a figure meet.
    fn is_adjusted(&self, figure: &Figure) -> bool {
        let test = figure.rounding_test();
        match (test.step(), figure.face()) {
            (Step::WholeFoot, Face::Outside) => self.is_adjusted_to_feet(),
            _ => !test.closes(),
        }
    }

    /// The counted wall that is nearest to where a length is rounded the other way, as a sentence, if that is within the
    /// office's reading: `Side 1 is 6 mm (0.02 ft) from the half foot, so it may go either way if the office read the tape 46 mm (0.15 ft) longer or shorter.`
    pub(super) fn nearest_to_the_half(&self, step: Step) -> Option<String> {
        let spaces = 0..self.house.spaces.len();
        let counted = spaces.filter(|&space| is_in_total(self.house, space, false));
        let walls = counted.flat_map(|space| {
            let sides = 0..self.house.spaces[space].sides.len();
            sides.filter_map(move |side| {
                let length = self.areas.outside_length(space, side)?;
                Some((off_the_half(length, step), space, side))
            })
        });
        let (off, space, side) = walls.min_by_key(|(off, ..)| *off)?;
        let number = self.house.spaces[space].sides[side].number.get();
        let near = Near { spaces: vec![space], numbers: vec![number], off };
        (off <= self.settings.reading).then(|| {
            format!(
                "{} is {}, so it may go either way if the office read the tape {} longer or shorter.",
                capital(&self.walls_named(&near)),
                self.off_from(off, half_of(step)),
                self.office_reading()
            )
        })
    }

    /// How far a wall is from the half foot: `1" from the half foot`; in a metric file in its own unit first, and in feet as
    /// walls are rounded: `6 mm (0.02 ft) from the half foot`.
    fn off_from(&self, off: Length, what: &str) -> String {
        match off {
            Length::ZERO => format!("exactly at {what}"),
            off if self.is_metric() => format!("{} from {what}", self.in_feet_too(off)),
            off => format!("{} from {what}", self.length(off)),
        }
    }

    /// How far off an office's tape reading may be: `0.15 ft (1 13/16")`, or `4.6 cm (0.15 ft)` in a metric file.
    fn office_reading(&self) -> String {
        self.in_feet_too(self.settings.reading)
    }

    /// The same without inches: `0.15 ft`.
    #[cfg(feature = "pages")]
    pub(crate) fn reading_alone(&self) -> String {
        match self.is_metric() {
            true => self.office_reading(),
            false => format!("{} ft", self.settings.reading.decimal_feet()),
        }
    }

    /// A short length in feet and in inches; in a metric file in its own unit and in feet.
    fn in_feet_too(&self, length: Length) -> String {
        let feet = length.rounded_to(HUNDREDTH_FOOT_NM).decimal_feet();
        match self.is_metric() {
            true => format!("{} ({feet} ft)", self.short_length(length)),
            false => format!("{feet} ft ({})", self.length(length)),
        }
    }

    /// A length that may be shorter than a centimeter, to the millimeter: in centimeters in a file of centimeters, else in
    /// millimeters, since a tape in meters has no thousandths.
    pub(crate) fn short_length(&self, length: Length) -> String {
        let form = if self.form == Form::Centimeters { self.form } else { Form::Millimeters };
        WrittenLength::new(length.rounded_to(MILLIMETER_NM), form).spoken()
    }
}

/// A hundredth of a foot, in nanometers.
const HUNDREDTH_FOOT_NM: i64 = 3_048_000;
/// A millimeter, in nanometers.
pub(super) const MILLIMETER_NM: i64 = 1_000_000;

/// How far a length is from where it would be rounded the other way.
fn off_the_half(length: Length, step: Step) -> Length {
    let step = step.length().nm();
    Length::from_nm((length.nm().rem_euclid(step) - (step >> 1)).abs())
}
