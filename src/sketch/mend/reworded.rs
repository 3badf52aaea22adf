//! Lines that say what another line says, with its words in another order or with one more among them: in that other
//! form they are read or answered.

use super::kinds::area_in;
use super::pieces::cut;
use super::shortened::{begins, is_quoted, whole_word_at};

/// The line in its other form, and what was wrong. `None` if it has none.
pub(super) fn in_other_words(line: &str) -> Option<(String, &'static str)> {
    number_of_an_account(line)
        .or_else(|| figures_of_the_county(line))
        .or_else(|| plaster_with_its_thickness(line))
        .or_else(|| door_at_the_front(line))
        .or_else(|| turn_by_degrees(line))
        .or_else(|| frame_without_brick(line))
        .or_else(|| attached_after_its_size(line))
        .or_else(|| high_room_below(line))
        .or_else(|| dashes_in_a_place(line))
        .or_else(|| back_and_named(line))
        .or_else(|| other_beginning(line))
        .or_else(|| second_area(line))
        .or_else(|| said_by_the_plat(line))
        .or_else(|| height_line(line))
        .or_else(|| right_of_way(line))
        .or_else(|| opening_said_twice(line))
}

/// `open "Foyer" open to below`: what such a space is, its kind says.
fn opening_said_twice(line: &str) -> Option<(String, &'static str)> {
    const SAID: [&str; 10] = [
        "open to below",
        "open to above",
        "open to foyer",
        "open below",
        "open above",
        "no floor",
        "void",
        "two story",
        "two stories",
        "double height",
    ];
    let pieces = cut(line);
    let name = pieces.get(1).filter(|name| name.text.starts_with('"'))?;
    let end = name.at + name.text.len();
    let is_open = pieces[0].is_word(&["open"]);
    let rest = line.get(end..)?.trim_start_matches([',', ' ', ';']);
    let lower = rest.to_ascii_lowercase();
    let words = SAID.iter().find(|words| lower.starts_with(**words)).filter(|_| is_open)?;
    let after = rest.get(words.len()..)?;
    let is_whole = after.is_empty() || after.starts_with([',', ' ', ';', '#']);
    let after = after.trim_start_matches([',', ' ', ';']);
    is_whole.then(|| {
        let line = format!("{} {after}", &line[..end]);
        (line.trim_end().to_owned(), "a part without a floor is `open` and its name")
    })
}

/// `acct no. R-120045 (homestead)`: what stands in parentheses is a remark.
fn number_of_an_account(line: &str) -> Option<(String, &'static str)> {
    let (before, remark) = line.trim_end().strip_suffix(')')?.rsplit_once('(')?;
    let (word, rest) = before.trim().split_once(' ')?;
    let is_account = ["account", "acct", "acct.", "parcel", "pin", "apn"]
        .iter()
        .any(|one| word.trim_end_matches(':').eq_ignore_ascii_case(one));
    let mut number = rest.trim();
    for said in ["number", "num.", "num", "no.", "no", "id", "#"] {
        let begins = begins(number, said);
        let after = number.get(said.len()..).unwrap_or_default();
        if begins && after.starts_with([' ', ':', '.']) {
            number = after.trim_start_matches([':', ' ', '.']);
        }
    }
    let is_number =
        number.contains(|c: char| c.is_ascii_digit()) && !number.contains([' ', '"', '#', '\'']);
    (is_account && is_number && number != rest.trim() && !remark.contains(['"', '#'])).then(|| {
        (
            format!("account \"{number}\"  # {}", remark.trim()),
            "the number on the record is an `account`, with a `\"` on each side",
        )
    })
}

/// `county: 1,350 heated, 440 garage`: the areas of a record begin with `record`.
fn figures_of_the_county(line: &str) -> Option<(String, &'static str)> {
    const RECORD: [&str; 7] =
        ["county", "tax record", "assessor", "cad", "tax card", "tax roll", "appraisal district"];
    let plain = line.trim_start();
    let word = RECORD.iter().find(|word| begins(plain, word))?;
    let rest = plain.get(word.len()..)?;
    let figures = rest.trim_start_matches([':', '=', '-', ' ']);
    let pieces = cut(figures);
    let heated = ["heated", "living", "finished", "cooled", "conditioned"];
    let parts = ["garage", "porch", "deck", "carport", "patio", "basement"];
    let says = |words: &[&str]| pieces.iter().any(|piece| piece.is_word(words));
    let areas = pieces.iter().filter(|piece| piece.is_number() && piece.text.len() > 1).count();
    let begins = rest.len() > figures.len() && figures.starts_with(|c: char| c.is_ascii_digit());
    (begins && areas == 2 && says(&heated) && says(&parts) && !line.contains(['"', '#', '$'])).then(
        || {
            (
                format!("record {}", figures.replace(" / ", ", ")),
                "what the county has is the `record`",
            )
        },
    )
}

