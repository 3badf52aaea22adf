//! The fonts of the pages: which letters they have, how wide a text is, and what replaces missing letters.
//!
//! The fonts are subsets of DejaVu 2.37 under a different name (`fonts/LICENSE`, `fonts/make.py`), without layout
//! features, so that a text is as wide as its letters together.
#![expect(clippy::float_arithmetic, reason = "widths of letters are in points")]

use crate::wording::accounts::PAGE_TO_COME;
use std::collections::BTreeSet;
use std::sync::LazyLock;

use textwrap::core::Fragment;
use ttf_parser::Face;
use usvg::fontdb;

/// A typeface.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Typeface {
    #[default]
    Plain,
    Bold,
    /// Monospaced, for the sides file word for word.
    Even,
}

const PLAIN: &[u8] = include_bytes!("sans.ttf");
const BOLD: &[u8] = include_bytes!("sans-bold.ttf");
const EVEN: &[u8] = include_bytes!("mono.ttf");

/// What replaces a letter that the fonts do not have.
pub(crate) const SUBSTITUTE: char = '\u{fffd}';

impl Typeface {
    pub(crate) const ALL: [Typeface; 3] = [Typeface::Plain, Typeface::Bold, Typeface::Even];

    /// Its family name and weight.
    pub(crate) const fn family(self) -> (&'static str, u16) {
        match self {
            Typeface::Plain => ("Fairfoot Sans", 400),
            Typeface::Bold => ("Fairfoot Sans", 700),
            Typeface::Even => ("Fairfoot Mono", 400),
        }
    }

    /// The whole font.
    pub(crate) const fn font(self) -> &'static [u8] {
        match self {
            Typeface::Plain => PLAIN,
            Typeface::Bold => BOLD,
            Typeface::Even => EVEN,
        }
    }

    /// The compressed font for an SVG page: with all letters, or with common ones only.
    pub(crate) const fn packed(self, all: bool) -> &'static [u8] {
        match (self, all) {
            (Typeface::Plain, false) => include_bytes!("sans-basic.woff2"),
            (Typeface::Plain, true) => include_bytes!("sans-full.woff2"),
            (Typeface::Bold, false) => include_bytes!("sans-bold-basic.woff2"),
            (Typeface::Bold, true) => include_bytes!("sans-bold-full.woff2"),
            (Typeface::Even, false) => include_bytes!("mono-basic.woff2"),
            (Typeface::Even, true) => include_bytes!("mono-full.woff2"),
        }
    }

    fn letters(self) -> &'static Letters {
        static ALL: LazyLock<[Letters; 3]> =
            LazyLock::new(|| Typeface::ALL.map(|hand| Letters::of(hand.font())));
        match self {
            Typeface::Plain => &ALL[0],
            Typeface::Bold => &ALL[1],
            Typeface::Even => &ALL[2],
        }
    }
}

/// A database with these fonts only, none from the machine.
pub(crate) fn fonts() -> fontdb::Database {
    let mut fonts = fontdb::Database::new();
    for hand in Typeface::ALL {
        fonts.load_font_data(hand.font().to_vec());
    }
    fonts
}

/// A font opened to measure widths.
struct Letters {
    /// `None` if the font cannot be opened; then every letter is missing.
    face: Option<Face<'static>>,
    /// The widths of ASCII letters, relative to the size; `None` for those that the font does not have.
    common: [Option<f64>; 128],
}

impl Letters {
    fn of(font: &'static [u8]) -> Letters {
        let face = Face::parse(font, 0).ok();
        let mut letters = Letters { face, common: [None; 128] };
        for code in 0x20..0x7f_u8 {
            let letter = char::from(code);
            let width = letters.finds(letter).then(|| letters.measured(letter));
            letters.common[usize::from(code)] = width;
        }
        letters
    }

    fn has(&self, letter: char) -> bool {
        self.common_width(letter).is_some() || self.finds(letter)
    }

    fn finds(&self, letter: char) -> bool {
        self.face.as_ref().is_some_and(|face| face.glyph_index(letter).is_some())
    }

