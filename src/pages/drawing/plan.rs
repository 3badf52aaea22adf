//! The drawing of a level: walls, veneer, hatching, names, dimensions and marks.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "places on a page are in points"
)]

use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Vector;
use crate::geometry::traverse::Misclosure;
use crate::house::LengthSource;
use crate::house::{Face, Kind, ReferenceSource};
use crate::house::{Run as SideRun, Thickness};
use crate::pages::drawing::canvas::{Block, Canvas, Dimension, Mark};
use crate::pages::drawing::marks;
use crate::pages::drawing::marks::Marks;
use crate::pages::drawing::occupancy::Sort;
use crate::pages::drawing::view::{
    OnSite, Scale, Turned, View, WallOnPage, hatching, scales, smallest,
};
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::page::{Anchor, Fill, Ink, Part, Point, Run, Stroke, Text};
use crate::units::length::{Length, WrittenLength};
use crate::wording::certainty::shared_walls;
use crate::wording::sentences::{Sentences, rounded_float, whole};
use crate::wording::size::square_meters;

/// The rectangle a drawing may use.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Frame {
    pub(crate) left_top: Point,
    pub(crate) width_pt: f64,
    pub(crate) height_pt: f64,
    /// The largest scale allowed, in points per foot; infinite if the largest one that fits is wanted.
    pub(crate) most_pt_per_ft: f64,
    /// Whether the scale is one of a metric ruler.
    pub(crate) in_meters: bool,
}

impl Frame {
    pub(crate) const fn new(left_top: Point, width_pt: f64, height_pt: f64) -> Frame {
        let most_pt_per_ft = f64::INFINITY;
        Frame { left_top, width_pt, height_pt, most_pt_per_ft, in_meters: false }
    }

    /// The same rectangle for a drawing at a scale of a metric ruler, or of an architect's.
    pub(crate) const fn in_meters(self, in_meters: bool) -> Frame {
        Frame { in_meters, ..self }
    }
}

/// A finished drawing.
pub(crate) struct Drawing {
    pub(crate) inks: Vec<Ink>,
    pub(crate) scale: Scale,
    /// What the marks mean, and which labels did not fit.
    pub(crate) notes: Vec<String>,
    /// The height from the top of the frame to the lowest ink.
    pub(crate) height_pt: f64,
    /// How many labels did not fit.
    pub(crate) left_out: usize,
    /// The spaces that are drawn in insets.
    pub(crate) apart: Vec<usize>,
    /// The scales of the insets, in points per foot.
    pub(crate) inset_scales: Vec<f64>,
    /// Whether the work allowed for placing labels has been used up.
    pub(crate) is_spent: bool,
}

/// How many lines and labels may be compared to place the labels of a drawing, shared among drawings of one kind: the
/// levels of a house, its lots, its outlines beside the record's. A house with 30 walls needs about a fiftieth of it.
const MOST_LOOKED_AT: usize = 5_000_000;

/// The work allowed for each drawing if there are this many.
pub(crate) fn most_looked_at(drawings: usize) -> usize {
    MOST_LOOKED_AT.checked_div(drawings).unwrap_or(MOST_LOOKED_AT)
}

/// The margin for labels around the outline, in points.
const MARGIN_PT: f64 = 27.0;
/// How much smaller the margin above and below may be if that allows a larger scale.
const TIGHTER_PT: f64 = 7.0;
/// The height below for the street, the scale bar and the scale.
const STRIP_PT: f64 = 32.0;

/// The range of a drawing in nanometers, to the right and up.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Reach {
    low: OnSite,
    high: OnSite,
}

impl Reach {
    pub(crate) fn of(points: impl IntoIterator<Item = OnSite>, turned: Turned) -> Reach {
        let empty = Reach { low: (i64::MAX, i64::MAX), high: (i64::MIN, i64::MIN) };
        let reach =
            points.into_iter().map(|point| turned.of(point)).fold(empty, |reach, point| Reach {
                low: (reach.low.0.min(point.0), reach.low.1.min(point.1)),
                high: (reach.high.0.max(point.0), reach.high.1.max(point.1)),
            });
        if reach.low.0 > reach.high.0 { Reach { low: (0, 0), high: (0, 0) } } else { reach }
    }

    pub(crate) fn size_pt(&self, scale: Scale) -> (f64, f64) {
        let points =
            |low: i64, high: i64| (high - low) as f64 / Length::FOOT.nm() as f64 * scale.pt_per_ft;
        (points(self.low.0, self.high.0), points(self.low.1, self.high.1))
    }
}

/// The view of a range in a frame, at a scale that fits, skipping the `fitting.skip` largest; and its height.
pub(crate) fn fitted(
    reach: &Reach,
    turned: Turned,
    frame: &Frame,
    margin_pt: f64,
    fitting: Fitting,
) -> (View, f64) {
    let fits = |scale: &&Scale| fits(reach, frame, **scale, margin_pt);
    let last = smallest(frame.in_meters);
    let all = scales(frame.in_meters).iter();
    let scale = all.filter(fits).nth(fitting.skip).copied().unwrap_or(last);
    placed(reach, turned, frame, scale, margin_pt, fitting)
}

fn fits(reach: &Reach, frame: &Frame, scale: Scale, margin_pt: f64) -> bool {
    let (width, height) = reach.size_pt(scale);
    scale.pt_per_ft <= frame.most_pt_per_ft
        && width + 2.0 * margin_pt <= frame.width_pt
        && height + 2.0 * (margin_pt - TIGHTER_PT) + STRIP_PT <= frame.height_pt
}

/// Whether a range with its labels fits a frame at a scale.
pub(crate) fn fits_at(reach: &Reach, frame: &Frame, scale: Scale) -> bool {
    fits(reach, frame, scale, MARGIN_PT)
}

/// The view of a range in a frame at a given scale, and its height.
pub(crate) fn fitted_at(
    reach: &Reach,
    turned: Turned,
    frame: &Frame,
    scale: Scale,
    fitting: Fitting,
) -> (View, f64) {
    placed(reach, turned, frame, scale, MARGIN_PT, fitting)
}

