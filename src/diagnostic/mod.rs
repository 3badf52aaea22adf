//! Errors and warnings about a sides file: a code word, a place in the text, a message, and usually help.
//!
//! The list of [`Word`]s below is complete: every error and warning that fairfoot can give is there. A
//! [`Diagnostic`] is drawn under the text it is about.
//!
//! ```
//! let faults = fairfoot::read("walk.sides", "toleranse 1/4\"\n")
//!     .expect_err("`toleranse` is no word of a sides file");
//! assert_eq!(faults.list()[0].word().as_str(), "unknown-word");
//! assert!(faults.drawn(false).contains("did you mean `tolerance`?"));
//! ```

pub(crate) mod words;

use std::borrow::Cow;
use std::fmt::{self, Write as _};
use std::ops::Range;
use std::sync::OnceLock;

use sha2::{Digest, Sha256};

use unicode_properties::{GeneralCategory, UnicodeGeneralCategory};

use annotate_snippets::{AnnotationKind, Group, Level, Message, Renderer, Snippet};

/// A range of bytes of the text.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Span {
    /// The first byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

impl Span {
    /// The bytes from `start` up to, not including, `end`.
    #[must_use]
    pub const fn new(start: usize, end: usize) -> Span {
        Span { start, end }
    }

    /// From the start of this span to the end of `other`.
    #[must_use]
    pub fn to(self, other: Span) -> Span {
        Span::new(self.start, other.end.max(self.start))
    }
}

/// How serious a diagnostic is, and so whether areas are computed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Severity {
    /// An error: no areas are computed.
    Error,
    /// A warning: areas are computed, but something should be checked.
    Warning,
    /// A note: areas are computed, and nothing has to be done.
    Note,
}

macro_rules! words {
    ($($variant:ident $word:literal $severity:ident $meaning:literal;)*) => {
        /// The stable code word of an error, a warning or a note, such as `does-not-close`.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Word {
            $(#[doc = $meaning] $variant,)*
        }

        impl Word {
            /// All code words, errors first.
            pub const ALL: &[Word] = &[$(Word::$variant,)*];

            /// The word as printed in brackets.
            pub const fn as_str(self) -> &'static str {
                match self { $(Word::$variant => $word,)* }
            }

            /// How serious it is.
            pub const fn severity(self) -> Severity {
                match self { $(Word::$variant => Severity::$severity,)* }
            }

            /// What it means, in one line.
            pub const fn meaning(self) -> &'static str {
                match self { $(Word::$variant => $meaning,)* }
            }
        }
    };
}

