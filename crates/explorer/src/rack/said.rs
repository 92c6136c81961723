//! What was last done about the rack, and what came of it.

use crate::rack::file::Opened;
use crate::rack::from_scripts::RackFileFault;
use crate::rack::rack::RackFault;
use crate::side::Side;

/// What is said of the rack.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub enum Said {
    /// Nothing.
    #[default]
    Nothing,
    /// A bike is kept under this name.
    Kept(String),
    /// It was put in the place of another.
    Replaced(String),
    /// It was kept so before.
    Same(String),
    /// Another is kept under this name: the same once more puts this one in its place.
    OfAnother(String),
    /// A bike has another name: the old and the new.
    Renamed(String, String),
    /// A bike was to have another name and keeps its own.
    Left(String),
    /// A bike was copied: its name and the copy's.
    Copied(String, String),
    /// A bike was forgotten.
    Forgotten(String),
    /// A bike that was forgotten is back.
    Back(String),
    /// A bike stands on a side.
    On(Side, String),
    /// It cannot be done.
    Fault(RackFault),
    /// The rack was saved as a file.
    Saved(String),
    /// There is no bike to save.
    Empty,
    /// A file was opened.
    Opened(String, Box<Opened>),
    /// A file is not taken.
    Refused(String, RackFileFault),
    /// The browser keeps nothing.
    Unkept,
}

impl Said {
    /// The bike whose row goes on where the button that was pressed is gone.
    #[must_use]
    pub fn goes_on_with(&self) -> Option<&str> {
        match self {
            Self::Renamed(_, name) | Self::Left(name) | Self::Back(name) => Some(name),
            _ => None,
        }
    }
}
