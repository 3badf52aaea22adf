//! Suggestions for whole lines at the head of a file.

use super::super::pieces::Piece;
use super::measure::{date_from, length_at, money_from};
use super::{Answer, Rule, Typed, first_of, is_text, plainly, quoted, remark};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        to_the_center,
        property_address,
        whole_wall,
        walls_of_sides,
        walls_of_a_level,
        account,
        rate,
        value_of_a_year,
        measured,
        deadline,
        place,
        homestead,
        exemption,
        north,
        interior,
        last_year,
        address,
        named_house,
        siding,
        walls_of_studs,
        declination,
        super::figures::name_after_a_figure,
    ];
    first_of(rules, typed)
}

/// `measured to center of party walls`: what is common is said of each wall.
fn to_the_center(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["measured", "taped", "measure"]);
    let center = typed.find(1, &["center", "centre", "centerline", "middle"])?;
    let walls = typed.find(center, &["party", "common", "shared"])?;
    (begins && walls > center).then(|| {
        Answer::say(
            "a wall that is shared with a neighbor says so itself, and its area reaches to its center",
            "write `common` after the length of each such wall, as `north 38' common`, and put this line after a `#`",
        )
    })
}

/// `measured by "the owner" 2026-04-11 using "25 ft tape"`: puts the date first, then `by`, then `with`.
fn measured(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["measured", "taped"]) || typed.says(1, &["to", "inside", "outside"]) {
        return None;
    }
    let (first, end, date) = date_from(&typed.pieces, 1)?;
    let with = ["with", "using", "by", "via"];
    let text_after = |words: &[&str]| {
        (1..typed.pieces.len())
            .find(|&at| typed.says(at, words) && is_text(typed.piece(at + 1)))
            .map(|at| at + 1)
    };
    let (by, using) = (text_after(&["by"]), text_after(&with[..2]));
    if by.is_none() && using.is_none() {
        return None;
    }
    let used = [by, using].into_iter().flatten().flat_map(|at| [at - 1, at]).chain(first..end);
    let used: Vec<usize> = used.chain([0]).collect();
    // `by "the owner" laser`
    const TOOLS: [&str; 4] = ["laser", "tape", "wheel", "ruler"];
    let tool = (end..typed.pieces.len())
        .find(|&at| using.is_none() && !used.contains(&at) && typed.says(at, &TOOLS));
    let others = (0..typed.pieces.len()).filter(|at| !used.contains(at) && Some(*at) != tool);
    let is_filler = |piece: &Piece| piece.is_word(&["on", "a", "the"]) || piece.is_mark(",;:");
    if !others.map(|at| &typed.pieces[at]).all(is_filler) {
        return None;
    }
    let mut line = format!("measured {date}");
    for (word, text) in [("by", by), ("with", using)] {
        if let Some(text) = text.and_then(|text| typed.piece(text)) {
            line += &format!(" {word} {}", text.text);
        }
    }
    if let Some(tool) = tool.and_then(|at| typed.piece(at)) {
        line += &format!(" with {}", quoted(&tool.text));
    }
    Some(Answer::line(line, "the date comes right after `measured`, then `by` and `with`"))
}

/// `measured from the inside, outer walls 10" thick, party walls 8"`: the face and the thickness of the walls.
pub(super) fn inside_and_thickness(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["measured", "taped", "all", "everything", "dimensions", "inside"]);
    let inside = typed.find(0, &["inside", "interior", "inner"]).filter(|inside| *inside <= 4)?;
    let says = typed.find(inside, &["walls", "wall"])?;
    let (at, thick) = super::measure::lengths(&typed.pieces, inside).into_iter().next()?;
    let is_outside = typed.find(0, &["outside"]).is_some();
    let is_thickness = thick.has_unit && thick.is_inches_alone() && says < at && at <= says + 3;
    (begins && is_thickness && !is_outside && typed.attempt.space.is_none()).then(|| {
        let rest = remark(typed.rest(thick.end).trim_start_matches("thick").trim_start());
        let rest = if rest.is_empty() { String::new() } else { format!("  # {rest}") };
        Answer::line(
            format!("faces inside\nwall {}{rest}", thick.text),
            "to which face the walls were measured is `faces`, and how thick they are, up to the frame or the siding, `wall`",
        )
    })
}

