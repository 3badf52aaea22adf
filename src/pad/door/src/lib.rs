//! The interface between the page in the browser and the library: bytes in, bytes out, without generated bindings.
//!
//! `input(n)` reserves n bytes for a request as JSON, a zero byte, and the file it is about. `run()` answers it and
//! returns the number of parts; `part(i)` and `part_len(i)` give their position and length. The first part is JSON;
//! the others are files.

use std::cell::RefCell;
use std::collections::BTreeMap;

use fairfoot::diagnostic::Diagnostic;
use fairfoot::pages::{self, Pictures};
use fairfoot::report::Look;
use fairfoot::sketch::Kind;
use fairfoot::sketch::rows::{Edit, Rows, edited, rows};
use fairfoot::verify::Why;
use fairfoot::wording::Block;
use fairfoot::wording::rows::{self as form, Part, Question, Said};
use fairfoot::{Diagnostics, Pages, Paper, Reconciliation, Settings, Source, Weights, verify};
use serde::{Deserialize, Serialize};

thread_local! {
    static INPUT: RefCell<Vec<u8>> = const { RefCell::new(Vec::new()) };
    static PARTS: RefCell<Vec<Vec<u8>>> = const { RefCell::new(Vec::new()) };
}

/// A request of the page.
#[derive(Deserialize)]
#[serde(tag = "ask", rename_all = "lowercase")]
enum Request {
    /// Everything a screen shows of a text, except its pages.
    Look { name: String, columns: usize },
    /// The JSON report, as the command line prints it.
    Json { name: String },
    /// The pages as SVG, or a draft if a walk does not close. The bytes of the pictures follow the text.
    Svg { name: String, a4: bool, pictures: Vec<(String, usize)> },
    /// The pages as PDF, or a draft if a walk does not close. The bytes of the pictures follow the text.
    Pdf { name: String, a4: bool, pictures: Vec<(String, usize)> },
    /// The text after an edit of a row.
    Edit { edit: Edit },
    /// Whether a page is genuine, and the sides file inside it.
    Verify,
    /// The text of an opened file: a sides file, or the one inside a page.
    Open { name: String },
}

/// What a screen shows of a text.
#[derive(Serialize)]
struct Shown {
    rows: Rows,
    notices: Vec<Notice>,
    /// The opening sentences, set largest.
    opening: Vec<Vec<Part>>,
    /// The measured area before any rounding, if that is another.
    unrounded: Option<String>,
    /// What most likely could explain each difference, and whether it is how a level was counted.
    likely: Vec<(Vec<Part>, bool)>,
    /// The report after them; `None` while there is an error.
    report: Option<String>,
    /// The paper that the command line would take; `None` while there is an error.
    paper: Option<&'static str>,
    /// The caution if a figure is smaller than the measured area.
    caution: Option<String>,
    /// The words for the kinds of spaces.
    kinds: Vec<&'static str>,
    /// What is asked about walks that just closed.
    questions: Vec<Question>,
    said: Said,
    /// What is said about the state of the walks, and what remains unchecked, with links to the rows.
    state: Vec<Part>,
    unchecked: Vec<Part>,
}

/// An error or warning, with its position in UTF-16 units, as JavaScript counts.
#[derive(Serialize)]
struct Notice {
    word: &'static str,
    is_error: bool,
    line: usize,
    from: usize,
    to: usize,
    message: String,
    helps: Vec<String>,
    /// Replacements that resolve this notice: start, end, and text.
    mends: Vec<(usize, usize, String)>,
    /// The same notice, as the rows show it.
    form: form::Notice,
}

/// The result for a page that someone sent.
#[derive(Serialize)]
struct Verified {
    is_genuine: bool,
    why: &'static str,
    sides: Option<String>,
    fingerprint: Option<String>,
    message: Option<String>,
}

#[unsafe(no_mangle)]
pub extern "C" fn input(length: usize) -> *mut u8 {
    INPUT.with_borrow_mut(|bytes| {
        bytes.clear();
        bytes.resize(length, 0);
        bytes.as_mut_ptr()
    })
}

