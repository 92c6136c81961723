//! The self-contained page: template, style, scripts and the engine, each put in its place.

use crate::bindings::Bindings;
use crate::csp::{self, Home};
use crate::node_tools::bundled;
use crate::{files, lzma, template};
use anyhow::{Result, ensure};
use base64::{Engine, engine::general_purpose::STANDARD};
use explorer::page::skeleton;
use std::path::Path;

/// Everything the page is made of, ready to be put together.
pub(crate) struct Page {
    template: String,
    style: String,
    /// What the sheet is set in on paper, apart: the page applies it on screen for a moment to measure.
    print_type: String,
    /// One script for the page and for its workers, who are given its text.
    script: String,
    icon: String,
    engine: String,
}

impl Page {
    /// Reads `www` and carries the engine along, compressed. The script takes the engine's bindings from where they
    /// were made.
    pub(crate) fn load(bindings: &Bindings) -> Result<Self> {
        Ok(Self {
            template: files::read_text("www/index.html")?,
            style: skeleton::words_of_styles() + &style("www/style/page.css")?,
            print_type: style("www/style/print-type.css")?,
            script: safe(bundled(Path::new("www/main.js"))?)?,
            icon: STANDARD.encode(files::read("www/icons/icon.svg")?),
            engine: STANDARD.encode(lzma::packed(&bindings.wasm)?),
        })
    }

    /// The page as one file that needs nothing beside it.
    pub(crate) fn single_file(&self) -> Result<String> {
        let icon = format!("<link rel=\"icon\" href=\"data:image/svg+xml;base64,{}\">", self.icon);
        self.assemble(Home::File, &icon)
    }

    /// The page with manifest, icons and service worker beside it.
    pub(crate) fn hosted(&self) -> Result<String> {
        let links = "<link rel=\"manifest\" href=\"manifest.webmanifest\">\n\
                     <link rel=\"icon\" href=\"icons/icon.svg\" type=\"image/svg+xml\">\n\
                     <link rel=\"apple-touch-icon\" href=\"icons/icon-180.png\">";
        self.assemble(Home::Site, links)
    }

    fn assemble(&self, home: Home, links: &str) -> Result<String> {
        let Self { style, print_type, script, engine, .. } = self;
        let styles =
            format!("<style>{style}</style>\n<style id=\"print-type\" media=\"print\">{print_type}</style>");
        let engine = format!("<script type=\"application/octet-stream\" id=\"engine\">{engine}</script>");
        template::fill(
            &self.template,
            &[
                ("csp", &csp::meta_tag(&[style, print_type], script, home)),
                ("links", links),
                ("style", &styles),
                ("title", &skeleton::title().into_string()),
                ("masthead", &skeleton::masthead().into_string()),
                ("bench", &skeleton::bench().into_string()),
                ("sections", &skeleton::sections().into_string()),
                ("foot", &skeleton::foot().into_string()),
                ("engine", &engine),
                ("scripts", &format!("<script id=\"script\">{script}</script>")),
            ],
        )
    }
}

/// A sheet of styles and all that it imports.
fn style(entry: &str) -> Result<String> {
    safe(bundled(Path::new(entry))?)
}

/// `text`, refused if it would end its tag early or make a browser read past the end of it.
fn safe(text: String) -> Result<String> {
    let lower = text.to_ascii_lowercase();
    for markup in ["</script", "<script", "</style", "<!--"] {
        ensure!(!lower.contains(markup), "a script or style to be inlined contains {markup}");
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::safe;

    #[test]
    fn markup_is_refused_in_any_case() {
        assert!(safe("'</SCRIPT >'".to_owned()).is_err());
        assert!(safe("a < script && b".to_owned()).is_ok());
    }
}
