//! Geometry against a table of cases that another program computed from first principles.
//!
//! Source: `tests/data/geometry.json`, which says how it was made. Each case names its topic; a
//! topic this file doesn't know is a failure, and so is one that is checked but has no cases.

mod case;
mod crew;
mod oar;
mod pin;
mod pitch;
mod rowlock;

use std::collections::BTreeMap;

use case::Case;
use serde_json::Value;

/// What one case computes: the name of each output and the number found for it.
type Found = Vec<(&'static str, f64)>;

/// How a topic is computed from the inputs of a case.
type Check = fn(&Case) -> Found;

/// The topics checked here, and how each is computed from its inputs.
const CHECKED: [(&str, Check); 26] = [
    ("pitch", pitch::pitch),
    ("reading", pitch::reading),
    ("pitch_mean", pitch::pitch_mean),
    ("inverse_linear", pitch::inverse_linear),
    ("inverse_exact", pitch::inverse_exact),
    ("conditioning", pitch::conditioning),
    ("uncertainty", pitch::uncertainty),
    ("pin_direct", pin::pin_direct),
    ("attitude", pin::attitude),
    ("pin_play", pin::pin_play),
    ("shim", pin::packing),
    ("bend", pin::bend),
    ("overlap", oar::overlap),
    ("bob_bias", oar::bob_bias),
    ("gear", oar::gear),
    ("arc", oar::arc),
    ("gap_tilt", rowlock::gap_tilt),
    ("roll_tilt", rowlock::roll_tilt),
    ("gap_round_tips", rowlock::gap_round_tips),
    ("section_width", rowlock::section_width),
    ("seating", rowlock::seating),
    ("seat_rect", rowlock::seat_rect),
    ("seat_round", rowlock::seat_round),
    ("side_bias", oar::side_bias),
    ("blade_force", oar::blade_force),
    ("crew", crew::crew),
];

fn cases() -> Vec<Case> {
    let table: Value =
        serde_json::from_str(include_str!("../data/geometry.json")).expect("the table is JSON");
    table["cases"].as_array().expect("the table holds cases").iter().map(Case::read).collect()
}

/// Source: `tests/data/geometry.json`.
#[test]
fn every_case_of_the_table_is_met() {
    let checks: BTreeMap<_, _> = CHECKED.into_iter().collect();
    let mut met: BTreeMap<&str, u32> = checks.keys().map(|topic| (*topic, 0)).collect();
    for case in cases() {
        let (topic, check) = checks
            .get_key_value(case.topic.as_str())
            .unwrap_or_else(|| panic!("{}: nothing here checks {}", case.id, case.topic));
        case.check(check(&case));
        *met.entry(topic).or_default() += 1;
    }
    let never: Vec<_> = met.iter().filter(|(_, count)| **count == 0).collect();
    assert!(never.is_empty(), "checked, but the table has no case: {never:?}");
}
