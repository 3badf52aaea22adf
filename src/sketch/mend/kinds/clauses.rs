//! Lines of spaces, figures and calls that say a part of the format in other words: whose outline it is, to which face
//! it was measured, where a space stands.

use super::super::pieces::{Piece, Sort, cut};
use super::levels::capitalized;
use super::loose::kind_at_start;
use super::measure::{area_from, length_at};
use super::{About, Answer, Rule, Typed, first_of, is_text, kind_word, remark, sources};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        outline_of,
        letters_in_an_area,
        tie,
        named_rate,
        value_of_several,
        west_or_east,
        call_without_length,
        figure_to_a_face,
        two_figures,
        tolerance_of_the_tape,
        place_alone,
        space_taken_off,
        cars_first,
        front_porch,
        side_of_the_house,
        stands_alone,
        face_of_a_space,
    ];
    first_of(rules, typed).or_else(|| corner_of(typed))
}

/// The name of the space that a word means: that of the space above, as it is typed there, or the word itself.
fn known_space(typed: &Typed<'_>, at: usize) -> Option<String> {
    let said = typed.name(at, at + 1);
    let above = typed.attempt.space.clone().filter(|space| space.eq_ignore_ascii_case(&said));
    let is_kind = kind_word(&said.to_lowercase()).is_some() || said.eq_ignore_ascii_case("house");
    above.or_else(|| is_kind.then(|| capitalized(&said)))
}

/// `record outline "Card" for House`, `card outline House`, `record outline of House`.
fn outline_of(typed: &Typed<'_>) -> Option<Answer> {
    let first = match typed.lower(0).as_str() {
        "record" | "card" | "county" | "assessor" | "assessor's" | "tax" => "record",
        "plan" => "plan",
        "map" => "map",
        _ => return None,
    };
    let outline = 1 + usize::from(typed.says(1, &["card"]));
    if !typed.says(outline, &["outline", "sketch"]) {
        return None;
    }
    let title = typed.piece(outline + 1).filter(|title| title.sort == Sort::Text);
    let mut at = outline + 1 + usize::from(title.is_some());
    let says_of = typed.says(at, &["of", "for", "from"]);
    at += usize::from(says_of);
    at += usize::from(typed.says(at, &["the"]));
    let name = known_space(typed, at).filter(|_| at + 1 == typed.pieces.len())?;
    let line = match title {
        Some(title) => format!("{first} outline {} of \"{name}\"", title.text),
        None => format!("{first} outline \"{name}\""),
    };
    (title.is_some() || !is_text(typed.piece(at)) || first != typed.lower(0)).then(|| {
        Answer::line(line, "the space that an outline belongs to comes after `of`, as it is named")
    })
}

/// `listing 1,2S0 sq ft`, `listing l,250 sq ft`: a letter in a number.
fn letters_in_an_area(typed: &Typed<'_>) -> Option<Answer> {
    let figures = ["record", "listing", "plan"];
    let first = typed.piece(1).filter(|_| typed.says(0, &figures))?;
    let rest = typed.line.get(first.at..)?;
    let word = rest.split_whitespace().next()?;
    let meant: String = word
        .chars()
        .map(|c| match c {
            'O' | 'o' => '0',
            'l' | 'I' => '1',
            'S' | 's' => '5',
            'B' => '8',
            c => c,
        })
        .collect();
    let is_number = meant.chars().all(|c| c.is_ascii_digit() || c == ',');
    let digits = word.chars().filter(char::is_ascii_digit).count();
    let letters = word.chars().filter(|c| c.is_alphabetic()).count();
    (is_number && letters > 0 && digits >= 2 && digits > letters).then(|| {
        Answer::line(
            format!("{} {meant}{}", typed.lower(0), &rest[word.len()..]),
            "a letter is typed in a number: O for 0, l for 1, S for 5 or B for 8",
        )
    })
}

/// `tie bay to corner 8 9' 10"`
fn tie(typed: &Typed<'_>) -> Option<Answer> {
    let is_name = typed.piece(1).is_some_and(|name| matches!(name.sort, Sort::Word | Sort::Text));
    let to = typed.says(2, &["to"]) && !typed.says(1, &["corner", "from"]);
    let is_known = |name: &str| typed.attempt.beside.corners.iter().any(|corner| **corner == *name);
    let by_way = ["sw", "se", "nw", "ne", "southwest", "southeast", "northwest", "northeast"];
    if typed.says(0, &["tie"]) && to && typed.says(1, &by_way) && !is_known(&typed.name(1, 2)) {
        return Some(Answer::say(
            "the corners of a tie are told by their numbers, or by names that the walk gives them",
            "write `tie corner 1 to corner 3` and the length, with the numbers of your two corners: where wall 1 begins is corner 1, where wall 2 begins corner 2",
        ));
    }
    (typed.says(0, &["tie"]) && is_name && to).then(|| {
        Answer::line(
            format!("tie corner \"{}\" {}", typed.name(1, 2), typed.rest(2)),
            "a tie goes from one corner to another",
        )
    })
}

