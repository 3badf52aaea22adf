//! What is left of a picture on the pages.

use fairfoot::Paper;
use fairfoot::pages::{PageOptions, Pictures, Section, Sections};
use image::{ImageReader, Rgb, RgbImage};

use super::{
    SHED, all_alike, halves, inside, is_genuine, jpeg, pages, place_of, png, private, reconciled,
    with_camera_data,
};

fn decoded(bytes: &[u8]) -> RgbImage {
    let reader = ImageReader::new(std::io::Cursor::new(bytes)).with_guessed_format().unwrap();
    reader.decode().unwrap().into_rgb8()
}

fn is_red(dot: &Rgb<u8>) -> bool {
    dot.0[0] > 150 && dot.0[2] < 90
}

#[test]
fn a_picture_is_made_no_longer_than_a_page_needs_and_keeps_its_shape() {
    let pdf = pages(SHED, &jpeg(&halves(2800, 2100))).pdf().unwrap();
    let picture = decoded(inside(&pdf));
    assert_eq!((picture.width(), picture.height()), (1400, 1050));
    assert!(is_red(picture.get_pixel(100, 500)) && !is_red(picture.get_pixel(1300, 500)));
    let small = pages(SHED, &jpeg(&halves(300, 200))).pdf().unwrap();
    let picture = decoded(inside(&small));
    assert_eq!((picture.width(), picture.height()), (300, 200));
}

/// The eight ways a camera can be held, from the TIFF 6.0 orientation tag: where what was on the left of the file comes
/// to be.
#[test]
fn a_picture_is_turned_as_the_camera_was_held() {
    let left = [
        (1, "left"),
        (2, "right"),
        (3, "right"),
        (4, "left"),
        (5, "top"),
        (6, "top"),
        (7, "bottom"),
        (8, "bottom"),
    ];
    for (orientation, where_red) in left {
        let file = with_camera_data(&jpeg(&halves(400, 200)), orientation);
        let pdf = pages(SHED, &file).pdf().unwrap();
        let picture = decoded(inside(&pdf));
        let is_upright = matches!(where_red, "left" | "right");
        let size = if is_upright { (400, 200) } else { (200, 400) };
        assert_eq!((picture.width(), picture.height()), size, "{orientation}");
        let (x, y) = match where_red {
            "left" => (20, 100),
            "right" => (380, 100),
            "top" => (100, 20),
            _ => (100, 380),
        };
        assert!(is_red(picture.get_pixel(x, y)), "{orientation}");
        assert!(!is_red(picture.get_pixel(size.0 - 1 - x, size.1 - 1 - y)), "{orientation}");
    }
}

#[test]
fn where_and_when_the_camera_was_is_in_no_file() {
    let file = with_camera_data(&jpeg(&halves(400, 200)), 6);
    assert!(place_of(&file, b"WGS-84").is_some() && place_of(&file, b"2026:03:07").is_some());
    let made = pages(SHED, &file);
    let all = [vec![made.pdf().unwrap()], made.png().unwrap()].concat();
    let svg = made.svg().into_iter().map(String::into_bytes);
    for bytes in all.into_iter().chain(svg) {
        for part in [b"Exif".as_slice(), b"WGS-84", b"2026:03:07", b"RXhpZ", b"V0dTLTg0"] {
            assert!(place_of(&bytes, part).is_none(), "{}", String::from_utf8_lossy(part));
        }
    }
    // With and without what the camera adds the pages are the same.
    let bare = jpeg(&halves(400, 200));
    let upright = pages(SHED, &with_camera_data(&bare, 1)).pdf().unwrap();
    assert!(
        upright == pages(SHED, &bare).pdf().unwrap(),
        "the pages have something of the camera's"
    );
}

#[test]
fn what_can_be_seen_through_stands_on_white() {
    let clear = image::RgbaImage::from_pixel(60, 40, image::Rgba([0, 0, 0, 0]));
    let mut bytes = std::io::Cursor::new(Vec::new());
    clear.write_to(&mut bytes, image::ImageFormat::Png).unwrap();
    let pdf = pages(SHED, &bytes.into_inner()).pdf().unwrap();
    assert!(decoded(inside(&pdf)).get_pixel(30, 20).0.iter().all(|&color| color > 250));
}

