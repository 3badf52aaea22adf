//! How deep an answer may ask for the answer to a changed line: rules that change a line in turn could go on for ever.

use std::cell::Cell;

thread_local! {
    static DEPTH: Cell<usize> = const { Cell::new(0) };
}

/// The most answers that may be looked for one inside the other. Lines that are answered need far fewer.
const MOST: usize = 14;

/// One answer that is being looked for, until it is dropped.
pub(super) struct Nested;

impl Nested {
    /// `None` if too many are being looked for already.
    pub(super) fn begin() -> Option<Nested> {
        DEPTH.with(|depth| {
            let now = depth.get();
            (now < MOST).then(|| {
                depth.set(now + 1);
                Nested
            })
        })
    }
}

impl Drop for Nested {
    fn drop(&mut self) {
        DEPTH.with(|depth| depth.set(depth.get().saturating_sub(1)));
    }
}
