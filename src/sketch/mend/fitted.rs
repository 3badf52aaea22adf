//! Fits an answer to the lines around it: what the file has already, what follows, what it belongs to.

use super::comment_of;
use super::pieces::{self, Sort, cut};
use super::{Attempt, Beside, Mend, begins_as_side, kinds};

/// An answer in which what would be a second `record` is a `figure` with a name of its own: the title, or else the
/// words before the area.
pub(super) fn beside_the_record(line: &str, mut mend: Mend, beside: &Beside) -> Mend {
    let pieces = cut(line);
    let word = pieces.first().map_or("", |word| word.text.as_str());
    if !beside.has_record || word.eq_ignore_ascii_case("record") {
        return mend;
    }
    for offered in &mut mend.lines {
        let Some(rest) = offered.strip_prefix("record ") else { continue };
        let cut = cut(rest);
        let is_area = cut.first().is_some_and(pieces::Piece::is_number);
        let title = cut.iter().position(|piece| piece.sort == Sort::Text);
        let after_unit = title.is_none_or(|at| (2..=4).contains(&at));
        if !is_area || !after_unit {
            continue;
        }
        let named = match title {
            Some(at) => {
                let (name, mut left) = (cut[at].text.clone(), cut.clone());
                left.remove(at);
                format!("figure {name} {}", pieces::join(&left))
            }
            None => {
                // `1226 sq ft (county)`: the first word that says whose it is.
                let unit = |own: &str| {
                    matches!(
                        own,
                        "sq" | "ft" | "sf" | "sqft" | "square" | "feet" | "per" | "the" | "m"
                    )
                };
                let whose = pieces
                    .iter()
                    .find(|piece| piece.sort == Sort::Word && !unit(&piece.text.to_lowercase()));
                let whose = whose.map_or("other", |whose| whose.text.as_str());
                format!("figure \"{whose}\" {rest}")
            }
        };
        *offered = named;
        mend.cause.push_str("; the file has a `record` already, so this is another `figure`");
    }
    mend
}

/// Whether a comment is offered for a line that names a kind of space above sides, which would then join another walk.
pub(super) fn hides_a_space(line: &str, mend: &Mend, beside: &Beside) -> bool {
    let is_comment = !mend.lines.is_empty() && mend.lines.iter().all(|line| line.starts_with("# "));
    let names_kind = || {
        let pieces = cut(line);
        let is_kind = |word: &pieces::Piece| {
            let kind = kinds::kind_word(&word.text.to_lowercase());
            kind.is_some_and(|kind| !matches!(kind, "open" | "low" | "living"))
        };
        pieces.len() <= 4 && pieces.iter().take(3).any(is_kind)
    };
    let is_above = begins_as_side(&beside.after);
    is_comment && is_above && names_kind()
}

/// An answer without the sides that a size stands for, where sides follow the line: they would be there twice.
pub(super) fn without_sides_twice(line: &str, mut mend: Mend, beside: &Beside) -> Mend {
    let begins = begins_as_side;
    let is_space =
        |text: &str| cut(text).first().is_some_and(|word| kinds::kind_word(&word.text).is_some());
    let size = kinds::size_in(line);
    let is_first_wall = begins(line) && begins(&beside.after) && !begins(&beside.before);
    let size_after_way = size.filter(|_| is_first_wall);
    for offered in &mut mend.lines {
        let Some((first, rest)) = offered.split_once('\n') else { continue };
        // `north 30' x 40'` above the other walls of the walk.
        if let Some(size) = size_after_way.filter(|_| begins(first) && rest.lines().all(begins)) {
            *offered = format!("{first}  # {size}");
            "a wall has one length, and the walls below it have theirs".clone_into(&mut mend.cause);
            continue;
        }
        let repeats = begins(&beside.after) && is_space(first) && rest.lines().all(begins);
        if let Some(size) = size.filter(|_| repeats) {
            *offered = match first.contains('#') {
                true if first.contains(size) => first.to_owned(),
                true => format!("{first}, {size}"),
                false => format!("{first}  # {size}"),
            };
            "a size is typed as its sides, and they follow below: it can only be a remark"
                .clone_into(&mut mend.cause);
        }
    }
    mend.lines.dedup();
    mend
}

