//! Recognizes whole lines, such as a size or a deed's call, before single words and marks are changed.
//!
//! A line such as `north 9' 4", 8' 10"` or `lot 12 0.35 ac` has words and numbers, each of which could be changed so
//! that the line reads. Here the line is first recognized as a whole. The answer keeps every number or says what it was
//! turned into; or it names what is missing and suggests no line. The doc comment of each rule shows lines that it
//! recognizes; it returns `None` for any other line.

mod abbreviated;
mod already;
mod angled_bay;
mod angles;
mod around;
mod asides;
mod assembled;
mod attic;
mod bays;
mod bays_without_a_way;
mod belongs;
mod beside_place;
mod beside_walls;
mod between;
mod brief;
mod bumps;
mod by_topic;
mod calls;
mod card_figures;
mod card_lines;
mod cladding;
mod clauses;
mod clear;
mod codes;
mod composed;
mod curves;
mod cut_corners;
mod dates;
mod deed_curves;
mod deed_words;
mod deeds;
mod depths;
mod described;
mod digits;
mod eaves;
mod end_to_end;
mod faced_sizes;
mod faces;
mod feet_of_a_lot;
mod figure_parts;
mod figure_words;
mod figures;
mod finish;
mod fractions;
mod from_a_jog;
mod gist;
mod gone;
mod hands;
mod heading;
mod heads;
mod high_rooms;
mod house_line;
mod house_size;
mod in_a_walk;
mod included;
mod indoors;
mod inferred;
mod jogs;
mod lengths;
mod less_a_corner;
mod level_lines;
mod level_words;
mod levels;
mod loose;
mod loose_walls;
mod lots;
mod materials;
mod meant;
mod measure;
mod misread;
mod money;
mod names;
mod nearly;
mod offhand;
mod other_words;
mod outdoors;
mod over_a_part;
mod part_finished;
mod parts;
mod passing;
mod place_words;
mod placed;
mod places;
mod plain_speech;
mod published;
mod recessed;
mod remarks;
mod reordered;
mod rolls;
mod rooms;
mod rows;
mod set_back;
mod shapes;
mod shorthand;
mod side_slips;
mod size_lines;
mod sources;
mod space_slips;
mod spaces;
mod standing;
mod storeys;
mod straight;
mod street;
mod sums;
mod surveyed;
mod tails;
mod titles;
mod told_heads;
mod told_levels;
mod told_parts;
mod told_walls;
mod topics;
mod turns;
mod two_sizes;
mod unmeasured;
mod unnumbered;
mod walked;
mod walks;
mod walls;
mod walls_on_its_line;
mod walls_with_bays;
mod whereabouts;
mod worded;
mod worths;

use super::change::Attempt;
use super::pieces::{Piece, Sort, cut, join};
use crate::sketch::asked::Placeless;

/// Small words between those that say something.
const SMALL: [&str; 7] = ["is", "the", "of", "at", "in", "on", "to"];

/// What an answer without a line to type is about, so that a better one is looked for where it says little.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(in crate::sketch) enum About {
    /// What this line says.
    #[default]
    Line,
    /// No more than how any line begins.
    AnyLine,
    /// The day that a line lacks.
    Day,
    /// A place that cannot be read.
    Place,
}

/// Whether a line speaks of a basement that is another level than its own, or of none.
pub(super) fn is_of_another_level(line: &str) -> bool {
    levels::depths_of_another(line)
}

/// The answer to a line that was recognized.
#[derive(Debug)]
pub(super) enum Answer {
    /// What to type instead, the most likely line first.
    Lines(Vec<String>, String),
    /// What is wrong and what is missing, if no line can be suggested.
    Say {
        /// What is wrong.
        cause: String,
        /// What to do about it.
        help: String,
        about: About,
    },
    /// What is wrong with the line of a space that lacks its place.
    Ask {
        cause: String,
        help: String,
        /// The line without its place.
        asks: Box<Placeless>,
        about: About,
    },
}

impl Answer {
    fn line(line: impl Into<String>, cause: impl Into<String>) -> Answer {
        Answer::Lines(vec![line.into()], cause.into())
    }

