//! The Calculations: every number traced from the tape to the page, every area piece by piece, the totals, their
//! uncertainty, the method, and a declaration to sign.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::diagnostic::words;
use crate::pages::blocks;
use crate::pages::exhibit::Moved;
use crate::pages::fonts::Typeface;
use crate::pages::layout::{Column, Flow, Line, Row, Stack};
use crate::pages::page::{Ink, Point, Run, Stroke, Text};
use crate::pages::pieces::{FEET_HEAD, fine_head, pieces};
use crate::pages::side_table::{how, side_table};
use crate::reconcile::Reconciliation;
use crate::units::area::Area;
use crate::units::decimal::thousands;
use crate::units::length::{Halves, Step};
use crate::wording::sentences::{Sentences, range_text, rounded_float, the, whole};

/// Fills the pages of the Calculations.
pub(crate) fn calculations(
    flow: &mut Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    moved: &Moved,
) {
    flow.go_on(
        "Calculations",
        "Every side from the tape to the page, every area piece by piece, how sure it is, the method and its sources",
        150.0,
    );
    let mut stack = Stack::new(flow.width_pt());
    in_full(&mut stack, say, reconciliation, moved);
    side_table(&mut stack, say, reconciliation);
    flow.pour(&stack);
    pieces(flow, say);
    let mut stack = Stack::new(flow.width_pt());
    totals(&mut stack, say);
    certainty(&mut stack, say, reconciliation);
    method(&mut stack, say);
    declaration(&mut stack, say);
    flow.pour(&stack);
}

/// What was cut on the Exhibit, in full.
fn in_full(stack: &mut Stack, say: &Sentences<'_>, reconciliation: &Reconciliation, moved: &Moved) {
    if let Some(figure) = reconciliation.figures().first().filter(|_| moved.is_cut) {
        stack.heading(&format!("{}, in full", say.steps_title(figure)));
        blocks::set(stack, &say.steps(figure), blocks::USUAL);
        stack.space(3.0);
        blocks::set(stack, &say.possible(figure), blocks::USUAL);
        stack.paragraph(8.0, &say.request(reconciliation, figure));
    }
    if !moved.notes.is_empty() {
        stack.heading("More notes on the drawing of the Exhibit");
        stack.paragraph(7.4, &format!("{}.", moved.notes.join("; ")));
    }
}

/// What is counted and what is deducted, with the printed totals.
fn totals(stack: &mut Stack, say: &Sentences<'_>) {
    let house = say.house;
    for (below, total) in [(false, Some(say.areas.gross())), (true, say.areas.below_grade())] {
        let Some(total) = total else { continue };
        let mut rows = Vec::new();
        for i in (0..house.spaces.len()).filter(|&i| crate::areas::is_in_total(house, i, below)) {
            let row = |space: usize, deducted: &str| {
                let areas = &say.areas.spaces[space];
                Line::Plain(vec![
                    format!("{}{deducted}", house.spaces[space].name),
                    areas.tenth_foot().area().to_hundredths(),
                    areas.whole_foot().area().to_hundredths(),
                ])
            };
            rows.push(row(i, ""));
            rows.extend(house.taken_off(i).map(|off| row(off, ", deducted")));
        }
        if rows.is_empty() {
            continue;
        }
        let name = if below { "Below grade, not included" } else { say.gross_name() };
        let pair = |name: &str, text: fn(Area) -> String| {
            Line::Bold(vec![name.to_owned(), text(total.tenth_foot()), text(total.whole_foot())])
        };
        rows.push(pair("total", Area::to_hundredths));
        rows.push(pair("rounded once, at the end", |area| format!("{} sq ft", whole(area))));
        stack.heading(&format!("{name}: what is counted"));
        let columns = [
            Column::words("square feet"),
            Column::figures(fine_head(say), 120.0),
            Column::figures(FEET_HEAD, 120.0),
        ];
        stack.table_of(8.0, &columns, &rows);
        stack.space(2.0);
        let text = match (total.range(), total.widest()) {
            (None, None) => {
                "The possible range, rounded to the foot, is not stated: there are sides given by bearing, or too many combinations.".to_owned()
            }
            (range, widest) => format!(
                "Possible range, rounded to the foot: {}, for an office that reads its tape within {} ft; {} whichever way each wall goes. Each space is rounded on its own.",
                range_text(range),
                say.settings.reading.decimal_feet(),
                range_text(widest)
            ),
        };
        stack.paragraph(7.6, &text);
    }
}

/// The uncertainty, the assumptions, and what a reader should know.
fn certainty(stack: &mut Stack, say: &Sentences<'_>, reconciliation: &Reconciliation) {
    let texts = say.certainty();
    if !texts.is_empty() {
        stack.heading("How sure the measured area is");
        if !say.house.spaces.is_empty() {
            stack.paragraph(7.6, &unrounded(say));
        }
        for text in texts.into_iter().chain(weighed(reconciliation)) {
            stack.paragraph(7.6, &text);
        }
    }
    let rows = say.other_lines();
    if !rows.is_empty() {
        stack.heading(say.other_lines_title(reconciliation.figures()));
        for (name, text) in rows {
            stack.ledger(7.6, &name, &text, Typeface::Plain);
        }
    }
    let known = say.worth_knowing(reconciliation);
    if !known.is_empty() {
        stack.heading("Worth knowing");
        for text in known {
            stack.item(7.6, &text, 0.0);
        }
    }
}

