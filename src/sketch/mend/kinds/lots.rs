//! Land whose line has its size: `lot 76 x 120, 0.21 ac`.

use super::super::pieces::Sort;
use super::described::{by, in_one_unit};
use super::measure::{area_from, length_at};
use super::{Answer, Typed, is_text, quoted};

/// A lot with its name, its size and its area, in any order; and one whose number stands after a `#`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let answer = legal(typed).or_else(|| with_its_first_call(typed));
    if let Some(answer) = answer.or_else(|| at_two_streets(typed)) {
        return Some(answer);
    }
    if !typed.says(0, &["lot", "parcel", "land"]) {
        return None;
    }
    numbered_in_a_comment(typed).or_else(|| sized(typed))
}

/// `corner lot 80 x 120`: a lot at a corner of two streets, and no corner of a walk.
fn at_two_streets(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["corner", "interior", "irregular", "flag", "vacant", "town"])
        && typed.says(1, &["lot"])
        && typed.attempt.house.is_some();
    begins.then_some(())?;
    let line = format!("{}, {} lot", typed.rest(1), typed.text(0, 1));
    let again = Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt };
    sized(&again)
}

/// Whether the line below is a call of a deed or a wall.
pub(super) fn calls_follow(typed: &Typed<'_>) -> bool {
    let after = typed.attempt.beside.after.to_lowercase();
    let begins =
        ["bearing", "thence", "beginning", "commencing"].iter().any(|word| after.starts_with(word));
    begins || super::super::begins_as_side(&typed.attempt.beside.after)
}

/// `legal: Lot 4 Blk 2` above calls: the name of the lot.
fn legal(typed: &Typed<'_>) -> Option<Answer> {
    let first = 1 + usize::from(typed.says(1, &["description", "desc"]));
    let first = first + usize::from(typed.piece(first).is_some_and(|mark| mark.is_mark(":-–=.")));
    let begins =
        typed.says(0, &["legal"]) && typed.says(first, &["lot", "tract", "parcel", "unit"]);
    let name = typed.name(first, typed.pieces.len());
    let fits =
        begins && calls_follow(typed) && typed.attempt.house.is_some() && !name.contains('"');
    (fits && name.chars().count() <= 40).then(|| {
        Answer::line(
            format!("lot {}", quoted(&name)),
            "the land is a `lot` with its name, and its calls stand below it",
        )
    })
}

