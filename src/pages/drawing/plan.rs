//! The drawing of a level: walls, veneer, hatching, names, dimensions and marks.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::diagnostic::words;
use crate::geometry::compass::Direction;
use crate::geometry::traverse::Misclosure;
use crate::house::{Face, Kind, LengthSource};
use crate::pages::drawing::canvas::{Canvas, most_looked_at};
use crate::pages::drawing::fit::{Fitting, Frame, MARGIN_PT, Reach, STRIP_PT, fits_at, fitted};
use crate::pages::drawing::marks::Marks;
use crate::pages::drawing::shapes::{Plan, corners_of, shapes};
use crate::pages::drawing::strip::{north, strip};
use crate::pages::drawing::view::{OnSite, Scale, Turned, scales, smallest};
use crate::pages::drawing::walls::Numbered;
use crate::pages::fonts;
use crate::pages::page::{Ink, Point};
use crate::wording::certainty::shared_walls;
use crate::wording::sentences::Sentences;

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
    let fits = |scale: &&Scale| fits_at(&reach, frame, **scale);
    let all = scales(frame.in_meters).iter();
    all.clone().find(fits).copied().unwrap_or_else(|| smallest(frame.in_meters))
}

/// The width of a group on the ground, in feet.
pub(crate) fn width_ft(say: &Sentences<'_>, marks: &Marks, group: Group<'_>) -> f64 {
    let turned = Turned { front: say.house.particulars.front.unwrap_or(Direction::South) };
    let one = Scale { pt_per_ft: 1.0, ..smallest(false) };
    Reach::of(points(say, marks, group), turned).size_pt(one).0
}

/// Draws a group at the largest standard scale at which all labels fit, or as many as possible.
pub(crate) fn group(say: &Sentences<'_>, marks: &Marks, group: Group<'_>, frame: Frame) -> Drawing {
    // First with more space around the outline, if the frame allows; then with the least room for each length, and at a
    // smaller scale.
    let ways = [
        (0, 1.5, true, false),
        (0, 5.0, true, false),
        (0, 5.0, false, false),
        (0, 5.0, true, true),
        (1, 5.0, true, false),
        (1, 5.0, true, true),
    ];
    // All levels share a scale, even if that leaves a label or two below the drawing.
    let is_given = frame.most_pt_per_ft.is_finite();
    let mut best: Option<Drawing> = None;
    for (skip, airy, names_last, is_crowded) in ways {
        let is_few = best.as_ref().is_some_and(|best| best.left_out <= FEW_LEFT_OUT);
        if skip > 0 && is_given && is_few {
            break;
        }
        let drawing =
            drawn(say, marks, group, frame, Fitting { skip, airy, names_last, is_crowded });
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
            .within(most_looked_at(house.levels.len()))
            .crowded(fitting.is_crowded),
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
    plan.keep_clear_of_marks();
    plan.numbers(Numbered::Named);
    let beside = plan.names();
    if !group.is_inset {
        plan.roof_parts(group.level);
    }
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
    if !group.is_inset && frame.has_strip {
        strip(&mut inks, say, view.scale, &frame, height);
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

impl Plan<'_> {
    /// Says where north is on a drawing without an arrow, since the text tells walls by where they stand.
    fn up_is_north(&mut self) {
        let heads = &self.say.house.particulars;
        if heads.true_north.is_none() && matches!(heads.front, None | Some(Direction::South)) {
            self.note("north is up");
        }
    }

    fn closing_notes(&mut self) {
        let mut notes = Vec::new();
        let is_moved = |side: &crate::house::Side| {
            matches!(side.how(), LengthSource::Plan | LengthSource::Record)
        };
        let house = self.say.house;
        let spaces = self.shapes.iter().map(|shape| &house.spaces[shape.space]);
        let moved = spaces.filter(|space| space.face != Face::Outside);
        if moved.flat_map(|space| space.sides.iter()).any(is_moved) {
            notes.push(
                "length in parentheses: the one on the plan or the record, taken to the frame or inside"
                    .to_owned(),
            );
        }
        if self.canvas.has_a_bare_length() {
            notes.push("length without a line: that of the wall it stands along".to_owned());
        }
        notes.extend(self.low_ceilings());
        // The spaces that have the same to say share a note.
        let mut moved_out: Vec<(String, String)> = Vec::new();
        for shape in &self.shapes {
            let here = self.space(shape);
            let name = fonts::shown(&here.name);
            if here.closed.misclosure != Misclosure::default() {
                notes.push(format!(
                    "{name}: the walls as typed end {} of where they began; {}",
                    here.closed.misclosure.spoken(),
                    crate::wording::certainty::closed_by(here)
                ));
            }
            if here.claimed {
                let counted = if here.counted { "counted" } else { "not counted" };
                notes.push(format!("{name}: {counted}, {}", self.say.as_stated()));
            }
            if here.face != Face::Outside && here.kind.has_walls() {
                let shared = shared_walls(here)
                    .map(|walls| format!(", shared {walls} at the centerline"))
                    .unwrap_or_default();
                // Nobody has measured to a face what is from a plan.
                let sources = || here.sides.iter().map(crate::house::Side::how);
                let is_only = |whence: LengthSource| {
                    sources().any(|how| how == whence)
                        && sources().all(|how| how == whence || how == LengthSource::Closing)
                };
                let at = match here.face {
                    Face::Inside => "inside".to_owned(),
                    face => format!("at the {}", face.word()),
                };
                let ends = if is_only(LengthSource::Plan) {
                    format!("lengths on the plan end {at}")
                } else if is_only(LengthSource::Record) {
                    format!("lengths on the record end {at}")
                } else {
                    format!("measured to the {} face", here.face.word())
                };
                moved_out.push((
                    name,
                    format!("{ends}; drawn and dimensioned at the outside face{shared}"),
                ));
            }
        }
        for (_, how) in &moved_out {
            let alike = moved_out.iter().filter(|(_, other)| other == how);
            let names: Vec<&str> = alike.map(|(name, _)| name.as_str()).collect();
            notes.push(format!("{}: {how}", words::all_of(&names)));
        }
        for note in notes {
            self.note(&note);
        }
        self.up_is_north();
    }

    /// What the lines are that end a floor under a low ceiling, which no wall stands on: `Front eaves and Rear eaves: floor
    /// under a low ceiling (height not stated)`.
    fn low_ceilings(&self) -> Vec<String> {
        let mut told: Vec<(String, Vec<String>)> = Vec::new();
        for shape in &self.shapes {
            let here = self.space(shape);
            if here.kind != Kind::Low {
                continue;
            }
            let what = match here.under {
                Some(height) => format!("floor under a ceiling lower than {}", height.spoken()),
                None => "floor under a low ceiling (height not stated)".to_owned(),
            };
            let name = fonts::shown(&here.name);
            match told.iter_mut().find(|(other, _)| *other == what) {
                Some((_, names)) => names.push(name),
                None => told.push((what, vec![name])),
            }
        }
        let note = |(what, names): (String, Vec<String>)| {
            let names: Vec<&str> = names.iter().map(String::as_str).collect();
            format!("{}: {what}", words::all_of(&names))
        };
        told.into_iter().map(note).collect()
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
