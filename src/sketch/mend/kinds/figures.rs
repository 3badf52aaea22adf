//! Suggestions for whole lines with figures of records and listings, values and sales.

use super::super::pieces::Piece;
use super::measure::{area_at, area_from, date_from, money_from};
use super::{Answer, Rule, Typed, first_of, is_text, quoted, remark};

const FIGURES: [&str; 3] = ["record", "listing", "plan"];

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        mark_between_thousands,
        four_after_a_comma,
        other_units,
        size_for_an_area,
        grouped,
        not_known,
        units,
        range,
        of_a_part,
        counting,
        comparable,
        value,
    ];
    first_of(rules, typed)
}

/// `record 1,640 sq ft incl. porch "County record"`: a space that the figure counts, before its title.
fn counts_before_a_title(typed: &Typed<'_>) -> Option<Answer> {
    let (end, _) = area_at(&typed.pieces, 1)?;
    let last = typed.pieces.len() - 1;
    typed.says(end, &["incl", "including", "includes", "counting"]).then_some(())?;
    let at = end
        + 1
        + usize::from(typed.piece(end + 1)?.is_mark("."))
        + usize::from(typed.find(end + 1, &["the", "a"]).is_some());
    let kind = super::kind_word(&typed.lower(at)).filter(|_| at + 1 == last)?;
    is_text(typed.piece(last)).then(|| {
        Answer::line(
            format!(
                "{} {} counting \"{}\"",
                typed.text(0, end),
                typed.rest(last),
                super::levels::capitalized(kind)
            ),
            "what else a figure counts comes after `counting`, by its name",
        )
    })
}

/// `figure 1,215 sq ft insurer's sheet`: its name comes first.
pub(super) fn name_after_a_figure(typed: &Typed<'_>) -> Option<Answer> {
    let (end, _) = area_at(&typed.pieces, 1).filter(|_| typed.says(0, &["figure"]))?;
    let name = super::plainly(typed.rest(end));
    let is_plain = typed.pieces[end..]
        .iter()
        .all(|piece| piece.sort != super::Sort::Text && !piece.is_number());
    (!name.is_empty() && is_plain).then(|| {
        Answer::line(
            format!("figure \"{name}\" {}", typed.text(1, end)),
            "a figure of another source has its name first, then its area",
        )
    })
}

/// `record 1,700 sq ft heated plus 440 garage "County record"`, `record 1,700 sq ft living "County record"`: words between
/// an area and its title.
pub(super) fn before_a_title(typed: &Typed<'_>) -> Option<Answer> {
    const SAYS: [&str; 8] =
        ["measured", "sides", "counting", "faces", "year", "by", "recorded", "outside"];
    if !typed.says(0, &FIGURES) {
        return None;
    }
    if let Some(answer) = counts_before_a_title(typed) {
        return Some(answer);
    }
    // `record 1,640 sq ft to the studs "County record"` says its face.
    if let Some(answer) = super::published::basis(typed) {
        return Some(answer);
    }
    let (end, _) = area_at(&typed.pieces, 1)?;
    let last = typed.pieces.len() - 1;
    let between = typed.pieces.get(end..last).filter(|between| !between.is_empty())?;
    let is_plain = between.iter().all(|piece| {
        (piece.is_number() || piece.is_mark(",;()+-–") || piece.sort == super::Sort::Word)
            && !piece.is_word(&SAYS)
    });
    let has_word = between.iter().any(|piece| piece.sort == super::Sort::Word);
    // Another area may be what was meant.
    let is_only = area_from(&typed.pieces, end).is_none();
    (is_text(typed.piece(last)) && is_plain && has_word && is_only).then(|| {
        Answer::line(
            format!("{} {}  # {}", typed.text(0, end), typed.text(last, last + 1), typed.text(end, last)),
            "after the area comes its title; anything else goes into a comment at the end of the line",
        )
    })
}

