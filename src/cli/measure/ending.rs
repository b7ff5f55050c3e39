//! How a measuring ends: what changed, what lint says, then writing and committing, if told.

use super::committing;
use super::draft::Draft;
use super::returning;
use super::subject::Measured;
use super::terminal::BrokenOff;
use super::terminal::Terminal;
use crate::cli::arguments::Measure;
use crate::cli::derive::writing::outdated;
use crate::cli::exit::Exit;
use crate::cli::output::Done;
use crate::cli::saving;
use crate::history;
use crate::history::Change;
use crate::model::Book;
use crate::reading::Fault;
use crate::reports;
use crate::reports::Difference;
use crate::reports::Report;
use crate::reports::shown;
use crate::rules;
use crate::rules::Check;
use crate::rules::Checked;
use crate::rules::Finding;
use crate::rules::Level;
use crate::units::Date;
use crate::working::BoatSight;
use crate::writing::measuring;
use crate::writing::measuring::Cannot;
use crate::writing::measuring::Days;
use crate::writing::measuring::Dialogue;
use crate::writing::worked_out::with_worked_out;

/// Whoever is told, and may be asked; where nobody is, what was told is the result.
pub(super) struct Hearer {
    terminal: Option<Terminal>,
    result: String,
}

impl Hearer {
    pub(super) fn at(terminal: Terminal) -> Self {
        Self { terminal: Some(terminal), result: String::new() }
    }

    pub(super) fn nobody() -> Self {
        Self { terminal: None, result: String::new() }
    }

    pub(super) fn show(&mut self, text: &str) {
        match &mut self.terminal {
            Some(terminal) => terminal.show(text),
            None => self.result.push_str(text),
        }
    }

    /// Returns whether something is to be done: as was said before, else as is answered. Where nobody
    /// can be asked it is not done.
    pub(super) fn agrees(&mut self, said: bool, question: &str) -> Result<bool, BrokenOff> {
        match &mut self.terminal {
            _ if said => Ok(true),
            Some(terminal) => terminal.yes(question),
            None => Ok(false),
        }
    }

    pub(super) fn done(self, exit: Exit) -> Done {
        Done { exit, result: self.result, told: Vec::new() }
    }
}

/// A book with the record as it is after measuring, and what was found in it.
pub(super) struct After {
    pub(super) text: String,
    pub(super) book: Book,
    pub(super) checked: Checked,
    pub(super) changes: Vec<Change>,
}

/// Ends a measuring.
///
/// # Errors
///
/// What the command comes to instead: it can't be written down as it is.
pub(super) fn run(
    measured: &Measured,
    arguments: &Measure,
    dialogue: &Dialogue,
    mut hearer: Hearer,
    draft: Option<&Draft>,
) -> Result<Done, Done> {
    let text = match arguments.second {
        true => second(measured, dialogue, &mut hearer),
        false => first(measured, dialogue, &mut hearer),
    };
    let text = text.map_err(|mut refused| {
        refused.told.extend(draft.map(|_| KEPT.to_owned()));
        refused
    })?;
    let Some(text) = text.filter(|text| text != measured.text()) else {
        hearer.show("The record stays as it was.\n");
        if let Some(draft) = draft {
            draft.remove();
        }
        return Ok(hearer.done(two_people(arguments, dialogue)));
    };
    let after = after(measured, text, dialogue.day());
    let day = dialogue.day();
    told(measured, &after, day, &mut hearer);
    let ended = returning::used_again(measured, arguments.back_in_use, after, day, &mut hearer)
        .map_err(Left::from)
        .and_then(|after| {
            let own = of_record(measured, &after).worst() >= Some(Level::Fault);
            let kept = kept(measured, arguments, dialogue, &after, (&mut hearer, draft))?;
            Ok((if own { Exit::Findings } else { two_people(arguments, dialogue) }, kept))
        });
    match ended {
        Ok((exit, Kept::All)) => Ok(hearer.done(exit)),
        Ok((exit, Kept::NotCommitted(exit_of_commit))) => Ok(hearer.done(exit.max(exit_of_commit))),
        Err(Left::Unwritten(why)) => {
            let done = hearer.done(Exit::NotChecked);
            Ok(Done { told: vec![why], ..done })
        }
        Err(Left::BrokenOff) => {
            let done = hearer.done(Exit::NotChecked);
            Ok(Done { told: vec!["Broken off.".to_owned()], ..done })
        }
    }
}

const KEPT: &str = "The draft is kept: measure again, and go back or on from where it stood.";

/// What became of the record.
enum Kept {
    /// What was told to be done is done.
    All,
    /// It is written, and could not be committed.
    NotCommitted(Exit),
}

/// Why it is not written.
enum Left {
    Unwritten(String),
    BrokenOff,
}

impl From<BrokenOff> for Left {
    fn from(_: BrokenOff) -> Self {
        Self::BrokenOff
    }
}

fn kept(
    measured: &Measured,
    arguments: &Measure,
    dialogue: &Dialogue,
    after: &After,
    (hearer, draft): (&mut Hearer, Option<&Draft>),
) -> Result<Kept, Left> {
    let path = shown::line(measured.path());
    if !hearer.agrees(arguments.write, &format!("Write this to {path}?"))? {
        let kept = if draft.is_some() { " The draft is kept." } else { " To write it: --write" };
        hearer.show(&format!("Nothing was written.{kept}\n"));
        return Ok(Kept::All);
    }
    let file = measured.open.book.file(measured.file);
    saving::save(&measured.open, file, &after.text).map_err(Left::Unwritten)?;
    hearer.show(&format!("{path} is written.\n"));
    if let Some(draft) = draft {
        draft.remove();
    }
    let exit = committing::offer(measured, arguments, dialogue, after, hearer)?;
    Ok(if exit == Exit::Clear { Kept::All } else { Kept::NotCommitted(exit) })
}

