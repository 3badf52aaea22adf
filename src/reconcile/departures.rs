//! What an office may have counted or drawn differently, and how each departure changes the total of this house.
#![expect(clippy::float_arithmetic, reason = "chances are floats")]

use crate::areas::{is_in_total, net};
use crate::geometry::outline::Outline;
use crate::house::Kind;
use crate::house::{House, Space};
use crate::reconcile::parts::{Alike, Part, Shape, left_out_at_once, parts};
use crate::reconcile::weights::Weights;
use crate::units::area::Area;

/// The most departures of a house that are weighed; if there are more, reports say so.
pub(crate) const MOST_DEPARTURES: usize = 600;

/// The highest odds of any departure at all against none. Without this limit, a house with a hundred porches would be
/// more certain to have one of them counted than a house with ten.
const MOST_ODDS: f64 = 1.2;

/// One departure from the rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Departure {
    pub(crate) kind: DepartureKind,
    /// Its odds: the probability that it happened against the probability that it did not.
    pub(crate) odds: f64,
}

/// What was counted or drawn differently from the rule. Spaces, levels and missing spaces are given by index.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum DepartureKind {
    /// An uncounted space is in the total.
    Counted { space: usize },
    /// An uncounted space is in the total with the area that the record lists for it, which is not that measured.
    CountedAsListed { space: usize },
    /// A missing space is still in the total.
    MissingCounted { missing: usize },
    /// A counted space is not in the total.
    LeftOut { space: usize },
    /// An upper level is not in the total.
    LevelLeftOut { level: usize },
    /// An opening or low part is not deducted.
    NotDeducted { space: usize },
    /// A counted space, or one that the figure says it counts, is in the total twice.
    CountedTwice { space: usize },
    /// A stair is deducted, or a garage or porch that stands outside the walls of the house.
    Deducted { space: usize },
    /// A space that lies within another is deducted from it twice.
    DeductedTwice { space: usize },
    /// The area of a level is not computed from its own walls.
    Level { level: usize, how: LevelTaken },
    /// Everything under the roof is in the total.
    UnderRoof,
    /// A recess is filled in, a jog or bay is left off, or the corner of an L is counted twice.
    Part { space: usize, part: Part },
    /// Several spaces that one decision of an office treats alike, however many were typed.
    Together(Group),
}

/// Spaces that one decision treats alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Group {
    /// The living spaces of a level below grade are counted.
    LivingBelow { level: usize },
    /// Everything enclosed on a level below grade is counted.
    AllBelow { level: usize },
    /// The openings, or the low parts, are not deducted.
    NotDeducted(Kind),
    /// Of a level, only this space is counted.
    AllBut { space: usize },
    /// Of a space, all recesses are filled in, or all jogs, wings or bays are left off.
    Parts { space: usize, parts: Alike },
}

impl Group {
    /// What happens to each space.
    fn each(self, house: &House) -> Vec<DepartureKind> {
        let spaces = || house.spaces.iter().enumerate();
        let below = |of: usize, only_living: bool| {
            let is_there = |i: usize, space: &Space| {
                space.level == of
                    && !is_in_total(house, i, false)
                    && space.kind.has_walls()
                    && (!only_living || space.kind == Kind::Living)
            };
            let there = spaces().filter(|&(i, space)| is_there(i, space));
            there.map(|(space, _)| DepartureKind::Counted { space }).collect()
        };
        match self {
            Group::LivingBelow { level } => below(level, true),
            Group::AllBelow { level } => below(level, false),
            Group::NotDeducted(kind) => {
                let lies_in_total =
                    |space: &Space| space.parent.is_some_and(|i| is_in_total(house, i, false));
                let those =
                    spaces().filter(|(_, space)| space.kind == kind && lies_in_total(space));
                those.map(|(space, _)| DepartureKind::NotDeducted { space }).collect()
            }
            Group::AllBut { space: main } => {
                let others = counted_on(house, house.spaces[main].level).filter(|&i| i != main);
                others.map(|space| DepartureKind::LeftOut { space }).collect()
            }
            Group::Parts { space, parts } => {
                parts.parts().map(|part| DepartureKind::Part { space, part }).collect()
            }
        }
    }
}

/// What the area of a level is computed from instead of its own walls.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum LevelTaken {
    /// The whole outline of the level below.
    WholeBelow,
    /// Three quarters of the outline of the level below.
    ThreeQuartersBelow,
    /// Half the outline of the level below.
    HalfBelow,
    /// Its own area, counted twice.
    Twice,
}

