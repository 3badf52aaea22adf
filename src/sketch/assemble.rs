//! Assembles statements into a [`Sketch`]: decides what belongs to which space, and checks which statement may appear
//! where.

use std::sync::Arc;

use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::sketch::statement::*;
use crate::sketch::tree::*;
use crate::sketch::value_statement::{Valued, Values};
use crate::sketch::{MOST_SIDES, bay, parser, plain, tidy};
use crate::units::money::Currency;
use smol_str::SmolStr;

/// Words with which people begin the line of a level; the format itself knows only `level`.
const LEVEL_WORDS: [&str; 10] = [
    "attic",
    "basement",
    "cellar",
    "downstairs",
    "floor",
    "ground",
    "storey",
    "story",
    "upper",
    "upstairs",
];

/// What the next sides belong to.
#[derive(Clone, Copy, Default, PartialEq)]
enum Open {
    #[default]
    Nothing,
    /// The last space of the last level.
    Space,
    Lot,
    Outline,
    /// A space whose own line could not be read. Its sides are read but belong to nothing.
    Doubtful,
}

/// The result of reading one line.
pub(crate) struct ReadLine {
    pub(crate) statement: Option<Statement>,
    pub(crate) comment: Option<String>,
    /// The line from its first word to its last.
    pub(crate) span: Span,
    /// The line as typed, without the words after a side.
    pub(crate) typed: SmolStr,
    /// Whether an error was reported, so that there is no statement.
    pub(crate) faulty: bool,
    /// The first two words of a faulty line, where they can be read.
    pub(crate) begins: [String; 2],
    /// Whether a line that begins a space is offered for a faulty one.
    pub(crate) offers_space: bool,
}

impl ReadLine {
    /// A line without a statement.
    pub(crate) fn empty(span: Span) -> ReadLine {
        ReadLine {
            statement: None,
            comment: None,
            span,
            typed: SmolStr::default(),
            faulty: false,
            begins: Default::default(),
            offers_space: false,
        }
    }
}

/// Builds a [`Sketch`] line by line.
#[derive(Default)]
pub(crate) struct Assembler {
    pub(crate) sketch: Sketch,
    open: Open,
    /// The sides of what is open.
    sides: Sides,
    seen: Seen,
    keeps_lines: bool,
}

/// Which of the statements that are allowed only once were made, and where.
#[derive(Default)]
struct Seen(Vec<(String, Span)>);

impl Seen {
    /// Records `what` as stated at `span`; returns where it was stated before, if it was.
    fn before(&mut self, what: &str, span: Span) -> Option<Span> {
        let before = self.0.iter().find(|(said, _)| said == what).map(|(_, span)| *span);
        self.0.push((what.to_owned(), span));
        before
    }
}

impl Assembler {
    /// An assembler that keeps the lines too, about `count` of them.
    pub(crate) fn with_lines(count: usize) -> Assembler {
        let mut assembler = Assembler { keeps_lines: true, ..Assembler::default() };
        assembler.sketch.lines.reserve(count);
        assembler
    }

    /// Adds the side that is the first of these lines, which begin at byte `offset` of the text, and returns how many
    /// bytes its line has. `None` if that line is not only a side, or if it belongs to no walk or needs a diagnostic; then
    /// nothing was added.
    #[inline(always)]
    pub(crate) fn plain_side(&mut self, lines: &str, offset: usize) -> Option<usize> {
        let is_walk = matches!(self.open, Open::Space | Open::Lot | Open::Outline);
        let Sides { list, has_others } = &mut self.sides;
        let is_last = list.last().is_some_and(|last| matches!(last.run, Run::Close));
        if !is_walk || is_last || list.len() == MOST_SIDES {
            return None;
        }
        let bytes = plain::side(lines, offset, list)?;
        let side = list.last()?;
        *has_others |= !side.words.are_none();
        if self.keeps_lines {
            let statement = Statement::Side(side.run.clone(), side.words.clone());
            self.keep(Some(statement), None);
        }
        Some(bytes)
    }

