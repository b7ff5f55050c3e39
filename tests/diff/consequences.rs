//! What follows from a change, by hand, and what becomes of the findings.

use serde_json::Value;

use super::pair::BOAT;
use super::pair::OARS;
use super::pair::Pair;
use super::pair::each;

fn followed(json: &Value, name: &str, worked_out: &str) -> (f64, f64, f64) {
    let all = json["consequences"].as_array().expect("a list");
    let own = all.iter().find(|own| own["name"] == name && own["worked_out"] == worked_out);
    let own = own.unwrap_or_else(|| panic!("no {worked_out} of {name} in {json:#}"));
    let number = |side: &str, key: &str| own[side][key].as_f64().expect("a number");
    (number("old", "number"), number("new", "number"), number("new", "uncertainty"))
}

fn near(found: f64, by_hand: f64, within: f64) {
    assert!((found - by_hand).abs() < within, "{found}, by hand {by_hand}");
}

#[test]
fn a_narrower_gap_clears_the_oar_by_less() {
    let json = Pair::new().edit("b", BOAT, "gap: 60", "gap: 58").json();
    let (old, new, good) = followed(&json, "kittiwake/seat-1", "clearance_mm");
    // The gap less the widest section: 60 - 52 and 58 - 52. Two readings, each to 0.2 mm either
    // way: 2 times the root of twice 0.2 squared over 3.
    near(old, 8.0, 1e-9);
    near(new, 6.0, 1e-9);
    near(good, 0.326_599, 1e-6);
    let names = each(&json["consequences"], |own| own["name"].clone());
    assert!(names.iter().all(|name| name == "kittiwake/seat-1"), "{names:?}");
}

#[test]
fn a_collar_moved_in_makes_the_gearing_heavier_of_that_seat_alone() {
    let json = Pair::new().edit("b", OARS, "inboard: 1150", "inboard: 1140").json();
    let (old, new, _) = followed(&json, "kittiwake/seat-1", "gearing");
    // Outboard over inboard: 2710 / 1150 and 2720 / 1140.
    near(old, 2.356_521_739, 1e-8);
    near(new, 2.385_964_912, 1e-8);
}

#[test]
fn a_pitch_read_again_follows_by_its_sine() {
    let json = Pair::new().edit("b", BOAT, "square: 11", "square: 12").json();
    let (old, new, _) = followed(&json, "kittiwake/seat-1", "pitch_deg");
    // asin(11 / 176) = 3.583 deg, asin(12 / 176) = 3.910 deg.
    near(old, 3.583, 0.01);
    near(new, 3.910, 0.01);
}

#[test]
fn a_value_that_can_t_be_worked_out_any_more_is_told() {
    let pair = Pair::new().edit("b", BOAT, "      gap: 60\n", "");
    let json = pair.json();
    let all = json["consequences"].as_array().expect("a list");
    let clearance = all.iter().find(|own| own["worked_out"] == "clearance_mm").expect("clearance");
    assert_eq!(clearance["new"], Value::Null);
    assert!(pair.run(&[]).out.contains("clearance can't be worked out any more"));
}

fn findings(json: &Value, state: &str) -> Vec<(String, String)> {
    each(&json["findings"][state], |own| {
        assert_eq!(own["state"], state);
        let word = |key: &str| own[key].as_str().expect("a text").to_owned();
        (word("name"), word("rule"))
    })
}

#[test]
fn a_finding_is_new_then_worse_then_cured() {
    let tight = |pair: Pair, side: &str, gap: &str| {
        pair.edit(side, BOAT, "gap: 60", &format!("gap: {gap}"))
    };
    let own = ("kittiwake/seat-1/rowlock/gap".to_owned(), "gap-too-tight".to_owned());
    let json = tight(Pair::new(), "b", "55").json();
    assert!(findings(&json, "new").contains(&own), "{json:#}");
    let json = tight(tight(Pair::new(), "a", "55"), "b", "54").json();
    assert!(findings(&json, "worse").contains(&own), "{json:#}");
    assert!(!findings(&json, "new").contains(&own));
    let json = tight(tight(Pair::new(), "a", "54"), "b", "55").json();
    assert!(!findings(&json, "worse").contains(&own) && !findings(&json, "cured").contains(&own));
    let json = tight(Pair::new(), "a", "55").json();
    assert!(findings(&json, "cured").contains(&own), "{json:#}");
}

#[test]
fn a_finding_whose_waiver_is_gone_is_worse() {
    let pair = ["a", "b"].iter().fold(Pair::new(), |pair, side| {
        pair.edit(side, BOAT, "handle-past-mark: 321", "handle-past-mark: 250")
    });
    let (name, rule) = ("kittiwake/seat-1/handle-past-mark", "handle-past-mark-wrong");
    let waiver = format!(
        "- {{finding: {name}, rule: {rule}, because: winter, by: Tomas Reyne, until: 2026-12-20, at: 249}}\n"
    );
    pair.write("a", "waivers.yaml", &waiver);
    let json = pair.json();
    assert!(findings(&json, "worse").contains(&(name.to_owned(), rule.to_owned())), "{json:#}");
    assert_eq!(pair.changes(), ["removed club"]);
}

#[test]
fn one_clock_serves_both_sides() {
    let pair = Pair::new().edit("b", BOAT, "gap: 60", "gap: 60.0");
    let json = pair.json();
    assert_eq!(json["as_of"], "2026-11-25");
    for state in ["new", "worse", "cured"] {
        assert_eq!(findings(&json, state), []);
    }
}
