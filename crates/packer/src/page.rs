//! The page: template, styles, script and the engine, each put in its place or beside it.

use crate::asset::Asset;
use crate::bindings::Bindings;
use crate::csp;
use crate::node_tools::{self, bundled};
use crate::{files, home, lzma, template};
use anyhow::{Result, ensure};
use base64::{Engine, engine::general_purpose::STANDARD};
use explorer::page::prerendered::{self, DemoTold};
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
    /// The script that runs before anything is shown.
    first: String,
    icon: String,
    /// What unpacks the engine, and behind a space the engine.
    engine: String,
    /// What stands in the page before the engine has started.
    demo: DemoTold,
    /// Where the page is hosted, for links out of the file.
    home: String,
}

impl Page {
    /// Reads `www` and carries the engine along, compressed. The script takes the engine's bindings from where they
    /// were made.
    pub(crate) fn load(bindings: &Bindings, unpacker: &Path) -> Result<Self> {
        Ok(Self {
            template: files::read_text("www/index.html")?,
            style: skeleton::words_of_styles() + &style("www/style/page.css")?,
            print_type: style("www/style/print-type.css")?,
            script: safe(bundled(Path::new("www/main.js"))?)?,
            first: safe(bundled(Path::new("www/first.js"))?)?,
            icon: STANDARD.encode(files::read("www/icons/icon.svg")?),
            engine: [node_tools::small(unpacker)?, lzma::packed_module(&bindings.wasm)?]
                .map(|it| STANDARD.encode(it))
                .join(" "),
            demo: DemoTold::ridden(),
            home: home::link()?,
        })
    }

    /// The page as one file that needs nothing beside it.
    pub(crate) fn single_file(&self) -> Result<String> {
        let Self { style, print_type, script, first, engine, .. } = self;
        self.assemble(&Parts {
            csp: csp::of_file(&[style, print_type], &[first, script]),
            links: format!(
                "<link rel=\"icon\" href=\"data:image/svg+xml;base64,{}\">{}",
                self.icon, self.home
            ),
            styles: format!(
                "<style>{style}</style>\n<style id=\"print-type\" media=\"print\">{print_type}</style>"
            ),
            first: format!("<script>{first}</script>"),
            engine: format!("<script type=\"application/octet-stream\" id=\"engine\">{engine}</script>"),
            script: format!("<script id=\"script\">{script}</script>"),
        })
    }

    /// The page with files beside it, under names that change with their content: a server's own policy may forbid what
    /// is written into a page. The engine comes as a script, so that the page needs no leave to fetch anything.
    pub(crate) fn hosted(&self) -> Result<Vec<Asset>> {
        let engine = format!("remountEngine='{}'", self.engine);
        let [style, print_type] = [&self.style, &self.print_type]
            .map(|style| Asset::named_by_content("style", "css", &in_utf8(style)));
        let [first, engine, script] = [("first", &self.first), ("engine", &engine), ("page", &self.script)]
            .map(|(name, text)| Asset::named_by_content(name, "js", &in_utf8(text)));
        let page = self.assemble(&Parts {
            csp: csp::of_site(),
            links: "<link rel=\"manifest\" href=\"manifest.webmanifest\">\n\
                    <link rel=\"icon\" href=\"icons/icon.svg\" type=\"image/svg+xml\">\n\
                    <link rel=\"apple-touch-icon\" href=\"icons/icon-180.png\">"
                .to_owned(),
            styles: format!(
                "<link rel=\"stylesheet\" href=\"{}\">\n\
                 <link rel=\"stylesheet\" id=\"print-type\" media=\"print\" href=\"{}\">",
                style.path, print_type.path
            ),
            first: format!("<script src=\"{}\"></script>", first.path),
            engine: format!("<data id=\"engine\" value=\"{}\"></data>", engine.path),
            script: format!("<script defer id=\"script\" src=\"{}\"></script>", script.path),
        })?;
        Ok(vec![Asset::new("index.html", page), style, print_type, first, engine, script])
    }

    fn assemble(&self, parts: &Parts) -> Result<String> {
        let [masthead, bench] = prerendered::with_demo([skeleton::masthead(), skeleton::bench()], &self.demo);
        let page = template::fill(
            &self.template,
            &[
                ("csp", &parts.csp),
                ("links", &parts.links),
                ("style", &parts.styles),
                ("first", &parts.first),
                ("title", &skeleton::title().into_string()),
                ("masthead", &masthead),
                ("bench", &bench),
                ("sections", &prerendered::with_forms(skeleton::sections())),
                ("foot", &skeleton::foot().into_string()),
                ("engine", &parts.engine),
                ("scripts", &parts.script),
            ],
        )?;
        Ok(in_utf8(&page))
    }
}

/// A text with the mark that tells browsers it is in UTF-8, whatever a server says.
fn in_utf8(text: &str) -> String {
    format!("\u{feff}{text}")
}

/// What differs between one file and a page with files beside it.
struct Parts {
    csp: String,
    links: String,
    styles: String,
    first: String,
    engine: String,
    script: String,
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
