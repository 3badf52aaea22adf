//! Words for causes: what each one is, and how to find out whether it applies.

use crate::diagnostic::words;
use crate::geometry::compass::Direction;
use crate::house::Face;
use crate::house::{House, SideNumber, Space};
use crate::reconcile::Evidence;
use crate::reconcile::cause::Cause;
use crate::reconcile::departures::{DepartureKind, LevelTaken, Listed};
use crate::reconcile::ours::Question;
use crate::reconcile::parts::Shape;
use crate::reconcile::settings::RoundingTaken;
use crate::reconcile::totals::TotalWritten;
use crate::units::decimal::thousands;

/// A cause as a phrase to follow "possible:".
pub(crate) fn said(cause: Cause, listed: Listed<'_>) -> String {
    let departures: Vec<String> = cause.departures().map(|kind| departure(kind, listed)).collect();
    let own = match cause {
        Cause::None => "rounding alone".to_owned(),
        Cause::Departures(..) => String::new(),
        Cause::Face(face) => format!("measured {}", at(face)),
        Cause::Rounding(rounding) => rounded(rounding).to_owned(),
        Cause::Misread { space, side, length } => {
            let space = &listed.house.spaces[space];
            let name = words::the_quoted(&space.name);
            let typed = &space.sides[side].typed;
            match across(space, side) {
                Some((one, other)) => {
                    format!("sides {one} and {other} of {name} misread, about {length} for {typed}")
                }
                None => {
                    format!(
                        "side {} of {name} misread, about {length} for {typed}",
                        space.sides[side].number
                    )
                }
            }
        }
        Cause::Total { how, .. } => written(how).to_owned(),
    };
    match (departures.is_empty(), own.is_empty()) {
        (true, _) => own,
        (false, true) => departures.join(", and "),
        (false, false) => format!("{own}, and {}", departures.join(", and ")),
    }
}

/// The numbers of a wall of a rectangle and of the one across from it; `None` if they are not equally long.
fn across(space: &Space, side: usize) -> Option<(SideNumber, SideNumber)> {
    let vectors = space.closed.outline.vectors();
    let is_square = vectors.len() == 4
        && vectors.iter().all(|one| one.rise == 0 && (one.east == 0 || one.north == 0));
    let other = (side + 2) % 4;
    (is_square && space.sides.len() == 4).then(|| {
        let (first, last) = (side.min(other), side.max(other));
        (space.sides[first].number, space.sides[last].number)
    })
}

/// The way of rounding under which a cause is best supported, if that is not the figure's own.
pub(crate) fn rounded(rounding: RoundingTaken) -> &'static str {
    match rounding {
        RoundingTaken::AlwaysUp => "every wall rounded up to the foot",
        RoundingTaken::AlwaysDown => "every wall rounded down to the foot",
        RoundingTaken::OtherHalves => "walls at the half foot rounded the other way",
        RoundingTaken::HalfFoot => "each wall rounded to the half foot",
        RoundingTaken::NotRounded => "walls not rounded to the foot",
        RoundingTaken::WholeFoot => "each wall rounded to the foot",
    }
}

fn at(face: Face) -> &'static str {
    match face {
        Face::Outside => "to the outside face",
        Face::Frame => "to the frame",
        Face::Inside => "inside",
    }
}

fn written(how: TotalWritten) -> &'static str {
    match how {
        TotalWritten::Swapped => "two digits of the total swapped",
        TotalWritten::OneDigit => "one digit of the total wrong",
        TotalWritten::TenTimes => "a zero too many in the total",
        TotalWritten::Tenth => "a digit missing at the end of the total",
        TotalWritten::RoundedTo10 => "the total rounded to the nearest 10",
        TotalWritten::RoundedTo50 => "the total rounded to the nearest 50",
        TotalWritten::RoundedTo100 => "the total rounded to the nearest 100",
        TotalWritten::Twice => "two dwellings of this size in one total",
        TotalWritten::SquareMeters => "the total given in square meters",
    }
}

