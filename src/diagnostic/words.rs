//! Small helpers for sentences: plurals, lists, spelling suggestions, line breaks.

use crate::units::decimal::thousands;

/// `1 side`, `2 sides`, `1,000 sides`.
pub(crate) fn count(number: usize, noun: &str) -> String {
    if number == 1 { format!("1 {noun}") } else { format!("{} {noun}s", whole(number)) }
}

/// A count with its thousands grouped.
pub(crate) fn whole(number: usize) -> String {
    thousands(i64::try_from(number).unwrap_or(i64::MAX))
}

/// `a`, `a or b`, `a, b or c`.
pub(crate) fn one_of(items: &[&str]) -> String {
    list(items, "or")
}

/// `a`, `a and b`, `a, b and c`.
pub(crate) fn all_of<S: AsRef<str>>(items: &[S]) -> String {
    list(items, "and")
}

/// Words that name parts of a house or say which one is meant. A name made only of these is a common noun.
const COMMON_WORDS: &[&str] = &[
    "addition",
    "annex",
    "apartment",
    "area",
    "attic",
    "back",
    "balcony",
    "barn",
    "basement",
    "bath",
    "bathroom",
    "bay",
    "bedroom",
    "bedrooms",
    "below",
    "boiler",
    "bonus",
    "breakfast",
    "breezeway",
    "brick",
    "bump-out",
    "cabin",
    "carport",
    "casita",
    "ceiling",
    "cellar",
    "closet",
    "corn",
    "cottage",
    "court",
    "covered",
    "craft",
    "crawl",
    "crib",
    "deck",
    "den",
    "detached",
    "dining",
    "dormer",
    "down",
    "downstairs",
    "east",
    "eaves",
    "ell",
    "enclosed",
    "entrance",
    "entry",
    "exercise",
    "family",
    "farmhouse",
    "finished",
    "first",
    "floor",
    "four-season",
    "foyer",
    "front",
    "furnace",
    "game",
    "garage",
    "garden",
    "gathering",
    "great",
    "greenhouse",
    "ground",
    "guest",
    "half",
    "hall",
    "hobby",
    "house",
    "in-law",
    "kitchen",
    "landing",
    "laundry",
    "lean-to",
    "left",
    "level",
    "library",
    "light",
    "living",
    "lobby",
    "loft",
    "low",
    "lower",
    "main",
    "master",
    "mechanical",
    "media",
    "middle",
    "morning",
    "mud",
    "mudroom",
    "music",
    "new",
    "nook",
    "north",
    "office",
    "old",
    "open",
    "pantry",
    "patio",
    "play",
    "pool",
    "porch",
    "powder",
    "primary",
    "rear",
    "rec",
    "right",
    "room",
    "rooms",
    "screen",
    "screened",
    "second",
    "sewing",
    "shed",
    "side",
    "single",
    "sitting",
    "sleeping",
    "small",
    "south",
    "space",
    "split",
    "stair",
    "stairs",
    "stairwell",
    "step",
    "steps",
    "stoop",
    "storage",
    "store",
    "story",
    "studio",
    "suite",
    "summer",
    "sun",
    "sunroom",
    "terrace",
    "theater",
    "third",
    "three-season",
    "tool",
    "two-car",
    "unfinished",
    "up",
    "upper",
    "upstairs",
    "utility",
    "vestibule",
    "well",
    "west",
    "wine",
    "wing",
    "wood",
    "work",
    "workshop",
];

fn is_common(word: &str) -> bool {
    COMMON_WORDS.binary_search(&word.to_lowercase().as_str()).is_ok()
}

/// A typed name as it reads inside a sentence, without an article: `covered porch`, `Florida room`.
pub(crate) fn in_text(name: &str) -> String {
    if name.split_whitespace().all(is_common) { name.to_lowercase() } else { name.to_owned() }
}

/// A typed name with its article: `the covered porch`, `the Florida room`. A name that is not a common noun gets
/// none: `Unit 2`.
pub(crate) fn the_named(name: &str) -> String {
    let mut all = name.split_whitespace();
    let owner_or_article = all.next().is_some_and(|first| {
        first.ends_with("'s") || first.ends_with('\u{2019}') || first.eq_ignore_ascii_case("the")
    });
    let is_noun = name.split_whitespace().next_back().is_some_and(is_common);
    let shown = in_text(name);
    if is_noun && !owner_or_article { format!("the {shown}") } else { shown }
}

