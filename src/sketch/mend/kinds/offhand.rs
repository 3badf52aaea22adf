//! Lines that say in other words what the format has a line for: figures under the trade's names, last year's value, a
//! level with a face, a wall whose way the keyboard replaced.

use super::super::compass::{along, is_upright, way_and_back};
use super::super::pieces::{Piece, Sort};
use super::heading::begins_as_call;
use super::measure::{area_at, area_from, length_at, money_from};
use super::walls::{WAYS, is_way};
use super::{Answer, Rule, Typed, first_of, is_text, kind_word, materials, quoted, size_in};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        all_siding,
        cells,
        open_to_below,
        listed_and_gone,
        written_date,
        squared_meters,
        figure_with_a_price,
        private_appraisal,
        two_titles,
        homestead_sum,
        percent_off,
        back_to_the_start,
        two_words_for_a_space,
        face_and_size,
        living_area,
        one_area_twice,
        year_before,
        letter_at_the_end,
        first_line,
        length_below_a_space,
    ];
    first_of(rules, typed)
}

/// `GLA 1,904 sq ft`, `TLA: 1904`, `SFLA 1,904 sf (2026)`: the trade's letters for the living area do not say who
/// published it.
fn living_area(typed: &Typed<'_>) -> Option<Answer> {
    let letters = ["gla", "tla", "sfla", "agla", "gba", "lsf", "hsf", "tsf"];
    if !typed.says(0, &letters) {
        return None;
    }
    let mut at = 1;
    while typed.piece(at).is_some_and(|mark| mark.is_mark(":=-–"))
        || typed.says(at, &["is", "of", "sqft", "sf", "area"])
    {
        at += 1;
    }
    let number = typed.piece(at).filter(|number| number.is_number())?;
    let (end, area) =
        area_at(&typed.pieces, at).unwrap_or_else(|| (at + 1, format!("{} sq ft", number.text)));
    let more = super::plainly(typed.rest(end));
    let title = format!("{} {more}", typed.text(0, 1));
    let plain = typed.pieces[end..].iter().all(|piece| piece.sort != Sort::Text);
    let of = typed.pieces[end..].iter().find_map(super::sources::word);
    plain.then(|| {
        if let Some(word) = of {
            return Answer::line(
                format!("{word} {area} {}", quoted(&title)),
                format!("an area begins with the word for who published it, here `{word}`; its title goes after it"),
            );
        }
        let lines = ["record", "listing"].map(|word| format!("{word} {area} {}", quoted(&title)));
        Answer::Lines(
            lines.into(),
            format!(
                "`{}` does not say who published the area: the county's is `record`, the one for a sale `listing`",
                typed.text(0, 1)
            ),
        )
    })
}

/// `record 139 m² / 1,496 sq ft`, `record 1,496 sq ft (139 m2)`: the same area in two units.
fn one_area_twice(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["record", "listing", "plan"]) {
        return None;
    }
    let (end, one) = area_at(&typed.pieces, 1)?;
    let mut second = end;
    while typed.piece(second).is_some_and(|mark| mark.is_mark("/(=,;–-"))
        || typed.says(second, &["or", "i.e", "equals"])
    {
        second += 1;
    }
    let (stop, two) = area_at(&typed.pieces, second).filter(|_| second > end)?;
    let stop = stop + usize::from(typed.piece(stop).is_some_and(|mark| mark.is_mark(")")));
    let unit = |area: &str| area.split_once(' ').map(|(_, unit)| unit.to_owned());
    (unit(&one) != unit(&two)).then(|| {
        let word = typed.lower(0);
        let rest = typed.rest(stop);
        let line = |area: &str, other: &str| {
            let figure = format!("{word} {area} {rest}");
            format!("{}  # {other}", figure.trim_end())
        };
        Answer::Lines(
            vec![line(&one, &two), line(&two, &one)],
            "a figure is one number; in which of the two units was it published?".to_owned(),
        )
    })
}

