//! `blame`: who set every value of a record, and how old it is.

use super::arguments::Blame;
use super::arguments::PastFormat;
use super::exit::Exit;
use super::history;
use super::lint::today;
use super::look::look;
use super::open_past;
use super::open_past::OpenPast;
use super::open_past::committed_on;
use super::output::Done;
use crate::history::Past;
use crate::history::RecordState;
use crate::history::Set;
use crate::history::Walked;
use crate::history::blame;
use crate::reports;
use crate::reports::BlameRow;
use crate::reports::Made;
use crate::units::Date;
use std::collections::HashMap;

/// Runs the command.
pub(super) fn run(arguments: &Blame) -> Done {
    blamed(arguments).unwrap_or_else(|refused| refused)
}

fn blamed(arguments: &Blame) -> Result<Done, Done> {
    open_past::must_name_something(&arguments.boat)?;
    let open = open_past::open(arguments.book.as_deref(), arguments.at.as_deref())?;
    let walked = open.walk(Some(&arguments.boat))?;
    let cut = open.cut(&walked)?;
    open_past::must_be_whole(cut.as_ref(), arguments.require_full_history)?;
    let as_of = arguments.as_of.map_or_else(|| clock(&open, arguments), Ok)?;
    let mut records = Vec::new();
    for key in walked.keys() {
        let past = walked.past(&key);
        match last(&past) {
            Some(RecordState::Held { .. }) => {
                records.push((key, rows(&open, &walked, &past, arguments, as_of)?));
            }
            Some(RecordState::Unclear(why)) => return Err(unclear(&open, &key.id, why)),
            Some(RecordState::Gone) | None => {}
        }
    }
    if records.is_empty() {
        return Err(history::unknown_record(&open, &walked, &arguments.boat));
    }
    let report = reports::Blame { records, older_than: arguments.older_than, as_of, cut };
    let result = match arguments.format {
        _ if arguments.spoken => reports::blame_spoken(&report),
        PastFormat::Text => reports::blame_text(&report, look(&arguments.look)),
        PastFormat::Json => reports::blame_json(&report),
        PastFormat::Markdown => reports::blame_markdown(&report),
    };
    Ok(Done { exit: Exit::Clear, result, told: open.told(&walked)? })
}

/// Returns the day that ages are counted to: that of the commit asked for, else today.
fn clock(open: &OpenPast, arguments: &Blame) -> Result<Date, Done> {
    match (&arguments.at, open.from) {
        (Some(_), Some(id)) => Ok(committed_on(&open.details(id)?).unwrap_or_else(today)),
        _ => Ok(today()),
    }
}

fn last(past: &Past) -> Option<&RecordState> {
    let node = past.graph.last()?;
    Some(&past.states[past.graph.nodes[node].state])
}

fn unclear(open: &OpenPast, id: &str, why: &str) -> Done {
    let mut told = open.told.clone();
    let why = reports::shown::line(why);
    told.push(format!("{} can't be told: {why}", reports::shown::line(id)));
    told.push("Mend it first, or ask for an earlier commit: --at REV".to_owned());
    Done::refused(Exit::NotChecked, told)
}

fn rows(
    open: &OpenPast,
    walked: &Walked,
    past: &Past,
    arguments: &Blame,
    as_of: Date,
) -> Result<Vec<BlameRow>, Done> {
    let mut known: HashMap<usize, Option<Made>> = HashMap::new();
    let mut rows = Vec::new();
    for set in blame(past) {
        let made = match known.get(&set.node) {
            Some(made) => made.clone(),
            None => open.made_at(walked, past, set.node)?,
        };
        known.insert(set.node, made.clone());
        let age = age(&set, made.as_ref(), as_of);
        let is_edge = made.as_ref().is_some_and(|made| made.is_edge);
        let may_be_older = is_edge && set.measured.is_none();
        let is_old = |least: i64| may_be_older || age.is_some_and(|age| age > least);
        if arguments.older_than.is_none_or(is_old) {
            rows.push(BlameRow { set, made, age, may_be_older });
        }
    }
    Ok(rows)
}

fn age(set: &Set, made: Option<&Made>, as_of: Date) -> Option<i64> {
    let day = set
        .measured
        .as_ref()
        .map(|own| own.on)
        .or_else(|| made.and_then(|made| made.committed_on))?;
    Some(as_of.days_after(day))
}
