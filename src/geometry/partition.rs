//! An outline cut into pieces that can be checked with a pocket calculator: rectangles, triangles at slanted walls,
//! and circular segments at curved ones.
//!
//! The number of rectangles is the smallest possible. Where two inward corners face each other, one cut serves
//! both. The largest set of such cuts that do not cross is found by matching (a right-angled outline with N inward
//! corners and L such cuts needs N − L + 1 rectangles: any text on computational geometry, from memory).

use crate::geometry::outline::Outline;
use crate::units::area::Area;
use crate::units::length::Length;

/// One piece of an outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cut {
    /// A rectangle.
    Rectangle {
        /// Its length from east to west.
        east: Length,
        /// Its length from north to south.
        north: Length,
    },
    /// Half a rectangle, at a slanted wall.
    Triangle {
        /// Its length from east to west.
        east: Length,
        /// Its length from north to south.
        north: Length,
        /// Whether it lies outside the wall, so that its area is subtracted.
        deducted: bool,
    },
    /// The area between a curved wall and its chord.
    Segment {
        /// The distance between the ends of the curve.
        chord: Length,
        /// How far the curve rises from its chord.
        rise: Length,
        /// Its computed area.
        area: Area,
        /// Whether the curve bulges inward, so that its area is subtracted.
        deducted: bool,
    },
}

impl Cut {
    /// What it adds to the outline's area; negative if it is subtracted.
    #[must_use]
    pub fn area(&self) -> Area {
        let signed = |area: Area, deducted: bool| if deducted { -area } else { area };
        match *self {
            Cut::Rectangle { east, north } => Area::rectangle(east, north),
            Cut::Triangle { east, north, deducted } => {
                let whole = Area::rectangle(east, north).half_nm2();
                signed(Area::from_half_nm2(whole >> 1), deducted)
            }
            Cut::Segment { area, deducted, .. } => signed(area, deducted),
        }
    }
}

/// A piece and its corners, relative to the first corner of the outline, east then north; for a segment, the ends
/// of its curve.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Placed {
    pub(crate) cut: Cut,
    pub(crate) corners: Vec<(i64, i64)>,
    /// The wall it lies at; `None` for a rectangle.
    pub(crate) wall: Option<usize>,
}

impl Outline {
    /// The outline cut into pieces that can be checked with a pocket calculator: the fewest possible rectangles,
    /// then triangles at slanted walls and segments at curved ones. Their areas add up to the outline's exactly.
    ///
    /// `None` where slanted walls leave no right-angled outline to cut.
    ///
    /// ```
    /// let house = fairfoot::read(
    ///     "l.sides",
    ///     "level \"G\"\nliving \"H\"\nnorth 30'\neast 40'\nsouth 10'\nwest 15'\nsouth 20'\nwest 25'",
    /// )?;
    /// let outline = house.spaces()[0].outline();
    /// let pieces = outline.cuts().expect("it is right-angled");
    /// assert_eq!(pieces.len(), 2);
    /// assert_eq!(pieces.iter().map(fairfoot::geometry::Cut::area).sum::<fairfoot::units::Area>(), outline.area());
    /// # Ok::<(), fairfoot::Diagnostics>(())
    /// ```
    #[must_use]
    pub fn cuts(&self) -> Option<Vec<Cut>> {
        cut(self)
    }
}

/// The pieces of an outline: rectangles from north to south and west to east, then triangles and segments in
/// walking order. `None` where slanted walls leave no right-angled outline to cut.
fn cut(outline: &Outline) -> Option<Vec<Cut>> {
    placed(outline).map(|pieces| pieces.into_iter().map(|piece| piece.cut).collect())
}