/// `front and back walls 8" thick`: the thickness of walls by their sides.
fn walls_of_sides(typed: &Typed<'_>) -> Option<Answer> {
    let sides = [
        "front", "back", "rear", "side", "sides", "outer", "outside", "exterior", "all", "other",
        "and", "the", "left", "right",
    ];
    let at = (0..typed.pieces.len()).find(|&at| !typed.says(at, &sides)).filter(|at| *at > 0)?;
    let at = at + usize::from(typed.says(at, &["walls", "wall"]));
    let at = at
        + (at..typed.pieces.len())
            .take_while(|&at| typed.pieces[at].is_mark(",:=") || typed.says(at, &["are", "is"]))
            .count();
    let thick = length_at(&typed.pieces, at).filter(|one| one.has_unit)?;
    let says = typed.find(0, &["walls", "wall"]).is_some_and(|wall| wall < at)
        && typed.says(thick.end, &["thick"])
        && thick.end + 1 == typed.pieces.len();
    (says && typed.attempt.space.is_none()).then(|| {
        Answer::line(
            format!("wall {}  # {}", thick.text, remark(typed.text(0, at))),
            "the thickness of the walls, from the inside to the frame or the siding, is `wall` and a length",
        )
    })
}

/// `walls upstairs are 5" thick`, `upstairs walls 5"`: how thick the walls of a level are. The file has one thickness for
/// the walls that were measured inside.
fn walls_of_a_level(typed: &Typed<'_>) -> Option<Answer> {
    const LEVELS: [&str; 18] = [
        "upstairs",
        "downstairs",
        "upper",
        "lower",
        "second",
        "2nd",
        "third",
        "3rd",
        "first",
        "1st",
        "main",
        "ground",
        "top",
        "floor",
        "level",
        "story",
        "storey",
        "attic",
    ];
    const OTHERS: [&str; 15] = [
        "walls",
        "wall",
        "ext",
        "exterior",
        "outer",
        "outside",
        "all",
        "the",
        "on",
        "of",
        "are",
        "is",
        "thick",
        "at",
        "thickness",
    ];
    let found = super::measure::lengths(&typed.pieces, 0);
    let [(first, thick)] = &found[..] else { return None };
    let others = (0..typed.pieces.len()).filter(|at| !(*first..thick.end).contains(at));
    let mut words = others.clone();
    let is_said = words.all(|at| {
        typed.says(at, &LEVELS)
            || typed.says(at, &OTHERS)
            || typed.pieces[at].is_mark(",:=()-–.")
            || typed.pieces[at].is_number()
    });
    let names = typed.find(0, &LEVELS).is_some() && typed.find(0, &["walls", "wall"]).is_some();
    let is_thin = thick.has_unit && thick.length < Length::from_nm(2 * Length::FOOT.nm());
    let is_wall = super::super::begins_as_wall(&typed.attempt.beside.before)
        && super::super::begins_as_wall(&typed.attempt.beside.after);
    if !is_said || !names || !is_thin || is_wall || typed.says(0, &["wall"]) {
        return None;
    }
    let said: Vec<String> =
        others.filter(|&at| typed.says(at, &LEVELS)).map(|at| typed.lower(at)).collect();
    Some(Answer::line(
        format!("wall {}  # {}", thick.text, said.join(" ")),
        "the thickness of the walls, from the inside to the frame or the siding, is `wall` and a length",
    ))
}

/// `walls 2x6 with drywall and sheathing, 7 inches`: how thick a wall is in all.
fn whole_wall(typed: &Typed<'_>) -> Option<Answer> {
    let (at, thick) = super::measure::lengths(&typed.pieces, 1).pop()?;
    let is_studs = typed.says(0, &["wall", "walls"])
        && typed.piece(2).is_some_and(|by| by.is_word(&["x"]) || by.is_mark("×"));
    let is_thick = thick.has_unit && thick.end == typed.pieces.len() && at > 4;
    (is_studs && is_thick && typed.attempt.space.is_none()).then(|| {
        let how = typed.text(1, at).trim_matches([',', ' ', '=', ':']);
        Answer::line(
            format!("wall {}  # {}", thick.text, remark(how)),
            "a wall is given by its whole thickness from the inside to the frame or the siding",
        )
    })
}

