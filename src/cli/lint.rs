//! `lint`: checks a book.

use std::path::Path;

use super::also;
use super::arguments::FailOn;
use super::arguments::Format;
use super::arguments::Lint;
use super::book;
use super::book::OpenBook;
use super::checking;
use super::checking::CheckedBook;
use super::checking::Compared;
use super::checking::Yardstick;
use super::exit::Exit;
use super::look::look;
use super::output::Done;
use super::standard_input::TextGiven;
use super::subject;
use crate::model::Book;
use crate::model::Name;
use crate::reports;
use crate::reports::Ended;
use crate::reports::Look;
use crate::reports::Report;
use crate::rules::Checked;
use crate::rules::Level;
use crate::units::Date;

/// Runs the command.
pub(super) fn run(arguments: &Lint) -> Done {
    match also::refuse(&arguments.also) {
        Ok(()) => checked(arguments).unwrap_or_else(|refused| not_checked(arguments, refused)),
        Err(refused) => refused,
    }
}

fn checked(arguments: &Lint) -> Result<Done, Done> {
    let (folder, instead) = texts(arguments)?;
    let subject = subject::asked(arguments, folder, instead)?;
    let below = subject.below();
    let as_of = arguments.as_of.or(subject.day).unwrap_or_else(today);
    let by = Yardstick {
        since: arguments.since.as_deref(),
        rules_from: arguments.rules_from.as_deref(),
        waivers: !arguments.no_waivers,
        as_of,
    };
    let mut came = checking::check(subject, by)?;
    let mut told = std::mem::take(&mut came.open.told);
    told.extend(narrow(&mut came, &arguments.only)?);
    let CheckedBook { open, checked, earlier, conflicts, .. } = &came;
    let earlier = earlier.as_ref().map(Compared::shown);
    let report = Report { book: &open.book, checked, as_of, only: &arguments.only, earlier };
    let mut exit = exit(&came, gate(arguments.fail_on), arguments.allow_empty);
    told.extend(reason(exit).filter(|_| open.book.unread.is_empty() || exit == Exit::Usage));
    if !conflicts.is_empty() {
        told.push(not_merged(conflicts));
        exit = exit.max(Exit::NotChecked);
    }
    if !open.absent.is_empty() {
        exit = exit.max(Exit::NotChecked);
    }
    let ended = ended(arguments, report, &below, exit, &told);
    let look = look(&arguments.look);
    let result = match arguments.spoken {
        true => reports::spoken(&report, look),
        false => rendered(&ended, arguments.format, look),
    };
    let plain = Look { colour: false, ..look };
    let unwritten = also::write(&arguments.also, |format| Some(rendered(&ended, format, plain)));
    if !unwritten.is_empty() {
        exit = exit.max(Exit::NotChecked);
    }
    told.extend(unwritten);
    Ok(Done { exit, result, told })
}

/// Tells those who only read the report why there is nothing in it, in the formats that have a
/// place for that: silence must not be taken for a book in order.
fn not_checked(arguments: &Lint, mut refused: Done) -> Done {
    let (book, checked) = (Book::default(), Checked::default());
    let as_of = arguments.as_of.unwrap_or_else(today);
    let report = Report { book: &book, checked: &checked, as_of, only: &[], earlier: None };
    let ended = ended(arguments, report, "", refused.exit, &refused.told);
    let look = Look { colour: false, ..look(&arguments.look) };
    let tells_why = |format| {
        matches!(format, Format::Sarif | Format::Junit | Format::Markdown | Format::Github)
    };
    let render = |format| tells_why(format).then(|| rendered(&ended, format, look));
    refused.result =
        if arguments.spoken { None } else { render(arguments.format) }.unwrap_or_default();
    let unwritten = also::write(&arguments.also, render);
    refused.told.extend(unwritten);
    refused
}

fn ended<'r>(
    arguments: &Lint,
    report: Report<'r>,
    below: &'r str,
    exit: Exit,
    told: &'r [String],
) -> Ended<'r> {
    let (gate, show_waived) = (gate(arguments.fail_on), arguments.show_waived);
    Ended { report, below, gate, exit_code: exit.code(), told, show_waived }
}

fn rendered(ended: &Ended, format: Format, look: Look) -> String {
    match format {
        Format::Text => reports::text(&ended.report, look),
        Format::Brief => reports::brief(&ended.report, look),
        Format::Json => reports::json(&ended.report),
        Format::Sarif => reports::sarif(ended),
        Format::Junit => reports::junit(ended),
        Format::Markdown => reports::markdown(ended),
        Format::Github => reports::github(ended),
    }
}

/// Returns where the book is and what comes from standard input instead. `-` may stand in the
/// place of the folder, for then it can't be one.
fn texts(arguments: &Lint) -> Result<(Option<&Path>, Option<TextGiven>), Done> {
    let dash = |path: &Option<std::path::PathBuf>| path.as_deref() == Some(Path::new("-"));
    let (folder, dashed) = match (dash(&arguments.book), dash(&arguments.dash), &arguments.dash) {
        (true, false, folder) => (folder.as_deref(), true),
        (false, true, _) => (arguments.book.as_deref(), true),
        (false, false, None) => (arguments.book.as_deref(), false),
        _ => return Err(wrong("One BOOK may be given, and one - beside it.")),
    };
    match (&arguments.name, dashed) {
        (Some(path), true) => Ok((folder, Some(TextGiven::from_standard_input(path)?))),
        (None, false) => Ok((folder, None)),
        (Some(_), false) => {
            Err(wrong("--name needs a - at the end: the text from standard input."))
        }
        (None, true) => Err(wrong("- needs --name PATH: the file that the text stands for.")),
    }
}