fn placed(
    reach: &Reach,
    turned: Turned,
    frame: &Frame,
    scale: Scale,
    margin_pt: f64,
    fitting: Fitting,
) -> (View, f64) {
    let (width, height) = reach.size_pt(scale);
    // More space above and below if available, but no more than labels can use.
    let spare = (frame.height_pt - STRIP_PT - height) / 2.0;
    let above = spare.clamp(margin_pt.min(spare), fitting.airy * margin_pt);
    let left = frame.left_top.x_pt + (frame.width_pt - width) / 2.0;
    let mut view = View { turned, scale, origin: Point::default() };
    let (low_right, high_up) = (view.points(reach.low.0), view.points(reach.high.1));
    view.origin = Point::new(left - low_right, frame.left_top.y_pt + above + high_up);
    (view, height + 2.0 * above)
}

/// One space as it is drawn.
struct Shape {
    space: usize,
    walls: Vec<WallOnPage>,
    figure: Vec<Point>,
}

/// Some of the spaces of a level.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Group<'a> {
    pub(crate) level: usize,
    pub(crate) spaces: &'a [usize],
    /// Whether it is far from the others and drawn as an inset: without the street, reference outlines and true
    /// north.
    pub(crate) is_inset: bool,
}

/// The largest standard scale at which a group fits a frame.
pub(crate) fn largest_scale(
    say: &Sentences<'_>,
    marks: &Marks,
    group: Group<'_>,
    frame: &Frame,
) -> Scale {
    let turned = Turned { front: say.house.particulars.front.unwrap_or(Direction::South) };
    let reach = Reach::of(points(say, marks, group), turned);
    let fits = |scale: &&Scale| fits(&reach, frame, **scale, MARGIN_PT);
    let all = scales(frame.in_meters).iter();
    all.clone().find(fits).copied().unwrap_or_else(|| smallest(frame.in_meters))
}

/// Draws a group at the largest standard scale at which all labels fit, or as many as possible.
pub(crate) fn group(say: &Sentences<'_>, marks: &Marks, group: Group<'_>, frame: Frame) -> Drawing {
    // First with more space around the outline, if the frame allows; then at a smaller scale.
    let ways = [(0, 1.5, true), (0, 5.0, true), (0, 5.0, false), (1, 5.0, true)];
    // All levels share a scale, even if that leaves a label or two below the drawing.
    let is_given = frame.most_pt_per_ft.is_finite();
    let mut best: Option<Drawing> = None;
    for (skip, airy, names_last) in ways {
        let is_few = best.as_ref().is_some_and(|best| best.left_out <= FEW_LEFT_OUT);
        if skip > 0 && is_given && is_few {
            break;
        }
        let drawing = drawn(say, marks, group, frame, Fitting { skip, airy, names_last });
        if best.as_ref().is_none_or(|best| drawing.left_out < best.left_out) {
            best = Some(drawing);
        }
        // Once the work is used up, other attempts would place no more labels.
        if best.as_ref().is_some_and(|best| best.left_out == 0 || best.is_spent) {
            break;
        }
    }
    best.unwrap_or_else(|| drawn(say, marks, group, frame, Fitting::default()))
}

/// The most labels that may be listed below a drawing for it to keep the scale of the others.
const FEW_LEFT_OUT: usize = 2;

/// How a drawing is fitted into its frame.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Fitting {
    /// How many of the largest scales to skip.
    pub(crate) skip: usize,
    /// The most space above and below the drawing, as a multiple of the margin.
    pub(crate) airy: f64,
    /// Names that do not fit inside are placed after the dimensions.
    pub(crate) names_last: bool,
}

impl Default for Fitting {
    fn default() -> Fitting {
        Fitting { skip: 0, airy: 1.5, names_last: true }
    }
}

fn drawn(
    say: &Sentences<'_>,
    marks: &Marks,
    group: Group<'_>,
    frame: Frame,
    fitting: Fitting,
) -> Drawing {
    let house = say.house;
    let heads = &say.house.particulars;
    let turned = Turned { front: heads.front.unwrap_or(Direction::South) };
    let reach = Reach::of(points(say, marks, group), turned);
    let (view, height) = fitted(&reach, turned, &frame, MARGIN_PT, fitting);
    let right_bottom =
        Point::new(frame.left_top.x_pt + frame.width_pt, frame.left_top.y_pt + height);
    let mut plan = Plan {
        say,
        marks,
        canvas: Canvas::new(view, frame.left_top, right_bottom)
            .within(most_looked_at(house.levels.len())),
        shapes: shapes(say, &view, group.spaces),
        notes: Vec::new(),
        left_out: Vec::new(),
    };
    let corner = Point::new(right_bottom.x_pt, frame.left_top.y_pt);
    // Directions have words in the text, so a drawing with another side up says where north is.
    match (heads.true_north, heads.front) {
        _ if group.is_inset => {}
        (Some(bearing), _) => {
            north(&mut plan.canvas, bearing.unit_vector(), corner, "true north");
        }
        (None, Some(Direction::North | Direction::East | Direction::West)) => {
            north(&mut plan.canvas, (0.0, 1.0), corner, "north");
        }
        _ => {}
    }
    plan.spaces();
    if !group.is_inset {
        plan.theirs(group.level);
        plan.roofs(group.level);
    }
    plan.numbers(Numbered::Named);
    let beside = plan.names();
    if fitting.names_last {
        plan.walls();
        plan.names_beside(&beside);
    } else {
        plan.names_beside(&beside);
        plan.walls();
    }
    plan.numbers(Numbered::Others);
    plan.closing_notes();
    let left_out = plan.left_out.len();
    let is_spent = plan.canvas.is_spent();
    let notes = plan.legend();
    let mut inks = plan.canvas.finish();
    if !group.is_inset {
        strip(&mut inks, say, &view, &frame, height);
    }
    Drawing {
        inks,
        scale: view.scale,
        notes,
        height_pt: height + STRIP_PT,
        left_out,
        is_spent,
        apart: Vec::new(),
        inset_scales: Vec::new(),
    }
}

/// Every corner of what is drawn of a level, including points along curves.
fn points(say: &Sentences<'_>, marks: &Marks, group: Group<'_>) -> Vec<OnSite> {
    let mut all: Vec<OnSite> =
        group.spaces.iter().flat_map(|&space| corners_of(say, space)).collect();
    let theirs = marks.theirs.iter().filter(|(on, _)| *on == group.level && !group.is_inset);
    for (_, theirs) in theirs {
        all.extend(theirs.corners.iter().map(|p| (theirs.at.0 + p.0, theirs.at.1 + p.1)));
    }
    let roofs = marks.roofs.iter().filter(|(on, ..)| *on == group.level && !group.is_inset);
    all.extend(roofs.flat_map(|(_, corners, _)| corners));
    all
}