/// `listing price $298,000 1,640 sq ft`: an area beside a price, which is no figure of a size.
pub(super) fn beside_a_price(typed: &Typed<'_>) -> Option<Answer> {
    let (money, after, _) = money_from(&typed.pieces, 1)?;
    let (first, end, area) = area_from(&typed.pieces, 1)?;
    let priced =
        ["price", "priced", "asking", "ask", "at", "for", "sold", "list", "is", "of", "and"];
    let rest = (1..typed.pieces.len())
        .filter(|at| !(money..after).contains(at) && !(first..end).contains(at));
    let only =
        rest.into_iter().all(|at| typed.says(at, &priced) || typed.pieces[at].is_mark(",;:-–/"));
    (typed.says(0, &["listing"]) && only).then(|| {
        Answer::line(
            format!("{} {area}  # {}", typed.lower(0), typed.text(money, after)),
            "a figure is an area, with no price; anything else goes into a comment",
        )
    })
}

/// The digits of a number with commas between thousands.
fn regrouped(digits: &str) -> String {
    let plain: String = digits.chars().filter(char::is_ascii_digit).collect();
    let mut out = String::new();
    for (at, digit) in plain.chars().enumerate() {
        if at > 0 && (plain.len() - at).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    out
}

/// `record 13,86 sq ft`, `$4,310,00`, `0,529 ha`: suggestions for commas that are not between thousands.
fn grouped(typed: &Typed<'_>) -> Option<Answer> {
    let at = (0..typed.pieces.len()).find(|&at| {
        let piece = &typed.pieces[at];
        piece.is_number()
            && piece.text.contains(',')
            && !piece.text.contains('.')
            && (piece.text.starts_with("0,")
                || piece.text.split(',').skip(1).any(|group| group.len() < 3))
    })?;
    let text = &typed.pieces[at].text;
    let with = |number: &str| {
        let piece = &typed.pieces[at];
        format!("{}{number}{}", &typed.line[..piece.at], &typed.line[piece.at + text.len()..])
    };
    let is_money = at > 0 && typed.pieces[at - 1].is_mark("$€£")
        || typed.says(0, &["value", "last", "exemption"]);
    let is_area = area_at(&typed.pieces, at).is_some();
    if is_area && text.starts_with("0,") {
        return Some(Answer::line(
            with(&text.replacen(',', ".", 1)),
            "decimals take a point, not a comma",
        ));
    }
    let is_figure =
        is_area && typed.says(0, &["record", "listing", "plan", "figure", "comparable"]);
    if !is_money && !is_figure {
        return None;
    }
    // `$412,00` may lack a digit.
    let (whole, last) = text.rsplit_once(',')?;
    if whole.split(',').next().is_some_and(|first| first.len() == 3) {
        return None;
    }
    let cause = "commas stand between thousands, a point before decimals";
    let all = with(&regrouped(text));
    let decimals = with(&format!("{}.{last}", regrouped(whole)));
    // Where meters are used, a comma is a decimal point: `95,4 sq m`.
    let piece = &typed.pieces[at];
    let after = typed.line[piece.at + text.len()..].trim_start().to_lowercase();
    let is_metric =
        ["sq m", "sqm", "m2", "m²", "ha", "square m"].iter().any(|unit| after.starts_with(unit));
    if is_area && is_metric && last.len() < 3 {
        return Some(Answer::line(decimals, "decimals take a point, not a comma"));
    }
    let small = regrouped(whole).len() < 3;
    Some(Answer::Lines(if small { vec![all] } else { vec![all, decimals] }, cause.to_owned()))
}

/// `record 1'250 sq ft`: another country's mark between thousands.
fn mark_between_thousands(typed: &Typed<'_>) -> Option<Answer> {
    let [first, mark, rest] = typed.pieces.get(1..4)? else { return None };
    let digits = |piece: &Piece, most: usize| {
        (1..=most).contains(&piece.text.len()) && piece.text.bytes().all(|b| b.is_ascii_digit())
    };
    let fits = typed.says(0, &FIGURES)
        && digits(first, 3)
        && mark.is_mark("'’′`")
        && mark.touches
        && rest.touches
        && rest.text.len() == 3
        && digits(rest, 3);
    fits.then(|| {
        let unit = if typed.piece(4).is_none() { " sq ft" } else { "" };
        let line =
            format!("{} {},{} {}{unit}", typed.lower(0), first.text, rest.text, typed.rest(4));
        Answer::line(line.trim_end().replace("  ", " "), "commas stand between thousands")
    })
}

/// `record 1,2500 sq ft`: four digits after a comma, one of them too many or the comma one too early.
fn four_after_a_comma(typed: &Typed<'_>) -> Option<Answer> {
    let number = typed.piece(1).filter(|number| number.is_number())?;
    let (whole, rest) = number.text.split_once(',')?;
    let fits = typed.says(0, &FIGURES)
        && rest.len() == 4
        && whole.len() <= 2
        && rest.bytes().all(|b| b.is_ascii_digit());
    if !fits {
        return None;
    }
    let short = rest.get(..3)?;
    Some(Answer::say(
        format!("between commas stand three digits, and after this one stand {}", rest.len()),
        format!(
            "look at the figure: write `{} {whole},{short} sq ft` if the last digit is one too many, `{} {} sq ft` if all of them are there",
            typed.lower(0),
            typed.lower(0),
            regrouped(&number.text),
        ),
    ))
}

/// `record 139 sq yd`: a square yard is 9 square feet; square inches, miles and the like are no unit of a house.
fn other_units(typed: &Typed<'_>) -> Option<Answer> {
    let is_figure = typed.says(0, &FIGURES) || typed.says(0, &["figure"]);
    let at = (1..typed.pieces.len()).find(|&at| typed.pieces[at].is_number())?;
    let squared = typed.says(at + 1, &["sq", "square", "cu", "cubic"]);
    let point = usize::from(squared && typed.piece(at + 2).is_some_and(|dot| dot.is_mark(".")));
    let unit = at + 1 + usize::from(squared) + point;
    let is_yard = typed.says(unit, &["yd", "yds", "yard", "yards", "yd2", "sqyd"]);
    let power = usize::from(
        typed
            .piece(unit + 1)
            .is_some_and(|two| two.touches && (two.text == "2" || two.is_mark("²"))),
    );
    let is_two = squared || power == 1 || typed.says(unit, &["yd2", "sqyd"]);
    let is_other = squared
        && (typed.says(unit, &["in", "inch", "inches", "cm", "mm", "mile", "miles", "mi"])
            || typed.says(at + 1, &["cu", "cubic"]));
    if !is_figure || !is_two || !is_yard && !is_other {
        return None;
    }
    if is_other {
        return Some(Answer::say(
            format!("`{}` is no unit of the area of a house", typed.text(at + 1, unit + 1)),
            format!("write the area in `sq ft` or `sq m`, as `{} 1,900 sq ft`", typed.lower(0)),
        ));
    }
    let yards: rust_decimal::Decimal = typed.pieces[at].text.replace(',', "").parse().ok()?;
    let feet = yards.checked_mul(rust_decimal::Decimal::from(9))?.round().normalize();
    let end = unit + 1 + power;
    let end = end + usize::from(typed.piece(end).is_some_and(|dot| dot.is_mark(".")));
    let line =
        format!("{} {} sq ft {}", typed.text(0, at), regrouped(&feet.to_string()), typed.rest(end));
    Some(Answer::line(line.trim_end(), "a square yard is 9 square feet"))
}

/// `plan 28'4" x 44'7"`, `record 28 x 45 1,260 sq ft`: a size is no area.
fn size_for_an_area(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &FIGURES) {
        return None;
    }
    let one = super::measure::length_at(&typed.pieces, 1)?;
    super::described::by(typed, one.end).then_some(())?;
    let two = super::measure::length_at(&typed.pieces, one.end + 1)?;
    let size = typed.text(1, two.end);
    let equals = usize::from(typed.piece(two.end).is_some_and(|mark| mark.is_mark("=")));
    let first = two.end + equals;
    if let Some((end, area)) = area_at(&typed.pieces, first) {
        let line = format!("{} {area} {}", typed.lower(0), typed.rest(end));
        return Some(Answer::line(
            format!("{}  # {size}", line.trim_end()),
            "a figure is an area; anything else goes into a comment",
        ));
    }
    let number = typed.piece(first).filter(|number| equals == 1 && number.is_number());
    if let Some(number) = number.filter(|_| first + 1 == typed.pieces.len()) {
        return Some(Answer::line(
            format!("{} {} sq ft  # {size}", typed.lower(0), number.text),
            "a figure is an area with its unit; anything else goes into a comment",
        ));
    }
    (two.end == typed.pieces.len()).then(|| {
        Answer::say(
            format!("`{}` is a published area, and `{size}` is a size", typed.lower(0)),
            format!(
                "write the area that was published, as `{} 1,900 sq ft`; if only the size was, put this line after a `#`",
                typed.lower(0)
            ),
        )
    })
}

