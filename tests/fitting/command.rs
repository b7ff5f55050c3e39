//! What is missing, the words and the command.

use std::collections::BTreeSet;
use std::process::Command;

use tholebook::planning::fitting::fit;
use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::reports::shown::is_hidden;
use tholebook::rules::Edit;
use tholebook::working::BoatSight;

use crate::crew::BOAT;
use crate::crew::CREW;
use crate::crew::Club;
use crate::crew::Rower;
use crate::crew::seated;
use crate::sound_book::SoundBook;

const PLAIN: Look = Look { width: 80, glyphs: Glyphs::Unicode, colour: false };

fn told_in(edits: &[Edit], look: Look) -> String {
    let book = SoundBook::with(edits);
    let (book, _) = tholebook::reading::read("sound-book", book.texts());
    let boat = BoatSight::new(&book, &book.boats[0]);
    reports::fitting_text(&fit(&book, &book.crews[0], boat), look)
}

#[track_caller]
fn holds(text: &str, part: &str) {
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains(part), "no {part:?} in:\n{text}");
}

fn run(arguments: &[&str]) -> (Option<i32>, String, String) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    let out = command.args(arguments).env_remove("COLUMNS").output().expect("the program");
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    (out.status.code(), text(&out.stdout), text(&out.stderr))
}

#[test]
fn what_was_not_measured_of_a_rower_is_unknown_and_named() {
    let text = told_in(&[(CREW, "seat: 2", "stature: 1810, ", "")], PLAIN);
    holds(&text, "Unknown: seat 2: stature not measured.");
    assert!(text.lines().any(|line| line.contains("J.O.") && line.contains("unknown")), "{text}");
    let text = told_in(&[(BOAT, "seat: 3", "chock-to-pin: 600", "note: lost")], PLAIN);
    holds(&text, "Unknown: seat 3: chock-to-pin not measured.");
    let text = told_in(&[(BOAT, "seat: 3", "seat-mark: 61", "seat-mark: not measured")], PLAIN);
    holds(&text, "Catch unknown: seat 3: seat-mark not measured.");
    let text = told_in(&[(CREW, "", "seat: 4", "seat: 9")], PLAIN);
    holds(&text, "Unknown: seat 9: the boat has no such seat.");
}

#[test]
fn without_foot_holes_the_chock_is_taken_to_stop_everyone() {
    let whole = "foot-holes: {first: 820, apart: 30, count: 8}\n";
    for (to, why) in [
        ("", "foot-holes/count, foot-holes/first, foot-holes/apart not measured"),
        ("foot-holes: {first: 820, count: 8}\n", "foot-holes/apart not measured"),
        ("foot-holes: {first: 820, apart: 30, count: 400}\n", "more than 100"),
        ("foot-holes: {first: 9820, apart: 30, count: 8}\n", "no foot hole lets every rower row"),
    ] {
        let text = told_in(&[(BOAT, "", whole, to)], PLAIN);
        holds(&text, "No foot hole can be chosen:");
        holds(&text, why);
        holds(&text, "Against the chock all finish within");
    }
}

#[test]
fn a_hole_that_is_not_there_is_told() {
    let text = told_in(&[(CREW, "seat: 1", "foot-hole: 4", "foot-hole: 40")], PLAIN);
    holds(&text, "seat 1 to hole");
    holds(&text, "there is no hole 40");
}

#[test]
fn feet_that_are_moved_for_straight_legs_alone_are_told_why() {
    let rowers = [1, 5, 6, 6].map(|hole| Rower::of(1800).in_hole(hole)).to_vec();
    let book = Club::of(rowers).book();
    let text = reports::fitting_text(&seated(&book), PLAIN);
    holds(
        &text,
        "Foot holes: seat 1 from hole 1 to hole 6; so that the legs come nearer straight: it moves \
         no finish.",
    );
    let rowers = [5, 5, 6, 6].map(|hole| Rower::of(1800).in_hole(hole)).to_vec();
    let book = Club::of(rowers).book();
    holds(&reports::fitting_text(&seated(&book), PLAIN), "Foot holes: leave them as they are.");
}