/// The outside corners of a space, in their positions on the level.
pub(crate) fn corners_of(say: &Sentences<'_>, space: usize) -> Vec<OnSite> {
    let at = marks::place(say, space);
    let flat = say.areas.spaces[space].outside().flattened();
    flat.iter().map(|&(east, north, _)| (at.0 + east, at.1 + north)).collect()
}

fn shapes(say: &Sentences<'_>, view: &View, spaces: &[usize]) -> Vec<Shape> {
    let shape = |&space: &usize| {
        let (outline, at) = (say.areas.spaces[space].outside(), marks::place(say, space));
        Shape { space, walls: view.walls(outline, at), figure: view.flattened(outline, at) }
    };
    spaces.iter().map(shape).collect()
}

struct Plan<'a> {
    say: &'a Sentences<'a>,
    marks: &'a Marks,
    canvas: Canvas,
    shapes: Vec<Shape>,
    notes: Vec<String>,
    left_out: Vec<String>,
}

impl Plan<'_> {
    fn space(&self, shape: &Shape) -> &crate::house::Space {
        &self.say.house.spaces[shape.space]
    }

    /// Draws outlines, hatching and veneer; spaces inside others are drawn over them.
    fn spaces(&mut self) {
        let shapes = std::mem::take(&mut self.shapes);
        for shape in &shapes {
            self.hatching(shape, &shapes);
        }
        for shape in &shapes {
            let (width, dashes) = match self.space(shape).kind {
                Kind::Open => (0.7, Some([4.0, 2.5])),
                Kind::Stair | Kind::Low => (0.6, None),
                _ if self.space(shape).counted => (1.7, None),
                kind if kind.has_walls() => (1.2, None),
                _ => (0.8, None),
            };
            self.canvas.outline(&shape.walls, width, dashes, Part::Outline);
        }
        for shape in &shapes {
            self.veneer(shape, &shapes);
        }
        self.shapes = shapes;
    }

    fn hatching(&mut self, shape: &Shape, shapes: &[Shape]) {
        let house = self.say.house;
        let here = &house.spaces[shape.space];
        let open_to = match here.kind {
            Kind::Open => Some("below"),
            Kind::Court => Some("the sky"),
            _ => None,
        };
        if let Some(open_to) = open_to {
            let strokes = diagonals(&shape.figure);
            self.canvas.hatch(shape.figure.clone(), strokes);
            return self.note(&format!("dashed diagonals: open to {open_to}"));
        }
        let is_below = house.levels[here.level].below_grade;
        if here.kind == Kind::Stair || here.counted && !is_below {
            return;
        }
        if is_below {
            self.note("below grade: not in the total above grade");
        }
        let inside =
            shapes.iter().filter(|other| house.spaces[other.space].parent == Some(shape.space));
        let mut figures: Vec<&[Point]> = vec![&shape.figure];
        figures.extend(inside.map(|other| other.figure.as_slice()));
        let apart = if here.kind.has_walls() { 5.0 } else { 8.0 };
        let lines = hatching(&figures, true, apart);
        let mut runs = Vec::new();
        for (from, to) in lines {
            runs.extend([Run::Move(from), Run::Line(to)]);
        }
        self.canvas.hatch(shape.figure.clone(), vec![Stroke::of(runs, 0.5)]);
        self.note("hatched: not counted here");
    }

    /// Draws a thin band inside walls whose veneer is given.
    fn veneer(&mut self, shape: &Shape, shapes: &[Shape]) {
        let house = self.say.house;
        let here = &house.spaces[shape.space];
        if !here.kind.has_walls() || here.parent.is_some() {
            return;
        }
        let traverse = &self.say.areas.outside.spaces[shape.space].traverse;
        let thickness = |k: usize| -> Length {
            let side = traverse.sides[k].source.map(|source| &here.sides[source]);
            let Some(side) = side.filter(|side| !side.words.common) else { return Length::ZERO };
            match side.words.veneer.or(here.veneer).or(house.veneer) {
                Some(Thickness::Of(written)) => WrittenLength::length(written),
                _ => Length::ZERO,
            }
        };
        let others: Vec<&WallOnPage> = shapes
            .iter()
            .filter(|other| {
                other.space != shape.space && house.spaces[other.space].parent.is_none()
            })
            .flat_map(|other| &other.walls)
            .collect();
        let n = shape.walls.len();
        for (k, wall) in shape.walls.iter().enumerate() {
            let deep = self.canvas.view.points(thickness(k).nm());
            if deep < 1.1 || wall.is_curved() || others.iter().any(|other| shares(wall, other)) {
                continue;
            }
            let inward = Point::default().plus(wall.out, -1.0);
            let along = wall.from.to(wall.to).unit();
            let cut = |other: usize| {
                let turn = along.dot(shape.walls[other].out);
                let band = self.canvas.view.points(thickness(other).nm());
                // Next to a wall at a right angle, the band stops at that wall's band.
                if turn.abs() > 0.9 && !shape.walls[other].is_curved() { band } else { 0.0 }
            };
            let (before, after) = (cut((k + n - 1) % n), cut((k + 1) % n));
            let sign = |other: usize| along.dot(shape.walls[other].out).signum();
            let from = wall.from.plus(along, -before * sign((k + n - 1) % n)).plus(inward, deep);
            let to = wall.to.plus(along, -after * sign((k + 1) % n)).plus(inward, deep);
            self.canvas.line(Stroke::line(from, to, 0.6), Sort::Witness);
            self.note("thin band along a wall: its outer layer (veneer)");
        }
    }

    /// Draws the outlines of the record and plan, dashed, over ours.
    fn theirs(&mut self, level: usize) {
        let marks = self.marks;
        for (_, theirs) in marks.theirs.iter().filter(|(on, _)| *on == level) {
            let view = self.canvas.view;
            match &theirs.outline {
                Some(outline) => {
                    let walls = view.walls(outline, theirs.at);
                    self.canvas.outline(&walls, 1.0, Some([6.0, 3.0]), Part::Dashed);
                }
                None => {
                    let spot = |p: &OnSite| view.spot((theirs.at.0 + p.0, theirs.at.1 + p.1));
                    let spots: Vec<Point> = theirs.corners.iter().map(spot).collect();
                    let stroke = Stroke::along(&spots, 1.0).dashed([6.0, 3.0]);
                    self.canvas.line(stroke.of_part(Part::Dashed), Sort::Theirs);
                }
            }
            self.note(&theirs.note());
        }
    }

    /// Draws the roofs of maps, in short dashes over the walls.
    fn roofs(&mut self, level: usize) {
        let marks = self.marks;
        for (_, corners, note) in marks.roofs.iter().filter(|(on, ..)| *on == level) {
            let around = corners.iter().chain(corners.first());
            let spots: Vec<Point> = around.map(|&corner| self.canvas.view.spot(corner)).collect();
            let stroke = Stroke::along(&spots, 0.8).dashed([2.0, 2.0]);
            self.canvas.line(stroke.of_part(Part::Dashed), Sort::Theirs);
            self.note(note);
        }
    }

    /// Places the name and areas of every space inside it; returns the shapes that are too small for that.
    fn names(&mut self) -> Vec<usize> {
        let mut beside = Vec::new();
        let shapes = std::mem::take(&mut self.shapes);
        for (i, shape) in shapes.iter().enumerate() {
            let house = self.say.house;
            let holes: Vec<Vec<Point>> = shapes
                .iter()
                .filter(|other| house.spaces[other.space].parent == Some(shape.space))
                .map(|other| other.figure.clone())
                .collect();
            let choices = self.name_choices(shape);
            match self.canvas.block(&shape.figure, &holes, &choices) {
                Some(choice) if choice < WITH_FEET => {}
                Some(_) => self.feet_in_the_key(shape),
                None => {
                    beside.push(i);
                    self.feet_in_the_key(shape);
                }
            }
        }
        self.shapes = shapes;
        beside
    }

    /// Places the names of these shapes beside them.
    fn names_beside(&mut self, numbers: &[usize]) {
        let shapes = std::mem::take(&mut self.shapes);
        for &i in numbers {
            self.name_outside(&shapes[i]);
        }
        self.shapes = shapes;
    }

    fn name(&mut self, shape: &Shape) -> String {
        let name = fonts::shown(&self.space(shape).name);
        if self.marks.counted.contains(&shape.space) {
            self.note(&format!("▲: counted in the {}", self.marks.whose));
            format!("▲ {name}")
        } else if self.marks.would_count.contains(&shape.space) {
            let how = match self.say.house.is_deducted(shape.space) {
                true => "not deducted",
                false => "counted",
            };
            self.note(&format!("△: could account for the {} if {how}", self.marks.whose));
            format!("△ {name}")
        } else if self.marks.near.contains(&shape.space) {
            let place = if self.marks.is_off_page { "on page 1" } else { "below" };
            self.note(&format!("△: named {place} as a possible part of what is left"));
            format!("△ {name}")
        } else {
            name
        }
    }

    /// The area of a space with each wall to the foot, or to the half foot where that is the rule of the figure:
    /// `to the foot: 1,760 sq ft`.
    fn feet(&self, shape: &Shape) -> String {
        match &self.marks.half_feet {
            Some(areas) => format!("to the half foot: {} sq ft", whole(areas[shape.space])),
            None => {
                let areas = &self.say.areas.spaces[shape.space];
                format!("to the foot: {} sq ft", whole(areas.net_whole_foot))
            }
        }
    }

    /// Says below the drawing what a space with no room for it has to the foot, if a sum has it: where it is counted, or
    /// named as a possible part of the difference.
    fn feet_in_the_key(&mut self, shape: &Shape) {
        let marks = self.marks;
        let is_summed = crate::areas::is_in_total(self.say.house, shape.space, false)
            || [&marks.counted, &marks.would_count, &marks.near]
                .iter()
                .any(|spaces| spaces.contains(&shape.space));
        if is_summed && !marks.no_feet && !marks.whose.is_empty() {
            let name = fonts::shown(&self.space(shape).name);
            self.note(&format!("{name}, {}", self.feet(shape)));
        }
    }

    fn name_choices(&mut self, shape: &Shape) -> Vec<Block> {
        let areas = &self.say.areas.spaces[shape.space];
        let net =
            if self.say.house.deducted_from(shape.space).next().is_some() { " net" } else { "" };
        let sq_ft = whole(areas.net_tenth_foot);
        let feet = self.feet(shape);
        let (fine, feet) = match self.say.is_metric() {
            true => (
                format!("{}{net}", square_meters(areas.net_tenth_foot)),
                match self.marks.no_feet {
                    true => format!("{sq_ft} sq ft"),
                    false => format!("{sq_ft} sq ft; {feet}"),
                },
            ),
            false => (format!("{sq_ft} sq ft{net}"), feet),
        };
        let kind = self.say.kind_word(shape.space);
        let name = self.name(shape);
        let block = |sizes: [f64; 2], wide: f64, lines: usize| {
            let bold = fonts::wrapped(Typeface::Bold, sizes[0], &name, wide);
            let most = bold.len().min(3);
            let mut all: Vec<(Typeface, f64, String)> = bold[..most]
                .iter()
                .enumerate()
                .map(|(i, line)| {
                    let cut = i + 1 == most && bold.len() > most;
                    (Typeface::Bold, sizes[0], if cut { format!("{line}…") } else { line.clone() })
                })
                .collect();
            all.push((Typeface::Plain, sizes[1], fine.clone()));
            if lines > 1 {
                all.push((Typeface::Plain, sizes[1], feet.clone()));
            }
            if lines > 2 && !kind.is_empty() {
                all.push((Typeface::Plain, sizes[1], kind.clone()));
            }
            Block { lines: all }
        };
        // The first WITH_FEET of them have the area to the foot.
        vec![
            block([9.0, 8.0], 150.0, 3),
            block([8.0, 7.0], 110.0, 3),
            block([7.5, 6.5], 80.0, 2),
            block([7.0, 6.3], 70.0, 1),
            block([6.3, 6.3], 52.0, 1),
        ]
    }

    /// Places the name of a space beside it, if the space is too small.
    fn name_outside(&mut self, shape: &Shape) {
        let areas = &self.say.areas.spaces[shape.space];
        let name = fonts::shortened(Typeface::Plain, 6.5, &self.name(shape), 90.0);
        let words = format!("{name}: {}", self.say.size(areas.net_tenth_foot));
        let mut walls = shape.walls.clone();
        walls.sort_by(|a, b| b.length_pt().total_cmp(&a.length_pt()));
        let dimension = |wall: &WallOnPage| Dimension {
            wall: *wall,
            or_else: None,
            words: words.clone(),
            hand: Typeface::Plain,
            mark: None,
        };
        let placed = walls.iter().any(|wall| self.canvas.beside(&dimension(wall)));
        if !placed {
            self.left_out.push(self.name_left_out(shape, &words));
        }
    }

    /// What is said below the drawing of a name that found no room: `the name in the box of 10' 9" by 3' 7", Stairs: 39 sq
    /// ft`, since the box itself is drawn.
    fn name_left_out(&self, shape: &Shape, words: &str) -> String {
        let outline = self.say.areas.spaces[shape.space].outside();
        let is_box = outline
            .vectors()
            .iter()
            .all(|wall| wall.rise == 0 && (wall.east == 0 || wall.north == 0));
        match outline.vectors() {
            [one, other, _, _] if is_box => {
                let [one, other] = [one, other].map(|wall| self.say.length(wall.chord_length()));
                format!("the name in the box of {one} by {other}, {words}")
            }
            _ => format!("the name {words}"),
        }
    }

    /// Places the dimension of every wall once.
    fn walls(&mut self) {
        let mut all: Vec<(String, Dimension)> = Vec::new();
        let mut skipped: Vec<(WallOnPage, WallOnPage)> = Vec::new();
        let shapes = std::mem::take(&mut self.shapes);
        for shape in &shapes {
            let traverse = &self.say.areas.outside.spaces[shape.space].traverse;
            for (k, wall) in shape.walls.iter().enumerate() {
                let Some(source) = traverse.sides[k].source else { continue };
                let twice = |(_, other): &&(String, Dimension)| is_same(wall, &other.wall);
                if wall.length_pt() < 0.05 || all.iter().any(|other| twice(&other)) {
                    continue;
                }
                if self.is_dimensioned_across(shape, k, &shapes, &all) {
                    skipped.push((shape.walls[(k + 2) % 4], *wall));
                    continue;
                }
                let is_cut =
                    traverse.sides.iter().filter(|side| side.source == Some(source)).count() > 1;
                // Between two spaces a part of a wall is not seen, and the wall behind it has its own length.
                if is_cut && !lies_out(wall, &shapes) {
                    continue;
                }
                let name = format!("side {} of {}", source + 1, self.space(shape).name);
                let mut dimension = self.dimension(shape, k, source, wall);
                if let Some((seen, length)) = self.seen(shape, wall, &shapes).filter(|_| is_cut) {
                    let whole = std::mem::replace(&mut dimension.words, self.say.length(length));
                    dimension.wall = seen;
                    self.note(&format!(
                        "{}, side {}: {} shows of a part that is {whole} long; the rest is behind the next space",
                        fonts::shown(&self.space(shape).name),
                        source + 1,
                        dimension.words
                    ));
                }
                all.push((name, dimension));
            }
        }
        self.shapes = shapes;
        for (across, wall) in skipped {
            let known = all.iter_mut().find(|(_, other)| is_same(&across, &other.wall));
            if let Some((_, known)) = known {
                known.or_else.get_or_insert(wall);
            }
        }
        let names = all
            .iter()
            .map(|(name, dimension)| (dimension.wall.from, dimension.wall.to, fonts::shown(name)));
        let names: Vec<(Point, Point, String)> = names.collect();
        let rest =
            self.canvas.dimensions(all.into_iter().map(|(_, dimension)| dimension).collect());
        for dimension in rest {
            let ends = (dimension.wall.from, dimension.wall.to);
            let name = names.iter().find(|(from, to, _)| (*from, *to) == ends);
            let name = name.map(|(.., name)| name.as_str()).unwrap_or("side");
            self.left_out.push(format!("{name}: {}", dimension.words));
        }
    }

    /// The part of a wall that no other space covers, with its length, if another one covers an end of it; `None` for a
    /// wall that is seen whole.
    fn seen(
        &self,
        shape: &Shape,
        wall: &WallOnPage,
        shapes: &[Shape],
    ) -> Option<(WallOnPage, Length)> {
        const NEAR_PT: f64 = 0.01;
        let way = wall.from.to(wall.to);
        let long = wall.length_pt();
        let along = way.unit();
        let (mut first, mut last) = (0.0, long);
        let is_other = |other: &&Shape| {
            other.space != shape.space && self.space(other).parent != Some(shape.space)
        };
        for other in shapes.iter().filter(is_other) {
            let across = other.walls.iter().filter(|other| {
                other.from.to(other.to).unit().dot(along).abs() < 1e-6 && {
                    let (from, to) = (wall.from.to(other.from), wall.from.to(other.to));
                    let (from, to) = (from.dot(wall.out), to.dot(wall.out));
                    from.min(to) < -NEAR_PT && from.max(to) > -NEAR_PT
                }
            });
            for other in across {
                let at = wall.from.to(other.from).dot(along);
                // The other space lies on the inner side of its wall.
                match other.out.dot(along) < 0.0 {
                    true if at > 0.5 * long && at < last - NEAR_PT => last = at,
                    false if at < 0.5 * long && at > first + NEAR_PT => first = at,
                    _ => {}
                }
            }
        }
        if first <= 0.0 && last >= long {
            return None;
        }
        let seen = WallOnPage {
            from: wall.from.plus(along, first),
            to: wall.from.plus(along, last),
            ..*wall
        };
        let feet = (last - first) / self.canvas.view.scale.pt_per_ft;
        const MILLIMETER: i64 = 1_000_000;
        let length = crate::geometry::outline::nearest_nm(feet * Length::FOOT.nm() as f64);
        Some((seen, length.rounded_to(MILLIMETER)))
    }

    /// Whether a wall of a plain rectangle needs no dimension because the opposite wall has the same one. That is
    /// the case if the opposite wall is free and this one has a neighbor, or if the space is not a main one and the
    /// opposite wall already has its dimension.
    fn is_dimensioned_across(
        &self,
        shape: &Shape,
        k: usize,
        shapes: &[Shape],
        all: &[(String, Dimension)],
    ) -> bool {
        let here = self.space(shape);
        let across = shape.walls.get((k + 2) % 4);
        let Some(across) = across.filter(|_| shape.walls.len() == 4) else { return false };
        let wall = &shape.walls[k];
        let (way, back) = (wall.from.to(wall.to).unit(), across.from.to(across.to).unit());
        let is_alike =
            (wall.length_pt() - across.length_pt()).abs() < 0.02 && way.cross(back).abs() < 1e-6;
        let is_marked = self.marks.recorded.iter().any(|other| other.space == shape.space);
        if !is_alike || is_marked {
            return false;
        }
        let lies_out = |wall: &WallOnPage| lies_out(wall, shapes);
        let is_main = here.counted && here.parent.is_none();
        let is_dimensioned = !is_main && all.iter().any(|(_, other)| is_same(across, &other.wall));
        is_dimensioned || lies_out(across) && !lies_out(wall)
    }

    /// Places the numbers of sides at their walls. Spaces inside others get none unless a sentence names one of their
    /// walls, because their numbers could be taken for those of the outer space. The number of a wall that is named is
    /// never left out: without room at the wall, it stands at the end of a line.
    fn numbers(&mut self, which: Numbered) {
        let shapes = std::mem::take(&mut self.shapes);
        let house = self.say.house;
        let mut is_numbered = false;
        let is_told_of = |shape: &Shape| {
            let here = &house.spaces[shape.space];
            here.parent.is_none() && (here.kind.has_walls() || here.counted)
        };
        for shape in &shapes {
            let others = shapes.iter().filter(|other| {
                other.space != shape.space && house.spaces[other.space].parent.is_none()
            });
            let inner =
                shapes.iter().filter(|other| house.spaces[other.space].parent == Some(shape.space));
            let inner: Vec<&[Point]> = inner.map(|other| other.figure.as_slice()).collect();
            let mut others: Vec<&[Point]> = others.map(|other| other.figure.as_slice()).collect();
            others.push(&shape.figure);
            let traverse = &self.say.areas.outside.spaces[shape.space].traverse;
            for number in 0..house.spaces[shape.space].sides.len() {
                let is_named = self.marks.named.contains(&(shape.space, number));
                let is_wanted = match which {
                    Numbered::Named => is_named,
                    Numbered::Others => !is_named && is_told_of(shape),
                };
                if !is_wanted {
                    continue;
                }
                let pieces = shape.walls.iter().zip(&traverse.sides);
                let of_side = pieces.filter(|(_, side)| side.source == Some(number));
                let longest =
                    of_side.max_by(|(a, _), (b, _)| a.length_pt().total_cmp(&b.length_pt()));
                let Some((wall, _)) = longest else { continue };
                let is_placed =
                    self.canvas.number(wall, &shape.figure, &others, &inner, number + 1)
                        || is_named && self.canvas.number_led(wall, number + 1);
                is_numbered |= is_placed;
                if is_named && !is_placed {
                    let name = fonts::shown(&house.spaces[shape.space].name);
                    self.left_out.push(format!("the number of side {} of {name}", number + 1));
                }
            }
        }
        self.shapes = shapes;
        if is_numbered {
            self.note("small number at a wall: its side in the Calculations");
        }
    }

    fn dimension(
        &mut self,
        shape: &Shape,
        k: usize,
        source: usize,
        wall: &WallOnPage,
    ) -> Dimension {
        let vector = self.say.areas.spaces[shape.space].outside().vectors()[k];
        let mut words = side_words(self.say, shape.space, source, vector);
        let recorded = self.marks.recorded(shape.space, source);
        if let Some(recorded) = recorded {
            words = format!("{words} [{}]", self.say.length(recorded.length));
            let has_plan =
                self.say.house.drawn.iter().any(|drawn| drawn.drawn == ReferenceSource::Plan);
            let whose = if has_plan { "the record or the plan" } else { "the record" };
            self.note(&format!("[ ]: the length on {whose}, where it is not this wall rounded"));
        }
        let differs = recorded.is_some_and(|recorded| recorded.differs);
        let misread = self.marks.misread.contains(&(shape.space, source));
        if differs {
            self.note("● and bold: this wall differs from the record by more than rounding");
        }
        if misread && !differs {
            self.note("open circle: another length of this wall could account for the figure");
        }
        let hand = if differs { Typeface::Bold } else { Typeface::Plain };
        let mark = match (differs, misread) {
            (true, _) => Some(Mark::Differs),
            (_, true) => Some(Mark::Ask),
            _ => None,
        };
        Dimension { wall: *wall, or_else: None, words, hand, mark }
    }

    fn closing_notes(&mut self) {
        let mut notes = Vec::new();
        let is_moved = |side: &crate::house::Side| {
            matches!(side.how(), LengthSource::Plan | LengthSource::Record)
        };
        let house = self.say.house;
        let spaces = self.shapes.iter().map(|shape| &house.spaces[shape.space]);
        let moved = spaces.filter(|space| space.face != Face::Outside);
        if moved.flat_map(|space| &space.sides).any(is_moved) {
            notes.push(
                "in parentheses: its length on the plan or the record, which is at another face"
                    .to_owned(),
            );
        }
        for shape in &self.shapes {
            let here = self.space(shape);
            let name = fonts::shown(&here.name);
            if here.closed.misclosure != Misclosure::default() {
                notes.push(format!(
                    "{name}: the walk ends {} of where it began; {}",
                    here.closed.misclosure.spoken(),
                    crate::wording::certainty::closed_by(here)
                ));
            }
            if here.claimed {
                let counted = if here.counted { "counted" } else { "not counted" };
                notes.push(format!("{name}: {counted}, {}", self.say.as_stated()));
            }
            if here.face != Face::Outside && here.kind.has_walls() {
                let at = match shared_walls(here) {
                    Some(walls) => format!("outside, shared {walls} at the centerline"),
                    None => "at the outside face".to_owned(),
                };
                notes.push(format!(
                    "{name}: lengths to the {} face, drawn and dimensioned {at}",
                    here.face.word()
                ));
            }
        }
        for note in notes {
            self.note(&note);
        }
    }

    fn note(&mut self, note: &str) {
        if !self.notes.iter().any(|other| other == note) {
            self.notes.push(note.to_owned());
        }
    }

    fn legend(&self) -> Vec<String> {
        let mut notes = self.notes.clone();
        if !self.left_out.is_empty() {
            const MOST: usize = 12;
            let shown = &self.left_out[..self.left_out.len().min(MOST)];
            let more = self.left_out.len() - shown.len();
            let more = if more > 0 {
                format!("; and {more} more (see the table of sides)")
            } else {
                String::new()
            };
            notes.push(format!("not on the drawing for lack of room: {}{more}", shown.join("; ")));
        }
        notes
    }
}

