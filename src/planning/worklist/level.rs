//! The boat is chocked level before anything else is done to her.

use super::bench::Bench;
use super::bench::is_proven;
use super::bench::rounded;
use super::bench::set_length;
use super::pins;
use super::step::Step;
use super::step::Work;
use crate::geometry::Side;
use crate::model::Reading;
use crate::rules::words;
use crate::units::Angle;
use crate::working::Attitude;
use crate::working::Worked;

/// Plans the level. What was read of her so far is corrected for how she lay.
pub(super) fn plan(bench: &mut Bench) {
    let found = bench.at_boat("boat-not-level");
    let Some(because) = found.iter().find(|finding| is_proven(finding)) else { return };
    let because = because.message.clone();
    let lies = |worked: Worked| worked.map_or(0.0, |budget| budget.value());
    let (trim, roll) = (lies(bench.sight().trim()), lies(bench.sight().roll()));
    let mut deed = "Chock her until the level on her mark reads true both ways".to_owned();
    deed.push_str(&way(trim, "her bow comes down", "her bow comes up"));
    deed.push_str(&way(roll, "her port side comes up", "her starboard side comes up"));
    for at in bench.seats() {
        lay_level(bench, at);
    }
    let rigged = &mut bench.boat_mut().rigged;
    for reading in [&mut rigged.trim, &mut rigged.roll] {
        level(reading);
    }
    bench.step(Step {
        work: Work::Level,
        seat: None,
        oar: None,
        deed: format!("{deed}."),
        because: format!("{because}. What was read of her is corrected for it below."),
        amounts: vec![("trim_deg", -trim), ("roll_deg", -roll)],
    });
}

fn way(angle: f64, above: &str, below: &str) -> String {
    if rounded(angle, 100.0).abs() <= 0.0 {
        return String::new();
    }
    let which = if angle > 0.0 { above } else { below };
    format!(", {which} by {}", words::number(angle.abs(), "deg"))
}

fn level(reading: &mut Option<Reading<Angle>>) {
    if let Some(reading) = reading {
        reading.values = vec![Angle::deg(0.0)];
    }
}

/// Makes each reading of a seat that leans on the level what it is in the level boat.
fn lay_level(bench: &mut Bench, at: usize) {
    let seat = bench.seat(at);
    let value = |worked: Worked| worked.ok().map(|budget| budget.value());
    let leans = [value(seat.lean_aft()), value(seat.lean_out())];
    let pitches = Attitude::ALL.map(|attitude| value(seat.pitch(attitude)));
    let handle = value(seat.handle_read());
    pins::set_leans(bench, at, leans);
    pins::set_pitches(bench, at, pitches);
    if let Some(handle) = handle {
        set_length(&mut bench.seat_mut(at).handle_past_mark, handle);
    }
}

/// Returns how a boat out of level shows a lean: what the bob reads less what is true, in degrees.
pub(super) fn shown(bench: &Bench, at: usize) -> [f64; 2] {
    let value = |worked: Worked| worked.map_or(0.0, |budget| budget.value());
    let (trim, roll) = (value(bench.sight().trim()), value(bench.sight().roll()));
    let side = bench.boat().seats[at].side.map_or(Side::Port, |side| side.value);
    [trim, side.sign() * roll]
}
