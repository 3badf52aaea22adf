//! Laws of texts: they print and read back the same; no text stops the reader.

use fairfoot::{Settings, Source};
use proptest::prelude::*;

use super::houses::{file, towers};

/// Does everything that can be done with a text.
fn everything(text: &str) {
    let settings = Settings::default();
    let _ = fairfoot::sketch::parse(Source::new("any.sides", text)).map(|sketch| sketch.tidied());
    match fairfoot::read("any.sides", text) {
        Ok(checked) => {
            let Ok(areas) = checked.areas(&settings) else { return };
            let Ok(all) = areas.reconcile(&fairfoot::Weights::default()) else { return };
            let _ = all.report().text(Default::default());
            let _ = all.report().json();
        }
        Err(faults) => {
            assert!(!faults.list().is_empty());
            let _ = faults.drawn(true);
        }
    }
}

/// Two of the mistakes that people make, joined where each was cut, with a stroke too many between them.
fn changed_mistakes() -> impl Strategy<Value = String> {
    let gallery = include_str!("../faults/typing.txt");
    let mistakes: Vec<&str> =
        gallery.lines().filter_map(|line| Some(line.split_once("> ")?.1)).collect();
    let one = || (prop::sample::select(mistakes.clone()), any::<prop::sample::Index>());
    let stroke = prop::sample::select(vec![
        "", "", " ", "\u{2000}", "\u{a0}", "#", ",", ".", "'", "\"", "(", ")", "-", "=", ":", "x",
        "½", "é", "’", "0", "\t", "ß",
    ]);
    (one(), one(), stroke, any::<bool>()).prop_map(
        |((first, cut), (second, begin), stroke, both)| {
            let parts = |line: &str, at: prop::sample::Index| {
                let places: Vec<usize> =
                    line.char_indices().map(|(place, _)| place).chain([line.len()]).collect();
                let place = *at.get(&places);
                (line[..place].to_owned(), line[place..].to_owned())
            };
            let (head, tail) = parts(first, cut);
            let tail = if both { parts(second, begin).1 } else { tail };
            format!("{head}{stroke}{tail}")
        },
    )
}

/// A line that is almost valid.
fn nearly_a_line() -> impl Strategy<Value = String> {
    let words = prop::sample::select(vec![
        "north",
        "n",
        "east",
        "south",
        "west",
        "diagonal",
        "bearing",
        "arc",
        "bay",
        "out",
        "flat",
        "round",
        "back",
        "left",
        "map",
        "detached",
        "under",
        "file",
        "wall",
        "place",
        "rise",
        "close",
        "by",
        "closing",
        "corner",
        "overall",
        "tie",
        "to",
        "level",
        "below",
        "grade",
        "beside",
        "living",
        "garage",
        "open",
        "low",
        "court",
        "stair",
        "porch",
        "within",
        "start",
        "from",
        "veneer",
        "none",
        "counted",
        "not",
        "recorded",
        "record",
        "listing",
        "plan",
        "figure",
        "outline",
        "of",
        "missing",
        "lot",
        "measured",
        "inside",
        "frame",
        "outside",
        "sides",
        "whole-foot",
        "unknown",
        "counting",
        "tolerance",
        "units",
        "metres",
        "property",
        "faces",
        "front",
        "true",
        "photo",
        "note",
        "common",
        "estimated",
        "\"A\"",
        "\"B\"",
        "\"\"",
        "12'",
        "7\"",
        "3' 4 1/2\"",
        "42.6",
        "1/3\"",
        "sq ft",
        "1,200 sq ft",
        "0.3 acres",
        "N 45° E",
        "2026-03-07",
        ",",
        "#",
        "'",
        "\"",
        "-",
        "99999999'",
        "½",
        "é",
        "1",
        "2",
        "value",
        "market",
        "assessed",
        "improvement",
        "new",
        "year",
        "last year assessed",
        "tax rate",
        "per",
        "exemption",
        "homestead since",
        "notice",
        "place texas",
        "comparable \"C\" 1,900 sq ft",
        "sold $398,000 on 2025-08-14",
        "$412,000",
        "$1.5",
        "$",
        "$100",
        "2.14",
        "2026",
    ]);
    proptest::collection::vec(words, 0..8).prop_map(|words| words.join(" "))
}

/// A sum of money in one of the accepted spellings, at least the 1,000 that a house is worth.
fn a_sum() -> impl Strategy<Value = String> {
    (1_000_u64..2_000_000, 0_u32..100, 0_u8..4).prop_map(|(dollars, cents, how)| match how {
        0 => format!("${dollars}"),
        1 => format!("$ {dollars}.{cents:02}"),
        2 => format!("{dollars}.5"),
        _ => format!("${},{:03}", dollars % 999 + 1, dollars / 2_000),
    })
}

