//! A page as PNG, at 150 dots per inch, so that it prints at full size.
#![expect(clippy::float_arithmetic, reason = "the size of a page in dots")]

use resvg::tiny_skia::{Pixmap, Transform};

use crate::error::Error;

/// Dots per inch.
const DOTS_AN_INCH: f32 = 150.0;
/// Dots per meter, for the file's header.
const DOTS_A_METER: u32 = 5906;

/// Renders a page; one with photographs in color.
pub(crate) fn written(tree: &usvg::Tree, is_colored: bool) -> Result<Vec<u8>, Error> {
    let scale = DOTS_AN_INCH / 96.0;
    let (width, height) = (dots(tree.size().width() * scale), dots(tree.size().height() * scale));
    let mut pixels = Pixmap::new(width, height)
        .ok_or_else(|| Error::Drawing("a page has no size".to_owned()))?;
    resvg::render(tree, Transform::from_scale(scale, scale), &mut pixels.as_mut());
    encoded(&pixels, is_colored).map_err(|error| Error::Drawing(error.to_string()))
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a page has a few thousand dots"
)]
fn dots(length: f32) -> u32 {
    length.round().clamp(1.0, 20_000.0) as u32
}

/// Encodes the pixels in grayscale, since a page is black on white, or in color for photographs.
fn encoded(pixels: &Pixmap, is_colored: bool) -> Result<Vec<u8>, png::EncodingError> {
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
        let bytes: Vec<u8> = dots.flat_map(|dot| [dot.red(), dot.green(), dot.blue()]).collect();
        writer.write_image_data(&bytes)?;
    } else {
        writer.write_chunk(png::chunk::IDAT, &gray(pixels))?;
    }
    writer.finish()?;
    Ok(out)
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
