//! Notes of a tape pad in which one thing has another form than a sides file has it: dashes between feet and inches,
//! commas for points, the tape before the day. With that changed they are read or answered as any other line.

use super::pieces::cut;
use super::shortened::begins;

/// The line with that one thing changed, and what was wrong. `None` if it has none of them.
pub(super) fn plainly(line: &str) -> Option<(String, &'static str)> {
    dashes_for_marks(line)
        .or_else(|| commas_for_points(line))
        .or_else(|| thickness_with_a_dash(line))
        .or_else(|| size_along_a_side(line))
        .or_else(|| owner_with_an_address(line))
        .or_else(|| measured_with(line))
        .or_else(|| inside_and_thickness(line))
        .or_else(|| said_otherwise(line))
        .or_else(|| not_reached(line))
        .or_else(|| assumed_brick(line))
        .or_else(|| front_of_a_bay(line))
}

/// Where the first of these forms with which a line begins ends.
fn after_one_of(line: &str, forms: &[&str]) -> Option<usize> {
    let plain = line.trim_start();
    let form = forms.iter().find(|form| begins(plain, form))?;
    Some(line.len() - plain.len() + form.len())
}

/// `10-0`, `24-1`: feet and inches, as a word of a line without its punctuation.
pub(super) fn dashed(word: &str) -> Option<(&str, &str, &str)> {
    let plain = word.trim_end_matches([',', ';', ')', '.', ':']);
    let tail = word.get(plain.len()..)?;
    let (feet, inches) = plain.trim_start_matches('(').split_once('-')?;
    let is_number = |text: &str, most: usize| {
        (1..=most).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit())
    };
    let fits = is_number(feet, 3)
        && is_number(inches, 2)
        && inches.parse::<u32>().is_ok_and(|inches| inches < 12);
    fits.then_some((feet, inches, tail))
}

/// `bay window 8-0 wide 2-0 deep 4-0 flat`, `right side 10-0 to bay`, `Foyer 9-0 x 7-1 on front, 15-0 from left`.
pub(super) fn dashes_for_marks(line: &str) -> Option<(String, &'static str)> {
    const SAYS: [&str; 22] = [
        "wide", "deep", "flat", "out", "from", "long", "side", "wall", "bay", "along", "x", "by",
        "porch", "deck", "garage", "foyer", "stair", "stairs", "living", "patio", "closet", "in",
    ];
    const NOT: [&str; 14] = [
        "account", "acct", "parcel", "pin", "apn", "measured", "notice", "date", "case", "phone",
        "bearing", "property", "address", "record",
    ];
    let pieces = cut(line);
    let is_inches = |at: usize| {
        line.get(..at).is_some_and(|before| before.ends_with(|c: char| c.is_ascii_digit()))
    };
    let has_text = line.match_indices('"').any(|(at, _)| !is_inches(at));
    let is_other = pieces.first()?.is_word(&NOT) || has_text || line.contains(['#', '$', '°']);
    let says = pieces.iter().any(|piece| piece.is_word(&SAYS));
    let words: Vec<&str> = line.split(' ').collect();
    let count = words.iter().filter(|word| dashed(word).is_some()).count();
    // A wall with its way and one such length is known.
    let is_wall = words.len() <= 2;
    if is_other || !says || count == 0 || is_wall || line.split('-').count() > count + 1 {
        return None;
    }
    let written: Vec<String> = words
        .iter()
        .map(|word| match dashed(word) {
            Some((feet, inches, tail)) => {
                let opens = if word.starts_with('(') { "(" } else { "" };
                format!("{opens}{feet}' {inches}\"{tail}")
            }
            None => (*word).to_owned(),
        })
        .collect();
    Some((written.join(" "), "the marks for feet and inches are missing"))
}

/// `barn "Barn" 14,20 x 9,10, stands apart`: a size with commas for its points.
fn commas_for_points(line: &str) -> Option<(String, &'static str)> {
    let words: Vec<&str> = line.split(' ').collect();
    let decimal = |word: &str| {
        let plain = word.trim_end_matches([',', ';', 'm']);
        let (whole, part) = plain.split_once(',')?;
        let is_number = |text: &str, most: usize| {
            (1..=most).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit())
        };
        (is_number(whole, 2) && is_number(part, 2)).then(|| word.replacen(',', ".", 1))
    };
    let at = (1..words.len().saturating_sub(1)).find(|&at| {
        ["x", "by", "×", "*"].contains(&words[at].to_lowercase().as_str())
            && decimal(words[at - 1]).is_some()
            && decimal(words[at + 1]).is_some()
    })?;
    let (one, two) = (decimal(words[at - 1])?, decimal(words[at + 1])?);
    let mut written: Vec<&str> = words.clone();
    written[at - 1] = &one;
    written[at + 1] = &two;
    Some((written.join(" "), "a point stands before the decimals of a length"))
}

