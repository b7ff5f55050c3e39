//! Oars tried in rowlocks as JSON: a contract, key by key; nothing is folded.

use serde::Serialize;

use super::json::FORMAT_VERSION;
use super::matching_words::counts;
use super::shown;
use crate::model::Word as _;
use crate::planning::matching::Figure;
use crate::planning::matching::Match;
use crate::planning::matching::NotFound;
use crate::planning::matching::SeatMatch;
use crate::planning::matching::Tried;
use crate::planning::matching::Wanted;
use crate::planning::matching::Whose;
use crate::working::Worked;

#[derive(Serialize)]
struct Root<'r> {
    format_version: u32,
    matches: Vec<MatchJson<'r>>,
    not_found: Vec<NotFoundJson<'r>>,
    summary: Summary,
}

#[derive(Serialize)]
struct Summary {
    clears: usize,
    loose: usize,
    unknown: usize,
    tight: usize,
}

#[derive(Serialize)]
struct MatchJson<'r> {
    boat: &'r str,
    out_of_use: bool,
    oar_set: &'r str,
    carried: bool,
    verdict: &'static str,
    seats: Vec<SeatJson<'r>>,
}

#[derive(Serialize)]
struct SeatJson<'r> {
    seat: Option<u32>,
    oars: Vec<OarJson<'r>>,
}

#[derive(Serialize)]
struct OarJson<'r> {
    oar: Option<&'r str>,
    whose: &'static str,
    state: Option<&'static str>,
    unfit: bool,
    verdict: &'static str,
    proven: bool,
    decided_by: Option<DecidedJson<'r>>,
    unknown: Option<String>,
    clearance_mm: Option<Value>,
    clearance_in_roll_mm: Option<Value>,
    looseness_mm: Option<Value>,
    bed_fraction: Option<Value>,
    handle_past_mark_computed_mm: Option<Value>,
    gearing: Option<Value>,
}

#[derive(Serialize)]
struct DecidedJson<'r> {
    figure: &'static str,
    beyond_mm: f64,
    limit_mm: f64,
    from: &'r str,
    source: &'r str,
}

/// What a boat names and nothing has: her set where no oar is told, else an oar of it.
#[derive(Serialize)]
struct NotFoundJson<'r> {
    boat: &'r str,
    oar_set: Option<&'r str>,
    oar: Option<&'r str>,
    whose: Option<&'static str>,
}

#[derive(Serialize)]
struct Value {
    number: f64,
    uncertainty: f64,
}

/// Returns every oar of each set in every rowlock of each boat as JSON, on one line. What can't be
/// worked out is null.
#[must_use]
pub fn matching_json(matches: &[Match], not_found: &[NotFound]) -> String {
    let [clears, loose, unknown, tight] = counts(matches);
    let summary = Summary { clears, loose, unknown, tight };
    let matches = matches.iter().map(one).collect();
    let not_found = not_found.iter().map(lacking).collect();
    shown::json(&Root { format_version: FORMAT_VERSION, matches, not_found, summary })
}

fn lacking<'r>(lacks: &NotFound<'r>) -> NotFoundJson<'r> {
    let (oar, whose) = match lacks.wanted {
        Wanted::Set(_) => (None, None),
        Wanted::Oar(oar, whose) => (Some(oar), Some(word(whose))),
    };
    NotFoundJson { boat: &lacks.boat.id.value, oar_set: lacks.set, oar, whose }
}

fn word(whose: Whose) -> &'static str {
    match whose {
        Whose::Own => "own",
        Whose::Spare => "spare",
        Whose::Other => "other",
    }
}

fn one<'r>(of: &'r Match) -> MatchJson<'r> {
    MatchJson {
        boat: &of.boat.boat.id.value,
        out_of_use: of.boat.boat.is_out_of_use(),
        oar_set: &of.set.id.value,
        carried: of.is_carried(),
        verdict: of.suits().word(),
        seats: of.seats.iter().map(seat).collect(),
    }
}

fn seat<'r>(seat: &'r SeatMatch) -> SeatJson<'r> {
    SeatJson {
        seat: seat.seat.seat.number.map(|number| number.value),
        oars: seat.oars.iter().map(oar).collect(),
    }
}

fn oar<'r>(tried: &'r Tried) -> OarJson<'r> {
    let decided = &tried.decided;
    OarJson {
        oar: tried.oar.id.as_ref().map(|id| id.value.as_str()),
        whose: word(tried.whose),
        state: tried.oar.state.map(|state| state.value.word()),
        unfit: tried.is_unfit(),
        verdict: decided.suits.word(),
        proven: decided.proven,
        decided_by: decided.by.as_ref().map(|(figure, limit)| DecidedJson {
            figure: match figure {
                Figure::Clearance => "clearance_mm",
                Figure::Looseness => "looseness_mm",
            },
            beyond_mm: decided.beyond,
            limit_mm: limit.value,
            from: &limit.from,
            source: &limit.source,
        }),
        unknown: decided.why.as_ref().map(ToString::to_string),
        clearance_mm: value(&tried.clearance),
        clearance_in_roll_mm: value(&tried.in_roll),
        looseness_mm: value(&tried.looseness),
        bed_fraction: tried.bed.as_ref().and_then(value),
        handle_past_mark_computed_mm: value(&tried.handle.past_mark),
        gearing: value(&tried.gearing),
    }
}

fn value(worked: &Worked) -> Option<Value> {
    let budget = worked.as_ref().ok()?;
    Some(Value { number: budget.value(), uncertainty: budget.expanded() })
}
