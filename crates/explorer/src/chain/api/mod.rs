//! The JavaScript module’s questions about cage and chain.

pub mod cage;
pub mod chain;
