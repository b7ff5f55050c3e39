//! The command: exit codes, names, and JSON that programs rely on.

use std::collections::BTreeSet;
use std::fs;
use std::process::Command;

use serde_json::Value;

fn run(arguments: &[&str]) -> (Option<i32>, String, String) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    let out = command.arg("match").args(arguments).env_remove("COLUMNS").output();
    let out = out.expect("the program");
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    (out.status.code(), text(&out.stdout), text(&out.stderr))
}

#[test]
fn the_example_is_seen_at_a_glance() {
    let (code, out, err) = run(&["--book", "example-club"]);
    assert_eq!((code, err.as_str()), (Some(1), ""));
    let glance = "           fulmar    gannet    kittiwake  sanderling  turnstone\n\
                  long-ash   clears    tight     clears     unknown     unknown\n\
                  old-ash    clears    tight     clears     unknown     unknown\n\
                  short-ash  clears    tight     clears     unknown     unknown\n\
                  spruce     clears    tight     clears     unknown     unknown\n";
    assert!(out.contains(glance), "{out}");
    assert!(
        out.contains(
            "400 tries, one oar in one rowlock each: tight 40, unknown 80, loose 0, clears"
        )
    );
    for line in out.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
}

#[test]
fn the_exit_code_tells_whether_every_oar_tried_clears() {
    let (code, out, _) = run(&["--book", "tests/data/sound-book"]);
    assert_eq!(code, Some(0), "{out}");
    let (code, _, _) = run(&["fulmar", "--book", "example-club"]);
    assert_eq!(code, Some(0));
    let (code, _, _) = run(&["gannet", "--book", "example-club"]);
    assert_eq!(code, Some(1));
    // She is out of use: shown, and it gates nothing.
    let (code, out, _) = run(&["turnstone", "--book", "example-club"]);
    assert_eq!(code, Some(0));
    assert!(out.contains("(turnstone), rigged 2026-09-26, out of use"), "{out}");
}

#[test]
fn a_set_is_tried_in_every_boat_and_a_boat_with_every_set() {
    let (_, of_set, _) = run(&["spruce", "--book", "example-club"]);
    assert_eq!(of_set.matches("\nspruce").count(), 5, "{of_set}");
    assert!(!of_set.contains("long-ash in"), "{of_set}");
    let (_, of_boat, _) = run(&["fulmar", "--book", "example-club"]);
    assert_eq!(of_boat.matches(" in Fulmar (fulmar), rigged 2026-10-17\n").count(), 4, "{of_boat}");
}

#[test]
fn a_name_that_nothing_has_is_refused_with_the_nearest() {
    let (code, out, err) = run(&["kitiwake", "--book", "example-club"]);
    assert_eq!((code, out.as_str()), (Some(2), ""));
    assert!(err.contains("no oar set or boat called kitiwake. Did you mean kittiwake?"), "{err}");
    let (code, _, err) = run(&["\u{1b}[2Jx\u{202e}", "--book", "example-club"]);
    assert_eq!(code, Some(2));
    assert!(!err.contains(['\u{1b}', '\u{202e}']), "{err:?}");
}

/// A book of some files.
fn book(files: &[(&str, &str)]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    for (path, text) in files {
        let to = folder.path().join(path);
        fs::create_dir_all(to.parent().expect("a folder")).expect("a new folder");
        fs::write(to, text).expect("a new file");
    }
    folder
}

#[test]
fn without_a_boat_or_a_set_nothing_can_be_matched() {
    let boat = include_str!("../data/sound-book/boats/kittiwake.yaml");
    let oars = include_str!("../data/sound-book/oars/long-ash.yaml");
    let club = ("club.yaml", "logbook: 1\n");
    for (files, missing) in [
        (vec![club, ("boats/k.yaml", boat)], "this book has no oar set that can be read"),
        (vec![club, ("oars/a.yaml", oars)], "this book has no boat that can be read"),
    ] {
        let folder = book(&files);
        let (code, out, err) = run(&["--book", folder.path().to_str().expect("a path")]);
        assert_eq!((code, out.as_str()), (Some(3), ""));
        assert!(err.contains(missing), "{err}");
    }
}

#[test]
fn a_set_without_oars_and_a_boat_without_seats_are_unknown() {
    let oars = include_str!("../data/sound-book/oars/long-ash.yaml");
    let folder = book(&[
        ("club.yaml", "logbook: 1\n"),
        ("boats/k.yaml", "boat: tern\nclass: surfboat\noars: long-ash\nseats: []\n"),
        ("oars/a.yaml", oars),
        ("oars/b.yaml", "oar-set: bare\noars: []\n"),
    ]);
    let book = folder.path().to_str().expect("a path");
    for arguments in [&["--book", book][..], &["tern", "--book", book], &["bare", "--book", book]] {
        let (code, out, _) = run(arguments);
        assert_eq!(code, Some(1), "{out}");
        assert!(out.contains("unknown"), "{out}");
    }
    let (_, out, _) = run(&["--book", book, "--format", "json"]);
    let root: Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(root["matches"][0]["verdict"], "unknown");
}