/// `school exemption 140,000`, `school tax rate 1.05 per $100`, `tax rate 1.05% school`.
fn named_rate(typed: &Typed<'_>) -> Option<Answer> {
    let names = ["school", "county", "city", "homestead", "veteran", "senior", "town", "hospital"];
    if typed.says(0, &names) {
        let is_exemption = typed.says(1, &["exemption"])
            && typed.pieces[2..].iter().all(|piece| piece.is_number() || piece.is_mark("$€£:"));
        let is_rate = typed.says(1, &["tax"])
            && typed.says(2, &["rate"])
            && typed.piece(3).is_some_and(Piece::is_number)
            && !typed.pieces.iter().any(|piece| is_text(Some(piece)));
        return (is_exemption && typed.pieces.len() > 2 || is_rate).then(|| {
            Answer::line(
                format!("{} \"{}\"", typed.rest(1), typed.text(0, 1)),
                "what it is comes first, and its name goes last, with a `\"` on each side",
            )
        });
    }
    let percent = typed.says(0, &["tax"])
        && typed.says(1, &["rate"])
        && typed.piece(2).is_some_and(Piece::is_number)
        && typed.piece(3).is_some_and(|mark| mark.is_mark("%"));
    let name = typed.piece(4).filter(|_| percent && typed.pieces.len() == 5)?;
    matches!(name.sort, Sort::Word | Sort::Text).then(|| {
        Answer::line(
            format!("tax rate {} per $100 \"{}\"", typed.text(2, 3), typed.name(4, 5)),
            "a percentage is a rate per $100",
        )
    })
}

/// `market value 412,000 assessed 371,000`
fn value_of_several(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["market", "assessed"]) && typed.says(1, &["value"]);
    let more = typed.find(3, &["assessed", "market", "land", "building", "improvement"]).is_some();
    let mut words: Vec<String> = Vec::new();
    for piece in typed.pieces.get(2..)? {
        let text = match piece.text.to_lowercase().as_str() {
            "building" | "improvements" => "improvement".to_owned(),
            "value" | ":" | "," => continue,
            text if piece.is_number() => match text.split_once('.') {
                Some((_, after)) if after.len() == 3 => text.replace('.', ","),
                _ => text.to_owned(),
            },
            text => text.to_owned(),
        };
        words.push(text);
    }
    (begins && more).then(|| {
        Answer::line(
            format!("value {} {}", typed.lower(0), words.join(" ")).replace("$ ", "$"),
            "the values of a record begin with `value`",
        )
    })
}

/// `bearing N 1° 34' O 142.67'`: west in some languages, east in another.
fn west_or_east(typed: &Typed<'_>) -> Option<Answer> {
    let from = usize::from(typed.says(0, &["bearing"]));
    let at = typed.find(from + 2, &["o"])?;
    let is_angle = typed.says(from, &["n", "s", "north", "south"])
        && typed.piece(from + 1).is_some_and(Piece::is_number)
        && typed.pieces.iter().any(|mark| mark.is_mark("°º"));
    let length = length_at(&typed.pieces, at + 1)?;
    (is_angle && length.end == typed.pieces.len()).then(|| {
        let line = |toward: &str| {
            format!("bearing {} {toward} {}", typed.text(from, at), typed.rest(at + 1))
        };
        Answer::Lines(
            vec![line("W"), line("E")],
            "`O` is west in Spanish and French (oeste, ouest) and east in German (Ost)".to_owned(),
        )
    })
}

/// `bearing S 88° 52' 30" W back to POB`
fn call_without_length(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(2, &["e", "w", "east", "west"])?;
    let back = ["back", "pob", "beginning", "start"];
    let ends = typed.find(at + 1, &back).is_some();
    let no_length = typed.pieces[at + 1..].iter().all(|piece| piece.sort == Sort::Word);
    (typed.says(0, &["bearing", "thence"]) && ends && no_length).then(|| {
        Answer::say(
            "this call has no length",
            format!(
                "write its length right after `{}`; if no length is known and it leads back to where the lot begins, write `close` alone",
                typed.text(at, at + 1)
            ),
        )
    })
}