/// `property address: 27 Millrace Road`: two words for one.
fn property_address(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["property", "street", "house", "site", "situs"])
        && typed.says(1, &["address"]);
    let marks = (2..typed.pieces.len()).take_while(|&at| typed.pieces[at].is_mark(":=-–")).count();
    let text = typed.rest(2 + marks);
    (begins && !text.is_empty() && !text.contains('"')).then(|| {
        Answer::line(format!("address {}", quoted(text)), "a text has a `\"` on each side")
    })
}

/// `protest deadline 2026-05-15` becomes a comment, since the format has no place for this date.
fn deadline(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        "deadline",
        "due",
        "hearing",
        "protest",
        "appeal",
        "filing",
        "closing",
        "inspection",
        "sold",
        "bought",
        "purchased",
        "built",
    ];
    let begins = typed.piece(0).is_some_and(|first| {
        first.is_word(&words) || first.is_word(&["filed", "file", "arb", "last", "appraised"])
    });
    let at = typed.find(0, &words)?;
    if !begins || at > 2 || typed.line.contains('"') || typed.says(1, &["year"]) {
        return None;
    }
    // `protest deadline May 15`: a day without its year.
    let says_day = (typed
        .says(1, &["deadline", "due", "hearing", "by", "before", "until", "on", "date"])
        || typed.says(0, &["hearing"]))
        && (1..typed.pieces.len()).any(|at| super::month_named(&typed.lower(at)).is_some());
    if !says_day {
        date_from(&typed.pieces, 1)?;
    }
    money_from(&typed.pieces, 0).is_none().then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "a sides file has no place for this date; a comment begins with `#`",
        )
    })
}

const STATES: [(&str, &str, &str); 11] = [
    ("texas", "tx", "tex"),
    ("washington", "wa", "wash"),
    ("colorado", "co", "colo"),
    ("california", "ca", "calif"),
    ("new york", "ny", "n.y"),
    ("ohio", "oh", "ohio"),
    ("florida", "fl", "fla"),
    ("georgia", "ga", "geo"),
    ("new jersey", "nj", "n.j"),
    ("virginia", "va", "virg"),
    ("michigan", "mi", "mich"),
];

/// Whether a text is the name of a state with rules, or its two capital letters.
pub(super) fn is_state(text: &str) -> bool {
    STATES.iter().any(|(name, code, _)| text.to_lowercase() == *name || text == code.to_uppercase())
}

/// The state that a text names, by its name or at its end by its letters.
pub(super) fn state_in(text: &str) -> Option<&'static str> {
    let rest = plainly(text).to_lowercase();
    let words: Vec<&str> =
        rest.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty()).collect();
    let last = words.last()?;
    let is_in = |name: &str| {
        let parts: Vec<&str> = name.split(' ').collect();
        words.windows(parts.len()).any(|window| window == &parts[..])
    };
    // `West Virginia` and `Washington, D.C.` are other places.
    let other = is_in("west virginia") || is_in("d c") || is_in("dc");
    let named =
        STATES.iter().filter(|(name, code, short)| is_in(name) || last == code || last == short);
    let known: Vec<&'static str> = named.map(|(name, ..)| *name).filter(|_| !other).collect();
    // `Ohio County, Texas`: the state is named last.
    known.iter().rev().find(|name| rest.ends_with(**name)).or(known.first()).copied()
}

