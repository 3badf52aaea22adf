//! What is marked on the drawing of a level: the record's outline and lengths, walls that differ, and spaces that
//! would have to be counted.

use crate::areas::at_face::Walls;
use crate::areas::is_in_total;
use crate::geometry::outline::Outline;
use crate::house::Face;
use crate::house::House;
use crate::house::SideRule;
use crate::pages::drawing::view::OnSite;
use crate::reconcile::cause::MisreadWall;
use crate::reconcile::departures::DepartureKind;
use crate::reconcile::{BridgeStep, Explanation, Figure, OutlineReport, Reconciliation};
use crate::units::area::Area;
use crate::units::length::{Length, Step};
use crate::wording::causes;
use crate::wording::certainty::closed_mostly_by;
use crate::wording::map::{map_note, parts_heard};
use crate::wording::sentences::Sentences;

/// A reference outline, positioned on a level.
#[derive(Clone, Debug)]
pub(crate) struct Theirs {
    /// Its source: `record`, `plan` or `map`.
    pub(crate) whose: &'static str,
    /// The face its figure is assumed to be measured to.
    pub(crate) face: Face,
    /// The closed outline; `None` if it does not close.
    pub(crate) outline: Option<Outline>,
    pub(crate) corners: Vec<OnSite>,
    pub(crate) at: OnSite,
}

impl Theirs {
    /// What the dashes are: `dashed outline: the record's own sketch, laid over these walls`.
    pub(crate) fn note(&self) -> String {
        let face = match self.face {
            Face::Outside => String::new(),
            face => format!(", measured to the {} face", face.word()),
        };
        let whose = self.whose;
        format!("dashed outline: the {whose}'s own sketch{face}, laid over these walls")
    }
}

/// A wall, and its length on a record or a plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Recorded {
    pub(crate) space: usize,
    pub(crate) side: usize,
    pub(crate) length: Length,
    /// Whether it differs by more than rounding explains.
    pub(crate) differs: bool,
    /// The length used here to the foot, where only the closing of the rounded walls makes it another one.
    pub(crate) used: Option<Length>,
}

/// All marks of a house.
#[derive(Clone, Debug, Default)]
pub(crate) struct Marks {
    pub(crate) theirs: Vec<(usize, Theirs)>,
    /// Roofs from maps drawn over the walls, each with its level, its corners and its label.
    pub(crate) roofs: Vec<(usize, Vec<OnSite>, String)>,
    /// The parts of those roofs that lie over no measured wall, each with its level and its corners.
    pub(crate) roof_parts: Vec<(usize, Vec<OnSite>)>,
    /// Where those roofs and the walls part, in words, each with its level.
    pub(crate) roofs_heard: Vec<(usize, String)>,
    pub(crate) recorded: Vec<Recorded>,
    /// Spaces that the figure says it counts.
    pub(crate) counted: Vec<usize>,
    /// Spaces that would have to be counted, or a level of them taken at another size, to reach the figure.
    pub(crate) would_count: Vec<usize>,
    /// Walls where a misread length would explain the figure, as space and side index.
    pub(crate) misread: Vec<(usize, usize)>,
    /// Spaces that a sentence compares with what is left.
    pub(crate) near: Vec<usize>,
    /// Whether that sentence is on page 1 while the drawing is on another.
    pub(crate) is_off_page: bool,
    /// Walls that a sentence names by their number, as space and side index.
    pub(crate) named: Vec<(usize, usize)>,
    /// The net areas of all spaces with each wall to the half foot, if that is the rule of the figure.
    pub(crate) half_feet: Option<Vec<Area>>,
    /// Whether areas to the foot are told: not of a house in meters whose record is in square meters.
    pub(crate) no_feet: bool,
    /// The word of the figure that the marks are about: `record`.
    pub(crate) whose: String,
}

impl Marks {
    /// The marks for the first figure, and for every reference outline.
    pub(crate) fn of(say: &Sentences<'_>, reconciliation: &Reconciliation) -> Marks {
        let mut marks = Marks::default();
        marks.sides_with_lengths(say);
        for (report, drawn) in reconciliation.outlines().iter().zip(say.house.own_sketches()) {
            let is_of = |figure: &&Figure| figure.is_of(drawn.drawn);
            let face = reconciliation.figures().iter().find(is_of).map(Figure::face);
            marks.outline(say, report, drawn, face.unwrap_or_default());
        }
        for map in reconciliation.maps() {
            if let Some(roof) = map.comparison() {
                marks.roofs.push((roof.level(), roof.corners().to_vec(), map_note(map, roof)));
                let parts = roof.parts().iter().filter(|part| part.is_only_on_map());
                let parts = parts.map(|part| (roof.level(), part.corners().to_vec()));
                marks.roof_parts.extend(parts);
                marks.roofs_heard.push((roof.level(), parts_heard(say.house, roof).join(" ")));
            }
        }
        if let Some(figure) = reconciliation.figures().first() {
            marks.adjusted(figure);
            marks.figure(say.house, figure);
            marks.near = say.near_spaces(figure);
            marks.half_feet = half_feet(say, figure);
            marks.no_feet = !say.is_asked_about_feet(figure);
            marks.name_walls(say, reconciliation, figure);
        }
        let closed = say.house.spaces.iter().enumerate().filter_map(|(i, space)| {
            closed_mostly_by(space).map(|side| (i, side.number().index()))
        });
        marks.named.extend(closed);
        marks
    }

