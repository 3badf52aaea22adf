//! The pictures that the file names, wall by wall.

use crate::diagnostic::Span;
use crate::house::{Model, Side};

/// A picture that the file names: where it is kept, and which wall it is of.
#[derive(Clone, Copy, Debug)]
pub struct WallPicture<'a> {
    pub(crate) file: &'a str,
    pub(crate) span: Span,
    pub(crate) of: &'a str,
    pub(crate) side: &'a Side,
    /// The places of its space and its side; none for a side of the land.
    pub(crate) place: Option<(usize, usize)>,
}

impl<'a> WallPicture<'a> {
    /// The plain name of its file, beside the sides file.
    #[must_use]
    pub fn file(&self) -> &'a str {
        self.file
    }

    /// The space or the lot whose wall or line it shows.
    #[must_use]
    pub fn of(&self) -> &'a str {
        self.of
    }

    /// The side that it is of.
    #[must_use]
    pub fn side(&self) -> &'a Side {
        self.side
    }

    /// What the file says of it.
    #[must_use]
    pub fn caption(&self) -> &'a str {
        self.side.words.photo.as_deref().unwrap_or_default()
    }
}

impl Model {
    /// The pictures that the file names, of spaces in file order and then of the land. One file may be of several walls.
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
