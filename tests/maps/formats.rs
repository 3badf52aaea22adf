//! One house in every format, and which shape of a map with several is chosen.

use fairfoot::maps::{Format, Position, features, nearest};

const GEOJSON: &str = r#"{"type":"FeatureCollection","features":[
 {"type":"Feature","id":"shed","properties":{"name":"Shed"},"geometry":{"type":"Polygon","coordinates":[[[-97.5,32.5],[-97.4999,32.5],[-97.4999,32.5001],[-97.5,32.5001],[-97.5,32.5]]]}},
 {"type":"Feature","id":7,"properties":{"name":"Main house"},"geometry":{"type":"MultiPolygon","coordinates":[[[[-97.6,32.6],[-97.5998,32.6],[-97.5998,32.6001],[-97.6,32.6001],[-97.6,32.6]],[[-97.5999,32.60003],[-97.59985,32.60003],[-97.59985,32.60006],[-97.5999,32.60003]]]]}}]}"#;
const KML: &str = r#"<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document><Folder><Placemark id="a"><name>Main &amp; house</name><MultiGeometry><Polygon><outerBoundaryIs><LinearRing><coordinates>
 -97.6,32.6,0
 -97.5998,32.6,0 -97.5998,32.6001,0	-97.6,32.6001,0 -97.6,32.6,0 </coordinates></LinearRing></outerBoundaryIs></Polygon></MultiGeometry></Placemark></Folder></Document></kml>"#;
const GPX: &str = r#"<?xml version="1.0"?><gpx version="1.1" creator="walk" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>round the house</name><trkseg>
<trkpt lat="32.6" lon="-97.6"/><trkpt lat="32.6" lon="-97.5998"/><trkpt lat="32.6001" lon="-97.5998"/><trkpt lat="32.6001" lon="-97.6"/></trkseg></trk></gpx>"#;
const OSM: &str = r#"<?xml version="1.0"?><osm version="0.6">
<node id="1" lat="32.6" lon="-97.6"/><node id="2" lat="32.6" lon="-97.5998"/><node id="3" lat="32.6001" lon="-97.5998"/><node id="4" lat="32.6001" lon="-97.6"/>
<way id="10"><nd ref="1"/><nd ref="2"/><nd ref="3"/><nd ref="9"/><nd ref="1"/><tag k="building" v="yes"/></way>
<way id="11"><nd ref="1"/><nd ref="2"/><nd ref="3"/><nd ref="4"/><nd ref="1"/><tag k="building" v="yes"/><tag k="name" v="Main &quot;house&quot;"/></way>
<way id="12"><nd ref="1"/><nd ref="2"/><nd ref="3"/></way></osm>"#;
const WKT: &str = "SRID=4326;POLYGON Z ((-97.6 32.6 0, -97.5998 32.6 0, -97.5998 32.6001 0, -97.6 32.6001 0, -97.6 32.6 0))";

#[test]
fn every_format_gives_the_same_house() {
    let texts = [(GEOJSON, "7"), (KML, "a"), (GPX, "1"), (OSM, "11"), (WKT, "1")];
    let mut areas = Vec::new();
    for (text, id) in texts {
        let format = Format::of(text).unwrap_or_else(|| panic!("{text}"));
        let found = features(format, text).unwrap();
        let house = found.iter().find(|feature| feature.id() == id).unwrap();
        let outline = house.outline().unwrap();
        assert_eq!(outline.sides().len(), 4, "{text}");
        areas.push(outline.plane_text());
    }
    assert!(areas.iter().all(|area| *area == areas[0]), "{areas:?}");
}

#[test]
fn incomplete_and_open_osm_ways_are_left_out() {
    let found = features(Format::Osm, OSM).unwrap();
    assert_eq!(found.iter().map(|feature| feature.id()).collect::<Vec<_>>(), ["11"]);
    assert_eq!(found[0].name(), Some("Main \"house\""));
}

#[test]
fn a_shape_that_contains_the_position_is_nearest() {
    let found = features(Format::GeoJson, GEOJSON).unwrap();
    let inside = Position::new(-97.5999, 32.60005).unwrap();
    assert_eq!(nearest(&found, inside).unwrap().name(), Some("Main house"));
    let beside = Position::new(-97.4998, 32.50005).unwrap();
    assert_eq!(nearest(&found, beside).unwrap().id(), "shed");
}

#[test]
fn a_name_of_a_map_that_a_sides_file_cannot_have_is_mended() {
    let shape = features(Format::Wkt, WKT).unwrap().remove(0);
    let outline = shape.outline().unwrap();
    // A byte-order mark, curly quotation marks, a line separator.
    let names = [
        ("14 Lark\u{feff}spur", "14 Larkspur"),
        ("The \u{201c}Barn\u{201d}", "The Barn"),
        ("a\u{2028}b", "ab"),
        ("\"\u{200b} ", "Map"),
    ];
    for (name, mended) in names {
        let block = outline.block(name, "House", name);
        assert!(block.contains(&format!("map outline \"{mended}\" of \"House\"\n")), "{block}");
        let house = "level \"Ground\"\nliving \"House\"\nnorth 8'\neast 12'\nsouth 8'\nwest 12'\n";
        let source = fairfoot::Source::new("map.sides", format!("{house}{block}"));
        assert!(fairfoot::sketch::parse(source).is_ok(), "{block}");
    }
}

