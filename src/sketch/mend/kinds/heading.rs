//! Lines that begin something, by what stands above and below them: the name of the property, the calls of a deed, a low
//! space, a length without its way, a stair that is not deducted, a plan with its face.

use super::super::pieces::{Piece, Sort, cut};
use super::described::face_word;
use super::levels::capitalized;
use super::measure::{area_from, length_at, lengths};
use super::{Answer, Rule, Typed, digits, first_of, kind_word, quoted, remark, sources};
use crate::sketch::{nouns, phrases};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        start_missing,
        calls_follow,
        call_with_points,
        knee_wall,
        length_alone,
        not_deducted,
        figure_with_a_face,
        property,
    ];
    first_of(rules, typed)
}

/// Whether a text begins as a call of a deed: `bearing N 45° E`, `N 2 15 E`, `thence S 87.75 E`.
pub(in crate::sketch::mend) fn begins_as_call(text: &str) -> bool {
    let pieces = cut(text);
    // `1. N 2°15' E 84.50`, `(2) N 2°15' E 84.50`, `call 3: N 2°15' E 84.50`
    let is_number = |at: usize| {
        pieces.get(at).is_some_and(|piece| digits::is_small(piece) && !piece.text.contains('.'))
    };
    let is_mark = |at: usize| pieces.get(at).is_some_and(|mark| mark.is_mark(".():-–#"));
    let is_word = |at: usize| {
        pieces.get(at).is_some_and(|word| word.is_word(&["call", "course", "leg", "line", "no"]))
    };
    let numbered = (0..pieces.len().min(5))
        .take_while(|&at| is_number(at) || is_mark(at) || is_word(at))
        .count();
    let first = if (0..numbered).any(is_number) { numbered } else { 0 };
    let first = first
        + usize::from(
            pieces.get(first).is_some_and(|word| word.is_word(&["bearing", "thence", "course"])),
        );
    let is = |at: usize, words: &[&str]| pieces.get(at).is_some_and(|piece| piece.is_word(words));
    let is_number = |at: usize| pieces.get(at).is_some_and(Piece::is_number);
    let from = is(first, &["n", "s", "north", "south"]) && is_number(first + 1);
    let toward =
        (first + 2..pieces.len().min(first + 9)).find(|&at| is(at, &["e", "w", "east", "west"]));
    let angle = |toward: usize| {
        pieces[first + 2..toward].iter().all(|piece| {
            piece.is_number()
                || piece.is_mark("°º˚'’′\"”″-")
                || piece.is_word(&["deg", "degrees", "min", "sec", "d", "m"])
        })
    };
    from && toward.is_some_and(angle)
}

/// `deed:`, `deed calls`, `legal description:` above calls: they are the walk round a lot.
fn calls_follow(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        "deed",
        "deeds",
        "legal",
        "description",
        "calls",
        "call",
        "survey",
        "plat",
        "metes",
        "bounds",
        "lot",
        "boundary",
        "property",
        "land",
        "tract",
        "parcel",
        "lines",
        "line",
        "from",
        "the",
        "of",
        "per",
        "as",
        "and",
        "surveyor",
        "surveyor's",
        "by",
        "begin",
        "beginning",
        "acreage",
        "outline",
        "says",
        "reads",
        "has",
        "gives",
        "these",
        "are",
        "in",
        "on",
        "our",
        "bearings",
        "courses",
        "distances",
    ];
    let plain = typed.pieces.iter().all(|piece| {
        piece.is_word(&words) || piece.is_mark(":.,;()&-–") || digits::is_small(piece)
    });
    let says = [
        "deed", "deeds", "legal", "calls", "metes", "survey", "plat", "boundary", "tract",
        "parcel", "land", "property", "acreage",
    ];
    let is_name = typed.says(0, &["property", "lot"]) && typed.pieces.len() < 2;
    (plain
        && typed.find(0, &says).is_some()
        && !is_name
        && begins_as_call(&typed.attempt.beside.after))
    .then(|| {
        let said = remark(typed.line.trim_end_matches([':', '.', ' ']));
        let name = if typed.says(0, &["deed", "deeds"]) { "Deed" } else { "Lot" };
        let comment =
            if said.eq_ignore_ascii_case(name) { String::new() } else { format!("  # {said}") };
        Answer::line(
            format!("lot \"{name}\"{comment}"),
            "the calls of a deed go round a lot, which begins with `lot` and its name",
        )
    })
}

