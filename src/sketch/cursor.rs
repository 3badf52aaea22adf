//! A cursor over the tokens of one line, which reports what was expected where something else was found.

use crate::diagnostic::words;
use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::geometry::compass::Direction;
use crate::sketch::lexer::{Placed, Token};
use crate::sketch::statement::{Kind, Named, Unit};
use crate::sketch::wanted::Wanted;
use crate::sketch::{nouns, phrases};

/// Says that an error has been reported, so the rest of the line is not read.
#[derive(Debug)]
pub(crate) struct ErrorReported;

pub(crate) type Read<T> = Result<T, ErrorReported>;

/// What may stand where a word of a list is expected.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Expected<'a> {
    /// Only a word of the list; the phrase says where: `after `by``. It may be empty.
    Word(&'a str),
    /// A word of the list or the end of the line.
    WordOrEnd,
}

impl<'a> From<&'a str> for Expected<'a> {
    fn from(place: &'a str) -> Expected<'a> {
        Expected::Word(place)
    }
}

/// What a quoted text is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Sort {
    Any,
    Name,
    SpaceName,
}

/// A position in the tokens of one line.
pub(crate) struct Cursor<'a> {
    tokens: &'a [Placed<'a>],
    at: usize,
    /// The end of the line, for errors about something missing there.
    end: usize,
    pub(crate) text: &'a str,
    pub(crate) units: Unit,
    /// The first number without a unit in the file; `units` may not come after it.
    pub(crate) first_bare: Option<Span>,
    /// The street side, which gives `back`, `right` and `left` their meaning.
    pub(crate) front: Option<Direction>,
    /// Whether a word has been met that needs the street side while it is not known.
    pub(crate) needs_front: bool,
    /// Whether that has been told of an earlier line.
    pub(crate) front_told: bool,
    pub(crate) faults: &'a mut Vec<Diagnostic>,
    /// What was expected at the place where reading stopped.
    pub(super) wanted: Wanted,
}