/// Like [`cut`], with the position of each piece.
pub(crate) fn placed(outline: &Outline) -> Option<Vec<Placed>> {
    let turn = outline.turn();
    let mut extra = Vec::new();
    for (i, (vector, at)) in outline.vectors().iter().zip(outline.points()).enumerate() {
        let to = (at.0 + vector.east, at.1 + vector.north);
        let piece = |cut: Cut| Placed { cut, corners: vec![at, to], wall: Some(i) };
        let (east, north) =
            (Length::from_nm(vector.east.abs()), Length::from_nm(vector.north.abs()));
        if vector.east != 0 && vector.north != 0 {
            extra.push(piece(Cut::Triangle { east, north, deducted: false }));
        }
        if vector.rise != 0 {
            let chord = crate::geometry::outline::nearest_nm(vector.chord());
            let rise = Length::from_nm(vector.rise.abs());
            let deducted = vector.rise.signum() != turn;
            let area = vector.segment().abs();
            extra.push(piece(Cut::Segment { chord, rise, area, deducted }));
        }
    }
    let slanted: Vec<usize> = (0..outline.vectors().len())
        .filter(|&i| outline.vectors()[i].east != 0 && outline.vectors()[i].north != 0)
        .collect();
    let outside = choose_corners(outline, &slanted)?;
    let triangles = extra.iter_mut().filter(|piece| matches!(piece.cut, Cut::Triangle { .. }));
    for (piece, &outside) in triangles.zip(&outside) {
        let corner = squared_corner(outline, piece, outside);
        piece.corners.push(corner);
        if let Cut::Triangle { deducted, .. } = &mut piece.cut {
            *deducted = outside;
        }
    }
    let mut cuts = Grid::new(&squared(outline, &slanted, &outside))?.rectangles();
    cuts.extend(extra);
    Some(cuts)
}

/// For each slanted wall, whether its right-angled corner lies outside: all inside if that gives a valid outline,
/// else the first choice that does.
fn choose_corners(outline: &Outline, slanted: &[usize]) -> Option<Vec<bool>> {
    const MOST: usize = 10;
    let few = slanted.len().min(MOST);
    for choice in 0..1_usize << few {
        let outside: Vec<bool> =
            (0..slanted.len()).map(|i| i < few && choice >> i & 1 == 1).collect();
        if slanted.is_empty() || is_clear(&squared(outline, slanted, &outside)) {
            return Some(outside);
        }
    }
    None
}

type Point = (i64, i64);

/// The right-angled corner of the triangle at a slanted wall.
fn squared_corner(outline: &Outline, piece: &Placed, outside: bool) -> Point {
    let (from, to) = (piece.corners[0], piece.corners[1]);
    let east_first = is_east_first(outline, (to.0 - from.0, to.1 - from.1), outside);
    if east_first { (to.0, from.1) } else { (from.0, to.1) }
}

/// Whether the corner at a slanted wall is reached by going east or west first.
fn is_east_first(outline: &Outline, (east, north): Point, outside: bool) -> bool {
    // Going east or west first turns left if the components differ in sign.
    let east_first_is_left = east.signum() != north.signum();
    let inside_is_left = outline.turn() > 0;
    (east_first_is_left == inside_is_left) != outside
}

/// The outline with each slanted wall replaced by two sides and a corner, inside on the left.
fn squared(outline: &Outline, slanted: &[usize], outside: &[bool]) -> Vec<Point> {
    let mut points = Vec::new();
    for (i, (vector, at)) in outline.vectors().iter().zip(outline.points()).enumerate() {
        points.push(at);
        if let Some(k) = slanted.iter().position(|&side| side == i) {
            let east_first = is_east_first(outline, (vector.east, vector.north), outside[k]);
            points.push(if east_first {
                (at.0 + vector.east, at.1)
            } else {
                (at.0, at.1 + vector.north)
            });
        }
    }
    if outline.turn() < 0 {
        points.reverse();
    }
    corners_only(&points)
}

/// The points without those that lie in a straight line.
fn corners_only(points: &[Point]) -> Vec<Point> {
    let mut kept: Vec<Point> = points.to_vec();
    kept.dedup();
    while kept.len() > 1 && kept.first() == kept.last() {
        kept.pop();
    }
    loop {
        let n = kept.len();
        let straight = (0..n).find(|&i| {
            let (a, b, c) = (kept[(i + n - 1) % n], kept[i], kept[(i + 1) % n]);
            a.0 == b.0 && b.0 == c.0 || a.1 == b.1 && b.1 == c.1
        });
        match straight {
            Some(i) if n > 4 => drop(kept.remove(i)),
            _ => return kept,
        }
    }
}

/// Whether these corners form an outline that does not cross itself and has its inside on the left.
fn is_clear(points: &[Point]) -> bool {
    let n = points.len();
    let vectors = (0..n).map(|i| {
        let (a, b) = (points[i], points[(i + 1) % n]);
        crate::geometry::outline::Vector { east: b.0 - a.0, north: b.1 - a.1, rise: 0 }
    });
    Outline::new(vectors.collect())
        .is_some_and(|outline| outline.crossing().is_none() && outline.signed_area() > Area::ZERO)
}

