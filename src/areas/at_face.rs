//! The walls of every space moved to one face, rounded by a rule, and the thicknesses assumed to move them.

use crate::areas::range;
use crate::areas::range::RoundedOutline;
use crate::areas::rule::Rule;
use crate::diagnostic::{Diagnostic, Diagnostics, Word, quoted};
use crate::geometry::offset::OffsetError;
use crate::house::Face;
use crate::house::House;
use crate::house::Space;
use crate::house::wall_moves::{
    ASSUMED_COMMON, ASSUMED_COMMON_WITHIN, ASSUMED_VENEER, ASSUMED_WALL,
    ASSUMED_WALL_BEHIND_VENEER, ASSUMED_WITHIN, Assumed, AtFace, CommonTaken,
};
use crate::units::area::Area;
use crate::units::length::Length;

/// The walls of every space at one face, not rounded.
#[derive(Clone, Debug)]
pub(crate) struct Walls {
    pub(crate) spaces: Vec<AtFace>,
}

/// The outline and area of every space under one rule.
#[derive(Clone, Debug)]
pub(crate) struct Ruled {
    pub(crate) outlines: Vec<RoundedOutline>,
    pub(crate) areas: Vec<Area>,
}

impl Walls {
    /// The walls of every space of a house at `face`.
    ///
    /// # Errors
    ///
    /// One diagnostic for each space whose walls cannot be moved to that face.
    pub(crate) fn of(house: &House, face: Face) -> Result<Walls, Diagnostics> {
        let mut spaces = Vec::with_capacity(house.spaces.len());
        let mut faults = Vec::new();
        for i in 0..house.spaces.len() {
            match house.at_face(i, face) {
                Ok(at) => spaces.push(at),
                Err(error) => faults.push(offset_diagnostic(&house.spaces[i], face, error)),
            }
        }
        if faults.is_empty() {
            Ok(Walls { spaces })
        } else {
            Err(Diagnostics::new(house.source().clone(), faults))
        }
    }

    /// The walls at `face` with more or less of those shared with other dwellings; `None` where that changes no space
    /// or where walls cannot be moved there.
    pub(crate) fn with_common(house: &House, face: Face, common: CommonTaken) -> Option<Walls> {
        let is_shared = |space: &Space| space.sides.iter().any(|side| side.words.common);
        if face == Face::Inside || !house.spaces.iter().any(is_shared) {
            return None;
        }
        let spaces = 0..house.spaces.len();
        let spaces = spaces.map(|i| house.with_common(i, face, common).ok());
        Some(Walls { spaces: spaces.collect::<Option<Vec<AtFace>>>()? })
    }

    /// Rounds the sides of every space by a rule.
    pub(crate) fn ruled(&self, rule: Rule, reading: Length) -> Ruled {
        let one = |at: &AtFace| {
            range::closed_on(at, rule.step, rule.halves, reading)
                .unwrap_or_else(|| RoundedOutline { outline: at.outline.clone(), crosses: true })
        };
        let outlines: Vec<RoundedOutline> = self.spaces.iter().map(one).collect();
        let areas = outlines.iter().map(|rounded| rounded.outline.area()).collect();
        Ruled { outlines, areas }
    }

    /// The area of every space, with no wall rounded.
    pub(crate) fn areas(&self) -> Vec<Area> {
        self.spaces.iter().map(|at| at.outline.area()).collect()
    }

    pub(crate) fn assumed(&self) -> Assumed {
        self.spaces.iter().fold(Assumed::default(), |all, at| all.or(at.needed.assumed))
    }

    /// A warning for each kind of thickness that was assumed, at the first space that needed it.
    pub(crate) fn assumption_warnings(&self, house: &House) -> Vec<Diagnostic> {
        let mut warnings = Vec::new();
        let first = |is: fn(&Assumed) -> bool| {
            self.spaces.iter().position(|at| is(&at.needed.assumed)).map(|i| house.spaces[i].span)
        };
        if let Some(span) = first(|assumed| assumed.veneer) {
            let warning = Diagnostic::new(Word::AssumedVeneer, span, format!("the thickness of the veneer is needed here; {ASSUMED_VENEER} is assumed"))
                .note(format!("3 5/8\" of brick and 1\" of air; where it is in the measured area the uncertainty allows {ASSUMED_WITHIN} either way"));
            // An upper floor may have siding over a floor of brick.
            let above = house.spaces.iter().find(|space| space.span == span);
            let warning = match above.filter(|space| space.level > 0) {
                Some(space) => warning.help(format!(
                    "if {} has no brick or stone before its walls, write `veneer none` at the end of this line",
                    quoted(&house.levels[space.level].name)
                )),
                None => warning,
            };
            warnings.push(
                warning.help("measure it at a window or a door and say so at the top of the file: `veneer` and its thickness, or `veneer none`"),
            );
        }
        for (is, thickness, what) in [
            (
                (|a| a.wall_behind_veneer) as fn(&Assumed) -> bool,
                ASSUMED_WALL_BEHIND_VENEER,
                "behind a veneer",
            ),
            (|a| a.wall, ASSUMED_WALL, "without a veneer, inside to outside"),
        ] {
            if let Some(span) = first(is) {
                warnings.push(
                    Diagnostic::new(Word::AssumedWall, span, format!("the thickness of the wall is needed here; {thickness} is assumed"))
                        .note(format!("usual for a wall {what}; where it is in the measured area the uncertainty allows {ASSUMED_WITHIN} either way"))
                        .help("measure it at a window or a door and say so at the top of the file: `wall` and its thickness"),
                );
            }
        }
        if let Some(span) = first(|assumed| assumed.common) {
            warnings.push(
                Diagnostic::new(Word::AssumedWall, span, format!("the thickness of the common wall is needed here; {ASSUMED_COMMON} is assumed"))
                    .note(format!("a wall shared with another dwelling counts to its centerline; where it is in the measured area the uncertainty allows {ASSUMED_COMMON_WITHIN} of its thickness either way"))
                    .help("measure it at a door, or ask the owner next door, and say so after the side: `wall` and its thickness"),
            );
        }
        warnings
    }
}

/// The diagnostic for a space whose walls cannot be moved to a face.
fn offset_diagnostic(space: &Space, face: Face, error: OffsetError) -> Diagnostic {
    let (name, face) = (quoted(&space.name), face.word());
    let side = |i: usize| &space.sides[i.min(space.sides.len() - 1)];
    let (word, span, message) = match error {
        OffsetError::Vanishes { side: i } => (
            Word::SideVanishes,
            side(i).span,
            format!(
                "{name}: moving the walls to the {face} face leaves nothing of {}",
                side(i).quoted()
            ),
        ),
        OffsetError::Cross { first, second } => (
            Word::SidesCross,
            side(first).span,
            format!(
                "{name}: moving the walls to the {face} face makes {} and {} cross or touch",
                side(first).quoted(),
                side(second).quoted()
            ),
        ),
    };
    Diagnostic::new(word, span, message)
        .help("the walls are thicker than the room between them: give those without veneer `veneer none`, or measure to the face that the figure uses")
}
