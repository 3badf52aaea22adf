//! The line of a space, put together from whatever parts of it can be recognized, in any order.

use super::super::pieces::{Piece, Sort};
use super::levels::capitalized;
use super::loose::kind_at_start;
use super::measure::{area_at, length_at, rectangle};
use super::whereabouts::whereabouts;
use super::{
    Answer, Typed, digits, is_text, kind_word, materials, placed, plainly, quoted, standing,
};

/// What a line says of a space.
pub(super) struct Space {
    pub(super) kind: &'static str,
    pub(super) name: String,
    pub(super) face: Option<&'static str>,
    pub(super) within: Option<String>,
    pub(super) place: Option<String>,
    /// Whether the place is a corner that is called by its name alone.
    pub(super) by_name: bool,
    /// Words about its place, if it has none that can be drawn.
    pub(super) told: Option<String>,
    pub(super) under: Option<String>,
    pub(super) is_bare: bool,
    pub(super) counted: Option<bool>,
    pub(super) recorded: Option<String>,
    pub(super) comments: Vec<String>,
    /// Whether something is left that may say where the space is or how large it is.
    pub(super) is_unclear: bool,
}

/// `covered porch from step`, `garage "Garage" @ step`: a corner that is called by its name alone.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let space = read(typed)?;
    let gone = ["gone", "removed", "torn", "demolished", "razed", "anymore", "longer", "demoed"];
    if let Some(area) = space.recorded.as_ref().filter(|_| {
        !typed.line.contains('"') && (typed.find(1, &gone).is_some() || says_not_there(typed))
    }) {
        return Some(Answer::line(
            match space.comments.is_empty() {
                true => format!("missing {} {} recorded {area}", space.kind, space.name),
                false => format!(
                    "missing {} {} recorded {area}  # {}",
                    space.kind,
                    space.name,
                    space.comments.join(", ")
                ),
            },
            "what the record lists and the house does not have is `missing`",
        ));
    }
    if !space.by_name || space.is_unclear {
        return None;
    }
    let line = space.line();
    // Where the typed line has its place as the format has it, something else is wrong.
    let place = space.place.as_deref().is_some_and(|place| typed.line.contains(place));
    let cause = match &space.recorded {
        Some(area) if place && !typed.line.contains(&format!("recorded {area}")) => {
            "what the record says of a space is `recorded` and the area"
        }
        _ => "a space has its kind, its name, then `from corner` and the name of the corner",
    };
    (line != typed.line).then(|| Answer::line(line, cause))
}

/// `patio (slab only) from corner "step"`, `wood shed detached 80 sf on card`, `screened-in porch 10 x 10`: the line of
/// a space that nothing else could read.
pub(super) fn left_over(typed: &Typed<'_>) -> Option<Answer> {
    // What the parser says of a word that is out of place is better.
    let is_told = typed.attempt.word == Some(crate::diagnostic::Word::OutOfPlace);
    // `comparable 8 Larch Court`: a line about values is no space.
    let is_value = typed.says(0, &crate::sketch::value_parser::FIRST_WORDS);
    let space = read(typed).filter(|_| !is_told && !is_value && !typed.says(0, &["sunroom"]))?;
    let cause = "the line of a space has its kind, its name, its place, and its area on the record";
    if let Some(lines) = second_way(&space) {
        return Some(Answer::Lines(
            lines,
            "a place has two ways, each with its length: which way does the second go?".to_owned(),
        ));
    }
    let is_first = typed.attempt.house.is_none() && space.kind == "living";
    let needs_no_place = (is_first || space.place.is_some()) && space.told.is_none();
    let has_size = space.comments.iter().any(|comment| super::size_in(comment).is_some());
    let sides_follow = super::super::begins_as_side(&typed.attempt.beside.after);
    if !space.is_unclear
        && (needs_no_place || space.within.is_some())
        && (!has_size || sides_follow)
    {
        return Some(Answer::line(space.line(), cause));
    }
    if !needs_no_place && space.within.is_none() {
        return Some(Answer::say(cause, placed::ask(typed, &space)));
    }
    let after = space.after_place();
    let after = match after.as_str() {
        "" if space.recorded.is_none() => {
            ", then, if the record has its area, `recorded` and that area".to_owned()
        }
        "" => String::new(),
        after => format!(", then `{after}`"),
    };
    let sides = if has_size && !sides_follow {
        "; its size is typed as its sides, one on each line below"
    } else {
        ""
    };
    Some(Answer::say(
        cause,
        format!(
            "write `{}`{after}; anything else goes to the end of the line, after a `#`{sides}",
            space.before_place()
        ),
    ))
}

