//! A scale ruler works on the printed page: lengths in the PDF, in points, are the sides at the stated scale.

use fairfoot::Settings;
use fairfoot::pages::Part;
use lopdf::content::Content;
use lopdf::{Document, Object};

use super::{pages, sketches};

type Matrix = [f64; 6];

fn times(a: Matrix, b: Matrix) -> Matrix {
    [
        a[0] * b[0] + a[1] * b[2],
        a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2],
        a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4],
        a[4] * b[1] + a[5] * b[3] + b[5],
    ]
}

fn numbers(operands: &[Object]) -> Vec<f64> {
    operands.iter().filter_map(|operand| operand.as_float().ok().map(f64::from)).collect()
}

/// A straight line: both ends in points, from the left and from the top of the paper.
type Stretch = [(f64, f64); 2];

fn length([from, to]: Stretch) -> f64 {
    (to.0 - from.0).hypot(to.1 - from.1)
}

/// All straight lines on a page of a PDF.
fn stretches(document: &Document, number: u32) -> Vec<Stretch> {
    let page = document.get_pages()[&number];
    let sheet = document.get_dictionary(page).unwrap().get(b"MediaBox").unwrap();
    let height = numbers(sheet.as_array().unwrap())[3];
    let content = Content::decode(&document.get_page_content(page)).unwrap();
    let mut now: Matrix = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];
    let (mut kept, mut at, mut first) = (Vec::new(), (0.0, 0.0), (0.0, 0.0));
    let mut stretches: Vec<Stretch> = Vec::new();
    for operation in content.operations {
        let n = numbers(&operation.operands);
        let spot = |x: f64, y: f64, now: Matrix| {
            // A PDF counts from the bottom of the paper.
            (x * now[0] + y * now[2] + now[4], height - (x * now[1] + y * now[3] + now[5]))
        };
        match operation.operator.as_str() {
            "q" => kept.push(now),
            "Q" => now = kept.pop().unwrap(),
            "cm" => now = times([n[0], n[1], n[2], n[3], n[4], n[5]], now),
            "m" => {
                at = spot(n[0], n[1], now);
                first = at;
            }
            "l" => {
                let to = spot(n[0], n[1], now);
                stretches.push([at, to]);
                at = to;
            }
            // A curve is no straight line, but the next line begins at its end.
            "c" => at = spot(n[4], n[5], now),
            "v" | "y" => at = spot(n[2], n[3], now),
            "h" => {
                stretches.push([at, first]);
                at = first;
            }
            _ => {}
        }
    }
    stretches
}

/// The walls on a page of a PDF: the lines of outlines, each drawn in the PDF between the same two points.
fn walls(page: &fairfoot::pages::Page, document: &Document, number: u32) -> Vec<Stretch> {
    let drawn = stretches(document, number);
    let is_near = |a: (f64, f64), b: (f64, f64)| (a.0 - b.0).hypot(a.1 - b.1) < 0.05;
    let is_in_pdf = |[from, to]: &Stretch| {
        drawn.iter().any(|[a, b]| {
            is_near(*a, *from) && is_near(*b, *to) || is_near(*a, *to) && is_near(*b, *from)
        })
    };
    let lines = page.lines(Part::Outline).into_iter();
    let walls = lines.map(|(from, to)| [(from.x_pt, from.y_pt), (to.x_pt, to.y_pt)]);
    walls.filter(is_in_pdf).collect()
}

#[test]
fn every_straight_wall_is_to_scale_in_the_pdf() {
    for (name, text) in sketches() {
        let result = super::worked_out(&text);
        let checked = result.house();
        let pages = pages(&text);
        let areas = checked.areas(&Settings::default()).unwrap();
        let document = Document::load_mem(&pages.pdf().unwrap()).unwrap();
        let drawn: Vec<(f64, Vec<Stretch>)> = pages
            .pages()
            .iter()
            .zip(1..)
            .flat_map(|(page, number)| {
                let insets = page.inset_scales_pt_per_ft().iter().copied();
                let scales: Vec<f64> = page.scale_pt_per_ft().into_iter().chain(insets).collect();
                scales
                    .into_iter()
                    .map(|scale| (scale, walls(page, &document, number)))
                    .collect::<Vec<_>>()
            })
            .collect();
        let mut looked_at = 0;
        for (space, areas) in checked.spaces().iter().zip(areas.spaces()) {
            let corners = areas.outside().corners();
            for (side, (a, b)) in
                space.sides().iter().zip(corners.iter().zip(corners.iter().cycle().skip(1)))
            {
                if side.way() == "arc" || corners.len() != space.sides().len() {
                    continue;
                }
                let feet = (b.east - a.east).feet().hypot((b.north - a.north).feet());
                let found = drawn.iter().any(|(scale, walls)| {
                    walls.iter().any(|wall| (length(*wall) - feet * scale).abs() < 0.1)
                });
                assert!(found, "{name}, {} of {}: {feet} ft", side.typed(), space.name());
                looked_at += 1;
            }
        }
        assert!(looked_at > 0 || checked.spaces().is_empty(), "{name}");
    }
}

#[test]
fn an_eighth_of_an_inch_on_paper_is_a_foot() {
    // 72 points are an inch; 1/8 in = 1 ft is 9 points a foot: 43' 7" are 392.25 points.
    let pages = pages(&super::sketch("plain-rectangle"));
    assert_eq!(pages.pages()[0].scale_pt_per_ft(), Some(9.0));
    let document = Document::load_mem(&pages.pdf().unwrap()).unwrap();
    let walls = walls(&pages.pages()[0], &document, 1);
    assert!(walls.iter().any(|wall| (length(*wall) - 392.25).abs() < 0.05));
}

/// 1:100 on paper is 72 ÷ 25.4 × 3.048 = 8.64 points per foot.
#[test]
fn a_house_in_meters_is_drawn_at_the_scale_of_a_metric_ruler() {
    let metric =
        "level \"Ground floor\"\nliving \"House\"\nnorth 9 m\neast 12 m\nsouth 9 m\nwest 12 m\n";
    for (text, is_metric) in [
        (metric.to_owned(), true),
        // An American office has an architect's ruler.
        (format!("place texas\n{metric}"), false),
        (super::sketch("plain-rectangle"), false),
    ] {
        let pages = super::pages(&text);
        let page = &pages.pages()[0];
        let scale =
            super::words(page).into_iter().find(|words| words.starts_with("Scale ")).unwrap();
        assert_eq!(scale.starts_with("Scale 1:"), is_metric, "{scale}");
        assert_eq!(scale.contains("in = 1 ft"), !is_metric, "{scale}");
        if is_metric {
            let ratio = scale.trim_start_matches("Scale 1:").split(',').next().unwrap();
            let ratio: f64 = ratio.parse().unwrap();
            assert!(
                (page.scale_pt_per_ft().unwrap() - 8.64 * 100.0 / ratio).abs() < 1e-9,
                "{scale}"
            );
        }
    }
}
