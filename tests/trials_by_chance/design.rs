//! Boats whose truth stands at a limit, or so far from it, and which finding to look for.

use crate::drawing::Draw;
use crate::rig::Boat;

/// One finding to look for: the row of the table, the rule, and the name below the boat's own.
pub(crate) struct Watch {
    pub(crate) row: &'static str,
    pub(crate) rule: &'static str,
    pub(crate) name: String,
}

/// Where a truth stands: so many times what a usual value is good to beyond its limit.
pub(crate) type Beyond = f64;

/// A kind of boat.
#[derive(Clone, Copy)]
pub(crate) struct Design {
    /// Makes one.
    pub(crate) make: fn(&mut Draw, Beyond) -> (Boat, Vec<Watch>),
    /// How many are tried at the limit, and elsewhere.
    pub(crate) boats: [usize; 2],
}

pub(crate) const DESIGNS: [Design; 8] = [
    Design { make: seats, boats: [1250, 125] },
    Design { make: pitch, boats: [375, 125] },
    Design { make: one_against_one, boats: [1000, 250] },
    Design { make: one_against_three, boats: [750, 125] },
    Design { make: two_against_two, boats: [1500, 125] },
    Design { make: upright_and_level, boats: [750, 125] },
    Design { make: sides, boats: [1000, 250] },
    Design { make: arc, boats: [375, 125] },
];

fn at(row: &'static str, rule: &'static str, name: impl Into<String>) -> Watch {
    Watch { row, rule, name: name.into() }
}

/// Everything that is judged seat by seat and has nothing to do with pitch.
fn seats(draw: &mut Draw, beyond: Beyond) -> (Boat, Vec<Watch>) {
    let mut boat = Boat::in_order(draw);
    let mut watched = Vec::new();
    for (number, seat) in (1..).zip(&mut boat.seats) {
        seat.gap = seat.widest + 5.0 - 0.327 * beyond;
        seat.narrowest = seat.gap - 15.0 - 0.327 * beyond;
        seat.tip = -0.577 * beyond;
        seat.aft = draw.sign() * (1.0 + 0.319 * beyond);
        seat.out = draw.sign() * (1.0 + 0.319 * beyond);
        seat.put_handle(320.0 + draw.sign() * (15.0 + 1.7 * beyond), boat.dip);
        seat.slid = draw.sign() * 6.0 * beyond.max(0.0);
        let name = |field: &str| format!("seat-{number}/{field}");
        watched.extend([
            at("gap-too-tight", "gap-too-tight", name("rowlock/gap")),
            at("horn-hooks", "horn-hooks", name("rowlock/after-tip")),
            at("gap-too-loose", "gap-too-loose", name("rowlock/gap")),
            at("pin-not-vertical, aft", "pin-not-vertical", name("pin/lean/aft")),
            at("pin-not-vertical, out", "pin-not-vertical", name("pin/lean/out")),
            at("handle-past-mark-wrong", "handle-past-mark-wrong", name("handle-past-mark")),
            at(
                "handle-past-mark-disagrees",
                "handle-past-mark-disagrees",
                name("handle-past-mark"),
            ),
        ]);
    }
    (boat, watched)
}

/// Pitch square off at either end of its range.
fn pitch(draw: &mut Draw, beyond: Beyond) -> (Boat, Vec<Watch>) {
    let mut boat = Boat::in_order(draw);
    let mut watched = Vec::new();
    for (number, seat) in (1..).zip(&mut boat.seats) {
        seat.set_pitch(5.0 + draw.sign() * (2.0 + 0.3 * beyond), boat.dip);
        let name = format!("seat-{number}/pitch/square");
        watched.push(at("pitch-out-of-range", "pitch-out-of-range", name));
    }
    (boat, watched)
}

fn one_against_one(draw: &mut Draw, beyond: Beyond) -> (Boat, Vec<Watch>) {
    let between = [draw.between(0.25, 0.75), draw.between(0.25, 0.75)];
    let rows = ["pitch-mismatch, 1 against 1", "chocks-unlike, 1 against 1"];
    unlike(draw, beyond, [0.0, between[0], between[1], 1.0], rows)
}

