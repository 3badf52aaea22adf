//! Lines of spaces that say something further among other words: a face, the record's area, a place, or that it is
//! gone.

use super::super::compass::{is_upright, slant, way_and_back};
use super::super::pieces::Piece;
use super::measure::{area_from, length_at, lengths};
use super::spaces::{is_space, kind_word};
use super::walls::is_way;
use super::{Answer, Rule, Sort, Typed, first_of, is_text, levels, plainly, quoted};
use crate::sketch::lexer;

/// The words that may follow the name of a space.
const KEYWORDS: [&str; 10] = [
    "measured", "within", "start", "from", "detached", "under", "veneer", "counted", "not",
    "recorded",
];
const COMPASS: [&str; 8] = ["north", "east", "south", "west", "n", "e", "s", "w"];
const RECORD: [&str; 9] =
    ["record", "records", "recorded", "county", "card", "roll", "assessor", "rec", "tax"];

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        open_name,
        two_grounds,
        figure_of_a_part,
        gone,
        start_by_another_word,
        along_from_a_corner,
        off_the_house,
        face_among_words,
    ];
    first_of(rules, typed)
}

/// `garage "Garage start east 46' 6"`: the quotation mark at the end of the name is missing, so the name runs on to the
/// next mark.
fn open_name(typed: &Typed<'_>) -> Option<Answer> {
    kind_word(&typed.lower(0))?;
    let line = typed.line;
    let is_mark = |at: usize| {
        line[at..].starts_with('"') && !line[..at].ends_with(|c: char| c.is_ascii_digit())
    };
    let marks: Vec<usize> =
        (0..line.len()).filter(|&at| line.is_char_boundary(at) && is_mark(at)).collect();
    let first = *marks.first().filter(|_| marks.len() % 2 == 1)?;
    let at = first + lexer::runs_on(line.get(first..)?)?;
    let name = line[first + 1..at].trim();
    (!name.is_empty() && !name.contains('"')).then(|| {
        let line = format!("{}\"{name}\"{}", &line[..first], &line[at..]);
        Answer::line(line, "the name has no `\"` at its end")
    })
}

/// `terrace "Deck"`: on the ground or raised.
fn two_grounds(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["terrace", "terrasse", "terraza", "terrazza"]);
    let rest = typed.rest(1);
    (begins && !rest.is_empty()).then(|| {
        Answer::Lines(
            vec![format!("patio {rest}"), format!("deck {rest}")],
            "a terrace on the ground is a `patio`, a raised one is a `deck`".to_owned(),
        )
    })
}

/// `garage on record 484 sf`: the figure of a part, where no walk begins; it goes on the part's own line.
fn figure_of_a_part(typed: &Typed<'_>) -> Option<Answer> {
    let kind = kind_word(&typed.lower(0)).filter(|_| !typed.line.contains('"'))?;
    let (first, end, area) = area_from(&typed.pieces, 1)?;
    let says_record = |piece: &Piece| piece.is_word(&RECORD);
    let filler = |piece: &Piece| {
        says_record(piece)
            || piece.is_mark(",:;=().-–")
            || piece.is_word(&[
                "on", "the", "per", "by", "has", "says", "is", "as", "in", "at", "of", "area",
            ])
    };
    let around = [&typed.pieces[1..first], &typed.pieces[end..]].concat();
    if kind == "living" || !around.iter().all(filler) || !around.iter().any(says_record) {
        return None;
    }
    let walks = |line: &str| {
        let mut words = line.split_whitespace();
        let way = words.next().unwrap_or_default().to_lowercase();
        COMPASS.contains(&way.as_str())
            || ["back", "left", "right", "close"].contains(&way.as_str())
    };
    let named = format!("{kind} \"{}\" recorded {area}", levels::capitalized(kind));
    Some(if walks(&typed.attempt.beside.after) {
        Answer::line(named, "a space has a name, and the record's area of it goes after `recorded`")
    } else {
        Answer::say(
            format!("the record's area of a {kind} stands on the line of the {kind} itself"),
            format!(
                "take this line out, and at the end of the line that begins with `{kind}` write `recorded {area}`; if it is there no more, write `missing {kind} \"{}\" recorded {area}`",
                levels::capitalized(kind)
            ),
        )
    })
}

