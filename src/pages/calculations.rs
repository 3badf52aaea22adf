//! The Working: every outline cut into pieces that a pocket calculator can check, the sides, how they were obtained, the method.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::diagnostic::words;
use crate::geometry::compass::Direction;
use crate::geometry::outline::Outline;
use crate::geometry::partition;
use crate::geometry::partition::{Cut, Placed};
use crate::house::ReferenceSource;
use crate::pages::drawing::canvas::{Block, Canvas};
use crate::pages::drawing::occupancy::Sort;
use crate::pages::drawing::plan;
use crate::pages::drawing::plan::{Fitting, Frame, Reach};
use crate::pages::drawing::view::{OnSite, Turned, View};
use crate::pages::fonts::Typeface;
use crate::pages::layout::{Column, Flow, Row, Stack};
use crate::pages::page::{Ink, Part, Point, Run, Stroke, Text};
use crate::reconcile::Reconciliation;
use crate::units::length::{Halves, Length, Step};
use crate::wording::sentences::{Sentences, letters, range_text, rounded_float, whole};

/// Fills the pages of the Working.
pub(crate) fn working(flow: &mut Flow, say: &Sentences<'_>, reconciliation: &Reconciliation) {
    flow.begin(
        "Working",
        "Every area piece by piece, every side, how each was obtained, the method and its sources",
    );
    for space in 0..say.house.spaces.len() {
        pieces(flow, say, space);
    }
    let mut stack = Stack::new(flow.width_pt());
    totals(&mut stack, say);
    for space in 0..say.house.spaces.len() {
        sides(&mut stack, say, reconciliation, space);
    }
    certainty(&mut stack, say, reconciliation);
    declaration(&mut stack, say);
    method(&mut stack, say);
    flow.pour(&stack);
}

/// An outline in pieces: the drawing with their letters, the table beside or below it.
fn pieces(flow: &mut Flow, say: &Sentences<'_>, space: usize) {
    let areas = &say.areas.spaces[space];
    let (fine, feet) = (areas.tenth_foot(), areas.whole_foot());
    let name = say.space_name(space);
    let each = say.settings.fine.spoken();
    let both = Cutting::of(fine).zip(Cutting::of(feet)).filter(|_| ranks(fine) == ranks(feet));
    if let Some((by_fine, by_feet)) = &both {
        let rows = Cutting::rows(&[by_fine, by_feet], &[fine, feet]);
        let heads = [say.fine_word(), "whole"];
        return one_drawing(flow, say, &name, by_fine, fine, &heads, &rows);
    }
    for (outline, head, each) in
        [(fine, say.fine_word(), each), (feet, "whole", Step::WholeFoot.spoken())]
    {
        let name = format!("{name}, {each}");
        match Cutting::of(outline) {
            Some(cutting) => {
                let rows = Cutting::rows(&[&cutting], &[outline]);
                one_drawing(flow, say, &name, &cutting, outline, &[head], &rows);
            }
            None => coordinates(flow, &name, outline),
        }
    }
}

/// The places of an outline's corners among each other: outlines that agree in it are cut alike.
fn ranks(outline: &Outline) -> Vec<(usize, usize)> {
    let points = outline.points();
    let rank = |pick: fn(&OnSite) -> i64| {
        let mut all: Vec<i64> = points.iter().map(pick).collect();
        all.sort_unstable();
        all.dedup();
        move |value: i64| all.binary_search(&value).unwrap_or(0)
    };
    let (east, north) = (rank(|p| p.0), rank(|p| p.1));
    points.iter().map(|point| (east(point.0), north(point.1))).collect()
}

/// An outline in pieces.
struct Cutting {
    placed: Vec<Placed>,
}

impl Cutting {
    fn of(outline: &Outline) -> Option<Cutting> {
        partition::placed(outline).map(|placed| Cutting { placed })
    }