    fn say(cause: impl Into<String>, help: impl Into<String>) -> Answer {
        Answer::Say { cause: cause.into(), help: help.into(), about: About::Line }
    }

    /// The answer with what it is about, if no line can be suggested.
    fn about(mut self, what: About) -> Answer {
        if let Answer::Say { about, .. } | Answer::Ask { about, .. } = &mut self {
            *about = what;
        }
        self
    }
}

/// A line as typed, with its pieces.
struct Typed<'a> {
    line: &'a str,
    pieces: Vec<Piece>,
    attempt: &'a Attempt,
}

impl Typed<'_> {
    fn piece(&self, at: usize) -> Option<&Piece> {
        self.pieces.get(at)
    }

    /// Whether the piece at this index is one of these words.
    fn says(&self, at: usize, words: &[&str]) -> bool {
        self.piece(at).is_some_and(|piece| piece.is_word(words))
    }

    /// The piece at this index in lower case.
    fn lower(&self, at: usize) -> String {
        self.piece(at).map(|piece| piece.text.to_lowercase()).unwrap_or_default()
    }

    /// What was typed from the piece at `first` up to the one at `end`, not including it.
    fn text(&self, first: usize, end: usize) -> &str {
        let Some(begin) = self.piece(first).filter(|_| first < end) else { return "" };
        let stop = self.piece(end).map_or(self.line.len(), |piece| piece.at);
        self.line.get(begin.at..stop).unwrap_or_default().trim()
    }

    /// What was typed from the piece at `first` to the end of the line.
    fn rest(&self, first: usize) -> &str {
        self.text(first, self.pieces.len())
    }

    /// A name typed from the piece at `first` up to the one at `end`, with or without its quotation marks.
    fn name(&self, first: usize, end: usize) -> String {
        match self.piece(first) {
            Some(piece) if piece.sort == Sort::Text => {
                piece.text.trim_matches(['"', '“', '”']).trim().to_owned()
            }
            _ => plainly(self.text(first, end)),
        }
    }

    /// Where a call of a lot begins, after `bearing` or another word for it.
    fn first_of_call(&self) -> usize {
        usize::from(self.says(0, &["bearing", "call", "thence", "course"]))
    }

    /// Whether the line is one of a lot, or stands directly below its heading.
    fn is_in_lot(&self) -> bool {
        let beside = &self.attempt.beside;
        beside.in_lot || beside.before.starts_with("lot ")
    }

    /// The first piece from index `from` on that is one of these words.
    fn find(&self, from: usize, words: &[&str]) -> Option<usize> {
        (from..self.pieces.len()).find(|&at| self.says(at, words))
    }

    /// The first piece from index `from` on that is one of these marks.
    fn find_mark(&self, from: usize, marks: &str) -> Option<usize> {
        (from..self.pieces.len()).find(|&at| self.pieces[at].is_mark(marks))
    }

    /// The line without the pieces from `first` up to, not including, `end`.
    fn without(&self, first: usize, end: usize) -> String {
        let mut left = self.pieces[..first].to_vec();
        left.extend(self.pieces[end..].iter().cloned());
        if let Some(next) = left.get_mut(first) {
            next.touches = false;
        }
        join(&left)
    }
}

