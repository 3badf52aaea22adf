//! Exact lengths in whole nanometers: how they are rounded and written.
//!
//! Every length read from a tape is a whole number of nanometers, since the foot is 0.3048 m exactly (NIST, *U.S.
//! Survey Foot: Revised Unit Conversion Factors*; 85 FR 62698, 5 Oct 2020). Sums and differences are therefore
//! exact.
//!
//! ```
//! use fairfoot::units::{Halves, Length, Step};
//!
//! let wall: Length = "42' 7 1/2\"".parse()?;
//! assert_eq!(wall.nm(), 42 * 304_800_000 + 7 * 25_400_000 + 12_700_000);
//! assert_eq!(wall.rounded(Step::WholeFoot, Halves::Up).to_string(), "43'");
//! assert_eq!(wall.rounded(Step::TenthFoot, Halves::Up).decimal_feet(), "42.6");
//! # Ok::<(), fairfoot::Error>(())
//! ```
#![expect(
    clippy::integer_division,
    clippy::cast_precision_loss,
    clippy::float_arithmetic,
    reason = "rounding to a step and the way to feet in a float live here"
)]

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, Neg, Sub};

/// A length in whole nanometers; negative only as a difference.
///
/// # Units
///
/// Nanometers: 1 ft = 304,800,000; 1 in = 25,400,000; 1/64 in = 396,875.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    /// Zero.
    pub const ZERO: Length = Length(0);
    /// One inch, 0.0254 m exactly.
    pub const INCH: Length = Length(25_400_000);
    /// One foot, 0.3048 m exactly.
    pub const FOOT: Length = Length(304_800_000);
    /// One centimeter.
    pub const CENTIMETER: Length = Length(10_000_000);
    /// One meter.
    pub const METER: Length = Length(1_000_000_000);
    /// The longest side a sides file may have: 10,000 ft.
    pub const LONGEST_SIDE: Length = Length(10_000 * 304_800_000);

    /// A length of `nm` nanometers.
    #[must_use]
    pub const fn from_nm(nm: i64) -> Length {
        Length(nm)
    }

    /// The length in nanometers.
    #[must_use]
    pub const fn nm(self) -> i64 {
        self.0
    }

    /// The length in feet as a floating-point number: for statistics and drawing, never for a printed figure.
    #[must_use]
    pub fn feet(self) -> f64 {
        self.0 as f64 / Length::FOOT.0 as f64
    }

    /// The absolute value.
    #[must_use]
    pub const fn abs(self) -> Length {
        Length(self.0.abs())
    }

    /// The length rounded to the nearest multiple of `step`; `halves` says which way a length exactly halfway is
    /// rounded.
    ///
    /// One state's manual rounds halves down in its examples, 12 ft 7 in to 13 and 12 ft 6 in to 12 (Maryland SDAT,
    /// *Assessment Procedure Manual*); rounding them up is common practice.
    ///
    /// ```
    /// use fairfoot::units::{Halves, Length, Step};
    /// let wall: Length = "12' 6\"".parse()?;
    /// assert_eq!(wall.rounded(Step::WholeFoot, Halves::Down), "12'".parse()?);
    /// assert_eq!(wall.rounded(Step::WholeFoot, Halves::Up), "13'".parse()?);
    /// # Ok::<(), fairfoot::Error>(())
    /// ```
    #[must_use]
    #[inline(always)]
    pub fn rounded(self, step: Step, halves: Halves) -> Length {
        // A unit that the compiler knows needs no division.
        let to = |unit: i64| Length(halves.quotient(self.0, unit) * unit);
        match step {
            Step::WholeFoot => to(const { Step::WholeFoot.length().0 }),
            Step::HalfFoot => to(const { Step::HalfFoot.length().0 }),
            Step::Inch => to(const { Step::Inch.length().0 }),
            Step::TenthFoot => to(const { Step::TenthFoot.length().0 }),
        }
    }

    /// The length in feet with up to six decimals, without trailing zeros: `42.583333`.
    #[must_use]
    pub fn decimal_feet(self) -> String {
        crate::units::decimal::six_decimals(i128::from(self.0), i128::from(Length::FOOT.0))
    }

    /// The length rounded to the nearest multiple of `grain_nm` nanometers, halves up.
    pub(crate) fn rounded_to(self, grain_nm: i64) -> Length {
        Length(Halves::Up.quotient(self.0, grain_nm) * grain_nm)
    }

    /// The length to the nearest sixteenth of an inch, halves up; used in messages about computed lengths.
    #[must_use]
    pub fn to_sixteenth(self) -> Length {
        const SIXTEENTH: i64 = 1_587_500;
        Length(Halves::Up.quotient(self.0, SIXTEENTH) * SIXTEENTH)
    }

    /// The length in feet and inches to the nearest sixteenth of an inch, without its sign. A length that would
    /// round to zero becomes `under 1/16"`.
    #[must_use]
    pub fn spoken(self) -> String {
        let near = self.abs().to_sixteenth();
        if near == Length::ZERO && self != Length::ZERO {
            "under 1/16\"".to_owned()
        } else {
            near.to_string()
        }
    }
}