/// An answer whose buildings apart are drawn apart: an outbuilding without a place is `detached`.
pub(super) fn outbuildings_apart(mut mend: Mend) -> Mend {
    const PLACES: [&str; 5] = ["start", "from", "within", "detached", "corner"];
    let is_one = |offered: &String| {
        let head = comment_of(offered.lines().next().unwrap_or_default()).0;
        let pieces = cut(head);
        pieces.first().is_some_and(|kind| kind.is_word(&["outbuilding"]))
            && pieces.get(1).is_some_and(|name| name.sort == Sort::Text)
            && !pieces.iter().skip(2).any(|piece| piece.is_word(&PLACES))
            && offered.lines().count() == 5
    };
    if mend.lines.is_empty() || !mend.lines.iter().all(is_one) {
        return mend;
    }
    for offered in &mut mend.lines {
        let pieces = cut(offered);
        let Some(name) = pieces.get(1) else { continue };
        offered.insert_str(name.at + name.text.len(), " detached");
    }
    mend.cause = format!(
        "a building that stands by itself is `detached`, and if it touches the house, where it starts stands there instead; {}",
        mend.cause
    );
    mend
}

/// Asks too where a space of which a line has the size stands: another space has its level already, and without a place
/// both would begin at the same corner.
pub(super) fn asking_where_it_stands(mut mend: Mend, attempt: &Attempt) -> Mend {
    const PLACES: [&str; 9] =
        ["start", "from", "within", "detached", "next", "touching", "over", "below", "turned"];
    let Some(house) = &attempt.house else { return mend };
    let is_rectangle = |offered: &String| {
        let mut lines = offered.lines();
        let head = lines.next().unwrap_or_default();
        let pieces = cut(comment_of(head).0);
        let is_named = pieces.get(1).is_some_and(|name| name.sort == Sort::Text)
            && pieces.first().is_some_and(|kind| kinds::kind_word(&kind.text).is_some());
        let is_placed = pieces.iter().skip(2).any(|piece| piece.is_word(&PLACES));
        is_named && !is_placed && offered.lines().count() == 5 && lines.all(begins_as_side)
    };
    let heads: Vec<&str> = mend.lines.iter().filter_map(|offered| offered.lines().next()).collect();
    let is_one = heads.windows(2).all(|two| two[0] == two[1]);
    let Some(first) = mend.lines.first().filter(|_| is_one && mend.lines.iter().all(is_rectangle))
    else {
        return mend;
    };
    let (said, comment) = comment_of(heads[0]);
    let pieces = cut(said);
    let (kind, name) = (&pieces[0].text, &pieces[1].text);
    let sides: Vec<&str> =
        first.lines().skip(1).filter_map(|side| side.split_once(' ')).map(|side| side.1).collect();
    let [north, east, ..] = sides[..] else { return mend };
    let is_metric = attempt.is_metric || north.ends_with('m');
    let (near, far) = if is_metric { ("2 m", "3 m") } else { ("6'", "10'") };
    let rest = pieces::join(&pieces[2..]);
    let comment = comment.map_or_else(String::new, |comment| format!("  # {}", comment.trim()));
    let head = format!("{kind} {name} {rest}");
    let head = head.trim_end();
    let is_inside = ["open", "stair", "low", "court"].contains(&kind.as_str());
    let example = match is_inside {
        true => format!(
            "to your line how far it is from two walls that meet, as `{head} {north} x {east}, {near} from the south end, {far} from the west end{comment}`"
        ),
        false => format!(
            "to your line on which side of `{house}` and how far from which end, as `{head} {north} x {east} on the south side, {near} from the west end{comment}`{}",
            match kind.as_str() {
                // The walk of a house often goes round its garage.
                "garage" if !rest.contains("within") => format!(
                    ", or, if the walk of `{house}` goes round it too, in which corner of that, as `{head} {north} x {east} inside {house}, in the southeast corner{comment}`"
                ),
                _ => String::new(),
            }
        ),
    };
    mend.cause = format!(
        "where it stands is missing: add {example}{}; {}",
        crate::sketch::asked::THEN,
        mend.cause
    );
    mend
}

