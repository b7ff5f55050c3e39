//! What YAML allows and a logbook does not: told at its place, and read around.

use tholebook::model::Span;
use tholebook::reading::tree;
use tholebook::reading::tree::TreeFaultKind;

use crate::outline::at;
use crate::outline::faulty;
use crate::outline::outline;

#[test]
fn an_empty_file_is_told_with_a_place() {
    for (text, place) in
        [("", 0), ("# tern\n", 0), ("\u{feff}\n\n", 3), ("---\n...\n", 3), ("  \r\n\t", 0)]
    {
        let tree = tree::read(text);
        assert_eq!(tree.root, None);
        let [fault] = &tree.faults[..] else { panic!("{text:?}: {:?}", tree.faults) };
        assert_eq!(fault.what, TreeFaultKind::Empty);
        assert_eq!(fault.at, Span { start: place, end: place }, "{text:?}");
        assert!(tree.complete);
    }
    assert_eq!(tree::read("null\n").faults[0].at, Span { start: 0, end: 4 });
}

#[test]
fn of_a_key_given_twice_neither_value_is_used_and_both_places_are_told() {
    let text = "gap: 58\nlong: 38\n'gap': 59\nx: {a: 1, a: 2, b: 3}\ngap: 60\n";
    let tree = tree::read(text);
    let root = outline(&tree.root.expect("a map"));
    assert_eq!(root, "{long@8-12=38@14-16 x@27-28={b@43-44=3@46-47}@30-48}@0-56");
    let places: Vec<_> = tree
        .faults
        .iter()
        .map(|fault| (fault.what.clone(), fault.at.start, fault.also.expect("a first").start))
        .collect();
    let twice = |key: &str| TreeFaultKind::KeyTwice { key: key.to_owned() };
    assert_eq!(places, [(twice("gap"), 17, 0), (twice("a"), 37, 31), (twice("gap"), 49, 0)]);
    assert!(tree.complete);
}

#[test]
fn faults_inside_the_value_of_a_key_given_twice_are_told_too() {
    let (_, faults) = faulty("a: 1\na: {b: 1, b: *x}\n");
    let places: Vec<_> = faults.iter().map(|fault| fault.1).collect();
    assert_eq!(places, ["a", "b", "*x"]);
}

#[test]
fn anchors_are_told_and_the_values_still_read() {
    let (root, faults) = faulty("&k pin: &p {lean: &l 1}\nbed: &b\n- 1\nx: &e\n");
    let places: Vec<_> = faults.iter().map(|fault| fault.1).collect();
    assert_eq!(places, ["&k", "&p", "&l", "&b", "&e"]);
    assert_eq!(
        root,
        "{pin@3-6={lean@12-16=1@21-22}@11-23 bed@24-27=[1@34-35]@32-35 x@36-37=~@41-41}@0-41",
    );
    assert_eq!(faults[0].0, "`&k` is not allowed");
}

#[test]
fn aliases_are_told_known_or_not_and_stand_as_refused() {
    let (root, faults) = faulty("a: &p 1\nb: *p\nc: [*q, 2]\n*p : 3\nd: 4\n");
    let places: Vec<_> = faults.iter().map(|fault| fault.1).collect();
    assert_eq!(places, ["&p", "*p", "*q", "*p"]);
    assert_eq!(
        root,
        "{a@0-1=1@6-7 b@8-9=!@11-13 c@14-15=[!@18-20 2@22-23]@17-24 d@32-33=4@35-36}@0-36",
    );
    assert_eq!(faulty("*p\n").0, "!@0-2");
}

#[test]
fn merge_keys_are_told_and_passed_over() {
    let (root, faults) = faulty("a: 1\n<<: *p\nb: {<<: [*p, *q], c: 2}\n");
    let places: Vec<_> = faults.iter().map(|fault| fault.1).collect();
    assert_eq!(places, ["<<", "*p", "<<", "*p", "*q"]);
    assert_eq!(root, "{a@0-1=1@3-4 b@12-13={c@30-31=2@33-34}@15-35}@0-35");
}

#[test]
fn tags_are_told_and_the_values_still_read() {
    let (root, faults) = faulty("a: !!str 5\nb: !pin\nc: ! x\nd: !<x:y> [1]\n!k e: 2\n");
    let places: Vec<_> = faults.iter().map(|fault| fault.1).collect();
    assert_eq!(places, ["!!str", "!pin", "!", "!<x:y>", "!k"]);
    assert!(root.starts_with("{a@0-1=5@9-10 b@11-12=~@18-18 c@19-20=x@24-25 d@26-27="), "{root}");
    assert!(root.ends_with(" e@43-44=2@46-47}@0-47"), "{root}");
}

