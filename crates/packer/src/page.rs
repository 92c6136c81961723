//! The self-contained page: template, style, scripts and the engine, each put in its place.

use crate::bindings::Bindings;
use crate::csp::{self, Home};
use crate::node_tools::{Language, bundled, minified};
use crate::{files, lzma, template};
use anyhow::{Result, ensure};
use base64::{Engine, engine::general_purpose::STANDARD};
use std::path::Path;

/// Everything the page is made of, ready to be put together.
pub(crate) struct Page {
    template: String,
    style: String,
    /// The engine's glue comes first: workers are given its text too.
    scripts: [String; 5],
    register: String,
    icon: String,
    engine: String,
}

impl Page {
    /// Reads `www` and carries the engine along, compressed.
    pub(crate) fn load(bindings: &Bindings) -> Result<Self> {
        Ok(Self {
            template: files::read_text("www/index.html")?,
            style: inline(&files::read_text("www/style.css")?, Language::Css)?,
            scripts: [
                inline(&bindings.js, Language::Js)?,
                safe(bundled(Path::new("crates/packer/node/libraries.mjs"))?)?,
                inline(&files::read_text("www/engine.js")?, Language::Js)?,
                inline(&files::read_text("www/lap.js")?, Language::Js)?,
                inline(&files::read_text("www/page.js")?, Language::Js)?,
            ],
            register: inline(&files::read_text("www/register.js")?, Language::Js)?,
            icon: STANDARD.encode(files::read("www/icons/icon.svg")?),
            engine: STANDARD.encode(lzma::packed(&bindings.wasm)?),
        })
    }

    /// The page as one file that needs nothing beside it.
    pub(crate) fn single_file(&self) -> Result<String> {
        let icon = format!("<link rel=\"icon\" href=\"data:image/svg+xml;base64,{}\">", self.icon);
        self.assemble(Home::File, &icon, &self.scripts.each_ref().map(String::as_str))
    }

    /// The page with manifest, icons and service worker beside it.
    pub(crate) fn hosted(&self) -> Result<String> {
        let links = "<link rel=\"manifest\" href=\"manifest.webmanifest\">\n\
                     <link rel=\"icon\" href=\"icons/icon.svg\" type=\"image/svg+xml\">\n\
                     <link rel=\"apple-touch-icon\" href=\"icons/icon-180.png\">";
        let [glue, libraries, engine, lap, page] = self.scripts.each_ref().map(String::as_str);
        self.assemble(Home::Site, links, &[glue, libraries, engine, lap, page, &self.register])
    }

    fn assemble(&self, home: Home, links: &str, scripts: &[&str]) -> Result<String> {
        let ids = std::iter::once(" id=\"glue\"").chain(std::iter::repeat(""));
        let script_tags: Vec<String> =
            scripts.iter().zip(ids).map(|(script, id)| format!("<script{id}>{script}</script>")).collect();
        template::fill(
            &self.template,
            &[
                ("csp", &csp::meta_tag(&self.style, scripts, home)),
                ("links", links),
                ("style", &format!("<style>{}</style>", self.style)),
                (
                    "engine",
                    &format!(
                        "<script type=\"application/octet-stream\" id=\"engine\">{}</script>",
                        self.engine
                    ),
                ),
                ("scripts", &script_tags.join("\n")),
            ],
        )
    }
}

/// Text that may stand between tags, minified.
fn inline(source: &str, language: Language) -> Result<String> {
    safe(minified(source, language)?)
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
