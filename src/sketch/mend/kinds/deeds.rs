//! Suggestions for whole lines that are calls of a deed.

use super::super::compass::slant;
use super::super::pieces::Sort;
use super::codes::azimuth;
use super::measure::length_at;
use super::{Answer, Typed, plainly, quoted};

const CALL: &str = "a call is `bearing`, N or S, the angle with its marks, E or W, and the length";

/// Suggestions for a call with a deed's words around it, or with other marks in its angle.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(
        0,
        &[
            "bearing", "thence", "th", "then", "north", "south", "n", "s", "running", "along",
            "call", "course",
        ],
    );
    if let Some(call) = azimuth(typed).or_else(|| after_other_words(typed)) {
        return Some(call);
    }
    if !begins {
        return None;
    }
    if let Some(call) = from_east_or_west(typed) {
        return Some(call);
    }
    if let Some(due) = due(typed) {
        return Some(due);
    }
    let from =
        (0..typed.pieces.len().min(4)).find(|&at| typed.says(at, &["n", "s", "north", "south"]))?;
    quadrant(typed, from).or_else(|| straight(typed, from))
}

/// `N 0° 30' E 120, S 89° 30' E 76.3`, `N 0° 30' E 120' thence S 89° 30' E 76.3'`: several calls on one line.
pub(super) fn several(typed: &Typed<'_>) -> Option<Answer> {
    let (mut lines, mut at) = (Vec::new(), 0);
    while at < typed.pieces.len() {
        if typed.says(at, &["bearing", "thence", "then", "and", "th"])
            || typed.pieces[at].is_mark(",;./")
        {
            at += 1;
            continue;
        }
        let toward = (at + 2..typed.pieces.len().min(at + 9))
            .find(|&end| typed.says(end, &["e", "w", "east", "west"]))
            .filter(|_| typed.says(at, &["n", "s", "north", "south"]))?;
        let is_angle = typed.pieces[at + 1].is_number()
            && typed.pieces[at + 1..toward].iter().any(|mark| mark.is_mark("°º˚"));
        let comma = usize::from(typed.piece(toward + 1).is_some_and(|mark| mark.is_mark(",")));
        let length = length_at(&typed.pieces, toward + 1 + comma).filter(|_| is_angle)?;
        lines.push(format!("bearing {} {}", typed.text(at, toward + 1), length.text));
        at = length.end;
    }
    (lines.len() >= 2).then(|| Answer::line(lines.join("\n"), "each call goes on its own line"))
}

/// `SE 87-45-00 105.50'`, `bearing NE 2° 15' 140.00'`, `NE 2° 15' E 140.00'`: both letters of the compass before the
/// angle.
pub(super) fn slanted(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["bearing", "thence", "course"]));
    let (from, toward) = slant(&typed.lower(first))?;
    let is_angle =
        typed.piece(first + 2)?.is_mark("°º˚-–:*") || typed.says(first + 2, &["deg", "degrees"]);
    let (mut parts, mut end) = angle(typed, first + 1);
    if typed.says(end, &[toward, &toward[..1]]) {
        end += 1;
    } else {
        // The last number is the length.
        end = (first + 3..typed.pieces.len()).find(|&at| {
            let length = length_at(&typed.pieces, at).filter(|_| !typed.pieces[at].touches);
            length.is_some_and(|length| {
                !typed.pieces[length.end..].iter().any(super::Piece::is_number)
            })
        })?;
        parts.truncate(
            typed.pieces[first + 1..end].iter().filter(|piece| piece.is_number()).count(),
        );
    }
    let letter = |way: &str| way[..1].to_uppercase();
    let head = format!("bearing {} {} {}", letter(from), written(&parts), letter(toward));
    is_angle.then(|| finish(typed, &head, end))?
}

