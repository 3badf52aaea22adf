//! Walls whose words are in another order, or whose direction is not the first word.

use super::measure::{date_from, length_at};
use super::walls::{STREET, WAYS, is_way};
use super::{Answer, Rule, Sort, Typed, first_of, measures, plainly, quoted};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        slash,
        point_before_a_fraction,
        one_letter,
        turn_and_way,
        wall_and_going,
        whole_width,
        bay_turned,
        photo_title,
        two_dates,
        north_true,
    ];
    first_of(rules, typed)
}

/// `7 1\2"`: a fraction with the other slash.
fn slash(typed: &Typed<'_>) -> Option<Answer> {
    let characters: Vec<char> = typed.line.chars().collect();
    let is_digit = |at: usize| characters.get(at).is_some_and(char::is_ascii_digit);
    let leans =
        |at: usize| characters[at] == '\\' && at > 0 && is_digit(at - 1) && is_digit(at + 1);
    (0..characters.len()).any(leans).then(|| {
        // `9\1/2"` has its slash.
        let has_slash = typed.line.contains('/');
        let by = if has_slash { ' ' } else { '/' };
        let line: String =
            (0..characters.len()).map(|at| if leans(at) { by } else { characters[at] }).collect();
        let cause = if has_slash { BEFORE_A_FRACTION } else { "a fraction takes `/`" };
        Answer::line(line, cause)
    })
}

const BEFORE_A_FRACTION: &str = "only a space goes between the inches and their fraction";

/// `22' 7.1/2"`: a point between the inches and their fraction.
fn point_before_a_fraction(typed: &Typed<'_>) -> Option<Answer> {
    let at = (0..typed.pieces.len()).find(|&at| {
        let bottom = typed.piece(at + 2).filter(|bottom| bottom.is_number());
        let slash = typed.piece(at + 1).is_some_and(|slash| slash.is_mark("/") && slash.touches);
        let top = typed.pieces[at]
            .text
            .split_once(['.', ','])
            .and_then(|(_, top)| top.parse::<u32>().ok());
        let bottom = bottom.and_then(|bottom| bottom.text.parse::<u32>().ok());
        slash
            && typed.pieces[at].is_number()
            && top
                .zip(bottom)
                .is_some_and(|(top, bottom)| top < bottom && [2, 4, 8, 16, 32].contains(&bottom))
    })?;
    let piece = &typed.pieces[at];
    let number = piece.text.replace(['.', ','], " ");
    let line = format!(
        "{}{number}{}",
        &typed.line[..piece.at],
        &typed.line[piece.at + piece.text.len()..]
    );
    Some(Answer::line(line, BEFORE_A_FRACTION))
}

/// `O 9' 4"`: west in some languages, east in another.
fn one_letter(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1).filter(|measure| measure.has_unit)?;
    typed.says(0, &["o"]).then(|| {
        let rest = typed.rest(measure.end);
        let line = |way: &str| format!("{way} {} {rest}", measure.text).trim_end().to_owned();
        Answer::Lines(
            vec![line("west"), line("east")],
            format!(
                "`{}` is west in Spanish and French (oeste, ouest) and east in German (Ost)",
                typed.text(0, 1)
            ),
        )
    })
}

