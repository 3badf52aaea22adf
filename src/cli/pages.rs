//! `fairfoot pages`: writes the pages of a house as SVG, PDF or PNG.

use std::path::{Path, PathBuf};

use clap::Args;
use fairfoot::pages::{PageOptions, Pictures, Section, Sections};
use fairfoot::{House, Paper, Reconciliation, Weights};

use crate::cli::{Outcome, RoundingOptions, Stop, files};

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// The sides file; `-` reads standard input
    file: PathBuf,
    /// Where the pages go: `.pdf` (all pages), `.svg` or `.png` (one file a page, numbered); without it, the name of FILE with `.pdf`
    #[arg(short, long, value_name = "OUT")]
    out: Option<PathBuf>,
    /// The walks as they were typed, to scale, whether or not they close, a page for each level: the gap dashed, the walls to measure again marked, no area
    #[arg(long, conflicts_with = "only")]
    draft: bool,
    #[command(flatten)]
    printing: PagePrinting,
    #[command(flatten)]
    rounding: RoundingOptions,
}

/// How pages are made and printed.
#[derive(Clone, Debug, Args)]
pub(crate) struct PagePrinting {
    /// The paper the pages are made for; by default US Letter, or A4 for a metric file that names no American place
    #[arg(long, value_enum, value_name = "PAPER")]
    paper: Option<Paper>,
    /// Make only these sections, with commas between them
    #[arg(long, value_name = "SECTIONS", value_delimiter = ',', value_enum)]
    only: Vec<Section>,
    /// Leave out comments, values, rates, sales, notes and photographs, of the sides file inside the pages too
    #[arg(long)]
    private: bool,
}

impl PagePrinting {
    fn options(&self, usual: Paper) -> PageOptions {
        let only = match self.only[..] {
            [] => Sections::default(),
            ref some => Sections::of(some.iter().copied()),
        };
        PageOptions { paper: self.paper.unwrap_or(usual), only, private: self.private }
    }
}

/// The file format of the pages.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    Svg,
    Pdf,
    Png,
}

impl Kind {
    fn of(out: &Path) -> Result<Kind, Stop> {
        let ending = out.extension().map(|ending| ending.to_string_lossy().to_lowercase());
        match ending.as_deref() {
            Some("svg") => Ok(Kind::Svg),
            Some("pdf") => Ok(Kind::Pdf),
            Some("png") => Ok(Kind::Png),
            _ if out.is_dir() || out.as_os_str().to_string_lossy().ends_with('/') => {
                Err(Stop::Said(format!(
                    "{} is a folder; name a file in it that ends in `.pdf`, `.svg` or `.png`",
                    files::shown(out)
                )))
            }
            _ => Err(Stop::Said(format!(
                "{} does not say what kind of file to write; end it in `.pdf`, `.svg` or `.png`",
                files::shown(out)
            ))),
        }
    }
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    let out = match &options.out {
        Some(out) => out.clone(),
        None => beside(&options.file)?,
    };
    check_ending(&out)?;
    if options.draft {
        return draft(options, &out);
    }
    let areas = files::read_house(&options.file)?.areas(&options.rounding.settings())?;
    files::draw_warnings(&areas);
    let reconciliation = areas.reconcile(&Weights::default())?;
    if let Some(caution) = reconciliation.report().caution() {
        files::say(&caution);
    }
    write(&reconciliation, &options.printing, &out, &[&options.file])
}

/// Writes a draft. Errors in the file are reported but do not stop it.
fn draft(options: &Options, out: &Path) -> Result<Outcome, Stop> {
    let source = files::read_source(&options.file)?;
    if let Err(errors) = fairfoot::read_source(source.clone()) {
        files::draw(errors.source(), errors.list());
    }
    let pages = fairfoot::pages::draft(
        source.clone(),
        options.printing.options(Paper::usual_for_draft(&source)),
    )?;
    write_pages(&pages, out, &[&options.file])
}

/// The name of the sides file with the ending `.pdf`. Stops if a file of that name exists and is not pages.
fn beside(file: &Path) -> Result<PathBuf, Stop> {
    if file == Path::new("-") {
        return Err(Stop::Said(
            "say where the pages go, as `-o house.pdf`: standard input has no name".to_owned(),
        ));
    }
    let out = file.with_extension("pdf");
    let is_free = match std::fs::read(&out) {
        Ok(there) => fairfoot::verify::file(&there).is_ok(),
        Err(error) => error.kind() == std::io::ErrorKind::NotFound,
    };
    match is_free && out != file {
        true => Ok(out),
        false => Err(Stop::Said(format!(
            "{} is there already and is not pages of a house; say where the pages go, as `-o other.pdf`",
            files::shown(&out)
        ))),
    }
}

/// Stops early if the ending of the output does not determine its format.
pub(crate) fn check_ending(out: &Path) -> Result<(), Stop> {
    Kind::of(out).map(|_| ())
}

