//! Curves of a deed: a lot has straight calls, so that a curve is its chord, and the strip between the two is left out.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "the strip that a chord leaves out is told as about so much"
)]

use super::calls::bearing_end;
use super::curves::rise;
use super::measure::{Measure, length_at, written};
use super::{Answer, Typed};
use crate::units::length::Length;

/// The ways that a wall runs.
const WAYS: [&str; 4] = ["north", "east", "south", "west"];

/// `curve to the left R=50 L=30`, `arc radius 50'`, `arc N 45° E 35.36' rise 7.32' west`: a curve has its chord and how far
/// it rises.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let curve = typed.find(0, &["curve", "curved", "arc"]).filter(|at| *at <= 4)?;
    let begins = typed.says(0, &["curve", "curved", "arc", "along", "thence", "on"]);
    if !begins {
        return None;
    }
    if let Some(answer) = along_a_bearing(typed, curve + 1) {
        return Some(answer);
    }
    let parts = ["r", "l", "radius", "delta", "ch", "cb", "arc-length", "la", "chord"];
    let equals = (1..typed.pieces.len())
        .any(|at| typed.pieces[at].is_mark("=") && typed.says(at - 1, &parts));
    let turns =
        typed.find(1, &["left", "right"]).is_some() && typed.find(1, &["radius", "r"]).is_some();
    let in_words = typed.find(1, &["radius", "r"]).zip(typed.find(1, &["chord", "ch", "c"]));
    if !equals && !turns && in_words.is_none() {
        return None;
    }
    let value = |words: &[&str]| {
        (1..typed.pieces.len()).filter(|&at| typed.says(at, words)).find_map(|at| {
            let mut at = at + 1;
            while typed.piece(at).is_some_and(|mark| mark.is_mark("=:"))
                || typed.says(at, &["of", "is", "length"])
            {
                at += 1;
            }
            length_at(&typed.pieces, at)
        })
    };
    let radius = value(&["r", "radius"]);
    let cause = "a curve is not given by its radius here";
    let chord = value(&["chord", "ch", "c"]);
    let Some((chord, rise)) = chord.zip(radius.as_ref()).and_then(|(chord, radius)| {
        let rise = rise(chord.length, radius.length)?;
        Some((chord, rise))
    }) else {
        let along = value(&["l", "la", "length", "arc-length", "arc"]);
        let strip = radius.zip(along);
        return Some(match strip.and_then(|(radius, along)| by_radius(&radius, &along)) {
            Some((chord, strip)) => Answer::say(
                cause,
                format!(
                    "with this radius and this length its chord is {chord}: write it as a straight call, `bearing`, the bearing of the chord and `{chord}`; the strip between chord and curve, about {strip}, is then left out of the lot's area if the curve bends outward, and is in it if it bends inward"
                ),
            ),
            None => Answer::say(
                cause,
                "write its chord, which the deed has beside the radius, as a straight call: `bearing`, the chord's bearing and its length; or an `arc`, with the way and the length of its chord, then `rise` and how far it stands out to which side",
            ),
        });
    };
    let rise = written(rise, &chord);
    let chord = chord.text;
    let mut ways = WAYS.iter().filter(|word| typed.find(1, &[**word]).is_some());
    if let (Some(way), None) = (ways.next(), ways.next()) {
        let sides = match *way {
            "north" | "south" => ["east", "west"],
            _ => ["north", "south"],
        };
        let line = |side: &str| format!("arc {way} {chord} rise {rise} {side}");
        return Some(Answer::Lines(
            sides.iter().map(|side| line(side)).collect(),
            "a curve has its rise and no radius: this is the rise of the shorter curve with this chord and radius".to_owned(),
        ));
    }
    Some(Answer::say(
        cause,
        format!(
            "write `arc`, the way in which its chord runs, `{chord} rise {rise}`, which follows from this radius, and the side to which it rises, as `arc west {chord} rise {rise} south`"
        ),
    ))
}

/// `arc N 45° E 35.36' rise 7.32' west`, `arc north 25' east 25' rise 7.32' north`: a curve whose chord is slanted.
fn along_a_bearing(typed: &Typed<'_>, first: usize) -> Option<Answer> {
    let first = first + usize::from(typed.says(first, &["bearing", "along"]));
    let rises = typed.find(first, &["rise", "rises", "bulge"])?;
    let high = length_at(&typed.pieces, rises + 1)?;
    let (line, chord) = match bearing_end(typed, first) {
        Some(end) => {
            let chord = length_at(&typed.pieces, end).filter(|chord| chord.end == rises)?;
            (format!("bearing {} {}", typed.text(first, end), chord.text), feet(chord.length))
        }
        None => {
            let way = |at: usize| WAYS.iter().find(|way| typed.says(at, &[**way]));
            let one = length_at(&typed.pieces, first + 1)?;
            let two = length_at(&typed.pieces, one.end + 1).filter(|two| two.end == rises)?;
            let (along, across) = (way(first)?, way(one.end)?);
            (
                format!("diagonal {along} {} {across} {}", one.text, two.text),
                libm::hypot(feet(one.length), feet(two.length)),
            )
        }
    };
    let rise = feet(high.length);
    if rise <= 0.0 || rise > chord {
        return None;
    }
    // The circle through the ends of the chord and the top of the rise.
    let radius = (chord * chord / 4.0 + rise * rise) / (2.0 * rise);
    let strip = segment(radius, 2.0 * radius * angle_at(radius, chord, rise))?;
    let strip = written_area(strip, &high);
    Some(Answer::say(
        "the chord of an `arc` runs north, east, south or west, and this one is slanted",
        format!(
            "write its chord as a straight line, `{line}`; the strip between chord and curve, about {strip}, is then left out if the curve bends outward, and is in it if it bends inward"
        ),
    ))
}

/// Half the angle at the center of a curve; past half a circle if it rises by more than its radius.
fn angle_at(radius: f64, chord: f64, rise: f64) -> f64 {
    let half = libm::asin((chord / (2.0 * radius)).min(1.0));
    if rise > radius { std::f64::consts::PI - half } else { half }
}

/// The chord of a curve with this radius and this length along it, and the area of the strip between them.
fn by_radius(radius: &Measure, along: &Measure) -> Option<(String, String)> {
    let (r, l) = (feet(radius.length), feet(along.length));
    let strip = segment(r, l)?;
    let chord = 2.0 * r * libm::sin(l / (2.0 * r));
    let chord = if radius.is_metric() {
        format!("{:.2} m", chord * METERS_IN_A_FOOT)
    } else {
        format!("{chord:.2}'")
    };
    Some((chord, written_area(strip, radius)))
}

/// The area between a curve and its chord, in square feet: r² (θ − sin θ) / 2 with θ the angle that the curve turns by.
fn segment(radius: f64, along: f64) -> Option<f64> {
    let turn = along / radius;
    let fits = radius > 0.0 && turn > 0.0 && turn < 2.0 * std::f64::consts::PI;
    fits.then(|| radius * radius * (turn - libm::sin(turn)) / 2.0)
}

const METERS_IN_A_FOOT: f64 = 0.3048;

fn feet(length: Length) -> f64 {
    length.nm() as f64 / Length::FOOT.nm() as f64
}

/// An area as the lengths of its line are written.
fn written_area(square_feet: f64, like: &Measure) -> String {
    if like.is_metric() {
        format!("{:.1} sq m", square_feet * METERS_IN_A_FOOT * METERS_IN_A_FOOT)
    } else {
        format!("{square_feet:.0} sq ft")
    }
}
