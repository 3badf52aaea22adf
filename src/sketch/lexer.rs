//! Splits one line of a sides file into tokens with their spans.

use std::borrow::Cow;

use crate::diagnostic::{Diagnostic, Span, Word, is_hidden, quoted};
use crate::units::money::Currency;

/// A token.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Token<'a> {
    /// Letters, with hyphens between letters, in lower case.
    Word(Cow<'a, str>),
    /// Digits with decimal points and commas, as typed.
    Number(&'a str),
    /// A fraction in one character, such as `½`.
    Fraction(u32, u32),
    /// The text between two quotation marks.
    Text(&'a str),
    /// `'`
    Feet,
    /// A `"` directly after a number.
    Inch,
    Slash,
    Dash,
    Comma,
    Degree,
    /// `$`, `€`, `£`
    Currency(Currency),
}

/// A token with its span.
#[derive(Clone, Debug)]
pub(crate) struct Placed<'a> {
    pub(crate) token: Token<'a>,
    pub(crate) span: Span,
}

/// What is known about a line besides its tokens.
#[derive(Debug, Default)]
pub(crate) struct LexedLine {
    pub(crate) comment: Option<String>,
    /// Whether an error was found, so that the tokens cannot be relied on.
    pub(crate) faulty: bool,
}

/// Splits one line, which begins at byte `offset` of the text, into tokens.
pub(crate) fn lex<'a>(
    line: &'a str,
    offset: usize,
    tokens: &mut Vec<Placed<'a>>,
    faults: &mut Vec<Diagnostic>,
) -> LexedLine {
    let mut lexer = Lexer { line, offset, at: 0, tokens, out: LexedLine::default(), faults };
    while let Some(character) = lexer.peek() {
        lexer.token(character);
    }
    lexer.out
}

struct Lexer<'a, 'f> {
    line: &'a str,
    offset: usize,
    at: usize,
    tokens: &'f mut Vec<Placed<'a>>,
    out: LexedLine,
    faults: &'f mut Vec<Diagnostic>,
}

