//! Which combinations of departures would account for a figure, and how well each is supported.
//!
//! A combination is one face, one rounding and up to three further departures, at most one of them a
//! slip. Its support is its prior times the density of what it leaves, over the sum of all; beside
//! them stands something else. Sums are taken over windows of ± 6σ, exactly.
#![expect(clippy::float_arithmetic, reason = "explanations are weighed in floats")]

use std::cmp::Ordering;

use crate::areas::rule::Settings;
use crate::house::House;
use crate::reconcile::Ground;
use crate::reconcile::bell::{AT_ONCE, Bell, Places, WINDOW};
use crate::reconcile::departures::{Departure, Setting, What, departures, settings};
use crate::reconcile::recorded::Recorded;
use crate::reconcile::weights::Weights;

/// How many departures beside face and rounding are combined.
const MOST_DEPARTURES: usize = 3;

/// How many explanations are kept.
const MOST_LISTED: usize = 50;

/// What would account for a figure, best supported first.
#[derive(Clone, Debug, Default)]
pub struct Explanations {
    pub(crate) list: Vec<Explanation>,
    pub(crate) something_else: f64,
    pub(crate) weighed: u64,
}

/// One combination, or several that differ in nothing a person would tell apart.
#[derive(Clone, Debug)]
pub struct Explanation {
    /// As in JSON; none for no departure.
    pub(crate) labels: Vec<String>,
    /// How sides are rounded, and where walls are taken, in words.
    pub(crate) setting: String,
    /// The departures beside face and rounding and slip.
    pub(crate) departures: Vec<What>,
    pub(crate) slip: Option<SlipFound>,
    /// What the figure would be.
    pub(crate) sq_ft: f64,
    /// The figure less that.
    pub(crate) leaves: f64,
    pub(crate) sigma: f64,
    pub(crate) support: f64,
    /// The face and the rounding are the figure's own.
    pub(crate) is_own_setting: bool,
}

/// A side misread.
#[derive(Clone, Debug)]
pub(crate) struct SlipFound {
    pub(crate) space: usize,
    pub(crate) side: usize,
    pub(crate) length: crate::units::length::Length,
}

impl Explanation {
    /// Whether what it leaves is no more than rounding leaves: |r| ≤ 2σ + 0.5.
    pub fn fits(&self) -> bool {
        self.leaves.abs() <= self.allows()
    }

    /// How much a combination may leave and still fit, in square feet.
    pub fn allows(&self) -> f64 {
        2.0 * self.sigma + 0.5
    }

    /// In words: how sides are rounded, and what else was done otherwise; a side misread comes first, as a question.
    pub(crate) fn words(&self, house: &House) -> String {
        let mut parts = vec![self.setting.clone()];
        parts.extend(self.departures.iter().map(|what| what.words(house)));
        let rest = match parts.split_last() {
            Some((last, before)) if !before.is_empty() => {
                format!("{}, and {last}", before.join(", "))
            }
            _ => parts.concat(),
        };
        match self.question(house) {
            Some(question) => format!("{question} With {rest}"),
            None => rest,
        }
    }

    /// Whether the record has another length for a side.
    fn question(&self, house: &House) -> Option<String> {
        let slip = self.slip.as_ref()?;
        let space = &house.spaces[slip.space];
        let side = &space.sides[slip.side];
        Some(format!(
            "does the record have {} for side {} of {} ({})?",
            slip.length, side.number, space.name, side.typed
        ))
    }

    /// What would settle whether it was so.
    pub(crate) fn settled_by(&self, house: &House) -> Vec<String> {
        let mut questions: Vec<String> =
            self.departures.iter().map(|what| what.settled_by(house)).collect();
        if let Some(slip) = &self.slip {
            let space = &house.spaces[slip.space];
            questions.push(format!("look at side {} of {} on its card", slip.side + 1, space.name));
        }
        if !self.is_own_setting {
            questions
                .push("ask how walls are rounded, and to which face they are measured".to_owned());
        }
        questions
    }

    /// The spaces that it counts although they are not, by their places.
    pub(crate) fn counts(&self) -> impl Iterator<Item = usize> {
        self.departures.iter().filter_map(|what| match what {
            What::Counted { space } => Some(*space),
            _ => None,
        })
    }

    /// Its departures, as in JSON; none for no departure.
    pub fn departures(&self) -> &[String] {
        &self.labels
    }

    /// Its support, from 0 to 1.
    pub fn support(&self) -> f64 {
        self.support
    }
}

impl Explanations {
    /// The explanations, best supported first.
    pub fn list(&self) -> &[Explanation] {
        &self.list
    }

