//! A draft: a page for each level and lot with the sides as typed, whether or not they close. It shows no area.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::areas::rule::Settings;
use crate::diagnostic::{Diagnostics, Source, sha256};
use crate::geometry::compass::Direction;
use crate::geometry::outline::Vector;
use crate::house::LengthSource;
use crate::house::Run;
use crate::house::check::draft::{Draft, DraftWalk};
use crate::pages::drawing::canvas::{Block, Canvas, Dimension, Mark, most_looked_at};
use crate::pages::drawing::fit::{self, Fitting, Frame, Reach};
use crate::pages::drawing::occupancy::Sort;
use crate::pages::drawing::strip;
use crate::pages::drawing::view::{Turned, View, WallOnPage};
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::layout::{EDGE_PT, Flow, Stack};
use crate::pages::page::{Anchor, Ink, Part, Point, Stroke, Text};
use crate::pages::{Making, PageOptions, Pages, fingerprint, missing_letters};
use crate::units::length::Length;
use crate::wording::compass::on_drawings;
use crate::wording::sentences::as_sentences;

/// The height of the street, the scale bar and the scale below a drawing, in points.
const SCALE_PT: f64 = 40.0;
/// The margin for labels around the outline, in points.
const MARGIN_PT: f64 = 40.0;

/// A page for each level and lot with its sides as typed, drawn to scale: the gap back to the start is dashed and
/// labeled with its length, the sides to measure again are marked, the word DRAFT lies across it, and there is no area.
/// The sections in `options` have no effect.
///
/// The file may have errors: what cannot be read is left out, and the first page says so. Levels with a traverse that
/// does not close come first.
///
/// # Errors
///
/// The errors of the file, if it has no side that can be drawn.
///
/// ```
/// use fairfoot::{Paper, Source, pages};
///
/// let text = "level \"Ground\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 30'";
/// assert!(fairfoot::read("walk.sides", text).is_err());
/// let draft = pages::draft(Source::new("walk.sides", text), Paper::Letter)?;
/// assert!(draft.svg()[0].contains("House: the walk ends 10' east of where it began."));
/// # Ok::<(), fairfoot::Diagnostics>(())
/// ```
pub fn draft(source: Source, options: impl Into<PageOptions>) -> Result<Pages, Diagnostics> {
    let options = options.into();
    let mut source = source;
    if options.private {
        let text = crate::sketch::read(&source).sketch.tidied_without_private();
        source = Source::new(source.name(), text);
    }
    let drafts = crate::read::drafts(&source)?;
    let (settings, text) = (Settings::default(), source.text());
    let first = &drafts[0];
    let (place, numbers) = (first.particulars.place(), first.particulars.numbers());
    let print = fingerprint(text, &settings);
    let mut flow = Flow::new(options.paper, &place, &numbers, &sha256(text), &print);
    for draft in &drafts {
        filled(&mut flow, draft);
    }
    let mut title = vec![place, "DRAFT".to_owned()];
    title.extend(first.statements().into_iter().take(1));
    title.retain(|part| !part.is_empty());
    Ok(Pages {
        pages: flow.finish(),
        text: text.to_owned(),
        making: Making { settings, options, draft: true },
        photographs: Vec::new(),
        warnings: missing_letters(&source),
        title: fonts::shown(&title.join(": ")),
    })
}

fn filled(flow: &mut Flow, draft: &Draft) {
    let statements = draft.statements();
    flow.begin("DRAFT", &format!("DRAFT. {} {}", statements.join(" "), draft.caution()));
    let mut top = Stack::new(flow.width_pt());
    // The first few gaps are set large; the others are left to the drawing.
    const MOST: usize = 3;
    for statement in statements.iter().take(MOST) {
        top.bold(13.0, statement);
    }
    if let Some(level) = draft.level.as_ref().filter(|_| !draft.is_only) {
        top.bold(11.0, level);
    }
    top.space(3.0);
    top.paragraph(9.0, draft.caution());
    top.space(4.0);
    flow.pour(&top);
    let notes = notes(flow.width_pt(), draft);
    drawing(flow, draft, notes.height_pt());
    flow.pour(&notes);
}

