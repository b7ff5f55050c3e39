//! A worklist as JSON: a contract, key by key.

use serde::Serialize;
use serde_json::Map;
use serde_json::Value;

use super::json::FORMAT_VERSION;
use super::shown;
use crate::planning::worklist::Step;
use crate::planning::worklist::Worklist;
use crate::rules::Finding;

#[derive(Serialize)]
struct Root<'r> {
    format_version: u32,
    boat: &'r str,
    as_of: String,
    bends: usize,
    measure_first: Vec<FindingJson<'r>>,
    steps: Vec<StepJson<'r>>,
    conflicts: Vec<ConflictJson<'r>>,
    not_planned: Vec<NotPlannedJson<'r>>,
    waived: Vec<FindingJson<'r>>,
    still_open: Vec<FindingJson<'r>>,
    result: Map<String, Value>,
}

#[derive(Serialize)]
struct FindingJson<'r> {
    rule: &'static str,
    level: &'static str,
    name: &'r str,
    message: &'r str,
    remedy: &'r str,
}

#[derive(Serialize)]
struct StepJson<'r> {
    number: usize,
    work: &'static str,
    bends_metal: bool,
    seat: Option<u32>,
    oar: Option<&'r str>,
    #[serde(rename = "do")]
    deed: &'r str,
    because: &'r str,
    amounts: Map<String, Value>,
}

#[derive(Serialize)]
struct ConflictJson<'r> {
    name: &'r str,
    says: &'r str,
}

#[derive(Serialize)]
struct NotPlannedJson<'r> {
    name: &'r str,
    what: &'r str,
    missing: &'r str,
}

/// Returns a worklist as JSON, on one line. `result` is every text that differs after the work, by
/// path; none where it could not be written.
#[must_use]
pub fn worklist_json(list: &Worklist, result: &[(String, String)]) -> String {
    let texts = result.iter().map(|(path, text)| (path.clone(), Value::from(text.as_str())));
    let conflicts = list.conflicts.iter();
    let not_planned = list.not_planned.iter();
    shown::json(&Root {
        format_version: FORMAT_VERSION,
        boat: &list.boat,
        as_of: list.as_of.to_string(),
        bends: list.bends(),
        measure_first: findings(&list.measure),
        steps: (1..).zip(&list.steps).map(step).collect(),
        conflicts: conflicts
            .map(|own| ConflictJson { name: own.name.as_str(), says: &own.says })
            .collect(),
        not_planned: not_planned
            .map(|own| NotPlannedJson {
                name: own.name.as_str(),
                what: own.what,
                missing: &own.missing,
            })
            .collect(),
        waived: findings(&list.waived),
        still_open: findings(&list.left),
        result: texts.collect(),
    })
}

fn findings(findings: &[Finding]) -> Vec<FindingJson<'_>> {
    findings.iter().map(finding).collect()
}

fn finding(finding: &Finding) -> FindingJson<'_> {
    let Finding { rule, level, name, message, remedy, .. } = finding;
    FindingJson { rule: rule.id, level: level.word(), name: name.as_str(), message, remedy }
}

fn step((number, step): (usize, &Step)) -> StepJson<'_> {
    let amounts = step.amounts.iter();
    StepJson {
        number,
        work: step.work.word(),
        bends_metal: step.work.bends_metal(),
        seat: step.seat,
        oar: step.oar.as_deref(),
        deed: &step.deed,
        because: step.because.trim_end(),
        amounts: amounts.map(|(key, value)| ((*key).to_owned(), Value::from(*value))).collect(),
    }
}