#[test]
fn pages_with_photographs_are_genuine_and_need_no_picture_beside_them() {
    let made = pages(SHED, &jpeg(&halves(640, 480)));
    assert!(is_genuine(&made.pdf().unwrap()));
    for page in made.svg() {
        assert!(is_genuine(page.as_bytes()));
    }
}

#[test]
fn another_picture_in_the_place_of_one_is_found() {
    let made = pages(SHED, &jpeg(&halves(640, 480)));
    let other = pages(SHED, &jpeg(&RgbImage::from_pixel(640, 480, Rgb([9, 90, 9]))));
    let (pdf, other) = (made.pdf().unwrap(), other.pdf().unwrap());
    let picture = inside(&pdf);
    // One byte of the scan.
    let mut changed = pdf.clone();
    let at = place_of(&pdf, picture).unwrap() + picture.len() - 40;
    changed[at] ^= 1;
    assert!(!is_genuine(&changed));
    // A whole other picture, as long as the first: what is left is padded before its end.
    let (true_one, wanted) = (inside(&pdf), inside(&other));
    assert!(wanted.len() < true_one.len());
    let from = place_of(&pdf, true_one).unwrap();
    let mut swapped = pdf.clone();
    swapped[from..from + wanted.len()].copy_from_slice(wanted);
    assert!(!is_genuine(&swapped));
    // The page in SVG with the picture of another page.
    let (page, others) = (made.svg(), pages(SHED, &png(&halves(32, 32))).svg());
    let number = page.iter().position(|page| page.contains("data:image/jpeg")).unwrap();
    let cut = |page: &str| {
        let from = page.find("data:image/jpeg;base64,").unwrap();
        let to = from + page[from..].find('"').unwrap();
        page[from..to].to_owned()
    };
    let forged = page[number].replace(&cut(&page[number]), &cut(&others[number]));
    assert!(!is_genuine(forged.as_bytes()));
}

#[test]
fn the_sha256_on_the_page_is_that_of_the_picture_inside() {
    let pictures = all_alike(SHED, &jpeg(&halves(640, 480))).unwrap();
    let made = reconciled(SHED).pages_with(Paper::Letter, &pictures).unwrap();
    let pdf = made.pdf().unwrap();
    let sum = pictures.sha256("door.jpg").unwrap();
    let again = all_alike(SHED, inside(&pdf)).unwrap();
    assert_eq!(sum.len(), 64);
    let page = made.pages().iter().find(|page| page.title().contains("Photographs")).unwrap();
    assert!(page.texts().any(|text| text.words() == format!("sha256 {sum}")));
    assert!(page.texts().any(|text| text.words() == "Side 1 of Shed, west wall, 16': measured"));
    // Written once more, it may be another file, but it is still a picture.
    assert!(again.sha256("door.jpg").is_some());
}

#[test]
fn without_pictures_handed_in_there_are_no_photographs() {
    let made = reconciled(SHED).pages(Paper::Letter).unwrap();
    assert!(made.pages().iter().all(|page| !page.title().contains("Photographs")));
    assert!(is_genuine(&made.pdf().unwrap()));
}

#[test]
fn private_pages_have_neither_the_picture_nor_its_name() {
    let pictures = all_alike(SHED, &jpeg(&halves(640, 480))).unwrap();
    let made = reconciled(SHED).pages_with(private(), &pictures).unwrap();
    let pdf = made.pdf().unwrap();
    assert!(place_of(&pdf, b"DCTDecode").is_none());
    assert!(!made.sides().contains("door.jpg") && made.sides().contains("1: the door"));
    assert!(is_genuine(&pdf));
}

#[test]
fn a_choice_of_sections_can_be_the_photographs_or_all_but_them() {
    let pictures = all_alike(SHED, &jpeg(&halves(640, 480))).unwrap();
    let with = |only| {
        let options = PageOptions { only: Sections::of([only]), ..PageOptions::default() };
        reconciled(SHED).pages_with(options, &pictures).unwrap()
    };
    let photographs = with(Section::Photographs);
    assert_eq!(photographs.pages().len(), 1);
    assert!(is_genuine(&photographs.pdf().unwrap()));
    let exhibit = with(Section::Exhibit).pdf().unwrap();
    assert!(place_of(&exhibit, b"DCTDecode").is_none() && is_genuine(&exhibit));
}