/// Which numbers of walls are placed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Numbered {
    /// Those that a sentence names.
    Named,
    /// All others.
    Others,
}

/// How many choices for the name of a space have its area to the foot.
const WITH_FEET: usize = 3;

/// Draws an arrow to north in the corner of the frame.
pub(crate) fn north(canvas: &mut Canvas, unit: (f64, f64), right_top: Point, word: &str) {
    // The plan's north points at this bearing, so true north lies as far the other way.
    let (east, north) = (-unit.0, unit.1);
    let turned = canvas.view.turned;
    let million =
        |part: f64| Length::from_nm(crate::geometry::outline::nearest_nm(part * 1e9).nm()).nm();
    let (right, up) = turned.of((million(east), million(north)));
    let way = Point::new(right as f64, -up as f64).unit();
    let middle = Point::new(right_top.x_pt - 16.0, right_top.y_pt + 18.0);
    let (tip, tail) = (middle.plus(way, 13.0), middle.plus(way, -11.0));
    let barb = |side: f64| tip.plus(way, -8.0).plus(way.turned(), side);
    let head = Stroke::filled(&[tip, barb(3.2), barb(-3.2)], crate::pages::page::Fill::Black);
    let letter = Text {
        anchor: Anchor::Middle,
        ..Text::new(Point::new(middle.x_pt, right_top.y_pt + 44.0), 7.0, word)
    };
    let corner = |x: f64, y: f64| Point::new(right_top.x_pt + x, right_top.y_pt + y);
    let ground = [corner(-40.0, 0.0), corner(0.0, 0.0), corner(0.0, 47.0), corner(-40.0, 47.0)];
    let letter = Text { at: Point::new(right_top.x_pt - 20.0, letter.at.y_pt), ..letter };
    canvas.fixture(ground, vec![Stroke::line(tail, tip, 0.8), head], vec![letter]);
}

