//! Since when a finding stands, and what the rules said at each row.

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::GAP;
use crate::club::edit;
use crate::club::sound;
use crate::club::with_gap;
use crate::run::json;
use crate::run::run;

fn found(club: &Club, name: &str, rule: &str) -> Vec<(String, Option<String>)> {
    let json = json(club, &["history", name, "--when", rule]);
    let rows = json["rows"].as_array().expect("rows");
    let short = |row: &serde_json::Value| {
        let kind = row["kind"].as_str().expect("a kind").to_owned();
        (kind, row["commit"].as_str().map(ToOwned::to_owned))
    };
    rows.iter().map(short).collect()
}

#[test]
fn the_first_commit_with_a_finding_and_its_cure_are_told() {
    let club = Club::new();
    let broken = |gap| {
        let mut files: Files = with_gap(gap);
        edit(&mut files, BOAT, "rigged:", "wind: light", "wind: none");
        files
    };
    let states = [sound(), with_gap("50"), broken("50"), with_gap("60"), with_gap("49")];
    let ids = club.line(&states);
    let expected = [("found", ids[1]), ("cured", ids[3]), ("found", ids[4])];
    let expected: Vec<_> =
        expected.iter().map(|(kind, id)| ((*kind).to_owned(), Some(id.to_string()))).collect();
    assert_eq!(found(&club, GAP, "gap-too-tight"), expected);
    assert_eq!(found(&club, "kittiwake/seat-1", "gap-too-tight"), []);
    let text = run(&club, &["history", GAP, "--when", "gap-too-tight"]).out;
    assert!(text.contains("first found: D danger") && text.ends_with("It stands.\n"), "{text}");
}

#[test]
fn an_oar_that_grew_thicker_makes_the_gap_too_tight_though_the_boat_was_not_touched() {
    let club = Club::new();
    let mut thick = sound();
    edit(&mut thick, "oars/long-ash.yaml", "oar: A2", "widest: 52", "widest: 59");
    let ids = club.line(&[sound(), thick]);
    let found = found(&club, GAP, "gap-too-tight");
    assert_eq!(found, [("found".to_owned(), Some(ids[1].to_string()))]);
}

#[test]
fn a_limit_that_was_narrowed_is_the_commit_to_be_told() {
    let club = Club::new();
    let mut strict = sound();
    let limits = "limits:\n  surfboat:\n    clearance: {least: 9}\n";
    strict.get_mut("club.yaml").expect("the club").push_str(limits);
    let ids = club.line(&[sound(), strict]);
    let found = found(&club, GAP, "gap-too-tight");
    assert_eq!(found, [("found".to_owned(), Some(ids[1].to_string()))]);
}

#[test]
fn a_set_that_two_boats_carried_on_one_day_is_found_at_the_oars_of_the_second() {
    let club = Club::new();
    let mut two = sound();
    two.insert("boats/skua.yaml".to_owned(), sound()[BOAT].replace("kittiwake", "skua"));
    let ids = club.line(&[sound(), two]);
    for name in ["skua/oars", "skua"] {
        let found = found(&club, name, "oar-twice");
        assert_eq!(found, [("found".to_owned(), Some(ids[1].to_string()))], "{name}");
    }
    let told = json(&club, &["history", "skua/oars"]);
    assert_eq!(told["rows"][0]["verdict"], "note");
}

#[test]
fn each_row_has_the_verdict_of_its_own_commit() {
    let club = Club::new();
    club.line(&[sound(), with_gap("50"), with_gap("60")]);
    let told = json(&club, &["history", GAP]);
    let verdicts: Vec<_> =
        told["rows"].as_array().expect("rows").iter().map(|row| row["verdict"].clone()).collect();
    assert_eq!(verdicts[1], "danger");
    assert_ne!(verdicts[2], "danger");
    assert_eq!(verdicts[0], verdicts[2]);
}

#[test]
fn a_sum_written_down_wrong_is_no_fault_of_the_reading() {
    let club = Club::new();
    let mut wrong = with_gap("61");
    edit(&mut wrong, BOAT, "- seat: 2", "clearance: 8.0", "clearance: 2.0");
    club.line(&[sound(), wrong]);
    let told = json(&club, &["history", GAP]);
    assert_eq!(told["rows"][1]["verdict"], told["rows"][0]["verdict"], "{told}");
}

#[test]
fn a_boat_that_cannot_be_read_for_a_while_was_not_cured() {
    let club = Club::new();
    let mut unread = sound();
    unread.insert(BOAT.to_owned(), "name: [\n".to_owned());
    let ids = club.line(&[with_gap("50"), unread, with_gap("50")]);
    let found = found(&club, GAP, "gap-too-tight");
    assert_eq!(found, [("found".to_owned(), Some(ids[0].to_string()))]);
}