/// Recognizes one kind of line.
type Rule = fn(&Typed<'_>) -> Option<Answer>;

/// The answer of the first of these rules that has one.
fn first_of(rules: &[Rule], typed: &Typed<'_>) -> Option<Answer> {
    rules.iter().find_map(|rule| rule(typed))
}

/// Recognizes a line as a whole; `None` if no rule does.
pub(super) fn answer(line: &str, attempt: &Attempt) -> Option<Answer> {
    let typed = Typed { line, pieces: cut(line), attempt };
    let _nested = super::nested::Nested::begin()?;
    // The rules may take the first piece for granted: a line of white space alone has none.
    typed.pieces.first()?;
    let rules: &[Rule] = &[
        faced_sizes::answer,
        deeds::several,
        by_topic::early,
        end_to_end::answer,
        told_walls::answer,
        told_levels::answer,
        told_heads::answer,
        told_parts::answer,
        high_rooms::answer,
        from_a_jog::answer,
        turns::answer,
        worded::roughly_with_a_remark,
        lots::size_alone,
        eaves::slopes,
        fractions::nothing_over,
        unmeasured::on_paper,
        bays::and_the_rest,
        already::answer,
        figure_parts::answer,
        size_lines::answer,
        asides::apart_by_two_lengths,
        loose_walls::slanted_out_and_over,
        shorthand::answer,
        passing::answer,
        remarks::apart_from_another,
        recessed::answer,
        angled_bay::answer,
        walls_with_bays::answer,
        bumps::answer,
        card_figures::answer,
        turns::square_bump,
        card_lines::answer,
        beside_walls::answer,
        plain_speech::answer,
        other_words::answer,
        loose_walls::overall_after,
        brief::answer,
        clear::answer,
        titles::answer,
        deed_words::answer,
        heads::units_in_tenths,
        published::footprint,
        names::outline_of,
        around::answer,
        attic::answer,
        included::answer,
        heads::account_in_the_comment,
        walls_on_its_line::answer,
        cut_corners::over_and_up,
        bays_without_a_way::answer,
        set_back::answer,
        bays::answer,
        in_a_walk::answer,
        less_a_corner::answer,
        two_sizes::answer,
        house_size::answer,
        house_line::answer,
        topics::address_alone,
        feet_of_a_lot::answer,
        storeys::as_below,
        level_words::above_a_space,
        unmeasured::part_of_a_wall,
        unmeasured::same_as,
        unmeasured::stands_only,
        rooms::answer,
        indoors::answer,
        between::answer,
        surveyed::answer,
        rolls::answer,
        side_slips::answer,
        space_slips::answer,
        rooms::sunroom,
        rooms::marked_corner,
        rooms::turned_by,
        rooms::wall_after_thence,
        rooms::appraisers_figure,
        rooms::up_or_down,
        unmeasured::named_later,
        unmeasured::said_before,
        loose_walls::lengths_before_ways,
        meant::other_language,
        remarks::note_alone,
        street::between_two,
        street::by_a_side,
        loose::parcel,
        lots::answer,
        tails::bricked,
        part_finished::answer,
        depths::answer,
        angles::answer,
        finish::answer,
        heads::inside_and_thickness,
        loose::copied_level,
        offhand::turned,
        hands::answer,
        abbreviated::answer,
        outdoors::answer,
        cut_corners::answer,
        walked::answer,
        fractions::answer,
        tails::answer,
        worths::sale,
        figures::before_a_title,
        figures::beside_a_price,
        inferred::seen,
        inferred::stated_thickness,
        heading::answer,
        gone::answer,
        cladding::answer,
        storeys::answer,
        placed::answer,
        described::answer,
        nearly::answer,
        offhand::answer,
        level_lines::answer,
        materials::unbricked,
        gist::answer,
        published::answer,
        calls::answer,
        loose_walls::answer,
        assembled::answer,
        meant::answer,
        clauses::answer,
        reordered::answer,
        walks::answer,
        loose::answer,
        asides::answer,
        digits::answer,
        lengths::answer,
        unmeasured::answer,
        topics::answer,
        rows::answer,
        names::answer,
        parts::said_by_the_record,
        street::front,
        dates::answer,
        heads::answer,
        sources::figure,
        figures::answer,
        deeds::answer,
        curves::answer,
        places::answer,
        spaces::answer,
        walls::answer,
        remarks::answer,
        nearly::way,
    ];
    first_of(rules, &typed)
}

pub(super) use faces::STANDS;
pub(super) use feet_of_a_lot::{marked, unit_said};
pub(super) use heading::begins_as_call;
pub(super) use storeys::with_a_space;

/// Whether a line stands in a walk that is not back at its start yet, or between two of its walls.
pub(super) fn is_in_a_walk(line: &str, attempt: &Attempt) -> bool {
    let beside = &attempt.beside;
    let typed = Typed { line, pieces: cut(line), attempt };
    let progress = straight::progress(&typed, &beside.last_walk);
    let follows = super::begins_as_wall(&beside.after);
    let begins = follows && super::begins_as_named_space(&beside.before);
    // A walk with a curve may be at its start for all that is known.
    let is_open = progress.back.is_some() && progress.is_open();
    begins || progress.walls > 0 && (follows || is_open)
}

/// The first length among these pieces, if it is in inches alone: where it begins and ends, and its text.
pub(super) fn first_inches(pieces: &[Piece]) -> Option<(usize, usize, String)> {
    let (first, one) = measure::lengths(pieces, 0).into_iter().next()?;
    (one.has_unit && one.is_inches_alone()).then_some((first, one.end, one.text))
}

/// Whether the first words of a line name a level: `2nd floor`, `upstairs`.
pub(super) fn names_a_level(line: &str) -> bool {
    storeys::names_a_level(line)
}

/// Recognizes a line for which nothing else had an answer.
pub(super) fn late(line: &str, attempt: &Attempt) -> Option<Answer> {
    let typed = Typed { line, pieces: cut(line), attempt };
    typed.pieces.first()?;
    let rules: &[Rule] =
        &[codes::answer, tails::brick_of_a_space, sums::answer, worths::answer, inferred::answer];
    first_of(rules, &typed)
}

/// The format's word for a kind of space; `None` if the word is not one.
pub(super) fn kind_word(word: &str) -> Option<&'static str> {
    spaces::kind_word(word)
}