/// The text for the length of a wall: as typed if it is drawn as typed, else in the file's most frequent unit.
pub(crate) fn side_words(
    say: &Sentences<'_>,
    space: usize,
    source: usize,
    vector: Vector,
) -> String {
    let here = &say.house.spaces[space];
    let side = &here.sides[source];
    let is_typed =
        here.closed.outline.vectors()[source] == vector || is_spread(here, source, vector);
    let chord = || say.length(vector.chord_length());
    let length = match &side.run {
        SideRun::Straight(_, written) | SideRun::Bearing(_, written)
            if is_typed && (!side.words.estimated || written.length() == vector.chord_length()) =>
        {
            written.grouped()
        }
        SideRun::ByClosing(_) | SideRun::Close => format!("{} by closing", chord()),
        SideRun::Arc(..) => {
            format!("{} chord, rise {}", chord(), say.length(Length::from_nm(vector.rise.abs())))
        }
        // What was taped are its two legs.
        SideRun::Diagonal((first, _), _) => {
            let leg = |direction: &Direction| {
                say.length(Length::from_nm(match direction.axis() {
                    Axis::North => vector.north.abs(),
                    Axis::East => vector.east.abs(),
                }))
            };
            let across = match first.axis() {
                Axis::North => Length::from_nm(vector.east.abs()),
                Axis::East => Length::from_nm(vector.north.abs()),
            };
            format!("{} by {}", leg(first), say.length(across))
        }
        _ => chord(),
    };
    let origin = match side.how() {
        LengthSource::Estimated => {
            return match &side.run {
                // Its length follows from the others; what was estimated stands beside it.
                SideRun::Straight(_, written) | SideRun::Bearing(_, written)
                    if written.length() != vector.chord_length() =>
                {
                    format!("{length} ({} estimated)", written.grouped())
                }
                _ => format!("{length} estimated"),
            };
        }
        LengthSource::Plan => "plan",
        LengthSource::Record => "record",
        _ => return length,
    };
    match &side.run {
        // At another face the length is no longer the plan's; the plan's follows in parentheses.
        SideRun::Straight(_, written) | SideRun::Bearing(_, written)
            if !is_typed && written.length() != vector.chord_length() =>
        {
            let pieces = say.areas.outside.spaces[space].traverse.sides.iter();
            let is_cut = pieces.filter(|piece| piece.source == Some(source)).count() > 1;
            let there = written.grouped();
            // The unit once, where it is the same.
            let there = match (length.rsplit_once(' '), there.rsplit_once(' ')) {
                (Some((_, ours)), Some((number, unit))) if ours == unit => number,
                _ => there.as_str(),
            };
            // A wall that is split there has no length of its own.
            if is_cut { length } else { format!("{length} ({origin} {there})") }
        }
        _ => format!("{length} from {origin}"),
    }
}

