//! Lines as short as in a notebook, which lean on what their writer knew.

use super::super::pieces::{Piece, Sort};
use super::heads::state_in;
use super::measure::{area_from, date_from, length_at, lengths, money_from};
use super::{About, Answer, Rule, Typed, first_of, quoted, remark};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        account_with_a_remark,
        feet_dot_inches,
        neighbor_sold,
        rates_of_several,
        state_and_office,
        measured_by,
        thickness_of_brick,
        faces_of_walls,
        back_home,
        garage_for_cars,
        open_on_some_sides,
        less_the_stair,
        land_without_a_lot,
        start_before_a_wall,
        straight_at_an_angle,
        knee_walls,
        along_before_the_bearing,
        another_is_inside,
        level_without_brick,
        recorded_of_a_space,
        thick_and_inside,
        appraised_for_a_loan,
        easement,
        bay_with_its_width_alone,
    ];
    first_of(rules, typed)
}

/// Whether it stands above all levels.
fn is_at_the_top(typed: &Typed<'_>) -> bool {
    typed.attempt.space.is_none() && !typed.attempt.beside.before.starts_with("level")
}

/// The answer to another line, with these words in a comment behind it.
fn answered(typed: &Typed<'_>, line: &str, said: &str) -> Option<Answer> {
    let said = remark(said);
    Some(match super::answer(line, typed.attempt)? {
        Answer::Lines(lines, cause) => {
            let with = |line: &String| match line.split_once('\n') {
                Some((first, rest)) => format!("{}\n{rest}", behind(first, &said)),
                None => behind(line, &said),
            };
            Answer::Lines(lines.iter().map(with).collect(), cause)
        }
        Answer::Ask { cause, help, asks, about } => {
            let asks = Box::new(asks.with_comment(&format!("  # {said}")));
            Answer::Ask { cause, help, asks, about }
        }
        Answer::Say { cause, help, about } => Answer::Say {
            cause,
            help: format!("{help}; put `{said}` after a `#` at its end"),
            about,
        },
    })
}

/// A line with a comment, or with one more word in the comment that it has.
fn behind(line: &str, said: &str) -> String {
    let join = if line.contains('#') { "," } else { "  #" };
    format!("{line}{join} {said}")
}

/// `account R-200411 (homestead)`, `account 0412-33-018, homestead`: the number and a remark.
fn account_with_a_remark(typed: &Typed<'_>) -> Option<Answer> {
    let first = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=#")));
    let is_break = |at: usize| {
        typed.piece(at).is_some_and(|mark| mark.is_mark("(,;["))
            || typed.says(at, &["also", "and", "formerly", "was", "old", "see"])
    };
    let at = (first + 1..typed.pieces.len()).find(|&at| is_break(at))?;
    let number = typed.text(first, at);
    let has_digit = |text: &str| text.contains(|c: char| c.is_ascii_digit());
    let said = remark(typed.rest(at));
    let is_one = typed.says(0, &["account", "acct"]) && has_digit(number) && !number.contains('"');
    (is_one && !said.is_empty()).then(|| {
        Answer::line(
            format!("account {}  # {}", quoted(number), super::plainly(&said)),
            "an account is the number alone, as it stands on the record",
        )
    })
}

/// `dims in ft.in`, `lengths as feet.inches`: a point is always one of decimals.
fn feet_dot_inches(typed: &Typed<'_>) -> Option<Answer> {
    let plain = typed.line.to_lowercase();
    let is_said = ["ft.in", "feet.inches", "ft.inches", "feet.in", "ft . in"]
        .iter()
        .any(|form| plain.contains(form));
    (is_said && is_at_the_top(typed)).then(|| {
        Answer::say(
            "after a point stand tenths and hundredths of a foot, never inches: 30.10 would be 30' 1 3/16\"",
            "put a `#` before this line, and type feet and inches with their marks, as `30' 10\"`",
        )
    })
}

