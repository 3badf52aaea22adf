//! Lines that say in everyday words what a sides file has a word of its own for: a year's taxes, what an assessment was
//! and is, a number of stories, a high ceiling, the file of a photo.

use super::measure::{date_from, length_at, lengths};
use super::{Answer, Rule, Typed, first_of, is_text, plainly, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        super::street::by_name,
        super::level_lines::first_space_set_back,
        taxes_of_a_year,
        rate_of_one_unit,
        assessed_before_and_now,
        measured_again,
        stories_of_a_house,
        part_of_a_story,
        high_ceiling_of_a_space,
        file_of_a_photo,
        wall_of_the_record,
        wall_with_siding,
        beginning_of_a_lot,
        rectangular_bay,
        how_exactly,
        bow_alone,
        everything_outside,
        split_level,
        sum_of_other_walls,
        back_to_the_start,
        siding_on_a_level,
    ];
    first_of(rules, typed)
}

fn is_mark(typed: &Typed<'_>, at: usize, marks: &str) -> bool {
    typed.piece(at).is_some_and(|piece| piece.is_mark(marks))
}

/// `for 2026 taxes`, `2026 property taxes`, `taxes for 2026`: the tax year.
fn taxes_of_a_year(typed: &Typed<'_>) -> Option<Answer> {
    const WORDS: [&str; 12] = [
        "for", "the", "tax", "taxes", "property", "year", "of", "in", "bill", "roll", "protest",
        "appeal",
    ];
    let only = typed
        .pieces
        .iter()
        .all(|piece| piece.is_year() || piece.is_word(&WORDS) || piece.is_mark(":=-–,.()"));
    let mut years = typed.pieces.iter().filter(|piece| piece.is_year());
    let year = years.next().filter(|_| years.next().is_none())?;
    let says = typed.find(0, &["tax", "taxes", "roll", "protest", "appeal"]).is_some();
    let line = format!("tax year {}", year.text);
    (only && says && typed.line != line)
        .then(|| Answer::line(line, "the year whose taxes this is about is `tax year`"))
}

/// `school tax 1.05`, `county rate 0.42`, `city tax rate 0.55 per $100`: the rate of one taxing unit.
fn rate_of_one_unit(typed: &Typed<'_>) -> Option<Answer> {
    const UNITS: [&str; 12] = [
        "school", "county", "city", "town", "township", "village", "hospital", "water", "fire",
        "college", "library", "isd",
    ];
    let tax = typed.find(1, &["tax", "taxes", "rate"])?;
    let named = (0..tax)
        .all(|at| typed.says(at, &UNITS) || typed.says(at, &["district", "the", "road", "junior"]));
    if !named || !(0..tax).any(|at| typed.says(at, &UNITS)) {
        return None;
    }
    let mut at = tax + 1;
    while typed.says(at, &["rate", "is", "of"]) || is_mark(typed, at, ":=-–$") {
        at += 1;
    }
    let rate = typed.piece(at).filter(|rate| rate.is_number() && rate.text.contains('.'))?;
    let rest = typed.rest(at + 1);
    let per_thousand = ["per $1000", "per 1000", "per $1,000", "per 1,000", "mills", "mill"];
    let per_hundred = ["", "per $100", "per 100", "/100", "/ 100", "/$100", "per hundred"];
    let name = quoted(typed.text(0, tax));
    let line = |per: &str| format!("tax rate {} per {per} {name}", rate.text);
    let lines = match rest {
        rest if per_thousand.contains(&rest) => vec![line("$1,000")],
        "" => vec![line("$100"), line("$1,000")],
        rest if per_hundred.contains(&rest) => vec![line("$100")],
        _ => return None,
    };
    let ask = if lines.len() > 1 { ": per $100, or in mills, per $1,000" } else { "" };
    Some(Answer::Lines(
        lines,
        format!(
            "the rate of one taxing unit is `tax rate`, with the name of the unit at its end{ask}"
        ),
    ))
}

