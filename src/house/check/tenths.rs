//! Questions about lengths that may have been read otherwise than they are taken: a point between feet and inches, or
//! inches without the mark of the feet.

use crate::diagnostic::{Diagnostic, Word, quoted};
use crate::geometry::compass::Direction;
use crate::house::Side;
use crate::house::check::Checker;
use crate::sketch::statement::Run;
use crate::units::length::{Form, Length, WrittenLength};

impl Checker<'_> {
    /// Asks whether `12.6` among feet and inches, which is read as 12.6 ft, was meant as 12' 6", and asks the same
    /// about `28.10` anywhere.
    pub(super) fn report_tenths_beside_inches<'a>(&mut self, name: &str, sides: &'a [Side]) {
        // A file that states its units means what it says.
        let has_none = self.glance.is_marked && self.glance.is_without_tenths_of_inches;
        if self.sketch.heads.units.is_some() || has_none {
            return;
        }
        let straight = |side: &'a Side| match &side.run {
            Run::Straight(_, written) => Some((side, written)),
            _ => None,
        };
        let is_in_inches = |(side, written): (&Side, &WrittenLength)| {
            written.form() == Form::FeetAndInches && side.typed.contains('"')
        };
        let beside_inches = sides.iter().filter_map(straight).any(is_in_inches);
        for (side, written) in sides.iter().filter_map(straight) {
            self.report_tenths_of_an_inch(name, side, written.length(), sides);
        }
        self.report_inches_alone(name, sides);
        // `.5` cannot be meant as feet and inches; only digits before the point can be feet.
        let bare = |(side, written): (&'a Side, &WrittenLength)| {
            let (feet, tenths) = bare_decimal(&side.typed)?;
            Some((side, written.length().spoken(), feet, tenths))
        };
        let all = || sides.iter().filter_map(straight).filter_map(bare);
        // The walls of another space show too that a tape in feet and inches was read.
        let may_be_inches =
            all().all(|(.., tenths)| tenths.parse::<u32>().is_ok_and(|inches| inches < 12));
        let is_elsewhere = !beside_inches && may_be_inches && self.has_feet_and_inches();
        let asked = if beside_inches || is_elsewhere {
            all().next()
        } else if self.decimals_look_like_inches() {
            // The clearest example: 28.10 or 28.11.
            all().find(|(.., tenths)| matches!(*tenths, "10" | "11")).or_else(|| all().next())
        } else {
            None
        };
        let Some((side, length, feet, tenths)) = asked else { return };
        let message = format!(
            "{}: {feet}.{tenths}{beside} is taken as {feet}.{tenths} ft, which is {length}",
            quoted(name),
            beside = match (beside_inches, is_elsewhere) {
                (true, _) => " beside feet and inches",
                (false, true) => " in a file with feet and inches",
                (false, false) => "",
            }
        );
        let inches = tenths.parse::<u32>().ok().filter(|&inches| (1..12).contains(&inches));
        // `2.8` may be 28 feet with a point too many; `12.6` is no wall of 126 feet.
        let without = (feet.len() == 1 && tenths.len() == 1).then(|| format!("{feet}{tenths}'"));
        let too_many = without.as_ref().map_or(String::new(), |length| {
            format!("; if the point does not belong there, `{length}`")
        });
        let help = match inches {
            Some(inches) => format!(
                "if {feet} feet and {inches} inches were read, type `{feet}' {inches}\"`; if not, `{feet}.{tenths}'`{too_many}"
            ),
            None => format!("if that is right, type `{feet}.{tenths}'`{too_many}"),
        };
        let read = inches.map(|inches| format!("{feet}' {inches}\""));
        let fault = Diagnostic::new(Word::TenthsBesideInches, side.span, message).help(help);
        let fault = either(fault, side, read, format!("{feet}.{tenths}'"));
        self.report(match without {
            Some(length) => either(fault, side, None, length),
            None => fault,
        });
    }

    /// Asks whether `22.4"` was meant as 22' 4" in a walk whose other sides are in feet: no tape shows tenths of an inch.
    fn report_tenths_of_an_inch(
        &mut self,
        name: &str,
        side: &Side,
        length: Length,
        sides: &[Side],
    ) {
        let in_feet = |other: &Side| other.number != side.number && other.typed.contains('\'');
        let Some((feet, tenths)) = tenths_of_an_inch(&side.typed) else { return };
        if length < Length::FOOT || !sides.iter().any(in_feet) {
            return;
        }
        let whole = feet.parse::<u32>().unwrap_or(0);
        let spoken = format!("{}' {}.{tenths}\"", whole.div_euclid(12), whole.rem_euclid(12));
        let message = format!(
            "{}: {feet}.{tenths}\" beside lengths in feet is taken as inches, which are {spoken}",
            quoted(name)
        );
        let inches = tenths.parse::<u32>().ok().filter(|&inches| inches < 12);
        let help = match inches {
            Some(inches) => format!(
                "if {feet} feet and {inches} inches were read, type `{feet}' {inches}\"`; if not, `{spoken}`"
            ),
            None => format!("if that is right, type `{spoken}`"),
        };
        let read = inches.map(|inches| format!("{feet}' {inches}\""));
        let fault = Diagnostic::new(Word::TenthsBesideInches, side.span, message).help(help);
        self.report(either(fault, side, read, spoken));
    }

    /// Asks whether `402"` was meant as 40' 2" in a walk whose other sides are in feet: with the mark left out of both walls
    /// that face each other, the walk closes.
    fn report_inches_alone(&mut self, name: &str, sides: &[Side]) {
        let read = |side: &Side| {
            let (_, digits) = side.typed.strip_suffix('"')?.split_once(' ')?;
            let is_number = digits.len() >= 3 && digits.bytes().all(|byte| byte.is_ascii_digit());
            // 11 inches have two digits, and so has no other number that begins with another digit.
            let at =
                digits.len() - if digits.ends_with("10") || digits.ends_with("11") { 2 } else { 1 };
            let (feet, inches) = digits.split_at_checked(at).filter(|_| is_number)?;
            let feet = feet.parse::<u32>().ok().filter(|feet| (4..200).contains(feet))?;
            Some((digits.to_owned(), format!("{feet}' {inches}\"")))
        };
        let in_feet = sides.iter().filter(|side| side.typed.contains('\'')).count();
        let found = sides.iter().find_map(|side| Some((side, read(side)?)));
        let Some((side, (digits, meant))) = found.filter(|_| in_feet >= 2) else { return };
        let whole = digits.parse::<u32>().unwrap_or(0);
        let spoken = format!("{}' {}\"", whole.div_euclid(12), whole.rem_euclid(12));
        let message = format!(
            "{}: {digits}\" beside lengths in feet is taken as inches, which are {spoken}",
            quoted(name)
        );
        let help = format!(
            "if {meant} was read, type that, with the mark after the feet; if not, `{spoken}`"
        );
        let fault = Diagnostic::new(Word::TenthsBesideInches, side.span, message).help(help);
        self.report(either(fault, side, Some(meant), spoken));
    }

    /// Whether a wall of some space is in feet and inches.
    fn has_feet_and_inches(&self) -> bool {
        let spaces = self.sketch.levels.iter().flat_map(|level| &level.spaces);
        spaces.flat_map(|space| space.walk.sides.iter()).any(|side| {
            matches!(&side.run, Run::Straight(_, written) if written.form() == Form::FeetAndInches)
                && side.typed.contains('\'')
                && side.typed.contains('"')
        })
    }

    /// Whether all decimals of a file that has no other lengths could be inches after a point: none is over 11, and
    /// either one is written as tenths never are (`28.10`), or none is above .11.
    fn decimals_look_like_inches(&self) -> bool {
        let spaces = self.sketch.levels.iter().flat_map(|level| &level.spaces);
        let sides = spaces.flat_map(|space| space.walk.sides.iter());
        let all: Vec<&str> =
            sides.filter_map(|side| bare_decimal(&side.typed)).map(|(_, tenths)| tenths).collect();
        let as_inches = |tenths: &&str| tenths.parse::<u32>().is_ok_and(|inches| inches <= 11);
        let is_low = |tenths: &&str| {
            matches!(*tenths, "0" | "1" | "00" | "10" | "11") || tenths.starts_with('0')
        };
        let says_ten = |tenths: &&str| matches!(*tenths, "10" | "11");
        let has_tenths = all.iter().any(|tenths| *tenths != "0" && *tenths != "00");
        all.iter().all(as_inches)
            && has_tenths
            && (all.iter().any(says_ten) || all.iter().all(is_low))
    }
}

