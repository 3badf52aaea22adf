//! Which walls are so near the half foot that an office may round them to either foot.

use crate::areas::is_in_total;
use crate::diagnostic::words;
use crate::units::length::Length;
use crate::wording::sentences::Sentences;

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
        let off = |near: &Near, what: &str| match near.off {
            Length::ZERO => format!("exactly at {what}"),
            off => format!("{} from {what}", self.length(off)),
        };
        let if_off = format!("may go either way if the office's reading differs by {unit}");
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
                let foot = Length::FOOT.nm();
                let off = Length::from_nm((length.nm().rem_euclid(foot) - (foot >> 1)).abs());
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

    /// How far off an office's tape reading may be.
    fn office_reading(&self) -> String {
        match self.is_metric() {
            true => self.length(self.settings.reading),
            false => format!("{} ft", self.settings.reading.decimal_feet()),
        }
    }
}
