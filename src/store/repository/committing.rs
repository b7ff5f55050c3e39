//! Commits changed files of a book, and nothing else that lies about in the repository.
//!
//! Done by libgit2, which runs none of the repository's hooks and signs nothing: whoever asks must
//! judge the book before, and a repository that wants signed commits is refused. Never pushes.

use std::path::Path;
use std::path::PathBuf;

use git2::ErrorClass;
use git2::ErrorCode;
use git2::Index;
use git2::Repository as Git;
use git2::RepositoryState;
use git2::Signature;
use thiserror::Error;

use super::CommitId;
use super::opening;
use crate::store::names;

/// Why nothing was committed.
#[derive(Clone, Debug, Eq, Error, PartialEq)]
pub enum NotCommitted {
    /// The book lies in no repository.
    #[error("the book lies in no git repository")]
    NoRepository,
    /// Git does not know whose commit it is.
    #[error("git does not know who you are")]
    Nobody,
    /// The repository wants its commits signed.
    #[error("this repository wants its commits signed, which is not done from here")]
    Signed,
    /// A merge or the like is not finished.
    #[error("a merge or the like is not finished in this repository")]
    Unfinished,
    /// Git ignores the file.
    #[error("git is told to ignore {0}")]
    Ignored(String),
    /// It is committed already.
    #[error("it is committed already")]
    Nothing,
    /// Something else went wrong.
    #[error("git could not commit ({0})")]
    Failed(String),
}

impl NotCommitted {
    /// Returns what to do about it.
    #[must_use]
    pub const fn help(&self) -> &'static str {
        match self {
            Self::NoRepository => "to keep its history: git init, then commit it",
            Self::Nobody => {
                "tell it: git config --global user.name \"Your Name\"; git config --global \
                 user.email you@club.example"
            }
            Self::Signed => "commit it yourself: git commit",
            Self::Unfinished => "finish that first (git status says how), then git commit",
            Self::Ignored(_) => "look into .gitignore, then git commit",
            Self::Nothing => "there is nothing to do",
            Self::Failed(_) => "what was measured is written; commit it yourself: git commit",
        }
    }
}

impl From<git2::Error> for NotCommitted {
    fn from(error: git2::Error) -> Self {
        Self::Failed(error.message().to_owned())
    }
}

/// Returns the name that git would sign a commit with in the repository around a book.
#[must_use]
pub fn identity(book_root: &Path) -> Option<String> {
    let git = opening::open(book_root).ok()?;
    let name = git.signature().ok()?.name().ok()?.to_owned();
    Some(name).filter(|name| !name.trim().is_empty())
}

/// Returns the folder of git's own beside which nothing is ever committed; none where the book lies
/// in no repository.
#[must_use]
pub fn git_folder(book_root: &Path) -> Option<PathBuf> {
    let git = opening::open(book_root).ok().filter(|git| !git.is_bare())?;
    Some(git.path().to_owned())
}

/// Commits these files of a book as they lie in its folder, by the repository's own identity. What
/// else is changed or staged stays as it is.
///
/// # Errors
///
/// [`NotCommitted`]. At most the files were staged.
pub fn commit(book_root: &Path, paths: &[&str], message: &str) -> Result<CommitId, NotCommitted> {
    let git = opening::open(book_root).map_err(|error| match error.code() {
        ErrorCode::NotFound => NotCommitted::NoRepository,
        _ => error.into(),
    })?;
    let by = ready(&git)?;
    let below = opening::below_working_tree(&git, book_root)
        .map_err(|error| NotCommitted::Failed(error.to_string()))?;
    let paths: Vec<PathBuf> = paths.iter().map(|path| below.join(names::path_of(path))).collect();
    if let Some(ignored) = paths.iter().find(|path| git.is_path_ignored(path).unwrap_or(false)) {
        return Err(NotCommitted::Ignored(names::shown(ignored)));
    }
    stage(&git, &paths)?;
    made(&git, &paths, &by, message)
}

/// Returns who commits, where a commit can be made at all.
fn ready(git: &Git) -> Result<Signature<'static>, NotCommitted> {
    if git.is_bare() {
        return Err(NotCommitted::NoRepository);
    }
    if git.state() != RepositoryState::Clean || git.index()?.has_conflicts() {
        return Err(NotCommitted::Unfinished);
    }
    let signs = git.config().and_then(|config| config.get_bool("commit.gpgsign"));
    if signs.unwrap_or(false) {
        return Err(NotCommitted::Signed);
    }
    git.signature().map_err(|error| match (error.code(), error.class()) {
        // Not set, or set to nothing.
        (ErrorCode::NotFound, _) | (_, ErrorClass::Invalid) => NotCommitted::Nobody,
        _ => error.into(),
    })
}

/// Stages the files beside whatever is staged already, so that git finds them unchanged afterwards.
fn stage(git: &Git, paths: &[PathBuf]) -> Result<(), NotCommitted> {
    let mut index = git.index()?;
    for path in paths {
        index.add_path(path)?;
    }
    Ok(index.write()?)
}