/// `prior year assessed value 337,000`, `previous yr market $412,000`: last year's value.
fn year_before(typed: &Typed<'_>) -> Option<Answer> {
    let before = ["prior", "previous", "prev", "preceding", "past", "earlier"];
    let years = ["year", "yr", "year's", "years", "yr's", "tax"];
    if !typed.says(0, &before) {
        return None;
    }
    let mut at = 1;
    while typed.says(at, &years) || typed.piece(at).is_some_and(|mark| mark.is_mark(":.,'")) {
        at += 1;
    }
    let rest = |at: usize| {
        let pieces: Vec<Piece> = typed.pieces[at..]
            .iter()
            .filter(|piece| {
                !piece.is_word(&["value", "val", "was", "of", "is", "the", "amount"])
                    && !piece.is_mark(":=")
            })
            .cloned()
            .collect();
        super::join(&pieces)
    };
    let value = ["assessed", "assessment", "market", "appraised", "taxable", "value", "val"];
    let says_value = typed.says(at, &value);
    let has_number = typed.pieces[at..].iter().any(Piece::is_number);
    (has_number && (says_value || at > 1)).then(|| {
        let kind = match typed.lower(at).as_str() {
            "assessed" | "assessment" | "taxable" => "assessed ",
            "market" | "appraised" => "market ",
            _ => "",
        };
        let at = at + usize::from(!kind.is_empty());
        Answer::line(
            format!("last year {kind}{}", rest(at)),
            "the value of the year before is `last year`, its kind and the sum",
        )
    })
}

/// `bearing S 5° 13' 50" 149.72' E`: the letter of the second direction stands after the length.
fn letter_at_the_end(typed: &Typed<'_>) -> Option<Answer> {
    let from = usize::from(typed.says(0, &["bearing", "thence"]));
    let last = typed.pieces.len().checked_sub(1)?;
    let toward = typed.piece(last).filter(|word| word.is_word(&["e", "w", "east", "west"]))?;
    let first = typed.says(from, &["n", "s", "north", "south"]);
    let sides = ["e", "w", "east", "west"];
    if !first || (from + 1..last).any(|at| typed.says(at, &sides)) {
        return None;
    }
    // The longest length before the letter that leaves an angle.
    let at = (from + 2..last).find(|&at| {
        length_at(&typed.pieces, at).is_some_and(|length| length.end == last)
            && is_angle(&typed.pieces[from + 1..at])
    })?;
    let letter = |word: &str| word[..1].to_uppercase();
    Some(Answer::line(
        format!(
            "bearing {} {} {} {}",
            letter(&typed.lower(from)),
            typed.text(from + 1, at),
            letter(&toward.text),
            typed.text(at, last)
        ),
        "in a bearing the second direction stands right after the angle, before the length",
    ))
}

/// Whether the pieces are an angle to its end: `5° 13' 50"`, `5-13-50`, `5.5°`.
fn is_angle(pieces: &[Piece]) -> bool {
    let numbers = pieces.iter().filter(|piece| piece.is_number()).count();
    let marks = |piece: &Piece| piece.is_mark("°º'\"’”′″-–") || piece.is_word(&["deg", "degrees"]);
    let ends = pieces.last().is_some_and(|last| last.is_mark("°º\"”″'’′"));
    (1..=3).contains(&numbers)
        && pieces.iter().all(|piece| piece.is_number() || marks(piece))
        && pieces.first().is_some_and(Piece::is_number)
        && ends
        && numbers >= 2
        && pieces.iter().any(|piece| piece.is_mark("°º-–") || piece.is_word(&["deg", "degrees"]))
}

