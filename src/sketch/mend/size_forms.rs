//! Spaces with their sizes in other words: `barn 15.24 wide x 9.75 deep`, `low ceiling under 7' 6 x 12`, `RV cover
//! 14 x 40`. With the words that name no size taken out, they are read or answered as any other.

use super::kinds;
use super::pieces::{Piece, Sort, cut};
use super::shortened::is_quoted;

/// The line in its other form, and what was wrong. `None` if it has none.
pub(super) fn plainly(line: &str) -> Option<(String, &'static str)> {
    let pieces = cut(line);
    if line.contains('#') || pieces.first()?.is_number() {
        return None;
    }
    wide_and_deep(line, &pieces)
        .or_else(|| cover(line, &pieces))
        .or_else(|| void_over_a_room(line, &pieces))
        .or_else(|| run_for_a_dog(line, &pieces))
        .or_else(|| closet_outside(line, &pieces))
        .or_else(|| up_or_down(line, &pieces))
        .or_else(|| with_after_its_size(line))
        .or_else(|| said_of_the_whole(line))
}

/// `dog run 6 x 20 concrete`: ground, and no room.
fn run_for_a_dog(line: &str, pieces: &[Piece]) -> Option<(String, &'static str)> {
    let (first, second) = (pieces.first()?, pieces.get(1)?);
    let is_run = first.is_word(&["dog"]) && second.is_word(&["run", "kennel", "pen"])
        || first.is_word(&["chicken"]) && second.is_word(&["run", "yard"]);
    let next = pieces.get(2).filter(|next| next.is_number() && is_run)?;
    let name = format!("{} {}", capital(&first.text), second.text.to_lowercase());
    let rest = line.get(next.at..)?;
    Some((
        format!("patio \"{name}\" {rest}"),
        "ground that is paved or fenced is a `patio`, which is in no area of the house",
    ))
}

/// `water heater closet outside 3 x 3`: a closet that opens to the outside, and no face of its walls.
fn closet_outside(line: &str, pieces: &[Piece]) -> Option<(String, &'static str)> {
    let at = pieces.iter().position(|piece| piece.is_word(&["closet"])).filter(|at| *at <= 3)?;
    let size = pieces.get(at + 2).filter(|next| next.is_number())?;
    let is_outside = pieces.get(at + 1)?.is_word(&["outside", "exterior", "outdoors"]);
    let words = pieces.iter().take(at).all(|piece| piece.sort == Sort::Word);
    let is_kind = kinds::kind_word(&pieces.first()?.text.to_lowercase())
        .is_some_and(|kind| kind != "storage");
    let name = line.get(..pieces[at].at + pieces[at].text.len())?.trim();
    (is_outside && words && !is_kind).then(|| {
        (
            format!(
                "storage \"{} outside\" {}",
                capital(name),
                line.get(size.at..).unwrap_or_default()
            ),
            "a closet that opens only to the outside is `storage`",
        )
    })
}

/// `up: 2 bd 1 ba 24 x 30`: the level, and what is on it.
fn up_or_down(line: &str, pieces: &[Piece]) -> Option<(String, &'static str)> {
    let level = match pieces.first()?.text.to_lowercase().as_str() {
        "up" => "upstairs",
        "dn" | "down" => "downstairs",
        _ => return None,
    };
    let begin = 1 + usize::from(pieces.get(1)?.is_mark(":-–"));
    let size = kinds::size_in(line)?;
    let at = line.find(size)?;
    let rooms = line.get(pieces.get(begin)?.at..at)?.trim().trim_matches([',', ';', ' ']);
    let is_rooms = rooms.is_empty()
        || ["bd", "br", "bed", "ba", "bath", "beds", "baths"]
            .iter()
            .any(|word| rooms.to_lowercase().split(' ').any(|one| one == *word));
    let after = line.get(at + size.len()..)?.trim();
    let said = if rooms.is_empty() { String::new() } else { format!(" ({rooms})") };
    (is_rooms && after.is_empty()).then(|| {
        (
            format!("{level} {}{said}", size.trim()),
            "a level is `level` and its name, and its space and its walls stand below it",
        )
    })
}

/// `hot tub deck 8 x 8 w/ gazebo`: with, and no width.
fn with_after_its_size(line: &str) -> Option<(String, &'static str)> {
    let at = line.find(" w/")?;
    let (before, after) = (line.get(..at)?, line.get(at + " w/".len()..)?);
    let ends = before.ends_with(|c: char| c.is_ascii_digit() || c == '\'');
    // A place after a remark is read with both.
    let is_word = after.chars().all(|c| c.is_alphabetic() || c == ' ') && !after.starts_with("o ");
    (kinds::size_in(before).is_some() && ends && is_word && !is_quoted(before))
        .then(|| (format!("{before} with {}", after.trim_start()), "the words are written out"))
}

