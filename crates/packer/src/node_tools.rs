//! The optimisers that come from npm. Each may be missing: then its input is shipped as it is.

use crate::files;
use anyhow::{Context, Result, ensure};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// What esbuild is told it reads.
#[derive(Clone, Copy)]
pub(crate) enum Language {
    Css,
    Js,
}

/// Says which optimisers the build must do without.
pub(crate) fn announce_missing() {
    for (name, consequence) in [
        ("wasm-opt", "the WebAssembly is shipped unoptimised"),
        ("esbuild", "scripts and style are shipped as written"),
    ] {
        if tool(name).is_none() {
            eprintln!("{name} is not installed: {consequence}");
        }
    }
}

/// The module after wasm-opt, or as it was when wasm-opt is not installed.
pub(crate) fn optimised(wasm: &Path) -> Result<Vec<u8>> {
    let Some(mut wasm_opt) = tool("wasm-opt") else {
        return files::read(wasm);
    };
    let output = wasm.with_extension("opt.wasm");
    let status =
        wasm_opt.arg("-Oz").arg(wasm).arg("-o").arg(&output).status().context("cannot run wasm-opt")?;
    ensure!(status.success(), "wasm-opt failed on {}", wasm.display());
    files::read(output)
}

/// `source` with its comments and spare spaces taken out, or as it was when esbuild is not installed.
pub(crate) fn minified(source: &str, language: Language) -> Result<String> {
    let Some(mut esbuild) = tool("esbuild") else {
        return Ok(source.to_owned());
    };
    let loader = match language {
        Language::Css => "--loader=css",
        Language::Js => "--loader=js",
    };
    let mut running = esbuild
        .args(["--minify", "--charset=utf8", "--target=es2022", "--log-level=warning", loader])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .context("cannot run esbuild")?;
    running.stdin.take().context("esbuild takes no input")?.write_all(source.as_bytes())?;
    let output = running.wait_with_output()?;
    ensure!(output.status.success(), "esbuild failed");
    Ok(String::from_utf8(output.stdout)?.trim_end().to_owned())
}

fn tool(name: &str) -> Option<Command> {
    let script = PathBuf::from("crates/packer/node/node_modules/.bin").join(name);
    script.exists().then(|| {
        let mut node = Command::new("node");
        node.arg(script);
        node
    })
}
