//! The prose about what a gap is worth, as plain blocks for the text report and the pages.

use crate::diagnostic::words;
use crate::house::Face;
use crate::reconcile::CouldExplain;
use crate::units::decimal::thousands;
use crate::value::comparables::{Comparable, UnitPrice};
use crate::value::dates::{Dates, Deadline, spoken};
use crate::value::gap::Gap;
use crate::value::rules::{LawRule, Reach, Sure};
use crate::value::tax::{Cap, Tax, TaxOutcome};
use crate::value::ways::{Method, Way};
use crate::value::{CauseClass, GivenValues, Worth};
use crate::wording::block::{Block, Footnotes};
use crate::wording::sentences::capital;
use crate::wording::size::size_of_sq_ft;
use jiff::civil::Weekday;
use rust_decimal::Decimal;

fn heading(text: &str) -> Block {
    Block::Heading(text.to_owned())
}

fn paragraph(text: impl Into<String>) -> Block {
    Block::Paragraph(text.into())
}

fn row(name: impl Into<String>, figure: impl Into<String>) -> Block {
    Block::Row { name: name.into(), figure: figure.into() }
}

fn note(text: impl Into<String>) -> Block {
    Block::Note(text.into())
}

impl Worth {
    /// All blocks in reading order, including the cautions.
    pub fn blocks(&self) -> Vec<Block> {
        let mut notes = Footnotes::default();
        let mut blocks = vec![heading("What the difference is worth")];
        blocks.extend(self.size());
        if self.is_larger() {
            blocks.extend(self.both_ways());
            blocks.push(heading("Would it change the tax?"));
            blocks.extend(
                self.cap
                    .as_ref()
                    .map(|cap| cap_blocks(cap, self.tax.as_ref(), &mut notes))
                    .unwrap_or_default(),
            );
            blocks.extend(match &self.tax {
                Some(tax) => tax_blocks(tax, &mut notes),
                None => no_tax(self.given),
            });
        }
        blocks.extend(self.sales());
        blocks.extend(self.calendar(&mut notes));
        blocks.extend(self.kinds());
        if !self.checklist.is_empty() {
            blocks.push(heading("What to bring"));
            blocks.extend(self.checklist.iter().cloned().map(Block::Item));
        }
        blocks.push(heading("Before acting"));
        blocks.push(paragraph(Worth::cautions().join(" ")));
        blocks.extend(notes.blocks());
        blocks
    }

    /// The two sizes, compared like for like, or a plain statement if there is nothing to value.
    fn size(&self) -> Vec<Block> {
        let Some(gap) = &self.gap else {
            return vec![paragraph(
                "There is no difference to put a value on: that takes a record (`record 1,877 sq ft`) and a house measured above grade.",
            )];
        };
        let sq_ft = |number: i64| size_of_sq_ft(number, self.given.metric);
        let mut blocks =
            vec![row("record", sq_ft(gap.record())), row("measured", sq_ft(gap.measured()))];
        if gap.alike() != gap.measured() {
            blocks.push(row(own_terms(gap), sq_ft(gap.alike())));
        }
        match gap.sq_ft() {
            0 => blocks.push(paragraph("The two agree, so size gives no reason to act.")),
            apart if gap.agrees() => blocks.push(paragraph(format!(
                "The two agree within {}, so size gives no reason to act.",
                sq_ft(apart.abs())
            ))),
            more if more > 0 => {
                blocks.push(row("the record has more by", sq_ft(more)));
                if gap.rounding() == Some(CouldExplain::Yes) {
                    blocks.push(note("rounding every wall to the foot could give the record's figure: an office that rounds this way follows its own rule and may see no difference"));
                }
            }
            less => {
                blocks.push(row("the record has less by", sq_ft(-less)));
                blocks.push(paragraph("The record is smaller than the house as measured. A larger size may raise the value and with it the tax, so nothing here is worked out in money. Ask a licensed professional before these figures go to the office."));
            }
        }
        blocks
    }

    fn both_ways(&self) -> Vec<Block> {
        let mut blocks = vec![paragraph(
            "Simple ways to put a price on the difference, with their arithmetic. None of them is the value, and none is an appraisal: check each against sales.",
        )];
        for way in &self.ways {
            blocks.extend(way_blocks(way, self.comparables.unit_price()));
        }
        if !self.given.improvement {
            blocks.push(Block::hint(format!(
                "`value improvement {}318,000` adds the estimate in proportion",
                self.given.sign
            )));
        }
        if self.comparables.list().is_empty() {
            let size = if self.given.metric { "179 sq m" } else { "1,925 sq ft" };
            blocks.push(Block::hint(format!("`comparable \"8 Larch Court\" {size} sold {}398,000 on 2025-08-14` adds the estimate by unit price", self.given.sign)));
        }
        blocks
    }

