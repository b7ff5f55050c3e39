//! One entry of an index, as git would write it of a plain file that it has not looked at.

use git2::IndexEntry;
use git2::IndexTime;
use git2::Oid;

/// Returns an entry; a stage over 0 makes it one side of a conflict.
pub(crate) fn entry(path: &str, id: Oid, stage: u16) -> IndexEntry {
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
        flags: stage << 12,
        flags_extended: 0,
        path: path.into(),
    }
}
