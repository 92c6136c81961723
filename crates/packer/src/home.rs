//! Where the page is hosted: a file that is opened from a disk leads there with its links.

use anyhow::{Context, Result, ensure};
use std::env;

const VARIABLE: &str = "REMOUNT_URL";

/// The line for the head of the page; empty where no address is set.
pub(crate) fn link() -> Result<String> {
    match env::var(VARIABLE) {
        Ok(url) if !url.is_empty() => {
            checked(&url).with_context(|| format!("{VARIABLE} is {url}"))?;
            Ok(format!("\n<link rel=\"canonical\" href=\"{url}\">"))
        }
        _ => Ok(String::new()),
    }
}

/// Web addresses only, in letters that need no escape, and without a part that the bench takes the place of.
fn checked(url: &str) -> Result<()> {
    let rest = url.strip_prefix("https://").or_else(|| url.strip_prefix("http://"));
    let rest = rest.context("an address begins with https:// or http://")?;
    ensure!(!rest.is_empty() && !rest.starts_with('/'), "an address names a host");
    let is_plain = |letter: char| letter.is_ascii_alphanumeric() || "-._~:/%?=[]@".contains(letter);
    ensure!(rest.chars().all(is_plain), "an address has no spaces, quotes or #");
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::checked;

    #[test]
    fn only_web_addresses_are_taken() {
        for url in ["https://example.org/remount/", "http://localhost:8080", "https://[::1]/a?b=c"] {
            assert!(checked(url).is_ok(), "{url}");
        }
        for url in
            ["javascript:alert(1)", "example.org", "https://", "https:///a", "https://a/#b", "https://a/\"x"]
        {
            assert!(checked(url).is_err(), "{url}");
        }
    }
}