/// `record n/a`, `listing unknown`: no figure.
fn not_known(typed: &Typed<'_>) -> Option<Answer> {
    let says = ["n", "na", "none", "unknown", "tbd", "missing", "unsure", "blank", "not"];
    let is_empty =
        typed.piece(1).is_some_and(|piece| piece.is_word(&says) || piece.is_mark("?-–—"));
    let counts = typed.pieces.iter().any(|piece| piece.is_number() || is_text(Some(piece)));
    (typed.says(0, &FIGURES) && is_empty && !counts && typed.pieces.len() <= 5).then(|| {
        let word = typed.lower(0);
        Answer::say(
            format!("`{word}` is a published area, and this line has none"),
            format!("leave the line out until you have the figure, then write `{word}` and the area with its unit, as `1,900 sq ft`"),
        )
    })
}

/// `137 qm`, `137 mq`: square meters as other languages abbreviate them.
fn units(typed: &Typed<'_>) -> Option<Answer> {
    if super::walls::is_way(typed, 0) {
        return None;
    }
    let at = (1..typed.pieces.len()).find(|&at| {
        typed.pieces[at - 1].is_number()
            && typed.says(at, &["qm", "mq", "kvm", "msq", "quadratmeter", "metros", "quadrat"])
    })?;
    let end = at + 1 + usize::from(typed.says(at + 1, &["cuadrados", "quadrados", "carrés"]));
    let line = format!("{} sq m {}", typed.text(0, at), typed.rest(end));
    Some(Answer::line(
        line.trim_end(),
        format!("`{}` is not a unit here: square meters are `sq m`", typed.lower(at)),
    ))
}

