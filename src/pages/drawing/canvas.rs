//! A drawing under construction: walls first, then labels where there is room, each clear of everything before it.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::pages::drawing::occupancy::{Ground, Occupancy, Sort, grown_by};
use crate::pages::drawing::view::{View, WallOnPage, clearance_pt, is_inside, path};
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::page::{Anchor, Fill, Ink, Part, Point, Stroke, Text};

/// Letter sizes of dimensions in points; the smaller one is used where there is no room.
pub(crate) const SIZES_PT: [f64; 2] = [7.5, 6.3];
/// Half the height of a digit, relative to the letter size.
const HALF_DIGIT: f64 = 0.365;
/// The distance of a name from the walls around it, where there is room.
const OFF_WALLS_PT: f64 = 2.5;
/// The distance of a text above its dimension line.
const GAP_PT: f64 = 2.0;
/// The same of a text that is longer than its dimension line.
const LONG_GAP_PT: f64 = 4.4;
/// How far hatching ends from a label: before and after it, where a stroke would look like a letter, and above and below.
const HATCH_OFF_PT: (f64, f64) = (3.2, 1.8);
/// How much of a dimension line is left free at each end of its text.
const LINE_SHOWN_PT: f64 = 2.0;
/// Half the length of the slash at an end of a dimension line.
const TICK_PT: f64 = 2.8;
/// How far hatching ends beside a leader.
const LEADER_OFF_PT: f64 = 1.6;
/// The distance of a witness line from its wall.
const OFF_WALL_PT: f64 = 1.6;

/// How many lines and labels may be compared to place the labels of a drawing, shared among drawings of one kind: the
/// levels of a house, its lots, its outlines beside the record's. A house with 30 walls needs about a fiftieth of it.
const MOST_LOOKED_AT: usize = 5_000_000;

/// The work allowed for each drawing if there are this many.
pub(crate) fn most_looked_at(drawings: usize) -> usize {
    MOST_LOOKED_AT.checked_div(drawings).unwrap_or(MOST_LOOKED_AT)
}

/// What is drawn so far, layer by layer.
pub(crate) struct Canvas {
    pub(crate) view: View,
    pub(crate) occupancy: Occupancy,
    hatches: Vec<Stroke>,
    hatched: Vec<Vec<Point>>,
    whites: Vec<Stroke>,
    walls: Vec<Stroke>,
    dimensions: Vec<Stroke>,
    texts: Vec<Text>,
    /// The corners of every outline.
    corners: Vec<Point>,
    /// The figures of the spaces whose walls may have a length inside.
    spaces: Vec<Vec<Point>>,
    /// The number of comparisons of lines and labels after which no more labels are placed.
    most_looked_at: usize,
    /// Whether each length takes the least room, in the order of the walls' lengths.
    is_crowded: bool,
    /// Whether a length stands beside its wall without a line.
    has_bare: bool,
}

/// The dimension of one wall.
#[derive(Clone, Debug)]
pub(crate) struct Dimension {
    pub(crate) wall: WallOnPage,
    /// Another wall of the same length where it may be placed instead.
    pub(crate) or_else: Option<WallOnPage>,
    pub(crate) words: String,
    pub(crate) hand: Typeface,
    /// A mark on the wall.
    pub(crate) mark: Option<Mark>,
}

/// A mark on a wall; each has one meaning.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Mark {
    /// Filled dot: the wall differs from the record.
    Differs,
    /// Open dot: a length to ask about.
    Ask,
    /// Black square: a wall to measure again first.
    AgainFirst,
    /// White square: a wall to measure again.
    Again,
}

/// Lines of text that belong together, from top to bottom.
#[derive(Clone, Debug)]
pub(crate) struct Block {
    pub(crate) lines: Vec<(Typeface, f64, String)>,
}

/// How many rows of dimension lines there may be before a wall; lines beside each other take rows well apart.
const ROWS: u8 = 10;
/// A row well behind the first.
const SECOND_ROW: u8 = 3;

/// How far from its wall the dimension lines of a row are.
fn row_pt(row: u8) -> f64 {
    9.0 + f64::from(row) * 4.0
}

/// What a leader is allowed to cross.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Over {
    /// Nothing, and its label stands on no hatching, where it would seem to be of the space there.
    Nothing,
    /// Hatching.
    Hatch,
    /// Other dimension lines too, if nothing else is possible.
    Lines,
}

/// The lengths of a leader that the eye follows at once, in points.
const NEAR_PT: [f64; 6] = [11.0, 16.0, 22.0, 30.0, 40.0, 52.0];
/// Longer ones, for what has no room nearer, inside or outside.
const FAR_PT: [f64; 5] = [66.0, 84.0, 106.0, 134.0, 168.0];

/// The line spacing, relative to the letter size.
const LEADING: f64 = 1.22;

impl Block {
    fn size_pt(&self) -> (f64, f64) {
        let wide =
            self.lines.iter().map(|(hand, size, words)| fonts::width_pt(*hand, *size, words));
        (wide.fold(0.0, f64::max), self.lines.iter().map(|(_, size, _)| size * LEADING).sum())
    }

    fn is_letter(&self) -> bool {
        self.lines.iter().all(|(.., words)| words.chars().count() <= 2)
    }

    /// Its lines centered on `middle`, horizontal or reading upward.
    fn texts(&self, middle: Point, upright: bool) -> Vec<Text> {
        let (_, height) = self.size_pt();
        let (turn, down) =
            if upright { (-90.0, Point::new(1.0, 0.0)) } else { (0.0, Point::new(0.0, 1.0)) };
        let mut top = -height / 2.0;
        let mut texts = Vec::new();
        for (hand, size, words) in &self.lines {
            let text = Text {
                anchor: Anchor::Middle,
                turn,
                is_label: true,
                ..Text::new(middle.plus(down, top + 0.87 * size), *size, words.clone())
            };
            texts.push(text.in_hand(*hand));
            top += size * LEADING;
        }
        texts
    }

    /// The rectangle of a block of this width and height.
    fn ground((width, height): (f64, f64), middle: Point, upright: bool) -> Ground {
        let (right, down) = if upright { (height, width) } else { (width, height) };
        let corner = |x: f64, y: f64| {
            Point::new(middle.x_pt + x * right / 2.0, middle.y_pt + y * down / 2.0)
        };
        [corner(-1.0, -1.0), corner(1.0, -1.0), corner(1.0, 1.0), corner(-1.0, 1.0)]
    }
}

