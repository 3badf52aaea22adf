//! Rules that rewrite numbers so that they can be read: lengths, areas, money, dates, angles.

use rust_decimal::Decimal;

use super::change::Edit;
use super::kinds;
use super::pieces::{Piece, Sort, replaced};

const FOOT_WORDS: [&str; 6] = ["ft", "feet", "foot", "f", "fts", "foots"];
const INCH_WORDS: [&str; 7] = ["in", "inch", "inches", "i", "ins", "inchs", "inche"];
const METRIC_WORDS: [&str; 5] = ["m", "meters", "metres", "meter", "metre"];
const FRACTIONS: &str = "½¼¾⅛⅜⅝⅞";

/// Rewrites the pieces from a given index on, or returns `None` if the rule does not apply.
type Rule = fn(&[Piece], usize) -> Option<Edit>;

/// The result of every rule of this file at every piece of a line.
pub(super) fn edits(pieces: &[Piece]) -> Vec<Edit> {
    let rules: [Rule; 26] = [
        letter_for_digit,
        blank_before_inch_mark,
        doubled_mark,
        number_words,
        decimal_comma,
        thousands_comma,
        comma_after_feet,
        unit_word,
        reversed_units,
        inch_mark_before_fraction,
        two_points,
        point_after_word,
        fraction_without_mark,
        missing_marks,
        dashed_feet,
        twice_feet,
        half_a_foot,
        many_inches,
        large_fraction,
        run_together_fraction,
        fraction_off_tape,
        yards,
        meters_and_centimeters,
        grouped_otherwise,
        money_short,
        date,
    ];
    (0..pieces.len()).flat_map(|at| rules.iter().filter_map(move |rule| rule(pieces, at))).collect()
}

fn number(text: &str) -> Piece {
    Piece::new(Sort::Number, text)
}

fn mark(text: &str) -> Piece {
    Piece::new(Sort::Mark, text).touching()
}

fn at(pieces: &[Piece], i: usize) -> Option<&Piece> {
    pieces.get(i)
}

fn is_feet(piece: Option<&Piece>) -> bool {
    piece.is_some_and(|piece| piece.is_mark("'’‘′´`") || piece.is_word(&FOOT_WORDS))
}

fn is_inches(piece: Option<&Piece>) -> bool {
    piece.is_some_and(|piece| piece.is_mark("\"”“″") || piece.is_word(&INCH_WORDS))
}

fn has_unit(piece: Option<&Piece>) -> bool {
    let more = ["cm", "mm", "acre", "acres", "hectare", "hectares", "sq", "sqft", "sqm", "square"];
    is_feet(piece)
        || is_inches(piece)
        || piece.is_some_and(|piece| {
            piece.is_word(&METRIC_WORDS) || piece.is_word(&more) || piece.is_mark("/°º$€£%")
        })
}

fn whole(piece: Option<&Piece>) -> Option<i64> {
    let piece = piece.filter(|piece| piece.is_number())?;
    piece.text.parse().ok()
}

fn is_number(piece: Option<&Piece>) -> bool {
    piece.is_some_and(Piece::is_number)
}

fn after_dollar(pieces: &[Piece], i: usize) -> bool {
    i > 0 && pieces[i - 1].is_mark("$€£")
}

/// `4O'`, `l2'`: replaces letters typed for digits.
fn letter_for_digit(pieces: &[Piece], i: usize) -> Option<Edit> {
    let piece = at(pieces, i)?;
    let looks_like = |c: char| match c {
        'o' | 'O' => Some('0'),
        'l' | 'I' => Some('1'),
        _ => None,
    };
    if piece.sort != Sort::Word {
        return None;
    }
    let digits: Option<String> = piece.text.chars().map(looks_like).collect();
    let digits = digits?;
    let before = i.checked_sub(1).and_then(|i| at(pieces, i));
    let joins_before = piece.touches && is_number(before);
    let after = at(pieces, i + 1).filter(|next| next.touches);
    let joins_after = after.is_some_and(|next| next.is_number() || next.is_mark("'’′\"”″"));
    if !(joins_before || joins_after && i > 0) {
        return None;
    }
    let (mut first, mut last, mut text) = (i, i + 1, digits);
    let mut touches = piece.touches;
    if joins_before && let Some(before) = before {
        text = before.text.clone() + &text;
        first = i - 1;
        touches = before.touches;
    }
    if let Some(after) = after.filter(|next| next.is_number()) {
        text += &after.text;
        last = i + 2;
    }
    let joined = Piece { touches, ..number(&text) };
    Some(Edit::conversion(
        replaced(pieces, first, last, &[joined]),
        "a letter is typed in a number: O for 0, or l for 1",
    ))
}