    /// The table's rows: a piece, and for each rule length × width and what it comes to; then the sum.
    fn rows(cuttings: &[&Cutting], outlines: &[&Outline]) -> Vec<Vec<String>> {
        let mut rows = Vec::new();
        let count = cuttings.first().map_or(0, |cutting| cutting.placed.len());
        for i in 0..count {
            let less = if is_less(&cuttings[0].placed[i].cut) { "less " } else { "" };
            let mut row = vec![format!("{less}{}", letters(i))];
            for cutting in cuttings {
                let cut = cutting.placed.get(i).map(|placed| placed.cut);
                row.extend(
                    cut.map(|cut| [product(&cut), cut.area().sq_ft_text()]).into_iter().flatten(),
                );
            }
            rows.push(row);
        }
        let mut sum = vec!["together".to_owned()];
        for outline in outlines {
            sum.extend([String::new(), outline.area().sq_ft_text()]);
        }
        // One more cell than columns: the row is written in bold.
        sum.push(String::new());
        rows.push(sum);
        rows
    }
}

fn is_less(cut: &Cut) -> bool {
    match *cut {
        Cut::Rectangle { .. } => false,
        Cut::Triangle { taken_off, .. } | Cut::Segment { taken_off, .. } => taken_off,
    }
}

/// What to type into a calculator.
fn product(cut: &Cut) -> String {
    match *cut {
        Cut::Rectangle { east, north } => {
            format!("{} × {}", east.decimal_feet(), north.decimal_feet())
        }
        Cut::Triangle { east, north, .. } => {
            format!("{} × {} ÷ 2", east.decimal_feet(), north.decimal_feet())
        }
        Cut::Segment { chord, rise, .. } => {
            format!("curve: chord {}, rise {}", chord.decimal_feet(), rise.decimal_feet())
        }
    }
}

fn one_drawing(
    flow: &mut Flow,
    say: &Sentences<'_>,
    name: &str,
    cutting: &Cutting,
    outline: &Outline,
    heads: &[&str],
    rows: &[Vec<String>],
) {
    let drawn_wide = 170.0;
    let mut title = Stack::new(flow.width_pt());
    title.heading(name);
    let (inks, height, scale) = lettered(say, cutting, outline, drawn_wide);
    let mut drawing = Stack::new(drawn_wide);
    drawing.row(Row { height_pt: height, inks, ..Row::default() });
    drawing.paragraph(6.5, &format!("Drawn at {}", scale));
    let mut table = Stack::new(flow.width_pt() - drawn_wide - 14.0);
    let mut columns = vec![Column::short("piece", 46.0)];
    for head in heads {
        let (product, area) = match *head {
            "whole" => ("feet, each wall to\nthe whole foot", "square feet"),
            "inches" => ("feet, each wall to\nthe inch", "square feet"),
            _ => ("feet, each wall to\na tenth", "square feet"),
        };
        columns.extend([Column::figures(product, 0.0), Column::figures(area, 68.0)]);
    }
    table.table(7.5, &columns, rows);
    if title.height_pt() + drawing.height_pt() > flow.room_pt() {
        flow.need(f64::MAX);
    }
    flow.pour(&title);
    if table.height_pt() > flow.room_pt() {
        flow.pour(&drawing);
        let mut table = Stack::new(flow.width_pt());
        table.table(7.5, &columns, rows);
        return flow.pour(&table);
    }
    flow.beside(&drawing, &table, drawn_wide + 14.0);
}

