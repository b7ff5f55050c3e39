//! The commit that a name written by a person stands for.

use git2::BranchType;
use git2::ErrorCode;
use git2::ObjectType;
use git2::Oid;
use git2::Repository;

use crate::store::repository::error::RepositoryError;
use crate::store::repository::loose;
use crate::store::repository::loose::Loose;
use crate::store::repository::objects;
use crate::store::repository::shallow;

/// The longest name of a commit, in bytes. Git's own limit for a branch is near it.
const LONGEST: usize = 256;

/// How many digits a whole id has.
const WHOLE: usize = 40;

/// How alike two names must be for one to be offered for the other: 1 is equal.
const ALIKE: f32 = 0.6;

/// Returns the commit of a name.
pub(super) fn commit(git: &Repository, rev: &str) -> Result<Oid, RepositoryError> {
    if let Some(why) = refused(rev) {
        let rev = rev.chars().take(LONGEST / 4).collect();
        return Err(RepositoryError::NoRevision { rev, why: why.into() });
    }
    if let Some(commit) = direct(git, rev) {
        return Ok(commit);
    }
    loose::refuse_broken(git)?;
    let found = git.revparse_single(rev).map_err(|error| not_found(git, rev, &error))?;
    let commit = found.peel(ObjectType::Commit).map_err(|error| match error.code() {
        ErrorCode::NotFound => unknown(git, rev),
        _ => {
            let what = match found.kind() {
                Some(ObjectType::Tree) => "folder",
                Some(ObjectType::Tag) => "tag of something else",
                _ => "file",
            };
            RepositoryError::NotACommit { rev: rev.into(), what: what.into() }
        }
    })?;
    Ok(commit.id())
}

/// Returns the commit of a whole id or a branch. The commit itself is not looked into, so that one
/// with a badly written author can be named too.
fn direct(git: &Repository, rev: &str) -> Option<Oid> {
    let of_branch = || git.resolve_reference_from_short_name(rev).ok()?.resolve().ok()?.target();
    let whole = (rev.len() == WHOLE).then(|| Oid::from_str(rev).ok()).flatten();
    let id = whole.or_else(of_branch)?;
    if Loose::of(git).broken(id).is_some() {
        return None;
    }
    let (_, kind) = git.odb().ok()?.read_header(id).ok()?;
    (kind == ObjectType::Commit).then_some(id)
}

fn not_found(git: &Repository, rev: &str, error: &git2::Error) -> RepositoryError {
    match error.code() {
        ErrorCode::Ambiguous => RepositoryError::AmbiguousRevision { rev: rev.into() },
        ErrorCode::NotFound | ErrorCode::InvalidSpec => unknown(git, rev),
        _ => RepositoryError::Damaged {
            what: format!("what \"{rev}\" leads to"),
            said: error.message().to_owned(),
            folder: objects::folder(git),
        },
    }
}

/// Returns why something is not even looked up.
fn refused(rev: &str) -> Option<&'static str> {
    if rev.trim().is_empty() {
        Some("it is empty")
    } else if rev.len() > LONGEST {
        Some("it is too long")
    } else if rev.starts_with('-') {
        Some("it begins like an option")
    } else if rev.contains("..") || rev.starts_with('^') {
        Some("it names a range")
    } else if rev.contains(':') || rev.contains("^{/") {
        Some("it asks for a file or a search")
    } else if rev.contains(char::is_control) {
        Some("it holds a control character")
    } else {
        None
    }
}

fn unknown(git: &Repository, rev: &str) -> RepositoryError {
    RepositoryError::UnknownRevision {
        rev: rev.into(),
        nearest: nearest(rev, &names(git)),
        shallow: shallow::is(git).then(|| objects::folder(git)),
    }
}

/// Returns the names of branches and tags, as a person would write them.
fn names(git: &Repository) -> Vec<String> {
    let branches = git.branches(None).into_iter().flatten().filter_map(Result::ok);
    let branches = branches.filter_map(|(branch, kind)| {
        let name = branch.name().ok()??.to_owned();
        (kind == BranchType::Local || !name.ends_with("/HEAD")).then_some(name)
    });
    let tags = git.tag_names(None);
    let tags = tags.iter().flat_map(|tags| tags.iter().filter_map(Result::ok).flatten());
    branches.chain(tags.map(ToOwned::to_owned)).collect()
}

fn nearest(rev: &str, known: &[String]) -> Option<String> {
    let same = |name: &&String| name.rsplit('/').next() == Some(rev);
    if let Some(remote) = known.iter().find(same) {
        return Some(remote.clone());
    }
    let known: Vec<&str> = known.iter().map(String::as_str).collect();
    similar::get_close_matches(rev, &known, 1, ALIKE).first().map(|name| (*name).to_owned())
}