/// `comp 1: 8 Larch Ct 1,290 sf sold 8/25 for 398K`: another house with its sale.
fn neighbor_sold(typed: &Typed<'_>) -> Option<Answer> {
    const BEGINS: [&str; 11] = [
        "comp",
        "comps",
        "comparable",
        "neighbor",
        "neighbour",
        "neighbors",
        "neighboring",
        "nearby",
        "sale",
        "sold",
        "next-door",
    ];
    let (area_first, area_end, area) = area_from(&typed.pieces, 1)?;
    let sold = typed.find(1, &["sold", "closed", "sale"])?;
    let after = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark(":.)-"));
    let is_numbered = typed.piece(1).is_some_and(|one| one.is_number()) && after(2);
    let name = typed.name(if is_numbered { 3 } else { 1 }, area_first);
    let name = name.trim_matches([',', ' ', ':', '-']);
    let price = price_after(typed, area_end.max(sold))?;
    let begins = typed.says(0, &BEGINS) && typed.attempt.space.is_none() && sold > area_first;
    let is_known = typed.line.contains('"') || name.is_empty();
    if !begins || is_known {
        return None;
    }
    let head = format!("comparable {} {area} sold {price} on", quoted(name));
    Some(match date_from(&typed.pieces, area_end) {
        Some((_, _, day)) => Answer::line(
            format!("{head} {day}"),
            "another house that was sold is a `comparable`: its name, its size, the price and the day",
        ),
        None => Answer::say(
            "another house that was sold is a `comparable`, and has the day of its sale",
            format!(
                "write `{head}` and the day, as year-month-day; without the day leave the line out"
            ),
        ),
    })
}

/// The first price from this piece on: `$398,000`, `398,000` or `398K`.
fn price_after(typed: &Typed<'_>, from: usize) -> Option<String> {
    if let Some((_, _, price)) = money_from(&typed.pieces, from) {
        return Some(price);
    }
    (from..typed.pieces.len()).find_map(|at| {
        let number = typed.piece(at).filter(|piece| piece.is_number())?;
        let value: i64 = number.text.replace(',', "").parse().ok()?;
        let thousands = typed.says(at + 1, &["k", "thousand"]);
        let all = if thousands { value.checked_mul(1_000)? } else { value };
        let sum = crate::units::decimal::thousands(all);
        (10_000..100_000_000).contains(&all).then(|| format!("${sum}"))
    })
}

/// `ISD 1.05 County .38`, `school 1.05`: rates by the name of who levies them.
fn rates_of_several(typed: &Typed<'_>) -> Option<Answer> {
    const UNITS: [&str; 12] = [
        "isd", "school", "schools", "county", "city", "college", "hospital", "mud", "esd", "water",
        "fire", "road",
    ];
    let mut lines: Vec<String> = Vec::new();
    let mut first = 0;
    for at in 0..typed.pieces.len() {
        let Some(number) = typed.piece(at).filter(|piece| piece.is_number()) else { continue };
        let named = (first..at).any(|at| typed.says(at, &UNITS));
        let words = (first..at)
            .all(|at| typed.pieces[at].sort == Sort::Word || typed.pieces[at].is_mark(",;:=/&"));
        let rate: rust_decimal::Decimal = number.text.parse().ok()?;
        let is_rate = number.text.contains('.') && rate < rust_decimal::Decimal::from(4);
        let name = typed.text(first, at).trim_matches([',', ';', ':', '=', '/', '&', ' ']);
        let is_known = (first..at).any(|at| typed.says(at, &["tax", "rate"]));
        if !named || !words || !is_rate || is_known {
            return None;
        }
        lines.push(format!("tax rate {} per $100 {}", rate.normalize(), quoted(name)));
        first = at + 1;
    }
    (first == typed.pieces.len() && !lines.is_empty() && is_at_the_top(typed)).then(|| {
        Answer::line(lines.join("\n"), "a rate is per $100 or per $1,000 of value, and has a name")
    })
}

/// `Texas - Juniper CAD`: the state decides the rules, the office goes into a comment.
fn state_and_office(typed: &Typed<'_>) -> Option<Answer> {
    const OFFICES: [&str; 6] = ["cad", "county", "appraisal", "assessor", "district", "parish"];
    let at = (1..3).find(|&at| typed.piece(at).is_some_and(|mark| mark.is_mark("-–—,/:")))?;
    let state = state_in(typed.text(0, at))?;
    let is_alone = typed.text(0, at).to_lowercase() == state;
    let office = remark(typed.rest(at + 1));
    let names_one = typed.find(at + 1, &OFFICES).is_some();
    (is_alone && names_one && is_at_the_top(typed) && !office.contains('"')).then(|| {
        Answer::line(
            format!("place {}  # {office}", state.replace(' ', "-")),
            "the place is the state whose rules apply",
        )
    })
}