/// `shed "tool shed" 96 sf on record, gone since 2019`: on the record, and no longer there.
fn gone(typed: &Typed<'_>) -> Option<Answer> {
    let word = typed.lower(0);
    let kind = match word.as_str() {
        "shed" | "barn" | "workshop" | "greenhouse" | "stable" => "outbuilding",
        word => kind_word(word)?,
    };
    let name = typed.piece(1).filter(|name| is_text(Some(name)))?;
    let says = ["gone", "removed", "demolished", "destroyed", "razed", "torn", "burned", "burnt"];
    let at = typed.find(2, &says)?;
    let negated = typed.says(at - 1, &["not", "never", "isn't", "wasn't"]);
    if negated || typed.pieces[2..].iter().any(|piece| piece.sort == Sort::Text) {
        return None;
    }
    let Some((first, end, area)) = area_from(&typed.pieces, 2) else {
        return Some(Answer::say(
            "what the record lists and the house does not have is `missing`, with the area on the record",
            format!("write `missing {kind} {} recorded` and the area on the record", name.text),
        ));
    };
    let comment = said(typed, &[(first, end)], &RECORD, &["on", "the", "per", "by", "of"]);
    let comment = if comment.is_empty() { comment } else { format!("  # {comment}") };
    Some(Answer::line(
        format!("missing {kind} {} recorded {area}{comment}", name.text),
        "what the record lists and the house does not have is `missing`",
    ))
}

/// What a line says after its name beside these parts, without the words of `left_out` and without `joints` next to
/// them.
fn said(typed: &Typed<'_>, taken: &[(usize, usize)], left_out: &[&str], joints: &[&str]) -> String {
    let is_taken = |at: usize| taken.iter().any(|(first, end)| (*first..*end).contains(&at));
    let is_out = |at: usize| is_taken(at) || typed.says(at, left_out);
    let mut parts: Vec<String> = Vec::new();
    let mut at = 2;
    while at < typed.pieces.len() {
        let joint = |at: usize| {
            let mut next = at;
            while typed.says(next, joints) {
                next += 1;
            }
            next > at && next < typed.pieces.len() && is_out(next)
        };
        if is_out(at) || joint(at) {
            at += 1;
            continue;
        }
        let begin = at;
        while at < typed.pieces.len() && !is_out(at) && !joint(at) {
            at += 1;
        }
        let part = plainly(typed.text(begin, at));
        let part = part.trim_matches(|c: char| " ,;:.-–=@".contains(c)).to_owned();
        if !part.is_empty() {
            parts.push(part);
        }
    }
    parts.join(", ")
}

/// `at east 46' 6", north 20' 2"`, `, east 46' 6"`: a place without its word `start`.
fn start_by_another_word(typed: &Typed<'_>) -> Option<Answer> {
    if !is_space(typed) || !is_text(typed.piece(1)) || typed.find(2, &["from"]).is_some() {
        return None;
    }
    let way = (2..typed.pieces.len())
        .find(|&at| typed.says(at, &COMPASS) && length_at(&typed.pieces, at + 1).is_some())?;
    let filler = |at: usize| {
        typed.says(
            at,
            &[
                "at",
                "starting",
                "starts",
                "begins",
                "beginning",
                "located",
                "place",
                "placed",
                "position",
                "offset",
                "it",
            ],
        ) || typed.piece(at).is_some_and(|piece| piece.is_mark("@,:;=(-–"))
    };
    let mut first = way;
    while first > 2 && filler(first - 1) {
        first -= 1;
    }
    let started = typed.says(first - 1, &["start"]);
    let mut pairs = Vec::new();
    let mut at = way;
    while let Some(measure) = length_at(&typed.pieces, at + 1).filter(|_| typed.says(at, &COMPASS))
    {
        pairs.push(format!("{} {}", typed.lower(at), measure.text));
        at = measure.end;
        let mut next = at;
        while typed.says(next, &["and", "then"])
            || typed.piece(next).is_some_and(|piece| piece.is_mark(",;)&+"))
        {
            next += 1;
        }
        let joined = typed.says(next, &COMPASS) && length_at(&typed.pieces, next + 1).is_some();
        at = if joined || next == typed.pieces.len() || typed.says(next, &KEYWORDS) {
            next
        } else {
            at
        };
    }
    if started || first == way || pairs.len() > 2 {
        return None;
    }
    let line = format!("{} start {} {}", typed.text(0, first), pairs.join(" "), typed.rest(at));
    Some(Answer::line(line.trim_end(), "a place begins with `start`"))
}

