//! The sections of the pages, and which of them are made.

use crate::pages::Paper;

/// A section of the pages; the variants are in order.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, strum::IntoStaticStr, strum::VariantArray,
)]
#[strum(serialize_all = "kebab-case")]
#[cfg_attr(feature = "cli", derive(clap::ValueEnum))]
pub enum Section {
    /// The main page.
    Exhibit,
    /// Further levels and the lots.
    Levels,
    /// The record's own sketch, or a plan, beside the house as measured.
    SideBySide,
    /// Every number traced, every area piece by piece, the method, and a line to sign.
    Calculations,
    /// The steps to all figures except the first.
    OtherFigures,
    /// The pictures that the file names, wall by wall; made if they are supplied.
    Photographs,
    /// The sides file, word for word.
    Source,
    /// What the gap is worth, numbered separately.
    Supplement,
    /// Questions for the office; made only on request.
    Request,
}

impl Section {
    /// All sections.
    pub const ALL: &'static [Section] = <Section as strum::VariantArray>::VARIANTS;

    /// The sections made by default, in order.
    pub const USUAL: [Section; 8] = [
        Section::Exhibit,
        Section::Levels,
        Section::SideBySide,
        Section::Calculations,
        Section::OtherFigures,
        Section::Photographs,
        Section::Source,
        Section::Supplement,
    ];

    /// Its word after `--only`.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.into()
    }

    /// The section with this word; `None` for any other word.
    #[must_use]
    pub fn of(word: &str) -> Option<Section> {
        Section::ALL.iter().copied().find(|section| section.word() == word)
    }

    const fn bit(self) -> u16 {
        1 << self as u16
    }
}

/// A set of sections.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sections(u16);

impl Default for Sections {
    /// All except those that are made only on request.
    fn default() -> Sections {
        Sections::of(Section::USUAL)
    }
}

impl Sections {
    /// These sections and no others.
    pub fn of(sections: impl IntoIterator<Item = Section>) -> Sections {
        Sections(sections.into_iter().fold(0, |bits, section| bits | section.bit()))
    }

    /// These sections without one of them.
    pub(crate) fn without(self, section: Section) -> Sections {
        Sections(self.0 & !section.bit())
    }

    /// Whether a section is included.
    #[must_use]
    pub fn has(self, section: Section) -> bool {
        self.0 & section.bit() != 0
    }

    /// `all`, or the words of the sections, separated by commas.
    pub(crate) fn words(self) -> String {
        if self == Sections::default() {
            return "all".to_owned();
        }
        let chosen = Section::ALL.iter().copied().filter(|&section| self.has(section));
        chosen.map(Section::word).collect::<Vec<_>>().join(",")
    }

    /// Reads the sections from their words; `None` if a word is not a section.
    pub(crate) fn read(words: &str) -> Option<Sections> {
        if words == "all" {
            return Some(Sections::default());
        }
        let sections: Option<Vec<Section>> = words.split(',').map(Section::of).collect();
        sections.map(Sections::of)
    }
}

/// How pages are made.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct PageOptions {
    /// The paper they are printed on.
    pub paper: Paper,
    /// Which sections are made.
    pub only: Sections,
    /// Whether comments, values, rates, sales, notes and pictures are left out, even of the sides file inside the
    /// pages.
    pub private: bool,
}

impl From<Paper> for PageOptions {
    fn from(paper: Paper) -> PageOptions {
        PageOptions { paper, ..PageOptions::default() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_of_sections_are_read_back() {
        let some = Sections::of([Section::Calculations, Section::Exhibit]);
        assert_eq!(some.words(), "exhibit,calculations");
        assert_eq!(Sections::read("exhibit,calculations"), Some(some));
        assert_eq!(Sections::read("all"), Some(Sections::default()));
        assert_eq!(Sections::read("exhibit,"), None);
        assert_eq!(Sections::read("request").map(Sections::words).as_deref(), Some("request"));
        assert!(!Sections::default().has(Section::Request));
        assert!(some.has(Section::Exhibit) && !some.has(Section::Source));
    }
}
