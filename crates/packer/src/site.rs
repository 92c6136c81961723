//! `dist/site`: the page for any static host, installable and usable without a network.

use crate::files;
use crate::page::Page;
use anyhow::{Context, Result};
use sha2::{Digest, Sha256};
use std::fs;

/// A file of the site and where it is served, seen from the page.
struct Asset {
    path: String,
    contents: Vec<u8>,
}

pub(crate) fn write(page: &Page) -> Result<()> {
    let mut assets = icons()?;
    assets.push(Asset::copied("manifest.webmanifest")?);
    assets.push(Asset { path: "index.html".to_owned(), contents: page.hosted()?.into_bytes() });
    for asset in &assets {
        files::write(format!("dist/site/{}", asset.path), &asset.contents)?;
    }
    files::write("dist/site/sw.js", service_worker(&assets)?)
}

impl Asset {
    fn copied(path: &str) -> Result<Self> {
        Ok(Self { path: path.to_owned(), contents: files::read(format!("www/{path}"))? })
    }
}

/// All icons, in a fixed order: the cache's name must depend on what they are, not on how the disk lists them.
fn icons() -> Result<Vec<Asset>> {
    let mut names = Vec::new();
    for entry in fs::read_dir("www/icons").context("cannot list www/icons")? {
        names.push(format!("icons/{}", entry?.file_name().to_string_lossy()));
    }
    names.sort();
    names.iter().map(|name| Asset::copied(name)).collect()
}

/// The service worker, told what to keep. Its cache is named after the content, so that any change replaces it.
fn service_worker(assets: &[Asset]) -> Result<String> {
    let mut hash = Sha256::new();
    for asset in assets {
        hash.update(&asset.contents);
    }
    let name: String = hash.finalize().iter().take(8).map(|byte| format!("{byte:02x}")).collect();
    let paths: Vec<String> = assets.iter().map(|asset| format!("'{}'", served_at(&asset.path))).collect();
    let source = files::read_text("www/sw.js")?;
    Ok(format!("const CACHE = 'remount-{name}';\nconst FILES = [{}];\n{source}", paths.join(", ")))
}

/// The page is asked for by its folder.
fn served_at(path: &str) -> &str {
    if path == "index.html" { "./" } else { path }
}