/// `outside is brick, 4-5/8`: a thickness, and no day.
fn thickness_with_a_dash(line: &str) -> Option<(String, &'static str)> {
    let lower = line.trim().to_ascii_lowercase();
    let (said, number) = lower.rsplit_once([' ', ','])?;
    let (whole, fraction) = number.trim_end_matches('"').split_once('-')?;
    let is_digit = |text: &str| text.len() == 1 && text.bytes().all(|b| b.is_ascii_digit());
    let (over, under) = fraction.split_once('/')?;
    let material = ["brick", "stone", "veneer"].into_iter().find(|word| said.contains(word))?;
    let is_plain =
        said.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()).all(|word| {
            [
                "outside", "is", "all", "the", "house", "exterior", "walls", "brick", "stone",
                "veneer", "around", "thick", "about", "of", "and", "air", "gap",
            ]
            .contains(&word)
        });
    (is_digit(whole) && over.len() == 1 && ["2", "4", "8", "16"].contains(&under) && is_plain).then(
        || {
            (
                format!("{material} {whole} {fraction}\""),
                "brick or stone before the frame is `veneer` and its thickness",
            )
        },
    )
}

/// `Porch, covered, 10' along front x 4'2`: the words for the side stand after the size.
fn size_along_a_side(line: &str) -> Option<(String, &'static str)> {
    let words: Vec<&str> = line.split(' ').collect();
    let is_number = |word: &str| word.starts_with(|c: char| c.is_ascii_digit());
    let at = (1..words.len().saturating_sub(3)).find(|&at| {
        words[at].eq_ignore_ascii_case("along")
            && is_number(words[at - 1])
            && ["front", "back", "rear", "left", "right", "house", "side"]
                .contains(&words[at + 1].to_lowercase().as_str())
            && ["x", "by"].contains(&words[at + 2].to_lowercase().as_str())
            && is_number(words[at + 3])
    })?;
    let plain = words[at + 3].trim_end_matches(',');
    // `4'2`
    let last = match plain.split_once('\'') {
        Some((_, inches)) if !inches.is_empty() && inches.bytes().all(|b| b.is_ascii_digit()) => {
            format!("{plain}\"")
        }
        _ => plain.to_owned(),
    };
    let size = format!("{} x {last} on the {}", words[at - 1], words[at + 1]);
    let comma = if plain.len() < words[at + 3].len() { "," } else { "" };
    let written = [&words[..at - 1], &[size.as_str()], &words[at + 4..]].concat().join(" ");
    let written = written.replacen(&size, &format!("{size}{comma}"), 1);
    Some((written, "a size is two lengths, and then where the space stands"))
}

/// `Owner: 44 Aspen Lane, Juniper County`: an address, and no person.
fn owner_with_an_address(line: &str) -> Option<(String, &'static str)> {
    let end = after_one_of(line, &["owner: ", "owner "])?;
    let rest = line.get(end..)?.trim();
    let first = rest.split(' ').next()?;
    let streets = [
        "street", "st", "lane", "ln", "road", "rd", "court", "ct", "drive", "dr", "avenue", "ave",
        "way",
    ];
    let named = rest
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| streets.contains(&word.to_lowercase().as_str()));
    let is_number = (1..=5).contains(&first.len()) && first.bytes().all(|b| b.is_ascii_digit());
    (is_number && named && !rest.contains(['"', '#']))
        .then(|| (format!("address \"{rest}\""), "the address of the house begins with `address`"))
}

