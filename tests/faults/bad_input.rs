//! Invalid input: never a panic, never a hang, always a message that says what to type.

use fairfoot::diagnostic::{Word, draw};
use fairfoot::sketch::MOST_BYTES;

use super::diagnostics_of;

fn first_word(bytes: &[u8]) -> Word {
    diagnostics_of("bad.sides", bytes.to_vec())
        .1
        .first()
        .map(fairfoot::Diagnostic::word)
        .expect("a fault")
}

fn house(side: &str) -> String {
    format!("level \"G\"\nliving \"H\"\n{side}\neast 40'\nsouth 30'\nwest 40'\n")
}

/// The processor time of this thread, which other work on the machine does not lengthen; `None` but on Linux.
fn processor_time() -> Option<std::time::Duration> {
    let times = std::fs::read_to_string("/proc/thread-self/schedstat").ok()?;
    times.split_whitespace().next()?.parse().ok().map(std::time::Duration::from_nanos)
}

#[test]
fn an_empty_file_gets_help_how_to_begin() {
    for text in ["", "\n", "\u{feff}", "# only a comment\n", "   \n\t\n"] {
        assert_eq!(first_word(text.as_bytes()), Word::NothingMeasured, "{text:?}");
    }
}

#[test]
fn bytes_that_are_not_text_are_reported_with_their_position() {
    for bytes in [&b"\xff\xfe\x00l"[..], b"level \xc3", b"\x80", b"living \"\xf0\x9f\"\n"] {
        assert_eq!(first_word(bytes), Word::NotText, "{bytes:?}");
    }
}

#[test]
fn a_nul_byte_and_control_characters_are_refused() {
    for hidden in ["\0", "\u{7}", "\u{1b}[31m", "\u{85}", "\u{200f}", "\u{202e}", "\u{2066}"] {
        let text = format!("property \"A{hidden}B\"\n");
        assert_eq!(first_word(text.as_bytes()), Word::HiddenCharacter, "{hidden:?}");
        let (source, list) = diagnostics_of("bad.sides", text.into_bytes());
        let drawn = draw(&source, &list, false);
        let kept = |c: char| c.is_control() && c != '\n' || ('\u{202a}'..='\u{202e}').contains(&c);
        assert!(!drawn.contains(kept), "{drawn:?}");
    }
}

#[test]
fn windows_line_ends_and_a_byte_order_mark_are_fine() {
    let text = format!("\u{feff}{}", house("north 30'")).replace('\n', "\r\n");
    assert!(fairfoot::read("w.sides", text).is_ok());
}

#[test]
fn invalid_lengths_are_reported() {
    for length in [
        "0",
        "0'",
        "0\"",
        "-3'",
        "1e9'",
        "99999999999999999999999999999999'",
        "10001'",
        "1/3\"",
        "42 7",
        "42' 7",
        "12-6",
        "42' 12\"",
        "42' 5/4\"",
        "4.2.1'",
        "1,200'",
        "42.5' 7\"",
        "7.5 1/2\"",
        "1/0\"",
        "/2\"",
        "1/\"",
        "'",
        "5 furlongs",
        "0.0000000001'",
        "½",
        "½'",
    ] {
        let word = first_word(house(&format!("north {length}")).as_bytes());
        let known = [
            Word::BadLength,
            Word::Unexpected,
            Word::UnknownWord,
            Word::StrayCharacter,
            Word::UnfinishedText,
        ];
        assert!(known.contains(&word), "{length}: {word}");
    }
}

#[test]
fn almost_a_length_is_reported_as_a_bad_length() {
    for length in ["42 7", "42' 7", "12-6", "42' 12\"", "42' 5/4\"", "4.2.1'", "1,200'", "1/3\""] {
        let word = first_word(house(&format!("north {length}")).as_bytes());
        assert_eq!(word, Word::BadLength, "{length}");
    }
}

