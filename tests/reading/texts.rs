//! Texts as editors and systems leave them, and files that are no text at all.

use tholebook::rules;
use tholebook::store::Content;
use tholebook::store::Named;
use tholebook::store::Refusal;
use tholebook::units::Date;

use super::told::boat_with_seat;
use super::told::pairs;
use super::told::read;
use super::told::read_all;
use super::told::read_at;

#[test]
fn places_are_exact_whatever_ends_the_lines_and_begins_the_text() {
    let plain = boat_with_seat("note: Füße 👣 ok\nseat-mark: 1e3\nrowlock:\n  gaap: 58\n  gap: 58");
    let marked = format!("\u{feff}{plain}");
    let crlf = plain.replace('\n', "\r\n");
    let both = format!("\u{feff}{crlf}");
    let no_last = plain.trim_end().to_owned();
    for text in [plain, marked, crlf, both, no_last] {
        let (book, told) = read(&text);
        assert_eq!(pairs(&told), [("not-a-number", "1e3"), ("unknown-key", "gaap")]);
        let seat = &book.boats[0].seats[0];
        assert_eq!(seat.note.as_ref().map(|note| note.value.as_str()), Some("Füße 👣 ok"));
        assert!(seat.rowlock.gap.is_some());
    }
}

#[test]
fn after_a_slip_in_the_form_the_part_before_is_read_and_nothing_is_called_missing() {
    let text = "boat: petrel\nname: Petrel\nseats:\n  - seat: 1\n    seat-mark: 1e3\n    pin: {spread: 792\n    oar: A1\nclass: surfboat\n";
    let (book, told) = read(text);
    let rules: Vec<&str> = told.iter().map(|told| told.rule).collect();
    assert_eq!(rules, ["not-a-number", "unreadable"], "{told:?}");
    assert_eq!(told[0].text, "1e3");
    let boat = &book.boats[0];
    assert_eq!(boat.called(), "Petrel");
    assert_eq!(boat.seats.len(), 1);
}

#[test]
fn what_may_stand_in_the_unread_rest_is_not_checked_and_not_found_missing() {
    let boat = "boat: petrel\nclass: surfboat\noars: ash\nspares: [A9]\nrigged: {date: 2026-10-17, by: I.}\nseats:\n  - {seat: 1, side: port, oar: A1}\n  - {seat: 2\n";
    let oars = "oar-set: ash\noars:\n  - {oar: A1}\n  - {oar: A2\n";
    let lost = "crew: masters\nboat: heron\n";
    let broken = "]\nboat: heron\n";
    let texts = [("a.yaml", boat), ("b.yaml", oars), ("c.yaml", lost), ("d.yaml", broken)];
    let named = texts.iter().map(|(path, text)| Named::text(path, text)).collect();
    let (book, faults) = tholebook::reading::read("book", named);
    let as_of = Date::read("2026-11-01").expect("a day");
    let checked = rules::check(&book, &faults, rules::Check { as_of });
    let judged = ["seats-wrong", "not-measured", "no-such-record", "missing-key"];
    let found: Vec<_> =
        checked.findings.iter().filter(|finding| judged.contains(&finding.rule.id)).collect();
    assert!(found.is_empty(), "{found:#?}");
    let left: Vec<(&str, &str)> = checked
        .not_checked
        .iter()
        .filter(|left| judged.contains(&left.rule))
        .map(|left| (left.rule, left.name.as_str()))
        .collect();
    assert!(left.contains(&("seats-wrong", "petrel")), "{left:?}");
    assert!(left.contains(&("no-such-record", "petrel/spares")), "{left:?}");
    assert!(left.contains(&("no-such-record", "masters/boat")), "{left:?}");
}

#[test]
fn an_empty_file_is_told() {
    for text in ["", "\n\n", "# only a remark\n", "\u{feff}", "---\n"] {
        let (_, told) = read(text);
        let rules: Vec<&str> = told.iter().map(|told| told.rule).collect();
        assert_eq!(rules, ["unreadable"], "{text:?}");
        assert!(told[0].message.contains("nothing is written"), "{}", told[0].message);
    }
}