/// `yr blt 1974 eff 1990`, `county has it 2 story, its 1 1/2`: what says nothing of the outline.
fn said_of_the_whole(line: &str) -> Option<(String, &'static str)> {
    let lower = line.trim().to_lowercase();
    let is_year = ["yr blt ", "yr built ", "yr. built ", "yr. blt ", "blt ", "yb "]
        .iter()
        .find_map(|form| lower.strip_prefix(form))
        .is_some_and(|rest| {
            rest.starts_with(|c: char| c.is_ascii_digit()) && kinds::area_in(rest).is_none()
        });
    let has_it =
        ["county has it ", "cad has it ", "record has it ", "assessor has it ", "card has it "]
            .iter()
            .any(|form| lower.starts_with(form));
    let is_height = lower
        .split(|c: char| !c.is_ascii_alphanumeric())
        .any(|word| ["story", "storey", "stories", "storeys"].contains(&word));
    let has_figure = lower
        .split(|c: char| !c.is_ascii_digit() && c != ',')
        .any(|number| number.chars().filter(char::is_ascii_digit).count() >= 3);
    let is_other = has_it && is_height && !has_figure;
    (is_year || is_other).then(|| {
        (
            format!("# {}", line.trim()),
            "this line says nothing about the outline; a comment begins with `#`",
        )
    })
}

/// `barn "Barn" 15.24 wide x 9.75 deep`, `porch 6' deep by 20' wide`: two lengths with an `x` between them are a size.
fn wide_and_deep(line: &str, pieces: &[Piece]) -> Option<(String, &'static str)> {
    // Of a garage in the walk it is asked which of its lengths is which.
    if pieces.iter().any(|piece| piece.is_word(&["included", "incl", "above"])) {
        return None;
    }
    const WIDE: [&str; 4] = ["wide", "w", "across", "width"];
    const DEEP: [&str; 6] = ["deep", "d", "long", "l", "depth", "length"];
    // What stands out of a wall says by these words which of its lengths is which; a lot has no sides of a size.
    const OTHERS: [&str; 30] = [
        "overall",
        "bay",
        "bump",
        "bumpout",
        "box",
        "alcove",
        "niche",
        "dormer",
        "lot",
        "pop",
        "popout",
        "window",
        "chimney",
        "notch",
        "recess",
        "jog",
        "wall",
        "inset",
        "house",
        "cantilever",
        "strip",
        "low",
        "eaves",
        "easement",
        "north",
        "south",
        "east",
        "west",
        "front",
        "back",
    ];
    const BUILT_ON: [&str; 6] = ["sunroom", "addition", "mudroom", "extension", "ell", "wing"];
    let before = |at: usize| pieces.iter().take(at);
    // A house that is so wide and so deep is known to other rules.
    let kind = pieces.iter().take(3).find_map(|word| {
        let word = word.text.to_lowercase();
        kinds::kind_word(&word).or_else(|| kinds::kind_meant(&word))
    });
    let is_kind = kind.is_some_and(|kind| !["living", "open", "low", "stair"].contains(&kind))
        || pieces.iter().take(2).any(|word| word.is_word(&BUILT_ON));
    let is_by =
        |at: usize| pieces.get(at).is_some_and(|by| by.is_word(&["x", "by"]) || by.is_mark("×*"));
    let lengths = kinds::lengths_in(pieces);
    let says = |at: usize, words: &[&str]| pieces.get(at).is_some_and(|word| word.is_word(words));
    let (first, one, two) = lengths.iter().zip(lengths.iter().skip(1)).find_map(|(one, two)| {
        let is_said = |at: usize| says(at, &WIDE) || says(at, &DEEP);
        let (first, end) = (one.0, one.1);
        (is_said(end) && is_by(end + 1) && two.0 == end + 2).then_some((first, end, two.1))
    })?;
    let crossed = says(one, &WIDE) && says(two, &DEEP) || says(one, &DEEP) && says(two, &WIDE);
    let plain = before(first).all(|piece| piece.sort != Sort::Mark || piece.is_mark(",:-–"));
    let is_other = pieces.iter().any(|piece| piece.is_word(&OTHERS));
    if !is_kind || !crossed || !plain || is_other || first == 0 {
        return None;
    }
    let cause = "a size is two lengths with an `x` between them, and its sides say how it lies";
    Some((without(line, pieces, &[one, two])?, cause))
}

/// The line without these pieces and the space before each.
fn without(line: &str, pieces: &[Piece], left_out: &[usize]) -> Option<String> {
    let mut plain = line.to_owned();
    for piece in left_out.iter().rev().filter_map(|at| pieces.get(*at)) {
        let before = line.get(..piece.at)?.trim_end().len();
        plain.replace_range(before..piece.at + piece.text.len(), "");
    }
    Some(plain)
}