/// `assessed value went from 350,000 to 371,000`, `assessment up from $350,000 to $371,000`: last year's and this year's.
fn assessed_before_and_now(typed: &Typed<'_>) -> Option<Answer> {
    let own = ["assessed", "assessment", "av", "taxable"];
    let begins = usize::from(typed.says(0, &["our", "my", "the"]));
    if !typed.says(begins, &own) {
        return None;
    }
    let from = typed.find(1, &["from"])?;
    let (before, to) = super::worths::sum_at(typed, from + 1)?;
    let (now, stop) = super::worths::sum_at(typed, to + 1).filter(|_| typed.says(to, &["to"]))?;
    (stop == typed.pieces.len()).then(|| {
        Answer::line(
            format!("value assessed {now}\nlast year assessed {before}"),
            "what is taxed this year is `value assessed`, and the value of the year before is `last year assessed`",
        )
    })
}

/// `measured by owner 2026-04-11 and again 2026-04-18`, `measured by the owner, rechecked 2026-04-18`: one day is the
/// day, and what else is said of days is a comment.
fn measured_again(typed: &Typed<'_>) -> Option<Answer> {
    const AGAIN: [&str; 10] = [
        "and",
        "again",
        "rechecked",
        "checked",
        "re-checked",
        "remeasured",
        "re-measured",
        "also",
        "retaped",
        "verified",
    ];
    if !typed.says(0, &["measured", "taped"]) || typed.line.contains('#') {
        return None;
    }
    let by = typed.find(1, &["by"])?;
    let again = (by + 2..typed.pieces.len()).find(|&at| typed.says(at, &AGAIN[1..]))?;
    let (first, end, day) = date_from(&typed.pieces, 1)?;
    let mut begin = again;
    while begin > by + 2 && (typed.says(begin - 1, &AGAIN) || is_mark(typed, begin - 1, ",;(-–"))
    {
        begin -= 1;
    }
    // `by owner 2026-04-11 and again …`, or only the later day.
    let who = match (by..begin).contains(&first) {
        true if end == begin => typed.name(by + 1, first),
        false if first < by && end == by => typed.name(by + 1, begin),
        false if first > again => typed.name(by + 1, begin),
        _ => return None,
    };
    let tail = plainly(typed.rest(begin).trim_start_matches([',', ';', ' ', '-']));
    let tail = tail.strip_prefix("and ").unwrap_or(&tail);
    let plain = !who.is_empty() && !super::measures(&who);
    plain.then(|| {
        Answer::line(
            format!("measured {day} by {}  # {tail}", quoted(&who)),
            "the date comes right after `measured` as year-month-day; there is one day, and anything else goes into a comment",
        )
    })
}

