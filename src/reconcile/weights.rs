//! How common each departure is. The probabilities are data, not code: `weights.json` gives each with the reason for
//! it.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::Deserialize;

use crate::error::Error;

/// One entry of the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Entry {
    chance: f64,
    reason: String,
}

macro_rules! weights {
    ($($(#[doc = $doc:literal])+ $name:ident: $words:literal,)+) => {
        /// How common each departure is, as a probability from 0 to 1.
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct Weights {
            $($(#[doc = $doc])+ pub $name: f64,)+
        }

        impl Weights {
            /// Each probability with its description.
            pub(crate) fn chances(&self) -> Vec<(&'static str, f64)> {
                vec![$(($words, self.$name),)+]
            }

            fn read(entries: &mut BTreeMap<String, Entry>) -> Result<Weights, Error> {
                Ok(Weights { $($name: taken(entries, stringify!($name))?,)+ })
            }

            /// Weights under which no cause is likelier than something else, used if the built-in file cannot be
            /// read.
            const fn none() -> Weights {
                let none = Weights { $($name: 0.0,)+ };
                Weights { something_else: 0.5, ..none }
            }
        }
    };
}

weights! {
    /// The probability, for each of the outside face and the frame, that the figure was measured to it although it
    /// says another face.
    face: "the outside face or the frame instead of another face",
    /// The probability that the figure was measured inside although it says another face.
    face_inside: "inside instead of another face",
    /// The probability, for each, that walls shared with other dwellings were counted whole, and that they were left
    /// out.
    common_walls: "walls shared with other dwellings counted whole, or left out, each",
    /// The probability that every side was rounded up.
    always_up: "every wall rounded up",
    /// The probability that every side was rounded down.
    always_down: "every wall rounded down",
    /// The probability that every side was rounded to the half foot.
    half_foot: "each wall to the half foot",
    /// The probability that sides halfway between two steps were rounded in the opposite direction.
    ties_the_other_way: "halves the other way",
    /// The probability that sides were not rounded to feet.
    not_rounded: "walls not rounded to feet",
    /// The probability, for each uncounted space, that it was counted.
    counted: "an uncounted space in the total, each",
    /// The probability, for each uncounted deck, patio, balcony, carport or outbuilding, that it was counted.
    counted_outdoors: "the same of a deck, patio, balcony, carport or outbuilding",
    /// The probability, for each uncounted space that the record lists separately with about its measured area, that
    /// it was counted.
    counted_though_listed: "the same of a space that the record lists by itself",
    /// The probability, for each missing space, that it was counted.
    missing_counted: "what is gone still in the total, each",
    /// The probability, for each counted space and each upper level, that it was left out.
    left_out: "a counted space or an upper level not in the total, each",
    /// The probability, for each counted space that the record lists separately, that it was left out.
    left_out_though_listed: "the same of a space that the record lists by itself",
    /// The probability, for each counted space beside others on its level, and each that the figure says it counts, that
    /// it was counted twice.
    counted_twice: "a space counted twice, each",
    /// The probability, for each opening or low part, that it was not deducted.
    not_deducted: "an opening, court or low part not deducted, each",
    /// The probability, for each stair, that it was deducted.
    deducted: "a stair deducted, each",
    /// The probability, for each garage and porch outside the walls of the house, that it was deducted.
    deducted_outside: "a garage or porch outside the house deducted, each",
    /// The probability, for each space within another, that it was deducted twice.
    deducted_twice: "a space within another deducted twice, each",
    /// The probability, for each upper level, that it was taken at the whole outline of the level below.
    whole_below: "an upper level at the whole outline below, each",
    /// The probability, for each upper level, that it was taken at three quarters of the outline below.
    three_quarters_below: "an upper level at three quarters of the outline below, each",
    /// The probability, for each upper level, that it was taken at half the outline below.
    half_below: "an upper level at half the outline below, each",
    /// The probability, for each level, that it was counted twice.
    level_twice: "a level counted twice, each",
    /// The probability that everything under the roof was counted.
    under_roof: "everything under the roof in the total",
    /// The probability, for all of them together, that one recess was filled in, or one jog or bay left off.
    shape: "a recess filled in, or a jog or bay left off, all together",
    /// The probability, for each space, that all its recesses were filled in; the same for all its jogs, wings or bays left
    /// off.
    all_parts: "all recesses filled in, or all jogs or bays left off, each",
    /// The probability, for all walls together, that one wall was misread.
    misread: "a wall misread, all together",
    /// The probability that two digits of the total were swapped.
    total_swapped: "two digits of the total swapped",
    /// The probability that one digit of the total was wrong.
    total_one_digit: "one digit of the total wrong",
    /// The probability that the total was ten times too large.
    total_ten_times: "the total ten times too large",
    /// The probability that the total was a tenth of what it should be.
    total_tenth: "the total a tenth of it",
    /// The probability that the total was rounded to tens.
    total_rounded_10: "the total rounded to 10",
    /// The probability that the total was rounded to fifties.
    total_rounded_50: "the total rounded to 50",
    /// The probability that the total was rounded to hundreds.
    total_rounded_100: "the total rounded to 100",
    /// The probability that the total was of two such houses.
    total_twice: "two dwellings in the total",
    /// The probability that the total was in square meters.
    total_square_meters: "the total in square meters",
    /// The probability of a cause other than these.
    something_else: "something else",
}

fn taken(entries: &mut BTreeMap<String, Entry>, name: &str) -> Result<f64, Error> {
    let entry =
        entries.remove(name).ok_or_else(|| Error::Weights(format!("`{name}` is missing")))?;
    if entry.reason.trim().is_empty() {
        return Err(Error::Weights(format!("`{name}` has no reason")));
    }
    if (0.0..1.0).contains(&entry.chance) {
        Ok(entry.chance)
    } else {
        Err(Error::Weights(format!("`{name}` is not a chance from 0 to under 1")))
    }
}

impl Weights {
    /// Reads weights from JSON: under each name a `chance` from 0 up to, not including, 1 and the `reason` for it.
    ///
    /// # Errors
    ///
    /// [`Error::Weights`] if a name is missing or unknown, has no reason or an invalid chance, or if the chances of
    /// ways of rounding add up to 1 or more.
    #[expect(clippy::float_arithmetic, reason = "chances are added")]
    pub fn from_json(text: &str) -> Result<Weights, Error> {
        let mut entries: BTreeMap<String, Entry> =
            serde_json::from_str(text).map_err(|error| {
                let (line, column) = (error.line(), error.column());
                Error::Weights(format!(
                    "line {line}, column {column}: under each name stand a chance and the reason for it, as `{{\"counted\": {{\"chance\": 0.06, \"reason\": \"…\"}}}}`"
                ))
            })?;
        let weights = Weights::read(&mut entries)?;
        if let Some(name) = entries.keys().next() {
            return Err(Error::Weights(format!("`{name}` is unknown")));
        }
        let rounding = weights.always_up
            + weights.always_down
            + weights.half_foot
            + weights.ties_the_other_way
            + weights.not_rounded;
        if rounding < 1.0 {
            Ok(weights)
        } else {
            Err(Error::Weights("the chances of rounding add up to 1 or more".to_owned()))
        }
    }
}

impl Default for Weights {
    fn default() -> Weights {
        const STARTING: &str = include_str!("weights.json");
        // A test checks that the built-in file can be read.
        static READ: LazyLock<Weights> =
            LazyLock::new(|| Weights::from_json(STARTING).unwrap_or(Weights::none()));
        *READ
    }
}

#[cfg(test)]
#[expect(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;

    #[test]
    fn the_starting_weights_are_read_from_their_file() {
        let read = Weights::from_json(include_str!("weights.json")).unwrap();
        assert_eq!(read, Weights::default());
        assert!(read.counted > 0.0);
        assert!(Weights::from_json("{}").is_err());
        let all = include_str!("weights.json");
        assert!(Weights::from_json(&all.replacen("\"chance\": 0.", "\"chance\": 7.", 1)).is_err());
        assert!(Weights::from_json(&all.replace("\"shape\"", "\"shapes\"")).is_err());
    }
}
