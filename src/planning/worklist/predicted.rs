//! What differs between the texts of a book and the book after the work, value by value.

use super::bench::Bench;
use super::bench::PlannedBend;
use super::bench::rounded;
use super::step::At;
use super::step::Change;
use super::step::ChangeTo;
use crate::model::Bend;
use crate::model::BentPart;
use crate::model::Boat;
use crate::model::Book;
use crate::model::FileId;
use crate::model::Oar;
use crate::model::OarSet;
use crate::model::Place;
use crate::model::Placed;
use crate::model::Reading;
use crate::model::Seat;
use crate::model::Stated;
use crate::model::Word;
use crate::units::Angle;
use crate::units::Date;
use crate::units::Length;
use crate::units::Slope;
use crate::working::BoatSight;
use crate::working::Unit;

/// Works the stated values out anew where the readings they rest on have changed.
pub(super) fn restate(bench: &mut Bench, before: &Book) {
    for at in bench.seats() {
        let Some(own) = before.boats.iter().find(|boat| boat.file == bench.boat().file) else {
            return;
        };
        let sight = BoatSight::new(before, own);
        let Some(old) = sight.seats().nth(at) else { continue };
        let old = old.sums().map(|sum| sum.worked.ok().map(|budget| budget.value()));
        let new = bench.seat(at).sums();
        let values =
            new.map(|sum| (sum.key, sum.stated, sum.worked.ok().map(|budget| budget.value())));
        for ((key, stated, new), old) in values.into_iter().zip(old) {
            let (Some(stated), Some(new)) = (stated, new) else { continue };
            if old.is_none_or(|old| (old - new).abs() > 1e-9) {
                state(bench.seat_mut(at), key, restated(stated, new));
            }
        }
    }
}

/// Writes the planned bends into her record, and takes those of replaced parts out.
pub(super) fn record_bends(bench: &mut Bench) {
    let replaced = bench.replaced.clone();
    let place = bench.boat().id.place;
    let planned: Vec<Bend> =
        bench.bends.iter().map(|bend| bent(bench.as_of, place, bend)).collect();
    let bends = &mut bench.boat_mut().bends;
    bends.retain(|bend| !of_replaced(bend, &replaced));
    bends.extend(planned);
}

fn bent(date: Date, place: Place, bend: &PlannedBend) -> Bend {
    Bend {
        date: Some(Placed { value: date, place }),
        by: None,
        seat: Some(Placed { value: bend.seat, place }),
        part: Some(Placed { value: bend.part, place }),
        angle: Some(Placed { value: Angle::deg(rounded(bend.degrees, 100.0)), place }),
    }
}

fn of_replaced(bend: &Bend, replaced: &[(u32, BentPart)]) -> bool {
    let part = bend.seat.zip(bend.part).map(|(seat, part)| (seat.value, part.value));
    part.is_some_and(|part| replaced.contains(&part))
}

/// As many decimals as it was written with.
fn restated(stated: Placed<Stated>, value: f64) -> Placed<Stated> {
    let half_digit = stated.value.half_digit;
    let value = (value / (2.0 * half_digit)).round() * 2.0 * half_digit;
    Placed { value: Stated { value, half_digit }, place: stated.place }
}

fn state(seat: &mut Seat, key: &str, stated: Placed<Stated>) {
    let out = &mut seat.worked_out;
    let place = match key {
        "pitch" => &mut out.pitch,
        "handle-past-mark" => &mut out.handle_past_mark,
        "gearing" => &mut out.gearing,
        "clearance" => &mut out.clearance,
        "lean-aft" => &mut out.lean_aft,
        _ => &mut out.lean_out,
    };
    *place = Some(stated);
}

/// Returns every change of a text, the boat's first.
pub(super) fn changes(before: &Book, bench: &Bench) -> Vec<Change> {
    let boat = bench.boat();
    let file = boat.file;
    let mut changes = Vec::new();
    if let Some(own) = before.boats.iter().find(|own| own.file == file) {
        let marked = vec![At::Key("predicted".to_owned())];
        changes.push(Change { file, at: marked, deed: says("true".to_owned()) });
        of_level(file, own, boat, &mut changes);
        for (at, old) in own.seats.iter().enumerate().take(boat.seats.len()) {
            let stated = bench.seat(at).sums().map(|sum| (sum.key, sum.stated, sum.unit));
            of_seat(file, old, &boat.seats[at], &stated, &mut changes);
        }
        of_bends(own, bench, &mut changes);
    }
    for (old, new) in before.oar_sets.iter().zip(&bench.book.oar_sets) {
        of_set(old, new, &mut changes);
    }
    changes
}

fn of_level(file: FileId, old: &Boat, new: &Boat, changes: &mut Vec<Change>) {
    let both = [
        ("trim", &old.rigged.trim, &new.rigged.trim),
        ("roll", &old.rigged.roll, &new.rigged.roll),
    ];
    for (key, old, new) in both {
        if let (true, Some(deed)) = (old != new, new.as_ref().and_then(angle)) {
            let at = ["rigged", "level", key].map(|key| At::Key(key.to_owned())).to_vec();
            changes.push(Change { file, at, deed });
        }
    }
}

