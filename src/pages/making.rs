//! How a set of pages was made, which is stored inside them, and the short fingerprint on their foot.

use sha2::{Digest, Sha256};

use crate::areas::rule::Settings;
use crate::pages::Paper;
use crate::pages::sections::{PageOptions, Sections};
use crate::units::length::{FineStep, Halves, Length, Step};

/// The characters of a fingerprint. None can be mistaken for another, and without vowels they form no words.
const ALPHABET: &[u8; 20] = b"34679CDFHJKMNPRTVWXY";
/// A fingerprint has two groups of this many characters.
const GROUP: usize = 5;

/// Everything apart from the sides file that determines the bytes of the pages.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Making {
    pub(crate) settings: Settings,
    pub(crate) options: PageOptions,
    /// Whether it is a draft: the sides as typed, whether or not they close.
    pub(crate) draft: bool,
}

impl Making {
    /// The settings as stored in the pages: a name and a word for each. [`Making::read`] is the inverse.
    pub(crate) fn words(self) -> Vec<(&'static str, String)> {
        let mut words = setting_words(&self.settings);
        let PageOptions { paper, only, private } = self.options;
        words.push(("paper", paper.word().to_owned()));
        words.push(("only", only.words()));
        words.push(("private", if private { "yes" } else { "no" }.to_owned()));
        if self.draft {
            words.push(("draft", "yes".to_owned()));
        }
        words
    }

    /// Reads the settings back from their words; `None` if one is missing, unknown or out of bounds.
    pub(crate) fn read(word: impl Fn(&str) -> Option<String>) -> Option<Making> {
        let halves = match word("halves")?.as_str() {
            "up" => Halves::Up,
            "down" => Halves::Down,
            "even" => Halves::Even,
            _ => return None,
        };
        let fine = match word("step")?.as_str() {
            "tenth-foot" => FineStep::TenthFoot,
            "inch" => FineStep::Inch,
            _ => return None,
        };
        let paper = match word("paper")?.as_str() {
            "letter" => Paper::Letter,
            "a4" => Paper::A4,
            _ => return None,
        };
        let only = Sections::read(&word("only")?)?;
        let private = match word("private")?.as_str() {
            "yes" => true,
            "no" => false,
            _ => return None,
        };
        let reading: i64 = word("reading-nm")?.parse().ok()?;
        let most = Step::HalfFoot.length().nm();
        let reading = Length::from_nm((0..=most).contains(&reading).then_some(reading)?);
        let draft = match word("draft").as_deref() {
            None => false,
            Some("yes") => true,
            Some(_) => return None,
        };
        let options = PageOptions { paper, only, private };
        Some(Making { settings: Settings { halves, fine, reading }, options, draft })
    }
}

/// The settings as words.
fn setting_words(settings: &Settings) -> Vec<(&'static str, String)> {
    let halves = match settings.halves {
        Halves::Up => "up",
        Halves::Down => "down",
        Halves::Even => "even",
    };
    vec![
        ("halves", halves.to_owned()),
        ("step", settings.fine.word().to_owned()),
        ("reading-nm", settings.reading.nm().to_string()),
    ]
}

/// The fingerprint of a set of pages: ten characters in two groups, such as `CDKM4 7HPRT`.
///
/// It depends on the sides file, the settings and the version of the program, so it shows whether a printed page
/// belongs to a sides file. Line ends and a byte-order mark are ignored, because mail changes them. Its 43 bits
/// detect a mix-up, or a change nobody tried to hide. Against someone who makes two files with the same fingerprint
/// on purpose, compare the SHA-256 beside it.
///
/// ```
/// use fairfoot::Settings;
/// use fairfoot::pages::fingerprint;
///
/// let print = fingerprint("level \"Ground floor\"\n", &Settings::default());
/// assert_eq!(print.len(), 11);
/// assert_eq!(print, fingerprint("level \"Ground floor\"\r\n", &Settings::default()));
/// assert_ne!(print, fingerprint("level \"Ground floor.\"\n", &Settings::default()));
/// ```
#[must_use]
pub fn fingerprint(sides: &str, settings: &Settings) -> String {
    let mut hash = Sha256::new();
    hash.update("fairfoot fingerprint ");
    hash.update(env!("CARGO_PKG_VERSION"));
    for (name, word) in setting_words(settings) {
        hash.update(format!(" {name}={word}"));
    }
    hash.update("\n");
    hash.update(sides.trim_start_matches('\u{feff}').replace("\r\n", "\n"));
    characters(&hash.finalize())
}

/// The first 64 bits of a hash as ten characters of the alphabet; the rest is dropped.
fn characters(hash: &[u8]) -> String {
    let mut number = hash.iter().take(8).fold(0_u64, |number, &byte| number << 8 | u64::from(byte));
    let mut text = String::with_capacity(2 * GROUP + 1);
    for place in 0..2 * GROUP {
        if place == GROUP {
            text.push(' ');
        }
        let digit = usize::try_from(number % 20).unwrap_or(0);
        text.push(char::from(ALPHABET[digit]));
        number /= 20;
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pages::sections::Section;

    #[test]
    fn a_fingerprint_is_ten_characters_in_two_groups() {
        assert_eq!(characters(&[0; 32]), "33333 33333");
        // 2^63 in base 20, lowest digit first, computed with Python's integers.
        assert_eq!(characters(&[0x80, 0, 0, 0, 0, 0, 0, 0]), "HKYD6 WT7KX");
    }

    #[test]
    fn settings_change_a_fingerprint_and_line_ends_do_not() {
        let usual = Settings::default();
        let print = |text: &str, settings: &Settings| fingerprint(text, settings);
        assert_eq!(print("a\nb\n", &usual), print("\u{feff}a\r\nb\r\n", &usual));
        assert_ne!(print("a\nb\n", &usual), print("a\nb", &usual));
        let down = Settings { halves: Halves::Down, ..usual };
        assert_ne!(print("a\n", &usual), print("a\n", &down));
    }

    #[test]
    fn what_was_written_is_read_back() {
        for making in [
            Making::default(),
            Making {
                settings: Settings {
                    halves: Halves::Even,
                    fine: FineStep::Inch,
                    reading: Length::from_nm(0),
                },
                options: PageOptions {
                    paper: Paper::A4,
                    only: Sections::of([Section::Exhibit]),
                    private: true,
                },
                draft: false,
            },
            Making { draft: true, ..Making::default() },
        ] {
            let words = making.words();
            let word = |name: &str| {
                words.iter().find(|(other, _)| *other == name).map(|(_, word)| word.clone())
            };
            assert_eq!(Making::read(word), Some(making));
        }
    }
}