#[test]
fn chocks_and_seats_are_offered_one_instead_of_the_other() {
    let statures = [2050, 1550, 1800, 1800];
    let rowers = statures.map(|stature| Rower::of(stature).in_hole(1)).to_vec();
    let book = Club { chocks: [560, 640, 600, 600], ..Club::of(rowers) }.book();
    let text = reports::fitting_text(&seated(&book), PLAIN);
    holds(&text, "With every chock 600 mm from the pin");
    holds(&text, "Instead of moving chocks: if seat 1 and seat 2 change seats");
}

#[test]
fn every_assumption_is_named_with_how_far_it_may_be_out() {
    let text = told_in(&[], PLAIN);
    for what in [
        "layback at the finish 20 deg ± 5 ± 3",
        "hip joint to belly 0.085 of the stature ± 0.01 ± 0.01",
        "seat above the heels 200 mm ± 50",
        "hip joint to ankle 0.491",
        "Drillis and Contini",
    ] {
        holds(&text, what);
    }
    // The bed above the seat is measured in the sound book, so the hands' height is not assumed.
    assert!(!text.contains("hands above the seat"), "{text}");
    let text = told_in(&[(BOAT, "seat: 1", "above-seat: 190", "above-seat: not measured")], PLAIN);
    holds(&text, "hands above the seat 250 mm ± 50");
}

#[test]
fn no_line_is_wider_than_asked_for_whatever_the_glyphs() {
    for width in [40, 60, 80, 100] {
        for glyphs in [Glyphs::Unicode, Glyphs::Ascii] {
            let text = told_in(&[], Look { width, glyphs, colour: false });
            for line in text.lines() {
                assert!(line.chars().count() <= width, "{width}: {line}");
            }
            assert!(glyphs == Glyphs::Unicode || text.is_ascii(), "{text}");
        }
    }
}

#[test]
fn a_hostile_name_steers_no_terminal() {
    let text = told_in(&[(CREW, "seat: 1", "who: I.M.", "who: \"\\e[2J\\u202Eevil\"")], PLAIN);
    assert!(!text.replace('\n', "").contains(is_hidden), "{text:?}");
}

#[test]
fn the_command_tells_by_its_exit_code_whether_there_is_something_to_do() {
    let (code, out, _) = run(&["fit", "juniors", "--book", "example-club"]);
    assert_eq!(code, Some(0), "{out}");
    holds(&out, "Foot holes: leave them as they are.");
    let (code, out, err) = run(&["fit", "juniros", "--book", "example-club"]);
    assert_eq!((code, out.as_str()), (Some(2), ""));
    holds(&err, "There is no crew called juniros. Did you mean juniors?");
    let (code, _, _) = run(&["fit"]);
    assert_eq!(code, Some(2));
}

#[test]
fn a_crew_without_a_boat_or_without_a_stature_can_not_be_seated() {
    let folder = tempfile::tempdir().expect("a folder");
    for (path, text) in [
        ("club.yaml", "logbook: 1\n"),
        ("crews/a.yaml", "crew: a\nrowers:\n  - {seat: 1, stature: 1800}\n"),
        ("crews/b.yaml", "crew: b\nboat: kitiwake\nrowers: []\n"),
        ("crews/c.yaml", "crew: c\nboat: kittiwake\nrowers:\n  - {seat: 1}\n"),
    ] {
        let to = folder.path().join(path);
        std::fs::create_dir_all(to.parent().expect("a folder")).expect("a new folder");
        std::fs::write(to, text).expect("a new file");
    }
    for path in [BOAT, "oars/long-ash.yaml"] {
        let to = folder.path().join(path);
        std::fs::create_dir_all(to.parent().expect("a folder")).expect("a new folder");
        std::fs::copy(format!("tests/data/sound-book/{path}"), to).expect("a copy");
    }
    let book = folder.path().to_str().expect("a path in Unicode");
    for (crew, why) in [
        ("a", "Crew a names no boat."),
        ("b", "There is no boat called kitiwake. Did you mean kittiwake?"),
    ] {
        let (code, out, err) = run(&["fit", crew, "--book", book]);
        assert_eq!((code, out.as_str()), (Some(3), ""), "{crew}");
        holds(&err, why);
    }
    let (code, out, _) = run(&["fit", "c", "--book", book]);
    assert_eq!(code, Some(3));
    holds(&out, "Unknown: seat 1: stature not measured.");
}

