//! Splits a line into pieces without reporting errors, so that they can be put together differently.

/// The kind of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sort {
    Word,
    Number,
    /// A text with its quotation marks.
    Text,
    /// Any other character.
    Mark,
}

/// A piece of a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Piece {
    pub(super) sort: Sort,
    pub(super) text: String,
    /// Where it begins in its line, in bytes.
    pub(super) at: usize,
    /// Whether there is no space before it.
    pub(super) touches: bool,
}

impl Piece {
    pub(super) fn new(sort: Sort, text: impl Into<String>) -> Piece {
        Piece { sort, text: text.into(), at: 0, touches: false }
    }

    pub(super) fn word(text: &str) -> Piece {
        Piece::new(Sort::Word, text)
    }

    /// The piece without a space before it.
    pub(super) fn touching(mut self) -> Piece {
        self.touches = true;
        self
    }

    pub(super) fn is_word(&self, words: &[&str]) -> bool {
        self.sort == Sort::Word && words.contains(&self.text.to_lowercase().as_str())
    }

    pub(super) fn is_mark(&self, marks: &str) -> bool {
        self.sort == Sort::Mark && self.text.chars().all(|mark| marks.contains(mark))
    }

    pub(super) fn is_number(&self) -> bool {
        self.sort == Sort::Number
    }

    /// Whether it may be the year of a figure, a sale or a change of the house.
    pub(super) fn is_year(&self) -> bool {
        self.is_number()
            && self.text.len() == 4
            && ["19", "20"].iter().any(|century| self.text.starts_with(century))
    }
}

/// The pieces of a line.
pub(super) fn cut(line: &str) -> Vec<Piece> {
    let mut pieces: Vec<Piece> = Vec::new();
    let (mut at, mut touches) = (0, false);
    while let Some(first) = line[at..].chars().next() {
        if first.is_whitespace() {
            (at, touches) = (at + first.len_utf8(), false);
            continue;
        }
        let after_digit = touches && pieces.last().is_some_and(ends_as_number);
        let (sort, length) = piece_at(&line[at..], first, after_digit);
        let text = line[at..at + length].to_owned();
        pieces.push(Piece { sort, text, at, touches });
        (at, touches) = (at + length, true);
    }
    pieces
}

fn ends_as_number(piece: &Piece) -> bool {
    piece.is_number() || piece.is_mark("½¼¾⅛⅜⅝⅞")
}

/// The kind of the piece that begins here, and its length in bytes.
fn piece_at(rest: &str, first: char, after_digit: bool) -> (Sort, usize) {
    let run = |is_of_it: &dyn Fn(char, Option<char>) -> bool| {
        let mut characters = rest.char_indices().peekable();
        while let Some((at, c)) = characters.next() {
            if !is_of_it(c, characters.peek().map(|(_, next)| *next)) {
                return at;
            }
        }
        rest.len()
    };
    let is_digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
    if first.is_ascii_digit() || first == '.' && is_digit(rest.chars().nth(1)) {
        let length = run(&|c, next| c.is_ascii_digit() || matches!(c, '.' | ',') && is_digit(next));
        return (Sort::Number, length.max(1));
    }
    if first.is_alphabetic() {
        let length = run(&|c, next| {
            c.is_alphabetic()
                || matches!(c, '-' | '\'' | '’') && next.is_some_and(char::is_alphabetic)
        });
        return (Sort::Word, length.max(first.len_utf8()));
    }
    if matches!(first, '"' | '“' | '”') && !after_digit {
        let inner = &rest[first.len_utf8()..];
        if let Some(end) = inner.find(['"', '“', '”']) {
            let mark = inner[end..].chars().next().map_or(0, char::len_utf8);
            return (Sort::Text, first.len_utf8() + end + mark);
        }
    }
    (Sort::Mark, first.len_utf8())
}

/// The line made of these pieces, with single spaces.
pub(super) fn join(pieces: &[Piece]) -> String {
    let mut line = String::new();
    for piece in pieces {
        if !line.is_empty() && !piece.touches && !line.ends_with('\n') {
            line.push(' ');
        }
        line.push_str(&piece.text);
    }
    line
}

/// The pieces with those from `first` up to, not including, `last` replaced.
pub(super) fn replaced(pieces: &[Piece], first: usize, last: usize, by: &[Piece]) -> Vec<Piece> {
    [&pieces[..first], by, &pieces[last..]].concat()
}
