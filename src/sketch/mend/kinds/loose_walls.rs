//! Walls among other words, and walls that do not say which way they run.

use super::super::compass::way_and_back;
use super::super::lengths as numbers;
use super::measure::{Measure, area_from, date_from, length_at, lengths, money_from};
use super::shapes::{self, whole_way};
use super::{
    Answer, Rule, Typed, digits, faces, first_of, is_text, kind_word, straight, whereabouts,
};
use crate::geometry::compass::Axis;
use crate::units::length::Length;

/// Recognizes a wall before a rule takes a part of it for a name or a note; `None` if it is none.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        faces::along_a_side,
        digit_in_a_word,
        inch_mark_twice,
        shapes::bay_without_way,
        shapes::rises_outward,
        walls_without_marks,
        yards_and_feet,
        shapes::two_legs,
        shapes::along_the_slant,
        shapes::across,
        shapes::across_somewhere,
        whole_extent,
        from_the_street,
    ];
    first_of(rules, typed)
}

/// Recognizes a wall in a line that nothing else could read; `None` if it is none.
pub(super) fn left_over(typed: &Typed<'_>) -> Option<Answer> {
    wall(typed).or_else(|| wall_without_way(typed))
}

/// The whole word of a way along which a wall runs.
fn compass(typed: &Typed<'_>, at: usize) -> Option<&'static str> {
    Some(match typed.lower(at).as_str() {
        "north" | "northward" | "northerly" => "north",
        "south" | "southward" | "southerly" => "south",
        "east" | "eastward" | "easterly" => "east",
        "west" | "westward" | "westerly" => "west",
        "n" if typed.piece(at)?.text == "N" => "north",
        "s" if typed.piece(at)?.text == "S" => "south",
        "e" if typed.piece(at)?.text == "E" => "east",
        "w" if typed.piece(at)?.text == "W" => "west",
        _ => return None,
    })
}

/// Words of other lines: what has one of them is not a wall with words around it.
const NO_WALL: &[&str] = &[
    "tie",
    "corner",
    "record",
    "recorded",
    "county",
    "diagonal",
    "bearing",
    "arc",
    "bay",
    "rise",
    "closing",
    "degrees",
    "deg",
    "degree",
    "area",
    "lot",
    "level",
    "start",
    "from",
    "not",
    "no",
    "tolerance",
    "veneer",
    "interior",
    "listing",
    "plan",
    "value",
    "measured",
    "slant",
    "slanted",
    "angle",
    "angled",
    "curve",
    "curved",
    "x",
    "by",
    "photo",
    "same",
    "minus",
    "plus",
    "less",
    "true",
    "faces",
    "facing",
    "street",
    "front",
    "ceiling",
    "deep",
    "detached",
    "within",
    "or",
    "of",
    "off",
    "sq",
    "card",
    "sides",
    "ne",
    "nw",
    "se",
    "sw",
    "miles",
    "turn",
    "overhang",
    "overhangs",
    "eave",
    "eaves",
];

/// `next wall east 12'`, `go east 12 feet, then south`, `total 40' east`: a wall, or a whole extent, among other words.
fn wall(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    let is_other = typed.pieces.iter().any(|piece| {
        is_text(Some(piece))
            || piece.is_word(NO_WALL)
            || kind_word(&piece.text.to_lowercase()).is_some()
    });
    let found = lengths(&typed.pieces, 0);
    let ways: Vec<usize> =
        (0..typed.pieces.len()).filter(|&at| compass(typed, at).is_some()).collect();
    if is_other
        || area_from(&typed.pieces, 0).is_some()
        || money_from(&typed.pieces, 0).is_some()
        || date_from(&typed.pieces, 0).is_some()
    {
        return None;
    }
    let [(first, measure)] = &found[..] else { return None };
    let fills = |from: usize, end: usize| {
        (from..end).all(|at| {
            typed.pieces[at].sort == super::super::pieces::Sort::Word
                || typed.pieces[at].is_mark(":=-–,(>→.~≈")
        })
    };
    let way = ways.iter().copied().find(|&way| {
        way < *first && fills(way + 1, *first) || way >= measure.end && fills(measure.end, way)
    })?;
    // `then south`: the next wall, which has a line of its own.
    let others = ways
        .iter()
        .filter(|&&other| other != way && !typed.says(other.wrapping_sub(1), &["then"]))
        .count();
    if others > 0 || !measure.has_unit && first.abs_diff(way) > 1 {
        return None;
    }
    let word = compass(typed, way)?;
    let (begin, end) = (way.min(*first), measure.end.max(way + 1));
    let says = |words: &[&str]| typed.find(0, words).is_some();
    let roughly = typed.line.contains(['~', '≈'])
        || says(&["paced", "est", "estimate", "guess", "maybe", "eyeballed"])
        || says(&["about", "approx", "approximately", "around", "roughly"]);
    let whole = says(&["total", "overall", "whole", "entire", "full", "width", "altogether"]);
    let between = if way < *first { (way + 1, *first) } else { (measure.end, way) };
    let filler = [
        "wall",
        "side",
        "for",
        "is",
        "runs",
        "due",
        "to",
        "the",
        "going",
        "running",
        "another",
        "about",
        "approx",
        "approximately",
        "measures",
        "of",
    ];
    let says_between = (between.0..between.1).any(|at| {
        typed.pieces[at].sort == super::super::pieces::Sort::Word && !typed.says(at, &filler)
    });
    let middle = if says_between { typed.text(between.0, between.1) } else { "" };
    let said: Vec<String> = [typed.text(0, begin), middle, typed.rest(end)]
        .iter()
        .map(|part| {
            super::plainly(part).trim_matches(|c: char| " ,;:.-–()#".contains(c)).to_owned()
        })
        .filter(|part| {
            !part.is_empty()
                && !["go", "then", "total", "overall", "next wall", "next"]
                    .contains(&part.to_lowercase().as_str())
        })
        .collect();
    // The whole north side runs east and west.
    let along = match typed.says(way + 1, &["side", "wall", "elevation"]) {
        true if matches!(word, "north" | "south") => "east",
        true => "north",
        false => word,
    };
    let mut line = if whole {
        format!("overall {along} {}", measure.text)
    } else {
        format!("{word} {}", measure.text)
    };
    if roughly && !whole {
        line.push_str(" estimated");
    }
    if !said.is_empty() {
        line.push_str("  # ");
        line.push_str(&said.join(", "));
    }
    let cause = if whole {
        "a whole extent is `overall`, its way and its length"
    } else {
        "a wall has its direction, then its length; anything else goes into a comment at the end of the line"
    };
    Some(Answer::line(line, cause))
}

/// The two compass words of a slanted wall, `south` and `west` for `SW`, `south-west` or `southwest`, and the piece after
/// them.
fn quadrant(typed: &Typed<'_>, at: usize) -> Option<(&'static str, &'static str, usize)> {
    let whole = match typed.lower(at).as_str() {
        "ne" | "northeast" => Some(("north", "east")),
        "se" | "southeast" => Some(("south", "east")),
        "sw" | "southwest" => Some(("south", "west")),
        "nw" | "northwest" => Some(("north", "west")),
        _ => None,
    };
    if let Some((up, across)) = whole {
        return Some((up, across, at + 1));
    }
    let joined = typed.lower(at);
    let (first, second, end) = match joined.split_once('-') {
        Some((first, second)) => (first.to_owned(), second.to_owned(), at + 1),
        None => {
            let next =
                at + 1 + usize::from(typed.piece(at + 1).is_some_and(|dash| dash.is_mark("-–")));
            (joined.clone(), typed.lower(next), next + 1)
        }
    };
    let up = way_and_back(&first)?.0;
    let across = way_and_back(&second)?.0;
    (["north", "south"].contains(&up) && ["east", "west"].contains(&across))
        .then_some((up, across, end))
}

/// `south-west, out 2' 3" over 2' 1/2"`: how far a slanted wall runs out of the wall before it, and how far along it.
pub(super) fn slanted_out_and_over(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    let (up, across, mut at) = quadrant(typed, 0)?;
    let told = ["diagonal", "diag", "angle", "angled", "slant", "slanted", "wall", "corner", "bay"];
    while typed.says(at, &told) || typed.piece(at).is_some_and(|mark| mark.is_mark(",:;-–")) {
        at += 1;
    }
    let first_word = typed.says(at, &["out", "in", "back"]);
    let first =
        length_at(&typed.pieces, at + usize::from(first_word)).filter(|one| one.has_unit)?;
    let after_word = typed.says(first.end, &["out", "in", "back"]) && !first_word;
    let mut at = first.end + usize::from(after_word);
    while typed.says(at, &["and"]) || typed.piece(at).is_some_and(|mark| mark.is_mark(",&")) {
        at += 1;
    }
    let over_words = ["over", "along", "across", "sideways"];
    let over_first = typed.says(at, &over_words);
    let second =
        length_at(&typed.pieces, at + usize::from(over_first)).filter(|one| one.has_unit)?;
    let over_after = typed.says(second.end, &over_words);
    let end = second.end + usize::from(over_after);
    if !(first_word || after_word) || !(over_first || over_after) || end != typed.pieces.len() {
        return None;
    }
    let beside = &typed.attempt.beside;
    let way_of = |line: &str| {
        let way = way_and_back(line.split_whitespace().next()?)?.0;
        ["north", "south", "east", "west"].contains(&way).then_some(way)
    };
    let along = beside.last_walk.iter().rev().find_map(|line| way_of(line));
    let along = along.or_else(|| beside.following.iter().find_map(|line| way_of(line)));
    let line = |out_is_up: bool| {
        let (one, other) = if out_is_up { (&first, &second) } else { (&second, &first) };
        format!("diagonal {up} {} {across} {}", one.text, other.text)
    };
    let lines = match along {
        Some("east" | "west") => vec![line(true)],
        Some(_) => vec![line(false)],
        None => vec![line(true), line(false)],
    };
    Some(Answer::Lines(
        lines,
        "a slanted wall is `diagonal`, with how far it runs each of its two ways".to_owned(),
    ))
}

/// `rear wall 42' 7"`, `clip corner 3' x 3'`: a wall that does not say which way it runs.
fn wall_without_way(typed: &Typed<'_>) -> Option<Answer> {
    // `NW diagonal 2ft 3in back`: the word after the length is none of its unit.
    let ends = (1..typed.pieces.len()).find(|&at| {
        typed.says(at, &["back"]) && typed.says(at - 1, &["in"]) && typed.pieces[at - 1].touches
    });
    let found = lengths(&typed.pieces[..ends.unwrap_or(typed.pieces.len())], 0);
    let (first, measure) = found.iter().find(|(_, measure)| measure.has_unit)?;
    let is_slanted = typed
        .find(
            0,
            &["clip", "clipped", "angle", "angled", "diagonal", "slant", "45", "cut", "chamfer"],
        )
        .is_some();
    let has_kind = typed.pieces.iter().any(|piece| kind_word(&piece.text.to_lowercase()).is_some());
    if typed.attempt.knows_first
        || has_kind
        || typed.attempt.space.is_none()
        || area_from(&typed.pieces, 0).is_some()
    {
        return None;
    }
    if (0..typed.pieces.len()).any(|at| compass(typed, at).is_some()) && !is_slanted {
        return None;
    }
    let two = found.iter().filter(|(_, measure)| measure.has_unit).count() == 2;
    if is_slanted {
        let other = found.last().map_or(measure, |(_, other)| other);
        let said = (0..typed.pieces.len()).find_map(|at| quadrant(typed, at));
        if let Some((up, across, _)) = said {
            let [n, e] = [up, across].map(|way| way[..1].to_uppercase());
            let help = if two {
                format!(
                    "write `diagonal {up} {} {across} {}`, or the two lengths the other way round, each after the way that it runs",
                    measure.text, other.text
                )
            } else {
                format!(
                    "write `bearing {n} 45° {e} {}`; or, if `{}` is how far it runs each way, `diagonal {up} {} {across} {}`",
                    measure.text, measure.text, measure.text, measure.text
                )
            };
            return Some(Answer::say(
                "a slanted wall has its bearing, or how far it runs each way",
                help,
            ));
        }
        let help = if two {
            format!(
                "write `diagonal`, then each of the two ways that it runs before its length, as `diagonal north {} east {}`",
                measure.text, other.text
            )
        } else {
            format!(
                "write `bearing N 45° E {}` with N or S and E or W as it runs; or, if `{}` is how far it runs each way, `diagonal north {} east {}`",
                measure.text, measure.text, measure.text, measure.text
            )
        };
        return Some(Answer::say("a slanted wall says which way it runs", help));
    }
    let sides = ["wall", "side", "rear", "back", "front", "left", "right", "along"];
    let begins = (0..*first).any(|at| typed.says(at, &sides));
    (begins && found.len() == 1).then(|| {
        let label = super::remark(typed.text(0, *first));
        Answer::say(
            "this wall does not say which way it runs",
            format!(
                "write `north`, `east`, `south` or `west`, as you walk along it, before its length, and the rest after a `#`: `east {}  # {}` if it runs east",
                measure.text,
                super::plainly(&label)
            ),
        )
    })
}

/// `E 12.5, S 4, E 2`: several walls whose numbers have no marks.
fn walls_without_marks(typed: &Typed<'_>) -> Option<Answer> {
    let mut lines = Vec::new();
    let mut at = 0;
    while at < typed.pieces.len() {
        let way = typed.piece(at).filter(|_| super::walls::is_way(typed, at))?;
        let number = typed.piece(at + 1).filter(|number| number.is_number())?;
        // `N45E 120` is a bearing.
        if way.touches {
            return None;
        }
        lines.push(format!("{} {}", way.text, number.text));
        at += 2;
        while typed.piece(at).is_some_and(|mark| mark.is_mark(",;/→>-–"))
            || typed.says(at, &["then", "and"])
        {
            at += 1;
        }
    }
    // `N 45 E 4.243`: one slanted wall just as well.
    let is_quadrant = typed.says(0, &["n", "s", "north", "south"])
        && typed.says(2, &["e", "w", "east", "west"])
        && typed.pieces.len() == 4;
    let degrees = typed.piece(1).and_then(|piece| piece.text.parse::<u32>().ok());
    if let Some(degrees) = degrees.filter(|degrees| is_quadrant && (1..90).contains(degrees)) {
        let letter = |at: usize| typed.lower(at).get(..1).unwrap_or_default().to_uppercase();
        let bearing =
            format!("bearing {} {degrees}° {} {}", letter(0), letter(2), typed.text(3, 4));
        return Some(Answer::Lines(
            vec![lines.join("\n"), bearing],
            "each side goes on its own line; one slanted wall has its bearing, with its mark"
                .to_owned(),
        ));
    }
    (lines.len() >= 2).then(|| Answer::line(lines.join("\n"), "each side goes on its own line"))
}

/// `4 yds 2 ft`: yards and feet.
fn yards_and_feet(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(1, &["yd", "yds", "yard", "yards"])?;
    let number = typed.piece(at - 1)?;
    let spoken = numbers::spoken(&number.text.to_lowercase());
    let yards = spoken.or_else(|| number.text.parse::<i64>().ok())?;
    let next = at
        + 1
        + usize::from(
            typed.says(at + 1, &["and"])
                || typed.piece(at + 1).is_some_and(|mark| mark.is_mark(",.")),
        );
    let feet =
        typed.piece(next).filter(|piece| digits::is_small(piece))?.text.parse::<i64>().ok()?;
    let unit = typed.says(next + 1, &["ft", "feet", "foot"])
        || typed.piece(next + 1).is_some_and(|mark| mark.is_mark("'’′"));
    let whole = yards.checked_mul(3)?;
    let in_inches = typed.says(next + 1, &["in", "inch", "inches", "ins"])
        || typed.piece(next + 1).is_some_and(|mark| mark.is_mark("\""));
    if spoken.is_some() && in_inches && next + 2 == typed.pieces.len() {
        return Some(Answer::line(
            format!("{} {whole}' {feet}\"", typed.text(0, at - 1)),
            "numbers are written in digits, and a yard is 3 feet",
        ));
    }
    let all = whole.checked_add(feet)?;
    (unit && feet < 3).then(|| {
        Answer::line(
            format!("{} {all}' {}", typed.text(0, at - 1), typed.rest(next + 2)).trim_end(),
            "a yard is 3 feet",
        )
    })
}

/// `overall 40' E-W`: the way of a whole extent.
fn whole_extent(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["overall", "total", "whole"]) {
        return None;
    }
    let (first, measure) = lengths(&typed.pieces, 1).into_iter().next()?;
    let line = typed.line.to_lowercase();
    let has = |words: &[&str]| words.iter().any(|word| line.contains(word));
    let way = match (
        has(&["e-w", "e/w", "east-west", "east to west"]),
        has(&["n-s", "n/s", "north-south", "north to south"]),
    ) {
        (true, false) => "east",
        (false, true) => "north",
        _ => return None,
    };
    let plain = (1..typed.pieces.len()).all(|at| {
        (first..measure.end).contains(&at)
            || typed.pieces[at].is_mark("-/,:=")
            || whole_way(typed, at).is_some()
            || typed.says(
                at,
                &["e-w", "n-s", "east-west", "north-south", "to", "overall", "length", "width"],
            )
    });
    plain.then(|| {
        Answer::line(
            format!("overall {way} {}", measure.text),
            "an overall length says which way it was taped",
        )
    })
}

