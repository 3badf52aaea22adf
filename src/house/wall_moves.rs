//! How far each wall moves between two faces, by thickness; shared walls stay where they are.

use crate::geometry::offset;
use crate::geometry::offset::{Moved, OffsetError, Piece};
use crate::geometry::outline::Outline;
use crate::geometry::outline::Vector;
use crate::geometry::traverse::Traverse;
use crate::house::Face;
use crate::house::Thickness;
use crate::house::{Model, Side, Space};
use crate::units::length::{Length, WrittenLength};

/// 4 5/8 in, assumed where a veneer is needed but not given: 3 5/8 in of brick (Brick Industry Association,
/// Technical Note 10) and 1 in of air (TMS 402), both read second-hand.
pub(crate) const ASSUMED_VENEER: Length = Length::from_nm(4 * 25_400_000 + 5 * 3_175_000);
/// 4 7/16 in, assumed for a wall behind a veneer: 1/2 in board + 3 1/2 in stud + 7/16 in sheathing
/// (stud: PS 20, read second-hand; the others from memory).
pub(crate) const ASSUMED_WALL_BEHIND_VENEER: Length =
    Length::from_nm(4 * 25_400_000 + 7 * 1_587_500);
/// 6 in, assumed for a wall without a veneer, inside to outside (North Carolina Real Estate
/// Commission, *Residential Square Footage Guidelines*, read second-hand).
pub(crate) const ASSUMED_WALL: Length = Length::from_nm(6 * 25_400_000);

/// The greatest distance between two rooms taped inside that share one wall: twice the 6 in of a thick wall (4 in
/// is usual inside; North Carolina Real Estate Commission, as above).
const THICKEST_PARTITION: Length = Length::from_nm(12 * 25_400_000);

/// 8 in, assumed for the whole thickness of a wall shared with another dwelling (our judgment: two layers of studs
/// and board with a gap between them).
pub(crate) const ASSUMED_COMMON: Length = Length::from_nm(8 * 25_400_000);

/// How far the real thickness may be from an assumed one, either way (our judgment).
pub(crate) const ASSUMED_WITHIN: Length = Length::INCH;
/// The same for the whole thickness of a wall shared with another dwelling; its centerline moves half as far.
pub(crate) const ASSUMED_COMMON_WITHIN: Length = Length::from_nm(2 * Length::INCH.nm());

/// Half of a thickness; if it is odd, the extra nanometer goes to the first half.
fn half(whole: i64, first: bool) -> i64 {
    (whole + i64::from(first)) >> 1
}

/// Which kinds of thickness had to be assumed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Assumed {
    pub(crate) veneer: bool,
    pub(crate) wall_behind_veneer: bool,
    pub(crate) wall: bool,
    /// The whole thickness of a wall shared with another dwelling.
    pub(crate) common: bool,
}

impl Assumed {
    pub(crate) fn or(self, other: Assumed) -> Assumed {
        Assumed {
            veneer: self.veneer || other.veneer,
            wall_behind_veneer: self.wall_behind_veneer || other.wall_behind_veneer,
            wall: self.wall || other.wall,
            common: self.common || other.common,
        }
    }
}

/// The length of wall, in nanometers, moved by each kind of thickness.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Thicknesses {
    pub(crate) stated_veneer: i64,
    pub(crate) stated_wall: i64,
    pub(crate) stated_common: i64,
    pub(crate) assumed_veneer: i64,
    pub(crate) assumed_wall: i64,
    pub(crate) assumed_common: i64,
}

impl Thicknesses {
    pub(crate) const COUNT: usize = 6;

