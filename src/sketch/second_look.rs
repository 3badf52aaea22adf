//! Reads a file once more as if every answer had been obeyed. What an answer would say a second time, or below the first
//! level, is told together with the answer.

use crate::diagnostic::{Diagnostic, Fix, Source, Span, Word};
use crate::sketch::mend;

/// Tells with each answer what it would say twice or out of place; `read` returns the errors of a text.
pub(super) fn tell(
    source: &Source,
    faults: &mut [Diagnostic],
    read: impl Fn(&Source) -> Vec<Diagnostic>,
) {
    let Some(obeyed) = Obeyed::new(source.text(), faults) else { return };
    for follows in read(&Source::new(source.name(), obeyed.text.as_str())) {
        let at = follows.span();
        match follows.word() {
            Word::StatedTwice | Word::FigureTwice => {
                let Some(&(first, _)) = follows.others().first() else { continue };
                let (answer, own, other) = match (obeyed.answer_at(at), obeyed.answer_at(first)) {
                    (Some(answer), _) => (answer, at, first),
                    (None, Some(answer)) => (answer, first, at),
                    (None, None) => continue,
                };
                let (own, other) = (obeyed.line(own), Other::at(&obeyed, other));
                let fault = &mut faults[answer];
                *fault = twice(source, fault, own, &other, follows.helps());
            }
            Word::OutOfPlace => {
                let line = obeyed.line(at);
                let begins = line.split_whitespace().next().unwrap_or_default();
                let is_of_head = !mend::begins_as_wall(line) && !mend::is_kind(begins);
                let Some(answer) = obeyed.answer_at(at).filter(|_| is_of_head) else { continue };
                let fault = &mut faults[answer];
                *fault = out_of_place(source, fault, line, follows.helps());
            }
            _ => {}
        }
    }
}

/// A text in which the first replacement of every error is made.
struct Obeyed {
    text: String,
    /// Where each replacement stands, what it replaced, and whose answer it is; in the order of the text.
    placed: Vec<(Span, Span, usize)>,
}

impl Obeyed {
    /// `None` if no answer replaces anything.
    fn new(text: &str, faults: &[Diagnostic]) -> Option<Obeyed> {
        let first = |(at, fault): (usize, &Diagnostic)| Some((fault.fixes().first()?.clone(), at));
        let mut fixes: Vec<(Fix, usize)> = faults.iter().enumerate().filter_map(first).collect();
        fixes.sort_by_key(|(fix, _)| fix.span.start);
        let mut obeyed = Obeyed { text: String::new(), placed: Vec::new() };
        let mut done = 0;
        for (Fix { span, text: offered }, answer) in fixes {
            let Some(between) = text.get(done..span.start) else { continue };
            obeyed.text.push_str(between);
            let start = obeyed.text.len();
            obeyed.text.push_str(&offered);
            obeyed.placed.push((Span::new(start, obeyed.text.len()), span, answer));
            done = span.end;
        }
        obeyed.text.push_str(text.get(done..)?);
        (!obeyed.placed.is_empty()).then_some(obeyed)
    }

    /// Whose answer stands here.
    fn answer_at(&self, at: Span) -> Option<usize> {
        let is_here =
            |placed: &&(Span, Span, usize)| placed.0.start <= at.start && at.start < placed.0.end;
        self.placed.iter().find(is_here).map(|(_, _, answer)| *answer)
    }

    /// The line in which a place lies, without its comment.
    fn line(&self, at: Span) -> &str {
        let start = self.text[..at.start].rfind('\n').map_or(0, |end| end + 1);
        let line = self.text[start..].lines().next().unwrap_or_default();
        mend::without_comment(line).trim()
    }

    /// The place in the typed text.
    fn typed(&self, at: Span) -> Span {
        let above = self.placed.iter().rev().find(|placed| placed.0.start <= at.start);
        let Some((stands, replaced, _)) = above else { return at };
        if at.start < stands.end {
            return *replaced;
        }
        let back = |byte: usize| byte - stands.end + replaced.end;
        Span::new(back(at.start), back(at.end))
    }
}

/// The other of two statements of which one is an answer.
struct Other {
    /// What it says, or would say.
    line: String,
    /// Where it was typed.
    typed: Span,
}

impl Other {
    fn at(obeyed: &Obeyed, at: Span) -> Other {
        Other { line: obeyed.line(at).to_owned(), typed: obeyed.typed(at) }
    }
}

/// An answer that says what another line says too.
fn twice(
    source: &Source,
    fault: &Diagnostic,
    own: &str,
    other: &Other,
    helps: &[String],
) -> Diagnostic {
    let number = source.line(other.typed.start);
    let here = fault.clone().also(other.typed, "said here too");
    let Some(fix) = fault.fixes().first() else { return here };
    let typed = source.text().get(fix.span.start..fix.span.end).unwrap_or_default().trim();
    let is_alone =
        fault.fixes().len() == 1 && !fix.text.contains('\n') && is_whole_line(source, fix.span);
    let is_same = own.split_whitespace().eq(other.line.split_whitespace());
    if is_same && is_alone && !typed.starts_with('#') {
        let comment = format!("# {typed}");
        return here.instead(
            Some(format!("line {number} says `{own}` already")),
            vec![format!("did you mean `{comment}`?")],
            vec![Fix::new(fix.span, comment)],
        );
    }
    let which = match is_same {
        true => format!("line {number} says `{own}` already: leave it out here"),
        false => format!(
            "line {number} says `{}`: if that is right, put a `#` before this line; if this one is right, take line {number} out",
            other.line
        ),
    };
    // A second figure has a way to stand beside the first.
    let beside = helps.iter().find_map(|help| help.split_once("a name of its own: "));
    let which = match beside.filter(|_| !is_same) {
        Some((_, figure)) => format!("{which}; if both were published, write {figure} here"),
        None => which,
    };
    here.help(which)
}

/// Whether an answer replaces all that its line says, and not one misspelled word of it.
fn is_whole_line(source: &Source, span: Span) -> bool {
    let text = source.text();
    let before = text.get(..span.start).and_then(|before| before.rsplit('\n').next());
    let after = text.get(span.end..).and_then(|after| after.lines().next());
    let is_bare = |rest: &str| rest.trim().is_empty() || rest.trim_start().starts_with('#');
    before.is_some_and(|before| before.trim().is_empty()) && after.is_none_or(is_bare)
}

/// An answer that says on its line what belongs to the top of the file, where another line may say it.
fn out_of_place(source: &Source, fault: &Diagnostic, line: &str, helps: &[String]) -> Diagnostic {
    let word = line.split_whitespace().next().unwrap_or_default();
    let above = source.text().get(..fault.span().start).unwrap_or_default().lines();
    let says = above.enumerate().map(|(at, said)| (at + 1, mend::without_comment(said).trim()));
    let mut says = says.filter(|(_, said)| said.split_whitespace().next() == Some(word));
    let top = match says.next() {
        Some((number, said)) if said == line => {
            format!("line {number} says `{said}` already: put a `#` before this line")
        }
        Some((number, said)) => {
            format!(
                "if it holds for the whole file, write `{line}` on line {number} in place of `{said}`, and take this line out"
            )
        }
        None => format!(
            "write `{line}` at the top of the file, before the first `level`, and take this line out"
        ),
    };
    let others = helps.iter().skip(1).cloned();
    fault.clone().instead(None, std::iter::once(top).chain(others).collect(), Vec::new())
}
