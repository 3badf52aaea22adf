//! Lines that read and yet must not be suggested, since they would take what was typed for something else.

use super::comment_of;
use super::pieces::{Piece, Sort, cut};

/// Words that no name of a space or a level has in it: they say where it is, or who said something of it.
const NO_NAME: [&str; 32] = [
    "grade",
    "det",
    "att",
    "no",
    "record",
    "to",
    "start",
    "detached",
    "freistehend",
    "freestanding",
    "separate",
    "torn",
    "called",
    "named",
    "starts",
    "starting",
    "begins",
    "corner",
    "inside",
    "measured",
    "recorded",
    "county",
    "cnty",
    "assessor",
    "same",
    "says",
    "of",
    "taped",
    "where",
    "n",
    "e",
    "w",
];
/// Words that must stay outside the comment of a space.
const NO_COMMENT: [&str; 12] = [
    "count", "counts", "counted", "dont", "include", "included", "exclude", "excluded", "start",
    "starts", "starting", "where",
];

/// Whether a suggested line takes a size, a length, a place or a remark of the typed line for a name, or leaves out of
/// the line what counts.
pub(super) fn is_doubtful(typed: &str, offered: &str) -> bool {
    // A corner that nobody named.
    if offered.contains("\ncorner ") && !typed.to_lowercase().contains("corner") {
        return true;
    }
    // `at the inside corner`: where it stands, and no face.
    if offered.contains("measured to inside") && typed.to_lowercase().contains("inside corner") {
        return true;
    }
    // `1st floor (no basement)`: the basement is another level, or none.
    let lower = typed.to_lowercase();
    let in_the_ground = cut(comment_of(offered.lines().next().unwrap_or_default()).0)
        .windows(2)
        .any(|two| two[0].is_word(&["below"]) && two[1].is_word(&["grade"]));
    if in_the_ground && !lower.contains("below") && super::kinds::is_of_another_level(&lower) {
        return true;
    }
    // A size makes no land of a word that is only nearly `lot`.
    let land = ["lot", "lots", "parcel", "plot", "deed", "tract", "land", "site", "acre", "acres"];
    if offered.starts_with("lot ")
        && super::kinds::size_in(typed).is_some()
        && !cut(typed).iter().any(|piece| piece.is_word(&land))
    {
        return true;
    }
    // `N45E 100'` is one call, and not two walls.
    let first = cut(typed);
    let is_call = first.len() > 2
        && first[0].is_word(&["n", "s"])
        && first[1].is_number()
        && first[2].is_word(&["e", "w"])
        && first[1].touches
        && first[2].touches;
    if is_call && offered.contains('\n') || misplaces(&first, offered) {
        return true;
    }
    offered.lines().filter(|line| !line.starts_with('#')).any(|line| {
        let (said, comment) = comment_of(line);
        let pieces = cut(said);
        // A remark that was typed in parentheses was meant as one.
        let new = comment.filter(|comment| {
            !typed.contains('#') && !typed.contains(&format!("({}", comment.trim()))
        });
        text_is_doubtful(typed, &pieces)
            || new.is_some_and(|comment| comment_is_doubtful(comment, &pieces))
            || counts_by_mistake(typed, &pieces)
            || says_more(typed, &pieces)
            || loses_words(typed, &pieces, comment)
    })
}

/// Whether the suggestion starts a space where its walk begins though the line says how far it is from a wall or a
/// numbered corner; `start` counts from corner 1.
fn misplaces(typed: &[Piece], offered: &str) -> bool {
    let (said, _) = comment_of(offered);
    let starts = cut(said).iter().any(|piece| piece.is_word(&["start"]));
    let has_corner = cut(said).iter().any(|piece| piece.is_word(&["corner"]));
    let ways = ["north", "south", "east", "west", "left", "right", "back", "front", "rear"];
    let from_wall = typed.windows(3).any(|three| {
        let [from, way, wall] = three else { return false };
        from.is_word(&["from", "the"])
            && way.is_word(&ways)
            && wall.is_word(&["wall", "side", "end", "edge"])
    }) && typed.iter().any(|piece| piece.is_word(&["from", "off"]));
    let from_corner = typed
        .windows(2)
        .any(|two| two[0].is_word(&["corner"]) && two[1].is_number() && two[1].text != "1");
    starts && (from_wall || from_corner && !has_corner)
}

