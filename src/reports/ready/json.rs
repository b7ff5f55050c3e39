//! The pages before a race as JSON: a contract, key by key.

use serde::Serialize;

use super::super::json::FORMAT_VERSION;
use super::super::json::FindingJson;
use super::super::json::NotCheckedJson;
use super::super::json::finding;
use super::super::json::not_checked;
use super::super::place::Places;
use super::super::shown;
use super::Ready;
use super::happened;
use super::page;
use super::page::Page;
use super::seats::SeatRow;
use super::seats::Spare;
use super::seats::Value;
use super::sections;
use super::work;
use crate::model::Placed;

#[derive(Serialize)]
struct Root<'r> {
    format_version: u32,
    on: String,
    since: Option<&'r str>,
    boats: Vec<BoatJson<'r>>,
}

#[derive(Serialize)]
struct BoatJson<'r> {
    boat: &'r str,
    called: &'r str,
    verdict: &'static str,
    rigged_on: Option<String>,
    rigged_days_before: Option<i64>,
    rigged_by: Option<&'r str>,
    passed_by: Option<&'r str>,
    out_of_use: Option<OutOfUseJson<'r>>,
    crews: Vec<&'r str>,
    seats: Vec<SeatJson<'r>>,
    since_rigged: Vec<String>,
    changes: Option<Vec<String>>,
    walk_round: Vec<String>,
    work_left: Vec<JobJson<'r>>,
    findings: Vec<FindingJson<'r>>,
    not_checked: Vec<NotCheckedJson<'r>>,
}

#[derive(Serialize)]
struct OutOfUseJson<'r> {
    since: Option<String>,
    by: Option<&'r str>,
    because: Option<&'r str>,
}

#[derive(Serialize)]
struct SeatJson<'r> {
    seat: Option<u32>,
    side: Option<&'static str>,
    oar: Option<&'r str>,
    spares: Vec<SpareJson<'r>>,
    clearance_mm: ValueJson,
    lifts_out: Vec<LiftJson>,
    pitch_catch_deg: ValueJson,
    pitch_deg: ValueJson,
    pitch_finish_deg: ValueJson,
    handle_past_mark_mm: ValueJson,
    chock_to_pin_mm: ValueJson,
    foot_holes: Vec<HoleJson<'r>>,
}

/// Whether a spare clears; null where nobody measured.
#[derive(Serialize)]
struct SpareJson<'r> {
    oar: &'r str,
    clears: Option<bool>,
    unfit: bool,
}

#[derive(Serialize)]
struct LiftJson {
    at: &'static str,
    came: Option<&'static str>,
}

#[derive(Serialize)]
struct HoleJson<'r> {
    crew: &'r str,
    hole: Option<u32>,
}

/// A value; both null where it could not be worked out.
#[derive(Serialize)]
struct ValueJson {
    number: Option<f64>,
    uncertainty: Option<f64>,
}

#[derive(Serialize)]
struct JobJson<'r> {
    step: &'static str,
    rule: &'static str,
    level: &'static str,
    names: Vec<&'r str>,
    remedy: &'r str,
}

/// Returns the pages as JSON, on one line.
#[must_use]
pub fn ready_json(ready: &Ready) -> String {
    let places = Places::new(ready.report.book);
    let pages = page::pages(ready);
    shown::json(&Root {
        format_version: FORMAT_VERSION,
        on: ready.report.as_of.to_string(),
        since: ready.before.map(|before| before.called),
        boats: pages.iter().map(|page| boat(page, &places)).collect(),
    })
}

fn boat<'r>(page: &Page<'r>, places: &Places<'r>) -> BoatJson<'r> {
    let boat = page.boat.boat;
    let rigged = &boat.rigged;
    let on = page.ready.report.as_of;
    BoatJson {
        boat: &boat.id.value,
        called: boat.called(),
        verdict: page.stands().word(),
        rigged_on: rigged.date.map(|day| day.value.to_string()),
        rigged_days_before: rigged.date.map(|day| on.days_after(day.value)),
        rigged_by: said(rigged.by.as_ref()),
        passed_by: said(rigged.checked_by.as_ref()),
        out_of_use: boat.out_of_use.as_ref().map(|out| OutOfUseJson {
            since: out.since.map(|day| day.value.to_string()),
            by: said(out.by.as_ref()),
            because: said(out.because.as_ref()),
        }),
        crews: page.crews.iter().map(|crew| &*crew.id.value).collect(),
        seats: page.seats.iter().map(|row| seat(page, row)).collect(),
        since_rigged: happened::since_rigged(page),
        changes: page.ready.before.map(|_| happened::changes(page)),
        walk_round: sections::walk_round(page),
        work_left: jobs(page),
        findings: page
            .findings
            .iter()
            .map(|found| finding(places, found, found.standing.map(|own| own.word())))
            .collect(),
        not_checked: page.not_checked.iter().map(|missing| not_checked(missing)).collect(),
    }
}

fn seat<'r>(page: &Page<'r>, row: &SeatRow<'r>) -> SeatJson<'r> {
    let [catch, square, finish] = row.pitch.each_ref().map(value);
    let holes = page.crews.iter().zip(&row.holes);
    SeatJson {
        seat: row.number,
        side: row.side,
        oar: row.oar,
        spares: row.spares.iter().map(spare).collect(),
        clearance_mm: value(&row.to_spare),
        lifts_out: row.lifted.each.iter().map(|(at, came)| LiftJson { at, came: *came }).collect(),
        pitch_catch_deg: catch,
        pitch_deg: square,
        pitch_finish_deg: finish,
        handle_past_mark_mm: value(&row.handle),
        chock_to_pin_mm: value(&row.chock),
        foot_holes: holes
            .map(|(crew, hole)| HoleJson { crew: &crew.id.value, hole: *hole })
            .collect(),
    }
}

fn spare<'r>(spare: &Spare<'r>) -> SpareJson<'r> {
    let Spare { oar, clears, unfit } = *spare;
    SpareJson { oar, clears, unfit }
}

fn value(value: &Value) -> ValueJson {
    let worked = value.worked.as_ref().ok();
    ValueJson {
        number: worked.map(|budget| budget.value()),
        uncertainty: worked.map(|budget| budget.expanded()),
    }
}

fn jobs<'r>(page: &Page<'r>) -> Vec<JobJson<'r>> {
    let job = |job: work::Job<'r>| JobJson {
        step: job.step,
        rule: job.findings[0].rule.id,
        level: job.findings[0].level.word(),
        names: job.findings.iter().map(|finding| finding.name.as_str()).collect(),
        remedy: &job.findings[0].remedy,
    };
    work::left(page).into_iter().map(job).collect()
}

fn said(text: Option<&Placed<String>>) -> Option<&str> {
    text.map(|text| &*text.value)
}
