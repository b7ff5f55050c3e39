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
use crate::cli::subject::Subject;
use crate::reports::shown;
use crate::store::CommitId;
use crate::store::RepositoryError;
use crate::store::StoreError;

/// What a commit is to be called where it is refused.
const REFUSED: &str = "tholebook: not committed. A boat that must not go afloat is recorded all the \
    same once her record says so (out-of-use: since, by, because). Else, to commit it unchecked: \
    --no-verify. CI and the server's gate will ask again.";

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
        told.push(judging::LOOK.wrapped(REFUSED, ""));
    }
    Done { exit, result: String::new(), told }
}

fn one(book: Option<&Path>, merged: &[String]) -> Judged {
    let subject = match staged(book, merged) {
        Ok(subject) => subject,
        Err(error) if is_no_book(&error) && had_none(book) => {
            let text = "tholebook: no book here, neither before nor after: nothing was checked.\n";
            return Judged { exit: Exit::Clear, text: text.to_owned() };
        }
        Err(error) => return moved(&error),
    };
    let asked = Asked { since: Some("HEAD"), beside: merged, rules_from: None, as_of: today() };
    judging::judged(subject, &asked)
}

fn staged(book: Option<&Path>, merged: &[String]) -> Result<Subject, StoreError> {
    let repository = in_a_hook(book)?;
    let others = merged.iter().map(|id| repository.commit(id));
    let others = others.collect::<Result<Vec<CommitId>, _>>()?;
    subject::staged_in(repository, &others)
}

/// Returns whether the commit before holds no book either: the branch is about something else.
fn had_none(book: Option<&Path>) -> bool {
    let had = || {
        let repository = in_a_hook(book)?;
        match repository.head()? {
            Some(head) => repository.at(head).map(|_| false),
            None => Ok(true),
        }
    };
    had().unwrap_or_else(|error| is_no_book(&error))
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
