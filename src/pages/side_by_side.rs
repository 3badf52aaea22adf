//! The record's own sketch, or a plan, beside the house as measured: at one scale, with differing walls marked and
//! the area under each.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::geometry::compass::Direction;
use crate::geometry::outline::Outline;
use crate::house::{ReferenceOutline, SideNumber};
use crate::pages::blocks;
use crate::pages::drawing::canvas::{Block, Canvas, Dimension, Mark};
use crate::pages::drawing::marks::Marks;
use crate::pages::drawing::plan;
use crate::pages::drawing::plan::{Fitting, Frame, Reach};
use crate::pages::drawing::view::{OnSite, SCALES, Scale, Turned, View};
use crate::pages::fonts::Typeface;
use crate::pages::layout::{Column, EDGE_PT, Flow, Stack};
use crate::pages::page::{Ink, Part, Point, Stroke};
use crate::reconcile::{OutlineReport, Reconciliation};
use crate::wording::map;
use crate::wording::sentences::{Sentences, capital, whole, whose};

/// The space between the two drawings, in points.
const BETWEEN_PT: f64 = 18.0;
/// The height of each drawing, in points.
const HEIGHT_PT: f64 = 225.0;

/// Fills the pages, if the file has an outline from a record, a plan or a map.
pub(crate) fn side_by_side(
    flow: &mut Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    marks: &Marks,
) {
    for (outline, drawn) in reconciliation.outlines().iter().zip(say.house.own_sketches()) {
        let title = say.outline_title(outline);
        flow.go_on("Side by side", &title, HEIGHT_PT + 80.0);
        let mut top = Stack::new(flow.width_pt());
        top.bold(9.5, &title);
        top.space(4.0);
        flow.pour(&top);
        both(flow, say, outline, drawn, marks);
        flow.pour(&compared(flow.width_pt(), say, outline));
    }
    for outline in reconciliation.maps() {
        let title = map::map_title(outline);
        flow.go_on("Side by side", &title, 100.0);
        let mut told = Stack::new(flow.width_pt());
        told.bold(9.5, &title);
        told.space(4.0);
        blocks::set(&mut told, &map::map_said(say.house, outline), blocks::USUAL);
        told.space(6.0);
        flow.pour(&told);
    }
}

/// Draws both at the largest scale that fits both.
fn both(
    flow: &mut Flow,
    say: &Sentences<'_>,
    outline: &OutlineReport,
    drawn: &ReferenceOutline,
    marks: &Marks,
) {
    let turned = Turned { front: say.house.particulars.front.unwrap_or(Direction::South) };
    let width_pt = (flow.width_pt() - BETWEEN_PT) / 2.0;
    let frame = |left: f64| Frame {
        left_top: Point::new(EDGE_PT + left, flow.y_pt()),
        width_pt,
        height_pt: HEIGHT_PT,
    };
    let (left, right) = (frame(0.0), frame(width_pt + BETWEEN_PT));
    let theirs = corners(drawn);
    let ours: Vec<OnSite> = drawn
        .of
        .iter()
        .flat_map(|&space| {
            let at = crate::pages::drawing::marks::place(say, space);
            let points = say.areas.spaces[space].outside().flattened();
            points.into_iter().map(move |(east, north, _)| (at.0 + east, at.1 + north))
        })
        .collect();
    let reaches =
        (Reach::of(theirs.iter().copied(), turned), Reach::of(ours.iter().copied(), turned));
    let fits = |scale: &&Scale| {
        plan::fits_at(&reaches.0, &left, **scale) && plan::fits_at(&reaches.1, &right, **scale)
    };
    let skip = SCALES.iter().position(|scale| fits(&scale)).unwrap_or(SCALES.len() - 1);
    let scale = SCALES[skip];
    let (inks_left, height_left) =
        theirs_drawn(say, outline, drawn, &theirs, &reaches.0, turned, &left, scale);
    let (inks_right, height_right) =
        ours_drawn(say, drawn, marks, &reaches.1, turned, &right, scale);
    flow.put(inks_left, Some(scale.pt_per_ft));
    flow.put(inks_right, Some(scale.pt_per_ft));
    flow.down(height_left.max(height_right) + 6.0);
    let area = match outline.area() {
        Some(area) => format!("{} sq ft", whole(area)),
        None => "no area, since its sides do not close".to_owned(),
    };
    let mut under = [Stack::new(width_pt), Stack::new(width_pt)];
    under[0].bold(8.5, &format!("On the {}'s sketch: {area}", whose(outline)));
    under[1].bold(8.5, &format!("As measured: {}", measured(say, drawn)));
    flow.beside(&under[0], &under[1], width_pt + BETWEEN_PT);
    let mut notes = Stack::new(flow.width_pt());
    notes.paragraph(7.0, &format!(
        "Both drawn at {}, printed at full size (100%). ● and bold: this wall differs by more than rounding.",
        plan::scale_words(scale, say.is_metric())
    ));
    notes.space(4.0);
    flow.pour(&notes);
}