/// The outline with its cuts dashed and a letter in every piece; its height, and the scale in words.
fn lettered(
    say: &Sentences<'_>,
    cutting: &Cutting,
    outline: &Outline,
    wide_pt: f64,
) -> (Vec<Ink>, f64, &'static str) {
    let turned = Turned { front: say.house.particulars.front.unwrap_or(Direction::South) };
    let flat = outline.flattened();
    let reach = Reach::of(flat.iter().map(|&(east, north, _)| (east, north)), turned);
    let frame = Frame { left_top: Point::new(0.0, 0.0), width_pt: wide_pt, height_pt: 200.0 };
    let (view, height) = plan::fitted(&reach, turned, &frame, 10.0, Fitting::default());
    let mut canvas = Canvas::new(view, Point::new(0.0, 0.0), Point::new(wide_pt, height));
    let walls = view.walls(outline, (0, 0));
    for placed in &cutting.placed {
        let stroke = Stroke::along(&closed(&ring(&view, placed)), 0.5).dashed([3.0, 2.0]);
        canvas.line(stroke, Sort::Theirs);
    }
    canvas.outline(&walls, 1.3, None, Part::Outline);
    for (i, placed) in cutting.placed.iter().enumerate() {
        let choice = |size: f64| Block { lines: vec![(Typeface::Bold, size, letters(i))] };
        let mut figure = ring(&view, placed);
        if let (Cut::Segment { .. }, Some(wall)) = (placed.cut, placed.wall) {
            figure = walls[wall].stretches().iter().map(|stretch| stretch.0).collect();
            figure.push(walls[wall].to);
        }
        if !canvas.block(&figure, &[], &[choice(9.0), choice(7.0), choice(6.0)]) {
            let middle = figure.iter().fold(Point::default(), |sum, spot| sum.plus(*spot, 1.0));
            let count = f64::from(u32::try_from(figure.len().max(1)).unwrap_or(1));
            canvas.pointer(Point::default().plus(middle, 1.0 / count), &letters(i));
        }
    }
    (canvas.finish(), height, view.scale.words)
}

/// The corners of a piece on the page.
fn ring(view: &View, placed: &Placed) -> Vec<Point> {
    placed.corners.iter().map(|&corner| view.spot(corner)).collect()
}

fn closed(spots: &[Point]) -> Vec<Point> {
    spots.iter().chain(spots.first()).copied().collect()
}

/// The area by corners, in words.
pub(crate) const BY_CORNERS: &str = "half the sum, from each corner to the next, of east × next north less north × next east, whatever its sign";
/// What curved walls do to it.
pub(crate) const BY_CHORD: &str =
    "a curved wall adds or takes off what lies between it and its chord";

/// An outline that cannot be cut into right-angled pieces, corner by corner.
fn coordinates(flow: &mut Flow, name: &str, outline: &Outline) {
    let mut stack = Stack::new(flow.width_pt());
    stack.heading(name);
    stack.paragraph(8.0, &format!("No right-angled pieces add up to this outline, so it is told by its corners, in feet from the first. The area is {BY_CORNERS}; {BY_CHORD}."));
    let columns = [
        Column::short("corner", 60.0),
        Column::figures("east", 100.0),
        Column::figures("north", 100.0),
        Column::words(""),
    ];
    let feet = |nm: i64| Length::from_nm(nm).decimal_feet();
    let rows: Vec<Vec<String>> = outline
        .points()
        .iter()
        .enumerate()
        .map(|(i, point)| vec![(i + 1).to_string(), feet(point.0), feet(point.1), String::new()])
        .collect();
    stack.table(7.5, &columns, &rows);
    stack.ledger(8.0, "area, square feet", &outline.area().sq_ft_text(), Typeface::Bold);
    flow.pour(&stack);
}

/// What is counted and what is taken off, down to the printed totals.
fn totals(stack: &mut Stack, say: &Sentences<'_>) {
    let house = say.house;
    for (below, total) in [(false, Some(say.areas.gross())), (true, say.areas.below_grade())] {
        let Some(total) = total else { continue };
        let mut rows = Vec::new();
        for i in (0..house.spaces.len()).filter(|&i| crate::areas::is_in_total(house, i, below)) {
            let mut add = |space: usize, less: &str| {
                let areas = &say.areas.spaces[space];
                rows.push(vec![
                    format!("{less}{}", house.spaces[space].name),
                    areas.tenth_foot().area().sq_ft_text(),
                    areas.whole_foot().area().sq_ft_text(),
                ]);
            };
            add(i, "");
            house.taken_off(i).for_each(|off| add(off, "less "));
        }
        if rows.is_empty() {
            continue;
        }
        let name = if below { "Below grade, apart" } else { say.gross_name() };
        rows.push(vec![
            "together".to_owned(),
            total.tenth_foot().sq_ft_text(),
            total.whole_foot().sq_ft_text(),
            String::new(),
        ]);
        let rounded = |area: crate::units::area::Area| format!("{} sq ft", whole(area));
        rows.push(vec![
            "rounded once, at the end".to_owned(),
            rounded(total.tenth_foot()),
            rounded(total.whole_foot()),
            String::new(),
        ]);
        stack.heading(&format!("{name}: what is counted"));
        let fine = if say.settings.fine == Step::Inch {
            "each wall to\nthe inch"
        } else {
            "each wall to\na tenth of a foot"
        };
        let columns = [
            Column::words(""),
            Column::figures(fine, 120.0),
            Column::figures("each wall to\nthe whole foot", 120.0),
        ];
        stack.table(8.0, &columns, &rows);
        stack.space(2.0);
        let told = match (total.range(), total.widest()) {
            (None, None) => {
                "What whole feet could give is not stated: sides by bearing, or too many ways."
                    .to_owned()
            }
            (range, widest) => format!(
                "Whole feet could give {} as an office that reads its tape within {} ft would round them; {} whichever way each wall goes. Each space is rounded by itself.",
                range_text(range),
                say.settings.reading.decimal_feet(),
                range_text(widest)
            ),
        };
        stack.paragraph(8.0, &told);
    }
}

