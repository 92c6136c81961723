//! Turns a compiled explorer into JavaScript glue and an optimised module.

use crate::{files, node_tools};
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

/// Glue that works as a classic script, the only kind a page opened from disk can rely on.
pub(crate) fn for_page(wasm: &Path) -> Result<Bindings> {
    generate(Bindgen::new().no_modules(true)?, wasm, Path::new("target/packer/page"))
}

/// Glue as an ES module.
pub(crate) fn for_api(wasm: &Path) -> Result<Bindings> {
    generate(Bindgen::new().web(true)?, wasm, Path::new("target/packer/api"))
}

fn generate(bindgen: &mut Bindgen, wasm: &Path, folder: &Path) -> Result<Bindings> {
    bindgen
        .input_path(wasm)
        .out_name("remount")
        .typescript(true)
        .omit_default_module_path(true)
        .remove_producers_section(true)
        .generate(folder)
        .with_context(|| format!("cannot make bindings for {}", wasm.display()))?;
    Ok(Bindings {
        js: files::read_text(folder.join("remount.js"))?,
        ts: files::read_text(folder.join("remount.d.ts"))?,
        wasm: node_tools::optimised(&folder.join("remount_bg.wasm"))?,
    })
}
