//! What became of the findings since the history parted: new, worse, known, cured.

use std::fs;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;
use crate::run::DAY;
use crate::run::UNFIT;
use crate::run::UNLIKE;
use crate::run::before_and_after as club;
use crate::run::lint;
use crate::run::read_again;
use crate::run::stage;
use crate::run::told;
use crate::run::unfit;
use crate::run::with_chock;

const WAIVER: &str = "- finding: kittiwake\n  rule: chocks-unlike\n  because: a short rower\n  \
                      by: Tomas Reyne\n  until: 2026-11-20\n  at: 30\n";

fn waived(mut files: Files) -> Files {
    files.insert("waivers.yaml".to_owned(), WAIVER.to_owned());
    files
}

/// Runs it since the commit before.
#[track_caller]
fn since(club: &Club, code: i32) -> Vec<String> {
    told(club, &["--since", "HEAD~1"]).ends(code).serious()
}

#[test]
fn since_itself_everything_is_known() {
    let club = club(&sound(), &with_chock("630"));
    let run = told(&club, &["--at", "HEAD", "--since", "HEAD"]).ends(0);
    assert_eq!(run.serious(), [format!("known {UNLIKE}")]);
    assert_eq!(told(&club, &["--since", "HEAD"]).ends(0).serious(), [format!("known {UNLIKE}")]);
    lint(&club, &[]).ends(1);
}

#[test]
fn without_an_earlier_state_no_finding_has_a_standing() {
    let run = told(&club(&sound(), &with_chock("630")), &[]).ends(1);
    assert_eq!(run.serious(), [format!("- {UNLIKE}")]);
}

#[test]
fn a_fault_on_other_lines_in_another_file_or_indented_otherwise_is_known() {
    let before = with_chock("630");
    let mut lower = before.clone();
    edit(&mut lower, BOAT, "", "boat:", "# Rigged on the sand.\n\n\nboat:");
    let mut renamed = before.clone();
    let text = renamed.remove(BOAT).expect("the boat");
    renamed.insert("boats/heavy/k.yml".to_owned(), text);
    let mut indented = before.clone();
    let text = indented.get_mut(BOAT).expect("the boat");
    let deeper = |line: &str| {
        if line.starts_with(' ') { format!("  {line}\n") } else { format!("{line}\n") }
    };
    let lines = text.lines().map(deeper);
    *text = lines.collect();
    for after in [lower, renamed, indented] {
        let club = club(&before, &after);
        assert_eq!(since(&club, 0), [format!("known {UNLIKE}")]);
    }
}

#[test]
fn a_fault_made_worse_gates_and_one_made_better_does_not() {
    for (chock, code, word) in [("640", 1, "worse"), ("625", 0, "known"), ("630", 0, "known")] {
        let mut after = with_chock(chock);
        edit(&mut after, BOAT, "read-again", "2026-10-28", "2026-10-29");
        let club = club(&with_chock("630"), &after);
        let found = told(&club, &["--since", "HEAD~1", "--only", "kittiwake"]).ends(code);
        let found: Vec<String> =
            found.serious().into_iter().filter(|one| one.contains("chocks-unlike")).collect();
        assert_eq!(found, [format!("{word} {UNLIKE}")], "{chock}");
    }
}

#[test]
fn a_new_fault_gates_beside_a_known_one() {
    let mut after = with_chock("630");
    edit(&mut after, BOAT, "seat: 4", "handle-past-mark: 321", "handle-past-mark: 350");
    read_again(&mut after, 31, "seat-4/handle-past-mark");
    let found = since(&club(&with_chock("630"), &after), 1);
    assert!(found.contains(&format!("known {UNLIKE}")), "{found:?}");
    let handle = "new fault handle-past-mark-wrong kittiwake/seat-4/handle-past-mark";
    assert!(found.contains(&handle.to_owned()), "{found:?}");
}

