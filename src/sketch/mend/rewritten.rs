//! Lines in which one thing has another form, such as `12-6 x 4` or `07-MAR-2026`: with that written as a sides file has
//! it, they are read or answered as any other line.

/// The line with one thing in it written as a sides file has it, and what was wrong. `None` if it has none of them.
pub(super) fn in_its_form(line: &str) -> Option<(String, &'static str)> {
    floor_left_off(line)
        .or_else(|| super::shortened::written_out(line))
        .or_else(|| super::reworded::in_other_words(line))
        .or_else(|| super::said_otherwise::usually(line))
        .or_else(|| super::size_forms::plainly(line))
        .or_else(|| super::head_forms::written_out(line))
        .or_else(|| rough_second_length(line))
        .or_else(|| dashed_size(line))
        .or_else(|| letter_before_a_dashed_length(line))
        .or_else(|| super::noted::plainly(line))
        .or_else(|| without_its_number(line))
        .or_else(|| side_before_its_kind(line))
        .or_else(|| cover_after_its_kind(line))
        .or_else(|| glass_enclosed(line))
        .or_else(|| inches_in_a_text(line))
        .or_else(|| ways_apart(line))
        .or_else(|| open_after_its_room(line))
        .or_else(|| cells(line))
        .or_else(|| quoted_area(line))
        .or_else(|| unit_in_parentheses(line))
        .or_else(|| mark_after_its_word(line))
        .or_else(|| month_in_letters(line))
        .or_else(|| record_and_measured(line))
        .or_else(|| slant_in_two_words(line))
        .or_else(|| spelled_out(line))
        .or_else(|| number_respelled(line))
        .or_else(|| letter_in_a_decimal(line))
        .or_else(|| letter_in_a_call(line))
}

/// `upper: taped inside 29' x 17'`, `second, taped inside, walls 5 in`: a level by its first word alone.
fn floor_left_off(line: &str) -> Option<(String, &'static str)> {
    const LEVELS: [&str; 14] = [
        "upper", "lower", "main", "ground", "first", "second", "third", "1st", "2nd", "3rd", "top",
        "1st.", "2nd.", "3rd.",
    ];
    const SAYS: [&str; 8] =
        ["inside", "outside", "interior", "exterior", "taped", "measured", "same", "frame"];
    let line = line.trim();
    let end = line.find([':', ',', ' ', ';'])?;
    let (word, rest) = line.split_at_checked(end)?;
    let is_level = LEVELS.iter().any(|level| word.eq_ignore_ascii_case(level));
    let said = rest.trim_start_matches([':', ',', ';', ' ', '-', '–']);
    let next = said.split(|c: char| !c.is_alphanumeric()).next()?.to_lowercase();
    let is_marked =
        rest.starts_with([':', ',', ';']) || rest.starts_with(" -") || rest.starts_with(" –");
    let begins = SAYS.contains(&next.as_str());
    let says = said
        .split(|c: char| !c.is_alphabetic())
        .any(|word| SAYS.contains(&word.to_lowercase().as_str()));
    let word = word.trim_end_matches('.');
    (is_level && says && (begins || is_marked) && !line.contains('#')).then(|| {
        let mark = if is_marked { "" } else { "," };
        (
            format!("{word} floor{mark}{rest}"),
            "a level is `level` and its name, with a `\"` on each side",
        )
    })
}

/// `garage 4.20m by about 2.05m`: the word for what was not taped exactly stands after the size.
fn rough_second_length(line: &str) -> Option<(String, &'static str)> {
    const ROUGH: [&str; 6] = ["about", "approx", "approx.", "approximately", "roughly", "around"];
    let words: Vec<&str> = line.split_whitespace().collect();
    let is_number = |word: &str| word.starts_with(|c: char| c.is_ascii_digit());
    let at = (2..words.len()).find(|&at| {
        ROUGH.contains(&words[at].to_lowercase().as_str())
            && matches!(words[at - 1], "x" | "X" | "×" | "by")
            && words.get(at + 1).is_some_and(|word| is_number(word))
    })?;
    let plain = [&words[..at], &words[at + 1..]].concat().join(" ");
    let size = super::kinds::size_in(&plain)?.trim_end_matches([',', ' ']);
    let end = plain.find(size)? + size.len();
    let (before, after) = (plain.get(..end)?, plain.get(end..)?);
    Some((
        format!("{before} approx{after}"),
        "a length that was not measured exactly is `estimated`",
    ))
}

