//! A title that also says that the lengths are in meters.

use super::change::Attempt;
use super::{Mend, kinds};

/// `16 Heron Lane, all in meters`, `Farm, metric`: the title, and the unit on a line of its own. As a comment alone it would
/// leave the lengths in feet.
pub(super) fn answer(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    const SAID: [&str; 10] = [
        "dimensions in meters",
        "lengths in meters",
        "all in meters",
        "all in metres",
        "all meters",
        "all metric",
        "in meters",
        "in metres",
        "meters",
        "metric",
    ];
    let lower = line.to_lowercase();
    let lower = lower.trim_end_matches([')', '.', ' ']);
    let said = SAID.iter().find(|said| lower.ends_with(*said))?;
    // The same bytes where nothing changes its length in lower case.
    let title = line.get(..lower.len().checked_sub(said.len())?)?;
    let bare = title.trim_end_matches([',', ';', '(', '-', '–', ' ']);
    let is_apart = bare.len() < title.trim_end().len();
    if bare.is_empty() || !is_apart || kinds::measures(bare) || bare.contains('#') {
        return None;
    }
    let first = attempt(line);
    if first.space.is_some() || first.is_metric {
        return None;
    }
    let mended = match attempt(bare).reads {
        Some(reads) => Mend { lines: vec![reads], ..Mend::default() },
        None => super::mend(bare, attempt)?,
    };
    let heads = ["property ", "address ", "place "];
    let lines: Vec<String> = mended
        .lines
        .iter()
        .filter(|line| heads.iter().any(|head| line.starts_with(head)))
        .map(|line| format!("units meters\n{line}"))
        .collect();
    let cause =
        "the unit of numbers without a mark is a line of its own, `units meters`".to_owned();
    (!lines.is_empty()).then(|| Mend { lines, cause, ..Mend::default() })
}
