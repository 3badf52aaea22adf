//! The line of a level, or of a space, that also says what its walls are clad with.

use super::change::Attempt;
use super::pieces::cut;
use super::{Mend, faced, kinds, read_or_mended};

/// The answer to the line of a level or of a space that also says that its walls have siding: no veneer.
///
/// `second floor, measured inside, vinyl siding`, `living Bedrooms vinyl siding`.
pub(super) fn with_siding(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    const OF: [&str; 19] = [
        "vinyl",
        "wood",
        "aluminum",
        "metal",
        "steel",
        "lap",
        "fiber",
        "cement",
        "hardie",
        "cedar",
        "clapboard",
        "board",
        "all",
        "with",
        "has",
        "is",
        "horizontal",
        "frame",
        "painted",
    ];
    const BRICK: [&str; 6] = ["brick", "stone", "veneer", "masonry", "part", "partly"];
    const FACE: [&str; 6] = ["inside", "interior", "drywall", "outside", "exterior", "studs"];
    let pieces = cut(line);
    let word = |at: usize| pieces.get(at).map_or(String::new(), |piece| piece.text.to_lowercase());
    let is_level = kinds::names_a_level(line) || crate::sketch::opens_level(&word(0), &word(1));
    let is_kind = kinds::kind_word(&word(0)).is_some_and(|kind| kind == word(0));
    let is = |at: usize, words: &[&str]| pieces.get(at).is_some_and(|piece| piece.is_word(words));
    let says_face = pieces.iter().any(|piece| piece.is_word(&FACE));
    // `second floor, no brick, measured inside`
    let unbricked = (1..pieces.len())
        .find(|&at| is(at, &["no", "without"]) && is(at + 1, &BRICK[..4]))
        .filter(|_| is_level && says_face && !line.to_lowercase().contains("siding"));
    let brick = pieces.iter().filter(|piece| piece.is_word(&BRICK)).count();
    let has_brick = brick > usize::from(unbricked.is_some());
    if !is_level && !is_kind || line.contains('#') || has_brick {
        return None;
    }
    // `upstairs: frame, measured inside`: of two faces the frame is what the walls are made of.
    let ends = |at: usize| pieces.get(at).is_none_or(|mark| mark.is_mark(",;:()-–—"));
    let framed = (2..pieces.len()).find(|&at| {
        let first = at - usize::from(is(at - 1, &["wood", "timber", "all", "stick"]));
        is(at, &["frame", "framed"]) && ends(at + 1) && ends(first.saturating_sub(1))
    });
    let at = pieces.iter().position(|piece| piece.is_word(&["siding", "sided"]));
    let at = at.or(unbricked.map(|no| no + 1)).or(framed.filter(|_| is_level && says_face))?;
    let before = |before: &usize| {
        pieces[*before].is_word(&OF)
            || pieces[*before].is_word(&["timber", "stick"])
            || Some(*before) == unbricked
            || pieces[*before].is_mark("/") && is(before.saturating_sub(1), &["w"])
            || pieces[*before].is_word(&["w"]) && pieces[*before + 1].is_mark("/")
    };
    let first = (1..at).rev().take_while(before).last().unwrap_or(at);
    let first = if unbricked.is_some() { first } else { first.max(2.min(at)) };
    // On the line of a space the word alone is known to other rules, but not beside a size.
    let is_sized = kinds::size_in(line).is_some() || kinds::lengths_in(&pieces).len() > 1;
    if first == at && !is_level && !is_sized {
        return None;
    }
    // `upper floor siding, wall 5 1/2"`: what the file says once, above the first level.
    if let Some((rest, wall)) = split_off_wall(line) {
        let mut mended = with_siding(rest, attempt)?;
        let goes = format!("`{wall}` goes on a line of its own above the first level");
        match &mut mended.help {
            Some(help) => help.push_str(&format!("; {goes}")),
            None => mended.cause.push_str(&format!("; {goes}")),
        }
        return Some(mended);
    }
    let plain = without(line, pieces.get(first)?.at, pieces[at].at + pieces[at].text.len())?;
    let cause = match () {
        () if unbricked.is_some() => "walls without brick have no veneer",
        () if Some(at) == framed => "walls of frame alone have no veneer",
        () => "siding is no veneer",
    };
    let cause = cause.to_owned();
    if let Some(mended) = is_level.then(|| faced::without_veneer(&plain, attempt)).flatten() {
        return Some(Mend { cause, ..mended });
    }
    let mended = read_or_mended(&plain, attempt)?;
    if is_level {
        // The space that is offered below the level keeps its face.
        let with_a_space = |offered: &String| {
            let (level, space) = offered.split_once('\n')?;
            kinds::kind_word(space.split(' ').next().unwrap_or_default())?;
            let (space, walls) =
                space.split_once('\n').map_or((space, None), |(space, walls)| (space, Some(walls)));
            let walls = walls.map_or_else(String::new, |walls| format!("\n{walls}"));
            Some(format!("{level}\n{space} veneer none{walls}"))
        };
        let lines: Option<Vec<String>> = mended.lines.iter().map(with_a_space).collect();
        if let Some(lines) = lines.filter(|lines| !lines.is_empty() && mended.help.is_none()) {
            return Some(Mend { lines, cause, ..Mend::default() });
        }
        let help = match (&mended.help, &mended.lines[..]) {
            (Some(help), _) => format!("{help}, then `veneer none`"),
            (None, [only, ..]) => {
                let level = only.lines().next().unwrap_or_default();
                format!(
                    "write `{level}` here, and `veneer none` after the name of each of its spaces"
                )
            }
            (None, []) => return None,
        };
        return Some(Mend { help: Some(help), cause, ..Mend::default() });
    }
    let mut lines = mended.lines;
    for offered in &mut lines {
        let (line, rest) = offered
            .split_once('\n')
            .map_or((offered.as_str(), None), |(line, rest)| (line, Some(rest)));
        let (body, comment) = line
            .split_once("  #")
            .map_or((line, String::new()), |(body, comment)| (body, format!("  #{comment}")));
        let rest = rest.map_or_else(String::new, |rest| format!("\n{rest}"));
        *offered = format!("{body} veneer none{comment}{rest}");
    }
    lines.retain(|offered| attempt(offered.lines().next().unwrap_or_default()).reads.is_some());
    (!lines.is_empty()).then(|| Mend { lines, cause, ..Mend::default() })
}