/// `W 22-7 garage doors`: with the whole word of its way the line is known as a wall whatever follows.
fn letter_before_a_dashed_length(line: &str) -> Option<(String, &'static str)> {
    let (letter, rest) = line.trim().split_once(' ')?;
    let way = ["north", "east", "south", "west"]
        .into_iter()
        .find(|way| way.get(..1).is_some_and(|first| first.eq_ignore_ascii_case(letter)))?;
    let (length, more) = rest.trim_start().split_once(' ')?;
    let (feet, inches) = length.split_once('-')?;
    let is_number = |text: &str| (1..=3).contains(&text.len()) && text.parse::<u32>().is_ok();
    let is_named = more.trim_start().starts_with(|c: char| c.is_alphabetic());
    (is_number(feet) && is_number(inches) && is_named).then(|| {
        (format!("{way} {}", rest.trim_start()), "the marks for feet and inches are missing")
    })
}

/// `covered front porch 14 x 6`: the side between what the porch is like and what it is.
fn side_before_its_kind(line: &str) -> Option<(String, &'static str)> {
    let mut words = line.trim().splitn(4, ' ');
    let (like, side, kind) = (words.next()?, words.next()?, words.next()?);
    let is = |word: &str, words: &[&str]| words.contains(&word.to_lowercase().as_str());
    let is_so = is(like, &["covered", "screened", "roofed", "uncovered", "open"])
        && is(side, &["front", "back", "rear"])
        && is(kind, &["porch", "patio", "deck", "stoop", "veranda", "terrace"]);
    let rest = words.next().map_or_else(String::new, |rest| format!(" {rest}"));
    let is_sized = super::kinds::size_in(&rest).is_some() && !rest.contains(['"', '#', ',']);
    is_so.then(|| {
        (
            match is_sized {
                true => format!("{side} {kind}{rest}, {like}"),
                false => format!("{side} {like} {kind}{rest}"),
            },
            "the line of a space has its kind, its name, its place, and its area on the record",
        )
    })
}

/// `stoop 10 x 4 covered, at the front, 5' from the left corner`: what a porch is like stands before its kind, so that its
/// place can be read.
fn cover_after_its_kind(line: &str) -> Option<(String, &'static str)> {
    const KINDS: [&str; 10] = [
        "porch", "stoop", "deck", "patio", "veranda", "verandah", "terrace", "balcony", "portico",
        "landing",
    ];
    const PLACES: [&str; 23] = [
        "north",
        "east",
        "south",
        "west",
        "front",
        "back",
        "rear",
        "left",
        "right",
        "corner",
        "ne",
        "nw",
        "se",
        "sw",
        "n",
        "s",
        "side",
        "touching",
        "abutting",
        "against",
        "adjoining",
        "beside",
        "next",
    ];
    let words: Vec<&str> = line.split_whitespace().collect();
    let plain = |word: &str| word.trim_matches([',', ';', '(', ')', '.', ':']).to_lowercase();
    let is = |at: usize, of: &[&str]| {
        words.get(at).is_some_and(|word| of.contains(&plain(word).as_str()))
    };
    let kind = (0..2).find(|&at| is(at, &KINDS))?;
    let is_led = kind == 0 || is(0, &["front", "back", "rear", "side", "small", "entry"]);
    let like = (kind + 1..words.len())
        .find(|&at| is(at, &["covered", "roofed", "screened", "uncovered", "unroofed"]))?;
    let word = words[like];
    let (before, after) = (words.get(like - 1)?, words.get(like + 1));
    let is_whole = word.contains('(') == word.contains(')');
    // `not covered`, `covered by a tree`, `screened on two sides`
    let on_sides = is(like + 1, &["on"]) && (like..words.len()).any(|at| is(at, &["sides"]));
    let is_more = on_sides
        || is(like - 1, &["not", "un", "half", "partly", "and"])
        || after.is_some_and(|next| {
            ["by", "with", "area", "part", "half"].contains(&plain(next).as_str())
        });
    let says_place = (kind + 1..words.len()).any(|at| is(at, &PLACES));
    let says_size = has_size(&words);
    if line.contains(['"', '#']) || !is_led || !is_whole || is_more || !says_place || !says_size {
        return None;
    }
    let mut left: Vec<String> = words.iter().map(|word| (*word).to_owned()).collect();
    let ends = word.ends_with([',', ';']) && like - 1 > kind && !before.ends_with([',', ';']);
    if ends && let Some(last) = left.get_mut(like - 1) {
        last.push(',');
    }
    left.remove(like);
    let line = left.join(" ");
    let line = line.trim_end_matches([',', ';', ' ']);
    Some((
        format!("{} {line}", plain(word)),
        "the line of a space has its kind, its name, its place, and its area on the record",
    ))
}

