//! One state of a book, judged as `lint` judges it, and told in the short lines of a gate.

use super::local::is_no_book;
use crate::cli::book;
use crate::cli::checking;
use crate::cli::checking::CheckedBook;
use crate::cli::checking::Compared;
use crate::cli::checking::Yardstick;
use crate::cli::exit::Exit;
use crate::cli::lint;
use crate::cli::output::Done;
use crate::cli::parting;
use crate::cli::parting::EarlierBook;
use crate::cli::subject;
use crate::cli::subject::Subject;
use crate::reading;
use crate::reports;
use crate::reports::Glyphs;
use crate::reports::Look;
use crate::reports::Report;
use crate::rules;
use crate::rules::Check;
use crate::rules::Checked;
use crate::rules::Finding;
use crate::rules::Level;
use crate::store::CommitId;
use crate::store::Repository;
use crate::store::StoreError;
use crate::units::Date;

/// A line with what git puts before it, `remote: `, fits a narrow terminal.
pub(super) const LOOK: Look = Look { width: 72, glyphs: Glyphs::Ascii, colour: false };

/// How many lines are told beside the findings; the others are counted.
const MOST_TOLD: usize = 10;

/// How a state is to be judged.
#[derive(Clone, Copy)]
pub(super) struct Asked<'a> {
    /// The commit that old findings are known from; none where every finding counts.
    pub(super) since: Option<&'a str>,
    /// Other commits whose findings are known as well: the other sides of a merge.
    pub(super) beside: &'a [String],
    /// The commit that limits and waivers are taken from, where they are not the state's own.
    pub(super) rules_from: Option<&'a str>,
    /// The day for both sides.
    pub(super) as_of: Date,
}

/// What came of it.
pub(super) struct Judged {
    pub(super) exit: Exit,
    pub(super) text: String,
}

/// Returns the book of a commit that is pushed. Whatever commits lie between, what changed is what
/// differs from where it parted from what was there.
///
/// # Errors
///
/// It can't be had.
pub(super) fn tip(
    repository: Repository,
    new: CommitId,
    since: Option<CommitId>,
) -> Result<Subject, StoreError> {
    let parted = match since {
        Some(since) => repository.merge_base(since, new)?,
        None => None,
    };
    let mut subject = subject::commit_in(repository, &new.to_string())?;
    if let Some(parted) = parted {
        subject.follows_on(parted);
    }
    Ok(subject)
}

/// Judges a subject.
pub(super) fn judged(subject: Subject, asked: &Asked) -> Judged {
    attempt(subject, asked).unwrap_or_else(not_judged)
}

/// Returns what a refusal comes to.
pub(super) fn not_judged(refused: Done) -> Judged {
    let lines = refused.told.iter().map(|line| format!("{}\n", LOOK.wrapped(line, "")));
    Judged { exit: refused.exit.max(Exit::Findings), text: lines.collect() }
}

fn attempt(subject: Subject, asked: &Asked) -> Result<Judged, Done> {
    let by = Yardstick {
        since: asked.since,
        rules_from: asked.rules_from,
        waivers: true,
        as_of: asked.as_of,
    };
    let loosened = match asked.rules_from {
        // There it is a finding.
        Some(_) => Vec::new(),
        None => loosened(&subject)?,
    };
    let mut beside = Vec::new();
    for rev in asked.beside {
        beside.push(parting::since(subject.origin()?, rev, &subject.store)?);
    }
    let mut came = checking::check(subject, by)?;
    know(&mut came.checked, &beside, asked.as_of);
    let exit = lint::exit(&came, Level::Fault, false);
    let told = std::mem::take(&mut came.open.told);
    let CheckedBook { open, checked, earlier, .. } = &came;
    let earlier = earlier.as_ref().map(Compared::shown);
    let report = Report { book: &open.book, checked, as_of: asked.as_of, only: &[], earlier };
    let mut text = reports::stopping(&report, Level::Fault, LOOK);
    text.push_str(&besides(&told));
    for one in loosened {
        text.push_str(&format!("{}\n", LOOK.hanging(&one, "", "    ")));
    }
    match exit {
        Exit::Usage => text.push_str("club.yaml can't be used as it stands. Mend it first.\n"),
        Exit::NotChecked => text.push_str("There is no boat, no oar set and no crew to check.\n"),
        _ => {}
    }
    Ok(Judged { exit, text })
}

/// Returns what `lint` tells beside its report: what was not read, and warnings.
fn besides(told: &[String]) -> String {
    let lines = told.iter().take(MOST_TOLD).map(|one| LOOK.hanging(one, "", "    "));
    let mut text: String = lines.map(|line| format!("{line}\n")).collect();
    let more = told.len().saturating_sub(MOST_TOLD);
    if more > 0 {
        text.push_str(&format!("and {more} more; all of them: tholebook lint\n"));
    }
    text
}

/// Returns a line for each limit that allows more than in the commit before: who sets limits may
/// set them, but not unseen.
fn loosened(subject: &Subject) -> Result<Vec<String>, Done> {
    let origin = subject.origin()?;
    let Some(before) = origin.parents.first() else { return Ok(Vec::new()) };
    let before = match origin.repository.at(*before) {
        Ok(store) => store,
        Err(error) if is_no_book(&error) => return Ok(Vec::new()),
        Err(error) => return Err(book::could_not(&error)),
    };
    let (before, _) = reading::read(&before.name, before.files);
    let (now, _) = reading::read(&subject.store.name, subject.store.files.clone());
    let line = |finding: &Finding| format!("limit loosened: {}", finding.message);
    Ok(rules::loosened(&now, &before).iter().map(line).collect())
}

/// What stood on any side of a merge is not new.
fn know(checked: &mut Checked, beside: &[EarlierBook], as_of: Date) {
    for EarlierBook { book, faults, .. } in beside {
        let mut before = rules::check(book, faults, Check { as_of });
        before.waive(book, as_of);
        let there = rules::compared(&before, checked).standing;
        for (finding, there) in checked.findings.iter_mut().zip(there) {
            finding.standing = finding.standing.map(|here| here.min(there));
        }
    }
}

/// Returns the words for a repository or a state that can't be had.
pub(super) fn could_not(error: &StoreError) -> Judged {
    not_judged(book::could_not(error))
}
