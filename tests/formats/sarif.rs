//! SARIF, judged by the schema that OASIS publishes.

use std::collections::BTreeSet;
use std::fs;
use std::sync::LazyLock;

use jsonschema::Validator;
use serde_json::Value;
use serde_json::json;
use tholebook::rules::RULES;

use crate::books::all_states;
use crate::books::example;
use crate::books::folder;
use crate::books::lint_as;
use crate::books::with_gaps;
use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::run::DAY;
use crate::run::Run;

/// The published schema. One pattern in it holds a bracket too many.
static FORM: LazyLock<Validator> = LazyLock::new(|| {
    let text = include_str!("../data/sarif-2.1.0.schema.json");
    assert_eq!(text.matches("[a-zA-Z]{2}]?$").count(), 2);
    let schema = serde_json::from_str(&text.replace("[a-zA-Z]{2}]?$", "[a-zA-Z]{2}?$"));
    let schema: Value = schema.expect("JSON");
    jsonschema::options().should_validate_formats(true).build(&schema).expect("a schema")
});

fn objections(log: &Value) -> Vec<String> {
    FORM.iter_errors(log).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

/// Returns the only run of a log that the schema takes.
#[track_caller]
pub(crate) fn run_of(run: &Run) -> Value {
    let mut log = run.json();
    assert_eq!(objections(&log), Vec::<String>::new());
    log["runs"][0].take()
}

fn results(run: &Value) -> &Vec<Value> {
    run["results"].as_array().expect("a list")
}

fn text<'v>(value: &'v Value, at: &str) -> &'v str {
    let found = value.pointer(at).and_then(Value::as_str);
    found.unwrap_or_else(|| panic!("{at} in {value}"))
}

const URI: &str = "/locations/0/physicalLocation/artifactLocation/uri";
const IDENTITY: &str = "/partialFingerprints/nameAndRule~1v1";

#[test]
fn the_report_of_the_example_club_is_sarif_and_every_result_has_a_place() {
    let run = run_of(&example("sarif", &[]).ends(1));
    assert_eq!(run["columnKind"], "unicodeCodePoints");
    assert_eq!(run["invocations"][0]["exitCode"], 1);
    assert_eq!(run["invocations"][0]["executionSuccessful"], true);
    assert!(results(&run).len() > 30);
    for result in results(&run) {
        assert!(text(result, URI).starts_with("example-club/"), "{result}");
        assert_eq!(
            text(result, "/locations/0/physicalLocation/artifactLocation/uriBaseId"),
            "%SRCROOT%"
        );
        assert!(result["locations"][0]["physicalLocation"]["region"]["startLine"].is_u64());
        let rule = usize::try_from(result["ruleIndex"].as_u64().expect("a number"));
        assert_eq!(result["ruleId"], RULES[rule.expect("a small one")].id);
    }
}

#[test]
fn a_log_that_is_no_sarif_is_refused() {
    let good = example("sarif", &[]).json();
    let changes = [
        ("", "version", json!("2.0.0")),
        ("/runs/0", "columnKind", json!("bytes")),
        ("/runs/0/results/0", "level", json!("danger")),
        ("/runs/0/results/0", "rank", json!(101)),
        ("/runs/0/results/0", "message", json!({})),
        ("/runs/0/results/0", "baselineState", json!("cured")),
        ("/runs/0/results/0", "newKey", json!(1)),
        ("/runs/0/results/0/locations/0/physicalLocation/region", "startLine", json!(0)),
        ("/runs/0/invocations/0", "executionSuccessful", json!("yes")),
    ];
    for (at, key, value) in changes {
        let mut damaged = good.clone();
        damaged.pointer_mut(at).expect("a part")[key] = value.clone();
        assert!(!objections(&damaged).is_empty(), "{at} takes {key}: {value}");
    }
}