/// `R 12'`, `to the left 12'`, `toward back yard 12'`: a way as seen from the street.
fn from_the_street(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.beside.front?;
    let filler = [
        "to", "toward", "towards", "the", "go", "going", "then", "yard", "side", "of", "house",
        "end",
    ];
    let (first, measure) = lengths(&typed.pieces, 1).into_iter().next()?;
    let mut ways = (0..first).filter_map(|at| match typed.lower(at).as_str() {
        "left" | "lt" => Some("left"),
        "right" | "rt" => Some("right"),
        "l" if at == 0 => Some("left"),
        "r" if at == 0 => Some("right"),
        "bk" if at == 0 => Some("back"),
        "back" | "rear" => Some("back"),
        "front" => Some("front"),
        _ => None,
    });
    let way = ways.next().filter(|_| ways.next().is_none())?;
    let only = (0..first)
        .filter(|&at| !typed.says(at, &filler) && !typed.pieces[at].is_mark(".,:"))
        .count()
        == 1;
    let begins = typed
        .says(0, &["l", "r", "lt", "rt", "bk", "to", "toward", "towards", "go", "going", "then"]);
    (only && begins && measure.end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("{way} {}", measure.text),
            "a side begins with the way that it runs: `back`, `right`, `front` or `left`, as seen from the street",
        )
    })
}

