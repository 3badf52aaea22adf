//! Values that are valid but unlikely: a missing unit, an area of a very different size, an unlikely rate, price or
//! year.

use rust_decimal::Decimal;

use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::geometry::compass::{Axis, Direction};
use crate::house::check::Checker;
use crate::house::check::places::grain;
use crate::sketch::statement::{Run, Unit};
use crate::sketch::{Kind, Side};
use crate::units::area::Area;
use crate::units::decimal::thousands;
use crate::units::length::{Form, Length, WrittenLength};

/// An area this many times as large as another is probably of something else.
const TIMES: i64 = 3;
/// The usual sizes of houses, in square feet (our judgment).
const SIZES: std::ops::RangeInclusive<i64> = 150..=30_000;
/// A house smaller than this is asked about where the file speaks of meters and has numbers without a unit (our
/// judgment): in meters it would be one of usual size.
const SMALL_IN_FEET: i64 = 400;
/// The usual range of all tax rates combined, in percent of the taxed value (our judgment).
const RATES: [Decimal; 2] =
    [Decimal::from_parts(3, 0, 0, false, 1), Decimal::from_parts(5, 0, 0, false, 0)];
/// The usual range of prices in dollars per square foot, used where the file has no value to compare with (our
/// judgment).
const PRICES: [i64; 2] = [20, 5_000];

/// How many years a record may be older than the tax year, or younger (our judgment).
const YEARS: u16 = 20;

/// The only year that a title names: `County record, 2026`.
fn year_in(title: &str) -> Option<u16> {
    let mut years = title
        .split(|c: char| !c.is_ascii_digit())
        .filter(|number| number.len() == 4)
        .filter_map(|number| number.parse().ok())
        .filter(|year| (1900..2100).contains(year));
    years.next().filter(|_| years.next().is_none())
}

/// Whether two areas differ so much that a wrong digit or unit is more likely than a wrong wall.
pub(crate) fn is_far_off(one: i64, other: i64) -> bool {
    let (large, small) = (one.max(other), one.min(other));
    small > 0 && large >= TIMES.saturating_mul(small)
}

