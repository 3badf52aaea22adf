//! The pages: a drawing to scale with its calculations and its source, made to be checked by a stranger.
//!
//! Everything on a page is placed in points ([`Page`]). SVG is the original; PDF and PNG are made from it. The
//! sides file is stored inside, so that [`verify`](crate::verify) can compute everything again.
//!
//! ```
//! use fairfoot::{Paper, Settings, Weights};
//!
//! let text = "level \"Ground floor\"\nliving \"Shed\"\nnorth 8'\neast 12'\nsouth 8'\nwest 12'";
//! let house = fairfoot::read("shed.sides", text)?;
//! let result = house.areas(&Settings::default())?.reconcile(&Weights::default())?;
//! let pages = result.pages(Paper::Letter)?;
//! // The largest standard scale: 1/4 in on paper for a foot.
//! assert_eq!(pages.pages()[0].scale_pt_per_ft(), Some(18.0));
//! assert!(pages.svg()[0].contains("Measured 96 sq ft."));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod abreast;
mod blocks;
mod calculations;
mod chart;
mod draft;
pub(crate) mod drawing;
mod exhibit;
pub(crate) mod export;
pub(crate) mod fonts;
mod form;
mod heard;
mod layout;
mod levels;
mod lot;
mod making;
mod others;
pub(crate) mod page;
mod photographs;
pub(crate) mod pictures;
mod pieces;
mod private;
mod request;
mod sections;
mod side_by_side;
mod side_table;
mod source;
mod worth;

use crate::areas::rule::Settings;
use crate::diagnostic::sha256;
use crate::diagnostic::{Diagnostic, Source, Span, Word};
use crate::error::Error;
use crate::house::{House, Place};
use crate::reconcile::Reconciliation;
use crate::units::length::Form;
use crate::value::AsOf;
use crate::wording::sentences::Sentences;
pub use draft::draft;
pub use form::form;
use layout::Flow;
pub(crate) use making::Making;
pub use making::fingerprint;
pub use page::{Page, Part, Point, Text};
pub use pictures::{MOST_FILE_BYTES, MOST_MEGAPIXELS, Pictures};
pub use sections::{PageOptions, Section, Sections};

/// The most pages a house may have.
pub const MOST_PAGES: usize = 100;
/// The number of sides from which a file's pages are counted before they are drawn.
const MANY_SIDES: usize = 250;

/// The paper the pages are printed on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, strum::IntoStaticStr)]
#[strum(serialize_all = "kebab-case")]
#[cfg_attr(feature = "cli", derive(clap::ValueEnum))]
pub enum Paper {
    /// US Letter, 8 1/2 by 11 in.
    #[default]
    Letter,
    /// ISO A4, 210 by 297 mm.
    A4,
}

impl Paper {
    /// Width and height in points, in portrait orientation.
    #[must_use]
    pub const fn size_pt(self) -> (f64, f64) {
        match self {
            Paper::Letter => (612.0, 792.0),
            Paper::A4 => (595.276, 841.89),
        }
    }

    /// The paper used for a house unless another is asked for: A4 if its lengths are metric and the file names no
    /// place that has rules (all of these are American); else US Letter.
    #[must_use]
    pub fn usual_for(house: &House) -> Paper {
        let is_american = house.values.place.is_some_and(|place| place != Place::None);
        Paper::of_form(house.usual_form(), is_american)
    }

    /// The paper used for a draft of a text unless another is asked for, chosen as by [`Paper::usual_for`].
    #[must_use]
    pub fn usual_for_draft(source: &Source) -> Paper {
        let sketch = crate::sketch::read(source).sketch;
        let is_american = sketch.values.place.is_some_and(|place| place != Place::None);
        let spaces = sketch.levels.iter().flat_map(|level| &level.spaces).chain(&sketch.lots);
        let sides = spaces.flat_map(|space| space.walk.sides.iter()).map(|side| &side.run);
        Paper::of_form(crate::sketch::statement::usual_form(sides), is_american)
    }

