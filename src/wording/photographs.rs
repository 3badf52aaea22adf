//! Sentences about photographs: which wall they show, and what they do not show.

use crate::diagnostic::words;
use crate::house::LengthSource;
use crate::house::WallPicture;
use crate::reconcile::Reconciliation;
use crate::wording::sentences::Sentences;

/// The note above the photographs.
pub(crate) const ABOUT: &str = "Below each photograph is the wall that the sides file names it for. Photographs are reduced in size, and the place and time data inside them are removed. Each sha256 is that of the picture inside this file. A photograph does not show how long a wall is.";

impl Sentences<'_> {
    /// Which of the walls and spaces behind the difference no photo shows; `None` if each has one.
    pub(crate) fn not_photographed(&self, reconciliation: &Reconciliation) -> Option<String> {
        let missing = reconciliation.without_photo();
        (!missing.is_empty()).then(|| {
            let them = if missing.len() == 1 { "it" } else { "them" };
            format!(
                "no photo is named yet of {}; the difference may be about {them}",
                words::all_of(&missing)
            )
        })
    }

    /// The caption of a photograph's wall: `Side 3 of House, east wall, 30' 4": measured; 31' on the record`.
    pub(crate) fn photographed(
        &self,
        reconciliation: &Reconciliation,
        wall: &WallPicture<'_>,
    ) -> String {
        let recorded = wall
            .place
            .and_then(|(space, side)| self.recorded_length(reconciliation, space, side))
            .map(|recorded| format!("; {} on the record", self.length(recorded)));
        let side = wall.side();
        // By where it stands, since a wall on the west side may have been walked to the north.
        let here = match wall.place {
            Some((space, side)) => self.wall_here(space, side),
            None => side.typed().to_owned(),
        };
        format!(
            "Side {} of {}, {here}: {}{}",
            side.number(),
            wall.of(),
            how(side.how()),
            recorded.unwrap_or_default()
        )
    }
}

/// How the length of a side was obtained, in words.
fn how(source: LengthSource) -> &'static str {
    match source {
        LengthSource::Closing => "not measured, follows from the other walls",
        LengthSource::Estimated => "estimated",
        LengthSource::Plan => "from plan",
        LengthSource::Record => "from record",
        _ => "measured",
    }
}