/// `measured by: homeowner and neighbor, laser`: who measured and with what; the day is asked for.
fn measured_by(typed: &Typed<'_>) -> Option<Answer> {
    let colon = typed.piece(2).is_some_and(|mark| mark.is_mark(":=-–"));
    let begins = typed.says(0, &["measured", "taped"]) && typed.says(1, &["by"]) && colon;
    if !begins || date_from(&typed.pieces, 3).is_some() || typed.line.contains('"') {
        return None;
    }
    let tools = ["laser", "tape", "wheel", "lidar"];
    let with = (4..typed.pieces.len()).find(|&at| {
        typed.piece(at - 1).is_some_and(|mark| mark.is_mark(",;/"))
            && (at..typed.pieces.len()).any(|at| typed.says(at, &tools))
    });
    let with = with.or(typed.find(4, &["with"]).map(|at| at + 1));
    let end = with.map_or(typed.pieces.len(), |at| at - 1);
    let who = quoted(typed.text(3, end));
    let tool = with.map_or_else(String::new, |at| {
        format!(" with {}", quoted(typed.rest(at + usize::from(typed.says(at, &["with"])))))
    });
    (who.len() > 2).then(|| {
        Answer::say(
            "the line has no whole day in it",
            format!(
                "write `measured`, the day as year-month-day with four, two and two digits, and then `by {who}{tool}`; if nobody knows the day, put a `#` before this line"
            ),
        )
        .about(About::Day)
    })
}

/// `brick 4" + 1" air gap`: what is outside the frame, added up.
fn thickness_of_brick(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["brick", "veneer", "stone", "masonry"]);
    // `brick veneer 4"`
    let first = 1 + usize::from(typed.says(1, &["veneer", "brick", "stone"]));
    let one = length_at(&typed.pieces, first).filter(|one| one.is_inches() && begins)?;
    // `veneer 4" brick + 1" air`
    let stop = one.end + usize::from(typed.says(one.end, &["brick", "stone", "face"]));
    let plus = typed.piece(stop).is_some_and(|mark| mark.is_mark("+&,"))
        || typed.says(stop, &["and", "plus", "with"]);
    let two = length_at(&typed.pieces, stop + 1).filter(|two| two.is_inches() && plus)?;
    let names = ["air", "gap", "space", "cavity", "airspace", "air-space", "of"];
    let is_gap = (two.end..typed.pieces.len()).all(|at| typed.says(at, &names));
    let bare =
        typed.piece(stop).is_some_and(|mark| mark.is_mark("+")) && typed.says(0, &["veneer"]);
    let all = super::measure::written(one.length + two.length, &one);
    (is_gap && (bare || two.end < typed.pieces.len()) && is_at_the_top(typed)).then(|| {
        Answer::line(
            format!("veneer {all}  # {}", super::plainly(typed.line)),
            "a veneer is given by all that is outside the frame, the gap too",
        )
    })
}

/// `Ext: brick front, vinyl sides & rear`: what differs from wall to wall stands on the walls.
fn faces_of_walls(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["ext", "exterior", "outside", "facade", "cladding", "siding"])
        && typed.piece(1).is_some_and(|mark| mark.is_mark(":.-–="));
    let brick = typed.find(2, &["brick", "stone", "masonry"])?;
    let other = ["vinyl", "siding", "wood", "stucco", "hardie", "cement", "frame", "lap"];
    typed.find(2, &other)?;
    let where_ = ["front", "sides", "side", "rear", "back", "left", "right"];
    typed.find(2, &where_).filter(|_| begins && is_at_the_top(typed))?;
    Some(Answer::say(
        format!(
            "{} on some walls and none on others is said on the walls: here stands what most have",
            typed.lower(brick)
        ),
        "put a `#` before this line; write `veneer none` above the first level, and `veneer 4\"`, or as thick as it is, at the end of the line of each wall that has it",
    ))
}

