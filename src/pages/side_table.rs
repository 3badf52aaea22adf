//! The side table: every side as typed, at the outside face, under both rules, and on the record.

use crate::areas::SideRow;
use crate::areas::at_face::Ruled;
use crate::geometry::outline::Outline;
use crate::geometry::traverse::Misclosure;
use crate::house::LengthSource;
use crate::house::{Face, Run, Side, SideRule, Space};
use crate::pages::layout::{Column, Line, Stack};
use crate::reconcile::{Figure, Reconciliation};
use crate::units::decimal::{group_thousands, rounded_quotient};
use crate::units::length::{FineStep, Length, Step};
use crate::wording::certainty::{closed_by, shared_walls};
use crate::wording::compass::{on_drawings, true_north};
use crate::wording::sentences::{Sentences, capital, signed_length, to_hundredths};
use rust_decimal::Decimal;

/// Every side of every space: as typed, at the outside face, under both rules, on the record, and how it was
/// obtained.
///
/// Returns whether a wall is adjusted from its own rounding, or may be: where walls go by bearings, that is not told.
pub(crate) fn side_table(
    stack: &mut Stack,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
) -> bool {
    if say.house.spaces.is_empty() {
        return false;
    }
    stack.heading("Every side, as typed and as used");
    let is_inch = say.settings.fine == FineStep::Inch;
    let spaces = 0..say.house.spaces.len();
    let is_recorded = spaces.into_iter().any(|space| {
        let sides = 0..say.house.spaces[space].sides.len();
        sides.into_iter().any(|side| say.recorded_length(reconciliation, space, side).is_some())
    });
    let mut columns = vec![
        Column::short("", 20.0),
        Column::short("wall", 32.0),
        Column::words("as typed"),
        Column::figures("at the\noutside face", if is_recorded { 100.0 } else { 108.0 }),
        Column::figures(if is_inch { "to the\ninch" } else { "to a tenth\nof a foot" }, 62.0),
        Column::figures("to the\nwhole foot", 58.0),
    ];
    let halves = to_half_feet(say, reconciliation);
    if halves.is_some() {
        columns.push(Column::figures("to the\nhalf foot", 50.0));
    }
    // Without a length on the record there is nothing to compare with ours.
    if is_recorded {
        let record = [Column::figures("on the\nrecord", 56.0), Column::figures("differs by", 56.0)];
        columns.extend(record);
    }
    columns.extend([Column::short("", 14.0), Column::short("obtained", 58.0)]);
    let mut rows = Vec::new();
    let mut any_moved = false;
    for (space, here) in say.house.spaces.iter().enumerate() {
        let face = match here.kind.has_walls() && here.face != Face::Outside {
            true => format!(", lengths to the {} face", here.face.word()),
            false => String::new(),
        };
        rows.push(Line::Over(format!("{}{face}", here.name)));
        for (side, figures) in here.sides.iter().zip(say.areas.side_rows(space)) {
            let halves = halves.as_ref().map(|ruled| &ruled.outlines[space].outline);
            let traced = Traced::of(say, reconciliation, space, side, &figures, halves);
            any_moved |= traced.is_moved;
            rows.push(Line::Plain(traced.cells(is_recorded)));
        }
        rows.push(Line::Note(about_sides(say, space)));
        rows.extend(said_of_sides(here).map(Line::Note));
    }
    stack.table_of(7.3, &columns, &rows);
    let heads = &say.house.particulars;
    let true_north = heads.true_north.map(|bearing| true_north(bearing.unit_vector()));
    let up = on_drawings(heads.front, true_north.as_deref());
    stack.paragraph(
        7.0,
        &format!("Typed directions are those in which the walls are walked; {up}."),
    );
    if any_moved {
        stack.paragraph(
            7.0,
            "* adjusted from its own rounding so that the outline comes back to its start",
        );
    }
    any_moved || say.house.spaces.iter().any(|space| space.closed.traverse.has_bearings())
}

/// The outlines with each wall rounded to the half foot; `None` unless a figure states half-foot walls.
pub(crate) fn to_half_feet(say: &Sentences<'_>, reconciliation: &Reconciliation) -> Option<Ruled> {
    let is_half = |figure: &Figure| figure.side_rule() == SideRule::Step(Step::HalfFoot);
    let rule = say.settings.rule_for_step(Step::HalfFoot);
    let is_needed = reconciliation.figures().iter().any(is_half);
    is_needed.then(|| say.areas.outside.ruled(rule, say.settings.reading))
}