/// Returns the record after a measuring, its worked-out values put right.
fn first(
    measured: &Measured,
    dialogue: &Dialogue,
    hearer: &mut Hearer,
) -> Result<Option<String>, Done> {
    let recorded = dialogue.recorded().map_err(|cannot| refused(&cannot))?;
    for note in &recorded.notes {
        hearer.show(&format!("{}\n", measured.look.wrapped(note, "")));
    }
    let day = dialogue.day();
    match &recorded.days {
        Days::Nothing => {}
        Days::All => hearer.show(&format!("\nAll was read: {day} is the new day of the record.\n")),
        Days::Some(values) if measured.boat().is_some() => {
            let told = format!("Read again on {day}: {}.", values.join(", "));
            hearer.show(&format!("\n{}\n", measured.look.wrapped(&shown::line(&told), "")));
        }
        Days::Some(_) => {}
    }
    put_right(measured, recorded.text).map(Some)
}

/// Puts right the worked-out values that the readings no longer give.
fn put_right(measured: &Measured, text: String) -> Result<String, Done> {
    let (book, _) = measured.book_with(&text, true);
    let Some(boat) = book.boat(&measured.id) else { return Ok(text) };
    let outdated = outdated(&BoatSight::new(&book, boat));
    with_worked_out(&text, &outdated).map_err(|why| refused(&Cannot::Edit(why)))
}

fn refused(cannot: &Cannot) -> Done {
    let told = [format!("Not written: {cannot}."), format!("To go on: {}.", cannot.help())];
    Done::refused(Exit::Findings, told.map(|line| shown::line(&line)).to_vec())
}

/// Returns what two people's readings come to: to disagree is a finding.
fn two_people(arguments: &Measure, dialogue: &Dialogue) -> Exit {
    match arguments.second && !measuring::compared(dialogue).1.is_empty() {
        true => Exit::Findings,
        false => Exit::Clear,
    }
}

/// Lists where two people disagree, and returns the record with both readings, where it can have them.
fn second(
    measured: &Measured,
    dialogue: &Dialogue,
    hearer: &mut Hearer,
) -> Result<Option<String>, Done> {
    let (both, disagreements) = measuring::compared(dialogue);
    let values = if both == 1 { "value" } else { "values" };
    hearer.show(&format!(
        "\n{both} {values} read by two people; they disagree on {}.\n",
        disagreements.len()
    ));
    for own in &disagreements {
        let apart = if own.apart.is_empty() { String::new() } else { format!(" ({})", own.apart) };
        let line = format!("{}: first {}, second {}{apart}", own.name, own.first, own.second);
        hearer.show(&format!("{}\n", measured.look.hanging(&shown::line(&line), "  ", "    ")));
    }
    if both == 0 {
        return Ok(None);
    }
    match measuring::joined(dialogue) {
        Ok(text) => put_right(measured, text).map(Some),
        Err(cannot @ (Cannot::OtherDay { .. } | Cannot::SamePerson)) => {
            let told = format!("Nothing can be written of it: {cannot}; {}.", cannot.help());
            hearer.show(&format!("{}\n", measured.look.wrapped(&shown::line(&told), "")));
            Ok(None)
        }
        Err(cannot) => Err(refused(&cannot)),
    }
}

pub(super) fn after(measured: &Measured, text: String, as_of: Date) -> After {
    let (book, faults) = measured.book_with(&text, true);
    let checked = checked(&book, &faults, as_of);
    let changes = history::changes(&measured.open.book, &book);
    After { text, book, checked, changes }
}

fn checked(book: &Book, faults: &[Fault], as_of: Date) -> Checked {
    let mut checked = rules::check(book, faults, Check { as_of });
    checked.waive(book, as_of);
    checked
}

/// Tells what changed and what lint says of the record.
fn told(measured: &Measured, after: &After, as_of: Date, hearer: &mut Hearer) {
    let before = checked(&measured.open.book, &measured.open.faults, as_of);
    let since = rules::compared(&before, &after.checked);
    let difference = Difference {
        from: "the record as it was",
        to: "the record as measured",
        old: &measured.open.book,
        new: &after.book,
        changes: &after.changes,
        after: &after.checked,
        since: &since,
        as_of,
        only: &[],
    };
    let only = [measured.id.clone()];
    let own = of_record(measured, after);
    let report = Report { book: &after.book, checked: &own, as_of, only: &only, earlier: None };
    hearer.show(&format!("\n{}", reports::diff_text(&difference, measured.look)));
    hearer.show(&format!("\n{}\n", reports::text(&report, measured.look)));
}

/// Returns what was found of the record itself.
pub(super) fn of_record(measured: &Measured, after: &After) -> Checked {
    let mut own = after.checked.clone();
    let is_own = |finding: &Finding| {
        finding.name.is_within(&measured.id)
            || finding.labels.iter().any(|label| label.place.file == measured.file)
    };
    own.findings.retain(is_own);
    own.not_checked.retain(|own| own.name.is_within(&measured.id));
    own
}
