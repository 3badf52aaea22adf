//! Rows of a list or a table: labels before a side, sums below it, sizes, and lines that belong to the line above.

use super::super::compass::{is_upright, way_and_back};
use super::super::pieces::{Piece, Sort};
use super::measure::{length_at, lengths};
use super::walls::{STREET, WAYS, is_way};
use super::{Answer, Rule, Typed, first_of};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] =
        &[label, label_alone, total, photo_alone, size_alone, slant_between, short_way];
    first_of(rules, typed)
}

/// `B3: east 44' 7"`, `wall D: west 30'`, `A-B north 12'`: a cell, a letter or a pair of corners before a side.
fn label(typed: &Typed<'_>) -> Option<Answer> {
    let way = (1..typed.pieces.len().min(6)).find(|&at| {
        (typed.says(at, &WAYS[..4])
            || typed.says(at, &WAYS[4..])
                && at + 1 < typed.pieces.len()
                && !typed.pieces[at].touches)
            && length_at(&typed.pieces, at + 1).is_some()
    })?;
    let is_label = |(at, piece): (usize, &Piece)| {
        piece.is_mark(".:)]([-–#/>→=")
            || super::digits::is_small(piece)
            || piece.is_word(&[
                "side", "wall", "leg", "row", "line", "segment", "seg", "run", "pt", "point",
                "cell", "no",
            ])
            || piece.sort == Sort::Word
                && piece.text.chars().count() <= 2
                && !(at == 0 && is_way(typed, 0))
            || piece.sort == Sort::Word
                && piece.text.contains('-')
                && piece.text.split('-').all(|part| part.chars().count() == 1)
    };
    let labels = &typed.pieces[..way];
    let has_letter = labels.iter().any(|piece| piece.sort == Sort::Word);
    let speaks = labels.iter().any(|piece| {
        piece.is_word(&["go", "to", "at", "in", "on", "of", "am", "i", "al", "el", "th", "then"])
    });
    (has_letter
        && !speaks
        && !typed.line.contains(['\t', '|', ';'])
        && labels.iter().enumerate().all(is_label))
    .then(|| {
        let label = typed.text(0, way).trim_matches(|c: char| " :.)(-–=>".contains(c));
        let plain = ["wall", "side", "leg", "run", "line"].contains(&label.to_lowercase().as_str());
        if plain {
            return Answer::line(typed.rest(way), format!("`{label}` has no meaning here"));
        }
        Answer::line(
            format!("{}  # {label}", typed.rest(way)),
            "a side begins with its direction; a label goes into a comment at the end of the line",
        )
    })
}

/// `wall D 44' 7"`, `side 4: 44' 7"`: a wall with a label and no direction.
fn label_alone(typed: &Typed<'_>) -> Option<Answer> {
    let short = |piece: &Piece| {
        piece.is_number() && piece.text.len() <= 2
            || piece.sort == Sort::Word
                && piece.text.chars().count() == 1
                && piece.text.chars().all(char::is_uppercase)
    };
    let begins = typed.says(0, &["wall", "side", "leg", "segment", "run", "line"]);
    let mut at = 2;
    typed.piece(1).filter(|label| begins && short(label) && !label.is_word(&WAYS))?;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(".:=)-–")) {
        at += 1;
    }
    let measure = length_at(&typed.pieces, at)
        .filter(|measure| measure.has_unit && measure.end == typed.pieces.len())?;
    Some(Answer::say(
        "a side begins with the way that it runs, and this line does not say it",
        format!(
            "write `north`, `east`, `south` or `west`, as you walked along it, and then `{}`",
            measure.text
        ),
    ))
}