/// `lot per deed: beginning at an iron pin, thence North 88 deg 30 min East 45.20 m`: the line of the lot and its first
/// call.
fn with_its_first_call(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["lot", "deed", "parcel", "survey", "legal", "land", "tract"]);
    let beside = &typed.attempt.beside;
    let is_begun = beside.before.starts_with("lot ");
    if !begins || beside.in_lot && !is_begun || typed.attempt.house.is_none() {
        return None;
    }
    let is_call = |at: usize| {
        let from = typed.says(at, &["n", "s", "north", "south"])
            && typed.piece(at + 1).is_some_and(super::Piece::is_number);
        let toward = (at + 2..at + 9).find(|&end| typed.says(end, &["e", "w", "east", "west"]));
        let small = |at: usize| {
            typed.piece(at).is_some_and(|mark| mark.is_mark(",;:"))
                || typed.says(at, &["a", "distance", "of", "for"])
        };
        let length = toward.and_then(|end| (end + 1..).find(|&at| !small(at)));
        from && length.is_some_and(|at| length_at(&typed.pieces, at).is_some())
    };
    let calls: Vec<usize> = (1..typed.pieces.len()).filter(|&at| is_call(at)).collect();
    let call = *calls.first()?;
    // The words of the deed before its call are not of the name.
    let first = (1..call)
        .find(|&at| {
            typed.says(at, &["beginning", "commencing", "starting", "begin", "thence", "from"])
        })
        .unwrap_or(call);
    // `lot per deed, 1.67 ac: N 12° E 220'`, `… N 77° W 330' to POB. 1.67 ac`: how large the land is.
    let area = area_from(&typed.pieces, 0);
    let area_before = area.as_ref().filter(|(begins, _, _)| *begins < first);
    let first_of_area = area.as_ref().map_or(typed.pieces.len(), |(begins, _, _)| *begins);
    let set_off = (1..first)
        .find(|&at| typed.pieces[at].is_mark(":;,-–(") || at == first_of_area)
        .unwrap_or(first);
    let name = typed.text(0, set_off).trim_matches([':', ',', ';', '-', ' ']);
    let begun = match area_before {
        Some((begins, end, _)) => {
            let before = typed.text(set_off, *begins).trim_matches([':', ',', ';', '(', '-', ' ']);
            let after = typed.text(*end, call).trim_matches([':', ',', ';', ')', '-', ' ']);
            [before, after].join(" ")
        }
        None => typed.text(first.max(set_off), call).to_owned(),
    };
    let begun = super::plainly(&begun);
    let begun = begun.trim_matches([',', ';', ':', '-', ' ']);
    let begun = begun.strip_suffix("thence").unwrap_or(begun).trim_matches([',', ';', ':', ' ']);
    if name.contains(|c: char| c == '"' || c.is_ascii_digit()) && name.contains('"')
        || begun.contains(|c: char| c.is_ascii_digit() || c == '#')
    {
        return None;
    }
    let lines = match &calls[..] {
        [_] if area.is_none() => {
            let line =
                format!("bearing {}", typed.rest(call).trim_end_matches([';', '.', ',', ' ']));
            vec![as_call(typed, &line)?]
        }
        _ => {
            let ends = calls.iter().skip(1).copied().chain([typed.pieces.len()]);
            let mut lines = Vec::new();
            for (from, to) in calls.iter().copied().zip(ends) {
                let area_in = area.as_ref().filter(|(begins, _, _)| (from..to).contains(begins));
                let said = typed.text(from, area_in.map_or(to, |(begins, _, _)| *begins));
                let said = said.trim_end_matches([';', '.', ',', '(', ' ']);
                // `to POB, containing 1.67 ac`, `220 ft; thence`
                let said = [
                    "containing",
                    "cont",
                    "and containing",
                    "or",
                    "total",
                    "in all",
                    "=",
                    "thence",
                    "and",
                    "th",
                    "then",
                ]
                .iter()
                .fold(said, |said, word| {
                    let left =
                        said.strip_suffix(word).filter(|left| left.ends_with([' ', ',', ';']));
                    left.unwrap_or(said).trim_end_matches([';', '.', ',', '(', ' '])
                });
                let after = area_in.map_or("", |(_, end, _)| typed.text(*end, to));
                if after.contains(char::is_alphanumeric) {
                    return None;
                }
                lines.push(as_call(typed, &format!("bearing {said}"))?);
            }
            lines
        }
    };
    let name = match typed.says(0, &["lot", "parcel", "land", "tract"]) {
        true => super::levels::capitalized(name),
        false => format!("Lot, {}", name.to_lowercase()),
    };
    let comment = if begun.is_empty() { String::new() } else { format!("  # {begun}") };
    if is_begun {
        return area.is_none().then(|| {
            let each = match &lines[..] {
                [_] => "each call is a line of its own",
                _ => "each call goes on its own line",
            };
            Answer::line(
                format!("{}{comment}", lines.join("\n")),
                format!("the line of the lot stands above, and {each}"),
            )
        });
    }
    let recorded = area.map_or_else(String::new, |(_, _, area)| format!(" recorded {area}"));
    let lot = match lines.len() {
        1 => format!("lot {}{recorded}\n{}{comment}", quoted(&name), lines.join("\n")),
        _ => format!("lot {}{recorded}{comment}\n{}", quoted(&name), lines.join("\n")),
    };
    Some(Answer::line(
        lot,
        "the land is a `lot` with its name, and its calls stand below it, each on a line of its own",
    ))
}

