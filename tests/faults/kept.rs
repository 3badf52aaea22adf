//! What a suggested line keeps of the line that was typed: every length, every figure and every place in it.

use fairfoot::{Diagnostic, Source};
use proptest::prelude::*;

const HOUSE: &str =
    "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";
const BOX: &str = "north 10'\neast 10'\nsouth 10'\nwest 10'\n";

/// The lines suggested instead of `line`, which is between `before` and `after`.
fn suggested(before: &str, line: &str, after: &str) -> Vec<String> {
    let text = format!("{before}{line}\n{after}");
    let list: Vec<Diagnostic> =
        match fairfoot::sketch::parse(Source::new("typed.sides", text.as_str())) {
            Ok(_) => return vec![line.to_owned()],
            Err(output) => output.list().to_vec(),
        };
    let mut lines = Vec::new();
    for fix in list.iter().flat_map(Diagnostic::fixes) {
        let mut mended = text.clone();
        mended.replace_range(fix.span.start..fix.span.end, &fix.text);
        let added = fix.text.matches('\n').count();
        let first = before.lines().count();
        let lines_of_it: Vec<&str> = mended.lines().skip(first).take(1 + added).collect();
        lines.push(lines_of_it.join("\n"));
    }
    lines
}

/// The part of a line before its comment and without its texts.
fn counted(line: &str) -> &str {
    line.split("  #").next().unwrap_or(line)
}

/// Everything that is said about a file with `line` between `before` and `after`, with the lines that are offered.
fn answered(before: &str, line: &str, after: &str) -> String {
    match fairfoot::read("typed.sides", format!("{before}{line}\n{after}")) {
        Ok(_) => line.to_owned(),
        Err(errors) => {
            let said = |one: &Diagnostic| {
                let fixes: Vec<&str> = one.fixes().iter().map(|fix| fix.text.as_str()).collect();
                format!("{}\n{}\n", one.helps().join("\n"), fixes.join("\n"))
            };
            errors.list().iter().map(said).collect()
        }
    }
}