/// `2 story brick house`, `heated space, 2 story brick`, `1 story ranch`: a house, whose levels have lines of their own.
fn stories_of_a_house(typed: &Typed<'_>) -> Option<Answer> {
    const WORDS: [&str; 30] = [
        "story",
        "storey",
        "stories",
        "level",
        "levels",
        "house",
        "home",
        "ranch",
        "cottage",
        "bungalow",
        "residence",
        "dwelling",
        "cabin",
        "brick",
        "frame",
        "siding",
        "stucco",
        "stone",
        "wood",
        "heated",
        "finished",
        "living",
        "space",
        "main",
        "single",
        "family",
        "the",
        "colonial",
        "farmhouse",
        "veneer",
    ];
    let is_story = |at: usize| typed.says(at, &["story", "storey", "stories"]);
    let story = (1..typed.pieces.len()).find(|&at| is_story(at))?;
    let counted = story - usize::from(is_mark(typed, story - 1, "-"));
    let count = counted.checked_sub(1)?;
    let counts = |at: usize| {
        at == count
            && (typed.says(at, &["one", "two", "three", "single"])
                || typed.pieces[at].is_number() && typed.pieces[at].text.len() == 1)
    };
    let only = (0..typed.pieces.len())
        .all(|at| counts(at) || typed.says(at, &WORDS) || is_mark(typed, at, ",-.;"));
    let end = typed.pieces.len();
    let is_house = typed.find(0, &WORDS[5..13]).or(typed.find(0, &WORDS[19..20])).is_some();
    if !only || !counts(count) || !(is_house || end > story + 1) {
        return None;
    }
    let after = &typed.attempt.beside.after;
    let cause = "each story is a `level` with walls of its own";
    let is_above = typed.attempt.space.is_none() && !after.starts_with("living");
    let is_brick = typed.find(0, &["brick", "stone", "veneer"]).is_some();
    if is_above
        && is_brick
        && !super::super::begins_as_side(after)
        && !typed.attempt.beside.has_brick
    {
        return Some(Answer::say(
            super::super::BRICK_IS,
            "write `veneer 4 5/8\"`, or the thickness of your own, instead of this line; what else it says can follow after a `#`",
        ));
    }
    if is_above && !super::super::begins_as_side(after) {
        return Some(Answer::line(format!("# {}", typed.line), cause));
    }
    let is_between = super::super::begins_as_named_space(&typed.attempt.beside.before)
        && super::super::begins_as_side(after);
    if super::super::begins_as_named_space(after) || is_between {
        return Some(Answer::line(format!("# {}", typed.line), cause));
    }
    let named = typed.find(0, &WORDS[5..13]).map_or("house".to_owned(), |at| typed.lower(at));
    let follows = super::super::begins_as_side(after) && typed.attempt.house.is_none();
    follows.then(|| {
        Answer::line(
            format!("living {}  # {}", quoted(&super::levels::capitalized(&named)), typed.line),
            format!("the line above the walls says what the space is; {cause}"),
        )
    })
}

/// `1/2 story`, `1 1/2 story` above a space: a level.
fn part_of_a_story(typed: &Typed<'_>) -> Option<Answer> {
    let whole = usize::from(
        typed.piece(0).is_some_and(|one| one.is_number())
            && typed.piece(1).is_some_and(|one| one.is_number()),
    );
    let half = typed.piece(whole).is_some_and(|one| one.text == "1")
        && is_mark(typed, whole + 1, "/")
        && typed.piece(whole + 2).is_some_and(|two| two.text == "2");
    let half = half
        .then_some(whole + 3)
        .or_else(|| typed.pieces.first().filter(|piece| piece.is_mark("½")).map(|_| 1))?;
    (typed.says(half, &["story", "storey"]) && half + 1 == typed.pieces.len()).then(|| {
        Answer::line(
            format!("level {}", quoted(typed.line)),
            "a half story is a level like any other",
        )
    })
}

/// `vaulted ceiling "Great room"` above walls where no floor is above: a room like any other.
fn high_ceiling_of_a_space(typed: &Typed<'_>) -> Option<Answer> {
    let high = typed.says(0, &["vaulted", "cathedral", "high", "vault", "tray"]);
    let name = 1 + usize::from(typed.says(1, &["ceiling", "ceilings"]));
    if !high || !is_text(typed.piece(name)) {
        return None;
    }
    let beside = &typed.attempt.beside;
    let words = typed.text(0, name);
    let cause = "a high ceiling takes nothing from the floor below it";
    if typed.attempt.house.is_none() {
        return Some(Answer::line(
            format!("living {}  # {words}", typed.rest(name)),
            format!("{cause}: the line above the walls says what the space is"),
        ));
    }
    (!beside.has_level_above).then(|| {
        Answer::say(
            format!("{cause}; only where a floor above is left out for it does that floor have a space `open`"),
            "put a `#` before this line and before its walls; if a floor above is left out there, move them below the line of that level, with `open` instead of these words",
        )
    })
}