words! {
    NotText "not-text" Error "The file is not plain UTF-8 text.";
    FileTooLong "file-too-long" Error "The file has more than 10,000 lines or 1 MB.";
    LineTooLong "line-too-long" Error "A line has more than 2,000 characters.";
    HiddenCharacter "hidden-character" Error "A character that cannot be seen, or that changes the order of what is seen.";
    StrayCharacter "stray-character" Error "A character that has no meaning in a sides file.";
    UnfinishedText "unfinished-text" Error "A text without its closing mark.";
    UnknownWord "unknown-word" Error "A word that a sides file does not have.";
    Unexpected "unexpected" Error "Something else was wanted at this place.";
    OutOfPlace "out-of-place" Error "The statement does not belong here.";
    StatedTwice "stated-twice" Error "A thing that can be said once is said again.";
    FigureTwice "figure-twice" Error "The same published figure is given twice.";
    BadLength "bad-length" Error "A length that cannot be read, or is not allowed here.";
    BadArea "bad-area" Error "An area that cannot be read, or has no unit.";
    BadBearing "bad-bearing" Error "A bearing that cannot be read.";
    BadDate "bad-date" Error "A date that cannot be read, or that does not exist.";
    BadMoney "bad-money" Error "A sum of money that cannot be read.";
    BadRate "bad-rate" Error "A tax rate that cannot be read.";
    BadValue "bad-value" Error "A part of the market value that is more than all of it.";
    UnknownPlace "unknown-place" Error "A place without rules of its own.";
    BadArc "bad-arc" Error "A curved wall whose rise is not square to its chord.";
    BadDiagonal "bad-diagonal" Error "A slanted wall whose run and rise lie on one axis.";
    EmptyText "empty-text" Error "A name without a letter in it.";
    NameTwice "name-twice" Error "A name that is referred to belongs to two things.";
    NoSuchCorner "no-such-corner" Error "No corner given earlier on the level has this name or number.";
    NoSuchSpace "no-such-space" Error "No space has this name here.";
    NothingMeasured "nothing-measured" Error "The file has no space with sides.";
    NoSides "no-sides" Error "A space or an outline without sides.";
    TooFewSides "too-few-sides" Error "An outline of one or two straight sides encloses nothing.";
    BadPicture "bad-picture" Error "A picture that is not there, cannot be read, or cannot be shown.";
    TooMany "too-many" Error "The file has more than 60 levels, 500 spaces, 100 outlines of a record or a plan, 50 published figures, 100 missing spaces or 40 pictures.";
    TooManySides "too-many-sides" Error "An outline with more than 1,000 sides.";
    ClosingInLot "closing-in-lot" Error "A call of a lot that should follow from one axis.";
    ClosingTwice "closing-twice" Error "Two sides of one axis are given by closing.";
    CloseNotLast "close-not-last" Error "`close` is not the last side of its outline.";
    NothingToClose "nothing-to-close" Error "The walk is back at its start before `close`.";
    ClosingBackwards "closing-backwards" Error "A side by closing would have no length, or run the other way.";
    UnitNeeded "unit-needed" Error "Lengths without a unit that make a house of no likely size.";
    DoesNotClose "does-not-close" Error "The walk round does not come back to its start.";
    SidesCross "sides-cross" Error "Two sides of an outline cross or touch.";
    SpacesOverlap "spaces-overlap" Error "Two spaces of a level cover the same ground.";
    NotInside "not-inside" Error "A space that is taken off another one does not lie inside it.";
    SideVanishes "side-vanishes" Error "Moving the walls to another face leaves nothing of a side.";
    AssumedVeneer "assumed-veneer" Warning "The thickness of the veneer is needed, not given, and assumed.";
    AssumedWall "assumed-wall" Warning "The thickness of the wall is needed, not given, and assumed.";
    ShortJog "short-jog" Warning "A side so short that whole-foot rounding drops it.";
    MisclosureSpread "misclosure-spread" Warning "The walk misses its start within the tolerance; the miss was spread over the sides.";
    NoClosureCheck "no-closure-check" Warning "A side by closing leaves its direction without a check.";
    WideTolerance "wide-tolerance" Warning "The tolerance is wider than a tape needs, so that a walk that misses by much is closed.";
    TenthsBesideInches "tenths-beside-inches" Warning "A length with a point and no mark, or in inches alone, stands among lengths in feet and inches: was it read otherwise?";
    NoTurn "no-turn" Warning "Two sides in a row run the same way, and no closure check would show a wall missing between them.";
    UpperOverhangs "upper-overhangs" Warning "An upper level reaches beyond the level under it.";
    LevelsOutOfOrder "levels-out-of-order" Warning "A level is typed after one that its name puts above it.";
    LevelsOverlap "levels-overlap" Warning "A level that stands beside another lies on it.";
    EmptyLevel "empty-level" Warning "A level has no space, so that nothing of it is drawn or counted.";
    CommonOnOneLevel "common-on-one-level" Warning "A level has common walls, and a level next to it has walls as long and none that is common.";
    PlacedAbove "placed-above" Note "The file does not say where an upper level stands, and it fits over the level under it.";
    NotPlaced "not-placed" Note "Nothing says where a stair, an opening or another part of a space is: it is drawn where the house's first walk begins.";
    StreetWays "street-ways" Note "The walls of a walk are typed as front, right, back and left: as walked, or as the sides on which they stand?";
    OverallDiffers "overall-differs" Warning "An overall length differs from the sides it spans.";
    TieDiffers "tie-differs" Warning "A distance taped across differs from the outline.";
    OpenNamedStair "open-named-stair" Warning "An opening is named as a stair; stairs are never taken off.";
    RecordedDoNotClose "recorded-do-not-close" Warning "The recorded sides do not come back to their start.";
    RecordedNotUsed "recorded-not-used" Warning "The recorded length of a slanted side does not say its run and rise.";
    OutlineDoesNotClose "outline-does-not-close" Warning "Somebody else's outline does not come back to its start.";
    OutlineCrosses "outline-crosses" Warning "Two sides of somebody else's outline cross or touch.";
    WallByBearing "wall-by-bearing" Warning "A wall of a house is given by bearing: the walls are closed as a deed's calls are.";
    UnitMissing "unit-missing" Warning "A number without a unit stands among lengths in meters: feet, or a unit left off?";
    FarOff "far-off" Warning "An area is three times what the sides come to, or more, or a third of it: is a digit wrong, or a unit?";
    LivingApart "living-apart" Warning "Living space that stands apart from the rest of its level.";
    TouchesNothing "touches-nothing" Warning "A space that begins at a corner of another has no wall against any.";
    TypedTwice "typed-twice" Warning "Two spaces of a level have the same kind and the same name: is one of them typed twice?";
    NamedBelowGrade "named-below-grade" Warning "A level named as a basement counts as above grade.";
    NamedOtherwise "named-otherwise" Warning "A space named as a garage, a porch or the like is counted as living area, or deducted.";
    OutbuildingAbove "outbuilding-above" Warning "An outbuilding, a garage or a patio is typed under an upper level, or an outbuilding under one below grade.";
    UnlikelySize "unlikely-size" Warning "A house far larger or smaller than houses are, or land smaller than the house on it.";
    UnlikelyValue "unlikely-value" Warning "A tax rate, a price or a year that is hardly meant: is a digit or a point wrong?";
    NothingCounted "nothing-counted" Warning "No space is counted, so the measured area is nothing.";
    RoundedSidesCross "rounded-sides-cross" Warning "With whole-foot walls the outline crosses itself.";
    LetterNotShown "letter-not-shown" Warning "The pages have no letter for a character.";
}