/// The grid of lines through all corners, which of its cells are inside, and the cuts between cells.
struct Grid {
    east: Vec<i64>,
    north: Vec<i64>,
    /// Whether a cell is inside, by column, then by row from the south.
    inside: Vec<Vec<bool>>,
    /// Whether there is a cut along the west side of a cell.
    west_cut: Vec<Vec<bool>>,
    /// Whether there is a cut along the south side of a cell.
    south_cut: Vec<Vec<bool>>,
    /// Inward corners, as column and row of the grid lines.
    inward: Vec<(usize, usize)>,
}

/// A straight cut that joins two inward corners: the grid line it runs along, and where it begins and ends.
#[derive(Clone, Copy, PartialEq)]
struct Chord {
    line: usize,
    from: usize,
    to: usize,
}

impl Grid {
    fn new(points: &[Point]) -> Option<Grid> {
        let sorted = |pick: fn(&Point) -> i64| {
            let mut lines: Vec<i64> = points.iter().map(pick).collect();
            lines.sort_unstable();
            lines.dedup();
            lines
        };
        let (east, north) = (sorted(|p| p.0), sorted(|p| p.1));
        let at = |lines: &[i64], value: i64| lines.binary_search(&value).ok();
        let (columns, rows) = (east.len(), north.len());
        let mut grid = Grid {
            inside: vec![vec![false; rows]; columns],
            west_cut: vec![vec![false; rows]; columns],
            south_cut: vec![vec![false; rows]; columns],
            inward: Vec::new(),
            east,
            north,
        };
        let n = points.len();
        for i in 0..n {
            let (before, here, next) = (points[(i + n - 1) % n], points[i], points[(i + 1) % n]);
            let (a, b) =
                ((here.0 - before.0, here.1 - before.1), (next.0 - here.0, next.1 - here.1));
            let left = i128::from(a.0) * i128::from(b.1) - i128::from(a.1) * i128::from(b.0);
            if left < 0 {
                grid.inward.push((at(&grid.east, here.0)?, at(&grid.north, here.1)?));
            }
            if here.0 == next.0 {
                // A wall north or south: every cell east of it switches between inside and outside.
                let (low, high) = (here.1.min(next.1), here.1.max(next.1));
                let (low, high, from) =
                    (at(&grid.north, low)?, at(&grid.north, high)?, at(&grid.east, here.0)?);
                for column in &mut grid.inside[from..] {
                    column[low..high].iter_mut().for_each(|cell| *cell = !*cell);
                }
            }
        }
        Some(grid)
    }

    fn is_inside(&self, column: Option<usize>, row: Option<usize>) -> bool {
        let (Some(column), Some(row)) = (column, row) else { return false };
        self.inside.get(column).and_then(|cells| cells.get(row)).copied().unwrap_or(false)
    }

    /// Whether the inside lies on both sides of this piece of an east-west line.
    fn is_open_east(&self, column: usize, row: usize) -> bool {
        self.is_inside(Some(column), Some(row)) && self.is_inside(Some(column), row.checked_sub(1))
    }

    /// Whether the inside lies on both sides of this piece of a north-south line.
    fn is_open_north(&self, column: usize, row: usize) -> bool {
        self.is_inside(Some(column), Some(row)) && self.is_inside(column.checked_sub(1), Some(row))
    }

    fn rectangles(mut self) -> Vec<Placed> {
        let level = self.chords(true);
        let upright = self.chords(false);
        let kept = independent(&level, &upright);
        for (chord, _) in level.iter().zip(&kept.0).filter(|(_, kept)| **kept) {
            (chord.from..chord.to).for_each(|column| self.south_cut[column][chord.line] = true);
        }
        for (chord, _) in upright.iter().zip(&kept.1).filter(|(_, kept)| **kept) {
            (chord.from..chord.to).for_each(|row| self.west_cut[chord.line][row] = true);
        }
        for (column, row) in self.inward.clone() {
            if !self.has_cut(column, row) {
                self.cut_level(column, row);
            }
        }
        self.collect()
    }

