//! A level being drawn: its spaces as shapes on the page, the canvas, and the notes below it.

use crate::house::Space;
use crate::pages::drawing::canvas::Canvas;
use crate::pages::drawing::marks;
use crate::pages::drawing::marks::Marks;
use crate::pages::drawing::view::{OnSite, View, WallOnPage};
use crate::pages::page::Point;
use crate::wording::sentences::Sentences;

/// One space as it is drawn.
pub(super) struct Shape {
    pub(super) space: usize,
    pub(super) walls: Vec<WallOnPage>,
    pub(super) figure: Vec<Point>,
}

pub(super) struct Plan<'a> {
    pub(super) say: &'a Sentences<'a>,
    pub(super) marks: &'a Marks,
    pub(super) canvas: Canvas,
    pub(super) shapes: Vec<Shape>,
    pub(super) notes: Vec<String>,
    pub(super) left_out: Vec<String>,
}

impl Plan<'_> {
    pub(super) fn space(&self, shape: &Shape) -> &Space {
        &self.say.house.spaces[shape.space]
    }

    pub(super) fn note(&mut self, note: &str) {
        if !self.notes.iter().any(|other| other == note) {
            self.notes.push(note.to_owned());
        }
    }
}

/// The outside corners of a space, in their positions on the level.
pub(crate) fn corners_of(say: &Sentences<'_>, space: usize) -> Vec<OnSite> {
    let at = marks::place(say, space);
    let flat = say.areas.spaces[space].outside().flattened();
    flat.iter().map(|&(east, north, _)| (at.0 + east, at.1 + north)).collect()
}

pub(super) fn shapes(say: &Sentences<'_>, view: &View, spaces: &[usize]) -> Vec<Shape> {
    let shape = |&space: &usize| {
        let (outline, at) = (say.areas.spaces[space].outside(), marks::place(say, space));
        Shape { space, walls: view.walls(outline, at), figure: view.flattened(outline, at) }
    };
    spaces.iter().map(shape).collect()
}
