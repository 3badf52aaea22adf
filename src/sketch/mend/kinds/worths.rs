//! Lines about what a house is worth, put together from their parts in any order: sales, rates, notices, values.

use super::super::pieces::{Piece, Sort};
use super::measure::{area_from, date_at, money_from};
use super::{Answer, Rule, Typed, first_of, is_text, plainly, quoted};
use crate::units::decimal::thousands;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[rate, notice, taxes_of_last_year, last_year, values, homestead];
    first_of(rules, typed)
}

/// A sum of money and what it is.
struct Sum {
    first: usize,
    end: usize,
    text: String,
    is_asked: bool,
    is_paid: bool,
    is_per_foot: bool,
}

/// Words for a price that was asked, and for one that was paid.
const ASKED: [&str; 12] = [
    "list", "listed", "asking", "asked", "ask", "lp", "olp", "original", "orig", "offered",
    "priced", "reduced",
];
const PAID: [&str; 11] =
    ["sold", "closed", "close", "closing", "got", "paid", "sp", "sale", "final", "went", "settled"];

fn sums(typed: &Typed<'_>) -> Vec<Sum> {
    let mut all: Vec<Sum> = Vec::new();
    let mut from = 0;
    while let Some((first, end, text)) = money_from(&typed.pieces, from) {
        let before = from..first;
        let last = |words: &[&str]| before.clone().rev().find(|&at| typed.says(at, words));
        let (asked, paid) = (last(&ASKED), last(&PAID));
        let slash = typed.piece(end).is_some_and(|slash| slash.is_mark("/"));
        let per = slash || typed.says(end, &["per", "a"]);
        let unit = typed
            .says(end + 1, &["sf", "sq", "sqft", "ft", "foot", "square", "psf", "sqm", "m", "m2"]);
        all.push(Sum {
            first,
            end,
            text,
            is_asked: asked > paid,
            is_paid: paid > asked,
            is_per_foot: per && unit || typed.says(end, &["psf", "ppsf"]),
        });
        from = end;
    }
    all
}

/// `comparable "…" 1,502 sq ft list $319,900 sold $312,500 on 2025-10-03`, `comparable "…" 1,502 sq ft $208/sf on …`.
pub(super) fn sale(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["comparable", "comp", "sale", "sold", "comps"]) {
        return None;
    }
    let (area_first, area_end, area) = area_from(&typed.pieces, 1)?;
    let sums = sums(typed);
    let paid: Vec<&Sum> = sums.iter().filter(|sum| !sum.is_per_foot && !sum.is_asked).collect();
    let head = || {
        let name = typed.name(1, area_first);
        format!("comparable {} {area}", quoted(name.trim_matches([',', ' ', ':', '-'])))
    };
    let day = (area_end..typed.pieces.len())
        .find_map(|at| date_at(&typed.pieces, at).map(|(end, date)| (at, end, date)));
    if let [.., per] = &sums[..]
        && paid.is_empty()
        && per.is_per_foot
    {
        let each: rust_decimal::Decimal = per.text.replace(['$', ','], "").parse().ok()?;
        let size: rust_decimal::Decimal = area
            .split(' ')
            .next()?
            .replace(',', "")
            .parse()
            .ok()
            .filter(|_| area.contains("sq ft"))?;
        let all: i64 = each.checked_mul(size)?.round().to_string().parse().ok()?;
        let on = day.map_or_else(String::new, |(_, _, date)| format!(", then `on {date}`"));
        return Some(Answer::say(
            format!("{} is the price of a square foot, not of the house", per.text),
            format!(
                "write `{} sold`, the whole price that was paid{on}; {} times {} is about ${}",
                head(),
                area,
                per.text,
                thousands(all)
            ),
        ));
    }
    let is_list_only = !sums.is_empty() && sums.iter().all(|sum| sum.is_asked);
    if is_list_only {
        return Some(Answer::say(
            format!("{} was asked, and a comparable has the price that was paid", sums[0].text),
            format!(
                "write `{} sold`, the price that was paid, `on` and the day; without a sale leave the line out",
                head()
            ),
        ));
    }
    if sums.len() < 2 || sums.iter().all(|sum| !sum.is_asked && !sum.is_per_foot) {
        return None;
    }
    let price = match &paid[..] {
        [one] => *one,
        several => *several.iter().find(|sum| sum.is_paid)?,
    };
    let (day_first, day_end, date) = day?;
    // Everything that is neither price nor day is kept in the comment.
    let mut said = String::new();
    let mut at = area_end;
    while at < typed.pieces.len() {
        if at == price.first {
            at = price.end;
        } else if at == day_first {
            at = day_end;
        } else {
            let piece = &typed.pieces[at];
            let is_own = piece.is_word(&["sold", "on", "for", "at", "closed", "got", "paid"]);
            if !is_own {
                if !piece.touches && !said.is_empty() {
                    said.push(' ');
                }
                said.push_str(&piece.text);
            }
            at += 1;
        }
    }
    let said = plainly(&said);
    let comment = if said.is_empty() { String::new() } else { format!("  # {said}") };
    Some(Answer::line(
        format!("{} sold {} on {date}{comment}", head(), price.text),
        "a comparable has the price that was paid, after `sold`; a price that was asked is a comment",
    ))
}