impl fmt::Display for Word {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}

/// One error, warning or note: its code word, its place in the text, what was found, and what to type instead.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Diagnostic {
    word: Word,
    message: String,
    span: Span,
    label: String,
    others: Vec<(Span, String)>,
    notes: Vec<String>,
    helps: Vec<String>,
    fixes: Vec<Fix>,
    repairs: Vec<(Span, String)>,
    /// How many of the helps say what the repairs say.
    repeating: usize,
    moves: Vec<Move>,
}

/// Another place for a space that lies where it cannot be; it was tried.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Move {
    /// The line of the space that is moved.
    pub of: Span,
    /// The name of the space that it then stands against.
    pub beside: String,
    /// The words of directions that its sides exchange, in pairs; empty if they stay as they are.
    pub exchanged: Vec<[&'static str; 2]>,
    /// Where it begins, as it is typed: `from "House" corner 3`; empty if it stays where it is.
    pub start: String,
    /// The direction of the side of the other space on which it then lies.
    pub side: &'static str,
    /// Against which of its walls, and where along it: `against side 2, at its south end`.
    pub stands: String,
}

/// A replacement that can be applied as is: `text` replaces the bytes of `span`.
///
/// It changes only how something is spelled, never what was measured. `text` may have several lines.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub struct Fix {
    /// The bytes to be replaced.
    pub span: Span,
    /// The text to put there.
    pub text: String,
}

impl Fix {
    /// A fix that replaces `span` with `text`.
    pub(crate) fn new(span: Span, text: impl Into<String>) -> Fix {
        Fix { span, text: text.into() }
    }
}

