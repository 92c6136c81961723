//! The JavaScript module’s questions about wheel and tyre.

pub mod tyre;
pub mod wheel;
