//! The line of a space, put together from whatever parts of it can be recognized, in any order.

use super::super::pieces::{Piece, Sort};
use super::levels::capitalized;
use super::loose::kind_at_start;
use super::measure::{area_at, length_at};
use super::{Answer, Typed, digits, is_text, kind_word, plainly, quoted};

/// What a line says of a space.
struct Space {
    kind: &'static str,
    name: String,
    face: Option<&'static str>,
    within: Option<String>,
    place: Option<String>,
    /// Whether the place is a corner that is called by its name alone.
    by_name: bool,
    under: Option<String>,
    is_bare: bool,
    counted: Option<bool>,
    recorded: Option<String>,
    comments: Vec<String>,
    /// Whether something is left that may say where the space is or how large it is.
    is_unclear: bool,
}

/// `covered porch from step`, `garage "Garage" @ step`: a corner that is called by its name alone.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let space = read(typed).filter(|space| space.by_name && !space.is_unclear)?;
    let line = space.line();
    (line != typed.line).then(|| {
        Answer::line(
            line,
            "a space has its kind, its name, then `from corner` and the name of the corner",
        )
    })
}

/// `patio (slab only) from corner "step"`, `wood shed detached 80 sf on card`, `screened-in porch 10 x 10`: the line of
/// a space that nothing else could read.
pub(super) fn left_over(typed: &Typed<'_>) -> Option<Answer> {
    // What the parser says of a word that is out of place is better.
    let is_told = typed.attempt.word == Some(crate::diagnostic::Word::OutOfPlace);
    let space = read(typed).filter(|_| !is_told && !typed.says(0, &["sunroom"]))?;
    let cause = "the line of a space has its kind, its name, its place, and its area on the record";
    let is_first = typed.attempt.space.is_none() && space.kind == "living";
    let needs_no_place = is_first || space.place.is_some();
    let has_size = space.comments.iter().any(|comment| super::size_in(comment).is_some());
    let sides_follow = super::super::begins_as_side(&typed.attempt.beside.after);
    if !space.is_unclear
        && (needs_no_place || space.within.is_some())
        && (!has_size || sides_follow)
    {
        return Some(Answer::line(space.line(), cause));
    }
    let known = typed.attempt.space.clone().unwrap_or_else(|| "House".to_owned());
    let corner = typed.attempt.beside.corners.first();
    let corner = corner.map_or_else(String::new, |corner| format!("`from corner \"{corner}\"`, "));
    let place = if needs_no_place || space.within.is_some() {
        String::new()
    } else {
        format!(
            ", then its place ({corner}`from \"{known}\" corner` and a number, `start` with a way and a length, `within \"{known}\"` or `detached`)"
        )
    };
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
            "write `{}`{place}{after}; anything else goes to the end of the line, after a `#`{sides}",
            space.before_place()
        ),
    ))
}