/// `glass enclosed porch 12 x 14`: what encloses it in one word.
fn glass_enclosed(line: &str) -> Option<(String, &'static str)> {
    let (begins, rest) = line.split_at_checked("glass enclosed ".len())?;
    let is_glass = ["glass enclosed ", "glass-enclosed "]
        .iter()
        .any(|glass| begins.eq_ignore_ascii_case(glass));
    let kind = rest.split(' ').next().unwrap_or_default().trim_end_matches([',', ':']);
    let is_kind =
        ["porch", "patio", "deck", "breezeway"].iter().any(|one| kind.eq_ignore_ascii_case(one));
    if !is_glass || !is_kind {
        return None;
    }
    Some((format!("glassed-in {rest}"), "a space begins with its kind, then its name"))
}

/// Whether words give a size, with the decimal commas of other countries too: `3,10 x 1,30`, `10x4`.
fn has_size(words: &[&str]) -> bool {
    let digit = |c: char| c.is_ascii_digit();
    let joined = |word: &&str| {
        word.split_once(['x', 'X', '×'])
            .is_some_and(|(one, two)| one.starts_with(digit) && two.starts_with(digit))
    };
    let apart =
        |three: &[&str]| matches!(three[0], "x" | "X" | "×" | "by") && three[1].starts_with(digit);
    words.iter().any(joined) || words.windows(2).any(apart)
}

/// `east fourty feet 2 inches`: a number word as it is often misspelled.
fn number_respelled(line: &str) -> Option<(String, &'static str)> {
    let mut changed = false;
    let words: Vec<String> = line
        .split(' ')
        .map(|word| {
            let parts: Vec<&str> = word.split('-').collect();
            let right = |part: &&str| {
                super::lengths::respelled(&part.to_lowercase())
                    .map_or((*part).to_owned(), str::to_owned)
            };
            let even = parts.iter().map(right).collect::<Vec<String>>().join("-");
            changed |= even != word;
            even
        })
        .collect();
    changed.then(|| (words.join(" "), "numbers are written in digits"))
}

/// `south 30.2S'`: a letter after the point of a length.
fn letter_in_a_decimal(line: &str) -> Option<(String, &'static str)> {
    let (way, length) = line.trim().split_once(' ')?;
    let bare = length.trim_end_matches(['\'', '’', '′']);
    let (whole, part) = bare.split_once('.')?;
    let is_way = ["north", "east", "south", "west", "n", "e", "s", "w"]
        .contains(&way.to_lowercase().as_str());
    let digit = |c: char| match c {
        '0'..='9' => Some(c),
        'O' | 'o' => Some('0'),
        'l' | 'I' => Some('1'),
        'S' => Some('5'),
        'B' => Some('8'),
        _ => None,
    };
    let digits: String = part.chars().map(digit).collect::<Option<String>>()?;
    let is_number = !whole.is_empty() && whole.bytes().all(|byte| byte.is_ascii_digit());
    let fits =
        is_way && is_number && digits != part && part.starts_with(|c: char| c.is_ascii_digit());
    fits.then(|| {
        let mark = length.get(bare.len()..).unwrap_or_default();
        (format!("{way} {whole}.{digits}{mark}"), "a letter stands where a digit should")
    })
}

