//! The tools that come from npm: the optimiser of WebAssembly, and the bundler and minifier of scripts.

use crate::files;
use anyhow::{Context, Result, ensure};
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

/// What esbuild is told it reads.
#[derive(Clone, Copy)]
pub(crate) enum Language {
    Css,
    Js,
}

/// The module after wasm-opt.
pub(crate) fn optimised(wasm: &Path) -> Result<Vec<u8>> {
    let output = wasm.with_extension("opt.wasm");
    let status = tool("wasm-opt")?
        .arg("-Oz")
        .arg(wasm)
        .arg("-o")
        .arg(&output)
        .status()
        .context("cannot run wasm-opt")?;
    ensure!(status.success(), "wasm-opt failed on {}", wasm.display());
    files::read(output)
}

/// The script at `entry` and all that it imports as one classic script, minified.
pub(crate) fn bundled(entry: &Path) -> Result<String> {
    let running =
        esbuild()?.args(["--bundle", "--format=iife"]).arg(entry).spawn().context("cannot run esbuild")?;
    output(running)
}

/// `source` with its comments and spare spaces taken out.
pub(crate) fn minified(source: &str, language: Language) -> Result<String> {
    let loader = match language {
        Language::Css => "--loader=css",
        Language::Js => "--loader=js",
    };
    let mut running = esbuild()?.arg(loader).stdin(Stdio::piped()).spawn().context("cannot run esbuild")?;
    running.stdin.take().context("esbuild takes no input")?.write_all(source.as_bytes())?;
    output(running)
}

fn esbuild() -> Result<Command> {
    let mut esbuild = tool("esbuild")?;
    esbuild
        .args(["--minify", "--charset=utf8", "--target=es2022", "--log-level=warning"])
        .stdout(Stdio::piped());
    Ok(esbuild)
}

fn output(running: Child) -> Result<String> {
    let output = running.wait_with_output()?;
    ensure!(output.status.success(), "esbuild failed");
    Ok(String::from_utf8(output.stdout)?.trim_end().to_owned())
}

fn tool(name: &str) -> Result<Command> {
    let script = PathBuf::from("crates/packer/node/node_modules/.bin").join(name);
    ensure!(script.exists(), "{name} is not installed: run `npm ci` in crates/packer/node");
    let mut node = Command::new("node");
    node.arg(script);
    Ok(node)
}
