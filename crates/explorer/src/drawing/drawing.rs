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
    /// Height at a width, CSS pixels.
    pub(crate) height: fn(&S, f64) -> f64,
    pub(crate) draw: fn(&mut Pen, &Palette, &S, Size),
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

impl<S> Drawing<S> {
    /// The same in the engine without its caption, which stands in the page already.
    pub(crate) const fn hung(self) -> Self {
        if cfg!(target_arch = "wasm32") { Self { title: "", caption: "", ..self } } else { self }
    }
}