    /// Each length of wall moved, with the uncertainty (plus or minus) of how far it moved: 1/4 in for a stated
    /// thickness, 1 in for an assumed one. A common wall moves by half its thickness, so its uncertainty is half as
    /// well: 1/8 in if stated, 1 in if assumed.
    pub(crate) fn runs(&self) -> [(i64, Length); Thicknesses::COUNT] {
        const INCH: i64 = Length::INCH.nm();
        [
            (self.stated_veneer, Length::from_nm(INCH >> 2)),
            (self.stated_wall, Length::from_nm(INCH >> 2)),
            (self.stated_common, Length::from_nm(INCH >> 3)),
            (self.assumed_veneer, ASSUMED_WITHIN),
            (self.assumed_wall, ASSUMED_WITHIN),
            (self.assumed_common, Length::from_nm(ASSUMED_COMMON_WITHIN.nm() >> 1)),
        ]
    }
}

/// The thicknesses that were used to move an outline.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Needed {
    pub(crate) assumed: Assumed,
    pub(crate) moved: Thicknesses,
}

impl Needed {
    /// Whether any wall was moved by an assumed thickness, or if `assumed` is `false`, by a stated one.
    pub(crate) fn holds(&self, assumed: bool) -> bool {
        let moved = &self.moved;
        if assumed {
            moved.assumed_veneer != 0 || moved.assumed_wall != 0 || moved.assumed_common != 0
        } else {
            moved.stated_veneer != 0 || moved.stated_wall != 0 || moved.stated_common != 0
        }
    }

    fn add(&mut self, shift: &Shift, run: i64) {
        let (assumed, crosses, moved) = (shift.assumed, shift.crosses, &mut self.moved);
        self.assumed = self.assumed.or(assumed);
        let mut count = |is: bool,
                         is_assumed: bool,
                         stated: fn(&mut Thicknesses) -> &mut i64,
                         guessed: fn(&mut Thicknesses) -> &mut i64| {
            if is {
                *(if is_assumed { guessed } else { stated })(moved) += run;
            }
        };
        count(crosses.veneer, assumed.veneer, |m| &mut m.stated_veneer, |m| &mut m.assumed_veneer);
        let wall = assumed.wall || assumed.wall_behind_veneer;
        count(crosses.wall, wall, |m| &mut m.stated_wall, |m| &mut m.assumed_wall);
        count(crosses.common, assumed.common, |m| &mut m.stated_common, |m| &mut m.assumed_common);
    }
}

/// The walls of a space at one face.
#[derive(Clone, Debug)]
pub(crate) struct AtFace {
    /// The traverse, whose lengths are to be rounded.
    pub(crate) traverse: Traverse,
    /// The closed outline, not rounded.
    pub(crate) outline: Outline,
    /// The position of its first corner relative to the measured one: east, then north.
    pub(crate) start: (i64, i64),
    pub(crate) needed: Needed,
}

/// How much of the walls shared with other dwellings goes into an area.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum CommonTaken {
    /// All of each.
    Whole,
    /// Each to its centerline, as the rules have it.
    Half,
    /// Nothing of any.
    LeftOut,
}

/// Where walls are taken.
#[derive(Clone, Copy, Debug)]
struct To {
    face: Face,
    common: CommonTaken,
}

/// How far a wall moves in nanometers, and what was assumed for it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Shift {
    outward: i64,
    assumed: Assumed,
    crosses: Crosses,
}

/// Which thicknesses lie between the two faces of a wall.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Crosses {
    veneer: bool,
    wall: bool,
    common: bool,
}

impl Model {
    /// The walls of a space at `face`.
    ///
    /// # Errors
    ///
    /// [`OffsetError`] if walls vanish or cross when they are moved.
    pub(crate) fn at_face(&self, space: usize, face: Face) -> Result<AtFace, OffsetError> {
        self.at(space, To { face, common: CommonTaken::Half })
    }

    /// The same with more or less of the walls shared with other dwellings.
    pub(crate) fn with_common(
        &self,
        space: usize,
        face: Face,
        common: CommonTaken,
    ) -> Result<AtFace, OffsetError> {
        self.at(space, To { face, common })
    }

    /// How far one side of a space lies within that side at `face`, in nanometers, where nothing stands beside it.
    pub(crate) fn outward(&self, space: usize, side: usize, face: Face) -> i64 {
        let here = &self.spaces[space];
        let to = To { face, common: CommonTaken::Half };
        here.sides.get(side).map_or(0, |side| self.shift_as(here.face, here, side, to).outward)
    }

