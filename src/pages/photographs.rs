//! Pages with the pictures that the file names, two or four to a page, each with its wall.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::house::WallPicture;
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::layout::{EDGE_PT, Flow, Stack, moved};
use crate::pages::page::{Anchor, Ink, Photograph, Point, Role, Stroke, Text};
use crate::pages::pictures::{Picture, Pictures};
use crate::reconcile::Reconciliation;
use crate::units::decimal::thousands;
use crate::wording::photographs::ABOUT;
use crate::wording::sentences::Sentences;

/// Up to this many photographs are set two to a page, more of them four to a page.
const MOST_LARGE: usize = 6;
/// The distance between two photographs, in points.
const BETWEEN_PT: f64 = 14.0;
/// The height of the words below a photograph, in points.
const WORDS_PT: f64 = 58.0;
/// The largest height of the text above the photographs of the first page, in points.
const ABOVE_PT: f64 = 42.0;

/// How many inks a photograph is, with its frame.
const SEEN: usize = 2;

/// Fills the pages of photographs. Their number depends only on the sides file, so that one page of a set can be
/// regenerated without the photographs of the others.
pub(crate) fn photographs(
    flow: &mut Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    pictures: &Pictures,
) {
    let walls: Vec<WallPicture<'_>> = say.house.pictures().collect();
    if walls.is_empty() {
        return;
    }
    let columns = if walls.len() > MOST_LARGE { 2 } else { 1 };
    let slot = Slot::of(flow, columns);
    // Two rows fill a page. An odd one goes below what stands on the page, if it fits there.
    let rows = walls.len().div_ceil(columns);
    match rows % 2 {
        1 => flow.go_on("Photographs", ABOUT, ABOVE_PT + slot.height_pt),
        _ => flow.begin("Photographs", ABOUT),
    }
    let mut above = Stack::new(flow.width_pt());
    above.paragraph(8.5, ABOUT);
    flow.pour(&above);
    flow.down((ABOVE_PT - above.height_pt()).max(4.0));
    for row in walls.chunks(columns) {
        flow.need(slot.height_pt);
        for (wall, left) in row.iter().zip([0.0, slot.width_pt + BETWEEN_PT]) {
            let inks = slot.filled(say, reconciliation, wall, pictures.of_file(wall.file()));
            let mut inks = moved(&inks, EDGE_PT + left, flow.y_pt());
            let words = inks.split_off(SEEN);
            let told = say.photographed(reconciliation, wall);
            let alt = format!("Photograph: {}. {told}.", wall.caption());
            flow.put(inks, Role::Figure(fonts::shown(&alt)));
            for line in words {
                flow.put(vec![line], Role::Paragraph);
            }
            flow.tell(&format!("Photograph: {}. {told}.", wall.caption()));
        }
        flow.down(slot.height_pt);
    }
}

/// The rectangle for a photograph and the words below it.
struct Slot {
    width_pt: f64,
    height_pt: f64,
}

impl Slot {
    /// The slot for a photograph, so that two rows fit on a page, even on the first one, which has text above them.
    fn of(flow: &Flow, columns: usize) -> Slot {
        let height_pt = (flow.whole_page_pt() - ABOVE_PT - 6.0) / 2.0;
        let width_pt = match columns {
            1 => flow.width_pt(),
            _ => (flow.width_pt() - BETWEEN_PT) / 2.0,
        };
        Slot { width_pt, height_pt }
    }

    /// The photograph with its words, relative to the top left corner of the slot.
    fn filled(
        &self,
        say: &Sentences<'_>,
        reconciliation: &Reconciliation,
        wall: &WallPicture<'_>,
        picture: Option<&Picture>,
    ) -> Vec<Ink> {
        let told = say.photographed(reconciliation, wall);
        let (mut inks, bottom) = self.seen(wall.caption(), &told, picture);
        let mut y_pt = bottom + 11.0;
        let mut line = |size_pt: f64, hand: Typeface, words: &str, most: usize| {
            let words = fonts::shown(words);
            let mut lines = fonts::wrapped(hand, size_pt, &words, self.width_pt);
            if lines.len() > most {
                lines.truncate(most);
                if let Some(last) = lines.last_mut() {
                    *last = fonts::shortened(hand, size_pt, &format!("{last} …"), self.width_pt);
                }
            }
            for words in lines {
                inks.push(Ink::Text(
                    Text::new(Point::new(0.0, y_pt), size_pt, words).in_hand(hand),
                ));
                y_pt += size_pt * 1.25;
            }
        };
        line(9.0, Typeface::Bold, wall.caption(), 1);
        line(8.0, Typeface::Plain, &told, 2);
        let file = match picture {
            Some(picture) => {
                let (width, height) = picture.size_px();
                let [width, height] = [width, height].map(|px| thousands(i64::from(px)));
                format!("{}, here {width} × {height} pixels", wall.file())
            }
            None => wall.file().to_owned(),
        };
        line(6.8, Typeface::Plain, &file, 1);
        if let Some(picture) = picture {
            line(6.0, Typeface::Plain, &format!("sha256 {}", picture.sha256()), 1);
        }
        inks
    }

    /// The photograph in its frame, as large as fits, or an empty frame without one; and where it ends, in points.
    fn seen(&self, caption: &str, told: &str, picture: Option<&Picture>) -> (Vec<Ink>, f64) {
        let room = (self.width_pt, self.height_pt - WORDS_PT);
        let (width_pt, height_pt) = picture.map_or((room.0 / 2.0, room.1), |picture| {
            let (width, height) = picture.size_px();
            let (width, height) = (f64::from(width), f64::from(height));
            let scale = (room.0 / width).min(room.1 / height);
            (width * scale, height * scale)
        });
        let corners =
            [(0.0, 0.0), (width_pt, 0.0), (width_pt, height_pt), (0.0, height_pt), (0.0, 0.0)];
        let frame = Stroke::along(&corners.map(|(x_pt, y_pt)| Point::new(x_pt, y_pt)), 0.5);
        let seen = match picture {
            Some(picture) => Ink::Photograph(Photograph {
                at: Point::new(0.0, 0.0),
                width_pt,
                height_pt,
                picture: picture.clone(),
                told: fonts::shown(&format!("Photograph: {caption}. {told}.")),
            }),
            None => {
                let at = Point::new(width_pt / 2.0, height_pt / 2.0);
                let text = Text::new(at, 8.0, "not in this file");
                Ink::Text(text.anchored(Anchor::Middle))
            }
        };
        (vec![seen, Ink::Stroke(frame)], height_pt)
    }
}