/// `bearing E 12° N 120'`: counted from east or west.
fn from_east_or_west(typed: &Typed<'_>) -> Option<Answer> {
    let at = usize::from(typed.says(0, &["bearing", "thence", "th"]));
    let toward = match typed.lower(at).as_str() {
        "e" | "east" => "E",
        "w" | "west" => "W",
        _ => return None,
    };
    let degrees = typed.piece(at + 1).filter(|degrees| degrees.is_number())?;
    let all: rust_decimal::Decimal = degrees.text.parse().ok()?;
    let marked = typed.piece(at + 2)?.is_mark("°º") || typed.says(at + 2, &["deg", "degrees"]);
    let from = match typed.lower(at + 3).as_str() {
        "n" | "north" => "N",
        "s" | "south" => "S",
        _ => return None,
    };
    let angle = rust_decimal::Decimal::from(90) - all;
    let fits = marked && angle.is_sign_positive();
    fits.then(|| finish(typed, &format!("bearing {from} {}° {toward}", angle.normalize()), at + 4))?
}

/// `beginning at an iron pin, thence N 2-15 E 48.30 m`, `th. N 2°16' E 88,27 m`, `thence with the road S 80° E 100'`: the
/// call stands after other words, which become its remark.
fn after_other_words(typed: &Typed<'_>) -> Option<Answer> {
    let begins = ["beginning", "commencing", "starting", "begin", "thence", "th", "then", "along"];
    if !typed.says(0, &begins) {
        return None;
    }
    let thence = typed.find(0, &["thence", "th", "then"])?;
    let from = (thence + 1..typed.pieces.len()).find(|&at| {
        typed.says(at, &["n", "s", "north", "south"])
            && typed.piece(at + 1).is_some_and(super::Piece::is_number)
    });
    let easterly = |at: usize| match typed.lower(at).as_str() {
        "easterly" | "eastward" | "eastwardly" => Some("N 90° E"),
        "westerly" | "westward" | "westwardly" => Some("N 90° W"),
        "northerly" | "northward" | "northwardly" => Some("N 0° E"),
        "southerly" | "southward" | "southwardly" => Some("S 0° E"),
        _ => None,
    };
    if let Some(call) = easterly(thence + 1) {
        let first = thence + 2 + usize::from(typed.says(thence + 2, &["for"]));
        let length = length_at(&typed.pieces, first)?;
        let word = typed.lower(thence + 1);
        return Some(Answer::say(
            format!("`{word}` is no exact bearing"),
            format!(
                "find the bearing of this line on the plat or in the deed of the land beside it, and write it as the other calls; if it runs straight that way, write `bearing {call} {0}`; if it leads back to where the lot begins, write `close`",
                length.text
            ),
        ));
    }
    let Some(from) = from else {
        let found = super::measure::lengths(&typed.pieces, thence + 1);
        let has_way = (thence..typed.pieces.len()).any(|at| {
            typed.says(at, &["n", "s", "e", "w", "north", "south", "east", "west", "beginning"])
        });
        let [(_, measure)] = &found[..] else { return None };
        let is_call = typed.is_in_lot() || !typed.says(0, &["then"]);
        return (measure.has_unit && !has_way && thence == 0 && is_call).then(|| {
            Answer::say(
                "this call has a length and no direction",
                format!(
                    "write `bearing`, N or S, the angle, E or W, and then `{}`; what it runs along goes in a note, and a bent line takes one call for each straight piece",
                    measure.text
                ),
            )
        });
    };
    let head = plainly(typed.text(0, from));
    let head =
        head.trim_start_matches("thence").trim_start_matches("th.").trim_end_matches("thence");
    let head = head.trim_matches([',', ' ', '.', ';']);
    // The decimal comma of a length in meters.
    let line = typed.rest(from);
    let comma = typed.pieces.iter().enumerate().find(|(at, piece)| {
        piece.is_number() && piece.text.contains(',') && typed.says(at + 1, &["m", "meters"])
    });
    let line = match comma {
        Some((_, piece)) => line.replace(piece.text.as_str(), &piece.text.replace(',', ".")),
        None => line.to_owned(),
    };
    let head_is_plain = head.chars().all(|c| !c.is_ascii_digit() && c != '"');
    if from <= 1 && comma.is_none() && !typed.piece(1).is_some_and(|mark| mark.is_mark("."))
        || !head_is_plain
    {
        return None;
    }
    let again = Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt };
    let call = quadrant_of(&again)?;
    let note = if head.is_empty() || head == "th" || call.contains(" note ") {
        String::new()
    } else {
        format!(" note {}", quoted(head))
    };
    Some(Answer::line(format!("{call}{note}"), CALL))
}

