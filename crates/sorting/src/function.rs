//! The one way through a function of a module: from its local variables to its last `end`.

use crate::stream::Stream::{
    self, Addresses, Blocks, Branches, Calls, Floats, Instructions, Integers, Locals, LongIntegers, Offsets,
    Others, Variables,
};
use alloc::vec::Vec;

/// In sorted bytes, a number of 32 bits that is one of the `Addresses`. No module has that instruction: it was given up.
pub(crate) const ADDRESS: u8 = 0x06;

/// Bytes of a function in their order, wherever they come from and go to.
pub(crate) trait Bytes {
    /// The next byte, which is of that stream; nothing where there is none.
    fn next(&mut self, stream: Stream) -> Option<u8>;
}

/// Goes through one function, whose bytes are each asked for once. Nothing where it ends too early or has an instruction that
/// is not known here. The encoding is that of the WebAssembly core specification, release 2.0, chapter 5.
pub(crate) fn walk(bytes: &mut impl Bytes) -> Option<()> {
    for _ in 0..number(bytes, Locals)? {
        number(bytes, Locals)?;
        bytes.next(Locals)?;
    }
    let mut open = 1_u32;
    while open > 0 {
        let instruction = bytes.next(Instructions)?;
        match instruction {
            0x02..=0x04 => open += 1,
            0x0b => open -= 1,
            _ => {}
        }
        operands(bytes, instruction)?;
    }
    Some(())
}

fn operands(bytes: &mut impl Bytes, instruction: u8) -> Option<()> {
    match instruction {
        0x00 | 0x01 | 0x05 | 0x0b | 0x0f | 0x1a | 0x1b | 0x45..=0xc4 | 0xd1 => Some(()),
        0x02..=0x04 => numbers(bytes, 1, Blocks),
        0x0c | 0x0d => numbers(bytes, 1, Branches),
        // A table of branches and one more.
        0x0e => number(bytes, Branches).and_then(|table| numbers(bytes, table.checked_add(1)?, Branches)),
        0x10 => numbers(bytes, 1, Calls),
        0x11 => numbers(bytes, 2, Others),
        // A choice that says of which types.
        0x1c => number(bytes, Others).and_then(|types| plain(bytes, types, Others)),
        0x20..=0x22 => numbers(bytes, 1, Variables),
        0x23..=0x26 | 0x3f | 0x40 | 0xd0 | 0xd2 => numbers(bytes, 1, Others),
        0x28..=0x3e => numbers(bytes, 1, Others).and_then(|()| numbers(bytes, 1, Offsets)),
        0x41 => numbers(bytes, 1, Integers),
        ADDRESS => numbers(bytes, 1, Addresses),
        0x42 => numbers(bytes, 1, LongIntegers),
        0x43 => plain(bytes, 4, Floats),
        0x44 => plain(bytes, 8, Floats),
        0xfc => {
            let operands = operands_beyond(number(bytes, Others)?)?;
            numbers(bytes, operands, Others)
        }
        _ => None,
    }
}

/// How many operands an instruction has whose number follows after 0xfc.
fn operands_beyond(instruction: u32) -> Option<u32> {
    match instruction {
        0..=7 => Some(0),
        9 | 11 | 13 | 15..=17 => Some(1),
        8 | 10 | 12 | 14 => Some(2),
        _ => None,
    }
}

fn numbers(bytes: &mut impl Bytes, count: u32, stream: Stream) -> Option<()> {
    for _ in 0..count {
        number(bytes, stream)?;
    }
    Some(())
}

fn plain(bytes: &mut impl Bytes, count: u32, stream: Stream) -> Option<()> {
    for _ in 0..count {
        bytes.next(stream)?;
    }
    Some(())
}

/// An integer in LEB128, of which the lowest 32 bits are told.
pub(crate) fn number(bytes: &mut impl Bytes, stream: Stream) -> Option<u32> {
    let (mut number, mut shift) = (0, 0);
    loop {
        let byte = bytes.next(stream)?;
        number |= u32::from(byte & 0x7f).checked_shl(shift).unwrap_or(0);
        shift += 7;
        if byte < 0x80 {
            return Some(number);
        }
    }
}

/// Writes an unsigned integer in LEB128.
pub(crate) fn write_number(mut number: usize, to: &mut Vec<u8>) {
    while number > 0x7f {
        to.push((number & 0x7f) as u8 | 0x80);
        number >>= 7;
    }
    to.push(number as u8);
}
