//! Sums and rates: a tax rate in percent, a price, a value whose word comes after it.

use super::measure::money_from;
use super::topics::comment;
use super::{Answer, Typed};

/// `rate 2.14%`: the tax rate.
pub(super) fn rate_alone(typed: &Typed<'_>) -> Option<Answer> {
    let number = 1 + usize::from(typed.piece(1).is_some_and(|mark| mark.is_mark(":=$")));
    let at = usize::from(typed.says(0, &["tax"]));
    let number = number + at;
    let rate = typed.piece(number).filter(|piece| piece.is_number())?;
    let percent = typed.piece(number + 1).is_some_and(|mark| mark.is_mark("%"))
        || typed.says(number + 1, &["percent", "pct"]);
    let value: rust_decimal::Decimal = rate.text.parse().ok()?;
    let fits = typed.says(at, &["rate", "taxrate"]) && number + 2 == typed.pieces.len();
    (fits && percent && value < rust_decimal::Decimal::from(20)).then(|| {
        Answer::line(
            format!("tax rate {} per $100", rate.text),
            "a percentage is so many dollars per $100",
        )
    })
}

/// `Listing price $431,000`, `taxes $8,816`, `land value $113,000`: sums that have no place in the file.
pub(super) fn sums(typed: &Typed<'_>) -> Option<Answer> {
    let begins = [
        "listing",
        "asking",
        "list",
        "price",
        "taxes",
        "tax",
        "land",
        "sold",
        "bought",
        "paid",
        "mortgage",
        "hoa",
        "rent",
        "insurance",
        "annual",
        "yearly",
        "purchase",
        "purchased",
        "sale",
        "estimate",
    ];
    let about = [
        "price",
        "taxes",
        "tax",
        "bill",
        "value",
        "paid",
        "cost",
        "per",
        "year",
        "sold",
        "bought",
        "purchased",
        "rent",
        "hoa",
        "mortgage",
        "estimate",
    ];
    let has_money = money_from(&typed.pieces, 0).is_some();
    let other = typed.find(
        0,
        &["rate", "exemption", "market", "assessed", "appraised", "comparable", "taxable"],
    );
    let says = typed.find(0, &about).is_some();
    let is_value = typed.says(0, &["tax"]) && typed.says(1, &["value", "year", "appraised"]);
    (typed.says(0, &begins)
        && has_money
        && says
        && !is_value
        && other.is_none()
        && !typed.line.contains('"')
        && super::measure::area_from(&typed.pieces, 0).is_none())
    .then(|| comment(typed, "a sides file has no place for this sum; a comment begins with `#`"))
}

/// `value $412,000 market`, `tax value 412k`: the word comes before the sum.
pub(super) fn market_value(typed: &Typed<'_>) -> Option<Answer> {
    let (first, end, sum) = money_from(&typed.pieces, 0)?;
    if typed.says(0, &["value"]) && first == 1 && end + 1 == typed.pieces.len() {
        let word = match typed.lower(end).as_str() {
            "market" | "appraised" => "market",
            "assessed" | "taxable" => "assessed",
            _ => return None,
        };
        return Some(Answer::line(
            format!("value {word} {sum}"),
            "what the value is comes before the sum",
        ));
    }
    let is_tax = typed.says(0, &["tax", "taxable", "taxed"])
        && typed.says(1, &["value"])
        && end == typed.pieces.len();
    is_tax.then(|| {
        Answer::Lines(
            vec![format!("value assessed {sum}"), format!("value market {sum}")],
            "the value for the tax is `value assessed` or, if nothing is taken off, `value market`"
                .to_owned(),
        )
    })
}
