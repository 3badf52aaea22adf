//! Lines of levels and spaces that also say to which face their walls were measured, how thick these are, or that the
//! rooms are finished: in a comment it would be lost.

use super::pieces::{Piece, Sort, cut};
use super::{Attempt, Mend, kinds};

/// Words for a face, beside those that only say that something was measured.
const FACES: [(&str, &[&str]); 3] = [
    ("inside", &["inside", "interior", "drywall", "plaster"]),
    ("frame", &["studs", "framing", "sheathing"]),
    ("outside", &["outside", "exterior"]),
];
const FILLERS: [&str; 22] = [
    "taped",
    "measured",
    "measure",
    "measurement",
    "measurements",
    "dimension",
    "dimensions",
    "dims",
    "to",
    "from",
    "the",
    "all",
    "walls",
    "wall",
    "was",
    "were",
    "on",
    "at",
    "face",
    "tape",
    "only",
    "of",
];

/// A part of a line between marks.
struct Clause<'a> {
    text: &'a str,
    pieces: Vec<Piece>,
}

/// The parts of a line between commas, semicolons, colons, dashes and parentheses. Marks in a text divide nothing.
fn clauses(line: &str) -> Vec<Clause<'_>> {
    let (mut all, mut first) = (Vec::new(), 0);
    let mut take = |first: usize, end: usize| {
        let text = line.get(first..end).unwrap_or_default().trim();
        if !text.is_empty() {
            all.push(Clause { text, pieces: cut(text) });
        }
    };
    for piece in cut(line) {
        let is_dash = piece.is_mark("-–—") && !piece.touches;
        if piece.is_mark(",;:()") || is_dash {
            take(first, piece.at);
            first = piece.at + piece.text.len();
        }
    }
    take(first, line.len());
    all
}

/// The face that a part of a line says, if it says nothing else.
fn face_of(pieces: &[Piece]) -> Option<&'static str> {
    let mut face = None;
    // `outside brick`, `outside the brick`: the outer face, of what is outside.
    let is_brick = |piece: &&Piece| piece.is_word(&["brick", "stone", "siding", "veneer"]);
    let brick = pieces
        .last()
        .filter(is_brick)
        .filter(|_| pieces.iter().any(|piece| piece.is_word(&["outside", "exterior", "face"])));
    for piece in &pieces[..pieces.len() - usize::from(brick.is_some())] {
        let named = FACES.iter().find(|(_, words)| piece.is_word(words)).map(|(face, _)| *face);
        match named {
            Some(named) if face.is_none_or(|face| face == named) => face = Some(named),
            None if piece.is_word(&FILLERS) => {}
            _ => return None,
        }
    }
    // `to the face of the brick`
    face.or(brick.map(|_| "outside"))
}

/// The thickness of the walls that a part of a line says, if it says nothing else.
fn thickness_of(pieces: &[Piece]) -> Option<String> {
    const WORDS: [&str; 13] = [
        "walls", "wall", "exterior", "outer", "all", "are", "is", "thick", "outside", "add",
        "plus", "for", "the",
    ];
    let (first, end, thick) = kinds::first_inches(pieces)?;
    let mut others = pieces[..first].iter().chain(&pieces[end..]);
    let is_said = pieces.iter().any(|piece| piece.is_word(&WORDS[..2]));
    (is_said && others.all(|piece| piece.is_word(&WORDS))).then_some(thick)
}

/// The face and the thickness that a part of a line says together, if it says nothing else: `inside walls 6"`.
fn face_and_thickness(pieces: &[Piece]) -> Option<(&'static str, Option<String>)> {
    if let Some(face) = face_of(pieces) {
        return Some((face, None));
    }
    let (is_face, rest): (Vec<Piece>, Vec<Piece>) = pieces.iter().cloned().partition(|piece| {
        piece.is_word(&FILLERS[..9]) || FACES.iter().any(|(_, words)| piece.is_word(words))
    });
    Some((face_of(&is_face)?, Some(thickness_of(&rest)?)))
}

/// `inside, walls 6"`, `interior walls 6"` below a level: as a thickness alone the face would be lost.
fn alone(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let (mut face, mut thick) = (None, None);
    for clause in clauses(line) {
        match (face_and_thickness(&clause.pieces), thickness_of(&clause.pieces)) {
            (Some((said, thickness)), _) => {
                face = face.or(Some(said));
                thick = thick.or(thickness);
            }
            (None, Some(thickness)) => thick = thick.or(Some(thickness)),
            (None, None) => return None,
        }
    }
    let (face, thick) = face.zip(thick)?;
    let tried = attempt(line);
    let before = cut(&tried.beside.before);
    let word = |at: usize| before.get(at).map_or(String::new(), |piece| piece.text.to_lowercase());
    let is_below = crate::sketch::opens_level(&word(0), &word(1)) || tried.space.is_some();
    is_below.then(|| Mend {
        cause: "the face to which the walls were measured stands on the line of each space, and how thick they are above the first level".to_owned(),
        help: Some(format!(
            "write `measured to {face}` after the name of each space that was measured so, as in `living \"Rooms\" measured to {face}`, and `wall {thick}` on a line above the first level; leave this line out"
        )),
        ..Mend::default()
    })
}

