//! Unpacks a `.lzma` file a little at a time, so that a page that waits for it can do other things meanwhile.
//!
//! Without the standard library it is a third as large. Its caller is `www/unpack.js`: `room` for the packed bytes, filled
//! by the caller; `begin`; then `go_on` until all is there, at `unpacked`.
#![cfg(target_arch = "wasm32")]
#![no_std]

extern crate alloc;

mod growing;

use alloc::boxed::Box;
use alloc::vec;
use alloc::vec::Vec;
use core::panic::PanicInfo;
use growing::Growing;
use lzma_rust2::{LzmaReader, Read};

#[global_allocator]
static MEMORY: Growing = Growing::new();

#[panic_handler]
fn stop(_: &PanicInfo<'_>) -> ! {
    core::arch::wasm32::unreachable()
}

/// A file that is being unpacked.
pub struct Unpacking {
    reader: LzmaReader<&'static [u8]>,
    unpacked: Vec<u8>,
    done: usize,
}

impl Unpacking {
    /// The file has a header with its unpacked length in the eight bytes from the sixth on.
    fn of(packed: &'static [u8]) -> Option<Self> {
        let length = u64::from_le_bytes(packed.get(5..13)?.try_into().ok()?);
        Some(Self {
            reader: LzmaReader::new_mem_limit(packed, u32::MAX, None).ok()?,
            unpacked: vec![0; usize::try_from(length).ok()?],
            done: 0,
        })
    }

    fn go_on(&mut self, most: usize) -> Option<usize> {
        let end = self.unpacked.len().min(self.done.saturating_add(most));
        while self.done < end {
            match self.reader.read(&mut self.unpacked[self.done..end]) {
                Ok(read @ 1..) => self.done += read,
                _ => return None,
            }
        }
        Some(self.unpacked.len() - self.done)
    }
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

/// Unpacks `most` bytes more and says how many are left; −1 if the file is damaged.
#[unsafe(no_mangle)]
pub extern "C" fn go_on(unpacking: &mut Unpacking, most: usize) -> isize {
    unpacking.go_on(most).and_then(|left| isize::try_from(left).ok()).unwrap_or(-1)
}

/// Where the unpacked bytes are.
#[unsafe(no_mangle)]
pub extern "C" fn unpacked(unpacking: &Unpacking) -> *const u8 {
    unpacking.unpacked.as_ptr()
}

/// How many bytes there are, unpacked.
#[unsafe(no_mangle)]
pub extern "C" fn unpacked_length(unpacking: &Unpacking) -> usize {
    unpacking.unpacked.len()
}