    /// Adds a line that is only this statement, which is no side.
    pub(crate) fn only(&mut self, statement: Statement, span: Span, faults: &mut Vec<Diagnostic>) {
        if self.keeps_lines {
            self.keep(Some(statement.clone()), None);
        }
        self.statement(statement, (span, SmolStr::default()), faults);
    }

    /// Adds one line.
    pub(crate) fn line(&mut self, read: ReadLine, faults: &mut Vec<Diagnostic>) {
        if read.faulty {
            if read.offers_space && self.sketch.levels.is_empty() {
                self.assume_a_level("this space", read.span, faults);
            }
            self.doubt(&read.begins);
        }
        let kept = if self.keeps_lines { read.statement.clone() } else { None };
        let says_garage = read.comment.as_deref().is_some_and(names_a_garage);
        if matches!(&read.statement, Some(Statement::Side(..)) if says_garage)
            && let Some(walk) = walk_of(self.open, &mut self.sketch)
        {
            walk.garage_comments += 1;
        }
        if let Some(statement) = read.statement {
            self.statement(statement, (read.span, read.typed), faults);
        }
        self.keep(kept, read.comment);
    }

    fn keep(&mut self, statement: Option<Statement>, comment: Option<String>) {
        if self.keeps_lines {
            self.sketch.lines.push(Line { statement, comment });
        }
    }

    /// Finishes the sketch. Reports spaces and outlines without sides.
    pub(crate) fn finish(&mut self, faults: &mut Vec<Diagnostic>) {
        self.open(Open::Nothing);
        let sketch = &mut self.sketch;
        if !sketch.values.is_empty() {
            sketch.values.in_one_currency();
        }
        for walk in walks_mut(sketch) {
            bay::turn_outward(walk);
        }
        for level in &mut sketch.levels {
            let is_level =
                |space: &SpaceSketch| space.walk.sides.is_empty() && is_level(&space.space);
            // The spaces after it were typed as if on another level.
            level.doubtful |= level.spaces.iter().any(is_level);
        }
        for (walk, name, span) in walks(sketch) {
            let is_lot = sketch.lots.iter().any(|lot| lot.span == span);
            tell_size((walk, name, span), is_lot, faults);
        }
        let nothing =
            sketch.levels.iter().all(|level| level.spaces.is_empty()) && sketch.lots.is_empty();
        if nothing && faults.is_empty() {
            faults.push(
                Diagnostic::new(Word::NothingMeasured, Span::default(), "there is no space with sides in this file")
                    .help("begin with `level \"Ground floor\"`, under it `living \"House\"`, under that the sides: `north 42' 7\"`")
                    .help("`fairfoot new my-house` writes a file to start from"),
            );
        }
    }

    /// Marks what depends on an unreadable line as doubtful, so that no further errors are reported about it.
    fn doubt(&mut self, begins: &[String; 2]) {
        let first = match parser::first_word_meant(&begins[0]) {
            Some(meant) => meant,
            None => begins[0].as_str(),
        };
        let begins = [first, begins[1].as_str()];
        match begins {
            // A level that is offered with its first space.
            ["level", next] if Kind::ALL.iter().any(|kind| kind.word() == next) => {
                self.open_doubtful_level();
                self.open(Open::Doubtful);
                return;
            }
            ["level", _] => return self.open_doubtful_level(),
            [word, next]
                if LEVEL_WORDS.contains(&word)
                    || crate::sketch::phrases::opens_level(word, next) =>
            {
                return self.open_doubtful_level();
            }
            ["lot", _] | ["record" | "plan" | "map", "outline"] => {
                self.sketch.names_doubtful = true;
                self.open(Open::Doubtful);
                return;
            }
            ["missing", _] => self.sketch.names_doubtful = true,
            ["tolerance" | "units" | "faces" | "veneer" | "wall", _] => {
                self.sketch.heads_doubtful = true;
            }
            [word, next]
                if Kind::ALL.iter().any(|kind| kind.word() == word)
                    || crate::sketch::phrases::opens_space(word, next) =>
            {
                self.sketch.names_doubtful = true;
                self.open(Open::Doubtful);
            }
            _ => {}
        }
        if let Some(walk) = walk_of(self.open, &mut self.sketch) {
            walk.doubtful = true;
        }
        if let Some(level) = self.sketch.levels.last_mut() {
            level.doubtful = true;
        }
    }

