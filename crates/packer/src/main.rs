//! Packs the compiled explorer into the three things people use: one file, a static site, a JavaScript module.
//!
//! Called by `build.sh` from the top of the project with the explorer compiled twice, for the page and for the API, and
//! with what unpacks the page's.

mod api;
mod asset;
mod bindings;
mod csp;
mod files;
mod home;
mod lzma;
mod node_tools;
mod page;
mod shares;
mod site;
mod sizes;
mod template;
mod traps;

use anyhow::{Context, Result};
use std::path::Path;
use std::process::ExitCode;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let done = match arguments.as_slice() {
        [asked] if asked == "shares" => shares::report(),
        [page, unpacker, api] => pack(page.as_ref(), unpacker.as_ref(), api.as_ref()),
        _ => {
            eprintln!(
                "usage: packer PAGE.wasm UNPACKER.wasm API.wasm, or packer shares, from the top of the project; \
                 ./build.sh does it all"
            );
            return ExitCode::from(2);
        }
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("packer: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn pack(page_wasm: &Path, unpacker_wasm: &Path, api_wasm: &Path) -> Result<()> {
    let (page, api) = both(
        || bindings::generate(page_wasm, Path::new("target/packer/page")),
        || bindings::generate(api_wasm, Path::new("target/packer/api")),
    );
    let (page, api) = (page::Page::load(&page?, unpacker_wasm)?, api?);
    files::clear("dist")?;
    files::write("dist/remount.html", page.single_file()?)?;
    site::write(&page).context("cannot write dist/site")?;
    api::write(&api).context("cannot write dist/api")?;
    sizes::report()
}

/// Does two things side by side: an optimiser keeps only one core busy.
fn both<T: Send>(one: impl FnOnce() -> T + Send, other: impl FnOnce() -> T) -> (T, T) {
    std::thread::scope(|scope| {
        let one = scope.spawn(one);
        let other = other();
        (one.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)), other)
    })
}
