//! `history`: each change of a value.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use super::arguments::History;
use super::arguments::PastFormat;
use super::book;
use super::exit::Exit;
use super::first_found;
use super::lint::today;
use super::look::look;
use super::open_past;
use super::open_past::OpenPast;
use super::output::Done;
use super::verdicts::AskedOf;
use super::verdicts::Judge;
use super::worked_out;
use crate::history;
use crate::history::Asked;
use crate::history::Event;
use crate::history::Kept;
use crate::history::Past;
use crate::history::Row;
use crate::history::Step;
use crate::history::Walked;
use crate::history::timeline;
use crate::reports;
use crate::reports::Drifting;
use crate::reports::Made;
use crate::reports::Points;
use crate::reports::TimelineRow;
use crate::reports::Verdict;
use crate::reports::shown;
use crate::units::Date;

/// Runs the command.
pub(super) fn run(arguments: &History) -> Done {
    told(arguments).unwrap_or_else(|refused| refused)
}

fn told(arguments: &History) -> Result<Done, Done> {
    open_past::must_name_something(&arguments.name)?;
    let open = open_past::open(arguments.book.as_deref(), arguments.at.as_deref())?;
    let id = arguments.name.split('/').next().filter(|id| *id != "*");
    let walked = open.walk(id)?;
    let cut = open.cut(&walked)?;
    open_past::must_be_whole(cut.as_ref(), arguments.require_full_history)?;
    let pasts = pasts(&open, &walked, arguments)?;
    if let Some(rule) = &arguments.when {
        return first_found::run(arguments, &open, &walked, &pasts, rule, cut);
    }
    let mut rows = Vec::new();
    for past in &pasts {
        rows.extend(rows_of(&open, &walked, past, arguments)?);
    }
    let points = points(&open, &walked, &pasts, arguments, &rows)?;
    let name = arguments.name.clone();
    let timeline = reports::Timeline { name, rows, cut, points, trend: arguments.trend };
    let result = match arguments.format {
        _ if arguments.spoken => reports::timeline_spoken(&timeline),
        PastFormat::Text => reports::timeline_text(&timeline, look(&arguments.look)),
        PastFormat::Json => reports::timeline_json(&timeline),
        PastFormat::Markdown => reports::timeline_markdown(&timeline),
    };
    Ok(Done { exit: Exit::Clear, result, told: open.told(&walked)? })
}

/// Returns the past of every record in which the name is, or was, known.
fn pasts(open: &OpenPast, walked: &Walked, arguments: &History) -> Result<Vec<Past>, Done> {
    let keys = walked.keys();
    let whole = &*arguments.name;
    let id = whole.split('/').next().unwrap_or_default();
    if keys.is_empty() {
        return Err(unknown_record(open, walked, id));
    }
    let all: Vec<Past> = keys.iter().map(|key| walked.past(key)).collect();
    // A rule may have found something where no value stands.
    let any = arguments.when.is_some();
    let has = |past: &Past| any || !past.asked(whole).is_empty();
    let (own, others): (Vec<Past>, Vec<Past>) = all.into_iter().partition(has);
    if own.is_empty() {
        for past in &others {
            if let Some(refusal) = worked_out::refusal(open, walked, past, whole)? {
                return Err(refusal);
            }
        }
        let names = others.iter().flat_map(Past::threads);
        let names: Vec<&str> = names.map(|own| own.name.as_str()).collect();
        let see = format!("Every value there is: tholebook blame {}", shown::line(id));
        let mut told = open.told.clone();
        told.extend(book::unknown("value", whole, &names, &see));
        return Err(Done::refused(Exit::Usage, told));
    }
    Ok(own)
}

/// Returns the refusal for a record that is not known, or not any more.
pub(super) fn unknown_record(open: &OpenPast, walked: &Walked, id: &str) -> Done {
    let mut told = open.told.clone();
    if walked.keys().iter().any(|key| key.id == id) {
        let id = shown::line(id);
        told.push(format!("{id} was taken out. What became of it: tholebook history {id}"));
        return Done::refused(Exit::Usage, told);
    }
    let all = match open.walk(None) {
        Ok(all) => all,
        Err(refused) => return refused,
    };
    let ids: Vec<String> = all.keys().into_iter().map(|key| key.id).collect();
    let ids: Vec<&str> = ids.iter().map(String::as_str).collect();
    let see = "A name begins with the id of a boat, an oar set or a crew.";
    told.extend(book::unknown("record", id, &ids, see));
    Done::refused(Exit::Usage, told)
}

fn rows_of(
    open: &OpenPast,
    walked: &Walked,
    past: &Past,
    arguments: &History,
) -> Result<Vec<TimelineRow>, Done> {
    let asked = Asked { whole: &arguments.name, all_touches: arguments.all_touches };
    let is_edge = |node: usize| {
        let made = open.made_at(walked, past, node);
        made.is_ok_and(|made| made.is_some_and(|made| made.is_edge))
    };
    let rows = timeline(past, asked, &is_edge);
    let judge = Judge::new(open, walked, past, &arguments.name);
    let asked: Vec<AskedOf> = rows.iter().filter_map(|row| of_row(walked, past, row)).collect();
    let verdicts = judge.verdicts(&asked)?;
    let mut verdicts = verdicts.into_iter();
    let mut told = Vec::with_capacity(rows.len());
    for row in rows {
        let verdict = row.new.as_ref().and_then(|_| verdicts.next()).flatten();
        told.push(with_commit(open, walked, past, row, verdict)?);
    }
    Ok(told)
}

