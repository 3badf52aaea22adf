//! Lines that the rules know in another wording: their words in the usual order, or with the usual word for one of them.

use super::pieces::cut;

/// The line in the wording that is known, and what was wrong. `None` if it has none.
pub(super) fn usually(line: &str) -> Option<(String, &'static str)> {
    if line.contains('#') {
        return None;
    }
    basement_with_its_area(line)
        .or_else(|| land_with_a_remark(line))
        .or_else(|| area_of_the_building(line))
        .or_else(|| what_is_left(line))
        .or_else(|| measured_again(line))
        .or_else(|| by_a_tool(line))
        .or_else(|| from_a_survey(line))
        .or_else(|| could_not_be_measured(line))
        .or_else(|| plaster_on_block(line))
        .or_else(|| brick_veneer_around(line))
        .or_else(|| corner_before_its_size(line))
        .or_else(|| jog_with_lengths_first(line))
        .or_else(|| inside_and_its_place(line))
        .or_else(|| inside_before_its_size(line))
        .or_else(|| short_for_garage(line))
        .or_else(|| short_for_about(line))
}

/// Whether a text begins with one of these words, in any case; what follows it.
fn after_word<'a>(line: &'a str, words: &[&str]) -> Option<&'a str> {
    let line = line.trim();
    words.iter().find_map(|word| {
        let here = line.get(..word.len()).filter(|here| here.eq_ignore_ascii_case(word))?;
        let rest = line.get(here.len()..)?;
        (rest.is_empty() || rest.starts_with([' ', ',', ':', '='])).then_some(rest.trim_start())
    })
}

fn has_digit(text: &str) -> bool {
    text.contains(|c: char| c.is_ascii_digit())
}

/// `basement 900 sq ft unfinished`: as `unfinished basement 900 sq ft`.
fn basement_with_its_area(line: &str) -> Option<(String, &'static str)> {
    let rest = after_word(line, &["basement", "bsmt", "cellar"])?;
    let (area, finish) = rest.trim().rsplit_once([' ', ','])?;
    let finish = ["unfinished", "unfin", "finished", "fin"]
        .iter()
        .position(|one| finish.eq_ignore_ascii_case(one))?;
    let finish = ["unfinished", "unfinished", "finished", "finished"].get(finish)?;
    let lower = area.to_lowercase();
    let is_area = ["sf", "sq ft", "sqft", "sq. ft."]
        .iter()
        .any(|unit| lower.trim_end_matches([',', ' ']).ends_with(unit));
    (is_area && area.starts_with(|c: char| c.is_ascii_digit())).then(|| {
        let area = area.trim_end_matches([',', ' ']);
        (format!("{finish} basement {area}"), "how a basement is comes before its area")
    })
}

/// `0.5 acre lot, irregular`: without the remark.
fn land_with_a_remark(line: &str) -> Option<(String, &'static str)> {
    let (land, remark) = line.split_once(',')?;
    let words = cut(land);
    let is_land = words.first()?.is_number()
        && words.get(1)?.is_word(&["acre", "acres", "ac", "hectare", "hectares", "ha"])
        && words.get(2)?.is_word(&["lot", "land", "parcel", "tract"])
        && words.len() == 3;
    (is_land && !has_digit(remark))
        .then(|| (land.to_owned(), "the area of the land is that of its lot"))
}

/// `Bldg SF = 1,460.00`: as `Bldg area 1,460.00`.
fn area_of_the_building(line: &str) -> Option<(String, &'static str)> {
    let rest = after_word(
        line,
        &["bldg sf", "bldg. sf", "building sf", "bldg sqft", "building sqft", "bldg sq ft"],
    )?;
    let area = rest.trim_start_matches(['=', ':', ' ']);
    let digits = area.trim_end_matches(".00").trim_end_matches(".0");
    let is_number = has_digit(digits) && digits.chars().all(|c| c.is_ascii_digit() || c == ',');
    is_number.then(|| {
        (
            format!("Bldg area {digits}"),
            "a published area begins with the word for who published it",
        )
    })
}

/// `south = whatever is left`, `west the rest`: the wall that follows from the others.
fn what_is_left(line: &str) -> Option<(String, &'static str)> {
    const LEFT: [&str; 8] = [
        "whatever is left",
        "what is left",
        "what's left",
        "the rest",
        "whatever closes",
        "the remainder",
        "whatever remains",
        "rest of it",
    ];
    let (way, rest) = line.trim().split_once([' ', '='])?;
    let said =
        rest.trim_start_matches(['=', ':', ' ', '-']).trim_end_matches(['.', '!']).to_lowercase();
    (super::is_way(way) && LEFT.contains(&said.as_str())).then(|| {
        (
            format!("{way} by closing"),
            "a wall that was not measured has `by closing`: its length follows from the other walls",
        )
    })
}