#[test]
fn a_block_names_its_source_its_holes_and_the_space() {
    let found = features(Format::GeoJson, GEOJSON).unwrap();
    let outline = found[1].outline().unwrap();
    let block = outline.block("City \"map\"\n", "House", "roofs.geojson, shape 7, 2026-02-01");
    let lines: Vec<&str> = block.lines().collect();
    assert_eq!(lines[0], "# from roofs.geojson, shape 7, 2026-02-01");
    assert!(lines[2].starts_with("# 1 hole left out"), "{block}");
    assert_eq!(lines[3], "map outline \"City map\" of \"House\"");
    // A degree of longitude at φ is 111,412.84 cos φ − 93.5 cos 3φ + 0.118 cos 5φ meters long (the usual
    // series, from memory): 93,872.6 m at 32.6°, so 0.0002° are 18.7745 m or 61.60 ft.
    assert_eq!(lines[4], "  bearing N 90° E 61.6'");
    assert_eq!(lines.len(), 8);
}

/// The invented house of `sketches/map-outline.sides`, in files of all formats.
#[test]
fn the_demo_is_one_house_in_every_format() {
    let sides = include_str!("../../sketches/map-outline.sides");
    let written: Vec<&str> =
        sides.lines().skip_while(|line| !line.starts_with("map outline")).collect();
    assert_eq!(written.len(), 17);
    let files = [
        (include_str!("../../sketches/maps/larkspur.geojson"), Format::GeoJson),
        (include_str!("../../sketches/maps/larkspur.kml"), Format::Kml),
        (include_str!("../../sketches/maps/larkspur.gpx"), Format::Gpx),
        (include_str!("../../sketches/maps/larkspur.wkt"), Format::Wkt),
        (include_str!("../../sketches/maps/larkspur.osm"), Format::Osm),
    ];
    let in_the_house = Position::new(-92.3076, 28.4124).unwrap();
    for (text, format) in files {
        assert_eq!(Format::of(text), Some(format));
        let found = features(format, text).unwrap();
        let house = nearest(&found, in_the_house).unwrap();
        let block = house.outline().unwrap().block("14 Larkspur Lane", "House", "a map");
        let lines: Vec<&str> = block.lines().skip_while(|line| line.starts_with('#')).collect();
        assert_eq!(lines, written, "{format:?}");
    }
}

/// A building of two ways that a relation joins, one walked backward; a court that is a separate way; a street.
#[test]
fn a_building_of_several_ways_is_one_shape() {
    const MAP: &str = r#"<?xml version="1.0" encoding="UTF-8"?><osm version="0.6" generator="a server">
<node id="1" lat="32.6" lon="-97.6"/><node id="2" lat="32.6" lon="-97.5998"/><node id="3" lat="32.6001" lon="-97.5998"/><node id="4" lat="32.6001" lon="-97.6"/>
<node id="5" lat="32.60003" lon="-97.5999"/><node id="6" lat="32.60003" lon="-97.59985"/><node id="7" lat="32.60006" lon="-97.5999"/>
<way id="10"><nd ref="1"/><nd ref="2"/><nd ref="3"/></way>
<way id="11"><nd ref="1"/><nd ref="4"/><nd ref="3"/></way>
<way id="12"><nd ref="5"/><nd ref="6"/><nd ref="7"/><nd ref="5"/></way>
<way id="13"><nd ref="1"/><nd ref="5"/><tag k="highway" v="residential"/></way>
<relation id="10"><member type="way" ref="10" role="outer"/><member type="way" ref="11" role="outer"/><member type="way" ref="12" role="inner"/><member type="node" ref="1" role="entrance"/>
<tag k="type" v="multipolygon"/><tag k="building" v="house"/><tag k="addr:housenumber" v="4"/><tag k="addr:street" v="Larch Court"/></relation>
<relation id="11"><member type="way" ref="99" role="outer"/><tag k="building" v="yes"/></relation></osm>"#;
    let found = features(Format::Osm, MAP).unwrap();
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!((found[0].id(), found[0].name()), ("r10", Some("4 Larch Court")));
    assert_eq!((found[0].corners().len(), found[0].holes()), (4, 1));
    // The same rectangle as in the other formats of this file.
    let alone = features(Format::Wkt, WKT).unwrap();
    assert_eq!(found[0].outline().unwrap().plane_text(), alone[0].outline().unwrap().plane_text());
}

#[test]
fn text_with_breaks_and_several_shapes_is_read() {
    let text = "POLYGON ((\n  -97.6 32.6,\n  -97.5998 32.6,\n  -97.5998 32.6001,\n  -97.6 32.6\n))\r\n\r\nSRID=4326;POLYGON ((-97.6 32.6, -97.5998 32.6, -97.5998 32.6001, -97.6 32.6))\r\n";
    assert_eq!(features(Format::Wkt, text).unwrap().len(), 2);
    let half = features(Format::Wkt, "POLYGON ((-97.6 32.6,\n -97.5998 32.6").unwrap_err();
    assert!(half.to_string().contains("ends in the middle"), "{half}");
}

/// Counties often write the names of properties in capitals.
#[test]
fn an_address_in_capitals_is_shown() {
    let text = r#"{"type":"Feature","properties":{"OBJECTID":3,"ADDRESS":"16 Larch Court","NAME":null},"geometry":{"type":"Polygon","coordinates":[[[-97.5,32.5],[-97.4999,32.5],[-97.4999,32.5001],[-97.5,32.5]]]}}"#;
    let found = features(Format::GeoJson, text).unwrap();
    assert_eq!(found[0].name(), Some("16 Larch Court"));
}