/// `upper floor (frame, 2x4):`: the line of a level that says what its walls are built of. No room is 2 by 4.
pub(super) fn with_lumber(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    const BUILT: [&str; 18] = [
        "frame",
        "framed",
        "wood",
        "stick",
        "built",
        "walls",
        "wall",
        "studs",
        "stud",
        "exterior",
        "construction",
        "framing",
        "x",
        "and",
        "all",
        "is",
        "with",
        "lumber",
    ];
    const LUMBER: [&str; 4] = ["2x4", "2x6", "2x8", "2x10"];
    let pieces = cut(line);
    let word = |at: usize| pieces.get(at).map_or(String::new(), |piece| piece.text.to_lowercase());
    let is_level = kinds::names_a_level(line) || crate::sketch::opens_level(&word(0), &word(1));
    let mark = pieces.iter().position(|piece| piece.is_mark("(:,;–—-")).filter(|at| *at > 0)?;
    let is_size = |at: usize| {
        LUMBER.contains(&word(at).as_str())
            || word(at) == "2" && word(at + 1) == "x" && ["4", "6", "8"].contains(&&*word(at + 2))
    };
    let lumber = (mark..pieces.len()).find(|&at| is_size(at))?;
    let is_built = |at: usize| {
        (lumber..lumber + 3).contains(&at)
            || pieces[at].is_word(&BUILT)
            || pieces[at].is_mark("():,;.–—-")
    };
    if !is_level || !(mark..pieces.len()).all(is_built) {
        return None;
    }
    let (head, rest) = (line.get(..pieces[mark].at)?, line.get(pieces[mark].at..)?);
    let mended = read_or_mended(head.trim(), attempt)?;
    let [level] = &mended.lines[..] else { return None };
    let (level, below) =
        level.split_once('\n').map_or((level.as_str(), ""), |(one, two)| (one, two));
    let rest = rest.trim_matches(|c: char| " ,;:.()–—-".contains(c));
    let cause =
        "what the walls are built of says nothing of a level's size: it goes into a comment";
    let offered = match below {
        "" => format!("{level}  # {rest}"),
        below => format!("{level}  # {rest}\n{below}"),
    };
    Some(Mend { lines: vec![offered], cause: cause.to_owned(), ..Mend::default() })
}

/// A line without the thickness at its end, and the thickness as it is typed: `wall 5 1/2"`.
fn split_off_wall(line: &str) -> Option<(&str, String)> {
    let pieces = cut(line);
    let at = pieces.iter().rposition(|piece| piece.is_word(&["wall", "walls"]))?;
    let lengths = kinds::lengths_in(&pieces);
    let [.., (from, end, thick)] = &lengths[..] else { return None };
    let before = line.get(..pieces[at].at)?.trim_end().trim_end_matches([',', ';', ' ']);
    (at > 1 && *from == at + 1 && *end == pieces.len()).then(|| (before, format!("wall {thick}")))
}

