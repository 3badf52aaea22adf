//! Published areas whose line begins with the writer's own name for their source.

use super::super::pieces::{Piece, Sort, join};
use super::measure::{area_from, money_from};
use super::{Answer, SMALL, Typed, quoted};

/// Words that say whose figure it is.
const SOURCES: [(&str, &[&str]); 3] = [
    (
        "record",
        &[
            "county",
            "assessor",
            "assessor's",
            "assessors",
            "appraisal",
            "district",
            "cad",
            "tax",
            "record",
            "records",
            "roll",
            "card",
            "cnty",
            "register",
            "registry",
            "auditor",
            "treasurer",
            "parcel",
            "gis",
            "catastro",
            "registro",
            "kataster",
            "grundbuch",
            "city",
            "assessment",
        ],
    ),
    (
        "listing",
        &[
            "mls",
            "listing",
            "listed",
            "realtor",
            "realtor's",
            "agent",
            "agent's",
            "broker",
            "ad",
            "advertised",
            "flyer",
            "brochure",
            "advert",
            "anuncio",
            "inserat",
            "anzeige",
            "expose",
            "exposé",
        ],
    ),
    (
        "plan",
        &[
            "plan",
            "plans",
            "blueprint",
            "blueprints",
            "builder",
            "builder's",
            "architect",
            "architect's",
            "drawings",
            "permit",
        ],
    ),
];

/// The word of the format for whose figure it is, if the piece says so.
pub(super) fn word(piece: &Piece) -> Option<&'static str> {
    SOURCES.iter().find(|(_, words)| piece.is_word(words)).map(|(word, _)| *word)
}

/// `county appraiser has us at 1,904`: the area without its unit, where a source is said to have it.
fn said_at_the_end(typed: &Typed<'_>) -> Option<(usize, usize, String)> {
    let end = typed.pieces.len();
    let last = end.checked_sub(1)?;
    let number = typed.piece(last).filter(|piece| piece.is_number())?;
    let says = ["has", "says", "shows", "lists", "states", "claims", "reports", "thinks", "puts"];
    let digits = number.text.chars().filter(char::is_ascii_digit).count();
    let is_area = (3..=5).contains(&digits) && !number.text.contains('.');
    let is_source = typed.piece(0).is_some_and(|first| word(first).is_some())
        || typed.says(0, &["the"]) && typed.piece(1).is_some_and(|second| word(second).is_some());
    let is_said = (1..last).any(|at| typed.says(at, &says));
    (is_area && is_source && is_said && !typed.attempt.is_metric)
        .then(|| (last, end, format!("{} sq ft", number.text)))
}

/// `appraisal 2,150 sq ft "bank, 2024"`: what it is called, its area, and its title.
fn titled_appraisal(typed: &Typed<'_>) -> Option<Answer> {
    let says = ["appraisal", "survey", "insurance", "permit", "builder", "seller"];
    let (end, area) = super::measure::area_at(&typed.pieces, 1).filter(|_| typed.says(0, &says))?;
    let is_titled = typed.piece(end).is_some_and(|text| text.sort == Sort::Text);
    (is_titled && end + 1 == typed.pieces.len()).then(|| {
        Answer::line(
            format!("figure {} {area} {}", quoted(typed.text(0, 1)), typed.rest(end)),
            "a figure that is not the record's, a listing's or a plan's has a name of its own",
        )
    })
}

