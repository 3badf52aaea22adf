//! Slanted and curved walls, bays and lengths taped across, in other words than those of the format.

use super::super::compass::slant;
use super::measure::{Measure, length_at, lengths};
use super::{Answer, Typed, digits};

/// `diagonal 4' north, 4' east`, `slope north 4' east 4'`: how far a slanted wall runs each way.
pub(super) fn two_legs(typed: &Typed<'_>) -> Option<Answer> {
    let begins = ["diagonal", "diag", "slope", "sloped", "slant", "slanted", "angle", "angled"];
    if !typed.says(0, &begins) {
        return None;
    }
    let found = lengths(&typed.pieces, 1);
    let [(one, first), (two, second)] = &found[..] else { return None };
    let ways: Vec<usize> =
        (1..typed.pieces.len()).filter(|&at| whole_way(typed, at).is_some()).collect();
    let [way, other] = ways[..] else { return None };
    let before = way + 1 == *one && other + 1 == *two;
    let after = first.end == way && second.end == other;
    let only = typed.pieces.len() == first.end - one + second.end - two + 3
        || typed.pieces.iter().skip(1).enumerate().all(|(i, piece)| {
            let at = i + 1;
            at == way
                || at == other
                || (*one..first.end).contains(&at)
                || (*two..second.end).contains(&at)
                || piece.is_mark(",;&+")
                || piece.is_word(&["and", "x", "by", "to", "the"])
        });
    let line = format!(
        "diagonal {} {} {} {}",
        whole_way(typed, way)?,
        first.text,
        whole_way(typed, other)?,
        second.text
    );
    ((before || after) && only && line != typed.line)
        .then(|| Answer::line(line, "a slanted wall is `diagonal`, and how far it runs each way"))
}

