//! Pictures that are cut off, damaged, of another kind or larger than they say, and names that lead elsewhere.

use fairfoot::pages::Pictures;
use proptest::prelude::*;

use super::{SHED, all_alike, halves, jpeg, png, reconciled, with_camera_data};

/// What is said about a picture with these bytes.
fn refused(bytes: &[u8]) -> String {
    match all_alike(SHED, bytes) {
        Ok(pictures) => panic!("taken: {pictures:?}"),
        Err(errors) => {
            let [only] = errors.list() else { panic!("{errors}") };
            assert_eq!(only.word().as_str(), "bad-picture");
            assert_eq!(
                errors.source().text().lines().nth(2).map(|line| line.contains("door.jpg")),
                Some(true)
            );
            assert!(errors.to_string().contains("shed.sides:3:"), "{errors}");
            only.message().to_owned()
        }
    }
}

#[test]
fn a_picture_that_is_cut_off_anywhere_is_refused() {
    let whole = with_camera_data(&jpeg(&halves(200, 150)), 1);
    for part in 1..40 {
        let cut = &whole[..(whole.len() * part).div_euclid(40)];
        let said = refused(cut);
        assert!(said.contains("is cut off") || said.contains("is not a JPEG or PNG"), "{said}");
    }
    // The last two bytes are its end.
    assert!(refused(&whole[..whole.len() - 1]).contains("is cut off: its end is missing"));
    let whole = png(&halves(200, 150));
    for part in 1..20 {
        let said = refused(&whole[..(whole.len() * part).div_euclid(20)]);
        assert!(said.contains("is damaged") || said.contains("is not a JPEG or PNG"), "{said}");
    }
}

#[test]
fn a_second_picture_after_the_end_is_left_out() {
    let first = jpeg(&halves(200, 150));
    let two = [first.clone(), jpeg(&halves(90, 60))].concat();
    assert_eq!(
        all_alike(SHED, &two).unwrap().sha256("door.jpg"),
        all_alike(SHED, &first).unwrap().sha256("door.jpg")
    );
}

/// A PNG of a few hundred bytes that says it has 60,000 by 60,000 pixels (its checksum is right: ISO/IEC 15948).
#[test]
fn a_picture_that_would_unpack_to_gigabytes_is_refused_unopened() {
    let mut bomb = png(&halves(20, 20));
    bomb[16..24].copy_from_slice(&[0, 0, 0xea, 0x60, 0, 0, 0xea, 0x60]);
    let sum = crc32(&bomb[12..29]);
    bomb[29..33].copy_from_slice(&sum.to_be_bytes());
    assert!(refused(&bomb).contains("is too large to be unpacked: 60,000 by 60,000 pixels"));
    // The same for a JPEG: the size is in its frame, after the marker FF C0.
    let mut bomb = jpeg(&halves(20, 20));
    let frame = bomb.windows(2).position(|pair| pair == [0xff, 0xc0]).unwrap();
    bomb[frame + 5..frame + 9].copy_from_slice(&[0xfd, 0xe8, 0xfd, 0xe8]);
    assert!(refused(&bomb).contains("is too large to be unpacked: 65,000 by 65,000 pixels"));
}

/// The checksum of PNG, bit by bit (ISO/IEC 15948, annex D).
fn crc32(bytes: &[u8]) -> u32 {
    let mut sum = u32::MAX;
    for &byte in bytes {
        sum ^= u32::from(byte);
        for _ in 0..8 {
            sum = if sum & 1 == 1 { (sum >> 1) ^ 0xedb8_8320 } else { sum >> 1 };
        }
    }
    !sum
}