impl Checker<'_> {
    /// Reports all unlikely values.
    pub(super) fn plausibility(&mut self) {
        if !self.glance.is_straight {
            self.report_walls_by_bearing();
        }
        if !self.glance.is_marked {
            self.report_unit_missing();
        }
        self.report_recorded_far_off();
        self.report_lot_smaller_than_the_house();
        self.report_unlikely_values();
    }

    /// Warns of land that is smaller than the house on it, usually because its lengths are in another unit.
    fn report_lot_smaller_than_the_house(&mut self) {
        let Some(span) = self.sketch.lots.first().map(|lot| lot.span) else { return };
        let land: Area = self.house.lots.iter().map(|lot| lot.outline().area()).sum();
        let living = self.house.spaces.iter().filter(|space| space.kind == Kind::Living);
        let Some(largest) = living.max_by_key(|space| space.outline().area()) else { return };
        let house = largest.outline().area();
        if land >= house
            || land.whole_sq_ft() == 0
            || self.house.lots.len() != self.sketch.lots.len()
        {
            return;
        }
        let message = format!(
            "the land comes to {} sq ft, less than {} alone, {} sq ft",
            thousands(land.whole_sq_ft()),
            quoted(&largest.name),
            thousands(house.whole_sq_ft())
        );
        let help = match self.sketch.heads.units {
            Some(unit) => format!(
                "numbers without a unit are taken in {}: if those of the deed are in another one, type its mark after each, as `120'` or `36.6 m`",
                unit.word()
            ),
            None => "look at the lengths of the calls and at their units".to_owned(),
        };
        self.report(Diagnostic::new(Word::UnlikelySize, span, message).help(help));
    }

    /// Reports a house far larger or smaller than usual, usually because of a missing unit.
    pub(super) fn report_unlikely_size(&mut self) {
        let spaces = &self.house.spaces;
        let counted = || (0..spaces.len()).filter(|&i| spaces[i].counted);
        let area = |i: usize| spaces[i].closed.outline.area();
        let net = |i: usize| area(i) - self.house.deducted_from(i).map(area).sum::<Area>();
        let total: Area = counted().map(net).sum();
        let sq_ft = total.whole_sq_ft();
        let is_bare = |side: &&crate::house::Side| side.is_bare();
        let mut sides = counted().flat_map(|i| spaces[i].sides.iter());
        let bare = if self.glance.is_marked { None } else { sides.find(is_bare) };
        let is_likely = |_: &usize| match bare {
            Some(_) => self.is_likely_in_feet(sq_ft),
            None => SIZES.contains(&sq_ft),
        };
        let Some(first) = counted().next().filter(|first| !is_likely(first)) else { return };
        let (span, size) = (spaces[first].span, thousands(sq_ft));
        if let Some(side) = bare.filter(|_| self.sketch.heads.units.is_none()) {
            let needed = unit_needed(total, side.span, &side.quoted());
            self.report(needed);
            return;
        }
        let extreme = if sq_ft < *SIZES.start() { "small" } else { "large" };
        let message =
            format!("what is counted comes to {size} sq ft, which is very {extreme} for a house");
        self.report(
            Diagnostic::new(Word::UnlikelySize, span, message).help(
                "look at the units of the lengths, and whether every space and level is typed",
            ),
        );
    }

    /// The error for a house that is far too small or too large because its numbers have no unit; else `None`. It is
    /// found before anything is placed, because with a wrong unit every other message would mislead.
    pub(super) fn unit_needed_first(&self) -> Option<Diagnostic> {
        let is_known = self.sketch.heads.units.is_some() || self.glance.is_marked;
        if is_known || self.sketch.heads_doubtful {
            return None;
        }
        let spaces = self.sketch.levels.iter().flat_map(|level| &level.spaces);
        let living: Vec<&[Side]> = spaces
            .filter(|space| space.space.kind == Kind::Living && !space.walk.doubtful)
            .map(|space| space.walk.sides.as_slice())
            .collect();
        let is_straight = |side: &Side| matches!(side.run, Run::Straight(..));
        if !living.iter().all(|sides| sides.iter().all(is_straight)) {
            return None;
        }
        let is_bare = |side: &Side| crate::house::model::is_bare(&side.typed);
        let bare = |sides: &&[Side]| {
            let number = sides.iter().position(is_bare)?;
            Some((number + 1, sides[number].span, quoted(&sides[number].typed)))
        };
        let (number, span, typed) = living.iter().find_map(bare)?;
        let total: Area = living.into_iter().map(rough_area).sum();
        (!self.is_likely_in_feet(total.whole_sq_ft()))
            .then(|| unit_needed(total, span, &format!("side {number} ({typed})")))
    }

    /// Whether a house of this size may have its numbers without a unit in feet.
    fn is_likely_in_feet(&self, sq_ft: i64) -> bool {
        if !SIZES.contains(&sq_ft) || sq_ft >= SMALL_IN_FEET || self.sketch.heads.units.is_some() {
            return SIZES.contains(&sq_ft);
        }
        let spaces = self.sketch.levels.iter().flat_map(|level| &level.spaces);
        let in_meters =
            || spaces.flat_map(|space| space.walk.sides.iter()).any(|side| metric(side).is_some());
        !self.sketch.names_meters && !in_meters()
    }

    /// Warns that a wall given by bearing makes the house close like a deed: in proportion to length, and without a
    /// range.
    fn report_walls_by_bearing(&mut self) {
        let by_bearing = |space: &crate::house::Space| {
            let sides = space.sides.iter().zip(space.closed.outline.vectors());
            let mut bearings = sides.filter(|(side, _)| matches!(side.run, Run::Bearing(..)));
            let (side, vector) = bearings.next()?;
            let part = |axis: Axis, nm: i64| {
                let length = Length::from_nm(nm.abs()).rounded_to(grain(self.form()));
                (length > Length::ZERO).then(|| {
                    let far = WrittenLength::new(length, self.form());
                    format!("{} {far}", Direction::along(axis, nm).word())
                })
            };
            let parts = [part(Axis::North, vector.north), part(Axis::East, vector.east)];
            let parts: Vec<String> = parts.into_iter().flatten().collect();
            let typed = match parts.len() {
                2 => format!("diagonal {}", parts.join(" ")),
                _ => parts.concat(),
            };
            Some((space.name.clone(), side.quoted(), side.span, typed))
        };
        let within = match self.form() {
            Form::FeetAndInches | Form::DecimalFeet => "1\"",
            Form::Meters | Form::Centimeters | Form::Millimeters => "2.5 cm",
        };
        let all: Vec<_> = self.house.spaces.iter().filter_map(by_bearing).collect();
        for (name, side, span, typed) in all {
            let message = format!(
                "{}: {side} is given by bearing, so all walls are closed in proportion to length",
                quoted(&name)
            );
            self.report(
                Diagnostic::new(Word::WallByBearing, span, message)
                    .note("the possible range is then not stated, and no misread wall is looked for")
                    .help(format!(
                        "tape how far it runs and how far it rises; until then `{typed} estimated tolerance {within}`, since by this bearing the two are computed, not measured"
                    )),
            );
        }
    }

    /// Warns of a number without a unit, which is read as feet, among lengths in meters.
    fn report_unit_missing(&mut self) {
        if self.sketch.heads.units.is_some() && !self.sketch.heads_doubtful {
            self.report_unit_of_another_system();
        }
        if self.sketch.heads.units.is_some() || self.sketch.heads_doubtful {
            return;
        }
        let spaces = self.sketch.levels.iter().flat_map(|level| &level.spaces);
        let sides = spaces.flat_map(|space| {
            let name = &space.space.name.text;
            space.walk.sides.iter().map(move |side| (name, side))
        });
        let Some(unit) = sides.clone().find_map(|(_, side)| metric(side)) else { return };
        let bare: Vec<(&String, &Side)> =
            sides.filter(|(_, side)| crate::house::model::is_bare(&side.typed)).collect();
        let Some((name, side)) = bare.first() else { return };
        let others = match bare.len() - 1 {
            0 => String::new(),
            1 => ", and so has one more".to_owned(),
            more => format!(", and so have {more} more"),
        };
        let message = format!(
            "{}: {} has no unit{others}, while other walls are in {unit}: it is taken as feet",
            quoted(name),
            quoted(&side.typed)
        );
        // No wall is 135 m long.
        let is_in_cm = unit == "m"
            && matches!(&side.run, Run::Straight(_, written) if written.length().nm() >= 60 * Length::FOOT.nm());
        let unit = if is_in_cm { "cm" } else { unit };
        let all = match unit {
            "cm" => "centimeters",
            "mm" => "millimeters",
            _ => "meters",
        };
        let help = format!(
            "type its unit, `{typed} {unit}` or `{typed}'`; for all bare numbers at once, write `units {all}` or `units feet` at the top",
            typed = side.typed
        );
        self.report(Diagnostic::new(Word::UnitMissing, side.span, message).help(help));
    }

    /// Warns of a number without a unit, which is read in the file's unit, between walls of the other system: `10`,
    /// read as 10 m, among feet and inches.
    fn report_unit_of_another_system(&mut self) {
        let Some(unit) = self.sketch.heads.units else { return };
        let is_metric = matches!(unit, Unit::Meters | Unit::Centimeters | Unit::Millimeters);
        let own = |side: &Side| crate::house::model::is_bare(&side.typed);
        let is_other = |side: &Side| {
            !own(side) && side.run.form().is_some_and(|form| metric_form(form) != is_metric)
        };
        let mut found = Vec::new();
        for space in self.sketch.levels.iter().flat_map(|level| &level.spaces) {
            let sides = &space.walk.sides;
            let bare: Vec<&Side> = sides.iter().filter(|side| own(side)).collect();
            let other = sides.iter().find(|side| is_other(side));
            let typed = sides.iter().filter(|side| side.run.form().is_some()).count();
            let others = sides.iter().filter(|side| is_other(side)).count();
            if let (Some(first), Some(_)) = (bare.first(), other)
                && bare.len() + others == typed
            {
                found.push((
                    space.space.name.text.clone(),
                    first.typed.clone(),
                    first.span,
                    bare.len(),
                ));
            }
        }
        for (name, typed, span, count) in found {
            let (own, other) = if is_metric { ("m", "'") } else { ("'", " m") };
            let between = if is_metric { "feet and inches" } else { "meters" };
            let others = match count - 1 {
                0 => String::new(),
                1 => ", and so has one more".to_owned(),
                more => format!(", and so have {more} more"),
            };
            let message = format!(
                "{}: {} has no unit{others}, and stands between walls in {between}: it is taken in {}",
                quoted(&name),
                quoted(&typed),
                unit.word()
            );
            let own = if is_metric { format!(" {own}") } else { own.to_owned() };
            let help = format!("type its unit, `{typed}{own}` or `{typed}{other}`");
            self.report(Diagnostic::new(Word::UnitMissing, span, message).help(help));
        }
    }

    /// Warns of a recorded area that is very different from the measured space or lot.
    fn report_recorded_far_off(&mut self) {
        let of_space = |space: &crate::house::Space| {
            let recorded = space.recorded?;
            Some((space.name.clone(), space.span, recorded, space.outline().area()))
        };
        let spans = self.sketch.lots.iter().map(|lot| lot.span);
        let of_lot = |(lot, span): (&crate::house::Lot, Span)| {
            let recorded = lot.recorded()?;
            Some((lot.name.clone(), span, recorded, lot.outline().area()))
        };
        let spaces = self.house.spaces.iter().filter_map(of_space);
        let all: Vec<_> =
            spaces.chain(self.house.lots.iter().zip(spans).filter_map(of_lot)).collect();
        for (name, span, recorded, area) in all {
            let (recorded, area) = (recorded.whole_sq_ft(), area.whole_sq_ft());
            if !is_far_off(recorded, area) {
                continue;
            }
            let feet_as_meters = matches!(self.sketch.heads.units, Some(Unit::Meters))
                && (9 * recorded..12 * recorded).contains(&area);
            let (recorded, area) = (thousands(recorded), thousands(area));
            let message = format!(
                "the record lists {} with {recorded} sq ft, and its sides come to {area}",
                quoted(&name)
            );
            let help = match feet_as_meters {
                true => {
                    "numbers without a unit are taken in meters: if these are in feet, type the mark after each, as `120'`"
                }
                false => "look at each digit of the figure and of the sides, and at their units",
            };
            self.report(Diagnostic::new(Word::FarOff, span, message).help(help));
        }
    }

    fn report_unlikely_values(&mut self) {
        let values = &self.sketch.values;
        if values.is_empty() && self.sketch.heads.tax_year.is_none() {
            return;
        }
        let mut doubts: Vec<(Span, String, &str)> = Vec::new();
        let per_cent: Decimal = values
            .rates
            .iter()
            .map(|rate| rate.rate * Decimal::ONE_HUNDRED / Decimal::from(rate.per.max(1)))
            .sum();
        let [lowest, highest] = RATES;
        if !values.rates.is_empty() && !(lowest..=highest).contains(&per_cent) {
            let message =
                format!("the tax comes to {}% of the appraised value", per_cent.normalize());
            let help = "is the point right, and is it the rate of all taxes together? A bill of 2.14% says `tax rate 2.14 per $100`";
            doubts.push((values.rate_span, message, help));
        }
        let year = values.value.and_then(|value| value.year).or(self.sketch.heads.tax_year);
        if let (Some(notice), Some(year)) = (values.notice, year)
            && notice.year() != i16::try_from(year).unwrap_or_default()
        {
            let message =
                format!("the notice came in {}, and the tax year is {year}", notice.year());
            doubts.push((values.notice_span, message, "look at both years"));
        }
        // A record that is called by its year says about when it is.
        let is_record = |figure: &&crate::sketch::FigureSketch| {
            figure.figure.kind == crate::sketch::statement::FigureKind::Record
        };
        let title =
            self.sketch.figures.iter().find(is_record).and_then(|one| one.figure.title.as_deref());
        let of_record = title.and_then(year_in).filter(|_| values.notice.is_none());
        if let (Some(of_record), Some(year)) = (of_record, self.sketch.heads.tax_year)
            && year.abs_diff(of_record) > YEARS
        {
            let message = format!("the tax year is {year}, and the record is of {of_record}");
            let span = self.sketch.heads.tax_year_span;
            doubts.push((span, message, "look at each digit of both years"));
        }
        let market = values.value.and_then(|value| value.market);
        let record = self
            .sketch
            .figures
            .iter()
            .find(|figure| figure.figure.kind == crate::sketch::statement::FigureKind::Record);
        let record = record.map(|record| record.figure.area.area().whole_sq_ft());
        let unit_price = market.zip(record.filter(|area| *area > 0));
        let usual = unit_price.map(|(market, area)| market.amount() / Decimal::from(area));
        for sale in &values.sales {
            let name = quoted(&sale.name.text);
            if let Some(year) =
                year.filter(|year| sale.on.year() > i16::try_from(*year).unwrap_or(i16::MAX))
            {
                let message =
                    format!("{name} was sold in {}, after the tax year {year}", sale.on.year());
                doubts.push((sale.name.span, message, "look at the year"));
            }
            let size = sale.size.area().whole_sq_ft().max(1);
            let price = sale.sold.amount() / Decimal::from(size);
            let times = Decimal::from(TIMES);
            let bounds = match usual {
                Some(usual) => [usual / times, usual * times],
                None => PRICES.map(Decimal::from),
            };
            if !(bounds[0]..=bounds[1]).contains(&price) {
                let message = format!(
                    "{name} was sold at {} a square foot",
                    sale.sold.with(price).whole_text()
                );
                doubts.push((
                    sale.name.span,
                    message,
                    "look at each digit of the price and of the size",
                ));
            }
        }
        for (span, message, help) in doubts {
            self.report(Diagnostic::new(Word::UnlikelyValue, span, message).help(help));
        }
    }
}