#[test]
fn of_several_of_one_name_and_rule_each_is_told_by_what_it_says() {
    let with = |spares: &str| {
        let mut files = sound();
        edit(&mut files, BOAT, "", "spares: [A5]", &format!("spares: [{spares}]"));
        files
    };
    let club = club(&with("A7, A8"), &with("A8, A9"));
    let run = told(&club, &["--since", "HEAD~1"]).ends(1);
    let found = run.found();
    let mut spares: Vec<&String> =
        found.iter().filter(|one| one.contains("no-such-record kittiwake/spares")).collect();
    spares.sort();
    let fault = "fault no-such-record kittiwake/spares";
    assert_eq!(
        spares,
        [&format!("cured {fault}"), &format!("known {fault}"), &format!("new {fault}")]
    );
    let json = run.json();
    let all = json["findings"].as_array().expect("a list").iter();
    let new = all.filter(|one| one["state"] == "new" && one["rule"] == "no-such-record");
    let new: Vec<&str> = new.map(|one| one["message"].as_str().expect("words")).collect();
    assert!(new.len() == 1 && new[0].contains("`A9`"), "{new:?}");
}

#[test]
fn a_danger_gates_however_long_it_is_known() {
    let club = club(&unfit(), &unfit());
    assert_eq!(since(&club, 1), [format!("known {UNFIT}")]);
    lint(&club, &["--since", "HEAD~1", "--fail-on", "never"]).ends(1);
}

#[test]
fn what_is_cured_is_listed_where_it_stood_and_not_counted() {
    let club = club(&with_chock("630"), &with_chock("602"));
    let run = told(&club, &["--since", "HEAD~1"]);
    assert!(run.found().contains(&format!("cured {UNLIKE}")), "{:?}", run.found());
    let json = run.json();
    let all = json["findings"].as_array().expect("a list");
    let cured = all.iter().find(|one| one["state"] == "cured" && one["level"] == "fault");
    let cured = cured.expect("it is there");
    assert_eq!(cured["spans"][0]["path"], BOAT);
    assert!(cured["spans"][0]["start"]["line"].as_u64() > Some(1));
    let counted = all.iter().filter(|one| one["level"] == "fault" && one["state"] != "cured");
    assert_eq!(json["summary"]["fault"], counted.count());
    for format in ["text", "brief"] {
        let out = lint(&club, &["--since", "HEAD~1", "--format", format]).out;
        assert!(out.contains(&format!("cured: {UNLIKE}: it was: ")), "{out}");
        assert!(out.contains(" cured"), "{out}");
    }
    let out = lint(&club, &["--since", "HEAD~1", "--spoken"]).out;
    assert!(out.contains("Cured (fault). It was: Kittiwake: the back chocks differ by 30.0 mill"));
}

#[test]
fn what_is_cured_is_narrowed_to_the_names_asked_for() {
    let mut before = with_chock("630");
    edit(&mut before, BOAT, "walk-round", "hull: ok", "hull: unfit");
    let mut after = sound();
    edit(&mut after, BOAT, "rigged", "date: 2026-10-17", "date: 2026-10-24");
    let club = club(&before, &after);
    let hull = "kittiwake/rigged/walk-round";
    let run = told(&club, &["--since", "HEAD~1", "--only", hull]).ends(0);
    assert_eq!(run.found(), [format!("cured {UNFIT}")]);
    let run = told(&club, &["--since", "HEAD~1", "--only", "long-ash"]).ends(0);
    assert_eq!(run.found(), [""; 0]);
}

#[test]
fn a_known_fault_gates_when_its_waiver_is_gone_but_not_while_it_stands() {
    let (with, without) = (waived(with_chock("630")), with_chock("630"));
    assert_eq!(since(&club(&with, &with), 0), [format!("known {UNLIKE}")]);
    assert_eq!(since(&club(&with, &without), 1), [format!("worse {UNLIKE}")]);
    assert_eq!(since(&club(&without, &with), 0), [format!("known {UNLIKE}")]);
}

#[test]
fn limits_that_are_tightened_now_judge_both_sides() {
    let before = with_chock("612");
    let mut after = before.clone();
    let limits = "limits:\n  surfboat:\n    chocks: {most: 5, source: agreed}\npeople:";
    edit(&mut after, "club.yaml", "", "people:", limits);
    let club = club(&before, &after);
    assert_eq!(since(&club, 0), [format!("known {UNLIKE}")]);
    lint(&club, &[]).ends(1);
}

#[test]
fn the_newest_common_commit_counts_not_the_branch_that_went_on() {
    let club = Club::new();
    let first = club.commit(DAY - 9, &[], &with_chock("630"));
    let mended = club.commit(DAY - 2, &[first], &sound());
    let mut ours = with_chock("630");
    edit(&mut ours, BOAT, "", "wind: light", "wind: none");
    let head = club.commit(DAY - 1, &[first], &ours);
    club.check_out(head, &ours);
    let run = told(&club, &["--since", &mended.to_string()]).ends(0);
    assert_eq!(run.serious(), [format!("known {UNLIKE}")]);
    let text = lint(&club, &["--since", &mended.to_string()]).ends(0).out;
    assert!(text.contains(&format!("since commit {}", &first.to_string()[..8])), "{text}");
}