/// `wear 43' 7"`, `easy 30'`, `sought 12'`: a word that a keyboard put where the way of a wall stands.
pub(super) fn replaced_way(typed: &Typed<'_>) -> Option<Answer> {
    let word = typed.piece(0).filter(|word| word.sort == Sort::Word)?.text.to_lowercase();
    let length = length_at(&typed.pieces, 1).filter(|length| length.has_unit)?;
    let is_walk = typed.attempt.space.is_some();
    let is_all = length.end == typed.pieces.len()
        || typed.says(length.end, &["recorded", "note", "photo", "estimated"]);
    let is_known = typed.attempt.knows_first
        || is_way(typed, 0)
        || super::kind_word(&word).is_some()
        || way_and_back(&word).is_some();
    let measures = [
        "width",
        "height",
        "depth",
        "length",
        "wall",
        "side",
        "tolerance",
        "veneer",
        "total",
        "then",
        "about",
        "approx",
        "and",
        "plus",
        "from",
        "to",
        "ceiling",
        "size",
        "at",
        "is",
        "over",
        "up",
        "down",
    ];
    if !is_walk
        || !is_all
        || is_known
        || !(3..=7).contains(&word.chars().count())
        || measures.contains(&word.as_str())
    {
        return None;
    }
    let upright = runs_upright(typed)?;
    let ways = if upright { ["north", "south"] } else { ["east", "west"] };
    let swaps = |way: &str| letters_changed(&word, way);
    let (near, far) = (swaps(ways[0]), swaps(ways[1]));
    let is_near = |distance: usize, way: &str| {
        distance <= 2 || distance <= 3 && word.starts_with(&way[..1]) && word.chars().count() >= 5
    };
    let line = |way: &str| format!("{way} {}", typed.rest(1));
    let cause = format!("`{word}` stands where the way of the wall belongs");
    let likely: Vec<String> = [(near, far, ways[0]), (far, near, ways[1])]
        .iter()
        .filter(|(own, other, way)| is_near(*own, way) && own < other)
        .map(|(.., way)| line(way))
        .collect();
    match &likely[..] {
        [only] => Some(Answer::line(only.clone(), cause)),
        _ => None,
    }
}

/// How many letters have to be changed, added or left out to make one word of another.
pub(super) fn letters_changed(one: &str, other: &str) -> usize {
    let other: Vec<char> = other.chars().collect();
    let mut row: Vec<usize> = (0..=other.len()).collect();
    for (i, a) in one.chars().enumerate() {
        let mut before = i;
        row[0] = i + 1;
        for (j, b) in other.iter().enumerate() {
            let same = before + usize::from(a != *b);
            before = row[j + 1];
            row[j + 1] = same.min(row[j] + 1).min(row[j + 1] + 1);
        }
    }
    row.last().copied().unwrap_or_default()
}

/// Whether the wall of this line runs north or south, by the walls before and after it.
pub(super) fn runs_upright(typed: &Typed<'_>) -> Option<bool> {
    let way = |line: &str| {
        let first = line.split(|c: char| !c.is_alphabetic()).find(|word| !word.is_empty())?;
        let (way, _) = way_and_back(first)?;
        WAYS[..4].contains(&way).then(|| !is_upright(way))
    };
    let beside = &typed.attempt.beside;
    match (way(&beside.before), way(&beside.after)) {
        (Some(one), Some(two)) => (one == two).then_some(one),
        (one, two) => one.or(two),
    }
}

/// `Windrow Farm, Juniper County` on the first line: which house it is.
fn first_line(typed: &Typed<'_>) -> Option<Answer> {
    let beside = &typed.attempt.beside;
    let is_first = beside.before.is_empty() && typed.attempt.space.is_none();
    let starts_high = typed.line.starts_with(char::is_uppercase);
    let places = [
        "county",
        "street",
        "st",
        "road",
        "rd",
        "lane",
        "ln",
        "avenue",
        "ave",
        "drive",
        "dr",
        "court",
        "ct",
        "way",
        "farm",
        "place",
        "pl",
        "circle",
        "trail",
        "boulevard",
        "blvd",
        "ranch",
        "hill",
        "parkway",
        "highway",
        "hwy",
        "ridge",
        "terrace",
        "square",
    ];
    let is_place = typed.pieces.iter().any(|piece| piece.is_word(&places));
    let plain = typed
        .pieces
        .iter()
        .all(|piece| matches!(piece.sort, Sort::Word | Sort::Number) || piece.is_mark(",.#'’"));
    let is_statement = typed.attempt.knows_first
        || is_way(typed, 0)
        || super::loose::kind_at_start(typed).is_some()
        || typed.says(0, &["house", "front", "address", "property", "subject", "owner", "county"])
        || typed
            .find(
                0,
                &[
                    "is",
                    "faces",
                    "measured",
                    "measurements",
                    "says",
                    "has",
                    "taped",
                    "tape",
                    "notes",
                    "at",
                    "of",
                ],
            )
            .is_some();
    let has_name = typed.pieces.len() >= 3
        && typed.pieces.iter().filter(|piece| piece.sort == Sort::Word).count() >= 2;
    (is_first && starts_high && is_place && plain && !is_statement && has_name).then(|| {
        Answer::line(
            format!("property {}", quoted(typed.line)),
            "the name or address of the house goes after `property`",
        )
    })
}