/// The total outside before any side is rounded, and the result of rounding.
fn unrounded(say: &Sentences<'_>) -> String {
    let house = say.house;
    let outside: Vec<Area> = say.areas.spaces.iter().map(|space| space.outside().area()).collect();
    let counted = (0..house.spaces.len()).filter(|&i| crate::areas::is_in_total(house, i, false));
    let total: Area = counted.map(|i| crate::areas::net(house, i, &outside)).sum();
    let gross = say.areas.gross();
    format!(
        "Outside, no side rounded: {} sq ft, ± {} (about 95%). With each wall rounded to {} this gives {}; with each wall to the whole foot, {}.",
        total.to_hundredths(),
        rounded_float(gross.plus_minus_outside()),
        say.fine(),
        gross.tenth_foot().to_hundredths(),
        gross.whole_foot().to_hundredths()
    )
}

/// How many combinations of causes were weighed for each figure.
fn weighed(reconciliation: &Reconciliation) -> impl Iterator<Item = String> {
    reconciliation.figures().iter().filter_map(|figure| {
        let count = i64::try_from(figure.explanations().weighed()).ok();
        let count = count.filter(|count| *count > 0)?;
        Some(format!(
            "For {}, {} combinations of common causes and roundings were weighed.",
            the(figure),
            thousands(count)
        ))
    })
}

/// The method, rule by rule, with sources.
fn method(stack: &mut Stack, say: &Sentences<'_>) {
    stack.heading("Method");
    let halves = match say.settings.halves {
        Halves::Up => "up",
        Halves::Down => "down",
        Halves::Even => "to the even one",
    };
    let fine = match say.settings.fine {
        Step::Inch => "inch",
        _ => "tenth of a foot",
    };
    let texts = [
        format!("Each wall to the {fine}: every side, outside, to the nearest {fine}, halves {halves}; after that only the area is rounded, once, to the square foot (ANSI Z765-2021 section 3 reads to the inch or the tenth and reports the whole square foot; read second-hand)."),
        format!("Each wall to the whole foot: every side, outside the veneer, to the nearest foot, halves {halves} (published in assessors' manuals, for example Maryland SDAT, Assessment Procedure Manual; Cabarrus County NC, 2012 schedule of values)."),
        "Closing: where rounded sides do not come back to their start, the nearest outline of rounded sides that does is used (least sum of squared changes; of outlines that tie, the one that moves the least length of wall, then the one whose area is nearest to the measured, then the larger). An estimated wall is rounded from the length it has after closing as measured. The pieces above use the walls that result.".to_owned(),
        "Area: by the coordinates of the corners, in whole nanometers, exact (any surveying text, for example Mahun, Open Access Surveying Library, COGO ch. H); a curved wall by its chord and rise, r = (c² + 4h²) ÷ 8h, area = r²(θ − sin θ) ÷ 2 (International Correspondence Schools, The Building Trades Pocketbook, Mensuration).".to_owned(),
        format!("Possible range, rounded to the foot: a wall within {} ft of the half foot may be read either way (common practice).", say.settings.reading.decimal_feet()),
        "What is possible: the area under that cause, give or take twice what other readings of the walls would change (about 95%), and half a square foot for the rounded total.".to_owned(),
        "Counted: living space above grade. What is open to below, under a low ceiling or outdoors is deducted. Garages, porches and the like are shown and not counted.".to_owned(),
        "This is not a statement under ANSI Z765: such a statement needs the interior seen, or says that it was not.".to_owned(),
    ];
    for text in texts {
        stack.item(7.2, &text, 0.0);
    }
}

/// How each side was obtained, whether the interior was seen, and a line to sign.
fn declaration(stack: &mut Stack, say: &Sentences<'_>) {
    let house = say.house;
    let sides: Vec<(&str, &crate::house::Side)> = house
        .spaces
        .iter()
        .flat_map(|space| space.sides.iter().map(|side| (space.name.as_str(), side)))
        .collect();
    stack.heading("Declaration");
    if !sides.is_empty() {
        let kinds = ["measured", "by closing", "estimated", "from plan", "from record"];
        let texts = kinds.iter().filter_map(|kind| {
            let these: Vec<_> = sides.iter().filter(|(_, side)| how(side) == *kind).collect();
            let names: Vec<String> = these
                .iter()
                .take(8)
                .map(|(space, side)| format!("{space} side {}", side.number()))
                .collect();
            let named = if *kind == "measured" {
                String::new()
            } else {
                let more = these.len() - names.len();
                let more = if more > 0 { format!(" and {more} more") } else { String::new() };
                format!(" ({}{more})", names.join(", "))
            };
            (!these.is_empty()).then(|| format!("{} {kind}{named}", these.len()))
        });
        let texts: Vec<String> = texts.collect();
        stack.paragraph(
            8.5,
            &format!("Of {}: {}.", words::count(sides.len(), "side"), words::all_of(&texts)),
        );
    }
    let interior = match say.house.particulars.interior_seen {
        Some(true) => "The interior was seen.",
        _ => "The interior was not seen.",
    };
    stack.paragraph(8.5, interior);
    stack.paragraph(8.5, "I obtained the lengths as stated above.");
    let mut row = Row { height_pt: 40.0, ..Row::default() };
    let width = stack.width_pt;
    for (from, to, words) in [(0.0, 0.4, "name"), (0.43, 0.62, "date"), (0.65, 1.0, "signature")] {
        let (left, right) = (from * width, to * width);
        let line = Stroke::of(
            vec![Run::Move(Point::new(left, 26.0)), Run::Line(Point::new(right, 26.0))],
            0.6,
        );
        row.inks.push(Ink::Stroke(line));
        row.inks.push(Ink::Text(Text::new(Point::new(left, 35.0), 7.0, words)));
    }
    // The declaration and the line to sign stay on one page.
    for held in stack.rows.iter_mut().rev().take(5) {
        held.holds_next = true;
    }
    stack.row(row);
}