#[test]
fn what_is_no_jpeg_or_png_inside_is_named_for_what_it_is() {
    let kinds: [(&[u8], &str); 9] = [
        (b"", "is empty"),
        (b"\0\0\0\x18ftypheic\0\0\0\0", "is not JPEG inside (HEIC, AVIF or a video)"),
        (b"GIF89a\x01\0\x01\0", "is a GIF picture"),
        (b"RIFF\x10\0\0\0WEBPVP8 ", "is a WebP picture"),
        (b"BM\x10\0\0\0", "is a BMP picture"),
        (b"II*\0\x08\0\0\0", "is a TIFF or raw picture"),
        (b"%PDF-1.7\n", "is a PDF"),
        (b"<!doctype html><script>", "is not a JPEG or PNG picture"),
        (b"<svg xmlns=\"http://www.w3.org/2000/svg\"/>", "is not a JPEG or PNG picture"),
    ];
    for (bytes, what) in kinds {
        assert_eq!(refused(bytes), format!("the picture `door.jpg` {what}"));
    }
}

#[test]
fn a_png_under_the_name_of_a_jpeg_is_taken_for_what_it_is() {
    assert!(all_alike(SHED, &png(&halves(60, 40))).is_ok());
}

#[test]
fn more_than_forty_megabytes_are_refused() {
    assert!(refused(&vec![0xff; 40_000_001]).contains("has more than 40 MB"));
}

#[test]
fn all_errors_of_pictures_are_told_at_once_and_each_file_is_asked_for_once() {
    let text = SHED
        .replace("east 20'", "east 20' photo \"2\" file \"rear.png\"")
        .replace("west 20'", "west 20' photo \"3\" file \"door.jpg\"");
    let mut asked = Vec::new();
    let errors = Pictures::read(reconciled(&text).house(), |file| {
        asked.push(file.to_owned());
        Err("is not beside the sides file".to_owned())
    })
    .unwrap_err();
    assert_eq!(asked, ["door.jpg", "rear.png"]);
    assert_eq!(errors.list().len(), 3);
}

#[test]
fn a_name_that_leads_elsewhere_is_an_error_of_the_file() {
    for name in [
        "../door.jpg",
        "/etc/door.jpg",
        "a/door.jpg",
        "a\\door.jpg",
        "C:door.jpg",
        ".door.jpg",
        "door.heic",
        "door",
        "door.jpg.exe",
    ] {
        let text = SHED.replace("door.jpg", name);
        let errors = fairfoot::read("shed.sides", text).unwrap_err();
        assert_eq!(errors.list()[0].word().as_str(), "bad-picture", "{name}");
    }
    for name in ["DOOR.JPG", "door.jpeg", "the door (2).png", "Tür.jpg"] {
        assert!(fairfoot::read("shed.sides", SHED.replace("door.jpg", name)).is_ok(), "{name}");
    }
}

#[test]
fn more_than_forty_pictures_are_too_many() {
    let text = super::made::stairs(84);
    let errors = fairfoot::read("house.sides", text.as_str()).unwrap_err();
    assert_eq!(errors.list()[0].message(), "the file has 42 pictures, and 40 is the most");
    assert!(fairfoot::read("house.sides", super::made::stairs(80)).is_ok());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate::cases(2_000)))]

    /// Whatever is done to its bytes, a picture is refused or accepted, and what is accepted makes pages.
    #[test]
    fn damaged_pictures_stop_nothing(
        is_png in any::<bool>(),
        changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..12),
        cut in prop::option::of(any::<prop::sample::Index>()),
    ) {
        let picture = halves(48, 40);
        let mut bytes = if is_png { png(&picture) } else { with_camera_data(&jpeg(&picture), 6) };
        for (at, byte) in changes {
            let at = at.index(bytes.len());
            bytes[at] = byte;
        }
        if let Some(cut) = cut {
            bytes.truncate(cut.index(bytes.len()));
        }
        if let Ok(pictures) = all_alike(SHED, &bytes) {
            let made = reconciled(SHED).pages_with(fairfoot::Paper::Letter, &pictures).unwrap();
            prop_assert!(made.pdf().is_ok());
        }
    }
}