/// `42' 7 "`: removes the space before an inch mark, which would otherwise begin a text.
fn blank_before_inch_mark(pieces: &[Piece], i: usize) -> Option<Edit> {
    let before = i.checked_sub(1).and_then(|i| at(pieces, i))?;
    let piece = at(pieces, i)?;
    let after_number = before.is_number() || before.is_mark(FRACTIONS);
    if !after_number {
        return None;
    }
    let cause = "there is a space between a number and its inch mark";
    if piece.is_mark("\"”“″") && !piece.touches {
        return Some(Edit::new(replaced(pieces, i, i + 1, &[mark("\"")]), cause));
    }
    // If a line has two such marks, what lies between them was taken for a text.
    let inner = (piece.sort == Sort::Text).then(|| piece.text.trim_matches(['"', '“', '”']))?;
    let mut pieces_between = super::pieces::cut(inner);
    pieces_between.insert(0, mark("\""));
    pieces_between.push(mark("\""));
    Some(Edit::new(replaced(pieces, i, i + 1, &pieces_between), cause))
}

/// `42' 7""`: removes the second mark.
fn doubled_mark(pieces: &[Piece], i: usize) -> Option<Edit> {
    let (one, two) = (at(pieces, i)?, at(pieces, i + 1)?);
    let same = one.is_mark("\"”″") && two.is_mark("\"”″")
        || one.is_mark("'’′") && two.is_mark("'’′") && one.text != two.text;
    (same && two.touches).then(|| {
        Edit::new(replaced(pieces, i + 1, i + 2, &[]), "the mark after the number is typed twice")
    })
}

const UNITS: [&str; 20] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
const TENS: [&str; 10] =
    ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/// Number words as they are often misspelled.
const MISSPELLED: [(&str, &str); 22] = [
    ("fourty", "forty"),
    ("fourtey", "forty"),
    ("thrity", "thirty"),
    ("thirdy", "thirty"),
    ("thiry", "thirty"),
    ("twety", "twenty"),
    ("twenny", "twenty"),
    ("tweny", "twenty"),
    ("fivty", "fifty"),
    ("fiftey", "fifty"),
    ("sixtey", "sixty"),
    ("ninty", "ninety"),
    ("ninetey", "ninety"),
    ("eigthy", "eighty"),
    ("eigth", "eight"),
    ("twelv", "twelve"),
    ("tweleve", "twelve"),
    ("thriteen", "thirteen"),
    ("fourten", "fourteen"),
    ("forteen", "fourteen"),
    ("fiveteen", "fifteen"),
    ("ninteen", "nineteen"),
];

/// The number word that is meant by one of its common misspellings.
pub(super) fn respelled(word: &str) -> Option<&'static str> {
    MISSPELLED.iter().find(|(wrong, _)| *wrong == word).map(|(_, right)| *right)
}

/// The number that a word says, below a hundred: `nineteen`, `twenty-eight`.
pub(super) fn spoken(word: &str) -> Option<i64> {
    let value = |word: &str| {
        let unit = UNITS.iter().position(|unit| *unit == word);
        let ten = TENS.iter().position(|ten| !ten.is_empty() && *ten == word).map(|ten| ten * 10);
        unit.or(ten).and_then(|value| i64::try_from(value).ok())
    };
    let value = |word: &str| value(respelled(word).unwrap_or(word));
    match word.split_once('-') {
        Some((tens, units)) => value(tens)?.checked_add(value(units)?),
        None => value(word),
    }
}

/// Whether a word is a number as it is spoken, or begins with one: `twenty-eight`.
pub(super) fn is_spoken_number(word: &str) -> bool {
    let word = word.to_lowercase();
    let first = word.split('-').next().unwrap_or_default();
    spoken(first).is_some() || first == "hundred"
}

/// Whether a length is spoken in a text: `forty ft`, `six inches`, `thirty-nine'`.
pub(super) fn speaks_length(pieces: &[Piece]) -> bool {
    let units = ["ft", "feet", "foot", "in", "inches", "inch", "m", "meters", "metres"];
    let is_unit = |piece: &Piece| piece.is_word(&units) || piece.is_mark("'’′\"”″");
    pieces.windows(2).any(|two| is_spoken_number(&two[0].text) && is_unit(&two[1]))
}

