//! No label overlaps another, a wall or a dimension line; everything is on the paper.

use fairfoot::Paper;

use fairfoot::pages::{Page, Part, Point, Text};
use geo::{Area, BoundingRect, Coord, Intersects, Line, LineString, Polygon, Translate};
use proptest::prelude::*;

use super::houses::houses;
use super::{pages_on, sketches};

/// The rectangle that a text covers, slightly reduced.
fn ground(text: &Text) -> Polygon<f64> {
    let [a, b, c, d] = text.corners();
    let middle = ((a.x_pt + c.x_pt) / 2.0, (a.y_pt + c.y_pt) / 2.0);
    let corner = |spot: Point| Coord {
        x: middle.0 + (spot.x_pt - middle.0) * 0.98,
        y: middle.1 + (spot.y_pt - middle.1) * 0.98,
    };
    Polygon::new(LineString::from(vec![corner(a), corner(b), corner(c), corner(d)]), Vec::new())
}

fn line((from, to): (Point, Point)) -> Line<f64> {
    Line::new(Coord { x: from.x_pt, y: from.y_pt }, Coord { x: to.x_pt, y: to.y_pt })
}

/// The unit vector along which a text reads.
fn way(text: &Text) -> (f64, f64) {
    let [a, b, ..] = text.corners();
    let way = (b.x_pt - a.x_pt, b.y_pt - a.y_pt);
    let long = way.0.hypot(way.1).max(1e-9);
    (way.0 / long, way.1 / long)
}

/// The rectangle that a text covers with the space that it keeps from others that read in its direction: 11.5 pt at its
/// ends, where two would be read as one, and 0.6 pt above and below it.
fn surroundings(text: &Text) -> Polygon<f64> {
    let [a, b, c, d] = text.corners();
    let right = way(text);
    let down = (-right.1, right.0);
    let corner = |spot: Point, ends: f64, edges: f64| Coord {
        x: spot.x_pt + ends * 11.5 * right.0 + edges * 0.6 * down.0,
        y: spot.y_pt + ends * 11.5 * right.1 + edges * 0.6 * down.1,
    };
    let corners =
        [corner(a, -1.0, -1.0), corner(b, 1.0, -1.0), corner(c, 1.0, 1.0), corner(d, -1.0, 1.0)];
    Polygon::new(LineString::from(corners.to_vec()), Vec::new())
}

/// A text where it lies on a page.
#[derive(Clone)]
struct Placed<'page> {
    words: &'page str,
    ground: Polygon<f64>,
    surroundings: Polygon<f64>,
    /// The unit vector along which it reads.
    way: (f64, f64),
    is_label: bool,
}

fn placed(page: &Page) -> Vec<Placed<'_>> {
    let one = |text| Placed {
        words: Text::words(text),
        ground: ground(text),
        surroundings: surroundings(text),
        way: way(text),
        is_label: text.is_label(),
    };
    page.texts().map(one).collect()
}

/// Everything wrong with a page; empty if nothing is.
pub(crate) fn faults(page: &Page) -> Vec<String> {
    faults_among(&placed(page), page)
}