    fn sales(&self) -> Vec<Block> {
        let list = self.comparables.list();
        if list.is_empty() {
            return Vec::new();
        }
        let band = self.comparables.band();
        let mut blocks = vec![
            heading("Comparables"),
            paragraph(format!(
                "Near in size means within {band}% (common practice). Under \"record\", the sale's recorded size is compared with the record of this house; under \"tape\", its size with this house as measured. Each price includes the land. Sales nearest the day of valuation count most (common practice)."
            )),
        ];
        blocks.push(sales_table(list));
        blocks
    }

    fn calendar(&self, notes: &mut Footnotes) -> Vec<Block> {
        let dates = &self.dates;
        let mut blocks = vec![heading("Deadlines")];
        if !self.given.place {
            return [blocks, no_place(self.given)].concat();
        }
        let (Some(law), Some(_)) = (dates.law(), dates.year()) else {
            blocks.push(paragraph("The file gives no tax year (`tax year 2026`), so no date can be worked out. Ask the appraisal office."));
            return blocks;
        };
        blocks.push(paragraph(self.calendar_begins(law, notes)));
        for deadline in dates.deadlines() {
            blocks.extend(self.deadline(deadline, notes));
        }
        if let Some(rule) = dates.moving() {
            let name = format!("{} ({})", rule.name(), rule.section());
            blocks.extend([row(name, "may move"), note(with_source(rule, notes))]);
        }
        blocks
    }

    /// Which way of correction covers the kind of difference that is reported.
    fn kinds(&self) -> Vec<Block> {
        let dates = &self.dates;
        if !self.is_larger() || dates.deadlines().is_empty() {
            return Vec::new();
        }
        let mut blocks = vec![heading("Which procedure corrects which kind of difference")];
        if self.classes.is_empty() {
            blocks.push(paragraph("No cause of the difference is known, so neither is its kind. Ask the office which procedure corrects a wrong size."));
            return blocks;
        }
        let kinds: Vec<&str> = self.classes.iter().map(|&class| meaning(class)).collect();
        blocks.push(paragraph(format!(
            "A place may correct one kind of difference outside the appeal and not another. If a cause named on these pages is right, the house on the record was {}. The rest is from our notes: ask the office whether it agrees.",
            kinds.join(", or ")
        )));
        for deadline in dates.deadlines() {
            let name = format!("{} ({})", deadline.rule().name(), deadline.rule().section());
            blocks.extend(self.reached(deadline).map(|reached| row(name, reached)));
        }
        blocks
    }

    /// Whether a way of correction covers the kinds that are reported; `None` if the rule is not a way of correction.
    fn reached(&self, deadline: &Deadline) -> Option<String> {
        let each = |&class: &CauseClass| Some((class, reaches(deadline.reach(class)?, deadline)));
        let reached: Vec<(CauseClass, &str)> = self.classes.iter().filter_map(each).collect();
        let (_, first) = *reached.first()?;
        if reached.iter().all(|&(_, words)| words == first) {
            return Some(first.to_owned());
        }
        let each = reached.into_iter().map(|(class, words)| format!("{}: {words}", kind(class)));
        Some(each.collect::<Vec<_>>().join("; "))
    }

    fn calendar_begins(&self, law: &str, notes: &mut Footnotes) -> String {
        let deadlines = self.dates.deadlines().iter();
        let checked = deadlines.map(|deadline| deadline.rule().checked()).min().unwrap_or_default();
        let year = self.dates.year().map(|year| year.to_string()).unwrap_or_default();
        let mark = notes.mark(format!("Our notes were last checked on {}.", day_in_words(checked)));
        let today = self.today.map(|today| format!(", counted from {}", spoken(today)));
        format!(
            "Tax year {year}{}. From the dates in the file and our notes on the {law}, in our words{mark}. Not legal advice: ask the appraisal office about each date.",
            today.unwrap_or_default()
        )
    }

    fn deadline(&self, deadline: &Deadline, notes: &mut Footnotes) -> Vec<Block> {
        let rule = deadline.rule();
        let name = format!("{} ({})", rule.name(), rule.section());
        let when = self.when(deadline);
        let is_certain = deadline.is_certain();
        let figure = when.clone().filter(|_| is_certain);
        let mut says: Vec<String> = Vec::new();
        let uncertain = when.filter(|_| !is_certain);
        says.extend(uncertain.map(|when| match deadline.day() {
            Some(_) => format!("By our notes: {when}."),
            None => format!("{}.", capital(&when)),
        }));
        says.push(with_source(rule, notes));
        says.extend(self.about_the_day(deadline));
        vec![
            row(name, figure.unwrap_or_else(|| "ask the appraisal office".to_owned())),
            note(says.join(" ")),
        ]
    }