/// `forty-two feet`, `twelve feet six inches`
fn number_words(pieces: &[Piece], i: usize) -> Option<Edit> {
    let piece = at(pieces, i).filter(|piece| piece.sort == Sort::Word)?;
    let value = |word: &str| {
        let word = word.to_lowercase();
        let unit = UNITS.iter().position(|unit| *unit == word);
        let ten = TENS.iter().position(|ten| !ten.is_empty() && *ten == word).map(|ten| ten * 10);
        unit.or(ten)
    };
    let mut last = i + 1;
    let number_of = match piece.text.split_once('-') {
        Some((tens, units)) => {
            value(tens).filter(|tens| *tens >= 20)? + value(units).filter(|unit| *unit < 10)?
        }
        None => {
            let first = value(&piece.text)?;
            let unit = at(pieces, last)
                .filter(|next| next.sort == Sort::Word)
                .and_then(|next| value(&next.text));
            match unit.filter(|unit| first >= 20 && (1..10).contains(unit)) {
                Some(unit) => {
                    last += 1;
                    first + unit
                }
                None => first,
            }
        }
    };
    let by = Piece { touches: piece.touches, ..number(&number_of.to_string()) };
    Some(Edit::conversion(replaced(pieces, i, last, &[by]), "numbers are written in digits"))
}

/// `8,64 m`: replaces the decimal comma.
fn decimal_comma(pieces: &[Piece], i: usize) -> Option<Edit> {
    let piece = at(pieces, i).filter(|piece| piece.is_number())?;
    let (whole, decimals) = piece.text.split_once(',')?;
    let is_one = !decimals.contains([',', '.']) && !whole.is_empty();
    let is_metric = at(pieces, i + 1).is_some_and(|unit| unit.is_word(&METRIC_WORDS));
    // `42,625'` would be longer than any length of a file; a round number has no three decimals.
    let is_thousands = decimals.len() == 3 && (whole.len() < 2 || decimals == "000");
    let is_feet = at(pieces, i + 1)
        .is_some_and(|unit| unit.is_mark("'’′") || unit.is_word(&["ft", "feet", "foot"]));
    let is_doubtful = decimals.len() == 3 && !is_metric && (is_thousands || !is_feet);
    if !is_one || is_doubtful || after_dollar(pieces, i) {
        return None;
    }
    // `28,4"`: feet and inches, as nobody tapes a wall in inches with a decimal comma.
    let is_inches = decimals.parse::<u32>().is_ok_and(|inches| inches < 12) && decimals.len() < 3;
    if is_inches && at(pieces, i + 1).is_some_and(|unit| unit.is_mark("\"”″")) {
        let feet = Piece { touches: piece.touches, ..number(whole) };
        let foot = Piece { touches: true, ..mark("'") };
        let by = [feet, foot, number(decimals)];
        return Some(Edit::conversion(
            replaced(pieces, i, i + 1, &by),
            "feet have their mark, and only a space goes between feet and inches",
        ));
    }
    let by = Piece { touches: piece.touches, ..number(&format!("{whole}.{decimals}")) };
    Some(Edit::conversion(replaced(pieces, i, i + 1, &[by]), "decimals take a point, not a comma"))
}

/// `1,200'`: removes the comma from a length.
fn thousands_comma(pieces: &[Piece], i: usize) -> Option<Edit> {
    let piece = at(pieces, i).filter(|piece| piece.is_number() && piece.text.contains(','))?;
    let grouped = piece.text.split(',').skip(1).all(|group| group.len() == 3);
    let next = at(pieces, i + 1);
    let is_length = next.is_none()
        || is_feet(next)
        || is_inches(next)
        || next.is_some_and(|unit| unit.is_word(&["mm", "cm"]) || unit.is_word(&METRIC_WORDS));
    if !grouped || !is_length || after_dollar(pieces, i) {
        return None;
    }
    let by = Piece { touches: piece.touches, ..number(&piece.text.replace(',', "")) };
    Some(Edit::conversion(replaced(pieces, i, i + 1, &[by]), "a length takes no thousands comma"))
}

/// `28', 4"`, `28 ft and 4 in`, `28' & 4"`
fn comma_after_feet(pieces: &[Piece], i: usize) -> Option<Edit> {
    let piece = at(pieces, i)?;
    let between = piece.is_mark(",;:&+.") || piece.is_word(&["and", "plus"]);
    let after_feet = i > 0 && is_feet(at(pieces, i - 1));
    let is_spoken = |piece: &Piece| piece.sort == Sort::Word && is_spoken_number(&piece.text);
    let next = at(pieces, i + 1);
    (between && after_feet && (is_number(next) || next.is_some_and(is_spoken))).then(|| {
        Edit::new(replaced(pieces, i, i + 1, &[]), "only a space goes between feet and inches")
    })
}

