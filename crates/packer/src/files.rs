//! Reading and writing with the path in every error.

use anyhow::{Context, Result};
use std::fs;
use std::io::ErrorKind;
use std::path::Path;

/// Text with line ends as a browser sees them: the CSP hashes are taken over `\n` only.
pub(crate) fn read_text(path: impl AsRef<Path>) -> Result<String> {
    let path = path.as_ref();
    let text = fs::read_to_string(path).with_context(|| format!("cannot read {}", path.display()))?;
    Ok(text.replace("\r\n", "\n"))
}

pub(crate) fn read(path: impl AsRef<Path>) -> Result<Vec<u8>> {
    let path = path.as_ref();
    fs::read(path).with_context(|| format!("cannot read {}", path.display()))
}

/// Writes a file and the folders above it.
pub(crate) fn write(path: impl AsRef<Path>, contents: impl AsRef<[u8]>) -> Result<()> {
    let path = path.as_ref();
    let folder = path.parent().unwrap_or(Path::new("."));
    fs::create_dir_all(folder)
        .and_then(|()| fs::write(path, contents))
        .with_context(|| format!("cannot write {}", path.display()))
}

/// Removes a folder that an earlier build may have left.
pub(crate) fn clear(folder: &str) -> Result<()> {
    match fs::remove_dir_all(folder) {
        Err(error) if error.kind() != ErrorKind::NotFound => {
            Err(error).with_context(|| format!("cannot clear {folder}"))
        }
        _ => Ok(()),
    }
}