/// Whether the suggestion makes a comment of a line that opens a space or a level, or says what the walls are.
pub(super) fn hides(typed: &str, offered: &str) -> bool {
    let pieces = cut(typed);
    let word = |at: usize| pieces.get(at).map_or(String::new(), |piece| piece.text.to_lowercase());
    let says_much = [
        "no",
        "all",
        "alles",
        "todo",
        "tout",
        "everything",
        "start",
        "starts",
        "minus",
        "less",
        "deduct",
        "same",
        "ditto",
    ];
    let has_data = ["outline", "recorded", "veneer", "grade"];
    let has_data = pieces.iter().any(|piece| piece.is_word(&has_data));
    let counts_rooms = pieces.iter().any(Piece::is_number) && word(0).ends_with('s');
    let opens = crate::sketch::phrases::opens_space(&word(0), &word(1)) && !counts_rooms
        || super::kinds::kind_word(&word(0)).is_some()
        || says_much.contains(&word(0).as_str());
    let begins_there = pieces.windows(2).any(|two| {
        two[0].is_word(&["starts", "start", "begins", "begin", "is"])
            && super::kinds::kind_word(&two[1].text.to_lowercase()).is_some()
    });
    let is_level = pieces.len() <= 6
        && pieces.iter().any(|piece| piece.is_word(&["level", "storey", "story", "floor"]))
        && !pieces.iter().any(Piece::is_number);
    let is_placed =
        pieces.windows(2).any(|two| two[0].is_word(&["from", "at"]) && two[1].sort == Sort::Word)
            && pieces.iter().any(|piece| piece.is_word(&["room", "addition", "house", "closet"]));
    // `first floor - no crawlspace or basement` opens a level, whatever else it says.
    let is_level = is_level
        || super::kinds::names_a_level(typed)
            && super::kinds::is_of_another_level(&typed.to_lowercase());
    let is_point = pieces
        .iter()
        .any(|piece| piece.is_word(&["corner", "tolerance", "tol", "front", "fronts"]));
    let has_word = |words: &[&str]| pieces.iter().any(|piece| piece.is_word(words));
    let is_open = has_word(&["open"]) && has_word(&["foyer", "hall", "loft", "below", "entry"]);
    offered.starts_with("# ")
        && (is_open || is_placed || is_point || opens || has_data || begins_there || is_level)
}

/// Whether the size that a line gives is neither the sides of the space that is offered nor its area on the record.
pub(super) fn loses_a_size(typed: &str, offered: &str) -> bool {
    let Some(size) = super::kinds::size_in(typed) else { return false };
    let first = cut(offered);
    let is_space = first
        .first()
        .is_some_and(|word| super::kinds::kind_word(&word.text.to_lowercase()).is_some());
    let has_sides = offered.lines().skip(1).filter(|line| super::begins_as_side(line)).count() >= 4;
    let says_record =
        ["recorded", "record", "rec", "county", "card", "assessor", "cad", "rec'd", "recd", "roll"];
    let is_recorded = cut(typed).iter().any(|piece| piece.is_word(&says_record));
    let is_there = offered.contains(size) && comment_of(offered).0.contains(size);
    is_space && !has_sides && !is_recorded && !is_there
}

/// A word of the format that says something of a space, and is no name.
fn is_of_the_format(text: &str) -> bool {
    let words = [
        "frame",
        "outside",
        "inside",
        "tolerance",
        "flat",
        "rise",
        "round",
        "common",
        "veneer",
        "none",
        "estimated",
        "counting",
        "under",
        "within",
        "detached",
        "measured",
        "counted",
        "closing",
        "start",
        "from",
        "not",
        "seen",
        "beside",
        "interior",
        "exterior",
        "attached",
        "framing",
        "studs",
        "no",
        "by",
        "x",
    ];
    let pieces = cut(text);
    matches!(&pieces[..], [only] if only.is_word(&words))
}

