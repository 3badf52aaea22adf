//! A page as PNG, at 150 dots per inch, so that it prints at full size.
#![expect(clippy::float_arithmetic, reason = "the size of a page in dots")]

use image::imageops::FilterType;
use resvg::tiny_skia::{Pixmap, Transform};

use crate::error::Error;
use crate::pages::page::{Ink, Page, Photograph};

/// Dots per inch.
const DOTS_AN_INCH: f32 = 150.0;
/// Dots per meter, for the file's header.
const DOTS_A_METER: u32 = 5906;

/// Renders a page; one with photographs in color. The renderer leaves the photographs out.
pub(crate) fn written(tree: &usvg::Tree, page: &Page) -> Result<Vec<u8>, Error> {
    let scale = DOTS_AN_INCH / 96.0;
    let (width, height) = (dots(tree.size().width() * scale), dots(tree.size().height() * scale));
    let mut pixels = Pixmap::new(width, height)
        .ok_or_else(|| Error::Drawing("a page has no size".to_owned()))?;
    resvg::render(tree, Transform::from_scale(scale, scale), &mut pixels.as_mut());
    encoded(&pixels, page).map_err(|error| Error::Drawing(error.to_string()))
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a page has a few thousand dots"
)]
fn dots_from(length: f32) -> u32 {
    length.round().clamp(0.0, 20_000.0) as u32
}

fn dots(length: f32) -> u32 {
    dots_from(length).max(1)
}

/// Encodes the pixels in grayscale, since a page is black on white, or in color for photographs.
fn encoded(pixels: &Pixmap, page: &Page) -> Result<Vec<u8>, png::EncodingError> {
    let is_colored = page.has_photographs();
    let mut out = Vec::new();
    let mut encoder = png::Encoder::new(&mut out, pixels.width(), pixels.height());
    encoder.set_color(if is_colored { png::ColorType::Rgb } else { png::ColorType::Grayscale });
    encoder.set_depth(png::BitDepth::Eight);
    encoder.set_pixel_dims(Some(png::PixelDimensions {
        xppu: DOTS_A_METER,
        yppu: DOTS_A_METER,
        unit: png::Unit::Meter,
    }));
    let mut writer = encoder.write_header()?;
    if is_colored {
        let dots = pixels.pixels().iter();
        let mut bytes: Vec<u8> =
            dots.flat_map(|dot| [dot.red(), dot.green(), dot.blue()]).collect();
        for ink in &page.inks {
            if let Ink::Photograph(photograph) = ink {
                lay(&mut bytes, pixels.width(), photograph);
            }
        }
        writer.write_image_data(&bytes)?;
    } else {
        writer.write_chunk(png::chunk::IDAT, &gray(pixels))?;
    }
    writer.finish()?;
    Ok(out)
}

/// Lays a photograph over a page in colors, each of its dots times the one below: the page is white there, except for
/// the frame, which stays.
fn lay(bytes: &mut [u8], width: u32, photograph: &Photograph) {
    #[expect(clippy::cast_possible_truncation, reason = "a place on a page")]
    let at = |points: f64| dots_from((points / 72.0) as f32 * DOTS_AN_INCH);
    let (left, top) = (at(photograph.at.x_pt), at(photograph.at.y_pt));
    let right = at(photograph.at.x_pt + photograph.width_pt).min(width);
    let below = at(photograph.at.y_pt + photograph.height_pt);
    let (wide, high) = (right.saturating_sub(left).max(1), below.saturating_sub(top).max(1));
    let Some(picture) = photograph.picture.dots() else { return };
    let picture = image::imageops::resize(&picture, wide, high, FilterType::Triangle);
    for (x, y, dot) in picture.enumerate_pixels() {
        let place = (u64::from(top + y) * u64::from(width) + u64::from(left + x)) * 3;
        let place = usize::try_from(place).unwrap_or(usize::MAX);
        let below = bytes.get_mut(place..).unwrap_or_default();
        for (color, over) in below.iter_mut().zip(dot.0) {
            let both = (u32::from(*color) * u32::from(over) + 127).div_euclid(255);
            *color = u8::try_from(both).unwrap_or(u8::MAX);
        }
    }
}

/// The compressed rows in gray, each after a zero byte, which means no filter. Without photographs everything is gray
/// on opaque white, so any channel will do.
///
/// The rows are compressed in one piece; doing so row by row, like the encoder, takes twice the work. Letters and
/// lines on white compress better without a filter, and level 4 costs less than half of the usual 6: an Exhibit has
/// 97 KB this way, 91 KB at level 6, and 107 KB at level 6 with a filter.
fn gray(pixels: &Pixmap) -> Vec<u8> {
    const LEVEL: u8 = 4;
    let width = usize::try_from(pixels.width()).unwrap_or(1);
    let mut rows =
        Vec::with_capacity(pixels.pixels().len() + pixels.pixels().len().div_ceil(width));
    for row in pixels.pixels().chunks(width) {
        rows.push(0);
        rows.extend(row.iter().map(|dot| dot.red()));
    }
    miniz_oxide::deflate::compress_to_vec_zlib(&rows, LEVEL)
}
