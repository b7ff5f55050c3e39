//! One line a finding, for editors and search.

use super::Report;
use super::aside::aside;
use super::look::Look;
use super::place::Places;
use super::shown;
use super::summary::last_line;
use crate::rules::Finding;

/// Returns the report of a check with one line a finding, and the last line.
#[must_use]
pub fn brief(report: &Report, look: Look) -> String {
    let places = Places::new(report.book);
    let line = |finding| format!("{}\n", look.words(&brief_line(&places, finding)));
    let mut out: String = report.checked.findings.iter().map(line).collect();
    out.push_str(&cured(report, look));
    out.push_str(&last_line(report, look));
    out
}

/// Returns a line for each finding that is gone since the earlier check.
pub(super) fn cured(report: &Report, look: Look) -> String {
    let Some(earlier) = report.earlier else { return String::new() };
    let line = |finding: &Finding| {
        let name = shown::line(finding.name.as_str());
        let message = shown::line(&finding.message);
        let (level, rule) = (finding.level.word(), finding.rule.id);
        look.words(&format!("cured: {level} {rule} {name}: it was: {message}\n"))
    };
    earlier.cured.iter().map(line).collect()
}

/// Returns a finding as one line: place, level, rule, name, message.
pub(super) fn brief_line(places: &Places, finding: &Finding) -> String {
    let place = places.shown(finding.labels[0].place);
    let name = shown::line(finding.name.as_str());
    let message = shown::line(&finding.message);
    let aside = aside(finding);
    let (level, rule) = (finding.level.word(), finding.rule.id);
    format!("{place}: {level} {rule} {name}: {message}{aside}")
}
