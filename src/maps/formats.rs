//! Reads closed shapes from map files.
//!
//! GeoJSON (RFC 7946), KML 2.2 and 2.3 (OGC 07-147r2, 12-007r2), GPX 1.0 and 1.1 tracks, WKT (OGC 06-103r4) and OSM
//! XML (API 0.6). The first four give longitude first; OSM names both coordinates.

use quick_xml::Reader;
use quick_xml::events::Event;

use crate::error::Error;
use crate::maps::Feature;
use crate::maps::osm::osm;
use crate::maps::shapes::{Shapes, wrong};

/// The most bytes a map file may have.
pub const MOST_MAP_BYTES: usize = 50_000_000;
/// The deepest nesting a map file may have.
const DEEPEST: usize = 64;

/// The format of a map file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Format {
    /// GeoJSON, RFC 7946.
    GeoJson,
    /// KML.
    Kml,
    /// GPX: each track segment or route becomes a closed shape.
    Gpx,
    /// Well-known text: one shape after another, each on one or more lines.
    Wkt,
    /// OpenStreetMap XML.
    Osm,
}

impl Format {
    /// The format of a text, recognized by its beginning; `None` if it is not one of these.
    #[must_use]
    pub fn of(text: &str) -> Option<Format> {
        let text = text.trim_start_matches('\u{feff}').trim_start();
        let upper: String = text.chars().take(20).collect::<String>().to_uppercase();
        let shapes = ["POLYGON", "MULTIPOLYGON", "LINESTRING", "GEOMETRYCOLLECTION", "SRID="];
        if text.starts_with('{') {
            return Some(Format::GeoJson);
        }
        if shapes.iter().any(|shape| upper.starts_with(shape)) {
            return Some(Format::Wkt);
        }
        match root(text)?.as_str() {
            "kml" => Some(Format::Kml),
            "gpx" => Some(Format::Gpx),
            "osm" => Some(Format::Osm),
            _ => None,
        }
    }
}

/// The name of an XML file's root element, without its namespace prefix.
fn root(text: &str) -> Option<String> {
    let mut reader = Reader::from_str(text);
    loop {
        match reader.read_event().ok()? {
            Event::Start(start) | Event::Empty(start) => {
                return Some(start.local_name().as_ref().to_lowercase());
            }
            Event::Eof => return None,
            _ => {}
        }
    }
}

/// Every closed shape of a map, in file order.
///
/// # Errors
///
/// [`Error::Map`] if the text is not in this format, is too large or too deeply nested, or has no closed shape.
pub fn features(format: Format, text: &str) -> Result<Vec<Feature>, Error> {
    if text.len() > MOST_MAP_BYTES {
        return Err(wrong("the map has more than 50 MB; save the part with the house"));
    }
    let text = text.trim_start_matches('\u{feff}');
    if matches!(format, Format::Kml | Format::Gpx | Format::Osm) {
        refuse_hostile_xml(text)?;
    }
    let mut shapes = Shapes::default();
    match format {
        Format::GeoJson => geojson(text, &mut shapes)?,
        Format::Kml => kml(text, &mut shapes)?,
        Format::Gpx => gpx(text, &mut shapes)?,
        Format::Wkt => wkt(text, &mut shapes)?,
        Format::Osm => osm(text, &mut shapes)?,
    }
    if shapes.list.is_empty() {
        return Err(wrong("the map has no closed shape; a house is a polygon or a closed way"));
    }
    Ok(shapes.list)
}

/// Rejects document type declarations and deep nesting, which no map needs and which are used to attack parsers.
fn refuse_hostile_xml(text: &str) -> Result<(), Error> {
    let mut reader = Reader::from_str(text);
    let mut open: Vec<String> = Vec::new();
    loop {
        match reader.read_event() {
            Ok(Event::DocType(_)) => {
                return Err(wrong(
                    "the map declares a document type, which no map needs; save it again without",
                ));
            }
            Ok(Event::Start(start)) => {
                open.push(start.name().as_ref().to_owned());
                if open.len() > DEEPEST {
                    return Err(wrong(
                        "things stand more than 64 deep inside each other; this is no map",
                    ));
                }
            }
            Ok(Event::End(_)) => {
                open.pop();
            }
            Ok(Event::Eof) if open.is_empty() => return Ok(()),
            Ok(Event::Eof) => return Err(wrong("the map ends in the middle; get the file again")),
            Ok(_) => {}
            Err(error) => return Err(wrong(format!("the map is no well-formed XML: {error}"))),
        }
    }
}

