//! Outlines from maps: a building drawn on a map as sides by bearing and length on the ground.
//!
//! A map mostly shows the roof, seen from above. Its outline never decides an area here; it stands
//! beside the tape as something to compare with.
//!
//! Positions are longitude and latitude in degrees on the WGS 84 ellipsoid.
//!
//! ```
//! use fairfoot::maps::{Format, features};
//!
//! // A quarter acre of sea: about 40 m by 25 m at 45° north.
//! let text = "POLYGON ((-20 45, -19.9994926 45, -19.9994926 45.0002249, -20 45.0002249, -20 45))";
//! let shapes = features(Format::Wkt, text)?;
//! let outline = shapes[0].outline()?;
//! assert_eq!(outline.sides().len(), 4);
//! // Karney's geodesic area beside the plane's: they agree to 1 in 100,000.
//! let (plane, geodesic) = (outline.plane_sq_ft(), outline.geodesic_sq_ft());
//! assert!((plane / geodesic - 1.0).abs() < 1e-5);
//! # Ok::<(), fairfoot::Error>(())
//! ```

mod formats;
mod ground;

use crate::error::Error;
pub use formats::{Format, MOST_MAP_BYTES, features};
pub use ground::{MapOutline, MapSide};

/// A place on the earth.
///
/// # Units
///
/// Degrees on WGS 84, north and east positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position {
    /// From -180 to 180.
    pub longitude: f64,
    /// From -90 to 90.
    pub latitude: f64,
}

impl Position {
    /// A position; none if a number is no place on the earth.
    pub fn new(longitude: f64, latitude: f64) -> Option<Position> {
        let is_on_earth =
            (-180.0..=180.0).contains(&longitude) && (-90.0..=90.0).contains(&latitude);
        is_on_earth.then_some(Position { longitude, latitude })
    }
}

/// A closed shape of a map.
#[derive(Clone, Debug, PartialEq)]
pub struct Feature {
    pub(crate) id: String,
    pub(crate) name: Option<String>,
    /// Its corners in order, the first one not repeated at the end.
    pub(crate) ring: Vec<Position>,
    pub(crate) holes: usize,
}

impl Feature {
    /// What it is chosen by: the map's own identifier, else its number in the file.
    pub fn id(&self) -> &str {
        &self.id
    }

    /// Its name on the map, if it has one.
    pub fn name(&self) -> Option<&str> {
        self.name.as_deref()
    }

    /// Its corners in order, the first one not repeated at the end.
    pub fn corners(&self) -> &[Position] {
        &self.ring
    }

    /// How many holes it has; they are left out of its outline.
    pub fn holes(&self) -> usize {
        self.holes
    }

    /// The shape as sides on the ground.
    ///
    /// # Errors
    ///
    /// [`Error::Map`] where it is no outline of a building: fewer than three corners, more than
    /// 1,000, a side of over 10,000 ft, at a pole, or across the line where east and west meet.
    pub fn outline(&self) -> Result<MapOutline, Error> {
        MapOutline::of(self)
    }
}

/// The feature nearest to a position: one that holds it comes first.
pub fn nearest(features: &[Feature], at: Position) -> Option<&Feature> {
    features
        .iter()
        .filter_map(|feature| Some((ground::distance_m(feature, at)?, feature)))
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, feature)| feature)
}