/// `40' 6" 1/4"`: the fraction of the inches with a mark of its own.
fn inch_mark_twice(typed: &Typed<'_>) -> Option<Answer> {
    let mark = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark("\"”″"));
    let number = |at: usize| typed.piece(at).is_some_and(|number| number.is_number());
    let first = (3..typed.pieces.len()).find(|&at| {
        mark(at)
            && number(at - 1)
            && typed.pieces[at - 2].is_mark("'’′")
            && number(at + 1)
            && typed.piece(at + 2).is_some_and(|slash| slash.is_mark("/"))
            && number(at + 3)
            && mark(at + 4)
    })?;
    Some(Answer::line(
        format!("{} {}", typed.text(0, first), typed.rest(first + 1)),
        "the inch mark goes after the fraction",
    ))
}

/// `then 10' n, 5' e`: several walls, each length before its way.
pub(super) fn lengths_before_ways(typed: &Typed<'_>) -> Option<Answer> {
    if typed.is_in_lot() {
        return None;
    }
    let joint = |at: usize| {
        typed.piece(at).is_some_and(|mark| mark.is_mark(",;/→>"))
            || typed.says(at, &["then", "and", "go", "to", "the"])
    };
    let mut lines = Vec::new();
    let mut at = 0;
    while at < typed.pieces.len() {
        if joint(at) {
            at += 1;
            continue;
        }
        let measure = length_at(&typed.pieces, at)?;
        let way = measure.end + usize::from(typed.says(measure.end, &["to", "due"]));
        lines.push(format!("{} {}", whole_way(typed, way)?, measure.text));
        at = way + 1;
    }
    (lines.len() >= 2).then(|| {
        Answer::line(lines.join("\n"), "each side goes on its own line, its way before its length")
    })
}