    /// The support of something that is none of them.
    pub fn something_else(&self) -> f64 {
        self.something_else
    }

    /// How many combinations were weighed.
    pub fn weighed(&self) -> u64 {
        self.weighed
    }

    /// Searches for what would account for the figure of `ground`.
    pub(super) fn of(
        house: &House,
        ground: &Ground<'_>,
        recorded: Option<&Recorded>,
        weights: &Weights,
        how: &Settings,
    ) -> Explanations {
        let departures = departures(house, ground, weights);
        let settings = settings(house, ground, recorded, &departures, weights, how);
        let figure = ground.figure.area.area().sq_ft();
        let mut search = Search::new(&departures, figure);
        let mut all = Heaviest::new(MOST_LISTED);
        for (i, setting) in settings.iter().enumerate() {
            // Where no wall is half-way between two steps it does not matter which way halves go.
            if settings[..i].iter().any(|before| before.is_like(setting)) {
                continue;
            }
            let like = |place: &usize| settings[*place].is_like(setting);
            let alike: Vec<usize> = (i..settings.len()).filter(like).collect();
            let chance = alike.iter().map(|&i| settings[i].chance).fold(0.0, f64::max);
            // None that is lighter than those kept under the commonest is heavier under the others.
            let prior = (1.0 - weights.something_else) * chance;
            let found = search.setting(setting, prior, all.like_empty());
            alike.iter().for_each(|&i| all.take(&found, i, settings[i].chance / chance));
        }
        let own = settings.iter().find(|setting| setting.labels.is_empty());
        let start = own.map_or(0.0, |setting| setting.total);
        let scale = weights.something_else_scale_sq_ft;
        let otherwise =
            weights.something_else / (2.0 * scale) * libm::exp(-(figure - start).abs() / scale);
        let sum = all.sum + otherwise;
        let mut found = all.list;
        found.sort_by(before);
        found.truncate(MOST_LISTED);
        let explanation = |found: Found| {
            let setting = &settings[found.setting];
            let mut labels = setting.labels.clone();
            labels.extend(found.taken.places().map(|i| departures[i].label.clone()));
            let slip = found.slip.map(|slip| {
                let slip = &setting.slips[slip];
                SlipFound { space: slip.space, side: slip.side, length: slip.length }
            });
            labels.extend(slip.as_ref().map(|slip| {
                let space = &house.spaces[slip.space];
                format!("slip: {} side {}", space.name, slip.side + 1)
            }));
            Explanation {
                labels,
                setting: setting.words.clone(),
                is_own_setting: setting.labels.is_empty(),
                departures: found.taken.places().map(|i| departures[i].what).collect(),
                slip,
                sq_ft: found.sq_ft,
                leaves: figure - found.sq_ft,
                sigma: found.sigma,
                support: found.weight / sum,
            }
        };
        Explanations {
            list: found.into_iter().map(explanation).collect(),
            something_else: otherwise / sum,
            weighed: all.weighed,
        }
    }
}

/// The departures of a combination, by their places in rising order.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Taken {
    places: [u32; MOST_DEPARTURES],
    count: usize,
    /// One of them excludes some others.
    excludes_some: bool,
}

impl Taken {
    fn places(&self) -> impl Iterator<Item = usize> {
        self.places.into_iter().take(self.count).filter_map(|place| usize::try_from(place).ok())
    }

    /// The same with one more.
    fn with(mut self, place: usize, what: What) -> Taken {
        self.excludes_some |= what.excludes_some();
        self.places[self.count] = u32::try_from(place).unwrap_or(u32::MAX);
        self.count += 1;
        self
    }
}

/// A combination within the window.
#[derive(Clone, Copy)]
struct Found {
    setting: usize,
    taken: Taken,
    /// Its place among the slips of the setting.
    slip: Option<usize>,
    sq_ft: f64,
    sigma: f64,
    weight: f64,
    /// How many were found in this setting before it.
    order: u64,
}

/// The heavier first; of those alike the one found first.
fn before(a: &Found, b: &Found) -> Ordering {
    b.weight.total_cmp(&a.weight).then((a.setting, a.order).cmp(&(b.setting, b.order)))
}

/// What was found: the heaviest, and the weight of all.
struct Heaviest {
    list: Vec<Found>,
    /// How many are kept at least.
    most: usize,
    /// No heavier than so many of those kept.
    floor: f64,
    sum: f64,
    found: u64,
    weighed: u64,
}

impl Heaviest {
    fn new(most: usize) -> Heaviest {
        Heaviest { list: Vec::new(), most, floor: -1.0, sum: 0.0, found: 0, weighed: 0 }
    }