/// The whole word of a way, written in full or with its letter in either case.
pub(super) fn whole_way(typed: &Typed<'_>, at: usize) -> Option<&'static str> {
    Some(match typed.lower(at).as_str() {
        "north" | "n" => "north",
        "south" | "s" => "south",
        "east" | "e" => "east",
        "west" | "w" => "west",
        _ => return None,
    })
}

/// `diagonal NE 5' 8" at 45`, `45 degree wall NE 5' 8"`: the length along a slanted wall.
pub(super) fn along_the_slant(typed: &Typed<'_>) -> Option<Answer> {
    let at = (0..typed.pieces.len()).find(|&at| slant(&typed.lower(at)).is_some())?;
    let (north, east) = slant(&typed.lower(at))?;
    let measure = length_at(&typed.pieces, at + 1).filter(|measure| measure.has_unit)?;
    let angle = (0..typed.pieces.len()).find(|&at| typed.pieces[at].text == "45")?;
    let words = [
        "diagonal", "diag", "slant", "slanted", "angle", "angled", "at", "degree", "degrees",
        "deg", "wall", "corner", "side",
    ];
    let only = (0..typed.pieces.len()).all(|i| {
        i == at
            || i == angle
            || (at + 1..measure.end).contains(&i)
            || typed.says(i, &words)
            || typed.pieces[i].is_mark("°º,.-@")
    });
    (only && !(at + 1..measure.end).contains(&angle)).then(|| {
        let letter = |way: &str| way[..1].to_uppercase();
        Answer::line(
            format!("bearing {} 45° {} {}", letter(north), letter(east), measure.text),
            "a slanted wall taped along itself has a bearing",
        )
    })
}

/// `diagonal check 50'`, `corner to corner 50'` after the walls: which corners is missing.
pub(super) fn across_somewhere(typed: &Typed<'_>) -> Option<Answer> {
    let is_check = typed.says(0, &["diagonal", "diag", "cross", "tie", "cross-check"])
        || typed.says(0, &["corner"]) && typed.says(1, &["to"]) && typed.says(2, &["corner"]);
    let words = [
        "diagonal",
        "diag",
        "cross",
        "tie",
        "cross-check",
        "corner",
        "to",
        "check",
        "across",
        "measure",
        "measures",
        "measured",
        "is",
        "taped",
        "tape",
        "overall",
    ];
    let [(first, measure)] = &lengths(&typed.pieces, 1)[..] else { return None };
    let only = (0..typed.pieces.len()).all(|at| {
        (*first..measure.end).contains(&at)
            || typed.says(at, &words)
            || typed.pieces[at].is_mark(":=,-–")
    });
    let says_check =
        typed.find(1, &["check", "to", "across"]).is_some() || typed.says(0, &["diag"]);
    (is_check && only && says_check && measure.has_unit).then(|| {
        Answer::say(
            "a length taped across is a `tie`, which says between which corners",
            format!(
                "write `tie corner 1 to corner 3 {}` with the numbers of the two corners; corner 1 is where the walk starts, and each side ends at the next one",
                measure.text
            ),
        )
    })
}

/// `bay window 8' wide 2' deep in south wall`: on which wall it is does not say which way that is walked.
fn bay_in_a_wall(typed: &Typed<'_>, first: usize) -> Option<Answer> {
    let at = (first..typed.pieces.len())
        .find(|&at| super::walls::is_way(typed, at) && typed.says(at + 1, &super::faces::STANDS))?;
    let (way, _) = super::super::compass::way_and_back(&typed.lower(at))?;
    let way = super::super::compass::by_compass(way, typed.attempt.beside.front);
    let [one, two] = super::super::compass::along(way);
    let mut found = lengths(&typed.pieces, first + 1);
    found.retain(|(from, _)| *from < at);
    let (wide, out) = match &found[..] {
        [(_, wide), (_, out)] | [(_, wide), (_, out), _] => (&wide.text, &out.text),
        _ => return None,
    };
    Some(Answer::say(
        "a bay says which way its wall was walked, and not on which side of the house it is",
        format!(
            "write it among the walls, as `bay {one} {wide} out {out} flat` if that wall is walked {one}, or `bay {two}`, then the width of its front; or `round` instead of `flat`"
        ),
    ))
}

/// `cross-check 1 to 3 50'`, `1-3 diagonal 50'`: a length taped across, from one corner to another.
pub(super) fn across(typed: &Typed<'_>) -> Option<Answer> {
    let says = [
        "cross-check",
        "cross",
        "crosscheck",
        "across",
        "diagonal",
        "diag",
        "tie",
        "check",
        "squareness",
    ];
    let corners = (0..typed.pieces.len()).find(|&at| {
        let is_corner = |at: usize| {
            typed.piece(at).is_some_and(|piece| digits::is_small(piece) && piece.text.len() <= 2)
        };
        is_corner(at)
            && (typed.says(at + 1, &["to", "and"])
                || typed.piece(at + 1).is_some_and(|mark| mark.is_mark("-–→>")))
            && is_corner(at + 2)
    })?;
    let (first, measure) = lengths(&typed.pieces, corners + 3).into_iter().next()?;
    let word = typed.find(0, &says)?;
    let only = (0..typed.pieces.len()).all(|at| {
        at == word
            || (corners..corners + 3).contains(&at)
            || (first..measure.end).contains(&at)
            || typed.says(at, &says)
            || typed.says(at, &["from", "corner", "corners", "tape", "taped", "is", "of"])
            || typed.pieces[at].is_mark(":=,()-–")
    });
    (only && measure.has_unit && !typed.attempt.knows_first || only && typed.says(0, &["diagonal"]))
        .then(|| {
            Answer::line(
                format!(
                    "tie corner {} to corner {} {}",
                    typed.text(corners, corners + 1),
                    typed.text(corners + 2, corners + 3),
                    measure.text
                ),
                "a length taped across is a `tie`: both corners, then the length",
            )
        })
}

/// Where a bay stands in a walk.
const DIVIDED: &str = "where it stands in the middle of a wall, that wall is typed as two, one before the bay and one after it";

/// `bay: width 8', depth 2', front 4'`, `bay 8' x 2'`: a bay that does not say which way its wall runs.
pub(super) fn bay_without_way(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.find(0, &["bay"]).filter(|first| *first <= 2)?;
    let plain =
        (0..first).all(|at| typed.says(at, &["the", "angled", "round", "window", "curved"]));
    if let Some(answer) = bay_in_a_wall(typed, first).filter(|_| plain) {
        return Some(answer);
    }
    // How far it is from an end of the wall is none of its own lengths.
    let in_the_middle = |end: usize| {
        typed.says(end, &["in"])
            && typed.says(end + 1, &["the"])
            && typed.says(end + 2, &["middle", "center"])
    };
    let is_far = |end: usize| typed.says(end, &["from", "off", "in"]) && !in_the_middle(end);
    // Neither is the angle of its sides.
    let is_angle = |end: usize| {
        typed.says(end, &["degree", "degrees", "deg"])
            || typed.piece(end).is_some_and(|mark| mark.is_mark("°º˚"))
    };
    let mut found = lengths(&typed.pieces, first + 1);
    found.retain(|(_, measure)| !is_far(measure.end) && !is_angle(measure.end));
    let has_way = (0..typed.pieces.len()).any(|at| whole_way(typed, at).is_some());
    if !plain
        || has_way
        || !(2..=3).contains(&found.len())
        || typed.says(first + 1, &["door", "garage"])
    {
        return None;
    }
    let way = super::bays::way_of_its_wall(typed);
    let lacks_its_way = |[wide, out, flat]: &[&str; 3]| match &way {
        Some(way) => Answer::line(
            format!("bay {way} {wide} out {out} flat {flat}"),
            "a bay says which way its wall runs, as the walls beside it do",
        ),
        None => bay_that_lacks_its_way(&[wide, out, flat]),
    };
    if let Some(bay) = by_words_before(typed, first, &found) {
        return Some(lacks_its_way(&bay));
    }
    // `10' front, 2' deep, 4' in the middle`
    if let [(_, wide), (_, out), (_, flat)] = &found[..]
        && in_the_middle(flat.end)
        && typed.says(out.end, &["deep", "out"])
        && !typed.says(wide.end, &["deep", "out"])
    {
        return Some(lacks_its_way(&[&wide.text, &out.text, &flat.text]));
    }
    // The word right after a length says which one it is, or else the one right before it.
    let labeled = |labels: &[&str]| {
        let after = |(_, one): &&(usize, Measure)| typed.says(one.end, labels);
        // `bay front 8' out 2'`: the first word says on which side it stands.
        let before = |(first, _): &&(usize, Measure)| *first > 2 && typed.says(first - 1, labels);
        let found = found.iter().find(after).or_else(|| found.iter().find(before));
        found.map(|(first, _)| *first)
    };
    let fronts = ["front", "flat", "face", "center", "middle"];
    let is_front =
        |one: &Measure| typed.says(one.end, &["wide"]) && typed.says(one.end + 1, &fronts);
    let along = |(first, one): &&(usize, Measure)| {
        typed.says(one.end, &["along", "total", "wide", "overall"]) && !is_front(one)
            || typed.says(first - 1, &["total", "width", "overall"])
    };
    let wide = found.iter().find(along).map(|(first, _)| *first);
    // `8' out 2'`, as the format has it; `8' sticks out 18"`.
    let then_out = found.windows(2).find(|two| {
        let end = two[0].1.end;
        let verb = usize::from(
            typed.says(end, &["sticks", "projects", "juts", "stands", "comes", "bumps"]),
        );
        let out = usize::from(typed.says(end + verb, &["out"]));
        (verb > 0 || out > 0) && two[1].0 == end + verb + out && !typed.says(two[1].1.end, &fronts)
    });
    let then_out = then_out.map(|two| two[1].0);
    let out =
        then_out.or_else(|| labeled(&["out", "deep", "depth", "projection", "projects", "sticks"]));
    let flat = labeled(&["front", "flat", "face", "across", "center", "middle"])
        .or_else(|| found.iter().find(|(_, one)| is_front(one)).map(|(first, _)| *first));
    // `angle 2' out, 4' front, angle 2' back`: out and back in again, and nothing says how wide the bay is.
    let comes_back = |(first, one): &(usize, Measure)| {
        Some(*first) != out && typed.says(one.end, &["back", "in"])
    };
    let has_no_width = wide.is_none() && (found.len() == 2 || found.iter().any(comes_back));
    if let (Some(out), Some(flat), true) = (out, flat, has_no_width) {
        let text = |at: usize| {
            let one = found.iter().find(|(first, _)| *first == at);
            one.map_or("", |(_, one)| one.text.as_str())
        };
        return Some(Answer::say(
            "how wide the bay is where it leaves the wall is missing",
            format!(
                "measure it along the wall, and write `bay`, `north`, `east`, `south` or `west`, as the wall is walked, that width, then `out {} flat {}`",
                text(out),
                text(flat)
            ),
        ));
    }
    let order: Vec<usize> = {
        let named = [wide, out, flat];
        let is_free = |first: usize| !named.contains(&Some(first));
        let mut free = found.iter().map(|(first, _)| *first).filter(|first| is_free(*first));
        named.into_iter().map(|one| one.or_else(|| free.next()).unwrap_or(0)).collect()
    };
    if order.iter().take(found.len()).any(|first| *first == 0) {
        return None;
    }
    let text = |at: usize| {
        let first = order.get(at).copied().unwrap_or_default();
        found
            .iter()
            .find(|(one, _)| *one == first)
            .map(|(_, measure)| measure.text.clone())
            .unwrap_or_default()
    };
    let front = if found.len() == 3 {
        format!("flat {}", text(2))
    } else if typed.find(0, &["round", "curved", "bow"]).is_some() {
        "round".to_owned()
    } else {
        "flat` and the width of its front, or `round".to_owned()
    };
    if let Some(way) = way.filter(|_| !front.contains('`')) {
        return Some(Answer::line(
            format!("bay {way} {} out {} {front}", text(0), text(1)),
            "a bay says which way its wall runs, as the walls beside it do",
        ));
    }
    Some(Answer::say(
        "a bay says which way its wall runs",
        format!(
            "write `bay`, then `north`, `east`, `south` or `west`, as the wall with the bay is walked, then `{} out {} {front}`; {DIVIDED}",
            text(0),
            text(1)
        ),
    ))
}

/// How wide, how far out and how wide in front a bay is, if each length stands right after its word: `10' out 2' flat 4'`
/// as the format has them, `width 10' depth 2' flat 4'`.
fn by_words_before<'a>(
    typed: &Typed<'_>,
    bay: usize,
    found: &'a [(usize, Measure)],
) -> Option<[&'a str; 3]> {
    const WORDS: [&[&str]; 3] = [
        &["width", "wide", "overall", "total"],
        &["out", "depth", "deep", "projection"],
        &["flat", "front", "face", "center", "middle"],
    ];
    if found.len() != 3 {
        return None;
    }
    let mut of = [None; 3];
    for (first, measure) in found {
        let before = first.checked_sub(1)?;
        let which = match WORDS.iter().position(|words| typed.says(before, words)) {
            Some(which) => which,
            None if before == bay => 0,
            None => return None,
        };
        of[which] = Some(measure.text.as_str());
    }
    Some([of[0]?, of[1]?, of[2]?])
}

/// The answer to a bay that says all but which way its wall runs.
fn bay_that_lacks_its_way([wide, out, flat]: &[&str; 3]) -> Answer {
    Answer::say(
        "a bay says which way its wall runs",
        format!(
            "write `bay`, then `north`, `east`, `south` or `west`, as the wall with the bay is walked, then `{wide} out {out} flat {flat}`; {DIVIDED}"
        ),
    )
}

/// `arc east 10' rise 1' out`: out of the house is one of two sides.
pub(super) fn rises_outward(typed: &Typed<'_>) -> Option<Answer> {
    let last = typed.pieces.len().checked_sub(1)?;
    let out = typed.says(last, &["out", "outward", "outwards", "outside", "in", "inward"]);
    let rise = typed.find(2, &["rise"])?;
    let measure = length_at(&typed.pieces, rise + 1)?;
    let sides = match whole_way(typed, 1)? {
        "north" | "south" => ["east", "west"],
        _ => ["north", "south"],
    };
    (typed.says(0, &["arc"]) && out && measure.end == last).then(|| {
        Answer::Lines(
            sides.map(|side| format!("{} {side}", typed.text(0, last))).into(),
            "a curve rises to one of the two sides of its chord".to_owned(),
        )
    })
}