    fn at(&self, space: usize, to: To) -> Result<AtFace, OffsetError> {
        let here = &self.spaces[space];
        let moves = if here.parent.is_some() {
            !here.kind.lies_in_another()
        } else {
            here.kind.has_walls()
        };
        let is_shared = || here.sides.iter().any(|side| side.words.common);
        let stays = here.face == to.face && (to.common == CommonTaken::Half || !is_shared());
        let stays = stays || !moves;
        if stays {
            return Ok(AtFace {
                traverse: here.closed.traverse.clone(),
                outline: here.closed.outline.clone(),
                start: (0, 0),
                needed: Needed::default(),
            });
        }
        let (pieces, needed) = self.pieces(space, to);
        let Moved { traverse, outline, start } =
            offset::moved(&here.closed.traverse, &here.closed.outline, &pieces)?;
        Ok(AtFace { traverse, outline, start, needed })
    }

    /// The sides of a space, cut where neighbors begin and end, each piece with how far it moves, and the thicknesses
    /// used.
    fn pieces(&self, space: usize, to: To) -> (Vec<Piece>, Needed) {
        let here = &self.spaces[space];
        let mut pieces = Vec::with_capacity(here.sides.len());
        let mut needed = Needed::default();
        let neighbors = self.neighbors(space);
        let mut marks = Vec::new();
        for (stretch, side) in here.stretches() {
            self.cut((space, side), stretch, to, &neighbors, &mut marks, |vector, shift| {
                needed.add(&shift, vector.length().nm());
                pieces.push(Piece { side, vector, outward: shift.outward });
            });
        }
        (pieces, needed)
    }

    /// Cuts one side into pieces: the pieces along a neighbor stay, the others move. `marks` is a buffer.
    fn cut(
        &self,
        (space, side): (usize, usize),
        stretch: Stretch,
        to: To,
        neighbors: &[Neighbor<'_>],
        marks: &mut Vec<(i64, i64, Shift)>,
        mut piece: impl FnMut(Vector, Shift),
    ) {
        let here = &self.spaces[space];
        let own = self.shift_as(here.face, here, &here.sides[side], to);
        if here.sides[side].words.common || stretch.axis_length().is_none() {
            return piece(stretch.vector, own);
        }
        let within = here.parent.is_some();
        let says_itself = here.sides[side].words.veneer.is_some() || here.veneer.is_some();
        let otherwise = if within && !says_itself { Shift::default() } else { own };
        marks.clear();
        for &Neighbor { index: other, space: neighbor, is_parent, ref stretches } in neighbors {
            let slack = self.slack(here, neighbor);
            for &(theirs, their_side) in stretches {
                let partition =
                    !is_parent && here.face == Face::Inside && neighbor.face == Face::Inside;
                let apart = if partition { slack.max(THICKEST_PARTITION.nm()) } else { slack };
                let Some((begin, end, aside)) = stretch.shared(&theirs, is_parent, slack, apart)
                else {
                    continue;
                };
                let shift = match (is_parent, says_itself) {
                    (true, false) => {
                        self.shift_as(here.face, neighbor, &neighbor.sides[their_side], to)
                    }
                    (true, true) => own,
                    // Two rooms taped inside share the wall between them: each gets half.
                    (false, _) if partition && aside > slack => {
                        Shift { outward: half(aside, space < other), ..Shift::default() }
                    }
                    (false, _) => Shift::default(),
                };
                marks.push((begin, end, shift));
            }
        }
        stretch.divided(marks, otherwise, piece);
    }

    /// The spaces that walls of this one may stand at: the one that it lies in, else those beside it.
    fn neighbors(&self, space: usize) -> Vec<Neighbor<'_>> {
        let here = &self.spaces[space];
        let mut neighbors = Vec::new();
        for (index, neighbor) in self.spaces.iter().enumerate() {
            let is_parent = here.parent == Some(index);
            let is_beside =
                neighbor.kind.has_walls() && here.parent.is_none() && neighbor.parent.is_none();
            let gap = self.slack(here, neighbor).max(THICKEST_PARTITION.nm());
            let is_near = || neighbor.extent.is_near(&here.extent, gap);
            let is_on_level = index != space && neighbor.level == here.level;
            if is_on_level && (is_parent || is_beside) && is_near() {
                let stretches = neighbor.stretches().collect();
                neighbors.push(Neighbor { index, space: neighbor, is_parent, stretches });
            }
        }
        neighbors
    }

