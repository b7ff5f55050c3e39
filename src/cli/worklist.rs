//! `worklist`: the work that brings a boat inside her limits, and what it should make of her.

mod result;

use super::arguments::Worklist;
use super::arguments::WorklistFormat;
use super::book;
use super::book::OpenBook;
use super::exit::Exit;
use super::lint::today;
use super::look::look;
use super::output::Done;
use crate::planning::worklist;
use crate::reports;
use crate::writing::predicting;

/// Runs the command.
pub(super) fn run(arguments: &Worklist) -> Done {
    planned(arguments).unwrap_or_else(|refused| refused)
}

fn planned(arguments: &Worklist) -> Result<Done, Done> {
    let open = book::open(arguments.book.as_deref(), None)?;
    let boat = open.boat(&arguments.boat)?;
    let as_of = arguments.as_of.unwrap_or_else(today);
    let list = worklist::worklist(&open.book, &open.faults, boat, as_of);
    let mut told = open.told.clone();
    told.extend(open.unread());
    let mut exit = exit(&open, &list);
    let texts = predicting::texts(&open.book, &list);
    let result = match (&arguments.result, arguments.format) {
        (Some(to), _) => {
            let texts = texts.map_err(|refused| result::refused(&refused))?;
            result::handed(arguments, to, &open.book, &list, &texts, &mut told)?
        }
        (None, WorklistFormat::Text) => reports::worklist_text(&list, look(&arguments.look)),
        (None, WorklistFormat::Json) => {
            let texts = texts.unwrap_or_else(|refused| {
                told.push(format!("No result: {refused}"));
                exit = exit.max(Exit::NotChecked);
                Vec::new()
            });
            reports::worklist_json(&list, &texts)
        }
    };
    Ok(Done { exit, result, told })
}

fn exit(open: &OpenBook, list: &worklist::Worklist) -> Exit {
    let work = if list.is_empty() { Exit::Clear } else { Exit::Findings };
    let settings = if open.settings_are_bad() { Exit::Usage } else { Exit::Clear };
    let all = if list.not_planned.is_empty() { Exit::Clear } else { Exit::NotChecked };
    work.max(settings).max(all)
}
