//! `schema`: what may stand in a record, as JSON Schema for editors.

use std::path::Path;

use super::arguments::Schema;
use super::book;
use super::exit::Exit;
use super::output::Done;
use crate::reading::RecordKind;
use crate::reports;
use crate::reports::shown;
use crate::store::saving::save_over;

/// Runs the command.
pub(super) fn run(arguments: &Schema) -> Done {
    match (&arguments.kind, &arguments.out) {
        (_, Some(folder)) => write_all(folder),
        (Some(kind), None) => of_kind(kind),
        (None, None) => Done::result(kinds().iter().map(|kind| format!("{kind}\n")).collect()),
    }
}

fn kinds() -> [&'static str; 6] {
    RecordKind::ALL.map(|(_, word)| word)
}

fn of_kind(asked: &str) -> Done {
    match RecordKind::ALL.iter().find(|(_, word)| *word == asked) {
        Some((kind, _)) => Done::result(reports::schema(*kind)),
        None => {
            let see = "tholebook schema lists the kinds.";
            Done::refused(Exit::Usage, book::unknown("kind of record", asked, &kinds(), see))
        }
    }
}

fn write_all(folder: &Path) -> Done {
    let write = |(kind, _): (RecordKind, &str)| {
        let path = folder.join(reports::schema_file(kind));
        let written = save_over(&path, reports::schema(kind));
        let shown = shown::line(&path.display().to_string());
        match written {
            Ok(()) => Ok(format!("{shown}\n")),
            Err(error) => Err(format!("{shown} could not be written: {error}")),
        }
    };
    match RecordKind::ALL.into_iter().map(write).collect::<Result<String, String>>() {
        Ok(written) => Done::result(written),
        Err(told) => Done::refused(Exit::NotChecked, vec![told]),
    }
}