/// A house, with what the figure says it counts.
#[derive(Clone, Copy)]
pub(crate) struct Listed<'a> {
    pub(crate) house: &'a House,
    /// The names of what the figure says it counts.
    pub(crate) counting: &'a [String],
}

/// All departures possible for a house, independent of face and rounding, and whether there were too many to list.
///
/// `measured` is the area of each space under the figure's rule; `is_free` says whether the outline of a space may be
/// simplified.
pub(crate) fn departures(
    listed: Listed<'_>,
    measured: &[Area],
    is_free: impl Fn(usize) -> bool,
    weights: &Weights,
) -> (Vec<Departure>, bool) {
    let mut list = Vec::with_capacity(24);
    let mut push = |kind: DepartureKind, chance: f64| {
        list.push(Departure { kind, odds: chance / (1.0 - chance) });
    };
    spaces(listed, measured, weights, &mut push);
    groups(listed, measured, weights, &mut push);
    levels(listed.house, measured, weights, &mut push);
    shapes(listed.house, is_free, weights, &mut push);
    let is_capped = list.len() > MOST_DEPARTURES;
    list.truncate(MOST_DEPARTURES);
    let all: f64 = list.iter().map(|departure| departure.odds).sum();
    if all > MOST_ODDS {
        list.iter_mut().for_each(|departure| departure.odds *= MOST_ODDS / all);
    }
    (list, is_capped)
}

fn spaces(
    listed: Listed<'_>,
    measured: &[Area],
    weights: &Weights,
    push: &mut impl FnMut(DepartureKind, f64),
) {
    let house = listed.house;
    let is_named = |name: &str| listed.counting.iter().any(|named| named == name);
    let in_total = |i: usize| is_in_total(house, i, false);
    let main = largest_on_the_ground(house, measured);
    for (i, space) in house.spaces.iter().enumerate() {
        if is_named(&space.name) {
            push(DepartureKind::CountedTwice { space: i }, weights.counted_twice);
            push(DepartureKind::LeftOut { space: i }, weights.left_out);
        } else if space.kind.lies_in_another() {
            let lies_in_total = space.parent.is_some_and(in_total);
            match space.kind {
                Kind::Open | Kind::Low | Kind::Court if lies_in_total => {
                    push(DepartureKind::NotDeducted { space: i }, weights.not_deducted);
                    if space.kind == Kind::Open {
                        push(DepartureKind::DeductedTwice { space: i }, weights.deducted_twice);
                    }
                }
                Kind::Stair if lies_in_total => {
                    push(DepartureKind::Deducted { space: i }, weights.deducted);
                }
                _ => {}
            }
        } else if in_total(i) {
            let is_listed = is_listed_alike(space, measured[i]);
            let chance = if is_listed { weights.left_out_though_listed } else { weights.left_out };
            if main != Some(i) {
                push(DepartureKind::LeftOut { space: i }, chance);
                // All that counts on a level, twice, is the level twice.
                if counted_on(house, space.level).nth(1).is_some() {
                    push(DepartureKind::CountedTwice { space: i }, weights.counted_twice);
                }
            }
        } else {
            let chance = match space.kind {
                _ if is_listed_alike(space, measured[i]) => weights.counted_though_listed,
                Kind::Deck | Kind::Patio | Kind::Balcony | Kind::Carport | Kind::Outbuilding
                    if !is_like_a_room(&space.name) =>
                {
                    weights.counted_outdoors
                }
                _ => weights.counted,
            };
            push(DepartureKind::Counted { space: i }, chance);
            let is_apart = !space.parent.is_some_and(in_total);
            if is_apart && space.recorded.is_some() && !is_listed_alike(space, measured[i]) {
                push(DepartureKind::CountedAsListed { space: i }, weights.counted_though_listed);
            }
            if house.is_deducted(i) && space.parent.is_some_and(in_total) {
                push(DepartureKind::DeductedTwice { space: i }, weights.deducted_twice);
            } else if may_be_deducted(space) && !house.is_below_grade(i) {
                push(DepartureKind::Deducted { space: i }, weights.deducted_outside);
            }
        }
    }
    for (missing, statement) in listed.house.missing.iter().enumerate() {
        if !is_named(&statement.name) {
            push(DepartureKind::MissingCounted { missing }, weights.missing_counted);
        }
    }
    let mut under = under_roof(listed);
    match (under.next(), under.next()) {
        (None, _) => {}
        // If there is only one such space, this is the same as counting it.
        (Some(only), None) if is_listed_alike(&house.spaces[only], measured[only]) => {
            push(DepartureKind::UnderRoof, weights.counted_though_listed / 2.0);
        }
        _ => push(DepartureKind::UnderRoof, weights.under_roof),
    }
}