/// `12 m`, `22' 4"` alone below the line of a space: its way is missing.
fn length_below_a_space(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 0)
        .filter(|length| length.has_unit && !length.text.ends_with('.'))?;
    let is_short = length.end == typed.pieces.len();
    let above = typed.attempt.beside.before.split_whitespace().next().unwrap_or_default();
    let is_walk = typed.attempt.space.is_some()
        && (way_and_back(above).is_some() || super::kind_word(&above.to_lowercase()).is_some());
    if !is_short || !is_walk || is_text(typed.piece(0)) {
        return None;
    }
    let ways =
        runs_upright(typed).map(|upright| if upright { along("east") } else { along("north") });
    let cause = "a side begins with the way that it runs, and this line does not say it";
    Some(match ways {
        Some([one, two]) => Answer::Lines(
            vec![format!("{one} {}", length.text), format!("{two} {}", length.text)],
            format!("{cause}: by the walls beside it, {one} or {two}"),
        ),
        None => Answer::say(
            cause,
            format!(
                "write `north`, `east`, `south` or `west`, as you walked along it, before `{}`",
                length.text
            ),
        ),
    })
}

/// `siding, no brick`, `frame house, vinyl siding`, `all siding`: walls without brick.
fn all_siding(typed: &Typed<'_>) -> Option<Answer> {
    let filler = [
        "frame", "house", "all", "of", "the", "it", "is", "and", "no", "brick", "stone", "whole",
        "has",
    ];
    let mut at = 0;
    let mut found = false;
    while at < typed.pieces.len() {
        if let Some(end) = materials::without_brick(typed, at) {
            found = true;
            at = end;
        } else if typed.says(at, &filler) || typed.pieces[at].is_mark(",;.-–()&") {
            at += 1;
        } else {
            return None;
        }
    }
    let brick = typed.find(0, &["brick", "stone"]);
    let is_denied = brick.is_none_or(|brick| brick > 0 && typed.says(brick - 1, &["no"]));
    (found && is_denied && typed.pieces.len() > 1 && !typed.says(0, &["no"])).then(|| {
        Answer::line(
            format!("veneer none  # {}", typed.line.trim()),
            "without brick or stone the veneer is `none`",
        )
    })
}

/// `county has a shed 96 sf that is gone`, `record shows deck 100 sf, there is none`: on the record, and not there.
fn listed_and_gone(typed: &Typed<'_>) -> Option<Answer> {
    let sources = ["county", "record", "records", "card", "assessor", "cad", "the", "tax"];
    if !typed.says(0, &sources) {
        return None;
    }
    let (first, end, area) = area_from(&typed.pieces, 1)?;
    let gone = [
        "gone",
        "none",
        "removed",
        "torn",
        "demolished",
        "razed",
        "longer",
        "anymore",
        "never",
        "nonexistent",
        "missing",
    ];
    let not_there = typed
        .find(1, &["not", "isn't", "isnt"])
        .is_some_and(|not| typed.says(not + 1, &["there", "here"]));
    let is_gone = not_there || typed.find(1, &gone).is_some();
    let (at, kind) = (1..typed.pieces.len()).find_map(|at| {
        let word = typed.lower(at);
        let other = match word.as_str() {
            "shed" | "barn" | "workshop" | "stable" => Some("outbuilding"),
            _ => None,
        };
        kind_word(&word).filter(|kind| *kind != "living").or(other).map(|kind| (at, kind))
    })?;
    (is_gone && (at < first || at >= end)).then(|| {
        let name = super::levels::capitalized(&typed.lower(at));
        Answer::line(
            format!("missing {kind} \"{name}\" recorded {area}"),
            "what the record lists and the house does not have is `missing`",
        )
    })
}

