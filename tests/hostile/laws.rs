//! Laws that hold for any bytes: one function for each input. The fuzzer calls them with bytes that it makes, the
//! tests with those that were kept.

use std::sync::OnceLock;

use fairfoot::batch::{BatchOptions, Input, compute};
use fairfoot::maps::{self, Format};
use fairfoot::pages::{self, Pictures};
use fairfoot::reconcile::Line;
use fairfoot::sketch::rows;
use fairfoot::units::{Area, Halves};
use fairfoot::{House, Paper, Settings, Source, verify};

use super::twin::{self, Direction, Wall};
use super::walks::{areas, exact, fraction, sides_file, whole_feet};

/// A law and its name, which is also the folder of its kept inputs.
pub type Law = fn(&[u8]);

/// Every law.
pub const ALL: [(&str, Law); 10] = [
    ("sides", sides),
    ("closing", closing),
    ("lines", lines),
    ("svg", svg),
    ("svg_edited", svg_edited),
    ("pdf", pdf),
    ("search", search),
    ("photographs", photographs),
    ("outlines", outlines),
    ("walks", walks),
];

/// A sides file of any bytes is read or refused, never a panic; a file that is read is printed and read back the
/// same.
pub fn sides(bytes: &[u8]) {
    let source = match fairfoot::decode("any.sides", bytes.to_vec()) {
        Ok(source) => source,
        Err(faults) => return assert!(!faults.drawn(false).is_empty()),
    };
    let text = source.text().to_owned();
    if let Ok(sketch) = fairfoot::sketch::parse(source) {
        let tidied = sketch.tidied();
        let again = fairfoot::sketch::parse(Source::new("tidied.sides", tidied.clone()));
        let again = again.unwrap_or_else(|faults| panic!("{tidied}\n{faults}"));
        assert!(sketch.says_the_same_as(&again), "{text}\n{tidied}");
        assert_eq!(again.tidied(), tidied);
    }
    match fairfoot::read("any.sides", text) {
        Err(faults) => {
            assert!(faults.list().iter().any(fairfoot::Diagnostic::is_error));
            assert!(!faults.drawn(true).is_empty());
        }
        Ok(checked) => all_of(&checked),
    }
}

/// All steps of a valid file, down to the report, whose lines add up.
fn all_of(checked: &House) {
    let settings = Settings::default();
    let Ok(areas) = checked.areas(&settings) else { return };
    for space in areas.spaces() {
        let range = space.range();
        assert!(range.is_none_or(|range| range.low <= range.high));
        if let (Some(range), Some(widest)) = (range, space.widest()) {
            assert!(widest.low <= range.low && range.high <= widest.high);
        }
    }
    let Ok(reconciliation) = areas.reconcile(&fairfoot::Weights::default()) else { return };
    for figure in reconciliation.figures() {
        let sum: Area = figure.lines().iter().map(Line::area).sum();
        assert_eq!(sum, figure.gap());
        let found = figure.explanations();
        let support = found.list().iter().map(fairfoot::reconcile::Explanation::support);
        // What is reported comes first, in its own order.
        let others = support.clone().skip(found.reported().count());
        assert!(others.is_sorted_by(|a, b| a >= b));
        assert!(support.clone().all(|support| (0.0..=1.0).contains(&support)));
        let all = support.sum::<f64>() + found.something_else();
        assert!(all <= 1.0 + 1e-9, "{all}");
    }
    assert!(!reconciliation.report().text(Default::default()).is_empty());
    let json = reconciliation.report().json();
    assert!(serde_json::to_string(&json).is_ok());
}

