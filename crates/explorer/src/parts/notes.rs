//! What the browser has to tell of work that is in its hands.

use crate::parts::words::answer as words;

/// How far it is, and for how many seconds it will go on.
#[must_use]
pub fn left([done, total]: [usize; 2], passed_s: f64) -> String {
    if done >= total {
        return words::SHOPPING.to_owned();
    }
    words::left(done, total, passed_s * (total as f64 / done.max(1) as f64 - 1.0))
}
