//! What the comparison of all bikes is written and drawn from.

use crate::rack::compared::Compared;
use std::rc::Rc;

/// “Which of all the bikes?”, before it is put in words.
#[derive(Debug)]
pub struct BikesSection {
    /// The comparison; none before it came into sight.
    pub compared: Option<Rc<Compared>>,
}
