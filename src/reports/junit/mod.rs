//! The report of a check as `JUnit` XML, the form in which build servers take the results of tests.
//! The form has no standard; elements and attributes are those that the schema of Jenkins' readers
//! takes (`junit-10.xsd`). How long each took, when and where, is not known and not told.
//!
//! What counts for the exit code fails. What could not be looked at, is undecided, waived, known
//! since before or on a boat out of use is skipped, with the reason. The rest passes.

mod cases;
mod xml;

use self::cases::Case;
use self::cases::Kind;
use self::cases::Suite;
use self::xml::Xml;
use super::aside::aside;
use super::ended::Ended;
use super::ended::at_most;
use super::ended::spot;
use super::place::Places;
use super::shown;
use crate::rules::Finding;
use crate::rules::Level;
use crate::rules::RULES;

/// So many characters of one text are told.
const LONGEST: usize = 2_000;

/// What a case came to.
struct Told {
    rule: &'static str,
    came_to: CameTo,
    /// In a few words.
    message: String,
    /// In full.
    text: String,
}

#[derive(Clone, Copy, Debug, Eq, PartialEq)]
enum CameTo {
    Passed,
    Skipped,
    Failed,
    Error,
}

/// Returns the report of a check as `JUnit` XML.
#[must_use]
pub fn junit(ended: &Ended) -> String {
    let places = Places::new(ended.report.book);
    let suites = cases::suites(ended);
    let told: Vec<(&Suite, Vec<Told>)> =
        suites.iter().map(|suite| (suite, told_of(ended, &places, suite))).collect();
    let mut xml = Xml::new();
    let name = format!("tholebook lint, as of {}", ended.report.as_of);
    let all = told.iter().flat_map(|(_, cases)| cases);
    begin(&mut xml, "testsuites", &name, None, all.chain(&could_be_checked(ended)));
    for (suite, cases) in &told {
        write(&mut xml, ended, suite, cases);
    }
    let checked = could_be_checked(ended);
    begin(&mut xml, "testsuite", "the check itself", None, checked.iter());
    for case in &checked {
        write_case(&mut xml, "tholebook.check", "the check itself", case);
    }
    xml.finish()
}

/// Begins all suites, or one of them: only of one is it known how many cases it skips.
fn begin<'c>(
    xml: &mut Xml,
    tag: &'static str,
    name: &str,
    file: Option<&str>,
    cases: impl Iterator<Item = &'c Told> + Clone,
) {
    let count = |came_to| cases.clone().filter(|case| case.came_to == came_to).count().to_string();
    let tests = cases.clone().count().to_string();
    let (failed, errors) = (count(CameTo::Failed), count(CameTo::Error));
    let skipped = count(CameTo::Skipped);
    let mut attributes =
        vec![("name", name), ("tests", &*tests), ("failures", &*failed), ("errors", &*errors)];
    if tag == "testsuite" {
        attributes.push(("skipped", &skipped));
    }
    attributes.extend(file.map(|file| ("file", file)));
    xml.begin(tag, &attributes);
}

/// What hinders the check as a whole is told as a case of its own.
fn could_be_checked(ended: &Ended) -> [Told; 1] {
    let came_to = if ended.was_checked() { CameTo::Passed } else { CameTo::Error };
    let message = ended.told.first().cloned().unwrap_or_default();
    [Told { rule: "could be made", came_to, message, text: ended.told.join("\n") }]
}

fn write(xml: &mut Xml, ended: &Ended, suite: &Suite, cases: &[Told]) {
    let path = suite.file.map(|file| ended.path_of(ended.report.book, file));
    let name = match (suite.kind, &path) {
        (Kind::Book, _) => "the book itself".to_owned(),
        (kind, Some(path)) if suite.twice => format!("{} {} in {path}", kind.word(), suite.id),
        (kind, _) => format!("{} {}", kind.word(), suite.id),
    };
    begin(xml, "testsuite", &name, path.as_deref(), cases.iter());
    let class = match suite.kind {
        Kind::Book => "tholebook.book".to_owned(),
        kind => format!("tholebook.{}.{}", kind.word().replace(' ', "-"), suite.id),
    };
    for case in cases {
        write_case(xml, &class, &name, case);
    }
    xml.end();
}

