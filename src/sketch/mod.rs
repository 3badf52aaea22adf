//! The sides file as it was written: text in, [`Sketch`] out, every part knowing its place.
//!
//! The format's reference with an annotated sample is `sketches/README.md`.

mod assemble;
mod cursor;
mod lexer;
mod parser;
mod plain;
mod private;
mod quantity;
pub mod rows;
pub(crate) mod statement;
mod tidy;
pub(crate) mod values;

use crate::diagnostic::{Diagnostic, Diagnostics, Source, Span, Word, is_hidden};
use crate::geometry::compass::Direction;
use crate::units::length::{Length, Written};
use smol_str::SmolStr;
use statement::*;
pub use statement::{Face, Kind, ReferenceSource, TakenFrom, Unit};
pub(crate) use tidy::bearing_written;

/// The most lines a file may have.
pub const MOST_LINES: usize = 10_000;
/// The most bytes a file may have.
pub const MOST_BYTES: usize = 1_000_000;
/// The most sides an outline may have.
pub const MOST_SIDES: usize = 1_000;
/// The most characters a line may have.
const MOST_CHARACTERS: usize = 2_000;

/// What a sides file says, in its own order; not yet known to close.
#[derive(Clone, Debug, Default)]
pub struct Sketch {
    pub(crate) lines: Vec<Line>,
    pub(crate) heads: Heads,
    pub(crate) figures: Vec<FigureSketch>,
    pub(crate) missing: Vec<MissingStatement>,
    pub(crate) levels: Vec<LevelSketch>,
    pub(crate) lots: Vec<SpaceSketch>,
    pub(crate) outlines: Vec<OutlineSketch>,
    /// What it says of values, taxes, dates and sales.
    pub(crate) values: values::Values,
    /// A line that gives a space its name could not be read.
    pub(crate) names_doubtful: bool,
    /// A line that says how exact or thick things are could not be read.
    pub(crate) heads_doubtful: bool,
}

/// One line of the file.
#[derive(Clone, Debug, Default)]
pub(crate) struct Line {
    pub(crate) statement: Option<Statement>,
    pub(crate) comment: Option<String>,
}

/// The statements about the whole file.
#[derive(Clone, Debug, Default)]
pub(crate) struct Heads {
    pub(crate) property: Option<String>,
    pub(crate) address: Option<String>,
    pub(crate) account: Option<String>,
    pub(crate) case: Option<String>,
    pub(crate) tax_year: Option<u16>,
    pub(crate) measured: Option<Measured>,
    pub(crate) tolerance: Option<Written>,
    pub(crate) tolerance_span: Span,
    pub(crate) interior_seen: Option<bool>,
    pub(crate) units: Option<Unit>,
    pub(crate) faces: Option<Face>,
    pub(crate) front: Option<Direction>,
    pub(crate) true_north: Option<Bearing>,
    pub(crate) veneer: Option<Thickness>,
    pub(crate) wall: Option<Written>,
}

impl Heads {
    /// Each side is within plus or minus this, 1/2 in unless the file says otherwise.
    pub(crate) fn tolerance(&self) -> Length {
        self.tolerance.map_or(Length::from_nm(12_700_000), Written::length)
    }
}

/// A published figure with its place.
#[derive(Clone, Debug)]
pub(crate) struct FigureSketch {
    pub(crate) figure: FigureStatement,
    pub(crate) span: Span,
}

/// A storey with its spaces.
#[derive(Clone, Debug)]
pub(crate) struct LevelSketch {
    pub(crate) level: LevelStatement,
    pub(crate) spaces: Vec<SpaceSketch>,
    /// A fault on it makes what follows from its names doubtful.
    pub(crate) doubtful: bool,
}

/// A space, or a lot, with its walk.
#[derive(Clone, Debug)]
pub(crate) struct SpaceSketch {
    pub(crate) space: SpaceStatement,
    pub(crate) span: Span,
    pub(crate) walk: WalkSketch,
}

/// Somebody else's outline with its walk.
#[derive(Clone, Debug)]
pub(crate) struct OutlineSketch {
    pub(crate) drawn: ReferenceSource,
    pub(crate) name: Named,
    pub(crate) of: Option<Named>,
    pub(crate) span: Span,
    pub(crate) walk: WalkSketch,
}

/// Sides in walking order, with the corners named on the way and the checks taped.
#[derive(Clone, Debug, Default)]
pub(crate) struct WalkSketch {
    pub(crate) sides: Vec<SideSketch>,
    pub(crate) corners: Vec<CornerSketch>,
    pub(crate) overalls: Vec<(Direction, Written, Span)>,
    pub(crate) ties: Vec<(CornerRef, CornerRef, Written, Span)>,
    /// A fault in it makes its closing doubtful.
    pub(crate) doubtful: bool,
}

/// One side as typed.
#[derive(Clone, Debug)]
pub(crate) struct SideSketch {
    pub(crate) run: Run,
    pub(crate) words: SideWords,
    /// The side itself, without the words after it.
    pub(crate) span: Span,
    /// The side as it stands in the file, its spaces evened out.
    pub(crate) typed: SmolStr,
}