/// Returns what a verdict is asked of; nothing where a row sets no value.
fn of_row<'r>(walked: &Walked, past: &'r Past, row: &'r Row) -> Option<AskedOf<'r>> {
    row.new.as_ref()?;
    let node = &past.graph.nodes[row.node];
    let oars = past.states[node.state].record().and_then(|record| record.oars.as_deref());
    Some(AskedOf {
        step: walked.steps[node.commit],
        name: row.then.as_ref().unwrap_or(&row.name),
        oars,
    })
}

fn with_commit(
    open: &OpenPast,
    walked: &Walked,
    past: &Past,
    row: Row,
    verdict: Option<Verdict>,
) -> Result<TimelineRow, Done> {
    let made = open.made_at(walked, past, row.node)?;
    let mut sides: Vec<Option<Made>> = Vec::new();
    if let Event::Merged { sides: of } | Event::MergedAnew { sides: of } = &row.event {
        for (_, node) in of {
            sides.push(open.made_at(walked, past, *node)?);
        }
    }
    Ok(TimelineRow { row, made, sides, verdict })
}

/// Returns the numbers of a single value through time, and the limits that hold for it now.
fn points(
    open: &OpenPast,
    walked: &Walked,
    pasts: &[Past],
    arguments: &History,
    rows: &[TimelineRow],
) -> Result<Points, Done> {
    let single = pasts.len() == 1 && rows.iter().all(|row| row.row.name == rows[0].row.name);
    let named = rows.first().is_some_and(|row| row.row.name.as_str() == arguments.name);
    let last = rows.iter().rev().find_map(|row| row.row.new.as_ref()?.number());
    let (true, true, Some((number, unit))) = (single, named, last) else {
        return Ok(Points::default());
    };
    let shown: Vec<&TimelineRow> = rows.iter().filter(|row| is_point(row, unit)).collect();
    let by_commit = !tells_apart(&shown);
    let point = |row: &&TimelineRow| {
        let (number, _) = row.row.new.as_ref()?.number()?;
        Some((day(row, by_commit)?, number))
    };
    let mut points: Vec<_> = shown.iter().filter_map(point).collect();
    points.sort_by_key(|(day, _)| *day);
    let mut judge = Judge::new(open, walked, &pasts[0], &arguments.name);
    let step: Option<Step> = walked.steps.last().copied();
    let then = step.map(|step| judge.then(step, None)).transpose()?.flatten();
    let name = &rows[0].row.name;
    let limits = then.map(|then| then.limits(name, number, unit)).unwrap_or_default();
    let mut drifting = Drifting { readings: points.clone(), ..Drifting::default() };
    if arguments.trend {
        let then = then.map(|then| (then.half_width(name), then.objections(name, number)));
        let (half_width, objections) = then.unwrap_or_default();
        let breaks = history::breaks(&pasts[0], name);
        let readings = readings(&pasts[0], arguments, unit).unwrap_or_else(|| one_a_day(&points));
        drifting = Drifting { readings, breaks, half_width, objections };
    }
    Ok(Points { points, unit, limits, drifting })
}

/// Returns every reading by the day it was measured; none where these days don't tell them apart.
fn readings(past: &Past, arguments: &History, unit: &str) -> Option<Vec<(Date, f64)>> {
    let threads = past.asked(&arguments.name);
    let [thread] = threads.as_slice() else { return None };
    Some(history::readings(past, thread, unit)).filter(|readings| readings.len() > 1)
}

/// Of several numbers of one day the last counts.
fn one_a_day(points: &[(Date, f64)]) -> Vec<(Date, f64)> {
    points.iter().copied().collect::<BTreeMap<Date, f64>>().into_iter().collect()
}

/// Returns whether a row has a number in the unit; what a merge kept was there before.
fn is_point(row: &TimelineRow, unit: &str) -> bool {
    let number = row.row.new.as_ref().and_then(Kept::number);
    number.is_some_and(|(_, own)| own == unit) && !matches!(row.row.event, Event::Merged { .. })
}

/// Returns whether the days of measuring tell the rows apart: each has one, and not all the same.
fn tells_apart(rows: &[&TimelineRow]) -> bool {
    let days = rows.iter().map(|row| row.row.measured.as_ref().map(|own| own.on));
    let days: Option<BTreeSet<Date>> = days.collect();
    days.is_some_and(|days| days.len() > 1)
}

/// Returns the day a row stands at; of what is not committed yet, today.
fn day(row: &TimelineRow, by_commit: bool) -> Option<Date> {
    match (&row.made, &row.row.measured) {
        (_, Some(measured)) if !by_commit => Some(measured.on),
        (Some(made), _) => made.committed_on,
        (None, _) => Some(today()),
    }
}
