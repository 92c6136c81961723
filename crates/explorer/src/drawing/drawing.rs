//! What makes a picture: each is one of these, in a file of its own.

use crate::drawing::palette::Palette;
use crate::drawing::pen::{Pen, Size};
use crate::drawing::spot::Spot;

/// A picture of a section, `S` being what the section is drawn from.
pub(crate) struct Drawing<S> {
    /// Its name in the page.
    pub(crate) name: &'static str,
    /// The first words of its caption.
    pub(crate) title: &'static str,
    /// How it is to be read.
    pub(crate) caption: &'static str,
    /// Height at a width, CSS pixels: none at any width while there is nothing to show.
    pub(crate) height: fn(&S, f64) -> f64,
    pub(crate) draw: fn(&mut Pen, &Palette, &S, Size),
    /// One statement of what it shows for this scenario, with the marks of a line of words: its caption begins with it.
    pub(crate) says: fn(&S) -> String,
    /// What can be looked at, in the order the keyboard steps through.
    pub(crate) spots: fn(&S, Size) -> Vec<Spot>,
    /// One sentence that says what it shows.
    pub(crate) label: fn(&S) -> String,
    /// What a spot says, by its place in the order.
    pub(crate) words: fn(&S, &Spot, usize) -> String,
}

impl<S> Clone for Drawing<S> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<S> Copy for Drawing<S> {}

/// Whether a picture has something to show does not depend on the width; CSS pixels.
const SOME_WIDTH: f64 = 600.0;

impl<S> Drawing<S> {
    /// Whether there is something to show.
    pub(crate) fn shows(&self, section: &S) -> bool {
        (self.height)(section, SOME_WIDTH) > 0.0
    }

    /// The same in the engine without its caption, which stands in the page already.
    pub(crate) const fn hung(self) -> Self {
        if cfg!(target_arch = "wasm32") { Self { title: "", caption: "", ..self } } else { self }
    }
}