/// `7 ins`, `42f`, `12 mts`
fn unit_word(pieces: &[Piece], i: usize) -> Option<Edit> {
    let piece = at(pieces, i).filter(|piece| piece.sort == Sort::Word)?;
    let before = i.checked_sub(1).and_then(|i| at(pieces, i));
    if !(is_number(before) || before.is_some_and(|before| before.is_mark(FRACTIONS))) {
        return None;
    }
    let unit = match piece.text.to_lowercase().as_str() {
        "f" | "fts" | "foots" | "feets" | "feat" | "fet" | "fee" | "pies" | "tf" | "f't" => "ft",
        "i" | "ins" | "inchs" | "inche" | "inchess" | "inc" | "im" | "ni" => "in",
        "mt" | "mts" | "mtr" | "mtrs" | "mtres" | "metros" | "metre's" => "m",
        "cms" | "centimetre" | "centimeter" => "cm",
        "mms" | "millimetre" | "millimeter" => "mm",
        _ => return None,
    };
    let by = Piece { touches: piece.touches, ..Piece::word(unit) };
    Some(Edit::new(
        replaced(pieces, i, i + 1, &[by]),
        format!("`{}` is not a unit of length", piece.text),
    ))
}

/// `42" 7'`: swaps foot and inch marks.
fn reversed_units(pieces: &[Piece], i: usize) -> Option<Edit> {
    let fits = is_number(at(pieces, i))
        && at(pieces, i + 1).is_some_and(|piece| piece.is_mark("\"”″"))
        && whole(at(pieces, i + 2)).is_some_and(|inches| inches < 12)
        && at(pieces, i + 3).is_some_and(|piece| piece.is_mark("'’′\"”″"));
    fits.then(|| {
        let by = [at(pieces, i)?.clone(), mark("'"), at(pieces, i + 2)?.clone(), mark("\"")];
        Some(Edit::new(
            replaced(pieces, i, i + 4, &by),
            "`'` is the foot mark and `\"` the inch mark; here they look swapped",
        ))
    })?
}

/// `42 7`, `42' 7`, `42:7`, `42 7 1/2"`: adds missing marks.
fn missing_marks(pieces: &[Piece], i: usize) -> Option<Edit> {
    whole(at(pieces, i))?;
    if i > 0
        && (is_number(at(pieces, i - 1))
            || is_feet(at(pieces, i - 1))
            || pieces[i - 1].is_mark("/$€£-°"))
    {
        return None;
    }
    let mut next = i + 1;
    let has_feet = is_feet(at(pieces, next));
    if has_feet {
        next += 1;
    }
    if at(pieces, next).is_some_and(|piece| piece.is_mark(":;_,.·-–+\\") || piece.is_word(&["and"]))
    {
        next += 1;
    }
    let inches = at(pieces, next).filter(|piece| piece.is_number())?;
    let value: Decimal = inches.text.parse().ok()?;
    let tail = fraction_at(pieces, next + 1);
    if value >= Decimal::from(12) || at(pieces, next + 1).is_some_and(|piece| piece.is_mark("/")) {
        return None;
    }
    let after = next + 1 + tail;
    let end = if is_inches(at(pieces, after)) { after + 1 } else { after };
    let has_other_unit = end == after && has_unit(at(pieces, after));
    if has_other_unit || has_feet && end != after {
        return None;
    }
    let feet = at(pieces, i)?;
    let mut by = vec![feet.clone(), mark("'"), Piece { touches: false, ..inches.clone() }];
    by.extend(pieces[next + 1..after].iter().cloned());
    by.push(mark("\""));
    let cause = if has_feet {
        "the inches have no mark"
    } else {
        "the marks for feet and inches are missing"
    };
    Some(Edit::new(replaced(pieces, i, end, &by), cause))
}

/// `4"5/8`, `7" 1/2`: moves the inch mark behind the fraction.
fn inch_mark_before_fraction(pieces: &[Piece], i: usize) -> Option<Edit> {
    let fits =
        is_number(at(pieces, i)) && at(pieces, i + 1).is_some_and(|mark| mark.is_mark("\"”″"));
    let taken = fraction_at(pieces, i + 2);
    if !fits || taken == 0 {
        return None;
    }
    let end = i + 2 + taken;
    let mut by = vec![at(pieces, i)?.clone()];
    by.extend_from_slice(&pieces[i + 2..end]);
    by[1].touches = false;
    by.push(mark("\""));
    let last = if is_inches(at(pieces, end)) { end + 1 } else { end };
    Some(Edit::new(replaced(pieces, i, last, &by), "the inch mark goes after the fraction"))
}