/// `deck "Deck" back 30'` above its sides: where it starts, without `start`.
fn start_missing(typed: &Typed<'_>) -> Option<Answer> {
    kind_word(&typed.lower(0)).filter(|_| super::is_text(typed.piece(1)))?;
    let mut at = 2;
    while super::walls::is_way(typed, at) {
        at = length_at(&typed.pieces, at + 1).filter(|one| one.has_unit)?.end;
        at += usize::from(
            typed.says(at, &["and"]) || typed.piece(at).is_some_and(|mark| mark.is_mark(",&")),
        );
    }
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    (at > 2 && at == typed.pieces.len() && follows).then(|| {
        let place = typed.rest(2).replace([',', '&'], " ").replace(" and ", " ");
        Answer::line(
            format!(
                "{} start {}",
                typed.text(0, 2),
                place.split_whitespace().collect::<Vec<_>>().join(" ")
            ),
            "where a space starts comes after `start`; its sides follow below",
        )
    })
}

/// `N 2.15 E 48.20` among calls: a bearing with a point, and no two walls.
fn call_with_points(typed: &Typed<'_>) -> Option<Answer> {
    let angle = typed.piece(1).filter(|angle| angle.is_number())?;
    let (degrees, minutes) = angle.text.split_once('.').unwrap_or((&angle.text, ""));
    let measure = length_at(&typed.pieces, 3)?;
    let fits = typed.says(0, &["n", "s"])
        && typed.says(2, &["e", "w"])
        && degrees.parse::<u32>().is_ok_and(|degrees| degrees < 90)
        && !minutes.contains('.');
    let beside = &typed.attempt.beside;
    let in_a_lot = beside.in_lot || begins_as_call(&beside.before) || begins_as_call(&beside.after);
    if !fits || !in_a_lot {
        return None;
    }
    let letter = |at: usize| typed.lower(at).to_uppercase();
    let call = |angle: &str| {
        format!(
            "bearing {} {angle} {} {} {}",
            letter(0),
            letter(2),
            measure.text,
            typed.rest(measure.end)
        )
        .trim_end()
        .to_owned()
    };
    let mut lines = vec![call(&format!("{}°", angle.text))];
    if minutes.len() == 2 && minutes.parse::<u32>().is_ok_and(|minutes| minutes < 60) {
        let minutes = minutes.trim_start_matches('0');
        if !minutes.is_empty() {
            lines.push(call(&format!("{degrees}° {minutes}'")));
        }
    }
    Some(Answer::Lines(
        lines,
        if minutes.is_empty() {
            "a call is one `bearing`, its angle and its length".to_owned()
        } else {
            "a call is one `bearing`, its angle and its length: are the digits after the point a part of a degree, or minutes?".to_owned()
        },
    ))
}