/// `tax rate 9.8 mills school`, `tax rate $0.98/100 ISD`, `school rate 0.98 per hundred`.
fn rate(typed: &Typed<'_>) -> Option<Answer> {
    let word = match typed.find(0, &["rate", "millage"]).filter(|at| *at < 4) {
        Some(word) => word,
        None => return rate_by_its_unit(typed),
    };
    let known = ["tax", "rate", "millage", "total", "is", "the", "of", "for", "our", "combined"];
    if !typed.says(0, &known)
        && (!typed.says(word, &["rate", "millage"]) || typed.attempt.space.is_some())
    {
        return None;
    }
    let mut at = word + 1;
    while typed.says(at, &["is", "of", "rate"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark("$:=,"))
    {
        at += 1;
    }
    let number =
        typed.piece(at).filter(|number| number.is_number() && !number.text.contains(','))?;
    at += 1;
    let next = at
        + usize::from(
            typed.piece(at).is_some_and(|mark| mark.is_mark("/"))
                || typed.says(at, &["per", "a", "on"]),
        );
    let mut to = next;
    to += usize::from(next > at && typed.says(to, &["each", "every"]));
    to += usize::from(next > at && typed.piece(to).is_some_and(|mark| mark.is_mark("$")));
    // `98 cents per $100`
    let in_cents = typed.says(at, &["cents", "cent", "¢"]) && typed.says(at + 1, &["per"]);
    let dollar = usize::from(typed.piece(at + 2).is_some_and(|mark| mark.is_mark("$")));
    if in_cents && typed.piece(at + 2 + dollar).is_some_and(|sum| sum.text == "100") {
        let cents: rust_decimal::Decimal = number.text.parse().ok()?;
        let dollars = cents.checked_div(rust_decimal::Decimal::ONE_HUNDRED)?.normalize();
        let name = super::remark(typed.rest(at + 3 + dollar));
        let name = if name.is_empty() { name } else { format!(" {}", quoted(&name)) };
        return Some(Answer::line(
            format!("tax rate {dollars} per $100{name}"),
            "a tax rate is in dollars: 100 cents are one",
        ));
    }
    let per = match typed.lower(to).as_str() {
        "100" | "hundred" if next > at => 100,
        "1,000" | "1000" | "thousand" if next > at => 1_000,
        "mills" | "mill" | "mil" | "mils" => 1_000,
        "%" | "percent" | "pct" => 100,
        _ => return None,
    };
    let mut end = to + 1;
    let is_mills = typed.says(to, &["mills", "mill", "mil", "mils"]);
    if is_mills
        && (typed.says(end, &["per"]) || typed.piece(end).is_some_and(|mark| mark.is_mark("/")))
    {
        let dollar = usize::from(typed.piece(end + 1).is_some_and(|mark| mark.is_mark("$")));
        end += 2 + dollar;
    }
    end += usize::from(typed.says(end, &["dollars", "of"]));
    let sum = if per == 100 { "$100" } else { "$1,000" };
    let named = |piece: &&Piece| {
        piece.sort == Sort::Word && !piece.is_word(&known) && !piece.is_word(&["value", "assessed"])
            || is_text(Some(piece))
    };
    let rest = typed.pieces.get(end..)?;
    if rest.iter().any(|piece| piece.is_number() || piece.is_mark("$%+=")) {
        return None;
    }
    let words = |pieces: &[Piece]| -> Vec<String> {
        pieces
            .iter()
            .filter(named)
            .map(|piece| piece.text.trim_matches(['"', '“', '”']).to_owned())
            .collect()
    };
    let said = [words(typed.pieces.get(..word)?), words(rest)].concat();
    let name =
        if said.is_empty() { String::new() } else { format!(" {}", quoted(&said.join(" "))) };
    let line = format!("tax rate {} per {sum}{name}", number.text);
    Some(Answer::line(
        line,
        "a tax rate is `tax rate`, the rate, `per $100` or `per $1,000`, and its name with a `\"` on each side; a mill is a dollar per $1,000",
    ))
}

/// `ISD 0.98 per $100`: a tax rate by the sum that it is of.
fn rate_by_its_unit(typed: &Typed<'_>) -> Option<Answer> {
    let per = typed.find(1, &["per"])?;
    let number = per.checked_sub(1)?;
    let digits =
        typed.piece(number).filter(|piece| piece.is_number() && !piece.text.contains(','))?;
    let sum = typed
        .piece(per + 2)
        .filter(|_| typed.piece(per + 1).is_some_and(|mark| mark.is_mark("$")))?;
    let words = typed.pieces[..number]
        .iter()
        .all(|piece| piece.sort == Sort::Word || piece.is_mark("$:=-"));
    let known = ["100", "1,000", "1000"].contains(&sum.text.as_str());
    let name = plainly(typed.text(0, number)).trim_matches(['$', ':', '=', '-', ' ']).to_owned();
    let ends = per + 3 == typed.pieces.len() && !name.is_empty() && !typed.attempt.knows_first;
    (words && known && ends).then(|| {
        Answer::line(
            format!("tax rate {} per ${} {}", digits.text, sum.text, quoted(&name)),
            "what a rate is begins with `tax rate`, and its name goes last, with a `\"` on each side",
        )
    })
}

/// `notice dated 4/17/26, received 4/21`: the day on which it was delivered.
fn notice(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["notice", "notices"])
        || typed.find(1, &["notice"]).is_some_and(|at| at < 5)
            && typed.says(0, &["got", "received", "the", "appraisal", "our", "value", "tax", "my"]);
    if !begins || typed.pieces.iter().any(|piece| piece.is_mark("$\"")) {
        return None;
    }
    let mut days: Vec<(usize, usize, String)> = Vec::new();
    let mut at = 1;
    while at < typed.pieces.len() {
        let year = days.first().map_or("", |(_, _, day)| day.get(..4).unwrap_or_default());
        if let Some((end, day)) = date_at(&typed.pieces, at).or_else(|| day_of(typed, at, year)) {
            days.push((at, end, day));
            at = end;
        } else {
            at += 1;
        }
    }
    let got = ["received", "delivered", "got", "arrived", "came", "rec'd", "recd", "rcvd", "hand"];
    let sent = ["dated", "mailed", "postmarked", "sent", "issued", "printed", "date"];
    let said = |first: usize, words: &[&str]| {
        (0..first)
            .rev()
            .take_while(|&at| !typed.pieces[at].is_number())
            .any(|at| typed.says(at, words))
    };
    let chosen = match &days[..] {
        [one] => one,
        [_, _] => {
            let arrived = days.iter().find(|(first, ..)| said(*first, &got));
            let other = days.iter().find(|(first, ..)| !said(*first, &sent));
            let other = other.filter(|_| days.iter().any(|(first, ..)| said(*first, &sent)));
            arrived.or(other)?
        }
        _ => return None,
    };
    let (first, end, day) = chosen;
    let before = typed.text(usize::from(typed.says(0, &["notice"])), *first);
    let parts: Vec<String> = [before, typed.rest(*end)]
        .iter()
        .map(|part| plainly(part).trim_matches([',', ' ', ';', ':', '.', '(', ')']).to_owned())
        .filter(|part| {
            !part.is_empty()
                && !["received", "delivered", "on", "of", "is", "dated"]
                    .contains(&part.to_lowercase().as_str())
        })
        .collect();
    let mut said = parts.join(", ");
    for word in [", received", ", delivered", ", got", ", arrived", ", came"] {
        if days.len() == 2 {
            said = said.trim_end_matches(word).to_owned();
        }
    }
    let comment = if said.is_empty() { String::new() } else { format!("  # {said}") };
    Some(Answer::line(
        format!("notice {day}{comment}"),
        "a notice has one day, the day on which it was delivered, as year-month-day",
    ))
}