/// `exterior: stucco, about 1 inch`, `stucco 1 inch thick`: plaster before the frame.
fn plaster_with_its_thickness(line: &str) -> Option<(String, &'static str)> {
    const FILLING: [&str; 11] = [
        "exterior",
        "walls",
        "wall",
        "about",
        "approx",
        "roughly",
        "thick",
        "is",
        "all",
        "coat",
        "thickness",
    ];
    let pieces = cut(line);
    let what = pieces.iter().find(|piece| piece.is_word(&["stucco", "plaster", "eifs"]))?;
    let inches = (0..pieces.len()).find(|&at| {
        pieces[at].is_number()
            && pieces
                .get(at + 1)
                .is_some_and(|unit| unit.is_word(&["inch", "inches", "in"]) || unit.is_mark("\"”″"))
    })?;
    let only = pieces.iter().enumerate().all(|(at, piece)| {
        piece.at == what.at
            || at == inches
            || at == inches + 1
            || piece.is_word(&FILLING)
            || piece.is_mark(",:;().-–")
    });
    // `stucco 1"` itself is known.
    let is_known = inches == 1 && pieces.len() == 3 && pieces[2].is_mark("\"”″");
    (only && !is_known).then(|| {
        (
            format!("{} {}\"", what.text.to_lowercase(), pieces[inches].text),
            "what stands before the frame is `veneer` and its thickness",
        )
    })
}

/// `front door on the SE side`: between two ways.
fn door_at_the_front(line: &str) -> Option<(String, &'static str)> {
    const FILLING: [&str; 10] =
        ["door", "is", "on", "the", "side", "corner", "faces", "facing", "at", "of"];
    let pieces = cut(line);
    let is_door = pieces.first()?.is_word(&["front"]) && pieces.get(1)?.is_word(&["door"]);
    let ways: Vec<&str> = pieces
        .iter()
        .filter(|piece| super::compass::slant(&piece.text).is_some())
        .map(|piece| piece.text.as_str())
        .collect();
    let [way] = ways[..] else { return None };
    let only = pieces[1..]
        .iter()
        .all(|piece| piece.text == way || piece.is_word(&FILLING) || piece.is_mark(",:."));
    (is_door && only && pieces.len() > 3)
        .then(|| (format!("front {way}"), "the street side is `front` and one word of the compass"))
}

/// `right 90 44' 6"`, `right 90°, 44' 6"`: a turn, and then a wall.
fn turn_by_degrees(line: &str) -> Option<(String, &'static str)> {
    let (way, rest) = line.trim().split_once(' ')?;
    let is_turn = ["right", "left"].iter().any(|one| way.eq_ignore_ascii_case(one));
    let after = rest.trim_start().strip_prefix("90")?;
    let has_mark = after.starts_with(['°', '˚', 'º']);
    let wall = after.trim_start_matches(['°', '˚', 'º']);
    let spoken = ["degrees", "deg.", "deg"].iter().find_map(|word| {
        let wall = wall.trim_start();
        let here = wall.get(..word.len())?;
        here.eq_ignore_ascii_case(word).then(|| wall.get(word.len()..))?
    });
    let wall = spoken.unwrap_or(wall);
    let is_apart = wall.starts_with([' ', ',']);
    let wall = wall.trim_start_matches([' ', ',', ';']);
    let pieces = cut(wall);
    let is_length = pieces.first().is_some_and(super::pieces::Piece::is_number)
        && pieces
            .get(1)
            .is_some_and(|unit| unit.is_mark("'’′") || unit.is_word(&["ft", "feet", "m"]));
    (is_turn
        && is_apart
        && is_length
        && (has_mark || spoken.is_some() || after.starts_with([' ', ','])))
    .then(|| {
        (
            format!("turn {way} 90, {wall}"),
            "a turn does not say which way the wall runs on the plan",
        )
    })
}