/// What says something of a space and does not call it: a loose mark, that it stands apart or is gone, a face.
fn says_something_of_it(text: &str) -> bool {
    let pieces = cut(text);
    let unbalanced = text.matches('(').count() != text.matches(')').count();
    let begins = text.starts_with(['/', '&', '-', ',', ')', '+', '.']);
    let says = [
        "attached",
        "alone",
        "standing",
        "apart",
        "itself",
        "anymore",
        "demolished",
        "razed",
        "removed",
        "gone",
    ];
    let faces = ["inside", "outside", "interior", "exterior", "framing", "studs", "drywall"];
    let ends_in_a_face = pieces.len() > 1 && pieces.last().is_some_and(|last| last.is_word(&faces));
    let half_a_size = pieces.last().is_some_and(|last| last.is_word(&["x", "by"]))
        || pieces.windows(2).any(|two| two[0].is_number() && two[1].is_word(&["x", "by"]));
    let reaches = pieces
        .windows(2)
        .any(|two| two[0].is_word(&["open"]) && two[1].is_word(&["above", "below", "to"]));
    unbalanced
        || begins
        || ends_in_a_face
        || half_a_size
        || reaches
        || pieces.iter().any(|piece| piece.is_word(&says))
}

fn is_named(pieces: &[Piece]) -> bool {
    pieces.first().is_some_and(|first| {
        let word = first.text.to_lowercase();
        super::kinds::kind_word(&word).is_some()
            || matches!(word.as_str(), "level" | "lot" | "corner")
    })
}

fn plain(text: &str) -> &str {
    text.trim_matches(['"', '“', '”'])
}

fn text_is_doubtful(typed: &str, pieces: &[Piece]) -> bool {
    let is_new = |piece: &&Piece| {
        piece.sort == Sort::Text && !typed.contains(&format!(" \"{}", plain(&piece.text)))
    };
    let texts = pieces.iter().enumerate().filter(|(_, piece)| is_new(piece));
    let mut texts = texts.map(|(at, piece)| (at, plain(&piece.text)));
    texts.any(|(at, text)| {
        let is_name = at == 1 && is_named(pieces);
        let is_note = at > 0 && pieces[at - 1].is_word(&["note"]);
        let letters = text.chars().filter(|c| c.is_alphabetic()).count();
        let roughly = ["approx", "ca", "about", "circa", "says", "around", "approximately"];
        let stands_at = ["at", "near", "behind", "on", "by", "off", "beside"];
        let is_place = stands_at.iter().any(|word| typed.contains(&format!(" {word} {text}")));
        !text.contains(char::is_alphanumeric)
            || cut(text).iter().all(|piece| piece.is_word(&roughly) || piece.sort == Sort::Mark)
            || is_name && is_place
            || text.starts_with("of ")
            || is_name && text.starts_with('(')
            || is_name && is_of_the_format(text)
            || is_name
                && !pieces[0].is_word(&["level", "lot", "corner"])
                && says_something_of_it(text)
            || is_name && is_only_a_side(text)
            || is_name && !pieces[0].is_word(&["open", "level"]) && begins_as_place(text)
            || is_name && text.contains(", not ")
            || is_name && !pieces[0].is_word(&["level", "lot", "corner"]) && counts_something(text)
            || is_name && pieces[0].is_word(&["unfinished"]) && says_finished(text)
            || is_name && typed.contains(&format!("({text}"))
            || is_note && letters < 2
            || is_name && text != "to below" && !is_numbered(text) && is_no_name(text)
            || (is_name || is_note && !typed.contains("note")) && takes_a_mark(typed, text)
    })
}

/// `Floor 1 of 2`: the name of a level by its number.
fn is_numbered(text: &str) -> bool {
    let pieces = cut(text);
    let number =
        |at: usize| pieces.get(at).is_some_and(|piece| piece.is_number() && piece.text.len() < 3);
    pieces.len() == 4 && number(1) && pieces[2].is_word(&["of"]) && number(3)
}