/// The angle in degrees at which a text along a line can be read from the bottom or the right.
pub(crate) fn reading_turn(along: Point) -> f64 {
    let degrees = libm::atan2(along.y_pt, along.x_pt).to_degrees();
    let folded = if degrees > 90.0 {
        degrees - 180.0
    } else if degrees <= -90.0 {
        degrees + 180.0
    } else {
        degrees
    };
    // Text at vertical walls reads upward, even if they lean very slightly.
    if folded > 89.0 { folded - 180.0 } else { folded }
}

/// Whether a label covers any of a figure.
fn lies_over(ground: &Ground, figure: &[Point]) -> bool {
    let is_in = |corner: &Point| is_inside(figure, *corner);
    ground.iter().any(is_in) || figure.iter().any(|&corner| is_inside(ground, corner))
}

impl Canvas {
    pub(crate) fn new(view: View, left_top: Point, right_bottom: Point) -> Canvas {
        Canvas {
            view,
            occupancy: Occupancy::new(left_top, right_bottom),
            hatches: Vec::new(),
            hatched: Vec::new(),
            whites: Vec::new(),
            walls: Vec::new(),
            dimensions: Vec::new(),
            texts: Vec::new(),
            corners: Vec::new(),
            spaces: Vec::new(),
            most_looked_at: usize::MAX,
            is_crowded: false,
            has_bare: false,
        }
    }

    /// Whether a length stands beside its wall without a line from end to end.
    pub(crate) fn has_a_bare_length(&self) -> bool {
        self.has_bare
    }

    /// Gives each length the least room, for a drawing on which not all labels fit otherwise.
    pub(crate) fn crowded(self, is_crowded: bool) -> Canvas {
        Canvas { is_crowded, ..self }
    }

    /// Limits the work for placing labels. Labels not placed by then are listed below the drawing.
    pub(crate) fn within(self, most_looked_at: usize) -> Canvas {
        Canvas { most_looked_at, ..self }
    }

    /// Whether that work is used up.
    pub(crate) fn is_spent(&self) -> bool {
        self.occupancy.looked_at() >= self.most_looked_at
    }

    /// The finished layers, from bottom to top.
    pub(crate) fn finish(self) -> Vec<Ink> {
        let strokes = [self.hatches, self.whites, self.walls, self.dimensions];
        let strokes = strokes.into_iter().flatten().map(Ink::Stroke);
        strokes.chain(self.texts.into_iter().map(Ink::Text)).collect()
    }

    /// Draws a closed outline that nothing may touch from now on.
    pub(crate) fn outline(
        &mut self,
        walls: &[WallOnPage],
        width_pt: f64,
        dashes: Option<[f64; 2]>,
        part: Part,
    ) {
        let sort = if part == Part::Dashed { Sort::Theirs } else { Sort::Wall };
        for (from, to) in walls.iter().flat_map(WallOnPage::stretches) {
            self.occupancy.add_line(from, to, sort);
        }
        self.corners.extend(walls.iter().map(|wall| wall.from));
        let stroke = Stroke { dashes, ..Stroke::of(path(walls), width_pt) };
        self.walls.push(stroke.of_part(part));
    }

    /// Notes the figure of a space: a length inside it, at one of its walls, is read as that wall's.
    pub(crate) fn space(&mut self, figure: Vec<Point>) {
        self.spaces.push(figure);
    }

    /// Draws a line that nothing may touch. A dimension may be moved outward across another party's outline, unlike
    /// across our own walls.
    pub(crate) fn line(&mut self, stroke: Stroke, sort: Sort) {
        for (from, to) in stroke.stretches() {
            self.occupancy.add_line(from, to, sort);
            self.corners.extend((sort == Sort::Theirs).then_some(from));
        }
        self.walls.push(stroke);
    }

    /// Hatches a figure; labels may stand on the hatching.
    pub(crate) fn hatch(&mut self, figure: Vec<Point>, strokes: Vec<Stroke>) {
        self.hatches.extend(strokes);
        self.hatched.push(figure);
    }

    /// Draws a label at a fixed place.
    pub(crate) fn set(&mut self, text: Text) {
        self.occupancy.add_ground(text.corners());
        self.texts.push(Text { is_label: true, ..text });
    }

    /// Draws strokes and texts in a rectangle that is kept free for them.
    pub(crate) fn fixture(&mut self, ground: Ground, strokes: Vec<Stroke>, texts: Vec<Text>) {
        self.occupancy.add_ground(ground);
        self.dimensions.extend(strokes);
        self.texts.extend(texts);
    }

    fn commit(&mut self, text: Text) {
        self.clear_hatch(&text.corners());
        self.set(text);
    }

    /// Ends the hatching around a label, or around all lines of a block, between which it would leave scraps.
    fn clear_hatch(&mut self, ground: &Ground) {
        if self.hatched.iter().any(|figure| lies_over(ground, figure)) {
            self.whites.push(Stroke::filled(&grown_by(ground, HATCH_OFF_PT), Fill::White));
        }
    }

    /// Keeps numbers clear of a mark on a wall; lines may still end at it.
    pub(crate) fn keep_clear_of_a_mark(&mut self, wall: &WallOnPage) {
        const OFF_PT: f64 = 4.2;
        let middle = wall.middle();
        for way in [Point::new(OFF_PT, 0.0), Point::new(0.0, OFF_PT)] {
            let (from, to) = (middle.plus(way, -1.0), middle.plus(way, 1.0));
            self.occupancy.add_line(from, to, Sort::Witness);
        }
    }

    /// Ends the hatching beside a line, where its strokes would look like a part of it.
    fn off_the_hatch(&mut self, from: Point, to: Point, off_pt: f64) {
        let across = Point::default().plus(from.to(to).unit().turned(), off_pt);
        let ground = [
            from.plus(across, 1.0),
            to.plus(across, 1.0),
            to.plus(across, -1.0),
            from.plus(across, -1.0),
        ];
        let is_over =
            |figure: &Vec<Point>| is_inside(figure, from.middle(to)) || lies_over(&ground, figure);
        if self.hatched.iter().any(is_over) {
            self.whites.push(Stroke::filled(&ground, Fill::White));
        }
    }

    /// Whether a dimension line would lie in a hatched figure.
    fn is_in_hatch(&self, from: Point, to: Point) -> bool {
        self.hatched.iter().any(|figure| is_inside(figure, from.middle(to)))
    }

