//! A short list kept in place, so that set-ups are copied and computed without allocation.

use core::ops::{Deref, DerefMut};

/// One to `N` values; longer input is refused by [`push`](Self::push).
#[derive(Debug, Clone, Copy)]
pub(super) struct Few<T, const N: usize> {
    items: [T; N],
    count: usize,
}

impl<T: Copy, const N: usize> Few<T, N> {
    pub(super) const fn of(first: T) -> Self {
        Self { items: [first; N], count: 1 }
    }

    /// Appends `item`, or says `false` when the list is full.
    pub(super) fn push(&mut self, item: T) -> bool {
        let slot = self.items.get_mut(self.count);
        let fits = slot.is_some();
        if let Some(slot) = slot {
            *slot = item;
            self.count += 1;
        }
        fits
    }
}

impl<T, const N: usize> Deref for Few<T, N> {
    type Target = [T];

    fn deref(&self) -> &[T] {
        &self.items[..self.count]
    }
}

impl<T, const N: usize> DerefMut for Few<T, N> {
    fn deref_mut(&mut self) -> &mut [T] {
        &mut self.items[..self.count]
    }
}

/// Unused slots hold leftovers, so only the values in use are compared.
impl<T: PartialEq, const N: usize> PartialEq for Few<T, N> {
    fn eq(&self, other: &Self) -> bool {
        **self == **other
    }
}

impl<T: Eq, const N: usize> Eq for Few<T, N> {}