/// Every side of a space: as typed, under both rules, in the record, how it was obtained.
fn sides(stack: &mut Stack, say: &Sentences<'_>, reconciliation: &Reconciliation, space: usize) {
    let here = &say.house.spaces[space];
    let face = match here.kind.has_walls() {
        true => format!(", measured to the {} face", here.face.word()),
        false => String::new(),
    };
    stack.heading(&format!("Sides of {}{face}", here.name));
    let columns = [
        Column::short("", 20.0),
        Column::words("as typed"),
        Column::figures("tenths", 56.0),
        Column::figures("whole", 56.0),
        Column::figures("recorded", 66.0),
        Column::figures("difference", 72.0),
        Column::short("", 10.0),
        Column::short("how obtained", 74.0),
    ];
    let mut columns = columns;
    columns[2].head = say.fine_word();
    let areas = &say.areas.spaces[space];
    let figures = say.areas.side_rows(space);
    let row = |(side, figures): (&crate::house::Side, crate::areas::SideRow)| {
        let recorded = recorded(say, reconciliation, space, side);
        let measured = say.areas.outside_length(space, side.number() - 1);
        // A length that closing moved from its own rounding has a star.
        let marked = |legs: Option<String>, length: Option<Length>, step: Step| {
            let length_text = length.map(Length::decimal_feet);
            let text = legs.or(length_text).unwrap_or_default();
            let alone = measured.map(|measured| measured.rounded(step, say.settings.halves));
            let is_own =
                here.closed.walk.has_bearings() || alone.is_none_or(|alone| Some(alone) == length);
            if is_own { text } else { format!("*{text}") }
        };
        let by_run_and_rise = |outline: &Outline| legs(say, space, side, outline);
        let difference = recorded.zip(measured).map(|(recorded, measured)| {
            let apart = recorded - measured;
            let sign = if apart < Length::ZERO { "-" } else { "+" };
            if apart == Length::ZERO { "0".to_owned() } else { format!("{sign}{}", apart.spoken()) }
        });
        vec![
            side.number().to_string(),
            side.typed().to_owned(),
            marked(by_run_and_rise(areas.tenth_foot()), figures.tenth_foot, say.settings.fine),
            marked(by_run_and_rise(areas.whole_foot()), figures.whole_foot, Step::WholeFoot),
            recorded.map(|length| length.spoken()).unwrap_or_default(),
            difference.unwrap_or_default(),
            String::new(),
            how(side).to_owned(),
        ]
    };
    let rows: Vec<Vec<String>> = here.sides.iter().zip(figures).map(row).collect();
    stack.table(7.5, &columns, &rows);
    if rows.iter().flatten().any(|cell| cell.starts_with('*')) {
        stack.paragraph(
            7.2,
            "* moved a step from its own rounding, so that the walk comes back to its start",
        );
    }
    let mut note = format!(
        "As measured, no side rounded: {} sq ft; round it {}.",
        areas.as_measured.sq_ft_text(),
        here.outline().perimeter().spoken()
    );
    if here.closed.misclosure != crate::geometry::traverse::Misclosure::default() {
        note.push_str(&format!(
            " The walk round ends {} of where it began; that is spread over the sides, which then are, in feet: {}.",
            here.closed.misclosure.spoken(),
            closed_lengths(here)
        ));
    }
    if here.face != crate::house::Face::Outside && here.kind.has_walls() {
        note.push_str(&format!(
            " Moved out by the thickness of the walls it is {} sq ft; both rules round the walls as they stand there.",
            say.areas.spaces[space].outside().area().sq_ft_text()
        ));
    }
    stack.space(2.0);
    stack.paragraph(7.5, &note);
    for side in here.sides.iter() {
        let said = [
            side.words.photo.as_ref().map(|photo| format!("photo {photo}")),
            side.words.note.clone(),
        ];
        let said: Vec<String> = said.into_iter().flatten().collect();
        if !said.is_empty() {
            stack.paragraph(7.5, &format!("Side {}: {}.", side.number(), said.join("; ")));
        }
    }
}