impl<'a> Lexer<'a, '_> {
    fn peek(&self) -> Option<char> {
        self.line[self.at..].chars().next()
    }

    fn peek_second(&self) -> Option<char> {
        self.line[self.at..].chars().nth(1)
    }

    fn span(&self, start: usize) -> Span {
        Span::new(self.offset + start, self.offset + self.at)
    }

    fn push(&mut self, token: Token<'a>, start: usize) {
        let span = self.span(start);
        self.tokens.push(Placed { token, span });
    }

    fn fault(&mut self, diagnostic: Diagnostic) {
        self.faults.push(diagnostic);
        self.out.faulty = true;
    }

    /// Whether the character just before the current one is a digit or a one-character fraction.
    fn touches_number(&self) -> bool {
        let before = self.line[..self.at].chars().next_back();
        before.is_some_and(|c| c.is_ascii_digit() || vulgar_fraction(c).is_some())
    }

    fn token(&mut self, character: char) {
        let start = self.at;
        match character {
            ' ' | '\t' | '\u{a0}' => self.at += character.len_utf8(),
            '#' => self.comment(),
            '0'..='9' => self.number(),
            '.' if self.peek_second().is_some_and(|c| c.is_ascii_digit()) => self.number(),
            c if c.is_alphabetic() => self.word(),
            c if is_inch_mark(c) && self.touches_number() => self.single(Token::Inch),
            '"' | '“' | '”' => self.text(),
            c if is_foot_mark(c) => self.foot_mark(),
            '/' | '⁄' => self.single(Token::Slash),
            '-' | '–' | '‐' | '‑' => self.single(Token::Dash),
            ',' => self.single(Token::Comma),
            '°' | 'º' => self.single(Token::Degree),
            '$' => self.single(Token::Currency(Currency::Dollar)),
            '€' => self.single(Token::Currency(Currency::Euro)),
            '£' => self.single(Token::Currency(Currency::Pound)),
            c => match vulgar_fraction(c) {
                Some((top, bottom)) => self.single(Token::Fraction(top, bottom)),
                None => self.stray(c, start),
            },
        }
    }

    fn single(&mut self, token: Token<'a>) {
        let start = self.at;
        self.at += self.peek().map_or(0, char::len_utf8);
        self.push(token, start);
    }

    fn take_while(&mut self, wanted: impl Fn(char, Option<char>) -> bool) -> &'a str {
        let start = self.at;
        while let Some(character) = self.peek() {
            if !wanted(character, self.peek_second()) {
                break;
            }
            self.at += character.len_utf8();
        }
        &self.line[start..self.at]
    }

    /// Takes a run of plain ASCII characters of one kind, if what follows it needs no special handling.
    fn take_plain(&mut self, is_of_it: fn(&u8) -> bool) -> Option<&'a str> {
        let rest = &self.line[self.at..];
        let length = rest.bytes().take_while(is_of_it).count();
        let ends = matches!(rest.as_bytes().get(length), None | Some(b' ' | b'\'' | b'"' | b'/'));
        (ends && length > 0).then(|| {
            self.at += length;
            &rest[..length]
        })
    }

    fn word(&mut self) {
        let start = self.at;
        if let Some(word) = self.take_plain(u8::is_ascii_lowercase) {
            return self.push(Token::Word(Cow::Borrowed(word)), start);
        }
        let word = self.take_while(|c, next| {
            c.is_alphabetic() && !matches!(c, 'º' | 'ª')
                || c == '-' && next.is_some_and(char::is_alphabetic)
        });
        if word.is_empty() {
            return self.single(Token::Degree);
        }
        let is_lower = word.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'-');
        let word = if is_lower { Cow::Borrowed(word) } else { Cow::Owned(word.to_lowercase()) };
        self.push(Token::Word(word), start);
        // `sq. ft.`, `sq.ft.`, `in.`: the period is part of the abbreviation.
        let next = self.peek_second();
        let is_square = |token: &Placed<'_>| token.token == Token::Word(Cow::Borrowed("sq"));
        if self.peek() == Some('.') && self.tokens.last().is_some_and(is_square)
            || self.peek() == Some('.') && !next.is_some_and(char::is_alphanumeric)
        {
            self.at += 1;
        } else if self.peek() == Some('.') && next.is_some_and(|next| next.is_ascii_digit()) {
            // `N.42'` could be 0.42 or 42, so it is an error.
            let at = self.at;
            self.stray('.', at);
        }
        self.squared(start);
    }

    /// Reads `ft²`, `ft2` or `m^2`: a squared unit of length is a unit of area.
    fn squared(&mut self, start: usize) {
        let unit = match self.tokens.last() {
            Some(Placed { token: Token::Word(word), .. }) => match word.as_ref() {
                "ft" | "feet" | "foot" => "sqft",
                "m" => "sqm",
                _ => return,
            },
            _ => return,
        };
        let rest = &self.line[self.at..];
        let Some(mark) = ["²", "^2", "2"].into_iter().find(|mark| rest.starts_with(mark)) else {
            return;
        };
        let after = rest[mark.len()..].chars().next();
        if after.is_some_and(|c| c.is_alphanumeric() || matches!(c, '.' | '\'' | '"')) {
            return;
        }
        self.at += mark.len();
        self.tokens.pop();
        self.push(Token::Word(Cow::Borrowed(unit)), start);
    }

    fn number(&mut self) {
        let start = self.at;
        if let Some(number) = self.take_plain(u8::is_ascii_digit) {
            return self.push(Token::Number(number), start);
        }
        let is_digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
        let number =
            self.take_while(|c, next| c.is_ascii_digit() || c == '.' || c == ',' && is_digit(next));
        self.push(Token::Number(number), start);
    }

    /// Reads a foot mark; two in a row without a space are an inch mark.
    fn foot_mark(&mut self) {
        let (start, after_number) = (self.at, self.touches_number());
        self.at += self.peek().map_or(0, char::len_utf8);
        if after_number && self.peek().is_some_and(is_foot_mark) {
            self.at += self.peek().map_or(0, char::len_utf8);
            return self.push(Token::Inch, start);
        }
        self.push(Token::Feet, start);
    }

    fn text(&mut self) {
        let start = self.at;
        self.at += self.peek().map_or(0, char::len_utf8);
        let rest = &self.line[self.at..];
        let inner = &rest[..rest.find(['"', '“', '”']).unwrap_or(rest.len())];
        self.at += inner.len();
        if self.peek().is_none() {
            let after_number =
                matches!(self.tokens.last(), Some(Placed { token: Token::Number(_), .. }));
            let span = Span::new(self.offset + start, self.offset + start + 1);
            let fault =
                Diagnostic::new(Word::UnfinishedText, span, "this text has no end on its line")
                    .label("begins here");
            // `1O`: it begins like a number and ends like a word.
            let before = self.line[..start].rsplit(' ').next().unwrap_or_default();
            let is_mistyped = before.starts_with(|first: char| first.is_ascii_digit())
                && before.ends_with(char::is_alphabetic);
            let help = if is_mistyped {
                "a `\"` right after a letter is no inch mark: is a letter typed for a digit, O for 0 or l for 1?"
            } else if after_number {
                "an inch mark touches its number: `7\"`; a text needs a second `\"` at its end"
            } else {
                "put a `\"` at the end of the text"
            };
            return self.fault(fault.help(help));
        }
        // It ends at an inch mark.
        if inner.ends_with(|last: char| last.is_ascii_digit()) && runs_on(inner).is_some() {
            let span = Span::new(self.offset + start, self.offset + self.at + 1);
            let fault =
                Diagnostic::new(Word::UnfinishedText, span, "this name ends at an inch mark")
                    .help("put a `\"` at the end of the name");
            return self.fault(fault);
        }
        self.at += self.peek().map_or(0, char::len_utf8);
        self.push(Token::Text(inner), start);
    }

    fn comment(&mut self) {
        let text = self.line[self.at..].trim_end();
        self.out.comment = Some(text.to_owned());
        self.at = self.line.len();
    }

    fn stray(&mut self, character: char, start: usize) {
        self.at += character.len_utf8();
        if is_hidden(character) {
            return; // reported once for the whole line, texts and comments included
        }
        let shown = quoted(&character.to_string());
        let fault = Diagnostic::new(
            Word::StrayCharacter,
            self.span(start),
            format!("{shown} means nothing here"),
        )
        .help("take it out; a name goes between two `\"`, anything else to the end of the line, after a `#`");
        self.fault(fault);
    }
}

