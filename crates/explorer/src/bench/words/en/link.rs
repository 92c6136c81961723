//! What in a link could not be used.

pub(crate) const FAR_TOO_LONG: &str = "The link is far too long to be one of ours, so it was not read.";
pub(crate) const UNMARKED: &str = "The link has no version mark, so some of it may have been lost.";

/// That the lap of an older link has another answer now.
pub(crate) const SINCE_RIDDEN_ON_RESERVE: &str = "This link is from before laps were ridden as you ride, harder uphill and easier down: they went at a steady power, and forcing a bank was left out. So the lap’s times, dismounts and the quicker bike may differ from what it showed. “At a steady power” under Effort, in “Round the lap”, shows those again.";

/// A version that is not known.
pub(crate) fn other_version(mark: &str, version: &str) -> String {
    format!(
        "The link begins with “{mark}={version}”, which this page does not know; what it could read was kept."
    )
}

/// A name that no field has.
pub(crate) fn unknown(name: &str) -> String {
    format!("“{name}” in the link is not known here and was left out.")
}

/// A text that its field cannot hold.
pub(crate) fn cut(label: &str) -> String {
    format!("“{label}” in the link was too long and was cut.")
}

/// Complaints that are not told one by one.
pub(crate) fn more(count: usize) -> String {
    format!("{count} more parts of the link could not be used.")
}