impl fmt::Display for Length {
    /// Feet and inches: `42' 7 1/2"`, `46' 0 1/2"`, `4 5/8"`, `0"`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&feet_and_inches(self.0))
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length(self.0 + other.0)
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length(self.0 - other.0)
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length(-self.0)
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(lengths: I) -> Length {
        lengths.fold(Length::ZERO, Add::add)
    }
}

/// The unit that sides are rounded to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, strum::IntoStaticStr)]
#[strum(serialize_all = "kebab-case")]
pub enum Step {
    /// A foot.
    WholeFoot,
    /// Half a foot.
    HalfFoot,
    /// An inch.
    Inch,
    /// A tenth of a foot.
    TenthFoot,
}

impl Step {
    /// The length of one unit.
    #[must_use]
    pub const fn length(self) -> Length {
        match self {
            Step::WholeFoot => Length::FOOT,
            Step::HalfFoot => Length(152_400_000),
            Step::Inch => Length::INCH,
            Step::TenthFoot => Length(30_480_000),
        }
    }

    /// Its word in the sides file: `whole-foot`, `half-foot`, `inch`, `tenth-foot`.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.into()
    }

    /// The phrase for people: `each wall to the whole foot`.
    #[must_use]
    pub const fn spoken(self) -> &'static str {
        match self {
            Step::WholeFoot => "each wall to the whole foot",
            Step::HalfFoot => "each wall to the half foot",
            Step::Inch => "each wall to the inch",
            Step::TenthFoot => "each wall to a tenth of a foot",
        }
    }
}

/// The unit that the finer of the two rules rounds sides to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "cli", derive(clap::ValueEnum))]
pub enum FineStep {
    /// An inch
    Inch,
    /// A tenth of a foot
    #[default]
    #[cfg_attr(feature = "cli", value(name = "tenth"))]
    TenthFoot,
}

impl FineStep {
    /// The same unit among all units that sides may be rounded to.
    #[must_use]
    pub const fn step(self) -> Step {
        match self {
            FineStep::Inch => Step::Inch,
            FineStep::TenthFoot => Step::TenthFoot,
        }
    }

    /// Its word in the sides file: `inch` or `tenth-foot`.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.step().word()
    }

    /// The phrase for people: `each wall to the inch`.
    #[must_use]
    pub const fn spoken(self) -> &'static str {
        self.step().spoken()
    }
}

/// Which way a length exactly halfway between two steps is rounded.
///
/// This is a setting because offices differ. It matters only at 6 in when rounding to the foot, and at 3 and 9 in
/// when rounding inches to tenths of a foot.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "cli", derive(clap::ValueEnum))]
pub enum Halves {
    /// To the larger: 12' 6" is 13 (common practice)
    #[default]
    Up,
    /// To the smaller: 12' 6" is 12 (Maryland SDAT, Assessment Procedure Manual)
    Down,
    /// To the even one: 12' 6" is 12, 13' 6" is 14 (ASTM E29 §6.4.3)
    Even,
}

impl Halves {
    /// `value / unit` rounded to a whole number.
    #[inline(always)]
    pub(crate) fn quotient(self, value: i64, unit: i64) -> i64 {
        if value < 0 || unit <= 0 {
            return self.quotient_of_any(value, unit);
        }
        // Nearly all are lengths. Without a sign the compiler knows what a remainder can be, and checks nothing.
        let (value, unit) = (value.cast_unsigned(), unit.cast_unsigned());
        let (whole, twice) = (value.div_euclid(unit), 2 * value.rem_euclid(unit));
        let is_up = match self {
            Halves::Up => twice >= unit,
            Halves::Down => twice > unit,
            Halves::Even => twice + (whole & 1) > unit,
        };
        whole.cast_signed() + i64::from(is_up)
    }