/// `listing 1,386 - 1,400 sq ft`: asks which one, since a figure is one number.
fn range(typed: &Typed<'_>) -> Option<Answer> {
    let is_between = |at: usize| {
        typed.piece(at).is_some_and(|piece| piece.is_mark("-–—/"))
            || typed.says(at, &["to", "or", "and"])
    };
    let first = (1..typed.pieces.len()).find(|&at| typed.pieces[at].is_number())?;
    if !typed.says(0, &FIGURES) {
        return None;
    }
    // `1,386 sq ft - 1,400 sq ft`
    let after = area_at(&typed.pieces, first).map_or(first + 1, |(end, _)| end);
    let (end, second) = area_at(&typed.pieces, after + 1).filter(|_| is_between(after))?;
    let unit = second.split_once(' ').map_or("sq ft", |(_, unit)| unit);
    let one = area_at(&typed.pieces, first)
        .map_or_else(|| format!("{} {unit}", typed.pieces[first].text), |(_, area)| area);
    let (head, rest) = (typed.text(0, first), typed.rest(end));
    let head = ["between", "from", "about"]
        .iter()
        .find_map(|word| head.strip_suffix(word))
        .unwrap_or(head)
        .trim();
    let line = |area: &str| format!("{head} {area} {rest}").trim_end().to_owned();
    Some(Answer::Lines(
        vec![line(&one), line(&second)],
        "a figure is one number: write the one that was published, or each on a line of its own"
            .to_owned(),
    ))
}