fn write_case(xml: &mut Xml, class: &str, suite: &str, case: &Told) {
    let name = format!("{suite}: {}", case.rule);
    let attributes = [("name", &*name), ("classname", class)];
    if case.came_to == CameTo::Passed && case.text.is_empty() {
        xml.leaf("testcase", &attributes, "");
        return;
    }
    xml.begin("testcase", &attributes);
    let message = [("message", &*case.message)];
    let typed = [message[0], ("type", case.rule)];
    match case.came_to {
        CameTo::Passed => xml.leaf("system-out", &[], &case.text),
        CameTo::Skipped => xml.leaf("skipped", &message, &case.text),
        CameTo::Failed => xml.leaf("failure", &typed, &case.text),
        CameTo::Error => xml.leaf("error", &typed, &case.text),
    }
    xml.end();
}

fn told_of(ended: &Ended, places: &Places, suite: &Suite) -> Vec<Told> {
    let unseen = suite.unseen(ended);
    let known = suite.cases.iter().filter_map(|(number, case)| Some((RULES.get(*number)?, case)));
    known.map(|(rule, case)| told(ended, places, rule.id, case, unseen.as_deref())).collect()
}

fn told(
    ended: &Ended,
    places: &Places,
    rule: &'static str,
    case: &Case,
    unseen: Option<&str>,
) -> Told {
    let came_to = came_to(ended, rule, case, unseen.is_some());
    let mut lines: Vec<String> = Vec::new();
    let mut findings = case.findings.clone();
    findings.sort_by_key(|finding| !ended.gates(finding));
    lines.extend(findings.iter().map(|finding| line(ended, places, finding)));
    lines.extend(case.not_checked.iter().map(|missing| {
        let told =
            format!("{}: not checked; missing: {}", missing.name, missing.missing.join(", "));
        shown::line(&told)
    }));
    lines.extend(unseen.filter(|_| lines.is_empty()).map(str::to_owned));
    let message = match (findings.first(), lines.len()) {
        (Some(finding), 1) => short(finding),
        (Some(finding), count) => format!("{} (and {} more)", short(finding), count - 1),
        (None, 0) => String::new(),
        (None, 1) => lines[0].clone(),
        (None, count) => format!("{} (and {} more)", lines[0], count - 1),
    };
    Told { rule, came_to, message, text: lines.join("\n") }
}

fn came_to(ended: &Ended, rule: &str, case: &Case, unseen: bool) -> CameTo {
    let gates = |finding: &&Finding| ended.gates(finding);
    let undecided = |finding: &&Finding| finding.level > Level::Note || finding.waived.is_some();
    let findings = || case.findings.iter().copied();
    if findings().any(|finding| gates(&finding)) {
        // Bytes that are no record are no failed check: nobody could look at them.
        if matches!(rule, "unreadable" | "too-large") { CameTo::Error } else { CameTo::Failed }
    } else if findings().any(|finding| undecided(&finding))
        || !case.not_checked.is_empty()
        || unseen
    {
        CameTo::Skipped
    } else {
        CameTo::Passed
    }
}

fn short(finding: &Finding) -> String {
    let level = finding.level.word();
    format!("{level}{}: {}", aside(finding), at_most(&finding.message, LONGEST))
}

fn line(ended: &Ended, places: &Places, finding: &Finding) -> String {
    let spot = spot(ended.report.book, places, finding);
    let path = ended.path_of(ended.report.book, spot.file);
    let place = format!("{path}:{}:{}", spot.start.line, spot.start.column);
    let because = finding.waived.as_ref();
    let because =
        because.map_or(String::new(), |granted| format!(" Because: {}.", granted.because));
    let (name, short) = (&finding.name, short(finding));
    let line = format!("{place}: {name}: {short}.{because} {}", finding.remedy);
    shown::line(&line)
}
