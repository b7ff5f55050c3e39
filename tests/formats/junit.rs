//! `JUnit` XML, judged by a reader of XML that knows nothing of the writer.

use std::collections::BTreeSet;

use roxmltree::Document;
use roxmltree::Node;

use crate::books::all_states;
use crate::books::example;
use crate::books::folder;
use crate::books::lint_as;
use crate::books::with_gaps;
use crate::club::BOAT;

/// What one case came to.
fn came_to(case: &Node) -> &'static str {
    let children: Vec<_> = case.children().filter(Node::is_element).collect();
    assert!(children.len() <= 1, "{case:?}");
    match children.first().map(|child| child.tag_name().name().to_owned()).as_deref() {
        None => "passed",
        Some("system-out") => "passed, noted",
        Some("skipped") => "skipped",
        Some("failure") => "failure",
        Some("error") => "error",
        Some(other) => panic!("{other}?"),
    }
}

fn cases<'a>(node: Node<'a, 'a>) -> Vec<Node<'a, 'a>> {
    node.descendants().filter(|node| node.has_tag_name("testcase")).collect()
}

#[track_caller]
fn counted(node: Node) {
    let cases = cases(node);
    let count = |word: &str| cases.iter().filter(|case| came_to(case).starts_with(word)).count();
    let told =
        |key: &str| node.attribute(key).expect("a count").parse::<usize>().expect("a number");
    assert_eq!(told("tests"), cases.len());
    assert_eq!(told("failures"), count("failure"));
    assert_eq!(told("errors"), count("error"));
    if node.has_tag_name("testsuite") {
        assert_eq!(told("skipped"), count("skipped"));
    }
}

/// What may stand in each element.
///
/// Source: `junit-10.xsd`, the schema by which Jenkins' readers judge a report (Gregory Boissinot,
/// 2014), as far as it is used here.
const MAY: [(&str, &[&str]); 7] = [
    ("testsuites", &["name", "tests", "failures", "errors"]),
    ("testsuite", &["name", "tests", "failures", "errors", "skipped", "file"]),
    ("testcase", &["name", "classname"]),
    ("skipped", &["message"]),
    ("failure", &["message", "type"]),
    ("error", &["message", "type"]),
    ("system-out", &[]),
];

/// Reads a report, and holds its counts and names against what it holds.
#[track_caller]
pub(crate) fn read(text: &str) -> Document<'_> {
    let document = Document::parse(text).unwrap_or_else(|error| panic!("{error}: {text}"));
    let root = document.root_element();
    assert_eq!(root.tag_name().name(), "testsuites");
    for element in root.descendants().filter(Node::is_element) {
        let tag = element.tag_name().name();
        let may = MAY.iter().find(|(own, _)| *own == tag);
        let (_, may) = may.unwrap_or_else(|| panic!("{tag} is no element of the form"));
        assert!(element.attributes().all(|own| may.contains(&own.name())), "{element:?}");
    }
    counted(root);
    root.children().filter(Node::is_element).for_each(|suite| counted(suite));
    let names: Vec<&str> = cases(root).iter().filter_map(|case| case.attribute("name")).collect();
    let unique: BTreeSet<&str> = names.iter().copied().collect();
    assert_eq!(names.len(), cases(root).len());
    assert_eq!(unique.len(), names.len(), "two cases share a name");
    document
}

#[track_caller]
fn case(document: &Document, name: &str) -> (&'static str, String) {
    let all = document.descendants().filter(|node| node.has_tag_name("testcase"));
    let mut own = all.filter(|case| case.attribute("name") == Some(name));
    let own = own.next().unwrap_or_else(|| panic!("no case {name}"));
    let told = own.children().find(Node::is_element);
    let message = told.and_then(|told| told.attribute("message")).unwrap_or_default();
    (came_to(&own), message.to_owned())
}

#[test]
fn a_boat_in_order_passes_every_case_and_oar_sets_crews_and_the_book_have_theirs() {
    let run = lint_as(folder(&[]).path(), "junit", &[]).ends(0);
    let document = read(&run.out);
    for name in [
        "boat kittiwake: gap-too-tight",
        "boat kittiwake: not-a-number",
        "oar set long-ash: oars-unlike",
        "crew masters-a: no-such-record",
        "the book itself: record-twice",
        "the check itself: could be made",
    ] {
        assert_eq!(case(&document, name).0, "passed", "{name}");
    }
}