/// `architect 1,240 sq ft to frame`, `builder plan 1,240 sq ft measured to frame`.
fn figure_to_a_face(typed: &Typed<'_>) -> Option<Answer> {
    let mut end = typed.pieces.len();
    let face = match typed.lower(end.checked_sub(1)?).as_str() {
        "frame" | "studs" | "framing" => "frame",
        "inside" => "inside",
        "outside" => "outside",
        _ => return None,
    };
    end -= 1;
    let face_at = end;
    while end > 1 && typed.says(end - 1, &["to", "the", "measured", "taken"]) {
        end -= 1;
    }
    let tail = typed.text(0, end);
    if typed.attempt.knows_first || end == face_at && face != "frame" {
        return None;
    }
    let has_unit = area_from(&typed.pieces[..end], 0).is_some();
    let tail = if has_unit { tail.to_owned() } else { format!("{tail} sq ft") };
    let shorter = Typed { line: &tail, pieces: cut(&tail), attempt: typed.attempt };
    let Answer::Lines(lines, cause) = sources::figure(&shorter)? else { return None };
    let with_face = |line: &String| {
        let pieces = cut(line);
        let (_, end, _) = area_from(&pieces, 1)?;
        let rest = pieces.get(end).map_or("", |piece| &line[piece.at..]);
        let head = line[..line.len() - rest.len()].trim_end();
        Some(format!("{head} measured to {face} {rest}").trim_end().to_owned())
    };
    let lines = lines.iter().filter_map(with_face).collect::<Vec<_>>();
    (!lines.is_empty()).then_some(Answer::Lines(lines, cause))
}

/// `record 1215 sqft, listing 99 m`: two figures.
fn two_figures(typed: &Typed<'_>) -> Option<Answer> {
    let figures = ["record", "listing", "plan"];
    let number = |at: usize| typed.piece(at).is_some_and(Piece::is_number);
    let at = typed.find(2, &figures)?;
    if let Some(titled) = dated_title(typed) {
        return Some(titled);
    }
    (typed.says(0, &figures) && number(1) && number(at + 1)).then(|| {
        let one = typed.text(0, at).trim_end_matches([',', ';', ' ']);
        Answer::say(
            "two published areas stand on one line",
            format!("write them on two lines: `{one}`, and below it `{}`", typed.rest(at)),
        )
    })
}

/// `record 1712 county record 2026`, `record: 1,712 sq ft (county record 2026)`: the year belongs to what the figure is
/// called.
fn dated_title(typed: &Typed<'_>) -> Option<Answer> {
    let first = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=-–")));
    let number = typed.piece(first).filter(|number| number.is_number() && !number.is_year())?;
    let (end, area) = super::measure::area_at(&typed.pieces, first)
        .unwrap_or_else(|| (first + 1, format!("{} sq ft", number.text)));
    let begin = (end..typed.pieces.len()).find(|&at| !typed.pieces[at].is_mark(",;:(-–[/"))?;
    let last = (begin..typed.pieces.len()).rfind(|&at| !typed.pieces[at].is_mark(")].,;"))?;
    let title = begin..=last;
    let is_word = |at: usize| typed.pieces[at].sort == super::Sort::Word;
    let years = title.clone().filter(|&at| typed.pieces[at].is_year()).count();
    let names = title.clone().filter(|&at| is_word(at)).count();
    let all = title.clone().all(|at| {
        is_word(at) && !typed.says(at, &["listing", "plan"])
            || typed.pieces[at].is_year() && super::measure::area_at(&typed.pieces, at).is_none()
            || typed.pieces[at].is_mark(",'’")
    });
    let is_one = typed.says(0, &["record"]) && years == 1 && names >= 2 && all;
    (is_one && typed.find(begin, &["record"]).is_some()).then(|| {
        Answer::line(
            format!("record {area} {}", super::quoted(typed.text(begin, last + 1))),
            "what a figure is called goes after it, with a `\"` on each side",
        )
    })
}