    /// Marks the walls that the steps, what is possible or the request names by their number.
    fn name_walls(
        &mut self,
        say: &Sentences<'_>,
        reconciliation: &Reconciliation,
        figure: &Figure,
    ) {
        let differing = say.differing_walls(reconciliation).into_iter();
        let differing =
            differing.flat_map(|(space, sides)| sides.into_iter().map(move |side| (space, side)));
        let shares = figure.shares().iter().filter(|share| share.ruled() != share.recorded());
        let shares = shares.map(|share| (share.place, share.side().index()));
        let reported = || figure.explanations().reported();
        let parts =
            reported().flat_map(|one| one.cause.each(say.house)).filter_map(|kind| match kind {
                DepartureKind::Part { space, part } => Some((space, part.side)),
                _ => None,
            });
        self.named = differing.chain(shares).chain(parts).collect();
        self.named.extend(&self.misread);
        // A cause that could be chance is told with its walls as well.
        let by_chance = figure.explanations().unnamed().and_then(Explanation::misread_wall);
        let by_chance = by_chance.map(|wall| misread_walls(say.house, wall)).unwrap_or_default();
        self.named.extend(by_chance);
    }

    /// The recorded length of one wall, if it is marked.
    pub(crate) fn recorded(&self, space: usize, side: usize) -> Option<&Recorded> {
        self.recorded.iter().find(|other| other.space == space && other.side == side)
    }

    /// Marks the lengths given after sides, unless they equal that wall rounded.
    fn sides_with_lengths(&mut self, say: &Sentences<'_>) {
        for (i, space) in say.house.spaces.iter().enumerate() {
            for (k, side) in space.sides.iter().enumerate() {
                let measured = say.areas.outside_length(i, k);
                if let (Some(recorded), Some(measured)) = (side.recorded(), measured) {
                    self.length(say, i, k, measured, recorded);
                }
            }
        }
    }

    fn length(
        &mut self,
        say: &Sentences<'_>,
        space: usize,
        side: usize,
        measured: Length,
        length: Length,
    ) {
        let differs = say.settings.is_beyond_rounding(measured - length);
        let is_rounded = measured.rounded(Step::WholeFoot, say.settings.halves) == length;
        if differs || !is_rounded {
            self.recorded.push(Recorded { space, side, length, differs, used: None });
        }
    }

    /// Marks the lengths of the record that differ from the length used here only because the rounded walls had to close.
    fn adjusted(&mut self, figure: &Figure) {
        let shares = figure.shares().iter();
        for share in shares.filter(|share| figure.is_record() && share.ruled() != share.recorded())
        {
            let (space, side) = (share.place, share.side().index());
            if self.recorded(space, side).is_none() {
                let length = share.recorded();
                let used = Some(share.ruled());
                self.recorded.push(Recorded { space, side, length, differs: false, used });
            }
        }
    }

    fn outline(
        &mut self,
        say: &Sentences<'_>,
        report: &OutlineReport,
        drawn: &crate::house::ReferenceOutline,
        face: Face,
    ) {
        let house = say.house;
        let compared = drawn.of.first().filter(|&&space| report.is_of_space(space));
        // The drawing is dimensioned outside, so lengths measured to other faces are not compared.
        if let Some(&space) = compared.filter(|_| face == Face::Outside) {
            for wall in report.matched() {
                if self.recorded(space, wall.ours().index()).is_none() {
                    self.length(say, space, wall.ours().index(), wall.measured(), wall.drawn());
                }
            }
        }
        let Some(&space) = drawn.of.first() else { return };
        let level = house.spaces[space].level;
        let corners = corners(drawn);
        let at = laid_over(&ours(say, &drawn.of, face), &corners);
        let whose = drawn.drawn.word();
        let outline = drawn.outline.clone();
        self.theirs.push((level, Theirs { whose, face, outline, corners, at }));
    }

