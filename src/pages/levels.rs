//! The drawings of levels: the main level is on the Exhibit, the others are two to a page where they fit.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::pages::abreast::Shown;
use crate::pages::drawing::fit::Frame;
use crate::pages::drawing::marks::Marks;
use crate::pages::drawing::plan::Drawing;
use crate::pages::heard;
use crate::pages::layout::{EDGE_PT, Flow, Stack};
use crate::pages::page::Point;
use crate::wording::sentences::{Sentences, as_sentences};

/// A scale below this counts as small, in points per foot: 1/16 in = 1 ft is larger, and so is 1:200.
const SMALL_PT_PER_FT: f64 = 4.3;
/// At a scale smaller than this, 1 in = 24 ft, the main level is drawn again on a page of its own.
const TOO_SMALL_PT_PER_FT: f64 = 3.0;

/// How well a drawing turned out.
#[derive(Clone, Debug)]
pub(crate) struct Drawn {
    shown: Shown,
    /// How many labels did not fit.
    left_out: usize,
    pt_per_ft: f64,
    /// Notes beyond the number allowed under it.
    pub(crate) notes_left_out: Vec<String>,
}

impl Drawn {
    fn is_crowded(&self) -> bool {
        self.left_out > 0 || self.pt_per_ft < SMALL_PT_PER_FT
    }

    fn needs_a_page(&self) -> bool {
        self.left_out > 0 || self.pt_per_ft < TOO_SMALL_PT_PER_FT
    }

    pub(crate) fn levels(&self) -> Vec<usize> {
        self.shown.levels()
    }

    /// Whether it may stand in place of a drawing of one of its levels: all of its labels have room, and it is at least half
    /// as large.
    pub(crate) fn stands_for(&self, one: &Drawn) -> bool {
        const SHARE: f64 = 0.5;
        !self.is_crowded() && self.pt_per_ft >= SHARE * one.pt_per_ft
    }

    pub(crate) fn is_better_than(&self, other: &Drawn) -> bool {
        self.left_out < other.left_out
            || self.left_out == other.left_out && self.pt_per_ft > other.pt_per_ft
    }
}

/// Fills the pages of the levels other than the main one, and repeats that one if it was crowded and more room
/// helps.
pub(crate) fn levels(
    flow: &mut Flow,
    say: &Sentences<'_>,
    marks: &Marks,
    main: Option<&Drawn>,
    further: impl Iterator<Item = usize>,
) {
    // The sentences about what is left are on the first page, if there is one.
    let marks = &Marks { is_off_page: !flow.pages.is_empty(), ..marks.clone() };
    let whole_page = flow.whole_page_pt();
    let any = f64::INFINITY;
    let mut scale = main.map_or(any, |main| main.pt_per_ft);
    let alone = main.filter(|main| main.needs_a_page()).map(|main| (main, main.shown));
    if let Some((main, Shown::One(level))) = alone {
        let frame = Frame::new(Point::new(EDGE_PT, 0.0), flow.width_pt(), whole_page)
            .in_meters(say.draws_in_meters());
        let again = tried(say, marks, main.shown, frame, usize::MAX);
        if again.is_better_than(main) {
            scale = again.pt_per_ft;
            one(flow, say, marks, (level, false), any);
        }
    }
    for level in further {
        one(flow, say, marks, (level, true), scale);
    }
}

/// Places one level, at the scale of the main one if it fits a page at that: on half a page if that is enough, else on
/// as much as it needs.
fn one(
    flow: &mut Flow,
    say: &Sentences<'_>,
    marks: &Marks,
    (level, is_further): (usize, bool),
    most_pt_per_ft: f64,
) {
    const HEADING_PT: f64 = 40.0;
    /// For the notes under it.
    const NOTES_PT: f64 = 30.0;
    const PARTS: u32 = 10;
    let shown = Shown::One(level);
    let name = &say.house.levels[level].name;
    let below = if say.house.levels[level].below_grade { ", below grade" } else { "" };
    let title = format!("{name}{below}");
    let whole_page = flow.whole_page_pt();
    let (half, most) = (whole_page / 2.0 - HEADING_PT, whole_page - HEADING_PT);
    let height_of = |part: u32| half + (most - half) * f64::from(part) / f64::from(PARTS);
    let scale =
        |height_pt: f64| largest(flow, say, marks, shown, height_pt - NOTES_PT).min(most_pt_per_ft);
    // Without another level to compare with, half a page is enough unless the drawing is crowded there.
    let wanted = if most_pt_per_ft.is_finite() { scale(most) } else { scale(half) };
    let enough = (0..=PARTS).map(height_of).find(|&height_pt| scale(height_pt) >= wanted);
    let enough = enough.unwrap_or(most);
    let width = flow.width_pt();
    let tried = |height_pt: f64| {
        let frame =
            Frame { most_pt_per_ft, ..Frame::new(Point::new(EDGE_PT, 0.0), width, height_pt) }
                .in_meters(say.draws_in_meters());
        tried(say, marks, shown, frame, usize::MAX)
    };
    let first = tried(enough);
    let needs_more = enough < most && first.is_crowded() && tried(most).is_better_than(&first);
    let height = if needs_more { most } else { enough };
    flow.go_on(&title, &heard::drawn(say, marks, level, &[]), height);
    if is_further {
        flow.has_level(level);
    }
    let mut height = height.min(flow.room_pt());
    // First on its page, the level has its name at the drawing too, as the one on the Exhibit has.
    if flow.is_fresh() {
        let mut name = Stack::new(flow.width_pt());
        name.at_most(1, |name| name.title(9.0, &title));
        flow.pour(&name);
        // Its line comes off the air around the drawing, if that leaves the drawing as it is.
        let lower = height - name.height_pt();
        let is_alike = !tried(height).is_better_than(&tried(lower));
        height = if is_alike { lower } else { height.min(flow.room_pt()) };
    }
    draw(flow, say, marks, shown, height, usize::MAX, most_pt_per_ft);
}