/// `back 30'`, `north 27' east 9'` after a name: a place whose `start` is missing.
fn start_without_its_word(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    let mut end = at;
    for _ in 0..2 {
        let next = end
            + usize::from(
                end > at
                    && (typed.says(end, &["and"])
                        || typed.piece(end).is_some_and(|mark| mark.is_mark(","))),
            );
        let way = super::super::compass::way_and_back(&typed.lower(next)).is_some();
        let Some(one) = length_at(&typed.pieces, next + 1).filter(|one| way && one.has_unit) else {
            break;
        };
        // `front, 12' 3" from the left`: how far it is from another wall.
        if typed.says(one.end, &["x", "by", "wide", "deep", "from", "off"])
            || typed.piece(one.end).is_some_and(|mark| mark.is_mark("×*"))
        {
            break;
        }
        end = one.end;
    }
    (end > at).then(|| {
        (format!("start {}", typed.text(at, end).replace(',', "").replace(" and ", " ")), end)
    })
}

/// `part of the house`, `cut out of the house`: within it.
fn part_of_the_house(typed: &Typed<'_>, at: usize) -> Option<(usize, String)> {
    let all = [
        &["part", "of"][..],
        &["cut", "out", "of"],
        &["inside", "of"],
        &["built", "into"],
        &["carved", "out", "of"],
    ];
    let says =
        |words: &&&[&str]| words.iter().enumerate().all(|(i, word)| typed.says(at + i, &[word]));
    let mut end = at + all.iter().find(says)?.len();
    while typed.says(end, &["the", "main"]) {
        end += 1;
    }
    let name = typed.attempt.house.clone()?;
    typed.says(end, &["house", "home", "walk", "outline", "footprint"]).then_some((end + 1, name))
}

/// A length that is left beside a place of one way: which way it goes is not said.
fn second_way(space: &Space) -> Option<Vec<String>> {
    let place = space.place.as_deref()?.strip_prefix("start ")?;
    let pieces = super::cut(place);
    let way = pieces.first()?.text.to_lowercase();
    length_at(&pieces, 1).filter(|one| one.end == pieces.len())?;
    let at = space
        .comments
        .iter()
        .position(|comment| super::measures(comment) && super::size_in(comment).is_none())?;
    let said = super::cut(&space.comments[at]);
    let far = super::measure::lengths(&said, 0).into_iter().find(|(_, far)| far.has_unit)?.1;
    let (way, _) = super::super::compass::way_and_back(&way)?;
    // The length is in the place now.
    let mut comments = space.comments.clone();
    if let Some(comment) = comments.get_mut(at) {
        let words: Vec<&str> = said
            .iter()
            .filter(|piece| {
                piece.sort == Sort::Word && !piece.is_word(&["ft", "feet", "in", "inches"])
            })
            .map(|piece| piece.text.as_str())
            .collect();
        *comment = words.join(" ");
    }
    comments.retain(|comment| !comment.is_empty());
    let lines = super::super::compass::along(way).map(|across| {
        let parts =
            [&space.before_place(), &format!("{across} {}", far.text), &space.after_place()];
        let line: Vec<&str> =
            parts.into_iter().map(String::as_str).filter(|part| !part.is_empty()).collect();
        match comments.is_empty() {
            true => line.join(" "),
            false => format!("{}  # {}", line.join(" "), comments.join(", ")),
        }
    });
    Some(lines.into())
}