impl Diagnostic {
    /// A diagnostic at `span`. The message is lower case, without a period at the end.
    pub(crate) fn new(word: Word, span: Span, message: impl Into<String>) -> Diagnostic {
        Diagnostic {
            word,
            message: message.into(),
            span,
            label: String::new(),
            others: Vec::new(),
            notes: Vec::new(),
            helps: Vec::new(),
            fixes: Vec::new(),
            repairs: Vec::new(),
            repeating: 0,
            moves: Vec::new(),
        }
    }

    /// Sets the label printed beside the carets that mark the place.
    pub(crate) fn label(mut self, label: impl Into<String>) -> Diagnostic {
        self.label = label.into();
        self
    }

    /// Adds another place to mark, with its own label.
    pub(crate) fn also(mut self, span: Span, label: impl Into<String>) -> Diagnostic {
        self.others.push((span, label.into()));
        self
    }

    /// Adds a note: a fact that explains the message.
    pub(crate) fn note(mut self, note: impl Into<String>) -> Diagnostic {
        self.notes.push(note.into());
        self
    }

    /// Adds a line of help: what to do about it.
    pub(crate) fn help(mut self, help: impl Into<String>) -> Diagnostic {
        self.helps.push(help.into());
        self
    }

    /// Adds the replacement that the help suggests.
    pub(crate) fn fix(mut self, span: Span, text: impl Into<String>) -> Diagnostic {
        self.fixes.push(Fix { span, text: text.into() });
        self
    }

    /// Adds how a side reads without the error that a label asks about.
    pub(crate) fn repair(mut self, span: Span, side: impl Into<String>) -> Diagnostic {
        self.repairs.push((span, side.into()));
        self
    }

    /// Marks the helps so far as saying what the repairs say.
    pub(crate) fn repeating(mut self) -> Diagnostic {
        self.repeating = self.helps.len();
        self
    }

    /// Adds another place for the space that it is about.
    pub(crate) fn moved(mut self, to: Move) -> Diagnostic {
        self.moves.push(to);
        self
    }

    /// Replaces the help lines and the fixes, and the message too if a new one is given.
    pub(crate) fn instead(
        mut self,
        message: Option<String>,
        helps: Vec<String>,
        fixes: Vec<Fix>,
    ) -> Diagnostic {
        if let Some(message) = message {
            self.message = message;
        }
        (self.helps, self.fixes, self.repeating) = (helps, fixes, 0);
        self
    }

    /// The stable code word.
    #[must_use]
    pub fn word(&self) -> Word {
        self.word
    }

    /// What is wrong, in one line.
    #[must_use]
    pub fn message(&self) -> &str {
        &self.message
    }

    /// The place in the text, in bytes.
    #[must_use]
    pub fn span(&self) -> Span {
        self.span
    }

    /// The other places that are marked, each with its label.
    #[must_use]
    pub fn others(&self) -> &[(Span, String)] {
        &self.others
    }

    /// The lines of help: what to type or do instead.
    #[must_use]
    pub fn helps(&self) -> &[String] {
        &self.helps
    }

    /// The lines of help without those that say what the repairs say.
    #[must_use]
    pub fn further_helps(&self) -> &[String] {
        self.helps.get(self.repeating..).unwrap_or_default()
    }

    /// The replacements that the helps suggest, the most likely first; empty where a person has to decide.
    #[must_use]
    pub fn fixes(&self) -> &[Fix] {
        &self.fixes
    }

    /// Sides that may have been misread: the place of each, and its direction and length without the error that its label
    /// asks about, empty if it is one side too many. After a line break it is the direction of a side that may be missing
    /// after it. They change what was measured, so that a person has to choose.
    #[must_use]
    pub fn repairs(&self) -> &[(Span, String)] {
        &self.repairs
    }

    /// Other places for the space that it is about, those on one side of the other space together. A person has to
    /// choose.
    #[must_use]
    pub fn moves(&self) -> &[Move] {
        &self.moves
    }

