//! What the book's history tells: counted, read and checked commit by commit.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use tempfile::tempdir;
use tholebook::model::Book;
use tholebook::reading;
use tholebook::rules;
use tholebook::rules::Check;
use tholebook::rules::Checked;
use tholebook::rules::Level;
use tholebook::store::Named;
use tholebook::store::founding::Founding;
use tholebook::store::founding::Planned;
use tholebook::units::Date;
use tholebook::writing::sample;

use super::run;
use super::sample as command;
use super::write;

fn seasons() -> Founding {
    sample::seasons().expect("the story can be told")
}

fn read(commit: &Planned) -> (Book, Vec<reading::Fault>) {
    let texts = commit.files.iter().map(|(path, text)| Named::text(path, text));
    reading::read("sample", texts.collect())
}

fn day(commit: &Planned) -> Date {
    let local = commit.by.seconds + i64::from(commit.by.ahead) * 60;
    let instant = jiff::Timestamp::from_second(local).expect("a time");
    Date::read(&instant.to_string()[..10]).expect("a day")
}

fn check(commit: &Planned) -> Checked {
    let (book, faults) = read(commit);
    let as_of = day(commit);
    let mut checked = rules::check(&book, &faults, Check { as_of });
    checked.waive(&book, as_of);
    checked
}

/// The commits of `main`, each with what it was made on top of, from the first to the last.
fn main_line(plan: &Founding) -> Vec<&Planned> {
    let by_label: BTreeMap<&str, &Planned> =
        plan.commits.iter().map(|commit| (commit.label.as_str(), commit)).collect();
    let mut line = Vec::new();
    let mut next = Some(plan.branches["main"].as_str());
    while let Some(label) = next {
        line.push(by_label[label]);
        next = by_label[label].parents.first().map(String::as_str);
    }
    line.reverse();
    line
}

/// The one commit with this subject.
#[track_caller]
fn called<'p>(plan: &'p Founding, subject: &str) -> &'p Planned {
    let of_subject = |commit: &&Planned| commit.message.starts_with(subject);
    let found: Vec<&Planned> = plan.commits.iter().filter(of_subject).collect();
    assert_eq!(found.len(), 1, "{subject}");
    found[0]
}

fn before<'p>(plan: &'p Founding, commit: &Planned) -> &'p Planned {
    let parent = &commit.parents[0];
    plan.commits.iter().find(|commit| commit.label == *parent).expect("a parent")
}

