//! What stands in the page before anything is worked out.

/// What the page does, in its title and its head.
pub(crate) const TAGLINE: &str = "your bike made ready for cyclo-cross";
/// What it does, for whoever looks for it.
pub(crate) const DESCRIPTION: &str = "Turn a road-minded bike into one for a cyclo-cross course: which rings and cassette, whether the cage takes them, where to ride and where to run, the lap, tyre and pressure, the road position carried over, and a sheet for the workshop. Computed on your own machine.";
/// What is said once another version has arrived.
pub(crate) const NEWER: &str = "A newer version is here: it loads the next time you open the page.";
/// The way past the bench.
pub(crate) const SKIP: &str = "Skip the bikes";
/// What its navigation is called.
pub(crate) const SECTIONS: &str = "Sections";
/// The bench among the sections.
pub(crate) const SETUPS: &str = "Bikes";
/// The workshop sheet among the sections.
pub(crate) const SHEET: &str = "Sheet";

/// The head of the bench.
pub(crate) const YOUR_SETUPS: &str = "Your bikes";
/// How A is drawn.
pub(crate) const FILLED: &str = "filled";
/// How B is drawn.
pub(crate) const OUTLINED: &str = "outlined";
/// What the form beside the bikes is called.
pub(crate) const RIDER_AND_GROUND: &str = "Rider, bank and lap";
/// What unfolds the list of values that are not the rider's.
pub(crate) const NOT_YOURS: &str = "Which values are yours?";
/// What unfolds the rest of both bikes.
pub(crate) const MORE: &str = "More of both bikes";
/// What the row of buttons under the bikes is called.
pub(crate) const ACTS: &str = "Both bikes";

/// Marks the number before.
pub(crate) const NUMBER_BEFORE: &str = "The number before";
/// Marks the number after.
pub(crate) const NUMBER_AFTER: &str = "The number after";
/// Takes a tooth away.
pub(crate) const TOOTH_LESS: &str = "A tooth less";
/// Adds a tooth.
pub(crate) const TOOTH_MORE: &str = "A tooth more";

/// On the button that exchanges the set-ups.
pub(crate) const SWAP: &str = "Swap A and B";
/// On the button that makes both alike.
pub(crate) const COPY_A_TO_B: &str = "Copy A to B";
/// On the button that takes back.
pub(crate) const UNDO: &str = "Undo";
/// On the button that brings back the demo.
pub(crate) const RESET: &str = "Start fresh";
/// What stands over the choice of units.
pub(crate) const UNITS: &str = "Everything in";
/// On the button that copies the link.
pub(crate) const SHARE: &str = "Copy the link";
/// On the button that makes a picture of every decision.
pub(crate) const BOARD: &str = "All as a picture";
/// The ways to take a picture along, by the names that the scripts know.
pub(crate) const TAKEN: [(&str, &str); 4] = [
    ("png", "PNG for a message"),
    ("print", "PNG to print, 170 mm wide"),
    ("svg", "SVG to enlarge or edit"),
    ("copy", "Copy it as a picture"),
];
/// It was copied.
pub(crate) const PICTURE_COPIED: &str = "It is on your clipboard: paste it into a message.";
/// The browser refuses to copy.
pub(crate) const PICTURE_REFUSED: &str =
    "This browser keeps the clipboard to itself: save the picture instead.";
/// The browser knows no pictures on the clipboard.
pub(crate) const COPIES_NONE: &str = "This browser copies no pictures: save it instead.";
/// The link was copied.
pub(crate) const SHARED: &str = "The link is on your clipboard.";
/// The browser copies nothing.
pub(crate) const SHARE_BY_HAND: &str =
    "Copy the address from the address bar: it holds all that is typed here.";

/// It was copied from a file that nobody else has.
pub(crate) const SHARED_FROM_FILE: &str = "The link is on your clipboard, but this page is a file: the link opens on this machine only. For others send the file too, or put the part from # on behind the address of a page that is on the web.";
/// On the same button where the system can send it.
pub(crate) const SHARE_BY_SYSTEM: &str = "Send the link";
/// What unfolds the code for a camera.
pub(crate) const CODE: &str = "The link as a QR code";

/// The head of the sheet.
pub(crate) const HEAD: &str = "The workshop sheet";
/// On the button that prints it.
pub(crate) const PRINT: &str = "Print the sheet";
/// On the button that copies it.
pub(crate) const COPY: &str = "Copy it as text";
/// On the button that copies a few lines of it.
pub(crate) const COPY_SHORT: &str = "Copy it in short";
/// What it is, until it has been copied.
pub(crate) const ABOUT: &str =
    "Everything decided above on one page; the browser’s own printing prints the same.";
/// It was copied.
pub(crate) const COPIED: &str = "The sheet is on your clipboard: paste it into a message.";
/// The browser copies nothing.
pub(crate) const COPY_BY_HAND: &str =
    "This browser keeps the clipboard to itself: copy the marked text below.";
/// What the text to send is called.
pub(crate) const AS_TEXT: &str = "The workshop sheet as text";

/// At the title of a picture or a table that rests on the demo's values; without quotes.
pub(crate) const DEMO_VALUES: &str = "demo values";

/// What the keys do in a picture.
pub(crate) const KEYS: &str = "Use the arrow keys to step through the picture, metre by metre along a lap; with Shift ten steps at a time, Page Up and Page Down a tenth of it, Home and End for its ends.";
/// Where everything is worked out.
pub(crate) const STAYS_HERE: &str = "Everything is computed on this machine; nothing you type leaves it.";
