//! All pages as one PDF, tagged for screen readers, with the sides file attached.

use krilla::Data;
use krilla::Document;
use krilla::SerializeSettings;
use krilla::configure::{ConfigurationBuilder, PdfVersion};
use krilla::embed::{AssociationKind, EmbeddedFile, MimeType};
use krilla::geom::Size;
use krilla::metadata::Metadata;
use krilla::page::PageSettings;

use crate::error::Error;
use crate::pages::Pages;
use crate::pages::export::pen::{Pen, PenFonts, narrowed};
use crate::pages::export::tags::Tags;
use crate::pages::page::Page;

/// The name of the attached sides file.
const ATTACHED: &str = "house.sides";
/// The language of the pages.
const LANGUAGE: &str = "en-US";

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
        // Uncompressed, so that any text editor shows it, even after mail has changed the line ends.
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
    let mut document = Document::new_with(settings()?);
    let fonts = PenFonts::open()?;
    let mut tags = Tags::default();
    for page in pages {
        let (width, height) = page.size_pt();
        let size = Size::from_wh(narrowed(width), narrowed(height))
            .ok_or_else(|| Error::Drawing("a page has no size".to_owned()))?;
        let mut sheet = document.start_page_with(PageSettings::new(size));
        let mut surface = sheet.surface();
        let mut pen = Pen::new(&mut surface, &fonts);
        for (passage, inks) in page.passages() {
            tags.passage(passage, inks, &mut pen)?;
        }
        surface.finish();
        sheet.finish();
    }
    document.set_tag_tree(tags.finish(LANGUAGE));
    Ok(document)
}

/// PDF 1.5 has all that the pages need. In later versions the library states that the tags are not suspect, which some
/// readers take for an error.
fn settings() -> Result<SerializeSettings, Error> {
    let configuration = ConfigurationBuilder::new().with_version(PdfVersion::Pdf15).finish();
    let configuration = configuration.map_err(|error| Error::Drawing(format!("{error:?}")))?;
    Ok(SerializeSettings { configuration, ..SerializeSettings::default() })
}

fn finished(mut document: Document, title: String) -> Result<Vec<u8>, Error> {
    let metadata = Metadata::new()
        .title(title)
        .language(LANGUAGE.to_owned())
        .creator(format!("fairfoot {}", env!("CARGO_PKG_VERSION")));
    document.set_metadata(metadata);
    document.finish().map_err(|error| Error::Drawing(format!("{error:?}")))
}
