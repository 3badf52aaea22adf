//! Suggestions for lines with several lengths: parts of a wall, several walls, comments that contain a length.

use super::super::compass::{is_upright, way_and_back};
use super::super::pieces::Piece;
use super::measure::{Measure, length_at, lengths, written};
use super::walls::{DATA, WAYS, is_way};
use super::{Answer, Typed, remark, reordered};
use crate::units::length::Length;

const ONE_LENGTH: &str = "a wall has one length";

/// `north 30' 2" west 4' north 3'`: puts each wall on its own line.
pub(super) fn several_walls(typed: &Typed<'_>) -> Option<Answer> {
    let mut lines = Vec::new();
    let mut walls = Vec::new();
    let mut at = 0;
    while at < typed.pieces.len() {
        let way = typed.piece(at).filter(|_| is_way(typed, at))?;
        let measure = length_at(&typed.pieces, at + 1).filter(|measure| measure.has_unit)?;
        lines.push(format!("{} {}", way.text, measure.text));
        walls.push((way.text.to_lowercase(), measure.length));
        at = measure.end;
        while typed
            .piece(at)
            .is_some_and(|piece| piece.is_mark(",;./→>-–") || piece.is_word(&["then", "and"]))
        {
            at += 1;
        }
    }
    if let [(one, first), (two, second)] = &walls[..] {
        let upright = |way: &str| way_and_back(way).map(|(way, _)| is_upright(way));
        if upright(one) != upright(two) && reordered::may_be_one_slant(*first, *second) {
            return Some(Answer::Lines(
                vec![lines.join("\n"), format!("diagonal {}", lines.join(" "))],
                "each side goes on its own line; one slanted wall of both lengths is a `diagonal`"
                    .to_owned(),
            ));
        }
    }
    (lines.len() >= 2).then(|| Answer::line(lines.join("\n"), "each side goes on its own line"))
}

/// `north 30' and a half`: offers half a foot and half an inch.
pub(super) fn and_a_half(typed: &Typed<'_>) -> Option<Answer> {
    let measure =
        length_at(&typed.pieces, 1).filter(|measure| is_way(typed, 0) && measure.has_unit)?;
    let mut at = measure.end + usize::from(typed.says(measure.end, &["and"]));
    at += usize::from(typed.says(at, &["a", "one", "an"]));
    let part = typed.lower(at);
    let twelfths = match part.as_str() {
        "half" => 6,
        "quarter" => 3,
        _ => return None,
    };
    if at == measure.end || at + 1 != typed.pieces.len() || measure.is_metric() {
        return None;
    }
    let inch = Length::INCH.nm();
    let more = if measure.is_whole_feet() && !measure.text.contains(['"', '”']) {
        twelfths * inch
    } else {
        (twelfths * inch).div_euclid(12)
    };
    let all = Length::from_nm(measure.length.nm() + more);
    Some(Answer::line(
        format!("{} {}", typed.lower(0), written(all, &measure)),
        "a length is written in digits",
    ))
}

/// `bearing N 1° E 142.67' (rec. 142.7')`: moves the record's length to its place.
pub(super) fn said_by_the_record(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["bearing", "diagonal", "arc"]) || typed.find(1, &["recorded"]).is_some() {
        return None;
    }
    let open = (1..typed.pieces.len()).find(|&at| typed.pieces[at].is_mark("(["))?;
    let [(_, measure)] = &lengths(&typed.pieces, open)[..] else { return None };
    typed
        .find(open, &["rec", "record", "records", "card", "county", "plat", "deed", "assessor"])?;
    let is_last = typed.pieces[measure.end..].iter().all(|piece| piece.is_mark(")]"));
    let line = format!("{} recorded {}", typed.text(0, open), measure.text);
    is_last.then(|| Answer::line(line, "the record's length goes after `recorded`"))
}