    fn quotient_of_any(self, value: i64, unit: i64) -> i64 {
        let whole = value.div_euclid(unit);
        let rest = value - whole * unit;
        match (2 * rest).cmp(&unit) {
            std::cmp::Ordering::Less => whole,
            std::cmp::Ordering::Greater => whole + 1,
            std::cmp::Ordering::Equal => match self {
                Halves::Up => whole + 1,
                Halves::Down => whole,
                Halves::Even => whole + whole.rem_euclid(2),
            },
        }
    }
}

/// A length together with the form it was written in, so that it can be written back the same way.
// Packed, so that a side, which has up to two of these, takes little memory.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[repr(Rust, packed)]
pub struct WrittenLength {
    length: Length,
    form: Form,
}

/// The form in which a length was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// `42' 7 1/2"`
    FeetAndInches,
    /// `42.6'`
    DecimalFeet,
    /// `12.98 m`
    Meters,
    /// `1298 cm`
    Centimeters,
    /// `12980 mm`
    Millimeters,
}

impl Form {
    /// Whether it is written in meters, centimeters or millimeters.
    pub(crate) const fn is_metric(self) -> bool {
        matches!(self, Form::Meters | Form::Centimeters | Form::Millimeters)
    }

    /// One unit of this form; for feet and inches, the inch.
    pub(crate) const fn unit(self) -> Length {
        match self {
            Form::FeetAndInches => Length::INCH,
            Form::DecimalFeet => Length::FOOT,
            Form::Meters => Length::METER,
            Form::Centimeters => Length::CENTIMETER,
            Form::Millimeters => Length(1_000_000),
        }
    }
}

impl WrittenLength {
    /// Pairs a length with the form to write it in.
    #[must_use]
    pub const fn new(length: Length, form: Form) -> WrittenLength {
        WrittenLength { length, form }
    }

    /// The length.
    #[must_use]
    pub const fn length(self) -> Length {
        self.length
    }

    /// The form it was written in.
    #[must_use]
    pub const fn form(self) -> Form {
        self.form
    }

    /// The length in the form it was written in, rounded for people: to the sixteenth of an inch, the hundredth of a
    /// foot, or the millimeter. A length that would round to zero becomes `under 1/16"` or `under 0.001 m`; one in
    /// decimal feet is given in inches instead.
    ///
    /// ```
    /// use fairfoot::units::{Form, Length, WrittenLength};
    ///
    /// // 42 ft 7 in is 12.9794 m and 42.58333… ft.
    /// let length: Length = "42' 7\"".parse()?;
    /// assert_eq!(WrittenLength::new(length, Form::Meters).spoken(), "12.979 m");
    /// assert_eq!(WrittenLength::new(length, Form::DecimalFeet).spoken(), "42.58'");
    /// assert_eq!(WrittenLength::new(length, Form::Millimeters).spoken(), "12,979 mm");
    /// # Ok::<(), fairfoot::Error>(())
    /// ```
    #[must_use]
    pub fn spoken(self) -> String {
        let grain = match self.form {
            Form::FeetAndInches => return self.length().spoken(),
            Form::DecimalFeet => Length::FOOT.0 / 100,
            Form::Meters | Form::Centimeters | Form::Millimeters => Form::Millimeters.unit().0,
        };
        let near = Length(Halves::Up.quotient(self.length().abs().0, grain) * grain);
        if near == Length::ZERO && self.length() != Length::ZERO && self.form != Form::DecimalFeet {
            format!("under {}", WrittenLength::new(Form::Millimeters.unit(), self.form))
        } else if near == Length::ZERO {
            self.length().spoken()
        } else {
            WrittenLength::new(near, self.form).grouped()
        }
    }

    /// How many decimals a length in meters was typed with; 0 for any other form.
    pub(crate) fn decimals_of_meters(self) -> usize {
        if self.form != Form::Meters {
            return 0;
        }
        let mut step = Length::METER.nm();
        let mut decimals = 0;
        while step > 1 && self.length().nm() % step != 0 {
            step /= 10;
            decimals += 1;
        }
        decimals
    }