/// `place Harris County, TX` becomes the state, which decides the rules.
fn place(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["place", "state"]) || typed.pieces.len() < 2 {
        return None;
    }
    let Some(state) = state_in(typed.rest(1)) else {
        const PARTS: [&str; 7] = ["county", "parish", "city", "town", "township", "district", "co"];
        return typed.find(1, &PARTS).map(|_| {
            Answer::say(
                "the place is the state whose rules apply, and this line names none",
                "write `place` and the state, as `place texas`, or `place none` to leave its rules out",
            )
        });
    };
    let line = format!("place {}", state.replace(' ', "-"));
    Some(Answer::line(line, "the place is the state whose rules apply"))
}

/// `homestead since Jan 1, 2021`, `homestead yes`: suggests or asks for the first year.
fn homestead(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["homestead", "homesteaded"]) {
        return None;
    }
    if let Some((_, end, sum)) = money_from(&typed.pieces, 1) {
        let since = typed.find(end, &["since"])?;
        let year = typed.piece(since + 1).filter(|year| year.is_number())?;
        let line = format!("exemption {sum} \"homestead\"\nhomestead since {}", year.text);
        return Some(Answer::line(
            line,
            "the exemption has its amount, and the homestead its first year, on a line of its own",
        ));
    }
    // `homestead since '21`
    let short = typed.pieces.windows(2).find(|two| {
        two[0].is_mark("'’‘") && two[1].touches && two[1].is_number() && two[1].text.len() == 2
    });
    if let Some([_, year]) = short {
        return Some(Answer::line(
            format!("homestead since 20{}", year.text),
            "a homestead has the first year of its exemption, in four digits",
        ));
    }
    match typed.pieces.iter().filter(|piece| piece.is_year()).collect::<Vec<_>>()[..] {
        // From a day within a year, the exemption begins with that year or the next.
        [year]
            if typed.pieces.iter().any(|piece| {
                super::month_named(&piece.text.to_lowercase()).is_some_and(|month| month > 1)
            }) =>
        {
            let first: i32 = year.text.parse().ok()?;
            let lines = [first, first + 1].map(|year| format!("homestead since {year}"));
            Some(Answer::Lines(
                lines.to_vec(),
                "a homestead has the first year of its exemption: which is it".to_owned(),
            ))
        }
        [year] => {
            let at = typed.pieces.iter().position(|piece| piece.at == year.at)?;
            let more = remark(typed.rest(at + 1));
            let more = more.trim_matches([',', ';', '+', '&', ' ', '.', '-']);
            let comment = if more.is_empty() { String::new() } else { format!("  # {more}") };
            Some(Answer::line(
                format!("homestead since {}{comment}", year.text),
                "a homestead has the first year of its exemption",
            ))
        }
        [] => Some(Answer::say(
            "a homestead has the first year of its exemption",
            "write `homestead since` and the year; without a homestead leave the line out",
        )),
        _ => None,
    }
}

/// `exemption over 65 $10,000`: puts the amount before the name.
fn exemption(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["exemption", "exemptions"]) || typed.line.contains('"') {
        return None;
    }
    let (first, end, sum) = money_from(&typed.pieces, 1)?;
    let name = plainly(&format!("{} {}", typed.text(1, first), typed.rest(end)));
    let short = typed.says(end, &["k", "m", "thousand", "million"]);
    (first > 1 && !name.is_empty() && !short).then(|| {
        Answer::line(
            format!("exemption {sum} \"{name}\""),
            "an exemption has its amount, then what it is called with a `\"` on each side",
        )
    })
}

/// `plan north is 15° east of true north`: the bearing as it is wanted.
fn plan_from_true(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["plan", "page", "sketch", "drawing", "paper", "file"])
        && typed.says(1, &["north"]);
    let is_true = typed.find(2, &["true"])?;
    let small = ["is", "lies", "points", "about", "approx", "roughly", "to", "the", "runs"];
    let number = (2..is_true).find(|&at| !typed.says(at, &small))?;
    let degrees = typed.piece(number).filter(|degrees| begins && degrees.is_number())?;
    let toward = (number + 1..is_true).find(|&at| {
        !typed.says(at, &["deg", "degrees", "to", "the"]) && !typed.pieces[at].is_mark("°º")
    })?;
    let letter = match typed.lower(toward).as_str() {
        "east" | "e" | "right" | "clockwise" => "E",
        "west" | "w" | "left" | "counterclockwise" => "W",
        _ => return None,
    };
    (typed.says(toward + 1, &["of", "from"]) && is_true == toward + 2).then(|| {
        Answer::line(
            format!("true north N {}° {letter}", degrees.text),
            "how the plan's north lies is `true north` and its bearing",
        )
    })
}