    /// Whether a leader would cross a hatched figure on its way.
    fn crosses_hatch(&self, from: Point, to: Point) -> bool {
        const EVERY_PT: f64 = 3.0;
        let along = from.to(to);
        let steps = (1..).map(|step| f64::from(step) * EVERY_PT / along.length().max(EVERY_PT));
        let spots = steps.take_while(|share| *share < 1.0).map(|share| from.plus(along, share));
        let mut spots = spots.chain([from, to]);
        spots.any(|spot| self.hatched.iter().any(|figure| is_inside(figure, spot)))
    }

    /// Places dimensions, shortest first, and returns those that did not fit. Where a length
    /// fits on a line along its wall, lines come before leaders: a leader finds its way around a line, and a line finds none
    /// around the label of a leader. The texts keep their
    /// original order, for screen readers.
    pub(crate) fn dimensions(&mut self, all: Vec<Dimension>) -> Vec<Dimension> {
        for dimension in &all {
            let dot = Stroke::dot(dimension.wall.middle(), 2.3);
            let square = Stroke::square(dimension.wall.middle(), 2.4);
            match dimension.mark {
                Some(Mark::AgainFirst) => self.walls.push(square),
                Some(Mark::Again) => {
                    self.walls.push(Stroke { fill: Fill::White, width_pt: 0.9, ..square });
                }
                Some(Mark::Differs) => self.walls.push(dot),
                Some(Mark::Ask) => {
                    self.walls.push(Stroke { fill: Fill::White, width_pt: 0.9, ..dot });
                }
                None => {}
            }
            if dimension.mark.is_some() {
                self.keep_clear_of_a_mark(&dimension.wall);
            }
        }
        let mut numbered: Vec<(usize, Dimension)> = all.into_iter().enumerate().collect();
        numbered.sort_by(|(_, a), (_, b)| a.wall.length_pt().total_cmp(&b.wall.length_pt()));
        let before = self.texts.len();
        let mut lettered = Vec::new();
        let passes: &[fn(&mut Canvas, &Dimension) -> bool] = match self.is_crowded {
            true => &[|canvas, one| canvas.line_along(one) || canvas.dimension(one)],
            false => &[Canvas::dimension_along, Canvas::dimension],
        };
        for place in passes {
            numbered.retain(|(number, dimension)| {
                let placed = place(self, dimension);
                lettered.extend(placed.then_some(*number));
                !placed
            });
        }
        // Each placed dimension added exactly one text.
        let texts = self.texts.split_off(before);
        let mut texts: Vec<(usize, Text)> = lettered.into_iter().zip(texts).collect();
        texts.sort_by_key(|(number, _)| *number);
        self.texts.extend(texts.into_iter().map(|(_, text)| text));
        numbered.into_iter().map(|(_, dimension)| dimension).collect()
    }

    /// Places a small number close to a wall, inside its figure or else outside every figure, with no dimension
    /// line between; not in a space inside it, where it would seem to be that space's, unless there is no other
    /// place. Returns whether there was room.
    pub(crate) fn number(
        &mut self,
        wall: &WallOnPage,
        figure: &[Point],
        others: &[&[Point]],
        inner: &[&[Point]],
        number: usize,
    ) -> bool {
        let is_clear = |spot: Point| !inner.iter().any(|inner| is_inside(inner, spot));
        self.number_where(wall, figure, others, number, is_clear)
            || !inner.is_empty() && self.number_where(wall, figure, others, number, |_| true)
    }

    fn number_where(
        &mut self,
        wall: &WallOnPage,
        figure: &[Point],
        others: &[&[Point]],
        number: usize,
        may_stand: impl Fn(Point) -> bool,
    ) -> bool {
        const SHARES: [f64; 7] = [0.5, 0.38, 0.62, 0.25, 0.75, 0.14, 0.86];
        const NEAR_PT: [f64; 5] = [-5.6, -8.0, 5.6, 8.0, -11.5];
        const FAR_PT: [f64; 4] = [-15.0, -19.0, -23.0, 11.5];
        /// How far it is from other labels: well apart, or nearer to one rather than far from its wall.
        const APART_PT: [f64; 2] = [SIZES_PT[0], 4.5];
        let size_pt = SIZES_PT[1];
        let along = wall.from.to(wall.to);
        let near = APART_PT.into_iter().flat_map(|apart| NEAR_PT.map(|off| (off, apart)));
        let all = near.chain(FAR_PT.map(|off| (off, APART_PT[0])));
        let places = all.flat_map(|(off, apart)| {
            SHARES.map(|share| {
                let straight = wall.from.plus(along, share);
                let on = if wall.is_curved() { wall.middle() } else { straight };
                (on.plus(wall.out, 0.6 * f64::signum(off)), on.plus(wall.out, off), apart)
            })
        });
        let mut text = Text::new(Point::default(), size_pt, number.to_string());
        text.anchor = Anchor::Middle;
        let width_pt = fonts::width_pt(text.hand, size_pt, &text.words);
        let mut free = |&(wall, spot, apart): &(Point, Point, f64)| {
            text.at = Point::new(spot.x_pt, spot.y_pt + 0.36 * size_pt);
            let ground = text.corners_if(width_pt);
            let is_at_home = || {
                self.occupancy.count(others.iter().map(|other| other.len()).sum());
                is_inside(figure, spot)
                    || others.iter().all(|other| !ground.iter().any(|&at| is_inside(other, at)))
            };
            may_stand(spot)
                && self.occupancy.has_room(&ground)
                && self.occupancy.is_alone(&ground, apart)
                && self.occupancy.meets_no_dimension(wall, spot)
                && is_at_home()
        };
        let worth_it = |_: &(Point, Point, f64)| !self.is_spent();
        let placed = places.into_iter().take_while(worth_it).any(|place| free(&place));
        if placed {
            self.commit(text);
        }
        placed
    }

    /// Places a dimension by a line along its wall, or along the other one where it may be placed; one that is longer than
    /// its wall also by a longer text or by a short leader, which lines then go around.
    fn dimension_along(&mut self, dimension: &Dimension) -> bool {
        let other = dimension.or_else.map(|wall| Dimension { wall, ..dimension.clone() });
        let out = dimension.wall.out;
        let width = fonts::width_pt(dimension.hand, SIZES_PT[1], &dimension.words);
        let is_long = width > dimension.wall.length_pt() - 2.0 * LINE_SHOWN_PT;
        self.line_along(dimension)
            || other.is_some_and(|other| self.line_along(&other))
            || is_long
                && (SIZES_PT
                    .into_iter()
                    .any(|size_pt| !self.is_spent() && self.along_wide(dimension, size_pt))
                    || SIZES_PT.into_iter().any(|size_pt| {
                        !self.is_spent() && self.leader_off_hatch(dimension, out, size_pt)
                    }))
    }

