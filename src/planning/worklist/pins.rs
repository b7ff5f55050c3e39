//! Pins are brought upright: packed where the plate is known, else bent at the foot.

use super::bench::Bench;
use super::bench::is_proven;
use super::bench::set_length;
use super::bench::set_slope;
use super::blade::Blade;
use super::level::shown;
use super::step::Step;
use super::step::Work;
use crate::geometry::correction::packing_thickness;
use crate::geometry::correction::tip_move;
use crate::model::BentPart;
use crate::model::LimitKey;
use crate::model::Part;
use crate::model::Reading;
use crate::rules::Leaning;
use crate::rules::words;
use crate::units::Angle;
use crate::units::Length;
use crate::units::Slope;
use crate::working::Attitude;
use crate::working::SeatSight;
use crate::working::Worked;

const WAYS: [Leaning; 2] = [Leaning::Aft, Leaning::Out];

/// Ways that are tried, one after the other, where a blade's pitch varies through the arc.
const TRIED: [&[Leaning]; 4] = [&[], &[Leaning::Out], &[Leaning::Aft], &WAYS];

/// Plans the pins of every seat.
pub(super) fn plan(bench: &mut Bench) {
    for at in bench.seats() {
        replace_bent_often(bench, at);
        told_missing(bench, at);
        let leaning = proven(bench, at);
        let mut ways = leaning.clone();
        for way in for_the_arc(bench, at, &leaning) {
            if !ways.contains(&way) {
                ways.push(way);
            }
        }
        for way in ways {
            bring_upright(bench, at, way, leaning.contains(&way));
        }
    }
}

fn told_missing(bench: &mut Bench, at: usize) {
    let seat = bench.seat(at);
    let limits = WAYS.map(|way| bench.limit(way.limit(), Part::Most).is_some());
    let leans = [seat.lean_aft(), seat.lean_out()];
    let name = seat.name();
    for (lean, limited) in leans.into_iter().zip(limits) {
        if let (Err(lack), true) = (lean, limited) {
            bench.not_planned(name.clone(), "the pin", lack.to_string());
        }
    }
}

/// A pin that was bent too often is replaced; a new one is set upright.
fn replace_bent_often(bench: &mut Bench, at: usize) {
    let name = bench.seat(at).name().at("pin");
    let found = bench.at_boat("bent-often").into_iter().find(|finding| finding.name == name);
    let (Some(found), Some(seat)) = (found, bench.number(at)) else { return };
    bench.replace(seat, BentPart::Pin);
    for way in WAYS {
        turn_upright(bench, at, way);
    }
    bench.step(Step {
        work: Work::ReplacePin,
        seat: Some(seat),
        oar: None,
        deed: "Replace the pin, and plumb the new one upright both ways.".to_owned(),
        because: format!("{}. Metal bent often is not bent again.", found.message),
        amounts: Vec::new(),
    });
}

/// Returns the ways in which a pin is proven to lean too far.
fn proven(bench: &Bench, at: usize) -> Vec<Leaning> {
    let name = bench.seat(at).name();
    let found = bench.at_seat("pin-not-vertical", at);
    let leans = |way: &Leaning| {
        let own = name.at(format_args!("pin/lean/{}", way.key()));
        found.iter().any(|finding| finding.name == own && is_proven(finding))
    };
    WAYS.into_iter().filter(leans).collect()
}

/// Returns the fewest ways to bring a pin upright so that its blade's pitch no longer varies too far;
/// none besides those that lean too far where that is enough, or where nothing helps.
fn for_the_arc(bench: &mut Bench, at: usize, leaning: &[Leaning]) -> Vec<Leaning> {
    let rule = "pitch-varies-through-arc";
    if bench.proven_at(rule, at).is_none() {
        return Vec::new();
    }
    let mut doubtful = None;
    for tried in TRIED {
        if !tried.iter().all(|way| leaning.contains(way) || can_be_told(&bench.seat(at), *way)) {
            continue;
        }
        let before = bench.boat().seats[at].clone();
        for way in WAYS.into_iter().filter(|way| leaning.contains(way) || tried.contains(way)) {
            turn_upright(bench, at, way);
        }
        let found = bench.at_seat(rule, at);
        *bench.seat_mut(at) = before;
        if found.is_empty() {
            return tried.to_vec();
        }
        if doubtful.is_none() && !found.iter().any(is_proven) {
            doubtful = Some(tried.to_vec());
        }
    }
    doubtful.unwrap_or_else(|| {
        tell_no_cure(bench, at);
        Vec::new()
    })
}

