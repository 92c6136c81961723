//! The page's content security policy: nothing runs and nothing is fetched but what the build put in.

use base64::{Engine, engine::general_purpose::STANDARD};
use sha2::{Digest, Sha256};

/// Where a page will live, which decides what it may ask for.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Home {
    /// One file, opened from disk or sent on.
    File,
    /// A web server, with the manifest, the icons and the service worker beside the page.
    Site,
}

/// The policy as the first tag of the page's head. Hashes are taken over the exact text between the tags.
pub(crate) fn meta_tag(styles: &[&str], script: &str, home: Home) -> String {
    let style_hashes: String = styles.iter().map(|style| format!(" {}", hash(style))).collect();
    let own_files = match home {
        Home::File => "img-src data:; worker-src blob:",
        Home::Site => "img-src 'self' data:; manifest-src 'self'; worker-src 'self' blob:",
    };
    // plotters sets a style attribute to measure text: without style-src-attr every text measures the same.
    format!(
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; \
         script-src {} 'wasm-unsafe-eval'; style-src{style_hashes}; style-src-attr 'unsafe-inline'; \
         {own_files}; base-uri 'none'; form-action 'none'\">",
        hash(script)
    )
}

fn hash(text: &str) -> String {
    format!("'sha256-{}'", STANDARD.encode(Sha256::digest(text)))
}

#[cfg(test)]
mod tests {
    use super::hash;

    #[test]
    fn the_hash_is_the_one_browsers_compute() {
        // The example of the W3C's CSP Level 2, section 4.2.5.
        assert_eq!(hash("alert('Hello, world.');"), "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='");
    }
}
