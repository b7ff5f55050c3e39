//! Where git looks for the hooks of a repository; looks at settings and folders, writes nothing.

use std::fs;
use std::path::Path;
use std::path::PathBuf;

use git2::ErrorCode;

use crate::store::error::StoreError;
use crate::store::repository::Repository;

/// The folder that git looks for hooks in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HooksFolder {
    /// Where it is, every link resolved as far as it is there.
    pub folder: PathBuf,
    /// Whose it is.
    pub lies: Lies,
}

/// Where a folder of hooks lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lies {
    /// In git's own folder: nobody but this repository uses it.
    InGit,
    /// Among the files: a commit can change it, and a clone may carry it on.
    AmongFiles,
    /// Elsewhere: other repositories may use it too.
    Elsewhere,
}

impl Repository {
    /// Returns whether it has no working tree.
    #[must_use]
    pub fn is_bare(&self) -> bool {
        self.git.is_bare()
    }

    /// Returns the folder that git looks for hooks in: what `core.hooksPath` says, else `hooks` in
    /// git's own folder, which linked working trees share.
    ///
    /// # Errors
    ///
    /// The settings can't be read.
    pub fn hooks(&self) -> Result<HooksFolder, StoreError> {
        let own = real(self.git.commondir());
        let set = self.git.config().and_then(|config| config.get_path("core.hooksPath"));
        let folder = match set {
            Ok(set) => real(&self.git.workdir().unwrap_or(self.git.path()).join(set)),
            Err(error) if error.code() == ErrorCode::NotFound => real(&own.join("hooks")),
            Err(error) => return Err(self.unreadable(&error)),
        };
        let lies = if folder.starts_with(&own) {
            Lies::InGit
        } else if self.work_trees().iter().any(|top| folder.starts_with(top)) {
            Lies::AmongFiles
        } else {
            Lies::Elsewhere
        };
        Ok(HooksFolder { folder, lies })
    }

    /// Returns the tops of the working trees that share git's own folder, as far as they are known
    /// from here: this one and the first one.
    #[must_use]
    pub fn work_trees(&self) -> Vec<PathBuf> {
        let own = real(self.git.commondir());
        let first = own.parent().filter(|_| own.file_name().is_some_and(|name| name == ".git"));
        let here = self.git.workdir().map(real);
        here.into_iter().chain(first.map(Into::into)).collect()
    }
}

/// Returns a path with every link in it resolved, as far as it is there.
fn real(path: &Path) -> PathBuf {
    for there in path.ancestors() {
        if let (Ok(whole), Ok(rest)) = (fs::canonicalize(there), path.strip_prefix(there)) {
            return if rest.as_os_str().is_empty() { whole } else { whole.join(rest) };
        }
    }
    path.components().collect()
}
