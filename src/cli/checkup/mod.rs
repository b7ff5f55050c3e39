//! `checkup`: is this clone fit to be trusted: whole, guarded, in time.

mod book;
mod clone;
mod wiring;

use super::arguments::Checkup;
use super::arguments::CheckupFormat;
use super::exit::Exit;
use super::output::Done;
use crate::reports;
use crate::reports::LookedAt;
use crate::reports::Standing;
use crate::store::Repository;
use crate::store::StoreError;

/// Runs the command.
pub(super) fn run(arguments: &Checkup) -> Done {
    let mut all = Vec::new();
    let store = book::opened(arguments.book.as_deref(), &mut all);
    let root = store.as_ref().map(|store| store.root.clone()).or(arguments.book.clone());
    let opened = match &root {
        Some(root) => Repository::around(root),
        None => Repository::from_environment(None),
    };
    match opened {
        Ok(repository) => {
            all.push(well("repository", "opens, and is yours or trusted"));
            clone::look(&repository, &mut all);
            all.extend(wiring::look(&repository, store.as_ref()));
            book::clock(store, Some(&repository), &mut all);
        }
        Err(error) => {
            all.push(unseen("repository", &error));
            book::clock(store, None, &mut all);
        }
    }
    let exit = match all.iter().map(|one| one.standing).max() {
        None | Some(Standing::Well) => Exit::Clear,
        Some(Standing::Mend) => Exit::Findings,
        Some(Standing::Unseen) => Exit::NotChecked,
    };
    let result = match arguments.format {
        CheckupFormat::Text => reports::checkup_text(&all),
        CheckupFormat::Json => reports::checkup_json(&all),
    };
    Done { exit, result, told: Vec::new() }
}

fn well(what: &'static str, said: &str) -> LookedAt {
    LookedAt { what, standing: Standing::Well, said: said.to_owned(), cure: None }
}

fn mend(what: &'static str, said: impl Into<String>, cure: impl Into<String>) -> LookedAt {
    LookedAt { what, standing: Standing::Mend, said: said.into(), cure: Some(cure.into()) }
}

fn unseen(what: &'static str, error: &StoreError) -> LookedAt {
    let (said, cure) = (error.to_string(), Some(error.help()));
    LookedAt { what, standing: Standing::Unseen, said, cure }
}