fn geojson(text: &str, shapes: &mut Shapes) -> Result<(), Error> {
    let map: ::geojson::GeoJson =
        text.parse().map_err(|error| wrong(format!("the map is no GeoJSON: {error}")))?;
    let mut one = |geometry: &::geojson::Geometry, id: Option<String>, name: Option<String>| {
        geojson_geometry(geometry, id.as_deref(), name.as_deref(), shapes)
    };
    match &map {
        ::geojson::GeoJson::Geometry(geometry) => one(geometry, None, None),
        ::geojson::GeoJson::Feature(feature) => geojson_feature(feature, &mut one),
        ::geojson::GeoJson::FeatureCollection(all) => {
            all.features.iter().try_for_each(|feature| geojson_feature(feature, &mut one))
        }
    }
}

type EachGeometry<'a> =
    &'a mut dyn FnMut(&::geojson::Geometry, Option<String>, Option<String>) -> Result<(), Error>;

fn geojson_feature(feature: &::geojson::Feature, one: EachGeometry<'_>) -> Result<(), Error> {
    let id = feature.id.as_ref().map(|id| match id {
        ::geojson::feature::Id::String(text) => text.clone(),
        ::geojson::feature::Id::Number(number) => number.to_string(),
    });
    let name = ["name", "title", "address", "full_address", "fulladdr", "addr:full"]
        .into_iter()
        .find_map(|key| geojson_text(feature, key));
    let street = || {
        let number = geojson_text(feature, "addr:housenumber")?;
        let street = geojson_text(feature, "addr:street").unwrap_or_default();
        Some(format!("{number} {street}").trim_end().to_owned())
    };
    let name = name.or_else(street);
    match &feature.geometry {
        Some(geometry) => one(geometry, id, name),
        None => Ok(()),
    }
}

/// The text of a property. Its name may also be in capitals, as in the files of many counties.
fn geojson_text(feature: &::geojson::Feature, wanted: &str) -> Option<String> {
    let properties = feature.properties.as_ref()?;
    let found = properties.iter().find(|(key, _)| key.eq_ignore_ascii_case(wanted))?;
    found.1.as_str().filter(|text| !text.trim().is_empty()).map(str::to_owned)
}

fn geojson_geometry(
    geometry: &::geojson::Geometry,
    id: Option<&str>,
    name: Option<&str>,
    shapes: &mut Shapes,
) -> Result<(), Error> {
    use ::geojson::GeometryValue;
    let mut polygon = |rings: &[Vec<::geojson::Position>], part: Option<usize>| {
        let Some(outer) = rings.first() else { return Ok(()) };
        let pairs = outer.iter().map(|position| {
            let at = |i: usize| position.as_slice().get(i).copied().unwrap_or(f64::NAN);
            (at(0), at(1))
        });
        let id = id.map(|id| part.map_or(id.to_owned(), |part| format!("{id}.{part}")));
        shapes.ring(id, name.map(str::to_owned), pairs, rings.len() - 1)
    };
    match &geometry.value {
        GeometryValue::Polygon { coordinates } => polygon(coordinates, None),
        GeometryValue::MultiPolygon { coordinates } => coordinates
            .iter()
            .enumerate()
            .try_for_each(|(i, rings)| polygon(rings, (coordinates.len() > 1).then_some(i + 1))),
        GeometryValue::GeometryCollection { geometries } => {
            geometries.iter().try_for_each(|inner| geojson_geometry(inner, id, name, shapes))
        }
        _ => Ok(()),
    }
}

fn kml(text: &str, shapes: &mut Shapes) -> Result<(), Error> {
    let map: ::kml::Kml<f64> = ::kml::KmlReader::<_, f64>::from_string(text)
        .read()
        .map_err(|error| wrong(format!("the map is no KML: {error}")))?;
    kml_element(&map, shapes)
}

fn kml_element(element: &::kml::Kml<f64>, shapes: &mut Shapes) -> Result<(), Error> {
    use ::kml::Kml;
    match element {
        Kml::KmlDocument(document) => {
            document.elements.iter().try_for_each(|inner| kml_element(inner, shapes))
        }
        Kml::Document { elements, .. } => {
            elements.iter().try_for_each(|inner| kml_element(inner, shapes))
        }
        Kml::Folder(folder) => {
            folder.elements.iter().try_for_each(|inner| kml_element(inner, shapes))
        }
        Kml::Placemark(placemark) => {
            let id = placemark.attrs.get("id").cloned();
            placemark.geometry.as_ref().map_or(Ok(()), |geometry| {
                kml_geometry(geometry, id.as_deref(), placemark.name.as_deref(), shapes)
            })
        }
        Kml::Polygon(polygon) => kml_polygon(polygon, None, None, shapes),
        Kml::MultiGeometry(all) => {
            all.geometries.iter().try_for_each(|one| kml_geometry(one, None, None, shapes))
        }
        _ => Ok(()),
    }
}