/// `north 30' 4" frame, no brick here`, `north 30' 4" (frame, no brick)`: a wall without a veneer.
fn frame_without_brick(line: &str) -> Option<(String, &'static str)> {
    const FRAME: [&str; 8] =
        ["wood frame", "frame", "framed", "siding", "vinyl siding", "vinyl", "frame wall", "wood"];
    let before_brick = ["no brick", "no veneer", "no stone", "without brick"]
        .iter()
        .find_map(|form| whole_word_at(line, form).map(|at| (at, *form)));
    let (at, form) = before_brick?;
    let before = line.get(..at)?;
    let after = line.get(at + form.len()..)?;
    let tail = after.trim_matches([' ', ')', ',', '.']);
    let tail = tail.strip_prefix("here").unwrap_or(tail).trim_matches([' ', ',', ')']);
    let is_frame = |text: &str| FRAME.iter().any(|frame| text.trim().eq_ignore_ascii_case(frame));
    let wall = before.trim_end_matches([' ', ',', ';', '-']);
    // What stands between the length and the word.
    let lengths = wall.rfind(['\'', '"', '′', '″', '’', '”']).map(|mark| {
        mark + wall.get(mark..).and_then(|rest| rest.chars().next()).map_or(0, char::len_utf8)
    })?;
    let (wall, between) = wall.split_at_checked(lengths)?;
    let between = between.trim_matches([' ', ',', ';', '(', '-']);
    let fits = (is_frame(between) && (tail.is_empty() || is_frame(tail)))
        || between.is_empty() && is_frame(tail);
    let is_wall = super::begins_as_side(wall);
    (fits && is_wall && !line.contains('#'))
        .then(|| (format!("{wall} no brick"), "a wall without brick or stone has `veneer none`"))
}

/// `garage "2 car garage" 20' x 22' attached`: that it is attached says nothing of where.
fn attached_after_its_size(line: &str) -> Option<(String, &'static str)> {
    let plain = line.trim_end().trim_end_matches(['.', ')']);
    let at = whole_word_at(plain, "attached").filter(|at| at + "attached".len() == plain.len())?;
    let before = plain.get(..at)?.trim_end_matches([' ', ',', '(', ';']);
    let is_garage = cut(line)
        .iter()
        .any(|piece| piece.is_word(&["garage", "carport", "shed", "workshop", "storage"]));
    let size = super::kinds::size_in(before)?;
    let ends = before.ends_with(size.trim_end());
    (is_garage && ends && !is_quoted(before)).then(|| {
        (before.to_owned(), "a space has its kind and its name, and its size is typed as its sides")
    })
}

/// `two-story living room below, 8' x 7'`: where the floor above is left out for a room below it.
fn high_room_below(line: &str) -> Option<(String, &'static str)> {
    const HIGH: [&str; 9] = [
        "vaulted",
        "cathedral",
        "two-story",
        "two-storey",
        "2-story",
        "two story",
        "2 story",
        "double-height",
        "open",
    ];
    const ROOMS: [&str; 11] = [
        "living room",
        "family room",
        "great room",
        "greatroom",
        "dining room",
        "foyer",
        "entry",
        "entryway",
        "hall",
        "kitchen",
        "room",
    ];
    let plain = line.trim();
    let begins = |text: &str, words: &[&'static str]| {
        words
            .iter()
            .find(|word| {
                begins(text, word)
                    && text.get(word.len()..).is_some_and(|rest| rest.starts_with([' ', ',']))
            })
            .copied()
    };
    let high = begins(plain, &HIGH)?;
    let rest = plain.get(high.len()..)?.trim_start();
    let room = begins(rest, &ROOMS)?;
    let rest = rest.get(room.len()..)?.trim_start_matches([' ', ',']);
    let after = ["below", "downstairs"].iter().find_map(|word| {
        let here = rest.get(..word.len())?.eq_ignore_ascii_case(word);
        rest.get(word.len()..).filter(|_| here)
    })?;
    let after = after.trim_start_matches([',', ':', ' ', '-']);
    let is_more = after.starts_with(|c: char| c.is_ascii_digit())
        || after.starts_with("start ")
        || after.starts_with("from ")
        || after.is_empty();
    (is_more && !line.contains(['"', '#'])).then(|| {
        (
            format!("open \"To the {room} below\" {after}").trim_end().to_owned(),
            "what is open to the floor below is `open`, on the floor that is left out there",
        )
    })
}

