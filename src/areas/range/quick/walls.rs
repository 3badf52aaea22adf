//! Walls rounded to whole steps, and the moves that close each axis.

use crate::areas::closings::RoundingFreedom;
use crate::units::length::Length;

/// The most walls along one axis.
pub(super) const MOST_LEGS: usize = 16;
pub(super) const MOST_SIDES: usize = 2 * MOST_LEGS;
/// The most moves on one axis.
pub(super) const MOST_MOVES: usize = 10;

/// A wall. Its numbers are as small as they can be.
#[derive(Clone, Copy, Debug)]
pub(super) struct Leg {
    /// Its component along its axis in steps, without any move.
    pub(super) run: i32,
    /// Where it lies on the other axis, in steps and without any move.
    pub(super) across: i32,
    /// The place of its axis: north, then east.
    pub(super) axis: u8,
    pub(super) sign: i8,
    /// By how much its component changes if it is rounded against the rule; 0 if it has one length, or both lengths follow
    /// the rule.
    pub(super) against: i8,
    /// The whole steps in its length, and whether there is more.
    pub(super) steps: i32,
    pub(super) has_more: bool,
}

impl Leg {
    pub(super) const NONE: Leg =
        Leg { run: 0, across: 0, axis: 0, sign: 0, against: 0, steps: 0, has_more: false };

    pub(super) fn axis(&self) -> usize {
        usize::from(self.axis)
    }

    pub(super) fn length(&self) -> i32 {
        i32::from(self.sign) * self.run
    }
}

/// The closings of one axis, as [`AxisClosings`](crate::areas::closings::AxisClosings) with as few moves as possible: of
/// the moves, each of which changes the component of a wall by the same step, any `choose` close the axis.
#[derive(Clone, Copy, Debug)]
pub(super) struct Closings {
    /// The walls that are moved, in walking order.
    pub(super) walls: [u8; MOST_LEGS],
    pub(super) count: usize,
    pub(super) choose: usize,
    /// The step: 1 or -1.
    pub(super) by: i8,
}

/// Which of its two lengths a wall may have: one that is moved by at most `reach` follows the rule.
#[derive(Clone, Copy)]
pub(super) struct Freedom {
    pub(super) unit: i64,
    /// At most a whole step.
    reach: i64,
}

impl Freedom {
    pub(super) fn of(freedom: RoundingFreedom, unit: i64) -> Freedom {
        let reach = match freedom {
            RoundingFreedom::Any => unit,
            RoundingFreedom::WithinReading(reading) => (unit + 2 * reading.nm()).div_euclid(2),
        };
        Freedom { unit, reach }
    }

    /// The two lengths of a wall that is `above` longer than a whole step: by how many steps it is rounded, the change
    /// to its other length, and whether both lengths follow the rule.
    pub(super) fn candidate(self, above: i64) -> (i8, i8, bool) {
        if above == 0 {
            return (0, 0, false);
        }
        match (above <= self.reach, self.unit - above <= self.reach) {
            (false, true) => (1, -1, false),
            (true, high) => (0, 1, high),
            (false, false) => (0, 1, false),
        }
    }
}

/// The whole steps in a length, and what is left. The foot, the usual unit, is written as a constant so that the compiler
/// needs no division; `None` if either is below zero, which none is.
pub(super) fn whole_steps(length: i64, unit: i64) -> Option<(i32, i64)> {
    const FOOT: u64 = Length::FOOT.nm().unsigned_abs();
    let (length, unit) = (u64::try_from(length).ok()?, u64::try_from(unit).ok()?);
    let (steps, above) = match unit {
        FOOT => (length.div_euclid(FOOT), length.rem_euclid(FOOT)),
        _ => (length.checked_div(unit)?, length.checked_rem(unit)?),
    };
    Some((i32::try_from(steps).ok()?, above.cast_signed()))
}

impl Closings {
    pub(super) const EMPTY: Closings =
        Closings { walls: [0; MOST_LEGS], count: 0, choose: 0, by: 1 };

    pub(super) fn add(&mut self, wall: usize) -> Option<()> {
        *self.walls.get_mut(self.count)? = u8::try_from(wall).ok()?;
        self.count += 1;
        Some(())
    }

