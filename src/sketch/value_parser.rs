//! Parses statements about values, taxes, dates and sales.

use jiff::civil::Date;
use rust_decimal::Decimal;

use crate::diagnostic::{Diagnostic, Span, Word, quoted};
use crate::sketch::cursor::{Cursor, Expected, Read};
use crate::sketch::lexer::Token;
use crate::sketch::quantity::{decimal, grouped_number};
use crate::sketch::statement::Statement;
use crate::sketch::value_statement::{Exemption, Place, Sale, TaxRate, Value, Valued};
use crate::units::area::{Area, WrittenArea};
use crate::units::money::{Currency, Money};

const MONEY_HELP: &str = "a sign comes first, commas stand between thousands, a point before cents: `$412,000`, `$412,000.50`, `€412,000`, `412000`";
const RATE_HELP: &str =
    "write it as the tax bill does: `tax rate 2.14 per $100`, or `per $1,000` where that is used";

/// The first words of these statements, except `tax`.
pub(crate) const FIRST_WORDS: [&str; 7] =
    ["value", "last", "exemption", "homestead", "notice", "place", "comparable"];

impl Cursor<'_> {
    /// Parses the statement that begins with one of [`FIRST_WORDS`], which was just read.
    pub(crate) fn valued(&mut self, word: &str, start: Span) -> Read<Statement> {
        let valued = match word {
            "value" => Valued::Value(self.value(start)?),
            "last" => {
                self.expect_keyword(&["year"], "after `last`")?;
                self.expect_keyword(&["assessed"], "after `last year`")?;
                Valued::LastYear(self.expect_worth("last year's assessed value")?)
            }
            "exemption" => {
                let amount = self.expect_money("the amount of the exemption")?;
                let name = self.expect_text("what the exemption is called")?.text;
                Valued::Exemption(Exemption { amount, name })
            }
            "homestead" => {
                self.expect_keyword(&["since"], "after `homestead`")?;
                Valued::Homestead(self.expect_year("homestead since 2021")?)
            }
            "notice" => Valued::Notice(self.expect_date()?),
            "place" => Valued::Place(self.place_with_rules()?),
            _ => Valued::Comparable(self.comparable()?),
        };
        Ok(Statement::Valued(valued.into()))
    }

    fn value(&mut self, start: Span) -> Read<Value> {
        let mut value = Value::default();
        self.value_word(&mut value, Expected::Word("what the value is"))?;
        while !self.at_end() {
            self.value_word(&mut value, Expected::WordOrEnd)?;
        }
        let Some((word, sum, market)) = value.above_market() else { return Ok(value) };
        let span = self.since(start);
        let message = format!("the {word} value, {sum}, is more than the market value, {market}");
        self.fault(Diagnostic::new(Word::BadValue, span, message).help(
            "compare both with the notice: the market value is of land and improvements together, and what is taxed is at most that",
        ))
    }

    fn value_word(&mut self, value: &mut Value, expected: Expected<'_>) -> Read<()> {
        let words = ["market", "assessed", "improvement", "new", "year"];
        let word = self.expect_keyword(&words, expected)?;
        if word == "year" {
            let year = self.expect_year("value market $412,000 year 2026")?;
            return self.once(&mut value.year, year, "the year");
        }
        let what = format!("the {word} value");
        let sum = match word {
            "market" | "assessed" => self.expect_worth(&what)?,
            _ => self.expect_money(&what)?,
        };
        let slot = match word {
            "market" => &mut value.market,
            "assessed" => &mut value.assessed,
            "improvement" => &mut value.improvement,
            _ => &mut value.new,
        };
        self.once(slot, sum, &what)
    }

    /// Parses what follows `tax rate`.
    pub(crate) fn tax_rate(&mut self) -> Read<Statement> {
        let start = self.span();
        let Some(Token::Number(digits)) = self.peek() else {
            return self.unexpected("the tax rate", RATE_HELP);
        };
        let rate = decimal(digits).filter(|rate| *rate > Decimal::ZERO && rate.scale() <= 8);
        self.advance();
        self.expect_keyword(&["per"], "after the rate")?;
        let sum = self.expect_money("`$100` or `$1,000`")?;
        let (per, currency) = (sum.amount(), sum.currency());
        let rate = rate.filter(|rate| *rate < per);
        let per = [100_u32, 1_000].into_iter().find(|round| Decimal::from(*round) == per);
        let (Some(rate), Some(per)) = (rate, per) else {
            let span = self.since(start);
            let message = "this is no tax rate";
            return self.fault(Diagnostic::new(Word::BadRate, span, message).help(RATE_HELP));
        };
        let of = self.accept_text("the taxing unit")?.map(|named| named.text);
        Ok(Statement::Valued(Valued::TaxRate(TaxRate { rate, per, currency, of }).into()))
    }

    fn place_with_rules(&mut self) -> Read<Place> {
        let typed = self.peek_word().unwrap_or_default();
        let words: Vec<&str> = Place::ALL.iter().copied().map(Place::word).collect();
        let known = self.keyword(&words);
        if let Some(place) = Place::ALL.iter().copied().find(|place| Some(place.word()) == known) {
            return Ok(place);
        }
        if typed.is_empty() {
            return self.unexpected(
                "the place: `texas`",
                "write `place texas`, or `place none` for no law",
            );
        }
        let message = format!("no rules are kept for the place {}", self.found());
        let span = self.span();
        self.fault(Diagnostic::new(Word::UnknownPlace, span, message).help(
            "write `place none`: the report then says what to ask; there are rules for texas, washington, colorado, california, new-york, ohio, florida, georgia, new-jersey, virginia, michigan",
        ))
    }

    fn comparable(&mut self) -> Read<Sale> {
        let name = self.expect_name("the name of the comparable")?;
        let size = self.house_area(self.span(), "the size of the comparable")?;
        let (mut sold, mut recorded) = (None, None);
        while !self.at_end() {
            match self.expect_keyword(&["sold", "recorded"], Expected::WordOrEnd)? {
                "sold" => {
                    let sale = self.price_and_day()?;
                    self.once(&mut sold, sale, "the sale")?;
                }
                _ => {
                    let area = self.house_area(self.span(), "the recorded size")?;
                    self.once(&mut recorded, area, "the recorded size")?;
                }
            }
        }
        match sold {
            Some((sold, on)) => Ok(Sale { name, size, sold, on, recorded }),
            None => self.unexpected(
                "`sold`, with the price and the day",
                "write `comparable \"8 Larch Court\" 1,925 sq ft sold $398,000 on 2025-08-14`",
            ),
        }
    }

    fn price_and_day(&mut self) -> Read<(Money, Date)> {
        let price = self.expect_worth("the price")?;
        self.expect_keyword(&["on"], "after the price")?;
        Ok((price, self.expect_date()?))
    }

    /// An area of at least 20 sq ft, as a house would have.
    pub(crate) fn house_area(&mut self, start: Span, what: &str) -> Read<WrittenArea> {
        let area = self.expect_area(what)?;
        if area.area() >= Area::from_half_nm2(20 * Area::SQUARE_FOOT.half_nm2()) {
            return Ok(area);
        }
        let span = self.since(start);
        self.fault(
            Diagnostic::new(Word::BadArea, span, format!("{area} is no house"))
                .help("thousands take a comma: `1,200 sq ft`"),
        )
    }

    /// What a house is worth: a sum below 1,000 stands for thousands, as people say them, and is asked about.
    fn expect_worth(&mut self, what: &str) -> Read<Money> {
        let start = self.span();
        let sum = self.expect_money(what)?;
        if sum.amount() >= Decimal::ONE_THOUSAND {
            return Ok(sum);
        }
        let span = self.since(start);
        let message = format!("{what} is {sum}, which no house is worth");
        let in_full = sum.with((sum.amount() * Decimal::ONE_THOUSAND).normalize());
        let help =
            format!("a sum is written in full: if this stands for thousands, write `{in_full}`");
        self.fault(Diagnostic::new(Word::BadMoney, span, message).help(help))
    }

    /// An amount above 0 in whole cents: `$412,000`, `$412,000.50`, `€412,000`, `412000`.
    pub(crate) fn expect_money(&mut self, what: &str) -> Read<Money> {
        let start = self.span();
        let currency = self.currency();
        let Some(Token::Number(digits)) = self.peek() else {
            return self.unexpected(what, MONEY_HELP);
        };
        let digits = *digits;
        self.advance();
        if matches!(self.peek(), Some(Token::Currency(_))) {
            self.advance();
            return self.bad_money(start, format!("the sign of {what} stands after the number"));
        }
        if let Some(word) = self.peek_word().filter(|word| is_short_for_zeros(word)) {
            self.advance();
            let message = format!("{what} is written short, with {}", quoted(word));
            return self.bad_money(start, message);
        }
        // `412.000` could be 412 thousand or 412, so it is an error.
        let is_whole_cents = digits.split_once('.').is_none_or(|(_, cents)| cents.len() <= 2);
        match grouped_number(digits)
            .filter(|_| is_whole_cents)
            .and_then(|amount| Money::written(amount, currency))
        {
            Some(money) => Ok(money),
            None => {
                let message = format!("{} is no sum of money", quoted(digits));
                self.bad_money(start, message)
            }
        }
    }

    /// The sign of a currency, if one is next.
    fn currency(&mut self) -> Currency {
        let Some(Token::Currency(currency)) = self.peek() else { return Currency::None };
        let currency = *currency;
        self.advance();
        currency
    }

    fn bad_money<T>(&mut self, start: Span, message: String) -> Read<T> {
        let span = self.since(start);
        self.fault(Diagnostic::new(Word::BadMoney, span, message).help(MONEY_HELP))
    }
}

fn is_short_for_zeros(word: &str) -> bool {
    matches!(word, "k" | "m" | "mm" | "thousand" | "million")
}