/// `north 15' 1" x 2`, `north 15' 1" twice`: offers the wall once, or that many times.
pub(super) fn twice(typed: &Typed<'_>) -> Option<Answer> {
    let is_times = |at: usize| {
        typed.says(at, &["x", "times"]) || typed.piece(at).is_some_and(|piece| piece.is_mark("×*@"))
    };
    let before = is_way(typed, 0)
        && typed.piece(1).is_some_and(|piece| piece.is_number() && piece.text.len() == 1)
        && is_times(2);
    let from = if before { 3 } else { 1 };
    let measure =
        length_at(&typed.pieces, from).filter(|measure| is_way(typed, 0) && measure.has_unit)?;
    let end = measure.end;
    let times = if before && end == typed.pieces.len() {
        typed.lower(1).parse::<i64>().ok().filter(|times| (2..=9).contains(times))?
    } else if typed.says(end, &["twice"]) && typed.pieces.len() == end + 1 {
        2
    } else if typed.piece(end).is_some_and(|piece| piece.is_mark("/÷"))
        && typed.pieces.len() == end + 2
    {
        let parts: i64 =
            typed.lower(end + 1).parse().ok().filter(|parts| (2..=9).contains(parts))?;
        let way = typed.lower(0);
        let part = Length::from_nm(measure.length.nm().div_euclid(parts));
        return Some(Answer::Lines(
            vec![format!("{way} {}", written(part, &measure)), format!("{way} {}", measure.text)],
            format!("{ONE_LENGTH}: the part of it, or the whole"),
        ));
    } else if typed.says(end, &["x", "times"])
        || typed.piece(end).is_some_and(|piece| piece.is_mark("×*"))
    {
        let number = typed.piece(end + 1).filter(|_| typed.pieces.len() == end + 2)?;
        number.text.parse::<i64>().ok().filter(|times| (2..=9).contains(times))?
    } else {
        return None;
    };
    let way = typed.lower(0);
    let all = Length::from_nm(measure.length.nm().checked_mul(times)?);
    Some(Answer::Lines(
        vec![format!("{way} {}", measure.text), format!("{way} {}", written(all, &measure))],
        format!("{ONE_LENGTH}: that of one wall, or {times} times it"),
    ))
}

/// The lengths of a line that has nothing but a direction and lengths, and the marks or short words between them.
fn only_lengths(typed: &Typed<'_>) -> Option<(Vec<Measure>, Vec<String>)> {
    let mut all = Vec::new();
    let mut between = Vec::new();
    let mut at = 1;
    loop {
        let measure = length_at(&typed.pieces, at)?;
        at = measure.end;
        all.push(measure);
        if at == typed.pieces.len() {
            return Some((all, between));
        }
        let mut words = Vec::new();
        while typed.piece(at).is_some_and(|piece| {
            piece.is_mark(",;/+&-–—−>→=")
                || piece.is_word(&["and", "plus", "then", "less", "minus", "or", "to", "subtract"])
        }) {
            words.push(typed.lower(at));
            at += 1;
        }
        between.push(words.join(" "));
    }
}

