//! Spaces about as large as what no cause explains: what they would leave, and whether rounding could change that.

use std::collections::HashSet;

use crate::areas::at_face::Walls;
use crate::areas::{SpaceAreas, is_in_total};
use crate::diagnostic::words;
use crate::house::{Face, Kind, SideRule};
use crate::reconcile::cause::Cause;
use crate::reconcile::settings::RoundingTaken;
use crate::reconcile::{BridgeStep, CouldExplain, Figure, Line};
use crate::units::area::Area;
use crate::units::length::Step;
use crate::wording::accounts::{Accounts, UNLIKELY, asks_the_office};
use crate::wording::sentences::{Reader, Sentences, capital, the};
use crate::wording::size::{area_of_sq_ft, size_of_sq_ft, step, step_less};
use crate::wording::step_lines::not_explained;

/// How near a figure and a house, or what is left and a space, come to each other if they agree, in square feet.
const AGREES_WITHIN: i64 = 3;

/// One or two spaces about as large as what is left.
pub(super) struct Nearest {
    /// Their names, as in a sentence.
    pub(super) names: String,
    /// What a total may do with them, as a question asks it: `counts the porch`, `deducts the foyer`.
    does: String,
    /// What a total has to do with them for what is left: `counts the porch`, `does not deduct the foyer`.
    unless: String,
    /// Their size and what would remain, in whole square feet; negative if they are too large.
    pub(super) size: i64,
    pub(super) left: i64,
    /// All of them, and the size of each.
    pub(super) spaces: Vec<(usize, i64)>,
}

impl Nearest {
    /// Whether they leave next to nothing.
    pub(super) fn is_nearly_all(&self) -> bool {
        self.left.abs() <= AGREES_WITHIN
    }

    /// The indexes of the spaces.
    pub(super) fn numbers(&self) -> Vec<usize> {
        self.spaces.iter().map(|(space, _)| *space).collect()
    }
}

