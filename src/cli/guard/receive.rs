//! `guard receive`: the gate of a server. Git calls it before a push is taken; any exit code but 0
//! refuses the whole push.

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
use super::protecting::Guarded;
use super::protecting::Hold;
use crate::cli::arguments::Receive;
use crate::cli::exit::Exit;
use crate::cli::lint::today;
use crate::cli::output::Done;
use crate::reports::shown;
use crate::store::CommitId;
use crate::store::Repository;
use crate::store::RepositoryError;
use crate::store::StoreError;
use crate::units::Date;

/// Why old faults stop the first push, and what can be done.
const NOTHING_BEFORE: &str = "Nothing here shares a history with it, so every finding counts. To \
    begin with a book that has faults, it is pushed before the gate is put in place.";

/// What is said of a branch that was checked, with nothing against it.
const TAKEN: &str = "may be taken";

/// What is asked of each update.
struct Gate<'a> {
    book: Option<&'a Path>,
    hold_limits: bool,
    /// One day for the whole push.
    as_of: Date,
}

/// Runs the command.
pub(super) fn run(arguments: &Receive) -> Done {
    let (mut done, checked) = match lines::received(io::stdin().lock()) {
        Ok(updates) if updates.is_empty() => (nothing_said(), false),
        Ok(updates) => received(arguments, &updates),
        Err(refused) => (refused, false),
    };
    let end = match (done.exit, checked) {
        (Exit::Clear, true) => "tholebook: nothing is against this push, as far as it was checked",
        (Exit::Clear, false) => "tholebook: nothing of this push was checked",
        _ => "tholebook: nothing of this push was taken",
    };
    done.told.push(end.to_owned());
    done.told = done.told.iter().map(|text| plain(text).trim_end().to_owned()).collect();
    done
}

fn nothing_said() -> Done {
    let told = "Git said nothing of any push on standard input. This is for git to call, as \
                pre-receive; to put it there: tholebook guard install";
    Done::refused(Exit::NotChecked, vec![told.to_owned()])
}

/// Returns what came of a push, and whether any of it was checked.
fn received(arguments: &Receive, updates: &[Update]) -> (Done, bool) {
    let (mut exit, mut told, mut checked) = (Exit::Clear, Vec::new(), false);
    for book in each(&arguments.book) {
        let gate = Gate { book, hold_limits: arguments.hold_limits, as_of: today() };
        if let Some(book) = book.filter(|_| arguments.book.len() > 1) {
            told.push(format!("The book {}:", book.display()));
        }
        let guarded = in_a_hook(book).and_then(|own| Guarded::before(&own, updates));
        let guarded = match guarded {
            Ok(guarded) => {
                told.extend(guarded.told.iter().map(|told| judging::LOOK.wrapped(told, "")));
                guarded
            }
            Err(error) => {
                let judged = could_not(&error);
                exit = exit.max(judged.exit);
                told.push(judged.text);
                continue;
            }
        };
        for update in updates {
            let judged = gate.judged(&guarded, update);
            exit = exit.max(judged.exit);
            checked |= judged.text.starts_with(TAKEN);
            told.push(format!("{}: {}", short(update), judged.text));
        }
    }
    (Done { exit, result: String::new(), told }, checked)
}

fn could_not(error: &StoreError) -> Judged {
    let mut judged = judging::could_not(error);
    if matches!(error, StoreError::Repository(RepositoryError::SeveralBooks { .. })) {
        let help = "In the server's repository: tholebook guard install --book DIR --book DIR";
        judged.text.push_str(&format!("{help}\n"));
    }
    judged
}

fn short(update: &Update) -> &str {
    let name = update.name.as_str();
    let short = name.strip_prefix("refs/heads/").or_else(|| name.strip_prefix("refs/"));
    // A branch that calls itself refs/heads/main is not main.
    short.filter(|short| !short.starts_with("refs/")).unwrap_or(name)
}

