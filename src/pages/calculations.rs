//! The Calculations: every number traced from the tape to the page, every area piece by piece, the totals, their
//! uncertainty, the method, and a declaration to sign.
use crate::areas::range::Range;
use crate::diagnostic::words;
use crate::house::{LengthSource, Run};
use crate::pages::blocks;
use crate::pages::exhibit::Moved;
use crate::pages::fonts::Typeface;
use crate::pages::layout::{Column, Flow, Line, Stack};
use crate::pages::pieces::{FEET_HEAD, HALVES_HEAD, fine_head, pieces};
use crate::pages::side_table::{how, side_table, to_half_feet};
use crate::reconcile::{Figure, Reconciliation};
use crate::units::area::Area;
use crate::units::length::{FineStep, Halves};
use crate::wording::rounding::one_of_few;
use crate::wording::sentences::{Sentences, as_sentences, in_a_column, whole};
use crate::wording::size::{range_size, square_meters};

/// Fills the pages of the Calculations.
pub(crate) fn calculations(
    flow: &mut Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    moved: &Moved,
) {
    flow.go_on(
        "Calculations",
        "Every side as typed and as used, every area piece by piece, how sure it is, the method and its sources.",
        150.0,
    );
    let mut stack = flow.stack();
    in_full(&mut stack, say, reconciliation, moved);
    let is_adjusted = side_table(&mut stack, say, reconciliation);
    flow.pour(&stack);
    pieces(flow, say, to_half_feet(say, reconciliation).as_ref());
    let mut stack = flow.stack();
    totals(&mut stack, say, reconciliation);
    certainty(&mut stack, say, reconciliation);
    method(&mut stack, say, is_adjusted);
    declaration(&mut stack, say);
    flow.pour(&stack);
}

/// Prints in full what was cut on the Exhibit.
fn in_full(stack: &mut Stack, say: &Sentences<'_>, reconciliation: &Reconciliation, moved: &Moved) {
    if let Some(figure) = reconciliation.figures().first().filter(|_| moved.is_cut) {
        stack.heading(&format!("{}, in full", say.steps_title(figure)));
        blocks::set(stack, &say.steps(figure), blocks::USUAL);
        stack.space(3.0);
        blocks::set(stack, &say.possible(figure), blocks::USUAL);
        stack.paragraph(8.0, &say.request(reconciliation, figure));
        if let Some(too) = say.asked_besides(reconciliation, figure) {
            stack.paragraph(8.0, &too);
        }
    }
    if !moved.notes.is_empty() {
        stack.heading("More notes on the drawing of the Exhibit");
        stack.paragraph(7.4, &as_sentences(&moved.notes));
    }
}

