//! `fairfoot outline`: prints a building's outline from a map, as lines for a sides file.

use std::path::PathBuf;

use clap::Args;
use fairfoot::maps::{self, Feature, Format, MOST_MAP_BYTES, Position};

use crate::cli::{Outcome, Stop, files};

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// The map: GeoJSON, KML, GPX, WKT or OSM XML; `-` reads standard input
    file: PathBuf,
    /// List the shapes in the map, one a line, instead of printing an outline
    #[arg(long)]
    list: bool,
    /// Take the shape with this identifier, as `--list` shows it
    #[arg(long, value_name = "ID", conflicts_with = "list")]
    id: Option<String>,
    /// Take the shape nearest to this latitude and longitude, as `32.7512,-97.3301`
    #[arg(long, value_name = "LAT,LON", value_parser = position, allow_hyphen_values = true, conflicts_with_all = ["list", "id"])]
    at: Option<Position>,
    /// The space or level of the sides file that the outline is of
    #[arg(long, value_name = "NAME", default_value = "House")]
    of: String,
    /// When the map was made or looked at, for the comment above the outline
    #[arg(long, value_name = "DATE")]
    date: Option<String>,
}

/// A latitude and a longitude, separated by a comma.
fn position(text: &str) -> Result<Position, String> {
    let help = "write latitude, a comma, longitude: `32.7512,-97.3301`";
    let (latitude, longitude) = text.split_once(',').ok_or(help)?;
    let number = |part: &str| part.trim().parse::<f64>().map_err(|_| help.to_owned());
    let (latitude, longitude) = (number(latitude)?, number(longitude)?);
    Position::new(longitude, latitude).ok_or_else(|| {
        "latitude goes from -90 to 90, longitude from -180 to 180; latitude comes first".to_owned()
    })
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    let bytes = files::read_bytes(&options.file, MOST_MAP_BYTES, files::Wanted::Map)?;
    let shown = files::shown(&options.file);
    let said = |message: String| Stop::Said(format!("{shown}: {message}"));
    let text = String::from_utf8(bytes)
        .map_err(|_| said("this is not UTF-8 text; a map is saved as plain text".to_owned()))?;
    let format = Format::of(&text).ok_or_else(|| {
        said("this is not a map that fairfoot reads (GeoJSON, KML, GPX, WKT or OSM XML)".to_owned())
    })?;
    let features = maps::features(format, &text).map_err(|error| said(error.to_string()))?;
    if options.list {
        return list(&features);
    }
    let feature = chosen(options, &features).map_err(said)?;
    let outline = feature.outline().map_err(|error| said(error.to_string()))?;
    let name = feature.name().unwrap_or("Map");
    files::print(&outline.block(name, &options.of, &source(options, feature)))?;
    Ok(Outcome::Done)
}

/// The shape chosen by the options, or the only one.
fn chosen<'a>(options: &Options, features: &'a [Feature]) -> Result<&'a Feature, String> {
    if let Some(id) = &options.id {
        return features.iter().find(|feature| feature.id() == id).ok_or_else(|| {
            format!("no shape is called `{id}`; `fairfoot outline --list` shows what there is")
        });
    }
    if let Some(at) = options.at {
        return maps::nearest(features, at).ok_or_else(|| "no shape is near it".to_owned());
    }
    match features {
        [only] => Ok(only),
        _ => Err(format!(
            "the map has {} shapes; choose one with `--at LAT,LON`, or see them with `--list` and take one with `--id`",
            features.len()
        )),
    }
}

/// The source of the outline, in words.
fn source(options: &Options, feature: &Feature) -> String {
    let file = options.file.file_name().map_or_else(
        || "standard input".to_owned(),
        |name| {
            if name == "-" {
                "standard input".to_owned()
            } else {
                name.to_string_lossy().into_owned()
            }
        },
    );
    let date = options.date.as_ref().map(|date| format!(", {date}")).unwrap_or_default();
    format!("{file}, shape {}{date}", feature.id())
}

fn list(features: &[Feature]) -> Result<Outcome, Stop> {
    let mut text = String::new();
    for feature in features {
        let size = match feature.outline() {
            Ok(outline) => {
                format!("{} sq ft, {} sides", outline.plane_text(), outline.sides().len())
            }
            Err(error) => error.to_string(),
        };
        let name =
            feature.name().map(|name| format!("  {}", files::visible(name))).unwrap_or_default();
        text.push_str(&format!("{}  {size}{name}\n", files::visible(feature.id())));
    }
    files::print(&text)?;
    Ok(Outcome::Done)
}
