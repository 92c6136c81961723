//! A module put together again from its sorted bytes.

use crate::function::{ADDRESS, Bytes, number, walk, write_number};
use crate::stream::Stream;
use alloc::vec::Vec;

/// A module that is being put together, a few functions at a time.
pub struct Joining<'a> {
    streams: Streams<'a>,
    /// Functions that are still to come.
    left: u32,
    /// The section of functions as far as it has come.
    functions: Vec<u8>,
}

impl<'a> Joining<'a> {
    /// Begins with sorted bytes; nothing where they are none.
    #[must_use]
    pub fn of(sorted: &'a [u8]) -> Option<Self> {
        let mut streams = Streams::of(sorted)?;
        let left = number(&mut streams, Stream::Locals)?;
        let mut functions = Vec::with_capacity(sorted.len());
        functions.append(&mut streams.joined);
        Some(Self { streams, left, functions })
    }

    /// Puts together functions of about `most` bytes, and says how many functions are left; nothing where bytes are damaged.
    #[must_use]
    pub fn go_on(&mut self, most: usize) -> Option<u32> {
        let end = self.functions.len().saturating_add(most);
        while self.left > 0 && self.functions.len() < end {
            walk(&mut self.streams)?;
            write_number(self.streams.joined.len(), &mut self.functions);
            self.functions.append(&mut self.streams.joined);
            self.left -= 1;
        }
        Some(self.left)
    }

    /// The module, once no function is left.
    #[must_use]
    pub fn module(self) -> Vec<u8> {
        let [before, after] =
            [Stream::Before, Stream::After].map(|stream| self.streams.rest[stream as usize]);
        let mut module = Vec::with_capacity(before.len() + self.functions.len() + after.len() + 5);
        module.extend(before);
        write_number(self.functions.len(), &mut module);
        module.extend(self.functions);
        module.extend(after);
        module
    }
}

/// What is left of each stream, and the bytes of a function that were taken from them.
struct Streams<'a> {
    rest: [&'a [u8]; Stream::COUNT],
    joined: Vec<u8>,
}

impl<'a> Streams<'a> {
    fn of(sorted: &'a [u8]) -> Option<Self> {
        let mut lengths = Self { rest: [sorted; Stream::COUNT], joined: Vec::new() };
        let mut each = [0; Stream::COUNT];
        for length in &mut each {
            *length = usize::try_from(number(&mut lengths, Stream::Before)?).ok()?;
        }
        let mut bytes = lengths.rest[Stream::Before as usize];
        let mut rest = [bytes; Stream::COUNT];
        for (stream, length) in rest.iter_mut().zip(each) {
            (*stream, bytes) = bytes.split_at_checked(length)?;
        }
        Some(Self { rest, joined: Vec::new() })
    }
}

impl Bytes for Streams<'_> {
    fn next(&mut self, stream: Stream) -> Option<u8> {
        let (&byte, rest) = self.rest[stream as usize].split_first()?;
        self.rest[stream as usize] = rest;
        let is_address = stream == Stream::Instructions && byte == ADDRESS;
        self.joined.push(if is_address { 0x41 } else { byte });
        Some(byte)
    }
}
