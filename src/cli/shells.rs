//! `fairfoot completions` and `fairfoot manual`.

use clap::{Args, CommandFactory};
use clap_complete::Shell;
use clap_mangen::Man;

use crate::cli::{CommandLine, Outcome, Stop, files};

#[derive(Debug, Args)]
pub(crate) struct Options {
    /// Which shell
    shell: Shell,
}

pub(crate) fn completions(options: &Options) -> Result<Outcome, Stop> {
    let mut script = Vec::new();
    clap_complete::generate(options.shell, &mut CommandLine::command(), "fairfoot", &mut script);
    files::print(&String::from_utf8_lossy(&script))?;
    Ok(Outcome::Done)
}

pub(crate) fn manual() -> Result<Outcome, Stop> {
    let page =
        page().map_err(|error| Stop::Said(format!("the man page cannot be made: {error}")))?;
    files::print(&String::from_utf8_lossy(&page))?;
    Ok(Outcome::Done)
}

/// The man page: the program, then each command with its options.
fn page() -> std::io::Result<Vec<u8>> {
    let mut command = CommandLine::command();
    command.build();
    let mut page = Vec::new();
    let man = Man::new(command.clone()).section("1");
    man.render_title(&mut page)?;
    man.render_name_section(&mut page)?;
    man.render_synopsis_section(&mut page)?;
    man.render_description_section(&mut page)?;
    for sub in command.get_subcommands().filter(|sub| sub.get_name() != "help") {
        let mut part = Vec::new();
        let man = Man::new(sub.clone());
        man.render_synopsis_section(&mut part)?;
        man.render_description_section(&mut part)?;
        man.render_options_section(&mut part)?;
        let part = String::from_utf8_lossy(&part).replace(".SH ", ".SS ");
        page.extend(format!(".SH \"{}\"\n{part}", sub.get_name().to_uppercase()).into_bytes());
    }
    let man = Man::new(command);
    man.render_extra_section(&mut page)?;
    man.render_version_section(&mut page)?;
    Ok(page)
}