/// The wall of this length that leads back to where the walk began, if that is what is left of it.
pub(super) fn leads_back(typed: &Typed<'_>, measure: &Measure) -> Option<String> {
    const NEAR: i64 = 6 * Length::INCH.nm();
    let progress = straight::progress(typed, &typed.attempt.beside.last_walk);
    let way = progress.way_back().filter(|_| !progress.has_closing)?;
    let (east, north) = progress.back?;
    let left = if way.axis() == Axis::East { east } else { north };
    ((left.abs() - measure.length.nm()).abs() <= NEAR)
        .then(|| format!("{} {}", way.word(), measure.text))
}

/// `north 36' 7" overall`, `north overall 62' 4"`, `west 42' 2" total`, `front total 42' 2"`: a whole extent.
pub(super) fn overall_after(typed: &Typed<'_>) -> Option<Answer> {
    let is_named = whole_way(typed, 0).is_none();
    let ways = match whole_way(typed, 0) {
        Some(way) => vec![way],
        None => {
            let side = whereabouts::direction(typed, 0)??;
            vec![if side.axis() == Axis::East { "north" } else { "east" }]
        }
    };
    let (first, measure) = lengths(&typed.pieces, 1).into_iter().next()?;
    let word = typed.find(1, &["overall", "altogether", "total"]).or_else(|| {
        typed.find(1, &["all"]).filter(|&all| typed.says(all + 1, &["together", "told", "in"]))
    })?;
    let only = (1..typed.pieces.len()).all(|at| {
        at == word
            || (first..measure.end).contains(&at)
            || typed.pieces[at].is_mark(",:=()-–")
            || typed.says(at, &["length", "total", "together", "told", "is", "in", "all"])
            || is_named && typed.says(at, &["side", "wall", "width", "elevation"])
    });
    // `west 40' total` as the last wall: its whole length, and no check.
    let is_sum = typed.says(word, &["total"]);
    if let Some(line) = leads_back(typed, &measure).filter(|_| only && is_sum && measure.has_unit)
        && ways.iter().any(|way| line.starts_with(way))
    {
        return Some(Answer::line(line, "a wall is its direction and its whole length"));
    }
    (only && measure.has_unit).then(|| {
        Answer::Lines(
            ways.iter().map(|way| format!("overall {way} {}", measure.text)).collect(),
            "a whole extent is `overall`, its way and its length; it is a check and no wall"
                .to_owned(),
        )
    })
}

/// `n0rth 36' 7"`, `e4st 12'`: a digit in the word of a way.
fn digit_in_a_word(typed: &Typed<'_>) -> Option<Answer> {
    let word: String = typed.line.split([' ', ':']).next()?.to_lowercase();
    let meant: String = word
        .chars()
        .map(|c| match c {
            '0' => 'o',
            '3' => 'e',
            '4' => 'a',
            '5' => 's',
            '7' => 't',
            c => c,
        })
        .collect();
    let is_way = ["north", "south", "east", "west"].contains(&meant.as_str()) && meant != word;
    is_way.then(|| {
        Answer::line(
            format!("{meant}{}", typed.line.get(word.len()..).unwrap_or_default()),
            "a digit is typed in a word",
        )
    })
}