    /// Opens a level whose own line could not be read. Its spaces are read, but nothing is reported about their
    /// position.
    fn open_doubtful_level(&mut self) {
        self.open(Open::Nothing);
        let name = Named { text: String::new(), span: Span::default() };
        let level = LevelStatement { name, below_grade: false, beside: false };
        self.sketch.levels.push(LevelSketch { level, spaces: Vec::new(), doubtful: true });
    }

    /// Gives the walk that was open its sides, and opens something else.
    fn open(&mut self, open: Open) {
        if let Some(walk) = walk_of(self.open, &mut self.sketch) {
            let Sides { list, has_others } = std::mem::take(&mut self.sides);
            (walk.sides, walk.is_plain) = (Arc::new(list), !has_others);
        }
        self.open = open;
    }

    fn statement(
        &mut self,
        statement: Statement,
        (span, typed): (Span, SmolStr),
        faults: &mut Vec<Diagnostic>,
    ) {
        match statement {
            Statement::Head(head) => self.head(*head, span, faults),
            Statement::Figure(figure) => self.figure(*figure, span, faults),
            Statement::Missing(missing) => self.sketch.missing.push(*missing),
            Statement::Level(level) => {
                self.open(Open::Nothing);
                let level = LevelSketch { level, spaces: Vec::new(), doubtful: false };
                push(&mut self.sketch.levels, level);
            }
            Statement::Space(space) => self.space(*space, span, faults),
            Statement::Valued(valued) => self.valued(*valued, span, faults),
            Statement::Lot(lot) => {
                self.open(Open::Lot);
                let space = lot_statement(*lot);
                self.sketch.lots.push(SpaceSketch { space, span, walk: WalkSketch::default() });
            }
            Statement::Outline(outline) => {
                self.open(Open::Outline);
                let OutlineStatement { drawn, name, of } = *outline;
                let walk = WalkSketch::default();
                self.sketch.outlines.push(OutlineSketch { drawn, name, of, span, walk });
            }
            walked => self.walked(walked, (span, typed), faults),
        }
    }

    fn head(&mut self, head: Head, span: Span, faults: &mut Vec<Diagnostic>) {
        let word = head.word();
        let begun = !self.sketch.levels.is_empty()
            || !self.sketch.lots.is_empty()
            || !self.sketch.outlines.is_empty();
        if begun && matches!(head, Head::Units(_)) && self.sketch.heads.units.is_some() {
            faults.push(
                Diagnostic::new(
                    Word::OutOfPlace,
                    span,
                    "`units` is said once, at the top, for the whole file",
                )
                .help("take this line out, and type the mark of the unit after each length that is in another one: `bearing N 12° 30' E 120'` in feet, `120 m` in meters"),
            );
            return;
        }
        if begun {
            let fault = Diagnostic::new(
                Word::OutOfPlace,
                span,
                format!("`{word}` stands after the first level"),
            )
            .help("move this line to the top of the file, before the first `level`");
            // What the top says already may be another one on this level.
            let is_of_a_level = matches!(head, Head::Veneer(_));
            faults.push(match is_of_a_level {
                true => fault.help("if it holds for this level alone, leave this line out and write the same words after the name of each space of the level"),
                false => fault,
            });
            return;
        }
        if let Some(before) = self.seen.before(word, span) {
            faults.push(
                Diagnostic::new(Word::StatedTwice, span, format!("`{word}` is said twice"))
                    .also(before, "first said here")
                    .help("keep the line that is right, take the other out"),
            );
            return;
        }
        if matches!(head, Head::Tolerance(_)) {
            self.sketch.heads.tolerance_span = span;
        }
        if matches!(head, Head::TaxYear(_)) {
            self.sketch.heads.tax_year_span = span;
        }
        self.sketch.heads.set(head);
    }