#[test]
fn huge_texts_are_answered_within_seconds() {
    let begun = processor_time();
    assert_eq!(first_word(&vec![b'x'; 100_000_000]), Word::FileTooLong);
    assert_eq!(first_word(&vec![b'\n'; 10_001]), Word::FileTooLong);
    // Lines of 200 bytes, so that there are fewer than 10,000 of them: the most bytes, and one more.
    let comments = format!("#{}\n", "x".repeat(198)).repeat(MOST_BYTES.div_euclid(200));
    assert_eq!(comments.len(), MOST_BYTES);
    assert_eq!(first_word(comments.as_bytes()), Word::NothingMeasured);
    assert_eq!(first_word(format!("{comments}\n").as_bytes()), Word::FileTooLong);
    assert_eq!(first_word("#".repeat(999_999).as_bytes()), Word::LineTooLong);
    assert_eq!(first_word("\"".repeat(900_000).as_bytes()), Word::LineTooLong);
    let nested = "living \"A\" within \"A\"\n".repeat(9_999);
    let (source, list) =
        diagnostics_of("nested.sides", format!("level \"G\"\n{nested}").into_bytes());
    assert!(draw(&source, &list, true).lines().count() < 2_000, "a page, not a flood");
    let garbage = "?!%& north -5' \"\n".repeat(9_999);
    assert!(!diagnostics_of("garbage.sides", garbage.into_bytes()).1.is_empty());
    // Half a second in all on one machine; what grows with the square of a text takes minutes.
    let took = begun.zip(processor_time()).map(|(begun, ended)| ended - begun);
    assert!(took.is_none_or(|took| took.as_secs() < 5), "{took:?}");
}

#[test]
fn all_errors_are_reported_in_file_order() {
    let text = "level \"G\"\nliving \"H\"\nnroth 30'\neast 40 1\nsouth 30' recoded 30'\nfrob\n";
    let (_, list) = diagnostics_of("many.sides", text.as_bytes().to_vec());
    let words: Vec<&str> = list.iter().map(|fault| fault.word().as_str()).collect();
    assert_eq!(words, ["unknown-word", "bad-length", "unknown-word", "unknown-word"]);
    assert!(list.is_sorted_by_key(|fault| fault.span().start));
}

#[test]
fn consequences_of_an_earlier_error_are_suppressed() {
    // The house cannot close without its faulty side, and the porch starts at one of its corners.
    let text = "level \"G\"\nliving \"H\"\nnorth 30 0\neast 40'\ncorner \"step\"\nsouth 30'\n\
                west 40'\nporch \"P\" from corner \"step\"\nsouth 5'\neast 5'\nnorth 5'\nwest 5'\n";
    let (_, list) = diagnostics_of("held.sides", text.as_bytes().to_vec());
    assert_eq!(list.len(), 1, "{list:?}");
}

#[test]
fn a_near_miss_is_read_as_meant_so_that_later_errors_appear_too() {
    let text = "level \"G\"\nliving \"H\"\nnroth 30'\neast 40'\nsouth 30'\nwest 38'\n";
    let (_, list) = diagnostics_of("near.sides", text.as_bytes().to_vec());
    let words: Vec<&str> = list.iter().map(|fault| fault.word().as_str()).collect();
    assert_eq!(words, ["does-not-close", "unknown-word"]);
}

#[test]
fn spans_at_wide_characters_and_at_the_end_are_printed() {
    for text in ["property \"日本", "level \"é\" 日本\n", "living", "north 5' note \"…", "é"]
    {
        let (source, list) = diagnostics_of("wide.sides", text.as_bytes().to_vec());
        assert!(draw(&source, &list, false).contains("error["), "{text}");
    }
}