/// The area of a walk as typed, closed or not.
fn rough_area(sides: &[Side]) -> Area {
    let (mut east, mut north, mut doubled) = (0_i128, 0_i128, 0_i128);
    for side in sides {
        let Run::Straight(direction, length) = &side.run else { continue };
        let by = i128::from(direction.sign()) * i128::from(length.length().nm());
        let before = (east, north);
        match direction.axis() {
            Axis::East => east += by,
            Axis::North => north += by,
        }
        doubled += before.0 * north - before.1 * east;
    }
    Area::from_half_nm2(doubled.abs())
}

/// The error for numbers without a unit that make a house of an unlikely size, and the units in which its size would
/// be likely.
fn unit_needed(total: Area, span: Span, side: &str) -> Diagnostic {
    let size = thousands(total.whole_sq_ft());
    // An inch is 1/12 ft, a meter 1/0.3048 ft.
    let units = [
        ("inches", 1, 144),
        ("meters", 100_000_000, 9_290_304),
        ("centimeters", 10_000, 9_290_304),
    ];
    let taken = |(unit, times, over): (&'static str, i128, i128)| {
        let half_nm2 = (total.half_nm2() * times).checked_div(over)?;
        let sq_ft = Area::from_half_nm2(half_nm2).whole_sq_ft();
        let is_house = (300..15_000).contains(&sq_ft);
        is_house.then(|| format!("`units {unit}`, which makes it {} sq ft", thousands(sq_ft)))
    };
    let words: Vec<String> = units.into_iter().filter_map(taken).collect();
    let help = if words.is_empty() {
        "say at the top of the file what a number without a unit is: `units inches`, `units meters` or `units feet`".to_owned()
    } else {
        format!(
            "say at the top of the file what a number without a unit is: {}; or `units feet` if it is right as it stands",
            words.join("; ")
        )
    };
    let message =
        format!("what is counted comes to {size} sq ft, and {side} is typed without a unit");
    Diagnostic::new(Word::UnitNeeded, span, message).help(help)
}

/// The metric unit that a side is typed in; `None` if it is in feet or inches.
fn metric_form(form: Form) -> bool {
    matches!(form, Form::Meters | Form::Centimeters | Form::Millimeters)
}

fn metric(side: &Side) -> Option<&'static str> {
    match side.run.form()? {
        Form::Meters => Some("m"),
        Form::Centimeters => Some("cm"),
        Form::Millimeters => Some("mm"),
        Form::FeetAndInches | Form::DecimalFeet => None,
    }
}