    fn figure(&mut self, figure: FigureStatement, span: Span, faults: &mut Vec<Diagnostic>) {
        let same = |other: &&FigureSketch| other.figure.kind == figure.kind;
        if let Some(before) = self.sketch.figures.iter().find(same) {
            let name = figure.title.as_deref().unwrap_or(match figure.kind {
                FigureKind::Listing => "Another listing",
                FigureKind::Plan => "Another plan",
                _ => "Another record",
            });
            let fault = Diagnostic::new(Word::FigureTwice, span, "this figure is given twice")
                .also(before.span, "first given here");
            faults.push(fault.help(if before.figure == figure {
                "take this line out".to_owned()
            } else {
                format!(
                    "keep one, or give the other a name of its own: `figure \"{name}\" {}`",
                    figure.area
                )
            }));
            return;
        }
        push(&mut self.sketch.figures, FigureSketch { figure, span });
    }

    /// Statements about values may appear anywhere, since they change the meaning of no other line.
    fn valued(&mut self, valued: Valued, span: Span, faults: &mut Vec<Diagnostic>) {
        let said = valued.said();
        if let Some(fault) = self.other_currency(&valued, span) {
            faults.push(fault);
            return;
        }
        let together = match (&valued, &self.sketch.values.value) {
            (Valued::Value(second), Some(first)) => first.together(second),
            _ => None,
        };
        match self.seen.before(&said, span) {
            None => self.sketch.values.set(valued, span),
            Some(before) if together.is_some() => {
                let both = together.unwrap_or_default();
                faults.push(
                    Diagnostic::new(
                        Word::StatedTwice,
                        span,
                        "the values of the notice stand on one line",
                    )
                    .also(before, "the others stand here")
                    .help(format!("write `{both}` instead of the two lines")),
                );
            }
            Some(before) => faults.push(
                Diagnostic::new(
                    Word::StatedTwice,
                    span,
                    format!("{} is said twice", quoted(&said)),
                )
                .also(before, "first said here")
                .help("keep the line that is right, take the other out"),
            ),
        }
    }

    /// An error if a statement has an amount in another currency than the amounts before it.
    fn other_currency(&self, valued: &Valued, span: Span) -> Option<Diagnostic> {
        let mut alone = Values::default();
        alone.set(valued.clone(), span);
        let before = self.sketch.values.typed_signs();
        let all = before.into_iter().chain(alone.typed_signs()).map(Currency::sign);
        let first = all.clone().next()?;
        let other = all.into_iter().find(|sign| *sign != first)?;
        let message = format!("this sum has {other}, another one {first}");
        Some(
            Diagnostic::new(Word::BadMoney, span, message)
                .help("write all sums of a file in one currency: nothing is converted"),
        )
    }

    fn space(&mut self, space: SpaceStatement, span: Span, faults: &mut Vec<Diagnostic>) {
        if self.sketch.levels.is_empty() {
            self.assume_a_level(&quoted(&space.name.text), span, faults);
        }
        self.open(Open::Space);
        let Some(level) = self.sketch.levels.last_mut() else { return };
        push(&mut level.spaces, SpaceSketch { space, span, walk: WalkSketch::default() });
    }

    /// Reports that a space is on no level, and goes on as if the line that is then typed stood there: the rest of the
    /// file is checked with it.
    fn assume_a_level(&mut self, space: &str, span: Span, faults: &mut Vec<Diagnostic>) {
        faults.push(
            Diagnostic::new(Word::OutOfPlace, span, format!("{space} is on no level"))
                .help("put `level \"Ground floor\"` on a line before it; if a line above is a space too, before that one")
                .fix(Span::new(span.start, span.start), "level \"Ground floor\"\n"),
        );
        let name = Named { text: "Ground floor".to_owned(), span: Span::default() };
        let level = LevelStatement { name, below_grade: false, beside: false };
        self.sketch.levels.push(LevelSketch { level, spaces: Vec::new(), doubtful: false });
    }