/// A length as typed, with feet to the hundredth after it if it is in feet and inches or metric, because rounding uses
/// feet.
fn in_feet_too(say: &Sentences<'_>, length: Length) -> String {
    let text = say.length(length);
    let feet = to_decide(length);
    match text.ends_with('"') || say.is_metric() {
        true if say.is_metric() => format!("{text} = {feet} ft"),
        true => format!("{text} = {feet}"),
        false => text,
    }
}

/// Feet to the hundredth; with a further digit where the hundredth would stand at a half that the length itself does
/// not reach: 3.2 m is 10.499 ft and not 10.5.
fn to_decide(length: Length) -> String {
    const THOUSANDTHS: i128 = 1_000;
    /// A twentieth of a foot, which is the half of each step, in hundredths of a foot.
    const HALF_STEP: i128 = 5;
    let foot = i128::from(Length::FOOT.nm());
    let hundredths = rounded_quotient(i128::from(length.nm()) * 100, foot);
    let is_below = i128::from(length.nm()) * 100 < hundredths * foot;
    if !is_below || hundredths % 10 != HALF_STEP && hundredths % 100 != 50 {
        return to_hundredths(length);
    }
    let thousandths = rounded_quotient(i128::from(length.nm()) * THOUSANDTHS, foot);
    Decimal::from_i128_with_scale(thousandths, 3).normalize().to_string()
}

/// What was typed, with commas in whole numbers of four digits and more: `north 13,050 mm`.
fn grouped(typed: &str) -> String {
    const LONG: usize = 4;
    let is_whole =
        |word: &str| word.len() >= LONG && word.bytes().all(|byte| byte.is_ascii_digit());
    let word = |word: &str| match is_whole(word) {
        true => group_thousands(word),
        false => word.to_owned(),
    };
    typed.split(' ').map(word).collect::<Vec<_>>().join(" ")
}

/// One row of the side table.
struct Traced {
    /// The cells from its number to its whole-foot length.
    ours: Vec<String>,
    /// The cells with its length on the record, and the difference.
    recorded: [String; 2],
    how: &'static str,
    /// Whether closing moved a length away from its rounded value.
    is_moved: bool,
}

impl Traced {
    fn of(
        say: &Sentences<'_>,
        reconciliation: &Reconciliation,
        space: usize,
        side: &Side,
        figures: &SideRow,
        halves: Option<&Outline>,
    ) -> Traced {
        let here = &say.house.spaces[space];
        let areas = &say.areas.spaces[space];
        let outside = say.areas.outside_length(space, side.number().index());
        let recorded = say.recorded_length(reconciliation, space, side.number().index());
        let mut is_moved = false;
        let mut ruled = |length: Option<Length>, step: Step, outline: &Outline| {
            if let Some(legs) = legs(say, space, side, outline, to_hundredths) {
                let alone = legs_alone(say, space, side, step);
                let moved = alone.is_some_and(|alone| alone != legs);
                is_moved |= moved;
                return if moved { format!("*{legs}") } else { legs };
            }
            let Some(length) = length else { return String::new() };
            let alone = outside.map(|outside| outside.rounded(step, say.settings.halves));
            let moved =
                !here.closed.traverse.has_bearings() && alone.is_some_and(|alone| alone != length);
            is_moved |= moved;
            let text = match step {
                Step::Inch => length.to_string(),
                _ => to_hundredths(length),
            };
            if moved { format!("*{text}") } else { text }
        };
        let fine = ruled(figures.tenth_foot, say.settings.fine.step(), areas.tenth_foot());
        let feet = ruled(figures.whole_foot, Step::WholeFoot, areas.whole_foot());
        let half = halves.map(|outline| {
            ruled(
                say.areas.side_under(space, side.number().index(), outline),
                Step::HalfFoot,
                outline,
            )
        });
        let differs = recorded.zip(outside).map(|(recorded, outside)| recorded - outside);
        let slanted = || {
            legs(say, space, side, areas.outside(), |length| say.length(length))
                .unwrap_or_else(|| pieces(say, space, side))
        };
        // Sentences tell a wall by where it stands.
        let faces = here.closed.outline.faces(side.number().index());
        let mut ours = vec![
            side.number().to_string(),
            faces.map(|faces| faces.word().to_owned()).unwrap_or_default(),
            grouped(side.typed()),
            outside.map_or_else(slanted, |outside| in_feet_too(say, outside)),
            fine,
            feet,
        ];
        ours.extend(half);
        let recorded = [
            recorded.map(|recorded| say.length(recorded)).unwrap_or_default(),
            differs.map(|differs| signed_length(say, differs)).unwrap_or_default(),
        ];
        Traced { ours, recorded, how: how(side.how()), is_moved }
    }

