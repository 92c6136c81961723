//! Turns a compiled explorer into JavaScript glue and an optimised module.

use crate::{files, node_tools, traps};
use anyhow::{Context, Result};
use std::path::Path;
use wasm_bindgen_cli_support::Bindgen;

/// What a browser or Node needs to call the explorer.
pub(crate) struct Bindings {
    /// JavaScript glue.
    pub(crate) js: String,
    /// Types of the exported functions.
    pub(crate) ts: String,
    /// The optimised module.
    pub(crate) wasm: Vec<u8>,
}

/// Makes an ES module in `folder`. `www/engine.js` imports that of the page.
pub(crate) fn generate(wasm: &Path, folder: &Path) -> Result<Bindings> {
    let mut output = Bindgen::new()
        .web(true)?
        .input_path(wasm)
        .out_name("remount")
        .typescript(true)
        .omit_default_module_path(true)
        .remove_producers_section(true)
        .generate_output()
        .with_context(|| format!("cannot make bindings for {}", wasm.display()))?;
    traps::at_once(output.wasm_mut())?;
    output.emit(folder)?;
    Ok(Bindings {
        js: files::read_text(folder.join("remount.js"))?,
        ts: files::read_text(folder.join("remount.d.ts"))?,
        wasm: node_tools::optimised(&folder.join("remount_bg.wasm"))?,
    })
}