    /// When to act: the last day with the days left, or a description in words; `None` if there is neither.
    fn when(&self, deadline: &Deadline) -> Option<String> {
        let day = deadline.day().map(|day| format!("{}{}", spoken(day), self.left(deadline)));
        day.or_else(|| deadline.in_words().map(str::to_owned))
    }

    fn about_the_day(&self, deadline: &Deadline) -> Vec<String> {
        let mut says: Vec<String> = Vec::new();
        if !deadline.moved_past().is_empty() {
            says.push(format!("Moved past {}.", deadline.moved_past().join("; ")));
        }
        says.extend(self.not_moved(deadline));
        says.extend(deadline.correct_below().map(|below| {
            let below = below.whole_text();
            format!("Here the correct value would have to be below {below}, going by the appraised value.")
        }));
        if self.today.and_then(|today| deadline.days_left(today)).is_some_and(|left| left < 0) {
            says.push(
                "That date has passed: ask the appraisal office what is still open.".to_owned(),
            );
        }
        says.extend(deadline.asks().iter().cloned());
        says
    }

    /// Says that a last day on a weekend was left there, in a place where others are moved; `None` otherwise.
    fn not_moved(&self, deadline: &Deadline) -> Option<String> {
        let day = deadline.day().filter(|_| deadline.moved_past().is_empty())?;
        let is_weekend = matches!(day.weekday(), Weekday::Saturday | Weekday::Sunday);
        (is_weekend && self.dates.moving().is_some()).then(|| {
            format!(
                "That is a {}, and our notes do not say that this day moves: act before it.",
                day.strftime("%A")
            )
        })
    }

    /// `, 12 days left`; empty if there is no day to count from.
    fn left(&self, deadline: &Deadline) -> String {
        match self.today.and_then(|today| deadline.days_left(today)) {
            None => String::new(),
            Some(0) => ", today".to_owned(),
            Some(1) => ", 1 day left".to_owned(),
            Some(-1) => ", 1 day ago".to_owned(),
            Some(days) if days < 0 => format!(", {} days ago", thousands(i64::from(-days))),
            Some(days) => format!(", {} days left", thousands(i64::from(days))),
        }
    }
}

/// A day as in a table: `8/14/2025`.
fn spoken_short(day: jiff::civil::Date) -> String {
    day.strftime("%-m/%-d/%Y").to_string()
}

/// A day that our notes give as `2026-11-25`, in words: `November 25, 2026`.
fn day_in_words(written: &str) -> String {
    let day = written.parse::<jiff::civil::Date>();
    day.map_or_else(|_| written.to_owned(), |day| day.strftime("%B %-d, %Y").to_string())
}

/// A kind of mistake in a word or two.
fn kind(class: CauseClass) -> &'static str {
    match class {
        CauseClass::Typed => "typed or added",
        CauseClass::Described => "described",
        CauseClass::Measured => "measured or rounded",
    }
}

/// What a kind means.
fn meaning(class: CauseClass) -> &'static str {
    match class {
        CauseClass::Typed => "typed or added in another way (digits, a sum, a unit)",
        CauseClass::Described => {
            "described in another way (what counts, which levels, what is there)"
        }
        CauseClass::Measured => "measured or rounded in another way (a wall, a face)",
    }
}

/// Whether a way of correction covers a kind of difference: `covers this`, `does not cover this`, or `ask the office` if the
/// law itself was not read.
fn reaches(reach: Reach, deadline: &Deadline) -> &'static str {
    match (reach, deadline.rule().sure()) {
        (Reach::Yes, Sure::Read) => "covers this",
        (Reach::No, Sure::Read) => "does not cover this",
        _ => "ask the office",
    }
}

/// What the record says about itself (its face, what it counts), as the name of a row.
fn own_terms(gap: &Gap) -> String {
    let mut terms: Vec<String> = Vec::new();
    if gap.face() != Face::Outside {
        terms.push(format!("to the {}", gap.face().word()));
    }
    if !gap.counted().is_empty() {
        terms.push(format!("with {} counted", words::all_of(gap.counted())));
    }
    if terms.is_empty() {
        terms.push("with its walls rounded".to_owned());
    }
    format!("measured {}, as the record says of itself", terms.join(", "))
}