fn departure(kind: DepartureKind, listed: Listed<'_>) -> String {
    let house: &House = listed.house;
    let name = |space: usize| words::quoted_in_text(&house.spaces[space].name);
    let level_name = |level: usize| words::quoted_in_text(&house.levels[level].name);
    match kind {
        DepartureKind::Counted { space } => format!("{} counted", name(space)),
        DepartureKind::MissingCounted { missing } => {
            let name = words::quoted_in_text(&listed.house.missing[missing].name);
            format!("{name}, not found on site, still counted")
        }
        DepartureKind::LeftOut { space } => format!("{} not counted", name(space)),
        DepartureKind::LevelLeftOut { level } => format!("{} not counted", level_name(level)),
        DepartureKind::NotDeducted { space } => format!("{} not deducted", name(space)),
        DepartureKind::Deducted { space } => format!("{} deducted", name(space)),
        DepartureKind::DeductedTwice { space } => format!("{} deducted twice", name(space)),
        DepartureKind::Level { level, how } => {
            let how = match how {
                LevelTaken::WholeBelow => "taken at the whole outline of the level below",
                LevelTaken::ThreeQuartersBelow => {
                    "taken at three quarters of the outline of the level below"
                }
                LevelTaken::HalfBelow => "taken at half the outline of the level below",
                LevelTaken::Twice => "counted twice",
            };
            format!("{} {how}", level_name(level))
        }
        DepartureKind::UnderRoof => "everything under the roof counted".to_owned(),
        DepartureKind::Part { space, part } => {
            let side = part.side + 1;
            let of = words::the_quoted(&house.spaces[space].name);
            match part.shape {
                Shape::Recess => format!("the recess after side {side} of {of} filled in"),
                Shape::Jog => format!("the jog at side {side} of {of} left off"),
                Shape::Wing => format!("the wing at side {side} of {of} left off"),
                Shape::Bay => format!("the bay at side {side} of {of} left off"),
                Shape::BoxedBay => format!("the bay at side {side} of {of} drawn as a box"),
            }
        }
    }
}

/// A question that would settle whether a cause applies.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum OpenQuestion {
    /// Something to state: `whether the total counts the covered porch`.
    State(String),
    /// Something to provide: `the total before it was rounded`.
    Provide(String),
    /// Something to do: `compare side 4 with the record's sketch`.
    Check(String),
}

impl OpenQuestion {
    fn state(what: impl Into<String>) -> OpenQuestion {
        OpenQuestion::State(what.into())
    }

    fn check(what: impl Into<String>) -> OpenQuestion {
        OpenQuestion::Check(what.into())
    }

    /// What the owner does about it: `ask whether the total counts the covered porch`.
    pub(crate) fn for_the_owner(&self) -> String {
        match self {
            OpenQuestion::State(what) => format!("ask {what}"),
            OpenQuestion::Provide(what) => format!("ask for {what}"),
            OpenQuestion::Check(what) => what.clone(),
        }
    }
}

/// The open questions on a page: requests to the office that keeps the record; about any other figure, what is not
/// known.
pub(crate) fn asked_of_the_office(open: &[OpenQuestion], is_record: bool) -> String {
    let of = |pick: fn(&OpenQuestion) -> Option<&str>| -> Vec<&str> {
        open.iter().filter_map(pick).collect()
    };
    let stated = of(|question| match question {
        OpenQuestion::State(what) => Some(what),
        _ => None,
    });
    let provided = of(|question| match question {
        OpenQuestion::Provide(what) => Some(what),
        _ => None,
    });
    let checked = of(|question| match question {
        OpenQuestion::Check(what) => Some(what),
        _ => None,
    });
    if !is_record {
        let unknown: Vec<&str> = stated.into_iter().chain(provided).collect();
        return match unknown.is_empty() {
            true => String::new(),
            false => format!("Not known: {}.", words::all_of(&unknown)),
        };
    }
    let sentence = |(verb, asked): (&str, Vec<&str>)| {
        (!asked.is_empty()).then(|| format!("Please {verb}{}.", words::all_of(&asked)))
    };
    let requests = [("state ", stated), ("provide ", provided), ("", checked)];
    requests.into_iter().filter_map(sentence).collect::<Vec<String>>().join(" ")
}

