//! Draws the inks of a page into a PDF: letters as text in the fonts of the pages, lines as paths, photographs as they
//! are. The SVG of a page is written from the same inks.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use krilla::Data;
use krilla::color::luma;
use krilla::geom::{Path, PathBuilder, Point as Spot, Size, Transform};
use krilla::image::Image;
use krilla::paint::{Fill as Paint, Stroke as Line, StrokeDash};
use krilla::surface::Surface;
use krilla::tagging::{Artifact, ContentTag, Identifier};
use krilla::text::{Font, GlyphId, KrillaGlyph};

use crate::error::Error;
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::page::{Anchor, Fill, Ink, Photograph, Point, Run, Stroke, Text};

/// The fonts of the pages, opened once for a document.
pub(super) struct PenFonts([Font; 3]);

impl PenFonts {
    pub(super) fn open() -> Result<PenFonts, Error> {
        let open = |hand: Typeface| {
            Font::new(Data::from(hand.font()), 0)
                .ok_or_else(|| Error::Drawing("a font cannot be opened".to_owned()))
        };
        let [plain, bold, even] = Typeface::ALL;
        Ok(PenFonts([open(plain)?, open(bold)?, open(even)?]))
    }

    fn of(&self, hand: Typeface) -> Font {
        let [plain, bold, even] = &self.0;
        let font = match hand {
            Typeface::Plain => plain,
            Typeface::Bold => bold,
            Typeface::Even => even,
        };
        font.clone()
    }
}

/// Draws on one page.
pub(super) struct Pen<'a, 'b> {
    surface: &'a mut Surface<'b>,
    fonts: &'a PenFonts,
}

impl<'a, 'b> Pen<'a, 'b> {
    pub(super) fn new(surface: &'a mut Surface<'b>, fonts: &'a PenFonts) -> Pen<'a, 'b> {
        Pen { surface, fonts }
    }

    /// Draws what is not read aloud.
    pub(super) fn unread(&mut self, inks: &[Ink]) -> Result<(), Error> {
        if inks.is_empty() {
            return Ok(());
        }
        self.surface.start_tagged(ContentTag::Artifact(Artifact::default()));
        let drawn = inks.iter().try_for_each(|ink| self.ink(ink));
        self.surface.end_tagged();
        drawn
    }

    /// Draws a figure, in one piece.
    pub(super) fn drawing(&mut self, inks: &[Ink]) -> Result<Vec<Identifier>, Error> {
        let piece = self.surface.start_tagged(ContentTag::Other);
        let drawn = inks.iter().try_for_each(|ink| self.ink(ink));
        self.surface.end_tagged();
        drawn.map(|()| vec![piece])
    }

    /// Draws words to be read, in pieces without the lines and dots between them.
    pub(super) fn read(&mut self, inks: &[Ink]) -> Result<Vec<Identifier>, Error> {
        let mut pieces = Vec::new();
        for ink in inks {
            match ink {
                Ink::Text(text) if !is_leader(&text.words) => {
                    pieces.push(self.surface.start_tagged(ContentTag::Other));
                    self.text(text);
                    self.surface.end_tagged();
                }
                other => self.unread(std::slice::from_ref(other))?,
            }
        }
        Ok(pieces)
    }

    fn ink(&mut self, ink: &Ink) -> Result<(), Error> {
        match ink {
            Ink::Text(text) => self.text(text),
            Ink::Stroke(stroke) => self.stroke(stroke),
            Ink::Photograph(photograph) => self.photograph(photograph)?,
        }
        Ok(())
    }

    /// Draws a text and a blank behind it: words on the next line, in the next column or at the next wall are separate
    /// words.
    fn text(&mut self, text: &Text) {
        let words = format!("{} ", single_spaced(&text.words));
        let mut glyphs = Vec::with_capacity(words.len());
        let mut wide = 0.0;
        for (at, letter) in words.char_indices() {
            let (glyph, advance) = fonts::glyph(text.hand, letter);
            let here = at..at + letter.len_utf8();
            if at + 1 < words.len() {
                wide += advance * text.size_pt;
            }
            let glyph = GlyphId::new(u32::from(glyph));
            glyphs.push(KrillaGlyph::new(glyph, narrow(advance), 0.0, 0.0, 0.0, here, None));
        }
        let before = match text.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => wide / 2.0,
            Anchor::End => wide,
        };
        let black = luma::Color::black();
        let line = Line { paint: black.into(), width: 0.6, miter_limit: MITER, ..Line::default() };
        self.surface.set_fill((!text.is_hollow).then(Paint::default));
        self.surface.set_stroke(text.is_hollow.then_some(line));
        let font = self.fonts.of(text.hand);
        let size = narrowed(text.size_pt);
        if text.turn == 0.0 {
            let start = Point::new(text.at.x_pt - before, text.at.y_pt);
            return self.surface.draw_glyphs(spot(start), &glyphs, font, &words, size, false);
        }
        self.surface.push_transform(&turned(text.turn, text.at));
        let start = spot(Point::new(-before, 0.0));
        self.surface.draw_glyphs(start, &glyphs, font, &words, size, false);
        self.surface.pop();
    }

    fn stroke(&mut self, stroke: &Stroke) {
        let fill = match stroke.fill {
            Fill::None => None,
            Fill::White => Some(luma::Color::white()),
            Fill::Black => Some(luma::Color::black()),
        };
        let has_line = stroke.width_pt > 0.0;
        let Some(path) = path(&stroke.runs).filter(|_| fill.is_some() || has_line) else { return };
        let dash = stroke
            .dashes
            .map(|[on, off]| StrokeDash { array: vec![narrowed(on), narrowed(off)], offset: 0.0 });
        let line =
            Line { width: narrowed(stroke.width_pt), miter_limit: MITER, dash, ..Line::default() };
        self.surface.set_fill(fill.map(|paint| Paint { paint: paint.into(), ..Paint::default() }));
        self.surface.set_stroke(has_line.then_some(line));
        self.surface.draw_path(&path);
    }

    fn photograph(&mut self, photograph: &Photograph) -> Result<(), Error> {
        let failed = |what: String| Error::Drawing(what);
        let data = Data::from(photograph.picture.bytes().to_vec());
        let image = Image::from_jpeg(data, false).map_err(failed)?;
        let size = Size::from_wh(narrowed(photograph.width_pt), narrowed(photograph.height_pt))
            .ok_or_else(|| failed("a photograph has no size".to_owned()))?;
        let at = spot(photograph.at);
        self.surface.push_transform(&Transform::from_translate(at.x, at.y));
        self.surface.draw_image(image, size);
        self.surface.pop();
        Ok(())
    }
}

