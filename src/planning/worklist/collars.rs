//! Collars are slid so that every handle passes its mark and the oars of the set stay alike.

use super::alike;
use super::alike::Choice;
use super::alike::Item;
use super::alike::Room;
use super::bench::Bench;
use super::bench::is_proven;
use super::bench::set_length;
use super::step::Step;
use super::step::Work;
use crate::model::LimitKey;
use crate::model::Part;
use crate::model::Reading;
use crate::rules::Finding;
use crate::rules::words;
use crate::working::OarSight;

/// The rule of a handle that is not where it should be.
pub(super) const WRONG: &str = "handle-past-mark-wrong";

/// The rule of oars of a set that are not alike.
pub(super) const UNLIKE: &str = "oars-unlike";

/// The oars of the set that take part.
struct Collars {
    /// Each one's place in the set, and its seat, where it has one.
    oars: Vec<(usize, Option<usize>)>,
    items: Vec<Item>,
}

/// Plans the collars of the boat's oars.
pub(super) fn plan(bench: &mut Bench) {
    let wrong: Vec<(usize, Finding)> = bench
        .seats()
        .filter_map(|at| bench.proven_at(WRONG, at).map(|found| (at, found)))
        .collect();
    for at in bench.seats() {
        let seat = bench.seat(at);
        if let Err(lack) = seat.handle_read() {
            let (name, missing) = (seat.name(), lack.to_string());
            bench.not_planned(name, "the collar", missing);
        }
    }
    let collars = collars(bench);
    // Where a waiver lets a handle stand, its oar may be unlike the others.
    let lenient = bench.seats().any(|at| is_waived(bench, at));
    if wrong.is_empty() && (lenient || !is_unlike(bench)) {
        return;
    }
    let alike = bench.limit(LimitKey::OarInboard, Part::Most).unwrap_or(f64::INFINITY);
    let chosen = alike::choose(
        &collars.items,
        alike,
        |_| Room::ALL,
        |moved, to| lenient || stay_alike(bench, &collars, moved, to),
    );
    match chosen {
        Some(choice) => slide_all(bench, &collars, &choice, &wrong),
        None => tell_conflict(bench, &wrong),
    }
}

fn collars(bench: &mut Bench) -> Collars {
    let mut collars = Collars { oars: Vec::new(), items: Vec::new() };
    let Some(set) = set_index(bench) else { return collars };
    for index in 0..bench.book.oar_sets[set].oars.len() {
        let at = bench.seats().find(|at| {
            let oar = bench.seat(*at).oar;
            oar.is_some_and(|oar| oar.place == bench.book.oar_sets[set].oars[index].place)
        });
        if let Some(item) = item(bench, set, index, at) {
            collars.oars.push((index, at));
            collars.items.push(item);
        }
    }
    collars
}

/// An oar whose handle a waiver lets stand takes no part.
fn item(bench: &mut Bench, set: usize, index: usize, at: Option<usize>) -> Option<Item> {
    let oar = &bench.book.oar_sets[set].oars[index];
    let value = OarSight { tools: bench.sight().tools, oar }.inboard().ok()?.value();
    let Some(at) = at else {
        return Some(Item { value, may_stay: true, room: Some(Room::ALL), wish: value });
    };
    if is_waived(bench, at) {
        return None;
    }
    let may_stay = bench.proven_at(WRONG, at).is_none();
    let limit = |part| bench.limit(LimitKey::Handle, part);
    let (least, most) = (limit(Part::Least), limit(Part::Most));
    let seat = bench.seat(at);
    let disagrees = !bench.at_seat("handle-past-mark-disagrees", at).is_empty();
    let (Ok(handle), Ok(dip), false) = (seat.handle_read(), seat.at.dip(), disagrees) else {
        if !may_stay {
            let name = seat.name();
            let why = "the handle as read and as worked out disagree: measure both again first";
            bench.not_planned(name, "the collar", why.to_owned());
        }
        return Some(Item { value, may_stay: true, room: None, wish: value });
    };
    let cos = dip.value().to_radians().cos();
    let inboard = |past: f64| value + (past - handle.value()) / cos;
    let aim = match (least, most) {
        (Some(least), Some(most)) => f64::midpoint(least, most),
        (least, most) => least.or(most).unwrap_or(handle.value()),
    };
    let room = Room {
        least: least.map_or(f64::NEG_INFINITY, inboard),
        most: most.map_or(f64::INFINITY, inboard),
    };
    Some(Item { value, may_stay, room: Some(room), wish: inboard(aim) })
}

fn is_waived(bench: &Bench, at: usize) -> bool {
    bench.is_waived(WRONG, &bench.seat(at).name().at("handle-past-mark"))
}