/// An answer whose figures count spaces by the names that they have in the file. What a figure counts and the file has
/// not is to be typed first.
pub(super) fn counting_what_there_is(mut mend: Mend, beside: &Beside) -> Mend {
    const COUNTING: &str = " counting \"";
    let mut lacks: Option<(String, String)> = None;
    for offered in &mut mend.lines {
        let Some((before, rest)) = offered.split_once(COUNTING) else { continue };
        let Some((name, after)) = rest.split_once('"') else { continue };
        let lower = name.to_lowercase();
        let lower = lower.strip_prefix("the ").unwrap_or(&lower).to_owned();
        let is_so_called =
            |space: &&std::rc::Rc<str>| space.to_lowercase().split(' ').any(|word| word == lower);
        let exact = beside.spaces.iter().find(|space| space.to_lowercase() == lower);
        let mut near = beside.spaces.iter().filter(is_so_called);
        let only = near.next().filter(|_| near.next().is_none());
        match exact.or(only) {
            Some(space) => *offered = format!("{before}{COUNTING}{space}\"{after}"),
            None => lacks = lacks.or(Some((name.to_owned(), offered.clone()))),
        }
    }
    match lacks {
        Some((name, offered)) if mend.lines.len() == 1 => Mend {
            lines: Vec::new(),
            cause: format!(
                "what a figure counts as well is called by its name, and no space of the file is called {name}"
            ),
            help: Some(format!(
                "type that space below with its own walls, then `{offered}` with its name; if you have not measured it, put this after a `#`"
            )),
            ..Mend::default()
        },
        _ => mend,
    }
}

/// An answer in which no sides stand straight below a level: a space comes first.
pub(super) fn with_a_space_below_a_level(mut mend: Mend, beside: &Beside) -> Mend {
    for offered in &mut mend.lines {
        *offered = kinds::with_a_space(offered, &beside.after);
    }
    mend
}

/// Asks, where a size is typed after a wall: four more sides would not belong to that walk.
pub(super) fn not_in_a_walk(line: &str, mend: Mend, beside: &Beside) -> Mend {
    let is_rectangle =
        |offered: &String| offered.lines().count() == 4 && offered.lines().all(begins_as_side);
    if kinds::size_in(line).is_none()
        || !begins_as_side(&beside.before)
        || !mend.lines.iter().any(is_rectangle)
    {
        return mend;
    }
    // `east 54' 3" x 1`: how many such walls there are.
    let pieces = cut(line);
    let once = pieces.len().checked_sub(1).filter(|last| pieces[*last].text == "1");
    let times = once.and_then(|last| last.checked_sub(1)).filter(|at| pieces[*at].is_word(&["x"]));
    if let Some(wall) = times.and_then(|at| line.get(..pieces[at].at)) {
        return Mend {
            lines: vec![wall.trim_end().to_owned()],
            cause: "a wall is typed once, and needs no number of times".to_owned(),
            ..Mend::default()
        };
    }
    Mend {
        lines: Vec::new(),
        cause: "this walk has walls already, and two lengths on a line are the size of a space".to_owned(),
        help: Some(
            "write one length for this wall; another length goes to the end of the line, after a `#`"
                .to_owned(),
        ),
        ..Mend::default()
    }
}

/// `porch 4.20 x 2.05 approx`: an answer whose walls were made from a size that was not taped exactly has them
/// `estimated`.
pub(super) fn with_estimated_sides(line: &str, mut mend: Mend) -> Mend {
    const ROUGH: [&str; 6] = ["approx", "approximately", "about", "roughly", "circa", "ca"];
    let Some(size) = super::kinds::size_in(line) else { return mend };
    let size = size.trim_end_matches([',', ' ']);
    let Some((before, after)) = line.split_once(size) else { return mend };
    let word = |text: &str| text.trim_matches([',', '.', '(', ')', ' ']).to_lowercase();
    let is_rough =
        |text: Option<&str>| text.is_some_and(|text| ROUGH.contains(&word(text).as_str()));
    let (last, next) = (before.split_whitespace().last(), after.split_whitespace().next());
    if !is_rough(last) && !is_rough(next) {
        return mend;
    }
    for offered in &mut mend.lines {
        let mut lines: Vec<String> = offered.lines().map(str::to_owned).collect();
        let walls = || lines.iter().skip(1).filter(|wall| super::begins_as_side(wall));
        if walls().count() < 4 || offered.contains(" estimated") {
            continue;
        }
        for (i, one) in lines.iter_mut().enumerate() {
            match i {
                0 => {
                    if let Some((head, said)) = one.split_once("  # ")
                        && ROUGH.contains(&word(said).as_str())
                    {
                        *one = head.to_owned();
                    }
                }
                _ if super::begins_as_side(one) => one.push_str(" estimated"),
                _ => {}
            }
        }
        *offered = lines.join("\n");
    }
    mend
}
