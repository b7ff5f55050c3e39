//! One common pitch such that the fewest forward horns are bent, and those the least.

use super::alike;
use super::alike::Choice;
use super::alike::Item;
use super::alike::Room;
use super::bench::Bench;
use super::bench::set_length;
use super::blade::Blade;
use super::pins::move_blade;
use super::step::Step;
use crate::geometry::Side;
use crate::geometry::correction::tip_move;
use crate::model::BentPart;
use crate::model::LimitKey;
use crate::model::Part;
use crate::model::Reading;
use crate::rules::words;
use crate::units::Angle;
use crate::units::Length;
use crate::units::Slope;
use crate::working::Attitude;
use crate::working::SeatSight;

/// The blades that a rowlock sets, with their seats counted from 0.
struct Blades {
    seats: Vec<usize>,
    sides: Vec<Option<Side>>,
    items: Vec<Item>,
}

/// Plans the pitch of all blades together.
pub(super) fn plan(bench: &mut Bench) {
    let blades = blades(bench);
    if blades.seats.is_empty() {
        return;
    }
    let Some(choice) = chosen(bench, &blades) else {
        let name = bench.boat().record();
        let limits = [
            bench.limit_words(LimitKey::Pitch, Part::Least, "deg"),
            bench.limit_words(LimitKey::Pitch, Part::Most, "deg"),
            bench.limit_words(LimitKey::PitchMatch, Part::Most, "deg"),
            bench.limit_words(LimitKey::Sides, Part::Most, "deg"),
        ];
        let says = format!("no common pitch keeps all of her limits: {}", limits.join("; "));
        return bench.conflict(name, says);
    };
    let why = why(bench, &blades, &choice);
    for (index, at) in blades.seats.iter().enumerate() {
        if choice.moved[index] {
            bend(bench, *at, &choice, &why);
        }
    }
}

fn blades(bench: &mut Bench) -> Blades {
    let limit = |part| bench.limit(LimitKey::Pitch, part);
    let band = Room {
        least: limit(Part::Least).unwrap_or(f64::NEG_INFINITY),
        most: limit(Part::Most).unwrap_or(f64::INFINITY),
    };
    let mut blades = Blades { seats: Vec::new(), sides: Vec::new(), items: Vec::new() };
    for at in bench.seats() {
        let seat = bench.seat(at);
        if seat.hands_set_pitch() {
            continue;
        }
        match seat.pitch(Attitude::Square) {
            Ok(pitch) => {
                let value = pitch.value();
                let may_stay = bench.proven_at("pitch-out-of-range", at).is_none();
                blades.seats.push(at);
                blades.sides.push(seat.seat.side.map(|side| side.value));
                blades.items.push(Item { value, may_stay, room: Some(band), wish: value });
            }
            Err(lack) => {
                let name = seat.name();
                bench.not_planned(name, "the pitch", lack.to_string());
            }
        }
    }
    blades
}

/// Chooses with the sides alike for sure; where fewer bends leave them too close to call, with that.
fn chosen(bench: &mut Bench, blades: &Blades) -> Option<Choice> {
    let alike = bench.limit(LimitKey::PitchMatch, Part::Most).unwrap_or(f64::INFINITY);
    let sides = bench.limit(LimitKey::Sides, Part::Most).unwrap_or(f64::INFINITY);
    let good_to = bench.sight().side_difference().map_or(0.0, |apart| apart.expanded());
    let mut with = |sides: f64| {
        let also = |moved: &[bool]| room_by_sides(blades, moved, sides);
        alike::choose(&blades.items, alike, also, |moved, to| holds(bench, blades, moved, to))
    };
    let bends = |choice: &Choice| choice.moved.iter().filter(|moved| **moved).count();
    match (with(sides), with(sides + good_to)) {
        (Some(sure), Some(close)) if bends(&close) < bends(&sure) => Some(close),
        (sure, close) => sure.or(close),
    }
}

/// Returns where a common pitch keeps the mean of port within so much of the mean of starboard.
fn room_by_sides(blades: &Blades, moved: &[bool], most: f64) -> Room {
    let mean = |side: Side| {
        let mine = |at: &usize| blades.sides[*at] == Some(side);
        let own: Vec<usize> = (0..moved.len()).filter(mine).collect();
        let kept: f64 =
            own.iter().filter(|at| !moved[**at]).map(|at| blades.items[*at].value).sum();
        let bent = own.iter().filter(|at| moved[**at]).count() as f64;
        let count = own.len() as f64;
        (count > 0.0).then(|| (kept / count, bent / count))
    };
    let (Some(port), Some(starboard)) = (mean(Side::Port), mean(Side::Starboard)) else {
        return Room::ALL;
    };
    let (apart, slope) = (port.0 - starboard.0, port.1 - starboard.1);
    if moved.iter().all(|moved| !moved) {
        return Room::ALL;
    }
    if slope.abs() <= 0.0 {
        let none = Room { least: f64::INFINITY, most: f64::NEG_INFINITY };
        return if apart.abs() <= most { Room::ALL } else { none };
    }
    let (one, other) = ((-most - apart) / slope, (most - apart) / slope);
    Room { least: one.min(other), most: one.max(other) }
}

/// Asks the rules about a choice: nothing may be proven against the blades.
fn holds(bench: &mut Bench, blades: &Blades, moved: &[bool], to: f64) -> bool {
    let before: Vec<_> =
        blades.seats.iter().map(|at| bench.boat().seats[*at].pitch.clone()).collect();
    for (at, _) in blades.seats.iter().zip(moved).filter(|(_, moved)| **moved) {
        pitch_at(bench, *at, to);
    }
    let holds = !bench.is_proven("pitch-mismatch") && !bench.is_proven("sides-unequal");
    for (at, before) in blades.seats.iter().zip(before) {
        bench.seat_mut(*at).pitch = before;
    }
    holds
}

