//! The past as JSON: a contract, key by key.

use serde::Serialize;
use serde_json::Value as Json;

use super::drifting::TrendJson;
use super::json::FORMAT_VERSION;
use super::shown;
use super::through_time::Blame;
use super::through_time::BlameRow;
use super::through_time::Made;
use super::through_time::Timeline;
use super::through_time::TimelineRow;
use super::through_time::delta;
use super::through_time::kind;
use super::through_time::words;
use super::timeline_text::happened;
use crate::history::Kept;
use crate::model::Name;
use crate::model::Said;

#[derive(Serialize)]
struct TimelineJson<'r> {
    format_version: u32,
    name: &'r str,
    rows: Vec<RowJson<'r>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    trend: Option<TrendJson>,
    complete: bool,
}

#[derive(Serialize)]
struct RowJson<'r> {
    name: &'r str,
    #[serde(skip_serializing_if = "Option::is_none")]
    name_then: Option<&'r str>,
    kind: &'static str,
    commit: Option<&'r str>,
    author: Option<&'r str>,
    committed_on: Option<String>,
    measured_on: Option<String>,
    measured_by: Option<&'r str>,
    old: Json,
    new: Json,
    delta: Option<f64>,
    unit: Option<&'static str>,
    verdict: Option<&'static str>,
    at_the_edge: bool,
    words: String,
}

#[derive(Serialize)]
struct BlameJson<'r> {
    format_version: u32,
    as_of: String,
    values: Vec<SetJson<'r>>,
    complete: bool,
}

#[derive(Serialize)]
struct SetJson<'r> {
    name: &'r str,
    value: Json,
    unit: Option<&'static str>,
    commit: Option<&'r str>,
    author: Option<&'r str>,
    committed_on: Option<String>,
    measured_on: Option<String>,
    measured_by: Option<&'r str>,
    age_days: Option<i64>,
    may_be_older: bool,
    at_the_edge: bool,
}

/// Returns the changes of a value as JSON.
#[must_use]
pub fn timeline_json(timeline: &Timeline) -> String {
    let points = &timeline.points;
    let is_told = timeline.trend && !points.drifting.readings.is_empty();
    let trend = is_told.then(|| points.drifting.json(points.unit));
    shown::json(&TimelineJson {
        format_version: FORMAT_VERSION,
        name: &timeline.name,
        rows: timeline.rows.iter().map(|row| row_json(timeline, row)).collect(),
        trend,
        complete: timeline.cut.is_none(),
    })
}

/// Returns who set every value, as JSON.
#[must_use]
pub fn blame_json(blame: &Blame) -> String {
    let rows = blame.records.iter().flat_map(|(_, rows)| rows);
    shown::json(&BlameJson {
        format_version: FORMAT_VERSION,
        as_of: blame.as_of.to_string(),
        values: rows.map(set_json).collect(),
        complete: blame.cut.is_none(),
    })
}

fn row_json<'r>(timeline: &Timeline, own: &'r TimelineRow) -> RowJson<'r> {
    let row = &own.row;
    let value = row.new.as_ref().or(row.old.as_ref());
    RowJson {
        name: row.name.as_str(),
        name_then: row.then.as_ref().map(Name::as_str),
        kind: kind(&row.event),
        commit: own.made.as_ref().map(|made| &*made.commit),
        author: own.made.as_ref().map(|made| &*made.author),
        committed_on: day(own.made.as_ref()),
        measured_on: row.measured.as_ref().map(|own| own.on.to_string()),
        measured_by: row.measured.as_ref().and_then(|own| own.by.as_deref()),
        old: json(row.old.as_ref()),
        new: json(row.new.as_ref()),
        delta: delta(row).map(|(delta, _)| delta),
        unit: value.and_then(unit),
        verdict: own.verdict.and_then(super::verdict::Verdict::word),
        at_the_edge: own.made.as_ref().is_some_and(|made| made.is_edge),
        words: happened(timeline, own),
    }
}

fn set_json(row: &BlameRow) -> SetJson<'_> {
    SetJson {
        name: row.set.name.as_str(),
        value: json(row.set.value.as_ref()),
        unit: row.set.value.as_ref().and_then(unit),
        commit: row.made.as_ref().map(|made| &*made.commit),
        author: row.made.as_ref().map(|made| &*made.author),
        committed_on: day(row.made.as_ref()),
        measured_on: row.set.measured.as_ref().map(|own| own.on.to_string()),
        measured_by: row.set.measured.as_ref().and_then(|own| own.by.as_deref()),
        age_days: row.age,
        may_be_older: row.may_be_older,
        at_the_edge: row.made.as_ref().is_some_and(|made| made.is_edge),
    }
}

fn day(made: Option<&Made>) -> Option<String> {
    made.and_then(|made| made.committed_on).map(|day| day.to_string())
}

fn unit(value: &Kept) -> Option<&'static str> {
    value.number().map(|(_, unit)| unit).filter(|unit| !unit.is_empty())
}

/// A number is a number, in the unit of a bare one; of readings taken several times, a list.
fn json(value: Option<&Kept>) -> Json {
    let Some(value) = value else { return Json::Null };
    let one = |said: &Said| match said {
        Said::Unread => Json::Null,
        said => {
            let alone = Kept { said: vec![said.clone()], ..Kept::default() };
            alone.number().map_or_else(|| words(&alone).into(), |(number, _)| number.into())
        }
    };
    let mut each: Vec<Json> = value.said.iter().map(one).collect();
    if each.len() == 1 { each.remove(0) } else { each.into() }
}