/// `photo "1" file west.jpg`: the name of a file has a point in it.
fn file_of_a_photo(typed: &Typed<'_>) -> Option<Answer> {
    let photo = typed.find(0, &["photo", "pic", "picture"])?;
    let file = typed.find(photo + 1, &["file"]).filter(|file| *file <= photo + 2)?;
    if is_text(typed.piece(file + 1)) || typed.line.contains('#') {
        return None;
    }
    let name = typed.rest(file + 1);
    let (stem, ending) = name.rsplit_once('.')?;
    let ends = ["jpg", "jpeg", "png", "heic", "webp"].contains(&ending.to_lowercase().as_str());
    (ends && !stem.is_empty() && !stem.contains(['"', ',', '\''])).then(|| {
        Answer::line(
            format!("{} \"{name}\"", typed.text(0, file + 1)),
            "the name of a file stands between two `\"`",
        )
    })
}

/// The length of a wall at the start of a line, and where it ends.
fn wall(typed: &Typed<'_>) -> Option<usize> {
    super::shapes::whole_way(typed, 0)
        .or_else(|| typed.says(0, &["front", "back", "left", "right"]).then_some("street"))?;
    Some(length_at(&typed.pieces, 1).filter(|one| one.has_unit)?.end)
}

/// `north 28' 4" per county card`: a length that was not taped.
fn wall_of_the_record(typed: &Typed<'_>) -> Option<Answer> {
    const OFFICE: [&str; 14] = [
        "county",
        "county's",
        "card",
        "assessor",
        "assessor's",
        "record",
        "cad",
        "tax",
        "appraisal",
        "district",
        "district's",
        "the",
        "sketch",
        "drawing",
    ];
    let mut at = wall(typed)?;
    while is_mark(typed, at, ",;(-–") {
        at += 1;
    }
    let says = typed.says(at, &["per", "from", "off"])
        || typed.says(at, &["according"]) && typed.says(at + 1, &["to"]);
    let begin = at + 1 + usize::from(typed.says(at, &["according"]));
    let rest = begin..typed.pieces.len();
    let office = rest.clone().any(|at| typed.says(at, &OFFICE[..9]));
    let only = rest.clone().all(|at| typed.says(at, &OFFICE) || is_mark(typed, at, ")."));
    let end = at;
    (says && office && only).then(|| {
        Answer::line(
            format!(
                "{} from record",
                typed.text(0, end).trim_end_matches([',', ';', '(', ' ', '-', '–'])
            ),
            "a length that comes from the record, and was not taped, is `from record`",
        )
    })
}

/// `north 28' 4" siding`, `north 28' 4" no brick, siding` in a house with veneer: a wall without it.
fn wall_with_siding(typed: &Typed<'_>) -> Option<Answer> {
    const SIDED: [&str; 10] = [
        "siding",
        "vinyl",
        "clapboard",
        "clapboards",
        "hardie",
        "sided",
        "lap",
        "wood",
        "stucco",
        "shingles",
    ];
    if !typed.attempt.beside.has_brick {
        return None;
    }
    let end = wall(typed)?;
    let says = |at: usize| {
        typed.says(at, &SIDED)
            || typed.says(at, &["is", "has", "all", "only", "just", "here", "wall", "with", "of"])
            || typed.says(at, &["frame", "framed"])
            || is_mark(typed, at, ",;()-–.")
            || typed.says(at, &["no", "not"]) && typed.says(at + 1, &["brick", "stone", "veneer"])
            || typed.says(at, &["brick", "stone", "veneer"])
                && typed.says(at.wrapping_sub(1), &["no", "not"])
    };
    let only = (end..typed.pieces.len()).all(says);
    let sided = (end..typed.pieces.len())
        .any(|at| typed.says(at, &["siding", "vinyl", "clapboard", "hardie", "sided"]));
    (only && sided).then(|| {
        Answer::line(
            format!("{} veneer none", typed.text(0, end)),
            "a wall with siding has no brick or stone outside its frame: `veneer none`",
        )
    })
}