    fn of_form(form: Form, is_american: bool) -> Paper {
        match form {
            Form::Meters | Form::Centimeters | Form::Millimeters if !is_american => Paper::A4,
            _ => Paper::Letter,
        }
    }

    /// Its name.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.into()
    }
}

/// The pages of a house.
#[derive(Clone, Debug)]
pub struct Pages {
    pages: Vec<Page>,
    text: String,
    making: Making,
    /// The marks that identify the photographs, in the order of their files; empty if none are shown.
    photographs: Vec<String>,
    warnings: Vec<Diagnostic>,
    title: String,
}

impl Reconciliation {
    /// Draws the pages: the Exhibit, further levels and lots, the record's own sketch beside the house, the
    /// Calculations, other figures, the Source, and separately numbered, what the gap is worth if the file gives
    /// values. Passing a [`Paper`] alone asks for all of them.
    ///
    /// # Errors
    ///
    /// [`Error::TooManyPages`] if the file would fill more than [`MOST_PAGES`], [`Error::NoPages`] if the chosen
    /// sections have nothing to show.
    pub fn pages(&self, options: impl Into<PageOptions>) -> Result<Pages, Error> {
        self.pages_with(options, &Pictures::default())
    }

    /// The pages with the pictures that the file names, as [`Pictures::read`] reads them. There are no photographs
    /// without pictures, or if private parts are left out.
    ///
    /// # Errors
    ///
    /// As [`Reconciliation::pages`].
    pub fn pages_with(
        &self,
        options: impl Into<PageOptions>,
        pictures: &Pictures,
    ) -> Result<Pages, Error> {
        let mut options = options.into();
        if options.private {
            return Pages::of(&private::without_private(self)?, options, &Shown::default());
        }
        let files = pictures::files(self.house());
        let marks = files.iter().filter_map(|file| pictures.of_file(file));
        let shown = Shown {
            marks: marks.map(|picture| picture.mark().to_owned()).collect(),
            pictures: pictures.clone(),
        };
        if shown.marks.is_empty() && !files.is_empty() {
            options.only = options.only.without(Section::Photographs);
        }
        Pages::of(self, options, &shown)
    }
}

/// The photographs of a set of pages, and the marks that identify each.
#[derive(Clone, Debug, Default)]
pub(crate) struct Shown {
    pub(crate) pictures: Pictures,
    pub(crate) marks: Vec<String>,
}

impl Pages {
    /// The pages with these photographs; the places of unknown ones stay empty.
    pub(crate) fn of(
        reconciliation: &Reconciliation,
        options: PageOptions,
        shown: &Shown,
    ) -> Result<Pages, Error> {
        let house = reconciliation.house();
        let settings = *reconciliation.settings();
        let say = Sentences::for_the_office(reconciliation.areas());
        let text = house.source().text();
        let new_flow = || {
            Flow::new(
                options.paper,
                &say.place(),
                &say.numbers(),
                &sha256(text),
                &fingerprint(text, &settings),
            )
        };
        let few_enough = |flow: &Flow| match flow.pages.len() {
            pages if pages > MOST_PAGES => Err(Error::TooManyPages { pages, most: MOST_PAGES }),
            _ => Ok(()),
        };
        // Drawing a large file takes seconds, so its tables and its text are counted first.
        if side_count(house) > MANY_SIDES {
            let mut tables = new_flow();
            in_tables(&mut tables, &say, reconciliation, options);
            few_enough(&tables)?;
        }
        let flow = filled(new_flow(), &say, reconciliation, options, &shown.pictures);
        few_enough(&flow)?;
        let pages = flow.finish();
        if pages.is_empty() {
            return Err(Error::NoPages);
        }
        let warnings = missing_letters(house.source());
        let title = title(&say, reconciliation);
        let making = Making { settings, options, draft: false };
        let photographs = match options.only.has(Section::Photographs) {
            true => shown.marks.clone(),
            false => Vec::new(),
        };
        Ok(Pages { pages, text: text.to_owned(), making, photographs, warnings, title })
    }