/// Spaces that are treated alike. What two spaces have in common is weighed as a pair, but not the rooms of a basement.
fn groups(
    listed: Listed<'_>,
    measured: &[Area],
    weights: &Weights,
    push: &mut impl FnMut(DepartureKind, f64),
) {
    let house = listed.house;
    let mut those_of = |group: Group, least: usize, chance: f64| {
        let spaces = group.each(house);
        let name = |kind: &DepartureKind| kind.brings().map(|space| &house.spaces[space].name);
        let is_named = spaces.iter().filter_map(name).any(|name| listed.counting.contains(name));
        if spaces.len() >= least && !is_named {
            push(DepartureKind::Together(group), chance);
        }
        spaces.len()
    };
    for level in (0..house.levels.len()).filter(|&level| house.levels[level].below_grade) {
        let (living, all) = (Group::LivingBelow { level }, Group::AllBelow { level });
        if those_of(living, 2, weights.counted) != all.each(house).len() {
            those_of(all, 2, weights.counted);
        }
    }
    for kind in [Kind::Open, Kind::Low] {
        those_of(Group::NotDeducted(kind), 3, weights.not_deducted);
    }
    if let Some(space) = largest_on_the_ground(house, measured) {
        those_of(Group::AllBut { space }, 3, weights.left_out);
    }
}

/// Whether a level has the outline of the one below, less two or more parts alike that are deducted from it: then its
/// walls are as large as those below, and what is not deducted is the whole difference.
fn is_as_large_but_for_several(house: &House, level: usize, measured: &[Area]) -> bool {
    let spaces = house.spaces.iter().enumerate();
    let is_off = |space: &Space| {
        space.level == level && space.parent.is_some_and(|i| is_in_total(house, i, false))
    };
    let off: Vec<usize> = spaces
        .filter(|(_, space)| matches!(space.kind, Kind::Open | Kind::Low) && is_off(space))
        .map(|(i, _)| i)
        .collect();
    let is_alike = |pair: &[usize]| house.spaces[pair[0]].kind == house.spaces[pair[1]].kind;
    off.len() >= 2
        && off.windows(2).all(is_alike)
        && off.iter().map(|&i| measured[i]).sum::<Area>()
            == level_effect(house, level, LevelTaken::WholeBelow, measured)
}

fn levels(
    house: &House,
    measured: &[Area],
    weights: &Weights,
    push: &mut impl FnMut(DepartureKind, f64),
) {
    let stacked: Vec<usize> = upper_levels(house).collect();
    for level in (0..house.levels.len()).filter(|&level| counted_on(house, level).next().is_some())
    {
        if stacked.contains(&level) {
            for (how, chance) in [
                (LevelTaken::WholeBelow, weights.whole_below),
                (LevelTaken::ThreeQuartersBelow, weights.three_quarters_below),
                (LevelTaken::HalfBelow, weights.half_below),
            ] {
                let is_deducted = how == LevelTaken::WholeBelow
                    && is_as_large_but_for_several(house, level, measured);
                if !is_deducted {
                    push(DepartureKind::Level { level, how }, chance);
                }
            }
            push(DepartureKind::LevelLeftOut { level }, weights.left_out);
        }
        push(DepartureKind::Level { level, how: LevelTaken::Twice }, weights.level_twice);
    }
}

fn shapes(
    house: &House,
    is_free: impl Fn(usize) -> bool,
    weights: &Weights,
    push: &mut impl FnMut(DepartureKind, f64),
) {
    let mut all: Vec<(usize, Part)> = Vec::new();
    // Whoever draws an outline without any of its recesses, jogs, wings or bays decides once.
    let mut at_once: Vec<(usize, Alike)> = Vec::new();
    for space in (0..house.spaces.len()).filter(|&i| is_in_total(house, i, false)) {
        if is_free(space) {
            let outline = &house.spaces[space].closed.outline;
            let parts = parts(outline);
            at_once.extend(left_out_at_once(&parts, outline).into_iter().map(|one| (space, one)));
            all.extend(parts.into_iter().map(|part| (space, part)));
        }
    }
    // A wing is less likely to be left off than something that projects from a wall; a corner counted twice is rarer.
    let share = |part: &Part| match part.shape {
        Shape::Wing => 0.5,
        Shape::Overlap => 0.3,
        _ => 1.0,
    };
    let whole: f64 = all.iter().map(|(_, part)| share(part)).sum();
    for (space, part) in all {
        push(DepartureKind::Part { space, part }, weights.shape * share(&part) / whole);
    }
    for (space, parts) in at_once {
        push(DepartureKind::Together(Group::Parts { space, parts }), weights.all_parts);
    }
}