/// `re-measured 2026-05-02`, `tape measured by the owner on June 3rd 2026`: the day is that of `measured`.
fn measured_again(line: &str) -> Option<(String, &'static str)> {
    let rest = after_word(
        line,
        &["re-measured", "remeasured", "measured again", "tape measured", "tape-measured"],
    )?;
    let rest = rest.trim_start_matches([':', ' ']);
    has_digit(rest).then(|| {
        (format!("measured {rest}"), "the day on which it was measured begins with `measured`")
    })
}

/// `measured 2026-03-07 by laser`: a tool comes after `with`, who measured after `by`.
fn by_a_tool(line: &str) -> Option<(String, &'static str)> {
    const TOOLS: [&str; 7] =
        ["laser", "tape", "steel tape", "a laser", "a tape", "laser measure", "measuring tape"];
    let (before, tool) = line.trim().rsplit_once(" by ")?;
    after_word(before, &["measured", "taped"])?;
    let tool = tool.trim_end_matches('.').to_lowercase();
    TOOLS.contains(&tool.as_str()).then(|| {
        let tool = tool.trim_start_matches("a ");
        (
            format!("{before} with \"{tool}\""),
            "with what it was measured comes after `with`, who measured it after `by`",
        )
    })
}

/// `north 30' from the old survey`: where a length is from, but neither the plan nor the record, is a note.
fn from_a_survey(line: &str) -> Option<(String, &'static str)> {
    let (wall, source) = line.trim().split_once(" from ")?;
    let lower = source.to_lowercase();
    let says = |word: &str| lower.contains(word);
    let is_source = ["survey", "appraisal", "permit", "deed", "plat"].iter().any(|word| says(word));
    let is_known = ["plan", "record", "corner", "end", "side"].iter().any(|word| says(word));
    (super::begins_as_side(wall)
        && is_source
        && !is_known
        && !has_digit(source)
        && !source.contains('"'))
    .then(|| {
        (
            format!("{wall} estimated note \"from {source}\""),
            "a length that was not taped is `estimated`, and where it is from is a note",
        )
    })
}

/// `west 42' (couldn't measure, fence)`: a length that was not taped.
fn could_not_be_measured(line: &str) -> Option<(String, &'static str)> {
    const NOT: [&str; 9] = [
        "couldn't measure",
        "couldnt measure",
        "could not measure",
        "can't measure",
        "cannot measure",
        "not measured",
        "didn't measure",
        "couldn't tape",
        "not taped",
    ];
    let (wall, remark) = line.trim().strip_suffix(')')?.split_once('(')?;
    let lower = remark.to_lowercase();
    let says = NOT.iter().any(|words| lower.contains(words));
    (super::begins_as_side(wall.trim()) && says && !has_digit(remark) && !remark.contains('"'))
        .then(|| {
            (
                format!("{} estimated note \"{}\"", wall.trim(), remark.trim()),
                "a length that was not taped is `estimated`",
            )
        })
}

/// `stucco over block, 8" walls`: as `8" block walls`.
fn plaster_on_block(line: &str) -> Option<(String, &'static str)> {
    let rest = after_word(line, &["stucco over", "stucco on", "plaster over", "plaster on"])?;
    let (what, walls) = rest.split_once([',', ';'])?;
    let block = ["block", "cmu", "concrete block", "cinder block"];
    let thick =
        walls.trim().strip_suffix("walls").or_else(|| walls.trim().strip_suffix("wall"))?.trim();
    let is_thick =
        thick.parse::<crate::units::length::Length>().is_ok() && thick.ends_with(['"', '”', '″']);
    (block.iter().any(|one| what.trim().eq_ignore_ascii_case(one)) && is_thick)
        .then(|| (format!("{thick} block walls"), "how thick the walls are is `wall` and a length"))
}

/// `brick veneer 5" all round, taped at the brick`, `brick veneer 5in, taped at the brick`: as `veneer 5"`.
fn brick_veneer_around(line: &str) -> Option<(String, &'static str)> {
    const OTHERS: [&str; 7] = ["except", "only", "front", "not", "inside", "frame", "back"];
    let rest = after_word(line, &["brick veneer", "stone veneer", "brick facing", "stone facing"])?;
    let ends = ["\"", "”", "″", "inches", "inch", "in"];
    let (thick, said) = ends.iter().find_map(|unit| {
        let end = rest.find(unit)? + unit.len();
        Some((rest.get(..end)?.trim(), rest.get(end..)?.trim_matches([',', ';', ' ', '.'])))
    })?;
    let lower = said.to_lowercase();
    let begins = ["all", "everywhere", "thick", "taped", "measured", "around"];
    let says_all = said.is_empty() || begins.iter().any(|word| lower.starts_with(word));
    let is_plain = !has_digit(said) && !OTHERS.iter().any(|word| lower.contains(word));
    let is_thick = has_digit(thick) && thick.parse::<crate::units::length::Length>().is_ok();
    (says_all && is_plain && is_thick).then(|| {
        (format!("veneer {thick}"), "brick or stone before the wall is `veneer` and its thickness")
    })
}

