//! `dist/site`: the page for any static host, installable and usable without a network.

use crate::asset::{Asset, digest};
use crate::files;
use crate::page::Page;
use anyhow::{Context, Result};
use std::fs;

pub(crate) fn write(page: &Page) -> Result<()> {
    let mut assets = icons()?;
    assets.push(Asset::copied("manifest.webmanifest")?);
    assets.extend(page.hosted()?);
    for asset in &assets {
        files::write(format!("dist/site/{}", asset.path), &asset.contents)?;
    }
    let schema = Asset::copied("scenario.schema.json")?;
    files::write(format!("dist/site/{}", schema.path), &schema.contents)?;
    files::write("dist/site/sw.js", service_worker(&assets)?)
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

/// The service worker, told what to keep, and a version that is another one once any of it is.
fn service_worker(assets: &[Asset]) -> Result<String> {
    let version = digest(assets.iter().map(|asset| asset.contents.as_slice()));
    let paths: Vec<String> = assets.iter().map(|asset| format!("'{}'", served_at(&asset.path))).collect();
    let source = files::read_text("www/sw.js")?;
    Ok(format!("const VERSION = '{version}';\nconst FILES = [{}];\n{source}", paths.join(", ")))
}

/// The page is asked for by its folder.
fn served_at(path: &str) -> &str {
    if path == "index.html" { "./" } else { path }
}
