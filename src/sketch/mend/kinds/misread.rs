//! Suggestions for numbers garbled by a table, by dictation, or by another unit.

use super::measure::length_at;
use super::walls::{ROUGHLY, WAYS, is_way};
use super::{Answer, Typed};

/// `30 feet to inches`, `30 feet for inches`: numbers misheard as words (30' 2", 30' 4").
pub(super) fn misheard(typed: &Typed<'_>) -> Option<Answer> {
    let count = typed.pieces.len();
    let at = (1..count).find(|&at| {
        typed.says(at - 1, &FEET)
            && typed.says(
                at,
                &["to", "too", "for", "fore", "ate", "won", "tree", "sex", "tan", "nein", "ninth"],
            )
    })?;
    let fraction =
        typed.piece(at + 1).is_some_and(|piece| piece.is_number() || piece.is_mark("½¼¾⅛⅜⅝⅞"))
            && typed.find(at + 1, &["inch", "inches", "in"]).is_some();
    let inches = fraction || typed.says(at + 1, &["inch", "inches", "in"]);
    let is_last = at + 1 == count;
    let digit = match typed.lower(at).as_str() {
        "to" | "too" => "2",
        "for" | "fore" => "4",
        "ate" => "8",
        "won" => "1",
        "tree" => "3",
        "sex" => "6",
        "tan" => "10",
        _ => "9",
    };
    let begins = is_way(typed, 0) || typed.says(0, &["overall", "diagonal", "arc", "bay"]);
    (begins && (inches || is_last && typed.says(at, &["too", "to"]))).then(|| {
        let unit = if inches { "" } else { " inches" };
        let rest = typed.rest(at + 1);
        let line = format!("{} {digit}{unit} {rest}", typed.text(0, at));
        Answer::line(
            line.trim_end(),
            format!("`{}` stands where the number of inches is expected", typed.lower(at)),
        )
    })
}

const FEET: [&str; 4] = ["ft", "feet", "foot", "f"];

/// `30-Feb`: feet and inches that a spreadsheet took for a date.
pub(super) fn cell_dates(typed: &Typed<'_>) -> Option<Answer> {
    const MONTHS: [&str; 12] =
        ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
    if !is_way(typed, 0) {
        return None;
    }
    let month =
        |at: usize| MONTHS.iter().position(|month| typed.says(at, &[month])).map(|at| at + 1);
    let day = |at: usize| {
        typed
            .piece(at)
            .filter(|piece| piece.is_number())?
            .text
            .parse::<usize>()
            .ok()
            .filter(|day| *day <= 99)
    };
    let is_dash = typed.piece(2).is_some_and(|piece| piece.is_mark("-–/"));
    let (one, two) = match (month(1).zip(day(3)), day(1).zip(month(3))) {
        (Some(pair), _) | (_, Some(pair)) if is_dash => pair,
        _ => return None,
    };
    let pairs = [(one, two), (two, one)];
    let rest = typed.rest(4);
    let lines: Vec<String> = pairs
        .into_iter()
        .filter(|(_, inches)| *inches < 12)
        .map(|(feet, inches)| {
            format!("{} {feet}' {inches}\" {rest}", typed.lower(0)).trim_end().to_owned()
        })
        .collect();
    (!lines.is_empty()).then(|| {
        Answer::Lines(
            lines,
            "a table turned feet and inches into a date: write the marks for feet and inches"
                .to_owned(),
        )
    })
}

/// `House⇥north⇥30.17`, `1,north,30.17`: a row of a table with a name or a number before the direction.
pub(super) fn cells(typed: &Typed<'_>) -> Option<Answer> {
    let mark =
        ['\t', ';', ',', '|'].into_iter().find(|mark| typed.line.matches(*mark).count() >= 2)?;
    let cells: Vec<&str> = typed
        .line
        .split(mark)
        .map(|cell| cell.trim().trim_matches('"'))
        .filter(|cell| !cell.is_empty())
        .collect();
    let way = cells.iter().position(|cell| WAYS.contains(&cell.to_lowercase().as_str()))?;
    let length = cells.get(way + 1)?;
    let is_length = length.starts_with(|c: char| c.is_ascii_digit());
    (way >= 1 && is_length).then(|| {
        let line = format!("{} {}", cells[way].to_lowercase(), cells[way + 1..].join(" "));
        Answer::line(line, "a row of a table: a side begins with its direction, and the space that it belongs to is on a line of its own above its sides")
    })
}