/// `4/21`, `Apr 21` in the year of another date.
fn day_of(typed: &Typed<'_>, at: usize, year: &str) -> Option<(usize, String)> {
    let is_day = |piece: &Piece| piece.is_number() && piece.text.len() <= 2;
    if typed.piece(at)?.sort == Sort::Word
        && !year.is_empty()
        && typed.piece(at + 1).is_some_and(is_day)
    {
        let whole = super::cut(&format!("{} {year}", typed.text(at, at + 2)));
        let (_, date) = date_at(&whole, 0).filter(|(end, _)| *end == whole.len())?;
        return Some((at + 2, date));
    }
    let number =
        |at: usize| typed.piece(at).filter(|number| number.is_number())?.text.parse::<i8>().ok();
    let slash = typed.piece(at + 1).is_some_and(|mark| mark.is_mark("/-"));
    let year: i16 = year.parse().ok().filter(|_| slash)?;
    let date = jiff::civil::Date::new(year, number(at)?, number(at + 2)?).ok()?;
    Some((at + 3, date.to_string()))
}

/// A sum of at least four digits that begins at this piece, with or without its sign, and the index after it.
pub(super) fn sum_at(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    if let Some((first, end, text)) =
        money_from(&typed.pieces, at).filter(|(first, ..)| *first == at)
    {
        return (first == at).then_some((text, end));
    }
    let number = typed.piece(at).filter(|number| number.is_number())?;
    let digits: String = number.text.chars().filter(char::is_ascii_digit).collect();
    let long = digits.len() >= 5 || number.text.contains(',') && digits.len() >= 4;
    (long && !number.text.contains('.')).then(|| (format!("${}", number.text), at + 1))
}

