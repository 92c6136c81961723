//! Packs the compiled page.
fn main() {}
