//! The difference as Markdown, fit to stand under a merge request: whatever stands in a file, it
//! makes no heading, no link and calls nobody.

use crate::reports::cell::cell;
use std::fmt::Write as _;

use super::Difference;
use super::called;
use super::spoken;
use super::text::again;
use crate::history::Change;
use crate::history::ChangeKind;
use crate::history::State;
use crate::rules::Finding;
use crate::rules::Standing;

/// Returns the difference as Markdown.
#[must_use]
pub fn diff_markdown(difference: &Difference) -> String {
    let (from, to) = (cell(difference.from), cell(difference.to));
    if difference.is_empty() {
        return format!("Nothing changed in the rig from {from} to {to}.\n");
    }
    let mut out = format!("What changed in the rig from {from} to {to}.\n");
    let changes = difference.changes().filter(|own| own.kind != ChangeKind::ReMeasured);
    let head = ["Where", "What", "Before", "After", "Change"];
    table(&mut out, "Changes", &head, changes.map(row));
    consequences(&mut out, difference);
    findings(&mut out, "New findings", difference.standing(Standing::New));
    findings(&mut out, "Findings that are worse", difference.standing(Standing::Worse));
    findings(&mut out, "Cured", difference.cured());
    let again = again(difference).into_iter().map(|line| [line]);
    table(&mut out, "Measured again, the same", &["Where"], again);
    out
}

fn row(change: &Change) -> [String; 5] {
    let text = |state: &Option<State>| state.as_ref().map_or("", |state| &state.text).to_owned();
    let unit = |text: String| match change.unit {
        "" => text,
        unit if text.bytes().all(|byte| b"0123456789.+-, ".contains(&byte)) && !text.is_empty() => {
            format!("{text} {unit}")
        }
        _ => text,
    };
    let how = spoken::by_how_much(change);
    let how = how.unwrap_or_else(|| change.kind.word().to_owned());
    let field = called::field(change);
    [
        called::whole(change.whole.as_str()),
        field,
        unit(text(&change.old)),
        unit(text(&change.new)),
        how,
    ]
}

fn consequences(out: &mut String, difference: &Difference) {
    let all = difference.consequences();
    let rows = all.iter().map(|own| {
        [called::whole(own.name.as_str()), own.called.to_owned(), spoken::followed(own)]
    });
    table(out, "What follows from it", &["Where", "Worked out", "Before → after"], rows);
}

fn findings<'r>(out: &mut String, heading: &str, findings: impl Iterator<Item = &'r Finding>) {
    let rows = findings.map(|finding| {
        let waived = if finding.waived.is_some() { ", waived" } else { "" };
        [
            format!("{}{waived}", finding.level.word()),
            finding.rule.id.to_owned(),
            finding.name.to_string(),
            finding.message.clone(),
        ]
    });
    table(out, heading, &["Level", "Rule", "Name", "What"], rows);
}

fn table<const N: usize>(
    out: &mut String,
    heading: &str,
    head: &[&str; N],
    rows: impl Iterator<Item = [String; N]>,
) {
    let mut rows = rows.peekable();
    if rows.peek().is_none() {
        return;
    }
    let _ = writeln!(out, "\n### {heading}\n\n| {} |", head.join(" | "));
    let _ = writeln!(out, "|{}", " --- |".repeat(N));
    for row in rows {
        let cells: Vec<String> = row.iter().map(|text| cell(text)).collect();
        let _ = writeln!(out, "| {} |", cells.join(" | "));
    }
}