/// `true north 12.5°`: offers both directions, east and west; `true north 356°` has one.
fn north(typed: &Typed<'_>) -> Option<Answer> {
    if let Some(answer) = plan_from_true(typed) {
        return Some(answer);
    }
    if !typed.says(0, &["true", "north"])
        || !typed.says(usize::from(typed.says(0, &["true"])), &["north"])
    {
        return None;
    }
    let begins = typed.says(0, &["true"]);
    let at = (2..typed.pieces.len()).find(|&at| {
        !typed.says(at, &["is", "lies", "runs", "about", "approx", "roughly", "points"])
    })?;
    let number = typed.piece(at).filter(|piece| begins && piece.is_number())?;
    let unit = |piece: &Piece| piece.is_mark("°º") || piece.is_word(&["deg", "degrees"]);
    let end = at + 1 + typed.pieces[at + 1..].iter().take_while(|piece| unit(piece)).count();
    // `12.5 degrees east of up`, `12° to the right of up`: the north of the file, whose true bearing is wanted, lies
    // as far west of true north.
    let turned = usize::from(typed.says(end, &["to"]));
    let turned = turned + usize::from(turned > 0 && typed.says(end + 1, &["the"]));
    let end = end + turned;
    let of_up = typed.says(end + 1, &["of"])
        && (2..=4).contains(&(typed.pieces.len() - end - 1).min(9))
        && typed.find(end + 2, &["up", "north", "plan", "sketch", "page"]).is_some();
    let is_east = typed.says(end, &["east", "e", "right", "clockwise"]);
    if of_up && (is_east || typed.says(end, &["west", "w", "left"])) {
        let toward = if is_east { "W" } else { "E" };
        return Some(Answer::line(
            format!("true north N {}° {toward}", number.text),
            "the bearing is the true one of the file's `north`, which lies as far the other way",
        ));
    }
    let bare = end == typed.pieces.len();
    // `356°` is counted clockwise from north.
    let azimuth: Option<u32> =
        number.text.parse().ok().filter(|degrees| (271..360).contains(degrees));
    if let Some(degrees) = azimuth.filter(|_| bare) {
        return Some(Answer::line(
            format!("true north N {}° W", 360 - degrees),
            "a bearing counts from north or south: this azimuth is west of north",
        ));
    }
    bare.then(|| {
        let lines = ["E", "W"].map(|toward| format!("true north N {}° {toward}", number.text));
        Answer::Lines(lines.into(), "a bearing begins at N or S and ends in E or W".to_owned())
    })
}

/// `interior partly seen` becomes `interior not seen` with a comment.
fn interior(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["interior"]) || typed.pieces.len() < 2 {
        return None;
    }
    let partly =
        ["partly", "partially", "partial", "some", "mostly", "half", "only", "part", "parts"];
    typed.find(1, &partly)?;
    let line = format!("interior not seen  # {}", remark(typed.rest(1)));
    Some(Answer::line(line, "the inside is `seen` as a whole, or `not seen`"))
}

/// `magnetic declination 2° 15' E`
fn declination(typed: &Typed<'_>) -> Option<Answer> {
    (typed.says(0, &["magnetic", "declination", "variation"]) && typed.find(0, &["declination", "north", "variation"]).is_some()).then(|| {
        Answer::say(
            "a sides file has no line for the declination of a needle",
            "if the sketch is turned against true north, write `true north` and the true bearing of the way that the file calls north, as `true north N 12° E`; anything else goes after a `#`",
        )
    })
}