fn pitch_at(bench: &mut Bench, at: usize, to: f64) {
    if let Some(blade) = Blade::of(&bench.seat(at)) {
        move_blade(bench, at, &blade, &blade.with_square(to));
    }
}

fn bend(bench: &mut Bench, at: usize, choice: &Choice, why: &str) {
    let seat = bench.seat(at);
    let Ok(now) = seat.pitch(Attitude::Square).map(|pitch| pitch.value()) else { return };
    let change = choice.to - now;
    let (room, number) = (room_words(&seat, now, choice), bench.number(at));
    let horn = seat.seat.rowlock.horn.as_ref().map(|horn| Length::mm(horn.mean()));
    let tip = horn.map(|horn| tip_move(horn, Angle::deg(change.abs())).as_mm());
    let (work, often) = bench.bend(at, BentPart::ForwardHorn, change);
    pitch_at(bench, at, choice.to);
    let way = if change > 0.0 { "to the stern" } else { "to the bow" };
    let degrees = words::number(change.abs(), "deg");
    let tip_words =
        tip.map_or(String::new(), |tip| format!(" ({} at its tip)", words::number(tip, "mm")));
    let until = reading_words(&bench.seat(at), choice.to);
    let deed = format!(
        "Bend the forward horn, its top {way} by {degrees}{tip_words}, until the blade reads {until} square off{room}."
    );
    let gap = gap_moved(bench, at, tip.map(|tip| -tip * change.signum()));
    let from = format!(
        "The pitch goes from {} to {}. ",
        words::number(now, "deg"),
        words::number(choice.to, "deg")
    );
    let mut amounts = vec![("bend_deg", change), ("pitch_deg", choice.to)];
    amounts.extend(tip.map(|tip| ("tip_mm", tip)));
    bench.step(Step {
        work,
        seat: number,
        oar: None,
        deed,
        because: format!("{often}{from}{why}{gap}"),
        amounts,
    });
}

/// The forward horn opens or closes the gap by as much as its tip moves.
fn gap_moved(bench: &mut Bench, at: usize, by: Option<f64>) -> String {
    let gap = bench.boat().seats[at].rowlock.gap.as_ref().map(Reading::mean);
    let (Some(gap), Some(by)) = (gap, by) else {
        return " How far the gap goes with it can't be worked out: read the gap again.".to_owned();
    };
    set_length(&mut bench.seat_mut(at).rowlock.gap, gap + by);
    let verb = if by > 0.0 { "opens" } else { "closes" };
    let (from, to) = (words::number(gap, "mm"), words::number(gap + by, "mm"));
    format!(" The gap {verb} with it from {from} to {to}.")
}

/// Says what else would do.
fn room_words(seat: &SeatSight, now: f64, choice: &Choice) -> String {
    let read = seat.pitch_as_read(Attitude::Square).map_or(now, |read| read.value());
    let as_read = |pitch: f64| slope_words(seat, read + pitch - now);
    let Room { least, most } = choice.room;
    if !(least.is_finite() && most.is_finite()) {
        return String::new();
    }
    let alone = choice.moved.iter().filter(|moved| **moved).count() == 1;
    let alike = if alone { "" } else { ", all that are bent alike" };
    format!(" ({} to {} will do{alike})", as_read(least), as_read(most))
}

fn reading_words(seat: &SeatSight, pitch: f64) -> String {
    slope_words(seat, seat.pitch_as_read(Attitude::Square).map_or(pitch, |read| read.value()))
}

/// Says a pitch in the form the blade was read in.
fn slope_words(seat: &SeatSight, degrees: f64) -> String {
    let angle = Angle::deg(degrees);
    let written = seat.pitch_reading(Attitude::Square).and_then(|reading| reading.values.first());
    match written {
        Some(Slope::Over { down, .. }) => {
            let offset = words::number(down.as_mm() * angle.tan(), "mm");
            format!("{offset} over {}", words::limit(down.as_mm(), "mm"))
        }
        Some(Slope::Offset(_)) => seat.at_mark().map_or_else(
            |_| words::number(degrees, "deg"),
            |width| words::number(width.value() * angle.sin(), "mm"),
        ),
        _ => words::number(degrees, "deg"),
    }
}

fn why(bench: &Bench, blades: &Blades, choice: &Choice) -> String {
    let listed = |moved: &[bool], wanted: bool| {
        let seats = blades.seats.iter().zip(moved).filter(|(_, moved)| **moved == wanted);
        bench.seats_words(seats.map(|(at, _)| *at))
    };
    let bent = choice.moved.iter().filter(|moved| **moved).count();
    let kept = match listed(&choice.moved, false) {
        kept if kept.is_empty() => String::new(),
        kept => format!("; {kept} can stay"),
    };
    let ties: Vec<String> = choice.ties.iter().map(|tie| listed(tie, true)).collect();
    let ties = match ties.as_slice() {
        [] => String::new(),
        ties => format!(
            " A tie: to bend {} instead would take as many bends and as much bending; the seats nearest the bow were taken.",
            ties.join("; or ")
        ),
    };
    format!(
        "The fewest bends that make her blades alike: {bent} of {}{kept}. Of every pitch that allows that, {} is the least bending, {} in all.{ties}",
        choice.moved.len(),
        words::number(choice.to, "deg"),
        words::number(choice.total, "deg"),
    )
}