#[test]
fn a_tag_with_an_unknown_handle_is_told_as_a_tag() {
    let tree = tree::read("a: 1\nb: !pin!lean 2\n");
    let [fault] = &tree.faults[..] else { panic!("{:?}", tree.faults) };
    assert_eq!(fault.what, TreeFaultKind::Tag { tag: "!pin!lean".to_owned() });
    assert_eq!(fault.at, Span { start: 8, end: 17 });
    assert!(!tree.complete);
}

#[test]
fn a_second_record_is_told_at_its_mark_and_not_used() {
    let text = "---\na: 1\n---\nb: *x\n--- c\n";
    let (root, faults) = faulty(text);
    assert_eq!(root, "{a@4-5=1@7-8}@4-8");
    let places: Vec<_> = faults.iter().map(|fault| fault.1).collect();
    assert_eq!(places, ["---", "*x", "---"]);
    assert_eq!(tree::read(text).faults[0].at.start, 9);
    assert!(!tree::read(text).complete);
    let (_, faults) = faulty("a: 1\n...\nb: 1\n");
    assert_eq!(faults, [("a second record begins here".to_owned(), "b")]);
}

#[test]
fn directives_that_could_change_the_reading_are_told() {
    for line in ["%YAML 1.1", "%YAML 2.0", "%TAG !e! tag:tern:", "%TERN", "%YAML 1.2 1"] {
        let text = format!("\u{feff}# tern\n{line} \n---\na: 1\n");
        let (_, faults) = faulty(&text);
        assert_eq!(faults.len(), 1, "{line}: {faults:?}");
        assert_eq!(faults[0], (format!("`{line}` is not allowed"), line));
    }
    assert_eq!(faulty("%TERN\n---\na: 1\n").0, "{a@10-11=1@13-14}@10-14");
}

#[test]
fn a_key_that_is_no_word_is_told_and_its_value_not_used() {
    for (text, place) in [
        ("a: 1\n[b, c]: 2\n", "[b, c]"),
        ("a: 1\n? {b: c}\n: 2\n", "{b: c}"),
        ("a: 1\n?\n- b\n- c\n: 2\n", "- b\n- c"),
        ("a: 1\n: 2\n", ":"),
        ("a: 1\n\"\": 2\n", "\"\""),
    ] {
        let (root, faults) = faulty(text);
        assert_eq!(faults, [("a key must be a word".to_owned(), place)], "{text:?}");
        assert!(root.starts_with("{a@0-1=1@3-4}@0-"), "{root}");
    }
}

#[test]
fn every_kind_of_refusal_in_one_file_is_told_in_the_order_of_the_file() {
    let text = "%TERN\n---\na: &p 1\nb: *p\n<<: !x {c: 1}\na: 2\n[d]: 3\n---\n";
    let places: Vec<_> = tree::read(text).faults.iter().map(|fault| at(text, fault.at)).collect();
    assert_eq!(places, ["%TERN", "&p", "*p", "<<", "!x", "a", "[d]", "---"]);
}

#[test]
fn a_stand_in_of_large_file_storage_is_told() {
    let oid = "oid sha256:4d7a214614ab2935c943f9e0ff69d22eadbb8f32b1258daaa5e2ca24d17e2393";
    for first in ["version https://git-lfs.github.com/spec/v1", "version https://example.org/v1"] {
        let text = format!("{first}\n{oid}\nsize 12345\n");
        let tree = tree::read(&text);
        assert_eq!(tree.root, None);
        assert!(!tree.complete);
        let [fault] = &tree.faults[..] else { panic!("{:?}", tree.faults) };
        assert_eq!((&fault.what, at(&text, fault.at)), (&TreeFaultKind::LfsPointer, first));
    }
    assert!(tree::read("version: https://git-lfs\n").faults.is_empty());
}

#[test]
fn the_marks_of_an_unsettled_merge_are_told_and_what_stands_above_is_read() {
    let text = "a: 1\nb: {c: 2}\n<<<<<<< ours\nd: 3\n=======\nd: 4\n>>>>>>> theirs\n";
    let tree = tree::read(text);
    assert_eq!(
        outline(&tree.root.expect("a map")),
        "{a@0-1=1@3-4 b@5-6={c@9-10=2@12-13}@8-14}@0-14"
    );
    let [fault] = &tree.faults[..] else { panic!("{:?}", tree.faults) };
    assert_eq!((&fault.what, at(text, fault.at)), (&TreeFaultKind::Unmerged, "<<<<<<< ours"));
    assert!(!tree.complete);
    let half_settled = tree::read("<<<<<<< ours\nd: 3\n>>>>>>> theirs\n");
    assert_eq!(half_settled.faults[0].what, TreeFaultKind::Unmerged);
    assert!(tree::read("<<<<<<< a: 1\n").faults.is_empty());
}