/// A sentence for each thing that a text says and that has a place of its own in a sides file.
pub(super) fn where_it_belongs(text: &str, attempt: &Attempt) -> Vec<String> {
    belongs::told(&Typed { line: text, pieces: cut(text), attempt })
}

/// Whether a text says more than one wall, a call of a deed or the area of the land.
pub(super) fn is_of_a_walk(text: &str, attempt: &Attempt) -> bool {
    belongs::is_of_a_walk(&Typed { line: text, pieces: cut(text), attempt })
}

/// Whether a text says how thick the walls are and nothing else.
pub(super) fn is_only_a_thickness(text: &str, attempt: &Attempt) -> bool {
    belongs::is_only_a_thickness(&Typed { line: text, pieces: cut(text), attempt })
}

/// The kind of space for which a word stands, as `outbuilding` for a barn.
pub(in crate::sketch) fn kind_meant(word: &str) -> Option<&'static str> {
    already::kind_meant(word)
}

/// The month that a word names, from 1.
pub(super) fn month_named(word: &str) -> Option<i8> {
    measure::month_named(word)
}

/// How many letters have to be changed, added or left out to make one word of another.
pub(super) fn letters_changed(one: &str, other: &str) -> usize {
    offhand::letters_changed(one, other)
}

/// What is recognized in a line that nothing else could read, the best first.
pub(super) fn left_over(line: &str, attempt: &Attempt) -> Vec<Answer> {
    let typed = Typed { line, pieces: cut(line), attempt };
    let rules: &[Rule] = &[
        offhand::replaced_way,
        misread::unknown_unit,
        loose_walls::left_over,
        walls_on_its_line::name_above,
        published::figure,
        assembled::left_over,
        loose::left_over,
        by_topic::answer,
        composed::line,
        composed::by_its_parts,
        topics::left_over,
    ];
    rules.iter().filter(|_| !typed.pieces.is_empty()).filter_map(|rule| rule(&typed)).collect()
}

/// A text between quotation marks, with inch marks inside it as words.
fn quoted(text: &str) -> String {
    format!("\"{}\"", plainly(text))
}

/// A text without inch marks: `6" off` becomes `6 in off`.
pub(super) fn plainly(text: &str) -> String {
    let mut out = String::new();
    for c in text.trim().chars() {
        let after_digit =
            out.ends_with(|last: char| last.is_ascii_digit() || "½¼¾⅛⅜⅝⅞".contains(last));
        match c {
            '"' | '“' | '”' | '″' if after_digit => out.push_str(" in"),
            '"' | '“' | '”' => {}
            c => out.push(c),
        }
    }
    balanced(out.trim().trim_matches([',', ';', ':', ' '])).to_owned()
}

