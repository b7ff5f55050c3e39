//! Lays a tree's files out in a new working folder, byte by byte, with an index that knows them.
//!
//! Nobody's line-ending or filter settings are asked: what is in the repository lies in the folder.

use std::fs;
use std::fs::Metadata;
use std::path::Path;

use git2::IndexEntry;
use git2::IndexTime;
use git2::Oid;
use git2::Repository;
use git2::Tree;

use super::Stopped;
use crate::store::names;

/// Writes every file of a tree into a folder that has none of them, and the index beside.
pub(super) fn lay_out(repository: &Repository, folder: &Path, tree: &Tree) -> Result<(), Stopped> {
    let mut index = repository.index()?;
    index.read_tree(tree)?;
    let entries: Vec<IndexEntry> = index.iter().collect();
    for entry in entries {
        let path = folder.join(names::path_of_bytes(entry.path.clone()));
        if let Some(above) = path.parent() {
            fs::create_dir_all(above)?;
        }
        fs::write(&path, repository.find_blob(entry.id)?.content())?;
        index.add(&known(&fs::symlink_metadata(&path)?, entry.id, entry.path))?;
    }
    index.write()?;
    Ok(())
}

/// Returns an index entry that git need not look into to see that the file is unchanged.
#[cfg(unix)]
fn known(file: &Metadata, id: Oid, path: Vec<u8>) -> IndexEntry {
    use std::os::unix::fs::MetadataExt as _;
    // The index keeps the low 32 bits of each, whatever the file system counts in.
    let low = |wide: u64| (wide & u64::from(u32::MAX)) as u32;
    let time = |seconds: i64, part: i64| IndexTime::new(seconds as i32, part as u32);
    IndexEntry {
        ctime: time(file.ctime(), file.ctime_nsec()),
        mtime: time(file.mtime(), file.mtime_nsec()),
        dev: low(file.dev()),
        ino: low(file.ino()),
        uid: file.uid(),
        gid: file.gid(),
        file_size: low(file.size()),
        ..unknown(id, path)
    }
}

#[cfg(not(unix))]
fn known(_: &Metadata, id: Oid, path: Vec<u8>) -> IndexEntry {
    unknown(id, path)
}

/// Returns an index entry that git looks into when it is first asked.
fn unknown(id: Oid, path: Vec<u8>) -> IndexEntry {
    let never = IndexTime::new(0, 0);
    IndexEntry {
        ctime: never,
        mtime: never,
        dev: 0,
        ino: 0,
        mode: 0o100_644,
        uid: 0,
        gid: 0,
        file_size: 0,
        id,
        flags: 0,
        flags_extended: 0,
        path,
    }
}