fn is_foot_mark(character: char) -> bool {
    matches!(character, '\'' | '’' | '‘' | '′' | '´' | '`')
}

fn is_inch_mark(character: char) -> bool {
    matches!(character, '"' | '”' | '“' | '″')
}

fn vulgar_fraction(character: char) -> Option<(u32, u32)> {
    Some(match character {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => return None,
    })
}
/// Where a text goes on with what follows a name, as `Deck start north 30' 4`: the `"` at the end of the name is missing,
/// and the text ends at another mark. `None` if it does not.
pub(super) fn runs_on(text: &str) -> Option<usize> {
    const AFTER: [(&str, &[&str]); 7] = [
        (" start ", &["north ", "east ", "south ", "west ", "n ", "e ", "s ", "w "]),
        (" from ", &["corner ", "\""]),
        (" within ", &["\""]),
        (" measured ", &["to "]),
        (" not ", &["counted"]),
        (" recorded ", &["0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "."]),
        (" veneer ", &["0", "1", "2", "3", "4", "5", "6", "7", "8", "9", "none"]),
    ];
    let begins = AFTER.iter().filter_map(|(word, next)| {
        let at = text.find(word)?;
        let rest = &text[at + word.len()..];
        next.iter().any(|next| rest.starts_with(next)).then_some(at)
    });
    begins.min()
}
