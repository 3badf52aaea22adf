//! Walls with more than one length, or with words between the direction and the length.

use super::super::pieces::Piece;
use super::measure::{Measure, length_at, lengths, written};
use super::{Answer, Typed, is_text, quoted, remark};
use crate::units::length::Length;

const WAYS: [&str; 8] = ["north", "east", "south", "west", "n", "e", "s", "w"];
const STREET: [&str; 4] = ["back", "right", "front", "left"];
const FEET: [&str; 4] = ["ft", "feet", "foot", "f"];
/// Words after which a second length has its own meaning.
const DATA: [&str; 24] = [
    "recorded",
    "record",
    "rec",
    "county",
    "card",
    "assessor",
    "tolerance",
    "tol",
    "veneer",
    "wall",
    "note",
    "photo",
    "within",
    "says",
    "shown",
    "give",
    "out",
    "rise",
    "flat",
    "bulge",
    "corner",
    "pic",
    "picture",
    "image",
];
const ROUGHLY: [&str; 8] =
    ["about", "approx", "approximately", "ca", "circa", "roughly", "around", "est"];
const ONE_LENGTH: &str = "a wall has one length";

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: [fn(&Typed<'_>) -> Option<Answer>; 17] = [
        several_walls,
        and_a_half,
        measured_or_closing,
        not_reached,
        turned,
        misheard,
        cell_dates,
        cells,
        other_units,
        ditto,
        side_of_the_house,
        after_a_dash,
        texts_without_marks,
        twice,
        parts,
        second_length,
        metric_slips,
    ];
    rules.iter().find_map(|rule| rule(typed))
}

fn is_way(typed: &Typed<'_>, at: usize) -> bool {
    typed.says(at, &WAYS) || typed.says(at, &STREET)
}

/// `west by closing 44' 5"`, `close west 44' 5"`, `by closing west`: measured or not.
fn measured_or_closing(typed: &Typed<'_>) -> Option<Answer> {
    let closes = |piece: &Piece| {
        piece.is_word(&[
            "close",
            "closes",
            "closing",
            "closed",
            "closure",
            "start",
            "beginning",
            "pob",
            "finish",
            "finally",
        ])
    };
    let kept = ["recorded", "note", "photo", "tolerance", "common", "veneer"];
    let count = typed.find(1, &kept).unwrap_or(typed.pieces.len());
    let tail = typed.rest(count);
    if !typed.pieces[..count].iter().any(closes)
        || count < 3
        || typed.says(0, &["overall", "tie", "lot"])
    {
        return None;
    }
    let filler = |piece: &Piece| {
        closes(piece)
            || piece.is_word(&[
                "by", "to", "the", "back", "with", "at", "a", "of", "check", "checks", "is", "was",
                "wall", "side", "loop", "outline", "house", "walk", "figure", "shape", "up", "it",
            ])
            || piece.is_word(&ROUGHLY)
            || piece.is_mark(",;:()=-–~.≈>→")
    };
    let way = (0..count)
        .find(|&at| is_way(typed, at) && (at == 0 || typed.pieces[..at].iter().all(filler)))?;
    let found = lengths(&typed.pieces[..count], way + 1);
    let others = typed.pieces[way + 1..count].iter().enumerate().filter(|(at, piece)| {
        let at = at + way + 1;
        !filler(piece) && !found.iter().any(|(first, measure)| (*first..measure.end).contains(&at))
    });
    if others.count() > 0 || found.len() > 1 {
        return None;
    }
    // `back to beginning` is no wall at the back.
    let returns = typed.find(0, &["start", "beginning", "pob"]).is_some();
    if returns && found.is_empty() && typed.says(way, &STREET) {
        return None;
    }
    let word = typed.lower(way);
    let by = format!("{word} by closing {tail}").trim_end().to_owned();
    let Some((_, measure)) = found.first() else {
        let cause = if way > 0 {
            "the direction comes before `by closing`"
        } else {
            "a wall that was not measured has `by closing` and nothing more"
        };
        return (by != typed.line).then(|| Answer::line(by, cause));
    };
    let cause =
        "a wall has its length, or no length and `by closing`: the one that was not measured";
    let length = &measure.text;
    let is_rough = typed.pieces.iter().any(|piece| piece.is_word(&ROUGHLY) || piece.is_mark("~≈"));
    let lines = if is_rough {
        vec![by, format!("{word} {length} estimated")]
    } else {
        vec![format!("{word} {length} {tail}").trim_end().to_owned(), by]
    };
    Some(Answer::Lines(lines, cause.to_owned()))
}