/// `42.7.5`
fn two_points(pieces: &[Piece], i: usize) -> Option<Edit> {
    let piece = at(pieces, i).filter(|piece| piece.is_number())?;
    let [feet, inches, tenths] = piece.text.split('.').collect::<Vec<&str>>()[..] else {
        return None;
    };
    let by = [
        Piece { touches: piece.touches, ..number(feet) },
        mark("'"),
        number(&format!("{inches}.{tenths}")),
        mark("\""),
    ];
    let end =
        if is_feet(at(pieces, i + 1)) || is_inches(at(pieces, i + 1)) { i + 2 } else { i + 1 };
    Some(Edit::new(replaced(pieces, i, end, &by), "a number has at most one point"))
}

/// `N.42'`
fn point_after_word(pieces: &[Piece], i: usize) -> Option<Edit> {
    let piece = at(pieces, i).filter(|piece| piece.is_number() && piece.touches)?;
    let rest = piece.text.strip_prefix('.')?;
    let by = number(rest);
    Some(Edit::new(
        replaced(pieces, i, i + 1, &[by]),
        "a point stands between the word and the number",
    ))
}

/// `42 1/2`: reads a fraction without its mark as a fraction of an inch.
fn fraction_without_mark(pieces: &[Piece], i: usize) -> Option<Edit> {
    let taken = fraction_at(pieces, i);
    // `42ft 7 1/2` is mended as a whole.
    let is_said_above = i > 1 && pieces[i - 1].is_word(&["ft", "feet"]);
    let begins = i > 0 && !pieces[i - 1].is_mark("/⁄-") && !is_said_above;
    // `1/2 story`, `2 1/2 baths`
    let counts =
        ["story", "storey", "stories", "bath", "baths", "bathroom", "level", "acre", "acres"];
    let is_count = at(pieces, i + taken).is_some_and(|next| next.is_word(&counts));
    if taken == 0 || !begins || is_count || has_unit(at(pieces, i + taken)) {
        return None;
    }
    let mut by = pieces[i..i + taken].to_vec();
    by.push(mark("\""));
    // `28.4 1/2`: a point between feet and inches.
    let pointed = pieces[i - 1].text.split_once('.').filter(|_| pieces[i - 1].is_number());
    if let Some((feet, inches)) =
        pointed.filter(|(_, inches)| inches.parse::<u8>().is_ok_and(|inches| inches < 12))
    {
        by.splice(0..0, [number(feet), mark("'"), number(inches)]);
        let left = replaced(pieces, i - 1, i + taken, &by);
        return Some(Edit::conversion(left, "the marks for feet and inches are missing"));
    }
    Some(Edit::new(
        replaced(pieces, i, i + taken, &by),
        "a fraction is of an inch, and its mark is missing",
    ))
}

/// How many pieces the fraction that begins here has (`1/2`, `½`, `-1/2`); 0 if there is none.
fn fraction_at(pieces: &[Piece], i: usize) -> usize {
    let dash = usize::from(at(pieces, i).is_some_and(|piece| piece.is_mark("-")));
    let slash = at(pieces, i + dash + 1).is_some_and(|piece| piece.is_mark("/⁄"));
    if at(pieces, i + dash).is_some_and(|piece| piece.is_mark(FRACTIONS)) {
        dash + 1
    } else if is_number(at(pieces, i + dash)) && slash && is_number(at(pieces, i + dash + 2)) {
        dash + 3
    } else {
        0
    }
}

/// `12-6"`
fn dashed_feet(pieces: &[Piece], i: usize) -> Option<Edit> {
    let fits = whole(at(pieces, i)).is_some()
        && at(pieces, i + 1).is_some_and(|piece| piece.is_mark("-–"))
        && whole(at(pieces, i + 2)).is_some_and(|inches| inches < 12)
        && is_inches(at(pieces, i + 3));
    let fits = fits && !(i > 0 && is_feet(at(pieces, i - 1)));
    fits.then(|| {
        let inches = Piece { touches: false, ..at(pieces, i + 2)?.clone() };
        let by = [at(pieces, i)?.clone(), mark("'"), inches];
        Some(Edit::new(replaced(pieces, i, i + 3, &by), "the feet have no mark"))
    })?
}

/// `42' 7'`
fn twice_feet(pieces: &[Piece], i: usize) -> Option<Edit> {
    let fits = is_number(at(pieces, i))
        && is_feet(at(pieces, i + 1))
        && whole(at(pieces, i + 2)).is_some_and(|inches| inches < 12)
        && at(pieces, i + 3)
            .is_some_and(|piece| piece.is_mark("'’′") || piece.is_word(&FOOT_WORDS));
    fits.then(|| {
        Edit::new(
            replaced(pieces, i + 3, i + 4, &[mark("\"")]),
            "the second number has a foot mark; inches take `\"`",
        )
    })
}