/// The word of a part of a house that has an area of its own on a record.
fn part(typed: &Typed<'_>, at: usize) -> bool {
    typed.says(
        at,
        &[
            "garage",
            "carport",
            "porch",
            "patio",
            "deck",
            "balcony",
            "breezeway",
            "storage",
            "shed",
            "basement",
            "attic",
            "outbuilding",
            "unfinished",
        ],
    )
}

/// `record garage 539 sq ft`, `record 1,210 sq ft, garage 539`: moves the figure of a part to the part's own line.
fn of_a_part(typed: &Typed<'_>) -> Option<Answer> {
    // `county record 2,031 sq ft, garage 506 sq ft`
    let is_county = typed.says(0, &["county", "assessor", "appraisal", "cad"])
        && typed.find(1, &["record", "card", "has", "says"]).is_some_and(|at| at <= 2);
    if !typed.says(0, &FIGURES) && !is_county || typed.line.contains('"') {
        return None;
    }
    let at = (1..typed.pieces.len()).find(|&at| part(typed, at))?;
    let numbers: Vec<usize> =
        (1..typed.pieces.len()).filter(|&at| typed.pieces[at].is_number()).collect();
    let word = typed.lower(at);
    let kind = match word.as_str() {
        "shed" => "outbuilding",
        "attic" => "unfinished",
        "basement" => "unfinished",
        kind => kind,
    };
    let unit = |at: usize| {
        area_at(&typed.pieces, at)
            .map_or_else(|| format!("{} sq ft", typed.pieces[at].text), |(_, area)| area)
    };
    let (whole, own) = match numbers[..] {
        [own] if at < own => (None, own),
        [whole, own] => (Some(whole), own),
        _ => return None,
    };
    let first = if is_county { "record".to_owned() } else { typed.lower(0) };
    let own = unit(own);
    let keep =
        whole.map_or_else(String::new, |whole| format!("this line is `{first} {}`; ", unit(whole)));
    Some(Answer::say(
        format!("`{first}` is the figure of the house; a part has its figure on its own line"),
        format!("{keep}at the end of the line that begins with `{kind}` write `recorded {own}`"),
    ))
}