/// Whether a name says that something outdoors is enclosed or lived in, such as a screened patio or a studio.
fn is_like_a_room(name: &str) -> bool {
    const WORDS: [&str; 10] = [
        "screen",
        "enclosed",
        "closed",
        "covered",
        "sun",
        "studio",
        "guest",
        "apartment",
        "office",
        "casita",
    ];
    let name = name.to_lowercase();
    WORDS.iter().any(|word| name.contains(word))
}

/// Whether a space that stands outside the walls of the house is one that is often drawn inside them and deducted.
fn may_be_deducted(space: &Space) -> bool {
    space.parent.is_none() && matches!(space.kind, Kind::Garage | Kind::Porch)
}

/// Whether the record lists a space separately, with about the area that was measured.
pub(crate) fn is_listed_alike(space: &Space, measured: Area) -> bool {
    space.recorded.is_some_and(|recorded| {
        let apart = (recorded - measured).abs().sq_ft();
        apart <= (measured.sq_ft() * 0.06).max(15.0)
    })
}

/// The largest counted space on the lowest level above grade. It is the house itself, so it is never left out.
fn largest_on_the_ground(house: &House, measured: &[Area]) -> Option<usize> {
    let level = (0..house.levels.len()).find(|&level| counted_on(house, level).next().is_some())?;
    counted_on(house, level).max_by_key(|&i| (net(house, i, measured), std::cmp::Reverse(i)))
}

/// The spaces under the roof that the figure does not count.
pub(crate) fn under_roof(listed: Listed<'_>) -> impl Iterator<Item = usize> {
    let Listed { house, counting } = listed;
    (0..house.spaces.len()).filter(move |&i| {
        let space = &house.spaces[i];
        let is_under = matches!(
            space.kind,
            Kind::Living
                | Kind::Unfinished
                | Kind::Garage
                | Kind::Carport
                | Kind::Porch
                | Kind::Breezeway
                | Kind::Storage
        );
        is_under && !space.counted && !house.is_below_grade(i) && !counting.contains(&space.name)
    })
}

/// Levels above grade that are on top of another level above grade, with counted spaces on both.
fn upper_levels(house: &House) -> impl Iterator<Item = usize> {
    (0..house.levels.len()).filter(|&level| {
        let counts = |level: usize| counted_on(house, level).next().is_some();
        !house.levels[level].beside
            && counts(level)
            && level_below(house, level).is_some_and(counts)
    })
}

/// The level directly below a level.
pub(crate) fn level_below(house: &House, level: usize) -> Option<usize> {
    (0..level).rev().find(|&below| !house.levels[below].below_grade)
}

fn counted_on(house: &House, level: usize) -> impl Iterator<Item = usize> {
    (0..house.spaces.len())
        .filter(move |&i| house.spaces[i].level == level && is_in_total(house, i, false))
}

impl DepartureKind {
    /// What it adds to the total, given the area and outline of each space; exact where no wall is curved.
    pub(crate) fn effect(self, listed: Listed<'_>, areas: &[Area], outlines: &[&Outline]) -> Area {
        let house = listed.house;
        match self {
            DepartureKind::Counted { space } => net(house, space, areas),
            DepartureKind::CountedAsListed { space } => {
                house.spaces[space].recorded.unwrap_or(Area::ZERO)
            }
            DepartureKind::MissingCounted { missing } => {
                listed.house.missing[missing].recorded.area()
            }
            DepartureKind::CountedTwice { space } => net(house, space, areas),
            DepartureKind::LeftOut { space } => -net(house, space, areas),
            DepartureKind::LevelLeftOut { level } => -own_area(house, level, areas),
            DepartureKind::NotDeducted { space } => areas[space],
            DepartureKind::Deducted { space } | DepartureKind::DeductedTwice { space } => {
                -areas[space]
            }
            DepartureKind::Level { level, how } => level_effect(house, level, how, areas),
            DepartureKind::UnderRoof => under_roof(listed).map(|i| net(house, i, areas)).sum(),
            DepartureKind::Part { space, part } => part.effect(outlines[space]),
            DepartureKind::Together(group) => {
                let each = group.each(house).into_iter();
                each.map(|kind| kind.effect(listed, areas, outlines)).sum()
            }
        }
    }

