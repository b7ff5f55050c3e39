//! Where the history of a repository is cut short.

use std::collections::BTreeSet;
use std::fs;

use git2::Oid;
use git2::Repository;

/// Returns whether the history is cut short, in a linked worktree too.
pub(super) fn is(git: &Repository) -> bool {
    !edge(git).is_empty()
}

/// Returns the commits whose parents were left behind.
pub(super) fn edge(git: &Repository) -> BTreeSet<Oid> {
    let text = fs::read_to_string(git.commondir().join("shallow")).unwrap_or_default();
    text.lines().filter_map(|line| Oid::from_str(line.trim()).ok()).collect()
}
