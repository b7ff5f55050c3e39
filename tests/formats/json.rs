//! The JSON report holds what `schema/lint-report.json` says, no more and no less.

use std::sync::LazyLock;

use jsonschema::Validator;
use serde_json::Value;
use serde_json::json;

use crate::books::all_states;
use crate::books::example;
use crate::books::folder;
use crate::books::lint_as;
use crate::run::Run;

static FORM: LazyLock<Validator> = LazyLock::new(|| {
    let text = include_str!("../../schema/lint-report.json");
    let schema = serde_json::from_str(text).expect("JSON");
    assert!(jsonschema::draft202012::meta::is_valid(&schema));
    jsonschema::validator_for(&schema).expect("a schema")
});

fn objections(report: &Value) -> Vec<String> {
    FORM.iter_errors(report).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

#[track_caller]
fn sound(run: &Run) -> Value {
    let report = run.json();
    assert_eq!(objections(&report), Vec::<String>::new());
    report
}

fn findings(report: &Value, has: impl Fn(&Value) -> bool) -> Vec<&Value> {
    let findings = report["findings"].as_array().expect("a list");
    findings.iter().filter(|finding| has(finding)).collect()
}

#[test]
fn the_report_of_the_example_club_is_of_the_form_with_a_waiver_and_checks_not_made() {
    let report = sound(&example("json", &[]).ends(1));
    assert!(!findings(&report, |one| one["waived"].is_object()).is_empty());
    assert!(!findings(&report, |one| one["limit"].is_object()).is_empty());
    assert!(!report["not_checked"].as_array().expect("a list").is_empty());
}

#[test]
fn a_report_with_all_four_states_is_of_the_form() {
    let report = sound(&lint_as(all_states().path(), "json", &["--since", "HEAD~1"]).ends(1));
    for state in ["new", "worse", "known", "cured"] {
        assert!(!findings(&report, |one| one["state"] == state).is_empty(), "none is {state}");
    }
}

#[test]
fn a_report_of_what_cannot_be_read_is_of_the_form() {
    let broken =
        [("boats/petrel.yaml", "boat: petrel\n  seats: [\n"), ("club.yaml", "logbook: 9\n")];
    let report = sound(&lint_as(folder(&broken).path(), "json", &[]).ends(2));
    assert!(!findings(&report, |one| one["rule"] == "unreadable").is_empty());
    let empty = tempfile::tempdir().expect("a folder");
    std::fs::write(empty.path().join("club.yaml"), "logbook: 1\n").expect("a file");
    sound(&lint_as(empty.path(), "json", &[]).ends(3));
}

#[test]
fn a_report_that_was_changed_in_any_way_is_refused() {
    let report = sound(&example("json", &[]));
    let tight = "/findings/0";
    let changes: [(&str, Option<&str>, Value); 9] = [
        ("", Some("new-key"), json!(1)),
        (tight, Some("new-key"), json!(1)),
        (&format!("{tight}/spans/0"), Some("new-key"), json!(1)),
        (&format!("{tight}/spans/0/start"), Some("line"), json!(0)),
        (tight, Some("level"), json!("bad")),
        (tight, Some("state"), json!("old")),
        (tight, Some("message"), json!("")),
        ("/summary", Some("danger"), json!(-1)),
        ("", Some("format_version"), json!(2)),
    ];
    for (at, key, value) in changes {
        let mut damaged = report.clone();
        let key = key.expect("a key");
        damaged.pointer_mut(at).expect("a part")[key] = value.clone();
        assert!(!objections(&damaged).is_empty(), "{at} takes {key}: {value}");
    }
}

#[test]
fn a_report_without_any_one_of_its_keys_is_refused() {
    let report = sound(&example("json", &[]));
    let parts = ["", "/tool", "/checked", "/summary", "/findings/0", "/findings/0/value"];
    let parts = parts.into_iter().chain(["/findings/0/spans/0", "/not_checked/0"]);
    for at in parts {
        let keys = report.pointer(at).and_then(Value::as_object).expect("a part").keys();
        for key in keys {
            let mut damaged = report.clone();
            let part = damaged.pointer_mut(at).and_then(Value::as_object_mut).expect("a part");
            part.remove(key);
            assert!(!objections(&damaged).is_empty(), "{at} may be without {key}");
        }
    }
}