/// Whether a wall is as typed except for its share of the misclosure.
fn is_spread(space: &crate::house::Space, source: usize, vector: Vector) -> bool {
    let typed = space.closed.traverse.sides[source].shape.vector();
    let apart = (typed.east - vector.east).abs() + (typed.north - vector.north).abs();
    space.closed.misclosure != Misclosure::default() && apart <= Length::INCH.nm()
}

/// Whether no space lies before a wall.
fn lies_out(wall: &WallOnPage, shapes: &[Shape]) -> bool {
    let spot = wall.middle().plus(wall.out, 6.0);
    !shapes.iter().any(|other| crate::pages::drawing::view::is_inside(&other.figure, spot))
}

/// Whether two walls coincide, in either direction.
fn is_same(a: &WallOnPage, b: &WallOnPage) -> bool {
    const NEAR_PT: f64 = 0.4;
    // Most walls are far apart, which a comparison without a square root shows.
    let near = |one: Point, other: Point| {
        let way = one.to(other);
        way.x_pt.abs() < NEAR_PT && way.y_pt.abs() < NEAR_PT && way.length() < NEAR_PT
    };
    near(a.from, b.from) && near(a.to, b.to) || near(a.from, b.to) && near(a.to, b.from)
}

/// Whether a wall lies along another for part of its length.
fn shares(a: &WallOnPage, b: &WallOnPage) -> bool {
    let along = a.from.to(a.to).unit();
    let off = |spot: Point| a.from.to(spot).cross(along).abs();
    let at = |spot: Point| a.from.to(spot).dot(along);
    let (low, high) = (at(b.from).min(at(b.to)), at(b.from).max(at(b.to)));
    off(b.from) < 4.0 && off(b.to) < 4.0 && low < a.length_pt() - 2.0 && high > 2.0
}

