//! Lines whose matter can be told by a word in them, and which say too little, or too much, for one line of the format:
//! what to write instead.

use rust_decimal::Decimal;

use super::super::pieces::Sort;
use super::levels::capitalized;
use super::measure::{area_at, lengths, written};
use super::worths::sum_at;
use super::{Answer, Rule, Typed, first_of, quoted};
use crate::units::length::Length;

/// `knee walls 4' high both sides`, `siding: vinyl over 2x4`, `millage: school 12.2, county 6.4`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    // The quotation mark of a name does not come right after a number, as that of inches does.
    let begins_a_name = typed.line.char_indices().any(|(at, c)| {
        let before = typed.line.get(..at).and_then(|before| before.chars().next_back());
        c == '"' && !before.is_some_and(|before| before.is_ascii_digit())
    });
    if typed.line.contains('#') || begins_a_name {
        return None;
    }
    let plain = super::plainly(typed.line);
    let typed = &Typed { line: &plain, pieces: super::cut(&plain), attempt: typed.attempt };
    let rules: &[Rule] = &[
        share_of_the_market,
        several_mills,
        taxes_of_a_year,
        clad,
        stud_walls,
        part_finished,
        parts_of_a_basement,
        low_ceiling,
        out_of_a_wall,
        hangs_over,
    ];
    first_of(rules, typed)
}

/// Lines that the rules after these would take for something else.
pub(super) fn early(typed: &Typed<'_>) -> Option<Answer> {
    if typed.line.contains('#') || typed.pieces.len() > 16 {
        return None;
    }
    let rules: &[Rule] = &[
        inside_but_for_one,
        open_to_above,
        board_on_walls,
        cut_corner,
        figure_with_a_question,
        measured_in_meters,
    ];
    first_of(rules, typed)
}

/// `inside measurements except garage`: the face of all spaces but one.
fn inside_but_for_one(typed: &Typed<'_>) -> Option<Answer> {
    let except = typed.find(1, &["except", "but", "excluding", "save"])?;
    let face = ["inside", "interior", "outside", "exterior"]
        .into_iter()
        .find(|face| (0..except).any(|at| typed.says(at, &[face])))?;
    let face = if matches!(face, "inside" | "interior") { "inside" } else { "outside" };
    let other = if face == "inside" { "outside" } else { "inside" };
    let small = ["for", "the", "at", "in", "of", "my"];
    let what = (except + 1..typed.pieces.len()).find(|&at| !typed.says(at, &small))?;
    let kind = super::kind_word(&typed.lower(what))?;
    let words = [
        "all",
        "everything",
        "inside",
        "interior",
        "outside",
        "exterior",
        "measurements",
        "measurement",
        "measured",
        "taped",
        "dims",
        "dimensions",
        "lengths",
        "are",
        "is",
        "walls",
        "numbers",
        "faces",
        "to",
        "from",
    ];
    let plain = (0..except).all(|at| typed.says(at, &words) || typed.pieces[at].is_mark(",:"));
    (plain && what + 1 == typed.pieces.len() && is_above_the_spaces(typed)).then(|| {
        Answer::say(
            "what holds for all lengths is `faces` and the face, and a space that differs says so on its line",
            format!(
                "write `faces {face}` here, and `measured to {other}` after the name of the {kind}, as `{kind} \"{}\" measured to {other}`",
                capitalized(kind)
            ),
        )
    })
}

/// `two story foyer 8' x 9'` on the lower level: the same as open to above.
fn two_stories_high(typed: &Typed<'_>) -> Option<String> {
    // `foyer 8' x 10', two stories tall`, `foyer vaulted 8' x 10'`
    let first = typed.says(0, &["foyer", "entry", "entryway"]);
    let is_tall = typed.find(1, &["vaulted", "cathedral", "story", "stories", "storey"]).is_some();
    let is_low = typed.attempt.beside.has_level_above || typed.attempt.house.is_none();
    if first && is_tall && !is_low && !typed.line.contains(['"', '#']) {
        return Some(format!("{} open to above", typed.text(0, 1)));
    }
    let is_two = typed.says(0, &["two", "2", "double", "two-story", "2-story"]);
    let noun = typed.find(1, &["foyer", "entry", "entryway", "hall"]).filter(|at| *at <= 3)?;
    let is_high = (0..noun).any(|at| {
        typed.says(at, &["story", "storey", "stories", "height", "high", "two-story", "2-story"])
    });
    let is_below = !typed.attempt.beside.has_level_above && typed.attempt.house.is_some();
    (is_two && is_high && is_below && !typed.line.contains('"'))
        .then(|| format!("{} open to above {}", typed.text(noun, noun + 1), typed.rest(noun + 1)))
}

