//! Sides files written for a test, and their areas converted to the unit of the source.

use fairfoot::{Areas, House, Settings};

use fairfoot::geometry::Outline;

use fairfoot::reconcile::{BridgeStep, Figure};

use fairfoot::units::{Area, Halves, Length};
use rust_decimal::Decimal;

/// The unit of lengths in a source.
#[derive(Clone, Copy, Debug)]
pub(crate) enum In {
    /// Feet and square feet.
    Feet,
    /// Meters and square meters.
    Meters,
}

impl In {
    /// Its word after a number in a sides file.
    pub(crate) fn word(self) -> &'static str {
        match self {
            In::Feet => "ft",
            In::Meters => "m",
        }
    }

    /// A length in this unit, to the precision of a float.
    pub(crate) fn of(self, length: Length) -> f64 {
        let one = match self {
            In::Feet => Length::FOOT,
            In::Meters => Length::METER,
        };
        length.nm() as f64 / one.nm() as f64
    }

    /// An area in this unit, to the precision of a float.
    pub(crate) fn of_area(self, area: Area) -> f64 {
        area.half_nm2() as f64 / self.square().half_nm2() as f64
    }

    /// An area in this unit to six decimals, without trailing zeros.
    pub(crate) fn text(self, area: Area) -> String {
        decimal(&area.in_unit(self.square(), 6)).normalize().to_string()
    }

    /// The area of one square unit.
    fn square(self) -> Area {
        match self {
            In::Feet => Area::SQUARE_FOOT,
            In::Meters => Area::SQUARE_METER,
        }
    }
}

/// A printed number, with commas between thousands.
pub(crate) fn decimal(printed: &str) -> Decimal {
    Decimal::from_str_exact(&printed.replace(',', "")).expect(printed)
}

/// A printed number as a float.
pub(crate) fn number(printed: &str) -> f64 {
    printed.replace(',', "").parse().expect(printed)
}

/// Asserts that a figure equals the printed one to half the last printed digit.
#[track_caller]
pub(crate) fn is_printed(figured: f64, printed: &str) {
    let decimals = printed.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let half = 0.5 * 0.1_f64.powi(i32::try_from(decimals).unwrap());
    is_within(figured, printed, half);
}

/// Asserts that a figure equals the printed one within a tolerance whose reason the test states.
#[track_caller]
pub(crate) fn is_within(figured: f64, printed: &str, tolerance: f64) {
    is_near(figured, number(printed), tolerance);
}

/// The same for a computed figure, such as π/2.
#[track_caller]
pub(crate) fn is_near(figured: f64, worked: f64, tolerance: f64) {
    let off = (figured - worked).abs();
    // Floats: an exact half of a printed digit still counts as half.
    let dust = 1e-12 * figured.abs().max(1.0);
    assert!(off <= tolerance + dust, "{figured} is {off} from {worked}");
}

/// Reads a sides file that has no errors.
#[track_caller]
pub(crate) fn read_house(text: &str) -> House {
    match fairfoot::read("published.sides", text) {
        Ok(checked) => checked,
        Err(faults) => panic!("{faults}\n{text}"),
    }
}

/// The code words of the errors in a sides file.
#[track_caller]
pub(crate) fn fault_words(text: &str) -> Vec<&'static str> {
    let faults = fairfoot::read("published.sides", text).expect_err(text);
    let errors = faults.list().iter().filter(|fault| fault.is_error());
    errors.map(|fault| fault.word().as_str()).collect()
}

/// The areas of a sides file with the default settings.
#[track_caller]
pub(crate) fn areas(text: &str) -> Areas {
    areas_by(text, Settings::default())
}

/// The areas of a sides file with other settings.
#[track_caller]
pub(crate) fn areas_by(text: &str, settings: Settings) -> Areas {
    read_house(text).areas(&settings).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

/// The default settings with another rule for halves.
pub(crate) fn halves(halves: Halves) -> Settings {
    Settings { halves, ..Settings::default() }
}

/// The first figure of a sides file, reconciled with the default settings.
#[track_caller]
pub(crate) fn first_figure(text: &str) -> Figure {
    let checked = read_house(text);
    let settings = Settings::default();
    let areas = checked.areas(&settings).unwrap();
    let reconciliation = areas.reconcile(&fairfoot::Weights::default()).unwrap();
    reconciliation.figures().first().expect("a figure").clone()
}

/// What a step of the bridge adds, in square feet to six decimals; empty if there is no such step.
pub(crate) fn line(figure: &Figure, step: BridgeStep) -> String {
    figure.line(step).map_or_else(String::new, |line| line.area().sq_ft_text())
}

/// One level, with one wall per line.
pub(crate) fn house(head: &str, sides: &[String]) -> String {
    format!("{head}\nlevel \"Ground floor\"\nliving \"House\"\n{}\n", sides.join("\n"))
}

/// A rectangle of living space, walked north, east, south, west.
pub(crate) fn rectangle(head: &str, width: &str, depth: &str) -> String {
    let sides = [("north", depth), ("east", width), ("south", depth), ("west", width)];
    house(head, &sides.map(|(way, length)| format!("{way} {length}")))
}

/// A lot, with one course per line.
pub(crate) fn lot(head: &str, courses: &[String]) -> House {
    read_house(&format!("{head}\nlot \"Tract\"\n{}\n", courses.join("\n")))
}

/// The outline of the only lot.
pub(crate) fn tract(checked: &House) -> &Outline {
    checked.lots()[0].outline()
}

/// A course from its exact latitude and departure; an axis-parallel side if one of them is zero.
pub(crate) fn course(latitude: Decimal, departure: Decimal, unit: In) -> String {
    let unit = unit.word();
    let part = |part: Decimal, plus: &str, minus: &str| {
        let way = if part.is_sign_negative() { minus } else { plus };
        (!part.is_zero()).then(|| format!("{way} {} {unit}", part.abs().normalize()))
    };
    match (part(latitude, "north", "south"), part(departure, "east", "west")) {
        (Some(north), Some(east)) => format!("diagonal {north} {east}"),
        (north, east) => north.or(east).expect("a course has a length"),
    }
}

/// Courses from printed latitudes and departures.
pub(crate) fn courses(latitudes_and_departures: &[[&str; 2]], unit: In) -> Vec<String> {
    let one = |parts: &[&str; 2]| course(decimal(parts[0]), decimal(parts[1]), unit);
    latitudes_and_departures.iter().map(one).collect()
}

/// The courses between stations printed as north, east, from the first back to the first.
pub(crate) fn between(stations: &[[&str; 2]], unit: In) -> Vec<String> {
    let next = stations.iter().cycle().skip(1);
    let part = |from: &str, to: &str| decimal(to) - decimal(from);
    let one = |(from, to): (&[&str; 2], &[&str; 2])| {
        course(part(from[0], to[0]), part(from[1], to[1]), unit)
    };
    stations.iter().zip(next).map(one).collect()
}

/// Latitude and departure of each side of an outline, exact.
pub(crate) fn run(outline: &Outline) -> Vec<[Length; 2]> {
    let corners = outline.corners();
    let next = corners.iter().cycle().skip(1);
    let one = |(from, to): (&fairfoot::geometry::Place, &fairfoot::geometry::Place)| {
        [to.north - from.north, to.east - from.east]
    };
    corners.iter().zip(next).map(one).collect()
}

/// A living space, with one side per line.
pub(crate) fn living(head: &str, sides: &[String]) -> House {
    read_house(&house(head, sides))
}
