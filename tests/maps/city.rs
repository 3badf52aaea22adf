//! Outlines that others published in geographic coordinates, against areas that they, or others, computed.

use approx::assert_relative_eq;
use fairfoot::maps::{Format, MapOutline, features};

const SQUARE_FOOT_M2: f64 = 0.092_903_04;

fn outline_of(format: Format, text: &str, id: &str) -> MapOutline {
    let found = features(format, text).unwrap();
    let shape = found.iter().find(|feature| feature.id() == id);
    shape.unwrap_or_else(|| panic!("{id}")).outline().unwrap()
}

/// New York City, Building Footprints (NYC Open Data, free to use without restriction as its terms say, from memory),
/// three buildings as the tests of timkeane/nyc-lib at 94f5bf8 (`__tests__/nyc/ol/source/SocrataJson.test.js`) carry
/// them: corners on WGS 84, and the city's own `shape_area` and `shape_len` in the plane of its State Plane zone (EPSG
/// 2263, US survey feet), computed by the city before the corners were converted to degrees.
const NEW_YORK: &str = r#"{"type": "FeatureCollection", "features": [
{"type": "Feature", "id": "275485", "properties": {}, "geometry": {"type": "MultiPolygon", "coordinates": [[[[-74.01304457862572, 40.70632052045842], [-74.01321517225465, 40.70611851629881], [-74.01323587395717, 40.706127537044296], [-74.01341333391959, 40.70620486412582], [-74.01358827831403, 40.706281093506675], [-74.01376133552826, 40.70635650158023], [-74.01379018533858, 40.70636907196765], [-74.013633599994, 40.70657718078147], [-74.0135821144968, 40.706554747026104], [-74.0134137824291, 40.706481398504444], [-74.01324719629538, 40.706408809566625], [-74.01308135135197, 40.70633654358643], [-74.01304457862572, 40.70632052045842]]]]}},
{"type": "Feature", "id": "852309", "properties": {}, "geometry": {"type": "MultiPolygon", "coordinates": [[[[-74.00182603173869, 40.70710012345115], [-74.00187241093413, 40.707073663884195], [-74.00202286425545, 40.7072562589055], [-74.0020197035897, 40.70725792040424], [-74.00197529687047, 40.707281276834294], [-74.00182603173869, 40.70710012345115]]]]}},
{"type": "Feature", "id": "43091", "properties": {}, "geometry": {"type": "MultiPolygon", "coordinates": [[[[-74.00523311503459, 40.70830940910971], [-74.00539093614763, 40.70824305576938], [-74.0054368945422, 40.708288068357874], [-74.00551417920087, 40.70836376254663], [-74.0054419867544, 40.708406445706224], [-74.00552527408277, 40.70848801993983], [-74.00552868127441, 40.70849135616985], [-74.00562108387545, 40.708581856661525], [-74.00555307669444, 40.70862278639004], [-74.00545209638875, 40.70852388448237], [-74.00526886960459, 40.708344428356], [-74.00523311503459, 40.70830940910971]]]]}}]}"#;

#[test]
fn new_yorks_own_areas_are_those_of_its_outlines() {
    // The building's number, and the city's own area and perimeter.
    let city = [
        ("275485", 16_246.180_409_852, 546.749_026_687_65),
        ("852309", 1_252.574_983_999_54, 188.524_488_267_2),
        ("43091", 4_889.626_715_011_74, 380.579_378_201_62),
    ];
    for (id, sq_ft, feet) in city {
        let outline = outline_of(Format::GeoJson, NEW_YORK, id);
        // The zone's plane is 4 parts in a million shorter there than the ground: 8 for an area, compared within 9.
        assert_relative_eq!(outline.plane_sq_ft(), sq_ft, max_relative = 9e-6);
        assert!(outline.plane_sq_ft() > sq_ft * (1.0 + 7e-6), "{id}");
        let around: f64 = outline.sides().iter().map(|side| side.feet).sum();
        assert_relative_eq!(around, feet, max_relative = 5e-6);
    }
}

/// The same three with Karney's geographiclib 2.1 for Python, in square feet (computed for this test).
#[test]
fn new_yorks_outlines_have_their_areas_on_the_ellipsoid() {
    for (id, sq_ft) in
        [("275485", 16_246.309_404), ("852309", 1_252.585_228), ("43091", 4_889.666_360)]
    {
        let outline = outline_of(Format::GeoJson, NEW_YORK, id);
        // An area on the ellipsoid is a difference of far larger ones: a few parts in a hundred million are lost.
        assert_relative_eq!(outline.geodesic_sq_ft(), sq_ft, max_relative = 1e-7);
        assert_relative_eq!(outline.plane_sq_ft(), sq_ft, max_relative = 1e-6);
    }
}

/// `buildings.osm` says where it is from. Areas in square meters, and perimeters, by geographiclib 2.1 for Python from
/// the corners of the package's own file (computed for this test).
#[test]
fn buildings_of_openstreetmap_have_their_areas() {
    let text = include_str!("buildings.osm");
    for (id, square_meters, meters) in [
        ("33748706", 1_686.764_576, 195.871_420),
        ("105582211", 149.399_712, 52.588_529),
        ("106227181", 266.132_732, 83.262_825),
    ] {
        let outline = outline_of(Format::Osm, text, id);
        let geodesic = outline.geodesic_sq_ft() * SQUARE_FOOT_M2;
        assert_relative_eq!(geodesic, square_meters, max_relative = 1e-7);
        let plane = outline.plane_sq_ft() * SQUARE_FOOT_M2;
        assert_relative_eq!(plane, square_meters, max_relative = 1e-6);
        let around: f64 = outline.sides().iter().map(|side| side.feet * 0.3048).sum();
        assert_relative_eq!(around, meters, max_relative = 1e-6);
    }
}

#[test]
fn a_building_whose_corners_are_missing_is_left_out() {
    let text = include_str!("buildings.osm");
    assert!(text.contains("way id=\"105582213\""));
    let found = features(Format::Osm, text).unwrap();
    assert_eq!(found.len(), 3);
    assert_eq!(found[0].name(), Some("Pfarrkirche Sankt Michael"));
}