/// The answer to a line of a level or a living space that also says a face: `2nd floor, taped inside, walls 6"`,
/// `living "Bedrooms" inside, ceiling 8`.
pub(super) fn answer(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    if line.contains('#') {
        return None;
    }
    alone(line, attempt).or_else(|| of_walls(line, Clad::Unsaid, attempt))
}

/// The same for the line of a level whose walls are known to have no veneer.
pub(super) fn without_veneer(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    if line.contains('#') { None } else { of_walls(line, Clad::Bare, attempt) }
}

/// What a line says of the veneer of its walls.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Clad {
    Unsaid,
    Bare,
}

fn of_walls(line: &str, clad: Clad, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let first = cut(line);
    let word = |at: usize| first.get(at).map_or(String::new(), |piece| piece.text.to_lowercase());
    let is_level = kinds::names_a_level(line) || crate::sketch::opens_level(&word(0), &word(1));
    let is_house =
        !is_level && kinds::kind_word(&word(0)).is_none() && names_the_house(line, attempt);
    if !is_level && !is_house && kinds::kind_word(&word(0)) != Some("living") {
        return None;
    }
    let all = clauses(line);
    let (mut face, mut thick) = (None, None);
    let mut kept: Vec<&str> = Vec::new();
    for (i, clause) in all.iter().enumerate() {
        if let Some(said) = thickness_of(&clause.pieces).filter(|_| i > 0) {
            thick = thick.or(Some(said));
        } else if let Some((said, thickness)) = face_and_thickness(&clause.pieces).filter(|_| i > 0)
        {
            face = face.or(Some(said));
            thick = thick.or(thickness);
        } else if let Some((said, thickness, before)) = after_the_name(clause) {
            face = face.or(Some(said));
            thick = thick.or(thickness);
            kept.push(before);
        } else if let Some((said, before, size)) = before_a_size(clause).filter(|_| is_level) {
            face = face.or(Some(said));
            kept.extend([before, size].into_iter().filter(|part| !part.is_empty()));
        } else if let Some((said, before)) = at_the_end(clause, is_level || is_house) {
            face = face.or(Some(said));
            kept.push(before);
        } else {
            kept.push(clause.text);
        }
    }
    // On the line of a space other rules know the outer face, and what brick beside it is.
    let face = face.filter(|face| is_level || is_house || *face != "outside")?;
    let plain = kept.join(", ");
    let mended = super::read_or_mended(&plain, attempt)?;
    let is_living = |offered: &String| offered.starts_with("living \"") && !offered.contains('\n');
    if is_house && !matches!(&mended.lines[..], [only] if is_living(only)) {
        return None;
    }
    // Without a word of it a veneer is assumed, and would come on top of what may be the whole wall.
    let bare = match attempt(line).beside.has_veneer || clad == Clad::Bare {
        true => "",
        false => ", and with it `veneer none` unless brick or stone comes on top of that",
    };
    let measured = match clad {
        Clad::Unsaid => format!("measured to {face}"),
        Clad::Bare => format!("measured to {face} veneer none"),
    };
    let thick = thick.map_or_else(String::new, |thick| {
        format!("; how thick the walls are stands above the first level: `wall {thick}`{bare}")
    });
    let cause = format!(
        "the face to which the walls were measured stands on the line of each space, as `measured to {face}`{thick}"
    );
    if let Some(mut asks) = mended.asks {
        asks.before = format!("{} {measured}", asks.before);
        return Some(Mend {
            cause: format!("{}{thick}", mended.cause),
            help: mended.help,
            asks: Some(asks),
            ..Mend::default()
        });
    }
    if let Some(help) = mended.help {
        let help = format!("{help}; after the name of each space write `{measured}`{thick}");
        return Some(Mend { cause: mended.cause, help: Some(help), ..Mend::default() });
    }
    let mut lines = mended.lines;
    let has_space = |offered: &String| offered.lines().any(is_space);
    if lines.iter().any(|offered| offered.starts_with('#')) {
        return None;
    }
    if !lines.iter().all(has_space) {
        let level = lines.first()?.lines().next()?;
        let help = format!(
            "write `{level}` here, and `{measured}` after the name of each of its spaces{}{thick}",
            parts(face)
        );
        return Some(Mend { help: Some(help), cause, ..Mend::default() });
    }
    for offered in &mut lines {
        let told: Vec<String> = offered.lines().map(|line| with_face(line, &measured)).collect();
        *offered = told.join("\n");
    }
    let reads = |offered: &String| attempt(offered).reads.is_some();
    let all_read = lines.clone().iter().all(reads);
    all_read.then(|| Mend { lines, cause, ..Mend::default() })
}

/// What needs no inner face: it has no walls of its own.
pub(super) fn parts(face: &str) -> &'static str {
    match face {
        "inside" => "; `open`, `stair` and `low` need none",
        _ => "",
    }
}

