//! What changed, day by day, the newest first: of the whole book, and of one record the last days.

use std::collections::BTreeMap;

use maud::Markup;
use maud::html;

use super::Site;
use super::frame;
use super::frame::Frame;
use crate::history::Event;
use crate::history::Key;
use crate::reading::RecordKind;
use crate::reports::Made;
use crate::reports::TimelineRow;
use crate::reports::html::words;
use crate::reports::through_time::committed;
use crate::reports::timeline_text::event_words;
use crate::units::Date;

/// How many days of changes a record's page tells, and how many the book's.
const LAST: usize = 3;
const MOST_DAYS: usize = 60;

/// The most changes of one table; more are counted.
const MOST: usize = 400;

/// So many values of a record that are told for the first time are told one by one.
const A_FEW: usize = 4;

/// When something was committed: what is not yet comes last in time.
type When = (bool, Option<Date>);

type ByDay<'p> = BTreeMap<When, Vec<&'p TimelineRow>>;

pub(super) fn page(site: &Site) -> Frame {
    let below = match &site.pages.past {
        Ok(past) => past.cut.clone().unwrap_or_default(),
        Err(why) => format!("What changed is not known: {why}"),
    };
    let records = site.pages.past.as_ref().ok().into_iter().flat_map(|past| past.records.values());
    let days = by_day(site, records.flat_map(|own| &own.rows));
    let more = days.len().saturating_sub(MOST_DAYS);
    let body = html! {
        @if days.is_empty() { p { "No change can be told." } }
        @for (when, rows) in days.iter().rev().take(MOST_DAYS) { (day(*when, rows)) }
        @if more > 0 { p { "And " (more) " earlier days: tholebook history NAME" } }
    };
    Frame { heading: "Changes by date".to_owned(), below, body, of_rig: false }
}

/// Returns what changed of a record on the last days on which something did.
pub(super) fn last_days(site: &Site, kind: RecordKind, id: &str) -> Markup {
    let past = site.past(&Key { kind, id: id.to_owned() });
    let days = by_day(site, past.into_iter().flat_map(|own| &own.rows));
    html! {
        section {
            h2 id="changed" { "What changed on the last days" }
            @if days.is_empty() { p { "Not known." } }
            @for (when, rows) in days.iter().rev().take(LAST) { (day(*when, rows)) }
        }
    }
}

/// Returns when a record was changed last, and in which commit: a page that is printed tells of what
/// state it is. The commit of the book would have every page written anew with each commit.
pub(super) fn last(site: &Site, kind: RecordKind, id: &str) -> String {
    let past = site.past(&Key { kind, id: id.to_owned() });
    match past.and_then(|past| past.rows.last()).map(|row| &row.made) {
        None => "in no commit that is known".to_owned(),
        Some(None) => "changed since the last commit".to_owned(),
        Some(Some(made)) => {
            format!("last changed {}, commit {} by {}", committed(made), made.short, made.author)
        }
    }
}

fn by_day<'p>(site: &Site, rows: impl Iterator<Item = &'p TimelineRow>) -> ByDay<'p> {
    let mut days = ByDay::new();
    for row in rows.filter(|row| !site.keeps(&row.row.name)) {
        let when = match &row.made {
            None => (true, None),
            Some(made) => (false, made.committed_on),
        };
        days.entry(when).or_default().push(row);
    }
    for rows in days.values_mut() {
        rows.sort_by(|one, other| one.row.name.cmp(&other.row.name));
    }
    days
}

fn day((is_open, on): When, rows: &[&TimelineRow]) -> Markup {
    let heading = match (is_open, on) {
        (true, _) => "Not committed yet".to_owned(),
        (false, Some(day)) => day.to_string(),
        (false, None) => "On a day that can't be read".to_owned(),
    };
    let (first, rows) = folded(rows);
    let more = rows.len().saturating_sub(MOST);
    let table = html! {
        table class="changes" {
            caption { (heading) }
            thead { tr { th scope="col" { "name" } th scope="col" { "what happened" } th scope="col" { "by" } } }
            tbody {
                @for (name, count) in first { tr {
                    th scope="row" { (words(name)) } td { (count) " values recorded for the first time" } td { "-" }
                } }
                @for row in rows.iter().take(MOST) { (line(row)) }
            }
        }
    };
    html! {
        (frame::wide(&format!("Changes: {heading}"), &table))
        @if more > 0 { p { "And " (more) " more of that day." } }
    }
}

/// Returns the records of which many values stand there for the first time, as counts, and the other
/// rows: a record that is new changes in nothing.
fn folded<'p, 'r>(rows: &'r [&'p TimelineRow]) -> (BTreeMap<&'r str, usize>, Vec<&'p TimelineRow>) {
    let record =
        |row: &'r &'p TimelineRow| row.row.name.as_str().split('/').next().unwrap_or_default();
    let is_first =
        |row: &&&TimelineRow| matches!(row.row.event, Event::FirstRecorded | Event::HistoryStarts);
    let mut counts: BTreeMap<&str, usize> = BTreeMap::new();
    for row in rows.iter().filter(is_first) {
        *counts.entry(record(row)).or_default() += 1;
    }
    counts.retain(|_, count| *count > A_FEW);
    let others = rows.iter().filter(|row| !is_first(row) || !counts.contains_key(record(row)));
    let others = others.copied().collect();
    (counts, others)
}

fn line(row: &TimelineRow) -> Markup {
    html! {
        tr {
            th scope="row" { (words(row.row.name.as_str())) }
            td { (words(&event_words(row))) }
            td { (words(&by(row))) }
        }
    }
}

fn by(row: &TimelineRow) -> String {
    let committed = |made: &Made| format!("{}, {}", made.author, made.short);
    let committed = row.made.as_ref().map_or("-".to_owned(), committed);
    let Some(measured) = &row.row.measured else { return committed };
    let who = measured.by.as_ref().map_or(String::new(), |by| format!(" by {by}"));
    format!("{committed}; measured {}{who}", measured.on)
}