/// `24x22`, `called`, `0.35`: no name.
pub(super) fn is_no_name(text: &str) -> bool {
    let pieces = cut(text);
    let is_number = |at: usize| pieces.get(at).is_some_and(Piece::is_number);
    let is_size = (1..pieces.len()).any(|at| {
        is_number(at - 1)
            && is_number(at + 1)
            && (pieces[at].is_word(&["x", "by"]) || pieces[at].is_mark("×*"))
    });
    let first = |words: &[&str]| pieces.first().is_some_and(|piece| piece.is_word(words));
    let is_place = first(&["on", "at", "in", "not", "near", "area"]);
    let numbered = ["street", "st", "unit", "apt", "apartment", "suite", "room", "building"];
    let is_area = pieces.iter().any(|number| number.is_number() && number.text.len() == 3)
        && !pieces.iter().any(|piece| piece.is_word(&numbered));
    let is_area = is_area || pieces.len() == 1 && pieces[0].is_number() && pieces[0].text.len() > 3;
    let places = ["north", "east", "south", "west", "side", "the", "left", "right", "end", "of"];
    let is_place = is_place || pieces.len() > 1 && pieces.iter().all(|p| p.is_word(&places));
    let is_decimal = pieces.len() == 1 && is_number(0) && text.contains(['.', ',']);
    let is_figure =
        pieces.iter().any(|piece| piece.is_number() && piece.text.contains(',') && text.len() > 4);
    is_size
        || is_place
        || is_area
        || is_decimal
        || is_figure
        || (1..pieces.len()).any(|at| pieces[at].is_word(&["from"]))
        || pieces.len() > 1
            && pieces
                .last()
                .is_some_and(|last| last.is_word(&["brick", "stone", "vinyl", "stucco"]))
        || pieces.iter().any(|piece| piece.is_word(&NO_NAME))
}

/// Whether a number of the text has the mark of feet or inches in the typed line.
fn takes_a_mark(typed: &str, text: &str) -> bool {
    // Where the text stands in the line as it is, the same number elsewhere in the line is another one.
    let stands = typed.find(text).map(|at| &typed[at..]);
    let typed = stands.map_or(typed, |from| {
        let next = from[text.len()..].chars().next().map_or(0, char::len_utf8);
        &from[..text.len() + next]
    });
    cut(text).iter().filter(|piece| piece.is_number()).any(|number| {
        typed.match_indices(number.text.as_str()).any(|(at, found)| {
            let after = typed[at + found.len()..].chars().next();
            let before = typed[..at].chars().next_back();
            !before.is_some_and(|c| c.is_ascii_digit() || matches!(c, '.' | '/'))
                && after.is_some_and(|c| "'\"’”′″".contains(c))
        })
    })
}

fn comment_is_doubtful(comment: &str, pieces: &[Piece]) -> bool {
    let is_empty = !comment.contains(char::is_alphanumeric);
    // Where it stands, of a space that has no place.
    let places = ["start", "from", "within", "detached"];
    let stands = [
        "ne",
        "nw",
        "se",
        "sw",
        "north",
        "south",
        "east",
        "west",
        "behind",
        "beside",
        "next",
        "shares",
        "corner",
        "adjoining",
    ];
    let is_placed = pieces.iter().any(|piece| piece.is_word(&places));
    let is_space = is_named(pieces) && !pieces[0].is_word(&["level", "lot", "corner"]);
    let loses_place =
        is_space && !is_placed && cut(comment).iter().any(|piece| piece.is_word(&stands));
    let lower = comment.to_lowercase();
    let loses_veneer =
        is_space && ["no brick", "no veneer", "without brick"].iter().any(|no| lower.contains(no));
    is_empty
        || loses_place
        || loses_veneer
        || is_named(pieces)
            && !pieces[0].is_word(&["corner"])
            && cut(comment).iter().any(|piece| piece.is_word(&NO_COMMENT))
}

/// `2 sides open`: a count, and no name.
fn counts_something(text: &str) -> bool {
    let pieces = cut(text);
    let is_count = pieces.first().is_some_and(Piece::is_number)
        && pieces.get(1).is_some_and(|next| !next.touches && next.sort == Sort::Word);
    let named =
        ["car", "cars", "stall", "bay", "story", "storey", "bed", "bedroom", "season", "seasons"];
    is_count && !pieces.iter().any(|piece| piece.is_word(&named))
}

/// `rear`, `to the left`: on which side of the house it stands.
fn is_only_a_side(text: &str) -> bool {
    let sides =
        ["rear", "back", "front", "left", "right", "side", "to", "the", "level", "attached"];
    cut(text).iter().all(|piece| piece.is_word(&sides))
}

