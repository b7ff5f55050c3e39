//! Where in a book a text may stand; looks at names only.

use std::ffi::OsStr;
use std::path::Path;

/// The file that makes a folder a book.
pub const CLUB_FILE: &str = "club.yaml";

/// The file of the waivers; it holds no key that tells its kind.
pub const WAIVERS_FILE: &str = "waivers.yaml";

/// The files that stand at the root.
const AT_ROOT: [&str; 2] = [CLUB_FILE, WAIVERS_FILE];

/// The folders that hold records.
const OF_RECORDS: [&str; 4] = ["boats", "oars", "crews", "classes"];

/// Folders at the root whose YAML files nobody misses.
const ASIDE: [&str; 2] = ["schema", "target"];

/// Files among the records that git, folders and their viewers leave there.
const NO_STRAYS: [&str; 6] =
    [".gitkeep", ".keep", ".gitignore", ".gitattributes", ".DS_Store", ".directory"];

/// What part of a book a path lies in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Part {
    /// `club.yaml` or `waivers.yaml`.
    Root,
    /// One of the four folders of records, itself.
    Shelf,
    /// Below a folder of records.
    Records,
    /// Anywhere else.
    Elsewhere,
}

impl Part {
    /// Returns the part that a path, relative to the book's root, lies in.
    pub(super) fn of(path: &Path) -> Self {
        let mut parts = path.iter();
        let first = parts.next().unwrap_or_default();
        let alone = parts.next().is_none();
        if OF_RECORDS.iter().any(|name| first == *name) {
            if alone { Self::Shelf } else { Self::Records }
        } else if alone && AT_ROOT.iter().any(|name| first == *name) {
            Self::Root
        } else {
            Self::Elsewhere
        }
    }
}

/// Returns whether a text is looked for under this path, relative to the book's root.
#[must_use]
pub fn may_be_text(path: &Path) -> bool {
    match Part::of(path) {
        Part::Root => true,
        Part::Records => is_yaml(path) && !lies_in_dotted(path),
        Part::Shelf | Part::Elsewhere => false,
    }
}

/// Returns whether the path ends in `.yaml` or `.yml`, in any letter case.
pub(super) fn is_yaml(path: &Path) -> bool {
    let name = path.file_name().unwrap_or_default().as_encoded_bytes().to_ascii_lowercase();
    name.ends_with(b".yaml") || name.ends_with(b".yml")
}

/// Returns whether a folder of this path, relative to the book's root, is not looked into. Below a
/// folder of records every folder is but git's own, so that nothing there goes unsaid.
pub(super) fn is_aside(folder: &Path) -> bool {
    (is_dotted(folder) && Part::of(folder) != Part::Records)
        || folder.file_name() == Some(OsStr::new(".git"))
        || ASIDE.iter().any(|name| folder.as_os_str() == OsStr::new(name))
}

/// Returns whether a file outside the folders of records looks like a record that was misplaced.
pub(super) fn is_missed(path: &Path) -> bool {
    is_yaml(path) && !is_dotted(path)
}

/// Returns whether a file below a folder of records is no record, and might have been meant as one.
pub(super) fn is_stray(path: &Path) -> bool {
    let name = path.file_name().unwrap_or_default();
    Part::of(path) == Part::Records && !NO_STRAYS.iter().any(|known| name == *known)
}

/// Returns whether a folder on the way to a path begins with a dot.
fn lies_in_dotted(path: &Path) -> bool {
    path.ancestors().skip(1).any(is_dotted)
}

/// Returns whether the last part begins with a dot.
pub(super) fn is_dotted(path: &Path) -> bool {
    path.file_name().unwrap_or_default().as_encoded_bytes().starts_with(b".")
}
