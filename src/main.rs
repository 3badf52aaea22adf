//! Runs the command line and turns its outcome into an exit code.

mod cli;

/// Faster than the system's allocator for many small objects.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> std::process::ExitCode {
    cli::run().into()
}