/// `home`, `back home` below the last wall: the walk leads back to its start.
fn back_home(typed: &Typed<'_>) -> Option<Answer> {
    let words: Vec<String> = (0..typed.pieces.len()).map(|at| typed.lower(at)).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let is_home = matches!(
        words[..],
        ["home"]
            | ["back", "home"]
            | ["home", "again"]
            | ["and", "home"]
            | ["closes"]
            | ["home", "."]
    );
    let beside = &typed.attempt.beside;
    let ends = beside.after.is_empty() || !super::super::begins_as_wall(&beside.after);
    let in_a_walk = super::super::begins_as_wall(&beside.before) && typed.attempt.space.is_some();
    (is_home && in_a_walk && ends && !typed.is_in_lot()).then(|| {
        Answer::say(
            "the last wall leads back to where the walk began, and has its length like any other",
            "measure it, and write the way that it runs and its length, as `west 42' 7\"`; if it cannot be measured, write `by closing` for its length; if the walk has come back already, leave this line out",
        )
    })
}

/// `2 car det. garage 24x24`: for how many cars is part of the name.
fn garage_for_cars(typed: &Typed<'_>) -> Option<Answer> {
    let apart = ["detached", "det", "freestanding", "separate"];
    let is_count = typed.piece(0).is_some_and(|one| one.is_number())
        || typed.says(0, &["one", "two", "three", "double", "single"]);
    let car = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark("-")));
    let garage = typed.find(car + 1, &["garage"])?;
    let between =
        (car + 1..garage).all(|at| typed.says(at, &apart) || typed.pieces[at].is_mark("."));
    let fits = is_count && typed.says(car, &["car"]) && between && garage > car + 1;
    super::size_in(typed.line).filter(|_| fits)?;
    let line = format!("garage {}, detached", typed.rest(garage + 1));
    let name = format!("{} car", typed.text(0, 1));
    answered(typed, &line, &name)
}

/// `carport on east side 12 x 20 open 3 sides`: how open it is, in a comment.
fn open_on_some_sides(typed: &Typed<'_>) -> Option<Answer> {
    super::kind_word(&typed.lower(0))?;
    super::size_in(typed.line)?;
    let open = ["open", "screened", "enclosed", "walled", "closed", "glassed"];
    let first = typed.find(1, &open)?;
    let sides = typed.find(first + 1, &["sides", "side"])?;
    let small = ["on", "all", "both", "one", "two", "three", "four", "in"];
    let between = (first + 1..sides)
        .all(|at| typed.says(at, &small) || typed.piece(at).is_some_and(|one| one.is_number()));
    let counts = first + 1 < sides;
    let before =
        first - usize::from(typed.piece(first - 1).is_some_and(|mark| mark.is_mark(",;(-–")));
    let after =
        sides + 1 + usize::from(typed.piece(sides + 1).is_some_and(|mark| mark.is_mark(",;)")));
    let line = typed.without(before, after.min(typed.pieces.len()));
    (between && counts).then(|| answered(typed, &line, typed.text(first, sides + 1))).flatten()
}

/// `less stair opening 30 sf`, `stair opening 30 sf`: a stair is counted on its level, and no area of it is the record's.
fn less_the_stair(typed: &Typed<'_>) -> Option<Answer> {
    let first = usize::from(typed.says(0, &["less", "minus", "deduct", "subtract"]));
    let first = first + usize::from(typed.says(first, &["the", "a"]));
    let is_stair = typed.says(first, &["stair", "stairs", "stairway", "stairwell"]);
    let next = first + 1 + usize::from(typed.says(first + 1, &["well"]));
    let is_hole = typed.says(next, &["opening", "hole", "void", "cutout"]);
    let (at, end, area) = area_from(&typed.pieces, next)?;
    let fits = is_stair && (is_hole || first > 0) && end == typed.pieces.len();
    (fits && at <= next + 2).then(|| {
        Answer::say(
            format!(
                "a stair counts on its level and is not deducted; an opening is drawn by its walls, {area} does not say which"
            ),
            "for the stairs write `stair \"Stairs\"`; for a hole in the floor beside them, open to the level below, `open \"Opening\"`, which is deducted; then where it begins, as `start east 3' north 8'`, and on the lines below it its four sides",
        )
    })
}