#[test]
fn a_club_file_that_can_not_be_used_is_wrong_usage_and_the_rest_is_told() {
    let boat = include_str!("../data/sound-book/boats/kittiwake.yaml");
    let oars = include_str!("../data/sound-book/oars/long-ash.yaml");
    let folder = book(&[
        ("club.yaml", "logbook: 1\nclubb: X\n"),
        ("boats/k.yaml", boat),
        ("oars/a.yaml", oars),
    ]);
    let (code, out, err) = run(&["--book", folder.path().to_str().expect("a path")]);
    assert_eq!(code, Some(2));
    assert!(out.contains("kittiwake"), "{out}");
    assert!(err.contains("1 thing in this book can't be read"), "{err}");
}

fn keys(value: &Value, path: &str, all: &mut BTreeSet<String>) {
    match value {
        Value::Object(map) => {
            for (key, value) in map {
                let path = format!("{path}/{key}");
                keys(value, &path, all);
                all.insert(path);
            }
        }
        Value::Array(list) => list.iter().for_each(|value| keys(value, path, all)),
        _ => {}
    }
}

/// Programs rely on these: one may be added, none may go or change its meaning.
#[test]
fn the_keys_of_the_json_stay_as_they_are() {
    let (code, out, _) = run(&["--book", "example-club", "--format", "json"]);
    assert_eq!(code, Some(1));
    let root: Value = serde_json::from_str(&out).expect("JSON");
    let mut found = BTreeSet::new();
    keys(&root, "", &mut found);
    let values = [
        "clearance_mm",
        "clearance_in_roll_mm",
        "looseness_mm",
        "handle_past_mark_computed_mm",
        "gearing",
    ];
    let oar = "/matches/seats/oars";
    let mut expected: BTreeSet<String> = [
        "/format_version",
        "/matches",
        "/not_found",
        "/summary",
        "/summary/clears",
        "/summary/loose",
        "/summary/unknown",
        "/summary/tight",
        "/matches/boat",
        "/matches/out_of_use",
        "/matches/oar_set",
        "/matches/carried",
        "/matches/verdict",
        "/matches/seats",
        "/matches/seats/seat",
        oar,
    ]
    .map(str::to_owned)
    .into();
    let of_oar = [
        "oar",
        "whose",
        "state",
        "unfit",
        "verdict",
        "proven",
        "decided_by",
        "unknown",
        "bed_fraction",
        "decided_by/figure",
        "decided_by/beyond_mm",
        "decided_by/limit_mm",
        "decided_by/from",
        "decided_by/source",
    ];
    expected.extend(of_oar.map(|key| format!("{oar}/{key}")));
    for value in values {
        for key in ["", "/number", "/uncertainty"] {
            expected.insert(format!("{oar}/{value}{key}"));
        }
    }
    assert_eq!(found, expected);
}

#[test]
fn the_json_has_every_digit_and_says_null_of_what_is_unknown() {
    let (_, out, _) = run(&["kittiwake", "--book", "example-club", "--format", "json"]);
    let root: Value = serde_json::from_str(&out).expect("JSON");
    assert_eq!(root["format_version"], 1);
    let set = &root["matches"][0];
    assert_eq!((&set["oar_set"], &set["carried"]), (&"long-ash".into(), &true.into()));
    let oars = set["seats"][0]["oars"].as_array().expect("a list");
    let whose: Vec<&str> = oars.iter().filter_map(|oar| oar["whose"].as_str()).collect();
    assert_eq!(whose, ["own", "other", "other", "other", "spare"]);
    let handle = oars[0]["handle_past_mark_computed_mm"]["number"].as_f64().expect("a number");
    // (1150 + 30) cos 6 deg - 792 - 61
    let by_hand = 1180.0 * 6_f64.to_radians().cos() - 853.0;
    assert!((handle - by_hand).abs() < 1e-9, "{handle}");
    assert_eq!(oars[0]["decided_by"]["figure"], "clearance_mm");
    assert_eq!(oars[0]["decided_by"]["limit_mm"], 5.0);
    let (_, out, _) = run(&["sanderling", "--book", "example-club", "--format", "json"]);
    let root: Value = serde_json::from_str(&out).expect("JSON");
    let oar = &root["matches"][0]["seats"][2]["oars"][0];
    assert_eq!(
        (&oar["verdict"], &oar["unknown"]),
        (&"unknown".into(), &"rowlock/gap not measured".into())
    );
    assert!(oar["clearance_mm"].is_null() && oar["decided_by"].is_null());
}