/// The notes under the drawing, at most a third of a page.
fn notes(width_pt: f64, draft: &Draft) -> Stack {
    const MOST_ROWS: usize = 22;
    let mut notes = Stack::new(width_pt);
    notes.space(4.0);
    let advice = draft.advice();
    notes.at_most(MOST_ROWS, |notes| {
        for line in &advice {
            notes.paragraph(9.0, line);
            notes.space(2.0);
        }
        notes.space(2.0);
        let key = as_sentences(&legend(draft));
        notes.paragraph(7.5, &format!("Key to the drawing. {key}"));
    });
    notes
}

/// What the lines and marks mean.
fn legend(draft: &Draft) -> Vec<String> {
    let suspects = || draft.walks.iter().flat_map(|walk| &walk.suspects);
    let mut legend = vec![match draft.level.is_none() {
        true => "heavy line: the calls as typed, with their lengths as typed",
        false => "heavy line: the walls as typed, with their lengths as typed",
    }];
    if draft.walks.iter().any(|walk| !walk.is_closed()) {
        legend.push("dashed: the gap from the end of the walk back to its start");
    }
    let is_lot = draft.level.is_none();
    if suspects().any(|suspect| suspect.slip.is_some()) {
        legend.push(match is_lot {
            true => "black square: compare this call with the deed first; a common misreading of it would explain the gap",
            false => "black square: measure this wall again first; a common error there would explain the gap",
        });
    }
    if suspects().any(|suspect| suspect.slip.is_none()) {
        legend.push(match is_lot {
            true => "white square: an error in this call alone could explain the gap",
            false => "white square: an error in this wall alone could explain the gap",
        });
    }
    legend.push("small number at a wall: the number of that side");
    let mut legend: Vec<String> = legend.into_iter().map(str::to_owned).collect();
    legend.push(on_drawings(draft.particulars.front, None));
    legend
}

/// The traverse of a space on the page.
struct Shape<'a> {
    walk: &'a DraftWalk,
    walls: Vec<WallOnPage>,
    /// The line from the end of the traverse back to its start.
    gap: Option<WallOnPage>,
    figure: Vec<Point>,
}

fn drawing(flow: &mut Flow, draft: &Draft, below_pt: f64) {
    let turned = Turned { front: draft.particulars.front.unwrap_or(Direction::South) };
    let reach = Reach::of(draft.walks.iter().flat_map(DraftWalk::corners), turned);
    let height_pt = (flow.room_pt() - below_pt - SCALE_PT).max(240.0);
    let frame = Frame::new(Point::new(EDGE_PT, flow.y_pt()), flow.width_pt(), height_pt);
    let mut skip = 0;
    loop {
        let fitting = Fitting { skip, airy: 3.0, ..Fitting::default() };
        let (view, height) = fit::fitted(&reach, turned, &frame, MARGIN_PT, fitting);
        let (inks, left_out) = draw(draft, &view, &frame, height);
        // A smaller drawing has more room for labels around it.
        if left_out > 0 && skip < 2 {
            skip += 1;
            continue;
        }
        let mut all = across(&frame, height).1;
        all.extend(inks);
        let is_metric = draft.is_metric();
        let has_street = draft.particulars.front.is_some();
        strip::scale_strip(&mut all, has_street, is_metric, view.scale, &frame, height);
        let told = "The walks as typed, drawn to scale; each side is listed below.";
        flow.put_drawing(all, view.scale.pt_per_ft, told);
        flow.down(height + SCALE_PT);
        return;
    }
}