/// `attached garage SE corner 20 x 22`, `garage SE corner 20 x 22`: the size comes before the place.
fn corner_before_its_size(line: &str) -> Option<(String, &'static str)> {
    let rest = after_word(
        line,
        &["attached garage", "att garage", "att. garage", "att gar", "garage", "gar", "carport"],
    )?;
    let kind = if line.to_lowercase().contains("carport") { "carport" } else { "garage" };
    let (corner, size) = rest.split_once(" corner, ").or_else(|| rest.split_once(" corner "))?;
    let is_corner = super::compass::slant(corner).is_some();
    let is_size = size.starts_with(|c: char| c.is_ascii_digit())
        && super::kinds::size_in(size).is_some_and(|one| one.trim().len() == size.trim().len());
    (is_corner && is_size).then(|| {
        (
            format!("{kind} {}, {corner} corner", size.trim()),
            "a space begins with its kind and its size, and its place comes after them",
        )
    })
}

/// `jog back 8 ft west then 10 ft south`: the ways before the lengths.
fn jog_with_lengths_first(line: &str) -> Option<(String, &'static str)> {
    let rest = after_word(
        line,
        &["jog back", "jog in", "jog out", "jog", "step back", "step in", "step out"],
    )?;
    let (one, two) = rest.split_once(" then ").or_else(|| rest.split_once(", "))?;
    let turned = |part: &str| {
        let (length, way) = part.trim().rsplit_once(' ')?;
        let is_length = length.starts_with(|c: char| c.is_ascii_digit())
            && length.parse::<crate::units::length::Length>().is_ok();
        (is_length && super::is_way(way)).then(|| format!("{way} {length}"))
    };
    Some((
        format!("jog {} then {}", turned(one)?, turned(two)?),
        "each wall of a jog is a side: its direction, then its length",
    ))
}

/// `living inside 39' 6" by 23' at back`: the face goes with the size, and where it lies is a remark.
fn inside_and_its_place(line: &str) -> Option<(String, &'static str)> {
    let rest = after_word(line, &["living inside", "rooms inside", "living (inside)"])?;
    let places = [
        " at the back",
        " at back",
        " at rear",
        " at the rear",
        " in back",
        " at front",
        " at the front",
        ", at the back",
        ", at back",
    ];
    let place = places.iter().find(|place| rest.to_lowercase().ends_with(**place))?;
    let size = rest.get(..rest.len().checked_sub(place.len())?)?;
    size.starts_with(|c: char| c.is_ascii_digit()).then(|| {
        (
            format!("living inside {}", size.trim()),
            "the face to which it was measured comes after the name",
        )
    })
}

/// `living "upper" inside 27' x 17', on the north side`: the face, and then the size.
fn inside_before_its_size(line: &str) -> Option<(String, &'static str)> {
    let rest = after_word(line, &["living", "rooms", "unfinished"])?;
    let (name, size) = rest
        .split_once("inside ")
        .filter(|(name, _)| name.is_empty() || name.trim_end().ends_with('"'))?;
    let says_place = [" on ", " at ", ", on ", ", at ", " over ", ", over "]
        .iter()
        .any(|word| size.contains(word));
    let kind = line.trim().split(' ').next()?;
    (size.starts_with(|c: char| c.is_ascii_digit()) && says_place).then(|| {
        (
            format!(
                "{kind} {}inside, {size}",
                if name.is_empty() { String::new() } else { format!("{} ", name.trim()) }
            ),
            "the face to which it was measured comes after the name",
        )
    })
}

/// `record 1,340 sq ft, gar 532`, `1,370 heated + 533 gar`: a garage in short.
fn short_for_garage(line: &str) -> Option<(String, &'static str)> {
    let pieces = cut(line);
    let first = pieces.first()?;
    let figures = ["record", "county", "assessor", "card", "listing", "tax", "heated", "living"];
    let is_figure = first.is_number() || first.is_word(&figures);
    let at = pieces.iter().find(|piece| piece.is_word(&["gar", "gar."]))?;
    let end = at.at + at.text.len();
    let rest = line.get(end..)?.trim_start_matches('.');
    (is_figure && !super::begins_as_side(line) && !line.contains('"')).then(|| {
        (
            format!("{}garage{rest}", line.get(..at.at).unwrap_or_default()),
            "a word in short is written out",
        )
    })
}

/// `west abt 32'`: a length that was not taped exactly.
fn short_for_about(line: &str) -> Option<(String, &'static str)> {
    let (way, rest) = line.trim().split_once(' ')?;
    let length = after_word(rest, &["abt.", "abt", "aprx.", "aprx", "apprx"])?;
    (super::is_way(way) && length.starts_with(|c: char| c.is_ascii_digit())).then(|| {
        (format!("{way} about {length}"), "a length that was not measured exactly is `estimated`")
    })
}
