//! The whole text report of a check: drawings, then what was checked.

use std::collections::HashMap;

use super::Report;
use super::brief::brief_line;
use super::brief::cured;
use super::cautions::NO_PERMISSION;
use super::folding::Folded;
use super::folding::folded;
use super::look::Look;
use super::place::Places;
use super::shown;
use super::summary::last_lines;
use super::text::drawing;
use crate::model::FileId;

/// So many findings of one file are drawn; the rest are told on one line each.
const DRAWN: usize = 100;

/// So many names of folded notes are told.
const NAMED: usize = 3;

/// Returns the report of a check as text: each finding drawn, the last line, and the caution.
#[must_use]
pub fn text(report: &Report, look: Look) -> String {
    let places = Places::new(report.book);
    let mut out = String::new();
    let mut drawn: HashMap<FileId, usize> = HashMap::new();
    let mut drawing_before = false;
    for Folded { finding, alike } in folded(&report.checked.findings) {
        let count = drawn.entry(finding.labels[0].place.file).or_default();
        *count += 1;
        let draw = *count <= DRAWN;
        if draw || drawing_before {
            out.push_str(if out.is_empty() { "" } else { "\n" });
        }
        drawing_before = draw;
        if draw {
            let more = more(&Folded { finding, alike });
            out.push_str(&drawing(&places, finding, &more, look));
        } else {
            out.push_str(&look.words(&brief_line(&places, finding)));
            out.push('\n');
            out.extend(more(&Folded { finding, alike }).iter().map(|line| format!("  {line}\n")));
        }
    }
    if !out.is_empty() {
        out.push('\n');
    }
    let cured = cured(report, look);
    for line in cured.lines() {
        out.push_str(&look.wrapped(line, "  "));
        out.push('\n');
    }
    out.push_str(if cured.is_empty() { "" } else { "\n" });
    out.push_str(&last_lines(report, look));
    if report.book.readings > 0 {
        out.push_str(&look.wrapped(NO_PERMISSION, ""));
        out.push('\n');
    }
    out
}

/// Returns how many notes were folded into one, and some of their names.
fn more(folded: &Folded) -> Vec<String> {
    let count = folded.alike.len();
    if count == 0 {
        return Vec::new();
    }
    let named = folded.alike.iter().take(NAMED);
    let names: Vec<String> = named.map(|finding| shown::line(finding.name.as_str())).collect();
    let rest = if count > NAMED { ", ..." } else { "" };
    let names = names.join(", ");
    vec![format!("and {count} more like it: {names}{rest}; all of them: --format json")]
}
