//! Changes to whole lines that mean something other than their pieces one by one: sums, signs, a fraction after its
//! mark, two lengths of a slanted wall, "same as", dates with points, two tax years.

use super::change::{Attempt, Edit};
use super::compass::slant;
use super::pieces::Piece;
use crate::units::length::{Form, Length, WrittenLength};

const WAYS: [(&str, &str); 8] = [
    ("north", "south"),
    ("south", "north"),
    ("east", "west"),
    ("west", "east"),
    ("n", "s"),
    ("s", "n"),
    ("e", "w"),
    ("w", "e"),
];

/// Every change of this file that fits the line.
pub(super) fn edits(line: &str, pieces: &[Piece], attempt: &Attempt) -> Vec<Edit> {
    let all = [
        fraction_after_its_mark(line),
        sum(line),
        other_way(line),
        number_of_a_corner(line, pieces),
    ];
    let mut edits: Vec<Edit> = all.into_iter().flatten().collect();
    edits.extend(dated(line));
    edits.extend(two_legs(line));
    edits.extend(front_corner(line));
    edits.extend(somebody_says(line, attempt));
    edits
}

fn direction(word: &str) -> Option<&'static str> {
    let word = word.to_lowercase();
    WAYS.iter().find(|(way, _)| *way == word).map(|(_, opposite)| *opposite)
}

/// `42' 7" 1/2` becomes `42' 7 1/2"`.
fn fraction_after_its_mark(line: &str) -> Option<Edit> {
    let (head, tail) = line.trim_end().rsplit_once(' ')?;
    let (top, bottom) = tail.split_once('/')?;
    let is_number = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
    let head = ["\"", "''", "”", "″"].iter().find_map(|mark| head.strip_suffix(mark))?;
    let ends_in_digit = head.ends_with(|c: char| c.is_ascii_digit());
    (is_number(top) && is_number(bottom) && ends_in_digit && !head.contains('"')).then(|| {
        Edit::line(format!("{head} {tail}\""), "the fraction comes before the mark of the inches")
    })
}

/// `east 20' 3" + 22' 4"`, `north 18' 2" + 5" wall + 15'` become the sum: one wall measured in parts.
fn sum(line: &str) -> Option<Edit> {
    const BETWEEN_ROOMS: [&str; 5] = [" walls", " wall", " partition", " divider", " inner wall"];
    let (way, lengths) = line.trim().split_once(' ')?;
    direction(way)?;
    let (lengths, remark) = match lengths.split_once(';') {
        Some((lengths, remark)) => (lengths, remark.trim()),
        None => (lengths, ""),
    };
    let without = |part: &'_ str| {
        BETWEEN_ROOMS.iter().find_map(|word| part.strip_suffix(word)).map(str::to_owned)
    };
    let parts: Vec<String> = lengths
        .split('+')
        .map(|part| without(part.trim()).unwrap_or_else(|| part.trim().to_owned()))
        .collect();
    if !(2..=4).contains(&parts.len()) {
        return None;
    }
    let read = |part: &String| part.trim().parse::<Length>().ok();
    let read: Vec<Length> = parts.iter().filter_map(read).collect();
    let is_metric = lengths.contains('m');
    if read.len() != parts.len() {
        return None;
    }
    let form = if is_metric { Form::Meters } else { Form::FeetAndInches };
    let all = WrittenLength::new(read.into_iter().sum(), form);
    let cause = "a wall has one length: the parts added up";
    let line = match remark.is_empty() {
        true => format!("{way} {all}"),
        false => format!("{way} {all}  # {remark}"),
    };
    Some(Edit { converts: true, ..Edit::line(line, cause) })
}

/// `north -4'`, `north minus 4'` become `south 4'`: a length has no sign.
fn other_way(line: &str) -> Option<Edit> {
    let (way, rest) = line.trim().split_once(' ')?;
    let rest = rest.trim();
    // `S-18' 2"` is no sign.
    if way.contains(['-', '–']) {
        return None;
    }
    let signed = ["minus ", "negative "].iter().find_map(|sign| rest.strip_prefix(sign));
    let line = signed.map_or_else(|| line.to_owned(), |length| format!("{way} -{}", length.trim()));
    let words: Vec<&str> = line.split_whitespace().collect();
    let is_negative = |word: &str| {
        word.strip_prefix(['-', '–'])
            .is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()))
    };
    let at = (1..words.len())
        .find(|&at| is_negative(words[at]) && direction(words[at - 1]).is_some())?;
    let opposite = direction(words[at - 1])?;
    let mut by: Vec<String> = words.iter().map(|&word| word.to_owned()).collect();
    by[at - 1] = opposite.to_owned();
    by[at] = words[at].trim_start_matches(['-', '–']).to_owned();
    Some(Edit::line(by.join(" "), "a length has no sign: the other way has a word of its own"))
}