/// The call of a line that begins with its bearing.
fn quadrant_of(typed: &Typed<'_>) -> Option<String> {
    match quadrant(typed, 0)? {
        Answer::Lines(lines, _) => lines.into_iter().next(),
        Answer::Say { .. } | Answer::Ask { .. } => None,
    }
}

/// `bearing due east 80'`, `thence West 80.00 feet`: square to north and south.
fn due(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["bearing", "thence", "th"]);
    let at = 1 + usize::from(typed.says(1, &["due"]));
    let toward = match typed.lower(at).as_str() {
        "east" | "e" => "E",
        "west" | "w" => "W",
        _ => return None,
    };
    let mut first = at + 1;
    while typed.says(first, &["a", "distance", "of", "for"])
        || typed.piece(first).is_some_and(|mark| mark.is_mark(","))
    {
        first += 1;
    }
    if !begins || !length_at(&typed.pieces, first)?.has_unit {
        return None;
    }
    finish(typed, &format!("bearing N 90° {toward}"), first)
}

/// The parts of an angle that begins at this piece, in degrees, minutes and seconds, and the index after it.
fn angle(typed: &Typed<'_>, from: usize) -> (Vec<String>, usize) {
    let mut parts: Vec<String> = Vec::new();
    let mut at = from;
    while let Some(piece) = typed.piece(at) {
        let mark = piece.is_mark("°º˚*'’′\"”″-–.:,")
            || piece.is_word(&[
                "deg", "degs", "degree", "degrees", "d", "min", "mins", "minute", "minutes", "m",
                "sec", "secs", "second", "seconds", "s", "and", "o",
            ]);
        if piece.is_number() && parts.len() < 3 {
            parts.push(piece.text.clone());
        } else if !mark || parts.is_empty() {
            break;
        }
        at += 1;
    }
    (parts, at)
}

fn written(parts: &[String]) -> String {
    let marks = ["°", "'", "\""];
    parts
        .iter()
        .zip(marks)
        .map(|(part, mark)| format!("{part}{mark}"))
        .collect::<Vec<_>>()
        .join(" ")
}

/// `thence N 84° 45' 10" E, 94.9 feet to an iron pin`, `N84d45m10sE 94.9'`.
fn quadrant(typed: &Typed<'_>, from: usize) -> Option<Answer> {
    let (parts, mut at) = angle(typed, from + 1);
    // `north 30' 2", east 44' 5"` is two walls.
    let is_angle = typed.piece(from + 2).is_some_and(|mark| mark.is_mark("°º˚-–:*"))
        || typed.says(from + 2, &["deg", "degs", "degree", "degrees", "d"])
        || typed.says(0, &["bearing", "thence", "th"]);
    if parts.is_empty() || !is_angle {
        return None;
    }
    let toward = typed.lower(at);
    // `10sE`: the letter of the seconds touches the E.
    let toward = match toward.as_str() {
        "e" | "east" | "easterly" => "E",
        "w" | "west" | "westerly" => "W",
        // `87d45mE`: so does that of the minutes.
        "se" | "me" | "de" if typed.piece(at)?.touches => "E",
        "sw" | "mw" | "dw" if typed.piece(at)?.touches => "W",
        _ => return None,
    };
    at += 1;
    while typed.piece(at).is_some_and(|piece| {
        piece.is_mark(",;:=-–")
            || piece.is_word(&[
                "a", "an", "distance", "of", "for", "the", "length", "about", "run", "runs",
                "thence",
            ])
    }) {
        at += 1;
    }
    let letter = typed.lower(from)[..1].to_uppercase();
    let head = format!("bearing {letter} {} {toward}", written(&parts));
    finish(typed, &head, at).or_else(|| remark_before_the_length(typed, &head, at))
}