/// The areas of the spaces that a sketch covers.
fn measured(say: &Sentences<'_>, drawn: &ReferenceOutline) -> String {
    let outlines = drawn.of.iter().map(|&space| &say.areas.spaces[space]);
    let (fine, feet) = outlines.fold(Default::default(), |(fine, feet), areas| {
        let (a, b): (crate::units::area::Area, crate::units::area::Area) = (fine, feet);
        (a + areas.tenth_foot().area(), b + areas.whole_foot().area())
    });
    format!(
        "{} sq ft, each wall to {}; {} sq ft, each to the whole foot",
        whole(fine),
        say.fine(),
        whole(feet)
    )
}

/// The numbers of its sides that differ from ours by more than rounding.
fn differing(say: &Sentences<'_>, outline: &OutlineReport) -> Vec<SideNumber> {
    let beyond = |side: &&crate::reconcile::MatchedSide| {
        say.settings.is_beyond_rounding(side.measured() - side.drawn())
    };
    outline.matched().iter().filter(beyond).map(crate::reconcile::MatchedSide::theirs).collect()
}

#[expect(clippy::too_many_arguments, reason = "all that a drawing is made from")]
fn theirs_drawn(
    say: &Sentences<'_>,
    outline: &OutlineReport,
    drawn: &ReferenceOutline,
    corners: &[OnSite],
    reach: &Reach,
    turned: Turned,
    frame: &Frame,
    scale: Scale,
) -> (Vec<Ink>, f64) {
    let (view, height) = plan::fitted_at(reach, turned, frame, scale, Fitting::default());
    let mut canvas = canvas(say, view, frame, height);
    let differing = differing(say, outline);
    match &drawn.outline {
        Some(closed) => {
            let walls = view.walls(closed, (0, 0));
            canvas.outline(&walls, 1.2, Some([6.0, 3.0]), Part::Dashed);
            let figure = view.flattened(closed, (0, 0));
            let area = outline.area().map(|area| format!("{} sq ft", whole(area)));
            named(&mut canvas, &figure, outline.name(), area);
            let dimensions = walls.iter().enumerate().filter_map(|(k, wall)| {
                let side = drawn.sides.get(k)?;
                let differs = differing.contains(&side.number);
                Some(Dimension {
                    wall: *wall,
                    or_else: None,
                    words: closed.vectors()[k].chord_length().spoken(),
                    hand: if differs { Typeface::Bold } else { Typeface::Plain },
                    mark: differs.then_some(Mark::Differs),
                })
            });
            canvas.dimensions(dimensions.collect());
        }
        None => {
            let spots: Vec<Point> = corners.iter().map(|&corner| view.spot(corner)).collect();
            let stroke = Stroke::along(&spots, 1.2).dashed([6.0, 3.0]);
            canvas
                .line(stroke.of_part(Part::Dashed), crate::pages::drawing::occupancy::Sort::Theirs);
        }
    }
    (canvas.finish(), height)
}

