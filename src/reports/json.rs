//! The report of a check as JSON: a contract, key by key.

use serde::Serialize;

use super::Earlier;
use super::Report;
use super::place::Places;
use super::place::Position;
use super::shown;
use crate::rules::Figure;
use crate::rules::Finding;
use crate::rules::Granted;
use crate::rules::Level;
use crate::rules::LimitShown;
use crate::rules::NotChecked;

/// The number of this form of the report.
pub(super) const FORMAT_VERSION: u32 = 1;

#[derive(Serialize)]
struct Root<'r> {
    format_version: u32,
    tool: Tool,
    book: &'r str,
    as_of: String,
    checked: CheckedJson,
    findings: Vec<FindingJson<'r>>,
    not_checked: Vec<NotCheckedJson<'r>>,
    summary: Summary,
}

#[derive(Serialize)]
struct Tool {
    name: &'static str,
    version: &'static str,
}

#[derive(Serialize)]
struct CheckedJson {
    boats: usize,
    oar_sets: usize,
    crews: usize,
    readings: usize,
}

#[derive(Serialize)]
pub(super) struct FindingJson<'r> {
    rule: &'static str,
    level: &'static str,
    state: Option<&'static str>,
    name: &'r str,
    message: &'r str,
    remedy: &'r str,
    value: Option<Value>,
    limit: Option<LimitJson<'r>>,
    spans: Vec<SpanJson<'r>>,
    waived: Option<WaivedJson<'r>>,
}

#[derive(Serialize)]
struct WaivedJson<'r> {
    by: &'r str,
    because: &'r str,
    until: String,
    at: Option<f64>,
}

#[derive(Serialize)]
struct Value {
    number: f64,
    uncertainty: Option<f64>,
    unit: &'static str,
}

#[derive(Serialize)]
struct LimitJson<'r> {
    #[serde(skip_serializing_if = "Option::is_none")]
    least: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    most: Option<f64>,
    unit: &'static str,
    from: &'r str,
    source: &'r str,
}

#[derive(Serialize)]
struct SpanJson<'r> {
    path: &'r str,
    start: PositionJson,
    end: PositionJson,
    label: &'r str,
}

#[derive(Serialize)]
struct PositionJson {
    line: usize,
    column: usize,
    byte: usize,
}

#[derive(Serialize)]
pub(super) struct NotCheckedJson<'r> {
    rule: &'static str,
    name: &'r str,
    missing: &'r [String],
}

#[derive(Serialize)]
struct Summary {
    danger: usize,
    fault: usize,
    unsure: usize,
    note: usize,
}

/// Returns the report of a check as JSON, on one line.
#[must_use]
pub fn json(report: &Report) -> String {
    let (book, checked) = (report.book, report.checked);
    let places = Places::new(book);
    let earlier = report.earlier.map(|earlier| (Places::new(earlier.book), earlier));
    shown::json(&Root {
        format_version: FORMAT_VERSION,
        tool: Tool { name: env!("CARGO_PKG_NAME"), version: env!("CARGO_PKG_VERSION") },
        book: &book.name,
        as_of: report.as_of.to_string(),
        checked: CheckedJson {
            boats: book.boats.len(),
            oar_sets: book.oar_sets.len(),
            crews: book.crews.len(),
            readings: book.readings,
        },
        findings: findings(report, &places, earlier.as_ref()),
        not_checked: checked.not_checked.iter().map(not_checked).collect(),
        summary: Summary {
            danger: checked.count(Level::Danger),
            fault: checked.count(Level::Fault),
            unsure: checked.count(Level::Unsure),
            note: checked.count(Level::Note),
        },
    })
}

/// Returns every finding, then what was cured; a cured one stands where it stood.
fn findings<'r>(
    report: &Report<'r>,
    places: &Places<'r>,
    earlier: Option<&(Places<'r>, Earlier<'r>)>,
) -> Vec<FindingJson<'r>> {
    let state = |found: &Finding| found.standing.map(|standing| standing.word());
    let found = report.checked.findings.iter().map(|found| finding(places, found, state(found)));
    let cured = earlier.into_iter().flat_map(|(places, earlier)| {
        earlier.cured.iter().map(move |found| finding(places, found, Some("cured")))
    });
    found.chain(cured).collect()
}

/// Returns one finding; `state` is how it stands to an earlier check.
pub(super) fn finding<'r>(
    places: &Places<'r>,
    finding: &'r Finding,
    state: Option<&'static str>,
) -> FindingJson<'r> {
    FindingJson {
        rule: finding.rule.id,
        level: finding.level.word(),
        state,
        name: finding.name.as_str(),
        message: &finding.message,
        remedy: &finding.remedy,
        value: finding.value.map(|Figure { number, uncertainty, unit }| Value {
            number,
            uncertainty,
            unit,
        }),
        limit: finding.limit.as_ref().map(limit),
        spans: spans(places, finding),
        waived: finding.waived.as_ref().map(waived),
    }
}

fn waived(granted: &Granted) -> WaivedJson<'_> {
    let Granted { by, because, until, at } = granted;
    WaivedJson { by, because, until: until.to_string(), at: *at }
}

fn limit(limit: &LimitShown) -> LimitJson<'_> {
    LimitJson {
        least: limit.least,
        most: limit.most,
        unit: limit.unit,
        from: &limit.from,
        source: &limit.source,
    }
}

/// The program's own class has no path in the book: what stands there is left out.
fn spans<'r>(places: &Places<'r>, finding: &'r Finding) -> Vec<SpanJson<'r>> {
    let in_book = finding.labels.iter().filter(|label| !places.file(label.place).built_in);
    in_book
        .map(|label| SpanJson {
            path: &places.file(label.place).path,
            start: position(places.start(label.place)),
            end: position(places.end(label.place)),
            label: &label.text,
        })
        .collect()
}

fn position(Position { line, column, byte }: Position) -> PositionJson {
    PositionJson { line, column, byte }
}

pub(super) fn not_checked(missing: &NotChecked) -> NotCheckedJson<'_> {
    NotCheckedJson { rule: missing.rule, name: missing.name.as_str(), missing: &missing.missing }
}