/// Everything wrong with these texts on the paper and beside the lines of a page.
fn faults_among(texts: &[Placed<'_>], page: &Page) -> Vec<String> {
    let mut faults = Vec::new();
    let (width, height) = page.size_pt();
    for Placed { words, ground, .. } in texts {
        assert!(ground.unsigned_area() > 0.0, "{words:?} covers nothing");
        let bounds = ground.bounding_rect().unwrap();
        let (low, high) = (bounds.min(), bounds.max());
        if low.x < 20.0 || low.y < 20.0 || high.x > width - 20.0 || high.y > height - 20.0 {
            faults.push(format!("{words:?} stands off the paper"));
        }
    }
    for (i, Placed { words, ground, surroundings, way, is_label }) in texts.iter().enumerate() {
        let bounds = surroundings.bounding_rect().unwrap();
        for other in &texts[i + 1..] {
            if !bounds.intersects(&other.ground.bounding_rect().unwrap()) {
                continue;
            }
            if ground.intersects(&other.ground) {
                faults.push(format!("{words:?} touches {:?}", other.words));
            } else if *is_label
                && other.is_label
                && (way.0 * other.way.1 - way.1 * other.way.0).abs() < 0.1
                && surroundings.intersects(&other.ground)
            {
                faults.push(format!("{words:?} is too near to {:?}", other.words));
            }
        }
    }
    for part in [Part::Outline, Part::Dashed, Part::Dimension] {
        let lines: Vec<Line<f64>> = page.lines(part).into_iter().map(line).collect();
        for Placed { words, ground, .. } in texts.iter().filter(|text| text.is_label) {
            if lines.iter().any(|line| ground.intersects(line)) {
                faults.push(format!("{words:?} touches a line of {part:?}"));
            }
        }
    }
    faults.extend(rows_too_near(page));
    faults
}

/// Dimension lines that run side by side so near that they look like one with two labels: less than 8.9 pt apart, and not
/// in one row.
fn rows_too_near(page: &Page) -> Vec<String> {
    let lines = page.lines(Part::Dimension);
    let mut found = Vec::new();
    for (i, &(from, to)) in lines.iter().enumerate() {
        let (east, south) = (to.x_pt - from.x_pt, to.y_pt - from.y_pt);
        let long = east.hypot(south);
        // Along the line and across it, from its beginning.
        let at = |spot: Point| {
            let (x, y) = (spot.x_pt - from.x_pt, spot.y_pt - from.y_pt);
            ((x * east + y * south) / long, (y * east - x * south) / long)
        };
        for &(other_from, other_to) in &lines[i + 1..] {
            let (one, two) = (at(other_from), at(other_to));
            let is_parallel = (one.1 - two.1).abs() < 0.01;
            let beside = one.0.max(two.0).min(long) - one.0.min(two.0).max(0.0);
            if is_parallel && beside > 1.1 && (0.6..8.9).contains(&one.1.abs()) {
                found.push(format!("{from:?} to {to:?} runs {} pt beside another", one.1.abs()));
            }
        }
    }
    found
}

/// A bar stands beside the row whose figure it draws, to the right of it: +22 and +98; −2, +550 and +430. Its chart has no
/// words, which a program that extracts text would take for cells of the steps.
#[test]
fn a_bar_stands_beside_the_row_of_its_step() {
    for (name, figures) in [
        ("brick-garage", &["+22 sq ft", "+98 sq ft"][..]),
        ("basement", &["\u{2212}2 sq ft", "+550 sq ft", "+430 sq ft"]),
    ] {
        let pages = pages_on(&super::sketch(name), Paper::Letter);
        let page = &pages.pages()[0];
        let bars = page.lines(Part::Bar);
        assert_eq!(bars.len(), 4 * figures.len(), "{name}: {bars:?}");
        let mut last = f64::MIN;
        for (figure, bar) in figures.iter().zip(bars.chunks(4)) {
            let row = page.texts().find(|text| text.words() == *figure).expect(figure);
            let (top, bottom) = (row.corners()[0].y_pt, row.corners()[2].y_pt);
            let heights = || bar.iter().map(|(from, _)| from.y_pt);
            let high = heights().fold(f64::MAX, f64::min);
            let low = heights().fold(f64::MIN, f64::max);
            assert!(((top + bottom) / 2.0 - (high + low) / 2.0).abs() < 2.5, "{name}: {figure}");
            assert!(high > last, "{name}: {figure} is below the one before it");
            last = low;
            let left = bar.iter().map(|(from, _)| from.x_pt).fold(f64::MAX, f64::min);
            assert!(left > row.corners()[1].x_pt, "{name}: {figure}");
        }
        let left = bars.iter().map(|(from, _)| from.x_pt).fold(f64::MAX, f64::min) - 20.0;
        let (top, bottom) = (bars[0].0.y_pt - 10.0, last + 10.0);
        let beside = page.texts().filter(|text| {
            let at = text.corners()[0];
            at.x_pt > left && (top..bottom).contains(&at.y_pt)
        });
        assert_eq!(beside.count(), 0, "{name}: words in the chart");
    }
}

#[test]
fn nothing_overlaps_on_the_pages_of_the_sketches() {
    for (name, text) in sketches() {
        for paper in [Paper::Letter, Paper::A4] {
            let pages = pages_on(&text, paper);
            for (i, page) in pages.pages().iter().enumerate() {
                assert_eq!(faults(page), Vec::<String>::new(), "{name}, page {}", i + 1);
            }
        }
    }
}

/// The same text with its middle at another place.
fn moved<'page>(text: &Placed<'page>, to: Coord<f64>) -> Placed<'page> {
    let bounds = text.ground.bounding_rect().unwrap();
    let middle = bounds.center();
    let ground = text.ground.translate(to.x - middle.x, to.y - middle.y);
    let surroundings = text.surroundings.translate(to.x - middle.x, to.y - middle.y);
    Placed { ground, surroundings, ..text.clone() }
}

