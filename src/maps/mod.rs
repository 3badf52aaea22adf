//! Outlines from maps: a building drawn on a map becomes sides by bearing and length on the ground.
//!
//! A map usually shows the roof, seen from above. Its outline is only compared with the taped one and never decides
//! an area.
//!
//! Positions are longitude and latitude in degrees on the WGS 84 ellipsoid.
//!
//! ```
//! use fairfoot::maps::{Format, features};
//!
//! // A rectangle at sea, about 40 m by 25 m, at 45° north.
//! let text = "POLYGON ((-20 45, -19.9994926 45, -19.9994926 45.0002249, -20 45.0002249, -20 45))";
//! let shapes = features(Format::Wkt, text)?;
//! let outline = shapes[0].outline()?;
//! assert_eq!(outline.sides().len(), 4);
//! // The geodesic area (Karney) and the area in the plane agree to 1 in 100,000.
//! let (plane, geodesic) = (outline.plane_sq_ft(), outline.geodesic_sq_ft());
//! assert!((plane / geodesic - 1.0).abs() < 1e-5);
//! # Ok::<(), fairfoot::Error>(())
//! ```

mod formats;
mod ground;
mod osm;
mod shapes;

use crate::error::Error;
pub use formats::{Format, MOST_MAP_BYTES, features};
pub use ground::{MapOutline, MapSide};

/// A position on the earth.
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
    /// A position; `None` if a number is out of range.
    #[must_use]
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
    /// Its corners in order; the first is not repeated at the end.
    pub(crate) ring: Vec<Position>,
    pub(crate) holes: usize,
}

impl Feature {
    /// Its identifier in the map, or its number in the file if it has none.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.id
    }

    /// Its name on the map, if it has one.
    #[must_use]
    pub fn name(&self) -> Option<&str> {
        self.name.as_deref()
    }

    /// Its corners in order; the first is not repeated at the end.
    #[must_use]
    pub fn corners(&self) -> &[Position] {
        &self.ring
    }

    /// The number of its holes, which are not part of its outline.
    #[must_use]
    pub fn holes(&self) -> usize {
        self.holes
    }

    /// The shape as sides on the ground.
    ///
    /// # Errors
    ///
    /// [`Error::Map`] if it cannot be the outline of a building: it has fewer than three or more than 1,000 corners
    /// or a side over 10,000 ft, has no area, crosses itself, or lies at a pole or across the 180th meridian.
    pub fn outline(&self) -> Result<MapOutline, Error> {
        MapOutline::of(self)
    }
}

/// The feature nearest to a position; a feature that contains it is nearest. `None` if there is no feature.
#[must_use]
pub fn nearest(features: &[Feature], at: Position) -> Option<&Feature> {
    features
        .iter()
        .filter_map(|feature| Some((ground::distance_m(feature, at)?, feature)))
        .min_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, feature)| feature)
}