/// `record 1,386 sq ft incl. garage`: states what else the figure counts; other words become a title or a comment.
fn counting(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &FIGURES) {
        return None;
    }
    let head = typed.lower(0);
    // `record sq ft 1,386`
    if typed.says(1, &["sq", "sqft", "sf", "square"])
        && typed.pieces.last().is_some_and(super::Piece::is_number)
        && typed.pieces.len() <= 4
    {
        let number = typed.pieces.last().map(|number| number.text.clone())?;
        return Some(Answer::line(
            format!("{head} {number} sq ft"),
            "the unit of an area comes after its number",
        ));
    }
    // `record 1904 including the garage`
    let counts = ["including", "incl", "includes", "inclusive", "counting", "with", "plus"];
    let bare = typed
        .piece(1)
        .filter(|number| number.is_number() && !number.text.contains('.'))
        .filter(|number| number.text.chars().filter(char::is_ascii_digit).count() >= 3)
        .filter(|_| typed.says(2, &counts))
        .map(|number| (1, 2, format!("{} sq ft", number.text)));
    let (first, end, area) = area_from(&typed.pieces, 1).or(bare)?;
    if money_from(&typed.pieces, end).is_some() {
        return Some(Answer::say(
            "a figure is an area: a sum of money has a line of its own",
            "put the sum on a line that begins with `value market`, or for a sale with `comparable`",
        ));
    }
    let rest = typed.rest(end);
    if first > 1
        && !is_text(typed.piece(1))
        && typed.pieces[1..first].iter().all(|piece| piece.sort == super::Sort::Word)
    {
        let known = [
            "about",
            "approx",
            "ca",
            "circa",
            "says",
            "is",
            "of",
            "area",
            "total",
            "approximately",
            "roughly",
            "shows",
            "size",
        ];
        let said = typed.text(1, first);
        let has_part = (end..typed.pieces.len()).any(|at| part(typed, at));
        let plain = rest.chars().all(|c| c.is_alphabetic() || c == ' ');
        if plain
            && !rest.is_empty()
            && typed.pieces[1..first].iter().all(|piece| piece.is_word(&known))
            && !has_part
            && !typed.says(end, &["measured", "sides", "counting"])
        {
            return Some(Answer::line(
                format!("{head} {area} {}", quoted(rest)),
                "what a figure is called goes after it, with a `\"` on each side",
            ));
        }
        if has_part && typed.pieces[1..first].iter().all(|piece| piece.is_word(&known)) {
            return Some(Answer::line(
                format!("{head} {area} {rest}"),
                format!("`{said}` has no meaning here"),
            ));
        }
        if !typed.says(1, &known)
            && rest.is_empty()
            && !typed.says(1, &["outline", "sketch", "card"])
        {
            return Some(Answer::line(
                format!("{head} {area} {}", quoted(said)),
                "a figure's title goes after its area, with a `\"` on each side",
            ));
        }
        return None;
    }
    if first != 1 || rest.is_empty() || rest.contains('"') {
        return None;
    }
    let mut at = end;
    while typed.piece(at).is_some_and(|piece| piece.is_mark(",;(-–+&")) {
        at += 1;
    }
    let lower = rest.to_lowercase();
    let without = lower.starts_with("w/o")
        || typed.says(
            at,
            &[
                "not",
                "excluding",
                "excl",
                "without",
                "excludes",
                "exclusive",
                "less",
                "no",
                "minus",
            ],
        );
    let with = typed.says(
        at,
        &[
            "incl",
            "including",
            "includes",
            "include",
            "inclusive",
            "with",
            "plus",
            "and",
            "counting",
            "counts",
            "w",
        ],
    );
    let named = (at..typed.pieces.len()).find(|&at| part(typed, at));
    // `garage not counted`, `garage and porch excluded`
    let last = typed.pieces.iter().rev().find(|last| !last.is_mark(").,"));
    let ends = |words: &[&str]| last.is_some_and(|last| last.is_word(words));
    let is_not = named.is_some_and(|named| typed.find(named, &["not", "isn't", "never"]).is_some());
    let counts = ["counted", "included", "counting", "there", "it"];
    let without = without || is_not && ends(&counts) || ends(&["excluded", "omitted", "extra"]);
    let with = with || !is_not && ends(&counts[..2]);
    if named.is_some() && without {
        return Some(Answer::line(
            format!("{head} {area}  # {}", remark(rest)),
            "a figure counts the living area unless it says more; anything else goes into a comment",
        ));
    }
    if let Some(named) =
        named.filter(|_| with && !typed.pieces[end..].iter().any(super::Piece::is_number))
    {
        let names: Vec<String> = (named..typed.pieces.len())
            .filter(|&at| part(typed, at))
            .map(|at| format!("\"{}\"", super::levels::capitalized(&typed.lower(at))))
            .collect();
        let name = super::levels::capitalized(&typed.lower(named));
        return Some(Answer::line(
            format!("{head} {area} counting {}", names.join(", ")),
            format!(
                "what else a figure counts comes after `counting`, by its name as it is typed below: `{name}`, or a longer one"
            ),
        ));
    }
    // `3 bd, 2 ba`: a remark with numbers.
    let numbers = typed.pieces[end..].iter().filter(|piece| piece.is_number()).count();
    let has_area =
        area_from(&typed.pieces, end).is_some() || money_from(&typed.pieces, end).is_some();
    let small = typed.pieces[end..]
        .iter()
        .filter(|piece| piece.is_number())
        .all(|piece| piece.text.len() <= 3);
    let years =
        typed.pieces[end..].iter().filter(|piece| piece.is_number()).all(super::Piece::is_year);
    let is_title = typed.pieces[end..].iter().all(|piece| {
        piece.is_number() || piece.sort == super::Sort::Word || piece.is_mark("()'’.,")
    });
    if numbers == 1
        && years
        && is_title
        && named.is_none()
        && !typed.says(end, &["measured", "sides", "counting"])
    {
        return Some(Answer::line(
            format!("{head} {area} {}", quoted(rest)),
            "what a figure is called goes after it, with a `\"` on each side",
        ));
    }
    let is_figure = |piece: &super::Piece| {
        piece.is_number()
            && !piece.is_year()
            && (piece.text.contains(',') || (3..=4).contains(&piece.text.len()))
    };
    if named.is_none()
        && area_from(&typed.pieces, end).is_none()
        && typed.pieces[end..].iter().any(is_figure)
    {
        // `record 1904 sq ft heated / 2384 total`
        let living = ["heated", "living", "finished", "conditioned", "gla"];
        let is_of_all = (end..typed.pieces.len())
            .any(|at| typed.says(at, &["total", "gross", "all", "roof", "overall"]));
        if typed.says(end, &living) && numbers == 1 && is_of_all {
            return Some(Answer::line(
                format!("{head} {area}  # {}", remark(rest)),
                "a figure is one number, and what is compared is the living area",
            ));
        }
        return Some(Answer::say(
            "a figure is one number",
            format!(
                "keep `{head} {area}`, or the other number instead, and write any other figure on a line of its own"
            ),
        ));
    }
    let other_unit =
        area_from(&typed.pieces, end).is_some() && rest.starts_with('(') && named.is_none();
    if other_unit {
        return Some(Answer::line(
            format!("{head} {area}  # {}", remark(rest)),
            "a figure is one number; anything else goes into a comment",
        ));
    }
    (numbers > 0 && small && !has_area && named.is_none()).then(|| {
        Answer::line(
            format!("{head} {area}  # {}", remark(rest)),
            "anything else goes into a comment at the end of the line",
        )
    })
}