/// `under bedrooms`, `off bedroom`: where it is.
fn begins_as_place(text: &str) -> bool {
    let first = [
        "under", "off", "over", "above", "between", "behind", "beside", "outside", "inside",
        "around", "since", "from", "by", "next",
    ];
    let pieces = cut(text);
    pieces.len() > 1 && pieces[0].is_word(&first)
}

fn says_finished(text: &str) -> bool {
    cut(text).iter().any(|piece| piece.is_word(&["finished", "heated"]))
}

/// A place or a face that the line does not say: `within` made of `of`, `measured to outside` made of `no brick`.
fn says_more(typed: &str, pieces: &[Piece]) -> bool {
    let said = cut(typed);
    let says = |words: &[&str]| said.iter().any(|piece| piece.is_word(words));
    let has = |word: &str| pieces.iter().any(|piece| piece.is_word(&[word]));
    let at = |word: &str| pieces.iter().position(|piece| piece.is_word(&[word]));
    let takes_a_size = at("from").and_then(|from| pieces.get(from + 1)).is_some_and(|name| {
        name.sort == Sort::Text
            && !typed.contains(name.text.as_str())
            && plain(&name.text).contains(|c: char| c.is_ascii_digit())
    });
    let corner = at("corner").and_then(|corner| pieces.get(corner + 1));
    let wrong_corner = corner.is_some_and(|name| {
        name.sort == Sort::Text
            && !typed.contains(name.text.as_str())
            && plain(&name.text).starts_with(|c: char| c.is_ascii_digit())
    });
    let of_house = says(&["back", "front", "rear", "side", "left", "right"]) && says(&["of"]);
    let not_common = ["not common", "common area", "common room", "common space", "common hall"];
    let lower = typed.to_lowercase();
    let memory =
        ["drawing", "drawings", "plan", "plans", "photo", "record", "listing", "memory", "card"];
    let sides =
        ["left", "right", "back", "front", "rear", "side", "house", "wall", "end", "middle"];
    let no_corner = corner.is_some_and(|name| {
        name.sort == Sort::Text
            && sides.contains(&plain(&name.text).to_lowercase().as_str())
            && !says(&["corner"])
    });
    let no_corner = no_corner
        || corner.is_some_and(|name| {
            name.sort == Sort::Text
                && memory.contains(&plain(&name.text).to_lowercase().as_str())
                && !says(&["corner"])
        });
    no_corner
        || has("common") && not_common.iter().any(|words| lower.contains(words))
        || is_named(pieces)
            && has("within")
            && of_house
            && !says(&["within", "inside", "in", "part"])
        || has("outside")
            && says(&["brick"])
            && says(&["veneer"])
            && !says(&["outside", "exterior", "measured"])
        || has("within") && within_itself(pieces)
        || has("figure") && says(&["tape", "laser", "instrument"])
        || has("outside") && says(&["no", "without"]) && !says(&["outside", "exterior"])
        || takes_a_size
        || takes_a_year(&said, pieces)
        || has("start")
            && says(&["of"])
            && says(&["house", "garage", "porch"])
            && !says(&["corner"])
        || has("detached") && has("from") && !says(&["from"])
        || has("tolerance") && !says(&["tolerance"]) && pieces.last().is_some_and(Piece::is_number)
        || wrong_corner
}

/// `recorded 1998 sq ft` or `recorded 1 sq ft` made of a year or a count.
fn takes_a_year(typed: &[Piece], pieces: &[Piece]) -> bool {
    let units = [
        "recorded", "record", "sq", "sf", "sqft", "ft", "square", "m", "sqm", "ac", "acre",
        "acres", "ha", "hectare", "hectares",
    ];
    if typed.iter().any(|piece| piece.is_word(&units)) {
        return false;
    }
    let at = pieces.iter().position(|piece| piece.is_word(&["recorded"]));
    let number =
        at.and_then(|at| pieces.get(at + 1)).and_then(|area| area.text.parse::<u32>().ok());
    number.is_some_and(|area| area < 20 || (1800..2100).contains(&area))
}

