//! The names and areas of the spaces of a level: inside them, beside them, or below the drawing.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::house::Kind;
use crate::pages::drawing::canvas::{Block, Dimension, Over};
use crate::pages::drawing::shapes::{Plan, Shape};
use crate::pages::drawing::view::WallOnPage;
use crate::pages::fonts;
use crate::pages::fonts::Typeface;
use crate::pages::page::Point;
use crate::wording::sentences::whole;
use crate::wording::size::square_meters;

impl Plan<'_> {
    /// Places the name and areas of every space inside it; returns the shapes that are too small for that.
    pub(super) fn names(&mut self) -> Vec<usize> {
        let mut beside = Vec::new();
        let shapes = std::mem::take(&mut self.shapes);
        let all_say = self.all_say_not_counted(&shapes);
        for (i, shape) in shapes.iter().enumerate() {
            let house = self.say.house;
            let holes: Vec<Vec<Point>> = shapes
                .iter()
                .filter(|other| house.spaces[other.space].parent == Some(shape.space))
                .map(|other| other.figure.clone())
                .collect();
            let choices = self.name_choices(shape, all_say);
            match self.canvas.block(&shape.figure, &holes, &choices) {
                Some(choice) if choice < WITH_FEET && !self.has_feet(shape) => {}
                Some(choice) if choice < WITH_FEET => self.say_what_feet_are(),
                Some(_) => self.feet_in_the_key(shape),
                None => {
                    beside.push(i);
                    self.feet_in_the_key(shape);
                }
            }
        }
        self.shapes = shapes;
        beside
    }

    /// Places the names of these shapes beside them.
    pub(super) fn names_beside(&mut self, numbers: &[usize]) {
        let shapes = std::mem::take(&mut self.shapes);
        for &i in numbers {
            // What is beside the house is not named inside it.
            let is_other =
                |other: &&Shape| other.space != shapes[i].space && self.stands_beside(&shapes[i]);
            let off: Vec<&[Point]> =
                shapes.iter().filter(is_other).map(|other| other.figure.as_slice()).collect();
            self.name_outside(&shapes[i], &off);
        }
        self.shapes = shapes;
    }

    fn name(&mut self, shape: &Shape) -> String {
        let name = fonts::shown(&self.space(shape).name);
        let place = if self.marks.is_off_page { "on page 1" } else { "on this page" };
        if self.marks.counted.contains(&shape.space) {
            self.note(&format!(
                "▲: counted in the {}, and in the area compared with it",
                self.marks.whose
            ));
            format!("▲ {name}")
        } else if self.marks.would_count.contains(&shape.space) {
            self.note(&format!("△: could explain the {}, as said {place}", self.marks.whose));
            format!("△ {name}")
        } else if self.marks.near.contains(&shape.space) {
            self.note(&format!("△: named {place} as a possible part of what is left"));
            format!("△ {name}")
        } else {
            name
        }
    }

    /// The area of a space with each wall to the foot, or to the half foot where that is the rule of the figure:
    /// `whole feet: 1,760 sq ft`.
    fn feet(&self, shape: &Shape) -> String {
        match &self.marks.half_feet {
            Some(areas) => format!("half feet: {} sq ft", whole(areas[shape.space])),
            None => {
                let areas = &self.say.areas.spaces[shape.space];
                format!("whole feet: {} sq ft", whole(areas.net_whole_foot))
            }
        }
    }

    /// Whether the area of a space goes into a sum of the page: it is counted, or named as a possible part of the
    /// difference.
    fn is_summed(&self, shape: &Shape) -> bool {
        let marks = self.marks;
        crate::areas::is_in_total(self.say.house, shape.space, false)
            || [&marks.counted, &marks.would_count, &marks.near]
                .iter()
                .any(|spaces| spaces.contains(&shape.space))
    }

    /// Whether the area of a space to the foot is told too: of what goes into no sum, one area is enough.
    fn has_feet(&self, shape: &Shape) -> bool {
        self.is_summed(shape) || self.say.house.is_deducted(shape.space)
    }

    /// Says below the drawing what the area in whole feet is.
    fn say_what_feet_are(&mut self) {
        match (&self.marks.half_feet, self.say.is_metric() && self.marks.no_feet) {
            (_, true) => {}
            (Some(_), _) => {
                self.note("half feet: the area with each wall rounded to the half foot")
            }
            (None, _) => self.note("whole feet: the area with each wall rounded to the foot"),
        }
    }

    /// Says below the drawing what a space with no room for it has to the foot, if a sum has it: where it is counted, or
    /// named as a possible part of the difference.
    fn feet_in_the_key(&mut self, shape: &Shape) {
        let marks = self.marks;
        if self.is_summed(shape) && !marks.no_feet && !marks.whose.is_empty() {
            let name = fonts::shown(&self.space(shape).name);
            self.note(&format!("{name}, {}", self.feet(shape)));
            self.say_what_feet_are();
        }
    }

    /// Whether the hatching of a space says that it is not counted: the words beside its area say it again.
    fn goes_without_saying(&self, shape: &Shape) -> bool {
        !self.has_feet(shape) && self.say.kind_word(shape.space).contains(NOT_COUNTED)
    }

    /// Whether every space on the drawing that is not counted and has room for its name has room for these words too; where
    /// one has not, none has them, and the key says it of the hatching.
    fn all_say_not_counted(&self, shapes: &[Shape]) -> bool {
        const SIZE_PT: f64 = 6.3;
        const LINE_PT: f64 = 1.2 * SIZE_PT;
        const AIR_PT: f64 = 8.0;
        shapes.iter().filter(|shape| self.goes_without_saying(shape)).all(|shape| {
            let span = |along: fn(&Point) -> f64| {
                let (low, high) = shape
                    .figure
                    .iter()
                    .map(along)
                    .fold((f64::MAX, f64::MIN), |(low, high), at| (low.min(at), high.max(at)));
                high - low - AIR_PT
            };
            let (wide, high) = (span(|spot| spot.x_pt), span(|spot| spot.y_pt));
            let name = fonts::wrapped(Typeface::Bold, SIZE_PT, &self.space(shape).name, wide);
            let lines = name.iter().map(|_| LINE_PT).sum::<f64>() + LINE_PT;
            let words = fonts::width_pt(Typeface::Plain, SIZE_PT, NOT_COUNTED);
            lines > high || (words <= wide && lines + LINE_PT <= high)
        })
    }

    fn name_choices(&mut self, shape: &Shape, all_say: bool) -> Vec<Block> {
        let say = self.say;
        let areas = &say.areas.spaces[shape.space];
        let net = match self.say.house.deducted_from(shape.space).next() {
            Some(_) => {
                self.note("net: less what is deducted in it");
                " net"
            }
            None => "",
        };
        let sq_ft = whole(areas.net_tenth_foot);
        let feet = self.has_feet(shape).then(|| self.feet(shape));
        // The area in feet, and to the foot.
        let (fine, more) = match (self.say.is_metric(), self.marks.no_feet) {
            (true, true) => (square_meters(areas.net_tenth_foot), vec![format!("{sq_ft} sq ft")]),
            (true, false) => {
                let sq_ft = std::iter::once(format!("{sq_ft} sq ft"));
                (square_meters(areas.net_tenth_foot), sq_ft.chain(feet).collect())
            }
            (false, _) => (format!("{sq_ft} sq ft"), feet.into_iter().collect()),
        };
        let fine = format!("{fine}{net}");
        let kind = self.say.kind_word(shape.space);
        let name = self.name(shape);
        // In letters of one size, so that a program that extracts text keeps a name with its area.
        let block = |size: f64, wide: f64, lines: usize| {
            let bold = fonts::wrapped(Typeface::Bold, size, &name, wide);
            let most = bold.len().min(3);
            let mut all: Vec<(Typeface, f64, String)> = bold[..most]
                .iter()
                .enumerate()
                .map(|(i, line)| {
                    let cut = i + 1 == most && bold.len() > most;
                    (Typeface::Bold, size, if cut { format!("{line}…") } else { line.clone() })
                })
                .collect();
            all.push((Typeface::Plain, size, fine.clone()));
            if lines > 1 {
                all.extend(more.iter().map(|line| (Typeface::Plain, size, line.clone())));
            }
            if lines > 2 && !kind.is_empty() {
                all.push((Typeface::Plain, size, kind.clone()));
            }
            Block { lines: all }
        };
        // Beside spaces that are called not counted, one without the words would seem to count.
        if self.goes_without_saying(shape) {
            if !all_say {
                return vec![
                    block(8.5, 150.0, 2),
                    block(7.5, 110.0, 2),
                    block(6.8, 80.0, 2),
                    block(6.5, 70.0, 1),
                    block(6.3, 52.0, 1),
                ];
            }
            let short = |size: f64, wide: f64| {
                let mut block = block(size, wide, 1);
                block.lines.push((Typeface::Plain, size, NOT_COUNTED.to_owned()));
                block
            };
            return vec![
                block(8.5, 150.0, 3),
                block(7.5, 110.0, 3),
                short(7.5, 110.0),
                short(6.8, 80.0),
                short(6.3, 52.0),
                block(6.5, 70.0, 1),
                block(6.3, 52.0, 1),
            ];
        }
        // The first WITH_FEET of them have the area to the foot.
        vec![
            block(8.5, 150.0, 3),
            block(7.5, 110.0, 3),
            block(6.8, 80.0, 2),
            block(6.5, 70.0, 1),
            block(6.3, 52.0, 1),
        ]
    }

    /// Whether a space is not inside another one.
    fn stands_beside(&self, shape: &Shape) -> bool {
        self.space(shape).parent.is_none()
    }

    /// Places the name of a space beside it and outside the figures of `off`, if the space is too small.
    fn name_outside(&mut self, shape: &Shape, off: &[&[Point]]) {
        let areas = &self.say.areas.spaces[shape.space];
        let name = fonts::shortened(Typeface::Plain, 6.5, &self.name(shape), 90.0);
        let short = format!("{name}: {}", self.say.size(areas.net_tenth_foot));
        let words = format!("{short}{}", self.whether_counted(shape));
        let mut walls = shape.walls.clone();
        walls.sort_by(|a, b| b.length_pt().total_cmp(&a.length_pt()));
        let dimension = |wall: &WallOnPage, words: &str| Dimension {
            wall: *wall,
            or_else: None,
            words: words.to_owned(),
            hand: Typeface::Plain,
            mark: None,
        };
        let choices =
            [Over::Nothing, Over::Hatch].map(|over| [&words, &short].map(|text| (over, text)));
        let is_placed = choices.into_iter().flatten().any(|(over, text)| {
            walls.iter().any(|wall| self.canvas.beside(&dimension(wall, text), off, over))
        });
        if is_placed {
            return;
        }
        let alone = Block { lines: vec![(Typeface::Plain, 6.3, name)] };
        match self.canvas.block(&shape.figure, &[], &[alone]) {
            Some(_) => self.note(&words),
            None => self.left_out.push(self.name_left_out(shape, &words)),
        }
    }

    /// Whether a space that stands beside the house counts, or one inside it is deducted, to follow its area: `, not counted`.
    fn whether_counted(&self, shape: &Shape) -> &'static str {
        let here = self.space(shape);
        match here.parent {
            _ if self.say.house.is_deducted(shape.space) => ", deducted",
            None if !here.counted => ", not counted",
            Some(parent) if here.kind == Kind::Stair && self.say.house.spaces[parent].counted => {
                ", counted here"
            }
            _ => "",
        }
    }

    /// What is said below the drawing of a name that found no room: `the name in the box of 10' 9" by 3' 7", Stairs: 39 sq
    /// ft`, since the box itself is drawn.
    fn name_left_out(&self, shape: &Shape, words: &str) -> String {
        let outline = self.say.areas.spaces[shape.space].outside();
        let is_box = outline
            .vectors()
            .iter()
            .all(|wall| wall.rise == 0 && (wall.east == 0 || wall.north == 0));
        match outline.vectors() {
            [one, other, _, _] if is_box => {
                let [one, other] = [one, other].map(|wall| self.say.length(wall.chord_length()));
                format!("the name in the box of {one} by {other}, {words}")
            }
            _ => format!("the name {words}"),
        }
    }
}

/// What is said of a space that is in no total.
const NOT_COUNTED: &str = "not counted";

/// How many choices for the name of a space have its area to the foot.
const WITH_FEET: usize = 3;
