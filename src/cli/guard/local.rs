//! `guard commit` and `guard merge`: what the hooks of a clone call before a commit is made.

use std::path::Path;

use super::each;
use super::in_a_hook;
use super::judging;
use super::judging::Asked;
use super::judging::Judged;
use super::lines::plain;
use crate::cli::arguments::Books;
use crate::cli::exit::Exit;
use crate::cli::lint::today;
use crate::cli::output::Done;
use crate::cli::subject;
use crate::reports::shown;
use crate::store::CommitId;
use crate::store::Repository;
use crate::store::RepositoryError;
use crate::store::StoreError;

/// What a commit is to be called where it is refused.
const REFUSED: &str = "tholebook: not committed. To commit it all the same: --no-verify; CI or the \
    server will not take it.";

/// What git calls the variables that name the commits being merged, their ids left out.
const MERGED: &str = "GITHEAD_";

/// Runs the command of `pre-commit`.
pub(super) fn commit(arguments: &Books) -> Done {
    all(arguments, &[])
}

/// Runs the command of `pre-merge-commit`. Git has not yet noted down what is being merged, but it
/// names it in the environment.
pub(super) fn merge(arguments: &Books) -> Done {
    let names = std::env::vars_os().filter_map(|(name, _)| name.into_string().ok());
    let ids = names.filter_map(|name| name.strip_prefix(MERGED).map(ToOwned::to_owned));
    let mut ids: Vec<String> = ids.collect();
    ids.sort_unstable();
    all(arguments, &ids)
}

fn all(arguments: &Books, merged: &[String]) -> Done {
    let mut exit = Exit::Clear;
    let mut told = Vec::new();
    for book in each(&arguments.book) {
        let judged = one(book, merged);
        exit = exit.max(judged.exit);
        if arguments.book.len() > 1 {
            let name = book.map_or_else(String::new, |book| book.to_string_lossy().into_owned());
            told.push(shown::line(&format!("The book {name}:")));
        }
        told.push(plain(&judged.text).trim_end().to_owned());
    }
    if exit != Exit::Clear {
        told.push(REFUSED.to_owned());
    }
    Done { exit, result: String::new(), told }
}

fn one(book: Option<&Path>, merged: &[String]) -> Judged {
    let repository = match in_a_hook(book) {
        Ok(repository) => repository,
        Err(error) => return judging::could_not(&error),
    };
    match staged(repository, merged) {
        Ok(Staged::Book(subject)) => {
            let asked =
                Asked { since: Some("HEAD"), beside: merged, rules_from: None, as_of: today() };
            judging::judged(*subject, &asked)
        }
        Ok(Staged::NoBook) => {
            let text = "tholebook: no book here, neither before nor after: nothing was checked.\n";
            Judged { exit: Exit::Clear, text: text.to_owned() }
        }
        Err(error) => moved(&error),
    }
}

enum Staged {
    Book(Box<subject::Subject>),
    /// The branch is about something else.
    NoBook,
}

fn staged(repository: Repository, merged: &[String]) -> Result<Staged, StoreError> {
    let others = merged.iter().map(|id| repository.commit(id));
    let others = others.collect::<Result<Vec<CommitId>, _>>()?;
    let had_none = match repository.head()? {
        Some(head) => matches!(repository.at(head), Err(error) if is_no_book(&error)),
        None => true,
    };
    match subject::staged_in(repository, &others) {
        Ok(subject) => Ok(Staged::Book(Box::new(subject))),
        Err(error) if had_none && is_no_book(&error) => Ok(Staged::NoBook),
        Err(error) => Err(error),
    }
}

pub(super) fn is_no_book(error: &StoreError) -> bool {
    matches!(error, StoreError::Repository(RepositoryError::NoBook { .. }))
}

fn moved(error: &StoreError) -> Judged {
    let mut judged = judging::could_not(error);
    if is_no_book(error) {
        judged.text.push_str(
            "If the book was moved, the hooks need its new folder: tholebook guard remove; \
             tholebook guard install --book DIR\n",
        );
    }
    judged
}
