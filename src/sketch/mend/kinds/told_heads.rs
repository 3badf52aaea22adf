//! Lines at the head of a file that say two things at once: two thicknesses of what stands before the frame, or the
//! account and the areas of the record.

use super::super::pieces::Sort;
use super::measure::{area_from, lengths};
use super::{Answer, Rule, Typed, first_of, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if typed.attempt.space.is_some() {
        return None;
    }
    let rules: &[Rule] = &[two_veneers, account_with_areas, tool_alone];
    first_of(rules, typed)
}

/// `stone 6", brick 4" elsewhere`, `brick 4", stone 6" on front`: the file has one thickness, and other walls have theirs.
fn two_veneers(typed: &Typed<'_>) -> Option<Answer> {
    const OF: [&str; 9] = [
        "stone",
        "brick",
        "stucco",
        "plaster",
        "rock",
        "limestone",
        "masonry",
        "veneer",
        "flagstone",
    ];
    const REST: [&str; 8] =
        ["elsewhere", "rest", "otherwise", "others", "other", "remaining", "everywhere", "sides"];
    const SMALL: [&str; 27] = [
        "on", "the", "of", "at", "and", "front", "back", "rear", "left", "right", "side", "sides",
        "wall", "walls", "all", "house", "north", "south", "east", "west", "garage", "thick", "is",
        "only", "base", "half", "in",
    ];
    let found = lengths(&typed.pieces, 0);
    let [(one_at, one), (two_at, two)] = &found[..] else { return None };
    let named: Vec<usize> = (0..typed.pieces.len()).filter(|&at| typed.says(at, &OF)).collect();
    let [first, second] = named[..] else { return None };
    let in_length =
        |at: usize| (*one_at..one.end).contains(&at) || (*two_at..two.end).contains(&at);
    let only = (0..typed.pieces.len()).all(|at| {
        in_length(at)
            || typed.says(at, &OF)
            || typed.says(at, &REST)
            || typed.says(at, &SMALL)
            || typed.pieces[at].is_mark(",;:().-–&+/")
    });
    let thin = one.is_inches_alone() && two.is_inches_alone();
    if !only || !thin || first != 0 || second <= first || *one_at > second || *two_at < second {
        return None;
    }
    // The thickness of the file is the one of the rest; another one that is said of a side is the side's.
    let rest = typed.find(0, &REST);
    let placed = typed
        .find(0, &["front", "back", "rear", "left", "right", "north", "south", "east", "west"]);
    let second_is_rest = match (rest, placed) {
        (Some(rest), _) => rest > second,
        (None, Some(placed)) => placed < second,
        (None, None) => false,
    };
    let word = |at: usize| typed.lower(at);
    let (general, of_general, own, of_own) = match second_is_rest {
        true => (&two.text, word(second), &one.text, word(first)),
        false => (&one.text, word(first), &two.text, word(second)),
    };
    let help = match (rest, placed) {
        (None, None) => format!(
            "write the thickness of most walls as `veneer {general}` or `veneer {own}` on this line, and the other one at the end of each side that has it, as `north 30' veneer {own}`"
        ),
        _ => format!(
            "write `veneer {general}` for the {of_general} on this line, and at the end of each side with {of_own} `veneer {own}`, as `north 30' veneer {own}`; a side without brick or stone has `veneer none`"
        ),
    };
    Some(Answer::say(
        "the file says the thickness of its brick or stone once, and a side with another one says it itself",
        help,
    ))
}

/// `parcel 12-034 1,230 sf 440 garage`, `acct R-1204, 1,230 sf living, 440 sf garage`: the account is a line of its own.
fn account_with_areas(typed: &Typed<'_>) -> Option<Answer> {
    let begins =
        typed.says(0, &["account", "acct", "parcel", "apn", "pin", "prop", "propid", "geo"]);
    let mut first = 1;
    while typed.says(first, &["no", "number", "num", "id", "is"])
        || typed.piece(first).is_some_and(|mark| mark.is_mark(":=.#"))
    {
        first += 1;
    }
    let (area, ..) = area_from(&typed.pieces, first)?;
    let number = typed.text(first, area).trim_end_matches([',', ';', ':', ' ', '-', '–']);
    let number = number.strip_suffix("record").unwrap_or(number).trim_end_matches([',', ' ']);
    let is_number = number.contains(|c: char| c.is_ascii_digit())
        && !number.contains(['"', ' ', ','])
        && number.len() >= 3;
    // An area in words of the land has a line of its own, which another rule says.
    let land = typed.find(first, &["ac", "acre", "acres", "ha", "lot", "land"]).is_some();
    let has_text = typed.pieces.iter().any(|piece| piece.sort == Sort::Text);
    if !begins || !is_number || land || has_text {
        return None;
    }
    const CAUSE: &str = "the account and what the record says of the house are lines of their own";
    let account = format!("account {}", quoted(number));
    let rest = typed.rest(area);
    let (_, end, size) = area_from(&typed.pieces, area)?;
    let house = ["house", "living", "heated", "total", "sf", "bldg", "building"];
    let is_only = (end..typed.pieces.len())
        .all(|at| typed.says(at, &house) || typed.pieces[at].is_mark(",.;"));
    if is_only {
        return Some(Answer::line(format!("{account}\nrecord {size}"), CAUSE));
    }
    Some(match super::answer(&format!("record {rest}"), typed.attempt)? {
        Answer::Lines(lines, cause) => Answer::Lines(
            lines.iter().map(|line| format!("{account}\n{line}")).collect(),
            format!("{CAUSE}; {cause}"),
        ),
        Answer::Say { cause, help, .. } => Answer::say(
            format!("{CAUSE}; {cause}"),
            format!(
                "write `{account}` on this line and the record below it: {}",
                help.replacen("this line is", "that line is", 1)
            ),
        ),
        ask @ Answer::Ask { .. } => ask,
    })
}

/// `tape: 100 ft fiberglass, 2 people`, `laser: 165 ft`: the tool, without the day.
fn tool_alone(typed: &Typed<'_>) -> Option<Answer> {
    let tool = typed.says(0, &["tape", "laser", "wheel", "tool"]);
    let first = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=-–")));
    let end = typed.find_mark(first, ",;(").unwrap_or(typed.pieces.len());
    let number = typed.piece(first).filter(|number| number.is_number());
    let has_text = typed.pieces.iter().any(|piece| piece.sort == Sort::Text);
    number.filter(|_| tool && !has_text)?;
    let what = match typed.says(0, &["tool"]) {
        true => super::plainly(typed.text(first, end)),
        false => format!("{} {}", super::plainly(typed.text(first, end)), typed.lower(0)),
    };
    Some(Answer::say(
        "what was measured with stands on the line with the day of the measuring",
        format!(
            "write `measured`, the day as year-month-day, and `with {}`; if the file has that line, put this there at its end, and anything else after a `#`",
            quoted(&what)
        ),
    ))
}