/// A corner named on the walk.
#[derive(Clone, Debug)]
pub(crate) struct CornerSketch {
    pub(crate) name: Named,
    /// How many sides had been walked.
    pub(crate) after: usize,
}

impl Sketch {
    /// The file in its canonical form: the same sketch, comments kept.
    ///
    /// ```
    /// use fairfoot::Source;
    ///
    /// let source = Source::new("walk.sides", "LEVEL \"Ground\"\nliving \"House\"\nn 12'6\"\ne 20'\ns 12'6\"\nclose");
    /// assert_eq!(
    ///     fairfoot::sketch::parse(source)?.tidied(),
    ///     "level \"Ground\"\n  living \"House\"\n    north 12' 6\"\n    east  20'\n    south 12' 6\"\n    close\n"
    /// );
    /// # Ok::<(), fairfoot::Diagnostics>(())
    /// ```
    pub fn tidied(&self) -> String {
        tidy::tidied(self)
    }

    /// Where a name is given to a space, or to something the record lists.
    pub(crate) fn places_of<'a>(&'a self, name: &'a Named) -> impl Iterator<Item = Span> + 'a {
        let spaces = self.levels.iter().flat_map(|level| &level.spaces);
        let spaces = spaces.map(|space| &space.space.name);
        let all = spaces.chain(self.missing.iter().map(|missing| &missing.name));
        all.filter(move |other| *other == name).map(|other| other.span)
    }

    /// Whether both say the same, whatever the spelling, the spaces and the blank lines.
    pub fn says_the_same_as(&self, other: &Sketch) -> bool {
        fn said(sketch: &Sketch) -> impl Iterator<Item = (Option<&Statement>, Option<&str>)> {
            let lines = sketch.lines.iter();
            lines
                .map(|line| (line.statement.as_ref(), line.comment.as_deref()))
                .filter(|line| *line != (None, None))
        }
        said(self).eq(said(other))
    }
}

/// A sketch and the faults of reading it; what could be read is there even beside faults.
#[derive(Debug)]
pub(crate) struct Reading {
    pub(crate) sketch: Sketch,
    pub(crate) faults: Vec<Diagnostic>,
}

/// The sketch alone, whether or not its outlines close: for what needs the words only.
///
/// # Errors
///
/// Every error of reading it, in file order.
pub fn parse(source: Source) -> Result<Sketch, Diagnostics> {
    let Reading { sketch, faults } = read(&source);
    if faults.is_empty() { Ok(sketch) } else { Err(Diagnostics::new(source, faults)) }
}

/// Reads a whole sides file, going on after each error.
pub(crate) fn read(source: &Source) -> Reading {
    let mut faults = Vec::new();
    let text = source.text();
    let mut assembler = assemble::Assembler::default();
    // About as many as there are, rather more than less.
    assembler.expect_lines((text.len() >> 3).min(MOST_LINES) + 1);
    if text.len() > MOST_BYTES {
        faults.push(too_long("the file has more than 1 MB"));
        return Reading { sketch: Sketch::default(), faults };
    }
    let mut context = Context::default();
    let mut offset = 0;
    let mut tokens = Vec::new();
    let mut rest = text.strip_prefix('\u{feff}').unwrap_or(text);
    offset += text.len() - rest.len();
    let mut count = 0;
    while !rest.is_empty() {
        if count == MOST_LINES {
            faults.push(too_long("the file has more than 10,000 lines"));
            break;
        }
        count += 1;
        // Lines are short: looking at byte after byte is quicker than a search.
        let end = rest.bytes().position(|byte| byte == b'\n').map_or(rest.len(), |at| at + 1);
        let (line, after) = rest.split_at(end);
        let content = line.strip_suffix('\n').unwrap_or(line);
        let content = content.strip_suffix('\r').unwrap_or(content);
        let is_taken_in = plain::side(content)
            .is_some_and(|side| assembler.plain_side(side.read(content, offset)));
        if !is_taken_in {
            let read = read_words(text, content, offset, &mut context, &mut tokens, &mut faults);
            tokens.clear();
            assembler.line(read, &mut faults);
        }
        offset += line.len();
        rest = after;
    }
    let sketch = assembler.finish(&mut faults);
    Reading { sketch, faults }
}

fn too_long(message: &str) -> Diagnostic {
    Diagnostic::new(Word::FileTooLong, Span::default(), message)
        .help("one file holds one house; give the file that you typed the sides into")
}

/// What one line may leave for the next ones.
#[derive(Default)]
struct Context {
    units: Unit,
    first_bare: Option<Span>,
}

/// A line that was read, or not.
pub(crate) struct ReadLine {
    pub(crate) statement: Option<Statement>,
    pub(crate) comment: Option<String>,
    /// Where its words are, from the first to the last.
    pub(crate) span: Span,
    /// The part up to the words after a side.
    pub(crate) typed: SmolStr,
    /// A fault was told, so that there is no statement.
    pub(crate) faulty: bool,
    /// Of a faulty line its first two words, as far as they can be made out.
    pub(crate) begins: [String; 2],
}