/// `not there`, `isn't here`: the record lists it and the house does not have it.
fn says_not_there(typed: &Typed<'_>) -> bool {
    let not = typed.find(1, &["not", "isn't", "isnt"]);
    not.is_some_and(|not| typed.says(not + 1, &["there", "here"]))
}

/// `record 483 sf`, `county has 484` in the line of a space: the area, and the index after it.
pub(super) fn recorded_at(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    let said = ["recorded", "record", "rec", "card", "county", "assessor", "cad", "rec'd", "recd"];
    let mut space = Space::new("garage", String::new());
    let end = space.recorded(typed, at).filter(|_| typed.says(at, &said))?;
    Some((space.recorded?, end))
}

impl Space {
    /// A space of which nothing is known but its kind and its name.
    pub(super) fn new(kind: &'static str, name: String) -> Space {
        Space {
            kind,
            name,
            face: None,
            within: None,
            place: None,
            by_name: false,
            told: None,
            under: None,
            is_bare: false,
            counted: None,
            recorded: None,
            comments: Vec::new(),
            is_unclear: false,
        }
    }

    pub(super) fn before_place(&self) -> String {
        let mut line = format!("{} {}", self.kind, self.name);
        if let Some(face) = self.face {
            line.push_str(" measured to ");
            line.push_str(face);
        }
        for part in [&self.within, &self.place].into_iter().flatten() {
            line.push(' ');
            line.push_str(part);
        }
        line
    }

    pub(super) fn after_place(&self) -> String {
        let mut parts: Vec<String> = Vec::new();
        parts.extend(self.under.clone());
        if self.is_bare {
            parts.push("veneer none".to_owned());
        }
        match self.counted {
            // What is no floor is not counted in any case.
            Some(true) if matches!(self.kind, "open" | "low" | "court" | "stair") => {}
            Some(true) => parts.push("counted".to_owned()),
            Some(false) => parts.push("not counted".to_owned()),
            None => {}
        }
        parts.extend(self.recorded.as_ref().map(|area| format!("recorded {area}")));
        parts.join(" ")
    }

    pub(super) fn line(&self) -> String {
        let mut line =
            format!("{} {}", self.before_place(), self.after_place()).trim_end().to_owned();
        if !self.comments.is_empty() {
            line.push_str("  # ");
            line.push_str(&self.comments.join(", "));
        }
        line
    }
}

/// Words before the kind that make the line another one than that of a space.
const NOT_BEFORE: &[&str] = &[
    "north", "south", "east", "west", "n", "s", "e", "w", "no", "not", "minus", "less", "without",
    "with", "record", "records", "listing", "plan", "figure", "county", "missing", "level", "lot",
    "corner", "total", "here", "start", "starts", "begin", "begins", "end", "ends", "this", "that",
    "see", "same", "overall", "note", "to", "of", "from", "at", "in", "on", "through", "is", "was",
    "has", "measured", "value", "tie", "over", "above", "under", "behind", "beside", "near", "off",
    "and", "between", "pool", "house", "by", "next", "card", "cnty",
];

/// Words that say where a space is, which no comment may take in unless its place is known.
const PLACES: &[&str] = &[
    "behind",
    "beside",
    "next",
    "near",
    "north",
    "south",
    "east",
    "west",
    "n",
    "s",
    "e",
    "w",
    "rear",
    "back",
    "front",
    "left",
    "right",
    "corner",
    "side",
    "from",
    "at",
    "start",
    "starts",
    "starting",
    "within",
    "inside",
    "outside",
    "above",
    "of",
    "off",
    "by",
    "under",
    "over",
    "along",
    "across",
    "between",
    "shares",
    "adjoining",
    "where",
    "on",
];

/// Words that say what no comment may take in.
const MATTERS: &[&str] = &[
    "below", "grade", "minus", "no", "not", "without", "same", "as", "measured", "to", "veneer",
    "brick", "wall", "gone", "removed", "torn", "missing", "sold",
];