proptest! {
    /// Whatever is said of the place of a space, its area on the record, its siding, its size and a remark stay.
    #[test]
    fn nothing_else_is_lost_where_the_place_is_told_in_words(
        kind in prop::sample::select(vec!["garage", "porch", "deck", "patio", "shed", "carport \"C\"", "porch \"Rear porch\""]),
        place in prop::sample::select(vec![
            "on the east side", "behind the house", "at the NE corner", "near the oak", "in the yard", "right side", "3' from the west wall",
            "4' north of corner 2", "off back", "next to the kitchen", "at rear of house", "(on the right)",
        ]),
        size in prop::sample::select(vec!["", ", 10 x 10", " 10' by 10'", " (10x10)"]),
        area in 60_i64..900,
        record in prop::sample::select(vec!["county has", "record", "recorded", "card says"]),
        siding in prop::sample::select(vec!["", ", siding", ", stucco"]),
    ) {
        let line = format!("{kind} {place}{size}, {record} {area}{siding}");
        let said = answered(HOUSE, &line, BOX);
        prop_assert!(said.contains(&format!("recorded {area} sq ft")), "{line} -> {said}");
        prop_assert!(siding.is_empty() || said.contains("veneer none"), "{line} -> {said}");
        prop_assert!(size.is_empty() || said.contains("10"), "{line} -> {said}");
        prop_assert!(!said.contains("start east 3'\n") , "{line} -> {said}");
    }

    /// Whatever is typed between two lengths, the wall gets one of them, their sum or their difference, and the second
    /// never becomes the record's length or a tolerance unless the line says so.
    #[test]
    fn a_second_length_is_never_taken_for_something_that_was_not_said(
        first in 10_i64..60,
        second in 1_i64..9,
        between in prop::sample::select(vec![
            ",", " window", " door", " less", " minus", " +", " and", " to", " or", " by closing", " ceiling", " eave", " garage door",
            " see", " @", " ->", " /", " incl.", " (", " porch", " near", " above", " bump-out", " then",
        ]),
        after in prop::sample::select(vec!["", " high", " wide", " wall", " brick"]),
    ) {
        let line = format!("west {first}' 3\"{between} {second}' 1\"{after}");
        let inches = |feet: i64, inches: i64| 12 * feet + inches;
        let (one, two) = (inches(first, 3), inches(second, 1));
        let written = |inches: i64| match inches % 12 {
            0 => format!("{}'", inches.div_euclid(12)),
            rest => format!("{}' {rest}\"", inches.div_euclid(12)),
        };
        let allowed = [one, two, one + two, one - two].map(written);
        for offered in suggested("level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\n", &line, "") {
            let kept = counted(&offered);
            prop_assert!(!kept.contains("recorded") && !kept.contains("tolerance"), "{line} -> {offered}");
            prop_assert!(!kept.contains("note"), "{line} -> {offered}");
            let length = kept.trim_start_matches("west ").trim_end_matches(" estimated").trim();
            let fits = length == "by closing" || allowed.iter().any(|known| known == length) || kept.contains('\n');
            prop_assert!(fits, "{line} -> {offered}");
        }
    }

    /// Words that say nothing about the area never take the place of a space, or its recorded area, into a comment with
    /// them.
    #[test]
    fn the_place_and_the_recorded_area_stay_outside_the_comment(
        words in prop::sample::select(vec![
            "covered", "(uncovered)", "screened", "(2-car)", "2-car", "attached", "unheated", "wood", "with loft", "big", "[new]", "treated lumber",
        ]),
        area in 100_i64..900,
        is_first in any::<bool>(),
    ) {
        let place = "from \"House\" corner 2";
        let line = if is_first {
            format!("garage \"Garage\" {words} {place} recorded {area} sq ft")
        } else {
            format!("garage \"Garage\" {place} {words} recorded {area} sq ft")
        };
        for offered in suggested(HOUSE, &line, BOX) {
            let kept = counted(&offered);
            prop_assert!(kept.contains(place), "{line} -> {offered}");
            prop_assert!(kept.contains(&format!("recorded {area} sq ft")), "{line} -> {offered}");
        }
    }

    /// No name, title or note swallows an area, a sum of money or a date.
    #[test]
    fn no_text_swallows_a_figure(
        begins in prop::sample::select(vec![
            "record", "listing", "lot", "lot 12", "lot Lot 12", "comparable 8 Larch Court", "garage Garage", "record house", "level Upper floor", "case", "exemption",
        ]),
        figure in prop::sample::select(vec!["0.35 ac", "1,386 sq ft", "$398,000", "2025-08-14", "12' 6\"", "484 sq ft, $398,000"]),
        ends in prop::sample::select(vec!["", " garage", " more or less", ", heated", " incl. porch"]),
    ) {
        let line = format!("{begins} {figure}{ends}");
        for offered in suggested("", &line, HOUSE) {
            let mut texts = offered.split('"').skip(1).step_by(2);
            let digits: String = figure.chars().filter(|c| !c.is_whitespace()).collect();
            let swallowed = texts.any(|text| {
                let text: String = text.chars().filter(|c| !c.is_whitespace()).collect();
                text.contains(&digits)
            });
            prop_assert!(!swallowed, "{line} -> {offered}");
        }
    }

    /// What a wall leaves out is never said without its `not`.
    #[test]
    fn what_is_left_out_keeps_the_word_that_says_so(
        feet in 10_i64..60,
        joint in prop::sample::select(vec![" ", ", ", " - ", " (", "; "]),
        no in prop::sample::select(vec!["not", "no", "without", "never", "except", "excluding"]),
        what in prop::sample::select(vec![
            "bay", "overhang", "chimney", "the step", "gutter", "incl. bay", "including the bump", "counting porch", "bay window",
        ]),
    ) {
        let line = format!("west {feet}' 3\"{joint}{no} {what}");
        for offered in suggested("level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\n", &line, "") {
            prop_assert!(offered.starts_with(&format!("west {feet}' 3\"")), "{line} -> {offered}");
            let last = what.split(' ').next_back().unwrap();
            let keeps = !offered.contains(last) || offered.contains(no);
            prop_assert!(keeps, "{line} -> {offered}");
        }
    }

    /// A remark after a whole bay changes none of its lengths.
    #[test]
    fn a_remark_after_a_bay_leaves_its_lengths_where_they_are(
        flat in 3_i64..6,
        out in 1_i64..3,
        joint in prop::sample::select(vec![" ", ", ", " - ", " (", "; ", " — ", " ["]),
        remark in prop::sample::select(vec!["kitchen", "3 windows", "three windows", "breakfast nook", "new 2019", "leaks"]),
    ) {
        let bay = format!("bay west 8' out {out}' flat {flat}'");
        let line = format!("{bay}{joint}{remark}");
        let all = suggested("level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\n", &line, "");
        for offered in all {
            prop_assert!(offered.starts_with(&bay), "{line} -> {offered}");
        }
    }
}