#[test]
fn a_bare_decimal_beside_feet_and_inches_is_asked_about_anywhere_in_the_file() {
    let asked = |sides: &str| {
        let text = format!("level \"G\"\nliving \"H\"\n{sides}\n");
        let (_, list) = diagnostics_of("bare.sides", text.into_bytes());
        let about = list.iter().find(|fault| fault.word() == Word::TenthsBesideInches);
        about.map(|fault| fault.message().to_owned())
    };
    let of = |length: &str, feet: &str| {
        Some(format!(
            "`H`: {length} beside feet and inches is taken as {length} ft, which is {feet}"
        ))
    };
    assert_eq!(
        asked("north 12.6\neast 10' 6\"\nsouth 12.6\nwest 10' 6\""),
        of("12.6", "12' 7 3/16\"")
    );
    // Half a foot written as `.5` has no feet that could go with inches, and does not hide another such number.
    let jog = "north .5\neast 4' 3\"\nnorth 12.6\neast 6' 3\"\nsouth 13.1\nwest 10' 6\"";
    assert_eq!(asked(jog), of("12.6", "12' 7 3/16\""));
    assert_eq!(asked("north .5\neast 4' 3\"\nsouth .5\nwest 4' 3\""), None);
    // With an inch mark, or with all lengths in tenths, the meaning is clear.
    assert_eq!(asked("north 12.6'\neast 10' 6\"\nsouth 12.6'\nwest 10' 6\""), None);
    assert_eq!(asked("north 12.6\neast 10.5\nsouth 12.6\nwest 10.5"), None);
}

#[test]
fn a_size_in_place_of_a_name_gets_help_where_sizes_go() {
    let text = format!("{}garage 20x20\n", house("north 30'"));
    let (_, list) = diagnostics_of("size.sides", text.into_bytes());
    assert_eq!(
        list[0].helps(),
        [
            "did you mean `garage \"Garage\"` and on the lines below it `north 20`, `east 20`, `south 20`, `west 20`?"
        ]
    );
}

#[test]
fn a_figure_three_times_the_house_or_a_third_of_it_is_asked_about() {
    // 30 × 40 = 1,200.
    let is_asked = |record: &str| {
        let text = format!("record {record} sq ft\n{}", house("north 30'"));
        let (_, list) = diagnostics_of("far.sides", text.into_bytes());
        list.iter().any(|fault| fault.word() == Word::FarOff)
    };
    for (record, is) in
        [("3,600", true), ("3,599", false), ("1,200", false), ("401", false), ("400", true)]
    {
        assert_eq!(is_asked(record), is, "{record}");
    }
}

#[test]
fn a_mark_after_a_word_is_a_text_and_after_a_mistyped_number_an_inch() {
    let help = |text: &str| {
        let (_, list) = diagnostics_of("mark.sides", text.as_bytes().to_vec());
        let fault = list.iter().find(|fault| fault.word() == Word::UnfinishedText);
        fault.expect("an unfinished text").helps().join(" ")
    };
    assert!(help(&house("north 12' 1O\"")).contains("`north 12' 10\"`"));
    assert!(help("level Ground floor\"\n").contains("did you mean `level \"Ground floor\"`?"));
}

#[test]
fn a_balcony_may_hang_where_a_room_may_not() {
    let upper = |space: &str| {
        let text = format!(
            "{}level \"Upper\"\nliving \"Rooms\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n{space} start north 30'\nnorth 6'\neast 12'\nsouth 6'\nwest 12'\n",
            house("north 30'")
        );
        let (_, list) = diagnostics_of("upper.sides", text.into_bytes());
        list.iter().any(|fault| fault.word() == Word::UpperOverhangs)
    };
    assert!(!upper("balcony \"Balcony\""));
    assert!(upper("living \"Bay\""));
    assert!(upper("porch \"Sun porch\" counted"));
}