    fn line_along(&mut self, dimension: &Dimension) -> bool {
        let inward = Point::default().plus(dimension.wall.out, -1.0);
        // A length that differs from the record stands at its own wall, not beyond a neighbor.
        let is_marked = dimension.mark.is_some();
        let at_wall = is_marked
            && SIZES_PT.into_iter().any(|size_pt| {
                !self.is_spent()
                    && (self.along_outside(dimension, 0.0, size_pt)
                        || self.along(dimension, inward, row_pt(0), size_pt)
                        || self.along(dimension, inward, row_pt(SECOND_ROW), size_pt))
            });
        at_wall
            || SIZES_PT.into_iter().any(|size_pt| {
                !self.is_spent()
                    && (self.along_in_clear(dimension, size_pt)
                        || self.beyond_all(dimension, size_pt))
            })
    }

    /// Places a dimension for which there is no line along its wall: beside the wall inside its space, else by a short
    /// leader, each also in smaller letters, else along it inside, else at the other wall where it may be placed, else by
    /// a leader across hatching, a long one, or one across other dimension lines.
    fn dimension(&mut self, dimension: &Dimension) -> bool {
        let other = dimension.or_else.map(|wall| Dimension { wall, ..dimension.clone() });
        let (out, inward) = (dimension.wall.out, Point::default().plus(dimension.wall.out, -1.0));
        (self.is_hatched_within(dimension) && self.dimension_off_hatch(dimension, other.as_ref()))
            || self.dimension_in_clear(dimension)
            || other
                .as_ref()
                .is_some_and(|other| self.line_along(other) || self.dimension_in_clear(other))
            || self.dimension_over_hatch(dimension)
            || other.is_some_and(|other| self.dimension_over_hatch(&other))
            || self.leader_of(dimension, out, SIZES_PT[1], &FAR_PT)
            || self.leader_of(dimension, inward, SIZES_PT[1], &FAR_PT)
            || self.leader(dimension, out, SIZES_PT[1], Over::Lines)
            || self.leader(dimension, inward, SIZES_PT[1], Over::Lines)
    }

    /// Places a dimension of a space with hatching or diagonals around it, at the one or the other wall, so that it stands on
    /// none; returns whether there was room.
    fn dimension_off_hatch(&mut self, dimension: &Dimension, other: Option<&Dimension>) -> bool {
        const AROUND: [f64; 1] = [1.0];
        std::iter::once(dimension).chain(other).any(|one| {
            let out = one.wall.out;
            !self.is_crowded && self.beside_wall(one, &AROUND)
                || SIZES_PT
                    .into_iter()
                    .any(|size_pt| !self.is_spent() && self.leader_off_hatch(one, out, size_pt))
                || self.line_along(one)
        })
    }

    /// Whether the space of a wall is hatched or has diagonals, on which a length is hard to read.
    fn is_hatched_within(&self, dimension: &Dimension) -> bool {
        const JUST_INSIDE_PT: f64 = -4.0;
        let spot = dimension.wall.middle().plus(dimension.wall.out, JUST_INSIDE_PT);
        self.hatched.iter().any(|figure| is_inside(figure, spot))
    }

    fn dimension_in_clear(&mut self, dimension: &Dimension) -> bool {
        let out = dimension.wall.out;
        let inward = Point::default().plus(out, -1.0);
        let is_told_elsewhere = dimension.or_else.is_some();
        !self.is_crowded && self.beside_wall(dimension, &[-1.0, 1.0])
            || SIZES_PT
                .into_iter()
                .any(|size_pt| !self.is_spent() && self.leader_off_hatch(dimension, out, size_pt))
            || SIZES_PT.into_iter().any(|size_pt| {
                !self.is_spent()
                    && (is_told_elsewhere && self.along_other(dimension, size_pt)
                        || self.along(dimension, inward, row_pt(0), size_pt)
                        || self.along(dimension, inward, row_pt(SECOND_ROW), size_pt)
                        || self.along_outside(dimension, 0.0, size_pt)
                        || self.far_leader_off_hatch(dimension, out, size_pt)
                        || self.leader_off_hatch(dimension, inward, size_pt))
            })
    }

    /// Places a length without a line close to its wall and reading along it, inside its space or else in the space around
    /// that, as far as these are among `sides`: −1 inside, 1 outside. Returns whether there was room.
    fn beside_wall(&mut self, dimension: &Dimension, sides: &[f64]) -> bool {
        /// From the middle of the wall to its ends.
        const SHARES: [f64; 7] = [0.5, 0.3, 0.7, 0.15, 0.85, 0.0, 1.0];
        const OFF_PT: [f64; 3] = [2.4, 4.0, 6.0];
        const END_PT: f64 = 2.6;
        let wall = &dimension.wall;
        if wall.is_curved() {
            return false;
        }
        let along = wall.from.to(wall.to).unit();
        let turn = reading_turn(along);
        let radians = turn.to_radians();
        let down = Point::new(-libm::sin(radians), libm::cos(radians));
        for (side, size_pt) in sides.iter().flat_map(|&side| SIZES_PT.map(|s| (side, s))) {
            let width = fonts::width_pt(dimension.hand, size_pt, &dimension.words);
            let text = Text::new(wall.from, size_pt, dimension.words.clone());
            let text = Text { anchor: Anchor::Middle, turn, ..text }.in_hand(dimension.hand);
            let (first, room) = (END_PT + width / 2.0, wall.length_pt() - 2.0 * END_PT - width);
            for (share, off) in SHARES.into_iter().flat_map(|s| OFF_PT.map(|off| (s, off))) {
                if self.is_spent() || room < 0.0 {
                    break;
                }
                let at = wall.from.plus(along, first + share * room);
                let middle = at.plus(wall.out, side * (off + size_pt / 2.0));
                let text = Text { at: middle.plus(down, 0.26 * size_pt), ..text.clone() };
                let is_here = || match side < 0.0 {
                    true => self.is_in_space_of(wall, middle),
                    false => self.is_around(wall, middle),
                };
                if self.occupancy.has_room(&text.corners_if(width)) && is_here() {
                    self.commit(text);
                    self.has_bare = true;
                    return true;
                }
            }
        }
        false
    }

