//! The drift of a reading: where it starts anew, whether it is more than chance, when a rule would
//! object, and what is refused.

use serde_json::Value;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::GAP;
use crate::club::edit;
use crate::club::set_gap;
use crate::club::sound;
use crate::run::json;
use crate::run::run;

/// The sound book with a gap at seat 2, rigged on a day of 2026. The horns are so low that no lift in
/// a roll rubs before the gap is too tight.
fn rigged(gap: &str, month_and_day: &str) -> Files {
    let mut files = sound();
    set_gap(&mut files, gap);
    edit(&mut files, BOAT, "seat: 2", "horn: 46", "horn: 36");
    edit(&mut files, BOAT, "rigged:", "date: 2026-10-17", &format!("date: 2026-{month_and_day}"));
    files
}

/// The same with something more written before the seats.
fn with(gap: &str, month_and_day: &str, more: &str) -> Files {
    let mut files = rigged(gap, month_and_day);
    edit(&mut files, BOAT, "", "seats:\n", &format!("{more}\nseats:\n"));
    files
}

fn trend(states: &[Files]) -> Value {
    let club = Club::new();
    club.line(states);
    json(&club, &["history", GAP, "--trend"])["trend"].clone()
}

fn said(states: &[Files]) -> String {
    let club = Club::new();
    club.line(states);
    let out = run(&club, &["history", GAP, "--trend"]).out;
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn falling() -> Vec<Files> {
    [("60", "05-01"), ("59.5", "05-31"), ("59", "06-30"), ("58.5", "07-30")]
        .map(|(gap, day)| rigged(gap, day))
        .into()
}

/// By hand: half a millimetre in 30 days. The shaft is 52 mm, 5 mm are the least, and a danger must
/// be cleared by the ± 0.3266 mm it is good to: 57.3266 mm, 160 days after the first reading of
/// 60 mm, is 2026-10-08.
#[test]
fn a_gap_that_closes_comes_to_the_day_on_which_a_rule_objects() {
    let trend = trend(&falling());
    let slope = trend["slope_per_30_days"].as_f64().expect("a slope");
    assert!((slope + 0.5).abs() < 1e-9, "{trend}");
    assert_eq!(trend["beyond_chance"], true);
    let crossing = &trend["crossing"];
    assert_eq!(crossing["rule"], "gap-too-tight", "{trend}");
    assert!((crossing["limit"].as_f64().expect("mm") - 57.3266).abs() < 1e-3, "{trend}");
    assert_eq!(crossing["on"], "2026-10-08", "{trend}");
    let day = |key: &str| crossing[key].as_str().expect("a day").to_owned();
    assert!(day("not_before") < day("on") && day("on") < day("not_after"), "{trend}");
    assert_eq!(trend["refused"], Value::Null);
    let said = said(&falling());
    assert!(
        said.contains("Trend: 4 readings from 2026-05-01 to 2026-07-30: -0.50 mm in 30 days"),
        "{said}"
    );
    assert!(
        said.contains("where gap-too-tight objects, about 2026-10-08: not before 2026-"),
        "{said}"
    );
}

#[test]
fn what_was_measured_again_and_is_the_same_counts_as_a_reading() {
    let days = ["05-01", "05-31", "06-30", "07-30"].map(|day| rigged("60", day));
    let trend = trend(&days);
    assert_eq!(trend["stretches"][0]["readings"], 4);
    assert_eq!(trend["beyond_chance"], false, "four alike are no better than the callipers");
    assert!(trend["uncertainty"].as_f64().is_some_and(|good| good > 0.05), "{trend}");
    assert_eq!(trend["crossing"], Value::Null);
}

#[test]
fn fewer_than_four_readings_are_refused() {
    let trend = trend(&falling()[..3]);
    assert_eq!(trend["slope_per_30_days"], Value::Null);
    assert_eq!(trend["refused"], "no trend is told of fewer than 4 on different days");
    assert!(said(&falling()[..3]).contains("3 readings from 2026-05-01 to 2026-06-30: no trend"));
}

/// Half as fast, the limit is some 320 days off the first reading, over 180 beyond the last of 90.
#[test]
fn nothing_is_foretold_further_ahead_than_twice_the_span() {
    let slow = [("60", "05-01"), ("59.75", "05-31"), ("59.5", "06-30"), ("59.25", "07-30")];
    let trend = trend(&slow.map(|(gap, day)| rigged(gap, day)));
    assert_eq!(trend["beyond_chance"], true, "{trend}");
    assert_eq!(trend["crossing"], Value::Null);
    let refused = trend["refused"].as_str().expect("a refusal");
    assert!(refused.contains("2 times as long as these readings span"), "{refused}");
}

/// A bend or a knock at another seat is none at this one.
#[test]
fn a_bend_a_knock_and_a_mending_start_it_anew_and_those_elsewhere_do_not() {
    let bend = |seat: u8| {
        format!(
            "bends:\n  - {{date: 2026-07-30, by: Ines Marlow, seat: {seat}, part: after-horn, deg: 2}}"
        )
    };
    let knock = |where_: &str| format!("knocks:\n  - {{date: 2026-07-20, what: rolled{where_}}}");
    let packed = |seat: u8| {
        format!(
            "defects:\n  - found: 2026-07-10\n    what: plate of seat {seat} sits low\n    state: watch\n    \
             put-right: {{date: 2026-07-20, by: Ines Marlow, how: packed 2 mm, passed-by: Tomas Reyne}}"
        )
    };
    let cases = [
        (bend(2), Some("bend")),
        (bend(3), None),
        (knock(""), Some("knock")),
        (knock(", where: [seat-2]"), Some("knock")),
        (knock(", where: [seat-3]"), None),
        (packed(2), Some("put-right")),
        (packed(4), None),
    ];
    for (more, began) in cases {
        let mut states = falling();
        states.push(with("60", "08-29", &more));
        if let Some(last) = states.get_mut(3) {
            *last = with("58.5", "07-30", &more);
        }
        let trend = trend(&states);
        let stretches = trend["stretches"].as_array().expect("stretches");
        assert_eq!(stretches.len(), if began.is_some() { 2 } else { 1 }, "{more}: {trend}");
        let last = stretches.last().expect("one");
        assert_eq!(last["began_with"].as_str(), began, "{more}");
        let readings = last["readings"].as_u64();
        assert_eq!(readings, Some(if began.is_some() { 2 } else { 5 }), "{more}: {trend}");
    }
}

/// The limit lies amid the readings, but what a rule objected to is left behind.
#[test]
fn a_gap_that_opens_does_not_come_to_what_it_has_left() {
    let rising = [("57", "05-01"), ("57.2", "05-31"), ("57.4", "06-30"), ("57.6", "07-30")];
    let states = rising.map(|(gap, day)| rigged(gap, day));
    let trend = trend(&states);
    assert_eq!(trend["beyond_chance"], true, "{trend}");
    let refused = trend["refused"].as_str().expect("a refusal");
    assert!(!refused.contains("already"), "{refused}");
    assert_eq!(trend["crossing"], Value::Null);
}

#[test]
fn what_a_rule_objects_to_already_is_told_before_anything_later() {
    let tight = [("58.5", "05-01"), ("58", "05-31"), ("57.5", "06-30"), ("57", "07-30")];
    let said = said(&tight.map(|(gap, day)| rigged(gap, day)));
    assert!(said.contains("it is where a rule objects already: see tholebook lint"), "{said}");
}

#[test]
fn the_drift_is_told_in_every_form() {
    let club = Club::new();
    club.line(&falling());
    for form in [&["--format", "markdown"][..], &["--spoken"]] {
        let out = run(&club, &[&["history", GAP, "--trend"], form].concat()).out;
        assert!(out.contains("4 readings from 2026-05-01 to 2026-07-30"), "{out}");
        assert!(out.contains("about 2026-10-08"), "{out}");
    }
}
