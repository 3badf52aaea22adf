//! Ground outlines of Vienna buildings compared with the areas that the city states for them.
//!
//! City of Vienna, open data, sheet 102081 ("Datenquelle: Stadt Wien - data.wien.gv.at"), as cut by the source package
//! cjdb 2.3.0. Its 490 ground surfaces have corners on a grid of 1 mm and an area, `Flaeche`, to 0.01 m², presumably
//! computed by the city from finer corners. The file is not kept here: `fetch_vienna.py`, next to this file, fetches
//! it.

use std::io::Write;
use std::path::PathBuf;
use std::sync::OnceLock;

use fairfoot::units::Area;
use serde_json::Value;
use sha2::{Digest, Sha256};

use super::sheets::areas;

/// The environment variable with the path of the file.
const PLACE: &str = "FAIRFOOT_VIENNA";
/// The fingerprint of the file that the counts below were taken from.
const SHA256: &str = "c15be8077421fb8797cee9af8332e3b33c531e37d3083e51ce22b13a11152b9f";

/// A corner, east then north, in millimeters.
pub(crate) type Corner = (i64, i64);

/// A ground or roof surface: its rings (the outer one first, then its holes) and its stated area.
pub(crate) struct Surface {
    /// `GroundSurface` or `RoofSurface`.
    pub(crate) kind: String,
    /// Corners without a repeated first one.
    pub(crate) rings: Vec<Vec<Corner>>,
    /// In square meters, to 0.01.
    stated: String,
}

/// The surfaces of the file; `None`, with a message, if no path is given.
///
/// Panics if a path is given and the file is missing or is a different one.
pub(crate) fn surfaces() -> Option<&'static [Surface]> {
    static READ: OnceLock<Option<Vec<Surface>>> = OnceLock::new();
    READ.get_or_init(|| {
        let Some(place) = std::env::var_os(PLACE).map(PathBuf::from) else {
            let reported = format!(
                "\nSKIPPED: the outlines of Vienna are not here; run \
                 `python3 tests/published/fetch_vienna.py FOLDER`, then \
                 `{PLACE}=FOLDER/vienna.jsonl cargo test --test published`\n"
            );
            // Past the capture of the test harness, which hides what a passing test prints.
            std::io::stderr().write_all(reported.as_bytes()).unwrap();
            return None;
        };
        let bytes = std::fs::read(&place)
            .unwrap_or_else(|error| panic!("{PLACE}={}: {error}", place.display()));
        let hex: String = Sha256::digest(&bytes).iter().map(|byte| format!("{byte:02x}")).collect();
        assert_eq!(hex, SHA256, "{} is another file", place.display());
        Some(read(&String::from_utf8(bytes).unwrap()))
    })
    .as_deref()
}

/// The ground and roof surfaces of a file of one feature to a line.
fn read(text: &str) -> Vec<Surface> {
    let mut lines = text.lines().map(|line| serde_json::from_str::<Value>(line).unwrap());
    let head = lines.next().expect("a first line");
    assert_eq!(head["transform"]["scale"], serde_json::json!([0.001, 0.001, 0.001]));
    let mut surfaces = Vec::new();
    for feature in lines {
        let corner = |index: &Value| -> Corner {
            let vertex = &feature["vertices"][usize::try_from(index.as_u64().unwrap()).unwrap()];
            (vertex[0].as_i64().unwrap(), vertex[1].as_i64().unwrap())
        };
        let ring = |indices: &Value| -> Vec<Corner> { list(indices).iter().map(corner).collect() };
        for object in feature["CityObjects"].as_object().unwrap().values() {
            for geometry in object["geometry"].as_array().into_iter().flatten() {
                if geometry["type"] != "MultiSurface" {
                    continue;
                }
                let semantics = &geometry["semantics"];
                let kinds = list(&semantics["values"]).iter();
                for (rings, kind) in list(&geometry["boundaries"]).iter().zip(kinds) {
                    let kind = usize::try_from(kind.as_u64().unwrap()).unwrap();
                    let about = &semantics["surfaces"][kind];
                    let word = about["type"].as_str().unwrap();
                    if word == "WallSurface" {
                        continue;
                    }
                    surfaces.push(Surface {
                        kind: word.to_owned(),
                        rings: list(rings).iter().map(ring).collect(),
                        stated: about["Flaeche"].as_str().unwrap().to_owned(),
                    });
                }
            }
        }
    }
    surfaces
}

/// The items of a list.
fn list(value: &Value) -> &[Value] {
    value.as_array().expect("a list")
}

/// The ground surfaces, in the order of the file.
fn grounds() -> Option<Vec<&'static Surface>> {
    Some(surfaces()?.iter().filter(|surface| surface.kind == "GroundSurface").collect())
}

/// The ring without repeated corners: a side needs a length.
fn without_repeats(ring: &[Corner]) -> Vec<Corner> {
    let mut ring = ring.to_vec();
    ring.dedup();
    if ring.len() > 1 && ring.first() == ring.last() {
        ring.pop();
    }
    ring
}