/// Makes the commit of the last one's files and these, whatever else is staged.
fn made(
    git: &Git,
    paths: &[PathBuf],
    by: &Signature,
    message: &str,
) -> Result<CommitId, NotCommitted> {
    let parent = match git.head() {
        Ok(head) => Some(head.peel_to_commit()?),
        Err(error) if error.code() == ErrorCode::UnbornBranch => None,
        Err(error) => return Err(error.into()),
    };
    let staged = git.index()?;
    let mut own = Index::new()?;
    if let Some(parent) = &parent {
        own.read_tree(&parent.tree()?)?;
    }
    for path in paths {
        let entry = staged.get_path(path, 0);
        own.add(&entry.ok_or_else(|| NotCommitted::Failed("a file was not staged".to_owned()))?)?;
    }
    let tree = git.find_tree(own.write_tree_to(git)?)?;
    if parent.as_ref().is_some_and(|parent| parent.tree_id() == tree.id()) {
        return Err(NotCommitted::Nothing);
    }
    let parents: Vec<&git2::Commit> = parent.iter().collect();
    Ok(CommitId(git.commit(Some("HEAD"), by, by, message, &tree, &parents)?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs;

    /// A repository with one commit, as [`Some`] one's or as nobody's.
    fn repository(name: Option<&str>) -> (tempfile::TempDir, Git) {
        let folder = tempfile::tempdir().expect("a folder");
        let git = Git::init(folder.path()).expect("a repository");
        let mut config =
            git.config().expect("settings").open_level(git2::ConfigLevel::Local).expect("its own");
        config.set_str("user.name", name.unwrap_or("")).expect("a name");
        config
            .set_str("user.email", if name.is_some() { "ines@club.example" } else { "" })
            .expect("an address");
        (folder, git)
    }

    fn root(folder: &tempfile::TempDir) -> PathBuf {
        fs::canonicalize(folder.path()).expect("a folder")
    }

    #[test]
    fn only_the_named_files_are_committed_and_what_else_is_staged_stays_staged() {
        let (folder, git) = repository(Some("Ines Marlow"));
        fs::write(folder.path().join("club.yaml"), "logbook: 1\n").expect("a file");
        let first = commit(&root(&folder), &["club.yaml"], "begun\n").expect("the first commit");
        fs::create_dir(folder.path().join("boats")).expect("a folder");
        for name in ["boats/a.yaml", "boats/b.yaml", "c.txt"] {
            fs::write(folder.path().join(name), "boat: a\n").expect("a file");
        }
        let mut index = git.index().expect("an index");
        index.add_path(Path::new("boats/b.yaml")).expect("staged");
        index.write().expect("written");
        let second = commit(&root(&folder), &["boats/a.yaml"], "measured\n").expect("a commit");
        assert_ne!(first, second);
        let commit = git.find_commit(second.0).expect("the commit");
        assert_eq!(commit.parent_id(0).expect("a parent"), first.0);
        assert_eq!(commit.author().name(), Ok("Ines Marlow"));
        let tree = commit.tree().expect("a tree");
        assert!(tree.get_path(Path::new("boats/a.yaml")).is_ok());
        assert!(tree.get_path(Path::new("boats/b.yaml")).is_err());
        let status = |path: &str| git.status_file(Path::new(path)).expect("a status");
        assert_eq!(status("boats/a.yaml"), git2::Status::CURRENT);
        assert_eq!(status("boats/b.yaml"), git2::Status::INDEX_NEW);
        assert_eq!(status("c.txt"), git2::Status::WT_NEW);
        let again = super::commit(&root(&folder), &["boats/a.yaml"], "again\n");
        assert_eq!(again, Err(NotCommitted::Nothing));
    }

    #[test]
    fn what_git_ignores_and_what_is_to_be_signed_is_not_committed() {
        let (folder, git) = repository(Some("Ines Marlow"));
        fs::write(folder.path().join(".gitignore"), "*.yaml\n").expect("a file");
        fs::write(folder.path().join("club.yaml"), "logbook: 1\n").expect("a file");
        let ignored = commit(&root(&folder), &["club.yaml"], "begun\n");
        assert_eq!(ignored, Err(NotCommitted::Ignored("club.yaml".to_owned())));
        git.config().expect("settings").set_bool("commit.gpgsign", true).expect("set");
        assert_eq!(commit(&root(&folder), &[".gitignore"], "x\n"), Err(NotCommitted::Signed));
        assert!(git.head().is_err(), "no commit was made");
    }

    #[test]
    fn outside_of_a_repository_and_in_a_bare_one_nothing_is_committed() {
        let folder = tempfile::tempdir().expect("a folder");
        assert_eq!(commit(&root(&folder), &["a"], "x"), Err(NotCommitted::NoRepository));
        Git::init_bare(folder.path()).expect("a bare repository");
        assert_eq!(commit(&root(&folder), &["a"], "x"), Err(NotCommitted::NoRepository));
    }

    #[test]
    fn a_repository_that_knows_nobody_says_which_two_commands_tell_it() {
        let (folder, git) = repository(None);
        fs::write(folder.path().join("club.yaml"), "logbook: 1\n").expect("a file");
        let refused = commit(&root(&folder), &["club.yaml"], "begun\n").expect_err("nobody");
        assert!(matches!(refused, NotCommitted::Nobody), "{refused:?}");
        assert!(refused.help().contains("user.name") && refused.help().contains("user.email"));
        assert!(git.head().is_err(), "no commit was made");
    }
}
