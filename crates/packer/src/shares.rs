//! What each part of the program costs in the page: how much less the engine would come to, packed, without it.

use crate::{files, lzma};
use anyhow::{Context, Result};
use std::collections::BTreeMap;
use std::ops::Range;
use wasmparser::{KnownCustom, Name, Parser, Payload};

/// The engine as the build left it, in which functions still have names.
const NAMED: &str = "target/packer/page/remount_bg.named.wasm";

/// Parts of fewer bytes are told together.
const SMALL: usize = 5_000;

/// Places in the module, by the part of the program they belong to.
type Parts = BTreeMap<String, Vec<Range<usize>>>;

/// Prints the table, dearest first.
pub(crate) fn report() -> Result<()> {
    let module = files::read(NAMED).context("build the page first")?;
    let parts = parts(&module)?;
    let whole = packed(&module, &parts, |_| true)?;
    let mut rows = Vec::new();
    for (part, places) in &parts {
        let bytes: usize = places.iter().map(ExactSizeIterator::len).sum();
        let rest = packed(&module, &parts, |other| other != part)?;
        rows.push((whole.saturating_sub(rest), bytes, places.len(), part));
    }
    rows.sort_unstable_by(|one, other| other.cmp(one));
    println!("{:<28} {:>9} {:>9} {:>9}", "", "packed", "bytes", "pieces");
    for (packed, bytes, pieces, part) in rows {
        println!("{part:<28} {packed:>9} {bytes:>9} {pieces:>9}");
    }
    println!("{:<28} {whole:>9}", "all");
    Ok(())
}

/// Where the functions of each part are, and the data.
fn parts(module: &[u8]) -> Result<Parts> {
    let (mut imported, mut bodies, mut names) = (0, Vec::new(), BTreeMap::new());
    let mut parts = Parts::new();
    for payload in Parser::new(0).parse_all(module) {
        match payload? {
            Payload::ImportSection(section) => imported = section.count(),
            Payload::CodeSectionEntry(body) => bodies.push(body.range()),
            Payload::DataSection(section) => {
                parts.entry("data".to_owned()).or_default().push(section.range());
            }
            Payload::CustomSection(section) => {
                let KnownCustom::Name(kinds) = section.as_known() else { continue };
                for kind in kinds {
                    let Name::Function(functions) = kind? else { continue };
                    for function in functions {
                        let function = function?;
                        names.insert(function.index, part_of(function.name));
                    }
                }
            }
            _ => {}
        }
    }
    for (index, body) in (imported..).zip(bodies) {
        let part = names.remove(&index).unwrap_or_else(|| "without a name".to_owned());
        parts.entry(part).or_default().push(body);
    }
    Ok(together(parts))
}

/// Small parts become one.
fn together(parts: Parts) -> Parts {
    let mut told = Parts::new();
    for (part, places) in parts {
        let bytes: usize = places.iter().map(ExactSizeIterator::len).sum();
        told.entry(if bytes < SMALL { "all smaller".to_owned() } else { part }).or_default().extend(places);
    }
    told
}

/// The room of ours that a function stands in; of other crates the crate, and of core the module.
fn part_of(function: &str) -> String {
    let path = function.trim_start_matches(['<', '&', '[', '(']).trim_start_matches("dyn ");
    let mut steps = path.split("::").map(|step| {
        let end = step.find(|letter: char| !letter.is_alphanumeric() && letter != '_').unwrap_or(step.len());
        &step[..end]
    });
    match (steps.next().unwrap_or_default(), steps.next()) {
        (name @ ("explorer" | "gear_math" | "core" | "alloc"), Some(room)) if !room.is_empty() => {
            format!("{name}::{room}")
        }
        (name, Some(_)) => name.to_owned(),
        _ => "without a path".to_owned(),
    }
}

/// Bytes of some parts of the module, packed, in the order they have in it.
fn packed(module: &[u8], parts: &Parts, is_wanted: impl Fn(&String) -> bool) -> Result<usize> {
    let wanted = parts.iter().filter(|(part, _)| is_wanted(part));
    let mut places: Vec<_> = wanted.flat_map(|(_, places)| places.clone()).collect();
    places.sort_unstable_by_key(|place| place.start);
    let pieces = places.into_iter().map(|place| &module[place]);
    Ok(lzma::packed(&sorting::pieces(pieces))?.len())
}

#[cfg(test)]
mod tests {
    use super::{Parts, packed, part_of, together};

    #[test]
    fn functions_belong_to_rooms_and_crates() {
        for (function, part) in [
            ("explorer::lap::report::LapReport::of::h123", "explorer::lap"),
            ("<gear_math::chain::cage::Cage as core::fmt::Debug>::fmt::h1", "gear_math::chain"),
            ("core[c5930c85a12de822]::num::flt2dec::strategy::dragon::format_exact", "core::num"),
            ("<dlmalloc[e24a]::dlmalloc::Dlmalloc<T>>::malloc", "dlmalloc"),
            ("memcpy", "without a path"),
        ] {
            assert_eq!(part_of(function), part, "{function}");
        }
    }

    #[test]
    fn small_parts_are_told_together_and_parts_are_packed_alone() {
        let parts = [("a", 0..300), ("b", 300..600), ("c", 600..20_000)];
        let parts: Parts = parts.into_iter().map(|(part, place)| (part.to_owned(), vec![place])).collect();
        let told = together(parts);
        assert_eq!(told.keys().collect::<Vec<_>>(), ["all smaller", "c"]);
        let module: Vec<u8> = (0..20_000_u32).map(|i| ((i * i) >> 7) as u8).collect();
        let [all, small] =
            [true, false].map(|all| packed(&module, &told, |part| all || part != "c").unwrap());
        assert!(small < all, "{small} of {all}");
    }
}