/// What is counted and what is deducted, with the printed totals.
fn totals(stack: &mut Stack, say: &Sentences<'_>, reconciliation: &Reconciliation) {
    let house = say.house;
    let halves = to_half_feet(say, reconciliation);
    for (below, total) in [(false, Some(say.areas.gross())), (true, say.areas.below_grade())] {
        let Some(total) = total else { continue };
        let of_space = |space: usize| -> Vec<Area> {
            let areas = &say.areas.spaces[space];
            let both = [areas.tenth_foot().area(), areas.whole_foot().area()];
            both.into_iter().chain(halves.as_ref().map(|ruled| ruled.areas[space])).collect()
        };
        let mut lines: Vec<(String, Vec<Area>)> = Vec::new();
        for i in (0..house.spaces.len()).filter(|&i| crate::areas::is_in_total(house, i, below)) {
            lines.push((house.spaces[i].name.clone(), of_space(i)));
            for off in house.deducted_from(i) {
                let name = format!("{}, deducted", house.spaces[off].name);
                lines.push((name, of_space(off).into_iter().map(|area| -area).collect()));
            }
        }
        if lines.is_empty() {
            continue;
        }
        let count = 2 + usize::from(halves.is_some());
        let column =
            |rule: usize| lines.iter().map(|(_, areas)| areas[rule]).collect::<Vec<Area>>();
        let sums: Vec<Area> = (0..count).map(|rule| column(rule).into_iter().sum()).collect();
        // The total of one space would be that space again.
        if lines.len() > 1 {
            lines.push(("total".to_owned(), sums.clone()));
        }
        let printed: Vec<Vec<String>> = (0..count)
            .map(|rule| {
                let areas = lines.iter().map(|(_, areas)| areas[rule]);
                in_a_column(&areas.collect::<Vec<Area>>())
            })
            .collect();
        let cells = |i: usize, name: &str| -> Vec<String> {
            let figures = printed.iter().map(|column| column[i].clone());
            std::iter::once(name.to_owned()).chain(figures).collect()
        };
        let last = lines.len() - 1;
        let row = |(i, (name, _)): (usize, &(String, Vec<Area>))| match i == last {
            true => Line::Bold(cells(i, name)),
            false => Line::Plain(cells(i, name)),
        };
        let mut rows: Vec<Line> = lines.iter().enumerate().map(row).collect();
        // A metric file gets a separate line in its own unit, since the rules round in feet.
        if say.is_metric() {
            let meters = sums.iter().map(|area| square_meters(*area));
            let once = std::iter::once("in square meters, rounded once, at the end".to_owned());
            rows.push(Line::Bold(once.chain(meters).collect()));
        }
        let rounded = sums.iter().map(|area| format!("{} sq ft", whole(*area)));
        let once = std::iter::once("rounded once, at the end".to_owned());
        rows.push(Line::Bold(once.chain(rounded).collect()));
        let title = match below {
            true => "Wholly or partly below grade, not included in the total above".to_owned(),
            false => format!("{}: what is counted", say.gross_name()),
        };
        stack.heading(&title);
        let mut columns = vec![
            Column::words("square feet"),
            Column::figures(fine_head(say), 110.0),
            Column::figures(FEET_HEAD, 110.0),
        ];
        columns.extend(halves.is_some().then(|| Column::figures(HALVES_HEAD, 110.0)));
        stack.table_of(8.0, &columns, &rows);
        stack.space(2.0);
        let sized = |range: Option<Range>| {
            range
                .map_or_else(|| "not stated".to_owned(), |range| range_size(range, say.is_metric()))
        };
        let text = match (total.range(), total.widest()) {
            (None, None) => {
                "The possible range, rounded to the foot, is not stated: there are sides given by bearing, or too many combinations.".to_owned()
            }
            (range, widest) => {
                let few = if below { say.listed_alone(total.few()) } else { Vec::new() };
                let usual = match range.filter(|_| !below) {
                    Some(range) => say.totals_in(reconciliation.figures().first(), range),
                    None if !few.is_empty() => one_of_few(&few, say.is_metric()),
                    None => sized(range),
                };
                let is_one =
                    range.is_some_and(|range| range.low.whole_sq_ft() == range.high.whole_sq_ft());
                let rounded = match (is_one, say.is_adjusted_to_feet()) {
                    (false, _) => "Rounded to the foot, the total can be",
                    (true, false) => "Rounded to the foot, the only possible total is",
                    (true, true) => {
                        "Rounded to the foot, with walls adjusted so that they meet, the only possible total is"
                    }
                };
                // The words of the first page, and the gap between its two nearest totals.
                let figure = reconciliation.figures().first().filter(|_| !below);
                let either_way = widest.and_then(|widest| say.widest_around(figure?, widest));
                format!(
                    "{rounded} {usual} if only a wall within {} of the half foot goes either way; with every wall up or down, it can be {}. Each space is rounded on its own.",
                    say.reading_alone(),
                    either_way.unwrap_or_else(|| sized(widest))
                )
            }
        };
        if !below {
            for text in say.with_counted(reconciliation.figures()) {
                stack.paragraph(7.6, &text);
            }
            if let Some(text) = say.half_foot_range(reconciliation.figures()) {
                stack.paragraph(7.6, &text);
            }
        }
        stack.paragraph(7.6, &text);
    }
}