/// `2,10 m from SW corner`, `14' from W wall on south wall`: a distance from a corner or a wall named by the compass.
fn along_from_a_corner(typed: &Typed<'_>) -> Option<Answer> {
    if !is_space(typed) || !is_text(typed.piece(1)) {
        return None;
    }
    let from = typed.find(3, &["from", "off"])?;
    let all = lengths(&typed.pieces, 2);
    let (first, length) = match all.iter().find(|(_, measure)| measure.end == from) {
        Some((first, measure)) => (*first, measure.text.clone()),
        None => comma_meters(typed, from)?,
    };
    let mut at = from + 1;
    while typed.says(at, &["the", "its"]) {
        at += 1;
    }
    let side = typed.lower(at);
    let stands = at + 1;
    let away = |side: &str| match side.chars().next() {
        Some('n') => "south",
        Some('s') => "north",
        Some('e') => "west",
        _ => "east",
    };
    let ways = if typed.says(stands, &["corner", "corn", "cor"]) {
        let (upright, across) = slant(&side)?;
        vec![away(across), away(upright)]
    } else if COMPASS.contains(&side.as_str())
        && typed.says(stands, &["wall", "side", "end", "face"])
    {
        vec![away(&side)]
    } else {
        return None;
    };
    if typed.pieces[2..].iter().any(|piece| piece.sort == Sort::Text)
        || all.iter().filter(|(at, measure)| measure.has_unit && *at != first).count() > 0
        || (2..typed.pieces.len()).any(|at| at != from && typed.says(at, &KEYWORDS))
    {
        return None;
    }
    let place = typed.text(at, stands + 1).to_owned();
    let comment = format!("  # {}", said(typed, &[], &[], &[]));
    let lines = ways
        .iter()
        .map(|way| format!("{} start {way} {length}{comment}", typed.text(0, 2)))
        .collect();
    Some(Answer::Lines(
        lines,
        format!(
            "a place is `start`, counted from corner 1 of the house's first walk, which is right here if that walk starts at the {place}; from another corner the lengths differ"
        ),
    ))
}

/// `2,10 m` or `2,10`, ending right before this piece.
fn comma_meters(typed: &Typed<'_>, end: usize) -> Option<(usize, String)> {
    let unit = usize::from(typed.says(end - 1, &["m", "meters", "metres"]));
    let first = end.checked_sub(1 + unit).filter(|first| *first >= 2)?;
    let number = typed.piece(first).filter(|number| number.is_number())?;
    let (whole, decimals) = number.text.split_once([',', '.'])?;
    let is_length = (unit == 1 || typed.attempt.is_metric) && decimals.len() <= 2;
    is_length.then(|| (first, format!("{whole}.{decimals} m")))
}

/// `outbuilding "Barn" approx 40 m north of house, record 1,250 sq ft`: it is detached, and its area is on the record.
fn off_the_house(typed: &Typed<'_>) -> Option<Answer> {
    let kinds = [
        "outbuilding",
        "garage",
        "carport",
        "storage",
        "shed",
        "barn",
        "workshop",
        "stable",
        "greenhouse",
    ];
    let kind = if typed.says(0, &kinds[4..]) { "outbuilding".to_owned() } else { typed.lower(0) };
    if !typed.says(0, &kinds) || !is_text(typed.piece(1)) {
        return None;
    }
    let detached = typed.find(2, &["detached"]);
    if (2..typed.pieces.len()).any(|at| {
        typed.says(
            at,
            &[
                "within", "start", "measured", "under", "veneer", "counted", "not", "corner",
                "attached",
            ],
        ) || typed.pieces[at].sort == Sort::Text
    }) {
        return None;
    }
    let house = ["house", "home", "main", "residence", "dwelling"];
    let at_house = (4..typed.pieces.len()).find(|&at| {
        typed.says(at, &house)
            && (typed.says(at - 1, &["of", "from"])
                || typed.says(at - 1, &["the"]) && typed.says(at - 2, &["of", "from"]))
    });
    let far = lengths(&typed.pieces, 2).iter().any(|(_, measure)| measure.has_unit);
    let roughly = typed
        .find(2, &["approx", "approximately", "about", "roughly", "ca", "some", "around"])
        .is_some();
    let figure = area_from(&typed.pieces, 2);
    let recorded = match &figure {
        Some((first, end, area)) => {
            let near = (first.saturating_sub(3)..(end + 4).min(typed.pieces.len()))
                .any(|at| !(*first..*end).contains(&at) && typed.says(at, &RECORD));
            Some((*first, *end, area.clone())).filter(|_| near)
        }
        None => None,
    };
    let is_off = at_house.is_some() && (far || roughly);
    let is_another = figure.is_some() && recorded.is_none();
    if !is_off || is_another {
        return None;
    }
    let mut taken: Vec<(usize, usize)> =
        recorded.iter().map(|(first, end, _)| (*first, *end)).collect();
    // `north 7.30, east 12.20`: two walls of four.
    let two = two_walls(typed);
    taken.extend(two.iter().flat_map(|(_, walls)| walls.clone()));
    taken.extend(detached.map(|at| (at, at + 1)));
    let left_out: &[&str] = if recorded.is_some() { &RECORD } else { &[] };
    let comment = said(
        typed,
        &taken,
        left_out,
        &["on", "per", "by", "the", "says", "has", "lists", "shows", "is"],
    );
    let area = recorded.map_or_else(String::new, |(_, _, area)| format!(" recorded {area}"));
    let sides = two.map_or_else(String::new, |(sides, _)| format!("\n{sides}"));
    Some(Answer::line(
        format!("{kind} {} detached{area}  # {comment}{sides}", typed.text(1, 2)),
        "what stands by itself is `detached`; how far off goes into a comment",
    ))
}