/// `walls 2x6`: a thickness, which the answer to `wall 2x6` works out.
fn walls_of_studs(typed: &Typed<'_>) -> Option<Answer> {
    let framing = [
        "framing",
        "framed",
        "frame",
        "stud",
        "studs",
        "construction",
        "thick",
        "w",
        "with",
        "and",
        "drywall",
        "sheetrock",
        "plaster",
        "siding",
    ];
    let more = |at: &usize| typed.says(*at, &framing) || typed.pieces[*at].is_mark("/,&+");
    let end = (1..typed.pieces.len()).rev().find(|at| !more(at)).map_or(1, |last| last + 1);
    // The usual board is in the thickness that is worked out.
    let rest =
        typed.text(1, end).trim_end_matches("1/2\"").trim_end_matches([' ', ',', '+', '/', '&']);
    let rest = rest.trim_end_matches(" and").trim_end_matches(" with").trim_end();
    let is_stud =
        ["2x4", "2x6", "2 x 4", "2 x 6", "2×4", "2×6"].contains(&rest.to_lowercase().as_str());
    let is_more = typed.says(0, &["wall"]) && rest.len() < typed.rest(1).len();
    ((typed.says(0, &["walls"]) || is_more) && is_stud)
        .then(|| Answer::line(format!("wall {rest}"), "how thick the walls are is `wall`"))
}

/// `siding vinyl`, `veneer stucco 7/8"`: no veneer, or its thickness.
fn siding(typed: &Typed<'_>) -> Option<Answer> {
    let kinds = [
        "vinyl",
        "wood",
        "fiber",
        "aluminum",
        "cedar",
        "lap",
        "clapboard",
        "hardie",
        "shingle",
        "metal",
        "steel",
        "board",
    ];
    if typed.says(0, &["siding"])
        && typed.pieces.len() >= 2
        && !typed.pieces.iter().any(Piece::is_number)
        && typed.find(1, &kinds).is_some()
    {
        let line = format!("veneer none  # {}", remark(typed.line));
        return Some(Answer::line(line, "without brick or stone the veneer is `none`"));
    }
    let named = typed.says(0, &["veneer"])
        && typed.piece(1).is_some_and(|piece| piece.sort == super::Sort::Word);
    let first = (2..typed.pieces.len().min(4))
        .find(|&at| length_at(&typed.pieces, at).is_some())
        .filter(|_| named)?;
    let measure = length_at(&typed.pieces, first)
        .filter(|measure| measure.has_unit && measure.end == typed.pieces.len())?;
    let line = format!("veneer {}  # {}", measure.text, typed.text(1, first));
    Some(Answer::line(line, "a veneer is given by its thickness alone"))
}

/// `parcel # 04-117-220`: here `#` begins no comment.
pub(super) fn account_in_the_comment(typed: &Typed<'_>) -> Option<Answer> {
    let is_account = typed.says(0, &["account", "acct", "parcel", "pin", "apn", "geo"]);
    let comment = typed.attempt.beside.comment.as_deref().unwrap_or_default();
    let number = comment.trim_start_matches('#').trim();
    let is_number = number.starts_with(|c: char| c.is_alphanumeric())
        && number.contains(|c: char| c.is_ascii_digit())
        && !number.contains([' ', '"', '\'']);
    (is_account && typed.pieces.len() == 1 && is_number && number.len() > 3).then(|| {
        Answer::line(
            format!("account {}", quoted(number)),
            "after a `#` is a comment: the number stands without it, with a `\"` on each side",
        )
    })
}

/// `parcel no. 12-345-678` becomes an `account`.
fn account(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["account", "acct", "parcel", "pin", "apn", "geo"])
        || typed.line.contains('"')
    {
        return None;
    }
    let mut at = 1;
    // `APN/PIN: 104-417`
    let others =
        ["no", "number", "id", "is", "num", "nr", "apn", "pin", "parcel", "acct", "account"];
    while typed.says(at, &others) || typed.piece(at).is_some_and(|mark| mark.is_mark(".:=#/")) {
        at += 1;
    }
    let rest = typed.rest(at);
    (at > 1 && !rest.is_empty()).then(|| {
        Answer::line(
            format!("account \"{rest}\""),
            "the number on the record is an `account`, with a `\"` on each side",
        )
    })
}