fn of_seat(
    file: FileId,
    old: &Seat,
    new: &Seat,
    stated: &[(&'static str, Option<Placed<Stated>>, Unit)],
    changes: &mut Vec<Change>,
) {
    let Some(number) = new.number else { return };
    let mut set = |way: &str, deed: Option<ChangeTo>| {
        let Some(deed) = deed else { return };
        let part = At::Part("seat", number.value.to_string());
        let keys = way.split('/').map(|key| At::Key(key.to_owned()));
        let at = [At::Key("seats".to_owned()), part].into_iter().chain(keys).collect();
        changes.push(Change { file, at, deed });
    };
    let slopes = [
        ("pin/lean/aft", &old.pin.lean.aft, &new.pin.lean.aft),
        ("pin/lean/out", &old.pin.lean.out, &new.pin.lean.out),
        ("pitch/catch", &old.pitch.catch, &new.pitch.catch),
        ("pitch/square", &old.pitch.square, &new.pitch.square),
        ("pitch/finish", &old.pitch.finish, &new.pitch.finish),
    ];
    for (way, _, new) in slopes.into_iter().filter(|(_, old, new)| old != new) {
        set(way, new.as_ref().and_then(slope));
    }
    let lengths = [
        ("rowlock/gap", &old.rowlock.gap, &new.rowlock.gap),
        ("rowlock/after-tip", &old.rowlock.after_tip, &new.rowlock.after_tip),
        ("rowlock/above-seat", &old.rowlock.above_seat, &new.rowlock.above_seat),
        ("handle-past-mark", &old.handle_past_mark, &new.handle_past_mark),
        ("chock-to-pin", &old.chock_to_pin, &new.chock_to_pin),
    ];
    for (way, _, new) in lengths.into_iter().filter(|(_, old, new)| old != new) {
        set(way, new.as_ref().and_then(length));
    }
    let was = |key: &str| match key {
        "pitch" => old.worked_out.pitch,
        "handle-past-mark" => old.worked_out.handle_past_mark,
        "gearing" => old.worked_out.gearing,
        "clearance" => old.worked_out.clearance,
        "lean-aft" => old.worked_out.lean_aft,
        _ => old.worked_out.lean_out,
    };
    for (key, stated, unit) in stated {
        if let Some(stated) = stated.filter(|stated| Some(*stated) != was(key)) {
            set(&format!("worked-out/{key}"), Some(says(stated_text(stated.value, *unit))));
        }
    }
}

fn of_bends(old: &Boat, bench: &Bench, changes: &mut Vec<Change>) {
    let (file, list) = (old.file, At::Key("bends".to_owned()));
    // From the last to the first, so that the numbers of those before stay what they are.
    for (index, bend) in old.bends.iter().enumerate().rev() {
        if of_replaced(bend, &bench.replaced) {
            let at = vec![list.clone(), At::Number(index + 1)];
            changes.push(Change { file, at, deed: ChangeTo::Removed });
        }
    }
    for bend in &bench.bends {
        let keys = vec![
            ("date", bench.as_of.to_string()),
            ("seat", bend.seat.to_string()),
            ("part", bend.part.word().to_owned()),
            ("deg", figure(bend.degrees, 100.0)),
        ];
        changes.push(Change { file, at: vec![list.clone()], deed: ChangeTo::Append(keys) });
    }
}

fn of_set(old: &OarSet, new: &OarSet, changes: &mut Vec<Change>) {
    let both = old.oars.iter().zip(&new.oars);
    let moved = |(old, new): &(&Oar, &Oar)| old.inboard != new.inboard;
    for (_, oar) in both.filter(moved) {
        let (Some(id), Some(deed)) = (&oar.id, oar.inboard.as_ref().and_then(length)) else {
            continue;
        };
        let part = At::Part("oar", id.value.clone());
        let at = vec![At::Key("oars".to_owned()), part, At::Key("inboard".to_owned())];
        changes.push(Change { file: new.file, at, deed });
    }
}

fn length(reading: &Reading<Length>) -> Option<ChangeTo> {
    Some(with_fineness(
        figure(reading.values.first()?.as_mm(), 100.0),
        reading.to.map(|to| figure(to.as_mm(), 1000.0)),
    ))
}

fn angle(reading: &Reading<Angle>) -> Option<ChangeTo> {
    let degrees = |angle: Angle| figure(angle.as_deg(), 1000.0);
    Some(with_fineness(degrees(*reading.values.first()?), reading.to.map(degrees)))
}

fn slope(reading: &Reading<Slope>) -> Option<ChangeTo> {
    let text = |slope: &Slope| match slope {
        Slope::Offset(offset) => figure(offset.as_mm(), 100.0),
        Slope::Over { offset, down } => {
            format!("{} over {}", figure(offset.as_mm(), 100.0), figure(down.as_mm(), 100.0))
        }
        Slope::Angle(angle) => format!("{} deg", figure(angle.as_deg(), 1000.0)),
    };
    Some(with_fineness(text(reading.values.first()?), reading.to.as_ref().map(text)))
}

/// A reading that says itself how finely it was read goes on saying so.
fn with_fineness(says: String, to: Option<String>) -> ChangeTo {
    ChangeTo::Set { says, to }
}

fn says(says: String) -> ChangeTo {
    ChangeTo::Set { says, to: None }
}

/// A number with no more decimals than it has.
fn figure(value: f64, parts: f64) -> String {
    rounded(value, parts).to_string()
}

fn stated_text(stated: Stated, unit: Unit) -> String {
    let places = (-(2.0 * stated.half_digit).log10()).round().max(0.0) as usize;
    let value = format!("{:.places$}", stated.value + 0.0);
    if unit == Unit::Deg { format!("{value} deg") } else { value }
}