    fn walked(
        &mut self,
        statement: Statement,
        (span, typed): (Span, SmolStr),
        faults: &mut Vec<Diagnostic>,
    ) {
        if self.open == Open::Doubtful {
            return;
        }
        let faults_before = faults.len();
        let Some(walk) = walk_of(self.open, &mut self.sketch) else {
            faults.push(
                Diagnostic::new(Word::OutOfPlace, span, "this belongs to no space").help(
                    "put the name of the space on a line before its sides: `living \"House\"`",
                ),
            );
            self.open(Open::Doubtful);
            return;
        };
        match statement {
            Statement::Side(run, words) => {
                self.sides.add((run, words, typed), span, faults);
            }
            Statement::Bay(bay, words) => {
                walk.bays.push(self.sides.add_bay(&bay, &words, span, faults));
            }
            Statement::Corner(name) => {
                let after = self.sides.list.len();
                walk.corners.push(CornerSketch { name, after });
            }
            Statement::Overall(direction, length) => {
                walk.overalls.push((direction, length, span));
            }
            Statement::Tie(from, to, length) => {
                walk.ties.push((from, to, length, span));
            }
            _ => {}
        }
        walk.doubtful |= faults.len() > faults_before;
    }
}

/// Adds to a list that few files have more than two of. A new list takes room for four, which is more than what is
/// handed out quickly.
fn push<T>(list: &mut Vec<T>, one: T) {
    if list.is_empty() {
        list.reserve_exact(2);
    }
    list.push(one);
}

/// The walk that sides are added to, if one is open.
fn walk_of(open: Open, sketch: &mut Sketch) -> Option<&mut WalkSketch> {
    match open {
        Open::Space => sketch.levels.last_mut()?.spaces.last_mut().map(|space| &mut space.walk),
        Open::Lot => sketch.lots.last_mut().map(|lot| &mut lot.walk),
        Open::Outline => sketch.outlines.last_mut().map(|outline| &mut outline.walk),
        Open::Nothing | Open::Doubtful => None,
    }
}

/// The sides of the walk that is open, until it ends.
#[derive(Default)]
struct Sides {
    list: Vec<Side>,
    /// Whether any is more than a direction and a length that was read at once.
    has_others: bool,
}

impl Sides {
    /// Adds the sides that a bay stands for. The bay's photo and note go to its front.
    fn add_bay(
        &mut self,
        bay: &Bay,
        words: &SideWords,
        span: Span,
        faults: &mut Vec<Diagnostic>,
    ) -> BaySketch {
        let first = self.list.len();
        let runs = bay::sides(bay, bay.direction.left());
        let front = runs.len().div_euclid(2);
        for (i, run) in runs.into_iter().enumerate() {
            let mut said = Said::clone(words);
            if i != front {
                said.photo = None;
                said.photo_file = None;
                said.note = None;
            }
            let typed = tidy::run_written(&run).into();
            self.add((run, said.into(), typed), span, faults);
        }
        BaySketch { bay: *bay, first }
    }

    fn add(
        &mut self,
        (run, words, typed): (Run, SideWords, SmolStr),
        span: Span,
        faults: &mut Vec<Diagnostic>,
    ) {
        if let Some(last) = self.list.last().filter(|last| matches!(last.run, Run::Close)) {
            faults.push(
                Diagnostic::new(
                    Word::CloseNotLast,
                    last.span,
                    "`close` is not the last side of its outline",
                )
                .also(span, "a side after it")
                .help("move `close` to the end, or give this side `by closing`"),
            );
        }
        if self.list.len() == MOST_SIDES {
            faults.push(
                Diagnostic::new(Word::TooManySides, span, "this outline has more than 1,000 sides")
                    .help("is a line with the name of the next space missing?"),
            );
        }
        self.has_others = true;
        self.list.push(Side::new(self.list.len(), run, words, span, typed));
    }
}