/// `laser +- 5mm`
fn tolerance_of_the_tape(typed: &Typed<'_>) -> Option<Answer> {
    let tapes = ["laser", "tape", "accuracy"];
    let mut at = 1;
    while typed.piece(at).is_some_and(|mark| mark.is_mark("+-–/±:")) {
        at += 1;
    }
    let signs = typed.text(1, at).replace([' ', ':'], "");
    let says = ["+-", "+/-", "±", "-/+", "+–", "+/–"].contains(&signs.as_str());
    let length = length_at(&typed.pieces, at).filter(|length| length.has_unit && says)?;
    (typed.says(0, &tapes) && length.end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("tolerance {}", length.text),
            "how exactly each wall was measured is the `tolerance`",
        )
    })
}

/// `start at inside corner` on a line of its own.
fn place_alone(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["start", "starts", "starting", "begin", "begins"]);
    let ways = [
        "front",
        "back",
        "rear",
        "left",
        "right",
        "north",
        "south",
        "east",
        "west",
        "sw",
        "se",
        "nw",
        "ne",
        "southwest",
        "southeast",
        "northwest",
        "northeast",
        "at",
        "the",
        "from",
        "in",
        "of",
        "house",
        "cor",
        "crn",
        "cnr",
        "corner",
        "clockwise",
        "counterclockwise",
        "counter-clockwise",
        "anticlockwise",
        "anti-clockwise",
        "cw",
        "ccw",
        "going",
        "walking",
        "facing",
        "outside",
        "street",
        "and",
        "around",
    ];
    let is_place = typed.pieces.len() > 1
        && typed.pieces[1..].iter().all(|piece| piece.is_word(&ways) || piece.is_mark(",.()"));
    let corner = is_place || typed.find(1, &["corner", "cor", "cnr"]).is_some();
    (begins && corner && !typed.pieces.iter().any(Piece::is_number)).then(|| {
        // The first walk of a level has nothing to start from.
        let before = typed.attempt.beside.before.split_whitespace().next().unwrap_or_default();
        let is_first = typed.attempt.house.is_none() || typed.attempt.house == typed.attempt.space;
        let is_level = before == "level" || super::names_a_level(&typed.attempt.beside.before);
        let is_above = is_level || super::kind_word(before).is_some();
        let above_walls = is_first && !super::super::begins_as_wall(&typed.attempt.beside.before);
        if is_first && is_above || above_walls || typed.attempt.house.is_none() {
            return Answer::say(
                "the first walk of a level starts where its first wall begins",
                "take this line out",
            );
        }
        Answer::say(
            "where a space starts stands on the line of the space",
            "take this line out, and on the line of the space, after its name, write `from`, the name of a space above with a `\"` on each side, `corner` and the number of the corner",
        )
    })
}

/// `minus open to below 9' 7" x 11' 4"`: an opening is deducted by what it is.
fn space_taken_off(typed: &Typed<'_>) -> Option<Answer> {
    let takes = typed.says(0, &["minus", "less", "deduct", "subtract", "remove"])
        || typed.piece(0)?.is_mark("-–");
    let at = 1 + usize::from(typed.says(1, &["the", "an", "a"]));
    let line = typed.rest(at);
    let rest = Typed { line, pieces: cut(line), attempt: typed.attempt };
    let (kind, _) = kind_at_start(&rest).filter(|(kind, _)| takes && *kind != "living")?;
    let has_area = super::measure::area_from(&rest.pieces, 0).is_some();
    if (kind == "open" || kind == "stair") && has_area && super::size_in(line).is_none() {
        let name = if kind == "open" { "Open to below" } else { "Stairs" };
        return Some(Answer::say(
            "an area alone cannot be drawn, and only what is drawn is deducted",
            format!(
                "write `{kind} \"{name}\"`, then where it starts: `start` with a way and a length from where the house's first walk begins; and on the lines below it its four sides"
            ),
        ));
    }
    if kind == "open" || kind == "stair" {
        return Some(Answer::line(line, "what is open to below is deducted by itself"));
    }
    Some(Answer::say(
        "nothing is taken off by its size: each space has its line and its own walls",
        format!(
            "write `{kind} \"{}\"`, and after it `within`, the name of the space whose walk goes around it with a `\"` on each side; if no walk goes around it, its place; its walls go on the lines below",
            capitalized(&typed.lower(at))
        ),
    ))
}

