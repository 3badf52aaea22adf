//! Keeps spaces at their corners while a walk gets more or fewer sides.

use super::edit::{Edit, numbered_corner};
use super::{Row, Walk, rows};

/// The text after an edit in which every space still begins at the corner where it began: corners are counted along a
/// walk, so the numbers of those after a new or removed side change.
pub(super) fn kept(before: &str, after: String, edit: &Edit) -> String {
    let is_counted = matches!(
        edit,
        Edit::Side { .. } | Edit::Add { .. } | Edit::Remove { .. } | Edit::Swap { .. }
    );
    if !is_counted || !before.contains("corner") {
        return after;
    }
    let (old, new) = (rows(before), rows(&after));
    if old.walks.len() != new.walks.len() {
        return after;
    }
    let mut lines: Vec<String> = after.split_inclusive('\n').map(str::to_owned).collect();
    for (old, walk) in old.walks.iter().zip(&new.walks) {
        let counts = |walk: &Walk| walk.rows.iter().map(|row| row.sides).collect::<Vec<_>>();
        if counts(old) == counts(walk) {
            continue;
        }
        for other in new.walks.iter().filter(|other| other.level == walk.level) {
            let Some((_, corner)) = other.corner.as_ref().filter(|(name, _)| *name == walk.name)
            else {
                continue;
            };
            let moved = moved(*corner, &old.rows, &walk.rows, edit);
            if let Some(line) = lines.get_mut(other.line - 1)
                && let Some(place) = numbered_corner(line, *corner)
            {
                line.replace_range(place, &moved.to_string());
            }
        }
    }
    lines.concat()
}

/// The number that a corner has after the edit.
fn moved(corner: usize, old: &[Row], new: &[Row], edit: &Edit) -> usize {
    let Some(at) = old.iter().rposition(|row| row.number <= corner) else { return corner };
    let inner = corner - old[at].number;
    let index = match edit {
        Edit::Add { after, .. } => match new.iter().position(|row| row.line == after + 1) {
            Some(added) if at > added => at + 1,
            _ => at,
        },
        Edit::Remove { line } => match old.iter().position(|row| row.line == *line) {
            Some(removed) if at > removed => at - 1,
            _ => at,
        },
        _ => at,
    };
    let after_all = || new.last().map_or(1, |row| row.number + row.sides);
    new.get(index).map_or_else(after_all, |row| row.number + inner.min(row.sides - 1))
}