    /// The smallest space around a spot.
    fn space_at(&self, spot: Point) -> Option<&Vec<Point>> {
        self.occupancy.count(self.spaces.iter().map(Vec::len).sum());
        let around = self.spaces.iter().filter(|figure| is_inside(figure, spot));
        around.min_by(|one, other| extent(one).total_cmp(&extent(other)))
    }

    /// Whether the smallest space around a spot is one that this wall stands within, as the wall of a space inside it.
    fn is_around(&self, wall: &WallOnPage, spot: Point) -> bool {
        const WELL_WITHIN_PT: f64 = 8.0;
        self.space_at(spot).is_some_and(|figure| {
            [wall.from.middle(wall.to), wall.from, wall.to]
                .into_iter()
                .all(|at| is_inside(figure, at.plus(wall.out, WELL_WITHIN_PT)))
        })
    }

    /// Whether the smallest space around a spot is one that has this whole wall.
    fn is_in_space_of(&self, wall: &WallOnPage, spot: Point) -> bool {
        let smallest = self.space_at(spot);
        let is_near = |one: Point, other: Point| one.to(other).length() < 0.4;
        smallest.is_some_and(|figure| {
            figure.iter().zip(figure.iter().cycle().skip(1)).any(|(&from, &to)| {
                is_near(from, wall.from) && is_near(to, wall.to)
                    || is_near(from, wall.to) && is_near(to, wall.from)
            })
        })
    }

    /// Places a dimension by a short leader that may cross hatching, outside or else inside.
    fn dimension_over_hatch(&mut self, dimension: &Dimension) -> bool {
        let out = dimension.wall.out;
        let inward = Point::default().plus(out, -1.0);
        SIZES_PT.into_iter().any(|size_pt| {
            !self.is_spent()
                && (self.leader_of(dimension, out, size_pt, &NEAR_PT)
                    || self.leader_of(dimension, inward, size_pt, &NEAR_PT))
        })
    }

    /// Places a dimension outside along its other wall.
    fn along_other(&mut self, dimension: &Dimension, size_pt: f64) -> bool {
        let Some(wall) = dimension.or_else else { return false };
        let other = Dimension { wall, ..dimension.clone() };
        self.along_outside(&other, 0.0, size_pt)
    }

    /// Places a dimension outside along its wall, in the first free row at least `off_pt` away; returns whether there
    /// was room.
    fn along_outside(&mut self, dimension: &Dimension, off_pt: f64, size_pt: f64) -> bool {
        let out = dimension.wall.out;
        (0..ROWS).any(|row| self.along(dimension, out, off_pt + row_pt(row), size_pt))
    }

    /// The same at its wall, but not on the hatching of a space that stands there.
    fn along_in_clear(&mut self, dimension: &Dimension, size_pt: f64) -> bool {
        let (wall, out) = (dimension.wall, dimension.wall.out);
        (0..ROWS).any(|row| {
            let off = row_pt(row);
            !self.is_in_hatch(wall.from.plus(out, off), wall.to.plus(out, off))
                && self.along(dimension, out, off, size_pt)
        })
    }

    /// Places a dimension outside, beyond every corner in front of a horizontal or vertical wall (a porch, a wing, the
    /// end of a notch); returns whether there was room.
    fn beyond_all(&mut self, dimension: &Dimension, size_pt: f64) -> bool {
        let wall = &dimension.wall;
        if wall.out.x_pt.abs() > 1e-6 && wall.out.y_pt.abs() > 1e-6 {
            return false;
        }
        self.occupancy.count(self.corners.len());
        let along = wall.from.to(wall.to).unit();
        let in_front = self.corners.iter().map(|corner| wall.from.to(*corner)).filter(|way| {
            let at = way.dot(along);
            at > -2.0 && at < wall.length_pt() + 2.0
        });
        let off_pt = in_front.map(|way| way.dot(wall.out)).fold(0.0, f64::max);
        off_pt > 1.0 && self.along_outside(dimension, off_pt, size_pt)
    }

    /// Places a dimension line parallel to the wall at the distance `off`, with slashes at its ends and its text
    /// above it; returns whether there was room.
    fn along(&mut self, dimension: &Dimension, out: Point, off: f64, size_pt: f64) -> bool {
        self.along_with(dimension, out, off, size_pt, -2.0 * LINE_SHOWN_PT)
    }

    /// Places a dimension whose text is a little longer than its wall outside along it, clear of the ends of its line;
    /// returns whether there was room.
    fn along_wide(&mut self, dimension: &Dimension, size_pt: f64) -> bool {
        const WIDER_PT: f64 = 18.0;
        let (wall, out) = (dimension.wall, dimension.wall.out);
        (0..ROWS).any(|row| {
            let off = row_pt(row);
            !self.is_in_hatch(wall.from.plus(out, off), wall.to.plus(out, off))
                && self.along_with(dimension, out, off, size_pt, WIDER_PT)
        })
    }

    /// The same for a text that is at most so much longer than its wall, which is less than nothing where the line is to
    /// be seen at its ends.
    fn along_with(
        &mut self,
        dimension: &Dimension,
        out: Point,
        off: f64,
        size_pt: f64,
        longer_pt: f64,
    ) -> bool {
        let wall = &dimension.wall;
        let width = fonts::width_pt(dimension.hand, size_pt, &dimension.words);
        let room = (wall.length_pt() + longer_pt).min(1.7 * wall.length_pt());
        if wall.is_curved() || wall.length_pt() < 9.0 || width > room {
            return false;
        }
        // A longer text stands clear of the ends of the lines from the wall.
        let gap = if width > wall.length_pt() - 2.0 * LINE_SHOWN_PT { LONG_GAP_PT } else { GAP_PT };
        let (from, to) = (wall.from.plus(out, off), wall.to.plus(out, off));
        let turn = reading_turn(wall.from.to(wall.to));
        let radians = turn.to_radians();
        let down = Point::new(-libm::sin(radians), libm::cos(radians));
        let middle = from.middle(to).plus(out, gap + size_pt / 2.0);
        let text = Text {
            anchor: Anchor::Middle,
            turn,
            ..Text::new(middle.plus(down, HALF_DIGIT * size_pt), size_pt, dimension.words.clone())
        };
        let text = text.in_hand(dimension.hand);
        let witness = |end: Point| (end.plus(out, OFF_WALL_PT), end.plus(out, off + 2.5));
        let (first, last) = (witness(wall.from), witness(wall.to));
        let slash = wall.from.to(wall.to).unit().plus(out, 1.0).unit();
        let slashes = [from, to].map(|end| (end.plus(slash, -TICK_PT), end.plus(slash, TICK_PT)));
        let free = self.occupancy.has_room(&text.corners_if(width))
            && self.occupancy.is_clear(from, to)
            && self.occupancy.has_its_row(from, to)
            && slashes.iter().all(|(from, to)| self.occupancy.misses_labels(*from, *to))
            && self.occupancy.lets_out(first.0, first.1)
            && self.occupancy.lets_out(last.0, last.1);
        if !free {
            return false;
        }
        self.off_the_hatch(from, to, TICK_PT);
        self.occupancy.add_line(from, to, Sort::Dimension);
        self.dimensions.push(Stroke::line(from, to, 0.6).of_part(Part::Dimension));
        for (start, end) in [first, last] {
            self.occupancy.add_line(start, end, Sort::Witness);
            self.dimensions.push(Stroke::line(start, end, 0.5));
        }
        for (from, to) in slashes {
            self.occupancy.add_line(from, to, Sort::Tick);
            self.dimensions.push(Stroke::line(from, to, 0.9));
        }
        self.commit(text);
        true
    }

