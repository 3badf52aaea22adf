//! What an office may have done otherwise, and what each does to the total of this house.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "explanations are weighed in floats"
)]

use std::sync::Arc;

use crate::areas::at_face::Walls;
use crate::areas::rule::Settings;
use crate::areas::uncertainty::OfRounding;
use crate::areas::{is_in_total, net};
use crate::geometry::outline::Outline;
use crate::geometry::traverse::Way;
use crate::house::House;
use crate::house::Space;
use crate::house::wall_moves::AtFace;
use crate::house::{Face, Kind};
use crate::reconcile::recorded::Recorded;
use crate::reconcile::slips::{Slip, Walked, slips};
use crate::reconcile::weights::Weights;
use crate::reconcile::{Ground, total};
use crate::units::area::Area;
use crate::units::length::{Halves, Step};

/// One thing done otherwise that can be combined with others.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Departure {
    pub(crate) what: What,
    /// As in JSON: `counted: Garage`.
    pub(crate) label: String,
    /// How common it is against its not being done.
    pub(crate) odds: f64,
}

impl Departure {
    /// How common it is that it is not done.
    pub(crate) fn chance_of_none(&self) -> f64 {
        1.0 / (1.0 + self.odds)
    }
}

/// What is done otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum What {
    Counted { space: usize },
    NotDeducted { space: usize, level: usize },
    Storey { level: usize, how: Storey },
    SquaredOff { space: usize, side: usize },
    JogLeftOut { space: usize, side: usize },
}

/// What is done with an upper level.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Storey {
    FullOutlineBelow,
    HalfOutlineBelow,
    Twice,
    LeftOut,
}

impl What {
    /// Whether there is anything that cannot have been done beside it.
    #[inline]
    pub(crate) fn excludes_some(self) -> bool {
        !matches!(self, What::Counted { .. })
    }

    /// Whether both cannot have been done.
    pub(crate) fn excludes(self, other: What) -> bool {
        match (self, other) {
            (
                What::Storey { level: a, .. },
                What::Storey { level: b, .. } | What::NotDeducted { level: b, .. },
            )
            | (What::NotDeducted { level: a, .. }, What::Storey { level: b, .. }) => a == b,
            (
                What::SquaredOff { .. } | What::JogLeftOut { .. },
                What::SquaredOff { .. } | What::JogLeftOut { .. },
            ) => true,
            _ => false,
        }
    }
}

/// One face and one rounding, and this house under them, in square feet.
pub(crate) struct Setting {
    /// The departures of face and rounding, as in JSON.
    pub(crate) labels: Vec<String>,
    pub(crate) words: String,
    /// How common it is.
    pub(crate) chance: f64,
    pub(crate) total: f64,
    pub(crate) variance: f64,
    /// What each departure adds, and the variance it brings.
    pub(crate) effects: Vec<(f64, f64)>,
    pub(crate) slips: Vec<Slip>,
    /// The odds of each slip.
    pub(crate) slip_odds: f64,
}

/// Every departure that this house could have, whatever the face and the rounding.
pub(crate) fn departures(house: &House, ground: &Ground<'_>, weights: &Weights) -> Vec<Departure> {
    let named = |i: usize| {
        ground.figure.basis.counting.iter().any(|name| name.text == house.spaces[i].name)
    };
    let mut list = Vec::new();
    let mut push = |what: What, label: String, chance: f64| {
        list.push(Departure { what, label, odds: chance / (1.0 - chance) });
    };
    for (i, space) in house.spaces.iter().enumerate().filter(|&(i, _)| !named(i)) {
        let name = &space.name;
        let in_total = |i: usize| is_in_total(house, i, false);
        if space.kind.lies_in_another() {
            let taken = house.is_taken_off(i) && space.parent.is_some_and(in_total);
            if taken && space.kind != Kind::Court {
                let what = What::NotDeducted { space: i, level: space.level };
                push(what, format!("not deducted: {name}"), weights.not_deducted);
            }
        } else if !in_total(i) && !listed_by_itself(space, ground.ruled.areas[i]) {
            push(What::Counted { space: i }, format!("counted: {name}"), weights.counted);
        }
    }
    for level in upper_levels(house) {
        let name = &house.levels[level].name;
        for (how, words, chance) in [
            (Storey::FullOutlineBelow, "at the full outline below", weights.full_outline_below),
            (Storey::HalfOutlineBelow, "at half the outline below", weights.half_outline_below),
            (Storey::Twice, "twice", weights.level_twice),
            (Storey::LeftOut, "left out", weights.level_left_out),
        ] {
            push(What::Storey { level, how }, format!("storey: {name} {words}"), chance);
        }
    }
    let whole = |i: usize| {
        let sides = house.spaces[i].sides.len();
        is_in_total(house, i, false) && ground.walls.spaces[i].walk.sides.len() == sides
    };
    let mut squared: Vec<(What, String)> = Vec::new();
    for space in (0..house.spaces.len()).filter(|&i| whole(i)) {
        let turns = Turns::of(&house.spaces[space].closed.outline);
        let label = |what: &str, side: usize| {
            format!("{what}: {} side {}", house.spaces[space].name, side + 1)
        };
        for side in turns.recesses() {
            squared.push((What::SquaredOff { space, side }, label("squared off", side)));
        }
        for side in turns.jogs() {
            squared.push((What::JogLeftOut { space, side }, label("jog left out", side)));
        }
    }
    let each = weights.squared_off / (squared.len().max(1) as f64);
    let odds = each / (1.0 - weights.squared_off);
    list.extend(squared.into_iter().map(|(what, label)| Departure { what, label, odds }));
    list
}

