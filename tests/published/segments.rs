//! Circular segments: a curved wall by its chord and rise.

use fairfoot::House;

use super::sheets::{In, is_near, is_printed, is_within, living};

/// A rectangle with a curved north wall: chord and rise as printed, and the side to which it bulges.
struct Curved {
    checked: House,
    chord: f64,
    depth: f64,
    unit: In,
}

impl Curved {
    /// Chord and rise as typed; the walls on each side of the chord are `depth` long.
    fn new(chord: &str, rise: &str, toward: &str, depth: &str, unit: In) -> Curved {
        let word = unit.word();
        let sides = [
            format!("north {depth} {word}"),
            format!("arc east {chord} {word} rise {rise} {word} {toward}"),
            format!("south {depth} {word}"),
            format!("west {chord} {word}"),
        ];
        Curved {
            checked: living("", &sides),
            chord: chord.parse().unwrap(),
            depth: depth.parse().unwrap(),
            unit,
        }
    }

    /// What the curve adds to the rectangle; negative if it bulges inward.
    fn segment(&self) -> f64 {
        let outline = self.checked.spaces()[0].outline();
        self.unit.of_area(outline.area()) - self.chord * self.depth
    }

    /// The length along the curve.
    fn arc(&self) -> f64 {
        let outline = self.checked.spaces()[0].outline();
        self.unit.of(outline.perimeter()) - 2.0 * self.depth - self.chord
    }
}

#[test]
fn segment_of_chord_21_and_rise_6_is_as_printed() {
    // A help page of general mathematics on sections of the circle (E210). Feet are taken.
    let curved = Curved::new("21", "6", "north", "10", In::Feet);
    is_printed(curved.segment(), "89.254148");
    is_printed(curved.arc(), "25.308373");
    let (radius, angle) = (12.1875, 118.97953_f64); // printed
    // The printed angle is good to 0.000005°, that is 0.000001 ft of arc; so is the nanometer.
    is_near(curved.arc() / radius, angle.to_radians(), 2e-7);
    // Sector: the segment and the triangle on its chord, (r - h)·c/2.
    let triangle = (radius - 6.0) * 21.0 / 2.0;
    is_printed(curved.segment() + triangle, "154.2229");
    // Bulging inward, it is subtracted.
    let hollow = Curved::new("21", "6", "south", "10", In::Feet);
    is_printed(hollow.segment(), "-89.254148");
    is_printed(hollow.arc(), "25.308373");
}

#[test]
fn segment_of_arc_1_and_45_degrees_is_as_printed() {
    // The same page. Meters are taken, since a chord of eight decimals is whole nanometers.
    let curved = Curved::new("0.97449536", "0.096919589", "north", "1", In::Meters);
    // The chord is printed to eight decimals: half of that moves the segment by 0.6·0.097·0.000000005, as much as half
    // of its own last digit.
    is_within(curved.segment(), "0.063460604", 1e-9);
    // The nanometer is the last digit here; the printed chord is unsure by five of them.
    is_within(curved.arc(), "1", 1e-8);
    is_near(curved.arc() / 1.2732395, 45.0_f64.to_radians(), 5e-8);
}

#[test]
fn segment_of_arc_90_and_rise_6_is_as_printed() {
    // Dr. Math FAQ, "Segments of circles", case 3, and a spreadsheet after it: chord 88.92433.
    let curved = Curved::new("88.92433", "6", "north", "10", In::Meters);
    is_printed(curved.segment(), "356.9895");
    // The chord is printed to 0.00001.
    is_within(curved.arc(), "90", 1e-5);
    // Angle printed 0.536544, radius 167.7404.
    is_within(curved.arc() / 167.7404, "0.536544", 1e-6);
}

#[test]
fn segments_of_the_circle_of_diameter_1_are_as_tabled() {
    // "Areas of segments" as in engineers' pocketbooks (Trautwine, Kent), from memory: rise, area
    // for diameter 1. The chord 2·√(h(1-h)) is typed to the nanometer of a meter.
    let table = [
        ("0.05", "0.435889894", "0.014681"),
        ("0.10", "0.6", "0.040875"),
        ("0.15", "0.714142843", "0.073875"),
        ("0.20", "0.8", "0.111824"),
        ("0.25", "0.866025404", "0.153546"),
        ("0.30", "0.916515139", "0.198168"),
        ("0.40", "0.979795897", "0.293370"),
        ("0.50", "1", "0.392699"),
    ];
    for (rise, chord, printed) in table {
        is_printed(Curved::new(chord, rise, "north", "1", In::Meters).segment(), printed);
    }
    // More than half a circle: what the tabled segment leaves of the whole, π/4.
    for (rise, chord, rest) in [("0.80", "0.8", 0.111824), ("0.70", "0.916515139", 0.198168)] {
        let whole = std::f64::consts::FRAC_PI_4;
        let curved = Curved::new(chord, rise, "north", "1", In::Meters);
        is_near(curved.segment() + rest, whole, 0.000_000_5);
    }
}

#[test]
fn half_disc_on_its_chord_is_half_of_pi() {
    // GEOS, unit test of areas of curved outlines: an arc through (0 0, 1 1, 2 0) closed by its
    // chord has area π/2.
    let checked = living("", &["arc east 2 ft rise 1 ft north".to_owned(), "west 2 ft".to_owned()]);
    let outline = checked.spaces()[0].outline();
    is_near(outline.area().sq_ft(), std::f64::consts::FRAC_PI_2, 1e-9);
    // Its perimeter, to the nanometer: half of 2π, and the chord.
    let perimeter = In::Feet.of(outline.perimeter());
    is_near(perimeter - 2.0, std::f64::consts::PI, 5e-9);
}