/// A line without a part of it, and without the marks that joined it to the others.
fn without(line: &str, from: usize, to: usize) -> Option<String> {
    let before = line.get(..from)?.trim_end();
    let after = line.get(to..)?.trim();
    let before = before.trim_end_matches([',', ';', '-', '–']).trim_end();
    // `upper floor (siding, measured inside)`
    let (before, after) = match before.strip_suffix('(') {
        Some(before) => {
            let after = after.trim_start_matches([',', ';', ' ']);
            match after.strip_prefix(')') {
                Some(after) => (before.trim_end(), after.to_owned()),
                None => (before.trim_end(), format!(" ({after}")),
            }
        }
        None if after.is_empty() || after.starts_with([',', ';', ')']) => {
            (before, after.to_owned())
        }
        None => (before, format!(" {after}")),
    };
    Some(format!("{before}{after}"))
}

/// The answer to the line of a level that also says that its walls are of brick: `first floor: brick, measured outside`.
pub(super) fn with_brick(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    const BEFORE: [&str; 8] = ["all", "with", "has", "is", "red", "face", "faced", "exterior"];
    const AFTER: [&str; 10] =
        ["veneer", "all", "around", "walls", "wall", "exterior", "house", "on", "sides", "four"];
    let pieces = cut(line);
    let word = |at: usize| pieces.get(at).map_or(String::new(), |piece| piece.text.to_lowercase());
    let is_level = kinds::names_a_level(line) || crate::sketch::opens_level(&word(0), &word(1));
    // `1st floor`: the number of the floor.
    let is_first = pieces.get(1).is_some_and(|end| end.is_word(&["st", "nd", "rd", "th"]));
    let is_plain = !pieces
        .iter()
        .skip(usize::from(is_first))
        .any(|piece| piece.is_number() || piece.is_word(&["siding", "no", "not"]));
    if !is_plain || line.contains(['#', '"']) {
        return None;
    }
    // `Main (all brick)`: the level by its first word.
    const NAMES: [&str; 8] =
        ["main", "upper", "lower", "first", "second", "third", "ground", "top"];
    let is_name = pieces.first().is_some_and(|name| name.is_word(&NAMES))
        && pieces.get(1).is_some_and(|mark| mark.is_mark("(:,–—-") && !mark.is_mark("."));
    if is_name && !is_level {
        let (name, rest) = line.split_at(pieces[1].at);
        return with_brick(&format!("{} floor {rest}", name.trim_end()), attempt);
    }
    if !is_level {
        return None;
    }
    let is_brick = |at: &usize| pieces[*at].is_word(&["brick", "stone", "masonry"]);
    let brick = (1..pieces.len()).find(is_brick)?;
    let first = (2..brick)
        .rev()
        .take_while(|&before| pieces[before].is_word(&BEFORE))
        .last()
        .unwrap_or(brick);
    // `to face of brick`: to where it was measured.
    if pieces[..first].iter().any(|to| to.is_word(&["to"])) {
        return None;
    }
    let last = (brick + 1..pieces.len())
        .take_while(|&after| pieces[after].is_word(&AFTER))
        .last()
        .unwrap_or(brick);
    let plain = without(line, pieces[first].at, pieces[last].at + pieces[last].text.len())?;
    let plain = plain.trim_end_matches([':', ',', ';', '-', ' ']);
    // `first floor:, measured outside`
    let plain = plain.replacen(":,", ",", 1);
    let tried = attempt(line);
    let mended = read_or_mended(&plain, attempt)?;
    let here = match (&mended.help, &mended.lines[..]) {
        (Some(help), _) => help.clone(),
        (None, [only]) if tried.beside.has_brick => {
            return Some(Mend {
                lines: vec![only.clone()],
                cause: "the file says how thick its brick is, and a level says nothing of it"
                    .to_owned(),
                ..Mend::default()
            });
        }
        (None, [only]) => format!("write `{only}` here"),
        (None, _) => return None,
    };
    let thickness = match tried.beside.has_brick {
        true => "the file says how thick its brick is already",
        false => {
            "say once how thick the brick is, above the first level: `veneer 4 5/8\"`, or the thickness of your own"
        }
    };
    Some(Mend {
        cause: "brick is a `veneer`, of which a level says nothing".to_owned(),
        help: Some(format!("{here}; {thickness}")),
        ..Mend::default()
    })
}