/// `2 car gar at corner 3`: a garage.
fn cars_first(typed: &Typed<'_>) -> Option<Answer> {
    let counts =
        typed.piece(0)?.is_number() || typed.says(0, &["one", "two", "three", "single", "double"]);
    let cars = typed.says(1, &["car", "cars", "stall", "bay"])
        || typed.piece(1)?.is_mark("-") && typed.says(2, &["car"]);
    let at = typed.find(1, &["gar", "garage"]).filter(|at| *at <= 3 && counts && cars)?;
    let placed = typed.piece(at + 1).is_some() || typed.says(at, &["gar"]);
    let named = typed.pieces.iter().any(|piece| is_text(Some(piece)));
    (placed && !named).then(|| {
        Answer::line(
            format!("garage \"{} garage\" {}", capitalized(typed.text(0, at)), typed.rest(at + 1))
                .trim_end(),
            "a space begins with its kind, then its name with a `\"` on each side",
        )
    })
}

/// `front porch`: the word for the street side begins no space.
fn front_porch(typed: &Typed<'_>) -> Option<Answer> {
    let kind = kind_word(&typed.lower(1)).filter(|kind| *kind != "living")?;
    let ends = typed.pieces.len() == 2 || typed.says(2, &["from", "start", "within"]);
    (typed.says(0, &["front"]) && ends).then(|| {
        let name = capitalized(&typed.text(0, 2).to_lowercase());
        Answer::line(
            format!("{kind} \"{name}\" {}", typed.rest(2)).trim_end(),
            "a space begins with its kind, then its name with a `\"` on each side",
        )
    })
}

/// `deck back of house`, `deck on the left, 10 ft by 13' 9"`: on which side of the house it stands.
fn side_of_the_house(typed: &Typed<'_>) -> Option<Answer> {
    let (kind, first) = kind_at_start(typed)?;
    let named = is_text(typed.piece(first));
    let at = first + usize::from(named);
    let sides = [
        "back", "front", "rear", "left", "right", "side", "north", "south", "east", "west",
        "behind", "beside",
    ];
    let filler = [
        "on", "at", "in", "the", "to", "of", "off", "house", "home", "side", "end", "next", "near",
    ];
    let more =
        |piece: &Piece| piece.is_word(&filler) || piece.is_word(&sides) || piece.is_mark(",.;()");
    let end = (at..typed.pieces.len())
        .find(|&at| !more(&typed.pieces[at]) && !typed.says(at - 1, &["of"]))
        .unwrap_or(typed.pieces.len());
    let said = typed.text(at, end).trim_end_matches([',', ';', '.', ' ']);
    let has_side = (at..end).any(|at| typed.says(at, &sides));
    let stands = typed.says(at, &["on", "at", "in", "behind", "next", "near", "off", "to"])
        || (at..end).any(|at| typed.says(at, &["of"]))
        || typed.says(end.checked_sub(1)?, &["side"]);
    let has_place = typed.find(at, &["from", "start", "within", "detached", "corner"]).is_some();
    let says_of = (at..end).any(|at| typed.says(at, &["of"]));
    (has_side && stands && !has_place && (!named || says_of)).then(|| {
        let name = if named {
            typed.name(first, at)
        } else {
            capitalized(&typed.text(0, first).to_lowercase())
        };
        let sides = if super::size_in(typed.line).is_none() && !typed.says(end + 1, &["x", "by"]) {
            ""
        } else {
            "; its size is typed as its sides, one on each line below"
        };
        Answer::say(
            format!("`{said}` is no place that can be drawn"),
            format!(
                "write `{kind} \"{name}\"`, then where it starts: {}{sides}",
                super::placed::starts(typed, kind, false)
            ),
        )
        .about(About::Place)
    })
}

