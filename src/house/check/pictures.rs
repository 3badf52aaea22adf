//! Checks the pictures that a file names: plain names of JPEG and PNG files beside it, on sides of the house or the
//! land.

use std::path::Path;

use crate::diagnostic::{Diagnostic, Word, quoted};
use crate::house::check::Checker;
use crate::house::check::bounds::{named_pictures, shown_sides};
use crate::sketch::named::Named;

/// The extensions of picture files, in lower case.
const ENDINGS: [&str; 3] = ["jpg", "jpeg", "png"];

impl Checker<'_> {
    /// Checks the name of every picture; opens no file.
    pub(super) fn pictures(&mut self) {
        let sketch = self.sketch;
        if self.glance.is_wordless && sketch.outlines.is_empty() {
            return;
        }
        let wrong: Vec<Diagnostic> = named_pictures(shown_sides(sketch))
            .filter_map(wrong_name)
            .chain(
                named_pictures(
                    sketch.outlines.iter().flat_map(|outline| outline.walk.sides.iter()),
                )
                .map(misplaced),
            )
            .collect();
        for diagnostic in wrong {
            self.report(diagnostic);
        }
    }
}

fn wrong_name(file: &Named) -> Option<Diagnostic> {
    let shown = quoted(&file.text);
    let error = |message: String| Diagnostic::new(Word::BadPicture, file.span, message);
    let name = file.text.as_str();
    if name.contains(['/', '\\', ':']) || name.starts_with('.') {
        let last = name.rsplit(['/', '\\', ':']).next().unwrap_or_default().trim_start_matches('.');
        let help = match last {
            "" => "name the file alone: `file \"west.jpg\"`".to_owned(),
            last => format!(
                "put the picture beside the sides file and name it alone: `file \"{last}\"`"
            ),
        };
        let message = format!("{shown} is not the plain name of a file beside the sides file");
        return Some(
            error(message)
                .note("pictures are read beside the sides file and nowhere else")
                .help(help),
        );
    }
    let ending = Path::new(name).extension().map(|ending| ending.to_string_lossy().to_lowercase());
    if ENDINGS.contains(&ending.as_deref().unwrap_or_default()) {
        return None;
    }
    let stem = Path::new(name).file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let message = format!("{shown} does not end as a JPEG or PNG picture does");
    Some(error(message).help(format!(
        "save the picture as JPEG or PNG beside the sides file: `file \"{stem}.jpg\"`"
    )))
}

fn misplaced(file: &Named) -> Diagnostic {
    let message =
        format!("the picture {} is with a side of somebody else's outline", quoted(&file.text));
    Diagnostic::new(Word::BadPicture, file.span, message).help(format!(
        "type it with the side of the house that it shows: `photo \"1: west wall\" file \"{}\"`",
        file.text
    ))
}