/// `measured sat. march 7 with a 25 ft tape`, `measured by me, 100 foot tape, 7 Mar 2026`: what was measured with.
fn measured_with(line: &str) -> Option<(String, &'static str)> {
    const CAUSE: &str = "what was measured with comes after `with`, with a `\"` on each side";
    after_one_of(line, &["measured ", "taped "])?;
    if line.contains(['"', '#']) {
        return None;
    }
    let tools = ["tape", "laser", "wheel", "measure"];
    let is_tool = |text: &str| {
        let last = text.trim_end_matches('.').rsplit(' ').next().unwrap_or_default();
        tools.iter().any(|tool| last.eq_ignore_ascii_case(tool))
    };
    if let Some((before, tool)) = line.rsplit_once(" with ") {
        let has_number = tool.contains(|c: char| c.is_ascii_digit());
        return (has_number && is_tool(tool))
            .then(|| (format!("{before} with \"{}\"", tool.trim().replace('"', " in")), CAUSE));
    }
    let parts: Vec<&str> = line.split(',').collect();
    let at = (1..parts.len())
        .find(|&at| is_tool(parts[at]) && parts[at].contains(|c: char| c.is_ascii_digit()))?;
    let rest = [&parts[..at], &parts[at + 1..]].concat().join(",");
    Some((format!("{rest} with \"{}\"", parts[at].trim().replace('\'', " ft")), CAUSE))
}

/// `dims are from inside, add 6" for walls`: the face, and how thick the walls are.
fn inside_and_thickness(line: &str) -> Option<(String, &'static str)> {
    let lower = line.trim().to_ascii_lowercase();
    let about = ["dims", "dimensions", "measurements", "all dims", "all measurements", "lengths"];
    let is_about = about.iter().any(|word| lower.starts_with(word));
    let (said, thick) = lower.split_once("add ")?;
    let (number, rest) = thick.split_at_checked(thick.find(['"', ' '])?)?;
    let unit = rest.starts_with('"') || rest.trim_start().starts_with("in");
    let is_number = !number.is_empty()
        && number.bytes().all(|b| b.is_ascii_digit() || b == b'.')
        && number.parse::<f64>().is_ok();
    (is_about && said.contains("inside") && unit && is_number && rest.contains("wall")).then(|| {
        (
            format!("faces inside\nwall {number}\""),
            "lengths that were taped inside are `faces inside`, and how thick the walls are is `wall`",
        )
    })
}

/// Short sentences that stand for a line of the format, or for none.
fn said_otherwise(line: &str) -> Option<(String, &'static str)> {
    let plain = line.trim();
    let rest_of =
        |forms: &[&str]| Some(plain.get(after_one_of(plain, forms)?..)?.trim().to_owned());
    let is_area = |text: &str| {
        let digits = text.replace(',', "");
        digits.len() >= 3 && digits.len() <= 5 && digits.bytes().all(|b| b.is_ascii_digit())
    };
    if plain.contains(['"', '#']) && !plain.ends_with('"') {
        return None;
    }
    if let Some(area) = rest_of(&[
        "realtor said ",
        "realtor says ",
        "agent said ",
        "agent says ",
        "mls said ",
        "mls says ",
    ]) {
        return is_area(&area).then(|| {
            (format!("listing {area} sq ft"), "what an agent published begins with `listing`")
        });
    }
    if let Some(sum) = rest_of(&["over 65 exemption ", "over-65 exemption "]) {
        return (sum.starts_with(|c: char| c.is_ascii_digit()) && is_sum(&sum)).then(|| {
            (
                format!("exemption ${sum} \"over 65\""),
                "an exemption has its amount, then what it is called with a `\"` on each side",
            )
        });
    }
    if let Some(length) = rest_of(&[
        "all measurements to nearest ",
        "all measurements to the nearest ",
        "measurements to nearest ",
        "measurements to the nearest ",
        "measured to nearest ",
        "measured to the nearest ",
    ]) {
        let inches = [
            "1/2 inch",
            "1/2\"",
            "half inch",
            "1/4 inch",
            "1/4\"",
            "quarter inch",
            "inch",
            "1\"",
            "1 inch",
        ];
        let length = inches.iter().find(|one| length.eq_ignore_ascii_case(one))?;
        let length = match *length {
            "1/2 inch" | "1/2\"" | "half inch" => "1/2\"",
            "1/4 inch" | "1/4\"" | "quarter inch" => "1/4\"",
            _ => "1\"",
        };
        return Some((
            format!("tolerance {length}"),
            "how exactly the walls were measured is `tolerance`",
        ));
    }
    if let Some(rest) = rest_of(&[
        "second floor is over ",
        "2nd floor is over ",
        "upstairs is over ",
        "upper floor is over ",
    ]) {
        let level = plain.get(..plain.len().saturating_sub(rest.len()))?;
        let level = level.trim_end().strip_suffix("is over")?.trim_end();
        return Some((
            format!("{level} over {rest}"),
            "a level has its name, and its space says where it lies",
        ));
    }
    if let Some(rest) = rest_of(&["n is up", "n = up", "n=up", "north = up", "n up"]) {
        return rest
            .is_empty()
            .then(|| (format!("# {plain}"), "north is up in any case; a comment begins with `#`"));
    }
    if let Some(rest) = rest_of(&["1/2 story ", "1/2 storey "]) {
        let is_name = rest.chars().all(|c| c.is_alphabetic() || c == ' ');
        return (is_name && !rest.is_empty()).then(|| {
            (
                format!("level \"{plain}\""),
                "a level is `level` and its name, with a `\"` on each side",
            )
        });
    }
    if let Some(rest) = rest_of(&["measured twice, ", "measured twice ", "measured twice: "]) {
        return [" and ", " & "]
            .iter()
            .any(|and| rest.contains(and))
            .then(|| (format!("measured {rest}"), "`measured` has one day, the last of several"));
    }
    if let Some(rest) = rest_of(&["attic bonus room "]) {
        return Some((
            format!("bonus room {rest}, in the attic"),
            "a room that is finished is `living`",
        ));
    }
    let lower = plain.to_ascii_lowercase();
    let has = |words: &[&str]| {
        lower.split(|c: char| !c.is_ascii_alphanumeric()).any(|word| words.contains(&word))
    };
    let is_style = lower.starts_with(|c: char| c.is_ascii_digit())
        && has(&["story", "storey"])
        && has(&["bed", "beds", "bath", "baths", "bedroom", "bedrooms"]);
    is_style.then(|| {
        (
            format!("# {plain}"),
            "this line says nothing about the outline; a comment begins with `#`",
        )
    })
}