/// `total 48.04 m`, `sum 145' 10"`, `perimeter = 146'`: the walls added up.
fn total(typed: &Typed<'_>) -> Option<Answer> {
    let says = [
        "total",
        "totals",
        "sum",
        "subtotal",
        "perimeter",
        "circumference",
        "summe",
        "suma",
        "umfang",
    ];
    let other = [
        "width", "wide", "depth", "deep", "long", "size", "area", "value", "tax", "sq", "sqft",
        "sf", "living", "heated",
    ];
    let has_money = typed.pieces.iter().any(|piece| piece.is_mark("$"));
    if !typed.says(0, &says)
        || (0..typed.pieces.len()).any(|at| typed.says(at, &other) || is_way(typed, at))
        || has_money
    {
        return None;
    }
    let [(_, _)] = &lengths(&typed.pieces, 1)[..] else { return None };
    let is_whole = typed.says(0, &["total"]).then_some("; a whole width that was taped past the jogs is `overall east` or `overall north` and its length");
    Some(Answer::line(
        format!("# {}", typed.line),
        format!("the walls are added up by the program{}", is_whole.unwrap_or_default()),
    ))
}

/// `photo "west wall" file "west.jpg"`, `photo rear wall file rear.jpg`, `photo rear.jpg` on a line of its own: it
/// belongs to the wall above.
fn photo_alone(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["photo", "pic", "picture"]) {
        return None;
    }
    let has_text = typed.pieces.iter().any(|piece| piece.sort == Sort::Text);
    let said = photo_of_a_file(typed).or_else(|| has_text.then(|| typed.rest(1).to_owned()))?;
    let above = typed.attempt.beside.before.split('#').next().unwrap_or_default().trim();
    let begins = above.split_whitespace().next().and_then(way_and_back).is_some();
    let line = format!("{above} photo {said}");
    let help = if begins && above.chars().count() < 60 {
        format!("if it shows the wall above, take this line out and write there `{line}`")
    } else {
        format!("write `photo {said}` at the end of the line of the wall that it shows")
    };
    Some(Answer::say("a photo stands on the line of its wall", help))
}

/// What follows `photo` where the line ends in the name of a picture: what it shows, and its file.
fn photo_of_a_file(typed: &Typed<'_>) -> Option<String> {
    let last = typed.line.split_whitespace().next_back()?.trim_matches(['"', '(', ')', ',']);
    let ending = last.rsplit_once('.').map(|(_, ending)| ending.to_lowercase())?;
    if !["jpg", "jpeg", "png", "gif", "webp", "heic"].contains(&ending.as_str()) {
        return None;
    }
    let before = typed.line.trim_end().trim_end_matches(['"', ')']).strip_suffix(last)?;
    let before = before.trim_end_matches([' ', '"', '(']);
    let before =
        before.strip_suffix("file").unwrap_or(before).trim_end_matches([' ', ',', ':', '-']);
    let (_, shows) = before.split_once(' ').unwrap_or((before, ""));
    let shows = super::plainly(shows);
    let shows = if shows.is_empty() { last.rsplit_once('.')?.0 } else { shows.as_str() };
    Some(format!("{} file \"{last}\"", super::quoted(shows)))
}