    fn common_width(&self, letter: char) -> Option<f64> {
        self.common.get(usize::try_from(u32::from(letter)).ok()?).copied().flatten()
    }

    /// The width of a letter at size 1.
    fn width(&self, letter: char) -> f64 {
        self.common_width(letter).unwrap_or_else(|| self.measured(letter))
    }

    fn measured(&self, letter: char) -> f64 {
        let Some(face) = &self.face else { return 0.6 };
        let index = face.glyph_index(letter).or_else(|| face.glyph_index(SUBSTITUTE));
        let advance = index.and_then(|index| face.glyph_hor_advance(index)).unwrap_or(0);
        f64::from(advance) / f64::from(face.units_per_em())
    }
}

/// The width of a text in points.
pub(crate) fn width_pt(hand: Typeface, size_pt: f64, words: &str) -> f64 {
    let letters = hand.letters();
    // What stands for a number of a page has the width of the letter beside it.
    let drawn = words.chars().filter(|letter| *letter != PAGE_TO_COME);
    drawn.map(|letter| letters.width(letter)).sum::<f64>() * size_pt
}

/// A letter of a font as it is drawn: the number of its glyph, and its width at size 1.
pub(crate) fn glyph(hand: Typeface, letter: char) -> (u16, f64) {
    let letters = hand.letters();
    let index = letters
        .face
        .as_ref()
        .and_then(|face| face.glyph_index(letter).or_else(|| face.glyph_index(SUBSTITUTE)));
    (index.map_or(0, |index| index.0), letters.width(letter))
}

/// Whether the font that has only common letters has this one.
pub(crate) fn is_common(letter: char) -> bool {
    const SIGNS: &str = "′″⅛⅜⅝⅞–—∅≤≥→↔↑√∑⌀△▲◆●✓≈−…‘’“”•σ\u{fffd}";
    (' '..='~').contains(&letter)
        || ('\u{a0}'..='\u{ff}').contains(&letter)
        || SIGNS.contains(letter)
}

/// Whether the pages can show a letter.
fn is_shown(letter: char) -> bool {
    [Typeface::Plain, Typeface::Bold].iter().all(|hand| hand.letters().has(letter))
}

/// The letters of a text that the pages cannot show.
pub(crate) fn missing(words: &str) -> BTreeSet<char> {
    words.chars().filter(|&letter| !letter.is_control() && !is_shown(letter)).collect()
}

/// A character that marks a place to be filled later. It is an error in a sides file, so no typed text holds it.
pub(crate) const PLACEHOLDER: char = '\u{1}';

/// The text with every letter that the fonts do not have replaced by a visible sign.
pub(crate) fn shown(words: &str) -> String {
    let show = |letter: char| match letter {
        '\t' => ' ',
        PLACEHOLDER => letter,
        _ if is_shown(letter) => letter,
        _ => SUBSTITUTE,
    };
    words.chars().map(show).collect()
}

/// The monospaced typeface if it has every letter of a text, else the plain typeface.
pub(crate) fn even_if_it_can(words: &str) -> Typeface {
    let letters = Typeface::Even.letters();
    if words.chars().all(|letter| letters.has(letter)) { Typeface::Even } else { Typeface::Plain }
}

/// A word to be placed in a line.
#[derive(Debug)]
struct Word<'a> {
    text: &'a str,
    width_pt: f64,
    space_pt: f64,
}

impl Fragment for Word<'_> {
    fn width(&self) -> f64 {
        self.width_pt
    }

    fn whitespace_width(&self) -> f64 {
        self.space_pt
    }

    fn penalty_width(&self) -> f64 {
        0.0
    }
}