/// The uncertainty, the assumptions, and what a reader should know.
fn certainty(stack: &mut Stack, say: &Sentences<'_>, reconciliation: &Reconciliation) {
    let texts = say.certainty();
    if !texts.is_empty() {
        stack.heading("How certain the area is");
        if !say.house.spaces.is_empty() {
            stack.paragraph(7.6, &unrounded(say));
        }
        for text in texts.into_iter().chain(weighed(say, reconciliation)) {
            stack.paragraph(7.6, &text);
        }
    }
    let rows = say.other_lines(reconciliation.figures());
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
    let gross = say.areas.gross();
    format!(
        "Outside, before any rounding: {}. With each wall rounded to {} this gives {}; with each wall to the whole foot, {}.",
        say.exact_size(gross.outside()),
        say.fine(),
        say.exact_size(gross.tenth_foot()),
        say.exact_size(gross.whole_foot())
    )
}

/// What was compared, so that "the only common cause" says something.
const COMMON_CAUSES: &str = "Common causes: a space or level counted, left out or taken at another size; an opening or low part not deducted; the outline drawn more simply; a wall misread; another face; a total typed differently.";

/// How many combinations of causes were weighed for each figure, and how many causes are named.
fn weighed(say: &Sentences<'_>, reconciliation: &Reconciliation) -> Vec<String> {
    let told = |figure: &Figure| {
        let (weighed, fitting) = (say.weighed(figure), say.fitting(figure));
        (figure.explanations().weighed() > 0).then(|| {
            let name = figure.name();
            format!("For the {name}'s figure, {weighed} combinations of common causes and ways of rounding were compared. {fitting}.")
        })
    };
    let mut told: Vec<String> = reconciliation.figures().iter().filter_map(told).collect();
    let is_named = |figure: &Figure| figure.explanations().reported().next().is_some();
    if reconciliation.figures().iter().any(is_named) {
        told.push(format!(
            "That a cause fits shows that it is possible, not that it happened. {COMMON_CAUSES}"
        ));
    }
    told
}

