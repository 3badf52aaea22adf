//! Photographs: what is accepted as a picture, what is left of it on the pages, and what `verify` says about both.

mod command;
mod hostile;
mod made;

use fairfoot::pages::{PageOptions, Pictures};
use fairfoot::{Pages, Paper, Reconciliation, Settings, Weights, verify};
use image::codecs::jpeg::JpegEncoder;
use image::{ExtendedColorType, ImageFormat, Rgb, RgbImage};

/// A shed with a picture of one wall.
pub(crate) const SHED: &str = "level \"Ground floor\"\n  living \"Shed\"\n    north 16' photo \"1: the door\" file \"door.jpg\" # in May\n    east 20'\n    south 16' note \"behind the fence\"\n    west 20'\n";

pub(crate) fn reconciled(text: &str) -> Reconciliation {
    let house = fairfoot::read("shed.sides", text).expect("a house");
    let areas = house.areas(&Settings::default()).expect("areas");
    areas.reconcile(&Weights::default()).expect("steps")
}

/// The pictures of a text that all have these bytes.
pub(crate) fn all_alike(text: &str, bytes: &[u8]) -> Result<Pictures, fairfoot::Diagnostics> {
    Pictures::read(reconciled(text).house(), |_| Ok(bytes.to_vec()))
}

pub(crate) fn pages(text: &str, bytes: &[u8]) -> Pages {
    let pictures = all_alike(text, bytes).expect("a picture");
    reconciled(text).pages_with(Paper::Letter, &pictures).expect("pages")
}

/// A picture whose left half is red and whose right half is blue.
pub(crate) fn halves(width: u32, height: u32) -> RgbImage {
    RgbImage::from_fn(width, height, |x, _| {
        if x < width >> 1 { Rgb([220, 20, 20]) } else { Rgb([20, 20, 220]) }
    })
}

pub(crate) fn jpeg(picture: &RgbImage) -> Vec<u8> {
    let mut bytes = Vec::new();
    let size = (picture.width(), picture.height());
    JpegEncoder::new_with_quality(&mut bytes, 90)
        .encode(picture.as_raw(), size.0, size.1, ExtendedColorType::Rgb8)
        .expect("a JPEG");
    bytes
}

pub(crate) fn png(picture: &RgbImage) -> Vec<u8> {
    let mut bytes = std::io::Cursor::new(Vec::new());
    picture.write_to(&mut bytes, ImageFormat::Png).expect("a PNG");
    bytes.into_inner()
}

/// What a camera adds after the start of a JPEG: EXIF (CIPA DC-008) with how it was held, the time, and a place.
pub(crate) fn with_camera_data(picture: &[u8], orientation: u8) -> Vec<u8> {
    let mut tiff = b"MM\0*\0\0\0\x08".to_vec();
    // Three entries: orientation, the time as text, where the place begins.
    tiff.extend_from_slice(&[0, 3]);
    tiff.extend_from_slice(&[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0]);
    tiff.extend_from_slice(&[0x01, 0x32, 0, 2, 0, 0, 0, 20, 0, 0, 0, 50]);
    tiff.extend_from_slice(&[0x88, 0x25, 0, 4, 0, 0, 0, 1, 0, 0, 0, 70]);
    tiff.extend_from_slice(&[0, 0, 0, 0]);
    assert_eq!(tiff.len(), 50);
    tiff.extend_from_slice(b"2026:03:07 10:11:12\0");
    // The place: one entry, the datum as text.
    tiff.extend_from_slice(&[0, 1, 0, 0x12, 0, 2, 0, 0, 0, 7, 0, 0, 0, 88, 0, 0, 0, 0]);
    tiff.extend_from_slice(b"WGS-84\0");
    let content = [b"Exif\0\0".as_slice(), &tiff].concat();
    let length = u16::try_from(content.len() + 2).expect("a short segment");
    [&picture[..2], &[0xff, 0xe1], &length.to_be_bytes(), &content, &picture[2..]].concat()
}

/// The first JPEG that is in a PDF unchanged.
pub(crate) fn inside(pdf: &[u8]) -> &[u8] {
    let begins = place_of(pdf, &[0xff, 0xd8, 0xff, 0xe0]).expect("a JPEG");
    let ends = place_of(&pdf[begins..], b"\nendstream").expect("its end");
    &pdf[begins..begins + ends]
}

pub(crate) fn place_of(bytes: &[u8], part: &[u8]) -> Option<usize> {
    bytes.windows(part.len()).position(|window| window == part)
}

pub(crate) fn is_genuine(bytes: &[u8]) -> bool {
    verify::file(bytes).is_ok_and(|answer| answer.is_genuine())
}

pub(crate) fn private() -> PageOptions {
    PageOptions { private: true, ..PageOptions::default() }
}
