//! What stands below a folder of a tree or of an index, in the order of the folders; reads no text.

use std::collections::BTreeSet;
use std::path::Path;
use std::path::PathBuf;

use git2::Index;
use git2::IndexEntry;
use git2::Oid;

use crate::store::error::Unread;
use crate::store::layout;
use crate::store::layout::Part;
use crate::store::names;
use crate::store::repository::error::RepositoryError;
use crate::store::repository::objects::Objects;
use crate::store::walking::Survey;

/// The most things that are looked at in one state of a book.
pub(super) const MOST: usize = 200_000;

/// The most bytes a path may have, as on a disk.
const LONGEST_PATH: usize = 4096;

/// One thing in a tree or an index.
pub(super) struct Standing {
    /// Relative to the book's root.
    pub(super) path: PathBuf,
    pub(super) kind: Kind,
    pub(super) id: Oid,
}

/// What a thing is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    Folder,
    File,
    Link,
    /// A commit of another repository, as a submodule is.
    Apart,
    /// A name or a kind that no folder could hold.
    Odd,
}

impl Kind {
    pub(super) fn of_mode(mode: u32) -> Self {
        match mode & 0o170_000 {
            0o040_000 => Self::Folder,
            0o100_000 => Self::File,
            0o120_000 => Self::Link,
            0o160_000 => Self::Apart,
            _ => Self::Odd,
        }
    }
}

/// Returns what stands in a tree, folders that nobody looks into left out.
pub(super) fn in_tree(objects: &Objects<'_>, root: Oid) -> Result<Vec<Standing>, RepositoryError> {
    let mut found: Vec<Standing> = Vec::new();
    let mut folders = vec![(PathBuf::new(), root)];
    while let Some((folder, id)) = folders.pop() {
        let tree = objects.tree(id, &names::shown(&folder))?;
        if found.len() + tree.len() > MOST {
            return Err(too_much(&folder));
        }
        for entry in &tree {
            let path = folder.join(names::path_of_bytes(entry.name_bytes().to_vec()));
            let mode = u32::try_from(entry.filemode_raw()).unwrap_or(0);
            let kind =
                if is_odd(entry.name_bytes(), &path) { Kind::Odd } else { Kind::of_mode(mode) };
            if kind == Kind::Folder {
                if layout::is_aside(&path) {
                    continue;
                }
                folders.push((path.clone(), entry.id()));
            }
            found.push(Standing { path, kind, id: entry.id() });
        }
    }
    Ok(found)
}

/// Returns what stands in an index below a folder, as a tree made of it would hold it. What is only
/// meant to be added is not in it.
pub(super) fn in_index(index: &Index, below: &Path) -> Vec<Standing> {
    let mut seen = BTreeSet::new();
    let mut found = Vec::new();
    for entry in entries_below(index, below).filter(|(entry, _)| is_settled(entry)) {
        let (entry, path) = entry;
        let mut folders: Vec<&Path> = path.ancestors().skip(1).collect();
        folders.pop();
        if folders.iter().any(|folder| layout::is_aside(folder)) {
            continue;
        }
        for folder in folders {
            if seen.insert(folder.to_path_buf()) {
                found.push(Standing {
                    path: folder.into(),
                    kind: Kind::Folder,
                    id: Oid::ZERO_SHA1,
                });
            }
        }
        found.push(Standing { path, kind: Kind::of_mode(entry.mode), id: entry.id });
    }
    found
}

/// Returns the entries of an index below a folder, with their paths relative to it.
pub(super) fn entries_below(
    index: &Index,
    below: &Path,
) -> impl Iterator<Item = (IndexEntry, PathBuf)> {
    let mut prefix = names::bytes(below);
    if !prefix.is_empty() {
        prefix.push(b'/');
    }
    index.iter().filter_map(move |entry| {
        let path = entry.path.strip_prefix(prefix.as_slice())?.to_vec();
        Some((entry, names::path_of_bytes(path)))
    })
}

/// Returns the stage of an entry: 0 when it is no side of a conflict.
pub(super) fn stage(entry: &IndexEntry) -> u16 {
    entry.flags >> 12 & 0b11
}

fn is_settled(entry: &IndexEntry) -> bool {
    let meant = git2::IndexEntryExtendedFlag::INTENT_TO_ADD.bits();
    stage(entry) == 0 && entry.flags_extended & meant == 0
}

/// Sorts what stands there as a folder's walk does. `leads_to_file` says whether a link leads to a
/// plain file of the same state.
pub(super) fn survey(standing: &[Standing], leads_to_file: impl Fn(&Standing) -> bool) -> Survey {
    let mut survey = Survey::default();
    for thing in standing {
        match thing.kind {
            Kind::Folder => survey.take_folder(&thing.path),
            Kind::File => survey.take_file(&thing.path),
            Kind::Link => survey.take_link(&thing.path, || !leads_to_file(thing)),
            Kind::Apart => take_apart(&mut survey, &thing.path),
            Kind::Odd => {
                survey.unread.push(Unread::new(&thing.path, "no folder can hold such a name"))
            }
        }
    }
    survey
}

fn take_apart(survey: &mut Survey, path: &Path) {
    let name = names::shown(path);
    match Part::of(path) {
        Part::Root => survey.unread.push(Unread::new(path, "it is a submodule, not a file")),
        Part::Shelf | Part::Records => survey.warnings.push(format!(
            "\"{name}\" is a submodule, a repository of its own. The records in it are not part of \
             this one and were not read."
        )),
        Part::Elsewhere => {}
    }
}

/// Returns whether a name in a tree is one that would lead out of its folder, or nowhere.
fn is_odd(name: &[u8], path: &Path) -> bool {
    matches!(name, b"" | b"." | b"..")
        || name.contains(&b'/')
        || (cfg!(windows) && name.iter().any(|byte| b"\\:".contains(byte)))
        || path.as_os_str().len() > LONGEST_PATH
}

pub(super) fn too_much(folder: &Path) -> RepositoryError {
    let shown = names::shown(folder);
    let what = if shown.is_empty() { "the repository".to_owned() } else { format!("\"{shown}\"") };
    RepositoryError::TooMuch { what, limit: format!("{MOST} files and folders are the most") }
}