/// `tax rate .0098 "school"`, `tax rate $0.98/$100`, `tax rate 98 cents per $100`: per how many dollars.
fn rate(typed: &Typed<'_>) -> Option<Answer> {
    use rust_decimal::Decimal;
    // `school tax 0.98%`, `county tax rate 0.45%`
    let tax = typed.find(1, &["tax", "taxes"]).filter(|tax| *tax <= 3);
    let number = tax.map(|tax| tax + 1 + usize::from(typed.says(tax + 1, &["rate"])));
    let percent = number.filter(|&at| {
        typed.piece(at).is_some_and(Piece::is_number)
            && typed.piece(at + 1).is_some_and(|mark| mark.is_mark("%"))
            && at + 2 == typed.pieces.len()
    });
    if let (Some(tax), Some(at)) = (tax, percent) {
        return Some(Answer::line(
            format!("tax rate {} per $100 {}", typed.text(at, at + 1), quoted(typed.text(0, tax))),
            "a percentage is so many dollars per $100",
        ));
    }
    if !typed.says(0, &["tax"]) || !typed.says(1, &["rate"]) {
        return None;
    }
    let number = |at: usize| typed.piece(at).filter(|piece| piece.is_number());
    let mut at = 2;
    while typed.piece(at).is_some_and(|piece| piece.is_mark("$:=")) || typed.says(at, &["is", "of"])
    {
        at += 1;
    }
    let mut rate: Decimal = number(at)?.text.parse().ok()?;
    let cents = typed.says(at + 1, &["cents", "cent", "c"])
        || typed.piece(at + 1).is_some_and(|mark| mark.is_mark("¢"));
    let mut end = at + 1 + usize::from(cents);
    if cents {
        rate = rate.checked_div(Decimal::from(100))?;
    }
    let is_per = typed.says(end, &["per", "for", "on", "a", "each"])
        || typed.piece(end).is_some_and(|mark| mark.is_mark("/"));
    let mut per = None;
    if is_per {
        end += 1;
        end += usize::from(typed.piece(end).is_some_and(|mark| mark.is_mark("$")));
        per = match (
            number(end).map(|piece| piece.text.replace(',', "")).as_deref(),
            typed.lower(end).as_str(),
        ) {
            (Some("100"), _) | (_, "hundred") => Some(100),
            (Some("1000"), _) | (_, "thousand") => Some(1_000),
            (Some("1"), _) | (_, "dollar") => Some(1),
            _ => return None,
        };
        end += 1;
    }
    let name = typed.rest(end);
    let is_named = name.is_empty() || is_text(typed.piece(end)) && end + 1 == typed.pieces.len();
    let is_small = !cents && rate > Decimal::ZERO && rate < Decimal::new(1, 1);
    let (rate, per, cause) = match per {
        Some(1) => (
            rate.checked_mul(Decimal::from(100))?,
            100,
            "a tax rate says per how many dollars: this one is of one dollar",
        ),
        Some(per) => (rate, per, "a tax rate is a number, then `per $100` or `per $1,000`"),
        None if is_small => (
            rate.checked_mul(Decimal::from(100))?,
            100,
            "a tax rate says per how many dollars: this one is of one dollar",
        ),
        None => return None,
    };
    let per = crate::units::decimal::thousands(per);
    let line = format!("tax rate {} per ${per} {name}", rate.normalize());
    (is_named && line.trim_end() != typed.line).then(|| Answer::line(line.trim_end(), cause))
}