fn set_index(bench: &Bench) -> Option<usize> {
    let id = &bench.boat().oars.as_ref()?.value;
    bench.book.oar_sets.iter().position(|set| set.id.value == *id)
}

/// Whether the set's inboards are proven to be unlike.
fn is_unlike(bench: &Bench) -> bool {
    let Some(set) = bench.boat().oars.as_ref().map(|set| set.value.clone()) else { return false };
    let found = bench.at_boat(UNLIKE);
    let own = |finding: &&Finding| finding.name.is_within(&format!("{set}/*/inboard"));
    found.iter().filter(own).any(is_proven)
}

fn stay_alike(bench: &mut Bench, collars: &Collars, moved: &[bool], to: f64) -> bool {
    let Some(set) = set_index(bench) else { return true };
    let before = bench.book.oar_sets[set].oars.clone();
    for ((index, _), _) in collars.oars.iter().zip(moved).filter(|(_, moved)| **moved) {
        set_length(&mut bench.book.oar_sets[set].oars[*index].inboard, to);
    }
    let unlike = is_unlike(bench);
    bench.book.oar_sets[set].oars = before;
    !unlike
}

fn slide_all(bench: &mut Bench, collars: &Collars, choice: &Choice, wrong: &[(usize, Finding)]) {
    let why = why(bench, choice);
    for (item, (index, at)) in collars.oars.iter().enumerate() {
        if choice.moved[item] {
            let found = wrong.iter().find(|(wrong, _)| Some(*wrong) == *at);
            let because = found.map_or_else(
                || format!("It goes with the others, so that the oars stay alike. {why}"),
                |(_, found)| format!("{}. {why}", found.message),
            );
            slide(bench, (*index, *at), choice.to - collars.items[item].value, because);
        }
    }
}

fn slide(bench: &mut Bench, (index, at): (usize, Option<usize>), by: f64, because: String) {
    let Some(set) = set_index(bench) else { return };
    let cos = bench.sight().dip().map_or(1.0, |dip| dip.value().to_radians().cos());
    let oar = &mut bench.book.oar_sets[set].oars[index];
    let called = oar.called().to_owned();
    let inboard = oar.inboard.as_ref().map_or(0.0, Reading::mean) + by;
    set_length(&mut oar.inboard, inboard);
    let mut passes = String::new();
    if let Some(at) = at {
        let own = &mut bench.seat_mut(at).handle_past_mark;
        let handle = own.as_ref().map_or(0.0, Reading::mean) + by * cos;
        set_length(own, handle);
        passes = format!("; the handle then reads {} past the mark", words::number(handle, "mm"));
    }
    let way = if by > 0.0 { "towards the blade" } else { "towards the handle" };
    let deed = format!(
        "Slide the collar of oar {called} {way} by {}, to an inboard of {}{passes}.",
        words::number(by.abs(), "mm"),
        words::number(inboard, "mm")
    );
    let amounts = vec![("slide_mm", by), ("inboard_mm", inboard)];
    let seat = at.and_then(|at| bench.number(at));
    bench.step(Step { work: Work::SlideCollar, seat, oar: Some(called), deed, because, amounts });
}

fn why(bench: &Bench, choice: &Choice) -> String {
    let moved = choice.moved.iter().filter(|moved| **moved).count();
    let others: Vec<&str> = set_index(bench).map_or(Vec::new(), |set| {
        let boats = bench.book.boats_with(&bench.book.oar_sets[set]);
        let others = boats.filter(|boat| boat.id.value != bench.boat().id.value);
        others.map(|boat| boat.called()).collect()
    });
    let shared = match others.as_slice() {
        [] => String::new(),
        others => {
            format!(" The set is also carried by {}: her handles move with it.", others.join(", "))
        }
    };
    format!(
        "The fewest collars that bring every handle to its mark with the oars alike: {moved} of {}, to the common inboard nearest to the aim.{shared}",
        choice.moved.len()
    )
}

fn tell_conflict(bench: &mut Bench, wrong: &[(usize, Finding)]) {
    let limits = [
        bench.limit_words(LimitKey::Handle, Part::Least, "mm"),
        bench.limit_words(LimitKey::Handle, Part::Most, "mm"),
        bench.limit_words(LimitKey::OarInboard, Part::Most, "mm"),
    ];
    let seats: Vec<String> = wrong.iter().map(|(at, _)| bench.seat(*at).short()).collect();
    let name = bench.boat().record();
    let says = format!(
        "{}: no inboard brings every handle to its mark while the oars stay alike ({}). The spread or the seat marks differ: read both again, and move the pins if they do",
        seats.join(", "),
        limits.join("; ")
    );
    bench.conflict(name, says);
}