/// The method, rule by rule, with sources. How rounded walls are closed is told where some wall had to be adjusted.
fn method(stack: &mut Stack, say: &Sentences<'_>, is_adjusted: bool) {
    stack.heading("Method");
    let halves = match say.settings.halves {
        Halves::Up => "exactly half goes up",
        Halves::Down => "exactly half goes down",
        Halves::Even => "exactly half goes to the even one",
    };
    let fine = match say.settings.fine {
        FineStep::Inch => "inch",
        FineStep::TenthFoot => "tenth of a foot",
    };
    let sides = || say.house.spaces.iter().flat_map(|space| space.sides.iter());
    let lots = || say.house.lots.iter().flat_map(|lot| lot.outline().vectors());
    // What no wall of the file needs is left out.
    let has_curves = sides().any(|side| matches!(side.run, Run::Arc(..)))
        || lots().any(|vector| vector.rise != 0);
    let area = match has_curves {
        true => {
            "Area: from the coordinates of the corners, with no rounding on the way [3]. A curved wall from its chord c and rise h: radius r = (c² + 4h²) ÷ 8h, area = r²(θ − sin θ) ÷ 2, where θ is the angle of the arc [4]."
        }
        false => "Area: from the coordinates of the corners, with no rounding on the way [3].",
    };
    let estimated = match sides().any(|side| side.how() == LengthSource::Estimated) {
        true => " An estimated wall is rounded from the length it has after closing as measured.",
        false => "",
    };
    let by_closing = match sides().any(|side| side.how() == LengthSource::Closing) {
        true => {
            "By closing: a side that was not measured; its length follows from the other sides, since a walk around the house ends where it began."
        }
        false => "",
    };
    let texts = [
        format!("Each wall to the {fine}: every side, at the outside face, to the nearest {fine} ({halves}); after that only the area is rounded, once, to the square foot [1]."),
        format!("Each wall to the whole foot: every side, at the outside face, to the nearest foot ({halves}) [2]."),
        if is_adjusted { format!("Closing: where the rounded sides do not come back to their start, the nearest outline of rounded sides that does is used (least sum of squared changes; where several are equally near, the one that moves the least length of wall, then the one nearest to the measured area, then the larger).{estimated} The pieces use the resulting walls.") } else { String::new() },
        area.to_owned(),
        "What is possible: which way the office rounded each wall is not known, so a cause fits if the figure is within three times the usual effect of rounding on such a house, and within what rounding can change at all. Several that fit stand in the order of how common each is thought to be and how near it comes, which is a judgment.".to_owned(),
        "Counted: living space above grade. Openings to the level below, low ceilings and courts open to the sky are deducted. Garages, porches and the like are shown but not counted.".to_owned(),
        match say.house.particulars.interior_seen {
            Some(true) => "This is not a statement of square footage under ANSI Z765 [1].",
            _ => "This is not a statement of square footage under ANSI Z765. Such a statement requires that the interior was inspected, or else has to say that it was not [1].",
        }
        .to_owned(),
        by_closing.to_owned(),
        "[1] ANSI Z765-2021, section 3 (inch or tenth of a foot, total to the whole square foot), as reported in publications for appraisers.".to_owned(),
        "[2] In assessors' manuals, for example: Maryland SDAT, Assessment Procedure Manual; Cabarrus County, North Carolina, 2012 schedule of values.".to_owned(),
        "[3] In surveying texts, for example: Mahun, Open Access Surveying Library, COGO, chapter H.".to_owned(),
        if has_curves { "[4] International Correspondence Schools, The Building Trades Pocketbook, Mensuration." } else { "" }.to_owned(),
    ];
    let texts: Vec<String> = texts.into_iter().filter(|text| !text.is_empty()).collect();
    let last = texts.len().saturating_sub(2);
    let mut from = stack.rows.len();
    for (i, text) in texts.iter().enumerate() {
        if i == last {
            from = stack.rows.len();
        }
        stack.item(7.2, text, 0.0);
    }
    // The last two stay together, so that neither is alone at the top of a page.
    let to = stack.rows.len().saturating_sub(1);
    for row in &mut stack.rows[from.min(to)..to] {
        row.holds_next = true;
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
    let by_law = say.declaration_of_the_place();
    if let Some([before, _]) = &by_law {
        stack.paragraph(8.5, before);
    }
    if !sides.is_empty() {
        let sources = [
            LengthSource::Measured,
            LengthSource::Closing,
            LengthSource::Estimated,
            LengthSource::Plan,
            LengthSource::Record,
        ];
        let texts = sources.into_iter().filter_map(|source| {
            let these: Vec<(&str, usize)> = sides
                .iter()
                .filter(|(_, side)| side.how() == source)
                .map(|(space, side)| (*space, side.number().get()))
                .collect();
            let named = match source {
                LengthSource::Measured => String::new(),
                _ => format!(" ({})", sides_of_spaces(&these)),
            };
            (!these.is_empty()).then(|| format!("{} {}{named}", these.len(), how(source)))
        });
        let texts: Vec<String> = texts.collect();
        let all = sides.iter().all(|(_, side)| side.how() == LengthSource::Measured);
        let text = match (all, sides.len()) {
            (true, 1) => "The only side was measured.".to_owned(),
            (true, count) => format!("All {} were measured.", words::count(count, "side")),
            _ => format!("Of {}: {}.", words::count(sides.len(), "side"), words::all_of(&texts)),
        };
        let is_moved = |space: &crate::house::Space| {
            space.face != crate::house::Face::Outside && space.kind.has_walls()
        };
        // What is drawn there is a length with the thickness of walls, which nobody taped as a side.
        let thickness = match house.spaces.iter().any(is_moved) {
            true => {
                " Where lengths were taken inside or at the frame, the thickness of the walls was added; it is as stated in the sides file or assumed."
            }
            false => "",
        };
        stack.paragraph(8.5, &format!("{text}{thickness}"));
    }
    let lots: Vec<&str> = house.lots.iter().map(crate::house::Lot::name).collect();
    if !lots.is_empty() {
        let text = match sides.is_empty() {
            true => format!("The sides of {} are as listed.", words::all_of(&lots)),
            false => format!(
                "The sides of {} are not among them: they are as listed, and this declaration is not about them.",
                words::all_of(&lots)
            ),
        };
        stack.paragraph(8.5, &text);
    }
    let interior = match say.house.particulars.interior_seen {
        Some(true) => "The interior was seen.",
        _ => "The interior was not inspected.",
    };
    stack.paragraph(8.5, interior);
    stack.paragraph(8.5, signed_for(&sides));
    if let Some([_, words]) = &by_law {
        stack.paragraph(8.5, words);
    }
    // The declaration and the line to sign stay on one page.
    let most = 5 + 2 * usize::from(by_law.is_some()) + usize::from(!lots.is_empty());
    for held in stack.rows.iter_mut().rev().take(most) {
        held.holds_next = true;
    }
    stack.fields(40.0, &[(0.0, 0.4, "name"), (0.43, 0.62, "date"), (0.65, 1.0, "signature")]);
}

/// The sentence to sign. It claims no more than the sides themselves say.
fn signed_for(sides: &[(&str, &crate::house::Side)]) -> &'static str {
    let is =
        |source: LengthSource| move |(_, side): &&(&str, &crate::house::Side)| side.how() == source;
    let measured = sides.iter().filter(is(LengthSource::Measured)).count();
    let closing = sides.iter().filter(is(LengthSource::Closing)).count();
    match (measured, sides.len() - measured - closing) {
        _ if sides.is_empty() => "The lengths on these pages are as I obtained them.",
        (0, _) => {
            "I did not measure these walls; their lengths are as I found them in the sources named above."
        }
        (_, 0) if closing == 0 => {
            "I measured these walls; the lengths on these pages are as I measured them."
        }
        (_, 0) => {
            "I measured these walls, except those by closing; the lengths on these pages are as I measured them."
        }
        _ => {
            "I measured the walls that are listed as measured, and those lengths are as I measured them; the others are as listed."
        }
    }
}

