//! A module sorted by what its bytes are.

use crate::function::{ADDRESS, Bytes, number, walk, write_number};
use crate::joined::Joining;
use crate::stream::Stream;
use alloc::vec::Vec;
use core::ops::Range;

/// A number of 32 bits as long as this in LEB128 is mostly an address in memory.
const LONG: usize = 3;

/// All of `module`, whose section of functions has its content at `functions`, so that `Joining` gives that very module again; nothing
/// where that cannot be: an instruction is not known, or lengths are written longer than they need be.
#[must_use]
pub fn sorted(module: &[u8], functions: Range<usize>) -> Option<Vec<u8>> {
    let mut sorting = Sorting::of(module.get(functions.clone())?);
    sorting.functions()?;
    // The section's length stands before its content, and follows from it.
    let mut length = Vec::new();
    write_number(functions.len(), &mut length);
    sorting.streams[Stream::Before as usize] = module[..functions.start.checked_sub(length.len())?].to_vec();
    sorting.streams[Stream::After as usize] = module[functions.end..].to_vec();
    let sorted = sorting.whole();
    (joined(&sorted)? == module).then_some(sorted)
}

/// Functions and other pieces of a module as they would lie in it sorted, which is no module.
#[must_use]
pub fn pieces<'a>(pieces: impl Iterator<Item = &'a [u8]>) -> Vec<u8> {
    let mut all = Sorting::of(&[]);
    for piece in pieces {
        let one = Sorting::of_piece(piece);
        all.streams.iter_mut().zip(one.streams).for_each(|(stream, more)| stream.extend(more));
    }
    all.whole()
}

fn joined(sorted: &[u8]) -> Option<Vec<u8>> {
    let mut joining = Joining::of(sorted)?;
    joining.go_on(usize::MAX)?;
    Some(joining.module())
}

/// What is left of the functions, and the streams so far.
struct Sorting<'a> {
    rest: &'a [u8],
    streams: [Vec<u8>; Stream::COUNT],
}

impl<'a> Sorting<'a> {
    fn of(functions: &'a [u8]) -> Self {
        Self { rest: functions, streams: Default::default() }
    }

    fn functions(&mut self) -> Option<()> {
        for _ in 0..number(self, Stream::Locals)? {
            self.pass_length()?;
            walk(self)?;
        }
        self.rest.is_empty().then_some(())
    }

    /// A function's length follows from its content.
    fn pass_length(&mut self) -> Option<()> {
        let more = self.rest.iter().position(|byte| *byte < 0x80)?;
        self.rest = &self.rest[more + 1..];
        Some(())
    }

    fn is_long(&self) -> bool {
        self.rest.iter().take(LONG - 1).all(|byte| *byte >= 0x80)
    }

    /// A function, or else a piece of something else.
    fn of_piece(piece: &'a [u8]) -> Self {
        let mut sorting = Self::of(piece);
        if walk(&mut sorting).is_some() && sorting.rest.is_empty() {
            return sorting;
        }
        let mut other = Self::of(&[]);
        other.streams[Stream::After as usize] = piece.to_vec();
        other
    }

    fn whole(self) -> Vec<u8> {
        let mut whole = Vec::new();
        for stream in &self.streams {
            write_number(stream.len(), &mut whole);
        }
        whole.extend(self.streams.concat());
        whole
    }
}

impl Bytes for Sorting<'_> {
    fn next(&mut self, stream: Stream) -> Option<u8> {
        let (&byte, rest) = self.rest.split_first()?;
        self.rest = rest;
        let sorted = match (stream, byte) {
            (Stream::Instructions, ADDRESS) => return None,
            (Stream::Instructions, 0x41) if self.is_long() => ADDRESS,
            _ => byte,
        };
        self.streams[stream as usize].push(sorted);
        Some(sorted)
    }
}

#[cfg(test)]
mod tests {
    use super::{Sorting, joined, sorted};
    use crate::stream::Stream;
    use core::ops::Range;

    /// A module of two functions with some of each kind of operand, by hand from the specification's chapter 5.
    const MODULE: [u8; 73] = [
        0, b'a', b's', b'm', 1, 0, 0, 0, // a module
        1, 4, 1, 0x60, 0, 0, // a type: nothing in, nothing out
        3, 3, 2, 0, 0, // two functions of it
        10, 45, 2, // of 45 bytes
        28, 1, 2, 0x7f, // two local variables
        0x41, 0x80, 0x80, 0xc0, 0x00, 0x21, 0, // an address, kept
        0x20, 0, 0x28, 2, 8, 0x1a, // read from
        0x02, 0x40, 0x41, 0, 0x0e, 1, 0, 1, 0x0b, // a block with a table of branches
        0x10, 1, 0x0b, // a call
        14, 0, 0x44, 0, 0, 0, 0, 0, 0, 0xf8, 0x3f, 0xfc, 0x06, 0x1a, 0x0b, // 1.5, whole, dropped
        0, 5, 1, b'x', 1, 2, 3, // what stands behind
    ];

    const FUNCTIONS: Range<usize> = 21..66;

    #[test]
    fn what_was_sorted_comes_out_again() {
        let sorted = sorted(&MODULE, FUNCTIONS).unwrap();
        assert_ne!(sorted, MODULE);
        assert_eq!(joined(&sorted).unwrap(), MODULE);
    }

    #[test]
    fn what_is_alike_lies_together() {
        let mut sorting = Sorting::of(&MODULE[FUNCTIONS]);
        sorting.functions().unwrap();
        let stream = |stream: Stream| sorting.streams[stream as usize].as_slice();
        assert_eq!(stream(Stream::Addresses), [0x80, 0x80, 0xc0, 0x00]);
        assert_eq!(stream(Stream::Offsets), [8]);
        assert_eq!(stream(Stream::Branches), [1, 0, 1]);
        assert_eq!(stream(Stream::Variables), [0, 0]);
        assert_eq!(stream(Stream::Floats), [0, 0, 0, 0, 0, 0, 0xf8, 0x3f]);
    }

    #[test]
    fn damaged_bytes_end_or_make_another_module() {
        let whole = sorted(&MODULE, FUNCTIONS).unwrap();
        for end in 0..whole.len() - 7 {
            assert_eq!(joined(&whole[..end]), None, "cut short at {end}");
        }
        for at in 0..whole.len() {
            for byte in [0, 0x0b, 0x7f, 0x80, 0xff] {
                let mut damaged = whole.clone();
                damaged[at] = byte;
                let out = joined(&damaged);
                assert!(byte == whole[at] || out.is_none_or(|out| out != MODULE), "{byte} at {at}");
            }
        }
    }

    #[test]
    fn an_instruction_that_is_not_known_is_refused() {
        for (byte, why) in [(0xff, "nobody's"), (0x06, "the one that means an address")] {
            let mut module = MODULE;
            module[64] = byte;
            assert_eq!(sorted(&module, FUNCTIONS), None, "{why}");
        }
    }

    #[test]
    fn a_place_that_is_not_that_of_the_functions_is_refused() {
        for place in [0..66, 21..65, 21..67, 22..66, 72..90] {
            assert_eq!(sorted(&MODULE, place.clone()), None, "{place:?}");
        }
    }
}