#[test]
fn json_has_every_digit_and_the_signs_of_the_record() {
    let (code, out, _) = run(&["fit", "masters-a", "--book", "example-club", "--format", "json"]);
    assert_eq!(code, Some(0));
    let root: serde_json::Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(root["format_version"], 1);
    assert_eq!((&root["crew"], &root["boat"]), (&"masters-a".into(), &"kittiwake".into()));
    let first = &root["rowers"][0];
    assert_eq!((&first["foot_hole"], &first["finish_measured"]), (&4.into(), &true.into()));
    assert!((first["finish_deg"]["number"].as_f64().expect("a number") - 33.0).abs() < 1e-9);
    assert!((first["catch_deg"]["number"].as_f64().expect("a number") - 52.0).abs() < 1e-9);
    let spread = root["spread_now_deg"]["number"].as_f64().expect("a number");
    assert!((spread * 10.0).fract().abs() > 1e-6, "rounded: {spread}");
    assert_eq!(root["worth"], "perhaps");
    assert_eq!(root["assumed"].as_array().expect("a list").len(), 10);
}

fn keys(value: &serde_json::Value, path: &str, all: &mut BTreeSet<String>) {
    match value {
        serde_json::Value::Object(map) => {
            for (key, value) in map {
                let path = format!("{path}/{key}");
                keys(value, &path, all);
                all.insert(path);
            }
        }
        serde_json::Value::Array(list) => list.iter().for_each(|value| keys(value, path, all)),
        _ => {}
    }
}

/// Programs rely on these: one may be added, none may go or change its meaning.
#[test]
fn the_keys_of_the_json_stay_as_they_are() {
    let statures = [2050, 1550, 1800, 1800];
    let mut rowers = statures.map(|stature| Rower::of(stature).in_hole(1)).to_vec();
    rowers[2].arc = Some((40, 22));
    let book = Club { chocks: [560, 640, 600, 600], ..Club::of(rowers) }.book();
    let json = reports::fitting_json(&seated(&book));
    let root: serde_json::Value = serde_json::from_str(&json).expect("JSON");
    let mut found = BTreeSet::new();
    keys(&root, "", &mut found);
    let plain = "
        /format_version /crew /boat /rowers /foot_holes /foot_holes_unknown /worth /remains /swap
        /measured /assumed /rowers/seat /rowers/who /rowers/unknown /rowers/foot_hole
        /rowers/foot_hole_now /rowers/foot_hole_best /rowers/stopped_by /rowers/finish_measured
        /rowers/catch_measured /rowers/catch_unknown /rowers/arc_unused
        /remains/shortest /remains/longest /remains/whole_deg /remains/by_chocks_deg
        /remains/by_levers_deg /remains/by_legs_deg /remains/by_bodies_deg /remains/one_hole_deg
        /remains/chocks_alike /remains/chocks_alike/chock_to_pin_mm /remains/chocks_alike/worth
        /swap/seats /swap/worth /measured/finishes /measured/finishes/measured
        /measured/catches /measured/catches/measured
        /assumed/what /assumed/number /assumed/half_width_of_all /assumed/half_width_of_one";
    let values = "
        /spread_now_deg /spread_deg /gain_deg /rowers/leg_room_mm /rowers/finish_deg
        /rowers/finish_off_mean_deg /rowers/catch_deg /remains/chocks_alike/spread_deg
        /remains/chocks_alike/gain_deg /swap/spread_deg /swap/gain_deg
        /measured/finishes/moved_deg /measured/catches/moved_deg";
    let mut expected: BTreeSet<String> = plain.split_whitespace().map(str::to_owned).collect();
    for value in values.split_whitespace() {
        let parts = ["", "/number", "/uncertainty"];
        expected.extend(parts.map(|part| format!("{value}{part}")));
    }
    assert_eq!(found, expected);
}