/// `barn detached, 6.2 north-south, 9.5 east-west`, `outbuilding "Barn" apart 6.2 north 9.5 east`: two lengths, each with
/// the way in which it runs.
pub(super) fn apart_by_two_lengths(typed: &Typed<'_>) -> Option<Answer> {
    const APART: [&str; 7] =
        ["detached", "apart", "separate", "separately", "by", "itself", "freestanding"];
    let kind = super::kind_meant(&typed.lower(0))
        .filter(|kind| ["outbuilding", "garage"].contains(kind))?;
    let is_named = is_text(typed.piece(1));
    let name = if is_named {
        typed.text(1, 2).to_owned()
    } else {
        quoted(&levels::capitalized(&typed.lower(0)))
    };
    let upright = |at: usize| {
        let word = typed.lower(at);
        let first = word.split('-').next().unwrap_or_default().to_owned();
        matches!(first.as_str(), "north" | "south" | "n" | "s" | "n/s" | "ns")
            .then_some(true)
            .or(matches!(first.as_str(), "east" | "west" | "e" | "w" | "e/w" | "ew")
                .then_some(false))
    };
    let (mut at, mut says_apart, mut found) = (1 + usize::from(is_named), false, Vec::new());
    while at < typed.pieces.len() {
        if let Some(measure) = length_at(&typed.pieces, at) {
            let upright = upright(measure.end)?;
            at = measure.end + 1;
            // `north-south` in pieces of its own.
            while typed.piece(at).is_some_and(|mark| mark.is_mark("-–/")) || self::is_way(typed, at)
            {
                at += 1;
            }
            found.push((upright, measure.text));
        } else if typed.says(at, &APART) {
            says_apart = true;
            at += 1;
        } else if typed.pieces[at].is_mark(",;:()") || typed.says(at, &["and", "x"]) {
            at += 1;
        } else {
            return None;
        }
    }
    let [(one, first), (two, second)] = &found[..] else { return None };
    let (deep, wide) = if *one { (first, second) } else { (second, first) };
    (one != two && says_apart).then(|| {
        Answer::line(
            format!("{kind} {name} detached\nnorth {deep}\neast {wide}\nsouth {deep}\nwest {wide}"),
            "a space that stands by itself is `detached`, and its size is typed as its sides",
        )
    })
}

/// The four sides of a rectangle of which a line says two, one after the other with their ways, and where these stand.
fn two_walls(typed: &Typed<'_>) -> Option<(String, Vec<(usize, usize)>)> {
    let mut walls = Vec::new();
    for at in 2..typed.pieces.len() {
        let ways = way_and_back(&typed.lower(at)).filter(|_| is_way(typed, at));
        if let Some((ways, measure)) = ways.zip(length_at(&typed.pieces, at + 1)) {
            walls.push((ways, measure.text, (at, measure.end)));
        }
    }
    let [((one, back), first, at), ((two, across), second, next)] = &walls[..] else {
        return None;
    };
    let sides = format!("{one} {first}\n{two} {second}\n{back} {first}\n{across} {second}");
    let turns = is_upright(one) != is_upright(two);
    (turns && at.1 <= next.0).then(|| (sides, vec![*at, *next]))
}

