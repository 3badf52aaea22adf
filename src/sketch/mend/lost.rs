//! Words of a typed line that a suggested line would drop: they are kept in a comment.

use std::collections::HashSet;

use super::pieces::{Sort, cut};

/// Words that other words of the format say, or that say nothing about the house.
const SAID: &str = "\
    around wraps wrap wraparound wrap-around wrapping l-shaped u-shaped \
    bsmnt basmt bment bgrade bglevel belowgrd unfin unfinish unfinsh unfinshed \
    sqmt sqmts sqmtr sqmtrs sqmetr sqmeter sqmeters sqmetre sqmetres sqrm sqrmt sq-m sq-mt sq-mtr mtrs metr metrs \
    inchs recoreded nor'east straße centímetros zoll fuß calculated longer reachable accessible above stands apart knee kneewall two-story \
    two-storey itself alone separate \
    about accuracy accurate actually all alone along also and angled any anymore appraisal appraised appraiser \
    approx approximately apr april architect are area around assessed assessment assessor aug august away azimuth back \
    backwards basement been beginning being below between blueprint bounds bow brick builder building bulge cad \
    call called calls can can't cannot cant capped card ceiling centimeter centimetre centimeters chains check chord circa circle close closed \
    closes cnty coming heading turning backward backyard forwards common corner correction couldn't couldnt county cross-check curve date dated deadline dec \
    december deed deep deg degree degrees description diagonal did didn't dimensions distance dollar district does \
    doesn't done dont down drywall due e-w each east easterly eastern eight eighteen eighty einheiten elevation \
    eleven equals est este excluded exemption exterior eye facade face faces facing feb february feet fet \
    fifteen fifty figures filed finish five floor foot for forty forty-two forward four fourteen frente friday from \
    front fronts ft-in garage' gets gla goes going gone got ground guess had half has have having heading \
    headroom heated her here high him his home house hundred improvements inch inches incl included includes \
    including inside interior into ish its jan january jog jul july jun june juniper just land lane' last left legal liveable livable \
    length lengths less levy links listed listing lists living long loop mailed makes mar march mark market may \
    measure measured measurement measurements measures meter meters metes metre metres metric metros mile mill \
    mills min minus minutes monday more mètres nach name named never next nine nineteen ninety nne none nord \
    norden norte north north-east northeast northern northwest not notice nov november now number oct october \
    oeste offset one only onto orientation ost osten ouest our out outward paid parcel part per percent pic pies \
    place plan plans please plus pob point porch' preceding prev previous price prior protest pulgadas quarter \
    quarters radius ran reach reached reaches really realtor rear received record recorded return right rods roof room \
    roughly round rounded rounding running runs said sale same footprint saturday saw say says second seconds sep separate sept \
    september seven seventeen seventy shape shared she show shows side sides six sixteen sixteenth sixteenths sixty size sketch \
    slanted slope so sold some south south-west southeast southwest split sqft sqm square squared standing start \
    starting starts state stated states story street studs subject sud sunday sur sure tape taped tax taxable \
    taxes taxyear tbd ten than that the their them then thence there these they thick thickness thirteen thirty \
    this those thousand three thursday too torn total toward towards tuesday turn twelve twenty twenty-eight \
    twenty-six twice two unknown upper using val value very via virginia void walk walked wall walls was wasn't \
    we wednesday well went were west what which who wide width with within without yard yards year years yes you \
    eighth eighths thirds fourths your yr";

/// Words that say nothing about the area and that a reader would miss.
const MATTER: [&str; 5] = ["attached", "covered", "screened", "heated", "finished"];

/// Words about a ceiling that a space under it says.
const IN_THE_EAVES: [&str; 7] = ["over", "higher", "taller", "line", "strips", "either", "sloping"];

/// The suggested lines, with a comment for each word of the typed line that they would drop.
pub(super) fn kept(typed: &str, offered: &str) -> String {
    let lower = offered.to_lowercase();
    if offered.starts_with('#') || offered.starts_with("missing ") {
        return offered.to_owned();
    }
    let said: HashSet<&str> = SAID.split_whitespace().collect();
    let is_kept = |word: &str| {
        said.contains(word)
            || IN_THE_EAVES.contains(&word) && lower.starts_with("low \"eaves")
            || ["over", "across"].contains(&word) && lower.starts_with("diagonal ")
            || lower.contains(word)
            || word == "flat" && lower.contains("note \"bay\"")
            || super::lengths::is_spoken_number(word)
            || super::kinds::month_named(word).is_some()
            || !MATTER.contains(&word) && crate::sketch::phrases::is_said(word)
            || cut(&lower).iter().any(|own| is_misspelled(word, &own.text))
    };
    let pieces = cut(typed);
    // A word that touches a number is its unit.
    let is_unit = |at: usize| at > 0 && pieces[at].touches && pieces[at - 1].sort == Sort::Number;
    let words = (0..pieces.len()).filter(|&at| pieces[at].sort == Sort::Word && !is_unit(at));
    let lost: Vec<&str> = words
        .map(|at| &pieces[at])
        .filter(|piece| piece.text.chars().count() > 3 && !is_kept(&piece.text.to_lowercase()))
        .map(|piece| piece.text.as_str())
        .collect();
    if lost.is_empty() {
        return offered.to_owned();
    }
    let lost = lost.join(" ");
    let (first, rest) = match offered.split_once('\n') {
        Some((first, rest)) => (first, format!("\n{rest}")),
        None => (offered, String::new()),
    };
    match super::comment_of(first).1 {
        Some(_) => format!("{first}, {lost}{rest}"),
        None => format!("{first}  # {lost}{rest}"),
    }
}

/// Whether a word is nearly another one, so that it was read as that.
fn is_misspelled(word: &str, own: &str) -> bool {
    own.chars().count() > 2
        && (word.starts_with(own)
            || own.starts_with(word)
            || super::kinds::letters_changed(word, own) <= 2)
}