fn tell_no_cure(bench: &mut Bench, at: usize) {
    let name = bench.seat(at).name();
    let arc = bench.limit_words(LimitKey::Arc, Part::Most, "deg");
    let says = format!(
        "{}: by the bob no way of the pin explains how the pitch varies from catch to finish, so an upright pin would not cure it ({arc}). Look for play, a worn leather, a twisted flat or a wrong oar angle, and read the three again before any metal is bent",
        bench.seat(at).called()
    );
    bench.conflict(name, says);
}

/// Whether the bob tells a lean from none.
fn can_be_told(seat: &SeatSight, way: Leaning) -> bool {
    lean(seat, way).is_ok_and(|lean| lean.value().abs() > lean.expanded())
}

fn lean(seat: &SeatSight, way: Leaning) -> Worked {
    match way {
        Leaning::Aft => seat.lean_aft(),
        Leaning::Out => seat.lean_out(),
    }
}

/// Writes down what an upright pin makes of the readings: its lean, and the pitch of its blade.
fn turn_upright(bench: &mut Bench, at: usize, way: Leaning) {
    let seat = bench.seat(at);
    let blade = Blade::of(&seat).filter(|_| !seat.hands_set_pitch());
    let leans = match way {
        Leaning::Aft => [Some(0.0), None],
        Leaning::Out => [None, Some(0.0)],
    };
    if lean(&seat, way).is_err() {
        return;
    }
    if let Some(blade) = blade {
        move_blade(bench, at, &blade, &blade.upright(way));
    }
    set_leans(bench, at, leans);
}

/// Writes down what another rig makes of a blade's readings.
pub(super) fn move_blade(bench: &mut Bench, at: usize, before: &Blade, after: &Blade) {
    let seat = bench.seat(at);
    let moved = Attitude::ALL.map(|attitude| {
        let theta = seat.oar_angle(attitude).ok()?.value();
        let change = after.pitch(theta) - before.pitch(theta);
        Some(seat.pitch(attitude).ok()?.value() + change)
    });
    set_pitches(bench, at, moved);
}

/// Writes down pitches in the level boat as they read in the boat as she lies.
pub(super) fn set_pitches(bench: &mut Bench, at: usize, pitches: [Option<f64>; 3]) {
    for (attitude, pitch) in Attitude::ALL.into_iter().zip(pitches) {
        let seat = bench.seat(at);
        let (Some(pitch), Ok(now), Ok(read)) =
            (pitch, seat.pitch(attitude), seat.pitch_as_read(attitude))
        else {
            continue;
        };
        let reads = read.value() + pitch - now.value();
        let at_mark = seat.at_mark().ok().map(|width| width.value());
        let own = &mut bench.seat_mut(at).pitch;
        let reading = match attitude {
            Attitude::Catch => &mut own.catch,
            Attitude::Square => &mut own.square,
            Attitude::Finish => &mut own.finish,
        };
        set_slope(reading, reads, |angle| Some(at_mark? * angle.sin()));
    }
}

/// Writes down leans, aft and out, in the level boat as the bob shows them in the boat as she lies.
pub(super) fn set_leans(bench: &mut Bench, at: usize, leans: [Option<f64>; 2]) {
    let gauge = bench.boat().rigged.pin_gauge.map(|gauge| gauge.value.as_mm());
    let shown = shown(bench, at);
    let own = &mut bench.seat_mut(at).pin.lean;
    let readings = [&mut own.aft, &mut own.out];
    for ((reading, lean), shown) in readings.into_iter().zip(leans).zip(shown) {
        if let Some(lean) = lean {
            set_slope(reading, lean + shown, |angle| Some(gauge? * angle.tan()));
        }
    }
}

fn plate(seat: &SeatSight, way: Leaning) -> Option<Length> {
    let plate = &seat.seat.pin.plate;
    let reading = match way {
        Leaning::Aft => plate.along.as_ref(),
        Leaning::Out => plate.across.as_ref(),
    };
    reading.map(|reading| Length::mm(reading.mean())).filter(|base| base.as_mm() > 0.0)
}

fn bring_upright(bench: &mut Bench, at: usize, way: Leaning, leans_too_far: bool) {
    let seat = bench.seat(at);
    let (Ok(lean), number) = (lean(&seat, way), bench.number(at)) else { return };
    let base = plate(&seat, way);
    let before = pitches(&seat);
    let mut because = reason(bench, way, &lean, leans_too_far);
    let angle = Angle::deg(lean.value().abs());
    turn_upright(bench, at, way);
    let until = reads_upright(bench, at, way);
    let (work, deed, mut amounts) = match base {
        Some(base) => {
            let pack = packing_thickness(base, angle).as_mm();
            raise(bench, at, pack);
            because.push_str("A lean that can be packed is packed: nothing is bent. ");
            (Work::PackPin, packing(way, lean.value(), pack, base, &until), vec![("pack_mm", pack)])
        }
        None => {
            let (work, often) = bench.bend(at, BentPart::Pin, angle.as_deg());
            because.push_str(often);
            because.push_str("The plate was not measured, so packing can't be worked out: measure it, and pack instead if you can. ");
            (work, bending(way, lean.value(), &until), Vec::new())
        }
    };
    amounts.push(("lean_deg", -lean.value()));
    because.push_str(&carried(before, pitches(&bench.seat(at))));
    because.push_str(&moved_bed(way, lean.value()));
    bench.step(Step { work, seat: number, oar: None, deed, because, amounts });
}

