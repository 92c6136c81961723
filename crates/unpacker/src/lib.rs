//! Unpacks a module from its `.lzma` file a little at a time, so that a page that waits for it can do other things meanwhile.
//!
//! Without the standard library it is a third as large. Its caller is `www/unpack.js`: `room` for the packed bytes, filled
//! by the caller; `begin`; then `go_on` until all is there, at `unpacked`.
#![cfg(target_arch = "wasm32")]
#![no_std]

extern crate alloc;

mod growing;
mod unpacking;

use alloc::boxed::Box;
use alloc::vec;
use core::panic::PanicInfo;
use growing::Growing;
pub use unpacking::Unpacking;

#[global_allocator]
static MEMORY: Growing = Growing::new();

#[panic_handler]
fn stop(_: &PanicInfo<'_>) -> ! {
    core::arch::wasm32::unreachable()
}

/// Room for a file of `length` bytes, for good.
#[unsafe(no_mangle)]
pub extern "C" fn room(length: usize) -> *mut u8 {
    vec![0; length].leak().as_mut_ptr()
}

/// Begins with the file of `length` bytes at `packed`; null if it is none.
///
/// # Safety
/// The bytes are in a room of that length, and stay as they are.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn begin(packed: *const u8, length: usize) -> Option<Box<Unpacking>> {
    // SAFETY: the caller's promise.
    Unpacking::of(unsafe { core::slice::from_raw_parts(packed, length) }).map(Box::new)
}

/// Works on `most` bytes more and says how much is left: 1 something, 0 nothing, −1 that the file is damaged.
#[unsafe(no_mangle)]
pub extern "C" fn go_on(unpacking: &mut Unpacking, most: usize) -> i32 {
    unpacking.go_on(most).map_or(-1, |()| i32::from(unpacking.module().is_none()))
}

/// Where the unpacked bytes are; null while they are not all there.
#[unsafe(no_mangle)]
pub extern "C" fn unpacked(unpacking: &Unpacking) -> *const u8 {
    unpacking.module().map_or(core::ptr::null(), <[u8]>::as_ptr)
}

/// How many bytes there are, unpacked.
#[unsafe(no_mangle)]
pub extern "C" fn unpacked_length(unpacking: &Unpacking) -> usize {
    unpacking.module().map_or(0, <[u8]>::len)
}
