//! Memory that only grows: all of it goes with the module once the page is unpacked.

use core::alloc::{GlobalAlloc, Layout};
use core::arch::wasm32::{memory_grow, memory_size};
use core::ptr::null_mut;
use core::sync::atomic::{AtomicUsize, Ordering};

const PAGE: usize = 65_536;

/// An allocator that never takes anything back.
pub(crate) struct Growing {
    /// Where the room that is left begins; 0 before the first.
    next: AtomicUsize,
}

impl Growing {
    pub(crate) const fn new() -> Self {
        Self { next: AtomicUsize::new(0) }
    }
}

// SAFETY: every block lies behind the one before, in pages that were asked for and are nobody else's.
unsafe impl GlobalAlloc for Growing {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        let have = memory_size::<0>() * PAGE;
        let next = match self.next.load(Ordering::Relaxed) {
            0 => have,
            next => next,
        };
        let at = next.next_multiple_of(layout.align());
        let end = at + layout.size();
        if end > have && memory_grow::<0>((end - have).div_ceil(PAGE)) == usize::MAX {
            return null_mut();
        }
        self.next.store(end, Ordering::Relaxed);
        at as *mut u8
    }

    unsafe fn dealloc(&self, _: *mut u8, _: Layout) {}
}
