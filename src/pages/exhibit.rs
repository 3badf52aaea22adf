//! The Exhibit: everything that matters, on one page.
//!
//! It has the statement, the likeliest cause, the request, who measured and how precisely, the drawing of the main level, the steps, and what
//! is possible. If it gets too full, long notes are shortened first, then letters get smaller; the statement, the
//! drawing, the steps and the request always stay.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::pages::abreast::Shown;
use crate::pages::blocks;
use crate::pages::blocks::Sizes;
use crate::pages::chart::chart;
use crate::pages::drawing::fit::Frame;
use crate::pages::drawing::marks::Marks;
use crate::pages::heard;
use crate::pages::layout::{EDGE_PT, Flow, OTHERS_PAGE, Stack};
use crate::pages::levels;
use crate::pages::levels::Drawn;
use crate::pages::page::Point;
use crate::reconcile::{Figure, Reconciliation};
use crate::wording::sentences::Sentences;
use crate::wording::{Block, map};

/// The width of the steps beside their chart, in points.
const STEPS_PT: f64 = 318.0;
/// The space between the steps and their chart, in points.
const BETWEEN_PT: f64 = 24.0;
/// The smallest height of the drawing before anything else gets smaller, in points.
const LEAST_DRAWING_PT: f64 = 280.0;

/// How much of the air around a drawing may go for a text that would be cut, in points.
const AIR_PT: f64 = 20.0;

/// The most walls of a house whose drawing is tried with several texts.
const MOST_TRIED: usize = 100;

fn walls_of(say: &Sentences<'_>) -> usize {
    say.house.spaces.iter().map(|space| space.sides.len()).sum()
}

/// The sections whose page the Exhibit names.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Referred {
    /// The drawings of further levels.
    pub(crate) levels: bool,
    /// The figures other than the first.
    pub(crate) others: bool,
}

/// What was left out of the Exhibit, for a later page.
#[derive(Clone, Debug, Default)]
pub(crate) struct Moved {
    /// Whether the steps or what is possible were cut.
    pub(crate) is_cut: bool,
    /// Notes on the drawing that did not fit.
    pub(crate) notes: Vec<String>,
    /// How the drawing of the main level turned out.
    pub(crate) drawing: Option<Drawn>,
}

/// Fills the Exhibit; returns what did not fit on it. `main` is the main level; `referred` says which sections have a page
/// that can be referred to.
pub(crate) fn exhibit(
    flow: &mut Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    marks: &Marks,
    main: Option<usize>,
    referred: Referred,
) -> Moved {
    let figure = reconciliation.figures().first();
    // What asks for nothing is for the owner, and gets no exhibit number.
    let is_handed_in = figure.is_none_or(|figure| say.asks_for_a_change(reconciliation, figure));
    let title = if is_handed_in { "Exhibit" } else { "Summary" };
    let begun = |flow: &mut Flow, told: &str| {
        flow.begin(title, told);
        if is_handed_in {
            flow.box_for_a_number();
        }
    };
    // How much room there is does not depend on what is heard.
    let mut blank = flow.clone();
    begun(&mut blank, "");
    let try_out =
        |shown: Option<Shown>| Tried::of(&blank, say, reconciliation, marks, shown, referred);
    let differs = figure.map(|figure| say.levels_of_the_difference(figure)).unwrap_or_default();
    let Tried { shown, parts, .. } = match (main, other_level(main, &differs)) {
        (Some(main), Some(other)) => {
            // The level that the difference is about, and the main one beside it if there is room for both.
            let one = if differs.contains(&main) { main } else { other };
            let one = try_out(Some(Shown::One(one)));
            let both = try_out(Some(Shown::Two(main.min(other), main.max(other))));
            let is_room = match (&both.drawn, &one.drawn) {
                (Some(both), Some(one)) => both.stands_for(one),
                _ => false,
            };
            if is_room { both } else { one }
        }
        _ => try_out(main.map(Shown::One)),
    };
    let levels = shown.map(Shown::levels).unwrap_or_default();
    begun(flow, &heard::exhibit(say, reconciliation, marks, &levels));
    let say = &say.on_the_page_of(shown.filter(|_| referred.levels).map(Shown::both));
    // The cause and what is asked for follow the headline, for the eye and the ear. A listener has the drawing after the reasons.
    let page_of = flow.pages.len();
    let begins = flow.passage_count();
    flow.pour(&parts.headline);
    flow.pour(&parts.asks);
    flow.pour(&parts.top);
    let drawing = flow.passage_count();
    let mut moved = Moved { is_cut: parts.is_cut, ..Moved::default() };
    if let Some(shown) = shown {
        match level_names(flow, say, marks, shown) {
            (name, Some((second, from_pt))) => flow.beside(&name, &second, from_pt),
            (name, None) => flow.pour(&name),
        }
        let height = (flow.room_pt() - parts.below_pt()).max(100.0);
        let drawn = levels::draw(flow, say, marks, shown, height, NOTES_MOST, f64::INFINITY);
        moved.notes = drawn.notes_left_out.clone();
        moved.drawing = Some(drawn);
    }
    let steps = flow.passage_count();
    if figure.is_some() {
        flow.beside(&parts.steps, &parts.chart, STEPS_PT + BETWEEN_PT);
    }
    flow.pour(&parts.reasons);
    let caution = flow.passage_count();
    flow.pour(&parts.caution);
    let ends = flow.passage_count();
    let order = [begins..drawing, steps..caution, drawing..steps, caution..ends];
    if flow.pages.len() == page_of {
        flow.read_in(begins, &order);
    }
    moved
}

