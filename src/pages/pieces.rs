//! Every outline cut into pieces that a pocket calculator can check.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::areas::at_face::Ruled;
use crate::geometry::compass::Direction;
use crate::geometry::outline::Outline;
use crate::geometry::partition;
use crate::geometry::partition::{Cut, Placed};
use crate::pages::drawing::canvas::{Block, Canvas};
use crate::pages::drawing::fit::{self, Fitting, Frame, Reach};
use crate::pages::drawing::occupancy::Sort;
use crate::pages::drawing::strip;
use crate::pages::drawing::view::{OnSite, Turned, View};
use crate::pages::fonts::Typeface;
use crate::pages::layout::{Column, Flow, Line, Row};
use crate::pages::page::{Ink, Part, Point, Role, Stroke};
use crate::units::area::Area;
use crate::units::length::{FineStep, Form, Length, Step, WrittenLength};
use crate::wording::products::product;
use crate::wording::sentences::{Sentences, in_a_column, letters, to_hundredths};

/// The pieces of every outline: plain rectangles in one table, each other outline with its own drawing.
///
/// A figure that states half-foot walls has a column of its own, from the outlines `halves`.
pub(crate) fn pieces(flow: &mut Flow, say: &Sentences<'_>, halves: Option<&Ruled>) {
    let mut plain: Vec<(usize, Vec<Cut>)> = Vec::new();
    let mut others = Vec::new();
    for space in 0..say.house.spaces.len() {
        let areas = &say.areas.spaces[space];
        let half = halves.map(|ruled| &ruled.outlines[space].outline);
        let outlines = [areas.tenth_foot(), areas.whole_foot()].into_iter().chain(half);
        match outlines.map(single).collect::<Option<Vec<Cut>>>() {
            Some(cuts) => plain.push((space, cuts)),
            None => others.push(space),
        }
    }
    for space in others {
        in_pieces(flow, say, space, halves.map(|ruled| &ruled.outlines[space].outline));
    }
    if plain.is_empty() {
        return;
    }
    let rules = 2 + usize::from(halves.is_some());
    let areas = |rule: usize| {
        in_a_column(&plain.iter().map(|(_, cuts)| cuts[rule].area()).collect::<Vec<Area>>())
    };
    let areas: Vec<Vec<String>> = (0..rules).map(areas).collect();
    let row = |(i, (space, cuts)): (usize, &(usize, Vec<Cut>))| {
        let mut row = vec![say.space_name_here(*space)];
        for (rule, cut) in cuts.iter().enumerate() {
            row.extend([product_in_feet(cut), areas[rule][i].clone()]);
        }
        row
    };
    let rows: Vec<Vec<String>> = plain.iter().enumerate().map(row).collect();
    let (wide, narrow) = if rules > 2 { (68.0, 50.0) } else { (92.0, 58.0) };
    let mut columns = vec![Column::words("length × width")];
    for head in [fine_head(say), FEET_HEAD, HALVES_HEAD].into_iter().take(rules) {
        columns.extend([Column::figures(head, wide), Column::figures("sq ft", narrow)]);
    }
    let mut stack = flow.stack();
    stack.heading("Rectangles");
    stack.table(7.5, &columns, &rows);
    flow.pour(&stack);
}

/// The only piece of an outline that is a plain rectangle.
fn single(outline: &Outline) -> Option<Cut> {
    let cuts = outline.cuts()?;
    match cuts[..] {
        [only @ Cut::Rectangle { .. }] => Some(only),
        _ => None,
    }
}

/// The column head for walls rounded to the whole foot.
pub(crate) const FEET_HEAD: &str = "each wall to\nthe whole foot";

/// The column head for walls rounded to the half foot, as a figure of the file has them.
pub(crate) const HALVES_HEAD: &str = "each wall to\nthe half foot";

/// The column head for walls rounded by the finer rule.
pub(crate) fn fine_head(say: &Sentences<'_>) -> &'static str {
    match say.settings.fine {
        FineStep::Inch => "each wall to\nthe inch",
        FineStep::TenthFoot => "each wall to\na tenth of a foot",
    }
}

/// Which of the two rules an outline is under.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Rule {
    /// Not rounded, in meters: the first columns of a metric file.
    Meters,
    Fine,
    Feet,
    /// To the half foot, where a figure says so.
    Halves,
}