/// Millimeters east and north as parts of a side or a start.
fn parts((east, north): Corner) -> Vec<String> {
    let part = |mm: i64, plus: &str, minus: &str| {
        let way = if mm < 0 { minus } else { plus };
        (mm != 0).then(|| format!("{way} {}", mm.abs()))
    };
    [part(north, "north", "south"), part(east, "east", "west")].into_iter().flatten().collect()
}

/// The sides of a ring, exact to the millimeter.
fn sides(ring: &[Corner]) -> String {
    let next = ring.iter().cycle().skip(1);
    let side = |(from, to): (&Corner, &Corner)| {
        let parts = parts((to.0 - from.0, to.1 - from.1));
        let slanted = if parts.len() == 2 { "diagonal " } else { "" };
        format!("{slanted}{}\n", parts.join(" "))
    };
    ring.iter().zip(next).map(side).collect()
}

/// The sides file of a surface: its first ring as living space, its holes as courts.
fn house(surface: &Surface) -> String {
    let rings: Vec<Vec<Corner>> = surface.rings.iter().map(|ring| without_repeats(ring)).collect();
    let origin = rings[0][0];
    let mut text = "units millimeters\nlevel \"Ground\"\nliving \"House\"\n".to_owned();
    text.push_str(&sides(&rings[0]));
    for (number, hole) in rings[1..].iter().enumerate() {
        let start = parts((hole[0].0 - origin.0, hole[0].1 - origin.1)).join(" ");
        text.push_str(&format!("court \"Court {number}\" start {start}\n{}", sides(hole)));
    }
    text
}

/// Square meters to 0.01 as halves of a square nanometer.
fn stated(surface: &Surface) -> Area {
    let (whole, decimals) = surface.stated.split_once('.').unwrap();
    let hundredths: i128 = format!("{whole}{decimals:0<2}").parse().unwrap();
    assert!(decimals.len() <= 2, "{}", surface.stated);
    Area::from_half_nm2(hundredths * 2 * 10_i128.pow(16))
}

#[test]
fn ground_surfaces_have_the_area_the_city_states() {
    let Some(grounds) = grounds() else { return };
    assert_eq!(grounds.len(), 490);
    let mut differences = Vec::new();
    let (mut sum, mut sum_stated) = (Area::ZERO, Area::ZERO);
    for surface in grounds {
        let text = house(surface);
        let checked = super::sheets::read_house(&text);
        let figured = areas(&text).gross().as_measured();
        let off = (figured - stated(surface)).abs();
        // Corners on a grid of 1 mm are up to 0.00071 m (half its diagonal) from finer ones, along
        // the whole outline; and what is stated is rounded to 0.01 m².
        let around = checked.spaces().iter().map(|space| space.outline().perimeter());
        let meters = around.sum::<fairfoot::units::Length>().nm() as f64 / 1e9;
        let allowed = meters * 0.00071 + 0.005;
        let square_meters = off.half_nm2() as f64 / Area::SQUARE_METER.half_nm2() as f64;
        assert!(square_meters <= allowed, "{square_meters} > {allowed} m²\n{text}");
        differences.push(off);
        sum = sum + figured;
        sum_stated = sum_stated + stated(surface);
    }
    // As another program computed them, in floats: 419 within 0.0051 m², 487 within 0.0101, none beyond 0.01386;
    // together 66,188.73 stated, 66,188.728 figured.
    let within = |ten_thousandths: i128| {
        let limit = ten_thousandths * 2 * 10_i128.pow(14);
        differences.iter().filter(|off| off.half_nm2() <= limit).count()
    };
    assert_eq!(within(51), 419);
    assert_eq!(within(101), 487);
    assert_eq!(differences.iter().max().unwrap().in_unit(Area::SQUARE_METER, 5), "0.01386");
    assert_eq!(sum_stated.in_unit(Area::SQUARE_METER, 2), "66188.73");
    assert_eq!(sum.in_unit(Area::SQUARE_METER, 3), "66188.728");
}

#[test]
fn ground_surfaces_are_walked_without_a_crossing() {
    // Every ring is valid once corners that repeat the one before are left out: 5 of the 525 rings have one, and no
    // ring touches itself otherwise. 30 surfaces have holes.
    let Some(grounds) = grounds() else { return };
    let rings = || grounds.iter().flat_map(|surface| &surface.rings);
    assert_eq!(rings().count(), 525);
    assert_eq!(grounds.iter().filter(|surface| surface.rings.len() > 1).count(), 30);
    let repeats = rings().filter(|ring| without_repeats(ring).len() < ring.len());
    assert_eq!(repeats.count(), 5);
    let faulty = grounds.iter().filter(|surface| fairfoot::read("ground", house(surface)).is_err());
    assert_eq!(faulty.count(), 0);
}