/// `then turn right and go 22' 4"`: the way follows from the wall before it.
pub(super) fn turned(typed: &Typed<'_>) -> Option<Answer> {
    let turns = typed.find(0, &["turn", "turned", "turning", "right", "left"])?;
    let side = typed.find(0, &["right", "left"]).filter(|side| *side <= turns + 2)?;
    // `then left 40 ft`: as seen from the street, where the file says where that is.
    let then = typed.says(0, &["then"]) && typed.attempt.beside.front.is_none();
    let says_turn = then || typed.find(0, &["turn", "turned", "turning", "corner"]).is_some();
    let (first, length) = super::measure::lengths(&typed.pieces, 0).into_iter().next()?;
    let filler = [
        "then", "turn", "turned", "turning", "right", "left", "and", "go", "walk", "went", "i",
        "at", "the", "corner", "for", "hand", "to", "my",
    ];
    let only = (0..first).all(|at| typed.says(at, &filler) || typed.pieces[at].is_mark(",;:-"));
    let before = typed.attempt.beside.before.split_whitespace().next().unwrap_or_default();
    let (before, _) = way_and_back(before)?;
    let ring = if WAYS[..4].contains(&before) {
        ["north", "east", "south", "west"]
    } else {
        ["back", "right", "front", "left"]
    };
    let at = ring.iter().position(|way| *way == before)?;
    let turned = if typed.says(side, &["right"]) { at + 1 } else { at + 3 };
    (says_turn && only && length.has_unit && first > 0 && !is_way(typed, 0)).then(|| {
        let way = ring[turned.rem_euclid(4)];
        let rest = typed.rest(length.end);
        Answer::line(
            format!("{way} {} {rest}", length.text).trim_end(),
            format!("a side begins with the way that it runs: after a wall to the {before} a turn to the {} goes {way}", typed.lower(side)),
        )
    })
}

/// `measured 20260321`: a date without its marks.
fn written_date(typed: &Typed<'_>) -> Option<Answer> {
    let at = (1..typed.pieces.len()).find(|&at| {
        let piece = &typed.pieces[at];
        piece.is_number() && piece.text.len() == 8 && piece.text.starts_with("20")
    })?;
    let digits = &typed.pieces[at].text;
    let (year, month, day) = (digits.get(..4)?, digits.get(4..6)?, digits.get(6..)?);
    let is_in = |text: &str, most: u8| text.parse::<u8>().is_ok_and(|n| (1..=most).contains(&n));
    let dated = typed.says(0, &["measured", "notice", "date", "taped", "deadline", "comparable"]);
    (dated && is_in(month, 12) && is_in(day, 31)).then(|| {
        Answer::line(
            format!("{} {year}-{month}-{day} {}", typed.text(0, at), typed.rest(at + 1)).trim_end(),
            "a date has a `-` between year, month and day",
        )
    })
}

/// `listing 137 metres squared`, `record 1,500 feet square`: the unit of an area.
fn squared_meters(typed: &Typed<'_>) -> Option<Answer> {
    let at = typed.find(2, &["squared", "square", "sq"])?;
    let unit = match typed.lower(at - 1).as_str() {
        "meters" | "metres" | "meter" | "metre" | "m" => "sq m",
        "feet" | "foot" | "ft" => "sq ft",
        _ => return None,
    };
    let number = typed.piece(at.checked_sub(2)?).filter(|number| number.is_number())?;
    let follows = typed.says(at + 1, &["ft", "feet", "m", "meters", "metres", "foot", "footage"]);
    (!follows).then(|| {
        Answer::line(
            format!("{} {} {unit} {}", typed.text(0, at - 2), number.text, typed.rest(at + 1))
                .trim_end(),
            format!("the unit of an area is `{unit}`"),
        )
    })
}