    /// The length as it was typed, with commas for people, in meters with at least this many decimals: `9.90 m`.
    pub(crate) fn grouped_to(self, decimals: usize) -> String {
        let text = self.grouped();
        match text.strip_suffix(" m").filter(|_| self.form == Form::Meters) {
            Some(number) => {
                let missing = decimals.saturating_sub(self.decimals_of_meters());
                let point = if number.contains('.') || missing == 0 { "" } else { "." };
                format!("{number}{point}{} m", "0".repeat(missing))
            }
            None => text,
        }
    }

    /// The length as it was typed, with commas for people: `13,050 mm`. It cannot be read back.
    pub(crate) fn grouped(self) -> String {
        let text = self.to_string();
        let from = usize::from(text.starts_with('-'));
        let ends = |character: char| !character.is_ascii_digit();
        let to = text[from..].find(ends).map_or(text.len(), |at| from + at);
        let (sign, digits, rest) = (&text[..from], &text[from..to], &text[to..]);
        format!("{sign}{}{rest}", crate::units::decimal::group_thousands(digits))
    }
}

impl fmt::Display for WrittenLength {
    /// The canonical spelling, which reads back as the same length.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let nm = self.length().0;
        let text = match self.form {
            Form::FeetAndInches => feet_and_inches(nm),
            Form::DecimalFeet => format!("{}'", exact_decimal(nm, Length::FOOT.0)),
            Form::Meters => format!("{} m", exact_decimal(nm, Form::Meters.unit().0)),
            Form::Centimeters => format!("{} cm", exact_decimal(nm, Form::Centimeters.unit().0)),
            Form::Millimeters => format!("{} mm", exact_decimal(nm, Form::Millimeters.unit().0)),
        };
        f.pad(&text)
    }
}

/// Feet and inches. The inches have a fraction where a tape shows one (down to 1/64), else decimals. After feet a
/// fraction alone has a 0 before it, so that `46' 0 1/2"` is not read as 46 1/2 ft.
fn feet_and_inches(nm: i64) -> String {
    let sign = if nm < 0 { "-" } else { "" };
    let nm = nm.abs();
    let (feet, rest) = (nm / Length::FOOT.0, nm % Length::FOOT.0);
    match (feet, inches(rest)) {
        (0, None) => "0\"".to_owned(),
        (0, Some(inches)) => format!("{sign}{inches}\""),
        (feet, None) => format!("{sign}{feet}'"),
        (feet, Some(part)) if rest < Length::INCH.0 && part.contains('/') => {
            format!("{sign}{feet}' 0 {part}\"")
        }
        (feet, Some(inches)) => format!("{sign}{feet}' {inches}\""),
    }
}

/// `7 1/2`, `1/2`, `7` or `7.33`; `None` for zero.
fn inches(nm: i64) -> Option<String> {
    let (whole, rest) = (nm / Length::INCH.0, nm % Length::INCH.0);
    if rest == 0 {
        return (whole > 0).then(|| whole.to_string());
    }
    let common = greatest_common_divisor(rest, Length::INCH.0);
    let (top, bottom) = (rest / common, Length::INCH.0 / common);
    let on_a_tape = bottom <= 64 && bottom.count_ones() == 1;
    if on_a_tape {
        Some(if whole > 0 { format!("{whole} {top}/{bottom}") } else { format!("{top}/{bottom}") })
    } else {
        Some(exact_decimal(nm, Length::INCH.0))
    }
}

fn greatest_common_divisor(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { greatest_common_divisor(b, a % b) }
}

/// `nm / unit` as a decimal with up to twelve decimals.
fn exact_decimal(nm: i64, unit: i64) -> String {
    let mut text = format!("{}{}", if nm < 0 { "-" } else { "" }, nm.abs() / unit);
    let mut rest = i128::from(nm.abs() % unit);
    if rest > 0 {
        text.push('.');
    }
    for _ in 0..12 {
        if rest == 0 {
            break;
        }
        rest *= 10;
        text.push_str(&(rest / i128::from(unit)).to_string());
        rest %= i128::from(unit);
    }
    text
}