fn kml_geometry(
    geometry: &::kml::types::Geometry<f64>,
    id: Option<&str>,
    name: Option<&str>,
    shapes: &mut Shapes,
) -> Result<(), Error> {
    use ::kml::types::Geometry;
    match geometry {
        Geometry::Polygon(polygon) => kml_polygon(polygon, id, name, shapes),
        Geometry::LinearRing(ring) => {
            let pairs = ring.coords.iter().map(|coord| (coord.x, coord.y));
            shapes.ring(id.map(str::to_owned), name.map(str::to_owned), pairs, 0)
        }
        Geometry::MultiGeometry(all) => {
            all.geometries.iter().try_for_each(|one| kml_geometry(one, id, name, shapes))
        }
        _ => Ok(()),
    }
}

fn kml_polygon(
    polygon: &::kml::types::Polygon<f64>,
    id: Option<&str>,
    name: Option<&str>,
    shapes: &mut Shapes,
) -> Result<(), Error> {
    let pairs = polygon.outer.coords.iter().map(|coord| (coord.x, coord.y));
    shapes.ring(id.map(str::to_owned), name.map(str::to_owned), pairs, polygon.inner.len())
}

fn gpx(text: &str, shapes: &mut Shapes) -> Result<(), Error> {
    let map = ::gpx::read(text.as_bytes())
        .map_err(|error| wrong(format!("the map is no GPX: {error}")))?;
    for track in &map.tracks {
        for segment in &track.segments {
            let pairs = segment.points.iter().map(|point| (point.point().x(), point.point().y()));
            shapes.ring(None, track.name.clone(), pairs, 0)?;
        }
    }
    for route in &map.routes {
        let pairs = route.points.iter().map(|point| (point.point().x(), point.point().y()));
        shapes.ring(None, route.name.clone(), pairs, 0)?;
    }
    Ok(())
}

/// Reads the shapes of well-known text. Each may span several lines and ends where its brackets close.
fn wkt(text: &str, shapes: &mut Shapes) -> Result<(), Error> {
    let mut shape = String::new();
    let mut depth = 0_usize;
    for line in text.lines().map(str::trim).filter(|line| !line.is_empty()) {
        for character in line.chars() {
            depth = match character {
                '(' => depth + 1,
                ')' => depth.saturating_sub(1),
                _ => depth,
            };
            if depth > DEEPEST {
                return Err(wrong(
                    "brackets stand more than 64 deep inside each other; this is no map",
                ));
            }
        }
        shape.push_str(line);
        shape.push(' ');
        if depth == 0 {
            wkt_line(&std::mem::take(&mut shape), shapes)?;
        }
    }
    if shape.is_empty() {
        Ok(())
    } else {
        Err(wrong("the map ends in the middle; get the file again"))
    }
}

fn wkt_line(line: &str, shapes: &mut Shapes) -> Result<(), Error> {
    let shape = line.rsplit_once(';').map_or(line, |(_, shape)| shape);
    let shape: ::wkt::Wkt<f64> =
        shape.trim().parse().map_err(|error| wrong(format!("the map is no WKT: {error}")))?;
    wkt_shape(&shape, shapes)
}

fn wkt_shape(shape: &::wkt::Wkt<f64>, shapes: &mut Shapes) -> Result<(), Error> {
    use ::wkt::Wkt;
    let mut polygon = |polygon: &::wkt::types::Polygon<f64>| {
        let rings = polygon.rings();
        let Some(outer) = rings.first() else { return Ok(()) };
        let pairs = outer.coords().iter().map(|coord| (coord.x, coord.y));
        shapes.ring(None, None, pairs, rings.len() - 1)
    };
    match shape {
        Wkt::Polygon(one) => polygon(one),
        Wkt::MultiPolygon(all) => all.polygons().iter().try_for_each(polygon),
        Wkt::LineString(line) => {
            let coords = line.coords();
            let is_closed = coords.len() > 3 && coords.first() == coords.last();
            let pairs = coords.iter().map(|coord| (coord.x, coord.y));
            if is_closed { shapes.ring(None, None, pairs, 0) } else { Ok(()) }
        }
        Wkt::GeometryCollection(all) => {
            all.geometries().iter().try_for_each(|inner| wkt_shape(inner, shapes))
        }
        _ => Ok(()),
    }
}
