//! A link as a QR code, for a camera.

use crate::page::words::code as words;
use maud::{Markup, html};
use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};
use std::fmt::Write;

/// Width of a module on paper in hundredths of a millimetre, which the camera of a phone still tells apart (common practice).
const MODULE: i32 = 35;
/// Modules of paper round the code (ISO/IEC 18004).
const QUIET: i32 = 4;

/// What the code is shown on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shown {
    /// A screen, as large as any code.
    OnScreen,
    /// The printed sheet.
    OnPaper,
}

impl Shown {
    /// The largest code that there is room for: 44 mm on paper.
    fn largest(self) -> Version {
        match self {
            Self::OnScreen => Version::MAX,
            Self::OnPaper => Version::new(25),
        }
    }

    /// Bytes that such a code holds with correction M.
    const fn room(self) -> usize {
        match self {
            Self::OnScreen => 2331,
            Self::OnPaper => 997,
        }
    }
}

/// The code of a link, or why there is none.
#[must_use]
pub fn code(link: &str, shown: Shown) -> Markup {
    let segments = QrSegment::make_segments(link);
    let (ecc, largest) = (QrCodeEcc::Medium, shown.largest());
    match QrCode::encode_segments_advanced(&segments, ecc, Version::MIN, largest, None, false) {
        Ok(code) => drawn(&code),
        Err(_) => html! { p { (words::too_long(link.len(), shown.room())) } },
    }
}

fn drawn(code: &QrCode) -> Markup {
    let whole = code.size() + 2 * QUIET;
    html! {
        svg width={ (whole * MODULE / 100) "mm" } viewBox={ "0 0 " (whole) " " (whole) } role="img" aria-label=(words::CODE) shape-rendering="crispEdges" {
            path fill="#fff" d={ "M0 0h" (whole) "v" (whole) "H0z" } {}
            path fill="#000" d=(path(code)) {}
        }
    }
}

/// Every run of dark modules as a bar.
fn path(code: &QrCode) -> String {
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let dark = (x..code.size()).take_while(|&x| code.get_module(x, y)).count() as i32;
            if dark > 0 {
                // Writing to a string does not fail.
                let _ = write!(path, "M{} {}h{dark}v1h-{dark}z", x + QUIET, y + QUIET);
            }
            x += dark + 1;
        }
    }
    path
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_too_long_is_said_with_its_limit() {
        for shown in [Shown::OnScreen, Shown::OnPaper] {
            let of = |length: usize| code(&"a".repeat(length), shown).into_string();
            assert!(of(shown.room()).starts_with("<svg"));
            let limit = shown.room().to_string();
            assert!(of(shown.room() + 1).starts_with("<p>") && of(shown.room() + 1).contains(&limit));
        }
    }

    #[test]
    fn four_light_modules_lie_round_the_code() {
        let svg = code("https://example.org/#r=3", Shown::OnPaper).into_string();
        assert!(svg.contains("viewBox=\"0 0 33 33\"") && svg.contains("d=\"M4 4h7v1h-7z"), "{svg}");
    }
}