fn one_against_three(draw: &mut Draw, beyond: Beyond) -> (Boat, Vec<Watch>) {
    let rows = ["pitch-mismatch, 1 against 3", "chocks-unlike, 1 against 3"];
    let odd = if draw.sign() > 0.0 { [0.0, 0.0, 0.0, 1.0] } else { [0.0, 1.0, 1.0, 1.0] };
    unlike(draw, beyond, odd, rows)
}

fn two_against_two(draw: &mut Draw, beyond: Beyond) -> (Boat, Vec<Watch>) {
    let rows = ["pitch-mismatch, 2 against 2", "chocks-unlike, 2 against 2"];
    unlike(draw, beyond, [0.0, 0.0, 1.0, 1.0], rows)
}

/// Blades and chocks that are unlike: each seat so many parts of the whole difference from the
/// lowest. The boat lies out of level, at its limit too.
fn unlike(
    draw: &mut Draw,
    beyond: Beyond,
    parts: [f64; 4],
    rows: [&'static str; 2],
) -> (Boat, Vec<Watch>) {
    let mut boat = Boat::in_order(draw);
    boat.trim = draw.sign() * (1.0 + 0.231 * beyond);
    boat.roll = draw.sign() * (1.0 + 0.231 * beyond);
    let (blades, chocks) = (draw.shuffled(parts), draw.shuffled(parts));
    for (at, seat) in boat.seats.iter_mut().enumerate() {
        seat.set_pitch(4.2 + blades[at] * (0.6 + 0.275 * beyond), boat.dip);
        seat.chock = 592.0 + chocks[at] * (15.0 + 3.27 * beyond);
    }
    let watched = vec![
        at(rows[0], "pitch-mismatch", ""),
        at(rows[1], "chocks-unlike", ""),
        at("boat-not-level, trim", "boat-not-level", "rigged/level/trim"),
        at("boat-not-level, roll", "boat-not-level", "rigged/level/roll"),
    ];
    (boat, watched)
}

/// Two blades against two, all pins upright and the boat level: an oar not laid quite square off
/// does nothing to its blade.
fn upright_and_level(draw: &mut Draw, beyond: Beyond) -> (Boat, Vec<Watch>) {
    let mut boat = Boat::in_order(draw);
    (boat.trim, boat.roll) = (0.0, 0.0);
    let blades = draw.shuffled([0.0, 0.0, 1.0, 1.0]);
    for (seat, part) in boat.seats.iter_mut().zip(blades) {
        (seat.aft, seat.out) = (0.0, 0.0);
        seat.set_pitch(4.2 + part * (0.6 + 0.275 * beyond), boat.dip);
    }
    (boat, vec![at("pitch-mismatch, 2 against 2, upright, level", "pitch-mismatch", "")])
}

/// Blades of one side above those of the other, and unlike within each side.
fn sides(draw: &mut Draw, beyond: Beyond) -> (Boat, Vec<Watch>) {
    let mut boat = Boat::in_order(draw);
    let port_above = draw.sign() * (0.5 + 0.195 * beyond);
    let within = [draw.between(-0.4, 0.4), draw.between(-0.4, 0.4)];
    for (at, seat) in boat.seats.iter_mut().enumerate() {
        let first = if at < 2 { 1.0 } else { -1.0 };
        let side = seat.side.sign() * port_above / 2.0;
        seat.set_pitch(4.5 + side + first * within[at % 2], boat.dip);
    }
    (boat, vec![at("sides-unequal", "sides-unequal", "")])
}

/// Pins that lean any way until the pitch varies through the arc by the limit.
fn arc(draw: &mut Draw, beyond: Beyond) -> (Boat, Vec<Watch>) {
    let mut boat = Boat::in_order(draw);
    let mut watched = Vec::new();
    for (number, seat) in (1..).zip(&mut boat.seats) {
        let direction = draw.between(0.0, std::f64::consts::TAU);
        seat.lean_until_it_varies(0.6 + 0.35 * beyond, direction, boat.dip);
        let name = format!("seat-{number}/pitch");
        watched.push(at("pitch-varies-through-arc", "pitch-varies-through-arc", name));
    }
    (boat, watched)
}
