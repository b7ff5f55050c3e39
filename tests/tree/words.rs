//! Texts that are no YAML: the words, the place, and what was read before it.

use tholebook::reading::tree;
use tholebook::reading::tree::TreeFaultKind;

use crate::outline::at;
use crate::outline::faulty;

/// Returns the one complaint about `text`, with the place it points at.
fn complaint(text: &str) -> (String, usize, &str) {
    let tree = tree::read(text);
    let [fault] = &tree.faults[..] else { panic!("{text:?}: {:?}", tree.faults) };
    let TreeFaultKind::NotYaml { message } = &fault.what else { panic!("{fault:?}") };
    assert!(!message.starts_with("this can't be read"), "{text:?}: {message}");
    (message.clone(), fault.at.start, at(text, fault.at))
}

#[test]
fn a_tab_that_indents_is_told_at_the_tab() {
    for (text, place) in [
        ("a:\n\tb: 1\n", 3),
        ("a: 1\n\tb: 1\n", 5),
        ("\ta: 1\n", 0),
        (" \ta: 1\n", 1),
        ("a:\n  - \tb: 1\n", 7),
        ("-\t- 1\n", 1),
        ("a:\n  b: 1\n\tc: 2\n", 10),
        ("a:\r\n  b: 1\r\n\tc: 2\r\n", 12),
        ("a: |\n\tx\n", 5),
    ] {
        let (message, start, seen) = complaint(text);
        assert_eq!((start, seen), (place, "\t"), "{text:?}: {message}");
        assert!(message.contains("tab"), "{message}");
    }
}

#[test]
fn a_second_colon_is_told_at_the_colon() {
    let (message, start, seen) = complaint("a: 1\nnote: horn: re-bent\n");
    assert_eq!((start, seen), (15, ":"));
    assert!(message.contains("put quotes"), "{message}");
}

#[test]
fn a_quote_that_is_not_closed_is_told_at_the_quote() {
    for (text, place) in [
        ("a: \"x\nb: 1\n", 3),
        ("a: 'x\nb: 1\n", 3),
        ("a: \"x", 3),
        ("é: 1\nb:\n- c: 'x\nd: 1\n", 14),
        ("a: # '\n  'x\nb: 1\n", 9),
    ] {
        let (message, start, seen) = complaint(text);
        assert_eq!(start, place, "{text:?}: {message}");
        assert!(matches!(seen, "'" | "\""), "{seen}");
        assert!(message.contains("quote is not closed"), "{message}");
    }
}

#[test]
fn a_bracket_that_is_not_closed_is_told_at_the_bracket() {
    for (text, place) in [
        ("a: [1, 2\nb: 3\n", 3),
        ("a: {b: 1\nc: 3\n", 3),
        ("a: {b: 1", 3),
        ("a: {b: [1, 2}\n", 7),
        ("a: [1, {b: 2}", 3),
    ] {
        let (message, start, seen) = complaint(text);
        assert_eq!(start, place, "{text:?}: {message}");
        assert!(matches!(seen, "[" | "{"), "{seen}");
        assert!(message.contains("clos"), "{message}");
    }
    assert_eq!(complaint("a: ]\n").2, "]");
}

#[test]
fn a_line_in_the_wrong_column_is_told_at_that_line() {
    for (text, place) in [
        ("a:\n    b: 1\n  c: 2\n", 14),
        ("  a: 1\nb: 2\n", 7),
        ("a:\n  - 1\n - 2\n", 10),
        ("- 1\nb: 2\n", 4),
        ("a:\n  b: 1\n   c: 2\n", 14),
    ] {
        let (message, start, _) = complaint(text);
        assert_eq!(start, place, "{text:?}: {message}");
        assert!(message.contains("column"), "{message}");
    }
}