/// `42 1/2'`, `42½ ft`, or `42 1/2` where the fraction of a foot is whole inches.
fn half_a_foot(pieces: &[Piece], i: usize) -> Option<Edit> {
    let feet = whole(at(pieces, i));
    let begin = i + usize::from(feet.is_some());
    let taken = fraction_at(pieces, begin);
    if taken == 0 || i > 0 && is_number(at(pieces, i - 1)) {
        return None;
    }
    let end = begin + taken;
    // A wall of this many inches is unlikely.
    let is_bare = feet.is_some_and(|feet| feet >= 12) && !has_unit(at(pieces, end));
    if !is_feet(at(pieces, end)) && !is_bare {
        return None;
    }
    let parts = &pieces[begin..end];
    let (top, bottom) = match parts.iter().rev().find(|part| part.is_mark(FRACTIONS)) {
        Some(part) => vulgar(&part.text)?,
        None => (whole(parts.get(taken - 3))?, whole(parts.last())?),
    };
    let inches = (bottom > 0 && top < bottom && (12 * top) % bottom == 0)
        .then(|| (12 * top).div_euclid(bottom))?;
    let mut by = Vec::new();
    if let Some(feet) = feet {
        by.push(Piece { touches: at(pieces, i)?.touches, ..number(&feet.to_string()) });
        by.push(mark("'"));
    }
    by.push(number(&inches.to_string()));
    by.push(mark("\""));
    Some(Edit::conversion(
        replaced(pieces, i, end + usize::from(!is_bare), &by),
        "a fraction belongs to inches, not to feet",
    ))
}

fn vulgar(fraction: &str) -> Option<(i64, i64)> {
    Some(match fraction {
        "½" => (1, 2),
        "¼" => (1, 4),
        "¾" => (3, 4),
        "⅛" => (1, 8),
        "⅜" => (3, 8),
        "⅝" => (5, 8),
        "⅞" => (7, 8),
        _ => return None,
    })
}

/// `42' 14"`
fn many_inches(pieces: &[Piece], i: usize) -> Option<Edit> {
    let feet = whole(at(pieces, i))?;
    let inches = whole(at(pieces, i + 2)).filter(|inches| (12..1_000).contains(inches))?;
    if !is_feet(at(pieces, i + 1)) || !is_inches(at(pieces, i + 3)) {
        return None;
    }
    let by = [
        Piece {
            touches: at(pieces, i)?.touches,
            ..number(&(feet + inches.div_euclid(12)).to_string())
        },
        mark("'"),
        number(&(inches % 12).to_string()),
    ];
    let edit = replaced(pieces, i, i + 3, &by);
    Some(Edit::conversion(edit, "after the feet come fewer than 12 inches"))
}

/// `5/4"`
fn large_fraction(pieces: &[Piece], i: usize) -> Option<Edit> {
    let (top, bottom) = (whole(at(pieces, i))?, whole(at(pieces, i + 2))?);
    let slash = at(pieces, i + 1).is_some_and(|piece| piece.is_mark("/"));
    let fits = slash && bottom > 0 && bottom <= 64 && top >= bottom && top < 10 * bottom;
    let before =
        i.checked_sub(1).and_then(|i| whole(at(pieces, i))).filter(|_| !after_slash(pieces, i));
    if !fits {
        return None;
    }
    let first = if before.is_some() { i - 1 } else { i };
    let inches = before.unwrap_or_default() + top.div_euclid(bottom);
    let mut by = vec![number(&inches.to_string())];
    if top % bottom != 0 {
        by.push(number(&format!("{}", top % bottom)));
        by.push(mark("/"));
        by.push(number(&bottom.to_string()).touching());
    }
    by[0].touches = at(pieces, first)?.touches;
    Some(Edit::conversion(replaced(pieces, first, i + 3, &by), "the fraction is not less than 1"))
}

fn after_slash(pieces: &[Piece], i: usize) -> bool {
    i > 0 && pieces[i - 1].is_mark("/")
}

/// `41/2"` becomes `4 1/2"`.
fn run_together_fraction(pieces: &[Piece], i: usize) -> Option<Edit> {
    let (top, bottom) = (at(pieces, i)?, whole(at(pieces, i + 2))?);
    let slash = at(pieces, i + 1).is_some_and(|piece| piece.is_mark("/"));
    let digits = top.is_number() && top.text.bytes().all(|byte| byte.is_ascii_digit());
    if !slash || !digits || !matches!(bottom, 2 | 4 | 8 | 16 | 32 | 64) {
        return None;
    }
    // The numerator gets as many digits as keep it below the denominator: `411/16` is 4 11/16.
    let split = (1..top.text.len()).find(|&at| {
        let part: i64 = top.text[at..].parse().unwrap_or(i64::MAX);
        part > 0 && part < bottom && part % 2 == 1 && !top.text[at..].starts_with('0')
    })?;
    let (inches, part) = top.text.split_at(split);
    let by = [Piece { touches: top.touches, ..number(inches) }, number(part)];
    Some(Edit::conversion(
        replaced(pieces, i, i + 1, &by),
        "a space is missing between the inches and their fraction",
    ))
}