/// How far a sharp corner may reach, as in SVG.
const MITER: f32 = 4.0;

/// Whether a text is only dots that lead the eye.
fn is_leader(words: &str) -> bool {
    words.bytes().all(|byte| matches!(byte, b'.' | b' '))
}

/// A text with single spaces and none at its ends, as SVG shows it.
fn single_spaced(words: &str) -> String {
    words.split(' ').filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ")
}

fn spot(at: Point) -> Spot {
    Spot::from_xy(narrowed(at.x_pt), narrowed(at.y_pt))
}

/// The rotation of a text around its position, in degrees clockwise.
fn turned(degrees: f64, at: Point) -> Transform {
    // Quarter turns are exact, without the rounding error of the sine.
    let round = |part: f64| narrow((part * 1e7).round() / 1e7);
    let radians = degrees.to_radians();
    let (sin, cos) = (round(libm::sin(radians)), round(libm::cos(radians)));
    let at = spot(at);
    Transform::from_row(cos, sin, -sin, cos, at.x, at.y)
}

/// The path of a stroke; `None` if it has no length.
fn path(runs: &[Run]) -> Option<Path> {
    let mut path = PathBuilder::new();
    let (mut at, mut first) = (Point::default(), Point::default());
    for run in runs {
        match *run {
            Run::Move(to) => {
                path.move_to(narrowed(to.x_pt), narrowed(to.y_pt));
                (at, first) = (to, to);
            }
            Run::Line(to) => {
                path.line_to(narrowed(to.x_pt), narrowed(to.y_pt));
                at = to;
            }
            Run::Arc { to, radius_pt, is_large, clockwise } => {
                arc(&mut path, Arc { from: at, to, radius_pt, is_large, clockwise });
                at = to;
            }
            Run::Close => {
                path.close();
                at = first;
            }
        }
    }
    path.finish()
}

/// An arc of a circle, as seen on the page.
struct Arc {
    from: Point,
    to: Point,
    radius_pt: f64,
    is_large: bool,
    clockwise: bool,
}

/// Adds an arc as curves of at most a quarter turn.
fn arc(path: &mut PathBuilder, arc: Arc) {
    use std::f64::consts::{FRAC_PI_2, TAU};
    let Arc { from, to, radius_pt, is_large, clockwise } = arc;
    let chord = from.to(to);
    let half = chord.length() / 2.0;
    if half == 0.0 {
        return;
    }
    // A radius too small for its chord is enlarged, as SVG requires.
    let radius = radius_pt.max(half);
    let off = libm::sqrt((radius * radius - half * half).max(0.0));
    let off = if is_large == clockwise { -off } else { off };
    let center = from.middle(to).plus(chord.unit().turned(), off);
    let angle = |at: Point| {
        let way = center.to(at);
        libm::atan2(way.y_pt, way.x_pt)
    };
    let start = angle(from);
    let mut sweep = angle(to) - start;
    if clockwise && sweep <= 0.0 {
        sweep += TAU;
    } else if !clockwise && sweep >= 0.0 {
        sweep -= TAU;
    }
    let pieces = (sweep.abs() / FRAC_PI_2 - 1e-9).ceil().clamp(1.0, 4.0);
    let step = sweep / pieces;
    // The usual length of the handles of a curve for a part of a circle.
    let handle = 4.0 / 3.0 * libm::tan(step / 4.0) * radius;
    let on = |angle: f64| {
        let way = Point::new(libm::cos(angle), libm::sin(angle));
        (center.plus(way, radius), way.turned())
    };
    let mut k = 0.0;
    while k < pieces {
        let ((begin, along), (end, beyond)) = (on(start + step * k), on(start + step * (k + 1.0)));
        let end = if k + 1.0 < pieces { end } else { to };
        let (one, two) = (begin.plus(along, handle), end.plus(beyond, -handle));
        path.cubic_to(
            narrowed(one.x_pt),
            narrowed(one.y_pt),
            narrowed(two.x_pt),
            narrowed(two.y_pt),
            narrowed(end.x_pt),
            narrowed(end.y_pt),
        );
        k += 1.0;
    }
}

/// A number of points with up to three decimals, as in the SVG, for a library that takes `f32`.
pub(super) fn narrowed(points: f64) -> f32 {
    narrow((points * 1000.0).round() / 1000.0)
}

#[expect(clippy::cast_possible_truncation, reason = "places on a page, for a library with f32")]
fn narrow(number: f64) -> f32 {
    number as f32
}