/// `bearing N 0 E 120.OO'`: letters for digits in the length of a call, which ends the line.
fn letter_in_a_call(line: &str) -> Option<(String, &'static str)> {
    let line = line.trim();
    let (head, last) = line.rsplit_once(' ')?;
    let first = head.split(' ').next()?.to_lowercase();
    let is_call = ["bearing", "thence", "call", "n", "s", "north", "south"]
        .contains(&first.as_str())
        && head.split(' ').count() > 2;
    let number = last.trim_end_matches(['\'', '’', '′', ';', ',']);
    let right: String = number
        .chars()
        .map(|c| match c {
            'O' | 'o' => '0',
            'l' | 'I' => '1',
            c => c,
        })
        .collect();
    let is_number = right.starts_with(|c: char| c.is_ascii_digit())
        && number.starts_with(|c: char| c.is_ascii_digit())
        && right.chars().all(|c| c.is_ascii_digit() || c == '.')
        && right.matches('.').count() <= 1;
    (is_call && is_number && right != number).then(|| {
        let mark = last.get(number.len()..).unwrap_or_default();
        (format!("{head} {right}{mark}"), "a letter stands where a digit should")
    })
}

/// `porch 12-6 x 4`, `deck 12 1/2 x 10-0`: a size with its feet and inches as a sides file has them, and what was wrong.
fn dashed_size(line: &str) -> Option<(String, &'static str)> {
    let is_by = |text: &str| matches!(text, "x" | "X" | "×" | "by");
    let words: Vec<&str> = line.split(' ').collect();
    let whole = |text: &str| {
        let is_small = (1..=3).contains(&text.len()) && text.bytes().all(|c| c.is_ascii_digit());
        is_small.then(|| text.parse::<u32>().ok()).flatten()
    };
    // `12-6`
    let dashed = |word: &str| {
        let (feet, inches, end) = super::noted::dashed(word).filter(|_| !word.starts_with('('))?;
        Some(match inches.parse::<u32>().ok()? {
            0 => format!("{feet}'{end}"),
            inches => format!("{feet}' {inches}\"{end}"),
        })
    };
    let half = |word: &str| match word {
        "1/2" => Some(6),
        "1/4" => Some(3),
        "3/4" => Some(9),
        _ => None,
    };
    let mut out: Vec<String> = Vec::new();
    let (mut at, mut changed) = (0, false);
    let by = |at: usize| words.get(at).is_some_and(|word| is_by(word));
    while let Some(word) = words.get(at) {
        let after_by = at.checked_sub(1).is_some_and(by);
        // `12 1/2 x 10`
        let parts = whole(word).zip(words.get(at + 1).and_then(|word| half(word)));
        if let Some((feet, inches)) = parts.filter(|_| after_by || by(at + 2)) {
            out.push(format!("{feet}' {inches}\""));
            (at, changed) = (at + 2, true);
            continue;
        }
        let beside = after_by || by(at + 1);
        match dashed(word).filter(|_| beside) {
            Some(even) => {
                out.push(even);
                changed = true;
            }
            None => out.push((*word).to_owned()),
        }
        at += 1;
    }
    // The other length is in feet too.
    let at_by = out.iter().position(|word| is_by(word)).filter(|_| changed)?;
    for at in [at_by.checked_sub(1)?, at_by + 1] {
        let Some(word) = out.get_mut(at) else { continue };
        let number = word.trim_end_matches([',', ';']);
        if whole(number).is_some() {
            *word = format!("{number}'{}", word.get(number.len()..).unwrap_or_default());
        }
    }
    Some((out.join(" "), "feet take `'` and inches `\"`"))
}

/// `north 30' note "the 6" pipe"`: a text without the inch mark in it, and what was wrong.
fn inches_in_a_text(line: &str) -> Option<(String, &'static str)> {
    let at = ["note \"", "photo \""]
        .iter()
        .find_map(|word| line.find(&format!(" {word}")).map(|at| at + word.len() + 1))?;
    let end = line.trim_end().rfind('"').filter(|end| *end > at)?;
    let (before, text, after) = (line.get(..at)?, line.get(at..end)?, line.get(end..)?);
    let digit = |c: char| c.is_ascii_digit() || "½¼¾⅛⅜⅝⅞".contains(c);
    let marks: Vec<usize> = text.match_indices('"').map(|(at, _)| at).collect();
    let all_inches = marks.iter().all(|&at| {
        let next = text.get(at + 1..).and_then(|rest| rest.chars().next());
        text.get(..at).is_some_and(|before| before.ends_with(digit))
            && next.is_none_or(|next| !next.is_alphanumeric())
    });
    // Two texts, each with its own marks.
    let is_one = !text.contains("note \"") && !text.contains("photo \"") && !text.contains('#');
    (!marks.is_empty() && all_inches && is_one).then(|| {
        let text = text.replace('"', " in");
        (format!("{before}{text}{after}"), "no inch mark stands in a text, since it would end it")
    })
}

