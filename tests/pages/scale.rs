//! A scale ruler works on the printed page: lengths in the PDF, in points, are the sides at the stated scale.

use fairfoot::Settings;
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

/// The lengths of all straight lines on a page of a PDF, in points of the paper.
fn lengths(document: &Document, number: u32) -> Vec<f64> {
    let page = document.get_pages()[&number];
    let content = Content::decode(&document.get_page_content(page)).unwrap();
    let mut now: Matrix = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];
    let (mut kept, mut at, mut first) = (Vec::new(), (0.0, 0.0), (0.0, 0.0));
    let mut lengths = Vec::new();
    for operation in content.operations {
        let n = numbers(&operation.operands);
        let spot = |x: f64, y: f64, now: Matrix| {
            (x * now[0] + y * now[2] + now[4], x * now[1] + y * now[3] + now[5])
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
                lengths.push((to.0 - at.0).hypot(to.1 - at.1));
                at = to;
            }
            "h" => lengths.push((first.0 - at.0).hypot(first.1 - at.1)),
            _ => {}
        }
    }
    lengths
}

#[test]
fn every_straight_wall_is_to_scale_in_the_pdf() {
    for (name, text) in sketches() {
        let result = super::worked_out(&text);
        let checked = result.house();
        let pages = pages(&text);
        let areas = checked.areas(&Settings::default()).unwrap();
        let document = Document::load_mem(&pages.pdf().unwrap()).unwrap();
        let drawn: Vec<(f64, Vec<f64>)> = pages
            .pages()
            .iter()
            .zip(1..)
            .flat_map(|(page, number)| {
                let insets = page.inset_scales_pt_per_ft().iter().copied();
                let scales: Vec<f64> = page.scale_pt_per_ft().into_iter().chain(insets).collect();
                scales
                    .into_iter()
                    .map(|scale| (scale, lengths(&document, number)))
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
                let found = drawn.iter().any(|(scale, lengths)| {
                    lengths.iter().any(|points| (points - feet * scale).abs() < 0.1)
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
    // 72 points are an inch; 1/8 in = 1 ft is 9 points a foot: 46' 2" are 415.5 points.
    let pages = pages(&super::sketch("angled-bay"));
    assert_eq!(pages.pages()[0].scale_pt_per_ft(), Some(9.0));
    let document = Document::load_mem(&pages.pdf().unwrap()).unwrap();
    assert!(lengths(&document, 1).iter().any(|points| (points - 415.5).abs() < 0.05));
}
