//! What to bring to the appraisal office, based on the house.

use crate::diagnostic::words;
use crate::house::{House, ReferenceSource, Side, SideNumber};
use crate::reconcile::Reconciliation;
use crate::units::length::Length;
use crate::value::gap::{counted_spaces, record};

/// What to bring to the appraisal office, one sentence per item, in the order in which it will be needed.
pub(crate) fn checklist(reconciliation: &Reconciliation) -> Vec<String> {
    let house = reconciliation.house();
    let mut list = vec![
        "the pages (`fairfoot pages`): the drawing, the calculations and the sides, so that each figure can be checked by hand".to_owned(),
        "the record card and the record's own sketch, from the office that keeps the record".to_owned(),
    ];
    list.extend(photos(reconciliation));
    list.extend(spaces(reconciliation));
    let missing = reconciliation.without_photo();
    if !missing.is_empty() {
        list.push(format!("the file names no photo yet of {}", words::all_of(&missing)));
    }
    list.push(who_measured(house));
    if house.particulars.interior_seen != Some(true) {
        list.push("a statement from someone who saw the inside (finish, ceiling heights, access): it was not seen for these figures".to_owned());
    }
    if !house.values.sales.is_empty() {
        list.push("for each comparable, its record card, its price and the date of sale, with all sizes measured the same way".to_owned());
    }
    list.push("estimates for repairs that the house needed on the day of valuation, if any: evidence besides size (common practice)".to_owned());
    list
}

/// A photo of each wall that differs from the record, or of all walls if none does.
fn photos(reconciliation: &Reconciliation) -> Vec<String> {
    let differing = differing_sides(reconciliation);
    if differing.is_empty() {
        return vec!["photos of the walls with the tape on them".to_owned()];
    }
    let photo = |wall: &Differing| {
        let Differing { space, side, measured, recorded } = wall;
        let has = side.words.photo.as_ref().map(|photo| format!(" (\"{photo}\")"));
        format!(
            "a photo of side {} of {} with the tape on it{}: {} measured, {} on the record",
            side.number(),
            words::the_named(space),
            has.unwrap_or_default(),
            measured.spoken(),
            recorded.spoken()
        )
    };
    differing.iter().map(photo).collect()
}

impl Reconciliation {
    /// The walls and spaces that deserve a photograph and have none: each wall whose recorded length differs by more
    /// than rounding can explain, and each uncounted space that the record says it counts, or would have to count to
    /// reach its total. Each is named in words (`side 5 of House`, or the space's name).
    #[must_use]
    pub fn without_photo(&self) -> Vec<String> {
        let has_photo = |side: &Side| side.words.photo.is_some();
        let walls = differing_sides(self);
        let walls = walls.iter().filter(|wall| !has_photo(wall.side));
        let walls = walls.map(|wall| format!("side {} of {}", wall.side.number(), wall.space));
        let counted = record(self).map(|figure| counted_spaces(figure, self.house()));
        let spaces = counted.unwrap_or_default().into_iter().filter(|name| {
            let space = self.house().spaces().iter().find(|space| space.name() == *name);
            space.is_some_and(|space| !space.sides().iter().any(has_photo))
        });
        walls.chain(spaces.map(str::to_owned)).collect()
    }
}

/// A wall whose recorded length differs from the measured one by more than rounding can explain.
struct Differing<'a> {
    space: &'a str,
    side: &'a Side,
    measured: Length,
    recorded: Length,
}

fn differing_sides(reconciliation: &Reconciliation) -> Vec<Differing<'_>> {
    let house = reconciliation.house();
    let spaces = house.spaces().iter().enumerate();
    let sides = spaces.flat_map(|(i, space)| {
        space.sides().iter().enumerate().map(move |(k, side)| (i, space, k, side))
    });
    let differing = sides.filter_map(|(i, space, k, side)| {
        let measured = reconciliation.areas().outside_length(i, k)?;
        let drawn = || drawn_length(reconciliation, i, side.number());
        let recorded = side.recorded().or_else(drawn)?;
        let is_beyond = reconciliation.settings().is_beyond_rounding(recorded - measured);
        is_beyond.then(|| Differing { space: space.name(), side, measured, recorded })
    });
    differing.collect()
}

/// The length of a wall on the record's own sketch; `None` if the sketch does not show that wall.
fn drawn_length(reconciliation: &Reconciliation, space: usize, side: SideNumber) -> Option<Length> {
    let mut outlines = reconciliation.outlines().iter();
    let outline = outlines
        .find(|outline| outline.drawn() == ReferenceSource::Record && outline.is_of_space(space))?;
    let matched = outline.matched().iter().find(|matched| matched.ours() == side)?;
    Some(matched.drawn())
}

/// An item asking for photos of the uncounted spaces that the record may count; `None` if there are none.
fn spaces(reconciliation: &Reconciliation) -> Option<String> {
    let house = reconciliation.house();
    let names = counted_spaces(record(reconciliation)?, house);
    (!names.is_empty()).then(|| {
        let names = words::all_named(&names);
        format!("photos of {names}, from outside and inside, showing what is there: ask whether the record's total counts it")
    })
}

fn who_measured(house: &House) -> String {
    let Some(measured) = &house.particulars.measured else {
        return "who measured, when and with what: the file does not say (`measured 2026-03-07 by \"the owner\" with \"laser meter\"`)".to_owned();
    };
    let by = measured.by.as_deref().unwrap_or("the person who measured");
    let with = measured.with.as_ref().map(|with| format!(" ({with})")).unwrap_or_default();
    let day = measured.date.strftime("%B %-d, %Y");
    format!("{by}, who measured on {day}{with}, or a signed statement")
}