/// Words of the format, a unit or a number in words that a new note, title or comment takes in.
fn loses_words(typed: &str, pieces: &[Piece], comment: Option<&str>) -> bool {
    let is_new = |text: &str| !typed.contains(&format!("\"{text}"));
    let notes = pieces.iter().enumerate().filter(|(at, piece)| {
        piece.sort == Sort::Text && *at > 0 && pieces[at - 1].is_word(&["note"])
    });
    let notes = notes.map(|(_, piece)| plain(&piece.text)).filter(|text| is_new(text));
    let is_outline = pieces.iter().any(|piece| piece.is_word(&["outline"]));
    let is_figure =
        pieces.first().is_some_and(|first| first.is_word(&["record", "listing", "plan", "figure"]));
    let titles = pieces.iter().filter(|piece| is_figure && piece.sort == Sort::Text);
    let titles = titles.map(|piece| plain(&piece.text)).filter(|text| is_new(text));
    let faces = ["frame", "studs"];
    let new = comment
        .map(str::trim)
        .filter(|comment| !typed.contains('#') && !typed.contains(&format!("({comment}")));
    let is_side =
        pieces.first().is_some_and(|way| super::compass::way_and_back(&way.text).is_some());
    let kinds = |pieces: &[Piece]| {
        let said: String = pieces.iter().map(|piece| format!("{} ", plain(&piece.text))).collect();
        let is_kind =
            |piece: &&Piece| super::kinds::kind_word(&piece.text.to_lowercase()).is_some();
        cut(&said).iter().filter(is_kind).count()
    };
    let counts = pieces.iter().any(|piece| piece.is_word(&["counting"]));
    let counts_fewer = is_figure && counts && kinds(&cut(typed)) > kinds(pieces);
    let figure_of_a_part = !typed.to_lowercase().starts_with("figure")
        && pieces.first().is_some_and(|first| first.is_word(&["figure"]))
        && (cut(typed)
            .iter()
            .any(|piece| piece.is_word(&["detached", "attached", "workshop", "shed", "barn"]))
            || kinds(&pieces[1..]) > 0
            || typed.to_lowercase().contains("room "));
    let adds =
        is_side && typed.contains('+') && pieces.iter().any(|piece| piece.is_word(&["note"]));
    counts_fewer
        || figure_of_a_part
        || adds
        || notes.into_iter().any(takes_words)
        || is_side && new.is_some_and(takes_words)
        || titles.into_iter().any(|title| {
            cut(title).iter().any(|piece| piece.is_word(&faces))
                || is_outline && (title.starts_with("of ") || title.starts_with("for "))
        })
        || new.is_some_and(|comment| {
            is_outline && (comment.starts_with("for ") || !comment.contains(' '))
                || cut(comment).iter().all(|piece| piece.is_word(&UNITS))
                || pieces.first().is_some_and(|first| first.is_word(&["record", "listing", "plan"]))
                    && ["listing ", "record ", "plan "].iter().any(|word| comment.starts_with(word))
        })
}

const UNITS: [&str; 12] = [
    "mètres", "metros", "metern", "pies", "pieds", "pulgadas", "pouces", "ish", "feet", "inches",
    "meters", "cm",
];

/// Whether a note takes in a word of a side, or is nothing but a part of the length.
fn takes_words(note: &str) -> bool {
    let pieces = cut(note);
    let word = |at: usize, words: &[&str]| pieces.get(at).is_some_and(|piece| piece.is_word(words));
    let ends = |words: &[&str]| pieces.last().is_some_and(|piece| piece.is_word(words));
    let pair = (1..pieces.len()).any(|at| {
        word(at - 1, &["from"]) && word(at, &["plan", "record"])
            || word(at - 1, &["veneer"]) && word(at, &["none"])
    });
    let parts = ["and", "a", "half", "quarter", "quarters", "point", "eighth", "one"];
    let is_number = |piece: &Piece| {
        super::lengths::is_spoken_number(&piece.text)
            || piece.is_word(&parts)
            || piece.is_word(&UNITS)
    };
    let ways = ["n", "e", "s", "w", "north", "east", "south", "west"];
    let has_wall = (1..pieces.len()).any(|at| word(at - 1, &ways) && pieces[at].is_number());
    let records = ["card", "record", "rec", "county", "cad", "assessor"];
    let has_record =
        pieces.iter().any(Piece::is_number) && pieces.iter().any(|piece| piece.is_word(&records));
    let roughly = ["by eye", "paced", "eyeballed", "guessed", "by pacing", "per plan", "per plans"];
    ends(&["common", "estimated"])
        || pieces.first().is_some_and(|unit| unit.is_word(&UNITS))
        || pair
        || has_wall
        || has_record
        || roughly.contains(&note.to_lowercase().as_str())
        || !pieces.is_empty() && pieces.iter().all(is_number)
}

