//! `guard push`: what the hook of a clone calls before commits are sent away.

use std::io;
use std::path::Path;

use super::each;
use super::in_a_hook;
use super::judging;
use super::judging::Asked;
use super::judging::Judged;
use super::lines;
use super::lines::Update;
use super::lines::plain;
use super::local::is_no_book;
use super::protecting::Listed;
use crate::cli::arguments::Push;
use crate::cli::exit::Exit;
use crate::cli::lint::today;
use crate::cli::output::Done;
use crate::store::CommitId;
use crate::store::Repository;
use crate::store::StoreError;
use crate::units::Date;

/// Branches that old findings are known from where the pushed one is new there.
const USUAL: [&str; 3] = ["HEAD", "main", "master"];

/// Runs the command. Where there is nothing to push, git says nothing, and nothing is checked.
pub(super) fn run(arguments: &Push) -> Done {
    let updates = match lines::pushed(io::stdin().lock()) {
        Ok(updates) => updates,
        Err(refused) => return refused,
    };
    let (mut exit, mut told) = (Exit::Clear, Vec::new());
    let as_of = today();
    for book in each(&arguments.books.book) {
        for update in &updates {
            let Some((branch, new)) = update.branch().zip(update.new.as_deref()) else { continue };
            let judged = attempt(book, &arguments.remote, update, (branch, new), as_of)
                .unwrap_or_else(|error| judging::could_not(&error));
            exit = exit.max(judged.exit);
            told.push(plain(&format!("{branch}: {}", judged.text)).trim_end().to_owned());
        }
    }
    if updates.is_empty() {
        told.push("tholebook: git named nothing to push: nothing was checked.".to_owned());
    }
    if exit != Exit::Clear {
        told.push(judging::LOOK.wrapped("tholebook: not pushed. A boat that must not go afloat is recorded all the same once her record \
                   says so (out-of-use: since, by, because). Else, to push it unchecked: --no-verify", ""));
    }
    Done { exit, result: String::new(), told }
}

fn attempt(
    book: Option<&Path>,
    remote: &str,
    update: &Update,
    (branch, new): (&str, &str),
    as_of: Date,
) -> Result<Judged, StoreError> {
    let repository = in_a_hook(book)?;
    let id = repository.commit(new)?;
    if !Listed::of(&repository, id)?.guards(branch) {
        return Ok(passes("not guarded, not checked"));
    }
    let old = update.old.as_deref().filter(|old| repository.commit(old).is_ok());
    let since = known_from(&repository, old, remote, branch, id)?;
    let any = repository.has_any_book(id)?;
    match judging::tip(repository, id, since) {
        Ok(subject) => {
            let since = since.map(|id| id.to_string());
            let asked = Asked { since: since.as_deref(), beside: &[], rules_from: None, as_of };
            let mut judged = judging::judged(subject, &asked);
            judged.text.insert(0, '\n');
            Ok(judged)
        }
        Err(error) if is_no_book(&error) && !any => Ok(passes("no book in it, not checked")),
        Err(error) => Err(error),
    }
}

fn passes(text: &str) -> Judged {
    Judged { exit: Exit::Clear, text: text.to_owned() }
}

/// Returns the commit that old findings are known from, as far as this clone knows the other one.
fn known_from(
    repository: &Repository,
    old: Option<&str>,
    remote: &str,
    branch: &str,
    new: CommitId,
) -> Result<Option<CommitId>, StoreError> {
    let there = [&[branch][..], &USUAL].concat();
    let there = there.iter().map(|name| format!("refs/remotes/{remote}/{name}"));
    for name in old.map(ToOwned::to_owned).into_iter().chain(there) {
        let Ok(known) = repository.commit(&name) else { continue };
        if repository.merge_base(known, new)?.is_some() {
            return Ok(Some(known));
        }
    }
    Ok(None)
}