/// `last year's taxes $5,778`, `last year paid $5,778`: a tax, of which no value can be made.
fn taxes_of_last_year(typed: &Typed<'_>) -> Option<Answer> {
    let is_before = typed.says(0, &["prior", "previous", "last", "preceding"])
        && typed.says(1, &["yr", "year", "year's", "years", "taxes", "tax"]);
    let is_tax = typed.find(1, &["taxes", "paid", "bill"]).is_some()
        && typed.find(1, &["assessed", "appraised", "assessment", "value", "av"]).is_none();
    (is_before && is_tax).then(|| {
        Answer::say(
            "a tax that was paid has no line: what limits this year's value is the value that was taxed last year",
            "if the notice has that value, write `last year assessed` and the sum; put the tax itself after a `#`",
        )
    })
}

/// `prior yr assessed value 280,000`, `last year appraised $280,000 (capped 10%)`.
fn last_year(typed: &Typed<'_>) -> Option<Answer> {
    let prior = ["prior", "previous", "last", "preceding", "former", "py"];
    let years = ["yr", "year", "year's", "years", "yrs", "yr's", "tax"];
    // `assessed last year at 280,000`
    let first = usize::from(typed.says(0, &["assessed", "appraised", "valued"]));
    let begins =
        typed.says(first, &prior) && (typed.says(first + 1, &years) || typed.says(0, &["py"]));
    let values = [
        "assessed",
        "av",
        "appraised",
        "assessment",
        "value",
        "appraisal",
        "taxable",
        "valuation",
        "was",
    ];
    let is_value = first > 0 || typed.find(1, &values).is_some();
    if !begins || !is_value || typed.find(1, &["market", "mv"]).is_some() {
        return None;
    }
    let at = (1..typed.pieces.len()).find(|&at| sum_at(typed, at).is_some())?;
    let (sum, end) = sum_at(typed, at)?;
    let only = (1..at).all(|at| {
        typed.says(at, &values)
            || typed.says(at, &prior)
            || typed.says(at, &years)
            || typed.says(at, &["the", "of", "for", "at", "is", "county", "home", "house"])
            || typed.pieces[at].is_mark(":=-–,.")
    });
    let rest = super::remark(typed.rest(end));
    let more = (end..typed.pieces.len()).any(|at| sum_at(typed, at).is_some());
    let comment = if rest.is_empty() { String::new() } else { format!("  # {rest}") };
    (only && !more).then(|| {
        Answer::line(
            format!("last year assessed {sum}{comment}"),
            "the value that was taxed in the year before is `last year assessed`",
        )
    })
}