/// `north 9' 4", 8' 10", 12'`, `north 31' minus 10"`, `north 30' 2" or 30' 3"`: adds up or chooses between several
/// lengths of one wall.
pub(super) fn parts(typed: &Typed<'_>) -> Option<Answer> {
    if !is_way(typed, 0) && !typed.says(0, &["overall"]) {
        return None;
    }
    let (all, between) = only_lengths(typed).filter(|(all, _)| all.len() >= 2)?;
    if !all.iter().all(|measure| measure.has_unit) {
        return None;
    }
    let way = typed.lower(0);
    let (first, second) = (&all[0], &all[1]);
    // `28', 4"` is feet and inches.
    if all.len() == 2
        && first.is_whole_feet()
        && second.is_inches()
        && matches!(between[0].as_str(), "," | "and" | "&" | "-" | "–" | "" | ";")
    {
        return None;
    }
    // `29' 14"`, `30" 2'` and `11 m 22 cm` are one length with an error in it.
    let is_one = |one: &Measure, two: &Measure| {
        let is_decimal = one.text.contains('.') && two.is_inches();
        let marks_alike =
            one.is_whole_feet() && two.is_whole_feet() && two.length.nm() < 12 * Length::FOOT.nm();
        is_decimal
            || marks_alike
            || one.is_whole_feet() && !two.text.contains(['\'', '’']) && !two.is_metric()
            || one.is_inches_alone() && two.is_whole_feet()
            || one.is_metric() && two.text.contains("cm")
    };
    if all.len() == 2 && between[0].is_empty() && is_one(first, second) {
        return None;
    }
    // `20' 8 7/8" to 9"`: the second has the feet of the first.
    let feet = first.length.nm().div_euclid(Length::FOOT.nm());
    let meant =
        |measure: &Measure| match measure.is_inches_alone() && feet > 0 && !first.is_metric() {
            true => format!("{feet}' {}", measure.text),
            false => measure.text.clone(),
        };
    let choice = |second_too: bool, cause: &str| {
        let mut lines: Vec<String> =
            all.iter().map(|measure| format!("{way} {}", meant(measure))).collect();
        lines.truncate(if second_too { 3 } else { 1 });
        Some(Answer::Lines(lines, cause.to_owned()))
    };
    let between_all = |words: &[&str]| between.iter().all(|word| words.contains(&word.as_str()));
    let total = || -> Length { all.iter().map(|measure| measure.length).sum() };
    // `18' + 12' 2" = 30' 2"`
    if let Some(equals) = between.iter().position(|word| word == "=") {
        let sum = |some: &[Measure]| -> Length { some.iter().map(|measure| measure.length).sum() };
        let (one, two) = (sum(&all[..=equals]), sum(&all[equals + 1..]));
        let whole = if equals == 0 { &all[0] } else { all.last()? };
        let is_close = (one - two).nm().abs() <= Length::INCH.nm();
        let cause = "a wall has one length, without what it was worked out from";
        return is_close.then(|| Answer::line(format!("{way} {}", whole.text), cause));
    }
    let near = (first.length - second.length).nm().abs() <= 6 * Length::INCH.nm();
    if between_all(&["less", "minus", "-", "–", "—", "−", "subtract", ", less", ", minus"]) {
        if between[0].contains(['-', '–', '—', '−']) && near {
            return choice(true, "a wall has one length: write the one that you trust");
        }
        let taken: Length = all[1..].iter().map(|measure| measure.length).sum();
        let left = first.length - taken;
        if left <= Length::ZERO {
            return None;
        }
        let line = format!("{way} {}", written(left, first));
        return Some(Answer::line(line, format!("{ONE_LENGTH}: what is left after taking off")));
    }
    if between_all(&["or", "to", "/", "- >", ">", "→"]) {
        return choice(true, "a wall has one length: write the one that you trust");
    }
    if between_all(&[""]) {
        if first.length == second.length && all.len() == 2 {
            if typed.piece(first.end).is_some_and(|next| next.touches) {
                return choice(false, "the length is typed twice");
            }
            return Some(Answer::Lines(
                vec![format!("{way} {}", first.text), format!("{way} {}", written(total(), first))],
                "the length stands here twice: by a slip, or as two parts of one wall?".to_owned(),
            ));
        }
        if all.len() == 2 {
            return Some(Answer::Lines(
                vec![
                    format!("{way} {}  # {}", first.text, second.text),
                    format!("{way} {} recorded {}", first.text, second.text),
                    format!("{way} {}", written(total(), first)),
                ],
                "two lengths and no word between them: a remark, the record's length, or one wall in two parts?".to_owned(),
            ));
        }
    }
    if between_all(&[
        ",", ";", "and", "plus", "+", "&", "then", "", ", and", "/", ", then", ", plus",
    ]) {
        let line = format!("{way} {}", written(total(), first));
        let cause = format!("{ONE_LENGTH}: the parts added up");
        if all.len() == 2 && near && matches!(between[0].as_str(), "," | ";" | "and") {
            return Some(Answer::Lines(
                vec![format!("{way} {}", first.text), format!("{way} {}", second.text), line],
                "a wall has one length: write the one that you trust, or both added up".to_owned(),
            ));
        }
        return Some(Answer::line(line, cause));
    }
    None
}