impl Sentences<'_> {
    /// What is said where one space, or two together, come so near to what is left that they agree, or that some outline
    /// of rounded walls gives the figure with them, or that they are within a tenth of it; `None` where they are not.
    pub(super) fn nearly(&self, figure: &Figure, rest: i64, near: &Nearest) -> Option<Accounts> {
        const TENTH: i64 = 10;
        let Nearest { does, .. } = near;
        let why = self.laid_to(figure, near);
        if why.is_none() && TENTH * near.left.abs() > near.size {
            return None;
        }
        let opening = self.set_beside(figure, rest, near, why);
        let word = figure.word();
        let settled = match (self.reader, figure.is_record()) {
            (Reader::Office, true) if figure.area() < figure.measured_like_figure() => {
                String::new()
            }
            (Reader::Office, true) => {
                format!("Please state whether the record's total {does}.")
            }
            (Reader::Office, false) => {
                format!("Whether the {word}'s total {does} is not known here.")
            }
            (Reader::Owner, _) => {
                format!("Ask whether the {word}'s total {does}.{}", self.ours(figure))
            }
        };
        let (closing, asks) = self.or_asked(figure, settled);
        let near = near.numbers();
        Some(Accounts { opening, items: Vec::new(), closing, asks, near, names_nothing: false })
    }

    /// What the rest beside these spaces can be laid to: rounding, only where some outline of rounded walls gives the
    /// figure with them; `None` where none does, or there are too many to tell.
    fn laid_to(&self, figure: &Figure, near: &Nearest) -> Option<&'static str> {
        let is_rounded =
            matches!(figure.side_rule(), SideRule::Step(Step::WholeFoot | Step::HalfFoot))
                && figure.line(BridgeStep::RecordedSides).is_none();
        let by_rounding = is_rounded
            .then(|| figure.rounding_test().could_explain_with(&near.numbers()))
            .flatten();
        match by_rounding {
            Some(CouldExplain::Yes) => Some("rounding could explain"),
            // Against the rule nearly every wall would have to go one way to make much more than rounding usually does.
            Some(CouldExplain::OnlyAgainst) if self.is_a_usual_rounding(figure, near.left) => {
                Some("walls rounded up or down against the rule could explain")
            }
            // So little needs no reason.
            _ => (near.left.abs() <= AGREES_WITHIN).then_some("rounding could explain"),
        }
    }

    /// Whether so many square feet are no more than twice what rounding typically changes.
    #[expect(
        clippy::float_arithmetic,
        clippy::cast_precision_loss,
        reason = "a typical size is a float"
    )]
    fn is_a_usual_rounding(&self, figure: &Figure, sq_ft: i64) -> bool {
        const TYPICAL: f64 = 2.0;
        let typical = figure.rounding_test().typical();
        typical.is_some_and(|typical| sq_ft.abs() as f64 <= TYPICAL * typical)
    }

    /// Whether so many square feet are too few to tell a cause from: less than a hundredth of the figure.
    fn is_too_little(&self, figure: &Figure, sq_ft: i64) -> bool {
        const MOST: i64 = 15;
        const SHARE: i64 = 100;
        sq_ft.abs() <= MOST && SHARE * sq_ft.abs() <= figure.area().whole_sq_ft()
    }

    /// What would explain all that the steps leave, with rounding: `the total counts the garage`. `None` where a cause
    /// is reported, or nothing comes near enough.
    pub(super) fn left_unless(&self, figure: &Figure) -> Option<String> {
        let is_open = figure.explanations().reported().next().is_none();
        let rest = not_explained(figure);
        let accounts = self.accounts(figure).filter(|_| is_open && rest != 0)?;
        let near = self.nearest(figure, rest).filter(|near| near.numbers() == accounts.near)?;
        self.laid_to(figure, &near)?;
        Some(format!("the total {}", near.unless))
    }

    /// One space, or two, beside what is left: `The garage would be 462 of the 650 sq ft that are left.` What remains is
    /// laid to `why`, or else no common cause fits it.
    pub(super) fn set_beside(
        &self,
        figure: &Figure,
        rest: i64,
        near: &Nearest,
        why: Option<&str>,
    ) -> String {
        let of = self.left_over(figure, rest);
        let who = self.with_sizes(figure, near);
        let (size, left) = (self.number(near.size), near.left);
        let step = figure.line(BridgeStep::NotExplained).map_or(Area::ZERO, Line::area);
        let of_size = area_of_sq_ft(near.size);
        let remains = step_less(figure.area() - step, figure.area(), of_size, self.is_metric());
        let (says, remaining) = match left {
            0 => return format!("{who} would be just the {of}."),
            1.. => (format!("{who} would be {size} of the {of}"), format!("the other {remains}")),
            _ => {
                let more = format!("{who} would be {size}, {remains} more than the {of}");
                (more, "that".to_owned())
            }
        };
        match why {
            // So little needs no reason.
            _ if left.abs() <= AGREES_WITHIN => format!("{says}."),
            Some(why) => format!("{says}; {why} {remaining}."),
            None if self.is_too_little(figure, left) => {
                let (are, tell) =
                    if left < 0 { ("is", "that") } else { ("are", remaining.as_str()) };
                format!("{says}; {tell} {are} too little to name a cause for.")
            }
            None if figure.explanations().is_any_fitting() => {
                format!("{says}. {UNLIKELY} {remaining}.")
            }
            None => format!("{says}. No common cause explains {remaining}."),
        }
    }

    /// The size of what the steps leave, as the last of them prints it. In square meters it may differ by a tenth from the
    /// size of its square feet, since a step leads from one printed total to the next.
    pub(super) fn size_left(&self, figure: &Figure) -> String {
        let rest = figure.line(BridgeStep::NotExplained).map_or(Area::ZERO, Line::area);
        let printed = step(figure.area() - rest, figure.area(), self.is_metric());
        match self.is_metric() {
            true => printed.replace(['+', '\u{2212}'], ""),
            false => size_of_sq_ft(not_explained(figure).abs(), false),
        }
    }

    /// What the steps leave, as a phrase: `132 sq ft that are left`; `8 sq ft by which the record is below these steps`.
    pub(super) fn left_over(&self, figure: &Figure, rest: i64) -> String {
        let size = self.size_left(figure);
        match rest < 0 {
            true => format!("{size} by which {} is below these steps", the(figure)),
            false if rest == 1 && !self.is_metric() => format!("{size} that is left"),
            false => format!("{size} that are left"),
        }
    }

    /// The spaces at the beginning of a sentence; two with their sizes, which are summed after it, and with the page on
    /// which they are drawn if it is another one.
    fn with_sizes(&self, figure: &Figure, near: &Nearest) -> String {
        let pages = self.pages_of(near.numbers().into_iter());
        if near.spaces.len() < 2 {
            let pages = pages.map(|pages| format!(" ({pages})")).unwrap_or_default();
            return format!("{}{pages}", capital(&near.names));
        }
        let name = |&(space, size): &(usize, i64)| {
            let name = words::the_quoted(&self.house.spaces[space].name);
            let pages = self.pages_of(std::iter::once(space));
            let pages = pages.map(|pages| format!(", {pages}")).unwrap_or_default();
            format!("{name} ({}{pages})", self.number(size))
        };
        let names: Vec<String> = near.spaces.iter().map(name).collect();
        let each = match figure.side_rule() {
            SideRule::Step(Step::WholeFoot) => ", each wall to the foot,",
            _ => "",
        };
        format!("{} together{each}", capital(&words::all_of(&names)))
    }

    /// A sentence where no cause is reported and the steps leave no more than a figure and a house that agree may differ
    /// by: `Rounding walls to the foot would explain all but 1 sq ft, which is too little to look for a cause.`
    pub(super) fn all_but_little(&self, figure: &Figure) -> Option<String> {
        let rest = not_explained(figure);
        let is_little = rest != 0 && rest.abs() <= AGREES_WITHIN;
        let is_open = is_little && !figure.agreement().agrees();
        let size = self.size_left(figure);
        let is_none = figure.explanations().reported().next().is_none();
        (is_open && is_none).then(|| {
            let mut lines = figure.lines().iter().zip(figure.lines_in_sq_ft());
            let is_rounding_alone = lines.all(|(line, sq_ft)| {
                use BridgeStep::{NotExplained, Rounding};
                sq_ft == 0 || matches!(line.step(), NotExplained | Rounding)
            });
            let who = match figure.side_rule() {
                SideRule::Step(Step::WholeFoot) if is_rounding_alone && !figure.says_rule() => {
                    "Rounding walls to the foot would explain"
                }
                _ => "The rows explain",
            };
            format!("{who} all but {size}, which is too little to look for a cause.")
        })
    }

    /// A sentence where no cause is reported, nobody states that the walls are rounded to feet, and the figure is nearer to
    /// the house without that, by no more than tapes are read differently: `Walls not rounded to the foot would leave 5 sq
    /// ft, which two readings with a tape may differ by.`
    #[expect(clippy::float_arithmetic, reason = "what is left is a float")]
    pub(super) fn nearly_unrounded(&self, figure: &Figure) -> Option<String> {
        /// How many standard deviations may be left.
        const MOST: f64 = 2.0;
        let mut explanations = figure.explanations().list().iter();
        let one =
            explanations.find(|one| one.cause == Cause::Rounding(RoundingTaken::NotRounded))?;
        let rest = not_explained(figure);
        let left = Area::from_float_sq_ft(one.leaves()).abs().whole_sq_ft();
        let is_near = one.leaves().abs() <= MOST * one.sigma && left < rest.abs();
        let is_none = figure.explanations().reported().next().is_none();
        let is_to_feet = matches!(figure.side_rule(), SideRule::Step(Step::WholeFoot));
        (is_near && is_none && is_to_feet && !figure.says_rule()).then(|| {
            let size = size_of_sq_ft(left, self.is_metric());
            format!(
                "Walls not rounded to the foot would leave {size}, which two readings with a tape may differ by."
            )
        })
    }

    /// A sentence where the figure is exactly twice an outline on the ground, rounded to the foot, in a house of two
    /// levels: `2,128 is 2 × 1,064, twice the house: the upper level may have been taken to be as large.`
    pub(super) fn twice(&self, figure: &Figure) -> Option<String> {
        let counted = || self.house.spaces.iter().enumerate().filter(|(_, space)| space.counted);
        let levels: HashSet<usize> = counted().map(|(_, space)| space.level).collect();
        let first = levels.iter().min().copied()?;
        let says = figure.area().whole_sq_ft();
        let whole = |i: usize| self.areas.spaces[i].whole_foot().area().whole_sq_ft();
        let mut on_ground = counted().filter(|(_, space)| space.level == first);
        let (once, _) =
            on_ground.find(|&(i, _)| 2 * whole(i) == says).filter(|_| levels.len() == 2)?;
        let (twice, once_sq_ft) = (self.number(says), self.number(whole(once)));
        let name = words::the_quoted(&self.house.spaces[once].name);
        Some(format!(
            "{twice} is 2 × {once_sq_ft}, twice {name}: the upper level may have been taken to be as large."
        ))
    }

    /// What is said where the record lists a space beside the house, such as a garage, larger than it was measured by exactly
    /// what its total is below these steps, or smaller by what is left: the wall between them may stand elsewhere there.
    /// `None` where it does not, or where it lists several so.
    pub(super) fn wall_between(&self, figure: &Figure, rest: i64) -> Option<Accounts> {
        if !figure.is_record() || rest == 0 {
            return None;
        }
        let house = self.house;
        let sizes = self.sizes(figure);
        let larger = |i: usize| Some(house.spaces[i].recorded?.whole_sq_ft() - sizes[i]);
        let is_beside = |i: &usize| {
            let space = &house.spaces[*i];
            !space.detached && !is_in_total(house, *i, false) && space.kind.has_walls()
        };
        let mut spaces = (0..house.spaces.len()).filter(is_beside);
        let mut spaces = spaces.by_ref().filter(|&i| larger(i) == Some(-rest));
        let space = spaces.next().filter(|_| spaces.next().is_none())?;
        let name = words::in_text(&house.spaces[space].name);
        let (more, less) = if rest < 0 { ("larger", "smaller") } else { ("smaller", "larger") };
        let size = self.size_left(figure);
        // In the list of other lines it stands as it is measured.
        let fine = self.areas.spaces[space].net_tenth_foot.whole_sq_ft();
        let as_rounded = if fine == sizes[space] { "" } else { ", each wall to the whole foot" };
        let at = self.in_brackets(self.pages_of(std::iter::once(space)));
        let opening = format!(
            "The record's {name}{at} is {size} {more} than measured{as_rounded}, which is exactly what its house is {less} by."
        );
        let settled = match self.reader {
            Reader::Office if !asks_the_office(figure) => String::new(),
            Reader::Office => {
                "Please state where the record puts the wall between them.".to_owned()
            }
            Reader::Owner => {
                format!("Ask where the record puts the wall between them.{}", self.ours(figure))
            }
        };
        let (closing, asks) = self.or_asked(figure, settled);
        Some(Accounts {
            opening,
            items: Vec::new(),
            near: vec![space],
            closing,
            asks,
            names_nothing: false,
        })
    }

    /// What is said where what is left is half of a space that is not counted, or what is too much half of an addition:
    /// `The 560 sq ft that are left are half of the basement, 1,120 sq ft.` `None` where it is not, or is half of several.
    pub(super) fn half_of_a_space(&self, figure: &Figure, rest: i64) -> Option<Accounts> {
        let sizes = self.sizes(figure);
        let is_half = |&i: &usize| {
            let kind = self.house.spaces[i].kind;
            !kind.lies_in_another()
                && is_in_total(self.house, i, false) == (rest < 0)
                && sizes[i] > 1
                && (sizes[i] - 2 * rest.abs()).abs() <= 1
        };
        let mut spaces = (0..sizes.len()).filter(is_half);
        let space = spaces.next().filter(|_| rest != 0 && spaces.next().is_none())?;
        let name = words::the_quoted(&self.house.spaces[space].name);
        let at = self.in_brackets(self.pages_of(std::iter::once(space)));
        let size = size_of_sq_ft(sizes[space], self.is_metric());
        let opening =
            format!("The {} are half of {name}{at}, {size}.", self.left_over(figure, rest));
        let word = figure.word();
        let counted = (0..sizes.len()).filter(|&i| is_in_total(self.house, i, false)).count();
        // Nobody counts half of all that there is: there are two cards, or two homes.
        let does = match is_in_total(self.house, space, false) && counted == 1 {
            true => "is for one of two dwellings here, or continues on a second card".to_owned(),
            false => format!("counts half of {name}"),
        };
        let settled = match (self.reader, figure.is_record()) {
            (Reader::Office, true) if !asks_the_office(figure) => String::new(),
            (Reader::Office, true) => format!("Please state whether the record's total {does}."),
            (Reader::Office, false) => {
                format!("Whether the {word}'s total {does} is not known here.")
            }
            (Reader::Owner, _) => {
                format!("Ask whether the {word}'s total {does}.{}", self.ours(figure))
            }
        };
        let (closing, asks) = self.or_asked(figure, settled);
        let near = vec![space];
        Some(Accounts { opening, items: Vec::new(), closing, asks, near, names_nothing: false })
    }

    /// The area of each space without what is within it, in whole square feet, at the face of the figure and rounded as
    /// it is.
    fn sizes(&self, figure: &Figure) -> Vec<i64> {
        let in_feet = figure.side_rule() == SideRule::Step(Step::WholeFoot);
        let area = |space: &SpaceAreas| match in_feet {
            true => space.whole_foot().area(),
            false => space.tenth_foot().area(),
        };
        let at_its_face = || {
            let walls = Walls::of(self.house, figure.face()).ok()?;
            let step = if in_feet { Step::WholeFoot } else { self.settings.fine.step() };
            Some(walls.ruled(self.settings.rule_for_step(step), self.settings.reading).areas)
        };
        // Beside a figure taken inside, a space is as large as it is inside.
        let there = (figure.face() != Face::Outside).then(at_its_face).flatten();
        let areas: Vec<Area> =
            there.unwrap_or_else(|| self.areas.spaces.iter().map(area).collect());
        let net = |i: usize| crate::areas::net(self.house, i, &areas).whole_sq_ft();
        (0..areas.len()).map(net).collect()
    }

    /// An uncounted space with about the area that is left, as closely as a figure and a house that agree, and its size.
    pub(super) fn as_large(&self, figure: &Figure, rest: i64) -> Option<(usize, i64)> {
        let may_be_counted = |i: usize| {
            !matches!(self.house.spaces[i].kind, Kind::Stair | Kind::Open | Kind::Low)
                && !is_in_total(self.house, i, false)
        };
        let sizes = self.sizes(figure).into_iter().enumerate();
        sizes
            .filter(|&(i, size)| may_be_counted(i) && (size - rest).abs() <= AGREES_WITHIN)
            .min_by_key(|(_, size)| (size - rest).abs())
    }

    /// The space that comes nearest to what is left; where two together leave next to nothing and it does not, those two.
    /// `None` where more than a fourth of its size would remain or be too much.
    pub(super) fn nearest(&self, figure: &Figure, rest: i64) -> Option<Nearest> {
        /// What two spaces may leave, in square feet.
        const OF_TWO: i64 = 5;
        /// And two that are one habit: a tenth of what they are.
        const OF_A_HABIT: i64 = 10;
        let house = self.house;
        let sizes = self.sizes(figure);
        let in_total = |i: usize| is_in_total(house, i, false);
        let would = |&i: &usize| {
            let space = &house.spaces[i];
            sizes[i] > 0
                && match space.kind {
                    Kind::Stair => rest < 0,
                    Kind::Open | Kind::Low | Kind::Court => {
                        rest > 0 && space.parent.is_some_and(in_total)
                    }
                    _ => in_total(i) != (rest > 0),
                }
        };
        let counted = (0..house.spaces.len()).filter(|&i| in_total(i)).count();
        let spaces = (0..house.spaces.len()).filter(would);
        // The whole house is not what is missing.
        let spaces: Vec<usize> = spaces.filter(|&i| !in_total(i) || counted > 1).collect();
        let left = |those: &[usize]| rest.abs() - those.iter().map(|&i| sizes[i]).sum::<i64>();
        let one = spaces.iter().copied().min_by_key(|&i| left(&[i]).abs())?;
        let pairs = spaces.iter().enumerate();
        let pairs = pairs.flat_map(|(at, &i)| spaces[at + 1..].iter().map(move |&j| [i, j]));
        // What lies in a space is part of it.
        let pairs = pairs.filter(|&[i, j]| {
            house.spaces[i].parent != Some(j) && house.spaces[j].parent != Some(i)
        });
        let two = pairs.min_by_key(|those| left(those).abs());
        // Two openings, or two low parts, are left in or taken off together.
        let is_one_habit = |those: &[usize; 2]| {
            let [one, other] = those.map(|i| house.spaces[i].kind);
            one == other && matches!(one, Kind::Open | Kind::Low)
        };
        let is_two = |those: &[usize; 2]| {
            let (sum, left_by_two) = (rest.abs() - left(those), left(those).abs());
            let is_little =
                left_by_two <= OF_TWO || is_one_habit(those) && OF_A_HABIT * left_by_two <= sum;
            is_little && left(&[one]).abs() > left_by_two + OF_TWO
        };
        let those = match two.filter(is_two) {
            Some(two) => two.to_vec(),
            None => vec![one],
        };
        let (size, left) = (rest.abs() - left(&those), left(&those));
        let is_near = 4 * left.abs() <= size;
        let name = |&i: &usize| words::the_quoted(&house.spaces[i].name);
        let names: Vec<String> = those.iter().map(name).collect();
        let is_taken_off = |&i: &usize| house.spaces[i].kind.lies_in_another();
        let (off, on): (Vec<usize>, Vec<usize>) = those.iter().partition(|i| is_taken_off(i));
        let all_of = |spaces: &[usize]| words::all_of(&spaces.iter().map(name).collect::<Vec<_>>());
        let does = match (&off[..], &on[..]) {
            (off, []) => format!("deducts {}", all_of(off)),
            ([], on) if rest > 0 => format!("counts {}", all_of(on)),
            ([], on) => format!("includes {}", all_of(on)),
            (off, on) => format!("includes {}, and whether it deducts {}", all_of(on), all_of(off)),
        };
        // More is left because a space was counted, or an opening or a low part not deducted; less because a space was
        // left out, or a stair deducted.
        let (counts, deducts) = match rest > 0 {
            true => ("counts", "does not deduct"),
            false => ("does not include", "deducts"),
        };
        let unless = match (&off[..], &on[..]) {
            (off, []) => format!("{deducts} {}", all_of(off)),
            ([], on) => format!("{counts} {}", all_of(on)),
            (off, on) => format!("{counts} {} and {deducts} {}", all_of(on), all_of(off)),
        };
        let names = words::all_of(&names);
        let spaces = those.iter().map(|&i| (i, sizes[i])).collect();
        (left.abs() < rest.abs() && is_near).then_some(Nearest {
            names,
            does,
            unless,
            size,
            left,
            spaces,
        })
    }
}
