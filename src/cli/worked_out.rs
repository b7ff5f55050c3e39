//! The refusal for a name of what is worked out: it is not written, so nobody ever changed it.

use std::collections::BTreeSet;

use super::exit::Exit;
use super::open_past::OpenPast;
use super::output::Done;
use super::verdicts::Judge;
use crate::history::Past;
use crate::history::Walked;
use crate::model::Name;
use crate::reports::shown;

/// How many readings are named that it rests on.
const MOST: usize = 8;

/// Returns the refusal for a name, where that is what it names at the last step.
pub(super) fn refusal(
    open: &OpenPast,
    walked: &Walked,
    past: &Past,
    whole: &str,
) -> Result<Option<Done>, Done> {
    let Some(step) = walked.steps.last().copied() else { return Ok(None) };
    let mut judge = Judge::new(open, walked, past, whole);
    let Some(then) = judge.then(step, None)? else { return Ok(None) };
    let readings: BTreeSet<&Name> = then.rests_on(whole);
    let is_written_so = whole.split('/').any(|part| part == "worked-out");
    if readings.is_empty() && !is_written_so {
        return Ok(None);
    }
    let (name, id) = (shown::line(whole), shown::line(&past.key.id));
    let mut told = open.told.clone();
    told.push(format!("{name} is worked out, not written, so it has no history of its own."));
    let ask: Vec<String> =
        readings.iter().take(MOST).map(|own| shown::line(own.as_str())).collect();
    told.push(match ask.is_empty() {
        true => format!("Ask for the readings it rests on: tholebook blame {id}"),
        false => {
            let more = if readings.len() > MOST { " and more" } else { "" };
            format!("It rests on {}{more}. Ask for one: tholebook history NAME", ask.join(", "))
        }
    });
    let asked = name.replace("/worked-out", "");
    told.push(format!("How it is worked out: tholebook why {asked}"));
    Ok(Some(Done::refused(Exit::Usage, told)))
}
