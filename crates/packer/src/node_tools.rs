//! The tools that come from npm: the optimiser of WebAssembly, and the bundler and minifier of scripts.

use crate::files;
use anyhow::{Context, Result, ensure};
use sha2::{Digest, Sha256};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// What makes the module smallest once it is packed, which is not what makes it smallest unpacked: code packs best
/// where it looks like other code.
const FOR_PACKING: [&str; 8] = [
    // Once: until nothing changes any more it takes twice as long, for 0.2 % of the module.
    "-Oz",
    // A function called once stays on its own: put into its caller it would get local numbers unlike any other's.
    "--one-caller-inline-max-function-size=0",
    "--skip-pass=local-cse",
    // Zeros cost nothing when packed, cuts in the data do.
    "--skip-pass=memory-packing",
    // The lowest kilobyte is the far end of the stack.
    "--low-memory-unused",
    // Alignment in WebAssembly is a hint that processors have no use for.
    "--dealign",
    // Copies of one generic function come to lie side by side.
    "-g",
    "--reorder-functions-by-name",
];

/// The module after wasm-opt, without the names that its functions were put in order by. That takes a minute: what was
/// made of the same module before is taken again.
pub(crate) fn optimised(wasm: &Path) -> Result<Vec<u8>> {
    let (output, made_of) = (wasm.with_extension("opt.wasm"), wasm.with_extension("opt.sha256"));
    let asked = asked(wasm)?;
    if !output.exists() || files::read(&made_of).ok().as_ref() != Some(&asked) {
        let ordered = wasm.with_extension("named.wasm");
        wasm_opt(&FOR_PACKING, wasm, &ordered)?;
        wasm_opt(&["--strip-debug"], &ordered, &output)?;
        files::write(made_of, asked)?;
    }
    files::read(output)
}

/// A small module after wasm-opt, for a page where it travels as it is.
pub(crate) fn small(wasm: &Path) -> Result<Vec<u8>> {
    let output = wasm.with_extension("opt.wasm");
    wasm_opt(&["-Oz", "--strip-debug", "--strip-producers", "--strip-target-features"], wasm, &output)?;
    files::read(output)
}

/// A hash of all that the optimised module depends on.
fn asked(wasm: &Path) -> Result<Vec<u8>> {
    let mut hash = Sha256::new();
    hash.update(files::read(wasm)?);
    hash.update(files::read("crates/packer/node/package-lock.json")?);
    hash.update(FOR_PACKING.join(" "));
    Ok(hash.finalize().to_vec())
}

fn wasm_opt(flags: &[&str], from: &Path, to: &Path) -> Result<()> {
    let status =
        tool("wasm-opt")?.args(flags).arg(from).arg("-o").arg(to).status().context("cannot run wasm-opt")?;
    ensure!(status.success(), "wasm-opt failed on {}", from.display());
    Ok(())
}

/// The script or the styles at `entry` and all that they import as one, minified. A script becomes a classic one.
pub(crate) fn bundled(entry: &Path) -> Result<String> {
    let output = tool("esbuild")?
        .args([
            "--bundle",
            "--minify",
            "--format=iife",
            "--charset=utf8",
            "--target=es2022",
            "--log-level=warning",
        ])
        .arg(entry)
        .stderr(Stdio::inherit())
        .output()
        .context("cannot run esbuild")?;
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
