//! The changes of a value as text: what happened, when, by whom, and a drawing of it.

use super::chart::chart;
use super::look::Look;
use super::look::columns;
use super::shown;
use super::through_time::Timeline;
use super::through_time::TimelineRow;
use super::through_time::by_whom;
use super::through_time::delta;
use super::through_time::words;
use super::verdict::Verdict;
use crate::history::Event;
use crate::history::Kept;
use crate::history::Rewritten;
use crate::model::Name;

/// How wide the column of days is.
const DAY: usize = 12;

/// How wide the column of verdicts is.
const VERDICT: usize = 12;

/// Returns the changes of a value as text.
#[must_use]
pub fn timeline_text(timeline: &Timeline, look: Look) -> String {
    let mut out = format!("{}\n\n", look.heading().style(shown::line(&timeline.name)));
    if timeline.rows.is_empty() {
        out.push_str("No change of value.\n");
    } else {
        out.push_str(&heads(look));
    }
    for row in &timeline.rows {
        out.push_str(&entry(timeline, row, look));
    }
    if timeline.points.points.len() > 1 {
        out.push('\n');
        out.push_str(&chart(&timeline.points, look));
    }
    if timeline.trend {
        out.push('\n');
        for line in trend_words(timeline) {
            out.push_str(&format!("{}\n", look.hanging(&line, "", "  ")));
        }
    }
    if let Some(cut) = &timeline.cut {
        out.push('\n');
        out.push_str(&look.wrapped(cut, ""));
        out.push('\n');
    }
    out
}

fn heads(look: Look) -> String {
    let room = look.width.saturating_sub(DAY + VERDICT);
    let line = format!("{:DAY$}{:room$}verdict then", "measured", "what happened");
    format!("{}\n", look.heading().style(line.trim_end()))
}

fn entry(timeline: &Timeline, row: &TimelineRow, look: Look) -> String {
    let day = row.row.measured.as_ref().map_or_else(|| "-".to_owned(), |own| own.on.to_string());
    let room = Look { width: look.width.saturating_sub(VERDICT + 1).max(DAY + 8), ..look };
    let happened = shown::line(&happened(timeline, row));
    let what = room.hanging(&happened, &format!("{day:DAY$}"), &" ".repeat(DAY));
    let verdict = row.verdict.unwrap_or(Verdict::NotChecked);
    let mut lines = what.lines();
    let first = lines.next().unwrap_or_default();
    let gap = look.width.saturating_sub(VERDICT + columns(first)).max(1);
    let verdict = verdict.coloured(&verdict.words(), look);
    let mut out = format!("{first}{}{verdict}\n", " ".repeat(gap));
    for line in lines {
        out.push_str(line);
        out.push('\n');
    }
    let indent = " ".repeat(DAY);
    out.push_str(&look.hanging(&shown::line(&who(row)), &indent, &indent));
    out.push('\n');
    out
}

/// Returns what happened in words; of several values, with the name below the one asked for.
pub(super) fn happened(timeline: &Timeline, row: &TimelineRow) -> String {
    let name = row.row.name.as_str();
    let what = event_words(row);
    if name == timeline.name {
        return format!("{what}{}", called_then(row));
    }
    let below = name.strip_prefix(&timeline.name).and_then(|rest| rest.strip_prefix('/'));
    format!("{}{}: {what}", below.unwrap_or(name), called_then(row))
}

/// Returns what a value was called then, where its number is another now.
fn called_then(row: &TimelineRow) -> String {
    let words = |then: &Name| format!(" (then {then})");
    row.row.then.as_ref().map(words).unwrap_or_default()
}

pub(super) fn event_words(row: &TimelineRow) -> String {
    let value = |value: &Option<Kept>| value.as_ref().map_or_else(absent, words);
    let (old, new) = (value(&row.row.old), value(&row.row.new));
    match &row.row.event {
        Event::FirstRecorded => format!("first recorded: {new}"),
        Event::HistoryStarts => format!("history starts here: {new}"),
        Event::Again => format!("recorded again: {new}"),
        Event::Changed => change(row, &old, &new),
        Event::TakenOut => format!("taken out; it was {old}"),
        Event::NotMeasured => format!("not measured any more; it was {old}"),
        Event::Merged { .. } => merged(row),
        Event::MergedAnew { .. } => {
            format!("merge set {new}, which no side had: {}", sides(row))
        }
        Event::Unclear(why) => format!("can't be told from here on: {why}"),
        Event::Rewritten(Rewritten::Unit) => format!("only the unit written otherwise: {new}"),
        Event::Rewritten(_) => format!("only written otherwise: {new}"),
        Event::Moved(path) => format!("moved {path}; no value changed"),
        Event::Untouched => "the file changed, not this value".to_owned(),
    }
}

fn absent() -> String {
    "not given".to_owned()
}

fn change(row: &TimelineRow, old: &str, new: &str) -> String {
    match delta(&row.row) {
        Some((delta, "")) => format!("{old} → {new} ({delta:+})"),
        Some((delta, unit)) => format!("{old} → {new} ({delta:+} {unit})"),
        None => format!("{old} → {new}"),
    }
}

fn merged(row: &TimelineRow) -> String {
    let Event::Merged { sides: all } = &row.row.event else { return String::new() };
    let each = |(number, (value, _)): (usize, &(Option<Kept>, _))| {
        let from = side_made(row, number);
        match (number, value) {
            (0, Some(value)) => format!("merge kept {} from {from}", words(value)),
            (0, None) => format!("merge left it out, as in {from}"),
            (_, Some(value)) => format!("not {} from {from}", words(value)),
            (_, None) => format!("left out in {from}"),
        }
    };
    all.iter().enumerate().map(each).collect::<Vec<_>>().join(", ")
}

fn sides(row: &TimelineRow) -> String {
    let (Event::Merged { sides } | Event::MergedAnew { sides }) = &row.row.event else {
        return String::new();
    };
    let each = sides.iter().enumerate();
    let each: Vec<String> =
        each.map(|(number, (value, _))| side(row, number, value.as_ref())).collect();
    each.join(", ")
}

fn side(row: &TimelineRow, number: usize, value: Option<&Kept>) -> String {
    format!("{} from {}", value.map_or_else(absent, words), side_made(row, number))
}

/// Returns the commit that a side of a merge came from.
fn side_made(row: &TimelineRow, number: usize) -> &str {
    let made = row.sides.get(number).and_then(Option::as_ref);
    made.map_or("the folder", |made| &made.short)
}

/// Returns who measured and who committed.
pub(super) fn who(row: &TimelineRow) -> String {
    let measured =
        row.row.measured.as_ref().and_then(|own| own.by.as_deref()).map(|by| format!("by {by}; "));
    let measured = measured.unwrap_or_default();
    match &row.made {
        Some(made) => {
            format!("{measured}{}, {}", by_whom(made), made.short)
        }
        None => format!("{measured}not committed yet"),
    }
}

/// Returns how the value drifts, how sure that is and what it leads to, in sentences.
pub(super) fn trend_words(timeline: &Timeline) -> Vec<String> {
    let points = &timeline.points;
    if points.drifting.readings.is_empty() {
        return vec!["Trend: it is told of one value that is a number.".to_owned()];
    }
    points.drifting.words(points.unit)
}