/// `7 3/10"`, `4 1/3"`: rewritten as decimals.
fn fraction_off_tape(pieces: &[Piece], i: usize) -> Option<Edit> {
    let (top, bottom) = (whole(at(pieces, i))?, whole(at(pieces, i + 2))?);
    let slash = at(pieces, i + 1).is_some_and(|piece| piece.is_mark("/"));
    let off = slash && top > 0 && top < bottom && !matches!(bottom, 2 | 4 | 8 | 16 | 32 | 64);
    if !off || bottom > 1_000 {
        return None;
    }
    let value = (Decimal::from(top) / Decimal::from(bottom)).round_dp(4).normalize();
    // `28' 4/10`: tenths after feet are tenths of a foot.
    let feet = i.checked_sub(2).and_then(|feet| whole(at(pieces, feet)));
    let is_foot = |piece: &Piece| piece.is_mark("'’′") || piece.is_word(&["ft", "feet", "foot"]);
    if let Some(feet) = feet.filter(|_| {
        matches!(bottom, 10 | 100) && is_foot(&pieces[i - 1]) && !is_inches(at(pieces, i + 3))
    }) {
        let by = [
            Piece {
                touches: pieces[i - 2].touches,
                ..number(&(Decimal::from(feet) + value).to_string())
            },
            mark("'"),
        ];
        return Some(Edit::conversion(
            replaced(pieces, i - 2, i + 3, &by),
            "tenths of a foot are written with a point",
        ));
    }
    let dash = i > 1 && pieces[i - 1].is_mark("-");
    let whole_at = i.checked_sub(1 + usize::from(dash));
    let inches = whole_at.and_then(|i| whole(at(pieces, i))).filter(|_| !after_slash(pieces, i));
    let first = if inches.is_some() { whole_at? } else { i };
    let sum = Decimal::from(inches.unwrap_or_default()) + value;
    let by = Piece { touches: at(pieces, first)?.touches, ..number(&sum.to_string()) };
    let mut edit = replaced(pieces, first, i + 3, &[by]);
    if !is_inches(edit.get(first + 1)) {
        edit.insert(first + 1, mark("\""));
    }
    Some(Edit::conversion(edit, "a tape shows halves, quarters, eighths and so on of an inch"))
}

/// `14 yards`
fn yards(pieces: &[Piece], i: usize) -> Option<Edit> {
    let piece = at(pieces, i + 1).filter(|piece| piece.is_word(&["yd", "yds", "yard", "yards"]))?;
    let value: Decimal = at(pieces, i).filter(|piece| piece.is_number())?.text.parse().ok()?;
    let feet = value.checked_mul(Decimal::from(3))?.normalize();
    let by = [Piece { touches: at(pieces, i)?.touches, ..number(&feet.to_string()) }, mark("'")];
    let cause = format!("`{}` is not a unit here; a yard is 3 feet", piece.text);
    Some(Edit::conversion(replaced(pieces, i, i + 2, &by), cause))
}

/// `12 m 98 cm`
fn meters_and_centimeters(pieces: &[Piece], i: usize) -> Option<Edit> {
    let (meters, centimeters) = (whole(at(pieces, i))?, whole(at(pieces, i + 2))?);
    let fits = at(pieces, i + 1)?.is_word(&METRIC_WORDS) && (0..100).contains(&centimeters);
    if !fits {
        return None;
    }
    let is_cm = at(pieces, i + 3).is_some_and(|piece| piece.is_word(&["cm", "cms"]));
    // `137 m2` is an area.
    let is_area = at(pieces, i + 2)?.text == "2" && at(pieces, i + 2)?.touches && !is_cm;
    if is_area || !is_cm && has_unit(at(pieces, i + 3)) {
        return None;
    }
    let by = [
        Piece { touches: at(pieces, i)?.touches, ..number(&format!("{meters}.{centimeters:02}")) },
        Piece::word("m"),
    ];
    let end = i + 3 + usize::from(is_cm);
    Some(Edit::conversion(
        replaced(pieces, i, end, &by),
        "meters and centimeters are one number with a point",
    ))
}

