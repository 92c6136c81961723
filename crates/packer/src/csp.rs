//! The page's content security policy: nothing runs and nothing is fetched but what the build put in.

use base64::{Engine, engine::general_purpose::STANDARD};
use sha2::{Digest, Sha256};

/// The policy of one file, opened from disk or sent on, as the first tag of its head. Hashes are taken over the exact
/// text between the tags.
pub(crate) fn of_file(styles: &[&str], scripts: &[&str]) -> String {
    let hashes = |texts: &[&str]| texts.iter().map(|text| hash(text)).collect::<Vec<_>>().join(" ");
    meta_tag(&hashes(scripts), &hashes(styles), "img-src data:; worker-src blob:")
}

/// The policy of a page on a web server, with its files beside it.
pub(crate) fn of_site() -> String {
    meta_tag("'self'", "'self'", "img-src 'self' data:; manifest-src 'self'; worker-src 'self' blob:")
}

fn meta_tag(scripts: &str, styles: &str, own_files: &str) -> String {
    // plotters sets a style attribute to measure text: without style-src-attr every text measures the same.
    format!(
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; \
         script-src {scripts} 'wasm-unsafe-eval'; style-src {styles}; style-src-attr 'unsafe-inline'; \
         {own_files}; base-uri 'none'; form-action 'none'\">"
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