/// The area that the size at the end of the line gives, and the index after it.
fn product(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    // Bare numbers of a file in meters are none of feet.
    let one =
        length_at(&typed.pieces, at).filter(|one| one.has_unit || !typed.attempt.is_metric)?;
    let two =
        length_at(&typed.pieces, one.end + 1).filter(|_| super::described::by(typed, one.end))?;
    let area = rectangle(one.length, two.length)?;
    typed.piece(two.end).is_none().then_some((area, two.end))
}

/// The kind that a word means, if it is the last word of what a space is called.
fn called(word: &str) -> Option<&'static str> {
    kind_word(word).filter(|kind| !["open", "low", "living"].contains(kind)).or(match word {
        "gar" | "garge" | "gargage" => Some("garage"),
        "shed" | "barn" | "workshop" => Some("outbuilding"),
        "suite" | "apartment" | "addition" | "bedroom" | "kitchen" | "den" | "study" | "room"
        | "mudroom" | "dormer" | "bump-out" | "bumpout" => Some("living"),
        "veranda" | "lanai" | "stoop" => Some("porch"),
        "eaves" | "kneewall" => Some("low"),
        "stairs" | "stairwell" | "staircase" => Some("stair"),
        "foyer" | "atrium" => Some("open"),
        _ => None,
    })
}

/// The kind, the first piece after it, and the name that the words give it.
pub(super) fn kind(typed: &Typed<'_>) -> Option<(&'static str, usize, String)> {
    if let Some((kind, at)) = kind_at_start(typed) {
        let name = capitalized(&typed.text(0, at).to_lowercase());
        return Some((kind, at, name));
    }
    let first_house = usize::from(typed.says(0, &["main", "the", "whole"]));
    if typed.says(first_house, &["house", "home"]) {
        let name = capitalized(&typed.text(0, first_house + 1).to_lowercase());
        return Some(("living", first_house + 1, name));
    }
    // `sloped ceiling 5' x 40' along the back`
    let sloped = typed.says(0, &["sloped", "slanted", "sloping", "low"])
        && typed.says(1, &["ceiling", "ceilings"]);
    if sloped && !typed.says(2, &["under", "below", "less", "lower"]) {
        return Some(("low", 2, capitalized(&typed.text(0, 2).to_lowercase())));
    }
    // `knee wall space under 5'`: what is low.
    let under = typed.find(1, &["under", "below", "less", "lower"]).filter(|under| *under <= 4);
    let is_low = under.is_some_and(|under| {
        let than = under + usize::from(typed.says(under + 1, &["than"]));
        (0..under).all(|at| {
            typed.says(
                at,
                &[
                    "area", "space", "part", "knee", "wall", "ceiling", "attic", "eave", "eaves",
                    "low", "section", "sloped",
                ],
            )
        }) && length_at(&typed.pieces, than + 1).is_some_and(|length| length.has_unit)
    });
    if let Some(under) = under.filter(|_| is_low) {
        return Some(("low", under, capitalized(&typed.text(0, under).to_lowercase())));
    }
    let at = (0..typed.pieces.len().min(5)).find(|&at| called(&typed.lower(at)).is_some())?;
    // `storage room`: what the room is for.
    let is_store = at > 0 && typed.says(at, &["room"]) && typed.says(at - 1, &["storage", "store"]);
    let is_cold = typed.find(0, &["unheated", "unconditioned", "unfinished"]).is_some();
    let kind = called(&typed.lower(at))?;
    // A room for all seasons is heated.
    let is_warm = typed.find(0, &["four", "all", "heated"]).is_some_and(|warm| warm < at)
        || typed.piece(0).is_some_and(|four| four.text == "4");
    let is_porch = typed.find(0, &["season", "seasons", "screened"]).is_some() && !is_warm;
    let kind = match kind {
        "living" if is_store => "storage",
        "living" if is_cold => "unfinished",
        "living" if is_porch => "porch",
        kind => kind,
    };
    let closed = ["screened", "walk", "built", "closed", "glassed"];
    let describes = |piece: &Piece| {
        let is_in = piece.is_word(&["in"]) && typed.says(1, &["in"]) && typed.says(0, &closed);
        is_in
            || (piece.sort == Sort::Word && !piece.is_word(NOT_BEFORE))
            || piece.is_mark("-")
            || digits::is_small(piece) && piece.text.len() == 1
    };
    if !typed.pieces[..at].iter().all(describes) {
        return None;
    }
    let leaves_out = ["attached", "att", "detached", "det", "the", "a", "an", "freestanding"];
    let first = (0..at).find(|&first| !typed.says(first, &leaves_out)).unwrap_or(at);
    let adjectives = typed.text(first, at).to_lowercase();
    let last = match typed.lower(at).as_str() {
        "gar" | "garge" | "gargage" => "garage".to_owned(),
        word => word.to_owned(),
    };
    Some((kind, at + 1, capitalized(format!("{adjectives} {last}").trim())))
}