/// Letters of a record card or a pad at the start of a line, and the words for them.
///
/// Common practice of assessment offices.
const LETTERS: [(&str, &str); 11] = [
    ("AG", "attached garage"),
    ("DG", "detached garage"),
    ("OP", "porch"),
    ("EP", "porch"),
    ("CP", "carport"),
    ("WD", "deck"),
    ("BSMT", "basement"),
    ("BSMNT", "basement"),
    ("ATT.", "attached"),
    ("DET.", "detached"),
    ("UNFIN.", "unfinished"),
];

/// `AG 484`, `OP "Open porch" 6 x 20`, `open porch "Porch" 6 x 20`, `garage "G" 22 x 22 detatched`: the line in whole
/// words, and what was wrong.
fn spelled_out(line: &str) -> Option<(String, &'static str)> {
    const CAUSE: &str = "a line is in whole words";
    let (first, rest) = line.split_once(' ')?;
    // `HS exemption 140,000`: what it is called comes after its sum.
    let has_sum = rest.contains('$') || rest.contains(",000");
    if first == "HS" && rest.to_lowercase().starts_with("exemption ") && has_sum {
        return Some((rest.to_owned(), CAUSE));
    }
    let words = LETTERS.iter().find(|(letters, _)| {
        *letters == first || letters.len() > 3 && letters.eq_ignore_ascii_case(first)
    });
    let is_next = |c: char| c.is_ascii_digit() || c == '"';
    if let Some((_, words)) = words.filter(|_| rest.trim_start().starts_with(is_next)) {
        return Some((format!("{words} {rest}"), CAUSE));
    }
    // `open` alone would be what is open to below.
    let lower = line.to_lowercase();
    if let Some(rest) =
        lower.strip_prefix("open porch ").and_then(|_| line.get("open porch ".len()..))
    {
        let name = if rest.starts_with('"') { String::new() } else { "\"Open porch\" ".to_owned() };
        return Some((
            format!("porch {name}{rest}"),
            "a porch is `porch`; `open` is what is open to the floor below",
        ));
    }
    let misspelled = [
        "detatched",
        "dettached",
        "deatached",
        "detacthed",
        "dettatched",
        "seperate",
        "seperated",
        "seperately",
        "freestading",
    ];
    let mut changed = false;
    let words: Vec<&str> = line
        .split(' ')
        .map(|word| match misspelled.contains(&word.to_lowercase().as_str()) {
            true => {
                changed = true;
                "detached"
            }
            false => word,
        })
        .collect();
    changed.then(|| (words.join(" "), "what stands by itself is `detached`"))
}

/// `E40' N30' W40' S30'`: three walls or more, each way apart from its length, and what was wrong.
fn ways_apart(line: &str) -> Option<(String, &'static str)> {
    let words: Vec<&str> = line.split([' ', ',', ';']).filter(|word| !word.is_empty()).collect();
    let apart = |word: &&str| {
        let (way, length) = word.split_at_checked(1)?;
        let is_way = "NESWnesw".contains(way);
        let is_length = length.starts_with(|c: char| c.is_ascii_digit())
            && !length.contains(|c: char| c.is_alphabetic() || "°º".contains(c));
        (is_way && is_length).then(|| format!("{way} {length}"))
    };
    let walls: Vec<String> = words.iter().map_while(apart).collect();
    (walls.len() > 2 && walls.len() == words.len())
        .then(|| (walls.join(" "), "each side goes on its own line"))
}