/// How levels would turn out in a frame, with at most so many lines of notes under it.
pub(crate) fn tried(
    say: &Sentences<'_>,
    marks: &Marks,
    shown: Shown,
    frame: Frame,
    notes_most: usize,
) -> Drawn {
    let (drawings, _, notes_left_out) = fitting(say, marks, shown, frame, notes_most);
    turned_out(shown, &drawings, notes_left_out)
}

fn turned_out(shown: Shown, drawings: &[(usize, Drawing)], notes_left_out: Vec<String>) -> Drawn {
    let left_out = drawings.iter().map(|(_, one)| one.left_out).sum();
    let scales = drawings.iter().map(|(_, one)| one.scale.pt_per_ft);
    Drawn { shown, left_out, pt_per_ft: scales.fold(f64::INFINITY, f64::min), notes_left_out }
}

/// The largest scale, in points per foot, at which levels fit a given height.
pub(crate) fn largest(
    flow: &Flow,
    say: &Sentences<'_>,
    marks: &Marks,
    shown: Shown,
    height_pt: f64,
) -> f64 {
    let left_top = Point::new(EDGE_PT, 0.0);
    let frame = Frame::new(left_top, flow.width_pt(), height_pt).in_meters(say.draws_in_meters());
    shown.largest(say, marks, frame)
}

/// Draws levels within a given height and up to a scale, with at most `notes_most` lines of notes under it.
pub(crate) fn draw(
    flow: &mut Flow,
    say: &Sentences<'_>,
    marks: &Marks,
    shown: Shown,
    height_pt: f64,
    notes_most: usize,
    most_pt_per_ft: f64,
) -> Drawn {
    let left_top = Point::new(EDGE_PT, flow.y_pt());
    let frame = Frame { most_pt_per_ft, ..Frame::new(left_top, flow.width_pt(), height_pt) }
        .in_meters(say.draws_in_meters());
    let (drawings, notes, notes_left_out) = fitting(say, marks, shown, frame, notes_most);
    let drawn = turned_out(shown, &drawings, notes_left_out);
    let height_pt = height_of(&drawings);
    for (level, drawing) in drawings {
        let told = heard::drawn(say, marks, level, &drawing.apart);
        flow.put_drawing(drawing.inks, drawn.pt_per_ft, &told);
        flow.put_inset_scales(drawing.inset_scales);
    }
    flow.down(height_pt);
    flow.pour(&notes);
    drawn
}

fn height_of(drawings: &[(usize, Drawing)]) -> f64 {
    drawings.iter().map(|(_, one)| one.height_pt).fold(0.0, f64::max)
}

/// Levels drawn so that their notes fit below them, the notes, and those beyond the limit.
fn fitting(
    say: &Sentences<'_>,
    marks: &Marks,
    shown: Shown,
    frame: Frame,
    notes_most: usize,
) -> (Vec<(usize, Drawing)>, Stack, Vec<String>) {
    let height_pt = frame.height_pt;
    let draw = |height_pt: f64| {
        let drawings = shown.drawings(say, marks, Frame { height_pt, ..frame });
        let mut texts: Vec<String> = Vec::new();
        for text in drawings.iter().flat_map(|(_, one)| &one.notes) {
            if !texts.contains(text) {
                texts.push(text.clone());
            }
        }
        let (notes, left_out) = notes_under(frame.width_pt, &texts, notes_most);
        (drawings, notes, left_out)
    };
    let (drawings, notes, left_out) = draw(height_pt);
    if height_of(&drawings) + notes.height_pt() <= height_pt {
        return (drawings, notes, left_out);
    }
    // A smaller drawing may have other notes, so there is room for as many lines as allowed.
    let room = notes.height_pt().max(if notes_most < usize::MAX { 44.0 } else { 0.0 });
    draw(height_pt - room)
}

/// The notes that fit the limit, and the others.
fn notes_under(width_pt: f64, texts: &[String], most: usize) -> (Stack, Vec<String>) {
    let lines = |count: usize| {
        let mut notes = Stack::new(width_pt);
        notes.space(4.0);
        let from = notes.rows.len();
        if count > 0 {
            let told = as_sentences(&texts[..count]);
            notes.paragraph(7.0, &format!("Key to the drawing. {told}"));
        }
        let lines = notes.rows.len() - from;
        notes.space(2.0);
        (notes, lines)
    };
    if most == usize::MAX {
        return (lines(texts.len()).0, Vec::new());
    }
    // More notes take no fewer lines, so the most that fit are found by halving.
    let (mut count, mut too_many) = (0, texts.len() + 1);
    while too_many - count > 1 {
        let middle = count.midpoint(too_many);
        if lines(middle).1 <= most {
            count = middle;
        } else {
            too_many = middle;
        }
    }
    (lines(count).0, texts[count..].to_vec())
}