/// Whether the record lists a space by itself with about its measured area: then it is not counted too.
fn listed_by_itself(space: &Space, measured: Area) -> bool {
    space.recorded.is_some_and(|recorded| {
        let apart = (recorded - measured).abs().sq_ft();
        apart <= (measured.sq_ft() * 0.06).max(15.0)
    })
}

/// Levels above grade that stand on another one above grade, with something counted on both.
fn upper_levels(house: &House) -> impl Iterator<Item = usize> {
    (0..house.levels.len()).filter(|&level| {
        let counts = |level: usize| counted_on(house, level).next().is_some();
        !house.levels[level].beside
            && counts(level)
            && level_below(house, level).is_some_and(counts)
    })
}

fn level_below(house: &House, level: usize) -> Option<usize> {
    (0..level).rev().find(|&below| !house.levels[below].below_grade)
}

fn counted_on(house: &House, level: usize) -> impl Iterator<Item = usize> {
    (0..house.spaces.len())
        .filter(move |&i| house.spaces[i].level == level && is_in_total(house, i, false))
}

/// How an outline turns at the end of each side.
struct Turns(Vec<Turn>);

#[derive(Clone, Copy, PartialEq)]
enum Turn {
    Outward,
    Inward,
    /// Not at a right angle, or at a curved wall.
    Otherwise,
}

impl Turns {
    fn of(outline: &Outline) -> Turns {
        let turn = i128::from(outline.turn());
        let vectors = outline.vectors();
        let n = vectors.len();
        let one = |i: usize| {
            let (a, b) = (vectors[i], vectors[(i + 1) % n]);
            let parts = [a.east, a.north, b.east, b.north].map(i128::from);
            let left = parts[0] * parts[3] - parts[1] * parts[2];
            let square = parts[0] * parts[2] + parts[1] * parts[3] == 0;
            match (left * turn).signum() {
                _ if !square || a.rise != 0 || b.rise != 0 => Turn::Otherwise,
                1 => Turn::Outward,
                _ => Turn::Inward,
            }
        };
        Turns((0..n).map(one).collect())
    }

    /// The turn at the end of the side so many after `side`.
    fn after(&self, side: usize, more: usize) -> Turn {
        self.0[(side + more) % self.0.len()]
    }

    /// The sides at whose end a recess could be filled in.
    fn recesses(&self) -> impl Iterator<Item = usize> {
        (0..self.0.len()).filter(|&i| self.0[i] == Turn::Inward)
    }

    /// The outer sides of jogs that stand out from a wall and could be left out.
    fn jogs(&self) -> impl Iterator<Item = usize> {
        let n = self.0.len();
        (0..n).filter(move |&i| {
            let (out, inward) = (Turn::Outward, Turn::Inward);
            self.after(i, n - 1) == out
                && self.after(i, 0) == out
                && self.after(i, n - 2) == inward
                && self.after(i, 1) == inward
        })
    }
}

/// Every face and rounding with what this house is under it.
pub(crate) fn settings(
    house: &House,
    ground: &Ground<'_>,
    recorded: Option<&Recorded>,
    departures: &[Departure],
    weights: &Weights,
    settings: &Settings,
) -> Vec<Setting> {
    if let Some(recorded) = recorded {
        return vec![seen(house, ground, recorded, departures)];
    }
    let mut list = Vec::new();
    for face in [Face::Outside, Face::Frame, Face::Inside] {
        let own = face == ground.face;
        let walls = if own {
            Some(Arc::clone(&ground.walls))
        } else {
            Walls::of(house, face).ok().map(Arc::new)
        };
        let Some(walls) = walls else { continue };
        let spread = |at: &AtFace| OfRounding::new(&at.walk, &at.outline);
        let spreads: Vec<OfRounding> = walls.spaces.iter().map(spread).collect();
        let chance = if own { 1.0 - weights.face } else { weights.face / 2.0 };
        for (label, words, way, of) in ways(ground, weights, settings) {
            let mut labels = Vec::new();
            if !own {
                labels.push(format!("face: {}", face.word()));
            }
            labels.extend((!label.is_empty()).then(|| format!("rounding: {label}")));
            let at = match face {
                _ if own => String::new(),
                Face::Outside => ", outside".to_owned(),
                Face::Frame => ", at the frame".to_owned(),
                Face::Inside => ", inside".to_owned(),
            };
            let here = Setting {
                labels,
                words: format!("{words}{at}"),
                chance: chance * of,
                total: 0.0,
                variance: 0.0,
                effects: Vec::new(),
                slips: Vec::new(),
                slip_odds: 0.0,
            };
            list.extend(filled(
                here, house, ground, departures, &walls, &spreads, way, weights, settings,
            ));
        }
    }
    list
}

