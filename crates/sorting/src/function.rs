//! The one way through a function of a module: from its local variables to its last `end`.

use crate::stream::Stream::{
    self, Addresses, Blocks, Branches, Calls, Floats, Instructions, Integers, Locals, LongIntegers, Offsets,
    Others, Variables,
};

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
        0x02..=0x04 => number(bytes, Blocks)?,
        0x0c | 0x0d => number(bytes, Branches)?,
        0x0e => table(bytes)?,
        0x10 => number(bytes, Calls)?,
        0x11 => number(bytes, Others).and_then(|_| number(bytes, Others))?,
        0x1c => types(bytes)?,
        0x20..=0x22 => number(bytes, Variables)?,
        0x23..=0x26 | 0xd0 | 0xd2 => number(bytes, Others)?,
        0x28..=0x3e => number(bytes, Others).and_then(|_| number(bytes, Offsets))?,
        0x3f | 0x40 => number(bytes, Others)?,
        0x41 => number(bytes, Integers)?,
        ADDRESS => number(bytes, Addresses)?,
        0x42 => number(bytes, LongIntegers)?,
        0x43 => plain(bytes, 4, Floats)?,
        0x44 => plain(bytes, 8, Floats)?,
        0xfc => beyond_one_byte(bytes)?,
        0x00 | 0x01 | 0x05 | 0x0b | 0x0f | 0x1a | 0x1b | 0x45..=0xc4 | 0xd1 => 0,
        _ => return None,
    };
    Some(())
}

/// `br_table`: so many branches and one.
fn table(bytes: &mut impl Bytes) -> Option<u32> {
    for _ in 0..=number(bytes, Branches)? {
        number(bytes, Branches)?;
    }
    Some(0)
}

/// `select` with types.
fn types(bytes: &mut impl Bytes) -> Option<u32> {
    let types = number(bytes, Others)?;
    plain(bytes, types, Others)
}

/// Instructions whose number follows after 0xfc.
fn beyond_one_byte(bytes: &mut impl Bytes) -> Option<u32> {
    let operands = match number(bytes, Others)? {
        0..=7 => 0,
        9 | 11 | 13 | 15..=17 => 1,
        8 | 10 | 12 | 14 => 2,
        _ => return None,
    };
    for _ in 0..operands {
        number(bytes, Others)?;
    }
    Some(0)
}

fn plain(bytes: &mut impl Bytes, count: u32, stream: Stream) -> Option<u32> {
    for _ in 0..count {
        bytes.next(stream)?;
    }
    Some(0)
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
pub(crate) fn write_number(mut number: usize, to: &mut impl Extend<u8>) {
    while number > 0x7f {
        to.extend([(number & 0x7f) as u8 | 0x80]);
        number >>= 7;
    }
    to.extend([number as u8]);
}
