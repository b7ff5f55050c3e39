//! `pages`: the whole book as pages for a browser.

mod past;

use super::arguments::Pages;
use super::checking;
use super::checking::CheckedBook;
use super::checking::Yardstick;
use super::exit::Exit;
use super::lint::today;
use super::output::Done;
use super::sheet::at_commit;
use super::subject;
use super::waivers::against;
use crate::reports;
use crate::reports::Report;
use crate::reports::WaiverRow;
use crate::reports::shown;
use crate::rules;
use crate::rules::Check;
use crate::store::publishing;
use crate::store::publishing::Leaf;
use crate::store::publishing::NotPublished;
use crate::store::publishing::Published;

/// Runs the command.
pub(super) fn run(arguments: &Pages) -> Done {
    written(arguments).unwrap_or_else(|refused| refused)
}

fn written(arguments: &Pages) -> Result<Done, Done> {
    let subject = subject::files(arguments.book.as_deref(), None)?;
    let as_of = arguments.as_of.unwrap_or_else(today);
    let commit = at_commit(&subject.store);
    let by = Yardstick { since: None, rules_from: None, waivers: true, as_of };
    let came = checking::check(subject, by)?;
    let past = past::of_book(&came.open.root);
    let leaves = leaves(&came, as_of, commit, past);
    let open = &came.open;
    let done = publishing::publish(&arguments.out, &open.root, &leaves)
        .map_err(|why| open.refused(exit_of(&why), not_written(arguments, &why)))?;
    let mut told = open.told.clone();
    told.extend(open.unread());
    let is_whole = came.conflicts.is_empty() && open.absent.is_empty();
    let exit = match (came.settings_are_bad, is_whole) {
        (true, _) => Exit::Usage,
        (false, false) => Exit::NotChecked,
        (false, true) => Exit::Clear,
    };
    Ok(Done { exit, result: told_of(arguments, &done), told })
}

fn leaves(
    came: &CheckedBook,
    as_of: crate::units::Date,
    commit: reports::AtCommit,
    past: Result<reports::BookPast, String>,
) -> Vec<Leaf> {
    let CheckedBook { open, checked, .. } = came;
    let book = &open.book;
    let sums = rules::sums(book, Check { as_of });
    let row = |waiver| WaiverRow { waiver, against: against(waiver, &checked.findings) };
    let pages = reports::Pages {
        report: Report { book, checked, as_of, only: &[], earlier: None },
        faults: &open.faults,
        sums: &sums,
        waivers: book.waivers.iter().map(row).collect(),
        commit,
        past,
        missing: came.conflicts.iter().chain(&open.absent).cloned().collect(),
    };
    let pages = reports::pages(&pages);
    pages.into_iter().map(|page| Leaf { name: page.name, text: page.text }).collect()
}

fn exit_of(why: &NotPublished) -> Exit {
    match why {
        NotPublished::Refused { .. } => Exit::NotChecked,
        _ => Exit::Usage,
    }
}

fn not_written(arguments: &Pages, why: &NotPublished) -> Vec<String> {
    let out = arguments.out.display();
    vec![shown::line(&format!("No pages in {out}: {why}; {}", why.help()))]
}

fn told_of(arguments: &Pages, done: &Published) -> String {
    let Published { written, unchanged, removed } = done;
    let pages = written + unchanged;
    let index = shown::line(&arguments.out.join("index.html").display().to_string());
    format!(
        "{pages} pages: {written} written, {unchanged} unchanged, {removed} taken away\n{index}\n"
    )
}