/// An outline in pieces: the drawing with their letters, and the table beside or below it.
fn in_pieces(flow: &mut Flow, say: &Sentences<'_>, space: usize, halves: Option<&Outline>) {
    let areas = &say.areas.spaces[space];
    let (fine, feet) = (areas.tenth_foot(), areas.whole_foot());
    let name = say.space_name(space);
    let small = has_a_letter(&say.house.spaces[space].name);
    let is_alike = |outline: &Outline| ranks(outline) == ranks(fine);
    let both = Cutting::of(fine).zip(Cutting::of(feet)).filter(|_| is_alike(feet));
    let by_half = halves.and_then(|outline| Some((outline, Cutting::of(outline)?)));
    let both = both.filter(|_| halves.is_none_or(|outline| by_half.is_some() && is_alike(outline)));
    if let Some((by_fine, by_feet)) = &both {
        let mut cuttings = vec![(by_fine, fine, Rule::Fine), (by_feet, feet, Rule::Feet)];
        let outside = areas.outside();
        let in_meters = Cutting::of(outside).filter(|_| say.is_metric());
        let in_meters = in_meters.filter(|_| is_alike(outside));
        if let Some((outline, cutting)) = &by_half {
            cuttings.push((cutting, outline, Rule::Halves));
        }
        if let Some(in_meters) = &in_meters {
            cuttings.insert(0, (in_meters, outside, Rule::Meters));
        }
        let rules: Vec<Rule> = cuttings.iter().map(|(.., rule)| *rule).collect();
        let rows = Cutting::rows(&cuttings, small);
        return one_drawing(flow, say, (&name, small), by_fine, fine, &rules, &rows);
    }
    let half = halves.map(|outline| (outline, Rule::Halves, Step::HalfFoot.spoken()));
    let both = [
        (fine, Rule::Fine, say.settings.fine.spoken()),
        (feet, Rule::Feet, Step::WholeFoot.spoken()),
    ];
    for (outline, rule, each) in both.into_iter().chain(half) {
        let name = format!("{name}, {each}");
        match Cutting::of(outline) {
            Some(cutting) => {
                let rows = Cutting::rows(&[(&cutting, outline, rule)], small);
                one_drawing(flow, say, (&name, small), &cutting, outline, &[rule], &rows);
            }
            None => coordinates(flow, &name, outline),
        }
    }
}

/// Whether a name has a single letter as a word, as `Part A` has, which its pieces should not share.
fn has_a_letter(name: &str) -> bool {
    name.split_whitespace().any(|word| word.len() == 1 && word.starts_with(char::is_alphabetic))
}

/// The letter of a piece: a capital one, or a small one where the space is named by a letter itself.
fn letter(number: usize, small: bool) -> String {
    match small {
        true => letters(number).to_lowercase(),
        false => letters(number),
    }
}

/// The order of an outline's corners, east and north. Outlines with the same order are cut alike.
fn ranks(outline: &Outline) -> Vec<(usize, usize)> {
    let points = outline.points();
    let rank = |pick: fn(&OnSite) -> i64| {
        let mut all: Vec<i64> = points.iter().map(pick).collect();
        all.sort_unstable();
        all.dedup();
        move |value: i64| all.binary_search(&value).unwrap_or(0)
    };
    let (east, north) = (rank(|p| p.0), rank(|p| p.1));
    points.iter().map(|point| (east(point.0), north(point.1))).collect()
}

/// An outline divided into pieces.
struct Cutting {
    placed: Vec<Placed>,
}

impl Cutting {
    fn of(outline: &Outline) -> Option<Cutting> {
        partition::placed(outline).map(|placed| Cutting { placed })
    }

    /// The rows of the table: for each piece and rule, length × width and the result; then the sum.
    fn rows(cuttings: &[(&Cutting, &Outline, Rule)], small: bool) -> Vec<Line> {
        let mut rows = Vec::new();
        let areas: Vec<Vec<String>> = cuttings
            .iter()
            .map(|(cutting, outline, rule)| {
                let signed = |placed: &Placed| match is_deducted(&placed.cut) {
                    true => -placed.cut.area(),
                    false => placed.cut.area(),
                };
                let pieces = cutting.placed.iter().map(signed);
                let all: Vec<Area> = pieces.chain([outline.area()]).collect();
                match rule {
                    Rule::Meters => all.iter().map(|area| in_sq_m(*area)).collect(),
                    Rule::Fine | Rule::Feet | Rule::Halves => in_a_column(&all),
                }
            })
            .collect();
        let count = cuttings.first().map_or(0, |(cutting, ..)| cutting.placed.len());
        for i in 0..count {
            let deducted = is_deducted(&cuttings[0].0.placed[i].cut);
            let mut row =
                vec![format!("{}{}", letter(i, small), if deducted { ", deducted" } else { "" })];
            for ((cutting, _, rule), areas) in cuttings.iter().zip(&areas) {
                let Some(cut) = cutting.placed.get(i).map(|placed| placed.cut) else { continue };
                let product = match rule {
                    Rule::Meters => times(&cut, in_meters, METER),
                    Rule::Fine | Rule::Feet | Rule::Halves => product_in_feet(&cut),
                };
                row.extend([product, areas.get(i).cloned().unwrap_or_default()]);
            }
            rows.push(Line::Plain(row));
        }
        let mut sum = vec!["total".to_owned()];
        for areas in areas {
            sum.extend([String::new(), areas.last().cloned().unwrap_or_default()]);
        }
        rows.push(Line::Bold(sum));
        rows
    }
}