    /// Makes the moves that have to be made, so that any `choose` of the rest close the axis; `None` where there are too
    /// many of them or the axis cannot close. So far there are those that follow the rule, each a step forward, and the
    /// walk ends at `end` without any.
    pub(super) fn finish(&mut self, axis: usize, end: i32, legs: &mut [Leg]) -> Option<()> {
        let free = i32::try_from(self.count).ok()?;
        let mut steps = -end;
        if !(0..=free).contains(&steps) {
            // All free moves in the right direction, then as few as possible against the rule.
            let against = if steps > 0 { 1 } else { -1 };
            if against > 0 {
                self.make(legs);
                steps -= free;
            }
            self.count = 0;
            for (wall, leg) in legs.iter_mut().enumerate() {
                if leg.against == against && leg.axis() == axis {
                    self.add(wall)?;
                    if against < 0 {
                        // It goes back, and its move is the step forward that undoes it.
                        leg.run -= 1;
                        steps += 1;
                    }
                }
            }
        }
        self.choose = usize::try_from(steps).ok().filter(|choose| *choose <= self.count)?;
        if self.count > MOST_MOVES {
            return None;
        }
        if 2 * self.choose > self.count {
            // All moves are made, and each is then the step back that undoes it.
            self.make(legs);
            self.choose = self.count - self.choose;
            self.by = -1;
        }
        Some(())
    }

    /// Makes all moves.
    fn make(&self, legs: &mut [Leg]) {
        self.walls().for_each(|wall| legs[wall].run += 1);
    }

    /// Whether every wall keeps a length, whichever moves are made.
    pub(super) fn keep_their_walls(&self, legs: &[Leg]) -> bool {
        self.walls()
            .map(|wall| &legs[wall])
            .all(|leg| leg.length() + i32::from(leg.sign * self.by) > 0)
    }

    /// The wall of each move.
    pub(super) fn walls(&self) -> impl Iterator<Item = usize> {
        self.walls[..self.count].iter().map(|&wall| usize::from(wall))
    }

    /// The number of ways to choose the moves.
    pub(super) fn choices(&self) -> usize {
        usize::from(CHOICES[self.count][self.choose])
    }
}

/// The number of ways to choose some of at most [`MOST_MOVES`] moves.
const CHOICES: [[u16; MOST_MOVES + 1]; MOST_MOVES + 1] = {
    let mut all = [[0; MOST_MOVES + 1]; MOST_MOVES + 1];
    let mut of = 0;
    while of <= MOST_MOVES {
        all[of][0] = 1;
        let mut some = 1;
        while some <= of {
            all[of][some] = all[of - 1][some - 1] + all[of - 1][some];
            some += 1;
        }
        of += 1;
    }
    all
};

/// What one pass along the walls tells.
pub(super) struct Lie {
    /// Where the walk ends on each axis.
    pub(super) ends: [i32; 2],
    /// Whether every wall has a length.
    pub(super) have_lengths: bool,
    /// The strips between the walls of one axis and the start, in square steps.
    pub(super) strips: i64,
    /// The lowest and the highest place of the walls that run forth along another axis, and of those that run back.
    forth: (i32, i32),
    back: (i32, i32),
}

impl Lie {
    /// Notes where each wall lies on the other axis. The strips are those of the walls along `strips_of`, the places those
    /// of the walls along `places_of`.
    pub(super) fn of(legs: &mut [Leg], strips_of: usize, places_of: Option<usize>) -> Lie {
        let none = (i32::MAX, i32::MIN);
        let (mut north, mut east, mut forth, mut back) = (0, 0, none, none);
        let (mut have_lengths, mut strips) = (true, 0);
        for leg in legs {
            let run = leg.run;
            let across = if leg.axis == 0 {
                north += run;
                east
            } else {
                east += run;
                north
            };
            leg.across = across;
            have_lengths &= leg.length() > 0;
            if leg.axis() == strips_of {
                strips += i64::from(run) * i64::from(across);
            }
            if Some(leg.axis()) == places_of {
                if leg.sign > 0 {
                    forth = (forth.0.min(across), forth.1.max(across));
                } else {
                    back = (back.0.min(across), back.1.max(across));
                }
            }
        }
        Lie { ends: [north, east], have_lengths, strips, forth, back }
    }

    /// Whether all walls of the way there are more than `moves` steps on one side of all walls of the way back.
    pub(super) fn is_apart(&self, moves: usize) -> bool {
        let moves = i32::try_from(moves).unwrap_or(i32::MAX);
        self.forth.0 - self.back.1 > moves || self.back.0 - self.forth.1 > moves
    }
}

/// On which axis the walk goes there and all the way back, if no wall turns straight back.
pub(super) fn axis_of_return(legs: &[Leg]) -> Option<usize> {
    let sign_of =
        |axis: usize| legs.iter().rev().find(|leg| leg.axis() == axis).map(|leg| leg.sign);
    let (mut signs, mut before) = ([sign_of(0)?, sign_of(1)?], legs.last()?.axis());
    let mut turns = [0_u8; 2];
    for leg in legs {
        let axis = leg.axis();
        if signs[axis] != leg.sign {
            if before == axis {
                return None;
            }
            turns[axis] = turns[axis].saturating_add(1);
            signs[axis] = leg.sign;
        }
        before = axis;
    }
    turns.iter().rposition(|turns| *turns == 2)
}
