//! A porch that fills a recess of the walk above: `covered porch 14' 5" x 5' 2" in the recess`. Its corner and its sides
//! follow from the walls of the recess.

use super::described::{by, in_one_unit, one_kind};
use super::measure::length_at;
use super::straight;
use super::{Answer, Typed, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    const RECESS: [&str; 10] = [
        "recess", "recessed", "notch", "alcove", "inset", "cutout", "cut-out", "setback", "indent",
        "niche",
    ];
    const SMALL: [&str; 24] = [
        "in", "the", "a", "of", "into", "inside", "fills", "fill", "fits", "sits", "is", "set",
        "at", "that", "wide", "deep", "house", "w", "d", "front", "entry", "under", "size",
        "between",
    ];
    typed.find(1, &RECESS)?;
    let house = typed.attempt.house.clone()?;
    let (kind, first, name) = one_kind(typed)?;
    if !["porch", "deck", "patio", "balcony"].contains(&kind) {
        return None;
    }
    let (mut size, mut at) = (None, first);
    while let Some(piece) = typed.piece(at) {
        if let Some(one) = length_at(&typed.pieces, at).filter(|_| size.is_none()) {
            let label = usize::from(typed.says(one.end, &["wide", "deep", "w", "d"]));
            let joint = by(typed, one.end + label)
                || typed.piece(one.end + label).is_some_and(|mark| mark.is_mark(",")) && label > 0;
            // `13' wide 5' deep`
            let next = one.end + label + usize::from(joint);
            let two = length_at(&typed.pieces, next).filter(|_| joint || label > 0)?;
            at = two.end;
            size = Some((one, two));
            continue;
        }
        if !typed.says(at, &RECESS) && !typed.says(at, &SMALL) && !piece.is_mark(",;:()-–.") {
            return None;
        }
        at += 1;
    }
    // Its walls follow: only where they begin is not known. With its size as well, another rule keeps that as a remark.
    if super::super::begins_as_side(&typed.attempt.beside.after) {
        return size.is_none().then(|| {
            Answer::say(
                "a recess is no place that can be drawn until it is said at which corner of it the walk begins",
                format!(
                    "write `{kind} {}`, then where its first wall below begins: {}",
                    quoted(&name),
                    super::placed::starts(typed, kind, false)
                ),
            )
        });
    }
    let (one, two) = size?;
    let (a, b) = in_one_unit(&one, &two);
    let walk = straight::walk(typed, &typed.attempt.beside.house_walk)?;
    let number = |text: &str| text.parse::<crate::units::length::Length>().ok();
    let mut lines: Vec<String> = Vec::new();
    for (along, deep) in [(&a, &b), (&b, &a)] {
        for (corner, way, out) in walk.recesses(number(along)?, number(deep)?) {
            let (back, inward) = (way.opposite().word(), out.opposite().word());
            let (way, out) = (way.word(), out.word());
            lines.push(format!(
                "{kind} {} from {} corner {}\n{way} {along}\n{out} {deep}\n{back} {along}\n{inward} {deep}",
                quoted(&name),
                quoted(&house),
                corner + 1
            ));
        }
    }
    lines.dedup();
    (!lines.is_empty() && lines.len() <= 3).then(|| {
        Answer::Lines(
            lines,
            format!("the recess of the walk of `{house}` that has this size says where it starts"),
        )
    })
}