/// `listing 1530 sq ft @ $212/sf`, `record 1,512 sq ft (as of 1/1/2026)`: a remark after a figure.
fn figure_with_a_price(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["record", "listing", "plan"]) {
        return None;
    }
    let (end, area) = area_at(&typed.pieces, 1)?;
    let begins = typed.piece(end)?.is_mark("(,;@-–[") || typed.says(end, &["at", "as"]);
    let each = typed.find(end, &["per", "sf", "sqft", "ft", "foot"]).is_some();
    let price = money_from(&typed.pieces, end).is_some() && each;
    let as_of = typed.find(end, &["as"]).is_some_and(|at| typed.says(at + 1, &["of"]));
    (begins && (price || as_of)).then(|| {
        let rest = typed.rest(end).trim_matches(['(', ')', ',', ';', '[', ']', ' ']);
        Answer::line(
            format!("{} {area}  # {rest}", typed.lower(0)),
            "a figure is an area; anything else goes into a comment",
        )
    })
}

/// `prior appraisal 2019: 1,530 sf`, `bank appraisal 1,530`: an appraisal for somebody else is no record.
fn private_appraisal(typed: &Typed<'_>) -> Option<Answer> {
    let whose = [
        "prior",
        "previous",
        "old",
        "bank",
        "bank's",
        "lender",
        "lender's",
        "refi",
        "refinance",
        "fee",
        "private",
        "my",
        "our",
        "independent",
        "purchase",
        "mortgage",
        "last",
        "pre-sale",
    ];
    let at = typed
        .find(1, &["appraisal", "appraisal's", "appraiser", "appraiser's"])
        .filter(|at| *at <= 2)?;
    let (first, end, area) = area_from(&typed.pieces, at + 1)?;
    let is_plain = (at + 1..first).chain(end..typed.pieces.len()).all(|at| {
        typed.says(at, &["says", "from", "in", "of", "had", "has", "was", "got", "measured"])
            || typed.pieces[at].is_mark(":,=-–().")
            || typed.pieces[at].is_number() && typed.pieces[at].text.len() == 4
    });
    (typed.says(at - 1, &whose) && is_plain).then(|| {
        let title = typed.text(0, first).trim_end_matches([':', ',', '=', ' ', '-']);
        Answer::line(
            format!("figure {} {area} {}", quoted(title), typed.rest(end)).trim_end(),
            "a figure that is not the record's, a listing's or a plan's has a name of its own",
        )
    })
}

/// `record 1,810 sq ft "county" "2026"`: one title in two texts.
fn two_titles(typed: &Typed<'_>) -> Option<Answer> {
    let [.., one, two] = &typed.pieces[..] else { return None };
    let figures = ["record", "listing", "plan"];
    let counts = typed.find(1, &["counting"]).is_some();
    let texts = typed.pieces.iter().filter(|piece| is_text(Some(piece))).count();
    (typed.says(0, &figures) && !counts && texts == 2 && is_text(Some(one)) && is_text(Some(two)))
        .then(|| {
            let inner = |piece: &Piece| piece.text.trim_matches(['"', '“', '”']).trim().to_owned();
            Answer::line(
                format!(
                    "{} \"{} {}\"",
                    typed.text(0, typed.pieces.len() - 2),
                    inner(one),
                    inner(two)
                ),
                "a figure has one title",
            )
        })
}