/// `foyer open to above 9' x 8'`: the floor of the level above is missing there, and this one is not.
fn open_to_above(typed: &Typed<'_>) -> Option<Answer> {
    if let Some(line) = two_stories_high(typed) {
        return open_to_above(&Typed {
            line: &line,
            pieces: super::cut(&line),
            attempt: typed.attempt,
        });
    }
    let open = typed.find(0, &["open"])?;
    typed.says(open + 1, &["to"]).then_some(())?;
    typed.says(open + 2, &["above", "upstairs", "2nd", "second", "ceiling"]).then_some(())?;
    let begins_a_walk = super::super::begins_as_side(&typed.attempt.beside.after);
    // The walls of a named space would fall to the walk above.
    let lines = match begins_a_walk {
        true => "this line and before each of its walls below",
        false => "this line",
    };
    (!typed.line.contains('"') || open > 0).then(|| {
        let name = match typed.lower(0).as_str() {
            "open" => "Foyer".to_owned(),
            name => capitalized(name),
        };
        Answer::say(
            "a room that is open to above counts on its own level; what is taken off is the floor that is missing above it",
            format!(
                "put a `#` before {lines}; on the level above it write `open {}`, with where it starts, and its sides on the lines below",
                quoted(&name)
            ),
        )
    })
}

/// `walls 5" + 1/2" drywall`: how thick the walls are, in two parts.
fn board_on_walls(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["wall", "walls", "ext", "exterior"]) && is_above_the_spaces(typed);
    let found = lengths(&typed.pieces, 1);
    let [(_, one), (second, two)] = &found[..] else { return None };
    let plus = typed.text(one.end, *second).trim();
    let words = [
        "drywall",
        "sheetrock",
        "plaster",
        "siding",
        "sheathing",
        "board",
        "gypsum",
        "stucco",
        "plywood",
    ];
    let named = typed.find(two.end, &words).is_some();
    (begins
        && named
        && ["+", "plus", "and", "&"].contains(&plus)
        && one.is_inches()
        && two.is_inches())
    .then(|| {
        Answer::line(
            format!(
                "wall {}  # {}",
                written(one.length + two.length, one),
                super::plainly(typed.line)
            ),
            "how thick the walls are, with all that is on them, is `wall`",
        )
    })
}

/// `record 1,529 sq ft (incl. porch?)`: what is not known of a figure is a remark.
fn figure_with_a_question(typed: &Typed<'_>) -> Option<Answer> {
    typed.says(0, &["record", "listing", "plan"]).then_some(())?;
    let (end, area) = area_at(&typed.pieces, 1)?;
    let last = typed.pieces.iter().rfind(|piece| !piece.is_mark(").]"))?;
    let is_bare = typed.pieces[end..]
        .iter()
        .all(|piece| piece.sort == Sort::Word || piece.is_mark("?,;:().-–/&"));
    (last.is_mark("?") && is_bare).then(|| {
        let said = super::remark(typed.rest(end));
        let said = said.trim_matches(['(', ')', ',', ' ', '-', ';']);
        Answer::line(
            format!("{} {area}  # {said}", typed.lower(0)),
            "what is not known of a figure is a remark, and goes after a `#`",
        )
    })
}

/// `measured 2026-05-09 by "the owner" with "tape" in meters`: the unit of bare numbers is a line of its own.
fn measured_in_meters(typed: &Typed<'_>) -> Option<Answer> {
    typed.says(0, &["measured", "taped"]).then_some(())?;
    let last = typed.pieces.iter().rposition(|piece| !piece.is_mark(").,"))?;
    let is_unit = typed.says(last, &["meters", "metres", "meter", "metre"]);
    let before = last.checked_sub(1).filter(|_| is_unit)?;
    let is_in = typed.says(before, &["in"]) || typed.pieces[before].is_mark("(,");
    let end = if is_in { before } else { return None };
    let rest = typed.text(0, end).trim_end_matches([',', ' ', '(']).to_owned();
    let has_day = typed.pieces[..end].iter().any(super::super::pieces::Piece::is_number);
    (has_day && is_above_the_spaces(typed)).then(|| {
        Answer::line(
            format!("{rest}\nunits meters"),
            "the unit of bare numbers is `units`, on a line of its own",
        )
    })
}