/// Reads the parts of the line; `None` if it is not that of a space.
pub(super) fn read(typed: &Typed<'_>) -> Option<Space> {
    let (kind, mut at, name) = kind(typed)?;
    let before_is_detached =
        typed.find(0, &["detached", "det", "freestanding"]).is_some_and(|first| first < at);
    let mut space = Space::new(kind, quoted(&name));
    space.place = before_is_detached.then(|| "detached".to_owned());
    if is_text(typed.piece(at)) {
        space.name = typed.text(at, at + 1).to_owned();
        at += 1;
    }
    // `living Wing, from corner "step"`, `unfinished storage area from step`
    let names = ["living", "unfinished", "storage"];
    let end = (at..typed.pieces.len())
        .find(|&at| {
            let piece = &typed.pieces[at];
            piece.sort != Sort::Word || piece.is_word(PLACES) || piece.is_word(MATTERS)
        })
        .unwrap_or(typed.pieces.len());
    if names.iter().any(|name| typed.says(0, &[name]))
        && at == 1
        && end > 1
        && end < typed.pieces.len()
        && !typed.says(1, &["detached", "counted", "recorded", "attached"])
    {
        space.name = quoted(&capitalized(typed.text(1, end)));
        at = end;
    }
    // `porch Front porch from corner "step"`
    let keywords = [
        "from", "at", "start", "starts", "within", "detached", "recorded", "not", "counted",
        "measured", "in", "on", "near", "beside", "behind", "next", "off", "to",
    ];
    let run = (at..typed.pieces.len())
        .find(|&at| typed.pieces[at].sort != Sort::Word || typed.says(at, &keywords))
        .unwrap_or(typed.pieces.len());
    if at == 1 && run > at && typed.says(run - 1, &[kind]) {
        space.name = quoted(&capitalized(typed.text(at, run)));
        at = run;
    }
    if (0..at).any(|at| typed.says(at, &["attached", "att"]))
        && !space.name.to_lowercase().contains("att")
    {
        space.comments.push("attached".to_owned());
    }
    let mut remark: Option<usize> = None;
    let mut says_place = false;
    while at < typed.pieces.len() {
        let next = space.part(typed, at);
        if let Some(next) = next {
            space.remark(typed, remark.take(), at);
            at = next.max(at + 1);
            continue;
        }
        let piece = &typed.pieces[at];
        if piece.sort == Sort::Mark {
            if piece.is_mark(",;.()[]:–-@") {
                space.remark(typed, remark.take(), at);
            } else if !piece.is_mark("&/'’") {
                space.is_unclear = true;
            }
        } else {
            let counts = piece.is_number()
                && digits::is_small(piece)
                && piece.text.len() == 1
                && typed.piece(at + 1).is_some_and(|next| {
                    next.sort == Sort::Word || next.is_mark("-") && next.touches
                })
                && length_at(&typed.pieces, at).is_none_or(|length| !length.has_unit);
            // `w/ stairs`: with.
            let is_with = typed.says(at, &["w"])
                && typed.piece(at + 1).is_some_and(|slash| slash.is_mark("/"));
            let is_year = typed.line.contains('"')
                && piece.is_year()
                && typed
                    .says(at - 1, &["in", "built", "since", "down", "remodeled", "added", "blt"]);
            let counts = counts || is_year;
            says_place |= piece.is_word(PLACES) && !is_with;
            space.is_unclear |=
                piece.sort == Sort::Text || piece.is_word(MATTERS) || piece.is_number() && !counts;
            remark.get_or_insert(at);
        }
        at += 1;
    }
    space.remark(typed, remark, at);
    space.is_unclear |= says_place && space.place.is_none() && space.within.is_none();
    Some(space)
}