fn ours_drawn(
    say: &Sentences<'_>,
    drawn: &ReferenceOutline,
    marks: &Marks,
    reach: &Reach,
    turned: Turned,
    frame: &Frame,
    scale: Scale,
) -> (Vec<Ink>, f64) {
    let (view, height) = plan::fitted_at(reach, turned, frame, scale, Fitting::default());
    let mut canvas = canvas(say, view, frame, height);
    let mut dimensions = Vec::new();
    for &space in &drawn.of {
        let outline: &Outline = say.areas.spaces[space].outside();
        let at = crate::pages::drawing::marks::place(say, space);
        let walls = view.walls(outline, at);
        canvas.outline(&walls, 1.6, None, Part::Outline);
        let figure = view.flattened(outline, at);
        let area = say.areas.spaces[space].tenth_foot().area();
        let area = format!("{} sq ft", whole(area));
        named(&mut canvas, &figure, &say.house.spaces[space].name, Some(area));
        let traverse = &say.areas.outside.spaces[space].traverse;
        for (k, wall) in walls.iter().enumerate() {
            let Some(source) = traverse.sides[k].source else { continue };
            let differs = marks.recorded(space, source).is_some_and(|recorded| recorded.differs);
            dimensions.push(Dimension {
                wall: *wall,
                or_else: None,
                words: plan::side_words(say, space, source, outline.vectors()[k]),
                hand: if differs { Typeface::Bold } else { Typeface::Plain },
                mark: differs.then_some(Mark::Differs),
            });
        }
    }
    canvas.dimensions(dimensions);
    (canvas.finish(), height)
}

fn named(canvas: &mut Canvas, figure: &[Point], name: &str, area: Option<String>) {
    let name = crate::pages::fonts::shown(&capital(name));
    let block = |size: f64, wide: f64| {
        let name = crate::pages::fonts::shortened(Typeface::Bold, size, &name, wide);
        let mut lines = vec![(Typeface::Bold, size, name)];
        lines.extend(area.iter().map(|area| (Typeface::Plain, size - 1.0, area.clone())));
        Block { lines }
    };
    canvas.block(figure, &[], &[block(9.0, 150.0), block(7.5, 90.0), block(7.0, 56.0)]);
}

/// The canvas of one of the two drawings of an outline.
fn canvas(say: &Sentences<'_>, view: View, frame: &Frame, height_pt: f64) -> Canvas {
    let right_bottom =
        Point::new(frame.left_top.x_pt + frame.width_pt, frame.left_top.y_pt + height_pt);
    Canvas::new(view, frame.left_top, right_bottom)
        .within(plan::most_looked_at(2 * say.house.own_sketches().count()))
}

/// The corners of the sketch, relative to its first.
fn corners(drawn: &ReferenceOutline) -> Vec<OnSite> {
    let mut at = (0, 0);
    let mut corners = vec![at];
    for side in &drawn.traverse.sides {
        let vector = side.shape.vector();
        at = (at.0 + vector.east, at.1 + vector.north);
        corners.push(at);
    }
    corners
}

/// The table of differing walls, and further remarks.
fn compared(width_pt: f64, say: &Sentences<'_>, outline: &OutlineReport) -> Stack {
    let mut stack = Stack::new(width_pt);
    let (first, only) = say.outline_notes(outline);
    if let Some(note) = first {
        stack.paragraph(8.0, &format!("{}.", capital(note)));
    }
    let apart = say.walls_apart(outline);
    if !apart.is_empty() {
        let columns = [
            Column::words("walls that differ"),
            Column::figures("measured", 90.0),
            Column::figures(whose(outline), 90.0),
            Column::figures("difference", 90.0),
        ];
        let rows: Vec<Vec<String>> = apart
            .into_iter()
            .map(|wall| vec![wall.side, wall.measured, wall.drawn, wall.difference])
            .collect();
        stack.table(8.0, &columns, &rows);
    }
    for note in only {
        stack.paragraph(8.0, &format!("{}.", capital(&note)));
    }
    stack.space(6.0);
    stack
}
