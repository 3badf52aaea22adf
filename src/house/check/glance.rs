//! What all sides of a file have in common, seen in one pass, so that checks for what is rare are left out at once.

use crate::house::model::ends_in_a_mark;
use crate::sketch::statement::Run;
use crate::sketch::{Side, Sketch, SpaceSketch};
use crate::units::length::Form;

/// What is true of every side of every space and lot.
pub(in crate::house) struct Glance {
    /// Each is a direction and a length.
    pub(super) is_straight: bool,
    /// None has words after it.
    pub(super) is_wordless: bool,
    /// Each ends in the mark of a unit.
    pub(super) is_marked: bool,
    /// None ends in a decimal number of inches, or in inches alone of three digits or more.
    pub(super) is_without_tenths_of_inches: bool,
    /// The notation of all sides of spaces; `None` if there are several, or none.
    pub(super) form: Option<Form>,
}

/// Whether a typed side ends in an inch mark, digits before it, and a point before those, or three digits and more after
/// its direction.
fn ends_in_odd_inches(typed: &str) -> bool {
    let mut backward = typed.bytes().rev();
    if backward.next() != Some(b'"') {
        return false;
    }
    let digits = backward.clone().take_while(u8::is_ascii_digit).count();
    match backward.nth(digits) {
        Some(b'.') => true,
        Some(b' ') => digits >= 3,
        _ => false,
    }
}

impl Glance {
    pub(super) fn at(sketch: &Sketch) -> Glance {
        let mut glance = Glance {
            is_straight: true,
            is_wordless: true,
            is_marked: true,
            is_without_tenths_of_inches: true,
            form: None,
        };
        let mut is_one_form = true;
        let mut look = |space: &SpaceSketch, is_space: bool| {
            for Side { run, words, typed, .. } in &*space.walk.sides {
                if !space.walk.is_plain {
                    let typed = typed.as_str();
                    glance.is_wordless &= words.are_none();
                    glance.is_marked &= ends_in_a_mark(typed);
                    glance.is_without_tenths_of_inches &= !ends_in_odd_inches(typed);
                }
                let Run::Straight(_, length) = run else {
                    glance.is_straight = false;
                    continue;
                };
                if is_space {
                    let form = length.form();
                    is_one_form &= *glance.form.get_or_insert(form) == form;
                }
            }
        };
        for level in &sketch.levels {
            level.spaces.iter().for_each(|space| look(space, true));
        }
        sketch.lots.iter().for_each(|lot| look(lot, false));
        glance.form = glance.form.filter(|_| is_one_form && glance.is_straight);
        glance
    }
}
