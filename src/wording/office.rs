//! Questions for the office that keeps the record, in order; they make no claim and give no advice.

use crate::diagnostic::words;
use crate::reconcile::{Figure, Reconciliation};
use crate::value::dates::Deadline;
use crate::value::gap::{counted_spaces, record};
use crate::value::rules::{DeclarationRule, PlaceRules, Sure};
use crate::value::{AsOf, CauseClass, Worth};
use crate::wording::block::Block;
use crate::wording::sentences::{Sentences, capital};

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
        questions.extend(figure.and_then(|figure| self.about_walls(reconciliation, figure)));
        questions.push(evidence(worth.as_ref()));
        questions.extend(worth.as_ref().and_then(talk));
        let ways = worth.as_ref().map(ways_to_a_correction).unwrap_or_default();
        let found = worth.as_ref().map(Worth::classes).unwrap_or_default();
        let mut after = Vec::new();
        if !ways.is_empty() {
            questions.push("Until which day is each of these open for this property?".to_owned());
            after.extend(
                what(found).into_iter().map(|what| format!("Which of these covers {what}?")),
            );
        }
        let law = worth.as_ref().and_then(|worth| worth.dates().law());
        let sections = law.map(|law| format!(" Sections are of the {law}, from our notes: check each with the local office and a licensed professional."));
        let asked = questions.len();
        let number = |from: usize, questions: Vec<String>| {
            let numbered = questions.into_iter().enumerate();
            numbered.map(move |(i, text)| Block::Numbered { number: from + i + 1, text })
        };
        let mut blocks = vec![
            Block::Heading("Questions for the office that keeps the record".to_owned()),
            Block::Paragraph(format!(
                "These are questions, not legal advice.{} Local rules and licensed practice come first.",
                sections.unwrap_or_default()
            )),
        ];
        blocks.extend(number(0, questions));
        blocks.extend(ways.into_iter().map(Block::Item));
        blocks.extend(number(asked, after));
        blocks
    }

    /// Asks to measure the walls that differ from the record, with both lengths of each; `None` if there are none.
    fn about_walls(&self, reconciliation: &Reconciliation, figure: &Figure) -> Option<String> {
        let walls = self.walls_to_measure(reconciliation, figure, false)?;
        let apart = self.differing_walls(reconciliation).into_iter().flat_map(|(space, sides)| {
            let of = match self.house.spaces.len() {
                1 => String::new(),
                _ => format!(" of {}", words::the_named(&self.house.spaces[space].name)),
            };
            sides.into_iter().filter_map(move |side| {
                let measured = self.areas.outside_length(space, side)?;
                let recorded = self.recorded_length(reconciliation, space, side)?;
                Some(format!(
                    "side {}{of} is {} on the record and {} as measured here",
                    self.house.spaces[space].sides[side].number,
                    self.length(recorded),
                    self.length(measured)
                ))
            })
        });
        let apart = capital(&apart.collect::<Vec<String>>().join("; "));
        Some(format!("{apart}. Could you measure {walls} again?"))
    }

    /// What the law of the file's place lets a person sign instead of an oath: where it stands, and its words; `None`
    /// without such a law.
    pub(crate) fn declaration_of_the_place(&self) -> Option<[String; 2]> {
        let (section, DeclarationRule { rule, words }) = self.declaration_rule()?;
        let before = match rule.sure() {
            Sure::Read => format!(
                "Where a declaration is accepted instead of an oath, {section} has the wording below."
            ),
            Sure::SecondHand | Sure::Memory => {
                format!(
                    "Where a declaration is accepted instead of an oath: wording based on {section}; ask the office which wording it accepts."
                )
            }
        };
        Some([before, words.replace("____", "______________")])
    }

    /// What the owner checks before signing in those words; `None` without such a law. It is not for the pages that are
    /// handed in.
    pub(crate) fn before_signing(&self) -> Option<String> {
        let (section, DeclarationRule { rule, .. }) = self.declaration_rule()?;
        Some(match rule.sure() {
            Sure::Read => format!(
                "The wording of the declaration is from {section}. Check the section, and ask the office, before signing."
            ),
            Sure::SecondHand | Sure::Memory => format!(
                "The wording of the declaration, said to be from {section}, was not read in the law: check the section, and ask the office, before signing."
            ),
        })
    }

    fn declaration_rule(&self) -> Option<(String, &'static DeclarationRule)> {
        let rules = self.house.values.place.and_then(PlaceRules::of)?;
        let declaration = rules.declaration.as_ref()?;
        let section = match declaration.rule.section() {
            number if number.starts_with(|first: char| first.is_ascii_digit()) => {
                format!("{} {number}", rules.law)
            }
            named => named.to_owned(),
        };
        Some((section, declaration))
    }

    fn about_the_total(&self, figure: &Figure) -> String {
        let taken = self.in_parentheses(figure);
        let (total, measured) =
            (self.size(figure.area()), self.size(figure.measured_like_figure()));
        format!(
            "How was the record's total of {total} arrived at: which parts does it add, and what is the area of each? Measured here: {measured}{taken}."
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

/// Asks to talk it over before the hearing; `None` if the place has no rule on that.
fn talk(worth: &Worth) -> Option<String> {
    let mut deadlines = worth.dates().deadlines().iter();
    let rule = deadlines.find(|deadline| deadline.rule().key() == TALK)?;
    Some(format!("Can the owner talk this over with you first, and when?{}", section(rule)))
}

/// The key of the rules on talking with the office.
const TALK: &str = "informal conference";

/// The ways in which a size may be corrected, each with its section.
fn ways_to_a_correction(worth: &Worth) -> Vec<String> {
    const ALL: [CauseClass; 3] = [CauseClass::Typed, CauseClass::Described, CauseClass::Measured];
    let found = worth.classes();
    let routes = worth.dates().routes(if found.is_empty() { &ALL } else { found });
    let ways = routes.into_iter().filter(|route| route.rule().key() != TALK);
    let way = |route: &Deadline| {
        let name = route.rule().name().trim_end_matches(" by").trim_end_matches(" filed");
        format!("{}{}", uncapital(name.trim_end_matches(", postmarked")), section(route))
    };
    ways.map(way).collect()
}

/// What the last questions are about, one each: the kinds of differences that are reported, or the size in general.
fn what(found: &[CauseClass]) -> Vec<&'static str> {
    if found.is_empty() {
        return vec!["a change of the size of the house"];
    }
    let kinds = found.iter().map(|class| match class {
        CauseClass::Typed => "a size that was typed or added in another way",
        CauseClass::Described => "a size that was described in another way",
        CauseClass::Measured => "a size that was measured or rounded in another way",
    });
    kinds.collect()
}

/// A rule's name as it reads inside a sentence: `Protest` becomes `protest`.
fn uncapital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_lowercase().chain(letters).collect()).unwrap_or_default()
}

/// The section of a rule: ` (41.461)`, with a note if it was not read in the law itself.
fn section(deadline: &Deadline) -> String {
    let rule = deadline.rule();
    match rule.sure() {
        Sure::Read => format!(" ({})", rule.section()),
        Sure::SecondHand | Sure::Memory if rule.section() == "not confirmed" => {
            " (please name the section)".to_owned()
        }
        Sure::SecondHand | Sure::Memory => {
            format!(" ({}; please confirm)", rule.section())
        }
    }
}
