//! Changes a line in small steps, one after another, until it can be read.

use std::collections::HashSet;

use super::change::Edit;
use super::pieces::cut;
use super::{Attempt, Mend, keeps, lengths, words};

/// The most changes, one after another, that are tried.
const STEPS: usize = 6;
/// How many changed lines are kept from one step to the next.
const KEPT: usize = 5;
/// The most changed lines that are tried in all.
const TRIED: usize = 260;

struct State {
    line: String,
    attempt: Attempt,
    causes: Vec<String>,
    converts: bool,
}

/// Finds a replacement by small changes, one after another.
pub(super) fn search(line: &str, attempt: &mut dyn FnMut(&str) -> Attempt) -> Option<Mend> {
    let mut seen = HashSet::from([line.to_owned()]);
    let first = attempt(line);
    let last = last_resorts(line, &first);
    let mut states =
        vec![State { line: line.to_owned(), attempt: first, causes: Vec::new(), converts: false }];
    for _ in 0..STEPS {
        let mut next = Vec::new();
        let (mut found, mut weak): (Option<Mend>, Option<Mend>) = (None, None);
        for state in &states {
            let mut has_one_of_many = false;
            for edit in edits(state) {
                let is_late = edit.one_of_many && has_one_of_many;
                if is_late || seen.len() > TRIED || !seen.insert(edit.line.clone()) {
                    continue;
                }
                let converts = state.converts || edit.converts;
                let tried = attempt(&edit.line);
                let causes = [&state.causes[..], &[edit.cause]].concat();
                match &tried.reads {
                    Some(reads) if keeps(line, reads, converts) => {
                        has_one_of_many |= edit.one_of_many;
                        take(if edit.weak { &mut weak } else { &mut found }, reads, &causes);
                    }
                    Some(_) => {}
                    None => next.push(State { line: edit.line, attempt: tried, causes, converts }),
                }
            }
        }
        let found = found.or(weak);
        if found.is_some() {
            return found;
        }
        // The change that leaves the least unread wins, then the earlier one.
        next.sort_by_key(|state| state.line.len().saturating_sub(state.attempt.at.start));
        next.truncate(KEPT);
        states = next;
    }
    last.into_iter().find_map(|edit| {
        let reads = attempt(&edit.line).reads?;
        keeps(line, &reads, false).then(|| Mend {
            lines: vec![reads],
            cause: edit.cause,
            ..Mend::default()
        })
    })
}

/// Adds another line that can be read to what was found.
fn take(found: &mut Option<Mend>, line: &str, causes: &[String]) {
    match found {
        None => {
            let cause = causes.first().cloned().unwrap_or_default();
            *found = Some(Mend { lines: vec![line.to_owned()], cause, ..Mend::default() });
        }
        Some(mend) if mend.lines.len() < 3 && !mend.lines.iter().any(|known| known == line) => {
            mend.lines.push(line.to_owned());
        }
        Some(_) => {}
    }
}

fn edits(state: &State) -> Vec<Edit> {
    let pieces = cut(&state.line);
    let mut edits = lengths::edits(&pieces);
    edits.extend(words::edits(&state.line, &pieces, &state.attempt));
    edits
}

fn last_resorts(line: &str, attempt: &Attempt) -> Vec<Edit> {
    words::last_resorts(line, &cut(line), attempt)
}
