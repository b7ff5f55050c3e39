//! What the readings at a boat's seats can tell of her pins, and what to measure next, in words.
//! Works nothing out.

use super::shown;
use crate::working::BoatSight;
use crate::working::Doubt;
use crate::working::LeanTold;
use crate::working::LeanWay;
use crate::working::Next;
use crate::working::SeatSight;
use crate::working::is_told;

/// So many measurements are offered; what removes less is left out.
const OFFERED: usize = 4;

/// Seats of which the same is told.
pub(super) struct Told {
    /// What the seats are called: "seats 1, 2, 4".
    pub(super) seats: String,
    /// What the readings tell, in sentences.
    pub(super) tells: Vec<String>,
    /// What to measure next, the one that removes most doubt first.
    pub(super) next: Vec<String>,
}

/// Returns what is told of each seat, the seats of which the same is told together.
pub(super) fn of_boat(boat: &BoatSight) -> Vec<Told> {
    let mut all: Vec<(Vec<String>, Vec<String>, Vec<String>)> = Vec::new();
    for seat in boat.seats() {
        let number = seat.seat.number.map_or("?".to_owned(), |number| number.value.to_string());
        let (tells, next) = (tells(&seat), next(&seat, false));
        match all.iter_mut().find(|(_, own, then)| *own == tells && *then == next) {
            Some((seats, ..)) => seats.push(number),
            None => all.push((vec![number], tells, next)),
        }
    }
    let told = |(seats, tells, next): (Vec<String>, _, _)| {
        let word = if seats.len() == 1 { "seat" } else { "seats" };
        Told { seats: format!("{word} {}", seats.join(", ")), tells, next }
    };
    all.into_iter().map(told).collect()
}

/// Returns what a seat's readings tell of her pin, and what they can't tell, in sentences.
pub(super) fn tells(seat: &SeatSight) -> Vec<String> {
    let leans = LeanWay::ALL.map(|way| (way, seat.lean_told(way)));
    let mut lines = vec![by_blade(seat, &leans)];
    lines.push(by_bob(&leans));
    lines
}

fn by_blade(seat: &SeatSight, leans: &[(LeanWay, LeanTold); 2]) -> String {
    if let Err(lack) = &leans[0].1.by_blade {
        return format!("The blade tells nothing of the pin: {}.", shown::line(&lack.to_string()));
    }
    let told: Vec<String> = leans.iter().filter_map(|own| one(own, true)).collect();
    let untold: Vec<String> = leans.iter().filter_map(|own| one(own, false)).collect();
    let tells = match (told.is_empty(), untold.is_empty()) {
        (false, true) => format!("The blade tells the lean {}.", told.join(" and ")),
        (true, _) => format!("The blade can't tell the lean {}.", untold.join(" or ")),
        (false, false) => format!(
            "The blade tells the lean {}, but can't tell it {}.",
            told.join(" and "),
            untold.join(" or ")
        ),
    };
    format!("{tells}{}", as_pitch(seat))
}

/// Only the bow of the curve tells a lean aft from pitch of the rowlock.
fn as_pitch(seat: &SeatSight) -> String {
    seat.aft_shown().map_or(String::new(), |shown| {
        format!(
            " At these oar angles only {:.0} % of a lean fore and aft shows; the rest looks like \
             pitch of the rowlock.",
            100.0 * shown
        )
    })
}

/// A lean by the blade, where it is told, or where it isn't.
fn one((way, lean): &(LeanWay, LeanTold), told: bool) -> Option<String> {
    let budget = lean.by_blade.as_ref().ok()?;
    let limit =
        lean.limit.map_or("its limit".to_owned(), |limit| format!("the limit of {limit} deg"));
    let good = format!("{} (good to ± {:.2} deg", way.words(), budget.expanded());
    match is_told(budget, lean.limit) {
        is if is != told => None,
        true => Some(format!("{good})")),
        false => Some(format!("{good}, coarser than {limit})")),
    }
}

fn by_bob(leans: &[(LeanWay, LeanTold); 2]) -> String {
    let good = |(way, lean): &(LeanWay, LeanTold)| {
        let good = lean.plumbed.as_ref().ok()?.expanded();
        Some(format!("{} to ± {good:.2} deg", way.words()))
    };
    let all: Vec<String> = leans.iter().filter_map(good).collect();
    let lacks = leans.iter().filter_map(|(_, lean)| lean.plumbed.as_ref().err());
    let mut lacks: Vec<String> = lacks.map(|lack| shown::line(&lack.to_string())).collect();
    lacks.dedup();
    let lack = (!lacks.is_empty()).then(|| lacks.join("; "));
    match (all.as_slice(), lack) {
        ([], lack) => format!("The bob tells nothing: {}.", lack.unwrap_or_default()),
        (all, Some(lack)) => format!("The bob tells it {}; {lack}.", all.join(" and ")),
        (all, None) => format!("The bob tells it {}.", all.join(" and ")),
    }
}

/// Returns what to measure next, each with what it would remove; where both leans are told already,
/// only the one that would remove most, unless all are asked for.
pub(super) fn next(seat: &SeatSight, all: bool) -> Vec<String> {
    let (now, measurements) = (seat.doubt(), seat.measure_next());
    let offered = if all || !all_is_told(seat) { OFFERED } else { 1 };
    let each = measurements.iter().take(offered);
    each.map(|next| format!("{}: {}", capital(next), wins(now, next))).collect()
}

/// Returns whether both leans are told, by the blade or by the bob.
fn all_is_told(seat: &SeatSight) -> bool {
    let told = |way| {
        let LeanTold { by_blade, plumbed, limit } = seat.lean_told(way);
        let ways = [by_blade, plumbed].into_iter().flatten();
        ways.into_iter().any(|lean| is_told(&lean, limit))
    };
    LeanWay::ALL.into_iter().all(told)
}

/// Returns what stands above the list of measurements.
pub(super) fn heading(next: &[String]) -> &'static str {
    match next {
        [] => "Nothing one can do on a beach would tell more.",
        [_] => "To tell more:",
        _ => "Measure next, what removes most doubt first; each by itself:",
    }
}

fn capital(next: &Next) -> String {
    let words = next.what.words();
    format!("{}{}", words[..1].to_uppercase(), &words[1..])
}

/// What a measurement would do to each of the three that it changes.
fn wins(now: Doubt, next: &Next) -> String {
    let called = ["fore and aft", "in and out", "rowlock and oar"];
    let changed = now.each().into_iter().zip(next.then.each()).zip(called);
    let said = changed.filter_map(|((now, then), called)| {
        let then = format!("{:.2}", then?);
        match now.map(|now| format!("{now:.2}")) {
            Some(now) if now == then => None,
            Some(now) => Some(format!("{called} from ± {now} to ± {then} deg")),
            None => Some(format!("{called}, which is not known now, to ± {then} deg")),
        }
    });
    said.collect::<Vec<_>>().join(", ")
}