impl Space {
    /// Takes the pieces from `first` to `end` as a comment.
    fn remark(&mut self, typed: &Typed<'_>, first: Option<usize>, end: usize) {
        let Some(first) = first else { return };
        let said = plainly(typed.text(first, end));
        let said = said.trim_matches(|c: char| " ,;:.-–()".contains(c)).to_owned();
        if !said.is_empty() {
            self.comments.push(said);
        }
    }

    /// Reads the part that begins here; the index after it.
    fn part(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        if self.told.is_none()
            && self.place.is_none()
            && standing::corner_by_name(typed, at).is_none()
            && let Some(found) = whereabouts(typed, at)
            && !found.told.is_corner_or_below()
        {
            let said = typed.text(at, found.end).trim_matches([',', ' ']).to_owned();
            self.told = Some(said);
            return Some(found.end);
        }
        if self.place.is_none() {
            if let Some((name, end)) = standing::corner_by_name(typed, at) {
                self.place = Some(format!("from corner \"{name}\""));
                self.by_name = true;
                return Some(end);
            }
            if let Some((place, end)) = standing::place(typed, at) {
                self.place = Some(place);
                return Some(end);
            }
        }
        if self.place.is_none()
            && let Some((place, end)) = start_without_its_word(typed, at)
        {
            self.place = Some(place);
            return Some(end);
        }
        if let Some(end) = standing::detached(typed, at) {
            self.place.get_or_insert_with(|| "detached".to_owned());
            return Some(end);
        }
        if self.within.is_none()
            && let Some((end, name)) = part_of_the_house(typed, at)
        {
            self.within = Some(format!("within {}", quoted(&name)));
            return Some(end);
        }
        let house = typed.attempt.house.as_deref().unwrap_or_default();
        let count = super::cut(house).len();
        if self.within.is_none()
            && typed.says(at, &["within", "inside"])
            && count > 0
            && typed
                .text(at + 1, (at + 1 + count).min(typed.pieces.len()))
                .eq_ignore_ascii_case(house)
        {
            self.within = Some(format!("within {}", quoted(house)));
            return Some(at + 1 + count);
        }
        // It lies in the walk above, which says nothing of whether it counts.
        if self.within.is_none()
            && count > 0
            && typed.says(at, &["included", "incl"])
            && typed.says(at + 1, &["above"])
            && !typed.says(at + 2, &["grade"])
        {
            self.within = Some(format!("within {}", quoted(house)));
            return Some(at + 2);
        }
        if typed.says(at, &["within"]) && is_text(typed.piece(at + 1)) {
            self.within = Some(typed.text(at, at + 2).to_lowercase().replacen(
                &typed.text(at + 1, at + 2).to_lowercase(),
                typed.text(at + 1, at + 2),
                1,
            ));
            return Some(at + 2);
        }
        let heated = ["heated", "finished", "insulated", "cooled", "permanent"];
        if typed.says(at, &["not"]) && typed.says(at + 1, &heated) {
            self.comments.push(typed.text(at, at + 2).to_owned());
            return Some(at + 2);
        }
        self.fact(typed, at)
    }

    /// Reads a part that begins here and does not say where the space is; the index after it.
    pub(super) fn fact(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        self.size(typed, at)
            .or_else(|| self.under(typed, at))
            .or_else(|| self.counted(typed, at))
            .or_else(|| self.recorded(typed, at))
            .or_else(|| self.face(typed, at))
    }

