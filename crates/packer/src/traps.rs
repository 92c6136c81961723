//! Takes out what panics would say. In a browser nobody hears it: a panic is a trap there, which the page tells as one.

use anyhow::{Result, ensure};
use std::ops::Range;
use walrus::ir::Value;
use walrus::{ConstExpr, Data, DataKind, Function, FunctionBuilder, FunctionId, FunctionKind, Module};

/// Ends of the names of functions in core and alloc that do nothing but panic, besides all of `core::panicking`.
const PANICS: [&str; 11] = [
    "::assert_failed",
    "::capacity_overflow",
    "::expect_failed",
    "::handle_alloc_error",
    "::len_mismatch_fail",
    "::panic_already_borrowed",
    "::panic_already_mutably_borrowed",
    "::slice_error_fail",
    "::slice_error_fail_rt",
    "::slice_index_fail",
    "::unwrap_failed",
];

/// A place in the sources that a panic is told from: address and length of a path, line and column.
const PLACE_BYTES: usize = 16;

/// Makes functions that only panic trap at once, and forgets where they are called from.
///
/// # Errors
/// When there are none: the standard library has given them other names then.
pub(crate) fn at_once(module: &mut Module) -> Result<()> {
    let panics: Vec<FunctionId> =
        module.funcs.iter().filter(|it| only_panics(it)).map(Function::id).collect();
    ensure!(
        !panics.is_empty(),
        "no function panics by its name: see to the names in crates/packer/src/traps.rs"
    );
    for function in panics {
        trap(module, function);
    }
    for data in module.data.iter().map(Data::id).collect::<Vec<_>>() {
        let data = module.data.get_mut(data);
        if let DataKind::Active { offset: ConstExpr::Value(Value::I32(base)), .. } = data.kind {
            forget_places(&mut data.value, base.cast_unsigned() as usize);
        }
    }
    Ok(())
}

fn only_panics(function: &Function) -> bool {
    let name = function.name.as_deref().unwrap_or_default();
    let plain = name.split_once("::<").map_or(name, |(plain, _)| plain);
    let is_library = ["core[", "alloc["].iter().any(|it| name.trim_start_matches('<').starts_with(it));
    matches!(function.kind, FunctionKind::Local(_))
        && is_library
        && (name.contains("]::panicking::") || PANICS.iter().any(|end| plain.ends_with(end)))
}

fn trap(module: &mut Module, function: FunctionId) {
    let kind = module.types.get(module.funcs.get(function).ty());
    let (takes, gives) = (kind.params().to_vec(), kind.results().to_vec());
    let arguments = takes.iter().map(|&kind| module.locals.add(kind)).collect();
    let mut body = FunctionBuilder::new(&mut module.types, &takes, &gives);
    body.func_body().unreachable();
    module.funcs.get_mut(function).kind = FunctionKind::Local(body.local_func(arguments));
}

/// Makes zeros of all places in the sources that stand in this data, and of the paths they name: zeros cost nothing when packed.
fn forget_places(data: &mut [u8], base: usize) {
    let number =
        |at: usize| data[at..at + 4].iter().rev().fold(0, |number, &byte| (number << 8) | usize::from(byte));
    let path = |at: usize| -> Option<Range<usize>> {
        let from = number(at).checked_sub(base)?;
        let path = from..from + number(at + 4);
        data.get(path.clone())?.ends_with(b".rs").then_some(path)
    };
    let aligned = (base.next_multiple_of(4) - base..).step_by(4);
    let found = aligned
        .take_while(|at| at + PLACE_BYTES <= data.len())
        .filter_map(|at| Some([at..at + PLACE_BYTES, path(at)?]));
    for zeros in found.flatten().collect::<Vec<_>>() {
        data[zeros].fill(0);
    }
}

#[cfg(test)]
mod tests {
    use super::{at_once, forget_places};
    use walrus::ir::Instr;
    use walrus::{FunctionBuilder, FunctionKind, Module, ValType};

    fn function(module: &mut Module, name: &str) {
        let mut function = FunctionBuilder::new(&mut module.types, &[ValType::I32], &[ValType::I32]);
        let argument = module.locals.add(ValType::I32);
        function.name(name.to_owned());
        function.func_body().local_get(argument);
        function.finish(vec![argument], &mut module.funcs);
    }

    fn traps(module: &Module) -> Vec<String> {
        let is_trap = |kind: &FunctionKind| match kind {
            FunctionKind::Local(body) => {
                matches!(body.block(body.entry_block()).instrs[..], [(Instr::Unreachable(_), _)])
            }
            _ => false,
        };
        module.funcs.iter().filter(|it| is_trap(&it.kind)).filter_map(|it| it.name.clone()).collect()
    }

    #[test]
    fn what_only_panics_traps_and_nothing_else_does() {
        let panics = [
            "core[c593]::panicking::panic_fmt",
            "core[c593]::panicking::assert_failed::<usize, usize>",
            "core[c593]::option::unwrap_failed",
            "<alloc[3ca5]::vec::Vec<_, _>>::remove::assert_failed",
        ];
        let others = [
            "explorer[1f2e]::page::panicking::hope",
            "gear_math[77aa]::chain::unwrap_failed",
            "<core[c593]::option::Option<T>>::unwrap_or",
            "std[a543]::panicking::panicking",
        ];
        let mut module = Module::default();
        panics.iter().chain(&others).for_each(|name| function(&mut module, name));
        at_once(&mut module).unwrap();
        assert_eq!(traps(&module), panics);
        assert!(at_once(&mut Module::default()).is_err(), "names that are not known are told");
    }

    #[test]
    fn places_in_the_sources_are_forgotten_and_other_data_is_kept() {
        const BASE: u32 = 1_000;
        let words = *b"src/a.rs three words";
        let numbers = [[BASE, 8, 17, 4], [BASE, 20, 3, 9], [u32::MAX, 8, 17, 4]];
        let mut data = words.to_vec();
        data.extend(numbers.as_flattened().iter().flat_map(|it| it.to_le_bytes()));
        let mut expected = data.clone();
        expected[..8].fill(0);
        expected[20..36].fill(0);
        forget_places(&mut data, BASE as usize);
        assert_eq!(data, expected);
    }
}