    /// The cuts that join two inward corners on one grid line, with nothing but inside between them. `level` asks for
    /// those that run east-west.
    fn chords(&self, level: bool) -> Vec<Chord> {
        let mut corners: Vec<(usize, usize)> =
            self.inward.iter().map(|&(c, r)| if level { (r, c) } else { (c, r) }).collect();
        corners.sort_unstable();
        let open = |line: usize, step: usize| {
            if level { self.is_open_east(step, line) } else { self.is_open_north(line, step) }
        };
        corners
            .windows(2)
            .filter(|pair| pair[0].0 == pair[1].0)
            .map(|pair| Chord { line: pair[0].0, from: pair[0].1, to: pair[1].1 })
            .filter(|chord| (chord.from..chord.to).all(|step| open(chord.line, step)))
            .collect()
    }

    /// Whether a cut already leaves this corner.
    fn has_cut(&self, column: usize, row: usize) -> bool {
        let cut = |cuts: &[Vec<bool>], c: Option<usize>, r: Option<usize>| match (c, r) {
            (Some(c), Some(r)) => cuts[c][r],
            _ => false,
        };
        cut(&self.south_cut, Some(column), Some(row))
            || cut(&self.south_cut, column.checked_sub(1), Some(row))
            || cut(&self.west_cut, Some(column), Some(row))
            || cut(&self.west_cut, Some(column), row.checked_sub(1))
    }

    /// Cuts east or west from an inward corner until it meets a wall or another cut.
    fn cut_level(&mut self, column: usize, row: usize) {
        let crosses = |grid: &Grid, c: usize| {
            grid.west_cut[c][row] && row.checked_sub(1).is_some_and(|below| grid.west_cut[c][below])
        };
        let mut at = column;
        while self.is_open_east(at, row) {
            self.south_cut[at][row] = true;
            at += 1;
            if crosses(self, at) {
                break;
            }
        }
        let mut at = column;
        while at.checked_sub(1).is_some_and(|west| self.is_open_east(west, row)) {
            at -= 1;
            self.south_cut[at][row] = true;
            if crosses(self, at) {
                break;
            }
        }
    }

    /// The rectangles between the cuts, from north to south and west to east.
    fn collect(mut self) -> Vec<Placed> {
        let mut found = Vec::new();
        for row in (0..self.north.len()).rev() {
            for column in 0..self.east.len() {
                if self.inside[column][row] {
                    found.push(self.take(column, row));
                }
            }
        }
        found
    }

    /// The rectangle whose north-west cell this is; removes its cells.
    fn take(&mut self, column: usize, row: usize) -> Placed {
        let mut to = column + 1;
        while self.is_inside(Some(to), Some(row)) && !self.west_cut[to][row] {
            to += 1;
        }
        let mut low = row;
        while !self.south_cut[column][low] && self.is_inside(Some(column), low.checked_sub(1)) {
            low -= 1;
        }
        for cells in &mut self.inside[column..to] {
            cells[low..=row].fill(false);
        }
        let (west, east) = (self.east[column], self.east[to]);
        let (south, north) = (self.north[low], self.north[row + 1]);
        Placed {
            cut: Cut::Rectangle {
                east: Length::from_nm(east - west),
                north: Length::from_nm(north - south),
            },
            corners: vec![(west, south), (east, south), (east, north), (west, north)],
            wall: None,
        }
    }
}

/// The largest set of non-crossing cuts: the complement of a minimum vertex cover of the crossings (Kőnig's theorem).
fn independent(level: &[Chord], upright: &[Chord]) -> (Vec<bool>, Vec<bool>) {
    let meets = |a: &Chord, b: &Chord| {
        (a.from..=a.to).contains(&b.line) && (b.from..=b.to).contains(&a.line)
    };
    let others: Vec<Vec<usize>> = level
        .iter()
        .map(|a| (0..upright.len()).filter(|&j| meets(a, &upright[j])).collect())
        .collect();
    let mut partner: Vec<Option<usize>> = vec![None; upright.len()];
    for i in 0..level.len() {
        augment(i, &others, &mut partner, &mut vec![false; upright.len()]);
    }
    // Alternating paths from the unmatched level cuts, along meetings and back along matches: level cuts that are
    // reached are kept, upright cuts that are reached are not.
    let mut level_reached: Vec<bool> =
        (0..level.len()).map(|i| !partner.contains(&Some(i))).collect();
    let mut upright_reached = vec![false; upright.len()];
    let mut queue: Vec<usize> = (0..level.len()).filter(|&i| level_reached[i]).collect();
    while let Some(i) = queue.pop() {
        for &j in &others[i] {
            if !std::mem::replace(&mut upright_reached[j], true)
                && let Some(back) = partner[j]
                && !std::mem::replace(&mut level_reached[back], true)
            {
                queue.push(back);
            }
        }
    }
    (level_reached, upright_reached.iter().map(|reached| !reached).collect())
}

