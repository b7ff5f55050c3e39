//! A club's repository in a folder that vanishes, made without any git program.

#[path = "../store/index_entry.rs"]
mod index_entry;

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use git2::Commit;
use git2::Oid;
use git2::Repository;
use git2::Signature;
use git2::Time;
use tempfile::TempDir;

use self::index_entry::entry;

pub(crate) const BOAT: &str = "boats/kittiwake.yaml";
pub(crate) const GAP: &str = "kittiwake/seat-2/rowlock/gap";

/// Midnight UTC at the beginning of 2026-01-01.
pub(crate) const NEW_YEAR: i64 = 1_767_225_600;

const DAY: i64 = 86_400;

pub(crate) type Files = BTreeMap<String, String>;

pub(crate) struct Club {
    pub(crate) folder: TempDir,
    pub(crate) git: Repository,
}

/// The texts of the sound book.
pub(crate) fn sound() -> Files {
    let texts = [
        (BOAT, include_str!("../data/sound-book/boats/kittiwake.yaml")),
        ("club.yaml", include_str!("../data/sound-book/club.yaml")),
        ("oars/long-ash.yaml", include_str!("../data/sound-book/oars/long-ash.yaml")),
        ("crews/masters-a.yaml", include_str!("../data/sound-book/crews/masters-a.yaml")),
    ];
    texts.map(|(path, text)| (path.to_owned(), text.to_owned())).into()
}

/// The sound book with another gap at seat 2.
pub(crate) fn with_gap(gap: &str) -> Files {
    let mut files = sound();
    set_gap(&mut files, gap);
    files
}

/// Writes another gap at seat 2.
pub(crate) fn set_gap(files: &mut Files, gap: &str) {
    edit(files, BOAT, "seat: 2", "gap: 60", &format!("gap: {gap}"));
}

/// Changes the first `from` after the first `after`.
pub(crate) fn edit(files: &mut Files, path: &str, after: &str, from: &str, to: &str) {
    let text = files.get_mut(path).expect("a file");
    let (before, rest) = text.split_at(text.find(after).expect("the text before"));
    assert!(rest.contains(from), "{path} does not hold {from:?}");
    *text = format!("{before}{}", rest.replacen(from, to, 1));
}

pub(crate) fn person(name: &str, day: i64) -> Signature<'static> {
    Signature::new(name, "a@example.org", &Time::new(NEW_YEAR + day * DAY, 0)).expect("a person")
}

impl Club {
    pub(crate) fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let git = Repository::init(folder.path()).expect("a repository");
        Self { folder, git }
    }

    pub(crate) fn path(&self) -> &Path {
        self.folder.path()
    }

    /// Makes a commit of Ines Marlow's, so many days after the new year, that no branch holds yet.
    pub(crate) fn commit(&self, day: i64, parents: &[Oid], files: &Files) -> Oid {
        let who = person("Ines Marlow", day);
        self.commit_by(&who, &who, parents, files)
    }

    pub(crate) fn commit_by(
        &self,
        author: &Signature<'_>,
        committer: &Signature<'_>,
        parents: &[Oid],
        files: &Files,
    ) -> Oid {
        self.commit_tree(author, committer, parents, self.tree(files))
    }

    /// Makes a commit of a tree that was made before.
    pub(crate) fn commit_tree(
        &self,
        author: &Signature<'_>,
        committer: &Signature<'_>,
        parents: &[Oid],
        tree: Oid,
    ) -> Oid {
        let tree = self.git.find_tree(tree).expect("a tree");
        let parents: Vec<Commit<'_>> =
            parents.iter().map(|id| self.git.find_commit(*id).expect("a commit")).collect();
        let parents: Vec<&Commit<'_>> = parents.iter().collect();
        self.git.commit(None, author, committer, "readings", &tree, &parents).expect("a commit")
    }

    pub(crate) fn tree(&self, files: &Files) -> Oid {
        let mut index = git2::Index::new().expect("an index");
        for (path, text) in files {
            let blob = self.git.blob(text.as_bytes()).expect("a blob");
            index.add(&entry(path, blob, 0)).expect("an entry");
        }
        index.write_tree_to(&self.git).expect("a tree")
    }

    /// Makes a commit the one that is checked out, and its files those of the folder.
    pub(crate) fn check_out(&self, id: Oid, files: &Files) {
        self.git.set_head_detached(id).expect("a head");
        self.lay_out(files);
    }

    /// Writes files into the folder, in place of what lies there.
    pub(crate) fn lay_out(&self, files: &Files) {
        for old in ["boats", "oars", "crews", "classes"] {
            let _ = fs::remove_dir_all(self.path().join(old));
        }
        for (path, text) in files {
            let path = self.path().join(path);
            fs::create_dir_all(path.parent().expect("a folder")).expect("a new folder");
            fs::write(path, text).expect("a written file");
        }
    }

    /// Makes a line of commits, a day apart, and checks the last one out.
    pub(crate) fn line(&self, states: &[Files]) -> Vec<Oid> {
        let mut ids: Vec<Oid> = Vec::new();
        for (day, files) in (0..).zip(states) {
            let parents: Vec<Oid> = ids.last().copied().into_iter().collect();
            ids.push(self.commit(day, &parents, files));
        }
        let (last, files) = (ids.last().expect("a commit"), states.last().expect("files"));
        self.check_out(*last, files);
        ids
    }
}