impl Heads {
    fn set(&mut self, head: Head) {
        match head {
            Head::Line(HeadLine::Property, text) => self.property = Some(text),
            Head::Line(HeadLine::Address, text) => self.address = Some(text),
            Head::Line(HeadLine::Account, text) => self.account = Some(text),
            Head::Line(HeadLine::Case, text) => self.case = Some(text),
            Head::TaxYear(year) => self.tax_year = Some(year),
            Head::Measured(measured) => self.measured = Some(measured),
            Head::Tolerance(length) => self.tolerance = Some(length),
            Head::Interior(seen) => self.interior_seen = Some(seen),
            Head::Units(units) => self.units = Some(units),
            Head::Faces(face) => self.faces = Some(face),
            Head::Front(direction) => self.front = Some(direction),
            Head::TrueNorth(bearing) => self.true_north = Some(bearing),
            Head::Veneer(thickness) => self.veneer = Some(thickness),
            Head::Wall(length) => self.wall = Some(length),
        }
    }
}

fn lot_statement(lot: LotStatement) -> SpaceStatement {
    SpaceStatement {
        kind: Kind::Court,
        name: lot.name,
        face: None,
        within: None,
        place: Place::Origin,
        detached: false,
        under: None,
        veneer: None,
        counted: Some(false),
        recorded: lot.recorded,
    }
}

/// Every walk of the sketch with its name and the span of its first line.
fn walks(sketch: &Sketch) -> impl Iterator<Item = (&WalkSketch, &str, Span)> {
    let spaces = sketch.levels.iter().flat_map(|level| &level.spaces).chain(&sketch.lots);
    let spaces = spaces.map(|space| (&space.walk, space.space.name.text.as_str(), space.span));
    let outlines = sketch.outlines.iter();
    spaces.chain(outlines.map(|outline| (&outline.walk, outline.name.text.as_str(), outline.span)))
}

fn walks_mut(sketch: &mut Sketch) -> impl Iterator<Item = &mut WalkSketch> {
    let spaces = sketch.levels.iter_mut().flat_map(|level| &mut level.spaces);
    let spaces = spaces.chain(&mut sketch.lots).map(|space| &mut space.walk);
    spaces.chain(sketch.outlines.iter_mut().map(|outline| &mut outline.walk))
}

/// Whether a living space is named like a level: `living "Upper floor"`.
fn is_level(space: &SpaceStatement) -> bool {
    space.kind == Kind::Living && names_a_level(&space.name.text)
}

/// Whether a remark about a wall says that it is of a garage.
pub(crate) fn names_a_garage(remark: &str) -> bool {
    let mut words = remark.split(|c: char| !c.is_alphanumeric());
    words.any(|word| word.eq_ignore_ascii_case("garage") || word.eq_ignore_ascii_case("gar"))
}

fn names_a_level(name: &str) -> bool {
    let name = name.to_lowercase();
    let mut parts = name.split(|c: char| !c.is_alphanumeric());
    parts.any(|part| LEVEL_WORDS.contains(&part) || part == "level")
}

fn tell_size(
    (walk, name, span): (&WalkSketch, &str, Span),
    is_lot: bool,
    faults: &mut Vec<Diagnostic>,
) {
    if walk.doubtful {
        return;
    }
    if walk.sides.is_empty() {
        let fault = Diagnostic::new(Word::NoSides, span, format!("{} has no sides", quoted(name)));
        let fault = match names_a_level(name) {
            true => fault.help(format!("is it a level? Then it is `level \"{name}\"`")),
            false => fault,
        };
        let fault = fault.help("walk round it and type each side on a line below: `north 42' 7\"`");
        faults.push(match is_lot {
            true => fault.help("without its sides or calls nothing of it can be drawn: then put its line after a `#`"),
            false => fault,
        });
    }
}
