//! The bytes of a module of WebAssembly sorted by what they are, and put together again.
//!
//! Instructions, numbers and local variables each on their own pack a tenth smaller than in turn. `packer` sorts them, `unpacker`
//! puts them together in the page; both go the same way through a function.
#![cfg_attr(not(test), no_std)]

extern crate alloc;

mod function;
mod joined;
mod sorted;
mod stream;

pub use joined::Joining;
pub use sorted::{pieces, sorted};