/// The first level of these that is not the main one.
fn other_level(main: Option<usize>, differs: &[usize]) -> Option<usize> {
    differs.iter().copied().find(|&level| Some(level) != main)
}

/// The names of the levels above their drawings, for a house of several.
fn level_names(
    flow: &Flow,
    say: &Sentences<'_>,
    marks: &Marks,
    shown: Shown,
) -> (Stack, Option<(Stack, f64)>) {
    let frame = Frame::new(Point::new(EDGE_PT, 0.0), flow.width_pt(), 100.0);
    match say.house.levels.len() {
        0 | 1 => (Stack::new(flow.width_pt()), None),
        _ => shown.names(say, marks, frame),
    }
}

/// The texts of the page with the levels that are drawn on it, in the letters and the length that let the drawing be as
/// large as possible.
struct Tried {
    shown: Option<Shown>,
    parts: Parts,
    /// How the drawing turns out; `None` if there is none, or it takes long.
    drawn: Option<Drawn>,
}

impl Tried {
    fn of(
        flow: &Flow,
        say: &Sentences<'_>,
        reconciliation: &Reconciliation,
        marks: &Marks,
        shown: Option<Shown>,
        referred: Referred,
    ) -> Tried {
        let say = &say.on_the_page_of(shown.filter(|_| referred.levels).map(Shown::both));
        let steps = [Density::Long, Density::Short, Density::Small, Density::Least];
        let page_with = |density, limits, steps| {
            Parts::of(flow.width_pt(), say, reconciliation, (density, limits, steps), referred)
        };
        let page = |density, limits| page_with(density, limits, limits);
        let name_pt = shown.map_or(0.0, |shown| level_names(flow, say, marks, shown).0.height_pt());
        // Smaller letters are used only if the drawing would otherwise be small, or becomes larger by it.
        let room = |parts: &Parts| flow.room_pt() - parts.height_pt() - name_pt;
        let scale = |parts: &Parts| {
            shown.map(|shown| levels::largest(flow, say, marks, shown, room(parts) - 20.0))
        };
        let mut parts = page(Density::Full, Density::Full);
        let mut chosen = Density::Full;
        for density in steps {
            let smaller = page(density, density);
            let is_too_small = room(&parts) < LEAST_DRAWING_PT;
            let is_larger = density <= Density::Small && scale(&smaller) > scale(&parts);
            if shown.is_some() && (is_too_small || is_larger) {
                (parts, chosen) = (smaller, density);
            }
        }
        // The labels decide with the walls how large the drawing is, so it is drawn to see; not for a house of many walls,
        // where that takes long.
        let Some(level) = shown.filter(|_| walls_of(say) <= MOST_TRIED) else {
            return Tried { shown, parts, drawn: None };
        };
        let drawn = |parts: &Parts| {
            let left_top = Point::new(EDGE_PT, 0.0);
            let frame = Frame::new(left_top, flow.width_pt(), room(parts).max(100.0))
                .in_meters(say.draws_in_meters());
            levels::tried(say, marks, level, frame, NOTES_MOST)
        };
        let mut best = drawn(&parts);
        let smaller = steps.into_iter().filter(|step| *step <= Density::Small);
        for density in smaller {
            let other = page(density, density);
            if density > chosen && drawn(&other).is_better_than(&best) {
                (best, parts, chosen) = (drawn(&other), other, density);
            }
        }
        // In letters of that size, texts are cut no more than the drawing needs.
        let fuller = [Density::Full, Density::Long, Density::Short, Density::Small];
        let fits = |other: &Parts, parts: &Parts| {
            let is_large = room(other) >= LEAST_DRAWING_PT.min(room(parts)) - AIR_PT;
            is_large && !best.is_better_than(&drawn(other))
        };
        let mut limited = chosen;
        for limits in fuller.into_iter().take_while(|limits| parts.is_cut && *limits < chosen) {
            let other = page(chosen, limits);
            if fits(&other, &parts) {
                (parts, limited) = (other, limits);
                break;
            }
        }
        // Where there is room for the notes of the steps alone, they are whole.
        for steps in fuller.into_iter().take_while(|steps| parts.is_cut && *steps < limited) {
            let other = page_with(chosen, limited, steps);
            if fits(&other, &parts) {
                parts = other;
                break;
            }
        }
        Tried { shown, parts, drawn: Some(best) }
    }
}

