//! Packs the engine, once it is sorted, as a `.lzma` file, which is a fifth smaller than gzip makes it. `crates/unpacker` unpacks it.

use anyhow::{Context, Result};
use lzma_rust2::{LzmaOptions, LzmaWriter};
use std::io::Write;
use wasmparser::{Parser, Payload};

/// `module`, sorted and packed.
pub(crate) fn packed_module(module: &[u8]) -> Result<Vec<u8>> {
    let functions = Parser::new(0).parse_all(module).find_map(|part| match part {
        Ok(Payload::CodeSectionStart { range, .. }) => Some(range),
        _ => None,
    });
    let sorted = functions.and_then(|functions| sorting::sorted(module, functions));
    packed(&sorted.context("crates/sorting cannot put the engine together again: it may have an instruction that is unknown there")?)
}

/// The whole of `sorted` within reach of every match, and as thorough a search as the format allows.
pub(crate) fn packed(sorted: &[u8]) -> Result<Vec<u8>> {
    let options = LzmaOptions {
        dict_size: u32::try_from(sorted.len())?.next_power_of_two(),
        // Numbers begin at any byte, so no position is like another one a few bytes on.
        pb: 0,
        // How large the byte before is says little of the next; more of it only splits what is learnt.
        lc: 1,
        nice_len: LzmaOptions::NICE_LEN_MAX,
        depth_limit: 512,
        ..LzmaOptions::with_preset(9)
    };
    let mut writer = LzmaWriter::new_use_header(Vec::new(), &options, Some(u64::try_from(sorted.len())?))?;
    writer.write_all(sorted)?;
    Ok(writer.finish()?)
}

#[cfg(test)]
mod tests {
    use super::packed;
    use lzma_rust2::LzmaReader;
    use std::io::Read;

    #[test]
    fn what_was_packed_comes_out_again() {
        let module: Vec<u8> = (0..20_000_u32).map(|i| ((i * i) >> 7) as u8).collect();
        let packed = packed(&module).unwrap();
        let mut unpacked = Vec::new();
        LzmaReader::new_mem_limit(packed.as_slice(), u32::MAX, None)
            .unwrap()
            .read_to_end(&mut unpacked)
            .unwrap();
        assert!(packed.len() < module.len());
        assert_eq!(unpacked, module);
    }
}