/// `beginning at the SW corner of Lot 7`: where the calls of a deed begin.
fn beginning_of_a_lot(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["beginning", "starting", "begin", "pob", "p.o.b"])
        && (1..3).any(|at| typed.says(at, &["at", "from", "in", "on"]));
    let calls = typed.line.contains(['°', ';', '\n'])
        || typed.find(1, &["thence", "bearing", "feet", "degrees", "deg"]).is_some();
    // `a 1/2" iron rod`
    let is_rod = |end: usize| {
        typed.says(end, &["iron", "rebar", "rod", "pipe", "steel", "pin", "diameter", "dia"])
    };
    let has_length =
        lengths(&typed.pieces, 1).iter().any(|(_, one)| one.has_unit && !is_rod(one.end));
    (begins && typed.is_in_lot() && !calls && !has_length).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "where the calls of a deed begin is a comment: the walk starts at the first call",
        )
    })
}

/// `cantilevered bay west 8' out 2' flat 8'`, `bay west 8' out 2'` with a front as wide as the bay: three sides.
fn rectangular_bay(typed: &Typed<'_>) -> Option<Answer> {
    let bay = typed.find(0, &["bay", "bumpout", "bump-out"]).filter(|bay| *bay <= 2)?;
    let kind =
        ["cantilevered", "cantilever", "box", "boxed", "square", "rectangular", "overhanging"];
    let way = super::shapes::whole_way(typed, bay + 1)?;
    let wide = length_at(&typed.pieces, bay + 2)?;
    let out = length_at(&typed.pieces, wide.end + 1).filter(|_| typed.says(wide.end, &["out"]))?;
    let flat = match typed.says(out.end, &["flat"]) {
        true => Some(length_at(&typed.pieces, out.end + 1)?),
        false => None,
    };
    let named = (0..bay).any(|at| typed.says(at, &kind));
    let same = flat.as_ref().is_some_and(|flat| flat.length == wide.length);
    let end = flat.as_ref().map_or(out.end, |flat| flat.end);
    if end != typed.pieces.len() || out.length >= wide.length || !(same || named && flat.is_none())
    {
        return None;
    }
    let (one, other) = match way {
        "north" | "south" => ("east", "west"),
        _ => ("north", "south"),
    };
    // Between `south 2'` and `north 2'`, which are its other two sides.
    let is_leg = |line: &str, way: &str| {
        let pieces = super::cut(line);
        let is_way = pieces
            .first()
            .and_then(|word| super::super::compass::way_and_back(&word.text))
            .is_some_and(|(own, _)| own == way);
        is_way && length_at(&pieces, 1).is_some_and(|leg| leg.length == out.length)
    };
    let beside = &typed.attempt.beside;
    let has_legs = [(one, other), (other, one)]
        .into_iter()
        .any(|(first, last)| is_leg(&beside.before, first) && is_leg(&beside.after, last));
    if has_legs {
        return Some(Answer::line(
            format!("{way} {} note \"bay\"", wide.text),
            "a bay with square corners is three sides of the walk, and the lines above and below are the other two",
        ));
    }
    let line = |first: &str, last: &str| {
        format!("{first} {0}\n{way} {1}\n{last} {0}", out.text, wide.text)
    };
    Some(Answer::Lines(
        vec![line(one, other), line(other, one)],
        "a bay with square corners is three sides of the walk: out, along and back; which way is out of the house?".to_owned(),
    ))
}