/// `N 84° 45' 10" E along the alley, a distance of 94.90 feet, to a stake`: what a call runs along is its note.
fn remark_before_the_length(typed: &Typed<'_>, head: &str, at: usize) -> Option<Answer> {
    let first = (at..typed.pieces.len().min(at + 24)).find(|&at| typed.pieces[at].is_number())?;
    let measure = length_at(&typed.pieces, first).filter(|measure| measure.has_unit)?;
    let plain = |from: usize, to: usize| {
        let said = typed.pieces.get(from..to).unwrap_or_default();
        said.iter().all(|piece| piece.sort == Sort::Word || piece.is_mark(",.;()"))
    };
    let before = plainly(typed.text(at, first));
    let before = ["a distance of", "distance of", "for a distance of", "for", "a distance"]
        .iter()
        .fold(before.trim(), |before, end| {
            before.strip_suffix(end).unwrap_or(before).trim_end_matches([',', ' '])
        });
    let after = plainly(typed.rest(measure.end));
    let after = after.trim_matches([',', ';', '.', ' ']);
    let is_more = typed.find(at, &["thence", "then", "radius", "curve", "arc"]).is_some();
    let fits = first > at && plain(at, first) && plain(measure.end, typed.pieces.len());
    let said = [before, after].into_iter().filter(|said| !said.is_empty()).collect::<Vec<_>>();
    (fits && !is_more && !said.is_empty()).then(|| {
        Answer::line(format!("{head} {} note {}", measure.text, quoted(&said.join(", "))), CALL)
    })
}

/// The call made of the bearing `head` and the length that begins at piece `at`; `None` if there is none.
fn finish(typed: &Typed<'_>, head: &str, at: usize) -> Option<Answer> {
    let measure = length_at(&typed.pieces, at)?;
    let rest = typed.rest(measure.end);
    let first = typed.lower(measure.end);
    // A second call follows.
    let again = typed.find(measure.end, &["thence", "then"]);
    if again.is_some_and(|again| typed.pieces[again..].iter().any(super::Piece::is_number)) {
        return Some(Answer::say(
            "each call goes on its own line",
            format!("write `{head} {}` and each call after it on a line of its own", measure.text),
        ));
    }
    let is_unit = [
        "rod", "rods", "pole", "poles", "perch", "perches", "chain", "chains", "ch", "link",
        "links", "vara", "varas", "survey", "us", "m", "yd", "yards",
    ];
    let known =
        ["recorded", "tolerance", "estimated", "from", "common", "photo", "note", "veneer", "wall"];
    // The rest of the length, which no note may take in.
    let goes_on = length_at(&typed.pieces, measure.end).is_some_and(|more| more.has_unit);
    if goes_on || rest.starts_with(['/', '+', '*']) || ["mile", "miles"].contains(&first.as_str()) {
        return None;
    }
    if let Some((_, _, area)) =
        super::measure::area_from(&typed.pieces, measure.end).filter(|(_, _, area)| {
            area.ends_with("acres") || area.ends_with("hectares") || area.ends_with("sq ft")
        })
    {
        return Some(Answer::say(
            "a call is one line, and the area of the land stands on the line of the lot",
            format!(
                "write `{head} {}` here, and `recorded {area}` at the end of the line that begins with `lot`, above, as `lot \"Lot\" recorded {area}`",
                measure.text
            ),
        ));
    }
    let line = if rest.is_empty() {
        format!("{head} {}", measure.text)
    } else if is_unit.contains(&first.as_str()) || known.contains(&first.as_str()) {
        format!("{head} {} {rest}", measure.text)
    } else {
        format!("{head} {} note {}", measure.text, quoted(rest.trim_start_matches([',', ';', ' '])))
    };
    (line != typed.line).then(|| Answer::line(line, CALL))
}

/// `bearing north 142.67' along Harrow Lane` becomes a bearing that runs due north.
fn straight(typed: &Typed<'_>, from: usize) -> Option<Answer> {
    if !typed.says(0, &["bearing", "thence", "th"]) {
        return None;
    }
    let measure = length_at(&typed.pieces, from + 1)?;
    if !measure.has_unit {
        return None;
    }
    let letter = typed.lower(from)[..1].to_uppercase();
    finish(typed, &format!("bearing {letter} 0° E"), from + 1)
}