#[test]
fn a_text_on_another_on_a_line_or_off_the_paper_is_found() {
    let pages = pages_on(&super::sketch("record-sketch"), Paper::Letter);
    let page = &pages.pages()[0];
    let texts = placed(page);
    assert_eq!(faults_among(&texts, page), Vec::<String>::new());
    let label = texts.iter().position(|text| text.is_label).unwrap();
    let words = texts[label].words;
    let found = |to: Coord<f64>| {
        let mut texts = texts.clone();
        texts[label] = moved(&texts[label], to);
        faults_among(&texts, page)
    };
    let title = &texts[0];
    let both = format!("{:?} touches {words:?}", title.words);
    let onto = title.ground.bounding_rect().unwrap().center();
    assert!(found(onto).contains(&both), "{both}");
    let off = format!("{words:?} stands off the paper");
    let (width, height) = page.size_pt();
    for (x, y) in [(5.0, 300.0), (width - 5.0, 300.0), (300.0, 5.0), (300.0, height - 5.0)] {
        assert!(found(Coord { x, y }).contains(&off), "{x}, {y}");
    }
    for part in [Part::Outline, Part::Dashed, Part::Dimension] {
        let lines = page.lines(part);
        let (from, to) = lines[lines.len() / 2];
        let middle = Coord { x: (from.x_pt + to.x_pt) / 2.0, y: (from.y_pt + to.y_pt) / 2.0 };
        let touches = format!("{words:?} touches a line of {part:?}");
        assert!(found(middle).contains(&touches), "{touches}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate::cases(300)))]

    #[test]
    fn nothing_overlaps_on_the_pages_of_random_houses(house in houses()) {
        let text = house.text();
        // A bay that meets a porch or a tower does not make a valid house.
        let checked = fairfoot::read("house.sides", text.as_str());
        prop_assume!(checked.is_ok());
        let settings = fairfoot::Settings::default();
        prop_assume!(checked.as_ref().unwrap().areas(&settings).is_ok());
        let pages = pages_on(&text, Paper::Letter);
        for (i, page) in pages.pages().iter().enumerate() {
            prop_assert_eq!(faults(page), Vec::<String>::new(), "page {} of\n{}", i + 1, text);
        }
    }
}

/// The numbers of the walls that a first page asks to measure again, or to compare with the record's sketch.
fn walls_asked_about(page: &Page) -> Vec<String> {
    let all = super::words(page).join(" ");
    let asked = all
        .split("Please ")
        .skip(1)
        .filter(|asked| asked.starts_with("measure side") || asked.starts_with("compare side"));
    let numbers = |asked: &str| -> Vec<String> {
        let ends = [";", " again", " with ", "."].iter().filter_map(|end| asked.find(end));
        let named = &asked[..ends.min().unwrap_or(asked.len())];
        // Where a wall stands and its length are in parentheses.
        let outside = named.split(')').filter_map(|part| part.split('(').next());
        let words = outside.flat_map(str::split_whitespace);
        let is_number = |word: &&str| word.bytes().all(|byte| byte.is_ascii_digit());
        words.filter(is_number).map(str::to_owned).collect()
    };
    asked.flat_map(numbers).collect()
}

#[test]
fn the_number_of_a_wall_that_is_asked_about_is_on_the_drawing() {
    let mut asked_about = 0;
    for (name, text) in sketches() {
        let pages = pages_on(&text, Paper::Letter);
        let page = &pages.pages()[0];
        for number in walls_asked_about(page) {
            asked_about += 1;
            let is_there = page.texts().any(|text| text.is_label() && text.words() == number);
            assert!(is_there, "{name}: side {number}");
        }
    }
    assert!(asked_about >= 6, "{asked_about}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate::cases(150)))]

    /// The recorded length of side 2, three feet too long, is asked about whatever the house looks like.
    #[test]
    fn the_number_of_a_wall_that_is_asked_about_is_on_the_drawing_of_random_houses(house in houses()) {
        let text = house.text();
        let checked = fairfoot::read("house.sides", text.as_str());
        prop_assume!(checked.is_ok());
        let settings = fairfoot::Settings::default();
        prop_assume!(checked.as_ref().unwrap().areas(&settings).is_ok());
        let pages = pages_on(&text, Paper::Letter);
        let page = &pages.pages()[0];
        for number in walls_asked_about(page) {
            let is_there = page.texts().any(|text| text.is_label() && text.words() == number);
            prop_assert!(is_there, "side {number} of\n{text}");
        }
    }
}

/// A step of 3 feet 11 inches between two long walls, with its own length on a line beside it: its number stands farther
/// off, at the end of a line.
#[test]
fn the_number_of_a_short_wall_that_is_asked_about_is_on_the_drawing() {
    let text = "property \"1 Test Lane\"\nfront south\nveneer 4 5/8\"\nrecord 4596 sq ft\nlevel \"Ground floor\"\nliving \"Mvnqvyuiwomx mvqynr\"\nnorth 36' 0\"\neast 23' 11\" recorded 26 ft\nnorth 20' 7\"\neast 12' 10\"\nsouth 23' 1\"\neast 20' 10\"\nnorth 9' 6\"\neast 11' 8\"\nsouth 35' 9\"\neast 15' 2\"\nnorth 33' 9\"\neast 13' 11\"\nsouth 3' 11\"\neast 20' 5\"\nsouth 12' 11\"\neast 8' 11\"\nsouth 24' 2\"\nwest 127' 8\"\n";
    let pages = pages_on(text, Paper::Letter);
    let page = &pages.pages()[0];
    assert_eq!(walls_asked_about(page), ["2", "11", "13"]);
    for number in walls_asked_about(page) {
        assert!(page.texts().any(|text| text.is_label() && text.words() == number), "{number}");
    }
}

/// 40 sides over 200 ft, and a shed: the extremes of usual houses.
#[test]
fn a_long_house_and_a_small_shed_both_have_labels() {
    let mut long =
        String::from("front south\nlevel \"Ground floor\"\nliving \"Long house\"\nnorth 30'\n");
    for i in 0..19 {
        let way = if i % 2 == 0 { "north" } else { "south" };
        long.push_str(&format!("east 10' {}\"\n{way} 6' 3\"\n", i % 12));
    }
    long.push_str("east 10'\nsouth by closing\nclose\n");
    let pages = pages_on(&long, Paper::Letter);
    let all: Vec<String> = pages.pages().iter().flat_map(super::words).collect();
    assert!(all.iter().any(|words| words.starts_with("Scale 1 in = ")), "{all:?}");
    // Every length is on one of the drawings.
    for i in 0..12 {
        let length = if i == 0 { "10'".to_owned() } else { format!("10' {i}\"") };
        assert!(all.contains(&length), "{length} is missing");
    }
    let shed = "level \"Ground floor\"\nstorage \"Shed\"\nnorth 6'\neast 4'\nsouth 6'\nwest 4'";
    let pages = pages_on(shed, Paper::Letter);
    let all = super::words(&pages.pages()[0]);
    assert!(all.contains(&"Scale 1/4 in = 1 ft, printed at full size (100%)".to_owned()));
    assert!(all.contains(&"6'".to_owned()) && all.contains(&"4'".to_owned()), "{all:?}");
}

#[test]
fn detached_spaces_are_drawn_in_an_inset_at_any_scale() {
    let text = "level \"Ground\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\nstorage \"Shed\" detached\nnorth 8'\neast 10'\nsouth 8'\nwest 10'\ngarage \"Garage\" start east 40'\nnorth 20'\neast 20'\nsouth 20'\nwest 20'\n";
    // The position east of the house that the shed would have had belongs to the garage: nothing overlaps.
    let pages = pages_on(text, Paper::Letter);
    let page = &pages.pages()[0];
    assert_eq!(page.inset_scales_pt_per_ft().len(), 1);
    assert!(super::words(page).contains(&"Drawn separately, not where it stands".to_owned()));
    assert_eq!(faults(page), Vec::<String>::new());
}

#[test]
fn what_only_a_map_shows_is_named_where_it_is_drawn() {
    let first = super::words(&pages_on(&super::sketch("map-outline"), Paper::Letter).pages()[0]);
    assert_eq!(first.iter().filter(|words| *words == "only on the map").count(), 1, "{first:?}");
}

/// 28' 5" is 28' to the foot, as on the record; the steps use 29', since 12' and 28' would not make 41'.
#[test]
fn a_wall_that_rounds_to_its_recorded_length_is_in_brackets_with_its_reason() {
    let notice =
        super::words(&pages_on(&super::sketch("notice"), Paper::Letter).pages()[0]).join(" ");
    assert!(notice.contains("28' 5\" [28']"), "{notice}");
    let why = "ide 5 of House: 29' is used here to the foot, so that the rounded walls meet";
    assert!(notice.contains(why), "{notice}");
}