/// A call as a sides file has it: `bearing N 12-30 E 220.4 ft to POB` has its marks and its remark.
fn as_call(typed: &Typed<'_>, line: &str) -> Option<String> {
    let again = Typed { line, pieces: super::cut(line), attempt: typed.attempt };
    match super::deeds::answer(&again) {
        Some(Answer::Lines(lines, _)) if lines.len() == 1 => lines.into_iter().next(),
        Some(_) => None,
        None => Some(line.to_owned()),
    }
}

/// `lot #9 recorded 0.21 acres`: what follows the `#` is a comment.
fn numbered_in_a_comment(typed: &Typed<'_>) -> Option<Answer> {
    let comment = typed.attempt.beside.comment.as_deref()?.trim_start_matches('#').trim();
    let (number, rest) = comment.split_once(' ').unwrap_or((comment, ""));
    let is_number = number.starts_with(|c: char| c.is_ascii_digit())
        && number.len() <= 4
        && number.chars().all(char::is_alphanumeric);
    (typed.pieces.len() == 1 && is_number && !comment.contains('"')).then(|| {
        Answer::line(
            format!("lot \"Lot {number}\" {rest}").trim_end(),
            "after a `#` is a comment: the name of a lot stands without it, with a `\"` on each side",
        )
    })
}

fn sized(typed: &Typed<'_>) -> Option<Answer> {
    // `80' front 120' deep`, `80 ft frontage x 120 ft depth`
    let words = [
        "front", "frontage", "wide", "width", "deep", "depth", "long", "road", "street", "across",
        "back", "on", "of",
    ];
    let past = |from: usize| {
        (from..typed.pieces.len())
            .find(|&at| !typed.says(at, &words) && !typed.pieces[at].is_mark(","))
            .unwrap_or(typed.pieces.len())
    };
    let is_size = |at: usize| {
        let one = length_at(&typed.pieces, at)?;
        let next = past(one.end);
        let is_by = by(typed, next);
        let said = next > one.end && one.has_unit;
        let at = next + usize::from(is_by);
        let mut two = length_at(&typed.pieces, at).filter(|_| is_by || said)?;
        two.end = past(two.end);
        Some((one, two))
    };
    let (at, (one, two)) =
        (1..typed.pieces.len()).find_map(|at| is_size(at).map(|size| (at, size)))?;
    let sides_follow = super::super::begins_as_side(&typed.attempt.beside.after);
    let before = typed.text(1, at).trim_matches([',', ':', '-', ' ']);
    let before = before.trim_end_matches(" is").trim();
    let before = match before.to_lowercase().as_str() {
        "size" | "dimensions" | "dims" | "measures" => "",
        _ => before,
    };
    let name = match typed.piece(1) {
        Some(name) if is_text(Some(name)) => name.text.trim_matches(['"', '“', '”']).to_owned(),
        _ if before.is_empty() => "Lot".to_owned(),
        Some(number) if number.is_number() => format!("Lot {before}"),
        _ => before.to_owned(),
    };
    if name.contains('"') || name.chars().count() > 24 {
        return None;
    }
    let area = area_from(&typed.pieces, two.end);
    // Only an area may follow, with a mark or a word before it.
    let small = ["recorded", "record", "or", "about", "is", "total", "area", "of"];
    let first = area.as_ref().map_or(two.end, |(first, _, _)| *first);
    let end = area.as_ref().map_or(two.end, |(_, end, _)| *end);
    let is_small = |at: usize| typed.says(at, &small) || typed.pieces[at].is_mark(",;:=()-–");
    if !(two.end..first).all(is_small) {
        return None;
    }
    // `lot 80 x 120, corner of Larch and Mill`: what is known of it besides goes into its name.
    let is_remark =
        |at: usize| typed.pieces[at].sort == Sort::Word || typed.pieces[at].is_mark(",;:=()-–.&");
    let name = match (end..typed.pieces.len()).all(is_small) {
        true => name,
        false if name == "Lot" && (end..typed.pieces.len()).all(is_remark) => {
            let more = super::remark(typed.rest(end));
            let more = more.trim_matches([',', ';', '(', ')', ' ', '-', '–']);
            match more.strip_suffix(" lot") {
                // A corner is one of the walk.
                _ if typed.find(end, &["corner"]).is_some() => name,
                Some(_) => super::levels::capitalized(more),
                None => format!("Lot, {more}"),
            }
        }
        false => return None,
    };
    if name.chars().count() > 40 {
        return None;
    }
    let recorded = area.map_or(String::new(), |(_, _, area)| format!(" recorded {area}"));
    if sides_follow {
        let size = typed.text(at, two.end).trim_matches([',', ' ']);
        return Some(Answer::line(
            format!("lot {}{recorded}  # {size}", quoted(&name)),
            "a size is typed as its sides, and they follow below: it can only be a remark",
        ));
    }
    let (one, two) = in_one_unit(&one, &two);
    let sides = |north: &str, east: &str| {
        format!(
            "lot {}{recorded}\nnorth {north}\neast {east}\nsouth {north}\nwest {east}",
            quoted(&name)
        )
    };
    let mut lines = vec![sides(&one, &two), sides(&two, &one)];
    lines.dedup();
    Some(Answer::Lines(
        lines,
        "a lot has its name, then `recorded` and its area, and its size is typed as its sides: which of the two lengths runs north and south?"
            .to_owned(),
    ))
}