#[test]
fn other_slips_are_told_with_what_to_do() {
    for (text, seen, words) in [
        ("a: 1\nbed\nb: 2\n", "b", "no colon"),
        ("a: @x\n", "@", "needs quotes"),
        ("a: `x\n", "`", "needs quotes"),
        ("a: %x\n", "%", "needs quotes"),
        ("a: & x\n", "&", "needs quotes"),
        ("a: * x\n", "*", "needs quotes"),
        ("a: !<x\n", "!", "needs quotes"),
        ("a: > x\n", ">", "needs quotes"),
        ("a: \"x\" y\n", "y", "single quotes"),
        ("a: 'it's'\n", "s", "double quotes"),
        ("a: \"\\q\"\n", "\"", "single quotes"),
        ("a: {b: 1 c: 2}\n", ":", "comma"),
        ("a: - 1\n", "-", "dash"),
        ("a: [-, 1]\n", "-", "dash"),
        ("a: x #c\n  b\n", "#", "comment"),
        ("a: ? b\n", "?", "needs quotes"),
        ("a: {b:{c: 1}}\n", ":", "blank after"),
        ("a: [b\n  : 1]\n", ":", "same line"),
        ("a: 1\n... x\n", "x", "..."),
        ("a: 1\n\u{feff}b: 2\n", "\u{feff}", "U+FEFF"),
    ] {
        let (message, _, at) = complaint(text);
        assert_eq!(at, seen, "{text:?}: {message}");
        assert!(message.contains(words), "{text:?}: {message}");
    }
}

#[test]
fn characters_that_no_text_may_hold_are_told_and_what_stands_before_them_is_read() {
    for (bad, words) in [
        ("\0", "zero byte"),
        ("\u{1b}", "U+001B"),
        ("\u{7f}", "U+007F"),
        ("\u{9b}", "U+009B"),
        ("\u{ffff}", "U+FFFF"),
    ] {
        let text = format!("a: 1\nb: {{c: 2, d: long {bad}text}}\ne: 3\n");
        let (message, start, seen) = complaint(&text);
        assert_eq!((start, seen), (23, bad));
        assert!(message.contains(words), "{message}");
        assert!(!tree::read(&text).complete);
        let (root, _) = faulty(&text);
        assert_eq!(root, "{a@0-1=1@3-4 b@5-6={c@9-10=2@12-13 d@15-16=!@18-22}@8-22}@0-22");
    }
    assert!(tree::read("a: \u{85}x\tü\u{e000}\u{1f6a3}\n").faults.is_empty());
}

#[test]
fn half_a_text_before_a_forbidden_character_is_not_used() {
    for (text, root) in [
        ("a: x\n  \0y\n", "{a@0-1=!@3-4}@0-4"),
        ("a: \0y\n", "{a@0-1=!@2-2}@0-2"),
        ("a: |\n  x\0y\n", "{a@0-1=!@3-8}@0-8"),
        ("\0", "nothing"),
    ] {
        let (seen, faults) = faulty(text);
        assert_eq!((seen.as_str(), faults.len()), (root, 1), "{text:?}: {faults:?}");
    }
}

#[test]
fn what_stands_before_a_slip_is_read_with_its_own_faults() {
    let (root, faults) = faulty("a: &p 1\nb: {c: 2, c: 3}\nd:\n  - e: 4\n  f: 5\ng: 6\n");
    assert_eq!(root, "{a@0-1=1@6-7 b@8-9={}@11-23 d@24-25=[{e@31-32=4@34-35}@31-35]@29-35}@0-35");
    assert_eq!(faults.iter().map(|fault| fault.1).collect::<Vec<_>>(), ["&p", "c", "f"]);
    assert_eq!(faulty("a: 1\nb: @x\n").0, "{a@0-1=1@3-4 b@5-6=!@6-6}@0-6");
}

#[test]
fn every_fault_says_what_to_do_in_its_message_or_its_help() {
    for text in ["", "a: &p 1", "a: *p", "<<: 1", "a: !x 1", "%T\n---\na", "a: 1\na: 2", "[a]: 1"] {
        for fault in tree::read(text).faults {
            assert!(fault.what.help().is_some_and(|help| help.ends_with('.')), "{fault:?}");
        }
    }
}