/// A part of a line that says a face and a thickness after a name, and what stands before them:
/// `living "Upper" inside 6" walls`.
fn after_the_name<'a>(clause: &Clause<'a>) -> Option<(&'static str, Option<String>, &'a str)> {
    let name = clause.pieces.iter().position(|piece| piece.sort == Sort::Text)?;
    let rest = clause.pieces.get(name + 1..).filter(|rest| !rest.is_empty())?;
    // `measured to inside` is as the format has it.
    if rest.first().is_some_and(|piece| piece.is_word(&["measured"]))
        && rest.get(1).is_some_and(|piece| piece.is_word(&["to"]))
    {
        return None;
    }
    let (face, thick) = face_and_thickness(rest)?;
    Some((face, thick, clause.text.get(..rest[0].at)?.trim_end()))
}

/// A part of a line that says a face right before a size, and what stands before it and after it:
/// `level "Upper" inside 34' 6" x 26' 7"`.
fn before_a_size<'a>(clause: &Clause<'a>) -> Option<(&'static str, &'a str, &'a str)> {
    let says = |piece: &&Piece| {
        piece.is_word(&FILLERS[..9]) || FACES.iter().any(|(_, words)| piece.is_word(words))
    };
    let number = (1..clause.pieces.len())
        .find(|&at| clause.pieces[at].is_number() && says(&&clause.pieces[at - 1]))?;
    let words = clause.pieces[..number].iter().rev().take_while(says).count();
    let first = number.checked_sub(words)?;
    let face = face_of(clause.pieces.get(first..number)?)?;
    let size = clause.text.get(clause.pieces[number].at..)?;
    kinds::size_in(size)?;
    Some((face, clause.text.get(..clause.pieces[first].at)?.trim_end(), size))
}

/// A part of a line whose last words say a face, and what stands before them: `2nd floor taped inside`. `inside` alone
/// may be where a room lies, unless a level or a name stands right before it.
fn at_the_end<'a>(clause: &Clause<'a>, is_level: bool) -> Option<(&'static str, &'a str)> {
    let says = |piece: &Piece| {
        piece.is_word(&FILLERS[..9]) || FACES.iter().any(|(_, words)| piece.is_word(words))
    };
    let last = clause.pieces.iter().rev().take_while(|piece| says(piece)).count();
    let at = clause.pieces.len() - last;
    let face = face_of(&clause.pieces[at..]).filter(|_| at > 0)?;
    let before = clause.pieces.get(at.checked_sub(1)?)?;
    let is_name = before.sort == Sort::Text;
    // `level "Upper" measured to inside` is answered as a whole.
    if before.is_word(&["to", "from", "the", "studs"]) || !(is_level || is_name) {
        return None;
    }
    Some((face, clause.text.get(..clause.pieces[at].at)?.trim_end()))
}

/// `farmhouse, stone, outside walls` above walls: whether a line names the house whose walls follow.
fn names_the_house(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> bool {
    const HOUSES: [&str; 12] = [
        "house",
        "home",
        "farmhouse",
        "cottage",
        "cabin",
        "bungalow",
        "dwelling",
        "residence",
        "ranch",
        "rambler",
        "townhouse",
        "duplex",
    ];
    let pieces = cut(line);
    let house = pieces.iter().take(3).position(|piece| piece.is_word(&HOUSES));
    let is_bare = pieces.iter().all(|piece| piece.sort == Sort::Word || piece.is_mark(",;:-–—()."));
    if house.is_none() || !is_bare {
        return false;
    }
    let beside = attempt(line).beside;
    super::begins_as_side(&beside.after) && !super::begins_as_side(&beside.before)
}

/// Whether a line begins with a kind of space and a name.
fn is_space(line: &str) -> bool {
    super::begins_as_named_space(line)
}

/// The line of a space with what it is `measured` to after its name; any other line as it is.
fn with_face(line: &str, measured: &str) -> String {
    let pieces = cut(line);
    let name = pieces.get(1).filter(|_| is_space(line) && !line.contains(" measured to "));
    let Some(name) = name else { return line.to_owned() };
    let end = name.at + name.text.len();
    let (before, after) = line.split_at(end);
    format!("{before} {measured}{after}")
}

/// An answer in which rooms that are said to be finished are living space.
pub(super) fn finished(line: &str, mut mend: Mend) -> Mend {
    const NOT: [&str; 12] = [
        "unfinished",
        "not",
        "un",
        "partly",
        "partially",
        "part",
        "half",
        "semi",
        "never",
        "isn't",
        "no",
        "semi-finished",
    ];
    let pieces = cut(line);
    let says = |words: &[&str]| pieces.iter().any(|piece| piece.is_word(words));
    if says(&["finished"]) && !says(&NOT) {
        for offered in &mut mend.lines {
            let lines = offered.lines().map(|line| match line.strip_prefix("unfinished \"") {
                Some(rest) => format!("living \"{rest}"),
                None => line.to_owned(),
            });
            *offered = lines.collect::<Vec<String>>().join("\n");
        }
    }
    mend
}
