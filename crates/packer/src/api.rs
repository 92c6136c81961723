//! `dist/api`: the JavaScript module as a package, with its WebAssembly, types, manual and licences.

use crate::bindings::Bindings;
use crate::files;
use anyhow::{Context, Result, ensure};

/// Where the glue and its types turn from the exported functions to loading, which is ours to do.
const JS_LOADING: &str = "export { initSync, __wbg_init as default };";
const TS_LOADING: &str = "export type InitInput";
/// The place of the version in the package's description.
const VERSION: &str = "@VERSION@";

pub(crate) fn write(bindings: &Bindings) -> Result<()> {
    let js = before(&bindings.js, JS_LOADING)?;
    let ts = before(&bindings.ts, TS_LOADING)?;
    let description = include_str!("../api/package.json");
    ensure!(description.contains(VERSION), "the package's description has no place for its version");
    let texts = [
        ("unstarted.js", format!("{js}{}", include_str!("../api/start.js"))),
        ("unstarted.d.ts", "export * from './remount.js';\n".to_owned()),
        ("remount.js", include_str!("../api/remount.js").to_owned()),
        ("remount.d.ts", format!("{ts}{}", include_str!("../api/loading.d.ts"))),
        ("package.json", description.replace(VERSION, env!("CARGO_PKG_VERSION"))),
        ("README.md", include_str!("../api/README.md").to_owned()),
    ];
    for (name, text) in texts {
        files::write(format!("dist/api/{name}"), text)?;
    }
    for licence in ["LICENSE-MIT", "LICENSE-APACHE"] {
        files::write(format!("dist/api/{licence}"), files::read(licence)?)?;
    }
    files::write("dist/api/remount_bg.wasm", &bindings.wasm)
}

fn before<'a>(text: &'a str, mark: &str) -> Result<&'a str> {
    let (before, _) = text
        .split_once(mark)
        .with_context(|| format!("the generated bindings no longer contain `{mark}`"))?;
    Ok(before)
}
