//! Starts the command line and turns its outcome into an exit code.

mod cli;

fn main() -> std::process::ExitCode {
    cli::run().into()
}