/// `low ceiling under 7' 6 x 12`, `open "Foyer" start east 4' north 4' 8 x 10`: after a height or the length of a place
/// the next number is one of the size, and no inches.
pub(super) fn size_apart(line: &str) -> Option<(String, &'static str)> {
    const WAYS: [&str; 8] = ["north", "east", "south", "west", "n", "e", "s", "w"];
    let pieces = cut(line);
    let is_by =
        |at: usize| pieces.get(at).is_some_and(|by| by.is_word(&["x", "by"]) || by.is_mark("×*"));
    let is_number = |at: usize| pieces.get(at).is_some_and(Piece::is_number);
    let by = (2..pieces.len()).find(|&at| is_by(at) && is_number(at - 1) && is_number(at + 1))?;
    let mark = by.checked_sub(2)?;
    let number = by.checked_sub(3).filter(|at| is_number(*at))?;
    let word = pieces.get(by.checked_sub(4)?)?;
    let is_feet = pieces[mark].is_mark("'’′") || pieces[mark].is_word(&["ft", "feet"]);
    let starts = pieces.iter().take(number).position(|piece| piece.is_word(&["start", "starts"]));
    let under = word.is_word(&["under", "below"]);
    // The size is without marks to its end, so that the number before it is none of inches.
    let last = by + 1;
    let has_marks = pieces.get(last + 1).is_some_and(|unit| {
        unit.is_mark("'’′\"”″/") || unit.is_number() || unit.is_word(&["ft", "feet", "in"])
    });
    let from = match starts {
        Some(start) if word.is_word(&WAYS) => start,
        _ if under => by.checked_sub(4)?,
        _ => return None,
    };
    if line.contains('#')
        || !is_feet
        || has_marks
        || pieces[by - 1].touches
        || is_quoted(line.get(..pieces[from].at)?)
    {
        return None;
    }
    let head = line.get(..pieces[from].at)?.trim_end();
    let place = line.get(pieces[from].at..pieces[by - 1].at)?.trim_end();
    let end = pieces[last].at + pieces[last].text.len();
    let size = line.get(pieces[by - 1].at..end)?;
    let rest = line.get(end..)?;
    Some((
        format!("{head} {size} {place}{rest}"),
        "a number before an `x` is one of a size, and no inches of the length before it",
    ))
}

/// `RV cover 14 x 40`, `boat port 12 x 30`: a roof for what is driven under it.
fn cover(line: &str, pieces: &[Piece]) -> Option<(String, &'static str)> {
    const DRIVEN: [&str; 10] = [
        "rv",
        "boat",
        "car",
        "truck",
        "trailer",
        "tractor",
        "camper",
        "motorhome",
        "vehicle",
        "motorcycle",
    ];
    let (what, roof, next) = (pieces.first()?, pieces.get(1)?, pieces.get(2)?);
    let says_so = what.is_word(&DRIVEN)
        && roof.is_word(&["cover", "port", "shelter", "canopy", "awning"])
        && (next.is_number() || next.sort == Sort::Text || next.is_word(&["start", "from"]));
    let name = format!("{} {}", capital(&what.text), roof.text.to_lowercase());
    let rest = line.get(next.at..)?;
    let cause = "a roof on posts for what is driven under it is a `carport`";
    says_so.then(|| match next.sort {
        Sort::Text => (format!("carport {rest}"), cause),
        _ => (format!("carport \"{name}\" {rest}"), cause),
    })
}

/// A word as a name begins: `RV` stays as it is.
fn capital(word: &str) -> String {
    if word.eq_ignore_ascii_case("rv") {
        return "RV".to_owned();
    }
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| {
        format!("{}{}", first.to_uppercase(), letters.as_str().to_lowercase())
    })
}

/// `void over entry 7x8 SE corner`: what an opening lies over is its name, and no place.
fn void_over_a_room(line: &str, pieces: &[Piece]) -> Option<(String, &'static str)> {
    const ROOMS: [&str; 14] = [
        "entry", "entryway", "foyer", "hall", "hallway", "living", "great", "family", "dining",
        "kitchen", "den", "lr", "fr", "lobby",
    ];
    let opening = pieces.first()?.is_word(&["void", "opening", "open"]);
    let over = 1 + usize::from(pieces.get(1)?.is_word(&["area", "space"]));
    let says = |at: usize, words: &[&str]| pieces.get(at).is_some_and(|word| word.is_word(words));
    let the = over + 1 + usize::from(says(over + 1, &["the"]));
    let room = the + 1 + usize::from(says(the + 1, &["room", "hall", "area"]));
    let next = pieces.get(room).filter(|next| next.is_number())?;
    if !opening || !says(over, &["over", "above"]) || !says(the, &ROOMS) {
        return None;
    }
    let name = line.get(pieces[the].at..next.at)?.trim();
    let word = if says(0, &["void"]) { "Void" } else { "Opening" };
    Some((
        format!("open \"{word} over {name}\" {}", line.get(next.at..)?),
        "what an opening lies over is its name; where it is, is told by the walls of its own floor",
    ))
}