type RoundingWay = (&'static str, &'static str, Way, f64);

/// The ways a figure's sides may be rounded: its own first.
fn ways(ground: &Ground<'_>, weights: &Weights, settings: &Settings) -> Vec<RoundingWay> {
    let halves = settings.halves;
    let own = ground.rule.step;
    let other = if halves == Halves::Up { Halves::Down } else { Halves::Up };
    let foot = Step::WholeFoot;
    let mut list = if own == foot {
        vec![
            ("always up", "each wall up to the whole foot", Way::Up(foot), weights.always_up),
            (
                "always down",
                "each wall down to the whole foot",
                Way::Down(foot),
                weights.always_down,
            ),
            (
                "ties down",
                "each wall to the whole foot, halves down",
                Way::Nearest(foot, other),
                weights.ties_the_other_way,
            ),
            (
                "half foot",
                Step::HalfFoot.spoken(),
                Way::Nearest(Step::HalfFoot, halves),
                weights.half_foot,
            ),
            (
                "not rounded",
                settings.fine.spoken(),
                Way::Nearest(settings.fine, halves),
                weights.not_rounded,
            ),
        ]
    } else {
        vec![
            ("whole foot", foot.spoken(), Way::Nearest(foot, halves), weights.not_rounded),
            ("always up", "each wall up to the whole foot", Way::Up(foot), weights.always_up),
        ]
    };
    let rest: f64 = list.iter().map(|(.., chance)| chance).sum();
    list.insert(0, ("", own.spoken(), Way::Nearest(own, halves), 1.0 - rest));
    list
}

#[expect(clippy::too_many_arguments, reason = "all that a setting is worked out from")]
fn filled(
    mut setting: Setting,
    house: &House,
    ground: &Ground<'_>,
    departures: &[Departure],
    walls: &Walls,
    spreads: &[OfRounding],
    way: Way,
    weights: &Weights,
    settings: &Settings,
) -> Option<Setting> {
    let mut outlines = Vec::with_capacity(house.spaces.len());
    for at in &walls.spaces {
        outlines.push(at.walk.close_on(way, at.outline.area())?);
    }
    let areas: Vec<Area> = outlines.iter().map(Outline::area).collect();
    let variances: Vec<f64> =
        spreads.iter().map(|spread| spread.variance(way, settings.reading)).collect();
    setting.take(house, ground, departures, &areas, &outlines, &variances);
    let in_total = |i: usize| is_in_total(house, i, false);
    if way.step() == Step::WholeFoot {
        for space in (0..areas.len()).filter(|&i| goes_in(house, i)) {
            let sign = if in_total(space) { 1.0 } else { -1.0 };
            let at = &walls.spaces[space];
            let first_line = house.spaces[..space].iter().map(|before| before.sides.len()).sum();
            let here =
                Walked { space, first_line, sign, walk: &at.walk, outline: &outlines[space] };
            slips(&here, way, &mut setting.slips);
        }
        let each = weights.slip / (setting.slips.len().max(1) as f64);
        setting.slip_odds = each / (1.0 - weights.slip);
        setting.slips.sort_by(|a, b| a.effect.total_cmp(&b.effect));
    }
    Some(setting)
}

/// With the record's own lengths in the file nothing about sides is guessed: its rounding and its slips are seen.
fn seen(
    house: &House,
    ground: &Ground<'_>,
    recorded: &Recorded,
    departures: &[Departure],
) -> Setting {
    let mut setting = Setting {
        labels: Vec::new(),
        words: "the record's own lengths".to_owned(),
        chance: 1.0,
        total: 0.0,
        variance: 0.0,
        effects: Vec::new(),
        slips: Vec::new(),
        slip_odds: 0.0,
    };
    let variances = vec![0.0; recorded.areas.len()];
    setting.take(house, ground, departures, &recorded.areas, &recorded.outlines, &variances);
    setting
}

