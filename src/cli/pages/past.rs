//! The past of every record of a book: who set each value, and each change.

use std::collections::HashMap;
use std::path::Path;

use crate::cli::open_past;
use crate::cli::open_past::OpenPast;
use crate::cli::output::Done;
use crate::history;
use crate::history::Asked;
use crate::history::Event;
use crate::history::Past;
use crate::history::Row;
use crate::history::Walked;
use crate::reports::BookPast;
use crate::reports::Made;
use crate::reports::RecordPast;
use crate::reports::SetBy;
use crate::reports::TimelineRow;

/// Returns the past of a book; why it is not known, where it can't be.
pub(super) fn of_book(root: &Path) -> Result<BookPast, String> {
    let why = |refused: Done| refused.told.join(" ");
    let open = open_past::open(Some(root), None).map_err(why)?;
    let walked = open.walk(None).map_err(why)?;
    let mut known = Known { open: &open, walked: &walked, made: HashMap::new() };
    let mut records = HashMap::new();
    for key in walked.keys() {
        let past = walked.past(&key);
        records.insert(key, known.of_record(&past).map_err(why)?);
    }
    let cut = open.cut(&walked).map_err(why)?;
    Ok(BookPast { records, cut })
}

/// Commits that were looked at, each once.
struct Known<'p> {
    open: &'p OpenPast,
    walked: &'p Walked,
    made: HashMap<usize, Option<Made>>,
}

impl Known<'_> {
    fn made(&mut self, past: &Past, node: usize) -> Result<Option<Made>, Done> {
        let step = past.graph.nodes[node].commit;
        if let Some(made) = self.made.get(&step) {
            return Ok(made.clone());
        }
        let made = self.open.made(self.walked.steps[step])?;
        self.made.insert(step, made.clone());
        Ok(made)
    }

    fn of_record(&mut self, past: &Past) -> Result<RecordPast, Done> {
        let mut set = HashMap::new();
        for own in history::blame(past) {
            let made = self.made(past, own.node)?;
            set.insert(own.name, SetBy { made, measured: own.measured });
        }
        let mut edges = vec![false; past.graph.nodes.len()];
        for (node, is_edge) in edges.iter_mut().enumerate() {
            *is_edge = self.made(past, node)?.is_some_and(|made| made.is_edge);
        }
        let asked = Asked { whole: &past.key.id, all_touches: false };
        let rows = history::timeline(past, asked, &|node| edges[node]);
        let rows = rows.into_iter().map(|row| self.row(past, row));
        Ok(RecordPast { set, rows: rows.collect::<Result<_, _>>()? })
    }

    fn row(&mut self, past: &Past, row: Row) -> Result<TimelineRow, Done> {
        let made = self.made(past, row.node)?;
        let mut sides = Vec::new();
        if let Event::Merged { sides: of } | Event::MergedAnew { sides: of } = &row.event {
            for (_, node) in of {
                sides.push(self.made(past, *node)?);
            }
        }
        Ok(TimelineRow { row, made, sides, verdict: None })
    }
}