/// `turn right 12' 4"`: a turn says which way only to somebody who knows the wall before.
fn turned(typed: &Typed<'_>) -> Option<Answer> {
    let at = usize::from(typed.says(0, &["turn", "turning", "then", "go", "bear"]));
    let turns = typed.find(0, &["turn", "turning", "bear"]).is_some_and(|turn| turn <= 1);
    let hand = (at..typed.pieces.len().min(4)).find(|&at| typed.says(at, &["right", "left"]))?;
    turns.then(|| {
        let word = typed.lower(hand);
        Answer::say(
            format!("`turn {word}` does not say which way the wall runs on the plan"),
            format!("write the way that it runs, `north`, `east`, `south` or `west`, before its length; `{word}` alone is a side of the house, seen from the street"),
        )
    })
}

/// `30 feet to inches`, `30 feet for inches`: numbers misheard as words.
fn misheard(typed: &Typed<'_>) -> Option<Answer> {
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

/// `30-Feb`: a spreadsheet took feet and inches for a date.
fn cell_dates(typed: &Typed<'_>) -> Option<Answer> {
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
fn cells(typed: &Typed<'_>) -> Option<Answer> {
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

/// Rods, chains, links and poles of a deed, exactly as so many feet.
fn other_units(typed: &Typed<'_>) -> Option<Answer> {
    use rust_decimal::Decimal;
    let at = (0..typed.pieces.len()).find(|&at| {
        typed.pieces[at].is_number()
            && (typed.says(
                at + 1,
                &[
                    "rod", "rods", "pole", "poles", "perch", "perches", "chain", "chains", "ch",
                    "link", "links", "vara", "varas", "fathom", "fathoms",
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
        "link" | "links" => Some((66, "a link is 0.66 ft")),
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
    let feet = feet.round_dp(4).normalize();
    let line = format!("{} {feet}' {}", typed.text(0, at), typed.rest(end));
    Some(Answer::line(line.trim_end(), format!("`{unit}` is not a unit here: {name}")))
}

/// `west "`: a ditto mark.
fn ditto(typed: &Typed<'_>) -> Option<Answer> {
    let rest = typed.line.split_once(' ')?.1.trim();
    (is_way(typed, 0) && matches!(rest, "\"" | "”" | "“" | "''" | "″" | "do." | "\" \"")).then(
        || {
            let way = typed.lower(0);
            Answer::say(
                "a ditto mark copies nothing from the line above",
                format!(
                    "write the length again; a wall that was not measured is `{way} by closing`"
                ),
            )
        },
    )
}

/// `west side going back 32'`: where a wall stands is not the way that it runs.
fn side_of_the_house(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &WAYS) || !typed.says(1, &["side", "wall", "face", "elevation"]) {
        return None;
    }
    let found = lengths(&typed.pieces, 1);
    let [(first, measure)] = &found[..] else { return None };
    let goes = typed.find(
        2,
        &[
            "running", "runs", "heading", "going", "goes", "toward", "towards", "back", "front",
            "rear", "from", "up", "down",
        ],
    )?;
    if goes > *first
        || typed.says(goes, &["running", "runs", "heading"]) && typed.find(2, &WAYS[..4]).is_none()
        || measure.end != typed.pieces.len()
    {
        return None;
    }
    if let Some(way) = typed.find(2, &WAYS[..4]) {
        let line = format!("{} {}", typed.lower(way), measure.text);
        return Some(Answer::line(
            line,
            "a side begins with the way that it runs, not with the side of the house on which it stands",
        ));
    }
    let ways = if typed.says(0, &["north", "south", "n", "s"]) {
        ["east", "west"]
    } else {
        ["north", "south"]
    };
    Some(Answer::Lines(
        ways.map(|way| format!("{way} {}", measure.text)).into(),
        "a side begins with the way that it runs, not with the side of the house on which it stands".to_owned(),
    ))
}

/// `north – 30' 2"`: a dash between the direction and the length.
fn after_a_dash(typed: &Typed<'_>) -> Option<Answer> {
    let dash = typed.piece(1).filter(|piece| piece.is_mark("-–—−"))?;
    let measure = length_at(&typed.pieces, 2)?;
    if !typed.says(0, &WAYS) {
        return None;
    }
    let apart = !typed.piece(2)?.touches;
    let is_sign = dash.is_mark("-−") && !apart;
    let way = typed.lower(0);
    let other = match way.as_str() {
        "north" | "n" => "south",
        "south" | "s" => "north",
        "east" | "e" => "west",
        _ => "east",
    };
    let rest = typed.rest(measure.end);
    let same = format!("{way} {} {rest}", measure.text).trim_end().to_owned();
    let turned = format!("{other} {} {rest}", measure.text).trim_end().to_owned();
    Some(if is_sign {
        Answer::Lines(
            vec![turned, same],
            "a length has no sign: the other way has a word of its own".to_owned(),
        )
    } else if apart {
        Answer::line(same, "only a space goes between the direction and the length")
    } else {
        Answer::Lines(
            vec![same, turned],
            "only a space goes between the direction and the length; a length has no sign"
                .to_owned(),
        )
    })
}

/// `note 6" off the fence`, `photo west.jpg`: a text without its quotation marks after a side.
fn texts_without_marks(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 1).filter(|_| is_way(typed, 0));
    let from = length.as_ref().map_or(1, |length| length.end);
    let note = typed.find(from, &["note", "photo", "pic", "picture", "image", "img", "see"])?;
    let begins = is_way(typed, 0) || typed.says(0, &["diagonal", "bearing", "arc", "bay", "close"]);
    let pictures = [".jpg", ".jpeg", ".png", ".heic", ".tif", ".tiff", ".webp"];
    let rest = typed.rest(note + 1).trim_start_matches([':', '=', ' ']);
    let titled = typed.piece(note + 1).filter(|title| title.sort == super::Sort::Text);
    if let Some(title) = titled
        && pictures.iter().any(|ending| rest.to_lowercase().ends_with(ending))
        && !typed.says(note + 2, &["file"])
        && typed.pieces.len() > note + 2
        && typed.says(note, &["photo"])
    {
        let line = format!(
            "{} photo {} file \"{}\"",
            typed.text(0, note),
            title.text,
            typed.rest(note + 2)
        );
        return Some(Answer::line(
            line,
            "a photo has a title, and the name of its file after `file`",
        ));
    }
    let name = rest.trim_matches(['"', '“', '”', ' ']);
    let is_file = pictures.iter().any(|ending| name.to_lowercase().ends_with(ending))
        && !name.contains(['"', ' ']);
    if !begins || rest.is_empty() {
        return None;
    }
    if is_file && !typed.says(note, &["note"]) {
        let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
        let line = format!("{} photo \"{stem}\" file \"{name}\"", typed.text(0, note));
        return Some(Answer::line(
            line,
            "a photo has a title, and the name of its file after `file`",
        ));
    }
    let is_last = !typed.pieces[note + 1..].iter().any(|piece| {
        piece.is_word(&["recorded", "tolerance", "note", "file", "estimated", "common", "veneer"])
    });
    let is_open = !is_text(typed.piece(note + 1)) && is_last && typed.says(note, &["note"]);
    is_open.then(|| {
        Answer::line(
            format!("{} note {}", typed.text(0, note), quoted(rest)),
            "a note needs a `\"` on each side, and no inch mark inside it",
        )
    })
}

/// `north 15' 1" x 2`, `north 15' 1" twice`: once, or so many times.
fn twice(typed: &Typed<'_>) -> Option<Answer> {
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

/// The lengths of a line that is nothing but a direction and lengths with marks or short words between them, and these marks.
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
            piece.is_mark(",;/+&-–—−>→")
                || piece.is_word(&["and", "plus", "then", "less", "minus", "or", "to", "subtract"])
        }) {
            words.push(typed.lower(at));
            at += 1;
        }
        between.push(words.join(" "));
    }
}

/// `north 9' 4", 8' 10", 12'`, `north 31' minus 10"`, `north 30' 2" or 30' 3"`: several lengths of one wall.
fn parts(typed: &Typed<'_>) -> Option<Answer> {
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
    // `29' 14"`, `30" 2'` and `11 m 22 cm` are one length with a slip in it.
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
    let choice = |second_too: bool, cause: &str| {
        let mut lines: Vec<String> =
            all.iter().map(|measure| format!("{way} {}", measure.text)).collect();
        lines.truncate(if second_too { 3 } else { 1 });
        Some(Answer::Lines(lines, cause.to_owned()))
    };
    let between_all = |words: &[&str]| between.iter().all(|word| words.contains(&word.as_str()));
    let total = || -> Length { all.iter().map(|measure| measure.length).sum() };
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
            return choice(false, "the length is typed twice");
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

/// `north 30' 2" window 4' 6"`, `north 30' 2" (29' 6" inside)`: a length that belongs to a remark.
fn second_length(typed: &Typed<'_>) -> Option<Answer> {
    let skipped = usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=")));
    let measure = length_at(&typed.pieces, 1 + skipped)
        .filter(|measure| is_way(typed, 0) && measure.has_unit)?;
    let end = measure.end;
    let rest = typed.pieces.get(end..).filter(|rest| !rest.is_empty())?;
    let found = lengths(&typed.pieces, end);
    let has_unit = found.iter().any(|(_, measure)| measure.has_unit);
    let way = typed.lower(0);
    // `(card says 40)`
    let is_records = |piece: &Piece| {
        piece.is_word(&["card", "county", "record", "assessor", "records", "recorded"])
    };
    let is_said = |piece: &Piece| {
        is_records(piece)
            || piece.is_word(&[
                "says", "has", "shows", "say", "the", "on", "tax", "is", "rec", "length", "per",
                "s", "vs", "versus", "but", "in", "by",
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
    if rest[0].is_word(&["minus", "less"])
        && found[0].0 == end + 1
        && measure.length > found[0].1.length
    {
        let left = written(measure.length - found[0].1.length, &measure);
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

/// `9.900,0 m`, `0,920 m`, `9,20` and, in a file in meters, `9900`.
fn metric_slips(typed: &Typed<'_>) -> Option<Answer> {
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

/// `west not reached 44'`: a length that was not measured.
fn not_reached(typed: &Typed<'_>) -> Option<Answer> {
    let says = ["not", "unreachable", "inaccessible", "blocked", "unmeasured", "unknown", "hidden"];
    if !is_way(typed, 0) || !typed.says(1, &says) {
        return None;
    }
    let [(_, measure)] = &lengths(&typed.pieces, 1)[..] else { return None };
    let way = typed.lower(0);
    measure.has_unit.then(|| {
        Answer::Lines(
            vec![format!("{way} by closing"), format!("{way} {} estimated", measure.text)],
            "a wall that was not measured is `by closing`, or has a length that is `estimated`"
                .to_owned(),
        )
    })
}

/// `north 10 paces`: a number with a word after it that is no unit.
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

/// `north 30' 2" west 4' north 3'`: each wall on its own line.
fn several_walls(typed: &Typed<'_>) -> Option<Answer> {
    let mut lines = Vec::new();
    let mut at = 0;
    while at < typed.pieces.len() {
        let way = typed.piece(at).filter(|_| is_way(typed, at))?;
        let measure = length_at(&typed.pieces, at + 1).filter(|measure| measure.has_unit)?;
        lines.push(format!("{} {}", way.text, measure.text));
        at = measure.end;
        while typed
            .piece(at)
            .is_some_and(|piece| piece.is_mark(",;./→>-–") || piece.is_word(&["then", "and"]))
        {
            at += 1;
        }
    }
    (lines.len() >= 2).then(|| Answer::line(lines.join("\n"), "each side goes on its own line"))
}

/// `north 30' and a half`: half a foot, or half an inch.
fn and_a_half(typed: &Typed<'_>) -> Option<Answer> {
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

/// `bearing N 1° E 142.67' (rec. 142.7')`: what the record says of a call or another wall.
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