/// A typed name inside a sentence, in quotes unless it is a common noun: `covered porch`, `"Former garage, now den"`.
pub(crate) fn quoted_in_text(name: &str) -> String {
    if name.split_whitespace().all(is_common) { name.to_lowercase() } else { format!("\"{name}\"") }
}

/// A typed name inside a sentence: a common noun with its article, any other name in quotes: `the covered porch`,
/// `"Unit 2"`.
pub(crate) fn the_quoted(name: &str) -> String {
    if name.split_whitespace().all(is_common) { the_named(name) } else { quoted_in_text(name) }
}

/// Several names, each with its article, joined by "and".
pub(crate) fn all_named<S: AsRef<str>>(names: &[S]) -> String {
    all_of(&names.iter().map(|name| the_named(name.as_ref())).collect::<Vec<String>>())
}

/// Several names, each with its article, joined by "or".
pub(crate) fn any_named<S: AsRef<str>>(names: &[S]) -> String {
    let named: Vec<String> = names.iter().map(|name| the_named(name.as_ref())).collect();
    one_of(&named.iter().map(String::as_str).collect::<Vec<&str>>())
}

/// The words for several sides of one space: `side 3`, `sides 1 and 3`.
pub(crate) fn sides(numbers: &[usize]) -> String {
    let all: Vec<String> = numbers.iter().map(usize::to_string).collect();
    let noun = if numbers.len() == 1 { "side" } else { "sides" };
    format!("{noun} {}", all_of(&all))
}

/// `a, b or c`, from owned strings.
pub(crate) fn list_or(items: &[String]) -> String {
    list(items, "or")
}

fn list<S: AsRef<str>>(items: &[S], last: &str) -> String {
    match items {
        [] => String::new(),
        [only] => only.as_ref().to_owned(),
        [head @ .., tail] => {
            let head: Vec<&str> = head.iter().map(AsRef::as_ref).collect();
            format!("{} {last} {}", head.join(", "), tail.as_ref())
        }
    }
}

/// The word of `known` that was most likely meant by `typed`; `None` if none is close.
pub(crate) fn nearest<'a>(typed: &str, known: &[&'a str]) -> Option<&'a str> {
    // No known word is this long, and comparing long ones takes time.
    const LONGEST: usize = 40;
    if typed.len() > LONGEST {
        return None;
    }
    let typed = typed.to_lowercase();
    // One letter from `detached`, and the opposite of it; what a deed says is no level.
    if typed == "attached" || typed == "legal" {
        return None;
    }
    // `uncounted` is not `counted`.
    let denied = ["un", "non-", "non"].iter().find_map(|no| typed.strip_prefix(no));
    let denied = denied.map(|word| word.trim_start_matches('-'));
    if denied.is_some_and(|word| known.contains(&word)) {
        return None;
    }
    let most = match typed.chars().count() {
        0..=2 => 0,
        3..=4 => 1,
        _ => 2,
    };
    // Words whose lengths differ by more than `most` cannot be closer than that.
    let length = typed.chars().count();
    known
        .iter()
        .filter(|word| word.chars().count().abs_diff(length) <= most)
        .map(|&word| (strsim::osa_distance(&typed, word), word))
        .filter(|&(distance, word)| distance <= most && word.len() > 1)
        .min()
        .map(|(_, word)| word)
}

/// The directions from which a mistyped word is equally far, if they are two: `weast`.
pub(crate) fn between_two_ways(typed: &str) -> Option<[&'static str; 2]> {
    const WAYS: [&str; 4] = ["north", "south", "east", "west"];
    let typed = typed.to_lowercase();
    if !(4..=6).contains(&typed.len()) {
        return None;
    }
    let mut near: Vec<(usize, &str)> =
        WAYS.iter().map(|way| (strsim::osa_distance(&typed, way), *way)).collect();
    near.sort_by_key(|(distance, _)| *distance);
    match near[..] {
        [(one, first), (two, second), ..] if one == two && (1..=2).contains(&one) => {
            Some([first, second])
        }
        _ => None,
    }
}

/// A no-break space: keeps a line from being broken here, and is printed as a space.
pub(crate) const GLUE: char = '\u{a0}';