/// `AV 298,000 / MV 331,000`, `market 331,000; assessed 298,000`, `value market 250,000 imp 180,000 land 70,000`: the
/// values of the record by their short names; the land's has no word of its own and goes to a comment.
fn values(typed: &Typed<'_>) -> Option<Answer> {
    let word = |at: usize| {
        Some(match typed.lower(at).as_str() {
            "av" | "assessed" | "assd" | "asd" | "assmt" | "assessment" | "taxable" => "assessed",
            "mv" | "market" | "mkt" | "fmv" | "rmv" | "jmv" => "market",
            "imp" | "impr" | "imps" | "improvement" | "improvements" | "bldg" | "building"
            | "house" | "structure" | "dwelling" => "improvement",
            "land" => "land",
            "total" => "total",
            _ => return None,
        })
    };
    let mut parts: Vec<(&str, String)> = Vec::new();
    let mut year = None;
    let mut capped = "";
    let mut open: Option<&str> = None;
    let mut at = 0;
    while at < typed.pieces.len() {
        if let Some((sum, end)) = super::card_lines::sum_at(typed, at) {
            parts.push((open.take()?, sum));
            at = end;
            continue;
        }
        if let Some(named) = word(at) {
            match open {
                // `total market`, `land total`: the other word says what it is.
                Some("total") => open = Some(named),
                Some(_) if named == "total" => {}
                Some(_) => return None,
                None => open = Some(named),
            }
        } else if typed.pieces[at].is_year() {
            year = Some(typed.pieces[at].text.clone());
        } else if typed.says(at, &["capped", "cap"]) {
            capped = "capped";
        } else if !typed.says(
            at,
            &["value", "values", "val", "the", "is", "of", "for", "and", "year", "ty", "county"],
        ) && !typed.pieces[at].is_mark("/,;:|=-–&+.()")
        {
            return None;
        }
        at += 1;
    }
    if !parts.iter().any(|(part, _)| *part == "market") {
        for (part, _) in &mut parts {
            if *part == "total" {
                *part = "market";
            }
        }
    }
    let order = ["market", "assessed", "improvement", "land"];
    let is_first = word(0).is_some_and(|_| !typed.says(0, &["improvement", "building", "taxable"]))
        || typed.says(0, &["value", "values"])
        || year.is_some() && typed.pieces[0].is_number();
    let twice = order.iter().any(|own| parts.iter().filter(|(part, _)| part == own).count() > 1);
    let is_known = parts.iter().all(|(part, _)| order.contains(part));
    let lands = parts.iter().position(|(part, _)| *part == "land").map(|land| parts.remove(land).1);
    if parts.is_empty() || open.is_some() || twice || !is_first || !is_known {
        return None;
    }
    // A year before the value could be this year or the last one.
    if year.is_some()
        && typed.pieces[0].is_number()
        && !parts.iter().any(|(part, _)| *part == "market")
    {
        return None;
    }
    parts.sort_by_key(|(part, _)| order.iter().position(|own| own == part));
    let said: Vec<String> = parts.iter().map(|(part, sum)| format!("{part} {sum}")).collect();
    let year = year.map_or_else(String::new, |year| format!(" year {year}"));
    let line = format!("value {}{year}", said.join(" "));
    let line = if capped.is_empty() { line } else { format!("{line}  # {capped}") };
    let joint = if capped.is_empty() { "  #" } else { "," };
    Some(match lands {
        Some(lands) => Answer::line(
            format!("{line}{joint} land {lands}"),
            "the value of the land has no word of its own: `market` is of land and improvements together",
        ),
        None => Answer::line(
            line,
            "the values of a record begin with `value`; what each one is comes before its sum",
        ),
    })
}

/// `HS exemption filed 2021`, `homestead since about 2021`: the first year of a homestead.
fn homestead(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["hs", "homestead", "hmstd", "hstd", "homesteaded"])
        || typed.says(0, &["h"]) && typed.says(2, &["s"]);
    let mut years = typed.pieces.iter().filter(|piece| piece.is_year());
    let one = years.next().filter(|_| begins && years.next().is_none())?;
    let filler = [
        "hs",
        "homestead",
        "hmstd",
        "hstd",
        "homesteaded",
        "exemption",
        "exempt",
        "filed",
        "since",
        "from",
        "in",
        "granted",
        "has",
        "had",
        "been",
        "claimed",
        "began",
        "begun",
        "starting",
        "first",
        "year",
        "s",
        "h",
        "applied",
        "for",
        "the",
        "got",
        "yes",
        "is",
        "on",
        "file",
        "approved",
        "active",
        "about",
    ];
    let only = typed
        .pieces
        .iter()
        .all(|piece| piece.is_year() || piece.is_word(&filler) || piece.is_mark(":=,-–./()"));
    only.then(|| {
        Answer::line(
            format!("homestead since {}", one.text),
            "a homestead has the first year of its exemption; the sum of an exemption is a line of its own, `exemption`",
        )
    })
}