/// Offers the length that may have been read instead of a number with a point, and the length as it is taken.
fn either(fault: Diagnostic, side: &Side, read: Option<String>, taken: String) -> Diagnostic {
    let Some(way) = side.direction.map(Direction::word) else { return fault };
    let both = read.into_iter().chain([taken]);
    both.fold(fault, |fault, length| fault.repair(side.span, format!("{way} {length}")))
}

/// The digits before and after the decimal point of a side that ends in a decimal number without a unit; `None` for
/// any other side.
fn bare_decimal(typed: &str) -> Option<(&str, &str)> {
    // Most sides end in a unit, and this is the quickest way to find that out.
    if !typed.ends_with(|last: char| last.is_ascii_digit()) {
        return None;
    }
    let (before, tenths) = typed.rsplit_once('.')?;
    let feet = before.rsplit(' ').next()?;
    let is_number =
        |part: &str| !part.is_empty() && part.bytes().all(|digit| digit.is_ascii_digit());
    let feet = feet.trim_start_matches(|c: char| c.is_ascii_alphabetic());
    (is_number(feet) && is_number(tenths)).then_some((feet, tenths))
}

/// The digits before and after the point of a side in inches alone, such as `22.4"`.
fn tenths_of_an_inch(typed: &str) -> Option<(&str, &str)> {
    let number = typed.strip_suffix('"').filter(|number| !number.contains(['\'', '/']))?;
    bare_decimal(number)
}