/// `knee wall 5 ft`, `sloped ceiling, under 5'`, `eaves below 5 ft`: where the ceiling is low.
fn knee_wall(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        "knee",
        "wall",
        "walls",
        "kneewall",
        "kneewalls",
        "kneewall",
        "eaves",
        "eave",
        "sloped",
        "slope",
        "sloping",
        "slanted",
        "ceiling",
        "ceilings",
        "under",
        "below",
        "less",
        "than",
        "at",
        "is",
        "height",
        "high",
        "tall",
        "about",
        "of",
        "space",
        "low",
        "area",
        "headroom",
        "the",
        "with",
        "in",
        "attic",
        "roof",
    ];
    let [(first, measure)] = &lengths(&typed.pieces, 0)[..] else { return None };
    let knee = typed.says(0, &["knee"]) && typed.says(1, &["wall", "walls"])
        || typed.says(0, &["kneewall", "kneewalls", "knee-wall"])
        || typed.says(0, &["eaves", "sloped", "slanted", "sloping"])
            && typed
                .find(1, &["ceiling", "ceilings", "under", "below", "headroom", "less"])
                .is_some();
    let only = (0..typed.pieces.len()).all(|at| {
        (*first..measure.end).contains(&at)
            || typed.says(at, &words)
            || typed.pieces[at].is_mark(",;:()-–.<=")
            || typed.pieces[at].is_word(&["knee-wall"])
    });
    (knee && only && measure.has_unit).then(|| {
        Answer::line(
            format!("low \"Eaves\" under {}", measure.text),
            "where the ceiling is low is a space of its own: `low`, its name, and the height after `under`",
        )
    })
}

/// `12 m`, `22'4"` alone in a walk: a wall begins with its way.
fn length_alone(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 0)?;
    let before = &typed.attempt.beside.before;
    let opens =
        cut(before).first().is_some_and(|word| kind_word(&word.text.to_lowercase()).is_some());
    // `7.30 m` above it is such a wall as well.
    let is_another = typed.attempt.space.is_some()
        && length_at(&cut(before), 0).is_some_and(|one| one.end == cut(before).len());
    let in_a_walk = opens || is_another || super::super::begins_as_side(before);
    (measure.has_unit && measure.is_metric() && measure.end == typed.pieces.len() && in_a_walk).then(|| {
        let text = &measure.text;
        Answer::say(
            "a length alone says nothing: a wall begins with the way that you walked along it",
            format!("write `north {text}`, `east {text}`, `south {text}` or `west {text}`; if it was not walked along, write `by closing` instead of a length"),
        )
    })
}

/// `minus 8x10 stairwell`, `less the stairs 3' x 10'`: stairs are counted, and what is open beside them is not.
fn not_deducted(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["minus", "less", "deduct", "subtract", "excluding", "without"])
        || typed.piece(0)?.is_mark("-–");
    let at = (1..typed.pieces.len())
        .find(|&at| nouns::kinds(&typed.lower(at)).first() == Some(&"stair"))?;
    let size = super::size_in(typed.line)?;
    let name = capitalized(&typed.lower(at));
    begins.then(|| {
        Answer::line(
            format!("stair \"{name}\" {size}"),
            "stairs are not deducted: they are a `stair`; what is open to the floor below beside them is `open`",
        )
    })
}