/// `north 30' 2" window 4' 6"`, `north 30' 2" (29' 6" inside)`: moves the length that belongs to a comment into the
/// comment.
pub(super) fn second_length(typed: &Typed<'_>) -> Option<Answer> {
    let skipped = usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=")));
    let measure = length_at(&typed.pieces, 1 + skipped)
        .filter(|measure| is_way(typed, 0) && measure.has_unit)?;
    let end = measure.end;
    let rest = typed.pieces.get(end..).filter(|rest| !rest.is_empty())?;
    let found = lengths(&typed.pieces, end);
    let has_unit = found.iter().any(|(_, measure)| measure.has_unit);
    let way = typed.lower(0);
    // `x 9' high`
    let is_high = rest
        .last()
        .is_some_and(|last| last.is_word(&["high", "tall", "thick", "ceiling", "ceilings"]));
    if is_high && (rest[0].is_word(&["x", "by"]) || rest[0].is_mark("×*")) {
        let line = format!("{way} {}  # {}", measure.text, remark(typed.rest(end)));
        return Some(Answer::line(
            line,
            format!("{ONE_LENGTH}; a height goes into a comment at the end of the line"),
        ));
    }
    // `brick 4"`
    if let [(first, thick)] = &found[..]
        && *first == end + 1
        && rest[0].is_word(&["brick", "stone", "veneer", "masonry"])
        && thick.is_inches()
        && thick.end == typed.pieces.len()
    {
        return Some(Answer::line(
            format!("{way} {} veneer {}", measure.text, thick.text),
            "the thickness of a wall's brick or stone goes after `veneer`",
        ));
    }
    // `(card says 40)`
    let is_records = |piece: &Piece| {
        piece.is_word(&[
            "card",
            "county",
            "record",
            "assessor",
            "records",
            "recorded",
            "cnty",
            "appraisal",
            "district",
            "deed",
            "plat",
        ])
    };
    let is_said = |piece: &Piece| {
        is_records(piece)
            || piece.is_word(&[
                "says", "has", "shows", "say", "the", "on", "tax", "is", "rec", "length", "per",
                "s", "vs", "versus", "but", "in", "by", "v", "lists",
            ])
            || piece.is_mark("()[],:=-")
    };
    if let [(first, recorded)] = &found[..]
        && rest.iter().any(is_records)
        && rest
            .iter()
            .enumerate()
            .all(|(at, piece)| is_said(piece) || (*first..recorded.end).contains(&(at + end)))
    {
        let mark = if recorded.has_unit || typed.attempt.is_metric { "" } else { "'" };
        let line = format!("{way} {} recorded {}{mark}", measure.text, recorded.text);
        return (line != typed.line)
            .then(|| Answer::line(line, "the record's length goes after `recorded`"));
    }
    let is_data = |piece: &Piece| {
        piece.is_word(&DATA)
            || piece.is_word(&WAYS)
            || piece.is_mark("±+")
            || piece.sort == super::Sort::Text
            || piece.is_word(&["common", "estimated", "by", "x", "times"])
            || piece.is_mark("×*")
    };
    let is_bare = found.len() == 1
        && rest[0].is_mark("([")
        && rest.last().is_some_and(|last| last.is_mark(")]"))
        && found[0].0 == end + 1
        && found[0].1.end + 1 == typed.pieces.len();
    if !has_unit && !is_bare || rest.iter().any(is_data) {
        return None;
    }
    let kept = format!("{way} {}", measure.text);
    let said = remark(typed.rest(end));
    if is_bare {
        let length = &found[0].1.text;
        return Some(Answer::Lines(
            vec![format!("{kept} recorded {length}"), format!("{kept}  # {length}")],
            "the record's length goes after `recorded`, any other into a comment".to_owned(),
        ));
    }
    if found.len() > 1 && found.iter().filter(|(_, measure)| measure.has_unit).count() > 1 {
        return Some(Answer::say(
            "several lengths stand on this line",
            format!(
                "write the whole length of the wall after `{way}`, its parts added up, and anything else at the end of the line, after a `#`"
            ),
        ));
    }
    // `1' less than 31' 2"`
    if typed.says(end + 1, &["than"])
        && found[0].0 == end + 2
        && found[0].1.end == typed.pieces.len()
    {
        let other = &found[0].1;
        // `28' 4" less than 30'` is a remark.
        if measure.length + measure.length + measure.length > other.length {
            return Some(Answer::line(
                format!("{kept}  # {said}"),
                "a wall has one length; anything else goes into a comment",
            ));
        }
        let length = if rest[0].is_word(&["less", "shorter", "under"]) {
            other.length - measure.length
        } else if rest[0].is_word(&["more", "longer", "over"]) {
            other.length + measure.length
        } else {
            return None;
        };
        return (length > Length::ZERO)
            .then(|| Answer::line(format!("{way} {}", written(length, other)), ONE_LENGTH));
    }
    // `28' 4" - 2" for gutter`
    let is_taken_off =
        rest[0].is_mark("-–−—") && typed.piece(end + 1).is_some_and(|next| !next.touches);
    if (rest[0].is_word(&["minus", "less"]) || is_taken_off)
        && found[0].0 == end + 1
        && measure.length > found[0].1.length
    {
        let left = written(measure.length - found[0].1.length, &measure);
        let said = if is_taken_off { format!("less {said}") } else { said };
        return Some(Answer::Lines(
            vec![format!("{way} {left}  # {} {said}", measure.text), format!("{kept}  # {said}")],
            format!("{ONE_LENGTH}: what is left after taking off, or the whole"),
        ));
    }
    // A length right after the first, without a word: not clear what it is.
    let words = rest.iter().any(|piece| {
        piece.sort == super::Sort::Word
            && !piece
                .is_word(&["in", "ft", "feet", "foot", "inches", "inch", "m", "cm", "mm", "and"])
    });
    words.then(|| {
        Answer::line(
            format!("{kept}  # {said}"),
            format!("{ONE_LENGTH}; the length of anything else goes into a comment at the end of the line"),
        )
    })
}
