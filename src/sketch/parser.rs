//! The parser: one function per statement, from tokens to a [`Statement`].

use crate::diagnostic::{Diagnostic, Span, Word};
use crate::geometry::compass::Direction;
use crate::sketch::cursor::{Cursor, Expected, Read};
use crate::sketch::lexer::Token;
use crate::sketch::statement::*;
use crate::sketch::value_parser;
use crate::units::area::WrittenArea;
use crate::units::length::{Length, Step, WrittenLength};

const DIRECTIONS: [&str; 12] =
    ["north", "east", "south", "west", "n", "e", "s", "w", "back", "right", "front", "left"];
const STREET: &str = "the street side";
const FACES: [&str; 3] = ["outside", "frame", "inside"];

/// Every word that can begin a line, most frequent first.
pub(super) const FIRST_WORDS: [&str; 63] = [
    "north",
    "east",
    "south",
    "west",
    "n",
    "e",
    "s",
    "w",
    "property",
    "address",
    "account",
    "case",
    "tax",
    "measured",
    "tolerance",
    "interior",
    "units",
    "faces",
    "front",
    "true",
    "veneer",
    "wall",
    "record",
    "listing",
    "plan",
    "figure",
    "missing",
    "level",
    "lot",
    "living",
    "unfinished",
    "garage",
    "carport",
    "porch",
    "patio",
    "deck",
    "balcony",
    "breezeway",
    "storage",
    "outbuilding",
    "open",
    "low",
    "stair",
    "court",
    "diagonal",
    "bearing",
    "arc",
    "bay",
    "back",
    "right",
    "left",
    "map",
    "close",
    "corner",
    "overall",
    "tie",
    "value",
    "last",
    "exemption",
    "homestead",
    "notice",
    "place",
    "comparable",
];

/// Whether a line can begin with this word.
pub(super) fn is_a_first_word(word: &str) -> bool {
    FIRST_WORDS.contains(&word)
}

/// Whether a line that begins with this word is a side.
pub(super) fn begins_a_side(word: &str) -> bool {
    DIRECTIONS.contains(&word) || ["diagonal", "bearing", "arc", "bay", "close"].contains(&word)
}

/// The words allowed after a side.
pub(super) const SIDE_WORDS: [&str; 9] =
    ["recorded", "tolerance", "estimated", "from", "common", "veneer", "wall", "photo", "note"];

/// The word a line was most likely meant to begin with; `None` if none is close.
pub(crate) fn first_word_meant(typed: &str) -> Option<&'static str> {
    let exact = FIRST_WORDS.iter().find(|word| **word == typed).copied();
    // `start` is a word of its own, and no `stair`.
    let is_other = ["start", "starts", "starting"].contains(&typed);
    exact.or_else(|| crate::diagnostic::words::nearest(typed, &FIRST_WORDS).filter(|_| !is_other))
}