fn is_sum(text: &str) -> bool {
    text.bytes().all(|b| b.is_ascii_digit() || b == b',')
}

/// `south 28' 4" (couldn't reach, AC unit)`: a length that was not taped.
fn not_reached(line: &str) -> Option<(String, &'static str)> {
    let (wall, remark) = line.trim_end().strip_suffix(')')?.split_once('(')?;
    let says = [
        "couldn't reach",
        "couldnt reach",
        "could not reach",
        "can't reach",
        "cant reach",
        "not reachable",
    ];
    let lower = remark.to_ascii_lowercase();
    let begins_so = says.iter().any(|one| lower.starts_with(one));
    let pieces = cut(wall);
    let is_wall = super::begins_as_side(wall) && pieces.len() <= 6;
    (is_wall && begins_so && !remark.contains(['(', '"', '#'])).then(|| {
        (format!("{}, {remark}", wall.trim_end()), "a length that was not taped is `estimated`")
    })
}

/// `brick veneer, 4 5/8" assumed`: a thickness that was not measured.
fn assumed_brick(line: &str) -> Option<(String, &'static str)> {
    let lower = line.trim().to_ascii_lowercase();
    let begins = ["brick", "veneer", "stone"].iter().any(|word| lower.starts_with(word));
    let (before, word) = lower.trim_end_matches([')', '.']).rsplit_once([' ', '('])?;
    let is_so = ["assumed", "guessed", "typical", "standard"].contains(&word);
    let length = before.get(before.find(|c: char| c.is_ascii_digit())?..)?.trim_end();
    let is_length = length.ends_with(['"', '\''])
        && length.chars().all(|c| c.is_ascii_digit() || " \"'/.".contains(c));
    (begins && is_so && is_length && !line.contains('#')).then(|| {
        (
            format!("veneer {length}  # {word}"),
            "brick or stone before the frame is `veneer` and its thickness",
        )
    })
}

/// `bay window 8' wide 2' out 4' across front`: how wide its front is.
fn front_of_a_bay(line: &str) -> Option<(String, &'static str)> {
    after_one_of(line, &["bay ", "angled bay "])?;
    let form = [" across the front", " across front", " in front", " at the front", " front"]
        .into_iter()
        .find(|form| line.contains(form))?;
    let (before, after) = line.split_once(form)?;
    let follows_length = before.ends_with(['\'', '"', '′']) || before.ends_with(" ft");
    let has_all = ["wide", "out"].iter().all(|word| line.contains(word));
    let ends = after.is_empty() || after.starts_with([',', ' ']);
    (follows_length && has_all && ends && !line.contains("flat")).then(|| {
        (
            format!("{before} flat{after}"),
            "a bay has its direction and width, then `out`, then `flat` or `round`",
        )
    })
}
