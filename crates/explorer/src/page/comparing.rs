//! A comparison of all bikes on its way.

use crate::bench::whole_bike::WholeBike;
use crate::rack::row::{Row, Whose};
use std::collections::VecDeque;

/// Bikes of which some are worked out.
#[derive(Debug)]
pub(crate) struct Comparing {
    /// Those that are still to be worked out.
    pub(crate) waiting: VecDeque<(Whose, WholeBike)>,
    /// Those that are.
    pub(crate) rows: Vec<Row>,
}