/// `assessed last year $350,000`, `last year's value: $350,000`: the value of the year before.
fn last_year(typed: &Typed<'_>) -> Option<Answer> {
    let speaks = |at: usize| {
        typed.says(at, &["last", "prior", "previous"])
            && (typed.says(at + 1, &["year", "years", "year's", "assessed", "assessment", "value"]))
    };
    let at = (0..typed.pieces.len().min(4)).find(|&at| speaks(at))?;
    let (first, end, sum) = money_from(&typed.pieces, 0)?;
    let filler = |piece: &Piece| {
        piece.is_mark(",;:.=()-–'’")
            || piece.is_word(&[
                "last",
                "prior",
                "previous",
                "year",
                "years",
                "year's",
                "assessed",
                "assessment",
                "value",
                "valued",
                "was",
                "is",
                "at",
                "the",
                "of",
                "in",
                "s",
                "it",
                "for",
                "taxable",
            ])
    };
    let market = typed.find(0, &["market", "appraised"]).is_some();
    let only = typed.pieces[..first].iter().chain(&typed.pieces[end..]).all(filler);
    let line = format!("last year assessed {sum}");
    (only && !market && at < first && line != typed.line).then(|| {
        Answer::line(line, "the value of the year before is `last year assessed` and the sum")
    })
}

/// `property "the Dr's house" 9 Quarry Hill Rd`: a name, and an address after it.
fn address(typed: &Typed<'_>) -> Option<Answer> {
    let rest = typed.rest(2);
    let begins = typed.says(0, &["property", "house"])
        && is_text(typed.piece(1))
        && typed.piece(2)?.is_number()
        && !rest.contains('"');
    let is_spoken = typed.pieces.iter().skip(3).any(|piece| piece.sort == super::Sort::Word);
    let measures = super::measures(rest);
    (begins && is_spoken && !measures).then(|| {
        Answer::line(
            format!("property {}\naddress \"{rest}\"", typed.text(1, 2)),
            "an address has a line of its own, with a `\"` on each side",
        )
    })
}

/// `house: "brick, one story"` above the first level: what the file is about.
fn named_house(typed: &Typed<'_>) -> Option<Answer> {
    let text = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=-–")));
    let beside = &typed.attempt.beside;
    let before = beside.before.to_lowercase();
    let is_above = typed.attempt.space.is_none()
        && !["level", "floor", "story", "storey", "stairs"]
            .iter()
            .any(|word| before.contains(word))
        && !super::super::begins_as_side(&beside.after);
    let begins = typed.says(0, &["house"]) && is_text(typed.piece(text));
    (is_above && begins && text + 1 == typed.pieces.len()).then(|| {
        let name = typed.text(text, text + 1);
        let line = match before.starts_with("property") {
            true => format!("# house: {}", super::plainly(name)),
            false => format!("property {name}"),
        };
        Answer::line(line, "what the file is about is `property`, above the first level")
    })
}

/// `2026 market value: $431,000`: moves the year to its place.
fn value_of_a_year(typed: &Typed<'_>) -> Option<Answer> {
    let year = typed.piece(0).filter(|year| year.is_year())?;
    let word = match typed.lower(1).as_str() {
        "market" | "appraised" | "total" => "market",
        "assessed" | "taxable" => "assessed",
        _ => return None,
    };
    let (first, end, sum) = money_from(&typed.pieces, 1)?;
    (first <= 4 && end == typed.pieces.len()).then(|| {
        let this = format!("value {word} {sum} year {}", year.text);
        match word {
            "assessed" => Answer::Lines(
                vec![format!("last year assessed {sum}"), this],
                format!("the value of the tax year begins with `value`, that of the year before with `last year`: which is {}?", year.text),
            ),
            _ => Answer::line(this, "a value begins with `value`, and its year comes after `year`"),
        }
    })
}

/// `units tenths`, `units feet and tenths`: feet with a point.
pub(super) fn units_in_tenths(typed: &Typed<'_>) -> Option<Answer> {
    let words = [
        "tenths", "tenth", "decimal", "decimals", "feet", "foot", "ft", "of", "a", "and", "in",
        "with",
    ];
    let tenths = ["tenths", "tenth", "decimal", "decimals"];
    let only = (1..typed.pieces.len())
        .all(|at| typed.says(at, &words) || typed.pieces[at].is_mark(",.:="));
    (typed.says(0, &["units", "unit"]) && typed.find(1, &tenths).is_some() && only).then(|| {
        Answer::line(
            "units feet",
            "a number with a point is feet and tenths: `30.5` is 30' 6\"; the unit is `feet`",
        )
    })
}
