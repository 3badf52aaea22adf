//! Prepares a picture for a page: decodes it within limits, scales it down, turns it upright and writes it as a
//! plain JPEG.

use std::io::Cursor;

use image::codecs::jpeg::{JpegDecoder, JpegEncoder};
use image::codecs::png::PngDecoder;
use image::metadata::Orientation;
use image::{DynamicImage, ExtendedColorType, ImageDecoder, Limits, Rgb, RgbImage};

use crate::pages::pictures::{Refusal, jpeg};

/// The most bytes that a picture file may have.
pub const MOST_FILE_BYTES: usize = 40_000_000;
/// The most pixels that a picture may have, in millions: this limits the memory for decoding it, however small its
/// file.
pub const MOST_MEGAPIXELS: u32 = 50;
/// The memory that decoding may use in addition, in bytes.
const MOST_UNPACKED_BYTES: u64 = 210_000_000;
/// The longer edge of a picture on a page, in pixels: 200 per inch at the width of a page.
pub(super) const MOST_EDGE_PX: u32 = 1_400;
/// The most bytes of a picture on a page; 40 of them are 24 MB.
pub(super) const MOST_BYTES: usize = 600_000;
/// The JPEG qualities that are tried, best first, until a picture is small enough.
const QUALITIES: [u8; 4] = [82, 70, 55, 40];

const SMALLER: &str = "save it smaller: a page shows no more than 1,400 pixels across";
const AGAIN: &str = "copy it again from the camera, or open it and save it again as JPEG";

/// Prepares a picture file for a page and returns it as a plain JPEG.
///
/// # Errors
///
/// A [`Refusal`] if the file is not a JPEG or PNG picture, is damaged, or is too large.
pub(super) fn prepared(file: &[u8]) -> Result<Vec<u8>, Refusal> {
    if file.len() > MOST_FILE_BYTES {
        return Err(Refusal::of("has more than 40 MB", SMALLER));
    }
    let (dots, orientation) = decoded(file)?;
    let mut small = smaller(dots);
    small.apply_orientation(orientation);
    written(&on_white(small))
}

/// The decoded picture and the orientation of the camera.
fn decoded(file: &[u8]) -> Result<(DynamicImage, Orientation), Refusal> {
    if file.starts_with(b"\x89PNG\r\n\x1a\n") {
        let limits = limits();
        let decoder = PngDecoder::with_limits(Cursor::new(file), limits).map_err(|_| damaged())?;
        return within_limits(decoder);
    }
    if !file.starts_with(&jpeg::START) {
        return Err(not_a_picture(file));
    }
    if !jpeg::is_whole(file) {
        return Err(Refusal::of("is cut off: its end is missing", AGAIN));
    }
    within_limits(JpegDecoder::new(Cursor::new(file)).map_err(|_| damaged())?)
}

/// The pixels of a picture that was prepared before.
pub(super) fn dots(plain: &[u8]) -> Option<RgbImage> {
    let (dots, _) = decoded(plain).ok()?;
    Some(dots.into_rgb8())
}

fn limits() -> Limits {
    let mut limits = Limits::no_limits();
    limits.max_alloc = Some(MOST_UNPACKED_BYTES);
    limits
}

fn within_limits(mut decoder: impl ImageDecoder) -> Result<(DynamicImage, Orientation), Refusal> {
    let (width, height) = decoder.dimensions();
    let most = u64::from(MOST_MEGAPIXELS) * 1_000_000;
    let is_too_large = u64::from(width) * u64::from(height) > most;
    if is_too_large || decoder.total_bytes() > MOST_UNPACKED_BYTES {
        let (width, height) = (thousands(width), thousands(height));
        return Err(Refusal::of(
            format!("is too large to be unpacked: {width} by {height} pixels"),
            SMALLER,
        ));
    }
    decoder.set_limits(limits()).map_err(|_| damaged())?;
    let orientation = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let dots = DynamicImage::from_decoder(decoder).map_err(|_| damaged())?;
    Ok((dots, orientation))
}

fn thousands(number: u32) -> String {
    crate::units::thousands(i64::from(number))
}

/// The refusal of a file that has all parts of its format but cannot be decoded.
pub(super) fn damaged() -> Refusal {
    Refusal::of("is damaged and cannot be read", AGAIN)
}

/// The refusal of a file that is neither JPEG nor PNG, naming the format that its first bytes suggest.
fn not_a_picture(file: &[u8]) -> Refusal {
    let begins = |with: &[u8]| file.starts_with(with);
    let what = if file.is_empty() {
        "is empty"
    } else if file.get(4..8) == Some(b"ftyp") {
        "is not JPEG inside (HEIC, AVIF or a video)"
    } else if begins(b"GIF8") {
        "is a GIF picture"
    } else if begins(b"RIFF") {
        "is a WebP picture"
    } else if begins(b"BM") {
        "is a BMP picture"
    } else if begins(b"II*\0") || begins(b"MM\0*") {
        "is a TIFF or raw picture"
    } else if begins(b"%PDF") {
        "is a PDF"
    } else {
        "is not a JPEG or PNG picture"
    };
    Refusal::of(what, "open it, save it as JPEG, and name that file")
}

/// The picture scaled down so that its longer edge is no longer than a page needs; each pixel is the mean of those
/// it replaces.
fn smaller(dots: DynamicImage) -> DynamicImage {
    if dots.width().max(dots.height()) <= MOST_EDGE_PX {
        return dots;
    }
    dots.thumbnail(MOST_EDGE_PX, MOST_EDGE_PX)
}

/// The picture in RGB, with transparent parts on white.
fn on_white(dots: DynamicImage) -> RgbImage {
    if !dots.color().has_alpha() {
        return dots.into_rgb8();
    }
    let dots = dots.into_rgba8();
    RgbImage::from_fn(dots.width(), dots.height(), |x, y| {
        let [red, green, blue, seen] = dots.get_pixel(x, y).0;
        let over = |color: u8| {
            let sum = u32::from(color) * u32::from(seen) + 255 * (255 - u32::from(seen));
            u8::try_from((sum + 127).div_euclid(255)).unwrap_or(255)
        };
        Rgb([over(red), over(green), over(blue)])
    })
}

/// The picture as JPEG, in the best quality that is small enough.
fn written(dots: &RgbImage) -> Result<Vec<u8>, Refusal> {
    for quality in QUALITIES {
        let bytes = in_quality(dots, quality)?;
        if bytes.len() <= MOST_BYTES {
            return Ok(bytes);
        }
    }
    // A picture that is still too large is mostly noise: halve its width and height.
    let half = |px: u32| px.div_euclid(2).max(1);
    let half = image::imageops::thumbnail(dots, half(dots.width()), half(dots.height()));
    in_quality(&half, QUALITIES[QUALITIES.len() - 1])
}

fn in_quality(dots: &RgbImage, quality: u8) -> Result<Vec<u8>, Refusal> {
    let mut bytes = Vec::new();
    JpegEncoder::new_with_quality(&mut bytes, quality)
        .encode(dots.as_raw(), dots.width(), dots.height(), ExtendedColorType::Rgb8)
        .map_err(|_| damaged())?;
    Ok(bytes)
}