fn way_blocks(way: &Way, unit: Option<&UnitPrice>) -> Vec<Block> {
    let method = way.method().key();
    let name = format!("{method}: {}", way.working());
    let mut blocks = vec![row(name, way.amount().whole_text())];
    if let (Some((low, high)), Some((low_working, high_working))) =
        (way.range(), way.range_working())
    {
        blocks.push(row(format!("{method}, the lowest: {low_working}"), low.whole_text()));
        blocks.push(row(format!("{method}, the highest: {high_working}"), high.whole_text()));
    }
    blocks.push(note(match (way.method(), unit) {
        (Method::UnitPrice, Some(unit)) => format!("{} × difference. A price includes the land; one more square foot is usually worth less than that (common practice), so this is an upper bound. In one published correction the area went down, the price per square foot went up, and the value rose (Orange County, North Carolina, board paper 7091)", median_of(unit)),
        _ => "improvement value × difference ÷ record".to_owned(),
    }));
    blocks
}

/// The description of a median: `median price per sq ft of the 3 near in size`.
fn median_of(unit: &UnitPrice) -> String {
    match (unit.count(), unit.is_of_near_ones()) {
        (1, true) => "price per sq ft of the one near in size".to_owned(),
        (1, false) => "price per sq ft of the only one, which is not near in size".to_owned(),
        (count, true) => format!("median price per sq ft of the {count} near in size"),
        (count, false) => {
            format!("median price per sq ft of all {count}, since none is near in size")
        }
    }
}

fn cap_blocks(cap: &Cap, tax: Option<&Tax>, notes: &mut Footnotes) -> Vec<Block> {
    let new = cap.new_improvements();
    let and_new = if new.amount().is_zero() {
        String::new()
    } else {
        format!(" and {new} of new improvements")
    };
    let section = cap.rule().section();
    let name =
        format!("the cap ({section}): {} last year plus {}%{and_new}", cap.last(), cap.per_cent());
    let mut blocks = vec![row(name, cap.most().whole_text()), note(with_source(cap.rule(), notes))];
    let above = tax.map(|tax| tax.assessed().amount() - cap.most().amount());
    if let Some(above) = above.filter(|above| *above > Decimal::ZERO) {
        let above = cap.most().with(above);
        blocks.push(note(format!("the notice has {above} more than that: ask the appraisal office what it includes, such as new improvements")));
    }
    blocks
}

fn tax_blocks(tax: &Tax, notes: &mut Footnotes) -> Vec<Block> {
    let assessed = tax.assessed();
    let name = if tax.is_assessed_computed() {
        "appraised value (for tax), by the cap"
    } else {
        "appraised value (for tax)"
    };
    let mut blocks = vec![
        row("market value", tax.market().whole_text()),
        row(name, assessed.whole_text()),
        paragraph(format!(
            "The tax changes only where the market value falls below {}{}.",
            assessed.whole_text(),
            room(tax)
        )),
    ];
    for outcome in tax.outcomes() {
        blocks.extend(outcome_blocks(tax, outcome));
    }
    blocks.extend(about_the_estimate(tax, notes));
    blocks
}

fn assessed_sign(tax: &Tax) -> &'static str {
    tax.assessed().currency().sign()
}

/// A sentence on how far the market value may fall before the tax changes.
fn room(tax: &Tax) -> String {
    let room = tax.market().with(tax.market().amount() - tax.assessed().amount());
    if room.amount().is_zero() {
        String::new()
    } else {
        format!(", {} lower than now", room.whole_text())
    }
}

fn outcome_blocks(tax: &Tax, outcome: &TaxOutcome) -> Vec<Block> {
    let (below, assessed) = (outcome.market(), tax.assessed().whole_text());
    let mut blocks = vec![row(
        format!("market value less the estimate {}", outcome.method().key()),
        below.whole_text(),
    )];
    if !outcome.reaches() {
        blocks.push(note(format!("not below {assessed}: this year's tax stays as it is")));
        return blocks;
    }
    blocks.push(note(format!("below {assessed}: the tax would be paid on {}", below.whole_text())));
    if let Some(less) = outcome.less_tax() {
        blocks.push(row(
            format!("estimated tax saved, at {}", words::all_of(&tax.rates_spoken())),
            less.whole_text(),
        ));
    }
    blocks
}

