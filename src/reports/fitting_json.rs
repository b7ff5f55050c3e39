//! A crew seated in her boat as JSON: a contract, key by key.

use serde::Serialize;

use super::json::FORMAT_VERSION;
use super::shown;
use crate::planning::fitting::Arc;
use crate::planning::fitting::Assumed;
use crate::planning::fitting::Calibration;
use crate::planning::fitting::Doubt;
use crate::planning::fitting::Fit;
use crate::planning::fitting::Remains;
use crate::planning::fitting::Seated;
use crate::planning::fitting::StoppedBy;
use crate::planning::fitting::Worth;

#[derive(Serialize)]
struct Root<'r> {
    format_version: u32,
    crew: &'r str,
    boat: &'r str,
    rowers: Vec<RowerJson<'r>>,
    foot_holes: Option<usize>,
    foot_holes_unknown: Option<String>,
    spread_now_deg: Option<Value>,
    spread_deg: Option<Value>,
    gain_deg: Option<Value>,
    worth: Option<&'static str>,
    remains: Option<RemainsJson>,
    swap: Option<SwapJson>,
    measured: Measured,
    assumed: Vec<AssumedJson>,
}

#[derive(Serialize)]
struct Value {
    number: f64,
    uncertainty: f64,
}

#[derive(Serialize)]
struct RowerJson<'r> {
    seat: Option<u32>,
    who: Option<&'r str>,
    #[serde(flatten)]
    arc: Option<ArcJson>,
    unknown: Option<String>,
}

/// Finish abaft square and catch forward of square, both positive, as a crew's record has them.
#[derive(Serialize)]
struct ArcJson {
    foot_hole: Option<u32>,
    foot_hole_now: Option<u32>,
    foot_hole_best: Option<u32>,
    stopped_by: &'static str,
    leg_room_mm: Option<Value>,
    finish_deg: Value,
    finish_measured: bool,
    finish_off_mean_deg: Value,
    catch_deg: Option<Value>,
    catch_measured: bool,
    catch_unknown: Option<String>,
    arc_unused: bool,
}

#[derive(Serialize)]
struct RemainsJson {
    shortest: Option<u32>,
    longest: Option<u32>,
    whole_deg: f64,
    by_chocks_deg: f64,
    by_levers_deg: f64,
    by_legs_deg: f64,
    by_bodies_deg: f64,
    one_hole_deg: Option<f64>,
    chocks_alike: ChocksJson,
}

#[derive(Serialize)]
struct ChocksJson {
    chock_to_pin_mm: f64,
    spread_deg: Value,
    gain_deg: Value,
    worth: &'static str,
}

#[derive(Serialize)]
struct SwapJson {
    seats: [Option<u32>; 2],
    spread_deg: Value,
    gain_deg: Value,
    worth: &'static str,
}

#[derive(Serialize)]
struct Measured {
    finishes: CalibrationJson,
    catches: CalibrationJson,
}

#[derive(Serialize)]
struct CalibrationJson {
    measured: usize,
    moved_deg: Option<Value>,
}

#[derive(Serialize)]
struct AssumedJson {
    what: &'static str,
    number: f64,
    half_width_of_all: f64,
    half_width_of_one: f64,
}

/// Returns a crew seated in her boat as JSON, on one line.
#[must_use]
pub fn fitting_json(fit: &Fit) -> String {
    let positive = |doubt: &Option<Doubt>| doubt.as_ref().map(|doubt| value(doubt, 1.0));
    shown::json(&Root {
        format_version: FORMAT_VERSION,
        crew: &fit.crew.id.value,
        boat: &fit.boat.boat.id.value,
        rowers: fit.rowers.iter().map(rower).collect(),
        foot_holes: fit.holes.as_ref().ok().copied(),
        foot_holes_unknown: fit.holes.as_ref().err().map(ToString::to_string),
        spread_now_deg: positive(&fit.spread_now),
        spread_deg: positive(&fit.spread),
        gain_deg: positive(&fit.gain),
        worth: fit.worth.map(worth),
        remains: fit.remains.as_ref().map(|remains| remaining(fit, remains)),
        swap: fit.swap.as_ref().map(|swap| SwapJson {
            seats: swap.rowers.map(|at| seat_of(fit, at)),
            spread_deg: value(&swap.spread, 1.0),
            gain_deg: value(&swap.gain, 1.0),
            worth: worth(swap.worth),
        }),
        measured: Measured {
            finishes: calibration(&fit.finishes, -1.0),
            catches: calibration(&fit.catches, 1.0),
        },
        assumed: fit.assumed.iter().map(|what| assumed(*what)).collect(),
    })
}

fn value(doubt: &Doubt, sign: f64) -> Value {
    Value { number: sign * doubt.value(), uncertainty: doubt.expanded() }
}

fn worth(worth: Worth) -> &'static str {
    match worth {
        Worth::Sure => "sure",
        Worth::Perhaps => "perhaps",
        Worth::No => "no",
    }
}

fn seat_of(fit: &Fit, at: usize) -> Option<u32> {
    fit.rowers[at].rower.seat.map(|seat| seat.value)
}

fn rower<'r>(seated: &'r Seated) -> RowerJson<'r> {
    RowerJson {
        seat: seated.rower.seat.map(|seat| seat.value),
        who: seated.rower.who.as_ref().map(|who| who.value.as_str()),
        arc: seated.arc.as_ref().ok().map(arc),
        unknown: seated.arc.as_ref().err().map(ToString::to_string),
    }
}

fn arc(arc: &Arc) -> ArcJson {
    ArcJson {
        foot_hole: arc.hole,
        foot_hole_now: arc.now,
        foot_hole_best: arc.best_hole,
        stopped_by: match arc.stopped_by {
            StoppedBy::Chock => "chock",
            StoppedBy::Legs => "legs",
        },
        leg_room_mm: arc.leg_room.as_ref().map(|room| value(room, 1.0)),
        finish_deg: value(&arc.finish, -1.0),
        finish_measured: arc.finish_measured,
        finish_off_mean_deg: value(&arc.finish_off_mean, -1.0),
        catch_deg: arc.catch.as_ref().ok().map(|catch| value(catch, 1.0)),
        catch_measured: arc.catch_measured,
        catch_unknown: arc.catch.as_ref().err().map(ToString::to_string),
        arc_unused: arc.arc_unused,
    }
}

fn remaining(fit: &Fit, remains: &Remains) -> RemainsJson {
    let alike = &remains.chocks_alike;
    RemainsJson {
        shortest: seat_of(fit, remains.shortest),
        longest: seat_of(fit, remains.longest),
        whole_deg: remains.whole,
        by_chocks_deg: remains.by_chocks,
        by_levers_deg: remains.by_levers,
        by_legs_deg: remains.by_legs,
        by_bodies_deg: remains.by_bodies,
        one_hole_deg: remains.one_hole,
        chocks_alike: ChocksJson {
            chock_to_pin_mm: alike.chock,
            spread_deg: value(&alike.spread, 1.0),
            gain_deg: value(&alike.gain, 1.0),
            worth: worth(alike.worth),
        },
    }
}

fn calibration(calibration: &Calibration, sign: f64) -> CalibrationJson {
    let moved_deg = calibration.moved.as_ref().map(|moved| value(moved, sign));
    CalibrationJson { measured: calibration.measured, moved_deg }
}

fn assumed(what: Assumed) -> AssumedJson {
    let [half_width_of_all, half_width_of_one] = what.half_widths();
    AssumedJson { what: what.key(), number: what.value(), half_width_of_all, half_width_of_one }
}
