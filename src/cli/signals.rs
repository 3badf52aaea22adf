//! What an interrupted run leaves behind: nothing. Temporary files are taken away, and a long run may end after a whole row.

use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::sync::atomic::{AtomicBool, Ordering};

/// Set once somebody has asked a long run to stop.
static STOP: AtomicBool = AtomicBool::new(false);
/// Whether a run looks at [`STOP`] between rows.
static IS_ASKED: AtomicBool = AtomicBool::new(false);
/// Files that are not yet where they belong.
static UNFINISHED: Mutex<Vec<PathBuf>> = Mutex::new(Vec::new());

/// From now on the first signal only asks to stop; what is at hand is written whole.
pub(crate) fn ask_first() -> &'static AtomicBool {
    IS_ASKED.store(true, Ordering::Relaxed);
    listen();
    &STOP
}

/// A temporary file to be taken away if the run is ended.
pub(crate) fn unfinished(path: &Path) {
    if let Ok(mut files) = UNFINISHED.lock() {
        files.push(path.to_owned());
    }
    listen();
}

/// The temporary file is where it belongs, or gone.
pub(crate) fn finished(path: &Path) {
    if let Ok(mut files) = UNFINISHED.lock() {
        files.retain(|file| file != path);
    }
}

/// Takes every temporary file away and ends.
#[cfg(unix)]
fn end(signal: i32) -> ! {
    if let Ok(files) = UNFINISHED.lock() {
        for file in files.iter() {
            let _ = std::fs::remove_file(file);
        }
    }
    // As a shell tells of a program that a signal has ended.
    std::process::exit(128 + signal)
}

/// Waits for signals in a thread of its own, once.
#[cfg(unix)]
fn listen() {
    use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
    static ONCE: std::sync::Once = std::sync::Once::new();
    ONCE.call_once(|| {
        let mut wanted = vec![SIGINT, SIGTERM];
        // Under `nohup` a run goes on after its terminal is closed.
        if !is_ignored(SIGHUP) {
            wanted.push(SIGHUP);
        }
        // Without it a temporary file may be left; that is no reason to stop.
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

/// Elsewhere the system ends a run at once.
#[cfg(not(unix))]
fn listen() {}

/// Whether a signal was to be ignored when the program started, as far as the system tells.
#[cfg(unix)]
fn is_ignored(signal: i32) -> bool {
    let Ok(status) = std::fs::read_to_string("/proc/self/status") else { return false };
    let mask = status.lines().find_map(|line| line.strip_prefix("SigIgn:"));
    let mask = mask.and_then(|mask| u64::from_str_radix(mask.trim(), 16).ok());
    mask.is_some_and(|mask| mask >> (signal - 1) & 1 == 1)
}