/// `Land 0.21 AC`, `land size 9,148 sf`, `county lot size 0.52 ha`, `site 0.52 ha per county`, `0.52 ha lot`: the area of the
/// land, outside a lot.
fn land_without_a_lot(typed: &Typed<'_>) -> Option<Answer> {
    const LAND: [&str; 6] = ["land", "acreage", "lot", "site", "plot", "parcel"];
    const SIZE: [&str; 9] =
        ["size", "area", "is", "about", "approx", "of", "acreage", "total", "says"];
    const SOURCE: [&str; 23] = [
        "county",
        "county's",
        "assessor",
        "assessor's",
        "deed",
        "deeds",
        "plat",
        "survey",
        "record",
        "records",
        "recorded",
        "card",
        "the",
        "our",
        "per",
        "by",
        "from",
        "on",
        "according",
        "to",
        "in",
        "of",
        "map",
    ];
    let is_mark = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark(":=-–.,()"));
    // Who says so stands before the land or after its area.
    let source = (0..typed.pieces.len())
        .take_while(|&at| typed.says(at, &SOURCE[..13]) || at > 0 && is_mark(at))
        .count();
    // `0.6 ac` alone
    if let Some((end, area)) = super::measure::area_at(&typed.pieces, 0)
        && ["acre", "hectare"].iter().any(|unit| area.contains(unit))
        && (end..typed.pieces.len())
            .all(|at| is_mark(at) || typed.says(at, &["more", "or", "less", "total", "of", "land"]))
        && !typed.is_in_lot()
    {
        return Some(Answer::say(
            "an area in such a unit is that of the land, and stands on the line of its lot",
            format!(
                "take this line out; above the calls or the sides of the land write `lot \"Lot\" recorded {area}`; if you have none of them, put this line after a `#`"
            ),
        ));
    }
    let (land, at, end, area) = match typed.piece(source).filter(|_| typed.says(source, &LAND)) {
        Some(_) => {
            let mut first = source + 1;
            while typed.says(first, &SIZE) || is_mark(first) {
                first += 1;
            }
            let (at, end, area) = area_from(&typed.pieces, first)?;
            (source, (at == first).then_some(at)?, end, area)
        }
        None => {
            let (at, end, area) = area_from(&typed.pieces, source)?;
            let land = end + usize::from(typed.says(end, &["of"]));
            let is_first = source == 0 && at == 0 && typed.says(land, &LAND);
            let stop = land + 1 + usize::from(typed.says(land + 1, &["size", "area"]));
            (is_first.then_some(land)?, at, stop, area)
        }
    };
    let is_told = |at: usize| is_mark(at) || typed.says(at, &SOURCE);
    let ends = (end..typed.pieces.len()).all(is_told);
    // `lot 0.52 ha` and `parcel 0.52 ha` are nearly as the format has them.
    let is_near = typed.says(land, &["lot", "plot", "parcel"]) && source == 0 && at == land + 1;
    if !ends || is_near {
        return None;
    }
    if typed.is_in_lot() {
        return Some(Answer::say(
            "the area of the land stands on the line of the lot",
            format!(
                "take this line out; at the end of the line that begins with `lot` write `recorded {area}`"
            ),
        ));
    }
    let said = |first: usize, end: usize| {
        let said = remark(typed.text(first, end));
        if ["the", "our"].contains(&said.to_lowercase().as_str()) { String::new() } else { said }
    };
    let told = [said(0, source.min(at)), said(end, typed.pieces.len())];
    let told: Vec<&str> = told
        .iter()
        .map(|text| text.trim_matches([',', ':', ' ']))
        .filter(|text| !text.is_empty())
        .collect();
    let comment = if told.is_empty() { String::new() } else { format!("  # {}", told.join(" ")) };
    let line = format!("lot \"Lot\" recorded {area}{comment}");
    if super::lots::calls_follow(typed) {
        return Some(Answer::line(
            line,
            "the land is a `lot`; its calls, if there are any, stand on the lines below it",
        ));
    }
    Some(Answer::say(
        "land is drawn from its calls, the bearings and lengths of the deed or the plat, as a `lot`",
        format!(
            "write `{line}`, and each call on a line below it, as `bearing N 0° 30' E 120'`; until you have the calls, put a `#` before this line"
        ),
    ))
}

