//! `guard remove`: takes our hooks away, and puts back those that were there before.

use super::around;
use super::install::own;
use super::install::refused;
use super::moments;
use crate::cli::arguments::Books;
use crate::cli::book;
use crate::cli::output::Done;
use crate::store::Lies;
use crate::store::hooks;
use crate::store::hooks::HookError;
use crate::store::hooks::There;
use crate::writing::guard::Moment;

/// Runs the command.
pub(super) fn run(arguments: &Books) -> Done {
    removed(arguments).unwrap_or_else(|refused| refused)
}

fn removed(arguments: &Books) -> Result<Done, Done> {
    let repository = around(&arguments.book).map_err(|error| book::could_not(&error))?;
    let found = repository.hooks().map_err(|error| book::could_not(&error))?;
    let mut lines = String::new();
    for moment in moments(&repository) {
        let line = taken_away(&found.folder, *moment).map_err(|error| refused(&error))?;
        lines.push_str(&format!("{:<17} {line}\n", moment.hook()));
    }
    if found.lies != Lies::InGit {
        lines.push_str(
            "The folder of hooks is not this repository's own (core.hooksPath): a line of ",
        );
        lines.push_str("ours in another hook is yours to take out.\n");
    }
    Ok(Done::result(lines))
}

fn taken_away(folder: &std::path::Path, moment: Moment) -> Result<&'static str, HookError> {
    let hook = hooks::look(folder, moment.hook())?;
    let is_own = own(&hook, moment).is_some();
    Ok(match (&hook.there, is_own, hook.has_kept) {
        (There::Nothing, _, false) => "was not there",
        (There::Nothing, _, true) => {
            hook.take_away()?;
            "was not there; the one that was kept is back in its place"
        }
        (_, true, true) => {
            hook.take_away()?;
            "was taken away; the one that was there before is back in its place"
        }
        (_, true, false) => {
            hook.take_away()?;
            "was taken away"
        }
        (_, false, true) => "is another program's, and was left; so was the one that was kept",
        (_, false, false) => "is another program's, and was left",
    })
}