    /// Places a horizontal text near the wall, with a line from it to the wall; returns whether there was room.
    fn leader(&mut self, dimension: &Dimension, out: Point, size_pt: f64, over: Over) -> bool {
        let lengths = NEAR_PT.into_iter().chain(FAR_PT);
        self.leader_among(dimension, out, size_pt, over, lengths, &[])
    }

    /// The same with a short line and a label that stand on no hatching.
    fn leader_off_hatch(&mut self, dimension: &Dimension, out: Point, size_pt: f64) -> bool {
        self.leader_among(dimension, out, size_pt, Over::Nothing, NEAR_PT.into_iter(), &[])
    }

    /// The same with a longer line, where a short one would cross hatching.
    fn far_leader_off_hatch(&mut self, dimension: &Dimension, out: Point, size_pt: f64) -> bool {
        !self.hatched.is_empty()
            && self.leader_among(dimension, out, size_pt, Over::Nothing, FAR_PT.into_iter(), &[])
    }

    /// The same with a line of one of these lengths that crosses nothing but hatching.
    fn leader_of(
        &mut self,
        dimension: &Dimension,
        out: Point,
        size_pt: f64,
        lengths_pt: &[f64],
    ) -> bool {
        let lengths = lengths_pt.iter().copied();
        self.leader_among(dimension, out, size_pt, Over::Hatch, lengths, &[])
    }

    fn leader_among(
        &mut self,
        dimension: &Dimension,
        out: Point,
        size_pt: f64,
        over: Over,
        lengths_pt: impl Iterator<Item = f64>,
        off: &[&[Point]],
    ) -> bool {
        const TURNS: [f64; 11] =
            [0.0, 22.0, -22.0, 42.0, -42.0, 58.0, -58.0, 70.0, -70.0, 80.0, -80.0];
        let start = dimension.wall.middle().plus(out, 1.3);
        let worth_it = |_: &f64| !self.is_spent();
        let mut text = Text::new(start, size_pt, dimension.words.clone()).in_hand(dimension.hand);
        let width_pt = fonts::width_pt(text.hand, size_pt, &text.words);
        let placed = lengths_pt.take_while(worth_it).find_map(|length| {
            TURNS.into_iter().find_map(|turn| {
                let tip = start.plus(turned_by(out, turn), length);
                let clear = match over {
                    Over::Nothing | Over::Hatch => {
                        self.occupancy.is_clear(start, tip)
                            && self.occupancy.misses_ticks(start, tip)
                    }
                    Over::Lines => self.occupancy.lets_out(start, tip),
                };
                let is_off = |ground: &Ground| {
                    let mut hatched = self.hatched.iter();
                    over != Over::Nothing
                        || !self.crosses_hatch(start, tip)
                            && self.occupancy.meets_no_witness(start, tip)
                            && !hatched.any(|figure| lies_over(ground, figure))
                };
                if !clear {
                    return None;
                }
                // So that two labels are not read as one.
                const APART_PT: f64 = 4.0;
                put_at_tip(&mut text, start, tip);
                let ground = text.corners_if(width_pt);
                let free = self.occupancy.has_room(&ground)
                    && self.occupancy.is_alone(&ground, APART_PT)
                    && is_off(&ground)
                    && !off.iter().any(|figure| lies_over(&ground, figure));
                free.then_some(tip)
            })
        });
        let Some(tip) = placed else { return false };
        self.off_the_hatch(start, tip, LEADER_OFF_PT);
        self.occupancy.add_line(start, tip, Sort::Dimension);
        self.dimensions.push(Stroke::line(start, tip, 0.5));
        self.dimensions.push(Stroke::dot(start, 0.9));
        self.commit(text);
        true
    }

    /// Places the number of a wall at the end of a leader, outside or inside; returns whether there was room.
    pub(crate) fn number_led(&mut self, wall: &WallOnPage, number: usize) -> bool {
        let words = number.to_string();
        let dimension =
            Dimension { wall: *wall, or_else: None, words, hand: Typeface::Plain, mark: None };
        let ways = [wall.out, Point::default().plus(wall.out, -1.0)];
        let [over_hatch, over_lines] =
            [Over::Hatch, Over::Lines].map(|over| ways.into_iter().map(move |way| (way, over)));
        over_hatch
            .chain(over_lines)
            .any(|(way, over)| self.leader(&dimension, way, SIZES_PT[1], over))
    }

    /// Places a text beside a wall with a leader, outside its figure and outside those of `off`; returns whether there was
    /// room.
    pub(crate) fn beside(&mut self, dimension: &Dimension, off: &[&[Point]], over: Over) -> bool {
        let lengths = NEAR_PT.into_iter().chain(FAR_PT);
        let out = dimension.wall.out;
        self.leader_among(dimension, out, SIZES_PT[1], over, lengths, off)
    }

