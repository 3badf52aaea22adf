//! All pages as one PDF, with the sides file attached.

use krilla::Data;
use krilla::Document;
use krilla::embed::{AssociationKind, EmbeddedFile, MimeType};
use krilla::geom::Size;
use krilla::metadata::Metadata;
use krilla::page::PageSettings;
use krilla_svg::{SurfaceExt, SvgSettings};

use crate::error::Error;
use crate::pages::page::Page;
use crate::pages::{Pages, trees};

/// The name of the attached sides file.
const ATTACHED: &str = "house.sides";

/// Writes every page; the same pages always give the same bytes.
pub(crate) fn written(pages: &Pages) -> Result<Vec<u8>, Error> {
    let mut document = drawn(pages.pages())?;
    let attached = EmbeddedFile {
        path: ATTACHED.to_owned(),
        mime_type: MimeType::new("text/plain"),
        description: Some(pages.line()),
        association_kind: AssociationKind::Source,
        data: Data::from(pages.text.clone().into_bytes()),
        modification_date: None,
        // Uncompressed, so that any text editor shows it, also after mail has changed the line ends.
        compress: Some(false),
        location: None,
    };
    document.embed_file(attached);
    finished(document, pages.title())
}

/// Pages without an attached sides file.
pub(crate) fn alone(pages: &[Page], title: &str) -> Result<Vec<u8>, Error> {
    finished(drawn(pages)?, title.to_owned())
}

fn drawn(pages: &[Page]) -> Result<Document, Error> {
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    if cores < 2 || pages.len() < 2 {
        return drawn_from(trees(pages), pages);
    }
    // A second core parses the next page while this one draws; a page at most waits between them.
    std::thread::scope(|scope| {
        let (sender, parsed) = std::sync::mpsc::sync_channel(1);
        scope.spawn(move || {
            for tree in trees(pages) {
                if sender.send(tree).is_err() {
                    break;
                }
            }
        });
        drawn_from(parsed.into_iter(), pages)
    })
}

fn drawn_from(
    trees: impl Iterator<Item = Result<usvg::Tree, Error>>,
    pages: &[Page],
) -> Result<Document, Error> {
    let mut document = Document::new();
    for (tree, page) in trees.zip(pages) {
        let (width, height) = page.size_pt();
        let (width, height) = (narrowed(width), narrowed(height));
        let size = Size::from_wh(width, height);
        let (Some(size), Some(settings)) = (size, PageSettings::from_wh(width, height)) else {
            return Err(Error::Drawing("a page has no size".to_owned()));
        };
        let mut sheet = document.start_page_with(settings);
        let mut surface = sheet.surface();
        let drawn = surface.draw_svg(&tree?, size, SvgSettings::default());
        surface.finish();
        sheet.finish();
        drawn.ok_or_else(|| Error::Drawing("a page was not drawn".to_owned()))?;
    }
    Ok(document)
}

fn finished(mut document: Document, title: String) -> Result<Vec<u8>, Error> {
    let metadata = Metadata::new()
        .title(title)
        .language("en".to_owned())
        .creator(format!("fairfoot {}", env!("CARGO_PKG_VERSION")));
    document.set_metadata(metadata);
    document.finish().map_err(|error| Error::Drawing(format!("{error:?}")))
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "the size of a page, for a library that takes f32"
)]
fn narrowed(points: f64) -> f32 {
    points as f32
}