/// `county assessor says 1,900 sq ft`, `1,900 sq ft per the county`, `total area 2,430 sq ft`.
pub(super) fn figure(typed: &Typed<'_>) -> Option<Answer> {
    if let Some(answer) = titled_appraisal(typed) {
        return Some(answer);
    }
    let (first, end, area) = area_from(&typed.pieces, 0).or_else(|| said_at_the_end(typed))?;
    let is_other =
        area_from(&typed.pieces, end).is_some() || money_from(&typed.pieces, 0).is_some();
    let is_living = typed.says(0, &["living"]) && typed.says(1, &["area", "space", "size", "sq"]);
    let is_known = typed.attempt.knows_first && !typed.says(0, &["tax"]) && !is_living;
    let words = |pieces: &[Piece]| {
        pieces.iter().all(|piece| {
            let is_year = piece.is_year();
            piece.sort == Sort::Word || is_year || piece.is_mark(",:;=().-–'’")
        })
    };
    if is_other
        || is_known
        || typed.says(0, &["lot", "land", "site", "yard"])
        || !words(&typed.pieces[..first])
        || !words(&typed.pieces[end..])
    {
        return None;
    }
    let said = [&typed.pieces[..first], &typed.pieces[end..]].concat();
    let part = [
        "garage",
        "porch",
        "deck",
        "patio",
        "basement",
        "shed",
        "carport",
        "attic",
        "balcony",
        "unfinished",
        "not",
        "no",
        "less",
        "plus",
        "without",
        "excluding",
        "incl",
        "including",
        "with",
        "counting",
        "sold",
        "detached",
        "guest",
        "pool",
        "barn",
        "apartment",
        "measured",
        "sides",
    ];
    if said.iter().any(|piece| piece.is_word(&part)) {
        return None;
    }
    let source = SOURCES.iter().find(|(_, words)| said.iter().any(|piece| piece.is_word(words)));
    let filler = |piece: &Piece| {
        piece.sort == Sort::Mark
            || piece.is_word(&SMALL)
            || piece.is_word(&[
                "ca",
                "approx",
                "about",
                "circa",
                "says",
                "has",
                "shows",
                "per",
                "as",
                "by",
                "from",
                "according",
                "states",
                "said",
                "lists",
                "us",
                "me",
                "it",
                "our",
                "house",
                "home",
                "the",
                "thinks",
                "claims",
                "reports",
                "puts",
                "states",
                "area",
                "size",
                "sq",
                "ft",
            ])
    };
    let title: Vec<Piece> = said
        .iter()
        .filter(|piece| !filler(piece) || piece.is_word(&["per"]))
        .cloned()
        .map(|mut piece| {
            piece.touches = false;
            piece
        })
        .collect();
    let Some((word, _)) = source else {
        let of_the_house = [
            "total",
            "heated",
            "living",
            "gla",
            "finished",
            "conditioned",
            "gross",
            "net",
            "wohnfläche",
            "superficie",
            "nutzfläche",
            "fläche",
            "area",
            "building",
            "floor",
            "house",
            "home",
        ];
        let is_ours = !said.is_empty()
            && said.iter().all(|piece| filler(piece) || piece.is_word(&of_the_house));
        let says_area = said.iter().any(|piece| piece.is_word(&of_the_house));
        let title = quoted(&join(&said));
        let is_in_a_walk = super::super::begins_as_side(&typed.attempt.beside.before);
        if is_ours && typed.says(0, &["total", "subtotal", "sum"]) && is_in_a_walk {
            return Some(Answer::line(
                format!("# {}", typed.line),
                "areas follow from the walls; one that you worked out is a comment",
            ));
        }
        return (is_ours && says_area && !typed.says(0, &["size", "area", "sq", "gla"])).then(
            || {
                Answer::Lines(
                    vec![format!("record {area} {title}"), format!("listing {area} {title}")],
                    "an area has a word that says who published it: `record`, `listing` or `plan`"
                        .to_owned(),
                )
            },
        );
    };
    // `county assessor` says no more than `record` does.
    let is_source = |piece: &Piece| {
        piece.is_word(&["bill", "says", "per", "appraiser", "appraisers", "office"])
            || SOURCES.iter().any(|(_, words)| piece.is_word(words))
    };
    let frame = ["frame", "studs", "framing"];
    let is_frame = said.iter().any(|piece| piece.is_word(&frame));
    let face = if is_frame { " measured to frame" } else { "" };
    let is_source = |piece: &Piece| {
        is_source(piece)
            || is_frame && piece.is_word(&["frame", "studs", "framing", "to", "outside"])
    };
    let title = if title.iter().all(is_source) {
        String::new()
    } else {
        format!(" {}", quoted(&join(&title)))
    };
    Some(Answer::line(
        format!("{word} {area}{face}{title}"),
        format!(
            "an area begins with the word for who published it, here `{word}`; its title goes after it"
        ),
    ))
}
