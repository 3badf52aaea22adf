//! A general-purpose geometry library as a third computation, in floats.

use approx::assert_relative_eq;
use geo::{Area as _, LineString, Polygon};

use super::twin::random_house;
use super::walks::{read_house, sides_file};

#[test]
fn geo_finds_the_same_area_to_a_billionth() {
    for seed in 0..1_000 {
        let house = read_house(&sides_file("", &random_house::house(seed)));
        let outline = house.spaces()[0].outline();
        let ring: LineString<f64> = outline
            .corners()
            .iter()
            .map(|corner| (corner.east.feet(), corner.north.feet()))
            .collect();
        let area = Polygon::new(ring, Vec::new()).unsigned_area();
        assert_relative_eq!(outline.area().sq_ft(), area, max_relative = 1e-9);
    }
}