/// The text with no-break spaces inside what belongs together: `41' 10 1/2"`, `1,757 sq ft`, `136.8 sq m`, `± 4`,
/// `the attic (page 2)`.
pub(crate) fn glued(text: &str) -> String {
    let text = text.replace("± ", "±\u{a0}").replace(" %", "\u{a0}%");
    let text = text.replace(" sq ft", "\u{a0}sq\u{a0}ft").replace(" sq m", "\u{a0}sq\u{a0}m");
    let text =
        text.replace(" (page ", "\u{a0}(page\u{a0}").replace(" (pages ", "\u{a0}(pages\u{a0}");
    let characters: Vec<char> = text.chars().collect();
    let is_digit = |at: Option<&char>| at.is_some_and(char::is_ascii_digit);
    let mut out = String::with_capacity(text.len());
    for (i, &character) in characters.iter().enumerate() {
        let before = i.checked_sub(1).and_then(|i| characters.get(i));
        let after_feet = || before == Some(&'\'') && is_digit(characters.get(i + 1));
        let fraction = || characters[i + 1..].iter().find(|c| !c.is_ascii_digit()) == Some(&'/');
        let glue = character == ' ' && (after_feet() || is_digit(before) && fraction());
        out.push(if glue { GLUE } else { character });
    }
    out
}

/// The text wrapped at `columns` columns.
pub(crate) fn filled(text: &str, columns: usize) -> String {
    let options =
        textwrap::Options::new(columns).word_splitter(textwrap::WordSplitter::Custom(at_hyphens));
    textwrap::fill(&glued(text), options).replace(GLUE, " ")
}

/// Where a word may be broken: after its hyphens, but not within a date, `2026-05-02`.
fn at_hyphens(word: &str) -> Vec<usize> {
    let is_digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
    let hyphens = textwrap::WordSplitter::HyphenSplitter.split_points(word).into_iter();
    let is_in_date = |at: &usize| {
        let before = word.get(..*at).and_then(|before| before.trim_end_matches('-').chars().last());
        is_digit(before) && is_digit(word.get(*at..).and_then(|after| after.chars().next()))
    };
    hyphens.filter(|at| !is_in_date(at)).collect()
}

/// The text wrapped at `columns` columns, and nowhere between two backticks: a line that is to be typed stands
/// unbroken, even if it is longer.
pub(crate) fn filled_around_offers(text: &str, columns: usize) -> String {
    let mut inside = false;
    let whole: String = text
        .chars()
        .map(|character| {
            inside ^= character == '`';
            if inside && character == ' ' { GLUE } else { character }
        })
        .collect();
    let options = textwrap::Options::new(columns)
        .word_separator(textwrap::WordSeparator::AsciiSpace)
        .word_splitter(textwrap::WordSplitter::NoHyphenation)
        .wrap_algorithm(textwrap::WrapAlgorithm::FirstFit)
        .break_words(false);
    textwrap::fill(&whole, options).replace(GLUE, " ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn common_words_are_in_order_and_small() {
        assert!(COMMON_WORDS.is_sorted());
        assert!(COMMON_WORDS.iter().all(|word| word.to_lowercase() == *word));
    }

    #[test]
    fn common_names_take_an_article_and_small_letters_others_stay_as_typed() {
        assert_eq!(the_named("Covered porch"), "the covered porch");
        assert_eq!(the_named("Florida room"), "the Florida room");
        assert_eq!(the_named("Garage 2"), "Garage 2");
        assert_eq!(the_named("Part A"), "Part A");
        assert_eq!(the_named("Ann's room"), "Ann's room");
        assert_eq!(the_named("The old kitchen"), "The old kitchen");
        assert_eq!(in_text("Upper floor"), "upper floor");
        assert_eq!(all_named(&["Garage", "Unit 2"]), "the garage and Unit 2");
    }

    #[test]
    fn a_line_that_is_offered_is_never_broken() {
        let text = "did you mean `measured 2026-05-02 by \"J. Ruiz\"` or `measured 2026-02-05 by \"J. Ruiz\"`?";
        assert_eq!(
            filled_around_offers(text, 66),
            "did you mean `measured 2026-05-02 by \"J. Ruiz\"` or\n`measured 2026-02-05 by \"J. Ruiz\"`?"
        );
        assert_eq!(
            filled_around_offers("did you mean `east 42' 7 1/2\"`?", 12),
            "did you mean\n`east 42' 7 1/2\"`?"
        );
    }

    #[test]
    fn sides_are_counted_in_the_right_number() {
        assert_eq!(sides(&[3]), "side 3");
        assert_eq!(sides(&[1, 3]), "sides 1 and 3");
    }
}