/// A house whose west and north walls go up in steps, each with a picture: as many pictures as half the number.
pub(super) fn stairs(number: usize) -> String {
    let pairs = number.div_euclid(4);
    let mut text = String::from("level \"Ground floor\"\n  living \"House\"\n");
    for picture in (1..=2 * pairs).step_by(2) {
        let next = picture + 1;
        text.push_str(&format!("    north 4' photo \"{picture}\" file \"{picture}.jpg\"\n"));
        text.push_str(&format!("    east 3' photo \"{next}\" file \"{next}.jpg\"\n"));
    }
    text.push_str(&format!("    south {}'\n    west {}'\n", 4 * pairs, 3 * pairs));
    text
}

#[test]
fn many_photographs_stand_four_to_a_page() {
    let few = pages(&stairs(12), &jpeg(&halves(64, 48)));
    let many = pages(&stairs(40), &jpeg(&halves(64, 48)));
    let count = |made: &fairfoot::Pages| {
        made.pages().iter().filter(|page| page.title().contains("Photographs")).count()
    };
    // 6 photographs: three pages of two. 20: five of four.
    assert_eq!((count(&few), count(&many)), (3, 5));
    assert!(is_genuine(&few.pdf().unwrap()) && is_genuine(&many.pdf().unwrap()));
}

/// Forty large pictures of noise, which compresses worse than any photograph.
#[test]
fn forty_large_photographs_make_a_packet_under_thirty_megabytes() {
    if std::env::var_os("FAIRFOOT_FULL").is_none() {
        return;
    }
    let text = stairs(80);
    let house = reconciled(&text).house().clone();
    assert_eq!(house.pictures().count(), 40);
    let mut state = 7_u32;
    let pictures = Pictures::read(&house, |_| {
        let noise = RgbImage::from_fn(4000, 3000, |_, _| {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let [_, red, green, blue] = state.to_le_bytes();
            Rgb([red, green, blue])
        });
        Ok(jpeg(&noise))
    })
    .unwrap();
    let pdf = reconciled(&text).pages_with(Paper::Letter, &pictures).unwrap().pdf().unwrap();
    assert!(pdf.len() < 30_000_000, "{}", pdf.len());
    assert!(is_genuine(&pdf));
}

/// The left half of the picture is red and its right half blue; around it the page is white, and its frame is dark.
#[test]
fn a_page_as_png_shows_the_photograph_in_its_frame() {
    let pages = pages(SHED, &jpeg(&halves(400, 200)));
    let drawn = pages.png().unwrap();
    let with = drawn.iter().map(|page| decoded(page));
    let with: Vec<RgbImage> = with.filter(|page| page.pixels().any(is_red)).collect();
    let [page] = &with[..] else { panic!("{} pages show a photograph", with.len()) };
    let red: Vec<(u32, u32)> =
        page.enumerate_pixels().filter(|(.., dot)| is_red(dot)).map(|(x, y, _)| (x, y)).collect();
    let left = red.iter().map(|(x, _)| *x).min().unwrap();
    let middle = red.iter().map(|(x, _)| *x).max().unwrap();
    let (top, below) = (red.first().unwrap().1, red.last().unwrap().1);
    // Twice as wide as high, so that the left half is a square.
    let (wide, high) = (middle + 1 - left, below + 1 - top);
    assert!(wide.abs_diff(high) <= 3 && wide > 300, "{wide} by {high}");
    let row = top + (high >> 1);
    let blue = page.get_pixel(middle + 20, row);
    assert!(blue.0[2] > 150 && blue.0[0] < 90, "{blue:?}");
    assert_eq!(page.get_pixel(left - 10, row), &Rgb([255, 255, 255]));
    let frame = (left - 4..left + 4).map(|x| page.get_pixel(x, row).0[0]).min();
    assert!(frame.is_some_and(|darkest| darkest < 160), "{frame:?}");
}