    /// Places a horizontal text near a spot, with a line from it to the spot that may cross anything but labels;
    /// returns whether there was room.
    pub(crate) fn pointer(&mut self, spot: Point, words: &str) -> bool {
        let up = Point::new(0.0, -1.0);
        let mut text = Text::new(spot, SIZES_PT[1], words);
        let width_pt = fonts::width_pt(text.hand, text.size_pt, words);
        let placed = (1..14_u32).take_while(|_| !self.is_spent()).find_map(|ring| {
            (0..24_u32).find_map(|k| {
                let tip = spot.plus(turned_by(up, 15.0 * f64::from(k)), 8.0 * f64::from(ring));
                if !self.occupancy.misses_labels(spot, tip) {
                    return None;
                }
                put_at_tip(&mut text, spot, tip);
                self.occupancy.has_room(&text.corners_if(width_pt)).then_some(tip)
            })
        });
        let Some(tip) = placed else { return false };
        self.occupancy.add_line(spot, tip, Sort::Dimension);
        self.dimensions.push(Stroke::line(spot, tip, 0.5));
        self.dimensions.push(Stroke::dot(spot, 0.9));
        self.commit(text);
        true
    }

    /// Places a block at the roomiest place inside a figure and outside its holes, using the first choice that
    /// fits, and returns its number.
    pub(crate) fn block(
        &mut self,
        figure: &[Point],
        holes: &[Vec<Point>],
        choices: &[Block],
    ) -> Option<usize> {
        if self.is_spent() {
            return None;
        }
        // A block larger than the figure would lie on one of its walls.
        let (low, high) = box_around(figure);
        let room = low.to(high);
        let may_fit = |size_pt: (f64, f64), upright: bool| {
            const HAIR_PT: f64 = 2.0;
            let (right, down) = if upright { (size_pt.1, size_pt.0) } else { size_pt };
            right <= room.x_pt + HAIR_PT && down <= room.y_pt + HAIR_PT
        };
        let mut spots: Option<Vec<Point>> = None;
        let sides = figure.len() + holes.iter().map(Vec::len).sum::<usize>();
        // Well off the walls if it can be, in smaller letters rather than wall to wall, and turned only if nothing else fits.
        let each = |upright: bool, off_pt: f64| {
            choices.iter().enumerate().map(move |(choice, block)| (upright, off_pt, choice, block))
        };
        let level = each(false, OFF_WALLS_PT).chain(each(false, 0.0));
        let turned = each(true, OFF_WALLS_PT).chain(each(true, 0.0));
        // A single letter is never turned.
        let turned = turned.filter(|(.., block)| !block.is_letter());
        for (upright, off_pt, choice, block) in level.chain(turned) {
            let size_pt = block.size_pt();
            if !may_fit(size_pt, upright) {
                continue;
            }
            let spots = spots.get_or_insert_with(|| {
                let spots = spots_inside(figure, holes);
                self.occupancy.count(spots.len() * sides);
                spots
            });
            let ground = |spot: Point| Block::ground(size_pt, spot, upright);
            let free = |spot: &&Point| {
                self.occupancy.has_room(&grown_by(&ground(**spot), (off_pt, off_pt)))
            };
            if let Some(&spot) = spots.iter().find(free) {
                self.clear_hatch(&ground(spot));
                for text in block.texts(spot, upright) {
                    self.set(text);
                }
                return Some(choice);
            }
        }
        None
    }
}

/// The area of a figure, doubled.
fn extent(figure: &[Point]) -> f64 {
    let next = figure.iter().cycle().skip(1);
    figure.iter().zip(next).map(|(from, &to)| from.cross(to)).sum::<f64>().abs()
}

/// A vector turned clockwise by `degrees`.
fn turned_by(vector: Point, degrees: f64) -> Point {
    let (sin, cos) = (libm::sin(degrees.to_radians()), libm::cos(degrees.to_radians()));
    Point::new(vector.x_pt * cos - vector.y_pt * sin, vector.x_pt * sin + vector.y_pt * cos)
}

/// Puts a horizontal text at the end of a leader.
fn put_at_tip(text: &mut Text, start: Point, tip: Point) {
    let way = start.to(tip).unit();
    let (anchor, right, down) = if way.x_pt > 0.35 {
        (Anchor::Start, 2.0, 0.26 * text.size_pt)
    } else if way.x_pt < -0.35 {
        (Anchor::End, -2.0, 0.26 * text.size_pt)
    } else if way.y_pt > 0.0 {
        (Anchor::Middle, 0.0, 0.76 * text.size_pt + 1.5)
    } else {
        (Anchor::Middle, 0.0, -0.24 * text.size_pt - 1.5)
    };
    text.at = Point::new(tip.x_pt + right, tip.y_pt + down);
    text.anchor = anchor;
}

/// The corners of the box around a figure with the lowest and the highest numbers.
fn box_around(figure: &[Point]) -> (Point, Point) {
    figure.iter().fold(
        (Point::new(f64::MAX, f64::MAX), Point::new(f64::MIN, f64::MIN)),
        |(low, high), spot| {
            (
                Point::new(low.x_pt.min(spot.x_pt), low.y_pt.min(spot.y_pt)),
                Point::new(high.x_pt.max(spot.x_pt), high.y_pt.max(spot.y_pt)),
            )
        },
    )
}