/// `2.031 sq ft`, `2 031 sq ft`, `412.000`: puts commas between the thousands.
fn grouped_otherwise(pieces: &[Piece], i: usize) -> Option<Edit> {
    let piece = at(pieces, i).filter(|piece| piece.is_number())?;
    let cause = "thousands take a comma";
    if let Some((thousands, rest)) = piece.text.split_once('.')
        && rest.len() == 3
        && rest.bytes().all(|byte| byte.is_ascii_digit())
        && !thousands.is_empty()
        && thousands.len() <= 3
    {
        let by = Piece { touches: piece.touches, ..number(&format!("{thousands},{rest}")) };
        return Some(Edit::conversion(replaced(pieces, i, i + 1, &[by]), cause));
    }
    let next = at(pieces, i + 1).filter(|next| next.is_number())?;
    let is_group = |text: &str| text.len() == 3 && text.bytes().all(|byte| byte.is_ascii_digit());
    (piece.text.len() <= 3 && is_group(&next.text)).then(|| {
        let joined = format!("{},{}", piece.text, next.text);
        let by = Piece { touches: piece.touches, ..number(&joined) };
        Edit::conversion(replaced(pieces, i, i + 2, &[by]), cause)
    })
}

/// `$412k`, `1.2 million`
fn money_short(pieces: &[Piece], i: usize) -> Option<Edit> {
    let value: Decimal =
        at(pieces, i).filter(|piece| piece.is_number())?.text.replace(',', "").parse().ok()?;
    let times = match at(pieces, i + 1)?.text.to_lowercase().as_str() {
        "k" | "thousand" => 1_000,
        "m" | "mil" | "million" if after_dollar(pieces, i) => 1_000_000,
        "million" => 1_000_000,
        _ => return None,
    };
    let sum = value.checked_mul(Decimal::from(times))?.normalize();
    let sum = crate::units::decimal::thousands(rust_decimal::prelude::ToPrimitive::to_i64(&sum)?);
    let by = Piece { touches: after_dollar(pieces, i), ..number(&sum) };
    Some(Edit::conversion(
        replaced(pieces, i, i + 2, &[by]),
        "a number is written with all its digits",
    ))
}

/// `March 7, 2026`, `7 March 2026`, `3/7/26`, `2026.3.7`: rewritten as year-month-day.
fn date(pieces: &[Piece], i: usize) -> Option<Edit> {
    // Month, day and year, from the month's name or from two marks of the same kind.
    let month_of = |piece: Option<&Piece>| {
        let word = piece.filter(|piece| piece.sort == Sort::Word)?.text.to_lowercase();
        kinds::month_named(&word).map(i64::from)
    };
    let comma = |i: usize| usize::from(at(pieces, i).is_some_and(|piece| piece.is_mark(",")));
    let ending = |i: usize| {
        usize::from(at(pieces, i).is_some_and(|piece| piece.is_word(&["st", "nd", "rd", "th"])))
    };
    let (end, year, month, day);
    if let Some(named) = month_of(at(pieces, i)) {
        let dot = usize::from(at(pieces, i + 1).is_some_and(|piece| piece.is_mark(".")));
        (month, day) = (named, whole(at(pieces, i + 1 + dot))?);
        let mut next = i + 2 + dot;
        next += ending(next);
        next += comma(next);
        (year, end) = (whole(at(pieces, next))?, next + 1);
    } else if let Some(first) = whole(at(pieces, i)) {
        let mut next = i + 1;
        next += ending(next);
        if let Some(named) = month_of(at(pieces, next)) {
            next += 1 + comma(next + 1);
            (day, month, year, end) = (first, named, whole(at(pieces, next))?, next + 1);
        } else {
            let marks = "/-.";
            let fits = at(pieces, i + 1)?.is_mark(marks) && at(pieces, i + 3)?.is_mark(marks);
            let (second, third) = (whole(at(pieces, i + 2))?, whole(at(pieces, i + 4))?);
            if !fits {
                return None;
            }
            (year, month, day) =
                if first > 31 { (first, second, third) } else { (third, first, second) };
            end = i + 5;
        }
    } else {
        let dotted: Vec<i64> =
            at(pieces, i)?.text.split('.').map(str::parse).collect::<Result<_, _>>().ok()?;
        let [first, second, third] = dotted[..] else { return None };
        (year, month, day) =
            if first > 31 { (first, second, third) } else { (third, first, second) };
        end = i + 1;
    }
    let year = if year < 100 { 2_000 + year } else { year };
    let small = |number: i64| i8::try_from(number).ok();
    let date =
        jiff::civil::Date::new(i16::try_from(year).ok()?, small(month)?, small(day)?).ok()?;
    let by = Piece { touches: false, ..number(&date.to_string()) };
    Some(Edit::conversion(replaced(pieces, i, end, &[by]), "a date is written year-month-day"))
}
