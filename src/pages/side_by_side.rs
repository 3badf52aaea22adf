//! The record's own sketch, or a plan, beside the house as measured: at the same scale, with differing walls marked and
//! the area below each.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::areas::at_face::Walls;
use crate::geometry::compass::Direction;
use crate::geometry::outline::Outline;
use crate::house::{Face, LengthSource, ReferenceOutline, Run, Side, SideNumber};
use crate::pages::blocks;
use crate::pages::drawing::canvas::{Block, Canvas, Dimension, Mark, most_looked_at};
use crate::pages::drawing::fit::{self, Fitting, Frame, Reach};
use crate::pages::drawing::side_words::side_words;
use crate::pages::drawing::strip;
use crate::pages::drawing::view::{OnSite, Scale, Turned, View, scales, smallest};
use crate::pages::fonts::Typeface;
use crate::pages::layout::{Column, EDGE_PT, Flow, Stack};
use crate::pages::page::{Ink, Part, Point, Stroke};
use crate::reconcile::{Figure, OutlineReport, Reconciliation};
use crate::units::area::Area;
use crate::units::length::Length;
use crate::wording::map;
use crate::wording::outlines::whose;
use crate::wording::sentences::{Sentences, capital, whole};

/// The space between the two drawings, in points.
const BETWEEN_PT: f64 = 18.0;
/// The height of each drawing, in points.
const HEIGHT_PT: f64 = 225.0;

/// Fills the pages, if the file has an outline from a record, a plan or a map.
pub(crate) fn side_by_side(flow: &mut Flow, say: &Sentences<'_>, reconciliation: &Reconciliation) {
    for (outline, drawn) in reconciliation.outlines().iter().zip(say.house.own_sketches()) {
        let title = say.outline_title(outline);
        let needs = Pair::of(flow, say, reconciliation, drawn).needs_pt();
        flow.next_of("Side by side", &heard(say, outline, &title), needs);
        let mut top = Stack::new(flow.width_pt());
        top.title(9.5, &title);
        top.space(4.0);
        flow.pour(&top);
        both(flow, say, reconciliation, outline, drawn);
        flow.pour(&compared(flow.width_pt(), say, outline));
    }
    for outline in reconciliation.maps() {
        let title = map::map_title(outline);
        let said = map::map_said(say, outline);
        flow.next_of("The outline from a map", &format!("{title}."), 100.0);
        for block in &said {
            if let crate::wording::Block::Paragraph(text) | crate::wording::Block::Item(text) =
                block
            {
                flow.tell(text);
            }
        }
        let mut told = Stack::new(flow.width_pt());
        told.title(9.5, &title);
        told.space(4.0);
        blocks::set(&mut told, &said, blocks::USUAL);
        told.space(6.0);
        flow.pour(&told);
    }
}

/// What both drawings need: their corners, their extents, and the largest scale that fits both.
struct Pair {
    turned: Turned,
    theirs: Vec<OnSite>,
    at_face: AtFace,
    reaches: (Reach, Reach),
    scale: Scale,
    /// The width of each drawing, in points.
    width_pt: f64,
}

impl Pair {
    fn of(
        flow: &Flow,
        say: &Sentences<'_>,
        reconciliation: &Reconciliation,
        drawn: &ReferenceOutline,
    ) -> Pair {
        let turned = Turned { front: say.house.particulars.front.unwrap_or(Direction::South) };
        let width_pt = (flow.width_pt() - BETWEEN_PT) / 2.0;
        let in_meters = say.draws_in_meters();
        let frame = Frame::new(Point::default(), width_pt, HEIGHT_PT).in_meters(in_meters);
        let theirs = corners(drawn);
        let at_face = AtFace::of(say, reconciliation, drawn);
        let corners_of = |&space: &usize| {
            let (outline, at) = at_face.placed(say, space);
            let points = outline.flattened().into_iter();
            points.map(|(east, north, _)| (at.0 + east, at.1 + north)).collect::<Vec<OnSite>>()
        };
        let ours: Vec<OnSite> = drawn.of.iter().flat_map(corners_of).collect();
        let reaches =
            (Reach::of(theirs.iter().copied(), turned), Reach::of(ours.iter().copied(), turned));
        let fits = |scale: &&Scale| {
            [reaches.0, reaches.1].iter().all(|reach| fit::fits_at(reach, &frame, **scale))
        };
        let all = scales(in_meters).iter();
        let scale = all.clone().find(fits).copied().unwrap_or_else(|| smallest(in_meters));
        Pair { turned, theirs, at_face, reaches, scale, width_pt }
    }

