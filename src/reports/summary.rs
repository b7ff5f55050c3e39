//! The last line of a report: what was looked at and what came of it.

use super::Report;
use super::look::Look;
use super::look::columns;
use super::shown;
use crate::rules::Finding;
use crate::rules::Level;
use crate::rules::Standing;

/// What stands before the lines that follow the first.
const BELOW: &str = "  ";

/// Returns the last line. It is one line, however wide the terminal: for what reads line by line.
pub(super) fn last_line(report: &Report, look: Look) -> String {
    coloured(report, look.words(&plain(report)), look)
}

/// Returns the last line broken where it is too wide: after a `;` or a `:`, if that will do.
pub(super) fn last_lines(report: &Report, look: Look) -> String {
    let whole = look.words(&plain(report));
    let broken = look.broken_after(&[';', ':'], &whole, "", BELOW);
    let lines: Vec<String> = broken.lines().map(|line| narrow(line, look)).collect();
    coloured(report, lines.join("\n"), look)
}

/// Breaks a line that is too wide after a `,`, or where that is not enough at any blank.
fn narrow(line: &str, look: Look) -> String {
    let fits = |text: &str| text.lines().all(|line| columns(line) <= look.width);
    let (indent, words) = match line.strip_prefix(BELOW) {
        Some(words) => (BELOW, words),
        None => ("", line),
    };
    let narrowed = look.broken_after(&[','], words, indent, BELOW);
    if fits(&narrowed) { narrowed } else { look.hanging(words, indent, BELOW) }
}

fn coloured(report: &Report, mut line: String, look: Look) -> String {
    if look.colour {
        for (level, words) in found(report) {
            if report.checked.count(level) > 0 {
                let styled = look.of_level(level).style(&words).to_string();
                line = line.replacen(&words, &styled, 1);
            }
        }
    }
    line.push('\n');
    line
}

fn plain(report: &Report) -> String {
    let book = report.book;
    let looked_at = [
        counted(book.boats.len(), "boat"),
        counted(book.oar_sets.len(), "oar set"),
        counted(book.crews.len(), "crew"),
        counted(book.readings, "reading"),
    ];
    let found: Vec<String> = found(report).into_iter().map(|(_, words)| words).collect();
    let mut line = format!("checked {}: {}", looked_at.join(", "), found.join(", "));
    let shown_only = report.checked.findings.iter().filter(|finding| finding.shown_only).count();
    if shown_only > 0 {
        line.push_str(&format!("; {shown_only} of them on boats out of use"));
    }
    line.push_str(&waived(report));
    line.push_str(&since(report));
    let not_made = report.checked.not_checked.len();
    if not_made > 0 {
        line.push_str(&format!("; {} not made: not measured", counted(not_made, "check")));
    }
    if !report.only.is_empty() {
        let only = shown::line(&report.only.join(", "));
        line.push_str(&format!("; nothing told but of {only}"));
    }
    line
}

/// Returns what became of the findings since the earlier check, where there was one.
fn since(report: &Report) -> String {
    let Some(earlier) = report.earlier else { return String::new() };
    let count = |standing| {
        let stands = |finding: &&Finding| finding.standing == Some(standing);
        report.checked.findings.iter().filter(stands).count()
    };
    let (new, worse) = (count(Standing::New), count(Standing::Worse));
    let (known, cured) = (count(Standing::Known), earlier.cured.len());
    let called = shown::line(earlier.called);
    let gone = match earlier.gone {
        0 => String::new(),
        gone => format!(", {gone} gone with a record, not cured"),
    };
    format!("; since {called}: {new} new, {worse} worse, {known} known, {cured} cured{gone}")
}

/// Returns how many findings are waived, and when the first of the waivers lapses.
fn waived(report: &Report) -> String {
    let waived = report.checked.findings.iter().filter_map(|finding| finding.waived.as_ref());
    let untils: Vec<_> = waived.map(|granted| granted.until).collect();
    match untils.iter().min() {
        Some(next) => format!("; {} waived, the next to lapse after {next}", untils.len()),
        None => String::new(),
    }
}

fn found(report: &Report) -> Vec<(Level, String)> {
    let words = |level: Level| {
        let count = report.checked.count(level);
        match level {
            Level::Unsure => format!("{count} unsure"),
            _ => counted(count, level.word()),
        }
    };
    Level::ALL.into_iter().map(|level| (level, words(level))).collect()
}

/// Returns a number of things: "1 boat", "2 boats".
pub(super) fn counted(count: usize, thing: &str) -> String {
    let end = if count == 1 { "" } else { "s" };
    format!("{count} {thing}{end}")
}