/// `great room open to below "Great room" start north 5'`: what is open begins with `open`, and what was wrong.
fn open_after_its_room(line: &str) -> Option<(String, &'static str)> {
    let lower = line.to_lowercase();
    let at = ["open to below", "open to above", "open below"]
        .iter()
        .find_map(|said| lower.find(said).filter(|at| *at > 0).map(|at| at + said.len()))?;
    let rest =
        line.get(at..)?.trim_start().strip_prefix(':').unwrap_or(line.get(at..)?).trim_start();
    rest.starts_with('"').then(|| {
        (format!("open {rest}"), "what is open to the floor below is `open`, and its name follows")
    })
}

/// `north,30.5,31`: the cells of a sheet, which a comma may also join to one number, and what was wrong.
fn cells(line: &str) -> Option<(String, &'static str)> {
    let parts: Vec<&str> = line.trim().split(',').collect();
    let is_number =
        |text: &&str| !text.is_empty() && text.chars().all(|c| c.is_ascii_digit() || c == '.');
    let way = parts.first().and_then(|way| super::compass::way_and_back(way));
    // `east,20,2` may be 20' 2" or 20.2.
    let is_length = parts.last().is_some_and(|last| last.contains('.') || last.len() > 1);
    let is_row = way.is_some() && parts.len() == 3 && parts[1..].iter().all(is_number);
    (is_row && is_length).then(|| {
        (
            parts.join("\t"),
            "these are the cells of a table; a line is words with spaces between them",
        )
    })
}

/// `record "1,200" sq ft`: a number between quotation marks, and what was wrong.
fn quoted_area(line: &str) -> Option<(String, &'static str)> {
    let (word, rest) = line.split_once(" \"")?;
    let (number, after) = rest.split_once('"')?;
    let is_figure = matches!(word.to_lowercase().as_str(), "record" | "listing" | "plan");
    let is_number =
        !number.is_empty() && number.chars().all(|c| c.is_ascii_digit() || matches!(c, ',' | '.'));
    (is_figure && is_number)
        .then(|| (format!("{word} {number}{after}"), "a number stands without quotation marks"))
}

/// `county record 136.2 (sq m)`: the unit of an area in parentheses.
fn unit_in_parentheses(line: &str) -> Option<(String, &'static str)> {
    const UNITS: [&str; 14] = [
        "sq m",
        "sq. m",
        "sqm",
        "m2",
        "m²",
        "qm",
        "sq ft",
        "sq. ft.",
        "sq. ft",
        "sqft",
        "sf",
        "ha",
        "acres",
        "square feet",
    ];
    let (before, rest) = line.split_once('(')?;
    let (unit, after) = rest.split_once(')')?;
    let is_number = before.trim_end().ends_with(|c: char| c.is_ascii_digit());
    let is_unit = UNITS.iter().any(|known| known.eq_ignore_ascii_case(unit.trim()));
    (is_number && is_unit && !line.contains(['#', '"'])).then(|| {
        (
            format!("{} {}{after}", before.trim_end(), unit.trim()),
            "the unit of an area stands right after its number",
        )
    })
}

/// `record: 1,725 sq ft not counting the garage`: a mark between the word for who published an area and its number, where
/// more than the area follows.
fn mark_after_its_word(line: &str) -> Option<(String, &'static str)> {
    let (word, rest) = line.split_once([':', '='])?;
    let is_figure = matches!(word.trim().to_lowercase().as_str(), "record" | "listing" | "plan");
    let rest = rest.trim_start();
    let is_number = rest.starts_with(|c: char| c.is_ascii_digit());
    let without = [" not ", " excl", " without ", " less ", " no ", " except ", " minus "];
    let lower = rest.to_lowercase();
    let says_more = without.iter().any(|word| lower.contains(word));
    (is_figure && is_number && says_more).then(|| {
        (
            format!("{} {rest}", word.trim()),
            "nothing stands between the word for who published an area and its number",
        )
    })
}