/// A right-angled walk of at most 12 sides, made from the bytes: the program and the second computation agree on
/// it.
pub fn closing(bytes: &[u8]) {
    const TOLERANCE: i64 = 8;
    let Some((&how, rest)) = bytes.split_first() else { return };
    // Two bytes a side, of which one bit is its sense; in sixteenths of an inch, inches, or half feet.
    let grain = [1, 16, 96, 3][usize::from(how & 3)];
    let mut ends = [0_i64; 2];
    let mut walked: Vec<(usize, i64)> = Vec::new();
    for pair in rest.chunks_exact(2).take(10) {
        let number = i64::from(u16::from_le_bytes([pair[0], pair[1]]));
        let length = ((number >> 1) % 9_000 / grain + 1) * grain;
        let axis = walked.len() % 2;
        let signed = if number & 1 == 1 { length } else { -length };
        ends[axis] += signed;
        walked.push((axis, signed));
    }
    if walked.len() < 2 || walked.len() % 2 == 1 || ends.contains(&0) {
        return;
    }
    walked.extend([(0, -ends[0]), (1, -ends[1])]);
    let direction = |(axis, signed): (usize, i64)| match (axis, signed > 0) {
        (0, true) => Direction::North,
        (0, false) => Direction::South,
        (_, true) => Direction::East,
        (_, false) => Direction::West,
    };
    // With slack, each length is misread by as much as the bytes say, up to the tolerance.
    let slack = |i: usize| match how & 4 {
        0 => 0,
        _ => i64::from(rest.get(i).copied().unwrap_or(0)) % (2 * TOLERANCE + 1) - TOLERANCE,
    };
    let sixteenths = |number: i64| fraction(number, 192);
    let walls: Vec<Wall> = walked
        .iter()
        .enumerate()
        .map(|(i, &side)| Wall {
            direction: direction(side),
            feet: sixteenths((side.1.abs() + slack(i)).max(1)),
            tolerance: sixteenths(TOLERANCE),
        })
        .collect();
    let directions: Vec<Direction> = walls.iter().map(|wall| wall.direction).collect();
    let clear = |lengths: &[i64]| twin::clear_of_itself(&directions, lengths, 0);
    let exactly: Vec<i64> = walked.iter().map(|side| side.1.abs()).collect();
    let read = fairfoot::read("walk.sides", sides_file("", &walls));
    if how & 4 == 0 {
        assert_eq!(read.is_ok(), clear(&exactly), "{walls:?}");
    }
    let Ok(checked) = read else { return };
    if how & 4 == 0 {
        let outline = checked.spaces()[0].outline();
        assert_eq!(exact(outline.area()), twin::as_measured(&walls), "{walls:?}");
    }
    let (halves, our_ties) = match how >> 3 & 3 {
        0 => (twin::Halves::Up, Halves::Up),
        1 => (twin::Halves::Down, Halves::Down),
        _ => (twin::Halves::Even, Halves::Even),
    };
    let ours = areas(&checked, &Settings { halves: our_ties, ..Settings::default() });
    let gross = ours.gross();
    let agrees = |ours: &twin::Exact, theirs: &twin::Exact, step: &twin::Exact| {
        ours == theirs || is_as_near(ours, theirs, &walls, step, halves)
    };
    let (tenth, foot) = (fraction(1, 10), fraction(1, 1));
    let (ours, (_, theirs)) = (exact(gross.tenth_foot()), twin::on_step(&walls, &tenth, halves));
    assert!(agrees(&ours, &theirs, &tenth), "{ours} {theirs} {walls:?}");
    let (ours, (lengths, theirs)) =
        (exact(gross.whole_foot()), twin::on_step(&walls, &foot, halves));
    if clear(&whole_feet(&lengths)) {
        assert!(agrees(&ours, &theirs, &foot), "{ours} {theirs} {walls:?}");
    }
    let pair = |range: Option<fairfoot::areas::Range>| range.map(|r| (exact(r.low), exact(r.high)));
    let [range, widest] = [pair(gross.range()), pair(gross.widest())];
    let (all, most) = (twin::range(&walls, &fraction(15, 100)), twin::widest(&walls));
    // An outline thinner than a foot everywhere may be turned inside out by rounding; the second computation
    // accepts that as an outline.
    let outline = checked.spaces()[0].outline();
    if outline.area().sq_ft() > outline.perimeter().feet() {
        assert_eq!((&range, &widest), (&all, &most), "{walls:?}");
    }
    for (ours, theirs) in [(range, all), (widest, most)] {
        if let Some(ours) = ours {
            let theirs = theirs.expect("what we can state can be stated");
            assert!(theirs.0 <= ours.0 && ours.1 <= theirs.1, "{walls:?}");
        }
    }
}