/// `inside, siding`, `brick, inside`: the face among words that have no place in the line.
fn face_among_words(typed: &Typed<'_>) -> Option<Answer> {
    if !is_space(typed) || !is_text(typed.piece(1)) {
        return None;
    }
    let faces: [(&str, &[&str]); 3] = [
        ("inside", &["inside", "interior", "inner", "indoors", "drywall"]),
        ("outside", &["outside", "exterior", "outer"]),
        ("frame", &["frame", "studs", "framing"]),
    ];
    let face_at =
        |at: usize| faces.iter().find(|(_, words)| typed.says(at, words)).map(|(face, _)| *face);
    let first = (2..typed.pieces.len()).find(|&at| face_at(at).is_some())?;
    // `inside the walk` is where the space lies.
    let of_what = first + 1 + usize::from(typed.says(first + 1, &["the"]));
    if typed.says(first, &["inside"])
        && typed.says(of_what, &["walk", "house", "outline", "footprint"])
    {
        return None;
    }
    let mut said: Vec<&str> = (2..typed.pieces.len()).filter_map(face_at).collect();
    said.dedup();
    if typed.says(first - 1, &["not", "no"]) && typed.find(first, &KEYWORDS).is_none() {
        return Some(Answer::say(
            "the line says which face was not measured, and not which one was",
            "write `measured to` and the face after the name: `inside`, `outside` or `frame`",
        ));
    }
    let around = |at: usize| {
        typed.pieces[at].sort == Sort::Text
            || typed.says(at, &["of"]) && face_at(at - 1).is_some()
            || typed.says(
                at,
                &["within", "house", "home", "not", "no", "corner", "from", "under", "stairs"],
            )
    };
    let is_other = (2..typed.pieces.len()).any(around)
        || lengths(&typed.pieces, 2).iter().any(|(_, measure)| measure.has_unit)
        || area_from(&typed.pieces, 2).is_some()
        || (2..typed.pieces.len())
            .any(|at| typed.says(at, &KEYWORDS) && !typed.says(at, &["measured"]));
    if is_other {
        return None;
    }
    let is_said = |at: usize| {
        face_at(at).is_some()
            || typed.says(
                at,
                &[
                    "measured", "to", "all", "taped", "walls", "wall", "face", "faces", "the",
                    "at", "is", "was", "only",
                ],
            )
    };
    // The words beside the face belong to it; the others are a remark.
    let (mut begin, mut end) = (first, first + 1);
    while begin > 2 && is_said(begin - 1) {
        begin -= 1;
    }
    while end < typed.pieces.len() && is_said(end) {
        end += 1;
    }
    let clean =
        |text: &str| plainly(text).trim_matches(|c: char| " ,;:.-–=()/".contains(c)).to_owned();
    let parts = [clean(typed.text(2, begin)), clean(typed.rest(end))];
    let comment = parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ");
    let comment = if comment.is_empty() { comment } else { format!("  # {comment}") };
    // What has siding has no brick or stone before its frame.
    let sided = ["siding", "vinyl", "clapboard", "clapboards", "hardie", "lap"];
    let has_veneer = typed.find(2, &["brick", "stone", "veneer"]).is_some();
    let veneer = |face: &str| {
        let says = face == "inside" && !has_veneer && typed.find(2, &sided).is_some();
        if says { " veneer none" } else { "" }
    };
    let mut lines: Vec<String> = said
        .iter()
        .map(|face| format!("{} measured to {face}{}{comment}", typed.text(0, 2), veneer(face)))
        .collect();
    // `garage "Garage" inside` may say where it stands.
    let is_bare = typed.says(first, &["inside"]) && (begin, end) == (first, first + 1);
    if let Some(house) = typed.attempt.house.as_ref().filter(|_| is_bare && said.len() == 1)
        && !typed.says(0, &["living", "open", "low"])
        && !has_veneer
    {
        lines.push(format!("{} within {}{comment}", typed.text(0, 2), quoted(house)));
    }
    Some(Answer::Lines(
        lines,
        "the face that was measured is `measured to`, right after the name; anything else goes into a comment".to_owned(),
    ))
}
