//! The page of a lot: its calls along its lines, and its area in square feet and acres.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use rust_decimal::Decimal;

use crate::geometry::compass::Direction;
use crate::geometry::outline::Vector;
use crate::house::Lot;
use crate::house::Run as SideRun;
use crate::house::check::feet_text;
use crate::pages::drawing::canvas::{Block, Canvas, Dimension, most_looked_at};
use crate::pages::drawing::fit::{self, Fitting, Frame, Reach};
use crate::pages::drawing::strip;
use crate::pages::drawing::view::Turned;
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::layout::{Column, EDGE_PT, Flow, Stack};
use crate::pages::page::{Part, Point};
use crate::pages::pieces::{BY_CHORD, BY_CORNERS};
use crate::units::area::Area;
use crate::units::decimal::{group_thousands, rounded_quotient};
use crate::units::length::Length;
use crate::wording::outlines::lot_closure;
use crate::wording::sentences::{Sentences, capital, to_hundredths};

/// The height of the street, the scale bar and the scale below a drawing.
const SCALE_PT: f64 = 40.0;

/// Fills the page of a lot.
pub(crate) fn lot(flow: &mut Flow, say: &Sentences<'_>, lot: &Lot) {
    let area = lot.outline().area();
    let told = format!("{}: {}, {}", lot.name(), say.size(area), say.land_of(lot));
    flow.begin("Lot", &told);
    let mut top = Stack::new(flow.width_pt());
    top.title(12.0, &told);
    if let Some(recorded) = lot.recorded {
        top.paragraph(9.0, &format!("The record says {recorded}."));
    }
    top.space(4.0);
    flow.pour(&top);
    drawing(flow, say, lot);
    flow.pour(&calls(flow.width_pt(), say, lot));
}

fn drawing(flow: &mut Flow, say: &Sentences<'_>, lot: &Lot) {
    let heads = &say.house.particulars;
    // A deed's bearings are relative to north, so the lot is drawn with north up unless the file states a street
    // side.
    let turned = Turned { front: heads.front.unwrap_or(Direction::South) };
    let outline = lot.outline();
    let flat = outline.flattened();
    let reach = Reach::of(flat.iter().map(|&(east, north, _)| (east, north)), turned);
    // The drawing, the scale and the calls go on one page if the drawing is then large enough.
    let below = calls(flow.width_pt(), say, lot).height_pt() + SCALE_PT;
    let height_pt = (flow.room_pt() - below).max(280.0);
    let frame = Frame::new(Point::new(EDGE_PT, flow.y_pt()), flow.width_pt(), height_pt)
        .in_meters(say.draws_in_meters());
    let mut skip = 0;
    loop {
        let (view, height) = fit::fitted(
            &reach,
            turned,
            &frame,
            40.0,
            Fitting { skip, airy: 2.0, ..Fitting::default() },
        );
        let right_bottom = Point::new(EDGE_PT + frame.width_pt, frame.left_top.y_pt + height);
        let mut canvas = Canvas::new(view, frame.left_top, right_bottom)
            .within(most_looked_at(say.house.lots.len()));
        let walls = view.walls(outline, (0, 0));
        canvas.outline(&walls, 1.4, Some([14.0, 3.0]), Part::Outline);
        if let Some(bearing) = heads.true_north {
            let corner = Point::new(right_bottom.x_pt, frame.left_top.y_pt);
            strip::north(&mut canvas, bearing.unit_vector(), corner, "true north");
        }
        let name = fonts::shortened(Typeface::Bold, 10.0, &fonts::shown(lot.name()), 200.0);
        let area = outline.area();
        let lines = |size: f64| Block {
            lines: vec![
                (Typeface::Bold, size, name.clone()),
                (Typeface::Plain, size - 1.5, say.size(area)),
                (Typeface::Plain, size - 1.5, land(say, area)),
            ],
        };
        let figure = view.flattened(outline, (0, 0));
        canvas.block(&figure, &[], &[lines(10.0), lines(8.0)]);
        let dimensions = walls.iter().enumerate().map(|(i, wall)| Dimension {
            wall: *wall,
            or_else: None,
            words: label(lot, i),
            hand: Typeface::Plain,
            mark: None,
        });
        let rest = canvas.dimensions(dimensions.collect());
        if !rest.is_empty() && skip < 2 {
            skip += 1;
            continue;
        }
        for (i, wall) in walls.iter().enumerate() {
            if !canvas.number(wall, &figure, &[&figure], &[], i + 1) {
                canvas.number_led(wall, i + 1);
            }
        }
        let mut inks = canvas.finish();
        strip::strip(&mut inks, say, view.scale, &frame, height);
        let told = format!("{}, drawn to scale; its sides are listed below.", lot.name());
        flow.put_drawing(inks, view.scale.pt_per_ft, &told);
        flow.down(height + SCALE_PT);
        return;
    }
}