impl Gate<'_> {
    fn judged(&self, guarded: &Guarded, update: &Update) -> Judged {
        match self.attempt(guarded, update) {
            Ok(judged) => judged,
            Err(error) => refused(could_not(&error)),
        }
    }

    fn attempt(&self, guarded: &Guarded, update: &Update) -> Result<Judged, StoreError> {
        let repository = in_a_hook(self.book)?;
        if update.branch().is_none() {
            return no_branch(&repository, update);
        }
        let whole = repository.stands_for(&update.name)?;
        let branch = whole.strip_prefix("refs/heads/").unwrap_or(&whole);
        let commit = |id: &Option<String>| id.as_ref().map(|id| repository.commit(id)).transpose();
        let (old, new) = (commit(&update.old)?, commit(&update.new)?);
        let hold = guarded.hold(&repository, branch, old)?;
        let Some(new) = new else { return Ok(deleted(hold)) };
        if hold == Hold::Free {
            return Ok(passes(&format!("not guarded, not checked ({})", guarded.said())));
        }
        let follows = match old {
            Some(old) => repository.merge_base(old, new)? == Some(old),
            None => true,
        };
        if hold == Hold::Kept && !follows {
            return Ok(stops(
                "refused: it would replace commits of a guarded branch. Fetch, merge, and push \
                 again. If they must go, whoever keeps the server does it there",
            ));
        }
        let since = known_from(&repository, old, new)?;
        if let Some(since) = since
            && let Some((was, is)) = repository.left_behind(since, new)?
        {
            return Ok(stops(&another_book(&was, &is)));
        }
        let subject = judging::tip(repository, new, since)?;
        let since = since.map(|id| id.to_string());
        let rules_from = since.as_deref().filter(|_| self.hold_limits);
        let asked = Asked { since: since.as_deref(), beside: &[], rules_from, as_of: self.as_of };
        let mut judged = judging::judged(subject, &asked);
        if since.is_none() && judged.exit == Exit::Findings {
            judged.text.push_str(&format!("{}\n", judging::LOOK.wrapped(NOTHING_BEFORE, "")));
        }
        Ok(match judged.exit {
            Exit::Clear => Judged { text: format!("{TAKEN}\n{}", judged.text), ..judged },
            _ => refused(judged),
        })
    }
}

fn refused(judged: Judged) -> Judged {
    Judged { text: format!("refused\n{}", judged.text), ..judged }
}

fn passes(text: &str) -> Judged {
    Judged { exit: Exit::Clear, text: judging::LOOK.wrapped(text, "") }
}

fn stops(text: &str) -> Judged {
    Judged { exit: Exit::Findings, text: judging::LOOK.wrapped(text, "") }
}

/// A folder that calls itself the book does not take the place of the one whose records are there.
fn another_book(was: &str, is: &str) -> String {
    let folder = |name: &str| match name {
        "" => "the top folder".to_owned(),
        name => format!("the folder {}", shown::line(name)),
    };
    let (was, is) = (folder(was), folder(is));
    format!(
        "refused: the book lay in {was}, and its records are still there, but its club.yaml is not \
         taken for the book any more: {is} is. Put club.yaml back, or move all the records with \
         it. If another book is meant, whoever keeps the server names its folder there: tholebook \
         guard install --book DIR"
    )
}

fn deleted(hold: Hold) -> Judged {
    match hold {
        Hold::Kept => stops(
            "refused: a guarded branch is not deleted by a push. If it must go, whoever keeps the \
             server does it there",
        ),
        Hold::Checked | Hold::Free => passes("deleted: nothing to check"),
    }
}

/// Tags and the like mark what is there and change no branch. What they name must be there.
fn no_branch(repository: &Repository, update: &Update) -> Result<Judged, StoreError> {
    let Some(new) = &update.new else { return Ok(passes("deleted: nothing to check")) };
    match repository.commit(new) {
        Ok(_) | Err(StoreError::Repository(RepositoryError::NotACommit { .. })) => {
            Ok(passes("no branch: not checked"))
        }
        Err(error) => Err(error),
    }
}

/// Returns the commit that old findings are known from: that of the branch before, or that which a
/// clone would check out; none where neither shares a history with what is pushed.
fn known_from(
    repository: &Repository,
    old: Option<CommitId>,
    new: CommitId,
) -> Result<Option<CommitId>, StoreError> {
    for known in [old, repository.head()?].into_iter().flatten() {
        if repository.merge_base(known, new)?.is_some() {
            return Ok(Some(known));
        }
    }
    Ok(None)
}