/// `45 deg corner 3' x 3'`: a corner that is cut off is one slanted wall.
fn cut_corner(typed: &Typed<'_>) -> Option<Answer> {
    let is_angle = typed.piece(0)?.text == "45"
        && (typed.says(1, &["deg", "degree", "degrees"]) || typed.piece(1)?.is_mark("°-"));
    typed.find(1, &["corner", "cut", "clipped", "angle", "chamfer"])?;
    let found = lengths(&typed.pieces, 2);
    let [(_, one), (_, two)] = &found[..] else { return None };
    (is_angle && one.has_unit && two.has_unit && typed.attempt.space.is_some()).then(|| {
        Answer::say(
            "a corner that is cut off is one slanted wall",
            format!(
                "write `diagonal`, and how far it runs each of the two ways in which you walked it, as `diagonal north {} east {}`",
                one.text, two.text
            ),
        )
    })
}

/// Whether no space has been opened above.
fn is_above_the_spaces(typed: &Typed<'_>) -> bool {
    typed.attempt.space.is_none()
}

/// `assessed at 92% of market 395,000`: both sums.
fn share_of_the_market(typed: &Typed<'_>) -> Option<Answer> {
    let per_cent = typed.pieces.iter().position(|piece| piece.is_mark("%"))?;
    let share: Decimal = typed.piece(per_cent.checked_sub(1)?)?.text.parse().ok()?;
    let market = typed.find(per_cent, &["market"])?;
    typed.find(0, &["assessed", "appraised", "taxed"]).filter(|at| *at < per_cent)?;
    let (at, sum) =
        (market + 1..typed.pieces.len()).find_map(|at| Some((at, sum_at(typed, at)?)))?;
    let plain: String = sum.0.chars().filter(|c| c.is_ascii_digit() || *c == '.').collect();
    let assessed = plain.parse::<Decimal>().ok()?.checked_mul(share)? / Decimal::ONE_HUNDRED;
    let is_share = share > Decimal::ZERO && share <= Decimal::ONE_HUNDRED;
    let no_more = typed.pieces[..at].iter().filter(|piece| piece.is_number()).count() == 1;
    let assessed = assessed.normalize();
    let whole = i64::try_from(assessed).ok().filter(|_| assessed.is_integer());
    let written = whole.map_or_else(|| assessed.to_string(), crate::units::decimal::thousands);
    (is_share && no_more && sum.1 == typed.pieces.len() && assessed.scale() <= 2).then(|| {
        Answer::line(
            format!("value market {} assessed ${written}  # {share}% of the market value", sum.0),
            "a share has no line: the value that is taxed is written as the sum that it makes",
        )
    })
}

/// `millage: school 12.2, county 6.4`: a rate for each unit.
fn several_mills(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["millage", "mills", "mill", "levies"]) {
        return None;
    }
    let mut rates: Vec<String> = Vec::new();
    let mut name = String::new();
    for piece in &typed.pieces[1..] {
        if piece.is_number() {
            let rate: Decimal = piece.text.parse().ok()?;
            if name.is_empty() || rate >= Decimal::from(200) {
                return None;
            }
            let rate = rate.normalize();
            rates.push(format!("tax rate {rate} per $1,000 \"{}\"", name.trim()));
            name.clear();
        } else if piece.sort == Sort::Word {
            name.push(' ');
            name.push_str(&piece.text);
        } else if !piece.is_mark(":,;=-&") {
            return None;
        }
    }
    (rates.len() > 1 && name.is_empty()).then(|| {
        Answer::line(
            rates.join("\n"),
            "a mill is a dollar per $1,000, and each rate has a line of its own",
        )
    })
}

/// `2026 taxes payable 2027`: the year whose taxes they are.
fn taxes_of_a_year(typed: &Typed<'_>) -> Option<Answer> {
    let year = typed.piece(0).filter(|year| year.is_year())?;
    let rest = typed.rest(1);
    let is_plain = typed.pieces[1..].iter().all(|piece| {
        piece.is_year()
            || piece.is_word(&["tax", "taxes", "pay", "payable", "due", "in", "year", "yr", "roll"])
            || piece.is_mark(",()-–/")
    });
    let says = typed.says(1, &["tax", "taxes", "pay", "payable"]);
    (says && is_plain && is_above_the_spaces(typed)).then(|| {
        Answer::line(
            format!("tax year {}  # {}", year.text, super::remark(rest)),
            "the year whose taxes they are is `tax year`",
        )
    })
}

