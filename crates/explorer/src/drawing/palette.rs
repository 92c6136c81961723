//! The page's colours, as the charts need them. `www/style/base.css` has the same values; a test compares the two.

use plotters::style::RGBColor;

/// One theme's colours.
#[derive(Debug, Clone, Copy)]
pub struct Palette {
    /// Background.
    pub paper: RGBColor,
    /// Text and main lines.
    pub ink: RGBColor,
    /// Secondary text.
    pub soft: RGBColor,
    /// Thin rules and grids.
    pub rule: RGBColor,
    /// Set-up A.
    pub a: RGBColor,
    /// A wash of set-up A, for areas.
    pub a_wash: RGBColor,
    /// Set-up B.
    pub b: RGBColor,
    /// A wash of set-up B, for areas.
    pub b_wash: RGBColor,
    /// Good.
    pub good: RGBColor,
    /// Take care.
    pub care: RGBColor,
    /// Stop.
    pub stop: RGBColor,
}

const fn rgb(hex: u32) -> RGBColor {
    RGBColor((hex >> 16) as u8, (hex >> 8) as u8, hex as u8)
}

/// Ink on paper.
pub const LIGHT: Palette = Palette {
    paper: rgb(0xfbfaf5),
    ink: rgb(0x1c2230),
    soft: rgb(0x565d6b),
    rule: rgb(0xd8d2c2),
    a: rgb(0x174a94),
    a_wash: rgb(0xe1e9f4),
    b: rgb(0xa8430c),
    b_wash: rgb(0xf7e6d9),
    good: rgb(0x1e6b4f),
    care: rgb(0x805300),
    stop: rgb(0xa3242a),
};

/// The same at night.
pub const DARK: Palette = Palette {
    paper: rgb(0x14171d),
    ink: rgb(0xe9e6dc),
    soft: rgb(0xa6abb6),
    rule: rgb(0x3a3f4a),
    a: rgb(0x8ab4f0),
    a_wash: rgb(0x1d2b42),
    b: rgb(0xf0a06a),
    b_wash: rgb(0x3b2719),
    good: rgb(0x74c8a3),
    care: rgb(0xe0b45c),
    stop: rgb(0xf08a8a),
};

/// Black on white, with a grey for areas and thin lines: for who has the system choose the colours. A and B differ in form.
const PLAIN: Palette = one_ink(0x000000, 0xffffff, 0xc0c0c0);

/// White on black.
const PLAIN_DARK: Palette = one_ink(0xffffff, 0x000000, 0x505050);

const fn one_ink(ink: u32, paper: u32, rule: u32) -> Palette {
    let (ink, paper, rule) = (rgb(ink), rgb(paper), rgb(rule));
    Palette {
        paper,
        ink,
        soft: ink,
        rule,
        a: ink,
        a_wash: rule,
        b: ink,
        b_wash: paper,
        good: ink,
        care: ink,
        stop: ink,
    }
}

impl Palette {
    /// The colours for a dark screen or a light one, those of the page or plain ink.
    #[must_use]
    pub const fn of(dark: bool, plain: bool) -> &'static Self {
        match (dark, plain) {
            (false, false) => &LIGHT,
            (true, false) => &DARK,
            (false, true) => &PLAIN,
            (true, true) => &PLAIN_DARK,
        }
    }

    /// The theme's colours, each by the name of its CSS custom property.
    #[must_use]
    pub const fn colours(&self) -> [(&'static str, RGBColor); 11] {
        [
            ("paper", self.paper),
            ("ink", self.ink),
            ("soft", self.soft),
            ("rule", self.rule),
            ("a", self.a),
            ("a-wash", self.a_wash),
            ("b", self.b),
            ("b-wash", self.b_wash),
            ("good", self.good),
            ("care", self.care),
            ("stop", self.stop),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_ink_is_seen_on_its_paper_and_on_its_areas() {
        for plain in [Palette::of(false, true), Palette::of(true, true)] {
            let light = |RGBColor(r, g, b): RGBColor| (i32::from(r) + i32::from(g) + i32::from(b)) / 3;
            for (name, ink) in plain.colours() {
                let far = |from: RGBColor| (light(ink) - light(from)).abs();
                let is_ground = ["paper", "rule", "a-wash", "b-wash"].contains(&name);
                assert!(is_ground || (far(plain.paper) == 255 && far(plain.rule) > 150), "{name}");
            }
        }
    }

    #[test]
    fn the_style_sheet_has_the_same_colours() {
        let css = include_str!("../../../../www/style/base.css");
        let (light, dark) = css.split_once("prefers-color-scheme: dark").expect("a dark theme");
        for (theme, sheet) in [(LIGHT, light), (DARK, dark)] {
            for (name, RGBColor(r, g, b)) in theme.colours() {
                let rule = format!("--{name}: #{r:02x}{g:02x}{b:02x};");
                assert!(sheet.contains(&rule), "missing {rule}");
            }
        }
    }
}