#[test]
fn every_rule_is_listed_with_help_sources_and_level() {
    let run = run_of(&example("sarif", &[]));
    let rules = run["tool"]["driver"]["rules"].as_array().expect("a list");
    assert_eq!(rules.len(), RULES.len());
    for (told, rule) in rules.iter().zip(RULES) {
        assert_eq!(told["id"], rule.id);
        let (help, marked) = (text(told, "/help/text"), text(told, "/help/markdown"));
        for part in [rule.remedy, rule.formula, rule.default] {
            assert!(help.contains(&part.replace('[', "\\[").replace(']', "\\]")), "{help}");
        }
        assert!(help.contains("no permission to launch") && marked.contains("**Sources**"));
        assert!(text(told, "/fullDescription/text").contains(rule.reason));
        assert!(!told["properties"]["sources"].as_array().expect("a list").is_empty());
        let level = text(told, "/defaultConfiguration/level");
        let expected = match rule.level.word() {
            "unsure" => "warning",
            "note" => "note",
            _ => "error",
        };
        assert_eq!(level, expected, "{}", rule.id);
    }
}

#[test]
fn dangers_and_faults_are_errors_and_told_apart_by_rank() {
    let run = run_of(&example("sarif", &[]));
    let told = |own: &str| {
        let of = results(&run).iter().filter(|one| one["properties"]["level"] == own);
        let of = of.filter(|one| !text(one, "/message/text").contains("out of use"));
        of.map(|one| format!("{} {}", one["level"], one["rank"])).collect::<BTreeSet<String>>()
    };
    let one = |text: &str| BTreeSet::from([text.to_owned()]);
    assert_eq!(told("danger"), one("\"error\" 100.0"));
    assert_eq!(told("fault"), one("\"error\" 70.0"));
    assert_eq!(told("unsure"), one("\"warning\" 40.0"));
    assert_eq!(told("note"), one("\"note\" 10.0"));
}

#[test]
fn on_a_boat_out_of_use_nothing_is_an_error() {
    let run = run_of(&example("sarif", &["--only", "turnstone"]).ends(0));
    assert!(results(&run).iter().any(|one| one["properties"]["level"] == "danger"));
    assert!(results(&run).iter().all(|one| one["level"] == "note"));
}

#[test]
fn the_other_places_of_a_finding_are_related_and_columns_count_characters() {
    let boat = include_str!("../data/sound-book/boats/kittiwake.yaml");
    let odd =
        boat.replacen("gap: 60", "gap: 55", 1).replacen("name:", "\"möwe möwe\": 1\nname:", 1);
    let folder = folder(&[(BOAT, &odd)]);
    let run = run_of(&lint_as(folder.path(), "sarif", &[]).ends(1));
    let tight = results(&run).iter().find(|one| one["ruleId"] == "gap-too-tight").expect("one");
    assert_eq!(
        tight["relatedLocations"][0]["physicalLocation"]["artifactLocation"]["uri"],
        "oars/long-ash.yaml"
    );
    assert_eq!(tight["relatedLocations"][0]["id"], 1);
    let line = odd.lines().position(|line| line.contains("möwe möwe")).expect("the line") + 1;
    let of_line =
        |one: &&Value| one["locations"][0]["physicalLocation"]["region"]["startLine"] == line;
    let unknown = results(&run).iter().find(of_line).expect("a finding there");
    let region = &unknown["locations"][0]["physicalLocation"]["region"];
    assert_eq!(
        (&region["startColumn"], &region["endColumn"]),
        (&json!(1), &json!(12)),
        "{unknown}"
    );
}

/// Every identity with its rule's state, in order.
fn identities(run: &Value) -> BTreeSet<String> {
    results(run).iter().map(|one| text(one, IDENTITY).to_owned()).collect()
}

#[test]
fn an_identity_outlives_moved_lines_changed_values_and_a_renamed_file() {
    let tight = |gap: &str| {
        let text = include_str!("../data/sound-book/boats/kittiwake.yaml");
        text.replacen("gap: 60", &format!("gap: {gap}"), 1)
    };
    let before = folder(&[(BOAT, &tight("55"))]);
    let after = folder(&[("boats/renamed.yaml", &format!("# moved\n\n{}", tight("54.5")))]);
    fs::remove_file(after.path().join(BOAT)).expect("removed");
    let identities = |folder: &tempfile::TempDir| {
        identities(&run_of(&lint_as(folder.path(), "sarif", &[]).ends(1)))
    };
    assert!(identities(&before).contains("kittiwake/seat-1/rowlock/gap gap-too-tight"));
    assert_eq!(identities(&before), identities(&after));
}

