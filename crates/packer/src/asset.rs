//! A file of the site and where it is served, seen from the page.

use crate::files;
use anyhow::Result;
use sha2::{Digest, Sha256};

pub(crate) struct Asset {
    pub(crate) path: String,
    pub(crate) contents: Vec<u8>,
}

impl Asset {
    pub(crate) fn new(path: &str, contents: impl Into<Vec<u8>>) -> Self {
        Self { path: path.to_owned(), contents: contents.into() }
    }

    /// A file whose name is another one once its content is: versions of the site never mix.
    pub(crate) fn named_by_content(name: &str, kind: &str, text: &str) -> Self {
        Self::new(&format!("{name}-{}.{kind}", digest([text.as_bytes()])), text)
    }

    /// A file of `www` as it is.
    pub(crate) fn copied(path: &str) -> Result<Self> {
        Ok(Self::new(path, files::read(format!("www/{path}"))?))
    }
}

/// The first 16 digits of the SHA-256 of all parts together.
pub(crate) fn digest<'a>(parts: impl IntoIterator<Item = &'a [u8]>) -> String {
    let mut hash = Sha256::new();
    for part in parts {
        hash.update(part);
    }
    hash.finalize().iter().take(8).map(|byte| format!("{byte:02x}")).collect()
}