/// `siding: vinyl over 2x4`, above the spaces: walls without brick or stone.
fn clad(typed: &Typed<'_>) -> Option<Answer> {
    const BRICK: [&str; 6] = ["brick", "stone", "masonry", "rock", "veneer", "half"];
    let begins = typed.says(0, &["siding", "cladding", "exterior", "outside"]);
    let names = typed.find(
        0,
        &[
            "siding",
            "vinyl",
            "stucco",
            "clapboard",
            "hardie",
            "shingle",
            "shingles",
            "cedar",
            "aluminum",
        ],
    )?;
    let is_whole = typed.find(0, &BRICK).is_none();
    let is_plain = lengths(&typed.pieces, 0).iter().all(|(_, one)| !one.has_unit);
    (begins && names <= 3 && is_whole && is_plain && is_above_the_spaces(typed)).then(
        || match typed.attempt.beside.has_veneer {
            true => Answer::line(
                format!("# {}", typed.line),
                "the file says what its veneer is; anything else goes into a comment",
            ),
            false => Answer::line(
                format!("veneer none  # {}", super::remark(typed.line)),
                "without brick or stone the veneer is `none`",
            ),
        },
    )
}

/// `ext walls 2x6 w/ stucco`: the size of the lumber is not how thick the wall is.
fn stud_walls(typed: &Typed<'_>) -> Option<Answer> {
    let wall = typed.find(0, &["walls", "wall", "studs", "framing"]).filter(|at| *at <= 2)?;
    let lumber = (wall..typed.pieces.len()).find(|&at| {
        typed.says(at, &["2x4", "2x6", "2x8"])
            || typed.piece(at).is_some_and(|piece| piece.text == "2")
                && typed.says(at + 1, &["x", "by"])
                && typed
                    .piece(at + 2)
                    .is_some_and(|piece| ["4", "6", "8"].contains(&piece.text.as_str()))
    })?;
    (lumber <= wall + 3 && is_above_the_spaces(typed)).then(|| {
        Answer::say(
            "the size of the lumber does not say how thick the whole wall is",
            "if rooms were taped inside, write `wall` and the thickness from the inside of the wall to its outside, measured at a door or a window, as `wall 6 1/2\"`; if all was taped outside, put a `#` before this line",
        )
    })
}

/// `lower level 50% finished`, `basement 60% done`: each part of a level is a space of its own.
fn part_finished(typed: &Typed<'_>) -> Option<Answer> {
    let level = typed.find(0, &["basement", "level", "cellar", "walkout", "floor"])?;
    let per_cent = typed.find_mark(level, "%")?;
    typed.find(per_cent, &["finished", "done", "complete", "unfinished", "fin"])?;
    let number = typed.piece(per_cent.checked_sub(1)?).filter(|number| number.is_number())?;
    let name = quoted(&capitalized(typed.text(0, level + 1)));
    (level <= 2 && lengths(&typed.pieces, 0).iter().all(|(_, one)| !one.has_unit)).then(|| {
        Answer::say(
            "each part of a level, finished or not, is a space of its own, and a share of it has no line",
            format!(
                "write `level {name} below grade  # {}%`, without `below grade` if all of its floor is above the ground; on the lines below it `living \"Finished\"` and `unfinished \"Unfinished\"`, each followed by its sides",
                number.text
            ),
        )
    })
}

/// `basement 600 finished, 604 unfinished`: the areas of its parts.
fn parts_of_a_basement(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["basement", "bsmt", "attic", "upstairs"]) {
        return None;
    }
    let area_of = |word: &str| {
        let at = typed.find(1, &[word])?;
        let near = [at.checked_sub(1), Some(at + 1), at.checked_sub(2), at.checked_sub(3)];
        near.into_iter().flatten().find_map(|at| {
            let number = typed.piece(at).filter(|piece| piece.is_number())?;
            let area = area_at(&typed.pieces, at).map(|(_, area)| area);
            (number.text.len() >= 2).then(|| area.unwrap_or(format!("{} sq ft", number.text)))
        })
    };
    let (finished, unfinished) = (area_of("finished")?, area_of("unfinished")?);
    let name = super::levels::capitalized(&typed.lower(0));
    let below = if typed.says(0, &["basement", "bsmt"]) { " below grade" } else { "" };
    let name = if name == "Bsmt" { "Basement".to_owned() } else { name };
    (finished != unfinished).then(|| {
        Answer::say(
            "each part of a level is a space of its own, with its area on the record",
            format!(
                "write `level \"{name}\"{below}`, and below it `living \"Finished\" recorded {finished}` and `unfinished \"Unfinished\" recorded {unfinished}`, each followed by its sides"
            ),
        )
    })
}