/// Whether an area belongs to a closing as near to the typed lengths as another, and is as near to the measured area
/// within the ten-thousandth of a square foot below which the program takes the larger.
fn is_as_near(
    ours: &twin::Exact,
    theirs: &twin::Exact,
    walls: &[Wall],
    step: &twin::Exact,
    halves: twin::Halves,
) -> bool {
    let measured = twin::as_measured(walls);
    let off = |area: &twin::Exact| twin::distance(area, &measured);
    let is_listed =
        || twin::nearest_closings(walls, step, halves).iter().any(|one| one.area == *ours);
    twin::distance(&off(ours), &off(theirs)) < fraction(1, 10_000) && ours > theirs && is_listed()
}

/// A line of JSON of any bytes gives a row with results or with its errors; the output is valid JSON.
pub fn lines(bytes: &[u8]) {
    let (id, given) = Input::line(bytes);
    let house = compute(&id, &given, &BatchOptions::default());
    assert_eq!(house.id, id);
    let written = serde_json::to_string(&house).expect("a row is JSON");
    assert!(!written.contains('\n'));
    let again: serde_json::Value = serde_json::from_str(&written).expect("and is read as JSON");
    assert_eq!(again["id"], serde_json::Value::String(id));
    assert!(house.faults.is_empty() || house.tenth_foot.is_none());
    assert!(!fairfoot::batch::cells(&house).is_empty());
}

/// A page of any bytes is refused, or its true pages are regenerated; it is genuine only if it is one of those.
fn page(bytes: &[u8]) {
    if let Ok(verified) = verify::file(bytes) {
        let made = match verified.page() {
            Some(page) => verified.pages().svg_of(page).map(String::into_bytes),
            None => verified.pages().pdf().ok(),
        };
        assert_eq!(verified.is_genuine(), made.as_deref() == Some(bytes));
    }
}

/// A page in SVG of any bytes.
pub fn svg(bytes: &[u8]) {
    page(bytes);
}

/// A file that says it is a PDF, and any bytes after that.
pub fn pdf(bytes: &[u8]) {
    page(&[b"%PDF-1.7\n", bytes].concat());
}

/// The texts that an edit may insert.
const FRAGMENTS: [&str; 24] = [
    "<text>",
    "</text>",
    "<tspan>",
    "</tspan>",
    "<g>",
    "</g>",
    "<!--",
    "-->",
    "<![CDATA[",
    "]]>",
    "<title>",
    "</title>",
    "<desc>",
    "</desc>",
    " x=\"1\"",
    " display=\"none\"",
    " style=\"opacity:0\"",
    "&#49;",
    "&amp;",
    "\"",
    "<defs>",
    "</defs>",
    "<a href=\"#x\">",
    "<use/>",
];

/// An unchanged page.
pub fn a_page() -> &'static str {
    static PAGE: OnceLock<String> = OnceLock::new();
    PAGE.get_or_init(|| {
        let text = "record 1,240 sq ft\nlevel \"Ground floor\"\nliving \"House\"\nnorth 30' 4\" recorded 30'\neast 40'\nsouth 30' 4\"\nwest 40'\n";
        let checked = fairfoot::read("house.sides", text).expect("a sound file");
        let settings = Settings::default();
        let areas = checked.areas(&settings).expect("areas");
        let reconciliation = areas.reconcile(&fairfoot::Weights::default()).expect("a figure");
        reconciliation.pages(Paper::Letter).expect("pages").svg().remove(0)
    })
}