impl Cursor<'_> {
    /// Parses the statement of this line; anything left over is an error.
    pub(crate) fn statement(&mut self) -> Read<Statement> {
        let statement = self.statement_body()?;
        self.expect_end()?;
        Ok(statement)
    }

    fn statement_body(&mut self) -> Read<Statement> {
        let start = self.span();
        let Some(word) = self.keyword(&FIRST_WORDS) else {
            return self.not_a_statement();
        };
        match word {
            "property" => self.head_line(HeadLine::Property),
            "address" => self.head_line(HeadLine::Address),
            "account" => self.head_line(HeadLine::Account),
            "case" => self.head_line(HeadLine::Case),
            "record" if self.accept_word(&["outline"]) => {
                self.drawn_outline(ReferenceSource::Record)
            }
            "plan" if self.accept_word(&["outline"]) => self.drawn_outline(ReferenceSource::Plan),
            "map" => {
                self.expect_keyword(&["outline"], "after `map`")?;
                self.drawn_outline(ReferenceSource::Map)
            }
            "front" if self.is_side_of_front() => {
                let direction = self.street_direction("front", start)?;
                self.straight(direction)
            }
            "back" | "right" | "left" => {
                let direction = self.street_direction(word, start)?;
                self.straight(direction)
            }
            "bay" => self.bay(),
            "record" => self.figure(FigureKind::Record),
            "listing" => self.figure(FigureKind::Listing),
            "plan" => self.figure(FigureKind::Plan),
            "figure" => {
                let name = self.expect_name("the name of the figure")?;
                self.figure(FigureKind::Other(name))
            }
            "missing" => self.missing(),
            "level" => self.level(),
            "lot" => self.lot(),
            "diagonal" => self.diagonal(start),
            "bearing" => self.bearing(),
            "arc" => self.arc(start),
            "close" => {
                self.no_length_after_close()?;
                self.side(Run::Close)
            }
            "corner" => Ok(Statement::Corner(self.expect_name("the name of the corner")?)),
            "overall" => self.overall(),
            "tie" => self.tie(),
            "tax" => self.tax(),
            word if value_parser::FIRST_WORDS.contains(&word) => self.valued(word, start),
            _ => match (direction_named(word), kind_named(word)) {
                (Some(direction), _) => self.straight(direction),
                (_, Some(kind)) => self.space(kind),
                _ => self.head(word).map(|head| Statement::Head(head.into())),
            },
        }
    }

    fn not_a_statement(&mut self) -> Read<Statement> {
        let span = self.span();
        let (found, instead) = (self.found(), self.instead());
        if self.peek_word().is_some() {
            return self.fault(
                Diagnostic::new(
                    Word::UnknownWord,
                    span,
                    format!("{found} is not a word of a sides file"),
                )
                .label("not known")
                .help(instead),
            );
        }
        let message = format!("wanted a word at the start of the line, found {found}");
        self.fault(
            Diagnostic::new(Word::Unexpected, span, message)
                .help("begin with the direction of the wall: `north 12' 6\"`"),
        )
    }

    /// The help for a line that begins with an unknown word.
    fn instead(&self) -> &'static str {
        match self.peek_word().unwrap_or_default() {
            "year" => "the year is `tax year 2026`",
            "market" | "assessed" | "improvement" | "improvements" => {
                "what the notice says is `value market $412,000 assessed $371,000`"
            }
            "rate" => "the tax rate is `tax rate 2.14 per $100`",
            "stairs" | "staircase" | "stairway" => "a stair is `stair \"Stairs\"`",
            "foyer" | "void" | "atrium" => "what is open to the floor below is `open \"Foyer\"`",
            "house" | "home" | "bedroom" | "bedrooms" | "room" | "rooms" | "kitchen" | "heated" => {
                "finished living area is `living \"House\"`"
            }
            "floor" | "story" | "storey" | "upper" | "lower" | "ground" | "first" | "second" => {
                "a level is `level \"Upper floor\"`"
            }
            "basement" | "cellar" => "a basement is `level \"Basement\" below grade`",
            "shed" | "barn" => "a building by itself is `outbuilding \"Shed\"`",
            "curve" | "curved" => {
                "a curved wall is `arc east 40' rise 5'`: its chord, and how far it bulges"
            }
            "sunroom" | "solarium" | "addition" | "den" => {
                "a heated room is `living \"Sunroom\"`; one that is not is `porch \"Sunroom\"`"
            }
            "covered" | "veranda" | "verandah" => "a porch is `porch \"Front porch\"`",
            "northeast" | "northwest" | "southeast" | "southwest" | "ne" | "nw" | "se" | "sw"
            | "angled" | "angle" | "slanted" | "slant" => {
                "a slanted wall is given by its run and rise: `diagonal north 3' east 3'`"
            }
            _ => {
                "a line begins with a direction (`north 12' 6\"`), with what a space is (`living`, `garage`, `porch`, `open`, `stair` …) and its name, or with `level`; a comment begins with `#`"
            }
        }
    }

    fn head_line(&mut self, line: HeadLine) -> Read<Statement> {
        let text = self.expect_text("what follows")?;
        Ok(Statement::Head(Head::Line(line, text.text).into()))
    }

    fn head(&mut self, word: &str) -> Read<Head> {
        Ok(match word {
            "measured" => Head::Measured(self.measured()?),
            "tolerance" => Head::Tolerance(self.expect_length("a tolerance")?),
            "interior" => {
                Head::Interior(match self.expect_keyword(&["seen", "not", "unseen"], "")? {
                    "unseen" => false,
                    "not" => {
                        self.expect_keyword(&["seen"], "after `not`")?;
                        false
                    }
                    _ => true,
                })
            }
            "units" => Head::Units(self.units()?),
            "faces" => Head::Faces(self.face()?),
            "front" => Head::Front(self.direction(STREET)?),
            "true" => {
                self.expect_keyword(&["north"], "after `true`")?;
                Head::TrueNorth(self.expect_bearing()?)
            }
            "veneer" => Head::Veneer(self.thickness()?),
            _ => Head::Wall(self.wall_thickness("a wall's thickness")?),
        })
    }

    fn tax(&mut self) -> Read<Statement> {
        match self.expect_keyword(&["year", "rate"], "after `tax`")? {
            "rate" => self.tax_rate(),
            _ => self
                .expect_year("tax year 2026")
                .map(|year| Statement::Head(Head::TaxYear(year).into())),
        }
    }

    fn measured(&mut self) -> Read<Measured> {
        let date = self.expect_date()?;
        let mut measured = Measured { date, by: None, with: None };
        while let Some(word) = self.keyword(&["by", "with"]) {
            let text = self.expect_text("who or what")?.text;
            let slot = if word == "by" { &mut measured.by } else { &mut measured.with };
            self.once(slot, text, &format!("`{word}`"))?;
        }
        Ok(measured)
    }

    fn units(&mut self) -> Read<Unit> {
        let start = self.span();
        let all = ["feet", "inches", "meters", "centimeters", "millimeters"];
        let short = self.peek_word().and_then(|word| match word {
            "feet" | "foot" | "ft" => Some(Unit::Feet),
            "inches" | "inch" | "in" => Some(Unit::Inches),
            "meters" | "metres" | "meter" | "metre" | "m" => Some(Unit::Meters),
            "centimeters" | "centimetres" | "cm" => Some(Unit::Centimeters),
            "millimeters" | "millimetres" | "mm" => Some(Unit::Millimeters),
            _ => None,
        });
        let unit = if let Some(unit) = short {
            self.advance();
            unit
        } else {
            match self.expect_keyword(&all, "a unit")? {
                "feet" => Unit::Feet,
                "inches" => Unit::Inches,
                "meters" => Unit::Meters,
                "centimeters" => Unit::Centimeters,
                _ => Unit::Millimeters,
            }
        };
        if let Some(bare) = self.first_bare {
            return self.fault(
                Diagnostic::new(Word::OutOfPlace, start, "`units` comes after a bare number")
                    .also(bare, "which unit is this?")
                    .help("move the `units` line to the top of the file"),
            );
        }
        Ok(unit)
    }

    fn face(&mut self) -> Read<Face> {
        Ok(match self.expect_keyword(&FACES, "the face that was measured")? {
            "outside" => Face::Outside,
            "frame" => Face::Frame,
            _ => Face::Inside,
        })
    }

    /// Whether `front`, which was just read, begins a side; otherwise it states where the street is.
    fn is_side_of_front(&self) -> bool {
        match self.peek() {
            Some(Token::Number(_) | Token::Fraction(..)) => true,
            // `front wall 31' 6"` is no street side either; what it is cannot be said before the street is known.
            Some(Token::Word(word))
                if self.front.is_none() && ["wall", "side"].contains(&&**word) =>
            {
                matches!(self.peek_at(1), Some(Token::Number(_) | Token::Fraction(..)))
            }
            Some(Token::Word(word)) => word == "by",
            _ => false,
        }
    }

    /// The compass direction of `back`, `front`, `left` or `right`, seen from the street.
    fn street_direction(&mut self, word: &str, start: Span) -> Read<Direction> {
        let Some(front) = self.front else {
            self.needs_front = true;
            if self.front_told {
                return Err(super::cursor::ErrorReported);
            }
            let message =
                format!("`{word}` says nothing until the file says which way the street is");
            return self.fault(Diagnostic::new(Word::Unexpected, start, message).help(
                "add `front south` at the top of the file, before the first `level`; back is then north, right is east, left is west; leave the other lines with such a word as they are, and check the file again; where the other walls are typed by the compass, write the way that you walked along this one instead, `north`, `east`, `south` or `west`",
            ));
        };
        let back = front.opposite();
        Ok(match word {
            "front" => front,
            "back" => back,
            "left" => back.left(),
            _ => back.right(),
        })
    }

    pub(super) fn direction(&mut self, what: &str) -> Read<Direction> {
        let after = if what == STREET { "" } else { ", and after it the length" };
        let start = self.span();
        match self.keyword(&DIRECTIONS) {
            Some(word) => match direction_named(word) {
                Some(direction) => Ok(direction),
                None => self.street_direction(word, start),
            },
            None => self.unexpected(
                &format!("{what}: `north`, `east`, `south` or `west`"),
                &format!("type one of these words here{after}"),
            ),
        }
    }

    fn thickness(&mut self) -> Read<Thickness> {
        if self.accept_word(&["none"]) {
            return Ok(Thickness::None);
        }
        self.wall_thickness("a thickness or `none`").map(Thickness::Of)
    }

    /// A thickness, at most 3 ft.
    fn wall_thickness(&mut self, what: &str) -> Read<WrittenLength> {
        let start = self.span();
        let length = self.expect_length(what)?;
        let span = self.since(start);
        let typed = self.text.get(span.start..span.end).unwrap_or_default();
        // `wall 2` is more likely two inches, or the begin of `2x6`, than two feet.
        let is_bare = typed.parse::<rust_decimal::Decimal>().is_ok() && !length.form().is_metric();
        let is_feet = (1..=3).contains(&length.length().nm().div_euclid(Length::FOOT.nm()));
        if is_bare && is_feet {
            let message =
                format!("a number without a mark is feet: a wall {length} thick is hardly meant");
            return self.fault(Diagnostic::new(Word::BadLength, span, message).help(format!(
                "is the inch mark missing? write `{typed}\"`; if it is that thick, write `{typed}'`"
            )));
        }
        if length.length().nm() <= 3 * Length::FOOT.nm() {
            return Ok(length);
        }
        let message = format!("a wall {length} thick is hardly meant");
        self.fault(
            Diagnostic::new(Word::BadLength, span, message)
                .help("is the inch mark missing? write `4 5/8\"`"),
        )
    }

    fn figure(&mut self, kind: FigureKind) -> Read<Statement> {
        let start = self.span();
        let area = self.house_area(start, "the published area")?;
        let mut basis = Basis::default();
        let mut title = None;
        while !self.at_end() {
            if let Some(text) = self.accept_text("the title")? {
                if title.is_some() {
                    let message = "a figure has one title";
                    let span = text.span;
                    return self.fault(
                        Diagnostic::new(Word::StatedTwice, span, message)
                            .help("between the names after `counting` stand commas"),
                    );
                }
                title = Some(text.text);
                continue;
            }
            self.basis_word(&mut basis)?;
        }
        Ok(Statement::Figure(FigureStatement { kind, area, basis, title }.into()))
    }

    fn basis_word(&mut self, basis: &mut Basis) -> Read<()> {
        match self.expect_keyword(&["measured", "sides", "counting"], Expected::WordOrEnd)? {
            "measured" => {
                let face = self.measured_to()?;
                self.once(&mut basis.face, face, "the face")
            }
            "sides" => {
                let words = ["whole-foot", "half-foot", "inch", "tenth-foot", "unknown"];
                let rule = match self.expect_keyword(&words, "how sides are rounded")? {
                    "whole-foot" => SideRule::Step(Step::WholeFoot),
                    "half-foot" => SideRule::Step(Step::HalfFoot),
                    "inch" => SideRule::Step(Step::Inch),
                    "tenth-foot" => SideRule::Step(Step::TenthFoot),
                    _ => SideRule::Unknown,
                };
                self.once(&mut basis.sides, rule, "the rounding of the sides")
            }
            _ => {
                basis.counting.push(self.expect_text("the name of a space")?);
                while self.accept(&Token::Comma) {
                    basis.counting.push(self.expect_text("the name of a space")?);
                }
                Ok(())
            }
        }
    }

    fn measured_to(&mut self) -> Read<Face> {
        self.expect_keyword(&["to"], "after `measured`")?;
        self.face()
    }

    fn missing(&mut self) -> Read<Statement> {
        let words: Vec<&str> = Kind::ALL.iter().map(|kind| kind.word()).collect();
        let word = self.expect_keyword(&words, "the kind of space that is missing")?;
        let name = self.expect_text("its name")?;
        self.expect_keyword(&["recorded"], "after the name")?;
        let recorded = self.expect_area("its recorded area")?;
        let kind = kind_named(word).unwrap_or(Kind::Storage);
        Ok(Statement::Missing(MissingStatement { kind, name, recorded }.into()))
    }

    fn level(&mut self) -> Read<Statement> {
        let name = self.expect_name("the name of the level")?;
        let mut level = LevelStatement { name, below_grade: false, beside: false };
        while !self.at_end() {
            if matches!(self.peek_word(), Some("measured" | "inside" | "outside" | "frame")) {
                return self.unexpected(
                    "nothing more, or `below grade`, or `beside`",
                    "a level has no face: write `measured to inside` after the name of each space on it, or `faces inside` above the first level",
                );
            }
            match self.expect_keyword(&["below", "beside"], Expected::WordOrEnd)? {
                "below" => {
                    self.expect_keyword(&["grade"], "after `below`")?;
                    self.flag(&mut level.below_grade, "`below grade`")?;
                }
                _ => self.flag(&mut level.beside, "`beside`")?,
            }
        }
        Ok(Statement::Level(level))
    }

    fn space(&mut self, kind: Kind) -> Read<Statement> {
        let name = self.expect_space_name()?;
        let mut space = SpaceStatement {
            kind,
            name,
            face: None,
            within: None,
            place: Place::Origin,
            detached: false,
            under: None,
            veneer: None,
            counted: None,
            recorded: None,
        };
        while !self.at_end() {
            self.space_word(&mut space)?;
        }
        Ok(Statement::Space(space.into()))
    }

    fn space_word(&mut self, space: &mut SpaceStatement) -> Read<()> {
        let words = [
            "measured", "within", "start", "from", "detached", "under", "veneer", "counted", "not",
            "recorded",
        ];
        let word = self.expect_keyword(&words, Expected::WordOrEnd)?;
        match word {
            "measured" => {
                let face = self.measured_to()?;
                self.once(&mut space.face, face, "the face")
            }
            "within" => {
                let name = self.expect_name("the name of the space round it")?;
                self.once(&mut space.within, name, "`within`")
            }
            "detached" => self.flag(&mut space.detached, "`detached`"),
            "under" => self.under(space),
            "start" | "from" => {
                let place = if word == "start" { self.start()? } else { self.from()? };
                let before = std::mem::replace(&mut space.place, place);
                let mut said = (before != Place::Origin).then_some(());
                self.once(&mut said, (), "the place")
            }
            "veneer" => {
                let thickness = self.thickness()?;
                self.once(&mut space.veneer, thickness, "the veneer")
            }
            "recorded" => {
                let area = self.expect_area("the recorded area")?;
                self.once(&mut space.recorded, area, "the recorded area")
            }
            _ => {
                let is_not = word == "not";
                if is_not {
                    self.expect_keyword(&["counted"], "after `not`")?;
                }
                self.may_be_counted(space.kind, is_not)?;
                self.once(&mut space.counted, word == "counted", "whether it is counted")
            }
        }
    }

    /// The ceiling height that a `low` space is under.
    fn under(&mut self, space: &mut SpaceStatement) -> Read<()> {
        let span = self.last_span();
        let start = self.span();
        let height = self.expect_length("the ceiling height")?;
        if space.kind != Kind::Low {
            let message =
                format!("`under` says nothing of a space that is `{}`", space.kind.word());
            let name = &space.name.text;
            return self.fault(Diagnostic::new(Word::OutOfPlace, span, message).help(format!(
                "the part under a low ceiling is a space of its own: `low \"{name}, low part\" under {height}`"
            )));
        }
        if height.length() < Length::FOOT && !height.form().is_metric() {
            let span = self.since(start);
            let typed = self.text.get(span.start..span.end).unwrap_or_default();
            let number = typed.split(|c: char| !c.is_ascii_digit() && c != '.').next();
            let message = format!("a ceiling {height} high is hardly meant");
            let fault = Diagnostic::new(Word::BadLength, span, message);
            return self.fault(match number.filter(|number| !number.is_empty()) {
                Some(number) => fault
                    .help(format!("did you mean `under {number}'`?"))
                    .fix(span, format!("{number}'")),
                None => fault.help("write the height of the ceiling, as `under 5'`"),
            });
        }
        self.once(&mut space.under, height, "the ceiling height")
    }

    /// Reports `counted` after a kind of space that is part of another: it may be deducted, but is never counted
    /// separately.
    fn may_be_counted(&mut self, kind: Kind, is_not: bool) -> Read<()> {
        if !kind.lies_in_another() {
            return Ok(());
        }
        let message = format!("`counted` says nothing of a space that is `{}`", kind.word());
        let help = match kind {
            _ if is_not && kind != Kind::Stair => {
                "take `not counted` out: what is not floor is deducted without a word"
            }
            Kind::Stair => "take the word out: a stair always counts with the space it lies in",
            _ => {
                "to count it leave its whole outline out; what a figure counts stands after the figure: `record 1,904 sq ft counting \"Foyer\"`"
            }
        };
        let span = self.last_span();
        self.fault(Diagnostic::new(Word::OutOfPlace, span, message).help(help))
    }

    fn start(&mut self) -> Read<Place> {
        let mut offsets = Vec::new();
        loop {
            let direction = self.direction("which way from the origin")?;
            offsets.push((direction, self.expect_offset("how far from the origin")?));
            let more = self.peek_word().is_some_and(|word| DIRECTIONS.contains(&word));
            if offsets.len() == 2 || !more {
                return Ok(Place::Start(offsets));
            }
        }
    }

    fn from(&mut self) -> Read<Place> {
        if self.accept_word(&["corner"]) {
            return self.expect_text("the name of a corner").map(Place::Corner);
        }
        let space = self.expect_text("the name of a space, or `corner`")?;
        self.expect_keyword(&["corner"], "after the name of the space")?;
        let span = self.span();
        let number = self.expect_whole_number(
            "the number of a corner",
            "corners count from 1, where the walk starts",
        )?;
        Ok(Place::CornerOf(space, Numbered { number, span }))
    }

    fn lot(&mut self) -> Read<Statement> {
        let name = self.expect_name("the name of the lot")?;
        let mut recorded: Option<WrittenArea> = None;
        if !self.at_end() {
            self.expect_keyword(&["recorded"], Expected::WordOrEnd)?;
            recorded = Some(self.expect_area("the recorded area")?);
        }
        Ok(Statement::Lot(LotStatement { name, recorded }.into()))
    }

    fn drawn_outline(&mut self, drawn: ReferenceSource) -> Read<Statement> {
        let name = self.expect_name("the name of the outline")?;
        let mut of = None;
        if !self.at_end() {
            self.expect_keyword(&["of"], Expected::WordOrEnd)?;
            of = Some(self.expect_text("the name of a space or a level")?);
        }
        Ok(Statement::Outline(OutlineStatement { drawn, name, of }.into()))
    }

    fn straight(&mut self, direction: Direction) -> Read<Statement> {
        if self.keyword(&["by"]).is_some() {
            self.expect_keyword(&["closing"], "after `by`")?;
            return self.side(Run::ByClosing(direction));
        }
        if matches!(self.peek(), Some(Token::Word(_))) {
            let way = direction.word();
            let help = if self.has_number() {
                format!(
                    "write its length right after `{way}`; anything else about the wall goes in a note, after the length"
                )
            } else if crate::sketch::mend::speaks_number(&self.rest_of_line()) {
                format!("write its length in digits right after `{way}`, as `42' 7\"`")
            } else {
                format!("out of reach? write `{way} by closing`")
            };
            return self.unexpected("the length of the side", &help);
        }
        let length = self.expect_length("the length of the side, or `by closing`")?;
        self.side(Run::Straight(direction, length))
    }

    fn diagonal(&mut self, start: crate::diagnostic::Span) -> Read<Statement> {
        let first = self.direction("the first leg of a slanted wall")?;
        let first = (first, self.expect_length("how far the slanted wall runs")?);
        let second = self.direction("the second leg of a slanted wall")?;
        let second = (second, self.expect_length("how far the slanted wall rises")?);
        if first.0.axis() == second.0.axis() {
            let span = self.since(start);
            return self.fault(
                Diagnostic::new(
                    Word::BadDiagonal,
                    span,
                    "both legs of this slanted wall lie on one axis",
                )
                .help(
                    "give one leg north or south and one east or west: `diagonal north 3' east 3'`",
                ),
            );
        }
        self.side(Run::Diagonal(first, second))
    }

    fn bearing(&mut self) -> Read<Statement> {
        let bearing = self.expect_bearing()?;
        let length = self.expect_length("the length of the side")?;
        self.side(Run::Bearing(bearing.into(), length))
    }

    fn arc(&mut self, start: crate::diagnostic::Span) -> Read<Statement> {
        let direction = self.direction("the direction of the chord")?;
        let chord = self.expect_length("the length of the chord")?;
        self.expect_keyword(&["rise"], "after the chord")?;
        let rise = self.expect_length("how far the curve rises from its chord")?;
        let toward = self.direction("the side to which it rises")?;
        if direction.axis() == toward.axis() {
            let span = self.since(start);
            return self.fault(
                Diagnostic::new(Word::BadArc, span, "the rise of a curved wall is square to its chord")
                    .help("a chord that runs east or west rises north or south: `arc east 8' rise 2' south`"),
            );
        }
        self.side(Run::Arc(direction, chord, rise, toward))
    }

    /// Reports a length after `close`, whose length follows from the other walls.
    fn no_length_after_close(&mut self) -> Read<()> {
        if !matches!(self.peek(), Some(Token::Number(_) | Token::Fraction(..))) {
            return Ok(());
        }
        let start = self.span();
        let length = self.expect_length("the length of the side")?;
        let span = self.since(start);
        let message = "`close` takes no length: it follows from the other walls";
        self.fault(Diagnostic::new(Word::OutOfPlace, span, message).help(format!(
            "if this wall was taped, type it with its direction: `west {length}`, or the way that it runs"
        )))
    }

    fn bay(&mut self) -> Read<Statement> {
        const EXAMPLE: &str = "write `bay south 8' out 2' flat 4'`, or `bay south 8' out 2' round`";
        let start = self.span();
        let direction = self.direction("which way the wall with the bay runs")?;
        let width = self.expect_length("the width that the bay takes of the wall")?;
        if self.keyword(&["out"]).is_none() {
            self.want(&["out"]);
            return self.unexpected("`out`, and how far the bay stands out", EXAMPLE);
        }
        let out = self.expect_length("how far the bay stands out")?;
        let front = match self.keyword(&["flat", "round"]) {
            Some("flat") => BayFront::Flat(self.expect_length("the width of its flat front")?),
            Some(_) => BayFront::Round,
            None => {
                self.want(&["flat", "round"]);
                return self.unexpected("`flat` and the width of the front, or `round`", EXAMPLE);
            }
        };
        if let BayFront::Flat(flat) = front
            && flat.length() >= width.length()
        {
            let span = self.since(start);
            let message = format!("the flat front, {flat}, is not narrower than the bay, {width}");
            let mut fault = Diagnostic::new(Word::BadLength, span, message);
            if flat.length() < out.length() && width.length() < out.length() {
                fault = fault.help(format!(
                    "if it is {out} wide and stands out {width}, write `bay {} {out} out {width} flat {flat}`",
                    direction.word()
                ));
            }
            let way = direction.word();
            return self.fault(fault.help(format!(
                "measure how wide the bay is along the wall, and type that after `{way}`: it is wider there than its front; only a bay with square corners is three sides, out, along and back, each on a line of its own",
            )));
        }
        let words = self.side_words()?;
        if let Some(recorded) = words.recorded {
            let span = self.since(start);
            let message = "a bay stands for several sides, so `recorded` could mean any of them";
            return self.fault(
                Diagnostic::new(Word::OutOfPlace, span, message)
                    .help(format!("keep it as a note: `note \"recorded {}\"`", plainly(recorded))),
            );
        }
        Ok(Statement::Bay(Bay { direction, width, out, front }.into(), words.into()))
    }

    fn side(&mut self, run: Run) -> Read<Statement> {
        let words = self.side_words()?;
        Ok(Statement::Side(run, words.into()))
    }

    fn side_words(&mut self) -> Read<Said> {
        let mut words = Said::default();
        while !self.at_end() {
            self.side_word(&mut words)?;
        }
        Ok(words)
    }

    fn side_word(&mut self, words: &mut Said) -> Read<()> {
        match self.expect_keyword(&SIDE_WORDS, Expected::WordOrEnd)? {
            "recorded" => {
                let length = self.expect_length("the recorded length")?;
                self.once(&mut words.recorded, length, "the recorded length")
            }
            "tolerance" => {
                let length = self.expect_length("the tolerance")?;
                self.once(&mut words.tolerance, length, "the tolerance")
            }
            "estimated" => self.flag(&mut words.estimated, "`estimated`"),
            "from" => {
                let word =
                    self.expect_keyword(&["plan", "record"], "where the length was taken")?;
                let from = if word == "plan" { TakenFrom::Plan } else { TakenFrom::Record };
                let mut said = (words.from != TakenFrom::Tape).then_some(());
                words.from = from;
                self.once(&mut said, (), "where the length was taken")
            }
            "common" => self.flag(&mut words.common, "`common`"),
            "veneer" => {
                let thickness = self.thickness()?;
                self.once(&mut words.veneer, thickness, "the veneer")
            }
            "wall" => {
                let thickness = self.wall_thickness("the thickness of this wall")?;
                self.once(&mut words.wall, thickness, "the thickness of the wall")
            }
            "photo" => {
                let text = self.expect_text("the photo")?.text;
                self.once(&mut words.photo, text, "the photo")?;
                if self.keyword(&["file"]).is_some() {
                    let file = self.expect_name("the name of the picture's file")?;
                    words.photo_file = Some(file);
                }
                Ok(())
            }
            _ => {
                let text = self.expect_text("the note")?.text;
                self.once(&mut words.note, text, "the note")
            }
        }
    }

    fn overall(&mut self) -> Read<Statement> {
        let direction = self.direction("the direction of the overall length")?;
        let length = self.expect_length("the overall length")?;
        Ok(Statement::Overall(direction, length))
    }

    fn tie(&mut self) -> Read<Statement> {
        self.expect_keyword(&["corner"], "after `tie`")?;
        let first = self.corner_ref()?;
        self.expect_keyword(&["to"], "after the first corner")?;
        self.expect_keyword(&["corner"], "after `to`")?;
        let second = self.corner_ref()?;
        let length = self.expect_length("the distance taped across")?;
        Ok(Statement::Tie(first, second, length))
    }

    fn corner_ref(&mut self) -> Read<CornerRef> {
        if let Some(name) = self.accept_text("the name of a corner")? {
            return Ok(CornerRef::Name(name.text));
        }
        self.expect_whole_number(
            "the name or the number of a corner",
            "write `tie corner 1 to corner 4 38' 2\"`",
        )
        .map(CornerRef::Number)
    }
}

/// The direction named by a word in lower case.
fn direction_named(word: &str) -> Option<Direction> {
    Some(match word {
        "north" | "n" => Direction::North,
        "east" | "e" => Direction::East,
        "south" | "s" => Direction::South,
        "west" | "w" => Direction::West,
        _ => return None,
    })
}

/// A length with words instead of marks, so that it can go inside a quoted text.
fn plainly(length: WrittenLength) -> String {
    length.to_string().replace('"', " in").replace('\'', " ft")
}

fn kind_named(word: &str) -> Option<Kind> {
    Kind::ALL.iter().copied().find(|kind| kind.word() == word)
}