    fn figure(&mut self, house: &House, figure: &Figure) {
        self.whose = figure.word().to_owned();
        if let Some(line) = figure.line(BridgeStep::Counting)
            && !line.is_supported()
        {
            self.counted = (0..house.spaces.len())
                .filter(|&i| line.counted().contains(&house.spaces[i].name))
                .collect();
        }
        let reported = || figure.explanations().reported();
        self.would_count = reported().flat_map(Explanation::counts).collect();
        // A level that is taken at another size is marked too.
        let levels =
            reported().flat_map(|one| one.cause.departures()).filter_map(|kind| match kind {
                DepartureKind::Level { level, .. } => Some(level),
                _ => None,
            });
        let on = |level: usize| {
            (0..house.spaces.len())
                .filter(move |&i| house.spaces[i].level == level)
                .filter(|&i| house.spaces[i].parent.is_none() && is_in_total(house, i, false))
        };
        self.would_count.extend(levels.flat_map(on));
        let misread = reported().filter_map(Explanation::misread_wall);
        self.misread = misread.flat_map(|wall| misread_walls(house, wall)).collect();
    }
}

/// The walls of a length that may have been misread, as space and side index. In a rectangle the wall across changes with
/// it.
fn misread_walls(house: &House, wall: MisreadWall) -> Vec<(usize, usize)> {
    let across = causes::across(&house.spaces[wall.space], wall.side);
    let across = across.map(|_| (wall.side + 2) % 4);
    let walls: Vec<usize> = wall.walls().into_iter().map(|(side, _)| side).chain(across).collect();
    let spaces = [Some(wall.space), wall.also].into_iter().flatten();
    spaces.flat_map(|space| walls.iter().map(move |&side| (space, side))).collect()
}

/// The net area of every space with each wall to the half foot, if that is the figure's rule.
fn half_feet(say: &Sentences<'_>, figure: &Figure) -> Option<Vec<Area>> {
    (figure.side_rule() == SideRule::Step(Step::HalfFoot)).then(|| {
        let rule = say.settings.rule_for_step(Step::HalfFoot);
        let areas = say.areas.outside.ruled(rule, say.settings.reading).areas;
        (0..areas.len()).map(|space| crate::areas::net(say.house, space, &areas)).collect()
    })
}

/// The corners of a reference outline, relative to its first.
fn corners(drawn: &crate::house::ReferenceOutline) -> Vec<OnSite> {
    let mut at = (0, 0);
    let mut corners = vec![at];
    for side in &drawn.traverse.sides {
        let vector = side.shape.vector();
        at = (at.0 + vector.east, at.1 + vector.north);
        corners.push(at);
    }
    if drawn.outline.is_some() {
        corners.pop();
    }
    corners
}

/// The corners of these spaces at a face, or outside if the walls cannot be moved there.
fn ours(say: &Sentences<'_>, spaces: &[usize], face: Face) -> Vec<OnSite> {
    let there = Walls::of(say.house, face).ok().filter(|_| face != Face::Outside);
    let walls = there.as_ref().unwrap_or(&say.areas.outside);
    let mut all = Vec::new();
    for &space in spaces {
        let (placed, at) = (say.house.spaces[space].at, &walls.spaces[space]);
        let first = (placed.0 + at.start.0, placed.1 + at.start.1);
        all.extend(at.outline.points().iter().map(|to| (first.0 + to.0, first.1 + to.1)));
    }
    all
}

/// The position of the first outside corner of a space on its level.
pub(crate) fn place(say: &Sentences<'_>, space: usize) -> OnSite {
    let house: &House = say.house;
    let (at, start) = (house.spaces[space].at, say.areas.outside.spaces[space].start);
    (at.0 + start.0, at.1 + start.1)
}

/// Where to place the first corner of `theirs` so that as many corners as possible coincide with ours, within a
/// foot.
fn laid_over(ours: &[OnSite], theirs: &[OnSite]) -> OnSite {
    const MOST: usize = 40;
    let near = Length::FOOT.nm();
    let (few_ours, few_theirs) = (&ours[..ours.len().min(MOST)], &theirs[..theirs.len().min(MOST)]);
    let mut best = ((0, 0), 0, i64::MAX);
    for our in few_ours {
        for their in few_theirs {
            let at = (our.0 - their.0, our.1 - their.1);
            let (mut count, mut off) = (0, 0);
            for corner in few_theirs {
                let apart = few_ours
                    .iter()
                    .map(|our| (our.0 - corner.0 - at.0).abs() + (our.1 - corner.1 - at.1).abs());
                let apart = apart.min().unwrap_or(i64::MAX);
                count += usize::from(apart <= near);
                off += apart.min(near);
            }
            if count > best.1 || count == best.1 && off < best.2 {
                best = (at, count, off);
            }
        }
    }
    best.0
}
