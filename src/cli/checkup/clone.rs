//! Whether a clone is whole, and whether its hooks are there.

use super::mend;
use super::unseen;
use super::well;
use crate::cli::guard::status;
use crate::reports::LookedAt;
use crate::store;
use crate::store::Repository;
use crate::store::RepositoryError;
use crate::store::StoreError;

/// Looks at a clone.
pub(super) fn look(repository: &Repository, all: &mut Vec<LookedAt>) {
    let git = format!("git -C {}", store::quoted(repository.top()));
    all.push(if repository.is_shallow() {
        mend(
            "history",
            "cut short: the clone is shallow, so what was before can't be told",
            format!("{git} fetch --unshallow --tags"),
        )
    } else {
        well("history", "whole")
    });
    all.push(if repository.is_filtered() {
        mend(
            "old files",
            "left out: the clone was made with a filter, so older states can't be read",
            format!("{git} fetch --refetch --no-filter"),
        )
    } else {
        well("old files", "all here")
    });
    all.push(match repository.is_sparse() {
        Ok(true) => mend(
            "checkout",
            "sparse: some files are not in the folder",
            format!("{git} sparse-checkout disable"),
        ),
        Ok(false) => well("checkout", "whole"),
        Err(error) => unseen("checkout", &error),
    });
    all.push(match repository.try_index() {
        Ok(()) => well("index", "can be read"),
        Err(error) => index(&error),
    });
    match status::standings(repository) {
        Ok(hooks) => all.extend(hooks.into_iter().map(hook)),
        Err(error) => all.push(unseen("hooks", &error)),
    }
}

/// An index of another kind is in order for git, and can be written anew.
fn index(error: &StoreError) -> LookedAt {
    match error {
        StoreError::Repository(
            kind @ (RepositoryError::SplitIndex { .. } | RepositoryError::SparseIndex { .. }),
        ) => mend("index", kind.to_string(), kind.help()),
        other => unseen("index", other),
    }
}

fn hook(standing: status::Standing) -> LookedAt {
    let status::Standing { hook, said, cure } = standing;
    match cure {
        Some(cure) => mend(hook, said, cure),
        None => well(hook, &said),
    }
}