    /// The height of the title, the drawings and the words under them, in points.
    fn needs_pt(&self) -> f64 {
        const WORDS_PT: f64 = 74.0;
        let frame = Frame::new(Point::default(), self.width_pt, HEIGHT_PT);
        let height = |reach: &Reach| {
            fit::fitted_at(reach, self.turned, &frame, self.scale, Fitting::default()).1
        };
        height(&self.reaches.0).max(height(&self.reaches.1)) + WORDS_PT
    }
}

/// The screen reader's text for an outline beside ours: its area, and each wall that differs.
fn heard(say: &Sentences<'_>, outline: &OutlineReport, title: &str) -> String {
    let whose = whose(outline);
    let walls = say.walls_apart(outline).into_iter().map(|wall| {
        format!("{}: {} measured, {} on the {whose}.", wall.side, wall.measured, wall.drawn)
    });
    let (first, only) = say.outline_notes(outline);
    let notes = first.map(str::to_owned).into_iter().chain(only);
    let notes = notes.map(|note| format!("{}.", capital(&note)));
    let all = std::iter::once(format!("{title}.")).chain(walls.map(|wall| capital(&wall)));
    all.chain(notes).collect::<Vec<String>>().join(" ")
}

/// Draws both outlines at the largest scale that fits both.
fn both(
    flow: &mut Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    outline: &OutlineReport,
    drawn: &ReferenceOutline,
) {
    let Pair { turned, theirs, at_face, reaches, scale, width_pt } =
        Pair::of(flow, say, reconciliation, drawn);
    let frame =
        |left: f64| Frame::new(Point::new(EDGE_PT + left, flow.y_pt()), width_pt, HEIGHT_PT);
    let (left, right) = (frame(0.0), frame(width_pt + BETWEEN_PT));
    let differing = differing(say, outline);
    let (inks_left, height_left) =
        theirs_drawn(say, outline, drawn, &theirs, &reaches.0, turned, &left, scale);
    let (inks_right, height_right) =
        ours_drawn(say, drawn, &at_face, &reaches.1, turned, &right, scale, &differing);
    let inks = inks_left.into_iter().chain(inks_right).collect();
    flow.put_drawing(inks, scale.pt_per_ft, &heard(say, outline, &say.outline_title(outline)));
    flow.down(height_left.max(height_right) + 6.0);
    let area = match outline.area() {
        Some(area) => format!("{} sq ft", whole(area)),
        None => "no area, since its sides do not close".to_owned(),
    };
    let mut under = [Stack::new(width_pt), Stack::new(width_pt)];
    under[0].bold(8.5, &format!("On the {}'s sketch: {area}", whose(outline)));
    under[1].bold(8.5, &measured(say, &at_face, drawn));
    flow.beside(&under[0], &under[1], width_pt + BETWEEN_PT);
    let mut notes = Stack::new(flow.width_pt());
    let key = match differing.theirs.is_empty() {
        true => "",
        false => " ● and bold: this wall differs by more than rounding explains.",
    };
    notes.paragraph(
        7.0,
        &format!(
            "Both drawn at {}, printed at full size (100%).{key}",
            strip::scale_words(scale, say.is_metric())
        ),
    );
    notes.space(4.0);
    flow.pour(&notes);
}

/// Our walls at the face that a sketch is measured to, so that both are drawn and dimensioned alike.
struct AtFace {
    face: Face,
    /// The walls at that face; `None` at the outside face, or if the walls cannot be moved.
    walls: Option<Walls>,
}

impl AtFace {
    fn of(
        say: &Sentences<'_>,
        reconciliation: &Reconciliation,
        drawn: &ReferenceOutline,
    ) -> AtFace {
        let figure = reconciliation.figures().iter().find(|figure| figure.is_of(drawn.drawn));
        let face = figure.map(Figure::face).unwrap_or_default();
        let walls = Walls::of(say.house, face).ok().filter(|_| face != Face::Outside);
        AtFace { face: if walls.is_some() { face } else { Face::Outside }, walls }
    }

    fn walls<'a>(&'a self, say: &'a Sentences<'_>) -> &'a Walls {
        self.walls.as_ref().unwrap_or(&say.areas.outside)
    }

    /// The outline of a space at the face, and the place of its first corner on the level.
    fn placed<'a>(&'a self, say: &'a Sentences<'_>, space: usize) -> (&'a Outline, OnSite) {
        let (at, here) = (say.house.spaces[space].at, &self.walls(say).spaces[space]);
        (&here.outline, (at.0 + here.start.0, at.1 + here.start.1))
    }

    /// The areas of these spaces, with each wall rounded by the finer rule and to the whole foot.
    fn areas(&self, say: &Sentences<'_>, spaces: &[usize]) -> [Area; 2] {
        [say.settings.tenth_foot(), say.settings.whole_foot()].map(|rule| {
            let ruled = self.walls(say).ruled(rule, say.settings.reading);
            spaces.iter().map(|&space| ruled.areas[space]).sum()
        })
    }
}