    /// How far apart, in nanometers, two rooms may be and still share a wall.
    pub(crate) fn gap_between(&self, a: &Space, b: &Space) -> i64 {
        let inside = a.face == Face::Inside && b.face == Face::Inside;
        self.slack(a, b).max(if inside { THICKEST_PARTITION.nm() } else { 0 })
    }

    /// How far apart, in nanometers, walls of two spaces may be measured and still be one wall.
    fn slack(&self, a: &Space, b: &Space) -> i64 {
        let faces = if a.face == b.face { 0 } else { 10 * Length::INCH.nm() };
        4 * self.tolerance.nm() + faces
    }

    /// How far a side of `space` moves from one face to another.
    fn shift_as(&self, from: Face, space: &Space, side: &Side, to: To) -> Shift {
        if side.words.common {
            return self.shift_of_common(from, side, to);
        }
        let to = to.face;
        let given = side.words.veneer.or(space.veneer).or(self.veneer);
        let veneer = match given {
            Some(Thickness::None) => Length::ZERO,
            Some(Thickness::Of(written)) => WrittenLength::length(written),
            None => ASSUMED_VENEER,
        };
        let behind_veneer = veneer > Length::ZERO;
        let stated = side.words.wall.map(WrittenLength::length).or(self.wall);
        let wall =
            stated.unwrap_or(if behind_veneer { ASSUMED_WALL_BEHIND_VENEER } else { ASSUMED_WALL });
        let depth = |face: Face| match face {
            Face::Inside => Length::ZERO,
            Face::Frame => wall,
            Face::Outside => wall + veneer,
        };
        let crosses = |face: Face| (from == face) != (to == face);
        let crosses_wall = crosses(Face::Inside) && stated.is_none();
        Shift {
            outward: (depth(to) - depth(from)).nm(),
            assumed: Assumed {
                veneer: given.is_none() && crosses(Face::Outside),
                wall_behind_veneer: crosses_wall && behind_veneer,
                wall: crosses_wall && !behind_veneer,
                common: false,
            },
            crosses: Crosses {
                veneer: behind_veneer && crosses(Face::Outside),
                wall: crosses(Face::Inside),
                common: false,
            },
        }
    }

    /// How far a wall shared with another dwelling moves: if measured inside, out to its centerline; if measured at
    /// the frame or outside, not at all (ANSI Z765, read second-hand).
    fn shift_of_common(&self, from: Face, side: &Side, to: To) -> Shift {
        let stated = side.words.wall.map(WrittenLength::length).or(self.wall);
        let whole = stated.unwrap_or(ASSUMED_COMMON).nm();
        let measured = if from == Face::Inside { 0 } else { half(whole, true) };
        let wanted = match to.common {
            _ if to.face == Face::Inside => measured,
            CommonTaken::Whole => whole,
            CommonTaken::Half if from == Face::Inside => half(whole, true),
            CommonTaken::Half => measured,
            CommonTaken::LeftOut => 0,
        };
        if wanted == measured {
            return Shift::default();
        }
        Shift {
            outward: wanted - measured,
            assumed: Assumed { common: stated.is_none(), ..Assumed::default() },
            crosses: Crosses { common: true, ..Crosses::default() },
        }
    }
}

impl Space {
    /// The sides in their positions on the level, each with its index.
    fn stretches(&self) -> impl Iterator<Item = (Stretch, usize)> {
        let out = self.closed.outline.turn();
        let points = self.closed.outline.points();
        let vectors = self.closed.outline.vectors().iter().enumerate();
        vectors.map(move |(i, vector)| {
            let start = (points[i].0 + self.at.0, points[i].1 + self.at.1);
            (Stretch { start, vector: *vector, out }, i)
        })
    }
}