/// `28' 4" x 44' 7"`, `size 24' x 22'`: a size where walls are expected.
fn size_alone(typed: &Typed<'_>) -> Option<Answer> {
    let label = [
        "size",
        "dimensions",
        "dim",
        "dims",
        "measures",
        "measurement",
        "measurements",
        "outside",
        "overall",
        "footprint",
    ];
    let mut first = 0;
    while typed.says(first, &label)
        || first > 0
            && typed
                .piece(first)
                .is_some_and(|piece| piece.is_mark(":=") || piece.is_word(&["is", "about"]))
    {
        first += 1;
    }
    let one = length_at(&typed.pieces, first)?;
    let is_by = typed.says(one.end, &["x", "by"])
        || typed.piece(one.end).is_some_and(|by| by.is_mark("×*"));
    let two = length_at(&typed.pieces, one.end + 1)
        .filter(|two| is_by && two.end == typed.pieces.len())?;
    if typed.says(0, &["overall"]) {
        return None;
    }
    let bare = |length: &str, own: bool, other: bool| {
        if !own && other { format!("{length}'") } else { length.to_owned() }
    };
    let metric = one.is_metric() || two.is_metric();
    let (a, b) = if metric {
        (one.text.clone(), two.text.clone())
    } else {
        (bare(&one.text, one.has_unit, two.has_unit), bare(&two.text, two.has_unit, one.has_unit))
    };
    let above =
        typed.attempt.beside.before.split_whitespace().next().unwrap_or_default().to_lowercase();
    let line = typed.attempt.beside.before.as_ref();
    let before = Typed { line, pieces: super::cut(line), attempt: typed.attempt };
    let opens = super::spaces::kind_word(&above).is_some()
        || !before.pieces.is_empty() && super::assembled::kind(&before).is_some();
    // A part of the house that starts south of where the house does lies south of there too.
    let is_inside = ["open", "stair", "stairs", "low", "court", "foyer"].contains(&above.as_str());
    let starts = |way: &str| {
        let lower = line.to_lowercase();
        is_inside
            && lower
                .split_once(" start")
                .is_some_and(|(_, place)| place.contains(&format!(" {way} ")))
    };
    let (up, down) = if starts("south") { ("south", "north") } else { ("north", "south") };
    let (over, back) = if starts("west") { ("west", "east") } else { ("east", "west") };
    let walls = |a: &str, b: &str| format!("{up} {a}\n{over} {b}\n{down} {a}\n{back} {b}");
    Some(if opens {
        Answer::Lines(
            vec![walls(&a, &b), walls(&b, &a)],
            "a size is typed as its sides, one on each line: which of the two lengths runs north and south?".to_owned(),
        )
    } else {
        Answer::say(
            "a size is no side, and does not say to which space it belongs",
            format!(
                "write a line for the space, as `living \"House\"`, and below it its sides: `north {a}`, `east {b}`, `south {a}`, `west {b}`"
            ),
        )
    })
}

/// `diagonal 3' x 3'`: the walls before and after it say which way it goes.
fn slant_between(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["diagonal", "diag", "angle", "angled", "slant"]) {
        return None;
    }
    let found = lengths(&typed.pieces, 1);
    let [(1, one), (_, two)] = &found[..] else { return None };
    let filler = |at: usize| {
        typed.says(at, &["x", "by", "and", "then"]) || typed.pieces[at].is_mark("×*,&/")
    };
    let only = two.end == typed.pieces.len() && (one.end..found[1].0).all(filler);
    let way =
        |line: &str| line.split_whitespace().next().and_then(way_and_back).map(|(way, _)| way);
    let (before, after) = (way(&typed.attempt.beside.before)?, way(&typed.attempt.beside.after)?);
    if !only
        || is_upright(before) == is_upright(after)
        || STREET.contains(&before)
        || STREET.contains(&after)
    {
        return None;
    }
    let line = |first: &str, second: &str| format!("diagonal {before} {first} {after} {second}");
    let mut lines = vec![line(&one.text, &two.text)];
    if one.length != two.length {
        lines.push(line(&two.text, &one.text));
    }
    Some(Answer::Lines(
        lines,
        format!(
            "a slanted wall says which way it runs before each length: between a wall to the {before} and one to the {after}"
        ),
    ))
}

/// `no 28' 4"`, `wes 44'`: the beginning of a direction.
fn short_way(typed: &Typed<'_>) -> Option<Answer> {
    let word = typed.lower(0);
    let way = WAYS[..4].iter().find(|way| {
        (2..way.len()).contains(&word.len()) && way.starts_with(&word)
            || matches!((**way, word.as_str()), ("north", "nth") | ("south", "sth"))
    })?;
    let measure = length_at(&typed.pieces, 1).filter(|measure| measure.has_unit)?;
    (measure.end == typed.pieces.len()).then(|| {
        Answer::line(format!("{way} {}", measure.text), format!("is `{word}` short for `{way}`?"))
    })
}