    /// One that weighs so much; it is put together only where it is kept.
    fn push(&mut self, weight: f64, found: impl FnOnce() -> Found) {
        self.sum += weight;
        // One like the lightest kept may have come before it.
        if weight >= self.floor {
            self.list.push(Found { weight, ..found() });
            if self.list.len() >= 2 * self.most {
                self.list.select_nth_unstable_by(self.most - 1, before);
                self.list.truncate(self.most);
                self.floor = self.list[self.most - 1].weight;
            }
        }
    }

    /// Nothing found yet, to be held against those found here.
    fn like_empty(&self) -> Heaviest {
        Heaviest { floor: self.floor, ..Heaviest::new(self.most) }
    }

    /// Takes in what was found under a setting that is `ratio` times as common as it was taken to be, 1 at most.
    fn take(&mut self, other: &Heaviest, setting: usize, ratio: f64) {
        let sum = self.sum + other.sum * ratio;
        for found in &other.list {
            self.push(found.weight * ratio, || Found { setting, ..*found });
        }
        self.sum = sum;
        self.weighed += other.weighed;
    }
}

struct Search<'a> {
    departures: &'a [Departure],
    figure: f64,
    /// What was found under the setting at hand.
    found: Heaviest,
    /// For slips: weight together, weight of the best, place of the best, of each side; empty between two combinations.
    sides: Vec<(f64, f64, usize)>,
    /// Where each side of the house stands among those; nowhere between two combinations.
    found_at: Vec<usize>,
    /// What each slip of the setting at hand does, close together.
    effects: Places,
    /// How many slips there are on one side, where they are most, under the setting at hand.
    most_on_a_side: f64,
}

const NOWHERE: usize = usize::MAX;

/// A combination on the way: what it comes to, its variance, how common it is.
#[derive(Clone, Copy)]
struct Sum {
    sq_ft: f64,
    variance: f64,
    chance: f64,
}