fn wrong(told: &str) -> Done {
    let told = vec![told.to_owned(), "For more: tholebook lint --help".to_owned()];
    Done::refused(Exit::Usage, told)
}

/// Returns the day that the clock shows.
pub(super) fn today() -> Date {
    Date::from_civil(jiff::ZonedDateTime::now().date())
}

/// Leaves only what has one of the names, or is below it. A name that nothing has is refused;
/// one that only its beginning is known of is told.
fn narrow(came: &mut CheckedBook, only: &[String]) -> Result<Vec<String>, Done> {
    if only.is_empty() {
        return Ok(Vec::new());
    }
    let CheckedBook { open, checked, earlier, .. } = came;
    let told = names_known(open, checked, earlier.as_ref(), only)?;
    let asked = |name: &Name| only.iter().any(|whole| name.is_within(whole));
    checked.findings.retain(|finding| asked(&finding.name));
    checked.not_checked.retain(|missing| asked(&missing.name));
    if let Some(earlier) = earlier {
        earlier.cured.retain(|finding| asked(&finding.name));
        earlier.gone.retain(asked);
    }
    Ok(told)
}

/// Names of what was there earlier are known too: what is gone can be asked for.
fn names_known(
    open: &OpenBook,
    checked: &Checked,
    earlier: Option<&Compared>,
    only: &[String],
) -> Result<Vec<String>, Done> {
    let mut ids = ids(&open.book);
    ids.extend(earlier.into_iter().flat_map(|earlier| self::ids(&earlier.state.book)));
    let records = ids.iter().map(|id| Name::record(id));
    let written = open.book.written().map(|own| own.name.clone());
    let cured = earlier.into_iter().flat_map(|earlier| &earlier.cured);
    let found = checked.findings.iter().chain(cured).map(|finding| finding.name.clone());
    let known: Vec<Name> = records.chain(written).chain(found).collect();
    let has = |whole: &str| known.iter().any(|name| name.is_within(whole));
    let mut told = Vec::new();
    for whole in only.iter().filter(|whole| !has(whole)) {
        if let Some(unread) = open.book.unread.first() {
            let told_of = reports::shown::line(&format!(
                "Nothing was found under {whole}. It may stand in {unread}, which can't be read here."
            ));
            told.push(told_of);
            continue;
        }
        let beginning: Vec<&str> = whole.split('/').take(2).collect();
        if beginning.len() < 2 || !has(&beginning.join("/")) {
            let see = "Names are those of the findings, such as kittiwake/seat-2.";
            let refused = book::unknown("record or value", whole, &ids, see);
            return Err(Done::refused(Exit::Usage, refused));
        }
        let whole = reports::shown::line(whole);
        told.push(format!("Nothing is written under {whole}, and nothing was found there."));
    }
    Ok(told)
}

fn ids(book: &Book) -> Vec<&str> {
    let boats = book.boats.iter().map(|boat| &boat.id);
    let oar_sets = book.oar_sets.iter().map(|set| &set.id);
    let crews = book.crews.iter().map(|crew| &crew.id);
    boats.chain(oar_sets).chain(crews).map(|id| &*id.value).collect()
}

/// Returns the least level that counts.
pub(super) fn gate(fail_on: FailOn) -> Level {
    match fail_on {
        FailOn::Danger | FailOn::Never => Level::Danger,
        FailOn::Fault => Level::Fault,
        FailOn::Unsure => Level::Unsure,
        FailOn::Note => Level::Note,
    }
}

/// Returns how a check ended.
pub(super) fn exit(came: &CheckedBook, gate: Level, may_be_empty: bool) -> Exit {
    let CheckedBook { open, checked, .. } = came;
    if open.is_empty() && !may_be_empty {
        Exit::NotChecked
    } else if came.settings_are_bad {
        Exit::Usage
    } else if checked.worst().is_some_and(|worst| worst >= gate) {
        Exit::Findings
    } else {
        Exit::Clear
    }
}

fn not_merged(conflicts: &[String]) -> String {
    let files: Vec<String> = conflicts.iter().map(|path| reports::shown::line(path)).collect();
    format!(
        "Not checked: {}. Both sides changed the same lines there; merge by hand, then check the \
         result. Until then, what is told of records that name these can be wrong.",
        files.join(", ")
    )
}

/// Returns the reason of an exit code that the report alone does not explain.
fn reason(exit: Exit) -> Option<String> {
    let reason = match exit {
        Exit::NotChecked => {
            "Nothing to check: this book has no boat, no oar set and no crew. If that is meant: \
             --allow-empty"
        }
        Exit::Usage => {
            "club.yaml can't be used as it stands: what could not be read of it was judged by the \
             class instead. Mend it first."
        }
        _ => return None,
    };
    Some(reason.to_owned())
}