/// `measured 07-MAR-2026 with total station`: the month in letters, and what was wrong.
fn month_in_letters(line: &str) -> Option<(String, &'static str)> {
    let word = line.split(' ').find(|word| {
        let parts: Vec<&str> = word.split('-').collect();
        matches!(&parts[..], [day, month, year]
            if (1..=2).contains(&day.len()) && month.len() > 2 && year.len() == 4
                && day.bytes().chain(year.bytes()).all(|c| c.is_ascii_digit())
                && month.chars().all(char::is_alphabetic))
    })?;
    let mut parts = word.split('-');
    let (day, month, year) = (parts.next()?, parts.next()?, parts.next()?);
    let month = super::kinds::month_named(&month.to_lowercase())?;
    let date = format!("{year}-{month:02}-{day:0>2}");
    Some((line.replacen(word, &date, 1), "a date is written year-month-day"))
}

/// `N 0°30' E 120.00' (R) 119.95' (M)`: the record's length and the measured one, and what was wrong.
fn record_and_measured(line: &str) -> Option<(String, &'static str)> {
    const RECORD: [&str; 5] = ["(r)", "(rec)", "(record)", "(deed)", "(d)"];
    const MEASURED: [&str; 5] = ["(m)", "(meas)", "(measured)", "(field)", "(f)"];
    let words: Vec<&str> = line.split(' ').filter(|word| !word.is_empty()).collect();
    let is_one = |at: usize, of: &[&str]| {
        words.get(at).is_some_and(|word| of.contains(&word.to_lowercase().as_str()))
    };
    let last = words.len();
    let first = last.checked_sub(4)?;
    let (record, measured) = if is_one(first + 1, &RECORD) && is_one(first + 3, &MEASURED) {
        (words[first], words[first + 2])
    } else if is_one(first + 1, &MEASURED) && is_one(first + 3, &RECORD) {
        (words[first + 2], words[first])
    } else {
        return None;
    };
    let is_length = |text: &str| text.starts_with(|c: char| c.is_ascii_digit());
    (first > 0 && is_length(record) && is_length(measured)).then(|| {
        let begin = words[..first].join(" ");
        (
            format!("{begin} {measured} recorded {record}"),
            "the length that was measured comes first, and the record's after `recorded`",
        )
    })
}

/// `diagonal 4' 2" north east`, `diagonal north 3' by 3' east`: the two ways of a slanted wall, and what was wrong.
fn slant_in_two_words(line: &str) -> Option<(String, &'static str)> {
    let lower = line.to_lowercase();
    let rest = lower.strip_prefix("diagonal ")?;
    let ways = ["north", "south"]
        .iter()
        .flat_map(|one| ["east", "west"].iter().map(move |two| (*one, *two)));
    for (one, two) in ways {
        if let Some(length) = rest.strip_suffix(&format!(" {one} {two}")) {
            let plain = !length.contains("north") && !length.contains("south");
            return plain.then(|| {
                (format!("diagonal {length} {one}{two}"), "a way between two others is one word")
            });
        }
        for (first, last) in [(one, two), (two, one)] {
            let between = rest.strip_prefix(first).and_then(|rest| rest.strip_suffix(last));
            if let Some((a, b)) = between.and_then(|between| between.split_once(" by ")) {
                return Some((
                    format!("diagonal {first} {} {last} {}", a.trim(), b.trim()),
                    "a `diagonal` has each way before its length",
                ));
            }
        }
    }
    None
}

/// `2. north 28'`, `side 6 north 28'`: a wall without the number before it, and what was wrong.
fn without_its_number(line: &str) -> Option<(String, &'static str)> {
    let (first, rest) = line.trim_start().split_once(' ')?;
    let is_number =
        |text: &str| (1..=2).contains(&text.len()) && text.bytes().all(|c| c.is_ascii_digit());
    let numbered = first.strip_suffix(['.', ')']).filter(|number| is_number(number));
    let rest = match numbered {
        Some(_) => rest,
        None if matches!(first.to_lowercase().as_str(), "side" | "wall" | "leg" | "line") => {
            let (number, rest) = rest.trim_start().split_once(' ')?;
            let number = number.trim_end_matches([':', '.', ')']);
            Some(rest).filter(|_| is_number(number))?
        }
        None => return None,
    };
    let rest = rest.trim_start();
    let mut words = rest.split(|c: char| !c.is_alphabetic());
    let is_wall = super::compass::way_and_back(words.next()?).is_some();
    is_wall.then(|| (rest.to_owned(), "sides are numbered by the program, in their order"))
}