fn packing(way: Leaning, lean: f64, pack: f64, base: Length, until: &str) -> String {
    format!(
        "Pack {} under the {} edge of the pin's plate ({} bolt to bolt){until}.",
        words::number(pack, "mm"),
        way.edge(lean),
        words::limit(base.as_mm(), "mm")
    )
}

fn bending(way: Leaning, lean: f64, until: &str) -> String {
    let per_100 = tip_move(Length::mm(100.0), Angle::deg(lean.abs())).as_mm();
    format!(
        "Bend the pin at its foot, its head {} by {} ({} at 100 mm above the bend){until}.",
        way.towards(-lean),
        words::number(lean.abs(), "deg"),
        words::number(per_100, "mm")
    )
}

/// Packing lifts the rowlock by half of what is put under one edge.
fn raise(bench: &mut Bench, at: usize, pack: f64) {
    let above = &mut bench.seat_mut(at).rowlock.above_seat;
    if let Some(height) = above.as_ref().map(Reading::mean) {
        set_length(above, height + pack / 2.0);
    }
}

fn reason(
    bench: &Bench,
    way: Leaning,
    lean: &crate::working::Budget,
    leans_too_far: bool,
) -> String {
    let degrees = words::number(lean.value().abs(), "deg");
    let good = words::number(lean.expanded(), "deg");
    let towards = way.towards(lean.value());
    let (key, why) = if leans_too_far {
        (way.limit(), "")
    } else {
        (LimitKey::Arc, " It is within its own limit, but the blade's pitch varies with it.")
    };
    let limit = bench.limit_words(key, Part::Most, "deg");
    format!(
        "The pin leans {degrees} {towards}, good to ± {good} ({limit}).{why} It is brought upright, not only to the limit. "
    )
}

fn reads_upright(bench: &Bench, at: usize, way: Leaning) -> String {
    let lean = &bench.boat().seats[at].pin.lean;
    let reading = match way {
        Leaning::Aft => lean.aft.as_ref(),
        Leaning::Out => lean.out.as_ref(),
    };
    let gauge = bench.boat().rigged.pin_gauge.map(|gauge| gauge.value.as_mm());
    let over = |offset: Length, down: f64| {
        format!(
            ", until the bob reads {} over {}",
            words::number(offset.as_mm(), "mm"),
            words::limit(down, "mm")
        )
    };
    match reading.and_then(|reading| reading.values.first()) {
        Some(Slope::Offset(offset)) => gauge.map_or(String::new(), |gauge| over(*offset, gauge)),
        Some(Slope::Over { offset, down }) => over(*offset, down.as_mm()),
        Some(Slope::Angle(angle)) => {
            format!(", until the bob shows {}", words::number(angle.as_deg(), "deg"))
        }
        None => String::new(),
    }
}

pub(super) fn pitches(seat: &SeatSight) -> [Option<f64>; 3] {
    Attitude::ALL.map(|attitude| seat.pitch(attitude).ok().map(|pitch| pitch.value()))
}

/// Says what the work does to the blade.
fn carried(before: [Option<f64>; 3], after: [Option<f64>; 3]) -> String {
    let each = Attitude::ALL.into_iter().zip(before.into_iter().zip(after));
    let said: Vec<String> = each
        .filter_map(|(attitude, (before, after))| {
            let (before, after) = (before?, after?);
            let (before, after) = (words::number(before, "deg"), words::number(after, "deg"));
            (before != after).then(|| format!("from {before} to {after} {}", attitude.words()))
        })
        .collect();
    if said.is_empty() {
        return String::new();
    }
    format!("With it the pitch goes {}. ", said.join(", "))
}

/// A pin brought upright across the boat carries the bed with it, and the handle.
fn moved_bed(way: Leaning, lean: f64) -> String {
    if way == Leaning::Aft {
        return String::new();
    }
    let per_100 = tip_move(Length::mm(100.0), Angle::deg(lean.abs())).as_mm();
    let towards = way.towards(-lean);
    format!(
        "The bed moves {towards} by {} for every 100 mm it stands above the plate: read the spread and the handle again. ",
        words::number(per_100, "mm")
    )
}