/// `turn left, west 9' 4"`: the turn is given, and then the way.
fn turn_and_way(typed: &Typed<'_>) -> Option<Answer> {
    let turn = usize::from(typed.says(0, &["then", "and", "now"]));
    if !typed.says(turn, &["turn", "turning", "bear", "go"])
        || !typed.says(turn + 1, &["left", "right"])
    {
        return None;
    }
    let mut at = turn + 2;
    while typed.says(at, &["and", "then", "to", "go", "going", "the", "heading", "due"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(",;:-–.→>"))
    {
        at += 1;
    }
    length_at(&typed.pieces, at + 1).filter(|_| typed.says(at, &WAYS))?;
    Some(Answer::line(typed.rest(at), "a side begins with the way that it runs, not with the turn"))
}

/// `left side, going back 26' 6"`: where the wall is, and then the way that it was walked.
fn wall_and_going(typed: &Typed<'_>) -> Option<Answer> {
    let stands = ["side", "wall", "face", "elevation"];
    let begins = typed.says(0, &WAYS) || typed.says(0, &STREET) || typed.says(0, &["rear"]);
    if !begins || !typed.says(1, &stands) {
        return None;
    }
    let goes = typed.find(
        2,
        &["going", "goes", "running", "runs", "heading", "walking", "walked", "toward", "towards"],
    )?;
    let mut at = goes + 1;
    while typed.says(at, &["to", "the", "toward", "towards", "due"]) {
        at += 1;
    }
    let way = match typed.lower(at).as_str() {
        "forward" | "forwards" => "front".to_owned(),
        "backward" | "backwards" | "rear" | "rearward" => "back".to_owned(),
        way if WAYS.contains(&way) || STREET.contains(&way) => way.to_owned(),
        _ => return None,
    };
    let by_street = STREET.contains(&way.as_str());
    // `west side going back` mixes the compass with the street; it is asked about elsewhere.
    if by_street != (typed.says(0, &STREET) || typed.says(0, &["rear"])) {
        return None;
    }
    let mut first = at + 1;
    while typed.piece(first).is_some_and(|mark| mark.is_mark(",:;=-–")) {
        first += 1;
    }
    let measure = length_at(&typed.pieces, first).filter(|measure| measure.has_unit)?;
    (measure.end == typed.pieces.len()).then(|| {
        let note = quoted(typed.text(0, 2));
        Answer::line(
            format!("{way} {} note {note}", measure.text),
            "a side begins with the way that it runs; where the wall stands goes in a note",
        )
    })
}

/// `total west 46' 6"`, `total E-W 54' 4" at rear`: a whole width taped past the jogs.
fn whole_width(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["total", "whole", "entire", "complete"]) {
        return None;
    }
    let mut at = 1;
    while typed.says(at, &["width", "depth", "length", "wall", "side", "from", "is"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(":,=-–"))
    {
        at += 1;
    }
    let (way, next) = match typed.lower(at).as_str() {
        "e-w" | "w-e" | "east-west" | "west-east" => ("east".to_owned(), at + 1),
        "n-s" | "s-n" | "north-south" | "south-north" => ("north".to_owned(), at + 1),
        way if WAYS.contains(&way) => {
            let to = typed.says(at + 1, &["to"])
                || typed.piece(at + 1).is_some_and(|mark| mark.is_mark("-–/"));
            let next = if to && typed.says(at + 2, &WAYS) { at + 3 } else { at + 1 };
            (way.to_owned(), next)
        }
        _ => return None,
    };
    let mut first = next;
    while typed.piece(first).is_some_and(|mark| mark.is_mark(":,=")) || typed.says(first, &["is"]) {
        first += 1;
    }
    let measure = length_at(&typed.pieces, first)?;
    let rest = typed.rest(measure.end);
    if measures(rest) || rest.contains('"') {
        return None;
    }
    let rest = plainly(rest);
    let comment = if rest.is_empty() { rest } else { format!("  # {rest}") };
    Some(Answer::line(
        format!("overall {way} {}{comment}", measure.text),
        "a whole width or depth that was taped past the jogs is `overall`",
    ))
}

/// `bay 8' west out 2' flat 4'`: the width before the direction.
fn bay_turned(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["bay"]) {
        return None;
    }
    let width = length_at(&typed.pieces, 1).filter(|width| width.has_unit)?;
    let mut way = width.end;
    while typed.says(way, &["wide", "to", "the", "toward", "going", "width"])
        || typed.piece(way).is_some_and(|mark| mark.is_mark(","))
    {
        way += 1;
    }
    typed.says(way, &WAYS).then(|| {
        let rest = typed.rest(way + 1).trim_start_matches([',', ';', ' ']).replace(',', "");
        Answer::line(
            format!("bay {} {} {rest}", typed.lower(way), width.text),
            "the direction comes before the length",
        )
    })
}