/// `good to an inch or so`, `within an inch`, `good to about 1"`: how exactly the walls were measured.
fn how_exactly(typed: &Typed<'_>) -> Option<Answer> {
    const SMALL: [&str; 22] = [
        "good",
        "accurate",
        "exact",
        "precise",
        "right",
        "correct",
        "to",
        "within",
        "about",
        "or",
        "so",
        "an",
        "a",
        "all",
        "measurements",
        "walls",
        "are",
        "is",
        "each",
        "everything",
        "of",
        "lengths",
    ];
    let begins = typed.says(
        0,
        &["good", "accurate", "within", "precise", "correct", "measurements", "everything"],
    );
    if typed.attempt.space.is_some() || !begins {
        return None;
    }
    let says_to = typed.find(0, &["to", "within"])?;
    // `an inch`, `half an inch`, `a quarter inch`
    let spoken = typed.find(says_to + 1, &["inch"]).filter(|at| !typed.pieces[at - 1].is_number());
    let text = match spoken {
        Some(inch) if (inch.saturating_sub(2)..inch).any(|at| typed.says(at, &["half"])) => "1/2\"",
        Some(inch) if typed.says(inch - 1, &["quarter"]) => "1/4\"",
        Some(inch) if typed.says(inch - 1, &["an", "one"]) => "1\"",
        Some(_) => return None,
        None => "",
    };
    let found = lengths(&typed.pieces, says_to + 1).into_iter().next();
    let found = found.filter(|(_, one)| one.has_unit && spoken.is_none());
    let used = |at: usize| match (&found, spoken) {
        (Some((first, one)), _) => (*first..one.end).contains(&at),
        (None, Some(inch)) => at == inch || typed.says(at, &["half", "quarter", "one"]),
        (None, None) => false,
    };
    let only = (0..typed.pieces.len())
        .all(|at| used(at) || typed.says(at, &SMALL) || is_mark(typed, at, ",.±"));
    let text = found.as_ref().map_or(text, |(_, one)| one.text.as_str());
    (only && !text.is_empty()).then(|| {
        Answer::line(
            format!("tolerance {text}"),
            "how exactly each wall was measured is the `tolerance`",
        )
    })
}

/// `bow 8' sticks out 18"`: a round bay.
fn bow_alone(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 1).filter(|one| one.has_unit)?;
    let out = lengths(&typed.pieces, length.end).iter().any(|(_, one)| one.has_unit);
    (typed.says(0, &["bow"]) && out)
        .then(|| super::answer(&format!("bow window {}", typed.rest(1)), typed.attempt))
        .flatten()
}

/// `everything taped outside, to the siding`: the face of all walls.
fn everything_outside(typed: &Typed<'_>) -> Option<Answer> {
    const WORDS: [&str; 14] = [
        "everything",
        "all",
        "walls",
        "taped",
        "measured",
        "was",
        "is",
        "were",
        "to",
        "the",
        "on",
        "at",
        "of",
        "from",
    ];
    const FACES: [&str; 7] = ["outside", "exterior", "siding", "brick", "outer", "face", "finish"];
    let begins = typed.says(0, &["everything", "all"])
        && typed.find(1, &["taped", "measured"]).is_some()
        && typed.find(1, &["outside", "exterior"]).is_some();
    let only = (0..typed.pieces.len())
        .all(|at| typed.says(at, &WORDS) || typed.says(at, &FACES) || is_mark(typed, at, ",.()"));
    (begins && only && typed.attempt.space.is_none()).then(|| {
        Answer::line("faces outside", "the face to which all sides were measured is `faces`")
    })
}

/// `split level "Upper floor"`: a level beside the one before it, or above it.
fn split_level(typed: &Typed<'_>) -> Option<Answer> {
    let dash = 1 + usize::from(is_mark(typed, 1, "-"));
    let name = dash + 1;
    let begins = typed.says(0, &["split"]) && typed.says(dash, &["level", "entry"])
        || typed.says(0, &["split-level"]) && is_text(typed.piece(1));
    let name = if typed.says(0, &["split-level"]) { 1 } else { name };
    (begins && is_text(typed.piece(name)) && name + 1 == typed.pieces.len()).then(|| {
        let text = typed.rest(name);
        Answer::Lines(
            vec![format!("level {text} beside"), format!("level {text}")],
            "a level that stands next to the one before it is `beside`: next to it, or above it?"
                .to_owned(),
        )
    })
}

