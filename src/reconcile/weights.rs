//! How common each departure is: starting values, our judgement, no source. Data, not code.

use std::sync::LazyLock;

use serde::Deserialize;

use crate::error::Error;

/// How common each departure is, as a chance from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Weights {
    /// The figure was taken at another face than it says.
    pub face: f64,
    /// Every side rounded up.
    pub always_up: f64,
    /// Every side rounded down.
    pub always_down: f64,
    /// Sides to the half foot.
    pub half_foot: f64,
    /// Sides half-way between two steps go the other way.
    pub ties_the_other_way: f64,
    /// Sides not rounded to feet.
    pub not_rounded: f64,
    /// A space that is not counted, counted; each.
    pub counted: f64,
    /// An opening or a low ceiling not taken off; each.
    pub not_deducted: f64,
    /// An upper level taken at the full outline of the level under it.
    pub full_outline_below: f64,
    /// An upper level taken at half the outline of the level under it.
    pub half_outline_below: f64,
    /// A level counted twice.
    pub level_twice: f64,
    /// A level left out.
    pub level_left_out: f64,
    /// One recess filled in or one jog left out; over all of them.
    pub squared_off: f64,
    /// One side misread; over all of them.
    pub slip: f64,
    /// Something that is none of these.
    pub something_else: f64,
    /// How far something else lies off, typically, in square feet.
    pub something_else_scale_sq_ft: f64,
}

impl Weights {
    /// Each chance with what it is of, in words.
    pub(crate) fn chances(&self) -> [(&'static str, f64); 15] {
        [
            ("another face", self.face),
            ("every wall rounded up", self.always_up),
            ("every wall rounded down", self.always_down),
            ("to the half foot", self.half_foot),
            ("halves the other way", self.ties_the_other_way),
            ("not rounded", self.not_rounded),
            ("a space counted, each", self.counted),
            ("an opening or low ceiling not deducted, each", self.not_deducted),
            ("an upper level at the whole outline below", self.full_outline_below),
            ("an upper level at half the outline below", self.half_outline_below),
            ("a level counted twice", self.level_twice),
            ("a level left out", self.level_left_out),
            ("a recess filled in, all together", self.squared_off),
            ("a wall misread, all together", self.slip),
            ("something else", self.something_else),
        ]
    }

    /// Reads weights from JSON with every key.
    ///
    /// # Errors
    ///
    /// [`Error::Weights`] if a key is missing, unknown or no chance from 0 to 1.
    pub fn from_json(text: &str) -> Result<Weights, Error> {
        let weights: Weights =
            serde_json::from_str(text).map_err(|error| Error::Weights(error.to_string()))?;
        let rounding: f64 = [
            weights.always_up,
            weights.always_down,
            weights.half_foot,
            weights.ties_the_other_way,
            weights.not_rounded,
        ]
        .iter()
        .sum();
        let are_chances = weights.chances().iter().all(|(_, chance)| (0.0..1.0).contains(chance));
        let has_scale = weights.something_else_scale_sq_ft > 0.0;
        if are_chances && rounding < 1.0 && has_scale {
            Ok(weights)
        } else {
            Err(Error::Weights("each is a chance from 0 to under 1, those of rounding together too; the scale is over 0".to_owned()))
        }
    }
}

impl Default for Weights {
    fn default() -> Weights {
        const STARTING: &str = include_str!("weights.json");
        // The file is read by a test, so that it is as it should be.
        static READ: LazyLock<Weights> = LazyLock::new(|| {
            Weights::from_json(STARTING).unwrap_or(Weights {
                face: 0.0,
                always_up: 0.0,
                always_down: 0.0,
                half_foot: 0.0,
                ties_the_other_way: 0.0,
                not_rounded: 0.0,
                counted: 0.0,
                not_deducted: 0.0,
                full_outline_below: 0.0,
                half_outline_below: 0.0,
                level_twice: 0.0,
                level_left_out: 0.0,
                squared_off: 0.0,
                slip: 0.0,
                something_else: 0.5,
                something_else_scale_sq_ft: 400.0,
            })
        });
        *READ
    }
}
