//! What is printed held against what follows from the sides, letter by letter; blanks do not count.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use serde::Serialize;
use similar::{Algorithm, DiffOp, capture_diff_slices_deadline};

use crate::pages::Pages;
use crate::verify::{Printed, PrintedText};

/// A printed text that does not follow from the sides.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Mismatch {
    /// As it is printed; empty where nothing is.
    pub printed: String,
    /// As it follows from the sides; empty where nothing does.
    pub figured: String,
    /// The text is right and stands where another should.
    pub is_moved: bool,
}

/// What came of one page.
#[derive(Clone, Debug, Serialize)]
pub struct PageCheck {
    number: usize,
    title: String,
    texts: usize,
    figures: usize,
    mismatches: Vec<Mismatch>,
}

impl PageCheck {
    /// Its number, from 1.
    pub fn number(&self) -> usize {
        self.number
    }

    /// What page it is.
    pub fn title(&self) -> &str {
        &self.title
    }

    /// How many texts follow from the sides for this page.
    pub fn texts(&self) -> usize {
        self.texts
    }

    /// How many numbers are in them.
    pub fn figures(&self) -> usize {
        self.figures
    }

    /// What does not hold.
    pub fn mismatches(&self) -> &[Mismatch] {
        &self.mismatches
    }
}

/// Holds one printed page against the same page worked out again.
pub(super) fn check(pages: &Pages, printed: &Printed) -> PageCheck {
    let page = printed.number.checked_sub(1).and_then(|i| pages.pages().get(i));
    let Some(page) = page else {
        let figured = format!("there are {} pages", pages.pages().len());
        let mismatch =
            Mismatch { printed: format!("page {}", printed.number), figured, is_moved: false };
        return PageCheck {
            number: printed.number,
            title: String::new(),
            texts: 0,
            figures: 0,
            mismatches: vec![mismatch],
        };
    };
    let figured: Vec<PrintedText> = page
        .texts()
        .map(|text| PrintedText {
            words: text.words().to_owned(),
            place: Some((text.at.x_pt, text.at.y_pt)),
        })
        .collect();
    let mut mismatches = differing(&figured, &printed.texts);
    if mismatches.is_empty() {
        mismatches = moved(&figured, &printed.texts);
    }
    PageCheck {
        number: printed.number,
        title: page.title().to_owned(),
        texts: figured.len(),
        figures: figured.iter().map(|text| numbers(&text.words)).sum(),
        mismatches,
    }
}

/// How many numbers a text has: runs of digits with their commas and points.
fn numbers(words: &str) -> usize {
    let mut count = 0;
    let mut inside = false;
    for letter in words.chars() {
        let is_part = letter.is_ascii_digit() || inside && matches!(letter, ',' | '.');
        count += usize::from(is_part && !inside);
        inside = is_part;
    }
    count
}

/// The texts whose letters differ, in the order of the page.
fn differing(figured: &[PrintedText], printed: &[PrintedText]) -> Vec<Mismatch> {
    let (ours, owner) = letters(figured);
    let (theirs, _) = letters(printed);
    if ours == theirs {
        return Vec::new();
    }
    let deadline = std::time::Instant::now() + std::time::Duration::from_secs(5);
    let ops = capture_diff_slices_deadline(Algorithm::Myers, &ours, &theirs, Some(deadline));
    let spaced = spaced(printed);
    let mut found = vec![String::new(); figured.len().max(1)];
    let owner_of =
        |at: usize| owner.get(at.min(owner.len().saturating_sub(1))).copied().unwrap_or(0);
    let mut differs = vec![false; found.len()];
    for op in ops {
        let (old, new) = (op.old_range(), op.new_range());
        if let DiffOp::Equal { .. } = op {
            for (i, k) in old.zip(new) {
                found[owner_of(i)].push_str(&spaced[k]);
            }
            continue;
        }
        for i in old.clone() {
            differs[owner_of(i)] = true;
        }
        // What is printed instead belongs to the text that it stands in.
        let here = if old.is_empty() && old.start > 0 {
            owner_of(old.start - 1)
        } else {
            owner_of(old.start)
        };
        for k in new {
            found[here].push_str(&spaced[k]);
            differs[here] = true;
        }
    }
    let mismatch = |(i, text): (usize, &String)| Mismatch {
        printed: text.trim().to_owned(),
        figured: figured.get(i).map(|text| text.words.clone()).unwrap_or_default(),
        is_moved: false,
    };
    found.iter().enumerate().filter(|(i, _)| differs[*i]).map(mismatch).collect()
}

/// The letters of all texts without blanks, and which text each is of.
fn letters(texts: &[PrintedText]) -> (Vec<char>, Vec<usize>) {
    let each = texts.iter().enumerate().flat_map(|(i, text)| {
        text.words.chars().filter(|letter| !letter.is_whitespace()).map(move |letter| (letter, i))
    });
    each.unzip()
}

/// Each letter that is no blank, with the blank before it.
fn spaced(texts: &[PrintedText]) -> Vec<String> {
    let mut all = Vec::new();
    for (i, text) in texts.iter().enumerate() {
        // Where one text ends and the next begins there is a blank too.
        let mut blank = i > 0;
        for letter in text.words.chars() {
            if letter.is_whitespace() {
                blank = blank || letter != '\n';
                continue;
            }
            all.push(if blank { format!(" {letter}") } else { letter.to_string() });
            blank = false;
        }
    }
    all
}

/// Texts that stand elsewhere than they should, where nearly all stand as they should: a page that another
/// program has saved may give every place in another way, and is not held to them.
fn moved(figured: &[PrintedText], printed: &[PrintedText]) -> Vec<Mismatch> {
    const NEAR_PT: f64 = 0.05;
    if figured.len() != printed.len() {
        return Vec::new();
    }
    let stands = |(ours, theirs): &(&PrintedText, &PrintedText)| match (ours.place, theirs.place) {
        (Some(a), Some(b)) => (a.0 - b.0).abs() <= NEAR_PT && (a.1 - b.1).abs() <= NEAR_PT,
        _ => false,
    };
    let pairs: Vec<(&PrintedText, &PrintedText)> = figured.iter().zip(printed).collect();
    let right = pairs.iter().filter(|pair| stands(pair)).count();
    if 10 * right < 8 * pairs.len() {
        return Vec::new();
    }
    pairs
        .iter()
        .filter(|pair| !stands(pair))
        .map(|(ours, theirs)| Mismatch {
            printed: theirs.words.trim().to_owned(),
            figured: ours.words.clone(),
            is_moved: true,
        })
        .collect()
}