#[test]
fn a_list_or_a_lone_word_is_no_record() {
    for (text, at) in [("- boat: petrel\n", "- boat: petrel"), ("petrel\n", "petrel")] {
        let (_, told) = read(text);
        assert_eq!(pairs(&told), [("unreadable", at)]);
    }
}

#[test]
fn a_second_record_in_one_file_is_refused_where_it_begins() {
    let (book, told) = read("crew: a\n---\ncrew: b\n");
    assert_eq!(pairs(&told), [("unreadable", "---")]);
    assert_eq!(book.crews.len(), 1);
}

#[test]
fn a_file_that_was_not_fetched_is_told_as_such() {
    let pointer = "version https://git-lfs.github.com/spec/v1\noid sha256:4d7a\nsize 12\n";
    let (_, told) = read(pointer);
    assert_eq!(told.len(), 1);
    assert!(told[0].help.contains("git lfs pull"), "{}", told[0].help);
}

#[test]
fn a_link_odd_bytes_and_a_huge_file_are_told_and_the_others_are_read() {
    let refused =
        |path: &str, refusal| Named { path: path.to_owned(), content: Content::Refused(refusal) };
    let lossy = "boat: K\u{fffd}ttiwake\n".to_owned();
    let (book, told) = read_all(vec![
        refused("boats/link.yaml", Refusal::Link),
        refused("boats/latin.yaml", Refusal::NotUtf8 { at: 7, lossy }),
        refused("boats/huge.yaml", Refusal::TooLarge { bytes: 1 << 30 }),
        Named::text("crews/a.yaml", "crew: a\n"),
    ]);
    let expected = [("unreadable", ""), ("unreadable", "\u{fffd}"), ("too-large", "")];
    assert_eq!(pairs(&told), expected);
    assert!(told[0].message.contains("link"), "{}", told[0].message);
    assert!(told[1].message.contains("number 8"), "{}", told[1].message);
    assert!(told[2].message.contains("1073741824 bytes"), "{}", told[2].message);
    assert_eq!(told[0].name, "boats/link");
    assert_eq!(book.crews.len(), 1);
}

#[test]
fn a_text_deeper_or_longer_than_any_record_is_refused() {
    let deep = format!("crew: a\nx-deep: {}{}\n", "[".repeat(100), "]".repeat(100));
    let long = format!("crew: a\nx-long: {}\n", "a".repeat(1 << 20));
    let many = format!("crew: a\nx-many: [{}]\n", "1, ".repeat(50_001));
    for text in [deep, long, many] {
        let (_, told) = read(&text);
        let rules: Vec<&str> = told.iter().map(|told| told.rule).collect();
        assert_eq!(rules, ["too-large"]);
    }
}

#[test]
fn a_very_long_value_makes_no_very_long_message() {
    let long = "a".repeat(10_000);
    for line in [format!("boat: {long}"), format!("{long}: 1"), format!("rigged: {{date: {long}}}")]
    {
        let (_, told) =
            read(&format!("class: c\nboat: p\n{line}\n").replace("boat: p\nboat", "boat"));
        assert!(!told.is_empty());
        for told in told {
            assert!(told.message.len() + told.help.len() < 400, "{} {}", told.rule, told.message);
        }
    }
}

#[test]
fn a_name_for_a_record_without_an_id_is_its_path() {
    let (_, told) = read_at("boats/new.yaml", "boat: 12\nclass: c\noars: o\nrigged: 1\n");
    assert_eq!(pairs(&told), [("wrong-id", "12"), ("unreadable", "1")]);
    let (_, told) = read_at("boats/new.yaml", "boat: {a: b}\nclass: c\noars: o\nrigged: 1\n");
    assert_eq!(told[0].name, "boats/new/boat");
}