/// Rods, chains, links and poles of a deed, converted to feet exactly.
pub(super) fn other_units(typed: &Typed<'_>) -> Option<Answer> {
    use rust_decimal::Decimal;
    let at = (0..typed.pieces.len()).find(|&at| {
        typed.pieces[at].is_number()
            && (typed.says(
                at + 1,
                &[
                    "rod", "rods", "pole", "poles", "perch", "perches", "chain", "chains", "ch",
                    "link", "links", "lk", "lks", "vara", "varas", "fathom", "fathoms",
                ],
            ) || typed.says(at + 1, &["survey", "us", "u.s"]))
    })?;
    let unit = typed.lower(at + 1);
    if unit.starts_with("vara") {
        return Some(Answer::say(
            "a vara has no one length: 33 1/3\" in Texas, 33\" in California, and others",
            "take the length from your deed or state, multiply, and write the feet",
        ));
    }
    if matches!(unit.as_str(), "survey" | "us" | "u.s") {
        let feet = typed.find(at + 1, &["feet", "foot", "ft"]).filter(|feet| *feet <= at + 3)?;
        let line = typed.without(at + 1, feet);
        return Some(Answer::line(
            line,
            "a survey foot differs from a foot by 2 parts in a million: write feet",
        ));
    }
    // A chain is 66 ft, a rod a quarter of it, a link a hundredth; a fathom is 6 ft.
    let unit_of = |word: &str| match word {
        "chain" | "chains" | "ch" => Some((6_600, "a chain is 66 ft")),
        "link" | "links" | "lk" | "lks" => Some((66, "a link is 0.66 ft")),
        "fathom" | "fathoms" => Some((600, "a fathom is 6 ft")),
        "rod" | "rods" | "pole" | "poles" | "perch" | "perches" => {
            Some((1_650, "a rod, pole or perch is 16 1/2 ft"))
        }
        _ => None,
    };
    let (_, name) = unit_of(&unit)?;
    let (mut end, mut feet) = (at, Decimal::ZERO);
    while let Some((hundredths, _)) = unit_of(&typed.lower(end + 1)) {
        let value: Decimal = typed.piece(end)?.text.parse().ok()?;
        feet = feet.checked_add(value.checked_mul(Decimal::new(hundredths, 2))?)?;
        end += 2;
        let joins = usize::from(
            typed.says(end, &["and"]) || typed.piece(end).is_some_and(|piece| piece.is_mark(",")),
        );
        end += if unit_of(&typed.lower(end + joins + 1)).is_some() { joins } else { 0 };
    }
    // `9 rods 1.22 feet`: the rest of the length.
    let joins = usize::from(
        typed.says(end, &["and", "plus"])
            || typed.piece(end).is_some_and(|piece| piece.is_mark(",+&")),
    );
    if let Some(more) = length_at(&typed.pieces, end + joins).filter(|more| more.has_unit) {
        let nm = Decimal::from(more.length.nm());
        feet = feet.checked_add(nm / Decimal::from(crate::units::length::Length::FOOT.nm()))?;
        end = more.end;
    }
    let feet = feet.round_dp(4).normalize();
    let line = format!("{} {feet}' {}", typed.text(0, at), typed.rest(end));
    Some(Answer::line(line.trim_end(), format!("`{unit}` is not a unit here: {name}")))
}

/// Walls whose length has a decimal comma, or is a bare whole number that looks like millimeters: `9.900,0 m`,
/// `0,920 m`, and `9900` in a metric file.
pub(super) fn metric_slips(typed: &Typed<'_>) -> Option<Answer> {
    if !is_way(typed, 0) {
        return None;
    }
    let number = typed.piece(1).filter(|piece| piece.is_number())?;
    let rest = typed.rest(2);
    let line = |number: &str, rest: &str| {
        format!("{} {number} {rest}", typed.lower(0)).trim_end().to_owned()
    };
    let text = number.text.as_str();
    let is_metric = typed.says(2, &["m", "cm", "mm", "meter", "meters", "metre", "metres"]);
    if let Some((whole, decimals)) = text.split_once(',')
        && whole.contains('.')
        && !decimals.contains(['.', ','])
    {
        return Some(Answer::say(
            "a number has one point and no comma",
            format!(
                "write the decimals after a point and nothing between thousands: `{}.{decimals}` if the comma begins them",
                whole.replace('.', "")
            ),
        ));
    }
    if let Some(decimals) = text.strip_prefix("0,") {
        return Some(Answer::line(
            line(&format!("0.{decimals}"), rest),
            "decimals take a point, not a comma",
        ));
    }
    let is_whole = text.len() >= 4 && text.bytes().all(|b| b.is_ascii_digit());
    (is_whole && typed.attempt.is_metric && !is_metric && rest.is_empty()).then(|| {
        Answer::line(
            line(text, "mm"),
            "a bare number is in meters in this file: are these millimeters?",
        )
    })
}

/// `north 10 paces`: says that the word after the number is not a unit.
pub(super) fn unknown_unit(typed: &Typed<'_>) -> Option<Answer> {
    let measure =
        length_at(&typed.pieces, 1).filter(|measure| is_way(typed, 0) && !measure.has_unit)?;
    let word =
        typed.piece(measure.end).filter(|word| word.sort == super::Sort::Word && !word.touches)?;
    let lower = word.text.to_lowercase();
    let is_known =
        word.is_word(&ROUGHLY) || crate::sketch::parser::SIDE_WORDS.contains(&lower.as_str());
    (!is_known && measure.end + 1 == typed.pieces.len()).then(|| {
        Answer::say(
            format!("`{}` is not a unit of length", word.text),
            "write feet and inches as `42' 7\"`, or meters as `12.98 m`; anything else about a wall goes to the end of its line, after a `#`",
        )
    })
}