/// `west same as 1+3`, `west = sides 1 and 3`: a wall as long as others, whose lengths are added up.
fn sum_of_other_walls(typed: &Typed<'_>) -> Option<Answer> {
    let way = super::shapes::whole_way(typed, 0)?;
    let same =
        typed.find(1, &["same", "equals", "as", "equal"]).is_some() || is_mark(typed, 1, "=");
    let small = [
        "same", "as", "equals", "equal", "to", "side", "sides", "wall", "walls", "and", "plus",
        "the", "length", "of",
    ];
    let only = (1..typed.pieces.len()).all(|at| {
        typed.says(at, &small) || is_mark(typed, at, "+&=,#") || typed.pieces[at].is_number()
    });
    let numbers: Option<Vec<usize>> = typed
        .pieces
        .iter()
        .filter(|piece| piece.is_number())
        .map(|piece| piece.text.parse().ok())
        .collect();
    let numbers = numbers.filter(|all| !all.is_empty() && same && only)?;
    let lines = typed.attempt.beside.last_walk.iter();
    let walls: Vec<&std::rc::Rc<str>> = lines.filter(|line| !line.starts_with("corner")).collect();
    let lengths: Option<Vec<super::measure::Measure>> = numbers
        .iter()
        .map(|number| {
            let pieces = super::cut(walls.get(number.checked_sub(1)?)?);
            length_at(&pieces, 1).filter(|one| one.has_unit)
        })
        .collect();
    let lengths = lengths?;
    let (first, rest) = lengths.split_first()?;
    let all = rest.iter().fold(first.length, |all, one| all + one.length);
    let text = super::measure::written(all, first);
    Some(Answer::line(
        format!("{way} {text}  # {}", typed.rest(1)),
        "a wall has a length of its own: here that of the sides named, added up",
    ))
}

/// `back to start 40'` as the last wall: the wall that leads back.
fn back_to_the_start(typed: &Typed<'_>) -> Option<Answer> {
    let small = [
        "back",
        "to",
        "the",
        "start",
        "beginning",
        "corner",
        "return",
        "close",
        "last",
        "wall",
        "and",
        "where",
        "we",
        "i",
        "started",
        "began",
        "first",
    ];
    let (first, one) = lengths(&typed.pieces, 1).into_iter().next()?;
    let only = (0..typed.pieces.len()).all(|at| {
        (first..one.end).contains(&at) || typed.says(at, &small) || is_mark(typed, at, ",:=-–()")
    });
    let says = typed.find(0, &["start", "beginning", "started", "began"]).is_some();
    let line =
        super::loose_walls::leads_back(typed, &one).filter(|_| only && says && one.has_unit)?;
    Some(Answer::line(line, "the last wall is its direction and its length, as any other"))
}

/// `siding on second floor`, `vinyl upstairs`: no veneer there, and not in the whole house.
fn siding_on_a_level(typed: &Typed<'_>) -> Option<Answer> {
    const LEVELS: [&str; 14] = [
        "upstairs",
        "downstairs",
        "second",
        "first",
        "third",
        "upper",
        "lower",
        "ground",
        "main",
        "nd",
        "st",
        "rd",
        "floor",
        "level",
    ];
    const SMALL: [&str; 6] = ["siding", "on", "the", "only", "all", "is"];
    let sided = ["siding", "vinyl", "clapboard", "hardie", "wood", "stucco"];
    let only = (1..typed.pieces.len()).all(|at| {
        typed.says(at, &LEVELS)
            || typed.says(at, &SMALL)
            || is_mark(typed, at, ",.-")
            || typed.pieces[at].is_number() && typed.says(at + 1, &LEVELS[9..12])
    });
    let level = typed.find(1, &LEVELS).is_some();
    (typed.says(0, &sided) && only && level && typed.attempt.space.is_none()).then(|| {
        Answer::say(
            "siding is no veneer, and here it is on one level alone",
            "put this line after a `#`, and write `veneer none` after the name of each space on that level",
        )
    })
}
