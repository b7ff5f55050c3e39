//! What the readings at a seat can tell of her pin, and what to measure next, as JSON.

use serde::Serialize;

use crate::working::Doubt;
use crate::working::LeanTold;
use crate::working::LeanWay;
use crate::working::Next;
use crate::working::SeatSight;
use crate::working::Worked;
use crate::working::is_told;

/// What the readings can tell apart.
#[derive(Serialize)]
pub(super) struct CanTell {
    lean_aft_deg: LeanJson,
    lean_out_deg: LeanJson,
    /// The part of a lean fore and aft that shows in the blade at the oar angles of the readings.
    aft_shown: Option<f64>,
}

#[derive(Serialize)]
struct LeanJson {
    most: Option<f64>,
    by_blade: Option<WayJson>,
    plumbed: Option<WayJson>,
}

/// How good a lean is by one way, and whether that tells it.
#[derive(Serialize)]
struct WayJson {
    uncertainty: f64,
    told: bool,
}

/// One measurement and how good each of the three would be with it.
#[derive(Serialize)]
pub(super) struct NextJson {
    measure: &'static str,
    words: &'static str,
    lean_aft_deg: NowThen,
    lean_out_deg: NowThen,
    rig_pitch_deg: NowThen,
    removes_deg: Option<f64>,
}

/// Uncertainties; null where nothing is known.
#[derive(Serialize)]
struct NowThen {
    now: Option<f64>,
    then: Option<f64>,
}

/// Returns what the readings of a seat can tell apart.
pub(super) fn can_tell(seat: &SeatSight) -> CanTell {
    let [aft, out] = LeanWay::ALL.map(|way| lean(&seat.lean_told(way)));
    CanTell { lean_aft_deg: aft, lean_out_deg: out, aft_shown: seat.aft_shown() }
}

fn lean(told: &LeanTold) -> LeanJson {
    let way = |worked: &Worked| {
        let budget = worked.as_ref().ok()?;
        Some(WayJson { uncertainty: budget.expanded(), told: is_told(budget, told.limit) })
    };
    LeanJson { most: told.limit, by_blade: way(&told.by_blade), plumbed: way(&told.plumbed) }
}

/// Returns what to measure next, the one that removes most doubt first.
pub(super) fn measure_next(seat: &SeatSight) -> Vec<NextJson> {
    let now = seat.doubt();
    seat.measure_next().iter().map(|next| one(now, next)).collect()
}

fn one(now: Doubt, next: &Next) -> NextJson {
    let then = next.then;
    let alike = now.unknown() == then.unknown();
    NextJson {
        measure: next.what.word(),
        words: next.what.words(),
        lean_aft_deg: NowThen { now: now.aft, then: then.aft },
        lean_out_deg: NowThen { now: now.out, then: then.out },
        rig_pitch_deg: NowThen { now: now.rig_pitch, then: then.rig_pitch },
        removes_deg: alike.then(|| now.total() - then.total()),
    }
}
