//! Malicious maps: refused with a sentence, never a crash, never slow.

use fairfoot::maps::{Format, features};

fn refused(format: Format, text: &str, because: &str) {
    let error = features(format, text).expect_err(because).to_string();
    assert!(error.contains(because), "{error}");
}

#[test]
fn entities_are_refused_before_they_grow() {
    let laughs = "<?xml version=\"1.0\"?><!DOCTYPE kml [<!ENTITY a \"ha\"><!ENTITY b \"&a;&a;&a;\">]><kml><Placemark><name>&b;</name></Placemark></kml>";
    for format in [Format::Kml, Format::Gpx, Format::Osm] {
        refused(format, laughs, "document type");
    }
}

#[test]
fn input_nested_too_deeply_is_refused() {
    let deep = format!("<kml>{}{}</kml>", "<Folder>".repeat(5_000), "</Folder>".repeat(5_000));
    refused(Format::Kml, &deep, "64 deep");
    let deep = format!("GEOMETRYCOLLECTION ({}", "GEOMETRYCOLLECTION (".repeat(5_000));
    refused(Format::Wkt, &deep, "64 deep");
    let deep = format!("{{\"type\":\"Polygon\",\"coordinates\":{}", "[".repeat(50_000));
    // Here it is the reader of JSON that stops (at 128), before the map is looked at.
    refused(Format::GeoJson, &deep, "recursion limit exceeded");
}

#[test]
fn a_million_corners_are_refused() {
    let mut text = String::from("POLYGON ((");
    for i in 0..1_000_000 {
        text.push_str(if i % 2 == 0 { "1 1, " } else { "2 2, " });
    }
    text.push_str("1 1))");
    refused(Format::Wkt, &text, "500,000 corners");
}

#[test]
fn numbers_that_are_no_place_are_refused() {
    for corner in ["NaN 1", "inf 1", "190 1", "1 91", "1e300 1"] {
        let text = format!("POLYGON (({corner}, 2 2, 3 3, {corner}))");
        let error = features(Format::Wkt, &text).expect_err(corner).to_string();
        assert!(error.contains("no place on the earth") || error.contains("no WKT"), "{error}");
    }
    let text = "{\"type\":\"Polygon\",\"coordinates\":[[[1],[2,2],[3,3],[1]]]}";
    assert!(features(Format::GeoJson, text).is_err());
}

#[test]
fn the_pole_and_the_date_line_say_so() {
    let pole = "POLYGON ((0 89.9999, 90 89.9999, 180 89.9999, -90 89.9999, 0 89.9999))";
    let line =
        "POLYGON ((179.9999 10, -179.9999 10, -179.9999 10.0001, 179.9999 10.0001, 179.9999 10))";
    for (text, because) in [(pole, "east and west"), (line, "east and west meet")] {
        let shape = features(Format::Wkt, text).unwrap().remove(0);
        let error = shape.outline().expect_err(because).to_string();
        assert!(error.contains(because), "{error}");
    }
    let pole = "POLYGON ((0 89.9999, 90 89.9999, 100 89.9999, 0 89.9999))";
    let shape = features(Format::Wkt, pole).unwrap().remove(0);
    assert!(shape.outline().unwrap_err().to_string().contains("at a pole"));
}

#[test]
fn half_a_file_is_refused() {
    let whole = "<osm version=\"0.6\"><node id=\"1\" lat=\"1\" lon=\"1\"/></osm>";
    for end in 1..whole.len() {
        if whole.is_char_boundary(end) {
            assert!(features(Format::Osm, &whole[..end]).is_err(), "{}", &whole[..end]);
        }
    }
    refused(Format::Osm, whole, "no closed shape");
}

#[test]
fn a_country_is_no_house() {
    let text = "POLYGON ((10 50, 11 50, 11 51, 10 51, 10 50))";
    let error = features(Format::Wkt, text).unwrap()[0].outline().unwrap_err().to_string();
    assert!(error.contains("a wall is at most 10,000 ft"), "{error}");
}

/// The two diagonals of a rectangle cross; out and back again encloses no area.
#[test]
fn a_shape_that_crosses_itself_or_has_no_area_is_refused() {
    for (text, because) in [
        ("POLYGON ((10 50, 10.0002 50.0001, 10.0002 50, 10 50.0002, 10 50))", "crosses itself"),
        ("POLYGON ((10 50, 10.0002 50, 10.0001 50, 10 50))", "no area"),
    ] {
        let error = features(Format::Wkt, text).unwrap()[0].outline().unwrap_err().to_string();
        assert!(error.contains(because), "{error}");
    }
}

#[test]
fn a_map_of_a_local_grid_is_told_what_to_save() {
    let text = "POLYGON ((500000 3340000, 500020 3340000, 500020 3340010, 500000 3340000))";
    refused(Format::Wkt, text, "saved in degrees (WGS 84)");
}

/// A way of 1,000 corners that 3,000 relations name: three million corners from a small file.
#[test]
fn relations_that_name_one_long_way_again_and_again_are_refused() {
    let mut text = String::from("<osm version=\"0.6\">");
    for i in 1..=1_000 {
        text.push_str(&format!("<node id=\"{i}\" lat=\"1\" lon=\"1.{i}\"/>"));
    }
    text.push_str("<way id=\"1\">");
    (1..=1_000).for_each(|i| text.push_str(&format!("<nd ref=\"{i}\"/>")));
    text.push_str("</way>");
    for i in 1..=3_000 {
        text.push_str(&format!("<relation id=\"{i}\"><member type=\"way\" ref=\"1\" role=\"outer\"/><tag k=\"building\" v=\"yes\"/></relation>"));
    }
    text.push_str("</osm>");
    refused(Format::Osm, &text, "too many corners");
}