/// Every value of a book as it is written, by name.
fn values(commit: &Planned) -> BTreeSet<(String, String)> {
    let (book, _) = read(commit);
    let text = |place: &tholebook::model::Place| {
        let text = &book.file(place.file).text[place.span.start..place.span.end];
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let own = book.written().filter(|own| !book.file(own.place.file).built_in);
    own.map(|own| (own.name.as_str().to_owned(), text(&own.place))).collect()
}

fn value(commit: &Planned, name: &str) -> String {
    let values = values(commit);
    let found = values.iter().find(|(of, _)| of == name);
    found.unwrap_or_else(|| panic!("there is no {name}")).1.clone()
}

#[test]
fn the_history_has_what_it_promises() {
    let folder = tempdir().expect("a folder");
    let repository = write(&folder.path().join("book"));
    let mut walk = repository.revwalk().expect("a walk");
    walk.push_glob("refs/heads/*").expect("branches");
    let commits: Vec<git2::Commit> =
        walk.map(|id| repository.find_commit(id.expect("an id")).expect("a commit")).collect();
    assert_eq!(commits.len(), 76);
    assert_eq!(commits.iter().filter(|commit| commit.parent_count() == 2).count(), 5);
    let authors: BTreeSet<String> =
        commits.iter().map(|commit| commit.author().to_string()).collect();
    let authors: Vec<&str> = authors.iter().map(String::as_str).collect();
    assert_eq!(
        authors,
        [
            "Ines Marlow <ines@tarrow-head.example>",
            "Jora Oskin <jora@tarrow-head.example>",
            "Tomas Reyne <tomas@tarrow-head.example>",
        ]
    );
    assert_eq!(repository.tag_names(None).expect("tags").len(), 6);
    assert_eq!(repository.branches(None).expect("branches").count(), 7);
    assert!(commits.iter().all(|commit| commit.author().when() == commit.committer().when()));
}

#[test]
fn the_dates_of_main_go_forward_over_two_seasons() {
    let plan = seasons();
    let line = main_line(&plan);
    assert!(line.windows(2).all(|pair| pair[0].by.seconds < pair[1].by.seconds));
    let days = [line[0], line[line.len() - 1]].map(|commit| day(commit).to_string());
    assert_eq!(days, ["2025-04-05", "2026-10-18"]);
}

#[test]
fn every_commit_can_be_read_without_a_fault() {
    for commit in &seasons().commits {
        let (book, faults) = read(commit);
        assert!(!book.boats.is_empty(), "{}", commit.message);
        assert!(faults.is_empty(), "{}: {faults:?}", commit.message);
    }
}

/// Dangers on boats in use stand at exactly two commits of `main`: from the one that brought the
/// thick spare oar to the one before it was given room.
#[test]
fn the_spare_oar_that_was_too_thick_is_the_one_danger_that_slipped_through() {
    let plan = seasons();
    let mut dangerous = Vec::new();
    for commit in main_line(&plan) {
        let checked = check(commit);
        let stands =
            |finding: &&rules::Finding| finding.level == Level::Danger && !finding.shown_only;
        for finding in checked.findings.iter().filter(stands) {
            let name = finding.name.as_str().to_owned();
            dangerous.push((day(commit).to_string(), finding.rule.id, name));
        }
    }
    let danger =
        |day: &str| (day.to_owned(), "gap-too-tight", "kittiwake/seat-2/spare/A6".to_owned());
    assert_eq!(dangerous, [danger("2026-04-18"), danger("2026-04-19")]);
}

#[test]
fn the_narrowed_horn_was_a_danger_on_its_branch_and_mended_before_the_merge() {
    let plan = seasons();
    let tight = called(&plan, "fulmar: after horn of seat 3 bent in 4 deg");
    let mended = called(&plan, "fulmar: seat 3 bent out again to 59");
    assert!(main_line(&plan).iter().all(|commit| commit.label != tight.label));
    assert_eq!(before(&plan, mended).label, tight.label);
    assert_eq!(check(tight).worst(), Some(Level::Danger));
    assert!(check(mended).worst() < Some(Level::Fault));
}

#[test]
fn the_book_ends_in_order() {
    let plan = seasons();
    let line = main_line(&plan);
    let checked = check(line[line.len() - 1]);
    assert_eq!(checked.worst(), Some(Level::Note), "{:?}", checked.findings);
    assert!((3..8).contains(&checked.findings.len()), "{:?}", checked.findings);
}

#[test]
fn deeper_indents_and_another_order_and_folder_change_no_value() {
    let plan = seasons();
    let subjects = ["fulmar: deeper indents", "kittiwake: her file goes to the surf boats' folder"];
    for commit in subjects.map(|subject| called(&plan, subject)) {
        let parent = before(&plan, commit);
        assert_ne!(commit.files, parent.files);
        assert_eq!(values(commit), values(parent), "{}", commit.message);
    }
}

#[test]
fn a_merge_holds_what_both_sides_brought() {
    let plan = seasons();
    let merged = called(&plan, "Merge branch 'regatta-rig'");
    assert_eq!(value(merged, "fulmar/seat-2/rowlock/gap"), "59.5");
    assert_eq!(value(merged, "fulmar/seat-4/seat-mark"), "60");
    let merged = called(&plan, "Merge branch 'midsummer'");
    assert_eq!(value(merged, "kittiwake/seat-1/rowlock/gap"), "59.6");
    assert_eq!(value(merged, "kittiwake/seat-4/seat-mark"), "63");
}

#[test]
fn of_a_value_that_both_sides_changed_the_branch_wins() {
    let plan = seasons();
    let merged = called(&plan, "Merge branch 'chocks'");
    let parents = merged
        .parents
        .iter()
        .map(|label| plan.commits.iter().find(|commit| commit.label == *label).expect("a parent"));
    let chock = |commit: &Planned| value(commit, "kittiwake/seat-4/chock-to-pin");
    assert_eq!(parents.map(chock).collect::<Vec<_>>(), ["596", "592"]);
    assert_eq!(chock(merged), "592");
}

#[test]
fn a_waiver_is_granted_and_lapses() {
    let plan = seasons();
    let granted = check(called(&plan, "kittiwake: collar of A2 moved in"));
    let waived = granted.findings.iter().filter(|finding| finding.waived.is_some());
    assert_eq!(waived.count(), 2);
    let lapsed = main_line(&plan).into_iter().filter(|commit| {
        check(commit).findings.iter().any(|finding| finding.rule.id == "waiver-lapsed")
    });
    assert_eq!(lapsed.map(|commit| day(commit).to_string()).collect::<Vec<_>>(), ["2025-09-07"]);
}

#[test]
fn an_oar_set_is_lent_and_comes_back() {
    let plan = seasons();
    let sets = main_line(&plan).into_iter().map(|commit| value(commit, "kittiwake/oars"));
    let mut sets: Vec<String> = sets.collect();
    sets.dedup();
    assert_eq!(sets, ["long-ash", "spruce", "long-ash"]);
}

#[test]
fn the_names_that_are_offered_are_in_the_book() {
    let folder = tempdir().expect("a folder");
    let done = run(&mut command(&folder.path().join("book")));
    let plan = seasons();
    let line = main_line(&plan);
    let tips = values(line[line.len() - 1]);
    let offered = "kittiwake/seat-2/rowlock/gap";
    assert!(done.out.contains(&format!("history {offered} ")), "{}", done.out);
    assert!(tips.iter().any(|(name, _)| name == offered));
    assert!(done.out.contains("blame kittiwake "), "{}", done.out);
    assert!(done.out.contains("diff spring-sands-2026.. "), "{}", done.out);
    assert!(plan.tags.iter().any(|tag| tag.name == "spring-sands-2026"));
    assert!(done.out.contains("76 commits") && done.out.contains("--as-of 2026-10-18"));
}