/// The word DRAFT across the drawing in outlined letters, and the rectangle that it covers.
fn across(frame: &Frame, height_pt: f64) -> (Vec<Point>, Vec<Ink>) {
    const WORD: &str = "DRAFT";
    const TURN: f64 = -28.0;
    let wide = (frame.width_pt * 0.86).min(height_pt * 1.5);
    let size_pt = wide / fonts::width_pt(Typeface::Bold, 1.0, WORD);
    let middle = Point::new(
        frame.left_top.x_pt + frame.width_pt / 2.0,
        frame.left_top.y_pt + height_pt / 2.0,
    );
    let radians = f64::to_radians(TURN);
    let down = Point::new(-libm::sin(radians), libm::cos(radians));
    let text = Text {
        anchor: Anchor::Middle,
        turn: TURN,
        is_hollow: true,
        ..Text::new(middle.plus(down, 0.36 * size_pt), size_pt, WORD)
    };
    let text = text.in_hand(Typeface::Bold);
    (text.corners().to_vec(), vec![Ink::Text(text)])
}

/// Draws the traverses and their labels; returns how many labels did not fit.
fn draw(draft: &Draft, view: &View, frame: &Frame, height_pt: f64) -> (Vec<Ink>, usize) {
    let right_bottom =
        Point::new(frame.left_top.x_pt + frame.width_pt, frame.left_top.y_pt + height_pt);
    let mut canvas = Canvas::new(*view, frame.left_top, right_bottom).within(most_looked_at(1));
    // Labels get a white background where they lie on the word DRAFT.
    canvas.hatch(across(frame, height_pt).0, Vec::new());
    let shapes: Vec<Shape<'_>> = draft.walks.iter().map(|walk| shape(walk, view)).collect();
    for shape in &shapes {
        outline(&mut canvas, shape);
    }
    for (i, shape) in shapes.iter().enumerate() {
        let others = shapes.iter().enumerate().filter(|(other, _)| *other != i);
        let others: Vec<Vec<Point>> = others.map(|(_, other)| other.figure.clone()).collect();
        let name = fonts::shortened(Typeface::Bold, 9.0, &fonts::shown(&shape.walk.name), 150.0);
        let block = |size: f64| Block { lines: vec![(Typeface::Bold, size, name.clone())] };
        let choices = [block(9.0), block(7.0)];
        if canvas.block(&shape.figure, &others, &choices).is_none() {
            canvas.block(&shape.figure, &[], &choices);
        }
    }
    let dimensions = shapes.iter().flat_map(|shape| dimensions(draft, shape)).collect();
    let left_out = canvas.dimensions(dimensions).len();
    let figures: Vec<&[Point]> = shapes.iter().map(|shape| shape.figure.as_slice()).collect();
    for shape in &shapes {
        for (wall, side) in shape.walls.iter().zip(&shape.walk.sides) {
            let number = side.number().get();
            if !canvas.number(wall, &shape.figure, &figures, &[], number) {
                canvas.number_led(wall, number);
            }
        }
        if let (false, [start, .., end]) = (shape.walk.is_closed(), &shape.figure[..]) {
            canvas.pointer(*start, "start");
            canvas.pointer(*end, "end");
        }
    }
    (canvas.finish(), left_out)
}

fn shape<'a>(walk: &'a DraftWalk, view: &View) -> Shape<'a> {
    let outside = if walk.turn() > 0 { 1.0 } else { -1.0 };
    let corners = walk.corners();
    let ends = corners.windows(2).zip(&walk.vectors);
    let walls: Vec<WallOnPage> =
        ends.map(|(ends, vector)| view.wall(vector, ends[0], ends[1], outside)).collect();
    let (first, last) = (corners[0], corners[corners.len() - 1]);
    let gap = (!walk.is_closed()).then(|| {
        let vector = Vector { east: first.0 - last.0, north: first.1 - last.1, rise: 0 };
        clear_of(view.wall(&vector, last, first, outside), &walls)
    });
    Shape { walk, walls, gap, figure: corners.iter().map(|&corner| view.spot(corner)).collect() }
}