/// `garage not attached`, `garage standing alone behind`, `garage detached behind house`.
fn stands_alone(typed: &Typed<'_>) -> Option<Answer> {
    let (kind, at) = kind_at_start(typed)?;
    let name = if is_text(typed.piece(at)) {
        typed.text(at, at + 1).to_owned()
    } else {
        format!("\"{}\"", capitalized(&typed.text(0, at).to_lowercase()))
    };
    let first = at + usize::from(is_text(typed.piece(at)));
    let first = first + usize::from(typed.piece(first).is_some_and(|mark| mark.is_mark("(,-–;")));
    let said =
        |words: &[&str]| words.iter().enumerate().all(|(i, word)| typed.says(first + i, &[word]));
    let taken = [
        &["not", "attached"][..],
        &["standing", "alone"],
        &["stands", "alone"],
        &["stand", "alone"],
        &["free", "standing"],
        &["freestanding"],
        &["freistehend"],
        &["detached"],
        &["det"],
    ];
    // `shed "Shed" detached` has its place.
    if is_text(typed.piece(at)) && typed.says(first, &["detached"]) {
        return None;
    }
    let end = first + taken.iter().find(|words| said(words))?.len();
    let end = end + usize::from(typed.piece(end).is_some_and(|mark| mark.is_mark("),.;")));
    let plain = typed.pieces[end..].iter().all(|piece| {
        piece.sort == Sort::Word
            && !piece.is_word(&[
                "recorded", "record", "county", "from", "start", "within", "counted", "corner",
            ])
            || piece.is_mark(",.;()")
    });
    let rest = remark(typed.rest(end));
    let recorded = typed.says(end, &["recorded"])
        && typed.piece(end + 1).is_some_and(Piece::is_number)
        && typed.pieces[end + 2..].iter().all(|piece| piece.is_word(&["sq", "ft", "sf", "sqft"]));
    let plain = plain || recorded;
    let comment = if recorded {
        format!(" {}", typed.rest(end))
    } else if rest.is_empty() {
        String::new()
    } else {
        format!("  # {rest}")
    };
    (plain && (kind == "garage" || kind == "outbuilding" || kind == "carport")).then(|| {
        Answer::line(
            format!("{kind} {name} detached{comment}"),
            "a space that stands by itself is `detached`",
        )
    })
}

/// `living "Bedrooms" inside, no brick`, `house, outside`: to which face it was measured.
fn face_of_a_space(typed: &Typed<'_>) -> Option<Answer> {
    let rooms = typed.says(0, &["bedrooms", "rooms", "upstairs"]).then_some(("living", 1));
    let (kind, at) = kind_at_start(typed).or(rooms)?;
    let name = if is_text(typed.piece(at)) {
        typed.text(at, at + 1).to_owned()
    } else {
        format!("\"{}\"", capitalized(&typed.text(0, at).to_lowercase()))
    };
    let mut i = at + usize::from(is_text(typed.piece(at)));
    let is_house = matches!(kind, "living" | "unfinished") && kind_word(&typed.lower(0)).is_none();
    let after_mark = typed.piece(i)?.is_mark(",;-–(:") || is_house;
    let filler = [
        "measured",
        "measure",
        "measurements",
        "dimensions",
        "dims",
        "to",
        "from",
        "the",
        "walls",
        "wall",
        "face",
        "faces",
        "of",
        "and",
        "at",
        "only",
        "taped",
        "here",
    ];
    let (mut face, mut bare) = (None, false);
    while let Some(piece) = typed.piece(i) {
        let says = match piece.text.to_lowercase().as_str() {
            "inside" | "interior" | "inner" => Some("inside"),
            "outside" | "exterior" | "outer" => Some("outside"),
            "frame" | "studs" | "framing" => Some("frame"),
            _ => None,
        };
        if says.is_some() {
            if face.is_some() {
                return None;
            }
            face = says;
        } else if typed.says(i, &["no", "without"])
            && typed.says(i + 1, &["brick", "veneer", "stone", "masonry"])
        {
            bare = true;
            i += 1;
        } else if !piece.is_word(&filler) && !piece.is_mark(",;-–():.") {
            return None;
        }
        i += 1;
    }
    let measured = face.map(|face| format!(" measured to {face}")).unwrap_or_default();
    let veneer = if bare { " veneer none" } else { "" };
    (bare || face.is_some() && after_mark && !is_text(typed.piece(at))).then(|| {
        Answer::line(
            format!("{kind} {name}{measured}{veneer}"),
            "the face is `measured to`, and walls without brick or stone have `veneer none`",
        )
    })
}

/// `garage Garage from corner 1 of House`
fn corner_of(typed: &Typed<'_>) -> Option<Answer> {
    let at = (1..typed.pieces.len()).find(|&at| {
        typed.says(at, &["corner"])
            && typed.piece(at + 1).is_some_and(super::digits::is_small)
            && typed.says(at + 2, &["of"])
    })?;
    let name_at = at + 3 + usize::from(typed.says(at + 3, &["the"]));
    let name = known_space(typed, name_at)
        .or_else(|| is_text(typed.piece(name_at)).then(|| typed.name(name_at, name_at + 1)))?;
    let from = at.checked_sub(1).filter(|&from| typed.says(from, &["from", "at"]))?;
    let head = typed.text(0, from);
    kind_at_start(typed)?;
    let rest = typed.rest(name_at + 1);
    let line = format!("{head} from \"{name}\" corner {} {rest}", typed.text(at + 1, at + 2));
    Some(Answer::line(line.trim_end(), "the space comes first, then its corner"))
}