    /// What happens to each space: the departure itself, or each of those that are made together.
    pub(crate) fn each(self, house: &House) -> Vec<DepartureKind> {
        match self {
            DepartureKind::Together(group) => group.each(house),
            alone => vec![alone],
        }
    }

    /// For each space that it affects, how many more times the space is in the total; negative for fewer.
    pub(crate) fn changes(self, listed: Listed<'_>) -> Vec<(usize, f64)> {
        let house = listed.house;
        let mut list = Vec::new();
        let mut with = |space: usize, by: f64| {
            list.push((space, by));
            list.extend(house.deducted_from(space).map(|off| (off, -by)));
        };
        match self {
            DepartureKind::Counted { space } | DepartureKind::CountedTwice { space } => {
                with(space, 1.0);
            }
            DepartureKind::LeftOut { space } => with(space, -1.0),
            DepartureKind::LevelLeftOut { level } => {
                counted_on(house, level).for_each(|space| with(space, -1.0));
            }
            DepartureKind::NotDeducted { space } => list.push((space, 1.0)),
            DepartureKind::Deducted { space } | DepartureKind::DeductedTwice { space } => {
                list.push((space, -1.0));
            }
            DepartureKind::Level { level, how } => {
                let (own, below) = match how {
                    LevelTaken::WholeBelow => (-1.0, 1.0),
                    LevelTaken::ThreeQuartersBelow => (-1.0, 0.75),
                    LevelTaken::HalfBelow => (-1.0, 0.5),
                    LevelTaken::Twice => (1.0, 0.0),
                };
                counted_on(house, level).for_each(|space| with(space, own));
                if below > 0.0 {
                    let under = level_below(house, level).into_iter();
                    let under = under.flat_map(|level| counted_on(house, level));
                    let whole = under.filter(|&i| house.spaces[i].parent.is_none());
                    list.extend(whole.map(|space| (space, below)));
                }
            }
            DepartureKind::UnderRoof => under_roof(listed).for_each(|space| with(space, 1.0)),
            // The outline itself is drawn otherwise.
            DepartureKind::Together(Group::Parts { .. }) => {}
            DepartureKind::Together(group) => {
                let each = group.each(house).into_iter();
                for (space, by) in each.flat_map(|kind| kind.changes(listed)) {
                    match list.iter_mut().find(|(known, _)| *known == space) {
                        Some((_, all)) => *all += by,
                        None => list.push((space, by)),
                    }
                }
            }
            DepartureKind::CountedAsListed { .. }
            | DepartureKind::MissingCounted { .. }
            | DepartureKind::Part { .. } => {}
        }
        list
    }

    /// Whether it changes the outline of a space and not what is counted.
    pub(crate) fn is_of_parts(self) -> bool {
        matches!(self, DepartureKind::Part { .. } | DepartureKind::Together(Group::Parts { .. }))
    }

    /// Whether it counts whole spaces or levels, or leaves them out.
    pub(crate) fn is_of_whole_spaces(self) -> bool {
        use DepartureKind::{
            Counted, CountedAsListed, CountedTwice, LeftOut, LevelLeftOut, MissingCounted,
            NotDeducted, Together, UnderRoof,
        };
        matches!(
            self,
            Counted { .. }
                | CountedAsListed { .. }
                | CountedTwice { .. }
                | MissingCounted { .. }
                | LeftOut { .. }
                | LevelLeftOut { .. }
                | NotDeducted { .. }
                | UnderRoof
                | Together(_)
        ) && !self.is_of_parts()
    }

    /// Whether one habit of an office makes both: openings are not deducted, or what has a low ceiling is not, or all
    /// rooms of a basement are counted.
    pub(crate) fn is_one_habit_with(self, other: DepartureKind, house: &House) -> bool {
        let kept = |kind: DepartureKind| match kind {
            DepartureKind::NotDeducted { space } => Some(house.spaces[space].kind),
            _ => None,
        };
        let is_basement = match (self, other) {
            (DepartureKind::Counted { space: one }, DepartureKind::Counted { space: two }) => {
                let level = house.spaces[one].level;
                let rooms = house.spaces.iter().enumerate();
                let mut rooms = rooms.filter(|(_, room)| room.level == level);
                house.is_below_grade(one) && rooms.all(|(i, _)| i == one || i == two)
            }
            _ => false,
        };
        is_basement || kept(self).is_some() && kept(self) == kept(other)
    }