/// `builder plan 2105 to the studs`, `plans say 2105 (framing)`, `county 1,900 measured outside`: a figure with its face.
fn figure_with_a_face(typed: &Typed<'_>) -> Option<Answer> {
    let counts = typed.find(0, &["counting", "counts", "incl", "including", "includes", "with"]);
    if typed.line.contains(['"', '$', '%']) || typed.attempt.space.is_some() || counts.is_some() {
        return None;
    }
    let faces: Vec<&str> =
        typed.pieces.iter().filter_map(|piece| face_word(&piece.text.to_lowercase())).collect();
    let face = *faces.first().filter(|first| faces.iter().all(|face| face == *first))?;
    let kind = typed.pieces.iter().find_map(sources::word)?;
    let number = |at: usize| {
        typed
            .piece(at)
            .filter(|piece| piece.is_number())
            .and_then(|piece| piece.text.replace(',', "").parse::<u32>().ok())
    };
    let mut numbers = (0..typed.pieces.len())
        .filter(|&at| number(at).is_some_and(|area| (300..30_000).contains(&area)));
    let at = numbers.next().filter(|_| numbers.next().is_none())?;
    if typed.pieces.iter().enumerate().any(|(i, piece)| piece.is_number() && i != at) {
        return None;
    }
    let area = area_from(&typed.pieces, 0)
        .map_or_else(|| format!("{} sq ft", typed.pieces[at].text), |(_, _, area)| area);
    let units = ["sq", "ft", "sf", "sqft", "feet", "square", "m", "sqm"];
    let fill = [
        "says",
        "say",
        "said",
        "is",
        "has",
        "shows",
        "show",
        "the",
        "of",
        "at",
        "as",
        "and",
        "to",
        "area",
        "living",
        "heated",
        "gla",
        "total",
        "size",
        "per",
        "measured",
        "measurements",
        "measurement",
        "from",
        "dims",
        "dimensions",
        "by",
        "wall",
        "walls",
        "face",
        "on",
        "it",
        "taped",
        "lists",
        "a",
        "in",
        "for",
    ];
    let left: Vec<String> = (0..typed.pieces.len())
        .filter(|&i| typed.pieces[i].sort == Sort::Word)
        .filter(|&i| {
            !typed.says(i, &units) && !typed.says(i, &fill) && face_word(&typed.lower(i)).is_none()
        })
        .map(|i| typed.pieces[i].text.clone())
        .collect();
    let is_source = |word: &String| sources::word(&Piece::word(word)).is_some();
    let is_title = !left.iter().all(is_source) || kind == "plan" && left.len() > 1;
    let title = if is_title { format!(" {}", quoted(&left.join(" "))) } else { String::new() };
    let line = format!("{kind} {area} measured to {face}{title}");
    (line != typed.line && typed.pieces.iter().all(|piece| piece.sort != Sort::Mark || piece.is_mark(":=,.()-–'’/;"))).then(|| {
        Answer::line(
            line,
            format!("an area begins with the word for who published it, here `{kind}`; to which face it was measured comes after it"),
        )
    })
}

/// `Windrow Farm, Juniper County` at the head of a file: what the house is called.
fn property(typed: &Typed<'_>) -> Option<Answer> {
    let small = ["of", "the", "and", "at", "on", "in", "de", "la"];
    let words: Vec<&Piece> = typed.pieces.iter().filter(|piece| piece.sort == Sort::Word).collect();
    let named =
        words.iter().all(|word| word.is_word(&small) || word.text.starts_with(char::is_uppercase));
    let plain =
        typed.pieces.iter().all(|piece| piece.sort == Sort::Word || piece.is_mark(",.'’&-"));
    let (first, second) = (typed.lower(0), typed.lower(1));
    let known = words.iter().any(|word| {
        let word = word.text.to_lowercase();
        face_word(&word).is_some()
            || nouns::is_known(&word)
                && !matches!(
                    word.as_str(),
                    "house" | "cottage" | "cabin" | "barn" | "court" | "terrace" | "hall"
                )
    });
    let is_first = first != "the" && phrases::is_first(&first);
    let opens =
        phrases::opens_space(&first, &second) || phrases::opens_level(&first, &second) || is_first;
    let is_head = typed.attempt.beside.before.is_empty() && typed.attempt.space.is_none();
    let ends_in_county = words.last().is_some_and(|word| word.is_word(&["county"]));
    let has_comma = typed.pieces.iter().any(|piece| piece.is_mark(","));
    let says =
        ["measured", "record", "listing", "siding", "brick", "level", "floor", "stucco", "texas"];
    let fits = (2..=8).contains(&words.len()) && named && plain && !known && !opens && is_head;
    (fits
        && (has_comma || !ends_in_county)
        && typed.find(0, &says).is_none()
        && !typed.attempt.knows_first
        && super::heads::state_in(typed.line).is_none()
        && words[0].text.chars().any(char::is_lowercase))
    .then(|| {
        Answer::line(
            format!("property \"{}\"", typed.line.trim()),
            "the name of the house goes after `property`, with a `\"` on each side",
        )
    })
}
