//! Labels and help of every field, named after it.

mod chain;
mod lap;
mod position;
mod ride;
mod rings;
mod sheet;
mod tyre;

pub(crate) use {chain::*, lap::*, position::*, ride::*, rings::*, sheet::*, tyre::*};
