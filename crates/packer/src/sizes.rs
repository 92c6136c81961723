//! What was built and how large it is, with a limit on the page.

use crate::files;
use anyhow::{Result, ensure};
use flate2::{Compression, write::GzEncoder};
use std::io::Write;

const PAGE: &str = "dist/remount.html";
const PRODUCTS: [&str; 5] = [
    PAGE,
    "dist/site/index.html",
    "dist/api/remount.js",
    "dist/api/remount_bg.wasm",
    "dist/api/remount.d.ts",
];

/// Bytes of the gzipped page at most: what a phone at the side of a course should have to load.
const BUDGET: usize = 528_000;

/// Prints the sizes and fails when the page is over its budget.
pub(crate) fn report() -> Result<()> {
    println!("{:<26} {:>9} {:>9}", "", "bytes", "gzipped");
    for product in PRODUCTS {
        let contents = files::read(product)?;
        println!("{product:<26} {:>9} {:>9}", contents.len(), gzipped(&contents)?);
    }
    let page = gzipped(&files::read(PAGE)?)?;
    ensure!(page <= BUDGET, "{PAGE} has {page} bytes gzipped, {} over its budget of {BUDGET}", page - BUDGET);
    Ok(())
}

fn gzipped(contents: &[u8]) -> Result<usize> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(contents)?;
    Ok(encoder.finish()?.len())
}