/// Adds one matched pair by finding an augmenting path; returns whether there was one.
fn augment(
    i: usize,
    others: &[Vec<usize>],
    partner: &mut [Option<usize>],
    seen: &mut [bool],
) -> bool {
    for &j in &others[i] {
        if std::mem::replace(&mut seen[j], true) {
            continue;
        }
        let free = partner[j].is_none_or(|taken| augment(taken, others, partner, seen));
        if free {
            partner[j] = Some(i);
            return true;
        }
    }
    false
}

#[cfg(test)]
#[expect(clippy::unwrap_used, reason = "a test that cannot go on has failed")]
mod tests {
    use super::*;

    fn outline(sides: &str) -> Outline {
        let text = format!("level \"G\"\nliving \"H\"\n{}", sides.replace(", ", "\n"));
        crate::read("cut.sides", text).unwrap().spaces()[0].outline().clone()
    }

    fn pieces(sides: &str) -> Vec<Cut> {
        let outline = outline(sides);
        let cuts = cut(&outline).unwrap();
        assert_eq!(cuts.iter().map(Cut::area).sum::<Area>(), outline.area(), "{sides}");
        cuts
    }

    #[test]
    fn a_rectangle_is_one_piece_and_an_l_is_two() {
        assert_eq!(pieces("north 28', east 42', south 28', west 42'").len(), 1);
        assert_eq!(
            pieces("north 30', east 40', south 10', west 15', south 20', west 25'").len(),
            2
        );
    }

    #[test]
    fn a_cross_is_three_pieces_and_so_is_a_u() {
        // Four inward corners and two cuts that serve two corners each: 4 − 2 + 1.
        assert_eq!(
            pieces("north 10', west 10', north 10', east 10', north 10', east 10', south 10', east 10', south 10', west 10', south 10', west 10'").len(),
            3
        );
        assert_eq!(
            pieces(
                "north 30', east 10', south 20', east 10', north 20', east 10', south 30', west 30'"
            )
            .len(),
            3
        );
    }

    #[test]
    fn a_slanted_wall_is_a_triangle_and_a_curved_one_a_segment() {
        let cuts = pieces("north 20', diagonal north 4' east 4', east 16', south 24', west 20'");
        assert_eq!(cuts.iter().filter(|cut| matches!(cut, Cut::Triangle { .. })).count(), 1);
        let cuts = pieces("north 20', arc east 8' rise 2' north, east 12', south 20', west 20'");
        assert_eq!(
            cuts.iter().filter(|cut| matches!(cut, Cut::Segment { deducted: false, .. })).count(),
            1
        );
        let cuts = pieces("north 20', arc east 8' rise 2' south, east 12', south 20', west 20'");
        assert_eq!(
            cuts.iter().filter(|cut| matches!(cut, Cut::Segment { deducted: true, .. })).count(),
            1
        );
    }

    #[test]
    fn a_bay_cuts_the_same_whichever_way_it_is_walked() {
        let there = "west 10', south 20', east 10', diagonal east 3' south 3', east 6', diagonal east 3' north 3', east 8', north 20', west 20'";
        assert_eq!(pieces(there).len(), 4);
        let back = "east 20', south 20', west 8', diagonal west 3' south 3', west 6', diagonal west 3' north 3', west 10', north 20', east 10'";
        assert_eq!(pieces(back).len(), 4);
    }

    #[test]
    fn a_triangle_alone_is_half_a_rectangle() {
        let cuts = pieces("north 10', diagonal south 10' east 10', west 10'");
        assert_eq!(
            cuts.iter().map(Cut::area).sum::<Area>(),
            Area::rectangle("10'".parse().unwrap(), "5'".parse().unwrap())
        );
    }
}
