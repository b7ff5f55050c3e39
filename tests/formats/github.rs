//! Workflow commands, read back as the runner reads them.

use std::path::Path;

use crate::books::example;
use crate::books::folder;
use crate::books::lint_as;
use crate::club::Club;
use crate::club::Files;
use crate::club::sound;
use crate::run::DAY;

/// A command as the runner understands it.
#[derive(Debug)]
pub(crate) struct Command {
    pub(crate) kind: String,
    properties: Vec<(String, String)>,
    pub(crate) message: String,
}

impl Command {
    #[track_caller]
    pub(crate) fn property(&self, key: &str) -> &str {
        let mut own = self.properties.iter().filter(|(own, _)| own == key);
        &own.next().unwrap_or_else(|| panic!("no {key} in {self:?}")).1
    }
}

/// Reads the commands of a log, by the runner's rules: a command begins a line, blanks aside.
pub(crate) fn commands(log: &str) -> Vec<Command> {
    let begun = log.lines().filter_map(|line| line.trim_start().strip_prefix("::"));
    let read = |line: &str| {
        let (head, message) = line.split_once("::").expect("an end of the head");
        let (kind, properties) = head.split_once(' ').unwrap_or((head, ""));
        let properties = properties.split(',').map(|one| {
            let (key, value) = one.split_once('=').expect("a property");
            (key.to_owned(), undone(value).replace("%3A", ":").replace("%2C", ","))
        });
        let properties = properties.collect();
        Command { kind: kind.to_owned(), properties, message: undone(message) }
    };
    begun.map(read).collect()
}

fn undone(text: &str) -> String {
    text.replace("%0A", "\n").replace("%0D", "\r").replace("%25", "%")
}

#[test]
fn the_ten_worst_are_told_and_then_how_many_more() {
    let run = example("github", &[]).ends(1);
    let told = commands(&run.out);
    assert_eq!(told.len(), 11);
    assert!(told[..10].iter().all(|one| one.kind == "error"), "{told:?}");
    let levels: Vec<&str> =
        told[..10].iter().filter_map(|one| one.property("title").split(' ').next()).collect();
    assert_eq!(levels, [["danger"; 8].as_slice(), &["fault"; 2]].concat());
    assert_eq!(told[0].property("file"), "example-club/boats/gannet.yaml");
    assert_eq!((told[0].property("line"), told[0].property("endLine")), ("43", "43"));
    assert_eq!(told[0].property("col"), "12");
    assert!(told[10].message.starts_with("and 26 more: 3 dangers, 5 faults"), "{:?}", told[10]);
    assert!(run.out.lines().last().expect("a line").starts_with("checked 5 boats"));
}

#[test]
fn few_findings_are_told_without_more() {
    let run = example("github", &["--only", "sanderling", "--fail-on", "never"]).ends(1);
    let kinds: Vec<String> = commands(&run.out).into_iter().map(|one| one.kind).collect();
    assert_eq!(kinds.len(), 11);
    let run = example("github", &["--only", "fulmar"]).ends(0);
    assert!(commands(&run.out).is_empty(), "{}", run.out);
}

#[test]
fn undecided_is_a_warning_and_a_boat_out_of_use_is_a_notice() {
    let told = commands(&example("github", &["--only", "sanderling/seat-1"]).out);
    assert!(told.iter().any(|one| one.kind == "warning"), "{told:?}");
    let told = commands(&example("github", &["--only", "turnstone"]).ends(0).out);
    assert!(told.iter().all(|one| one.kind == "notice"), "{told:?}");
    assert!(told[0].property("title").starts_with("danger "), "{told:?}");
}

#[test]
fn a_waived_finding_is_told_only_where_it_is_asked_for() {
    let only = ["--only", "kittiwake/seat-2"];
    let is_waived = |one: &Command| one.message.contains("waived by Tomas Reyne");
    assert!(!commands(&example("github", &only).out).iter().any(is_waived));
    let asked = example("github", &[&only[..], &["--show-waived"]].concat()).ends(0);
    let told = commands(&asked.out);
    assert!(told.iter().any(|one| is_waived(one) && one.kind == "notice"), "{told:?}");
}

#[test]
fn a_path_with_marks_of_the_form_comes_back_whole() {
    let club = Club::new();
    let mut files: Files = sound();
    files.insert("boats/a,b:c%25.yaml".to_owned(), "boat: [\n".to_owned());
    let id = club.commit(DAY - 2, &[], &files);
    club.check_out(id, &files);
    let told = commands(&lint_as(club.path(), "github", &["--at", "HEAD"]).ends(1).out);
    assert!(told.iter().any(|one| one.property("file") == "boats/a,b:c%25.yaml"), "{told:?}");
}

#[test]
fn what_could_not_be_had_is_an_error_and_nothing_is_said_to_be_checked() {
    let run = lint_as(Path::new("/"), "github", &["/no/such/book"]).ends(3);
    let told = commands(&run.out);
    assert_eq!(told.len(), 1);
    assert_eq!(told[0].kind, "error");
    assert!(told[0].message.contains("/no/such/book"), "{told:?}");
    assert!(!run.out.contains("checked 0"), "{}", run.out);
    let broken = folder(&[("club.yaml", "logbook: 9\n")]);
    let told = commands(&lint_as(broken.path(), "github", &[]).ends(2).out);
    assert!(told[0].message.contains("club.yaml can't be used"), "{told:?}");
}