    /// How the pages were made, as stored inside them: a name and a word for each setting.
    pub(crate) fn words(&self) -> Vec<(&'static str, String)> {
        let mut words = self.making.words();
        if !self.photographs.is_empty() {
            words.push(("photographs", self.photographs.join(",")));
        }
        words
    }

    /// The words in one line, after the program and its version.
    pub(crate) fn line(&self) -> String {
        let words: Vec<String> =
            self.words().into_iter().map(|(name, word)| format!("{name}={word}")).collect();
        format!("fairfoot {} {}", env!("CARGO_PKG_VERSION"), words.join(" "))
    }

    /// The pages in their order.
    #[must_use]
    pub fn pages(&self) -> &[Page] {
        &self.pages
    }

    /// The number of pages before the supplement, which does not have to be handed in.
    #[must_use]
    pub fn before_supplement(&self) -> usize {
        self.pages.iter().filter(|page| !page.apart).count()
    }

    /// Warnings for letters that the pages cannot show, each at its first occurrence.
    #[must_use]
    pub fn warnings(&self) -> &[Diagnostic] {
        &self.warnings
    }

    /// The short fingerprint on the foot of every page.
    #[must_use]
    pub fn fingerprint(&self) -> String {
        fingerprint(&self.text, &self.making.settings)
    }

    /// Whether they are a draft: the sides as typed, without any area.
    #[must_use]
    pub fn is_draft(&self) -> bool {
        self.making.draft
    }

    /// The settings that differ from the default, in words.
    #[must_use]
    pub fn unusual_settings(&self) -> Vec<String> {
        let usual = Making { settings: Settings::default(), ..self.making }.words();
        let unusual = self.making.words().into_iter().filter(|word| !usual.contains(word));
        unusual.map(|(name, word)| format!("{name}={word}")).collect()
    }

    /// Each page as a separate SVG, with the sides file inside.
    #[must_use]
    pub fn svg(&self) -> Vec<String> {
        self.pages.iter().enumerate().map(|(i, page)| export::svg::written(self, page, i)).collect()
    }

    /// One page as SVG, by its number from 1; `None` if there is no such page.
    #[must_use]
    pub fn svg_of(&self, number: usize) -> Option<String> {
        let i = number.checked_sub(1)?;
        self.pages.get(i).map(|page| export::svg::written(self, page, i))
    }

    /// The sides file stored inside.
    #[must_use]
    pub fn sides(&self) -> &str {
        &self.text
    }

    /// All pages as one PDF, with the sides file attached.
    ///
    /// # Errors
    ///
    /// [`Error::Drawing`] if a page cannot be made, which is a bug in fairfoot.
    pub fn pdf(&self) -> Result<Vec<u8>, Error> {
        export::pdf::written(self)
    }

    /// Each page as a PNG at 150 dots per inch.
    ///
    /// # Errors
    ///
    /// [`Error::Drawing`] if a page cannot be made, which is a bug in fairfoot.
    pub fn png(&self) -> Result<Vec<Vec<u8>>, Error> {
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        let share = self.pages.len().div_ceil(cores).max(1);
        if share >= self.pages.len() {
            return rendered(&self.pages);
        }
        // Each core gets a run of pages, and holds one page at a time.
        std::thread::scope(|scope| {
            let runs = self.pages.chunks(share).map(|pages| scope.spawn(move || rendered(pages)));
            let runs: Vec<_> = runs.collect();
            let mut all = Vec::with_capacity(self.pages.len());
            for run in runs {
                let pages = run.join().map_err(|_| Error::Drawing("a page failed".to_owned()))?;
                all.extend(pages?);
            }
            Ok(all)
        })
    }

    /// The title of the whole document: the location of the house, and the statement about the first figure.
    pub(crate) fn title(&self) -> String {
        self.title.clone()
    }
}

