//! Two commits merged in memory.

use crate::book::paths;
use crate::commits::bare;
use crate::commits::commit;
use crate::commits::id;
use crate::commits::opened;
use crate::commits::text;
use crate::commits::tree;
use git2::Oid;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// One branch lowers a number, the other changes another file, or the same line.
fn branches(theirs: &[(&str, &str)]) -> (tempfile::TempDir, git2::Repository, [Oid; 3]) {
    let (folder, git) = bare();
    let base = [("boats/a.yaml", "a: 1\nb: 1\nc: 1\nd: 1\n"), ("club.yaml", "")];
    let ours = [("boats/a.yaml", "a: 2\nb: 1\nc: 1\nd: 1\n"), ("club.yaml", "")];
    let first = commit(&git, Some("refs/heads/main"), tree(&git, &base), &[], "base");
    let ours = commit(&git, None, tree(&git, &ours), &[first], "ours");
    let theirs = commit(&git, None, tree(&git, theirs), &[first], "theirs");
    (folder, git, [first, ours, theirs])
}

#[test]
fn a_merge_is_made_in_memory_and_nothing_reaches_the_disk() {
    let theirs =
        [("boats/a.yaml", "a: 1\nb: 1\nc: 1\nd: 2\n"), ("boats/b.yaml", ""), ("club.yaml", "")];
    let (_folder, git, [first, ours, theirs]) = branches(&theirs);
    let before = all_below(git.path());
    let repository = opened(&git);
    for _ in 0..2 {
        let merge =
            repository.merged(id(&repository, ours), id(&repository, theirs)).expect("a merge");
        assert_eq!(text(&merge.store, "boats/a.yaml"), "a: 2\nb: 1\nc: 1\nd: 2\n");
        assert_eq!(paths(&merge.store), ["boats/a.yaml", "boats/b.yaml", "club.yaml"]);
        assert_eq!(merge.base, Some(id(&repository, first)));
        assert!(merge.conflicts.is_empty(), "{:?}", merge.conflicts);
    }
    assert_eq!(all_below(git.path()), before);
}

fn all_below(folder: &Path) -> BTreeMap<std::path::PathBuf, Vec<u8>> {
    let entries = fs::read_dir(folder).expect("a folder").map(|entry| entry.expect("one").path());
    let below = entries.flat_map(|path| {
        if path.is_dir() {
            all_below(&path)
        } else {
            BTreeMap::from([(path.clone(), fs::read(&path).expect("a file"))])
        }
    });
    below.collect()
}

#[test]
fn a_path_in_conflict_is_told_and_left_out() {
    let (_folder, git, [_, ours, theirs]) =
        branches(&[("boats/a.yaml", "a: 3\nb: 1\nc: 1\nd: 1\n"), ("club.yaml", "")]);
    let repository = opened(&git);
    let merge = repository.merged(id(&repository, ours), id(&repository, theirs)).expect("a merge");
    assert_eq!(merge.conflicts, ["boats/a.yaml"]);
    assert_eq!(paths(&merge.store), ["club.yaml"]);
}

#[test]
fn commits_without_a_common_past_merge_with_no_base() {
    let (_folder, git) = bare();
    let one = commit(&git, None, tree(&git, &[("boats/a.yaml", ""), ("club.yaml", "")]), &[], "1");
    let two = commit(&git, None, tree(&git, &[("boats/b.yaml", ""), ("club.yaml", "")]), &[], "2");
    let repository = opened(&git);
    let (one, two) = (id(&repository, one), id(&repository, two));
    assert_eq!(repository.merge_base(one, two).expect("an answer"), None);
    let merge = repository.merged(one, two).expect("a merge");
    assert_eq!((merge.base, paths(&merge.store).len()), (None, 3));
}