/// A text without parentheses around it, and without an unmatched one at either end.
fn balanced(text: &str) -> &str {
    let inner = text.strip_prefix('(').and_then(|inner| inner.strip_suffix(')'));
    let (open, close) = (text.matches('(').count(), text.matches(')').count());
    match inner {
        Some(inner) if !inner.contains(['(', ')']) => inner.trim(),
        _ if open > close => text.trim_start_matches('('),
        _ if close > open => text.trim_end_matches(')'),
        _ => text,
    }
}

/// The words of a comment, without parentheses around it or marks before it.
pub(super) fn remark(text: &str) -> String {
    let text = text.trim().trim_start_matches(['/', ';', '-', '–', '—', '*', ',', ':', ' ']);
    match text.strip_prefix('(').and_then(|inner| inner.strip_suffix(')')) {
        Some(inner) if !inner.contains(['(', ')']) => inner.trim().to_owned(),
        _ => text.trim().to_owned(),
    }
}

fn is_text(piece: Option<&Piece>) -> bool {
    piece.is_some_and(|piece| piece.sort == Sort::Text)
}

/// Where the first area of a line begins and ends among its pieces, and the area; `None` if it has another one.
pub(super) fn only_area(pieces: &[Piece]) -> Option<(usize, usize, String)> {
    let found = measure::area_from(pieces, 0)?;
    measure::area_from(pieces, found.1).is_none().then_some(found)
}

/// The length that begins at this piece: how it is written, and the piece after it.
pub(super) fn length_from(pieces: &[Piece], at: usize) -> Option<(String, usize)> {
    measure::length_at(pieces, at).map(|measure| (measure.text, measure.end))
}

/// The lengths of a line: its first piece, the one after its last, and how it is written.
pub(super) fn lengths_in(pieces: &[Piece]) -> Vec<(usize, usize, String)> {
    let lengths = measure::lengths(pieces, 0);
    lengths.into_iter().map(|(from, measure)| (from, measure.end, measure.text)).collect()
}

/// Whether a text has a length with its unit, an area, a sum of money or a date in it.
pub(super) fn measures(text: &str) -> bool {
    let pieces = cut(text);
    let units = ["ft", "feet", "foot", "in", "inches", "inch", "m", "meters", "metres"];
    let speaks =
        |two: &[Piece]| super::lengths::is_spoken_number(&two[0].text) && two[1].is_word(&units);
    pieces.windows(2).any(speaks)
        || measure::lengths(&pieces, 0).iter().any(|(_, measure)| measure.has_unit)
        || measure::area_from(&pieces, 0).is_some()
        || measure::money_from(&pieces, 0).is_some()
        || measure::date_from(&pieces, 0).is_some()
}

/// The only sum of money of a line: its first piece, and the piece after it.
pub(super) fn only_sum(pieces: &[Piece]) -> Option<(usize, usize)> {
    let (first, end, _) = measure::money_from(pieces, 0)?;
    measure::money_from(pieces, end).is_none().then_some((first, end))
}

/// Where the first area of a line ends, in bytes.
pub(super) fn area_in(line: &str) -> Option<usize> {
    let pieces = cut(line);
    let (_, end, _) = measure::area_from(&pieces, 0)?;
    pieces.get(end.checked_sub(1)?).map(|last| last.at + last.text.len())
}

/// The size that a line gives, as `13' 9" x 10'`.
pub(super) fn size_in(line: &str) -> Option<&str> {
    let pieces = cut(line);
    let is_by =
        |at: usize| pieces.get(at).is_some_and(|by| by.is_word(&["x", "by"]) || by.is_mark("×*"));
    let (first, end) = measure::lengths(&pieces, 0).iter().find_map(|(at, one)| {
        let two = measure::length_at(&pieces, one.end + 1).filter(|_| is_by(one.end))?;
        Some((*at, two.end))
    })?;
    let stop = pieces.get(end).map_or(line.len(), |piece| piece.at);
    line.get(pieces[first].at..stop).map(str::trim)
}