impl Space {
    fn before_place(&self) -> String {
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

    fn after_place(&self) -> String {
        let mut parts: Vec<String> = Vec::new();
        parts.extend(self.under.clone());
        if self.is_bare {
            parts.push("veneer none".to_owned());
        }
        match self.counted {
            Some(true) => parts.push("counted".to_owned()),
            Some(false) => parts.push("not counted".to_owned()),
            None => {}
        }
        parts.extend(self.recorded.as_ref().map(|area| format!("recorded {area}")));
        parts.join(" ")
    }

    fn line(&self) -> String {
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
const NOT_BEFORE: [&str; 56] = [
    "north", "south", "east", "west", "n", "s", "e", "w", "no", "not", "minus", "less", "without",
    "with", "record", "records", "listing", "plan", "figure", "county", "missing", "level", "lot",
    "corner", "total", "here", "start", "starts", "begin", "begins", "end", "ends", "this", "that",
    "see", "same", "overall", "note", "to", "of", "from", "at", "in", "on", "through", "is", "was",
    "has", "measured", "value", "tie", "house", "by", "next", "card", "cnty",
];

/// Words that say where a space is, or something else that no comment may take in.
const PLACES: [&str; 57] = [
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
    "below",
    "above",
    "grade",
    "minus",
    "no",
    "not",
    "without",
    "of",
    "off",
    "by",
    "under",
    "over",
    "same",
    "as",
    "measured",
    "to",
    "veneer",
    "brick",
    "wall",
    "gone",
    "removed",
    "torn",
    "missing",
    "along",
    "between",
    "shares",
    "adjoining",
    "where",
    "sold",
    "story",
];

/// The kind that a word means, if it is the last word of what a space is called.
fn called(word: &str) -> Option<&'static str> {
    kind_word(word).filter(|kind| !["open", "low", "living"].contains(kind)).or(match word {
        "gar" | "garge" | "gargage" => Some("garage"),
        "shed" | "barn" | "workshop" => Some("outbuilding"),
        "suite" | "apartment" | "addition" | "bedroom" | "kitchen" | "den" | "study" => {
            Some("living")
        }
        "veranda" | "lanai" | "stoop" => Some("porch"),
        "eaves" | "kneewall" => Some("low"),
        "stairs" | "stairwell" | "staircase" => Some("stair"),
        "foyer" | "atrium" => Some("open"),
        _ => None,
    })
}

/// The kind, the first piece after it, and the name that the words give it.
fn kind(typed: &Typed<'_>) -> Option<(&'static str, usize, String)> {
    if let Some((kind, at)) = kind_at_start(typed) {
        let name = capitalized(&typed.text(0, at).to_lowercase());
        return Some((kind, at, name));
    }
    let at = (0..typed.pieces.len().min(5)).find(|&at| called(&typed.lower(at)).is_some())?;
    let kind = called(&typed.lower(at))?;
    let describes = |piece: &Piece| {
        (piece.sort == Sort::Word && !piece.is_word(&NOT_BEFORE))
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
fn read(typed: &Typed<'_>) -> Option<Space> {
    let (kind, mut at, name) = kind(typed)?;
    let before_is_detached =
        typed.find(0, &["detached", "det", "freestanding"]).is_some_and(|first| first < at);
    let mut space = Space {
        kind,
        name: quoted(&name),
        face: None,
        within: None,
        place: before_is_detached.then(|| "detached".to_owned()),
        by_name: false,
        under: None,
        is_bare: false,
        counted: None,
        recorded: None,
        comments: Vec::new(),
        is_unclear: false,
    };
    if is_text(typed.piece(at)) {
        space.name = typed.text(at, at + 1).to_owned();
        at += 1;
    }
    let mut remark: Option<usize> = None;
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
            space.is_unclear |= piece.sort == Sort::Text
                || piece.is_word(&PLACES) && !is_with
                || piece.is_number() && !counts;
            remark.get_or_insert(at);
        }
        at += 1;
    }
    space.remark(typed, remark, at);
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
        if self.place.is_none() {
            if let Some((name, end)) = corner_by_name(typed, at) {
                self.place = Some(format!("from corner \"{name}\""));
                self.by_name = true;
                return Some(end);
            }
            if let Some((place, end)) = place(typed, at) {
                self.place = Some(place);
                return Some(end);
            }
        }
        if let Some(end) = detached(typed, at) {
            self.place.get_or_insert_with(|| "detached".to_owned());
            return Some(end);
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
        self.size(typed, at)
            .or_else(|| self.under(typed, at))
            .or_else(|| self.counted(typed, at))
            .or_else(|| self.recorded(typed, at))
            .or_else(|| self.face(typed, at))
    }

    /// `10 x 10`: a comment, since a size is typed as its sides.
    fn size(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        let one = length_at(&typed.pieces, at)?;
        let by = typed.says(one.end, &["x", "by"])
            || typed.piece(one.end).is_some_and(|mark| mark.is_mark("×*"));
        let two = length_at(&typed.pieces, one.end + 1).filter(|_| by)?;
        self.comments.push(plainly(typed.text(at, two.end)));
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
        self.under = Some(format!("under {}", measure.text));
        let end = (measure.end..typed.pieces.len()).find(|&at| !is_said(at));
        Some(end.unwrap_or(typed.pieces.len()))
    }

    /// `not included`, `don't count it`, `counted`.
    fn counted(&mut self, typed: &Typed<'_>, at: usize) -> Option<usize> {
        let count = ["count", "counted", "counts", "include", "included", "incl"];
        let no = ["not", "dont", "don't", "isn't", "never", "no"];
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
            "district",
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
            || says_so(end, stop)
                && length_at(&typed.pieces, first).is_some_and(|one| !one.has_unit);
        let is_year = !has_unit
            && number.text.len() == 4
            && (number.text.starts_with("19") || number.text.starts_with("20"));
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

/// `from step`, `@ step`, `starts at the step corner`: a corner that has a name.
fn corner_by_name(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    let joints = [
        "from",
        "at",
        "on",
        "start",
        "starts",
        "starting",
        "begins",
        "beginning",
        "attached",
        "to",
        "the",
        "corner",
        "in",
        "off",
    ];
    let mut first = at;
    while typed.says(first, &joints) || typed.piece(first).is_some_and(|mark| mark.is_mark("@:,")) {
        first += 1;
    }
    let is_placed = (at..first).any(|at| {
        typed.says(
            at,
            &["from", "at", "start", "starts", "starting", "begins", "corner", "attached"],
        ) || typed.pieces[at].is_mark("@")
    });
    let corners = typed.attempt.beside.corners.iter().filter(|_| is_placed);
    let mut found = corners.filter_map(|corner| {
        let end = first + super::cut(corner).len();
        let end = if is_text(typed.piece(first)) { first + 1 } else { end };
        let said = typed.name(first, end.min(typed.pieces.len()));
        said.eq_ignore_ascii_case(corner).then(|| (corner.to_string(), end))
    });
    let (name, end) = found.next()?;
    Some((name, end + usize::from(typed.says(end, &["corner"]))))
}

/// `start east 10' north 4'`, `from "House" corner 4`, `at corner 4 of the house`: a place as the format has it, or
/// nearly so.
fn place(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    const WAYS: [&str; 8] = ["north", "east", "south", "west", "n", "e", "s", "w"];
    if typed.says(at, &["start", "starts"]) {
        let mut end = at + 1;
        for _ in 0..2 {
            match length_at(&typed.pieces, end + 1).filter(|_| typed.says(end, &WAYS)) {
                Some(measure) => end = measure.end,
                None => break,
            }
        }
        return (end > at + 1).then(|| (format!("start {}", typed.text(at + 1, end)), end));
    }
    let mut first = at;
    while typed.says(first, &["from", "at", "start", "starts", "the", "on", "to"]) {
        first += 1;
    }
    if first == at {
        return None;
    }
    let named = typed.piece(first).filter(|name| is_text(Some(name)));
    let corner = first + usize::from(named.is_some());
    let number = typed
        .piece(corner + 1)
        .filter(|number| typed.says(corner, &["corner"]) && digits::is_small(number))?;
    let known = typed.attempt.space.clone()?;
    let mut end = corner + 2;
    if named.is_none() && typed.says(end, &["of", "on"]) {
        end += 1;
        end += usize::from(typed.says(end, &["the"]));
        let name = typed.name(end, end + 1);
        if !name.eq_ignore_ascii_case(&known) && !typed.says(end, &["house"]) {
            return None;
        }
        end += 1;
    }
    let name = named.map_or_else(|| quoted(&known), |name| name.text.clone());
    Some((format!("from {name} corner {}", number.text), end))
}

fn detached(typed: &Typed<'_>, at: usize) -> Option<usize> {
    let all = [
        &["not", "attached"][..],
        &["stands", "alone"],
        &["standing", "alone"],
        &["free", "standing"],
        &["detached"],
        &["freestanding"],
        &["free-standing"],
        &["stand-alone"],
        &["det"],
    ];
    let says =
        |words: &&&[&str]| words.iter().enumerate().all(|(i, word)| typed.says(at + i, &[word]));
    all.iter().find(says).map(|words| at + words.len())
}