/// Parses each page as SVG for rendering, one at a time, since a parsed page takes a few megabytes.
pub(crate) fn trees(pages: &[Page]) -> impl Iterator<Item = Result<usvg::Tree, Error>> + '_ {
    let options =
        usvg::Options { fontdb: std::sync::Arc::new(fonts::fonts()), ..usvg::Options::default() };
    let tree = move |page: &Page| {
        let text = export::svg::plain(page);
        usvg::Tree::from_str(&text, &options).map_err(|error| Error::Drawing(error.to_string()))
    };
    pages.iter().map(tree)
}

/// These pages as PNG, one after the other.
fn rendered(pages: &[Page]) -> Result<Vec<Vec<u8>>, Error> {
    let drawn = trees(pages).zip(pages);
    drawn.map(|(tree, page)| export::png::written(&tree?, page)).collect()
}

fn title(say: &Sentences<'_>, reconciliation: &Reconciliation) -> String {
    let statement = say.statements(reconciliation.figures()).into_iter().next();
    let parts = [say.place(), statement.unwrap_or_default()];
    let parts: Vec<String> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    fonts::shown(&parts.join(": "))
}

/// How the text after the drawings is set.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Setting {
    /// How large letters are, relative to the usual.
    tight: f64,
    /// The Source begins a page.
    source_begins_page: bool,
}

impl Setting {
    const USUAL: Setting = Setting { tight: 1.0, source_begins_page: false };
    /// What is tried, in this order, if a last page would be nearly empty.
    const TRIED: [Setting; 4] = [
        Setting { tight: 0.96, source_begins_page: false },
        Setting { tight: 0.92, source_begins_page: false },
        Setting { tight: 0.88, source_begins_page: false },
        Setting { tight: 1.0, source_begins_page: true },
    ];
}

/// If less than this share of a last page is filled, other ways of setting it are tried.
const NEARLY_EMPTY: f64 = 0.4;
/// With more pages than this, a nearly empty last page matters little.
const FEW_PAGES: usize = 12;

/// Fills the requested sections: in the usual setting, or if that leaves a last page nearly empty, in the first one
/// that takes a page less, or else in the one that fills that page best.
fn filled(
    mut flow: Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    options: PageOptions,
    pictures: &Pictures,
) -> Flow {
    let moved = drawings(&mut flow, say, reconciliation, options);
    let set = |setting| {
        let mut flow = flow.clone();
        texts(&mut flow, say, reconciliation, options, pictures, &moved, setting);
        flow
    };
    let usual = set(Setting::USUAL);
    let emptiest = |flow: &Flow| {
        let (before, supplement) = flow.last_filled();
        before.min(supplement)
    };
    if emptiest(&usual) >= NEARLY_EMPTY || usual.pages.len() > FEW_PAGES || usual.pages.len() < 2 {
        return usual;
    }
    let mut best = usual;
    for setting in Setting::TRIED {
        let other = set(setting);
        if other.pages.len() < best.pages.len() {
            return other;
        }
        let is_fuller = emptiest(&other) > emptiest(&best);
        if setting.source_begins_page && other.pages.len() == best.pages.len() && is_fuller {
            best = other;
        }
    }
    best
}

/// Fills the sections with drawings; returns what did not fit on the Exhibit.
fn drawings(
    flow: &mut Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    options: PageOptions,
) -> exhibit::Moved {
    let house = say.house;
    let wants = |section| options.only.has(section);
    let marks = drawing::marks::Marks::of(say, reconciliation);
    let main = main_level(say);
    let mut shown: Vec<usize> = main.into_iter().collect();
    let mut moved = exhibit::Moved::default();
    if wants(Section::Exhibit) {
        let referred = exhibit::Referred {
            levels: wants(Section::Levels) && levels_with_spaces(house).len() > 1,
            others: wants(Section::OtherFigures) && reconciliation.figures().len() > 1,
        };
        moved = exhibit::exhibit(flow, say, reconciliation, &marks, main, referred);
        shown = moved.drawing.as_ref().map(levels::Drawn::levels).unwrap_or(shown);
    }
    if wants(Section::Levels) {
        let further = levels_with_spaces(house).into_iter().filter(|level| !shown.contains(level));
        levels::levels(flow, say, &marks, moved.drawing.as_ref(), further);
        for lot in &house.lots {
            lot::lot(flow, say, lot);
        }
    }
    if wants(Section::SideBySide) {
        side_by_side::side_by_side(flow, say, reconciliation);
    }
    moved
}