#[unsafe(no_mangle)]
pub extern "C" fn part(index: usize) -> *const u8 {
    PARTS.with_borrow(|parts| parts.get(index).map_or(std::ptr::null(), |part| part.as_ptr()))
}

#[unsafe(no_mangle)]
pub extern "C" fn part_len(index: usize) -> usize {
    PARTS.with_borrow(|parts| parts.get(index).map_or(0, Vec::len))
}

/// Answers the request in the input.
#[unsafe(no_mangle)]
pub extern "C" fn run() -> usize {
    keep_what_a_panic_says();
    let mut request = INPUT.with_borrow_mut(std::mem::take);
    let end = request.iter().position(|&byte| byte == 0).unwrap_or(request.len());
    let file = request.split_off((end + 1).min(request.len()));
    request.truncate(end);
    let parts = match serde_json::from_slice(&request) {
        Ok(request) => answer(request, file),
        Err(error) => vec![failed(&error.to_string())],
    };
    let count = parts.len();
    PARTS.replace(parts);
    count
}

/// Keeps the message of a panic, which ends the module, as the first part, where the page reads it.
fn keep_what_a_panic_says() {
    static ONCE: std::sync::Once = std::sync::Once::new();
    ONCE.call_once(|| {
        std::panic::set_hook(Box::new(|info| {
            PARTS.replace(vec![failed(&info.to_string())]);
        }));
    });
}

fn failed(why: &str) -> Vec<u8> {
    json(&serde_json::json!({ "failed": why }))
}

fn json(value: &impl Serialize) -> Vec<u8> {
    serde_json::to_vec(value).unwrap_or_default()
}

fn answer(request: Request, file: Vec<u8>) -> Vec<Vec<u8>> {
    let text = |file: Vec<u8>| String::from_utf8_lossy(&file).into_owned();
    let paper = |a4: bool| if a4 { Paper::A4 } else { Paper::Letter };
    let result = match request {
        Request::Look { name, columns } => Ok(vec![json(&look(name, text(file), columns))]),
        Request::Json { name } => worked_out(&name, text(file))
            .map(|result| vec![report_as_json(&result)])
            .map_err(|errors| errors.drawn(false)),
        Request::Svg { name, a4, pictures } => made(&name, file, paper(a4), &pictures)
            .map(|made| vec![json(&made.with(made.pages.svg()))]),
        Request::Pdf { name, a4, pictures } => {
            made(&name, file, paper(a4), &pictures).and_then(|made| {
                let pdf = made.pages.pdf().map_err(|error| error.to_string())?;
                Ok(vec![json(&made.with(Vec::new())), pdf])
            })
        }
        Request::Edit { edit } => Ok(vec![json(&edited(&text(file), &edit))]),
        Request::Verify => Ok(vec![json(&verified(&file))]),
        Request::Open { name } => Ok(vec![json(&opened(name, file))]),
    };
    result.unwrap_or_else(|why| vec![failed(&why)])
}

/// Pages, or a draft of a text that has no area yet.
struct Made {
    pages: Pages,
    /// Pictures that the text names but that were not supplied; the pages then have no photographs.
    missing: Vec<String>,
}

/// What the request about pages returns: the pages themselves if they are SVG, and what is said about them.
#[derive(Serialize)]
struct Told<'a> {
    is_draft: bool,
    missing: &'a [String],
    svg: Vec<String>,
}

impl Made {
    fn with(&self, svg: Vec<String>) -> Told<'_> {
        Told { is_draft: self.pages.is_draft(), missing: &self.missing, svg }
    }
}