/// `corner 3 "porch"` becomes `corner "porch"`: the program numbers corners itself.
fn number_of_a_corner(line: &str, pieces: &[Piece]) -> Option<Edit> {
    let [first, number, ..] = pieces else { return None };
    let named = line.find('"').filter(|_| first.is_word(&["corner"]) && number.is_number())?;
    Some(Edit {
        converts: true,
        ..Edit::line(format!("corner {}", &line[named..]), "corners are numbered by the program")
    })
}

/// `measured 14.11.2026` and `measured 2026-11-14, laser`, with the date rewritten. If either number could be the
/// month, both dates are offered.
fn dated(line: &str) -> Vec<Edit> {
    let Some((first, rest)) = line.trim().split_once(' ') else { return Vec::new() };
    if !matches!(first.to_lowercase().as_str(), "measured" | "notice") {
        return Vec::new();
    }
    let (date, after) = rest.trim().split_once([' ', ',']).unwrap_or((rest, ""));
    let after = after.trim().trim_start_matches(',').trim();
    let parts: Vec<&str> = date.split('.').collect();
    let (dates, cause) = match parts[..] {
        [one, two, year] if year.len() == 4 => (
            vec![format!("{year}-{two:0>2}-{one:0>2}"), format!("{year}-{one:0>2}-{two:0>2}")],
            "a date is written year-month-day",
        ),
        _ if rest.contains(',') => (vec![date.to_owned()], "only a space goes after the date"),
        _ => return Vec::new(),
    };
    let edit = |date: String| {
        let line = format!("{first} {date} {after}");
        Edit { converts: true, ..Edit::line(line.trim_end(), cause) }
    };
    dates.into_iter().map(edit).collect()
}

/// `northeast 3' 3'` becomes a diagonal: how far a slanted wall runs in each direction.
fn two_legs(line: &str) -> Option<Edit> {
    let mut words = line.split_whitespace();
    let mut way = words.next()?.to_lowercase();
    if way == "diagonal" {
        way = words.next()?.to_lowercase();
    }
    let (one, two) = slant(&way)?;
    let (first, second) = (words.next()?, words.next()?);
    let is_feet = |word: &str| word.ends_with('\'') && word.len() > 1;
    (is_feet(first) && is_feet(second) && words.next().is_none()).then(|| {
        Edit::line(
            format!("diagonal {one} {first} {two} {second}"),
            "a slanted wall says which way it runs and which way it rises",
        )
    })
}

/// `front sw` becomes `front south` or `front west`: the street lies along one side.
fn front_corner(line: &str) -> Vec<Edit> {
    let Some(corner) = line.trim().strip_prefix("front ") else { return Vec::new() };
    let Some((one, two)) = slant(corner.trim()) else { return Vec::new() };
    let ways = [one, two];
    ways.map(|way| {
        Edit::line(format!("front {way}"), "the plan has four sides: the one nearer to the street")
    })
    .into()
}

/// `somesite 1,990 sq ft` becomes a figure with a name of its own.
fn somebody_says(line: &str, attempt: &Attempt) -> Option<Edit> {
    let line = line.trim();
    let number = line.find(|c: char| c.is_ascii_digit())?;
    let (name, area) = line.split_at(number);
    let name = name.trim().trim_end_matches([':', '=', ',']).trim();
    let verbs = ["says", "has", "shows", "lists", "claims", "got", "is"];
    let name = match name.rsplit_once(' ') {
        Some((who, verb)) if verbs.contains(&verb) => who,
        _ => name,
    };
    let is_area = ["sq ft", "sqft", "sf", "square feet", "sq m"].iter().any(|unit| {
        area.strip_suffix(unit).is_some_and(|number| {
            number.trim().bytes().all(|b| b.is_ascii_digit() || b == b',' || b == b'.')
        })
    });
    // What names a part of the house is no source.
    let parts = [
        "basement",
        "story",
        "storey",
        "floor",
        "upstairs",
        "downstairs",
        "attic",
        "loft",
        "room",
        "rooms",
    ];
    let is_part = name.to_lowercase().split(' ').any(|word| parts.contains(&word));
    let is_name =
        !name.is_empty() && !is_part && name.chars().all(|c| c.is_alphanumeric() || c == ' ');
    (!attempt.knows_first && is_area && is_name).then(|| {
        Edit::line(
            format!("figure \"{name}\" {area}"),
            "a figure that is not the record's, a listing's or a plan's has a name of its own",
        )
        .weak()
    })
}