/// The most lines of notes under the drawing.
const NOTES_MOST: usize = 4;

/// How much text there is, and how small.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Density {
    /// Everything in full.
    Full,
    /// Only what is very long is limited.
    Long,
    /// Every part limited to a few lines.
    Short,
    /// Every part limited to a few lines, in smaller letters.
    Small,
    /// The fewest lines possible.
    Least,
}

impl Density {
    /// The letter sizes, with the limits of another density.
    fn sizes(self, limits: Density) -> Sizes {
        let paragraph_pt = match self {
            Density::Full | Density::Long | Density::Short => 8.0,
            Density::Small => 7.4,
            Density::Least => 7.2,
        };
        let most_lines = match limits {
            Density::Full => None,
            Density::Long => Some(5),
            Density::Short => Some(3),
            Density::Small => Some(2),
            Density::Least => Some(1),
        };
        Sizes {
            paragraph_pt,
            row_pt: paragraph_pt + 0.2,
            note_pt: paragraph_pt - 0.6,
            table_pt: 7.5,
            most_lines,
        }
    }

    /// How many notes a step may have.
    fn notes(self) -> usize {
        match self {
            Density::Full => 8,
            Density::Long => 4,
            Density::Short => 3,
            Density::Small => 2,
            Density::Least => 1,
        }
    }

    /// The size of the statement, and the most lines it may take.
    fn statement(self) -> (f64, usize) {
        match self {
            Density::Full | Density::Long | Density::Short => (15.0, 4),
            Density::Small => (13.5, 4),
            Density::Least => (12.0, 4),
        }
    }
}

/// Everything on the page except the drawing, from top to bottom.
struct Parts {
    headline: Stack,
    asks: Stack,
    top: Stack,
    steps: Stack,
    chart: Stack,
    reasons: Stack,
    caution: Stack,
    is_cut: bool,
}

impl Parts {
    fn of(
        width_pt: f64,
        say: &Sentences<'_>,
        reconciliation: &Reconciliation,
        (density, limits, step_limits): (Density, Density, Density),
        referred: Referred,
    ) -> Parts {
        let figure = reconciliation.figures().first();
        let mut parts = Parts {
            headline: Stack::new(width_pt),
            top: Stack::new(width_pt),
            steps: Stack::new(STEPS_PT),
            chart: Stack::new(width_pt - STEPS_PT - BETWEEN_PT),
            reasons: Stack::new(width_pt),
            caution: Stack::new(width_pt),
            asks: Stack::new(width_pt),
            is_cut: false,
        };
        let sizes = density.sizes(limits);
        parts.opening(say, reconciliation, density, sizes, referred);
        if let Some(figure) = figure {
            let rows = parts.steps(say, figure, density.sizes(step_limits), step_limits.notes());
            let width_pt = width_pt - STEPS_PT - BETWEEN_PT;
            parts.chart = chart(figure, say, width_pt, &mut parts.steps, &rows);
            parts.possible(say, reconciliation, figure, sizes);
        }
        parts.caution.space(3.0);
        let caution = "Figures are computed from these lengths; that does not show that the lengths are right.";
        parts.caution.paragraph(6.8, caution);
        parts
    }

    fn below_pt(&self) -> f64 {
        let below = [&self.reasons, &self.caution];
        self.steps.height_pt().max(self.chart.height_pt())
            + below.into_iter().map(Stack::height_pt).sum::<f64>()
    }

    fn height_pt(&self) -> f64 {
        let above = [&self.headline, &self.asks, &self.top];
        above.into_iter().map(Stack::height_pt).sum::<f64>() + self.below_pt()
    }

