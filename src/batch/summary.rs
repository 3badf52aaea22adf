//! Statistics of many houses.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_possible_wrap,
    reason = "shares, medians and bars of many houses"
)]

use std::fmt::Write as _;

use svg::Document;
use svg::node::element::{Line, Rectangle, Text, Title};

use crate::batch::Outcome;
use crate::diagnostic::words;
use crate::reconcile::CouldExplain;
use crate::units::decimal::thousands;

/// Counts, medians and the largest gaps of the houses seen so far.
///
/// Memory grows by 4 bytes per figure.
#[derive(Clone, Debug, Default)]
pub struct Summary {
    houses: usize,
    faulty: usize,
    second_look: usize,
    figures: usize,
    by_rounding: usize,
    only_against: usize,
    beyond: usize,
    /// The gap of each figure as a percentage of the measured area.
    per_cents: Vec<f32>,
    /// The largest gaps: percentage, id of the house, name of the figure, and the gap as text.
    largest: Vec<(f32, String, String, i64)>,
}

/// How many of the largest gaps are listed.
const LARGEST: usize = 20;

impl Summary {
    /// Adds one house.
    pub fn add(&mut self, house: &Outcome) {
        self.houses += 1;
        self.faulty += usize::from(!house.faults.is_empty());
        self.second_look += usize::from(house.second_look);
        for row in &house.figures {
            self.figures += 1;
            let (Some(gap), Some(measured)) = (row.gap_sq_ft, row.same_way) else { continue };
            if measured == 0 {
                continue;
            }
            match row.rounding {
                Some(CouldExplain::Yes) => self.by_rounding += 1,
                Some(CouldExplain::No) => self.beyond += 1,
                Some(CouldExplain::OnlyAgainst) => self.only_against += 1,
                None => {}
            }
            let per_cent = (gap as f64 / measured as f64 * 100.0) as f32;
            self.per_cents.push(per_cent);
            self.largest.push((per_cent, house.id.clone(), row.figure.clone(), gap));
            if self.largest.len() > 8 * LARGEST {
                self.keep_largest();
            }
        }
    }

    fn keep_largest(&mut self) {
        // Of equal gaps, the first seen comes first.
        self.largest.sort_by(|a, b| b.0.abs().total_cmp(&a.0.abs()));
        self.largest.truncate(LARGEST);
    }

    /// The value below which `share` (0 to 1) of the sorted values lie.
    fn quantile(sorted: &[f32], share: f64) -> f64 {
        let at = (share * (sorted.len().saturating_sub(1)) as f64).round() as usize;
        sorted.get(at).copied().map(f64::from).unwrap_or(0.0)
    }

    /// The whole summary as lines of text.
    pub fn text(&mut self) -> String {
        self.keep_largest();
        let mut text = format!(
            "{}: {} with errors, {} for a second look\n",
            words::count(self.houses, "house"),
            words::whole(self.faulty),
            words::whole(self.second_look)
        );
        let measured = self.per_cents.len();
        let _ = writeln!(
            text,
            "{}, {} of measured houses",
            words::count(self.figures, "figure"),
            words::whole(measured)
        );
        if measured == 0 {
            return text;
        }
        let share = |count: usize| {
            format!("{} ({:.0}%)", words::whole(count), 100.0 * count as f64 / measured as f64)
        };
        let _ = writeln!(
            text,
            "rounding would explain {}\n  only if walls were rounded against the rule for {}, not for {}",
            share(self.by_rounding),
            share(self.only_against),
            share(self.beyond)
        );
        let mut sorted = self.per_cents.clone();
        sorted.sort_by(f32::total_cmp);
        let ratio = |share: f64| 1.0 + Summary::quantile(&sorted, share) / 100.0;
        let _ = writeln!(
            text,
            "figure ÷ measured: median {:.3}\n  half of them from {:.3} to {:.3}, nine in ten from {:.3} to {:.3}",
            ratio(0.5),
            ratio(0.25),
            ratio(0.75),
            ratio(0.05),
            ratio(0.95)
        );
        let _ = writeln!(text, "the largest gaps:");
        for (per_cent, id, figure, gap) in &self.largest {
            let plus = if *gap > 0 { "+" } else { "" };
            let _ = writeln!(
                text,
                "  {plus}{} sq ft ({per_cent:+.1}%)  {figure}  {}",
                thousands(*gap),
                id.escape_debug()
            );
        }
        text
    }

    /// The gaps as percentages of the measured area, for a plot.
    #[must_use]
    pub fn per_cents(&self) -> &[f32] {
        &self.per_cents
    }
}

/// A histogram of the gaps as SVG: one bar per percent from -15 to 15, and one at each end for all gaps beyond.
#[must_use]
pub fn histogram(per_cents: &[f32]) -> String {
    const REACH: i32 = 15;
    let mut bars = vec![0_usize; 2 * REACH as usize + 2];
    for per_cent in per_cents {
        let bar = (per_cent.floor() as i32).clamp(-REACH - 1, REACH) + REACH + 1;
        bars[bar as usize] += 1;
    }
    let most = bars.iter().copied().max().unwrap_or(0).max(1);
    let (left, base, wide, tall) = (40.0, 220.0, 16.0, 170.0);
    let mut document = Document::new()
        .set("width", 600)
        .set("height", 270)
        .set("viewBox", "0 0 600 270")
        .set("role", "img")
        .add(Title::new("Gaps in percent of the measured area"))
        .add(Rectangle::new().set("width", 600).set("height", 270).set("fill", "white"));
    for (i, count) in bars.iter().enumerate() {
        let height = tall * *count as f64 / most as f64;
        let bar = Rectangle::new()
            .set("x", left + wide * i as f64 + 1.0)
            .set("y", format!("{:.2}", base - height))
            .set("width", wide - 2.0)
            .set("height", format!("{height:.2}"))
            .set("fill", if i as i32 == REACH + 1 || i as i32 == REACH { "black" } else { "#777" });
        document = document.add(bar);
    }
    let label = |x: f64, y: f64, words: String| {
        Text::new(words)
            .set("x", x)
            .set("y", y)
            .set("font-family", "sans-serif")
            .set("font-size", 11)
            .set("text-anchor", "middle")
    };
    let line = Line::new()
        .set("x1", left)
        .set("x2", left + wide * bars.len() as f64)
        .set("y1", base)
        .set("y2", base)
        .set("stroke", "black");
    document = document.add(line);
    for per_cent in [-15, -10, -5, 0, 5, 10, 15] {
        let x = left + wide * f64::from(per_cent + REACH + 1);
        document = document.add(label(x, base + 16.0, format!("{per_cent}")));
    }
    document
        .add(label(
            300.0,
            base + 34.0,
            "figure less measured, in percent of measured; the outer bars hold all beyond"
                .to_owned(),
        ))
        .add(label(
            300.0,
            24.0,
            format!(
                "{} figures; the tallest bar is {most}",
                thousands(i64::try_from(per_cents.len()).unwrap_or(0))
            ),
        ))
        .to_string()
        + "\n"
}