/// `knee walls 4' high both long sides`, `slope ceiling 5' line is 4' in from the back wall`: what lies too low is a space.
fn low_ceiling(typed: &Typed<'_>) -> Option<Answer> {
    let knee = typed.find(0, &["knee", "kneewall", "kneewalls"]);
    let sloped = typed
        .find(0, &["slope", "sloped", "sloping", "slanted", "slants", "slopes"])
        .filter(|_| typed.find(0, &["ceiling", "ceilings", "roof"]).is_some());
    knee.or(sloped).filter(|at| *at <= 2)?;
    Some(Answer::say(
        "what lies under a ceiling lower than 5' is a space of its own, `low`, and is taken off",
        "for each side that is too low write `low \"Low ceiling\" under 5'` with `start` and where it starts, and below it its sides: along the wall as long as it is too low there, and across it as far as the ceiling stays below 5'; to keep this line as a remark, put a `#` before it",
    ))
}

/// `fireplace bumps out 2' x 6' on this wall`: with a floor it is in the walk, without one it is not.
fn out_of_a_wall(typed: &Typed<'_>) -> Option<Answer> {
    let is_window = typed.says(0, &["garden", "greenhouse", "picture"])
        && typed.says(1, &["window", "windows"]);
    let what = match is_window {
        true => 1,
        false => {
            typed.find(0, &["fireplace", "chimney", "hearth", "stack"]).filter(|at| *at <= 2)?
        }
    };
    typed.find(
        what,
        &["bumps", "sticks", "juts", "bump", "out", "projects", "outside", "bumpout"],
    )?;
    let found = lengths(&typed.pieces, what);
    let (deep, wide) = match &found[..] {
        [(_, one), (_, two)] => match one.length < two.length {
            true => (one.text.clone(), two.text.clone()),
            false => (two.text.clone(), one.text.clone()),
        },
        _ => ("2'".to_owned(), "6'".to_owned()),
    };
    if typed.says(what, &["window", "windows"]) {
        return Some(Answer::say(
            "what stands out of a wall is in the walk if the floor of the house goes into it; a window that hangs above the floor has none",
            format!(
                "if it hangs above the floor, type the wall as if it were not there and put a `#` before this line; otherwise type the wall in three parts, with {deep} out before the middle one, which is {wide} long, and {deep} back after it"
            ),
        ));
    }
    Some(Answer::say(
        "what stands out of a wall is in the walk if the floor of the house goes into it; a chimney has no floor",
        format!(
            "if it is a chimney alone, type the wall as if it were not there and put a `#` before this line; otherwise type the wall in three parts, with {deep} out before the middle one, which is {wide} long, and {deep} back after it"
        ),
    ))
}

/// `cantilever 2' past foundation`: the walls of a level are typed where they stand.
fn hangs_over(typed: &Typed<'_>) -> Option<Answer> {
    let what = typed
        .find(0, &["cantilever", "cantilevered", "cantilevers", "overhang", "overhangs"])
        .filter(|at| *at <= 3)?;
    let is_upper = typed.find(0, &["past", "beyond", "over", "foundation", "below"]).is_some();
    let is_short = lengths(&typed.pieces, what).first().is_some_and(|(_, one)| {
        one.has_unit && one.length < Length::from_nm(8 * Length::FOOT.nm())
    });
    let roof = typed.find(0, &["roof", "eave", "eaves", "soffit", "porch"]).is_some();
    (is_upper && is_short && !roof).then(|| {
        Answer::say(
            "a floor that hangs over the one below counts as far as its own walls",
            "type the walls of each level where they stand: a floor that reaches further has the longer lengths in its own walk, on its own level; put a `#` before this line",
        )
    })
}