/// The diagonals of a figure's bounding box, clipped to the figure, dashed.
fn diagonals(figure: &[Point]) -> Vec<Stroke> {
    let low = figure.iter().fold(Point::new(f64::MAX, f64::MAX), |low, spot| {
        Point::new(low.x_pt.min(spot.x_pt), low.y_pt.min(spot.y_pt))
    });
    let high = figure.iter().fold(Point::new(f64::MIN, f64::MIN), |high, spot| {
        Point::new(high.x_pt.max(spot.x_pt), high.y_pt.max(spot.y_pt))
    });
    let ends = [(low, high), (Point::new(low.x_pt, high.y_pt), Point::new(high.x_pt, low.y_pt))];
    let inside = |(from, to): (Point, Point)| {
        const PIECES: u32 = 60;
        let spot = |k: u32| from.plus(from.to(to), f64::from(k) / f64::from(PIECES));
        let mut runs: Vec<Stroke> = Vec::new();
        let mut open: Option<Point> = None;
        for k in 0..=PIECES {
            let within =
                crate::pages::drawing::view::is_inside(figure, spot(k).plus(from.to(to), 1e-7))
                    || k == 0
                    || k == PIECES;
            match (within, open) {
                (true, None) => open = Some(spot(k)),
                (false, Some(start)) => {
                    runs.push(Stroke::line(start, spot(k - 1), 0.5).dashed([4.0, 3.0]));
                    open = None;
                }
                _ => {}
            }
        }
        if let Some(start) = open {
            runs.push(Stroke::line(start, to, 0.5).dashed([4.0, 3.0]));
        }
        runs
    };
    ends.into_iter().flat_map(inside).collect()
}