/// A text wrapped into lines no wider than `room_pt`; a word too long for a line is cut.
pub(crate) fn wrapped(hand: Typeface, size_pt: f64, words: &str, room_pt: f64) -> Vec<String> {
    let glued = crate::diagnostic::words::glued(words);
    let space_pt = width_pt(hand, size_pt, " ");
    let mut pieces: Vec<Word<'_>> = Vec::new();
    for word in glued.split(' ').filter(|word| !word.is_empty()) {
        let cut = cut(hand, size_pt, word, room_pt);
        let last = cut.len().saturating_sub(1);
        for (i, text) in cut.into_iter().enumerate() {
            let space_pt = if i == last { space_pt } else { 0.0 };
            pieces.push(Word { text, width_pt: width_pt(hand, size_pt, text), space_pt });
        }
    }
    if pieces.is_empty() {
        return Vec::new();
    }
    textwrap::wrap_algorithms::wrap_first_fit(&pieces, &[room_pt]).into_iter().map(joined).collect()
}

fn joined(line: &[Word<'_>]) -> String {
    let mut text = String::new();
    for (i, word) in line.iter().enumerate() {
        text.push_str(word.text);
        if word.space_pt > 0.0 && i + 1 < line.len() {
            text.push(' ');
        }
    }
    text.replace(crate::diagnostic::words::GLUE, " ")
}

/// A word in pieces that each fit a line.
fn cut(hand: Typeface, size_pt: f64, word: &str, room_pt: f64) -> Vec<&str> {
    if width_pt(hand, size_pt, word) <= room_pt {
        return vec![word];
    }
    let letters = hand.letters();
    let (mut pieces, mut from, mut width) = (Vec::new(), 0, 0.0);
    for (at, letter) in word.char_indices() {
        let wide = letters.width(letter) * size_pt;
        if at > from && width + wide > room_pt {
            pieces.push(&word[from..at]);
            (from, width) = (at, 0.0);
        }
        width += wide;
    }
    pieces.push(&word[from..]);
    pieces
}

/// The text shortened with an ellipsis if it is wider than `room_pt`.
pub(crate) fn shortened(hand: Typeface, size_pt: f64, words: &str, room_pt: f64) -> String {
    if width_pt(hand, size_pt, words) <= room_pt {
        return words.to_owned();
    }
    let mut kept = words.to_owned();
    while !kept.is_empty()
        && width_pt(hand, size_pt, &kept) + width_pt(hand, size_pt, "…") > room_pt
    {
        kept.pop();
    }
    // A word is not cut in two if there are others before it.
    let is_cut_in_a_word = words[kept.len()..].starts_with(|letter: char| !letter.is_whitespace());
    if let Some(at) = kept.rfind(' ').filter(|&at| is_cut_in_a_word && 2 * at > kept.len()) {
        kept.truncate(at);
    }
    kept.truncate(kept.trim_end().len());
    kept + "…"
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_letter_of_the_reports_is_in_the_fonts() {
        assert!(missing("0123456789'\" ½¼¾⅛ ² × ± · – — ° ÷ é ñ ǎ ắ Ж Ω").is_empty());
        assert_eq!(missing("👍 家").into_iter().collect::<String>(), "家👍");
        assert_eq!(shown("a👍b\tc"), "a\u{fffd}b c");
    }

    #[test]
    fn a_long_word_is_cut_and_nothing_is_lost() {
        let word = "W".repeat(400);
        let lines = wrapped(Typeface::Plain, 9.0, &word, 200.0);
        assert!(lines.len() > 10);
        assert_eq!(lines.concat(), word);
        assert!(lines.iter().all(|line| width_pt(Typeface::Plain, 9.0, line) <= 200.0));
    }

    #[test]
    fn figures_are_equally_wide() {
        // DejaVu Sans: every digit is 1303 of 2048 units wide (read from the font's own table).
        for figure in '0'..='9' {
            let width = width_pt(Typeface::Plain, 2048.0, &figure.to_string());
            approx::assert_abs_diff_eq!(width, 1303.0, epsilon = 1e-9);
        }
    }

    #[test]
    fn a_text_cut_short_fits() {
        let short = shortened(Typeface::Bold, 9.0, "a name that goes on and on", 60.0);
        assert!(short.ends_with('…') && width_pt(Typeface::Bold, 9.0, &short) <= 60.0, "{short}");
    }
}
