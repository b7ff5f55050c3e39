//! The command: what it prints, how it ends, and where it writes what she should read.

use std::fs;
use std::path::Path;
use std::process::Command;

use serde_json::Value;

const CLUB: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/example-club");

fn run(arguments: &[&str]) -> (Option<i32>, String, String) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    let command = command.args(arguments).env("NO_COLOR", "1").env("COLUMNS", "80");
    let output = command.output().expect("the program starts");
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
    (output.status.code(), text(output.stdout), text(output.stderr))
}

fn worklist(boat: &str, more: &[&str]) -> (Option<i32>, String, String) {
    let asked = ["worklist", boat, "--book", CLUB, "--as-of", "2026-11-01"];
    run(&[&asked, more].concat())
}

#[test]
fn it_ends_by_what_there_is_to_do() {
    assert_eq!(worklist("fulmar", &[]).0, Some(0), "nothing to do");
    assert_eq!(worklist("kittiwake", &[]).0, Some(1), "work to do");
    assert_eq!(worklist("sanderling", &[]).0, Some(3), "not all was measured");
    let (code, out, err) = worklist("kittiwak", &[]);
    assert_eq!((code, out.as_str()), (Some(2), ""));
    assert!(err.contains("Did you mean kittiwake?"), "{err}");
}

#[test]
fn the_text_is_80_columns_wide_without_colour_and_says_the_cautions_once() {
    for boat in ["fulmar", "kittiwake", "gannet", "sanderling", "turnstone"] {
        let (_, text, _) = worklist(boat, &[]);
        let widest = text.lines().map(|line| line.chars().count()).max();
        assert!(widest <= Some(80) && !text.contains('\u{1b}'), "{text}");
        for caution in ["Cold-bending", "Where the sums", "A clean report is no permission"] {
            assert!(text.matches(caution).count() <= 1, "{caution}: {text}");
        }
    }
    let text = worklist("kittiwake", &[]).1;
    assert!(text.contains("3 pieces of work, 1 bend.") && text.contains("Cold-bending"), "{text}");
}

/// By hand, as in the tests of the amounts: 4 mm over 150, 0.1 deg of roll, a plate of 80 mm.
#[test]
fn json_has_the_steps_the_number_of_bends_and_the_result() {
    let (code, text, err) = worklist("kittiwake", &["--format", "json"]);
    assert_eq!((code, err.as_str()), (Some(1), ""));
    let list: Value = serde_json::from_str(&text).expect("JSON");
    let mut keys: Vec<&str> = list.as_object().expect("a map").keys().map(String::as_str).collect();
    keys.sort_unstable();
    let all = [
        "as_of",
        "bends",
        "boat",
        "conflicts",
        "format_version",
        "measure_first",
        "not_planned",
        "result",
        "steps",
        "still_open",
        "waived",
    ];
    assert_eq!(keys, all);
    assert_eq!(list["bends"], 1);
    let steps = list["steps"].as_array().expect("steps");
    let works: Vec<&Value> = steps.iter().map(|step| &step["work"]).collect();
    assert_eq!(works, ["pack-pin", "bend-forward-horn", "read-again"]);
    let pack = steps[0]["amounts"]["pack_mm"].as_f64().expect("a number");
    assert!((pack - 1.9936).abs() < 1e-3, "{pack}");
    let result = list["result"]["boats/kittiwake.yaml"].as_str().expect("her record");
    assert!(result.contains("predicted: true"), "{result}");
}

/// The work puts right what it is for: nothing of it is found in the predicted book, which as a whole
/// is a danger, since nobody measured it.
#[test]
fn the_predicted_book_is_linted_clean_of_what_was_worked_on() {
    let folder = tempfile::tempdir().expect("a folder");
    let to = folder.path().join("after");
    let to = to.to_str().expect("UTF-8");
    for boat in ["kittiwake", "gannet"] {
        let to = format!("{to}-{boat}");
        let (code, out, err) = worklist(boat, &["--result", &to]);
        assert_eq!(code, Some(1), "{out}{err}");
        let (code, found, _) =
            run(&["lint", &to, "--only", boat, "--as-of", "2026-11-01", "--format", "json"]);
        assert_eq!(code, Some(1));
        let found: Value = serde_json::from_str(&found).expect("JSON");
        let of = |key: &str| -> Vec<(Value, Value)> {
            let list: Value =
                serde_json::from_str(&worklist(boat, &["--format", "json"]).1).expect("JSON");
            let all = list[key].as_array().expect("findings").clone();
            all.iter().map(|own| (own["rule"].clone(), own["name"].clone())).collect()
        };
        let told = [of("measure_first"), of("still_open")].concat();
        let faults = found["findings"].as_array().expect("findings").iter().filter(|own| {
            let level = &own["level"];
            own["waived"].is_null() && (level == "danger" || level == "fault")
        });
        let faults: Vec<_> = faults.map(|own| (own["rule"].clone(), own["name"].clone())).collect();
        assert!(faults.iter().any(|(rule, _)| rule == "predicted-not-measured"), "{faults:?}");
        let other: Vec<_> = faults
            .iter()
            .filter(|own| own.0 != "predicted-not-measured" && !told.contains(own))
            .collect();
        assert!(other.is_empty(), "{other:?}");
    }
}

#[test]
fn a_predicted_record_is_never_put_into_a_book_or_over_something() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("mine"), "x").expect("written");
    let here = folder.path().to_str().expect("UTF-8");
    let inside = format!("{CLUB}/after");
    for to in [here, inside.as_str()] {
        let (code, out, err) = worklist("kittiwake", &["--result", to]);
        assert_eq!((code, out.as_str()), (Some(2), ""), "{err}");
        assert!(err.contains("Give a new folder outside the book."), "{err}");
    }
    assert!(!Path::new(&inside).exists());
    let (_, record, err) = worklist("kittiwake", &["--result", "-"]);
    assert!(record.starts_with("boat: kittiwake"), "{record}{err}");
}

/// A name is shown escaped, and no line is one that a log would obey.
#[test]
fn a_hostile_name_steers_neither_terminal_nor_log() {
    let folder = tempfile::tempdir().expect("a folder");
    let book = folder.path().join("club");
    let book = book.to_str().expect("UTF-8");
    assert_eq!(run(&["sample", book]).0, Some(0));
    let boat = format!("{book}/boats/surf/kittiwake.yaml");
    let text = fs::read_to_string(&boat).expect("her record");
    let name = "name: \"::error::x\\u202e\\e[31m ##[error]y\"";
    fs::write(&boat, text.replacen("name: Kittiwake", name, 1)).expect("written");
    for command in ["worklist", "ready"] {
        let day = if command == "ready" { "--on" } else { "--as-of" };
        let (_, text, err) = run(&[command, "kittiwake", "--book", book, day, "2026-11-01"]);
        let all = format!("{text}{err}");
        assert!(all.contains("error"), "{all}");
        for hidden in ['\u{202e}', '\u{1b}'] {
            assert!(!all.contains(hidden), "{all}");
        }
        let obeyed = |line: &str| {
            let line = line.trim_start();
            line.starts_with("::") || line.starts_with("##[")
        };
        assert!(!all.lines().any(obeyed), "{all}");
    }
}
