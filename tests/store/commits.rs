//! Commits made for one test.

use git2::ObjectType;
use git2::Oid;
use git2::Repository;
use git2::Signature;
use tempfile::TempDir;
use tholebook::store;
use tholebook::store::Content;
use tholebook::store::RepositoryError;
use tholebook::store::StoreError;

use crate::book::content;

/// The room's own view of a repository.
pub(crate) fn opened(repository: &Repository) -> store::Repository {
    let folder = repository.workdir().unwrap_or(repository.path());
    store::Repository::around(folder).expect("it opens")
}

/// A bare repository that is gone when the test ends: commits need no files on the disk.
pub(crate) fn bare() -> (TempDir, Repository) {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let git = Repository::init_bare(folder.path().join("club.git")).expect("a repository");
    git.set_head("refs/heads/main").expect("a plain name");
    (folder, git)
}

/// Commits all that lies in the working tree, and moves the branch there.
pub(crate) fn commit_all(git: &Repository, message: &str) -> Oid {
    let mut index = git.index().expect("an index");
    index.add_all(["."], git2::IndexAddOption::DEFAULT, None).expect("it can be added");
    index.update_all(["."], None).expect("it can be taken out");
    index.write().expect("the index can be written");
    let tree = index.write_tree().expect("a tree");
    let parents: Vec<Oid> = git.head().ok().and_then(|head| head.target()).into_iter().collect();
    commit(git, Some("HEAD"), tree, &parents, message)
}

/// Makes a commit of a tree.
pub(crate) fn commit(
    git: &Repository,
    branch: Option<&str>,
    tree: Oid,
    parents: &[Oid],
    message: &str,
) -> Oid {
    let seconds = 1_767_225_600 + 60 * i64::try_from(parents.len()).expect("few");
    let time = git2::Time::new(seconds, 60);
    let by = Signature::new("Ines Marlow", "ines@example.org", &time).expect("a plain name");
    let tree = git.find_tree(tree).expect("a tree");
    let parents: Vec<_> =
        parents.iter().map(|id| git.find_commit(*id).expect("a commit")).collect();
    git.commit(branch, &by, &by, message, &tree, &parents.iter().collect::<Vec<_>>())
        .expect("a commit")
}

/// Makes a tree of files, by path.
pub(crate) fn tree(git: &Repository, files: &[(&str, &str)]) -> Oid {
    let mut made = git.treebuilder(None).expect("a builder");
    let mut folders: std::collections::BTreeMap<&str, Vec<(&str, &str)>> = Default::default();
    for (path, text) in files {
        match path.split_once('/') {
            Some((folder, rest)) => folders.entry(folder).or_default().push((rest, text)),
            None => {
                let blob = git.blob(text.as_bytes()).expect("a blob");
                made.insert(path, blob, 0o100_644).expect("a plain name");
            }
        }
    }
    for (folder, files) in folders {
        made.insert(folder, tree(git, &files), 0o040_000).expect("a plain name");
    }
    made.write().expect("a tree")
}

/// Makes a tree of entries that libgit2 itself would not write.
pub(crate) fn raw_tree(git: &Repository, entries: &[(&str, &[u8], Oid)]) -> Oid {
    let mut bytes = Vec::new();
    for (mode, name, id) in entries {
        bytes.extend_from_slice(mode.as_bytes());
        bytes.push(b' ');
        bytes.extend_from_slice(name);
        bytes.push(0);
        bytes.extend_from_slice(id.as_bytes());
    }
    raw(git, ObjectType::Tree, &bytes)
}

pub(crate) fn raw(git: &Repository, kind: ObjectType, bytes: &[u8]) -> Oid {
    git.odb().expect("objects").write(kind, bytes).expect("it can be written")
}

/// Returns the room's id of a commit.
pub(crate) fn id(repository: &store::Repository, commit: Oid) -> store::CommitId {
    repository.commit(&commit.to_string()).expect("it was just made")
}

/// Returns a text, which must be one.
pub(crate) fn text(store: &store::Store, path: &str) -> String {
    match content(store, path) {
        Content::Text(text) => text.clone(),
        Content::Refused(refusal) => panic!("{path}: {refusal:?}"),
    }
}

/// Returns the error of the repository that something came to.
pub(crate) fn error<T>(came_to: Result<T, StoreError>) -> RepositoryError {
    match came_to {
        Err(StoreError::Repository(error)) => error,
        Err(other) => panic!("another error: {other}"),
        Ok(_) => panic!("no error"),
    }
}