/// An area in square meters to the hundredth.
fn in_sq_m(area: Area) -> String {
    let text = area.in_unit(Area::SQUARE_METER, 2);
    text.replace('-', "\u{2212}")
}

/// The unit of the first columns of a metric file.
const METER: Length = Length::from_nm(1_000_000_000);

/// A length in meters, at most to the hundredth.
fn in_meters(length: Length) -> String {
    let written =
        WrittenLength::new(length.rounded_to(Length::CENTIMETER.nm()), Form::Meters).spoken();
    written.trim_end_matches(" m").to_owned()
}

fn is_deducted(cut: &Cut) -> bool {
    match *cut {
        Cut::Rectangle { .. } => false,
        Cut::Triangle { deducted, .. } | Cut::Segment { deducted, .. } => deducted,
    }
}

/// What to type into a calculator, in decimal feet.
fn product_in_feet(cut: &Cut) -> String {
    times(cut, to_hundredths, Length::FOOT)
}

/// The product of a piece in a unit; `text` prints the lengths of a curve.
fn times(cut: &Cut, text: impl Fn(Length) -> String, unit: Length) -> String {
    match *cut {
        Cut::Rectangle { east, north } => product([east, north], false, unit),
        Cut::Triangle { east, north, .. } => product([east, north], true, unit),
        Cut::Segment { chord, rise, .. } => {
            format!("curve: chord {}, rise {}", text(chord), text(rise))
        }
    }
}

fn one_drawing(
    flow: &mut Flow,
    say: &Sentences<'_>,
    (name, small): (&str, bool),
    cutting: &Cutting,
    outline: &Outline,
    rules: &[Rule],
    rows: &[Line],
) {
    let is_wide = rules.len() > 2;
    let drawn_wide = if is_wide { 126.0 } else { 170.0 };
    let mut title = flow.stack();
    title.heading(&format!("{name}, piece by piece"));
    let (inks, height, scale) = lettered(say, cutting, outline, small, drawn_wide);
    let mut drawing = flow.stack_of(drawn_wide);
    let first = letter(0, small);
    let last = letter(cutting.placed.len().saturating_sub(1), small);
    let told = match cutting.placed.len() {
        ..2 => format!("{name}, one piece, {first}"),
        2 => format!("{name}, cut into pieces {first} and {last}"),
        _ => format!("{name}, cut into pieces {first} to {last}"),
    };
    let told = format!("{told}{}", lying(cutting, small));
    drawing.row(Row { height_pt: height, inks, role: Role::Figure(told), ..Row::default() });
    drawing.paragraph(6.5, &format!("Drawn at {scale}"));
    let mut table = flow.stack_of(flow.width_pt() - drawn_wide - 14.0);
    let mut columns = vec![Column::short("piece", if is_wide { 48.0 } else { 58.0 })];
    for rule in rules {
        let (head, unit) = match rule {
            Rule::Meters => ("not rounded,\nin meters", "sq m"),
            Rule::Fine => (fine_head(say), "sq ft"),
            Rule::Feet => (FEET_HEAD, "sq ft"),
            Rule::Halves => (HALVES_HEAD, "sq ft"),
        };
        columns.extend([
            Column::figures(head, 0.0),
            Column::figures(unit, if is_wide { 46.0 } else { 52.0 }),
        ]);
    }
    table.table_of(7.5, &columns, rows);
    if title.height_pt() + drawing.height_pt() > flow.room_pt() {
        flow.need(f64::MAX);
    }
    flow.pour(&title);
    if table.height_pt() > flow.room_pt() {
        flow.pour(&drawing);
        let mut table = flow.stack();
        table.table_of(7.5, &columns, rows);
        return flow.pour(&table);
    }
    flow.beside(&drawing, &table, drawn_wide + 14.0);
}

