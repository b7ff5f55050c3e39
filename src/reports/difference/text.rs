//! The difference as text for a terminal.

use std::fmt::Write as _;

use super::super::look::Look;
use super::super::shown;
use super::Difference;
use super::called;
use super::folding;
use super::spoken;
use crate::history::Change;
use crate::history::ChangeKind;
use crate::history::State;
use crate::model::Name;
use crate::rules::Finding;
use crate::rules::Level;
use crate::rules::Standing;

/// Returns the difference as text.
#[must_use]
pub fn diff_text(difference: &Difference, look: Look) -> String {
    let (from, to) = (shown::line(difference.from), shown::line(difference.to));
    if difference.is_empty() {
        let what =
            if difference.only.is_empty() { "Nothing changed" } else { "Nothing of that changed" };
        let line = format!("{what} in the rig from {from} to {to}.");
        return format!("{}\n", look.wrapped(&line, ""));
    }
    let mut out = format!("{}\n", look.wrapped(&format!("From {from} to {to}."), ""));
    let told = |change: &&Change| !is_folded(change);
    let told: Vec<&Change> = difference.changes().filter(told).collect();
    section(&mut out, look, "Changed", folding::changed(&told).into_iter());
    let followed = folding::followed(&difference.consequences());
    section(&mut out, look, "What follows from it", followed.into_iter());
    findings(&mut out, look, "New findings", difference.standing(Standing::New));
    findings(&mut out, look, "Findings that are worse", difference.standing(Standing::Worse));
    findings(&mut out, look, "Cured", difference.cured());
    section(&mut out, look, "Measured again, the same", again(difference).into_iter());
    let writing = difference.changes().filter(|own| is_writing(own)).map(of_change);
    section(&mut out, look, "Written otherwise, the same", writing);
    out
}

/// Whether a change is told below the true ones.
fn is_folded(change: &Change) -> bool {
    change.kind == ChangeKind::ReMeasured || is_writing(change)
}

fn is_writing(change: &Change) -> bool {
    matches!(change.kind, ChangeKind::UnitOnly | ChangeKind::PrecisionOnly)
}

fn section(out: &mut String, look: Look, heading: &str, lines: impl Iterator<Item = String>) {
    let mut lines = lines.peekable();
    if lines.peek().is_none() {
        return;
    }
    let _ = writeln!(out, "\n{}", look.heading().style(heading));
    for line in lines {
        let _ = writeln!(out, "{}", look.hanging(&shown::line(&line), "  ", "    "));
    }
}

/// Returns a change with its name before it.
pub(in crate::reports) fn of_change(change: &Change) -> String {
    let whole = called::whole(change.whole.as_str());
    let happened = spoken::what_happened(change);
    let field = called::field(change);
    if !field.is_empty() {
        return format!("{whole}: {field} {happened}");
    }
    let (old, new) = (change.old.as_ref(), change.new.as_ref());
    let text = |state: Option<&State>| state.map_or("", |state| &state.text).to_owned();
    match change.kind {
        ChangeKind::Added => format!("{whole}: new ({})", text(new)),
        ChangeKind::Removed => format!("{whole}: taken out ({})", text(old)),
        _ => format!("{whole}: {happened}"),
    }
}

/// So many seats of a boat are told one by one; where there are more, they are counted.
const A_FEW: usize = 4;

/// Returns a line for each seat or record of which something was measured again; of a whole boat,
/// one line.
pub(super) fn again(difference: &Difference) -> Vec<String> {
    let wholes = difference.measured_again();
    let record = |own: &Name| own.as_str().split('/').next().map(Name::record);
    let of = |own: &Name| wholes.iter().filter(|other| record(other) == record(own)).count();
    let mut told: Vec<Name> = Vec::new();
    for whole in &wholes {
        let own = match record(whole) {
            Some(record) if of(whole) > A_FEW => record,
            _ => (*whole).clone(),
        };
        if !told.contains(&own) {
            told.push(own);
        }
    }
    told.iter().map(|own| again_in(difference, own, of(own) > A_FEW)).collect()
}

fn again_in(difference: &Difference, whole: &Name, is_record: bool) -> String {
    let is_in = |own: &Name| own == whole || (is_record && own.is_within(whole.as_str()));
    let of_whole = |own: &&Change| own.kind == ChangeKind::ReMeasured && is_in(&own.whole);
    let all: Vec<&Change> = difference.changes().filter(of_whole).collect();
    let count = all.len();
    let values = if count == 1 { "value" } else { "values" };
    let days = all.iter().rev().find_map(|own| days(own)).unwrap_or_default();
    let whole = called::whole(whole.as_str());
    if is_record {
        return format!("{whole}: {count} {values}{days}");
    }
    let named: Vec<String> = all.iter().take(6).map(|own| called::field(own)).collect();
    let more = if count > named.len() { ", …" } else { "" };
    format!("{whole}: {count} {values}{days}: {}{more}", named.join(", "))
}

fn days(change: &Change) -> Option<String> {
    let last = |state: &Option<State>| state.as_ref()?.measured.clone();
    let (old, new) = (last(&change.old)?, last(&change.new)?);
    let by = new.by.map_or(String::new(), |by| format!(" by {by}"));
    Some(format!(", on {}{by}, last on {}", new.on, old.on))
}

fn findings<'r>(
    out: &mut String,
    look: Look,
    heading: &str,
    findings: impl Iterator<Item = &'r Finding>,
) {
    let mut findings = findings.peekable();
    if findings.peek().is_none() {
        return;
    }
    let _ = writeln!(out, "\n{}", look.heading().style(heading));
    for finding in findings {
        let words = look.hanging(&shown::line(&spoken::found(finding)), "  ", "    ");
        let _ = writeln!(out, "{}", coloured(&words, finding.level, look));
    }
}

/// Returns a finding with its level in colour.
fn coloured(words: &str, level: Level, look: Look) -> String {
    let word = level.word();
    words.replacen(word, &look.of_level(level).style(word).to_string(), 1)
}