/// The pages of a file: its text, then its pictures, each with its name and length.
fn made(
    name: &str,
    mut file: Vec<u8>,
    paper: Paper,
    lengths: &[(String, usize)],
) -> Result<Made, String> {
    let all: usize = lengths.iter().map(|(_, length)| length).sum();
    let pictures = file.split_off(file.len().saturating_sub(all));
    let mut rest = pictures.as_slice();
    let mut by_name = BTreeMap::new();
    for (name, length) in lengths {
        let (bytes, after) = rest.split_at((*length).min(rest.len()));
        by_name.insert(name.as_str(), bytes);
        rest = after;
    }
    let text = String::from_utf8_lossy(&file).into_owned();
    let result = match worked_out(name, text.clone()) {
        Ok(result) => result,
        Err(_) => {
            let pages = pages::draft(Source::new(name, text), paper);
            let pages = pages.map_err(|errors| errors.drawn(false))?;
            return Ok(Made { pages, missing: Vec::new() });
        }
    };
    let named = result.house().pictures().map(|picture| picture.file());
    let mut missing: Vec<String> = Vec::new();
    for file in named.filter(|file| !by_name.contains_key(file)) {
        if !missing.iter().any(|named| named == file) {
            missing.push(file.to_owned());
        }
    }
    let pictures = if missing.is_empty() {
        let bytes = |file: &str| by_name.get(file).map(|bytes| bytes.to_vec());
        Pictures::read(result.house(), |file| bytes(file).ok_or_else(String::new))
            .map_err(|errors| errors.drawn(false))?
    } else {
        Pictures::default()
    };
    let pages = result.pages_with(paper, &pictures).map_err(|error| error.to_string())?;
    Ok(Made { pages, missing })
}

fn worked_out(name: &str, text: String) -> Result<Reconciliation, Diagnostics> {
    let house = fairfoot::read(name, text)?;
    house.areas(&Settings::default())?.reconcile(&Weights::default())
}

/// The bytes that the command line prints.
fn report_as_json(result: &Reconciliation) -> Vec<u8> {
    let mut text = serde_json::to_vec_pretty(&result.report().json()).unwrap_or_default();
    text.push(b'\n');
    text
}

fn look(name: String, text: String, columns: usize) -> Shown {
    let rows = rows(&text);
    let kinds = Kind::ALL.iter().copied().map(Kind::word).collect();
    match worked_out(&name, text.clone()) {
        Ok(result) => shown(rows, kinds, columns, &result),
        Err(errors) => Shown {
            notices: notices(errors.source(), errors.list(), &rows),
            questions: Vec::new(),
            state: form::linked(&rows, None, &form::said(&rows).state),
            unchecked: form::linked(&rows, None, &form::said(&rows).unchecked),
            said: form::said(&rows),
            rows,
            opening: Vec::new(),
            unrounded: None,
            likely: Vec::new(),
            report: None,
            paper: None,
            caution: None,
            kinds,
        },
    }
}

fn shown(rows: Rows, kinds: Vec<&'static str>, columns: usize, result: &Reconciliation) -> Shown {
    let report = result.report();
    let caution = report.caution();
    let look = Look { width: columns, ..Look::default() };
    // Every walk of a house closes, some only within the tolerances of their sides.
    let mut rows = rows;
    for walk in &mut rows.walks {
        walk.is_closed = !walk.rows.is_empty();
    }
    let notices = notices(result.house().source(), result.warnings(), &rows);
    let forms: Vec<form::Notice> = notices.iter().map(|one| one.form.clone()).collect();
    let missing = form::missing_walls(result.warnings(), &forms);
    let by_lines = report.missing_walls();
    let seen = |text: &str| form::seen_in_a_form(&rows, text);
    let linked = |text: String| form::linked(&rows, None, &seen(&text));
    let text = report.text_after_opening(look);
    Shown {
        notices,
        questions: form::questions(&rows),
        state: form::linked(&rows, None, &form::said(&rows).state),
        unchecked: form::linked(&rows, None, &form::said(&rows).unchecked),
        said: form::said(&rows),
        // The caution is shown separately, before them.
        opening: report
            .opening()
            .into_iter()
            .filter_map(sentence)
            .filter(|one| Some(one) != caution.as_ref() && !by_lines.contains(one))
            .map(linked)
            .chain(missing.into_iter().map(|text| form::linked(&rows, None, &text)))
            .collect(),
        unrounded: report.before_rounding(),
        likely: report.likely().into_iter().map(|(text, of)| (linked(text), of)).collect(),
        paper: Some(Paper::usual_for(result.house()).word()),
        report: Some(seen(text.trim_start_matches('\n'))),
        caution,
        kinds,
        rows,
    }
}

