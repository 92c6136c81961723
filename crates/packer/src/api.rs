//! `dist/api`: the JavaScript module, its WebAssembly and its types.

use crate::bindings::Bindings;
use crate::files;
use anyhow::{Context, Result};

/// Where the glue and its types turn from the exported functions to loading, which is ours to do.
const JS_LOADING: &str = "export { initSync, __wbg_init as default };";
const TS_LOADING: &str = "export type InitInput";

pub(crate) fn write(bindings: &Bindings) -> Result<()> {
    let js = before(&bindings.js, JS_LOADING)?;
    let ts = before(&bindings.ts, TS_LOADING)?;
    files::write("dist/api/remount.js", format!("{js}{}", include_str!("api_loading.js")))?;
    files::write("dist/api/remount.d.ts", format!("{ts}{}", include_str!("api_loading.d.ts")))?;
    files::write("dist/api/remount_bg.wasm", &bindings.wasm)
}

fn before<'a>(text: &'a str, mark: &str) -> Result<&'a str> {
    let (before, _) = text
        .split_once(mark)
        .with_context(|| format!("the generated bindings no longer contain `{mark}`"))?;
    Ok(before)
}
