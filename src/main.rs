//! Starts the command line and turns its outcome into an exit code.

mod cli;

/// Faster with many small things than the system's own.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> std::process::ExitCode {
    cli::run().into()
}