    /// The statement, what follows from the figures alone, and who measured and how precisely.
    fn opening(
        &mut self,
        say: &Sentences<'_>,
        reconciliation: &Reconciliation,
        density: Density,
        sizes: Sizes,
        referred: Referred,
    ) {
        let (size_pt, most) = density.statement();
        // Other figures have a page of their own.
        let figures = &reconciliation.figures()[..reconciliation.figures().len().min(1)];
        for text in say.statements(figures) {
            self.is_cut |= self.headline.at_most(most, |headline| headline.title(size_pt, &text));
            self.headline.space(2.0);
        }
        let (smaller, unlikely) = say.warned_on_a_page(reconciliation.figures());
        if let Some(text) = unlikely {
            self.top.bold(sizes.paragraph_pt + 1.4, &text);
            self.top.space(2.0);
        }
        if let Some(text) = smaller {
            self.top.paragraph(sizes.paragraph_pt + 0.6, text);
        }
        for text in say.remarks(reconciliation) {
            self.is_cut |= blocks::one(&mut self.top, &Block::Paragraph(text), sizes);
        }
        let line = |stack: &mut Stack, text: &str| {
            stack.at_most(sizes.most_lines.unwrap_or(5).max(4), |stack| {
                stack.paragraph(sizes.paragraph_pt + 0.6, text);
            })
        };
        self.is_cut |= line(&mut self.top, &say.measured_line(figures));
        if !say.house.spaces.is_empty() {
            let levels = say.other_levels().unwrap_or_default();
            let others = referred.others.then(|| {
                let others = say.other_figures(reconciliation.figures());
                format!(" Other figures, page {OTHERS_PAGE}: {others}.")
            });
            let both = format!("{}{levels}{}", say.both_ways(figures), others.unwrap_or_default());
            self.is_cut |= line(&mut self.top, &both);
        }
        self.top.space(4.0);
    }

    /// The steps from measured area to figure; returns the middle of each row.
    fn steps(
        &mut self,
        say: &Sentences<'_>,
        figure: &Figure,
        sizes: Sizes,
        most_notes: usize,
    ) -> Vec<f64> {
        let title = say.steps_title(figure);
        self.steps.space(3.0);
        self.is_cut |= self.steps.at_most(2, |steps| steps.title(9.2, &title));
        // What is compared stands above the drawing.
        let same_way = say.taken_the_same_way(figure).map(Block::Note);
        let mut told = say.steps(figure);
        told.retain(|block| Some(block) != same_way.as_ref());
        let (is_cut, rows) = blocks::set_steps(&mut self.steps, &told, sizes, most_notes);
        self.is_cut |= is_cut;
        rows
    }

    /// The likeliest cause with the request, and what else is possible.
    fn possible(
        &mut self,
        say: &Sentences<'_>,
        reconciliation: &Reconciliation,
        figure: &Figure,
        sizes: Sizes,
    ) {
        self.reasons.space(3.0);
        let cause = say.cause_line(figure);
        for block in say.possible_below(figure) {
            self.is_cut |= blocks::one(&mut self.reasons, &block, sizes);
        }
        // What the record lists and was not found is a question apart from the request.
        let missing = say.missing(reconciliation).into_iter().take(2);
        for text in map::not_measured(say.house, reconciliation).into_iter().chain(missing) {
            self.is_cut |= blocks::one(&mut self.reasons, &Block::Paragraph(text), sizes);
        }
        // What is asked is not cut after its first line.
        let asked = Sizes { most_lines: sizes.most_lines.map(|most| most.max(3)), ..sizes };
        if let Some(cause) = cause {
            // Smaller than the request, since it may be as long.
            let size_pt = sizes.paragraph_pt + 0.6;
            self.is_cut |= self.asks.at_most(3, |asks| asks.title(size_pt, &cause));
        }
        // Whether the record agrees with its own lengths is a part of the cause.
        if let Some(own) = say.own_sketch(figure) {
            let agrees = figure
                .own_sketch()
                .is_some_and(|own| own.whole_sq_ft() == figure.area().whole_sq_ft());
            // That they do not agree can be checked on the record alone.
            self.is_cut |= match agrees {
                true => blocks::one(&mut self.asks, &Block::Paragraph(own), asked),
                false => {
                    let size_pt = sizes.paragraph_pt + 0.6;
                    self.asks.at_most(3, |asks| asks.title(size_pt, &own))
                }
            };
        }
        self.asks.space(2.0);
        let request = say.request(reconciliation, figure);
        self.is_cut |= self.asks.at_most(4, |asks| asks.title(9.2, &request));
        // A question in smaller letters, or without a heading of its own, is passed over.
        if let Some(besides) = say.asked_besides(reconciliation, figure) {
            self.is_cut |= self.asks.at_most(3, |asks| asks.title(9.2, &besides));
        }
        self.asks.space(3.0);
    }
}