/// `photo 2: beside the porch`: the title of a photo without its marks.
fn photo_title(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1).filter(|_| is_way(typed, 0))?;
    let photo = typed.find(measure.end, &["photo"])?;
    let rest = typed.rest(photo + 1).trim_start_matches([':', '=', ' ']);
    let words = typed.pieces.get(photo + 1..)?;
    let has_mark = words.iter().any(|piece| piece.is_mark(":;,.()-–&/"));
    let is_other = words.iter().any(|piece| {
        piece.sort == Sort::Text
            || piece.is_word(&[
                "recorded",
                "tolerance",
                "note",
                "file",
                "estimated",
                "common",
                "veneer",
            ])
    });
    let is_file = rest.rsplit_once('.').is_some_and(|(_, ending)| (3..=4).contains(&ending.len()));
    let has_word = words.iter().any(|piece| piece.sort == Sort::Word);
    (has_mark && has_word && !is_other && !is_file && !measures(rest)).then(|| {
        Answer::line(
            format!("{} photo {}", typed.text(0, photo), quoted(rest)),
            "the title of a photo needs a `\"` on each side",
        )
    })
}

/// `measured 03/07/2026 by …`: the month first or the day first. In America the month is first.
fn two_dates(typed: &Typed<'_>) -> Option<Answer> {
    if typed.attempt.beside.is_american
        || !typed.says(0, &["measured", "taped", "notice", "date", "surveyed"])
    {
        return None;
    }
    let (first, end, _) = date_from(&typed.pieces, 1)?;
    let pieces = typed.pieces.get(first..end).filter(|pieces| pieces.len() == 5)?;
    let number = |at: usize| pieces[at].text.parse::<i16>().ok();
    let (one, two, year) = (number(0)?, number(2)?, number(4)?);
    let slashed = pieces[1].is_mark("/-") && pieces[3].is_mark("/-");
    if !slashed || one > 12 || two > 12 || one == two || pieces[0].text.len() > 2 {
        return None;
    }
    let year = if year < 100 { 2_000 + year } else { year };
    let line = |month: i16, day: i16| {
        let rest = typed.rest(end);
        let touches = typed.piece(end).is_some_and(|next| next.touches);
        let space = if touches || rest.is_empty() { "" } else { " " };
        format!("{} {year}-{month:02}-{day:02}{space}{rest}", typed.text(0, first))
    };
    Some(Answer::Lines(
        vec![line(one, two), line(two, one)],
        "a date is written year-month-day; here the month may come first, or the day".to_owned(),
    ))
}

/// `north true N 4° E`, `north = true north less 6 deg W`: the bearing of the plan's north.
fn north_true(typed: &Typed<'_>) -> Option<Answer> {
    let begins = usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark("=:")));
    if !typed.says(0, &["north"]) || !typed.says(1 + begins, &["true"]) {
        return None;
    }
    let at = 2 + begins + usize::from(typed.says(2 + begins, &["north"]));
    if typed.says(at, &["n", "s"]) {
        let line = format!("true north {}", typed.rest(at));
        return Some(Answer::line(line, "the line for it begins with `true north`"));
    }
    let degrees = (at..typed.pieces.len()).find(|&at| typed.pieces[at].is_number())?;
    let has_mark = typed.says(degrees + 1, &["deg", "degrees"])
        || typed.piece(degrees + 1).is_some_and(|mark| mark.is_mark("°º"));
    let only = typed.pieces[degrees + 1..].iter().all(|piece| !piece.is_number());
    (has_mark && only).then(|| {
        let number = &typed.pieces[degrees].text;
        Answer::Lines(
            ["E", "W"].map(|toward| format!("true north N {number}° {toward}")).into(),
            "true north is given as a bearing on the plan, which begins at N and ends in E or W"
                .to_owned(),
        )
    })
}

/// Whether two lengths are short and nearly alike, as those of one slanted wall are.
pub(super) fn may_be_one_slant(one: Length, two: Length) -> bool {
    let (less, more) = (one.nm().min(two.nm()), one.nm().max(two.nm()));
    more <= Length::FOOT.nm().saturating_mul(8) && less.saturating_mul(3) >= more.saturating_mul(2)
}