/// Draws the street, the scale bar and the scale in words below the drawing.
pub(crate) fn strip(
    inks: &mut Vec<Ink>,
    say: &Sentences<'_>,
    view: &View,
    frame: &Frame,
    height_pt: f64,
) {
    let has_street = say.house.particulars.front.is_some();
    scale_strip(inks, has_street, say.is_metric(), view, frame, height_pt);
}

/// Like [`strip`], for a drawing without a checked house.
pub(crate) fn scale_strip(
    inks: &mut Vec<Ink>,
    has_street: bool,
    is_metric: bool,
    view: &View,
    frame: &Frame,
    height_pt: f64,
) {
    let top = frame.left_top.y_pt + height_pt;
    let (left, right) = (frame.left_top.x_pt, frame.left_top.x_pt + frame.width_pt);
    if has_street {
        let middle = (left + right) / 2.0;
        let word = Text {
            anchor: Anchor::Middle,
            ..Text::new(Point::new(middle, top + 8.5), 8.0, "STREET")
        };
        let half = fonts::width_pt(Typeface::Bold, 8.0, "STREET") / 2.0 + 8.0;
        for (from, to) in [(left + 60.0, middle - half), (middle + half, right - 60.0)] {
            let line = Stroke::line(Point::new(from, top + 5.5), Point::new(to, top + 5.5), 0.8);
            inks.push(Ink::Stroke(line.dashed([10.0, 4.0])));
        }
        inks.push(Ink::Text(word.in_hand(Typeface::Bold)));
    }
    let words =
        format!("Scale {}, printed at full size (100%)", scale_words(view.scale, is_metric));
    let room_pt = frame.width_pt - fonts::width_pt(Typeface::Plain, 7.5, &words) - 16.0;
    bar(inks, view.scale, is_metric, Point::new(left, top + 24.0), room_pt);
    let text = Text { anchor: Anchor::End, ..Text::new(Point::new(right, top + 24.0), 7.5, words) };
    inks.push(Ink::Text(text));
}

/// A scale in words, with its ratio if the file is metric.
pub(crate) fn scale_words(scale: Scale, is_metric: bool) -> String {
    let ratio = (12.0 * 72.0 / scale.pt_per_ft).round();
    match is_metric {
        true if scale.words.starts_with("1:") => scale.words.to_owned(),
        true => format!("{} (1:{})", scale.words, rounded_float(ratio)),
        false => scale.words.to_owned(),
    }
}

/// Draws a scale bar of four parts, in feet or meters; of two parts where there is no room for four.
fn bar(inks: &mut Vec<Ink>, scale: Scale, is_metric: bool, at: Point, room_pt: f64) {
    const PARTS: [u32; 18] = [
        1, 2, 5, 10, 20, 50, 100, 200, 500, 1_000, 2_000, 5_000, 10_000, 20_000, 50_000, 100_000,
        200_000, 500_000,
    ];
    let (unit, pt_per_unit) = match is_metric {
        true => ("m", scale.pt_per_ft / 0.3048),
        false => ("ft", scale.pt_per_ft),
    };
    let fits = |part: &&u32| f64::from(**part) * pt_per_unit >= 24.0;
    let part = PARTS.iter().find(fits).copied().unwrap_or(1);
    let wide = f64::from(part) * pt_per_unit;
    let right = Point::new(1.0, 0.0);
    let parts = if wide * 4.0 > room_pt { 2 } else { 4 };
    for k in 0..parts {
        let from = at.plus(right, wide * f64::from(k));
        let corners = [
            from,
            from.plus(right, wide),
            Point::new(from.x_pt + wide, from.y_pt - 3.5),
            Point::new(from.x_pt, from.y_pt - 3.5),
        ];
        let fill = if k % 2 == 0 { Fill::Black } else { Fill::White };
        let mut stroke = Stroke::filled(&corners, fill);
        stroke.width_pt = 0.5;
        inks.push(Ink::Stroke(stroke));
    }
    for k in 0..=parts {
        let number = crate::units::decimal::thousands(i64::from(part * k));
        let words = if k == parts { format!("{number} {unit}") } else { number };
        let x_pt = at.x_pt + wide * f64::from(k);
        let text = Text {
            anchor: Anchor::Middle,
            ..Text::new(Point::new(x_pt, at.y_pt + 8.0), 6.5, words)
        };
        let text = if k == 0 { Text { anchor: Anchor::Start, ..text } } else { text };
        inks.push(Ink::Text(text));
    }
}