    fn cells(self, is_recorded: bool) -> Vec<String> {
        let mut cells = self.ours;
        if is_recorded {
            cells.extend(self.recorded);
        }
        cells.extend([String::new(), self.how.to_owned()]);
        cells
    }
}

/// The run and the rise of a slanted wall, as rounded; empty for any other wall.
fn legs(
    say: &Sentences<'_>,
    space: usize,
    side: &Side,
    outline: &Outline,
    text: impl Fn(Length) -> String,
) -> Option<String> {
    let is_slanted = matches!(side.run, Run::Diagonal(..));
    let traverse = &say.areas.outside.spaces[space].traverse;
    let mut pieces = traverse.sides.iter().zip(outline.vectors());
    let (_, vector) = pieces.find(|(piece, _)| piece.source == Some(side.number().index()))?;
    let leg = |nm: i64| text(Length::from_nm(nm.abs()));
    is_slanted.then(|| format!("{} by {}", leg(vector.north), leg(vector.east)))
}

/// The run and the rise of a slanted wall at the outside face, each rounded by itself; `None` for any other wall.
fn legs_alone(say: &Sentences<'_>, space: usize, side: &Side, step: Step) -> Option<String> {
    let outside = say.areas.spaces[space].outside();
    let rounded = |length: Length| to_hundredths(length.rounded(step, say.settings.halves));
    legs(say, space, side, outside, rounded)
}

/// The lengths at the outside face of a side that is in several pieces there, because its parts move by different
/// amounts.
fn pieces(say: &Sentences<'_>, space: usize, side: &Side) -> String {
    let walked = &say.areas.outside.spaces[space].traverse.sides;
    let of_side = walked.iter().filter(|piece| piece.source == Some(side.number().index()));
    let lengths: Vec<String> =
        of_side.map(|piece| say.length(piece.shape.vector().chord_length())).collect();
    match lengths.len() {
        0 | 1 => String::new(),
        _ => {
            let whole: Length = say.areas.outside.spaces[space]
                .traverse
                .sides
                .iter()
                .filter(|piece| piece.source == Some(side.number().index()))
                .map(|piece| piece.shape.vector().chord_length())
                .sum();
            format!("{}\n= {} ft", lengths.join(" + "), to_hundredths(whole))
        }
    }
}

/// How a side was obtained, in words.
pub(crate) fn how(source: LengthSource) -> &'static str {
    match source {
        LengthSource::Closing => "by closing",
        LengthSource::Estimated => "estimated",
        LengthSource::Plan => "from plan",
        LengthSource::Record => "from record",
        _ => "measured",
    }
}

/// The area and perimeter as measured, the misclosure that was spread, and what wall thicknesses add.
fn about_sides(say: &Sentences<'_>, space: usize) -> String {
    let here = &say.house.spaces[space];
    let areas = &say.areas.spaces[space];
    let mut note = format!(
        "Before any rounding: {}, perimeter {}.",
        say.exact_size(areas.as_measured),
        say.perimeter(here.outline().perimeter())
    );
    if here.closed.misclosure != Misclosure::default() {
        note.push_str(&format!(
            " The sides end {} of where they began; {}, which makes them, to the hundredth of a foot: {}.",
            here.closed.misclosure.spoken(),
            closed_by(here),
            closed_lengths(here)
        ));
    }
    if here.face != Face::Outside && here.kind.has_walls() {
        note.extend(shared_walls(here).map(|walls| {
            format!(" {}: shared with a neighbor, counted to the centerline.", capital(&walls))
        }));
        note.push_str(&format!(
            " Moved out by the thickness of the walls, the area is {}; each wall is rounded after that.",
            say.exact_size(areas.outside().area())
        ));
    }
    note
}

/// The captions of photos and the notes given after the sides.
fn said_of_sides(space: &Space) -> impl Iterator<Item = String> {
    space.sides.iter().filter_map(|side| {
        let photo = side.words.photo.as_ref().map(|photo| match side.words.photo_file {
            Some(_) => format!("photo \"{photo}\""),
            None => format!("photo \"{photo}\", not enclosed"),
        });
        let said: Vec<String> = photo.into_iter().chain(side.words.note.clone()).collect();
        (!said.is_empty()).then(|| format!("Side {}: {}.", side.number(), said.join("; ")))
    })
}

/// The lengths of the sides after adjustment, in feet.
fn closed_lengths(space: &Space) -> String {
    const MOST: usize = 40;
    let lengths = space.closed.outline.vectors().iter().take(MOST);
    let lengths: Vec<String> = lengths.map(|side| to_hundredths(side.chord_length())).collect();
    let more = if space.sides.len() > MOST { " …" } else { "" };
    format!("{}{more}", lengths.join(", "))
}
