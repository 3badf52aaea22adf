//! The pictures that the file names, and the wall that each shows.

use crate::diagnostic::Span;
use crate::house::{Model, Side};

/// A picture that the file names: its file and the wall that it shows.
#[derive(Clone, Copy, Debug)]
pub struct WallPicture<'a> {
    pub(crate) file: &'a str,
    pub(crate) span: Span,
    pub(crate) of: &'a str,
    pub(crate) side: &'a Side,
    /// The indices of its space and its side; `None` for a side of a lot.
    pub(crate) place: Option<(usize, usize)>,
}

impl<'a> WallPicture<'a> {
    /// The plain name of its file, which is beside the sides file.
    #[must_use]
    pub fn file(&self) -> &'a str {
        self.file
    }

    /// The name of the space or lot whose side is shown.
    #[must_use]
    pub fn of(&self) -> &'a str {
        self.of
    }

    /// The side that is shown.
    #[must_use]
    pub fn side(&self) -> &'a Side {
        self.side
    }

    /// Its caption as typed in the file.
    #[must_use]
    pub fn caption(&self) -> &'a str {
        self.side.words.photo.as_deref().unwrap_or_default()
    }
}

impl Model {
    /// The pictures that the file names: those of spaces in file order, then those of lots. Several walls may name
    /// the same file.
    pub fn pictures(&self) -> impl Iterator<Item = WallPicture<'_>> {
        let of_spaces = self.spaces.iter().enumerate().flat_map(|(i, space)| {
            let sides = space.sides.iter().enumerate();
            sides.filter_map(move |(k, side)| wall_picture(&space.name, side, Some((i, k))))
        });
        let of_lots = self.lots.iter().flat_map(|lot| {
            lot.sides.iter().filter_map(|side| wall_picture(&lot.name, side, None))
        });
        of_spaces.chain(of_lots)
    }
}

fn wall_picture<'a>(
    of: &'a str,
    side: &'a Side,
    place: Option<(usize, usize)>,
) -> Option<WallPicture<'a>> {
    let file = side.words.photo_file.as_ref()?;
    Some(WallPicture { file: &file.text, span: file.span, of, side, place })
}