/// The lengths of the sides as closed, in feet.
fn closed_lengths(space: &crate::house::Space) -> String {
    const MOST: usize = 40;
    let lengths = space.closed.outline.vectors().iter().take(MOST);
    let lengths: Vec<String> = lengths.map(|side| side.chord_length().decimal_feet()).collect();
    let more = if space.sides.len() > MOST { " …" } else { "" };
    format!("{}{more}", lengths.join(", "))
}

/// The length the record gives a side, after it or in its own sketch.
fn recorded(
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    space: usize,
    side: &crate::house::Side,
) -> Option<Length> {
    let name = &say.house.spaces[space].name;
    let in_sketch = || {
        let sketches = reconciliation.outlines().iter();
        let mut sketches = sketches.filter(|outline| {
            outline.drawn() == ReferenceSource::Record && outline.space.as_ref() == Some(name)
        });
        let mut walls = sketches.next()?.matched().iter();
        walls.find(|wall| wall.ours() == side.number()).map(|wall| wall.drawn())
    };
    side.recorded().or_else(in_sketch)
}

/// A slanted wall by its run and its rise, as they are rounded; none of any other wall.
fn legs(
    say: &Sentences<'_>,
    space: usize,
    side: &crate::house::Side,
    outline: &Outline,
) -> Option<String> {
    let is_slanted = matches!(side.run, crate::house::Run::Diagonal(..));
    let walk = &say.areas.outside.spaces[space].walk;
    let mut pieces = walk.sides.iter().zip(outline.vectors());
    let (_, vector) = pieces.find(|(piece, _)| piece.source == Some(side.number() - 1))?;
    let feet = |nm: i64| Length::from_nm(nm.abs()).decimal_feet();
    is_slanted.then(|| format!("{} by {}", feet(vector.north), feet(vector.east)))
}

/// How a side was obtained, for people.
fn how(side: &crate::house::Side) -> &'static str {
    match side.how() {
        "closing" => "by closing",
        "estimated" => "estimated",
        "plan" => "from the plan",
        "record" => "from the record",
        _ => "measured",
    }
}