impl<'a> Search<'a> {
    fn new(departures: &'a [Departure], figure: f64) -> Search<'a> {
        let found = Heaviest::new(0);
        Search {
            departures,
            figure,
            found,
            sides: Vec::new(),
            found_at: Vec::new(),
            most_on_a_side: 0.0,
            effects: Places::default(),
        }
    }

    /// Weighs every combination of one setting that is so common, into `found`.
    fn setting(&mut self, setting: &Setting, prior: f64, found: Heaviest) -> Heaviest {
        self.found = found;
        // What every departure and every slip not made weighs.
        let none: f64 = self.departures.iter().map(Departure::chance_of_none).product();
        let slips: f64 = setting.slips.iter().map(|_| setting.slip_odds).sum();
        let chance = prior * none / (1.0 + slips);
        let sum = Sum { sq_ft: setting.total, variance: setting.variance, chance };
        let lines = setting.slips.iter().map(|slip| slip.line + 1).max().unwrap_or(0);
        self.found_at.resize(lines.max(self.found_at.len()), NOWHERE);
        self.effects.set(setting.slips.iter().map(|slip| slip.effect));
        let mut of_sides = vec![0.0; lines];
        setting.slips.iter().for_each(|slip| of_sides[slip.line] += 1.0);
        self.most_on_a_side = of_sides.into_iter().fold(0.0, f64::max);
        self.extend(setting, 0, sum, Taken::default());
        std::mem::replace(&mut self.found, Heaviest::new(0))
    }

    /// Weighs the combinations that begin with `taken`.
    fn extend(&mut self, setting: &Setting, from: usize, sum: Sum, taken: Taken) {
        self.found.weighed += 1;
        let leaves = self.figure - sum.sq_ft;
        let bell = Bell::of(sum.variance);
        if leaves.abs() <= bell.reach() {
            self.push(sum.chance * bell.at(leaves), || (taken, None, sum.sq_ft, sum.variance));
        }
        if !setting.slips.is_empty() {
            self.slips(setting, sum, bell, taken);
        }
        if taken.count + 1 == MOST_DEPARTURES {
            return self.with_one_more(setting, from, sum, taken);
        }
        for i in from..self.departures.len() {
            if self.excludes(taken, i) {
                continue;
            }
            let (effect, variance) = setting.effects[i];
            let next = Sum {
                sq_ft: sum.sq_ft + effect,
                variance: sum.variance + variance,
                chance: sum.chance * self.departures[i].odds,
            };
            self.extend(setting, i + 1, next, taken.with(i, self.departures[i].what));
        }
    }

    /// Weighs the combinations of `taken` and one more departure, to which nothing is added.
    fn with_one_more(&mut self, setting: &Setting, from: usize, sum: Sum, taken: Taken) {
        let leaves = self.figure - sum.sq_ft;
        for (i, &(effect, variance)) in (from..).zip(&setting.effects[from..]) {
            if self.excludes(taken, i) {
                continue;
            }
            self.found.weighed += 1;
            let (off, variance) = (leaves - effect, sum.variance + variance);
            if off * off <= WINDOW * WINDOW * variance {
                let departure = &self.departures[i];
                let weight = sum.chance * departure.odds * Bell::of(variance).at(off);
                self.push(weight, || {
                    (taken.with(i, departure.what), None, sum.sq_ft + effect, variance)
                });
            }
        }
    }

    /// Whether a departure cannot have been done beside those taken.
    #[inline]
    fn excludes(&self, taken: Taken, place: usize) -> bool {
        let what = self.departures[place].what;
        taken.excludes_some
            && what.excludes_some()
            && taken.places().any(|other| self.departures[other].what.excludes(what))
    }

    /// Weighs `taken` with each slip; those on one side are one, told by the best supported.
    fn slips(&mut self, setting: &Setting, sum: Sum, bell: Bell, taken: Taken) {
        self.found.weighed += setting.slips.len() as u64;
        let leaves = self.figure - sum.sq_ft;
        let reading = bell.reach();
        let near = self.effects.within(leaves - reading, leaves + reading);
        let low = near.start;
        let near = &self.effects.all()[near];
        let chance = sum.chance * setting.slip_odds;
        if chance * self.most_on_a_side * bell.top < self.found.floor {
            // None is heavy enough to be kept, so that it does not matter which is on which side.
            self.found.sum += chance * bell.sum(leaves, near);
            return;
        }
        let chunks = setting.slips[low..].chunks(AT_ONCE).zip(near.chunks(AT_ONCE));
        let mut densities = [0.0; AT_ONCE];
        let mut sides = std::mem::take(&mut self.sides);
        for (first, (some, effects)) in (low..).step_by(AT_ONCE).zip(chunks) {
            bell.at_all(leaves, effects, &mut densities);
            let densities = densities.iter().take(effects.len());
            for ((place, slip), density) in (first..).zip(some).zip(densities) {
                let weight = chance * density;
                match sides.get_mut(self.found_at[slip.line]) {
                    Some(side) => {
                        side.0 += weight;
                        if weight > side.1 {
                            (side.1, side.2) = (weight, place);
                        }
                    }
                    None => {
                        self.found_at[slip.line] = sides.len();
                        sides.push((weight, weight, place));
                    }
                }
            }
        }
        for (weight, _, place) in sides.drain(..) {
            self.found_at[setting.slips[place].line] = NOWHERE;
            let sq_ft = sum.sq_ft + setting.slips[place].effect;
            self.push(weight, || (taken, Some(place), sq_ft, sum.variance));
        }
        self.sides = sides;
    }

    /// Takes in a combination: its departures, its slip, what it comes to, and the variance of that.
    fn push(&mut self, weight: f64, found: impl FnOnce() -> (Taken, Option<usize>, f64, f64)) {
        let order = self.found.found;
        self.found.found += 1;
        self.found.push(weight, || {
            let (taken, slip, sq_ft, variance) = found();
            Found { setting: 0, taken, slip, sq_ft, sigma: variance.sqrt(), weight, order }
        });
    }
}

#[cfg(test)]
#[expect(
    clippy::unwrap_used,
    clippy::cast_precision_loss,
    reason = "a test that cannot go on has failed; its numbers are small"
)]
mod tests {
    use super::*;
    use crate::reconcile::departures::Storey;
    use crate::reconcile::slips::Slip;
    use crate::units::length::Length;

    /// A small generator, so that a test is the same on every machine.
    struct Random(u64);

    impl Random {
        fn below(&mut self, most: u64) -> f64 {
            self.0 = self
                .0
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            ((self.0 >> 33) % most) as f64
        }
    }

    fn some_departures(random: &mut Random) -> Vec<Departure> {
        let what = |i: usize| match i % 4 {
            0 => What::Counted { space: i },
            1 => What::NotDeducted { space: i, level: i % 3 },
            2 => What::Storey { level: i % 3, how: Storey::Twice },
            _ => What::SquaredOff { space: i, side: 0 },
        };
        let one = |i: usize| Departure {
            what: what(i),
            label: i.to_string(),
            odds: (1.0 + random.below(20)) / 100.0,
        };
        (0..9).map(one).collect()
    }