    /// Whether it is an error.
    #[must_use]
    pub fn is_error(&self) -> bool {
        self.word.severity() == Severity::Error
    }
}

/// The text of a sides file and its name; finds the line and column of a byte.
#[derive(Clone, Debug, Default)]
pub struct Source {
    name: String,
    text: String,
    /// Where each line begins; computed on first use.
    line_starts: OnceLock<Vec<usize>>,
}

impl Source {
    /// A text with the name shown in diagnostics.
    pub fn new(name: impl Into<String>, text: impl Into<String>) -> Source {
        let (name, text) = (visible_name(name.into()), text.into());
        Source { name, text, line_starts: OnceLock::new() }
    }

    fn line_starts(&self) -> &[usize] {
        self.line_starts.get_or_init(|| {
            let ends = self.text.match_indices('\n').map(|(i, _)| i + 1);
            std::iter::once(0).chain(ends).collect()
        })
    }

    /// The name shown in diagnostics.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The whole text.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The line that contains the byte `at`, counted from 1.
    pub fn line(&self, at: usize) -> usize {
        self.line_starts().partition_point(|&start| start <= at).max(1)
    }

    /// The column of the byte `at` in characters, counted from 1.
    pub fn column(&self, at: usize) -> usize {
        let start = self.line_starts()[self.line(at) - 1];
        self.text.get(start..at).map_or(1, |before| before.chars().count() + 1)
    }

    /// The byte range of the lines from the one that contains `first` to the one that contains `last`.
    fn lines(&self, first: usize, last: usize) -> Range<usize> {
        let start = self.line_starts()[self.line(first) - 1];
        let end = self.line_starts().get(self.line(last)).copied().unwrap_or(self.text.len());
        start..end
    }

    /// `span` cut to the text and to character boundaries.
    fn clamped(&self, span: Span) -> Range<usize> {
        let floor = |mut at: usize| {
            at = at.min(self.text.len());
            while !self.text.is_char_boundary(at) {
                at -= 1;
            }
            at
        };
        let start = floor(span.start);
        start..floor(span.end).max(start)
    }
}

/// How many diagnostics are drawn; any more are only counted.
const DRAWN_AT_MOST: usize = 50;

/// A line with more bytes than this is drawn without its text.
const DRAWN_LINE_AT_MOST: usize = 4_000;

/// The width of the drawing when none is given.
const USUAL_COLUMNS: usize = 80;

/// Draws the diagnostics under the text they are about, in the order given, 80 columns wide.
pub fn draw(source: &Source, diagnostics: &[Diagnostic], styled: bool) -> String {
    draw_within(source, diagnostics, styled, USUAL_COLUMNS)
}

/// Like [`draw`], but `columns` wide (30 to 100). Lines of the source text are not wrapped.
pub fn draw_within(
    source: &Source,
    diagnostics: &[Diagnostic],
    styled: bool,
    columns: usize,
) -> String {
    let columns = columns.clamp(30, 100);
    let renderer = if styled { Renderer::styled() } else { Renderer::plain() };
    let mut page = String::new();
    for diagnostic in diagnostics.iter().take(DRAWN_AT_MOST) {
        page.push_str(&renderer.render(&[group(source, diagnostic, columns)]));
        page.push_str("\n\n");
    }
    page.push_str(&left_out(diagnostics, 0));
    page
}

/// A sentence that says how many errors and warnings were not drawn; empty if all were.
fn left_out(diagnostics: &[Diagnostic], more: usize) -> String {
    let rest = diagnostics.get(DRAWN_AT_MOST..).unwrap_or_default();
    let errors = rest.iter().filter(|diagnostic| diagnostic.is_error()).count();
    let warnings = rest.len() - errors;
    let parts: Vec<String> = [(errors + more, "more error"), (warnings, "more warning")]
        .into_iter()
        .filter(|(number, _)| *number > 0)
        .map(|(number, noun)| words::count(number, noun))
        .collect();
    if parts.is_empty() { String::new() } else { format!("… and {}\n", words::all_of(&parts)) }
}