    /// `10 x 10`: a comment, since a size is typed as its sides.
    pub(super) fn size(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        let one = length_at(&typed.pieces, at)?;
        let which = ["wide", "w", "deep", "d", "long", "l", "width", "depth", "across"];
        let middle = one.end + usize::from(typed.says(one.end, &which));
        let by = typed.says(middle, &["x", "by"])
            || typed.piece(middle).is_some_and(|mark| mark.is_mark("×*"))
            || middle > one.end
                && (typed.says(middle, &["and"])
                    || typed.piece(middle).is_some_and(|mark| mark.is_mark(",/")));
        let mut two = length_at(&typed.pieces, middle + 1).filter(|_| by)?;
        // `12 x 20 in the corner`: no inches.
        let is_in = typed.says(two.end - 1, &["in"]) && two.end == middle + 3;
        if is_in
            && !one.has_unit
            && typed.piece(two.end).is_some_and(|next| next.sort == Sort::Word)
        {
            two.end -= 1;
        }
        two.end += usize::from(typed.says(two.end, &which));
        self.comments.push(typed.text(at, two.end).trim_matches([',', ' ']).to_owned());
        let equals = typed.piece(two.end).is_some_and(|mark| mark.is_mark("="));
        let number = typed.piece(two.end + 1).filter(|number| equals && number.is_number());
        if let Some(number) = number.filter(|_| self.recorded.is_none()) {
            let (end, area) = area_at(&typed.pieces, two.end + 1)
                .unwrap_or_else(|| (two.end + 2, format!("{} sq ft", number.text)));
            self.recorded = Some(area);
            return Some(end);
        }
        Some(two.end)
    }

    /// `ceiling < 5'`, `less than 5 feet high`: how high a low space is.
    fn under(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        let says = [
            "ceiling", "ceilings", "under", "below", "less", "than", "lower", "height", "area",
            "space", "headroom", "is", "high", "with",
        ];
        let is_said = |at: usize| {
            typed.says(at, &says) || typed.piece(at).is_some_and(|mark| mark.is_mark("<=:,("))
        };
        let first = (at..typed.pieces.len()).find(|&at| !is_said(at))?;
        let measure = length_at(&typed.pieces, first).filter(|length| length.has_unit)?;
        if self.kind != "low" || self.under.is_some() {
            return None;
        }
        // `4' deep, under 5'`, `3.5' wide`, `5' to 7' high`: how far it reaches, or between which heights.
        let says_under = |at: usize| typed.says(at, &["under", "below", "than"]);
        let elsewhere = (1..typed.pieces.len())
            .any(|at| says_under(at - 1) && at != first && length_at(&typed.pieces, at).is_some());
        let reaches = ["wide", "deep", "long", "to", "from", "out", "in"];
        if elsewhere && !says_under(first - 1) || typed.says(measure.end, &reaches) {
            return None;
        }
        self.under = Some(format!("under {}", measure.text));
        let end = (measure.end..typed.pieces.len()).find(|&at| !is_said(at));
        Some(end.unwrap_or(typed.pieces.len()))
    }

    /// `not included`, `don't count it`, `counted`.
    fn counted(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        let count = ["count", "counted", "counts", "include", "included", "incl"];
        let no = ["not", "dont", "don't", "isn't", "never", "no"];
        let in_total = ["total", "living", "area", "house", "heated", "gla"];
        let of = at + 2 + usize::from(typed.says(at + 1, &["part"]));
        let is_out = typed.says(at + 1, &["in"])
            || typed.says(at + 1, &["part"]) && typed.says(at + 2, &["of"]);
        if self.counted.is_none()
            && typed.says(at, &["not"])
            && is_out
            && (typed.says(of, &in_total)
                || typed.says(of, &["the"]) && typed.says(of + 1, &in_total))
        {
            self.counted = Some(false);
            let end = (of..typed.pieces.len())
                .find(|&at| !typed.says(at, &in_total) && !typed.says(at, &["the"]));
            return Some(end.unwrap_or(typed.pieces.len()));
        }
        let mut end = at;
        end += usize::from(typed.says(end, &["do", "is", "should"]));
        let is_not = typed.says(end, &no);
        end += usize::from(is_not);
        end += usize::from(typed.says(end, &["be"]));
        let out = typed.says(end, &["excluded", "exclude", "uncounted"]);
        if self.counted.is_some() || !out && !typed.says(end, &count) {
            return None;
        }
        self.counted = Some(!out && !is_not);
        end += 1;
        while typed.says(end, &["it", "in", "the", "total", "area", "this"]) {
            end += 1;
        }
        Some(end)
    }