/// `homestead exemption 140,000 school`: a sum that is exempt.
fn homestead_sum(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["homestead"]) && typed.says(1, &["exemption"]);
    let at = 2
        + (2..typed.pieces.len())
            .take_while(|&at| typed.pieces[at].is_mark("$:=") || typed.says(at, &["of", "is"]))
            .count();
    let sum = typed.piece(at).filter(|sum| sum.is_number() && begins)?;
    let value: u32 = sum.text.replace(',', "").parse().ok()?;
    let name = super::plainly(typed.rest(at + 1));
    let name = if name.is_empty() { "homestead".to_owned() } else { name };
    let is_year = (1900..2100).contains(&value) && !sum.text.contains(',');
    (!is_year
        && typed.pieces[at + 1..].iter().all(|piece| matches!(piece.sort, Sort::Word | Sort::Text)))
    .then(|| {
        Answer::line(
            format!("exemption ${} {}", sum.text, quoted(&name)),
            "a sum that is exempt is `exemption`, and its name goes last, with a `\"` on each side",
        )
    })
}

/// `exemption 20% "school"`: a share of the value is not known before the value is.
fn percent_off(typed: &Typed<'_>) -> Option<Answer> {
    let percent =
        typed.piece(2).is_some_and(|mark| mark.is_mark("%")) || typed.says(2, &["percent", "pct"]);
    let number = typed.piece(1).filter(|number| number.is_number() && percent)?;
    let rest = typed.rest(3);
    typed.says(0, &["exemption"]).then(|| {
        Answer::say(
            "an exemption is a sum of money, and a percentage is not one yet",
            format!(
                "take {}% of the value that the bill says it is of, and write `exemption` and that sum, then {}",
                number.text,
                if rest.is_empty() { "its name between two `\"`".to_owned() } else { format!("`{rest}`") }
            ),
        )
    })
}

/// `thence back to the P.O.B.`, `back to the place of beginning`: the call that leads back.
fn back_to_the_start(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        "thence",
        "then",
        "back",
        "to",
        "the",
        "point",
        "place",
        "of",
        "beginning",
        "begin",
        "pob",
        "p",
        "o",
        "b",
        "start",
        "return",
        "returning",
        "and",
        "said",
        "close",
        "closing",
        "iron",
        "pin",
        "pins",
        "rod",
        "pipe",
        "stake",
        "monument",
        "first",
        "a",
    ];
    // `S 85° 55' W to the point of beginning`: its bearing follows from the other calls.
    let bearing = super::calls::bearing_end(typed, usize::from(typed.says(0, &["thence"])));
    let rest = &typed.pieces[bearing.unwrap_or(0)..];
    // `then west along the road to the POB`: all of it says how the last call runs.
    let back = typed.pieces.iter().rposition(|piece| piece.is_word(&["to"])).unwrap_or(0);
    let runs = back > 0
        && !typed.line.contains(|c: char| c.is_ascii_digit())
        && typed.pieces[back..].iter().all(|piece| piece.is_word(&words) || piece.is_mark(".,;"));
    let plain = rest.iter().all(|piece| piece.is_word(&words) || piece.is_mark(".,;"));
    let (runs, only) = (runs && !plain, runs || plain);
    let letters = typed
        .pieces
        .windows(3)
        .any(|three| three[0].is_word(&["p"]) && three[1].is_mark(".") && three[2].is_word(&["o"]));
    // `thence back to the iron pin`
    let marked = typed.find(0, &["back", "return", "returning"]).is_some()
        && typed.find(0, &["pin", "pins", "rod", "pipe", "stake", "monument", "start"]).is_some();
    // `then back`
    let is_back = typed.says(0, &["then", "thence", "and"]) && typed.says(1, &["back"]);
    let is_back = is_back && typed.pieces.len() == 2;
    let ends = letters || marked || is_back || typed.find(0, &["pob", "beginning"]).is_some();
    let begins = bearing.is_some()
        || runs
        || typed.says(0, &["thence", "then", "back", "to", "return", "returning", "and"]);
    let beside = &typed.attempt.beside;
    let in_lot = beside.in_lot || begins_as_call(&beside.before);
    let line = match bearing {
        Some(end) => format!("close  # {}", typed.text(0, end)),
        None if runs => format!("close  # {}", typed.line),
        None => "close".to_owned(),
    };
    (only && ends && begins && in_lot)
        .then(|| Answer::line(line, "the call that leads back to where the lot begins is `close`"))
}