/// `80 x 120`, `front 80' along street, 120 deep` below the line of a lot: its four sides.
pub(super) fn size_alone(typed: &Typed<'_>) -> Option<Answer> {
    const WORDS: [&str; 20] = [
        "x", "by", "front", "frontage", "wide", "width", "deep", "depth", "along", "street",
        "road", "on", "the", "back", "and", "about", "lot", "in", "of", "is",
    ];
    if !typed.is_in_lot() || super::super::begins_as_wall(&typed.attempt.beside.before) {
        return None;
    }
    let [(first, one), (second, two)] = &super::measure::lengths(&typed.pieces, 0)[..] else {
        return None;
    };
    let is_length = |at: usize| (*first..one.end).contains(&at) || (*second..two.end).contains(&at);
    let is_plain = |at: usize| typed.says(at, &WORDS) || typed.pieces[at].is_mark(",;:×*()-–.");
    let says = |words: &[&str]| typed.find(0, words).is_some();
    let is_size = says(&["x", "by", "deep", "depth", "wide", "width"]) || typed.line.contains('×');
    let runs = (0..typed.pieces.len()).all(|at| is_length(at) || is_plain(at));
    if !is_size || !runs || super::super::begins_as_wall(&typed.attempt.beside.after) {
        return None;
    }
    let (a, b) = in_one_unit(one, two);
    let sides =
        |north: &str, east: &str| format!("north {north}\neast {east}\nsouth {north}\nwest {east}");
    // Which of the two is the depth, the words after it or before it say.
    let is_deep = |from: usize, end: usize| {
        typed.says(end, &["deep", "depth"])
            || from.checked_sub(1).is_some_and(|before| typed.says(before, &["depth", "deep"]))
    };
    let depth = match (is_deep(*first, one.end), is_deep(*second, two.end)) {
        (false, true) => Some((&a, &b)),
        (true, false) => Some((&b, &a)),
        _ => None,
    };
    let front = typed.attempt.beside.front;
    Some(match depth.zip(front) {
        Some(((wide, deep), front)) => {
            let upright = front.axis() == crate::geometry::compass::Axis::North;
            Answer::line(
                if upright { sides(deep, wide) } else { sides(wide, deep) },
                "a lot is typed as its sides, each with its way and its length",
            )
        }
        None => Answer::Lines(
            vec![sides(&a, &b), sides(&b, &a)],
            "a lot is typed as its sides, each with its way and its length; which of the two lengths runs north and south?".to_owned(),
        ),
    })
}