/// Writes the pages of a house, and says which files they went to.
pub(crate) fn write(
    reconciliation: &Reconciliation,
    printing: &PagePrinting,
    out: &Path,
    inputs: &[&Path],
) -> Result<Outcome, Stop> {
    let said = |error: fairfoot::Error| Stop::Said(error.to_string());
    let house = reconciliation.house();
    let options = printing.options(Paper::usual_for(house));
    let wants_pictures = options.only.has(Section::Photographs) && !options.private;
    let (pictures, taken) = match inputs.first().filter(|_| wants_pictures) {
        Some(sides) => pictures_of(house, sides)?,
        None => (Pictures::default(), Vec::new()),
    };
    let pages = reconciliation.pages_with(options, &pictures).map_err(said)?;
    if options.only.has(Section::Source) && !options.private && house.has_values() {
        files::say(
            "the Source prints values, rates and sales as the file has them; `--private` leaves them out",
        );
    }
    files::draw(house.source(), pages.warnings());
    let missing = reconciliation.without_photo();
    if !pictures.is_empty() && !missing.is_empty() {
        files::say(&format!("no photograph yet of {}", missing.join(", ")));
    }
    let inputs: Vec<&Path> =
        inputs.iter().copied().chain(taken.iter().map(PathBuf::as_path)).collect();
    write_pages(&pages, out, &inputs)
}

/// Reads the pictures that the file names, which are beside it; also returns their paths.
fn pictures_of(house: &House, sides: &Path) -> Result<(Pictures, Vec<PathBuf>), Stop> {
    let folder = sides.parent().unwrap_or(Path::new(""));
    let has_folder = sides != Path::new("-");
    let pictures = Pictures::read(house, |name| match has_folder {
        true => files::read_picture(&folder.join(name)),
        false => Err("cannot be looked for: standard input has no folder".to_owned()),
    });
    let paths = house.pictures().map(|picture| folder.join(picture.file())).collect();
    Ok((pictures.map_err(Stop::Pictures)?, paths))
}

/// Writes pages, and says which files they went to.
pub(crate) fn write_pages(
    pages: &fairfoot::Pages,
    out: &Path,
    inputs: &[&Path],
) -> Result<Outcome, Stop> {
    let said = |error: fairfoot::Error| Stop::Said(error.to_string());
    let written: Vec<Vec<u8>> = match Kind::of(out)? {
        Kind::Svg => pages.svg().into_iter().map(String::into_bytes).collect(),
        Kind::Pdf => vec![pages.pdf().map_err(said)?],
        Kind::Png => pages.png().map_err(said)?,
    };
    let names = names(out, written.len());
    files::refuse_overwriting_inputs(&names, inputs)?;
    files::write_set(&names, &written)?;
    let count = pages.pages().len();
    let noun = if count == 1 { "page" } else { "pages" };
    files::say(&match (names.first(), names.last()) {
        (Some(first), Some(last)) if first != last => {
            format!("{count} {noun}: {} to {}", files::shown(first), files::shown(last))
        }
        (Some(only), _) => format!("{count} {noun}: {}", files::shown(only)),
        _ => "no page".to_owned(),
    });
    let kept = pages.before_supplement();
    if kept > 0 && kept < count {
        files::say(&format!(
            "the supplement after page {kept} is for the owner alone (`--only` leaves it out)"
        ));
    }
    for old in older(out, &names) {
        files::say(&format!(
            "{} is from an earlier run and is not one of these pages",
            files::shown(&old)
        ));
    }
    Ok(Outcome::Done)
}

/// Pages left over from an earlier run: numbered files of the same name that are not among the new ones.
fn older(out: &Path, names: &[PathBuf]) -> Vec<PathBuf> {
    let stem = format!("{}-", out.file_stem().unwrap_or_default().to_string_lossy());
    let folder = out.parent().filter(|folder| !folder.as_os_str().is_empty());
    let Ok(entries) = std::fs::read_dir(folder.unwrap_or(Path::new("."))) else {
        return Vec::new();
    };
    let is_page = |path: &Path| {
        let name = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        let number = name.strip_prefix(&stem).unwrap_or_default();
        path.extension() == out.extension()
            && !number.is_empty()
            && number.bytes().all(|byte| byte.is_ascii_digit())
    };
    let is_new = |path: &Path| names.iter().any(|name| name.file_name() == path.file_name());
    let paths = entries.filter_map(Result::ok).map(|entry| entry.path());
    let mut old: Vec<PathBuf> = paths.filter(|path| is_page(path) && !is_new(path)).collect();
    old.sort();
    old
}

/// The name for one file; for several, numbered names such as `house-1.svg`, all with the same number of digits.
fn names(out: &Path, count: usize) -> Vec<PathBuf> {
    if count == 1 {
        return vec![out.to_owned()];
    }
    let figures = count.to_string().len();
    let stem = out.file_stem().unwrap_or_default().to_owned();
    let ending = out.extension().unwrap_or_default().to_owned();
    let name = |number: usize| {
        let mut name = stem.clone();
        name.push(format!("-{number:0figures$}."));
        name.push(&ending);
        out.with_file_name(name)
    };
    (1..=count).map(name).collect()
}