/// `comparable 8 Larch Court, 1,925 sq ft, $398,000, 2025-08-14`, `… sold 2025-08-14 for $398,000`.
fn comparable(typed: &Typed<'_>) -> Option<Answer> {
    let begins = ["comparable", "comp", "comps", "sale"];
    if !typed.says(0, &begins) {
        // `8 Larch Court sold 8/14/25 for $398,000, 1925 sq ft`
        let all = area_from(&typed.pieces, 0).is_some()
            && money_from(&typed.pieces, 0).is_some()
            && date_from(&typed.pieces, 0).is_some();
        let fits = all && !typed.attempt.knows_first && !typed.line.contains('"');
        return fits.then(|| {
            Answer::line(
                format!("comparable {}", typed.line),
                "a sale of another house is `comparable`",
            )
        });
    }
    let Some((first, _, area)) = area_from(&typed.pieces, 1) else {
        let is_short =
            typed.says(0, &begins[..3]) && is_text(typed.piece(1)) && typed.says(2, &["sold"]);
        return is_short.then(|| {
            Answer::say(
                "a comparable has its size after its name",
                "write the size that the sale was published with, as `1,925 sq ft`, before `sold`",
            )
        });
    };
    let (money_first, _, price) = money_from(&typed.pieces, 1)?;
    let found = date_from(&typed.pieces, 1);
    if typed.find(1, &["recorded"]).is_some() {
        return None;
    }
    let Some((date_first, _, date)) = found else {
        return is_text(typed.piece(1)).then(|| {
            Answer::say("a sale has its day", format!("after the price write `on` and the day, year-month-day, as `sold {price} on 2025-08-14`, instead of any other words about when it was sold"))
        });
    };
    let sold = typed.find(1, &["sold", "for", "on"]).unwrap_or(first);
    let first = first.min(money_first).min(date_first).min(sold);
    let name =
        typed.name(1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":"))), first);
    (!name.is_empty()).then(|| {
        Answer::line(
            format!("comparable \"{name}\" {area} sold {price} on {date}"),
            "a comparable has its name, its size, then `sold` with the price and `on` with the date",
        )
    })
}

