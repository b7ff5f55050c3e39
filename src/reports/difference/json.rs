//! The difference as JSON: a contract, key by key.

use serde::Serialize;

use super::super::json::FORMAT_VERSION;
use super::super::json::FindingJson;
use super::super::json::finding;
use super::super::place::Places;
use super::super::shown;
use super::Difference;
use super::consequences::Consequence;
use super::consequences::Good;
use crate::history::Change;
use crate::history::ChangeKind;
use crate::history::LastMeasured;
use crate::history::State;
use crate::rules::Standing;

#[derive(Serialize)]
struct Root<'r> {
    format_version: u32,
    from: &'r str,
    to: &'r str,
    as_of: String,
    changes: Vec<ChangeJson<'r>>,
    consequences: Vec<ConsequenceJson>,
    findings: Findings<'r>,
}

#[derive(Serialize)]
struct ChangeJson<'r> {
    name: &'r str,
    kind: &'static str,
    old: Option<ValueJson<'r>>,
    new: Option<ValueJson<'r>>,
    delta: Option<f64>,
    unit: Option<&'static str>,
    old_place: Option<PlaceJson<'r>>,
    new_place: Option<PlaceJson<'r>>,
    old_measured: Option<MeasuredJson<'r>>,
    new_measured: Option<MeasuredJson<'r>>,
}

/// A changed figure is a number in the unit given; all else is what stands in the file.
#[derive(Serialize)]
#[serde(untagged)]
enum ValueJson<'r> {
    Number(f64),
    Text(&'r str),
}

#[derive(Serialize)]
struct PlaceJson<'r> {
    path: &'r str,
    line: usize,
    column: usize,
}

#[derive(Serialize)]
struct MeasuredJson<'r> {
    on: String,
    by: Option<&'r str>,
}

#[derive(Serialize)]
struct ConsequenceJson {
    name: String,
    worked_out: &'static str,
    old: Option<GoodJson>,
    new: Option<GoodJson>,
    unit: &'static str,
}

#[derive(Serialize)]
struct GoodJson {
    number: f64,
    uncertainty: f64,
}

#[derive(Serialize)]
struct Findings<'r> {
    new: Vec<FindingJson<'r>>,
    worse: Vec<FindingJson<'r>>,
    cured: Vec<FindingJson<'r>>,
}

/// Returns the difference as JSON, on one line.
#[must_use]
pub fn diff_json(difference: &Difference) -> String {
    let places = (Places::new(difference.old), Places::new(difference.new));
    let consequences = difference.consequences();
    let standing = |asked: Standing| {
        let those = difference.standing(asked);
        those.map(|found| finding(&places.1, found, Some(asked.word()))).collect()
    };
    let cured = difference.cured().map(|found| finding(&places.0, found, Some("cured")));
    shown::json(&Root {
        format_version: FORMAT_VERSION,
        from: difference.from,
        to: difference.to,
        as_of: difference.as_of.to_string(),
        changes: difference.changes().map(|own| change(&places, own)).collect(),
        consequences: consequences.iter().map(consequence).collect(),
        findings: Findings {
            new: standing(Standing::New),
            worse: standing(Standing::Worse),
            cured: cured.collect(),
        },
    })
}

fn change<'r>((old, new): &(Places<'r>, Places<'r>), change: &'r Change) -> ChangeJson<'r> {
    let place = |places: &Places<'r>, state: Option<&State>| {
        let place = state?.place?;
        let start = places.start(place);
        Some(PlaceJson { path: &places.file(place).path, line: start.line, column: start.column })
    };
    let (before, after) = (change.old.as_ref(), change.new.as_ref());
    ChangeJson {
        name: change.name.as_str(),
        kind: change.kind.word(),
        old: before.map(|state| value(change, state)),
        new: after.map(|state| value(change, state)),
        delta: change.delta,
        unit: Some(change.unit).filter(|unit| !unit.is_empty() && says_figures(change)),
        old_place: place(old, before),
        new_place: place(new, after),
        old_measured: before.and_then(measured),
        new_measured: after.and_then(measured),
    }
}

fn value<'r>(change: &Change, state: &'r State) -> ValueJson<'r> {
    match state.figure {
        Some(figure) if says_figures(change) => ValueJson::Number(figure),
        _ => ValueJson::Text(&state.text),
    }
}

fn says_figures(change: &Change) -> bool {
    matches!(change.kind, ChangeKind::Changed | ChangeKind::Added | ChangeKind::Removed)
}

fn measured(state: &State) -> Option<MeasuredJson<'_>> {
    let LastMeasured { on, by } = state.measured.as_ref()?;
    Some(MeasuredJson { on: on.to_string(), by: by.as_deref() })
}

fn consequence(own: &Consequence) -> ConsequenceJson {
    let good = |good: Good| GoodJson { number: good.number, uncertainty: good.uncertainty };
    ConsequenceJson {
        name: own.name.to_string(),
        worked_out: own.key,
        old: own.old.map(good),
        new: own.new.map(good),
        unit: own.unit,
    }
}
