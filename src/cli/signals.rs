//! Handles interrupts: temporary files are removed, and a long run may end after a complete row.

use std::io;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Mutex, PoisonError};

use tempfile::NamedTempFile;

/// Set once a long run has been asked to stop.
static STOP: AtomicBool = AtomicBool::new(false);
/// Whether the current run checks [`STOP`] between rows.
static IS_ASKED: AtomicBool = AtomicBool::new(false);
/// Temporary files that are not yet moved into place.
static UNFINISHED: Mutex<Vec<PathBuf>> = Mutex::new(Vec::new());

/// From now on, the first signal only requests a stop, so that what is in progress is completed.
pub(crate) fn ask_first() -> &'static AtomicBool {
    IS_ASKED.store(true, Ordering::Relaxed);
    listen();
    &STOP
}

/// Creates a temporary file that is removed if the run is ended: signals are handled from before the file exists, and a
/// signal that arrives waits until the file is registered.
pub(crate) fn unfinished(
    create: impl FnOnce() -> io::Result<NamedTempFile>,
) -> io::Result<NamedTempFile> {
    listen();
    let mut files = UNFINISHED.lock().unwrap_or_else(PoisonError::into_inner);
    let file = create()?;
    files.push(file.path().to_owned());
    Ok(file)
}

/// Unregisters a temporary file that was moved or removed.
pub(crate) fn finished(path: &Path) {
    if let Ok(mut files) = UNFINISHED.lock() {
        files.retain(|file| file != path);
    }
}

/// Removes every temporary file and ends the program. No other is created meanwhile.
#[cfg(unix)]
fn end(signal: i32) -> ! {
    let files = UNFINISHED.lock().unwrap_or_else(PoisonError::into_inner);
    for file in files.iter() {
        let _ = std::fs::remove_file(file);
    }
    // The exit code shells use for a program ended by a signal.
    std::process::exit(128 + signal)
}

/// Starts a thread that waits for signals, once.
#[cfg(unix)]
fn listen() {
    use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
    static ONCE: std::sync::Once = std::sync::Once::new();
    ONCE.call_once(|| {
        let mut wanted = vec![SIGINT, SIGTERM];
        // Under `nohup` a run continues after its terminal is closed.
        if !is_ignored(SIGHUP) {
            wanted.push(SIGHUP);
        }
        // Without a handler a temporary file may remain, which is no reason to stop.
        let Ok(mut signals) = signal_hook::iterator::Signals::new(wanted) else { return };
        std::thread::spawn(move || {
            for signal in signals.forever() {
                let is_first = !STOP.swap(true, Ordering::Relaxed);
                if !(is_first && IS_ASKED.load(Ordering::Relaxed)) {
                    end(signal);
                }
            }
        });
    });
}

/// On other systems, an interrupt ends the program at once.
#[cfg(not(unix))]
fn listen() {}

/// Whether a signal was already ignored when the program started; `false` if the system does not say.
#[cfg(unix)]
fn is_ignored(signal: i32) -> bool {
    let Ok(status) = std::fs::read_to_string("/proc/self/status") else { return false };
    let mask = status.lines().find_map(|line| line.strip_prefix("SigIgn:"));
    let mask = mask.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok());
    mask.is_some_and(|mask| mask >> (signal - 1) & 1 == 1)
}