/// `start SW corner, north 30'`: where the first wall of a walk begins needs no words.
fn start_before_a_wall(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["start", "begin", "starting", "beginning", "from"]);
    let comma = (2..typed.pieces.len().min(8))
        .find(|&at| typed.pieces[at].is_mark(",;:") || typed.says(at, &["then", "go"]))?;
    let corner = typed.find(1, &["corner", "cor"]).is_some_and(|at| at < comma);
    let first = comma + 1 + usize::from(typed.says(comma + 1, &["then", "go"]));
    let wall = typed.rest(first);
    let ends = length_at(&typed.pieces, first + 1)
        .is_some_and(|one| one.end == typed.pieces.len() && one.has_unit);
    let is_wall = super::super::begins_as_side(wall) && ends;
    (begins && corner && is_wall).then(|| {
        Answer::line(
            format!("{wall}  # {}", super::plainly(typed.text(0, comma))),
            "a walk begins where its first wall begins; a name for that corner goes into a comment",
        )
    })
}

/// `45 degree wall 5' 8"`: a wall at an angle says between which two ways it runs.
fn straight_at_an_angle(typed: &Typed<'_>) -> Option<Answer> {
    let degrees = typed.piece(0).filter(|one| one.is_number() && one.text == "45")?;
    let sign = typed.piece(1).is_some_and(|mark| mark.is_mark("°º˚"))
        || typed.says(1, &["deg", "degree", "degrees"]);
    let named = typed.says(2, &["wall", "side", "corner", "angle", "diagonal"]);
    let length = length_at(&typed.pieces, 3).filter(|one| sign && named && one.has_unit)?;
    (length.end == typed.pieces.len() && !typed.is_in_lot()).then(|| {
        let quarters = [("N", "E"), ("S", "E"), ("S", "W"), ("N", "W")];
        let line = |(from, toward): (&str, &str)| {
            format!("bearing {from} {}° {toward} {}", degrees.text, length.text)
        };
        Answer::Lines(
            quarters.map(line).into(),
            "a slanted wall says between which two ways it runs".to_owned(),
        )
    })
}

/// `knee walls 4' high both sides, 3' deep`: what is too low to count along two walls.
fn knee_walls(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["knee", "kneewall", "kneewalls", "knee-walls", "knee-wall"]);
    let all = lengths(&typed.pieces, 1);
    let says = |end: usize, words: &[&str]| typed.says(end, words);
    let deep = all.iter().find(|(_, one)| {
        says(one.end, &["deep", "in", "wide", "back", "from"]) && !says(one.end, &["high", "tall"])
    });
    let high = all.iter().find(|(_, one)| says(one.end, &["high", "tall"]));
    let (deep, high) = (&deep?.1.text, &high.filter(|_| begins)?.1.text);
    typed.attempt.space.as_ref()?;
    Some(Answer::say(
        format!(
            "what lies under a ceiling that is too low is a `low` part of the room: a strip {deep} deep along each such wall"
        ),
        format!(
            "for each side write `low \"Eaves\" under 5'` with where it begins, `start` and how far east and north of corner 1, and on the lines below it its four sides, {deep} one way and the length of the wall the other; if the ceiling is 5' high further in than where the wall of {high} stands, the strip goes that far"
        ),
    ))
}

/// `thence along the north line 76.3' S 89°30' E`: the bearing after the length.
fn along_before_the_bearing(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["thence", "then", "along", "bearing", "with"]);
    let (at, length) = lengths(&typed.pieces, 1).into_iter().next()?;
    let way =
        length.end + usize::from(typed.piece(length.end).is_some_and(|mark| mark.is_mark(",")));
    let ends = typed.says(typed.pieces.len() - 1, &["e", "w", "east", "west"]);
    let angle = typed.rest(way);
    let is_angle =
        typed.says(way, &["n", "s", "north", "south"]) && angle.contains(['°', 'º', '˚']);
    let words =
        (1..at).all(|at| typed.pieces[at].sort == Sort::Word || typed.pieces[at].is_mark(","));
    let said = remark(typed.text(usize::from(typed.says(0, &["thence", "then", "bearing"])), at));
    (begins && is_angle && ends && words).then(|| {
        let comment = if said.is_empty() { String::new() } else { format!("  # {said}") };
        Answer::line(
            format!("bearing {angle} {}{comment}", length.text),
            "a call is its bearing and then its length; anything else goes into a comment",
        )
    })
}