#[test]
fn both_sides_are_judged_on_one_day() {
    let club = club(&sound(), &sound());
    let late = ["--since", "HEAD~1", "--as-of", "2027-06-01", "--format", "json"];
    let run = crate::run::lint_in(club.path(), &late).ends(0);
    assert!(!run.found().is_empty(), "readings of last year are old");
    assert!(run.found().iter().all(|one| one.starts_with("known ")), "{:?}", run.found());
}

#[test]
fn a_record_that_could_not_be_read_before_hides_nothing_now() {
    let mut before = with_chock("630");
    before.insert(BOAT.to_owned(), "boat: [kittiwake\n".to_owned());
    let found = told(&club(&before, &with_chock("630")), &["--since", "HEAD~1"]).ends(1).found();
    assert!(found.contains(&format!("new {UNLIKE}")), "{found:?}");
    assert!(found.iter().any(|one| one.starts_with("cured fault unreadable")), "{found:?}");
}

#[test]
fn an_earlier_state_that_can_not_be_had_is_exit_3_and_never_taken_for_an_empty_one() {
    let club = club(&with_chock("630"), &with_chock("630"));
    for rev in ["no-such", "HEAD~7", "HEAD:boats", "", "-x"] {
        let run = lint(&club, &[&format!("--since={rev}")]).ends(3);
        assert!(run.out.is_empty() && !run.err.is_empty(), "{rev}: {}", run.out);
    }
}

#[test]
fn histories_that_never_met_are_exit_3() {
    let club = club(&with_chock("630"), &with_chock("630"));
    let apart = club.commit(DAY - 3, &[], &sound()).to_string();
    let run = lint(&club, &["--since", &apart]).ends(3);
    assert!(run.err.contains("share no history") && run.out.is_empty(), "{}", run.err);
}

#[test]
fn a_shallow_clone_without_the_parting_is_exit_3_with_the_command_that_helps() {
    let club = Club::new();
    let first = club.commit(DAY - 9, &[], &sound());
    let mine = club.commit(DAY - 2, &[first], &with_chock("630"));
    let other = club.commit(DAY - 2, &[first], &sound());
    club.check_out(mine, &with_chock("630"));
    fs::write(club.git.path().join("shallow"), format!("{mine}\n{other}\n")).expect("written");
    let run = lint(&club, &["--since", &other.to_string()]).ends(3);
    assert!(run.err.contains("git fetch --unshallow") && run.out.is_empty(), "{}", run.err);
    let run = lint(&club, &["--since", "HEAD~1"]).ends(3);
    assert!(run.out.is_empty() && run.err.contains("unshallow"), "{}", run.err);
}

#[test]
fn without_a_repository_nothing_can_be_called_new() {
    let club = club(&sound(), &sound());
    fs::remove_dir_all(club.path().join(".git")).expect("removed");
    let run = lint(&club, &["--since", "HEAD"]).ends(3);
    assert!(run.err.contains("no git repository") && run.out.is_empty(), "{}", run.err);
}

#[test]
fn before_the_first_commit_all_is_new() {
    for (files, code, found) in
        [(sound(), 0, vec![]), (with_chock("630"), 1, vec![format!("new {UNLIKE}")])]
    {
        let club = Club::new();
        club.lay_out(&files);
        stage(&club, &files);
        let run = told(&club, &["--staged", "--since", "HEAD"]).ends(code);
        assert_eq!(run.serious(), found);
    }
}

#[test]
fn the_first_commit_of_a_book_in_a_repository_of_other_things_has_all_new() {
    let club = Club::new();
    let notes = Files::from([("notes.txt".to_owned(), "about the boats\n".to_owned())]);
    let first = club.commit(DAY - 9, &[], &notes);
    club.check_out(first, &with_chock("630"));
    stage(&club, &with_chock("630"));
    let run = told(&club, &["--staged", "--since", "HEAD"]).ends(1);
    assert_eq!(run.serious(), [format!("new {UNLIKE}")]);
}
