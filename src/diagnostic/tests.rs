#![expect(clippy::unwrap_used, clippy::panic, reason = "a test that cannot go on has failed")]

use regex_syntax::hir::{Class, HirKind};

/// The general categories and Default_Ignorable_Code_Point as a library of regular expressions has them.
#[test]
fn what_is_hidden_is_what_the_tables_of_unicode_say() {
    const CLASS: &str = r"[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}\x{2800}]";
    let class = regex_syntax::parse(CLASS).unwrap().into_kind();
    let HirKind::Class(Class::Unicode(class)) = class else { panic!("{class:?}") };
    let ranges: Vec<_> = class.ranges().iter().map(|range| range.start()..=range.end()).collect();
    assert!(ranges.len() > 20, "{}", ranges.len());
    for character in '\0'..=char::MAX {
        let is_there = ranges.iter().any(|range| range.contains(&character));
        assert_eq!(super::is_hidden(character), is_there, "{character:?}");
    }
}

#[test]
fn a_date_is_not_broken_over_two_lines() {
    let text = "the day was 2026-05-02, and the whole-foot rule";
    for columns in 12..30 {
        let filled = super::words::filled(text, columns);
        assert!(filled.lines().any(|line| line.contains("2026-05-02")), "{columns}: {filled}");
    }
    assert_eq!(super::words::filled("whole-foot", 6), "whole-\nfoot");
}