/// A page edited as the bytes say is genuine only if the edits changed nothing.
pub fn svg_edited(bytes: &[u8]) {
    let made = a_page();
    let body = made.find("<text").expect("a page has texts");
    let mut edited = made.to_owned();
    for edit in bytes.chunks_exact(5).take(6) {
        let place = usize::from(u16::from_le_bytes([edit[1], edit[2]]));
        let mut at = body + place % (edited.len() - body);
        while !edited.is_char_boundary(at) {
            at -= 1;
        }
        match edit[0] % 4 {
            0 => edited.insert_str(at, FRAGMENTS[usize::from(edit[3]) % FRAGMENTS.len()]),
            1 => edited.insert(at, char::from(edit[3] % 95 + 32)),
            kind => {
                let most = if kind == 2 { 1 } else { usize::from(edit[4]) };
                let mut end = (at + most).min(edited.len());
                while !edited.is_char_boundary(end) {
                    end += 1;
                }
                let instead = char::from(edit[3] % 95 + 32).to_string();
                edited.replace_range(at..end, if kind == 2 { &instead } else { "" });
            }
        }
        if edited.len() <= body {
            return;
        }
    }
    if let Ok(verified) = verify::file(edited.as_bytes()) {
        assert_eq!(verified.is_genuine(), edited == made);
    }
}

/// A house, spaces next to it and figures, all made from the bytes: the steps of every cause of a figure add up.
pub fn search(bytes: &[u8]) {
    const KINDS: [&str; 8] =
        ["garage", "porch", "patio", "storage", "unfinished", "carport", "deck", "living"];
    const WORDS: [&str; 6] = [
        "",
        " measured to frame",
        " sides unknown",
        " sides half-foot",
        " sides inch",
        " counting \"Space 0\"",
    ];
    let byte = |i: usize| bytes.get(i).copied().map(i64::from);
    let Some(how) = byte(0) else { return };
    let mut text = format!("veneer {}\n", if how & 1 == 1 { "4 5/8\"" } else { "none" });
    if how & 2 == 2 {
        text.push_str("faces frame\n");
    }
    if how & 4 == 4 {
        text.push_str("interior seen\n");
    }
    let number = |i: usize| byte(i).unwrap_or(0) * 256 + byte(i + 1).unwrap_or(0);
    let figures = ["record", "listing", "plan", "figure \"Other\""];
    let spaces = usize::try_from(how >> 3 & 15).unwrap_or(0);
    for (i, name) in figures.iter().enumerate().take(1 + usize::try_from(how >> 6).unwrap_or(0)) {
        let words = usize::try_from(byte(3 * i + 3).unwrap_or(0)).unwrap_or(0) % WORDS.len();
        let words = if spaces == 0 && words == 5 { "" } else { WORDS[words] };
        text.push_str(&format!("{name} {} sq ft{words}\n", number(3 * i + 1) % 9_000 + 1));
    }
    let side = |i: usize| (number(i) % 6_000 + 192, 16);
    let length =
        |(sixteenths, _): (i64, i64)| fairfoot::units::Length::from_nm(sixteenths * 1_587_500);
    let (high, wide) = (length(side(13)), length(side(15)));
    text.push_str(&format!(
        "level \"Ground floor\"\nliving \"House\"\nnorth {high}\neast {wide}\nsouth {high}\nwest {wide}\n"
    ));
    for i in 0..spaces {
        let at = 17 + 4 * i;
        let kind = KINDS[usize::try_from(byte(at).unwrap_or(0)).unwrap_or(0) % KINDS.len()];
        let (high, wide) = (length(side(at + 1)), length(side(at + 2)));
        if how & 32 == 32 && i == 6 {
            text.push_str("level \"Upper floor\"\n");
        }
        let recorded = if byte(at + 3).unwrap_or(0) & 1 == 1 { " recorded 120 sq ft" } else { "" };
        text.push_str(&format!(
            "{kind} \"Space {i}\" start east {}'{recorded}\nnorth {high}\neast {wide}\nsouth {high}\nwest {wide}\n",
            40 * (i + 1)
        ));
    }
    match fairfoot::read("made.sides", text.as_str()) {
        Ok(checked) => all_of(&checked),
        Err(faults) => assert!(!faults.drawn(false).is_empty()),
    }
}