/// `start E 9-4`: feet and inches of a place.
fn dashes_in_a_place(line: &str) -> Option<(String, &'static str)> {
    let words: Vec<&str> = line.split(' ').collect();
    let says_place = |at: usize| {
        words[..at].iter().any(|word| {
            ["start", "starts", "start:"].iter().any(|one| word.eq_ignore_ascii_case(one))
        })
    };
    let length_at =
        |at: usize| super::noted::dashed(words[at]).filter(|_| !words[at].starts_with('('));
    let at = (1..words.len())
        .find(|&at| length_at(at).is_some() && says_place(at) && super::is_way(words[at - 1]))?;
    let (feet, inches, tail) = length_at(at)?;
    let length = format!("{feet}' {inches}\"{tail}");
    let line = [&words[..at], &[length.as_str()], &words[at + 1..]].concat().join(" ");
    Some((line, "the marks for feet and inches are missing"))
}

/// `and back to pin`, `living: House (measured outside)`.
fn back_and_named(line: &str) -> Option<(String, &'static str)> {
    let plain = line.trim();
    if let Some(rest) =
        plain.get(..4).filter(|and| and.eq_ignore_ascii_case("and ")).and_then(|_| plain.get(4..))
    {
        let leads = ["back to", "to pob", "to point of", "to the point of", "home"]
            .iter()
            .any(|back| begins(rest, back));
        return leads.then(|| {
            (rest.to_owned(), "the call that leads back to where the lot begins is `close`")
        });
    }
    let (kind, rest) = plain.split_once(':')?;
    let (name, remark) = rest.trim().split_once('(')?;
    let name = name.trim();
    let is_kind = ["living", "garage", "porch", "deck", "unfinished", "storage"]
        .iter()
        .any(|one| kind.eq_ignore_ascii_case(one));
    let is_name = !name.is_empty() && name.chars().all(|c| c.is_alphabetic() || c == ' ');
    let says_face = ["measured", "taped", "inside", "outside"]
        .iter()
        .any(|word| remark.to_lowercase().contains(word));
    (is_kind && is_name && says_face).then(|| {
        (
            format!("{} \"{name}\" ({remark}", kind.to_lowercase()),
            "a space begins with its kind, then its name with a `\"` on each side",
        )
    })
}

/// Beginnings that stand for another one, or for nothing that a sides file has.
fn other_beginning(line: &str) -> Option<(String, &'static str)> {
    const RATES: [&str; 6] = [
        "total tax rate ",
        "combined tax rate ",
        "overall tax rate ",
        "total rate ",
        "combined rate ",
        "overall rate ",
    ];
    const GAPS: [&str; 9] = [
        "diff ",
        "diff. ",
        "diff: ",
        "difference ",
        "difference: ",
        "gap ",
        "gap: ",
        "over by ",
        "off by ",
    ];
    let plain = line.trim();
    let begins = |form: &str| begins(plain, form);
    if let Some(form) = RATES.iter().find(|form| begins(form)) {
        let rest = plain.get(form.len()..)?;
        return rest
            .starts_with(|c: char| c.is_ascii_digit() || c == '.' || c == '$')
            .then(|| (format!("tax rate {rest}"), "the rates added up are one `tax rate`"));
    }
    let is_area = area_in(plain).is_some();
    if GAPS.iter().any(|form| begins(form)) && is_area && !plain.contains(['"', '#']) {
        return Some((
            format!("# {plain}"),
            "how far two figures are apart is worked out from them; a comment begins with `#`",
        ));
    }
    // `$284 per sq ft`
    let lower = plain.to_lowercase();
    let is_price = plain.starts_with('$')
        && [
            "per sq ft",
            "per square foot",
            "/sq ft",
            "/sf",
            "/sqft",
            "per sf",
            "psf",
            "a square foot",
            "a sq ft",
        ]
        .iter()
        .any(|per| lower.ends_with(per));
    is_price.then(|| {
        (
            format!("# {plain}"),
            "a sides file has no place for a price per square foot; a comment begins with `#`",
        )
    })
}