#[test]
fn parts_of_a_foot_in_words_are_inches() {
    for (words, inches) in [
        ("a third", "4"),
        ("two thirds", "8"),
        ("a quarter", "3"),
        ("three quarters", "9"),
        ("a half", "6"),
        ("one sixth", "2"),
        ("five sixths", "10"),
        ("three eighths", "4 1/2"),
        ("one twelfth", "1"),
    ] {
        for line in
            [format!("west 22 and {words} feet"), format!("west twenty-two and {words} feet")]
        {
            let all = suggested(
                "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\n",
                &line,
                "",
            );
            let said = format!("west 22' {inches}\"");
            assert!(all.len() == 1 && all[0].starts_with(&said), "{line}: {all:?}");
        }
    }
}

proptest! {
    /// However feet, inches and a fraction are garbled, what is offered has the same three in their order.
    #[test]
    fn a_garbled_length_keeps_its_feet_inches_and_fraction(
        feet in 13_u32..60,
        inches in 1_u32..11,
        part in prop::sample::select(vec!["1/2", "1/4", "3/4", "3/8", "7/8"]),
        form in prop::sample::select(vec![
            "F' I\\P\"", "F' I.P\"", "F-I P", "F I P", "F.I P", "F'I\"P", "F' I\" P\"", "F ft I P", "F', I P\"", "F' and I P\"",
        ]),
    ) {
        let length = form.replace('F', &feet.to_string()).replace('I', &inches.to_string()).replace('P', part);
        let line = format!("west {length}");
        let meant = format!("west{feet}'{inches}{part}\"");
        let offered = suggested("level \"G\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\n", &line, "");
        prop_assert!(!offered.is_empty(), "{line}");
        for one in offered {
            let plain: String = one.replace(" ft ", "'").chars().filter(|c| !c.is_whitespace()).collect();
            prop_assert_eq!(&plain, &meant, "{} -> {}", line, one);
        }
    }

    /// A wall that stands on a side of the house is walked along it, never toward it.
    #[test]
    fn a_wall_on_a_side_of_the_house_is_walked_along_that_side(
        feet in 13_u32..60,
        side in prop::sample::select(vec!["north", "east", "south", "west"]),
        form in prop::sample::select(vec![
            "L up the W side", "L along the W side", "along the W wall L", "L on the W side of the house", "on the W side, L", "L down the W wall",
        ]),
    ) {
        let line = form.replace('L', &format!("{feet}' 4\"")).replace('W', side);
        let offered = suggested("level \"G\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\n", &line, "");
        prop_assert!(offered != [line.clone()]);
        let upright = |way: &str| matches!(way, "north" | "south");
        for one in offered {
            let way = one.split(' ').next().unwrap_or_default();
            prop_assert!(upright(way) != upright(side), "{line} -> {one}");
            prop_assert!(one.contains(&format!("{feet}' 4\"")), "{line} -> {one}");
        }
    }
}
