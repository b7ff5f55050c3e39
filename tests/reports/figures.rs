//! Worked-out values as JSON and as a table.

use serde_json::Value;
use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::rules::Edit;
use tholebook::working::BoatSight;

use crate::sound_book::SoundBook;
use crate::telling::BOAT;
use crate::telling::PLAIN;
use crate::telling::keys;
use crate::telling::ordered;

fn sights<R>(edits: &[Edit], tell: impl Fn(&[BoatSight]) -> R) -> R {
    let (book, _) = SoundBook::with(edits).check();
    let sights: Vec<BoatSight> =
        book.boats.iter().map(|boat| BoatSight::new(&book, boat)).collect();
    tell(&sights)
}

/// Source of the keys: the format of `derive --format json`. The values are those of the record's
/// own `worked-out`, worked out by hand for the sound book.
#[test]
fn worked_out_values_have_these_keys_in_this_order() {
    let out = sights(&[], reports::figures_json);
    assert_eq!(ordered(&out, ""), ["format_version", "boats"]);
    let boat = ordered(&out, "\"boats\":[");
    assert_eq!(boat, ["boat", "seats", "side_difference_deg", "tip_index_m"]);
    assert_eq!(
        ordered(&out, "\"seats\":["),
        ["seat", "worked_out", "not_worked_out", "can_tell", "measure_next"]
    );
    assert_eq!(
        ordered(&out, "\"worked_out\":"),
        [
            "pitch_deg",
            "pitch_catch_deg",
            "pitch_finish_deg",
            "lean_aft_deg",
            "lean_out_deg",
            "arc_lean_aft_deg",
            "arc_lean_out_deg",
            "rig_pitch_deg",
            "handle_past_mark_mm",
            "handle_past_mark_computed_mm",
            "overlap_mm",
            "gearing",
            "gearing_levers",
            "clearance_mm",
            "clearance_in_roll_mm",
            "looseness_mm",
        ]
    );
    assert_eq!(ordered(&out, "\"pitch_deg\":"), ["number", "uncertainty"]);
    let report: Value = serde_json::from_str(&out).expect("JSON");
    let seat = &report["boats"][0]["seats"][0];
    assert_eq!(seat["not_worked_out"]["bed_fraction"], "oar-bed not measured");
    let number = |key: &str| seat["worked_out"][key]["number"].as_f64().expect("a number");
    for (key, stated, half_digit) in [
        ("pitch_deg", 3.58, 0.005),
        ("handle_past_mark_computed_mm", 320.5, 0.05),
        ("gearing", 2.357, 0.0005),
        ("clearance_mm", 8.0, 0.05),
        ("lean_aft_deg", 0.19, 0.005),
        ("lean_out_deg", -0.09, 0.005),
    ] {
        assert!((number(key) - stated).abs() <= half_digit + 1e-9, "{key}: {}", number(key));
    }
}

#[test]
fn every_key_is_worked_out_or_has_a_reason() {
    let bed: Edit = (BOAT, "seat: 1", "chock-to-pin: 600", "chock-to-pin: 600\n    oar-bed: 40");
    let no_spread: Edit = (BOAT, "seat: 1", "      spread: 792\n", "");
    let out = sights(&[bed, no_spread], reports::figures_json);
    let report: Value = serde_json::from_str(&out).expect("JSON");
    for seat in report["boats"][0]["seats"].as_array().expect("seats") {
        let all = keys(&seat["worked_out"]).len() + keys(&seat["not_worked_out"]).len();
        assert_eq!(all, 17, "{seat}");
    }
    let first = &report["boats"][0]["seats"][0];
    assert!(first["worked_out"]["bed_fraction"]["number"].is_f64());
    assert_eq!(first["not_worked_out"]["overlap"], "pin/spread not measured");
    assert_eq!(
        report["boats"][0]["not_worked_out"]["tip_index"], "pin/spread not measured",
        "{report}"
    );
}

#[test]
fn the_table_of_worked_out_values_fits_and_says_what_is_lacking() {
    let no_spread: Edit = (BOAT, "seat: 2", "      spread: 792\n", "");
    let out = sights(&[no_spread], |boats| reports::figures_text(boats, PLAIN));
    assert!(out.lines().all(|line| line.chars().count() <= 80), "{out}");
    let row = |name: &str| out.lines().find(|line| line.starts_with(name)).expect("a row");
    assert_eq!(row("clearance  ").matches("8.0 ± 0.3").count(), 4);
    assert!(row("clearance  ").contains(" mm "));
    assert_eq!(row("past the centreline").matches(" - ").count(), 1, "{out}");
    assert!(out.contains("seats 1, 2, 3, 4, depth in the bed: oar-bed not measured"), "{out}");
    assert!(out.contains("pin/spread not measured"), "{out}");
    let ascii = Look { glyphs: Glyphs::Ascii, ..PLAIN };
    let out = sights(&[], |boats| reports::figures_text(boats, ascii));
    assert!(out.is_ascii() && out.lines().all(|line| line.len() <= 80), "{out}");
}
