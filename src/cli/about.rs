//! `fairfoot about`: what the program is and whose work is in it.

use clap::Args;

use crate::cli::{Outcome, Stop, files};

/// Made by `.ci/licenses.py --write` from the libraries themselves.
const NOTICES: &str = include_str!("notices.txt");
const OWN_LICENSE: &str = include_str!("../../LICENSE");
const FONT_LICENSE: &str = include_str!("../pages/fonts/LICENSE");

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// Print the license and the notices of every library and font inside
    #[arg(long)]
    licenses: bool,
}

pub(crate) fn run(options: &Options) -> Result<Outcome, Stop> {
    if options.licenses {
        files::print(&licenses())?;
    } else {
        files::print(&about())?;
    }
    Ok(Outcome::Done)
}

fn about() -> String {
    format!(
        "fairfoot {}\n{}.\n\n{}\n\nUnder the MIT license. The licenses of the libraries and fonts inside: \
         fairfoot about --licenses\n",
        env!("CARGO_PKG_VERSION"),
        env!("CARGO_PKG_DESCRIPTION"),
        fairfoot::wording::DISCLAIMER,
    )
}

fn licenses() -> String {
    format!(
        "fairfoot:\n\n{}\n{line}\n\nThe DejaVu fonts of the pages:\n\n{}\n{line}\n\nThe libraries.\n{}",
        OWN_LICENSE.trim_end(),
        FONT_LICENSE.trim_end(),
        NOTICES,
        line = "-".repeat(78),
    )
}