impl<'a> Cursor<'a> {
    pub(crate) fn new(
        tokens: &'a [Placed<'a>],
        text: &'a str,
        units: Unit,
        faults: &'a mut Vec<Diagnostic>,
    ) -> Cursor<'a> {
        let end = tokens.last().map_or(0, |placed| placed.span.end);
        Cursor {
            tokens,
            at: 0,
            end,
            text,
            units,
            first_bare: None,
            front: None,
            needs_front: false,
            front_told: false,
            faults,
            wanted: Wanted::default(),
        }
    }

    /// Whether a number is left on the line.
    pub(crate) fn has_number(&self) -> bool {
        self.tokens.iter().skip(self.at).any(|placed| matches!(placed.token, Token::Number(_)))
    }

    pub(crate) fn peek(&self) -> Option<&'a Token<'a>> {
        self.peek_at(0)
    }

    pub(crate) fn peek_at(&self, ahead: usize) -> Option<&'a Token<'a>> {
        self.tokens.get(self.at + ahead).map(|placed| &placed.token)
    }

    /// The span of the next token, or an empty span at the end of the line.
    pub(crate) fn span(&self) -> Span {
        self.tokens.get(self.at).map_or(Span::new(self.end, self.end), |placed| placed.span)
    }

    /// The span of the token just read.
    pub(crate) fn last_span(&self) -> Span {
        let last = self.at.checked_sub(1).and_then(|i| self.tokens.get(i));
        last.map_or(self.span(), |placed| placed.span)
    }

    /// The span from the start of `start` to the end of the token just read.
    pub(crate) fn since(&self, start: Span) -> Span {
        start.to(self.last_span())
    }

    pub(crate) fn advance(&mut self) {
        self.at += 1;
    }

    pub(crate) fn at_end(&self) -> bool {
        self.at >= self.tokens.len()
    }

    pub(crate) fn fault<T>(&mut self, diagnostic: Diagnostic) -> Read<T> {
        self.faults.push(diagnostic);
        Err(ErrorReported)
    }

    /// The next token, described for a message.
    pub(crate) fn found(&self) -> String {
        if self.at_end() {
            return "the end of the line".to_owned();
        }
        let span = self.span();
        match self.peek() {
            Some(Token::Text(text)) => format!("the text {}", quoted(text)),
            _ => quoted(self.text.get(span.start..span.end).unwrap_or("")),
        }
    }

    /// Reports that something else was expected here.
    pub(crate) fn unexpected<T>(&mut self, wanted: &str, help: &str) -> Read<T> {
        let message = format!("wanted {wanted}, found {}", self.found());
        self.fault(Diagnostic::new(Word::Unexpected, self.span(), message).help(help))
    }

    /// Consumes `token` if it is next.
    pub(crate) fn accept(&mut self, token: &Token<'_>) -> bool {
        let here = self.peek() == Some(token);
        if here {
            self.advance();
        }
        here
    }

    /// The next token in lower case, if it is a word.
    pub(crate) fn peek_word(&self) -> Option<&'a str> {
        self.peek_word_at(0)
    }

    pub(crate) fn peek_word_at(&self, ahead: usize) -> Option<&'a str> {
        match self.peek_at(ahead) {
            Some(Token::Word(word)) => Some(word),
            _ => None,
        }
    }

    /// Consumes one of `known` if it is next.
    pub(crate) fn accept_word(&mut self, known: &[&str]) -> bool {
        let here = self.peek_word().is_some_and(|word| known.contains(&word));
        if here {
            self.advance();
        }
        here
    }

    /// Consumes one of `known`. A near miss is reported and then read as the nearest word.
    pub(crate) fn keyword<'k>(&mut self, known: &[&'k str]) -> Option<&'k str> {
        let typed = self.peek_word()?;
        let meant = match known.iter().find(|&&word| word == typed) {
            Some(word) => word,
            // `county` is a known phrase, not a misspelled `court`.
            None if self.at == 0 && phrases::is_first(typed) => return None,
            // `front porch`: a kind of space is no misspelled direction.
            None if Kind::ALL.iter().any(|kind| kind.word() == typed) => return None,
            // `weast` is as near to one way as to another.
            None if self.at == 0 && words::between_two_ways(typed).is_some() => return None,
            // `record` begins a line and is no misspelled `recorded`: the whole line is mended.
            None if self.at > 0 && typed == "record" => return None,
            None => {
                let near = words::nearest(typed, known)
                    .filter(|near| self.at > 0 || may_be_mistyped(typed, near))?;
                self.tell_unknown_word(near);
                near
            }
        };
        self.advance();
        Some(meant)
    }

    fn tell_unknown_word(&mut self, near: &str) {
        let message = format!("{} is not a word of a sides file", self.found());
        let diagnostic = Diagnostic::new(Word::UnknownWord, self.span(), message)
            .label("not known")
            .help(format!("did you mean `{near}`?"))
            .fix(self.span(), near);
        self.faults.push(diagnostic);
    }

    /// Records that one of these words could come here.
    pub(crate) fn want(&mut self, words: &[&str]) {
        self.wanted.words.extend(words.iter().map(|&word| word.to_owned()));
    }

    /// Consumes one of `known`, or reports an error that lists them.
    pub(crate) fn expect_keyword<'k, 'e>(
        &mut self,
        known: &[&'k str],
        expected: impl Into<Expected<'e>>,
    ) -> Read<&'k str> {
        match self.keyword(known) {
            Some(word) => Ok(word),
            None => {
                let ticked: Vec<String> = known.iter().map(|word| format!("`{word}`")).collect();
                let list: Vec<&str> = ticked.iter().map(String::as_str).collect();
                let expected = expected.into();
                let wanted = match expected {
                    Expected::Word("") => String::new(),
                    Expected::Word(what) => format!("{what}: "),
                    Expected::WordOrEnd => "nothing more, or: ".to_owned(),
                };
                let may_end = expected == Expected::WordOrEnd;
                let is_number = matches!(self.peek(), Some(Token::Number(_) | Token::Fraction(..)));
                let help = if is_number && known.contains(&"within") {
                    "type its sides below it, one on each line; put anything else at the end of the line, after a `#`"
                } else if is_number && may_end {
                    "a length is one number of feet, then one of inches: `28' 4\"`; put anything else at the end of the line, after a `#`"
                } else if may_end {
                    "put anything else at the end of the line, after a `#`"
                } else {
                    &format!("type {} here", words::one_of(&list))
                };
                self.wanted.words.extend(known.iter().map(|&word| word.to_owned()));
                self.unexpected(&format!("{wanted}{}", words::one_of(&list)), help)
            }
        }
    }

    /// Consumes a quoted text that is not empty.
    pub(crate) fn expect_text(&mut self, what: &str) -> Read<Named> {
        self.text_of(Sort::Any, what)
    }

    /// Consumes a quoted name that is not empty.
    pub(crate) fn expect_name(&mut self, what: &str) -> Read<Named> {
        self.text_of(Sort::Name, what)
    }

    /// Consumes the quoted name of a space. Its size is often typed there.
    pub(crate) fn expect_space_name(&mut self) -> Read<Named> {
        self.text_of(Sort::SpaceName, "the name of the space")
    }

    fn text_of(&mut self, sort: Sort, what: &str) -> Read<Named> {
        let span = self.span();
        match self.peek() {
            Some(Token::Text(text)) if text.trim().is_empty() => {
                let message = format!("{what} is empty");
                self.fault(
                    Diagnostic::new(Word::EmptyText, span, message)
                        .help("write it between the marks, for example `\"House\"`"),
                )
            }
            Some(Token::Text(text)) => {
                self.advance();
                Ok(Named { text: text.trim().to_owned(), span })
            }
            _ => {
                self.wanted.text = true;
                let rest = self.rest_of_line();
                let is_size = rest.starts_with(|first: char| first.is_ascii_digit());
                let help = if is_size && sort == Sort::SpaceName {
                    format!(
                        "if that is its name, put it between two marks: `\"{rest}\"`; if it is its size, give it a name and type its sides below, a line each"
                    )
                } else if rest.is_empty() {
                    "a text stands between two marks, for example `\"House\"`".to_owned()
                } else if crate::sketch::mend::measures(&rest) {
                    "write the name first, with a `\"` on each side, and after it what was published"
                        .to_owned()
                } else if sort != Sort::Any && !crate::sketch::mend::may_be_name(&rest) {
                    "write the name alone between two marks, and after it anything else".to_owned()
                } else {
                    format!("put it between two marks: `\"{rest}\"`")
                };
                self.unexpected(&format!("{what} between two `\"`"), &help)
            }
        }
    }

    /// The rest of the line as typed; empty if it contains a quotation mark, and so could not be put in quotes.
    pub(crate) fn rest_of_line(&self) -> String {
        let rest = self.text.get(self.span().start..self.end).unwrap_or("");
        if rest.contains(['"', '“', '”']) { String::new() } else { rest.to_owned() }
    }

    /// Consumes a quoted text if one is next.
    pub(crate) fn accept_text(&mut self, what: &str) -> Read<Option<Named>> {
        match self.peek() {
            Some(Token::Text(_)) => self.expect_text(what).map(Some),
            _ => Ok(None),
        }
    }

    /// Consumes a whole number.
    pub(crate) fn expect_whole_number(&mut self, what: &str, help: &str) -> Read<usize> {
        if let Some(Token::Number(digits)) = self.peek()
            && let Ok(number) = digits.parse::<usize>()
        {
            self.advance();
            return Ok(number);
        }
        self.unexpected(what, help)
    }

    /// Reports anything left on the line.
    pub(crate) fn expect_end(&mut self) -> Read<()> {
        if self.at_end() {
            return Ok(());
        }
        self.unexpected(
            "nothing more on this line",
            "put anything else at the end of the line, after a `#`",
        )
    }

    /// Stores `value`, or reports that it was already stated on this line.
    pub(crate) fn once<T>(&mut self, slot: &mut Option<T>, value: T, what: &str) -> Read<()> {
        if slot.replace(value).is_none() {
            return Ok(());
        }
        let span = self.last_span();
        self.fault(
            Diagnostic::new(Word::StatedTwice, span, format!("{what} is said twice on this line"))
                .help("keep one of the two"),
        )
    }

    /// Sets a flag, or reports that it was already set on this line.
    pub(crate) fn flag(&mut self, flag: &mut bool, what: &str) -> Read<()> {
        let mut said = flag.then_some(());
        *flag = true;
        self.once(&mut said, (), what)
    }
}

/// Whether the first word of a line may be a mistyped word of the format. Short words are near to many others: `hot`
/// and `slot` are no `lot`, and what people call a space is no other word.
fn may_be_mistyped(typed: &str, near: &str) -> bool {
    let (typed, near) = (typed.to_lowercase(), near.to_lowercase());
    let first = |word: &str| word.chars().next();
    let is_swapped = typed.chars().nth(1) == first(&near) && first(&typed) == near.chars().nth(1);
    let begins_alike = first(&typed) == first(&near) || is_swapped;
    !nouns::is_known(&typed)
        && (begins_alike || near.chars().count() > 4 || typed.chars().count() > 4)
}