    fn some_setting(random: &mut Random) -> Setting {
        let mut slips: Vec<Slip> = (0..30)
            .map(|i| Slip {
                effect: random.below(400) - 200.0,
                space: 0,
                side: i % 7,
                line: i % 7,
                length: Length::FOOT,
            })
            .collect();
        slips.sort_by(|a, b| a.effect.total_cmp(&b.effect));
        Setting {
            labels: Vec::new(),
            words: String::new(),
            chance: 0.7,
            total: 1_500.0,
            variance: 20.0 + random.below(300),
            effects: (0..9).map(|_| (random.below(500) - 150.0, random.below(50))).collect(),
            slips,
            slip_odds: 0.002,
        }
    }

    /// Every combination, listed and weighed one by one.
    fn by_listing(
        departures: &[Departure],
        setting: &Setting,
        figure: f64,
    ) -> Vec<(Vec<usize>, Option<usize>, f64)> {
        let n = departures.len();
        let none: f64 = departures.iter().map(|d| 1.0 / (1.0 + d.odds)).product();
        let prior =
            0.85 * setting.chance * none / (1.0 + setting.slip_odds * setting.slips.len() as f64);
        let mut list: Vec<(Vec<usize>, Option<usize>, f64)> = Vec::new();
        for mask in 0..1_u32 << n {
            let taken: Vec<usize> = (0..n).filter(|i| mask >> i & 1 == 1).collect();
            let excluded = taken.iter().any(|&a| {
                taken.iter().any(|&b| a < b && departures[a].what.excludes(departures[b].what))
            });
            if taken.len() > 3 || excluded {
                continue;
            }
            let total = setting.total + taken.iter().map(|&i| setting.effects[i].0).sum::<f64>();
            let variance =
                setting.variance + taken.iter().map(|&i| setting.effects[i].1).sum::<f64>();
            let chance = prior * taken.iter().map(|&i| departures[i].odds).product::<f64>();
            let sigma = variance.sqrt();
            let weigh = |off: f64, chance: f64| {
                let weight = chance * (-off * off / (2.0 * variance)).exp()
                    / (sigma * std::f64::consts::TAU.sqrt());
                (off.abs() <= 6.0 * sigma).then_some(weight)
            };
            if let Some(weight) = weigh(figure - total, chance) {
                list.push((taken.clone(), None, weight));
            }
            if taken.len() == 3 {
                continue;
            }
            for slip in &setting.slips {
                if let Some(weight) =
                    weigh(figure - total - slip.effect, chance * setting.slip_odds)
                {
                    match list.iter_mut().find(|(t, s, _)| *t == taken && *s == Some(slip.side)) {
                        Some((.., sum)) => *sum += weight,
                        None => list.push((taken.clone(), Some(slip.side), weight)),
                    }
                }
            }
        }
        list
    }

    #[test]
    fn the_search_misses_no_combination_and_weighs_each_alike() {
        for seed in 0..60 {
            let mut random = Random(seed);
            let departures = some_departures(&mut random);
            let setting = some_setting(&mut random);
            let figure = 1_300.0 + random.below(900);
            let found = |most: usize| {
                Search::new(&departures, figure).setting(
                    &setting,
                    0.85 * setting.chance,
                    Heaviest::new(most),
                )
            };
            let all = found(1_000_000);
            let mut listed = by_listing(&departures, &setting, figure);
            let sum: f64 = listed.iter().map(|one| one.2).sum();
            assert_eq!(all.list.len(), listed.len(), "seed {seed}");
            // Those kept where not all are kept are the heaviest, and nothing of the others' weight is lost.
            let some = found(20);
            let mut heaviest = [all.list.clone(), some.list].map(|mut list| {
                list.sort_by(before);
                list.into_iter().take(20).map(|found| (found.taken, found.slip))
            });
            let [one, other] = &mut heaviest;
            assert!(one.eq(other), "seed {seed}");
            assert!((some.sum - sum).abs() <= 1e-9 * sum, "seed {seed}");
            for found in &all.list {
                let side = found.slip.map(|slip| setting.slips[slip].side);
                let places: Vec<usize> = found.taken.places().collect();
                let place =
                    listed.iter().position(|(taken, slip, _)| *taken == places && *slip == side);
                let (.., weight) = listed.swap_remove(place.unwrap());
                assert!((found.weight - weight).abs() <= 1e-9 * weight, "seed {seed}");
            }
        }
    }

    #[test]
    fn the_starting_weights_are_read_from_their_file() {
        let read = Weights::from_json(include_str!("weights.json")).unwrap();
        assert_eq!(read, Weights::default());
        assert!(read.counted > 0.0);
        assert!(Weights::from_json("{}").is_err());
        let twice = include_str!("weights.json").replace("0.12", "1.2");
        assert!(Weights::from_json(&twice).is_err());
    }
}