/// How sure it is, what was assumed, what a reader should know.
fn certainty(stack: &mut Stack, say: &Sentences<'_>, reconciliation: &Reconciliation) {
    let told = say.certainty();
    if !told.is_empty() {
        stack.heading("How sure the measured area is");
        if !say.house.spaces.is_empty() {
            stack.paragraph(7.6, &unrounded(say));
        }
        for text in told {
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
    for outline in reconciliation.outlines() {
        sketch(stack, say, outline);
    }
    let known = say.worth_knowing(reconciliation);
    if !known.is_empty() {
        stack.heading("Worth knowing");
        for text in known {
            stack.item(7.6, &text, 0.0);
        }
    }
}

/// The total outside before any side is rounded, and what rounding makes of it.
fn unrounded(say: &Sentences<'_>) -> String {
    let house = say.house;
    let outside: Vec<crate::units::area::Area> =
        say.areas.spaces.iter().map(|space| space.outside().area()).collect();
    let counted = (0..house.spaces.len()).filter(|&i| crate::areas::is_in_total(house, i, false));
    let total: crate::units::area::Area =
        counted.map(|i| crate::areas::net(house, i, &outside)).sum();
    let gross = say.areas.gross();
    format!(
        "Outside, no side rounded: {} sq ft, ± {} (about 95 %). Each wall rounded to {} makes {} of it, each wall to the whole foot {}.",
        total.sq_ft_text(),
        rounded_float(gross.plus_minus_outside()),
        say.fine(),
        gross.tenth_foot().sq_ft_text(),
        gross.whole_foot().sq_ft_text()
    )
}

/// Somebody else's sketch, wall by wall.
fn sketch(stack: &mut Stack, say: &Sentences<'_>, outline: &crate::reconcile::OutlineReport) {
    stack.heading(&say.outline_title(outline));
    let (first, only) = say.outline_notes(outline);
    if let Some(note) = first {
        stack.paragraph(8.0, note);
    }
    let apart = say.walls_apart(outline);
    if !apart.is_empty() {
        let mut columns = [
            Column::words("walls that differ"),
            Column::figures("measured", 90.0),
            Column::figures("record", 90.0),
            Column::figures("difference", 90.0),
        ];
        columns[2].head = crate::wording::sentences::whose(outline);
        let rows: Vec<Vec<String>> = apart
            .into_iter()
            .map(|wall| vec![wall.side, wall.measured, wall.drawn, wall.difference])
            .collect();
        stack.table(8.0, &columns, &rows);
    }
    for note in only {
        stack.paragraph(8.0, &note);
    }
}

/// The method, rule by rule, each with its source.
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
    let told = [
        format!("Each wall to the {fine}: every side, outside, to the nearest {fine}, halves {halves}; only the area is rounded after that, once, to the square foot (ANSI Z765-2021 section 3 reads to the inch or the tenth and reports the whole square foot; read second-hand)."),
        format!("Each wall to the whole foot: every side, outside the veneer, to the nearest foot, halves {halves} (published in assessors' manuals, for example Maryland SDAT, Assessment Procedure Manual; Cabarrus County NC, 2012 schedule of values)."),
        "Closing: where rounded sides do not come back to their start, the nearest outline on whole steps that does is taken (least sum of squared changes; of walls that tie, the longest first); an estimated wall is rounded from the length that closing as measured gives it; the pieces above are the walls that result.".to_owned(),
        "Area: by the coordinates of the corners, in whole nanometres, exact (any surveying text, for example Mahun, Open Access Surveying Library, COGO ch. H); a curved wall by its chord and rise, r = (c² + 4h²) ÷ 8h, area = r²(θ − sin θ) ÷ 2 (International Correspondence Schools, The Building Trades Pocketbook, Mensuration).".to_owned(),
        format!("What whole feet could give: a wall within {} ft of half a foot may be read either way (common practice).", say.settings.reading.decimal_feet()),
        "What would account for a figure: the area under that reason, give or take twice what other readings of the walls would change it by (about 95 %), and half a square foot for the rounded total.".to_owned(),
        "Counted: living space above grade; what is open to below, under a low ceiling, or outdoors is taken off; garages, porches and the like are shown and not counted.".to_owned(),
        "This is not a statement under ANSI Z765: whoever makes such a statement sees the interior, and says what the standard asks for.".to_owned(),
    ];
    for text in told {
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
        let kinds = ["measured", "by closing", "estimated", "from the plan", "from the record"];
        let told = kinds.iter().filter_map(|kind| {
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
        let told: Vec<String> = told.collect();
        stack.paragraph(
            8.5,
            &format!("Of {}: {}.", words::count(sides.len(), "side"), words::all_of(&told)),
        );
    }
    let interior = match say.house.particulars.interior_seen {
        Some(true) => "The interior was seen.",
        _ => "The interior was not seen.",
    };
    stack.paragraph(8.5, interior);
    stack.paragraph(8.5, "I obtained the sides as said here.");
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
    // What is declared and the line to sign stay on one page.
    for held in stack.rows.iter_mut().rev().take(5) {
        held.holds_next = true;
    }
    stack.row(row);
}