#[test]
fn no_two_results_share_an_identity() {
    let twice = "boat: kittiwake\nclass: surfboat\nodd: 1\n";
    let folder = folder(&[("boats/one.yaml", twice), ("boats/two.yaml", twice)]);
    let run = run_of(&lint_as(folder.path(), "sarif", &[]).ends(1));
    assert_eq!(identities(&run).len(), results(&run).len());
    assert!(identities(&run).contains("kittiwake/odd unknown-key #2"), "{:?}", identities(&run));
}

#[test]
fn since_an_earlier_state_every_result_says_how_it_stands() {
    let club = all_states();
    let run = run_of(&lint_as(club.path(), "sarif", &["--since", "HEAD~1"]).ends(1));
    let of = |seat: u8| {
        let identity = format!("kittiwake/seat-{seat}/rowlock/gap gap-too-tight");
        let own = results(&run).iter().find(|one| text(one, IDENTITY) == identity);
        text(own.expect("one"), "/baselineState")
    };
    assert_eq!([of(1), of(2), of(3), of(4)], ["unchanged", "updated", "absent", "new"]);
    let without = run_of(&lint_as(club.path(), "sarif", &[]).ends(1));
    assert!(results(&without).iter().all(|one| one.get("baselineState").is_none()));
}

#[test]
fn a_waived_result_is_left_out_unless_asked_for_and_then_carries_the_waiver() {
    let waived = |run: &Value| {
        let waived = |one: &&Value| one["ruleId"] == "handle-past-mark-wrong";
        results(run).iter().find(waived).cloned()
    };
    assert_eq!(waived(&run_of(&example("sarif", &[]))), None);
    let run = run_of(&example("sarif", &["--show-waived"]));
    let told = waived(&run).expect("the waived one");
    let expected = json!([{
        "kind": "external",
        "status": "accepted",
        "justification": "junior crew, collars moved in for the season (Tomas Reyne, until 2026-12-31)",
    }]);
    assert_eq!(told["suppressions"], expected);
    assert!(results(&run).iter().all(|one| one["suppressions"].is_array()));
}

#[test]
fn paths_are_told_from_the_top_of_the_repository_in_every_state() {
    let club = Club::new();
    let files: Files = with_gaps(["55", "60", "60", "60"])
        .into_iter()
        .map(|(path, text)| (format!("log book/{path}"), text))
        .collect();
    let id = club.commit(DAY - 2, &[], &files);
    club.check_out(id, &files);
    for state in [&[][..], &["--at", "HEAD"]] {
        let folder = club.path().join("log book");
        let run = run_of(&lint_as(&folder, "sarif", state).ends(1));
        assert_eq!(text(&results(&run)[0], URI), "log%20book/boats/kittiwake.yaml");
    }
}

#[cfg(unix)]
#[test]
fn a_name_that_is_no_utf_8_is_told_byte_by_byte() {
    use std::os::unix::ffi::OsStrExt as _;
    let folder = folder(&[]);
    let name = std::ffi::OsStr::from_bytes(b"m\xf6we:[1] #2\\.yaml");
    fs::write(folder.path().join("boats").join(name), "boat: [\n").expect("a file");
    let run = run_of(&lint_as(folder.path(), "sarif", &[]).ends(1));
    let uris: Vec<&str> = results(&run).iter().map(|one| text(one, URI)).collect();
    assert!(uris.contains(&"boats/m%F6we%3A%5B1%5D%20%232%5C.yaml"), "{uris:?}");
}

#[test]
fn what_could_not_be_had_is_told_and_is_no_success() {
    let run = run_of(&lint_as(std::path::Path::new("/"), "sarif", &["/no/such/book"]).ends(3));
    let invocation = &run["invocations"][0];
    assert_eq!(invocation["executionSuccessful"], false);
    assert_eq!(invocation["exitCode"], 3);
    let told = text(invocation, "/toolExecutionNotifications/0/message/text");
    assert!(told.contains("/no/such/book"), "{told}");
    assert!(results(&run).is_empty());
}

#[test]
fn each_check_that_was_not_made_is_told_with_its_rule() {
    let run = run_of(&example("sarif", &[]));
    let json = example("json", &[]).json();
    let told = run["invocations"][0]["toolExecutionNotifications"].as_array().expect("a list");
    let notes: Vec<&Value> = told.iter().filter(|one| one["level"] == "note").collect();
    assert_eq!(notes.len(), json["not_checked"].as_array().expect("a list").len());
    assert!(notes.iter().all(|one| one["associatedRule"]["index"].is_u64()));
}
