//! What the page's answers say. One program, because each takes longer to link than to run.

mod cage_sentences;
mod common;
mod fit_sentences;
mod owner_sentences;
mod ride_sentences;
mod ride_truth;
mod rings_sentences;
mod units_sentences;
mod whole_bikes;
