//! The interface between the page in the browser and the library: bytes in, bytes out, without generated bindings.
//!
//! `input(n)` reserves n bytes for a request as JSON, a zero byte, and the file it is about. `run()` answers it and
//! returns the number of parts; `part(i)` and `part_len(i)` give their position and length. The first part is JSON;
//! the others are files.

use std::cell::RefCell;
use std::collections::BTreeSet;

use fairfoot::diagnostic::Diagnostic;
use fairfoot::report::Look;
use fairfoot::sketch::Kind;
use fairfoot::sketch::rows::{Edit, Rows, edited, rows};
use fairfoot::verify::Why;
use fairfoot::wording::Block;
use fairfoot::{Diagnostics, Paper, Reconciliation, Settings, Source, Weights, verify};
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
    /// The pages as SVG.
    Svg { name: String, a4: bool },
    /// The pages as PDF.
    Pdf { name: String, a4: bool },
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
    opening: Vec<String>,
    /// The report after them; `None` while there is an error.
    report: Option<String>,
    /// The caution if a figure is smaller than the measured area.
    caution: Option<String>,
    /// The words for the kinds of spaces.
    kinds: Vec<&'static str>,
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
}

/// The result for a page that somebody sent.
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

/// A panic ends the module; the page reads its message from the first part.
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
    let said = |error: fairfoot::Error| error.to_string();
    let result = match request {
        Request::Look { name, columns } => Ok(vec![json(&look(name, text(file), columns))]),
        Request::Json { name } => worked_out(&name, text(file))
            .map(|result| vec![report_as_json(&result)])
            .map_err(|errors| errors.drawn(false)),
        Request::Svg { name, a4 } => worked_out(&name, text(file))
            .map_err(|errors| errors.drawn(false))
            .and_then(|result| result.pages(paper(a4)).map_err(said))
            .map(|pages| vec![json(&pages.svg())]),
        Request::Pdf { name, a4 } => worked_out(&name, text(file))
            .map_err(|errors| errors.drawn(false))
            .and_then(|result| result.pages(paper(a4)).map_err(said))
            .and_then(|pages| pages.pdf().map_err(said))
            .map(|pdf| vec![b"{}".to_vec(), pdf]),
        Request::Edit { edit } => Ok(vec![json(&edited(&text(file), &edit))]),
        Request::Verify => Ok(vec![json(&verified(&file))]),
        Request::Open { name } => Ok(vec![json(&opened(name, file))]),
    };
    result.unwrap_or_else(|why| vec![failed(&why)])
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
            rows,
            notices: notices(errors.source(), errors.list()),
            opening: Vec::new(),
            report: None,
            caution: None,
            kinds,
        },
    }
}

fn shown(rows: Rows, kinds: Vec<&'static str>, columns: usize, result: &Reconciliation) -> Shown {
    let report = result.report();
    let caution = report.caution();
    let look = Look { width: columns, ..Look::default() };
    Shown {
        rows,
        notices: notices(result.house().source(), result.warnings()),
        // The caution is shown separately, before them.
        opening: report
            .opening()
            .into_iter()
            .filter_map(sentence)
            .filter(|one| Some(one) != caution.as_ref())
            .collect(),
        report: Some(report.text_after_opening(look).trim_start_matches('\n').to_owned()),
        caution,
        kinds,
    }
}

fn sentence(block: Block) -> Option<String> {
    match block {
        Block::Statement(text) | Block::Paragraph(text) => Some(text),
        _ => None,
    }
}

/// The errors and warnings, with positions in UTF-16 units.
fn notices(source: &Source, list: &[Diagnostic]) -> Vec<Notice> {
    const MOST: usize = 50;
    const MOST_MENDED: usize = 8;
    let text = source.text();
    let utf16 = |at: usize| text.get(..at).map_or(0, |before| before.encode_utf16().count());
    let notice = |(i, one): (usize, &Diagnostic)| {
        let span = one.span();
        let mends = if one.is_error() && i < MOST_MENDED { mends(text, one) } else { Vec::new() };
        Notice {
            word: one.word().as_str(),
            is_error: one.is_error(),
            line: source.line(span.start),
            from: utf16(span.start),
            to: utf16(span.end),
            message: one.message().to_owned(),
            helps: one.helps().to_vec(),
            mends: mends
                .into_iter()
                .map(|(from, to, words)| (utf16(from), utf16(to), words))
                .collect(),
        }
    };
    list.iter().take(MOST).enumerate().map(notice).collect()
}

/// The replacements that, applied to the error or its line, leave fewer errors.
fn mends(text: &str, one: &Diagnostic) -> Vec<(usize, usize, String)> {
    let Some(wrong) = text.get(one.span().start..one.span().end) else { return Vec::new() };
    let before = errors(text);
    let start = text[..one.span().start].rfind('\n').map_or(0, |at| at + 1);
    let line = text[start..].split('\n').next().unwrap_or_default();
    let inner = start + (line.len() - line.trim_start().len());
    let inner_end = start + line.trim_end().len();
    let offers = one.helps().iter().flat_map(|help| help.split('`').skip(1).step_by(2));
    let mut seen = BTreeSet::new();
    let mut mends = Vec::new();
    for offer in offers.filter(|&offer| offer != wrong && seen.insert(offer)) {
        let places = [(one.span().start, one.span().end), (inner, inner_end.max(inner))];
        let place = places.into_iter().find(|&(from, to)| {
            let tried = format!("{}{offer}{}", &text[..from], &text[to..]);
            errors(&tried) < before
        });
        mends.extend(place.map(|(from, to)| (from, to, offer.to_owned())));
    }
    mends
}

fn errors(text: &str) -> usize {
    let errors = fairfoot::read("", text).err();
    errors.map_or(0, |errors| errors.list().iter().filter(|one| one.is_error()).count())
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
        Err(error) => Verified {
            is_genuine: false,
            why: "cannot-be-remade",
            sides: None,
            fingerprint: None,
            message: Some(error.to_string()),
        },
    }
}

/// The text of a file; for a page, the sides file inside it.
fn opened(name: String, file: Vec<u8>) -> serde_json::Value {
    let is_page = file.starts_with(b"%PDF-") || file.trim_ascii_start().starts_with(b"<");
    if is_page {
        return match verify::file(&file) {
            Ok(answer) => serde_json::json!({
                "text": answer.sides(), "genuine": answer.is_genuine()
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