/// Where each of several pieces lies in the outline, in words for who does not see the letters: `: A in the west; B in the
/// northeast`.
fn lying(cutting: &Cutting, small: bool) -> String {
    let corners = || cutting.placed.iter().flat_map(|placed| placed.corners.iter().copied());
    let span = |along: fn(OnSite) -> i64, corners: &mut dyn Iterator<Item = OnSite>| {
        let ends = corners.map(along).fold(None, |ends: Option<(i64, i64)>, at| match ends {
            None => Some((at, at)),
            Some((low, high)) => Some((low.min(at), high.max(at))),
        });
        ends.unwrap_or_default()
    };
    type Along = fn(OnSite) -> i64;
    let (east, north): (Along, Along) = (|at| at.0, |at| at.1);
    let (wide, deep) = (span(east, &mut corners()), span(north, &mut corners()));
    // A piece lies to one side if its middle is more than a sixth of the outline from the middle of that.
    let way = |(low, high): (i64, i64), (from, to): (i64, i64), less, more| {
        let off = (low + high) - (from + to);
        match 3 * off.abs() > to - from {
            true if off < 0 => less,
            true => more,
            false => "",
        }
    };
    let told: Vec<String> = cutting
        .placed
        .iter()
        .enumerate()
        .map(|(i, placed)| {
            let of = |along| span(along, &mut placed.corners.iter().copied());
            let north = way(of(north), deep, "south", "north");
            let place = match (north, way(of(east), wide, "west", "east")) {
                ("", "") => "middle".to_owned(),
                (north, east) => format!("{north}{east}"),
            };
            format!("{} in the {place}", letter(i, small))
        })
        .collect();
    match told.len() {
        ..2 => String::new(),
        _ => format!(": {}", told.join("; ")),
    }
}

/// The outline with its cuts dashed and a letter in every piece; also its height, and the scale in words.
fn lettered(
    say: &Sentences<'_>,
    cutting: &Cutting,
    outline: &Outline,
    small: bool,
    wide_pt: f64,
) -> (Vec<Ink>, f64, String) {
    let turned = Turned { front: say.house.particulars.front.unwrap_or(Direction::South) };
    let flat = outline.flattened();
    let reach = Reach::of(flat.iter().map(|&(east, north, _)| (east, north)), turned);
    let frame = Frame::new(Point::new(0.0, 0.0), wide_pt, 170.0).in_meters(say.draws_in_meters());
    let (view, height) = fit::fitted(&reach, turned, &frame, 10.0, Fitting::default());
    let mut canvas = Canvas::new(view, Point::new(0.0, 0.0), Point::new(wide_pt, height));
    let walls = view.walls(outline, (0, 0));
    for placed in &cutting.placed {
        let stroke = Stroke::along(&closed(&ring(&view, placed)), 0.5).dashed([3.0, 2.0]);
        canvas.line(stroke, Sort::Theirs);
    }
    canvas.outline(&walls, 1.3, None, Part::Outline);
    for (i, placed) in cutting.placed.iter().enumerate() {
        let choice = |size: f64| Block { lines: vec![(Typeface::Bold, size, letter(i, small))] };
        let mut figure = ring(&view, placed);
        if let (Cut::Segment { .. }, Some(wall)) = (placed.cut, placed.wall) {
            figure = walls[wall].stretches().iter().map(|stretch| stretch.0).collect();
            figure.push(walls[wall].to);
        }
        if canvas.block(&figure, &[], &[choice(9.0), choice(7.0), choice(6.0)]).is_none() {
            let middle = figure.iter().fold(Point::default(), |sum, spot| sum.plus(*spot, 1.0));
            let count = f64::from(u32::try_from(figure.len().max(1)).unwrap_or(1));
            canvas.pointer(Point::default().plus(middle, 1.0 / count), &letter(i, small));
        }
    }
    (canvas.finish(), height, strip::scale_words(view.scale, say.is_metric()))
}

/// The corners of a piece on the page.
fn ring(view: &View, placed: &Placed) -> Vec<Point> {
    placed.corners.iter().map(|&corner| view.spot(corner)).collect()
}

fn closed(spots: &[Point]) -> Vec<Point> {
    spots.iter().chain(spots.first()).copied().collect()
}

/// How to compute the area from the corners' coordinates, in words.
pub(crate) const BY_CORNERS: &str = "half the sum, over each corner and the next, of east × next north minus north × next east, as a positive number";
/// What curved walls add to that area, in words.
pub(crate) const BY_CHORD: &str =
    "a curved wall adds or subtracts the area between it and its chord";

/// Lists an outline that cannot be cut into right-angled pieces corner by corner.
fn coordinates(flow: &mut Flow, name: &str, outline: &Outline) {
    let mut stack = flow.stack();
    stack.heading(name);
    stack.paragraph(8.0, &format!("No right-angled pieces add up to this outline, so here are its corners, in feet from the first, shown to a hundredth. The area is {BY_CORNERS}; {BY_CHORD}."));
    let columns = [
        Column::short("corner", 60.0),
        Column::figures("east", 100.0),
        Column::figures("north", 100.0),
        Column::words(""),
    ];
    let feet = |nm: i64| to_hundredths(Length::from_nm(nm));
    let rows: Vec<Vec<String>> = outline
        .points()
        .iter()
        .enumerate()
        .map(|(i, point)| vec![(i + 1).to_string(), feet(point.0), feet(point.1), String::new()])
        .collect();
    stack.table(7.5, &columns, &rows);
    stack.ledger(8.0, "area, square feet", &outline.area().to_hundredths(), Typeface::Bold);
    flow.pour(&stack);
}