/// Lines with values, rates, dates and sales, each at most once.
fn lines_of_values() -> impl Strategy<Value = Vec<String>> {
    let sums = proptest::collection::vec(a_sum(), 8);
    let rate = (1_u32..99_999, 1_u32..4).prop_map(|(rate, places)| match places {
        1 => format!("{}.{} per $100", rate / 1_000, rate % 1_000),
        2 => format!("0.{rate:05} per 100"),
        _ => format!("{}.5 per $1,000", rate % 1_000),
    });
    let year = 1900_u16..2100;
    (sums, rate, year, 1_i8..13, 1_i8..29, 0_u16..256, any::<bool>()).prop_map(
        |(sums, rate, year, month, day, some, market_last)| {
            let date = format!("{year}-{month:02}-{day:02}");
            let other = format!("new {} year {year}", sums[1]);
            let value = if market_last {
                format!("VALUE {other} market {}", sums[0])
            } else {
                format!("value market {} {other}", sums[0])
            };
            let lines = [
                value,
                format!("last  year assessed {}", sums[2]),
                format!("tax rate {rate}"),
                format!("tax rate {rate} \"school\""),
                format!("exemption {} \"school\"", sums[3]),
                format!("homestead since {year}"),
                format!("notice {date}"),
                format!("comparable \"C\" 1,925 sqft recorded 180 sq m sold {} on {date}", sums[4]),
            ];
            let kept = lines.into_iter().enumerate().filter(|(i, _)| some >> i & 1 == 1);
            kept.map(|(_, line)| line).chain(["place Texas".to_owned()]).collect()
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(crate::cases(300)))]

    #[test]
    fn lines_of_values_are_read_tidied_and_reported(lines in lines_of_values(), record in 900_u32..3_000) {
        let house = "level \"G\"\nliving \"H\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";
        let text = format!("record {record} sq ft\n{}\n{house}", lines.join("\n"));
        let sketch = fairfoot::sketch::parse(Source::new("v.sides", text.clone()))
            .unwrap_or_else(|faults| panic!("{faults}"));
        let tidied = sketch.tidied();
        let again = fairfoot::sketch::parse(Source::new("v.sides", tidied.clone()))
            .unwrap_or_else(|faults| panic!("{tidied}\n{faults}"));
        prop_assert!(sketch.says_the_same_as(&again), "{}\n{}", text, tidied);
        prop_assert_eq!(again.tidied(), tidied);
        everything(&text);
    }

    #[test]
    fn no_text_stops_the_reader(text in "\\PC{0,200}") {
        everything(&text);
    }

    #[test]
    fn a_line_of_white_space_alone_is_answered(blank in "[\\u{2000}\\u{a0}\\u{3000} \t]{1,4}", rest in "#?") {
        everything(&format!("{blank}{rest}"));
    }

    #[test]
    fn no_change_of_a_mistake_stops_the_reader(changed in changed_mistakes()) {
        everything(&format!("record 1,200 sq ft\nlevel \"G\"\nliving \"H\"\n{changed}\n"));
        everything(&changed);
    }

    #[test]
    fn no_bytes_stop_the_reader(bytes in proptest::collection::vec(any::<u8>(), 0..300)) {
        match fairfoot::decode("any.sides", bytes) {
            Ok(source) => everything(source.text()),
            Err(faults) => prop_assert!(!faults.drawn(false).is_empty()),
        }
    }

    #[test]
    fn nothing_that_looks_like_the_format_stops_the_reader(lines in proptest::collection::vec(nearly_a_line(), 0..14)) {
        everything(&lines.join("\n"));
    }

    #[test]
    fn a_changed_byte_does_not_stop_the_reader(sides in towers(), at in 0_usize..2_000, byte in 0_u8..128) {
        let mut bytes = file("record 1,200 sq ft counting \"House\"", &sides).into_bytes();
        let at = at % bytes.len();
        bytes[at] = byte;
        if let Ok(text) = String::from_utf8(bytes) {
            everything(&text);
        }
    }

    #[test]
    fn the_tidy_form_says_the_same_and_is_tidy(lines in proptest::collection::vec(nearly_a_line(), 0..14)) {
        // Only lines that can be read on their own make a file that can be tidied.
        let mut text = String::from("level \"G\"\n  living \"H\"\nnorth 5'\neast 5'\nclose\n");
        for line in &lines {
            let longer = format!("{text}{line}\n");
            if fairfoot::sketch::parse(Source::new("t.sides", longer.clone())).is_ok() {
                text = longer;
            }
        }
        let sketch = fairfoot::sketch::parse(Source::new("t.sides", text.clone())).unwrap();
        let tidied = sketch.tidied();
        let again = fairfoot::sketch::parse(Source::new("t.sides", tidied.clone()))
            .unwrap_or_else(|faults| panic!("{text}\n{tidied}\n{faults}"));
        prop_assert!(sketch.says_the_same_as(&again), "{}\n{}", text, tidied);
        prop_assert_eq!(again.tidied(), tidied);
    }
}
