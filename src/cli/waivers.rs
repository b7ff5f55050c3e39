//! `waivers`: every waiver, whether it counts, and the next to lapse.

use super::arguments::Waivers;
use super::exit::Exit;
use super::lint::today;
use super::output::Done;
use super::waive;
use crate::model::Place;
use crate::model::Waiver;
use crate::reports;
use crate::reports::WaiverRow;
use crate::rules::Finding;

/// Why a waiver is none that could count: what it lacks has been told by lint.
const NOT_WHOLE: &str = "it does not say what it is for; see tholebook lint";

/// Runs the command.
pub(super) fn run(arguments: &Waivers) -> Done {
    let as_of = arguments.as_of.unwrap_or_else(today);
    let came = match waive::check_all(arguments.book.as_deref(), as_of) {
        Ok(came) => came,
        Err(refused) => return refused,
    };
    let open = &came.open;
    let rows = open
        .book
        .waivers
        .iter()
        .map(|waiver| WaiverRow { waiver, against: against(waiver, &came.checked.findings) });
    let result = reports::waivers(rows.collect(), as_of);
    let exit = if came.settings_are_bad { Exit::Usage } else { Exit::Clear };
    let mut told = open.told.clone();
    told.extend(open.unread());
    Done { exit, result, told }
}

/// Returns what is told of a waiver that doesn't count.
pub(super) fn against<'f>(waiver: &Waiver, findings: &'f [Finding]) -> Option<&'f str> {
    let (Some(finding), Some(_)) = (&waiver.finding, &waiver.rule) else { return Some(NOT_WHOLE) };
    let until = waiver.until.map(|until| until.place);
    let own: Vec<Place> =
        [Some(finding.place), until, waiver.at.map(|at| at.place)].into_iter().flatten().collect();
    let about = |told: &&Finding| {
        told.rule.id.starts_with("waiver-") && own.contains(&told.labels[0].place)
    };
    findings.iter().find(about).map(|told| told.message.as_str())
}