/// Grid points inside a figure and outside its holes, the roomiest first.
fn spots_inside(figure: &[Point], holes: &[Vec<Point>]) -> Vec<Point> {
    const NET: u32 = 28;
    let (low, high) = box_around(figure);
    let edges = |figure: &[Point]| -> Vec<(Point, Point)> {
        figure.iter().copied().zip(figure.iter().copied().cycle().skip(1)).collect()
    };
    let mut stretches = edges(figure);
    stretches.extend(holes.iter().flat_map(|hole| edges(hole)));
    // Of points with about the same room, the one nearest to the middle.
    let middle = low.middle(high);
    let mut spots: Vec<(f64, f64, Point)> = Vec::new();
    for row in 0..NET {
        for column in 0..NET {
            let share = |k: u32| (f64::from(k) + 0.5) / f64::from(NET);
            let spot = Point::new(
                low.x_pt + (high.x_pt - low.x_pt) * share(column),
                low.y_pt + (high.y_pt - low.y_pt) * share(row),
            );
            if is_inside(figure, spot) && !holes.iter().any(|hole| is_inside(hole, spot)) {
                let clearance = clearance_pt(&stretches, spot);
                let room = -(clearance.min(36.0) / 4.0).floor();
                spots.push((room, middle.to(spot).length(), spot));
            }
        }
    }
    spots.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    spots.into_iter().map(|(.., spot)| spot).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::compass::Direction;
    use crate::pages::drawing::view::{SCALES, Turned};

    fn canvas() -> Canvas {
        let turned = Turned { front: Direction::South };
        let view = View { turned, scale: SCALES[0], origin: Point::default() };
        Canvas::new(view, Point::new(0.0, 0.0), Point::new(200.0, 200.0))
    }

    fn square(low: f64, high: f64) -> Vec<Point> {
        [(low, low), (high, low), (high, high), (low, high)].map(|(x, y)| Point::new(x, y)).to_vec()
    }

    fn name() -> Block {
        Block { lines: vec![(Typeface::Plain, 8.0, "Garage".to_owned())] }
    }

    #[test]
    fn a_label_over_hatching_has_a_white_ground_that_is_larger() {
        for upright in [false, true] {
            let mut canvas = canvas();
            // A narrow space takes the name turned.
            let mut figure = square(50.0, 150.0);
            if upright {
                figure[1].x_pt = 64.0;
                figure[2].x_pt = 64.0;
            }
            canvas.hatch(figure.clone(), Vec::new());
            assert_eq!(canvas.block(&figure, &[], &[name()]), Some(0));
            let text = canvas.texts[0].corners();
            assert_eq!(canvas.whites.len(), 1);
            let white: Vec<Point> =
                canvas.whites[0].stretches().iter().map(|line| line.0).collect();
            for corner in text {
                assert!(is_inside(&white, corner), "{corner:?} is outside {white:?}");
            }
        }
        let mut plain = canvas();
        assert_eq!(plain.block(&square(50.0, 150.0), &[], &[name()]), Some(0));
        assert!(plain.whites.is_empty());
    }

    #[test]
    fn a_number_stands_in_a_space_inside_only_if_there_is_no_other_place() {
        let here = WallOnPage {
            from: Point::new(50.0, 150.0),
            to: Point::new(150.0, 150.0),
            out: Point::new(0.0, 1.0),
            rise_pt: 0.0,
            radius_pt: 0.0,
        };
        let figure = square(50.0, 150.0);
        let inner = vec![
            Point::new(50.0, 120.0),
            Point::new(150.0, 120.0),
            Point::new(150.0, 150.0),
            Point::new(50.0, 150.0),
        ];
        let mut free = canvas();
        assert!(free.number(&here, &figure, &[&figure], &[&inner], 3));
        let at = free.texts[0].corners()[0];
        assert!(!is_inside(&inner, at), "{at:?}");
        // With a label all along its outside, the number stands inside.
        let mut taken = canvas();
        let ground = [(45.0, 152.0), (155.0, 152.0), (155.0, 175.0), (45.0, 175.0)];
        taken.occupancy.add_ground(ground.map(|(x, y)| Point::new(x, y)));
        assert!(taken.number(&here, &figure, &[&figure], &[&inner], 3));
        let at = taken.texts[0].corners()[0];
        assert!(is_inside(&inner, at), "{at:?}");
    }

    #[test]
    fn the_length_of_a_wall_before_a_hatched_space_stands_on_the_other_side() {
        let wall = WallOnPage {
            from: Point::new(50.0, 100.0),
            to: Point::new(150.0, 100.0),
            out: Point::new(0.0, 1.0),
            rise_pt: 0.0,
            radius_pt: 0.0,
        };
        let dimension = || Dimension {
            wall,
            or_else: None,
            words: "31' 10\"".to_owned(),
            hand: Typeface::Plain,
            mark: None,
        };
        // A porch below the whole wall, down to the end of the paper.
        let porch = [(50.0, 100.0), (150.0, 100.0), (150.0, 200.0), (50.0, 200.0)];
        for is_hatched in [false, true] {
            let mut canvas = canvas();
            if is_hatched {
                canvas.hatch(porch.map(|(x, y)| Point::new(x, y)).to_vec(), Vec::new());
            }
            assert!(canvas.dimensions(vec![dimension()]).is_empty());
            assert_eq!(canvas.texts[0].at.y_pt < 100.0, is_hatched);
            assert!(canvas.whites.is_empty());
        }
    }

    /// A garage between two others has its length inside, along its wall, and no leader over the hatching.
    #[test]
    fn a_length_with_no_room_outside_stands_beside_its_wall_in_its_space() {
        let wall = WallOnPage {
            from: Point::new(50.0, 150.0),
            to: Point::new(50.0, 50.0),
            out: Point::new(-1.0, 0.0),
            rise_pt: 0.0,
            radius_pt: 0.0,
        };
        let words = "24' 4\"".to_owned();
        let dimension = Dimension { wall, or_else: None, words, hand: Typeface::Plain, mark: None };
        let mut canvas = canvas();
        canvas.hatch(square(50.0, 150.0), Vec::new());
        canvas.space(square(50.0, 150.0));
        // A neighbor before it.
        let ground = [(0.0, 40.0), (48.0, 40.0), (48.0, 160.0), (0.0, 160.0)];
        canvas.occupancy.add_ground(ground.map(|(x, y)| Point::new(x, y)));
        assert!(canvas.dimensions(vec![dimension]).is_empty());
        assert!(canvas.dimensions.is_empty(), "a line or a leader");
        let corners = canvas.texts[0].corners();
        assert!(corners.iter().all(|at| at.x_pt > 50.0 && at.x_pt < 65.0), "{corners:?}");
    }

    /// Beside a hatched space there is room further off: a longer leader that crosses no hatching is taken before a short one
    /// that does.
    #[test]
    fn a_leader_goes_around_hatching_where_there_is_room() {
        let wall = WallOnPage {
            from: Point::new(100.0, 100.0),
            to: Point::new(108.0, 100.0),
            out: Point::new(0.0, 1.0),
            rise_pt: 0.0,
            radius_pt: 0.0,
        };
        let words = "31' 10\"".to_owned();
        let dimension = Dimension { wall, or_else: None, words, hand: Typeface::Plain, mark: None };
        // Hatched on the left of what lies before the wall, from near it to the end of the paper.
        let porch = [(20.0, 104.0), (103.0, 104.0), (103.0, 200.0), (20.0, 200.0)];
        let porch = porch.map(|(x, y)| Point::new(x, y)).to_vec();
        let mut canvas = canvas();
        canvas.hatch(porch.clone(), Vec::new());
        assert!(canvas.dimensions(vec![dimension]).is_empty());
        let leader = canvas.dimensions[0].stretches()[0];
        assert!(!canvas.crosses_hatch(leader.0, leader.1), "{leader:?}");
        let text = canvas.texts[0].corners();
        assert!(!text.iter().any(|&corner| is_inside(&porch, corner)), "{text:?}");
    }
}