/// `counted` made of `county` or of nothing.
fn counts_by_mistake(typed: &str, pieces: &[Piece]) -> bool {
    let says = ["count", "counts", "counted", "counting", "include", "included", "includes"];
    let out = ["excluded", "exclude", "excluding", "uncounted", "incl", "included", "not", "no"];
    is_named(pieces)
        && pieces.iter().any(|piece| piece.is_word(&["counted"]))
        && !pieces.iter().any(|piece| piece.is_word(&["not"]))
        && !cut(typed).iter().any(|piece| piece.is_word(&says) || piece.is_word(&out))
}

/// `porch "Porch" within "Porch"`, `counted within "Porch"`: no space is within another of its kind by the word `in`.
fn within_itself(pieces: &[Piece]) -> bool {
    let counted =
        pieces.windows(2).any(|two| two[0].is_word(&["counted"]) && two[1].is_word(&["within"]));
    let kind = pieces.first().map_or("", |kind| kind.text.as_str());
    counted
        || pieces.windows(2).any(|two| {
            two[0].is_word(&["within"]) && plain(&two[1].text).eq_ignore_ascii_case(kind)
        })
}

/// Whether a suggested line takes the name of a corner for a part of another name, or for a remark.
pub(super) fn misses_a_corner(typed: &str, offered: &str, corners: &[std::rc::Rc<str>]) -> bool {
    let lower = typed.to_lowercase();
    let names_it = |corner: &str| {
        let corner = corner.to_lowercase();
        [" from ", " at ", " @ ", " start "]
            .iter()
            .any(|word| lower.contains(&format!("{word}{corner}")))
    };
    if offered.starts_with("# ") {
        return corners.iter().any(|corner| names_it(corner));
    }
    let pieces = cut(comment_of(offered).0);
    // `9' from left corner`: a side of the house, and no corner of this name.
    const SIDES: [&str; 9] =
        ["left", "right", "back", "front", "rear", "near", "far", "house", "garage"];
    let is_a_side = pieces.windows(2).any(|two| {
        two[0].is_word(&["corner"])
            && SIDES.contains(&plain(&two[1].text).to_lowercase().as_str())
            && two[1].sort == Sort::Text
            && !typed.contains(two[1].text.as_str())
    });
    if is_a_side && !pieces[0].is_word(&["corner"]) {
        let named = |corner: &std::rc::Rc<str>| SIDES.contains(&corner.to_lowercase().as_str());
        if !corners.iter().any(named) {
            return true;
        }
    }
    pieces.iter().enumerate().any(|(at, piece)| {
        let text = plain(&piece.text).to_lowercase();
        let is_new = piece.sort == Sort::Text && !typed.contains(piece.text.as_str());
        let is_corner = at > 0 && pieces[at - 1].is_word(&["corner"]);
        let is_name = at == 1 && is_named(&pieces) && !pieces[0].is_word(&["corner", "level"]);
        is_new
            && corners.iter().any(|corner| {
                let corner = corner.to_lowercase();
                is_corner && text.starts_with(&format!("{corner} "))
                    || is_name && text.ends_with(&format!(" {corner}"))
            })
    })
}

/// Whether a number without a unit would become the area on the record that it hardly is: `6.2 north-south`.
pub(super) fn makes_an_area(typed: &str, offered: &str) -> bool {
    let Some((_, recorded)) = offered.split_once(" recorded ") else { return false };
    let number = recorded.split(' ').next().unwrap_or_default();
    let value = number.replace(',', "").parse::<f64>().unwrap_or(f64::MAX);
    let lower = typed.to_lowercase();
    let says = ["record", "sq", "sf", "area", "m2", "m²", "ft2", "ft²", "acre", "county", "card"];
    let is_area = recorded[number.len()..].trim_start().starts_with("sq");
    is_area
        && (number.contains('.') || value < 20.0)
        && !says.iter().any(|word| lower.contains(word))
}