/// `living "House" (brick, garage is inside this)`: another space lies in its walk; nothing is said of a face.
fn another_is_inside(typed: &Typed<'_>) -> Option<Answer> {
    const OTHERS: [&str; 5] = ["garage", "porch", "carport", "breezeway", "storage"];
    // `house incl. garage` above its walls
    let with = 1 + usize::from(typed.piece(2).is_some_and(|point| point.is_mark(".")));
    let is_house = typed.says(0, &["house", "home"])
        && typed.says(1, &["incl", "including", "includes", "with"])
        && typed.says(with + 1, &OTHERS)
        && with + 2 == typed.pieces.len()
        && super::super::begins_as_side(&typed.attempt.beside.after);
    if is_house {
        let kind = typed.lower(with + 1);
        return Some(Answer::line(
            format!("living \"House\"  # {}", remark(typed.rest(1))),
            format!(
                "what lies in the walk of a space is on a line of its own below these walls, as `{kind} \"{}\" within \"House\"`, and not counted then; here it is a remark",
                super::levels::capitalized(&kind)
            ),
        ));
    }
    super::kind_word(&typed.lower(0)).filter(|_| super::is_text(typed.piece(1)))?;
    let other = typed.find(2, &OTHERS)?;
    let inside = typed.find(2, &["inside", "within", "included", "in"])?;
    let plain = typed.pieces[2..].iter().all(|piece| {
        piece.sort == Sort::Word && !piece.is_word(&["start", "from", "recorded", "measured"])
            || piece.is_mark("(),;:.-–&/")
    });
    let names_a_place = typed.says(inside + 1, &["the"]) && typed.says(inside + 2, &OTHERS);
    (plain && inside > other && !names_a_place).then(|| {
        let kind = typed.lower(other);
        Answer::line(
            format!("{}  # {}", typed.text(0, 2), remark(typed.rest(2))),
            format!(
                "what lies in the walk of a space is on a line of its own below these walls, as `{kind} \"{}\" within {}`; here it is a remark",
                super::levels::capitalized(&kind),
                typed.text(1, 2)
            ),
        )
    })
}

/// `level "Second floor" measured inside, siding no brick`, `level "Up" veneer none`: each of its spaces says so.
fn level_without_brick(typed: &Typed<'_>) -> Option<Answer> {
    let name = (1..3).find(|&at| super::is_text(typed.piece(at)))?;
    let begins = typed.says(0, &["level", "floor"]) && typed.pieces.len() > name + 1;
    let has = |words: &[&str]| typed.find(name + 1, words).is_some();
    let is_none = |at: usize| {
        typed.says(at, &["no", "without"]) && typed.says(at + 1, &["brick", "veneer", "stone"])
            || typed.says(at, &["veneer", "brick"]) && typed.says(at + 1, &["none"])
    };
    let has_none = (name + 1..typed.pieces.len()).any(is_none)
        || has(&["siding", "vinyl", "clapboard", "stucco", "hardie"]) && !has(&["brick", "veneer"]);
    let face = match () {
        () if has(&["inside", "interior", "drywall"]) => "measured to inside ",
        () if has(&["frame", "studs", "framing"]) => "measured to frame ",
        () => "",
    };
    let measures = typed.pieces[name + 1..].iter().any(Piece::is_number);
    (begins && has_none && !measures).then(|| {
        Answer::say(
            "a level does not say how its walls are made and measured: each of its spaces does",
            format!(
                "write `level {}` here, and `{face}veneer none` after the name of each of its spaces",
                typed.text(name, name + 1)
            ),
        )
    })
}

/// `record 1,107 sq ft barn`, `record 484 sq ft for the garage`: an area of one space.
fn recorded_of_a_space(typed: &Typed<'_>) -> Option<Answer> {
    typed.says(0, &["record", "county", "assessor"]).then_some(())?;
    let (first, end, area) = area_from(&typed.pieces, 1).or_else(|| {
        let number = typed.pieces.iter().position(Piece::is_number)?;
        Some((number, number + 1, format!("{} sq ft", typed.pieces[number].text)))
    })?;
    let small = ["the", "for", "of", "a", "is", "has", "says", "at", "on", "its", "my"];
    let noun = |at: &usize| !typed.says(*at, &small) && !typed.pieces[*at].is_mark(",;:()-–.=");
    let around: Vec<usize> = (1..first).chain(end..typed.pieces.len()).filter(noun).collect();
    let [at] = around[..] else { return None };
    let word = typed.lower(at);
    let kind = match word.as_str() {
        "barn" | "shed" | "workshop" | "stable" | "greenhouse" => "outbuilding",
        word => super::kind_word(word).filter(|kind| {
            matches!(*kind, "garage" | "carport" | "porch" | "deck" | "patio" | "outbuilding")
        })?,
    };
    let is_word = typed.pieces[at].sort == Sort::Word;
    is_word.then(|| {
        Answer::say(
            format!("the record's area of a {word} stands on the line of the {word} itself"),
            format!(
                "take this line out, and at the end of the line that begins with `{kind}` write `recorded {area}`; if it is there no more, write `missing {kind} \"{}\" recorded {area}`",
                super::levels::capitalized(&word)
            ),
        )
    })
}