/// How to find out whether a cause applies.
pub(crate) fn settled_by(cause: Cause, listed: Listed<'_>) -> Vec<OpenQuestion> {
    let mut questions: Vec<OpenQuestion> =
        cause.departures().map(|kind| departure_settled_by(kind, listed)).collect();
    let own = match cause {
        Cause::None | Cause::Departures(..) => None,
        Cause::Face(_) => Some(OpenQuestion::state(
            "whether the walls were measured inside, at the frame or outside",
        )),
        Cause::Rounding(_) => Some(OpenQuestion::state("how walls are rounded")),
        Cause::Misread { space, side, .. } => {
            let space = &listed.house.spaces[space];
            Some(OpenQuestion::check(format!(
                "compare side {} of {} with the record's sketch, and measure it again",
                space.sides[side].number,
                words::the_quoted(&space.name)
            )))
        }
        Cause::Total { how, .. } => Some(match how {
            TotalWritten::Twice => OpenQuestion::state("how many dwellings the total covers"),
            TotalWritten::SquareMeters => OpenQuestion::state("which unit the total is in"),
            TotalWritten::RoundedTo10 | TotalWritten::RoundedTo50 | TotalWritten::RoundedTo100 => {
                OpenQuestion::Provide("the total before it was rounded".to_owned())
            }
            _ => OpenQuestion::check("add up the areas on the record's card"),
        }),
    };
    questions.extend(own);
    questions
}

fn departure_settled_by(kind: DepartureKind, listed: Listed<'_>) -> OpenQuestion {
    let house: &House = listed.house;
    let name = |space: usize| words::the_quoted(&house.spaces[space].name);
    let level_name = |level: usize| words::the_quoted(&house.levels[level].name);
    OpenQuestion::State(match kind {
        DepartureKind::Counted { space } => format!("whether the total counts {}", name(space)),
        DepartureKind::MissingCounted { missing } => {
            let name = words::the_quoted(&listed.house.missing[missing].name);
            format!("whether the total still counts {name}")
        }
        DepartureKind::LeftOut { space } => format!("whether the total includes {}", name(space)),
        DepartureKind::LevelLeftOut { level } | DepartureKind::Level { level, .. } => {
            format!("how the total counts {}", level_name(level))
        }
        DepartureKind::NotDeducted { space } | DepartureKind::Deducted { space } => {
            format!("whether the total deducts {}", name(space))
        }
        DepartureKind::DeductedTwice { space } => {
            format!("how often the total deducts {}", name(space))
        }
        DepartureKind::UnderRoof => "which spaces the total counts".to_owned(),
        DepartureKind::Part { space, part } => {
            return OpenQuestion::check(format!(
                "look at the record's sketch at side {} of {}",
                part.side + 1,
                name(space)
            ));
        }
    })
}

/// What another line of the record shows about its rounding, in a sentence.
pub(crate) fn evidence(evidence: &Evidence, listed: Listed<'_>) -> String {
    let name = words::quoted_in_text(&listed.house.spaces[evidence.space].name);
    let sq_ft = thousands(evidence.sq_ft);
    match evidence.product {
        Some((one, other)) => {
            format!("The record's {name}, {sq_ft} = {one} × {other}, fits whole feet.")
        }
        None => {
            format!(
                "The record's {name}, {sq_ft}, is not a product of whole feet near these walls."
            )
        }
    }
}

/// What to check again in our own measurements.
pub(crate) fn asked(question: Question, listed: Listed<'_>) -> String {
    let space = |i: usize| &listed.house.spaces[i];
    match question {
        Question::Inside { space: i, side, kind } => format!(
            "Is a {} inside your walk? The part at side {} of {} has that size.",
            kind.word(),
            side + 1,
            words::the_quoted(&space(i).name)
        ),
        Question::Wall { space: i, side } => {
            let sides = &space(i).sides;
            let axis = sides[side].direction.map(Direction::axis);
            let follows = sides
                .iter()
                .find(|other| other.follows && other.direction.map(Direction::axis) == axis)
                .map_or("a side".to_owned(), |other| format!("side {}", other.number));
            format!(
                "Measure side {} of {} again: {follows}, which was not measured and follows from the others, would hide an error in it.",
                sides[side].number,
                words::the_quoted(&space(i).name)
            )
        }
    }
}
