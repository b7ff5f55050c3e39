//! `waive`: writes a waiver, if it would count.

use std::path::Path;

use super::arguments::Waive;
use super::checking;
use super::checking::CheckedBook;
use super::checking::Yardstick;
use super::exit::Exit;
use super::lint::today;
use super::output::Done;
use super::saving;
use super::standard_input::TextGiven;
use super::subject;
use crate::model::SourceFile;
use crate::reading::nearest;
use crate::reports::shown;
use crate::rules;
use crate::rules::Finding;
use crate::rules::Level;
use crate::store::WAIVERS_FILE;
use crate::units::Date;
use crate::writing::granting::Grant;
use crate::writing::granting::granted;

/// Runs the command.
pub(super) fn run(arguments: &Waive) -> Done {
    waived(arguments).unwrap_or_else(|refused| refused)
}

fn waived(arguments: &Waive) -> Result<Done, Done> {
    let as_of = arguments.as_of.unwrap_or_else(today);
    if arguments.because.trim().is_empty() || arguments.by.trim().is_empty() {
        return Err(refused(vec!["A waiver says why, and who granted it.".to_owned()]));
    }
    let came = check(arguments, as_of, None)?;
    let finding = found(&came, arguments, as_of)?;
    if finding.level == Level::Danger {
        return Err(refused(vec![
            format!(
                "{} at {} is a danger, and a danger can't be waived.",
                finding.rule.id, finding.name
            ),
            "Put the boat right, or take her out of use.".to_owned(),
        ]));
    }
    let at = finding.granted_at();
    let until = arguments.until.to_string();
    let grant = Grant {
        finding: &arguments.name,
        rule: &arguments.rule,
        because: arguments.because.trim(),
        by: arguments.by.trim(),
        until: &until,
        at: at.as_deref(),
    };
    let file = came.open.book.files.iter().find(|file| file.path == WAIVERS_FILE);
    let text = granted(file.map(|file| file.text.as_str()), &grant).map_err(|why| {
        let told = format!("{WAIVERS_FILE} is as it was: {why}; {}", why.help());
        Done::refused(Exit::NotChecked, vec![shown::line(&told)])
    })?;
    must_count(arguments, as_of, &came, &text)?;
    write(&came, file, &text)?;
    Ok(done(&came, finding, arguments, as_of))
}

/// Checks the book as `lint` does; where a text is given, with it for the waivers, else without any.
fn check(arguments: &Waive, as_of: Date, with: Option<TextGiven>) -> Result<CheckedBook, Done> {
    let waivers = with.is_some();
    let subject = subject::files(arguments.book.as_deref(), with)?;
    checking::check(subject, Yardstick { since: None, rules_from: None, waivers, as_of })
}

/// Checks a book as `lint` does, its waivers too.
///
/// # Errors
///
/// What the command comes to instead: the book can't be had.
pub(super) fn check_all(book: Option<&Path>, as_of: Date) -> Result<CheckedBook, Done> {
    let by = Yardstick { since: None, rules_from: None, waivers: true, as_of };
    checking::check(subject::files(book, None)?, by)
}

/// Returns the finding that is asked for, or says what there is instead.
fn found<'c>(came: &'c CheckedBook, asked: &Waive, as_of: Date) -> Result<&'c Finding, Done> {
    let findings = &came.checked.findings;
    let is_it = |finding: &&Finding| is_of(finding, &asked.name, &asked.rule);
    if let Some(finding) = findings.iter().find(is_it) {
        return Ok(finding);
    }
    let (name, rule) = (&asked.name, &asked.rule);
    let mut told = vec![format!("As of {as_of} there is no finding {rule} at {name}.")];
    let mut there: Vec<&str> = findings
        .iter()
        .filter(|finding| finding.name.as_str() == *name)
        .map(|finding| finding.rule.id)
        .collect();
    there.dedup();
    told.push(match there.as_slice() {
        [] => elsewhere(findings, name, rule),
        there => format!("At that name there is: {}", there.join(", ")),
    });
    Err(refused(told))
}

/// Returns where else there is such a finding, or which rule may be meant.
fn elsewhere(findings: &[Finding], name: &str, rule: &str) -> String {
    if rules::find(rule).is_none() {
        let known: Vec<&str> = rules::RULES.iter().map(|rule| rule.id).collect();
        return match nearest(rule, &known) {
            Some(known) => format!("There is no rule of that name; did you mean {known}?"),
            None => "There is no rule of that name; see tholebook rules".to_owned(),
        };
    }
    let named = findings.iter().filter(|finding| finding.rule.id == rule);
    let names: Vec<&str> = named.map(|finding| finding.name.as_str()).collect();
    match nearest(name, &names).or(names.first().copied()) {
        Some(other) => format!("There is one at {other}."),
        None => "There is none anywhere in the book; see tholebook lint".to_owned(),
    }
}

fn is_of(finding: &Finding, name: &str, rule: &str) -> bool {
    finding.name.as_str() == name && finding.rule.id == rule
}

/// Refuses a waiver that would not count: by someone who may not, for too long, already over.
fn must_count(asked: &Waive, as_of: Date, came: &CheckedBook, text: &str) -> Result<(), Done> {
    let given = TextGiven::of_text(&came.open.root.join(WAIVERS_FILE), text);
    let with = check(asked, as_of, Some(given))?;
    let findings = &with.checked.findings;
    let meant = findings.iter().find(|finding| is_of(finding, &asked.name, &asked.rule));
    if meant.is_some_and(|finding| finding.waived.is_some()) {
        return Ok(());
    }
    let about = |finding: &&Finding| {
        finding.rule.id.starts_with("waiver-") && finding.name.as_str() == asked.name
    };
    let why = findings.iter().find(about);
    Err(refused(match why {
        Some(why) => vec![why.message.clone(), why.remedy.clone()],
        None => vec![format!("{WAIVERS_FILE} can't be read as it stands; see tholebook lint")],
    }))
}

fn refused(mut told: Vec<String>) -> Done {
    told.push("Nothing is written.".to_owned());
    Done::refused(Exit::Usage, told.iter().map(|line| shown::line(line)).collect())
}

fn write(came: &CheckedBook, file: Option<&SourceFile>, text: &str) -> Result<(), Done> {
    let written = match file {
        Some(file) => saving::save(&came.open, file, text),
        None => saving::save_new(&came.open, WAIVERS_FILE, text),
    };
    written.map_err(|why| Done::refused(Exit::NotChecked, vec![why]))
}

fn done(came: &CheckedBook, finding: &Finding, asked: &Waive, as_of: Date) -> Done {
    let days = asked.until.days_after(as_of);
    let at = match (finding.granted_at(), finding.value) {
        (Some(at), Some(value)) => format!(", at {}", format!("{at} {}", value.unit).trim_end()),
        _ => String::new(),
    };
    let lines = [
        format!("{WAIVERS_FILE}: {} {} is waived{at}", finding.name, finding.rule.id),
        format!("  by {} until {}, {days} days from {as_of}", asked.by.trim(), asked.until),
    ];
    let mut done = Done::result(lines.iter().map(|line| shown::line(line) + "\n").collect());
    done.told.clone_from(&came.open.told);
    done
}