fn about_the_estimate(tax: &Tax, notes: &mut Footnotes) -> Vec<Block> {
    let mut blocks = Vec::new();
    let reaches = tax.outcomes().iter().any(TaxOutcome::reaches);
    if reaches && tax.rates_spoken().is_empty() {
        let sign = assessed_sign(tax);
        blocks.push(paragraph(format!("With last year's rate the difference in tax can be estimated: `tax rate 2.14 per {sign}100`.")));
    } else if reaches {
        let exempt = words::all_of(&tax.exemptions_spoken());
        let exempt = if exempt.is_empty() { String::new() } else { format!(" after {exempt}") };
        let frozen = notes.mark(
            "A tax may be frozen by age, for example. Not confirmed: ask the office.".to_owned(),
        );
        blocks.push(paragraph(format!("The tax is estimated{exempt} at the rates in the file. Rates are set later in the year, and a frozen tax does not follow them{frozen}.")));
        let everywhere = tax.exempt_everywhere();
        if !everywhere.is_empty() {
            let names = words::all_of(&everywhere);
            blocks.push(paragraph(format!("{names}: deducted for every rate here. If only one taxing unit gives it, give that unit's own rate under the same name: `tax rate 1.05 per {}100 \"{}\"`.", assessed_sign(tax), everywhere.concat())));
        }
    } else if !tax.outcomes().is_empty() {
        blocks.push(paragraph("A lower market value may matter in a later year, as the appraised value rises toward it: ask the office."));
    }
    blocks
}

fn no_tax(given: GivenValues) -> Vec<Block> {
    let wanted = if given.market {
        "The file does not say what the tax is paid on"
    } else {
        "The file does not give the market value and what the tax is paid on"
    };
    let sign = given.sign;
    vec![paragraph(format!(
        "{wanted} (`value market {sign}412,000 assessed {sign}371,000`). The notice does: where that is below the market value, the market value can fall that far before the tax changes."
    ))]
}

fn sales_table(list: &[Comparable]) -> Block {
    let yes = |near: Option<bool>| match near {
        None => "not given",
        Some(true) => "yes",
        Some(false) => "no",
    };
    let has_recorded = list.iter().any(|one| one.recorded_sq_ft().is_some());
    let mut heads = vec!["", "sold on", "price", "sq ft"];
    heads.extend(has_recorded.then_some("recorded"));
    let sign = list.first().map_or("", |one| one.sold().currency().sign());
    let unit_price = format!("{} per sq ft", if sign.is_empty() { "price" } else { sign });
    heads.extend([unit_price.as_str(), "record", "tape"]);
    let cells = |one: &Comparable| {
        let mut cells = vec![
            one.name().to_owned(),
            spoken_short(one.on()),
            one.sold().whole_text(),
            thousands(one.sq_ft()),
        ];
        cells.extend(has_recorded.then(|| one.recorded_sq_ft().map(thousands).unwrap_or_default()));
        let near = [one.is_near_record(), one.is_near_measured()].map(|near| yes(near).to_owned());
        cells.push(one.unit_price().cents_text());
        cells.extend(near);
        cells
    };
    let heads = heads.into_iter().map(str::to_owned).collect();
    Block::Table { heads, rows: list.iter().map(cells).collect() }
}

fn no_place(given: GivenValues) -> Vec<Block> {
    let [first, second] = Dates::questions();
    if given.elsewhere {
        return vec![
            paragraph(
                "The file assumes the law of no place (`place none`), so no date is worked out. Questions for the office that keeps the record:",
            ),
            Block::Item(first.to_owned()),
            Block::Item(second.to_owned()),
        ];
    }
    let notice = if given.notice { "The notice" } else { "The notice of value" };
    vec![
        paragraph(format!(
            "The file names no place with known rules (a line such as `place texas` would name one), so no date is worked out. {notice} usually gives the last day on its first page, near the word \"protest\" or \"appeal\", and says where to send it (common practice). Two questions for the appraisal office:"
        )),
        Block::Item(first.to_owned()),
        Block::Item(second.to_owned()),
    ]
}

/// What a rule says, with a footnote on its source, its date and how sure it is.
fn with_source(rule: &LawRule, notes: &mut Footnotes) -> String {
    let sure = match rule.sure() {
        Sure::Read => rule.sure().words(),
        Sure::SecondHand | Sure::Memory => "not confirmed: ask the office",
    };
    let known = [rule.effective(), sure].into_iter().filter(|known| *known != "not known");
    let known = known.collect::<Vec<_>>().join("; ");
    let section = match rule.section() {
        "not confirmed" => rule.name(),
        section => section,
    };
    let note = format!("{section}: {known}; last checked on {}.", day_in_words(rule.checked()));
    let mark = notes.mark(note);
    format!("{}{mark}.", rule.says().trim_end_matches('.'))
}