/// Reads one line, which begins at byte `offset` of the text, word by word; `tokens` is room for its words.
fn read_words<'a>(
    text: &str,
    line: &'a str,
    offset: usize,
    context: &mut Context,
    tokens: &mut Vec<lexer::Placed<'a>>,
    faults: &mut Vec<Diagnostic>,
) -> ReadLine {
    let whole = Span::new(offset, offset + line.len());
    let mut read = ReadLine {
        statement: None,
        comment: None,
        span: whole,
        typed: SmolStr::default(),
        faulty: false,
        begins: Default::default(),
    };
    if let Some(fault) = unreadable(line, offset) {
        let words = line.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty());
        for (begins, word) in read.begins.iter_mut().zip(words) {
            *begins = word.to_lowercase();
        }
        faults.push(fault);
        read.faulty = true;
        return read;
    }
    let lexed = lexer::lex(line, offset, tokens, faults);
    read.comment = lexed.comment;
    read.faulty = lexed.faulty;
    let (Some(first), Some(last)) = (tokens.first(), tokens.last()) else {
        return read;
    };
    read.span = first.span.to(last.span);
    if lexed.faulty {
        read.begins = first_words(tokens);
        return read;
    }
    let mut cursor = cursor::Cursor::new(tokens, text, context.units, faults);
    cursor.first_bare = context.first_bare;
    read.statement = cursor.statement().ok();
    read.faulty = read.statement.is_none();
    if read.faulty {
        read.begins = first_words(tokens);
    }
    context.first_bare = cursor.first_bare;
    if let Some(Statement::Head(head)) = &read.statement
        && let Head::Units(units) = **head
    {
        context.units = units;
    }
    if let Some(Statement::Side(run, _)) = &read.statement {
        read.span = side_span(tokens, run);
        read.typed = evened_out(&text[read.span.start..read.span.end]);
    }
    read
}

/// A text with one blank between its words.
fn evened_out(text: &str) -> SmolStr {
    let bytes = text.as_bytes();
    let is_even = bytes.iter().all(|byte| matches!(byte, b' '..=b'~'))
        && !bytes.windows(2).any(|two| two == b"  ");
    if is_even {
        return text.into();
    }
    text.split_whitespace().collect::<Vec<&str>>().join(" ").into()
}

/// The first two words of a line, as far as they are words.
fn first_words(tokens: &[lexer::Placed<'_>]) -> [String; 2] {
    let word = |i: usize| match tokens.get(i).map(|placed| &placed.token) {
        Some(lexer::Token::Word(word)) => word.clone().into_owned(),
        _ => String::new(),
    };
    [word(0), word(1)]
}

/// A fault that makes a line unfit to be looked at word by word.
fn unreadable(line: &str, offset: usize) -> Option<Diagnostic> {
    let is_plain = |byte: &u8| matches!(byte, b' '..=b'~' | b'\t');
    if line.len() <= MOST_CHARACTERS && line.as_bytes().iter().all(is_plain) {
        return None;
    }
    if line.len() > MOST_CHARACTERS && line.chars().count() > MOST_CHARACTERS {
        let span = Span::new(offset, offset + 1);
        let fault =
            Diagnostic::new(Word::LineTooLong, span, "this line has more than 2,000 characters");
        return Some(fault.help("put each statement on a line of its own"));
    }
    let (at, hidden) = line.char_indices().find(|&(_, c)| c != '\t' && is_hidden(c))?;
    let span = Span::new(offset + at, offset + at + hidden.len_utf8());
    let shown = hidden.escape_unicode();
    let message = format!("a character that cannot be seen: `{shown}`");
    let help = if hidden == '\r' {
        "save the file with ordinary line ends"
    } else {
        "take it out: delete from the letter before it to the letter after it, and type those again"
    };
    Some(Diagnostic::new(Word::HiddenCharacter, span, message).help(help))
}

/// The part of the line that says how the side runs, before the words after it.
fn side_span(tokens: &[lexer::Placed<'_>], run: &Run) -> Span {
    const AFTER: [&str; 8] =
        ["recorded", "tolerance", "estimated", "from", "common", "veneer", "photo", "note"];
    let begins_words = |placed: &&lexer::Placed<'_>| match &placed.token {
        lexer::Token::Word(word) => AFTER.contains(&word.as_ref()),
        _ => false,
    };
    let least = if *run == Run::Close { 1 } else { 2 };
    let words = tokens.iter().skip(least).find(begins_words).map(|placed| placed.span.start);
    let mut kept = tokens.iter().filter(|placed| words.is_none_or(|at| placed.span.start < at));
    let first = kept.next().map_or(Span::default(), |placed| placed.span);
    kept.next_back().map_or(first, |last| first.to(last.span))
}