/// Whether an outline goes into the total above grade, counted or taken off.
fn goes_in(house: &House, space: usize) -> bool {
    let in_total = |i: usize| is_in_total(house, i, false);
    in_total(space) || house.is_taken_off(space) && house.spaces[space].parent.is_some_and(in_total)
}

impl Setting {
    /// Whether the house is the same under both, to the last digit.
    pub(crate) fn is_like(&self, other: &Setting) -> bool {
        (self.total, self.variance) == (other.total, other.variance)
            && self.effects == other.effects
            && self.slips == other.slips
    }

    /// Takes in the areas of the spaces: the total, and what each departure adds to it.
    fn take(
        &mut self,
        house: &House,
        ground: &Ground<'_>,
        departures: &[Departure],
        areas: &[Area],
        outlines: &[Outline],
        variances: &[f64],
    ) {
        let counting =
            crate::reconcile::bridge::counted_by(house, &ground.figure.basis.counting, areas);
        self.total = (total(house, areas) + counting).sq_ft();
        let own: f64 = (0..areas.len()).filter(|&i| goes_in(house, i)).map(|i| variances[i]).sum();
        self.variance = own + 1.0 / 12.0;
        let effect = |departure: &Departure| {
            let variance = match departure.what {
                What::Counted { space } => variances[space],
                _ => 0.0,
            };
            (departure.what.effect(house, areas, outlines).sq_ft(), variance)
        };
        self.effects = departures.iter().map(effect).collect();
    }
}

impl What {
    /// What it adds to the total, exactly.
    pub(crate) fn effect(self, house: &House, areas: &[Area], outlines: &[Outline]) -> Area {
        match self {
            What::Counted { space } => net(house, space, areas),
            What::NotDeducted { space, .. } => areas[space],
            What::Storey { level, how } => storey_effect(house, level, how, areas),
            What::SquaredOff { space, side } => {
                let vectors = outlines[space].vectors();
                let next = &vectors[(side + 1) % vectors.len()];
                Area::rectangle(vectors[side].chord_length(), next.chord_length())
            }
            What::JogLeftOut { space, side } => {
                let vectors = outlines[space].vectors();
                let n = vectors.len();
                let (before, after) = (&vectors[(side + n - 1) % n], &vectors[(side + 1) % n]);
                let depth = before.chord_length().min(after.chord_length());
                -Area::rectangle(vectors[side].chord_length(), depth)
            }
        }
    }

    /// In words, as it would account for a figure.
    pub(crate) fn words(self, house: &House) -> String {
        let name = |space: usize| house.spaces[space].name.as_str();
        match self {
            What::Counted { space } => format!("{} counted", name(space)),
            What::NotDeducted { space, .. } => format!("{} not deducted", name(space)),
            What::Storey { level, how } => {
                let level = &house.levels[level].name;
                match how {
                    Storey::FullOutlineBelow => {
                        format!("{level} taken at the whole outline of the level below")
                    }
                    Storey::HalfOutlineBelow => {
                        format!("{level} taken at half the outline of the level below")
                    }
                    Storey::Twice => format!("{level} counted twice"),
                    Storey::LeftOut => format!("{level} left out"),
                }
            }
            What::SquaredOff { space, side } => {
                format!("the recess after side {} of {} filled in", side + 1, name(space))
            }
            What::JogLeftOut { space, side } => {
                format!("the jog with side {} of {} left out", side + 1, name(space))
            }
        }
    }

    /// What would settle whether it was so.
    pub(crate) fn settled_by(self, house: &House) -> String {
        let name = |space: usize| house.spaces[space].name.as_str();
        match self {
            What::Counted { space } => format!("ask if the total counts {}", name(space)),
            What::NotDeducted { space, .. } => {
                format!("ask if the total takes {} off", name(space))
            }
            What::Storey { level, .. } => {
                format!("ask what the total has for {}", house.levels[level].name)
            }
            What::SquaredOff { space, side } => {
                format!("look at the record's sketch after side {} of {}", side + 1, name(space))
            }
            What::JogLeftOut { space, side } => {
                format!("look at the record's sketch for side {} of {}", side + 1, name(space))
            }
        }
    }
}

/// What taking an upper level otherwise adds.
fn storey_effect(house: &House, level: usize, how: Storey, areas: &[Area]) -> Area {
    let own: Area = counted_on(house, level).map(|i| net(house, i, areas)).sum();
    let below = level_below(house, level).into_iter().flat_map(|below| counted_on(house, below));
    let full: Area = below.filter(|&i| house.spaces[i].parent.is_none()).map(|i| areas[i]).sum();
    match how {
        Storey::FullOutlineBelow => full - own,
        Storey::HalfOutlineBelow => Area::from_half_nm2(full.half_nm2() >> 1) - own,
        Storey::Twice => own,
        Storey::LeftOut => -own,
    }
}
