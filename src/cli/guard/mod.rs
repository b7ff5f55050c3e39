//! `guard`: git hooks that check a book, and the server's gate.

mod install;
pub(super) mod judging;
mod lines;
mod local;
mod protecting;
mod push;
mod receive;
mod remove;
pub(super) mod status;

use std::path::Path;
use std::path::PathBuf;

use super::arguments::Guard;
use super::arguments::GuardWhat;
use super::output::Done;
use crate::store::Repository;
use crate::store::StoreError;
use crate::writing::guard::Moment;

/// What must be said wherever hooks of a clone are spoken of.
const NO_GATE: &str = "A hook in a clone is no gate: cherry-pick, revert, commit --no-verify, a \
    clone without hooks and a forge's own pages pass it by. The gate is CI, or guard receive on the \
    server.";

/// Runs the command.
pub(super) fn run(arguments: &Guard) -> Done {
    match &arguments.what {
        GuardWhat::Install(install) => install::run(install),
        GuardWhat::Remove(books) => remove::run(books),
        GuardWhat::Status(books) => status::run(books),
        GuardWhat::Receive(receive) => receive::run(receive),
        GuardWhat::Commit(books) => local::commit(books),
        GuardWhat::Merge(books) => local::merge(books),
        GuardWhat::Push(push) => push::run(push),
    }
}

/// Returns the repository around a book that is named, else the one that git or the current folder
/// names.
fn around(books: &[PathBuf]) -> Result<Repository, StoreError> {
    match books.first() {
        Some(book) => Repository::around(book),
        None => Repository::from_environment(None),
    }
}

/// Returns the repository that git names in a hook, with the book that the hook names: a folder
/// below the top of the files, whatever folder git stands in.
fn in_a_hook(book: Option<&Path>) -> Result<Repository, StoreError> {
    let repository = Repository::from_environment(None)?;
    match book {
        Some(book) => Repository::from_environment(Some(&repository.top().join(book))),
        None => Ok(repository),
    }
}

/// Returns the books that a hook names, or that which is to be sought.
fn each(books: &[PathBuf]) -> Vec<Option<&Path>> {
    let named: Vec<Option<&Path>> = books.iter().map(|book| Some(book.as_path())).collect();
    if named.is_empty() { vec![None] } else { named }
}

/// Returns the moments at which git asks in a repository.
fn moments(repository: &Repository) -> &'static [Moment] {
    if repository.is_bare() { &Moment::SERVER } else { &Moment::LOCAL }
}
