//! The report of a check as Markdown, for the page of a job: the verdict, the worst first, what was
//! not checked. Whatever stands in a file, it makes no heading, no link and calls nobody.

use super::Report;
use super::aside::aside;
use super::cautions::COLD_BENDING;
use super::cautions::NO_PERMISSION;
use super::cautions::WHERE_THE_SUMS_STOP;
use super::cautions::bends_metal;
use super::cell::cell;
use super::ended::Ended;
use super::ended::at_most;
use super::ended::spot;
use super::look::Glyphs;
use super::look::Look;
use super::place::Places;
use super::summary::counted;
use super::summary::last_line;
use super::verdict::with_letter;
use crate::rules::Finding;
use crate::rules::NotChecked;

/// A page has room for fewer bytes than this: forges drop one of 1 MiB whole.
const PAGE: usize = 1_000_000;

/// What is kept of it for the words below the tables.
const BELOW: usize = 4_000;

/// So many characters of one text are told.
const LONGEST: usize = 1_000;

/// So many of the lines that are told besides.
const BESIDES: usize = 20;

const PLAIN: Look = Look { width: 80, glyphs: Glyphs::Unicode, colour: false };

/// Returns the report of a check as Markdown of less than a million bytes.
#[must_use]
pub fn markdown(ended: &Ended) -> String {
    let report = &ended.report;
    let mut page = Page { out: head(ended), left_out: 0 };
    let places = Places::new(report.book);
    let findings = report.checked.findings.iter();
    let head = ["Level", "Where", "Rule", "Name", "What", "What to do"];
    page.table("Findings", &head, findings.map(|finding| row(ended, &places, finding)));
    let cured = report.earlier.map(|earlier| earlier.cured).unwrap_or_default();
    page.table("Cured", &["Level", "Rule", "Name", "It was"], cured.iter().map(cured_row));
    let not_checked = report.checked.not_checked.iter();
    page.table("Not checked", &["Rule", "Name", "Missing"], not_checked.map(not_checked_row));
    page.out.push_str(&below(report, page.left_out));
    page.out
}

/// A page that is filled row by row until it is full.
struct Page {
    out: String,
    left_out: usize,
}

impl Page {
    /// Adds a table; nothing where it has no row. After the first row that has no room, no other
    /// is added: what is left out is never worse than what is told.
    fn table<const N: usize>(
        &mut self,
        heading: &str,
        head: &[&str; N],
        rows: impl Iterator<Item = [String; N]>,
    ) {
        let heading =
            format!("\n### {heading}\n\n| {} |\n|{}\n", head.join(" | "), " --- |".repeat(N));
        let mut heading = Some(heading);
        for row in rows {
            if self.left_out > 0 {
                self.left_out += 1;
                continue;
            }
            let cells: Vec<String> = row.iter().map(|text| cell(&at_most(text, LONGEST))).collect();
            let row = format!("| {} |\n", cells.join(" | "));
            let needed = row.len() + heading.as_ref().map_or(0, String::len);
            if self.out.len() + needed > PAGE - BELOW {
                self.left_out += 1;
                continue;
            }
            self.out.extend(heading.take());
            self.out.push_str(&row);
        }
    }
}

fn head(ended: &Ended) -> String {
    let report = &ended.report;
    let book = cell(&at_most(&report.book.name, LONGEST));
    let called = if ended.was_had() { format!("Boat book {book}") } else { "Boat book".to_owned() };
    let mut out = format!("## {called}, as of {}\n\n**{}**\n", report.as_of, verdict(ended));
    if ended.was_had() {
        let last = last_line(report, PLAIN);
        out.push_str(&format!("\n{}.\n", cell(&at_most(&last, 4 * LONGEST))));
    }
    let told = ended.told.iter().take(BESIDES);
    let told: Vec<String> =
        told.map(|told| format!("- {}\n", cell(&at_most(told, LONGEST)))).collect();
    if !told.is_empty() {
        out.push_str(&format!("\n{}", told.concat()));
    }
    let more = ended.told.len().saturating_sub(BESIDES);
    if more > 0 {
        out.push_str(&format!("- and {more} more\n"));
    }
    out
}

fn verdict(ended: &Ended) -> String {
    let gating = ended.report.checked.findings.iter().filter(|finding| ended.gates(finding));
    let gating = gating.count();
    let counting = format!("{} at or above {}", counted(gating, "finding"), ended.gate.word());
    match (ended.was_checked(), gating) {
        (false, 0) => "Could not be checked.".to_owned(),
        (false, _) => format!("Could not be checked in full; {counting}."),
        (true, 0) => format!("Nothing found at or above {}.", ended.gate.word()),
        (true, _) => format!("Does not pass: {counting}."),
    }
}

fn row(ended: &Ended, places: &Places, finding: &Finding) -> [String; 6] {
    let spot = spot(ended.report.book, places, finding);
    let path = ended.path_of(ended.report.book, spot.file);
    [
        format!("{}{}", with_letter(finding.level), aside(finding)),
        format!("{path}:{}", spot.start.line),
        finding.rule.id.to_owned(),
        finding.name.to_string(),
        finding.message.clone(),
        finding.remedy.clone(),
    ]
}

fn cured_row(finding: &Finding) -> [String; 4] {
    let level = with_letter(finding.level);
    [level, finding.rule.id.to_owned(), finding.name.to_string(), finding.message.clone()]
}

fn not_checked_row(missing: &NotChecked) -> [String; 3] {
    [missing.rule.to_owned(), missing.name.to_string(), missing.missing.join(", ")]
}

/// Returns what was left out, and what no table tells.
fn below(report: &Report, left_out: usize) -> String {
    let mut out = String::new();
    if left_out > 0 {
        out.push_str(&format!(
            "\n**{} left out: this page has no more room. All of them: `tholebook lint --format json`**\n",
            counted(left_out, "row")
        ));
    }
    if report.book.readings == 0 {
        return out;
    }
    let bends = report.checked.findings.iter().any(|finding| bends_metal(finding.rule));
    let bends = bends.then_some(COLD_BENDING);
    for caution in [NO_PERMISSION, WHERE_THE_SUMS_STOP].into_iter().chain(bends) {
        out.push_str(&format!("\n{}\n", cell(caution)));
    }
    out
}