#[test]
fn invisible_characters_are_refused_by_unicode_property() {
    // From the tables of Unicode: soft hyphen, joiners, Arabic letter mark, Mongolian vowel separator, Hangul and
    // halfwidth fillers, deprecated format characters, variation selectors, tags, blank Braille, musical format.
    for hidden in [
        '\u{ad}',
        '\u{200c}',
        '\u{200d}',
        '\u{61c}',
        '\u{180e}',
        '\u{115f}',
        '\u{3164}',
        '\u{ffa0}',
        '\u{206a}',
        '\u{fe0f}',
        '\u{e0041}',
        '\u{e0100}',
        '\u{2800}',
        '\u{1d173}',
        '\u{34f}',
    ] {
        for text in [format!("property \"A{hidden}B\"\n"), format!("# A{hidden}B\n")] {
            assert_eq!(first_word(text.as_bytes()), Word::HiddenCharacter, "{hidden:?}");
        }
    }
    for seen in ["é", "ñ", "日本", "½", "Ω", "—"] {
        let text = format!("property \"{seen}\"\n{}", house("north 30'"));
        assert!(fairfoot::read("seen.sides", text).is_ok(), "{seen}");
    }
}

#[test]
fn files_of_other_programs_are_named() {
    for (bytes, named) in [
        (&b"{\\rtf1\\ansi north 30'}"[..], "rich text"),
        (b"PK\x03\x04\x14\0\x06\0", "DOCX"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1", "DOC"),
        (b"<!DOCTYPE html><html>", "web page"),
        (b"\xff\xd8\xff\xe0\0\x10JFIF", "photograph"),
    ] {
        let (_, list) = diagnostics_of("other", bytes.to_vec());
        assert_eq!(list[0].word(), Word::NotText);
        assert!(list[0].message().contains(named), "{}", list[0].message());
    }
}

#[test]
fn the_first_of_many_errors_are_kept_and_the_others_counted() {
    let text = "quuxish waldoes 12\n".repeat(9_000);
    let output = fairfoot::read("many.sides", text).expect_err("no line can be read");
    assert!(output.list().len() <= 600, "{}", output.list().len());
    assert_eq!(output.list().len() + output.more(), 9_000);
}

#[test]
fn warnings_never_come_before_an_error() {
    let text = format!(
        "{}level \"U\"\nliving \"R\"\nnorth 30'\neast 40'\nsouth 30'\nwest 38'\n",
        house("north 30'").replace("west 40'", "close")
    );
    let (_, list) = diagnostics_of("order.sides", text.into_bytes());
    let first_warning = list.iter().position(|output| !output.is_error()).unwrap_or(list.len());
    assert!(list[first_warning..].iter().all(|output| !output.is_error()), "{list:?}");
    assert!(list[0].is_error());
}

#[test]
fn feet_and_inches_typed_with_a_point_are_asked_about() {
    let asked = |sides: &str| {
        let text = format!("level \"G\"\nliving \"H\"\n{sides}\n");
        let (_, list) = diagnostics_of("point.sides", text.into_bytes());
        list.iter().any(|output| output.word() == Word::TenthsBesideInches)
    };
    assert!(asked("north 28.10\neast 42.11\nsouth 28.10\nwest 42.11"));
    assert!(asked("north 28.4\neast 42.11\nsouth 28.4\nwest 42.11"));
    assert!(asked("north 28.1\neast 42.0\nsouth 28.1\nwest 42.0"));
    // Hundredths and tenths that cannot be inches.
    assert!(!asked("north 28.10\neast 42.45\nsouth 28.10\nwest 42.45"));
    assert!(!asked("north 28.5\neast 42.6\nsouth 28.5\nwest 42.6"));
    // An inch mark makes the meaning clear.
    assert!(!asked("north 28.10'\neast 42.11'\nsouth 28.10'\nwest 42.11'"));
}

#[test]
fn a_level_that_cannot_be_read_has_one_error() {
    let walls = "living \"House\"\nnorth 20'\neast 30'\nsouth 20'\nwest 30'\n";
    for level in ["1st floor", "first floor:", "level", "Main Level"] {
        let (_, list) =
            diagnostics_of("l.sides", format!("front south\n{level}\n{walls}").into_bytes());
        assert_eq!(list.len(), 1, "{level}: {list:?}");
    }
    // Two names that were not read are not one name.
    let two = format!("level\n{walls}level\n{walls}");
    let (_, list) = diagnostics_of("l.sides", two.into_bytes());
    assert!(list.iter().all(|one| one.word() != Word::NameTwice), "{list:?}");
}