/// `garage/shop 20x30`, `garage & workshop`: one space with two words for its name.
fn two_words_for_a_space(typed: &Typed<'_>) -> Option<Answer> {
    let kind = kind_word(&typed.lower(0)).filter(|kind| !["open", "low"].contains(kind))?;
    let joint = typed.piece(1).filter(|joint| joint.is_mark("/&+") || joint.is_word(&["and"]))?;
    let word = typed.piece(2).filter(|word| word.sort == Sort::Word && word.text.len() > 2)?;
    let is_both = kind_word(&word.text.to_lowercase()).is_some() && !joint.is_mark("/");
    let ends = typed.pieces.len() == 3
        || typed.piece(3).is_some_and(Piece::is_number)
        || typed.says(3, &["start", "from", "recorded", "detached", "within"]);
    (!is_both && ends && !typed.line.contains('"')).then(|| {
        let name = super::levels::capitalized(typed.text(0, 3));
        Answer::line(
            format!("{kind} {} {}", quoted(&name), typed.rest(3)).trim_end(),
            "a space begins with its kind, then its name with a `\"` on each side",
        )
    })
}

/// `open to below 8x10`: what it is called is all that it says.
fn open_to_below(typed: &Typed<'_>) -> Option<Answer> {
    let says = typed.says(0, &["open"]) && typed.says(1, &["to"]);
    let is_size = typed.piece(3).is_some_and(Piece::is_number) && size_in(typed.line).is_some();
    (says && is_size && typed.says(2, &["below", "above"])).then(|| {
        Answer::line(
            format!("open \"Open\" {}", typed.rest(3)),
            "the name comes first, with a `\"` on each side",
        )
    })
}

/// `east;43;7;rear wall`, `2;north;30`: the cells of a row.
fn cells(typed: &Typed<'_>) -> Option<Answer> {
    let mut cells: Vec<&str> = typed.line.split(';').map(str::trim).collect();
    cells.retain(|cell| !cell.is_empty());
    if cells.len() < 2 || typed.line.contains('"') {
        return None;
    }
    let way = cells.iter().take(2).position(|cell| way_and_back(cell).is_some())?;
    let whole = |cell: Option<&&str>| cell.and_then(|cell| cell.parse::<u32>().ok());
    let after = &cells[way + 1..];
    let (feet, inches) = (whole(after.first()), whole(after.get(1)).filter(|inches| *inches < 12));
    let (length, used) = match (feet, inches) {
        (Some(feet), Some(inches)) => (format!("{feet}' {inches}\""), 2),
        (Some(_), None) => ((*after.first()?).to_owned(), 1),
        _ => return None,
    };
    let more = after.get(used..).unwrap_or_default().join(", ");
    let note = if more.is_empty() { String::new() } else { format!(" note {}", quoted(&more)) };
    Some(Answer::line(
        format!("{} {length}{note}", cells[way].to_lowercase()),
        "a row of a table: a side is its way and its length, with a space between them; a remark goes in a note",
    ))
}

/// `garage frame 20x22`: the face that was measured, and the size.
fn face_and_size(typed: &Typed<'_>) -> Option<Answer> {
    let kind = kind_word(&typed.lower(0)).filter(|kind| !["open", "low"].contains(kind))?;
    let face = match typed.lower(1).as_str() {
        "frame" | "studs" => "frame",
        "outside" | "exterior" => "outside",
        "inside" | "interior" => "inside",
        _ => return None,
    };
    typed.piece(2).filter(|number| number.is_number())?;
    size_in(typed.line)?;
    let name = super::levels::capitalized(kind);
    Some(Answer::line(
        format!("{kind} \"{name}\" measured to {face} {}", typed.rest(2)),
        "the face that was measured is `measured to`, right after the name",
    ))
}
