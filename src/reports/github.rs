//! The report of a check as workflow commands of GitHub Actions: the worst findings stand beside the
//! changed lines of a merge request.
//!
//! Source of the form and of the escapes: the documentation of workflow commands and of the toolkit
//! `@actions/core` (from memory).

use std::cmp::Reverse;

use super::aside::aside;
use super::ended::Ended;
use super::ended::at_most;
use super::ended::spot;
use super::look::Glyphs;
use super::look::Look;
use super::place::Places;
use super::shown;
use super::summary::counted;
use super::summary::last_line;
use crate::rules::Finding;
use crate::rules::Level;

/// So many are told one by one; the forge shows ten of a kind and drops the rest without a word.
const TOLD: usize = 10;

/// So long may a message be, in characters.
const LONGEST: usize = 2000;

const PLAIN: Look = Look { width: 80, glyphs: Glyphs::Unicode, colour: false };

/// Returns the report of a check as workflow commands, then the last line.
#[must_use]
pub fn github(ended: &Ended) -> String {
    let places = Places::new(ended.report.book);
    let mut findings: Vec<&Finding> = ended.findings().collect();
    findings.sort_by_key(|finding| (!ended.gates(finding), Reverse(finding.level)));
    let mut out = String::new();
    let mut room = TOLD;
    if !ended.was_checked() {
        let why = shown::lines(&at_most(&ended.told.join("\n"), LONGEST));
        out.push_str(&command("error", &[("title", "not checked")], &why));
        room -= 1;
    }
    let (told, rest) = findings.split_at(findings.len().min(room));
    out.extend(told.iter().map(|finding| annotation(ended, &places, finding)));
    out.extend(more(rest));
    if ended.was_had() {
        out.push_str(&last_line(&ended.report, PLAIN));
    }
    out
}

/// On a boat out of use nothing stops anything, and a waived finding neither.
fn kind(finding: &Finding) -> &'static str {
    match finding.level {
        _ if finding.shown_only || finding.waived.is_some() => "notice",
        Level::Danger | Level::Fault => "error",
        Level::Unsure => "warning",
        Level::Note => "notice",
    }
}

fn annotation(ended: &Ended, places: &Places, finding: &Finding) -> String {
    let spot = spot(ended.report.book, places, finding);
    let path = ended.path_of(ended.report.book, spot.file);
    let line = spot.start.line.to_string();
    let column = spot.start.column.to_string();
    let end = spot.end.line.to_string();
    let title = format!("{} {} {}", finding.level.word(), finding.rule.id, finding.name);
    let mut properties = vec![("file", &*path), ("line", &line)];
    // Columns are taken only where nothing goes beyond the line.
    if spot.start.line == spot.end.line {
        properties.push(("col", &column));
    }
    properties.extend([("endLine", &*end), ("title", &*title)]);
    let message = shown::line(&at_most(&finding.message, LONGEST));
    let words = format!("{message}{}.\n{}", aside(finding), shown::line(&finding.remedy));
    command(kind(finding), &properties, &words)
}

/// Tells how many more there are, as the worst of them is told.
fn more(rest: &[&Finding]) -> Option<String> {
    let first = rest.first()?;
    let each = Level::ALL.into_iter().filter_map(|level| {
        let count = rest.iter().filter(|finding| finding.level == level).count();
        (count > 0).then(|| match level {
            Level::Unsure => format!("{count} unsure"),
            _ => counted(count, level.word()),
        })
    });
    let each: Vec<String> = each.collect();
    let words = format!(
        "and {} more: {}; all of them: tholebook lint --format brief",
        rest.len(),
        each.join(", ")
    );
    Some(command(kind(first), &[("title", "more findings")], &words))
}

/// Returns a command on a line of its own; `words` are ready to be shown.
fn command(kind: &str, properties: &[(&str, &str)], words: &str) -> String {
    let property = |(key, value): &(&str, &str)| {
        let value = shown::line(value);
        format!("{key}={}", data(&value).replace(':', "%3A").replace(',', "%2C"))
    };
    let properties: Vec<String> = properties.iter().map(property).collect();
    format!("::{kind} {}::{}\n", properties.join(","), data(words))
}

fn data(words: &str) -> String {
    words.replace('%', "%25").replace('\r', "%0D").replace('\n', "%0A")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_ends_a_command_or_a_property_is_escaped_and_undone_by_the_runner() {
        assert_eq!(
            command("error", &[("file", "a,b:c%.yaml"), ("title", "x\ny")], "10 % of it,\nso: x"),
            "::error file=a%2Cb%3Ac%25.yaml,title=x\\u{a}y::10 %25 of it,%0Aso: x\n"
        );
    }
}
