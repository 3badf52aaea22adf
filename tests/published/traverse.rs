//! Land by bearings and by coordinates: misclosure, the compass rule, meridian distances, area.

use fairfoot::House;

use fairfoot::geometry::Outline;

use fairfoot::units::Length;

use super::sheets::{
    In, between, courses, fault_words, is_printed, is_within, lot, number, run, tract,
};

/// A course of a printed traverse table.
struct Course {
    bearing: &'static str,
    length: &'static str,
    /// Latitude and departure from the bearing.
    raw: [&'static str; 2],
    /// Latitude and departure after the compass rule.
    balanced: [&'static str; 2],
}

/// A row of a printed traverse table.
const fn row(
    bearing: &'static str,
    length: &'static str,
    raw: [&'static str; 2],
    balanced: [&'static str; 2],
) -> Course {
    Course { bearing, length, raw, balanced }
}

/// The lot of a table, whose misclosure is small enough to be adjusted.
fn by_bearings(table: &[Course], tolerance: &str, unit: In) -> House {
    let unit = unit.word();
    let side = |course: &Course| format!("bearing {} {} {unit}", course.bearing, course.length);
    let sides: Vec<String> = table.iter().map(side).collect();
    lot(&format!("tolerance {tolerance}"), &sides)
}

/// Latitude and departure from the bearing: the corrections of the compass rule are undone, course by course, in
/// proportion to the printed length.
fn before_balancing(checked: &House, table: &[Course], unit: In) -> Vec<[f64; 2]> {
    let [north, east] = misclosure(checked);
    let perimeter = perimeter(table);
    let one = |(parts, course): ([Length; 2], &Course)| {
        let share = number(course.length) / perimeter;
        [unit.of(parts[0]) + unit.of(north) * share, unit.of(parts[1]) + unit.of(east) * share]
    };
    run(tract(checked)).into_iter().zip(table).map(one).collect()
}

/// Double meridian distances of the courses, in nanometers: the first is the first departure; each next one adds
/// the previous departure and its own.
fn double_meridian_distances(outline: &Outline) -> Vec<i128> {
    let mut before = 0;
    let mut distance = 0;
    let one = |[_, departure]: [Length; 2]| {
        let departure = i128::from(departure.nm());
        distance += before + departure;
        before = departure;
        distance
    };
    run(outline).into_iter().map(one).collect()
}

/// Double areas: double meridian distance times latitude, in square nanometers.
fn double_areas(outline: &Outline) -> Vec<i128> {
    let distances = double_meridian_distances(outline).into_iter();
    distances.zip(run(outline)).map(|(d, [latitude, _])| d * i128::from(latitude.nm())).collect()
}

/// Asserts that the double areas add up to twice the area, exactly.
#[track_caller]
fn double_areas_give_the_area(outline: &Outline) {
    let sum: i128 = double_areas(outline).iter().sum();
    assert_eq!(sum.abs(), outline.area().half_nm2());
}

/// The two sums of cross products, each coordinate by the next one's other, the smaller first; from
/// the coordinates (north, east) of the first station.
fn cross_sums(outline: &Outline, first: [&str; 2], unit: In) -> [f64; 2] {
    let corners = outline.corners();
    let at = |place: &fairfoot::geometry::Place| {
        [number(first[0]) + unit.of(place.north), number(first[1]) + unit.of(place.east)]
    };
    let next = corners.iter().cycle().skip(1);
    let mut sums = [0.0, 0.0];
    for (from, to) in corners.iter().zip(next) {
        let (from, to) = (at(from), at(to));
        sums[0] += from[0] * to[1];
        sums[1] += from[1] * to[0];
    }
    sums.sort_by(f64::total_cmp);
    sums
}

/// The misclosure, north and east.
fn misclosure(checked: &House) -> [Length; 2] {
    let (north, east) = checked.lots()[0].misclosure();
    [north, east]
}

/// The linear misclosure.
fn linear(checked: &House, unit: In) -> f64 {
    let [north, east] = misclosure(checked);
    unit.of(north).hypot(unit.of(east))
}

/// A length that may be negative: `-0.71 ft`.
fn length(text: &str) -> Length {
    match text.strip_prefix('-') {
        Some(rest) => -rest.parse::<Length>().unwrap(),
        None => text.parse().unwrap(),
    }
}

/// The sum of the printed lengths.
fn perimeter(table: &[Course]) -> f64 {
    table.iter().map(|course| number(course.length)).sum()
}

/// J. Mahun, Open Access Surveying Library, Traverse Computations, ch. I "Bearing Traverse" (inputs,
/// closure, balancing), ch. G (coordinates, meridian distances).
const BEARING_TRAVERSE: [Course; 4] = [
    row("S 68° 05' 35\" W", "472.68", ["-176.357", "-438.548"], ["-176.386", "-438.574"]),
    row("N 19° 46' 00\" W", "216.13", ["203.395", "-73.093"], ["203.382", "-73.105"]),
    row("N 45° 55' 20\" E", "276.52", ["192.357", "198.651"], ["192.340", "198.635"]),
    row("S 54° 59' 15\" E", "382.24", ["-219.312", "313.065"], ["-219.336", "313.044"]),
];

#[test]
fn bearing_traverse_closes_and_balances_as_printed() {
    let checked = by_bearings(&BEARING_TRAVERSE, "1 ft", In::Feet);
    is_printed(perimeter(&BEARING_TRAVERSE), "1347.57");
    let [north, east] = misclosure(&checked);
    // Printed +0.083 and +0.075 are sums of four rounded numbers: four halves of 0.001.
    is_within(In::Feet.of(north), "0.083", 0.002);
    is_within(In::Feet.of(east), "0.075", 0.002);
    let raw = before_balancing(&checked, &BEARING_TRAVERSE, In::Feet);
    for (parts, course) in raw.iter().zip(&BEARING_TRAVERSE) {
        is_printed(parts[0], course.raw[0]);
        is_printed(parts[1], course.raw[1]);
    }
    // Balanced from rounded numbers, one of them (CD's 198.635 for 198.6356) a digit short: one
    // whole last digit is allowed.
    for (parts, course) in run(tract(&checked)).into_iter().zip(&BEARING_TRAVERSE) {
        is_within(In::Feet.of(parts[0]), course.balanced[0], 0.001);
        is_within(In::Feet.of(parts[1]), course.balanced[1], 0.001);
    }
}

#[test]
fn bearing_traverse_has_the_printed_coordinates() {
    let checked = by_bearings(&BEARING_TRAVERSE, "1 ft", In::Feet);
    // North, east; A is given. Each is a sum of balanced numbers: one last digit is allowed.
    let printed = [
        ["500.000", "2000.000"],
        ["323.614", "1561.426"],
        ["526.996", "1488.321"],
        ["719.336", "1686.956"],
    ];
    for (corner, printed) in tract(&checked).corners().iter().zip(printed) {
        is_within(500.0 + In::Feet.of(corner.north), printed[0], 0.001);
        is_within(2000.0 + In::Feet.of(corner.east), printed[1], 0.001);
    }
}

#[test]
fn bearing_traverse_has_the_printed_area_by_three_methods() {
    // From the printed balanced numbers, which close exactly.
    let balanced = BEARING_TRAVERSE.map(|course| course.balanced);
    let checked = lot("", &courses(&balanced, In::Feet));
    let outline = tract(&checked);
    assert_eq!(outline.area().sq_ft_text(), "102935.722559"); // exactly
    // Printed 102,935.75 (half of 205,871.5) is a sum of rounded products: four halves of 0.1, halved.
    is_within(outline.area().sq_ft(), "102935.75", 0.1);
    // Cross products, ch. G: printed 3,384,174.1 and 3,590,045.6.
    let sums = cross_sums(outline, ["500.000", "2000.000"], In::Feet);
    is_printed(sums[0], "3,384,174.1");
    is_printed(sums[1], "3,590,045.6");
    // Double meridian distances and double areas, ch. G, by magnitude.
    let distances = ["438.574", "950.253", "824.723", "313.044"];
    for (distance, printed) in double_meridian_distances(outline).into_iter().zip(distances) {
        is_printed(distance.unsigned_abs() as f64 / 304_800_000.0, printed);
    }
    let products = ["77,358.3", "193,264.4", "158,627.2", "68,661.8"];
    let square_foot = 304_800_000.0 * 304_800_000.0;
    for (product, printed) in double_areas(outline).into_iter().zip(products) {
        is_printed(product.unsigned_abs() as f64 / square_foot, printed);
    }
    double_areas_give_the_area(outline);
    // From the bearings, nothing rounded on the way, 0.014 sq ft less: rounding latitudes and
    // departures to 0.001 ft is worth that much (half a digit of eight numbers on 300 ft lines).
    let unrounded = by_bearings(&BEARING_TRAVERSE, "1 ft", In::Feet);
    is_within(tract(&unrounded).area().sq_ft(), "102935.72", 0.1);
}

#[test]
fn problem_of_five_stations_has_the_printed_area() {
    // J. Mahun, Open Access Surveying Library, traverse area problem 1: stations 105 to 101, feet.
    let stations = [
        ["1541.207", "2215.890"],
        ["1373.915", "2336.574"],
        ["1299.818", "2350.205"],
        ["1343.189", "2523.212"],
        ["1569.360", "2359.080"],
    ];
    let checked = lot("", &between(&stations, In::Feet));
    let outline = tract(&checked);
    assert_eq!(outline.area().sq_ft_text(), "38965.815589"); // exactly
    // Printed sums 16,833,994 and 16,756,061; the second was cut, not rounded (.92).
    let sums = cross_sums(outline, stations[0], In::Feet);
    is_printed(sums[1], "16,833,994");
    is_within(sums[0], "16,756,061", 1.0);
    // Printed 38,970 ± 5: to the ten square feet.
    is_within(outline.area().sq_ft(), "38,970", 5.0);
}

#[test]
fn coordinate_geometry_of_five_points_has_the_printed_area() {
    // J. Mahun, Open Access Surveying Library, COGO, ch. H §1.b: C, D, E, A, B; feet.
    let stations = [
        ["406.31", "1259.97"],
        ["235.12", "1489.47"],
        ["65.81", "1126.40"],
        ["317.89", "942.04"],
        ["675.32", "1282.54"],
    ];
    let checked = lot("", &between(&stations, In::Feet));
    let outline = tract(&checked);
    assert_eq!(outline.area().sq_ft_text(), "140493.1069"); // exactly
    // Printed sums 2,190,612 and 1,909,624 add up products rounded to the whole number: five halves.
    // (The running text has one product as 264,489, a misprint of the table's 264,839.)
    let sums = cross_sums(outline, stations[0], In::Feet);
    is_within(sums[1], "2,190,612", 2.5);
    is_within(sums[0], "1,909,624", 2.5);
    // Half their difference is 140,494, as good as each of them.
    is_within(outline.area().sq_ft(), "140,494", 2.5);
    is_printed(outline.area().sq_ft() / 43_560.0, "3.22528"); // acres, worked from the exact area
}

/// "Sample Traverse Computations", a class handout whose figures are also in J. A. La Putt, Elementary Surveying (the
/// book from memory). Meters.
const LARGE_MISCLOSURE: [Course; 6] = [
    row("N 5° 30' E", "495.85", ["493.5672", "47.5251"], ["491.8995", "45.7328"]),
    row("N 46° 02' E", "850.62", ["590.5342", "612.2285"], ["587.6733", "609.1538"]),
    row("S 67° 38' E", "855.45", ["-325.5265", "791.0924"], ["-328.4036", "788.0003"]),
    row("S 12° 25' E", "1020.87", ["-996.9916", "219.5069"], ["-1000.4252", "215.8168"]),
    row("S 83° 44' W", "1117.26", ["-121.9557", "-1110.5840"], ["-125.7134", "-1114.6225"]),
    row("N 55° 09' W", "660.08", ["377.1895", "-541.6952"], ["374.9694", "-544.0812"]),
];

#[test]
fn large_misclosure_is_spread_by_the_compass_rule_to_four_decimals() {
    let checked = by_bearings(&LARGE_MISCLOSURE, "5 m", In::Meters);
    is_printed(perimeter(&LARGE_MISCLOSURE), "5000.13");
    let [north, east] = misclosure(&checked);
    is_printed(In::Meters.of(north), "16.8171");
    is_printed(In::Meters.of(east), "18.0737");
    is_printed(linear(&checked, In::Meters), "24.6876");
    // Printed 1/200, from 1/202.5 taken to the hundred.
    is_within(perimeter(&LARGE_MISCLOSURE) / linear(&checked, In::Meters), "200", 50.0);
    let raw = before_balancing(&checked, &LARGE_MISCLOSURE, In::Meters);
    let balanced = run(tract(&checked));
    for ((raw, balanced), course) in raw.iter().zip(balanced).zip(&LARGE_MISCLOSURE) {
        for part in 0..2 {
            is_printed(raw[part], course.raw[part]);
            is_printed(In::Meters.of(balanced[part]), course.balanced[part]);
        }
    }
}

#[test]
fn large_misclosure_has_the_printed_double_areas_and_area() {
    let checked = by_bearings(&LARGE_MISCLOSURE, "5 m", In::Meters);
    let outline = tract(&checked);
    let distances = ["45.7328", "700.6194", "2097.7734", "3101.5905", "2202.7848", "544.0812"];
    for (distance, printed) in double_meridian_distances(outline).into_iter().zip(distances) {
        is_printed(distance as f64 / 1e9, printed);
    }
    let products = [
        "22495.9370",
        "411735.2964",
        "-688916.4315",
        "-3102909.1390",
        "-276919.5528",
        "204013.7912",
    ];
    for (product, printed) in double_areas(outline).into_iter().zip(products) {
        is_printed(product as f64 / 1e18, printed);
    }
    let doubled: i128 = double_areas(outline).iter().sum();
    is_printed(doubled as f64 / 1e18, "-3,430,500.0987");
    is_printed(In::Meters.of_area(outline.area()), "1,715,250.0494");
    double_areas_give_the_area(outline);
    // From the balanced numbers as printed, which close exactly: 0.094 m² more, by rounding them
    // to 0.0001 m on lines of a kilometer. Exactly 21440626797153/12500000.
    let balanced = LARGE_MISCLOSURE.map(|course| course.balanced);
    let rounded = lot("", &courses(&balanced, In::Meters));
    assert_eq!(In::Meters.text(tract(&rounded).area()), "1715250.143772");
}

#[test]
fn memphis_traverse_has_the_printed_misclosure_and_area() {
    // University of Memphis, CIVL 1112 Surveying, "Traverse Calculations" (course notes). The first
    // and last course and the results read second-hand; the three between from memory, and they
    // give the printed misclosure to its last digit. Feet.
    let sides = [
        ("S 6° 15' W", "189.53"),
        ("S 29° 38' E", "175.18"),
        ("N 81° 18' W", "197.78"),
        ("N 12° 24' W", "142.39"),
        ("N 42° 59' E", "234.58"),
    ];
    let typed: Vec<String> = sides.map(|(way, long)| format!("bearing {way} {long} ft")).to_vec();
    let checked = lot("tolerance 1 ft", &typed);
    is_printed(linear(&checked, In::Feet), "0.182");
    let perimeter: f64 = sides.iter().map(|(_, length)| number(length)).sum();
    // Printed 1:5,175; the misclosure is printed to three digits only, this to four.
    is_printed(perimeter / linear(&checked, In::Feet), "5,175");
    let area = tract(&checked).area();
    // Printed to ten square feet, then to a thousandth of an acre.
    is_within(area.sq_ft(), "36,320", 5.0);
    is_printed(area.sq_ft() / 43_560.0, "0.834");
    assert_eq!(area.in_unit(fairfoot::units::Area::ACRE, 3), "0.834");
    // Worked once more from the bearings at full precision.
    is_printed(area.sq_ft(), "36,320.4115");
}

/// "COMPASS RULE", a class handout; the departure of DA was cut off and follows from the printed closure. Meters.
const FOUR_COURSES: [Course; 4] = [
    row("N 76° E", "80.40", ["19.451", "78.012"], ["19.3653", "78.1055"]),
    row("S 36° E", "46.30", ["-37.457", "27.214"], ["-37.5063", "27.2678"]),
    row("S 61° W", "72.80", ["-35.294", "-63.672"], ["-35.3716", "-63.5874"]),
    row("N 38° W", "68.00", ["53.585", "-41.865"], ["53.5126", "-41.7859"]),
];

/// Courses from latitude and departure, with tolerances proportional to the square root of the length: the squares
/// that weight the adjustment are then proportional to length, as in the compass rule.
fn weighted_by_length(table: &[Course], unit: In) -> House {
    let raw: Vec<[&str; 2]> = table.iter().map(|course| course.raw).collect();
    let sides = courses(&raw, unit).into_iter().zip(table);
    let sides: Vec<String> = sides
        .map(|(side, course)| {
            // To the nanometer; only their ratio matters.
            let tolerance = number(course.length).sqrt() / 10.0;
            format!("{side} tolerance {tolerance:.9} m")
        })
        .collect();
    lot("", &sides)
}

#[test]
fn four_courses_take_the_printed_corrections() {
    let checked = weighted_by_length(&FOUR_COURSES, In::Meters);
    is_printed(perimeter(&FOUR_COURSES), "267.5");
    let [north, east] = misclosure(&checked);
    is_printed(In::Meters.of(north), "0.285");
    is_printed(In::Meters.of(east), "-0.311");
    let corrections = [
        ["-0.0857", "0.0935"],
        ["-0.0493", "0.0538"],
        ["-0.0776", "0.0846"],
        ["-0.0724", "0.0791"],
    ];
    let balanced = run(tract(&checked)).into_iter();
    for ((parts, course), correction) in balanced.zip(&FOUR_COURSES).zip(corrections) {
        for part in 0..2 {
            let figured = In::Meters.of(parts[part]);
            is_printed(figured, course.balanced[part]);
            is_printed(figured - number(course.raw[part]), correction[part]);
        }
    }
    // No area is printed. Balanced exactly it is 22304835927151/5350000000.
    is_printed(In::Meters.of_area(tract(&checked).area()), "4169.12821");
}

#[test]
fn four_courses_by_their_bearings_close_a_little_better() {
    // Unrounded, the latitudes miss by 0.2836, not by the 0.285 that their rounding to 0.001 adds
    // up to; the balanced numbers then differ by up to a thousandth.
    let checked = by_bearings(&FOUR_COURSES, "1 m", In::Meters);
    let [north, east] = misclosure(&checked);
    is_printed(In::Meters.of(north), "0.2836");
    is_within(In::Meters.of(east), "-0.311", 0.002);
    for (parts, course) in run(tract(&checked)).into_iter().zip(&FOUR_COURSES) {
        is_within(In::Meters.of(parts[0]), course.balanced[0], 0.001);
        is_within(In::Meters.of(parts[1]), course.balanced[1], 0.001);
    }
}

/// University of Washington, ESRM 304 (P. Hurvitz, 2009), "Latitudes and departures": azimuths
/// 26-10, 104-35, 195-30, 358-18, 306-54. Feet; balanced numbers were not printed for all courses.
const FIVE_COURSES: [Course; 5] = [
    row("N 26° 10' E", "285.10", ["255.88", "125.72"], ["255.96", "125.66"]),
    row("S 75° 25' E", "610.45", ["-153.70", "590.78"], ["-153.53", "590.65"]),
    row("S 15° 30' W", "720.48", ["-694.28", "-192.54"], ["-694.07", "-192.69"]),
    row("N 1° 42' W", "203.00", ["202.91", "-6.02"], ["", ""]),
    row("N 53° 06' W", "647.02", ["388.48", "-517.41"], ["", ""]),
];

#[test]
fn five_courses_have_the_printed_latitudes_and_corrections() {
    let checked = by_bearings(&FIVE_COURSES, "1 ft", In::Feet);
    let raw = before_balancing(&checked, &FIVE_COURSES, In::Feet);
    for (parts, course) in raw.iter().zip(&FIVE_COURSES) {
        is_printed(parts[0], course.raw[0]);
        is_printed(parts[1], course.raw[1]);
    }
    // Sums of five rounded numbers: five halves of 0.01.
    let [north, east] = misclosure(&checked);
    is_within(In::Feet.of(north), "-0.71", 0.025);
    is_within(In::Feet.of(east), "0.53", 0.025);
    // The corrections were printed for the first two courses, from the printed latitudes and
    // departures (0.71 × 610.45 / 2466.05 is 0.176; unrounded it would be 0.174).
    let rounded = weighted_by_length(&FIVE_COURSES, In::Feet);
    assert_eq!(misclosure(&rounded), ["-0.71 ft", "0.53 ft"].map(length));
    let corrections = [["0.08", "-0.06"], ["0.18", "-0.13"]];
    let balanced = run(tract(&rounded)).into_iter();
    for ((parts, course), correction) in balanced.zip(&FIVE_COURSES).zip(corrections) {
        is_printed(In::Feet.of(parts[0]) - number(course.raw[0]), correction[0]);
        is_printed(In::Feet.of(parts[1]) - number(course.raw[1]), correction[1]);
    }
}

#[test]
fn navy_manual_and_university_balance_the_same_traverse_alike() {
    // US Navy, Engineering Aid training manual, ch. 7, fig. 7-24 to 7-27: the same traverse with its
    // last two courses as one, balanced to 0.01. Bearings there were read more finely than here:
    // one last digit is allowed.
    let checked = by_bearings(&FIVE_COURSES, "1 ft", In::Feet);
    let balanced = run(tract(&checked));
    for (parts, course) in balanced.iter().zip(&FIVE_COURSES[..3]) {
        is_within(In::Feet.of(parts[0]), course.balanced[0], 0.01);
        is_within(In::Feet.of(parts[1]), course.balanced[1], 0.01);
    }
    is_within(In::Feet.of(balanced[3][0] + balanced[4][0]), "591.64", 0.01);
    is_within(In::Feet.of(balanced[3][1] + balanced[4][1]), "-523.62", 0.01);
    // The manual's four stations, north and east; its area was not seen. Exactly 1619768497/5000.
    let stations =
        [["591.64", "0.00"], ["847.60", "125.66"], ["694.07", "716.31"], ["0.00", "523.62"]];
    let four = lot("", &between(&stations, In::Feet));
    assert_eq!(tract(&four).area().sq_ft_text(), "323953.6994");
}

#[test]
fn handbook_tract_by_meridian_distances() {
    // T. G. Hicks (ed.), Handbook of Civil Engineering Calculations, surveying, "Area of tract by
    // DMD": six balanced courses from D, in feet and again in meters. The page with the area was
    // not seen; exactly it is 72,106.19.
    let feet = [
        ["161.9", "143.6"],
        ["-35.3", "246.7"],
        ["-101.8", "21.3"],
        ["-132.3", "-135.6"],
        ["9.6", "-77.5"],
        ["97.9", "-198.5"],
    ];
    let checked = lot("", &courses(&feet, In::Feet));
    let distances = ["143.6", "533.9", "801.9", "687.6", "474.5", "198.5"];
    let figured = double_meridian_distances(tract(&checked));
    for (distance, printed) in figured.into_iter().zip(distances) {
        is_printed(distance as f64 / 304_800_000.0, printed);
    }
    double_areas_give_the_area(tract(&checked));
    assert_eq!(tract(&checked).area().sq_ft_text(), "72106.19");
    is_printed(tract(&checked).area().sq_ft() / 43_560.0, "1.65533"); // acres, worked from the same
    // The handbook's metric column, each number rounded to 0.01 m: 0.05 m² more than the same
    // square feet converted. Exactly 133978691/20000.
    let meters = [
        ["49.35", "43.77"],
        ["-10.76", "75.19"],
        ["-31.03", "6.49"],
        ["-40.33", "-41.33"],
        ["2.93", "-23.62"],
        ["29.84", "-60.50"],
    ];
    let metric = lot("", &courses(&meters, In::Meters));
    assert_eq!(In::Meters.text(tract(&metric).area()), "6698.93455");
    is_printed(In::Meters.of_area(tract(&checked).area()), "6698.88425");
}

/// "MSTE 32 Solutions", a class handout; no unit is given, and feet are assumed. Latitudes miss by -0.002, departures
/// by +0.002.
const NEARLY_CLOSED: [[&str; 2]; 4] =
    [["104.096", "60.1"], ["18.754", "88.229"], ["-74.967", "46.845"], ["-47.885", "-195.172"]];

#[test]
fn a_table_that_misses_by_two_thousandths_has_no_area_of_its_own() {
    let sides = courses(&NEARLY_CLOSED, In::Feet).join("\n");
    let file = format!("tolerance 0.0001 ft\nlot \"Tract\"\n{sides}\n");
    assert_eq!(fault_words(&file), ["does-not-close"]);
}

#[test]
fn a_table_that_misses_by_two_thousandths_is_closed_before_it_has_an_area() {
    let checked = lot("tolerance 0.001 ft", &courses(&NEARLY_CLOSED, In::Feet));
    assert_eq!(misclosure(&checked), ["-0.002 ft", "0.002 ft"].map(length));
    // Printed distances 60.1, 208.429, 343.503, 195.176: spreading moves them by up to 0.002.
    let figured = double_meridian_distances(tract(&checked));
    for (distance, printed) in figured.into_iter().zip(["60.1", "208.429", "343.503", "195.176"]) {
        is_within(distance as f64 / 304_800_000.0, printed, 0.004);
    }
    // Printed double area -24,932.34556. The table itself gives -24,932.345095, and from its other stations -24,931.69,
    // -24,931.26, -24,931.37: what does not close has no single area. Closed, twice the area is 24,931.666659 exactly.
    assert_eq!(tract(&checked).area().sq_ft_text(), "12465.83333"); // 12,465.8333295
    double_areas_give_the_area(tract(&checked));
    is_within(2.0 * tract(&checked).area().sq_ft(), "24,932.34556", 1.1);
}

#[test]
fn a_double_area_fed_back_as_a_distance_is_far_from_the_tract() {
    // A slide deck on double meridian distances, exercise 3: latitudes miss by -0.30. Printed
    // 278,873.4381: areas were fed back in as distances. The table itself gives 664.69; closed
    // evenly, 659.4466 exactly.
    let table = [
        ["9.2", "32.43"],
        ["-6.35", "5.25"],
        ["-28.96", "-26.8"],
        ["5.36", "-4.47"],
        ["20.45", "-6.41"],
    ];
    let sides = courses(&table, In::Feet);
    let file = format!("tolerance 0.01 ft\nlot \"Tract\"\n{}\n", sides.join("\n"));
    assert_eq!(fault_words(&file), ["does-not-close"]);
    let checked = lot("tolerance 0.1 ft", &sides);
    assert_eq!(tract(&checked).area().sq_ft_text(), "659.4466");
    is_within(tract(&checked).area().sq_ft(), "664.69", 6.0); // half of 0.30 on a width of 38
}

#[test]
fn surveying_exam_problems_have_the_printed_areas() {
    // A practice problem for the FE surveying examination: about 0.174 acre. East, north in feet; for the area it does
    // not matter which is which.
    let stations = [["100", "200"], ["180", "250"], ["140", "320"], ["60", "270"]];
    let checked = lot("", &between(&stations, In::Feet));
    assert_eq!(tract(&checked).area().sq_ft_text(), "7600");
    assert_eq!(tract(&checked).area().in_unit(fairfoot::units::Area::ACRE, 3), "0.174");
    // A guide to the FS surveying examination: a rectangle by coordinates, 60,000 sq ft.
    let stations = [["0", "0"], ["0", "300"], ["200", "300"], ["200", "0"]];
    let checked = lot("", &between(&stations, In::Feet));
    assert_eq!(tract(&checked).area().whole_sq_ft(), 60_000);
    assert_eq!(tract(&checked).area().sq_ft_text(), "60000");
}

#[test]
fn elementary_surveying_traverse_has_the_remembered_area() {
    // C. D. Ghilani and P. R. Wolf, Elementary Surveying: lengths and azimuths (126-55-17,
    // 178-18-58, 15-31-54, 284-35-20, 206-09-41) read second-hand; the book's results from memory.
    let sides = [
        ("S 53° 04' 43\" E", "647.25"),
        ("S 1° 41' 02\" E", "203.03"),
        ("N 15° 31' 54\" E", "720.35"),
        ("N 75° 24' 40\" W", "610.24"),
        ("S 26° 09' 41\" W", "285.13"),
    ];
    let typed: Vec<String> = sides.map(|(way, long)| format!("bearing {way} {long} ft")).to_vec();
    let checked = lot("tolerance 0.5 ft", &typed);
    let [north, east] = misclosure(&checked);
    // 0.077 and 0.026, as sums of numbers rounded to 0.001 and with one second of azimuth unsure
    // (0.0014 ft on 285 ft).
    is_within(In::Feet.of(north), "0.077", 0.002);
    is_within(In::Feet.of(east), "0.026", 0.002);
    is_printed(linear(&checked, In::Feet), "0.08");
    let perimeter: f64 = sides.iter().map(|(_, length)| number(length)).sum();
    // 1/30,000 as 1/30,806 taken to the ten thousand.
    is_within(perimeter / linear(&checked, In::Feet), "30,000", 5_000.0);
    let area = tract(&checked).area();
    is_within(area.sq_ft(), "272,600", 50.0); // to four digits
    is_printed(area.sq_ft() / 43_560.0, "6.258");
    is_printed(area.sq_ft(), "272,585.3"); // worked once more from the azimuths
}

#[test]
fn chords_of_a_curved_tract_have_the_printed_area() {
    // J. Mahun, Open Access Surveying Library, COGO, ch. H, traverse with arcs: the chord part. The
    // radii are pictures and were not seen; the chords are slanted, which an `arc` side is not.
    let stations = [
        ["500.00", "1200.00"],
        ["614.70", "1249.70"],
        ["674.76", "1347.43"],
        ["662.46", "1552.76"],
        ["467.41", "1516.87"],
        ["417.36", "1317.39"],
    ];
    let checked = lot("", &between(&stations, In::Feet));
    let outline = tract(&checked);
    assert_eq!(outline.area().sq_ft_text(), "65628.52705"); // exactly
    // Printed sums 4,491,046 and 4,622,300 add up products kept to six digits, tens at best: up to
    // 5 on each of six products. Half their difference is 65,627.
    let sums = cross_sums(outline, stations[0], In::Feet);
    is_within(sums[0], "4,491,046", 30.0);
    is_within(sums[1], "4,622,300", 30.0);
    is_within(outline.area().sq_ft(), "65,627", 30.0);
}

#[test]
fn tolerances_by_the_root_of_length_are_the_compass_rule() {
    // The printed latitudes and departures of the bearing traverse, balanced exactly in proportion
    // to length: 102,935.682 sq ft, worked in fractions.
    let checked = weighted_by_length(&BEARING_TRAVERSE, In::Feet);
    is_printed(tract(&checked).area().sq_ft(), "102,935.682");
    // The printed closure is the sum of the printed numbers, so it is met exactly here.
    assert_eq!(misclosure(&checked), ["0.083 ft", "0.075 ft"].map(length));
}