/// Bytes as a picture are refused with a sentence, or become a picture that is prepared the same way again and is
/// inside pages that are genuine.
pub fn photographs(bytes: &[u8]) {
    const SHED: &str = "level \"Ground\"\nliving \"Shed\"\nnorth 8' photo \"1: door\" file \"door.jpg\"\neast 12'\nsouth 8'\nwest 12'\n";
    let house = fairfoot::read("shed.sides", SHED).expect("a sound file");
    let read = || Pictures::read(&house, |_| Ok(bytes.to_vec()));
    let pictures = match read() {
        Ok(pictures) => pictures,
        Err(faults) => return assert!(faults.to_string().contains("`door.jpg`")),
    };
    let mark = |pictures: &Pictures| pictures.sha256("door.jpg").map(str::to_owned);
    assert_eq!(mark(&pictures), mark(&read().expect("a picture again")));
    let areas = house.areas(&Settings::default()).expect("areas");
    let reconciliation = areas.reconcile(&fairfoot::Weights::default()).expect("no figure");
    let pages = reconciliation.pages_with(Paper::Letter, &pictures).expect("pages");
    let pdf = pages.pdf().expect("a PDF");
    assert!(verify::file(&pdf).expect("our own file").is_genuine());
}

/// A map of any bytes is refused, or its shapes are refused or become lines of a sides file without an error in
/// them.
pub fn outlines(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    let Some(format) = Format::of(&text) else { return };
    let Ok(features) = maps::features(format, &text) else { return };
    assert!(!features.is_empty());
    for feature in features.iter().take(20) {
        let Ok(outline) = feature.outline() else { continue };
        assert!(outline.plane_sq_ft().is_finite() && outline.geodesic_sq_ft().is_finite());
        let block = outline.block(feature.name().unwrap_or("Map"), "House", feature.id());
        let house = "level \"Ground\"\nliving \"House\"\nnorth 8'\neast 12'\nsouth 8'\nwest 12'\n";
        let text = format!("{house}{block}");
        if let Err(faults) = fairfoot::sketch::parse(Source::new("map.sides", text.as_str())) {
            panic!("{text}\n{faults}");
        }
        if let Ok(checked) = fairfoot::read("map.sides", text) {
            all_of(&checked);
        }
    }
}

/// A text of any bytes as rows: each row names its line, and a length typed anew changes that line alone. A walk
/// that does not close is drawn as a draft or refused.
pub fn walks(bytes: &[u8]) {
    let Ok(source) = fairfoot::decode("any.sides", bytes.to_vec()) else { return };
    let text = source.text().to_owned();
    let lines: Vec<&str> = text.split_inclusive('\n').collect();
    for walk in rows::rows(&text).walks.iter().take(4) {
        for row in walk.rows.iter().take(12) {
            assert!((1..=lines.len()).contains(&row.line), "{}: {text}", row.line);
            let Some(way) = row.way else { continue };
            let (how, shape) = Default::default();
            let edit =
                rows::Edit::Side { line: row.line, way, length: "7'".to_owned(), how, shape };
            let changed = rows::edited(&text, &edit);
            let after: Vec<&str> = changed.split_inclusive('\n').collect();
            assert_eq!(after.len(), lines.len(), "{text}\n{changed}");
            for (i, (before, after)) in lines.iter().zip(&after).enumerate() {
                assert!(i + 1 == row.line || before == after, "{text}\n{changed}");
            }
        }
    }
    if fairfoot::read("any.sides", text).is_err()
        && let Ok(pages) = pages::draft(source, Paper::Letter)
    {
        let svg = pages.svg_of(1).expect("a draft has a page");
        assert!(verify::file(svg.as_bytes()).expect("our own file").is_genuine());
    }
}