/// The area of land in acres, or in hectares if the file is metric.
fn land(say: &Sentences<'_>, area: Area) -> String {
    match say.is_metric() {
        true => format!("{} hectares", area.in_unit(Area::HECTARE, 2)),
        false => format!("{} acres", area.in_unit(Area::ACRE, 2)),
    }
}

/// A side on the drawing: as in a deed, but where it runs along an axis its length alone, since the way in which it is walked
/// reads as the side on which it stands.
fn label(lot: &Lot, side: usize) -> String {
    match &lot.sides()[side].run {
        SideRun::Straight(_, written) => written.to_string(),
        _ => call(lot, side),
    }
}

/// A side as in a deed: bearing and distance.
fn call(lot: &Lot, side: usize) -> String {
    let vector: Vector = lot.outline().vectors()[side];
    match &lot.sides()[side].run {
        SideRun::Bearing(bearing, written) => {
            format!("{} {written}", crate::sketch::bearing_written(bearing))
        }
        SideRun::Straight(direction, written) => format!("{} {written}", direction.word()),
        SideRun::Arc(..) => format!(
            "{} chord, rise {}",
            vector.chord_length().spoken(),
            Length::from_nm(vector.rise.abs()).spoken()
        ),
        SideRun::Close => format!("{} {}", vector.bearing(), feet_text(vector.chord_length())),
        _ => vector.chord_length().spoken(),
    }
}

/// A length with two decimals, as in a table of coordinates.
fn in_hundredths_of_a_foot(length: Length) -> String {
    padded(&to_hundredths(length))
}

fn in_hundredths_of_a_meter(length: Length) -> String {
    let hundredths = rounded_quotient(i128::from(length.nm()), i128::from(Length::CENTIMETER.nm()));
    let text = Decimal::from_i128_with_scale(hundredths, 2).to_string();
    let (whole, decimals) = text.split_once('.').unwrap_or((&text, "00"));
    format!("{}.{decimals}", group_thousands(whole))
}

fn padded(number: &str) -> String {
    match number.split_once('.').map(|(_, decimals)| decimals.len()) {
        None => format!("{number}.00"),
        Some(1) => format!("{number}0"),
        Some(_) => number.to_owned(),
    }
}

/// The table of calls, and how well they close.
fn calls(width_pt: f64, say: &Sentences<'_>, lot: &Lot) -> Stack {
    let mut stack = Stack::new(width_pt);
    let is_metric = say.is_metric();
    let unit = if is_metric { "meters" } else { "feet" };
    let closed = format!("{unit}, closed");
    let number = |length: Length| match is_metric {
        true => in_hundredths_of_a_meter(length),
        false => in_hundredths_of_a_foot(length),
    };
    let columns = [
        Column::short("", 20.0),
        Column::words("as typed"),
        Column::figures(&closed, 80.0),
        Column::figures("end, north", 84.0),
        Column::figures("end, east", 84.0),
    ];
    let mut at = (0, 0);
    let rows: Vec<Vec<String>> = lot
        .sides()
        .iter()
        .zip(lot.outline().vectors())
        .map(|(side, vector)| {
            at = (at.0 + vector.north, at.1 + vector.east);
            let place = |nm: i64| number(Length::from_nm(nm));
            vec![
                side.number().to_string(),
                match side.run {
                    SideRun::Close => format!("close: {}", call(lot, side.number().index())),
                    _ => side.typed().to_owned(),
                },
                number(vector.chord_length()),
                place(at.0),
                place(at.1),
            ]
        })
        .collect();
    stack.table(8.0, &columns, &rows);
    stack.space(4.0);
    let (north, east) = lot.misclosure();
    let told = if lot.last_is_computed() {
        "The last call is computed: straight back to the start. So the calls cannot be checked by where they end."
            .to_owned()
    } else if (north, east) == (Length::ZERO, Length::ZERO) {
        "The calls come back to their start.".to_owned()
    } else {
        format!(
            "{}. That is spread over them by the compass rule, each side in proportion to its length.",
            capital(&lot_closure(lot, is_metric))
        )
    };
    stack.paragraph(8.0, &told);
    let area = lot.outline().area();
    let is_curved = lot.outline().vectors().iter().any(|vector| vector.rise != 0);
    let by_chord = if is_curved { format!("; {BY_CHORD}") } else { String::new() };
    stack.paragraph(
        8.0,
        &format!(
            "Area by the coordinates of the corners, in {unit} from the start: {BY_CORNERS}{by_chord}. Lengths are shown to a hundredth; the area follows from them unrounded: {}, {} to the hundredth.",
            say.exact_size(area),
            land(say, area)
        ),
    );
    stack.paragraph(8.0, "The land is never added to the house.");
    stack
}