fn group<'a>(source: &'a Source, diagnostic: &'a Diagnostic, columns: usize) -> Group<'a> {
    let (level, name) = match diagnostic.word.severity() {
        Severity::Error => (Level::ERROR, "error"),
        Severity::Warning => (Level::WARNING, "warning"),
        Severity::Note => (Level::NOTE, "note"),
    };
    let word = diagnostic.word.as_str();
    // The first line begins with `error[word]: `; the others are indented by the same amount.
    let before = name.len() + word.len() + 4;
    let title = crate::diagnostic::words::filled(
        &diagnostic.message,
        columns.saturating_sub(before + 1).max(12),
    );
    let title = level.primary_title(title).id(word);
    let mut group = Group::with_title(title).element(snippet(source, diagnostic));
    for note in &diagnostic.notes {
        group = group.element(message(Level::NOTE, note, columns));
    }
    for help in &diagnostic.helps {
        group = group.element(message(Level::HELP, help, columns));
    }
    group
}

fn message<'a>(level: Level<'a>, text: &str, columns: usize) -> Message<'a> {
    let is_offer = text.starts_with("did you mean `");
    let fill = if is_offer { words::filled_around_offers } else { words::filled };
    level.message(fill(text, columns - 14))
}

/// Only the lines that the diagnostic points at, so that a large file draws as fast as a small one.
fn snippet<'a>(
    source: &'a Source,
    diagnostic: &'a Diagnostic,
) -> Snippet<'a, annotate_snippets::Annotation<'a>> {
    let places = || diagnostic.others.iter().map(|(span, _)| *span).chain([diagnostic.span]);
    let first = places().map(|span| source.clamped(span).start).min().unwrap_or(0);
    let last = places().map(|span| source.clamped(span).start).max().unwrap_or(0);
    let shown = source.lines(first, last);
    if shown.len() > DRAWN_LINE_AT_MOST && source.line(first) == source.line(last) {
        return Snippet::source("(a line too long to show)")
            .path(source.name())
            .line_start(source.line(first))
            .annotation(AnnotationKind::Primary.span(0..1));
    }
    let within = |span: Span| {
        let range = source.clamped(span);
        let end = range.end.min(shown.end);
        range.start - shown.start..end.max(range.start) - shown.start
    };
    let label = |text: &'a str| (!text.is_empty()).then_some(text);
    let mut snippet = Snippet::source(visible(&source.text[shown.clone()]))
        .path(source.name())
        .line_start(source.line(first))
        .annotation(
            AnnotationKind::Primary.span(within(diagnostic.span)).label(label(&diagnostic.label)),
        );
    for (span, text) in &diagnostic.others {
        snippet =
            snippet.annotation(AnnotationKind::Context.span(within(*span)).label(label(text)));
    }
    snippet
}

/// The name shown above a drawing, with hidden characters escaped.
fn visible_name(name: String) -> String {
    let is_plain = name.bytes().all(|byte| matches!(byte, b' '..=b'~'));
    if !is_plain && name.contains(is_hidden) { escaped(&name) } else { name }
}

/// The text with each hidden character replaced by visible ones of the same number of bytes, so that spans stay
/// valid.
fn visible(text: &str) -> Cow<'_, str> {
    let hidden = |c: char| is_hidden(c) && !matches!(c, '\n' | '\r' | '\t');
    if !text.contains(hidden) {
        return Cow::Borrowed(text);
    }
    let shown = |c: char| match c.len_utf8() {
        _ if !hidden(c) => c,
        1 => '?',
        2 => '¿',
        3 => '\u{fffd}',
        _ => '\u{1f533}',
    };
    Cow::Owned(text.chars().map(shown).collect())
}

/// All errors and warnings of one sides file, together with its text.
#[derive(Clone, Debug)]
pub struct Diagnostics {
    source: Source,
    list: Vec<Diagnostic>,
    /// How many errors are left out of the list.
    more: usize,
}