/// The areas of the spaces that a sketch covers, at the face it is measured to.
fn measured(say: &Sentences<'_>, at_face: &AtFace, drawn: &ReferenceOutline) -> String {
    let [fine, feet] = at_face.areas(say, &drawn.of);
    let face = match at_face.face {
        Face::Outside => "",
        Face::Frame => ", at the frame",
        Face::Inside => ", inside",
    };
    let obtained = match say.obtained() {
        LengthSource::Measured | LengthSource::Closing => "As measured",
        _ => "In this file",
    };
    format!(
        "{obtained}{face}: {} sq ft, each wall to {}; {} sq ft, each to the whole foot",
        whole(fine),
        say.fine(),
        whole(feet)
    )
}

/// The numbers of the sides that differ by more than rounding, on the sketch and in this file.
struct Differing {
    theirs: Vec<SideNumber>,
    ours: Vec<SideNumber>,
    /// The space that the sketch is compared with.
    space: Option<usize>,
}

fn differing(say: &Sentences<'_>, outline: &OutlineReport) -> Differing {
    let beyond = |side: &&crate::reconcile::MatchedSide| {
        say.settings.is_beyond_rounding(side.measured() - side.drawn())
    };
    let walls = || outline.matched().iter().filter(beyond);
    Differing {
        theirs: walls().map(crate::reconcile::MatchedSide::theirs).collect(),
        ours: walls().map(crate::reconcile::MatchedSide::ours).collect(),
        space: outline.space.as_ref().map(|(space, _)| *space),
    }
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
    let (view, height) = fit::fitted_at(reach, turned, frame, scale, Fitting::default());
    let mut canvas = canvas(say, view, frame, height);
    let differing = differing(say, outline).theirs;
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
                    words: as_typed(side, closed.vectors()[k].chord_length()),
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

/// The length of a side as typed, or as computed if none was typed.
fn as_typed(side: &Side, length: Length) -> String {
    match &side.run {
        Run::Straight(_, written) | Run::Bearing(_, written) => written.grouped(),
        _ => length.spoken(),
    }
}

#[expect(clippy::too_many_arguments, reason = "all that a drawing is made from")]
fn ours_drawn(
    say: &Sentences<'_>,
    drawn: &ReferenceOutline,
    at_face: &AtFace,
    reach: &Reach,
    turned: Turned,
    frame: &Frame,
    scale: Scale,
    differing: &Differing,
) -> (Vec<Ink>, f64) {
    let (view, height) = fit::fitted_at(reach, turned, frame, scale, Fitting::default());
    let mut canvas = canvas(say, view, frame, height);
    let mut dimensions = Vec::new();
    for &space in &drawn.of {
        let (outline, at) = at_face.placed(say, space);
        let is_compared = differing.space == Some(space);
        let walls = view.walls(outline, at);
        canvas.outline(&walls, 1.6, None, Part::Outline);
        let figure = view.flattened(outline, at);
        let [area, _] = at_face.areas(say, &[space]);
        let area = format!("{} sq ft", whole(area));
        named(&mut canvas, &figure, &say.house.spaces[space].name, Some(area));
        let traverse = &at_face.walls(say).spaces[space].traverse;
        for (k, wall) in walls.iter().enumerate() {
            let Some(source) = traverse.sides[k].source else { continue };
            let number = say.house.spaces[space].sides[source].number();
            let differs = is_compared && differing.ours.contains(&number);
            dimensions.push(Dimension {
                wall: *wall,
                or_else: None,
                words: side_words(say, space, source, outline.vectors()[k]),
                hand: if differs { Typeface::Bold } else { Typeface::Plain },
                mark: differs.then_some(Mark::Differs),
            });
        }
    }
    canvas.dimensions(dimensions);
    (canvas.finish(), height)
}

fn named(canvas: &mut Canvas, figure: &[Point], name: &str, area: Option<String>) {
    const MOST_LINES: usize = 3;
    let name = crate::pages::fonts::shown(&capital(name));
    let block = |size: f64, wide: f64| {
        let mut words = crate::pages::fonts::wrapped(Typeface::Bold, size, &name, wide);
        if words.len() > MOST_LINES {
            words.truncate(MOST_LINES);
            if let Some(last) = words.last_mut() {
                last.push('…');
            }
        }
        let mut lines: Vec<_> =
            words.into_iter().map(|words| (Typeface::Bold, size, words)).collect();
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
        .within(most_looked_at(2 * say.house.own_sketches().count()))
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

/// The table of differing walls, and further notes.
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