#[test]
fn what_counts_fails_and_what_is_undecided_waived_or_out_of_use_is_skipped() {
    let run = example("junit", &[]).ends(1);
    let document = read(&run.out);
    let (came_to, message) = case(&document, "boat gannet: gap-too-tight");
    assert_eq!(came_to, "failure");
    assert!(message.starts_with("danger: Gannet, seat 1: the gap clears"), "{message}");
    assert!(message.ends_with("(and 3 more)"), "{message}");
    let (came_to, message) = case(&document, "boat kittiwake: handle-past-mark-wrong");
    assert_eq!(came_to, "skipped");
    assert!(message.starts_with("fault (waived by Tomas Reyne until 2026-12-31)"), "{message}");
    assert_eq!(case(&document, "boat sanderling: level-not-recorded").0, "skipped");
    assert_eq!(case(&document, "boat turnstone: rowlock-not-free").0, "skipped");
    assert_eq!(case(&document, "boat kittiwake: walk-round").0, "passed, noted");
    assert_eq!(case(&document, "boat fulmar: gap-too-tight").0, "passed");
}

#[test]
fn a_check_that_was_not_made_is_skipped_and_names_what_is_missing() {
    let document = example("junit", &[]).out;
    let document = read(&document);
    let (came_to, message) = case(&document, "boat sanderling: boat-not-level");
    assert_eq!(came_to, "skipped");
    assert!(message.ends_with("missing: rigged/level/trim"), "{message}");
}

#[test]
fn more_fails_where_more_counts() {
    let document = example("junit", &["--fail-on", "unsure"]).ends(1).out;
    let document = read(&document);
    assert_eq!(case(&document, "boat sanderling: level-not-recorded").0, "failure");
}

#[test]
fn a_record_that_cannot_be_read_is_an_error_and_nothing_of_it_passes() {
    let cut = with_gaps(["55", "60", "60", "60"])[BOAT].clone() + "odd: [\n";
    let folder = folder(&[(BOAT, &cut)]);
    let run = lint_as(folder.path(), "junit", &[]).ends(1);
    let document = read(&run.out);
    assert_eq!(case(&document, "boat kittiwake: unreadable").0, "error");
    let (came_to, message) = case(&document, "boat kittiwake: gap-too-loose");
    assert_eq!((came_to, &*message), ("skipped", "the file could not be read to its end"));
}

#[test]
fn what_was_known_before_is_skipped_and_a_known_danger_fails() {
    let club = all_states();
    let run = lint_as(club.path(), "junit", &["--since", "HEAD~1"]).ends(1);
    let document = read(&run.out);
    assert_eq!(case(&document, "boat kittiwake: gap-too-tight").0, "failure");
    let run = lint_as(club.path(), "junit", &["--since", "HEAD", "--at", "HEAD"]).ends(1);
    let document = read(&run.out);
    let (came_to, message) = case(&document, "boat kittiwake: sum-wrong");
    assert_eq!(came_to, "skipped");
    assert!(message.starts_with("fault (known): "), "{message}");
}

#[test]
fn where_only_a_part_was_asked_for_nothing_else_passes() {
    let run = example("junit", &["--only", "kittiwake/seat-1"]).ends(0);
    let document = read(&run.out);
    let (came_to, message) = case(&document, "boat kittiwake: pin-not-vertical");
    assert_eq!((came_to, &*message), ("skipped", "only kittiwake/seat-1 was asked for"));
    assert!(!run.out.contains("gannet"));
}

#[test]
fn two_boats_of_one_id_have_cases_of_their_own() {
    let other = with_gaps(["55", "60", "60", "60"])[BOAT].clone();
    let folder = folder(&[("boats/other.yaml", &other)]);
    let run = lint_as(folder.path(), "junit", &[]).ends(1);
    let document = read(&run.out);
    let of = |path: &str| case(&document, &format!("boat kittiwake in {path}: gap-too-tight")).0;
    assert_eq!((of(BOAT), of("boats/other.yaml")), ("passed", "failure"));
}

#[test]
fn a_book_that_cannot_be_had_is_an_error_and_passes_nothing() {
    let run = lint_as(std::path::Path::new("/"), "junit", &["/no/such/book"]).ends(3);
    let document = read(&run.out);
    let (came_to, message) = case(&document, "the check itself: could be made");
    assert_eq!(came_to, "error");
    assert!(message.contains("/no/such/book"), "{message}");
    assert_eq!(cases(document.root_element()).len(), 1);
}