    /// `80 sf on card`, `county 484`, `record: 400 sq ft`: its area on the record.
    fn recorded(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        let sources = [
            "recorded", "record", "rec", "card", "county", "assessor", "cad", "tax", "cnty",
            "district", "rec'd", "rcd", "recd",
        ];
        let fill =
            ["per", "on", "the", "by", "says", "area", "is", "of", "as", "shows", "has", "at"];
        let said = |at: usize| {
            typed.says(at, &sources)
                || typed.says(at, &fill)
                || typed.piece(at).is_some_and(|mark| mark.is_mark(",:=(."))
        };
        let first = (at..typed.pieces.len()).find(|&at| !said(at))?;
        let says_so = |from: usize, end: usize| (from..end).any(|at| typed.says(at, &sources));
        let number = typed.piece(first).filter(|number| number.is_number())?;
        let (end, area) = match area_at(&typed.pieces, first) {
            Some(found) => found,
            None => (first + 1, format!("{} sq ft", number.text)),
        };
        let mut stop = end;
        while said(stop) || typed.piece(stop).is_some_and(|mark| mark.is_mark(")")) {
            stop += 1;
        }
        let has_unit = end > first + 1;
        let is_area = has_unit
            || says_so(at, first)
            // `start east 45 recorded 440`: the word belongs to the number after it.
            || says_so(end, stop)
                && !typed.piece(stop).is_some_and(Piece::is_number)
                && length_at(&typed.pieces, first).is_some_and(|one| !one.has_unit);
        let is_year = !has_unit && number.is_year();
        // `rec'd 22x20=440`: the area follows the size.
        if typed.says(end, &["x", "by"]) && typed.line.contains('=') && first > at {
            return Some(first);
        }
        // `recorded 22x21`: the area is the product.
        let product = says_so(at, first).then(|| product(typed, first)).flatten();
        if let Some((area, end)) = product.filter(|_| self.recorded.is_none()) {
            self.recorded = Some(area);
            return Some(end);
        }
        let is_by = typed.says(end, &["x", "by", "car"]);
        if self.recorded.is_some() || !is_area || is_year || is_by || number.text.len() < 2 {
            return None;
        }
        self.recorded = Some(area);
        Some(stop)
    }

    /// `measured inside`, `to studs`, `no brick`: what was measured.
    fn face(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        if typed.says(at, &["no", "without"]) && typed.says(at + 1, &["brick", "veneer", "stone"]) {
            self.is_bare = true;
            return Some(at + 2);
        }
        if typed.says(at, &["veneer"]) && typed.says(at + 1, &["none"]) {
            self.is_bare = true;
            return Some(at + 2);
        }
        if let Some(end) = materials::without_brick(typed, at) {
            self.is_bare = true;
            self.comments.push(plainly(typed.text(at, end)));
            return Some(end);
        }
        let mut end = at;
        while typed.says(end, &["measured", "taped", "to", "from", "the", "walls"]) {
            end += 1;
        }
        let face = match typed.lower(end).as_str() {
            "inside" | "interior" | "drywall" => "inside",
            "outside" | "exterior" => "outside",
            "frame" | "studs" | "framing" => "frame",
            _ => return None,
        };
        if self.face.is_some() || end == at || !typed.says(at, &["measured", "taped", "to"]) {
            return None;
        }
        self.face = Some(face);
        Some(end + 1)
    }
}
