//! Questions for the office that keeps the record, in order; they make no claim and give no advice.

use crate::diagnostic::words;
use crate::reconcile::{Figure, Reconciliation};
use crate::value::dates::Deadline;
use crate::value::gap::{counted_spaces, record};
use crate::value::rules::Sure;
use crate::value::{AsOf, CauseClass, Worth};
use crate::wording::block::Block;
use crate::wording::sentences::{Sentences, whole};
use crate::wording::value::kind;

impl Sentences<'_> {
    /// The questions, each with its section of the law if the file's place has one.
    pub(crate) fn questions_for_the_office(&self, reconciliation: &Reconciliation) -> Vec<Block> {
        let worth = reconciliation.worth(&AsOf::default());
        let mut questions = Vec::new();
        let figure = record(reconciliation);
        questions.extend(figure.map(|figure| self.about_the_total(figure)));
        questions.extend(
            figure.and_then(|figure| self.about_spaces(&counted_spaces(figure, self.house))),
        );
        questions.push("Which length does the record have for each wall? Were walls measured outside the siding or brick, and how were they rounded? A copy of the record card with its sketch would answer this.".to_owned());
        let walls = figure.and_then(|figure| self.walls_to_measure(reconciliation, figure));
        questions.extend(walls.map(|walls| {
            format!("The lengths measured here differ from the record at {walls}. Could you measure {walls} again?")
        }));
        questions.push(evidence(worth.as_ref()));
        questions.extend(worth.iter().flat_map(ways_to_a_correction));
        let numbered = questions.into_iter().enumerate();
        let mut blocks = vec![
            Block::Heading("Questions for the office that keeps the record".to_owned()),
            Block::Paragraph("These are questions. They claim nothing, and they are not legal advice. Sections are from our notes on the law: check each with the local office and a licensed professional. Local rules and licensed practice come first.".to_owned()),
        ];
        blocks.extend(numbered.map(|(i, text)| Block::Numbered { number: i + 1, text }));
        blocks
    }

    fn about_the_total(&self, figure: &Figure) -> String {
        let (total, measured) = (whole(figure.area()), whole(figure.start()));
        format!(
            "How was the record's total of {total} sq ft arrived at: which parts does it add, and what is the area of each? Measured here: {measured} sq ft."
        )
    }

    fn about_spaces(&self, counted: &[&str]) -> Option<String> {
        let all = self.house.spaces().iter();
        let others = all.filter(|space| !space.is_counted()).map(|space| space.name());
        let names: Vec<&str> = if counted.is_empty() { others.collect() } else { counted.to_vec() };
        (!names.is_empty())
            .then(|| format!("Does the total count {}, and if so how?", words::any_named(&names)))
    }
}

/// Asks which documents may be requested, with the section of the law if there is a rule for it.
fn evidence(worth: Option<&Worth>) -> String {
    let mut deadlines = worth.iter().flat_map(|worth| worth.dates().deadlines());
    let section = deadlines.find(|deadline| deadline.rule().key() == "evidence").map(section);
    format!(
        "Which documents, sketches and figures on this property will you use, and how can the owner get a copy?{}",
        section.unwrap_or_default()
    )
}

/// Asks about each way in which a wrong size may be corrected: until when, and whether it takes up a size.
fn ways_to_a_correction(worth: &Worth) -> Vec<String> {
    const ALL: [CauseClass; 3] = [CauseClass::Typed, CauseClass::Described, CauseClass::Measured];
    let found = worth.classes();
    let routes = worth.dates().routes(if found.is_empty() { &ALL } else { found });
    let kinds: Vec<&str> = found.iter().map(|&class| kind(class)).collect();
    let what = match kinds[..] {
        [] => "a size".to_owned(),
        _ => format!("a size that was {} in another way", kinds.join(", or ")),
    };
    let question = |route: &&Deadline| {
        let asks = route.rule().name().trim_end_matches(" by").trim_end_matches(" filed");
        let asks = asks.trim_end_matches(", postmarked");
        format!(
            "{asks}: until which day is it open for this property, and does it cover {what}?{}",
            section(route)
        )
    };
    routes.iter().map(question).collect()
}

/// ` (41.461)`, with a remark if it was not read in the law itself.
fn section(deadline: &Deadline) -> String {
    let rule = deadline.rule();
    match rule.sure() {
        Sure::Read => format!(" ({})", rule.section()),
        Sure::SecondHand | Sure::Memory if rule.section() == "not confirmed" => {
            " (not confirmed: ask the office)".to_owned()
        }
        Sure::SecondHand | Sure::Memory => {
            format!(" ({}; not confirmed: ask the office)", rule.section())
        }
    }
}