impl Diagnostics {
    /// Sorts the diagnostics and keeps them with their text.
    pub(crate) fn new(source: Source, mut list: Vec<Diagnostic>) -> Diagnostics {
        sort(&mut list);
        Diagnostics { source, list, more: 0 }
    }

    /// These diagnostics, plus `more` errors that are counted but not listed.
    pub(crate) fn and_more(self, more: usize) -> Diagnostics {
        Diagnostics { more, ..self }
    }

    /// How many errors are not in the list: if there are very many, only the first are kept.
    pub fn more(&self) -> usize {
        self.more
    }

    /// The errors, then the warnings, each in file order.
    pub fn list(&self) -> &[Diagnostic] {
        &self.list
    }

    /// The text they are about.
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// The diagnostics drawn for a person to read, in color if `styled`.
    pub fn drawn(&self, styled: bool) -> String {
        draw(&self.source, &self.list, styled)
    }
}

impl fmt::Display for Diagnostics {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.drawn(false))
    }
}

impl std::error::Error for Diagnostics {}

/// Sorts errors before warnings, each in file order; at the same place, the order found is kept.
pub(crate) fn sort(list: &mut [Diagnostic]) {
    list.sort_by_key(|diagnostic| (!diagnostic.is_error(), diagnostic.span.start));
}

/// What the user typed, in backticks, with hidden characters escaped; cut off after 60 characters.
pub(crate) fn quoted(text: &str) -> String {
    let mut shown = String::from("`");
    for (i, character) in text.chars().enumerate() {
        if i == 60 {
            shown.push('…');
            break;
        }
        if is_hidden(character) {
            let _ = write!(shown, "{}", character.escape_unicode());
        } else {
            shown.push(character);
        }
    }
    shown.push('`');
    shown
}

/// A text with hidden characters escaped, to be printed on a terminal: `a\u{202e}b`.
///
/// ```
/// assert_eq!(fairfoot::diagnostic::escaped("a\u{202e}b\u{1b}"), "a\\u{202e}b\\u{1b}");
/// ```
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for character in text.chars() {
        match is_hidden(character) {
            true => shown.extend(character.escape_default()),
            false => shown.push(character),
        }
    }
    shown
}

/// Whether a character cannot be seen, or changes the order or shape of what is seen: control and format
/// characters, line and paragraph separators, every default-ignorable code point of Unicode (soft hyphen, joiners,
/// variation selectors, tags, fillers), and the blank Braille pattern.
pub(crate) fn is_hidden(character: char) -> bool {
    if character.is_ascii() {
        return character.is_ascii_control();
    }
    use GeneralCategory::{Control, Format, LineSeparator, ParagraphSeparator};
    matches!(character.general_category(), Control | Format | LineSeparator | ParagraphSeparator)
        || IGNORABLE.iter().any(|range| range.contains(&character))
}

/// What is shown as nothing though it is no format character: the other code points with the property
/// Default_Ignorable_Code_Point, and the blank Braille pattern. They were written down from memory; a test compares
/// them with the tables of a library.
const IGNORABLE: [std::ops::RangeInclusive<char>; 11] = [
    '\u{34F}'..='\u{34F}',
    '\u{115F}'..='\u{1160}',
    '\u{17B4}'..='\u{17B5}',
    '\u{180B}'..='\u{180F}',
    '\u{2060}'..='\u{206F}',
    '\u{2800}'..='\u{2800}',
    '\u{3164}'..='\u{3164}',
    '\u{FE00}'..='\u{FE0F}',
    '\u{FFA0}'..='\u{FFA0}',
    '\u{FFF0}'..='\u{FFF8}',
    '\u{E0000}'..='\u{E0FFF}',
];

/// The SHA-256 of a text, in hexadecimal (NIST FIPS 180-4).
#[must_use]
pub fn sha256(text: &str) -> String {
    Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests;