/// `walls 6" thick, measured inside`: how thick the walls are, and to which face all was measured.
fn thick_and_inside(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["walls", "wall"]) && is_at_the_top(typed);
    let first = 1 + usize::from(typed.says(1, &["are", "is", "about"]));
    let thick = length_at(&typed.pieces, first).filter(|one| begins && one.is_inches())?;
    let inside = typed.find(thick.end, &["inside", "interior"])?;
    let words = ["thick", "measured", "taped", "all", "everything", "from", "is", "the", "and"];
    let plain = (thick.end..typed.pieces.len())
        .all(|at| at == inside || typed.says(at, &words) || typed.pieces[at].is_mark(",;.-–"));
    plain.then(|| {
        Answer::line(
            format!("faces inside\nwall {}", thick.text),
            "to which face the walls were measured is `faces`, and how thick they are, up to the frame or the siding, `wall`",
        )
    })
}

/// `appraisal 1,668 sq ft (refinance 2021)`: a lender's appraiser, and not the office that keeps the record.
fn appraised_for_a_loan(typed: &Typed<'_>) -> Option<Answer> {
    const LOANS: [&str; 9] =
        ["refinance", "refi", "lender", "bank", "loan", "mortgage", "fha", "va", "purchase"];
    let begins = typed.says(0, &["appraisal", "appraised", "appraiser"]);
    let (first, end, area) = area_from(&typed.pieces, 1)?;
    let said = remark(typed.rest(end));
    let fits = begins && first <= 2 && typed.find(end, &LOANS).is_some() && !said.contains('"');
    (fits && typed.attempt.space.is_none()).then(|| {
        Answer::line(
            format!("figure \"appraisal\" {area} {}", quoted(&said)),
            "the appraisal district's figure is the `record`; a lender's appraisal is a `figure` with a name of its own",
        )
    })
}

/// `less 10' utility easement on rear`: an easement takes nothing off the area.
fn easement(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["less", "minus", "subject", "with", "except"]);
    (begins && typed.find(1, &["easement", "easements"]).is_some()).then(|| {
        Answer::line(
            format!("# {}", typed.line.trim()),
            "an easement takes nothing off the area; a comment begins with `#`",
        )
    })
}

/// `bay window, west, 8' wide`: how far it stands out is missing.
fn bay_with_its_width_alone(typed: &Typed<'_>) -> Option<Answer> {
    let [(at, wide)] = &lengths(&typed.pieces, 1)[..] else { return None };
    // `bay south 8'` is the beginning of a line of the format.
    let begins = typed.says(0, &["bay"])
        && !typed.says(1, &["north", "east", "south", "west"])
        && typed.attempt.space.is_some();
    let is_wide =
        typed.says(wide.end, &["wide", "long", "across"]) || wide.end == typed.pieces.len();
    let plain = (1..*at).all(|at| {
        typed.pieces[at].is_mark(",;:()-–")
            || typed.pieces[at].sort == Sort::Word && !typed.says(at, &["out", "flat", "deep"])
    });
    (begins && is_wide && plain && wide.has_unit && wide.end + 1 >= typed.pieces.len()).then(|| {
        Answer::say(
            "a bay has its width, how far it stands out, and the width of its flat front",
            format!(
                "measure these, and write `bay`, `north`, `east`, `south` or `west`, as its wall is walked, `{} out`, how far, and `flat` and the width of its front, or `round`; its width is no more part of the wall's own lines",
                wide.text
            ),
        )
    })
}