/// An error of the library, which quotes with grave accents, in a sentence for people.
fn in_the_form(rows: &Rows, error: &str) -> String {
    form::seen_in_a_form(rows, &error.replace('`', "\""))
}

fn sentence(block: Block) -> Option<String> {
    match block {
        Block::Statement(text) | Block::Paragraph(text) => Some(text),
        _ => None,
    }
}

/// The errors and warnings, with positions in UTF-16 units.
fn notices(source: &Source, list: &[Diagnostic], rows: &Rows) -> Vec<Notice> {
    const MOST: usize = 50;
    let text = source.text();
    let utf16 = |at: usize| text.get(..at).map_or(0, |before| before.encode_utf16().count());
    let list = &list[..list.len().min(MOST)];
    let notice = |(one, mut form): (&Diagnostic, form::Notice)| {
        let span = one.span();
        let again = form.again.iter_mut().filter_map(|wall| wall.mend.as_mut());
        for mend in form.mends.iter_mut().chain(again) {
            (mend.from, mend.to) = (utf16(mend.from), utf16(mend.to));
        }
        let fixes = one.fixes().iter();
        Notice {
            word: one.word().as_str(),
            is_error: one.is_error(),
            line: source.line(span.start),
            from: utf16(span.start),
            to: utf16(span.end),
            message: one.message().to_owned(),
            helps: one.helps().to_vec(),
            mends: fixes
                .map(|fix| (utf16(fix.span.start), utf16(fix.span.end), fix.text.clone()))
                .collect(),
            form,
        }
    };
    list.iter().zip(form::notices(source, list, rows)).map(notice).collect()
}

fn verified(file: &[u8]) -> Verified {
    match verify::file(file) {
        Ok(answer) => Verified {
            is_genuine: answer.is_genuine(),
            why: answer.why().word(),
            sides: Some(answer.sides().to_owned()),
            fingerprint: Some(answer.pages().fingerprint()),
            message: match answer.why() {
                Why::OtherVersion(version) => Some(version.clone()),
                _ => None,
            },
        },
        Err(fairfoot::Error::SidesInside { sides, error }) => Verified {
            is_genuine: false,
            why: "sides-changed",
            message: Some(format!(
                "The sides inside were changed too and make no page: {}.",
                in_the_form(&rows(&sides), &error)
            )),
            sides: Some(sides),
            fingerprint: None,
        },
        Err(error) => {
            let sides = sides_file(file);
            Verified {
                is_genuine: false,
                why: if sides.is_some() { "sides-file" } else { "cannot-be-remade" },
                message: sides.is_none().then(|| error.to_string()),
                sides,
                fingerprint: None,
            }
        }
    }
}

/// The text of a file that is no page but a sides file.
fn sides_file(file: &[u8]) -> Option<String> {
    let source = Some(file).filter(|file| !is_page(file))?.to_vec();
    let text = fairfoot::decode("", source).ok()?.text().to_owned();
    let has_walls = rows(&text).walks.iter().any(|walk| !walk.rows.is_empty());
    has_walls.then_some(text)
}

fn is_page(file: &[u8]) -> bool {
    file.starts_with(b"%PDF-") || file.trim_ascii_start().starts_with(b"<")
}

/// The text of a file; for a page, the sides file inside it.
fn opened(name: String, file: Vec<u8>) -> serde_json::Value {
    if is_page(&file) {
        return match verify::file(&file) {
            Ok(answer) => serde_json::json!({
                "text": answer.sides(), "genuine": answer.is_genuine()
            }),
            Err(fairfoot::Error::SidesInside { sides, .. }) => serde_json::json!({
                "text": sides, "genuine": false
            }),
            Err(error) => serde_json::json!({ "failed": error.to_string() }),
        };
    }
    match fairfoot::decode(name, file) {
        Ok(source) => serde_json::json!({ "text": source.text() }),
        Err(errors) => {
            let first = errors.list().first();
            let message = first.map(|one| format!("{}; {}", one.message(), one.helps().join("; ")));
            serde_json::json!({ "failed": message })
        }
    }
}