/// `record 1450 sf heated / 1912 sf under roof`: the figure of the house, and a sum with other parts.
fn second_area(line: &str) -> Option<(String, &'static str)> {
    let pieces = cut(line);
    let source = pieces.first()?.is_word(&["record", "listing"]);
    let numbers: Vec<usize> = (1..pieces.len()).filter(|&at| pieces[at].is_number()).collect();
    let [first, second] = numbers[..] else { return None };
    let whole = |at: usize| pieces[at].text.replace(',', "").parse::<u32>().ok();
    let (own, all) = (whole(first)?, whole(second)?);
    let heated = ["heated", "living", "conditioned", "cooled", "finished", "hvac"];
    let total = ["total", "roof", "gross", "all", "overall"];
    let says = |from: usize, to: usize, words: &[&str]| {
        pieces.get(from..to).is_some_and(|some| some.iter().any(|piece| piece.is_word(words)))
    };
    let units = ["sf", "sq", "ft", "sqft", "square", "feet"];
    let rest_is_plain = pieces.iter().enumerate().skip(1).all(|(at, piece)| {
        at == first
            || at == second
            || piece.is_word(&heated)
            || piece.is_word(&total)
            || piece.is_word(&units)
            || piece.is_word(&["under", "and", "incl"])
            || piece.is_mark("/,;()-–.")
    });
    let fits = first == 1
        && own < all
        && (300..30_000).contains(&own)
        && all < 60_000
        && says(first, second, &heated)
        && says(second, pieces.len(), &total);
    (source && fits && rest_is_plain).then(|| {
        let after = line.get(pieces[second].at..).unwrap_or_default().trim();
        let words: Vec<&str> = pieces[first..second]
            .iter()
            .filter(|piece| piece.is_word(&heated))
            .map(|piece| piece.text.as_str())
            .collect();
        (
            format!(
                "{} {} sq ft  # {}, {after}",
                pieces[0].text.to_lowercase(),
                pieces[first].text,
                words.join(" ")
            ),
            "a line has one figure, here that of the house",
        )
    })
}

/// `S 89.5 E 76.3 ft (plat 76.5)`: another length of the same call is a comment.
fn said_by_the_plat(line: &str) -> Option<(String, &'static str)> {
    let (call, remark) = line.trim_end().strip_suffix(')')?.rsplit_once('(')?;
    let word = remark.split(' ').next()?.trim_end_matches(['.', ':']).to_lowercase();
    let says = ["plat", "deed", "record", "rec", "called", "calc", "meas", "calculated"];
    let first = cut(call);
    let is_call = first.first()?.is_word(&["n", "s", "north", "south", "bearing"])
        && first.iter().skip(1).any(|piece| piece.is_word(&["e", "w", "east", "west"]))
        && first.get(1).is_some_and(|angle| angle.is_number() || angle.is_word(&["n", "s"]));
    (is_call && says.contains(&word.as_str()) && !call.contains(['"', '#'])
        || is_call && says.contains(&word.as_str()) && call.contains('°') && !call.contains('#'))
    .then(|| {
        (
            format!("{}  # {remark}", call.trim_end()),
            "a call has one length; another one of it goes into a comment",
        )
    })
}

/// `sloped ceiling 5' height line is 4' in from east and west walls`: strips as deep as that.
fn height_line(line: &str) -> Option<(String, &'static str)> {
    let plain = line.trim().trim_end_matches('.');
    let begins = ["sloped ", "sloping ", "slanted ", "5' ", "5 ft ", "five foot "]
        .iter()
        .any(|word| begins(plain, word));
    let (before, walls) = plain.split_once(" in from ")?;
    let (said, length) = before.rsplit_once(' ')?;
    let is_length =
        length.starts_with(|c: char| c.is_ascii_digit()) && length.ends_with(['\'', '"', '′']);
    let says_five =
        ["5'", "5 ft", "5-foot", "five foot", "5 foot"].iter().any(|five| said.contains(five));
    let says_line =
        ["height line", "line is", "high line", "mark is"].iter().any(|word| said.contains(word));
    let walls: Vec<&str> = walls
        .split_whitespace()
        .filter(|word| !["wall", "walls", "the", "side", "sides"].contains(word))
        .collect();
    let is_plain =
        !walls.is_empty() && walls.iter().all(|word| word.chars().all(char::is_alphabetic));
    (begins && is_length && says_five && says_line && is_plain).then(|| {
        (
            format!("low {length} deep along the {}", walls.join(" ")),
            "what is left of the floor where the ceiling is lower than 5' is `low`",
        )
    })
}

/// `S 89°30' E along Alder Rd R/W 90.00'`: a slash in a remark.
fn right_of_way(line: &str) -> Option<(String, &'static str)> {
    let is_call = cut(line).first()?.is_word(&["n", "s", "north", "south", "bearing", "thence"]);
    let (before, after) = line.split_once(" R/W").or_else(|| line.split_once(" r/w"))?;
    (is_call && !line.contains(['"', '#'])).then(|| {
        (format!("{before} ROW{after}"), "a remark about a call goes to the end of its line")
    })
}
