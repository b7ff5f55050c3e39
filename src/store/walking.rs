//! Walks a book's folder and sorts what stands in it; reads no file.

use std::fs;
use std::path::Path;
use std::path::PathBuf;

use walkdir::DirEntry;
use walkdir::WalkDir;

use crate::store::error;
use crate::store::error::Unread;
use crate::store::layout;
use crate::store::layout::CLUB_FILE;
use crate::store::layout::Part;
use crate::store::names;

/// Told when git ignores the file that makes the folder a book. It is read all the same: without it
/// there would be nothing to say about the rest.
const IGNORED_CLUB: &str = "Git ignores club.yaml, so a clone of this book will have none. It was \
    read all the same. To keep it: git add --force club.yaml";

/// What stands in a book's folder. Paths are relative to its root.
#[derive(Debug, Default)]
pub(super) struct Survey {
    /// Plain files that hold the book's texts.
    pub(super) files: Vec<PathBuf>,
    /// Links in places where a text is looked for.
    pub(super) links: Vec<PathBuf>,
    /// YAML files where no text is looked for.
    pub(super) left_out: Vec<PathBuf>,
    /// What can't be read, known without trying.
    pub(super) unread: Vec<Unread>,
    /// Texts that a sparse checkout keeps out of the folder.
    pub(super) absent: Vec<String>,
    /// What the user should know.
    pub(super) warnings: Vec<String>,
}

/// Walks a book's folder. `ignored` says whether git leaves a path out.
///
/// # Errors
///
/// Whatever `ignored` fails with; the walk itself keeps its troubles in the survey.
pub(super) fn survey<E>(
    root: &Path,
    ignored: impl Fn(&Path) -> Result<bool, E>,
) -> Result<Survey, E> {
    let mut survey = Survey::default();
    let mut entries = WalkDir::new(root).sort_by_file_name().into_iter();
    while let Some(entry) = entries.next() {
        let entry = match entry {
            Ok(entry) if entry.depth() == 0 => continue,
            Ok(entry) => entry,
            Err(error) => {
                survey.take_trouble(root, &error);
                continue;
            }
        };
        let path = relative(root, entry.path());
        let folder = entry.file_type().is_dir();
        let ignored = (folder && layout::is_aside(path)) || ignored(path)?;
        if ignored && path != Path::new(CLUB_FILE) {
            if folder {
                entries.skip_current_dir();
            }
            continue;
        }
        if ignored {
            survey.warnings.push(IGNORED_CLUB.into());
        }
        survey.take(&entry, path);
    }
    Ok(survey)
}

impl Survey {
    fn take(&mut self, entry: &DirEntry, path: &Path) {
        let kind = entry.file_type();
        if kind.is_dir() {
            self.take_folder(path);
        } else if kind.is_symlink() {
            self.take_link(path, || may_lead_to_folder(entry));
        } else if kind.is_file() {
            self.take_file(path);
        } else if layout::may_be_text(path) {
            self.unread.push(Unread::new(path, "it is a pipe, a socket or a device, not a file"));
        }
    }

    pub(super) fn take_file(&mut self, path: &Path) {
        match Part::of(path) {
            _ if layout::may_be_text(path) => self.files.push(path.into()),
            Part::Shelf => {
                let name = names::shown(path);
                self.warnings.push(format!(
                    "\"{name}\" is a file; a folder of that name would hold records. It was not read."
                ));
            }
            Part::Elsewhere if layout::is_missed(path) => self.left_out.push(path.into()),
            Part::Records if layout::is_stray(path) => self.left_out.push(path.into()),
            _ => {}
        }
    }

    pub(super) fn take_folder(&mut self, path: &Path) {
        match Part::of(path) {
            Part::Root => self.unread.push(Unread::new(path, "it is a folder, not a file")),
            Part::Records if layout::is_yaml(path) => {
                let name = names::shown(path);
                self.warnings.push(format!(
                    "\"{name}\" is a folder, though it is named like a record. The records in it \
                     were read."
                ));
            }
            _ => {}
        }
    }

    /// Takes a link; the question whether it leads to a folder is asked only where that matters.
    pub(super) fn take_link(&mut self, path: &Path, to_folder: impl FnOnce() -> bool) {
        let refused = match Part::of(path) {
            Part::Root | Part::Shelf => true,
            Part::Records => layout::may_be_text(path) || (!layout::is_dotted(path) && to_folder()),
            Part::Elsewhere => false,
        };
        if refused {
            self.links.push(path.into());
        } else if layout::is_yaml(path) || layout::is_stray(path) {
            self.left_out.push(path.into());
        }
    }

    /// Returns the files among the records that are not read as such.
    pub(super) fn strays(&self) -> impl Iterator<Item = &PathBuf> {
        self.left_out.iter().filter(|path| layout::is_stray(path))
    }

    /// Takes a folder that could not be looked into. Where no record is looked for, no text is lost.
    fn take_trouble(&mut self, root: &Path, error: &walkdir::Error) {
        let path = error.path().map_or(Path::new(""), |path| relative(root, path));
        let reason = error.io_error().map_or_else(|| error.to_string(), error::reason);
        if path.as_os_str().is_empty() {
            self.unread.push(Unread::new(root, reason));
        } else if Part::of(path) == Part::Elsewhere {
            let name = names::shown(path);
            self.warnings.push(format!(
                "\"{name}\" could not be looked into: {reason}. No record is looked for in there."
            ));
        } else {
            self.unread.push(Unread::new(path, reason));
        }
    }
}

/// Returns whether a link leads to a folder, or to where it can't be seen.
fn may_lead_to_folder(link: &DirEntry) -> bool {
    fs::metadata(link.path()).map_or(true, |target| target.is_dir())
}

fn relative<'a>(root: &Path, path: &'a Path) -> &'a Path {
    path.strip_prefix(root).unwrap_or(path)
}
