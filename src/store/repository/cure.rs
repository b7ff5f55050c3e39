//! What helps against each [`RepositoryError`]; opens nothing.

use std::path::Path;
use std::path::PathBuf;

use crate::store::names;
use crate::store::repository::error::Cut;
use crate::store::repository::error::RepositoryError;

impl RepositoryError {
    /// Returns what the user can do.
    #[must_use]
    pub fn help(&self) -> String {
        match self {
            Self::None { folder } => no_history(folder),
            Self::NoneInEnvironment => "Run it from a git hook, or give the book's folder.".into(),
            Self::NotTrusted { folder } => trust(folder),
            Self::RefTable { folder } => {
                clone("A clone can be read", "--ref-format=files ", folder)
            }
            Self::Sha256 { .. } => {
                "The files in the folder can be read: leave out what asks for a commit.".into()
            }
            Self::Unreadable { folder, .. } | Self::UnreadableIndex { folder, .. } => {
                run("To see what git says", folder, "status")
            }
            Self::Elsewhere { git_dir, .. } => format!(
                "If that is a mistake: git --git-dir={} config --unset core.worktree",
                names::quoted(git_dir)
            ),
            Self::Nested { folder } => {
                clone("Someone may have put it there. If it is yours, move it out", "", folder)
            }
            Self::NothingStaged => "Give a branch, a tag or a commit instead.".into(),
            Self::SplitIndex { folder } => {
                run("To write it anew in one piece", folder, "update-index --no-split-index")
            }
            Self::SparseIndex { folder } => {
                let command = "sparse-checkout reapply --no-sparse-index";
                run("To write it anew in full", folder, command)
            }
            Self::Unmerged { .. } => "Settle each of these by hand, then: git add FILE".into(),
            Self::NoBook { .. } => {
                "A book's folder holds club.yaml. Check the folder and the commit.".into()
            }
            Self::SeveralBooks { places, top, .. } => say_which(places, top),
            Self::UnknownRevision { nearest, shallow, .. } => meant(nearest, shallow),
            Self::AmbiguousRevision { .. } => "Write more of its digits.".into(),
            Self::NoRevision { .. } | Self::NotACommit { .. } => {
                "Give one branch, tag or commit, such as main, HEAD~2 or the first digits of an id."
                    .into()
            }
            Self::Absent { folder, cut: Cut::Shallow, .. } => unshallow(folder),
            Self::Absent { folder, cut: Cut::Filtered, .. } => {
                let what = "This clone was made with a filter. To have all of it";
                run(what, folder, "fetch --refetch --no-filter")
            }
            Self::Absent { folder, cut: Cut::No, .. } | Self::Damaged { folder, .. } => {
                run("Another clone may have it still. To see what is lost", folder, "fsck --full")
            }
            Self::TooMuch { .. } => "Give the folder of the book itself.".into(),
        }
    }
}

fn run(what: &str, folder: &Path, command: &str) -> String {
    format!("{what}: git -C {} {command}", names::quoted(folder))
}

fn clone(what: &str, how: &str, folder: &Path) -> String {
    format!("{what}: git clone {how}{} NEW-FOLDER", names::quoted(folder))
}

fn no_history(folder: &Path) -> String {
    let folder = names::quoted(folder);
    format!(
        "To check it without a history: tholebook lint {folder}. To begin one: git -C {folder} init"
    )
}

fn trust(folder: &Path) -> String {
    format!(
        "If you trust it: git config --global --add safe.directory {} (a setting given by the \
         environment does not count here)",
        names::quoted(folder)
    )
}

fn unshallow(folder: &Path) -> String {
    let what = "The history here is cut short. To have all of it";
    run(what, folder, "fetch --unshallow --tags")
}

fn say_which(places: &[String], top: &Path) -> String {
    let first = places.first().map_or(top.into(), |place| top.join(names::path_of(place)));
    format!("Say which, for instance: {}", names::quoted(&first))
}

fn meant(nearest: &Option<String>, shallow: &Option<PathBuf>) -> String {
    let nearest = nearest.as_ref().map(|nearest| format!("Did you mean {nearest}?"));
    let told: Vec<String> = nearest.into_iter().chain(shallow.as_deref().map(unshallow)).collect();
    if told.is_empty() {
        return "To see the names there are: git branch --all; git tag".into();
    }
    told.join(" ")
}
