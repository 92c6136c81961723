//! What was last done about the rack.

use crate::rack::file::{Opened, RackFile};
use crate::rack::from_scripts::RackFileFault;
use crate::rack::rack::{Rack, RackFault};
use crate::rack::said::Said;
use crate::words::{counted, listed};

/// Names that a sentence lists; more are counted.
const NAMED: usize = 6;

/// What is said of it; nothing where nothing was done.
pub(crate) fn said(said: &Said) -> String {
    match said {
        Said::Nothing | Said::Left(_) => String::new(),
        Said::Kept(name) => format!("Kept as “{name}”."),
        Said::Replaced(name) => format!("Kept as “{name}” in place of the bike that was there."),
        Said::Same(name) => format!("This very bike is kept as “{name}” already."),
        Said::OfAnother(name) => format!(
            "Another bike is kept as “{name}”: keep once more to put this one in its place, or give it another name."
        ),
        Said::Renamed(from, to) => format!("“{from}” is now “{to}”."),
        Said::Copied(name, copy) => format!("“{name}” is kept once more as “{copy}”."),
        Said::Forgotten(name) => format!("“{name}” is forgotten."),
        Said::Back(name) => format!("“{name}” is back."),
        Said::On(side, name) => format!("{side} is now “{name}”."),
        Said::Fault(why) => fault_alone(*why),
        Said::Saved(file) => format!("Saved as “{file}”."),
        Said::Empty => "There is no bike on the rack yet: keep one first.".to_owned(),
        Said::Opened(file, opened) => self::opened(file, opened),
        Said::Refused(file, why) => format!("“{file}” is not opened: {}.", refused(*why)),
        Said::Unkept => "This browser does not keep that: its storage is full or switched off. What you see here is gone when the page is closed: save the rack as a file. Both bikes stay as they are.".to_owned(),
    }
}

/// Why something is not done, and what to do.
fn fault_alone(why: RackFault) -> String {
    match why {
        RackFault::Full => format!("The rack is full at {} bikes: forget one first.", Rack::MOST),
        RackFault::NoName => "Type a name for the bike first.".to_owned(),
        RackFault::LongName => {
            format!("That name is too long: type {} characters or fewer.", Rack::LONGEST_NAME)
        }
        RackFault::Taken => "That name is taken: type another.".to_owned(),
        RackFault::Gone => "That bike is no longer kept: it was forgotten elsewhere.".to_owned(),
    }
}

/// The same within a list.
const fn fault(why: RackFault) -> &'static str {
    match why {
        RackFault::Full => "the rack is full",
        RackFault::NoName => "no name",
        RackFault::LongName => "name too long",
        RackFault::Taken | RackFault::Gone => "name taken",
    }
}

/// Why a file is not taken, and what to do, within a sentence.
fn refused(why: RackFileFault) -> String {
    match why {
        RackFileFault::TooLarge => {
            format!("it is larger than {} MB and no rack", RackFile::LARGEST_BYTES / 1_000_000)
        }
        RackFileFault::Unreadable => "the file cannot be read; choose it once more".to_owned(),
        RackFileFault::Foreign => {
            "it is no rack; choose a file that “Save the rack as a file” or “Save all as a file” has written"
                .to_owned()
        }
        RackFileFault::OtherVersion => {
            "it is a rack of a version that this page does not know; open it with the page that wrote it"
                .to_owned()
        }
    }
}

fn opened(file: &str, opened: &Opened) -> String {
    let mut said = vec![match opened.taken.as_slice() {
        [] => format!("“{file}” adds no bike."),
        taken => format!("“{file}” adds {}: {}.", counted(taken.len(), "bike", "bikes"), few(taken)),
    }];
    let mut also = |names: &[String], sentence: &dyn Fn(String) -> String| {
        if !names.is_empty() {
            said.push(sentence(few(names)));
        }
    };
    let renamed: Vec<String> = opened.renamed.iter().map(|(was, is)| format!("{was} is {is}")).collect();
    also(&renamed, &|list| format!("Names that another bike has: {list}."));
    also(&opened.known, &|list| format!("Kept just so already: {list}."));
    let refused: Vec<String> =
        opened.refused.iter().map(|(name, why)| format!("“{name}” ({})", fault(*why))).collect();
    also(&refused, &|list| format!("Not taken: {list}."));
    also(&opened.strange, &|list| {
        format!("Passed over, as no part has that name or no text is there: {list}.")
    });
    let cut: Vec<String> = opened.cut.iter().map(ToString::to_string).collect();
    also(&cut, &|list| format!("Far too long and cut: {list}."));
    said.join(" ")
}

/// Names under which the browser keeps what is no bike.
pub(crate) fn unread(names: &[String]) -> String {
    format!("What this browser keeps as {} is no bike that this page can read: it is left alone.", few(names))
}

/// The first names, shortened, and how many more there are.
fn few(names: &[String]) -> String {
    let short = |name: &String| match name.char_indices().nth(Rack::LONGEST_NAME + NAMED) {
        Some((end, _)) => format!("{}…", &name[..end]),
        None => name.clone(),
    };
    let mut first: Vec<String> = names.iter().take(NAMED).map(short).collect();
    if names.len() > NAMED {
        first.push(format!("{} more", names.len() - NAMED));
    }
    listed(&first)
}