/// The gap, moved aside if it lies on a wall, so that it can be seen.
fn clear_of(gap: WallOnPage, walls: &[WallOnPage]) -> WallOnPage {
    const BESIDE_PT: f64 = 4.5;
    let along = gap.from.to(gap.to).unit();
    let runs_along = |wall: &&WallOnPage| {
        let off = |spot: Point| gap.from.to(spot).cross(along).abs();
        let at = |spot: Point| gap.from.to(spot).dot(along);
        let (low, high) = (at(wall.from).min(at(wall.to)), at(wall.from).max(at(wall.to)));
        off(wall.from) < 1.0 && off(wall.to) < 1.0 && low < gap.length_pt() - 0.5 && high > 0.5
    };
    if !walls.iter().any(|wall| runs_along(&wall)) {
        return gap;
    }
    let moved = |spot: Point| spot.plus(gap.out, BESIDE_PT);
    WallOnPage { from: moved(gap.from), to: moved(gap.to), ..gap }
}

/// Draws the walls as one open line, and the gap as a dashed one.
fn outline(canvas: &mut Canvas, shape: &Shape<'_>) {
    if shape.gap.is_none() {
        return canvas.outline(&shape.walls, 1.0, None, Part::Outline);
    }
    let mut runs: Vec<_> = shape
        .walls
        .first()
        .map(|wall| crate::pages::page::Run::Move(wall.from))
        .into_iter()
        .collect();
    runs.extend(shape.walls.iter().map(WallOnPage::run));
    canvas.line(Stroke::of(runs, 1.7).of_part(Part::Outline), Sort::Wall);
    if let Some(gap) = &shape.gap {
        let stroke = Stroke::line(gap.from, gap.to, 1.2).dashed([5.0, 3.0]);
        canvas.line(stroke.of_part(Part::Dashed), Sort::Theirs);
    }
}

/// The length of every wall as typed, and of the gap.
fn dimensions(draft: &Draft, shape: &Shape<'_>) -> Vec<Dimension> {
    let walls = shape.walls.iter().enumerate();
    let mut all: Vec<Dimension> = walls
        .map(|(i, wall)| Dimension {
            wall: *wall,
            or_else: None,
            words: words(draft, shape.walk, i),
            hand: Typeface::Plain,
            mark: mark(shape.walk, i),
        })
        .collect();
    all.extend(shape.gap.map(|gap| Dimension {
        wall: gap,
        or_else: None,
        words: format!("gap {}", draft.length(gap_of(shape.walk))),
        hand: Typeface::Bold,
        mark: None,
    }));
    all
}

/// The straight distance from the end of a traverse to its start.
fn gap_of(walk: &DraftWalk) -> Length {
    let corners = walk.corners();
    let (first, last) = (corners[0], corners[corners.len() - 1]);
    Vector { east: first.0 - last.0, north: first.1 - last.1, rise: 0 }.chord_length()
}

fn mark(walk: &DraftWalk, side: usize) -> Option<Mark> {
    let suspect = walk.suspects.iter().find(|suspect| suspect.side == side)?;
    Some(if suspect.slip.is_some() { Mark::AgainFirst } else { Mark::Again })
}

/// The length of a side as typed.
fn words(draft: &Draft, walk: &DraftWalk, side: usize) -> String {
    let chord = || draft.length(walk.vectors[side].chord_length());
    let length = match &walk.sides[side].run {
        Run::Straight(_, written) | Run::Bearing(_, written) => written.to_string(),
        Run::ByClosing(_) if walk.vectors[side].chord_length() == Length::ZERO => {
            "by closing".to_owned()
        }
        Run::ByClosing(_) | Run::Close => format!("{} by closing", chord()),
        Run::Arc(..) => format!(
            "{} chord, rise {}",
            chord(),
            draft.length(Length::from_nm(walk.vectors[side].rise.abs()))
        ),
        Run::Diagonal(..) => chord(),
    };
    match walk.sides[side].how() {
        LengthSource::Estimated => format!("{length} estimated"),
        LengthSource::Plan => format!("{length} from plan"),
        LengthSource::Record => format!("{length} from record"),
        _ => length,
    }
}