/// A space that walls of another may stand at.
struct Neighbor<'a> {
    index: usize,
    space: &'a Space,
    /// Whether the other lies in it.
    is_parent: bool,
    /// Its sides in their positions on the level, each with its index.
    stretches: Vec<(Stretch, usize)>,
}

/// A side in its position on the level.
#[derive(Clone, Copy, Debug)]
struct Stretch {
    start: (i64, i64),
    vector: Vector,
    /// 1 if the outside is on the right of the walking direction, -1 if on the left.
    out: i64,
}

impl Stretch {
    /// Its length in nanometers; `None` if it is curved or slanted.
    fn axis_length(&self) -> Option<i64> {
        let along_axis = self.vector.east == 0 || self.vector.north == 0;
        (self.vector.rise == 0 && along_axis)
            .then(|| self.vector.east.abs() + self.vector.north.abs())
    }

    /// The outward direction: east and north component, each -1, 0 or 1.
    fn outward(&self) -> (i64, i64) {
        (self.vector.north.signum() * self.out, -self.vector.east.signum() * self.out)
    }

    /// The part of this side, as distances along it, that lies on `other` or at most `apart` nanometers outside it,
    /// and how far outside. Walls of neighbors are back to back; a wall of the space it lies in faces the same way.
    fn shared(
        &self,
        other: &Stretch,
        same_way: bool,
        slack: i64,
        apart: i64,
    ) -> Option<(i64, i64, i64)> {
        let (length, _) = (self.axis_length()?, other.axis_length()?);
        let (a, b) = (self.outward(), other.outward());
        let wanted = if same_way { a } else { (-a.0, -a.1) };
        let aside = (other.start.0 - self.start.0) * a.0 + (other.start.1 - self.start.1) * a.1;
        if b != wanted || aside < -slack || aside > apart {
            return None;
        }
        let way = (self.vector.east.signum(), self.vector.north.signum());
        let along =
            |point: (i64, i64)| (point.0 - self.start.0) * way.0 + (point.1 - self.start.1) * way.1;
        let ends = [
            along(other.start),
            along((other.start.0 + other.vector.east, other.start.1 + other.vector.north)),
        ];
        let snap = |at: i64| {
            if at <= slack {
                0
            } else if at >= length - slack {
                length
            } else {
                at
            }
        };
        let (from, to) = (snap(ends[0].min(ends[1])), snap(ends[0].max(ends[1])));
        (to - from > slack).then_some((from, to, aside))
    }

    /// The side cut at the marks, with neighboring pieces joined if they move alike.
    fn divided(
        &self,
        marks: &mut [(i64, i64, Shift)],
        otherwise: Shift,
        mut piece: impl FnMut(Vector, Shift),
    ) {
        marks.sort_by_key(|&(from, to, _)| (from, to));
        let length = self.axis_length().unwrap_or(0);
        if marks.is_empty() && length > 0 {
            return piece(self.vector, otherwise);
        }
        let way = (self.vector.east.signum(), self.vector.north.signum());
        let mut pass_on = |(run, shift): (i64, Shift)| {
            piece(Vector { east: way.0 * run, north: way.1 * run, rise: 0 }, shift);
        };
        // The last piece is known once the next one moves otherwise.
        let mut last: Option<(i64, Shift)> = None;
        let mut push = |run: i64, shift: Shift| match &mut last {
            _ if run <= 0 => {}
            Some(last) if last.1 == shift => last.0 += run,
            last => {
                if let Some(whole) = last.replace((run, shift)) {
                    pass_on(whole);
                }
            }
        };
        let mut at = 0;
        for &mut (from, to, shift) in marks {
            push(from - at, otherwise);
            push(to - from.max(at), shift);
            at = at.max(to);
        }
        push(length - at, otherwise);
        if let Some(whole) = last {
            pass_on(whole);
        }
    }
}
