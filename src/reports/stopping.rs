//! What a gate says: the findings that stop something, and no others, in few and short lines.

use super::Report;
use super::brief::brief_line;
use super::look::Look;
use super::place::Places;
use super::shown;
use super::summary::last_line;
use crate::rules::Finding;
use crate::rules::Level;

/// How many findings are told in full; the others are counted.
const MOST: usize = 20;

/// The most characters of one finding. It may hold a text of the book's own, of any length.
const LONGEST: usize = 300;

/// Returns the findings that stand at a level or above, and the last line.
#[must_use]
pub fn stopping(report: &Report, from: Level, look: Look) -> String {
    let places = Places::new(report.book);
    let stops = |finding: &&Finding| finding.stands() && finding.level >= from;
    let stopping: Vec<&Finding> = report.checked.findings.iter().filter(stops).collect();
    let mut out = String::new();
    for finding in stopping.iter().take(MOST) {
        let line = bounded(&brief_line(&places, finding), look);
        let remedy = bounded(&shown::line(&finding.remedy), look);
        out.push_str(&format!("{}\n", look.hanging(&line, "", "    ")));
        out.push_str(&format!("{}\n", look.wrapped(&remedy, "    ")));
    }
    let more = stopping.len().saturating_sub(MOST);
    if more > 0 {
        out.push_str(&look.wrapped(&format!("and {more} more; all of them: tholebook lint"), ""));
        out.push('\n');
    }
    let last = last_line(report, Look { colour: false, ..look });
    out.push_str(&format!("{}\n", look.hanging(last.trim_end(), "", "    ")));
    out
}

fn bounded(text: &str, look: Look) -> String {
    match text.char_indices().nth(LONGEST) {
        Some((at, _)) => format!("{}{}", &text[..at], look.cut()),
        None => text.to_owned(),
    }
}