/// A sum of whole dollars: `$94,000`.
fn whole(sum: &str) -> Option<i64> {
    let digits: String = sum.chars().filter(|c| !matches!(c, '$' | ',')).collect();
    digits.parse().ok()
}

/// `value land $113,000 improvements $318,000 total $431,000`: leaves out the land, which has no place in the format.
fn value(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(
        0,
        &["value", "values", "land", "market", "total", "assessed", "improvement", "improvements"],
    ) {
        return None;
    }
    if let [_, year, dollar, sum] = &typed.pieces[..]
        && year.is_number()
        && year.text.len() == 4
        && dollar.is_mark("$")
    {
        let lines = ["market", "assessed"]
            .map(|word| format!("value {word} ${} year {}", sum.text, year.text));
        return Some(Answer::Lines(
            lines.into(),
            "a sum is `market` or `assessed`, and its year comes after `year`".to_owned(),
        ));
    }
    if typed.says(0, &["total"]) && typed.says(1, &["value"]) {
        return Some(Answer::line(
            format!("value market {}", typed.rest(2)),
            "the value of land and improvements together is `market`",
        ));
    }
    let land = typed.find(0, &["land"])?;
    let mut sums = Vec::new();
    let mut at = 0;
    while let Some((first, end, sum)) = money_from(&typed.pieces, at) {
        let word = (0..first).rev().find(|&at| typed.pieces[at].sort == super::Sort::Word)?;
        sums.push((typed.lower(word), sum));
        at = end;
    }
    let of = |words: &[&str]| {
        sums.iter().find(|(word, _)| words.contains(&word.as_str())).map(|(_, sum)| sum.clone())
    };
    let (lands, improvement) = (
        of(&["land"])?,
        of(&["improvement", "improvements", "building", "buildings", "structure"]),
    );
    let market = of(&["total", "market", "all"]);
    let assessed = of(&["assessed"]);
    // `value land $94,000 improvement $318,000`: both together.
    if let (Some(improvement), None, 2) = (&improvement, &market, sums.len())
        && assessed.is_none()
        && let (Some(land_sum), Some(own)) = (whole(&lands), whole(improvement))
        && let Some(both) = land_sum.checked_add(own)
    {
        let both = crate::units::decimal::thousands(both);
        return Some(Answer::line(
            format!("value market ${both} improvement {improvement}  # land {lands}"),
            "the value of the land has no word of its own: `market` is of land and improvements together",
        ));
    }
    let known = [&Some(lands.clone()), &improvement, &market, &assessed]
        .iter()
        .filter(|sum| sum.is_some())
        .count();
    if known == 1 && sums.len() == 1 && typed.says(0, &["value", "land"]) {
        return Some(Answer::line(
            format!("# {}", typed.line),
            "a sides file has no place for the value of the land alone; a comment begins with `#`",
        ));
    }
    if known != sums.len() || known < 2 || land > typed.pieces.len() {
        return None;
    }
    let mut line = "value".to_owned();
    for (word, sum) in [("market", market), ("assessed", assessed), ("improvement", improvement)] {
        if let Some(sum) = sum {
            line += &format!(" {word} {sum}");
        }
    }
    let year = typed
        .find(1, &["year"])
        .and_then(|year| typed.piece(year + 1))
        .map(|year| format!(" year {}", year.text));
    line += &year.unwrap_or_default();
    line += &format!("  # land {lands}");
    Some(Answer::line(
        line,
        "the value of the land has no word of its own: `market` is of land and improvements together",
    ))
}