    /// The space that it adds to the total by counting it or by not deducting it.
    pub(crate) fn brings(self) -> Option<usize> {
        match self {
            DepartureKind::Counted { space }
            | DepartureKind::CountedAsListed { space }
            | DepartureKind::NotDeducted { space } => Some(space),
            _ => None,
        }
    }

    /// Whether two departures contradict each other or mean the same.
    pub(crate) fn excludes(self, other: DepartureKind, house: &House) -> bool {
        use DepartureKind::{
            Counted, CountedAsListed, CountedTwice, Deducted, DeductedTwice, LeftOut, Level,
            LevelLeftOut, NotDeducted, Together, UnderRoof,
        };
        match (self, other) {
            _ if self == other => return true,
            _ if self.is_of_parts() && other.is_of_parts() => return true,
            (Together(Group::Parts { space, .. }), other)
            | (other, Together(Group::Parts { space, .. })) => {
                return other == (LeftOut { space });
            }
            (Together(group), other) | (other, Together(group)) => {
                return group.each(house).into_iter().any(|kind| kind.excludes(other, house));
            }
            // The two rooms of a basement are a departure of their own.
            (Counted { space: one }, Counted { space: two }) => {
                let level = house.spaces[one].level;
                let all = [Group::LivingBelow { level }, Group::AllBelow { level }];
                let is_both = |group: Group| group.each(house) == [self, other];
                return house.is_below_grade(one)
                    && house.spaces[two].level == level
                    && all.into_iter().any(is_both);
            }
            _ => {}
        }
        let one_way = |a: DepartureKind, b: DepartureKind| match (a, b) {
            // All levels twice are the whole house twice, which is an error in the total.
            (Level { how: LevelTaken::Twice, .. }, Level { how: LevelTaken::Twice, .. }) => true,
            // The cause that the level above is taken at the outline below says this in fewer words.
            (Level { how: LevelTaken::Twice, level: a }, LevelLeftOut { level: b }) => a <= b,
            (Level { how: LevelTaken::Twice, level: a }, LeftOut { space }) => {
                a <= house.spaces[space].level
            }
            (
                Level { level: a, .. } | LevelLeftOut { level: a },
                Level { level: b, .. } | LevelLeftOut { level: b },
            ) => a == b,
            (
                Level { level, .. } | LevelLeftOut { level },
                LeftOut { space }
                | NotDeducted { space }
                | Deducted { space }
                | DeductedTwice { space }
                | CountedTwice { space },
            ) => house.spaces[space].level == level,
            (UnderRoof, Counted { space } | CountedAsListed { space } | Deducted { space }) => {
                under_roof(Listed { house, counting: &[] }).any(|i| i == space)
            }
            (
                DeductedTwice { space: a } | Deducted { space: a } | CountedAsListed { space: a },
                Counted { space: b },
            )
            | (Deducted { space: a }, CountedAsListed { space: b })
            | (NotDeducted { space: a }, DeductedTwice { space: b })
            | (CountedTwice { space: a }, LeftOut { space: b }) => a == b,
            (DeductedTwice { .. }, UnderRoof) => true,
            (DepartureKind::Part { .. }, DepartureKind::Part { .. }) => true,
            (DepartureKind::Part { space, .. }, LeftOut { space: other }) => space == other,
            _ => false,
        };
        one_way(self, other) || one_way(other, self)
    }
}

fn own_area(house: &House, level: usize, areas: &[Area]) -> Area {
    counted_on(house, level).map(|i| net(house, i, areas)).sum()
}

/// What taking a level's area differently adds.
fn level_effect(house: &House, level: usize, how: LevelTaken, areas: &[Area]) -> Area {
    let own = own_area(house, level, areas);
    let below = level_below(house, level).into_iter().flat_map(|below| counted_on(house, below));
    let whole: i128 =
        below.filter(|&i| house.spaces[i].parent.is_none()).map(|i| areas[i].half_nm2()).sum();
    match how {
        LevelTaken::WholeBelow => Area::from_half_nm2(whole) - own,
        LevelTaken::ThreeQuartersBelow => Area::from_half_nm2((3 * whole) >> 2) - own,
        LevelTaken::HalfBelow => Area::from_half_nm2(whole >> 1) - own,
        LevelTaken::Twice => own,
    }
}
