//! A packed module on its way out: its `.lzma` file is unpacked, then its functions are put together.

use alloc::vec;
use alloc::vec::Vec;
use core::mem::take;
use lzma_rust2::{LzmaReader, Read};
use sorting::Joining;

/// How far it has come.
pub struct Unpacking {
    file: LzmaReader<&'static [u8]>,
    /// What comes out of the file, and how much of it is there.
    sorted: Vec<u8>,
    done: usize,
    /// Once all of the file is there.
    joining: Option<Joining<'static>>,
    /// Once all functions are.
    module: Option<Vec<u8>>,
}

impl Unpacking {
    /// The file has a header with its unpacked length in the eight bytes from the sixth on.
    pub(crate) fn of(packed: &'static [u8]) -> Option<Self> {
        let length = u64::from_le_bytes(packed.get(5..13)?.try_into().ok()?);
        Some(Self {
            file: LzmaReader::new_mem_limit(packed, u32::MAX, None).ok()?,
            sorted: vec![0; usize::try_from(length).ok()?],
            done: 0,
            joining: None,
            module: None,
        })
    }

    /// Works on `most` bytes more. Nothing where the file is damaged.
    pub(crate) fn go_on(&mut self, most: usize) -> Option<()> {
        if self.done < self.sorted.len() {
            self.unpack(most)
        } else if let Some(joining) = &mut self.joining {
            if joining.go_on(most)? == 0 {
                self.module = self.joining.take().map(Joining::module);
            }
            Some(())
        } else {
            self.joining = Some(Joining::of(take(&mut self.sorted).leak())?);
            Some(())
        }
    }

    fn unpack(&mut self, most: usize) -> Option<()> {
        let end = self.sorted.len().min(self.done.saturating_add(most));
        while self.done < end {
            match self.file.read(&mut self.sorted[self.done..end]) {
                Ok(read @ 1..) => self.done += read,
                _ => return None,
            }
        }
        Some(())
    }

    /// The module, once it is whole.
    pub(crate) fn module(&self) -> Option<&[u8]> {
        self.module.as_deref()
    }
}