/// Fills the sections after the drawings.
fn texts(
    flow: &mut Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    options: PageOptions,
    pictures: &Pictures,
    moved: &exhibit::Moved,
    setting: Setting,
) {
    let wants = |section| options.only.has(section);
    flow.tighten(setting.tight);
    if wants(Section::Calculations) {
        calculations::calculations(flow, say, reconciliation, moved);
    }
    if wants(Section::OtherFigures) {
        others::others(flow, say, reconciliation);
    }
    if wants(Section::Request) {
        request::request(flow, say, reconciliation);
    }
    if wants(Section::Photographs) {
        photographs::photographs(flow, say, reconciliation, pictures);
    }
    if wants(Section::Source) {
        source::source(flow, say.house, options.private, setting.source_begins_page);
    }
    if wants(Section::Supplement)
        && let Some(worth) = reconciliation.worth(&AsOf::default())
    {
        flow.apart();
        worth::worth(flow, say, reconciliation, &worth, wants(Section::Source));
    }
}

/// Fills the sections of tables and of the file word for word. They take the same number of pages with or without the
/// drawings.
fn in_tables(
    flow: &mut Flow,
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    options: PageOptions,
) {
    if options.only.has(Section::Calculations) {
        calculations::calculations(flow, say, reconciliation, &exhibit::Moved::default());
    }
    if options.only.has(Section::Source) {
        source::source(flow, say.house, options.private, false);
    }
}

fn side_count(house: &House) -> usize {
    let spaces = house.spaces.iter().map(|space| space.sides.len());
    let lots = house.lots.iter().map(|lot| lot.sides().len());
    spaces.chain(lots).sum()
}

/// The levels that have a space, in file order.
fn levels_with_spaces(house: &House) -> Vec<usize> {
    let has_space = |&level: &usize| house.spaces.iter().any(|space| space.level == level);
    (0..house.levels.len()).filter(has_space).collect()
}

/// The level with the largest counted area; the first if several are equal.
fn main_level(say: &Sentences<'_>) -> Option<usize> {
    let house = say.house;
    let counted = |level: usize| -> crate::units::area::Area {
        let here = (0..house.spaces.len())
            .filter(|&i| house.spaces[i].level == level && house.spaces[i].counted);
        here.map(|i| say.areas.spaces[i].net_tenth_foot).sum()
    };
    levels_with_spaces(say.house).into_iter().rev().max_by_key(|&level| counted(level).half_nm2())
}

/// A warning for every letter that the fonts do not have, at its first occurrence.
fn missing_letters(source: &Source) -> Vec<Diagnostic> {
    let text = source.text();
    let missing = fonts::missing(text.trim_start_matches('\u{feff}'));
    let mut found: Vec<(usize, char)> =
        missing.into_iter().filter_map(|letter| text.find(letter).map(|at| (at, letter))).collect();
    found.sort_unstable();
    let warning = |(at, letter): (usize, char)| {
        let span = Span::new(at, at + letter.len_utf8());
        let message = format!(
            "the pages have no letter for `{letter}` ({}); {} stands for it",
            letter.escape_unicode(),
            fonts::SUBSTITUTE
        );
        Diagnostic::new(Word::LetterNotShown, span, message)
            .help("Latin, Greek and Cyrillic letters are shown; write it with those")
    };
    found.into_iter().map(warning).collect()
}