/// Sides grouped by space, with consecutive sides as a range: `Part A sides 1 to 4; Barn side 3`.
fn sides_of_spaces(sides: &[(&str, usize)]) -> String {
    const MOST: usize = 8;
    let mut spaces: Vec<(&str, Vec<(usize, usize)>)> = Vec::new();
    for &(space, number) in sides {
        match spaces.last_mut().filter(|(last, _)| *last == space) {
            Some((_, runs)) => match runs.last_mut().filter(|run| run.1 + 1 == number) {
                Some(run) => run.1 = number,
                None => runs.push((number, number)),
            },
            None => spaces.push((space, vec![(number, number)])),
        }
    }
    let told = |(space, runs): &(&str, Vec<(usize, usize)>)| {
        let noun = if matches!(runs[..], [(from, to)] if from == to) { "side" } else { "sides" };
        let run = |&(from, to): &(usize, usize)| match to - from {
            0 => from.to_string(),
            1 => format!("{from}, {to}"),
            _ => format!("{from} to {to}"),
        };
        let runs: Vec<String> = runs.iter().map(run).collect();
        format!("{space} {noun} {}", runs.join(", "))
    };
    let shown: Vec<String> = spaces.iter().take(MOST).map(told).collect();
    let more = match spaces.len() - shown.len() {
        0 => String::new(),
        more => format!("; and sides of {more} more"),
    };
    format!("{}{more}", shown.join("; "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sides_that_follow_each_other_are_told_as_from_and_to() {
        let sides = [("Part A", 1), ("Part A", 2), ("Part A", 3), ("Part A", 7), ("Barn", 3)];
        assert_eq!(sides_of_spaces(&sides), "Part A sides 1 to 3, 7; Barn side 3");
        assert_eq!(sides_of_spaces(&[("Barn", 3), ("Barn", 4)]), "Barn sides 3, 4");
    }
}
