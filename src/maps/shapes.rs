//! The shapes read from a map, with a limit on the number of corners.

use crate::error::Error;
use crate::maps::{Feature, Position};

/// The most corners that all shapes of a map may have together.
pub(super) const MOST_POSITIONS: usize = 500_000;

/// The error for a map that cannot be used.
pub(super) fn wrong(message: impl Into<String>) -> Error {
    Error::Map(message.into())
}

/// The closed shapes of a map, as they are read.
#[derive(Default)]
pub(super) struct Shapes {
    pub(super) list: Vec<Feature>,
    positions: usize,
}

impl Shapes {
    /// Adds a ring of coordinate pairs, longitude first.
    pub(super) fn ring(
        &mut self,
        id: Option<String>,
        name: Option<String>,
        ring: impl Iterator<Item = (f64, f64)>,
        holes: usize,
    ) -> Result<(), Error> {
        let mut corners = Vec::new();
        for (longitude, latitude) in ring {
            self.positions += 1;
            if self.positions > MOST_POSITIONS {
                return Err(wrong(
                    "the map has more than 500,000 corners; save the part with the house",
                ));
            }
            let Some(position) = Position::new(longitude, latitude) else {
                return Err(wrong(format!(
                    "{longitude}, {latitude} is no place on the earth: longitude, which comes first, goes from -180 to 180, latitude from -90 to 90. A map in the meters or feet of a local grid has to be saved in degrees (WGS 84)"
                )));
            };
            corners.push(position);
        }
        if corners.len() > 1 && corners.first() == corners.last() {
            corners.pop();
        }
        if corners.len() >= 3 {
            let id = id.unwrap_or_else(|| (self.list.len() + 1).to_string());
            self.list.push(Feature { id, name, ring: corners, holes });
        }
        Ok(())
    }
}
